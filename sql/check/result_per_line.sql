-- Every line has exactly one result.
select l.line_no, count(r.line_no) as results
from record.line l
left join record.result r on r.line_no = l.line_no
group by l.line_no
having count(r.line_no) <> 1
