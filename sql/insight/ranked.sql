-- One row a result that ranks in an age group; the rows of a full refresh stand group by
-- group, so that one group is read without going through the others.
-- sex: 1 M, 2 W, 3 X
-- first_age: youngest age of the group
-- runner_no: the runner
-- run_no: the run
-- time_s: seconds, rounded up
-- adjusted_s: after allowing for course and day, seconds rounded up, 0 where it can't be said
-- grade: 100 times the age grade in per cent, rounded, 0 where the age is not certain, where it needs checking or where there is no standard
select
    null::utinyint as sex,
    null::utinyint as first_age,
    null::integer as runner_no,
    null::integer as run_no,
    null::integer as time_s,
    null::integer as adjusted_s,
    null::integer as grade
