-- One row a runner, name and course they stood under and at, for finding the
-- runners whose a new line may be. In the order of runners.
-- runner_no: the runner
-- given_no: part_no of the given name in record.name_part
-- family_no: part_no of the family name
-- course_no: the course
select null::integer as runner_no, null::integer as given_no, null::integer as family_no, null::integer as course_no
