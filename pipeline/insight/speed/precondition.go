package speed

import (
	"context"
	"errors"

	"gonum.org/v1/gonum/mat"
)

// The preconditioner solves the equations exactly for the approximation
//
//	G ≈ diag(D) - U O U',  U = D_e/D_c in the column of the run's course,
//	O = diag(D_c) - A,     A = T' G T the runners' information on the courses
//
// of the runners' information G on the runs, which keeps what runners say
// about pairs of courses and spreads it over the runs of a course in
// proportion to their own information D_e (D_c their sum). Days are then
// eliminated run by run and a dense system in s, the courses' weighted mean
// effects, remains:
//
//	(A + B) s = …,  B = diag(b) - b b'/sum b,  1/b = CourseSD² + N_c
//
// with N_c the variance that the days leave on a course's mean; B is the
// prior on s with the level flat. A plain arrow preconditioner (O = diag)
// needs many more iterations on weakly linked courses and, worse, hides the
// error that is left: with this one the preconditioned residual is close to
// the error itself.
type preconditioner struct {
	chol  mat.Cholesky
	b     []float64
	sumB  float64
	dSum  []float64 // D_c
	kappa []float64 // share of D_c that the days take away
	noise []float64 // N_c
	scale []float64 // 1/(1-kappa)

	rho, rhs, s, v *mat.VecDense
}

// rebuildSteps is the number of steps above which a solve with an ageing
// factor has it built anew for the next: A changes little once the sites have
// found their places, and costs as much as a dozen steps in a large archive.
const rebuildSteps = 12

// precondition gives the preconditioner for the present sites, with the dense
// factor of an earlier round where that still serves. Any factor makes it the
// exact inverse of some symmetric matrix.
func (f *fit) precondition(ctx context.Context) (*preconditioner, error) {
	if f.pre != nil && f.lastSteps <= rebuildSteps {
		f.pre.refresh(f)
		return f.pre, nil
	}
	a, err := f.courseInformation(ctx, 1/(f.h.RunnerSD*f.h.RunnerSD))
	if err != nil {
		return nil, err
	}
	n := len(f.course)
	vec := func() *mat.VecDense { return mat.NewVecDense(n, nil) }
	m := &preconditioner{
		b: make([]float64, n), dSum: make([]float64, n), kappa: make([]float64, n),
		noise: make([]float64, n), scale: make([]float64, n),
		rho: vec(), rhs: vec(), s: vec(), v: vec(),
	}
	m.refresh(f)
	for i := range n {
		if f.results[i] == 0 {
			a.SetSym(i, i, 1/f.courseVar)
			continue
		}
		for j := i; j < n; j++ {
			x := a.At(i, j) - m.b[i]*m.b[j]/m.sumB
			if i == j {
				x += m.b[i]
			}
			a.SetSym(i, j, x)
		}
	}
	if !m.chol.Factorize(a) {
		return nil, errors.New("speed: the courses' equations are singular")
	}
	f.pre = m
	return m, nil
}

// refresh takes the run-by-run quantities from the present sites.
func (m *preconditioner) refresh(f *fit) {
	clear(m.dSum)
	clear(m.kappa)
	clear(m.noise) // first the information left after the days
	for e, d := range f.info {
		c := f.in.Runs[e].Course
		p := f.dayPrecision(e)
		m.dSum[c] += d
		m.kappa[c] += d * d / (d + p)
		m.noise[c] += d * p / (d + p)
	}
	m.sumB = 0
	for c, left := range m.noise {
		m.scale[c], m.b[c] = 1, 0
		if f.results[c] == 0 {
			continue
		}
		m.kappa[c] /= m.dSum[c]
		m.noise[c] = m.kappa[c] / left
		m.scale[c] = m.dSum[c] / left
		m.b[c] = 1 / (f.courseVar + m.noise[c])
		m.sumB += m.b[c]
	}
}

// apply sets out to the approximate solution for the residual r; both hold
// courses, then runs.
func (m *preconditioner) apply(f *fit, r, out []float64) {
	n := len(m.b)
	rc, rd := r[:n], r[n:]
	rho := m.rho.RawVector().Data
	clear(rho)
	for e, v := range rd {
		d := f.info[e]
		rho[f.in.Runs[e].Course] += d * v / (d + f.dayPrecision(e))
	}
	// x = (I + L N)^-1 (r_c + L scale rho), L = (I - 11'/n)/CourseSD²
	x := m.rhs.RawVector().Data
	mean, count := 0.0, 0.0
	for c := range rho {
		if m.dSum[c] > 0 {
			rho[c] /= m.dSum[c]
			mean += m.scale[c] * rho[c]
			count++
		}
	}
	mean /= count
	num, den := 0.0, 0.0
	for c := range x {
		if m.dSum[c] == 0 {
			x[c] = rc[c]
			continue
		}
		x[c] = (rc[c] + (m.scale[c]*rho[c]-mean)/f.courseVar) * f.courseVar * m.b[c]
		num += m.noise[c] * x[c]
		den += m.b[c]
	}
	// The level couples the courses: h = mean(N x)/CourseSD².
	h := num / den / (f.courseVar * f.courseVar)
	for c := range x {
		if m.dSum[c] > 0 {
			x[c] += h * f.courseVar * m.b[c]
		}
	}
	if err := unlessConditioned(m.chol.SolveVecTo(m.s, m.rhs)); err != nil {
		panic(err) // sizes are fixed above
	}
	s := m.s.RawVector().Data
	bs := 0.0
	for c := range s {
		if m.dSum[c] > 0 {
			bs += m.b[c] * s[c]
		}
	}
	oc, od := out[:n], out[n:]
	v := m.v.RawVector().Data
	for c := range s {
		if m.dSum[c] == 0 {
			oc[c], v[c] = s[c], 0
			continue
		}
		as := x[c] - m.b[c]*s[c] + m.b[c]*bs/m.sumB // A s
		v[c] = s[c] - as/m.dSum[c]
		oc[c] = m.scale[c] * (s[c] - rho[c] - m.kappa[c]*v[c])
	}
	for e := range od {
		c := f.in.Runs[e].Course
		d := f.info[e]
		od[e] = (rd[e] - d*(oc[c]-v[c])) / (d + f.dayPrecision(e))
	}
}

// unlessConditioned drops the library's warning of a large condition number;
// what it has computed stands and the iterations correct it.
func unlessConditioned(err error) error {
	var large mat.Condition
	if errors.As(err, &large) {
		return nil
	}
	return err
}
