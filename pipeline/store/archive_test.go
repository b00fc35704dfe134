package store

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"
)

func newArchive(t *testing.T) Archive {
	t.Helper()
	a := Archive{Dir: t.TempDir()}
	if err := a.Make(); err != nil {
		t.Fatal(err)
	}
	return a
}

// TestCutShort cuts tables at every byte of their last line: what the program
// writes loses the whole line, what people edit keeps a line that has all its
// fields; the next append leaves a table that reads well.
// appendList adds rows to a table that only the program writes.
func appendList(a Archive, name string, columns []string, rows [][]string) error {
	return appendTable(a.File(name), columns, rows, byProgram)
}

func TestCutShort(t *testing.T) {
	columns := []string{"id", "what", "why"}
	rows := [][]string{{"1", "a", "because, so"}, {"2", "b", `said "no"`}, {"3", "cd", "end"}}
	for _, c := range []struct {
		name   string
		append func(Archive, string, []string, [][]string) error
		read   func(Archive, string, []string) ([][]string, error)
	}{
		{"list", appendList, Archive.ReadList},
		{"table", Archive.AppendTable, Archive.ReadTable},
	} {
		a := newArchive(t)
		if err := c.append(a, "t.csv", columns, rows); err != nil {
			t.Fatal(err)
		}
		whole, err := os.ReadFile(a.File("t.csv"))
		if err != nil {
			t.Fatal(err)
		}
		begin := strings.LastIndexByte(strings.TrimSpace(string(whole)), '\n') + 1
		for cut := begin; cut < len(whole); cut++ {
			if err := os.WriteFile(a.File("t.csv"), whole[:cut], 0o644); err != nil {
				t.Fatal(err)
			}
			want := rows[:2:2]
			if c.name == "table" && cut >= begin+len("3,cd,") {
				want = append(want, []string{"3", "cd", string(whole[begin+len("3,cd,") : cut])})
				want[2][2] = strings.TrimSpace(want[2][2])
			}
			got, err := c.read(a, "t.csv", columns)
			if err != nil || !reflect.DeepEqual(got, want) {
				t.Fatalf("%s cut to %q: read %q, %v; want %q", c.name, whole[begin:cut], got, err, want)
			}
			if err := c.append(a, "t.csv", columns, [][]string{{"4", "e", "f"}}); err != nil {
				t.Fatal(err)
			}
			got, err = c.read(a, "t.csv", columns)
			if err != nil || !reflect.DeepEqual(got, append(want, []string{"4", "e", "f"})) {
				t.Fatalf("%s cut to %q, then appended to: read %q, %v", c.name, whole[begin:cut], got, err)
			}
		}
	}
}

// TestKeepFails makes every step of Keep fail; the folder is as it was.
func TestKeepFails(t *testing.T) {
	sheets := []Incoming{
		{Entry: Entry{Seq: 1, Hash: Hash([]byte("one")), Path: "one.csv", LoadedAt: time.Unix(0, 0), State: Loaded, Rows: 3}, Data: []byte("one")},
		{Entry: Entry{Seq: 2, Hash: Hash([]byte("two")), Path: "two.csv", LoadedAt: time.Unix(0, 0), State: Loaded, Rows: 4}, Data: []byte("two")},
	}
	for name, obstacle := range map[string]func(a Archive) string{
		"the copy can't be written": func(a Archive) string { return a.Copy(sheets[1].Entry) + partSuffix },
		"the copy can't be renamed": func(a Archive) string { return filepath.Join(a.Copy(sheets[1].Entry), "folder") },
		"the ledger is a folder":    func(a Archive) string { return a.ledgerPath() },
	} {
		a := newArchive(t)
		if err := os.MkdirAll(obstacle(a), 0o755); err != nil {
			t.Fatal(err)
		}
		before := list(t, a.Dir)
		for _, ahead := range []bool{false, true} {
			batch := slices.Clone(sheets)
			if ahead {
				batch[1].Begun = a.Begin(batch[1].Entry, batch[1].Data)
			}
			err := a.Keep(batch)
			if ahead {
				batch[1].Begun.End()
			}
			if err == nil || !strings.Contains(err.Error(), "Nothing of it was kept") {
				t.Errorf("%s, copy begun before: %v: Keep says %v", name, ahead, err)
			}
			if after := list(t, a.Dir); !reflect.DeepEqual(before, after) {
				t.Errorf("%s, copy begun before: %v: the folder was %v and is %v", name, ahead, before, after)
			}
		}
	}
}

// TestKeepBegun keeps a copy whose writing had begun before, and takes away one
// that was not kept.
func TestKeepBegun(t *testing.T) {
	a := newArchive(t)
	in := Incoming{Entry: Entry{Seq: 1, Hash: Hash([]byte("one")), Path: "one.csv", LoadedAt: time.Unix(0, 0), State: Loaded, Rows: 3}, Data: []byte("one")}
	before := list(t, a.Dir)
	a.Begin(in.Entry, in.Data).End()
	if after := list(t, a.Dir); !reflect.DeepEqual(before, after) {
		t.Errorf("never kept: the folder was %v and is %v", before, after)
	}
	in.Begun = a.Begin(in.Entry, in.Data)
	if err := a.Keep([]Incoming{in}); err != nil {
		t.Fatal(err)
	}
	in.Begun.End()
	if data, err := os.ReadFile(a.Copy(in.Entry)); err != nil || string(data) != "one" {
		t.Errorf("the copy holds %q, %v", data, err)
	}
	if unfinished, _ := filepath.Glob(filepath.Join(a.Dir, "sheets", "*"+partSuffix)); len(unfinished) > 0 {
		t.Errorf("left: %v", unfinished)
	}
}

func list(t *testing.T, dir string) (names []string) {
	t.Helper()
	err := filepath.Walk(dir, func(p string, _ os.FileInfo, err error) error {
		names = append(names, p)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return names
}

// TestLock keeps a second holder out until the first lets go.
func TestLock(t *testing.T) {
	a := newArchive(t)
	release, err := a.Lock()
	if err != nil {
		t.Fatal(err)
	}
	if err := a.MarkOpen(); err != nil {
		t.Fatal(err)
	}
	if _, err := a.Lock(); !errors.Is(err, ErrHeld) || !strings.Contains(err.Error(), "process") {
		t.Errorf("a second lock: %v", err)
	}
	if err := release(); err != nil {
		t.Fatal(err)
	}
	again, err := a.Lock()
	if err != nil {
		t.Fatal(err)
	}
	if err := again(); err != nil {
		t.Fatal(err)
	}
}

// TestTidy takes away unfinished copies and nothing else.
func TestTidy(t *testing.T) {
	a := newArchive(t)
	for _, n := range []string{"sheets/abc.csv", "sheets/abc.csv.part", "courses.csv"} {
		if err := os.WriteFile(a.File(n), []byte("x"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := a.Tidy(); err != nil {
		t.Fatal(err)
	}
	left, err := filepath.Glob(a.File("*/*"))
	if err != nil || len(left) != 1 || filepath.Base(left[0]) != "abc.csv" {
		t.Errorf("left in sheets: %v, %v", left, err)
	}
}

// TestHeadings appends under headings in another order, with columns of one's
// own, and to a table that an earlier version began.
func TestHeadings(t *testing.T) {
	a := newArchive(t)
	columns := []string{"id", "what", "why"}
	write := func(text string) {
		if err := os.WriteFile(a.File("t.csv"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("\ufeffwhy,mine,ID,what\nold,x,1,a\n")
	if err := a.AppendTable("t.csv", columns, [][]string{{"2", "b", "new"}}); err != nil {
		t.Fatal(err)
	}
	rows, err := a.ReadTable("t.csv", columns)
	if want := [][]string{{"1", "a", "old"}, {"2", "b", "new"}}; err != nil || !reflect.DeepEqual(rows, want) {
		t.Errorf("another order: %q, %v; want %q", rows, err, want)
	}
	write("id,what\n1,a\n")
	if err := a.AppendTable("t.csv", columns, [][]string{{"2", "b", "new"}}); err == nil || !strings.Contains(err.Error(), `"why"`) {
		t.Errorf("a table of people without a column: %v", err)
	}
	if err := appendList(a, "t.csv", columns, [][]string{{"2", "b", "new"}}); err != nil {
		t.Fatal(err)
	}
	rows, err = a.ReadList("t.csv", columns)
	if want := [][]string{{"1", "a", ""}, {"2", "b", "new"}}; err != nil || !reflect.DeepEqual(rows, want) {
		t.Errorf("an earlier version's list: %q, %v; want %q", rows, err, want)
	}
}

// TestAt names lines as an editor shows them, past blank lines and fields of
// several lines.
func TestAt(t *testing.T) {
	a := newArchive(t)
	if err := os.WriteFile(a.File("t.csv"), []byte("id,what\n\n1,\"two\nlines\"\n,,\n2,b\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	rows, err := a.ReadTable("t.csv", []string{"id", "what"})
	if err != nil || len(rows) != 2 {
		t.Fatalf("%q, %v", rows, err)
	}
	for i, line := range []string{", row 3", ", row 6"} {
		if at := a.At("t.csv", i); !strings.HasSuffix(at, "t.csv"+line) {
			t.Errorf("row %d stands at %s, want line%s", i, at, line)
		}
	}
}
