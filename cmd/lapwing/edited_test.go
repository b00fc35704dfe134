package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestEditedReport edits a report, then changes its run: the edited file stays
// as it is for ever, the new issue goes beside it.
func TestEditedReport(t *testing.T) {
	dir := twoRuns(t)
	board := filepath.Join(dir, "reports", "alder-bank_2026-01-03.xlsx")
	mine := []byte("a thank-you that somebody typed in")
	if err := os.WriteFile(board, mine, 0o644); err != nil {
		t.Fatal(err)
	}
	other, err := os.ReadFile(filepath.Join(dir, "reports", "alder-bank_2026-01-10.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	untouched := func(when string) {
		t.Helper()
		now, err := os.ReadFile(board)
		if err != nil || string(now) != string(mine) {
			t.Fatalf("%s the edited report was overwritten (%v)", when, err)
		}
	}
	for _, line := range []string{"weekly --date 2026-01-03 --course alder-bank", "rebuild", "run"} {
		must(t, dir, strings.Fields(line)...)
		untouched("after lapwing " + line)
	}
	// a new issue of the sheet
	write(t, dir, map[string]string{"sheets/alder-bank_2026-01-03 corrected.csv": strings.Replace(fieldSheet(24), "Ada Moss", "Ada Mosse", 1)})
	must(t, dir, "run")
	untouched("after a new issue")
	second := filepath.Join(dir, "reports", "alder-bank_2026-01-03 (issue 2).xlsx")
	if !exists(second) {
		t.Fatalf("no issue 2 beside the edited report: %v", differences(reported(t, dir), nil))
	}
	if now, err := os.ReadFile(filepath.Join(dir, "reports", "alder-bank_2026-01-10.xlsx")); err != nil || string(now) == "" || len(now) == 0 {
		t.Fatal(err)
	} else if string(now) != string(other) {
		t.Log("the later run's report was issued again too: it told of the earlier one")
	}
	// the desk's workbook nobody had edited: replaced in place
	if exists(dir, "reports", "alder-bank_2026-01-03-desk (issue 2).xlsx") {
		t.Error("the desk workbook, which nobody edited, was not replaced in place")
	}
	before := reported(t, dir)
	o := must(t, dir, "run")
	wants(t, o.out, "Nothing has changed")
	sameFiles(t, "reports after another run", before, reported(t, dir), 9)
	// somebody edits issue 2 as well, and the sheet is withdrawn
	if err := os.WriteFile(second, mine, 0o644); err != nil {
		t.Fatal(err)
	}
	must(t, dir, "sheets", "withdraw", "alder-bank_2026-01-03 corrected.csv")
	must(t, dir, "run")
	untouched("after the withdrawal")
	if now, err := os.ReadFile(second); err != nil || string(now) != string(mine) {
		t.Errorf("issue 2, edited, was overwritten (%v)", err)
	}
	if !exists(dir, "reports", "alder-bank_2026-01-03 (issue 3).xlsx") {
		t.Errorf("no issue 3: %v", differences(reported(t, dir), nil))
	}
}

// TestReportInTheWay finds something that can't be replaced where a report
// belongs, as when another program has it open and the system locks it.
func TestReportInTheWay(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": fieldSheet(24),
		"sheets/alder-bank_2026-01-10.csv": fieldSheet(30),
	})
	name := "alder-bank_2026-01-10-desk.xlsx"
	if err := os.MkdirAll(filepath.Join(dir, "reports", name, "in the way"), 0o755); err != nil {
		t.Fatal(err)
	}
	o := lapwing(t, dir, "run")
	if o.code != exitFailed {
		t.Errorf("exit %d, want 1\n%s", o.code, o.out)
	}
	wants(t, o.errOut, name)
	if left := leftovers(t, filepath.Join(dir, "reports")); len(left) > 0 {
		t.Errorf("left over: %v", left)
	}
	if err := os.RemoveAll(filepath.Join(dir, "reports", name)); err != nil {
		t.Fatal(err)
	}
	must(t, dir, "run")
	if n := len(reported(t, dir)); n != 8 {
		t.Errorf("%d report files, want 8", n)
	}
}
