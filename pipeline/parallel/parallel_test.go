package parallel

import (
	"context"
	"sync/atomic"
	"testing"
)

func TestEach(t *testing.T) {
	for _, threads := range []int{0, 1, 2, 7} {
		for _, n := range []int{0, 1, 5, 3*piece + 1} {
			times := make([]atomic.Int32, n)
			Each(n, threads, func(k int) { times[k].Add(1) })
			Pieces(n, threads, func(from, to int) {
				for k := from; k < to; k++ {
					times[k].Add(1)
				}
			})
			for k := range times {
				if times[k].Load() != 2 {
					t.Fatalf("%d threads: %d of %d was done %d times, want 2", threads, k, n, times[k].Load())
				}
			}
		}
	}
}

func TestEachUntil(t *testing.T) {
	for _, threads := range []int{1, 4} {
		ctx, cancel := context.WithCancel(context.Background())
		var done atomic.Int32
		err := EachUntil(ctx, 1000, threads, func(int) {
			if done.Add(1) == 10 {
				cancel()
			}
		})
		if err != context.Canceled || done.Load() > 10+int32(threads) {
			t.Errorf("%d threads: %d were done after the tenth called it off (%v)", threads, done.Load(), err)
		}
	}
}
