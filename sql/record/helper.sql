-- One row a row of a list of volunteers that came as a sheet.
-- part_no: the list
-- row_number: row that a person sees
-- name: as written
-- role: as written, blank where none
-- course: short name of the course
-- run_date: the day
select
    null::integer as part_no,
    null::integer as row_number,
    null::varchar as name,
    null::varchar as role,
    null::varchar as course,
    null::date as run_date
