package pipeline

import (
	"context"
	"errors"
	"fmt"
	"strconv"

	"lapwing/pipeline/insight/speed"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/who"
	"lapwing/pipeline/unit"
)

// idColumns are the columns of runner_ids.csv: which line a runner number was
// given for. The file is only ever appended to, so that numbers outlive the
// database.
//
// sheet is the place in the ledger, tab the place of the tab in the workbook
// (0 the first), lines how many lines of the runner the anchor stands for.
var idColumns = []string{"runner", "sheet", "tab", "row", "lines"}

const idTable = "runner_ids.csv"

// linkage is who is who: the outcome of the linker and the numbers given.
type linkage struct {
	result *who.Result
	rows   []int32         // line of each row that was linked
	number []int32         // runner number of each of the linker's runners
	alias  map[int32]int32 // number no longer used → number now
	fresh  [][]string      // lines for runner_ids.csv, not kept yet
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
	rows := f.whoRows(l)
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
	err := pl.Archive.AppendList(idTable, idColumns, w.link.fresh)
	w.link.fresh = nil
	return err
}

// whoRows picks the lines that name somebody and lays them out for the linker.
func (f *field) whoRows(l *linkage) *who.Rows {
	n := 0
	for i := 0; i < f.n; i++ {
		if f.linked(i) {
			n++
		}
	}
	l.rows = make([]int32, 0, n)
	for i := 0; i < f.n; i++ {
		if f.linked(i) {
			l.rows = append(l.rows, int32(i))
		}
	}
	return f.whoRowsOf(l.rows)
}

// whoRowsOf lays lines out for the linker.
func (f *field) whoRowsOf(lines []int32) *who.Rows {
	n := len(lines)
	r := &who.Rows{
		Key: make([]int64, 0, n), Name: make([]int32, 0, n), Number: make([]int32, 0, n), Sex: make([]uint8, 0, n),
		Club: make([]int32, 0, n), Course: make([]int32, 0, n), Run: make([]int32, 0, n), Series: make([]int32, 0, n),
		Day: make([]unit.Day, 0, n), BirthLo: make([]unit.Day, 0, n), BirthHi: make([]unit.Day, 0, n), Basis: make([]uint8, 0, n),
		LogTime: make([]float32, 0, n), Numbers: f.numbers.list,
	}
	for _, line := range lines {
		i := int(line)
		run := &f.runs[f.run[i]-1]
		r.Key = append(r.Key, f.key[i])
		r.Name = append(r.Name, f.name[i])
		r.Number = append(r.Number, f.number[i])
		r.Sex = append(r.Sex, f.sex[i])
		r.Club = append(r.Club, f.club[i])
		r.Course = append(r.Course, run.course-1)
		r.Run = append(r.Run, f.run[i]-1)
		r.Series = append(r.Series, run.course-1) // sheets of one course have one maker
		r.Day = append(r.Day, run.day)
		r.BirthLo, r.BirthHi = append(r.BirthLo, f.birthLo[i]), append(r.BirthHi, f.birthHi[i])
		r.Basis = append(r.Basis, f.basis[i])
		logTime := float32(0)
		if f.timeMS[i] > 0 && (f.is(i, record.OK)) && record.TakingPart(f.takingPart[i]) <= record.Guided {
			logTime = speed.LogTime(float64(f.timeMS[i])/1000, float64(run.distanceM)) + speed.Origin
		}
		r.LogTime = append(r.LogTime, logTime)
	}
	return r
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

// anchor is one line of runner_ids.csv.
type anchor struct {
	runner, lines int32
	at            lineAt
}

// lineAt names a line by its sheet's place in the ledger, tab and row.
type lineAt struct{ sheet, tab, row int32 }

func (f *field) lineAt(i int) lineAt {
	p := &f.parts[f.part[i]-1]
	return lineAt{p.sheetNo, p.tabIndex, f.row[i]}
}

func (pl *Pipeline) readAnchors() ([]anchor, error) {
	rows, err := pl.Archive.ReadList(idTable, idColumns)
	if err != nil {
		return nil, err
	}
	out := make([]anchor, len(rows))
	for i, r := range rows {
		var v [5]int32
		for k := range v {
			n, err := strconv.ParseInt(r[k], 10, 32)
			if err != nil {
				return nil, fmt.Errorf("%s:%d: %q is not a number; restore this file from a backup", pl.Archive.File(idTable), i+2, r[k])
			}
			v[k] = int32(n)
		}
		out[i] = anchor{v[0], v[4], lineAt{v[1], v[2], v[3]}}
	}
	return out, nil
}

// numberRunners gives the linker's runners their lasting numbers, and notes
// the anchors that are new. They are kept before the database is written.
func (pl *Pipeline) numberRunners(f *field, rows *who.Rows, l *linkage) error {
	have, err := pl.readAnchors()
	if err != nil {
		return err
	}
	wanted := make(map[lineAt]int64, len(have))
	for _, a := range have {
		wanted[a.at] = -1
	}
	if len(wanted) > 0 {
		for _, i := range l.rows {
			at := f.lineAt(int(i))
			if _, ok := wanted[at]; ok {
				wanted[at] = f.key[i]
			}
		}
	}
	anchors := make([]who.Anchor, len(have))
	for i, a := range have {
		anchors[i] = who.Anchor{ID: a.runner, Key: wanted[a.at], Rows: a.lines} // key -1: not in the archive now
	}
	ids := who.AssignIDs(pl.workers(), anchors, rows.Key, l.result.Runner, l.result.Runners)
	l.number = ids.Of
	l.next = ids.Next
	for _, a := range ids.Aliases {
		l.alias[a.Old] = a.ID
	}
	if len(ids.Added) == 0 {
		return nil
	}
	out := make([][]string, len(ids.Added))
	for k, a := range ids.Added {
		at := f.lineAt(int(l.rows[a.Row()]))
		out[k] = []string{itoa(a.ID), itoa(at.sheet), itoa(at.tab), itoa(at.row), itoa(a.Rows)}
	}
	l.fresh = out
	return nil
}

func itoa(n int32) string { return strconv.Itoa(int(n)) }

// anchorLines finds a line that stands of each runner number that was ever
// given.
func (pl *Pipeline) anchorLines(f *field) (map[int32]int32, error) {
	anchors, err := pl.readAnchors()
	if err != nil || len(anchors) == 0 {
		return nil, err
	}
	at := make(map[lineAt]int32, len(anchors))
	for _, a := range anchors {
		at[a.at] = a.runner
	}
	out := map[int32]int32{}
	for i := 0; i < f.n; i++ {
		if n, ok := at[f.lineAt(i)]; ok && f.linked(i) {
			if _, have := out[n]; !have {
				out[n] = int32(i)
			}
		}
	}
	return out, nil
}
