package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestReadAgainAsAnotherRun puts a sheet right that was read as of a wrong day:
// withdrawn, then loaded with the date said.
func TestReadAgainAsAnotherRun(t *testing.T) {
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": fieldSheet(12)})
	sheet := filepath.Join(dir, "sheets", "alder-bank_2026-01-03.csv")
	must(t, dir, "load", sheet)
	o := lapwing(t, dir, "load", sheet, "--date", "2026-01-04")
	if o.code != exitFailed {
		t.Errorf("another date for a loaded sheet: exit %d, want 1", o.code)
	}
	wants(t, o.out, "refused", "2026-01-03", "2026-01-04", "sheets withdraw")
	must(t, dir, "sheets", "withdraw", "alder-bank_2026-01-03.csv")
	o = must(t, dir, "load", sheet)
	wants(t, o.out, "withdrawn", "sheets restore")
	must(t, dir, "load", sheet, "--date", "2026-01-04")
	must(t, dir, "check")
	days := map[string]bool{}
	out := filepath.Join(dir, "out")
	must(t, dir, "export", out)
	for _, r := range readCSV(t, filepath.Join(out, "results.csv"))[1:] {
		days[r[3]] = true
	}
	if len(days) != 1 || !days["2026-01-04"] {
		t.Errorf("the results are of %v", days)
	}
	before := export(t, dir)
	must(t, dir, "rebuild")
	sameFiles(t, "made again", before, export(t, dir), 6)
}

// TestCorrectedAnswersWaiting loads a corrected sheet under the name of one
// that waits; the old bytes come back with last week's mail and do not wait
// again.
func TestCorrectedAnswersWaiting(t *testing.T) {
	bad := "Alder Bank results\n\n" + fieldSheet(12)
	dir := folderWith(t, map[string]string{"sheets/results.csv": bad})
	if o := lapwing(t, dir, "run"); o.code != exitFailed {
		t.Fatalf("a sheet without a date: exit %d\n%s", o.code, o.out)
	}
	write(t, dir, map[string]string{"sheets/results.csv": strings.Replace(bad, "results", "results, 3 January 2026", 1)})
	must(t, dir, "run")
	write(t, dir, map[string]string{"sheets/old/results.csv": bad})
	for range 2 {
		o := must(t, dir, "run")
		wants(t, o.out, "withdrawn")
	}
	must(t, dir, "check")
}

// TestLinks reads an inbox that is a link to a folder, with a link to a sheet
// and a link that leads back to where it came from.
func TestLinks(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"elsewhere/alder-bank_2026-01-03.csv":      fieldSheet(12),
		"elsewhere/more/alder-bank_2026-01-10.csv": fieldSheet(14),
		"third/alder-bank_2026-01-17.csv":          fieldSheet(16),
	})
	for link, to := range map[string]string{
		"sheets":                               "elsewhere",
		"elsewhere/alder-bank_2026-01-17.csv":  "../third/alder-bank_2026-01-17.csv",
		"elsewhere/alder-bank_2026-01-24.csv":  "../nowhere.csv",
		"elsewhere/more/round in a circle.csv": "../more",
	} {
		if err := os.Symlink(to, filepath.Join(dir, filepath.FromSlash(link))); err != nil {
			t.Skipf("SKIPPED: no links here (%v)", err)
		}
	}
	o := lapwing(t, dir, "load", filepath.Join(dir, "sheets"))
	wants(t, o.out, "3 sheets loaded, 42 lines", "alder-bank_2026-01-24.csv is refused: it is gone")
	if o.code != exitFailed {
		t.Errorf("exit %d, want 1: a link leads nowhere", o.code)
	}
}
