-- One row a problem, with its place and what to do.
-- sheet: the sheet, or the table of the archive folder (history.csv) that it is about
with placed as (
    -- what is read of a table of the archive begins with its place: "history.csv, row 4: Ada Moss"
    select
        p.*,
        case when p.sheet_no = 0 then nullif(regexp_extract(p.read, '^(\w+\.csv), row \d+: ', 1), '') end as side_table,
        case when p.sheet_no = 0 then try_cast(regexp_extract(p.read, '^\w+\.csv, row (\d+): ', 1) as integer) end as side_row
    from sheet.problem p
)
select
    coalesce(s.path, p.side_table) as sheet,
    p.tab,
    coalesce(p.side_row, p.row_number) as row_number,
    p.column_letter,
    case p.severity when 1 then 'waits' when 2 then 'doubtful' when 3 then 'look' else 'note' end as severity,
    p.kind,
    case when p.side_row is null then p.read else regexp_replace(p.read, '^\w+\.csv, row \d+: ', '') end as read,
    p.expected,
    p.todo,
    c.course,
    run.run_date,
    p.sheet_no,
    p.run_no,
    coalesce(d.words, '') as settled,
    p.answers
from placed p
left join sheet.sheet s on s.sheet_no = p.sheet_no
left join (
    select sheet_no, tab, row_number, column_letter, kind, read, min(words) as words
    from sheet.settled
    group by all
) d on d.sheet_no = p.sheet_no and d.tab = p.tab and d.row_number = p.row_number and d.column_letter = p.column_letter
    and d.kind = p.kind and d.read = p.read
left join record.run run on run.run_no = p.run_no
left join record.course c on c.course_no = run.course_no
