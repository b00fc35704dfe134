package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// Places in words, with more than their number, or with a sign for the same, are read where they
// go on from those around them; a word that is none leaves the line a result.
func TestPlacesInOtherWords(t *testing.T) {
	for _, c := range []struct{ fourth, fifth, want string }{
		{"4", "5", "1 2 3 4 5 6"},
		{"No. 4", "5", "1 2 3 4 5 6"},
		{"IV", "V", "1 2 3 4 5 6"},
		{"4 of 18", "5 of 18", "1 2 3 4 5 6"},
		{"joint 4th", "joint 4th", "1 2 3 4= 4= 6"},
		{"4", `"`, "1 2 3 4 4= 6"},
		{"4", "ditto", "1 2 3 4 4= 6"},
		{"4", "equal", "1 2 3 4 4= 6"},
		{"unplaced", "5", "1 2 3 4 5 6"},
		{"M9", "5", "1 2 3 M9 5 6"},
		{"guest", "4", "1 2 3 guest 4 6"},
		{"8 of 18", "5", "1 2 3 8 of 18 5 6"}, // not the place that is due
	} {
		var list strings.Builder
		list.WriteString("Place,Name,Sex,Time\n")
		for i, p := range []string{"1", "2", "3", c.fourth, c.fifth, "6"} {
			fmt.Fprintf(&list, "\"%s\",%s Dale,F,%d:10\n", strings.ReplaceAll(p, `"`, `""`), []string{"Ada", "Bea", "Cal", "Dot", "Eve", "Fay"}[i], 18+i)
		}
		s, err := Read("alder 2026-11-21.csv", []byte(list.String()), Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatal(err, len(s.Parts))
		}
		p, got := s.Parts[0], []string{}
		p.Each(func(_ int, cells []string) error { got = append(got, cells[p.Index(Position)]); return nil })
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s, %s: %q, want %q", c.fourth, c.fifth, strings.Join(got, " "), c.want)
		}
	}
	// What stands among the results in other words, and is no finisher, stays left out.
	s, err := Read("alder 2026-11-21.csv", []byte("Place,Name,Sex,Time\n1,Ada Dale,F,18:10\n2,Bea Dale,F,19:10\nTimekeeper,Cy Lunn,M,\nFastest ever,Una Orme,F,16:10\n3,Dot Dale,F,20:10\n4,Eve Dale,F,21:10\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	s.Parts[0].Each(func(int, []string) error { rows++; return nil })
	if rows != 4 {
		t.Errorf("%d rows, want 4", rows)
	}
}

// "Finish" may head places and times: times of which one goes on from whole minutes stay times.
func TestFinishOfTimes(t *testing.T) {
	s := readCase(t, "alder 2026-11-21.csv", "No.,Name,Finish\n1,Ada Dale,31.04\n2,Bea Dale,32\n3,Cal Dale,32.33\n4,Dot Dale,33.34\n5,Eve Dale,34.10\n6,Fay Dale,35.12\n")
	var got []string
	s.Parts[0].Each(func(_ int, cells []string) error { got = append(got, cells[2]); return nil })
	if text := strings.Join(got, " "); text != "31.04 32 32.33 33.34 34.10 35.12" {
		t.Errorf("read %q", text)
	}
}

// A column under any heading that holds nothing but codes for how races ended says that.
func TestStatusByItsValues(t *testing.T) {
	for _, c := range []struct{ heading, first, fourth, want string }{
		{"Code", "OK", "DNF", "status"},
		{"St.", "FIN", "DNS", "status"},
		{"Result status", "", "DSQ", "status"},
		{"OK?", "F", "DNF", "status"},
		{"Code", "A", "DNF", "number"},
		{"OK?", "yes", "no", "status"},
	} {
		var list strings.Builder
		list.WriteString("Place,Name,Sex,Time," + c.heading + "\n")
		for i := range 6 {
			v := c.first
			if i == 3 {
				v = c.fourth
			}
			fmt.Fprintf(&list, "%d,%s Dale,F,%d:10,%s\n", i+1, []string{"Ada", "Bea", "Cal", "Dot", "Eve", "Fay"}[i], 18+i, v)
		}
		s, err := Read("alder 2026-11-21.csv", []byte(list.String()), Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatal(err, len(s.Parts))
		}
		got := s.Parts[0].Columns[4].Meaning
		if name := got.String(); name != c.want && !(c.want == "-" && got != Status) {
			t.Errorf("%s %s %s: %s, want %s", c.heading, c.first, c.fourth, name, c.want)
		}
	}
}
