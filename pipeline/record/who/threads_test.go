package who

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestRadixSort holds the sort against the library's stable one, for one thread and
// for several, with and without something to carry along.
func TestRadixSort(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, n := range []int{0, 1, 2, 1000, threadsFrom + 17} {
		for _, mask := range []uint64{0, 0xff, 0xffff0000, 1<<63 | 0x3ff, ^uint64(0)} {
			keys := make([]uint64, n)
			for i := range keys {
				keys[i] = r.Uint64() & mask
			}
			want := make([]int32, n)
			for i := range want {
				want[i] = int32(i)
			}
			slices.SortStableFunc(want, func(a, b int32) int {
				switch x, y := keys[a], keys[b]; {
				case x < y:
					return -1
				case x > y:
					return 1
				}
				return 0
			})
			for _, threads := range []int{0, 1, 2, 3, 8} {
				sorted, with := slices.Clone(keys), make([]int32, n)
				for i := range with {
					with[i] = int32(i)
				}
				radixSort(threads, sorted, with)
				if !slices.IsSorted(sorted) || !slices.Equal(with, want) {
					t.Fatalf("%d keys of %x, %d threads: not sorted, or equal keys changed places", n, mask, threads)
				}
				unique := slices.Compact(slices.Clone(sorted))
				if got := sortUnique(threads, slices.Clone(keys)); !slices.Equal(got, unique) {
					t.Fatalf("%d keys of %x, %d threads: %d different ones, want %d", n, mask, threads, len(got), len(unique))
				}
			}
		}
	}
}
