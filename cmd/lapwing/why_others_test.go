package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestSeasonAndStandingSayWhy corrects and loads between issues of a season's
// workbook, a club's, and a runner's workbook and page: each names the causes
// that concern it, once, and what is for everybody names nobody.
func TestSeasonAndStandingSayWhy(t *testing.T) {
	dir := twoRuns(t)
	report := func(name string) string { return filepath.Join(dir, "reports", name) }
	season, tarn := report("season_2026_alder-bank.xlsx"), report("season_2026_Tarn-Club.xlsx")
	write(t, dir, map[string]string{"sheets/tarn-end_2026-01-11.csv": "Pos,Name,Time,Age Group,Sex,Club\n1,Una Marl,21:00,W40,W,Tarn Club\n2,Vic Marl,22:00,M40,M,Tarn Club\n"})
	must(t, dir, "run")
	issue := func() (dan string) {
		t.Helper()
		must(t, dir, "season", "--course", "alder-bank")
		must(t, dir, "season", "--club", "Tarn Club")
		must(t, dir, "standing", "Dan Moss", "--xlsx", "--publish")
		all, err := filepath.Glob(report("standing_R*.xlsx"))
		if err != nil || len(all) != 1 {
			t.Fatalf("workbooks %v, %v", all, err)
		}
		return all[0]
	}
	dan := issue()
	page := strings.Replace(strings.TrimSuffix(dan, ".xlsx"), "standing_", "standing-page_", 1) + ".html"
	text := func() string {
		b, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	for _, p := range []string{season, tarn, dan} {
		if why := whyOf(t, p); len(why) != 0 {
			t.Errorf("the first issue %s says why: %q", p, why)
		}
	}
	if strings.Contains(text(), "Issue") {
		t.Error("the first page speaks of issues")
	}

	// Dan is fourth: a decision about him, one about somebody else, and a sheet
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "4", "--time", "20:25", "--by", "Nell Overbeck", "--yes")
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-10", "9", "--name", "Quilla Sedge", "--by", "Nell Overbeck", "--yes")
	write(t, dir, map[string]string{"sheets/alder-bank_2026-01-17.csv": fieldSheet(12)})
	must(t, dir, "run")
	issue()
	why := whyOf(t, season)
	oneReason(t, why, "Alder Bank, 3 January 2026: place 4, time corrected to 20:25 on ")
	oneReason(t, why, "Alder Bank, 10 January 2026: place 9, name corrected on ")
	oneReason(t, why, "Alder Bank, 17 January 2026: a sheet was loaded on ")
	if all := strings.Join(why, "\n"); len(why) != 3 || strings.Contains(all, "Quilla") || strings.Contains(all, "Nell") || strings.Contains(all, ".csv") {
		t.Errorf("season: %q", why)
	}
	why = whyOf(t, dan)
	oneReason(t, why, "Alder Bank, 3 January 2026: place 4, time corrected to 20:25 (decision 1, ", "by Nell Overbeck")
	oneReason(t, why, "Alder Bank, 17 January 2026: the sheet alder-bank_2026-01-17.csv was loaded on ")
	if len(why) != 2 {
		t.Errorf("workbook of a runner: %q", why)
	}
	for _, want := range []string{"Issue 2.", "Why: Alder Bank, 3 January 2026: place 4, time corrected to 20:25 on ", "Why: Alder Bank, 17 January 2026: a sheet was loaded on "} {
		if strings.Count(text(), want) != 1 {
			t.Errorf("the page does not say %q once", want)
		}
	}
	if strings.Contains(text(), "Nell") || strings.Contains(text(), "Quilla") {
		t.Error("the page says who decided")
	}

	// what is decided about a person, and nothing else: the season only counts it
	must(t, dir, "correct", "--no-reports", "--person", "Ben Moss", "--print-name", "Benedict Moss", "--by", "Nell Overbeck", "--yes")
	must(t, dir, "correct", "--no-reports", "tarn-end", "2026-01-11", "1", "--disqualify", "--yes")
	issue()
	oneReason(t, whyOf(t, tarn), "Tarn End, 11 January 2026: place 1, entry corrected on ")
	if why := whyOf(t, season); len(why) != 1 || why[0] != "1 decision about people of this season." {
		t.Errorf("season: %q", why)
	}
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-17", "2", "--time", "18:59", "--yes") // Ben is in Dan's group
	issue()
	oneReason(t, whyOf(t, dan), " made about other people; ")
}
