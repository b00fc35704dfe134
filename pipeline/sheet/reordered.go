package sheet

import (
	"math"
	"slices"
)

// reorder puts the cells of rows into their columns where somebody has typed or pasted some with their
// columns in another order: they do not fit as they stand. Three rows or more on end are looked at
// together, in any one order; fewer, or those that fit none, with two cells exchanged. The order is taken
// that alone fits, or of which the texts stand in their columns elsewhere and the places go on.
// Only tables of a length that people type are looked at. It returns the number of rows.
func (g *grid) reorder(lex *lexicon, headings []string, after int) int {
	if n := len(headings); n < 3 || n > 12 || g.len() > typedRows {
		return 0
	}
	n := len(headings)
	column := func(m Meaning) int {
		return slices.IndexFunc(headings, func(h string) bool { g := lex.read(h); return g.known && g.meaning == m })
	}
	o := reordering{times: timedColumns(lex, headings), place: column(Position), name: column(Name), club: column(Club), values: make([]map[string]int, n), least: make([]int64, n), most: make([]int64, n)}
	var rows, run []int // of the table, and of it those on end that do not fit
	for i := range g.len() {
		if row, cells := g.at(i); row > after && rowFilled(cells) >= 3 {
			rows = append(rows, i)
		}
	}
	o.usual = g.usualKinds(headings, after, 3, min(len(rows)/3, profileRows))
	if !slices.Contains(o.times, true) && !slices.Contains(o.usual, kClock) {
		return 0
	}
	if o.place < 0 && after == 0 && o.usual[0] == kInt {
		o.place = 0 // no heading says so
	}
	if o.noneOdd(g, rows) { // nearly all tables
		return 0
	}
	for i := range o.values {
		o.values[i] = map[string]int{}
		o.least[i] = math.MaxInt64
	}
	for _, i := range rows {
		if _, cells := g.at(i); len(cells) <= len(headings) && o.fits(cells) {
			for j, c := range cells {
				if o.values[j][trim(c)]++; o.usual[j] == kInt && !isBlank(c) {
					v := int64(looseNumber(c))
					o.least[j], o.most[j] = min(o.least[j], v), max(o.most[j], v)
				}
			}
		}
	}
	edits := map[int][]string{}
	end := func() {
		if len(run) >= 3 && o.permute(g, run, edits) {
			run = nil
		}
		for _, i := range run {
			if _, cells := g.at(i); len(cells) <= len(headings) {
				if try := o.exchange(withCells(cells, len(headings)-1)); try != nil {
					edits[i] = try
				}
			}
		}
		run = nil
	}
	for _, i := range rows {
		if _, cells := g.at(i); o.clubForName(cells) {
			edits[i] = slices.Clone(cells)
			edits[i][o.name], edits[i][o.club] = cells[o.club], cells[o.name]
			end()
			continue
		}
		if _, cells := g.at(i); len(cells) > len(headings) || o.fits(cells) || !slices.ContainsFunc(cells, func(c string) bool { return kindOf(c) == kClock }) {
			end()
			continue
		}
		run = append(run, i)
	}
	end()
	if len(edits)*2 > len(rows) {
		return 0
	}
	return g.mendRows(edits)
}

// reordering is what is known of the columns of a table.
type reordering struct {
	usual  []kind
	times  []bool
	place  int // the column of places, -1 for none
	name   int
	club   int
	least  []int64 // of the whole numbers in a column
	most   []int64
	values []map[string]int // of the rows that fit, how often each stands in a column
}

// fits says whether a row fits the columns, three cells or more with what is usual there, a time among them.
func (o *reordering) fits(cells []string) bool { return fitsMoved(cells, o.usual, o.times, 3) }

// noneOdd says whether all rows fit, and none has under the names what stands under the clubs.
func (o *reordering) noneOdd(g *grid, rows []int) bool {
	fitting := map[uint64]bool{} // looks of rows that fit
	clubs := map[string]bool{}
	for _, i := range rows {
		_, cells := g.at(i)
		if o.club >= 0 && o.club < len(cells) {
			clubs[trim(cells[o.club])] = true
		}
		look := looks(cells)
		if len(cells) > len(o.usual) || fitting[look] {
			continue
		}
		if !o.fits(cells) {
			return false
		}
		fitting[look] = true
	}
	if o.name < 0 || len(clubs) == 0 {
		return true
	}
	return !slices.ContainsFunc(rows, func(i int) bool {
		_, cells := g.at(i)
		name := trim(cellAt(cells, o.name))
		return name != "" && clubs[name]
	})
}

// looks tells rows apart, cheaply, by what their first cells are made of.
func looks(cells []string) (look uint64) {
	for j, c := range cells[:min(len(cells), 12)] {
		digits, colons, marks, letters := 0, 0, 0, 0
		for i := range len(c) {
			switch b := c[i]; {
			case b >= '0' && b <= '9':
				digits++
			case b == ':':
				colons++
			case b == '.' || b == '/' || b == '-':
				marks++
			case b != ' ':
				letters++
			}
		}
		look |= uint64(min(digits, 1)|min(colons, 1)<<1|min(marks, 1)<<2|min(letters, 2)<<3) << (5 * j)
	}
	return look
}

// exchange is a row with the two cells exchanged without which it does not fit; nil where these may be
// several.
func (o *reordering) exchange(cells []string) (found []string) {
	best := 0
	for a := range cells {
		for b := a + 1; b < len(cells); b++ {
			if isBlank(cells[a]) || isBlank(cells[b]) || cells[a] == cells[b] {
				continue
			}
			try := slices.Clone(cells)
			try[a], try[b] = try[b], try[a]
			if !o.athome(try, a) || !o.athome(try, b) || !o.fits(try) {
				continue
			}
			switch n := 1 + o.known(try); {
			case n > best:
				best, found = n, try
			case n == best:
				found = nil
			}
		}
	}
	return found
}

// athome says whether a cell is of the kind of its column.
func (o *reordering) athome(cells []string, column int) bool {
	k := kindOf(cells[column])
	return o.usual[column] != kBlank && sameKind(k, o.usual[column])
}

// clubForName says whether a row has the club of others in the column of names, and somebody's name in that of clubs.
func (o *reordering) clubForName(cells []string) bool {
	if o.name < 0 || o.club < 0 || max(o.name, o.club) >= len(cells) {
		return false
	}
	if o.place >= 0 && o.values[o.place][trim(cellAt(cells, o.place))] != 1 {
		return false // a team's line below
	}
	name, club := trim(cells[o.name]), trim(cells[o.club])
	return name != "" && club != "" && o.values[o.club][name] > 1 && o.values[o.name][name] == 1 && o.values[o.club][club] == 1 && looksNamed(club) && !anyWord(club, clubWords)
}

// known counts the texts of a row that stand in their columns on other rows.
func (o *reordering) known(cells []string) (n int) {
	for j, c := range cells {
		if !isBlank(c) && o.usual[j] != kInt && o.usual[j] != kClock && o.values[j][trim(c)] > 0 {
			n++
		}
	}
	return n
}

// permute finds the one order of columns in which all rows of a run fit, and puts the rows so ordered
// into edits. Of several that is taken of which most cells are such as stand in their columns elsewhere.
func (o *reordering) permute(g *grid, run []int, edits map[int][]string) bool {
	width := len(o.usual)
	var rows [][]string
	for _, i := range run {
		_, cells := g.at(i)
		rows = append(rows, withCells(cells, width-1))
	}
	blank := make([]bool, width)
	may := make([][]bool, width) // may[k][j]: what stands in column k of the run may stand in column j
	for k := range width {
		may[k], blank[k] = make([]bool, width), true
		for j := range width {
			filled, home := 0, 0
			for _, cells := range rows {
				if isBlank(cells[k]) {
					continue
				}
				blank[k] = false
				if filled++; o.usual[j] != kBlank && sameKind(kindOf(cells[k]), o.usual[j]) || o.values[j][trim(cells[k])] > 0 {
					home++
				}
			}
			may[k][j] = home*5 >= filled*4
		}
	}
	from := make([]int, width) // from[j] is the column of the run that stands in column j
	used := make([]bool, width)
	var found []int
	best, tries := -1, 0
	var next func(j int)
	next = func(j int) {
		if tries++; tries > 5000 {
			return
		}
		if j == width {
			score := o.score(rows, from)
			switch {
			case score > best:
				best, found = score, slices.Clone(from)
			case score == best:
				found = nil
			}
			return
		}
		blanks := false // one blank column is as good as another
		for k := range width {
			if used[k] || !may[k][j] || blank[k] && blanks {
				continue
			}
			blanks = blanks || blank[k]
			used[k], from[j] = true, k
			next(j + 1)
			used[k] = false
		}
	}
	next(0)
	if found == nil || best < 0 || tries > 5000 {
		return false
	}
	for n, i := range run {
		edits[i] = ordered(rows[n], found)
		if !o.fits(edits[i]) {
			for _, i := range run[:n+1] {
				delete(edits, i)
			}
			return false
		}
	}
	return true
}

// score says how well rows stand in an order: by cells that are known in their columns, or whole numbers of the
// size of those there; -1 where they have no places that rise.
func (o *reordering) score(rows [][]string, from []int) (n int) {
	last := int64(-1)
	for _, cells := range rows {
		cells = ordered(cells, from)
		n += o.known(cells)
		for j, c := range cells {
			if o.usual[j] == kInt && j != o.place && !isBlank(c) {
				if v := int64(looseNumber(c)); v >= o.least[j] && v <= o.most[j] {
					n++
				}
			}
		}
		if o.place < 0 {
			continue
		}
		c := trim(cells[o.place])
		if c == "" {
			return -1
		}
		v := int64(looseNumber(c))
		if v < last {
			return -1
		}
		last = v
	}
	return n
}

// ordered is a row with its columns in an order.
func ordered(cells []string, from []int) []string {
	out := make([]string, len(from))
	for j, k := range from {
		out[j] = cells[k]
	}
	return out
}
