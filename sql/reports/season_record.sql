-- The fastest adult times of each course route, sex and age group, up to a day.
-- One row: one holder of the fastest time of a category up to day $1, on course $2 ('' for all)
-- key: course, sex, scope_group, runner_id
-- scope_group: '' for all ages of the sex, else the age group on the day
-- run_date: the first day on which the person ran that time
-- was_s: the fastest time before it was first run, s; null where there was none
with eligible as (
    select
        results.course, results.sex, results.age_group, results.runner_id, results.name, results.time_s, results.run_date
    from main.results as results
    where results.run_date <= $1::date
        and ($2 = '' or results.course = $2)
        and results.counts_time
        and results.status = 'ok'
        and results.runner_id is not null
        and results.sex in ('M', 'W')
        and not coalesce(results.protected, true)
        and not coalesce(results.hidden, false)
        and coalesce(results.taking_part_as, 'runner') in ('runner', 'guided')
),

scoped as (
    select eligible.*, '' as scope_group from eligible
    union all
    select eligible.*, eligible.age_group as scope_group from eligible
    where eligible.age_group is not null
),

fastest as (
    select course, sex, scope_group, min(time_s) as time_s
    from scoped
    group by course, sex, scope_group
),

holder as (
    select
        scoped.course, scoped.sex, scoped.scope_group, scoped.runner_id, scoped.time_s,
        min(scoped.name) as name, min(scoped.run_date) as run_date
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
    holder.run_date::date as run_date,
    before.was_s::integer as was_s
from holder
left join before
    on before.course = holder.course and before.sex = holder.sex and before.scope_group = holder.scope_group
order by holder.course, holder.sex desc, holder.scope_group, holder.run_date, holder.runner_id
