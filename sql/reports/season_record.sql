-- The fastest adult times of each course route, sex and age group, up to a day.
-- One row: one holder of the fastest time of a category up to day $1, on course $2 ('' for all)
-- key: course, distance_m, sex, scope_group, runner_id
-- distance_m: of the route; null where not known
-- scope_group: '' for all ages of the sex, else the age group on the day
-- run_date: the first day on which the person ran that time
-- was_s: the fastest time before it was first run, s; null where there was none
-- state: confirmed, earlier (than the sheets), or blank for a candidate. What the desk has declared void is left out.
with eligible as (
    select
        results.course, coalesce(results.distance_m, 0) as distance_m, results.sex, results.age_group, results.runner_id, results.name,
        results.time_s, results.run_date, coalesce(states.state, '') as state
    from main.results as results
    left join main.record_states as states on states.runner_id = results.runner_id and states.course = results.course
        and states.run_date = results.run_date and states.session is not distinct from results.session
    where results.run_date <= $1::date
        and ($2 = '' or results.course = $2)
        and results.counts_time
        and results.status = 'ok'
        and results.runner_id is not null
        and results.sex in ('M', 'W')
        and not coalesce(results.protected, true)
        and not coalesce(results.hidden, false)
        and coalesce(results.taking_part_as, 'runner') in ('runner', 'guided')
        and coalesce(states.state, '') <> 'void'
),

first_sheet as (
    select results.course, coalesce(results.distance_m, 0) as distance_m, min(results.run_date) as run_date
    from main.results as results
    group by results.course, coalesce(results.distance_m, 0)
),

-- One run on a later day than the first sheet is on a sheet; one over another
-- distance is no record of the route.
held as (
    select
        held.course, held.distance_m, held.sex, held.age_group,
        coalesce(held.runner_id, 'row ' || held.line) as runner_id,
        case when held.hidden then 'Anonymous' else coalesce(held.name, 'holder not known') end as name,
        held.time_s, coalesce(held.run_date, date '0001-01-01') as run_date, 'earlier' as state
    from main.held_records as held
    inner join first_sheet on first_sheet.course = held.course and first_sheet.distance_m = held.distance_m
    where ($2 = '' or held.course = $2)
        and held.sex in ('M', 'W')
        and not held.protected
        and coalesce(held.run_date, date '0001-01-01') < first_sheet.run_date
),

times as (
    select * from eligible
    union all
    select * from held
),

-- Somebody of a group is somebody of all ages.
scoped as (
    select times.*, '' as scope_group
    from times
    union all
    select times.*, times.age_group as scope_group
    from times
    where times.age_group is not null
),

fastest as (
    select course, distance_m, sex, scope_group, min(time_s) as time_s
    from scoped
    group by course, distance_m, sex, scope_group
),

holder as (
    select
        scoped.course, scoped.distance_m, scoped.sex, scoped.scope_group, scoped.runner_id, scoped.time_s,
        min(scoped.name) as name, min(scoped.run_date) as run_date, arg_min(scoped.state, scoped.run_date) as state
    from scoped
    inner join fastest
        on fastest.course = scoped.course and fastest.distance_m = scoped.distance_m and fastest.sex = scoped.sex
        and fastest.scope_group = scoped.scope_group and fastest.time_s = scoped.time_s
    group by scoped.course, scoped.distance_m, scoped.sex, scoped.scope_group, scoped.runner_id, scoped.time_s
),

earliest as (
    select course, distance_m, sex, scope_group, min(run_date) as run_date
    from holder
    group by course, distance_m, sex, scope_group
),

before as (
    select scoped.course, scoped.distance_m, scoped.sex, scoped.scope_group, min(scoped.time_s) as was_s
    from scoped
    inner join earliest
        on earliest.course = scoped.course and earliest.distance_m = scoped.distance_m and earliest.sex = scoped.sex
        and earliest.scope_group = scoped.scope_group
    where scoped.run_date < earliest.run_date
    group by scoped.course, scoped.distance_m, scoped.sex, scoped.scope_group
)

select
    holder.course::varchar as course,
    nullif(holder.distance_m, 0)::integer as distance_m,
    holder.sex::varchar as sex,
    holder.scope_group::varchar as scope_group,
    holder.runner_id::varchar as runner_id,
    holder.name::varchar as name,
    holder.time_s::integer as time_s,
    nullif(holder.run_date, date '0001-01-01')::date as run_date,
    before.was_s::integer as was_s,
    holder.state::varchar as state
from holder
left join before
    on before.course = holder.course and before.distance_m = holder.distance_m and before.sex = holder.sex
    and before.scope_group = holder.scope_group
order by holder.course, holder.distance_m, holder.sex desc, holder.scope_group, holder.run_date, holder.runner_id
