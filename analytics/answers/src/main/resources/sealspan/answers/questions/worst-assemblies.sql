-- title: Which assemblies fail most often, compared with assemblies like them?
-- asked by: utility engineer, contractor
-- filter: type
-- filter: size
-- filter: zone
-- filter: site
-- filter: hazard
-- filter: limit = 20
-- left out: rounds that do not count (not routine, not as found, not testable) and rounds without a known earlier pass, which have no exposure
-- caution: A yearly rate assumes that failures accumulate while nobody looks; where they are seen not to, the share per test is quoted instead.
-- caution: A place in this list is not a verdict: look at the intervals of rate and rank and at P.
select
  a.assembly_id, a.site_id, a.type, a.size_inch,
  r.tests, r.failures,
  round(r.exposure_days / 365.25, 1) as exposure_years,
  case r.quoted when 'PER_TEST' then 'a test' else 'a year' end as quoted,
  case r.quoted when 'PER_TEST' then r.share_failed else r.per_year end as figure,
  case r.quoted when 'PER_TEST' then r.share_lower else r.lower_per_year end as lower,
  case r.quoted when 'PER_TEST' then r.share_upper else r.upper_per_year end as upper,
  case r.quoted when 'PER_TEST' then r.compliant_failures / nullif(r.compliant_tests, 0)
    else r.compliant_per_year end as compliant_only,
  case r.quoted when 'PER_TEST' then r.fails_within_year else r.shrunk_per_year end as expected,
  case r.quoted when 'PER_TEST' then r.fails_within_year_lower
    else r.shrunk_lower_per_year end as expected_lower,
  case r.quoted when 'PER_TEST' then r.fails_within_year_upper
    else r.shrunk_upper_per_year end as expected_upper,
  r.probability_double_mean as p_twice_mean,
  r.expected_rank, r.rank_lower, r.rank_upper,
  r.probability_worst_ten as p_worst_10,
  case when r.listed then 'yes' else '' end as listed,
  coalesce(r.note, '') as note
from assembly a join rate r using (assembly_id)
where r.tests > 0 and a.removed_on is null
  and ($type is null or a.type = $type) and ($size is null or a.size_inch = $size)
  and ($zone is null or a.zone_id = $zone) and ($site is null or a.site_id = $site)
  and ($hazard is null or a.hazard = $hazard)
order by r.expected_rank nulls last, r.failures / r.tests desc, r.failures desc, r.tests,
  a.assembly_id
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
select 'figure: failures a year, or of a test, with the exact 95 % interval; compliant_only: without '
  || 'rounds whose gauge or certificate had expired; expected: drawn towards assemblies like it, '
  || 'of a test a year after a pass.'
union all
select 'Ranks are among all assemblies in place with a test, whatever the filter: expected_rank, its '
  || '95 % interval, and p_worst_10 = P(among the ten with the highest rates).'
union all
select case when count(*) = 0
  then 'No fit has been made yet: expected figures, ranks and P are empty.'
  when max(lattice_step) is null
  then 'Ranks and P are empty, and expected is the common rate of all assemblies, '
    || coalesce(round(max(common_per_year), 3)::varchar, 'unknown') || ' a year ('
    || coalesce(round(max(lower_per_year), 3)::varchar, '?') || ' to '
    || coalesce(round(max(upper_per_year), 3)::varchar, 'no upper end') || '); '
    || coalesce(max(note), '') || '.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC: the limit of '
    || 'p_twice_mean is ' || round(max(limit_per_year), 3) || ' a year; listed: claimed to exceed it, '
    || max(listed) || ' of ' || max(ranked) || ' assemblies, of which about a tenth is expected to be '
    || 'wrong.' end
from fit join rate_prior using (stratum) where stratum = 'all'
