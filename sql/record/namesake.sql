-- One row a runner who may be meant by lines of one name that no age places.
-- key: question, runner_no
-- question: number of the question, the most worth asking first
-- runner_no: one of the namesakes
select null::integer as question, null::integer as runner_no
