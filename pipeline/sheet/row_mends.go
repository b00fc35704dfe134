package sheet

import "slices"

// rowMend is a way to mend rows before the columns of their table are settled: mend returns how
// many rows, or cells, it has changed, of which the sheet is told.
type rowMend struct {
	mend func() int
	kind string // of the note
	said string // with a verb for the number and what it is of
	of   string
}

// rowMends are the mends of a table under a heading, or of one without, in their order; after is
// the last row of the heading.
func (t table) rowMends(lex *lexicon, l layout, after int, limits Limits) []rowMend {
	g := t.grid
	const counted = "%s had a number behind the same word or letter; the numbers count from 1 and were taken for places"
	headings := l.headings
	if l.first < 0 {
		headings, after = make([]string, g.firstWidth()), 0
	}
	divided := rowMend{func() int { return g.divideOddRows(lex, headings, after, limits) }, "cells-divided", "%s stood in one cell as a whole, or had another mark between the cells than the rest; read as if divided like the rest", "row"}
	broken := rowMend{func() int { return g.joinBroken(lex, headings, after) }, "rows-joined", "%s went on in the row below; the two were put together", "row"}
	tooMany := rowMend{func() int { return g.dropStray(headings, after) }, "cells-moved", "%s had a cell too many, blank or the same as the one before; read without it", "row"}
	other := rowMend{func() int { return g.reorder(lex, headings, after) }, "cells-moved", "%s had the columns in another order than the rest; read as if in the same", "row"}
	if l.first < 0 {
		return []rowMend{
			divided,
			broken,
			tooMany,
			{func() int { return g.shiftBack(lex, headings, 0) }, "cells-moved", "from some row on, %s had a column too many or too few; read as if like the first rows", "row"},
			{func() int { return g.moveBack(lex, slices.Repeat([]string{"?"}, len(headings)), 0) }, "cells-moved", "%s stood one cell too far to the right or to the left; read as if moved back", "row"},
			other,
			{func() int { return g.countedPlaces(lex, headings, 0) }, "places-read", counted, "cell"},
			{g.openGap, "cells-moved", "%s had no cell for the club, or the like, before the time; read with one", "row"},
		}
	}
	mends := []rowMend{
		divided,
		broken,
		tooMany,
		{func() int { return g.joinMarked(lex, headings, after) }, "times-joined", "a mark stands in a cell between minutes and seconds; in %s they were put into one", "row"},
		{func() int { return g.joinFractions(headings, after) }, "times-joined", "parts of a second stand in a column of their own; in %s they were put behind the seconds", "row"},
		{func() int { return g.joinDays(headings, after) }, "days-joined", "day, month and year stand in columns of their own; in %s they were put into one", "row"},
		{func() int { return g.moveBack(lex, headings, after) }, "cells-moved", "%s stood one cell too far to the right or to the left; read as if moved back", "row"},
		{func() int { return g.shiftBack(lex, headings, after) }, "cells-moved", "%s had a column too many or too few before the time, from some row on or alone; read as if under the heading", "row"},
		other,
		{func() int { return g.exchangeCells(lex, headings, after) }, "cells-moved", "in %s the name and the time stood in other columns; they were read as such", "row"},
		{func() int { return g.barePlaces(lex, headings, after) }, "places-read", "%s said the place in other words than its number, or with more; the number was taken, as the places around it show", "cell"},
		{func() int { return g.countedPlaces(lex, headings, after) }, "places-read", counted, "cell"},
		{func() int { return g.plainClocks(lex, headings, after) }, "times-plain", "%s wrote the time with other marks than figures and colons; it was read without them", "cell"},
		{func() int { return g.dropPaces(lex, headings, after) }, "paces-dropped", "%s held a pace behind the time; it was left out", "cell"},
		{func() int { return g.nameFromBeside(lex, headings, after) }, "names-joined", "two columns hold names, never both on one row; %s took the name from the second", "row"},
		{func() int { return g.factsBehindNames(lex, headings, after) }, "facts-moved", "%s had a sex, a class or a club behind the name and nothing in the column for it; it was read there", "row"},
		{func() int { return g.bracketClasses(lex, headings, after) }, "classes-bracketed", "%s had the class behind the name; it was read as the class", "cell"},
		{func() int { return g.timeFromBeside(lex, headings, after) }, "times-joined", "two columns hold times, never both on one row; %s took the time from the second", "row"},
	}
	if t.commas {
		return append([]rowMend{{func() int { return g.rejoin(lex, headings, after) }, "cells-joined", "in %s a comma without quotation marks cut a name, a club or a time in two; it was joined again", "row"}}, mends...)
	}
	return mends
}
