package pipeline

import (
	"context"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// Correction is what somebody at the desk wants to settle. Either a place of a
// run is named (Course, Date, Place or Line), or a run alone (Course, Date),
// or a person (Person).
type Correction struct {
	Course, Date, Session string
	Place                 int    // on the sheet; 0 none
	Line                  string // SHEET:ROW or SHEET:TAB!ROW, where a place is on several lines
	Printed               *PrintedLine

	Name                               string // of the person, or runner id
	SomeoneNew                         bool   // the name is of nobody who is known
	Time, Club, Sex, Group, TakingPart string
	RightPlace                         int
	Status                             string // ok, dq, dnf or not a finisher
	ExchangeWith                       int    // place of the other
	State                              string // of the run
	Record                             string // confirmed or void

	Person    string // name or runner id
	PrintName string
	Category  string
	Hide      bool
	// What was before the sheets: finishes up to the day Before, not included
	// (blank: before every sheet), and a best run on the day BestOn, on Course
	// or on all courses; the best over DistanceM metres (0: the course's).
	RunsBefore, Before string
	BestBefore, BestOn string
	DistanceM          int

	OtherClub, IsClub string // two names of clubs
	NotTheClub        bool   // they are two clubs

	Accept *PrintedProblem // a problem that needs no look any more

	Undo int // id of a decision to take back

	By, Why string
}

// PrintedLine names a line as a workbook of the desk has it, with what stood
// there when it was printed.
type PrintedLine struct {
	At         string // the cell, for messages
	Sheet, Tab string
	Row        int
	Name, Time string
}

// runStateWords are the states that a run can be given.
var runStateWords = []string{"held", "cancelled", "abandoned", "times lost", "other route", "misdirected"}

// ParseRunState reads the state of a run; short and long may say by how many
// metres: short by 120 m.
func ParseRunState(s string) (state string, offM int32, err error) {
	t := strings.ToLower(strings.Join(strings.Fields(s), " "))
	for _, w := range runStateWords {
		if t == w {
			return w, 0, nil
		}
	}
	for _, w := range []string{"short", "long"} {
		rest, ok := strings.CutPrefix(t, w)
		if !ok {
			continue
		}
		rest = strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(rest), "by"))
		if rest == "" {
			return w, 0, nil
		}
		n, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(rest, "m")))
		if err == nil && n > 0 && n < 100000 {
			return w, int32(n), nil
		}
	}
	return "", 0, fmt.Errorf("state %q: write %s, \"short by 120 m\" or \"long by 50 m\"", s, strings.Join(runStateWords, ", "))
}

// Decide turns a correction into decisions, not yet kept. Figures must be up
// to date. A name that was erased is refused: it would be back in the archive.
func (pl *Pipeline) Decide(ctx context.Context, c Correction) ([]Decision, error) {
	list, err := pl.decisionsOf(ctx, c)
	if err != nil {
		return nil, err
	}
	erased, err := pl.readForgotten()
	if err != nil || erased == nil {
		return list, err
	}
	for _, d := range list {
		switch d.Kind {
		case DecideName, DecideClaim, DecidePrintName:
			if erased.isForgotten(d.Value) {
				return nil, fmt.Errorf("a person of this name asked to be erased, and the name is not taken in again. If it is somebody else, or the person now wants to be named, delete the line of the day of the erasure from %s first", filepath.ToSlash(pl.Archive.File(forgottenTable)))
			}
		}
	}
	return list, nil
}

func (pl *Pipeline) decisionsOf(ctx context.Context, c Correction) ([]Decision, error) {
	base := Decision{By: c.By, Why: c.Why, When: time.Now().UTC().Truncate(time.Second)}
	if c.Undo > 0 {
		return pl.decideUndo(base, c.Undo)
	}
	if c.Accept != nil {
		return pl.decideAccepted(ctx, base, *c.Accept)
	}
	if c.OtherClub != "" || c.IsClub != "" {
		return pl.decideClubs(ctx, base, c)
	}
	if c.Person != "" {
		return pl.decidePerson(ctx, base, c)
	}
	if c.Printed != nil {
		return pl.decidePrinted(ctx, base, c)
	}
	day, err := unit.ParseDay(c.Date)
	if err != nil {
		return nil, err
	}
	base.Course, base.Date, base.Session = pl.courses.resolve(c.Course), day, c.Session
	if c.State != "" {
		return pl.decideRun(ctx, base, c)
	}
	return pl.decideLine(ctx, base, c)
}

func (pl *Pipeline) decideUndo(d Decision, id int) ([]Decision, error) {
	all, err := pl.allDecisions()
	if err != nil {
		return nil, err
	}
	for _, e := range inForce(all) {
		if e.ID == id {
			d.Kind, d.Value = DecideTakeBack, strconv.Itoa(id)
			return []Decision{d}, nil
		}
	}
	for _, e := range all {
		if e.ID == id {
			return nil, fmt.Errorf("decision %d is not in force any more", id)
		}
	}
	return nil, fmt.Errorf("there is no decision %d; see lapwing correct --list", id)
}

func (pl *Pipeline) decidePerson(ctx context.Context, d Decision, c Correction) ([]Decision, error) {
	r, err := pl.FindRunner(ctx, c.Person)
	if err != nil {
		return nil, err
	}
	d.Runner = r.ID
	var out []Decision
	add := func(kind, value string) {
		e := d
		e.Kind, e.Value = kind, value
		out = append(out, e)
	}
	if c.PrintName != "" {
		if n := name.Parse(c.PrintName); n.Unnamed || n.Several || n.Full == "" {
			return nil, fmt.Errorf("%q is no name of one person", c.PrintName)
		}
		add(DecidePrintName, strings.TrimSpace(c.PrintName))
	}
	if c.Category != "" {
		sex, err := parseSex(c.Category)
		if err != nil {
			return nil, fmt.Errorf("category: %w", err)
		}
		word := sex.String()
		if word == "" {
			word = "not given"
		}
		add(DecideCategory, word)
	}
	if c.Hide {
		add(DecideHide, "")
	}
	opening, err := pl.decideOpening(d, c)
	if err != nil {
		return nil, err
	}
	out = append(out, opening...)
	if len(out) == 0 {
		return nil, fmt.Errorf("say what to settle about %s: a name to print, a category, hiding, or runs or a best before the sheets", r.Name)
	}
	return out, nil
}

// decideOpening says what a runner had done before the sheets.
func (pl *Pipeline) decideOpening(d Decision, c Correction) (out []Decision, err error) {
	if c.RunsBefore == "" && c.BestBefore == "" {
		if c.Before+c.BestOn != "" || c.DistanceM != 0 {
			return nil, fmt.Errorf("say how many runs, or which best, there were before the sheets")
		}
		return nil, nil
	}
	if c.Course != "" {
		if d.Course, err = pl.Course(c.Course); err != nil {
			return nil, err
		}
	}
	day := func(s string) (unit.Day, error) {
		if s == "" {
			return 0, nil
		}
		return unit.ParseDay(s)
	}
	if c.RunsBefore != "" {
		n, err := parseFinishes(c.RunsBefore)
		if err != nil {
			return nil, err
		}
		e := d
		e.Kind, e.Value = DecideEarlierRuns, strconv.Itoa(n)
		if e.Date, err = day(c.Before); err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	if c.BestBefore != "" {
		e := d
		e.Kind, e.Value = DecideEarlierBest, strings.TrimSpace(c.BestBefore)
		if c.DistanceM > 0 {
			e.Value += fmt.Sprintf(" over %d m", c.DistanceM)
		}
		if _, _, err := parseEarlierBest(e.Value); err != nil {
			return nil, err
		}
		if e.Date, err = day(c.BestOn); err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	return out, nil
}

func (pl *Pipeline) decideRun(ctx context.Context, d Decision, c Correction) ([]Decision, error) {
	if c.Place != 0 || c.Line != "" {
		return nil, fmt.Errorf("a state is of the whole run; leave out the place")
	}
	state, off, err := ParseRunState(c.State)
	if err != nil {
		return nil, err
	}
	known := false
	for k := range pl.courses.numbers {
		known = known || k.course == d.Course
	}
	if !known {
		return nil, fmt.Errorf("no course %q is in the archive; see lapwing courses", c.Course)
	}
	if state == "cancelled" {
		var stand int32
		if err := pl.DB.Get(ctx, fmt.Sprintf("select coalesce(sum(finishers), 0)::integer from main.runs where course = %s and run_date = date '%s' and (%[3]s = '' or session = %[3]s)",
			store.Quote(d.Course), d.Date, store.Quote(d.Session)), &stand); err != nil {
			return nil, err
		}
		if stand > 0 {
			return nil, fmt.Errorf("%s of %s on %s stand here, and a run that was cancelled has none: check the date. Where it was stopped on the way, say --state abandoned; where the sheet is not of this run, withdraw it (lapwing sheets withdraw)",
				text.Count(int(stand), "result"), d.Course, d.Date.Long())
		}
	}
	d.Kind, d.Value = DecideRunState, state
	if off > 0 {
		d.Value = fmt.Sprintf("%s by %d m", state, off)
	}
	return []Decision{d}, nil
}
