-- One row a line of a sheet that stands for a finisher (or one who did not
-- finish), as read. Nothing is ever changed here: what became of a line is in
-- record.result.
-- line_no: number in this database, in order of loading
-- part_no: the part of the sheet
-- row_number: row as a person sees it
-- run_no: the run
-- position: place on the sheet, 0 where none
-- tied: the sheet prints the place as shared
-- name_no: name as received, in record.text
-- number_no: runner's number as received, in record.text
-- time_ms: time in milliseconds as received, 0 where none
-- sex: 0 not given, 1 M, 2 W, 3 X
-- birth_lo: first birth date the line allows, 1970-01-01 with birth_hi the same: not known
-- birth_hi: last birth date the line allows
-- basis: what the age was reckoned on, see package age
-- age_text: age or group as printed on the sheet
-- club_no: club as received, in record.text
-- taking_part: see package record
-- status: see package record
-- note: notes as received
select
    null::integer as line_no,
    null::integer as part_no,
    null::integer as row_number,
    null::integer as run_no,
    null::integer as position,
    null::utinyint as tied,
    null::integer as name_no,
    null::integer as number_no,
    null::integer as time_ms,
    null::utinyint as sex,
    null::date as birth_lo,
    null::date as birth_hi,
    null::utinyint as basis,
    null::varchar as age_text,
    null::integer as club_no,
    null::utinyint as taking_part,
    null::utinyint as status,
    null::varchar as note
