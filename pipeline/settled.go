package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// settledBy says which decisions about a line settle which problems of that
// line, by the first words of the problem's kind. Whatever is decided about a
// line's status settles all of them.
var settledBy = map[string][]string{
	DecideTime:       {"time"},
	DecidePlace:      {"position", "line-twice", "time-out-of-order"},
	DecideName:       {"person", "several-people", "several-runners", "line-twice", "number", "time-out-of-order"},
	DecideClaim:      {"person", "several-people"},
	DecideExchange:   {"person", "number", "codes-exchanged"},
	DecideSex:        {"sex"},
	DecideGroup:      {"age", "group", "birth-date", "sex-contradicts-group"},
	DecideTakingPart: {"time-impossible", "time-out-of-order", "several-people"},
	DecideStatus:     {""},
	DecideSame:       {"person", "several-runners"},
	DecideDifferent:  {"person", "several-runners"},
}

// acceptance is a decision that problems of one kind need no look any more:
// those of the sheets from one number of the ledger to another, and of a course
// and a day where the decision says so; or one alone, of the sheet, tab and row
// of the decision. Sheets that come later are looked at anew.
type acceptance struct {
	kind     string
	from, to int    // 0: one problem
	column   string // of the one problem, "" where it is of a whole row
}

func (a acceptance) String() string {
	switch {
	case a.to > 0:
		return fmt.Sprintf("%s, sheets %d to %d", a.kind, a.from, a.to)
	case a.column != "":
		return a.kind + ", column " + a.column
	}
	return a.kind
}

func parseAcceptance(s string) (a acceptance, err error) {
	kind, rest, ok := strings.Cut(s, ", sheets ")
	if !ok {
		a.kind, a.column, ok = strings.Cut(s, ", column ")
		if a.kind == "" || strings.Contains(a.kind+a.column, ",") || ok && a.column == "" {
			return a, fmt.Errorf("accepted problem %q: write it as in %q or %q", s, acceptance{kind: "time-read-as", from: 1, to: 118}, acceptance{kind: "time-read-as", column: "C"})
		}
		return a, nil
	}
	from, to, ok2 := strings.Cut(rest, " to ")
	a.kind = kind
	var err1, err2 error
	a.from, err1 = strconv.Atoi(from)
	a.to, err2 = strconv.Atoi(to)
	if !ok2 || err1 != nil || err2 != nil || kind == "" || a.from < 1 || a.from > a.to {
		return a, fmt.Errorf("accepted problem %q: write it as in %q", s, acceptance{kind: "time-read-as", from: 1, to: 118})
	}
	return a, nil
}

// checkAcceptance checks a decision that problems need no look.
func (d Decision) checkAcceptance() error {
	a, err := parseAcceptance(d.Value)
	if err == nil && (a.to == 0) != (d.Sheet != "") {
		err = fmt.Errorf("%q needs either the sheet of one problem or the numbers of the sheets", d.Kind)
	}
	return err
}

// accepted is the condition of the problems that a decision accepts, as SQL
// about sheet.problem p, record.run run, record.course c and sheet.sheet s.
func (d Decision) accepted() (where string, args []any, err error) {
	a, err := parseAcceptance(d.Value)
	if err != nil {
		return "", nil, err
	}
	date := ""
	if d.Date != 0 {
		date = d.Date.String()
	}
	where, args = "p.kind = ? and p.severity > ?", []any{a.kind, int(place.Waits)}
	if a.to == 0 {
		return where + " and s.hash = ? and p.tab = ? and p.row_number = ? and p.column_letter = ?", append(args, d.Sheet, d.Tab, d.Row, a.column), nil
	}
	return where + " and p.sheet_no between ? and ? and (? = '' or c.course = ?) and (? = '' or run.run_date::varchar = ?)",
		append(args, a.from, a.to, d.Course, d.Course, date, date), nil
}

// problemsWithRuns joins the problems with what accepted speaks of.
const problemsWithRuns = `sheet.problem p
	left join sheet.sheet s on s.sheet_no = p.sheet_no
	left join record.run run on run.run_no = p.run_no
	left join record.course c on c.course_no = run.course_no`

var settledSchema = store.Columns("sheet_no", store.Int32, "tab", store.Text, "row_number", store.Int32, "column_letter", store.Text,
	"kind", store.Text, "read", store.Text, "words", store.Text)

// settleProblems notes which problems need no look any more: their line was
// corrected, a person accepted them, or a later sheet stands for the run.
// Withdrawn sheets have none in the database.
func (pl *Pipeline) settleProblems(ctx context.Context) error {
	if err := pl.DB.Exec(ctx, "delete from sheet.settled"); err != nil {
		return err
	}
	decisions, err := pl.Decisions()
	if err != nil {
		return err
	}
	if err := pl.settleCorrected(ctx, decisions); err != nil {
		return err
	}
	for _, d := range decisions {
		if d.Kind != DecideAccept {
			continue
		}
		where, args, err := d.accepted()
		if err != nil {
			return err
		}
		if err := pl.DB.Exec(ctx, "insert into sheet.settled select distinct p.sheet_no, p.tab, p.row_number, p.column_letter, p.kind, p.read, ? from "+problemsWithRuns+" where "+where,
			append([]any{acceptedWords(d)}, args...)...); err != nil {
			return err
		}
	}
	// what was asked of a tab, where the workbook was mended and loaded again
	if err := pl.DB.Exec(ctx, `insert into sheet.settled
		select distinct p.sheet_no, p.tab, p.row_number, p.column_letter, p.kind, p.read, 'a later state of this workbook was loaded'
		from sheet.problem p join sheet.sheet s on s.sheet_no = p.sheet_no
		where p.kind = ? and exists (select 1 from sheet.sheet o where o.path = s.path and o.sheet_no > s.sheet_no)`, sheet.TabLeftOut); err != nil {
		return err
	}
	// of the sheets and tabs whose lines a later one of the run has taken the place
	// of, or that are left out until somebody says of which run they are
	return pl.DB.Exec(ctx, "insert into sheet.settled with idle as ("+idleTabs+`)
		select distinct p.sheet_no, p.tab, p.row_number, p.column_letter, p.kind, p.read,
			case when idle.left_out then 'the sheet is left out' else 'a later sheet stands for this run' end
		from sheet.problem p
		join idle on idle.sheet_no = p.sheet_no and idle.tab = p.tab and idle.run_no = p.run_no
		where p.kind not in ('new-issue', '`+anotherField+"', '"+resultsCopied+"')")
}

// idleTabs are the sheets, tabs and runs none of whose lines stands: because the tab is
// left out until somebody says of which run it is, or because a later sheet stands.
var idleTabs = fmt.Sprintf(`
	select t.sheet_no, t.tab, r.run_no, coalesce(bool_or(q.run_no is not null), false) as left_out
	from record.result r
	join sheet.part t on t.part_no = r.part_no
	left join (select distinct sheet_no, tab, run_no from sheet.problem where kind in ('%[2]s', '%[3]s')) q
		on q.sheet_no = t.sheet_no and q.tab = t.tab and q.run_no = r.run_no
	where r.run_no in (select run_no from sheet.problem where kind in ('new-issue', '%[2]s', '%[3]s'))
	group by all
	having bool_and(r.status = %[1]d)`, record.Superseded, anotherField, resultsCopied)

// Idle says of the sheets with a run of which no line of theirs stands why: "left out"
// or "replaced". A pipeline without a database knows of none.
func (pl *Pipeline) Idle(ctx context.Context) (map[int]string, error) {
	out := map[int]string{}
	if pl.DB == nil {
		return out, nil
	}
	return out, pl.each(ctx, "select sheet_no, bool_or(left_out) from ("+idleTabs+") group by sheet_no", func(rows *sql.Rows) error {
		var no int
		var left bool
		err := rows.Scan(&no, &left)
		out[no] = map[bool]string{true: "left out", false: "replaced"}[left]
		return err
	})
}

const acceptedWord = "accepted"

func acceptedWords(d Decision) string {
	s := fmt.Sprintf("%s (decision %d)", acceptedWord, d.ID)
	if d.Why != "" {
		s += ": " + d.Why
	}
	return s
}

// settleCorrected settles the problems of lines that somebody has corrected.
func (pl *Pipeline) settleCorrected(ctx context.Context, decisions []Decision) error {
	of := map[lineRef][]Decision{}
	var hashes []string
	for _, d := range decisions {
		if d.Sheet != "" && d.Row > 0 && settledBy[d.Kind] != nil {
			of[lineRef{d.Sheet, d.Tab, d.Row}] = append(of[lineRef{d.Sheet, d.Tab, d.Row}], d)
			hashes = append(hashes, store.Quote(d.Sheet))
		}
	}
	if len(hashes) == 0 {
		return nil
	}
	slices.Sort(hashes)
	rows, err := pl.DB.QueryContext(ctx, `select distinct p.sheet_no, s.hash, p.tab, p.row_number, p.column_letter, p.kind, p.read
		from sheet.problem p join sheet.sheet s on s.sheet_no = p.sheet_no
		where p.row_number > 0 and p.severity > ? and p.kind <> 'decision-contradicted' and s.hash in (`+strings.Join(slices.Compact(hashes), ", ")+`)
		order by all`, int(place.Waits))
	if err != nil {
		return err
	}
	defer rows.Close()
	type settled struct {
		no, row                       int32
		tab, column, kind, read, word string
	}
	var found []settled
	for rows.Next() {
		var q settled
		var hash string
		if err := rows.Scan(&q.no, &hash, &q.tab, &q.row, &q.column, &q.kind, &q.read); err != nil {
			return err
		}
		for _, d := range of[lineRef{hash, q.tab, int(q.row)}] {
			if slices.ContainsFunc(settledBy[d.Kind], func(first string) bool { return strings.HasPrefix(q.kind, first) }) {
				q.word = fmt.Sprintf("settled by decision %d", d.ID)
				found = append(found, q)
				break
			}
		}
	}
	if err := rows.Err(); err != nil {
		return err
	}
	return pl.insertRows(ctx, "sheet.settled", settledSchema, len(found), func(r row, i int) {
		q := found[i]
		r.ints(0, q.no)
		r.texts(1, q.tab)
		r.ints(2, q.row)
		r.texts(3, q.column, q.kind, q.read, q.word)
	})
}

// Accept says which problems need no look any more.
type Accept struct {
	Kind   string // as it is printed: "position repeated" or position-repeated
	Sheet  string // "" for all sheets loaded so far
	Course string
	Date   string // 2026-01-03
	By     string
	Why    string
}

// AcceptProblems keeps the decision that all problems of a kind, of the sheets
// loaded so far, need no look any more. It returns the decision and how many
// problems that settles. No figure changes.
func (pl *Pipeline) AcceptProblems(ctx context.Context, a Accept) (d Decision, settled int, err error) {
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return d, 0, err
	}
	v := acceptance{kind: place.ParseKind(a.Kind), from: 1}
	for _, e := range ledger {
		v.to = max(v.to, e.Seq)
	}
	if a.Sheet != "" {
		e, err := pl.FindSheet(a.Sheet)
		if err != nil {
			return d, 0, err
		}
		v.from, v.to = e.Seq, e.Seq
	}
	d = Decision{By: a.By, Kind: DecideAccept, Course: sheet.Slug(a.Course), Why: a.Why}
	if a.Date != "" {
		if d.Date, err = unit.ParseDay(a.Date); err != nil {
			return d, 0, err
		}
	}
	open, err := pl.Problems(ctx, "", false)
	if err != nil {
		return d, 0, err
	}
	var kinds []string
	for _, p := range open {
		if p.Severity != place.Waits && !slices.Contains(kinds, p.Kind) {
			kinds = append(kinds, p.Kind)
		}
	}
	slices.Sort(kinds)
	words := make([]string, len(kinds))
	for i, k := range kinds {
		words[i] = place.KindWords(k)
	}
	if !slices.Contains(kinds, v.kind) {
		if len(kinds) == 0 {
			return d, 0, fmt.Errorf("nothing needs a look: there is nothing to accept")
		}
		return d, 0, fmt.Errorf("no problem of the kind %q needs a look; there are: %s", a.Kind, strings.Join(words, ", "))
	}
	fits := 0
	where := fmt.Sprintf("settled = '' and kind = %s and sheet_no between %d and %d", store.Quote(v.kind), v.from, v.to)
	if d.Course != "" {
		where += " and course = " + store.Quote(d.Course)
	}
	if a.Date != "" {
		where += " and run_date = date " + store.Quote(a.Date)
	}
	if err := pl.DB.Get(ctx, "select count(*)::integer from main.problems where "+where, &fits); err != nil {
		return d, 0, err
	}
	if fits == 0 {
		return d, 0, fmt.Errorf("no problem of the kind %q needs a look there. Look at the sheet, the course and the date that you name; lapwing sheets problems --all lists where they are", place.KindWords(v.kind))
	}
	d.Value = v.String()
	kept, err := pl.KeepAccepted(ctx, []Decision{d})
	if err != nil {
		return d, 0, err
	}
	left, err := pl.Problems(ctx, "", false)
	return kept[0], len(open) - len(left), err
}

// KeepAccepted keeps decisions that problems need no look any more, and gives
// them back with their numbers.
func (pl *Pipeline) KeepAccepted(ctx context.Context, ds []Decision) ([]Decision, error) {
	stamp, err := pl.figuresStamp()
	if err != nil {
		return nil, err
	}
	current, err := pl.state(ctx, "figures")
	if err != nil {
		return nil, err
	}
	kept, err := pl.AppendDecisions(ds)
	if err != nil {
		return nil, err
	}
	if current != stamp { // figures were behind already
		_, err = pl.Refresh(ctx, false)
		return kept, err
	}
	return kept, pl.noteAccepted(ctx)
}

// PrintedProblem names a problem as a workbook of the desk has it.
type PrintedProblem struct {
	At           string // the cell, for messages
	Sheet, Tab   string
	Row          int
	Column, Kind string
	Read         string
	All          bool   // all of the kind, of the sheet and the run
	Course, Date string // of the run
}

// decideAccepted turns the answer that a printed problem needs no look into a
// decision. One that was corrected since, or does not stand in the archive any
// more, is refused; one that is accepted already gives the same decision again.
func (pl *Pipeline) decideAccepted(ctx context.Context, d Decision, p PrintedProblem) ([]Decision, error) {
	fresh := func(why string, args ...any) error {
		return fmt.Errorf("%s: %s. Take a fresh desk workbook and answer on that", p.At, fmt.Sprintf(why, args...))
	}
	e, err := pl.FindSheet(p.Sheet)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", p.At, err)
	}
	d.Kind = DecideAccept
	a := acceptance{kind: p.Kind, column: p.Column}
	d.Sheet, d.Tab, d.Row, d.Value = e.Hash, p.Tab, p.Row, a.String()
	list := []Decision{d}
	found, err := pl.problemsOf(ctx, list)
	if err != nil {
		return nil, err
	}
	found = slices.DeleteFunc(found, func(q Settled) bool { return q.Read != p.Read })
	switch {
	case len(found) == 0:
		return nil, fresh("this was asked of a sheet or a reading that does not stand any more")
	case found[0].Why != "" && !strings.HasPrefix(found[0].Why, acceptedWord):
		return nil, fresh("this needs no look any more (%s)", found[0].Why)
	}
	if !p.All {
		return list, nil
	}
	if d.Date, err = unit.ParseDay(p.Date); err != nil {
		return nil, fmt.Errorf("%s: %w", p.At, err)
	}
	a = acceptance{kind: p.Kind, from: e.Seq, to: e.Seq}
	d.Sheet, d.Tab, d.Row, d.Course, d.Value = "", "", 0, p.Course, a.String()
	return []Decision{d}, nil
}

// WouldSettle lists the problems that decisions settle and that need a look
// without them.
func (pl *Pipeline) WouldSettle(ctx context.Context, ds []Decision) ([]Settled, error) {
	list, err := pl.problemsOf(ctx, ds)
	return slices.DeleteFunc(list, func(p Settled) bool { return p.Why != "" }), err
}

// problemsOf lists the problems that decisions of the kind DecideAccept are
// about, in their order, each once.
func (pl *Pipeline) problemsOf(ctx context.Context, ds []Decision) (out []Settled, err error) {
	seen := map[Settled]bool{}
	for _, d := range ds {
		if d.Kind != DecideAccept {
			continue
		}
		where, args, err := d.accepted()
		if err != nil {
			return nil, err
		}
		err = pl.each(ctx, `select distinct coalesce(s.path, ''), p.tab, p.row_number, p.column_letter, p.severity, p.kind, p.read, p.expected, p.todo,
				coalesce((select min(words) from sheet.settled t where t.sheet_no = p.sheet_no and t.tab = p.tab and t.row_number = p.row_number
					and t.column_letter = p.column_letter and t.kind = p.kind and t.read = p.read), '')
			from `+problemsWithRuns+" where "+where+" order by all", func(rows *sql.Rows) error {
			var p Settled
			if err := rows.Scan(&p.Place.Sheet, &p.Place.Tab, &p.Place.Row, &p.Place.Column, &p.Severity, &p.Kind, &p.Read, &p.Expected, &p.Do, &p.Why); err != nil {
				return err
			}
			if !seen[p] {
				seen[p] = true
				out = append(out, p)
			}
			return nil
		}, args...)
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// noteAccepted settles problems anew and notes that the figures, on which an
// acceptance has no bearing, are still those of the archive.
func (pl *Pipeline) noteAccepted(ctx context.Context) error {
	stamp, err := pl.figuresStamp()
	if err != nil {
		return err
	}
	base, err := pl.figuresBase()
	if err != nil {
		return err
	}
	return pl.noteFigures(ctx, stamp, base)
}
