-- How finish times are spread on a course: this run against the runs before it.
-- One row: one whole minute of finish time on course $1, run of date $2 and session $3
-- key: minute
-- minute: whole minutes of the finish time (25 holds 25:00 to 25:59)
-- here: timed results of this run
-- before: timed results of the course's earlier days
select
    (results.time_s // 60)::integer as minute,
    count(*) filter (where results.run_date = $2::date)::bigint as here,
    count(*) filter (where results.run_date < $2::date)::bigint as before
from main.results as results
where results.course = $1
    and results.counts_time
    and results.time_s is not null
    and (results.run_date < $2::date or (results.run_date = $2::date and coalesce(results.session, '') = $3))
group by minute
order by minute
