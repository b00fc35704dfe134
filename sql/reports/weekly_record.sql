-- The fastest adult of each sex and age group in every run of the courses of the runs asked for.
-- Who asked not to be shown is passed over, as a time on its own could tell whose it is.
-- One row: one sex and age group in one run
-- key: run_no, sex, age_group
-- age_group: by the rule in force; blank where it is not certain
-- time_s: the fastest eligible time
-- runner_no: whose it is; of equal ones the first in place
with history as (
    select run.run_no
    from record.run as run
    where run.course_no in (select asked.course_no from record.run as asked where asked.run_no in /* runs */ (0))
),

eligible as (
    select
        result.run_no, result.runner_no, result.sex,
        (result.time_ms + 999) // 1000 as time_s,
        coalesce(age_group.name, '') as age_group,
        coalesce(nullif(result.position, 0), 2147483647) as position
    from record.result as result
    inner join history on history.run_no = result.run_no
    left join insight.age_group as age_group on age_group.age = result.group_age and age_group.sex = result.sex
    left join record.record_state as state on state.line_no = result.line_no
    left join record.runner as runner on runner.runner_no = result.runner_no
    where result.counts & 2 = 2
        and coalesce(state.state, '') <> 'void'
        and coalesce(result.age_low, case when result.counts & 4 = 4 then 0 else 120 end) >= 18
        and not coalesce(runner.hidden, false)
        and result.time_ms > 0
        and result.status = 0
        and result.runner_no > 0
        and result.sex in (1, 2)
        and result.taking_part in (0, 2)
)

select
    eligible.run_no::integer as run_no,
    case eligible.sex when 1 then 'M' else 'W' end::varchar as sex,
    coalesce(eligible.age_group, '')::varchar as age_group,
    min(eligible.time_s)::integer as time_s,
    arg_min(eligible.runner_no, (eligible.time_s, eligible.position, eligible.runner_no))::integer as runner_no
from eligible
group by eligible.run_no, eligible.sex, coalesce(eligible.age_group, '')
order by run_no, sex, age_group
