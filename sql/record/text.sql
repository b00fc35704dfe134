-- One row a distinct text that sheets give as a name, a number or a club. Lines
-- hold its number: the same few texts stand on millions of lines.
-- key: text_no
-- text_no: number in this database, in order of loading; 0 is the blank
-- text: as received
select null::integer as text_no, null::varchar as text
