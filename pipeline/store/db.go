// Package store keeps the archive: the folder of sheet copies, ledger and
// decisions that everything is derived from, and the DuckDB database derived
// from it. It is the only room that knows the database driver.
//
// The database is opened once a process and once a path (two engines on one
// file destroy it silently), one process writes at a time, rows travel in and
// out in Arrow batches, and an SQL file stands for one table.
package store

import (
	"cmp"
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"

	"github.com/marcboeker/go-duckdb"
)

// DBOptions are the settings of a database that a user can change.
type DBOptions struct {
	MemoryLimit string // "4GB"; empty: UsualMemory, or 80 % of the machine's memory where that is less
	Threads     int    // 0: one a core
	ReadOnly    bool
	TempDir     string // where work that does not fit in memory spills; empty: beside the file
}

// UsualMemory is what the database may take where nobody says otherwise. Left
// to itself it takes 80 % of the machine's memory before it lets go of what it
// has read once.
const UsualMemory = "2GB"

// DB is one open database. Conn is the single connection that writes; readers
// in parallel take their own from Pool.
type DB struct {
	Path string
	Pool *sql.DB
	conn *sql.Conn
}

// ErrHeld means another process has the archive open.
var ErrHeld = errors.New("another lapwing is using this archive")

var (
	openMu    sync.Mutex
	openPaths = map[string]bool{}
)

// Open opens (or creates) the database file. An empty path is a database in
// memory, for tests.
func Open(ctx context.Context, path string, o DBOptions) (*DB, error) {
	key := path
	if path != "" {
		abs, err := filepath.Abs(path)
		if err != nil {
			return nil, err
		}
		key = abs
		openMu.Lock()
		busy := openPaths[key]
		openPaths[key] = true
		openMu.Unlock()
		if busy {
			return nil, fmt.Errorf("%s: %w (this same process)", path, ErrHeld)
		}
	}
	db, err := open(ctx, path, o)
	if err != nil && path != "" {
		openMu.Lock()
		delete(openPaths, key)
		openMu.Unlock()
	}
	return db, err
}

func open(ctx context.Context, path string, o DBOptions) (*DB, error) {
	if strings.Contains(path, "?") { // the engine would put its log somewhere else
		return nil, fmt.Errorf("%s: the archive folder's name may not hold a question mark; please rename it", path)
	}
	q := url.Values{}
	q.Set("autoinstall_known_extensions", "false")
	q.Set("autoload_known_extensions", "false")
	if o.MemoryLimit != "" {
		q.Set("memory_limit", o.MemoryLimit)
	}
	if o.Threads > 0 {
		q.Set("threads", fmt.Sprint(o.Threads))
	}
	name, attach := path, (func(driver.ExecerContext) error)(nil)
	if strings.ContainsAny(path, "#%") {
		name, attach = "", attachFile(ctx, path, o.ReadOnly)
		o.TempDir = cmp.Or(o.TempDir, path+".tmp")
	} else if o.ReadOnly && path != "" {
		q.Set("access_mode", "read_only")
	}
	if o.TempDir != "" {
		q.Set("temp_directory", o.TempDir)
	}
	connector, err := duckdb.NewConnector(name+"?"+q.Encode(), attach)
	if err != nil {
		return nil, openError(path, err)
	}
	pool := sql.OpenDB(connector)
	conn, err := pool.Conn(ctx)
	if err != nil {
		pool.Close()
		return nil, openError(path, err)
	}
	db := &DB{Path: path, Pool: pool, conn: conn}
	if o.MemoryLimit == "" && path != "" {
		err = db.limitMemory(ctx)
	}
	if err != nil {
		return nil, errors.Join(openError(path, err), conn.Close(), pool.Close())
	}
	return db, nil
}

// attachFile makes every connection of a database in memory work on a file. The driver
// takes the name of a file for the beginning of a URL, so that one with # or % in it
// can be named in SQL only.
func attachFile(ctx context.Context, path string, readOnly bool) func(driver.ExecerContext) error {
	how := ""
	if readOnly {
		how = " (read_only)"
	}
	return func(conn driver.ExecerContext) error {
		for _, statement := range []string{"attach if not exists " + Quote(path) + " as archive" + how, "use archive"} {
			if _, err := conn.ExecContext(ctx, statement, nil); err != nil {
				return err
			}
		}
		return nil
	}
}

// limitMemory lowers the limit that the engine has chosen to UsualMemory.
func (d *DB) limitMemory(ctx context.Context) error {
	var now string // "18.8 GiB"
	if err := d.Get(ctx, "select current_setting('memory_limit')", &now); err != nil {
		return err
	}
	var gigabytes float64
	var unit string
	if n, _ := fmt.Sscanf(now, "%f %s", &gigabytes, &unit); n == 2 && (unit == "TiB" || unit == "GiB" && gigabytes > 1.87) {
		return d.Exec(ctx, "set memory_limit = "+Quote(UsualMemory))
	}
	return nil
}

var pidIn = regexp.MustCompile(`\(PID (\d+)\)`)

func openError(path string, err error) error {
	if strings.Contains(err.Error(), "Could not set lock") {
		if m := pidIn.FindStringSubmatch(err.Error()); m != nil {
			return fmt.Errorf("%s: %w (process %s). Wait until it has finished, then try again", path, ErrHeld, m[1])
		}
		return fmt.Errorf("%s: %w. Wait until it has finished, then try again", path, ErrHeld)
	}
	return fmt.Errorf("%s: %w", path, err)
}

// Damaged says whether an error means that the database file itself can't be
// trusted: every block of it carries a checksum.
func Damaged(err error) bool {
	if err == nil {
		return false
	}
	for _, words := range []string{"Corrupt database file", "not a valid DuckDB database file", "Failure while replaying WAL", "INTERNAL Error", "Serialization Error", "Could not read enough bytes", "Attempted to dereference"} {
		if strings.Contains(err.Error(), words) {
			return true
		}
	}
	return false
}

// Close releases the file.
func (d *DB) Close() error {
	err := errors.Join(d.conn.Close(), d.Pool.Close())
	if d.Path != "" {
		if abs, e := filepath.Abs(d.Path); e == nil {
			openMu.Lock()
			delete(openPaths, abs)
			openMu.Unlock()
		}
	}
	return err
}

// Exec runs one statement on the writing connection.
func (d *DB) Exec(ctx context.Context, statement string, args ...any) error {
	_, err := d.conn.ExecContext(ctx, statement, args...)
	return err
}

// QueryContext runs one query on the writing connection.
func (d *DB) QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error) {
	return d.conn.QueryContext(ctx, query, args...)
}

// Get reads one row into the given pointers.
func (d *DB) Get(ctx context.Context, query string, into ...any) error {
	return d.conn.QueryRowContext(ctx, query).Scan(into...)
}

// Transaction runs f between BEGIN and COMMIT on the writing connection. Any
// error rolls back: this engine's COMMIT after a failed statement reports
// success although nothing was kept.
func (d *DB) Transaction(ctx context.Context, f func() error) (err error) {
	if err := d.Exec(ctx, "begin transaction"); err != nil {
		return err
	}
	done := false
	defer func() {
		if !done {
			_ = d.Exec(context.WithoutCancel(ctx), "rollback")
		}
	}()
	if err := f(); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	if err := d.Exec(ctx, "commit"); err != nil {
		return err
	}
	done = true
	return nil
}

// raw hands over the driver's connection.
func (d *DB) raw(f func(driver.Conn) error) error {
	return d.conn.Raw(func(c any) error { return f(c.(driver.Conn)) })
}

// RemoveFiles deletes a database and its write-ahead log together: a log left
// alone would be replayed into the next database of that name.
func RemoveFiles(path string) error {
	for _, p := range []string{path + ".wal", path} {
		if err := os.Remove(p); err != nil && !errors.Is(err, os.ErrNotExist) {
			return err
		}
	}
	_ = os.RemoveAll(path + ".tmp")
	return nil
}

// Quote makes an SQL string literal.
func Quote(s string) string { return "'" + strings.ReplaceAll(s, "'", "''") + "'" }
