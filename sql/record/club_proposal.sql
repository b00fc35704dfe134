-- One row a name that is probably another name of a club, and is not settled.
-- key: other
-- other: the name as sheets print it
-- club: the club's name
-- why: what speaks for it
select null::varchar as other, null::varchar as club, null::varchar as why
