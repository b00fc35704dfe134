package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// timesSheet is a list with the given times, under the given heading.
func timesSheet(heading string, times ...string) []byte {
	var list strings.Builder
	list.WriteString("Place,Name," + heading + "\n")
	for i, c := range times {
		fmt.Fprintf(&list, "%d,%s %s,%s\n", i+1, []string{"Ada", "Bea", "Cal", "Dot"}[i%4], []string{"Dale", "Ings", "Kyle"}[i/4], c)
	}
	return []byte(list.String())
}

// Times with other marks are read, on one line and on all; what is in doubt stays as it is.
func TestTimesWithOtherMarks(t *testing.T) {
	for _, c := range []struct{ form, want string }{
		{"[%d:%02d]", "%d:%02d"}, {"%d·%02d", "%d:%02d"}, {"%d`%02d", "%d:%02d"}, {"%d:\u00a0%02d", "%d:%02d"}, {"%d\u200b:%02d", "%d:%02d"}, {"{%d:%02d}", "%d:%02d"},
		{"%d:%02d'3", "%d:%02d.3"}, {"%d:%02d?", "%d:%02d?"}, {"%d:%02d", "%d:%02d"},
	} {
		for _, all := range []bool{false, true} {
			if all && strings.HasSuffix(c.form, "?") {
				continue // no time that anybody was sure of
			}
			var times, want []string
			for i := range 8 {
				form, plain := "%d:%02d", "%d:%02d"
				if all || i == 4 {
					form, plain = c.form, c.want
				}
				times, want = append(times, fmt.Sprintf(form, 18+i, 7*i+3)), append(want, fmt.Sprintf(plain, 18+i, 7*i+3))
			}
			s, err := Read("alder 2026-11-21.csv", timesSheet("Time", times...), Options{})
			if err != nil || len(s.Parts) != 1 || s.Parts[0].Index(Time) != 2 {
				t.Fatal(c.form, err)
			}
			var got []string
			s.Parts[0].Each(func(_ int, cells []string) error { got = append(got, trim(cells[2])); return nil })
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s, all %v: %q, want %q", c.form, all, got, want)
			}
		}
	}
}

// A time of nought above whole times makes no gaps of them, and gaps without a sign below a
// whole time are asked about.
func TestGapsAndTimes(t *testing.T) {
	for _, c := range []struct {
		name  string
		times []string
		want  Meaning
		asked bool
	}{
		{"nought above times", []string{"0:00", "17:42", "19:15", "20:47", "21:50", "23:08", "24:33", "41:12"}, Time, false},
		{"gaps", []string{"0:00", "1:33", "3:05", "4:08", "5:26", "6:51", "8:08", "23:30"}, Gap, true},
		{"gaps below the first time", []string{"17:42", "1:33", "3:05", "4:08", "5:26", "6:51", "8:08", "23:30"}, Time, true},
		{"times from two lists", []string{"45:10", "18:33", "19:05", "20:08", "21:26", "22:51", "24:08", "25:30"}, Time, false},
	} {
		s, err := Read("alder 2026-11-21.csv", timesSheet("Time", c.times...), Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatal(c.name, err)
		}
		asked := false
		for _, p := range s.Parts[0].Problems {
			asked = asked || p.Kind == "times-behind-first"
		}
		if got := s.Parts[0].Columns[2].Meaning; got != c.want || c.want == Time && asked != c.asked {
			t.Errorf("%s: %v, asked %v; want %v, %v", c.name, got, asked, c.want, c.asked)
		}
	}
}

// Of two columns of times the one that is headed by the word alone is the time.
func TestTimeBesideBackupTime(t *testing.T) {
	for _, heading := range []string{"Backup time,Time", "Timer 2,Time"} {
		var times []string
		for i := range 8 {
			times = append(times, fmt.Sprintf("%d:%02d,%d:%02d", 18+i, 10+i%2, 18+i, 10+i%3))
		}
		s, err := Read("alder 2026-11-21.csv", timesSheet(heading, times...), Options{})
		if err != nil || len(s.Parts) != 1 || s.Parts[0].Index(Time) != 3 {
			t.Errorf("%s: column %d %v", heading, s.Parts[0].Index(Time), err)
		}
	}
}
