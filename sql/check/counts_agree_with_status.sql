-- Only named finishers count, and only timed ones count for times.
select r.line_no, r.status, r.counts, r.runner_no, r.time_ms
from record.result r
where (r.counts & 3 > 0 and (r.runner_no = 0 or r.status not in (0, 2)))
   or (r.counts & 2 = 2 and (r.time_ms = 0 or r.status <> 0))
