package speed

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
)

// Variances are the components of the linear mixed model
//
//	y = mu + runner + course + run + residual
//
// with constant form, all normal and independent: the published starting point
// (Bates and others 2015) and the yardstick for the rest of this package.
type Variances struct{ Runner, Course, Run, Residual float64 }

// REMLFit is a fit by restricted maximum likelihood.
type REMLFit struct {
	Variances
	Deviance                              float64   // -2 log restricted likelihood, constants included
	Level                                 float64   // mu
	CourseEffect, RunEffect, RunnerEffect []float64 // best linear unbiased predictions
	Evaluations                           int
}

// remlUnknowns bounds the dense system; beyond it Fit's own EM estimates of
// DaySD and CourseSD serve.
const remlUnknowns = 4000

// REML estimates the variance components by restricted maximum likelihood
// (Patterson and Thompson 1971), by Newton steps with the average information
// matrix (Gilmour, Thompson and Cullis 1995). start must be positive; Run 0
// leaves the runs' conditions out of the model. Runners are eliminated
// exactly, the rest is dense, so courses and runs together may be
// remlUnknowns.
func REML(ctx context.Context, in *Input, start Variances) (*REMLFit, error) {
	m, err := newReml(in, start.Run > 0)
	if err != nil {
		return nil, err
	}
	theta := []float64{start.Runner, start.Course, start.Residual}
	if m.withRuns {
		theta = append(theta, start.Run)
	}
	x0 := make([]float64, len(theta))
	for k, v := range theta {
		if !(v > 0) {
			return nil, fmt.Errorf("speed: starting variance %g", v)
		}
		x0[k] = math.Log(v)
	}
	problem := optimize.Problem{
		Func:   func(x []float64) float64 { return m.at(x).deviance },
		Grad:   func(grad, x []float64) { copy(grad, m.at(x).gradient) },
		Hess:   func(h *mat.SymDense, x []float64) { h.CopySym(m.at(x).information) },
		Status: func() (optimize.Status, error) { return optimize.NotTerminated, ctx.Err() },
	}
	// A deviance is known to about 1e-10 of itself; the gradient is of the
	// order of the number of results far from the optimum.
	r, err := optimize.Minimize(problem, x0, &optimize.Settings{
		GradientThreshold: 1e-5 * math.Sqrt(float64(len(in.Run))),
		Converger:         &optimize.FunctionConverge{Absolute: 1e-9, Relative: 1e-13, Iterations: 3},
		MajorIterations:   100,
	}, &optimize.Newton{})
	if err != nil && (r == nil || !errors.Is(err, optimize.ErrLinesearcherFailure)) {
		return nil, fmt.Errorf("speed: REML: %w", err)
	}
	p := m.at(r.X)
	if p.err != nil {
		return nil, p.err
	}
	for k, g := range p.gradient {
		if math.Abs(g) > 1e-3*math.Sqrt(float64(len(in.Run))) {
			return nil, fmt.Errorf("speed: REML stopped with gradient %g for component %d", g, k)
		}
	}
	out := p.fit
	out.Evaluations = m.evaluations
	return &out, nil
}

// reml evaluates the restricted likelihood. The unknowns are the courses, the
// runs if they are in the model, and the level.
type reml struct {
	in          *Input
	withRuns    bool
	unknowns    int
	y           []float64
	last        *remlPoint
	evaluations int
}

// remlPoint is everything known at one set of variances.
type remlPoint struct {
	x           []float64
	err         error
	deviance    float64
	gradient    []float64 // by log variance: runner, course, residual, run
	information *mat.SymDense
	fit         REMLFit
}

func newReml(in *Input, withRuns bool) (*reml, error) {
	if err := in.Check(); err != nil {
		return nil, err
	}
	m := &reml{in: in, withRuns: withRuns, unknowns: len(in.Courses) + 1}
	if withRuns {
		m.unknowns += len(in.Runs)
	}
	if m.unknowns > remlUnknowns {
		return nil, fmt.Errorf("speed: REML with %d courses and runs, at most %d", m.unknowns-1, remlUnknowns-1)
	}
	m.y = make([]float64, len(in.LogTime))
	for i, v := range in.LogTime {
		m.y[i] = float64(v)
	}
	return m, nil
}

// columns gives the unknowns that result i loads on: course, level, run.
func (m *reml) columns(i int) (k [3]int, n int) {
	e := m.in.Run[i]
	k = [3]int{int(m.in.Runs[e].Course), len(m.in.Courses), len(m.in.Courses) + 1 + int(e)}
	if m.withRuns {
		return k, 3
	}
	return k, 2
}

// at evaluates at log variances x.
func (m *reml) at(x []float64) *remlPoint {
	if m.last != nil && slices.Equal(m.last.x, x) {
		return m.last
	}
	m.evaluations++
	p := &remlPoint{x: append([]float64(nil), x...), deviance: math.Inf(1), gradient: make([]float64, len(x)), information: mat.NewSymDense(len(x), nil)}
	for k := range x {
		p.information.SetSym(k, k, 1)
	}
	m.last = p
	v := Variances{Runner: math.Exp(x[0]), Course: math.Exp(x[1]), Residual: math.Exp(x[2])}
	if m.withRuns {
		v.Run = math.Exp(x[3])
	}
	s := m.factor(v)
	if s == nil {
		p.err = fmt.Errorf("speed: mixed-model equations are singular at %+v", v)
		return p
	}
	m.evaluate(p, s, v)
	return p
}

// remlSystem is the mixed-model equations with the runners eliminated.
type remlSystem struct {
	m    *reml
	w    float64   // 1/residual variance
	k    []float64 // per runner: n w + 1/runner variance
	chol mat.Cholesky
}

func (m *reml) factor(v Variances) *remlSystem {
	s := &remlSystem{m: m, w: 1 / v.Residual, k: make([]float64, m.in.Runners())}
	a := mat.NewSymDense(m.unknowns, nil)
	raw := a.RawSymmetric()
	add := func(i, j int, x float64) {
		if i <= j {
			raw.Data[i*raw.Stride+j] += x
		}
	}
	for r := range s.k {
		lo, hi := int(m.in.Offsets[r]), int(m.in.Offsets[r+1])
		s.k[r] = float64(hi-lo)*s.w + 1/v.Runner
		off := s.w * s.w / s.k[r]
		for i := lo; i < hi; i++ {
			ci, n := m.columns(i)
			for _, p := range ci[:n] {
				for _, q := range ci[:n] {
					add(p, q, s.w)
				}
			}
			for j := lo; j < hi; j++ {
				cj, _ := m.columns(j)
				for _, p := range ci[:n] {
					for _, q := range cj[:n] {
						add(p, q, -off)
					}
				}
			}
		}
	}
	courses := len(m.in.Courses)
	for c := range courses {
		add(c, c, 1/v.Course)
	}
	for e := courses + 1; e < m.unknowns; e++ {
		add(e, e, 1/v.Run)
	}
	if !s.chol.Factorize(a) {
		return nil
	}
	return s
}

// solve fits the data y: the unknowns b, the runners a and the residuals e.
func (s *remlSystem) solve(y []float64) (b *mat.VecDense, a, e []float64) {
	in := s.m.in
	rhs := mat.NewVecDense(s.m.unknowns, nil)
	a, e = make([]float64, len(s.k)), make([]float64, len(y))
	for r := range s.k {
		lo, hi := in.Offsets[r], in.Offsets[r+1]
		sum := 0.0
		for _, v := range y[lo:hi] {
			sum += v
		}
		for i := lo; i < hi; i++ {
			k, n := s.m.columns(int(i))
			x := s.w * (y[i] - s.w*sum/s.k[r])
			for _, c := range k[:n] {
				rhs.SetVec(c, rhs.AtVec(c)+x)
			}
		}
	}
	b = mat.NewVecDense(s.m.unknowns, nil)
	if err := unlessConditioned(s.chol.SolveVecTo(b, rhs)); err != nil {
		panic(err) // sizes are fixed above
	}
	for r := range s.k {
		lo, hi := in.Offsets[r], in.Offsets[r+1]
		sum := 0.0
		for i := lo; i < hi; i++ {
			k, n := s.m.columns(int(i))
			e[i] = y[i]
			for _, c := range k[:n] {
				e[i] -= b.AtVec(c)
			}
			sum += e[i]
		}
		a[r] = s.w * sum / s.k[r]
		for i := lo; i < hi; i++ {
			e[i] -= a[r]
		}
	}
	return b, a, e
}

// evaluate fills deviance, gradient and average information. With C the
// inverse of the mixed-model equations, u_k and q_k the effects and number of
// levels of component k and P the projection onto the residuals, by log
// variance
//
//	d dev = q_k - (tr C_kk + u_k'u_k)/theta_k             random effects
//	d dev = N - 1 - sum_k (q_k - tr C_kk/theta_k) - e'e/theta_e   residual
//	d² dev ≈ g_k' P g_l,  g_k = Z_k u_k or e,  P g = (g - fit of g)/theta_e
func (m *reml) evaluate(p *remlPoint, s *remlSystem, v Variances) {
	in := m.in
	courses, runs := len(in.Courses), 0
	if m.withRuns {
		runs = len(in.Runs)
	}
	b, a, e := s.solve(m.y)
	var inv mat.SymDense
	if p.err = unlessConditioned(s.chol.InverseTo(&inv)); p.err != nil {
		return
	}
	// traces and sums of squares
	var trCourse, trRun, trRunner, ssCourse, ssRun, ssRunner, ee, yPy, logK float64
	for c := range courses {
		trCourse += inv.At(c, c)
		ssCourse += b.AtVec(c) * b.AtVec(c)
	}
	for k := courses + 1; k < m.unknowns; k++ {
		trRun += inv.At(k, k)
		ssRun += b.AtVec(k) * b.AtVec(k)
	}
	for r, k := range s.k {
		lo, hi := int(in.Offsets[r]), int(in.Offsets[r+1])
		q := 0.0
		for i := lo; i < hi; i++ {
			ci, n := m.columns(i)
			for j := lo; j < hi; j++ {
				cj, _ := m.columns(j)
				for _, x := range ci[:n] {
					for _, z := range cj[:n] {
						q += inv.At(x, z)
					}
				}
			}
		}
		trRunner += 1/k + s.w*s.w/(k*k)*q
		ssRunner += a[r] * a[r]
		logK += math.Log(k)
	}
	for i, x := range e {
		ee += x * x
		yPy += x * m.y[i] * s.w
	}
	n := float64(len(e))
	used := float64(len(a)) - trRunner/v.Runner + float64(courses) - trCourse/v.Course
	p.deviance = (n-1)*math.Log(2*math.Pi) + n*math.Log(v.Residual) +
		float64(len(a))*math.Log(v.Runner) + float64(courses)*math.Log(v.Course) +
		logK + s.chol.LogDet() + yPy
	p.gradient[0] = float64(len(a)) - (trRunner+ssRunner)/v.Runner
	p.gradient[1] = float64(courses) - (trCourse+ssCourse)/v.Course
	if m.withRuns {
		used += float64(runs) - trRun/v.Run
		p.deviance += float64(runs) * math.Log(v.Run)
		p.gradient[3] = float64(runs) - (trRun+ssRun)/v.Run
	}
	p.gradient[2] = n - 1 - used - ee/v.Residual

	g := make([][]float64, len(p.x)) // g_k per result
	for k := range g {
		g[k] = make([]float64, len(e))
	}
	for r := range a {
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			k, _ := m.columns(int(i))
			g[0][i], g[1][i], g[2][i] = a[r], b.AtVec(k[0]), e[i]
			if m.withRuns {
				g[3][i] = b.AtVec(k[2])
			}
		}
	}
	for k := range g {
		_, _, rest := s.solve(g[k])
		for l := k; l < len(g); l++ {
			p.information.SetSym(k, l, s.w*dot(g[l], rest))
		}
	}
	p.fit = REMLFit{Variances: v, Deviance: p.deviance, Level: b.AtVec(courses), RunnerEffect: a}
	p.fit.CourseEffect = append(p.fit.CourseEffect, b.RawVector().Data[:courses]...)
	if m.withRuns {
		p.fit.RunEffect = append(p.fit.RunEffect, b.RawVector().Data[courses+1:]...)
	}
}
