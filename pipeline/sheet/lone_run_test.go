package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// A line whose date, year or course slipped is of the run that has all the other places; in
// lists of some of the field, where places have gaps, a run may well have one line.
func TestLineOfAnotherRun(t *testing.T) {
	const head = "Date,Course,Pos,Name,Time\n"
	run := func(day string, from, to int) (rows string) {
		names := []string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox", "Ann Page", "Bo Reed", "Fay Ho", "Hal Kay"}
		for i := from; i <= to; i++ {
			rows += day + ",Alder Bank," + string(rune('0'+i)) + "," + names[i-1] + ",2" + string(rune('0'+i)) + ":10\n"
		}
		return rows
	}
	for _, c := range []struct{ name, rows, runs, told string }{
		{"last week's date", run("2026-01-17", 1, 3) + run("2026-01-10", 4, 4) + run("2026-01-17", 5, 7), "2026-01-17 7", "x.csv:5"},
		{"last year's, in the first line", run("2025-01-17", 1, 1) + run("2026-01-17", 2, 7), "2026-01-17 7", "x.csv:2"},
		{"in the last line", run("2026-01-17", 1, 6) + run("2026-01-18", 7, 7), "2026-01-17 7", "x.csv:8"},
		{"a course that is misspelt once", run("2026-01-17", 1, 3) + strings.Replace(run("2026-01-17", 4, 4), "Alder Bank", "Elder Bnk", 1) + run("2026-01-17", 5, 7), "2026-01-17 7", "x.csv:5"},
		{"two runs, the last of the first with the date of the second but one", run("2026-01-10", 1, 6) + run("2026-01-24", 7, 7) + run("2026-01-17", 1, 6), "2026-01-10 7, 2026-01-17 6", "x.csv:8"},
		{"members of a club, one of them in the second week", run("2026-01-10", 2, 3) + run("2026-01-10", 5, 8) + run("2026-01-17", 4, 4) + run("2026-01-24", 5, 7), "2026-01-10 6, 2026-01-17 1, 2026-01-24 3", ""},
		{"two lines of last week", run("2026-01-17", 1, 3) + run("2026-01-10", 4, 5) + run("2026-01-17", 6, 8), "2026-01-10 2, 2026-01-17 6", ""},
	} {
		s, err := Read("x.csv", []byte(head+c.rows), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		counts := map[string]int{}
		var told []string
		for _, p := range s.Parts {
			p.Each(func(_ int, cells []string) error {
				_, day, _, _ := p.RunOf(cells)
				counts[day.String()]++
				return nil
			})
			for _, q := range p.Problems {
				if q.Kind == "line-of-another-run" {
					told = append(told, q.Place.String())
				}
			}
		}
		if got := listed(counts); got != c.runs || strings.Join(told, " ") != c.told {
			t.Errorf("%s: runs %s, want %s; told %q, want %q", c.name, got, c.runs, told, c.told)
		}
	}
}

func listed(counts map[string]int) string {
	var list []string
	for _, k := range slices.Sorted(maps.Keys(counts)) {
		list = append(list, fmt.Sprintf("%s %d", k, counts[k]))
	}
	return strings.Join(list, ", ")
}
