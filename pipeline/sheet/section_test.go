package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// A list that goes back to the distance of an earlier one is a run of its own, and not
// more lines of the one above it.
func TestDistanceOfAnEarlierListAgain(t *testing.T) {
	var b strings.Builder
	for _, list := range []string{"Women 5 km", "Women 10 km", "Men 5 km", "Men 10 km"} {
		minutes := 20
		if strings.Contains(list, "10") {
			minutes = 42
		}
		fmt.Fprintf(&b, "%s,,\nPos,Name,Time\n", list)
		for i := range 6 {
			fmt.Fprintf(&b, "%d,%s Lee%c,%d:%02d\n", i+1, list[:2], 'a'+i, minutes+i, 7*i)
		}
		b.WriteString("\n")
	}
	s, err := Read("alder-bank_2026-01-03.csv", []byte(b.String()), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range s.Parts {
		rows, sex := 0, p.Index(Sex)
		said := map[string]bool{}
		if err := p.Each(func(_ int, cells []string) error { rows++; said[cellAt(cells, sex)] = true; return nil }); err != nil {
			t.Fatal(err)
		}
		got = append(got, fmt.Sprintf("%s m, %d rows, %v", p.Distance.Value, rows, slices.Sorted(maps.Keys(said))))
	}
	want := []string{"5000 m, 6 rows, [Women]", "10000 m, 6 rows, [Women]", "5000 m, 6 rows, [Men]", "10000 m, 6 rows, [Men]"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// The time at which a group started is no part of it.
func TestSectionText(t *testing.T) {
	for text, want := range map[string]string{"Ladies' race, 10.00": "Ladies", "Men 40-49, 9:30am": "Men 40-49", "Sex: F": "F", "Women 20-29": "Women 20-29"} {
		if got := sectionText(text); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}
