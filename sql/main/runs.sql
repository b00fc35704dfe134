-- One row a run. Part of the contract with other programs.
with
    counted as (
        select
            r.run_no,
            count(*) filter (r.status in (0, 1, 2, 6)) as finishers,
            count(*) filter (r.status = 1) as unnamed,
            count(*) filter (r.status in (0, 1, 2, 6) and r.time_ms > 0) as times_counted,
            count(*) filter (r.status in (0, 1, 2, 6) and r.position > 0) as positions_counted,
            count(*) filter (r.status in (0, 2, 6) and r.runner_no > 0) as names_counted,
            count(*) filter (r.status not in (5, 7)) as results,
            min(p.sheet_no) filter (r.status not in (5, 7)) as sheet_no
        from record.result r
        join sheet.part p on p.part_no = r.part_no
        group by r.run_no
    )
select
    c.course,
    run.run_date,
    100 * (exp(i.effect) - 1) as condition_pct,
    nullif(run.session, '') as session,
    100 * (exp(i.low) - 1) as low,
    100 * (exp(i.high) - 1) as high,
    coalesce(st.state, 'held') as state,
    n.finishers,
    n.unnamed,
    run.run_no,
    c.name as course_name,
    run.distance_m,
    1500 * (exp(i.effect) - 1) as condition_s,
    1500 * (exp(i.low) - 1) as condition_s_low,
    1500 * (exp(i.high) - 1) as condition_s_high,
    n.times_counted,
    n.positions_counted,
    n.names_counted,
    coalesce(c.complete_from <= run.run_date, false) as history_complete,
    s.path as sheet,
    n.results,
    nullif(st.off_m, 0) as off_m
from record.run run
join record.course c on c.course_no = run.course_no
join counted n on n.run_no = run.run_no
left join sheet.sheet s on s.sheet_no = n.sheet_no
left join insight.run i on i.run_no = run.run_no
left join record.run_state st on st.run_no = run.run_no
