package who

import "testing"

// A decision on two runners holds for all their lines, not only for the two
// that name them.
func TestDecisionsOnWholeRunners(t *testing.T) {
	var ls []line
	for w := range 5 {
		ls = append(ls, line{name: "Sally Denfield", sex: SexW, course: 1, week: w, age: 60},
			line{name: "Sally Denfield", sex: SexW, course: 2, week: w + 8, age: 60},
			line{name: "Ruth Horley", sex: SexW, course: 1, week: w, age: 30})
	}
	d := archive(crowd(ls))
	if r := link(t, d, Options{}); !same(r, 0, 1, 3, 4, 12, 13) {
		t.Fatalf("before any decision: %v", r.Runner[:15])
	}
	r := link(t, d, Options{Decisions: []Decision{{A: 0, B: 1, WholeA: true, WholeB: true}}})
	if !same(r, 0, 3, 6, 9, 12) || !same(r, 1, 4, 7, 10, 13) || same(r, 0, 1) {
		t.Errorf("two runners parted: %v", r.Runner[:15])
	}
	r = link(t, d, Options{Decisions: []Decision{{A: 1, B: 0, WholeB: true}}})
	if !same(r, 0, 3, 6, 9, 12) || same(r, 0, 1) {
		t.Errorf("one line parted: %v", r.Runner[:15])
	}
	r = link(t, d, Options{Decisions: []Decision{{A: 0, B: 2, Same: true, WholeA: true, WholeB: true}}})
	if !same(r, 0, 3, 6, 9, 12, 2, 5, 8, 11, 14) {
		t.Errorf("two runners joined: %v", r.Runner[:15])
	}
	r = link(t, d, Options{Decisions: []Decision{{A: 0, B: 3, WholeA: true, WholeB: true}}})
	if same(r, 0, 3) {
		t.Errorf("two lines of one name and course were not parted: %v", r.Runner[:15])
	}
}
