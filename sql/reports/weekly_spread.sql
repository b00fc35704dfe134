-- How many finished, minute by minute, in every run of the courses of the runs asked for.
-- One row: one whole minute of finish time in one run
-- key: run_no, minute
-- minute: whole minutes of the finish time (25 holds 25:00 to 25:59); -1 holds the lines whose time does not count
-- timed: results whose time counts
-- finishers, unnamed, times, positions, names: as in the view runs
with history as (
    select run.run_no
    from record.run as run
    where run.course_no in (select asked.course_no from record.run as asked where asked.run_no in /* runs */ (0))
)

select
    result.run_no::integer as run_no,
    case when result.counts & 2 = 2 and result.time_ms > 0 then (result.time_ms + 999) // 60000 else -1 end::integer as minute,
    count(*) filter (where result.counts & 2 = 2 and result.time_ms > 0)::integer as timed,
    count(*) filter (where result.status in (0, 1, 2, 6))::integer as finishers,
    count(*) filter (where result.status = 1)::integer as unnamed,
    count(*) filter (where result.status in (0, 1, 2, 6) and result.time_ms > 0)::integer as times,
    count(*) filter (where result.status in (0, 1, 2, 6) and result.position > 0)::integer as positions,
    count(*) filter (where result.status in (0, 2, 6) and result.runner_no > 0)::integer as names
from record.result as result
inner join history on history.run_no = result.run_no
group by result.run_no, minute
order by result.run_no, minute
