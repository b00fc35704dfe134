package speed

import (
	"context"
	"fmt"
	"math"
	"testing"
)

func club(w world, seed uint64) district {
	return district{world: w, courses: 12, runners: 2000, weeks: 150, results: 40000, seed: seed}
}

func mustFit(t testing.TB, in *Input) *Model {
	t.Helper()
	m, err := Fit(context.Background(), in, Defaults(), 2)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestClubs(t *testing.T) {
	if testing.Short() {
		t.Skip("fits twelve clubs")
	}
	var course, cover, fast float64
	const seeds = 4
	for seed := uint64(1); seed <= seeds; seed++ {
		in, tr := club(base, seed).simulate()
		a := tr.judge(in, mustFit(t, in))
		t.Logf("base %d: %v", seed, a)
		h := Defaults()
		h.Sigma = .055 // what one Gaussian has to allow for
		g, err := FitGaussian(context.Background(), in, h, 2)
		if err != nil {
			t.Fatal(err)
		}
		b := tr.judge(in, g)
		t.Logf("  Gaussian: %v", b)
		if a.course > .6*b.course {
			t.Errorf("seed %d: courses %.3f %%, Gaussian %.3f", seed, a.course, b.course)
		}
		if a.form > 2.1 {
			t.Errorf("seed %d: form %.2f %%", seed, a.form)
		}
		if a.day > .65 {
			t.Errorf("seed %d: conditions %.3f %%", seed, a.day)
		}
		course += a.course / seeds
		cover += a.cover / seeds
		fast += a.fast / seeds
	}
	if course > .4 || math.Abs(fast) > .3 || cover < .85 || cover > .99 {
		t.Errorf("over %d clubs: courses %.3f %%, fast %+.3f, cover %.2f", seeds, course, fast, cover)
	}
	t.Logf("%d clubs: courses %.3f %%, fast %+.3f, cover %.2f", seeds, course, fast, cover)
}

func (a accuracy) String() string {
	return fmt.Sprintf("courses %.3f %% (fast %+.3f, cover %.2f of %d), conditions %.3f (cover %.2f), form %.2f/%.2f, level %+.2f",
		a.course, a.fast, a.cover, a.judged, a.day, a.dayCover, a.form, a.formMAD, 100*a.offset)
}

// Convergence is a property of the answer, not a number of rounds: solving
// again to 1e-10 and going on for many more rounds must not move the courses.
func TestConverged(t *testing.T) {
	in, _ := club(base, 1).simulate()
	m := mustFit(t, in)
	if !m.Trace.Settled {
		t.Errorf("not settled after %d rounds", m.Trace.Rounds)
	}
	f := m.f
	f.makeScratch()
	change := f.changeMeter()
	change()
	pre, err := f.precondition(background)
	if err != nil {
		t.Fatal(err)
	}
	if _, left, err := f.solve(background, pre, 1e-10, 500); err != nil || left > 1e-10 {
		t.Fatalf("left %g, %v", left, err)
	}
	if rms, worst := change(); rms > 1e-6 || worst > 3e-6 {
		t.Errorf("solving again moves the courses by %.2g (most %.2g)", rms, worst)
	}
	for range 60 {
		if err := f.solveOnce(background, 1e-8, 200); err != nil {
			t.Fatal(err)
		}
		f.updateDays()
		if err := f.sweep(background, 1, false); err != nil {
			t.Fatal(err)
		}
		f.updateShares()
	}
	if rms, worst := change(); rms > 1e-4 || worst > 5e-4 {
		t.Errorf("60 more rounds move the courses by %.2g (most %.2g)", rms, worst)
	}
}
