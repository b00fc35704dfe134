package pipeline

import (
	"context"
	"fmt"
	"slices"
	"sync/atomic"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/insight/speed"
	"lapwing/pipeline/parallel"
	"lapwing/pipeline/unit"
)

// In a large archive a full fit takes longer than anybody wants to wait for one
// new sheet. Between full fits the courses stay as they are; new and changed
// runs get their conditions from the last full fit, and the runners concerned
// their form and the figures of their results (speed.Update). Everybody else's
// figures are taken over. A full fit is due when so many results are new that
// the courses might move, when it is some weeks old, or when the archive is
// tuned anew; refresh and rebuild always fit fully, and so do archives in which
// that takes a second or two.
const (
	updateFrom  = 300000 // results in the last full fit, at least
	updateShare = .02    // of them new or changed since, at most
	updateDays  = 28     // of run dates since, at most
	updateSpan  = .2     // of all results with the runners concerned, at most
)

// updateSpeed carries on from the last full fit if that had so many results. It
// is false where a full fit is due.
func (pl *Pipeline) updateSpeed(ctx context.Context, w *work, from int) (bool, error) {
	last, err := pl.lastFit(ctx, from)
	if last == nil || err != nil {
		return false, err
	}
	f, s := w.field, w.speed
	in := f.speedInput(w.people, last.place, pl.workers())
	if len(in.Run) == 0 || tuningReach(len(in.Run)) != tuningReach(last.fit.Results) || !last.covers(f, in) {
		return false, nil
	}
	runPrints, runnerPrints := f.prints(in, pl.workers())
	runs, err := pl.keptRuns(ctx, f, in, func(e int32, print int64) bool { return runPrints[e] == print })
	if err != nil {
		return false, err
	}
	conditions, fresh, changed := in.freshRuns(runs)
	if last.due(in.latest, changed) {
		return false, nil
	}
	forms, err := pl.keptForms(ctx, w.people, in, runnerPrints)
	if err != nil {
		return false, err
	}
	part := in.concerned(forms, fresh)
	if float64(len(part.Run)) > updateSpan*float64(len(in.Run)) {
		return false, nil
	}
	if err := pl.keptResults(ctx, w); err != nil {
		return false, err
	}
	s.courses, s.runs, s.forms = last.courses, runs, forms
	s.latest, s.fit = in.latest, last.fit
	s.fit.Updated += changed
	if len(part.Run) == 0 {
		return true, nil
	}
	for _, person := range part.runners {
		for o := w.people.begin[person]; o < w.people.begin[person+1]; o++ {
			s.forget(int(o))
		}
	}
	m, err := speed.Update(ctx, part.Input, last.solution(), conditions, fresh, pl.workers())
	if err != nil {
		return false, err
	}
	s.courses = last.with(f, in, m)
	for e := range fresh {
		if fresh[e] {
			s.runs[e] = runSpeed{f.runs[in.runs[e]].no, runPrints[e], m.Runs[e]}
		}
	}
	for r, k := range m.Form {
		n := part.place[r]
		s.forms[n] = formSpeed{w.people.no[part.runners[r]], runnerPrints[n], k}
	}
	pl.resultFigures(w, m, &part.speedColumns)
	return true, nil
}

// updateSome does the same where work holds only the runners concerned, with
// their whole histories: those who are in a fresh run (fresh, by run number:
// new, or with other results than before) and those whose other results have
// changed. It fills w.speed with the figures of their results, their forms, the
// fresh runs and all courses; what is kept of everybody else stays in the
// database. It is false where a full fit of everybody is due.
func (pl *Pipeline) updateSome(ctx context.Context, w *work, fresh map[int32]bool, from int) (bool, error) {
	last, err := pl.lastFit(ctx, from)
	if last == nil || err != nil {
		return false, err
	}
	f, s := w.field, newSpeedFigures(len(w.people.order))
	in := f.speedInput(w.people, last.place, pl.workers())
	if !last.covers(f, in) {
		return false, nil
	}
	runs, err := pl.keptRuns(ctx, f, in, func(e int32, _ int64) bool { return !fresh[f.runs[in.runs[e]].no] })
	if err != nil {
		return false, err
	}
	conditions, isFresh, changed := in.freshRuns(runs)
	var before int
	if before, s.latest, err = pl.others(ctx, f, fresh); err != nil {
		return false, err
	}
	changed, s.latest = max(changed, before), max(s.latest, in.latest)
	if last.due(s.latest, changed) || tuningReach(last.fit.Results+last.fit.Updated+changed) != tuningReach(last.fit.Results) ||
		float64(len(in.Run)) > updateSpan*float64(last.fit.Results) {
		return false, nil
	}
	s.courses, s.fit, s.fresh, s.kept = last.courses, last.fit, fresh, len(last.courses)
	s.fit.Updated += changed
	w.speed = s
	if len(in.Run) == 0 {
		return true, nil
	}
	m, err := speed.Update(ctx, in.Input, last.solution(), conditions, isFresh, pl.workers())
	if err != nil {
		return false, err
	}
	runPrints, runnerPrints := f.prints(in, pl.workers())
	s.courses = last.with(f, in, m)
	for e := range isFresh {
		if isFresh[e] {
			s.runs = append(s.runs, runSpeed{f.runs[in.runs[e]].no, runPrints[e], m.Runs[e]})
		}
	}
	for r, k := range m.Form {
		s.forms = append(s.forms, formSpeed{w.people.no[in.runners[r]], runnerPrints[r], k})
	}
	pl.resultFigures(w, m, in)
	return true, nil
}

// others says how many results the fresh runs had before, and what day the
// newest of the other runs in the fit was.
func (pl *Pipeline) others(ctx context.Context, f *field, fresh map[int32]bool) (before int, latest unit.Day, err error) {
	err = pl.DB.Scan(ctx, "select run_no, results from insight.run", func(r arrow.Record) error {
		whole, _, _ := cells(r)
		for k := range int(r.NumRows()) {
			if no := whole(0, k); fresh[no] {
				before += int(whole(1, k))
			} else if int(no) <= len(f.runs) {
				latest = max(latest, f.runs[no-1].day)
			}
		}
		return nil
	})
	return before, latest, err
}

// lastFit is the last full fit with its courses.
type lastFit struct {
	fit     speedFit
	upto    unit.Day
	courses []courseSpeed
	place   map[int32]int // in courses, by course number
}

// lastFit reads it, nil where there is none of this version of the model with
// so many results.
func (pl *Pipeline) lastFit(ctx context.Context, from int) (*lastFit, error) {
	fit, err := pl.speedFit(ctx)
	if err != nil || fit.Results < max(1, from) || fit.Version != ModelVersion {
		return nil, err
	}
	l := &lastFit{fit: fit, place: map[int32]int{}}
	if l.upto, err = unit.ParseDay(fit.Upto); err != nil {
		return nil, fmt.Errorf("what is kept of the last fit: %w", err)
	}
	if l.courses, err = pl.keptCourses(ctx); err != nil {
		return nil, err
	}
	for i, c := range l.courses {
		l.place[c.no] = i
	}
	return l, nil
}

// covers says whether the columns' courses begin with those of the fit.
func (l *lastFit) covers(f *field, in *speedColumns) bool {
	if len(in.courses) < len(l.courses) {
		return false
	}
	for k, c := range l.courses {
		if f.courses[in.courses[k]].no != c.no {
			return false
		}
	}
	return true
}

// due says whether a full fit is due, with the newest run and so many results
// new or changed.
func (l *lastFit) due(latest unit.Day, changed int) bool {
	return latest-l.upto > updateDays || float64(l.fit.Updated+changed) > updateShare*float64(l.fit.Results)
}

func (l *lastFit) solution() speed.Solution {
	s := speed.Solution{Hyper: l.fit.Fitted}
	for _, c := range l.courses {
		s.Courses = append(s.Courses, c.Course)
	}
	return s
}

// with adds the courses that are new in the columns.
func (l *lastFit) with(f *field, in *speedColumns, m *speed.Model) []courseSpeed {
	out := slices.Clone(l.courses)
	for c := len(out); c < len(m.Courses); c++ {
		out = append(out, courseSpeed{f.courses[in.courses[c]].no, m.Courses[c]})
	}
	return out
}

// freshRuns says of every run what its conditions are, or else that it is
// fresh, and how many results fresh ones have.
func (in *speedColumns) freshRuns(known []runSpeed) (conditions []speed.Run, fresh []bool, changed int) {
	conditions, fresh = make([]speed.Run, len(in.Runs)), make([]bool, len(in.Runs))
	for e, k := range known {
		conditions[e], fresh[e] = k.Run, k.no == 0
	}
	for _, e := range in.Run {
		if fresh[e] {
			conditions[e].Results++
			changed++
		}
	}
	return conditions, fresh, changed
}

// someRunners are the columns of some of the runners.
type someRunners struct {
	speedColumns
	place []int32 // of each runner in all columns
}

// concerned gives the whole histories of the runners who are in a fresh run, or
// whose form is not there.
func (in *speedColumns) concerned(forms []formSpeed, fresh []bool) *someRunners {
	p := &someRunners{speedColumns: speedColumns{
		Input:   &speed.Input{Offsets: []int32{0}, Runs: in.Runs, Courses: in.Courses},
		courses: in.courses, runs: in.runs, latest: in.latest,
	}}
	for r := range in.Runners() {
		lo, hi := in.Offsets[r], in.Offsets[r+1]
		want := forms[r].no == 0
		for i := lo; i < hi && !want; i++ {
			want = fresh[in.Run[i]]
		}
		if !want {
			continue
		}
		p.Run = append(p.Run, in.Run[lo:hi]...)
		p.LogTime = append(p.LogTime, in.LogTime[lo:hi]...)
		p.lines = append(p.lines, in.lines[lo:hi]...)
		p.Offsets = append(p.Offsets, int32(len(p.Run)))
		p.runners = append(p.runners, in.runners[r])
		p.place = append(p.place, int32(r))
	}
	return p
}

// prints sums up every run's results and every runner's, to see what has
// changed since the figures were made.
func (f *field) prints(in *speedColumns, workers int) (run, runner []int64) {
	run, runner = make([]int64, len(in.Runs)), make([]int64, in.Runners())
	parallel.Pieces(len(runner), workers, func(from, to int) {
		for r := from; r < to; r++ {
			h := uint64(0)
			for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
				l := in.lines[i]
				time := uint64(unit.CeilSeconds(f.timeMS[l]))
				atomic.AddInt64(&run[in.Run[i]], int64(scatter(uint64(f.lineNo[l])<<32|time)))
				h = scatter(h ^ (uint64(f.run[l])<<32 | time))
			}
			runner[r] = int64(h)
		}
	})
	return run, runner
}

// scatter mixes the bits of x (the finalizer of SplitMix64: Steele, Lea and
// Flood 2014, "Fast splittable pseudorandom number generators", OOPSLA).
func scatter(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// keptCourses reads the courses of the last fit, in the order of the fit: by
// name and distance, those that came later last.
func (pl *Pipeline) keptCourses(ctx context.Context) ([]courseSpeed, error) {
	var out []courseSpeed
	err := pl.DB.Scan(ctx, `select i.course_no, i.effect, i.sd, coalesce(i.network - 1, -1)::integer, i.results, i.runs, i.shared_runners, i.group_no, i.runners,
			i.level, i.share_resident, i.share_visitor, i.standing, i.reason_no
		from insight.course i join record.course c on c.course_no = i.course_no order by c.course, c.distance_m`, func(r arrow.Record) error {
		whole, number, small := cells(r)
		for k := range int(r.NumRows()) {
			out = append(out, courseSpeed{whole(0, k), speed.Course{
				Effect: number(1, k), SD: number(2, k), Network: whole(3, k), Results: whole(4, k), Runs: whole(5, k), SharedRunners: whole(6, k),
				Group: whole(7, k), Runners: whole(8, k), Raw: number(9, k), ShareResident: number(10, k), ShareVisitor: number(11, k),
				Standing: speed.Standing(small(12, k)), Reason: speed.Reason(small(13, k)),
			}})
		}
		return nil
	})
	return out, err
}

// cells gives access to the cells of a batch.
func cells(r arrow.Record) (whole func(c, k int) int32, number func(c, k int) float64, small func(c, k int) uint8) {
	return func(c, k int) int32 { return r.Column(c).(*array.Int32).Value(k) },
		func(c, k int) float64 { return r.Column(c).(*array.Float64).Value(k) },
		func(c, k int) uint8 { return r.Column(c).(*array.Uint8).Value(k) }
}

// keptRuns gives what is known of the runs of in that may be taken over, the
// zero value (no run number) for the others.
func (pl *Pipeline) keptRuns(ctx context.Context, f *field, in *speedColumns, may func(e int32, print int64) bool) ([]runSpeed, error) {
	at := make([]int32, len(f.runs)+1) // by run number: place in in.Runs + 1
	for e, r := range in.runs {
		at[f.runs[r].no] = int32(e) + 1
	}
	out := make([]runSpeed, len(in.Runs))
	err := pl.DB.Scan(ctx, "select run_no, results, fitted, fitted_sd, (effect is not null)::utinyint, print from insight.run", func(r arrow.Record) error {
		whole, number, small := cells(r)
		print := r.Column(5).(*array.Int64)
		for k := range int(r.NumRows()) {
			no := whole(0, k)
			if int(no) >= len(at) || at[no] == 0 {
				continue
			}
			if e := at[no] - 1; may(e, print.Value(k)) {
				out[e] = runSpeed{no, print.Value(k), speed.Run{Effect: number(2, k), SD: number(3, k), Results: whole(1, k), Stated: small(4, k) == 1}}
			}
		}
		return nil
	})
	return out, err
}

// keptForms gives what is known of the runners of in, the zero value (no
// runner number) for those that are new or whose results have changed.
func (pl *Pipeline) keptForms(ctx context.Context, p *people, in *speedColumns, prints []int64) ([]formSpeed, error) {
	at := make([]int32, p.no[len(p.no)-1]+1) // by runner number: place in in + 1
	for k, r := range in.runners {
		at[p.no[r]] = int32(k) + 1
	}
	out := make([]formSpeed, in.Runners())
	err := pl.DB.Scan(ctx, `select runner_no, results, level, level_sd, last_day, coalesce(change, 0), coalesce(change_sd, 0), (change is not null)::utinyint,
			results_before, results_within, gap_days, print from insight.runner`, func(r arrow.Record) error {
		whole, number, small := cells(r)
		last, print := r.Column(4).(*array.Date32), r.Column(11).(*array.Int64)
		for k := range int(r.NumRows()) {
			no := whole(0, k)
			if int(no) >= len(at) || at[no] == 0 {
				continue
			}
			if n := at[no] - 1; prints[n] == print.Value(k) {
				out[n] = formSpeed{no, print.Value(k), speed.Form{
					Log: number(2, k), SD: number(3, k), LastDay: int32(last.Value(k)), Results: whole(1, k),
					Change: number(5, k), ChangeSD: number(6, k), HasChange: small(7, k) == 1,
					Before: whole(8, k), Within: whole(9, k), Gap: whole(10, k),
				}}
			}
		}
		return nil
	})
	return out, err
}

// keptResults takes over the figures of the results that are in the model.
func (pl *Pipeline) keptResults(ctx context.Context, w *work) error {
	f, s := w.field, w.speed
	at := make([]int32, slices.Max(f.lineNo)+1) // by line number: place in people.order + 1
	for o, l := range w.people.order {
		if f.inModel(int(l)) {
			at[f.lineNo[l]] = int32(o) + 1
		}
	}
	const query = `select line_no, coalesce(adjusted_s, 'nan'::float), coalesce(shortfall, 'nan'::float), effort, is_adjusted_best::utinyint,
		coalesce(form_s, 'nan'::float), coalesce(form_low, 'nan'::float), coalesce(form_high, 'nan'::float) from insight.result`
	return pl.DB.Scan(ctx, query, func(r arrow.Record) error {
		whole, _, small := cells(r)
		single := func(c, k int) float32 { return r.Column(c).(*array.Float32).Value(k) }
		for k := range int(r.NumRows()) {
			no := whole(0, k)
			if int(no) >= len(at) || at[no] == 0 {
				continue
			}
			o := at[no] - 1
			s.form[o] = band{single(5, k), single(6, k), single(7, k)}
			s.adjusted[o], s.shortfall[o], s.effort[o], s.adjustedBest[o] = single(1, k), single(2, k), small(3, k), small(4, k) == 1
		}
		return nil
	})
}
