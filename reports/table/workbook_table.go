package table

import (
	"fmt"
	"math"
	"strings"

	"github.com/xuri/excelize/v2"
)

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
