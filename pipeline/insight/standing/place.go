package standing

// Finisher is a line of a run that has a place.
type Finisher struct {
	Position int32 // on the sheet, 0 = none
	Tied     bool  // printed as a tie: 3= or =3
	TimeS    int32 // seconds, 0 = none
}

// Places gives the place of every finisher of one run: the position on the
// sheet, shared only where the sheet prints a tie; equal times with different
// positions are no tie. Where the sheet has no positions at all, places are by
// time and equal times share. A line without a position on a sheet that has
// them, or without a time on one that has none, has no place.
//
// Example: 7 and 8 both in 22:10 are 7 and 8.
func Places(run []Finisher) []Rank {
	out := make([]Rank, len(run))
	positions := false
	for i, f := range run {
		if f.Position > 0 {
			positions = true
			out[i] = Rank{f.Position, f.Tied}
		}
	}
	if positions {
		return out
	}
	times := make([]int32, len(run))
	for i, f := range run {
		times[i] = f.TimeS
	}
	return Ranks(times)
}

// NoGroup marks a finisher who takes no place in a group: unnamed, not
// eligible, or of an uncertain group.
const NoGroup int32 = -1

// GroupPlaces gives each finisher's place within their group in one run: the
// order among the named, eligible runners of certain group. places and groups
// have one element a finisher, in any order; groups are any numbers, NoGroup
// for none. Finishers without a place have no group place. A shared place is
// shared in the group by those of the group who share it. ignored is the
// number of finishers with a place but no group, to be stated beside the
// figures: any of them might belong in between.
//
// Example: 4 (M40), 6 (unnamed), 9 (M40) are 1, none, 2, one ignored.
func GroupPlaces(places []Rank, groups []int32) (within []Rank, ignored int) {
	within = make([]Rank, len(places))
	members := map[int32][]int32{}
	for i, p := range places {
		switch {
		case p.N == 0:
		case groups[i] == NoGroup:
			ignored++
		default:
			members[groups[i]] = append(members[groups[i]], int32(i))
		}
	}
	for _, m := range members {
		positions := make([]int32, len(m))
		for k, i := range m {
			positions[k] = places[i].N
		}
		for k, r := range Ranks(positions) {
			// The same position twice without a printed tie is a fault of the
			// sheet, and no reason to part them.
			within[m[k]] = r
		}
	}
	return within, ignored
}
