-- Every line of the sheets of the runs asked for, whatever became of it.
-- One row: one line of a sheet
-- key: sheet, tab, row_number
-- position: place on the sheet; tied where it is shared
-- age_grade_low, age_grade_high: age grade at the youngest and oldest age that the person may have, percent
-- pb_margin_s: previous best at the distance minus this time, s
-- course_best_margin_s: the same on this course, s
-- protected: may be under 18 on the day; not known counts as protected
-- $1, $2: the least and the greatest run number asked for; the database passes over what lies outside
-- doubt: why the line is not trusted, in words
select
    results.run_no::integer as run_no,
    results.sheet::varchar as sheet,
    coalesce(results.tab, '')::varchar as tab,
    results.row_number::integer as row_number,
    results.position::integer as position,
    coalesce(results.tied, false)::boolean as tied,
    coalesce(results.runner_id, '')::varchar as runner_id,
    coalesce(results.name, '')::varchar as name,
    results.time_s::integer as time_s,
    coalesce(results.sex, '')::varchar as sex,
    coalesce(results.age_group, '')::varchar as age_group,
    coalesce(results.club, '')::varchar as club,
    coalesce(results.status, '')::varchar as status,
    coalesce(results.counts_run, false)::boolean as counts_run,
    coalesce(results.counts_time, false)::boolean as counts_time,
    coalesce(results.taking_part_as, 'runner')::varchar as taking_part_as,
    results.age_grade_pct::double as age_grade_pct,
    results.age_grade_low::double as age_grade_low,
    results.age_grade_high::double as age_grade_high,
    coalesce(results.is_pb, false)::boolean as is_pb,
    coalesce(results.is_course_best, false)::boolean as is_course_best,
    coalesce(results.is_adjusted_best, false)::boolean as is_adjusted_best,
    results.pb_margin_s::integer as pb_margin_s,
    results.course_best_margin_s::integer as course_best_margin_s,
    coalesce(results.first_result, false)::boolean as first_result,
    results.is_newcomer::boolean as is_newcomer,
    results.is_visitor::boolean as is_visitor,
    results.runs_total::integer as runs_total,
    results.milestone::integer as milestone,
    coalesce(results.pb_streak, 0)::integer as pb_streak,
    coalesce(results.attendance_streak, 0)::integer as attendance_streak,
    results.attendance_since::date as attendance_since,
    coalesce(results.protected, true)::boolean as protected,
    coalesce(results.hidden, false)::boolean as hidden,
    coalesce(results.doubt, '')::varchar as doubt,
    coalesce(results.note, '')::varchar as note
from main.results as results
where results.run_no in /* runs */ (0) and results.run_no between $1 and $2
order by results.run_no, results.position nulls last, results.time_s nulls last, results.sheet, results.tab nulls first, results.row_number
