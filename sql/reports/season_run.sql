-- The runs of a season with attendance and conditions.
-- One row: one run from day $1 to day $2, of course $3 ('' for all)
-- key: run_date, course, session
-- state: in words, a course that was short or long with by how many metres where that is known
-- condition_s, condition_s_low, condition_s_high: seconds at 25:00 against a usual day there, + is slower
select
    runs.run_date::date as run_date,
    runs.course::varchar as course,
    coalesce(runs.session, '')::varchar as session,
    coalesce(runs.course_name, runs.course)::varchar as course_name,
    (coalesce(runs.state, 'held') || coalesce(' by ' || runs.off_m || ' m', ''))::varchar as state,
    coalesce(runs.finishers, 0)::integer as finishers,
    runs.condition_s::double as condition_s,
    runs.condition_s_low::double as condition_s_low,
    runs.condition_s_high::double as condition_s_high,
    coalesce(runs.history_complete, false)::boolean as history_complete
from main.runs as runs
where runs.run_date between $1::date and $2::date
    and ($3 = '' or runs.course = $3)
order by runs.run_date, runs.course, coalesce(runs.session, '')
