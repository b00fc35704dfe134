-- One row a part of the evidence on a doubtful pair. The bits of a pair's rows
-- add up to the pair's.
-- key: pair, part
-- pair: the pair
-- part: order within the pair, from 1
-- evidence: what is compared
-- words: what was found, in plain words
-- bits: weight; positive speaks for one person
select
    null::integer as pair,
    null::integer as part,
    null::varchar as evidence,
    null::varchar as words,
    null::double as bits
