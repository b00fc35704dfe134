-- Who helped at a course on a day.
-- One row: one person in one role at course $1 on date $2
-- key: name, role
-- protected: may be under 18 on the day of the list, as far as the person is known as a runner
-- hidden: asked not to be shown
select
    coalesce(volunteers.name, '')::varchar as name,
    coalesce(volunteers.role, '')::varchar as role,
    bool_or(coalesce(runners.protected, false))::boolean as protected,
    bool_or(coalesce(runners.hidden, false))::boolean as hidden
from main.volunteers as volunteers
left join main.runners as runners on runners.runner_id = volunteers.runner_id
where volunteers.course = $1 and volunteers.run_date = $2::date
group by volunteers.name, volunteers.role
order by volunteers.name, volunteers.role
