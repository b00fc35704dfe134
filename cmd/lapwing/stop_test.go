package main

import (
	"bytes"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"lapwing/pipeline/scenario"
)

// Told to stop while it reads one large sheet, the program ends within a second
// or two, says so, and leaves the archive without a trace of the sheet or with
// all of it.
func TestStoppedWhileReading(t *testing.T) {
	var season bytes.Buffer
	if _, err := scenario.Archive(scenario.Large(300_000), &season); err != nil {
		t.Fatal(err)
	}
	var rows [][]string
	for i, l := range bytes.Split(season.Bytes()[:4<<20], []byte("\n")) {
		var cells []string
		for _, c := range bytes.Split(l, []byte(",")) {
			cells = append(cells, string(c))
		}
		if i > 0 && len(cells) < len(rows[0]) {
			break
		}
		rows = append(rows, cells)
	}
	dir := folderWith(t, map[string]string{"season.csv": season.String(), "season.xlsx": string(workbook(t, rows))})
	during := 0
	for _, sheet := range []string{"season.csv", "season.xlsx"} {
		for _, after := range []time.Duration{50, 200, 350, 500} {
			if err := os.RemoveAll(filepath.Join(dir, "archive")); err != nil {
				t.Fatal(err)
			}
			c, _, errOut := process(t, dir, "load", sheet)
			if err := c.Start(); err != nil {
				t.Fatal(err)
			}
			if !within(20*time.Second, func() bool { return exists(dir, "archive", "lapwing.duckdb.open") }) {
				t.Fatal("it never began")
			}
			time.Sleep(after * time.Millisecond)
			if err := c.Process.Signal(syscall.SIGTERM); err != nil {
				t.Fatal(err)
			}
			told := time.Now()
			err := c.Wait()
			took := time.Since(told)
			if err == nil {
				continue // it had just ended
			}
			if code := c.ProcessState.ExitCode(); code != exitFailed || took > 5*time.Second {
				t.Fatalf("%s, told after %d ms: exit code %d after %v: %s", sheet, after, code, took, errOut)
			}
			wants(t, errOut.String(), "stopped", "run the same command again")
			copies, _ := filepath.Glob(filepath.Join(dir, "archive", "sheets", "*.*"))
			switch len(copies) {
			case 0: // the ledger is not begun before the first sheet is kept
				during++
			case 2: // stopped in the refresh
			default:
				t.Fatalf("%s, told after %d ms: the archive holds %v", sheet, after, copies)
			}
			must(t, dir, "sheets")
		}
	}
	if during < 3 {
		t.Errorf("only %d times was it still reading", during)
	}
	must(t, dir, "load", filepath.Join(dir, "season.xlsx"))
	must(t, dir, "check")
}
