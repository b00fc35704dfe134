package record

import "testing"

// What a program writes for a missing value is nothing; a name that only looks like it is one.
func TestNull(t *testing.T) {
	for s, want := range map[string]bool{"NULL": true, "NaN": true, `\N`: true, "(null)": true, "": false, "N": false, "Nan": false, "Null": false, "None": false, "NN": false} {
		if got := cell([]string{s}, 0) == "" && s != ""; got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}
