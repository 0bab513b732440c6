-- title: Which rows did not go in, and why?
-- asked by: utility engineer, contractor
-- filter: source
-- filter: limit = 50
select source, file, line, field, lower(kind) as kind, reason, row_text
from quarantined
where $source is null or source = $source
order by source, file, line, field nulls first, id
limit $limit
-- beneath
select 'n = ' || count(*) || ' rows: ' || count(*) filter (kind = 'REJECTED') || ' rejected, '
  || count(*) filter (kind = 'CONFLICT')
  || ' in conflict with a report of the same number; none went in when it was first read'
from quarantined where $source is null or source = $source
union all
select 'Put the row right in its file and import the file again; what went in before stays as it is. '
  || 'A row that was put right stays in this list, as it stood.'
