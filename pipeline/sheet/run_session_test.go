package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// Tabs named after parts of one day are races of their own; a tab named so alone, or with
// other words, is of the day's run.
func TestDayparts(t *testing.T) {
	rows := "Pos|Name|Time\n1|Al Roe|18:20\n2|Jo Lee|19:31\n3|Cy Dee|21:02\n"
	other := strings.NewReplacer("18:", "20:", "19:", "22:", "21:", "23:").Replace(rows)
	for _, c := range []struct{ text, want string }{
		{"== Evening\n" + other + "== Morning\n" + rows, "Evening 2; Morning "},
		{"== am\n" + rows + "== pm\n" + other, "am ; pm 2"},
		{"== Morning\n" + rows + "== Start lists\n" + other, "Morning ; Start lists "},
		{"== Evening\n" + rows, "Evening "},
		{"== Uitslagen\nStarttijd|09:00:00\n\n" + rows, "Uitslagen 09:00"},
		{"== Tulokset\nLähtöaika|9:00\n\n" + rows, "Tulokset 09:00"},
		{"== Resultados\nHora de partida|9:30\n\n" + rows, "Resultados 09:30"},
		{"== Morning\nStart 9:00\n" + rows + "== Evening\nStart 18:30\n" + other, "Morning 09:00; Evening 18:30"},
	} {
		s, err := Read("Alder Bank 3 January 2026.xlsx", bookOf(t, c.text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range s.Parts {
			got = append(got, fmt.Sprintf("%s %s", p.Tab, p.runs.session))
		}
		if text := strings.Join(got, "; "); text != c.want {
			t.Errorf("%q, want %q", text, c.want)
		}
	}
}
