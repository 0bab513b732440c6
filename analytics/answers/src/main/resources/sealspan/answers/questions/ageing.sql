-- title: Do parts wear, and how much of it does a repair undo?
-- asked by: contractor, utility engineer, analyst
-- filter: type
-- left out: parts of unknown origin: see the column
-- left out: without --type, the strata of single types
-- caution: Where separates is no, the data cannot tell cleaning from a new seal through ageing.
-- caution: Who is cleaned and who gets a new seal is chosen by what was seen; this is a model, not a trial.
-- caution: A repair that leaves 0 % makes as good as new, 100 % as bad as old.
select stratum, lower(replace(model, '_', ' ')) as model, fits_better, separates,
  components, failures, left_out_unknown_origin as left_out,
  shape, shape_lower, shape_upper, scale_years,
  kept_seal_share, kept_seal_lower, kept_seal_upper,
  new_seal_share, new_seal_lower, new_seal_upper, frailty_variance, note
from ageing
where shape is not null and case when $type is null then not starts_with(stratum, 'type=')
  else starts_with(stratum, 'type=' || $type || ' ') end
order by stratum, ageing.model
-- beneath
select 'The two models differ in what a repair leaves: kijima i a share of the age since the repair'
  || ' before, kijima ii a share of the whole age. fits_better: the smaller AIC of the two.'
union all
select line from (
  select 'No figures for ' || string_agg(distinct stratum, ', ' order by stratum) || ': ' || note as line
  from ageing
  where shape is null and case when $type is null then not starts_with(stratum, 'type=')
    else starts_with(stratum, 'type=' || $type || ' ') end
  group by note
  order by line)
union all
select line from (
  select stratum || ', ' || lower(replace(action, '_', ' ')) || ': ' || failed || ' of ' || retests
    || ' failed again in the same visit'
    || coalesce(' (' || round(100 * share, 1) || ' %, 95 % interval ' || round(100 * lower, 1)
      || ' to ' || round(100 * upper, 1) || ')', '') as line
  from retest
  where contains(stratum, 'component=') and case when $type is null
    then not starts_with(stratum, 'type=') else starts_with(stratum, 'type=' || $type || ' ') end
  order by stratum, action)
union all
select case when count(*) = 0
  then 'Nothing has been fitted yet.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC, by version '
    || max(code_version) || '.' end
from fit where stratum in (select stratum from ageing)
