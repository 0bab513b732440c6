-- Test rounds by what they were and how they ended.
select
  year(day) as year,
  type,
  size_inch,
  zone_id,
  phase,
  purpose,
  counted,
  compliant,
  outcome,
  failure_class,
  count(*) as rounds,
  count(distinct assembly_id) as assemblies
from test
group by all
order by all
