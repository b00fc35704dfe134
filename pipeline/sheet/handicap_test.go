package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/place"
)

// Running times are reckoned from times of day: of the start that a title says, and at the
// finish; or of both in columns.
func TestTimesOfDay(t *testing.T) {
	list := func(head string, row string, clocks ...string) string {
		for i, c := range clocks {
			head += fmt.Sprintf(row, i+1, c)
		}
		return head
	}
	nine := []string{"18:20", "18:31", "19:10", "19:40", "20:02", "20:51", "21:30", "22:15", "23:40"}
	want := "0:18:05 0:18:16 0:18:55 0:19:25 0:19:47 0:20:36 0:21:15 0:22:00 0:23:25"
	for _, tc := range []struct{ name, text, times string }{
		{"a start in the title", "Alder Bank\nStart: 9:00\nPos,Name,Finish clock\n1,Jo Lee,09:18:20\n2,Al Roe,09:18:31.5\n3,Cy Dee,10:03:10\n,Di Fox,DNF\n", "0:18:20 0:18:31.500 1:03:10 DNF"},
		{"a start with seconds, another heading", list("Start time: 09:00:15\nPos,Name,Clock\n", "%d,Jo Lee,09:%s\n", nine...), want},
		{"after noon", list("Start 1:00:15 pm\nPos,Name,Clock\n", "%d,Jo Lee,1:%s PM\n", nine...), want},
		{"moments in columns", list("Pos,Name,finished_at,started_at\n", "%d,Jo Lee,2026-01-03T09:%sZ,2026-01-03T09:00:15Z\n", nine...), want},
		{"moments with the day first", list("Pos,Name,Start,Finish\n", "%d,Jo Lee,03/01/2026 09:00:15,03/01/2026 09:%s\n", nine...), want},
		{"running times beside the day", list("Pos,Name,Half way,Time\n", "%d,Jo Lee,2026-01-03 00:09:10,2026-01-03 00:%s\n", nine...), "2026-01-03 00:" + strings.Join(nine, " 2026-01-03 00:")},
		{"no places, but clocks that never fall", list("Start 9:00:15\nFinisher,Clock\n", "Jo Lee%.0[1]d,09:%s\n", nine...), want},
		{"the same with dots", list("Start 9.00 Uhr\nName,Ankunft\n", "Jo Lee%.0[1]d,09.%s\n", "18.20", "18.31", "19.10", "19.40", "20.02", "20.51"), "0:18:20 0:18:31 0:19:10 0:19:40 0:20:02 0:20:51"},
		{"hundredths behind dots are no time of day", list("Start 19.00 Uhr\nName,Zeit\n", "Jo Lee%.0[1]d,19.%s\n", "18.20", "18.71", "19.10", "19.40", "20.02", "20.51"), "19.18.20 19.18.71 19.19.10 19.19.40 19.20.02 19.20.51"},
		{"a moment and a title", list("Start 9:00:15\nPos,Name,Timestamp\n", "%d,Jo Lee,2026-01-03 09:%s\n", nine...), want},
	} {
		t.Run(tc.name, func(t *testing.T) {
			first := []string{"Jo", "Al", "Cy", "Di", "Ed", "Fi", "Gus", "Hal", "Ida"}
			for _, f := range first {
				tc.text = strings.Replace(tc.text, "Jo Lee", f+" Moss", 1)
			}
			s, err := Read("alder-bank_2026-01-03.csv", []byte(tc.text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			p := s.Parts[0]
			if p.Index(Time) < 0 {
				t.Fatal("no column of times", p.Kind, p.Problems)
			}
			var got []string
			p.Each(func(_ int, cells []string) error {
				got = append(got, cells[p.Index(Time)])
				return nil
			})
			if text := strings.Join(got, " "); text != tc.times {
				t.Errorf("times %s, want %s; %s", text, tc.times, p.Columns[p.Index(Time)].Why)
			}
		})
	}
}

// The times of day at which people signed in are those of no finish.
func TestTimesOfArrival(t *testing.T) {
	list := "Start: 9:00\nNo.,Name,Signed in\n"
	for i, first := range []string{"Jo", "Al", "Cy", "Di", "Ed", "Fi", "Gus", "Hal", "Ida"} {
		list += fmt.Sprintf("%d,%s Moss,09:%02d:%02d\n", i+1, first, 10+i*7%9, 13+i)
	}
	s, err := Read("alder-bank_2026-01-03.csv", []byte(list), Options{})
	if err != nil {
		return // no list of results
	}
	for _, p := range s.Parts {
		waits := slices.ContainsFunc(p.Problems, func(q place.Problem) bool { return q.Severity == place.Waits })
		if p.Index(Time) >= 0 && !waits {
			t.Errorf("%+v", p.Columns)
		}
	}
}

// Where groups had starts of their own, that of the first is not taken for all.
func TestStartOfEachGroup(t *testing.T) {
	s, err := Read("x.csv", []byte("Alder Bank 3 January 2026\nGroup 1 - start 18:30:00\nName,Finish\nJo Lee,18:48:20\nAl Roe,18:48:31\nCy Dee,18:49:40\nGroup 2 - start 18:45:00\nName,Finish\nDi Fox,19:04:20\nEd Gow,19:05:31\nFlo Hay,19:06:40\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	waits := slices.ContainsFunc(s.Parts[0].Problems, func(q place.Problem) bool { return q.Severity == place.Waits })
	if !waits {
		t.Errorf("nothing is asked: %+v", s.Parts[0].Columns)
	}
}
