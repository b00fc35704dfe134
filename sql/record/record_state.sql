-- One row a result that the desk has confirmed as a record or declared void.
-- key: line_no
-- line_no: the line
-- state: confirmed or void
select null::integer as line_no, null::varchar as state
