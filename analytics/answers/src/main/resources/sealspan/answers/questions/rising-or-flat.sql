-- title: Is it getting better?
-- asked by: utility engineer, contractor, analyst
-- filter: type
-- chart: x=year y=failures_per_year lower=failures_lower upper=failures_upper draw=points from=0
-- x axis: calendar year
-- y axis: failures found at tests, a year of exposure
-- left out: tests without an exposure: nothing is known of when the failure came
-- caution: Failures found at tests and replacements are two questions; never mix their figures.
-- caution: Replacements wait for visits, so the first and the last year of a record seem to differ.
-- caution: A change of the fleet, of limits or of testers looks like a trend; see the rate at the same age.
select year, tests, failures, failures_per_year, failures_lower, failures_upper,
  replacements, round(watched_days / 365.25, 1) as assembly_years,
  replacements_per_year, replacements_lower, replacements_upper
from yearly_rate
where stratum = case when $type is null then 'all' else 'type=' || $type end
order by year
-- beneath
select line from (
  select 0 as part, case subject when 'FAILURES_AT_TESTS' then 0 else 1 end as nr, place, note as line
  from trend
  where place = 0 and stratum = case when $type is null then 'all' else 'type=' || $type end
  union all
  select 1, case subject when 'FAILURES_AT_TESTS' then 0 else 1 end, place,
    case subject when 'FAILURES_AT_TESTS' then 'Failures at tests' else 'Replacements' end
    || ', ' || quantity || ': '
    || case when figure is null then note else
      round(figure, 3) || coalesce(' (95 % interval ' || round(lower, 3) || ' to '
        || coalesce(round(upper, 3)::varchar, 'no limit') || ')', '')
      || coalesce(', p = ' || round(p, 4), '') || ', ' || lower(replace(verdict, '_', ' ')) end
  from trend
  where place > 0 and stratum = case when $type is null then 'all' else 'type=' || $type end
  union all
  select 2, case subject when 'FAILURES_AT_TESTS' then 0 else 1 end, 0,
    'n = ' || events
    || case subject when 'FAILURES_AT_TESTS' then ' failures of ' else ' days with replacements of ' end
    || assemblies || ' assemblies'
  from trend
  where place = 0 and stratum = case when $type is null then 'all' else 'type=' || $type end
  order by part, nr, place)
union all
select case when count(*) = 0
  then 'Nothing has been fitted yet.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC, by version '
    || max(code_version) || '.' end
from fit where stratum in (select stratum from trend)
