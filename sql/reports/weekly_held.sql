-- The records held before the sheets, on the courses of the runs asked for.
-- One row: one record of adults, by course, sex and age group
-- key: course, sex, age_group, time_s, name, run_date
-- age_group: blank for all ages
-- run_date: null where it is not known
select
    held.course::varchar as course,
    held.sex::varchar as sex,
    coalesce(held.age_group, '')::varchar as age_group,
    held.time_s::integer as time_s,
    coalesce(held.name, '')::varchar as name,
    held.protected::boolean as protected,
    held.hidden::boolean as hidden,
    held.run_date::date as run_date
from main.held_records as held
where held.sex in ('M', 'W')
    and held.course in (
        select course.course from record.run as run
        inner join record.course as course on course.course_no = run.course_no
        where run.run_no in /* runs */ (0))
order by course, sex, age_group, time_s, run_date nulls first, held.line
