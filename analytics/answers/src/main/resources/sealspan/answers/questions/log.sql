-- title: What is in the log, and how old is each fit?
-- asked by: everyone
select what, number, first_day, last_day, newest_recorded_at, details
from (
  select 0 as part, type as what, sum(events)::bigint as number, min(first_day) as first_day,
    max(last_day) as last_day, max(newest_recorded_at) as newest_recorded_at,
    case when sum(events) filter (arrival = 'IMPORTED') > 0
      then sum(events) filter (arrival = 'IMPORTED') || ' imported as history' end as details
  from event_sum group by type
  union all
  select 1, 'fit of ' || stratum, assemblies, null, null, newest_recorded_at,
    concat_ws('; ', 'cut ' || cut_id, 'offsets ' || cut_offsets, 'version ' || code_version,
      'input ' || input_digest)
  from fit
  union all
  select 2, lower(replace(kind, '_', ' ')), count(*), null, null, max(decided_at), null
  from ledger group by kind)
order by part, what
-- beneath
select 'Cut: partition ' || "partition" || ' up to offset ' || next_offset
  || coalesce(', newest recorded ' || newest_recorded_at || ' UTC', '')
from (from cut order by "partition")
union all
select 'Generation ' || generation || ', made by version ' || code_version from publication
union all
select count(*) filter (puts_right is null) - count(puts_right)
  || ' rows are in quarantine (see the question rejected).' from quarantined
union all
select coalesce(sum(duplicates_ignored), 0)
  || ' events arrived again unchanged and were ignored.' from assembly
