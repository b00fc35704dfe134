-- One row a run whose state somebody has set.
-- key: run_no
-- run_no: the run
-- state: held, cancelled, abandoned, times lost, other route, misdirected, known short or long
select null::integer as run_no, null::varchar as state
