package who

import (
	"cmp"
	"slices"
)

// Group is several runners who may be one person: one question instead of one
// for every two.
type Group struct {
	Runners []int32   // ascending
	Chance  []float64 // that each is one with at least one of the others
	Gain    float64   // of its pairs together
}

const (
	groupFrom = .1 // chance of a pair from which it makes a group
	groupMost = 8  // runners in a group: more than fit on a page are asked pair by pair
)

// groups puts together the doubtful pairs that have a runner in common, the most
// useful first.
func groups(pairs []Pair) []Group {
	at := map[int32]int{} // runner -> group
	var found []Group
	for _, p := range pairs {
		if p.Chance < groupFrom {
			continue
		}
		a, okA := at[p.A]
		b, okB := at[p.B]
		switch {
		case !okA && !okB:
			at[p.A], at[p.B] = len(found), len(found)
			found = append(found, Group{Runners: []int32{p.A, p.B}})
		case okA && !okB && len(found[a].Runners) < groupMost:
			at[p.B] = a
			found[a].Runners = append(found[a].Runners, p.B)
		case okB && !okA && len(found[b].Runners) < groupMost:
			at[p.A] = b
			found[b].Runners = append(found[b].Runners, p.A)
		case okA && okB && a != b && len(found[a].Runners)+len(found[b].Runners) <= groupMost:
			for _, x := range found[b].Runners {
				at[x] = a
			}
			found[a].Runners = append(found[a].Runners, found[b].Runners...)
			found[b].Runners = nil
		}
	}
	for i := range found {
		slices.Sort(found[i].Runners)
		found[i].Chance = make([]float64, len(found[i].Runners))
	}
	for _, p := range pairs {
		a, okA := at[p.A]
		if b, okB := at[p.B]; !okA || !okB || a != b {
			continue
		}
		g := &found[a]
		g.Gain += p.Gain
		for _, x := range [...]int32{p.A, p.B} {
			i, _ := slices.BinarySearch(g.Runners, x)
			g.Chance[i] = max(g.Chance[i], p.Chance)
		}
	}
	found = slices.DeleteFunc(found, func(g Group) bool { return len(g.Runners) < 3 })
	slices.SortFunc(found, func(x, y Group) int {
		return cmp.Or(-cmp.Compare(x.Gain, y.Gain), cmp.Compare(x.Runners[0], y.Runners[0]))
	})
	return found
}
