-- The bests of everybody in an age group, to stand in.
-- One row: one runner of sex $1 and age group $2 on one course
-- key: course, distance_m, runner_id
-- best_s: fastest time in that group on the course, s; season_s: the same from day $3 to day $4
-- adjusted_s, season_adjusted_s: fastest after allowing for course and day, s
-- grade_pct, season_grade_pct: best age grade of those whose age is certain and that need no checking, percent
select
    results.course::varchar as course,
    results.distance_m::integer as distance_m,
    results.runner_id::varchar as runner_id,
    min(results.time_s)::integer as best_s,
    min(results.time_s) filter (where results.run_date between $3::date and $4::date)::integer as season_s,
    min(results.adjusted_s)::double as adjusted_s,
    min(results.adjusted_s) filter (where results.run_date between $3::date and $4::date)::double as season_adjusted_s,
    max(results.age_grade_pct) filter (
        where results.age_grade_pct < 100 and results.age_grade_high - results.age_grade_low < 0.005
    )::double as grade_pct,
    max(results.age_grade_pct) filter (
        where results.age_grade_pct < 100 and results.age_grade_high - results.age_grade_low < 0.005
            and results.run_date between $3::date and $4::date
    )::double as season_grade_pct
from main.results as results
where results.sex = $1
    and results.age_group = $2
    and results.counts_time
    and results.status = 'ok'
    and results.runner_id is not null
    and coalesce(results.taking_part_as, 'runner') in ('runner', 'walker', 'guided')
group by results.course, results.distance_m, results.runner_id
order by results.course, results.distance_m, results.runner_id
