-- One row a spelling of a club that is another club's other name.
-- key: received
-- received: as sheets print it
-- club: the club's name
select null::varchar as received, null::varchar as club
