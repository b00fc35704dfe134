package sheet

import (
	"slices"
	"testing"
)

// Where minutes have a column of their own, they may be written once for all places of them.
func TestMinutesWrittenOnce(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.csv", []byte("Pos,Name,Mins,Secs\n1,Jo Lee,18,20\n2,Al Roe,,31\n3,Cy Dee,19,02\n4,Di Fox,,\n5,Ed Gow,,48\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for range 2 { // each pass begins anew
		var got []string
		p := s.Parts[0]
		if err := p.Each(func(_ int, cells []string) error {
			got = append(got, cellAt(cells, p.Index(Time)))
			return nil
		}); err != nil {
			t.Fatal(err)
		}
		if want := []string{"18:20", "18:31", "19:02", "", "19:48"}; !slices.Equal(got, want) {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
