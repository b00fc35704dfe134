package league

import (
	"cmp"
	"slices"
)

// Equal totals are parted by the best single score, then the next best, … to
// the N-th, then the (N+1)th, which did not count; where none is left to
// compare, a missing score is nothing. Only runs are compared: a week of helping
// scores for its points, but is no better result than somebody else's. Those still equal are parted head to
// head: over the runs in which both scored, one for every run finished before
// another of the tied, one off for every run finished behind. Where that parts
// only some, it is done again among those still equal. Whoever then is equal
// shares the rank, and the next is skipped.
//
// Example: best 3, 100 98 90 85 stands before 100 98 90 80.

// at is a place in an event, duels what every runner had, by event ascending.
type at struct{ event, place int32 }

type duels map[int32][]at

// against counts runs finished before b less runs finished behind b.
func (d duels) against(a, b int32) int {
	x, y := d[a], d[b]
	n := 0
	for i, j := 0, 0; i < len(x) && j < len(y); {
		switch {
		case x[i].event < y[j].event:
			i++
		case x[i].event > y[j].event:
			j++
		default:
			n -= cmp.Compare(x[i].place, y[j].place)
			i++
			j++
		}
	}
	return n
}

// rank sorts lines into a table and gives ranks.
func rank(lines []Line, met duels, rules Rules) {
	ranked := func(l *Line) bool { return len(l.Scores) > 0 && l.Runs >= rules.MinRuns }
	keys := map[int32][]int32{} // total, then scores from the best, to the N+1-th
	for i := range lines {
		l := &lines[i]
		var scores []int32
		for _, s := range l.Scores {
			if !s.Volunteer {
				scores = append(scores, s.Points)
			}
		}
		slices.SortFunc(scores, func(a, b int32) int { return cmp.Compare(b, a) })
		if rules.Best > 0 && len(scores) > rules.Best+1 {
			scores = scores[:rules.Best+1]
		}
		keys[l.ID] = append([]int32{l.Total}, scores...)
	}
	// A missing score sorts below any, as the shorter list does in Compare.
	byKey := func(a, b *Line) int { return slices.Compare(keys[b.ID], keys[a.ID]) }
	slices.SortFunc(lines, func(a, b Line) int {
		if ra, rb := ranked(&a), ranked(&b); ra != rb {
			if ra {
				return -1
			}
			return 1
		}
		return cmp.Or(byKey(&a, &b), cmp.Compare(a.ID, b.ID))
	})
	for i := 0; i < len(lines) && ranked(&lines[i]); {
		end := i + 1
		for end < len(lines) && ranked(&lines[end]) && byKey(&lines[i], &lines[end]) == 0 {
			end++
		}
		headToHead(lines[i:end], int32(i+1), met)
		i = end
	}
}

// headToHead ranks a group of equals from first on.
func headToHead(group []Line, first int32, met duels) {
	if len(group) == 1 {
		group[0].Rank = first
		return
	}
	won := map[int32]int{}
	for _, a := range group {
		for _, b := range group {
			if a.ID != b.ID {
				won[a.ID] += met.against(a.ID, b.ID)
			}
		}
	}
	slices.SortFunc(group, func(a, b Line) int {
		return cmp.Or(cmp.Compare(won[b.ID], won[a.ID]), cmp.Compare(a.ID, b.ID))
	})
	if won[group[0].ID] == won[group[len(group)-1].ID] {
		for i := range group {
			group[i].Rank, group[i].Shared = first, true
		}
		return
	}
	for i := 0; i < len(group); {
		end := i + 1
		for end < len(group) && won[group[end].ID] == won[group[i].ID] {
			end++
		}
		headToHead(group[i:end], first+int32(i), met)
		i = end
	}
}
