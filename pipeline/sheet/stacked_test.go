package sheet

import (
	"strings"
	"testing"
)

// Rows that go on in the cells below them are one result each; two people one below the
// other, and a line of thanks under the last, are not joined.
func TestRowsThatGoOnBelow(t *testing.T) {
	club := []string{"Vale AC", "Mill AC", "", "Vale AC", "Mill AC"}
	group := []string{"W40", "M45", "M35", "M", "W50"}
	name := []string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox", "Ed Gow"}
	time := []string{"18:20", "18:31", "19:11", "19:40", "20:02"}
	place := []string{"1", "2", "3", "4", "5"}
	rows := func(head string, row func(i int) string, foot string) string {
		for i := range name {
			head += row(i)
		}
		return head + foot
	}
	plain := []string{"position 1, name Jo Lee, time 18:20", "position 2, name Al Roe, time 18:31", "position 3, name Cy Dee, time 19:11", "position 4, name Di Fox, time 19:40", "position 5, name Ed Gow, time 20:02"}
	for _, c := range []struct {
		name, text, columns string
	}{
		{"club and group below", rows("Pos,Name,Time\n", func(i int) string {
			return place[i] + "," + name[i] + "," + time[i] + "\n," + club[i] + "," + group[i] + "\n"
		}, ""), "position name time - age-group"},
		{"headings of two rows", rows("Pos,Name,Time\n,Club,Cat\n", func(i int) string {
			return place[i] + "," + name[i] + "," + time[i] + "\n," + club[i] + "," + group[i] + "\n"
		}, ",Thanks to all,\n"), "position name time club age-group"},
		{"the time in a third row", rows("", func(i int) string { return place[i] + "," + name[i] + "\n," + club[i] + "\n," + time[i] + "\n" }, ""), "position name club time"},
		{"a blank row between", rows("Pos,Name,Time\n", func(i int) string { return place[i] + "," + name[i] + "," + time[i] + "\n," + club[i] + ",\n,,\n" }, ""), "position name time -"},
		{"somebody else below", rows("Pos,Name,Time\n", func(i int) string { return place[i] + "," + name[i] + "," + time[i] + "\n,Guest " + name[4-i] + ",\n" }, ""), "position name time"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, book := range []bool{false, true} {
				made := sheetCase{text: strings.ReplaceAll(c.text, ",", "|")}
				file, data := "alder-bank_2026-01-03.csv", made.asText()
				if book {
					file, data = "alder-bank_2026-01-03.xlsx", made.asWorkbook(t)
				}
				s, err := Read(file, data, Options{})
				if err != nil {
					t.Fatal(err)
				}
				if got := outcome(s).columns; got != c.columns {
					t.Errorf("%s: columns %s, want %s", file, got, c.columns)
				}
				if got := onlyPlaceNameTime(factsRead(s)); strings.Join(got[:min(5, len(got))], "\n") != strings.Join(plain, "\n") {
					t.Errorf("%s: read %q", file, got)
				}
			}
		})
	}
}
