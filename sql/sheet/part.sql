-- One row a table found on a sheet: the whole of a text sheet, or a tab.
-- key: part_no
-- part_no: number in this database, in order of loading
-- sheet_no: the sheet
-- tab: name of the tab, blank for text sheets
-- tab_index: place of the tab in the workbook, from 0
-- heading_row: row of the headings, 0 where there are none
-- kind: full, full by hand (somebody said so), excerpt, times or names
-- course_from: where the course was found
-- date_from: where the date was found
-- readings: how times, ages and the like are read, in words
-- answers: the answers that would have it read like this, as in time=mm.ss
select
    null::integer as part_no,
    null::integer as sheet_no,
    null::varchar as tab,
    null::integer as tab_index,
    null::integer as heading_row,
    null::varchar as kind,
    null::varchar as course_from,
    null::varchar as date_from,
    null::varchar as readings,
    null::varchar as answers
