package pipeline

import (
	"cmp"
	"context"
	"math"
	"slices"

	"lapwing/pipeline/insight/speed"
	"lapwing/pipeline/record"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// speedFigures are what the model of course speed, conditions and form says,
// per line of people.order, and the model with the numbers of its courses,
// runs and runners.
type speedFigures struct {
	adjusted     []float64
	adjustedBest []bool
	effort       []uint8
	shortfall    []float64

	model   *speed.Model
	courses []int32 // course_no by the model's course
	runs    []int32 // run_no by the model's run
	runners []int32 // index into people by the model's runner
	latest  unit.Day
}

// inModel says whether a line is evidence for the model: a time that counts,
// of a runner, walker or guided runner.
func (f *field) inModel(i int) bool {
	return f.counts[i]&2 != 0 && record.TakingPart(f.takingPart[i]) <= record.Guided
}

// stepSpeed fits the model. Courses, runs and runners are handed over in an
// order given by content alone, so that the figures do not depend on the order
// of loading, to the last bit.
func (pl *Pipeline) stepSpeed(ctx context.Context, w *work) error {
	f, p := w.field, w.people
	n := len(p.order)
	s := &speedFigures{adjusted: make([]float64, n), adjustedBest: make([]bool, n), effort: make([]uint8, n), shortfall: make([]float64, n)}
	w.speed = s
	for i := range s.adjusted {
		s.adjusted[i], s.shortfall[i] = math.NaN(), math.NaN()
	}
	in, lines := f.speedInput(p, s)
	if len(in.Run) == 0 {
		return nil
	}
	var err error
	if s.model, err = speed.Fit(ctx, in, speed.Defaults(), pl.workers()); err != nil {
		return err
	}
	at := make([]int32, f.n) // place of a line in people.order
	for k, l := range p.order {
		at[l] = int32(k)
	}
	const piece = 512
	eachParallel((len(s.runners)+piece-1)/piece, pl.workers(), func(k int) {
		var figures []speed.Figure
		best := map[int32]float64{}
		for r := k * piece; r < min(len(s.runners), (k+1)*piece); r++ {
			figures = s.model.Figures(r, figures)
			clear(best)
			for j, g := range figures {
				l := lines[int(in.Offsets[r])+j]
				o := at[l]
				s.adjusted[o], s.shortfall[o] = g.Adjusted, g.Shortfall/100
				s.effort[o] = effortCode(g.Effort)
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
	return nil
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

// speedInput builds the model's columns and says which line each result is.
func (f *field) speedInput(p *people, s *speedFigures) (*speed.Input, []int32) {
	in := &speed.Input{}
	order := make([]int32, len(f.courses))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortFunc(order, func(a, b int32) int {
		x, y := &f.courses[a], &f.courses[b]
		return cmp.Or(cmp.Compare(x.course, y.course), cmp.Compare(x.distanceM, y.distanceM))
	})
	courseAt := make([]int32, len(f.courses))
	for k, c := range order {
		courseAt[c] = int32(k)
		s.courses = append(s.courses, f.courses[c].no)
		in.Courses = append(in.Courses, speed.CourseInfo{DistanceM: float64(f.courses[c].distanceM)})
	}
	used := make([]bool, len(f.runs))
	for _, l := range p.order {
		if f.inModel(int(l)) {
			used[f.run[l]-1] = true
			s.latest = max(s.latest, f.day(int(l)))
		}
	}
	var runs []int32
	for r := range f.runs {
		if used[r] {
			runs = append(runs, int32(r))
		}
	}
	slices.SortFunc(runs, func(a, b int32) int {
		x, y := &f.runs[a], &f.runs[b]
		return cmp.Or(cmp.Compare(courseAt[x.course-1], courseAt[y.course-1]), cmp.Compare(x.day, y.day), cmp.Compare(x.rank, y.rank))
	})
	runAt := make([]int32, len(f.runs))
	for k, r := range runs {
		runAt[r] = int32(k)
		s.runs = append(s.runs, f.runs[r].no)
		in.Runs = append(in.Runs, speed.RunInfo{Course: courseAt[f.runs[r].course-1], Day: int32(f.runs[r].day)})
	}
	// runners in the order of their first line, not of their number
	runners := make([]int32, len(p.no))
	for r := range runners {
		runners[r] = int32(r)
	}
	slices.SortFunc(runners, func(a, b int32) int {
		return cmp.Compare(f.key[p.order[p.begin[a]]], f.key[p.order[p.begin[b]]])
	})
	var lines []int32
	in.Offsets = append(in.Offsets, 0)
	for _, r := range runners {
		from := len(lines)
		for _, l := range p.order[p.begin[r]:p.begin[r+1]] {
			if f.inModel(int(l)) {
				lines = append(lines, l)
			}
		}
		if len(lines) == from {
			continue
		}
		mine := lines[from:]
		slices.SortFunc(mine, func(a, b int32) int {
			return cmp.Or(cmp.Compare(f.day(int(a)), f.day(int(b))), cmp.Compare(runAt[f.run[a]-1], runAt[f.run[b]-1]))
		})
		for _, l := range mine {
			in.Run = append(in.Run, runAt[f.run[l]-1])
			in.LogTime = append(in.LogTime, speed.LogTime(float64(unit.CeilSeconds(f.timeMS[l])), float64(f.runs[f.run[l]-1].distanceM)))
		}
		s.runners = append(s.runners, r)
		in.Offsets = append(in.Offsets, int32(len(in.Run)))
	}
	return in, lines
}

var (
	speedCourseSchema = store.Columns("course_no", store.Int32, "effect", store.Float64, "sd", store.Float64, "network", store.Int32,
		"basis", store.Text, "results", store.Int32, "runs", store.Int32, "shared_runners", store.Int32)
	speedRunSchema = store.Columns("run_no", store.Int32, "effect", store.Float64, "low", store.Float64, "high", store.Float64, "results", store.Int32)
	formSchema     = store.Columns("runner_no", store.Int32, "form_s", store.Float64, "form_low", store.Float64, "form_high", store.Float64,
		"last_day", store.Date, "change", store.Float64, "change_sd", store.Float64, "p_faster", store.Float64, "p_level", store.Float64, "results", store.Int32)
)

// z90 is the half width of a 90 % interval in standard deviations.
const z90 = 1.6448536269514722

func (pl *Pipeline) writeSpeed(ctx context.Context, w *work) error {
	s := w.speed
	if s.model == nil {
		return nil
	}
	m := s.model
	if err := pl.insertRows(ctx, "insight.course", speedCourseSchema, len(m.Courses), func(r row, i int) {
		c := m.Courses[i]
		basis := c.Reason.String()
		switch c.Standing {
		case speed.Published:
			basis = "published"
		case speed.Provisional:
			basis = "provisional"
		}
		r.ints(0, s.courses[i])
		r.numbers(1, c.Effect, c.SD)
		r.ints(3, c.Network+1)
		r.texts(4, basis)
		r.ints(5, c.Results, c.Runs, c.SharedRunners)
	}); err != nil {
		return err
	}
	var stated []int
	for i, r := range m.Runs {
		if r.Stated {
			stated = append(stated, i)
		}
	}
	if err := pl.insertRows(ctx, "insight.run", speedRunSchema, len(stated), func(r row, i int) {
		k := m.Runs[stated[i]]
		lo, hi := k.Interval()
		r.ints(0, s.runs[stated[i]])
		r.numbers(1, k.Effect, lo, hi)
		r.ints(4, k.Results)
	}); err != nil {
		return err
	}
	return pl.insertRows(ctx, "insight.runner", formSchema, len(m.Form), func(r row, i int) {
		k := m.Form[i]
		form, low, high := nan(), nan(), nan()
		if k.ShownOn(int32(s.latest), m.Hyper) {
			sd := k.SDOn(int32(s.latest), m.Hyper)
			form = k.Seconds()
			low, high = form*math.Exp(-z90*sd), form*math.Exp(z90*sd)
		}
		change, sd, faster, level := nan(), nan(), nan(), nan()
		if k.HasChange {
			change, sd, faster, level = k.Change, k.ChangeSD, k.Faster(), k.Unchanged()
		}
		r.ints(0, w.people.no[s.runners[i]])
		r.numbers(1, form, low, high)
		r.day(4, unit.Day(k.LastDay))
		r.numbers(5, change, sd, faster, level)
		r.ints(9, k.Results)
	})
}
