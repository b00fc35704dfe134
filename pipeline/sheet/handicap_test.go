package sheet

import (
	"strings"
	"testing"
)

// Running times are reckoned from the start that a title says and the clock at the
// finish.
func TestStartInTitle(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.csv", []byte("Alder Bank\nStart: 9:00\nPos,Name,Finish clock\n1,Jo Lee,09:18:20\n2,Al Roe,09:18:31.5\n3,Cy Dee,10:03:10\n,Di Fox,DNF\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	p := s.Parts[0]
	var got []string
	p.Each(func(_ int, cells []string) error {
		got = append(got, cells[p.Index(Time)])
		return nil
	})
	if text := strings.Join(got, " "); text != "0:18:20 0:18:31.500 1:03:10 DNF" {
		t.Errorf("times %s; %s", text, p.Columns[p.Index(Time)].Why)
	}
}
