package speed

import (
	"math"

	"lapwing/pipeline/parallel"
)

// overStep over-relaxes the EM step on the logit scale, 1 being plain EM, which
// takes twice as many rounds. The prior's part of a group converges at once
// and would swing if it were stretched, so only the data's part is.
const (
	overStep   = 2.5
	logitBound = 3

	shareSpread   = 200 // visitors' results beyond which a course tells little more about the line
	leastExpected = .05 // expected share of visitors, and of 1 less it, at the least
)

// groupWeights are the prior weights of the components per group,
// 2*course for residents and 2*course+1 for visitors.
func (f *fit) groupWeights() []Components {
	w := make([]Components, len(f.share))
	for g, s := range f.share {
		w[g] = f.h.weights(s)
	}
	return w
}

// updateShares takes one EM step for the all-out share of every group: the
// mean probability of all-out among all-out and slow, held by SharePrior
// pseudo-results to what courses like it have. For residents that is the pooled
// share; for visitors it is a line in the course effect, because people choose
// fast courses for all-out days: held to a pooled share, visitors of a fast
// course would seem to try less than they do, and the course faster than it is.
func (f *fit) updateShares() {
	allOut, normal := make([]float64, len(f.share)), make([]float64, len(f.share))
	for p := range f.sweepSums {
		for g := range allOut {
			allOut[g] += f.sweepSums[p].allOut[g]
			normal[g] += f.sweepSums[p].normal[g]
		}
	}
	var a, n [2]float64
	for g := range allOut {
		a[g&1] += allOut[g]
		n[g&1] += normal[g]
	}
	line := f.visitorLine(allOut, normal)
	for g, old := range f.share {
		const pooledPrior = 50
		expected := (a[g&1] + pooledPrior*f.h.Share) / (n[g&1] + pooledPrior)
		if g&1 == 1 {
			expected = min(max(expected+line[g/2], leastExpected), 1-leastExpected)
		}
		em := (allOut[g] + f.h.SharePrior*expected) / (normal[g] + f.h.SharePrior)
		step := 1 + (overStep-1)*normal[g]/(normal[g]+f.h.SharePrior+tiny)
		l := logit(old) + step*(logit(em)-logit(old))
		l = min(max(l, -logitBound), logitBound)
		f.share[g] = sigmoid(l)
	}
}

// visitorLine is the weighted regression of the visitors' all-out share on the
// course effect, the same slope for all distances: it gives for every course how
// far its share is expected to be from the pooled one. A course's weight is that
// of its visitors' results where courses differ beyond the line by about what
// shareSpread results would be uncertain by; a course's worth of no slope keeps
// a handful of courses from making one.
func (f *fit) visitorLine(allOut, normal []float64) []float64 {
	type sums struct{ w, x, y float64 }
	at := map[float64]sums{} // by distance
	weight := make([]float64, len(f.course))
	for c, v := range f.course {
		if n := normal[2*c+1]; n > 0 {
			u := n * shareSpread / (n + shareSpread)
			d := at[f.in.Courses[c].DistanceM]
			at[f.in.Courses[c].DistanceM] = sums{d.w + u, d.x + u*v, d.y + u*allOut[2*c+1]/n}
			weight[c] = u
		}
	}
	xx, xy := shareSpread*f.courseVar, 0.0
	off := make([]float64, len(f.course))
	for c, u := range weight {
		if u > 0 {
			d := at[f.in.Courses[c].DistanceM]
			off[c] = f.course[c] - d.x/d.w
			xx += u * off[c] * off[c]
			xy += u * off[c] * (allOut[2*c+1]/normal[2*c+1] - d.y/d.w)
		}
	}
	for c := range off {
		off[c] *= xy / xx
	}
	return off
}

func logit(p float64) float64 { return math.Log(p / (1 - p)) }

// homes gives every runner's home course: the one with most results, of
// equals the one used latest. Everywhere else the runner is a visitor.
func homes(in *Input, parts []span, threads int, home []int32) error {
	return parallel.EachUntil(background, len(parts), threads, func(p int) {
		count := make([]int32, len(in.Courses))
		for r := parts[p].lo; r < parts[p].hi; r++ {
			a, b := int(in.Offsets[r]), int(in.Offsets[r+1])
			for i := a; i < b; i++ {
				count[in.course(i)]++
			}
			best := in.course(b - 1)
			for i := b - 2; i >= a; i-- {
				if c := in.course(i); count[c] > count[best] {
					best = c
				}
			}
			for i := a; i < b; i++ {
				count[in.course(i)] = 0
			}
			home[r] = best
		}
	})
}
