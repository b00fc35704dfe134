package speed

import (
	"context"
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"testing"
)

// Worlds that break the model's assumptions cost accuracy, not sense. The
// bounds are about half as much again as what was measured.
func TestOtherWorlds(t *testing.T) {
	for _, c := range []struct {
		name              string
		world             world
		course, form, day float64
	}{
		{"effort has nothing to do with the course", noselect, .45, 2.4, .75},
		{"strong selection", sel, .45, 2.2, .75},
		{"no all-out days", gamma, .45, 2.6, .75},
		{"hard and easy spells", persist, .45, 2.5, .85},
		{"symmetric noise", gauss, .8, 3, 1.4},
	} {
		var a accuracy
		for seed := uint64(1); seed <= 2; seed++ {
			in, tr := club(c.world, seed).simulate()
			b := tr.judge(in, mustFit(t, in))
			t.Logf("%s: %v", c.name, b)
			a.course, a.form, a.day = a.course+b.course/2, a.form+b.form/2, a.day+b.day/2
			a.cover += b.cover / 2
		}
		if !(a.course < c.course && a.form < c.form && a.day < c.day) || a.cover < .75 {
			t.Errorf("%s: courses %.3f %%, form %.2f, conditions %.3f, cover %.2f", c.name, a.course, a.form, a.day, a.cover)
		}
	}
}

// What the 90 % intervals of courses hold, and how much too fast the fastest 30 %
// come out, over districts of three sizes and all laws of effort. The seeds are
// none of those that the calibration was found on. It takes minutes, on a busy
// machine more than the ten that go test allows, and is asked for with
// LAPWING_CALIBRATION=1 and -timeout 1h.
func TestCalibration(t *testing.T) {
	if os.Getenv("LAPWING_CALIBRATION") == "" {
		t.Skip("takes minutes: LAPWING_CALIBRATION=1 runs it")
	}
	names := []string{base: "base", noselect: "noselect", sel: "sel", gamma: "gamma", persist: "persist"}
	for _, size := range []struct {
		name  string
		seeds uint64
		d     district
	}{
		{"clubs", 6, club(base, 0)},
		{"middling", 3, district{courses: 40, runners: 8000, weeks: 104, results: 200000}},
		{"regions", 2, district{courses: 150, runners: 40000, weeks: 200, results: 960000}},
	} {
		for w, name := range names {
			var n, cover, square, fast float64
			for seed := uint64(71); seed < 71+size.seeds; seed++ {
				size.d.world, size.d.seed = world(w), seed
				in, tr := size.d.simulate()
				a := tr.judge(in, mustFit(t, in))
				judged := float64(a.judged)
				n, cover, square = n+judged, cover+judged*a.cover, square+judged*a.course*a.course
				fast += a.fast / float64(size.seeds)
			}
			t.Logf("%s, %s: %.0f courses, RMSE %.3f %%, intervals hold %.2f, fast ones off by %+.2f %%", size.name, name, n, math.Sqrt(square/n), cover/n, fast)
			least, most := .84, .98
			if world(w) > noselect {
				least, most = .72, .99
			}
			if c := cover / n; c < least || c > most || math.Abs(fast) > .3 {
				t.Errorf("%s, %s: intervals hold %.2f, fast ones off by %+.2f %%", size.name, name, c, fast)
			}
		}
	}
}

// Runners who often push a buggy must not be taken for slow runners whose
// real runs are errors.
func TestBuggiesDoNotLockIn(t *testing.T) {
	d := club(base, 9)
	d.buggies = .3
	in, tr := d.simulate()
	a := tr.judge(in, mustFit(t, in))
	t.Log(a)
	if a.form > 2.4 {
		t.Errorf("form %.2f %%", a.form)
	}
	// Without the robust start the same district is much worse, or this test
	// shows nothing.
	f, err := newFit(in, Defaults(), false, 2)
	if err != nil {
		t.Fatal(err)
	}
	f.gaussianSites(gaussianStart)
	if err := f.sweep(background, 0, false); err != nil {
		t.Fatal(err)
	}
	if err := f.moreRounds(background, 12); err != nil {
		t.Fatal(err)
	}
	m, err := f.model(background)
	if err != nil {
		t.Fatal(err)
	}
	if b := tr.judge(in, m); b.form < a.form+.3 {
		t.Errorf("without the robust start form is %.2f %%", b.form)
	}
}

// figures flattens everything that leaves a model.
func (m *Model) figures() []float64 {
	var out []float64
	for _, c := range m.Courses {
		out = append(out, c.Effect, c.SD, c.Raw, c.ShareResident, c.ShareVisitor, float64(c.Network), float64(c.Standing))
	}
	for _, r := range m.Runs {
		out = append(out, r.Effect, r.SD, float64(r.Results))
	}
	var figs []Figure
	for r, f := range m.Form {
		out = append(out, f.Log, f.SD, f.Change, f.ChangeSD, float64(f.Trend()))
		figs = m.Figures(r, figs)
		for _, g := range figs {
			out = append(out, g.Form, g.Shortfall, g.Odds.AllOut, float64(g.Effort))
		}
	}
	return out
}

func TestSameBitsForAnyThreadsAndOrder(t *testing.T) {
	in, _ := district{world: base, courses: 8, runners: 500, weeks: 60, results: 6000, seed: 3}.simulate()
	var runner []int32
	for r := 0; r < in.Runners(); r++ {
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			runner = append(runner, int32(r))
		}
	}
	var want []float64
	for k, threads := range []int{1, 2, 8, 2, 2} {
		now := runtime.GOMAXPROCS(threads) // the linear algebra library counts these
		use := in
		if k >= 3 {
			rng := rand.New(rand.NewPCG(uint64(k), 1))
			a, b, c := make([]int32, len(runner)), make([]int32, len(runner)), make([]float32, len(runner))
			for i, j := range rng.Perm(len(runner)) {
				a[i], b[i], c[i] = runner[j], in.Run[j], in.LogTime[j]
			}
			var err error
			if use, _, err = arrange(a, b, c, in.Runs, in.Courses); err != nil {
				t.Fatal(err)
			}
		}
		m, err := Fit(context.Background(), use, Defaults(), threads)
		runtime.GOMAXPROCS(now)
		if err != nil {
			t.Fatal(err)
		}
		got := m.figures()
		if k == 0 {
			want = got
			continue
		}
		if len(got) != len(want) {
			t.Fatalf("%d figures, then %d", len(want), len(got))
		}
		for i := range want {
			if math.Float64bits(got[i]) != math.Float64bits(want[i]) {
				t.Fatalf("%d threads, fit %d: figure %d is %v, was %v", threads, k, i, got[i], want[i])
			}
		}
	}
}

// bridged keeps, of the runners of a course who also run elsewhere, only n; the
// others keep their results on the course or those elsewhere, whichever are
// more.
func bridged(in *Input, course int32, n int) *Input {
	out := &Input{Runs: in.Runs, Courses: in.Courses}
	for r := 0; r < in.Runners(); r++ {
		here, there := 0, 0
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			if in.course(int(i)) == course {
				here++
			} else {
				there++
			}
		}
		both := here > 0 && there > 0
		keepAll := both && n > 0
		if keepAll {
			n--
		}
		start := len(out.Run)
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			if both && !keepAll && (in.course(int(i)) == course) != (here >= there) {
				continue
			}
			out.Run = append(out.Run, in.Run[i])
			out.LogTime = append(out.LogTime, in.LogTime[i])
		}
		out.Offsets = append(out.Offsets, int32(start))
	}
	out.Offsets = append(out.Offsets, int32(len(out.Run)))
	return out
}

func TestBridging(t *testing.T) {
	in, _ := club(base, 2).simulate()
	full := mustFit(t, in)
	course := int32(0) // the course with most results that isn't the largest of all
	for c, k := range full.Courses {
		if k.Results > full.Courses[course].Results {
			course = int32(c)
		}
	}
	for _, c := range []struct {
		shared int
		lo, hi float64 // of the posterior sd in per cent, uncalibrated
	}{{0, 2.5, 100}, {5, .8, 2.5}, {50, .1, .6}} {
		m := mustFit(t, bridged(in, course, c.shared))
		k := m.Courses[course]
		// As if all courses were one group, shared runners or not.
		weight := make([]float64, len(m.Courses))
		for j, o := range m.Courses {
			weight[j] = float64(o.Results) / float64(len(m.f.in.Run))
		}
		v, err := m.f.courseVariance(background, make([]int32, len(weight)), weight)
		if err != nil {
			t.Fatal(err)
		}
		// The course carries much of the mean itself; undo its own weight.
		sd := 100 * math.Sqrt(v[course]) / (1 - weight[course])
		t.Logf("%d shared runners: sd %.2f %%, network %d, standing %d (%s)", c.shared, sd, k.Network, k.Standing, k.Reason)
		if sd < c.lo || sd > c.hi {
			t.Errorf("%d shared runners: sd %.2f %%, want %g to %g", c.shared, sd, c.lo, c.hi)
		}
		if int(k.SharedRunners) != c.shared {
			t.Errorf("%d shared runners counted as %d", c.shared, k.SharedRunners)
		}
		other := (course + 1) % int32(len(m.Courses))
		_, ok := m.Solution().Convert(1471, int(course), int(other))
		switch {
		case c.shared == 0 && (k.Network == m.Courses[other].Network || k.Standing != NoIndex || k.Reason != NothingAlike):
			t.Errorf("an unlinked course has network %d, standing %d (%s)", k.Network, k.Standing, k.Reason)
		case c.shared == 5 && (k.Standing != NoIndex || k.Reason != FewShared):
			t.Errorf("5 shared runners give standing %d (%s)", k.Standing, k.Reason)
		case c.shared == 50 && k.Standing == NoIndex:
			t.Errorf("50 shared runners give no index (%s)", k.Reason)
		}
		if ok != (c.shared == 50) {
			t.Errorf("%d shared runners: conversion allowed is %v", c.shared, ok)
		}
	}
}

func TestEdges(t *testing.T) {
	in, _ := district{world: base, courses: 4, runners: 300, weeks: 40, results: 3000, seed: 8}.simulate()
	// A course with one run, one without any, and a runner with one result.
	one := int32(len(in.Courses))
	in.Courses = append(in.Courses, CourseInfo{referenceM}, CourseInfo{referenceM})
	in.Runs = append(in.Runs, RunInfo{one, 41 * 7})
	for range 30 {
		in.Run = append(in.Run, int32(len(in.Runs)-1))
		in.LogTime = append(in.LogTime, LogTime(1500, referenceM))
		in.Offsets = append(in.Offsets, int32(len(in.Run)))
	}
	m := mustFit(t, in)
	if k := m.Courses[one]; k.Standing != NoIndex || k.Reason != OneRun {
		t.Errorf("a course with one run: standing %d (%s)", k.Standing, k.Reason)
	}
	if k := m.Courses[one+1]; k.Standing != NoIndex || k.Reason != NoResults {
		t.Errorf("a course without results: standing %d (%s)", k.Standing, k.Reason)
	}
	last := m.Form[len(m.Form)-1]
	if last.Results != 1 || last.HasChange || last.Trend() != CannotTell || last.ShownOn(last.LastDay, m.Hyper) {
		t.Errorf("a runner with one result: %+v", last)
	}
	if got := m.Figures(len(m.Form)-1, nil); len(got) != 1 || got[0].Effort != Unclear || !math.IsNaN(got[0].Adjusted) {
		t.Errorf("figures of a runner with one result: %+v", got)
	}

	// Everything on one course: nothing to compare, but conditions and form.
	in, _ = district{world: base, courses: 1, runners: 200, weeks: 60, results: 3000, seed: 8}.simulate()
	m = mustFit(t, in)
	if k := m.Courses[0]; k.Standing != NoIndex || k.Reason != NothingAlike || math.Abs(k.Effect) > 1e-12 {
		t.Errorf("the only course: %+v", k)
	}
	for _, v := range m.figures() {
		if math.IsInf(v, 0) {
			t.Fatal("infinite figure")
		}
	}

	// One result in all.
	in = &Input{Offsets: []int32{0, 1}, Run: []int32{0}, LogTime: []float32{0}, Runs: []RunInfo{{0, 0}}, Courses: []CourseInfo{{5000}}}
	m = mustFit(t, in)
	// Some of it may have been held back, so form is a little ahead of it.
	if s := m.Form[0].Seconds(); !(s > .93*math.Exp(Origin) && s < math.Exp(Origin)) {
		t.Errorf("one result of 30:08 gives form %.0f s", s)
	}
}

func TestInputIsChecked(t *testing.T) {
	good := func() *Input {
		return &Input{
			Offsets: []int32{0, 2, 3}, Run: []int32{0, 1, 0}, LogTime: []float32{0, 0, .1},
			Runs: []RunInfo{{0, 0}, {0, 7}}, Courses: []CourseInfo{{5000}},
		}
	}
	if err := good().Check(); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*Input){
		"runs out of day": func(in *Input) { in.Runs[0].Day = 8; in.Run = []int32{1, 0, 0} },
		"times missing":   func(in *Input) { in.LogTime = in.LogTime[:2] },
		"no results":      func(in *Input) { *in = Input{Offsets: []int32{0}} },
		"offsets short":   func(in *Input) { in.Offsets = []int32{0, 2} },
		"empty runner":    func(in *Input) { in.Offsets = []int32{0, 2, 2, 3} },
		"run unknown":     func(in *Input) { in.Run[0] = 2 },
		"course unknown":  func(in *Input) { in.Runs[1].Course = 1 },
		"days backwards":  func(in *Input) { in.Run[0], in.Run[1] = 1, 0 },
		"twice in a run":  func(in *Input) { in.Run[1] = 0 },
		"runs unsorted":   func(in *Input) { in.Runs[0].Day = 9 },
		"no distance":     func(in *Input) { in.Courses[0].DistanceM = 0 },
		"time not finite": func(in *Input) { in.LogTime[2] = float32(math.Inf(1)) },
	} {
		in := good()
		spoil(in)
		if in.Check() == nil {
			t.Errorf("%s: no error", name)
		}
	}
	h := Defaults()
	h.Sigma = math.NaN()
	if _, err := Fit(context.Background(), good(), h, 1); err == nil {
		t.Error("Sigma NaN: no error")
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Fit(ctx, good(), Defaults(), 1); err == nil {
		t.Error("cancelled: no error")
	}
}

// Hand arithmetic of the definitions.
func TestDefinitions(t *testing.T) {
	// 10 km in 52:07.6 is 25:00 over 5 km by Riegel's exponent: 1500 * 2^1.06.
	if got := LogTime(1500*math.Pow(2, 1.06), 10000); math.Abs(float64(got)-(math.Log(1500)-7.5)) > 1e-6 {
		t.Errorf("10 km scaled: %g", got)
	}
	if got := Seconds(float64(LogTime(1500, 3000)), 3000); math.Abs(got-1500) > 1e-3 {
		t.Errorf("there and back: %g s", got)
	}
	c := Course{Effect: .02, SD: .002}
	if got := c.SpeedIndex(); math.Abs(got-98.0199) > 1e-4 {
		t.Errorf("index %g", got)
	}
	if lo, hi := c.SpeedInterval(); math.Abs(lo-97.6980) > 1e-3 || math.Abs(hi-98.3429) > 1e-3 {
		t.Errorf("interval %g to %g", lo, hi)
	}
	if s, lo, hi := SecondsAt25(c.Effect, c.SD); math.Abs(s-30.302) > 1e-3 || math.Abs(lo-25.277) > 2e-3 || math.Abs(hi-35.344) > 2e-3 {
		t.Errorf("%+.3f s (%.3f..%.3f)", s, lo, hi)
	}
	// 24:31 to a course 2 % slower: 1471 e^.02 = 1500.72; sd .0025 of the two
	// courses, and with days of scale .01 (t4: variance twice) .01436.
	s := Solution{Hyper: Hyper{DaySD: .01, DayDF: 4}, Courses: []Course{
		{Raw: .1, SD: .002, Standing: Published}, {Raw: .12, SD: .0015, Standing: Provisional}, {Raw: .2, SD: .03},
	}}
	v, ok := s.Convert(1471, 0, 1)
	if !ok || math.Abs(v.Seconds-1500.716) > 1e-3 || math.Abs(v.Low-1494.558) > 2e-3 || math.Abs(v.DayHigh-1536.59) > .02 {
		t.Errorf("converted: %+v, %v", v, ok)
	}
	if _, ok := s.Convert(1471, 0, 2); ok {
		t.Error("converted to a course without an index")
	}
	f := Form{HasChange: true, Change: -.014, ChangeSD: .014, Before: 4, Within: 4}
	if p := f.Faster(); math.Abs(p-.841345) > 1e-6 || f.Trend() != Improving {
		t.Errorf("one standard error faster: P %g, %d", p, f.Trend())
	}
	f.Within = 3
	if f.Trend() != CannotTell {
		t.Error("three results do not make a trend")
	}
	f = Form{HasChange: true, Change: .001, ChangeSD: .01, Before: 9, Within: 9}
	if p := f.Unchanged(); math.Abs(p-(.971283-.017864)) > 1e-5 || f.Trend() != Level {
		t.Errorf("level: P %g, %d", p, f.Trend())
	}
	f.Gap = 70
	if f.Trend() != LongGap {
		t.Error("a gap of ten weeks is not said")
	}
	for _, e := range []struct {
		p         Components
		shortfall float64
		n         int
		want      Effort
	}{
		{Components{.6, .4, 0, 0}, 1, 10, Full},
		{Components{.4, .6, 0, 0}, 5, 10, Steady},
		{Components{.1, .8, .1, 0}, 12, 10, Easy},
		{Components{.45, .45, .1, 0}, 3, 10, Unclear},
		{Components{0, 0, .2, .8}, 30, 10, Unclear},
		{Components{.9, .1, 0, 0}, 0, 3, Unclear},
	} {
		if got := effort(e.p, e.shortfall, e.n); got != e.want {
			t.Errorf("effort %+v: %s, want %s", e, got, e.want)
		}
	}
}
