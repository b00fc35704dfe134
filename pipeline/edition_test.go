package pipeline

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

func TestEditionOf(t *testing.T) {
	for _, c := range []struct {
		older, newer string
		tells        bool
	}{
		{"3 May provisional.csv", "3 May final.csv", true},
		{"3 May prov.csv", "3 May.csv", true},
		{"3 May.csv", "3 May (corrected).csv", true},
		{"3 May.csv", "3 May v2.csv", true},
		{"3 May v2.csv", "3 May v3.csv", true},
		{"3 May v9.csv", "3 May v10.csv", true},
		{"3 May.csv", "3 May rev 2.xlsx", true},
		{"3 May draft 1.csv", "3 May draft 2.csv", true},
		{"3 May not final.csv", "3 May.csv", true},
		{"3 May final draft.csv", "3 May final.csv", true},
		{"3. Mai vorläufig.csv", "3. Mai endgültig.csv", true},
		{"3 May v1.csv", "3 May.csv", false},
		{"3 May (1).csv", "3 May.csv", false},
		{"final 3 May.csv", "corrected 3 May.csv", false},
		{"old versions/3 May.csv", "3 May.csv", true},
		{"final/3 May.csv", "3 May.csv", false}, // any other folder says nothing
	} {
		older, newer := editionOf(c.older, ""), editionOf(c.newer, "")
		if older.before(newer) != c.tells || newer.before(older) {
			t.Errorf("%s (%+v) before %s (%+v): %v, the other way round %v", c.older, older, c.newer, newer, older.before(newer), newer.before(older))
		}
	}
}

func TestNameLess(t *testing.T) {
	for _, c := range [][2]string{{"3 May.csv", "3 May (corrected).csv"}, {"a/week2.csv", "a/week10.csv"}, {"3 May.csv", "3 May.xlsx"}, {"week 2.csv", "week 2 b.csv"}} {
		if !nameLess(c[0], c[1]) || nameLess(c[1], c[0]) {
			t.Errorf("%s is not before %s", c[0], c[1])
		}
	}
}

// What stands of several sheets of one run does not depend on the order in which
// they were loaded, where their names tell their order; and a list of some of the
// field takes nobody else out.
func TestIssuesOfOneRun(t *testing.T) {
	const title = "Garrow Moss 4 April 2026"
	sexes := func(n int) string { return []string{"M", "F", "M"}[n%3] }
	field := fieldSheet(title, 0, 24, 1100, 9, ",Sex", sexes)
	lines := strings.Split(strings.TrimSpace(field), "\n")
	only := func(sex string) string {
		out := append([]string(nil), lines[:2]...)
		for _, l := range lines[2:] {
			if strings.HasSuffix(l, ","+sex) {
				_, rest, _ := strings.Cut(l, ",")
				out = append(out, fmt.Sprintf("%d,%s", len(out)-1, rest))
			}
		}
		return strings.Join(out, "\n") + "\n"
	}
	less := func(n int) string { return strings.Join(lines[:len(lines)-n], "\n") + "\n" }
	tenths := strings.NewReplacer(",M\n", ".4,M\n", ",F\n", ".7,F\n").Replace(field)
	tenths = strings.ReplaceAll(strings.ReplaceAll(tenths, ",M.", "."), ",F.", ".")
	walkers := fieldSheet(title, 40, 46, 2500, 30, "", nil)
	initials := strings.NewReplacer("Ana ", "A. ", "Bea ", "B. ", "Cora ", "C. ", "Dan ", "D. ", "Eli ", "E. ", "Fay ", "F. ", "Gus ", "G. ", "Hal ", "H. ").Replace(less(14))
	type loaded struct{ name, text string }
	for _, c := range []struct {
		name    string
		sheets  []loaded // loaded one after the other
		stands  string   // whose lines count
		counted int
	}{
		{"the draft comes late", []loaded{{"4 April final.csv", field}, {"4 April draft.csv", strings.Replace(field, "Ana Alder", "Unknown", 1)}}, "4 April final.csv 24", 24},
		{"the second version comes first", []loaded{{"4 April v2.csv", field}, {"4 April.csv", less(1)}}, "4 April v2.csv 24", 24},
		{"the last is taken out", []loaded{{"4 April.csv", field}, {"4 April corrected.csv", less(1)}}, "4 April corrected.csv 23", 23},
		{"saved over itself without the last", []loaded{{"4 April.csv", field}, {"4 April.csv", less(1)}}, "4 April.csv 23", 23},
		{"the women, places anew", []loaded{{"4 April.csv", field}, {"4 April women.csv", only("F")}}, "4 April.csv 24", 24},
		{"the men, two in three, places anew", []loaded{{"4 April.csv", field}, {"4 April men.csv", only("M")}}, "4 April.csv 24", 24},
		{"the women first", []loaded{{"4 April women.csv", only("F")}, {"4 April.csv", field}}, "4 April.csv 24", 24},
		{"walkers on a sheet of their own", []loaded{{"4 April.csv", field}, {"4 April walkers.csv", walkers}}, "4 April walkers.csv 6; 4 April.csv 24", 30},
		{"two age groups", []loaded{{"4 April U13 girls.csv", field}, {"4 April U15 girls.csv", walkers}}, "4 April U13 girls.csv 24; 4 April U15 girls.csv 6", 30},
		{"others without a word of it", []loaded{{"4 April.csv", field}, {"4 April b.csv", walkers}}, "4 April.csv 24", 24},
		{"the same in whole seconds", []loaded{{"4 April.csv", tenths}, {"season.csv", field}}, "4 April.csv 24", 24},
		{"the first ten with initials, in whole seconds", []loaded{{"4 April.csv", tenths}, {"newsletter.csv", initials}}, "4 April.csv 24", 24},
		{"the first ten with initials, loaded first", []loaded{{"newsletter.csv", initials}, {"4 April.csv", tenths}}, "4 April.csv 24", 24},
		{"the same in tenths", []loaded{{"4 April.csv", field}, {"timing.csv", tenths}}, "timing.csv 24", 24},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			for _, s := range c.sheets {
				writeSheet(t, dir, "in/"+s.name, s.text)
				loadForTest(t, pl, filepath.Join(dir, "in", s.name))
			}
			var stands string
			n := 0
			ctx := context.Background()
			if err := pl.DB.Get(ctx, "select string_agg(s, '; ' order by s) from (select sheet || ' ' || count(*) s from main.results where status in ('ok', 'unnamed') group by sheet)", &stands); err != nil {
				t.Fatal(err)
			}
			if err := pl.DB.Get(ctx, "select coalesce(sum(finishers), 0)::integer from main.runs", &n); err != nil {
				t.Fatal(err)
			}
			if stands != c.stands || n != c.counted {
				t.Errorf("%s counts, %d finishers; want %s", stands, n, c.stands)
			}
		})
	}
}
