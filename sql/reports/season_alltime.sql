-- The ten fastest adults of each course route and sex in the sheets, up to a day.
-- One row: one runner's best on a course up to day $1, on course $2 ('' for all), among the ten fastest
-- key: course, distance_m, sex, runner_id
-- run_date: the first day on which the time was run
with bests as (
    select
        results.course, coalesce(results.distance_m, 0) as distance_m, results.sex, results.runner_id,
        min(results.time_s) as time_s,
        min(results.name) as name,
        arg_min(results.run_date, results.time_s::bigint * 100000 + (results.run_date - date '1900-01-01')) as run_date
    from main.results as results
    where results.run_date <= $1::date
        and ($2 = '' or results.course = $2)
        and results.counts_time
        and results.status = 'ok'
        and results.runner_id is not null
        and results.sex in ('M', 'W')
        and not coalesce(results.protected, true)
        and not coalesce(results.hidden, false)
        and coalesce(results.taking_part_as, 'runner') in ('runner', 'walker', 'guided')
        and not exists (
            select 1 from main.record_states as states
            where states.state = 'void' and states.runner_id = results.runner_id and states.course = results.course
                and states.run_date = results.run_date and states.session is not distinct from results.session)
    group by results.course, coalesce(results.distance_m, 0), results.sex, results.runner_id
)

select
    bests.course::varchar as course,
    nullif(bests.distance_m, 0)::integer as distance_m,
    bests.sex::varchar as sex,
    bests.runner_id::varchar as runner_id,
    bests.name::varchar as name,
    bests.time_s::integer as time_s,
    bests.run_date::date as run_date
from bests
qualify rank() over (partition by bests.course, bests.distance_m, bests.sex order by bests.time_s) <= 10
order by bests.course, bests.distance_m, bests.sex desc, bests.time_s, bests.run_date, bests.runner_id
