-- title: What share passes as found, by type, size and age?
-- asked by: utility engineer, analyst
-- filter: type
-- filter: size
-- filter: zone
-- filter: site
-- filter: since
-- filter: until
-- study: exact share passed of tests into lower, upper
-- left out: rounds that do not count: not routine, not as found, retests, not testable, undecided
-- caution: The interval takes tests as independent; repeated tests of one assembly are not, so it is too narrow.
-- caution: A round that fails compliance alone (gauge, certificate, installation) did not fail on performance; both counts are shown.
with
  counted_round as (
    select type, size_inch, outcome <> 'FAILED' as passed, compliant,
      case
        when age_days is null then 'age not known'
        when age_days < 1826 then 'under 5 years'
        when age_days < 3652 then '5 to 10 years'
        when age_days < 7305 then '10 to 20 years'
        else 'over 20 years'
      end as age,
      case
        when age_days is null then 9
        when age_days < 1826 then 1
        when age_days < 3652 then 2
        when age_days < 7305 then 3
        else 4
      end as age_place
    from test
    where counted
      and ($type is null or type = $type) and ($size is null or size_inch = $size)
      and ($zone is null or zone_id = $zone) and ($site is null or site_id = $site)
      and ($since is null or day >= $since) and ($until is null or day <= $until)),
  sums as (
    select grouping(type) as any_type, grouping(size_inch) as any_size, grouping(age) as any_age,
      type, size_inch, age, age_place, count(*) as tests, count(*) filter (passed) as passed,
      count(*) filter (compliant) as compliant_tests,
      count(*) filter (compliant and passed) as compliant_passed
    from counted_round
    group by grouping sets ((), (type), (type, size_inch), (type, age, age_place))),
  share as (
    select 'all' as rounds, * from sums
    union all
    select 'compliant', * replace (compliant_tests as tests, compliant_passed as passed) from sums)
select
  case when any_type = 1 then 'all' else coalesce(type, 'not recorded') end as type,
  case when any_size = 1 then 'all' else coalesce(size_inch, 'not recorded') end as size_inch,
  case when any_age = 1 then 'all' else age end as age,
  rounds, tests, passed, passed / tests as share_passed,
  null::double as lower, null::double as upper
from share
where tests > 0
order by any_type desc, share.type nulls last,
  case when any_size = 1 and any_age = 1 then 0 when any_age = 1 then 1 else 2 end,
  try_cast(share.size_inch as double) nulls last, share.size_inch, age_place, rounds
-- beneath
select 'n = ' || count(*) filter (counted) || ' rounds of '
  || count(distinct assembly_id) filter (counted) || ' assemblies, '
  || count(*) filter (counted and not compliant) || ' of them with something against compliance; '
  || 'left out: ' || count(*) filter (phase = 'AS_FOUND' and not counted)
  || ' as-found rounds that do not count'
from test
where ($type is null or type = $type) and ($size is null or size_inch = $size)
  and ($zone is null or zone_id = $zone) and ($site is null or site_id = $site)
  and ($since is null or day >= $since) and ($until is null or day <= $until)
union all
select 'share_passed with the exact 95 % interval; rounds: all counted ones, and those alone with '
  || 'nothing against compliance.'
