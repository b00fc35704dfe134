package speed

import (
	"context"
	"math"

	"gonum.org/v1/gonum/mat"

	"lapwing/pipeline/parallel"
)

// The rounds of a fit. Each solves for courses and days, updates their
// variances, lets every runner's sites follow, and updates the shares.
const (
	mostRounds    = 40
	startTol      = 1e-4
	firstTol      = 1e-5 // left in the courses when the first round's solve stops
	roundTol      = 3e-6 // … any later round's, at the least
	finalTol      = 3e-7
	mostSteps     = 60   // of conjugate gradients, a round
	finalSteps    = 400  //
	settledRMS    = 3e-5 // change of the centred courses in a round, weighted by results
	settledMax    = 2e-4 // … of any course with settledResults
	settledCount  = 500
	gaussianStart = .06 // residual sd of the fit that starts the rounds
)

var background = context.Background()

// fit is the working state of one fit.
type fit struct {
	in       *Input
	h        Hyper
	mix      mixture
	gaussian bool // every result is all-out: one Gaussian, sites fixed
	threads  int

	parts   []span
	home    []int32 // per runner
	results []int32 // per course

	// Per result: the site, the precision of the change to the runner's next
	// result, and the factor of the chain.
	w, z, step, gain, inv []float32

	course            []float64 // effect, level included
	day               []float64 // effect of every run
	dayWeight         []float64 // u of the t distribution
	info              []float64 // runners' information on every run
	effect            []float64 // course plus day
	runValue          []float64 // scratch
	share             []float64 // all-out share: 2*course, and + 1 for visitors
	dayVar, courseVar float64

	// Scratch, let go once the model is made.
	runSums   [][]float64               // per part
	sweepSums []sweepSums               // per part
	infoSums  [infoGroups]*mat.SymDense // of courseInformation

	damping   float64         // of the sites' updates, this round
	pre       *preconditioner // of the last solve
	lastSteps int             // that it took

	trace Trace
}

// Trace says how a fit went.
type Trace struct {
	Rounds    int     // rounds of expectation propagation
	Settled   bool    // the rounds stopped by themselves
	Steps     int     // conjugate-gradient steps in all
	Left      float64 // preconditioned residual of the last solve, log time
	ChangeRMS float64 // change of the centred courses in the last round
}

func newFit(in *Input, h Hyper, gaussian bool, threads int) (*fit, error) {
	if err := in.Check(); err != nil {
		return nil, err
	}
	if err := h.Check(); err != nil {
		return nil, err
	}
	n, runs, courses := len(in.Run), len(in.Runs), len(in.Courses)
	f := &fit{
		in: in, h: h, mix: h.mixture(), gaussian: gaussian, threads: max(1, threads),
		damping: dampingOf(0),
		parts:   partition(in.Offsets, partCount),
		home:    make([]int32, in.Runners()),
		results: make([]int32, courses),
		w:       make([]float32, n), z: make([]float32, n), step: make([]float32, n),
		gain: make([]float32, n), inv: make([]float32, n),
		course: make([]float64, courses), share: make([]float64, 2*courses),
		day: make([]float64, runs), dayWeight: make([]float64, runs), info: make([]float64, runs),
		effect: make([]float64, runs), runValue: make([]float64, runs),
		dayVar: h.DaySD * h.DaySD, courseVar: h.CourseSD * h.CourseSD,
	}
	f.makeScratch()
	for i := range f.dayWeight {
		f.dayWeight[i] = 1
	}
	for i := range f.share {
		f.share[i] = h.Share
	}
	mean := 0.0
	for i, y := range in.LogTime {
		mean += float64(y)
		f.results[in.course(i)]++
	}
	mean /= float64(n)
	for c := range f.course {
		f.course[c] = mean
	}
	f.setEffects()
	if err := homes(in, f.parts, f.threads, f.home); err != nil {
		return nil, err
	}
	floor := changeFloor
	if gaussian && h.FormWeek == 0 && h.FormNew == 0 {
		floor = constantFloor
	}
	return f, f.setSteps(floor)
}

// makeScratch makes room for the sums of the parts; model drops it.
func (f *fit) makeScratch() {
	f.runSums, f.sweepSums = make([][]float64, partCount), make([]sweepSums, partCount)
	for p := range f.runSums {
		f.runSums[p] = make([]float64, len(f.day))
		f.sweepSums[p] = sweepSums{make([]float64, len(f.share)), make([]float64, len(f.share))}
	}
}

func (f *fit) dropScratch() {
	f.runSums, f.sweepSums, f.infoSums, f.pre = nil, nil, [infoGroups]*mat.SymDense{}, nil
}

// setSteps fills the precisions of the changes of form.
func (f *fit) setSteps(floor float64) error {
	newness := f.h.newness()
	return parallel.EachUntil(background, partCount, f.threads, func(p int) {
		for r := f.parts[p].lo; r < f.parts[p].hi; r++ {
			a, b := f.in.Offsets[r], f.in.Offsets[r+1]
			run := f.in.Run[a:b]
			f.h.steps(func(i int) int32 { return f.in.Runs[run[i]].Day }, f.step[a:b], newness, floor)
		}
	})
}

// gaussianSites makes every result a Gaussian observation of sd sigma.
func (f *fit) gaussianSites(sigma float64) {
	copy(f.z, f.in.LogTime)
	for i := range f.w {
		f.w[i] = float32(1 / (sigma * sigma))
	}
}

// Fit estimates courses, conditions, shares and form from all results. The
// result is the same to the bit for any number of threads.
func Fit(ctx context.Context, in *Input, h Hyper, threads int) (*Model, error) {
	f, err := newFit(in, h, false, threads)
	if err != nil {
		return nil, err
	}
	if err := f.rounds(ctx, mostRounds); err != nil {
		return nil, err
	}
	return f.model(ctx)
}

// FitGaussian is the same model with every result all-out, the linear mixed
// model of the literature: residual sd h.Sigma, between-runner sd h.RunnerSD
// and the changes of form as given, DaySD and CourseSD estimated.
func FitGaussian(ctx context.Context, in *Input, h Hyper, threads int) (*Model, error) {
	f, err := newFit(in, h, true, threads)
	if err != nil {
		return nil, err
	}
	f.gaussianSites(h.Sigma)
	if err := f.sweep(ctx, 0, false); err != nil {
		return nil, err
	}
	change := f.changeMeter()
	for f.trace.Rounds < mostRounds && !f.trace.Settled {
		if err := f.solveOnce(ctx, roundTol, mostSteps); err != nil {
			return nil, err
		}
		dayVar := f.dayVar
		f.updateDays()
		f.trace.Rounds++
		rms, worst := change()
		f.trace.ChangeRMS = rms
		f.trace.Settled = rms < settledRMS && worst < settledMax && math.Abs(f.dayVar/dayVar-1) < 1e-3
	}
	if err := f.solveOnce(ctx, finalTol, finalSteps); err != nil {
		return nil, err
	}
	return f.model(ctx)
}

// rounds runs the whole fit of the mixture model.
func (f *fit) rounds(ctx context.Context, most int) error {
	// A Gaussian fit with a wide residual starts it off.
	f.gaussianSites(gaussianStart)
	if err := f.sweep(ctx, 0, false); err != nil {
		return err
	}
	if err := f.solveOnce(ctx, startTol, mostSteps); err != nil {
		return err
	}
	if err := f.sweep(ctx, startSweeps, true); err != nil {
		return err
	}
	f.updateShares()
	return f.moreRounds(ctx, most)
}

// moreRounds goes on until the courses have settled, at most the given number
// of rounds, then solves once more to the final tolerance.
func (f *fit) moreRounds(ctx context.Context, most int) error {
	change := f.changeMeter()
	change()
	tol := firstTol
	for round := 1; round <= most; round++ {
		f.damping = dampingOf(f.trace.Rounds)
		if err := f.solveOnce(ctx, max(roundTol, tol), mostSteps); err != nil {
			return err
		}
		f.updateDays()
		if err := f.sweep(ctx, 1, false); err != nil {
			return err
		}
		f.updateShares()
		f.trace.Rounds++
		rms, worst := change()
		f.trace.ChangeRMS = rms
		tol = rms / 50 // finer than the rounds themselves still move is wasted
		if f.trace.Settled = rms < settledRMS && worst < settledMax; f.trace.Settled {
			break
		}
	}
	return f.solveOnce(ctx, finalTol, finalSteps)
}

// solveOnce builds the preconditioner for the present sites and solves.
func (f *fit) solveOnce(ctx context.Context, tol float64, limit int) error {
	m, err := f.precondition(ctx)
	if err != nil {
		return err
	}
	steps, left, err := f.solve(ctx, m, tol, limit)
	f.trace.Steps += steps
	f.lastSteps = steps
	f.trace.Left = left
	return err
}

// changeMeter returns a function that gives the change of the centred course
// effects since it was last called: root mean square weighted by results, and
// the most of any course with settledCount results.
func (f *fit) changeMeter() func() (rms, worst float64) {
	prev := make([]float64, len(f.course))
	return func() (rms, worst float64) {
		total, mean := 0.0, 0.0
		for c, n := range f.results {
			total += float64(n)
			mean += float64(n) * f.course[c]
		}
		mean /= total
		for c, n := range f.results {
			d := f.course[c] - mean - prev[c]
			prev[c] = f.course[c] - mean
			rms += float64(n) / total * d * d
			if n >= settledCount {
				worst = max(worst, math.Abs(d))
			}
		}
		return math.Sqrt(rms), worst
	}
}
