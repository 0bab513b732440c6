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
-- caution: Expected failures, ranks and P rest on the whole history, whatever days are asked for.
with
  round as not materialized (
    select site_id, outcome, failure_class
    from test
    where counted
      and ($type is null or type = $type) and ($size is null or size_inch = $size)
      and ($zone is null or zone_id = $zone) and ($site is null or site_id = $site)
      and ($since is null or day >= $since) and ($until is null or day <= $until)),
  present as not materialized (
    select assembly_id, site_id, site_label, zone_id
    from assembly
    where removed_on is null
      and ($type is null or type = $type) and ($size is null or size_inch = $size)
      and ($hazard is null or hazard = $hazard)),
  -- of very many sites first what orders them, then the rest of the few that are shown
  tested as (
    select site_id, count(*) as tests, count(*) filter (outcome = 'FAILED') as failed
    from round group by site_id),
  ranked as (
    select p.site_id, min(r.expected_rank) as best_rank
    from present p left join rate r using (assembly_id) group by p.site_id),
  worst as (
    select t.site_id, t.tests, t.failed, t.failed / t.tests as share_failed, k.best_rank
    from tested t join ranked k on k.site_id is not distinct from t.site_id
    order by k.best_rank nulls last, share_failed desc, t.tests desc, t.site_id
    limit $limit),
  fouled as (
    select r.site_id, count(*) filter (r.failure_class = 'FOULING') as fouling
    from round r semi join worst w on w.site_id is not distinct from r.site_id
    group by r.site_id),
  standing as (
    select s.site_id, min(s.site_label) as label, min(s.zone_id) as zone_id,
      count(*) as assemblies,
      sum(r.fails_within_year) as expected,
      -- lognormal with the mean and the variance of the sum
      sqrt(ln(1 + sum(r.fails_within_year_variance) / sum(r.fails_within_year) ** 2)) as spread,
      -- one common rate is wrong for all assemblies alike
      sum(r.fails_within_year_lower) filter (r.expected_from = 'COMMON_RATE') as common_lower,
      sum(r.fails_within_year_upper) filter (r.expected_from = 'COMMON_RATE') as common_upper,
      max(r.probability_double_mean) as p_twice_mean,
      arg_min(r.rank_lower, r.expected_rank) as rank_lower,
      arg_min(r.rank_upper, r.expected_rank) as rank_upper,
      max(r.probability_worst_ten) as p_worst_10,
      count(*) filter (r.listed) as listed
    from (
      select p.* from present p semi join worst w on w.site_id is not distinct from p.site_id) s
    left join rate r using (assembly_id)
    group by s.site_id)
select w.site_id, p.label, p.zone_id, p.assemblies, w.tests, w.failed, f.fouling,
  w.share_failed, null::double as lower, null::double as upper,
  p.expected as expected_failures,
  coalesce(p.common_lower, p.expected * exp(-p.spread ** 2 / 2 - 1.96 * p.spread))
    as expected_lower,
  coalesce(p.common_upper, p.expected * exp(-p.spread ** 2 / 2 + 1.96 * p.spread))
    as expected_upper,
  p.p_twice_mean, w.best_rank as expected_rank, p.rank_lower, p.rank_upper, p.p_worst_10, p.listed
from worst w
join fouled f on f.site_id is not distinct from w.site_id
join standing p on p.site_id is not distinct from w.site_id
order by w.best_rank nulls last, w.share_failed desc, w.tests desc, w.site_id
-- beneath
select 'n = ' || count(*) filter (counted) || ' as-found rounds at ' || count(distinct site_id) filter (counted) || ' sites; left out: '
  || count(*) filter (phase = 'AS_FOUND' and not counted) || ' as-found rounds that do not count'
from test
where ($type is null or type = $type) and ($size is null or size_inch = $size)
  and ($zone is null or zone_id = $zone) and ($site is null or site_id = $site)
  and ($since is null or day >= $since) and ($until is null or day <= $until)
union all
select 'share_failed with the exact 95 % interval; expected_failures of the assemblies that stand there '
  || 'now, each tested a year after a pass, with a 95 % interval; p_twice_mean, expected_rank and '
  || 'p_worst_10: those of the worst of them among all assemblies; listed: how many of them are '
  || 'claimed to fail at more than twice the mean rate.'
union all
select case when count(*) = 0
  then 'No fit has been made yet: expected failures, ranks and P are empty.'
  when max(lattice_step) is null
  then 'Ranks and P are empty, and expected_failures rests on the common rate of all assemblies, '
    || coalesce(round(max(common_per_year), 3)::varchar, 'unknown') || ' a year ('
    || coalesce(round(max(lower_per_year), 3)::varchar, '?') || ' to '
    || coalesce(round(max(upper_per_year), 3)::varchar, 'no upper end') || '); '
    || coalesce(max(note), '') || '.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC.' end
from fit join rate_prior using (stratum) where stratum = 'all'
union all
select case when count(site_correlation) = 0
  then 'How alike the assemblies of one site are is not known; intervals take them as independent.'
  else 'Outcomes of different assemblies of one site are correlated by '
    || round(max(site_correlation), 3) || '; intervals ignore it: it makes the variance of a site''s '
    || 'share ' || round(max(site_design_effect), 2) || ' times as large on average.' end
from rate_prior where stratum = 'all'
