package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"lapwing/pipeline/scenario"
)

// asProgram makes the test binary behave as the program itself: kills, locks
// and signals need a real process.
const asProgram = "LAPWING_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
		return
	}
	os.Exit(m.Run())
}

// outcome is what one call of the program printed and how it ended.
type outcome struct {
	code        int
	out, errOut string
}

// lapwing calls the program in this process, in the folder of dir/lapwing.toml.
func lapwing(t testing.TB, dir string, args ...string) outcome {
	t.Helper()
	var out, errOut bytes.Buffer
	code := run(context.Background(), append([]string{"--config", filepath.Join(dir, "lapwing.toml")}, args...), &out, &errOut)
	return outcome{code, out.String(), errOut.String()}
}

// must calls the program and fails the test unless it ends well.
func must(t testing.TB, dir string, args ...string) outcome {
	t.Helper()
	o := lapwing(t, dir, args...)
	if o.code != exitOK {
		t.Fatalf("lapwing %s: exit %d\n%s%s", strings.Join(args, " "), o.code, o.out, o.errOut)
	}
	return o
}

// process starts the program as a process of its own, in the folder dir.
func process(t testing.TB, dir string, args ...string) (*exec.Cmd, *bytes.Buffer, *bytes.Buffer) {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	var out, errOut bytes.Buffer
	c := exec.Command(exe, args...)
	c.Dir, c.Stdout, c.Stderr = dir, &out, &errOut
	c.Env = append(os.Environ(), asProgram+"=1")
	return c, &out, &errOut
}

// child calls the program as a process of its own and waits for its end.
func child(t testing.TB, dir string, args ...string) outcome {
	t.Helper()
	c, out, errOut := process(t, dir, args...)
	err := c.Run()
	if _, failed := err.(*exec.ExitError); err != nil && !failed {
		t.Fatal(err)
	}
	return outcome{c.ProcessState.ExitCode(), out.String(), errOut.String()}
}

const testConfig = "archive = \"archive\"\ninbox = \"sheets\"\nreports = \"reports\"\n"

// write puts files into a folder, by path.
func write(t testing.TB, dir string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		p := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// folderWith makes a folder with a lapwing.toml and the given files.
func folderWith(t testing.TB, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	write(t, dir, map[string]string{"lapwing.toml": testConfig})
	write(t, dir, files)
	return dir
}

var demoFiles = sync.OnceValues(func() (map[string][]byte, error) {
	files, _, err := scenario.DemoFiles()
	return files, err
})

// demo makes a folder with part of the demo: the first sheets of each course
// (0 all of them), with the side tables.
func demo(t testing.TB, sheetsPerCourse int) string {
	t.Helper()
	files, err := demoFiles()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	taken := map[string]int{}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if course := filepath.Dir(name); strings.HasPrefix(name, "sheets/") {
			if taken[course]++; sheetsPerCourse > 0 && taken[course] > sheetsPerCourse {
				continue
			}
		}
		write(t, dir, map[string]string{name: string(files[name])})
	}
	if len(taken) < 6 {
		t.Fatalf("the demo has sheets of %d courses only", len(taken))
	}
	return dir
}

// snapshot gives every file below a folder by its path: the text of tables, the hash of others.
func snapshot(t testing.TB, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(dir, p)
		if filepath.Ext(p) == ".csv" {
			out[filepath.ToSlash(rel)] = string(data)
			return err
		}
		sum := sha256.Sum256(data)
		out[filepath.ToSlash(rel)] = hex.EncodeToString(sum[:])
		return err
	})
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	return out
}

// differences names the files in which two snapshots differ.
func differences(a, b map[string]string) []string {
	var out []string
	for name, sum := range a {
		switch other, ok := b[name]; {
		case !ok:
			out = append(out, name+" is only in the first")
		case other != sum:
			out = append(out, name+" differs"+firstDifference(sum, other))
		}
	}
	for name := range b {
		if _, ok := a[name]; !ok {
			out = append(out, name+" is only in the second")
		}
	}
	slices.Sort(out)
	return out
}

// firstDifference shows the first lines in which two tables differ.
func firstDifference(a, b string) string {
	was, is := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(was), len(is)) {
		if was[i] != is[i] && len(was) > 1 {
			return fmt.Sprintf(" in line %d:\n\t%s\n\t%s\n", i+1, was[i], is[i])
		}
	}
	return ""
}

// sameFiles fails unless two snapshots are equal and hold at least so many files.
func sameFiles(t testing.TB, what string, want, got map[string]string, atLeast int) {
	t.Helper()
	if len(want) < atLeast {
		t.Fatalf("%s: only %d files to compare, want at least %d", what, len(want), atLeast)
	}
	if d := differences(want, got); len(d) > 0 {
		t.Errorf("%s: %d files differ, of %d: %s", what, len(d), len(want), strings.Join(d[:min(len(d), 5)], "; "))
	}
}

// record is the part of an archive that everything else is derived from,
// without the times at which sheets were loaded.
func record(t testing.TB, dir string) map[string]string {
	t.Helper()
	s := snapshot(t, filepath.Join(dir, "archive"))
	for name := range s {
		if strings.HasPrefix(name, "lapwing.duckdb") {
			delete(s, name)
		}
	}
	return s
}

// export writes the private CSV export (it holds everything) and gives its
// snapshot.
func export(t testing.TB, dir string, args ...string) map[string]string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "out")
	must(t, dir, append([]string{"export", out, "--private"}, args...)...)
	return snapshot(t, out)
}

// reported gives the snapshot of the reports folder.
func reported(t testing.TB, dir string) map[string]string {
	t.Helper()
	return snapshot(t, filepath.Join(dir, "reports"))
}

// exists says whether a file is there.
func exists(path ...string) bool {
	_, err := os.Stat(filepath.Join(path...))
	return err == nil
}

// within waits until something happens and says whether it did.
func within(limit time.Duration, happened func() bool) bool {
	for end := time.Now().Add(limit); time.Now().Before(end); time.Sleep(time.Millisecond) {
		if happened() {
			return true
		}
	}
	return happened()
}

// wants fails unless a text holds each of the words.
func wants(t testing.TB, text string, words ...string) {
	t.Helper()
	for _, w := range words {
		if !strings.Contains(text, w) {
			t.Errorf("the message lacks %q:\n%s", w, text)
		}
	}
}

// fieldSheet is a small sheet of one run: n finishers, each half a minute apart, with
// times that no sheet of another number of finishers has.
func fieldSheet(n int) string {
	var b strings.Builder
	b.WriteString("Pos,Name,Time,Age Group,Sex,Club\n")
	given := []string{"Ada", "Ben", "Cora", "Dan", "Edie", "Finn", "Gwen", "Hugh", "Isla", "Jack", "Kit", "Lena"}
	family := []string{"Moss", "Reed", "Thorne", "Vale", "Wick"}
	for i := range n {
		sex := "WM"[i%2 : i%2+1]
		fmt.Fprintf(&b, "%d,%s %s,%d:%02d,%s%d,%s,Alder Harriers\n", i+1, given[i%len(given)], family[i/len(given)%len(family)],
			19+i/2, 30*(i%2)+(n+18)%30, sex, 35+5*(i%6), sex)
	}
	return b.String()
}

// weekLater is a fieldSheet of the same people some seconds faster or slower.
func weekLater(sheet string) string {
	return strings.NewReplacer(":00,", ":11,", ":30,", ":24,", ":02,", ":09,", ":32,", ":39,", ":28,", ":21,", ":58,", ":47,").Replace(sheet)
}
