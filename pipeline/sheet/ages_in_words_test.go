package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// Columns that nobody has headed, or headed Category, are known by what their values say in words.
func TestInWords(t *testing.T) {
	for _, k := range []struct {
		heading, values string
		want            Meaning
	}{
		{"", "34 years old|47 years old|51 years old|63 years old", Age},
		{"", "Age: 34|Age: 47|Age: 51|Age: 63", Age},
		{"", "34歳|47歳|51歳|63歳", Age},
		{"", "born 1992|born 1979|born 1974|born 1963", BirthYear},
		{"", "*1992|*1979|*1974|*1963", BirthYear},
		{"", "(1992)|(1979)|(1974)|(1963)", BirthYear},
		{"Cat", "né en 1992|né en 1979|née en 1974|né en 1963", BirthYear},
		{"Cat", "92|79|04|63|98|85", BirthYear},
		{"Cat", "34.0|47.0|51.0|63.0|28.0", Age},
		{"Cat", "34|47|82|63|28|41", Age},
		{"Cat", "08|09|12|11|10|13", Age},
		{"", "Gate 34|Gate 47|Gate 51|Gate 63", Other},
		{"", "(34)|(47)|(51)|(63)", Other},
		{"", "35 years|40 years|45 years|50 years", AgeGroup},
		{"", "Herren|Damen|Herren|Damen", Sex},
		{"", "he/him|she/her|she/her|he/him", Sex},
		{"Gender", "👨|👩🏽|👩|👨", Sex},
		{"Cat", "[M]|[F]|[F]|[M]", Sex},
		{"", "Herren|Herren|Herren|Herren", Other},
		{"", "Guy|Gal|Vale|Gal", Other},
		{"none at all", "PR||PR||", Other},
		{"none at all", "F||F||", Sex},
	} {
		var b strings.Builder
		b.WriteString("Alder Bank;3 January 2026;;\n")
		if k.heading != "none at all" {
			fmt.Fprintf(&b, "Pos;Name;%s;Time\n", k.heading)
		}
		for i, v := range strings.Split(k.values, "|") {
			fmt.Fprintf(&b, "%d;Jo Lee%c;%s;18:%02d\n", i+1, 'a'+i, v, 20+7*i)
		}
		s, err := Read("x.csv", []byte(b.String()), Options{})
		if err != nil {
			t.Fatal(k.values, err)
		}
		if c := s.Parts[0].Columns[2]; c.Meaning != k.want {
			t.Errorf("%q, %s: %v, want %v (%s)", k.heading, k.values, c.Meaning, k.want, c.Why)
		}
	}
}
