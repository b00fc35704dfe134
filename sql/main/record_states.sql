-- One row a result that the desk has confirmed as a record, or declared void.
select r.line_no, r.state
from record.record_state r
