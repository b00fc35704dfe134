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
// Two people who claim one place leave it unnamed, and the desk is asked.
type lineDecisions struct {
	f        *field
	lines    map[lineRef][]int
	received map[int]asReceived
	runs     map[int32][]int       // standing lines of runs that were looked into
	touched  map[int]bool          // lines that say something else than their sheet
	kinds    map[int][]appliedKind // what was decided about them
	timed    map[int]bool          // those whose time was corrected
	moved    map[int]bool          // those whose time or place was corrected
	records  map[int]settledRecord
	counts   map[int]bool // lines that the desk has said count after all
	apart    [][2]int     // lines of two people, whatever they look like
	owners   []lineOwner
	outcomes []decisionOutcome
	problems []storedProblem
}

// appliedKind is the kind of a decision that was followed.
type appliedKind struct {
	id   int
	kind string
}

func (f *field) applyLineDecisions(ds []Decision) (*lineDecisions, error) {
	a := &lineDecisions{f: f, received: map[int]asReceived{}, runs: map[int32][]int{}, touched: map[int]bool{}, kinds: map[int][]appliedKind{}, timed: map[int]bool{}, moved: map[int]bool{}, records: map[int]settledRecord{}, counts: map[int]bool{}}
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
	// claims first: whoever corrects a name settles the claims before it
	claims := map[int][]Decision{}
	var claimed []int
	for _, d := range mine {
		if d.Kind != DecideClaim {
			continue
		}
		for _, i := range a.linesFor(d) {
			if j, ok := a.carry(i, d); ok {
				if len(claims[j]) == 0 {
					claimed = append(claimed, j)
				}
				claims[j] = append(claims[j], d)
			}
		}
	}
	for _, j := range claimed {
		if err := a.settleClaims(j, claims[j]); err != nil {
			return nil, err
		}
	}
	for _, d := range mine {
		if d.Kind == DecideClaim {
			continue
		}
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
	}
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
	f := a.f
	r := asReceived{name: f.name[i], timeMS: f.timeMS[i], club: f.club[i], position: f.position[i], sex: f.sex[i], takingPart: f.takingPart[i],
		birth: age.Window{Lo: f.birthLo[i], Hi: f.birthHi[i]}}
	if f.namesSomebody(i) {
		r.person = f.person[f.name[i]].Full
	}
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
	f := a.f
	var agrees, unchanged bool
	var says string
	switch d.Kind {
	case DecideClaim, DecideName:
		want := name.Parse(d.Value).Full
		agrees, unchanged, says = is.person == want, is.person == was.person || is.person == "", f.names.list[is.name]
	case DecideTime:
		want, err := ParseClock(d.Value)
		if err != nil {
			return j, true // applying it says what is wrong
		}
		agrees, unchanged, says = is.timeMS == want, is.timeMS == was.timeMS || is.timeMS == 0, clockOrDash(is.timeMS)
	case DecidePlace:
		want, err := parsePlace(d.Value)
		if err != nil {
			return j, true
		}
		agrees, unchanged, says = is.position == want, is.position == was.position || is.position == 0, orDash(is.position)
	case DecideClub:
		now, before := name.Fold(f.clubs.list[is.club]), name.Fold(f.clubs.list[was.club])
		agrees, unchanged, says = now == name.Fold(d.Value), now == before || now == "", f.clubs.list[is.club]
	case DecideSex:
		want, err := parseSex(d.Value)
		if err != nil {
			return j, true
		}
		agrees, unchanged, says = is.sex == uint8(want), is.sex == was.sex || is.sex == 0, record.Sex(is.sex).String()
	case DecideGroup:
		want, _, err := parseGroupByHand(d.Value, f.day(j))
		if err != nil {
			return j, true
		}
		_, meets := want.Meet(is.birth)
		unchanged = is.birth == was.birth || !is.birth.Known()
		agrees, says = !unchanged && meets, agesOn(is.birth, f.day(j))
	case DecideTakingPart:
		want, err := parseTakingPart(d.Value)
		if err != nil {
			return j, true
		}
		agrees, unchanged, says = is.takingPart == uint8(want), is.takingPart == was.takingPart, record.TakingPart(is.takingPart).String()
	case DecideRecord: // of this time of this person
		unchanged, says = is.timeMS == was.timeMS && is.person == was.person, fmt.Sprintf("%s, %s", f.names.list[is.name], clockOrDash(is.timeMS))
	default:
		return j, true
	}
	sheet := f.parts[f.part[j]-1].path
	switch {
	case agrees:
		a.note(d, decisionSatisfied, "a later sheet says the same: "+sheet)
		return 0, false
	case unchanged:
		return j, true
	}
	a.note(d, decisionContradicted, fmt.Sprintf("a later sheet says %q: %s", says, sheet))
	a.ask(j, "decision-contradicted", says, fmt.Sprintf("%s, as settled on %s (decision %d)", d.Value, d.When.Format("2006-01-02"), d.ID),
		fmt.Sprintf("The sheet stands. If it is right: lapwing correct --undo %d. If not, correct this line again.", d.ID))
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
		placed := f.position[i] > 0 && f.position[j] == f.position[i]
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

// standingOf lists the standing lines of a run in the order of their keys.
func (a *lineDecisions) standingOf(run int32) []int {
	if l, ok := a.runs[run]; ok {
		return l
	}
	f := a.f
	var out []int
	for i := 0; i < f.n; i++ {
		if f.run[i] == run && f.stands(i) {
			out = append(out, i)
		}
	}
	slices.SortFunc(out, func(x, y int) int { return int(f.key[x] - f.key[y]) })
	a.runs[run] = out
	return out
}

// lineOwner is a line of which somebody said which known runner's it is.
type lineOwner struct {
	line     int
	runner   string // R12
	decision int
}

func (a *lineDecisions) apply(j int, d Decision) error {
	a.asReceived(j)
	if d.Runner != "" {
		a.owners = slices.DeleteFunc(a.owners, func(o lineOwner) bool { return o.line == j })
		a.owners = append(a.owners, lineOwner{j, d.Runner, d.ID})
	}
	a.touched[j] = true
	a.kinds[j] = append(a.kinds[j], appliedKind{d.ID, d.Kind})
	a.timed[j] = a.timed[j] || d.Kind == DecideTime
	if d.Kind == DecideTime || d.Kind == DecidePlace {
		a.moved[j] = true
	}
	a.note(d, decisionApplied, "")
	a.settleRecord(j, d)
	if d.Kind == DecideStatus {
		a.counts[j] = strings.EqualFold(d.Value, "ok")
	}
	return a.f.applyToLine(j, d)
}

// settleClaims names the one who claims a place; where two different people
// do, nobody.
func (a *lineDecisions) settleClaims(j int, claims []Decision) error {
	was := a.asReceived(j)
	people := map[string]bool{}
	var said []string
	for _, d := range claims {
		people[name.Parse(d.Value).Full] = true
		said = append(said, fmt.Sprintf("%s (decision %d)", d.Value, d.ID))
	}
	if was.person != "" && !people[was.person] {
		for _, d := range claims {
			a.note(d, decisionContradicted, fmt.Sprintf("the sheet names %q", a.f.names.list[was.name]))
		}
		a.ask(j, "decision-contradicted", a.f.names.list[was.name], strings.Join(said, ", "), "The sheet stands. If it is wrong, correct the name: lapwing correct … --name.")
		return nil
	}
	if len(people) > 1 {
		for _, d := range claims {
			a.note(d, decisionContested, "claimed by "+strings.Join(said, " and "))
		}
		var undo []string
		for _, d := range claims {
			undo = append(undo, fmt.Sprintf("lapwing correct --undo %d", d.ID))
		}
		a.ask(j, "two-claims", strings.Join(said, " and "), "one person", "Nobody is named here until one claim is taken back: "+strings.Join(undo, " or "))
		return nil
	}
	for _, d := range claims {
		if err := a.apply(j, d); err != nil {
			return fmt.Errorf("decision %d: %w", d.ID, err)
		}
	}
	return nil
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
		wasX, wasY, isX, isY := a.asReceived(i), a.asReceived(other[0]), a.asReceived(x), a.asReceived(y)
		sheet := f.parts[f.part[x]-1].path
		switch {
		case isX.person == wasY.person && isY.person == wasX.person:
			a.note(d, decisionSatisfied, "a later sheet has exchanged them: "+sheet)
			return nil
		case isX.person != wasX.person || isY.person != wasY.person:
			a.note(d, decisionContradicted, "a later sheet has other names in these places: "+sheet)
			a.ask(x, "decision-contradicted", f.names.list[isX.name]+" and "+f.names.list[isY.name],
				fmt.Sprintf("%s and %s (decision %d)", f.names.list[wasY.name], f.names.list[wasX.name], d.ID),
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
	a.touched[x], a.touched[y] = true, true
	a.kinds[x], a.kinds[y] = append(a.kinds[x], appliedKind{d.ID, d.Kind}), append(a.kinds[y], appliedKind{d.ID, d.Kind})
	a.note(d, decisionApplied, "")
	a.settleRecord(x, d)
	a.settleRecord(y, d)
	a.askExchangeOf(x, y)
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
