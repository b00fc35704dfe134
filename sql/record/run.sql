-- One row a run: a course, a date and a session.
-- key: run_no
-- run_no: number in this database
-- course_no: the course
-- run_date: day of the run
-- session: start time or number where a day has several, else blank
-- distance_m: distance of this run in metres
select
    null::integer as run_no,
    null::integer as course_no,
    null::date as run_date,
    null::varchar as session,
    null::integer as distance_m
