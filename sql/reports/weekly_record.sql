-- Times of one run that equal or beat the fastest recorded before on the course.
-- One row: one result of the run of course $1 on date $2 in session $3
-- key: scope, sex, age_group, sheet, tab, row_number
-- scope: 'all ages' (of the sex) or 'group' (sex and age group on the day)
-- time_s: the time run; was_s: the fastest before, by held_by on held_on
-- held_name, held_protected, held_hidden: who held it (the earliest of equals)
with eligible as (
    select
        results.sheet, coalesce(results.tab, '') as tab, results.row_number, results.position,
        results.run_date, coalesce(results.session, '') as session, results.runner_id, results.name,
        results.sex, results.age_group, results.time_s,
        coalesce(results.protected, true) as protected, coalesce(results.hidden, false) as hidden
    from main.results as results
    where results.course = $1
        and results.run_date <= $2::date
        and results.counts_time
        and results.status = 'ok'
        and results.runner_id is not null
        and results.time_s is not null
        and results.sex in ('M', 'W')
        and coalesce(results.taking_part_as, 'runner') in ('runner', 'guided')
),

scoped as (
    select 'all ages' as scope, '' as scope_group, eligible.* from eligible
    union all
    select 'group' as scope, eligible.age_group as scope_group, eligible.* from eligible
    where eligible.age_group is not null
),

before as (
    select
        scope, sex, scope_group,
        min(time_s) as was_s,
        arg_min(struct_pack(name := name, protected := protected, hidden := hidden, run_date := run_date),
            (time_s, run_date, session, coalesce(position, 2147483647), sheet, tab, row_number)) as held
    from scoped
    where run_date < $2::date or (run_date = $2::date and session < $3)
    group by scope, sex, scope_group
)

select
    scoped.scope::varchar as scope,
    scoped.sex::varchar as sex,
    scoped.scope_group::varchar as age_group,
    scoped.sheet::varchar as sheet,
    scoped.tab::varchar as tab,
    scoped.row_number::integer as row_number,
    scoped.time_s::integer as time_s,
    before.was_s::integer as was_s,
    before.held.name::varchar as held_name,
    before.held.protected::boolean as held_protected,
    before.held.hidden::boolean as held_hidden,
    before.held.run_date::date as held_on
from scoped
inner join before
    on before.scope = scoped.scope and before.sex = scoped.sex and before.scope_group = scoped.scope_group
where scoped.run_date = $2::date and scoped.session = $3 and scoped.time_s <= before.was_s
qualify scoped.time_s = min(scoped.time_s) over (partition by scoped.scope, scoped.sex, scoped.scope_group)
order by scoped.scope, scoped.sex, scoped.scope_group, scoped.position nulls last, scoped.sheet, scoped.tab, scoped.row_number
