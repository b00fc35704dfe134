package speed

import (
	"context"
	"math"
	"slices"

	"lapwing/pipeline/parallel"
)

// Expectation propagation (Minka 2001): every result's density is stood in
// for by a Gaussian site of precision w and value z, chosen so that the form
// it implies has the tilted mean and variance.
const (
	startBand   = .12 // log time: results this near a runner's reference start as all-out
	startSD     = .04
	startFarSD  = .5
	startSweeps = 3
	// Between the components the curvature may turn negative; the site keeps
	// the tilted mean and gets this least share of the full precision.
	leastPrecision = 2e-3
)

// dampingOf is the share of a site's step that is taken. Full steps swing for
// runners with few results; a few go on swinging at .7 for ever, so the share
// falls from the fifth round on.
func dampingOf(round int) float64 {
	return max(.25, .7*math.Pow(.9, float64(max(0, round-4))))
}

// sweepSums is what one part of a sweep gathers, per group 2*course+visitor.
type sweepSums struct {
	allOut, normal []float64 // probabilities of all-out, of all-out or slow
}

// sweep visits every runner: `times` updates of the sites with the effects
// fixed, then a new factor of the chain for the solver and the runs'
// information D. With start it sets the sites from each runner's own good
// results first.
func (f *fit) sweep(ctx context.Context, times int, start bool) error {
	groupWeights := f.groupWeights()
	s2 := f.h.Sigma * f.h.Sigma
	prior := 1 / (f.h.RunnerSD * f.h.RunnerSD)
	err := parallel.EachUntil(ctx, partCount, f.threads, func(p int) {
		info := f.runSums[p]
		clear(info)
		sums := &f.sweepSums[p]
		clear(sums.allOut)
		clear(sums.normal)
		var ch chain
		var eta []float64
		for r := f.parts[p].lo; r < f.parts[p].hi; r++ {
			a, b := int(f.in.Offsets[r]), int(f.in.Offsets[r+1])
			n := b - a
			run, y := f.in.Run[a:b], f.in.LogTime[a:b]
			w, z, step := f.w[a:b], f.z[a:b], f.step[a:b]
			ch.resize(n)
			eta = grow(eta, n)
			for i, e := range run {
				eta[i] = f.effect[e]
				ch.w[i] = float64(w[i])
				ch.zeta[i] = float64(z[i]) - eta[i]
			}
			if start {
				startSites(&ch, y, eta)
			}
			for t := 0; t < times; t++ {
				ch.smooth(prior, step)
				for i, e := range run {
					group := f.group(r, e)
					c := ch.cavity(i)
					u, beta, k := f.mix.score(float64(y[i])-eta[i]-c.mean, s2+c.vari, groupWeights[group])
					ch.update(i, c, u, beta, s2, f.damping)
					if t == times-1 {
						sums.allOut[group] += k.AllOut
						sums.normal[group] += k.AllOut + k.Slow
					}
				}
			}
			ch.smooth(prior, step)
			gain, inv := f.gain[a:b], f.inv[a:b]
			for i, e := range run {
				w[i] = float32(ch.w[i])
				z[i] = float32(ch.zeta[i] + eta[i])
				gain[i] = float32(ch.gain[i])
				inv[i] = float32(ch.inv[i])
				info[e] += ch.w[i] * max(0, 1-ch.w[i]*ch.vari[i])
			}
		}
	})
	if err != nil {
		return err
	}
	sumParts(f.info, f.runSums)
	return nil
}

// group is the group of a result of runner r in run e: 2*course, and one more
// for a visitor.
func (f *fit) group(r int, e int32) int32 {
	c := f.in.Runs[e].Course
	if c != f.home[r] {
		return 2*c + 1
	}
	return 2 * c
}

// cavity is what all the other results say about the level at one result.
type cavity struct{ mean, vari float64 }

func (c *chain) cavity(i int) cavity {
	iv := 1 / c.vari[i]
	v := 1 / max(iv-c.w[i], 1e-6*iv)
	return cavity{v * (c.mean[i]*iv - c.w[i]*c.zeta[i]), v}
}

// update moves site i towards the moments of cavity times density, whose log
// has the derivative u and the curvature -beta at the cavity's mean.
func (c *chain) update(i int, k cavity, u, beta, s2, damp float64) {
	tau := beta / max(1-k.vari*beta, 1e-6)
	tau = min(max(tau, leastPrecision/s2), 1/s2)
	// nu = tau * value; from the tilted mean k.mean - k.vari*u.
	nu := k.mean*tau - u*(1+k.vari*tau)
	w := (1-damp)*c.w[i] + damp*tau
	c.zeta[i] = ((1-damp)*c.w[i]*c.zeta[i] + damp*nu) / w
	c.w[i] = w
}

// startSites puts precise sites near the runner's lower-third result and vague
// ones elsewhere. Without this, somebody who often walks or pushes a buggy is
// taken for a slow runner whose real runs are errors.
func startSites(c *chain, y []float32, eta []float64) {
	n := len(y)
	x := c.mean
	for i := range x {
		x[i] = float64(y[i]) - eta[i]
	}
	copy(c.zeta, x)
	slices.Sort(x)
	ref := x[3*(n-1)/10]
	for i, v := range c.zeta {
		c.w[i] = 1 / (startFarSD * startFarSD)
		if d := v - ref; d < startBand && d > -startBand {
			c.w[i] = 1 / (startSD * startSD)
		}
	}
}

// grow returns s with length n.
func grow[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, 2*n)[:n]
	}
	return s[:n]
}
