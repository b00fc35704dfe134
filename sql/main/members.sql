-- One row a membership of members.csv: who was whose member from when to when.
-- A person with two clubs has two rows, one of them of second claim.
select
    case when m.runner_no > 0 then 'R' || m.runner_no end as runner_id,
    coalesce(w.name, m.name) as name,
    m.club,
    m.claim,
    m.from_day as member_from,
    m.to_day as member_to,
    m.name as written,
    coalesce(w.birth_hi > (select max(run.run_date) from record.run as run) - interval 18 years, w.may_be_child, false) as protected,
    coalesce(w.hidden, false) as hidden
from record.member m
left join record.runner w on w.runner_no = m.runner_no
