package speed

import "sort"

// partCount is fixed: sums over parts are taken in their order, so that the
// last bit of a figure does not depend on the number of threads.
const partCount = 16

// span is a range of runners lo <= r < hi.
type span struct{ lo, hi int }

// partition cuts the runners into parts of about equal numbers of results.
func partition(offsets []int32, parts int) []span {
	runners := len(offsets) - 1
	n := int64(offsets[runners])
	s := make([]span, parts)
	lo := 0
	for p := range s {
		want := int32(n * int64(p+1) / int64(parts))
		hi := sort.Search(runners, func(r int) bool { return offsets[r+1] > want })
		if p == parts-1 {
			hi = runners
		}
		s[p] = span{lo, max(lo, hi)}
		lo = s[p].hi
	}
	return s
}

// sumParts adds the parts' vectors into out, in the order of the parts.
func sumParts(out []float64, parts [][]float64) {
	copy(out, parts[0])
	for _, p := range parts[1:] {
		for j, v := range p {
			out[j] += v
		}
	}
}
