-- One row a line: what became of it, and whose it is.
-- line_no: the line
-- runner_no: the runner, 0 where nobody is named
-- status: see package record
-- counts: 1 counts as a run, 2 counts as a time, 3 both; and 4 where the age is not known and the person is treated as a child
-- sex: 0 not known, 1 M, 2 W, 3 X: the line's own or else the runner's
-- age_low: youngest age on the day, NULL where not known
-- age_high: oldest age on the day
-- group_age: youngest age of the age group by the rule in force, NULL where the group is not certain
-- same_as: line of the same result elsewhere, 0 where none
-- doubt: number of the reason in record.doubt, 0 where none
-- time_ms: the time that stands (a decision may have corrected the sheet's)
-- taking_part: the taking part that stands
-- run_no: the run
-- position: the place that stands, 0 where none
-- part_no: the part of the sheet
select
    null::integer as line_no,
    null::integer as runner_no,
    null::utinyint as status,
    null::utinyint as counts,
    null::utinyint as sex,
    null::utinyint as age_low,
    null::utinyint as age_high,
    null::utinyint as group_age,
    null::integer as same_as,
    null::integer as doubt,
    null::integer as time_ms,
    null::utinyint as taking_part,
    null::integer as run_no,
    null::integer as position,
    null::integer as part_no
