package store

import (
	"context"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// TestOddFolders checks that a folder may be called nearly anything: the database is
// made in it, keeps what is written, is opened for reading alone, and is held by one only.
func TestOddFolders(t *testing.T) {
	ctx := context.Background()
	names := []string{"Runs #1", "50%", "%41 of it", "#2 100%", "plain", "it's", "O\"Neill"}
	if runtime.GOOS == "windows" {
		names = names[:len(names)-1]
	} else if _, err := Open(ctx, filepath.Join(t.TempDir(), "who?", "a.duckdb"), DBOptions{}); err == nil || !strings.Contains(err.Error(), "question mark") {
		t.Errorf("a question mark: %v, want that it is refused", err)
	}
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), name)
			if err := os.Mkdir(dir, 0o755); err != nil {
				t.Fatal(err)
			}
			path := filepath.Join(dir, "a.duckdb")
			db, err := Open(ctx, path, DBOptions{MemoryLimit: "500MB", Threads: 1})
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range []string{"create schema record", "create table record.line as select range as n from range(1000)", "create view lines as select * from record.line"} {
				if err := db.Exec(ctx, s); err != nil {
					t.Fatal(err)
				}
			}
			var memory string
			if err := db.Get(ctx, "select current_setting('memory_limit')", &memory); err != nil || memory != "476.8 MiB" {
				t.Errorf("memory %s (%v), want 476.8 MiB", memory, err)
			}
			if _, err := Open(ctx, path, DBOptions{}); err == nil {
				t.Error("opened twice")
			}
			if err := db.Close(); err != nil {
				t.Fatal(err)
			}
			if info, err := os.Stat(path); err != nil || info.Size() == 0 {
				t.Fatalf("nothing is in %s: %v", path, err)
			}

			db, err = Open(ctx, path, DBOptions{ReadOnly: true})
			if err != nil {
				t.Fatal(err)
			}
			var n, sum int
			if err := db.Pool.QueryRowContext(ctx, "select count(*), sum(n) from lines").Scan(&n, &sum); err != nil || n != 1000 || sum != 499500 { // on a connection of its own
				t.Errorf("%d lines with the sum %d, want 1000 and 499500 (%v)", n, sum, err)
			}
			if err := db.Exec(ctx, "delete from record.line"); err == nil {
				t.Error("written to, though opened for reading")
			}
			if err := db.Close(); err != nil {
				t.Fatal(err)
			}
		})
	}
}
