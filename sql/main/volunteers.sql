-- One row a person, role, course and day of volunteering.
select
    v.name,
    case when v.runner_no > 0 then 'R' || v.runner_no end as runner_id,
    v.role,
    v.course,
    v.run_date
from record.volunteer v
