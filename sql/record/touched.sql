-- One row a run whose facts may have changed since its reports were last
-- looked at, where a refresh of some lines knows which. After a refresh of
-- everything that may be any run, and the table is empty.
-- key: run_no
-- run_no: the run
select null::integer as run_no
