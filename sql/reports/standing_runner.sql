-- A runner as the standing card needs them.
-- One row: runner $1
-- key: runner_id
-- form_s, form_low, form_high: good-effort time over 5 km on an average course and day, s; null where it may not be shown
-- change: log of the change of form over 12 weeks, negative is faster
-- change_sd: its standard deviation
-- p_level: probability that form changed by less than 2 %
-- first_age, last_age: the ages of the age group, years
-- latest: newest day in the archive
select
    runners.runner_id::varchar as runner_id,
    coalesce(runners.name, '')::varchar as name,
    coalesce(runners.sex, '')::varchar as sex,
    coalesce(runners.age_group, '')::varchar as age_group,
    coalesce(runners.club, '')::varchar as club,
    runners.form_s::double as form_s,
    runners.form_low::double as form_low,
    runners.form_high::double as form_high,
    runners.change::double as change,
    runners.change_sd::double as change_sd,
    runners.p_faster::double as p_faster,
    runners.p_level::double as p_level,
    coalesce(runners.protected, true)::boolean as protected,
    coalesce(runners.hidden, false)::boolean as hidden,
    coalesce(ages.first_age, 0)::integer as first_age,
    coalesce(ages.last_age, 0)::integer as last_age,
    (select max(run.run_date) from record.run as run)::date as latest
from main.runners as runners
left join (
    select age_group.sex, age_group.name, min(age_group.age) as first_age, max(age_group.age) as last_age
    from insight.age_group as age_group
    group by age_group.sex, age_group.name
) as ages on ages.name = runners.age_group
    and ages.sex = case runners.sex when 'M' then 1 when 'W' then 2 when 'X' then 3 end
where runners.runner_no = $1
