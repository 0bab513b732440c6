-- title: Which reports are invalid, suspicious or incomplete?
-- asked by: utility engineer
-- filter: check
-- filter: tester
-- filter: assembly
-- filter: since
-- filter: until
-- filter: limit = 50
-- caution: A finding is a reason to look, not a verdict on a person; a flagged report is kept, and counts where its results are performance results.
select day, assembly_id, report_number, tester_id, lower(replace(kind, '_', ' ')) as kind,
  check_name, finding
from finding
where ($check is null or check_name = $check) and ($tester is null or tester_id = $tester)
  and ($assembly is null or assembly_id = $assembly)
  and ($since is null or day >= $since) and ($until is null or day <= $until)
order by day desc nulls last, assembly_id, event_id, check_name, finding
limit $limit
-- beneath
select 'n = ' || count(*) || ' findings on ' || count(distinct event_id) || ' reports or events: '
  || coalesce((
    select string_agg(words, ', ' order by words)
    from (
      select count(*) || ' ' || check_name as words
      from finding
      where ($check is null or check_name = $check) and ($tester is null or tester_id = $tester)
        and ($assembly is null or assembly_id = $assembly)
        and ($since is null or day >= $since) and ($until is null or day <= $until)
      group by check_name)), 'none')
from finding
where ($check is null or check_name = $check) and ($tester is null or tester_id = $tester)
  and ($assembly is null or assembly_id = $assembly)
  and ($since is null or day >= $since) and ($until is null or day <= $until)
