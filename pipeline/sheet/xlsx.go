package sheet

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"path"
	"slices"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
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
		if err := o.Limits.goOn(0); err != nil {
			return err // not the workbook's fault
		}
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

	s := &Sheet{Name: name, Format: "xlsx", own: ownBookOf(f)}
	if why := s.own.refused(name); why != "" {
		return nil, refuse("%s", why)
	}
	lex := newLexicon(o)
	reader := &cellReader{styles: &styleTable{file: f, known: map[int]cellStyle{}}, date1904: date1904, limits: o.Limits}
	if reader.shared, err = sharedStrings(zr, o.Limits); err != nil {
		return nil, refuse("its list of texts can't be used: %v", err)
	}
	tabs := f.GetSheetList()
	s.tabs = len(tabs)
	s.groupTabs, s.ageTabs = groupTabs(tabs), ageTabs(tabs)
	s.sexTabs = slices.ContainsFunc(tabs, func(t string) bool { return sexSaid(t) == 'M' }) && slices.ContainsFunc(tabs, func(t string) bool { return sexSaid(t) == 'W' })
	var says []string // of the run, on the first tab of a weekly report
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
		g, missing, err := reader.tab(member)
		if err != nil {
			return nil, refuse("tab %q: %v; save the workbook again and load that", tab, err)
		}
		g.pieces.notes = cellNotes(zr, member)
		if visible {
			s.header = append(s.header, headerLines(string(reader.header))...)
		}
		if s.own.weekly() && tab != resultTab {
			if i == 0 {
				says = s.own.saysOf(g)
			}
			continue
		}
		asked := len(s.Problems)
		if missing.n > 0 {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Tab: tab, Row: missing.first.row, Column: letters(missing.first.col)}, Severity: place.Look, Kind: "formula-without-value", Read: text.Count(missing.n, "cell"),
				Expected: "the result of the formula saved with it", Do: "Open the workbook in a spreadsheet program, save it, and load that."})
		}
		if g.len() == 0 {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Tab: tab}, Severity: place.Note, Kind: "tab-refused", Expected: "it is empty"})
			continue
		}
		if one, why, ok := g.rowsInOneCell(lex, o.Limits); ok {
			if g, err = g.divideRows(one, o.Limits); err != nil {
				return nil, refuse("tab %q: %v", tab, err)
			}
			if s.divided == nil {
				s.divided = map[string]*inOneCell{}
			}
			s.divided[tab] = &one
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Tab: tab, Column: letters(one.col)}, Severity: place.Note, Kind: "rows-in-one-cell",
				Read: one.says(why), Do: "Columns are counted as if each piece had a cell of its own."})
		}
		parts := len(s.Parts)
		t := table{tab: tab, tabIndex: i, hidden: !visible, date1904: date1904, whole: true, src: g, grid: g, facts: says}
		if len(tabs) > 1 && missing.n == 0 && s.keepWeekGrid(t) {
			continue
		}
		s.addTable(t, lex, o)
		if visible && missing.holds(s.Parts[parts:]) {
			s.Problems[asked].Severity = place.Waits
		}
	}
	if s.own.weekly() {
		s.noteOwn()
	}
	s.addWeekGrids(lex, o)
	s.leaveWorkings()
	s.joinCalendar(lex, o)
	s.joinEntries(lex, o)
	s.nameByTab(lex, o)
	s.cover = append(s.cover, s.header...)
	s.dropHidden()
	s.Dialect = fmt.Sprintf(", %s, dates count from %d", text.Count(len(tabs), "tab"), map[bool]int{false: 1900, true: 1904}[date1904])
	return s, s.settle(o, lex)
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
		n64, err := io.Copy(io.Discard, &stopReader{io.LimitReader(r, int64(f.UncompressedSize64)+1), l, 0})
		r.Close()
		if err != nil || uint64(n64) != f.UncompressedSize64 {
			return fmt.Sprintf("the workbook is damaged at %s (%v); ask for it again", shorten(f.Name, 60), err)
		}
	}
	return ""
}

// stopReader reads until it is told to stop.
type stopReader struct {
	r      io.Reader
	limits Limits
	reads  int
}

func (s *stopReader) Read(b []byte) (int, error) {
	s.reads++
	if s.reads%64 == 0 {
		if err := s.limits.goOn(0); err != nil {
			return 0, err
		}
	}
	return s.r.Read(b)
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

// styleTable looks at each cell style once.
type styleTable struct {
	file  *excelize.File
	known map[int]cellStyle
}

// cellStyle is how the numbers of a style are written, and what says something of its cells.
// Style 0, of cells that have none of their own, says nothing.
type cellStyle struct {
	format format
	struck bool   // its letters are struck through
	fill   uint32 // the colour behind its cells as 0xRRGGBB, 0 for none
}

func (t *styleTable) of(style int) cellStyle {
	if s, ok := t.known[style]; ok {
		return s
	}
	s := cellStyle{format: fPlain}
	if st, err := t.file.GetStyle(style); err == nil && st != nil {
		if st.CustomNumFmt != nil {
			s.format = codeFormat(*st.CustomNumFmt)
		} else if b, ok := builtinFormat(st.NumFmt); ok {
			s.format = b
		}
		if style != 0 {
			s.struck = st.Font != nil && st.Font.Strike
			s.fill = colourBehind(st.Fill)
		}
	}
	t.known[style] = s
	return s
}

// cellReader reads the cells of tabs as text.
type cellReader struct {
	shared    []string
	styles    *styleTable
	date1904  bool
	dayBefore int // times with seconds before which the first day of the calendar stands
	limits    Limits
	texts     textArena // of all tabs
	row       []byte    // texts of a row that is to be packed
	pack      bool
	packed    int64  // bytes of the tabs before
	header    []byte // of the pages of the tab in hand
}

// cellRef is a cell by row (1-based) and column (0-based).
type cellRef struct{ row, col int }

// scan opens the XML of a member.
func scan(member *zip.File, l Limits) (*xmlScanner, func() error, error) {
	r, err := member.Open()
	if err != nil {
		return nil, nil, err
	}
	return newXMLScanner(r, l), r.Close, nil
}

// sharedStrings reads the table of texts that cells refer to by number: the
// runs of rich text are joined, phonetic readings are left out, and so is what is struck
// through where something else stands beside it.
func sharedStrings(zr *zip.Reader, l Limits) (texts []string, err error) {
	for _, m := range zr.File {
		if !strings.HasSuffix(strings.ToLower(m.Name), "sharedstrings.xml") {
			continue
		}
		return readStrings(m, l)
	}
	return nil, nil
}

func readStrings(member *zip.File, l Limits) (texts []string, err error) {
	x, done, err := scan(member, l)
	if err != nil {
		return nil, err
	}
	defer done()
	var arena textArena
	var cur, struck []byte
	inText, phonetic, strike := false, false, false
	for {
		if err := x.next(); err != nil {
			return nil, err
		}
		switch x.kind {
		case xmlEnd:
			return texts, nil
		case xmlOpen:
			switch string(x.name) {
			case "si":
				cur, struck, strike = cur[:0], struck[:0], false
			case "r":
				strike = false
			case "strike", "dstrike":
				strike = x.on()
			case "rPh":
				phonetic = true
			case "t":
				inText = !phonetic
			}
		case xmlClose:
			switch string(x.name) {
			case "si":
				if len(bytes.TrimSpace(cur)) == 0 {
					cur = append(cur, struck...)
				}
				plain, _ := plainFigures(unescape(cur))
				texts = append(texts, arena.keep(plain))
				if arena.size+16*int64(len(texts)) > l.CellText {
					return nil, tooMuchText(l)
				}
			case "rPh":
				phonetic = false
			case "t":
				inText = false
			}
		case xmlText:
			switch {
			case inText && strike:
				struck = append(struck, x.text...)
			case inText:
				cur = append(cur, x.text...)
			}
		}
	}
}

func tooMuchText(l Limits) error {
	return fmt.Errorf("it holds more than %d MB of text; divide it into smaller workbooks, a season or a year each", l.CellText>>20)
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

// uncached are the formulas whose result was not saved.
type uncached struct {
	first cellRef
	n     int
	of    map[int]int // how many in each column
}

func (u *uncached) note(row, col int) {
	if u.n == 0 {
		u.first = cellRef{row, col}
		u.of = map[int]int{}
	}
	u.n++
	u.of[col]++
}

// holds says whether the names or times of some parts are among them: read as they are,
// finishers would be unnamed or untimed.
func (u uncached) holds(parts []*Part) bool {
	for _, p := range parts {
		for _, c := range p.Columns {
			if personOrTime[c.Meaning] && u.of[c.Index] > 2 {
				return true
			}
		}
	}
	return false
}

// personOrTime are the columns that make a result.
var personOrTime = map[Meaning]bool{Name: true, GivenName: true, FamilyName: true, Time: true}

// cell is one cell as it is read.
type cell struct {
	col, style                       int
	kind, value, struck              []byte // struck: what is struck through in a text of several runs
	inValue, inText, formula, filled bool
}

// tab reads one tab. Blank rows are left out; rows keep their numbers.
func (c *cellReader) tab(member *zip.File) (*grid, uncached, error) {
	x, done, err := scan(member, c.limits)
	if err != nil {
		return nil, uncached{}, err
	}
	defer done()
	g := newGrid()
	g.pieces.rowsOfCells = true
	var merges []mergedRange
	var cells []string
	var missing uncached
	var now cell
	row, phonetic, strike, inHeader, unseen := 0, false, false, false, false
	var struck []int // columns of the row in hand
	var behind rowFill
	c.header = c.header[:0]
	for {
		if err := x.next(); err != nil {
			return nil, missing, err
		}
		switch x.kind {
		case xmlEnd:
			spread(g, merges)
			c.packed += g.bytes()
			return g, missing, nil
		case xmlOpen:
			switch string(x.name) {
			case "row":
				if row, err = c.rowNumber(x, row+1); err != nil {
					return nil, missing, err
				}
				now.col, cells, struck, behind = -1, cells[:0], struck[:0], rowFill{}
				v := string(x.attr("hidden"))
				unseen = v == "1" || v == "true"
				c.pack, c.row = g.packs(), c.row[:0]
			case "c":
				if err := now.begin(x); err != nil {
					return nil, missing, err
				}
				strike = false
			case "f":
				now.formula = true
			case "v":
				now.inValue, now.filled = true, true
			case "is":
				now.filled = true
			case "r":
				strike = false
			case "strike":
				strike = x.on()
			case "rPh":
				phonetic = true
			case "t":
				now.inText = !phonetic
			case "oddHeader", "firstHeader":
				inHeader = true
			case "filterColumn":
				g.pieces.unseen = nil // the filter hides rows for a look, and comes after them
			case "mergeCell":
				if m, ok := mergedCells(string(x.attr("ref"))); ok && len(merges) < 100000 {
					merges = append(merges, m)
				}
			}
		case xmlText:
			switch {
			case now.inText && strike:
				now.struck = append(now.struck, x.text...)
			case now.inValue || now.inText:
				now.value = append(now.value, x.text...)
			case inHeader && len(c.header) < maxHeader:
				c.header = append(c.header, x.text...)
			}
		case xmlClose:
			switch string(x.name) {
			case "v":
				now.inValue = false
			case "t":
				now.inText = false
			case "rPh":
				phonetic = false
			case "oddHeader", "firstHeader":
				inHeader = false
				c.header = append(c.header, '\n')
			case "c":
				if !now.filled && !now.formula {
					continue
				}
				if now.col >= c.limits.Columns {
					return nil, missing, fmt.Errorf("row %d has more than %d columns; is this a table of results?", row, c.limits.Columns)
				}
				if len(now.value) == 0 {
					now.value = append(now.value, now.struck...)
				}
				if !now.filled || now.formula && len(now.value) == 0 && string(now.kind) != "str" {
					missing.note(row, now.col)
				}
				style := c.styles.of(now.style)
				text, err := c.text(string(now.kind), now.value, style.format)
				if err != nil {
					return nil, missing, fmt.Errorf("cell %s%d: %w", letters(now.col), row, err)
				}
				if text == "" {
					continue
				}
				for len(cells) <= now.col {
					cells = append(cells, "")
				}
				cells[now.col] = text
				if style.struck {
					struck = append(struck, now.col)
				}
				behind.add(style.fill)
			case "row":
				if len(cells) > 0 {
					g.add(row, cells)
					if unseen {
						g.hide(row)
					}
				}
				if n := len(struck); n > 1 && n == rowFilled(cells) {
					g.strike(row)
				} else if n > 0 {
					g.cutCells(row, struck)
				}
				g.fill(row, behind)
				if c.packed+g.bytes()+c.texts.size > c.limits.CellText {
					return nil, missing, tooMuchText(c.limits)
				}
			}
		}
	}
}

// rowNumber is the number of the row that begins, the one after the last
// unless it says otherwise.
func (c *cellReader) rowNumber(x *xmlScanner, row int) (int, error) {
	if v := x.attr("r"); v != nil {
		n, err := strconv.Atoi(string(v))
		if err != nil || n < row || n > c.limits.Rows {
			return 0, fmt.Errorf("row number %q is out of order or beyond the %d rows allowed", shorten(string(v), 20), c.limits.Rows)
		}
		row = n
	}
	if row > c.limits.Rows {
		return 0, fmt.Errorf("it has more than the %d rows allowed", c.limits.Rows)
	}
	return row, nil
}

// begin starts the next cell of a row.
func (now *cell) begin(x *xmlScanner) error {
	now.col++
	now.kind, now.value, now.struck, now.style = now.kind[:0], now.value[:0], now.struck[:0], 0
	now.formula, now.filled = false, false
	for _, a := range x.attrs {
		switch string(a.name) {
		case "r":
			col, ok := columnOf(a.value)
			if !ok {
				return fmt.Errorf("cell name %q is damaged", shorten(string(a.value), 20))
			}
			now.col = col
		case "t":
			now.kind = append(now.kind, a.value...)
		case "s":
			now.style, _ = strconv.Atoi(string(a.value))
		}
	}
	return nil
}

// columnOf is the 0-based column of a cell's name: A1, xfd12, $B$3.
func columnOf(ref []byte) (int, bool) {
	i, col := 0, 0
	for i < len(ref) && ref[i]|0x20 >= 'a' && ref[i]|0x20 <= 'z' && i < 3 {
		col = col*26 + int(ref[i]|0x20-'a') + 1
		i++
	}
	if i > 0 && i < len(ref) && ref[i] >= '1' && ref[i] <= '9' && len(ref)-i <= 7 && digitsOnly(string(ref[i:])) && col <= excelize.MaxColumns {
		return col - 1, true
	}
	col, _, err := excelize.CellNameToCoordinates(string(ref)) // other spellings
	return col - 1, err == nil
}

// text writes the value of a cell as text (ECMA-376 Part 1, 18.18.11, ST_CellType).
func (c *cellReader) text(kind string, value []byte, numbers format) (string, error) {
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
		stored := string(value)
		if numbers == fTime && strings.HasPrefix(stored, "1.") {
			stored = c.withoutDay(stored)
		}
		return c.keep([]byte(numberText(stored, numbers, c.date1904))), nil
	}
	plain, _ := plainFigures(unescape(value))
	return c.keep(plain), nil
}

// withoutDay takes the first day of the calendar from a time of whole minutes, as numberText does
// from others, where that day stands before times with seconds above: 1900-01-01 00:26:00 is no
// 24:26 of hours and minutes then.
func (c *cellReader) withoutDay(stored string) string {
	v, err := strconv.ParseFloat(strings.TrimSpace(stored), 64)
	if err != nil {
		return stored
	}
	if math.Mod(math.Round(v*dayMS), 60000) != 0 {
		c.dayBefore++
	} else if c.dayBefore >= 3 {
		return strconv.FormatFloat(v-1, 'f', -1, 64)
	}
	return stored
}

// keep makes a text of bytes that change.
func (c *cellReader) keep(b []byte) string {
	if !c.pack {
		return c.texts.keep(b)
	}
	from := len(c.row)
	c.row = append(c.row, b...)
	return bytesString(c.row[from:])
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
	width := 0
	for i := range g.refs {
		width = max(width, g.width(i))
	}
	index := func(row int) (int, bool) {
		i := sort.Search(len(g.refs), func(i int) bool { return g.row(i) >= row })
		return i, i < len(g.refs) && g.row(i) == row
	}
	changed := map[int][]string{} // row -> its cells, longer than before
	cellsOf := func(row int) []string {
		if c, ok := changed[row]; ok {
			return c
		}
		if i, ok := index(row); ok {
			_, cells := g.at(i)
			return append([]string(nil), cells...)
		}
		return nil
	}
	for _, m := range merges {
		i, ok := index(m.row1)
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
	g.mend(func(_, row int, _ []string) (spread []string, ok bool) {
		spread, ok = changed[row]
		return spread, ok
	})
}
