-- One row a problem found while reading sheets or comparing them.
-- sheet_no: the sheet
-- tab: the tab, blank for text sheets
-- row_number: row as a person sees it, 0 for the whole sheet
-- column_letter: spreadsheet letters of the column, blank for the whole row
-- severity: 1 waits, 2 doubtful, 3 look, 4 note
-- kind: short stable name of the problem
-- read: what the sheet says
-- expected: what would have been right
-- todo: what to do next
-- run_no: the run it is about, 0 where none
-- answers: its possible answers, one a line: what follows lapwing load and the sheet's name, and behind a tab when it is right; blank where there are none
select
    null::integer as sheet_no,
    null::varchar as tab,
    null::integer as row_number,
    null::varchar as column_letter,
    null::utinyint as severity,
    null::varchar as kind,
    null::varchar as read,
    null::varchar as expected,
    null::varchar as todo,
    null::integer as run_no,
    null::varchar as answers
