package speed

import (
	"context"
	"math"
)

// Model is a finished fit. Effects are of log time: positive is slower.
type Model struct {
	Hyper   Hyper // DaySD and CourseSD as estimated
	Trace   Trace
	Courses []Course // as Input.Courses
	Runs    []Run    // as Input.Runs
	Form    []Form   // per runner

	f      *fit
	centre []float64 // per course: effect of the mean course of form
}

// Course is what the fit says about one course.
type Course struct {
	Effect        float64 // less the mean of its network and distance, by results
	SD            float64 // calibrated standard error of Effect
	Raw           float64 // effect before centring
	Network       int32   // 0 is the largest; others are not linked with it
	Group         int32   // courses of one network and distance, comparable
	Standing      Standing
	Reason        Reason
	Results, Runs int32
	Runners       int32
	SharedRunners int32 // runners who have also run on another course

	ShareResident, ShareVisitor float64 // all-out shares
}

// Run is what the fit says about one run's conditions.
type Run struct {
	Effect  float64 // conditions, shrunken towards 0
	SD      float64 // calibrated
	Results int32
	Stated  bool // enough results for conditions and adjusted times
}

// fewestRunResults is the least number of results for a run's conditions and
// adjusted times to be stated.
const fewestRunResults = 5

// SpeedIndex is 100 for the mean course of a network and distance, higher
// where people run faster.
func (c Course) SpeedIndex() float64 { return 100 * math.Exp(-c.Effect) }

// SpeedInterval is the 90 % interval of the index.
func (c Course) SpeedInterval() (low, high float64) {
	return 100 * math.Exp(-c.Effect-z90*c.SD), 100 * math.Exp(-c.Effect+z90*c.SD)
}

// SecondsAt25 gives an effect as seconds at 25:00, positive slower, and its
// 90 % interval.
func SecondsAt25(effect, sd float64) (seconds, low, high float64) {
	at := func(x float64) float64 { return 1500 * (math.Exp(x) - 1) }
	return at(effect), at(effect - z90*sd), at(effect + z90*sd)
}

// Percent gives an effect in per cent of time.
func Percent(effect float64) float64 { return 100 * (math.Exp(effect) - 1) }

// Interval is the 90 % interval of the run's effect.
func (r Run) Interval() (low, high float64) { return r.Effect - z90*r.SD, r.Effect + z90*r.SD }

// Conversion is a time on one course carried to another.
type Conversion struct {
	Seconds, Low, High float64 // on an average day, 90 % interval of the courses
	DayLow, DayHigh    float64 // 90 % interval for one given day
}

// Convert carries a time in seconds, run on an average day, from course a to
// course b. It is false where the courses cannot be compared: another network
// or distance, or no index. The interval leaves out the covariance of the two
// courses and is wide rather than narrow.
func (s Solution) Convert(seconds float64, a, b int) (Conversion, bool) {
	return s.ConvertFrom(seconds, a, b, Run{})
}

// ConvertFrom carries a time that was run on course a under the conditions of
// the given run to an average day on course b; b may be a.
func (s Solution) ConvertFrom(seconds float64, a, b int, run Run) (Conversion, bool) {
	x, y, h := s.Courses[a], s.Courses[b], s.Hyper
	diff, v := -run.Effect, run.SD*run.SD
	if a != b {
		if x.Group != y.Group || x.Standing == NoIndex || y.Standing == NoIndex {
			return Conversion{}, false
		}
		diff += y.Raw - x.Raw
		v += x.SD*x.SD + y.SD*y.SD
	}
	// The variance of the t distribution of the days is finite above 2
	// degrees of freedom; at the default 4 it is twice the squared scale.
	day := v + h.DaySD*h.DaySD*h.DayDF/max(h.DayDF-2, 1)
	at := func(z float64) float64 { return seconds * math.Exp(diff+z) }
	return Conversion{
		Seconds: at(0),
		Low:     at(-z90 * math.Sqrt(v)), High: at(z90 * math.Sqrt(v)),
		DayLow: at(-z90 * math.Sqrt(day)), DayHigh: at(z90 * math.Sqrt(day)),
	}, true
}

// model turns the working state into the figures that leave the package.
func (f *fit) model(ctx context.Context) (*Model, error) {
	m := &Model{Hyper: f.h, Trace: f.trace, f: f}
	m.Hyper.DaySD, m.Hyper.CourseSD = math.Sqrt(f.dayVar), math.Sqrt(f.courseVar)
	network := networks(f.in, f.results)
	group, weight := groups(f.in, network, f.results)
	variance, err := f.courseVariance(ctx, group, weight)
	if err != nil {
		return nil, err
	}
	runners, shared := links(f.in)
	count := f.runCounts()
	m.Runs = make([]Run, len(f.in.Runs))
	courseRuns := make([]int32, len(f.course))
	for e, k := range f.in.Runs {
		m.Runs[e] = newRun(f.day[e], 1/(f.info[e]+f.dayPrecision(e)), count[e])
		if count[e] > 0 {
			courseRuns[k.Course]++
		}
	}
	peers, mean := map[int32]int{}, map[int32]float64{}
	for c, g := range group {
		mean[g] += weight[c] * f.course[c]
		if f.results[c] > 0 {
			peers[g]++
		}
	}
	m.Courses = make([]Course, len(f.course))
	for c := range m.Courses {
		k := Course{
			Effect: f.course[c] - mean[group[c]], Raw: f.course[c], SD: publishedSD(variance[c]),
			Network: network[c], Group: group[c],
			Results: f.results[c], Runs: courseRuns[c], Runners: runners[c], SharedRunners: shared[c],
			ShareResident: f.share[2*c], ShareVisitor: f.share[2*c+1],
		}
		k.judge(peers[k.Group] < 2)
		m.Courses[c] = k
	}
	m.centre = formCentres(f.in.Courses, m.Courses)
	m.Form, err = f.forms(ctx, m.centre)
	f.dropScratch()
	return m, err
}

func newRun(effect, variance float64, results int32) Run {
	return Run{Effect: effect, SD: runFactor * math.Sqrt(variance), Results: results, Stated: results >= fewestRunResults}
}

// runCounts is the number of results in every run.
func (f *fit) runCounts() []int32 {
	n := make([]int32, len(f.in.Runs))
	for _, e := range f.in.Run {
		n[e]++
	}
	return n
}
