package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"lapwing/pipeline"
)

// TestHeld runs the program while another process has the archive: it says
// which, changes nothing, and what only reads the ledger still works.
func TestHeld(t *testing.T) {
	dir := twoRuns(t)
	s := pipeline.DefaultSettings()
	s.Archive = filepath.Join(dir, "archive")
	pl, err := pipeline.Open(context.Background(), s, pipeline.ReadWrite, nil)
	if err != nil {
		t.Fatal(err)
	}
	defer pl.Close()
	write(t, dir, map[string]string{"sheets/alder-bank_2026-01-17.csv": fieldSheet(18)})
	before := record(t, dir)
	for _, line := range []string{"run", "load sheets", "refresh", "rebuild", "export out", "check", "weekly", "sheets problems", "sheets withdraw alder-bank_2026-01-03.csv"} {
		o := child(t, dir, strings.Fields(line)...)
		if o.code != exitFailed {
			t.Errorf("lapwing %s: exit %d, want 1", line, o.code)
		}
		wants(t, o.errOut, "another lapwing", fmt.Sprint(os.Getpid()), "Wait")
		sameFiles(t, line+": archive", before, record(t, dir), 5)
	}
	for _, line := range []string{"sheets", "load sheets --dry-run"} {
		if o := child(t, dir, strings.Fields(line)...); o.code != exitOK {
			t.Errorf("lapwing %s: exit %d\n%s", line, o.code, o.errOut)
		}
	}
	if err := pl.Close(); err != nil {
		t.Fatal(err)
	}
	must(t, dir, "run")
	must(t, dir, "check")
}

// TestTwoAtOnce starts two processes at the same moment on an archive that is
// not there yet, as a double click on a button does: one does the work, the
// other does nothing or finds it done.
func TestTwoAtOnce(t *testing.T) {
	calm := demo(t, 1)
	must(t, calm, "load", filepath.Join(calm, "sheets"))
	want := export(t, calm)
	refused := 0
	for range 4 {
		dir := demo(t, 1)
		a, _, errA := process(t, dir, "load", "sheets")
		b, _, errB := process(t, dir, "load", "sheets")
		endedA, endedB := start(t, a), start(t, b)
		if !within(2*time.Minute, func() bool { return endedA() && endedB() }) {
			t.Fatal("two processes wait for each other")
		}
		codes := []int{a.ProcessState.ExitCode(), b.ProcessState.ExitCode()}
		slices.Sort(codes)
		if codes[0] != exitOK || codes[1] > exitFailed {
			t.Fatalf("exits %v\n%s%s", codes, errA, errB)
		}
		if codes[1] == exitFailed {
			refused++
			wants(t, errA.String()+errB.String(), "another lapwing")
		}
		must(t, dir, "check")
		sameFiles(t, "export", want, export(t, dir), 6)
		ledger, err := os.ReadFile(filepath.Join(dir, "archive", "sheets", "ledger.csv"))
		if err != nil {
			t.Fatal(err)
		}
		seen := map[string]bool{}
		for _, l := range strings.Split(strings.TrimSpace(string(ledger)), "\n") {
			no, _, _ := strings.Cut(l, ",")
			if seen[no] {
				t.Errorf("the ledger has number %s twice", no)
			}
			seen[no] = true
		}
	}
	t.Logf("of 4 pairs, the second was sent away in %d", refused)
}

// TestStopped presses Ctrl-C at several moments: a clean message, exit 1, and
// the next run completes.
func TestStopped(t *testing.T) {
	calm := demo(t, 1)
	must(t, calm, "run")
	wantExport, wantReports := export(t, calm), reported(t, calm)
	stopped := 0
	for _, at := range []phase{opening, linking, computing, reporting} {
		t.Run(at.String(), func(t *testing.T) {
			dir := demo(t, 1)
			c, out, errOut := process(t, dir, "run")
			ended := start(t, c)
			// it listens to signals before it makes anything
			within(time.Minute, func() bool { return exists(dir, "archive", "sheets") && at.reached(dir) || ended() })
			_ = c.Process.Signal(os.Interrupt)
			began := time.Now()
			if !within(time.Minute, ended) {
				t.Fatal("it goes on")
			}
			if took := time.Since(began); took > 20*time.Second {
				t.Errorf("it took %v to stop", took)
			}
			switch code := c.ProcessState.ExitCode(); code {
			case exitFailed:
				stopped++
				wants(t, errOut.String(), "stopped", "run the same command again")
				if strings.Count(strings.TrimSpace(errOut.String()), "\n") > 1 {
					t.Errorf("a long farewell:\n%s", errOut)
				}
				if exists(dir, "archive", "lapwing.duckdb.open") {
					t.Error("the database was not closed cleanly")
				}
			case exitOK: // it was faster
			default:
				t.Fatalf("%v\n%s%s", c.ProcessState, out, errOut)
			}
			must(t, dir, "run")
			must(t, dir, "check")
			sameFiles(t, "export", wantExport, export(t, dir), 6)
			sameFiles(t, "reports", wantReports, reported(t, dir), 20)
		})
	}
	if stopped < 2 {
		t.Errorf("only %d of 4 runs were stopped on the way", stopped)
	}
}

// nobody is the user that may do nothing (65534 on most systems).
const nobody = 65534

// asNobody gives a copy of the program that another user can start, and a
// function that calls it as a user without rights. Tests that run without the
// right to change the user call the program as they are.
func asNobody(t *testing.T) func(dir string, args ...string) outcome {
	t.Helper()
	if os.Getuid() != 0 {
		return func(dir string, args ...string) outcome { return child(t, dir, args...) }
	}
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	place := openFolder(t)
	own := filepath.Join(place, "lapwing")
	data, err := os.ReadFile(exe)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(own, data, 0o755); err != nil {
		t.Fatal(err)
	}
	return func(dir string, args ...string) outcome {
		var out, errOut bytes.Buffer
		c := exec.Command(own, args...)
		c.Dir, c.Stdout, c.Stderr = dir, &out, &errOut
		c.Env = append(os.Environ(), asProgram+"=1", "HOME="+place)
		c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
		err := c.Run()
		if _, failed := err.(*exec.ExitError); err != nil && !failed {
			t.Fatal(err)
		}
		return outcome{c.ProcessState.ExitCode(), out.String(), errOut.String()}
	}
}

// openFolder is a folder that every user can look into.
func openFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for _, d := range []string{dir, filepath.Dir(dir)} {
		if err := os.Chmod(d, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// give hands a folder and all in it to the user without rights.
func give(t *testing.T, dir string) {
	t.Helper()
	if os.Getuid() != 0 {
		return
	}
	err := filepath.Walk(dir, func(p string, _ os.FileInfo, err error) error {
		if err != nil {
			return err
		}
		return os.Lchown(p, nobody, nobody)
	})
	if err != nil {
		t.Fatal(err)
	}
}

// TestNoPermission takes rights away, as a user who has none to begin with.
func TestNoPermission(t *testing.T) {
	call := asNobody(t)
	calm := twoRuns(t)
	fresh := func(t *testing.T) string {
		dir := openFolder(t)
		if err := os.CopyFS(dir, os.DirFS(calm)); err != nil {
			t.Fatal(err)
		}
		write(t, dir, map[string]string{"sheets/alder-bank_2026-01-17.csv": fieldSheet(18), "sheets/alder-bank_2026-01-24.csv": fieldSheet(21)})
		give(t, dir)
		return dir
	}
	chmod := func(t *testing.T, mode os.FileMode, path ...string) {
		t.Helper()
		p := filepath.Join(path...)
		st, err := os.Stat(p)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.Chmod(p, mode); err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { _ = os.Chmod(p, st.Mode()) })
	}
	t.Run("to read a sheet", func(t *testing.T) {
		dir := fresh(t)
		chmod(t, 0, dir, "sheets", "alder-bank_2026-01-17.csv")
		for _, dry := range []bool{true, false} {
			args := []string{"load", "sheets"}
			if dry {
				args = append(args, "--dry-run")
			}
			o := call(dir, args...)
			if o.code != exitFailed {
				t.Errorf("%v: exit %d, want 1", args, o.code)
			}
			wants(t, o.out, "alder-bank_2026-01-17.csv", "refused", "no permission")
		}
		wants(t, call(dir, "sheets").out, "alder-bank_2026-01-24.csv") // the other was loaded
	})
	t.Run("to look into a folder", func(t *testing.T) {
		dir := fresh(t)
		write(t, dir, map[string]string{"sheets/closed/elm-green_2026-01-17.csv": fieldSheet(9)})
		give(t, dir)
		chmod(t, 0, dir, "sheets", "closed")
		o := call(dir, "load", "sheets")
		if o.code != exitFailed {
			t.Errorf("exit %d, want 1", o.code)
		}
		wants(t, o.out, "2 sheets loaded", "closed is refused", "no permission")
	})
	t.Run("to write in the archive", func(t *testing.T) {
		dir := fresh(t)
		before := snapshot(t, filepath.Join(dir, "archive"))
		chmod(t, 0o555, dir, "archive", "sheets")
		chmod(t, 0o555, dir, "archive")
		for _, line := range []string{"run", "rebuild", "load sheets"} {
			o := call(dir, strings.Fields(line)...)
			if o.code != exitFailed {
				t.Errorf("lapwing %s: exit %d, want 1\n%s", line, o.code, o.out)
			}
			wants(t, o.errOut, "lapwing:", "right to write")
			sameFiles(t, line+": archive", before, snapshot(t, filepath.Join(dir, "archive")), 6)
		}
	})
	t.Run("to write in the sheets folder of the archive", func(t *testing.T) {
		dir := fresh(t)
		before := snapshot(t, filepath.Join(dir, "archive"))
		chmod(t, 0o555, dir, "archive", "sheets")
		o := call(dir, "run")
		if o.code != exitFailed {
			t.Errorf("exit %d, want 1\n%s", o.code, o.out)
		}
		wants(t, o.errOut, "Nothing of it was kept", "right to write")
		sameFiles(t, "archive", before, snapshot(t, filepath.Join(dir, "archive")), 6)
	})
	t.Run("to read the database", func(t *testing.T) {
		dir := fresh(t)
		before := snapshot(t, filepath.Join(dir, "archive"))
		chmod(t, 0, dir, "archive", "lapwing.duckdb")
		o := call(dir, "run")
		if o.code != exitFailed {
			t.Errorf("exit %d, want 1\n%s", o.code, o.out)
		}
		wants(t, o.errOut, "lapwing.duckdb", "permission denied")
		sameFiles(t, "archive", before, snapshot(t, filepath.Join(dir, "archive")), 6)
	})
	t.Run("to make the archive", func(t *testing.T) {
		dir := fresh(t)
		if err := os.RemoveAll(filepath.Join(dir, "archive")); err != nil {
			t.Fatal(err)
		}
		chmod(t, 0o555, dir)
		o := call(dir, "run")
		if o.code != exitFailed {
			t.Errorf("exit %d, want 1\n%s", o.code, o.out)
		}
		wants(t, o.errOut, "can't make the archive folder", "--archive")
	})
	t.Run("to write reports", func(t *testing.T) {
		dir := fresh(t)
		before := reported(t, dir)
		chmod(t, 0o555, dir, "reports")
		o := call(dir, "run")
		if o.code != exitFailed {
			t.Errorf("exit %d, want 1\n%s", o.code, o.out)
		}
		wants(t, o.errOut, "alder-bank_2026-01-", "right to write")
		sameFiles(t, "reports", before, reported(t, dir), 8)
		if err := os.Chmod(filepath.Join(dir, "reports"), 0o755); err != nil {
			t.Fatal(err)
		}
		if o = call(dir, "run"); o.code != exitOK {
			t.Errorf("with the right given: exit %d\n%s%s", o.code, o.out, o.errOut)
		}
		if n := len(reported(t, dir)); n != 16 {
			t.Errorf("%d report files, want 16", n)
		}
	})
	t.Run("to write an export", func(t *testing.T) {
		dir := fresh(t)
		if err := os.Mkdir(filepath.Join(dir, "out"), 0o555); err != nil {
			t.Fatal(err)
		}
		o := call(dir, "export", "out")
		if o.code != exitFailed {
			t.Errorf("exit %d, want 1\n%s", o.code, o.out)
		}
		wants(t, o.errOut, "results.csv", "right to write")
	})
}
