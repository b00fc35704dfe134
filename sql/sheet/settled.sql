-- One row a problem that needs no look any more, and why.
-- sheet_no: the sheet
-- tab: the tab, blank for text sheets
-- row_number: row as a person sees it, 0 for the whole sheet
-- column_letter: spreadsheet letters of the column, blank for the whole row
-- kind: short stable name of the problem
-- read: what the sheet says
-- words: why it is settled
select
    null::integer as sheet_no,
    null::varchar as tab,
    null::integer as row_number,
    null::varchar as column_letter,
    null::varchar as kind,
    null::varchar as read,
    null::varchar as words
