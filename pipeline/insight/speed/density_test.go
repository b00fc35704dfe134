package speed

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

func TestTailRatio(t *testing.T) {
	worst := 0.0
	for z := -8.; z <= 0; z += .00071 {
		want := distuv.UnitNormal.CDF(z) / distuv.UnitNormal.Prob(z)
		worst = max(worst, math.Abs(tailRatio(z)/want-1))
		// Phi itself, as section 26.2 of Abramowitz and Stegun tables it
		if e := math.Abs(tailRatio(z)*distuv.UnitNormal.Prob(z) - distuv.UnitNormal.CDF(z)); e > 1e-10 {
			t.Fatalf("Phi(%g) is off by %g", z, e)
		}
	}
	if worst > 1e-9 {
		t.Errorf("relative error %g", worst)
	}
	// Handbook values: Abramowitz and Stegun, table 26.1 and 26.2 (from memory).
	for _, c := range []struct{ z, phi float64 }{{0, .5}, {-1, .158655253931457}, {-2, .022750131948179}, {-5, 2.866515718e-7}} {
		if got := tailRatio(c.z) * distuv.UnitNormal.Prob(c.z); math.Abs(got/c.phi-1) > 1e-9 {
			t.Errorf("Phi(%g) = %.15g, table %.15g", c.z, got, c.phi)
		}
	}
	for _, z := range []float64{-8.001, -9, -12, -30} {
		want := math.Exp(logCDF(z) - distuv.UnitNormal.LogProb(z))
		if math.Abs(tailRatio(z)/want-1) > 1e-6 {
			t.Errorf("ratio at %g is %g, want %g", z, tailRatio(z), want)
		}
	}
}

func TestExpMinus(t *testing.T) {
	for x := 0.; x < 699; x += .00713 {
		if got, want := expMinus(x), math.Exp(-x); math.Abs(got/want-1) > 1e-11 {
			t.Fatalf("exp(-%g) = %g, want %g", x, got, want)
		}
	}
	if expMinus(701) != 0 || expMinus(math.Inf(1)) != 0 {
		t.Error("does not vanish")
	}
}

// logCDF is log Phi(z) for z < 0 by the continued fraction of Laplace
// (Abramowitz and Stegun 26.2.14).
func logCDF(z float64) float64 {
	t := -z
	c := t
	for k := 200; k >= 1; k-- {
		c = t + float64(k)/c
	}
	return distuv.UnitNormal.LogProb(z) - math.Log(c)
}

// plainDensity is the mixture straight from its definition: the exponential
// parts by quadrature of the convolution.
func plainDensity(m mixture, r, S float64, w Components) float64 {
	sd := math.Sqrt(S)
	conv := func(rate float64) float64 {
		// s = r - sd x must be positive
		lo, hi := -12., min(12, r/sd)
		if hi <= lo {
			return 0
		}
		return quad.Fixed(func(x float64) float64 {
			return distuv.UnitNormal.Prob(x) * rate * math.Exp(-rate*(r-sd*x))
		}, lo, hi, 400, quad.Legendre{}, 0)
	}
	normal := func(v float64) float64 { return distuv.Normal{Sigma: math.Sqrt(v)}.Prob(r) }
	return w.AllOut*normal(S) + w.Slow*conv(m.rate) + w.Walk*conv(m.walkRate) + w.Gross*normal(S+m.grossVar)
}

func TestScoreAgainstDefinition(t *testing.T) {
	h := Defaults()
	m := h.mixture()
	w := h.weights(.47)
	for _, S := range []float64{2.6e-4, 1e-3, .01, .05, 1} {
		for r := -.4; r < 1; r += .037 {
			if got, want := m.logDensity(r, S, w), math.Log(plainDensity(m, r, S, w)); math.Abs(got-want) > 1e-7 {
				t.Fatalf("log f(%g; %g) = %.12g, quadrature %.12g", r, S, got, want)
			}
			log := func(x float64) float64 { return m.logDensity(x, S, w) }
			step := .02 * math.Sqrt(S)
			first := fd.Derivative(log, r, &fd.Settings{Formula: fd.Central, Step: step * .1})
			second := fd.Derivative(log, r, &fd.Settings{Formula: fd.Central2nd, Step: step})
			u, beta, p := m.score(r, S, w)
			if math.Abs(u-first) > 2e-3*(1/math.Sqrt(S)+math.Abs(first)) {
				t.Errorf("u(%g; %g) = %g, numerically %g", r, S, u, first)
			}
			if math.Abs(beta+second) > 1e-2*(1/S+math.Abs(second)) {
				t.Errorf("beta(%g; %g) = %g, numerically %g", r, S, beta, -second)
			}
			if s := p.AllOut + p.Slow + p.Walk + p.Gross; math.Abs(s-1) > 1e-12 {
				t.Errorf("components sum to %g", s)
			}
		}
	}
}

func TestScoreIsFinite(t *testing.T) {
	h := Defaults()
	m := h.mixture()
	for _, share := range []float64{.05, .5, .95} {
		w := h.weights(share)
		for _, S := range []float64{1e-4, 2.6e-4, 1e-3, .01, .1, 1} {
			for r := -3.; r <= 3; r += .003 {
				u, beta, p := m.score(r, S, w)
				if s := u + beta + p.AllOut + p.Slow + p.Walk + p.Gross; math.IsNaN(s) || math.IsInf(s, 0) {
					t.Fatalf("not finite at r=%g S=%g", r, S)
				}
			}
		}
	}
}

// The mean and variance that u and beta imply for a level with a Gaussian
// cavity are those of cavity times density, integrated.
func TestTiltedMoments(t *testing.T) {
	h := Defaults()
	m := h.mixture()
	w := h.weights(.47)
	s2 := h.Sigma * h.Sigma
	for _, v := range []float64{1e-4, 1e-3, .04} {
		for _, y := range []float64{-.3, -.05, -.01, 0, .02, .06, .15, .4} {
			sd := math.Sqrt(v)
			var mom [3]float64
			// Composite rule: the density is much narrower than a wide cavity.
			const pieces = 400
			for k := range pieces {
				lo := -10*sd + 20*sd*float64(k)/pieces
				for p := range mom {
					mom[p] += quad.Fixed(func(a float64) float64 {
						return math.Pow(a, float64(p)) * distuv.Normal{Sigma: sd}.Prob(a) * math.Exp(m.logDensity(y-a, s2, w))
					}, lo, lo+20*sd/pieces, 8, quad.Legendre{}, 0)
				}
			}
			mean := mom[1] / mom[0]
			vari := mom[2]/mom[0] - mean*mean
			u, beta, _ := m.score(y, s2+v, w)
			// With residual r = y - a the cavity's derivative is -u.
			if got := -v * u; math.Abs(got-mean) > 1e-6+1e-4*sd {
				t.Errorf("v=%g y=%g: tilted mean %g, want %g", v, y, got, mean)
			}
			if got := v - v*v*beta; math.Abs(got-vari) > 1e-3*v {
				t.Errorf("v=%g y=%g: tilted variance %g, want %g", v, y, got, vari)
			}
		}
	}
}

func BenchmarkScore(b *testing.B) {
	h := Defaults()
	m := h.mixture()
	w := h.weights(.47)
	s := 0.0
	for i := 0; i < b.N; i++ {
		u, _, _ := m.score(float64(i%100)*.003-.05, 4e-4, w)
		s += u
	}
	if math.IsNaN(s) {
		b.Fatal(s)
	}
}
