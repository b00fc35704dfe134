package pipeline

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// parsedSheet is a sheet turned into facts, before it is written anywhere.
type parsedSheet struct {
	entry    store.Entry
	sheet    *sheet.Sheet
	parts    []*parsedPart
	problems []place.Problem // of the whole sheet and of every part, in order
	byHand   bool            // a person has said which course it is
}

// parsedPart is one table of a sheet.
type parsedPart struct {
	part     *sheet.Part
	runs     []runKey
	lines    lineList
	texts    arena
	readings []record.Reading
	kind     string
	problems []partProblem
}

// partProblem is a problem with the run it is about, -1 where none.
type partProblem struct {
	place.Problem
	run int32
}

func (p *parsedSheet) rows() int {
	n := 0
	for _, q := range p.parts {
		n += q.lines.n
	}
	return n
}

// waits says whether a question must be answered before the sheet can be used.
func (p *parsedSheet) waits() bool { return p.question() != "" }

func (p *parsedSheet) question() string {
	for _, q := range p.problems {
		if q.Severity == place.Waits {
			return q.String()
		}
	}
	return ""
}

func (p *parsedSheet) counts() map[string]int {
	m := map[string]int{}
	for _, q := range p.parts {
		for _, b := range q.lines.batches {
			for i := range b.lines {
				m[b.lines[i].Status.String()]++
			}
		}
	}
	return m
}

func (p *parsedSheet) runNames() []string {
	seen := map[runKey]bool{}
	var out []string
	for _, q := range p.parts {
		for _, r := range q.runs {
			if !seen[r] {
				seen[r] = true
				out = append(out, r.String())
			}
		}
	}
	return out
}

func (r runKey) String() string {
	s := r.course.course + " " + r.day.String()
	if r.session != "" {
		s += " " + r.session
	}
	return s
}

// parseSheet reads a sheet and turns its rows into facts. It touches neither
// the archive nor the database.
func (pl *Pipeline) parseSheet(name string, data []byte, hand ByHand) (*parsedSheet, error) {
	distance := 0
	if hand.Distance != "" {
		var err error
		if distance, err = ParseDistance(hand.Distance); err != nil {
			return nil, err
		}
	}
	s, err := sheet.Read(name, data, sheet.Options{
		Headings: pl.Settings.Headings, Courses: pl.courses.names(), DateOrder: pl.Settings.DateOrder,
		Course: hand.Course, Date: hand.Date, Session: hand.Session,
	})
	if err != nil {
		return nil, err
	}
	out := &parsedSheet{sheet: s, problems: s.Problems}
	for _, part := range s.Parts {
		p, err := pl.parsePart(name, part, distance, hand.Kind)
		if err != nil {
			return nil, err
		}
		out.parts = append(out.parts, p)
		for _, q := range p.problems {
			out.problems = append(out.problems, q.Problem)
		}
	}
	if out.rows() == 0 && !out.waits() {
		return nil, fmt.Errorf("no line of this sheet stands for a finisher: no row has a place, a name or a time under a heading that says so")
	}
	return out, nil
}

// ParseDistance reads a distance given by hand: 5000, 5000 m, 5 km, 5k,
// 4 miles. The result is in whole metres (1 mile = 1609.344 m).
func ParseDistance(s string) (int, error) {
	t := strings.ToLower(strings.TrimSpace(s))
	scale := 1.0
	for _, u := range []struct {
		suffix string
		metres float64
	}{{"miles", 1609.344}, {"mile", 1609.344}, {"mi", 1609.344}, {"km", 1000}, {"k", 1000}, {"metres", 1}, {"m", 1}} {
		if rest, ok := strings.CutSuffix(t, u.suffix); ok {
			t, scale = strings.TrimSpace(rest), u.metres
			break
		}
	}
	v, err := strconv.ParseFloat(strings.Replace(t, ",", ".", 1), 64)
	if m := int(v*scale + .5); err == nil && m >= 100 && m <= 200000 {
		return m, nil
	}
	return 0, fmt.Errorf("distance %q: write it as in 5 km, 4 miles or 3000", s)
}

func columnsOf(p *sheet.Part) record.Columns {
	time := p.Index(sheet.Time)
	if time < 0 {
		time = p.Index(sheet.GunTime)
	}
	if time < 0 {
		time = p.Index(sheet.ChipTime)
	}
	return record.Columns{
		Position: p.Index(sheet.Position), Name: p.Index(sheet.Name), Given: p.Index(sheet.GivenName), Family: p.Index(sheet.FamilyName),
		Time: time, Age: p.Index(sheet.Age), BirthYear: p.Index(sheet.BirthYear), BirthDate: p.Index(sheet.BirthDate),
		Group: p.Index(sheet.AgeGroup), Sex: p.Index(sheet.Sex), Club: p.Index(sheet.Club), Number: p.Index(sheet.Number),
		Notes: p.Index(sheet.Notes), Status: p.Index(sheet.Status),
	}
}

func (pl *Pipeline) parsePart(name string, part *sheet.Part, handDistance int, kind string) (*parsedPart, error) {
	out := &parsedPart{part: part, kind: part.Kind}
	if kind != "" {
		out.kind = kind
	}
	note := func(run int32, p place.Problem) {
		p.Place.Sheet = name
		if p.Place.Tab == "" {
			p.Place.Tab = part.Tab
		}
		out.problems = append(out.problems, partProblem{p, run})
	}
	for _, p := range part.Problems {
		note(-1, p)
	}
	distance := part.DistanceM()
	if handDistance > 0 {
		distance = handDistance
	}
	at := map[runKey]int32{}
	var lastCourse, lastSession string
	var lastDay unit.Day
	last := int32(-1)
	lost := 0
	runOf := func(row int, cells []string) (int32, bool) {
		course, day, session, ok := part.RunOf(cells)
		if !ok {
			return 0, false
		}
		if last >= 0 && course == lastCourse && day == lastDay && session == lastSession {
			return last, true
		}
		k := runKey{pl.courses.key(course, day, distance), day, session}
		i, seen := at[k]
		if !seen {
			i = int32(len(out.runs))
			at[k] = i
			out.runs = append(out.runs, k)
		}
		lastCourse, lastDay, lastSession, last = course, day, session, i
		return i, true
	}
	reader := record.NewReader(columnsOf(part), part.Headings(), record.Options{})
	err := part.Each(func(row int, cells []string) error {
		day := unit.Day(0)
		if i, ok := runOf(row, cells); ok {
			day = out.runs[i].day
		}
		reader.Observe(row, cells, day)
		return nil
	})
	if err != nil {
		return nil, err
	}
	readings := reader.Settle()
	out.readings = readings.Columns
	for _, p := range readings.Problems {
		note(-1, p)
	}
	err = part.Each(func(row int, cells []string) error {
		i, ok := runOf(row, cells)
		if !ok {
			if lost++; lost == 1 && part.Course.OK() && part.Date.OK() {
				note(-1, place.Problem{Place: place.Place{Row: row}, Severity: place.Waits, Kind: "row-without-run",
					Expected: "a course and a date on this row", Do: "Fill them in on the sheet and load it again."})
			}
			return nil
		}
		line, run := out.lines.add()
		*run = i
		k := out.runs[i]
		reader.Read(row, cells, k.day, k.course.distanceM, line)
		if line.Status == record.NotStarted {
			out.lines.drop()
			return nil
		}
		for _, p := range line.Problems {
			note(i, p)
		}
		line.Problems = nil
		out.texts.keep(line)
		return nil
	})
	if err != nil {
		return nil, err
	}
	pl.checkRuns(out, note)
	return out, nil
}

// checkRuns looks at the lines of each run of a part together.
func (pl *Pipeline) checkRuns(p *parsedPart, note func(int32, place.Problem)) {
	if len(p.runs) == 1 && len(p.lines.batches) == 1 {
		for _, q := range record.CheckRun(p.lines.batches[0].lines, p.runs[0].course.distanceM) {
			note(0, q)
		}
		return
	}
	type ref struct {
		run, at int32
		batch   int32
	}
	refs := make([]ref, 0, p.lines.n)
	for bi, b := range p.lines.batches {
		for i := range b.lines {
			refs = append(refs, ref{b.run[i], int32(i), int32(bi)})
		}
	}
	sort.SliceStable(refs, func(a, b int) bool { return refs[a].run < refs[b].run })
	var lines []record.Line
	for from := 0; from < len(refs); {
		to := from
		lines = lines[:0]
		for to < len(refs) && refs[to].run == refs[from].run {
			lines = append(lines, p.lines.batches[refs[to].batch].lines[refs[to].at])
			to++
		}
		for _, q := range record.CheckRun(lines, p.runs[refs[from].run].course.distanceM) {
			note(refs[from].run, q)
		}
		for i := from; i < to; i++ {
			p.lines.batches[refs[i].batch].lines[refs[i].at] = lines[i-from]
		}
		from = to
	}
}
