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
    p.sheet_no,
    p.run_no,
    coalesce(d.words, '') as settled
from sheet.problem p
left join sheet.sheet s on s.sheet_no = p.sheet_no
left join (
    select sheet_no, tab, row_number, column_letter, kind, read, min(words) as words
    from sheet.settled
    group by all
) d on d.sheet_no = p.sheet_no and d.tab = p.tab and d.row_number = p.row_number and d.column_letter = p.column_letter
    and d.kind = p.kind and d.read = p.read
left join record.run run on run.run_no = p.run_no
left join record.course c on c.course_no = run.course_no
