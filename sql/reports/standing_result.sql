-- Everything that a runner has done in the sheets held here, in order.
-- One row: one result of runner $1
-- key: sheet, tab, row_number
-- adjusted_s: time after allowing for course and day, s
-- form_s, form_low, form_high: good-effort time over 5 km on an average course and day as things stood that day, with its 90 % interval, s
-- effort: full, steady, easy or unclear
select
    results.sheet::varchar as sheet,
    coalesce(results.tab, '')::varchar as tab,
    results.row_number::integer as row_number,
    results.run_date::date as run_date,
    results.course::varchar as course,
    results.distance_m::integer as distance_m,
    results.position::integer as position,
    results.time_s::integer as time_s,
    results.adjusted_s::double as adjusted_s,
    results.age_grade_pct::double as age_grade_pct,
    coalesce(results.effort, '')::varchar as effort,
    results.shortfall_pct::double as shortfall_pct,
    coalesce(results.status, '')::varchar as status,
    coalesce(results.taking_part_as, 'runner')::varchar as taking_part_as,
    coalesce(results.counts_run, false)::boolean as counts_run,
    coalesce(results.counts_time, false)::boolean as counts_time,
    coalesce(results.is_pb, false)::boolean as is_pb,
    coalesce(results.is_course_best, false)::boolean as is_course_best,
    coalesce(results.is_adjusted_best, false)::boolean as is_adjusted_best,
    coalesce(results.pb_streak, 0)::integer as pb_streak,
    coalesce(results.attendance_streak, 0)::integer as attendance_streak,
    results.attendance_since::date as attendance_since,
    results.runs_total::integer as runs_total,
    coalesce(results.protected, true)::boolean as protected,
    results.form_s::double as form_s,
    results.form_low::double as form_low,
    results.form_high::double as form_high
from main.results as results
where results.runner_no = $1
order by results.run_date, results.session nulls first, results.sheet, results.tab nulls first, results.row_number
