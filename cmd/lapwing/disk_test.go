package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// mount mounts a file system for the time of a test, or skips the test and
// says so.
func mount(t *testing.T, args ...string) {
	t.Helper()
	if os.Getuid() != 0 {
		t.Skipf("SKIPPED: mount %s needs root; this test did not run", strings.Join(args, " "))
	}
	if out, err := exec.Command("mount", args...).CombinedOutput(); err != nil {
		t.Skipf("SKIPPED: mount %s is not possible here (%v: %s); this test did not run", strings.Join(args, " "), err, out)
	}
	at := args[len(args)-1]
	t.Cleanup(func() {
		if out, err := exec.Command("umount", at).CombinedOutput(); err != nil {
			t.Errorf("umount %s: %v: %s", at, err, out)
		}
	})
}

func remount(t *testing.T, args ...string) {
	t.Helper()
	if out, err := exec.Command("mount", args...).CombinedOutput(); err != nil {
		t.Fatalf("mount %s: %v: %s", strings.Join(args, " "), err, out)
	}
}

// TestReadOnlyArchive puts the archive on a read-only file system.
func TestReadOnlyArchive(t *testing.T) {
	dir := twoRuns(t)
	archive := filepath.Join(dir, "archive")
	write(t, dir, map[string]string{"sheets/alder-bank_2026-01-17.csv": fieldSheet(18)})
	before := snapshot(t, archive)
	mount(t, "--bind", archive, archive)
	remount(t, "-o", "remount,bind,ro", archive)
	for _, line := range []string{"run", "load sheets", "rebuild", "refresh", "sheets withdraw alder-bank_2026-01-03.csv"} {
		o := child(t, dir, strings.Fields(line)...)
		if o.code != exitFailed {
			t.Errorf("lapwing %s: exit %d, want 1\n%s", line, o.code, o.out)
		}
		wants(t, o.errOut, "read-only", "lapwing.toml")
		if strings.Contains(o.errOut, "Making the database again") {
			t.Errorf("lapwing %s: takes a read-only folder for a damaged database:\n%s", line, o.errOut)
		}
		sameFiles(t, line+": archive", before, snapshot(t, archive), 5)
	}
	// what only reads goes on
	for _, line := range []string{"sheets", "sheets problems", "load sheets --dry-run"} {
		if o := child(t, dir, strings.Fields(line)...); o.code != exitOK {
			t.Errorf("lapwing %s: exit %d\n%s", line, o.code, o.errOut)
		}
	}
	remount(t, "-o", "remount,bind,rw", archive)
	must(t, dir, "run")
	must(t, dir, "check")
}

// TestFullDisk runs the weekly job with too little room, from almost none to
// almost enough: a message and exit 1; with more room the next run completes
// and leaves what a run with room leaves.
func TestFullDisk(t *testing.T) {
	calm := demo(t, 1)
	must(t, calm, "run")
	wantExport, wantReports := export(t, calm), reported(t, calm)
	failed, where := 0, map[string]int{}
	for _, kb := range []int{0, 60, 300, 600} {
		t.Run(fmt.Sprintf("%d KB left", kb), func(t *testing.T) {
			room := t.TempDir()
			mount(t, "-t", "tmpfs", "-o", "size=200m", "tmpfs", room)
			dir := demo(t, 1)
			// archive and reports on the small disk, the side tables with them
			write(t, dir, map[string]string{"lapwing.toml": fmt.Sprintf("archive = %q\ninbox = \"sheets\"\nreports = %q\n",
				filepath.Join(room, "archive"), filepath.Join(room, "reports"))})
			if err := os.CopyFS(filepath.Join(room, "archive"), os.DirFS(filepath.Join(dir, "archive"))); err != nil {
				t.Fatal(err)
			}
			used := 0
			for name := range snapshot(t, room) {
				st, err := os.Stat(filepath.Join(room, name))
				if err != nil {
					t.Fatal(err)
				}
				used += (int(st.Size()) + 4095) / 4096 * 4
			}
			remount(t, "-o", fmt.Sprintf("remount,size=%dk", used+kb), room)
			o := child(t, dir, "run")
			switch o.code {
			case exitFailed:
				failed++
				wants(t, o.errOut, "disk is full", "make room")
				for _, w := range []string{"keep the sheets", "report", "writing"} {
					if strings.Contains(o.errOut, w) {
						where[w]++
						break
					}
				}
				if strings.Contains(o.errOut, "Nothing of it was kept") && exists(room, "archive", "sheets", "ledger.csv") {
					t.Errorf("nothing was kept, it says, yet there is a ledger:\n%s", o.errOut)
				}
			case exitOK:
			default:
				t.Fatalf("exit %d\n%s%s", o.code, o.out, o.errOut)
			}
			for _, p := range leftovers(t, room) {
				t.Errorf("left over: %s", p)
			}
			remount(t, "-o", "remount,size=200m", room)
			if o = child(t, dir, "run"); o.code != exitOK {
				t.Fatalf("with room: exit %d\n%s%s", o.code, o.out, o.errOut)
			}
			must(t, dir, "check")
			sameFiles(t, "export", wantExport, export(t, dir), 6)
			sameFiles(t, "reports", wantReports, snapshot(t, filepath.Join(room, "reports")), 20)
		})
	}
	t.Logf("%d runs met a full disk: %v", failed, where)
	if os.Getuid() == 0 && failed < 2 {
		t.Errorf("only %d of 4 runs met a full disk", failed)
	}
}

// leftovers lists unfinished files.
func leftovers(t *testing.T, dir string) (out []string) {
	t.Helper()
	for name := range snapshot(t, dir) {
		if strings.HasSuffix(name, ".part") || strings.Contains(name, ".unfinished-") {
			out = append(out, name)
		}
	}
	return out
}
