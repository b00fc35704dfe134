package reports

import (
	"context"
	"os"
	"path/filepath"
	"testing"
)

func TestWeeklyLook(t *testing.T) {
	dir := os.Getenv("LAPWING_LOOK")
	if dir == "" {
		t.Skip("set LAPWING_LOOK to a folder to write the reports there and look at them")
	}
	db, last := district(t, 14, 140, true)
	arch := filepath.Join(dir, "archive")
	if err := os.MkdirAll(arch, 0o755); err != nil {
		t.Fatal(err)
	}
	o := Options{Dir: dir, ArchiveDir: arch, AgeStandard: 2025, Version: "0.1"}
	w, err := Weekly(context.Background(), db, o, "heron-mere", last, "")
	if err != nil {
		t.Fatal(err)
	}
	t.Log(w)
}
