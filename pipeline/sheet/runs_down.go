package sheet

import "strconv"

// leastDown is how many runs, and how many places of each, a table with a run on each row has at
// least.
const (
	leastDown   = 2
	leastPlaces = 3
)

// runsDown turns a table with a run on each row and a place in each two columns, "Date | 1 | Time | 2 |
// Time" over "3 Jan | Jo Lee | 18:20 | Al Roe | 18:31", into one table for each place, so that
// the finishers of a run keep its row. nil where it is no such table: below the heading each
// row with times has a day of its own, the same columns hold names and times behind one
// another, and the times rise along the row.
func (t table) runsDown(lex *lexicon) (out []table) {
	const looks = 12
	first, day := -1, -1
	for i := 0; i < t.grid.len() && i < looks && first < 0; i++ {
		if _, cells := t.grid.at(i); len(cells) > 2*leastPlaces {
			if day = dayOfRow(cells); day >= 0 && timesBehindNames(cells, nil) >= leastPlaces {
				first = i
			}
		}
	}
	if first < 0 {
		return nil
	}
	of, rows, rising, days := map[int]bool{}, 0, 0, map[string]bool{} // of are the columns of times
	for i := first; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		if rowFilled(cells) == 0 {
			continue
		}
		at := dayOfRow(cells)
		n := timesBehindNames(cells, of)
		if at < 0 || at != day || n == 0 || n < rowClocks(cells) || days[trim(cells[at])] {
			return nil
		}
		days[trim(cells[at])] = true
		rows++
		if timesRise(cells) {
			rising++
		}
	}
	last, from := 0, 0
	for c := range of {
		last = max(last, c)
		if from == 0 || c < from {
			from = c
		}
	}
	for c := range of {
		if of[c-1] || (c-from)%2 != 0 {
			return nil
		}
	}
	if rows < leastDown || 5*rising < 4*rows || len(of) < leastPlaces {
		return nil
	}
	var heads []string // right above the first run
	if first > 0 {
		if _, heads = t.grid.at(first - 1); rowFilled(heads) < leastPlaces {
			heads = nil
		}
	}
	for c := range of { // "First man | Time | First lady | Time"
		if h := fold(cellAt(heads, c-1)); h != "" && (headsFirst(h) || isSection(h)) {
			return nil
		}
	}
	var kept []int // columns before the first name that say more of the run
	for c := 0; c < from-1; c++ {
		if g := lex.read(cellAt(heads, c)); g.known && (g.meaning == Course || g.meaning == Session || g.meaning == Distance) {
			kept = append(kept, c)
		}
	}
	width, place := 0, 0
	for i := range t.grid.len() {
		width = max(width, t.grid.width(i))
	}
	for c := from; c <= last; c += 2 {
		place++
		p := t
		p.grid = t.grid.fresh()
		for i := range t.grid.len() {
			row, cells := t.grid.at(i)
			head := i == first-1 && heads != nil
			if i < first && !head {
				p.grid.add(row, cells)
				continue
			}
			if !head && isBlank(cellAt(cells, c)) {
				continue
			}
			line := make([]string, width, width+1) // what it has stays in its column
			for _, k := range kept {
				line[k] = cellAt(cells, k)
			}
			if head {
				line[day], line[c-1], line[c] = "Date", "Name", "Time"
				p.grid.add(row, append(line, "Position"))
				continue
			}
			line[day], line[c-1], line[c] = cells[day], cellAt(cells, c-1), cells[c]
			p.grid.add(row, append(line, strconv.Itoa(place)))
		}
		p.src = p.grid
		out = append(out, p)
	}
	return out
}

// dayOfRow is the column of the day among the first three cells of a row, -1 where it is not one.
func dayOfRow(cells []string) int {
	at := -1
	for c := 0; c < 3 && c < len(cells); c++ {
		if kindOf(cells[c]) == kDate {
			if at >= 0 {
				return -1
			}
			at = c
		}
	}
	return at
}

// timesBehindNames counts the times of a row that have a text or nothing before them, and notes
// their columns.
func timesBehindNames(cells []string, of map[int]bool) (n int) {
	for c := 1; c < len(cells); c++ {
		if kindOf(cells[c]) != kClock {
			continue
		}
		if k := kindOf(cells[c-1]); k == kText || k == kBlank && n > 0 {
			n++
			if of != nil {
				of[c] = true
			}
		}
	}
	return n
}

// rowClocks counts the times of a row.
func rowClocks(cells []string) (n int) {
	for _, c := range cells {
		if kindOf(c) == kClock {
			n++
		}
	}
	return n
}

// timesRise says whether the times of a row don't fall from left to right.
func timesRise(cells []string) bool {
	before := 0.0
	for _, c := range cells {
		if kindOf(c) != kClock {
			continue
		}
		v := looseNumber(trim(c))
		if v < before {
			return false
		}
		before = v
	}
	return true
}
