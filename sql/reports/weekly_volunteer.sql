-- Who has helped at the courses of the runs asked for.
-- One row: one person in one role at a course on a day
-- key: course, run_date, name, role
-- who: tells people apart when they are counted
-- protected: may be under 18 on the day of the list, as far as the person is known as a runner
-- hidden: asked not to be shown
-- days: on how many days the person has helped up to this one, 0 where not known
-- milestone: the round number of days that this day is, 0 for none
select
    volunteers.course::varchar as course,
    volunteers.run_date::date as run_date,
    coalesce(volunteers.name, '')::varchar as name,
    coalesce(volunteers.role, '')::varchar as role,
    min(coalesce(volunteers.runner_id, volunteers.name, ''))::varchar as who,
    bool_or(coalesce(volunteers.protected, false))::boolean as protected,
    bool_or(coalesce(volunteers.hidden, false))::boolean as hidden,
    max(coalesce(volunteers.days_so_far, 0))::integer as days,
    max(coalesce(volunteers.milestone, 0))::integer as milestone
from main.volunteers as volunteers
where volunteers.course in (
    select course.course
    from record.course as course
    inner join record.run as asked on asked.course_no = course.course_no
    where asked.run_no in /* runs */ (0)
)
group by volunteers.course, volunteers.run_date, volunteers.name, volunteers.role
order by volunteers.course, volunteers.run_date, name, role
