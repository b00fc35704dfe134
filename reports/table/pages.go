package table

import (
	"slices"

	"github.com/xuri/excelize/v2"
)

// PageWidth is the number of characters that an upright A4 page takes at full
// size between the margins set here; a wider tab is shrunk when printed.
const PageWidth = 97

// PageHeight is the height in points of what fits on an upright A4 page
// between the margins set here.
const PageHeight = 842 - 2*0.7*72

// The same of a page that lies on its side.
const (
	landscapeWidth  = PageWidth * (842 - 2*0.5*72) / (595 - 2*0.5*72)
	landscapeHeight = 595 - 2*0.7*72
)

// leastBelow is the least height in points that something too long for a page
// may begin with above the foot of one.
const leastBelow = 8 * lineHeight

// capacity is the height in points, at full size, of what a printed page of the
// tab takes. Programs differ a little in how they lay out rows, so some is left:
// a page break set below the end of a page would make a nearly empty one.
func (p *tabWriter) capacity() float64 {
	w, h := float64(PageWidth), float64(PageHeight)
	if p.tab.Landscape {
		w, h = landscapeWidth, landscapeHeight
	}
	return 0.97 * h * max(1, p.width/w)
}

// fill counts a row's height to the page that it is printed on.
func (p *tabWriter) fill(height float64) {
	if p.filled+height > p.capacity() {
		p.filled = p.repeated
	}
	p.filled += height
}

// keep begins a new page before what comes next where its height, in points,
// does not fit on the rest of this one: unless it fits on no page, and there is
// room for a fair part of it here.
func (p *tabWriter) keep(height float64) error {
	room := p.capacity() - p.filled
	switch {
	case p.tab.OnePage || p.filled <= p.repeated || height <= room:
		return nil
	case height > p.capacity()-p.repeated && room >= leastBelow:
		return nil
	}
	return p.newPage()
}

// newPage begins a printed page with the next row.
func (p *tabWriter) newPage() error {
	at, err := excelize.CoordinatesToCellName(1, p.row+1)
	if err != nil {
		return err
	}
	p.filled = p.repeated
	return p.f.InsertPageBreak(p.tab.Name, at)
}

// keepRow begins a new page before a row of a table among others that does not fit on
// this one, and writes the table's headings again at the head of it: print titles
// are of one table, and of the whole tab.
func (p *tabWriter) keepRow(t *Table, height float64) error {
	if p.tab.OnePage || p.filled+height <= p.capacity() {
		return nil
	}
	if err := p.newPage(); err != nil {
		return err
	}
	return p.heading(t)
}

// section is the height in points of the blocks from a section's title up to
// the next one's.
func (p *tabWriter) section(blocks []Block) float64 {
	h := 0.0
	for i, blk := range blocks {
		if t, ok := blk.(Title); ok && i > 0 && t.Level > 1 {
			break
		}
		h += p.height(blk)
	}
	return h
}

// alike says whether rows are the same in the columns up to one.
func alike(a, b Row, column int) bool {
	return slices.Equal(a.Cells[:column+1], b.Cells[:column+1])
}

// keepSection is keep for a section that begins here: one of more than a third
// of a page begins on this page where a third of it is left, or pages would stay
// half empty.
func (p *tabWriter) keepSection(height float64) error {
	if third := p.capacity() / 3; height > third && p.capacity()-p.filled >= third {
		return nil
	}
	return p.keep(height)
}

// group is the height in points of the rows from r on that are alike.
func (p *tabWriter) group(t *Table, column, r int) float64 {
	h := 0.0
	for k := r; k < len(t.Rows) && alike(t.Rows[k], t.Rows[r], column); k++ {
		h += lineHeight * float64(p.linesOf(t, t.Rows[k]))
	}
	return h
}
