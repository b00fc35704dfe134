-- One row an age and sex: the age group.
-- key: age, sex
-- age: whole years
-- sex: 0 not known, 1 M, 2 W, 3 X
-- first_age: youngest age of the group
-- name: printed name
select
    null::utinyint as age,
    null::utinyint as sex,
    null::utinyint as first_age,
    null::varchar as name
