package sheet

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
)

// Bounds of a workbook beside those of Limits. Everything that is no tab is
// held in memory by the spreadsheet library.
const (
	maxMembers   = 5000
	maxOtherSize = 128 << 20
)

// readWorkbook reads every tab of an XLSX workbook (ECMA-376). The spreadsheet
// library opens the package and reads workbook, styles and properties. The
// cells are read here, in one pass over the XML of each tab that also proves it
// whole: the library stops silently at damaged XML, does not give the type and
// format of a cell beside its text, and needs several times the memory. A test
// compares the texts with the library's. Formulas are never evaluated, links
// never followed.
func readWorkbook(name string, data []byte, o Options) (*Sheet, error) {
	refuse := func(format string, args ...any) error {
		return fmt.Errorf("%s is refused: %s", baseName(name), fmt.Sprintf(format, args...))
	}
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, refuse("the workbook is damaged (%v); ask for it again", err)
	}
	if why := checkPackage(zr, o.Limits); why != "" {
		return nil, refuse("%s", why)
	}
	f, err := openPackage(zr, o.Limits)
	if err != nil {
		return nil, refuse("the workbook can't be opened (%v); save it again as XLSX and load that", err)
	}
	defer f.Close()
	paths, err := tabPaths(zr)
	if err != nil {
		return nil, refuse("its list of tabs is damaged (%v); save it again as XLSX and load that", err)
	}
	props, err := f.GetWorkbookProps()
	if err != nil {
		return nil, refuse("its properties are damaged (%v)", err)
	}
	date1904 := props.Date1904 != nil && *props.Date1904

	s := &Sheet{Name: name, Format: "xlsx"}
	lex, book := newLexicon(o), newCourseBook(o.Courses)
	reader := &cellReader{formats: &formatTable{file: f, known: map[int]format{}}, date1904: date1904, limits: o.Limits}
	if reader.shared, err = sharedStrings(zr, o.Limits); err != nil {
		return nil, refuse("its list of texts is damaged (%v); save the workbook again and load that", err)
	}
	tabs := f.GetSheetList()
	for i, tab := range tabs {
		visible, err := f.GetSheetVisible(tab)
		if err != nil {
			return nil, refuse("tab %q can't be opened (%v)", tab, err)
		}
		member := paths[tab]
		if member == nil {
			return nil, refuse("tab %q is missing in the file; ask for it again", tab)
		}
		if strings.Contains(member.Name, "chartsheets") {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Tab: tab}, Severity: place.Note, Kind: "tab-refused", Expected: "it is a chart, not a table"})
			continue
		}
		g, uncached, err := reader.tab(member)
		if err != nil {
			return nil, refuse("tab %q: %v; save the workbook again and load that", tab, err)
		}
		if len(uncached) > 0 {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Tab: tab, Row: uncached[0].row, Column: letters(uncached[0].col)}, Severity: place.Look, Kind: "formula-without-value", Read: plural(len(uncached), "cell"),
				Expected: "the result of the formula saved with it", Do: "Open the workbook in a spreadsheet program, save it, and load that."})
		}
		if g.len() == 0 {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Tab: tab}, Severity: place.Note, Kind: "tab-refused", Expected: "it is empty"})
			continue
		}
		s.addTable(table{tab: tab, tabIndex: i, hidden: !visible, date1904: date1904, whole: true, src: g, grid: g}, lex, o)
	}
	s.dropHidden()
	s.Dialect = fmt.Sprintf(", %s, dates count from %d", plural(len(tabs), "tab"), map[bool]int{false: 1900, true: 1904}[date1904])
	if len(s.Parts) == 0 {
		return s, s.refused()
	}
	newRunSettler(s, o, lex, book).settle(s.Parts)
	return s, nil
}

// openPackage opens the workbook without its tabs and texts, which the library
// would unpack whole.
func openPackage(zr *zip.Reader, l Limits) (*excelize.File, error) {
	var b bytes.Buffer
	zw := zip.NewWriter(&b)
	for _, m := range zr.File {
		n := strings.ToLower(strings.ReplaceAll(m.Name, "\\", "/"))
		if strings.Contains(n, "/worksheets/") || strings.HasSuffix(n, "sharedstrings.xml") || strings.Contains(n, "/media/") || strings.Contains(n, "calcchain") {
			continue
		}
		if err := zw.Copy(m); err != nil {
			return nil, err
		}
	}
	if err := zw.Close(); err != nil {
		return nil, err
	}
	return excelize.OpenReader(&b, excelize.Options{UnzipSizeLimit: l.Unzipped, UnzipXMLSizeLimit: l.Unzipped})
}

// dropHidden leaves out hidden tabs where a visible one has results.
func (s *Sheet) dropHidden() {
	shown := 0
	for _, p := range s.Parts {
		if !p.Hidden {
			shown++
		}
	}
	if shown == 0 {
		return
	}
	kept := s.Parts[:0]
	for _, p := range s.Parts {
		if p.Hidden {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab}, Severity: place.Note, Kind: "tab-refused", Expected: "it is hidden, and another tab has results"})
			continue
		}
		kept = append(kept, p)
	}
	s.Parts = kept
}

// checkPackage proves that every member unpacks to what it says, and that none
// is larger than a workbook of results can be.
func checkPackage(zr *zip.Reader, l Limits) string {
	if len(zr.File) > maxMembers {
		return fmt.Sprintf("it has %d files inside; is this a workbook of results?", len(zr.File))
	}
	var total, others uint64
	for _, f := range zr.File {
		total += f.UncompressedSize64
		n := strings.ToLower(f.Name)
		if !strings.Contains(n, "/worksheets/") && !strings.HasSuffix(n, "sharedstrings.xml") {
			others += f.UncompressedSize64
		}
		if total > uint64(l.Unzipped) || others > maxOtherSize {
			return fmt.Sprintf("unpacked it is larger than %d MB; is this a workbook of results?", l.Unzipped>>20)
		}
		if f.Flags&1 != 0 {
			return "it has a password; save it without one and load that"
		}
		r, err := f.Open()
		if err != nil {
			return fmt.Sprintf("the workbook is damaged at %s (%v); ask for it again", shorten(f.Name, 60), err)
		}
		n64, err := io.Copy(io.Discard, io.LimitReader(r, int64(f.UncompressedSize64)+1))
		r.Close()
		if err != nil || uint64(n64) != f.UncompressedSize64 {
			return fmt.Sprintf("the workbook is damaged at %s (%v); ask for it again", shorten(f.Name, 60), err)
		}
	}
	return ""
}

// tabPaths finds the member of the package that holds each tab, by way of the
// relationships (ECMA-376 Part 2, 9.3).
func tabPaths(zr *zip.Reader) (map[string]*zip.File, error) {
	members := map[string]*zip.File{}
	for _, f := range zr.File {
		members[strings.ToLower(strings.TrimPrefix(strings.ReplaceAll(f.Name, "\\", "/"), "/"))] = f
	}
	type rels struct {
		Relationship []struct {
			ID     string `xml:"Id,attr"`
			Type   string `xml:"Type,attr"`
			Target string `xml:"Target,attr"`
		} `xml:"Relationship"`
	}
	read := func(name string, into any) error {
		f := members[strings.ToLower(name)]
		if f == nil {
			return fmt.Errorf("%s is missing", shorten(name, 60))
		}
		r, err := f.Open()
		if err != nil {
			return err
		}
		defer r.Close()
		return xml.NewDecoder(r).Decode(into)
	}
	book := "xl/workbook.xml"
	var root rels
	if err := read("_rels/.rels", &root); err != nil {
		return nil, err
	}
	for _, r := range root.Relationship {
		if strings.HasSuffix(r.Type, "/officeDocument") {
			book = strings.TrimPrefix(path.Clean("/"+r.Target), "/")
		}
	}
	var list struct {
		Sheets []struct {
			Name string `xml:"name,attr"`
			ID   string `xml:"id,attr"`
		} `xml:"sheets>sheet"`
	}
	if err := read(book, &list); err != nil {
		return nil, err
	}
	var links rels
	if err := read(path.Join(path.Dir(book), "_rels", path.Base(book)+".rels"), &links); err != nil {
		return nil, err
	}
	out := map[string]*zip.File{}
	for _, s := range list.Sheets {
		for _, r := range links.Relationship {
			if r.ID != s.ID {
				continue
			}
			target := path.Join(path.Dir(book), r.Target)
			if strings.HasPrefix(r.Target, "/") {
				target = strings.TrimPrefix(path.Clean(r.Target), "/")
			}
			out[s.Name] = members[strings.ToLower(target)]
		}
	}
	return out, nil
}

// formatTable classifies the number format of each cell style once.
type formatTable struct {
	file  *excelize.File
	known map[int]format
}

func (t *formatTable) of(style int) format {
	if f, ok := t.known[style]; ok {
		return f
	}
	f := fPlain
	if st, err := t.file.GetStyle(style); err == nil && st != nil {
		if st.CustomNumFmt != nil {
			f = codeFormat(*st.CustomNumFmt)
		} else if b, ok := builtinFormat(st.NumFmt); ok {
			f = b
		}
	}
	t.known[style] = f
	return f
}

// cellReader reads the cells of tabs as text.
type cellReader struct {
	shared   []string
	formats  *formatTable
	date1904 bool
	limits   Limits
	texts    textArena
}

// cellRef is a cell by row (1-based) and column (0-based).
type cellRef struct{ row, col int }

// openElements keeps track of the open elements of an XML text, so that one that is
// never closed is found; RawToken alone does not say.
type openElements []string

func (o *openElements) see(tok xml.Token) error {
	switch el := tok.(type) {
	case xml.Directive:
		if bytes.HasPrefix(bytes.ToUpper(el), []byte("DOCTYPE")) {
			return fmt.Errorf("its XML declares a document type, which no spreadsheet program does")
		}
	case xml.StartElement:
		if len(*o) > 100 {
			return fmt.Errorf("its XML is nested too deeply")
		}
		*o = append(*o, el.Name.Local)
	case xml.EndElement:
		if n := len(*o); n == 0 || (*o)[n-1] != el.Name.Local {
			return fmt.Errorf("its XML is damaged (</%s> closes nothing)", shorten(el.Name.Local, 20))
		}
		*o = (*o)[:len(*o)-1]
	}
	return nil
}

func (o openElements) end() error {
	if len(o) > 0 {
		return fmt.Errorf("its XML is damaged (<%s> is not closed)", shorten(o[len(o)-1], 20))
	}
	return nil
}

// eachToken hands out the tokens of a member to its end and proves the XML
// whole.
func eachToken(member *zip.File, f func(xml.Token) error) error {
	r, err := member.Open()
	if err != nil {
		return err
	}
	defer r.Close()
	d := xml.NewDecoder(r)
	var open openElements
	for {
		tok, err := d.RawToken()
		if err == io.EOF {
			return open.end()
		}
		if err != nil {
			return fmt.Errorf("its XML is damaged (%w)", err)
		}
		if err := open.see(tok); err != nil {
			return err
		}
		if err := f(tok); err != nil {
			return err
		}
	}
}

// sharedStrings reads the table of texts that cells refer to by number: the
// runs of rich text are joined, phonetic readings are left out.
func sharedStrings(zr *zip.Reader, l Limits) (texts []string, err error) {
	for _, m := range zr.File {
		if !strings.HasSuffix(strings.ToLower(m.Name), "sharedstrings.xml") {
			continue
		}
		var arena textArena
		var cur []byte
		inText, phonetic := false, false
		err = eachToken(m, func(tok xml.Token) error {
			switch el := tok.(type) {
			case xml.StartElement:
				switch el.Name.Local {
				case "si":
					cur = cur[:0]
				case "rPh":
					phonetic = true
				case "t":
					inText = !phonetic
				}
			case xml.EndElement:
				switch el.Name.Local {
				case "si":
					texts = append(texts, arena.keep(unescape(cur)))
					if arena.size > l.CellText {
						return fmt.Errorf("it holds more than %d MB of text", l.CellText>>20)
					}
				case "rPh":
					phonetic = false
				case "t":
					inText = false
				}
			case xml.CharData:
				if inText {
					cur = append(cur, el...)
				}
			}
			return nil
		})
		return texts, err
	}
	return nil, nil
}

// unescape undoes _x000D_ and its like (ECMA-376 Part 1, 22.9.2.19, ST_Xstring).
func unescape(b []byte) []byte {
	if !bytes.Contains(b, []byte("_x")) {
		return b
	}
	out := make([]byte, 0, len(b))
	for i := 0; i < len(b); i++ {
		if b[i] == '_' && i+6 < len(b) && b[i+1] == 'x' && b[i+6] == '_' {
			if n, err := strconv.ParseUint(string(b[i+2:i+6]), 16, 16); err == nil {
				out = utf8.AppendRune(out, rune(n))
				i += 6
				continue
			}
		}
		out = append(out, b[i])
	}
	return out
}

// tab reads one tab. Blank rows are left out; rows keep their numbers. uncached
// are the formulas whose result was not saved.
func (c *cellReader) tab(member *zip.File) (g *grid, uncached []cellRef, err error) {
	g = newGrid()
	var merges []mergedRange
	var cells []string
	var value []byte
	row, col, style := 0, 0, 0
	kind := ""
	inValue, inText, phonetic, formula, filled := false, false, false, false, false
	before := c.texts.size
	err = eachToken(member, func(tok xml.Token) error {
		switch el := tok.(type) {
		case xml.StartElement:
			switch el.Name.Local {
			case "row":
				row++
				if v := attr(el, "r"); v != "" {
					n, err := strconv.Atoi(v)
					if err != nil || n < row || n > c.limits.Rows {
						return fmt.Errorf("row number %q is out of order or beyond the %d rows allowed", shorten(v, 20), c.limits.Rows)
					}
					row = n
				}
				if row > c.limits.Rows {
					return fmt.Errorf("it has more than the %d rows allowed", c.limits.Rows)
				}
				col, cells = -1, cells[:0]
			case "c":
				col++
				kind, style = "", 0
				for _, a := range el.Attr {
					switch a.Name.Local {
					case "r":
						n, _, err := excelize.CellNameToCoordinates(a.Value)
						if err != nil {
							return fmt.Errorf("cell name %q is damaged", shorten(a.Value, 20))
						}
						col = n - 1
					case "t":
						kind = a.Value
					case "s":
						style, _ = strconv.Atoi(a.Value)
					}
				}
				value = value[:0]
				formula, filled = false, false
			case "f":
				formula = true
			case "v":
				inValue, filled = true, true
			case "is":
				filled = true
			case "rPh":
				phonetic = true
			case "t":
				inText = !phonetic
			case "mergeCell":
				if m, ok := mergedCells(attr(el, "ref")); ok && len(merges) < 100000 {
					merges = append(merges, m)
				}
			}
		case xml.CharData:
			if inValue || inText {
				value = append(value, el...)
			}
		case xml.EndElement:
			switch el.Name.Local {
			case "v":
				inValue = false
			case "t":
				inText = false
			case "rPh":
				phonetic = false
			case "c":
				if !filled && !formula {
					return nil
				}
				if col >= c.limits.Columns {
					return fmt.Errorf("row %d has more than %d columns; is this a table of results?", row, c.limits.Columns)
				}
				if !filled || formula && len(value) == 0 && kind != "str" {
					uncached = append(uncached, cellRef{row, col})
				}
				text, err := c.text(kind, value, style)
				if err != nil {
					return fmt.Errorf("cell %s%d: %w", letters(col), row, err)
				}
				if text == "" {
					return nil
				}
				for len(cells) <= col {
					cells = append(cells, "")
				}
				cells[col] = text
			case "row":
				if len(cells) > 0 {
					g.add(row, cells)
				}
				if c.texts.size-before > c.limits.CellText {
					return fmt.Errorf("it holds more than %d MB of text", c.limits.CellText>>20)
				}
			}
		}
		return nil
	})
	if err != nil {
		return nil, nil, err
	}
	spread(g, merges)
	return g, uncached, nil
}

// text writes the value of a cell as text (ECMA-376 Part 1, 18.18.11, ST_CellType).
func (c *cellReader) text(kind string, value []byte, style int) (string, error) {
	switch kind {
	case "s":
		n, err := strconv.Atoi(strings.TrimSpace(string(value)))
		if err != nil || n < 0 || n >= len(c.shared) {
			return "", fmt.Errorf("text number %q is not in the list of texts", shorten(string(value), 20))
		}
		return c.shared[n], nil
	case "b":
		switch string(value) {
		case "1":
			return "TRUE", nil
		case "0":
			return "FALSE", nil
		}
	case "", "n":
		text := numberText(string(value), c.formats.of(style), c.date1904)
		return c.texts.keep([]byte(text)), nil
	}
	return c.texts.keep(unescape(value)), nil
}

type mergedRange struct{ col1, row1, col2, row2 int }

func mergedCells(ref string) (m mergedRange, ok bool) {
	a, b, ok := strings.Cut(ref, ":")
	if !ok {
		return m, false
	}
	c1, r1, err1 := excelize.CellNameToCoordinates(a)
	c2, r2, err2 := excelize.CellNameToCoordinates(b)
	return mergedRange{c1 - 1, r1, c2 - 1, r2}, err1 == nil && err2 == nil && c2 >= c1 && r2 >= r1
}

func attr(el xml.StartElement, name string) string {
	for _, a := range el.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}

// textArena keeps many short texts in few pieces of memory, and texts that
// repeat (sexes, clubs, dates) once.
type textArena struct {
	block []byte
	size  int64
	seen  map[string]string
}

func (a *textArena) keep(s []byte) string {
	if len(s) == 0 {
		return ""
	}
	a.size += int64(len(s))
	if t, ok := a.seen[string(s)]; ok {
		return t
	}
	if cap(a.block)-len(a.block) < len(s) {
		a.block = make([]byte, 0, max(16<<10, len(s)))
	}
	from := len(a.block)
	a.block = append(a.block, s...)
	t := bytesString(a.block[from:])
	if len(a.seen) < 4096 && len(t) < 64 {
		if a.seen == nil {
			a.seen = map[string]string{}
		}
		a.seen[t] = t
	}
	return t
}

// spread repeats the text of merged cells: downwards always, across only where
// a heading stands over a few columns, so that a title stays one cell.
func spread(g *grid, merges []mergedRange) {
	if len(merges) == 0 {
		return
	}
	index := map[int]int{}
	width := 0
	for i := range g.refs {
		row, cells := g.at(i)
		index[row] = i
		width = max(width, len(cells))
	}
	changed := map[int][]string{} // row -> its cells, longer than before
	cellsOf := func(row int) []string {
		if c, ok := changed[row]; ok {
			return c
		}
		if i, ok := index[row]; ok {
			_, cells := g.at(i)
			return append([]string(nil), cells...)
		}
		return nil
	}
	for _, m := range merges {
		i, ok := index[m.row1]
		if !ok || m.row2-m.row1 > 5000 {
			continue
		}
		_, top := g.at(i)
		text := cellAt(top, m.col1)
		if text == "" {
			continue
		}
		last := m.col1
		if w := m.col2 - m.col1 + 1; w <= 6 && w*2 <= width && rowFilled(top) >= 2 {
			last = m.col2
		}
		for row := m.row1; row <= m.row2; row++ {
			cells := cellsOf(row)
			if cells == nil {
				continue
			}
			for len(cells) <= last {
				cells = append(cells, "")
			}
			for c := m.col1; c <= last; c++ {
				if cells[c] == "" {
					cells[c] = text
				}
			}
			changed[row] = cells
		}
	}
	if len(changed) == 0 {
		return
	}
	out := newGrid()
	for i := range g.refs {
		row, cells := g.at(i)
		if c, ok := changed[row]; ok {
			cells = c
		}
		out.add(row, cells)
	}
	*g = *out
}
