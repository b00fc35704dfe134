-- What ranks in an age group stands in insight.ranked, once, with the run and the time of its result.
with
    result as (
        select r.sex, r.group_age as first_age, r.runner_no, r.run_no, (r.time_ms + 999) // 1000 as time_s
        from record.result r
        where r.runner_no > 0 and r.sex > 0 and r.group_age is not null and (r.counts & 2) = 2
            and r.taking_part <= 2 and r.status = 0 and r.time_ms > 0
    ),
    ranked as (select sex, first_age, runner_no, run_no, time_s from insight.ranked)
(select 'not ranked' as what, * from result except all select 'not ranked', * from ranked)
union all
(select 'ranked, but no such result', * from ranked except all select 'ranked, but no such result', * from result)
