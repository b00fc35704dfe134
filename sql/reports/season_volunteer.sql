-- Who helped in a season.
-- One row: one person on one day at one course, from day $1 to day $2, at course $3 ('' for all)
-- key: run_date, course, runner, name
-- roles: what the person did, parted by commas
-- days: on how many days the person had helped up to this one, all courses and years, 0 where not known
-- milestone: the round number of days that this day was, 0 for none
-- protected: may be under 18 on the day
-- hidden: asked not to be shown
-- runner: number of the runner, 12 for R12; 0 where the person is not known as one
select
    volunteers.run_date::date as run_date,
    volunteers.course::varchar as course,
    coalesce(substr(volunteers.runner_id, 2)::integer, 0)::integer as runner,
    coalesce(volunteers.name, '')::varchar as name,
    coalesce(string_agg(distinct nullif(volunteers.role, ''), ', ' order by nullif(volunteers.role, '')), '')::varchar as roles,
    max(coalesce(volunteers.days_so_far, 0))::integer as days,
    max(coalesce(volunteers.milestone, 0))::integer as milestone,
    bool_or(coalesce(volunteers.protected, false))::boolean as protected,
    bool_or(coalesce(volunteers.hidden, false))::boolean as hidden
from main.volunteers as volunteers
where volunteers.run_date between $1::date and $2::date
    and ($3 = '' or volunteers.course = $3)
group by 1, 2, 3, 4
order by 1, 2, 3, 4
