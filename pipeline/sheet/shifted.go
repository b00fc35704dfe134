package sheet

import (
	"math/bits"
	"slices"
	"strconv"
)

// shiftBack moves rows back whose columns stand otherwise than under the heading, or otherwise than
// those of the first rows where there is none: somebody has left a column out from some row on, or
// begun one further to the right, to the end or for a while, or one cell of a row. Three rows or more on end,
// or fewer that lack the last cell or have a blank one before the place that comes next, under three that fit, do not fit as they stand, and nine in ten do with the one blank column taken out,
// or one put in, always at the same place. A column that is put in is never one of names or
// times, and where it may be several, it is the last of them. Only tables of a length that people
// type are looked at. It returns the number of rows.
func (g *grid) shiftBack(lex *lexicon, headings []string, after int) (moved int) {
	if g.len() > typedRows || len(headings) < 3 {
		return 0
	}
	usual := make([]kind, len(headings))
	times := timedColumns(lex, headings)
	fits := func(cells []string) bool {
		return lastFilled(cells) < len(headings) && fitsKinds(cells[:min(len(cells), len(headings))], usual, len(usual)) && fitsMoved(cells, usual, times, 3)
	}
	rows, full := 0, true // whether the first rows fill the last column
	var runs [][]int
	var run []int // rows on end that do not fit
	end := func() {
		if len(run) >= 3 || full && lacksLast(g, run, len(headings)) || g.beginsLate(run, after) {
			runs = append(runs, run)
		}
		run = nil
	}
	var seen []uint64 // which cells are filled in rows that fit
	for i := range g.len() {
		row, cells := g.at(i)
		filled := filledCells(cells)
		if row <= after || bits.OnesCount64(filled) < 3 {
			continue
		}
		if rows < 3 {
			full = full && lastFilled(cells) == len(headings)-1
			for j, c := range cells {
				if k := kindOf(c); j < len(usual) && usual[j] == kBlank && k != kStatus {
					usual[j] = k
				}
			}
			if !slices.Contains(usual, kClock) && !slices.Contains(times, true) {
				return 0
			}
		}
		rows++
		if slices.Contains(seen, filled) {
			end()
			continue
		}
		switch ok := fits(cells); {
		case !ok && rows <= 3:
			return 0
		case !ok:
			run = append(run, i)
		default:
			end()
			seen = append(seen, filled)
		}
	}
	end()
	edits := map[int][]string{}
	for _, run := range runs {
		edit, put := g.shift(lex, headings, run, fits)
		if edit < 0 || len(run) < 3 && !put && !(edit == 0 && g.beginsLate(run, after)) {
			continue
		}
		for _, i := range run {
			_, cells := g.at(i)
			if try := shifted(cells, edit, put); lastFilled(try) < len(headings) {
				edits[i] = try
			}
		}
	}
	return g.mendRows(edits)
}

// beginsLate says whether one row or more have nothing in the first column and beside it the number that
// comes after the one of the row above, which begins there.
func (g *grid) beginsLate(rows []int, after int) bool {
	for n, i := range rows {
		if i == 0 {
			return false
		}
		row, above := g.at(i - 1)
		first := cellAt(above, 0)
		if n > 0 && i-1 == rows[n-1] {
			first = cellAt(above, 1)
		}
		_, cells := g.at(i)
		last, err := strconv.Atoi(trim(first))
		if row <= after || err != nil || !isBlank(cellAt(cells, 0)) || trim(cellAt(cells, 1)) != strconv.Itoa(last+1) {
			return false
		}
	}
	return len(rows) > 0
}

// lacksLast says whether one row or more have nothing in the last column alone; where the first rows fill
// it, a cell was left out before it.
func lacksLast(g *grid, rows []int, width int) bool {
	for _, i := range rows {
		if _, cells := g.at(i); lastFilled(cells) != width-2 {
			return false
		}
	}
	return len(rows) > 0
}

// shift finds the column that has to be taken out of rows, or put in, so that nine in ten of
// them fit and none does as it stands; -1 for none.
func (g *grid) shift(lex *lexicon, headings []string, rows []int, fits func([]string) bool) (at int, put bool) {
	count := func(edit int, put bool) (n int) {
		for _, i := range rows {
			if _, cells := g.at(i); fits(shifted(cells, edit, put)) {
				n++
			}
		}
		return n
	}
	for _, i := range rows {
		if _, cells := g.at(i); fits(cells) {
			return -1, false
		}
	}
	blank := func(edit int) bool {
		return !slices.ContainsFunc(rows, func(i int) bool { _, cells := g.at(i); return !isBlank(cellAt(cells, edit)) })
	}
	for edit := range len(headings) {
		if blank(edit) && count(edit, false)*10 >= len(rows)*9 {
			return edit, false
		}
	}
	at = -1
	for edit, h := range headings {
		m := lex.read(h)
		if m.known && (m.meaning.isName() || m.meaning.isTime()) || blank(edit) {
			continue
		}
		if count(edit, true)*10 >= len(rows)*9 {
			at = edit
		}
	}
	return at, at >= 0
}

// shifted is a row with a column taken out, or a blank one put in.
func shifted(cells []string, at int, put bool) []string {
	if at > len(cells) {
		return slices.Clone(cells)
	}
	if put {
		return slices.Insert(slices.Clone(cells), at, "")
	}
	return slices.Delete(slices.Clone(cells), min(at, len(cells)), min(at+1, len(cells)))
}

// firstWidth is how many cells the first row with a time and two cells beside it has, 0 for none.
func (g *grid) firstWidth() int {
	for i := range min(g.len(), headingLooks) {
		if _, cells := g.at(i); rowFilled(cells) >= 3 && slices.ContainsFunc(cells, func(c string) bool { return kindOf(c) == kClock }) {
			return lastFilled(cells) + 1
		}
	}
	return 0
}

// filledCells says by bits which of the first 64 cells of a row are filled.
func filledCells(cells []string) (filled uint64) {
	for i, c := range cells[:min(len(cells), 64)] {
		if !isBlank(c) {
			filled |= 1 << i
		}
	}
	return filled
}
