package pipeline

import (
	"context"
	"errors"

	"lapwing/pipeline/parallel"
	"lapwing/pipeline/sheet"
)

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
			parallel.Each(to-from, workers, func(i int) {
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

// rowBatch is some rows of a large sheet: the cells of row k are
// cells[ends[k-1]:ends[k]], ends[-1] being 0.
type rowBatch struct {
	rows  []int
	ends  []int
	cells []string
}

// rowsAhead is part.Each for a large sheet: rows are divided on one goroutine and
// handed to f on another. Cells never change, so that only their headers are copied.
func rowsAhead(part *sheet.Part) func(f func(row int, cells []string) error) error {
	return func(f func(row int, cells []string) error) error {
		const rows, ahead = 4096, 4
		batches, spare, stop := make(chan *rowBatch, ahead), make(chan *rowBatch, ahead+2), make(chan struct{})
		var readErr error // good once batches is closed
		go func() {
			defer close(batches)
			b := &rowBatch{}
			send := func() error {
				select {
				case batches <- b:
				case <-stop:
					return errStopped
				}
				select {
				case b = <-spare:
					b.rows, b.ends, b.cells = b.rows[:0], b.ends[:0], b.cells[:0]
				default:
					b = &rowBatch{}
				}
				return nil
			}
			readErr = part.Each(func(row int, cells []string) error {
				b.cells = append(b.cells, cells...)
				b.rows, b.ends = append(b.rows, row), append(b.ends, len(b.cells))
				if len(b.rows) == rows {
					return send()
				}
				return nil
			})
			if readErr == nil && len(b.rows) > 0 {
				readErr = send()
			}
		}()
		for b := range batches {
			from := 0
			for k, to := range b.ends {
				if err := f(b.rows[k], b.cells[from:to:to]); err != nil {
					close(stop)
					for range batches { // closed when the goroutine has ended
					}
					return err
				}
				from = to
			}
			spare <- b
		}
		if errors.Is(readErr, errStopped) {
			return nil
		}
		return readErr
	}
}
