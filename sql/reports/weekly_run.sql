-- The runs of a course up to one run: attendance, counts and conditions.
-- One row: one run of course $1 up to date $2, on that day its session $3 or an earlier one.
-- key: run_date, session
-- course_name: name to print
-- volunteers: people on the volunteer list of the day; null where there is no list
-- times_counted: times on the sheets; positions_counted: places; names_counted: names
-- history_complete: whether the sheets are known to hold every run of the course from its start or an agreed day
-- condition_s: seconds at 25:00 against a usual day here, + is slower; null where it can't be told
-- measured: whether the course has been measured; null where not known
with helpers as (
    select volunteers.run_date, count(distinct coalesce(volunteers.runner_id, volunteers.name)) as people
    from main.volunteers as volunteers
    where volunteers.course = $1
    group by volunteers.run_date
)

select
    runs.run_date::date as run_date,
    coalesce(runs.session, '')::varchar as session,
    coalesce(courses.name, runs.course_name, runs.course)::varchar as course_name,
    runs.distance_m::integer as distance_m,
    coalesce(runs.state, 'held')::varchar as state,
    coalesce(runs.finishers, 0)::integer as finishers,
    helpers.people::integer as volunteers,
    coalesce(runs.unnamed, 0)::integer as unnamed,
    runs.times_counted::integer as times_counted,
    runs.positions_counted::integer as positions_counted,
    runs.names_counted::integer as names_counted,
    coalesce(runs.history_complete, false)::boolean as history_complete,
    runs.condition_s::double as condition_s,
    runs.condition_s_low::double as condition_s_low,
    runs.condition_s_high::double as condition_s_high,
    courses.measured::boolean as measured
from main.runs as runs
left join main.courses as courses on courses.course = runs.course
left join helpers on helpers.run_date = runs.run_date
where runs.course = $1
    and (runs.run_date < $2::date or (runs.run_date = $2::date and coalesce(runs.session, '') <= $3))
order by runs.run_date, coalesce(runs.session, '')
