package pipeline

import (
	"context"
	"errors"
	"slices"
	"sync"
	"testing"
)

// Every piece is done once, after its batch was read, and no batch is read
// more than one ahead.
func TestInBatches(t *testing.T) {
	pl := &Pipeline{Progress: silent{}, Settings: Settings{Threads: 3}}
	var mu sync.Mutex
	var read, did []int
	err := pl.InBatches(context.Background(), "test", 10, 4, func(_ context.Context, from, to int) error {
		mu.Lock()
		defer mu.Unlock()
		if from > len(did)+2*4 {
			t.Errorf("batch %d was read when %d were done", from, len(did))
		}
		for i := from; i < to; i++ {
			read = append(read, i)
		}
		return nil
	}, func(_ context.Context, i int) error {
		mu.Lock()
		defer mu.Unlock()
		if !slices.Contains(read, i) {
			t.Errorf("%d was done before it was read", i)
		}
		did = append(did, i)
		return nil
	})
	slices.Sort(did)
	if err != nil || !slices.Equal(did, []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}) {
		t.Errorf("did %v, %v", did, err)
	}
}

// The first error of either kind is the one given, and nothing is done after.
func TestInBatchesFails(t *testing.T) {
	pl := &Pipeline{Progress: silent{}, Settings: Settings{Threads: 1}}
	bad := errors.New("bad")
	did := 0
	for name, at := range map[string]struct{ read, do, least, most int }{"reading": {4, -1, 0, 4}, "doing": {-1, 5, 6, 6}, "first": {0, -1, 0, 0}} {
		did = 0
		err := pl.InBatches(context.Background(), "test", 10, 4, func(_ context.Context, from, _ int) error {
			if from == at.read {
				return bad
			}
			return nil
		}, func(_ context.Context, i int) error {
			if did++; i == at.do {
				return bad
			}
			return nil
		})
		if !errors.Is(err, bad) || did < at.least || did > at.most {
			t.Errorf("%s: %v after %d pieces", name, err, did)
		}
	}
	if err := pl.InBatches(context.Background(), "test", 0, 4, nil, nil); err != nil {
		t.Error(err)
	}
}
