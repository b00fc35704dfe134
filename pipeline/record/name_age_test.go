package record

import (
	"fmt"
	"strings"
	"testing"
)

// Ages behind the names are read in round and square brackets and behind a comma, where
// nearly every name has one and some stand twice; runners' numbers are not.
func TestAgesBehindNames(t *testing.T) {
	for _, form := range []string{"Ada Brook%c (%d)", "Ada Brook%c [%d]", "Ada Brook%c, %d", "Ada Brook%c (age %d)"} {
		c := NoColumns()
		c.Name, c.Time = 0, 1
		read := func(number func(i int) int) []Line {
			lines, _ := readRows(t, c, []string{"Name", "Time"}, Options{}, func(yield func([]string)) {
				for i := range 12 {
					yield([]string{fmt.Sprintf(form, 'a'+i, number(i)), fmt.Sprintf("24:%02d", i)})
				}
			})
			return lines
		}
		if lo, hi, ok := read(func(i int) int { return 31 + i%8 })[2].Birth.On(raceDay); !ok || lo != 33 || hi != 33 {
			t.Errorf("%s: from %d to %d (%v), want 33", form, lo, hi, ok)
		}
		if l := read(func(i int) int { return 31 + i })[2]; l.Birth.Known() != strings.Contains(form, "age") {
			t.Errorf("%s: numbers of which none stands twice are read as ages, or not though a word says so", form)
		}
	}
}
