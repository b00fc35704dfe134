-- One row a person, role, course and day in volunteers.csv.
-- name: as written
-- runner_no: the runner of that name, 0 where none or not certain
-- role: as written
-- course: short name of the course
-- run_date: the day
select
    null::varchar as name,
    null::integer as runner_no,
    null::varchar as role,
    null::varchar as course,
    null::date as run_date
