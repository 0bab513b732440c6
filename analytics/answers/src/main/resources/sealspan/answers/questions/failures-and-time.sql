-- title: Do failures accumulate with the time between tests?
-- asked by: utility engineer
-- filter: type
-- caution: Where the interval excludes 1 no yearly rate is quoted and no advice on test intervals is given.
select stratum, mechanism, tests, failures, unclassified, coefficient, lower, upper,
  case quoted when 'PER_TEST' then 'a test' else 'a year' end as quoted, coalesce(note, '') as note
from exposure_power
where $type is null or stratum = 'type=' || $type
order by stratum <> 'all', stratum, mechanism
-- beneath
select case when count(*) = 0 then 'No fit has been made yet.'
  else 'Coefficient of the logarithm of exposure with its 95 % interval, clustered by assembly, that of '
    || 'types joint for all types: 1 means that failures accumulate evenly, 0 that the time between '
    || 'tests is of no account. unclassified: failed tests left out, as their mechanism is not known.' end
from exposure_power
