-- title: How likely is each assembly to fail its next test?
-- asked by: tester, utility engineer, contractor
-- filter: type
-- filter: size
-- filter: zone
-- filter: site
-- filter: hazard
-- filter: assembly
-- filter: limit = 20
-- left out: removed assemblies
-- caution: A probability holds for a test on the due day, if nobody works on the assembly before; rules and intervals of the programme apply whatever it says.
-- caution: Drift and sudden failure are taken to be independent, and sudden failures to come evenly in time.
select f.assembly_id, a.site_id, a.type, a.size_inch, f.basis_day as last_passed, f.due_on,
  f.probability_fails as p_fails, f.probability_drift as p_drift,
  f.probability_sudden as p_sudden, f.driven_by, f.base_probability as p_of_its_type,
  f."probability6_months" as p_after_6_months, f."probability24_months" as p_after_24_months,
  f.readings, f.tests, f.sudden_failures,
  (select max(z.issued_at) from frozen_forecast z
    where z.assembly_id = f.assembly_id and z.basis_event_id = f.basis_event_id) as issued_at,
  coalesce(f.note, '') as note
from forecast f join assembly a using (assembly_id)
where ($type is null or a.type = $type) and ($size is null or a.size_inch = $size)
  and ($zone is null or a.zone_id = $zone) and ($site is null or a.site_id = $site)
  and ($hazard is null or a.hazard = $hazard)
  and ($assembly is null or a.assembly_id = $assembly)
order by f.probability_fails desc nulls last, f.due_on, f.assembly_id
limit $limit
-- beneath
with chosen as (
  select f.* from forecast f join assembly a using (assembly_id)
  where ($type is null or a.type = $type) and ($size is null or a.size_inch = $size)
    and ($zone is null or a.zone_id = $zone) and ($site is null or a.site_id = $site)
    and ($hazard is null or a.hazard = $hazard)
    and ($assembly is null or a.assembly_id = $assembly))
select 'n = ' || count(probability_fails) || ' assemblies with a forecast; of their next tests '
  || coalesce(round(sum(probability_fails), 1), 0) || ' are expected to fail; left out: '
  || count(*) filter (probability_fails is null) || ' without one'
from chosen
union all
select 'p_drift: a reading will have drifted below its limit; p_sudden: debris, damage and all '
  || 'that is not measured; driven_by: the greater part.'
union all
select case when count(*) = 0 then 'Nothing has been fitted yet.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC.' end
from fit
