-- title: After a failure, what would cleaning and what would a new seal have led to?
-- asked by: analyst, contractor, tester
-- filter: type
-- filter: component
-- filter: found
-- left out: see the counts; cases are components that had failed as found and were then cleaned alone or got a new seal, and whose next routine test is known; what was flushed until it passed, without a repair, is no case
-- caution: Whoever chose saw the part; what was seen and not recorded may still explain a difference: see the tipping point, the untouched components and alike-before-repair.
-- caution: A cleaning that did not take and was followed by a new seal in the same visit counts as cleaned: it is what deciding to clean led to.
-- caution: Fouling may clear itself; then a yearly share says less than the share of the next test.
-- caution: This is a figure of many repairs, no rule for one: the maker's instructions, local codes and licensed practice decide.
select quantity, figure, lower, upper, coalesce(note, '') as note
from repair_effect
where stratum = case
    when $type is null and $component is null then 'all'
    else concat_ws(' ', 'type=' || $type, 'component=' || $component) end
  and found = coalesce(upper($found), 'ANY') and place > 0 and not starts_with(quantity, 'left out')
order by place
-- in words
select case found when 'ANY' then '' when 'FOULING' then 'Debris, deposit or scale found: '
    when 'DAMAGE' then 'Damage found: ' when 'NOTHING_FOUND' then 'Nothing found: '
    else 'What was found is not known: ' end || note
from repair_effect
where stratum = case
    when $type is null and $component is null then 'all'
    else concat_ws(' ', 'type=' || $type, 'component=' || $component) end
  and ($found is null or found = upper($found)) and place = 0
order by case found when 'ANY' then 0 when 'FOULING' then 1 when 'DAMAGE' then 2
  when 'NOTHING_FOUND' then 3 else 4 end
-- beneath
with chosen as (
  select * from repair_effect
  where stratum = case
      when $type is null and $component is null then 'all'
      else concat_ws(' ', 'type=' || $type, 'component=' || $component) end
    and found = coalesce(upper($found), 'ANY'))
select 'n = ' || cleaned || ' cleaned, of which ' || cleaned_failed || ' failed at the next test, and '
  || renewed || ' with a new seal, of which ' || renewed_failed || ' failed; ' || assemblies
  || ' assemblies'
from chosen where place = 0
union all
select 'Left out: ' || string_agg(cast(cast(figure as integer) as varchar) || ' '
  || substr(quantity, 11), '; ' order by place) || '.'
from chosen where starts_with(quantity, 'left out')
union all
select 'Shares are of one year with 95 % intervals that take assemblies, not repairs, as '
  || 'independent; comparable cases are those that might as well have got the other action.'
union all
select case when count(*) = 0 then 'Nothing has been fitted yet.'
  when (select count(*) from chosen) = 0 then 'The last fit held no such repair.'
  else 'Fitted on events recorded up to ' || max(newest_recorded_at) || ' UTC, by version '
    || max(code_version) || '.' end
from fit
