package table

import "testing"

// A cell of several lines is as high as its lines, each broken where it is too long; what
// else divides lines is a space.
func TestCellOfSeveralLines(t *testing.T) {
	v := Lines("look for the rest\n\nor type:\u2028lapwing run\n")
	if want := "look for the rest\nor type: lapwing run"; v.text != want {
		t.Errorf("%q, want %q", v.text, want)
	}
	for w, want := range map[float64]int{40: 2, 12: 4} {
		if n := lines(v.text, w); n != want {
			t.Errorf("%d lines in a cell of %v characters, want %d", n, w, want)
		}
	}
	if v := Lines("\n \n"); v != (Value{}) {
		t.Errorf("%+v of blank lines", v)
	}
}
