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

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
)

// Bounds of a workbook beside those of Limits. Everything that is no tab is
// held in memory by the spreadsheet library.
const (
	maxMembers   = 5000
	maxOtherSize = 128 << 20
	spillSize    = 16 << 20 // tabs larger than this are unpacked to a temporary file
)

// readWorkbook reads every tab of an XLSX workbook (ECMA-376). The library
// gives the texts of the cells; what kind each cell is (type, number format,
// formula without a value) is noted in the pass over the XML that also proves
// it whole, because the library stops silently at damaged XML. Formulas are
// never evaluated, links never followed.
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
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{
		RawCellValue: true, UnzipSizeLimit: o.Limits.Unzipped, UnzipXMLSizeLimit: min(spillSize, o.Limits.Unzipped), TmpDir: o.Limits.TempDir,
	})
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
	formats := &formatTable{file: f, known: map[int]format{}}
	tabs := f.GetSheetList()
	for i, tab := range tabs {
		visible, err := f.GetSheetVisible(tab)
		if err != nil {
			return nil, refuse("tab %q can't be opened (%v)", tab, err)
		}
		t := table{tab: tab, tabIndex: i, hidden: !visible, date1904: date1904, whole: true}
		member := paths[tab]
		if member == nil || strings.Contains(member.Name, "chartsheets") {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Tab: tab}, Severity: place.Note, Kind: "tab-refused", Expected: "it is a chart, not a table"})
			continue
		}
		notes, err := noteCells(member, formats, o.Limits)
		if err != nil {
			return nil, refuse("tab %q: %v; save the workbook again and load that", tab, err)
		}
		g, err := s.tabGrid(f, tab, notes, date1904, o.Limits)
		if err != nil {
			return nil, refuse("tab %q: %v", tab, err)
		}
		notes.spread(g)
		if g.len() == 0 {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Tab: tab}, Severity: place.Note, Kind: "tab-refused", Expected: "it is empty"})
			continue
		}
		t.src, t.grid = g, g
		s.addTable(t, lex, o)
	}
	s.dropHidden()
	s.Dialect = fmt.Sprintf(", %s, dates count from %d", plural(len(tabs), "tab"), map[bool]int{false: 1900, true: 1904}[date1904])
	if len(s.Parts) == 0 {
		return s, s.refused()
	}
	newRunSettler(s, o, lex, book).settle(s.Parts)
	return s, nil
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
		if !strings.HasPrefix(n, "xl/worksheets/sheet") && !strings.HasSuffix(n, "sharedstrings.xml") {
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

// What a cell is, beside its format, in one byte.
const (
	noteText      = 0
	noteBool      = 200
	noteUncached  = 201 // a formula whose result was not saved
	noteNumber    = 100 // noteNumber + format
	maxNotedCells = 50_000_000
)

// cellNotes are the kinds of the cells of one tab, by row and column.
type cellNotes struct {
	rows   map[int][]byte
	merges []mergedRange
}

type mergedRange struct{ col1, row1, col2, row2 int }

// noteCells goes through the XML of a tab to its end.
func noteCells(member *zip.File, formats *formatTable, l Limits) (*cellNotes, error) {
	r, err := member.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	notes := &cellNotes{rows: map[int][]byte{}}
	d := xml.NewDecoder(r)
	row, col, cells := 0, 0, 0
	var cur []byte
	var kind byte
	formula, value := false, false
	for {
		tok, err := d.RawToken()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("its XML is damaged (%w)", err)
		}
		switch el := tok.(type) {
		case xml.Directive:
			if bytes.HasPrefix(bytes.ToUpper(el), []byte("DOCTYPE")) {
				return nil, fmt.Errorf("its XML declares a document type, which no spreadsheet program does")
			}
		case xml.StartElement:
			switch el.Name.Local {
			case "row":
				row++
				if v := attr(el, "r"); v != "" {
					if row, err = strconv.Atoi(v); err != nil || row < 1 || row > l.Rows {
						return nil, fmt.Errorf("row number %q is beyond the %d rows allowed", shorten(v, 20), l.Rows)
					}
				}
				if row > l.Rows {
					return nil, fmt.Errorf("it has more than the %d rows allowed", l.Rows)
				}
				col, cur = 0, notes.rows[row]
			case "c":
				col++
				if v := attr(el, "r"); v != "" {
					c, _, err := excelize.CellNameToCoordinates(v)
					if err != nil {
						return nil, fmt.Errorf("cell name %q is damaged", shorten(v, 20))
					}
					col = c
				}
				if cells++; cells > maxNotedCells {
					return nil, fmt.Errorf("it has more than %d cells", maxNotedCells)
				}
				formula, value = false, false
				switch attr(el, "t") {
				case "", "n":
					style, _ := strconv.Atoi(attr(el, "s"))
					kind = noteNumber + byte(formats.of(style))
				case "b":
					kind = noteBool
				default:
					kind = noteText
				}
			case "f":
				formula = true
			case "v", "is":
				value = true
			case "mergeCell":
				if a, b, ok := strings.Cut(attr(el, "ref"), ":"); ok {
					c1, r1, err1 := excelize.CellNameToCoordinates(a)
					c2, r2, err2 := excelize.CellNameToCoordinates(b)
					if err1 == nil && err2 == nil && c2 >= c1 && r2 >= r1 {
						notes.merges = append(notes.merges, mergedRange{c1 - 1, r1, c2 - 1, r2})
					}
				}
			}
		case xml.EndElement:
			switch el.Name.Local {
			case "c":
				if formula && !value {
					kind = noteUncached
				}
				if value || formula {
					if col > l.Columns {
						return nil, fmt.Errorf("row %d has more than %d columns; is this a table of results?", row, l.Columns)
					}
					for len(cur) < col {
						cur = append(cur, noteText)
					}
					cur[col-1] = kind
				}
			case "row":
				if len(cur) > 0 {
					notes.rows[row] = cur
				}
			}
		}
	}
	return notes, checkNesting(member)
}

// checkNesting proves that every element is closed, which RawToken does not.
func checkNesting(member *zip.File) error {
	r, err := member.Open()
	if err != nil {
		return err
	}
	defer r.Close()
	d := xml.NewDecoder(r)
	for {
		if _, err := d.Token(); err == io.EOF {
			return nil
		} else if err != nil {
			return fmt.Errorf("its XML is damaged (%w)", err)
		}
	}
}

func attr(el xml.StartElement, name string) string {
	for _, a := range el.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}

// tabGrid reads the texts of a tab's cells.
func (s *Sheet) tabGrid(f *excelize.File, tab string, notes *cellNotes, date1904 bool, l Limits) (*grid, error) {
	rows, err := f.Rows(tab)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	g := &grid{}
	var text textArena
	uncached, firstUncached := 0, place.Place{}
	for row := 1; rows.Next(); row++ {
		cells, err := rows.Columns()
		if err != nil {
			return nil, fmt.Errorf("row %d: %w", row, err)
		}
		kinds := notes.rows[row]
		if len(kinds) == 0 {
			continue
		}
		for len(cells) < len(kinds) {
			cells = append(cells, "")
		}
		for c := range cells {
			kind := byte(noteText)
			if c < len(kinds) {
				kind = kinds[c]
			}
			switch {
			case kind == noteUncached:
				uncached++
				if firstUncached.Row == 0 {
					firstUncached = place.Place{Sheet: s.Name, Tab: tab, Row: row, Column: letters(c)}
				}
				cells[c] = ""
			case kind == noteBool && cells[c] == "1":
				cells[c] = "TRUE"
			case kind == noteBool && cells[c] == "0":
				cells[c] = "FALSE"
			case kind >= noteNumber && kind < noteBool && cells[c] != "":
				cells[c] = numberText(cells[c], format(kind-noteNumber), date1904)
			}
			cells[c] = text.keep(cells[c])
		}
		if text.size > l.CellText {
			return nil, fmt.Errorf("it holds more than %d MB of text", l.CellText>>20)
		}
		g.add(row, cells)
	}
	if err := rows.Error(); err != nil {
		return nil, err
	}
	if uncached > 0 {
		s.Problems = append(s.Problems, place.Problem{Place: firstUncached, Severity: place.Look, Kind: "formula-without-value", Read: plural(uncached, "cell"),
			Expected: "the result of the formula saved with it", Do: "Open the workbook in a spreadsheet program, save it, and load that."})
	}
	return g, nil
}

// textArena keeps many short texts in few pieces of memory.
type textArena struct {
	block []byte
	size  int64
}

func (a *textArena) keep(s string) string {
	if s == "" {
		return ""
	}
	a.size += int64(len(s))
	if cap(a.block)-len(a.block) < len(s) {
		a.block = make([]byte, 0, max(16<<10, len(s)))
	}
	from := len(a.block)
	a.block = append(a.block, s...)
	return bytesString(a.block[from:])
}

// spread repeats the text of merged cells: downwards always, across only where
// a heading stands over a few columns, so that a title stays one cell.
func (n *cellNotes) spread(g *grid) {
	if len(n.merges) == 0 || len(n.merges) > 100000 {
		return
	}
	index := map[int]int{}
	width := 0
	for i, row := range g.rows {
		index[int(row)] = i
		_, cells := g.at(i)
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
	for _, m := range n.merges {
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
	out := grid{}
	for i := range g.rows {
		row, cells := g.at(i)
		if c, ok := changed[row]; ok {
			cells = c
		}
		out.add(row, cells)
	}
	*g = out
}
