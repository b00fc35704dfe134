-- One row a runner of several of whom some may be one person.
-- key: question, runner_no
-- question: number of the question, the most worth asking first
-- runner_no: one of the runners
-- chance: that this runner is one person with at least one of the others, 0 to 1
select null::integer as question, null::integer as runner_no, null::double as chance
