-- title: What happened to the water of this zone?
-- asked by: utility engineer, analyst
-- filter: zone, required
-- filter: since
-- filter: until
-- filter: limit = 100
-- caution: A failure after a disturbance is not by that a failure because of it: more may have been tested then.
select day, what, until_day, result, details
from (
  select from_day as day, lower(replace(kind, '_', ' ')) as what, until_day, null as result,
    remarks as details, 0 as part, event_id
  from water_disturbance where zone_id = $zone
  union all
  select day, concat_ws(', ', characteristic, lower(fraction)), null,
    case when detection = 'MEASURED' then entered_value || coalesce(' ' || entered_unit, '')
      else lower(replace(detection, '_', ' ')) || coalesce(' (limit ' || detection_limit || ')', '')
    end,
    'station ' || station_id, 1, event_id
  from water_sample where zone_id = $zone)
where ($since is null or day >= $since) and ($until is null or coalesce(until_day, day) <= $until)
order by day desc nulls last, part, what, event_id
limit $limit
-- beneath
select 'n = ' || (select count(*) from water_disturbance where zone_id = $zone)
  || ' disturbances and ' || count(*) || ' sample results on record; '
  || count(*) filter (detection <> 'MEASURED')
  || ' results are censored (not detected or out of range), which is not zero'
from water_sample where zone_id = $zone
union all
select 'As-found rounds in the zone: ' || count(*) || ', failed ' || count(*) filter (outcome = 'FAILED')
  || ', by fouling ' || count(*) filter (failure_class = 'FOULING')
from test
where counted and zone_id = $zone
  and ($since is null or day >= $since) and ($until is null or day <= $until)
