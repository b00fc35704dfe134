-- One row a runner.
-- key: runner_no
-- runner_no: stable number, printed as R12
-- name: name to print
-- name_key: folded name for looking people up
-- sex: 0 not known, 1 M, 2 W, 3 X
-- birth_lo: first birth date that all sheets together allow, NULL where not known
-- birth_hi: last birth date that all sheets together allow
-- club: club of the latest result that names one
-- hidden: the person asked not to be shown
-- wished: name or category are the person's own wish, over all history
-- may_be_child: the age is not known, and the person is treated as a child
-- group_age: youngest age of the age group at the last run that counts, NULL where it is not certain
select
    null::integer as runner_no,
    null::varchar as name,
    null::varchar as name_key,
    null::utinyint as sex,
    null::date as birth_lo,
    null::date as birth_hi,
    null::varchar as club,
    null::boolean as hidden,
    null::boolean as wished,
    null::boolean as may_be_child,
    null::utinyint as group_age
