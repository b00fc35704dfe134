-- One row a line of members.csv.
-- key: line
-- line: line of the file, from 2
-- name: the person as written there
-- runner_no: the runner of that name or id, 0 where none or several have it
-- club: the club
-- claim: first or second
-- from_day: first day of membership, NULL where not known
-- to_day: last day of membership, NULL where it goes on
select
    null::integer as line,
    null::varchar as name,
    null::integer as runner_no,
    null::varchar as club,
    null::varchar as claim,
    null::date as from_day,
    null::date as to_day
