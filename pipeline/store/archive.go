package store

import (
	"bufio"
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
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

// ReadTable reads a side table of the archive, which people edit: a CSV whose
// heading names at least the given columns, in any order; the rows come back
// in that order, blank rows left out. A file that is not there is an empty
// table. At says where row i stands.
func (a Archive) ReadTable(name string, columns []string) ([][]string, error) {
	return readTable(a.File(name), columns, byPeople)
}

// AppendTable adds rows to a side table and flushes them to disk; the heading
// is written first where the file is new.
func (a Archive) AppendTable(name string, columns []string, rows [][]string) error {
	return appendTable(a.File(name), columns, rows, byPeople)
}

// ExtendTable adds to the heading of a side table the columns that an earlier
// version of the program did not have yet.
func (a Archive) ExtendTable(name string, columns []string) error {
	return extendHeading(a.File(name), columns)
}

// ReadList reads a table that only this program writes. A last line without
// its line end was cut short and is left out.
func (a Archive) ReadList(name string, columns []string) ([][]string, error) {
	return readTable(a.File(name), columns, byProgram)
}

// writer is who writes a table: it decides what a last line without a line
// end means.
type writer bool

const (
	byProgram writer = false // an append that was cut short
	byPeople  writer = true  // that, or an editor that leaves out the last line end
)

// whole is the length of a table up to the end of its last whole line.
func (w writer) whole(text string, columns int) int {
	n := len(text)
	begin := strings.LastIndexByte(text, '\n') + 1
	last := text[begin:]
	if last != "" && (w == byProgram || strings.Count(last, `"`)%2 == 1 || strings.Count(last, ",") < columns-1) {
		return begin
	}
	return n
}

func readTable(path string, columns []string, by writer) ([][]string, error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	text := strings.TrimPrefix(string(data), "\ufeff")
	text = text[:by.whole(text, len(columns))]
	r := csv.NewReader(strings.NewReader(text))
	r.FieldsPerRecord = -1
	head, err := r.Read()
	if err == io.EOF {
		return nil, nil
	}
	if err != nil {
		return nil, tableError(path, err)
	}
	at := columnsAt(head, columns)
	if at[0] < 0 {
		return nil, fmt.Errorf("%s, row 1: no column %q; the first line must name the columns: %s", path, columns[0], strings.Join(columns, ","))
	}
	var out [][]string
	for {
		rec, err := r.Read()
		if err == io.EOF {
			return out, nil
		}
		if err != nil {
			return nil, tableError(path, err)
		}
		if blank(rec) {
			continue
		}
		row := make([]string, len(columns))
		for i, k := range at {
			if k >= 0 && k < len(rec) {
				row[i] = strings.TrimSpace(rec[k])
			}
		}
		out = append(out, row)
	}
}

// columnsAt finds columns in a heading, -1 where one is not there.
func columnsAt(head, columns []string) []int {
	at := make([]int, len(columns))
	for i, c := range columns {
		at[i] = -1
		for k, h := range head {
			if strings.EqualFold(strings.TrimSpace(strings.TrimPrefix(h, "\ufeff")), c) {
				at[i] = k
			}
		}
	}
	return at
}

// blank says whether a record holds nothing: a spreadsheet program leaves such
// rows below a table.
func blank(rec []string) bool {
	for _, f := range rec {
		if strings.TrimSpace(f) != "" {
			return false
		}
	}
	return true
}

// tableError says in plain words what is wrong with a table, and where.
func tableError(path string, err error) error {
	var p *csv.ParseError
	if errors.As(err, &p) && (errors.Is(err, csv.ErrQuote) || errors.Is(err, csv.ErrBareQuote)) {
		return fmt.Errorf("%s, row %d: a quotation mark without its partner; put the whole field in quotation marks and double those inside it", path, p.StartLine)
	}
	return fmt.Errorf("%s: %w", path, err)
}

// At names the place of row i of a side table ("members.csv, row 4") for a
// message: the row that a text editor or a spreadsheet program shows. It
// reads the file again, so that only messages pay for it.
func (a Archive) At(name string, i int) string { return a.Places(name)(i) }

// Places gives what At says of any row of a side table, which it reads once.
func (a Archive) Places(name string) func(i int) string {
	var lines []int
	if data, err := os.ReadFile(a.File(name)); err == nil {
		r := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(data), "\ufeff")))
		r.FieldsPerRecord = -1
		for heading := true; ; {
			rec, err := r.Read()
			if err != nil {
				break
			}
			if heading {
				heading = false
			} else if !blank(rec) {
				line, _ := r.FieldPos(0)
				lines = append(lines, line)
			}
		}
	}
	return func(i int) string {
		if i < 0 || i >= len(lines) {
			return a.File(name)
		}
		return fmt.Sprintf("%s, row %d", a.File(name), lines[i])
	}
}

func appendTable(path string, columns []string, rows [][]string, by writer) error {
	if len(rows) == 0 {
		return nil
	}
	return appendText(path, columns, by, func(head []string, b *strings.Builder) error {
		w := csv.NewWriter(b)
		rows, err := underHeading(head, columns, rows)
		if err != nil {
			return err
		}
		return w.WriteAll(rows)
	})
}

// appendText adds text to a table, in one write that is flushed; encode writes it for
// the heading that the file has, or will have.
func appendText(path string, columns []string, by writer, encode func(head []string, b *strings.Builder) error) (err error) {
	if by == byProgram {
		if err := extendHeading(path, columns); err != nil {
			return err
		}
	}
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o644)
	if err != nil {
		return err
	}
	defer f.Close()
	size, err := f.Seek(0, io.SeekEnd)
	if err != nil {
		return err
	}
	fresh := size == 0
	defer func() {
		if err != nil && fresh {
			os.Remove(path)
		}
	}()
	var b strings.Builder
	if !fresh {
		last := make([]byte, 1)
		if _, err := f.ReadAt(last, size-1); err != nil {
			return err
		}
		if last[0] != '\n' {
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			cut := int64(by.whole(string(data), len(columns)))
			if cut == size {
				b.WriteByte('\n') // the editor's missing line end
			} else if err := f.Truncate(cut); err != nil {
				return err
			}
			if size, err = f.Seek(0, io.SeekEnd); err != nil {
				return err
			}
		}
	}
	head := columns
	if size == 0 {
		w := csv.NewWriter(&b)
		if err := w.WriteAll([][]string{columns}); err != nil {
			return err
		}
	} else if head, err = csv.NewReader(io.NewSectionReader(f, 0, 1<<16)).Read(); err != nil {
		return fmt.Errorf("%s, row 1: %w", path, err)
	}
	if err := encode(head, &b); err != nil {
		return fmt.Errorf("%s, row 1: %w", path, err)
	}
	if _, err := io.WriteString(f, b.String()); err != nil {
		return errors.Join(err, f.Truncate(size))
	}
	if err := f.Sync(); err != nil {
		return errors.Join(err, f.Truncate(size))
	}
	if fresh {
		return flushDir(filepath.Dir(path))
	}
	return nil
}

// extendHeading adds to the heading of a table that an earlier version of the
// program began the columns that have come since. Lines before end earlier:
// those columns are blank there.
func extendHeading(path string, columns []string) error {
	first, err := firstLine(path)
	if errors.Is(err, os.ErrNotExist) || err == nil && first == "" {
		return nil
	}
	if err != nil {
		return err
	}
	more := ""
	for i, k := range columnsAt(strings.Split(strings.TrimRight(first, "\r\n"), ","), columns) {
		if k < 0 {
			more += "," + columns[i]
		}
	}
	if more == "" {
		return nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	return WriteFile(path, []byte(strings.TrimRight(first, "\r\n")+more+"\n"+string(data[len(first):])))
}

// firstLine is the first line of a file, its line end included; some files are large.
func firstLine(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	line, err := bufio.NewReader(f).ReadString('\n')
	if err == io.EOF {
		err = nil
	}
	return line, err
}

// underHeading lays rows out under the heading that a file has.
func underHeading(head, columns []string, rows [][]string) ([][]string, error) {
	at := columnsAt(head, columns)
	out := make([][]string, len(rows))
	for i, r := range rows {
		out[i] = make([]string, len(head))
		for k, v := range r {
			if at[k] >= 0 {
				out[i][at[k]] = v
			} else if v != "" {
				return nil, fmt.Errorf("no column %q; add it to the first line", columns[k])
			}
		}
	}
	return out, nil
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
