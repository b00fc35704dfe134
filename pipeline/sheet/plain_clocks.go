package sheet

import (
	"slices"

	"lapwing/pipeline/text"
)

// plainClocks writes the times of columns whose heading says times, where they stand with other
// marks, "[24:31]", "24·31", as others are written. It returns the number of cells.
func (g *grid) plainClocks(lex *lexicon, headings []string, after int) (mended int) {
	for column, h := range headings {
		guess := lex.read(h)
		if h == "" || !guess.known || guess.meaning != Time && guess.meaning != ChipTime && guess.meaning != GunTime || !g.oddClocks(column, after) {
			continue
		}
		mended += g.mend(func(_, row int, cells []string) ([]string, bool) {
			if row <= after || figuresOnly(cellAt(cells, column)) {
				return nil, false
			}
			plain, ok := plainClock(cells[column])
			if !ok {
				return nil, false
			}
			cells = slices.Clone(cells)
			cells[column] = plain
			return cells, true
		})
	}
	return mended
}

// oddClocks says whether a column has such a time.
func (g *grid) oddClocks(column, after int) bool {
	for i := range g.len() {
		row, cells := g.at(i)
		if row > after && !figuresOnly(cellAt(cells, column)) {
			if _, ok := plainClock(cells[column]); ok {
				return true
			}
		}
	}
	return false
}

// plainClock is such a time with the usual marks; false where the marks are read as they are.
func plainClock(cell string) (plain string, ok bool) {
	plain, ok = text.PlainClock(cell)
	return plain, ok && (kindOf(cell) != kClock || looseKey(trim(cell)) != looseKey(plain))
}

// figuresOnly is the cheap test for a time that needs no mending, or none at all.
func figuresOnly(s string) bool {
	figures, dot, odd := 0, false, false
	for i := range len(s) {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
			figures++
		case c == '.':
			dot = true
		case c != ':' || dot:
			odd = true
		}
	}
	return figures < 3 || !odd
}
