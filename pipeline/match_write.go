package pipeline

import (
	"context"
	"fmt"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record/who"
	"lapwing/pipeline/store"
)

// reviewTables are the tables of the review list; a refresh fills them.
var reviewTables = []string{"record.linkage", "record.weight", "record.doubtful_pair", "record.evidence",
	"record.piece", "record.namesake", "record.namesake_line", "record.thin_line", "record.contradiction"}

// reviewLength is how many doubtful pairs are kept: what a small group of
// people can decide on in an evening or two, growing with the archive.
func reviewLength(runners int) int { return max(50, runners/50) }

// evidenceNames are the columns under which evidence is shown.
var evidenceNames = map[who.Evidence]string{
	who.Prior: "start", who.GivenName: "name", who.FamilyName: "name", who.NewSurname: "name", who.Number: "number", who.NumberTurns: "number",
	who.Birth: "age", who.Unplaced: "age", who.Sex: "sex", who.Club: "club", who.Course: "courses", who.Pace: "times",
	who.SameRun: "days", who.TakeTurns: "days",
}

// worthAsking says whether a doubtful pair may be more than a coincidence, or
// would settle so many lines that it should be asked all the same.
func worthAsking(p who.Pair) bool { return p.Chance >= .01 || p.Gain >= 5 }

func evidenceName(e who.Evidence) string {
	if n, ok := evidenceNames[e]; ok {
		return n
	}
	return "other"
}

// writeReview keeps what is doubtful about who is who, so that it can be
// listed without linking again.
func (pl *Pipeline) writeReview(ctx context.Context, w *work) error {
	for _, t := range reviewTables {
		if err := pl.DB.Exec(ctx, "delete from "+t); err != nil {
			return err
		}
	}
	r := w.link.result
	if r == nil {
		return nil
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return err
	}
	latest := 0
	for _, e := range ledger {
		latest = max(latest, e.Seq)
	}
	if err := pl.writeLinkage(ctx, r, latest); err != nil {
		return err
	}
	if err := pl.writeWeights(ctx, r); err != nil {
		return err
	}
	if err := pl.writePairs(ctx, w); err != nil {
		return err
	}
	if err := pl.writePieces(ctx, w); err != nil {
		return err
	}
	if err := pl.writeAskedLines(ctx, w); err != nil {
		return err
	}
	return pl.writeContradictions(ctx, r)
}

func (pl *Pipeline) writeLinkage(ctx context.Context, r *who.Result, latest int) error {
	schema := store.Columns("lines", store.Int32, "runners", store.Int32, "signatures", store.Int32, "pairs", store.Int32, "joins", store.Int32,
		"join_bits", store.Float64, "review_bits", store.Float64, "learned", store.Bool, "matches", store.Float64,
		"doubtful", store.Int32, "latest_sheet", store.Int32)
	join, review := r.Thresholds()
	return pl.insertRows(ctx, "record.linkage", schema, 1, func(row row, _ int) {
		c := r.Counts
		row.ints(0, int32(c.Rows), int32(r.Runners), int32(c.Signatures), int32(c.Pairs), int32(c.Joins))
		row.numbers(5, join, review)
		row.yesNo(7, r.Weights.Learned)
		row.numbers(8, r.Weights.Matches)
		row.ints(9, int32(len(r.Doubtful)), int32(latest))
	})
}

// writePairs keeps the head of the list of doubtful pairs with the evidence on
// each. The older number comes first.
func (pl *Pipeline) writePairs(ctx context.Context, w *work) error {
	r, number := w.link.result, w.link.number
	var list []who.Pair
	for _, p := range r.Doubtful {
		if len(list) < reviewLength(r.Runners) && worthAsking(p) {
			list = append(list, p)
		}
	}
	schema := store.Columns("pair", store.Int32, "first_no", store.Int32, "second_no", store.Int32,
		"bits", store.Float64, "chance", store.Float64, "gain", store.Float64)
	err := pl.insertRows(ctx, "record.doubtful_pair", schema, len(list), func(row row, i int) {
		p := list[i]
		a, b := number[p.A], number[p.B]
		row.ints(0, int32(i+1), min(a, b), max(a, b))
		row.numbers(3, p.Bits, p.Chance, p.Gain)
	})
	if err != nil {
		return err
	}
	type part struct {
		pair, part int32
		why        who.Reason
	}
	var parts []part
	for i, p := range list {
		for k, why := range r.Explain(p.A, p.B).Reasons {
			parts = append(parts, part{int32(i + 1), int32(k + 1), why})
		}
	}
	schema = store.Columns("pair", store.Int32, "part", store.Int32, "evidence", store.Text, "words", store.Text, "bits", store.Float64)
	return pl.insertRows(ctx, "record.evidence", schema, len(parts), func(row row, i int) {
		p := parts[i]
		row.ints(0, p.pair, p.part)
		row.texts(2, evidenceName(p.why.Evidence), p.why.Words)
		row.numbers(4, p.why.Bits)
	})
}

// writePieces keeps the runners of whom several may be one person.
func (pl *Pipeline) writePieces(ctx context.Context, w *work) error {
	r, number := w.link.result, w.link.number
	type piece struct {
		question, runner int32
		chance           float64
	}
	var list []piece
	for q, g := range r.Groups[:min(len(r.Groups), reviewLength(r.Runners))] {
		for i, x := range g.Runners {
			list = append(list, piece{int32(q + 1), number[x], g.Chance[i]})
		}
	}
	schema := store.Columns("question", store.Int32, "runner_no", store.Int32, "chance", store.Float64)
	return pl.insertRows(ctx, "record.piece", schema, len(list), func(row row, i int) {
		row.ints(0, list[i].question, list[i].runner)
		row.numbers(2, list[i].chance)
	})
}

// writeAskedLines keeps the lines that belong to one of several namesakes, and
// those that fit their runner badly.
func (pl *Pipeline) writeAskedLines(ctx context.Context, w *work) error {
	f, r, number := w.field, w.link.result, w.link.number
	most := reviewLength(r.Runners)
	decided := map[int32]bool{} // lines that somebody has given to a runner or taken from one
	var single []Decision
	for _, d := range w.decisions {
		if d.aboutPeople() && d.Runner == "" {
			single = append(single, d)
		}
	}
	for _, lines := range f.linesOf(single) {
		for _, i := range lines {
			decided[int32(i)] = true
		}
	}
	questions := r.Questions[:min(len(r.Questions), most)]
	type pair struct{ of, value int32 }
	var sakes, lines []pair
	for q := range questions {
		for _, x := range questions[q].Runners {
			sakes = append(sakes, pair{int32(q + 1), number[x]})
		}
		for _, k := range questions[q].Rows {
			if !decided[w.link.rows[k]] {
				lines = append(lines, pair{int32(q + 1), f.lineNo[w.link.rows[k]]})
			}
		}
	}
	for _, t := range []struct {
		table, column string
		rows          []pair
	}{{"record.namesake", "runner_no", sakes}, {"record.namesake_line", "line_no", lines}} {
		schema := store.Columns("question", store.Int32, t.column, store.Int32)
		if err := pl.insertRows(ctx, t.table, schema, len(t.rows), func(row row, i int) { row.ints(0, t.rows[i].of, t.rows[i].value) }); err != nil {
			return err
		}
	}
	splits := r.Splits[:min(len(r.Splits), most)]
	type line struct {
		fit, runner, line int32
		bits              float64
	}
	var fits []line
	for i, t := range splits {
		for _, k := range t.Rows {
			if decided[w.link.rows[k]] {
				continue
			}
			fits = append(fits, line{int32(i + 1), number[t.Runner], f.lineNo[w.link.rows[k]], t.Bits})
		}
	}
	schema := store.Columns("fit", store.Int32, "runner_no", store.Int32, "line_no", store.Int32, "bits", store.Float64)
	return pl.insertRows(ctx, "record.thin_line", schema, len(fits), func(row row, i int) {
		row.ints(0, fits[i].fit, fits[i].runner, fits[i].line)
		row.numbers(3, fits[i].bits)
	})
}

// contradictionProblems asks the desk about decisions on people that others
// contradict.
func (w *work) contradictionProblems() []storedProblem {
	f := w.field
	at := map[int64]int32{}
	for _, c := range w.link.result.Contradictions {
		at[c.Decision.A] = -1
	}
	if len(at) == 0 {
		return nil
	}
	for _, i := range w.link.rows {
		if _, ok := at[f.key[i]]; ok {
			at[f.key[i]] = i
		}
	}
	var out []storedProblem
	for _, c := range w.link.result.Contradictions {
		i := at[c.Decision.A]
		p := &f.parts[f.part[i]-1]
		out = append(out, storedProblem{place.Problem{Place: place.Place{Sheet: p.path, Tab: p.tab, Row: int(f.row[i])}, Severity: place.Look,
			Kind: "decision-contradicted", Read: c.Message, Do: fmt.Sprintf("Take one of them back: lapwing match undo %d, or the other.", decisionOf(c.Decision.Ref))}, p.sheetNo, f.run[i]})
	}
	return out
}

func (pl *Pipeline) writeContradictions(ctx context.Context, r *who.Result) error {
	schema := store.Columns("decision", store.Int32, "words", store.Text)
	return pl.insertRows(ctx, "record.contradiction", schema, len(r.Contradictions), func(row row, i int) {
		c := r.Contradictions[i]
		row.ints(0, decisionOf(c.Decision.Ref))
		row.texts(1, c.Message)
	})
}
