package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// Columns whose values tell what their headings don't: days of birth, classes beside places,
// and codes that are neither age nor sex.
func TestColumnsOfEvidence(t *testing.T) {
	table := func(heading string, cell func(i int) string) string {
		lines := []string{"Pos|Name|" + heading + "|Time"}
		for i := range 12 {
			lines = append(lines, fmt.Sprintf("%d|Ada Brook%c|%s|%d:%02d", i+1, 'a'+i, cell(i), 20+i, i))
		}
		return strings.Join(lines, "\n") + "\n"
	}
	for _, k := range []struct {
		heading string
		cell    func(i int) string
		want    Meaning
	}{
		{"Datum", func(i int) string { return fmt.Sprintf("%d.%d.%d", i+1, i%9+1, 1955+4*i) }, BirthDate},
		{"Xyz", func(i int) string { return fmt.Sprintf("%d.%d.%d", i+1, i%9+1, 1955+4*i) }, BirthDate},
		{"Category place", func(i int) string { return fmt.Sprintf("%d of 6 %s", i/2+1, []string{"M40", "F45"}[i%2]) }, AgeGroup},
		{"Category place", func(i int) string { return fmt.Sprint(i/2 + 1) }, GroupPlace},
		{"Wiek", func(i int) string { return fmt.Sprintf("%d %s", 21+3*i, []string{"lat", "lata"}[i%2]) }, Age},
		{"Age next birthday", func(i int) string { return fmt.Sprint(21 + 3*i) }, Age},
		{"Gender place", func(i int) string {
			return []string{"M1", "F1", "M2", "M3", "F2", "F2", "M4", "M5", "F3", "M6", "F4", "M7"}[i]
		}, Sex},
		{"Locker", func(i int) string { return fmt.Sprintf("M%d", 21+3*i) }, Other},
	} {
		c := sheetCase{text: table(k.heading, k.cell)}
		s, err := Read("alder-bank_2026-01-03.csv", c.asText(), Options{})
		if err != nil || len(s.Parts) == 0 {
			t.Fatal(err, k.heading)
		}
		if got := s.Parts[0].Columns[2].Meaning; got != k.want {
			t.Errorf("%s over %s: %v, want %v", k.heading, k.cell(0), got, k.want)
		}
	}
}

// Runners named under a line for the disqualified are no results, unlike walkers.
func TestTailOfDisqualified(t *testing.T) {
	text := "Pos|Name|Club|Time\n1|Jo Lee|Moss AC|18:20\n2|Ann Page|Moss AC|18:31\n3|Cy Dee||19:10\n4|Di Fox|Moss AC|19:20\n5|Ed Gow||19:40\n\n%s\n|Hal Jay||20:20\n|Gus Ing|Moss AC|20:40\n"
	for over, want := range map[string]int{"Disqualified": 5, "DNF": 5, "Nicht im Ziel": 5, "Did not finish (2)": 5, "Walkers": 7} {
		got := cellsOf(t, strings.Replace(text, "%s", over+"|||", 1), Name)
		if len(got) != want {
			t.Errorf("under %s: %q, want %d lines", over, got, want)
		}
	}
}

// A line over rows that says how their races ended is a remark of each of them.
func TestRemarkOfLineAbove(t *testing.T) {
	for _, gap := range []string{"", "\n"} {
		text := "Pos|No|Name|Sex|Age|Time\n1|7|Jo Lee|M|31|18:20\n2|8|Ann Page|F|44|18:31\n3|9|Cy Dee|M|52|19:10\n4|5|Di Fox|F|29|19:20\n" + gap + "Disqualified:|||||\n|12|Hal Jay|M|40|20:20\n|13|Gus Ing|M|41|20:40\n"
		for i, said := range cellsOf(t, text, Notes) {
			if want := map[bool]string{true: "Disqualified"}[i >= 4]; said != want {
				t.Errorf("gap %q, line %d: %q, want %q", gap, i, said, want)
			}
		}
	}
}
