-- The runs of the days asked for, to find the numbers of those wanted.
-- One row: one run from day $1 to day $2
-- key: run_no
select
    run.run_no::integer as run_no,
    course.course::varchar as course,
    run.run_date::date as run_date,
    run.session::varchar as session
from record.run as run
inner join record.course as course on course.course_no = run.course_no
where run.run_date between $1::date and $2::date
order by run.run_no
