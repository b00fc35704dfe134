-- How the lines were linked into runners at the last refresh: one row, none
-- where no line names anybody.
-- lines: lines that name somebody
-- runners: runners they were found to be
-- signatures: groups of lines that agree in name, sex and number or course
-- pairs: pairs of signatures that were weighed
-- joins: joins that were made
-- join_bits: weight from which a single line is joined; two with more lines need up to 3 more
-- review_bits: weight below which a pair is not even doubtful
-- learned: the weights were learned from this archive, else starting weights
-- matches: likely pairs of one person that they were learned from
-- doubtful: pairs that stayed doubtful
-- latest_sheet: newest sheet in the ledger at the time
select
    null::integer as lines,
    null::integer as runners,
    null::integer as signatures,
    null::integer as pairs,
    null::integer as joins,
    null::double as join_bits,
    null::double as review_bits,
    null::boolean as learned,
    null::double as matches,
    null::integer as doubtful,
    null::integer as latest_sheet
