package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// cellsOf reads all cells of a tab of a workbook, a line each row; nothing
// where there is no such tab, as there is none with nothing to list.
func cellsOf(t *testing.T, path, tab string) string {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var b strings.Builder
	if k, err := f.GetSheetIndex(tab); err != nil || k < 0 && tab == "People" {
		return ""
	}
	rows, err := f.GetRows(tab)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		b.WriteString(strings.Join(r, "|") + "\n")
	}
	return b.String()
}

// TestMilestoneIsToldOnce moves a milestone by a late claim, back again, and
// erases whose it is.
func TestMilestoneIsToldOnce(t *testing.T) {
	line := func(first, time string) string {
		return "Pos,Name,Time\n1," + first + "," + time + "\n2,Ben Reed,21:05\n3,Cora Vale,24:30\n"
	}
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": line("Unknown", "20:10"),
		"sheets/alder-bank_2026-01-10.csv": line("Ada Moss", "20:11"),
		"sheets/alder-bank_2026-01-17.csv": line("Ada Moss", "20:12"),
		"archive/history.csv": "fact,course,name,sex,age_group,distance_m,finishes,time,date\n" +
			"complete from,alder-bank,,,,,,,2025-12-01\n" +
			"finishes before,,Ada Moss,,,,8,,2025-12-01\nfinishes before,,Ben Reed,,,,7,,2025-12-01\n",
	})
	must(t, dir, "run")
	report := func(date, end string) string { return filepath.Join(dir, "reports", "alder-bank_"+date+end) }
	told := func(date string) bool {
		t.Helper()
		board := strings.Contains(cellsOf(t, report(date, ".xlsx"), "Board"), "10|Ada Moss")
		people := false
		for _, l := range strings.Split(cellsOf(t, report(date, ".xlsx"), "People"), "\n") {
			people = people || strings.HasPrefix(l, "milestone (runs)|Ada Moss")
		}
		up := false
		for _, end := range []string{".md", ".txt"} {
			text, err := os.ReadFile(report(date, end))
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range strings.Split(string(text), ".") {
				up = up || strings.Contains(s, "10th") && strings.Contains(s, "Ada Moss")
			}
		}
		if board != people || board != up {
			t.Errorf("%s: told on the board %t, under people %t, in the write-up %t", date, board, people, up)
		}
		return board
	}
	moved := func(date string) string {
		for _, l := range strings.Split(cellsOf(t, report(date, "-desk.xlsx"), "Lines"), "\n") {
			if strings.Contains(l, "moved here") {
				return l
			}
		}
		return ""
	}
	if !told("2026-01-17") || told("2026-01-10") {
		t.Fatal("at first the milestone is that of 17 January")
	}
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-03", "1", "--name", "Ada Moss", "--yes")
	must(t, dir, "run")
	if told("2026-01-17") || told("2026-01-10") {
		t.Error("after a late claim it is told again")
	}
	if l := moved("2026-01-10"); !strings.Contains(l, "Ada Moss") || !strings.Contains(l, "10th run, moved here; told before in the reports of alder-bank on 2026-01-17") {
		t.Errorf("the desk reads %q", l)
	}
	before := reported(t, dir)
	must(t, dir, "rebuild")
	must(t, dir, "weekly", "--course", "alder-bank", "--date", "2026-01-10")
	sameFiles(t, "reports after a rebuild", before, reported(t, dir), 12)
	must(t, dir, "correct", "--no-reports", "--undo", "1", "--yes")
	must(t, dir, "run")
	if !told("2026-01-17") || told("2026-01-10") || moved("2026-01-10")+moved("2026-01-17") != "" {
		t.Error("back where it was told, it is told there as before")
	}

	list := filepath.Join(dir, "archive", "announced.csv")
	rows := readCSV(t, list)
	if len(rows) != 3 {
		t.Fatalf("announced: %q", rows)
	}
	must(t, dir, "forget", "Ada Moss", "--yes")
	left := readCSV(t, list)
	if len(left) != 2 || left[1][0] == "" {
		t.Fatalf("announced after one of the two was erased: %q", left)
	}
	o := must(t, dir, "standing", "Ben Reed")
	wants(t, o.out, "("+left[1][0]+")")
}
