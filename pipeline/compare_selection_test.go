package pipeline

import (
	"slices"
	"testing"

	"lapwing/pipeline/record/name"
)

// A shorter list that prints initials, or surnames alone, repeats the fuller one where
// place, time and family name are the same and the initial fits.
func TestSameButShorter(t *testing.T) {
	people := []string{"Cora Vale", "C Vale", "D Vale", "Vale", "C Wick", "Cora Vale-Orr", "Cora Vale"}
	f := &field{}
	for _, p := range people {
		f.person = append(f.person, name.Parse(p))
	}
	f.person[3] = name.Name{Family: "vale", Full: "vale"} // a column of surnames
	line := func(who, place, ms int32) int {
		f.name, f.position, f.timeMS = append(f.name, who), append(f.position, place), append(f.timeMS, ms)
		return len(f.name) - 1
	}
	full := line(0, 7, 1500_000)
	places := map[int32]int{7: full}
	for _, c := range []struct {
		what       string
		who        int32
		place, ms  int32
		rounded    bool
		same       int
		wantedLine int
	}{
		{"an initial", 1, 7, 1500_000, false, -1, full},
		{"a surname", 3, 7, 1500_000, false, -1, full},
		{"another initial", 2, 7, 1500_000, false, -1, -1},
		{"another family", 4, 7, 1500_000, false, -1, -1},
		{"the longer name", 5, 7, 1500_000, false, -1, -1},
		{"the same name, which is compared elsewhere", 6, 7, 1500_000, false, -1, -1},
		{"another time", 1, 7, 1500_400, false, -1, -1},
		{"a time that was rounded", 1, 7, 1500_400, true, -1, full},
		{"another place", 1, 8, 1500_000, false, -1, -1},
		{"no place", 1, 0, 1500_000, false, -1, -1},
		{"no time", 1, 7, 0, false, -1, -1},
		{"found already", 1, 7, 1500_000, false, 3, 3},
	} {
		same := []int{c.same}
		found := f.sameButShorter(&issue{lines: []int{line(c.who, c.place, c.ms)}}, same, places, c.rounded)
		if same[0] != c.wantedLine || (found == 1) != (c.same < 0 && c.wantedLine >= 0) {
			t.Errorf("%s: line %d (%d found), want %d", c.what, same[0], found, c.wantedLine)
		}
	}
}

// A later decision of one kind is the last word, but two people may claim one place; who
// puts a name right answers a claim.
func TestWhichDecisionSettles(t *testing.T) {
	kinds := []string{DecideTime, DecideName, DecideClaim}
	var got []string
	for _, now := range kinds {
		for _, open := range kinds {
			if (Decision{ID: 2, Kind: now}).settles(Decision{ID: 1, Kind: open}) {
				got = append(got, now+" settles "+open)
			}
			if (Decision{ID: 1, Kind: now}).settles(Decision{ID: 1, Kind: open}) {
				t.Errorf("%s settles itself", now)
			}
		}
	}
	want := []string{DecideTime + " settles " + DecideTime, DecideName + " settles " + DecideName, DecideName + " settles " + DecideClaim}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
