-- The people of a season: who ran or helped.
-- One row: one runner with a counted finish or a volunteer day from day $1 to day $2
-- key: runner
-- runner: number of the runner, 12 for R12
-- form_s: good-effort time over 5 km on an average course and day after the last result, s
-- change: log of the change of form over 12 weeks up to the last result, negative is faster; change_sd: its standard deviation
with around as (
    select results.runner_id from main.results as results
    where results.run_date between $1::date and $2::date and results.runner_id is not null and results.counts_run
    union
    select volunteers.runner_id from main.volunteers as volunteers
    where volunteers.run_date between $1::date and $2::date and volunteers.runner_id is not null
)

select
    substr(runners.runner_id, 2)::integer as runner,
    coalesce(runners.name, '')::varchar as name,
    coalesce(runners.sex, '')::varchar as sex,
    coalesce(runners.protected, true)::boolean as protected,
    coalesce(runners.hidden, false)::boolean as hidden,
    runners.form_s::double as form_s,
    runners.change::double as change,
    runners.change_sd::double as change_sd
from main.runners as runners
inner join around on around.runner_id = runners.runner_id
order by runner
