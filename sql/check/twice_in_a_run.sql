-- No runner counts twice in one run.
select r.runner_no, l.run_no, count(*) as times
from record.result r
join record.line l on l.line_no = r.line_no
where r.runner_no > 0 and r.counts & 1 = 1
group by r.runner_no, l.run_no
having count(*) > 1
