package sheet

import (
	"slices"
	"strings"
	"testing"
)

// oddRows are the lines of a plain list.
var oddRows = strings.Split(`1,Jo Lee,M,34,Harriers,18:20
2,Ann Roe,F,29,Striders,18:31
3,Sam Field,M,41,,19:02
4,Bo Gale,F,52,Harriers,19:10
5,Cy Ash,M,38,Runners,19:10
6,Di Fox,F,27,,19:28
7,Ed Orr,M,61,Striders,20:03
8,Fay Ivy,F,45,Harriers,20:31
9,Gus Hay,M,19,,21:00
10,Hal Jay,F,33,Runners,21:50
11,Ida Nye,F,70,Harriers,23:22
12,Kit Moss,M,48,Striders,25:33`, "\n")

// Rows that somebody has typed, pasted or saved otherwise than the rest are read as if like them.
func TestOddRows(t *testing.T) {
	const head = "Pos,Name,Sex,Age,Club,Time"
	some := func(change func(c []string) string) string { // three of the rows
		lines := slices.Clone(oddRows)
		for _, i := range []int{3, 7, 10} {
			lines[i] = change(strings.Split(lines[i], ","))
		}
		return head + "\n" + strings.Join(lines, "\n")
	}
	order := func(c []string, by ...int) string {
		var out []string
		for _, i := range by {
			out = append(out, c[i])
		}
		return strings.Join(out, ",")
	}
	last := func(by ...int) string { // from the ninth row on
		lines := slices.Clone(oddRows)
		for i := 8; i < len(lines); i++ {
			lines[i] = order(strings.Split(lines[i], ","), by...)
		}
		return head + "\n" + strings.Join(lines, "\n")
	}
	plain := func(head string) string { return head + "\n" + strings.Join(oddRows, "\n") }
	for name, text := range map[string]string{
		"in quotes, in one cell":      some(func(c []string) string { return `"` + strings.Join(c, ",") + `",,,,,` }),
		"by tabs":                     some(func(c []string) string { return strings.Join(c, "\t") }),
		"by semicolons":               some(func(c []string) string { return strings.Join(c, ";") }),
		"heading by tabs":             plain(strings.ReplaceAll(head, ",", "\t")),
		"heading by semicolons":       plain(strings.ReplaceAll(head, ",", ";")),
		"place twice":                 some(func(c []string) string { return c[0] + "," + strings.Join(c, ",") }),
		"cut between cells":           some(func(c []string) string { return order(c, 0, 1) + "\n," + order(c, 2, 3, 4, 5) }),
		"cut in the name":             some(func(c []string) string { return strings.Replace(strings.Join(c, ","), " ", "\n", 1) }),
		"second half below":           some(func(c []string) string { return order(c, 0, 1, 2, 3) + ",,\n,,,," + order(c, 4, 5) }),
		"place and name exchanged":    some(func(c []string) string { return order(c, 1, 0, 2, 3, 4, 5) }),
		"club and time exchanged":     some(func(c []string) string { return order(c, 0, 1, 2, 3, 5, 4) }),
		"a block in another order":    last(0, 5, 1, 4, 2, 3),
		"sex behind the name":         some(func(c []string) string { return c[0] + "," + c[1] + " (" + c[2] + "),," + order(c, 3, 4, 5) }),
		"club behind the name":        some(func(c []string) string { return c[0] + "," + c[1] + " - " + c[4] + "," + order(c, 2, 3) + ",," + c[5] }),
		"time and club head another":  plain("Pos,Name,Sex,Age,Time,Club"),
		"place and name head another": plain("Name,Pos,Sex,Age,Club,Time"),
		"a heading twice":             plain("Pos,Name,Name,Age,Club,Time"),
	} {
		if got := oddLines(t, text); !slices.Equal(got, oddRows) {
			for i := range max(len(got), len(oddRows)) {
				if cellAt(got, i) != cellAt(oddRows, i) {
					t.Errorf("%s: line %d is %q, want %q", name, i+1, cellAt(got, i), cellAt(oddRows, i))
					break
				}
			}
		}
	}
	want := slices.Clone(oddRows)
	for _, i := range []int{3, 7, 10} {
		want[i] = want[i][strings.IndexByte(want[i], ','):]
	}
	if got := oddLines(t, some(func(c []string) string { return strings.Join(c[1:], ",") })); !slices.Equal(got, want) {
		t.Errorf("without places: %q", got)
	}
}

// What only looks like such rows stays as it stands.
func TestRowsAsTheyStand(t *testing.T) {
	rows := slices.Clone(oddRows)
	rows[2] = "3,Sam Field,M,41,,"
	rows[3] = "4,,F,52,Harriers,19:10"            // of nobody, and no second half
	rows[5] = "6,Di Fox (Vale AC),F,27,,19:28"    // a club that nobody else has
	rows[6] = "7,Striders,M,61,Ed Orr,20:03"      // known by the clubs of others
	rows[8] = "9,Gus Hay,M,19,21:00,Hill Running" // exchanged
	want := slices.Clone(rows)
	want[6], want[8] = oddRows[6], "9,Gus Hay,M,19,Hill Running,21:00"
	got := oddLines(t, "Pos,Name,Sex,Age,Club,Time\n"+strings.Join(rows, "\n"))
	for i := range want {
		if cellAt(got, i) != want[i] {
			t.Errorf("line %d is %q, want %q", i+1, cellAt(got, i), want[i])
		}
	}
}

// oddLines are the lines of a sheet with the cells of its columns as they are read.
func oddLines(t *testing.T, text string) (lines []string) {
	t.Helper()
	s := readCase(t, "alder-bank_2026-01-03.csv", text+"\n")
	p := s.Parts[0]
	p.Each(func(_ int, cells []string) error {
		var out []string
		for _, m := range []Meaning{Position, Name, Sex, Age, Club, Time} {
			c := ""
			if i := p.Index(m); i >= 0 {
				c = cellAt(cells, i)
			}
			out = append(out, c)
		}
		lines = append(lines, strings.Join(out, ","))
		return nil
	})
	return lines
}
