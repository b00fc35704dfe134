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

// listed says whether the runners of two rows are asked about.
func listed(r *Result, x, y int32) bool {
	a, b := min(r.Runner[x], r.Runner[y]), max(r.Runner[x], r.Runner[y])
	return slices.ContainsFunc(r.Doubtful, func(p Pair) bool { return p.A == a && p.B == b })
}

// A short form and a slip at a time, an initial of a short form, a name in which
// most was lost: no signature is compared for these; the finished runner is.
func TestALineOrTwoAreLookedForAgain(t *testing.T) {
	for _, strange := range []string{"Betty Hortwell", "B Hartwell", "Hartwell Liz", "Elizabeth Heartwell"} {
		var ls []line
		ls = append(ls, line{name: strange, sex: SexW, course: 1, week: 11, age: 44, club: 3})
		for w := range 10 {
			ls = append(ls, line{name: "Elizabeth Hartwell", sex: SexW, course: 1, week: w, age: 44, club: 3})
		}
		r := link(t, archive(crowd(ls)), Options{})
		if !same(r, 0, 1) && !listed(r, 0, 1) {
			t.Errorf("%s is neither joined with Elizabeth Hartwell nor listed", strange)
		}
	}
	var ls []line
	ls = append(ls, line{name: "D?ng Nguy?n", sex: SexM, course: 1, week: 11, age: 44, club: 3})
	for w := range 10 {
		ls = append(ls, line{name: "Dung Nguyen", sex: SexM, course: 1, week: w, age: 44, club: 3})
	}
	if r := link(t, archive(crowd(ls)), Options{}); !same(r, 0, 1) {
		t.Error("D?ng Nguy?n is not joined with Dung Nguyen")
	}
}

// Names that sound alike, kept apart by two letters: written down by ear by one
// who keeps the sheets of another course.
func TestNamesThatSoundAlike(t *testing.T) {
	var ls []line
	for w := range 10 {
		ls = append(ls, line{name: "Thirza Kellie", sex: SexW, course: 1, week: 2 * w, age: 44, club: 3},
			line{name: "Thirza Kelly", sex: SexW, course: 2, week: 2*w + 1, age: 44, club: 3},
			line{name: "Thirza Kirby", sex: SexW, course: 2, week: 2*w + 1, age: 44, club: 3})
	}
	r := link(t, archive(crowd(ls)), Options{})
	if !same(r, 0, 1) {
		t.Error("Kellie and Kelly are not joined")
	}
	if same(r, 0, 2) {
		t.Error("Kellie and Kirby are joined")
	}
}

// Two regulars of one name who stand together in one run only, where two people
// would have met a dozen times: they are not joined, but asked about, and the
// oftener they met the less likely they are one.
func TestOneClashAmongManyRunsIsAskedAbout(t *testing.T) {
	chances := map[int]float64{}
	for _, clashes := range []int{1, 6} {
		var ls []line
		for w := range 40 {
			ls = append(ls, line{name: "Thirza Denfield", sex: SexW, course: 1, week: w, age: 44, club: 3, number: []string{"901", "902"}[w%2]})
		}
		for w := range clashes {
			ls = append(ls, line{name: "Thirza Denfield", sex: SexW, course: 1, week: 5 + 4*w, age: 44, club: 3, number: []string{"902", "901"}[(5+4*w)%2]})
		}
		r := link(t, archive(crowd(ls)), Options{})
		if same(r, 0, 1) {
			t.Fatalf("%d clashes: joined", clashes)
		}
		chances[clashes] = r.Explain(r.Runner[0], r.Runner[1]).Chance
	}
	if chances[1] < 4*chances[6] {
		t.Errorf("one clash leaves a chance of %.3f, six %.3f", chances[1], chances[6])
	}
}
