-- On which days the people with a change of form ran, to judge whether it counts.
-- One row: one timed result up to day $2 of a runner who ran from day $1 to day $2
-- key: runner, run_date, session
-- runner: number of the runner, 12 for R12
with wanted as (
    select distinct results.runner_id from main.results as results
    inner join main.runners as runners on runners.runner_id = results.runner_id
    where results.run_date between $1::date and $2::date
        and results.counts_time
        and runners.change is not null
)

select distinct
    substr(results.runner_id, 2)::integer as runner,
    results.run_date::date as run_date,
    coalesce(results.session, '')::varchar as session
from main.results as results
inner join wanted on wanted.runner_id = results.runner_id
where results.run_date <= $2::date and results.counts_time
order by 1, 2, 3
