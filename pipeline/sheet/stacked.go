package sheet

import (
	"maps"
	"slices"
	"strconv"
	"strings"
)

// stackRows puts rows into one that go on in the cells below them: place and name, below the
// name the club, below that or beside it the time, as cards and printed pages have them. Each
// begins with a place, 1, 2, 3 …, under which the cells are blank; most go on in the row
// below, and no further than two rows. What stands below gets columns behind the others; the
// row stays where it begins. Names of several people, one below the other, stay rows of
// their own.
func (t table) stackRows(lex *lexicon) {
	if t.grid.len() > typedRows {
		return
	}
	var rows []gridRow
	for i := range t.grid.len() {
		if row, cells := t.grid.at(i); rowFilled(cells) > 0 {
			rows = append(rows, gridRow{row, cells})
		}
	}
	t.uncopyClubs(rows)
	changed := map[int][]string{} // by row; nil for one that went into another
	for i := 0; i < len(rows); i++ {
		if st := stackAt(rows, i); st != nil {
			st.join(rows, lex, changed)
			i = st.leads[len(st.leads)-1]
		}
	}
	if len(changed) > 0 {
		t.grid.mend(func(_, row int, _ []string) ([]string, bool) {
			cells, ok := changed[row]
			return cells, ok
		})
	}
}

// uncopyClubs blanks, in the lower of two rows, what is only copied from the upper one: place and
// time are cells over both rows, and name and club stand in one each. Nearly all rows below the heading are such
// pairs, four or more, and the lower texts are clubs by their words, or come again and again:
// names of a team's members do not.
func (t table) uncopyClubs(rows []gridRow) {
	column, pairs, rest := -1, 0, 0
	seen, club := map[string]bool{}, 0
	lower := map[int]int{} // row, and where it stands in rows
	for i := 0; i < len(rows); i++ {
		if rowFilled(rows[i].cells) < 3 {
			continue
		}
		differs := -1
		if i+1 < len(rows) && rows[i+1].row == rows[i].row+1 {
			differs = onlyDifference(rows[i].cells, rows[i+1].cells)
		}
		if differs < 0 || column >= 0 && differs != column {
			rest++
			continue
		}
		i++
		text := trim(rows[i].cells[differs])
		if kindOf(text) != kText || strings.ContainsAny(text, "0123456789") {
			return
		}
		column = differs
		pairs++
		lower[rows[i].row] = i
		seen[fold(text)] = true
		if anyWord(text, clubWords) {
			club++
		}
	}
	if pairs < 4 || 5*(rest-1) > pairs || 2*len(seen) > pairs && 2*club < pairs {
		return
	}
	t.grid.mend(func(_, row int, cells []string) ([]string, bool) {
		i, ok := lower[row]
		if !ok {
			return nil, false
		}
		only := make([]string, len(cells))
		only[column] = cells[column]
		rows[i].cells = only
		return only, true
	})
}

// onlyDifference is the one column in which two rows differ, filled in both; -1 for none or
// several, and where fewer than two others are filled.
func onlyDifference(a, b []string) int {
	at, same := -1, 0
	for c := range max(len(a), len(b)) {
		x, y := trim(cellAt(a, c)), trim(cellAt(b, c))
		switch {
		case x == "" && y == "":
		case x == y:
			same++
		case x == "" || y == "" || at >= 0:
			return -1
		default:
			at = c
		}
	}
	if same < 2 {
		return -1
	}
	return at
}

type gridRow struct {
	row   int
	cells []string
}

// stack is a run of rows that go on below.
type stack struct {
	leads []int // the rows with places
	place int   // column of the places
	end   int   // the row behind the last
	width int   // columns of the rows with places
}

// stackAt finds such rows that begin at a row with the place 1; nil where there are none.
func stackAt(rows []gridRow, from int) *stack {
	p := 0
	for p < len(rows[from].cells) && isBlank(rows[from].cells[p]) {
		p++
	}
	if stackedPlace(rows[from].cells, p) != 1 {
		return nil
	}
	st := &stack{place: p}
	for i := from; i < len(rows); i++ {
		switch n := stackedPlace(rows[i].cells, p); {
		case n == len(st.leads)+1:
			st.leads = append(st.leads, i)
			st.width = max(st.width, len(rows[i].cells))
		case rowFilled(rows[i].cells[:min(p+1, len(rows[i].cells))]) > 0,
			rows[i].row-rows[st.leads[len(st.leads)-1]].row > 2:
			st.end = i
		}
		if st.end > 0 {
			break
		}
	}
	if st.end == 0 {
		st.end = len(rows)
	}
	if len(st.leads) < 4 || !st.goesOn(rows) {
		return nil
	}
	return st
}

// stackedPlace is the place in a cell, 0 for none.
func stackedPlace(cells []string, column int) int {
	n, err := strconv.Atoi(strings.TrimRight(cellAt(cells, column), ".)"))
	if err != nil {
		return 0
	}
	return n
}

// group are the rows of one place.
func (st *stack) group(k int) (from, to int) {
	if k+1 < len(st.leads) {
		return st.leads[k], st.leads[k+1]
	}
	return st.leads[k], st.end
}

// goesOn says whether the rows are one result each: one time among them, at one place, a name
// in the first of them, and nobody else's name below it.
func (st *stack) goesOn(rows []gridRow) bool {
	n, more := len(st.leads), 0
	for k := range st.leads {
		if from, to := st.group(k); to-from > 1 {
			more++
		}
	}
	if 10*more < 6*n {
		return false // a list of one row each, as nearly all are
	}
	times, names := map[[2]int]int{}, 0
	below := map[[2]int]map[string]bool{}
	texts := map[[2]int]int{}
	for k := range st.leads {
		from, to := st.group(k)
		clocks, named := 0, false
		for i := from; i < to; i++ {
			for c, s := range rows[i].cells {
				at := [2]int{rows[i].row - rows[from].row, c}
				switch {
				case isBlank(s):
				case kindOf(s) == kClock:
					clocks++
					times[at]++
				case kindOf(s) == kText && strings.Contains(trim(s), " "):
					named = named || i == from
					if texts[at]++; below[at] == nil {
						below[at] = map[string]bool{}
					}
					below[at][s] = true
				}
			}
		}
		if clocks > 1 {
			return false
		}
		if named {
			names++
		}
	}
	if 10*names < 6*n { // somebody erased has no name of two words
		return false
	}
	most, timeBelow := 0, false
	for at, k := range times {
		if k > most {
			most, timeBelow = k, at[0] > 0
		}
	}
	if 10*most < 9*n {
		return false
	}
	for at, k := range texts {
		if at[0] > 0 && !timeBelow && 10*k >= 9*n && 10*len(below[at]) >= 9*k {
			return false
		}
	}
	return true
}

// join puts the rows of each place into its first, and a heading's second row into its
// first. What stands below hardly any of the places, such as a footer, is left where it is.
func (st *stack) join(rows []gridRow, lex *lexicon, changed map[int][]string) {
	filled := map[[2]int]int{}
	for k := range st.leads {
		from, to := st.group(k)
		for i := from + 1; i < to; i++ {
			for c, s := range rows[i].cells {
				if !isBlank(s) {
					filled[[2]int{rows[i].row - rows[from].row, c}]++
				}
			}
		}
	}
	extra, width := map[[2]int]int{}, st.width
	for _, at := range slices.SortedFunc(maps.Keys(filled), func(a, b [2]int) int { return slices.Compare(a[:], b[:]) }) {
		if filled[at] > 1 && 5*filled[at] >= len(st.leads) {
			extra[at] = width
			width++
		}
	}
	put := func(from, to int) {
		cells := make([]string, width)
		copy(cells, rows[from].cells)
		for i := from + 1; i < to; i++ {
			at := func(c int) [2]int { return [2]int{rows[i].row - rows[from].row, c} }
			known := func(c int) bool { _, ok := extra[at(c)]; return ok || isBlank(rows[i].cells[c]) }
			if !allColumns(len(rows[i].cells), known) {
				continue
			}
			for c, s := range rows[i].cells {
				if to, ok := extra[at(c)]; ok {
					cells[to] = s
				}
			}
			changed[rows[i].row] = nil
		}
		changed[rows[from].row] = cells
	}
	for k := range st.leads {
		put(st.group(k))
	}
	if h := st.leads[0] - 2; h >= 0 && isBlank(cellAt(rows[h+1].cells, st.place)) {
		upper, _ := headingScore(lex, rows[h].cells)
		known := 0
		for _, s := range rows[h+1].cells {
			if !isBlank(s) && lex.read(s).known {
				known++
			}
		}
		if upper > 0 && known > 0 && known == rowFilled(rows[h+1].cells) {
			put(h, h+2)
		}
	}
}

func allColumns(n int, ok func(c int) bool) bool {
	for c := range n {
		if !ok(c) {
			return false
		}
	}
	return true
}
