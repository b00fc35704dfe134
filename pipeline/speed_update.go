package pipeline

import (
	"context"
	"fmt"
	"slices"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/insight/speed"
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
	fit, err := pl.speedFit(ctx)
	if err != nil || fit.Results < max(1, from) || fit.Version != ModelVersion {
		return false, err
	}
	fitted, err := unit.ParseDay(fit.Upto)
	if err != nil {
		return false, fmt.Errorf("what is kept of the last fit: %w", err)
	}
	known, err := pl.keptCourses(ctx)
	if err != nil {
		return false, err
	}
	at := map[int32]int{} // by course number
	for i, c := range known {
		at[c.no] = i
	}
	f, s := w.field, w.speed
	in := f.speedInput(w.people, at)
	if len(in.Run) == 0 || in.latest-fitted > updateDays || tuningReach(len(in.Run)) != tuningReach(fit.Results) || len(in.courses) < len(known) {
		return false, nil
	}
	solution := speed.Solution{Hyper: fit.Fitted}
	for k, c := range known {
		if f.courses[in.courses[k]].no != c.no {
			return false, nil // a course has another name or distance now
		}
		solution.Courses = append(solution.Courses, c.Course)
	}
	runPrints, runnerPrints := f.prints(in)
	runs, err := pl.keptRuns(ctx, f, in, runPrints)
	if err != nil {
		return false, err
	}
	conditions, fresh, changed := in.freshRuns(runs)
	if float64(fit.Updated+changed) > updateShare*float64(fit.Results) {
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
	s.courses, s.runs, s.forms = known, runs, forms
	s.latest, s.fit = in.latest, fit
	s.fit.Updated += changed
	if len(part.Run) == 0 {
		return true, nil
	}
	m, err := speed.Update(ctx, part.Input, solution, conditions, fresh, pl.workers())
	if err != nil {
		return false, err
	}
	for c, k := range m.Courses[len(known):] {
		s.courses = append(s.courses, courseSpeed{f.courses[in.courses[len(known)+c]].no, k})
	}
	for e := range fresh {
		if fresh[e] {
			s.runs[e] = runSpeed{f.runs[in.runs[e]].no, runPrints[e], m.Runs[e]}
		}
	}
	for r, k := range m.Form {
		n, person := part.place[r], part.runners[r]
		s.forms[n] = formSpeed{w.people.no[person], runnerPrints[n], k}
		for o := w.people.begin[person]; o < w.people.begin[person+1]; o++ {
			s.forget(int(o))
		}
	}
	pl.resultFigures(w, m, &part.speedColumns)
	return true, nil
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
func (f *field) prints(in *speedColumns) (run, runner []int64) {
	run, runner = make([]int64, len(in.Runs)), make([]int64, in.Runners())
	for r := range runner {
		h := uint64(0)
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			l := in.lines[i]
			time := uint64(unit.CeilSeconds(f.timeMS[l]))
			run[in.Run[i]] += int64(scatter(uint64(f.lineNo[l])<<32 | time))
			h = scatter(h ^ (uint64(f.run[l])<<32 | time))
		}
		runner[r] = int64(h)
	}
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

// keptRuns gives what is known of the runs of in, the zero value (no run
// number) for those that are new or whose results have changed.
func (pl *Pipeline) keptRuns(ctx context.Context, f *field, in *speedColumns, prints []int64) ([]runSpeed, error) {
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
			if e := at[no] - 1; prints[e] == print.Value(k) {
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
	const query = `select line_no, coalesce(adjusted_s, 'nan'::double), coalesce(shortfall, 'nan'::double), effort, is_adjusted_best::utinyint from insight.result`
	return pl.DB.Scan(ctx, query, func(r arrow.Record) error {
		whole, number, small := cells(r)
		for k := range int(r.NumRows()) {
			no := whole(0, k)
			if int(no) >= len(at) || at[no] == 0 {
				continue
			}
			o := at[no] - 1
			s.adjusted[o], s.shortfall[o], s.effort[o], s.adjustedBest[o] = number(1, k), number(2, k), small(3, k), small(4, k) == 1
		}
		return nil
	})
}
