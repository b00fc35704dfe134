package reports

import (
	"math"
	"sort"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/unit"
)

// weekly is everything that the reports of one run say.
type weekly struct {
	o       Options
	number  int32 // of the run in this database
	course  string
	on      unit.Day
	session string
	run     runRow
	runs    []runRow // of the course up to this run, in order; shared, not to be changed
	latest  unit.Day // newest run in the archive
	results []resultRow
	spread  []spreadRow
	records []recordRow
	oneClub []clubQuestion // about names of clubs in this run
	helpers []helperRow
	checks  []problemRow
}

type runRow struct {
	number, route    int32
	course           string
	day              unit.Day
	session          string
	courseName       string
	distanceM        *int32
	state            string
	finishers        int32
	volunteers       *int32
	unnamed          int32
	times, positions int32
	names            int32
	held             bool // there is a line of it
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
	since                 day // first finish of the streak of weeks
	protected, hidden     bool
	doubt, note           string
	record                string // confirmed or void, as a record; "" where nothing is settled

	place      standing.Rank // in the run
	groupPlace standing.Rank // in the age group
	shown      string        // group as published, "" where it is not
	toldAt     *Run          // whose reports have told the milestone before, nil none
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
	holder            int32    // number of the runner who held it, the earliest of equals
	heldBy            string   // as published
	heldOn            unit.Day // 0 where not known
	confirmed         bool
}

// clubQuestion asks whether a name of a club is another name of a club.
type clubQuestion struct{ other, club, why string }

type helperRow struct {
	name, role      string
	days, milestone int32 // of helping so far; the round number that this day is, 0 none
}

type problemRow struct {
	severity, sheet, tab string
	row                  int32
	column               string
	kind, read           string
	expected, todo       string
	answers              string // as a place.Problem has them
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
