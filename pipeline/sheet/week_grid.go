package sheet

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

// A table of runners by weeks may head its columns with the numbers of the weeks, "Wk 1 | Wk 2",
// and another tab of the workbook says of which days these are.

// leastWeeks is how many columns such a table has at least; weekHeadRows are the first rows,
// among which their headings are.
const (
	leastWeeks   = 3
	weekHeadRows = 12
)

// weekGrid is such a table, with the row of its headings.
type weekGrid struct {
	table
	head int // index of the row
}

// keepWeekGrid puts a table of weeks by number aside until all tabs are read; false where it
// is none.
func (s *Sheet) keepWeekGrid(t table) bool {
	for i := 0; i < t.grid.len() && i < weekHeadRows; i++ {
		_, cells := t.grid.at(i)
		weeks := 0
		for _, c := range cells {
			if _, ok := weekHead(c); ok {
				weeks++
			}
		}
		if weeks >= leastWeeks {
			s.weekGrids = append(s.weekGrids, weekGrid{t, i})
			return true
		}
	}
	return false
}

// addWeekGrids reads the tables that were put aside, with the day of each week in place of its
// number where the calendar of the workbook has them all.
func (s *Sheet) addWeekGrids(lex *lexicon, o Options) {
	for _, w := range s.weekGrids {
		if g := s.withDaysOfWeeks(w); g != nil {
			w.src, w.grid = g, g
		}
		s.addTable(w.table, lex, o)
	}
	if len(s.weekGrids) > 0 {
		slices.SortStableFunc(s.Parts, func(a, b *Part) int { return a.TabIndex - b.TabIndex })
	}
	s.weekGrids = nil
}

// withDaysOfWeeks is the grid of a table with the days of its weeks as headings, nil where the
// calendar lacks one or gives it two days.
func (s *Sheet) withDaysOfWeeks(w weekGrid) *grid {
	_, cells := w.grid.at(w.head)
	heads, from := slices.Clone(cells), ""
	for i, c := range heads {
		if n, ok := weekHead(c); ok {
			d, listed := s.calendar[n]
			if !listed || d.day == 0 || d.tab == w.tab {
				return nil
			}
			heads[i], from = strings.TrimSpace(d.course+" "+d.day.String()), d.tab
		}
	}
	g := w.grid.fresh()
	for i := range w.grid.len() {
		row, cells := w.grid.at(i)
		if i == w.head {
			cells = heads
		}
		g.add(row, cells)
	}
	s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: w.tab, Row: w.grid.row(w.head)}, Severity: place.Note, Kind: "days-by-number",
		Read: rowText(cells), Expected: "the days of the runs", Do: fmt.Sprintf("The days were taken from tab %q, which gives them to these numbers.", from)})
	return g
}

// weekHead is the number of a week or run that a heading is called after: "Wk 1", "Week 12",
// "Race #3", "W4".
func weekHead(cell string) (n int, ok bool) {
	if len(cell) > 20 || len(cell) < 2 {
		return 0, false
	}
	word := ""
	for _, t := range tokenize(trim(cell)) {
		switch {
		case t.kind == 'l' && word == "" && !ok:
			word = t.word
		case t.kind == 'd' && !ok && word != "" && t.digits() <= 3:
			n, ok = t.n, true
		case t.kind == 's' || t.kind == '#' || t.kind == '.':
		default:
			return 0, false
		}
	}
	return n, ok && (weekHeads[word] || headingWords[word]&cRun != 0)
}

// weekHeads are the words before such a number. Common practice, no source.
var weekHeads = set("w wk week weeks r run race round event match meeting woche lauf semaine sem course semana carrera settimana gara loop vecka lopp uge lob uke lop tydzien bieg zavod zawody kilpailu osakilpailu etapa manche epreuve tavling deltavling tappa wertungslauf jornada journee stage")
