package speed

import "math"

// overStep over-relaxes the EM step on the logit scale, 1 being plain EM, which
// takes twice as many rounds. The prior's part of a group converges at once
// and would swing if it were stretched, so only the data's part is.
const (
	overStep   = 2.5
	logitBound = 3
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
// mean probability of all-out among all-out and slow, held to the pooled
// share of all residents or all visitors by SharePrior pseudo-results.
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
	for g, old := range f.share {
		const pooledPrior = 50
		pooled := (a[g&1] + pooledPrior*f.h.Share) / (n[g&1] + pooledPrior)
		em := (allOut[g] + f.h.SharePrior*pooled) / (normal[g] + f.h.SharePrior)
		step := 1 + (overStep-1)*normal[g]/(normal[g]+f.h.SharePrior+tiny)
		l := logit(old) + step*(logit(em)-logit(old))
		l = min(max(l, -logitBound), logitBound)
		f.share[g] = sigmoid(l)
	}
}

func logit(p float64) float64 { return math.Log(p / (1 - p)) }

// homes gives every runner's home course: the one with most results, of
// equals the one used latest. Everywhere else the runner is a visitor.
func homes(in *Input, parts []span, threads int, home []int32) error {
	return inParallel(background, threads, len(parts), func(p int) {
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
