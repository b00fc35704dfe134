-- Every course with its speed.
-- One row: one course
-- key: course
-- seconds_at_25min: how much slower (+) than the average course, s for somebody who takes 25:00; null where it can't be told
-- basis: published, provisional or why not
select
    courses.course::varchar as course,
    coalesce(courses.name, courses.course)::varchar as name,
    courses.distance_m::integer as distance_m,
    courses.speed_index::double as speed_index,
    courses.low::double as low,
    courses.high::double as high,
    courses.seconds_at_25min::double as seconds_at_25min,
    courses.seconds_low::double as seconds_low,
    courses.seconds_high::double as seconds_high,
    coalesce(courses.results, 0)::bigint as results,
    coalesce(courses.runs, 0)::bigint as runs,
    coalesce(courses.shared_runners, 0)::bigint as shared_runners,
    coalesce(courses.network::varchar, '')::varchar as network,
    coalesce(courses.basis, '')::varchar as basis,
    courses.measured::boolean as measured
from main.courses as courses
order by courses.course
