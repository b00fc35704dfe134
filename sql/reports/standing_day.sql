-- How much the days of the year before differ from a usual one.
-- One row: all runs of the year up to day $1
-- key: runs
-- runs: runs of which it can be told
-- low, high: seconds at 25:00 against a usual day there, + is slower, that nine runs in ten lie between; null without any
select
    count(*)::integer as runs,
    (1500 * (exp(quantile_cont(figure.effect, 0.05)) - 1))::double as low,
    (1500 * (exp(quantile_cont(figure.effect, 0.95)) - 1))::double as high
from insight.run as figure
inner join record.run as run on run.run_no = figure.run_no
where figure.effect is not null and run.run_date between $1::date - 365 and $1::date
