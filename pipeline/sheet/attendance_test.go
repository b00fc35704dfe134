package sheet

import (
	"testing"

	"lapwing/pipeline/place"
)

// Lists of all members, and of new bests: who ran on the day, and in which time.
func TestWhoWasThere(t *testing.T) {
	const head = "Alder Bank 5k|Saturday 3 January 2026\n"
	for _, c := range []struct{ name, tab, rows, want string }{
		{"a register of members, with ticks", "Members", head + "Name|Present|Time\nAl Roe||\nCy Dee|x|18:40\nDi Fox|x|18:42\nEd Gow||\nJo Lee|x|18:20\n", "Cy Dee 18:40, Di Fox 18:42, Jo Lee 18:20"},
		{"the same, without ticks", "Mitglieder", head + "Name|Time\nAl Roe|\nCy Dee|18:40\nDi Fox|18:42\nEd Gow|\nJo Lee|18:20\n", "Cy Dee 18:40, Di Fox 18:42, Jo Lee 18:20"},
		{"somebody who was there and has no time", "Members", head + "Name|Present|Time\nAl Roe|x|\nCy Dee|x|18:40\nDi Fox|x|18:42\nEd Gow||\nJo Lee|x|18:20\n", "Al Roe , Cy Dee 18:40, Di Fox 18:42, Ed Gow , Jo Lee 18:20"},
		{"a register on another tab", "Results", head + "Name|Here?|Time\nAl Roe||\nCy Dee|✓|18:40\nDi Fox|✓|18:42\nEd Gow||\nJo Lee|✓|18:20\n", "Cy Dee 18:40, Di Fox 18:42, Jo Lee 18:20"},
		{"members with times and no day", "Members", "Name|Time\nCy Dee|18:40\nDi Fox|18:42\nJo Lee|18:20\n", "refused"},
		{"new bests beside the old ones", "x", head + "Name|Old PB|New PB|Gain\nCy Dee|18:50|18:40|10s\nDi Fox|18:53|18:42|11s\nJo Lee|18:30|18:20|10s\n", "Cy Dee 18:40, Di Fox 18:42, Jo Lee 18:20"},
		{"new bests beside the times", "x", head + "Name|Time|Old PB|New PB\nCy Dee|18:40|18:30|18:30\nDi Fox|18:42|18:53|18:42\nJo Lee|18:20|18:10|18:10\n", "Cy Dee 18:40, Di Fox 18:42, Jo Lee 18:20"},
	} {
		s, err := Read("x.xlsx", bookOf(t, "== "+c.tab+"\n"+c.rows), Options{})
		got := "refused"
		if err == nil {
			p := s.Parts[0]
			got = ""
			p.Each(func(_ int, cells []string) error {
				if got != "" {
					got += ", "
				}
				got += cellAt(cells, p.Index(Name)) + " " + cellAt(cells, p.Index(Time))
				return nil
			}) // a grid has no error of its own
			for _, q := range p.Problems {
				if q.Severity == place.Waits {
					got += " asks " + q.Kind
				}
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
