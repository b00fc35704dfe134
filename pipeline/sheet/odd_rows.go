package sheet

import (
	"slices"
	"strings"
)

// divideOddRows divides the rows of which all stands in one cell, divided by another mark than the
// table or in quotes of its own, where the pieces fit the columns, three cells or more with what is
// usual there and a time among them. It returns the number of rows.
func (g *grid) divideOddRows(lex *lexicon, headings []string, after int, limits Limits) (mended int) {
	if len(headings) < 3 {
		return 0
	}
	var usual []kind
	var times []bool
	return g.mend(func(_, row int, cells []string) ([]string, bool) {
		at := lastFilled(cells)
		if row <= after || at < 0 || !clockInside.MatchString(cells[at]) || rowFilled(cells) != 1 {
			return nil, false
		}
		if usual == nil {
			usual, times = g.usualKinds(headings, after, 3, 1), timedColumns(lex, headings)
		}
		var found []string
		for _, mark := range []byte{',', ';', '\t', '|'} {
			if strings.Count(cells[at], string(mark)) < 2 {
				continue
			}
			_, pieces, err := newScanner([]byte(oneLine(cells[at])), mark, limits).next()
			if err != nil || len(pieces) > len(headings) || !fitsMoved(pieces, usual, times, 3) {
				continue
			}
			if found != nil {
				return nil, false
			}
			found = pieces
		}
		return found, found != nil
	})
}

// joinBroken puts rows together that a line break has cut in two, within a cell or between two, or of
// which the second part was typed in the row below: neither part is a row of this table, and together they
// are one, with two thirds of what is usual there. Only tables of a length that people type are looked
// at. It returns the number of rows.
func (g *grid) joinBroken(lex *lexicon, headings []string, after int) int {
	if len(headings) < 3 || g.len() > typedRows {
		return 0
	}
	var usual []kind
	var times []bool
	whole := 0
	isRow := func(cells []string) bool {
		if usual == nil {
			usual, times = g.usualKinds(headings, after, 3, 2), timedColumns(lex, headings)
			whole = max(3, wholeRow(usual))
		}
		return len(cells) <= len(headings) && fitsMoved(cells, usual, times, whole)
	}
	joined, rows := map[int][]string{}, 0
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		end := lastFilled(cells)
		if row <= after || end < 0 {
			continue
		}
		if rows++; i+1 == g.len() || rowFilled(cells) < 2 && len(headings) > 3 {
			continue
		}
		_, below := g.at(i + 1)
		last := lastFilled(below)
		if last < 0 || 2*min(rowFilled(cells), rowFilled(below)) > len(headings)+1 { // nearly all rows: two such are more than one
			continue
		}
		timed := func(c string) bool { return kindOf(c) == kClock }
		if slices.ContainsFunc(cells, timed) && slices.ContainsFunc(below, timed) || isRow(cells[:end+1]) || isRow(below[:last+1]) {
			continue // two rows, of fewer columns
		}
		if !slices.ContainsFunc(below, func(c string) bool { k := kindOf(c); return k != kBlank && k != kText && k != kStatus }) {
			continue // a line of words below the results
		}
		for _, try := range joinings(cells[:end+1], below[:last+1]) {
			if isRow(try) {
				joined[i], joined[i+1] = try, nil
				i++
				break
			}
		}
	}
	if len(joined) > rows {
		return 0 // more than half of them
	}
	return g.mendRows(joined) / 2
}

// wholeRow is how many cells of the usual kind a whole row has at least.
func wholeRow(usual []kind) int {
	known := 0
	for _, k := range usual {
		if k != kBlank {
			known++
		}
	}
	return (2*known + 2) / 3
}

// joinings are the ways in which the second part of a row may go on from the first: under its blank
// cells, behind it, or within its last cell.
func joinings(first, second []string) (ways [][]string) {
	if isBlank(second[0]) {
		over := withCells(first, len(second)-1)
		apart := true
		for i, c := range second {
			if isBlank(c) {
				continue
			}
			apart = apart && isBlank(over[i])
			over[i] = c
		}
		if apart && rowFilled(second) > 1 { // a time alone may be of somebody without a name
			ways = append(ways, over)
		}
		return append(ways, slices.Concat(first, second[1:]))
	}
	glued := slices.Concat(first, second[1:])
	glued[len(first)-1] += " " + second[0]
	return [][]string{slices.Concat(first, second), glued}
}
