package sheet

import (
	"fmt"
	"slices"
	"testing"

	"github.com/xuri/excelize/v2"
)

// What the tabs of a workbook say together: each has a list of three.
func TestRunsOfTabs(t *testing.T) {
	type tab struct {
		name   string
		titles []string
	}
	tests := []struct {
		name, file string
		tabs       []tab
		want       []string
	}{
		{"the club's name over the first of tabs called after courses", "x.xlsx",
			[]tab{{"Alder Moor", []string{"Vale runs 21 November 2026"}}, {"Castle Green", nil}, {"Bryn Coed", nil}},
			[]string{"alder-moor 2026-11-21", "castle-green 2026-11-21", "bryn-coed 2026-11-21"}},
		{"the number of the week in one word", "x.xlsx",
			[]tab{{"Wk1 Alder Moor", []string{"7 November 2026"}}, {"Wk2 Castle Green", []string{"14 November 2026"}}},
			[]string{"alder-moor 2026-11-07", "castle-green 2026-11-14"}},
		{"a course over the first of tabs called after their days", "november.xlsx",
			[]tab{{"07.11.2026", []string{"Alder Moor"}}, {"14.11.2026", nil}},
			[]string{"alder-moor 2026-11-07", "alder-moor 2026-11-14"}},
		{"days of the month that the file says", "alder-moor_nov_2026.xlsx",
			[]tab{{"07", nil}, {"14", nil}, {"21", nil}},
			[]string{"alder-moor 2026-11-07", "alder-moor 2026-11-14", "alder-moor 2026-11-21"}},
		{"days of the month that a title says", "x.xlsx",
			[]tab{{"Sat 7", []string{"Alder Moor", "November 2026"}}, {"Sat 14", []string{"Alder Moor"}}},
			[]string{"alder-moor 2026-11-07", "alder-moor 2026-11-14"}},
		{"numbers that are of several weekdays", "alder-moor_nov_2026.xlsx",
			[]tab{{"1", nil}, {"2", nil}}, []string{"alder-moor ?", "alder-moor ?"}},
		{"days of another weekday than they say", "alder-moor_nov_2026.xlsx",
			[]tab{{"Sun 7", nil}, {"Sun 14", nil}}, []string{"alder-moor ?", "alder-moor ?"}},
	}
	for _, tc := range tests {
		t.Run(tc.name, func(t *testing.T) {
			n := 0
			data := workbook(t, func(f *excelize.File) {
				for i, tab := range tc.tabs {
					if i == 0 {
						f.SetSheetName("Sheet1", tab.name)
					} else if _, err := f.NewSheet(tab.name); err != nil {
						t.Fatal(err)
					}
					var rows [][]any
					for _, title := range tab.titles {
						rows = append(rows, []any{title})
					}
					rows = append(rows, []any{"Pos", "Name", "Time"})
					for k := range 3 {
						rows = append(rows, []any{k + 1, fmt.Sprintf("Ann List%c", 'a'+n), fmt.Sprintf("2%d:%02d", k, n)})
						n++
					}
					setRows(t, f, tab.name, rows...)
				}
			})
			s, err := Read(tc.file, data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, p := range s.Parts {
				day := "?"
				if p.Date.Settled {
					day = p.Date.Day.String()
				}
				got = append(got, p.Course.Value+" "+day)
			}
			if !slices.Equal(got, tc.want) {
				t.Errorf("got %q, want %q", got, tc.want)
			}
		})
	}
}
