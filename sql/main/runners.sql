-- One row a runner. Part of the contract with other programs.
with
    latest as (
        select max(run_date) as day from record.run
    ),
    n as (
        select
            r.runner_no,
            count(*) filter (r.counts & 1 = 1) as results,
            min(run.run_date) filter (r.counts & 1 = 1) as first_run,
            max(run.run_date) filter (r.counts & 1 = 1) as last_run,
            min((r.time_ms + 999) // 1000) filter (r.counts & 2 = 2 and run.distance_m = 5000) as best_s
        from record.result r
        join record.run run on run.run_no = r.run_no
        where r.runner_no > 0
        group by r.runner_no
    )
select
    'R' || w.runner_no as runner_id,
    w.name,
    i.form_s,
    i.form_low,
    i.form_high,
    case w.sex when 1 then 'M' when 2 then 'W' when 3 then 'X' end as sex,
    nullif(w.club, '') as club,
    coalesce(n.results, 0) as results,
    n.first_run,
    n.last_run,
    n.best_s::integer as best_s,
    5000 as best_distance_m,
    coalesce(w.birth_hi > latest.day - interval 18 years, w.may_be_child, false) as protected,
    w.hidden,
    g.name as age_group,
    i.change,
    i.change_sd,
    i.p_faster,
    i.p_level,
    w.birth_lo,
    w.birth_hi,
    w.name_key,
    w.runner_no
from record.runner w
cross join latest
left join n on n.runner_no = w.runner_no
left join insight.runner i on i.runner_no = w.runner_no
left join insight.age_group g on g.sex = w.sex and g.age = w.group_age
