package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// Mark is how far the archive has got: the id of its last decision and the
// number of lines of the ledger of sheets. Both are only ever appended to, so a
// mark holds after a rebuild as well.
type Mark struct{ Decision, Ledger int }

// Event is something done to the archive that can change a report: a decision,
// or a sheet that came, went or came back.
type Event struct {
	Decision int      // id of the decision, 0: a sheet
	Undoes   int      // id of the decision that this one takes back, 0: none
	Ledger   int      // line of the ledger, from 1; 0: a decision
	Runs     []RunRef // that it is about; a session "" stands for any of the day. None: of no run in particular
	Runners  []string // ids of whom it is about
	// Public says what was done without a name or what a person is, of a sheet
	// only what became of it ("was loaded on 4 January 2026"); Desk says it in
	// full, with who decided. Neither gives a name that was settled.
	Public, Desk string
}

// ledgerTable and ledgerLines are the columns of the ledger that tell what
// happened to a sheet, one line after the other.
const ledgerTable = "sheets/ledger.csv"

var ledgerLines = []string{"seq", "hash", "path", "loaded_at", "state"}

// Mark reads how far the archive has got.
func (pl *Pipeline) Mark() (m Mark, err error) {
	all, err := pl.allDecisions()
	if err != nil {
		return m, err
	}
	for _, d := range all {
		m.Decision = max(m.Decision, d.ID)
	}
	rows, err := pl.Archive.ReadList(ledgerTable, ledgerLines)
	m.Ledger = len(rows)
	return m, err
}

// Events lists what was done to the archive after a mark: sheets in order of
// the ledger, then decisions in order of their ids. It looks at the lines of
// sheets that have come since and of those that decisions name, at no others.
func (pl *Pipeline) Events(ctx context.Context, since Mark) ([]Event, error) {
	sheets, err := pl.sheetEvents(ctx, since)
	if err != nil {
		return nil, err
	}
	decided, err := pl.decisionEvents(ctx, since)
	return append(sheets, decided...), err
}

func (pl *Pipeline) sheetEvents(ctx context.Context, since Mark) ([]Event, error) {
	rows, err := pl.Archive.ReadList(ledgerTable, ledgerLines)
	if err != nil || len(rows) <= since.Ledger {
		return nil, err
	}
	var out []Event
	var seqs []int
	state := map[string]string{}
	for i, r := range rows {
		was, now := state[r[0]], r[4]
		state[r[0]] = now
		if i < since.Ledger {
			continue
		}
		seq, err := strconv.Atoi(r[0])
		if err != nil {
			return nil, fmt.Errorf("%s: %w; restore this file from a backup", pl.Archive.At(ledgerTable, i), err)
		}
		did, on := "", ""
		switch {
		case now == string(store.Loaded) && (was == "" || was == string(store.Waiting)):
			did = "was loaded"
			if t, err := time.Parse(time.RFC3339, r[3]); err == nil && was == "" {
				on = " on " + t.UTC().Format("2 January 2006")
			}
		case now == string(store.Loaded) && was == string(store.Withdrawn):
			did = "was restored"
		case now == string(store.Loaded):
			did = "was read in another way"
		case now == string(store.Withdrawn) && was == string(store.Loaded):
			did = "was withdrawn"
		default:
			continue // it waits, and no report says anything of it
		}
		out = append(out, Event{Ledger: i + 1, Public: did + on, Desk: "the sheet " + r[2] + " " + did + on})
		seqs = append(seqs, seq)
	}
	of, err := pl.runsOfSheets(ctx, seqs)
	for i := range out {
		out[i].Runs = of[seqs[i]]
	}
	return out, err
}

// runsOfSheets gives the runs that sheets are of, by place in the ledger: from
// the database, or from the copy where the sheet was withdrawn.
func (pl *Pipeline) runsOfSheets(ctx context.Context, seqs []int) (map[int][]RunRef, error) {
	of := map[int][]RunRef{}
	if len(seqs) == 0 {
		return of, nil
	}
	want := map[int]bool{}
	for _, s := range seqs {
		want[s] = true
	}
	sheetOf := map[int32]int{}
	least, most := int32(0), int32(0)
	err := pl.each(ctx, fmt.Sprintf("select part_no, sheet_no from sheet.part where sheet_no between %d and %d order by part_no", slices.Min(seqs), slices.Max(seqs)), func(rows *sql.Rows) error {
		var part int32
		var seq int
		if err := rows.Scan(&part, &seq); err != nil {
			return err
		}
		if want[seq] {
			sheetOf[part] = seq
			if least == 0 {
				least = part
			}
			most = part
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	add := func(seq int, r RunRef) {
		if !slices.Contains(of[seq], r) {
			of[seq] = append(of[seq], r)
		}
	}
	if len(sheetOf) > 0 {
		err := pl.each(ctx, fmt.Sprintf(`select l.part_no, c.course, run.run_date, coalesce(run.session, '')
			from (select distinct part_no, run_no from record.line where part_no between %d and %d) l
			join record.run run on run.run_no = l.run_no
			join record.course c on c.course_no = run.course_no
			order by l.part_no, run.run_no`, least, most), func(rows *sql.Rows) error {
			var part int32
			var course, session string
			var day time.Time
			if err := rows.Scan(&part, &course, &day, &session); err != nil {
				return err
			}
			if seq, ok := sheetOf[part]; ok {
				add(seq, runRef(course, unit.DayOf(day), session))
			}
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	for _, e := range ledger {
		if !want[e.Seq] || e.State != store.Withdrawn {
			continue
		}
		for _, k := range pl.runsOfCopy(e) {
			add(e.Seq, runRef(k.course.course, k.day, k.session))
		}
	}
	return of, nil
}

// decidedLine is what a line is now that a decision names.
type decidedLine struct {
	run    RunRef
	place  int32
	runner int32
}

func (pl *Pipeline) decisionEvents(ctx context.Context, since Mark) ([]Event, error) {
	all, err := pl.allDecisions()
	if err != nil {
		return nil, err
	}
	byID := map[int]Decision{}
	var named []Decision
	for _, d := range all {
		byID[d.ID] = d
		if d.ID <= since.Decision {
			continue
		}
		if d.Kind == DecideTakeBack {
			id, _ := strconv.Atoi(d.Value)
			named = append(named, byID[id])
		}
		named = append(named, d)
	}
	lines, err := pl.decidedLines(ctx, named)
	if err != nil {
		return nil, err
	}
	var out []Event
	for _, d := range all {
		if d.ID <= since.Decision {
			continue
		}
		about, e := d, Event{Decision: d.ID}
		if d.Kind == DecideTakeBack {
			e.Undoes, _ = strconv.Atoi(d.Value)
			about = byID[e.Undoes]
		}
		at := ""
		for _, l := range lines[lineRef{about.Sheet, about.Tab, about.Row}] {
			if about.Sheet == "" {
				break
			}
			e.Runs = append(e.Runs, l.run)
			if l.runner > 0 {
				e.Runners = append(e.Runners, "R"+itoa(l.runner))
			}
			if l.place > 0 && at == "" {
				at = "place " + itoa(l.place) + ", "
			}
		}
		if about.Sheet == "" && about.Course != "" && about.Date != 0 {
			e.Runs = []RunRef{runRef(pl.courses.resolve(about.Course), about.Date, about.Session)}
		}
		for _, id := range []string{about.Runner, about.Value} {
			if _, ok := runnerNumber(id); ok {
				e.Runners = append(e.Runners, id)
			}
		}
		public, desk := about.saidOf()
		if d.Kind == DecideTakeBack {
			public, desk = public+", taken back", desk+fmt.Sprintf(", decision %d, taken back", about.ID)
		}
		if about.aboutRunner() {
			at = "" // a wish about how somebody is shown tells nobody whose it is
		}
		when, by := "", ""
		if !d.When.IsZero() {
			when = ", " + d.When.UTC().Format("2 January 2006")
		}
		if d.By != "" {
			by = ", by " + d.By
		}
		e.Public = at + public + strings.Replace(when, ", ", " on ", 1)
		e.Desk = fmt.Sprintf("%s%s (decision %d%s%s)", at, desk, d.ID, when, by)
		out = append(out, e)
	}
	return out, nil
}

// aboutRunner says whether a decision is about a person over all history.
func (d Decision) aboutRunner() bool {
	switch d.Kind {
	case DecidePrintName, DecideCategory, DecideHide, DecideEarlierRuns, DecideEarlierBest:
		return true
	}
	return false
}

// saidOf says what was decided: for everybody, without what a person is; and
// for the desk, without names.
func (d Decision) saidOf() (public, desk string) {
	one := func(s string) (string, string) { return s, s }
	switch d.Kind {
	case DecideClaim:
		return one("an unnamed place was claimed")
	case DecideTime:
		return one("time corrected to " + d.Value)
	case DecidePlace:
		return one("place corrected to " + d.Value)
	case DecideName:
		return one("name corrected")
	case DecideClub:
		return "club corrected", "club corrected to " + d.Value
	case DecideSex:
		return "entry corrected", "sex corrected to " + d.Value
	case DecideGroup:
		return "entry corrected", "age group corrected to " + d.Value
	case DecideTakingPart:
		return "entry corrected", "taking part as " + d.Value
	case DecideStatus:
		return "entry corrected", "set to " + d.Value
	case DecideExchange:
		return one("the names of two places were exchanged")
	case DecideRecord:
		return one("result looked at as a record: " + d.Value)
	case DecideSame:
		return "who ran was settled", "settled to be the same person"
	case DecideDifferent:
		return "who ran was settled", "settled to be different people"
	case DecidePrintName, DecideCategory, DecideHide:
		return "how somebody is shown was changed", "how a runner is shown was changed (" + d.Kind + ")"
	case DecideEarlierRuns, DecideEarlierBest:
		return "what somebody had run before the sheets was entered", "what a runner had run before the sheets was entered (" + d.Kind + ")"
	case DecideClubName:
		return "two names of a club were found to be one club's", "names of one club: " + d.Value
	case DecideOtherClub:
		return "two clubs were told apart", "two clubs: " + d.Value
	case DecideRunState:
		return one("state of the run: " + d.Value)
	case DecideAccept:
		return "a point to check was settled", "accepted: " + d.Value
	}
	return one(d.Kind)
}

// decidedLines finds the lines that decisions name, as they are now: several
// where tables stand side by side. Those of sheets that are not loaded are
// missing.
func (pl *Pipeline) decidedLines(ctx context.Context, ds []Decision) (map[lineRef][]decidedLine, error) {
	out := map[lineRef][]decidedLine{}
	hashes, rowNumbers := map[string]bool{}, map[int]bool{}
	for _, d := range ds {
		if d.Sheet != "" {
			hashes[d.Sheet], rowNumbers[d.Row] = true, true
		}
	}
	if len(hashes) == 0 {
		return out, nil
	}
	type part struct{ hash, tab string }
	parts := map[int32]part{}
	err := pl.each(ctx, "select p.part_no, s.hash, coalesce(p.tab, '') from sheet.part p join sheet.sheet s on s.sheet_no = p.sheet_no", func(rows *sql.Rows) error {
		var no int32
		var p part
		err := rows.Scan(&no, &p.hash, &p.tab)
		if hashes[p.hash] {
			parts[no] = p
		}
		return err
	})
	if err != nil || len(parts) == 0 {
		return out, err
	}
	list := func(numbers []string) string { return strings.Join(numbers, ", ") }
	var nos, rowNos []string
	for _, no := range slices.Sorted(maps.Keys(parts)) {
		nos = append(nos, itoa(no))
	}
	for _, no := range slices.Sorted(maps.Keys(rowNumbers)) {
		rowNos = append(rowNos, strconv.Itoa(no))
	}
	err = pl.each(ctx, fmt.Sprintf(`select l.part_no, l.row_number, c.course, run.run_date, coalesce(run.session, ''), coalesce(r.position, l.position), coalesce(r.runner_no, 0)
		from (select * from record.line where part_no in (%[1]s) and row_number in (%[2]s)) l
		join record.run run on run.run_no = l.run_no
		join record.course c on c.course_no = run.course_no
		left join (select line_no, position, runner_no from record.result where part_no in (%[1]s)) r on r.line_no = l.line_no
		order by l.part_no, l.line_no`, list(nos), list(rowNos)), func(rows *sql.Rows) error {
		var no int32
		var row int
		var l decidedLine
		var course, session string
		var day time.Time
		if err := rows.Scan(&no, &row, &course, &day, &session, &l.place, &l.runner); err != nil {
			return err
		}
		l.run = runRef(course, unit.DayOf(day), session)
		k := lineRef{parts[no].hash, parts[no].tab, row}
		out[k] = append(out[k], l)
		return nil
	})
	return out, err
}
