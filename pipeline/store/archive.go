package store

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// Archive is the folder that everything is derived from: byte-exact sheet
// copies with their ledger, decisions, side tables and runner ids, all in
// plain text. The database beside them can be made again from it at any time.
//
//	sheets/<sha256>.<ext>   copies, never changed
//	sheets/ledger.csv       what was loaded, in order
//	decisions.csv           every human decision, append-only
//	runner_ids.csv          which lines each runner id is anchored to
//	courses.csv members.csv volunteers.csv history.csv   optional side tables
//	lapwing.duckdb          derived
type Archive struct{ Dir string }

// DatabasePath is where the derived database lives.
func (a Archive) DatabasePath() string { return filepath.Join(a.Dir, "lapwing.duckdb") }

// uncleanPath marks a database that is open for writing; it is still there
// after a kill.
func (a Archive) uncleanPath() string { return filepath.Join(a.Dir, "lapwing.duckdb.open") }

func (a Archive) ledgerPath() string { return filepath.Join(a.Dir, "sheets", "ledger.csv") }

// File is the path of a file of the archive folder.
func (a Archive) File(name string) string { return filepath.Join(a.Dir, name) }

// Make creates the folder.
func (a Archive) Make() error {
	if err := os.MkdirAll(filepath.Join(a.Dir, "sheets"), 0o755); err != nil {
		return fmt.Errorf("can't make the archive folder: %w", err)
	}
	return nil
}

// SheetState is what became of a sheet.
type SheetState string

const (
	Loaded    SheetState = "loaded"
	Waiting   SheetState = "waiting"   // course or date missing, or another question open
	Withdrawn SheetState = "withdrawn" // taken out by hand; can be restored
)

// Entry is one line of the ledger. A later line with the same Seq replaces an
// earlier one, so the file is only ever appended to.
type Entry struct {
	Seq      int // order of loading, from 1; never re-used
	Hash     string
	Path     string // as given, relative to the folder loaded
	LoadedAt time.Time
	Course   string // given by hand, else ""
	Date     string
	Session  string
	Distance string
	Kind     string
	State    SheetState
	Rows     int    // lines that stand for a finisher
	Answers  string // given by hand to questions about columns
}

var ledgerHead = []string{"seq", "hash", "path", "loaded_at", "course", "date", "session", "distance", "kind", "state", "rows", "answers"}

// Copy is the path of the byte-exact copy of a sheet.
func (a Archive) Copy(e Entry) string {
	return filepath.Join(a.Dir, "sheets", e.Hash+copyExt(e.Path))
}

func copyExt(path string) string {
	ext := strings.ToLower(filepath.Ext(path))
	for _, r := range strings.TrimPrefix(ext, ".") {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') {
			return ""
		}
	}
	if len(ext) > 6 {
		return ""
	}
	return ext
}

// Hash names a sheet by its bytes (SHA-256).
func Hash(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

// Ledger reads the ledger; the latest line of each Seq stands. A last line
// that was cut short is left out: its sheet was never said to be loaded.
func (a Archive) Ledger() ([]Entry, error) {
	rows, err := readTable(a.ledgerPath(), ledgerHead, byProgram)
	if err != nil {
		return nil, err
	}
	at := map[int]int{}
	var out []Entry
	for i, r := range rows {
		seq, err1 := strconv.Atoi(r[0])
		n, err2 := strconv.Atoi(r[10])
		when, err3 := time.Parse(time.RFC3339, r[3])
		if err := errors.Join(err1, err2, err3); err != nil {
			return nil, fmt.Errorf("%s, row %d: %w; restore this file from a backup", a.ledgerPath(), i+2, err)
		}
		e := Entry{seq, r[1], r[2], when, r[4], r[5], r[6], r[7], r[8], SheetState(r[9]), n, r[11]}
		if k, ok := at[seq]; ok {
			out[k] = e
			continue
		}
		at[seq] = len(out)
		out = append(out, e)
	}
	return out, nil
}

// Incoming is a sheet on its way into the archive.
type Incoming struct {
	Entry Entry
	Data  []byte // nil where the copy is already there
	Begun *Begun // its copy, where writing it has begun already
}

// Begun is a copy that is written while its sheet is still being read.
type Begun struct {
	file *os.File
	done chan struct{}
	err  error // good once done is closed
}

// Begin writes the copy of a sheet in the background, under the name that Keep
// gives unfinished ones. End has to be called, whatever becomes of the sheet.
func (a Archive) Begin(e Entry, data []byte) *Begun {
	b := &Begun{done: make(chan struct{})}
	go func() {
		defer close(b.done)
		if b.file, b.err = os.OpenFile(a.Copy(e)+partSuffix, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o644); b.err != nil {
			return
		}
		if _, b.err = b.file.Write(data); b.err == nil {
			b.err = b.file.Sync()
		}
	}()
	return b
}

// End takes a copy away that was not kept.
func (b *Begun) End() {
	<-b.done
	if b.file != nil {
		b.file.Close()
		os.Remove(b.file.Name()) // not there where it was kept
	}
}

// Keep puts copies and ledger lines on disk for good: every copy is written
// under a temporary name and flushed, then renamed, then the ledger lines are
// appended and flushed. Only then do the sheets count as loaded. Where it
// fails, the folder is as it was.
func (a Archive) Keep(batch []Incoming) (err error) {
	var made []string
	defer func() {
		if err != nil {
			for _, p := range made {
				os.Remove(p)
			}
			err = fmt.Errorf("can't keep the sheets in the archive: %w. Nothing of it was kept; make room or check permissions, then give the same command again", err)
		}
	}()
	var tmp [][2]string
	var files []*os.File
	defer func() {
		for _, f := range files {
			f.Close()
		}
	}()
	for _, in := range batch {
		if in.Data == nil {
			continue
		}
		to := a.Copy(in.Entry)
		if st, err := os.Stat(to); err == nil && st.Size() == int64(len(in.Data)) {
			continue
		}
		t := to + partSuffix
		if in.Begun != nil {
			if <-in.Begun.done; in.Begun.err != nil {
				return in.Begun.err
			}
			tmp = append(tmp, [2]string{t, to})
			continue
		}
		f, err := os.OpenFile(t, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o644)
		if err != nil {
			return err
		}
		tmp = append(tmp, [2]string{t, to})
		made = append(made, t)
		files = append(files, f)
		if _, err := f.Write(in.Data); err != nil {
			return err
		}
	}
	if err := flushAll(files); err != nil {
		return err
	}
	for _, t := range tmp {
		if err := os.Rename(t[0], t[1]); err != nil {
			return err
		}
		made = append(made, t[1])
	}
	if len(tmp) > 0 {
		if err := flushDir(filepath.Join(a.Dir, "sheets")); err != nil {
			return err
		}
	}
	var rows [][]string
	for _, in := range batch {
		e := in.Entry
		rows = append(rows, []string{strconv.Itoa(e.Seq), e.Hash, e.Path, e.LoadedAt.UTC().Format(time.RFC3339), e.Course, e.Date, e.Session, e.Distance, e.Kind, string(e.State), strconv.Itoa(e.Rows), e.Answers})
	}
	return appendTable(a.ledgerPath(), ledgerHead, rows, byProgram)
}

// partSuffix ends the name of a file that is not finished.
const partSuffix = ".part"

// Tidy takes away copies that a kill left unfinished, and what the database had
// spilled to disk. Only the process that holds the lock may call it, before it
// works with the database.
func (a Archive) Tidy() error {
	unfinished, err := filepath.Glob(filepath.Join(a.Dir, "sheets", "*"+partSuffix))
	for _, p := range unfinished {
		err = errors.Join(err, os.Remove(p))
	}
	return errors.Join(err, os.RemoveAll(a.DatabasePath()+".tmp"))
}

// Lock keeps other processes from writing in the archive until release is
// called or this process ends. ErrHeld says that another one has it.
func (a Archive) Lock() (release func() error, err error) {
	f, err := lockFolder(filepath.Join(a.Dir, "sheets"))
	if errors.Is(err, ErrHeld) {
		who := ""
		if pid, err := os.ReadFile(a.uncleanPath()); err == nil {
			who = " (process " + strings.TrimSpace(string(pid)) + ")"
		}
		return nil, fmt.Errorf("%s: %w%s. Wait until it has finished, then try again", a.Dir, ErrHeld, who)
	}
	if err != nil {
		return nil, err
	}
	if f == nil {
		return func() error { return nil }, nil
	}
	return f.Close, nil
}

// MarkOpen notes that the database is being written; MarkClosed takes the note
// away.
func (a Archive) MarkOpen() error {
	return os.WriteFile(a.uncleanPath(), []byte(strconv.Itoa(os.Getpid())+"\n"), 0o644)
}

// MarkClosed notes a clean close.
func (a Archive) MarkClosed() error {
	err := os.Remove(a.uncleanPath())
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	return err
}

// WasUnclean reports whether the last writing process ended before it closed
// the database, or a write-ahead log lies beside it: a clean close leaves none,
// and one that came with a backup may be another database's.
func (a Archive) WasUnclean() bool {
	for _, p := range []string{a.uncleanPath(), a.DatabasePath() + ".wal"} {
		if _, err := os.Stat(p); err == nil {
			return true
		}
	}
	return false
}

func flushDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer d.Close()
	if err := d.Sync(); err != nil && !errors.Is(err, errors.ErrUnsupported) {
		return err
	}
	return nil
}

// WriteFile replaces a file in one step: written beside it, flushed, renamed.
func WriteFile(path string, data []byte) error {
	t := path + ".part"
	f, err := os.OpenFile(t, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		os.Remove(t)
		return err
	}
	if err := os.Rename(t, path); err != nil {
		os.Remove(t)
		return err
	}
	return flushDir(filepath.Dir(path))
}
