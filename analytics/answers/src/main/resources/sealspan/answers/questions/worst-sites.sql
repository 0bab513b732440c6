-- title: At which sites do assemblies fail again and again?
-- asked by: utility engineer, contractor
-- filter: type
-- filter: size
-- filter: zone
-- filter: site
-- filter: hazard
-- filter: since
-- filter: until
-- filter: limit = 20
-- study: exact share failed of tests into lower, upper
-- left out: rounds that do not count: not routine, not as found, not testable
-- caution: The interval takes tests as independent; those of one site are not, so it is too narrow.
-- caution: expected_per_year and p_twice_mean rest on the whole history, whatever days are asked for.
with
  round as (
    select site_id, assembly_id, outcome, failure_class
    from test
    where counted
      and ($type is null or type = $type) and ($size is null or size_inch = $size)
      and ($zone is null or zone_id = $zone) and ($site is null or site_id = $site)
      and ($since is null or day >= $since) and ($until is null or day <= $until)),
  site as (
    select site_id, count(*) as tests,
      count(*) filter (outcome = 'FAILED') as failed,
      count(*) filter (failure_class = 'FOULING') as fouling
    from round group by site_id),
  standing as (
    select a.site_id, min(a.site_label) as label, min(a.zone_id) as zone_id,
      count(*) as assemblies,
      sum(r.shrunk_per_year) as expected_per_year,
      max(r.probability_double_mean) as p_twice_mean
    from assembly a left join rate r using (assembly_id)
    where a.removed_on is null
      and ($type is null or a.type = $type) and ($size is null or a.size_inch = $size)
      and ($hazard is null or a.hazard = $hazard)
    group by a.site_id)
select s.site_id, p.label, p.zone_id, p.assemblies, s.tests, s.failed, s.fouling,
  s.failed / s.tests as share_failed, null::double as lower, null::double as upper,
  p.expected_per_year, p.p_twice_mean
from site s join standing p on p.site_id is not distinct from s.site_id
order by p.p_twice_mean desc nulls last, p.expected_per_year desc nulls last,
  share_failed desc, s.tests desc, s.site_id
limit $limit
-- beneath
select 'n = ' || count(*) filter (counted) || ' as-found rounds at ' || count(distinct site_id) filter (counted) || ' sites; left out: '
  || count(*) filter (phase = 'AS_FOUND' and not counted) || ' as-found rounds that do not count'
from test
where ($type is null or type = $type) and ($size is null or size_inch = $size)
  and ($zone is null or zone_id = $zone) and ($site is null or site_id = $site)
  and ($since is null or day >= $since) and ($until is null or day <= $until)
union all
select 'share_failed with the exact 95 % interval; expected_per_year: failures a year to expect '
  || 'of the assemblies that stand there now; p_twice_mean: that of the worst of them.'
union all
select case when count(*) = 0
  then 'No prior has been fitted yet: expected_per_year and P are empty.'
  when count(shape) = 0
  then 'The columns expected_per_year and p_twice_mean are empty; '
    || coalesce(max(note) filter (stratum = 'all'), 'no prior is identified') || '.'
  else 'Priors were fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC.' end
from fit join rate_prior using (stratum)
