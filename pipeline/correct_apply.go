package pipeline

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// What became of a decision in the latest refresh.
const (
	decisionApplied      = "in force"
	decisionSatisfied    = "satisfied"    // a later sheet says the same by itself
	decisionContradicted = "contradicted" // a later sheet says something else, and stands
	decisionContested    = "contested"    // two people claim the place
	decisionReplaced     = "replaced"     // a later decision has settled the same
	decisionWaits        = "waits"        // its sheet is not loaded
)

// decisionOutcome is the state of a decision with the reason in words.
type decisionOutcome struct {
	id           int
	state, words string
}

// asReceived is what a line said before any decision.
type asReceived struct {
	name, timeMS, club int32
	position           int32
	person             string // folded full name, "" where nobody is named
	sex, takingPart    uint8
	birth              age.Window
}

// lineDecisions applies decisions about lines, after sheets of one run were
// compared as they came. A decision keeps to its finisher: where another sheet
// of the run stands now, it goes over to the line of that finisher there.
//
//   - the new sheet says the same: the decision is satisfied;
//   - it says what the old one said: the decision holds there as well;
//   - it says something else: the sheet stands, and the desk is asked.
//
// They work in the order in which they were made, each on what the line said by
// then: after an exchange a place is another one's, or nobody's. Two people who
// claim one place leave it unnamed, and the desk is asked.
type lineDecisions struct {
	f        *field
	lines    map[lineRef][]int
	received map[int]asReceived
	runs     map[int32][]int       // standing lines of runs that were looked into
	touched  map[int]bool          // lines that say something else than their sheet
	kinds    map[int][]appliedKind // what was decided about them
	said     told                  // what the desk had made of lines before the decision at hand
	last     told                  // and in the end
	claims   map[int]*claimed      // of standing lines
	named    map[int]int           // the decision that gave a line its name
	whose    map[int]int           // the line that a line's owner stood in at first, where they were exchanged
	timedFor map[int]int           // whose was a time when it was corrected, as in whose
	moved    map[int]bool          // those whose time or place was corrected
	records  map[int]settledRecord
	counts   map[int]bool // lines that the desk has said count after all
	apart    [][2]int     // lines of two people, whatever they look like
	owners   []lineOwner
	outcomes []decisionOutcome
	open     []openQuestion // about what a later decision may settle
	problems []storedProblem
}

// appliedKind is the kind of a decision that was followed.
type appliedKind struct {
	id   int
	kind string
}

func (f *field) applyLineDecisions(ds []Decision) (*lineDecisions, error) {
	a := &lineDecisions{f: f, received: map[int]asReceived{}, runs: map[int32][]int{}, touched: map[int]bool{}, kinds: map[int][]appliedKind{},
		said: told{}, last: told{}, claims: map[int]*claimed{}, named: map[int]int{}, whose: map[int]int{}, timedFor: map[int]int{}, moved: map[int]bool{}, records: map[int]settledRecord{}, counts: map[int]bool{}}
	var mine []Decision
	for _, d := range ds {
		if d.Sheet != "" && d.Kind != DecideAccept && d.Kind != DecideSame && d.Kind != DecideDifferent {
			mine = append(mine, d)
		}
	}
	if len(mine) == 0 {
		return a, nil
	}
	a.lines = f.linesOf(mine)
	a.standAsReceived()
	for _, d := range mine { // what was settled in the end, for sheets that came after it
		a.last.follow(a, d)
	}
	for _, d := range mine {
		for _, i := range a.linesFor(d) {
			var err error
			if d.Kind == DecideExchange {
				err = a.exchange(i, d)
			} else if j, ok := a.carry(i, d); ok {
				err = a.apply(j, d)
			}
			if err != nil {
				return nil, fmt.Errorf("decision %d: %w", d.ID, err)
			}
		}
		a.said.follow(a, d)
	}
	a.askClaims()
	a.askExchanged()
	a.askOrder()
	return a, nil
}

// String writes a line as HASH:ROW or HASH:TAB!ROW.
func (r lineRef) String() string { return place.Place{Sheet: r.hash, Tab: r.tab, Row: r.row}.String() }

// parseLineRef reads what String writes.
func parseLineRef(s string) (lineRef, error) {
	hash, rest, ok := strings.Cut(s, ":")
	tab := ""
	if k := strings.LastIndexByte(rest, '!'); k >= 0 {
		tab, rest = rest[:k], rest[k+1:]
	}
	row, err := strconv.Atoi(rest)
	if !ok || err != nil || row < 1 {
		return lineRef{}, fmt.Errorf("%q names no line: it is written HASH:ROW or HASH:TAB!ROW", s)
	}
	return lineRef{hash, tab, row}, nil
}

// tableLine is a line with the table that it stands in, where several stand
// side by side on its row: from 1, 0 the only one.
type tableLine struct {
	lineRef
	table int
}

// String is the line, with #2 behind it for the second table.
func (t tableLine) String() string { return withTable(t.lineRef.String(), t.table) }

func parseTableLine(s string) (t tableLine, err error) {
	line, nth, tabled := strings.Cut(s, "#")
	if tabled {
		if t.table, err = strconv.Atoi(nth); err != nil || t.table < 1 {
			return t, fmt.Errorf("%q: after # comes the number of the table", s)
		}
	}
	t.lineRef, err = parseLineRef(line)
	return t, err
}

func (a *lineDecisions) linesFor(d Decision) []int {
	found := a.lines[lineRef{d.Sheet, d.Tab, d.Row}]
	if len(found) == 0 {
		a.note(d, decisionWaits, "its sheet is not loaded, or was withdrawn")
	}
	return pick(found, d.Table)
}

// pick takes the line of one of the tables that stand side by side on a row.
func pick(lines []int, table int) []int {
	switch {
	case len(lines) == 0:
		return nil
	case table > 0 && table <= len(lines):
		return lines[table-1 : table]
	}
	return lines[:1]
}

func (a *lineDecisions) note(d Decision, state, words string) {
	a.outcomes = append(a.outcomes, decisionOutcome{d.ID, state, words})
}

// asReceived remembers what a line says by itself; it must be asked before the
// line is first changed.
func (a *lineDecisions) asReceived(i int) asReceived {
	if r, ok := a.received[i]; ok {
		return r
	}
	r := a.sees(i)
	a.received[i] = r
	return r
}

func (f *field) stands(i int) bool { return !f.is(i, record.Repeat) && !f.is(i, record.Superseded) }

// carry finds the line that a decision about line i holds for now. ok is
// false where it is satisfied, contradicted or without a line.
func (a *lineDecisions) carry(i int, d Decision) (j int, ok bool) {
	j = a.successor(i, d)
	if j < 0 {
		a.note(d, decisionWaits, "the sheet that stands now has no line of this finisher")
		return 0, false
	}
	if j == i {
		return j, true
	}
	was, is := a.asReceived(i), a.asReceived(j)
	if !carried[d.Kind] {
		return j, true
	}
	agrees, err := a.agrees(d, is, j)
	if err != nil {
		return j, true // applying it says what is wrong
	}
	same := func(x, y asReceived) bool { return a.same(d.Kind, x, y) }
	sheet := a.f.parts[a.f.part[j]-1].path
	settled := same(is, a.last.of(a, i).asReceived) && !a.saysNothing(d.Kind, is) && d.Kind != DecideRecord
	unchanged := same(is, was) || same(is, a.said.of(a, i).asReceived) || a.saysNothing(d.Kind, is)
	if d.Kind == DecideGroup { // the window that a sheet gives is seldom the same
		agrees, settled = agrees && !unchanged, settled && !same(is, was)
	}
	switch {
	case (settled || agrees) && same(is, a.sees(j)):
		a.note(d, decisionSatisfied, "a later sheet says the same: "+sheet)
		a.settleOpen(j, d)
		return 0, false
	case settled || agrees || unchanged:
		return j, true
	}
	says := a.words(d.Kind, is, j)
	a.note(d, decisionContradicted, fmt.Sprintf("a later sheet says %q: %s", says, sheet))
	a.open = append(a.open, openQuestion{j, d, "decision-contradicted", says, fmt.Sprintf("%s, as settled on %s (decision %d)", d.Value, d.When.Format("2006-01-02"), d.ID),
		fmt.Sprintf("The sheet stands. If it is right: lapwing correct --undo %d. If not, correct this line again.", d.ID)})
	return 0, false
}

func agesOn(w age.Window, day unit.Day) string {
	lo, hi, ok := w.On(day)
	switch {
	case !ok:
		return "no age"
	case lo == hi:
		return fmt.Sprintf("age %d", lo)
	}
	return fmt.Sprintf("age %d to %d", lo, hi)
}

// successor is the standing line of the finisher of line i, -1 where there is
// none.
func (a *lineDecisions) successor(i int, d Decision) int {
	f := a.f
	for range 8 {
		switch {
		case f.stands(i):
			return i
		case f.is(i, record.Superseded) && (d.Kind == DecideClaim || d.Kind == DecideName):
			return a.finisher(i, d) // whoever the sheet named there may stand elsewhere now
		case f.sameAs[i] >= 0:
			i = int(f.sameAs[i])
		case f.is(i, record.Repeat): // struck out by hand
			return i
		default:
			return a.finisher(i, d)
		}
	}
	return -1
}

// finisher looks among the standing lines of the run for the one that a
// superseded line most likely became: the person that a decision names, else
// place and time, else the only one with that time, else the place.
func (a *lineDecisions) finisher(i int, d Decision) int {
	f := a.f
	run := a.standingOf(f.run[i])
	if d.Kind == DecideClaim || d.Kind == DecideName {
		want := name.Parse(d.Value).Full
		for _, j := range run {
			if a.asReceived(j).person == want {
				return j
			}
		}
	}
	was := a.asReceived(i)
	byPlace, byTime, sameTime := -1, -1, 0
	for _, j := range run {
		placed := was.position > 0 && a.asReceived(j).position == was.position
		timed := was.timeMS > 0 && a.asReceived(j).timeMS == was.timeMS
		switch {
		case placed && timed:
			return j
		case placed && byPlace < 0:
			byPlace = j
		case timed:
			byTime = j
			sameTime++
		}
	}
	if sameTime == 1 {
		return byTime
	}
	return byPlace
}

// standingOf lists the lines of a run that stood before any decision, in the
// order of their keys.
func (a *lineDecisions) standingOf(run int32) []int { return a.runs[run] }

// standAsReceived finds the standing lines of the runs of which decisions name
// lines that stand no more.
func (a *lineDecisions) standAsReceived() {
	f := a.f
	for _, lines := range a.lines {
		for _, i := range lines {
			if !f.stands(i) {
				a.runs[f.run[i]] = nil
			}
		}
	}
	if len(a.runs) == 0 {
		return
	}
	for i := range f.n {
		if l, ok := a.runs[f.run[i]]; ok && f.stands(i) {
			a.runs[f.run[i]] = append(l, i)
		}
	}
	for _, l := range a.runs {
		slices.SortFunc(l, func(x, y int) int { return int(f.key[x] - f.key[y]) })
	}
}

// lineOwner is a line of which somebody said which known runner's it is.
type lineOwner struct {
	line     int
	runner   string // R12
	decision int
}

func (a *lineDecisions) apply(j int, d Decision) error {
	a.asReceived(j)
	switch d.Kind {
	case DecideClaim:
		if !a.claim(j, d) {
			return nil
		}
	case DecideName:
		a.replaceClaims(j, d)
	}
	if d.Kind == DecideName || d.Kind == DecideClaim {
		a.named[j] = d.ID
		a.owners = slices.DeleteFunc(a.owners, func(o lineOwner) bool { return o.line == j })
		if l, ok := a.timedFor[j]; ok && l != a.ownerOf(j) { // who names it knows of its time
			delete(a.timedFor, j)
		}
	}
	if d.Runner != "" {
		a.owners = append(a.owners, lineOwner{j, d.Runner, d.ID})
	}
	a.touched[j] = true
	a.kinds[j] = append(a.kinds[j], appliedKind{d.ID, d.Kind})
	if d.Kind == DecideTime {
		a.timedFor[j] = a.ownerOf(j)
	}
	if d.Kind == DecideTime || d.Kind == DecidePlace {
		a.moved[j] = true
	}
	a.note(d, decisionApplied, "")
	a.settleOpen(j, d)
	a.settleRecord(j, d)
	if d.Kind == DecideStatus {
		a.counts[j] = strings.EqualFold(d.Value, "ok")
	}
	return a.f.applyToLine(j, d)
}

// exchange gives two lines each other's owner: everything that is the
// person's, while place and time stay with the line.
func (a *lineDecisions) exchange(i int, d Decision) error {
	f := a.f
	ref, err := parseTableLine(d.Value)
	if err != nil {
		return err
	}
	other := pick(a.lines[ref.lineRef], ref.table)
	if len(other) == 0 {
		a.note(d, decisionWaits, "the sheet of the other line is not loaded, or was withdrawn")
		return nil
	}
	// On another sheet the two are looked for by place and time: their names
	// may have been exchanged there already.
	x, y := a.placeNow(i), a.placeNow(other[0])
	if x < 0 || y < 0 || x == y {
		a.note(d, decisionWaits, "the sheet that stands now has no two lines of these finishers")
		return nil
	}
	if x != i || y != other[0] {
		isX, isY := a.asReceived(x).person, a.asReceived(y).person
		lastX, lastY := a.last.of(a, i).person, a.last.of(a, other[0]).person
		saidX, saidY := a.said.of(a, i).person, a.said.of(a, other[0]).person
		old := func(is, said string, i int) bool { return is == said || is == a.asReceived(i).person }
		sheet := f.parts[f.part[x]-1].path
		switch {
		case (isX == lastX && isY == lastY || isX == saidY && isY == saidX) && isX == a.sees(x).person && isY == a.sees(y).person:
			a.note(d, decisionSatisfied, "a later sheet has exchanged them: "+sheet)
			return nil
		case isX == lastX && isY == lastY:
		case !old(isX, saidX, i) || !old(isY, saidY, other[0]):
			a.note(d, decisionContradicted, "a later sheet has other names in these places: "+sheet)
			a.ask(x, "decision-contradicted", a.called(x)+" and "+a.called(y), fmt.Sprintf("%s and %s (decision %d)", orNobody(a.said.of(a, other[0]).called), orNobody(a.said.of(a, i).called), d.ID),
				fmt.Sprintf("The sheet stands. If it is right: lapwing correct --undo %d.", d.ID))
			return nil
		}
	}
	a.asReceived(x)
	a.asReceived(y)
	for _, c := range [][]int32{f.name, f.number, f.club} {
		c[x], c[y] = c[y], c[x]
	}
	for _, c := range [][]uint8{f.sex, f.basis, f.takingPart} {
		c[x], c[y] = c[y], c[x]
	}
	for _, c := range [][]unit.Day{f.birthLo, f.birthHi} {
		c[x], c[y] = c[y], c[x]
	}
	for k := range a.owners { // whom an earlier decision has named goes along
		switch o := &a.owners[k]; o.line {
		case x:
			o.line = y
		case y:
			o.line = x
		}
	}
	f.settleStatus(x)
	f.settleStatus(y)
	a.exchangeNames(x, y, d)
	a.touched[x], a.touched[y] = true, true
	a.kinds[x], a.kinds[y] = append(a.kinds[x], appliedKind{d.ID, d.Kind}), append(a.kinds[y], appliedKind{d.ID, d.Kind})
	a.note(d, decisionApplied, "")
	a.settleRecord(x, d)
	a.settleRecord(y, d)
	return nil
}

// placeNow is the standing line of the same place and time, whoever it names.
func (a *lineDecisions) placeNow(i int) int {
	f := a.f
	if f.is(i, record.Superseded) {
		return a.finisher(i, Decision{})
	}
	return a.successor(i, Decision{})
}

// ask raises a problem at a line.
func (a *lineDecisions) ask(i int, kind, read, expected, todo string) {
	f := a.f
	p := &f.parts[f.part[i]-1]
	a.problems = append(a.problems, storedProblem{place.Problem{
		Place:    place.Place{Sheet: p.path, Tab: p.tab, Row: int(f.row[i])},
		Severity: place.Look, Kind: kind, Read: read, Expected: expected, Do: todo,
	}, p.sheetNo, f.run[i]})
}
