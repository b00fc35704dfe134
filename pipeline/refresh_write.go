package pipeline

import (
	"context"
	"maps"
	"slices"
	"strings"

	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/club"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

var resultSchema = store.Columns("line_no", store.Int32, "runner_no", store.Int32, "status", store.Uint8, "counts", store.Uint8,
	"sex", store.Uint8, "age_low", store.Uint8, "age_high", store.Uint8, "group_age", store.Uint8, "same_as", store.Int32, "doubt", store.Int32,
	"time_ms", store.Int32, "taking_part", store.Uint8, "run_no", store.Int32, "position", store.Int32, "part_no", store.Int32)

var insightSchema = store.Columns("line_no", store.Int32, "open_standard_s", store.Float64, "age_factor", store.Float64,
	"age_factor_most", store.Float64, "age_factor_least", store.Float64, "first_result", store.Bool, "runs_total", store.Int32, "milestone", store.Int32,
	"is_pb", store.Bool, "previous_best_s", store.Int32, "pb_margin_s", store.Int32, "is_course_best", store.Bool, "course_best_margin_s", store.Int32,
	"pb_streak", store.Int32, "attendance_streak", store.Int32, "attendance_since", store.Date, "newcomer", store.Uint8, "visitor", store.Uint8, "days_since_last", store.Int32,
	"adjusted_s", store.Float32, "is_adjusted_best", store.Bool, "effort", store.Uint8, "shortfall", store.Float32,
	"form_s", store.Float32, "form_low", store.Float32, "form_high", store.Float32, "runner_no", store.Int32)

// derived are the tables that a refresh fills from nothing.
var derived = []string{"record.result", "record.doubt", "record.runner", "record.alias", "record.volunteer", "record.run_state",
	"record.correction", "record.club", "record.decision", "record.member", "record.record_state", "record.held_record", "record.club_proposal",
	"record.asked", "record.touched",
	"insight.result", "insight.ranked", "insight.course", "insight.run", "insight.runner", "insight.age_group"}

// refreshProblems are the kinds of problems that a refresh raises; those of
// reading stay.
var refreshProblems = []string{"two-part-sheet", "copy", "excerpt", "excerpt-differs", "second-sheet", "new-issue", anotherField, resultsCopied, "person-twice",
	"two-claims", "decision-contradicted", "several-runners", "member-birth-date", "held-record", "opening-date", "opening-time", "codes-exchanged", nameDoubtful, otherHalfMissing, halvesDiffer, correctedOutOfOrder, exchangedAfterChange}

func (pl *Pipeline) stepWrite(ctx context.Context, w *work) error {
	if err := pl.keepIDs(w); err != nil {
		return err
	}
	look := w.field.proposeClubs(w.people, pl.Settings.clubBook(w.decisions), w.members)
	w.proposals = make(chan []club.Proposal, 1)
	go func() { w.proposals <- look() }()
	return pl.DB.Transaction(ctx, func() error {
		for _, t := range derived {
			if err := pl.DB.Exec(ctx, "delete from "+t); err != nil {
				return err
			}
		}
		if err := pl.DB.Exec(ctx, "delete from sheet.problem where kind in ('"+strings.Join(refreshProblems, "', '")+"')"); err != nil {
			return err
		}
		for _, f := range []func(context.Context, *work) error{
			pl.writeResults, pl.writeRunners, pl.writeInsight, pl.writeRanked, pl.writeSpeed, pl.writeSmallTables, pl.writeDesk, pl.writeLink, pl.writeAskedNames,
		} {
			if err := f(ctx, w); err != nil {
				return err
			}
		}
		return pl.insertProblems(ctx, w.problems)
	})
}

func (pl *Pipeline) writeResults(ctx context.Context, w *work) error {
	f, fig := w.field, &w.figures
	return pl.insertColumns(ctx, "record.result", resultSchema, f.n, func(c *fill, from, to int) {
		c.ints(f.lineNo[from:to])
		c.ints(f.runner[from:to])
		c.bytes(f.status[from:to])
		c.bytes(f.counts[from:to])
		c.bytesOf(func(k int) uint8 { return uint8(f.sexOf(w.people, from+k)) })
		c.ages(fig.ageLow[from:to], fig.ageHigh[from:to])
		c.known(fig.group[from:to], noGroup)
		c.intsOf(func(k int) int32 { return f.sameLine(from + k) })
		c.ints(f.doubt[from:to])
		c.ints(f.timeMS[from:to])
		c.bytes(f.takingPart[from:to])
		c.ints(f.run[from:to])
		c.ints(f.position[from:to])
		c.ints(f.part[from:to])
	})
}

var runnerSchema = store.Columns("runner_no", store.Int32, "name", store.Text, "name_key", store.Text, "sex", store.Uint8,
	"birth_lo", store.Date, "birth_hi", store.Date, "club", store.Text, "hidden", store.Bool, "wished", store.Bool, "may_be_child", store.Bool, "group_age", store.Uint8)

func (pl *Pipeline) writeRunners(ctx context.Context, w *work) error {
	f, p := w.field, w.people
	club := make([]int32, len(p.no))
	called := f.namesToPrint(p, club, pl.workers())
	return pl.insertRows(ctx, "record.runner", runnerSchema, len(p.no), func(r row, i int) {
		c := called(i)
		wish, named := w.wishes.name[p.no[i]]
		if named {
			c = calledAs(wish)
		}
		r.ints(0, p.no[i])
		r.texts(1, c.printed, c.key)
		r.small(3, uint8(p.sex[i]))
		r.window(4, p.window[i])
		r.texts(6, f.clubs.list[club[i]])
		_, placed := w.wishes.sex[p.no[i]]
		r.yesNo(7, w.wishes.hidden[p.no[i]])
		r.yesNo(8, named || placed)
		child := false
		for _, l := range p.order[p.begin[i]:p.begin[i+1]] {
			child = child || f.counts[l]&mayBeChild != 0
		}
		r.yesNo(9, child)
		r.smallOrNone(10, f.latestGroup(p, i), noGroup)
	})
}

func (pl *Pipeline) writeInsight(ctx context.Context, w *work) error {
	f, p, fig := w.field, w.people, &w.figures
	h, g, s := fig.history, &fig.grade, w.speed
	return pl.insertColumns(ctx, "insight.result", insightSchema, len(p.order), func(c *fill, from, to int) {
		lines, mark := p.order[from:to], h.Mark[from:to]
		is := func(m history.Mark) func(int) bool { return func(k int) bool { return mark[k]&m != 0 } }
		under := func(m history.Mark, before []int32) func(int) int32 {
			return func(k int) int32 { return margin(mark[k]&m != 0, before[from+k], unit.CeilSeconds(f.timeMS[lines[k]])) }
		}
		c.intsOf(func(k int) int32 { return f.lineNo[lines[k]] })
		for _, v := range [][]float64{g.Open, g.Factor, g.FactorMost, g.FactorLeast} {
			c.numbers(v[from:to])
		}
		c.flagsOf(is(history.FirstSeen))
		c.ints(h.RunsTotal[from:to])
		c.ints(h.Milestone[from:to])
		c.flagsOf(is(history.PB))
		c.ints(h.PreviousBestS[from:to])
		c.intsOf(under(history.PB, h.PreviousBestS))
		c.flagsOf(is(history.CourseBest))
		c.intsOf(under(history.CourseBest, h.PreviousCourseBestS))
		c.ints(h.PBStreak[from:to])
		c.ints(h.Attendance[from:to])
		c.days(h.AttendanceSince[from:to])
		c.bytes(bytesAs(h.Newcomer[from:to]))
		c.bytes(bytesAs(h.Visitor[from:to]))
		c.intsOf(func(k int) int32 { return max(0, h.DaysSince[from+k]) })
		c.singles(s.adjusted[from:to])
		c.flags(s.adjustedBest[from:to])
		c.bytes(s.effort[from:to])
		c.singles(s.shortfall[from:to])
		for band := range 3 {
			c.singlesOf(func(k int) float32 { return s.form[from+k][band] })
		}
		c.intsOf(func(k int) int32 { return f.runner[lines[k]] })
	})
}

func margin(is bool, before, time int32) int32 {
	if !is {
		return 0
	}
	return before - time
}

// writeDoubts adds the reasons for doubt from number from + 1 on.
func (pl *Pipeline) writeDoubts(ctx context.Context, list []string, from int) error {
	schema := store.Columns("doubt", store.Int32, "words", store.Text)
	return pl.insertRows(ctx, "record.doubt", schema, len(list)-1-from, func(r row, i int) {
		r.ints(0, int32(from+i+1))
		r.texts(1, list[from+i+1])
	})
}

func (pl *Pipeline) writeSmallTables(ctx context.Context, w *work) error {
	f := w.field
	if err := pl.writeDoubts(ctx, f.doubts.list, 0); err != nil {
		return err
	}
	aliasSchema := store.Columns("runner_no", store.Int32, "now", store.Int32)
	old := slices.Sorted(maps.Keys(w.link.alias))
	if err := pl.insertRows(ctx, "record.alias", aliasSchema, len(old), func(r row, i int) {
		r.ints(0, old[i], w.link.now(old[i]))
	}); err != nil {
		return err
	}
	groupSchema := store.Columns("age", store.Uint8, "sex", store.Uint8, "first_age", store.Uint8, "name", store.Text)
	scheme := f.rule.Scheme
	if err := pl.insertRows(ctx, "insight.age_group", groupSchema, 121*4, func(r row, i int) {
		a, s := i/4, record.Sex(i%4)
		lo, _ := scheme.Bounds(a)
		r.small(0, uint8(a), uint8(s), uint8(lo))
		r.texts(3, scheme.Name(a, s.String()))
	}); err != nil {
		return err
	}
	if err := pl.writeVolunteers(ctx, w); err != nil {
		return err
	}
	var stated []runState
	for _, s := range w.states {
		if s.runNo > 0 {
			stated = append(stated, s)
		}
	}
	stateSchema := store.Columns("run_no", store.Int32, "state", store.Text, "off_m", store.Int32)
	return pl.insertRows(ctx, "record.run_state", stateSchema, len(stated), func(r row, i int) {
		r.ints(0, stated[i].runNo)
		r.texts(1, stated[i].state)
		r.ints(2, stated[i].offM)
	})
}
