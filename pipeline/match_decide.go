package pipeline

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/store"
)

// A decision about people ties both sides to lines, so that it holds whatever
// becomes of numbers and spellings. The first side is the line in sheet, tab
// and row; a number in runner says that the line stands for that whole runner,
// otherwise the decision is about the one line. The second side is in value:
// "R9 HASH:TAB!ROW" for a runner with one of its lines, "HASH:ROW" for a line
// of a text sheet, or only "R9".

// side is one side of a decision about people.
type side struct {
	runner string // R9, "" where it is about one line only
	at     lineRef
}

func (s side) String() string {
	if s.at.hash == "" {
		return s.runner
	}
	return strings.TrimSpace(s.runner + " " + s.at.String())
}

// readSide reads the value of a decision about people.
func readSide(value string) (s side, err error) {
	rest := value
	if first, after, _ := strings.Cut(value, " "); first != "" {
		if _, ok := runnerNumber(first); ok {
			s.runner, rest = strings.ToUpper(first), after
		}
	}
	if rest == "" && s.runner != "" {
		return s, nil
	}
	if s.at, err = parseLineRef(rest); err != nil {
		return s, fmt.Errorf("value %q: write a runner (R9), or a runner and one of its lines (R9 HASH:ROW)", value)
	}
	return s, nil
}

// sides are the two sides of a decision about people.
func (d Decision) sides() (a, b side, err error) {
	a = side{d.Runner, lineRef{d.Sheet, d.Tab, d.Row}}
	b, err = readSide(d.Value)
	return a, b, err
}

func (d Decision) aboutPeople() bool { return d.Kind == DecideSame || d.Kind == DecideDifferent }

// decisionOf gives the id of the decision that a linker's message names.
func decisionOf(ref string) int32 {
	n, _ := strconv.Atoi(strings.TrimPrefix(ref, "decision "))
	return int32(n)
}

// target is what an argument of join or part means: a runner, under the
// present number or an old one, or a single line.
type target struct {
	no     int32 // runner now
	old    int32 // number given where it is an old one, else 0
	line   int32 // line_no where a single line is meant, else 0
	at     lineRef
	shown  string
	person MatchPerson
}

func (t target) side() side {
	if t.line > 0 {
		return side{at: t.at}
	}
	n := t.no
	if t.old > 0 {
		n = t.old
	}
	return side{"R" + itoa(n), t.at}
}

// target finds what an argument means: R12, a name, or SHEET:ROW.
func (pl *Pipeline) target(ctx context.Context, what string) (t target, err error) {
	if n, ok := runnerNumber(what); ok {
		t.no = n
		if err := pl.each(ctx, "select now from record.alias where runner_no = ?", func(rows *sql.Rows) error {
			t.old = n
			return rows.Scan(&t.no)
		}, n); err != nil {
			return t, err
		}
	} else if found, err := pl.lineTarget(ctx, what); err != nil {
		return t, err
	} else if found.line > 0 {
		t = found
	} else {
		f, err := pl.FindRunner(ctx, what)
		if err != nil {
			return t, err
		}
		t.no, _ = runnerNumber(f.ID)
	}
	k, err := pl.linkage(ctx)
	if err != nil {
		return t, err
	}
	t.person.no = t.no
	people := pl.lookUp(ctx, k.latest)
	people.want(&t.person)
	if err := people.fill(); err != nil {
		return t, err
	}
	if t.person.ID == "" {
		return t, fmt.Errorf("no runner %s in the archive; to find a number: lapwing standing NAME", what)
	}
	switch {
	case t.line > 0:
	case t.old > 0:
		if t.at, err = pl.lineOfOld(ctx, t.old); err != nil {
			return t, err
		}
		t.shown = fmt.Sprintf("R%d (now %s)", t.old, t.person.ID)
	default:
		t.at = t.person.at
		t.shown = t.person.ID + " " + t.person.Name
	}
	return t, nil
}

// lineTarget finds a line named as SHEET:ROW or SHEET:TAB!ROW; a text that is
// nothing of the kind gives no line.
func (pl *Pipeline) lineTarget(ctx context.Context, what string) (t target, err error) {
	i := strings.LastIndexAny(what, ":!")
	if i < 1 {
		return t, nil
	}
	row, err := strconv.Atoi(strings.TrimLeft(what[i+1:], "ABCDEFGHIJKLMNOPQRSTUVWXYZ"))
	if err != nil || row < 1 {
		return t, nil
	}
	name, tab := what[:i], ""
	if what[i] == '!' {
		name, tab, _ = strings.Cut(name, ":")
	}
	e, err := pl.FindSheet(name)
	if err != nil {
		return t, err
	}
	n := 0
	err = pl.each(ctx, `select l.line_no, r.runner_no, p.tab from record.line l join sheet.part p on p.part_no = l.part_no join record.result r on r.line_no = l.line_no
		where p.sheet_no = ? and l.row_number = ? and (? = '' or p.tab = ?) order by p.tab_index`, func(rows *sql.Rows) error {
		n++
		t.at = lineRef{hash: e.Hash, row: row}
		return rows.Scan(&t.line, &t.no, &t.at.tab)
	}, e.Seq, row, tab, tab)
	t.shown = what
	switch {
	case err != nil:
		return t, err
	case n == 0:
		return t, fmt.Errorf("%s: there is no result in this row; to see how it was read: lapwing sheets explain %s", what, what)
	case n > 1:
		return t, fmt.Errorf("%s: several tabs have this row; write SHEET:TAB!ROW", what)
	case t.no == 0:
		return t, fmt.Errorf("%s: nobody is named in this row. To name somebody: lapwing correct", what)
	}
	return t, nil
}

// lineOfOld finds a line that an old number was given for.
func (pl *Pipeline) lineOfOld(ctx context.Context, old int32) (at lineRef, err error) {
	anchors, err := pl.readAnchors()
	if err != nil {
		return at, err
	}
	for _, a := range anchors {
		if a.runner != old {
			continue
		}
		err := pl.each(ctx, `select s.hash, p.tab, l.row_number from record.line l join sheet.part p on p.part_no = l.part_no join sheet.sheet s on s.sheet_no = p.sheet_no
			join record.result r on r.line_no = l.line_no
			where p.sheet_no = ? and p.tab_index = ? and l.row_number = ? and r.status not in (1, 5, 7) and r.same_as = 0`, func(rows *sql.Rows) error {
			return rows.Scan(&at.hash, &at.tab, &at.row)
		}, a.at.sheet, a.at.tab, a.at.row)
		if err != nil || at.hash != "" {
			return at, err
		}
	}
	return at, fmt.Errorf("no line of R%d is in the archive now", old)
}

// settled is a decision about people with what its sides are now.
type settled struct {
	d            Decision
	lineA, lineB int32 // 0 where the sheet is not loaded
	a, b         int32 // runners, 0 not known
	wholeA       bool
}

// Words names a decision: its id, day and reason.
func (d Decision) words() string {
	s := fmt.Sprintf("decision %d", d.ID)
	if !d.When.IsZero() {
		s += " of " + d.When.Format("2006-01-02")
	}
	if d.By != "" {
		s += " by " + d.By
	}
	if d.Why != "" {
		s += fmt.Sprintf(" (%q)", d.Why)
	}
	return s
}

// settledPeople reads the decisions about people that are in force.
func (pl *Pipeline) settledPeople(ctx context.Context) ([]settled, error) {
	all, err := pl.Decisions()
	if err != nil {
		return nil, err
	}
	var out []settled
	var want []lineRef
	for _, d := range all {
		if !d.aboutPeople() {
			continue
		}
		a, b, err := d.sides()
		if err != nil {
			return nil, fmt.Errorf("decision %d: %w", d.ID, err)
		}
		out = append(out, settled{d: d, wholeA: a.runner != ""})
		want = append(want, a.at, b.at)
	}
	at, err := pl.linesNow(ctx, want)
	if err != nil {
		return nil, err
	}
	for i := range out {
		a, b, _ := out[i].d.sides()
		for _, s := range []struct {
			side         side
			line, runner *int32
		}{{a, &out[i].lineA, &out[i].a}, {b, &out[i].lineB, &out[i].b}} {
			if l, ok := at[s.side.at]; ok {
				*s.line, *s.runner = l[0], l[1]
			} else if n, ok := runnerNumber(s.side.runner); ok {
				*s.runner = n
				if err := pl.each(ctx, "select now from record.alias where runner_no = ?", func(rows *sql.Rows) error { return rows.Scan(s.runner) }, n); err != nil {
					return nil, err
				}
			}
		}
	}
	return out, nil
}

// linesNow finds the number and the runner of lines.
func (pl *Pipeline) linesNow(ctx context.Context, want []lineRef) (map[lineRef][2]int32, error) {
	out := map[lineRef][2]int32{}
	var hash, tab, row []string
	for _, w := range want {
		if w.hash != "" {
			hash, tab, row = append(hash, w.hash), append(tab, w.tab), append(row, strconv.Itoa(w.row))
		}
	}
	if len(hash) == 0 {
		return out, nil
	}
	const unit = "\x1f"
	err := pl.each(ctx, `with wanted as (select distinct unnest(string_split($1, chr(31))) as hash, unnest(string_split($2, chr(31))) as tab, unnest(string_split($3, chr(31)))::integer as row_number)
		select w.hash, w.tab, w.row_number, min(l.line_no)::integer, min(r.runner_no)::integer
		from wanted w join sheet.sheet s on s.hash = w.hash join sheet.part p on p.sheet_no = s.sheet_no and p.tab = w.tab
		join record.line l on l.part_no = p.part_no and l.row_number = w.row_number join record.result r on r.line_no = l.line_no
		group by all`, func(rows *sql.Rows) error {
		var at lineRef
		var v [2]int32
		err := rows.Scan(&at.hash, &at.tab, &at.row, &v[0], &v[1])
		out[at] = v
		return err
	}, strings.Join(hash, unit), strings.Join(tab, unit), strings.Join(row, unit))
	return out, err
}

// ErrContradicts means that a decision would contradict others.
var ErrContradicts = errors.New("contradicts what was decided")

// against finds what speaks against a new decision: decisions in force that it
// contradicts. already is the decision that says the same.
func against(have []settled, same bool, a, b target) (no []Decision, already *Decision) {
	pairs := func(s settled) bool {
		if a.line > 0 || b.line > 0 { // about a line: only decisions about that line count
			one, other := a, b
			if one.line == 0 {
				one, other = b, a
			}
			if s.wholeA || s.lineA != one.line {
				return false
			}
			return s.b == other.no
		}
		if s.a == s.b && s.a != 0 { // one runner now: it depends on the lines
			x, y := side{at: a.at}, side{at: b.at}
			p, q, _ := s.d.sides()
			return p.at == x.at && q.at == y.at || p.at == y.at && q.at == x.at
		}
		return s.wholeA && (s.a == a.no && s.b == b.no || s.a == b.no && s.b == a.no)
	}
	for i := range have {
		if !pairs(have[i]) {
			continue
		}
		if (have[i].d.Kind == DecideSame) == same {
			already = &have[i].d
		} else {
			no = append(no, have[i].d)
		}
	}
	if !same && a.no == b.no && len(no) == 0 {
		no = chain(have, a.at, b.at)
	}
	return no, already
}

// chain finds the decisions by which two lines are one person's: a path of
// "same person" from one to the other, nil where there is none.
func chain(have []settled, from, to lineRef) []Decision {
	type step struct {
		at  lineRef
		via int
	}
	before := map[lineRef]step{from: {}}
	queue := []lineRef{from}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		if at == to {
			var out []Decision
			for at != from {
				s := before[at]
				out = append(out, have[s.via].d)
				at = s.at
			}
			return out
		}
		for i, s := range have {
			if s.d.Kind != DecideSame {
				continue
			}
			a, b, _ := s.d.sides()
			for _, e := range [][2]lineRef{{a.at, b.at}, {b.at, a.at}} {
				if _, seen := before[e[1]]; e[0] == at && !seen {
					before[e[1]] = step{at, i}
					queue = append(queue, e[1])
				}
			}
		}
	}
	return nil
}

// contradictionError names what a new decision contradicts and how to go on.
func contradictionError(same bool, a, b string, no []Decision) error {
	says := "are different people"
	if !same {
		says = "are one person"
	}
	var names, undo []string
	for _, d := range no {
		names = append(names, d.words())
		undo = append(undo, "lapwing match undo "+strconv.Itoa(d.ID))
	}
	return fmt.Errorf("%w: %s says that %s and %s %s. Nothing was kept. If that was wrong take it back first: %s",
		ErrContradicts, strings.Join(names, ", "), a, b, says, strings.Join(undo, ", "))
}

// MatchOutcome is what became of decisions about people.
type MatchOutcome struct {
	Decisions []int         `json:"decisions"` // their ids in decisions.csv
	People    []MatchPerson `json:"people"`    // as they are now
	Words     []string      `json:"words"`
	Changes   []Change      `json:"changes"` // what else they change
}

// Join decides that first and each of the others are one person, Part that
// they are not; each is R12, a name, or SHEET:ROW for a single line. The
// decisions are kept and the figures computed again. by and why are kept with
// them.
func (pl *Pipeline) Join(ctx context.Context, by, why, first string, others ...string) (*MatchOutcome, error) {
	return pl.decide(ctx, true, by, why, first, others)
}

// Part decides that people are different; see Join.
func (pl *Pipeline) Part(ctx context.Context, by, why, first string, others ...string) (*MatchOutcome, error) {
	return pl.decide(ctx, false, by, why, first, others)
}

func (pl *Pipeline) decide(ctx context.Context, same bool, by, why, first string, others []string) (*MatchOutcome, error) {
	if _, err := pl.Refresh(ctx, false); err != nil {
		return nil, err
	}
	have, err := pl.settledPeople(ctx)
	if err != nil {
		return nil, err
	}
	a, err := pl.target(ctx, first)
	if err != nil {
		return nil, err
	}
	var fresh []Decision
	var bs []target
	for _, o := range others {
		b, err := pl.target(ctx, o)
		if err != nil {
			return nil, err
		}
		d, err := newDecision(have, same, a, b)
		if err != nil {
			return nil, err
		}
		d.By, d.Why = by, why
		fresh, bs = append(fresh, d), append(bs, b)
	}
	out, err := pl.keepMatches(ctx, fresh)
	if err != nil {
		return nil, err
	}
	return out, pl.describe(ctx, out, same, a, bs)
}

// newDecision makes the decision that a and b are one person, or are not,
// after checking that it can be followed.
func newDecision(have []settled, same bool, a, b target) (Decision, error) {
	switch {
	case a.at == b.at:
		return Decision{}, fmt.Errorf("%s and %s are the same runner; name two", a.shown, b.shown)
	case same && a.no == b.no:
		if a.line > 0 || b.line > 0 {
			break // pins the line to the runner
		}
		return Decision{}, fmt.Errorf("%s and %s are one runner already", a.shown, b.shown)
	}
	no, already := against(have, same, a, b)
	if len(no) > 0 {
		return Decision{}, contradictionError(same, a.shown, b.shown, no)
	}
	if already != nil {
		return Decision{}, fmt.Errorf("%s and %s: %s says so already", a.shown, b.shown, already.words())
	}
	if b.line > 0 && a.line == 0 { // the line comes first
		a, b = b, a
	}
	return peopleDecision(same, a.side(), b.side()), nil
}

func peopleDecision(same bool, a, b side) Decision {
	d := Decision{Kind: DecideDifferent, Sheet: a.at.hash, Tab: a.at.tab, Row: a.at.row, Runner: a.runner, Value: b.String()}
	if same {
		d.Kind = DecideSame
	}
	return d
}

// tryMatches works out what decisions would do, and which of them (by place)
// others contradict when they are followed; why says how.
func (pl *Pipeline) tryMatches(ctx context.Context, fresh []Decision) (d *Draft, why map[int]string, err error) {
	if d, err = pl.Draft(ctx, fresh); err != nil {
		return nil, nil, err
	}
	why = map[int]string{}
	if d.w.link == nil || d.w.link.result == nil {
		return d, why, nil
	}
	at := map[int32]int{}
	for i, e := range d.Decisions {
		at[int32(e.ID)] = i
	}
	for _, c := range d.w.link.result.Contradictions {
		for _, e := range append(slices.Clone(c.Against), c.Decision) {
			if i, ok := at[decisionOf(e.Ref)]; ok && fresh[i].Kind != DecideTakeBack {
				why[i] = c.Message
			}
		}
	}
	return d, why, nil
}

// keepMatches keeps decisions, unless others contradict them, and brings the
// figures up to date.
func (pl *Pipeline) keepMatches(ctx context.Context, fresh []Decision) (*MatchOutcome, error) {
	d, why, err := pl.tryMatches(ctx, fresh)
	if err != nil {
		return nil, err
	}
	for i := range fresh {
		if w, bad := why[i]; bad {
			return nil, fmt.Errorf("%w: %s Nothing was kept. See lapwing match decisions", ErrContradicts, w)
		}
	}
	return d.keepMatches(ctx)
}

func (d *Draft) keepMatches(ctx context.Context) (*MatchOutcome, error) {
	if err := d.Keep(ctx); err != nil {
		return nil, err
	}
	out := &MatchOutcome{Changes: d.Changes}
	for _, e := range d.Decisions {
		out.Decisions = append(out.Decisions, e.ID)
	}
	return out, nil
}

// describe says what became of the two sides of new decisions.
func (pl *Pipeline) describe(ctx context.Context, out *MatchOutcome, same bool, a target, bs []target) error {
	refs := []lineRef{a.at}
	for _, b := range bs {
		refs = append(refs, b.at)
	}
	now, err := pl.linesNow(ctx, refs)
	if err != nil {
		return err
	}
	k, err := pl.linkage(ctx)
	if err != nil {
		return err
	}
	people := pl.lookUp(ctx, k.latest)
	all := make([]MatchPerson, len(refs))
	for i, r := range refs {
		all[i].no = now[r][1]
		people.want(&all[i])
	}
	if err := people.fill(); err != nil {
		return err
	}
	for i, b := range bs {
		x, y := all[0], all[i+1]
		switch {
		case same && x.no == y.no:
			old := ""
			for _, t := range []target{a, b} {
				if t.line == 0 && t.no != x.no {
					old = fmt.Sprintf(" R%d still leads there.", t.no)
				}
			}
			out.Words = append(out.Words, fmt.Sprintf("%s and %s are one runner now: %s %s, %s.%s", a.shown, b.shown, x.ID, x.Name, x.History(), old))
		case !same && x.no != y.no:
			out.Words = append(out.Words, fmt.Sprintf("%s and %s are different people now: %s %s, %s; and %s %s, %s.", a.shown, b.shown, x.ID, x.Name, x.History(), y.ID, y.Name, y.History()))
		default:
			out.Words = append(out.Words, fmt.Sprintf("%s and %s: the decision was kept and will hold when the sheets it speaks of are in the archive.", a.shown, b.shown))
		}
	}
	for _, p := range all {
		if !slices.ContainsFunc(out.People, func(q MatchPerson) bool { return q.no == p.no }) {
			out.People = append(out.People, p)
		}
	}
	return nil
}

// UndoMatch takes a decision about people back and computes the figures again.
func (pl *Pipeline) UndoMatch(ctx context.Context, by, why string, id int) (*MatchOutcome, error) {
	all, err := pl.Decisions()
	if err != nil {
		return nil, err
	}
	i := slices.IndexFunc(all, func(d Decision) bool { return d.ID == id })
	switch {
	case i < 0:
		return nil, fmt.Errorf("there is no decision %d in force; see lapwing match decisions", id)
	case !all[i].aboutPeople():
		return nil, fmt.Errorf("decision %d is not about who is who but about %q; take it back with lapwing correct --undo %d", id, all[i].Kind, id)
	}
	out, err := pl.keepMatches(ctx, []Decision{{Kind: DecideTakeBack, By: by, Why: why, Value: strconv.Itoa(id)}})
	if err != nil {
		return nil, err
	}
	out.Words = []string{fmt.Sprintf("%s was taken back.", strings.ToUpper(all[i].words()[:1])+all[i].words()[1:])}
	return out, nil
}

// MatchDecision is a decision about people as people read it.
type MatchDecision struct {
	ID     int    `json:"id"`
	When   string `json:"when"`
	By     string `json:"by"`
	Kind   string `json:"kind"`
	First  string `json:"first"` // a runner, or a line
	Second string `json:"second"`
	Why    string `json:"why,omitempty"`
	State  string `json:"state"` // followed, waits or contradicted
}

// MatchDecisions lists the decisions about people that are in force.
func (pl *Pipeline) MatchDecisions(ctx context.Context) ([]MatchDecision, error) {
	have, err := pl.settledPeople(ctx)
	if err != nil {
		return nil, err
	}
	bad, err := pl.contradictions(ctx)
	if err != nil {
		return nil, err
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	names := map[int32]string{}
	people := pl.lookUp(ctx, 0)
	list := make([]MatchPerson, 0, 2*len(have))
	for _, s := range have {
		list = append(list, MatchPerson{no: s.a}, MatchPerson{no: s.b})
	}
	for i := range list {
		people.want(&list[i])
	}
	if err := people.fill(); err != nil {
		return nil, err
	}
	for _, p := range list {
		names[p.no] = p.Name
	}
	show := func(s side, no int32) string {
		if s.runner == "" {
			return strings.TrimSpace(refWords(s.at, ledger) + " " + names[no])
		}
		t := s.runner
		if now := "R" + itoa(no); no > 0 && now != t {
			t += " (now " + now + ")"
		}
		return strings.TrimSpace(t + " " + names[no])
	}
	out := []MatchDecision{}
	for _, s := range have {
		a, b, _ := s.d.sides()
		m := MatchDecision{ID: s.d.ID, By: s.d.By, Kind: s.d.Kind, First: show(a, s.a), Second: show(b, s.b), Why: s.d.Why, State: "followed"}
		if !s.d.When.IsZero() {
			m.When = s.d.When.Format("2006-01-02")
		}
		switch {
		case slices.ContainsFunc(bad, func(c MatchContradiction) bool { return c.Decision == s.d.ID }):
			m.State = "contradicted"
		case s.a == 0 || s.b == 0:
			m.State = "waits for its sheet"
		}
		out = append(out, m)
	}
	return out, nil
}

// refWords names a line by the sheet's path.
func refWords(at lineRef, ledger []store.Entry) string {
	path := at.hash
	for _, e := range ledger {
		if e.Hash == at.hash {
			path = e.Path
		}
	}
	if at.tab != "" {
		return fmt.Sprintf("%s:%s!%d", path, at.tab, at.row)
	}
	return fmt.Sprintf("%s:%d", path, at.row)
}

// LoginName is the name of the user of this machine, for decisions.
func LoginName() string {
	for _, v := range []string{"LOGNAME", "USER", "USERNAME"} {
		if s := os.Getenv(v); s != "" {
			return s
		}
	}
	return ""
}
