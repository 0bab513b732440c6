-- title: How often do assemblies fail, by type?
-- asked by: utility engineer, manager
-- left out: rounds that do not count (not routine, not as found, not testable) and rounds without a known earlier pass, which have no exposure
-- caution: The intervals take all assemblies of a row to share one rate, so they are too narrow where assemblies differ.
select p.stratum, p.assemblies, p.tests, p.failures,
  round(p.exposure_days / 365.25, 1) as exposure_years,
  p.failures / nullif(p.tests, 0) as share_failed,
  case when e.quoted = 'PER_TEST' then null else p.common_per_year end as per_year,
  case when e.quoted = 'PER_TEST' then null else p.lower_per_year end as lower,
  case when e.quoted = 'PER_TEST' then null else p.upper_per_year end as upper,
  p.compliant_tests, p.compliant_failures,
  case when e.quoted = 'PER_TEST' then null else p.compliant_per_year end as compliant_per_year,
  case when e.quoted = 'PER_TEST' then null else p.compliant_lower_per_year end as compliant_lower,
  case when e.quoted = 'PER_TEST' then null else p.compliant_upper_per_year end as compliant_upper,
  1 / sqrt(p.shape) as rates_vary_by,
  case when e.quoted = 'PER_TEST'
    then 'failures do not accumulate evenly with time: shares per test only; ' else '' end
    || coalesce(p.note, '') as note
from rate_prior p
left join exposure_power e on e.stratum = p.stratum and e.mechanism = 'ALL'
order by p.stratum <> 'all', p.stratum
-- beneath
select case when count(*) = 0 then 'No fit has been made yet.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC. per_year: failures a year '
    || 'with a 95 % interval, all rounds; compliant: without rounds whose gauge or certificate had '
    || 'expired; rates_vary_by: coefficient of variation of the rates between assemblies (gamma).' end
from fit join rate_prior using (stratum)
union all
select case when count(spline_likelihood) = 0 then 'No prior was fitted to all assemblies together.'
  else 'Prior of all assemblies: log-likelihood ' || round(max(spline_likelihood), 1)
    || ' as a smooth curve, ' || coalesce(round(max(gamma_likelihood), 1)::varchar, 'none') || ' as a gamma distribution, at '
    || 'most ' || round(max(highest_likelihood), 1) || ' by any prior.' end
from rate_prior where stratum = 'all'
