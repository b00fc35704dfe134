package record

import (
	"fmt"
	"strings"
	"testing"
)

// Sex and age behind a name without brackets, in the same way behind nearly all of them; a
// letter behind a few names is an initial.
func TestGroupBehindName(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, form := range []string{" %s%d", " %s %d", ", %s, %d", " - %s%d", " %s/%d"} {
		lines, _ := readRows(t, c, []string{"Pos", "Name", "Time"}, Options{}, func(yield func([]string)) {
			for i := range 8 {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c"+form, 'a'+i, "FM"[i%2:i%2+1], 35+i), fmt.Sprintf("%d:%02d", 20+i, i)})
			}
		})
		from, to, _ := lines[1].Birth.On(raceDay)
		if l := lines[1]; l.Name != "Ada Brookb" || l.Sex != M || from != 36 || to != 36 || lines[0].Sex != W {
			t.Errorf("%q: %q, %v, age %d to %d, then %v", form, l.Name, l.Sex, from, to, lines[0].Sex)
		}
	}
	lines, _ := readRows(t, c, []string{"Pos", "Name", "Time"}, Options{}, func(yield func([]string)) {
		for i := range 8 {
			behind := [...]string{"", " F40", " F", " M-42", " b. 1984", " X4", " GB"}[i%7]
			yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c%s", 'a'+i, behind), fmt.Sprintf("%d:%02d", 20+i, i)})
		}
	})
	for i, want := range []string{"Ada Brooka", "Ada Brookb", "Ada Brookc F", "Ada Brookd", "Ada Brooke", "Ada Brookf X4", "Ada Brookg GB"} {
		if lines[i].Name != want {
			t.Errorf("behind one name: %q, want %q", lines[i].Name, want)
		}
	}
}

// A way of writing times that all cells have is not mentioned for each of them; a slip is.
func TestTimesWithSpace(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, k := range []struct {
		mark func(i int) string
		want int
	}{{func(int) string { return " " }, 0}, {func(i int) string { return map[bool]string{true: " ", false: ":"}[i == 3] }, 1}} {
		lines, _ := readRows(t, c, []string{"Pos", "Name", "Time"}, Options{}, func(yield func([]string)) {
			for i := range 8 {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("%d%s%02d", 20+i, k.mark(i), 10+i)})
			}
		})
		said := 0
		for i, l := range lines {
			if said += len(l.Problems); l.TimeMS != int32((20+i)*60+10+i)*1000 {
				t.Errorf("row %d: %d ms", i, l.TimeMS)
			}
		}
		if said != k.want {
			t.Errorf("%d notes, want %d", said, k.want)
		}
	}
}

func TestSexInTwoLanguages(t *testing.T) {
	for s, want := range map[string]sexMark{"homme/male": sureM, "frauen / donne": sureW, "nu": sureW, "nam": sureM, "male/female": strange, "m/f": strange, "f/f": 'f'} {
		if got := parseSex([]byte(s)); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

// Under a heading for ages and sexes a multiple of five is an age like the others; under one for
// groups it is a group.
func TestAgeBesideSex(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Group, c.Time = 0, 1, 2, 3
	for heading, want := range map[string]string{"Age/sex": "40-40 45-45 22-22", "Age group": "40-44 45-49 22-34"} {
		lines, _ := readRows(t, c, []string{"Pos", "Name", heading, "Time"}, Options{}, func(yield func([]string)) {
			for i, g := range []string{"M40", "F45", "M22"} {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c", 'a'+i), g, fmt.Sprintf("20:%02d", i)})
			}
		})
		var got []string
		for _, l := range lines {
			from, to, _ := l.Birth.On(raceDay)
			got = append(got, fmt.Sprintf("%d-%d", from, to))
		}
		if g := strings.Join(got, " "); g != want {
			t.Errorf("%s: %s, want %s", heading, g, want)
		}
	}
}
