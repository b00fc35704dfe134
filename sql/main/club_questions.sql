-- One row a name that is probably another name of a club: a question to the
-- desk. Nothing is changed until it is answered.
select q.other, q.club, q.why
from record.club_proposal q
