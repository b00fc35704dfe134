package who

import (
	"slices"
	"testing"
)

// A runner parted from another, all of whose rows are the other's anchors, gets
// an id that is the same ever after, whoever is new beside them.
func TestPartedRunnerKeepsTheNewID(t *testing.T) {
	anchors := []Anchor{{ID: 1, Key: 10, Rows: 1}, {ID: 1, Key: 20, Rows: 1}, {ID: 1, Key: 30, Rows: 1}}
	first := AssignIDs(1, anchors, []int64{10, 20, 30}, []int32{0, 0, 1}, 2)
	if !slices.Equal(first.Of, []int32{1, 2}) {
		t.Fatalf("ids %v, want 1 and a new one", first.Of)
	}
	anchors = append(anchors, first.Added...)
	// somebody new whose rows come first
	then := AssignIDs(1, anchors, []int64{5, 10, 20, 30}, []int32{0, 1, 1, 2}, 3)
	if !slices.Equal(then.Of, []int32{3, 1, 2}) {
		t.Errorf("with somebody new the ids are %v, want 3 1 2", then.Of)
	}
	// joined again, the older id comes back and the other leads to it
	joined := AssignIDs(1, append(anchors, then.Added...), []int64{5, 10, 20, 30}, []int32{0, 1, 1, 1}, 2)
	if !slices.Equal(joined.Of, []int32{3, 1}) || !slices.Equal(joined.Aliases, []Alias{{2, 1}}) {
		t.Errorf("joined again: ids %v, aliases %v", joined.Of, joined.Aliases)
	}
}
