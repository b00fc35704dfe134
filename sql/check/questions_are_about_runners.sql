-- Whoever is asked about, in a doubtful pair or as one of several namesakes,
-- is a runner.
select asked.runner_no
from (
    select first_no as runner_no from record.doubtful_pair
    union
    select second_no from record.doubtful_pair
    union
    select runner_no from record.namesake
    union
    select runner_no from record.piece
    union
    select runner_no from record.thin_line
) asked
left join record.runner w on w.runner_no = asked.runner_no
where w.runner_no is null
