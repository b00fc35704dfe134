-- One row a column of a part: what it was taken for and why.
-- key: part_no, column_no
-- part_no: the part
-- column_no: place of the column, from 1
-- heading: its heading as received
-- meaning: what it was taken for
-- why: the evidence in words
select
    null::integer as part_no,
    null::integer as column_no,
    null::varchar as heading,
    null::varchar as meaning,
    null::varchar as why
