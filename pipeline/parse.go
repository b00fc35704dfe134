package pipeline

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
)

// parsedSheet is a sheet turned into facts, before it is written anywhere.
type parsedSheet struct {
	entry    store.Entry
	sheet    *sheet.Sheet
	parts    []*parsedPart
	problems []place.Problem   // of the whole sheet and of every part, in order
	byHand   bool              // a person has said which course it is
	misspelt map[string]string // names of courses that are asked about, and what each may mean
}

// parsedPart is one table of a sheet.
type parsedPart struct {
	part       *sheet.Part
	runs       []runKey
	lines      lineList
	helpers    []helper // of a list of volunteers, which has no lines
	byStatus   [record.NotStarted + 1]int
	notStarted int // lines of people who did not start, which are no lines
	readings   []record.Reading
	kind       string
	problems   []partProblem
	told       int         // problems that the sheet has been told of
	unread     *partParser // reads the lines; nil once they are read
}

// partProblem is a problem with the run it is about, -1 where none.
type partProblem struct {
	place.Problem
	run int32
}

func (p *parsedSheet) rows() int {
	n := 0
	for _, q := range p.parts {
		n += q.lines.n + len(q.helpers)
	}
	return n
}

// waits says whether a question must be answered before the sheet can be used.
func (p *parsedSheet) waits() bool { return p.asked() != nil }

// asked is the question that the sheet waits for, nil where it waits for none.
func (p *parsedSheet) asked() *place.Problem {
	for i := range p.problems {
		if p.problems[i].Severity == place.Waits {
			return &p.problems[i]
		}
	}
	return nil
}

// question is that in words, "" where there is none.
func (p *parsedSheet) question() string {
	if q := p.asked(); q != nil {
		return q.String()
	}
	return ""
}

func (p *parsedSheet) counts() map[string]int {
	m := map[string]int{}
	for _, q := range p.parts {
		for status, n := range q.byStatus {
			if n > 0 {
				m[record.Status(status).String()] += n
			}
		}
		if n := len(q.helpers); n > 0 {
			m["volunteers"] += n
		}
	}
	return m
}

func (p *parsedSheet) runNames() []string {
	seen, alike := map[runKey]bool{}, map[string]int{}
	var runs []runKey
	for _, q := range p.parts {
		for _, r := range append(slices.Clip(q.runs), helperRuns(q.helpers)...) {
			if !seen[r] {
				seen[r] = true
				runs = append(runs, r)
				alike[r.String()]++
			}
		}
	}
	out := runNames(runs)
	for i, r := range runs {
		if alike[out[i]] > 1 {
			out[i] += " " + distanceSession(r.course.distanceM)
		}
	}
	return out
}

// named tells a run of a sheet from its others: the course, the day and the distance.
func (r runKey) named() string {
	return fmt.Sprintf("%s, %s", r, distanceSession(r.course.distanceM))
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
		Course: hand.Course, Date: hand.Date, Session: hand.Session, Kind: hand.Kind, Limits: pl.limits,
	}
}

// parseSheet reads a sheet and turns its rows into facts. It touches neither
// the archive nor the database.
func (pl *Pipeline) parseSheet(name string, data []byte, hand ByHand) (*parsedSheet, error) {
	out, err := pl.openParts(name, data, hand)
	if err != nil {
		return nil, err
	}
	for _, p := range out.parts {
		if err := p.unread.read(nil); err != nil {
			return nil, err
		}
	}
	out.placedTogether()
	out.checkSaidCount()
	for _, p := range out.parts {
		out.tell(p)
	}
	return out, out.someLines()
}

// placedTogether looks for missing places among all lines of a run where it stands on
// several parts of the sheet, side by side or on several tabs: what one lacks another has.
func (p *parsedSheet) placedTogether() {
	parts := map[runKey]int{}
	for _, q := range p.parts {
		for _, r := range q.runs {
			parts[r]++
		}
	}
	looked := map[runKey]bool{}
	for _, q := range p.parts {
		for k := 0; k < len(q.problems); k++ {
			m := q.problems[k]
			if m.run < 0 || !strings.HasPrefix(m.Kind, "positions-missing") || parts[q.runs[m.run]] < 2 {
				continue
			}
			r := q.runs[m.run]
			if now, missing := record.PositionsMissing(p.linesOf(r)); missing && !looked[r] {
				if now.Place = m.Place; len(parts) > 1 {
					now.Read = r.named() + ": " + now.Read
				}
				q.problems[k].Problem = now
			} else {
				q.problems = slices.Delete(q.problems, k, k+1)
				k--
			}
			looked[r] = true
		}
	}
}

// linesOf are the lines of a run on all parts of the sheet.
func (p *parsedSheet) linesOf(r runKey) (lines []record.Line) {
	for _, q := range p.parts {
		for _, b := range q.lines.batches {
			for k := range b.lines {
				if q.runs[b.run[k]] == r {
					lines = append(lines, b.lines[k])
				}
			}
		}
	}
	return lines
}

// openSheet finds out all about a sheet but its lines: the columns, the runs,
// and whether it waits for an answer. Its parts are still to be read.
func (pl *Pipeline) openSheet(name string, data []byte, hand ByHand) (*parsedSheet, error) {
	out, err := pl.openParts(name, data, hand)
	if err != nil {
		return nil, err
	}
	for _, p := range out.parts {
		out.tell(p)
	}
	return out, nil
}

func (pl *Pipeline) openParts(name string, data []byte, hand ByHand) (*parsedSheet, error) {
	distance := 0
	if hand.Distance != "" {
		var err error
		if distance, err = ParseDistance(hand.Distance); err != nil {
			return nil, err
		}
	}
	answers, err := ParseAnswers(hand.Answers)
	if err != nil {
		return nil, err
	}
	o, meant := pl.sheetOptions(hand), coursesMeant(answers)
	o.Courses = withMeant(o.Courses, meant)
	if err := applyAnswers(&o, answers); err != nil {
		return nil, err
	}
	applySeries(&o, answers)
	s, err := sheet.Read(name, data, o)
	if err != nil {
		return nil, err
	}
	noteMeant(s, meant)
	noteOrder(s, &o)
	noteSeries(s, &o)
	noteRace(s, hand, answers)
	noteSaid(s, hand, answers)
	out := &parsedSheet{sheet: s, problems: s.Problems}
	for _, part := range s.Parts {
		p := pl.newPartParser(name, part, distance, hand.Kind, answers)
		each := part.Each
		if weight(name, int64(len(data))) > int64(largeSheet) {
			each = rowsAhead(part)
		}
		if err := p.observe(each); err != nil {
			return nil, err
		}
		p.out.unread = p
		out.parts = append(out.parts, p.out)
	}
	// the tabs of one workbook have one maker: what groups one uses tells how
	// wide another's are, and how its times are written how another's are
	headings := make([]string, len(out.parts))
	for i, p := range out.parts {
		headings[i] = timeHeading(p.part)
	}
	for i, p := range out.parts {
		for k, q := range out.parts {
			if i != k {
				p.unread.reader.Know(q.unread.groups)
				if headings[i] != "" && headings[i] == headings[k] {
					p.unread.reader.KnowTimes(q.unread.reader, p.part.TabIndex == q.part.TabIndex)
				}
			}
		}
	}
	for _, p := range out.parts {
		p.unread.settle()
	}
	if len(out.parts) > 1 {
		out.leaveOtherDistances()
	}
	return out, nil
}

// tell adds the problems of a part to those of the sheet.
func (p *parsedSheet) tell(part *parsedPart) {
	for _, q := range part.problems[part.told:] {
		p.problems = append(p.problems, q.Problem)
	}
	part.told = len(part.problems)
}

// someLines is an error where a sheet that was read has no line at all and
// nothing that could be asked.
func (p *parsedSheet) someLines() error {
	if p.rows() > 0 || p.waits() {
		return nil
	}
	return fmt.Errorf("no line of this sheet stands for a finisher: no row has a place, a name or a time under a heading that says so. Put each runner on a line, under a line of headings such as Position, Name, Time, save, and load it again")
}

// ParseDistance reads a distance given by hand: 5000, 5000 m, 5 km, 5k,
// 4 miles, marathon, half marathon. The result is in whole metres (1 mile = 1609.344 m).
func ParseDistance(s string) (int, error) {
	if m := sheet.MarathonMetres(s); m > 0 {
		return m, nil
	}
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

// timeColumn is the index of the column with the running times, -1 where there is
// none.
func timeColumn(p *sheet.Part) int {
	for _, m := range []sheet.Meaning{sheet.Time, sheet.GunTime, sheet.ChipTime} {
		if i := p.Index(m); i >= 0 {
			return i
		}
	}
	return -1
}

// timeHeading is what stands over the running times; "" where nothing does.
func timeHeading(p *sheet.Part) string {
	time := timeColumn(p)
	for _, c := range p.Columns {
		if c.Index == time {
			return strings.ToLower(strings.TrimSpace(c.Heading))
		}
	}
	return ""
}

func columnsOf(p *sheet.Part) record.Columns {
	time := timeColumn(p)
	return record.Columns{
		Position: p.Index(sheet.Position), Name: p.Index(sheet.Name), Given: p.Index(sheet.GivenName), Family: p.Index(sheet.FamilyName),
		Time: time, Age: p.Index(sheet.Age), BirthYear: p.Index(sheet.BirthYear), BirthDate: p.Index(sheet.BirthDate),
		Group: p.Index(sheet.AgeGroup), Sex: p.Index(sheet.Sex), Club: p.Index(sheet.Club), Number: p.Index(sheet.Number),
		Notes: p.Index(sheet.Notes), Status: p.Index(sheet.Status), Chip: p.Index(sheet.ChipTime),
	}
}

// fullByHand is the kind of a part that somebody has called the whole field.
const fullByHand = "full by hand"
