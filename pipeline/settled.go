package pipeline

import (
	"context"
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
// and a day where the decision says so. Sheets that come later are looked at
// anew.
type acceptance struct {
	kind     string
	from, to int
}

func (a acceptance) String() string {
	return fmt.Sprintf("%s, sheets %d to %d", a.kind, a.from, a.to)
}

func parseAcceptance(s string) (a acceptance, err error) {
	kind, rest, ok := strings.Cut(s, ", sheets ")
	from, to, ok2 := strings.Cut(rest, " to ")
	a.kind = kind
	var err1, err2 error
	a.from, err1 = strconv.Atoi(from)
	a.to, err2 = strconv.Atoi(to)
	if !ok || !ok2 || err1 != nil || err2 != nil || kind == "" || a.from > a.to {
		return a, fmt.Errorf("accepted problem %q: write it as in %q", s, acceptance{"time-read-as", 1, 118})
	}
	return a, nil
}

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
		a, err := parseAcceptance(d.Value)
		if err != nil {
			return err
		}
		date := ""
		if d.Date != 0 {
			date = d.Date.String()
		}
		if err := pl.DB.Exec(ctx, `insert into sheet.settled
			select distinct p.sheet_no, p.tab, p.row_number, p.column_letter, p.kind, p.read, ?
			from sheet.problem p
			left join record.run run on run.run_no = p.run_no
			left join record.course c on c.course_no = run.course_no
			where p.kind = ? and p.severity > ? and p.sheet_no between ? and ? and (? = '' or c.course = ?) and (? = '' or run.run_date::varchar = ?)`,
			acceptedWords(d), a.kind, int(place.Waits), a.from, a.to, d.Course, d.Course, date, date); err != nil {
			return err
		}
	}
	// of the sheets whose lines a later one of the run has taken the place of
	return pl.DB.Exec(ctx, fmt.Sprintf(`insert into sheet.settled
		select distinct p.sheet_no, p.tab, p.row_number, p.column_letter, p.kind, p.read, 'a later sheet stands for this run'
		from sheet.problem p
		where p.kind <> 'new-issue' and p.run_no in (select run_no from sheet.problem where kind = 'new-issue')
			and exists (select 1 from record.line l join sheet.part t on t.part_no = l.part_no where l.run_no = p.run_no and t.sheet_no = p.sheet_no)
			and not exists (select 1 from record.line l join sheet.part t on t.part_no = l.part_no join record.result r on r.line_no = l.line_no
				where l.run_no = p.run_no and t.sheet_no = p.sheet_no and r.status <> %d)`, record.Superseded))
}

func acceptedWords(d Decision) string {
	s := fmt.Sprintf("accepted (decision %d)", d.ID)
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
	v := acceptance{kind: strings.ReplaceAll(strings.ToLower(strings.TrimSpace(a.Kind)), " ", "-"), from: 1}
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
	if !slices.Contains(kinds, v.kind) {
		if len(kinds) == 0 {
			return d, 0, fmt.Errorf("nothing needs a look: there is nothing to accept")
		}
		return d, 0, fmt.Errorf("no problem of the kind %q needs a look; there are: %s", a.Kind, strings.Join(kinds, ", "))
	}
	d.Value = v.String()
	stamp, err := pl.figuresStamp()
	if err != nil {
		return d, 0, err
	}
	current, err := pl.state(ctx, "figures")
	if err != nil {
		return d, 0, err
	}
	kept, err := pl.AppendDecisions([]Decision{d})
	if err != nil {
		return d, 0, err
	}
	d = kept[0]
	if current != stamp { // figures were behind already
		if _, err := pl.Refresh(ctx, false); err != nil {
			return d, 0, err
		}
	} else if err := pl.noteAccepted(ctx); err != nil {
		return d, 0, err
	}
	left, err := pl.Problems(ctx, "", false)
	return d, len(open) - len(left), err
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
