package pipeline

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"sort"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/unit"
)

// partParser turns one table of a sheet into facts, in two passes: observe
// counts what its columns show, settle decides how they are read, read turns
// the rows into lines.
type partParser struct {
	pl       *Pipeline
	name     string
	part     *sheet.Part
	out      *parsedPart
	reader   *record.Reader
	groups   []string
	distance int // given by hand or on the sheet, metres; 0 the course's
	lost     int // first row without a run, 0 none

	open   []openRun // by index of parsedPart.runs
	checks []partProblem
	alike  map[string]int // problems of a kind so far
	room   []record.Line

	at                      map[runKey]int32
	last                    int32 // run of the row before
	lastCourse, lastSession string
	lastDay                 unit.Day
	lastDistance            int
	distanceByHand          bool
}

func (pl *Pipeline) newPartParser(name string, part *sheet.Part, handDistance int, kind string, answers map[string]string) *partParser {
	p := &partParser{pl: pl, name: name, part: part, out: &parsedPart{part: part, kind: part.Kind}, distance: part.DistanceM(), at: map[runKey]int32{}, last: -1}
	if kind != "" && part.Kind != sheet.Volunteers {
		p.out.kind = kind
		if kind == "full" {
			p.out.kind = fullByHand
		}
	}
	if handDistance > 0 {
		p.distance, p.distanceByHand = handDistance, true
	}
	for _, q := range part.Problems {
		p.note(-1, q)
	}
	month, day, err := pl.Settings.seasonStart()
	if err != nil {
		month, day = 1, 1
	}
	p.reader = record.NewReader(columnsOf(part), part.Headings(), record.Options{
		DistanceM: p.usualDistance(), DateOrder: pl.Settings.DateOrder, SeasonMonth: month, SeasonDay: day, Rule: pl.Settings.AgeRule(), Answers: answers, Words: pl.Settings.Words,
	})
	return p
}

// note keeps a problem of the part; run is the index of the run it is about,
// -1 for none.
func (p *partParser) note(run int32, q place.Problem) {
	if p.tooMany(q) {
		return
	}
	p.out.problems = append(p.out.problems, partProblem{p.placed(q), run})
}

// mostAlike is how many problems of one kind are kept of a part; the others are
// counted. Whoever has that many has one problem.
const mostAlike = 10_000

// tooMany says whether a problem is only counted.
func (p *partParser) tooMany(q place.Problem) bool {
	if q.Severity == place.Waits {
		return false
	}
	if p.alike == nil {
		p.alike = map[string]int{}
	}
	p.alike[q.Kind]++
	return p.alike[q.Kind] > mostAlike
}

// ofLatestRun hands what concerns the part as a whole to its latest run, so that
// whoever looks at that run is told.
func (p *partParser) ofLatestRun() {
	latest := int32(-1)
	for i := range p.out.runs {
		if latest < 0 || p.out.runs[i].day > p.out.runs[latest].day {
			latest = int32(i)
		}
	}
	for i := range p.out.problems {
		if q := &p.out.problems[i]; q.run < 0 && q.Severity == place.Look {
			q.run = latest
		}
	}
}

// noteRest says how many problems were only counted.
func (p *partParser) noteRest() {
	for _, kind := range slices.Sorted(maps.Keys(p.alike)) {
		if n := p.alike[kind] - mostAlike; n > 0 {
			p.out.problems = append(p.out.problems, partProblem{p.placed(place.Problem{Severity: place.Look, Kind: "many-problems",
				Read: fmt.Sprintf("%d more of the kind %s", n, strings.ReplaceAll(kind, "-", " ")),
				Do:   fmt.Sprintf("Only the first %d are listed. Most likely a column is taken for something else than it is: see lapwing load … --dry-run", mostAlike)}), -1})
		}
	}
}

// maxField is how many lines one run may have. The largest runs on earth have
// had about a third of that (common knowledge, no source); a sheet with more is
// no sheet of a run, or its date is not where it was looked for.
const maxField = 250_000

// placed completes the place of a problem.
func (p *partParser) placed(q place.Problem) place.Problem {
	q.Place.Sheet = p.name
	if q.Place.Tab == "" {
		q.Place.Tab = p.part.Tab
	}
	return q
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
	distance := p.distance
	if distance == 0 {
		distance = p.part.DistanceOf(cells)
	}
	if p.last >= 0 && course == p.lastCourse && day == p.lastDay && session == p.lastSession && distance == p.lastDistance {
		return p.last, true
	}
	k := runKey{p.pl.courses.key(course, day, distance), day, session}
	i, seen := p.at[k]
	if !seen {
		i = int32(len(p.out.runs))
		p.at[k] = i
		p.out.runs = append(p.out.runs, k)
		p.open = append(p.open, openRun{})
	}
	p.lastCourse, p.lastDay, p.lastSession, p.lastDistance, p.last = course, day, session, distance, i
	return i, true
}

// observe counts what the columns show and the rows of every run.
func (p *partParser) observe(each func(func(row int, cells []string) error) error) error {
	if p.part.Kind == sheet.Volunteers {
		return p.readHelpers()
	}
	err := each(func(row int, cells []string) error {
		day, metres := unit.Day(0), 0
		if i, ok := p.runOf(cells); ok {
			day, metres = p.out.runs[i].day, p.out.runs[i].course.distanceM
			p.open[i].left++
		} else if p.lost == 0 {
			p.lost = row
		}
		p.reader.Observe(row, cells, day, metres)
		return nil
	})
	p.groups = p.reader.Groups()
	for i, run := range p.open {
		if err == nil && run.left > maxField {
			err = fmt.Errorf("%d lines are of one run, %s, more than the %d that a run may have; is this a list of several runs? Then each line needs its date", run.left, p.out.runs[i], maxField)
		}
	}
	return err
}

// settle decides how the columns are read; what it can't decide it asks.
func (p *partParser) settle() {
	if p.part.Kind != sheet.Volunteers {
		readings := p.reader.Settle()
		p.out.readings = append(readings.Columns, officialReading(p.part)...)
		for _, q := range readings.Problems {
			if q.Kind == "times-do-not-fit-distance" && p.distanceUnsaid() {
				q = place.Problem{Place: q.Place, Severity: place.Waits, Kind: "distance-missing", Read: q.Read, Expected: "times of a 5 km run, which is assumed where nobody says the distance",
					Do: "Over which distance was the run?", Answers: `--distance "NUMBER km"`}
			} else if q.Kind == "times-do-not-fit-distance" && p.distanceByHand {
				q.Severity, q.Do, q.Answers = place.Look, "The distance was given by hand, so the sheet is loaded. Check which column holds the time.", ""
			}
			p.note(-1, q)
		}
	}
	if p.lost > 0 && p.part.Course.OK() && p.part.Date.OK() && len(p.part.Date.Choices) == 0 {
		p.note(-1, place.Problem{Place: place.Place{Row: p.lost}, Severity: place.Waits, Kind: "row-without-run",
			Expected: "a course and a date on this row", Do: "Fill them in on the sheet and load it again."})
	}
}

// officialReading says which of several columns of times counts, where the sheet shows it, so
// that next week's sheet is read the same way; nothing where it has one, or only the rule for
// road races says so.
func officialReading(p *sheet.Part) []record.Reading {
	if p.Official == "" || strings.ContainsAny(p.Official, ";=") {
		return nil
	}
	for _, c := range p.Columns {
		if c.Meaning == sheet.Time && c.Heading == p.Official {
			return []record.Reading{{Column: place.ColumnLetters(c.Index), Heading: c.Heading, Means: "the time that counts", Why: c.Why, Answer: officialAnswer + "=" + c.Heading}}
		}
	}
	return nil
}

// read turns the rows into lines. Where there is a sink, batches of lines are
// handed to it as soon as the runs on them are whole, and not kept: a season
// list in order of date needs room for a few runs, whatever its length.
func (p *partParser) read(sink func(*lineBatch) error) error {
	if p.part.Kind == sheet.Volunteers {
		p.out.unread = nil // they were read when they were looked at
		return nil
	}
	err := p.part.Each(func(row int, cells []string) error {
		i, ok := p.runOf(cells)
		if !ok {
			return nil
		}
		b, at := p.out.lines.add()
		line, k := &b.lines[at.line], p.out.runs[i]
		b.run[at.line] = i
		p.reader.Read(row, cells, k.day, k.course.distanceM, line)
		run := &p.open[i]
		run.left--
		if line.Status == record.NotStarted {
			p.out.lines.drop()
			p.out.notStarted++
		} else {
			for _, q := range line.Problems {
				p.note(i, q)
			}
			line.Problems = nil
			b.words.keep(line)
			run.add(at)
			b.open++
			if line.TimeMS > 0 {
				run.timed++
			}
		}
		if run.left > 0 {
			return nil
		}
		p.checkRun(i)
		if sink == nil || run.n == 0 {
			return nil
		}
		return p.handOn(sink, false)
	})
	if err != nil {
		return err
	}
	p.out.unread = nil
	sort.SliceStable(p.checks, func(i, k int) bool { return p.checks[i].run < p.checks[k].run })
	p.out.problems = append(p.out.problems, p.checks...)
	p.doubtDistance()
	p.noteRest()
	p.ofLatestRun()
	if sink == nil {
		for _, b := range p.out.lines.batches {
			p.out.count(b)
		}
		return nil
	}
	return p.handOn(sink, true)
}

// handOn hands over the first batches whose runs are whole; the last batch, in
// which there is still room, only at the end.
func (p *partParser) handOn(sink func(*lineBatch) error, end bool) error {
	l := &p.out.lines
	for len(l.batches) > 0 && (end || len(l.batches) > 1) && l.batches[0].open == 0 {
		b := l.batches[0]
		l.batches[0] = nil
		l.batches = l.batches[1:]
		l.gone++
		p.out.count(b)
		if err := sink(b); err != nil {
			return err
		}
	}
	return nil
}

// count counts the lines of a batch by status.
func (p *parsedPart) count(b *lineBatch) {
	for i := range b.lines {
		p.byStatus[b.lines[i].Status]++
	}
}

// openRun is a run on its way: how many of its rows are still to come, and
// where its lines are.
type openRun struct {
	left, timed int32
	n           int32      // lines
	first       lineSpot   // the others follow it
	apart       []lineSpot // every line, where they do not stand together
}

func (r *openRun) add(at lineSpot) {
	switch {
	case r.n == 0:
		r.first = at
	case r.apart == nil && at == lineSpot{r.first.batch, r.first.line + r.n}:
	default:
		if r.apart == nil {
			r.apart = make([]lineSpot, r.n, max(16, 2*r.n))
			for k := range r.apart {
				r.apart[k] = lineSpot{r.first.batch, r.first.line + int32(k)}
			}
		}
		r.apart = append(r.apart, at)
	}
	r.n++
}

// checkRun looks at the lines of one run of a part together.
func (p *partParser) checkRun(i int32) {
	run, list := &p.open[i], &p.out.lines
	if run.n == 0 {
		return
	}
	var lines []record.Line
	if run.apart == nil {
		b := list.batch(run.first)
		lines = b.lines[run.first.line : run.first.line+run.n]
		b.open -= int(run.n)
	} else {
		lines = p.room[:0]
		for _, at := range run.apart {
			lines = append(lines, list.batch(at).lines[at.line])
		}
		p.room = lines
	}
	for _, q := range record.CheckRun(lines, p.out.runs[i].course.distanceM) {
		if p.out.kind == "excerpt" && strings.HasPrefix(q.Kind, "positions-missing") {
			continue // that is what an excerpt is
		}
		if q.Place.Row == 0 && len(p.out.runs) > 1 {
			q.Read = p.out.runs[i].named() + ": " + q.Read
		}
		if !p.tooMany(q) {
			p.checks = append(p.checks, partProblem{p.placed(q), i})
		}
	}
	for k, at := range run.apart {
		b := list.batch(at)
		b.lines[at.line] = lines[k]
		b.open--
	}
	run.apart = nil
}

// distanceUnsaid says whether nobody has given the distance: neither by hand, nor on the
// sheet, nor for its course.
func (p *partParser) distanceUnsaid() bool {
	if p.distance > 0 || p.part.Distance.OK() {
		return false
	}
	listed := false
	_ = p.part.Each(func(row int, cells []string) error {
		course, _, _, ok := p.part.RunOf(cells)
		listed = ok && p.pl.courses.listed(course)
		return errStop
	})
	return !listed
}

// doubtDistance says of a course whose distance nobody has given, and where
// many times are impossible over the 5 km that are assumed, that the distance
// is the likelier fault.
func (p *partParser) doubtDistance() {
	if p.distance > 0 || p.part.Distance.OK() {
		return
	}
	impossible := map[int32]int{}
	for _, q := range p.out.problems {
		if q.Kind == "time-impossible" && q.run >= 0 {
			impossible[q.run]++
		}
	}
	for run, k := range p.out.runs {
		n := impossible[int32(run)]
		if n < 2 || n*20 < int(p.open[run].timed) || p.pl.courses.listed(k.course.course) {
			continue
		}
		p.note(int32(run), place.Problem{Severity: place.Look, Kind: "distance-unsure", Read: fmt.Sprintf("%d of %d times too fast", n, int(p.open[run].timed)),
			Expected: "times of a 5 km run, which is assumed where nobody says the distance",
			Do:       fmt.Sprintf("If %s is shorter, give its distance in courses.csv, or with the sheet.", k.course.course),
			Answers:  place.AnswerLines(place.Answer{Flags: `--distance "NUMBER km"`, When: "if that was the distance"})})
	}
}
