package pipeline

import (
	"fmt"
	"strings"
	"testing"
)

// A list that says another number of finishers than it has lines is told so; people without
// a time, or who did not start, may be counted or not.
func TestSaidCount(t *testing.T) {
	list := func(above, below string, ended ...string) string {
		var b strings.Builder
		fmt.Fprintf(&b, "Alder Bank, 3 Jan 2026\n%s\nName,Time\n", above)
		for i, name := range []string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox", "Ed Gow", "Flo Hart"} {
			clock := fmt.Sprintf("%d:%02d", 20+i, 11+i)
			if i < len(ended) {
				clock = ended[i]
			}
			fmt.Fprintf(&b, "%s,%s\n", name, clock)
		}
		return b.String() + below
	}
	for _, c := range []struct{ name, data, want string }{
		{"fewer", list("9 finishers", ""), `“9 finishers” over 6 lines. Look for the missing lines`},
		{"fewer, said below", list("", "\n28 ran. Thanks to Mo.\n"), `“28 ran. Thanks to Mo.” under 6 lines. Look for the missing lines`},
		{"more", list("5 finishers", ""), `“5 finishers” over 6 lines. Look for a line too many, such as somebody who stands on it twice; or the sheet counts wrong, then there is nothing to do.`},
		{"as many", list("6 finishers", ""), ""},
		{"one did not finish and is not counted", list("5 finishers", "", "DNF"), ""},
		{"one did not start and is counted", list("6 finishers", "", "DNS"), ""},
		{"of another week", list("9 finishers last week", ""), ""},
		{"two numbers", list("9 finishers", "\n6 finishers\n"), ""},
	} {
		d := newDesk(t, map[string]string{"sheets/a.csv": c.data})
		d.want(c.name, d.text("select coalesce(string_agg(read || '. ' || todo, ', '), '') from sheet.problem where kind = 'finishers-differ'"), c.want)
	}
	d := newDesk(t, map[string]string{"sheets/a.csv": "Alder Bank, 3 Jan 2026\n9 finishers\nPos,Name,Time\n1,Jo Lee,20:11\n2,Al Roe,21:12\n9,Cy Dee,25:12\n"})
	d.want("missing places say it already", d.text("select string_agg(kind, ', ') from sheet.problem"), "positions-missing-many")
}
