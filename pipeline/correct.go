package pipeline

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/sheet"
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
// to date.
func (pl *Pipeline) Decide(ctx context.Context, c Correction) ([]Decision, error) {
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
		return pl.decideRun(base, c)
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

func (pl *Pipeline) decideRun(d Decision, c Correction) ([]Decision, error) {
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
	d.Kind, d.Value = DecideRunState, state
	if off > 0 {
		d.Value = fmt.Sprintf("%s by %d m", state, off)
	}
	return []Decision{d}, nil
}

func (pl *Pipeline) decideLine(ctx context.Context, d Decision, c Correction) ([]Decision, error) {
	at, err := pl.resultAt(ctx, d.Course, d.Date, c.Session, c.Place, c.Line)
	if err != nil {
		return nil, err
	}
	out, err := pl.decideAt(ctx, d, c, at)
	if err == nil && len(out) == 0 {
		err = fmt.Errorf("say what to correct at place %d (%s %s): see lapwing correct --help", at.position, at.name, clockOrDash(at.timeMS))
	}
	return out, err
}

// decideAt turns a correction of one line into decisions.
func (pl *Pipeline) decideAt(ctx context.Context, d Decision, c Correction, at resultLine) ([]Decision, error) {
	if err := pl.findTable(ctx, &at); err != nil {
		return nil, err
	}
	d.Sheet, d.Tab, d.Row, d.Table = at.ref.hash, at.ref.tab, at.ref.row, at.table
	var out []Decision
	add := func(kind, value string) {
		e := d
		e.Kind, e.Value = kind, strings.TrimSpace(value)
		out = append(out, e)
	}
	if c.Name != "" {
		e, err := pl.decideName(ctx, d, c, at)
		if err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	if c.Time != "" {
		if _, err := ParseClock(c.Time); err != nil {
			return nil, err
		}
		add(DecideTime, c.Time)
	}
	if c.Club != "" {
		add(DecideClub, c.Club)
	}
	if c.Sex != "" {
		sex, err := parseSex(c.Sex)
		if err != nil {
			return nil, err
		}
		word := sex.String()
		if word == "" {
			word = "not given"
		}
		add(DecideSex, word)
	}
	if c.Group != "" {
		if _, _, err := parseGroupByHand(c.Group, d.Date); err != nil {
			return nil, err
		}
		add(DecideGroup, c.Group)
	}
	if c.TakingPart != "" {
		part, err := parseTakingPart(c.TakingPart)
		if err != nil {
			return nil, err
		}
		add(DecideTakingPart, part.String())
	}
	switch c.Status {
	case "":
	case "ok", "dq", "dnf", notAFinisher:
		add(DecideStatus, c.Status)
	default:
		return nil, fmt.Errorf("status %q: write ok, dq, dnf or %s", c.Status, notAFinisher)
	}
	if c.Record != "" {
		word, err := pl.mayBeRecord(c, at)
		if err != nil {
			return nil, err
		}
		add(DecideRecord, word)
	}
	if c.RightPlace != 0 {
		if _, err := parsePlace(strconv.Itoa(c.RightPlace)); err != nil {
			return nil, err
		}
		add(DecidePlace, strconv.Itoa(c.RightPlace))
	}
	if c.ExchangeWith != 0 {
		other, err := pl.resultAt(ctx, d.Course, d.Date, c.Session, c.ExchangeWith, "")
		if err != nil {
			return nil, err
		}
		if other.lineNo == at.lineNo {
			return nil, fmt.Errorf("place %d can't be exchanged with itself", c.ExchangeWith)
		}
		if err := pl.findTable(ctx, &other); err != nil {
			return nil, err
		}
		add(DecideExchange, tableLine{other.ref, other.table}.String())
	}
	return out, nil
}

// decideName says whose a line is. A name that one known runner has means that
// runner; where several have it the desk must say which.
func (pl *Pipeline) decideName(ctx context.Context, d Decision, c Correction, at resultLine) (Decision, error) {
	d.Kind, d.Value = DecideName, strings.TrimSpace(c.Name)
	if at.status == "unnamed" {
		d.Kind = DecideClaim
	} else if claimed, err := pl.claimed(at); err != nil {
		return d, err
	} else if claimed {
		d.Kind = DecideClaim
	}
	if _, id := runnerNumber(d.Value); !id {
		n := name.Parse(d.Value)
		switch {
		case n.Several:
			return d, fmt.Errorf("%q names several people; a place belongs to one", c.Name)
		case n.Unnamed || n.Full == "":
			return d, fmt.Errorf("%q names nobody", c.Name)
		case c.SomeoneNew:
			return d, nil
		}
		list, err := pl.FindRunners(ctx, d.Value)
		if err != nil {
			return d, err
		}
		if !slices.ContainsFunc(list, func(f Found) bool { return name.Parse(f.Name).Full == n.Full }) {
			return d, nil // somebody new, or another spelling for the linker to judge
		}
	}
	r, err := pl.FindRunner(ctx, d.Value)
	if err != nil {
		return d, err
	}
	if _, id := runnerNumber(d.Value); id {
		d.Value = r.Name
	}
	d.Runner = r.ID
	there, err := pl.placeOf(ctx, r.ID, at)
	if err != nil {
		return d, err
	}
	if there != "" {
		return d, fmt.Errorf("%s (%s) stands at %s already; correct that place first, or add --someone-new if this is another %s", r.Name, r.ID, there, r.Name)
	}
	return d, nil
}

// placeOf says where a runner stands in the run of a line, on another line.
func (pl *Pipeline) placeOf(ctx context.Context, runner string, at resultLine) (string, error) {
	rows, err := pl.DB.QueryContext(ctx, `select coalesce('place ' || r.position, 'row ' || r.row_number)
		from main.results r
		join record.line l on l.line_no = r.line_no
		join sheet.part p on p.part_no = l.part_no
		join sheet.sheet s on s.sheet_no = p.sheet_no
		where r.run_no = ? and r.runner_id = ? and r.counts_run and not (s.hash = ? and p.tab = ? and r.row_number = ?)
		order by r.position, r.row_number limit 1`, at.runNo, runner, at.ref.hash, at.ref.tab, at.ref.row)
	if err != nil {
		return "", err
	}
	defer rows.Close()
	there := ""
	for rows.Next() {
		if err := rows.Scan(&there); err != nil {
			return "", err
		}
	}
	return there, rows.Err()
}

// claimed says whether whoever stands on a line claimed it: a second claim is a
// claim as well, and not a correction of the first. A name that was corrected is
// claimed no more, and an exchange takes a claim along.
func (pl *Pipeline) claimed(at resultLine) (bool, error) {
	ds, err := pl.Decisions()
	if err != nil {
		return false, err
	}
	claimed := map[tableLine]bool{}
	for _, d := range ds {
		l := tableLine{lineRef{d.Sheet, d.Tab, d.Row}, d.Table}
		switch d.Kind {
		case DecideClaim:
			claimed[l] = true
		case DecideName:
			claimed[l] = false
		case DecideExchange:
			if other, err := parseTableLine(d.Value); err == nil {
				claimed[l], claimed[other] = claimed[other], claimed[l]
			}
		}
	}
	return claimed[tableLine{at.ref, at.table}], nil
}

// resultLine is a line of a run that stands.
type resultLine struct {
	ref          lineRef
	shown        place.Place
	position     int32
	name, status string
	timeMS       int32
	session      string
	runNo        int32
	lineNo       int32
	table        int // as in Decision, once findTable has looked
}

// findTable finds out which of several tables side by side holds a line.
func (pl *Pipeline) findTable(ctx context.Context, at *resultLine) error {
	rows, err := pl.DB.QueryContext(ctx, `select l.line_no from record.line l
		join sheet.part p on p.part_no = l.part_no
		join sheet.sheet s on s.sheet_no = p.sheet_no
		where s.hash = ? and p.tab = ? and l.row_number = ? order by l.part_no, l.line_no`, at.ref.hash, at.ref.tab, at.ref.row)
	if err != nil {
		return err
	}
	defer rows.Close()
	n := 0
	for rows.Next() {
		var line int32
		if err := rows.Scan(&line); err != nil {
			return err
		}
		if n++; line == at.lineNo {
			at.table = n
		}
	}
	if n < 2 {
		at.table = 0
	}
	return rows.Err()
}

// withTable adds the number of the table to the name of a line.
func withTable(line string, table int) string {
	if table == 0 {
		return line
	}
	return fmt.Sprintf("%s#%d", line, table)
}

// resultAt finds the one standing line of a place of a run.
func (pl *Pipeline) resultAt(ctx context.Context, course string, day unit.Day, session string, position int, line string) (resultLine, error) {
	rows, err := pl.DB.QueryContext(ctx, `select s.hash, s.path, coalesce(r.tab, ''), r.row_number, coalesce(r.position, 0)::integer,
			coalesce(r.name, '`+nobodyNamed+`'), r.status, coalesce(r.time_ms, 0)::integer, coalesce(r.session, ''), r.run_no, r.line_no
		from main.results r
		join record.line l on l.line_no = r.line_no
		join sheet.part p on p.part_no = l.part_no
		join sheet.sheet s on s.sheet_no = p.sheet_no
		where r.course = ? and r.run_date = ?::date and r.status not in ('repeat', 'superseded')
		order by r.session nulls first, r.position nulls last, s.path, r.tab, r.row_number`, course, day.String())
	if err != nil {
		return resultLine{}, err
	}
	defer rows.Close()
	plain, nth, tabled := strings.Cut(line, "#")
	var found []resultLine
	sessions := map[string]bool{}
	all := 0
	for rows.Next() {
		var r resultLine
		if err := rows.Scan(&r.ref.hash, &r.shown.Sheet, &r.ref.tab, &r.ref.row, &r.position, &r.name, &r.status, &r.timeMS, &r.session, &r.runNo, &r.lineNo); err != nil {
			return resultLine{}, err
		}
		r.shown.Tab, r.shown.Row = r.ref.tab, r.ref.row
		all++
		if session != "" && r.session != session {
			continue
		}
		if line != "" && !r.isLine(plain) || line == "" && int(r.position) != position {
			continue
		}
		sessions[r.session] = true
		found = append(found, r)
	}
	if err := rows.Err(); err != nil {
		return resultLine{}, err
	}
	if tabled {
		var err error
		found = slices.DeleteFunc(found, func(r resultLine) bool {
			err = errors.Join(err, pl.findTable(ctx, &r))
			return strconv.Itoa(r.table) != nth
		})
		if err != nil {
			return resultLine{}, err
		}
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case all == 0:
		return resultLine{}, fmt.Errorf("no result of %s on %s is in the archive; see lapwing sheets", course, day)
	case len(found) == 0 && line != "":
		return resultLine{}, fmt.Errorf("%s is no line of %s on %s that stands", line, course, day)
	case len(found) == 0:
		return resultLine{}, fmt.Errorf("%s on %s has no place %d", course, day, position)
	}
	var list []string
	for _, r := range found {
		if err := pl.findTable(ctx, &r); err != nil {
			return resultLine{}, err
		}
		which := fmt.Sprintf("--line %q", withTable(r.shown.String(), r.table))
		if len(sessions) > 1 && r.session != "" {
			which = fmt.Sprintf("--session %q, or %s", r.session, which)
		}
		list = append(list, fmt.Sprintf("  %s %s: %s", r.name, clockOrDash(r.timeMS), which))
	}
	hint := "name the line"
	if len(sessions) > 1 {
		hint = "name the session with --session, or the line"
	}
	return resultLine{}, fmt.Errorf("place %d stands %d times in %s on %s; %s:\n%s", position, len(found), course, day, hint, strings.Join(list, "\n"))
}

// isLine says whether a text names this line: SHEET:ROW as problems print it,
// with or without the folder and the column.
func (r resultLine) isLine(text string) bool {
	k := strings.LastIndexAny(text, ":!")
	if k < 0 {
		return false
	}
	row, err := strconv.Atoi(strings.TrimLeft(text[k+1:], "ABCDEFGHIJKLMNOPQRSTUVWXYZ"))
	if err != nil || row != r.ref.row {
		return false
	}
	file, tab := text[:k], ""
	if text[k] == '!' {
		file, tab, _ = strings.Cut(file, ":")
	}
	if tab != "" && tab != r.ref.tab {
		return false
	}
	return file == r.shown.Sheet || file == r.shown.Sheet[strings.LastIndexByte(r.shown.Sheet, '/')+1:]
}

// DecisionState is a decision with what became of it.
type DecisionState struct {
	ID    int    `json:"id"`
	When  string `json:"when"`
	By    string `json:"by"`
	About string `json:"about"` // the line, run or person
	What  string `json:"what"`
	State string `json:"state"`
	Words string `json:"reason,omitempty"`
	Why   string `json:"why,omitempty"`
	// People says that the decision is about who is who, and in force.
	People bool `json:"-"`
}

// outcomes gives what became of decisions about lines, by id.
func (pl *Pipeline) outcomes(ctx context.Context) (map[int]decisionOutcome, error) {
	rows, err := pl.DB.QueryContext(ctx, "select id, state, words from record.decision order by id")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	out := map[int]decisionOutcome{}
	for rows.Next() {
		var o decisionOutcome
		if err := rows.Scan(&o.id, &o.state, &o.words); err != nil {
			return nil, err
		}
		out[o.id] = o
	}
	return out, rows.Err()
}

// DecisionList lists every decision ever made with its state.
func (pl *Pipeline) DecisionList(ctx context.Context) ([]DecisionState, error) {
	all, err := pl.allDecisions()
	if err != nil {
		return nil, err
	}
	outcome, err := pl.outcomes(ctx)
	if err != nil {
		return nil, err
	}
	people, err := pl.matchDecisions(ctx)
	if err != nil {
		return nil, err
	}
	path := map[string]string{}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	for _, e := range ledger {
		path[e.Hash] = e.Path
	}
	kept := map[int]bool{}
	for _, d := range inForce(all) {
		kept[d.ID] = true
	}
	out := make([]DecisionState, len(all))
	for i, d := range all {
		s := DecisionState{ID: d.ID, By: d.By, Why: d.Why, About: d.about(path), What: d.what(path), State: decisionApplied}
		if !d.When.IsZero() {
			s.When = d.When.UTC().Format("2006-01-02 15:04")
		}
		m, who := people[d.ID]
		switch {
		case d.Kind == DecideTakeBack:
			s.State = "done"
		case !kept[d.ID]:
			s.State = "taken back"
		case who:
			s.People, s.About, s.What, s.State, s.Words = true, m.first, d.Kind+": "+m.second, m.state, m.words
		default:
			if o, ok := outcome[d.ID]; ok {
				s.State, s.Words = o.state, o.words
			}
		}
		out[i] = s
	}
	return out, nil
}

func (d Decision) about(path map[string]string) string {
	switch {
	case d.Sheet != "":
		return withTable(shownLine(lineRef{d.Sheet, d.Tab, d.Row}, path), d.Table)
	case d.Runner != "":
		return d.Runner
	case d.Course != "":
		return strings.TrimSpace(d.Course + " " + d.Date.String() + " " + d.Session)
	}
	return ""
}

func (d Decision) what(path map[string]string) string {
	v := d.Value
	switch d.Kind {
	case DecideExchange:
		if r, err := parseTableLine(v); err == nil {
			v = "of names with " + withTable(shownLine(r.lineRef, path), r.table)
		}
	case DecideHide:
		return "hide"
	}
	return strings.TrimSpace(d.Kind + " " + v)
}

func shownLine(r lineRef, path map[string]string) string {
	file, ok := path[r.hash]
	if !ok {
		file = "sheet " + sheet.Slug(r.hash[:min(8, len(r.hash))])
	}
	return place.Place{Sheet: file, Tab: r.tab, Row: r.row}.String()
}
