-- Every runner number of a result is a runner.
select distinct r.runner_no
from record.result r
left join record.runner w on w.runner_no = r.runner_no
where r.runner_no > 0 and w.runner_no is null
