package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

// Words that stand in the Decision column of the workbook for deciding.
const (
	AnswerSame      = "same person"
	AnswerDifferent = "different people"
	AnswerTheirs    = "theirs"
	AnswerNotTheirs = "not theirs"
	AnswerNobody    = "none of these"
	AnswerLeave     = "leave"
)

// MatchAnswer is a row of the workbook for deciding as it came back. First and
// Second are the cells that say what it is about.
type MatchAnswer struct {
	Code, First, Second, Answer, Remark place.Cell
}

// MatchRefusal is a row that was not followed, with the cell to look at.
type MatchRefusal struct {
	At  place.Place `json:"-"`
	Off string      `json:"at"`
	Why string      `json:"why"`
}

func (r MatchRefusal) String() string { return r.Off + ": " + r.Why }

// MatchApplied is what became of a workbook's rows.
type MatchApplied struct {
	MatchOutcome
	Joined  int            `json:"joined"`
	Parted  int            `json:"parted"`
	Lines   int            `json:"lines_given"` // single lines given to a runner or taken from one
	Already int            `json:"already_so"`
	Left    int            `json:"left"` // rows without a decision
	Refused []MatchRefusal `json:"refused"`
	Applied bool           `json:"applied"` // false: nothing was kept because of what was refused
}

// applying is the work of ApplyAnswers.
type applying struct {
	pl     *Pipeline
	ctx    context.Context
	have   []settled
	out    *MatchApplied
	people map[[2]int]MatchPerson // by sheet of the ledger and number
	lines  map[lineAt]target
	fresh  []freshRow
	pieces []pieceAnswer
}

// freshRow is a decision that a row asks for.
type freshRow struct {
	row  *MatchAnswer
	code rowCode
	same bool
	a, b target
}

// ApplyAnswers turns the rows of a workbook into decisions, keeps them and
// computes the figures again. A row that is stale, was edited where it should
// not be or contradicts others is refused; then nothing is kept, unless partial
// says that the other rows should be followed.
func (pl *Pipeline) ApplyAnswers(ctx context.Context, answers []MatchAnswer, by string, partial bool) (*MatchApplied, error) {
	if _, err := pl.Refresh(ctx, false); err != nil {
		return nil, err
	}
	have, err := pl.settledPeople(ctx)
	if err != nil {
		return nil, err
	}
	a := &applying{pl: pl, ctx: ctx, have: have, out: &MatchApplied{Refused: []MatchRefusal{}}}
	if err := a.readPeople(answers); err != nil {
		return nil, err
	}
	for i := range answers {
		if err := a.read(&answers[i]); err != nil {
			return nil, err
		}
	}
	a.readPieces()
	a.twice()
	a.contradict()
	if len(a.out.Refused) > 0 && !partial {
		return a.out, nil
	}
	return a.out, a.follow(by, partial)
}

// follow tries the decisions together, refuses the rows of those that can't be
// followed, and keeps the others.
func (a *applying) follow(by string, partial bool) error {
	for {
		ds := make([]Decision, len(a.fresh))
		for i, f := range a.fresh {
			ds[i] = peopleDecision(f.same, f.a.side(), f.b.side())
			ds[i].By, ds[i].Why = by, f.row.Remark.Text
		}
		if len(ds) == 0 {
			a.out.Applied = true
			return nil
		}
		d, why, err := a.pl.tryMatches(a.ctx, ds)
		if err != nil {
			return err
		}
		if len(why) > 0 {
			a.drop(func(i int) bool { return why[i] != "" }, func(i int) string { return "contradiction: " + why[i] })
			if !partial {
				return nil
			}
			continue
		}
		kept, err := d.keepMatches(a.ctx)
		if err != nil {
			return err
		}
		a.out.MatchOutcome, a.out.Applied = *kept, true
		for _, f := range a.fresh {
			switch {
			case f.b.line > 0: // lines of one question are one person's
			case f.a.line > 0:
				a.out.Lines++
			case f.same:
				a.out.Joined++
			default:
				a.out.Parted++
			}
		}
		return nil
	}
}

func (a *applying) refuse(c place.Cell, format string, args ...any) {
	a.out.Refused = append(a.out.Refused, MatchRefusal{c.Place, c.Place.String(), fmt.Sprintf(format, args...)})
}

// readPeople looks up everybody and every line that the codes name.
func (a *applying) readPeople(answers []MatchAnswer) error {
	a.people, a.lines = map[[2]int]MatchPerson{}, map[lineAt]target{}
	want := map[int]map[int32]bool{}
	sheets := map[int32]bool{}
	for _, r := range answers {
		c, ok := readCode(r.Code.Text)
		if !ok {
			continue
		}
		if want[c.latest] == nil {
			want[c.latest] = map[int32]bool{}
		}
		for _, n := range c.runners {
			want[c.latest][n] = true
		}
		for _, l := range c.lines {
			sheets[l.sheet] = true
			a.lines[l] = target{}
		}
	}
	for latest, numbers := range want {
		l := a.pl.lookUp(a.ctx, latest)
		list := make([]MatchPerson, 0, len(numbers))
		for n := range numbers {
			list = append(list, MatchPerson{no: n})
		}
		for i := range list {
			l.want(&list[i])
		}
		if err := l.fill(); err != nil {
			return err
		}
		for _, p := range list {
			a.people[[2]int{latest, int(p.no)}] = p
		}
	}
	for n := range sheets {
		err := a.pl.each(a.ctx, `select p.tab_index, l.row_number, s.hash, p.tab, l.line_no, r.runner_no
			from record.line l join sheet.part p on p.part_no = l.part_no join sheet.sheet s on s.sheet_no = p.sheet_no join record.result r on r.line_no = l.line_no
			where p.sheet_no = ?`, func(rows *sql.Rows) error {
			at := lineAt{sheet: n}
			var t target
			if err := rows.Scan(&at.tab, &at.row, &t.at.hash, &t.at.tab, &t.line, &t.no); err != nil {
				return err
			}
			t.at.row = int(at.row)
			if _, ok := a.lines[at]; ok {
				a.lines[at] = t
			}
			return nil
		}, n)
		if err != nil {
			return err
		}
	}
	return nil
}

// read takes one row.
func (a *applying) read(r *MatchAnswer) error {
	answer := strings.ToLower(strings.Join(strings.Fields(r.Answer.Text), " "))
	if answer == "" || answer == AnswerLeave {
		a.out.Left++
		return nil
	}
	c, ok := readCode(r.Code.Text)
	if !ok {
		a.refuse(r.Code, "read %q, expected the code that lapwing wrote; without it the row can't be followed. Export the list again", r.Code.Text)
		return nil
	}
	people := make([]MatchPerson, len(c.runners))
	for i, n := range c.runners {
		people[i] = a.people[[2]int{c.latest, int(n)}]
	}
	if checkSum(c.body, r.First.Text, r.Second.Text) != c.sum {
		a.refuseEdited(r, c, people)
		return nil
	}
	switch {
	case len(c.lines) > 0:
		return a.readLine(r, c, people, answer)
	case c.among != "":
		return a.readPiece(r, c, people[0], answer)
	}
	return a.readPair(r, c, people, answer)
}

// refuseEdited names the cell that was changed, as far as can be told.
func (a *applying) refuseEdited(r *MatchAnswer, c rowCode, people []MatchPerson) {
	cells := []place.Cell{r.First, r.Second}
	if len(c.lines) > 0 || c.among != "" {
		cells = []place.Cell{r.Second}
	}
	for i, cell := range cells {
		id := "R" + itoa(c.runners[i])
		expected := id
		if people[i].ID != "" && len(c.lines) == 0 {
			expected = people[i].Shown()
		}
		if !strings.HasPrefix(cell.Text, id+" ") || expected != id && cell.Text != expected {
			a.refuse(cell, "read %q, expected %q by the code of this row. The row was changed or mixed with another; export the list again, or put back what stood here", cell.Text, expected)
			return
		}
	}
	a.refuse(r.Code, "the code does not belong to the names in this row. The row was changed or mixed with another; export the list again")
}

func (a *applying) readPair(r *MatchAnswer, c rowCode, people []MatchPerson, answer string) error {
	same := false
	switch answer {
	case AnswerSame, "same":
		same = true
	case AnswerDifferent, "different":
	default:
		a.refuse(r.Answer, "read %q, expected %s, %s or %s", r.Answer.Text, AnswerSame, AnswerDifferent, AnswerLeave)
		return nil
	}
	var t [2]target
	for i, n := range c.runners {
		var err error
		if t[i].no, err = a.now(n); err != nil {
			return err
		}
		t[i].person, t[i].at, t[i].shown = people[i], people[i].at, people[i].Shown()
	}
	if t[0].no == t[1].no && same {
		a.out.Already++
		return nil
	}
	if a.gone(r.First, c.runners[0], t[0].no, people[0]) || a.gone(r.Second, c.runners[1], t[1].no, people[1]) ||
		a.moved(r.First, people[0], c.states[0]) || a.moved(r.Second, people[1], c.states[1]) {
		return nil
	}
	a.decide(r, c, same, t[0], t[1])
	return nil
}

// gone refuses a row about a runner whom the archive no longer has: was is the number
// given, now the one in use, p whoever has the number.
func (a *applying) gone(cell place.Cell, was, now int32, p MatchPerson) bool {
	switch {
	case p.ID != "":
		return false
	case now != was:
		a.refuse(cell, "stale: R%d was joined to R%d since this list was written. Export it again", was, now)
	default:
		a.refuse(cell, "stale: there is no R%d any more. Export the list again", was)
	}
	return true
}

// moved refuses a row about a runner whose lines are not those that the list was
// written about.
func (a *applying) moved(cell place.Cell, p MatchPerson, state string) bool {
	if p.state[:min(8, len(p.state))] == state {
		return false
	}
	a.refuse(cell, "stale: lines of %s came or went since this list was written (a decision, a correction or a withdrawn sheet). Export it again", p.ID)
	return true
}

// decide takes what a row says of two: refused where decisions contradict it,
// fresh where it does not hold already.
func (a *applying) decide(r *MatchAnswer, c rowCode, same bool, x, y target) (fresh, refused bool) {
	no, already := against(a.have, same, x, y)
	switch {
	case len(no) > 0:
		a.refuse(r.Answer, "%v", contradictionError(same, x.shown, y.shown, no))
		return false, true
	case already != nil:
		a.out.Already++
		return false, false
	}
	a.fresh = append(a.fresh, freshRow{r, c, same, x, y})
	return true, false
}

// now is the number in use for a number that was given.
func (a *applying) now(n int32) (int32, error) {
	err := a.pl.each(a.ctx, "select now from record.alias where runner_no = ?", func(rows *sql.Rows) error { return rows.Scan(&n) }, n)
	return n, err
}

// readLine takes a row about a single line: of one of several namesakes, or
// one that fits its runner badly.
func (a *applying) readLine(r *MatchAnswer, c rowCode, people []MatchPerson, answer string) error {
	lines := make([]target, len(c.lines))
	for i, at := range c.lines {
		if lines[i] = a.lines[at]; lines[i].line == 0 {
			a.refuse(r.First, "stale: this line is not in the archive now (its sheet was withdrawn or changed). Export the list again")
			return nil
		}
		lines[i].shown = r.First.Text
	}
	for i, p := range people {
		if p.ID == "" {
			a.refuse(r.Second, "stale: R%d is no runner of its own any more. Export the list again", c.runners[i])
			return nil
		}
	}
	give := func(same bool, p MatchPerson) {
		to := target{no: p.no, at: p.at, person: p, shown: p.Shown()}
		for i, line := range lines {
			fresh, refused := a.decide(r, c, same, line, to)
			if refused {
				return
			}
			if fresh && i > 0 && !same { // whoever they are, they are one
				a.fresh = append(a.fresh, freshRow{r, c, true, lines[0], line})
			}
		}
	}
	first, _, _ := strings.Cut(answer, " ")
	n, isID := runnerNumber(first)
	i := slices.IndexFunc(people, func(p MatchPerson) bool { return isID && p.no == n })
	switch {
	case c.fit && answer == AnswerTheirs:
		give(true, people[0])
	case c.fit && answer == AnswerNotTheirs:
		give(false, people[0])
	case c.fit:
		a.refuse(r.Answer, "read %q, expected %s, %s or %s", r.Answer.Text, AnswerTheirs, AnswerNotTheirs, AnswerLeave)
	case i >= 0:
		give(true, people[i])
	case answer == AnswerNobody:
		for _, p := range people {
			give(false, p)
		}
	default:
		ids := make([]string, len(people))
		for k, p := range people {
			ids[k] = p.ID
		}
		a.refuse(r.Answer, "read %q, expected %s, %s or %s", r.Answer.Text, strings.Join(ids, ", "), AnswerNobody, AnswerLeave)
	}
	return nil
}

// twice drops rows that say the same as another, and refuses those that say
// the opposite.
func (a *applying) twice() {
	type key struct{ a, b lineRef }
	at := map[key]int{}
	bad := map[int]bool{}
	kept := make([]bool, len(a.fresh))
	for i, f := range a.fresh {
		k := key{f.a.at, f.b.at}
		j, ok := at[k]
		switch {
		case !ok:
			at[k], kept[i] = i, true
		case a.fresh[j].same != f.same:
			bad[i], bad[j] = true, true
		default:
			a.out.Already++
		}
	}
	a.drop(func(i int) bool { return !kept[i] || bad[i] }, func(i int) string {
		if !bad[i] {
			return ""
		}
		return "this file says both about these two; make up your mind, or leave both rows"
	})
}

// drop takes rows out; why gives the reason to refuse a row for, "" to drop it
// silently.
func (a *applying) drop(out func(int) bool, why func(int) string) {
	var rest []freshRow
	for i, f := range a.fresh {
		if !out(i) {
			rest = append(rest, f)
			continue
		}
		if w := why(i); w != "" {
			a.refuse(f.row.Answer, "%s", w)
		}
	}
	a.fresh = rest
}

// contradict refuses rows that together say of two people that they are one,
// while another row or a decision in force says that they are two.
func (a *applying) contradict() {
	near := map[int32][]int{} // runner → rows that join it
	for i, f := range a.fresh {
		if f.same && f.a.line == 0 {
			near[f.a.no] = append(near[f.a.no], i)
			near[f.b.no] = append(near[f.b.no], i)
		}
	}
	path := func(from, to int32) []int {
		type step struct {
			at  int32
			via int
		}
		before := map[int32]step{from: {}}
		queue := []int32{from}
		for len(queue) > 0 {
			at := queue[0]
			queue = queue[1:]
			if at == to {
				var out []int
				for at != from {
					out = append(out, before[at].via)
					at = before[at].at
				}
				return out
			}
			for _, i := range near[at] {
				other := a.fresh[i].a.no + a.fresh[i].b.no - at
				if _, seen := before[other]; !seen {
					before[other] = step{at, i}
					queue = append(queue, other)
				}
			}
		}
		return nil
	}
	why := map[int]string{}
	cells := func(rows []int) string {
		out := make([]string, len(rows))
		for k, i := range rows {
			out[k] = a.fresh[i].row.Answer.Column + fmt.Sprint(a.fresh[i].row.Answer.Row)
		}
		slices.Sort(out)
		return strings.Join(out, ", ")
	}
	for i, f := range a.fresh {
		if f.same || f.a.line > 0 {
			continue
		}
		if rows := path(f.a.no, f.b.no); rows != nil {
			all := append(slices.Clone(rows), i)
			for _, k := range all {
				why[k] = fmt.Sprintf("contradiction: the rows %s together say of %s and %s both that they are one person and that they are two", cells(all), f.a.shown, f.b.shown)
			}
		}
	}
	for _, s := range a.have {
		if s.d.Kind != DecideDifferent || !s.wholeA || s.a == 0 || s.b == 0 || s.a == s.b {
			continue
		}
		if rows := path(s.a, s.b); len(rows) > 1 { // one row alone was looked at before
			for _, k := range rows {
				why[k] = fmt.Sprintf("contradiction: the rows %s together make one person of R%d and R%d, but %s says that they are two", cells(rows), s.a, s.b, s.d.words())
			}
		}
	}
	a.drop(func(i int) bool { return why[i] != "" }, func(i int) string { return why[i] })
}
