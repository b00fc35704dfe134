package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

func TestCorrect(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": fieldSheet(12),
		"sheets/alder-bank_2026-01-10.csv": strings.Replace(fieldSheet(12), "Cora Moss", "Unknown", 1),
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
	o = must(t, dir, "--json", "correct", "--undo", "1", "--yes")
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
		{[]string{"correct", "--hide", "Nobody Here"}, exitFailed, "nobody called"},
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
	rows, err := f.GetRows("Lines")
	if err != nil {
		t.Fatal(err)
	}
	column := map[string]int{}
	filled := 0
	for i, r := range rows {
		if slices.Contains(r, "Right time") {
			for c, cell := range r {
				column[cell] = c + 1
			}
			continue
		}
		if len(column) == 0 || len(r) < column["Name"] {
			continue
		}
		for head, text := range boxes[r[column["Name"]-1]] {
			cell, err := excelize.CoordinatesToCellName(column[head], i+1)
			if err != nil {
				t.Fatalf("%s: %v", head, err)
			}
			if err := f.SetCellStr("Lines", cell, text); err != nil {
				t.Fatal(err)
			}
			filled++
		}
	}
	if filled == 0 {
		t.Fatalf("no box of %s was filled in", path)
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
}

// The desk's workbook as a form: what is filled in is tried as a whole, kept,
// and known when the workbook is read again. A stale one is refused.
func TestDeskWorkbookReadBack(t *testing.T) {
	dir := folderWith(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": fieldSheet(12)})
	must(t, dir, "run")
	book := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk.xlsx")
	fillIn(t, book, map[string]map[string]string{
		"Cora Moss": {"Right time": "20:05", "Right club": "Fell & Wick", "Remark": "watch 2"},
		"Dan Moss":  {"Took part as": "pacer"},
		"Lena Moss": {"Strike out": "not a finisher"},
		"Kit Moss":  {"Right place": "12"},
	})
	o := lapwing(t, dir, "correct", "--from", book)
	wants(t, o.out, "Cora Moss (R3)", "time 20:00 → 20:05", "club Alder Harriers → Fell & Wick", "taking part as runner → pacer", "status ok → repeat", "place 11 → 12", "Nothing was kept")
	o = must(t, dir, "correct", "--from", book, "--yes", "--by", "Pat")
	wants(t, o.out, "Kept as decisions 1, 2, 3, 4, 5.")
	o = must(t, dir, "correct", "--from", book)
	wants(t, o.out, "settled already")
	wants(t, must(t, dir, "correct", "--list").out, "time 20:05", "watch 2", "status not a finisher", "place 12")
	wants(t, must(t, dir, "sheets", "explain", "alder-bank_2026-01-03.csv:12").out, "Place: 12")
	must(t, dir, "check")

	fresh := filepath.Join(dir, "reports", "alder-bank_2026-01-03-desk (issue 2).xlsx")
	must(t, dir, "run")
	fillIn(t, fresh, map[string]map[string]string{"Gwen Moss": {"Right name": "Greta Moss"}})
	must(t, dir, "correct", "alder-bank", "2026-01-03", "7", "--name", "Gwendolen Reed", "--someone-new", "--yes")
	if o := lapwing(t, dir, "correct", "--from", fresh, "--yes"); o.code != exitFailed || !strings.Contains(o.errOut, "now names Gwendolen Reed") {
		t.Errorf("a stale workbook: exit %d\n%s%s", o.code, o.out, o.errOut)
	}
	if o := lapwing(t, dir, "correct", "--from", filepath.Join(dir, "sheets", "alder-bank_2026-01-03.csv")); o.code != exitFailed {
		t.Errorf("a sheet instead of a workbook: exit %d", o.code)
	}
}
