-- Each sheet has as many lines as were read from it, those of lists of volunteers with them.
with
lines as (
    select part_no, count(*) as n
    from record.line
    group by part_no
),
helpers as (
    select part_no, count(*) as n
    from record.helper
    group by part_no
)
select s.sheet_no, s.path, s.rows, coalesce(sum(l.n), 0) + coalesce(sum(h.n), 0) as lines
from sheet.sheet s
left join sheet.part p on p.sheet_no = s.sheet_no
left join lines l on l.part_no = p.part_no
left join helpers h on h.part_no = p.part_no
group by s.sheet_no, s.path, s.rows
having s.rows <> coalesce(sum(l.n), 0) + coalesce(sum(h.n), 0)
