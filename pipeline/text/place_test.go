package text

import "testing"

func TestSaysPlace(t *testing.T) {
	for _, c := range []struct {
		s        string
		n        int
		tied, ok bool
	}{
		{"No. 10", 10, false, true}, {"P10", 10, false, true}, {"10th place", 10, false, true}, {"10 of 18", 10, false, true}, {"(10)", 10, false, true},
		{"10 (5)", 10, false, true}, {"tenth", 10, false, true}, {"Ten", 10, false, true}, {"X", 10, false, true}, {"XIV", 14, false, true}, {"⑩", 10, false, true},
		{"¹⁰", 10, false, true}, {"1O", 10, false, true}, {"l0", 10, false, true}, {"10ème", 10, false, true}, {"10,0", 10, false, true}, {"Platz 10", 10, false, true},
		{"joint 10th", 10, true, true}, {"10 ex aequo", 10, true, true}, {"10eq.", 10, true, true}, {"10-11", 10, true, true}, {"10 dead heat", 10, true, true},
		{"10", 11, false, false}, {"10 of 9", 10, false, false}, {"10 (12)", 10, false, false}, {"W10", 10, false, false}, {"M40", 40, false, false},
		{"DNF", 10, false, false}, {"10?", 10, false, false}, {"25:10", 25, false, false}, {"10 Sue", 10, false, false}, {"10.11", 10, false, false}, {"10,11", 10, false, false}, {"", 1, false, false}, {"guest", 1, false, false}, {"Male", 1, false, false},
		{"10 [5]", 10, false, true}, {"10 out of 18", 10, false, true}, {"shared 10th", 10, true, true}, {"10–11", 10, true, true}, {"10 and 12", 10, false, false},
	} {
		if tied, ok := SaysPlace(c.s, c.n); tied != c.tied && c.ok || ok != c.ok {
			t.Errorf("%q as %d: %v %v, want %v %v", c.s, c.n, tied, ok, c.tied, c.ok)
		}
	}
	for s, want := range map[string]bool{"same": true, "equal": true, "ex aequo": true, "==": true, "tie": true, "guest": false, "": false, "unplaced": false} {
		if got := SharesPlace(s); got != want {
			t.Errorf("%q shares the place above: %v", s, got)
		}
	}
}
