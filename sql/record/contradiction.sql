-- One row a decision about people that others contradict; it was not followed.
-- key: decision
-- decision: its id in decisions.csv
-- words: what contradicts it and what to do
select null::integer as decision, null::varchar as words
