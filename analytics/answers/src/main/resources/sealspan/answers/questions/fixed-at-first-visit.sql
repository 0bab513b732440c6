-- title: How often did the first work on a failed component hold at the retest of the same visit?
-- asked by: analyst, contractor, tester
-- filter: type
-- filter: component
-- filter: zone
-- filter: since
-- filter: until
-- study: exact share held of retested into lower, upper
-- left out: work without a retest result of the component in the same visit, which is counted
-- caution: The interval takes repairs as independent; repairs of one assembly are not, so it is too narrow.
-- caution: Raw counts do not compare actions: what looked worse was treated otherwise.
with
  chosen as (
    select *,
      case decision when 'CLEANED' then 'cleaned' when 'SEAL_RENEWED' then 'seal renewed'
        else 'other work, or not recorded' end as first_work,
      case found when 'FOULING' then 'debris, deposit or scale' when 'DAMAGE' then 'damage'
        when 'NOTHING_FOUND' then 'nothing found' else 'not known' end as found_on_opening
    from repair_episode
    where ($type is null or type = $type) and ($component is null or component = $component)
      and ($zone is null or zone_id = $zone)
      and ($since is null or day >= $since) and ($until is null or day <= $until))
select
  case when grouping(component) = 1 then 'all' else component end as component,
  first_work,
  case when grouping(found_on_opening) = 1 then 'all' else found_on_opening end as found_on_opening,
  count(*) as repairs,
  count(*) filter (retest_result in ('PASSED', 'FAILED')) as retested,
  count(*) filter (retest_result = 'PASSED') as held,
  case when count(*) filter (retest_result in ('PASSED', 'FAILED')) > 0
    then count(*) filter (retest_result = 'PASSED')
      / count(*) filter (retest_result in ('PASSED', 'FAILED')) end as share_held,
  null::double as lower, null::double as upper
from chosen
group by grouping sets (
  (first_work), (first_work, found_on_opening), (component, first_work, found_on_opening))
order by grouping(component) desc, chosen.component, first_work,
  grouping(found_on_opening) desc, chosen.found_on_opening
-- beneath
select 'n = ' || count(*) || ' first works on components that had failed, at '
  || count(distinct assembly_id) || ' assemblies; '
  || count(*) filter (retest_result is null) || ' without a retest result in the same visit'
from repair_episode
where ($type is null or type = $type) and ($component is null or component = $component)
  and ($zone is null or zone_id = $zone)
  and ($since is null or day >= $since) and ($until is null or day <= $until)
union all
select 'share_held: of those retested in the same visit, the share that passed, with the exact '
  || '95 % interval.'
