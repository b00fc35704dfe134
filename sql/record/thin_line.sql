-- One row a line that fits the rest of its runner badly.
-- key: line_no
-- fit: number of the group of lines, the most worth asking about first
-- runner_no: the runner it was given to
-- line_no: the line
-- bits: weight of the group of lines against the rest of the runner
select
    null::integer as fit,
    null::integer as runner_no,
    null::integer as line_no,
    null::double as bits
