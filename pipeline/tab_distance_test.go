package pipeline

import (
	"bytes"
	"testing"

	"github.com/xuri/excelize/v2"
)

// bookOfTabs is a workbook with a tab for each list of times, under the name of the tab.
func bookOfTabs(t *testing.T, tabs [][]string) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	people := []string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox", "Ed Gow"}
	for i, tab := range tabs {
		if i == 0 {
			f.SetSheetName("Sheet1", tab[0])
		} else if _, err := f.NewSheet(tab[0]); err != nil {
			t.Fatal(err)
		}
		rows := [][]any{{"Pos", "Name", "Time"}}
		for n, clock := range tab[1:] {
			rows = append(rows, []any{n + 1, people[n], clock})
		}
		for r, row := range rows {
			cell, _ := excelize.CoordinatesToCellName(1, r+1)
			if err := f.SetSheetRow(tab[0], cell, &row); err != nil {
				t.Fatal(err)
			}
		}
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// A tab of another distance that says none does not hold the others, and a book of nothing
// else is asked about as before.
func TestTabOfOtherDistance(t *testing.T) {
	five := []string{"3 Jan 2026", "18:20", "18:31", "19:02", "21:40", "25:10"}
	long := []string{"10 Jan 2026", "1:28:20", "1:38:31", "1:49:02", "1:51:40", "1:55:10"}
	d := newDesk(t, map[string]string{
		"sheets/Alder Bank.xlsx": bookOfTabs(t, [][]string{five, long}),
		"sheets/Mill Leat.xlsx":  bookOfTabs(t, [][]string{long, append([]string{"17 Jan 2026"}, long[1:]...)}),
	})
	d.want("runs", d.text("select string_agg(c.course || ' ' || r.run_date, ', ' order by r.run_date) from record.run r join record.course c on c.course_no = r.course_no where exists (select 1 from record.line l where l.run_no = r.run_no)"), "alder-bank 2026-01-03")
	d.want("tabs left out", d.text("select string_agg(sheet.path || ', ' || p.tab || ', ' || p.kind, ', ' order by sheet.path) from sheet.problem p join sheet.sheet sheet on sheet.sheet_no = p.sheet_no where p.kind in ('tab-left-out', 'distance-missing')"), "Alder Bank.xlsx, 10 Jan 2026, tab-left-out")
}
