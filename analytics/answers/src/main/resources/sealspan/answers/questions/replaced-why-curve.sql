-- title: What share of first seals has been replaced by an age, and for which reason?
-- asked by: analyst, contractor
-- filter: type
-- filter: component
-- chart: x=years y=share_ended lower=lower upper=upper by=stratum,reason draw=step from=0 to=1
-- x axis: age of the seal, years
-- y axis: share ended for the reason
-- left out: without --type, the strata of single types
-- left out: strata in which fewer than 5 first seals came to their end; seals after the first at a position
-- caution: Reasons compete: what is replaced on schedule can no longer fail.
select stratum, lower(replace(reason, '_', ' ')) as reason, round(days / 365.25, 3) as years,
  height as share_ended, lower, upper, at_risk, endings as ended
from curve
where question = 'REPLACED_ANY_REASON' and estimator = 'AALEN_JOHANSEN'
  and (case when $type is null then starts_with(stratum, 'component=')
    else starts_with(stratum, 'type=' || $type || ' component=') end)
  and ($component is null or ends_with(stratum, 'component=' || $component))
order by stratum, reason, days
-- beneath
select 'n = ' || sum(seals) || ' first seals, ' || sum(endings) || ' ended, ' || sum(left_out_unknown_origin)
  || ' left out because their origin is unknown; in ' || count(*) || ' strata'
from (
  select distinct stratum, seals, endings, left_out_unknown_origin
  from seal_life
  where question = 'REPLACED_ANY_REASON' and estimator = 'AALEN_JOHANSEN'
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
  select stratum from curve where question = 'REPLACED_ANY_REASON' and estimator = 'AALEN_JOHANSEN'
  and (case when $type is null then starts_with(stratum, 'component=')
    else starts_with(stratum, 'type=' || $type || ' component=') end)
  and ($component is null or ends_with(stratum, 'component=' || $component)))
