-- title: Which assemblies fail most often, compared with assemblies like them?
-- asked by: utility engineer, contractor
-- filter: type
-- filter: size
-- filter: zone
-- filter: site
-- filter: hazard
-- filter: limit = 20
-- left out: rounds that do not count (not routine, not as found, not testable) and rounds without a known earlier pass, which have no exposure
-- caution: Rates assume that failures accumulate while nobody looks; fouling may clear itself.
-- caution: A place in this list is not a verdict: look at the interval and at P.
select
  a.assembly_id, a.site_id, a.type, a.size_inch,
  r.tests, r.failures,
  round(r.exposure_days / 365.25, 1) as exposure_years,
  r.per_year, r.lower_per_year, r.upper_per_year,
  r.shrunk_per_year, r.shrunk_lower_per_year, r.shrunk_upper_per_year,
  r.probability_double_mean as p_twice_mean,
  coalesce(r.note, '') as note
from assembly a join rate r using (assembly_id)
where r.tests > 0 and a.removed_on is null
  and ($type is null or a.type = $type) and ($size is null or a.size_inch = $size)
  and ($zone is null or a.zone_id = $zone) and ($site is null or a.site_id = $site)
  and ($hazard is null or a.hazard = $hazard)
order by r.probability_double_mean desc nulls last, r.shrunk_per_year desc nulls last,
  r.failures desc, r.tests, a.assembly_id
limit $limit
-- beneath
with chosen as (
  select a.removed_on, r.*, a.rounds_not_counted, a.routine_tests
  from assembly a left join rate r using (assembly_id)
  where ($type is null or a.type = $type) and ($size is null or a.size_inch = $size)
    and ($zone is null or a.zone_id = $zone) and ($site is null or a.site_id = $site)
    and ($hazard is null or a.hazard = $hazard))
select 'n = ' || count(*) filter (tests > 0 and removed_on is null) || ' assemblies with '
  || coalesce(sum(tests) filter (removed_on is null), 0) || ' tests that have an exposure, '
  || coalesce(sum(failures) filter (removed_on is null), 0) || ' failed; left out: '
  || count(*) filter (removed_on is not null) || ' removed assemblies, '
  || count(*) filter (removed_on is null and coalesce(tests, 0) = 0)
  || ' without a test that has an exposure, '
  || coalesce(sum(routine_tests - tests) filter (removed_on is null), 0)
  || ' first tests without exposure'
from chosen
union all
select 'per_year: failures a year with the exact 95 % interval; shrunk: drawn towards assemblies '
  || 'like it; p_twice_mean: probability that the rate is more than twice the mean of its stratum.'
union all
select case when count(*) = 0
  then 'No prior has been fitted yet: the shrunk rates and P are empty.'
  when count(shape) = 0
  then 'The shrunk rates and P are empty; '
    || coalesce(max(note) filter (stratum = 'all'), 'no prior is identified') || '.'
  else 'Priors were fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC.' end
from fit join rate_prior using (stratum)
