-- One row a record held before the sheets, of history.csv.
select
    h.course,
    h.distance_m,
    h.sex,
    nullif(h.age_group, '') as age_group,
    h.time_s,
    coalesce(w.name, nullif(h.name, '')) as name,
    case when h.runner_no > 0 then 'R' || h.runner_no end as runner_id,
    h.run_date,
    h.protected or coalesce(w.birth_hi > h.run_date - interval 18 years, false) as protected,
    coalesce(w.hidden, false) as hidden,
    h.line
from record.held_record h
left join record.runner w on w.runner_no = h.runner_no
