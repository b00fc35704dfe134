-- No runner counts twice in one run.
select r.runner_no, r.run_no, count(*) as times
from record.result r
where r.runner_no > 0 and r.counts & 1 = 1
group by r.runner_no, r.run_no
having count(*) > 1
