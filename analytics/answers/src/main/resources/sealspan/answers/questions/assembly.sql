-- title: What did this assembly read before?
-- asked by: tester
-- filter: assembly, required
-- filter: until
-- filter: limit = 5
-- caution: Limits are those of the criteria in force; the adopted code and the water purveyor decide.
with
  ranked as (
    select r.*,
      row_number() over (
        partition by r.component, r.measure
        order by r.day desc, r.phase desc, t.sequence desc, r.event_id desc) as age
    from reading r
    left join test t on t.event_id = r.event_id and t.assembly_id = r.assembly_id
    where r.assembly_id = $assembly and ($until is null or r.day <= $until))
select component, lower(replace(measure, '_', ' ')) as measure, day,
  lower(replace(phase, '_', ' ')) as phase,
  coalesce(entered_value, lower(replace(observation, '_', ' '))) as reading,
  case when entered_value is not null then entered_unit end as unit,
  limit_text as "limit", result, marginal
from ranked
where age <= $limit
order by component, measure, age
-- beneath
select concat_ws(', ', a.type, a.size_inch || ' inch', a.maker, a.model, 'serial ' || a.serial,
  'last passed ' || a.last_pass_on)
from assembly a where a.assembly_id = $assembly
union all
select 'Seals renewed: ' || coalesce(string_agg(component || ' on ' || day || ' ('
  || lower(replace(action, '_', ' ')) || ')', ', ' order by day desc, component), 'none on record')
from repair where assembly_id = $assembly and seal_renewed
  and ($until is null or day <= $until)
union all
select 'At most ' || $limit || ' readings of each component are shown, newest first.'
union all
select 'No assembly with this id is known.'
where not exists (from assembly where assembly_id = $assembly)
