-- title: How often did what was given a probability come true?
-- asked by: analyst, everyone
-- filter: type
-- filter: since
-- filter: until
-- study: forecast reliability
-- chart: x=said y=failed_share lower=band_lower upper=band_upper draw=points from=0
-- x axis: probability of failing, as issued
-- y axis: share that failed
-- left out: forecasts without a scored outcome, see the question forecasts-scored
-- caution: A share outside its band speaks against the probabilities; the bands hold one by one.
select coalesce(type, 'not recorded') as "group", probability_then as probability,
  base_probability_then as base, failed
from frozen_forecast
where probability_then is not null
  and ($type is null or type = $type)
  and ($since is null or outcome_day >= $since) and ($until is null or outcome_day <= $until)
order by outcome_recorded_at, assembly_id, ledger_id
-- beneath
select 'n = ' || count(*) || ' scored forecasts, pooled until the shares rise with the probability '
  || '(no bins); band: where the share would lie 95 times in 100 if every probability were right'
from frozen_forecast
where probability_then is not null
  and ($type is null or type = $type)
  and ($since is null or outcome_day >= $since) and ($until is null or outcome_day <= $until)
