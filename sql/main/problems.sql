-- One row a problem, with its place and what to do.
select
    s.path as sheet,
    p.tab,
    p.row_number,
    p.column_letter,
    case p.severity when 1 then 'waits' when 2 then 'doubtful' when 3 then 'look' else 'note' end as severity,
    p.kind,
    p.read,
    p.expected,
    p.todo,
    c.course,
    run.run_date,
    p.sheet_no
from sheet.problem p
left join sheet.sheet s on s.sheet_no = p.sheet_no
left join record.run run on run.run_no = p.run_no
left join record.course c on c.course_no = run.course_no
