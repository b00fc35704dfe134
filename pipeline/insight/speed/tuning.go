package speed

import (
	"context"
	"errors"
	"math"

	"gonum.org/v1/gonum/optimize"

	"lapwing/pipeline/parallel"
)

const (
	tuneResults = 20000 // below these an archive keeps the defaults
	tuneRunners = 500
	tuneSample  = 3000 // runners that are looked at
	tuneEvals   = 220  // evaluations of the score each time
	tuneGain    = .02  // of the score, that a choice must bring to be taken
)

// TuneReport says what tuning found. Scores are mean log densities of a
// result given the runner's earlier ones, on runners whose results were not
// used to choose the quantities.
type TuneReport struct {
	Tuned         bool
	Before, After float64
	Runners       int // in the sample, both halves
}

// Tune chooses the fixed quantities on the archive's own data by the
// one-step-ahead log score (prequential, Dawid 1984, JRSS A 147:278): courses
// and conditions as fitted, every result is scored by its density given the
// runner's earlier results. Half the sampled runners choose, the other half
// decide whether the choice is taken: it must make a typical result 2 %
// likelier. On simulated districts smaller gains left courses as they were or
// made them a little worse (by -.01 to +.03 % RMS in a dozen, the bias of fast
// courses growing by up to .15 %), and form got better by .06 % at most; where
// the standard quantities were really wrong the gain was over .1, and courses
// and form improved by a fifth to a third. Archives under 20 000 results or
// 500 runners keep h.
func Tune(ctx context.Context, in *Input, h Hyper, threads int) (Hyper, TuneReport, error) {
	f, err := newFit(in, h, false, threads)
	if err != nil {
		return h, TuneReport{}, err
	}
	if len(in.Run) < tuneResults || in.Runners() < tuneRunners {
		return h, TuneReport{}, nil
	}
	choose, decide := f.sample(tuneSample)
	report := TuneReport{Runners: len(choose) + len(decide)}
	for _, rounds := range []int{1, 3, 4} {
		if f.trace.Rounds == 0 {
			err = f.rounds(ctx, rounds)
		} else {
			err = f.moreRounds(ctx, rounds)
		}
		if err != nil {
			return h, report, err
		}
		next, err := f.tuneOnce(ctx, choose)
		if err != nil {
			return h, report, err
		}
		if err := f.setHyper(next); err != nil {
			return h, report, err
		}
	}
	tuned := f.h
	if err := f.moreRounds(ctx, 4); err != nil {
		return h, report, err
	}
	report.After, err = f.oneStepScore(ctx, tuned, 0, decide)
	if err != nil {
		return h, report, err
	}
	// The quantities that came in, on the same footing.
	g, err := newFit(in, h, false, threads)
	if err != nil {
		return h, report, err
	}
	if err := g.rounds(ctx, 12); err != nil {
		return h, report, err
	}
	if report.Before, err = g.oneStepScore(ctx, h, 0, decide); err != nil {
		return h, report, err
	}
	if report.Tuned = report.After > report.Before+tuneGain; !report.Tuned {
		return h, report, nil
	}
	return tuned, report, nil
}

// setHyper changes the fixed quantities of a fit under way.
func (f *fit) setHyper(h Hyper) error {
	f.h, f.mix, f.pre = h, h.mixture(), nil
	f.lastSteps = rebuildSteps + 1
	return f.setSteps(changeFloor)
}

// sample takes every k-th runner, in turn for choosing and deciding.
func (f *fit) sample(most int) (choose, decide []int32) {
	step := max(1, f.in.Runners()/most)
	for r := 0; r < f.in.Runners(); r += step {
		if r/step%2 == 0 {
			choose = append(choose, int32(r))
		} else {
			decide = append(decide, int32(r))
		}
	}
	return choose, decide
}

// tuneOnce maximises the score over the sample, courses, conditions and the
// pattern of the shares fixed, by the simplex of Nelder and Mead (1965).
func (f *fit) tuneOnce(ctx context.Context, runners []int32) (Hyper, error) {
	start := f.h
	var failed error
	value := func(x []float64) float64 {
		h := start.shifted(x)
		if h.Check() != nil {
			return math.Inf(1)
		}
		s, err := f.oneStepScore(ctx, h, x[6], runners)
		if err != nil {
			failed = err
			return math.Inf(1)
		}
		return -s
	}
	r, err := optimize.Minimize(optimize.Problem{Func: value, Status: func() (optimize.Status, error) {
		if failed != nil {
			return optimize.Failure, failed
		}
		return optimize.NotTerminated, nil
	}}, make([]float64, 7), &optimize.Settings{
		FuncEvaluations: tuneEvals,
		Converger:       &optimize.FunctionConverge{Absolute: 1e-6, Iterations: 30},
	}, &optimize.NelderMead{SimplexSize: .25})
	if failed != nil {
		return start, failed
	}
	if r == nil {
		return start, errors.Join(errors.New("speed: tuning failed"), err)
	}
	for g := range f.share {
		f.share[g] = shiftShare(f.share[g], r.X[6])
	}
	return start.shifted(r.X), nil
}

// shifted moves the tuned quantities on the log scale, or logit for a share.
func (h Hyper) shifted(x []float64) Hyper {
	h.Sigma *= math.Exp(x[0])
	h.MeanSlow *= math.Exp(x[1])
	h.FormWeek *= math.Exp(x[2])
	h.FormNew *= math.Exp(x[3])
	h.RunnerSD *= math.Exp(x[4])
	h.WalkShare = sigmoid(logit(h.WalkShare) + x[5])
	h.Share = shiftShare(h.Share, x[6])
	return h
}

// shiftShare moves an all-out share on the logit scale, within its bounds.
func shiftShare(s, by float64) float64 {
	return sigmoid(min(max(logit(s)+by, -logitBound), logitBound))
}

func sigmoid(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

// oneStepScore is the mean log density of the runners' results, each given
// the runner's earlier ones, under h with the logit of the shares moved by
// shift: an assumed-density filter (the forward pass of expectation
// propagation; Maybeck 1982),
//
//	v += change,  score += log f(y - g - m; Sigma² + v),  m -= u v,  v -= beta v²
func (f *fit) oneStepScore(ctx context.Context, h Hyper, shift float64, runners []int32) (float64, error) {
	mix := h.mixture()
	newness := h.newness()
	weights := make([]Components, len(f.share))
	for g, s := range f.share {
		weights[g] = h.weights(shiftShare(s, shift))
		if f.gaussian {
			weights[g] = Components{AllOut: 1}
		}
	}
	s2 := h.Sigma * h.Sigma
	var sums, counts [partCount]float64
	err := parallel.EachUntil(ctx, partCount, f.threads, func(p int) {
		var step []float32
		for _, r := range runners[len(runners)*p/partCount : len(runners)*(p+1)/partCount] {
			a, b := int(f.in.Offsets[r]), int(f.in.Offsets[r+1])
			step = grow(step, b-a)
			h.steps(func(i int) int32 { return f.in.Runs[f.in.Run[a+i]].Day }, step, newness, changeFloor)
			m, v := 0.0, h.RunnerSD*h.RunnerSD
			for i := a; i < b; i++ {
				if i > a {
					v += 1 / float64(step[i-1-a])
				}
				e := f.in.Run[i]
				w := weights[f.group(int(r), e)]
				x := float64(f.in.LogTime[i]) - f.effect[e] - m
				sums[p] += mix.logDensity(x, s2+v, w)
				u, beta, _ := mix.score(x, s2+v, w)
				m -= u * v
				v = max(v-beta*v*v, changeFloor)
			}
			counts[p] += float64(b - a)
		}
	})
	total, n := 0.0, 0.0
	for p := range sums {
		total += sums[p]
		n += counts[p]
	}
	return total / n, err
}
