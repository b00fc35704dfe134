package speed

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// small is a district whose equations fit a dense matrix.
func small(t *testing.T) *fit {
	t.Helper()
	in, _ := district{world: base, courses: 6, runners: 120, weeks: 30, results: 900, seed: 4}.simulate()
	in.Courses = append(in.Courses, CourseInfo{referenceM}) // one without results
	f, err := newFit(in, Defaults(), false, 2)
	if err != nil {
		t.Fatal(err)
	}
	if err := f.rounds(background, 5); err != nil {
		t.Fatal(err)
	}
	return f
}

// column k of the system.
func (f *fit) denseSystem(t *testing.T) *mat.Dense {
	n := len(f.course) + len(f.day)
	a := mat.NewDense(n, n, nil)
	x, y := make([]float64, n), make([]float64, n)
	for k := range n {
		clear(x)
		x[k] = 1
		if err := f.applySystem(background, x, y); err != nil {
			t.Fatal(err)
		}
		a.SetCol(k, y)
	}
	return a
}

// independentSystem builds the same matrix from dense runner covariances.
func (f *fit) independentSystem() *mat.Dense {
	n, runs := len(f.course), len(f.day)
	a := mat.NewDense(n+runs, n+runs, nil)
	add := func(i, j int, v float64) { a.Set(i, j, a.At(i, j)+v) }
	for r := 0; r < f.in.Runners(); r++ {
		lo, hi := int(f.in.Offsets[r]), int(f.in.Offsets[r+1])
		w := make([]float64, hi-lo)
		for i := range w {
			w[i] = float64(f.w[lo+i])
		}
		v := dense(1/(f.h.RunnerSD*f.h.RunnerSD), w, f.step[lo:hi])
		for i := range w {
			for j := range w {
				g := -w[i] * w[j] * v.At(i, j)
				if i == j {
					g += w[i]
				}
				ei, ej := int(f.in.Run[lo+i]), int(f.in.Run[lo+j])
				ci, cj := int(f.in.Runs[ei].Course), int(f.in.Runs[ej].Course)
				add(ci, cj, g)
				add(ci, n+ej, g)
				add(n+ei, cj, g)
				add(n+ei, n+ej, g)
			}
		}
	}
	live := 0.0
	for _, k := range f.results {
		if k > 0 {
			live++
		}
	}
	for c := range n {
		add(c, c, 1/f.courseVar)
		for k := range n {
			if f.results[c] > 0 && f.results[k] > 0 {
				add(c, k, -1/f.courseVar/live)
			}
		}
	}
	for e := range runs {
		add(n+e, n+e, f.dayPrecision(e))
	}
	return a
}

func TestSystemAgainstDense(t *testing.T) {
	f := small(t)
	if n := len(f.course) + len(f.day); n > 300 {
		t.Fatalf("%d unknowns", n)
	}
	got, want := f.denseSystem(t), f.independentSystem()
	n, _ := got.Dims()
	top := mat.Max(want)
	for i := range n {
		for j := range n {
			if math.Abs(got.At(i, j)-want.At(i, j)) > 2e-6*top {
				t.Fatalf("entry %d,%d is %g, dense %g", i, j, got.At(i, j), want.At(i, j))
			}
			if math.Abs(got.At(i, j)-got.At(j, i)) > 1e-9*top {
				t.Fatalf("not symmetric at %d,%d: %g and %g", i, j, got.At(i, j), got.At(j, i))
			}
		}
	}
}

func TestSolveAgainstDense(t *testing.T) {
	f := small(t)
	n := len(f.course)
	a := f.denseSystem(t)
	rhs := make([]float64, n+len(f.day))
	if err := f.applyRunners(background, nil, rhs[n:]); err != nil {
		t.Fatal(err)
	}
	for e, k := range f.in.Runs {
		rhs[k.Course] += rhs[n+e]
	}
	var want mat.VecDense
	if err := want.SolveVec(a, mat.NewVecDense(len(rhs), rhs)); err != nil {
		t.Fatal(err)
	}
	clear(f.course)
	clear(f.day)
	m, err := f.precondition(background)
	if err != nil {
		t.Fatal(err)
	}
	steps, left, err := f.solve(background, m, 1e-11, 200)
	if err != nil {
		t.Fatal(err)
	}
	if left > 1e-11 {
		t.Errorf("residual %g after %d steps", left, steps)
	}
	for c := range f.course {
		if f.results[c] > 0 && math.Abs(f.course[c]-want.AtVec(c)) > 1e-9 {
			t.Errorf("course %d is %.12g, dense %.12g", c, f.course[c], want.AtVec(c))
		}
	}
	for e := range f.day {
		if math.Abs(f.day[e]-want.AtVec(n+e)) > 1e-9 {
			t.Errorf("run %d is %.12g, dense %.12g", e, f.day[e], want.AtVec(n+e))
		}
	}
}

// The preconditioner is symmetric, and exact for the matrix that it stands
// for, which the test builds densely.
func TestPreconditionerSolvesItsApproximation(t *testing.T) {
	f := small(t)
	n, runs := len(f.course), len(f.day)
	f.pre = nil // a factor of these very sites, not of an earlier round's
	m, err := f.precondition(background)
	if err != nil {
		t.Fatal(err)
	}
	info, err := f.courseInformation(background, 1/(f.h.RunnerSD*f.h.RunnerSD))
	if err != nil {
		t.Fatal(err)
	}
	sum := make([]float64, n)
	for e, d := range f.info {
		sum[f.in.Runs[e].Course] += d
	}
	a := mat.NewDense(n+runs, n+runs, nil)
	add := func(i, j int, v float64) { a.Set(i, j, a.At(i, j)+v) }
	for e := range runs {
		for k := range runs {
			ce, ck := int(f.in.Runs[e].Course), int(f.in.Runs[k].Course)
			o := -info.At(ce, ck)
			if ce == ck {
				o += sum[ce]
			}
			g := -f.info[e] / sum[ce] * o * f.info[k] / sum[ck]
			if e == k {
				g += f.info[e]
			}
			add(ce, ck, g)
			add(ce, n+k, g)
			add(n+e, ck, g)
			add(n+e, n+k, g)
		}
		add(n+e, n+e, f.dayPrecision(e))
	}
	for c := range n {
		add(c, c, 1/f.courseVar)
		for k := range n {
			if f.results[c] > 0 && f.results[k] > 0 {
				add(c, k, -1/f.courseVar/float64(n-1)) // all but the empty one
			}
		}
	}
	rng := rand.New(rand.NewPCG(1, 2))
	for range 5 {
		x, b, got := make([]float64, n+runs), make([]float64, n+runs), make([]float64, n+runs)
		for i := range x {
			x[i] = rng.NormFloat64()
		}
		mat.NewVecDense(len(b), b).MulVec(a, mat.NewVecDense(len(x), x))
		m.apply(f, b, got)
		for i := range x {
			if math.Abs(got[i]-x[i]) > 1e-6 {
				t.Fatalf("unknown %d is %g, want %g", i, got[i], x[i])
			}
		}
	}
}
