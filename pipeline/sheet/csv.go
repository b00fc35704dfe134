package sheet

import (
	"errors"
	"fmt"
	"unsafe"
)

// errStop ends a pass early without an error.
var errStop = errors.New("stop")

// source hands out the rows of one table in order, blank rows included. The
// slice of cells is reused, the strings stay valid.
type source interface {
	each(f func(row int, cells []string) error) error
}

// textSource cuts delimited text into records as it goes. It follows RFC 4180
// (quoted fields, doubled quotes, line breaks inside quotes), and is lenient
// where real sheets are not: any of CR, LF and CRLF ends a line, a quote in
// the middle of a field is a character like any other, and a quote that is
// never closed does not swallow the lines after it.
type textSource struct {
	data   []byte
	delim  byte
	skip   int // bytes before the first row, a "sep=" line
	limits Limits
}

func (t *textSource) each(f func(row int, cells []string) error) error {
	s := newScanner(t.data, t.delim, t.limits)
	s.pos = t.skip
	for {
		row, cells, err := s.next()
		if err != nil {
			return err
		}
		if cells == nil {
			return nil
		}
		if err := f(row, cells); err != nil {
			if err == errStop {
				return nil
			}
			return err
		}
	}
}

// maxQuotedLines is how many lines a quoted field may span before its opening
// quote is taken for a stray one.
const maxQuotedLines = 30

type scanner struct {
	data     []byte
	pos      int
	line     int // lines begun so far
	delim    byte
	ends     [256]bool
	limits   Limits
	cells    []string
	arena    []byte // text of fields with doubled quotes
	unclosed []int  // lines with a quote that is never closed, the first few
}

func newScanner(data []byte, delim byte, limits Limits) *scanner {
	s := &scanner{data: data, delim: delim, limits: limits, cells: make([]string, 0, 32)}
	s.ends[delim], s.ends['\n'], s.ends['\r'] = true, true, true
	return s
}

// next returns the record that starts on line row, nil at the end of the text.
func (s *scanner) next() (row int, cells []string, err error) {
	data, i := s.data, s.pos
	if i >= len(data) {
		return 0, nil, nil
	}
	s.line++
	row = s.line
	if err := s.limits.goOn(row); err != nil {
		return row, nil, err
	}
	cells = s.cells[:0]
	begin := i
	for {
		if i < len(data) && (data[i] == '"' || data[i] == ' ' && s.delim != ' ') {
			// A quote after leading spaces still opens a quoted field.
			q := i
			for q < len(data) && data[q] == ' ' {
				q++
			}
			if q < len(data) && data[q] == '"' {
				if text, end, lines, ok := s.quoted(q); ok {
					cells = append(cells, text)
					s.line += lines
					i = end
					goto separator
				}
			}
		}
		{
			start := i
			for i < len(data) && !s.ends[data[i]] {
				i++
			}
			cells = append(cells, bytesString(data[start:i]))
		}
	separator:
		if c := cells[len(cells)-1]; len(c) > 3 && c[0] == '=' && c[1] == '"' && c[len(c)-1] == '"' {
			cells[len(cells)-1] = c[2 : len(c)-1] // ="24:31", so that no program takes it for a number
		}
		if len(cells) > s.limits.Columns {
			return row, nil, fmt.Errorf("row %d has more than %d cells; is this a table of results?", row, s.limits.Columns)
		}
		if i >= len(data) {
			break
		}
		c := data[i]
		i++
		if c == s.delim {
			continue
		}
		if c == '\r' && i < len(data) && data[i] == '\n' {
			i++
		}
		break
	}
	if i-begin > s.limits.RowBytes {
		return row, nil, fmt.Errorf("row %d is %d bytes long, more than the %d allowed; is this a table of results?", row, i-begin, s.limits.RowBytes)
	}
	s.pos, s.cells = i, cells
	return row, cells, nil
}

// quoted reads the field whose opening quote is at q. end is the index of the
// separator after it, lines the number of line breaks inside. ok is false
// where the quote is not closed, or where what follows shows that it was never
// meant to open a field: a line break and then another opening quote, or one that stands
// alone in its field as this one does, both for what stands above them.
func (s *scanner) quoted(q int) (text string, end, lines int, ok bool) {
	data := s.data
	doubled := false
	i := q + 1
	limit := min(len(data), q+s.limits.RowBytes)
	for i < limit {
		switch c := data[i]; {
		case c == '"':
			if i+1 < len(data) && data[i+1] == '"' {
				// "" is a doubled quote, unless the field is empty: "",
				doubled = true
				i += 2
				continue
			}
			j := i + 1
			for j < len(data) && data[j] == ' ' && s.delim != ' ' {
				j++
			}
			if j >= len(data) || s.ends[data[j]] {
				if lines > 0 && data[i-1] == s.delim && s.ends[data[q+1]] {
					return "", 0, 0, false
				}
				return s.unquote(data[q+1:i], doubled), j, lines, true
			}
			if lines > 0 && (s.ends[data[i-1]]) {
				s.noteUnclosed()
				return "", 0, 0, false
			}
			i++ // a stray quote inside the field
		case c == '\n' || c == '\r':
			lines++
			if c == '\r' && i+1 < len(data) && data[i+1] == '\n' {
				i++
			}
			i++
			if lines > maxQuotedLines {
				s.noteUnclosed()
				return "", 0, 0, false
			}
		default:
			i++
		}
	}
	s.noteUnclosed()
	return "", 0, 0, false
}

func (s *scanner) noteUnclosed() {
	if len(s.unclosed) < 20 {
		s.unclosed = append(s.unclosed, s.line)
	}
}

func (s *scanner) unquote(b []byte, doubled bool) string {
	if !doubled {
		return bytesString(b)
	}
	if cap(s.arena)-len(s.arena) < len(b) {
		s.arena = make([]byte, 0, max(4096, len(b)))
	}
	from := len(s.arena)
	for i := 0; i < len(b); i++ {
		s.arena = append(s.arena, b[i])
		if b[i] == '"' && i+1 < len(b) && b[i+1] == '"' {
			i++
		}
	}
	return bytesString(s.arena[from:])
}

// bytesString shares memory with b, which must never change again.
func bytesString(b []byte) string {
	if len(b) == 0 {
		return ""
	}
	return unsafe.String(&b[0], len(b))
}
