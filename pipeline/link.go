package pipeline

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"

	"lapwing/pipeline/insight/speed"
	"lapwing/pipeline/parallel"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/who"
	"lapwing/pipeline/unit"
)

// linkage is who is who: the outcome of the linker and the numbers given.
type linkage struct {
	result *who.Result
	rows   []int32         // line of each row that was linked
	number []int32         // runner number of each of the linker's runners
	alias  map[int32]int32 // number no longer used → number now
	fresh  []anchor        // for runner_ids.csv, not kept yet
	next   int32           // first runner number never given
}

// now follows a joined number to the one in use.
func (l *linkage) now(n int32) int32 {
	for range len(l.alias) {
		m, ok := l.alias[n]
		if !ok {
			break
		}
		n = m
	}
	return n
}

// stepLink works out who is who and gives every line of somebody its runner
// number.
func (pl *Pipeline) stepLink(ctx context.Context, w *work) error {
	f := w.field
	l := &linkage{alias: map[int32]int32{}}
	w.link = l
	rows := f.whoRows(l, pl.workers())
	if len(l.rows) == 0 {
		return nil
	}
	decisions, err := f.whoDecisions(w.decisions, w.desk, pl)
	if err != nil {
		return err
	}
	l.result, err = who.Link(ctx, rows, f.person, who.Options{Threads: pl.workers(), Decisions: decisions})
	if err != nil {
		return err
	}
	if err := pl.numberRunners(f, rows, l); err != nil {
		return err
	}
	w.problems = append(w.problems, w.contradictionProblems()...)
	w.doubtful = w.doubtfulPairs()
	for k, i := range l.rows {
		f.runner[i] = l.number[l.result.Runner[k]]
	}
	return nil
}

// stepKeepLink writes what the linker has found about doubtful pairs, and what
// new lines need to find their runners, and lets go of the linker's memory
// before the figures take theirs. If the refresh ends before the rest is
// written, the next one writes it again. A trial of decisions keeps it all.
func (pl *Pipeline) stepKeepLink(ctx context.Context, w *work) error {
	if !w.keepLink || w.link.result == nil {
		return nil
	}
	if err := pl.keepIDs(w); err != nil {
		return err
	}
	if err := pl.DB.Transaction(ctx, func() error {
		return errors.Join(pl.writeLink(ctx, w), pl.setState(ctx, stateBase, "")) // cut short here, the next refresh is of everything
	}); err != nil {
		return err
	}
	w.link.result, w.link.rows, w.linkKept = nil, nil, true
	return nil
}

// writeLink writes it.
func (pl *Pipeline) writeLink(ctx context.Context, w *work) error {
	if w.linkKept {
		return nil
	}
	if err := pl.writeReview(ctx, w); err != nil {
		return err
	}
	return pl.writeKnown(ctx, w)
}

// keepIDs keeps the runner numbers that are new; before the database, so that
// they are never given twice.
func (pl *Pipeline) keepIDs(w *work) error {
	if pl.readOnly {
		return nil
	}
	err := pl.appendAnchors(w.link.fresh)
	w.link.fresh = nil
	return err
}

// whoRows picks the lines that name somebody and lays them out for the linker.
func (f *field) whoRows(l *linkage, workers int) *who.Rows {
	l.rows = f.linesWhere(workers, f.linked)
	return f.whoRowsOf(l.rows, workers)
}

// linesWhere lists the lines of which something holds.
func (f *field) linesWhere(workers int, holds func(i int) bool) []int32 {
	const piece = 1 << 16
	found := make([][]int32, (f.n+piece-1)/piece)
	parallel.Each(len(found), workers, func(k int) {
		list := make([]int32, 0, piece)
		for i := k * piece; i < min(f.n, (k+1)*piece); i++ {
			if holds(i) {
				list = append(list, int32(i))
			}
		}
		found[k] = list
	})
	return slices.Concat(found...)
}

// whoRowsOf lays lines out for the linker.
func (f *field) whoRowsOf(lines []int32, workers int) *who.Rows {
	n := len(lines)
	r := &who.Rows{
		Key: make([]int64, n), Name: make([]int32, n), Number: make([]int32, n), Sex: make([]uint8, n),
		Club: make([]int32, n), Course: make([]int32, n), Run: make([]int32, n), Series: make([]int32, n),
		Day: make([]unit.Day, n), BirthLo: make([]unit.Day, n), BirthHi: make([]unit.Day, n), Basis: make([]uint8, n),
		LogTime: make([]float32, n), Numbers: f.numbers.list, PlaceOf: f.places(),
	}
	parallel.Pieces(n, workers, func(from, to int) {
		for k := from; k < to; k++ {
			i := int(lines[k])
			run := &f.runs[f.run[i]-1]
			r.Key[k], r.Name[k], r.Number[k], r.Sex[k], r.Club[k] = f.key[i], f.name[i], f.number[i], f.sex[i], f.club[i]
			r.Course[k], r.Run[k], r.Day[k] = run.course-1, f.run[i]-1, run.day
			r.Series[k] = run.course - 1 // sheets of one course have one maker
			r.BirthLo[k], r.BirthHi[k], r.Basis[k] = f.birthLo[i], f.birthHi[i], f.basis[i]
			if f.tellsPace(i) {
				r.LogTime[k] = speed.LogTime(float64(f.timeMS[i])/1000, float64(run.distanceM)) + speed.Origin
			}
		}
	})
	return r
}

// tellsPace says whether a line's time says how fast its runner is. So does that of a
// line that is doubtful because its name stands twice in the run: of two namesakes'
// lines the time is what best tells whose each is. A time that can't be is nobody's.
func (f *field) tellsPace(i int) bool {
	if f.timeMS[i] <= 0 || record.TakingPart(f.takingPart[i]) > record.Guided {
		return false
	}
	return f.is(i, record.OK) || f.is(i, record.Doubtful) && !f.tooFast(i)
}

// places numbers the places of the courses: one course over two distances is at one.
func (f *field) places() []int32 {
	first, out := map[string]int32{}, make([]int32, len(f.courses))
	for c := range f.courses {
		at, ok := first[f.courses[c].course]
		if !ok {
			at = int32(c)
			first[f.courses[c].course] = at
		}
		out[c] = at
	}
	return out
}

// linked says whether a line is for the linker: it names one person, and is
// not the second place of somebody who stands twice in a run.
func (f *field) linked(i int) bool { return f.named(i) && f.sameAs[i] < 0 }

// whoDecisions turns decisions about people into decisions about lines. One
// whose lines and runners are not in the archive waits.
func (f *field) whoDecisions(ds []Decision, desk *lineDecisions, pl *Pipeline) ([]who.Decision, error) {
	var people, refs []Decision
	var sides [][2]side
	for _, d := range ds {
		if !d.aboutPeople() {
			continue
		}
		a, b, err := d.sides()
		if err != nil {
			return nil, fmt.Errorf("decision %d: %w", d.ID, err)
		}
		people, sides = append(people, d), append(sides, [2]side{a, b})
		for _, s := range []side{a, b} {
			refs = append(refs, Decision{Sheet: s.at.hash, Tab: s.at.tab, Row: s.at.row})
		}
	}
	if len(people)+len(desk.owners)+len(desk.apart) == 0 {
		return nil, nil
	}
	lines := f.linesOf(refs)
	anchors, err := pl.anchorLines(f)
	if err != nil {
		return nil, err
	}
	keyOf := func(s side) (int64, bool) {
		for _, i := range lines[s.at] {
			for hops := 0; i >= 0 && hops < 8; hops++ { // to the line that stands now
				if f.linked(i) {
					return f.key[i], true
				}
				i = int(f.sameAs[i])
			}
		}
		if n, ok := runnerNumber(s.runner); ok {
			if i, ok := anchors[n]; ok {
				return f.key[i], true
			}
		}
		return 0, false
	}
	var out []who.Decision
	for i, d := range people {
		a, b := sides[i][0], sides[i][1]
		keyA, okA := keyOf(a)
		keyB, okB := keyOf(b)
		if okA && okB {
			out = append(out, who.Decision{A: keyA, B: keyB, Same: d.Kind == DecideSame,
				WholeA: a.runner != "", WholeB: b.runner != "", Ref: fmt.Sprintf("decision %d", d.ID)})
		}
	}
	for _, l := range desk.apart {
		if f.linked(l[0]) && f.linked(l[1]) {
			out = append(out, who.Decision{A: f.key[l[0]], B: f.key[l[1]], Ref: "two lines that both count"})
		}
	}
	for _, o := range desk.owners {
		if b, ok := keyOf(side{runner: o.runner}); ok && f.linked(o.line) {
			out = append(out, who.Decision{A: f.key[o.line], B: b, Same: true, WholeB: true, Ref: fmt.Sprintf("decision %d", o.decision)})
		}
	}
	return out, nil
}

func itoa(n int32) string { return strconv.Itoa(int(n)) }
