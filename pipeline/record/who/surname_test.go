package who

import (
	"slices"
	"testing"
)

// One family name ends where the other begins, at one course, under one given
// name: that is worth asking, and not enough to join, with ages or without.
func TestNewFamilyNameIsListed(t *testing.T) {
	for _, age := range []int{0, 44} {
		var ls []line
		for w := range 10 {
			ls = append(ls, line{name: "Thirza Denfield", sex: SexW, course: 1, week: w, age: age},
				line{name: "Thirza Horley", sex: SexW, course: 1, week: w + 11, age: age},
				line{name: "Ruth Marlow", sex: SexW, course: 1, week: w + 11, age: age})
		}
		r := link(t, archive(crowd(ls)), Options{})
		if same(r, 0, 1) {
			t.Errorf("age %d: joined", age)
		}
		listed := func(a, b int32) bool {
			a, b = min(r.Runner[a], r.Runner[b]), max(r.Runner[a], r.Runner[b])
			return slices.ContainsFunc(r.Doubtful, func(p Pair) bool { return p.A == a && p.B == b })
		}
		if !listed(0, 1) {
			t.Errorf("age %d: not listed", age)
		}
		if listed(0, 2) {
			t.Errorf("age %d: listed with another given name", age)
		}
	}
}

// A name mistyped throughout at another course, in the first two letters and
// the last three, shares no course and no end with the right one. It is found
// because the right one is commoner.
func TestMistypedNameIsLookedForUnderWhatIsMeant(t *testing.T) {
	var ls []line
	for w := range 10 {
		ls = append(ls, line{name: "Thirza Walsh", sex: SexW, course: 1, week: w, age: 44, club: 3},
			line{name: "Thirza Wlash", sex: SexW, course: 2, week: w + 11, age: 44, club: 3})
	}
	for c := range int32(4) {
		for _, given := range []string{"Ruth", "Mary", "Olive"} {
			ls = append(ls, line{name: given + " Walsh", sex: SexW, course: c, week: 3, age: 20 + 5*int(c)})
		}
	}
	r := link(t, archive(crowd(ls)), Options{})
	a, b := min(r.Runner[0], r.Runner[1]), max(r.Runner[0], r.Runner[1])
	if a != b && !slices.ContainsFunc(r.Doubtful, func(p Pair) bool { return p.A == a && p.B == b }) {
		t.Error("neither joined nor listed")
	}
}
