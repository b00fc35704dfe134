package pipeline

import (
	"context"
	"errors"
	"fmt"
	"sync/atomic"
	"testing"
)

// TestReadAhead checks order, the bounds of a batch, and that not more than
// one batch is read ahead.
func TestReadAhead(t *testing.T) {
	const n = 2*batchSheets + 700
	large := map[int]bool{batchSheets + 10: true, batchSheets + 11: true}
	size := func(i int) int64 {
		if large[i] {
			return batchBytes + 1
		}
		return 1
	}
	var read, used atomic.Int64
	var bounds []string
	err := readAhead(context.Background(), n, 3, size, func(i int) int {
		if ahead := read.Add(1) - used.Load(); ahead > 2*batchSheets {
			t.Errorf("%d items read ahead", ahead)
		}
		return i * i
	}, func(from int, batch []int) error {
		bounds = append(bounds, fmt.Sprint(from))
		for k, v := range batch {
			if i := from + k; v != i*i {
				t.Fatalf("item %d is %d", i, v)
			}
		}
		used.Add(int64(len(batch)))
		return nil
	})
	if err != nil || used.Load() != n {
		t.Fatalf("%d of %d items, %v", used.Load(), n, err)
	}
	want := []int{0, batchSheets, batchSheets + 10, batchSheets + 11, batchSheets + 12, 2*batchSheets + 12}
	if fmt.Sprint(bounds) != fmt.Sprint(want) {
		t.Errorf("batches begin at %v, want %v", bounds, want)
	}
}

// TestReadAheadEnds checks that an error and a cancelled context end the work
// with nothing left running.
func TestReadAheadEnds(t *testing.T) {
	broken := errors.New("broken")
	one := func(int) int64 { return 1 }
	var reading atomic.Int64
	read := func(int) int { reading.Add(1); defer reading.Add(-1); return 0 }
	uses := 0
	err := readAhead(context.Background(), 9*batchSheets, 2, one, read, func(int, []int) error { uses++; return broken })
	if !errors.Is(err, broken) || uses != 1 || reading.Load() != 0 {
		t.Errorf("%v after %d batches, %d still reading", err, uses, reading.Load())
	}
	ctx, cancel := context.WithCancel(context.Background())
	uses = 0
	err = readAhead(ctx, 9*batchSheets, 2, one, read, func(int, []int) error { uses++; cancel(); return nil })
	if !errors.Is(err, context.Canceled) || uses != 1 || reading.Load() != 0 {
		t.Errorf("%v after %d batches, %d still reading", err, uses, reading.Load())
	}
	if err := readAhead(context.Background(), 0, 2, one, read, func(int, []int) error { return broken }); err != nil {
		t.Errorf("nothing to read: %v", err)
	}
}
