-- One row a measured route at a venue.
-- key: course_no
-- course_no: number in this database
-- course: short name, as in file names
-- name: name to print
-- distance_m: distance in metres
-- weekday: usual weekday, 0 Sunday … 6 Saturday, -1 unknown
-- measured: the distance was measured
-- complete_from: results are complete from this day on, NULL where not known
select
    null::integer as course_no,
    null::varchar as course,
    null::varchar as name,
    null::integer as distance_m,
    null::integer as weekday,
    null::boolean as measured,
    null::date as complete_from
