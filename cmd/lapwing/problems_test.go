package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
)

// What was corrected, accepted, or stands on a sheet that a later one has
// taken the place of, needs no look any more; a sheet that comes later does.
func TestSettledProblems(t *testing.T) {
	twice := "Pos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,19:45\n2,Cora Vale,20:10\n3,Dan Wick,8:20\n"
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": twice,
		"sheets/ember-quay_2026-01-03.csv": strings.Replace(twice, "8:20", "20:20", 1),
		"more/alder-bank_2026-01-10.csv":   strings.Replace(twice, "8:20", "20:30", 1),
		"more/ember-quay corrected.csv":    "Ember Quay 3 January 2026\nPos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,19:45\n3,Cora Vale,20:11\n4,Dan Wick,20:20\n5,Eve Hill,20:40\n",
	})
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	must(t, dir, "refresh")
	open := func() string { return lapwing(t, dir, "sheets", "problems", "--all").out }
	wants(t, open(), "alder-bank_2026-01-03.csv:4: position repeated", "ember-quay_2026-01-03.csv:4: position repeated", "alder-bank_2026-01-03.csv:C5: time impossible")

	o := lapwing(t, dir, "sheets", "problems", "--accept", "position missing")
	if o.code != exitFailed || !strings.Contains(o.errOut, "position repeated, time ") {
		t.Errorf("a kind that there is not: exit %d, %s", o.code, o.errOut)
	}
	o = must(t, dir, "sheets", "problems", "--accept", "position repeated", "--course", "Alder Bank", "--why", "two funnels", "--by", "Pat")
	wants(t, o.out, "1 problem accepted. Kept as decision 1.", "lapwing correct --undo 1")
	if s := open(); strings.Contains(s, "alder-bank_2026-01-03.csv:4: position") || !strings.Contains(s, "ember-quay_2026-01-03.csv:4: position") {
		t.Errorf("after accepting:\n%s", s)
	}
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "3", "--time", "20:20", "--yes")
	if s := open(); strings.Contains(s, "C5: time impossible") {
		t.Errorf("after the correction:\n%s", s)
	}
	must(t, dir, "load", filepath.Join(dir, "more"))
	must(t, dir, "refresh")
	s := open()
	wants(t, s, "alder-bank_2026-01-10.csv:4: position repeated")
	if strings.Contains(s, "ember-quay_2026-01-03.csv:4: position") {
		t.Errorf("of a sheet that another has taken the place of:\n%s", s)
	}
	settled := func() string { return must(t, dir, "sheets", "problems", "--settled", "--all").out }
	wants(t, settled(), "[accepted (decision 1): two funnels]", "[settled by decision 2]", "[a later sheet stands for this run]")
	before := settled()
	must(t, dir, "rebuild")
	if after := settled(); after != before {
		t.Errorf("after a rebuild:\n%s\nbefore:\n%s", after, before)
	}
	must(t, dir, "correct", "--no-reports", "--undo", "1", "--yes")
	wants(t, open(), "alder-bank_2026-01-03.csv:4: position repeated")
}

// The desk's workbook takes the answer that a point to check is right, one by one
// and for all of a kind; read twice it changes nothing, a stale one is refused.
func TestDeskWorkbookAccepts(t *testing.T) {
	twice := "Pos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,19:45\n2,Cora Vale,20:10\n3,Dan Wick,20:20\n3,Eve Hill,20:40\n4,Finn Dale,3:00:20\n"
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": twice})
	must(t, dir, "run")
	book := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk.xlsx")
	fresh, err := os.ReadFile(book)
	if err != nil {
		t.Fatal(err)
	}
	answer := func(where, text string) {
		t.Helper()
		if err := os.WriteFile(book, fresh, 0o644); err != nil {
			t.Fatal(err)
		}
		f, err := excelize.OpenFile(book)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		if n := fillTab(t, f, "To check", "Answer", "Where", map[string]map[string]string{where: {"Answer": text}}); n != 1 {
			t.Fatalf("%d rows are about %s", n, where)
		}
		if err := f.Save(); err != nil {
			t.Fatal(err)
		}
	}
	open := func() string { return lapwing(t, dir, "sheets", "problems", "--all").out }
	wants(t, open(), "csv:4: position repeated", "csv:6: position repeated")
	rowAt := func(row string) string { return "alder-bank_2026-01-03.csv, row " + row }

	answer(rowAt("4"), "maybe")
	if o := lapwing(t, dir, "correct", "--no-reports", "--from", book, "--yes"); o.code != exitFailed || !strings.Contains(o.errOut, `"maybe" is not one of: is right, all are right`) {
		t.Errorf("another answer: exit %d, %s", o.code, o.errOut)
	}
	answer(rowAt("4"), " Is  right ")
	o := lapwing(t, dir, "correct", "--no-reports", "--from", book)
	wants(t, o.out, "Needs no look any more:", "csv:4: position repeated", "--yes", "Nothing was kept.")
	before := record(t, dir)
	o = must(t, dir, "correct", "--no-reports", "--from", book, "--by", "Pat", "--yes")
	wants(t, o.out, "Kept as decision 1.", "lapwing correct --undo 1")
	if s := open(); strings.Contains(s, "csv:4: position") || !strings.Contains(s, "csv:6: position") {
		t.Errorf("after one was accepted:\n%s", s)
	}
	delete(before, "decisions.csv")
	after := record(t, dir)
	delete(after, "decisions.csv")
	if d := differences(before, after); len(d) > 0 {
		t.Errorf("accepting changed %v", d)
	}
	wants(t, must(t, dir, "correct", "--no-reports", "--from", book, "--yes").out, "settled already")

	answer(rowAt("6"), "all are right")
	o = must(t, dir, "correct", "--no-reports", "--from", book, "--yes")
	if strings.Contains(o.out, "csv:4") {
		t.Errorf("what was accepted is listed again:\n%s", o.out)
	}
	wants(t, o.out, "csv:6: position repeated", "Kept as decision 2.")
	if s := open(); strings.Contains(s, "position repeated") {
		t.Errorf("after all were accepted:\n%s", s)
	}
	settled := must(t, dir, "sheets", "problems", "--settled", "--all").out
	wants(t, settled, "[accepted (decision 1)]", "[accepted (decision 2)]")
	must(t, dir, "rebuild")
	if again := must(t, dir, "sheets", "problems", "--settled", "--all").out; again != settled {
		t.Errorf("after a rebuild:\n%s\nbefore:\n%s", again, settled)
	}
	must(t, dir, "check")
	wants(t, must(t, dir, "correct", "--list").out, "accept problem", "position-repeated, sheets 1 to 1")

	// corrected since, of a sheet that was replaced, and of one that is gone
	must(t, dir, "correct", "--no-reports", "--undo", "1", "--yes")
	must(t, dir, "correct", "--no-reports", "--undo", "2", "--yes")
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "--line", "alder-bank_2026-01-03.csv:4", "--right-place", "3", "--yes")
	answer(rowAt("4"), "is right")
	if o := lapwing(t, dir, "correct", "--no-reports", "--from", book, "--yes"); o.code != exitFailed || !strings.Contains(o.errOut, "settled by decision") || !strings.Contains(o.errOut, "Take a fresh desk workbook") {
		t.Errorf("corrected since: exit %d, %s", o.code, o.errOut)
	}
	write(t, dir, map[string]string{"more/alder-bank_2026-01-03.csv": strings.Replace(twice, "3,Eve Hill", "4,Eve Hill", 1)})
	must(t, dir, "load", filepath.Join(dir, "more"))
	answer(rowAt("6"), "is right")
	if o := lapwing(t, dir, "correct", "--no-reports", "--from", book, "--yes"); o.code != exitFailed {
		t.Errorf("of a sheet that another has taken the place of: exit %d, %s", o.code, o.errOut)
	}
}

// What the program says of how it read a sheet is not shown as if it had been read there; what stands in a cell is.
func TestProblemWordsOfNotes(t *testing.T) {
	at := place.Place{Sheet: "a.csv"}
	for want, p := range map[string]place.Problem{
		"a.csv: rows joined: 2 rows went on in the row below":       {Place: at, Severity: place.Note, Kind: "rows-joined", Read: "2 rows went on in the row below"},
		`a.csv: group unreadable: read "ZZ", expected an age group`: {Place: at, Severity: place.Note, Kind: "group-unreadable", Read: "ZZ", Expected: "an age group"},
	} {
		if got := problemWords(p); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
