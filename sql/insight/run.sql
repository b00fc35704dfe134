-- One row a run in the fit: its conditions.
-- key: run_no
-- run_no: the run
-- effect: log time against the course's usual, + is slower; NULL where fewer than 5 results are in the fit
-- low: lower end of the 90 % interval
-- high: upper end
-- results: results in the fit
-- fitted: the effect as the fit has it, whatever the number of results
-- fitted_sd: its standard deviation, calibrated
-- print: sum of hashes of the run's lines and times, to see what has changed
select
    null::integer as run_no,
    null::double as effect,
    null::double as low,
    null::double as high,
    null::integer as results,
    null::double as fitted,
    null::double as fitted_sd,
    null::bigint as print
