package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

func TestCorrect(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": fieldSheet(12),
		"sheets/alder-bank_2026-01-10.csv": strings.Replace(weekLater(fieldSheet(12)), "Cora Moss", "Unknown", 1),
	})
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	decisions := filepath.Join(dir, "archive", "decisions.csv")
	claim := []string{"correct", "Alder Bank", "2026-01-10", "3", "--name", "Cora Moss", "--why", "phoned", "--by", "Pat"}

	o := lapwing(t, dir, claim...)
	if o.code != exitFailed || exists(decisions) {
		t.Errorf("without --yes: exit %d, kept %v", o.code, exists(decisions))
	}
	wants(t, o.out, "This changes:", "whose result nobody → Cora Moss (R", "runs in all 1 → 2", "--yes", "Nothing was kept.")

	o = must(t, dir, append(claim, "--yes")...)
	wants(t, o.out, "Kept as decision 1.", "lapwing correct --undo 1")
	data, err := os.ReadFile(decisions)
	if err != nil {
		t.Fatal(err)
	}
	wants(t, string(data), "Pat,claim,", ",Cora Moss,phoned")

	o = must(t, dir, "correct", "--list")
	wants(t, o.out, "alder-bank_2026-01-10.csv:4", "claim Cora Moss", "in force", "phoned")
	o = must(t, dir, "--json", "correct", "--no-reports", "--undo", "1", "--yes")
	var got struct {
		Kept    bool
		Changes []struct{ What, Before, After string }
	}
	if err := json.Unmarshal([]byte(o.out), &got); err != nil || !got.Kept || len(got.Changes) == 0 {
		t.Errorf("--json: %v %+v\n%s", err, got, o.out)
	}
	wants(t, must(t, dir, "correct", "--list").out, "taken back")

	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"correct"}, exitUsage, "say which run"},
		{[]string{"correct", "alder-bank", "2026-01-03"}, exitUsage, "say which place"},
		{[]string{"correct", "alder-bank", "2026-01-03", "first"}, exitUsage, "number on the sheet"},
		{[]string{"correct", "alder-bank", "2026-01-03", "1", "--disqualify", "--reinstate"}, exitUsage, "only one"},
		{[]string{"correct", "alder-bank", "2026-01-03", "99", "--time", "20:00"}, exitFailed, "has no place 99"},
		{[]string{"correct", "--hide", "Otto Quillfeather"}, exitFailed, "nobody called"},
		{[]string{"correct", "alder-bank", "2026-01-03", "1", "--hide", "R1"}, exitUsage, "without a course"},
	} {
		o := lapwing(t, dir, c.args...)
		if o.code != c.code || !strings.Contains(o.errOut, c.says) {
			t.Errorf("lapwing %s: exit %d, want %d\n%s", strings.Join(c.args, " "), o.code, c.code, o.errOut)
		}
	}
}

// fillIn writes into the boxes of a desk workbook: by name of the line, heading
// and text.
func fillIn(t *testing.T, path string, boxes map[string]map[string]string) {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	filled := fillTab(t, f, "Lines", "Right time", "Name", boxes) + fillTab(t, f, "To check", "Answer", "What", boxes)
	if filled == 0 {
		t.Fatalf("no box of %s was filled in", path)
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
}

// fillTab writes into the boxes of a tab: head is a heading that tells the row
// of headings, key the column that tells the rows.
func fillTab(t *testing.T, f *excelize.File, tab, head, key string, boxes map[string]map[string]string) (filled int) {
	t.Helper()
	rows, err := f.GetRows(tab)
	if err != nil {
		t.Fatal(err)
	}
	column := map[string]int{}
	for i, r := range rows {
		if slices.Contains(r, head) {
			for c, cell := range r {
				column[cell] = c + 1
			}
			continue
		}
		if len(column) == 0 || len(r) < column[key] {
			continue
		}
		for head, text := range boxes[r[column[key]-1]] {
			if column[head] == 0 {
				continue // of the other tab
			}
			cell, err := excelize.CoordinatesToCellName(column[head], i+1)
			if err != nil {
				t.Fatalf("%s: %v", head, err)
			}
			if err := f.SetCellStr(tab, cell, text); err != nil {
				t.Fatal(err)
			}
			filled++
		}
	}
	return filled
}

// The desk's workbook as a form: what is filled in is tried as a whole, kept,
// and known when the workbook is read again. A stale one is refused.
func TestDeskWorkbookReadBack(t *testing.T) {
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": fieldSheet(12)})
	must(t, dir, "run")
	book := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk.xlsx")
	fillIn(t, book, map[string]map[string]string{
		"Cora Moss": {"Right time": "20:05", "Right club": "Fell & Wick", "Why": "watch 2"},
		"Dan Moss":  {"Took part as": "pacer"},
		"Lena Moss": {"Strike out": "not a finisher"},
		"Kit Moss":  {"Right place": "12"},
	})
	o := lapwing(t, dir, "correct", "--no-reports", "--from", book)
	wants(t, o.out, "Cora Moss (R3)", "time 20:00 → 20:05", "club Alder Harriers → Fell & Wick", "taking part as runner → pacer", "status ok → repeat", "place 11 → 12", "Nothing was kept")
	o = must(t, dir, "correct", "--no-reports", "--from", book, "--yes", "--by", "Pat")
	wants(t, o.out, "Kept as decisions 1, 2, 3, 4, 5.")
	o = must(t, dir, "correct", "--no-reports", "--from", book)
	wants(t, o.out, "settled already")
	wants(t, must(t, dir, "correct", "--list").out, "time 20:05", "watch 2", "status not a finisher", "place 12")
	wants(t, must(t, dir, "sheets", "explain", "alder-bank_2026-01-03.csv:12").out, "Place: 12")
	must(t, dir, "check")

	fresh := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk (issue 2).xlsx")
	must(t, dir, "run")
	fillIn(t, fresh, map[string]map[string]string{"Gwen Moss": {"Right name": "Greta Moss"}})
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "7", "--name", "Gwendolen Reed", "--someone-new", "--yes")
	if o := lapwing(t, dir, "correct", "--no-reports", "--from", fresh, "--yes"); o.code != exitFailed || !strings.Contains(o.errOut, "now names Gwendolen Reed") {
		t.Errorf("a stale workbook: exit %d\n%s%s", o.code, o.out, o.errOut)
	}
	if o := lapwing(t, dir, "correct", "--no-reports", "--from", filepath.Join(dir, "sheets", "alder-bank_2026-01-03.csv")); o.code != exitFailed {
		t.Errorf("a sheet instead of a workbook: exit %d", o.code)
	}
}

// The rarer boxes and the answers of the first page: exchanged places, records,
// what was before the sheets, two names of a club, the state of the run.
func TestDeskWorkbookAnswers(t *testing.T) {
	week := func(lines ...string) string {
		return "Pos,Name,Time,Age Group,Sex,Club\n" + strings.Join(lines, "\n") + "\n"
	}
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": week("1,Ada Moss,20:00,W40,W,Tarn Harriers", "2,Ben Reed,21:00,M45,M,Wick Runners", "3,Cora Vale,25:00,W35,W,Tarn Harriers", "4,Dan Thorne,26:00,M50,M,"),
		"sheets/alder-bank_2026-01-10.csv": week("1,Ada Moss,19:50,W40,W,Tarn Harriers", "2,Ben Reed,20:50,M45,M,Wick Runners", "3,Cora Vale,24:50,W35,W,Tarn H.", "4,Dan Thorne,25:50,M50,M,"),
		"archive/history.csv":              "fact,course,name,sex,age_group,distance_m,finishes,time,date\nbegan,alder-bank,,,,,,,2026-01-03\n",
	})
	must(t, dir, "run")
	book := filepath.Join(dir, "reports", "alder-bank_2026-01-10-desk.xlsx")
	wants(t, cells(t, book, "To check"), "Fastest recorded here, to be confirmed (women, all ages)", "club: Tarn H.", "state of the run")
	boxes := map[string]map[string]string{
		"Cora Vale": {"Names exchanged with place": "4", "Why": "swapped tokens"},
		"Ben Reed":  {"Runs before the sheets": "98", "Best before the sheets": "20:40"},
		"Fastest recorded here, to be confirmed (women, all ages)": {"Answer": "confirmed"},
		"club: Tarn H.":    {"Answer": "yes"},
		"state of the run": {"Answer": "short by 120 m"},
	}
	fillIn(t, book, boxes)
	o := must(t, dir, "correct", "--no-reports", "--from", book, "--yes")
	wants(t, o.out, "whose result Cora Vale (R3) → Dan Thorne (R4)", "milestone none → 100", "as a record not confirmed → confirmed",
		"club of 1 results Tarn H. → Tarn Harriers", "the run as before → short by 120 m", "Kept as decisions 1, 2, 3, 4, 5, 6.")
	wants(t, must(t, dir, "correct", "--no-reports", "--from", book).out, "settled already")
	must(t, dir, "check")
	must(t, dir, "correct", "--no-reports", "--undo", "6", "--yes") // the state
	o = must(t, dir, "run")
	wants(t, o.out, "file")
	public := filepath.Join(dir, "reports", "alder-bank_2026-01-10.xlsx")
	if got := cells(t, public, "Lists"); !strings.Contains(got, "women, all ages, confirmed") {
		t.Errorf("the confirmed record is not shown as confirmed:\n%s", got)
	}
	fresh := filepath.Join(dir, "reports", "alder-bank_2026-01-10-desk (issue 2).xlsx")
	if _, err := os.Stat(fresh); err != nil {
		fresh = filepath.Join(dir, "reports", "alder-bank_2026-01-10-desk (issue 3).xlsx")
	}
	if got := cells(t, fresh, "To check"); strings.Contains(got, "(women, all ages)") || strings.Contains(got, "club: Tarn H.") {
		t.Errorf("what is settled is asked again:\n%s", got)
	}
	for answer, says := range map[string]string{"perhaps": "is not one of: confirmed, void", "": ""} {
		if answer == "" {
			continue
		}
		other := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk.xlsx")
		fillIn(t, other, map[string]map[string]string{"state of the run": {"Answer": answer}})
		if o := lapwing(t, dir, "correct", "--no-reports", "--from", other); o.code != exitFailed || !strings.Contains(o.errOut, "state \"perhaps\"") {
			t.Errorf("%s: exit %d, want %q\n%s", answer, o.code, says, o.errOut)
		}
	}
}

// A desk workbook that LibreOffice has opened and saved is read as well.
func TestDeskWorkbookSavedByLibreOffice(t *testing.T) {
	office, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("SKIPPED: LibreOffice is not installed; this test did not run")
	}
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": fieldSheet(12)})
	must(t, dir, "run")
	book := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk.xlsx")
	fillIn(t, book, map[string]map[string]string{
		"Cora Moss":        {"Right time": "20:05", "Why": "watch 2"},
		"Dan Moss":         {"Took part as": "pacer"},
		"Kit Moss":         {"Right place": "12"},
		"state of the run": {"Answer": "misdirected"},
	})
	out := t.TempDir()
	c := exec.Command(office, "-env:UserInstallation=file://"+t.TempDir(), "--headless", "--convert-to", "xlsx", "--outdir", out, book)
	if said, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	o := must(t, dir, "correct", "--no-reports", "--from", filepath.Join(out, filepath.Base(book)), "--yes")
	wants(t, o.out, "time 20:00 → 20:05", "taking part as runner → pacer", "place 11 → 12", "the run as before → misdirected", "Kept as decisions 1, 2, 3, 4.")
}

// A line that stands twice for one person is brought back by hand.
func TestReinstateOneWhoStandsTwice(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": "Pos,Number,Name,Time\n1,11,Ben Reed,20:10\n2,12,Ada Moss,24:50\n3,12,Ada Moss,26:10\n4,14,Cora Vale,27:00\n",
	})
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	states := func() string {
		out := filepath.Join(t.TempDir(), "out")
		must(t, dir, "export", out, "--private")
		var s []string
		for _, r := range readCSV(t, filepath.Join(out, "results.csv"))[1:] {
			if r[14+1] == "Ada Moss" {
				s = append(s, r[4]+" "+r[10]+" "+r[5])
			}
		}
		return strings.Join(s, "; ")
	}
	if got := states(); !strings.HasPrefix(got, "2 ok") || !strings.Contains(got, "3 doubtful") {
		t.Fatalf("at first: %s", got)
	}
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "3", "--reinstate", "--yes")
	if got := states(); !strings.HasPrefix(got, "2 doubtful") || !strings.Contains(got, "3 ok") {
		t.Errorf("the third place is hers: %s", got)
	}
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "2", "--reinstate", "--yes")
	got := strings.Split(states(), "; ")
	if len(got) != 2 || !strings.HasPrefix(got[0], "2 ok R") || !strings.HasPrefix(got[1], "3 ok R") || got[0][5:] == got[1][5:] {
		t.Errorf("two people of one name and number: %q", got)
	}
	must(t, dir, "check")
}

// The reports of a run whose sheet is withdrawn say so, with the reason; loaded
// again, they are issued again.
func TestReportsOfAWithdrawnRun(t *testing.T) {
	dir := twoRuns(t)
	must(t, dir, "run")
	must(t, dir, "sheets", "withdraw", "alder-bank_2026-01-10.csv")
	o := must(t, dir, "run")
	wants(t, o.out, "no sheet stands any more", "alder-bank_2026-01-10.csv was withdrawn", "take down")
	book := filepath.Join(dir, "reports", "alder-bank_2026-01-10.xlsx")
	wants(t, cells(t, book, "Withdrawn"), "has been withdrawn", "alder-bank_2026-01-10.csv")
	text, err := os.ReadFile(filepath.Join(dir, "reports", "alder-bank_2026-01-10.txt"))
	if err != nil {
		t.Fatal(err)
	}
	wants(t, string(text), "Saturday 10 January 2026", "has been withdrawn")
	o = must(t, dir, "run")
	wants(t, o.out, "Nothing has changed")
	must(t, dir, "sheets", "restore", "alder-bank_2026-01-10.csv")
	must(t, dir, "run")
	wants(t, cells(t, book, "Notes"), "had been withdrawn and stands again")
	wants(t, cells(t, book, "Result"), "Ada Moss")
}

// A time is taken with a full stop between minutes and seconds, as sheets have them, and the
// write-up says by how much a run was short.
func TestCorrectAsPeopleWrite(t *testing.T) {
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": fieldSheet(12)})
	must(t, dir, "run")
	must(t, dir, "correct", "alder-bank", "2026-01-03", "3", "--time", "20.05", "--yes")
	must(t, dir, "correct", "alder-bank", "2026-01-03", "--state", "short by 120 m", "--yes")
	must(t, dir, "export", filepath.Join(dir, "out"), "--private")
	results, err := os.ReadFile(filepath.Join(dir, "out", "results.csv"))
	if err != nil {
		t.Fatal(err)
	}
	wants(t, string(results), ",1205,")
	text, err := os.ReadFile(filepath.Join(dir, "reports", "alder-bank_2026-01-03.txt"))
	if err != nil {
		t.Fatal(err)
	}
	wants(t, strings.Join(strings.Fields(string(text)), " "), "recorded as: short by 120 m.")
}
