-- What tells runners apart when somebody decides who is who.
-- One row a runner of the list $1 (runner numbers with commas between them).
-- key: runner_no
-- lines: lines that stand (repeats and superseded ones left out)
-- state: changes when a line of a run known up to sheet $2 of the ledger comes to the runner or leaves it; new runs leave it as it is
-- hash, tab, row_number: a line typical of the runner, the earliest of its commonest spelling, to tie decisions to
with
    wanted as (
        select unnest(string_split($1, ','))::integer as runner_no
    ),
    own as (
        select
            r.runner_no, r.status, r.same_as, r.time_ms,
            n.text as name, u.text as number, l.run_no, l.row_number,
            run.run_date, run.session, c.course, c.name as course_name,
            s.path, s.hash, p.tab,
            count(*) over (
                partition by r.runner_no, l.name_no, l.number_no, case when l.number_no = 0 then c.course end
            ) as alike
        from wanted
        join record.result r on r.runner_no = wanted.runner_no
        join record.line l on l.line_no = r.line_no
        join record.text n on n.text_no = l.name_no
        join record.text u on u.text_no = l.number_no
        join record.run run on run.run_no = l.run_no
        join record.course c on c.course_no = run.course_no
        join sheet.part p on p.part_no = l.part_no
        join sheet.sheet s on s.sheet_no = p.sheet_no
        where r.status not in (5, 7)
    ),
    known as (
        select distinct l.run_no
        from record.line l
        join sheet.part p on p.part_no = l.part_no
        where p.sheet_no <= $2 and l.run_no in (select run_no from own)
    ),
    state as (
        select
            own.runner_no,
            md5(string_agg(concat_ws('|', course, run_date, session, name, number), ';'
                order by run_date, course, session, name, number)) as state
        from own
        join known on known.run_no = own.run_no
        group by own.runner_no
    ),
    typical as (
        select distinct on (runner_no) runner_no, hash, tab, row_number
        from own
        where same_as = 0 and status <> 1
        order by runner_no, alike desc, run_date, course, session, path, row_number
    ),
    place as (
        select
            *,
            row_number() over (partition by runner_no order by run_date desc, course, session, path, row_number) as back
        from own
    ),
    latest as (
        select
            runner_no,
            count(*) as lines,
            min(run_date) as first_run,
            max(run_date) as last_run,
            string_agg(concat_ws(' ', run_date, course_name,
                case when time_ms > 0 then
                    case when time_ms > 3599000 then concat(((time_ms + 999) // 3600000), ':', lpad((((time_ms + 999) // 60000) % 60)::varchar, 2, '0'))
                        else ((time_ms + 999) // 60000)::varchar end
                    || ':' || lpad((((time_ms + 999) // 1000) % 60)::varchar, 2, '0') end), '; '
                order by back) filter (back <= 3) as results
        from place
        group by runner_no
    )
select
    w.runner_no,
    w.name,
    w.sex,
    w.birth_lo,
    w.birth_hi,
    w.club,
    coalesce(n.lines, 0)::integer as lines,
    n.first_run,
    n.last_run,
    coalesce(n.results, '') as results,
    coalesce(state.state, '') as state,
    coalesce(t.hash, '') as hash,
    coalesce(t.tab, '') as tab,
    coalesce(t.row_number, 0)::integer as row_number
from wanted
join record.runner w on w.runner_no = wanted.runner_no
left join latest n on n.runner_no = w.runner_no
left join state on state.runner_no = w.runner_no
left join typical t on t.runner_no = w.runner_no
order by w.runner_no
