// Package parallel shares work out over threads.
package parallel

import (
	"context"
	"sync"
	"sync/atomic"
)

// Each does f(0) … f(n-1), on as many threads at once, each taking the next that
// nobody has begun; on the caller's where one is enough. f must not depend on the
// order.
func Each(n, threads int, f func(k int)) {
	// nobody calls this off
	_ = EachUntil(context.Background(), n, threads, f)
}

// EachUntil is Each, begins no more once ctx is done, and returns ctx's error then.
func EachUntil(ctx context.Context, n, threads int, f func(k int)) error {
	if threads = min(threads, n); threads <= 1 {
		for k := 0; k < n && ctx.Err() == nil; k++ {
			f(k)
		}
		return ctx.Err()
	}
	var next atomic.Int64
	var wg sync.WaitGroup
	for range threads {
		wg.Go(func() {
			for ctx.Err() == nil {
				k := int(next.Add(1)) - 1
				if k >= n {
					return
				}
				f(k)
			}
		})
	}
	wg.Wait()
	return ctx.Err()
}

// piece is how many numbers a thread takes at a time.
const piece = 1 << 13

// Pieces does f for stretches of 0 … n-1, from included, to not.
func Pieces(n, threads int, f func(from, to int)) {
	Each((n+piece-1)/piece, threads, func(k int) { f(k*piece, min(n, (k+1)*piece)) })
}
