package pipeline

import (
	"context"
	"database/sql"

	"lapwing/pipeline/store"
)

// leftOutSheets are the sheets that are loaded and left out until somebody says of which
// run they are. What is said of such a sheet by loading it again answers it, at once.
func (pl *Pipeline) leftOutSheets(ctx context.Context) (map[int]bool, error) {
	out := map[int]bool{}
	if pl.DB == nil {
		return out, nil
	}
	return out, pl.each(ctx, "select distinct sheet_no from main.problems where kind in ('"+anotherField+"', '"+resultsCopied+"') and settled = ''", func(rows *sql.Rows) error {
		var no int
		err := rows.Scan(&no)
		out[no] = true
		return err
	})
}

// askedSheets are those, and the sheets that are loaded and about which something is
// asked that can be answered with them. A load of one file that says something is such
// an answer.
func (pl *Pipeline) askedSheets(ctx context.Context, files int) (map[int]bool, error) {
	if files != 1 || pl.DB == nil {
		return pl.leftOutSheets(ctx)
	}
	out := map[int]bool{}
	return out, pl.each(ctx, "select distinct sheet_no from main.problems where answers <> '' and settled = ''", func(rows *sql.Rows) error {
		var no int
		err := rows.Scan(&no)
		out[no] = true
		return err
	})
}

// takeOutAnswered takes sheets that are asked about, and of which something is said now,
// out of the database: they are loaded anew. Cut short in between, the next start
// loads them as the ledger says.
func (l *loading) takeOutAnswered(ctx context.Context) error {
	for i := range l.results {
		r := &l.results[i]
		e, seen := l.known[r.hash]
		if r.err != nil || r.parsed == nil || !seen || e.State != store.Loaded || r.parsed.waits() {
			continue
		}
		if err := l.pl.dropSheet(ctx, e.Seq); err != nil {
			return err
		}
		e.State = store.Withdrawn
		l.known[r.hash] = e
	}
	return nil
}

// answerAlike loads sheets anew that were left out and that by their names are of a race
// of which somebody has said, of another sheet, what it is: one answer for all weeks.
func (l *loading) answerAlike(ctx context.Context) error {
	pl := l.pl
	left, err := pl.leftOutSheets(ctx)
	if err != nil || len(left) == 0 {
		return err
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return err
	}
	answers := pl.remember(ledger)
	for _, e := range ledger {
		if !left[e.Seq] || e.State != store.Loaded {
			continue
		}
		now, err := pl.parseCopy(e)
		if err != nil {
			return err
		}
		if err := answers.lookUp(ctx, []*parsedSheet{now}); err != nil {
			return err
		}
		race, ok := answers.raceOf(now, handOf(e))
		if !ok {
			continue
		}
		hand := handOf(e).withRace(race)
		e.Session, e.Distance, e.Answers = hand.Session, hand.Distance, hand.Answers
		if now, err = pl.parseCopy(e); err != nil || now.waits() {
			continue // as it was
		}
		if err := pl.dropSheet(ctx, e.Seq); err != nil {
			return err
		}
		if err := pl.Archive.Keep([]store.Incoming{{Entry: e}}); err != nil {
			return err
		}
		if err := pl.writeSheets(ctx, []*parsedSheet{now}); err != nil {
			return err
		}
		l.rep.Loaded++
		l.rep.Rows += now.rows()
		l.rep.Sheets = append(l.rep.Sheets, SheetReport{Path: e.Path, State: "loaded", Rows: now.rows(), Runs: now.runNames(), Problems: now.problems, Counts: now.counts(), Settled: settledByOthers(now.problems), seq: e.Seq})
	}
	return nil
}
