package pipeline

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/unit"
)

// decisionColumns are the columns of decisions.csv. The file is only ever
// appended to; a decision is undone by a later one of kind "take back" whose
// value is its id.
var decisionColumns = []string{"id", "when", "by", "kind", "sheet", "tab", "row", "runner", "course", "date", "session", "value", "why", "table"}

// Decision is something a person has settled. It is about a line of a sheet
// (hash, tab, row), a runner, or a run (course, date, session).
type Decision struct {
	ID   int
	When time.Time
	By   string
	Kind string

	Sheet, Tab string // hash of the sheet's bytes
	Row        int
	Table      int    // which of several tables side by side on that row, from 1; 0 the only one
	Runner     string // R12
	Course     string
	Date       unit.Day
	Session    string

	Value, Why string
}

// The kinds of decisions.
const (
	DecideClaim      = "claim"          // line of an unnamed place; value the name of who says it was theirs
	DecideTime       = "time"           // line; value 24:31
	DecidePlace      = "place"          // line; value the place, a whole number
	DecideName       = "name"           // line; value the person's name: a correction
	DecideClub       = "club"           // line
	DecideSex        = "sex"            // line; value M, W, X or not given
	DecideGroup      = "age group"      // line; value M45, 45-49, U17, an age or a year of birth
	DecideTakingPart = "taking part as" // line; value a word of TakingPart
	DecideStatus     = "status"         // line; value dq, dnf, ok or not a finisher
	DecideExchange   = "exchange"       // line; value the other line, HASH:ROW or HASH:TAB!ROW: the two stand for each other's owner
	DecideRecord     = "record"         // line; value confirmed or void: whether it may stand as a record
	DecideSame       = "same person"    // line and runner, or runner and runner in value
	DecideDifferent  = "different people"
	DecidePrintName  = "name to print" // runner, over all history
	DecideCategory   = "category"      // runner, over all history; value M, W or X
	DecideHide       = "hide"          // runner

	DecideEarlierRuns = "finishes before" // runner: opening balance; value the finishes before date, on course or on all
	DecideEarlierBest = "best before"     // runner; value 24:10, or 24:10 over 10000 m; run on date, on course where it is given

	DecideClubName  = "club name"       // value OTHER = CLUB: the first is another name of the second
	DecideOtherClub = "different clubs" // value OTHER = CLUB: they are two; don't ask again

	DecideRunState = "run state"      // run; value held, cancelled, abandoned, times lost, other route, misdirected, short by 120 m, long by 50 m
	DecideAccept   = "accept problem" // value the kind and the sheets, as in "time-read-as, sheets 1 to 118"; of the course and on the date where they are given
	DecideTakeBack = "take back"      // value the id of another decision
)

// Decisions reads the decisions in force, in order.
func (pl *Pipeline) Decisions() ([]Decision, error) {
	all, err := pl.allDecisions()
	return inForce(all), err
}

// allDecisions reads every decision, those taken back and the taking back
// among them.
func (pl *Pipeline) allDecisions() ([]Decision, error) {
	rows, err := pl.Archive.ReadTable(decisionTable, decisionColumns)
	if err != nil {
		return nil, err
	}
	out := make([]Decision, len(rows))
	bad := func(i int, err error) error {
		return fmt.Errorf("%s: %w. Correct that row, then try again", pl.Archive.At(decisionTable, i), err)
	}
	gone := map[int]bool{}
	for i, r := range rows {
		if out[i], err = readDecision(r); err != nil {
			return nil, bad(i, err)
		}
		if d := out[i]; d.Kind == DecideTakeBack {
			if err := d.check(); err != nil {
				return nil, bad(i, err)
			}
			id, _ := strconv.Atoi(d.Value)
			gone[id] = true
		}
	}
	for i, d := range out {
		if err := d.check(); err != nil && !gone[d.ID] {
			return nil, bad(i, err)
		}
	}
	return out, nil
}

const decisionTable = "decisions.csv"

func readDecision(r []string) (d Decision, err error) {
	d = Decision{By: r[2], Kind: r[3], Sheet: r[4], Tab: r[5], Runner: r[7], Course: sheet.Slug(r[8]), Session: r[10], Value: r[11], Why: r[12]}
	if d.ID, err = strconv.Atoi(r[0]); err != nil {
		return d, fmt.Errorf("id %q is not a number", r[0])
	}
	d.When, _ = time.Parse(time.RFC3339, r[1])
	if r[6] != "" {
		if d.Row, err = strconv.Atoi(r[6]); err != nil {
			return d, fmt.Errorf("row %q is not a number", r[6])
		}
	}
	if r[9] != "" {
		if d.Date, err = unit.ParseDay(r[9]); err != nil {
			return d, err
		}
	}
	if r[13] != "" {
		if d.Table, err = strconv.Atoi(r[13]); err != nil {
			return d, fmt.Errorf("table %q is not a number", r[13])
		}
	}
	return d, nil
}

// row is the decision as a line of decisions.csv.
func (d Decision) row() []string {
	line, date, table := "", "", ""
	if d.Row > 0 {
		line = strconv.Itoa(d.Row)
	}
	if d.Table > 0 {
		table = strconv.Itoa(d.Table)
	}
	if d.Date != 0 {
		date = d.Date.String()
	}
	return []string{strconv.Itoa(d.ID), d.When.UTC().Format(time.RFC3339), d.By, d.Kind, d.Sheet, d.Tab, line, d.Runner, d.Course, date, d.Session, d.Value, d.Why, table}
}

// inForce leaves out decisions that were taken back.
func inForce(all []Decision) []Decision {
	gone := map[int]bool{}
	for _, d := range all {
		if d.Kind == DecideTakeBack {
			id, _ := strconv.Atoi(d.Value)
			gone[id] = true
		}
	}
	var kept []Decision
	for _, d := range all {
		if !gone[d.ID] && d.Kind != DecideTakeBack {
			kept = append(kept, d)
		}
	}
	return kept
}

// numberDecisions gives new decisions the ids after those that there are, and
// the time of now where they have none.
func numberDecisions(all, fresh []Decision, now time.Time) []Decision {
	last := 0
	for _, d := range all {
		last = max(last, d.ID)
	}
	out := make([]Decision, len(fresh))
	for i, d := range fresh {
		last++
		d.ID = last
		if d.When.IsZero() {
			d.When = now.UTC().Truncate(time.Second)
		}
		out[i] = d
	}
	return out
}

// AppendDecisions keeps decisions for good, numbered after those that there
// are. Figures follow with the next Refresh.
func (pl *Pipeline) AppendDecisions(fresh []Decision) ([]Decision, error) {
	all, err := pl.allDecisions()
	if err != nil {
		return nil, err
	}
	out := numberDecisions(all, fresh, time.Now())
	rows := make([][]string, len(out))
	for i, d := range out {
		rows[i] = d.row()
	}
	return out, pl.appendDecisions(rows)
}

// appendDecisions adds rows to decisions.csv, also to one that an earlier
// version began with fewer columns.
func (pl *Pipeline) appendDecisions(rows [][]string) error {
	if err := pl.Archive.ExtendTable(decisionTable, decisionColumns); err != nil {
		return err
	}
	return pl.Archive.AppendTable(decisionTable, decisionColumns, rows)
}

// lineRef names a line by what it will always be: the sheet's bytes, tab, row.
type lineRef struct {
	hash, tab string
	row       int
}

// linesOf finds the lines that decisions name, both lines of an exchange.
func (f *field) linesOf(ds []Decision) map[lineRef][]int {
	want := map[lineRef]bool{}
	hashes := map[string]bool{}
	add := func(r lineRef) {
		want[r] = true
		hashes[r.hash] = true
	}
	for _, d := range ds {
		if d.Sheet == "" {
			continue
		}
		add(lineRef{d.Sheet, d.Tab, d.Row})
		if d.Kind == DecideExchange {
			if r, err := parseTableLine(d.Value); err == nil {
				add(r.lineRef)
			}
		}
	}
	out := map[lineRef][]int{}
	if len(want) == 0 {
		return out
	}
	parts := map[int32]bool{}
	for _, p := range f.parts {
		if hashes[p.hash] {
			parts[p.no] = true
		}
	}
	for i := 0; i < f.n; i++ {
		if parts[f.part[i]] {
			p := f.parts[f.part[i]-1]
			k := lineRef{p.hash, p.tab, int(f.row[i])}
			if want[k] {
				out[k] = append(out[k], i)
			}
		}
	}
	for _, l := range out { // tables side by side from left to right
		slices.SortFunc(l, func(a, b int) int { return cmp.Compare(f.part[a], f.part[b]) })
	}
	return out
}

// applyToLine makes a line say what a person has settled.
func (f *field) applyToLine(i int, d Decision) error {
	switch d.Kind {
	case DecideTime:
		ms, err := ParseClock(d.Value)
		if err != nil {
			return err
		}
		f.timeMS[i] = ms
		if f.is(i, record.Untimed) || f.is(i, record.Doubtful) {
			f.setDoubt(i, record.OK, "")
		}
		f.settleStatus(i)
	case DecidePlace:
		n, err := parsePlace(d.Value)
		if err != nil {
			return err
		}
		f.position[i] = n
	case DecideName, DecideClaim:
		f.name[i] = f.addName(d.Value)
		f.settleStatus(i)
	case DecideClub:
		f.club[i] = f.clubs.number(d.Value)
	case DecideSex:
		sex, err := parseSex(d.Value)
		if err != nil {
			return err
		}
		f.sex[i] = uint8(sex)
	case DecideGroup:
		w, basis, err := parseGroupByHand(d.Value, f.day(i), f.rule)
		if err != nil {
			return err
		}
		f.birthLo[i], f.birthHi[i], f.basis[i] = w.Lo, w.Hi, uint8(basis)
	case DecideTakingPart:
		part, err := parseTakingPart(d.Value)
		if err != nil {
			return err
		}
		f.takingPart[i] = uint8(part)
	case DecideStatus:
		switch strings.ToLower(d.Value) {
		case "dq":
			f.setDoubt(i, record.DQ, "disqualified")
		case "dnf":
			f.setDoubt(i, record.DNF, "did not finish")
		case notAFinisher:
			f.setDoubt(i, record.Repeat, "not a finisher: struck out by the desk")
			f.sameAs[i] = -1
		case "ok":
			f.setDoubt(i, record.OK, "")
			f.settleStatus(i)
		default:
			return fmt.Errorf("status %q: write ok, dq, dnf or %s", d.Value, notAFinisher)
		}
	}
	return nil
}

// settleStatus tells a finisher's line anew whether it is named and timed.
// Lines that are doubtful, disqualified or did not finish stay so.
func (f *field) settleStatus(i int) {
	switch record.Status(f.status[i]) {
	case record.OK, record.Unnamed, record.Untimed:
	default:
		return
	}
	switch {
	case !f.namesSomebody(i):
		f.status[i] = uint8(record.Unnamed)
	case f.timeMS[i] == 0:
		f.status[i] = uint8(record.Untimed)
	default:
		f.status[i] = uint8(record.OK)
	}
}

// notAFinisher is the status of a line that stands for nobody who finished:
// it is struck out, and counts for nothing.
const notAFinisher = "not a finisher"

func parsePlace(s string) (int32, error) {
	n, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil || n < 1 || n > 1e6 {
		return 0, fmt.Errorf("place %q: write a whole number from 1", s)
	}
	return int32(n), nil
}

func parseSex(s string) (record.Sex, error) {
	switch strings.ToUpper(strings.TrimSpace(s)) {
	case "M":
		return record.M, nil
	case "W", "F":
		return record.W, nil
	case "X":
		return record.X, nil
	case "", "NOT GIVEN":
		return record.NotGiven, nil
	}
	return record.NotGiven, fmt.Errorf("sex %q: write M, W, X or \"not given\"", s)
}

func parseTakingPart(s string) (record.TakingPart, error) {
	var words []string
	for t := record.Runner; t <= record.DayWheelchair; t++ {
		if strings.EqualFold(t.String(), strings.TrimSpace(s)) {
			return t, nil
		}
		words = append(words, t.String())
	}
	return 0, fmt.Errorf("taking part as %q: write one of %s", s, strings.Join(words, ", "))
}

// parseGroupByHand reads an age group or age as people write it: M45 and 45
// to 49 of the rule's scheme, U17, Senior, a range (40-44), all by the rule; an age on
// the day (42); a year of birth (1984). The window is of birth dates.
func parseGroupByHand(s string, day unit.Day, rule age.Rule) (age.Window, age.Basis, error) {
	t := strings.ToUpper(strings.TrimSpace(s))
	bad := fmt.Errorf("age group %q: write it as in M45, 45-49, U18, Senior, or an age or a year of birth", s)
	scheme, basis := rule.Scheme, age.OnTheDay
	if rule.Reckoning != age.ByDay {
		basis = age.AsSet
	}
	if t == "SENIOR" {
		lo, hi := scheme.Bounds(scheme.Masters - 1)
		return rule.Births(lo, hi, day), basis, nil
	}
	if rest, ok := strings.CutPrefix(t, "U"); ok {
		n, err := strconv.Atoi(rest)
		if err != nil || n < 6 || n > 30 {
			return age.Window{}, 0, bad
		}
		lo, _ := scheme.Bounds(n - 1)
		return rule.Births(lo, n-1, day), basis, nil
	}
	if a, b, ok := strings.Cut(t, "-"); ok {
		lo, err1 := strconv.Atoi(strings.TrimSpace(a))
		hi, err2 := strconv.Atoi(strings.TrimSpace(b))
		if err1 != nil || err2 != nil || lo < 0 || hi < lo || hi > 120 {
			return age.Window{}, 0, bad
		}
		return rule.Births(lo, hi, day), basis, nil
	}
	letter := strings.TrimLeft(t, "MWFX")
	n, err := strconv.Atoi(letter)
	year, _, _ := day.Date()
	switch {
	case err != nil || len(t)-len(letter) > 1:
		return age.Window{}, 0, bad
	case len(letter) == 4 && len(letter) == len(t) && n > year-121 && n <= year:
		return age.OfYear(n), age.Born, nil
	case n < 0 || n > 120:
		return age.Window{}, 0, bad
	case len(letter) == len(t): // a bare number is an age
		return age.OfAges(n, n, day), age.OnTheDay, nil
	}
	lo, hi := scheme.Bounds(n)
	if n != lo {
		return age.Window{}, 0, bad
	}
	return rule.Births(lo, hi, day), basis, nil
}

func (f *field) namesSomebody(i int) bool {
	p := &f.person[f.name[i]]
	return f.name[i] != 0 && !p.Unnamed && !p.Several
}

// dottedClock is a time with a full stop or a comma between minutes and seconds; two figures
// behind it are seconds, as people write them by hand (common practice, no source).
var dottedClock = regexp.MustCompile(`^(\d{1,3})[.,](\d{2})$`)

// ParseClock reads a time given by hand: 24:31, 24:31.5, 1:02:03, and 24.31 or 24,31 as
// minutes and seconds. The result is in milliseconds.
func ParseClock(s string) (int32, error) {
	bad := fmt.Errorf("time %q: write it as in 24:31 or 1:02:03", s)
	s = strings.TrimSpace(s)
	if m := dottedClock.FindStringSubmatch(s); m != nil {
		s = m[1] + ":" + m[2]
	}
	parts := strings.Split(s, ":")
	if len(parts) < 2 || len(parts) > 3 {
		return 0, bad
	}
	total := 0.0
	for i, p := range parts {
		v, err := strconv.ParseFloat(strings.Replace(p, ",", ".", 1), 64)
		if err != nil || v < 0 || i > 0 && v >= 60 || i < len(parts)-1 && v != float64(int(v)) {
			return 0, bad
		}
		total = total*60 + v
	}
	if total <= 0 || total > 24*3600 {
		return 0, bad
	}
	return int32(total*1000 + .5), nil
}
