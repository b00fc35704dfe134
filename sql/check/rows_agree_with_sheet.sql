-- Each sheet has as many lines as were read from it.
select s.sheet_no, s.path, s.rows, count(l.line_no) as lines
from sheet.sheet s
left join sheet.part p on p.sheet_no = s.sheet_no
left join record.line l on l.part_no = p.part_no
group by s.sheet_no, s.path, s.rows
having s.rows <> count(l.line_no)
