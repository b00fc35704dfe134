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
		{"Jo Lee - M|Al Roe|Cy Dee|Di Fox|Ed Gow", "Jo Lee (M)"},
		{"Jo Lee M|Al Roe F|Cy Dee M|Di Fox F|Ed Gow M", "Jo Lee (M)"},
		{"M Jo Lee|F Al Roe|M Cy Dee|F Di Fox|M Ed Gow", "Jo Lee (M)"},
		{"Jo Lee M|Al Roe M|Cy Dee M|Di Fox M|Ed Gow M", "Jo Lee M"}, // of one letter nobody can tell
		{"Jo Lee M|Al Roe F|Cy Dee|Di Fox|Ed Gow", "Jo Lee M"},       // initials
		{"Jo Lee ♂|Al Roe ♀|Cy Dee ♂|Di Fox ♀|Ed Gow ♂", "Jo Lee (M)"},
		{"♂ Jo Lee|♀ Al Roe|♂ Cy Dee|♀ Di Fox|♂ Ed Gow", "Jo Lee (M)"},
		{"(M) Jo Lee|(F) Al Roe|(M) Cy Dee|(F) Di Fox|(M) Ed Gow", "Jo Lee (M)"},
		{"M Lee|F Roe|M Dee|F Fox|M Gow", "M Lee"},
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

// How a line ended may stand in the name's place, before the name or behind it.
func TestEndedBesideName(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, k := range []struct {
		cell, name string
		status     Status
	}{
		{"DNF", "", DNF}, {"Jo Lee DNF", "Jo Lee", DNF}, {"Jo Lee (DNF)", "Jo Lee", DNF}, {"DQ - Jo Lee", "Jo Lee", DQ}, {"JO LEE - DSQ", "JO LEE", DQ},
		{"(DQ) Jo Lee", "Jo Lee", DQ}, {"(Disqualified) Jo Lee", "Jo Lee", DQ}, {"[dnf] Jo Lee", "Jo Lee", DNF}, {"Jo Lee, Excluded", "Jo Lee", DQ}, {"Jo Lee, Retired", "Jo Lee", DNF}, {"(spectator) Jo Lee", "Jo Lee", Doubtful},
		{"spectator: Jo Lee", "Jo Lee", Doubtful}, {"Jo Lee [disallowed]", "Jo Lee", Doubtful}, {"e.g. Jo Lee", "e.g. Jo Lee", Doubtful}, {"CR - Jo Lee", "Jo Lee", Doubtful}, {"Lee, Jo Ann", "Lee, Jo Ann", OK}, {"Lee Short, Jo", "Lee Short, Jo", OK},
		{"Rex the dog", "the dog", Unnamed}, {"Rex (dog)", "the dog", Unnamed}, {"Jo Lee (dog)", "Jo Lee", OK},
		{"Lee (DNF), Jo", "Lee, Jo", DNF}, {"LEE DNF, Jo", "LEE, Jo", DNF}, {"Lee - dnf, Jo", "Lee, Jo", DNF}, {"Lee (Short), Jo", "Lee (Short), Jo", OK}, {"Lee - PB, Jo", "Lee, Jo", OK}, {"Lee - Walker, Jo", "Lee - Walker, Jo", OK}, {"Lee-Dnf, Jo", "Lee-Dnf, Jo", OK}, {"Jo Lee - wore another runner's number, DQ", "Jo Lee", DQ},
		{"Nieznany biegacz", "Nieznany biegacz", Unnamed}, {"不详", "不详", Unnamed},
		{"DNF Dunphy", "DNF Dunphy", OK}, {"Dnf Dunphy", "Dnf Dunphy", OK}, {"Jo Lee-DQUINN", "Jo Lee-DQUINN", OK},
		{"Jo or Al", "Jo or Al", Doubtful}, {"Or Levi", "Or Levi", OK}, {"ditto", "ditto", Unnamed}, {"same as above", "same as above", Unnamed},
	} {
		lines, _ := readRows(t, c, []string{"Pos", "Name", "Time"}, Options{}, func(yield func([]string)) {
			yield([]string{"1", k.cell, "20:01"})
			yield([]string{"2", "Cy Dee", "20:11"})
			yield([]string{"3", "Di Fox", "20:21"})
		})
		if l := lines[0]; l.Name != k.name || l.Status != k.status {
			t.Errorf("%s: %q, %v", k.cell, l.Name, l.Status)
		}
	}
}

// Marks around a group, the place in it and an O for a nought are no part of it.
func TestPlainGroup(t *testing.T) {
	for text, want := range map[string]string{"[M40]": "M40", "M40*": "M40", "M40!": "M40", "(W35)": "W35", "M40 1st": "M40", "M4O": "M40", "♂40": "M40", "♀ 40-44": "W40-44", "M40": "M40", "80+": "80+", "MO40": "MO40", "M30o": "M30o", "(40)-(44)": "(40)-(44)", "Senior": "Senior", "*": "*", "40 1st": "40", "1st": "1st"} {
		if got := plainGroup(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
