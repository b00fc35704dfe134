-- One row a line of somebody named: the figures of that result.
-- line_no: the line
-- open_standard_s: open standard of the sex and distance, seconds; the age grade is 100 times it, divided by age factor times time; NULL where there is no standard
-- age_factor: age factor at the middle of the ages allowed
-- age_factor_most: the largest of those allowed, which gives the lowest grade
-- age_factor_least: the smallest
-- first_result: the person's first counted run in the archive
-- runs_total: runs so far with this one, opening balance included, NULL where it does not count
-- milestone: the round number of runs reached, 0 where none
-- is_pb: personal best at the distance
-- previous_best_s: best before this run at the distance, seconds, 0 where none
-- pb_margin_s: seconds under the previous best, 0 where no personal best
-- is_course_best: fastest of the person on this course so far, and not the first
-- course_best_margin_s: seconds under the course best before, 0 where none
-- pb_streak: personal bests in a row, this one included
-- attendance_streak: weeks in a row with a run, this one included
-- attendance_since: day of the first finish of that row of weeks, NULL where this one does not count
-- newcomer: 0 not known, 1 no, 2 yes: first counted run anywhere
-- visitor: 0 not known, 1 no, 2 yes: first counted run on this course
-- days_since_last: days since the person's last counted run, 0 where none
-- adjusted_s: time after allowing for course and day, seconds, NULL where it can't be said
-- is_adjusted_best: lowest adjusted time so far
-- effort: 0 none, 1 full, 2 steady, 3 easy, 4 unclear
-- shortfall: share of time behind form, NULL where it can't be said
-- form_s: good-effort time for 5 km on a mean course and day as things stood on that day, seconds, NULL where it can't be said
-- form_low: lower end of the 90 % interval
-- form_high: upper end
-- runner_no: the runner; the rows of a full refresh stand in their order
select
    null::integer as line_no,
    null::double as open_standard_s,
    null::double as age_factor,
    null::double as age_factor_most,
    null::double as age_factor_least,
    null::boolean as first_result,
    null::integer as runs_total,
    null::integer as milestone,
    null::boolean as is_pb,
    null::integer as previous_best_s,
    null::integer as pb_margin_s,
    null::boolean as is_course_best,
    null::integer as course_best_margin_s,
    null::integer as pb_streak,
    null::integer as attendance_streak,
    null::date as attendance_since,
    null::utinyint as newcomer,
    null::utinyint as visitor,
    null::integer as days_since_last,
    null::float as adjusted_s,
    null::boolean as is_adjusted_best,
    null::utinyint as effort,
    null::float as shortfall,
    null::float as form_s,
    null::float as form_low,
    null::float as form_high,
    null::integer as runner_no
