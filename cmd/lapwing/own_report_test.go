package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A weekly report that Lapwing wrote can be loaded elsewhere: only its tab of results counts, and
// a newer issue takes the place of the older. Where the sheet is that it was made from, it would
// take out the names that are not printed, and is refused.
func TestOwnReportIsLoaded(t *testing.T) {
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": fieldSheet(12), "sheets/alder-bank_2026-01-10.csv": weekLater(fieldSheet(12))})
	must(t, dir, "run")
	must(t, dir, "season")
	at := func(name string) string { return filepath.Join(dir, "reports", name) }
	report := at("alder-bank_2026-01-10.xlsx")
	there := folderWith(t, nil)
	data, err := os.ReadFile(report)
	must0(t, err)
	write(t, there, map[string]string{"from the club.xlsx": string(data)})

	wants(t, must(t, there, "load", filepath.Join(there, "from the club.xlsx")).out, "1 sheet loaded, 12 lines in all", "New course: alder-bank, 5 km")
	wants(t, must(t, there, "sheets", "problems", "--all").out, "It is a weekly report that Lapwing wrote. Its tab Result was read")
	must(t, there, "export", filepath.Join(there, "out"), "--private")
	results, err := os.ReadFile(filepath.Join(there, "out", "results.csv"))
	must0(t, err)
	wants(t, string(results), "2026-01-10")
	if strings.Contains(string(results), "lists") || strings.Count(string(results), "\n") != 13 {
		t.Errorf("other tabs than that of the results were read:\n%s", results)
	}

	refused := func(dir, path string, words ...string) {
		t.Helper()
		o := lapwing(t, dir, "load", path)
		wants(t, o.out+o.errOut, append(words, "is refused")...)
	}
	refused(dir, report, "a weekly report that Lapwing wrote, and of its run, alder-bank 2026-01-10, the sheet alder-bank_2026-01-10.csv is there already", "--kind full")
	refused(there, at("alder-bank_2026-01-10-desk.xlsx"), "wrote for the results desk", "lapwing correct --from")
	season, err := filepath.Glob(at("season_*.xlsx"))
	if err != nil || len(season) == 0 {
		t.Fatalf("no season workbook: %v", err)
	}
	refused(there, season[0], "it is a report that Lapwing wrote (Season")

	// The next issue, of a run whose last finisher was named later.
	must(t, dir, "correct", "alder-bank", "2026-01-10", "12", "--name", "Quilla Sedge", "--yes")
	wants(t, must(t, there, "load", report).out, "1 sheet loaded, 12 lines in all", "new issue")

	// The sheet itself stands over its report, whichever comes first.
	sheet := filepath.Join(dir, "sheets", "alder-bank_2026-01-10.csv")
	wants(t, must(t, there, "load", sheet).out, "1 sheet loaded", "takes the place of")
	both := folderWith(t, nil)
	wants(t, lapwing(t, both, "load", sheet, report).out, "1 sheet loaded", "is refused: it is a weekly report")
}
