package pipeline

import (
	"errors"
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

// sheetOptions is what is known about a sheet besides its bytes.
func (pl *Pipeline) sheetOptions(hand ByHand) sheet.Options {
	return sheet.Options{
		Headings: pl.Settings.Headings, Courses: pl.courses.names(), DateOrder: pl.Settings.DateOrder,
		Course: hand.Course, Date: hand.Date, Session: hand.Session,
	}
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
	s, err := sheet.Read(name, data, pl.sheetOptions(hand))
	if err != nil {
		return nil, err
	}
	answers, err := ParseAnswers(hand.Answers)
	if err != nil {
		return nil, err
	}
	out := &parsedSheet{sheet: s, problems: s.Problems}
	parsers := make([]*partParser, len(s.Parts))
	for i, part := range s.Parts {
		parsers[i] = pl.newPartParser(name, part, distance, hand.Kind, answers)
		if err := parsers[i].observe(); err != nil {
			return nil, err
		}
	}
	// the tabs of one workbook have one maker: what groups one uses tells how
	// wide another's are
	for i, p := range parsers {
		for k, q := range parsers {
			if i != k {
				p.reader.Know(q.groups)
			}
		}
	}
	for _, p := range parsers {
		if err := p.read(); err != nil {
			return nil, err
		}
		out.parts = append(out.parts, p.out)
		for _, q := range p.out.problems {
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

// fullByHand is the kind of a part that somebody has called the whole field.
const fullByHand = "full by hand"

// ParseAnswers reads answers to questions about a sheet's columns, as in
// "time=mm.ss; sex V=W". The keys are those that the questions name.
func ParseAnswers(text string) (map[string]string, error) {
	out := map[string]string{}
	for _, a := range strings.Split(text, ";") {
		if strings.TrimSpace(a) == "" {
			continue
		}
		k, v, ok := strings.Cut(a, "=")
		if !ok {
			return nil, fmt.Errorf("answer %q: write it as in \"time=mm.ss\"", a)
		}
		out[strings.TrimSpace(k)] = strings.TrimSpace(v)
	}
	return out, nil
}

// partParser turns one table of a sheet into facts, in two passes: observe
// counts what its columns show, read turns its rows into lines.
type partParser struct {
	pl       *Pipeline
	name     string
	part     *sheet.Part
	out      *parsedPart
	reader   *record.Reader
	groups   []string
	distance int // given by hand or on the sheet, metres; 0 the course's

	at                      map[runKey]int32
	last                    int32 // run of the row before
	lastCourse, lastSession string
	lastDay                 unit.Day
}

func (pl *Pipeline) newPartParser(name string, part *sheet.Part, handDistance int, kind string, answers map[string]string) *partParser {
	p := &partParser{pl: pl, name: name, part: part, out: &parsedPart{part: part, kind: part.Kind}, distance: part.DistanceM(), at: map[runKey]int32{}, last: -1}
	if kind != "" {
		p.out.kind = kind
		if kind == "full" {
			p.out.kind = fullByHand
		}
	}
	if handDistance > 0 {
		p.distance = handDistance
	}
	for _, q := range part.Problems {
		p.note(-1, q)
	}
	month, day, err := pl.Settings.seasonStart()
	if err != nil {
		month, day = 1, 1
	}
	p.reader = record.NewReader(columnsOf(part), part.Headings(), record.Options{
		DistanceM: p.usualDistance(), DateOrder: pl.Settings.DateOrder, SeasonMonth: month, SeasonDay: day, Answers: answers, Words: pl.Settings.Words,
	})
	return p
}

// note keeps a problem of the part; run is the index of the run it is about,
// -1 for none.
func (p *partParser) note(run int32, q place.Problem) {
	q.Place.Sheet = p.name
	if q.Place.Tab == "" {
		q.Place.Tab = p.part.Tab
	}
	p.out.problems = append(p.out.problems, partProblem{q, run})
}

// usualDistance is the distance of the first row's run.
func (p *partParser) usualDistance() int {
	metres := p.distance
	_ = p.part.Each(func(row int, cells []string) error {
		if course, day, _, ok := p.part.RunOf(cells); ok {
			metres = p.pl.courses.key(course, day, p.distance).distanceM
		}
		return errStop
	})
	return metres
}

var errStop = errors.New("enough")

// runOf is the index of a row's run; false where course or date is missing.
func (p *partParser) runOf(cells []string) (int32, bool) {
	course, day, session, ok := p.part.RunOf(cells)
	if !ok {
		return 0, false
	}
	if p.last >= 0 && course == p.lastCourse && day == p.lastDay && session == p.lastSession {
		return p.last, true
	}
	k := runKey{p.pl.courses.key(course, day, p.distance), day, session}
	i, seen := p.at[k]
	if !seen {
		i = int32(len(p.out.runs))
		p.at[k] = i
		p.out.runs = append(p.out.runs, k)
	}
	p.lastCourse, p.lastDay, p.lastSession, p.last = course, day, session, i
	return i, true
}

func (p *partParser) observe() error {
	err := p.part.Each(func(row int, cells []string) error {
		day := unit.Day(0)
		if i, ok := p.runOf(cells); ok {
			day = p.out.runs[i].day
		}
		p.reader.Observe(row, cells, day)
		return nil
	})
	p.groups = p.reader.Groups()
	return err
}

func (p *partParser) read() error {
	readings := p.reader.Settle()
	p.out.readings = readings.Columns
	for _, q := range readings.Problems {
		p.note(-1, q)
	}
	lost := 0
	err := p.part.Each(func(row int, cells []string) error {
		i, ok := p.runOf(cells)
		if !ok {
			if lost++; lost == 1 && p.part.Course.OK() && p.part.Date.OK() {
				p.note(-1, place.Problem{Place: place.Place{Row: row}, Severity: place.Waits, Kind: "row-without-run",
					Expected: "a course and a date on this row", Do: "Fill them in on the sheet and load it again."})
			}
			return nil
		}
		line, run := p.out.lines.add()
		*run = i
		k := p.out.runs[i]
		p.reader.Read(row, cells, k.day, k.course.distanceM, line)
		if line.Status == record.NotStarted {
			p.out.lines.drop()
			return nil
		}
		for _, q := range line.Problems {
			p.note(i, q)
		}
		line.Problems = nil
		p.out.texts.keep(line)
		return nil
	})
	if err != nil {
		return err
	}
	p.pl.checkRuns(p.out, p.note)
	p.doubtDistance()
	return nil
}

// doubtDistance says of a course whose distance nobody has given, and where
// many times are impossible over the 5 km that are assumed, that the distance
// is the likelier fault.
func (p *partParser) doubtDistance() {
	if p.distance > 0 {
		return
	}
	impossible := map[int32]int{}
	for _, q := range p.out.problems {
		if q.Kind == "time-impossible" && q.run >= 0 {
			impossible[q.run]++
		}
	}
	timed := map[int32]int{}
	for _, b := range p.out.lines.batches {
		for i := range b.lines {
			if b.lines[i].TimeMS > 0 {
				timed[b.run[i]]++
			}
		}
	}
	for run, k := range p.out.runs {
		n := impossible[int32(run)]
		if n < 2 || n*20 < timed[int32(run)] || p.pl.courses.listed(k.course.course) {
			continue
		}
		p.note(int32(run), place.Problem{Severity: place.Look, Kind: "distance-unsure", Read: fmt.Sprintf("%d of %d times too fast", n, timed[int32(run)]),
			Expected: "times of a 5 km run, which is assumed where nobody says the distance",
			Do:       fmt.Sprintf("If %s is shorter, give its distance in courses.csv, or load the sheet with --distance.", k.course.course)})
	}
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
