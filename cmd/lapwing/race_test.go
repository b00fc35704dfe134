package main

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

// Two races every week: somebody says once, with one command, what the second sheet of a
// day is; the sheets of the weeks before and after go by their names. Where a name
// changes it is asked again.
func TestSecondRaceOfADay(t *testing.T) {
	names := []string{"Ana Alder", "Bea Birch", "Cora Cole", "Dee Dale", "Eve Elm", "Fay Fern"}
	sheetOf := func(week, start int) string {
		var b strings.Builder
		b.WriteString("Pos,Name,Time\n")
		for i, n := range names {
			s := start + (start/40)*i + (week*7+i*5)%13
			fmt.Fprintf(&b, "%d,%s,%d:%02d\n", i+1, n, s/60, s%60)
		}
		return b.String()
	}
	for _, c := range []struct{ name, first, second, answer, became string }{
		{"morning and evening", "alder-bank %s am.csv", "alder-bank %s pm.csv", "--session 2", "it was taken for another race of the day, session 2."},
		{"by number", "week 4 race 1 alder-bank %s.csv", "week 4 race 2 alder-bank %s.csv", "--session 2", "another race of the day, session 2."},
		{"a shorter one", "alder-bank %s.csv", "alder-bank %s youngsters.csv", "--distance=4 km", "another race of the day, 4 km."},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := folderWith(t, nil)
			week := func(n int, second string) string {
				day := fmt.Sprintf("2026-01-%02d", 3+7*n)
				file := fmt.Sprintf(second, day)
				write(t, dir, map[string]string{"sheets/" + fmt.Sprintf(c.first, day): sheetOf(n, 1200), "sheets/" + file: sheetOf(n, 1960)})
				return file
			}
			week(0, c.second)
			asked := week(1, c.second)
			o := must(t, dir, "run")
			if n := strings.Count(o.out, "Which run is this?"); n != 2 {
				t.Fatalf("%d questions, want 2:\n%s", n, o.out)
			}
			wants(t, o.out, "if it is another race of that day; sheets with such a name are taken so from then on:", asked+`" --session 2`)
			o = must(t, dir, append([]string{"load", filepath.Join(dir, "sheets", asked)}, strings.Fields(strings.Replace(c.answer, "=4 km", "=4km", 1))...)...)
			wants(t, strings.ReplaceAll(o.out, "4km", "4 km"), "2 sheets loaded, 12 lines", c.became, asked)
			after := week(2, c.second)
			o = must(t, dir, "run")
			wants(t, strings.ReplaceAll(o.out, "4km", "4 km"), "2 sheets loaded", after+": it was taken for another race", "Nothing needs a look.")
			wants(t, must(t, dir, "sheets", "explain", after+":3").out, "another race of the day")
			if o := must(t, dir, "run"); !strings.Contains(o.out, "0 sheets loaded") {
				t.Errorf("loaded again:\n%s", o.out)
			}
			must(t, dir, "check")
			before := export(t, dir)
			must(t, dir, "rebuild")
			sameFiles(t, "made again", before, export(t, dir), 6)
			week(3, "alder-bank %s second.csv")
			o = must(t, dir, "run")
			wants(t, o.out, "Which run is this?")
			if strings.Contains(c.answer, "session") {
				wants(t, o.out, "if it is another race of that day, as on 17 January 2026;")
			}
		})
	}
}
