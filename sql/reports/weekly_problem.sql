-- What somebody should look at in the sheets of the runs asked for, worst first.
-- One row: one problem of a course on a day that has a run asked for
-- key: course, run_date, sheet, tab, row_number, column_letter, kind, read
-- severity: waits, doubtful, look or note
-- read: what the sheet says; expected: what would have been right; todo: what to do next; answers: its possible answers, as in sheet.problem
select distinct
    problems.course::varchar as course,
    problems.run_date::date as run_date,
    case problems.severity when 'waits' then 1 when 'doubtful' then 2 when 'look' then 3 else 4 end::integer as rank,
    coalesce(problems.severity, 'note')::varchar as severity,
    coalesce(problems.sheet, '')::varchar as sheet,
    coalesce(problems.tab, '')::varchar as tab,
    coalesce(problems.row_number, 0)::integer as row_number,
    coalesce(problems.column_letter, '')::varchar as column_letter,
    coalesce(problems.kind, '')::varchar as kind,
    coalesce(problems.read, '')::varchar as read,
    coalesce(problems.expected, '')::varchar as expected,
    coalesce(problems.todo, '')::varchar as todo,
    coalesce(problems.answers, '')::varchar as answers
from main.problems as problems
where (problems.course, problems.run_date) in (
    select (course.course, asked.run_date)
    from record.run as asked
    inner join record.course as course on course.course_no = asked.course_no
    where asked.run_no in /* runs */ (0)
) and problems.settled = ''
order by problems.course, problems.run_date, rank, sheet, tab, row_number, column_letter, kind, read
