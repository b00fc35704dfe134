package reports

import (
	"context"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// fixtureViews are tables with the columns of the views of the same names.
const fixtureViews = `
create table main.results (
	sheet varchar, row_number integer, course varchar, run_date date, position integer, runner_id varchar,
	time_s integer, sex varchar, age_group varchar, club varchar, status varchar, counts_run boolean,
	counts_time boolean, taking_part_as varchar, session varchar, name varchar, tab varchar, time_ms integer,
	age_low integer, age_high integer, age_grade_pct double, open_equivalent_s double, adjusted_s double,
	effort varchar, shortfall_pct double, is_pb boolean, is_course_best boolean, is_adjusted_best boolean,
	note varchar, age_grade_low double, age_grade_high double, distance_m integer, run_no integer, tied boolean,
	first_result boolean, previous_best_s integer, pb_margin_s integer, course_best_margin_s integer,
	is_newcomer boolean, is_visitor boolean, runs_total integer, milestone integer, pb_streak integer,
	attendance_streak integer, days_since_last integer, protected boolean, hidden boolean, doubt varchar,
	runner_no integer generated always as (substr(runner_id, 2)::integer) virtual, attendance_since date,
	form_s double generated always as (adjusted_s / (1 + shortfall_pct / 100)) virtual,
	form_low double generated always as (0.975 * adjusted_s / (1 + shortfall_pct / 100)) virtual,
	form_high double generated always as (1.025 * adjusted_s / (1 + shortfall_pct / 100)) virtual);
create table main.runs (
	course varchar, run_date date, condition_pct double, session varchar, low double, high double, state varchar,
	finishers integer, unnamed integer, run_no integer, course_name varchar, distance_m integer, condition_s double,
	condition_s_low double, condition_s_high double, times_counted integer, positions_counted integer,
	names_counted integer, history_complete boolean, sheet varchar, results integer, off_m integer);
create table main.courses (
	course varchar, speed_index double, low double, high double, distance_m integer, seconds_at_25min double,
	results bigint, runs integer, shared_runners integer, network varchar, basis varchar, name varchar,
	weekday varchar, seconds_low double, seconds_high double, measured boolean);
create table main.runners (
	runner_id varchar, name varchar, form_s double, form_low double, form_high double, sex varchar, club varchar,
	results integer, first_run date, last_run date, best_s integer, best_distance_m integer, protected boolean,
	hidden boolean, age_group varchar, change double, change_sd double, p_faster double, p_level double,
	runner_no integer generated always as (substr(runner_id, 2)::integer) virtual);
create table main.volunteers (name varchar, runner_id varchar, role varchar, course varchar, run_date date, protected boolean, hidden boolean, days_so_far integer, milestone integer, listed_at varchar);
create table main.problems (
	sheet varchar, tab varchar, row_number integer, column_letter varchar, severity varchar, kind varchar,
	read varchar, expected varchar, todo varchar, course varchar, run_date date, settled varchar default '', answers varchar default '');
create table main.members (runner_id varchar, name varchar, club varchar, claim varchar, member_from date, member_to date, written varchar);
create table main.record_states (course varchar, run_date date, session varchar, runner_id varchar, state varchar, line_no integer);
create table main.held_records (
	course varchar, distance_m integer, sex varchar, age_group varchar, time_s integer, name varchar, runner_id varchar,
	run_date date, protected boolean, hidden boolean, line integer);
create table main.club_questions (other varchar, club varchar, why varchar);
`

// fixtureTables are views with the columns of the tables of the same names that
// the queries of the reports read, made of the fixture's views: so a test that
// changes a row of those changes both.
const fixtureTables = `
create schema sheet;
create schema record;
create schema insight;
create view record.course as
	select dense_rank() over (order by course)::integer as course_no, * from (
		select course, any_value(course_name order by run_no) as name, any_value(distance_m order by run_no) as distance_m,
			(select measured from main.courses where courses.course = runs.course) as measured,
			min(run_date) filter (history_complete) as complete_from
		from main.runs group by course);
create view record.run as
	select coalesce(run_no, 100000 + runs.rowid)::integer as run_no, course_no, run_date, coalesce(session, '') as session, runs.distance_m
	from main.runs join record.course using (course);
create view insight.run as
	select run.run_no, ln(1 + condition_s / 1500) as effect, ln(1 + condition_s_low / 1500) as low, ln(1 + condition_s_high / 1500) as high
	from main.runs join record.course using (course)
	join record.run on run.course_no = course.course_no and run.run_date = runs.run_date and run.session = coalesce(runs.session, '');
create view record.run_state as
	select run.run_no, runs.state, coalesce(runs.off_m, 0) as off_m from main.runs join record.course using (course)
	join record.run on run.course_no = course.course_no and run.run_date = runs.run_date and run.session = coalesce(runs.session, '')
	where state <> 'held';
create view record.line as
	select rowid::integer as line_no, run_no, coalesce(position, 0) as position, row_number from main.results;
create view record.record_state as select null::integer as line_no, null::varchar as state where false;
create view record.correction as select null::integer as line_no, null::varchar as club, null::integer as position;
create view record.result as
	select rowid::integer as line_no, coalesce(substr(runner_id, 2)::integer, 0) as runner_no,
		list_position(['ok', 'unnamed', 'untimed', 'dnf', 'dq', 'repeat', 'doubtful', 'superseded'], status) - 1 as status,
		(counts_run::integer + 2 * counts_time::integer)::utinyint as counts,
		case sex when 'M' then 1 when 'W' then 2 when 'X' then 3 else 0 end as sex, age_low, age_high,
		case when age_group is not null then min(age_low) over (partition by sex, age_group) end as group_age,
		coalesce(time_s * 1000, 0) as time_ms,
		list_position(['runner', 'walker', 'guided', 'guide', 'pacer'], taking_part_as) - 1 as taking_part,
		run_no, coalesce(position, 0) as position, 1 as part_no
	from main.results;
create view insight.result as
	select rowid::integer as line_no, age_grade_pct as age_grade, age_grade_low, age_grade_high, adjusted_s,
		coalesce(substr(runner_id, 2)::integer, 0) as runner_no, run_no, time_s, age_low, age_high,
		case sex when 'M' then 1 when 'W' then 2 when 'X' then 3 else 0 end as sex,
		counts_time and status = 'ok' and runner_id is not null and taking_part_as in ('runner', 'walker', 'guided') as ranks
	from main.results;
create view insight.course as
	select course_no, ln(1 + seconds_at_25min / 1500) as effect, (ln(1 + seconds_high / 1500) - ln(1 + seconds_low / 1500)) / 3.29 as sd, shared_runners, basis
	from main.courses join record.course using (course);
create view insight.age_group as
	select age, sex, name, min(age) over (partition by sex, name) as first_age from (
		select distinct age_low as age, case sex when 'M' then 1 when 'W' then 2 else 3 end as sex, age_group as name from main.results where age_group is not null);
create view insight.ranked as
	select figure.sex, youngest.first_age, figure.runner_no, figure.run_no, figure.time_s, coalesce(ceil(figure.adjusted_s - 1e-9), 0) as adjusted_s,
		case when figure.age_grade < 100 and figure.age_grade_high - figure.age_grade_low < 0.005 then round(100 * figure.age_grade) else 0 end as grade
	from insight.result as figure
	join insight.age_group as youngest on youngest.sex = figure.sex and youngest.age = figure.age_low
	join insight.age_group as oldest on oldest.sex = figure.sex and oldest.age = figure.age_high and oldest.first_age = youngest.first_age
	where figure.ranks;
create view record.runner as
	select substr(runner_id, 2)::integer as runner_no, name, hidden from main.runners;
`

// person is somebody of the invented district.
type person struct {
	id, name, sex, club string
	born                int // year
	base                float64
	protected, hidden   bool
	best                map[int32]int32  // by distance, m → s
	course              map[string]int32 // by course
	runs, streak, pbs   int
	since               unit.Day // of the streak
}

var (
	givenW = []string{"Ada", "Brona", "Cerys", "Delia", "Edda", "Freya", "Greta", "Hetty", "Ines", "Juno", "Kezia", "Lotte"}
	givenM = []string{"Abel", "Bram", "Caspar", "Dorian", "Emrys", "Fabian", "Gideon", "Hal", "Ivo", "Joss", "Kit", "Leopold"}
	family = []string{"Ashdown", "Birkwell", "Cobbold", "Dunmarrow", "Elverton", "Farthing-Lowe", "Garside", "Holloway",
		"Ingleby", "Jessop", "Kestrel", "Larkham", "Marrable", "Nettleship", "Overbeck", "Pennyfeather"}
	clubsIn = []string{"", "", "Marlbeck Striders", "Otterwick Harriers", "Tarn End AC", "Marlbeck Striders"}
)

// district fills the fixture tables: two courses, weeks runs each, a field of
// about n. Everything is drawn from one seed, so figures in the tests are
// stable. It gives the date of the last run.
func district(t testing.TB, weeks, n int, complete bool) (*store.DB, unit.Day) {
	t.Helper()
	ctx := context.Background()
	db, err := store.Open(ctx, "", store.DBOptions{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	for _, s := range strings.Split(fixtureViews+fixtureTables, ";\n") {
		if strings.TrimSpace(s) == "" {
			continue
		}
		if err := db.Exec(ctx, s); err != nil {
			t.Fatal(err)
		}
	}
	rng := rand.New(rand.NewPCG(7, uint64(n)))
	var people []*person
	for i := range n * 5 / 4 {
		p := &person{id: fmt.Sprintf("R%d", i+1), best: map[int32]int32{}, course: map[string]int32{}}
		g := givenW
		if p.sex = "W"; i%2 == 1 {
			p.sex, g = "M", givenM
		}
		if i%41 == 17 {
			p.sex = "X"
		}
		p.name = g[(i/2)%len(g)] + " " + family[(i/3)%len(family)]
		p.club = clubsIn[rng.IntN(len(clubsIn))]
		p.born = 2026 - 20 - rng.IntN(55)
		if i%13 == 5 {
			p.born, p.protected = 2026-11-rng.IntN(6), true
			p.name = g[(i/2)%len(g)] + " Quill" + strings.ToLower(family[(i/3)%len(family)]) // no adult's name
		}
		p.base = 1150 + 900*rng.Float64()
		if p.sex == "W" {
			p.base += 120
		}
		people = append(people, p)
	}
	people[3].name, people[4].name, people[6].name, people[8].name = "=Sum(A1) Cobbold", "+44 Jessop", "-Ivo | Kestrel*", "@home <b>Garside"
	people[10].name, people[10].hidden = "Hester Quietly", true
	last := unit.NewDay(2026, 3, 7)
	ins := &inserter{t: t, db: db, ctx: ctx}
	for w := range weeks {
		on := last - unit.Day(7*(weeks-1-w))
		for _, c := range []struct {
			course, name string
			slow         float64
			dist         int32
			share        float64
		}{{"heron-mere", "Heron Mere", 1, 5000, 0.8}, {"tarn-end", "Tarn End", 1.04, 5000, 0.25}} {
			day := 1 + 0.01*rng.NormFloat64()
			if on == last {
				day = 0.985 // a fast day, so that there are bests to list
			}
			ins.run(rng, people, c.course, c.name, on, c.slow*day, c.dist, c.share, complete)
		}
	}
	ins.exec(`insert into main.courses values
		('heron-mere', 101.2, 100.7, 101.7, 5000, -18, 1500, 12, 90, 'A', 'published', 'Heron Mere', 'Saturday', -25, -10, true),
		('tarn-end', 97.2, 96.2, 98.0, 5000, 44, 400, 12, 80, 'A', 'published', 'Tarn End', 'Saturday', 30, 58, false)`)
	ins.exec(fmt.Sprintf(`insert into main.volunteers values
		('Wilf Oakapple', null, 'timekeeper', 'heron-mere', '%[1]s', false, false, 3, null, 'a'), ('Ada Ashdown', 'R1', 'marshal', 'heron-mere', '%[1]s', false, false, 50, 50, 'b'),
		('Nell Overbeck', null, 'marshal', 'heron-mere', '%[1]s', false, false, 7, null, 'c'), ('Nell Overbeck', null, 'results', 'heron-mere', '%[1]s', false, false, 7, null, 'd')`, last))
	ins.exec(fmt.Sprintf(`insert into main.problems (sheet, tab, row_number, column_letter, severity, kind, read, expected, todo, course, run_date) values
		('heron-mere_%[1]s.csv', '', 9, 'C', 'doubtful', 'time-unreadable', '24.75.1', 'mm:ss', 'Correct the cell and load the sheet again.', 'heron-mere', '%[1]s'),
		('heron-mere_%[1]s.csv', '', 0, '', 'look', 'position-gap', '12, 14', '13', 'Ask who came 13th.', 'heron-mere', '%[1]s')`, last))
	ins.load()
	var values []string
	year, _, _ := last.Date()
	for i, p := range people {
		values = append(values, fmt.Sprintf(`(%s, %s, %s, %s, %d, %t, %t, %s, %.2f, %.2f, %.2f, %.4f, 0.012, %.4f, %.4f)`,
			quote(p.id), quote(p.name), quote(p.sex), quote(p.club), p.runs, p.protected, p.hidden, quote(groupIn(year-p.born, p.sex)), p.base*1.01, p.base*0.99, p.base*1.03,
			-0.02+0.01*float64(i%4), []float64{.95, .8, .5, .2}[i%4], []float64{.4, .7, .85, .7}[i%4]))
	}
	ins.exec("insert into main.runners (runner_id, name, sex, club, results, protected, hidden, age_group, form_s, form_low, form_high, change, change_sd, p_faster, p_level) values " + strings.Join(values, ", "))
	return db, last
}

type inserter struct {
	t     testing.TB
	db    *store.DB
	ctx   context.Context
	no    int
	lines [][]string // of main.results
}

// load puts the gathered lines into the table: a CSV is much faster than
// thousands of VALUES.
func (in *inserter) load() {
	in.t.Helper()
	path := filepath.Join(in.t.TempDir(), "lines.csv")
	f, err := os.Create(path)
	if err != nil {
		in.t.Fatal(err)
	}
	w := csv.NewWriter(f)
	if err := w.WriteAll(in.lines); err != nil {
		in.t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		in.t.Fatal(err)
	}
	in.exec("insert into main.results select * from read_csv(" + quote(path) + ", header = false, nullstr = '" + null + "', all_varchar = true, delim = ',', quote = '\"')")
	in.lines = nil
}

const null = "NULL"

func (in *inserter) exec(s string) {
	in.t.Helper()
	if err := in.db.Exec(in.ctx, s); err != nil {
		in.t.Fatalf("%v\n%s", err, s)
	}
}

func quote(s string) string {
	if s == "" {
		return "null"
	}
	return "'" + strings.ReplaceAll(s, "'", "''") + "'"
}

// run makes one run: figures as the pipeline would have them, in simple form.
func (in *inserter) run(rng *rand.Rand, people []*person, course, name string, on unit.Day, slow float64, dist int32, share float64, complete bool) {
	in.no++
	type line struct {
		p *person
		s int32
	}
	var field []line
	for i, p := range people {
		came := rng.Float64() < share
		if i < 12 { // the people with something to test always come to the first course
			came = course == "heron-mere"
		}
		if !came {
			p.streak = 0
			continue
		}
		field = append(field, line{p, int32(p.base*slow*(1+0.03*rng.Float64()) - float64(p.runs))})
	}
	for i := range field {
		for j := i; j > 0 && field[j].s < field[j-1].s; j-- {
			field[j], field[j-1] = field[j-1], field[j]
		}
	}
	year, _, _ := on.Date()
	unnamed := 0
	for i, f := range field {
		p, pos, row := f.p, i+1, i+2
		status, taking, note, doubt := "ok", "runner", "", ""
		runner, shown, group := p.id, p.name, groupIn(year-p.born, p.sex)
		switch {
		case i == 14:
			status, runner, shown, group = "unnamed", null, null, null
			unnamed++
		case i == 9:
			taking = "pacer"
		case i == 20:
			status, doubt = "doubtful", "time doesn't fit; please ask"
		}
		first := p.runs == 0
		timed := status == "ok" && taking == "runner"
		was, had := p.best[dist]
		wasHere, hadHere := p.course[course]
		pb, cb := timed && had && f.s < was, timed && hadHere && f.s < wasHere
		margin, here := null, null
		if pb {
			margin = fmt.Sprint(was - f.s)
			p.pbs++
		} else if timed {
			p.pbs = 0
		}
		if cb {
			here = fmt.Sprint(wasHere - f.s)
		}
		milestone := null
		if status != "unnamed" {
			p.runs++
			if p.streak++; p.streak == 1 {
				p.since = on
			}
			if p.runs == 10 {
				milestone = "10"
			}
		}
		if timed {
			if !had || f.s < was {
				p.best[dist] = f.s
			}
			if !hadHere || f.s < wasHere {
				p.course[course] = f.s
			}
		}
		grade := null
		if timed && p.sex != "X" {
			grade = fmt.Sprintf("%.4f", 100*float64(780+8*max(0, year-p.born-30)/2)/float64(f.s))
		}
		newcomer, visitor := null, null
		if complete && status != "unnamed" {
			newcomer, visitor = fmt.Sprint(first), fmt.Sprint(!hadHere && timed)
		}
		cells := fmt.Sprint
		in.lines = append(in.lines, []string{
			fmt.Sprintf("%s_%s.csv", course, on), cells(row), course, on.String(), cells(pos), runner, cells(f.s), p.sex, group, or(p.club),
			status, cells(status != "unnamed"), cells(timed), taking, "", shown, "", cells(f.s * 1000), cells(year - p.born), cells(year - p.born),
			grade, null, cells(float64(f.s) / slow), []string{"full", "steady", "easy"}[(i+in.no)%3], "1.5", cells(pb), cells(cb), "false", or(note), grade, grade, cells(dist), cells(in.no),
			"false", cells(first), orNull(had, was), margin, here, newcomer, visitor, cells(p.runs), milestone, cells(p.pbs), cells(p.streak), "7",
			cells(p.protected), cells(p.hidden), or(doubt), p.since.String()})
	}
	n := len(field)
	in.exec(fmt.Sprintf(`insert into main.runs values ('%s', '%s', %f, '', null, null, 'held', %d, %d, %d, '%s', %d, %f, %f, %f, %d, %d, %d, %t, '%s_%s.csv', %d, null)`,
		course, on, 100*(slow-1), n, unnamed, in.no, name, dist, 1500*(slow-1), 1500*(slow-1)-6, 1500*(slow-1)+6, n, n, n-unnamed, complete, course, on, n))
}

func or(s string) string {
	if s == "" {
		return null
	}
	return s
}

func orNull(ok bool, n int32) string {
	if !ok {
		return null
	}
	return fmt.Sprint(n)
}

// groupIn names the age group in the project's usual way.
func groupIn(age int, sex string) string {
	switch {
	case age < 20:
		return fmt.Sprintf("U%d", age/2*2+2)
	case age < 35:
		return "Senior"
	}
	return fmt.Sprintf("%s%d", sex, age/5*5)
}
