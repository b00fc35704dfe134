-- One row a line of a sheet that stands for a finisher, with everything known
-- about it. Part of the contract with other programs: columns are added at
-- the end, never moved.
with
    line as (
        select
            l.line_no, l.part_no, l.row_number, l.run_no, coalesce(x.position, l.position) as position, l.tied, n.text as received,
            coalesce(x.club, k.club, t.text) as club, l.note,
            r.runner_no, r.status, r.counts, r.sex, r.age_low, r.age_high, r.group_age, r.doubt, r.time_ms, r.taking_part,
            case when r.time_ms > 0 then ((r.time_ms + 999) // 1000)::integer end as time_s
        from record.line l
        join record.result r on r.line_no = l.line_no
        join record.text n on n.text_no = l.name_no
        join record.text t on t.text_no = l.club_no
        left join record.correction x on x.line_no = l.line_no
        left join record.club k on k.received = t.text
    )
select
    s.path as sheet,
    l.row_number,
    c.course,
    run.run_date,
    nullif(l.position, 0) as position,
    case when l.runner_no > 0 then 'R' || l.runner_no end as runner_id,
    l.time_s,
    case l.sex when 1 then 'M' when 2 then 'W' when 3 then 'X' end as sex,
    g.name as age_group,
    nullif(l.club, '') as club,
    case l.status
        when 0 then 'ok' when 1 then 'unnamed' when 2 then 'untimed' when 3 then 'dnf' when 4 then 'dq'
        when 5 then 'repeat' when 6 then 'doubtful' when 7 then 'superseded'
    end as status,
    (l.counts & 1) = 1 as counts_run,
    (l.counts & 2) = 2 as counts_time,
    case l.taking_part
        when 0 then 'runner' when 1 then 'walker' when 2 then 'guided' when 3 then 'guide' when 4 then 'pacer'
        when 5 then 'back marker' when 6 then 'adult with a child' when 7 then 'buggy' when 8 then 'dog'
        when 9 then 'racing wheelchair or handcycle' when 10 then 'day wheelchair or frame'
    end as taking_part_as,
    nullif(run.session, '') as session,
    case when w.runner_no is not null then w.name when l.status <> 1 then nullif(l.received, '') end as name,
    nullif(p.tab, '') as tab,
    nullif(l.time_ms, 0) as time_ms,
    l.age_low,
    l.age_high,
    100 * i.open_standard_s / (i.age_factor * l.time_s) as age_grade_pct,
    l.time_s * i.age_factor as open_equivalent_s,
    round(i.adjusted_s::double, 3) as adjusted_s,
    case i.effort when 1 then 'full' when 2 then 'steady' when 3 then 'easy' when 4 then 'unclear' end as effort,
    round(100 * i.shortfall::double, 3) as shortfall_pct,
    coalesce(i.is_pb, false) as is_pb,
    coalesce(i.is_course_best, false) as is_course_best,
    coalesce(i.is_adjusted_best, false) as is_adjusted_best,
    nullif(l.note, '') as note,
    100 * i.open_standard_s / (i.age_factor_most * l.time_s) as age_grade_low,
    100 * i.open_standard_s / (i.age_factor_least * l.time_s) as age_grade_high,
    run.distance_m,
    l.run_no,
    l.tied = 1 as tied,
    coalesce(i.first_result, false) as first_result,
    nullif(i.previous_best_s, 0) as previous_best_s,
    nullif(i.pb_margin_s, 0) as pb_margin_s,
    nullif(i.course_best_margin_s, 0) as course_best_margin_s,
    case i.newcomer when 1 then false when 2 then true end as is_newcomer,
    case i.visitor when 1 then false when 2 then true end as is_visitor,
    i.runs_total,
    nullif(i.milestone, 0) as milestone,
    i.pb_streak,
    i.attendance_streak,
    nullif(i.days_since_last, 0) as days_since_last,
    coalesce(l.age_low < 18, (l.counts & 4) = 4) as protected,
    coalesce(w.hidden, false) as hidden,
    d.words as doubt,
    case when w.wished then w.name else nullif(l.received, '') end as name_received,
    l.line_no,
    round(i.form_s::double, 1) as form_s,
    round(i.form_low::double, 1) as form_low,
    round(i.form_high::double, 1) as form_high,
    l.runner_no,
    i.attendance_since
from line l
join sheet.part p on p.part_no = l.part_no
join sheet.sheet s on s.sheet_no = p.sheet_no
join record.run run on run.run_no = l.run_no
join record.course c on c.course_no = run.course_no
left join record.runner w on w.runner_no = l.runner_no
left join record.doubt d on d.doubt = l.doubt
left join insight.result i on i.line_no = l.line_no and i.runner_no = l.runner_no
left join insight.age_group g on g.age = l.group_age and g.sex = l.sex
