package sheet

import (
	"slices"
	"testing"
)

// Where minutes have a column of their own, they may be written once for all places of them.
func TestMinutesWrittenOnce(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Pos,Name,Mins,Secs\n1,Jo Lee,18,20\n2,Al Roe,,31\n3,Cy Dee,19,02\n4,Di Fox,,\n5,Ed Gow,,48\n", []string{"18:20", "18:31", "19:02", "", "19:48"}},
		{"Min,Sec,Name\n18,20,Jo Lee\n,31,Al Roe\n19,02,Cy Dee\n,48,Ed Gow\n", []string{"18:20", "18:31", "19:02", "19:48"}},
		{"Min,Sec,Name\n18,20,Jo Lee\n,11,Al Roe\n19,02,Cy Dee\n24,48,Ed Gow\n", []string{"18:20", "", "19:02", "24:48"}}, // the minutes were not written down
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
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
			if !slices.Equal(got, c.want) {
				t.Errorf("%s: got %q, want %q", c.text, got, c.want)
			}
		}
	}
}
