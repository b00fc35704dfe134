package reports

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// say renders a file whose bytes name their issue and changes.
func say(ext, content string) file {
	return file{ext, content, func(i issueOf) ([]byte, error) {
		return []byte(content + "\nissue " + string(rune('0'+i.Number)) + "\n" + strings.Join(i.Changes, "\n")), nil
	}}
}

func publishTo(t *testing.T, arch, dir string, files ...file) []string {
	t.Helper()
	r, err := OpenRegister(arch)
	if err != nil {
		t.Fatal(err)
	}
	w, err := r.publish(dir, "mere_2026-03-07", Mark{2, 7, true}, files, func(map[string]string) (changes, error) { return changes{public: []string{"a | b", "second"}}, nil })
	if err != nil {
		t.Fatal(err)
	}
	for i := range w {
		w[i] = filepath.Base(w[i])
	}
	return w
}

func read(t *testing.T, path ...string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(path...))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestNothingNewWritesNothing(t *testing.T) {
	arch, dir := t.TempDir(), filepath.Join(t.TempDir(), "out")
	if w := publishTo(t, arch, dir, say(".md", "one"), say(".txt", "one")); !slices.Equal(w, []string{"mere_2026-03-07.md", "mere_2026-03-07.txt"}) {
		t.Fatalf("first issue wrote %v", w)
	}
	if w := publishTo(t, arch, dir, say(".md", "one"), say(".txt", "one")); len(w) != 0 {
		t.Errorf("the same again wrote %v", w)
	}
	// A new content replaces what nobody has touched.
	if w := publishTo(t, arch, dir, say(".md", "two"), say(".txt", "one")); len(w) != 2 {
		t.Errorf("a change wrote %v, want both files under one issue number", w)
	}
	if got := read(t, dir, "mere_2026-03-07.md"); got != "two\nissue 2\na | b\nsecond" {
		t.Errorf("second issue reads %q", got)
	}
}

func TestEditedReportIsKept(t *testing.T) {
	arch, dir := t.TempDir(), t.TempDir()
	publishTo(t, arch, dir, say(".md", "one"))
	p := filepath.Join(dir, "mere_2026-03-07.md")
	if err := os.WriteFile(p, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if w := publishTo(t, arch, dir, say(".md", "one")); len(w) != 0 {
		t.Errorf("nothing new, but %v was written beside an edited report", w)
	}
	if w := publishTo(t, arch, dir, say(".md", "two")); !slices.Equal(w, []string{"mere_2026-03-07 (issue 2).md"}) {
		t.Errorf("wrote %v", w)
	}
	if w := publishTo(t, arch, dir, say(".md", "three")); !slices.Equal(w, []string{"mere_2026-03-07 (issue 3).md"}) {
		t.Errorf("wrote %v", w)
	}
	if got := read(t, p); got != "mine" {
		t.Errorf("the edited report now reads %q", got)
	}
	// The same content again, in a new process: nothing.
	if w := publishTo(t, arch, dir, say(".md", "three")); len(w) != 0 {
		t.Errorf("wrote %v", w)
	}
}

// A file that was there before the first report is somebody's own.
func TestStrangersFileIsKept(t *testing.T) {
	arch, dir := t.TempDir(), t.TempDir()
	p := filepath.Join(dir, "mere_2026-03-07.md")
	if err := os.WriteFile(p, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if w := publishTo(t, arch, dir, say(".md", "one")); !slices.Equal(w, []string{"mere_2026-03-07 (issue 2).md"}) {
		t.Errorf("wrote %v", w)
	}
	if got := read(t, p); got != "mine" {
		t.Errorf("now reads %q", got)
	}
}

// A kill between the register and the rename, or in the middle of a register
// line: the next call finishes the work under the same issue number.
func TestKilledBetween(t *testing.T) {
	arch, dir := t.TempDir(), t.TempDir()
	publishTo(t, arch, dir, say(".md", "one"), say(".txt", "one"))
	before := read(t, dir, "mere_2026-03-07.md")
	publishTo(t, arch, dir, say(".md", "two"), say(".txt", "two"))
	after := read(t, dir, "mere_2026-03-07.md")
	// The rename of one file never happened, and the other is gone.
	if err := os.WriteFile(filepath.Join(dir, "mere_2026-03-07.md"), []byte(before), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(dir, "mere_2026-03-07.txt")); err != nil {
		t.Fatal(err)
	}
	if w := publishTo(t, arch, dir, say(".md", "two"), say(".txt", "two")); len(w) != 2 {
		t.Errorf("wrote %v, want both files again", w)
	}
	if got := read(t, dir, "mere_2026-03-07.md"); got != after {
		t.Errorf("finished as %q, want %q", got, after)
	}
	reg := filepath.Join(arch, registerName)
	whole := read(t, reg)
	for cut := range len(whole) {
		if err := os.WriteFile(reg, []byte(whole[:cut]), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := OpenRegister(arch); err != nil {
			t.Fatalf("register cut after %d of %d bytes: %v", cut, len(whole), err)
		}
	}
	// Appending after a torn line leaves a readable register.
	if err := os.WriteFile(reg, []byte(whole[:len(whole)-9]), 0o644); err != nil {
		t.Fatal(err)
	}
	publishTo(t, arch, dir, say(".md", "four"), say(".txt", "four"))
	if _, err := OpenRegister(arch); err != nil {
		t.Error(err)
	}
	if strings.Count(read(t, reg), "\n") < 5 {
		t.Errorf("register lost lines:\n%s", read(t, reg))
	}
}

func TestNoUnfinishedFilesStay(t *testing.T) {
	dir := t.TempDir()
	if err := writeFile(filepath.Join(dir, "a.md"), []byte("x")); err != nil {
		t.Fatal(err)
	}
	// A folder in the way: the rename fails, says what to do, leaves no trace.
	if err := os.MkdirAll(filepath.Join(dir, "b.md", "full"), 0o755); err != nil {
		t.Fatal(err)
	}
	err := writeFile(filepath.Join(dir, "b.md"), []byte("x"))
	if err == nil || !strings.Contains(err.Error(), "close it there and run this again") {
		t.Errorf("error %v", err)
	}
	left, err := filepath.Glob(filepath.Join(dir, ".unfinished*"))
	if err != nil || len(left) > 0 {
		t.Errorf("left %v, %v", left, err)
	}
}
