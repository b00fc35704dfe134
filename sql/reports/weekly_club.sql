-- What is asked about names of clubs.
-- One row: one name that may be another name of a club
-- key: other
select
    questions.other::varchar as other,
    questions.club::varchar as club,
    questions.why::varchar as why
from main.club_questions as questions
order by questions.other
