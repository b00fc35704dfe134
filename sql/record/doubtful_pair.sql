-- One row a pair of runners who may be one, the most worth asking about first.
-- Only the head of the list is kept: 2 in 100 runners, at least 50.
-- key: pair
-- pair: place in the list, from 1
-- first_no: runner, the older number
-- second_no: the other runner
-- bits: weight of the evidence, log2 of the odds; positive speaks for one person
-- chance: chance that they are one person, 0 to 1
-- gain: chance times the geometric mean of their lines: the order of the list
select
    null::integer as pair,
    null::integer as first_no,
    null::integer as second_no,
    null::double as bits,
    null::double as chance,
    null::double as gain
