package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"lapwing/pipeline/scenario/ugly"
)

// TestUglySheets reads sheets with truth, made from a description of sheets: every trait
// alone, and several together, in eleven languages. What is written is what is read, or the
// sheet waits with a question; nothing wrong is accepted.
func TestUglySheets(t *testing.T) {
	dir := folderWith(t, nil)
	truth, err := ugly.Write(filepath.Join(dir, "sheets"), 20260103, 900)
	if err != nil {
		t.Fatal(err)
	}
	if o := lapwing(t, dir, "load", filepath.Join(dir, "sheets")); o.code != 1 { // some wait
		t.Fatal(o.code, o.errOut)
	}
	out := filepath.Join(dir, "out")
	must(t, dir, "export", out, "--private")
	f, err := os.Open(filepath.Join(out, "results.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	results, err := ugly.ReadResults(f)
	if err != nil {
		t.Fatal(err)
	}
	rep := ugly.Score(truth, results)
	var b bytes.Buffer
	rep.Print(&b)
	rep.PrintFailures(&b, 3)
	switch {
	case rep.Lines < 30_000 || rep.Invalid < 1_000 || rep.MustHold < 10 || len(rep.Alone) < 180:
		t.Errorf("too little to say anything: %d lines, %d invalid, %d sheets to be asked about, %d traits alone", rep.Lines, rep.Invalid, rep.MustHold, len(rep.Alone))
	case rep.SheetsWrong+rep.Time+rep.Run+rep.Lost+rep.Accepted+rep.Phantom+rep.Refused > 0,
		rep.SheetsHeld > 1, rep.HeldRightly < rep.MustHold,
		rep.SexRight*1000 < rep.Sex*999, rep.AgeRight*1000 < rep.Age*999:
		t.Errorf("%s", b.String())
	}
	t.Logf("%d of %d lines, %d sheets held", rep.Right, rep.Lines, rep.SheetsHeld)
}
