package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// A question that is asked later, of a sheet that was loaded from another folder and is
// gone from there, has answers that work as they are printed, whatever the file's name.
func TestAnswerWhereTheFileIsGone(t *testing.T) {
	for _, name := range []string{"results 3.csv", "it's $5 & `more`!.csv", "-3.csv"} {
		t.Run(name, func(t *testing.T) {
			dir := inFolder(t, map[string]string{"sheets/.keep": "", "elsewhere/" + name: "Alder Bank\n" + fieldSheet(12)})
			wants(t, plainly(t, "load", "elsewhere").out, "date missing")
			if err := os.RemoveAll(filepath.Join(dir, "elsewhere")); err != nil {
				t.Fatal(err)
			}
			o := throughShell(t, plainly(t, "sheets").out, "lapwing load")
			if o.code != exitOK {
				t.Fatalf("exit %d: %s%s", o.code, o.out, o.errOut)
			}
			wants(t, plainly(t, "run").out, "alder-bank, Saturday 3 October 2026", "12 names counted")
		})
	}
}

// throughShell types the first line of an output that starts as given into a shell, and
// runs what comes out of it.
func throughShell(t *testing.T, out, start string) outcome {
	t.Helper()
	for _, line := range strings.Split(out, "\n") {
		line = strings.TrimSpace(line)
		if !strings.HasPrefix(line, start) {
			continue
		}
		line = strings.ReplaceAll(line, "YEAR-MONTH-DAY", "2026-10-03")
		words, err := exec.Command("bash", "-c", `set -- `+strings.TrimPrefix(line, "lapwing ")+`; printf '%s\0' "$@"`).Output()
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		return plainly(t, strings.Split(strings.TrimSuffix(string(words), "\x00"), "\x00")...)
	}
	t.Fatalf("no line starts with %q:\n%s", start, out)
	return outcome{}
}

// A sheet that was mended under the same name is the one that is meant by it; one that
// waits and is not wanted any more can be taken out, and put back.
func TestWithdrawMendedAndWaiting(t *testing.T) {
	dir := inFolder(t, map[string]string{"sheets/a.csv": "Alder Bank\n" + fieldSheet(12)})
	wants(t, plainly(t, "run").out, "date missing")
	write(t, dir, map[string]string{"sheets/a.csv": "Alder Bank\n3 October 2026\n" + fieldSheet(12)})
	wants(t, plainly(t, "run").out, "alder-bank, Saturday 3 October 2026")
	if o := plainly(t, "sheets", "withdraw", "a.csv"); o.code != exitOK {
		t.Errorf("exit %d: %s", o.code, o.errOut)
	}

	inFolder(t, map[string]string{"sheets/.keep": "", "members.csv": "Alder Bank\n" + fieldSheet(12)})
	wants(t, plainly(t, "load", "members.csv").out, "date missing")
	if o := plainly(t, "sheets", "withdraw", "members.csv"); o.code != exitOK {
		t.Fatalf("exit %d: %s", o.code, o.errOut)
	}
	if o := plainly(t, "run"); o.code != exitOK || strings.Contains(o.out, "date missing") {
		t.Errorf("exit %d: %s", o.code, o.out)
	}
	wants(t, plainly(t, "sheets", "restore", "members.csv").out, "members.csv is waiting now")
	wants(t, plainly(t, "sheets", "problems").out, "date missing")
}
