-- What somebody should look at in the sheets of a run, worst first.
-- One row: one problem of course $1 on date $2
-- key: sheet, tab, row_number, column_letter, kind, read
-- severity: waits, doubtful, look or note
-- read: what the sheet says; expected: what would have been right; todo: what to do next
select distinct
    case problems.severity when 'waits' then 1 when 'doubtful' then 2 when 'look' then 3 else 4 end::integer as rank,
    coalesce(problems.severity, 'note')::varchar as severity,
    coalesce(problems.sheet, '')::varchar as sheet,
    coalesce(problems.tab, '')::varchar as tab,
    coalesce(problems.row_number, 0)::integer as row_number,
    coalesce(problems.column_letter, '')::varchar as column_letter,
    coalesce(problems.kind, '')::varchar as kind,
    coalesce(problems.read, '')::varchar as read,
    coalesce(problems.expected, '')::varchar as expected,
    coalesce(problems.todo, '')::varchar as todo
from main.problems as problems
where problems.course = $1 and problems.run_date = $2::date
order by rank, sheet, tab, row_number, column_letter, kind, read
