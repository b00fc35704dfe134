package record

import (
	"fmt"
	"strings"
	"testing"
)

// A sex, a group, an age or a number behind the names and a mark is no part of them, whatever the
// mark; where only some have it, or it may be a given name, they stay.
func TestFactsBehindMarks(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, mark := range []string{" - %s", " – %s", " / %s", " | %s", "; %s", " {%s}", " <%s>", " (%s)", " [%s]"} {
		for _, k := range []struct {
			facts [4]string
			sex   Sex
			age   string
		}{
			{[4]string{"F", "M", "F", "M"}, W, ""},
			{[4]string{"W40", "M35", "W50", "M60"}, W, "40-44"},
			{[4]string{"41", "37", "41", "37"}, NotGiven, "41-41"},
		} {
			lines, _ := readRows(t, c, []string{"Pos", "Name", "Time"}, Options{}, func(yield func([]string)) {
				for i := range 12 {
					yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c"+mark, 'a'+i, k.facts[i%4]), fmt.Sprintf("%d:%02d", 20+i, i)})
				}
			})
			l, age := lines[0], ""
			if from, to, ok := l.Birth.On(raceDay); ok {
				age = fmt.Sprintf("%d-%d", from, to)
			}
			if name := strings.TrimRight(l.Name[:min(len(l.Name), 10)], " "); name != "Ada Brooka" || l.Sex != k.sex || age != k.age {
				t.Errorf("%q, %s: %q, %v, age %s", mark, k.facts[0], l.Name, l.Sex, age)
			}
		}
	}
	for _, k := range []struct{ names, first string }{
		{"Lee, M|Roe, F|Dee, M|Fox, F|Gow, M", "Lee, M"},             // initials
		{"Jo Lee - Roe|Al Roe|Cy Dee|Di Fox|Ed Gow", "Jo Lee - Roe"}, // a double surname
		{"Jo Lee - M|Al Roe|Cy Dee|Di Fox|Ed Gow", "Jo Lee - M"},
		{"Jo Lee, M|Al Roe, F|Cy Dee, M|Di Fox, F|Ed Gow, M", "Jo Lee (M)"},
	} {
		lines, _ := readRows(t, c, []string{"Pos", "Name", "Time"}, Options{}, func(yield func([]string)) {
			for i, n := range strings.Split(k.names, "|") {
				yield([]string{fmt.Sprint(i + 1), n, fmt.Sprintf("20:%02d", i)})
			}
		})
		if lines[0].Name != k.first {
			t.Errorf("%s: %q", k.names, lines[0].Name)
		}
	}
}
