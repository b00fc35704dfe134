package table

import (
	"fmt"
	"io"
	"sort"
	"strings"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/text"
)

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
		Creator: text.BookMaker, LastModifiedBy: text.BookMaker, Created: made, Modified: made}); err != nil {
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

// paraHeight is the height of a paragraph as wide as the tab.
func (p *tabWriter) paraHeight(v Para) float64 {
	w := 0.97 * p.total() // the margins of the cell, and programs differ a little
	if v.Bold {
		w /= boldWider
	}
	return lineHeight * float64(lines(v.Text, w))
}
