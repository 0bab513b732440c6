-- title: Clean, or renew the seal? One step ahead, by what such repairs led to
-- asked by: tester, contractor
-- filter: assembly, required
-- filter: found
-- filter: extra = 50
-- filter: revisit = 200
-- study: clean or renew
-- left out: what lies beyond the next yearly test, harm from an assembly that fails unseen, and this unit's own age and past: the figures are those of the cases named in the columns
-- caution: 50 and 200 are placeholders, no prices: give your own with --extra and --revisit. A part that must be replaced is replaced whatever this says.
-- caution: Close figures are a toss-up; so are figures from few cases.
-- caution: The maker's instructions, local codes and licensed practice decide; only parts approved for the listed assembly.
with
  part as (
    select distinct s.assembly_id, a.type, s.component
    from seal s join assembly a using (assembly_id)
    where s.assembly_id = $assembly and a.removed_on is null),
  figure as (
    select stratum, found, cleaned + renewed as cases,
      max(figure) filter (quantity = 'failing the next yearly test, had all been cleaned') as p_cleaned,
      max(figure) filter (quantity = 'failing the next yearly test, had all seals been renewed') as p_new_seal,
      max(figure) filter (quantity = 'difference, cleaned less renewed') as difference,
      max(lower) filter (quantity = 'difference, cleaned less renewed') as lower,
      max(upper) filter (quantity = 'difference, cleaned less renewed') as upper
    from repair_effect
    group by stratum, found, cleaned, renewed),
  wide as (
    select p.component, f.*,
      row_number() over (
        partition by p.component
        order by case when f.found = upper($found) then 0 else 1 end,
          case f.stratum
            when 'type=' || p.type || ' component=' || p.component then 0
            when 'component=' || p.component then 1
            when 'type=' || p.type then 2 else 3 end) as place
    from part p join figure f
      on f.stratum in ('all', 'type=' || p.type, 'component=' || p.component,
        'type=' || p.type || ' component=' || p.component)
    where f.difference is not null and f.found in ('ANY', upper($found)))
select p.component, coalesce(w.stratum, '-') as cases_like_it, coalesce(w.found, '-') as found,
  w.cases, w.p_cleaned, w.p_new_seal, w.difference, w.lower, w.upper,
  $extra as extra_cost, $revisit as revisit_cost,
  null::double as break_even_revisit, null::double as p_new_seal_cheaper,
  null::double as expected_saving, null::double as expected_regret,
  'not identified: too few such repairs, or no comparable ones' as verdict
from part p left join wide w on w.component = p.component and w.place = 1
order by p.component
-- beneath
select 'n = ' || count(*) || ' repairs of failed components of this assembly on record'
  || case when count(*) = 0 then '' else ', the last on ' || max(day) || ': '
    || arg_max(component || ', ' || lower(replace(coalesce(decision, 'other work'), '_', ' '))
      || case when failed_next is null then '' when failed_next
        then ', failed at the next test' else ', held at the next test' end, day) end
from repair_episode where assembly_id = $assembly
union all
select 'difference: risk of failing the next yearly test after cleaning less that after a new seal, '
  || 'with its 95 % interval; break_even_revisit: what a failure has to cost for both to cost the '
  || 'same; expected_saving: of a new seal; cases_like_it: the narrowest cases that tell.'
union all
select case when count(*) = 0 then 'Nothing has been fitted yet.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC.' end
from fit
