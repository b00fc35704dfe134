package pipeline

import (
	"context"
	"fmt"

	"github.com/apache/arrow/go/v17/arrow"

	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/store"
)

// lineFacts is what a line is, as far as a decision can change it elsewhere
// than on its own line. Estimates of the model are left out: they all move a
// little.
type lineFacts struct {
	runner, timeMS                           int32
	status, counts, sex, takingPart, group   uint8
	ageLow, ageHigh                          int16
	pb, courseBest                           bool
	newcomer, visitor                        uint8
	milestone, runsTotal, attendance, streak int32
}

// linesFacts gives the facts of any line before and after. Only lines that
// differ are held.
type linesFacts struct {
	w       *work
	at      []int32 // place of a line in people.order, -1
	differs map[int]lineFacts
}

// after gives the facts of a line as worked out.
func (x *linesFacts) after(i int) lineFacts {
	w, f := x.w, x.w.field
	o := lineFacts{runner: f.runner[i], timeMS: f.timeMS[i], status: f.status[i], counts: f.counts[i], takingPart: f.takingPart[i],
		sex: uint8(f.sexOf(w.people, i)), ageLow: w.figures.ageLow[i], ageHigh: w.figures.ageHigh[i], group: w.figures.group[i]}
	if k := x.at[i]; k >= 0 {
		h := w.figures.history
		o.pb, o.courseBest = h.Mark[k]&history.PB != 0, h.Mark[k]&history.CourseBest != 0
		o.newcomer, o.visitor = uint8(h.Newcomer[k]), uint8(h.Visitor[k])
		o.milestone, o.runsTotal, o.attendance, o.streak = h.Milestone[k], h.RunsTotal[k], h.Attendance[k], h.PBStreak[k]
	}
	return o
}

// before gives the facts of a line as they stand.
func (x *linesFacts) before(i int) lineFacts {
	if b, ok := x.differs[i]; ok {
		return b
	}
	return x.after(i)
}

// facts compares every line with what is stored.
func (pl *Pipeline) facts(ctx context.Context, w *work) (*linesFacts, error) {
	f := w.field
	x := &linesFacts{w: w, at: make([]int32, f.n), differs: map[int]lineFacts{}}
	top := int32(0)
	for i, n := range f.lineNo {
		top = max(top, n)
		x.at[i] = -1
	}
	for k, l := range w.people.order {
		x.at[l] = int32(k)
	}
	index := make([]int32, top+1)
	for i, n := range f.lineNo {
		index[n] = int32(i)
	}
	var n [9][]int32
	var b [9][]uint8
	err := pl.DB.Scan(ctx, `select r.line_no, r.runner_no, r.time_ms, coalesce(i.milestone, 0)::integer, coalesce(i.runs_total, 0)::integer,
			coalesce(i.attendance_streak, 0)::integer, coalesce(i.pb_streak, 0)::integer,
			coalesce(r.age_low::integer, -1)::integer, coalesce(r.age_high::integer, -1)::integer,
			r.status, r.counts, r.sex, r.taking_part, coalesce(i.newcomer, 0)::utinyint, coalesce(i.visitor, 0)::utinyint,
			coalesce(i.is_pb::utinyint, 0)::utinyint, coalesce(i.is_course_best::utinyint, 0)::utinyint, coalesce(r.group_age, 255)::utinyint
		from record.result r left join insight.result i on i.line_no = r.line_no`, func(r arrow.Record) error {
		for c := range n {
			n[c] = store.AppendInt32(n[c][:0], r.Column(c))
		}
		for c := range b {
			b[c] = store.AppendUint8(b[c][:0], r.Column(9+c))
		}
		for k, line := range n[0] {
			if line > top {
				return fmt.Errorf("line %d is not among those read", line)
			}
			i := int(index[line])
			was := lineFacts{runner: n[1][k], timeMS: n[2][k], milestone: n[3][k], runsTotal: n[4][k], attendance: n[5][k], streak: n[6][k],
				ageLow: int16(n[7][k]), ageHigh: int16(n[8][k]),
				status: b[0][k], counts: b[1][k], sex: b[2][k], takingPart: b[3][k], newcomer: b[4][k], visitor: b[5][k],
				pb: b[6][k] != 0, courseBest: b[7][k] != 0, group: b[8][k]}
			if was != x.after(i) {
				x.differs[i] = was
			}
		}
		return nil
	})
	return x, err
}
