-- The newest day in the archive.
-- One row: the date of the newest run; null in an empty archive
-- key: latest
select max(run.run_date)::date as latest
from record.run as run
