-- One row a line that a decision gave another club or place than its sheet.
-- key: line_no
-- line_no: the line
-- club: the club that stands
-- position: the place that stands, 0 where none
select null::integer as line_no, null::varchar as club, null::integer as position
