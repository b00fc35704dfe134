package club

import "slices"

// A club that has a new name loses all its runners to the new one at about the
// same time. Common sense, no source: at least movedRunners of them, and
// movedShare of those who ran on, within overlapDays of its last day.
const (
	movedRunners = 5
	movedShare   = .7
	overlapDays  = 28
)

// Moves counts runners by the club that they had before and the next one.
type Moves struct {
	first, last map[int32]int32           // club → day
	next        map[int32]map[int32]int32 // club → club that came next → runners
}

// NewMoves is empty.
func NewMoves() *Moves {
	return &Moves{map[int32]int32{}, map[int32]int32{}, map[int32]map[int32]int32{}}
}

// Ran adds a runner's results in order of time: clubs by number, 0 none, and
// days. Each club counts once, with the club that the runner had after the
// last result for it.
func (m *Moves) Ran(clubs, days []int32) {
	last := map[int32]int{}
	for i, c := range clubs {
		if c == 0 {
			continue
		}
		last[c] = i
		if d, ok := m.first[c]; !ok || days[i] < d {
			m.first[c] = days[i]
		}
		m.last[c] = max(m.last[c], days[i])
	}
	for c, i := range last {
		for _, n := range clubs[i+1:] {
			if n == 0 {
				continue
			}
			if m.next[c] == nil {
				m.next[c] = map[int32]int32{}
			}
			m.next[c][n]++
			break
		}
	}
}

// OldNames gives the clubs that look like the old name of another: old → new.
func (m *Moves) OldNames() map[int32]int32 {
	out := map[int32]int32{}
	for old, next := range m.next {
		all, best, most := int32(0), int32(0), int32(0)
		for c, n := range next {
			all += n
			if n > most || n == most && c < best {
				best, most = c, n
			}
		}
		if most >= movedRunners && float64(most) >= movedShare*float64(all) && m.last[old] < m.first[best]+overlapDays {
			out[old] = best
		}
	}
	return out
}

// Followed lists the old names in order, for a result that is always the same.
func Followed(old map[int32]int32) []int32 {
	var out []int32
	for c := range old {
		out = append(out, c)
	}
	slices.Sort(out)
	return out
}
