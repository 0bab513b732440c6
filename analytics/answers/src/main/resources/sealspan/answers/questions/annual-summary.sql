-- title: What goes into the annual report?
-- asked by: utility engineer
-- filter: year, required
-- filter: zone
-- filter: site
-- study: exact share passed_first of tested into lower, upper
-- left out: assemblies that are inspected, never tested: atmospheric vacuum breakers and air gaps
-- caution: Type, hazard and site are those of today's record of the assembly, not of the day.
with
  present as (
    select *
    from assembly
    where coalesce(type, '') not in ('AVB', 'AG')
      and coalesce(record_begins, make_date($year, 1, 1)) <= make_date($year, 12, 31)
      and (removed_on is null or removed_on >= make_date($year, 1, 1))
      and ($zone is null or zone_id = $zone) and ($site is null or site_id = $site)),
  rounds as (
    select assembly_id,
      min_by(outcome, (day, coalesce(sequence, 1), event_id)) filter (phase = 'AS_FOUND') as first,
      max_by(outcome, (day, phase, coalesce(sequence, 1), event_id)) as last
    from test
    where day between make_date($year, 1, 1) and make_date($year, 12, 31)
      and outcome in ('PASSED', 'FAILED', 'FAILED_COMPLIANCE')
    group by assembly_id),
  repaired as (
    select distinct assembly_id from repair
    where day between make_date($year, 1, 1) and make_date($year, 12, 31)
      and action is not null and action <> 'NONE'),
  sums as (
    select grouping(p.type, p.hazard) as total, p.type, p.hazard,
      count(*) as assemblies,
      count(t.first) as tested,
      count(*) filter (t.first = 'PASSED') as passed_first,
      count(*) filter (t.first = 'FAILED') as failed_performance,
      count(*) filter (t.first = 'FAILED_COMPLIANCE') as failed_compliance,
      count(r.assembly_id) as repaired,
      count(*) filter (t.last <> 'PASSED') as not_passed_at_end,
      count(*) filter (t.first is null) as not_tested
    from present p
    left join rounds t using (assembly_id)
    left join repaired r using (assembly_id)
    group by grouping sets ((), (p.type, p.hazard)))
select
  case when total > 0 then 'all' else coalesce(type, 'not recorded') end as type,
  case when total > 0 then 'all' else coalesce(hazard, 'not recorded') end as hazard,
  assemblies, tested, passed_first,
  case when tested > 0 then passed_first / tested end as share_passed,
  null::double as lower, null::double as upper,
  failed_performance, failed_compliance, repaired, not_passed_at_end, not_tested
from sums
order by total, sums.type nulls last, sums.hazard nulls last
-- beneath
select 'assemblies: on record and not removed before ' || $year
  || '; tested: with a finished as-found round in the year; passed_first: passed that first round; '
  || 'not_passed_at_end: tested, and the last round of the year was no pass.'
union all
select 'Visits without a test in the year: ' || count(*)
from occurrence
where kind = 'VisitAttempted' and day between make_date($year, 1, 1) and make_date($year, 12, 31)
union all
select 'Inspected, never tested: ' || count(*) || ' assemblies'
from assembly where type in ('AVB', 'AG') and ($zone is null or zone_id = $zone)
  and ($site is null or site_id = $site)
