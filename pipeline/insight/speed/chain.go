package speed

import "math"

// chain is the working memory for one runner's form: a random walk with the
// independent observations zeta of precision w. Its posterior precision is
// tridiagonal, so factor, solution and marginal variances each take one pass
// (Durbin and Koopman 2012, ch. 4; the L D L' form of the smoother).
//
//	pivot  k_0 = prior + w_0,  k_i = w_i + k_{i-1} gain_{i-1}
//	gain_i = step_i/(k_i + step_i),  inv_i = 1/(k_i + step_i),  inv_last = 1/k_last
//	Cov(a_i, a_j) = gain_i … gain_{j-1} Var(a_j),  i < j
//
// step_i is the precision of the change from result i to i+1.
type chain struct {
	w, zeta    []float64 // observations: precision, value
	gain, inv  []float64 // factor
	mean, vari []float64 // posterior of every level
}

// resize makes room for n results.
func (c *chain) resize(n int) {
	if cap(c.w) < n {
		b := make([]float64, 6*2*n)
		cut := func() []float64 { s := b[: 2*n : 2*n]; b = b[2*n:]; return s }
		c.w, c.zeta, c.gain, c.inv, c.mean, c.vari = cut(), cut(), cut(), cut(), cut(), cut()
	}
	c.w, c.zeta, c.gain = c.w[:n], c.zeta[:n], c.gain[:n]
	c.inv, c.mean, c.vari = c.inv[:n], c.mean[:n], c.vari[:n]
}

// smooth factors the chain and fills mean and vari. prior is the precision of
// the first level around 0, step the precisions of the changes (the last
// entry is not read).
func (c *chain) smooth(prior float64, step []float32) {
	n := len(c.w)
	w, zeta, gain, inv, mean, vari := c.w[:n], c.zeta[:n], c.gain[:n], c.inv[:n], c.mean[:n], c.vari[:n]
	k := prior + w[0]
	p := 0.0
	last := n - 1
	for i := 0; i < last; i++ {
		p += w[i] * zeta[i]
		mean[i] = p
		q := float64(step[i])
		d := 1 / (k + q)
		g := q * d
		inv[i], gain[i] = d, g
		k = w[i+1] + k*g
		p *= g
	}
	v := 1 / k
	m := (p + w[last]*zeta[last]) * v
	inv[last], gain[last], mean[last], vari[last] = v, 0, m, v
	for i := last - 1; i >= 0; i-- {
		m = mean[i]*inv[i] + gain[i]*m
		v = inv[i] + gain[i]*gain[i]*v
		mean[i], vari[i] = m, v
	}
}

// steps fills the precisions of the changes of form between the n results
// whose days are given; step[n-1] stays 0. The variance of a change is
//
//	FormWeek² weeks + FormNew² exp(-k/12),  k the later result's number from 0, below 60
//
// and at least floor, so that two results on one day keep the chain regular.
func (h *Hyper) steps(day func(i int) int32, step []float32, newness *[newcomerRuns]float64, floor float64) {
	n := len(step)
	perDay := h.FormWeek * h.FormWeek / 7
	prev := day(0)
	for i := 0; i < n-1; i++ {
		d := day(i + 1)
		q := perDay * float64(d-prev)
		if i+1 < newcomerRuns {
			q += newness[i+1]
		}
		step[i] = float32(1 / max(q, floor))
		prev = d
	}
	step[n-1] = 0
}

const (
	newcomerRuns  = 60    // after this many runs nobody is new
	changeFloor   = 1e-7  // least variance of a change of form
	constantFloor = 1e-14 // … in a model with constant form
)

// newness tabulates the newcomers' extra variance by number of the run.
func (h *Hyper) newness() *[newcomerRuns]float64 {
	var t [newcomerRuns]float64
	for k := range t {
		t[k] = h.FormNew * h.FormNew * math.Exp(-float64(k)/12)
	}
	return &t
}
