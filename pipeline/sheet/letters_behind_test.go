package sheet

import (
	"strings"
	"testing"
)

// A letter behind a place or a time is how a race ended where a line says so, and only there.
func TestEndedByLetter(t *testing.T) {
	for _, c := range []struct{ name, rows, key, want string }{
		{"behind times", "2|Al Roe|18:31 D", "F = finished, D = disqualified", "disqualified"},
		{"in brackets", "2|Al Roe|18:31 (W)", "W = withdrawn", "withdrawn"},
		{"behind places", "2R|Al Roe|18:31", "R = retired", "retired"},
		{"a small letter", "2|Al Roe|18:31 x", "x = did not finish", "did not finish"},
		{"a dash", "2|Al Roe|18:31N", "N - not counted", "not counted"},
		{"a letter of something else", "2|Al Roe|18:31 P", "P = personal best", ""},
		{"a letter that nothing explains", "2|Al Roe|18:31 Q", "D = disqualified", ""},
	} {
		text := "Pos|Name|Time\n1|Jo Lee|18:20\n" + c.rows + "\n3|Cy Dee|18:41\n4|Di Fox|18:52\n\n"
		s, err := Read("alder-bank_2026-01-03.csv", []byte(strings.ReplaceAll(text, "|", "\t")+c.key+"\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, got := s.Parts[0], ""
		if at := p.Index(Status); at >= 0 {
			p.Each(func(_ int, cells []string) error {
				got += cellAt(cells, at)
				return nil
			}) // a grid has no errors of its own
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
