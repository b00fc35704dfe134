package reports

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/store"
)

// A workbook's tables against the views, worked out a second time in SQL and
// written as the workbook prints them: the two share no code. Rows are
// compared as sets, columns as named; what a query gives as NULL is an empty
// cell.
type recomputed struct {
	tab     string
	columns []string // headings compared
	sql     string
	least   int // rows that the fixture must give, else the check is empty
}

// macros of the checks: a running time as 24:31 or 1:02:03, a name as
// published, a day as 7 Mar 2026, a difference in seconds with its sign, the
// list that a group belongs to.
var macros = []string{
	`create macro clock(s) as case when s >= 3600 then printf('%d:%02d:%02d', s // 3600, s % 3600 // 60, s % 60)
		else printf('%d:%02d', s // 60, s % 60) end`,
	`create macro shown(name, protected, hidden) as case when hidden then 'Anonymous'
		when protected then split_part(name, ' ', 1) || ' ' || left(split_part(name, ' ', 2), 1) || '.' else name end`,
	`create macro on_day(d) as strftime(d, '%-d %b %Y')`,
	`create macro gap(s) as case when round(s) > 0 then printf('+%d s', round(s)::bigint) when round(s) < 0 then printf('−%d s', -round(s)::bigint) else '0 s' end`,
	`create macro listed(sex, g) as case when g is null then null when starts_with(g, sex) then g else g || ' ' || sex end`,
	`create macro share(part, whole) as (floor(100.0 * part / whole + 0.5))::integer::varchar`,
}

// views of the checks: the run of the day with the group as published, and the
// season's counted results.
const recomputeViews = `
create view today as select *, shown(name, protected, hidden) as public,
	case when status in ('ok', 'untimed') and not hidden and not (sex = 'X' and count(*) filter (where not hidden) over (partition by sex, age_group) < 5)
		then listed(sex, age_group) end as printed,
	(status in ('ok', 'untimed') and runner_id is not null and not hidden) as sure,
	taking_part_as in ('runner', 'walker', 'guided') as competes
	from main.results where course = 'heron-mere' and run_date = (select max(run_date) from main.results);
create view season as select results.*, shown(runners.name, runners.protected, false) as public, runners.protected as young
	from main.results join main.runners using (runner_id)
	where run_date >= date '2026-01-01' and counts_run and not runners.hidden`

var weeklyRecomputed = []recomputed{
	{"Bests", []string{"Best", "Name", "Group", "Time", "Faster by"}, `
		select 'PB', public, printed, clock(time_s), case when not protected then clock(pb_margin_s) end from today where sure and is_pb
		union all select 'CB', public, printed, clock(time_s), case when not protected then clock(course_best_margin_s) end from today where sure and is_course_best and not is_pb`, 10},
	{"Groups", []string{"Group", "In group", "Name", "Time"}, `
		select printed, n::varchar, public, clock(time_s) from (
			select *, rank() over (partition by printed order by position) as n from today where competes and sure and sex is not null and printed is not null)
		where n <= 3`, 20},
	{"Age grade", []string{"Rank", "Name", "Age grade", "Time"}, `
		select n::varchar || case when count(*) over (partition by n) > 1 then '=' else '' end, public, printf('%.2f', round(age_grade_pct, 2)), clock(time_s) from (
			select *, rank() over (order by round(age_grade_pct, 2) desc) as n from today
			where competes and sure and counts_time and not protected and age_grade_pct < 100 and coalesce(age_grade_high - age_grade_low, 0) < 0.005)`, 30},
	{"People", []string{"What", "Name", "Number", "Since"}, `
		select 'milestone (runs)', public, milestone::varchar, null from today where sure and milestone is not null
		union all select 'weeks in a row', public, attendance_streak::varchar, strftime(attendance_since, '%-d %b %Y') from today where sure and counts_run and attendance_streak >= 5
		union all select 'newcomer', public, null, null from today where sure and is_newcomer
		union all select 'visitor', public, runs_total::varchar, null from today where sure and is_visitor and not is_newcomer
		union all select 'milestone (days helped)', name, milestone::varchar, null from main.volunteers where course = 'heron-mere' and milestone is not null
			and run_date = (select max(run_date) from main.results)`, 5},
	{"Clubs", []string{"Club", "Finishers", "PBs"}, `
		select club, count(*)::varchar, (count(*) filter (where is_pb))::varchar from today
		where sure and club is not null and not protected group by club`, 3},
	// The slowest half percent of all times so far is gathered in the last row.
	{"Times", []string{"From", "This run"}, `
		with minutes as (
			select time_s // 60 as m, count(*) as n, count(*) filter (where run_date = (select max(run_date) from main.results)) as here
			from main.results where course = 'heron-mere' and counts_time group by m),
		cut as (select *, coalesce(sum(n) over (order by m rows between unbounded preceding and 1 preceding), 0) * 200 >= sum(n) over () * 199 as gathered from minutes),
		kept as (select max(m) as last from cut where not gathered)
		select clock(m * 60), (select coalesce(sum(here), 0) from cut where least(cut.m, (select last from kept)) = x.m)::varchar
		from (select unnest(generate_series((select min(m) from minutes), (select last from kept))) as m) x`, 10},
	{"Attendance", []string{"Date", "Finishers", "Day against usual"}, `
		select on_day(run_date), (select count(distinct position) from main.results r where r.course = runs.course and r.run_date = runs.run_date
			and status in ('ok', 'unnamed', 'untimed', 'doubtful'))::varchar, gap(condition_s) from main.runs where course = 'heron-mere'`, 8},
}

var seasonRecomputed = []recomputed{
	{"Attendance", []string{"Name", "Ran", "Mostly at", "Ran there", "of runs held %"}, `
		select public, n::varchar, course_name, there::varchar, share(there, held) from (
			select runner_id, public, course, count(*) as there, sum(count(*)) over (partition by runner_id) as n,
				row_number() over (partition by runner_id order by count(*) desc, course) as k
			from season group by runner_id, public, course)
		join (select course, any_value(course_name) as course_name, count(*) as held from main.runs where state = 'held' and run_date >= date '2026-01-01' group by course) using (course)
		where k = 1`, 30},
	{"Age grade", []string{"Name", "Group", "Age grade", "Time", "On"}, `
		select public, listed(sex, age_group), printf('%.2f', round(age_grade_pct, 2)), clock(time_s), on_day(run_date) from (
			select *, row_number() over (partition by runner_id order by age_grade_pct desc, run_date) as k from season
			where counts_time and taking_part_as in ('runner', 'walker', 'guided') and status in ('ok', 'untimed')
				and age_grade_pct < 100 and not protected and not young and coalesce(age_grade_high - age_grade_low, 0) < 0.005)
		where k = 1`, 20},
	{"All time", []string{"Course", "List", "Time", "Name"}, `
		select course_name, case sex when 'W' then 'women' else 'men' end, clock(best), name from (
			select course, sex, name, min(time_s) as best, rank() over (partition by course, sex order by min(time_s)) as n from main.results
			where counts_time and status = 'ok' and sex in ('M', 'W') and not protected and not hidden group by course, sex, runner_id, name)
		join (select distinct course, course_name from main.runs) using (course)
		where n <= 10`, 40},
	{"Conditions", []string{"Date", "Course", "Day against usual"}, `
		select on_day(run_date), course_name, gap(condition_s) from main.runs where run_date >= date '2026-01-01'`, 10},
	{"Weeks", []string{"Week of", "Runs held", "Finishers", "Heron Mere", "Tarn End"}, `
		select on_day(date_trunc('week', run_date)::date), count(*)::varchar, sum(finishers)::varchar,
			gap(sum(condition_s * finishers) filter (course = 'heron-mere') / sum(finishers) filter (course = 'heron-mere')),
			gap(sum(condition_s * finishers) filter (course = 'tarn-end') / sum(finishers) filter (course = 'tarn-end'))
		from main.runs where run_date >= date '2026-01-01' group by date_trunc('week', run_date)`, 9},
	{"Courses", []string{"Course", "Against average", "likely from", "to"}, `
		select name, gap(seconds_at_25min), gap(seconds_low), gap(seconds_high) from main.courses`, 2},
	{"Volunteers", []string{"Name", "Days", "All days", "Milestone"}, `
		select name, (count(distinct run_date))::varchar, coalesce(max(days_so_far)::varchar, ''), coalesce(max(milestone)::varchar, '') from main.volunteers where run_date >= date '2026-01-01' group by name`, 3},
}

// standingRecomputed is of runner R2, whose group is M55 or so: ranks by
// counting who is faster, one by one.
const standingRecomputed = `
	with me as (select sex, age_group from main.runners where runner_id = $1),
	members as (select r.* from main.results r, me where r.sex = me.sex and r.age_group = me.age_group and counts_time and status = 'ok'
		and taking_part_as in ('runner', 'walker', 'guided')),
	bests as (
		select c.name as place, 'time' as measure, 'ever' as span, runner_id, min(time_s)::double as v from members join main.courses c using (course) group by all
		union all select c.name, 'time', 'this season', runner_id, min(time_s) from members join main.courses c using (course) where run_date >= date '2026-01-01' group by all
		union all select 'All, 5 km', 'time', 'ever', runner_id, min(time_s) from members group by all
		union all select 'All, 5 km', 'time', 'this season', runner_id, min(time_s) from members where run_date >= date '2026-01-01' group by all
		union all select 'All, 5 km', 'adjusted', 'ever', runner_id, ceil(min(adjusted_s) - 1e-9) from members group by all
		union all select 'All, 5 km', 'adjusted', 'this season', runner_id, ceil(min(adjusted_s) - 1e-9) from members where run_date >= date '2026-01-01' group by all
		union all select 'All, 5 km', 'age grade', 'ever', runner_id, -round(max(age_grade_pct), 2) from members group by all
		union all select 'All, 5 km', 'age grade', 'this season', runner_id, -round(max(age_grade_pct), 2) from members where run_date >= date '2026-01-01' group by all)
	select place, span, (1 + (select count(*) from bests o where o.place = b.place and o.measure = b.measure and o.span = b.span and o.v < b.v))::varchar
			|| case when (select count(*) from bests o where o.place = b.place and o.measure = b.measure and o.span = b.span and o.v = b.v) > 1 then '=' else '' end,
		(select count(*) from bests o where o.place = b.place and o.measure = b.measure and o.span = b.span)::varchar, measure
	from bests b where runner_id = $1`

func TestWorkbooksAgreeWithTheViews(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 24, 140, true)
	for _, s := range append(slices.Clone(macros), strings.Split(recomputeViews, ";\n")...) {
		if err := db.Exec(ctx, s); err != nil {
			t.Fatalf("%v\n%s", err, s)
		}
	}
	dir := t.TempDir()
	o := Options{Dir: dir, ArchiveDir: dir}
	check := func(path string, list []recomputed, args ...any) {
		t.Helper()
		f, err := excelize.OpenFile(path)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		for _, c := range list {
			got, want := cellsOf(t, f, c), answers(t, db, c, args...)
			if len(want) < c.least {
				t.Errorf("%s, tab %s: the views give only %d rows, too few to say anything", filepath.Base(path), c.tab, len(want))
			}
			compareSets(t, filepath.Base(path)+", tab "+c.tab, got, want)
		}
	}
	w := writeWeekly(t, db, dir, dir, last)
	check(w[0], weeklyRecomputed)
	rep, err := Season(ctx, db, o, season2026(last))
	if err != nil {
		t.Fatal(err)
	}
	check(rep.Written[0], seasonRecomputed)
	for _, who := range []string{"R1", "R2", "R60"} {
		c, err := cardOf(t, db, o, who).Write(true, false)
		if err != nil {
			t.Fatal(err)
		}
		check(c[0], []recomputed{
			{"Card", []string{"Where", "When", "Rank", "of", "By"}, standingRecomputed, 6},
			{"History", []string{"Date", "Place", "Time", "Adjusted", "Grade"}, `select on_day(run_date), position::varchar, clock(time_s),
				clock(ceil(adjusted_s - 1e-9)::bigint), printf('%.2f', round(age_grade_pct, 2)) from main.results where runner_id = $1`, 20},
		}, who)
	}
}

// cellsOf reads the columns of a check from a tab, as printed: from the row of
// the headings down to the next row that doesn't fill the first of them.
func cellsOf(t *testing.T, f *excelize.File, c recomputed) []string {
	t.Helper()
	tab := c.tab
	if k, err := f.GetSheetIndex(tab); err != nil || k < 0 {
		tab = "Lists" // short lists share a tab
	}
	rows, err := f.GetRows(tab)
	if err != nil {
		t.Fatal(err)
	}
	var at []int
	var out []string
	for _, r := range rows {
		if at == nil {
			for _, head := range c.columns {
				if i := slices.Index(r, head); i >= 0 {
					at = append(at, i)
				}
			}
			if len(at) < len(c.columns) {
				at = nil
			}
			continue
		}
		cells, filled := make([]string, len(at)), 0
		for k, i := range at {
			if i < len(r) {
				if cells[k] = r[i]; cells[k] != "" {
					filled++
				}
			}
		}
		if filled < 2 {
			break
		}
		out = append(out, strings.Join(cells, " | "))
	}
	if at == nil {
		t.Fatalf("tab %s has no headings %q", c.tab, c.columns)
	}
	return out
}

func answers(t *testing.T, db *store.DB, c recomputed, args ...any) []string {
	t.Helper()
	rows, err := db.QueryContext(context.Background(), c.sql, args...)
	if err != nil {
		t.Fatalf("tab %s: %v", c.tab, err)
	}
	defer rows.Close()
	var out []string
	for rows.Next() {
		cells := make([]*string, len(c.columns))
		to := make([]any, len(cells))
		for i := range cells {
			to[i] = &cells[i]
		}
		if err := rows.Scan(to...); err != nil {
			t.Fatalf("tab %s: %v", c.tab, err)
		}
		text := make([]string, len(cells))
		for i, s := range cells {
			if s != nil {
				text[i] = *s
			}
		}
		out = append(out, strings.Join(text, " | "))
	}
	if err := rows.Err(); err != nil {
		t.Fatalf("tab %s: %v", c.tab, err)
	}
	return out
}

func compareSets(t *testing.T, where string, got, want []string) {
	t.Helper()
	slices.Sort(got)
	slices.Sort(want)
	n := 0
	tell := func(format string, args ...any) {
		if n++; n <= 8 {
			t.Errorf(where+": "+format, args...)
		}
	}
	if len(got) != len(want) {
		tell("%d rows in the workbook, %d worked out", len(got), len(want))
	}
	for _, r := range minusRows(want, got) {
		tell("not in the workbook: %s", r)
	}
	for _, r := range minusRows(got, want) {
		tell("only in the workbook: %s", r)
	}
}

// minusRows gives the rows of a that b does not hold as often.
func minusRows(a, b []string) (out []string) {
	n := map[string]int{}
	for _, r := range b {
		n[r]++
	}
	for _, r := range a {
		if n[r]--; n[r] < 0 {
			out = append(out, fmt.Sprintf("%q", r))
		}
	}
	return out
}
