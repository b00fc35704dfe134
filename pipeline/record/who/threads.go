package who

import "sync"

// threadsFrom is the number of keys from which sorting is worth several threads.
const threadsFrom = 1 << 16

// inPieces does 0 … n-1 in one stretch a thread; k numbers the stretches.
func inPieces(threads, n int, do func(k, lo, hi int)) {
	if n < threadsFrom {
		threads = 1
	}
	if threads <= 1 {
		do(0, 0, n)
		return
	}
	var wg sync.WaitGroup
	for k := range threads {
		wg.Go(func() { do(k, n*k/threads, n*(k+1)/threads) })
	}
	wg.Wait()
}

// together does a few things at a time where there are threads for it.
func together(threads int, do ...func()) {
	if threads <= 1 {
		for _, f := range do {
			f()
		}
		return
	}
	var wg sync.WaitGroup
	for _, f := range do {
		wg.Go(f)
	}
	wg.Wait()
}

// radixBits is how many bits a pass of a radix sort looks at.
const radixBits = 11

// radixSort sorts keys upwards and carries with along, if there is any; equal keys
// keep their order. Both have the same length.
func radixSort(threads int, keys []uint64, with []int32) {
	n := len(keys)
	if n < 2 {
		return
	}
	if n < threadsFrom {
		threads = 1
	}
	differ := make([]uint64, max(1, threads))
	inPieces(threads, n, func(k, lo, hi int) {
		diff := uint64(0)
		for _, x := range keys[lo:hi] {
			diff |= x ^ keys[0]
		}
		differ[k] = diff
	})
	diff := uint64(0)
	for _, d := range differ {
		diff |= d
	}
	counts := make([][1 << radixBits]int32, len(differ))
	a, b := keys, make([]uint64, n)
	var wa, wb []int32
	if with != nil {
		wa, wb = with, make([]int32, n)
	}
	for shift := 0; shift < 64; shift += radixBits {
		if diff>>shift&(1<<radixBits-1) == 0 {
			continue
		}
		inPieces(threads, n, func(k, lo, hi int) {
			count := &counts[k]
			clear(count[:])
			for _, x := range a[lo:hi] {
				count[x>>shift&(1<<radixBits-1)]++
			}
		})
		at := int32(0)
		for d := range 1 << radixBits {
			for k := range counts {
				at, counts[k][d] = at+counts[k][d], at
			}
		}
		inPieces(threads, n, func(k, lo, hi int) {
			count := &counts[k]
			if wa == nil {
				for _, x := range a[lo:hi] {
					d := x >> shift & (1<<radixBits - 1)
					b[count[d]] = x
					count[d]++
				}
				return
			}
			for i := lo; i < hi; i++ {
				x := a[i]
				d := x >> shift & (1<<radixBits - 1)
				p := count[d]
				count[d]++
				b[p], wb[p] = x, wa[i]
			}
		})
		a, b, wa, wb = b, a, wb, wa
	}
	if &a[0] != &keys[0] {
		copy(keys, a)
		copy(with, wa)
	}
}

// sortUnique sorts keys and drops repeats.
func sortUnique(threads int, keys []uint64) []uint64 {
	if len(keys) < 2 {
		return keys
	}
	radixSort(threads, keys, nil)
	out := keys[:1]
	for _, k := range keys[1:] {
		if k != out[len(out)-1] {
			out = append(out, k)
		}
	}
	return out
}
