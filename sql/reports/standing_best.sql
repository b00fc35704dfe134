-- How the bests of everybody in an age group are spread, to stand among them.
-- One row: one value of one measure, in one place and span of time
-- key: measure, course, distance_m, season, value, mine
-- $1: sex, 1 M, 2 W, 3 X; $2, $3: youngest and oldest age of the group; $4, $5: first and last day of the season; $6: the runner
-- measure: time, adjusted (after allowing for course and day), grade (age grade; of those whose age is certain, none that needs checking)
-- course: one that the runner has run on, by time only; '' for all
-- season: of the season only, else ever
-- value: seconds rounded up, the lower the better; for grade 1 000 000 - 100 times the percentage, rounded
-- people: runners whose best in the group it is; mine: the runner's own
with result as (
    select
        ranked.runner_no, run.course_no, run.distance_m, run.run_date between $4::date and $5::date as in_season,
        ranked.time_s, nullif(ranked.adjusted_s, 0) as adjusted_s, 1000000 - nullif(ranked.grade, 0) as grade
    from insight.ranked as ranked
    inner join record.run as run on run.run_no = ranked.run_no
    where ranked.sex = $1 and ranked.first_age between $2 and $3
),

on_course as (
    select
        result.course_no, result.distance_m, result.runner_no,
        min(result.time_s) as time_s, min(result.time_s) filter (where result.in_season) as season_time_s,
        min(result.adjusted_s) as adjusted_s, min(result.adjusted_s) filter (where result.in_season) as season_adjusted_s,
        min(result.grade) as grade, min(result.grade) filter (where result.in_season) as season_grade
    from result
    group by result.course_no, result.distance_m, result.runner_no
),

anywhere as (
    select
        on_course.distance_m, on_course.runner_no,
        min(on_course.time_s) as time_s, min(on_course.season_time_s) as season_time_s,
        min(on_course.adjusted_s) as adjusted_s, min(on_course.season_adjusted_s) as season_adjusted_s,
        min(on_course.grade) as grade, min(on_course.season_grade) as season_grade
    from on_course
    group by on_course.distance_m, on_course.runner_no
),

best as (
    select 'time' as measure, course_no, distance_m, false as season, runner_no, time_s as value from on_course
    union all
    select 'time', course_no, distance_m, true, runner_no, season_time_s from on_course
    union all
    select 'time', 0, distance_m, false, runner_no, time_s from anywhere
    union all
    select 'time', 0, distance_m, true, runner_no, season_time_s from anywhere
    union all
    select 'adjusted', 0, distance_m, false, runner_no, adjusted_s from anywhere
    union all
    select 'adjusted', 0, distance_m, true, runner_no, season_adjusted_s from anywhere
    union all
    select 'grade', 0, distance_m, false, runner_no, grade from anywhere
    union all
    select 'grade', 0, distance_m, true, runner_no, season_grade from anywhere
),

own as (
    select distinct on_course.course_no from on_course where on_course.runner_no = $6
    union all
    select 0
)

select
    best.measure::varchar as measure,
    coalesce(course.course, '')::varchar as course,
    coalesce(best.distance_m, 0)::integer as distance_m,
    best.season::boolean as season,
    best.value::integer as value,
    (best.runner_no = $6)::boolean as mine,
    count(*)::integer as people
from best
inner join own on own.course_no = best.course_no
left join record.course as course on course.course_no = best.course_no
where best.value is not null
group by all
order by measure, course, distance_m, season, value, mine
