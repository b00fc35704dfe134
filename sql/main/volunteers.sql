-- One row a person, role, course and day of volunteering.
select
    coalesce(w.name, v.name) as name,
    case when v.runner_no > 0 then 'R' || v.runner_no end as runner_id,
    v.role,
    v.course,
    v.run_date,
    coalesce(w.birth_hi > v.run_date - interval 18 years, w.may_be_child, v.protected, false) as protected,
    coalesce(w.hidden, v.hidden, false) as hidden,
    nullif(v.days, 0) as days_so_far,
    nullif(v.milestone, 0) as milestone,
    v.listed_at
from record.volunteer v
left join record.runner w on w.runner_no = v.runner_no
