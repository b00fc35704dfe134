-- One row a runner's number that a sheet gave a runner, for finding the runners
-- whose a new line may be.
-- runner_no: the runner
-- number: as received
select null::integer as runner_no, null::varchar as number
