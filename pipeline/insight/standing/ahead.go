package standing

import (
	"cmp"
	"slices"
)

// MaxNeed is the largest share of the present time, 5 %, by which a place
// ahead is still named: further off it is no target.
const MaxNeed = 0.05

// Target is a place ahead of somebody.
type Target struct {
	Place   Rank
	TimeS   int32 // seconds that stand at that place
	NeedS   int32 // seconds that take it outright: one second less
	FasterS int32 // by how much that is faster than the runner's own
}

// Ahead names the nearest places ahead of somebody whose best is mine, nearest
// first, at most places of them, out of everybody's bests (seconds, rounded
// up, one a runner, mine among them or not). It stops before a place that
// needs a time more than MaxNeed faster than mine. Times are raw bests on one
// course, or times adjusted to an average day; say which beside them. The
// caller leaves out anybody who may be under 18: no targets for children.
func Ahead(mine int32, bests []int32, places int) []Target {
	if mine <= 0 {
		return nil
	}
	faster := make([]int32, 0, len(bests))
	for _, b := range bests {
		if b > 0 && b < mine {
			faster = append(faster, b)
		}
	}
	slices.SortFunc(faster, func(a, b int32) int { return cmp.Compare(a, b) })
	var out []Target
	for end := len(faster); end > 0 && len(out) < places; {
		begin := end - 1
		for begin > 0 && faster[begin-1] == faster[end-1] {
			begin--
		}
		t := faster[begin]
		need := t - 1
		if float64(mine-need) > MaxNeed*float64(mine) {
			break
		}
		out = append(out, Target{Rank{int32(begin + 1), end-begin > 1}, t, need, mine - need})
		end = begin
	}
	return out
}
