-- One row a weight of the linkage, as used at the last refresh.
-- key: place
-- place: order of the list
-- words: what is compared and how far it agrees
-- kind: bits (the weight itself) or share (of pairs of one person that agree so far; the weight is log2 of its ratio to the share of such names among all)
-- in_force: value used
-- starting: value before anything was learned
select
    null::integer as place,
    null::varchar as words,
    null::varchar as kind,
    null::double as in_force,
    null::double as starting
