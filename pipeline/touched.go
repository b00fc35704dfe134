package pipeline

import (
	"context"
	"maps"
	"slices"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/store"
)

// reportedFacts are the facts about a line that weekly reports rest on, as in
// factsOfRuns. Ages not known are noAge.
type reportedFacts struct {
	there, pb, courseBest                                   bool
	status, counts, takingPart, sex, ageLow, ageHigh, group uint8
	newcomer, visitor                                       uint8
	runner, timeMS, milestone                               int32
}

const noAge = 255

// touched gives the runs of lines whose facts a refresh of some lines changes.
// It belongs before the writing; what runners are called is compared after it
// (noteTouched).
func (pl *Pipeline) touched(ctx context.Context, w *work) (map[int32]bool, error) {
	f, p, fig, was := w.field, w.people, &w.figures, w.field.some.was
	at := f.byLineNo()
	if err := pl.pick(ctx, f.lineNo); err != nil {
		return nil, err
	}
	err := pl.DB.Scan(ctx, `select line_no, milestone, newcomer, visitor, is_pb::utinyint, is_course_best::utinyint
		from insight.result where line_no in (select number from picked)`, func(r arrow.Record) error {
		whole, _, small := cells(r)
		for k := range int(r.NumRows()) {
			x := &was[at[whole(0, k)]]
			x.milestone = whole(1, k)
			x.newcomer, x.visitor, x.pb, x.courseBest = small(2, k), small(3, k), small(4, k) == 1, small(5, k) == 1
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	now := make([]reportedFacts, f.n)
	for i := range now {
		now[i] = reportedFacts{there: true, runner: f.runner[i], timeMS: f.timeMS[i], status: f.status[i], counts: f.counts[i], takingPart: f.takingPart[i],
			sex: uint8(f.sexOf(p, i)), ageLow: uint8(fig.ageLow[i]), ageHigh: uint8(fig.ageHigh[i]), group: fig.group[i]}
	}
	h := fig.history
	for o, l := range p.order {
		x := &now[l]
		x.milestone, x.newcomer, x.visitor = h.Milestone[o], uint8(h.Newcomer[o]), uint8(h.Visitor[o])
		x.pb, x.courseBest = h.Mark[o]&history.PB != 0, h.Mark[o]&history.CourseBest != 0
	}
	runs := map[int32]bool{}
	for i := range now {
		if now[i] != was[i] {
			runs[f.run[i]] = true
		}
	}
	if err := pl.pick(ctx, p.no); err != nil {
		return nil, err
	}
	return runs, pl.DB.Exec(ctx, "create or replace temp table called as select runner_no, name, hidden, wished from record.runner where runner_no in (select number from picked)")
}

// noteTouched notes the runs, and those of runners who are now called
// otherwise.
func (pl *Pipeline) noteTouched(ctx context.Context, w *work, runs map[int32]bool) error {
	f := w.field
	if err := pl.pick(ctx, w.people.no); err != nil {
		return err
	}
	renamed := map[int32]bool{}
	if err := pl.DB.Scan(ctx, `select w.runner_no from record.runner w join called c on c.runner_no = w.runner_no
		where w.runner_no in (select number from picked) and (w.name, w.hidden, w.wished) is distinct from (c.name, c.hidden, c.wished)`, func(r arrow.Record) error {
		for _, no := range r.Column(0).(*array.Int32).Int32Values() {
			renamed[no] = true
		}
		return nil
	}); err != nil {
		return err
	}
	for i := range f.runner {
		if renamed[f.runner[i]] {
			runs[f.run[i]] = true
		}
	}
	if err := pl.DB.Scan(ctx, "select run_no from record.touched", func(r arrow.Record) error {
		for _, no := range r.Column(0).(*array.Int32).Int32Values() {
			delete(runs, no)
		}
		return nil
	}); err != nil {
		return err
	}
	list := slices.Sorted(maps.Keys(runs))
	return pl.insertRows(ctx, "record.touched", store.Columns("run_no", store.Int32), len(list), func(r row, i int) { r.ints(0, list[i]) })
}
