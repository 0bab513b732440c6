-- title: What is known of this cluster of fouling?
-- asked by: utility engineer
-- filter: number, required
-- left out: events of water zones other than those of its sites, and before a year before it
-- caution: What came before a cluster need not be its cause: 'ask water --zone' shows what else there was.
-- caution: The ends of a cluster in place and time are uncertain; sites with a small share of the zones that score nearly as well may not belong to it.
-- caution: Inspecting upstream and flushing are for the water purveyor to decide; flushing itself may stir up deposits.
with
  c as (from fouling_cluster where number = $number),
  m as (from fouling_cluster_member where number = $number),
  visit as (
    select t.site_id, t.zone_id, t.day,
      max(case when t.failure_class = 'FOULING' then 3 when t.outcome = 'FAILED'
        and coalesce(t.failure_class, 'UNCLASSIFIED') <> 'DAMAGE' then 2
        when t.outcome = 'FAILED' then 1 else 0 end) as found,
      string_agg(distinct t.assembly_id, ', ' order by t.assembly_id) as assemblies,
      string_agg(distinct t.tester_id, ', ' order by t.tester_id) as testers
    from test t join m using (site_id), c
    where t.counted and t.phase = 'AS_FOUND' and t.exposure_days > 0
      and t.day between c.first_day and c.last_day
    group by t.site_id, t.zone_id, t.day),
  water as (
    select d.from_day as day, lower(replace(d.kind, '_', ' ')) as what, d.zone_id as place, d.event_id,
      case when d.latitude is not null and d.longitude is not null then round(6371.0088 * 2 * asin(sqrt(
          sin(radians(d.latitude - c.latitude) / 2) ** 2
          + cos(radians(c.latitude)) * cos(radians(d.latitude)) * sin(radians(d.longitude - c.longitude) / 2) ** 2)), 1)
        || ' km from its centre' end as far,
      d.remarks
    from water_disturbance d, c
    where d.zone_id in (select zone_id from m)
      and d.from_day between c.first_day - interval 365 day and c.last_day),
  sample as (
    select lower(concat_ws(', ', s.characteristic, s.fraction)) as what, s.entered_unit as unit, s.zone_id as place,
      s.day between c.first_day - interval 365 day and c.last_day as near,
      try_cast(s.entered_value as double) as value
    from water_sample s, c
    where s.zone_id in (select zone_id from m) and s.detection = 'MEASURED')
select day, what, place, result, details
from (
  select day, 'visit' as what, 'site ' || site_id as place,
    case found when 3 then 'fouling' when 2 then 'failed, not classified' when 1 then 'failed by damage'
      else 'passed' end as result,
    concat_ws('; ', assemblies, 'tester ' || testers) as details, 1 as part, site_id as tie
  from visit
  union all
  select day, what, 'zone ' || place, far, remarks, 0, event_id from water
  union all
  select null, 'samples: ' || what, 'zone ' || place,
    'median ' || round(median(value) filter (near), 3) || ', highest ' || round(max(value) filter (near), 3)
      || coalesce(' ' || unit, '') || ' of ' || count(value) filter (near),
    coalesce('otherwise median ' || round(median(value) filter (not near), 3) || ' of '
      || count(value) filter (not near), 'none at other times'), 2, what
  from sample group by what, unit, place having count(value) filter (near) > 0)
order by part = 2, day, part, place, what, tie, details
-- in words
select case when significant then 'Beyond chance: ' else 'Not beyond chance: ' end || cases
  || ' visits with a fouling failure where ' || round(expected, 1) || ' were expected'
  || coalesce(', ' || round(relative_risk, 1) || ' times the risk elsewhere', '') || '; ' || visits
  || ' visits to ' || sites || ' sites within ' || round(radius_km, 2) || ' km of '
  || round(latitude, 5) || ', ' || round(longitude, 5) || ', ' || first_day || ' to ' || last_day
  || '; p = ' || case when p < .001 then printf('%.1e', p) else printf('%.3f', p) end || ' ('
  || lower(replace(p_made_by, '_', ' ')) || ', ' || (select replicates from fouling_scan) || ' replicates, '
  || replicates_as_large || ' as large).'
from fouling_cluster where number = $number
union all
select 'There is no cluster ' || $number || ': ask clusters shows which there are.'
where not exists (from fouling_cluster where number = $number)
union all
select 'Sites, with the share of the zones scoring nearly as well that hold them: '
  || string_agg(site_id || ' (' || cases || ' of ' || visits || ', ' || round(100 * share_of_near_best)::int || ' %)', ', '
    order by cases desc, share_of_near_best desc, site_id) || '.'
from (from fouling_cluster_member where number = $number
  order by cases desc, share_of_near_best desc, site_id limit 12)
having count(*) > 0
union all
select 'Water before it: ' || case when count(d.event_id) = 0
  then 'no disturbance on record in the zones of its sites within a year before its end'
  else count(d.event_id) || case when count(d.event_id) = 1 then ' disturbance' else ' disturbances' end || ' in the zones of its sites, '
    || count(*) filter (exists (
      select 1 from test t join fouling_cluster_member m on m.number = $number and m.site_id = t.site_id
      where t.counted and t.phase = 'AS_FOUND' and t.exposure_days > 0 and t.failure_class = 'FOULING'
        and t.day between c.first_day and c.last_day and t.zone_id = d.zone_id
        and d.from_day between t.day - t.exposure_days and t.day))
    || ' of them between the last pass and the day of a round there that found fouling' end
  || '. Whether they go with fouling in general is another question: this is one place.'
from fouling_cluster c left join water_disturbance d
  on d.zone_id in (select zone_id from fouling_cluster_member where number = $number)
  and d.from_day between c.first_day - interval 365 day and c.last_day
where c.number = $number
group by c.number
union all
select 'What else could explain it: testers ('
  || string_agg(tester || ' made ' || fouled || ' of its ' || all_fouled || ' fouling findings and ' || made || ' of '
    || all_made || ' rounds', '; ' order by fouled desc, made desc, tester)
  || '); assemblies of one make or age; parts of one batch; work on the premises; sites that are each fouled again and again.'
from (
  select coalesce(t.tester_id, 'not recorded') as tester, count(*) as made,
    count(*) filter (t.failure_class = 'FOULING') as fouled,
    sum(count(*)) over () as all_made,
    sum(count(*) filter (t.failure_class = 'FOULING')) over () as all_fouled
  from test t join fouling_cluster_member m on m.number = $number and m.site_id = t.site_id
  join fouling_cluster c on c.number = $number
  where t.counted and t.phase = 'AS_FOUND' and t.exposure_days > 0 and t.day between c.first_day and c.last_day
  group by all order by fouled desc, made desc, tester limit 3)
having count(*) > 0
union all
select 'What to do next: look at what was found on the seats (grit, iron, scale) and at the strainers of these sites; ask operations '
  || 'what was done upstream in these days; have mains upstream inspected and flushed where that is agreed; bring the next '
  || 'tests of the sites above forward, those with a large share first.'
from fouling_cluster where number = $number
-- beneath
select 'n = ' || c.visits || ' site visits of ' || s.visits || ', ' || c.cases || ' with a fouling failure of ' || s.fouling_visits
  || '; left out of the scan: ' || s.visits_without_place || ' visits to sites without coordinates; '
  || c.near_best_zones || ' zones score nearly as well'
from fouling_cluster c, fouling_scan s where c.number = $number
union all
select 'Water is shown from a year before the cluster to its end, of the zones of its sites: disturbances by day, samples together.'
union all
select 'Visits are shown as they are now; the cluster was fitted on events recorded up to ' || newest_recorded_at || ' UTC.'
from fouling_fit
