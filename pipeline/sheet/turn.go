package sheet

import (
	"fmt"
	"slices"
)

// leastTurned is how many runners a table that lies on its side must have.
const leastTurned = 3

// onSide says where the cells of a table stand that lies on its side: first is the row that its
// headings are counted as, columns are the columns of the rows from there on, and rows the
// rows of their cells. It is nil for a table that stands.
type onSide struct {
	first   int
	columns []int
	rows    [][]int
}

// cell is where the cell of a row and column stands on the sheet.
func (o *onSide) cell(row, column int) (int, int) {
	if o == nil {
		return row, column
	}
	if k := row - o.first; k >= 0 && k < len(o.columns) && column < len(o.rows[k]) {
		return o.rows[k][column], o.columns[k]
	}
	return row, column
}

// turn stands a table up that lies on its side: its headings are one below the other in its
// first column, "Name", "Time", and each of the other columns is a runner. Rows are counted
// so, from the row of its first heading. It returns where its cells stand, nil where it is no such table.
func (t *table) turn(lex *lexicon) *onSide {
	first, last, width := t.turnedRows(lex)
	head := ""
	if first < 0 {
		if first, last, width = t.turnedSeason(lex); first < 0 {
			return nil
		}
		head = "Name" // in the corner, between the days down and the names across
	}
	side := &onSide{}
	g := t.grid.fresh()
	row := 0
	add := func(at int, cells []string) {
		row = max(row+1, at)
		g.add(row, cells)
	}
	for i := range first {
		at, cells := t.grid.at(i)
		add(at, cells)
	}
	block := func(first, last, from, width int) {
		var rows []int
		for i := first; i <= last; i++ {
			rows = append(rows, t.grid.row(i))
		}
		for c := from; c < width; c++ {
			var cells []string
			filled := false
			for i := first; i <= last; i++ {
				_, from := t.grid.at(i)
				cell := cellAt(from, c)
				if c == 0 && i == first && head != "" {
					cell = head
				}
				cells = append(cells, cell)
				filled = filled || !isBlank(cell)
			}
			if !filled {
				continue
			}
			add(t.grid.row(first), cells)
			if len(side.columns) == 0 {
				side.first = row
			}
			side.columns, side.rows = append(side.columns, c), append(side.rows, rows)
		}
	}
	block(first, last, 0, width)
	for n := last - first + 1; ; last += n { // those who stand under the same headings further down
		next := last + 1
		for next < t.grid.len() && t.blankRow(next) {
			next++
		}
		width := t.sameSide(first, next, n)
		if width == 0 {
			break
		}
		block(next, next+n-1, 1, width)
		last = next - 1
	}
	for i := last + 1; i < t.grid.len(); i++ {
		at, cells := t.grid.at(i)
		add(at, cells)
	}
	t.src, t.grid = g, g
	return side
}

// turnedSeason are the rows and columns of a season of which each row is a day and each column a runner: names
// beside nothing, or a word for date, then days with times and nothing else, and before or behind them perhaps
// sexes, bests or the like; first is -1 for none.
func (t *table) turnedSeason(lex *lexicon) (first, last, width int) {
	const looks = 12
	for i := 0; i < min(t.grid.len(), looks); i++ {
		_, cells := t.grid.at(i)
		if corner := lex.read(cellAt(cells, 0)); len(cells) <= leastTurned || corner.known && corner.meaning != Date && corner.meaning != Name || len(cellAt(cells, 0)) > 12 {
			continue
		}
		land := 0 // or they are courses
		others := slices.ContainsFunc(cells[1:], func(c string) bool {
			if landWords[finalWord(c)] {
				land++
			}
			return !isBlank(c) && (!looksNamed(c) || lex.read(c).known || headsFirst(c) || len(findDates(c)) > 0)
		})
		if n := rowFilled(cells[1:]); others || n < leastTurned || 2*land >= n {
			continue
		}
		days, clocks, last := 0, 0, i
		for k := i + 1; k < t.grid.len(); k++ {
			_, row := t.grid.at(k)
			if rowFilled(row) == 0 || len(row) > len(cells) {
				break
			}
			said := cellAt(row, 0)
			if dated := len(findDates(said)) == 1; !dated && !lex.read(said).known {
				return -1, 0, 0
			} else if dated {
				days++
				for _, cell := range row[1:] {
					switch kindOf(trim(cell)) {
					case kBlank, kStatus:
					case kClock:
						clocks++
					default:
						if !isAway(cell) {
							return -1, 0, 0
						}
					}
				}
			}
			last = k
		}
		if days >= 2 && clocks > leastTurned {
			return i, last, len(cells)
		}
	}
	return -1, 0, 0
}

// turnedRows are the rows, first and last by their index, of a table that lies on its side,
// and the number of its columns; first is -1 for none. One of the rows is of times, one of names, and each begins
// with the word for what it is.
func (t *table) turnedRows(lex *lexicon) (first, last, width int) {
	first = -1
	named, timed := false, false
	for i := 0; i < min(t.grid.len(), 60); i++ {
		_, cells := t.grid.at(i)
		g := lex.read(cellAt(cells, 0))
		if len(cells) <= leastTurned || !g.known || isBlank(cellAt(cells, 0)) {
			if named && timed {
				break
			}
			first, named, timed, width = -1, false, false, 0
			continue
		}
		filled, clocks, texts := 0, 0, 0
		for _, c := range cells[1:] {
			switch kindOf(c) {
			case kBlank:
				continue
			case kClock:
				clocks++
			case kText:
				if !lex.read(c).known {
					texts++
				}
			}
			filled++
		}
		if first < 0 && filled == 0 {
			continue // a title
		}
		if first < 0 {
			first = i
		}
		last, width = i, max(width, len(cells))
		named = named || (g.meaning == Name || g.meaning == FamilyName) && texts >= leastTurned && texts*10 >= filled*8
		timed = timed || g.meaning.isTime() && clocks >= leastTurned && clocks*10 >= filled*8
	}
	if !named || !timed {
		return -1, 0, 0
	}
	return first, last, width
}

// blankRow says whether a row of the table has nothing in it.
func (t *table) blankRow(i int) bool {
	_, cells := t.grid.at(i)
	return rowFilled(cells) == 0
}

// sameSide is the number of columns of n rows from one on that begin with the same words as those
// of the block before, 0 where they are not such rows.
func (t *table) sameSide(first, next, n int) (width int) {
	if next+n > t.grid.len() {
		return 0
	}
	for k := range n {
		_, above := t.grid.at(first + k)
		heading := cellAt(above, 0)
		_, cells := t.grid.at(next + k)
		if fold(heading) != fold(cellAt(cells, 0)) {
			return 0
		}
		width = max(width, len(cells))
	}
	return width
}

// turnedNote says what was done to such a table.
func turnedNote(runners int) string {
	return fmt.Sprintf("the table lies on its side: its headings stand below one another, and its %d columns are read as rows, and counted so", runners)
}

// liftHeading puts a heading that stands below its table above it: a row of words for names and
// times or places and nothing else, under three rows with times and more, and no time below it.
func (t *table) liftHeading(lex *lexicon) bool {
	lowest := false // the cheap test that nearly all tables fail
	for i := max(0, t.grid.len()-8); i < t.grid.len() && !lowest; i++ {
		_, cells := t.grid.at(i)
		score, filled := headingScore(lex, cells)
		lowest = score > 1 && filled > 1
	}
	if !lowest {
		return false
	}
	heading, first, clocks := -1, -1, 0
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		if slices.ContainsFunc(cells, func(c string) bool { return kindOf(c) == kClock }) {
			if heading >= 0 {
				return false
			}
			if first < 0 {
				first = i
			}
			clocks++
			continue
		}
		if heading >= 0 && rowFilled(cells) > 1 {
			return false // the heading of what stands below it
		}
		if score, filled := headingScore(lex, cells); score > 1 && filled > 1 {
			if first < 0 || heading >= 0 {
				return false
			}
			heading = i
		}
	}
	if heading < 0 || clocks < 3 {
		return false
	}
	g := t.grid.fresh()
	for i := range t.grid.len() {
		row, cells := t.grid.at(i)
		if i == first {
			_, words := t.grid.at(heading)
			g.add(row-1, slices.Clone(words))
		}
		if i != heading && !(i == first-1 && row == t.grid.row(first)-1 && rowFilled(cells) == 0) {
			g.add(row, cells)
		}
	}
	t.src, t.grid = g, g
	return true
}
