-- Lines that somebody must give to a runner: of namesakes whom no age tells
-- apart (question > 0) and of people whom they fit badly (fit > 0).
-- key: line_no
select
    q.question,
    q.fit,
    q.runner_no,
    q.bits,
    l.line_no,
    n.text as name,
    l.age_text,
    b.text as club,
    l.time_ms,
    run.run_date,
    c.name as course,
    s.path,
    s.hash,
    p.tab,
    p.sheet_no,
    p.tab_index,
    l.row_number
from (
    select question, 0 as fit, 0 as runner_no, null::double as bits, line_no from record.namesake_line
    union all
    select 0, fit, runner_no, bits, line_no from record.thin_line
) q
join record.line l on l.line_no = q.line_no
join record.text n on n.text_no = l.name_no
join record.text b on b.text_no = l.club_no
join record.run run on run.run_no = l.run_no
join record.course c on c.course_no = run.course_no
join sheet.part p on p.part_no = l.part_no
join sheet.sheet s on s.sheet_no = p.sheet_no
order by q.question, q.fit, run.run_date, c.course, run.session, s.path, l.row_number
