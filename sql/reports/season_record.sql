-- The fastest adult times of each course route, sex and age group, up to a day.
-- One row: one holder of the fastest time of a category up to day $1, on course $2 ('' for all)
-- key: course, sex, scope_group, runner_id
-- scope_group: '' for all ages of the sex, else the age group on the day
-- run_date: the first day on which the person ran that time
-- was_s: the fastest time before it was first run, s; null where there was none
-- state: confirmed, earlier (than the sheets), or blank for a candidate. What the desk has declared void is left out.
with eligible as (
    select
        results.course, results.sex, results.age_group, results.runner_id, results.name, results.time_s, results.run_date,
        coalesce(states.state, '') as state
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

held as (
    select
        held.course, held.sex, coalesce(held.age_group, '') as scope_group,
        coalesce(held.runner_id, 'row ' || held.line) as runner_id,
        case when held.hidden then 'Anonymous' else coalesce(held.name, 'holder not known') end as name,
        held.time_s, coalesce(held.run_date, date '0001-01-01') as run_date
    from main.held_records as held
    where ($2 = '' or held.course = $2)
        and held.sex in ('M', 'W')
        and not held.protected
        and coalesce(held.run_date, date '0001-01-01') <= $1::date
),

scoped as (
    select eligible.course, eligible.sex, '' as scope_group, eligible.runner_id, eligible.name, eligible.time_s, eligible.run_date, eligible.state
    from eligible
    union all
    select eligible.course, eligible.sex, eligible.age_group as scope_group, eligible.runner_id, eligible.name, eligible.time_s, eligible.run_date, eligible.state
    from eligible
    where eligible.age_group is not null
    union all
    select held.course, held.sex, held.scope_group, held.runner_id, held.name, held.time_s, held.run_date, 'earlier' as state
    from held
),

fastest as (
    select course, sex, scope_group, min(time_s) as time_s
    from scoped
    group by course, sex, scope_group
),

holder as (
    select
        scoped.course, scoped.sex, scoped.scope_group, scoped.runner_id, scoped.time_s,
        min(scoped.name) as name, min(scoped.run_date) as run_date, max(scoped.state) as state
    from scoped
    inner join fastest
        on fastest.course = scoped.course and fastest.sex = scoped.sex
        and fastest.scope_group = scoped.scope_group and fastest.time_s = scoped.time_s
    group by scoped.course, scoped.sex, scoped.scope_group, scoped.runner_id, scoped.time_s
),

earliest as (
    select course, sex, scope_group, min(run_date) as run_date
    from holder
    group by course, sex, scope_group
),

before as (
    select scoped.course, scoped.sex, scoped.scope_group, min(scoped.time_s) as was_s
    from scoped
    inner join earliest
        on earliest.course = scoped.course and earliest.sex = scoped.sex and earliest.scope_group = scoped.scope_group
    where scoped.run_date < earliest.run_date
    group by scoped.course, scoped.sex, scoped.scope_group
)

select
    holder.course::varchar as course,
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
    on before.course = holder.course and before.sex = holder.sex and before.scope_group = holder.scope_group
order by holder.course, holder.sex desc, holder.scope_group, holder.run_date, holder.runner_id
