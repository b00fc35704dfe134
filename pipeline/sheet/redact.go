package sheet

import (
	"bytes"
	"fmt"
	"html"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	xunicode "golang.org/x/text/encoding/unicode"
)

// RowRef names a row of one part of a sheet: the index of the part in
// Sheet.Parts and the row that a person sees.
type RowRef struct{ Part, Row int }

// Redaction says what is to be taken out of a sheet.
type Redaction struct {
	// Rows are the rows that belong to the person. Only cells of the columns
	// in Keep stay; the first name cell becomes Text, all others are emptied.
	Rows []RowRef
	Keep map[Meaning]bool
	// Words are taken out of everything else as well and replaced by Text:
	// titles, notes, footers, other tabs. They match whole words in capitals
	// or not. The names in rows of other people are left alone.
	Words []string
	Text  string
	// Everywhere says that the names in rows of other people are no others':
	// they are taken out as well.
	Everywhere bool
}

// Redact gives a copy of a sheet without what the redaction names, in the
// format and encoding of the original (text in two encodings becomes UTF-8, a web page
// and program data the text that they show).
// Rows and columns keep their places. It returns data itself where nothing is
// to be taken out.
func Redact(name string, data []byte, o Options, r Redaction) ([]byte, error) {
	o.Limits = o.Limits.orDefault()
	format, why := formatOf(data)
	w := newWords(r.Words, r.Text)
	var s *Sheet
	if len(r.Rows) > 0 {
		var err error
		if s, err = Read(name, data, o); err != nil {
			return nil, err
		}
	}
	switch format {
	case "xlsx":
		return redactWorkbook(data, s, r, w)
	case "ods", "xls":
		return redactOtherBook(data, o, format, s, r, w)
	case "csv":
		return redactText(name, data, o, s, r, w)
	case "html":
		return redactShown(name, data, pageText, o, s, r, w)
	case "json", "xml":
		return redactShown(name, data, recordsText, o, s, r, w)
	case "mail":
		return redactShown(name, data, mailText, o, s, r, w)
	}
	return nil, fmt.Errorf("%s can't be changed: %s", baseName(name), why)
}

// words replaces whole words, in capitals or not.
type words struct {
	any  *regexp.Regexp
	text string
}

func newWords(list []string, text string) *words {
	list = slices.Clone(list)
	// the longest first: "Ella Mae Hill" before "Mae Hill"
	slices.SortFunc(list, func(a, b string) int {
		if len(a) != len(b) {
			return len(b) - len(a)
		}
		return strings.Compare(a, b)
	})
	var parts []string
	for _, s := range list {
		fields := strings.Fields(s)
		for i, f := range fields {
			fields[i] = regexp.QuoteMeta(f)
		}
		if len(fields) > 0 {
			parts = append(parts, strings.Join(fields, `[\s\x{a0}\x{202f}]+`))
		}
	}
	if len(parts) == 0 {
		return &words{text: text}
	}
	return &words{any: regexp.MustCompile(`(?i)(?:` + strings.Join(parts, "|") + `)`), text: text}
}

// replace takes the words out of a text and says how many there were.
func (w *words) replace(s string) (string, int) {
	if w.any == nil {
		return s, 0
	}
	n, from := 0, 0
	var b strings.Builder
	for at := 0; at <= len(s); {
		m := w.any.FindStringIndex(s[at:])
		if m == nil {
			break
		}
		lo, hi := at+m[0], at+m[1]
		if !wholeWord(s, lo, hi) {
			_, size := utf8.DecodeRuneInString(s[lo:])
			at = lo + max(size, 1)
			continue
		}
		b.WriteString(s[from:lo])
		b.WriteString(w.text)
		from, at = hi, hi
		n++
	}
	if n == 0 {
		return s, 0
	}
	b.WriteString(s[from:])
	return b.String(), n
}

// wholeWord says whether s[lo:hi] does not go on as a longer word.
func wholeWord(s string, lo, hi int) bool {
	inWord := func(r rune) bool {
		return unicode.IsLetter(r) || unicode.IsMark(r) || r == '-' || r == '\'' || r == '’'
	}
	before, _ := utf8.DecodeLastRuneInString(s[:lo])
	after, _ := utf8.DecodeRuneInString(s[hi:])
	if lo > 1 && s[lo-2] == '&' && strings.IndexByte("LCR", s[lo-1]) >= 0 {
		before = ' ' // &L, &C and &R begin the parts of a page's header (ECMA-376 Part 1, 18.3.1.46)
	}
	return !(lo > 0 && inWord(before)) && !(hi < len(s) && (inWord(after) && after != '\'' && after != '’'))
}

// cellChange says what becomes of the cells of one row, by column, and what
// they were read as.
type cellChange struct{ now, was map[int]string }

// changesOf works out the new cells of every row that the redaction names, by
// tab and row.
func (s *Sheet) changesOf(r Redaction) (map[string]map[int]*cellChange, error) {
	changes := map[string]map[int]*cellChange{}
	want := map[RowRef]bool{}
	for _, ref := range r.Rows {
		if ref.Part < 0 || ref.Part >= len(s.Parts) {
			return nil, fmt.Errorf("%s has no part %d", s.Name, ref.Part+1)
		}
		want[ref] = true
	}
	for i, p := range s.Parts {
		meaning := map[int]Meaning{}
		for _, c := range p.Columns {
			meaning[c.Index] = c.Meaning
		}
		for _, c := range p.rules.clock { // hours, minutes and seconds in columns of their own
			meaning[c] = Time
		}
		rows := changes[p.Tab]
		if rows == nil {
			rows = map[int]*cellChange{}
			changes[p.Tab] = rows
		}
		err := p.Each(func(row int, cells []string) error {
			ref := RowRef{i, row}
			if !want[ref] {
				return nil
			}
			delete(want, ref)
			change := &cellChange{map[int]string{}, map[int]string{}}
			change.add(cells, meaning, r)
			for c, now := range change.now {
				at, column := s.turned[p.Tab].cell(row, c)
				if rows[at] == nil {
					rows[at] = &cellChange{map[int]string{}, map[int]string{}}
				}
				rows[at].now[column], rows[at].was[column] = now, change.was[c]
			}
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	for ref := range want {
		return nil, fmt.Errorf("%s has no row %d that was read", s.Name, ref.Row)
	}
	return changes, nil
}

func (ch *cellChange) add(cells []string, meaning map[int]Meaning, r Redaction) {
	said := false
	for c, text := range cells {
		m := meaning[c]
		switch {
		case isBlank(text) || r.Keep[m]:
			continue
		case (m == Name || m == GivenName || m == FamilyName) && !said:
			ch.now[c], said = r.Text, true
		default:
			ch.now[c] = ""
		}
		ch.was[c] = strings.Clone(text)
	}
}

// nameCells are the cells that say who somebody is, by tab, row and column, of
// all rows that stand for a finisher.
func (s *Sheet) nameCells() map[string]map[int][]int {
	out := map[string]map[int][]int{}
	for _, p := range s.Parts {
		var columns []int
		for _, m := range []Meaning{Name, GivenName, FamilyName, Club} {
			if c := p.Index(m); c >= 0 {
				columns = append(columns, c)
			}
		}
		rows := out[p.Tab]
		if rows == nil {
			rows = map[int][]int{}
			out[p.Tab] = rows
		}
		p.Each(func(row int, _ []string) error {
			for _, c := range columns {
				at, column := s.turned[p.Tab].cell(row, c)
				rows[at] = append(rows[at], column)
			}
			return nil
		}) // this function returns no error; what the source returns was met when it was read
	}
	return out
}

func redactText(name string, data []byte, o Options, s *Sheet, r Redaction, w *words) ([]byte, error) {
	text, encoding, _, err := decode(data)
	if err != nil {
		return nil, fmt.Errorf("%s can't be changed: %w", baseName(name), err)
	}
	if len(bytes.TrimSpace(text)) == 0 {
		return data, nil
	}
	if _, n := w.replace(string(text)); n == 0 && len(r.Rows) == 0 {
		return data, nil
	}
	text, d := divide(text, newLexicon(o), o.Limits)
	var changes map[int]*cellChange
	names := map[int][]int{}
	if s == nil && !r.Everywhere {
		s, _ = Read(name, data, o) // what is no sheet of results has no rows to spare
	}
	if s != nil {
		byTab, err := s.changesOf(r)
		if err != nil {
			return nil, err
		}
		changes = byTab[""]
		if !r.Everywhere {
			names = s.nameCells()[""]
		}
	}
	sc := newScanner(text, d.delim, o.Limits)
	sc.pos = d.skip
	out := append(make([]byte, 0, len(text)+64), text[:d.skip]...)
	changed := false
	for {
		from := sc.pos
		row, cells, err := sc.next()
		if err != nil {
			return nil, err
		}
		if cells == nil {
			break
		}
		raw := text[from:sc.pos]
		now := redactCells(cells, changes[row], names[row], w)
		if now == nil {
			out = append(out, raw...)
			continue
		}
		changed = true
		end := len(raw)
		for end > 0 && (raw[end-1] == '\n' || raw[end-1] == '\r') {
			end--
		}
		lines := bytes.Count(raw[:end], []byte{'\n'}) // a cell of several lines: rows below keep their numbers
		for i, c := range now {
			if i > 0 {
				out = append(out, d.delim)
			}
			out = appendField(out, c, d.delim)
		}
		ending := raw[end:]
		out = append(out, ending...)
		for range lines - newlines(now) {
			out = append(out, ending...)
		}
	}
	if !changed {
		return data, nil
	}
	return encodeAs(out, encoding)
}

// redactShown gives the text of a web page, or of program data, without what the redaction
// names: what the page does not show goes with its marks.
func redactShown(name string, data []byte, shown func([]byte, Limits) ([]byte, error), o Options, s *Sheet, r Redaction, w *words) ([]byte, error) {
	text, err := shown(data, o.Limits)
	if err != nil {
		return nil, fmt.Errorf("%s can't be changed: %w", baseName(name), err)
	}
	out, err := redactText(name, text, o, s, r, w)
	if err != nil || !bytes.Equal(out, text) {
		return out, err
	}
	if _, n := w.replace(html.UnescapeString(unescaped(string(data)))); n > 0 {
		return text, nil // in what the page does not show
	}
	return data, nil
}

// unescaped gives letters that program data writes as numbers, \u00e9, as letters.
func unescaped(s string) string {
	if !strings.Contains(s, `\u`) {
		return s
	}
	return escapedLetter.ReplaceAllStringFunc(s, func(e string) string {
		n, err := strconv.ParseUint(e[2:], 16, 16)
		if err != nil {
			return e
		}
		return string(rune(n))
	})
}

var escapedLetter = regexp.MustCompile(`\\u[0-9a-fA-F]{4}`)

func newlines(cells []string) (n int) {
	for _, c := range cells {
		n += strings.Count(c, "\n")
	}
	return n
}

// redactCells gives the new cells of a row, nil where they stay as they are.
func redactCells(cells []string, change *cellChange, names []int, w *words) []string {
	if change != nil {
		return change.apply(cells)
	}
	var now []string
	for i, c := range cells {
		if slices.Contains(names, i) {
			continue
		}
		if t, n := w.replace(c); n > 0 {
			if now == nil {
				now = slices.Clone(cells)
			}
			now[i] = t
		}
	}
	return now
}

// apply changes the cells of a row. A name that a comma without quotation
// marks cut in two was read as one cell: it is written as one.
// So is a row without the stray blank cell that it was read without.
func (ch *cellChange) apply(cells []string) []string {
	now := slices.Clone(cells)
	columns := slices.Sorted(maps.Keys(ch.now))
	fits := func(cells []string) bool {
		return !slices.ContainsFunc(columns, func(c int) bool { return cellAt(cells, c) != ch.was[c] })
	}
	for i := 0; i < len(cells) && !fits(now); i++ {
		if less := slices.Delete(slices.Clone(cells), i, i+1); isBlank(cells[i]) && fits(less) {
			now = less
		}
	}
	for _, c := range columns {
		if c+1 < len(now) && now[c] != ch.was[c] && now[c]+","+now[c+1] == ch.was[c] {
			now = slices.Delete(now, c, c+1)
			break
		}
	}
	for _, c := range columns {
		if c < len(now) && !isBlank(now[c]) {
			now[c] = ch.now[c]
		}
	}
	return now
}

// appendField writes a field as RFC 4180 has it.
func appendField(out []byte, s string, delim byte) []byte {
	if strings.IndexByte(s, delim) < 0 && !strings.ContainsAny(s, "\"\r\n") && (s == "" || s[0] != ' ') {
		return append(out, s...)
	}
	out = append(out, '"')
	out = append(out, strings.ReplaceAll(s, `"`, `""`)...)
	return append(out, '"')
}

// encodeAs writes text in the encoding that decode named.
func encodeAs(text []byte, encoding string) ([]byte, error) {
	utf16 := func(e xunicode.Endianness, bom xunicode.BOMPolicy) ([]byte, error) {
		return xunicode.UTF16(e, bom).NewEncoder().Bytes(text)
	}
	switch encoding {
	case "UTF-8 with byte order mark":
		return append([]byte("\xEF\xBB\xBF"), text...), nil
	case "UTF-16 little-endian":
		return utf16(xunicode.LittleEndian, xunicode.UseBOM)
	case "UTF-16 big-endian":
		return utf16(xunicode.BigEndian, xunicode.UseBOM)
	case "UTF-16 little-endian without byte order mark":
		return utf16(xunicode.LittleEndian, xunicode.IgnoreBOM)
	case "UTF-16 big-endian without byte order mark":
		return utf16(xunicode.BigEndian, xunicode.IgnoreBOM)
	}
	if p := pageNamed(encoding); p != nil {
		out, r, ok := p.bytes(text)
		if !ok {
			return nil, fmt.Errorf("%q is no character of %s", r, p.name)
		}
		return out, nil
	}
	for _, p := range eastAsianPages {
		if p.name == encoding {
			return p.page.NewEncoder().Bytes(text)
		}
	}
	return text, nil
}

// ReplaceWords puts text in the place of each of a list of names, where they
// stand as whole words, in capitals or not.
func ReplaceWords(s string, list []string, text string) string {
	out, _ := newWords(list, text).replace(s)
	return out
}

// Holds says whether one of a list of names stands in a file, as text or
// inside a workbook. Files of other kinds are an error.
func Holds(data []byte, list []string) (bool, error) {
	const mark = "\uE000" // a character of the private use area: no name holds it
	switch format, why := formatOf(data); format {
	case "xlsx":
		out, err := Redact("workbook.xlsx", data, Options{}, Redaction{Words: list, Text: mark, Everywhere: true})
		if err != nil {
			return false, err
		}
		return !bytes.Equal(out, data), nil
	case "csv":
		text, _, _, err := decode(data)
		if err != nil {
			return false, err
		}
		_, n := newWords(list, mark).replace(string(text))
		return n > 0, nil
	case "html", "json", "xml", "mail", "ods", "xls":
		out, err := Redact("page.html", data, Options{}, Redaction{Words: list, Text: mark, Everywhere: true})
		if err != nil {
			return false, err
		}
		return !bytes.Equal(out, data), nil
	default:
		return false, fmt.Errorf("it can't be searched: %s", why)
	}
}
