-- One row a course: how fast it is beside the others.
-- key: course_no
-- course_no: the course
-- effect: log time against the mean of its network and distance, + is slower
-- sd: standard deviation of the effect, calibrated
-- network: number of the set of courses that share runners, NULL where not known yet
-- basis: published, provisional, or why there is no index
-- results: results in the fit
-- runs: runs in the fit
-- shared_runners: runners who also ran another course of the network
-- reason: why the index is provisional or missing, blank where it is published
-- group_no: number of the set that may be compared: one network, one distance
-- runners: runners in the fit
-- level: log time before centring, as the fit has it
-- share_resident: estimated share of all-out results among residents
-- share_visitor: the same among visitors
-- standing: 0 no index, 1 provisional, 2 published
-- reason_no: number of the reason
select
    null::integer as course_no,
    null::double as effect,
    null::double as sd,
    null::integer as network,
    null::varchar as basis,
    null::integer as results,
    null::integer as runs,
    null::integer as shared_runners,
    null::varchar as reason,
    null::integer as group_no,
    null::integer as runners,
    null::double as level,
    null::double as share_resident,
    null::double as share_visitor,
    null::utinyint as standing,
    null::utinyint as reason_no
