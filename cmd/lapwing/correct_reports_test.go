package main

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// What a correction changes is printed at once: the weekly job has nothing left
// to do. With --no-reports it has.
func TestCorrectWritesTheReports(t *testing.T) {
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": fieldSheet(12), "sheets/alder-bank_2026-01-10.csv": strings.Replace(weekLater(fieldSheet(12)), "Cora Moss", "Unknown", 1)})
	must(t, dir, "run")
	text := filepath.Join(dir, "reports", "alder-bank_2026-01-10.xlsx")
	if strings.Contains(cells(t, text, "Result"), "Quilla Sedge") {
		t.Fatal("the name is there already")
	}
	o := must(t, dir, "correct", "alder-bank", "2026-01-10", "3", "--name", "Quilla Sedge", "--yes")
	wants(t, o.out, "Kept as decision 1.", "written to", "to pin up (first page):", "alder-bank_2026-01-10")
	wants(t, cells(t, text, "Result"), "Quilla Sedge")
	wants(t, must(t, dir, "run").out, "Nothing has changed since the last time")

	o = must(t, dir, "correct", "--undo", "1", "--yes", "--no-reports")
	wants(t, o.out, "To write the reports that this changes: lapwing run")
	wants(t, cells(t, text, "Result"), "Quilla Sedge")
	wants(t, must(t, dir, "run").out, "written to")
	if strings.Contains(cells(t, text, "Result"), "Quilla Sedge") {
		t.Error("the weekly job has not taken the name out")
	}
}

// A desk workbook of before still has the boxes "Change places with" and "Remark".
func TestOldBoxes(t *testing.T) {
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": fieldSheet(12)})
	must(t, dir, "run")
	book := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk.xlsx")
	f, err := excelize.OpenFile(book)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	const was, remark = "Change places with", "Remark"
	for now, before := range map[string]string{"Names exchanged with place": was, "Why": remark} {
		found, err := f.SearchSheet("Lines", now)
		if err != nil || len(found) != 1 {
			t.Fatalf("the box %s stands in %v (%v)", now, found, err)
		}
		if err := f.SetCellStr("Lines", found[0], before); err != nil {
			t.Fatal(err)
		}
	}
	rows, err := f.GetRows("Lines")
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	name := ""
	for _, r := range rows {
		if len(r) > 2 && r[0] == "2" {
			name = r[2]
		}
	}
	fillIn(t, book, map[string]map[string]string{name: {was: "4", remark: "mixed up"}})
	wants(t, must(t, dir, "correct", "--from", book, "--yes", "--no-reports").out, "name on the sheet "+name)
	wants(t, must(t, dir, "correct", "--list").out, "mixed up")
}
