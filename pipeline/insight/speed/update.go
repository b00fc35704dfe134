package speed

import (
	"context"
	"fmt"
	"math"
)

// Solution is what has to be kept of a full fit so that Update can carry on
// from it: the quantities that the whole archive settles.
type Solution struct {
	Hyper   Hyper
	Courses []Course
}

// Solution gives what Update needs later.
func (m *Model) Solution() Solution { return Solution{m.Hyper, m.Courses} }

const (
	updatePasses = 40   // visits to the runners at most
	updateTol    = 1e-5 // change of the conditions that ends them
)

// Update gives new runs their conditions, and their runners form and figures,
// at once from the last full solution, whose courses, shares and conditions of
// known runs stay as they are.
//
// in holds the whole history of the runners concerned and nobody else's;
// in.Courses continues the solution's courses, new ones after the old. runs
// has an entry for every run of in: known runs with their conditions, fresh
// ones (marked in fresh) with the number of results they have. A fresh run's
// conditions use the results that in holds of it, so all its runners should
// be there.
//
// Given the runner's other results, the exact posterior of a run's conditions
// has one dimension,
//
//	p(d) ∝ t(d) prod_i f(y_i - c - d - m_i; Sigma² + v_i)
//
// with m_i, v_i the form of runner i from all other results, and is taken by
// quadrature.
func Update(ctx context.Context, in *Input, s Solution, runs []Run, fresh []bool, threads int) (*Model, error) {
	if len(runs) != len(in.Runs) || len(fresh) != len(in.Runs) {
		return nil, fmt.Errorf("speed: %d runs but %d known and %d marks", len(in.Runs), len(runs), len(fresh))
	}
	if len(in.Courses) < len(s.Courses) {
		return nil, fmt.Errorf("speed: %d courses but %d in the last solution", len(in.Courses), len(s.Courses))
	}
	f, err := newFit(in, s.Hyper, false, threads)
	if err != nil {
		return nil, err
	}
	m := &Model{Hyper: s.Hyper, f: f, Runs: append([]Run(nil), runs...), Courses: make([]Course, len(in.Courses))}
	known := f.adopt(m, s)
	for e, k := range in.Runs {
		f.day[e] = 0
		if !fresh[e] {
			f.day[e] = runs[e].Effect
		}
		f.effect[e] = f.course[k.Course] + f.day[e]
	}
	if err := f.sweep(ctx, startSweeps, true); err != nil {
		return nil, err
	}
	for pass := 0; pass < updatePasses; pass++ {
		f.damping = dampingOf(pass)
		worst, err := f.updateFresh(ctx, m, fresh, known)
		if err != nil {
			return nil, err
		}
		if err := f.sweep(ctx, 2, false); err != nil {
			return nil, err
		}
		m.Trace.Rounds++
		m.Trace.ChangeRMS = worst
		if m.Trace.Settled = worst < updateTol; m.Trace.Settled {
			break
		}
	}
	m.centre = formCentres(in.Courses, m.Courses)
	m.Form, err = f.forms(ctx, m.centre)
	f.dropScratch()
	return m, err
}

// adopt takes courses and shares from the solution and says which courses it
// knew. A new course starts at the level of the others.
func (f *fit) adopt(m *Model, s Solution) (known []bool) {
	known = make([]bool, len(f.course))
	level, n := 0.0, 0
	var shareSum [2]float64
	copy(m.Courses, s.Courses)
	for c, k := range s.Courses {
		if k.Results == 0 {
			continue
		}
		known[c] = true
		level += k.Raw
		shareSum[0] += k.ShareResident
		shareSum[1] += k.ShareVisitor
		n++
	}
	for c := range f.course {
		if known[c] {
			k := s.Courses[c]
			f.course[c], f.share[2*c], f.share[2*c+1] = k.Raw, k.ShareResident, k.ShareVisitor
			continue
		}
		if n > 0 {
			f.course[c] = level / float64(n)
			f.share[2*c], f.share[2*c+1] = shareSum[0]/float64(n), shareSum[1]/float64(n)
		}
		m.Courses[c] = Course{
			Raw: f.course[c], SD: s.Hyper.CourseSD, Network: -1, Group: -1 - int32(c), Reason: NewCourse,
			ShareResident: f.share[2*c], ShareVisitor: f.share[2*c+1],
		}
	}
	return known
}

// observation is one result of a fresh run: its residual before conditions,
// the variance of the Gaussian part and the prior weights.
type observation struct {
	residual, variance float64
	weights            Components
}

// updateFresh takes the conditions of every fresh run by quadrature and gives
// the largest change.
func (f *fit) updateFresh(ctx context.Context, m *Model, fresh, known []bool) (worst float64, err error) {
	seen := make(map[int32][]observation)
	groupWeights := f.groupWeights()
	s2 := f.h.Sigma * f.h.Sigma
	prior := 1 / (f.h.RunnerSD * f.h.RunnerSD)
	var ch chain
	for r := 0; r < f.in.Runners(); r++ {
		smoothed := false
		a, b := int(f.in.Offsets[r]), int(f.in.Offsets[r+1])
		for i := a; i < b; i++ {
			e := f.in.Run[i]
			if !fresh[e] {
				continue
			}
			if !smoothed {
				f.smooth(&ch, r, prior)
				smoothed = true
			}
			course := f.in.Runs[e].Course
			k := ch.cavity(i - a)
			seen[e] = append(seen[e], observation{float64(f.in.LogTime[i]) - f.course[course] - k.mean, s2 + k.vari, groupWeights[f.group(r, e)]})
		}
	}
	for e, k := range f.in.Runs {
		if !fresh[e] {
			continue
		}
		if err := ctx.Err(); err != nil {
			return 0, err
		}
		logPrior := studentLog(f.h.DaySD, f.h.DayDF)
		if !known[k.Course] {
			// The course is not known either: what is found is their sum.
			v := f.courseVar + 2*f.dayVar
			logPrior = func(d float64) float64 { return -d * d / (2 * v) }
		}
		mean, variance := conditions(&f.mix, seen[int32(e)], logPrior)
		worst = max(worst, math.Abs(mean-f.day[e]))
		f.day[e] = mean
		f.effect[e] = f.course[k.Course] + mean
		run := newRun(mean, variance, max(m.Runs[e].Results, int32(len(seen[int32(e)]))))
		run.Stated = run.Stated && known[k.Course]
		m.Runs[e] = run
	}
	return worst, nil
}

// studentLog is the log density, less its constant, of a t distribution.
func studentLog(scale, df float64) func(float64) float64 {
	return func(d float64) float64 {
		x := d / scale
		return -(df + 1) / 2 * math.Log1p(x*x/df)
	}
}

// conditions gives mean and variance of p(d): a coarse grid finds the mode, a
// fine one around it integrates.
func conditions(mix *mixture, seen []observation, logPrior func(float64) float64) (mean, variance float64) {
	at := func(d float64) float64 {
		s := logPrior(d)
		for _, o := range seen {
			s += mix.logDensity(o.residual-d, o.variance, o.weights)
		}
		return s
	}
	const (
		reach, coarse = .35, .005
		half          = 40 // points of the fine grid on either side
	)
	mode, top := 0.0, math.Inf(-1)
	for d := -reach; d <= reach; d += coarse {
		if s := at(d); s > top {
			mode, top = d, s
		}
	}
	// The fine step comes from the curvature, then once more from the moments.
	curve := -(at(mode+coarse) - 2*top + at(mode-coarse)) / (coarse * coarse)
	sd := min(max(1/math.Sqrt(max(curve, 1)), 2e-4), .1)
	mean = mode
	for range 2 {
		step := 6 * sd / half
		var logs [2*half + 1]float64
		top = math.Inf(-1)
		for k := range logs {
			logs[k] = at(mean + step*float64(k-half))
			top = max(top, logs[k])
		}
		var s0, s1, s2 float64
		for k, l := range logs {
			p := math.Exp(l - top)
			x := step * float64(k-half)
			s0 += p
			s1 += p * x
			s2 += p * x * x
		}
		variance = max(s2/s0-(s1/s0)*(s1/s0), 1e-10)
		mean += s1 / s0
		sd = math.Sqrt(variance)
	}
	return mean, variance
}
