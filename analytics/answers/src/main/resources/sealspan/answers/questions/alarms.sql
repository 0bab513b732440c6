-- title: Where has the watch over fouling raised an alarm?
-- asked by: utility engineer
-- filter: since
-- filter: until
-- filter: limit = 20
-- left out: tests that were recorded more than 90 days after they were made, failures that could not be classified, and what became known before the first model was frozen
-- caution: An alarm says that fouling failures came oftener in a zone than the tests there let expect, not why. Look at its tests, at breaks and flushing nearby, at strainers and at what is upstream before work is planned; the water purveyor and the adopted code prevail.
-- caution: The stated time to a false alarm holds while the probabilities are not too low. They are set on the high side, where the true rate lies no higher with a probability of .9, which makes alarms somewhat later; the calibration beside each alarm says whether they held.
with raised as (
  select f[2] as alarm_id, f[3] as run, cast(f[4] as timestamp) as raised_at,
    f[7] as zone, f[8] as members, cast(f[9] as double) as multiplier, f[10] as since_day,
    cast(f[11] as integer) as tests, cast(f[12] as integer) as cases,
    cast(f[13] as double) as expected, f[14] as case_event_ids, cast(f[15] as double) as share,
    cast(f[16] as double) as tests_to_false_alarm, cast(f[17] as double) as years_to_false_alarm,
    cast(f[19] as integer) as elsewhere_cases, cast(f[20] as double) as elsewhere_expected,
    f[22] as promise_words
  from (select string_split(content, chr(9)) as f from ledger where kind = 'ALARM_RAISED')),
closed as (
  select split_part(content, chr(9), 2) as alarm_id, max(decided_at) as closed_at,
    max_by(split_part(content, chr(9), 3), (decided_at, id)) as why,
    max_by("by", (decided_at, id)) as closed_by
  from ledger where kind = 'ALARM_CLOSED' group by all)
select r.alarm_id,
  case when c.alarm_id is not null then 'closed' else 'open' end as state,
  case r.run when 'AS_KNOWN' then 'as known then' else 'restated' end as run,
  r.raised_at, r.zone, r.since_day as since, r.tests, r.cases, round(r.expected, 2) as expected,
  round(r.tests_to_false_alarm) as tests_to_false_alarm,
  round(r.years_to_false_alarm, 1) as years_to_false_alarm,
  r.elsewhere_cases, round(r.elsewhere_expected, 1) as elsewhere_expected,
  r.promise_words as calibration,
  coalesce(c.why || ' (' || c.closed_by || ')', '') as closed_because, r.members
from raised r left join closed c using (alarm_id)
where ($since is null or r.raised_at >= $since)
  and ($until is null or r.raised_at < cast($until as date) + 1)
order by r.raised_at desc, r.run, r.alarm_id
limit $limit
-- in words
with raised as (
  select string_split(content, chr(9)) as f from ledger where kind = 'ALARM_RAISED'
    and ($since is null or cast(cast(split_part(content, chr(9), 4) as timestamp) as date) >= $since)
    and ($until is null or cast(cast(split_part(content, chr(9), 4) as timestamp) as date) <= $until)),
newest as (select f from raised order by f[4] desc, f[3], f[2] limit $limit)
select f[7] || ': ' || f[12] || ' fouling failures of ' || f[11] || ' tests since the test of '
  || f[10] || ', where ' || round(cast(f[13] as double), 1) || ' were expected; raised '
  || f[4] || ' (' || case f[3] when 'AS_KNOWN' then 'as known then' else 'restated after corrections' end
  || '). ' || case when cast(f[15] as double) < .1 then 'The evidence is spread: this zone carries '
    || cast(round(100 * cast(f[15] as double)) as integer) || ' % of it only. ' else '' end
  || 'Elsewhere ' || f[22] || ' (' || f[19] || ' cases, ' || round(cast(f[20] as double), 1) || ' expected).'
  || coalesce((select ' Closed: ' || max_by(split_part(content, chr(9), 3), (decided_at, id)) || '.'
    from ledger where kind = 'ALARM_CLOSED' and split_part(content, chr(9), 2) = f[2]), ' Open.')
from newest
-- beneath
select 'n = ' || count(*) || ' alarms raised, ' || count(*) filter (exists (
    from ledger c where c.kind = 'ALARM_CLOSED'
      and split_part(c.content, chr(9), 2) = split_part(l.content, chr(9), 2))) || ' closed'
from ledger l where kind = 'ALARM_RAISED'
union all
select case run when 'AS_KNOWN' then 'As known then' else 'Restated' end || ': ' || tests
  || ' tests judged; frozen models: ' || models || ', the last of ' || model_frozen_at
  || ' UTC; ' || sites || ' sites in ' || zones || ' zones; alarms: ' || alarms || '; since the last model '
  || calibration_cases || ' fouling failures, ' || round(calibration_expected, 1) || ' expected'
  || coalesce(' (ratio ' || round(calibration_ratio, 2) || ', ' || round(calibration_lower, 2)
    || ' to ' || round(calibration_upper, 2) || ')', '') || ': ' || promise_words || '.'
from watch_state
union all
select 'A false alarm comes once in ' || cast(round(threshold) as bigint) || ' tests on average or less often: once in '
  || round(years_to_false_alarm, 1) || ' years at ' || cast(round(tests_per_year) as bigint) || ' tests a year.'
from watch_state where run = 'AS_KNOWN'
union all
select 'Sites without coordinates, so watched alone and in their water zone: ' || sites_without_place
  || ', such as ' || sites_without_place_named || '.'
from watch_state where run = 'AS_KNOWN' and sites_without_place > 0
union all
select 'Nothing is watched yet: a model is frozen after the first fit that knows site visits.'
where not exists (from watch_state)
