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
		same(t, name, oddLines(t, text), oddRows)
	}
	for name, text := range map[string]string{ // as in a workbook, where nothing but the mark divides
		"a cell too many":             some(func(c []string) string { return order(c, 0, 1, 2) + ",," + order(c, 3, 4, 5) }),
		"place twice":                 some(func(c []string) string { return c[0] + "," + strings.Join(c, ",") }),
		"a block in another order":    last(5, 1, 3, 2, 4, 0),
		"a block that stands apart":   head + "\n" + strings.Join(oddRows[:8], "\n") + "\nAdded late:\n" + strings.Join(oddRows[8:], "\n"),
		"place and name exchanged":    some(func(c []string) string { return order(c, 1, 0, 2, 3, 4, 5) }),
		"cut in two before the times": some(func(c []string) string { return order(c, 0, 1, 2, 3, 4) + "\n" + c[5] + ",," }),
	} {
		for _, headed := range []bool{true, false} {
			if text := strings.ReplaceAll(text, ",", "\t"); headed {
				same(t, name+", by tabs", oddLines(t, text), oddRows)
			} else if name != "a block that stands apart" {
				same(t, name+", without a heading", oddLines(t, text[len(head)+1:]), oddRows)
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
	same(t, "as they stand", oddLines(t, "Pos,Name,Sex,Age,Club,Time\n"+strings.Join(rows, "\n")), want)
	kept := want
	few := slices.Clone(oddRows)
	for i := 8; i < len(few); i++ {
		c := strings.Split(few[i], ",")
		few[i] = c[0] + "," + c[1] + "," + c[5]
	}
	want = append(slices.Clone(oddRows[:8]), "9,Gus Hay,,,,21:00", "10,Hal Jay,,,,21:50", "11,Ida Nye,,,,23:22", "12,Kit Moss,,,,25:33")
	same(t, "a block of fewer columns", oddLines(t, "Pos,Name,Sex,Age,Club,Time\n"+strings.Join(few, "\n")), want)
	const classes = "Pl.;AK;Name;Verein;Zeit\n1;1. M30;Jo Lee;;18:20\n2;1. M35;Al Roe;Harriers;18:31\n3;2. M35;Sam Field;;19:02\n4;1. W;Ann Gale;MR25;19:10\n5;10. M40;Cy Ash;Striders;19:20\n"
	same(t, "a place in a class beside a club like a class", oddLines(t, classes)[3:4], []string{"4,Ann Gale,,,MR25,19:10"})
	rows[2] += "\n,,,,,19:05" // of nobody: it is no time of the one above
	same(t, "a time alone", oddLines(t, "Pos,Name,Sex,Age,Club,Time\n"+strings.Join(rows, "\n")), kept)
}

// Somebody who was added below a list without places, with all that the others have, is a finisher; winners that are
// repeated there are none.
func TestAddedBelowTimes(t *testing.T) {
	const list = "Name,Time,Club,Sex,Age\nJo Lee,18:20,Harriers,M,34\nAnn Roe,18:31,Striders,F,29\nSam Field,19:02,,M,41\nBo Gale,19:10,Harriers,F,52\nCy Ash,29:10,Striders,M,38\n\n"
	for below, rows := range map[string]int{
		"Ed Orr,20:03,Striders,M,61":                              6,
		"Jo Lee,18:20,Harriers,M,34\nAnn Roe,18:31,Striders,F,29": 5,
		"Al Roe,17:03,,,":                                         5,
	} {
		if got := oddLines(t, list+below); len(got) != rows {
			t.Errorf("%q: %d lines, want %d", below, len(got), rows)
		}
	}
}

// same compares lines, and names the first that differs.
func same(t *testing.T, name string, got, want []string) {
	t.Helper()
	for i := range max(len(got), len(want)) {
		if cellAt(got, i) != cellAt(want, i) {
			t.Errorf("%s: line %d is %q, want %q", name, i+1, cellAt(got, i), cellAt(want, i))
			return
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
