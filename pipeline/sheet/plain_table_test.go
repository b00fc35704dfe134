package sheet

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
)

// TestPlainTable holds what is passed over to what would be looked through: the text and how
// it is divided are the same both ways, and whatever wants mending is no plain table.
func TestPlainTable(t *testing.T) {
	table := func(delim, heading, odd string) string {
		var b strings.Builder
		fmt.Fprintln(&b, strings.ReplaceAll(heading, ",", delim))
		for i := range 12 {
			row := fmt.Sprintf("%d,Jo O'Lee-%c,F,VW45-49,2026-03-07,2%d:1%d", i+1, 'A'+i, i/3, i%9)
			if i == 7 && odd != "" {
				row = odd
			}
			fmt.Fprintln(&b, strings.ReplaceAll(row, ",", delim))
		}
		return b.String()
	}
	const heading = "Place,Name,Sex,Group,Date,Time"
	for _, c := range []struct {
		name, text string
		plain      bool
	}{
		{"commas", table(",", heading, ""), true},
		{"semicolons", table(";", heading, ""), true},
		{"tabs", table("\t", heading, ""), true},
		{"line ends of another system", strings.ReplaceAll(table(",", heading, ""), "\n", "\r\n"), true},
		{"no line end at the end", strings.TrimSuffix(table(",", heading, ""), "\n"), true},
		{"letters of other alphabets", table(",", heading, "8,Łucja Żak Ωμέγα,F,VW45,,21:03:09"), true},
		{"a line without a time", table(",", heading, "8,Jo Lee,F,VW45,,"), true},
		{"a line with a status", table(",", heading, "8,Jo Lee,F,VW45,,DNF"), true},
		{"a time in words", table(",", heading, "8,Jo Lee,F,VW45,,twenty past"), false},
		{"a letter in a time", table(",", heading, "8,Jo Lee,F,VW45,,2l:03"), false},
		{"a time with a full stop", table(",", heading, "8,Jo Lee,F,VW45,,21.03"), false},
		{"seconds alone", table(",", heading, "8,Jo Lee,F,VW45,,:03"), false},
		{"seconds over sixty", table(",", heading, "8,Jo Lee,F,VW45,,21:73"), false},
		{"figures of another script", table(",", heading, "8,Jo Lee,F,VW45,,２１:０３"), false},
		{"a place with a mark", table(",", heading, "8.,Jo Lee,F,VW45,,21:03"), false},
		{"a place with its name", table(",", heading, "8 Jo Lee,,F,VW45,,21:03"), false},
		{"quotes", table(",", heading, "8,\"Lee, Jo\",F,VW45,,21:03"), false},
		{"a quote at a beginning", table(",", heading, "8,'Jo Lee',F,VW45,,21:03"), false},
		{"a cell too many", table(",", heading, "8,Jo,Lee,F,VW45,,21:03"), false},
		{"a cell too few", table(",", heading, "8,Jo Lee,F,21:03"), false},
		{"a gap within a time", table(",", heading, "8,Jo Lee,F,VW45,,21: 03"), false},
		{"a gap at the end of a cell", table(",", heading, "8,Jo Lee ,F,VW45,,21:03"), false},
		{"a blank line", table(",", heading, ""+"\n"), false},
		{"two columns of times", strings.ReplaceAll(table(",", heading, ""), "2026-03-07", "21:03"), false},
		{"two marks in the heading", table(",", "Place,Name;a;b,Sex,Group,Date,Time", ""), false},
		{"no heading", table(",", "1,Jo Lee,F,VW45,2026-03-07,20:00", ""), false},
		{"a title above", "Withy Bank 7 March\n" + table(",", heading, ""), false},
		{"few rows", "Place,Name,Time\n1,Jo Lee,20:00\n2,Al Roe,21:00\n", false},
	} {
		if got := plainTable([]byte(c.text)); got != c.plain {
			t.Errorf("%s: a plain table: %v, want %v", c.name, got, c.plain)
		}
		lex, limits := newLexicon(Options{}), Limits{}.orDefault()
		a, howA := divide([]byte(c.text), lex, limits)
		b, howB := divideTyped([]byte(c.text), lex, limits)
		if !bytes.Equal(a, b) || howA != howB {
			t.Errorf("%s: divided into %q (%v), looked through into %q (%v)", c.name, a, howA, b, howB)
		}
	}
}
