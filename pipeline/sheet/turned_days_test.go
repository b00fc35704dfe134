package sheet

import (
	"slices"
	"strings"
	"testing"
)

// Days that a spreadsheet program took with the month first, though they were typed day first (and
// the other way round), are put right where the rest of the column shows it, and only there.
func TestDaysTurnedByAProgram(t *testing.T) {
	for _, c := range []struct {
		name, dates, want string
		told              int // that days were exchanged
	}{
		{"typed day first into a program that has the month first", "2025-06-09 13/09/2025 20/09/2025 27/09/2025 2025-04-10", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-10-04", 1},
		{"with full stops", "2025-06-09 13.9.2025 20.9.2025 27.9.2025 2025-04-10", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-10-04", 1},
		{"from the last to the first", "2025-04-10 27/09/2025 20/09/2025 13/09/2025 2025-06-09", "2025-10-04 2025-09-27 2025-09-20 2025-09-13 2025-09-06", 1},
		{"typed month first into one that has the day first", "2025-06-09 09/13/2025 09/20/2025 09/27/2025 2025-04-10", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-10-04", 1},
		{"in no order, on one weekday", "27/09/2025 2025-06-09 13/09/2025 2025-04-10", "2025-09-27 2025-09-06 2025-09-13 2025-10-04", 1},
		{"on several weekdays, in order", "2025-05-09 13/09/2025 21/09/2025 2025-03-10", "2025-09-05 2025-09-13 2025-09-21 2025-10-03", 1},
		{"a Saturday either way", "25/10/2025 2025-01-11 2025-08-11 15/11/2025 22/11/2025", "2025-10-25 2025-11-01 2025-11-08 2025-11-15 2025-11-22", 1},
		{"one among days that are right", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-04-10 2025-10-11 2025-10-18", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-10-04 2025-10-11 2025-10-18", 1},
		{"as day numbers", "45817 13/09/2025 20/09/2025 27/09/2025 45757", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-10-04", 1},

		{"right as they stand", "2025-09-06 13/09/2025 20/09/2025 27/09/2025 2025-10-04", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-10-04", 0},
		{"a run on another day", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-10-01 2025-10-11 2025-10-18", "2025-09-06 2025-09-13 2025-09-20 2025-09-27 2025-10-01 2025-10-11 2025-10-18", 0},
		{"on any day, in no order", "2025-06-09 2025-03-04 2025-11-12 2025-01-02", "2025-06-09 2025-03-04 2025-11-12 2025-01-02", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := "Course,Date,Place,Name,Time\n"
			for _, d := range strings.Fields(c.dates) {
				text += "Alder Bank," + d + ",1,Jo Lee,18:20\nAlder Bank," + d + ",2,Al Roe,18:31\n"
			}
			s, err := Read("x.csv", []byte(text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			p := s.Parts[0]
			p.Each(func(_ int, cells []string) error {
				if _, day, _, _ := p.RunOf(cells); !slices.Contains(got, day.String()) {
					got = append(got, day.String())
				}
				return nil
			})
			if g := strings.Join(got, " "); g != c.want {
				t.Errorf("read as %s, want %s", g, c.want)
			}
			told := 0
			for _, problem := range p.Problems {
				if problem.Kind == "days-exchanged" {
					told++
				}
			}
			if told != c.told {
				t.Errorf("told %d times that days were exchanged, want %d", told, c.told)
			}
		})
	}
}
