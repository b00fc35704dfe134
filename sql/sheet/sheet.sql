-- One row a sheet that is loaded.
-- key: sheet_no
-- sheet_no: place in the ledger, from 1
-- hash: SHA-256 of the sheet's bytes
-- path: path relative to the folder loaded
-- format: csv or xlsx
-- encoding: how text was stored
-- dialect: delimiter, quoting and line ends in words
-- rows: lines that stand for a finisher
-- date_order: dmy or mdy where its own dates in figures show which of day and month comes first; blank
select
    null::integer as sheet_no,
    null::varchar as hash,
    null::varchar as path,
    null::varchar as format,
    null::varchar as encoding,
    null::varchar as dialect,
    null::integer as rows,
    null::varchar as date_order
