-- The newest day in the archive.
-- One row: the date of the newest run; null in an empty archive
-- key: latest
select max(runs.run_date)::date as latest
from main.runs as runs
