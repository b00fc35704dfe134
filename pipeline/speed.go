package pipeline

import (
	"cmp"
	"context"
	"math"
	"slices"

	"lapwing/pipeline/insight/speed"
	"lapwing/pipeline/parallel"
	"lapwing/pipeline/record"
	"lapwing/pipeline/unit"
)

// speedFigures are what the model of course speed, conditions and form says:
// per line of people.order, and per course, run and runner.
type speedFigures struct {
	adjusted     []float32
	adjustedBest []bool
	effort       []uint8
	shortfall    []float32
	form         []band

	courses []courseSpeed
	runs    []runSpeed
	forms   []formSpeed
	latest  unit.Day
	fit     speedFit

	// of an update of some runners only (updateSome)
	fresh map[int32]bool // run numbers: what was known of these runs no longer holds
	kept  int            // so many of courses come first and are as they were
}

// band is form at a result and its 90 % interval: seconds over 5 km of a good
// effort, on the mean course and an average day. Not a number where it is not
// known well enough to be shown.
type band [3]float32

type courseSpeed struct {
	no int32 // course_no
	speed.Course
}

type runSpeed struct {
	no    int32 // run_no
	print int64 // of its lines and times
	speed.Run
}

type formSpeed struct {
	no    int32 // runner number
	print int64 // of their runs and times
	speed.Form
}

func newSpeedFigures(n int) *speedFigures {
	s := &speedFigures{adjusted: make([]float32, n), adjustedBest: make([]bool, n), effort: make([]uint8, n), shortfall: make([]float32, n), form: make([]band, n)}
	for i := range n {
		s.forget(i)
	}
	return s
}

// forget takes back what was said about a line of people.order.
func (s *speedFigures) forget(i int) {
	not := float32(math.NaN())
	s.adjusted[i], s.shortfall[i] = not, not
	s.form[i] = band{not, not, not}
	s.adjustedBest[i], s.effort[i] = false, 0
}

// inModel says whether a line is evidence for the model: a time that counts,
// of a runner, walker or guided runner.
func (f *field) inModel(i int) bool {
	return f.counts[i]&2 != 0 && record.TakingPart(f.takingPart[i]) <= record.Guided
}

// stepSpeed fits the model, or carries on from the last full fit where that is
// allowed (speed_update.go).
func (pl *Pipeline) stepSpeed(ctx context.Context, w *work) error {
	w.speed = newSpeedFigures(len(w.people.order))
	if !w.full {
		if done, err := pl.updateSpeed(ctx, w, updateFrom); done || err != nil {
			w.carriedOn = done
			return err
		}
	}
	in := w.field.speedInput(w.people, nil, pl.workers())
	if len(in.Run) == 0 {
		return nil
	}
	q, err := pl.quantities(ctx, in)
	if err != nil {
		return err
	}
	m, err := speed.Fit(ctx, in.Input, q.Hyper, pl.workers())
	if err != nil {
		return err
	}
	s := w.speed
	s.latest = in.latest
	s.fit = speedFit{Version: ModelVersion, Quantities: q, Fitted: m.Hyper, Results: len(in.Run), Upto: in.latest.String(),
		Rounds: m.Trace.Rounds, Settled: m.Trace.Settled}
	for c, k := range m.Courses {
		s.courses = append(s.courses, courseSpeed{w.field.courses[in.courses[c]].no, k})
	}
	runPrints, runnerPrints := w.field.prints(in, pl.workers())
	for e, k := range m.Runs {
		s.runs = append(s.runs, runSpeed{w.field.runs[in.runs[e]].no, runPrints[e], k})
	}
	s.forms = make([]formSpeed, len(m.Form))
	for r, k := range m.Form {
		s.forms[r] = formSpeed{w.people.no[in.runners[r]], runnerPrints[r], k}
	}
	pl.resultFigures(w, m, in)
	return nil
}

// resultFigures takes the figures of every result that the model holds.
func (pl *Pipeline) resultFigures(w *work, m *speed.Model, in *speedColumns) {
	f, s := w.field, w.speed
	at := make([]int32, f.n) // place of a line in people.order
	for k, l := range w.people.order {
		at[l] = int32(k)
	}
	const piece = 512
	parallel.Each((len(in.runners)+piece-1)/piece, pl.workers(), func(k int) {
		var figures []speed.Figure
		best := map[int32]float64{}
		for r := k * piece; r < min(len(in.runners), (k+1)*piece); r++ {
			figures = m.Figures(r, figures)
			clear(best)
			for j, g := range figures {
				l := in.lines[int(in.Offsets[r])+j]
				o := at[l]
				s.adjusted[o], s.shortfall[o] = float32(g.Adjusted), float32(g.Shortfall/100)
				s.effort[o] = effortCode(g.Effort)
				if form, low, high, ok := g.FormBand(); ok {
					s.form[o] = band{float32(form), float32(low), float32(high)}
				}
				if math.IsNaN(g.Adjusted) || g.WrongOwner() {
					continue
				}
				d := f.runs[f.run[l]-1].distanceM
				if b, ok := best[d]; !ok || g.Adjusted < b {
					s.adjustedBest[o] = ok
					best[d] = g.Adjusted
				}
			}
		}
	})
}

func effortCode(e speed.Effort) uint8 {
	switch e {
	case speed.Full:
		return 1
	case speed.Steady:
		return 2
	case speed.Easy:
		return 3
	}
	return 4
}

// speedColumns are the model's input, and what its numbers stand for.
type speedColumns struct {
	*speed.Input
	lines   []int32 // line of each result
	courses []int32 // index into field.courses
	runs    []int32 // index into field.runs
	runners []int32 // index into people
	latest  unit.Day
}

// speedInput builds the model's columns. Courses, runs and runners come in an
// order given by content alone, so that the figures do not depend on the order
// of loading, to the last bit; courses whose numbers are in first go before
// the others.
func (f *field) speedInput(p *people, first map[int32]int, workers int) *speedColumns {
	in := &speedColumns{Input: &speed.Input{}}
	courseAt := in.takeCourses(f, first)
	runAt := in.takeRuns(f, p, courseAt)
	in.takeResults(f, p, runAt, workers)
	return in
}

// takeCourses puts the courses in order, and gives the place of each of field.courses.
func (in *speedColumns) takeCourses(f *field, first map[int32]int) (at []int32) {
	held := make([]bool, len(f.courses))
	for i := 0; i < f.n; i++ {
		held[f.course(i)-1] = true
	}
	for i := range f.courses {
		// one whose sheets were all withdrawn is no part of a full fit
		if _, ok := first[f.courses[i].no]; ok || held[i] {
			in.courses = append(in.courses, int32(i))
		}
	}
	later := func(c int32) int {
		if _, ok := first[f.courses[c].no]; ok {
			return 0
		}
		return 1
	}
	slices.SortFunc(in.courses, func(a, b int32) int {
		x, y := &f.courses[a], &f.courses[b]
		return cmp.Or(cmp.Compare(later(a), later(b)), cmp.Compare(x.course, y.course), cmp.Compare(x.distanceM, y.distanceM))
	})
	at = make([]int32, len(f.courses))
	for k, c := range in.courses {
		at[c] = int32(k)
		in.Courses = append(in.Courses, speed.CourseInfo{DistanceM: float64(f.courses[c].distanceM)})
	}
	return at
}

// takeRuns puts the runs of which a result is in the model in order, and gives the place of
// each of field.runs.
func (in *speedColumns) takeRuns(f *field, p *people, courseAt []int32) (at []int32) {
	used := make([]bool, len(f.runs))
	for _, l := range p.order {
		if f.inModel(int(l)) {
			used[f.run[l]-1] = true
			in.latest = max(in.latest, f.day(int(l)))
		}
	}
	for r := range f.runs {
		if used[r] {
			in.runs = append(in.runs, int32(r))
		}
	}
	slices.SortFunc(in.runs, func(a, b int32) int {
		x, y := &f.runs[a], &f.runs[b]
		return cmp.Or(cmp.Compare(courseAt[x.course-1], courseAt[y.course-1]), cmp.Compare(x.day, y.day), cmp.Compare(x.rank, y.rank))
	})
	at = make([]int32, len(f.runs))
	for k, r := range in.runs {
		at[r] = int32(k)
		in.Runs = append(in.Runs, speed.RunInfo{Course: courseAt[f.runs[r].course-1], Day: int32(f.runs[r].day)})
	}
	return at
}

// takeResults takes the results of each runner by day and run, the runners in the order of
// their first line, not of their number.
func (in *speedColumns) takeResults(f *field, p *people, runAt []int32, workers int) {
	runners := make([]int32, len(p.no))
	for r := range runners {
		runners[r] = int32(r)
	}
	slices.SortFunc(runners, func(a, b int32) int {
		return cmp.Compare(f.key[p.order[p.begin[a]]], f.key[p.order[p.begin[b]]])
	})
	// how many results each has, then the results
	results := make([]int32, len(runners))
	eachRunner := func(do func(k int, lines []int32)) {
		parallel.Pieces(len(runners), workers, func(from, to int) {
			for k := from; k < to; k++ {
				do(k, p.order[p.begin[runners[k]]:p.begin[runners[k]+1]])
			}
		})
	}
	eachRunner(func(k int, lines []int32) {
		for _, l := range lines {
			if f.inModel(int(l)) {
				results[k]++
			}
		}
	})
	in.Offsets = append(in.Offsets, 0)
	begin := make([]int32, len(runners))
	sum := int32(0)
	for k, n := range results {
		begin[k] = sum
		if n > 0 {
			sum += n
			in.runners = append(in.runners, runners[k])
			in.Offsets = append(in.Offsets, sum)
		}
	}
	in.lines, in.Run, in.LogTime = make([]int32, sum), make([]int32, sum), make([]float32, sum)
	eachRunner(func(k int, lines []int32) {
		at := begin[k]
		for _, l := range lines {
			if f.inModel(int(l)) {
				in.lines[at] = l
				at++
			}
		}
		mine := in.lines[begin[k]:at]
		slices.SortFunc(mine, func(a, b int32) int {
			return cmp.Or(cmp.Compare(f.day(int(a)), f.day(int(b))), cmp.Compare(runAt[f.run[a]-1], runAt[f.run[b]-1]))
		})
		for j, l := range mine {
			o := begin[k] + int32(j)
			in.Run[o] = runAt[f.run[l]-1]
			in.LogTime[o] = speed.LogTime(float64(unit.CeilSeconds(f.timeMS[l])), float64(f.runs[f.run[l]-1].distanceM))
		}
	})
}
