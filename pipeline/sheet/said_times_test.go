package sheet

import (
	"slices"
	"strings"
	"testing"
)

// What somebody says of the start, of the first runner's time and of the clock makes running times of
// the times that are counted from it; an answer that nothing is counted from is asked about.
func TestSaidTimes(t *testing.T) {
	const title = "Alder Bank, 3 January 2026\n"
	const clock = title + "Pos,Name,Time\n1,Jo Lee,9:17:45\n2,Ann Roe,9:18:10\n3,Sam Field,9:19:02\n4,Bo Gale,9:20:30\n5,Cy Dee,9:21:15\n6,Di Fox,9:22:01\n7,Ed Gow,9:23:44\n8,Fay Ho,9:25:03\n"
	const gaps = title + "Pos,Name,Behind\n1,Jo Lee,FIRST\n2,Ann Roe,0:25\n3,Sam Field,1:17\n4,Bo Gale,12:45\n"
	behind := func(first string) string { return strings.Replace(gaps, "FIRST", first, 1) }
	const starts = title + "Pos,Name,Start,Time\n1,Jo Lee,0:00,27:45\n2,Ann Roe,1:00,28:10\n3,Sam Field,2:30,29:02\n4,Bo Gale,6:00,30:30\n"
	for _, k := range []struct {
		name, text string
		said       Options
		times      string // of the rows, or of those that are shown; "" where none is settled
		told       string
	}{
		{"times of day", clock, Options{}, "", `--answer "start=HOURS:MINUTES"`},
		{"from a start", clock, Options{StartSaid: "9:00"}, "0:17:45 0:18:10", ""},
		{"from a start with seconds", clock, Options{StartSaid: "09:00:15"}, "0:17:30 0:17:55", ""},
		{"few, which are not known for times of day", title + "Pos,Name,Time\n1,Jo Lee,9:17:45\n2,Ann Roe,9:18:10\n", Options{StartSaid: "9:00"}, "0:17:45 0:18:10", ""},
		{"an answer wins over the title", strings.Replace(clock, "2026\n", "2026. Start 9:00\n", 1), Options{StartSaid: "9:02"}, "0:15:45 0:16:10", ""},
		{"after the first finish", clock, Options{StartSaid: "9:50"}, "", "From a start at 9:50:00 they would be no times of a run"},
		{"behind the first, 0:00", behind("0:00"), Options{}, "", `--answer "first=MINUTES:SECONDS"`},
		{"behind the first, a word", behind("winner"), Options{}, "", `--answer "first=MINUTES:SECONDS"`},
		{"behind the first, answered", behind("0:00"), Options{FirstSaid: "17:45"}, "0:17:45 0:18:10 0:19:02 0:30:30", ""},
		{"behind a first that is blank", behind(""), Options{FirstSaid: "17:45"}, "0:17:45 0:18:10 0:19:02 0:30:30", ""},
		{"behind a dash, which stands for no time further down", strings.Replace(behind("-"), "12:45", "-", 1), Options{FirstSaid: "17:45"}, "0:17:45 0:18:10 0:19:02 -", ""},
		{"behind a first with a word", behind("winner"), Options{FirstSaid: "17:45.5"}, "0:17:45.500 0:18:10.500", ""},
		{"under Time with signs", strings.NewReplacer("Behind", "Time", ",0:25", ",+0:25", ",1:17", ",+1:17", ",12:45", ",+12:45").Replace(behind("")), Options{FirstSaid: "17:45"}, "0:17:45 0:18:10 0:19:02 0:30:30", ""},
		{"the first's time is there", behind("17:45"), Options{FirstSaid: "18:45"}, "17:45 0:18:10", "first=18:45"},
		{"a time beside what they are behind", strings.NewReplacer("Behind", "Time,Behind", ",FIRST", ",17:45,", ",0:25", ",18:10,0:25", ",1:17", ",19:02,1:17", ",12:45", ",30:30,12:45").Replace(gaps), Options{}, "17:45 18:10", ""},
		{"starts of their own", starts, Options{}, "", `--answer "clock=one"`},
		{"of one clock", starts, Options{ClockSaid: OneClock}, "0:27:45 0:27:10 0:26:32 0:24:30", ""},
		{"each runner's own", starts, Options{ClockSaid: OwnClock}, "27:45 28:10 29:02 30:30", ""},
		{"run times beside starts", strings.Replace(starts, "Time", "Run time", 1), Options{}, "27:45 28:10 29:02 30:30", ""},
		{"seconds to the start line", strings.NewReplacer("1:00", "0:10", "2:30", "0:25", "6:00", "0:50").Replace(starts), Options{}, "27:45 28:10 29:02 30:30", ""},
		{"a plain sheet", title + "Pos,Name,Time\n1,Jo Lee,18:20\n2,Ann Roe,18:31\n", Options{StartSaid: "9:00"}, "18:20 18:31", "Nothing on this sheet could be counted from that time"},
		{"a plain sheet with a clock", title + "Pos,Name,Time\n1,Jo Lee,18:20\n2,Ann Roe,18:31\n", Options{ClockSaid: OneClock}, "18:20 18:31", "clock=one"},
	} {
		s, err := Read("x.csv", []byte(k.text), k.said)
		if err != nil {
			t.Fatal(k.name, err)
		}
		p := s.Parts[0]
		var times, told []string
		if i := p.Index(Time); i >= 0 {
			if err := p.Each(func(_ int, cells []string) error {
				times = append(times, cellAt(cells, i))
				return nil
			}); err != nil {
				t.Fatal(k.name, err)
			}
		}
		for _, q := range p.Problems {
			told = append(told, q.String()+q.Answers)
		}
		want, all := strings.Fields(k.times), strings.Join(told, "\n")
		if k.times != "" && !slices.Equal(times[:min(len(times), len(want))], want) {
			t.Errorf("%s: times are %v", k.name, times)
		}
		if !strings.Contains(all, k.told) || k.told == "" && all != "" {
			t.Errorf("%s: told %q", k.name, all)
		}
	}
}
