package sheet

import (
	"strings"
	"testing"
)

// Times of laps without one at the finish are added up, or the clock after the last lap is taken.
func TestLapTimes(t *testing.T) {
	const day = "Alder Bank 5k, 3 January 2026\n"
	for _, c := range []struct{ name, text, want string }{
		{"each lap for itself", day + "Name,Lap 1,Lap 2,Lap 3\nJo Lee,6:05,6:10,6:05\nAl Roe,6:07,6:12,6:12\nCy Dee,6:11,6:15,6:14\n", "0:18:20 0:18:31 0:18:40"},
		{"one who stopped, and one whose lap was missed", day + "Name,L1,L2,L3\nJo Lee,6:05,6:10,6:05\nAl Roe,6:07,6:12,6:12\nCy Dee,6:11,6:15,6:14\nDi Fox,6:12,DNF,\nEd Gow,6:12,,6:20\n", "0:18:20 0:18:31 0:18:40 DNF ?"},
		{"a clock that goes on", day + "Name;Runde 1;Runde 2;Runde 3\nJo Lee;6:05;12:15;18:20\nAl Roe;6:07;12:19;18:31\nCy Dee;6:11;12:26;18:40\n", "18:20 18:31 18:40"},
		{"beside the time", day + "Name,Lap 1,Lap 2,Time\nJo Lee,9:05,9:15,18:20\nAl Roe,9:07,9:24,18:31\nCy Dee,9:11,9:29,18:40\n", "18:20 18:31 18:40"},
		{"times that are no laps of one run", day + "Name,Lap 1,Lap 2,Lap 3\nJo Lee,18:20,6:10,31:05\nAl Roe,6:07,19:12,44:12\nCy Dee,26:11,6:15,16:14\n", ""},
	} {
		s, err := Read("x.csv", []byte(c.text), Options{})
		if err != nil {
			if c.want != "" {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		p := s.Parts[0]
		var got []string
		p.Each(func(_ int, cells []string) error {
			got = append(got, cellAt(cells, p.Index(Time)))
			return nil
		}) // a text of a few lines has no error
		if text := strings.Join(got, " "); p.Index(Time) >= 0 && text != c.want {
			t.Errorf("%s: %q, want %q", c.name, text, c.want)
		}
	}
}
