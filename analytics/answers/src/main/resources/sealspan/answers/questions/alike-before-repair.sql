-- title: How alike were cleaned cases and cases with a new seal before?
-- asked by: analyst
-- filter: type
-- filter: component
-- filter: found
-- left out: what was not recorded, and who did the work: that moves the choice, not the seal
-- caution: Alike in what was recorded is not alike in what was seen.
select covariate, cleaned_mean, renewed_mean, difference_before,
  cleaned_weighted_mean, renewed_weighted_mean, difference_after
from repair_balance
where stratum = case
    when $type is null and $component is null then 'all'
    else concat_ws(' ', 'type=' || $type, 'component=' || $component) end
  and found = coalesce(upper($found), 'ANY')
order by abs(difference_before) desc nulls last, covariate
-- beneath
with chosen as (
  select * from repair_effect
  where stratum = case
      when $type is null and $component is null then 'all'
      else concat_ws(' ', 'type=' || $type, 'component=' || $component) end
    and found = coalesce(upper($found), 'ANY'))
select 'n = ' || cleaned || ' cleaned and ' || renewed || ' with a new seal'
from chosen where place = 0
union all
select case when quantity = 'in words' and starts_with(note, 'Not identified')
  then 'Nothing is compared here: ' || note end
from chosen where place = 0
union all
select 'Differences are in standard deviations, before and after overlap weights; below .1 they '
  || 'are commonly taken as nil (common practice, no source).'
