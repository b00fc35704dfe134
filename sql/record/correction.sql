-- One row a line that a decision made say something else than its sheet, and
-- whose club is another one now.
-- key: line_no
-- line_no: the line
-- club: the club that stands
select null::integer as line_no, null::varchar as club
