-- title: What share of seals has not failed by an age?
-- asked by: analyst, utility engineer
-- filter: type
-- filter: component
-- chart: x=years y=share_not_failed lower=lower upper=upper also=at_least by=stratum draw=step from=0 to=1
-- x axis: age of the seal, years
-- y axis: share not failed
-- left out: without --type, the strata of single types
-- left out: strata with fewer than 5 failures; seals after the first at a position, which are not independent
-- caution: Failures are found at tests: between at_least and share_not_failed the data leave the curve open.
-- caution: This is not the share that was not replaced: see seal-replaced-curve.
select stratum, round(days / 365.25, 3) as years, height as share_not_failed,
  height_at_least as at_least, lower, upper, at_risk, endings as found_failed
from curve
where question = 'SEAL_FAILED' and estimator = 'TURNBULL'
  and (case when $type is null then starts_with(stratum, 'component=')
    else starts_with(stratum, 'type=' || $type || ' component=') end)
  and ($component is null or ends_with(stratum, 'component=' || $component))
order by stratum, days
-- beneath
select 'n = ' || sum(seals) || ' first seals, ' || sum(endings) || ' found failed, ' || sum(left_out_unknown_origin)
  || ' left out because their origin is unknown; in ' || count(*) || ' strata'
from (
  select distinct stratum, seals, endings, left_out_unknown_origin
  from seal_life
  where question = 'SEAL_FAILED' and estimator = 'TURNBULL'
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
  select stratum from curve where question = 'SEAL_FAILED' and estimator = 'TURNBULL'
  and (case when $type is null then starts_with(stratum, 'component=')
    else starts_with(stratum, 'type=' || $type || ' component=') end)
  and ($component is null or ends_with(stratum, 'component=' || $component)))
