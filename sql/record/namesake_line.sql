-- One row a line that belongs to one of several namesakes, nobody knows whom.
-- key: line_no
-- question: number of the question
-- line_no: the line
select null::integer as question, null::integer as line_no
