-- One row a reason why lines are doubtful, repeated or superseded, in words.
-- key: doubt
-- doubt: number of the reason
-- words: the reason
select null::integer as doubt, null::varchar as words
