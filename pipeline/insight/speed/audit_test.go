package speed

import (
	"context"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

func TestAudit(t *testing.T) {
	d := club(base, 5)
	d.results = 25000
	in, _ := d.simulate()
	a, err := RunAudit(context.Background(), in, Defaults(), 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range a.Words() {
		t.Log(line)
	}
	t.Logf("%+v", a)
	if a.HeldOut < 50 || a.ScoreModel < a.ScoreGaussian+.1 {
		t.Errorf("%d kept out: %.3f against %.3f", a.HeldOut, a.ScoreModel, a.ScoreGaussian)
	}
	if a.HalvesCourses < 8 || a.HalvesSE > 1.5 || a.HalvesRMS == 0 {
		t.Errorf("halves: %d courses, %.4f, %.2f", a.HalvesCourses, a.HalvesRMS, a.HalvesSE)
	}
	if a.GrossShare == 0 || a.GrossShare > .01 {
		t.Errorf("gross errors %.4f", a.GrossShare)
	}
	if a.SelectionCourses < 5 || !(a.SlopeError > 0) || math.Abs(a.Slope) > .3 {
		t.Errorf("residents and visitors: %d courses, slope %.3f (%.3f)", a.SelectionCourses, a.Slope, a.SlopeError)
	}
	var observed, expected, off float64
	for _, b := range a.Histogram {
		observed += b.Observed
		expected += b.Expected
		off += math.Abs(b.Observed - b.Expected)
	}
	if math.Abs(observed-expected) > 1e-6*observed || off > .1*observed {
		t.Errorf("histogram: %.1f observed, %.1f expected, %.1f in the wrong bin", observed, expected, off)
	}
}

// Held-out results must not be scored by a fit that has seen them, and a
// symmetric world must not look like one with held-back efforts.
func TestAuditOfASymmetricWorld(t *testing.T) {
	d := club(gauss, 5)
	d.results = 25000
	in, _ := d.simulate()
	var a Audit
	if err := a.heldOut(context.Background(), in, Defaults(), 2); err != nil {
		t.Fatal(err)
	}
	if d := a.ScoreModel - a.ScoreGaussian; math.Abs(d) > .03 {
		t.Errorf("model %.4f, Gaussian %.4f", a.ScoreModel, a.ScoreGaussian)
	}
	a = Audit{GrossShare: .02}
	if w := strings.Join(a.Words(), "\n"); !strings.Contains(w, "not checked") || !strings.Contains(w, "check who is who") {
		t.Error(w)
	}
}

// Courses of four distances by runners whose exponent is 1.10.
func TestOtherDistances(t *testing.T) {
	d := club(base, 6)
	d.courses = 24
	in, tr := d.simulate()
	const exponent = 1.10
	for c := range in.Courses {
		in.Courses[c].DistanceM = []float64{5000, 3000, 6437.376, 10000}[c%4]
		tr.course[c] += (exponent - EnduranceExponent) * math.Log(in.Courses[c].DistanceM/referenceM)
	}
	for i := range in.LogTime {
		in.LogTime[i] += float32((exponent - EnduranceExponent) * math.Log(in.Courses[in.course(i)].DistanceM/referenceM))
	}
	m := mustFit(t, in)
	a := tr.judge(in, m)
	t.Log(a)
	// Centred within a distance, so the wrong exponent must not show.
	if a.course > .55 || a.form > 2.3 || a.judged < 16 {
		t.Errorf("%v", a)
	}
	if _, ok := m.Solution().Convert(1500, 0, 1); ok {
		t.Error("5 km converted to 3 km")
	}
	var audit Audit
	audit.distances(m)
	t.Logf("exponent %.3f, error %.3f, from %d distances", audit.Exponent, audit.ExponentError, audit.Distances)
	if audit.Distances != 4 || math.Abs(audit.Exponent-exponent) > 3*audit.ExponentError || audit.ExponentError > .05 {
		t.Errorf("exponent %.3f, error %.3f, from %d distances", audit.Exponent, audit.ExponentError, audit.Distances)
	}
	// Form is stated at 5 km on the mean 5 km course of the network.
	centre := m.Courses[0].Raw - m.Courses[0].Effect
	for c, k := range m.Courses {
		if k.Network == 0 && m.centre[c] != centre {
			t.Errorf("form on course %d is stated at %.4f, want %.4f", c, m.centre[c], centre)
		}
	}
}

// Would it pay to estimate the endurance exponent of an archive? Four distances,
// and runners whose exponents have mean 1.10 (or 1.06) and spread .03: the fit
// that is told the true mean against the one that takes 1.06. Indices are
// centred within a distance and every course has an effect of its own, so what
// is wrong with the mean goes there and nowhere else: nothing is gained, and the
// exponent is not estimated.
func TestKnowingTheExponentGainsNothing(t *testing.T) {
	for _, c := range []struct{ mean, spread float64 }{{1.10, 0}, {1.10, .03}, {1.06, .03}} {
		d := club(base, 7)
		d.courses = 24
		in, tr := d.simulate()
		told := &Input{Offsets: in.Offsets, Run: in.Run, Runs: in.Runs, Courses: in.Courses, LogTime: append([]float32(nil), in.LogTime...)}
		for k := range in.Courses {
			in.Courses[k].DistanceM = []float64{5000, 3000, 6437.376, 10000}[k%4]
		}
		rng := rand.New(rand.NewPCG(7, 11))
		for r := 0; r < in.Runners(); r++ {
			own := c.spread * rng.NormFloat64()
			for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
				m := in.Courses[in.course(int(i))].DistanceM
				in.LogTime[i] += float32((c.mean - EnduranceExponent + own) * math.Log(m/referenceM))
				told.LogTime[i] += float32(own * math.Log(m/referenceM))
			}
		}
		known := tr.judge(told, mustFit(t, told))
		for k := range tr.course {
			tr.course[k] += (c.mean - EnduranceExponent) * math.Log(in.Courses[k].DistanceM/referenceM)
		}
		m := mustFit(t, in)
		plain := tr.judge(in, m)
		var a Audit
		a.distances(m)
		t.Logf("exponents %.2f ± %.2f, %d of %d runners at two distances or more: taken as 1.06 %v; told the mean %v; the courses suggest %.3f (error %.3f)",
			c.mean, c.spread, a.DistanceRunners, in.Runners(), plain, known, a.Exponent, a.ExponentError)
		if a.DistanceRunners < 500 {
			t.Errorf("only %d runners at two distances", a.DistanceRunners)
		}
		if plain.judged < 16 || plain.course > .55 || plain.form > 2.6 {
			t.Errorf("%v", plain)
		}
		if plain.course-known.course > .03 || plain.form-known.form > .06 {
			t.Errorf("knowing the exponent gains: courses %.3f, not %.3f; form %.2f, not %.2f", known.course, plain.course, known.form, plain.form)
		}
	}
}
