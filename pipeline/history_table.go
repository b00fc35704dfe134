package pipeline

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// historyColumns are the columns of history.csv: what was before the sheets.
//
//	kind            what the line says
//	complete from   course, date: every sheet from that day on is loaded
//	runs            person: value is the number of runs before date
//	best            person: value is the best time, date when it was run
//	record          course: value is the record, with sex and group
//
// A person is named by runner id (R12) or by a name that only one runner has.
var historyColumns = []string{"kind", "course", "person", "value", "date", "distance_m", "sex", "group", "note"}

const (
	completeFrom = "complete from"
	earlierRuns  = "runs"
	earlierBest  = "best"
	heldRecord   = "record"
)

type historyLine struct {
	kind, course, person, value string
	day                         unit.Day
	distanceM                   int
	sex, group, note            string
	line                        int // of the file
}

func (pl *Pipeline) readHistoryTable() ([]historyLine, error) {
	rows, err := pl.Archive.ReadTable("history.csv", historyColumns)
	if err != nil {
		return nil, err
	}
	var out []historyLine
	for i, r := range rows {
		h := historyLine{kind: strings.ToLower(r[0]), course: r[1], person: r[2], value: r[3], distanceM: defaultDistance, sex: r[6], group: r[7], note: r[8], line: i + 2}
		fail := func(err error) error {
			return fmt.Errorf("%s:%d: %w", pl.Archive.File("history.csv"), h.line, err)
		}
		if r[4] != "" {
			if h.day, err = unit.ParseDay(r[4]); err != nil {
				return nil, fail(err)
			}
		}
		if r[5] != "" {
			if h.distanceM, err = strconv.Atoi(r[5]); err != nil || h.distanceM < 100 {
				return nil, fail(fmt.Errorf("distance_m %q: write metres, as in 5000", r[5]))
			}
		}
		switch h.kind {
		case completeFrom:
			if h.course == "" || h.day == 0 {
				return nil, fail(fmt.Errorf("%q needs a course and a date", h.kind))
			}
		case earlierRuns:
			if n, err := strconv.Atoi(h.value); err != nil || n < 0 || h.person == "" {
				return nil, fail(fmt.Errorf("%q needs a person and the number of runs in value", h.kind))
			}
		case earlierBest:
			if _, err := ParseClock(h.value); err != nil || h.person == "" {
				return nil, fail(fmt.Errorf("%q needs a person and a time such as 24:31 in value", h.kind))
			}
		case heldRecord:
			if _, err := ParseClock(h.value); err != nil || h.course == "" {
				return nil, fail(fmt.Errorf("%q needs a course and a time such as 17:05 in value", h.kind))
			}
		default:
			return nil, fail(fmt.Errorf("kind %q is not known; write %s, %s, %s or %s", r[0], completeFrom, earlierRuns, earlierBest, heldRecord))
		}
		out = append(out, h)
	}
	return out, nil
}

type openings struct {
	counts     []history.Count
	bests      []history.Best
	volunteers []history.Volunteer
}

// openings turns history.csv and volunteers.csv into what the histories begin
// with. A name that no runner or several runners have is left out here and
// listed by lapwing check.
func (pl *Pipeline) openings(f *field, p *people) (*openings, error) {
	table, err := pl.readHistoryTable()
	if err != nil {
		return nil, err
	}
	vols, err := pl.readVolunteers()
	if err != nil {
		return nil, err
	}
	out := &openings{}
	if len(table) == 0 && len(vols) == 0 {
		return out, nil
	}
	find := f.finder(p)
	courses := map[string]int32{}
	for c := range f.courses {
		courses[f.courses[c].course] = int32(c)
	}
	asOf := map[int32]unit.Day{}
	for _, h := range table {
		r := int32(-1)
		if h.person != "" {
			if r = find(h.person); r < 0 {
				continue
			}
		}
		course := history.AnyCourse
		if c, ok := courses[pl.courses.resolve(h.course)]; ok && h.course != "" {
			course = c
		}
		switch h.kind {
		case earlierRuns:
			n, _ := strconv.Atoi(h.value)
			if d, ok := asOf[r]; ok && d != h.day {
				return nil, fmt.Errorf("%s:%d: %s has earlier runs as of two dates; give one date for all of them", pl.Archive.File("history.csv"), h.line, h.person)
			}
			asOf[r] = h.day
			out.counts = append(out.counts, history.Count{Runner: r, Course: course, Count: int32(n), AsOf: h.day})
		case earlierBest:
			ms, _ := ParseClock(h.value)
			out.bests = append(out.bests, history.Best{Runner: r, Course: course, DistanceM: int32(h.distanceM), TimeS: unit.CeilSeconds(ms), Day: h.day})
		}
	}
	for _, v := range vols {
		if r := find(v.name); r >= 0 {
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

// volunteerColumns are the columns of volunteers.csv.
var volunteerColumns = []string{"name", "role", "course", "date"}

type volunteerLine struct {
	name, role, course string
	day                unit.Day
}

func (pl *Pipeline) readVolunteers() ([]volunteerLine, error) {
	rows, err := pl.Archive.ReadTable("volunteers.csv", volunteerColumns)
	if err != nil {
		return nil, err
	}
	var out []volunteerLine
	for i, r := range rows {
		d, err := unit.ParseDay(r[3])
		if err != nil {
			return nil, fmt.Errorf("%s:%d: %w", pl.Archive.File("volunteers.csv"), i+2, err)
		}
		out = append(out, volunteerLine{r[0], r[1], pl.courses.resolve(r[2]), d})
	}
	return out, nil
}

// finder looks up a runner (dense index) by id or by a name that only one has;
// -1 where none or several fit.
func (f *field) finder(p *people) func(string) int32 {
	// by number of the name's text first: texts are few, lines many
	byText := make([]int32, len(f.person)) // 0 none, -1 several, else index + 1
	for i := 0; i < f.n; i++ {
		if r := p.of[i]; r >= 0 {
			byText[f.name[i]] = onlyOne(byText[f.name[i]], r+1)
		}
	}
	byName := map[string]int32{}
	for t, r := range byText {
		if k := f.person[t].Full; k != "" && r != 0 {
			byName[k] = onlyOne(byName[k], r)
		}
	}
	return func(who string) int32 {
		if n, ok := runnerNumber(who); ok {
			if i, found := slices.BinarySearch(p.no, n); found {
				return int32(i)
			}
			return -1
		}
		if r := byName[name.Parse(who).Full]; r > 0 {
			return r - 1
		}
		return -1
	}
}

// onlyOne keeps a value while it is the only one: 0 none yet, -1 several.
func onlyOne(have, more int32) int32 {
	if have == 0 || have == more {
		return more
	}
	return -1
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
