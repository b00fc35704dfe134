package speed

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// dense is the chain's posterior covariance by inverting its precision.
func dense(prior float64, w []float64, step []float32) *mat.SymDense {
	n := len(w)
	k := mat.NewSymDense(n, nil)
	k.SetSym(0, 0, prior)
	for i := range w {
		k.SetSym(i, i, k.At(i, i)+w[i])
		if i < n-1 {
			q := float64(step[i])
			k.SetSym(i, i, k.At(i, i)+q)
			k.SetSym(i+1, i+1, k.At(i+1, i+1)+q)
			k.SetSym(i, i+1, -q)
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(k) {
		panic("precision is not positive definite")
	}
	v := mat.NewSymDense(n, nil)
	if err := chol.InverseTo(v); err != nil {
		panic(err)
	}
	return v
}

func TestChainAgainstDenseInverse(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	h := Defaults()
	newness := h.newness()
	for _, n := range []int{1, 2, 3, 7, 50} {
		for range 20 {
			days := make([]int32, n)
			for i := 1; i < n; i++ {
				days[i] = days[i-1] + int32(rng.IntN(4)*7) // now and then two on one day
			}
			step := make([]float32, n)
			h.steps(func(i int) int32 { return days[i] }, step, newness, changeFloor)
			var c chain
			c.resize(n)
			for i := range c.w {
				c.w[i] = math.Exp(2*rng.NormFloat64() + 5)
				c.zeta[i] = .2 * rng.NormFloat64()
			}
			const prior = 25
			c.smooth(prior, step)
			v := dense(prior, c.w, step)
			for i := range n {
				mean := 0.0
				for j := range n {
					mean += v.At(i, j) * c.w[j] * c.zeta[j]
				}
				if math.Abs(mean-c.mean[i]) > 1e-7 || math.Abs(v.At(i, i)/c.vari[i]-1) > 1e-6 {
					t.Fatalf("n=%d level %d: mean %g var %g, dense %g %g", n, i, c.mean[i], c.vari[i], mean, v.At(i, i))
				}
				carry := 1.0
				for j := i; j < n; j++ {
					if got := carry * c.vari[j]; math.Abs(got/v.At(i, j)-1) > 1e-5 {
						t.Fatalf("n=%d Cov(%d,%d) = %g, dense %g", n, i, j, got, v.At(i, j))
					}
					carry *= c.gain[j]
				}
			}
		}
	}
}

func TestStepsFollowTheCalendar(t *testing.T) {
	h := Defaults()
	days := []int32{0, 7, 7, 28}
	step := make([]float32, 4)
	h.FormNew = 0
	h.steps(func(i int) int32 { return days[i] }, step, h.newness(), changeFloor)
	// FormWeek² = 2.209e-5 a week; nothing in no time but the floor; 3 weeks.
	for i, want := range []float64{1 / 2.209e-5, 1e7, 1 / 6.627e-5} {
		if math.Abs(float64(step[i])/want-1) > 1e-6 {
			t.Errorf("step %d is %g, want %g", i, step[i], want)
		}
	}
}
