-- One row a record of history.csv: who held it before the sheets.
-- key: line
-- line: row of the file
-- course: short name of the course
-- distance_m: the route's distance in metres
-- sex: M, W or X
-- age_group: age group, blank for all ages
-- time_s: the time in whole seconds
-- name: the holder as written, blank where nobody is named
-- runner_no: the runner of that name or id, 0 where none or not certain
-- run_date: the day, NULL where not known
-- protected: the holder may have been under 18 on the day
select
    null::integer as line,
    null::varchar as course,
    null::integer as distance_m,
    null::varchar as sex,
    null::varchar as age_group,
    null::integer as time_s,
    null::varchar as name,
    null::integer as runner_no,
    null::date as run_date,
    null::boolean as protected
