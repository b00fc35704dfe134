-- Who helped in a season.
-- One row: one person on one day at one course, from day $1 to day $2, at course $3 ('' for all)
-- key: run_date, course, runner, name
-- runner: number of the runner, 12 for R12; 0 where the person is not known as one
select distinct
    volunteers.run_date::date as run_date,
    volunteers.course::varchar as course,
    coalesce(substr(volunteers.runner_id, 2)::integer, 0)::integer as runner,
    coalesce(volunteers.name, '')::varchar as name
from main.volunteers as volunteers
where volunteers.run_date between $1::date and $2::date
    and ($3 = '' or volunteers.course = $3)
order by 1, 2, 3, 4
