-- One row a runner in the fit: form and its change.
-- key: runner_no
-- runner_no: the runner
-- form_s: good-effort time for 5 km on a mean course and day, seconds
-- form_low: lower end of the 90 % interval
-- form_high: upper end
-- last_day: day of the latest result in the fit
-- change: log change of form over 12 weeks, NULL where there is nothing to compare
-- change_sd: its standard deviation, calibrated
-- p_faster: probability that form has improved over 12 weeks
-- p_level: probability that the change is under 2 %
-- results: results in the fit
-- level: form in log seconds at the latest result, as the fit has it
-- level_sd: its standard deviation there, calibrated
-- results_before: results at least 12 weeks before the latest
-- results_within: results in the 12 weeks up to the latest
-- gap_days: longest gap between the results compared
-- print: hash of the runner's runs and times, to see what has changed
select
    null::integer as runner_no,
    null::double as form_s,
    null::double as form_low,
    null::double as form_high,
    null::date as last_day,
    null::double as change,
    null::double as change_sd,
    null::double as p_faster,
    null::double as p_level,
    null::integer as results,
    null::double as level,
    null::double as level_sd,
    null::integer as results_before,
    null::integer as results_within,
    null::integer as gap_days,
    null::bigint as print
