package speed

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// The cheap variance of a course contrast against the exact posterior of the
// whole system, days included.
func TestIntervalsAgainstExactPosterior(t *testing.T) {
	for seed := uint64(1); seed <= 3; seed++ {
		in, _ := district{world: base, courses: 8, runners: 300, weeks: 40, results: 3500, seed: seed}.simulate()
		f, err := newFit(in, Defaults(), false, 2)
		if err != nil {
			t.Fatal(err)
		}
		if err := f.rounds(background, 5); err != nil {
			t.Fatal(err)
		}
		n := len(f.course)
		weight := make([]float64, n)
		for c := range weight {
			weight[c] = float64(f.results[c]) / float64(len(in.Run))
		}
		got, err := f.courseVariance(background, make([]int32, n), weight)
		if err != nil {
			t.Fatal(err)
		}
		f.h.RunnerSD = weakRunnerSD
		var chol mat.Cholesky
		if !chol.Factorize(symmetric(f.independentSystem())) {
			t.Fatal("singular")
		}
		sum := 0.0
		for c := range n {
			x := mat.NewVecDense(n+len(f.day), nil)
			for k := range n {
				x.SetVec(k, -weight[k])
			}
			x.SetVec(c, x.AtVec(c)+1)
			var s mat.VecDense
			if err := chol.SolveVecTo(&s, x); err != nil {
				t.Fatal(err)
			}
			ratio := math.Sqrt(got[c] / mat.Dot(x, &s))
			sum += ratio
			if ratio < .9 || ratio > 1.2 {
				t.Errorf("seed %d course %d: sd is %.3f of the exact one", seed, c, ratio)
			}
		}
		t.Logf("seed %d: mean ratio %.3f", seed, sum/float64(n))
	}
}

func symmetric(a *mat.Dense) *mat.SymDense {
	n, _ := a.Dims()
	s := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			s.SetSym(i, j, (a.At(i, j)+a.At(j, i))/2)
		}
	}
	return s
}

// courseInformation against the sum over all pairs.
func TestCourseInformationAgainstPairs(t *testing.T) {
	f := small(t)
	got, err := f.courseInformation(background, 25)
	if err != nil {
		t.Fatal(err)
	}
	n := len(f.course)
	want := mat.NewSymDense(n, nil)
	for r := 0; r < f.in.Runners(); r++ {
		lo, hi := int(f.in.Offsets[r]), int(f.in.Offsets[r+1])
		w := make([]float64, hi-lo)
		for i := range w {
			w[i] = float64(f.w[lo+i])
		}
		v := dense(25, w, f.step[lo:hi])
		for i := range w {
			for j := range w {
				ci, cj := int(f.in.course(lo+i)), int(f.in.course(lo+j))
				if ci > cj {
					continue
				}
				x := -w[i] * w[j] * v.At(i, j)
				if i == j {
					x += w[i]
				}
				want.SetSym(ci, cj, want.At(ci, cj)+x)
			}
		}
	}
	for i := range n {
		for j := i; j < n; j++ {
			if math.Abs(got.At(i, j)-want.At(i, j)) > 1e-6*(1+math.Abs(want.At(i, j))) {
				t.Errorf("%d,%d: %g, pairs %g", i, j, got.At(i, j), want.At(i, j))
			}
		}
	}
}
