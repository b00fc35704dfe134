-- One row a course. Part of the contract with other programs.
with
    n as (
        select run.course_no, count(*) as results, count(distinct r.run_no) as runs
        from record.result r
        join record.run run on run.run_no = r.run_no
        where r.status not in (5, 7)
        group by run.course_no
    )
select
    c.course,
    case when i.basis in ('published', 'provisional') then 100 * exp(-i.effect) end as speed_index,
    case when i.basis in ('published', 'provisional') then 100 * exp(-(i.effect + 1.645 * i.sd)) end as low,
    case when i.basis in ('published', 'provisional') then 100 * exp(-(i.effect - 1.645 * i.sd)) end as high,
    c.distance_m,
    case when i.basis in ('published', 'provisional') then 1500 * (exp(i.effect) - 1) end as seconds_at_25min,
    coalesce(n.results, 0) as results,
    coalesce(n.runs, 0) as runs,
    coalesce(i.shared_runners, 0) as shared_runners,
    i.network,
    coalesce(i.basis, 'no results in the fit') as basis,
    c.name,
    c.weekday,
    case when i.basis in ('published', 'provisional') then 1500 * (exp(i.effect - 1.645 * i.sd) - 1) end as seconds_low,
    case when i.basis in ('published', 'provisional') then 1500 * (exp(i.effect + 1.645 * i.sd) - 1) end as seconds_high,
    c.measured
from record.course c
left join n on n.course_no = c.course_no
left join insight.course i on i.course_no = c.course_no
