-- What the desk has settled of results as records, in the runs asked for.
-- One row: one result that is confirmed or void
-- key: run_no, runner_no
select
    result.run_no::integer as run_no,
    result.runner_no::integer as runner_no,
    state.state::varchar as state
from record.record_state as state
inner join record.result as result on result.line_no = state.line_no
where result.run_no in /* runs */ (0)
order by run_no, runner_no, state
