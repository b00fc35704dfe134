package pipeline

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"lapwing/pipeline/store"
)

func writeSheet(t *testing.T, dir, name, text string) string {
	t.Helper()
	p := filepath.Join(dir, name)
	if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return p
}

const small = "Pos,Name,Time\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n3,Cy Dale,22:03\n"

// A course one letter away from a well-known one is asked about; the answer
// given by hand is kept.
func TestMisspeltCourse(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	ctx := context.Background()
	for _, d := range []string{"2026-01-03", "2026-01-10", "2026-01-17"} {
		writeSheet(t, dir, "in/dunnock-lake_"+d+".csv", small+"4,Di "+d[8:]+" Elm,23:04\n")
	}
	loadForTest(t, pl, filepath.Join(dir, "in"))
	odd := writeSheet(t, dir, "odd/dunock-lake_2026-01-24.csv", small+"4,Ed Fox,24:05\n")
	rep := loadForTest(t, pl, odd)
	if rep.Waiting != 1 {
		t.Fatalf("want one sheet to wait, got %+v", rep)
	}
	rep, err := pl.Load(ctx, []string{odd}, ByHand{Course: "dunnock-lake"})
	if err != nil || rep.Loaded != 1 || rep.Sheets[0].Runs[0] != "dunnock-lake 2026-01-24" {
		t.Fatalf("with --course: %+v, %v", rep, err)
	}
	rep = loadForTest(t, pl, odd)
	if rep.Known != 1 {
		t.Errorf("the answered sheet is asked about again: %+v", rep)
	}
}

// A corrected sheet under the same name takes the place of one that waited.
func TestWaitingSheetIsReplaced(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	p := writeSheet(t, dir, "sheet.csv", small)
	if rep := loadForTest(t, pl, p); rep.Waiting != 1 {
		t.Fatalf("a sheet without course and date should wait: %+v", rep)
	}
	writeSheet(t, dir, "sheet.csv", "Alder Bank 3 January 2026\n"+small)
	if rep := loadForTest(t, pl, p); rep.Loaded != 1 {
		t.Fatalf("the corrected sheet should load: %+v", rep.Sheets)
	}
	ledger, err := pl.Sheets()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range ledger {
		if e.State == store.Waiting {
			t.Errorf("%s still waits", e.Path)
		}
	}
}
