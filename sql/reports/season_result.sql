-- Every counted finish of a season, as league tables and attendance need it.
-- One row: one result from day $1 to day $2, on course $3 ('' for all), of club $4 ('' for all).
-- The club is that of the members on the day where $5 is true, else the one that the sheet prints.
-- key: course, run_date, session, runner_id, sheet, tab, row_number
-- runner: number of the runner, 12 for R12
-- scores: may stand in places and leagues: runner, walker or guided runner beyond doubt
-- claim: first or second, of a member; blank where it is not asked
-- age_low: youngest age on the day, years; null where not known
with membership as (
    select members.runner_id, members.claim,
        coalesce(members.member_from, date '0001-01-01') as member_from, coalesce(members.member_to, date '9999-12-31') as member_to
    from main.members as members
    where $5::boolean and members.club = $4 and members.runner_id is not null
),

claims as (
    select results.runner_id, results.run_date, min(membership.claim) as claim
    from main.results as results
    inner join membership on membership.runner_id = results.runner_id
        and results.run_date between membership.member_from and membership.member_to
    where results.run_date between $1::date and $2::date
    group by results.runner_id, results.run_date
)

select
    results.course::varchar as course,
    results.run_date::date as run_date,
    coalesce(results.session, '')::varchar as session,
    substr(results.runner_id, 2)::integer as runner,
    results.position::integer as position,
    results.time_s::integer as time_s,
    coalesce(results.counts_time, false)::boolean as counts_time,
    (coalesce(results.taking_part_as, 'runner') in ('runner', 'walker', 'guided')
        and results.status in ('ok', 'untimed'))::boolean as scores,
    coalesce(results.club, '')::varchar as club,
    coalesce(results.age_group, '')::varchar as age_group,
    results.age_grade_pct::double as age_grade_pct,
    (coalesce(results.age_grade_high - results.age_grade_low, 0) < 0.005)::boolean as grade_certain,
    results.age_low::integer as age_low,
    coalesce(results.protected, true)::boolean as protected,
    results.is_newcomer::boolean as is_newcomer,
    coalesce(results.is_pb, false)::boolean as is_pb,
    coalesce(claims.claim, '')::varchar as claim
from main.results as results
left join claims on claims.runner_id = results.runner_id and claims.run_date = results.run_date
where results.run_date between $1::date and $2::date
    and ($3 = '' or results.course = $3)
    and ($4 = '' or ($5::boolean and claims.claim is not null) or (not $5::boolean and results.club = $4))
    and results.runner_id is not null
    and results.counts_run
order by results.run_date, results.course, session, results.position nulls last, runner, results.sheet, results.tab nulls first, results.row_number
