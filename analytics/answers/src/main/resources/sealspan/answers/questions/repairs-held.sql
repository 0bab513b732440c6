-- title: After a failure, did cleaning hold as well as replacing?
-- asked by: analyst, tester
-- filter: type
-- filter: size
-- filter: zone
-- filter: since
-- filter: until
-- study: exact share failed_next of with_next into lower, upper
-- left out: actions on a component that had not failed, and actions without a later as-found result, which are counted
-- caution: Raw counts do not compare actions: older and worse components are more often replaced (confounding by indication), so a difference here says nothing of what an action does.
-- caution: The time to the next test differs from case to case; a longer one gives more time to fail.
with
  acted as (
    select r.*,
      case
        when r.seal_renewed then 'seal replaced'
        when r.action = 'FLUSHED' then 'flushed'
        when r.action in ('CLEANED', 'DISC_TURNED') then lower(replace(r.action, '_', ' '))
        when r.action = 'NONE' or r.action is null then 'nothing done, or not recorded'
        else 'other part or adjustment'
      end as what_was_done
    from repair r join assembly a using (assembly_id)
    where r.after_failure
      and ($type is null or a.type = $type) and ($size is null or a.size_inch = $size)
      and ($zone is null or a.zone_id = $zone)
      and ($since is null or r.day >= $since) and ($until is null or r.day <= $until))
select
  what_was_done,
  case when mechanism in ('DEBRIS', 'DEPOSIT', 'SCALE') then 'debris, deposit or scale'
    when mechanism is null or mechanism in ('UNKNOWN', 'OTHER') then 'not known'
    when mechanism = 'NOTHING_FOUND' then 'nothing found'
    else 'damage' end as found,
  count(*) as actions,
  count(*) filter (retest_result = 'FAILED') as retest_failed,
  count(next_result) as with_next,
  count(*) filter (next_result = 'FAILED') as failed_next,
  case when count(next_result) > 0
    then count(*) filter (next_result = 'FAILED') / count(next_result) end as share_failed_next,
  null::double as lower, null::double as upper,
  median(next_result_on - day) as median_days_to_next
from acted
group by all
order by what_was_done, found
-- beneath
select 'n = ' || count(*) || ' actions on components that had failed, at '
  || count(distinct r.assembly_id) || ' assemblies; '
  || count(*) filter (next_result is null) || ' without a later as-found result yet'
from repair r join assembly a using (assembly_id)
where r.after_failure
  and ($type is null or a.type = $type) and ($size is null or a.size_inch = $size)
  and ($zone is null or a.zone_id = $zone)
  and ($since is null or r.day >= $since) and ($until is null or r.day <= $until)
union all
select 'share_failed_next: of those with a later as-found result of the component, the share that '
  || 'failed, with the exact 95 % interval; retest_failed: failed again in the same visit.'
