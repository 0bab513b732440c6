-- title: Which events and qualities of the water does fouling follow?
-- asked by: utility engineer, analyst
-- left out: see the counts beneath
-- caution: Something not recorded may stand behind both the water event and the fouling; the controls show some of it, not all.
-- caution: The day of a fouling lies somewhere between two tests; what came in that time counts, in the whole zone, near or far.
-- caution: A ratio of one town and its mains is no rule for another; what to flush or to inspect is for the water purveyor to decide.
select lower(replace(exposure, '_', ' ')) as what, lag as acting, lower(replace(method, '_', ' ')) as method,
  tests, fouled, exposed_tests, exposed_fouled, events, ratio, lower, upper, p, adjusted_p,
  future_ratio, future_lower, future_upper, other_zone_ratio, other_zone_lower, other_zone_upper,
  clustered_by, coalesce(because, '') as not_identified
from water_effect
order by place
-- in words
select words from (
  select place, upper(words[1]) || words[2:] || '.' as words from water_effect where ratio is not null
  union all
  select 0, case when not exists (from water_effect) then 'No fit has been made yet.'
    else 'Not identified for any event or quality of the water; why not stands beneath.' end
  where not exists (from water_effect where ratio is not null))
order by place
-- beneath
select 'n = ' || max(tests) || ' tests, ' || max(fouled) || ' fouled, in ' || max(zones) || ' water zones; '
  || count(ratio) || ' of ' || count(*) || ' questions have an answer'
from water_effect where method = 'INTERVAL_EXPOSURE' having count(*) > 0
union all
select 'Left out of ' || questions || ' of these questions: ' || left_out || '.'
from (select left_out, count(*) as questions from water_effect where left_out is not null group by left_out order by left_out)
union all
select 'Not identified: ' || string_agg(what || ' (' || lag || ')', ', ' order by place) || ': ' || because || '.'
from (select lower(replace(exposure, '_', ' ')) as what, lag, because, place from water_effect where because is not null)
group by because
union all
select 'Ratios are of rates of fouling, ' || string_agg(distinct compares, '; ' order by compares) || '.'
from water_effect where ratio is not null having count(*) > 0
union all
select 'Intervals of 95 % take as independent what clustered_by names: of tests, zones, and times between events, that which gives the widest. adjusted_p allows for all questions asked at once (Benjamini and Hochberg).'
union all
select 'Controls should show 1: the same events in an equally long time after the test, which cannot have caused what it found, and the same events in another zone.'
union all
select 'What counts: ' || rule from fouling_fit
union all
select 'Fitted on events recorded up to ' || newest_recorded_at || ' UTC, by version ' || code_version || '.'
from fouling_fit
