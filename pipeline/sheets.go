package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// Sheets lists the ledger: what was loaded, what waits, what was withdrawn.
func (pl *Pipeline) Sheets() ([]store.Entry, error) { return pl.Archive.Ledger() }

// FindSheet finds the one sheet of the ledger that a text names: its path, its
// file name, or the beginning of its hash. Of several states of one file the one that
// was not withdrawn is meant.
func (pl *Pipeline) FindSheet(what string) (store.Entry, error) {
	return pl.findSheet(what, func(e store.Entry) bool { return e.State != store.Withdrawn })
}

// findSheet is FindSheet where of several sheets that a text names the only likely one
// is meant.
func (pl *Pipeline) findSheet(what string, likely func(store.Entry) bool) (store.Entry, error) {
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return store.Entry{}, err
	}
	what = path.Clean(filepath.ToSlash(what))
	for _, fits := range []func(store.Entry) bool{
		func(e store.Entry) bool { return e.Path == what },
		func(e store.Entry) bool { return path.Base(e.Path) == path.Base(what) },
		func(e store.Entry) bool { return len(what) >= 6 && strings.HasPrefix(e.Hash, what) },
	} {
		var found []store.Entry
		for _, e := range ledger {
			if fits(e) {
				found = append(found, e)
			}
		}
		if len(found) > 1 {
			if few := slices.DeleteFunc(slices.Clone(found), func(e store.Entry) bool { return !likely(e) }); len(few) == 1 {
				found = few
			}
		}
		switch {
		case len(found) == 1:
			return found[0], nil
		case len(found) > 1:
			var names []string
			for _, e := range found {
				names = append(names, fmt.Sprintf("%s (%s, loaded %s)", e.Path, e.Hash[:8], e.LoadedAt.Format("2006-01-02")))
			}
			return store.Entry{}, fmt.Errorf("%q is %d sheets: %s. Name one by its path or the letters in brackets", what, len(found), strings.Join(names, "; "))
		}
	}
	return store.Entry{}, fmt.Errorf("no sheet %q in the archive; see lapwing sheets", what)
}

// SetState withdraws or restores a sheet. The copy stays in the archive. One that waits
// for an answer can be withdrawn too: nobody is asked about it any more, until it is
// restored and waits again.
func (pl *Pipeline) SetState(ctx context.Context, what string, state store.SheetState) (store.Entry, error) {
	e, err := pl.findSheet(what, func(e store.Entry) bool { return (e.State == store.Withdrawn) == (state == store.Loaded) })
	if err != nil {
		return e, err
	}
	if e.State == state {
		return e, fmt.Errorf("%s is %s already", e.Path, state)
	}
	if e.State == store.Waiting && state == store.Loaded {
		return e, fmt.Errorf("%s was not withdrawn, it waits for an answer; lapwing sheets prints what to type", e.Path)
	}
	waited := e.State == store.Waiting
	var back *parsedSheet
	if state == store.Loaded {
		if back, err = pl.parseCopy(e); err != nil {
			return e, err
		}
		e.Rows = back.rows()
		if back.waits() {
			e.Rows, state, back = 0, store.Waiting, nil
		}
	}
	e.State = state
	if err := pl.Archive.Keep([]store.Incoming{{Entry: e}}); err != nil {
		return e, err
	}
	if back != nil {
		back.entry = e
		return e, pl.writeSheets(ctx, []*parsedSheet{back})
	}
	if waited || state == store.Waiting {
		return e, nil // it has no lines
	}
	return e, pl.dropSheet(ctx, e.Seq)
}

// DryRun reads a file as loading would and describes what was found; nothing
// is changed.
func (pl *Pipeline) DryRun(ctx context.Context, file, name string, hand ByHand, w io.Writer) (*SheetReport, error) {
	defer pl.stopWith(ctx)()
	data, err := sheet.Fetch(file, pl.limits)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if err != nil {
		return &SheetReport{Path: name, State: "refused", Why: plainReadError(err)}, nil
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	earlier := pl.remember(ledger)
	p, meant, err := pl.openAsMeant(ctx, name, data, hand, earlier)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if err != nil {
		return &SheetReport{Path: name, State: "refused", Why: err.Error()}, nil
	}
	if err := earlier.lookUp(ctx, []*parsedSheet{p}); err != nil {
		return nil, err
	}
	byHand := hand
	p, hand = earlier.readAsSaid(p, hand, func(of ByHand) (*parsedSheet, error) {
		of.Answers = joinAnswers(of.Answers, meant)
		return pl.openOrParse(name, data, of)
	})
	if byHand.Answers == "" {
		p, _ = earlier.readAsBefore(p, func(a string) (*parsedSheet, error) {
			said := hand
			said.Answers = joinAnswers(joinAnswers(hand.Answers, a), meant)
			return pl.openOrParse(name, data, said)
		})
	}
	first, err := p.firstLines(3)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if err != nil {
		return &SheetReport{Path: name, State: "refused", Why: err.Error()}, nil
	}
	rep := &SheetReport{Path: name, State: "would load", Rows: p.rows(), Problems: p.problems, Counts: p.counts(), Runs: p.runNames(), Notes: earlier.notes(p, "")}
	if s := pl.saidOtherwise(p, name, data, byHand); s != "" {
		rep.Notes = append([]string{s}, rep.Notes...)
	}
	if p.waits() {
		rep.State, rep.Why, rep.Question = "would wait", p.question(), p.questionOf(name)
	}
	if w == nil {
		return rep, nil
	}
	p.sheet.Describe(w)
	for _, s := range earlier.shown(p) {
		fmt.Fprintf(w, "  Remembered: %s\n", s)
	}
	for k, q := range p.parts {
		for _, r := range q.readings {
			fmt.Fprintf(w, "  Column %s %s is read as %s%s\n", r.Column, headingWords(r.Heading), r.Means, inBrackets(r.Why))
		}
		fmt.Fprintf(w, "  Runs: %s\n", shortList(runNames(append(slices.Clip(q.runs), helperRuns(q.helpers)...)), 6))
		for _, l := range first[k] {
			fmt.Fprintf(w, "  %s\n", l)
		}
	}
	return rep, nil
}

// firstLines says what the first lines of each part become. The lines of a
// large sheet are read for it, and not kept.
func (p *parsedSheet) firstLines(most int) ([][]string, error) {
	out := make([][]string, len(p.parts))
	for k, q := range p.parts {
		tell := func(l *record.Line) {
			if len(out[k]) < most {
				out[k] = append(out[k], fmt.Sprintf("Row %d becomes: place %s, %s, time %s, %s", l.Row, orDash(l.Position), orNobody(l.Name), clockOrDash(l.TimeMS), l.Status))
			}
		}
		for _, h := range q.helpers[:min(most, len(q.helpers))] {
			out[k] = append(out[k], fmt.Sprintf("Row %d becomes: volunteer %s, %s, %s on %s", h.row, h.name, cmp.Or(h.role, "no role"), h.course, h.day))
		}
		if q.unread == nil || p.waits() {
			for i := 0; i < min(most, q.lines.n); i++ {
				tell(q.lines.at(i))
			}
			continue
		}
		if err := q.unread.read(func(b *lineBatch) error {
			for i := range b.lines[:min(most, len(b.lines))] {
				tell(&b.lines[i])
			}
			return nil
		}); err != nil {
			return nil, err
		}
		p.tell(q)
	}
	return out, p.someLines()
}

func runNames(runs []runKey) []string {
	out := make([]string, len(runs))
	for i, r := range runs {
		out[i] = r.String()
	}
	return out
}

func shortList(list []string, most int) string {
	if len(list) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(list[:most], ", "), len(list)-most)
	}
	if len(list) == 0 {
		return "none"
	}
	return strings.Join(list, ", ")
}

func orDash(n int32) string {
	if n == 0 {
		return "–"
	}
	return strconv.Itoa(int(n))
}

func orNobody(s string) string {
	if s == "" {
		return "nobody named"
	}
	return s
}

func clockOrDash(ms int32) string {
	if ms == 0 {
		return "–"
	}
	return unit.ClockMS(ms)
}

// Explain says how one row of a sheet was read and what became of it. where
// is SHEET:ROW or SHEET:TAB!ROW.
func (pl *Pipeline) Explain(ctx context.Context, where string, w io.Writer) error {
	i := strings.LastIndexAny(where, ":!")
	if i < 0 {
		return fmt.Errorf("%q: write SHEET:ROW, as in alder-bank_2026-01-03.csv:14", where)
	}
	row, err := strconv.Atoi(strings.TrimLeft(where[i+1:], "ABCDEFGHIJKLMNOPQRSTUVWXYZ"))
	if err != nil || row < 1 {
		return fmt.Errorf("%q: after the colon comes the row's number", where)
	}
	name, tab := where[:i], ""
	if where[i] == '!' {
		name, tab, _ = strings.Cut(name, ":")
	}
	e, err := pl.FindSheet(name)
	if err != nil {
		return err
	}
	data, err := pl.copyOf(e)
	if err != nil {
		return err
	}
	p, err := pl.parseSheet(e.Path, data, handOf(e))
	if err != nil {
		return err
	}
	wished, err := pl.wishedName(ctx, e.Seq, tab, row)
	if err != nil {
		return err
	}
	found, isLine := false, false
	for _, q := range p.parts {
		if tab != "" && q.part.Tab != tab {
			continue
		}
		here := false
		shown := place.Place{Sheet: e.Path, Tab: q.part.Tab, Row: row}
		if row == q.part.HeadingRow {
			here = true
			fmt.Fprintf(w, "%s is the heading of the table: %s\n", shown, strings.Join(q.part.Headings(), " | "))
		}
		err := q.part.EachSkipped(func(r int, cells []string) error {
			if r != row {
				return nil
			}
			here, isLine = true, isLine || q.part.Kind != sheet.Volunteers
			fmt.Fprintf(w, "%s\n\nAs received\n", shown)
			for _, c := range q.part.Columns {
				if c.Index < len(cells) && strings.TrimSpace(cells[c.Index]) != "" {
					text := fmt.Sprintf("%q", cells[c.Index])
					if wished != "" && personal[c.Meaning] {
						text = "(as " + wished + " wishes)"
					}
					fmt.Fprintf(w, "  %-3s %-18s %-24s taken for %s: %s\n", place.ColumnLetters(c.Index), c.Heading, text, c.Meaning, c.Why)
				}
			}
			return nil
		}, func(s sheet.Skipped) error {
			if s.Row == row {
				here = true
				fmt.Fprintf(w, "%s is left out as %s: %s\n", shown, s.Why, s.Text)
			}
			return nil
		})
		if err != nil {
			return err
		}
		if !here {
			continue
		}
		found = true
		for _, r := range q.readings {
			fmt.Fprintf(w, "  Column %s is read as %s%s\n", r.Column, r.Means, inBrackets(r.Why))
		}
	}
	if !found {
		return fmt.Errorf("%s has no row %d among its lists; the lines above a list say what it is of", e.Path, row)
	}
	if q := p.questionOf(e.Path); q != nil && e.State == store.Waiting {
		fmt.Fprintf(w, "  The sheet waits for an answer; until then it counts for nothing. %s\n", q.Words)
	}
	if a := withoutCourses(e.Answers); a != "" {
		fmt.Fprintf(w, "  Answered by a person, or taken from earlier sheets with these headings: %s\n", a)
	}
	if s := settledByOthers(p.problems); s != "" {
		fmt.Fprintf(w, "  Settled by other sheets: %s\n", s)
	}
	if err := pl.explainHelper(ctx, e, tab, row, w); err != nil {
		return err
	}
	n, err := pl.explainResult(ctx, e, tab, row, w)
	if err == nil && n == 0 && isLine && e.State == store.Loaded {
		fmt.Fprint(w, "\nWhat became of it\n  No result: lines of people who did not start are left out.\n")
	}
	return err
}

// explainResult prints what stands in the views for one row, and counts the results that
// came of it.
func (pl *Pipeline) explainResult(ctx context.Context, e store.Entry, tab string, row int, w io.Writer) (n int, err error) {
	rows, err := pl.DB.QueryContext(ctx, `select r.course, r.run_date::varchar, coalesce(r.position::varchar, '–'), coalesce(r.runner_id, ''), coalesce(r.name, 'nobody named'),
			coalesce(r.time_ms, 0)::integer, r.status, r.counts_run, r.counts_time, r.taking_part_as, coalesce(r.age_group, ''), coalesce(r.age_low, -1)::integer, coalesce(r.age_high, -1)::integer,
			coalesce(r.doubt, '')
		from main.results r join sheet.sheet s on s.path = r.sheet
		where s.sheet_no = ? and r.row_number = ? and (? = '' or r.tab = ?)`, e.Seq, row, tab, tab)
	if err != nil {
		return n, err
	}
	defer rows.Close()
	for rows.Next() {
		n++
		var course, date, position, runner, name, status, part, group, doubt string
		var ms, lo, hi int32
		var run, time bool
		if err := rows.Scan(&course, &date, &position, &runner, &name, &ms, &status, &run, &time, &part, &group, &lo, &hi, &doubt); err != nil {
			return n, err
		}
		fmt.Fprintf(w, "\nWhat became of it\n  Run: %s, %s\n  Place: %s\n  Runner: %s %s\n  Time: %s\n  Status: %s", course, date, position, runner, name, clockOrDash(ms), status)
		if doubt != "" {
			fmt.Fprintf(w, " (%s)", doubt)
		}
		fmt.Fprintf(w, "\n  Taking part as: %s\n", part)
		rule := ""
		if r := pl.Settings.AgeRule(); r.Reckoning != age.ByDay {
			rule = " (" + strings.TrimSuffix(r.Words(), ".") + ")"
		}
		switch {
		case lo < 0:
			fmt.Fprintln(w, "  Age on the day: not known")
		case lo == hi:
			fmt.Fprintf(w, "  Age on the day: %d, group %s%s\n", lo, group, rule)
		default:
			fmt.Fprintf(w, "  Age on the day: %d to %d, from all sheets of this runner %s%s\n", lo, hi, group, rule)
		}
		fmt.Fprintf(w, "  Counts as a run: %s; for times and bests: %s\n", yesNo(run), yesNo(time))
	}
	if err := rows.Err(); err != nil {
		return n, err
	}
	for _, settled := range []bool{false, true} {
		problems, err := pl.Problems(ctx, e.Path, settled)
		if err != nil {
			return n, err
		}
		for _, p := range problems {
			switch {
			case p.Place.Row != row:
			case settled:
				fmt.Fprintf(w, "  %s (%s)\n", p, p.Why)
			default:
				fmt.Fprintf(w, "  %s\n", p)
			}
		}
	}
	return n, nil
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// Settled is a problem that needs no look any more.
type Settled struct {
	place.Problem
	Why string // why it needs none; "" where it still does
}

// Problems lists the problems of one sheet, or of all for "", worst first:
// those that need a look, with settled those that need none any more.
func (pl *Pipeline) Problems(ctx context.Context, sheetPath string, settled bool) ([]Settled, error) {
	return pl.problemsWhere(ctx, "(? = '' or p.sheet = ?) and (p.settled <> '') = ?", sheetPath, sheetPath, settled)
}

// problemsWhere lists those problems p that a condition holds for, worst first.
func (pl *Pipeline) problemsWhere(ctx context.Context, where string, args ...any) ([]Settled, error) {
	rows, err := pl.DB.QueryContext(ctx, `select coalesce(p.sheet, ''), p.tab, p.row_number, p.column_letter,
			case p.severity when 'waits' then 1 when 'doubtful' then 2 when 'look' then 3 else 4 end::utinyint as rank, p.kind, p.read, p.expected, p.todo, p.settled, p.answers
		from main.problems p
		where `+where+`
		order by rank, p.sheet_no desc, p.kind, p.tab, p.row_number, p.column_letter, p.read`, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var out []Settled
	for rows.Next() {
		var p Settled
		if err := rows.Scan(&p.Place.Sheet, &p.Place.Tab, &p.Place.Row, &p.Place.Column, &p.Severity, &p.Kind, &p.Read, &p.Expected, &p.Do, &p.Why, &p.Answers); err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	return out, rows.Err()
}

// headingWords is a heading as it is said of a column.
func headingWords(heading string) string {
	if heading == "" {
		return "(no heading)"
	}
	return strconv.Quote(heading)
}

// inBrackets is a reason behind what it is the reason of, if there is one.
func inBrackets(why string) string {
	if why == "" {
		return ""
	}
	return " (" + why + ")"
}
