-- title: What was fitted here before, and what may be needed?
-- asked by: tester
-- filter: site, required
-- filter: until
-- caution: Only parts approved for the listed assembly; the maker's instructions go first.
-- caution: Before any shutdown: permission, alarm and fire authority told where it is a fire line, pressure relieved on both sides, vault air tested. Local codes and licensed practice decide.
select a.assembly_id, a.type, a.size_inch, a.maker, a.model, r.component,
  lower(replace(r.action, '_', ' ')) as action, r.parts,
  count(r.day) as times, max(r.day) as last_on,
  any_value(q.fails_within_year) as p_fails_within_a_year,
  any_value(q.fails_within_year_lower) as p_lower,
  any_value(q.fails_within_year_upper) as p_upper
from assembly a
left join repair r
  on r.assembly_id = a.assembly_id and r.action is not null and r.action <> 'NONE'
    and ($until is null or r.day <= $until)
left join rate q on q.assembly_id = a.assembly_id
where a.site_id = $site and a.removed_on is null
group by a.assembly_id, a.type, a.size_inch, a.maker, a.model, r.component, r.action, r.parts
order by a.assembly_id, r.component nulls last, last_on desc nulls last, r.action, r.parts
-- beneath
select 'n = ' || count(*) || ' assemblies stand at this site; ' || count(*) filter (last_test_on is null)
  || ' were never tested on this record; parts without a kit number were not recorded with one'
from assembly where site_id = $site and removed_on is null
union all
select 'p_fails_within_a_year: that a test a year after a pass fails, with the 95 % interval of this '
  || 'probability.'
union all
select case when count(*) = 0
  then 'No fit has been made yet: the probabilities are empty.'
  when max(lattice_step) is null
  then 'The probabilities rest on the common rate of all assemblies; ' || coalesce(max(note), '') || '.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC.' end
from fit join rate_prior using (stratum) where stratum = 'all'
