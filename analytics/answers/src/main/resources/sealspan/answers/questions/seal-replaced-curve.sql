-- title: What share of seals has not been replaced by an age, for any reason?
-- asked by: analyst, contractor
-- filter: type
-- filter: component
-- chart: x=years y=share_in_place lower=lower upper=upper by=stratum draw=step from=0 to=1
-- x axis: age of the seal, years
-- y axis: share not yet replaced
-- left out: without --type, the strata of single types
-- caution: Replaced is not failed: scheduled replacements count too. See seal-failed-curve.
select stratum, round(days / 365.25, 3) as years, height as share_in_place, lower, upper,
  at_risk as weight_at_risk, endings as weight_replaced
from curve
where question = 'REPLACED_ANY_REASON' and estimator = 'WANG_CHANG'
  and (case when $type is null then starts_with(stratum, 'component=')
    else starts_with(stratum, 'type=' || $type || ' component=') end)
  and ($component is null or ends_with(stratum, 'component=' || $component))
order by stratum, days
-- beneath
select 'n = ' || sum(seals) || ' seals, ' || sum(endings) || ' replaced, ' || sum(left_out_unknown_origin)
  || ' left out because their origin is unknown; in ' || count(*) || ' strata'
from (
  select distinct stratum, seals, endings, left_out_unknown_origin
  from seal_life
  where question = 'REPLACED_ANY_REASON' and estimator = 'WANG_CHANG'
  and (case when $type is null then starts_with(stratum, 'component=')
    else starts_with(stratum, 'type=' || $type || ' component=') end)
  and ($component is null or ends_with(stratum, 'component=' || $component)))
having count(*) > 0
union all
select case when count(*) = 0
  then 'Nothing has been fitted yet, or too little ended to draw a curve.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC, by version '
    || max(code_version) || '.' end
from fit where stratum in (
  select stratum from curve where question = 'REPLACED_ANY_REASON' and estimator = 'WANG_CHANG'
  and (case when $type is null then starts_with(stratum, 'component=')
    else starts_with(stratum, 'type=' || $type || ' component=') end)
  and ($component is null or ends_with(stratum, 'component=' || $component)))
