-- One row a runner number that was joined to another.
-- key: runner_no
-- runner_no: number no longer used
-- now: the runner it belongs to
select null::integer as runner_no, null::integer as now
