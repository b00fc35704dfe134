package main

import (
	"context"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline"
)

// finished makes a part of the demo, loads it and gives its folder and export.
func finished(t *testing.T) (dir string, want map[string]string) {
	t.Helper()
	dir = demo(t, 1)
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	return dir, export(t, dir)
}

// copied copies a folder.
func copied(t testing.TB, from string) string {
	t.Helper()
	to := t.TempDir()
	if err := os.CopyFS(to, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
	return to
}

// TestDatabaseLost breaks the database in every way that has been thought of;
// the archive makes it again, with the same ids and figures.
func TestDatabaseLost(t *testing.T) {
	calm, want := finished(t)
	db := func(dir string) string { return filepath.Join(dir, "archive", "lapwing.duckdb") }
	put := func(path string, data []byte) {
		if err := os.WriteFile(path, data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	bytesOf := func(path string) []byte {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	// a database and a log of another archive: killed while it held a log
	foreign := folderWith(t, map[string]string{"sheets/elm-green_2026-02-07.csv": fieldSheet(20)})
	must(t, foreign, "load", filepath.Join(foreign, "sheets"))

	breaks := map[string]func(dir string){
		"as it is":     func(dir string) {},
		"deleted":      func(dir string) { os.Remove(db(dir)) },
		"zero length":  func(dir string) { put(db(dir), nil) },
		"garbage":      func(dir string) { put(db(dir), []byte(strings.Repeat("not a database ", 5000))) },
		"cut in half":  func(dir string) { d := bytesOf(db(dir)); put(db(dir), d[:len(d)/2]) },
		"header only":  func(dir string) { put(db(dir), bytesOf(db(dir))[:4096]) },
		"a block gone": func(dir string) { d := bytesOf(db(dir)); clear(d[len(d)/3 : 2*len(d)/3]); put(db(dir), d) },
		"every block a bit off": func(dir string) {
			d := bytesOf(db(dir))
			for at := 3 * 4096; at < len(d); at += 1 << 18 {
				d[at+100] ^= 4
			}
			put(db(dir), d)
		},
		"garbage in the log":     func(dir string) { put(db(dir)+".wal", []byte("rubbish rubbish rubbish")) },
		"another archive's":      func(dir string) { put(db(dir), bytesOf(db(foreign))) },
		"an unclean close":       func(dir string) { put(db(dir)+".open", []byte("1\n")) },
		"deleted, log left over": func(dir string) { os.Remove(db(dir)); put(db(dir)+".wal", logOf(t, calm)) },
		"a log applied twice":    func(dir string) { put(db(dir)+".wal", logOf(t, calm)) },
		"of another version": func(dir string) {
			edit(t, dir, "update main.state set value = 'of long ago' where name = 'schema'")
		},
		"a sheet twice": func(dir string) {
			edit(t, dir, "insert into record.line select * from record.line where part_no = 1", "insert into sheet.sheet select * from sheet.sheet where sheet_no = 1")
			put(db(dir)+".open", []byte("1\n"))
		},
		"figures twice": func(dir string) {
			edit(t, dir, "insert into record.result select * from record.result", "insert into insight.result select * from insight.result")
			put(db(dir)+".open", []byte("1\n"))
		},
		"a sheet missing": func(dir string) {
			edit(t, dir, "delete from record.line where part_no in (select part_no from sheet.part where sheet_no = 3)",
				"delete from sheet.part where sheet_no = 3", "delete from sheet.sheet where sheet_no = 3")
			put(db(dir)+".open", []byte("1\n"))
		},
	}
	for _, name := range slices.Sorted(maps.Keys(breaks)) {
		ways := []string{"by itself"}
		if name == "as it is" || name == "garbage" || name == "figures twice" {
			ways = append(ways, "by rebuild")
		}
		for _, way := range ways {
			t.Run(name+" "+way, func(t *testing.T) {
				dir := copied(t, calm)
				breaks[name](dir)
				before := record(t, dir)
				if way == "by rebuild" {
					must(t, dir, "rebuild")
				}
				out := filepath.Join(t.TempDir(), "out")
				must(t, dir, "export", out, "--private")
				sameFiles(t, "export", want, snapshot(t, out), 6)
				sameFiles(t, "archive", before, record(t, dir), 10)
				must(t, dir, "check")
			})
		}
	}
}

// edit runs statements on the database of a closed archive, and closes it.
func edit(t *testing.T, dir string, statements ...string) {
	t.Helper()
	s := pipeline.DefaultSettings()
	s.Archive = filepath.Join(dir, "archive")
	pl, err := pipeline.Open(context.Background(), s, pipeline.ReadWrite, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range statements {
		if err := pl.DB.Exec(context.Background(), q); err != nil {
			t.Fatal(err)
		}
	}
	if err := pl.Close(); err != nil {
		t.Fatal(err)
	}
}

// logOf gives the write-ahead log that loading a sheet into a copy of an
// archive leaves behind when the process is killed before it closes.
func logOf(t *testing.T, calm string) []byte {
	t.Helper()
	dir := copied(t, calm)
	s := pipeline.DefaultSettings()
	s.Archive = filepath.Join(dir, "archive")
	ctx := context.Background()
	pl, err := pipeline.Open(ctx, s, pipeline.ReadWrite, nil)
	if err != nil {
		t.Fatal(err)
	}
	defer pl.Close()
	for _, q := range []string{"insert into record.line select * from record.line where part_no = 1",
		"delete from record.result where line_no % 2 = 0", "update insight.result set is_pb = true"} {
		if err := pl.DB.Exec(ctx, q); err != nil {
			t.Fatal(err)
		}
	}
	data, err := os.ReadFile(filepath.Join(s.Archive, "lapwing.duckdb.wal"))
	if err != nil || len(data) == 0 {
		t.Fatalf("no log to take: %v, %d bytes", err, len(data))
	}
	return data
}

// TestCopyMissing takes away or changes a copy in the archive: nothing can be
// made again without it, and the message says which file to bring back.
func TestCopyMissing(t *testing.T) {
	calm, _ := finished(t)
	copies, err := filepath.Glob(filepath.Join(calm, "archive", "sheets", "*.csv"))
	if err != nil || len(copies) < 3 {
		t.Fatal(err, len(copies))
	}
	var sheet string
	for _, c := range copies {
		if filepath.Base(c) != "ledger.csv" {
			sheet = filepath.Base(c)
		}
	}
	for name, harm := range map[string]func(path string) error{
		"missing": os.Remove,
		"changed": func(p string) error { return os.WriteFile(p, []byte("Pos,Name,Time\n"), 0o644) },
	} {
		t.Run(name, func(t *testing.T) {
			dir := copied(t, calm)
			if err := harm(filepath.Join(dir, "archive", "sheets", sheet)); err != nil {
				t.Fatal(err)
			}
			o := lapwing(t, dir, "check")
			if o.code != exitFailed {
				t.Errorf("check: exit %d, want 1", o.code)
			}
			wants(t, o.out+o.errOut, sheet, "backup")
			before := export(t, dir) // the database still has it
			if o = lapwing(t, dir, "rebuild"); o.code != exitFailed {
				t.Errorf("rebuild: exit %d, want 1", o.code)
			}
			wants(t, o.out+o.errOut, sheet[:20], "backup")
			if name == "changed" {
				return
			}
			// brought back, all is as it was
			data, err := os.ReadFile(filepath.Join(calm, "archive", "sheets", sheet))
			if err != nil {
				t.Fatal(err)
			}
			write(t, dir, map[string]string{"archive/sheets/" + sheet: string(data)})
			sameFiles(t, "after the copy is back", before, export(t, dir), 6)
		})
	}
}

// TestLedgerCut cuts the ledger at every place of its last line, as a full
// disk or a power cut may: the sheet of that line is not loaded, or loaded;
// nothing else changes, and loading it again puts all right.
func TestLedgerCut(t *testing.T) {
	calm, want := finished(t)
	ledger, err := os.ReadFile(filepath.Join(calm, "archive", "sheets", "ledger.csv"))
	if err != nil {
		t.Fatal(err)
	}
	last := strings.LastIndexByte(strings.TrimSuffix(string(ledger), "\n"), '\n') + 1
	for cut := last; cut < len(ledger); cut += 1 + (len(ledger)-cut)/3 {
		dir := copied(t, calm)
		p := filepath.Join(dir, "archive", "sheets", "ledger.csv")
		if err := os.WriteFile(p, ledger[:cut], 0o644); err != nil {
			t.Fatal(err)
		}
		o := lapwing(t, dir, "load", filepath.Join(dir, "sheets"))
		if o.code != exitOK {
			t.Fatalf("cut at byte %d of %d: exit %d\n%s%s", cut-last, len(ledger)-last, o.code, o.out, o.errOut)
		}
		sameFiles(t, "export", want, export(t, dir), 6)
		again, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		if strip(string(again)) != strip(string(ledger)) {
			t.Errorf("cut at byte %d: the ledger became\n%s", cut-last, again[last:])
		}
	}
}

// strip takes the column of times out of a ledger.
func strip(ledger string) string {
	lines := strings.Split(ledger, "\n")
	for i, l := range lines {
		if f := strings.Split(l, ","); len(f) > 4 {
			lines[i] = strings.Join(append(f[:3], f[4:]...), ",")
		}
	}
	return strings.Join(lines, "\n")
}

// TestIdsCut cuts the table of runner ids in its last line: every runner keeps
// the id.
func TestIdsCut(t *testing.T) {
	calm, want := finished(t)
	name := filepath.Join("archive", "runner_ids.csv")
	ids, err := os.ReadFile(filepath.Join(calm, name))
	if err != nil {
		t.Fatal(err)
	}
	for _, cut := range []int{1, 2, 5, 11, 400} {
		dir := copied(t, calm)
		if err := os.WriteFile(filepath.Join(dir, name), ids[:len(ids)-cut], 0o644); err != nil {
			t.Fatal(err)
		}
		must(t, dir, "rebuild")
		sameFiles(t, "export", want, export(t, dir), 6)
		again, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if string(again) != string(ids) {
			t.Errorf("%d bytes cut: the table of ids ends in %q, was %q", cut, tail(again), tail(ids))
		}
	}
}

func tail(b []byte) string { return string(b[max(0, len(b)-40):]) }
