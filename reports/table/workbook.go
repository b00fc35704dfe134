package table

import (
	"fmt"
	"io"
	"math"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// board is the grid of a tab without a Full table: two halves of four columns
// with a gap between them, widths in characters, together the width of an
// upright A4 page.
var board = []float64{7, 21, 9, 9, 2, 7, 21, 9, 9}

// Height is the height in points of a tab without a Full table, as the
// workbook will have it.
func (t *Tab) Height() float64 {
	p := &tabWriter{tab: t, widths: t.grid()}
	h := 0.0
	for _, blk := range t.Blocks {
		h += p.height(blk)
	}
	return h
}

// height is the height in points of a block; a Full table's is not counted.
func (p *tabWriter) height(blk Block) float64 {
	switch v := blk.(type) {
	case Title:
		return titleLook(v.Level).height
	case Para:
		return p.paraHeight(v)
	case Big:
		return bigHeight + captionHeight
	case Pair:
		return gapHeight + sectionHeight + lineHeight*float64(p.rowsOf(v)-2)
	case Small:
		h := p.headHeight(v.Table) + gapHeight
		for _, r := range v.Rows {
			h += lineHeight * float64(p.linesOf(v.Table, r))
		}
		if len(v.Rows) == 0 {
			h += lineHeight
		}
		return h
	}
	return 0
}

func (t *Tab) grid() []float64 {
	if t.Grid != nil {
		return t.Grid
	}
	return board
}

// Width is the width in characters of the tab's table as printed, or of its
// grid.
func (t *Tab) Width() float64 {
	var full *Table
	w := t.grid()
	for _, blk := range t.Blocks {
		if f, ok := blk.(Full); ok {
			full = f.Table
			if w = f.widths(); t.PrintColumns > 0 {
				w = w[:t.PrintColumns]
			}
		}
	}
	return full.shown(w)
}

// shown is the sum of the widths of the columns that are not hidden.
func (t *Table) shown(w []float64) float64 {
	sum := 0.0
	for i, x := range w {
		if t == nil || !t.Columns[i].Hidden {
			sum += x
		}
	}
	return sum
}

// WriteWorkbook writes the book as a workbook (ECMA-376). The same book gives
// the same bytes.
func (b *Book) WriteWorkbook(w io.Writer) error {
	f := excelize.NewFile()
	defer f.Close()
	s := &styles{f: f, made: map[look]int{}}
	// A4, upright unless the tab says otherwise; every tab fits one page wide.
	for i, t := range b.Tabs {
		if i == 0 {
			if err := f.SetSheetName("Sheet1", t.Name); err != nil {
				return err
			}
		} else if _, err := f.NewSheet(t.Name); err != nil {
			return err
		}
	}
	for _, t := range b.Tabs {
		p := &tabWriter{book: b, tab: t, f: f, styles: s}
		if err := p.write(); err != nil {
			return fmt.Errorf("tab %s: %w", t.Name, err)
		}
	}
	made := b.Made + "T00:00:00Z"
	if err := f.SetDocProps(&excelize.DocProperties{Title: b.Title, Subject: b.Subject,
		Creator: "Lapwing", LastModifiedBy: "Lapwing", Created: made, Modified: made}); err != nil {
		return err
	}
	sort.SliceStable(f.ContentTypes.Overrides, func(i, j int) bool {
		return f.ContentTypes.Overrides[i].PartName < f.ContentTypes.Overrides[j].PartName
	})
	sort.SliceStable(f.ContentTypes.Defaults, func(i, j int) bool {
		return f.ContentTypes.Defaults[i].Extension < f.ContentTypes.Defaults[j].Extension
	})
	f.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return newSortedZip(w) })
	return f.Write(w)
}

// tabWriter writes one tab from the top down.
type tabWriter struct {
	book   *Book
	tab    *Tab
	f      *excelize.File
	styles *styles
	sw     *excelize.StreamWriter
	widths []float64
	width  float64 // of the tab as printed
	row    int     // last row written
	full   *Table
	// of the printed page that the next row stands on: points filled, and how
	// many of them by what is repeated at the top of every page
	filled, repeated float64
}

func (p *tabWriter) write() error {
	p.width = p.tab.Width()
	for _, blk := range p.tab.Blocks {
		if v, ok := blk.(Full); ok {
			if p.full != nil {
				return fmt.Errorf("two tables with filters")
			}
			p.full = v.Table
		}
	}
	p.widths = p.tab.grid()
	if p.full != nil {
		p.widths = p.full.widths()
	}
	if err := p.page(); err != nil {
		return err
	}
	var err error
	if p.sw, err = p.f.NewStreamWriter(p.tab.Name); err != nil {
		return err
	}
	for i, w := range p.widths {
		if err := p.sw.SetColWidth(i+1, i+1, w); err != nil {
			return err
		}
		if p.full != nil && p.full.Columns[i].Hidden {
			if err := p.sw.SetColVisible(i+1, i+1, false); err != nil {
				return err
			}
		}
	}
	if err := p.freeze(); err != nil {
		return err
	}
	for i, blk := range p.tab.Blocks {
		if t, ok := blk.(Title); ok && t.Level > 1 && p.full == nil {
			if err := p.keepSection(p.section(p.tab.Blocks[i:])); err != nil {
				return err
			}
		}
		if err := p.block(blk); err != nil {
			return err
		}
	}
	return p.sw.Flush()
}

// page sets paper, margins, header and footer. It runs before the stream is
// opened, which writes the page's properties first.
func (p *tabWriter) page() error {
	a4, wide, tall := 9, 1, 0
	if p.tab.OnePage && p.tab.Height() > PageHeight {
		tall = 1
	}
	way := "portrait"
	if p.tab.Landscape {
		way = "landscape"
	}
	fit, grid := true, p.full != nil
	name := p.tab.Name
	if err := p.f.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	if err := p.f.SetPageLayout(name, &excelize.PageLayoutOptions{Size: &a4, Orientation: &way,
		FitToWidth: &wide, FitToHeight: &tall}); err != nil {
		return err
	}
	side, top, edge := 0.5, 0.7, 0.3 // inches
	if err := p.f.SetPageMargins(name, &excelize.PageLayoutMarginsOptions{Left: &side, Right: &side,
		Top: &top, Bottom: &top, Header: &edge, Footer: &edge}); err != nil {
		return err
	}
	if err := p.f.SetSheetView(name, 0, &excelize.ViewOptions{ShowGridLines: &grid}); err != nil {
		return err
	}
	return p.f.SetHeaderFooter(name, &excelize.HeaderFooterOptions{
		OddHeader: clip(`&L&"`+font+`"&9`+field(p.book.Title)+`&R&"`+font+`"&9`+field(name), 250),
		OddFooter: clip(`&L&"`+font+`"&9`+field(p.book.Footer)+`&R&"`+font+`"&9Page &P of &N`, 250),
	})
}

// field makes text safe in a header or footer, where & begins a code, and
// keeps digits from being read as part of the font size before them.
func field(s string) string {
	return " " + strings.ReplaceAll(s, "&", "&&")
}

func clip(s string, n int) string {
	if r := []rune(s); len(r) > n {
		return string(r[:n])
	}
	return s
}

// freeze keeps the heading row in sight and repeats it on every printed page.
// A tab whose chart stands above its table would lose half the screen to it,
// so there only print titles are set.
func (p *tabWriter) freeze() error {
	if p.full == nil {
		return nil
	}
	head, charted := p.tableStart(), false
	for _, blk := range p.tab.Blocks {
		if _, ok := blk.(ChartBlock); ok {
			charted = true
		}
	}
	if err := p.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", Scope: p.tab.Name,
		RefersTo: fmt.Sprintf("'%s'!$%d:$%d", p.tab.Name, head, head)}); err != nil {
		return err
	}
	if p.tab.PrintColumns > 0 || p.tab.PrintRows > 0 {
		cols, rows := len(p.full.Columns), len(p.full.Rows)
		if p.tab.PrintColumns > 0 {
			cols = p.tab.PrintColumns
		} else {
			cols = max(cols, p.across())
		}
		if p.tab.PrintRows > 0 {
			rows = min(rows, p.tab.PrintRows)
		}
		z, err := excelize.CoordinatesToCellName(cols, head+rows, true)
		if err != nil {
			return err
		}
		if err := p.f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", Scope: p.tab.Name,
			RefersTo: fmt.Sprintf("'%s'!$A$1:%s", p.tab.Name, z)}); err != nil {
			return err
		}
	}
	if charted || len(p.full.Rows) == 0 {
		return nil
	}
	top, err := excelize.CoordinatesToCellName(1, head+1)
	if err != nil {
		return err
	}
	return p.sw.SetPanes(&excelize.Panes{Freeze: true, YSplit: head, TopLeftCell: top, ActivePane: "bottomLeft",
		Selection: []excelize.Selection{{SQRef: top, ActiveCell: top, Pane: "bottomLeft"}}})
}

// rowsOf is the number of rows that a block takes above a Full table.
func (p *tabWriter) rowsOf(blk Block) int {
	switch v := blk.(type) {
	case Title, Para:
		return 1
	case Big:
		return 2
	case Pair:
		n := v.Left.boardRows()
		if v.Right != nil {
			n = max(n, v.Right.boardRows())
		}
		return n + 1
	case Small:
		return v.smallRows()
	case ChartBlock:
		return v.Chart.rows() + 1
	}
	return 0
}

func (p *tabWriter) block(blk Block) error {
	switch v := blk.(type) {
	case Title:
		l := titleLook(v.Level)
		return p.wide(v.Text, l.look, l.height)
	case Para:
		return p.wide(v.Text, look{bold: v.Bold, wrap: true, top: true}, p.paraHeight(v))
	case Big:
		return p.big(v)
	case Pair:
		return p.pair(v)
	case Small:
		return p.small(v.Table)
	case Full:
		return p.table(v.Table)
	case ChartBlock:
		return p.chart(v.Chart)
	}
	return fmt.Errorf("unknown block %T", blk)
}

// Heights of rows in points.
const (
	bigHeight     = 27
	captionHeight = 16
	gapHeight     = 6
	sectionHeight = 17
)

type lineLook struct {
	look   look
	height float64
}

func titleLook(level int) lineLook {
	if level > 1 {
		return lineLook{look{size: 12, bold: true}, 20}
	}
	return lineLook{look{size: 16, bold: true}, 24}
}

// usualWidth is the width in characters of a column that nobody has set.
const usualWidth = 9.14

// across is the number of columns that titles and paragraphs run over: those
// of the table, and more where the table is narrower than the page.
func (p *tabWriter) across() int {
	n, t := len(p.widths), p.sum()
	for ; t+usualWidth < PageWidth-3; t += usualWidth {
		n++
	}
	return n
}

func (p *tabWriter) sum() float64 { return p.full.shown(p.widths) }

// total is the width in characters of titles and paragraphs.
func (p *tabWriter) total() float64 {
	return p.sum() + float64(p.across()-len(p.widths))*usualWidth
}

func (p *tabWriter) set(cells []any, height float64) error {
	p.row++
	p.fill(height)
	at, err := excelize.CoordinatesToCellName(1, p.row)
	if err != nil {
		return err
	}
	return p.sw.SetRow(at, cells, excelize.RowOpts{Height: height})
}

func (p *tabWriter) merge(fromCol, toCol, row int) error {
	if fromCol >= toCol {
		return nil
	}
	a, err := excelize.CoordinatesToCellName(fromCol+1, row)
	if err != nil {
		return err
	}
	z, err := excelize.CoordinatesToCellName(toCol+1, row)
	if err != nil {
		return err
	}
	return p.sw.MergeCell(a, z)
}

// wide writes one line over the whole width.
func (p *tabWriter) wide(s string, l look, height float64) error {
	id, err := p.styles.id(l)
	if err != nil {
		return err
	}
	if err := p.set([]any{excelize.Cell{StyleID: id, Value: s}}, height); err != nil {
		return err
	}
	return p.merge(0, p.across()-1, p.row)
}

// quarters are the spans of the board's grid that hold a figure each.
var quarters = [][2]int{{0, 1}, {2, 3}, {5, 6}, {7, 8}}

func (p *tabWriter) big(b Big) error {
	if len(b.Figures) > len(quarters) || p.tab.Grid != nil || len(p.widths) != len(board) {
		return fmt.Errorf("%d large figures in %d columns", len(b.Figures), len(p.widths))
	}
	for _, l := range []struct {
		look   look
		height float64
		text   func(Figure) string
	}{
		{look{size: 18, bold: true, centre: true, fill: "EFEFEF"}, bigHeight, func(f Figure) string { return f.Value }},
		{look{centre: true, fill: "EFEFEF", shrink: true}, captionHeight, func(f Figure) string { return f.Caption }},
	} {
		id, err := p.styles.id(l.look)
		if err != nil {
			return err
		}
		cells := make([]any, len(board))
		for i := range cells {
			cells[i] = excelize.Cell{StyleID: id}
		}
		for i, f := range b.Figures {
			cells[quarters[i][0]] = excelize.Cell{StyleID: id, Value: l.text(f)}
		}
		if err := p.set(cells, l.height); err != nil {
			return err
		}
		for _, q := range quarters {
			if err := p.merge(q[0], q[1], p.row); err != nil {
				return err
			}
		}
	}
	return nil
}

// slots gives for each of n columns the first and last grid column of a half.
// Words in the last column of a page get two: what they run over its edge, some
// programs count as part of the page and shrink it all.
func slots(n int) [][2]int {
	return [][][2]int{{{0, 3}}, {{0, 2}, {3, 3}}, {{0, 0}, {1, 1}, {2, 3}}, {{0, 0}, {1, 1}, {2, 2}, {3, 3}}}[n-1]
}

// boardRows is the number of rows of a small table: title, heading, rows.
func (t *Table) boardRows() int { return 2 + max(1, len(t.Rows)) }

func (p *tabWriter) pair(v Pair) error {
	if p.tab.Grid != nil || len(p.widths) != len(board) {
		return fmt.Errorf("tables side by side need a tab of their own")
	}
	if err := p.set(nil, gapHeight); err != nil {
		return err
	}
	halves := []*Table{v.Left, v.Right}
	rows := p.rowsOf(v) - 1
	for r := range rows {
		cells := make([]any, len(board))
		var spans [][2]int
		for h, t := range halves {
			if t == nil || r >= t.boardRows() {
				continue
			}
			if len(t.Columns) < 1 || len(t.Columns) > 4 {
				return fmt.Errorf("table %q has %d columns, a half page takes 1 to 4", t.Title, len(t.Columns))
			}
			s, err := p.half(t, r, 5*h, cells)
			if err != nil {
				return err
			}
			spans = append(spans, s...)
		}
		height := lineHeight
		if r == 0 {
			height = sectionHeight
		}
		if err := p.set(cells, height); err != nil {
			return err
		}
		for _, s := range spans {
			if err := p.merge(s[0], s[1], p.row); err != nil {
				return err
			}
		}
	}
	return nil
}

// half fills row r of a small table into the grid from column at on and gives
// the spans to merge.
func (p *tabWriter) half(t *Table, r, at int, cells []any) ([][2]int, error) {
	var spans [][2]int
	put := func(from, to int, v any, l look) error {
		id, err := p.styles.id(l)
		if err != nil {
			return err
		}
		for c := from; c <= to; c++ {
			cells[at+c] = excelize.Cell{StyleID: id}
		}
		cells[at+from] = excelize.Cell{StyleID: id, Value: v}
		spans = append(spans, [2]int{at + from, at + to})
		return nil
	}
	if r == 0 {
		w := board[0] + board[1] + board[2] + board[3] - 1
		return spans, put(0, 3, t.Title, look{size: 11, bold: true, line: 'm', shrink: 1.1*boldWider*measure(t.Title) > w})
	}
	if len(t.Rows) == 0 {
		if r == 1 {
			return spans, put(0, 3, t.none(), look{})
		}
		return nil, nil
	}
	for c, s := range slots(len(t.Columns)) {
		col := t.Columns[c]
		if r == 1 {
			if err := put(s[0], s[1], col.Head, look{bold: true, right: col.Kind.Right(), inner: true, line: 't'}); err != nil {
				return nil, err
			}
			continue
		}
		var v Value
		if row := t.Rows[r-2]; c < len(row.Cells) {
			v = row.Cells[c]
		}
		l := look{format: col.Kind.format(v), right: col.Kind.Right(), inner: true, line: 'h'}
		if col.Kind == Text {
			// Small tables don't wrap: of a name that is too long the first is
			// shortened; what is too long still is printed smaller, and only what
			// would be too small to read ends in "…".
			w := 0.0
			for i := s[0]; i <= s[1]; i++ {
				w += board[i]
			}
			if col.Head == "Name" && measure(v.text) > w-2 {
				v.text = initialled(v.text)
			}
			l.shrink = measure(v.text) > w-2
			v.text = cut(v.text, int(1.5*w))
		}
		if err := put(s[0], s[1], v.cell(col.Kind), l); err != nil {
			return nil, err
		}
	}
	return spans, nil
}

// initialled is a name with the first of its names as an initial: "C. Smythe-Orr".
func initialled(name string) string {
	first, rest, ok := strings.Cut(name, " ")
	if r, size := utf8.DecodeRuneInString(first); ok && size < len(first) {
		return string(r) + ". " + rest
	}
	return name
}

// paraHeight is the height of a paragraph as wide as the tab.
func (p *tabWriter) paraHeight(v Para) float64 {
	w := 0.97 * p.total() // the margins of the cell, and programs differ a little
	if v.Bold {
		w /= boldWider
	}
	return lineHeight * float64(lines(v.Text, w))
}

// widths gives the width of each column in characters: the widest content up
// to the column's Max, and room for the filter button beside the heading.
func (t *Table) widths() []float64 {
	out := make([]float64, len(t.Columns))
	for c, col := range t.Columns {
		most := col.Max
		if most == 0 {
			most = 40
		}
		w := 0.0
		for _, r := range t.Rows {
			if c < len(r.Cells) {
				w = math.Max(w, measure(r.Cells[c].Show(col.Kind)))
			}
		}
		least := float64(max(headWidth(col.Head)+3, col.Width))
		out[c] = math.Min(math.Max(math.Ceil(math.Min(w, float64(most)))+col.room(), least), 100)
	}
	return out
}

// room is what the indent and the margins of a cell take of a column's width.
func (c Column) room() float64 {
	if c.Kind.Right() {
		return 1
	}
	return 2.5
}

// headWidth is the width of the longest word: headings wrap.
func headWidth(s string) int {
	n := 0
	for _, w := range strings.Fields(s) {
		n = max(n, width(w))
	}
	return n
}

// legend is one line with the marks that stand in the table.
func (t *Table) legend() string {
	return strings.Join(t.Signs(), ".  ")
}

// headHeight is the height of a heading row, whose words wrap.
func (p *tabWriter) headHeight(t *Table) float64 {
	tall := 1
	for c, col := range t.Columns {
		tall = max(tall, lines(col.Head, (p.widths[c]-1)/boldWider))
	}
	return lineHeight*float64(tall) + 2
}

func (p *tabWriter) heading(t *Table) error {
	heads := make([]any, len(t.Columns))
	for c, col := range t.Columns {
		id, err := p.styles.id(look{bold: true, fill: "E0E0E0", right: col.Kind.Right(), inner: true, wrap: true, line: 't'})
		if err != nil {
			return err
		}
		heads[c] = excelize.Cell{StyleID: id, Value: col.Head}
	}
	return p.set(heads, p.headHeight(t))
}

// smallRows is the number of rows of a Small table: heading, rows, a gap.
func (t *Table) smallRows() int { return 2 + max(1, len(t.Rows)) }

func (p *tabWriter) small(t *Table) error {
	if p.full != nil || len(t.Columns) > len(p.widths) {
		return fmt.Errorf("a small table of %d columns needs a grid of as many", len(t.Columns))
	}
	if err := p.heading(t); err != nil {
		return err
	}
	if len(t.Rows) == 0 {
		if err := p.wide(t.none(), look{}, lineHeight); err != nil {
			return err
		}
	}
	for i, r := range t.Rows {
		if i > 0 {
			if err := p.keepRow(t, lineHeight*float64(p.linesOf(t, r))); err != nil {
				return err
			}
		}
		if err := p.tableRow(t, r); err != nil {
			return err
		}
	}
	return p.set(nil, gapHeight)
}

func (p *tabWriter) table(t *Table) error {
	if l := t.legend(); l != "" {
		if err := p.wide(l, look{wrap: true, top: true}, lineHeight*float64(lines(l, p.total()))); err != nil {
			return err
		}
	}
	if err := p.heading(t); err != nil {
		return err
	}
	head := p.row
	if len(t.Rows) == 0 {
		return p.wide(t.none(), look{}, lineHeight)
	}
	p.repeated = p.headHeight(t)
	whole := -1
	for c, col := range t.Columns {
		if col.Head == t.Whole {
			whole = c
		}
	}
	for i, r := range t.Rows {
		if whole >= 0 && i > 0 && !alike(r, t.Rows[i-1], whole) {
			if err := p.keep(p.group(t, whole, i)); err != nil {
				return err
			}
		}
		if err := p.tableRow(t, r); err != nil {
			return err
		}
	}
	return p.realTable(t, head)
}

// linesOf is how many lines of text a row of a table is high.
func (p *tabWriter) linesOf(t *Table, r Row) int {
	tall := 1
	for c := range t.Columns {
		if c < len(r.Cells) && r.Cells[c].what == isText {
			tall = max(tall, lines(r.Cells[c].text, p.widths[c]-t.Columns[c].room()))
		}
	}
	return tall
}

func (p *tabWriter) tableRow(t *Table, r Row) error {
	fill := t.tint(r.Marks)
	tall := 1
	cells := make([]any, len(t.Columns))
	for c, col := range t.Columns {
		var v Value
		if c < len(r.Cells) {
			v = r.Cells[c]
		}
		n := 1
		if v.what == isText {
			n = lines(v.text, p.widths[c]-col.room())
			tall = max(tall, n)
		}
		id, err := p.styles.id(look{format: col.Kind.format(v), right: col.Kind.Right(),
			inner: true, fill: fill, wrap: n > 1, line: 'h', box: col.Input})
		if err != nil {
			return err
		}
		cells[c] = excelize.Cell{StyleID: id, Value: v.cell(col.Kind)}
	}
	return p.set(cells, lineHeight*float64(tall))
}

// realTable makes the rows a table with filters. Drop-down lists and charts
// must be there before the stream is closed, else the library drops them.
func (p *tabWriter) realTable(t *Table, head int) error {
	a, err := excelize.CoordinatesToCellName(1, head)
	if err != nil {
		return err
	}
	z, err := excelize.CoordinatesToCellName(len(t.Columns), p.row)
	if err != nil {
		return err
	}
	stripes := false
	if err := p.sw.AddTable(&excelize.Table{Range: a + ":" + z, Name: t.Name,
		StyleName: "TableStyleLight1", ShowRowStripes: &stripes}); err != nil {
		return err
	}
	for c, col := range t.Columns {
		if len(col.Choices) == 0 {
			continue
		}
		letter, err := excelize.ColumnNumberToName(c + 1)
		if err != nil {
			return err
		}
		dv := excelize.NewDataValidation(true)
		dv.SetSqref(fmt.Sprintf("%s%d:%s%d", letter, head+1, letter, p.row))
		if err := dv.SetDropList(col.Choices); err != nil {
			return err
		}
		dv.SetError(excelize.DataValidationErrorStyleStop, "Not one of the choices",
			"Please choose one of: "+strings.Join(col.Choices, ", "))
		if err := p.f.AddDataValidation(p.tab.Name, dv); err != nil {
			return err
		}
	}
	return nil
}

// mostPixels is the width of a chart that fills a page's width.
const mostPixels = 660

func (p *tabWriter) chart(c *Chart) error {
	if p.full == nil {
		return fmt.Errorf("chart %q has no table on its tab", c.Title)
	}
	if len(p.full.Rows) == 0 {
		return nil
	}
	// Rows of the table: counted from where it will begin or has begun.
	first := p.tableStart() + 1
	at, err := excelize.CoordinatesToCellName(1, p.row+1)
	if err != nil {
		return err
	}
	base, over, err := c.build(p.tab.Name, p.full, first-1, first, first+len(p.full.Rows)-1,
		min(mostPixels, int(p.total()*7))) // 7 pixels a character, of a digit at this size
	if err != nil {
		return err
	}
	if over != nil {
		err = p.f.AddChart(p.tab.Name, at, base, over)
	} else {
		err = p.f.AddChart(p.tab.Name, at, base)
	}
	if err != nil {
		return err
	}
	for range c.rows() + 1 {
		if err := p.set(nil, lineHeight); err != nil {
			return err
		}
	}
	return nil
}

// tableStart is the row of the Full table's heading.
func (p *tabWriter) tableStart() int {
	head := 0
	for _, blk := range p.tab.Blocks {
		if _, ok := blk.(Full); ok {
			break
		}
		head += p.rowsOf(blk)
	}
	if p.full.legend() != "" {
		head++
	}
	return head + 1
}
