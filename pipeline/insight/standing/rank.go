package standing

import (
	"cmp"
	"slices"
	"strconv"
)

// Rank is a competition rank: 1, 2=, 2=, 4. The zero Rank is none.
type Rank struct {
	N      int32 // 1 for the first; 0 = none
	Shared bool  // others have the same
}

// String prints "4", "2=" or nothing.
func (r Rank) String() string {
	switch {
	case r.N == 0:
		return ""
	case r.Shared:
		return strconv.Itoa(int(r.N)) + "="
	}
	return strconv.Itoa(int(r.N))
}

// Ranks ranks values, one a runner, lowest first: each runner's best of a
// season once, or adjusted times. Zero or less is no value and has no rank.
// Equal values share a rank and the next is skipped.
//
// Example: 20:01, 20:15, 20:15, 20:30 are 1, 2=, 2=, 4.
func Ranks[V cmp.Ordered](values []V) []Rank {
	out := make([]Rank, len(values))
	var zero V
	order := make([]int32, 0, len(values))
	for i, v := range values {
		if v > zero {
			order = append(order, int32(i))
		}
	}
	slices.SortFunc(order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(values[a], values[b]), cmp.Compare(a, b))
	})
	for k := 0; k < len(order); {
		end := k + 1
		for end < len(order) && values[order[end]] == values[order[k]] {
			end++
		}
		for _, i := range order[k:end] {
			out[i] = Rank{int32(k + 1), end-k > 1}
		}
		k = end
	}
	return out
}

// MinPercentile is the smallest group of which a percentile says anything.
const MinPercentile = 10

// Percentile is the share of the others in a group who are strictly slower, in
// whole percent rounded down: floor(100 × slower / (n − 1)). ok is false in a
// group of under MinPercentile: give the rank and the count only.
//
// Example: of n 24, two at 5=: 18 are slower, 18/23 is 78.
func Percentile(slower, n int) (percent int, ok bool) {
	if n < MinPercentile || slower < 0 || slower > n-1 {
		return 0, false
	}
	return 100 * slower / (n - 1), true
}
