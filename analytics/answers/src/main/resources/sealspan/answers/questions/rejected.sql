-- title: Which rows did not go in, and why?
-- asked by: utility engineer, contractor
-- filter: source
-- filter: limit = 50
with standing as (
  select * from quarantined anti join (select puts_right as id from quarantined) using (id)
  where puts_right is null and ($source is null or source = $source))
select source, file, line, field, lower(kind) as kind, reason, row_text
from standing
order by source, file, line, field nulls first, id
limit $limit
-- beneath
select 'n = ' || count(*) || ' rows: ' || count(*) filter (kind = 'REJECTED') || ' rejected, '
  || count(*) filter (kind = 'CONFLICT')
  || ' in conflict with a report of the same number; '
  || (select case when count(*) = 0 then 'none has been put right since' else 'left out: '
      || count(*) || ' that ' || case when count(*) = 1 then 'was' else 'were' end
      || ' put right since' end
    from quarantined where puts_right is not null and ($source is null or source = $source))
from quarantined anti join (select puts_right as id from quarantined) using (id)
where puts_right is null and ($source is null or source = $source)
union all
select 'Put the row right in its file and import the file again, under the same name; what went in '
  || 'before stays as it is, and the row leaves this list.'
