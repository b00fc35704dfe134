package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// historyColumns are the columns of history.csv: what was before the sheets.
//
//	fact              what the line says
//	complete from     course, date: every sheet from that day on is loaded, and
//	                  whoever had finished there before is in this file
//	began             course, date: its first run ever
//	finishes before   name, finishes: runs before date, on course or on all
//	volunteer days before  name, finishes: so many days of helping before date
//	best before       name, time: best before the sheets, run on date
//	record            course, time: the record held, with sex and age group
//
// A person is named by runner id (R12) or by a name that only one runner has.
var historyColumns = []string{"fact", "course", "name", "sex", "age_group", "distance_m", "finishes", "time", "date"}

const (
	completeFrom = "complete from"
	began        = "began"
	earlierRuns  = "finishes before"
	earlierBest  = "best before"
	earlierDays  = "volunteer days before"
	heldRecord   = "record"
)

type historyLine struct {
	fact, course, name string
	sex, group         string
	distanceM          int // 0: the course's
	finishes           int
	timeMS             int32
	day                unit.Day
	row                int // of the table
}

func (pl *Pipeline) readHistoryTable() ([]historyLine, error) {
	rows, err := pl.Archive.ReadTable("history.csv", historyColumns)
	if err != nil {
		return nil, err
	}
	var out []historyLine
	for i, r := range rows {
		h, err := readHistoryLine(r)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", pl.Archive.At("history.csv", i), err)
		}
		h.row = i
		out = append(out, h)
	}
	return out, nil
}

func readHistoryLine(r []string) (h historyLine, err error) {
	h = historyLine{fact: strings.ToLower(r[0]), course: r[1], name: r[2], sex: r[3], group: r[4]}
	if r[8] != "" {
		if h.day, err = unit.ParseDay(r[8]); err != nil {
			return h, err
		}
	}
	if r[5] != "" {
		if h.distanceM, err = readMetres(r[5]); err != nil {
			return h, err
		}
	}
	if r[6] != "" {
		if h.finishes, err = strconv.Atoi(r[6]); err != nil || h.finishes < 0 {
			return h, fmt.Errorf("finishes %q: write a whole number", r[6])
		}
	}
	if r[7] != "" {
		if h.timeMS, err = ParseClock(r[7]); err != nil {
			return h, err
		}
	}
	switch h.fact {
	case completeFrom, began:
		if h.course == "" || h.day == 0 {
			err = fmt.Errorf("%q needs a course and a date", h.fact)
		}
	case earlierDays:
		if h.name == "" || r[6] == "" || h.day == 0 {
			err = fmt.Errorf("%q needs a name, a date, and the number of days in the column finishes", h.fact)
		}
	case earlierRuns:
		if h.name == "" || r[6] == "" {
			err = fmt.Errorf("%q needs a name and the number of finishes", h.fact)
		}
	case earlierBest:
		if h.name == "" || h.timeMS == 0 {
			err = fmt.Errorf("%q needs a name and a time", h.fact)
		}
	case heldRecord:
		if h.course == "" || h.timeMS == 0 {
			err = fmt.Errorf("%q needs a course and a time", h.fact)
		}
	default:
		err = fmt.Errorf("fact %q is not known; write %s, %s, %s, %s, %s or %s", r[0], completeFrom, began, earlierRuns, earlierBest, earlierDays, heldRecord)
	}
	return h, err
}

// readMetres reads a distance in metres, which may have decimals (4 miles are
// 6437.376 m), and rounds it to the metre.
func readMetres(s string) (int, error) {
	v, err := strconv.ParseFloat(strings.Replace(s, ",", ".", 1), 64)
	if m := int(v + .5); err == nil && m >= 100 && m <= 200000 {
		return m, nil
	}
	return 0, fmt.Errorf("distance_m %q: write metres, as in 5000", s)
}

type openings struct {
	counts     []history.Count
	bests      []history.Best
	volunteers []history.Volunteer
	asked      map[[2]string]bool // table and name
	problems   []storedProblem
}

// openings turns history.csv and volunteers.csv into what the histories begin
// with. A name that no runner has is somebody from before the sheets; one that
// several runners have can't be given to any of them, and is asked about. What
// the desk has settled about a runner stands in place of what the table says of
// the same course.
func (pl *Pipeline) openings(ctx context.Context, f *field, p *people, ds []Decision) (*openings, error) {
	table, err := pl.readHistoryTable()
	if err != nil {
		return nil, err
	}
	vols, err := pl.volunteerLines(ctx)
	if err != nil {
		return nil, err
	}
	out, at := &openings{}, pl.Archive.Places("history.csv")
	if len(table) == 0 && len(vols) == 0 && !slices.ContainsFunc(ds, Decision.isOpening) {
		return out, nil
	}
	find := f.finder(p)
	courses := map[string]int32{}
	for c := range f.courses {
		courses[f.courses[c].course] = int32(c)
	}
	settled := out.decided(ds, find, courses, pl.courses, f)
	dates := datesOfOpenings{day: map[int32]unit.Day{}, decided: map[int32]bool{}}
	for _, c := range out.counts {
		dates.day[c.Runner], dates.decided[c.Runner] = c.AsOf, true
	}
	for _, h := range table {
		if h.fact != earlierRuns && h.fact != earlierBest {
			continue
		}
		r := find(h.name)
		if r == severalRunners {
			out.ask("history.csv", at(h.row), h.name)
		}
		if r < 0 {
			continue
		}
		course := history.AnyCourse
		distance := defaultDistance
		if c, ok := courses[pl.courses.resolve(h.course)]; ok && h.course != "" {
			course, distance = c, int(f.courses[c].distanceM)
		}
		if h.distanceM > 0 {
			distance = h.distanceM
		}
		switch {
		case settled[openingOf{h.fact, r, course, int32(distance)}]:
		case h.fact == earlierBest:
			out.addBest(h, at(h.row), r, course, distance, p.sex[r])
		default:
			if err := out.addCount(h, at(h.row), r, course, dates); err != nil {
				return nil, err
			}
		}
	}
	for _, v := range vols {
		r := find(v.name)
		if r == severalRunners {
			out.ask(v.table, v.at, v.name)
		}
		if r >= 0 {
			out.volunteers = append(out.volunteers, history.Volunteer{Runner: r, Day: v.day})
		}
	}
	slices.SortStableFunc(out.counts, func(a, b history.Count) int {
		return cmp.Or(cmp.Compare(a.Runner, b.Runner), cmp.Compare(a.Course, b.Course))
	})
	slices.SortStableFunc(out.bests, func(a, b history.Best) int {
		return cmp.Or(cmp.Compare(a.Runner, b.Runner), cmp.Compare(a.Day, b.Day), cmp.Compare(a.TimeS, b.TimeS))
	})
	slices.SortFunc(out.volunteers, func(a, b history.Volunteer) int {
		return cmp.Or(cmp.Compare(a.Runner, b.Runner), cmp.Compare(a.Day, b.Day))
	})
	out.volunteers = slices.Compact(out.volunteers)
	return out, nil
}

// addBest takes a best of history.csv, and asks where it can't be.
func (o *openings) addBest(h historyLine, at string, r, course int32, distance int, sex record.Sex) {
	if tooFast(h.timeMS, distance, sex) {
		o.problems = append(o.problems, storedProblem{Problem: place.Problem{Severity: place.Look, Kind: "opening-time",
			Read:     fmt.Sprintf("%s: %s, best before %s", filepath.Base(at), h.name, unit.ClockMS(h.timeMS)),
			Expected: slower(distance, sex), Do: "The row counts for nothing. Correct its time or distance_m."}})
		return
	}
	o.bests = append(o.bests, history.Best{Runner: r, Course: course, DistanceM: int32(distance), TimeS: unit.CeilSeconds(h.timeMS), Day: h.day})
}

// datesOfOpenings are the days before which runners' finishes are counted, by runner, and
// which of them the desk has settled.
type datesOfOpenings struct {
	day     map[int32]unit.Day
	decided map[int32]bool
}

// addCount takes the finishes of history.csv before a day. A runner has one such day: where
// the desk has settled another the row is asked about, where the table has two that is an
// error.
func (o *openings) addCount(h historyLine, at string, r, course int32, dates datesOfOpenings) error {
	switch d, ok := dates.day[r]; {
	case ok && d != h.day && dates.decided[r]:
		o.problems = append(o.problems, storedProblem{Problem: place.Problem{Severity: place.Look, Kind: "opening-date",
			Read:     fmt.Sprintf("%s: %s, finishes before %s", filepath.Base(at), h.name, h.day),
			Expected: fmt.Sprintf("finishes before %s, as the desk has settled", d), Do: "The row counts for nothing until it has that date. Correct or delete it."}})
		return nil
	case ok && d != h.day:
		return fmt.Errorf("%s: %s has finishes before two dates; give one date for all of them", at, h.name)
	}
	dates.day[r] = h.day
	o.counts = append(o.counts, history.Count{Runner: r, Course: course, Count: int32(h.finishes), AsOf: h.day})
	return nil
}

// ask asks, once a name, which of several runners a side table means.
func (o *openings) ask(table, at, who string) {
	if o.asked == nil {
		o.asked = map[[2]string]bool{}
	}
	k := [2]string{table, name.Parse(who).Full}
	if o.asked[k] {
		return
	}
	o.asked[k] = true
	o.problems = append(o.problems, storedProblem{Problem: place.Problem{Severity: place.Look, Kind: "several-runners",
		Read: fmt.Sprintf("%s: %s", filepath.Base(at), who), Expected: "a name that only one runner has",
		Do: tellApart(who)}})
}

// tellApart says what to do where several runners have a name.
func tellApart(who string) string {
	return fmt.Sprintf("Write the runner's id, as in R12, in place of the name. To see whose id is whose: lapwing standing %s", text.Typed(who))
}

// runnerNumber reads a runner id, R12.
func runnerNumber(s string) (int32, bool) {
	s = strings.TrimSpace(s)
	if len(s) < 2 || s[0] != 'R' && s[0] != 'r' {
		return 0, false
	}
	n, err := strconv.Atoi(s[1:])
	if err != nil || n <= 0 || n > 1<<31-1 {
		return 0, false
	}
	return int32(n), true
}
