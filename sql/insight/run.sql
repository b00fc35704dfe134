-- One row a run in the fit: its conditions.
-- key: run_no
-- run_no: the run
-- effect: log time against the course's usual, + is slower
-- low: lower end of the 90 % interval
-- high: upper end
-- results: results in the fit
select
    null::integer as run_no,
    null::double as effect,
    null::double as low,
    null::double as high,
    null::integer as results
