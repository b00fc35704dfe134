package reports

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"lapwing/pipeline/store"
)

// registerName is the file in the archive folder that holds, for every report
// file ever written, its issue number and SHA-256.
const registerName = "written.csv"

// registerHead are its columns. An earlier version had those up to changes.
var registerHead = []string{"report", "issue", "file", "sha256", "content", "changes", "desk", "decision", "ledger"}

const fewestColumns = 6

// Register knows what was written, so that a report that somebody has edited
// is told apart from one that may be replaced. It may be shared between
// goroutines.
type Register struct {
	path  string
	short bool // the heading is of an earlier version
	mu    sync.Mutex
	by    map[string][]written // by report
	told  announced
}

// written is one file of one issue of a report.
type written struct {
	issue   int
	file    string // name as written, e.g. "mere_2026-03-07 (issue 2).xlsx"
	sum     string // SHA-256 of the bytes
	content string // SHA-256 of the contents of all files of the issue
	changes
	mark Mark // how far the archive had got
}

// OpenRegister reads the archive's register; a missing one is empty. A last
// line that a kill cut short is left out.
func OpenRegister(archiveDir string) (*Register, error) {
	r := &Register{path: filepath.Join(archiveDir, registerName), by: map[string][]written{}}
	var err error
	if r.told, err = readAnnounced(archiveDir); err != nil {
		return nil, err
	}
	data, err := os.ReadFile(r.path)
	if errors.Is(err, fs.ErrNotExist) {
		return r, nil
	}
	if err != nil {
		return nil, err
	}
	if i := bytes.LastIndexByte(data, '\n'); i >= 0 {
		data = data[:i+1]
	} else {
		data = nil
	}
	c := csv.NewReader(bytes.NewReader(data))
	c.FieldsPerRecord = -1
	for line := 1; ; line++ {
		rec, err := c.Read()
		if err == io.EOF {
			return r, nil
		}
		if err == nil && len(rec) != fewestColumns && len(rec) != len(registerHead) {
			err = fmt.Errorf("line %d has %d columns", line, len(rec))
		}
		if err != nil {
			return nil, fmt.Errorf("%s is damaged: %w. Move it away; reports then start again at issue 1 and nothing is overwritten", r.path, err)
		}
		if line == 1 {
			r.short = len(rec) < len(registerHead)
			continue
		}
		n, err := strconv.Atoi(rec[1])
		if err != nil {
			return nil, fmt.Errorf("%s:%d: issue %q is not a number", r.path, line, rec[1])
		}
		w := written{issue: n, file: rec[2], sum: rec[3], content: rec[4]}
		if err := json.Unmarshal([]byte(rec[5]), &w.public); err != nil {
			return nil, fmt.Errorf("%s:%d: changes: %w", r.path, line, err)
		}
		if len(rec) < len(registerHead) {
			w.desk = w.public
		} else {
			if err := json.Unmarshal([]byte(rec[6]), &w.desk); err != nil {
				return nil, fmt.Errorf("%s:%d: desk: %w", r.path, line, err)
			}
			if w.mark, err = readMark(rec[7], rec[8]); err != nil {
				return nil, fmt.Errorf("%s:%d: %w", r.path, line, err)
			}
		}
		r.by[rec[0]] = append(r.by[rec[0]], w)
	}
}

// readMark reads how far the archive had got; blank where nobody noted it.
func readMark(decision, ledger string) (m Mark, err error) {
	if decision == "" && ledger == "" {
		return m, nil
	}
	m.Known = true
	if m.Decision, err = strconv.Atoi(decision); err != nil {
		return m, fmt.Errorf("decision %q is not a number", decision)
	}
	if m.Ledger, err = strconv.Atoi(ledger); err != nil {
		return m, fmt.Errorf("ledger %q is not a number", ledger)
	}
	return m, nil
}

// last is the mark of the last issue of a report, not known where there is
// none.
func (r *Register) last(report string) Mark {
	r.mu.Lock()
	defer r.mu.Unlock()
	var m Mark
	issue := 0
	for _, w := range r.by[report] {
		if w.issue >= issue {
			issue, m = w.issue, w.mark
		}
	}
	return m
}

// Earliest is the earliest mark among the last issues of the weekly reports of
// runs: what happened after it can be the cause of a new issue. It is not known
// where no issue has one.
func (r *Register) Earliest(runs []Run) Mark {
	var m Mark
	for _, run := range runs {
		l := r.last(weeklyName(run.Course, run.On, run.Session))
		switch {
		case !l.Known:
		case !m.Known:
			m = l
		default:
			m.Decision, m.Ledger = min(m.Decision, l.Decision), min(m.Ledger, l.Ledger)
		}
	}
	return m
}

// file is one file of a report, rendered by a function of the issue.
type file struct {
	ext     string // "-desk.xlsx"
	content string // what it says, without issue number and changes
	render  func(issueOf) ([]byte, error)
}

// issueOf is what a page says about its own issue.
type issueOf struct {
	Number  int
	Changes []string // since the issue before, one line each
	Desk    []string // the same for the results desk
}

// publish writes the files of a report where they differ from the last issue.
// Everything of one report carries one issue number. A file that somebody
// edited stays, the new one goes beside it as "(issue n)".
//
// The order is register, then temporary file, sync and rename: a kill in
// between leaves a file that the register knows from before, which the next
// call replaces.
//
// now is how far the archive has got; changed says what changed since the issue
// before, whose files stand at the paths in earlier, by the end of their names.
func (r *Register) publish(dir, report string, now Mark, files []file, changed func(earlier map[string]string) (changes, error)) ([]string, error) {
	r.mu.Lock()
	earlier := append([]written(nil), r.by[report]...)
	r.mu.Unlock()

	h := sha256.New()
	for _, f := range files {
		fmt.Fprintf(h, "%s\x00%d\x00%s", f.ext, len(f.content), f.content)
	}
	content := hex.EncodeToString(h.Sum(nil))

	was := issuesBefore(report, earlier, content)
	of := issueOf{Number: 1}
	switch {
	case was.same:
		of, now = was.of, was.mark
	case was.last > 0:
		at := map[string]string{}
		for ext, n := range was.names {
			at[ext] = filepath.Join(dir, n)
		}
		c, err := changed(at)
		if err != nil {
			return nil, err
		}
		of = issueOf{was.last + 1, c.public, c.desk}
	}
	var out []string
	type todo struct {
		name string
		data []byte
	}
	var todos []todo
	var rows []written
	for _, f := range files {
		name, err := was.nameFor(dir, report, f.ext, of.Number)
		if err != nil {
			return nil, err
		}
		if name == "" {
			continue
		}
		data, err := f.render(of)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		s := sha256.Sum256(data)
		rows = append(rows, written{of.Number, name, hex.EncodeToString(s[:]), content, changes{of.Changes, of.Desk}, now})
		todos = append(todos, todo{name, data})
	}
	if len(todos) == 0 {
		return nil, nil
	}
	if err := r.append(report, rows); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	for _, t := range todos {
		p := filepath.Join(dir, t.name)
		if err := writeFile(p, t.data); err != nil {
			return out, err
		}
		out = append(out, p)
	}
	return out, syncFolder(dir)
}

// issues is what the register knows of a report.
type issues struct {
	last  int               // number of the last issue, 0 none
	names map[string]string // ext → name in the last issue
	sums  map[string]string // name → sum in the last issue
	known map[string]bool   // name + sum of any issue
	same  bool              // the last issue says what is to be said now
	of    issueOf           // … and how it was numbered
	mark  Mark              // … and how far the archive had got
}

func issuesBefore(report string, earlier []written, content string) issues {
	was := issues{names: map[string]string{}, sums: map[string]string{}, known: map[string]bool{}}
	for _, w := range earlier {
		was.known[w.file+"\x00"+w.sum] = true
		if w.issue >= was.last {
			was.last = w.issue
			was.names[extOf(report, w)], was.sums[w.file] = w.file, w.sum
		}
	}
	for _, w := range earlier {
		if w.issue == was.last && w.content == content {
			was.same, was.of, was.mark = true, issueOf{was.last, w.public, w.desk}, w.mark
		}
	}
	return was
}

// nameFor is the name under which a file of the issue is to be written: a free one where
// somebody has edited what stands there, "" where it is there already, or edited and nothing
// new is to be said.
func (was *issues) nameFor(dir, report, ending string, issue int) (string, error) {
	name := report + ending
	if n := was.names[ending]; was.same && n != "" {
		name = n
	}
	sum, err := sumOf(filepath.Join(dir, name))
	if err != nil {
		return "", err
	}
	edited := func() bool { return sum != "" && !was.known[name+"\x00"+sum] }
	if was.same && (sum == was.sums[name] || edited()) {
		return "", nil
	}
	for n := issue; edited(); n++ {
		ext := filepath.Ext(ending)
		name = fmt.Sprintf("%s%s (issue %d)%s", report, strings.TrimSuffix(ending, ext), max(n, 2), ext)
		if sum, err = sumOf(filepath.Join(dir, name)); err != nil {
			return "", err
		}
	}
	return name, nil
}

// extOf undoes the naming of an issue: the part after the report's name.
func extOf(report string, w written) string {
	s := strings.TrimPrefix(w.file, report)
	if i := strings.Index(s, " (issue "); i >= 0 {
		if j := strings.IndexByte(s[i:], ')'); j >= 0 {
			s = s[:i] + s[i+j+1:]
		}
	}
	return s
}

// sumOf is the SHA-256 of a file, "" where there is none.
func sumOf(path string) (string, error) {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

// append adds lines to the register and waits until they are on disk.
func (r *Register) append(report string, rows []written) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.short {
		if err := (store.Archive{Dir: filepath.Dir(r.path)}).ExtendTable(registerName, registerHead); err != nil {
			return err
		}
		r.short = false
	}
	lines := make([][]string, len(rows))
	for i, row := range rows {
		public, err1 := json.Marshal(row.public)
		desk, err2 := json.Marshal(row.desk)
		if err := errors.Join(err1, err2); err != nil {
			return err
		}
		decision, ledger := "", ""
		if row.mark.Known {
			decision, ledger = strconv.Itoa(row.mark.Decision), strconv.Itoa(row.mark.Ledger)
		}
		lines[i] = []string{report, strconv.Itoa(row.issue), row.file, row.sum, row.content, string(public), string(desk), decision, ledger}
	}
	if err := appendLines(r.path, registerHead, lines); err != nil {
		return err
	}
	r.by[report] = append(r.by[report], rows...)
	return nil
}

// appendLines adds lines to a table, after its heading where it is new, and
// waits until they are on disk. It reads none of those before, so that its cost
// does not grow with the table.
func appendLines(path string, head []string, lines [][]string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return err
	}
	defer f.Close()
	end, err := wholeLines(f)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	if end == 0 {
		lines = append([][]string{head}, lines...)
	}
	if err := w.WriteAll(lines); err != nil {
		return err
	}
	if err := f.Truncate(end); err != nil {
		return err
	}
	if _, err := f.WriteAt(b.Bytes(), end); err != nil {
		return err
	}
	return f.Sync()
}

// wholeLines is the length of f up to its last line end: a line that a kill
// cut short is overwritten.
func wholeLines(f *os.File) (int64, error) {
	st, err := f.Stat()
	if err != nil {
		return 0, err
	}
	one := make([]byte, 1)
	for at := st.Size(); at > 0; at-- {
		if _, err := f.ReadAt(one, at-1); err != nil {
			return 0, err
		}
		if one[0] == '\n' {
			return at, nil
		}
	}
	return 0, nil
}

// writeFile puts data under path so that a reader sees the old file or the
// new one, whole, whatever happens. syncFolder afterwards makes it last.
func writeFile(path string, data []byte) error {
	tmp := filepath.Join(filepath.Dir(path), ".unfinished-"+filepath.Base(path))
	f, err := os.OpenFile(tmp, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o644)
	if err != nil {
		return fmt.Errorf("can't write the report: %w", err)
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(tmp, path)
	}
	if err != nil {
		os.Remove(tmp)
		return fmt.Errorf("can't write %s: %w. If the file is open in another program, close it there and run this again", path, err)
	}
	return nil
}

// syncFolder waits until the renames in a folder are on disk. A system that
// can't open a folder (Windows) needs no such thing.
func syncFolder(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return nil
	}
	defer d.Close()
	if err := d.Sync(); err != nil {
		return fmt.Errorf("can't sync the folder %s: %w", dir, err)
	}
	return nil
}
