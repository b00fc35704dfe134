package reports

import (
	"context"
	"database/sql"
	"fmt"
	"math"
	"sort"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/unit"
)

// weekly is everything that the reports of one run say.
type weekly struct {
	o       Options
	course  string
	on      unit.Day
	session string
	run     runRow
	runs    []runRow // of the course up to this run, in order
	latest  unit.Day // newest run in the archive
	results []resultRow
	spread  []spreadRow
	records []recordRow
	helpers []helperRow
	checks  []problemRow
}

type runRow struct {
	day              unit.Day
	session          string
	courseName       string
	distanceM        *int32
	state            string
	finishers        int32
	volunteers       *int32
	unnamed          int32
	times, positions *int32
	names            *int32
	complete         bool
	condition        *float64 // s at 25:00, + slower
	condLow, condHi  *float64
	measured         *bool
}

type resultRow struct {
	sheet, tab            string
	row                   int32
	position              *int32
	tied                  bool
	runner, name          string
	timeS                 *int32
	sex, group, club      string
	status                string
	countsRun, countsTime bool
	takingPart            string
	grade                 *float64 // percent
	gradeLow, gradeHigh   *float64
	isPB, isCourseBest    bool
	isAdjustedBest        bool
	pbMargin              *int32 // s
	courseMargin          *int32 // s
	first                 bool
	newcomer, visitor     *bool
	total, milestone      *int32
	pbStreak, streak      int32
	protected, hidden     bool
	doubt, note           string

	place      standing.Rank // in the run
	groupPlace standing.Rank // in the age group
	shown      string        // group as published, "" where it is not
}

type spreadRow struct {
	minute       int32
	here, before int64
}

type recordRow struct {
	scope, sex, group string
	sheet, tab        string
	row               int32
	timeS, wasS       int32
	heldBy            string // as published
	heldOn            unit.Day
}

type helperRow struct{ name, role string }

type problemRow struct {
	severity, sheet, tab string
	row                  int32
	column               string
	kind, read           string
	expected, todo       string
}

func readWeekly(ctx context.Context, q Queryer, o Options, course string, on unit.Day, session string) (*weekly, error) {
	d := &weekly{o: o, course: course, on: on, session: session}
	date := on.Time()
	err := ask(ctx, q, "weekly_run", func(rows *sql.Rows) error {
		var r runRow
		var when day
		if err := rows.Scan(&when, &r.session, &r.courseName, &r.distanceM, &r.state, &r.finishers, &r.volunteers,
			&r.unnamed, &r.times, &r.positions, &r.names, &r.complete,
			&r.condition, &r.condLow, &r.condHi, &r.measured); err != nil {
			return err
		}
		r.day = when.Day
		d.runs = append(d.runs, r)
		return nil
	}, course, date, session)
	if err != nil {
		return nil, err
	}
	if n := len(d.runs); n == 0 || d.runs[n-1].day != on || d.runs[n-1].session != session {
		if session != "" {
			return nil, fmt.Errorf("the archive holds no run of %s on %s, session %s", course, on, session)
		}
		return nil, fmt.Errorf("the archive holds no run of %s on %s", course, on)
	}
	d.run = d.runs[len(d.runs)-1]
	if d.latest = o.AsOf; d.latest == 0 {
		if err := ask(ctx, q, "latest", func(rows *sql.Rows) error {
			var when day
			err := rows.Scan(&when)
			d.latest = when.Day
			return err
		}); err != nil {
			return nil, err
		}
	}
	if err := d.readResults(ctx, q); err != nil {
		return nil, err
	}
	err = ask(ctx, q, "weekly_spread", func(rows *sql.Rows) error {
		var r spreadRow
		err := rows.Scan(&r.minute, &r.here, &r.before)
		d.spread = append(d.spread, r)
		return err
	}, course, date, session)
	if err != nil {
		return nil, err
	}
	err = ask(ctx, q, "weekly_record", func(rows *sql.Rows) error {
		var r recordRow
		var name string
		var protected, hidden bool
		var when day
		if err := rows.Scan(&r.scope, &r.sex, &r.group, &r.sheet, &r.tab, &r.row, &r.timeS, &r.wasS,
			&name, &protected, &hidden, &when); err != nil {
			return err
		}
		r.heldBy, r.heldOn = publicName(name, protected, hidden), when.Day
		d.records = append(d.records, r)
		return nil
	}, course, date, session)
	if err != nil {
		return nil, err
	}
	err = ask(ctx, q, "weekly_volunteer", func(rows *sql.Rows) error {
		var r helperRow
		var protected, hidden bool
		if err := rows.Scan(&r.name, &r.role, &protected, &hidden); err != nil {
			return err
		}
		r.name = publicName(r.name, protected, hidden)
		d.helpers = append(d.helpers, r)
		return nil
	}, course, date)
	if err != nil {
		return nil, err
	}
	err = ask(ctx, q, "weekly_problem", func(rows *sql.Rows) error {
		var r problemRow
		var rank int32
		err := rows.Scan(&rank, &r.severity, &r.sheet, &r.tab, &r.row, &r.column, &r.kind, &r.read, &r.expected, &r.todo)
		d.checks = append(d.checks, r)
		return err
	}, course, date)
	return d, err
}

func (d *weekly) readResults(ctx context.Context, q Queryer) error {
	err := ask(ctx, q, "weekly_result", func(rows *sql.Rows) error {
		var r resultRow
		err := rows.Scan(&r.sheet, &r.tab, &r.row, &r.position, &r.tied, &r.runner, &r.name, &r.timeS, &r.sex, &r.group,
			&r.club, &r.status, &r.countsRun, &r.countsTime, &r.takingPart, &r.grade, &r.gradeLow, &r.gradeHigh,
			&r.isPB, &r.isCourseBest, &r.isAdjustedBest, &r.pbMargin, &r.courseMargin, &r.first, &r.newcomer, &r.visitor,
			&r.total, &r.milestone, &r.pbStreak, &r.streak, &r.protected, &r.hidden, &r.doubt, &r.note)
		d.results = append(d.results, r)
		return err
	}, d.course, d.on.Time(), d.session)
	d.places()
	return err
}

// finished says whether the line stands for somebody who finished: it is in
// the public result.
func (r *resultRow) finished() bool {
	switch r.status {
	case "ok", "unnamed", "untimed", "doubtful":
		return true
	}
	return false
}

// eligible says whether the result may stand in places, leaders and records:
// a runner, walker or guided runner, named beyond doubt.
func (r *resultRow) eligible() bool {
	switch r.takingPart {
	case "runner", "walker", "guided":
		return (r.status == "ok" || r.status == "untimed") && r.runner != ""
	}
	return false
}

// trusted says whether the result may be named in lists and in the write-up:
// nothing rests on a doubtful identity, and who is hidden is left out.
func (r *resultRow) trusted() bool {
	return (r.status == "ok" || r.status == "untimed") && r.runner != "" && !r.hidden
}

// places works out the place of everybody who finished and their place in the
// age group, and which groups may be printed. A hidden person is passed over
// in the group like an unnamed one, for a gap would tell their group.
func (d *weekly) places() {
	people := map[string]int{}
	var in []*resultRow
	for i := range d.results {
		r := &d.results[i]
		if !r.finished() {
			continue
		}
		in = append(in, r)
		if r.group != "" && !r.hidden {
			people[groupLabel(r.sex, r.group)]++
		}
	}
	run, groups := make([]standing.Finisher, len(in)), make([]int32, len(in))
	number := map[string]int32{}
	for i, r := range in {
		run[i], groups[i] = standing.Finisher{Position: or0(r.position), Tied: r.tied, TimeS: or0(r.timeS)}, standing.NoGroup
		if r.group == "" || r.hidden || r.status == "doubtful" {
			continue
		}
		g := groupLabel(r.sex, r.group)
		if r.sex == "X" && people[g] < fewest {
			continue
		}
		r.shown = g
		if !r.eligible() || r.sex == "" {
			continue
		}
		if number[g] == 0 {
			number[g] = int32(len(number) + 1)
		}
		groups[i] = number[g]
	}
	places := standing.Places(run)
	within, _ := standing.GroupPlaces(places, groups)
	for i, r := range in {
		r.place, r.groupPlace = places[i], within[i]
	}
}

func or0(n *int32) int32 {
	if n == nil {
		return 0
	}
	return *n
}

// public is the name as published.
func (r *resultRow) publicName() string {
	if r.status == "unnamed" {
		return nobody
	}
	return publicName(r.name, r.protected, r.hidden)
}

// pick gives the results that keep says yes to, in order of place.
func (d *weekly) pick(keep func(*resultRow) bool) []*resultRow {
	var out []*resultRow
	for i := range d.results {
		if r := &d.results[i]; keep(r) {
			out = append(out, r)
		}
	}
	return out
}

// graded gives the adults with a certain enough age grade, best first. A grade
// of 100 % or more is left out until age, sex and course have been checked.
func (d *weekly) graded() []*resultRow {
	g := d.pick(func(r *resultRow) bool {
		return r.eligible() && r.trusted() && r.countsTime && !r.protected && r.grade != nil && *r.grade < 100 && r.gradeCertain()
	})
	sort.SliceStable(g, func(i, j int) bool { return *g[i].grade > *g[j].grade })
	return g
}

// gradeRanks ranks results sorted by graded by the age grade as printed, to
// 0.01: equal ones share.
func gradeRanks(rows []*resultRow) []standing.Rank {
	v := make([]int, len(rows))
	for i, r := range rows {
		v[i] = gradeOrder(*r.grade)
	}
	return standing.Ranks(v)
}

// gradeOrder is a number that is lower for a higher age grade, equal where it
// prints the same.
func gradeOrder(grade float64) int { return 1_000_000 - int(math.Round(grade*100)) }

// gradeCertain says whether one age gives the grade, not several.
func (r *resultRow) gradeCertain() bool {
	return r.gradeLow == nil || r.gradeHigh == nil || *r.gradeHigh-*r.gradeLow < 0.005
}

// margins sorts results by a margin, greatest first.
func byMargin(rows []*resultRow, margin func(*resultRow) *int32) {
	get := func(r *resultRow) int32 {
		if m := margin(r); m != nil {
			return *m
		}
		return 0
	}
	sort.SliceStable(rows, func(i, j int) bool { return get(rows[i]) > get(rows[j]) })
}

// held says whether the run took place on its usual route, so that times mean
// what they usually do.
func (d *weekly) held() bool { return d.run.state == "held" || d.run.state == "" }

// provisional says whether corrections may still come.
func (d *weekly) provisional() bool { return d.latest < d.on+d.o.correctionDays() }
