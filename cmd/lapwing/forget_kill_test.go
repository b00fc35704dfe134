package main

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// Killed at any moment, forgetting has either not begun or is finished by the
// next command: nobody is half forgotten, and all others stay as they were.
//
// LAPWING_TEST_KILLS sets the number of kills.
func TestKilledForgetting(t *testing.T) {
	kills := 4
	if testing.Short() {
		kills = 2
	}
	if s := os.Getenv("LAPWING_TEST_KILLS"); s != "" {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 {
			t.Fatalf("LAPWING_TEST_KILLS=%q: want a number", s)
		}
		kills = n
	}
	const name = "Edie Moss"
	files := map[string]string{}
	for _, day := range []string{"03", "10", "17", "24"} {
		files["sheets/alder-bank_2026-01-"+day+".csv"] = strings.ReplaceAll(fieldSheet(40), ":28,", ":"+day+",")
	}
	files["archive/volunteers.csv"] = "name,role,course,date\n" + name + ",marshal,alder-bank,2026-01-03\n"
	base := folderWith(t, files)
	must(t, base, "run")
	calm := t.TempDir()
	copyFolder(t, base, calm)
	began := time.Now()
	if o := child(t, calm, "forget", name, "--yes"); o.code != exitOK {
		t.Fatalf("never interrupted: exit %d\n%s%s", o.code, o.out, o.errOut)
	}
	long := time.Since(began)
	whole, erased := export(t, base), export(t, calm)

	r := rand.New(rand.NewPCG(5, uint64(kills)))
	done, undone := 0, 0
	for k := range kills {
		dir := t.TempDir()
		copyFolder(t, base, dir)
		c, _, _ := process(t, dir, "forget", name, "--yes")
		ended := start(t, c)
		within(time.Duration(float64(long)*(float64(k)+r.Float64())/float64(kills)), ended)
		if c.Process.Signal(syscall.SIGKILL) == nil {
			within(time.Minute, ended)
		}
		if o := lapwing(t, dir, "check"); o.code != exitOK {
			t.Fatalf("kill %d: check ends with exit %d\n%s%s", k, o.code, o.out, o.errOut)
		}
		if exists(dir, "archive", "forget") {
			t.Errorf("kill %d: what was being prepared is still there", k)
		}
		got := export(t, dir)
		if len(naming(t, filepath.Join(dir, "archive"), name)) == 0 {
			done++
			sameFiles(t, "erased", erased, got, 6)
		} else {
			undone++
			sameFiles(t, "not begun", whole, got, 6)
			must(t, dir, "forget", name, "--yes")
			if found := naming(t, filepath.Join(dir, "archive"), name); len(found) > 0 {
				t.Errorf("kill %d: after a second time the name is in %q", k, found)
			}
		}
	}
	t.Logf("%d kills: %d times not begun, %d times finished by the next command or before", kills, undone, done)
}

// copyFolder copies a folder with all that is in it.
func copyFolder(t *testing.T, from, to string) {
	t.Helper()
	if err := os.CopyFS(to, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
}
