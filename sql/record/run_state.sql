-- One row a run whose state somebody has set.
-- key: run_no
-- run_no: the run
-- state: held, cancelled, abandoned, times lost, other route, misdirected, short or long
-- off_m: metres that a short or long run was off, 0 where not known
select null::integer as run_no, null::varchar as state, null::integer as off_m
