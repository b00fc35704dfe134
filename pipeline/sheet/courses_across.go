package sheet

import (
	"slices"
	"strings"
)

// coursesAcross finds columns of times headed by the names of places, each row with a time in
// one of them: members of a club at several runs of one day, "Name | Alder Bank | Mill
// Lane". Rows with several times are bests, or a season; a place has two words or more, of
// which the last is a feature of the land in half of them. nil where it is no such table, or
// the lines above it say no day.
func (t table) coursesAcross(lex *lexicon, heading int) (runs []acrossRun) {
	_, cells := t.grid.at(heading)
	if !slices.ContainsFunc(cells, func(c string) bool { g := lex.read(c); return g.known && g.meaning.isName() }) {
		return nil // as most rows, which are no headings
	}
	land := 0
	for i, c := range cells {
		g := lex.read(c)
		switch words := strings.Fields(fold(c)); {
		case isBlank(c):
		case g.known && g.meaning.isTime():
			return nil
		case g.known && g.meaning != Other:
		case len(words) > 1 && !strings.ContainsAny(c, "0123456789:") && t.hasClocks(heading, i):
			if landWords[words[len(words)-1]] {
				land++
			}
			runs = append(runs, acrossRun{from: i, to: i + 1, time: i, course: "Course: " + strings.Join(strings.Fields(unmangle(c)), " ")})
		case t.hasClocks(heading, i):
			return nil // times under a heading that says nothing
		}
	}
	if len(runs) < 2 || 2*land < len(runs) {
		return nil
	}
	day := len(scanDates(t.tab, false)) > 0
	for i := 0; i < heading && !day; i++ {
		_, above := t.grid.at(i)
		day = len(findDates(titleText(above))) > 0
	}
	rows, one := 0, 0
	for i := heading + 1; i < min(t.grid.len(), heading+400); i++ {
		_, cells := t.grid.at(i)
		n := 0
		for _, r := range runs {
			if kindOf(cellAt(cells, r.time)) == kClock {
				n++
			}
		}
		if n > 0 {
			rows++
		}
		if n == 1 {
			one++
		}
	}
	if !day || rows < 4 || one*20 < rows*19 {
		return nil
	}
	return runs
}

// hasClocks says whether a column has a time below a row.
func (t table) hasClocks(heading, column int) bool {
	for i := heading + 1; i < min(t.grid.len(), heading+40); i++ {
		if _, cells := t.grid.at(i); kindOf(cellAt(cells, column)) == kClock {
			return true
		}
	}
	return false
}
