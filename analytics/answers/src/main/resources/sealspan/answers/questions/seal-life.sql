-- title: How long do seals last?
-- asked by: analyst, contractor, utility engineer
-- filter: type
-- left out: without --type, the strata of single types
-- left out: seals whose origin is unknown, where the estimator needs it: see the column
-- caution: Replaced for any reason and seal failed are two questions; never mix their figures.
-- caution: Failures are found at tests: the day of a failure lies somewhere between two tests.
select stratum, lower(replace(question, '_', ' ')) as question, quantity, figure, lower, upper,
  lower(replace(estimator, '_', ' ')) as estimator, seals, assemblies, endings, left_out_unknown_origin, longest_years,
  extrapolated_share, note
from seal_life
where case when $type is null then not starts_with(stratum, 'type=')
  else stratum = 'type=' || $type or starts_with(stratum, 'type=' || $type || ' ') end
order by case when stratum = 'all' then 0 else 1 end, stratum, question, quantity, seal_life.estimator
-- beneath
select 'n = ' || count(*) || ' seals, ' || count(*) filter (ended_by = 'REPLACED')
  || ' replaced, ' || count(*) filter (found_failed_on is not null) || ' found failed, '
  || count(*) filter (not origin_known) || ' of unknown origin (counted now, after the fit too)'
from seal where $type is null or type = $type
union all
select case when count(*) = 0
  then 'Nothing has been fitted yet.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC, by version '
    || max(code_version) || '.' end
from fit where stratum in (select stratum from seal_life)
