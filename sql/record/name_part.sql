-- One row a distinct given or family name as the last full linking knew it, and
-- how common it and its like are, as shares of signatures. Kept so that new
-- lines can be given to known runners without linking everything again.
-- key: part, part_no
-- part: 1 given name, 2 family name
-- part_no: number within the part, in the order of the alphabet
-- text: the name, folded
-- mass: share of signatures with it
-- rare: share of far rarer names one slip away, mostly mistypings of it
-- slip: share of other names one slip away
-- nick: share of names that the table of short forms ties to it
-- double: share of double names that hold it
-- as_read: distinct texts that have it in this place before names are turned round
-- classes: how many of the names of each community have it, twelve 32-bit floats; NULL none
select
    null::utinyint as part,
    null::integer as part_no,
    null::varchar as text,
    null::double as mass,
    null::double as rare,
    null::double as slip,
    null::double as nick,
    null::double as double,
    null::integer as as_read,
    null::blob as classes
