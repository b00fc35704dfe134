package pipeline

import "context"

// batchSheets and batchBytes bound one transaction: the unit of resuming.
const (
	batchSheets = 1000
	batchBytes  = 16 << 20
)

// readAhead reads items 0 … n-1 in batches and hands each batch over in order.
// The next batch is read, on several goroutines, while the one before is in
// use: reading takes the processor, writing mostly waits for the disk. size is
// the number of bytes of an item; one that is larger than a batch is a batch of
// its own.
func readAhead[T any](ctx context.Context, n, workers int, size func(i int) int64, read func(i int) T, use func(from int, batch []T) error) error {
	type batch struct {
		from  int
		items []T
	}
	ctx, cancel := context.WithCancel(ctx)
	batches := make(chan batch)
	go func() {
		defer close(batches)
		next := int64(-1) // size of the first item of the next batch, where it is known
		for from := 0; from < n; {
			to, bytes := from, int64(0)
			for to < n && to-from < batchSheets {
				if next < 0 {
					next = size(to)
				}
				if to > from && bytes+next > batchBytes {
					break
				}
				bytes += next
				next = -1
				to++
			}
			b := batch{from, make([]T, to-from)}
			eachParallel(to-from, workers, func(i int) {
				if ctx.Err() == nil {
					b.items[i] = read(from + i)
				}
			})
			select {
			case batches <- b:
			case <-ctx.Done():
				return
			}
			from = to
		}
	}()
	var err error
	for b := range batches {
		if err = ctx.Err(); err == nil {
			err = use(b.from, b.items)
		}
		if err != nil {
			break
		}
	}
	if err == nil {
		err = ctx.Err()
	}
	cancel()
	for range batches { // the goroutine has ended when the channel is closed
	}
	return err
}
