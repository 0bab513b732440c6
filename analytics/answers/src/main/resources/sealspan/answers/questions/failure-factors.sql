-- title: What goes with higher failure rates?
-- asked by: utility engineer, manager
-- caution: What goes with a rate need not cause it.
select factor, level, tests, failures, failures / nullif(tests, 0) as share_failed, ratio, lower, upper,
  coalesce(note, '') as note
from rate_effect
order by factor, lower is not null, ratio desc, level
-- beneath
select case when count(*) = 0
  then 'No factors are fitted: it takes a fit with at least 50 failures of assemblies that differ.'
  else 'ratio: rate as a multiple of that of the base, all else equal, with a 95 % interval that allows '
    || 'for tests of one assembly being alike; drawn a little towards 1. Levels with fewer than 30 tests '
    || 'count with the base.' end
from rate_effect
