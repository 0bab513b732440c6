-- Events in the log, by type: those of the segments, and those that no segment has yet.
select
  type,
  arrival,
  cast(sum(events) as bigint) as events,
  min(first_day) as first_day,
  max(last_day) as last_day,
  max(newest_recorded_at) as newest_recorded_at
from (
  select type, arrival, events, first_day, last_day, newest_recorded_at
  from own.segment_sum
  union all
  select type, arrival, count(*), min(valid_day), max(valid_day), max(recorded_at)
  from own.event join cut using ("partition")
  where own.event."offset" < cut.next_offset
  group by type, arrival)
group by type, arrival
order by type, arrival
