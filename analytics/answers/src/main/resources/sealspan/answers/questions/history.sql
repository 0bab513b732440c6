-- title: What happened to this assembly, in order?
-- asked by: tester, utility engineer
-- filter: assembly, required
-- filter: since
-- filter: until
-- caution: A component that was not reached or not tested is UNKNOWN, never passed.
with
  line as (
    select day, visit_id, sequence, event_id,
      case phase when 'AS_LEFT' then 3 else 1 end as place, 0 as part,
      case phase when 'AS_LEFT' then 'test as left' else 'test as found' end as what,
      null as component,
      concat_ws(' ', outcome, case when marginal then '(marginal)' end) as result,
      concat_ws('; ', reason, 'verdict as issued ' || verdict_issued,
    case when counted then '' else 'not counted: ' end || not_counted_because,
        'exposure ' || exposure_days || ' days' || coalesce((
          select ' (' || e.in_service_days || ' in service)' from exposure e
          where e.assembly_id = $assembly and e.event_id = test.event_id
            and e.component = 'whole' and e.in_service_days < e.exposure_days), ''),
        'report ' || report_number) as details
    from test where assembly_id = $assembly
    union all
    select r.day, t.visit_id, t.sequence, r.event_id,
      case r.phase when 'AS_LEFT' then 3 else 1 end,
      row_number() over (partition by r.event_id order by r.component, r.measure),
      'reading', r.component,
      concat_ws(' ', r.result, case when r.marginal then '(marginal)' end),
      concat_ws(' ', lower(replace(r.measure, '_', ' ')) || ':',
        coalesce(r.entered_value || ' ' || r.entered_unit, lower(replace(r.observation, '_', ' '))),
        '(limit ' || r.limit_text || ')')
    from reading r left join test t on t.event_id = r.event_id and t.assembly_id = r.assembly_id
    where r.assembly_id = $assembly
    union all
    select day, visit_id, null, event_id, 2, item, 'repair', component,
      coalesce('retest ' || retest_result, 'next ' || next_result),
      concat_ws('; ', lower(replace(action, '_', ' ')),
        'failed by ' || lower(replace(failure_mode, '_', ' ')),
        'found ' || lower(replace(mechanism, '_', ' ')),
        'because of ' || lower(replace(cause, '_', ' ')), 'parts ' || parts,
        'seal replaced: ' || lower(replace(replacement_reason, '_', ' ')))
    from repair where assembly_id = $assembly
    union all
    select day, visit_id, null, event_id, 4, 0, 'job', null, null,
      concat_ws('; ', 'contract ' || contract_id,
        'invoiced ' || invoiced_minor || ' minor units ' || currency)
    from job where assembly_id = $assembly
    union all
    select day, null, null, event_id, 0, 0,
      lower(regexp_replace(kind, '([a-z])([A-Z])', '\1 \2', 'g')), null, null, description
    from occurrence where assembly_id = $assembly
    union all
    select day, null, null, event_id, 5,
      row_number() over (partition by event_id order by check_name, finding),
      'finding', null, kind, finding
    from finding where assembly_id = $assembly
  )
select day, what, component, result,
  case when what not in ('reading', 'finding') then event_id end as event_id, details
from line
where ($since is null or day >= $since) and ($until is null or day <= $until)
order by day, case when place = 5 then 1 else 0 end, visit_id nulls first, place, sequence, event_id,
  part
-- beneath
select concat_ws(', ', a.type, a.size_inch || ' inch', a.maker, a.model, 'serial ' || a.serial)
  || concat_ws(', ', '; at site ' || a.site_id, a.site_label, 'zone ' || a.zone_id)
from assembly a where a.assembly_id = $assembly
union all
select n || ' events; '
  || duplicates || ' that arrived again unchanged were ignored'
from (select events as n, duplicates_ignored as duplicates
  from assembly where assembly_id = $assembly)
union all
select 'No assembly with this id is known.'
where not exists (from assembly where assembly_id = $assembly)
