-- One row a course with results: how fast it is beside the others.
-- key: course_no
-- course_no: the course
-- effect: log time against the mean of its network, + is slower
-- sd: standard deviation of the effect, calibrated
-- network: number of the group of courses that share runners
-- basis: published, provisional, or why there is no index
-- results: results in the fit
-- runs: runs in the fit
-- shared_runners: runners who also ran another course of the network
select
    null::integer as course_no,
    null::double as effect,
    null::double as sd,
    null::integer as network,
    null::varchar as basis,
    null::integer as results,
    null::integer as runs,
    null::integer as shared_runners
