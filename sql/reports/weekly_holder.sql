-- The names of runners by their numbers.
-- One row: one runner of those asked for
-- key: runner_no
select
    runner.runner_no::integer as runner_no,
    coalesce(runner.name, '')::varchar as name,
    coalesce(runner.hidden, false)::boolean as hidden
from record.runner as runner
where runner.runner_no in /* runners */ (0)
order by runner.runner_no
