package sheet

import (
	"slices"
	"strings"
)

// across turns a table with a runner on each row and a run in each column into
// one table for each run: "Name | 3 Jan | 10 Jan", the times in the cells. Each
// keeps the columns that say who somebody is, and of the runs only its own,
// whose heading becomes a title of the table. nil where it is no such table.
func (t table) across(lex *lexicon) []table {
	if t.grid == nil {
		return nil
	}
	heading, runs := -1, []int(nil)
	looked := 0
	for i := 0; i < t.grid.len() && looked < headingLooks && heading < 0; i++ {
		_, cells := t.grid.at(i)
		if rowFilled(cells) == 0 {
			continue
		}
		looked++
		if cols := runsAcross(lex, cells); len(cols) >= 2 && t.timesBelow(i, cols) {
			heading, runs = i, cols
		}
	}
	if heading < 0 {
		return nil
	}
	isRun := map[int]bool{}
	for _, c := range runs {
		isRun[c] = true
	}
	var out []table
	_, names := t.grid.at(heading)
	for _, column := range runs {
		g := newGrid()
		filled := 0
		for i := 0; i < t.grid.len(); i++ {
			row, cells := t.grid.at(i)
			if i < heading {
				g.add(row, cells)
				continue
			}
			if i > heading && isBlank(cellAt(cells, column)) {
				continue // this runner was not there
			}
			w := append([]string(nil), cells...)
			for c := range w {
				if isRun[c] && (c != column || i == heading) {
					w[c] = ""
				}
			}
			if i == heading {
				w[column] = "Time"
			} else {
				filled++
			}
			g.add(row, w)
		}
		if filled == 0 {
			continue
		}
		p := t
		p.src, p.grid = g, g
		p.run, p.runFrom = strings.Join(strings.Fields(unmangle(names[column])), " "), "heading of column "+letters(column)
		out = append(out, p)
	}
	return out
}

// runsAcross gives the columns of a heading row whose headings are dates, where
// another heading says who and none says time.
func runsAcross(lex *lexicon, cells []string) (runs []int) {
	// Most rows are no headings: dates and times, which are quick to see, first, and
	// before them times with a colon, which most rows have.
	for _, c := range cells {
		if strings.IndexByte(c, ':') > 0 && kindOf(c) == kClock {
			return nil
		}
	}
	for i, c := range cells {
		if !strings.ContainsAny(c, "0123456789") {
			continue
		}
		switch {
		case kindOf(c) == kClock:
			return nil
		case len(scanDates(c, true)) > 0:
			runs = append(runs, i)
		}
	}
	if len(runs) < 2 {
		return nil
	}
	who := false
	isRun := map[int]bool{}
	for _, i := range runs {
		isRun[i] = true
	}
	for i, c := range cells {
		if isBlank(c) {
			continue
		}
		switch g := lex.read(c); {
		case g.known && (g.meaning == Time || g.meaning == GunTime || g.meaning == ChipTime):
			return nil
		case g.known && (g.meaning == Name || g.meaning == GivenName || g.meaning == FamilyName):
			who = true
			if isRun[i] {
				runs = slices.DeleteFunc(runs, func(r int) bool { return r == i })
			}
		}
	}
	if !who {
		return nil
	}
	return runs
}

// timesBelow says whether most cells below a heading, in some columns, are
// times or say why there is none.
func (t table) timesBelow(heading int, columns []int) bool {
	times, others := 0, 0
	for i := heading + 1; i < min(t.grid.len(), heading+400); i++ {
		_, cells := t.grid.at(i)
		for _, c := range columns {
			switch kindOf(cellAt(cells, c)) {
			case kClock, kDecimal:
				times++
			case kBlank, kStatus:
			default:
				others++
			}
		}
	}
	return times >= 2 && times >= 4*others
}
