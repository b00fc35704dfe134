-- Every course with its speed.
-- One row: one course over one distance
-- key: course, distance_m
-- seconds_at_25min: how much slower (+) than the average course, s for somebody who takes 25:00; null where it can't be told
-- basis: published, provisional or why not
with shown as (
    select
        figure.course_no, figure.effect, figure.sd, figure.shared_runners, figure.basis,
        figure.basis in ('published', 'provisional') as has_index
    from insight.course as figure
)

select
    course.course::varchar as course,
    coalesce(course.name, course.course)::varchar as name,
    course.distance_m::integer as distance_m,
    case when shown.has_index then 100 * exp(-shown.effect) end::double as speed_index,
    case when shown.has_index then 1500 * (exp(shown.effect) - 1) end::double as seconds_at_25min,
    case when shown.has_index then 1500 * (exp(shown.effect - 1.645 * shown.sd) - 1) end::double as seconds_low,
    case when shown.has_index then 1500 * (exp(shown.effect + 1.645 * shown.sd) - 1) end::double as seconds_high,
    coalesce(shown.shared_runners, 0)::bigint as shared_runners,
    coalesce(shown.basis, 'no results in the fit')::varchar as basis,
    course.measured::boolean as measured
from record.course as course
left join shown on shown.course_no = course.course_no
order by course.course, course.distance_m
