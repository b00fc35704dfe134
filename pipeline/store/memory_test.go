package store

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestSpill sorts more than the memory limit holds: it goes to disk beside the
// database, or where a folder is named, and nothing of it is left afterwards.
func TestSpill(t *testing.T) {
	ctx := context.Background()
	for _, named := range []bool{false, true} {
		dir := t.TempDir()
		o := DBOptions{MemoryLimit: "40MB", Threads: 2}
		spill := filepath.Join(dir, "a.duckdb.tmp")
		if named {
			spill = filepath.Join(dir, "spill")
			o.TempDir = spill
		}
		db, err := Open(ctx, filepath.Join(dir, "a.duckdb"), o)
		if err != nil {
			t.Fatal(err)
		}
		if err := db.Exec(ctx, "create table t as select i, hash(i)::varchar || hash(i + 1)::varchar as s from range(500_000) r(i)"); err != nil {
			t.Fatal(err)
		}
		spilled := int64(0)
		watch, stop := make(chan bool), make(chan bool)
		go func() {
			defer close(watch)
			for {
				files, _ := os.ReadDir(spill)
				size := int64(0)
				for _, f := range files {
					if st, err := f.Info(); err == nil {
						size += st.Size()
					}
				}
				spilled = max(spilled, size)
				select {
				case <-stop:
					return
				case <-time.After(2 * time.Millisecond):
				}
			}
		}()
		var n, wrong int
		err = db.Get(ctx, "select count(*), count(*) filter (s < before) from (select s, lag(s) over (order by s, i) as before from t)", &n, &wrong)
		close(stop)
		<-watch
		if err != nil || n != 500_000 || wrong != 0 {
			t.Fatalf("%d rows, %d out of order, %v", n, wrong, err)
		}
		if spilled < 1<<20 {
			t.Errorf("only %d bytes went to disk", spilled)
		}
		if err := db.Close(); err != nil {
			t.Fatal(err)
		}
		if files, _ := os.ReadDir(spill); len(files) > 0 {
			t.Errorf("%d files left in %s", len(files), spill)
		}
	}
}

// TestUsualMemory checks the limit where nobody gives one, and that one that
// was given stands.
func TestUsualMemory(t *testing.T) {
	ctx := context.Background()
	for limit, want := range map[string]string{"": "1.8 GiB", "500MB": "476.8 MiB"} {
		db, err := Open(ctx, filepath.Join(t.TempDir(), "a.duckdb"), DBOptions{MemoryLimit: limit})
		if err != nil {
			t.Fatal(err)
		}
		var now string
		if err := db.Get(ctx, "select current_setting('memory_limit')", &now); err != nil {
			t.Fatal(err)
		}
		if now != want && (limit != "" || strings.HasSuffix(now, "GiB")) { // a very small machine has less
			t.Errorf("limit %q is %s, want %s", limit, now, want)
		}
		if err := db.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// TestTidyTakesSpill checks that what a killed process had spilled goes away.
func TestTidyTakesSpill(t *testing.T) {
	a := Archive{t.TempDir()}
	if err := a.Make(); err != nil {
		t.Fatal(err)
	}
	spill := a.DatabasePath() + ".tmp"
	if err := os.MkdirAll(spill, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(spill, "duckdb_temp_storage-0.tmp"), make([]byte, 1000), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := a.Tidy(); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(spill); !os.IsNotExist(err) {
		t.Errorf("%s is still there (%v)", spill, err)
	}
}
