package pipeline

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"sync/atomic"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/parallel"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	sqlfiles "lapwing/sql"
)

// Pipeline is an archive at work: its folder, its database and the settings.
type Pipeline struct {
	Settings Settings
	Archive  store.Archive
	DB       *store.DB
	Progress Progress
	Timings  []Timing // of the pieces of work done so far

	readOnly bool
	trusted  bool         // whatever was open before was closed cleanly or found to be whole
	release  func() error // lets other processes in
	courses  *courseBook
	ahead    map[string]int // runs of each course in the files of the load under way
	texts    *dictionary    // while sheets are loaded
	fewLines int            // in place of someFrom, for tests
	factsAt  string         // what reported_facts was made of

	limits    sheet.Limits // of what one sheet may cost
	forgotten *forgotten   // during a load; nil where nobody asked to be forgotten
}

// Progress is told how far a long piece of work has come. Done is called once
// at the end of each piece.
type Progress interface {
	Step(what string, done, of int64)
	Done()
}

type silent struct{}

func (silent) Step(string, int64, int64) {}
func (silent) Done()                     {}

// Mode says what a command wants of the archive.
type Mode int

const (
	ReadWrite Mode = iota
	ReadOnly       // several processes may read at once; figures are as last refreshed
	Afresh         // ReadWrite with a database made again, whatever the present one holds
)

// ErrWaits means that the work was done as far as it could be and something
// waits for an answer.
var ErrWaits = errors.New("something waits for an answer")

// Open opens an archive, making it where there is none. A database that is
// missing, of another version, not cleanly closed and unequal to the ledger,
// or damaged, is made again from the folder before anything else.
func Open(ctx context.Context, s Settings, mode Mode, p Progress) (*Pipeline, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	if p == nil {
		p = silent{}
	}
	pl := &Pipeline{Settings: s, Archive: store.Archive{Dir: s.Archive}, Progress: p, readOnly: mode == ReadOnly}
	if mode == ReadOnly {
		switch ok, err := pl.openForReading(ctx); {
		case err != nil:
			return nil, err
		case ok:
			return pl, nil
		}
		pl.readOnly = false // something must be brought up to date first
	}
	if err := pl.readCourses(); err != nil { // before anything is made
		return nil, err
	}
	if err := pl.Archive.Make(); err != nil {
		return nil, err
	}
	if err := pl.openForWriting(ctx, mode == Afresh); err != nil {
		return nil, err
	}
	if err := pl.watchMemory(ctx); err != nil {
		return nil, errors.Join(err, pl.Close())
	}
	if mode == ReadOnly {
		if _, err := pl.Refresh(ctx, false); err != nil {
			return nil, errors.Join(err, pl.Close())
		}
	}
	return pl, nil
}

// openForReading opens the database without the right to write, so that
// several processes can read at once. ok is false where it is missing, was not
// closed cleanly, is of another version or not up to date: then it has to be
// opened for writing.
func (pl *Pipeline) openForReading(ctx context.Context) (ok bool, err error) {
	if _, err := os.Stat(pl.Archive.DatabasePath()); err != nil {
		if _, e := os.Stat(pl.Archive.File("sheets")); e != nil {
			return false, fmt.Errorf("%s: there is no archive here yet. Load sheets first: lapwing run", pl.Settings.Archive)
		}
		return false, nil
	}
	if pl.Archive.WasUnclean() {
		return false, nil
	}
	db, err := store.Open(ctx, pl.Archive.DatabasePath(), pl.dbOptions(true))
	if errors.Is(err, store.ErrHeld) {
		return false, err
	}
	if err != nil {
		return false, nil // opening it for writing finds out why
	}
	pl.DB = db
	err = func() error {
		if v, err := pl.state(ctx, "schema"); err != nil || v != schemaVersion() {
			return nil
		}
		stamp, err := pl.figuresStamp()
		if err != nil {
			return err
		}
		have, err := pl.state(ctx, "figures")
		if err != nil || have != stamp {
			return err
		}
		ok = true
		return pl.readCourses()
	}()
	if err != nil || !ok {
		err = errors.Join(err, db.Close())
		pl.DB = nil
	}
	return ok && err == nil, err
}

func (pl *Pipeline) dbOptions(readOnly bool) store.DBOptions {
	return store.DBOptions{MemoryLimit: pl.Settings.MemoryLimit, Threads: pl.Settings.Threads, ReadOnly: readOnly}
}

func (pl *Pipeline) openForWriting(ctx context.Context, afresh bool) error {
	release, err := pl.Archive.Lock()
	if err != nil {
		return err
	}
	pl.release = release
	if err := pl.finishSwap(); err != nil {
		return errors.Join(err, pl.Close())
	}
	unclean := pl.Archive.WasUnclean()
	why, err := pl.openOrDoubt(ctx, unclean)
	pl.trusted = !unclean || err == nil
	if err != nil {
		return errors.Join(err, pl.Close())
	}
	if why == "" && !afresh {
		err := pl.courses.update(ctx, pl)
		if err == nil {
			err = pl.catchUp(ctx)
		}
		if err == nil {
			return nil
		}
		if ctx.Err() != nil || !store.Damaged(err) {
			return errors.Join(err, pl.Close())
		}
		why = "it is damaged"
	}
	if why != "new" {
		// the database may be the last trace of a sheet whose copy is gone
		if bad, _, err := pl.badCopies(ctx); err != nil || len(bad) > 0 {
			if err == nil {
				err = fmt.Errorf("the database must be made again and can't be. %s", badCopy(pl.Archive.Copy(bad[0]), bad[0].Path))
			}
			return errors.Join(err, pl.Close())
		}
		if !afresh {
			fmt.Fprintf(os.Stderr, "Making the database again from the archive: %s.\n", why)
		}
	}
	return pl.startOver(ctx)
}

// openOrDoubt opens the database for writing. It gives the reason where the
// database can't be trusted, "" where it can; an error is about the archive
// folder or the settings.
func (pl *Pipeline) openOrDoubt(ctx context.Context, unclean bool) (why string, err error) {
	path := pl.Archive.DatabasePath()
	db, err := store.Open(ctx, path, pl.dbOptions(false))
	if err != nil {
		if errors.Is(err, store.ErrHeld) || ctx.Err() != nil {
			return "", err
		}
		if f, e := os.OpenFile(path, os.O_RDWR, 0); e != nil {
			return "", e
		} else if e := f.Close(); e != nil {
			return "", e
		}
		// Settings that this engine refuses are no reason to make anything again.
		memory, e := store.Open(ctx, "", pl.dbOptions(false))
		if e != nil {
			return "", e
		}
		return fmt.Sprintf("it can't be read (%s)", firstLine(err)), memory.Close()
	}
	pl.DB = db
	if err := pl.Archive.MarkOpen(); err != nil {
		return "", fmt.Errorf("can't write in the archive folder: %w", err)
	}
	if unclean {
		if err := pl.Archive.Tidy(); err != nil {
			return "", err
		}
	}
	return pl.whyRebuild(ctx, unclean)
}

func firstLine(err error) string {
	s, _, _ := strings.Cut(err.Error(), "\n")
	return s
}

// whyRebuild looks for reasons not to trust the database, "" where there are
// none.
func (pl *Pipeline) whyRebuild(ctx context.Context, unclean bool) (string, error) {
	unreadable := func(err error) (string, error) {
		if ctx.Err() != nil {
			return "", err
		}
		return "it can't be read (" + firstLine(err) + ")", nil
	}
	var n int
	if err := pl.DB.Get(ctx, "select count(*) from information_schema.tables where table_schema = 'main' and table_name = 'state'", &n); err != nil {
		return unreadable(err)
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return "", err
	}
	if n == 0 {
		if len(ledger) == 0 {
			return "new", nil
		}
		return "it is missing or empty", nil
	}
	v, err := pl.state(ctx, "schema")
	if err != nil {
		return unreadable(err)
	}
	if v != schemaVersion() {
		return "it was made by another version of lapwing", nil
	}
	if err := pl.readCourses(); err != nil {
		return "", err
	}
	if now, err := pl.readingKey(); err != nil {
		return "", err
	} else if read, err := pl.state(ctx, "reading"); err != nil {
		return unreadable(err)
	} else if read != now {
		return "courses.csv or a setting that the sheets are read by has changed", nil
	}
	known := map[sheetKey]bool{}
	for _, e := range ledger {
		known[sheetKey{e.Seq, e.Hash}] = true
	}
	have, err := pl.sheetsInDatabase(ctx)
	if err != nil {
		return unreadable(err)
	}
	for _, k := range have {
		if !known[k] {
			return "it holds a sheet that the archive does not have", nil
		}
	}
	if !unclean {
		return "", nil
	}
	// After an unclean close a transaction can have been applied twice or not
	// at all: compare the rows of every sheet with what was read from it, and
	// compute the figures again.
	faults, err := pl.checkFile(ctx, "check/rows_agree_with_sheet.sql")
	if err != nil {
		return unreadable(err)
	}
	twice := map[sheetKey]bool{}
	for _, k := range have {
		if twice[k] {
			faults++
		}
		twice[k] = true
	}
	if faults > 0 {
		return "the last lapwing was stopped in the middle and its rows don't agree with the sheets", nil
	}
	return "", pl.DB.Transaction(ctx, func() error {
		return errors.Join(pl.setState(ctx, "figures", ""), pl.setState(ctx, stateBase, ""))
	})
}

// sheetKey names a sheet by its place in the ledger and its bytes.
type sheetKey struct {
	seq  int
	hash string
}

// sheetsInDatabase lists the sheets whose lines are in the database.
func (pl *Pipeline) sheetsInDatabase(ctx context.Context) ([]sheetKey, error) {
	var out []sheetKey
	err := pl.DB.Scan(ctx, "select sheet_no, hash from sheet.sheet order by sheet_no", func(r arrow.Record) error {
		no, hash := r.Column(0).(*array.Int32), r.Column(1).(*array.String)
		for k := range int(r.NumRows()) {
			out = append(out, sheetKey{int(no.Value(k)), strings.Clone(hash.Value(k))})
		}
		return nil
	})
	return out, err
}

// startOver makes an empty database and loads every sheet of the ledger.
func (pl *Pipeline) startOver(ctx context.Context) error {
	fail := func(err error) error { return errors.Join(err, pl.Close()) }
	if pl.DB != nil {
		db := pl.DB
		pl.DB = nil
		if err := db.Close(); err != nil && !store.Damaged(err) {
			return fail(err)
		}
	}
	pl.texts = nil
	path := pl.Archive.DatabasePath()
	if err := store.RemoveFiles(path); err != nil {
		return fail(err)
	}
	db, err := store.Open(ctx, path, pl.dbOptions(false))
	if err != nil {
		return fail(err)
	}
	pl.DB = db
	if err := pl.Archive.MarkOpen(); err != nil {
		return fail(fmt.Errorf("can't write in the archive folder: %w", err))
	}
	if err := pl.readCourses(); err != nil {
		return fail(err)
	}
	if err := pl.makeTables(ctx); err != nil {
		return fail(err)
	}
	if err := pl.catchUp(ctx); err != nil {
		return fail(err)
	}
	return nil
}

// Close closes the database and lets other processes in. A clean close of a
// database that could be trusted is noted in the archive.
func (pl *Pipeline) Close() error {
	var err error
	if pl.DB != nil {
		err = pl.DB.Close()
		pl.DB = nil
		if err == nil && !pl.readOnly && pl.trusted {
			err = pl.Archive.MarkClosed()
		}
	}
	if pl.release != nil {
		err = errors.Join(err, pl.release())
		pl.release = nil
	}
	return err
}

// tableFolders are the schemas whose files define stored tables; main holds
// views.
var tableFolders = []string{"sheet", "record", "insight"}

func sqlFile(name string) (*store.SQLFile, error) { return store.ParseSQLFile(sqlfiles.Files, name) }

func sqlFolder(folder string) ([]*store.SQLFile, error) {
	names, err := fs.Glob(sqlfiles.Files, folder+"/*.sql")
	if err != nil {
		return nil, err
	}
	sort.Strings(names)
	var out []*store.SQLFile
	for _, n := range names {
		f, err := sqlFile(n)
		if err != nil {
			return nil, err
		}
		out = append(out, f)
	}
	return out, nil
}

// makeTables makes every table empty and every view.
func (pl *Pipeline) makeTables(ctx context.Context) error {
	return pl.DB.Transaction(ctx, func() error {
		for _, folder := range tableFolders {
			if err := pl.DB.Exec(ctx, "create schema if not exists "+folder); err != nil {
				return err
			}
			files, err := sqlFolder(folder)
			if err != nil {
				return err
			}
			for _, f := range files {
				if err := pl.makeEmpty(ctx, f); err != nil {
					return err
				}
			}
		}
		views, err := sqlFolder("main")
		if err != nil {
			return err
		}
		for _, f := range views {
			if err := pl.DB.MakeView(ctx, f); err != nil {
				return err
			}
		}
		for _, q := range []string{"create table main.state (name varchar, value varchar)", "insert into record.text values (0, '')"} {
			if err := pl.DB.Exec(ctx, q); err != nil {
				return err
			}
		}
		reading, err := pl.readingKey()
		if err != nil {
			return err
		}
		return errors.Join(pl.setState(ctx, "reading", reading), pl.setState(ctx, "schema", schemaVersion()))
	})
}

// makeEmpty makes a table from its definition, without the row of blanks that
// the definition itself selects.
func (pl *Pipeline) makeEmpty(ctx context.Context, f *store.SQLFile) error {
	if err := pl.DB.MakeTable(ctx, &store.SQLFile{Path: f.Path, Table: f.Table, Grain: f.Grain, Columns: f.Columns, Select: f.Select}); err != nil {
		return err
	}
	return pl.DB.Exec(ctx, "delete from "+f.Table)
}

// schemaVersion changes when any table definition changes.
func schemaVersion() string {
	var b strings.Builder
	for _, folder := range append(tableFolders, "main") {
		names, _ := fs.Glob(sqlfiles.Files, folder+"/*.sql")
		sort.Strings(names)
		for _, n := range names {
			text, _ := fs.ReadFile(sqlfiles.Files, n)
			b.WriteString(n)
			b.Write(text)
		}
	}
	return store.Hash([]byte(b.String()))[:16]
}

func (pl *Pipeline) state(ctx context.Context, name string) (string, error) {
	rows, err := pl.DB.QueryContext(ctx, "select value from main.state where name = ?", name)
	if err != nil {
		return "", err
	}
	defer rows.Close()
	v := ""
	for rows.Next() {
		if err := rows.Scan(&v); err != nil {
			return "", err
		}
	}
	return v, rows.Err()
}

func (pl *Pipeline) setState(ctx context.Context, name, value string) error {
	if err := pl.DB.Exec(ctx, "delete from main.state where name = ?", name); err != nil {
		return err
	}
	return pl.DB.Exec(ctx, "insert into main.state values (?, ?)", name, value)
}

// checkFile runs an invariant and counts the rows that break it.
func (pl *Pipeline) checkFile(ctx context.Context, name string) (int, error) {
	f, err := sqlFile(name)
	if err != nil {
		return 0, err
	}
	n := 0
	err = pl.DB.Get(ctx, "select count(*) from (\n"+f.Select+"\n)", &n)
	return n, err
}

// relative gives the path of a file inside the folder that was named for
// loading, with forward slashes; the file's name where the file was named.
func relative(root, path string) string {
	if r, err := filepath.Rel(root, path); err == nil && r != "." && !strings.HasPrefix(r, "..") {
		return filepath.ToSlash(r)
	}
	return filepath.Base(path)
}

// ForReading is a pipeline without a database: enough to read sheets, and to
// list the ledger while another process works.
func ForReading(s Settings) (*Pipeline, error) {
	pl := &Pipeline{Settings: s, Archive: store.Archive{Dir: s.Archive}, Progress: silent{}, readOnly: true}
	return pl, pl.readCourses()
}

// Parallel calls f for 0 … n-1, as many at a time as there are cores, and
// stops at the first error.
func (pl *Pipeline) Parallel(ctx context.Context, what string, n int, f func(ctx context.Context, i int) error) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	var done atomic.Int64
	parallel.Each(n, pl.workers(), func(i int) {
		if ctx.Err() != nil {
			return
		}
		if err := f(ctx, i); err != nil {
			cancel(err)
		}
		pl.Progress.Step(what, done.Add(1), int64(n))
	})
	pl.Progress.Done()
	return context.Cause(ctx)
}
