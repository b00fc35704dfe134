package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// whyOf reads the reasons that a workbook gives for its own issue.
func whyOf(t *testing.T, path ...string) []string {
	t.Helper()
	f, err := excelize.OpenFile(filepath.Join(path...))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows("Notes")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, r := range rows {
		if len(r) > 1 && r[0] == "Changed" && strings.HasPrefix(r[1], "Why: ") {
			out = append(out, strings.TrimPrefix(r[1], "Why: "))
		}
	}
	return out
}

// oneReason finds the only reason that has all the words.
func oneReason(t *testing.T, why []string, words ...string) {
	t.Helper()
	n := 0
	for _, w := range why {
		if !slices.ContainsFunc(words, func(x string) bool { return !strings.Contains(w, x) }) {
			n++
		}
	}
	if n != 1 {
		t.Errorf("%d reasons with %q, want 1:\n%s", n, words, strings.Join(why, "\n"))
	}
}

// TestNewIssueSaysWhy corrects, loads and withdraws between issues: each new
// issue names every cause in a line, the public one without names.
func TestNewIssueSaysWhy(t *testing.T) {
	dir := twoRuns(t)
	public := filepath.Join(dir, "reports", "alder-bank_2026-01-03.xlsx")
	desk := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk.xlsx")
	if why := whyOf(t, public); len(why) != 0 {
		t.Fatalf("the first issue says why: %q", why)
	}
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "3", "--time", "20:05", "--by", "Nell Overbeck", "--why", "read from the film", "--yes")
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "5", "--name", "Quilla Sedge", "--by", "Nell Overbeck", "--yes")
	must(t, dir, "run")
	pub, dsk := whyOf(t, public), whyOf(t, desk)
	oneReason(t, pub, "place 3, time corrected to 20:05 on ")
	oneReason(t, pub, "place 5, name corrected on ")
	oneReason(t, dsk, "place 3, time corrected to 20:05 (decision 1, ", ", by Nell Overbeck)")
	oneReason(t, dsk, "place 5, name corrected (decision 2, ", ", by Nell Overbeck)")
	if len(pub) != 2 || len(dsk) != 2 || strings.Contains(strings.Join(pub, ""), "Nell") || strings.Contains(strings.Join(dsk, ""), "Quilla") {
		t.Errorf("public %q, desk %q", pub, dsk)
	}
	// the run a week later tells of the same person
	later := whyOf(t, dir, "reports", "alder-bank_2026-01-10-desk.xlsx")
	oneReason(t, later, "of somebody who is in this run, place 3, time corrected to 20:05 (decision 1, ")

	// what was said before is not said again; a sheet that comes is named
	write(t, dir, map[string]string{"sheets/alder-bank_2026-01-03 corrected.csv": strings.Replace(fieldSheet(24), "Dan Moss", "Dan Mossop", 1)})
	must(t, dir, "run")
	pub, dsk = whyOf(t, public), whyOf(t, desk)
	oneReason(t, pub, "a sheet of this run was loaded on ")
	oneReason(t, dsk, "the sheet alder-bank_2026-01-03 corrected.csv was loaded on ")
	if len(pub) != 1 || len(dsk) != 1 {
		t.Errorf("public %q, desk %q", pub, dsk)
	}

	// withdrawn, and a decision taken back
	must(t, dir, "sheets", "withdraw", "alder-bank_2026-01-03 corrected.csv")
	must(t, dir, "correct", "--no-reports", "--undo", "2", "--yes")
	// made and taken back in between: nothing to tell
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "7", "--time", "22:01", "--yes")
	must(t, dir, "correct", "--no-reports", "--undo", "4", "--yes")
	must(t, dir, "run")
	dsk = whyOf(t, desk)
	oneReason(t, dsk, "corrected.csv was withdrawn")
	oneReason(t, dsk, "place 5, name corrected, decision 2, taken back (decision 3, ")
	if len(dsk) != 2 {
		t.Errorf("desk %q", dsk)
	}

	// the same archive says the same: with the database made again, and with
	// the reports written again
	before := reported(t, dir)
	must(t, dir, "rebuild")
	for _, p := range []string{public, desk} {
		if err := os.Remove(p); err != nil {
			t.Fatal(err)
		}
	}
	must(t, dir, "weekly", "--course", "alder-bank", "--date", "2026-01-03")
	sameFiles(t, "reports written again after a rebuild", before, reported(t, dir), 8)
}

// TestRegisterOfAnEarlierVersion has no columns for the causes: its issues go
// on, and the next one but one names them.
func TestRegisterOfAnEarlierVersion(t *testing.T) {
	dir := twoRuns(t)
	path := filepath.Join(dir, "archive", "written.csv")
	now, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(string(now), "\n")
	for i, l := range lines {
		if f := strings.Split(strings.TrimSuffix(l, "\n"), ","); len(f) == 9 {
			lines[i] = strings.Join(f[:6], ",") + "\n"
		}
	}
	if err := os.WriteFile(path, []byte(strings.Join(lines, "")), 0o644); err != nil {
		t.Fatal(err)
	}
	desk := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk.xlsx")
	for i, want := range []string{"worked out again from the archive", "place 3, time corrected to 20:06 (decision 2, "} {
		must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "3", "--time", []string{"20:05", "20:06"}[i], "--yes")
		must(t, dir, "run")
		oneReason(t, whyOf(t, desk), want)
	}
	if now, err = os.ReadFile(path); err != nil || !strings.HasPrefix(string(now), "report,issue,file,sha256,content,changes,desk,decision,ledger\n") {
		t.Errorf("the register's heading is %q (%v)", strings.SplitN(string(now), "\n", 2)[0], err)
	}
}
