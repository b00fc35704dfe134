-- One row a result that the desk has confirmed as a record, or declared void.
select
    c.course,
    run.run_date,
    nullif(run.session, '') as session,
    case when r.runner_no > 0 then 'R' || r.runner_no end as runner_id,
    s.state,
    s.line_no
from record.record_state s
join record.result r on r.line_no = s.line_no
join record.run run on run.run_no = r.run_no
join record.course c on c.course_no = run.course_no
