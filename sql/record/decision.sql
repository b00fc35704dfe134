-- One row a decision about a line: what became of it.
-- key: id
-- id: number of the decision in decisions.csv
-- state: in force, satisfied, contradicted, contested or waits
-- words: the reason
select null::integer as id, null::varchar as state, null::varchar as words
