package pipeline

import (
	"math"
	"testing"

	"lapwing/pipeline/record"
	"lapwing/pipeline/record/name"
)

// lists makes two lists of one run, of people by sex: the earlier one, and a later one of other
// lines.
func twoLists(earlier, later string) (f *field, a, b *issue) {
	f = &field{person: []name.Name{{Unnamed: true}}}
	add := func(path, sexes string) *issue {
		s := &issue{part: &partInfo{path: path}}
		for _, c := range sexes {
			s.lines = append(s.lines, len(f.sex))
			f.sex = append(f.sex, map[rune]uint8{'M': uint8(record.M), 'W': uint8(record.W), '-': uint8(record.NotGiven)}[c])
		}
		return s
	}
	a, b = add("alder-bank_2026-01-03.csv", earlier), add("alder-bank club.csv", later)
	return f, a, b
}

// A list is some of the field up to three quarters of it, or all of one sex where everybody's
// is known.
func TestIsSelection(t *testing.T) {
	for _, c := range []struct {
		what, earlier, later string
		want                 bool
	}{
		{"three quarters", "MMMMWWWW", "MMMMWW", true},
		{"more than three quarters", "MMMMWWWW", "MMMMWWW", false},
		{"all", "MMMM", "MMMM", false},
		{"all men of a field that is nearly all men", "MMMMMMMW", "MMMMMMM", true},
		{"all men but one", "MMMMMMMMW", "MMMMMMM", false},
		{"men, where somebody's sex is not known", "MMMMMMM-", "MMMMMMM", false},
		{"men and a woman", "MMMMMMWW", "MMMMMMW", false},
	} {
		f, earlier, later := twoLists(c.earlier, c.later)
		if got := f.isSelection(later, earlier); got != c.want {
			t.Errorf("%s: %v", c.what, got)
		}
		later.part.kind = fullByHand
		if f.isSelection(later, earlier) {
			t.Errorf("%s: somebody has said that it is the whole field", c.what)
		}
	}
}

// People with their times under other places are found once each: where two lines have one
// person and time, the places were not counted anew.
func TestSamePersonAndTime(t *testing.T) {
	f := &field{person: []name.Name{{Unnamed: true}, name.Parse("Ada Moss"), name.Parse("Ben Reed")}, status: make([]uint8, 9)}
	add := func(who, place, ms int32) int {
		f.name, f.position, f.timeMS = append(f.name, who), append(f.position, place), append(f.timeMS, ms)
		return len(f.name) - 1
	}
	ada, ben := add(1, 4, 1_500_400), add(2, 9, 1_600_000)
	people := map[string]int{f.person[1].Full: ada, f.person[2].Full: ben}
	first, second, again, other, untimed := add(1, 1, 1_500_400), add(2, 2, 1_600_000), add(2, 3, 1_600_000), add(1, 1, 1_501_400), add(1, 1, 0)
	rounded := add(1, 1, 1_501_000)
	for _, c := range []struct {
		what    string
		lines   []int
		same    []int
		rounded bool
		want    map[int]int
	}{
		{"both", []int{first, second}, []int{-1, -1}, false, map[int]int{0: ada, 1: ben}},
		{"one of them the same in all", []int{first, second}, []int{ada, -1}, false, map[int]int{1: ben}},
		{"one of them twice", []int{first, second, again}, []int{-1, -1, -1}, false, nil},
		{"the second the same in all", []int{second, again}, []int{ben, -1}, false, nil},
		{"another time", []int{other}, []int{-1}, false, map[int]int{}},
		{"a second apart, rounded", []int{other}, []int{-1}, true, map[int]int{}},
		{"rounded", []int{rounded}, []int{-1}, true, map[int]int{0: ada}},
		{"not rounded", []int{rounded}, []int{-1}, false, map[int]int{}},
		{"no time", []int{untimed}, []int{-1}, false, map[int]int{}},
	} {
		got := f.samePersonAndTime(&issue{lines: c.lines}, c.same, people, c.rounded)
		if len(got) != len(c.want) || (got == nil) != (c.want == nil) {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
		for n, j := range c.want {
			if got[n] != j {
				t.Errorf("%s: %v, want %v", c.what, got, c.want)
			}
		}
	}
}

// Lists are other lists of a run by what their names say of whom they hold.
func TestOtherLists(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"run men.csv", "run women.csv", true},
		{"run.csv", "run women.csv", false},
		{"run.csv", "run walkers.csv", true},
		{"run women.csv", "run women final.csv", false},
		{"run u13.csv", "run u15.csv", true},
		{"run u13.csv", "run under13.csv", true},
		{"run.csv", "run final.csv", false},
	} {
		for _, both := range [][2]string{{c.a, c.b}, {c.b, c.a}} {
			if got := otherLists(&partInfo{path: both[0]}, &partInfo{path: both[1]}); got != c.want {
				t.Errorf("%s and %s: %v", both[0], both[1], got)
			}
		}
	}
}

// Who is late: whole seconds count, as places do.
func TestLate(t *testing.T) {
	f := &field{position: []int32{1, 2, 2, 3}, timeMS: []int32{1_500_100, 1_499_900, 1_500_000, 1_500_000}}
	f.timeMS[3] = 1_500_900 // 25:01, as the first
	for _, c := range []struct {
		first, second int
		want          bool
	}{{0, 1, true}, {0, 2, true}, {0, 3, false}, {1, 2, false}, {1, 0, false}, {3, 0, false}} {
		if got := late(f, c.first, c.second); got != c.want {
			t.Errorf("place %d in %d ms before place %d in %d ms: %v", f.position[c.first], f.timeMS[c.first], f.position[c.second], f.timeMS[c.second], got)
		}
	}
}

// Two people fit each other's times where neither is more than 4 % ahead of their own form with
// the other's time nor more than 6 % behind it.
func TestPartners(t *testing.T) {
	f := &field{}
	form := func(seconds float64, behind float64, line int32) odd {
		return odd{line, math.Log(seconds * (1 + behind/100)), math.Log1p(behind / 100)}
	}
	quick := form(2000, -20, 1) // 1600 s for somebody of 2000 s
	for _, c := range []struct {
		formS, behind float64 // of the slow one
		want          bool
	}{
		{1600, 25, true}, // 2000 s for somebody of 1600 s
		{1515, 32, true}, // with 1600 s 5.6 % behind
		{1505, 32.9, false},
		{1660, 20.5, true}, // with 1600 s 3.6 % ahead
		{1675, 19.4, false},
		{1600, 32, true},  // 2112 s: the quick one 5.6 % behind
		{1600, 33, false}, // 2128 s: 6.4 %
		{1600, 20.6, true},
		{1600, 19.5, false},
	} {
		if got := f.partners(quick, []odd{form(c.formS, c.behind, 2)}); (len(got) == 1) != c.want {
			t.Errorf("form %g s, %g %% behind: %v", c.formS, c.behind, got)
		}
	}
}
