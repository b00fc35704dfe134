-- The records held before the sheets, on the courses of the runs asked for.
-- One row: one record of adults, by course route, sex and age group
-- key: course_no, sex, age_group, time_s, name, run_date
-- course_no: of the route of the record's distance; one over another distance is no record of it
-- age_group: blank for all ages
-- run_date: null where it is not known
select
    course.course_no::integer as course_no,
    held.sex::varchar as sex,
    coalesce(held.age_group, '')::varchar as age_group,
    held.time_s::integer as time_s,
    coalesce(held.name, '')::varchar as name,
    held.hidden::boolean as hidden,
    held.run_date::date as run_date
from main.held_records as held
inner join record.course as course on course.course = held.course and course.distance_m = held.distance_m
where held.sex in ('M', 'W')
    and not held.protected
    and course.course_no in (select run.course_no from record.run as run where run.run_no in /* runs */ (0))
order by course_no, sex, age_group, time_s, run_date nulls first, held.line
