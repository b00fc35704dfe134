package text

import "testing"

func TestCorrectedTime(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"24:51 should be 24:15", "24:15"},
		{"7. Jo Lee 24:51 corrected to 24:15", "7. Jo Lee 24:15"},
		{"24:51 -> 24:15", "24:15"},
		{"24:15 (not 24:51)", "24:15"},
		{"24:15 not 24:51 PB", "24:15 PB"},
		{"24.15 statt 24.51", "24.15"},
		{"24:51, richtig 24:15", "24:15"},
		{"24:51 no, 24:15", "24:15"},
		{"24:15 (no 24:51)", "24:15"},
		{"24:51 corrigé en 24:15", "24:15"},
		{"24:51 corrige en 24:15", "24:15"}, // as folded
		// Two times that are both right, and nothing that says which.
		{"12:01 lap 24:15", ""},
		{"24:15 (PB was 24:51)", ""},
		{"24:15 (24:51)", ""},
		{"24:15 - 24:51", ""},
		{"24:51 not 24:15 but 24:16", ""},
		{"24:15", ""},
	} {
		got, ok := CorrectedTime(c.text)
		if ok != (c.want != "") || ok && got != c.want || !ok && got != c.text {
			t.Errorf("%q: %q, %v; want %q", c.text, got, ok, c.want)
		}
	}
}
