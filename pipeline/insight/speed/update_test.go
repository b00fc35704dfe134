package speed

import (
	"context"
	"fmt"
	"math"
	"testing"
)

// part is some of an input, with where its runners and results came from.
type part struct {
	*Input
	runner []int32 // per runner: number in the whole
}

// keep gives the results for which want is true; all runs and courses stay.
func keep(in *Input, want func(r, i int) bool) part {
	p := part{Input: &Input{Runs: in.Runs, Courses: in.Courses}}
	for r := 0; r < in.Runners(); r++ {
		start := len(p.Run)
		for i := int(in.Offsets[r]); i < int(in.Offsets[r+1]); i++ {
			if want(r, i) {
				p.Run = append(p.Run, in.Run[i])
				p.LogTime = append(p.LogTime, in.LogTime[i])
			}
		}
		if len(p.Run) > start {
			p.Offsets = append(p.Offsets, int32(start))
			p.runner = append(p.runner, int32(r))
		}
	}
	p.Offsets = append(p.Offsets, int32(len(p.Run)))
	return p
}

// The runs of a week or of four, added to the last full solution, get nearly
// the conditions and forms that a full solution gives them.
func TestUpdateIsCloseToAFullFit(t *testing.T) {
	in, tr := club(base, 2).simulate()
	for _, weeks := range []int32{1, 4} {
		t.Run(fmt.Sprint(weeks), func(t *testing.T) { updateIsClose(t, in, tr, (150-weeks)*7) })
	}
}

func updateIsClose(t *testing.T, in *Input, tr *truth, newest int32) {
	before := keep(in, func(_, i int) bool { return in.Runs[in.Run[i]].Day < newest })
	old := mustFit(t, before.Input)
	fresh := make([]bool, len(in.Runs))
	for e, k := range in.Runs {
		fresh[e] = k.Day >= newest
	}
	there := make([]bool, in.Runners())
	for r := range there {
		there[r] = fresh[in.Run[in.Offsets[r+1]-1]]
	}
	concerned := keep(in, func(r, _ int) bool { return there[r] })
	m, err := Update(context.Background(), concerned.Input, old.Solution(), old.Runs, fresh, 2)
	if err != nil {
		t.Fatal(err)
	}
	if !m.Trace.Settled {
		t.Errorf("not settled: %+v", m.Trace)
	}
	full := mustFit(t, in)
	n, sum, worst, truth := 0.0, 0.0, 0.0, 0.0
	for e := range in.Runs {
		if !fresh[e] {
			if m.Runs[e] != old.Runs[e] {
				t.Fatalf("known run %d changed", e)
			}
			continue
		}
		if m.Runs[e].Results != full.Runs[e].Results {
			t.Errorf("run %d has %d results, full fit %d", e, m.Runs[e].Results, full.Runs[e].Results)
		}
		if !m.Runs[e].Stated {
			continue
		}
		// what the run amounts to: its course, centred, and its day
		c := in.Runs[e].Course
		d := m.Courses[c].Effect + m.Runs[e].Effect - full.Courses[c].Effect - full.Runs[e].Effect
		w := float64(m.Runs[e].Results)
		sum += w * d * d
		truth += w * math.Pow(m.Runs[e].Effect-tr.day[e], 2)
		worst = max(worst, math.Abs(d))
		n += w
		if ratio := m.Runs[e].SD / full.Runs[e].SD; ratio < .7 || ratio > 1.4 {
			t.Errorf("run %d: sd %.4f, full fit %.4f", e, m.Runs[e].SD, full.Runs[e].SD)
		}
	}
	t.Logf("conditions of %.0f results: RMS %.3f %% from the full fit, at most %.3f; %.3f from the truth", n, 100*math.Sqrt(sum/n), 100*worst, 100*math.Sqrt(truth/n))
	if n < 100 || math.Sqrt(sum/n) > .0015 || worst > .004 {
		t.Errorf("conditions: %.0f results, RMS %.4f, worst %.4f", n, math.Sqrt(sum/n), worst)
	}
	sum, worst = 0, 0
	far := 0
	for k, r := range concerned.runner {
		d := m.Form[k].Log - full.Form[r].Log
		sum += d * d
		worst = max(worst, math.Abs(d))
		if math.Abs(d) > .01 {
			far++
		}
	}
	count := float64(len(concerned.runner))
	t.Logf("form of %.0f runners: RMS %.3f %%, at most %.3f, %d over 1 %%", count, 100*math.Sqrt(sum/count), 100*worst, far)
	if math.Sqrt(sum/count) > .005 || far > int(count/50) {
		t.Errorf("form: RMS %.4f, %d of %.0f over 1 %%", math.Sqrt(sum/count), far, count)
	}
}

// An earlier run that comes in late, a new course and a new runner.
func TestUpdateOfOddRuns(t *testing.T) {
	in, tr := club(base, 3).simulate()
	late := int32(0)
	for e, k := range in.Runs {
		if k.Day == 100*7 && k.Course == 3 {
			late = int32(e)
		}
	}
	before := keep(in, func(_, i int) bool { return in.Run[i] != late })
	old := mustFit(t, before.Input)
	there := make([]bool, in.Runners())
	for r := range there {
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			there[r] = there[r] || in.Run[i] == late
		}
	}
	concerned := keep(in, func(r, _ int) bool { return there[r] })
	// The new course and its run, with everybody of the late run and somebody new.
	all := *concerned.Input
	all.Courses = append(append([]CourseInfo(nil), in.Courses...), CourseInfo{referenceM})
	all.Runs = append(append([]RunInfo(nil), in.Runs...), RunInfo{int32(len(in.Courses)), 150 * 7})
	unseen := int32(len(in.Runs))
	var runner, run []int32
	var y []float32
	for r := 0; r < all.Runners(); r++ {
		for i := all.Offsets[r]; i < all.Offsets[r+1]; i++ {
			runner, run, y = append(runner, int32(r)), append(run, all.Run[i]), append(y, all.LogTime[i])
		}
		runner, run = append(runner, int32(r)), append(run, unseen)
		y = append(y, all.LogTime[all.Offsets[r+1]-1]+.3)
	}
	runner, run, y = append(runner, int32(all.Runners())), append(run, unseen), append(y, 0)
	use, _, err := arrange(runner, run, y, all.Runs, all.Courses)
	if err != nil {
		t.Fatal(err)
	}
	fresh := make([]bool, len(all.Runs))
	fresh[late], fresh[unseen] = true, true
	m, err := Update(context.Background(), use, old.Solution(), append(append([]Run(nil), old.Runs...), Run{Results: 500}), fresh, 2)
	if err != nil {
		t.Fatal(err)
	}
	if d := m.Runs[late].Effect - tr.day[late]; !m.Runs[late].Stated || math.Abs(d) > 3*m.Runs[late].SD {
		t.Errorf("late run: %+v, truth %.4f", m.Runs[late], tr.day[late])
	}
	if m.Runs[unseen].Stated || m.Courses[len(in.Courses)].Standing != NoIndex || m.Courses[len(in.Courses)].Reason != NewCourse {
		t.Errorf("a new course: %+v, %+v", m.Runs[unseen], m.Courses[len(in.Courses)])
	}
	if n := m.Runs[unseen].Results; n != 500 {
		t.Errorf("a run of 500 results, of whose runners some are looked at, has %d", n)
	}
	// 30 % slower for everybody must not cost anybody their form.
	if d := m.Runs[unseen].Effect; d < .15 {
		t.Errorf("a run 30 %% slower has effect %.3f", d)
	}
	figs := m.Figures(0, nil)
	if !math.IsNaN(figs[len(figs)-1].Adjusted) {
		t.Error("a time on a new course was adjusted")
	}
}

// The quadrature against plain arithmetic: with one Gaussian component left,
// the posterior of the conditions is Gaussian.
func TestConditionsOfAGaussian(t *testing.T) {
	mix := Defaults().mixture()
	seen := []observation{{.03, .0004, Components{AllOut: 1}}, {.05, .0001, Components{AllOut: 1}}}
	const v = .012 * .012
	mean, variance := conditions(&mix, seen, func(d float64) float64 { return -d * d / (2 * v) })
	precision := 1/.0004 + 1/.0001 + 1/v
	want := (.03/.0004 + .05/.0001) / precision
	if math.Abs(mean-want) > 1e-7 || math.Abs(variance*precision-1) > 1e-5 {
		t.Errorf("%g, %g; want %g, %g", mean, variance, want, 1/precision)
	}
}
