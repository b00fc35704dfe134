package record

import (
	"fmt"
	"testing"
)

// A club behind or below the name is no part of it, where the heading says so or
// the lines below the names repeat as clubs do.
func TestClubBehindName(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	clubs := []string{"Fell Harriers", "Vale Joggers"}
	for _, k := range []struct {
		heading, between, after string
		name, club              string
	}{
		{"Runner (club)", " (", ")", "Ada Brooka (Fell Harriers)", "Fell Harriers"},
		{"Name Club", "\n", "", "Ada Brooka", "Fell Harriers"},
		{"Name", "\n", "", "Ada Brooka", "Fell Harriers"},
		{"Name", " (", ")", "Ada Brooka (Fell Harriers)", "Fell Harriers"},
	} {
		lines, _ := readRows(t, c, []string{"Pos", k.heading, "Time"}, Options{}, func(yield func([]string)) {
			for i := range 12 {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c%s%s%s", 'a'+i, k.between, clubs[i%2], k.after), fmt.Sprintf("%d:%02d", 20+i, i)})
			}
		})
		if l := lines[0]; l.Name != k.name || l.Club != k.club {
			t.Errorf("%s, %q: name %q, club %q; want %q, %q", k.heading, k.between, l.Name, l.Club, k.name, k.club)
		}
	}
	// A family name on a second line differs from line to line.
	lines, _ := readRows(t, c, []string{"Pos", "Name", "Time"}, Options{}, func(yield func([]string)) {
		for i := range 12 {
			yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada\nBrook%c", 'a'+i), fmt.Sprintf("%d:%02d", 20+i, i)})
		}
	})
	if l := lines[0]; l.Name != "Ada\nBrooka" || l.Club != "" {
		t.Errorf("family name below: name %q, club %q", l.Name, l.Club)
	}
}

// Numbers behind a letter of which most lie between the fives are ages, and no
// groups that begin there.
func TestAgesBehindLetter(t *testing.T) {
	c := NoColumns()
	c.Position, c.Group, c.Time = 0, 1, 2
	for _, k := range []struct {
		first, step int
		lo, hi      int // ages of the first line
	}{
		{41, 3, 41, 41}, // F41, M44, F47, …
		{40, 5, 40, 44}, // F40, M45, F50, …
	} {
		lines, _ := readRows(t, c, []string{"Pos", "Sex/Age", "Time"}, Options{}, func(yield func([]string)) {
			for i := range 8 {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("%c%d", "FM"[i/4], k.first+k.step*i), fmt.Sprintf("%d:%02d", 20+i, i)})
			}
		})
		l := lines[0]
		if lo, hi, ok := l.Birth.On(raceDay); !ok || lo != k.lo || hi != k.hi || l.Sex != W {
			t.Errorf("F%d: ages %d to %d, sex %v; want %d to %d, W", k.first, lo, hi, l.Sex, k.lo, k.hi)
		}
	}
}
