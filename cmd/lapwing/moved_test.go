package main

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestClockSetBack has the second load happen, by the clock, a year before the
// first: the order of loading is that of the ledger, never of its times.
func TestClockSetBack(t *testing.T) {
	first, second := "sheets/alder-bank_2026-01-03.csv", "later/alder-bank_2026-01-03.csv"
	dir := folderWith(t, map[string]string{first: "Pos,Name,Time\n1,Ada Moss,20:00\n2,Ben Reed,21:00\n", second: "Pos,Name,Time\n1,Ada Moss,20:00\n2,Ben Reed,21:30\n"})
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	must(t, dir, "load", filepath.Join(dir, "later"))
	want := export(t, dir)
	path := filepath.Join(dir, "archive", "sheets", "ledger.csv")
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("%d lines in the ledger (%v), want 3", len(rows), err)
	}
	stamp := ""
	for _, cell := range rows[2] {
		if at, err := time.Parse(time.RFC3339, cell); err == nil {
			stamp = strings.Replace(cell, at.Format("2006"), at.AddDate(-1, 0, 0).Format("2006"), 1)
			data = []byte(strings.Join(rows[0], ",") + "\n" + strings.Join(rows[1], ",") + "\n" + strings.Replace(strings.Join(rows[2], ","), cell, stamp, 1) + "\n")
		}
	}
	if stamp == "" {
		t.Fatalf("no time in %q", rows[2])
	}
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	sameFiles(t, "the clock set back", want, export(t, dir), 6)
	must(t, dir, "rebuild")
	sameFiles(t, "the clock set back, made again", want, export(t, dir), 6)
	must(t, dir, "check")
}

// TestArchiveElsewhere copies the archive folder to another place, with its
// database and as a backup without it; the sheets and the first place are gone.
func TestArchiveElsewhere(t *testing.T) {
	calm, want := finished(t)
	for _, c := range []struct {
		name     string
		database bool
	}{{"whole", true}, {"backup without the database", false}} {
		t.Run(c.name, func(t *testing.T) {
			dir := folderWith(t, nil)
			archive := filepath.Join(dir, "archive")
			if err := os.RemoveAll(archive); err != nil {
				t.Fatal(err)
			}
			if err := os.CopyFS(archive, os.DirFS(filepath.Join(calm, "archive"))); err != nil {
				t.Fatal(err)
			}
			if !c.database {
				if err := os.Remove(filepath.Join(archive, "lapwing.duckdb")); err != nil {
					t.Fatal(err)
				}
			}
			sameFiles(t, "elsewhere", want, export(t, dir), 6)
			must(t, dir, "check")
			// and work goes on there
			write(t, dir, map[string]string{"sheets/elm-green_2026-02-07.csv": fieldSheet(20)})
			must(t, dir, "load", filepath.Join(dir, "sheets"))
			must(t, dir, "check")
		})
	}
}

// TestArchiveOfAnEarlierVersion opens an archive that a version of the first
// day made, when decisions did not yet say which of two tables a row is in. It
// has the ids and figures that it had then (testdata/earlier/results.csv).
func TestArchiveOfAnEarlierVersion(t *testing.T) {
	dir := folderWith(t, nil)
	archive := filepath.Join(dir, "archive")
	if err := os.RemoveAll(archive); err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(archive, os.DirFS("../../testdata/earlier/archive")); err != nil {
		t.Fatal(err)
	}
	now := filepath.Join(dir, "out", "results.csv")
	must(t, dir, "export", filepath.Dir(now), "--private")
	same := func(when string) {
		t.Helper()
		want, got := readCSV(t, "../../testdata/earlier/results.csv"), readCSV(t, now)
		if len(want) != 13 || len(got) != len(want) {
			t.Fatalf("%s: %d rows, then %d, want 13", when, len(got), len(want))
		}
		at := map[string]int{}
		for i, name := range got[0] {
			at[name] = i
		}
		for r, row := range want {
			for c, cell := range row {
				i, ok := at[want[0][c]]
				if !ok || got[r][i] != cell {
					t.Errorf("%s: row %d, %s is %q, was %q", when, r+1, want[0][c], got[r][i], cell)
				}
			}
		}
	}
	same("opened")
	// work goes on: what was decided then can be taken back, and decided again
	must(t, dir, "correct", "--no-reports", "--undo", "1", "--yes")
	must(t, dir, "correct", "--no-reports", "alder-bank", "2026-01-10", "3", "--name", "Cora Vale", "--yes")
	must(t, dir, "rebuild")
	must(t, dir, "export", filepath.Dir(now), "--private")
	same("decided again")
	must(t, dir, "check")
}
