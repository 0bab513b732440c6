-- title: Which readings are drifting towards their limit?
-- asked by: tester, utility engineer
-- filter: type
-- filter: zone
-- filter: site
-- filter: assembly
-- filter: limit = 20
-- left out: removed assemblies, components that are only seen to be tight or not, and components that failed or were worked on since their last reading
-- caution: A level is what readings since the last action tell, not a reading; a sudden failure may come before any drift gets there.
-- caution: Where one gauge reads nearly all assemblies, all levels may be off together by its error between calibrations: then the intervals of levels are too narrow.
-- caution: Failing a field test is not proof of backflow; the adopted code and the water purveyor decide.
select l.assembly_id, a.site_id, a.type, l.component, lower(replace(l.measure, '_', ' ')) as measure,
  l.day as last_read_on, l.readings, l.read_psi, l.limit_psi,
  l.level_psi, l.level_lower_psi, l.level_upper_psi,
  l.drift_per_year, l.drift_lower_per_year, l.drift_upper_per_year,
  f.due_on as next_test_due,
  l.probability_reading_below as p_reads_below, l.probability_level_below as p_is_below,
  coalesce(l.note, '') as note
from level l join assembly a using (assembly_id) left join forecast f using (assembly_id)
where l.level_psi is not null
  and ($type is null or a.type = $type) and ($zone is null or a.zone_id = $zone)
  and ($site is null or a.site_id = $site) and ($assembly is null or a.assembly_id = $assembly)
order by l.probability_reading_below desc nulls last, l.level_psi - l.limit_psi, l.assembly_id,
  l.component, l.measure
limit $limit
-- beneath
with chosen as (
  select l.*, a.type from level l join assembly a using (assembly_id)
  where ($type is null or a.type = $type) and ($zone is null or a.zone_id = $zone)
    and ($site is null or a.site_id = $site) and ($assembly is null or a.assembly_id = $assembly))
select 'n = ' || count(level_psi) || ' components of ' || count(distinct assembly_id)
  filter (level_psi is not null) || ' assemblies, with '
  || coalesce(sum(readings) filter (level_psi is not null), 0)
  || ' readings since the last action; left out: ' || count(*) filter (level_psi is null)
  || ' components of whose type no drift is known' || coalesce(' ('
  || min(note) filter (level_psi is null) || ')', '')
from chosen
union all
select 'level and drift: psi and psi a year with 95 % intervals, drawn towards the type; '
  || 'p_reads_below: probability that the reading is below the limit when the next test is due; '
  || 'p_is_below: that the true level is, whatever the gauge says.'
union all
select stratum || ' ' || component || ': '
  || case when drift_per_year is null then 'no drift: ' || note
    else 'on average ' || round(drift_per_year, 3) || ' psi a year'
      || coalesce(' (95 % ' || round(drift_lower_per_year, 3) || ' to '
        || round(drift_upper_per_year, 3) || ')', '') || ', between units +-'
      || round(drift_sd_per_year, 3) || ', wander ' || round(wander_psi, 3)
      || ' psi in a year; n = ' || steps || ' steps of ' || assemblies || ' assemblies' end
from (from drift where $type is null or stratum = 'type=' || $type order by stratum, component)
