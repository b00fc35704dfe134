package speed

import (
	"context"
	"math"

	"lapwing/pipeline/parallel"
)

// The mixed-model equations (Henderson 1953) in the course effects c and the
// days d, the runners' chains eliminated exactly. With T the run's course and
//
//	G = Z' (W - W K^-1 W) Z        the runners' information on the runs
//	L = (I - 11'/C)/CourseSD²      courses around their own mean, level flat
//	P = diag(u_e/DaySD²)
//
// they are  (T'GT + L) c + T'G d = T'g,  G T c + (G + P) d = g,  where g is
// the same operator on the sites' values.

// applyRunners sets out = G u for a value u of every run, or g when u is nil.
func (f *fit) applyRunners(ctx context.Context, u, out []float64) error {
	err := parallel.EachUntil(ctx, partCount, f.threads, func(p int) {
		acc := f.runSums[p]
		clear(acc)
		var x, v []float64
		for r := f.parts[p].lo; r < f.parts[p].hi; r++ {
			a, b := int(f.in.Offsets[r]), int(f.in.Offsets[r+1])
			n := b - a
			run := f.in.Run[a:b:b]
			w, gain, inv := f.w[a:b:b], f.gain[a:b:b], f.inv[a:b:b]
			x, v = grow(x, n), grow(v, n)
			x, v := x[:n:n], v[:n:n]
			if u == nil {
				for i, z := range f.z[a:b:b] {
					v[i] = float64(z)
				}
			} else {
				for i, e := range run {
					v[i] = u[e]
				}
			}
			// x = K^-1 w v by the factor of the chain
			s := 0.0
			for i := range w {
				s += float64(w[i]) * v[i]
				x[i] = s * float64(inv[i])
				s *= float64(gain[i])
			}
			s = 0
			for i := n - 1; i >= 0; i-- {
				s = x[i] + float64(gain[i])*s
				acc[run[i]] += float64(w[i]) * (v[i] - s)
			}
		}
	})
	if err != nil {
		return err
	}
	sumParts(out, f.runSums)
	return nil
}

// applySystem sets out to the equations' matrix times x; both hold courses,
// then runs.
func (f *fit) applySystem(ctx context.Context, x, out []float64) error {
	n := len(f.course)
	xc, xd, oc, od := x[:n], x[n:], out[:n], out[n:]
	for e, k := range f.in.Runs {
		f.runValue[e] = xc[k.Course] + xd[e]
	}
	if err := f.applyRunners(ctx, f.runValue, od); err != nil {
		return err
	}
	mean, count := 0.0, 0.0
	for c, v := range xc {
		if f.results[c] > 0 {
			mean += v
			count++
		}
	}
	mean /= count
	for c, v := range xc {
		if f.results[c] > 0 {
			oc[c] = (v - mean) / f.courseVar
		} else {
			oc[c] = v / f.courseVar
		}
	}
	for e, k := range f.in.Runs {
		oc[k.Course] += od[e]
		od[e] += xd[e] * f.dayPrecision(e)
	}
	return nil
}

// solve finds c and d by preconditioned conjugate gradients from their present
// values. It stops when no course's preconditioned residual exceeds tol, which
// with this preconditioner is about the error left in the course effects
// (log time), or after limit iterations. It reports the iterations taken and
// the last such residual.
func (f *fit) solve(ctx context.Context, m *preconditioner, tol float64, limit int) (iterations int, left float64, err error) {
	n := len(f.course)
	size := n + len(f.day)
	buf := make([]float64, 5*size)
	x, r, z, p, q := buf[:size], buf[size:2*size], buf[2*size:3*size], buf[3*size:4*size], buf[4*size:]
	copy(x, f.course)
	copy(x[n:], f.day)
	if err := f.applyRunners(ctx, nil, r[n:]); err != nil {
		return 0, 0, err
	}
	for e, k := range f.in.Runs {
		r[k.Course] += r[n+e]
	}
	if err := f.applySystem(ctx, x, q); err != nil {
		return 0, 0, err
	}
	for i := range r {
		r[i] -= q[i]
	}
	m.apply(f, r, z)
	copy(p, z)
	rz := dot(r, z)
	left = maxAbs(z[:n])
	for iterations < limit && left > tol && rz > 0 {
		if err := f.applySystem(ctx, p, q); err != nil {
			return iterations, left, err
		}
		step := rz / dot(p, q)
		for i := range x {
			x[i] += step * p[i]
			r[i] -= step * q[i]
		}
		iterations++
		m.apply(f, r, z)
		next := dot(r, z)
		ratio := next / rz
		rz = next
		for i := range p {
			p[i] = z[i] + ratio*p[i]
		}
		left = maxAbs(z[:n])
	}
	copy(f.course, x[:n])
	copy(f.day, x[n:])
	f.setEffects()
	return iterations, left, nil
}

// setEffects puts the sum of course and day into every run's effect.
func (f *fit) setEffects() {
	mean := f.level()
	for c := range f.course {
		if f.results[c] == 0 {
			f.course[c] = mean
		}
	}
	for e, k := range f.in.Runs {
		f.effect[e] = f.course[k.Course] + f.day[e]
	}
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i, v := range a {
		s += v * b[i]
	}
	return s
}

func maxAbs(a []float64) float64 {
	m := 0.0
	for _, v := range a {
		m = max(m, math.Abs(v))
	}
	return m
}
