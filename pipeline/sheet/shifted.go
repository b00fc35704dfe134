package sheet

import "slices"

// shiftBack moves the rows back whose columns stand otherwise than under the heading from some
// row on to the end: somebody has left a column out from there, or begun one further to the
// right. All those rows, three or more under three that fit the heading, do not fit it as
// they stand, and nine in ten do with the one blank column taken out, or one put in, always at
// the same place. A column that is put in is never one of names or times, and where it may be
// several, it is the last of them. It returns the number of rows.
func (g *grid) shiftBack(lex *lexicon, headings []string, after int) (moved int) {
	var rows []int                                       // of the grid, with three cells or more
	for i := g.len() - 1; i >= 0 && len(rows) < 3; i-- { // the last rows show whether anything has moved
		if row, cells := g.at(i); row > after && rowFilled(cells) >= 3 {
			rows = append(rows, i)
		}
	}
	if len(headings) < 3 || len(rows) < 3 {
		return 0
	}
	last := rows
	rows = nil
	from := -1 // the first row of those below, among rows
	usual := make([]kind, len(headings))
	learn := func(cells []string) {
		for j, c := range cells {
			if k := kindOf(c); j < len(usual) && usual[j] == kBlank && k != kStatus {
				usual[j] = k
			}
		}
	}
	fits := func(cells []string) bool {
		return lastFilled(cells) < len(headings) && fitsKinds(cells[:min(len(cells), len(headings))], usual, len(usual)) && fitsMoved(cells, usual, 3)
	}
	for i := range g.len() {
		row, cells := g.at(i)
		if row <= after || rowFilled(cells) < 3 {
			continue
		}
		if len(rows) < 3 {
			if learn(cells); !slices.Contains(usual, kClock) {
				return 0
			}
		}
		if len(rows) == 3 && slices.ContainsFunc(last, func(k int) bool { _, end := g.at(k); return fits(end) }) {
			return 0
		}
		if ok := fits(cells); !ok && from < 0 {
			from = len(rows)
		}
		rows = append(rows, i)
	}
	if from < 3 || len(rows)-from < 3 {
		return 0
	}
	below := rows[from:]
	edit, put := g.shift(lex, headings, below, fits)
	if edit < 0 {
		return 0
	}
	in := map[int]bool{}
	for _, i := range below {
		in[i] = true
	}
	return g.mend(func(i, _ int, cells []string) ([]string, bool) {
		if !in[i] {
			return nil, false
		}
		try := shifted(cells, edit, put)
		return try, fits(try) || !fits(cells) && lastFilled(try) < len(headings)
	})
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
