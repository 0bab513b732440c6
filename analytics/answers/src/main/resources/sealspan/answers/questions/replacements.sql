-- title: How often are seals replaced, and why?
-- asked by: contractor, utility engineer
-- filter: type
-- filter: size
-- filter: since
-- filter: until
-- left out: replaced parts that are no seals, such as O-rings alone or springs
-- caution: Types differ in their number of seals: compare per component (component=...), not per assembly.
-- study: time per event replaced in seal_years into years_per_replacement, lower, upper
-- caution: years_per_replacement is the crude ratio; its 95 % interval takes replacements as independent, and is too narrow where assemblies differ. How long seals last is the question seal-life.
with
  seen as (
    select type, component, ended_by, replacement_reason, assembly_id, end_day,
      greatest(0, least(end_day, coalesce($until, end_day))
        - greatest(entry_day, coalesce($since, entry_day))) as days,
      ended_by = 'REPLACED' and ($since is null or end_day >= $since)
        and ($until is null or end_day <= $until) as replaced
    from seal
    where ($type is null or type = $type) and ($size is null or size_inch = $size)
      and ($since is null or end_day >= $since) and ($until is null or entry_day <= $until))
select type, component, count(distinct assembly_id) as assemblies,
  sum(days) / 365.25 as seal_years,
  count(*) filter (replaced) as replaced,
  count(*) filter (replaced and replacement_reason = 'FAILED') as because_failed,
  count(*) filter (replaced and replacement_reason = 'SCHEDULED') as scheduled,
  count(*) filter (replaced and replacement_reason = 'WHILE_OPEN') as while_open,
  count(*) filter (replaced and (replacement_reason is null
    or replacement_reason not in ('FAILED', 'SCHEDULED', 'WHILE_OPEN'))) as other_or_not_recorded,
  null as years_per_replacement, null as lower, null as upper
from seen
group by type, component
order by type nulls last, component
-- beneath
select 'n = ' || count(*) || ' seals under observation; ' || count(*) filter (ended_by <> 'REPLACED')
  || ' of them not replaced so far'
from seal
where ($type is null or type = $type) and ($size is null or size_inch = $size)
  and ($since is null or end_day >= $since) and ($until is null or entry_day <= $until)
union all
select stratum || ', ' || quantity || ': ' || round(figure, 2)
  || ' (' || case when lower is null and upper is null then 'no interval' else '95 % interval '
    || coalesce(round(lower, 2)::varchar, 'no limit') || ' to ' || coalesce(round(upper, 2)::varchar, 'no limit') end
  || '; n = ' || assemblies || ' assemblies, ' || endings || ' replacements; left out: ' || left_out_unknown_origin
  || ' seals of unknown origin), by ' || lower(replace(estimator, '_', ' ')) || coalesce('; ' || note, '')
from (
  select * from seal_life
  where question = 'REPLACED_ANY_REASON' and figure is not null
    and ($type is null or stratum in ('all', 'type=' || $type))
    and not contains(stratum, 'component=')
  order by case when stratum = 'all' then 0 else 1 end, stratum, quantity, estimator)
union all
select line from (
  select stratum || ', ' || group_name || ' against the others: '
    || case when mean is null then note else
      round(mean, 2) || ' replacements per assembly by age ' || round(years, 1) || ' (95 % interval '
      || round(lower, 2) || ' to ' || coalesce(round(upper, 2)::varchar, 'no limit') || ', n = '
      || assemblies || ') against ' || round(others_mean, 2) || ' (n = ' || others || ')'
      || coalesce('; difference ' || round(difference, 2) || ' (' || round(difference_lower, 2)
        || ' to ' || round(difference_upper, 2) || ')', '')
      || coalesce(', p = ' || round(p, 4) || ' that they go alike', '') end as line
  from replacement_comparison
  where $type is null or group_name = 'type=' || $type
  order by case when stratum = 'all' then 0 else 1 end, stratum, group_name)
union all
select case when count(*) = 0
  then 'Nothing has been fitted yet.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC.' end
from fit where stratum in (select stratum from seal_life)
