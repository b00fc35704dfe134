package speed

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"
)

// The rules of publication, each at its bound: 5 runs, 20 runners shared, a standard error of
// 1 and of 2 per cent.
func TestRulesOfPublication(t *testing.T) {
	good := Course{Results: 400, Runs: 5, SharedRunners: 20, SD: .01}
	for name, c := range map[string]struct {
		change   func(*Course)
		alone    bool
		standing Standing
		reason   Reason
	}{
		"all just enough":     {func(c *Course) {}, false, Published, ReasonNone},
		"a little uncertain":  {func(c *Course) { c.SD = .0101 }, false, Provisional, Uncertain},
		"just provisional":    {func(c *Course) { c.SD = .02 }, false, Provisional, Uncertain},
		"too uncertain":       {func(c *Course) { c.SD = .0201 }, false, NoIndex, TooUncertain},
		"four runs":           {func(c *Course) { c.Runs = 4 }, false, NoIndex, FewRuns},
		"one run":             {func(c *Course) { c.Runs = 1 }, false, NoIndex, OneRun},
		"nineteen shared":     {func(c *Course) { c.SharedRunners = 19 }, false, NoIndex, FewShared},
		"no results":          {func(c *Course) { c.Results, c.Runs = 0, 0 }, false, NoIndex, NoResults},
		"alone":               {func(c *Course) {}, true, NoIndex, NothingAlike},
		"judged anew":         {func(c *Course) { c.Standing, c.Reason = Provisional, Uncertain }, false, Published, ReasonNone},
		"one run, and alone":  {func(c *Course) { c.Runs = 1 }, true, NoIndex, OneRun},
		"few runs and shared": {func(c *Course) { c.Runs, c.SharedRunners = 4, 3 }, false, NoIndex, FewRuns},
	} {
		k := good
		c.change(&k)
		if k.judge(c.alone); k.Standing != c.standing || k.Reason != c.reason {
			t.Errorf("%s: %s (%s), want %s (%s)", name, k.Standing, k.Reason, c.standing, c.reason)
		}
	}
	for _, c := range []struct {
		course Course
		want   bool
	}{
		{Course{Standing: Published}, true}, {Course{Standing: Provisional, Reason: Uncertain}, true},
		{Course{Reason: NothingAlike}, true}, {Course{Reason: OneRun}, false}, {Course{Reason: TooUncertain}, false}, {Course{Reason: NewCourse}, false},
	} {
		if got := c.course.adjustable(); got != c.want {
			t.Errorf("%+v adjustable: %v", c.course, got)
		}
	}
}

// What may be said of a change, at the thresholds: the normal distribution has .8 below .8416
// standard deviations, .9 below 1.2816 (any table of it).
func TestTrendsAtTheThresholds(t *testing.T) {
	of := func(z float64) Form {
		return Form{HasChange: true, Change: -.05 * z, ChangeSD: .05, Before: 4, Within: 4, Gap: 56}
	}
	for _, c := range []struct {
		form Form
		want Trend
	}{
		{of(.84), CannotTell}, {of(.8423), Improving}, {of(1.281), Improving}, {of(1.2823), Improved},
		{of(-.84), CannotTell}, {of(-.8423), Slower}, {of(-1.281), Slower}, {of(-1.2823), MuchSlower},
		{Form{HasChange: true, Change: -.05, ChangeSD: .01, Before: 3, Within: 4}, CannotTell},
		{Form{HasChange: true, Change: -.05, ChangeSD: .01, Before: 4, Within: 3}, CannotTell},
		{Form{Change: -.05, ChangeSD: .01, Before: 9, Within: 9}, CannotTell},
		{Form{HasChange: true, Change: -.05, ChangeSD: .01, Before: 9, Within: 9, Gap: 57}, LongGap},
		{Form{HasChange: true, ChangeSD: .0155, Before: 9, Within: 9}, Level},      // P(|z| < 1.290) = .803
		{Form{HasChange: true, ChangeSD: .0157, Before: 9, Within: 9}, CannotTell}, // P(|z| < 1.274) = .797
	} {
		if got := c.form.Trend(); got != c.want {
			t.Errorf("%+v: %s, want %s", c.form, got, c.want)
		}
	}
	if f := (Form{ChangeSD: 1}); !math.IsNaN(f.Faster()) || !math.IsNaN(f.Unchanged()) {
		t.Error("a probability without a change")
	}
}

// Form is shown for 26 weeks, while its standard error, which grows by that of a random walk
// times the factor of calibration, is 4 per cent or less.
func TestFormIsShown(t *testing.T) {
	h := Hyper{FormWeek: .005}
	f := Form{SD: .02, LastDay: 1000}
	if got, want := f.SDOn(1028, h), math.Sqrt(.02*.02+1.3*1.3*.005*.005*4); math.Abs(got-want) > 1e-12 {
		t.Errorf("after four weeks %g, want %g", got, want)
	}
	if got := f.SDOn(990, h); got != .02 {
		t.Errorf("before the last result %g", got)
	}
	still := Hyper{}
	for _, c := range []struct {
		sd   float64
		days int32
		want bool
	}{{.04, 182, true}, {.04, 183, false}, {.0401, 0, false}, {.04, 0, true}} {
		if got := (Form{SD: c.sd, LastDay: 1000}).ShownOn(1000+c.days, still); got != c.want {
			t.Errorf("error %g after %d days: shown %v", c.sd, c.days, got)
		}
	}
	g := Figure{Form: math.Log(1500) - Origin, FormSD: .02}
	if s, lo, hi, ok := g.FormBand(); !ok || math.Abs(s-1500) > 1e-6 || math.Abs(lo-1500*math.Exp(-1.6448536*.02)) > 1e-3 || math.Abs(hi-1500*math.Exp(1.6448536*.02)) > 1e-3 {
		t.Errorf("the band is %g, %g to %g, %v", s, lo, hi, ok)
	}
	g.FormSD = .0401
	if _, _, _, ok := g.FormBand(); ok {
		t.Error("form known to more than 4 per cent is shown")
	}
	for odds, want := range map[float64]bool{.5: false, .501: true} {
		if got := (Figure{Odds: Components{Gross: odds}}).WrongOwner(); got != want {
			t.Errorf("somebody else's with odds %g: %v", odds, got)
		}
	}
	for _, c := range []struct {
		p         Components
		shortfall float64
		n         int
		want      Effort
	}{
		{Components{AllOut: .5, Slow: .5}, 1, 4, Full},
		{Components{Slow: .5, AllOut: .49}, 8, 4, Steady},
		{Components{Slow: .5, AllOut: .49}, 8.01, 4, Easy},
		{Components{Walk: .5, Slow: .4}, 30, 4, Easy},
		{Components{Walk: .49, Slow: .49}, 9, 4, Unclear},
		{Components{AllOut: 1}, 0, 3, Unclear},
	} {
		if got := effort(c.p, c.shortfall, c.n); got != c.want {
			t.Errorf("%+v %g %% behind, %d results: %s, want %s", c.p, c.shortfall, c.n, got, c.want)
		}
	}
}

// A runner's change of form by hand, on a chain of known gains and variances: 12 weeks back
// is the result of exactly 84 days before.
func TestChangeOfForm(t *testing.T) {
	days := []int32{0, 16, 60, 100}
	in := &Input{Offsets: []int32{0, 4}, Run: []int32{0, 1, 2, 3}, LogTime: make([]float32, 4), Courses: []CourseInfo{{5000}}}
	for _, d := range days {
		in.Runs = append(in.Runs, RunInfo{0, d})
	}
	f := &fit{in: in}
	var ch chain
	ch.resize(4)
	copy(ch.mean, []float64{.10, .08, .05, .02})
	copy(ch.vari, []float64{.0004, .0003, .0002, .0001})
	copy(ch.gain, []float64{.9, .8, .5, 0})
	m := f.form(&ch, 0, .3)
	// var(last) + var(1) − 2 · .5 · .8 · var(last)
	want := 1.2 * math.Sqrt(.0001+.0003-2*.4*.0001)
	if !m.HasChange || math.Abs(m.Change+.06) > 1e-12 || math.Abs(m.ChangeSD-want) > 1e-12 || m.Before != 2 || m.Within != 2 || m.Gap != 44 {
		t.Errorf("change %+v, want −.06 ± %g, 2 before, 2 since, a gap of 44 days", m, want)
	}
	if math.Abs(m.Log-.32) > 1e-12 || math.Abs(m.SD-1.3*.01) > 1e-12 || m.LastDay != 100 || m.Results != 4 {
		t.Errorf("form %+v", m)
	}
	in.Runs[1].Day = 17 // 83 days: the first result then
	if m = f.form(&ch, 0, 0); m.Before != 1 || m.Within != 3 || math.Abs(m.Change+.08) > 1e-12 {
		t.Errorf("with 83 days between: %+v", m)
	}
	in.Runs[0].Day = 17
	if m = f.form(&ch, 0, 0); m.HasChange {
		t.Errorf("nothing 12 weeks back, and a change: %+v", m)
	}
}

// The standard errors as published: the factors are those of the guide.
func TestPublishedErrors(t *testing.T) {
	if got, want := publishedSD(.0001), math.Sqrt(1.1*1.1*.0001+.0014*.0014); math.Abs(got-want) > 1e-12 {
		t.Errorf("a course: %g, want %g", got, want)
	}
	for n, stated := range map[int32]bool{4: false, 5: true} {
		if r := newRun(.01, .0001, n); r.Effect != .01 || math.Abs(r.SD-.013) > 1e-12 || r.Results != n || r.Stated != stated {
			t.Errorf("a run of %d results: %+v", n, r)
		}
	}
}

// Conditions have a t distribution: of 4 degrees of freedom, two scales from the middle, the
// density is 2^−2.5 of the one there.
func TestPriorOfConditions(t *testing.T) {
	at := studentLog(.01, 4)
	if got := at(.02) - at(0); math.Abs(got+2.5*math.Ln2) > 1e-12 || at(-.02) != at(.02) {
		t.Errorf("two scales from the middle %g, want %g", got, -2.5*math.Ln2)
	}
}

// An adjusted time is what is left of a time without its course and its day, over the course's
// own distance; a result's shortfall is against form, course and day.
func TestAdjustedTimes(t *testing.T) {
	in, _ := district{world: base, courses: 4, runners: 300, weeks: 40, results: 3000, seed: 8}.simulate()
	m := mustFit(t, in)
	adjusted, shifted := 0, 0
	var figures []Figure
	for r := range in.Runners() {
		figures = m.Figures(r, figures)
		for k, g := range figures {
			i := int(in.Offsets[r]) + k
			e := in.Run[i]
			c := in.Runs[e].Course
			y := float64(in.LogTime[i])
			if want := 100 * math.Expm1(y-m.Courses[c].Raw-m.Runs[e].Effect-(g.Form-m.centre[m.f.home[r]])); math.Abs(g.Shortfall-want) > 1e-6 {
				t.Fatalf("runner %d, result %d: %g %% behind, want %g", r, k, g.Shortfall, want)
			}
			if math.IsNaN(g.Adjusted) {
				continue
			}
			adjusted++
			if math.Abs(m.Courses[c].Effect) > .001 && math.Abs(m.Runs[e].Effect) > .001 {
				shifted++
			}
			want := math.Exp(y+Origin) / math.Exp(m.Courses[c].Effect) / math.Exp(m.Runs[e].Effect) * math.Pow(in.Courses[c].DistanceM/5000, 1.06)
			if math.Abs(g.Adjusted-want) > 1e-6*want {
				t.Fatalf("runner %d, result %d: adjusted %g, want %g", r, k, g.Adjusted, want)
			}
		}
	}
	if adjusted < 500 || shifted < 100 {
		t.Errorf("only %d adjusted times, %d of them moved", adjusted, shifted)
	}
}

// Networks, groups and shared runners of six courses: A and B share two runners, C and D one,
// the latter of another distance; E has more results than either and shares nobody; F has none.
func TestNetworksByHand(t *testing.T) {
	in := &Input{Courses: []CourseInfo{{5000}, {5000}, {5000}, {3000}, {5000}, {5000}}, Offsets: []int32{0}}
	for c := range int32(5) {
		in.Runs = append(in.Runs, RunInfo{c, 0}, RunInfo{c, 7})
	}
	for _, runs := range [][]int32{{2, 1}, {0, 3}, {0}, {4, 7}, {5}, {8, 9}, {8, 9}, {8}} {
		in.Run = append(in.Run, runs...)
		in.Offsets = append(in.Offsets, int32(len(in.Run)))
	}
	in.LogTime = make([]float32, len(in.Run))
	results := make([]int32, 6)
	for i := range in.Run {
		results[in.course(i)]++
	}
	network := networks(in, results)
	if want := []int32{0, 0, 2, 2, 1, 3}; !slices.Equal(network, want) { // 5, 3 and 5 results: of equal ones the lower course
		t.Errorf("networks %v, want %v (results %v)", network, want, results)
	}
	// Of networks of one size the one with the lowest course comes first, whichever way its
	// courses were joined.
	tied := &Input{Courses: make([]CourseInfo, 3), Runs: []RunInfo{{0, 0}, {1, 0}, {2, 7}}, Offsets: []int32{0, 2, 4}, Run: []int32{0, 2, 1, 1}}
	if got := networks(tied, []int32{1, 2, 1}); !slices.Equal(got, []int32{0, 1, 0}) {
		t.Errorf("networks of one size %v", got)
	}
	group, weight := groups(in, network, results)
	if group[0] != group[1] || group[2] == group[3] || group[0] == group[4] {
		t.Errorf("groups %v", group)
	}
	if math.Abs(weight[0]-.6) > 1e-12 || math.Abs(weight[1]-.4) > 1e-12 || weight[3] != 1 || weight[5] != 0 {
		t.Errorf("weights %v", weight)
	}
	runners, shared := links(in)
	if !slices.Equal(runners, []int32{3, 2, 2, 1, 3, 0}) || !slices.Equal(shared, []int32{2, 2, 1, 1, 0, 0}) {
		t.Errorf("runners %v, of whom shared %v", runners, shared)
	}
}

// Form is stated on the 5 km courses of a network, however few their results, or else on the
// distance with most.
func TestFormIsStatedOnFiveKilometres(t *testing.T) {
	info := []CourseInfo{{3000}, {5000}, {3000}, {10000}}
	courses := []Course{
		{Network: 0, Group: 0, Results: 900, Raw: .5, Effect: .1}, {Network: 0, Group: 1, Results: 10, Raw: .3, Effect: .1},
		{Network: 1, Group: 2, Results: 5, Raw: .7, Effect: .1}, {Network: 1, Group: 3, Results: 6, Raw: 1.1, Effect: .1},
	}
	for c, want := range []float64{.2, .2, 1, 1} {
		if got := formCentres(info, courses)[c]; math.Abs(got-want) > 1e-12 {
			t.Errorf("course %d: centre %g, want %g", c, got, want)
		}
	}
}

// Runners are cut into parts of about equal numbers of results, all of them once, whatever
// their sizes.
func TestPartition(t *testing.T) {
	for _, sizes := range [][]int32{{1}, {5, 5, 5, 5}, {100, 1, 1, 1, 1, 1}, {1, 1, 1, 1, 100}} {
		offsets := []int32{0}
		for _, n := range sizes {
			offsets = append(offsets, offsets[len(offsets)-1]+n)
		}
		next := 0
		for _, s := range partition(offsets, 4) {
			if s.lo != next || s.hi < s.lo {
				t.Errorf("%v: part %+v after %d", sizes, s, next)
			}
			next = s.hi
		}
		if next != len(sizes) {
			t.Errorf("%v: %d of %d runners", sizes, next, len(sizes))
		}
	}
	if got := partition([]int32{0, 5, 10, 15, 20}, 4); !slices.Equal(got, []span{{0, 1}, {1, 2}, {2, 3}, {3, 4}}) {
		t.Errorf("four equal runners: %v", got)
	}
}

// The words of an audit, on either side of each threshold.
func TestAuditInWords(t *testing.T) {
	good := Audit{HeldOut: 300, ScoreModel: 1.2, ScoreGaussian: 1.1, HalvesCourses: 9, HalvesRMS: .004, HalvesSE: 1.15,
		SelectionCourses: 3, Slope: .1, SlopeError: .05, GrossShare: .0099, Distances: 2, DistanceRunners: 40, Exponent: 1.07, ExponentError: .01}
	for name, c := range map[string]struct {
		change func(*Audit)
		says   string
		not    string
	}{
		"effort helps":         {func(a *Audit) {}, "1.11 times as likely", "does not help"},
		"effort does not help": {func(a *Audit) { a.ScoreGaussian = 1.21 }, "does not help here", ""},
		"nobody held out":      {func(a *Audit) { a.HeldOut = 0 }, "Prediction: not checked", ""},
		"wide enough":          {func(a *Audit) {}, "differ by 6.0 s at 25:00, 1.15 times", "too narrow"},
		"too narrow":           {func(a *Audit) { a.HalvesSE = 1.16 }, "too narrow here", ""},
		"no halves":            {func(a *Audit) { a.HalvesCourses = 0 }, "Two halves: not checked", ""},
		"two errors are none":  {func(a *Audit) {}, "1.0 s larger than residents do (give or take 1.0 s): no sign", "don't make much"},
		"more than two errors": {func(a *Audit) { a.Slope = -.101 }, "1.0 s smaller than residents do (give or take 1.0 s): whom a course is judged by", "no sign"},
		"two courses":          {func(a *Audit) { a.SelectionCourses = 2 }, "Residents and visitors: not checked", ""},
		"few of others":        {func(a *Audit) {}, "0.99 % (few enough", "lapwing match"},
		"many of others":       {func(a *Audit) { a.GrossShare = .01 }, "1.00 % (many: check who is who with lapwing match", ""},
		"two distances":        {func(a *Audit) {}, "40 runners have run two or more", ""},
		"the power":            {func(a *Audit) {}, "power 1.070 (give or take 0.020)", ""},
		"one distance":         {func(a *Audit) { a.Distances = 1 }, "Prediction", "Distances:"},
	} {
		a := good
		c.change(&a)
		text := strings.Join(a.Words(), "\n")
		if !strings.Contains(text, c.says) || c.not != "" && strings.Contains(text, c.not) {
			t.Errorf("%s: %s", name, text)
		}
	}
}

// The variance of a course less the weighted mean of the two of its group: with weights w and
// 1−w, c1 less the mean is (1−w) times the difference of the two, and c2 less it −w times. Days
// hardly differ here, so that nothing is added for them.
func TestVarianceAgainstTheMean(t *testing.T) {
	in, _ := district{world: base, courses: 2, runners: 200, weeks: 30, results: 2500, seed: 8}.simulate()
	h := Defaults()
	h.DaySD = 1e-6
	m, err := FitGaussian(context.Background(), in, h, 1)
	if err != nil {
		t.Fatal(err)
	}
	m.f.dayVar = 1e-12
	const w = .7
	v, err := m.f.courseVariance(context.Background(), []int32{0, 0}, []float64{w, 1 - w})
	if err != nil {
		t.Fatal(err)
	}
	if ratio := v[0] / v[1]; !(v[0] > 0) || math.Abs(ratio-(1-w)*(1-w)/(w*w)) > 1e-3 {
		t.Errorf("variances %g and %g, ratio %g, want %g", v[0], v[1], ratio, (1-w)*(1-w)/(w*w))
	}
	v, err = m.f.courseVariance(context.Background(), []int32{0, 1}, []float64{1, 1})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(v[0]) > 1e-9 || math.Abs(v[1]) > 1e-9 {
		t.Errorf("courses that are their own mean: variances %g and %g", v[0], v[1])
	}
}

// The histogram of an audit holds every result that it looks at once, as many as the model
// expects in all, and its share of other people's times is that of the figures.
func TestAuditCountsResults(t *testing.T) {
	in, _ := district{world: base, courses: 4, runners: 300, weeks: 40, results: 3000, seed: 8}.simulate()
	m := mustFit(t, in)
	var a Audit
	a.residuals(m)
	n, gross := 0.0, 0.0
	var figures []Figure
	for r := range in.Runners() {
		if in.Offsets[r+1]-in.Offsets[r] < fewestForEffort {
			continue
		}
		figures = m.Figures(r, figures)
		for _, g := range figures {
			if n++; g.WrongOwner() {
				gross++
			}
		}
	}
	observed, expected := 0.0, 0.0
	for _, b := range a.Histogram {
		observed, expected = observed+b.Observed, expected+b.Expected
	}
	if observed != n || math.Abs(expected-n) > 1e-6*n || gross == 0 || math.Abs(a.GrossShare-gross/n) > 1e-12 {
		t.Errorf("%g results, %g observed, %g expected; share of others %g, want %g", n, observed, expected, a.GrossShare, gross/n)
	}
}
