package pipeline

import (
	"context"
	"sync/atomic"

	"lapwing/pipeline/parallel"
)

// InBatches does n pieces of work in batches of at most size: read fetches
// from … to-1 at once, then do works on each of them, several at a time, while
// the next batch is read. So no more than two batches are held at a time. The
// first error ends it; nothing runs on afterwards.
func (pl *Pipeline) InBatches(ctx context.Context, what string, n, size int,
	read func(ctx context.Context, from, to int) error, do func(ctx context.Context, i int) error) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	defer pl.Progress.Done()
	ready := make(chan bool) // of each batch in turn: whether it could be read
	go func() {
		defer close(ready)
		for from := 0; from < n; from += size {
			err := read(ctx, from, min(from+size, n))
			if err != nil {
				cancel(err)
			}
			if ready <- err == nil; err != nil {
				return
			}
		}
	}()
	var done atomic.Int64
	from := 0
	for ok := range ready {
		if ok && ctx.Err() == nil {
			parallel.Each(min(size, n-from), pl.workers(), func(i int) {
				if ctx.Err() != nil {
					return
				}
				if err := do(ctx, from+i); err != nil {
					cancel(err)
				}
				pl.Progress.Step(what, done.Add(1), int64(n))
			})
		}
		from += size
	}
	return context.Cause(ctx)
}
