package pipeline

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/unit"
)

// decisionColumns are the columns of decisions.csv. The file is only ever
// appended to; a decision is undone by a later one of kind "take back" whose
// value is its id.
var decisionColumns = []string{"id", "when", "by", "kind", "sheet", "tab", "row", "runner", "course", "date", "session", "value", "why"}

// Decision is something a person has settled. It is about a line of a sheet
// (hash, tab, row), a runner, or a run (course, date, session).
type Decision struct {
	ID   int
	When time.Time
	By   string
	Kind string

	Sheet, Tab string // hash of the sheet's bytes
	Row        int
	Runner     string // R12
	Course     string
	Date       unit.Day
	Session    string

	Value, Why string
}

// The kinds of decisions.
const (
	DecideTime       = "time"           // line; value 24:31
	DecideName       = "name"           // line; value the person's name: a claim or a correction
	DecideClub       = "club"           // line
	DecideTakingPart = "taking part as" // line; value a word of TakingPart
	DecideStatus     = "status"         // line; value dq, dnf or ok
	DecideSame       = "same person"    // line and runner, or runner and runner in value
	DecideDifferent  = "different people"
	DecidePrintName  = "name to print" // runner
	DecideHide       = "hide"          // runner
	DecideRunState   = "run state"     // run; value cancelled, abandoned, times lost, other route, misdirected, short, long, held
	DecideTakeBack   = "take back"     // value the id of another decision
)

// Decisions reads the decisions in force, in order.
func (pl *Pipeline) Decisions() ([]Decision, error) {
	rows, err := pl.Archive.ReadTable("decisions.csv", decisionColumns)
	if err != nil {
		return nil, err
	}
	var out []Decision
	gone := map[int]bool{}
	for i, r := range rows {
		at := fmt.Sprintf("%s:%d", pl.Archive.File("decisions.csv"), i+2)
		d := Decision{By: r[2], Kind: r[3], Sheet: r[4], Tab: r[5], Runner: r[7], Course: sheet.Slug(r[8]), Session: r[10], Value: r[11], Why: r[12]}
		if d.ID, err = strconv.Atoi(r[0]); err != nil {
			return nil, fmt.Errorf("%s: id %q is not a number", at, r[0])
		}
		d.When, _ = time.Parse(time.RFC3339, r[1])
		if r[6] != "" {
			if d.Row, err = strconv.Atoi(r[6]); err != nil {
				return nil, fmt.Errorf("%s: row %q is not a number", at, r[6])
			}
		}
		if r[9] != "" {
			if d.Date, err = unit.ParseDay(r[9]); err != nil {
				return nil, fmt.Errorf("%s: %w", at, err)
			}
		}
		if d.Kind == DecideTakeBack {
			id, err := strconv.Atoi(d.Value)
			if err != nil {
				return nil, fmt.Errorf("%s: take back %q: write the id of the decision", at, d.Value)
			}
			gone[id] = true
		}
		out = append(out, d)
	}
	kept := out[:0]
	for _, d := range out {
		if !gone[d.ID] && d.Kind != DecideTakeBack {
			kept = append(kept, d)
		}
	}
	return kept, nil
}

// applyLineDecisions changes the lines that decisions are about. Decisions
// about sheets that are not loaded have no effect until they are.
func (f *field) applyLineDecisions(ds []Decision) error {
	if len(ds) == 0 {
		return nil
	}
	lines := f.linesOf(ds)
	for _, d := range ds {
		for _, i := range lines[lineRef{d.Sheet, d.Tab, d.Row}] {
			if err := f.applyToLine(i, d); err != nil {
				return fmt.Errorf("decision %d: %w", d.ID, err)
			}
		}
	}
	return nil
}

// lineRef names a line by what it will always be: the sheet's bytes, tab, row.
type lineRef struct {
	hash, tab string
	row       int
}

// linesOf finds the lines that decisions name.
func (f *field) linesOf(ds []Decision) map[lineRef][]int {
	want := map[lineRef]bool{}
	hashes := map[string]bool{}
	for _, d := range ds {
		if d.Sheet != "" {
			want[lineRef{d.Sheet, d.Tab, d.Row}] = true
			hashes[d.Sheet] = true
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
	return out
}

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
			if !f.namesSomebody(i) {
				f.status[i] = uint8(record.Unnamed)
			}
		}
	case DecideName:
		f.name[i] = f.addName(d.Value)
		if f.is(i, record.Unnamed) && f.namesSomebody(i) {
			f.status[i] = uint8(record.OK)
			if f.timeMS[i] == 0 {
				f.status[i] = uint8(record.Untimed)
			}
		}
	case DecideClub:
		f.club[i] = f.clubs.number(d.Value)
	case DecideTakingPart:
		for t := record.Runner; t <= record.DayWheelchair; t++ {
			if t.String() == d.Value {
				f.takingPart[i] = uint8(t)
				return nil
			}
		}
		return fmt.Errorf("taking part as %q is not known", d.Value)
	case DecideStatus:
		switch strings.ToLower(d.Value) {
		case "dq":
			f.setDoubt(i, record.DQ, "disqualified")
		case "dnf":
			f.setDoubt(i, record.DNF, "did not finish")
		case "ok":
			f.setDoubt(i, record.OK, "")
			if f.timeMS[i] == 0 {
				f.status[i] = uint8(record.Untimed)
			}
			if !f.namesSomebody(i) {
				f.status[i] = uint8(record.Unnamed)
			}
		default:
			return fmt.Errorf("status %q: write ok, dq or dnf", d.Value)
		}
	}
	return nil
}

func (f *field) namesSomebody(i int) bool {
	p := &f.person[f.name[i]]
	return f.name[i] != 0 && !p.Unnamed && !p.Several
}

// ParseClock reads a time given by hand: 24:31, 24:31.5, 1:02:03. The result
// is in milliseconds.
func ParseClock(s string) (int32, error) {
	bad := fmt.Errorf("time %q: write it as in 24:31 or 1:02:03", s)
	parts := strings.Split(strings.TrimSpace(s), ":")
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
