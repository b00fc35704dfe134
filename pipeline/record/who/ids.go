package who

import (
	"math/bits"
	"slices"
)

// Anchor ties a runner id to one of the runner's rows for ever. Anchors are
// only ever added; an archive keeps them as lines of text, and from them and
// the sheets alone every runner gets the same id again.
//
// A runner has one anchor more than the binary logarithm of its rows, spread
// evenly over them. One anchor would lose the id with the one sheet it came
// from, or hand it to whichever part of a wrongly joined runner holds that
// row; all rows would make the file as large as the archive. Rows says how
// many rows an anchor stood for when it was written, so that the anchors of an
// id vote about as its rows would.
type Anchor struct {
	ID   int32
	Key  int64 // of the row
	Rows int32
	row  int32
}

// Row is the place of an added anchor's row among the keys.
func (a Anchor) Row() int32 { return a.row }

// Alias is an id that was given to a runner now known to be another's: it
// still leads to that runner.
type Alias struct{ Old, ID int32 }

// IDs are the ids of the runners of a result.
type IDs struct {
	Of      []int32  // by runner
	Aliases []Alias  // by Old
	Added   []Anchor // to be appended to the archive's list
	Next    int32    // first id that was never given
}

// AssignIDs gives every runner its id. anchors are all that were ever written,
// in that order; keys and runner are the rows' keys and runners (see
// Result.Runner), runners is their number.
//
// Each old id goes home to the runner that holds most of what its anchors
// stand for (if equal, the runner whose first row comes first; of two who have
// changed places, the one who has no id yet). A runner takes the oldest id that
// came home and the others become aliases; one to whom none came gets the next
// new id, in the order of runners. So a join keeps the older id, a part leaves
// the id with the larger side, undoing either brings the old ids back, and a
// stray row takes no id with it.
func AssignIDs(threads int, anchors []Anchor, keys []int64, runner []int32, runners int) IDs {
	out := IDs{Of: make([]int32, runners)}
	order := make([]int32, len(keys))
	packed := make([]uint64, len(keys))
	for i, k := range keys {
		order[i], packed[i] = int32(i), uint64(k)^1<<63
	}
	radixSort(threads, packed, order)

	// Where each anchor's row is now.
	at := make([]uint64, len(anchors))
	which := make([]int32, len(anchors))
	for i, a := range anchors {
		at[i], which[i] = uint64(a.Key)^1<<63, int32(i)
	}
	radixSort(threads, at, which)
	here := make([]int32, len(anchors)) // runner, -1 not in the archive now
	anchored := make([]bool, len(keys))
	p := 0
	for k, i := range which {
		for p < len(packed) && packed[p] < at[k] {
			p++
		}
		here[i] = -1
		if p < len(packed) && packed[p] == at[k] {
			here[i] = runner[order[p]]
			anchored[order[p]] = true
		}
	}

	// Votes: id, runner, rows.
	type vote struct {
		id, runner int32
		rows       int64
	}
	var votes []vote
	next := int32(1)
	for i, a := range anchors {
		next = max(next, a.ID+1)
		if here[i] >= 0 {
			votes = append(votes, vote{a.ID, here[i], int64(max(1, a.Rows))})
		}
	}
	byID := func(x, y vote) int {
		if x.id != y.id {
			return int(x.id - y.id)
		}
		return int(x.runner - y.runner)
	}
	slices.SortFunc(votes, byID)
	// of each runner, side by side: rows, how many of them were seen, anchors that
	// the id has here, and those to be added
	type tallies struct{ size, seen, live, added int32 }
	of := make([]tallies, runners)
	for lo := 0; lo < len(votes); {
		hi := lo
		best, bestRows := int32(-1), int64(0)
		for hi < len(votes) && votes[hi].id == votes[lo].id {
			rows, r := int64(0), votes[hi].runner
			for ; hi < len(votes) && votes[hi].id == votes[lo].id && votes[hi].runner == r; hi++ {
				rows += votes[hi].rows
			}
			// Two people who have changed places in half of their rows keep an
			// id each: each holds rows of the other's.
			changed := false
			if rows == bestRows && out.Of[best] != 0 && out.Of[r] == 0 {
				_, changed = slices.BinarySearchFunc(votes[:lo], vote{id: out.Of[best], runner: r}, byID)
			}
			if rows > bestRows || changed {
				best, bestRows = r, rows
			}
		}
		if out.Of[best] == 0 { // ids upwards: the oldest comes first
			out.Of[best] = votes[lo].id
		} else {
			out.Aliases = append(out.Aliases, Alias{votes[lo].id, out.Of[best]})
		}
		lo = hi
	}
	for r := range out.Of {
		if out.Of[r] == 0 {
			out.Of[r] = next
			next++
		}
	}
	out.Next = next
	for i, a := range anchors {
		if r := here[i]; r >= 0 && out.Of[r] == a.ID {
			of[r].live++
		}
	}

	// New anchors where there are too few.
	for _, r := range runner {
		of[r].size++
	}
	for _, i := range order {
		r := runner[i]
		t := &of[r]
		want := int32(bits.Len32(uint32(t.size)))
		missing := want - t.live
		x := t.seen
		t.seen++
		if missing <= t.added || anchored[i] {
			continue
		}
		// The k-th of those missing is the first free row from its place on.
		if int64(x) >= int64(t.added)*int64(t.size)/int64(missing) {
			out.Added = append(out.Added, Anchor{ID: out.Of[r], Key: keys[i], Rows: max(1, t.size/want), row: i})
			t.added++
		}
	}
	// A runner all of whose rows are other ids' anchors shares one: without it
	// the id would be given again, to somebody else perhaps.
	bare := false
	for _, t := range of {
		bare = bare || t.live+t.added == 0
	}
	if bare {
		for _, i := range order {
			if t := &of[runner[i]]; t.live+t.added == 0 {
				out.Added = append(out.Added, Anchor{ID: out.Of[runner[i]], Key: keys[i], Rows: 1, row: i})
				t.added++
			}
		}
	}
	slices.SortFunc(out.Added, func(a, b Anchor) int {
		if a.ID != b.ID {
			return int(a.ID - b.ID)
		}
		if a.Key < b.Key {
			return -1
		}
		return 1
	})
	return out
}
