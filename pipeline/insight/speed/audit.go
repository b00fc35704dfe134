package speed

import (
	"context"
	"fmt"
	"math"
)

// Audit holds checks of the model on an archive's own data, where nobody knows
// the truth.
type Audit struct {
	// Results kept out of the fit, and the mean log density that each model
	// gives them: e^(difference) is how much likelier the better one made a
	// typical one of them. Both models are tuned.
	HeldOut                   int
	ScoreModel, ScoreGaussian float64

	// Courses fitted twice, each time on half of the runners: root mean square
	// of the difference in log time, and of the difference over its standard
	// error, which is about 1 or less if the intervals are honest.
	HalvesCourses       int
	HalvesRMS, HalvesSE float64

	// Residents' and visitors' results fitted as if on different courses: the
	// slope of (visitors - residents) on the course effect. Visitors who keep
	// their efforts for fast courses beyond what the shares allow for make it
	// positive.
	SelectionCourses  int
	Slope, SlopeError float64

	GrossShare float64    // share of times that more likely belong to somebody else
	Histogram  []AuditBin // residuals and what the model expects

	// The exponent of time = distance^b that the courses suggest, where there
	// are two distances or more.
	Exponent, ExponentError float64
	Distances               int
	DistanceRunners         int // runners with results at two distances or more
}

// AuditBin counts results by their time against what the runner's other
// results, the course and the day lead one to expect.
type AuditBin struct {
	Low, High          float64 // per cent of time
	Observed, Expected float64 // results
}

const (
	auditHeld   = 500   // runners who have their last result kept out, about
	mostHeld    = 2     // but no more than every second runner
	fewestHeld  = 10    // and no fewer than every tenth
	auditSample = 20000 // runners in the histogram
)

var auditEdges = []float64{-100, -8, -5, -3, -2, -1, 0, 1, 2, 3, 5, 8, 12, 20, 35, 100}

// RunAudit checks the model on the archive's own data. It fits the model five
// times and is meant for now and then, not for every refresh.
func RunAudit(ctx context.Context, in *Input, h Hyper, threads int) (*Audit, error) {
	a := &Audit{}
	m, err := Fit(ctx, in, h, threads)
	if err != nil {
		return nil, err
	}
	a.residuals(m)
	a.distances(m)
	if err := a.heldOut(ctx, in, h, threads); err != nil {
		return nil, err
	}
	if err := a.halves(ctx, in, h, threads); err != nil {
		return nil, err
	}
	return a, a.selection(ctx, m, threads)
}

// residuals fills the histogram and the share of gross errors, every result
// against the runner's other results.
func (a *Audit) residuals(m *Model) {
	f := m.f
	for k := 1; k < len(auditEdges); k++ {
		a.Histogram = append(a.Histogram, AuditBin{Low: auditEdges[k-1], High: auditEdges[k]})
	}
	// The outer bins are open.
	cut := make([]float64, len(auditEdges))
	for k, e := range auditEdges {
		cut[k] = math.Log1p(e / 100)
	}
	cut[0], cut[len(cut)-1] = -10, 10
	weights := f.groupWeights()
	prior := 1 / (f.h.RunnerSD * f.h.RunnerSD)
	s2 := f.h.Sigma * f.h.Sigma
	var ch chain
	n, gross := 0.0, 0.0
	step := max(1, f.in.Runners()/auditSample)
	for r := 0; r < f.in.Runners(); r += step {
		lo := int(f.in.Offsets[r])
		f.smooth(&ch, r, prior)
		if len(ch.w) < fewestForEffort {
			continue
		}
		for i := range ch.w {
			k := ch.cavity(i)
			e := f.in.Run[lo+i]
			x := float64(f.in.LogTime[lo+i]) - f.effect[e] - k.mean
			w := weights[f.group(r, e)]
			_, _, p := f.mix.score(x, s2+k.vari, w)
			if p.Gross > likely {
				gross++
			}
			n++
			before := 0.0
			for b := range a.Histogram {
				upTo := f.mix.below(cut[b+1], s2+k.vari, w)
				a.Histogram[b].Expected += upTo - before
				before = upTo
				if x >= cut[b] && x < cut[b+1] {
					a.Histogram[b].Observed++
				}
			}
		}
	}
	a.GrossShare = gross / max(n, 1)
}

// distances estimates the endurance exponent from the courses of the largest
// network: the slope of the course effects, scaled with EnduranceExponent, on
// log distance, weighted by 1/(CourseSD² + SD²).
func (a *Audit) distances(m *Model) {
	var w, x, y, xx, xy float64
	seen := map[float64]bool{}
	for c, k := range m.Courses {
		if k.Network != 0 || k.Results == 0 {
			continue
		}
		d := m.f.in.Courses[c].DistanceM
		seen[d] = true
		u := 1 / (m.Hyper.CourseSD*m.Hyper.CourseSD + k.SD*k.SD)
		l := math.Log(d / referenceM)
		w, x, y, xx, xy = w+u, x+u*l, y+u*k.Raw, xx+u*l*l, xy+u*l*k.Raw
	}
	a.Distances = len(seen)
	if a.Distances < 2 {
		return
	}
	a.DistanceRunners = atTwoDistances(m.f.in)
	spread := xx - x*x/w
	a.Exponent = EnduranceExponent + (xy-x*y/w)/spread
	a.ExponentError = 1 / math.Sqrt(spread)
}

// atTwoDistances counts the runners with results at two distances or more.
func atTwoDistances(in *Input) int {
	n := 0
	for r := range in.Runners() {
		first := in.Courses[in.course(int(in.Offsets[r]))].DistanceM
		for i := in.Offsets[r] + 1; i < in.Offsets[r+1]; i++ {
			if in.Courses[in.course(int(i))].DistanceM != first {
				n++
				break
			}
		}
	}
	return n
}

// heldOut keeps the last result of some of the runners out, tunes and fits both
// models on the rest and scores what was kept out.
func (a *Audit) heldOut(ctx context.Context, in *Input, h Hyper, threads int) error {
	rest := &Input{Runs: in.Runs, Courses: in.Courses, Offsets: []int32{0}}
	able := 0
	for r := range in.Runners() {
		if in.Offsets[r+1]-in.Offsets[r] >= fewestForEffort {
			able++
		}
	}
	every := min(max(able/auditHeld, mostHeld), fewestHeld)
	var out []heldResult
	able = 0
	for r := 0; r < in.Runners(); r++ {
		lo, hi := in.Offsets[r], in.Offsets[r+1]
		if hi-lo >= fewestForEffort {
			if able%every == 0 {
				hi--
				out = append(out, heldResult{r, in.Run[hi], float64(in.LogTime[hi])})
			}
			able++
		}
		rest.Run = append(rest.Run, in.Run[lo:hi]...)
		rest.LogTime = append(rest.LogTime, in.LogTime[lo:hi]...)
		rest.Offsets = append(rest.Offsets, int32(len(rest.Run)))
	}
	if len(out) == 0 {
		return nil
	}
	a.HeldOut = len(out)
	h, _, err := Tune(ctx, rest, h, threads)
	if err != nil {
		return err
	}
	m, err := Fit(ctx, rest, h, threads)
	if err != nil {
		return err
	}
	a.ScoreModel = m.f.score(out)

	// The Gaussian model: start with the spread of everybody's residuals, then
	// tune it by the same score.
	wide := h
	wide.Sigma = .06
	g, err := FitGaussian(ctx, rest, wide, threads)
	if err != nil {
		return err
	}
	choose, _ := g.f.sample(tuneSample)
	for range 2 {
		if wide, err = g.f.tuneOnce(ctx, choose); err != nil {
			return err
		}
		if g, err = FitGaussian(ctx, rest, wide, threads); err != nil {
			return err
		}
	}
	a.ScoreGaussian = g.f.score(out)
	return nil
}

// heldResult is a result that a fit has not seen.
type heldResult struct {
	runner int
	run    int32
	y      float64
}

// score is the mean log density of results that follow their runners' last.
func (f *fit) score(out []heldResult) float64 {
	prior := 1 / (f.h.RunnerSD * f.h.RunnerSD)
	newness := f.h.newness()
	weights := f.groupWeights()
	var ch chain
	var step [2]float32
	sum := 0.0
	for _, o := range out {
		f.smooth(&ch, o.runner, prior)
		last := len(ch.w) - 1
		days := [2]int32{f.in.Runs[f.in.Run[f.in.Offsets[o.runner+1]-1]].Day, f.in.Runs[o.run].Day}
		f.h.steps(func(i int) int32 { return days[i] }, step[:], newness, changeFloor)
		v := ch.vari[last] + 1/float64(step[0])
		w := weights[f.group(o.runner, o.run)]
		if f.gaussian {
			w = Components{AllOut: 1}
		}
		sum += f.mix.logDensity(o.y-f.effect[o.run]-ch.mean[last], f.h.Sigma*f.h.Sigma+v, w)
	}
	return sum / float64(len(out))
}

// halves fits the courses on every other runner and compares.
func (a *Audit) halves(ctx context.Context, in *Input, h Hyper, threads int) error {
	var fits [2]*Model
	for k := range fits {
		half := &Input{Runs: in.Runs, Courses: in.Courses}
		for r := k; r < in.Runners(); r += 2 {
			half.Offsets = append(half.Offsets, int32(len(half.Run)))
			half.Run = append(half.Run, in.Run[in.Offsets[r]:in.Offsets[r+1]]...)
			half.LogTime = append(half.LogTime, in.LogTime[in.Offsets[r]:in.Offsets[r+1]]...)
		}
		if len(half.Run) == 0 {
			return nil
		}
		half.Offsets = append(half.Offsets, int32(len(half.Run)))
		m, err := Fit(ctx, half, h, threads)
		if err != nil {
			return err
		}
		fits[k] = m
	}
	var d2, z2 float64
	for c, x := range fits[0].Courses {
		y := fits[1].Courses[c]
		if x.Standing == NoIndex || y.Standing == NoIndex {
			continue
		}
		d := x.Effect - y.Effect
		d2 += d * d
		z2 += d * d / (x.SD*x.SD + y.SD*y.SD)
		a.HalvesCourses++
	}
	if n := float64(a.HalvesCourses); n > 0 {
		a.HalvesRMS, a.HalvesSE = math.Sqrt(d2/n), math.Sqrt(z2/n)
	}
	return nil
}

// selection makes two courses of each, one for its residents and one for its
// visitors, fits them and regresses the difference on the course effect.
func (a *Audit) selection(ctx context.Context, m *Model, threads int) error {
	in := m.f.in
	n := int32(len(in.Courses))
	two := &Input{Offsets: in.Offsets, LogTime: in.LogTime, Run: make([]int32, len(in.Run))}
	two.Courses = append(append(two.Courses, in.Courses...), in.Courses...)
	two.Runs = append(append(two.Runs, in.Runs...), in.Runs...)
	for e := range in.Runs {
		two.Runs[len(in.Runs)+e].Course += n
	}
	for r, home := range m.f.home {
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			two.Run[i] = in.Run[i]
			if in.course(int(i)) != home {
				two.Run[i] += int32(len(in.Runs))
			}
		}
	}
	// Two results on one day may change places when one is a visit.
	sortDays(two)
	s, err := Fit(ctx, two, m.f.h, threads)
	if err != nil {
		return err
	}
	var w, x, y, xx, xy float64
	var us, xs, ds []float64
	for c, k := range m.Courses {
		res, vis := s.Courses[c], s.Courses[int32(c)+n]
		if k.Standing == NoIndex || res.Standing == NoIndex || vis.Standing == NoIndex || res.Group != vis.Group {
			continue
		}
		u := 1 / (res.SD*res.SD + vis.SD*vis.SD)
		d := vis.Effect - res.Effect
		w, x, y, xx, xy = w+u, x+u*k.Effect, y+u*d, xx+u*k.Effect*k.Effect, xy+u*k.Effect*d
		us, xs, ds = append(us, u), append(xs, k.Effect), append(ds, d)
		a.SelectionCourses++
	}
	if a.SelectionCourses < 3 {
		return nil
	}
	spread := xx - x*x/w
	a.Slope = (xy - x*y/w) / spread
	rest := 0.0
	for k, u := range us {
		e := ds[k] - y/w - a.Slope*(xs[k]-x/w)
		rest += u * e * e
	}
	a.SlopeError = math.Sqrt(max(rest/float64(len(us)-2), 1e-12) / spread)
	return nil
}

// sortDays puts each runner's results of one day in order of the run.
func sortDays(in *Input) {
	y := append([]float32(nil), in.LogTime...)
	in.LogTime = y
	for r := 0; r < in.Runners(); r++ {
		for i := in.Offsets[r] + 1; i < in.Offsets[r+1]; i++ {
			for j := i; j > in.Offsets[r] && in.Runs[in.Run[j-1]].Day == in.Runs[in.Run[j]].Day && in.Run[j-1] > in.Run[j]; j-- {
				in.Run[j-1], in.Run[j] = in.Run[j], in.Run[j-1]
				y[j-1], y[j] = y[j], y[j-1]
			}
		}
	}
}

// Words says what the audit found, a paragraph for each check.
func (a *Audit) Words() []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if a.HeldOut > 0 {
		verdict := "allowing for effort helps here"
		times := math.Exp(a.ScoreModel - a.ScoreGaussian)
		if times < 1 {
			verdict = "allowing for effort does not help here, so trust the figures less"
		}
		say("Prediction: the latest result of %d runners was hidden and then predicted. For a typical one this model thought the time that was run %.2f times as likely as a model did in which everybody always runs all-out and times scatter evenly: %s.", a.HeldOut, times, verdict)
	} else {
		say("Prediction: not checked, nobody has %d results yet.", fewestForEffort)
	}
	if a.HalvesCourses > 0 {
		verdict := "the spans are wide enough"
		if a.HalvesSE > 1.15 {
			verdict = "the spans printed beside the indices are too narrow here, so read them with a margin"
		}
		say("Two halves: %d courses were worked out twice, from either half of the runners. The two answers differ by %.1f s at 25:00, %.2f times what their spans allow for (about 1, or less, is right): %s.", a.HalvesCourses, 1500*a.HalvesRMS, a.HalvesSE, verdict)
	} else {
		say("Two halves: not checked, too few linked courses.")
	}
	if a.SelectionCourses >= 3 {
		verdict := "no sign that visitors keep their best days for fast courses beyond what is allowed for"
		if math.Abs(a.Slope) > 2*a.SlopeError {
			verdict = "whom a course is judged by matters here, so don't make much of small differences between courses"
		}
		way := "smaller"
		if a.Slope >= 0 {
			way = "larger"
		}
		say("Residents and visitors: %d courses were worked out twice, from those who usually run there and from visitors. Where one course is 10 s faster than another, visitors make the difference %.1f s %s than residents do (give or take %.1f s): %s.", a.SelectionCourses, math.Abs(10*a.Slope), way, 2*10*a.SlopeError, verdict)
	} else {
		say("Residents and visitors: not checked, fewer than 3 courses with enough of both.")
	}
	verdict := "few enough"
	if a.GrossShare >= .01 {
		verdict = "many: check who is who with lapwing match"
	}
	say("Times that fit somebody else better: %.2f %% (%s; 1 %% would be many).", 100*a.GrossShare, verdict)
	if a.Distances > 1 {
		say("Distances: %d runners have run two or more. The courses suggest that time grows as distance to the power %.3f (give or take %.3f); the model takes %.2f. No index depends on it, as courses are only compared with others of their distance.", a.DistanceRunners, a.Exponent, 2*a.ExponentError, EnduranceExponent)
	}
	return out
}
