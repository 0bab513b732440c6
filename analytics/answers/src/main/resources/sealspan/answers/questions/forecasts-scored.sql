-- title: How good were past forecasts?
-- asked by: everyone
-- filter: type
-- filter: since
-- filter: until
-- study: forecast scores
-- left out: forecasts whose assembly has not been tested since, those in whose place a later one came, and tests more than 24 months after the basis
-- caution: Forecasts are scored as they were issued; nothing that was recorded later has changed them.
select coalesce(type, 'not recorded') as "group", probability_then as probability,
  base_probability_then as base, failed
from frozen_forecast
where probability_then is not null
  and ($type is null or type = $type)
  and ($since is null or outcome_day >= $since) and ($until is null or outcome_day <= $until)
order by outcome_recorded_at, assembly_id, ledger_id
-- beneath
with chosen as (
  select * from frozen_forecast
  where ($type is null or type = $type)
    and ($since is null or outcome_day is null or outcome_day >= $since)
    and ($until is null or outcome_day is null or outcome_day <= $until))
select 'n = ' || count(*) || ' forecasts issued, ' || count(probability_then) || ' scored'
from chosen
union all
select 'Not scored: ' || string_agg(c || ' because: ' || note, '; ' order by note) || '.'
from (select note, count(*) as c from chosen where note is not null group by note)
having count(*) > 0
union all
select 'brier: mean squared miss, 0 best, = reliability (0 best) - resolution + uncertainty; '
  || 'skill: 1 - brier / that of the base rate of the type, 0 no better; log_score: 0 best; '
  || 'calibration_p: small where the probabilities are wrong (Spiegelhalter); '
  || 'monitor: bound on the chance of such a run if they are right, however often one looks.'
