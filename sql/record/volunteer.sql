-- One row a person, role, course and day of helping, from volunteers.csv and from sheets.
-- name: as written
-- runner_no: the runner of that name, 0 where none or not certain
-- role: as written
-- course: short name of the course
-- run_date: the day
-- days: days on which the person has helped up to this one, the opening balance with them; 0 where not known
-- milestone: the round number of days that this day is, 0 for none
-- listed_at: the table or sheet with its row
-- protected: where nobody in particular is known: a child may be meant
-- hidden: where nobody in particular is known: somebody who asked not to be shown may be meant
select
    null::varchar as name,
    null::integer as runner_no,
    null::varchar as role,
    null::varchar as course,
    null::date as run_date,
    null::integer as days,
    null::integer as milestone,
    null::varchar as listed_at,
    null::boolean as protected,
    null::boolean as hidden
