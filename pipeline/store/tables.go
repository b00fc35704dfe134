package store

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

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
