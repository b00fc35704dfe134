-- Every run of the courses of the runs asked for: when, state and conditions.
-- One row: one run
-- key: run_no
-- course_no: of the route; one whose distance has changed is another
-- course_name: name to print
-- distance_m: of this run
-- state: in words, a course that was short or long with by how many metres where that is known
-- history_complete: whether the sheets are known to hold every run of the course from its start or an agreed day
-- condition_s: seconds at 25:00 against a usual day here, + is slower; null where it can't be told
-- measured: whether the course has been measured; null where not known
select
    run.run_no::integer as run_no,
    course.course_no::integer as course_no,
    course.course::varchar as course,
    run.run_date::date as run_date,
    run.session::varchar as session,
    coalesce(course.name, course.course)::varchar as course_name,
    run.distance_m::integer as distance_m,
    (coalesce(state.state, 'held') || coalesce(' by ' || nullif(state.off_m, 0) || ' m', ''))::varchar as state,
    coalesce(course.complete_from <= run.run_date, false)::boolean as history_complete,
    (1500 * (exp(figure.effect) - 1))::double as condition_s,
    (1500 * (exp(figure.low) - 1))::double as condition_s_low,
    (1500 * (exp(figure.high) - 1))::double as condition_s_high,
    course.measured::boolean as measured
from record.run as run
inner join record.course as course on course.course_no = run.course_no
left join record.run_state as state on state.run_no = run.run_no
left join insight.run as figure on figure.run_no = run.run_no
where run.course_no in (select asked.course_no from record.run as asked where asked.run_no in /* runs */ (0))
order by course.course, run.run_date, run.session, run.run_no
