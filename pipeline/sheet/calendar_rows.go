package sheet

import (
	"fmt"
	"slices"

	"lapwing/pipeline/place"
)

// A list of many runs may say of each line only the number of its run, of which another tab,
// the calendar, gives the day.

// joinCalendar gives lists of times without a date, one column of which has numbers of runs of
// the workbook's calendar and nothing else, their days, and their courses where the calendar has
// them.
func (s *Sheet) joinCalendar(lex *lexicon, o Options) {
	if len(s.calendar) < 2 {
		return
	}
	old := s.Parts
	s.Parts = nil
	for _, p := range old {
		g, whole := p.src.(*grid)
		column := -1
		if whole && p.HeadingRow > 0 && p.Index(Date) < 0 && p.Index(Time) >= 0 && p.named() {
			column = s.numbersRuns(p, g)
		}
		if column < 0 {
			s.Parts = append(s.Parts, p)
			continue
		}
		dated, tab := s.withDaysOfRows(p, g, column)
		s.addOne(table{tab: p.Tab, tabIndex: p.TabIndex, hidden: p.Hidden, date1904: p.rules.date1904, whole: true, src: dated, grid: dated}, lex, o)
		s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab, Row: p.HeadingRow, Column: letters(column)}, Severity: place.Note, Kind: "days-by-number",
			Read: p.headingAt(column), Expected: "the days of the runs", Do: fmt.Sprintf("The days were taken from tab %q, which gives them to these numbers.", tab)})
		s.Parts = slices.DeleteFunc(s.Parts, func(q *Part) bool { return q.Tab == tab && q.Index(Time) < 0 })
	}
}

// numbersRuns is the column of a part that says of each line the number of its run: every line has
// one that the calendar gives a day, two are different at least, and each stands on lines of its
// own, one below the other. -1 for none and for several.
func (s *Sheet) numbersRuns(p *Part, g *grid) (column int) {
	column = -1
	for _, c := range p.Columns {
		switch c.Meaning {
		case Other, Course, Session, Number, Notes:
		default:
			continue
		}
		if c.Index >= len(p.rules.headings) {
			continue
		}
		last, changes, of := 0, 0, map[int]bool{}
		ok := true
		p.Each(func(_ int, cells []string) error {
			n, numbered := onlyNumber(cellAt(cells, c.Index))
			if d, listed := s.calendar[n]; !numbered || !listed || d.day == 0 || d.tab == p.Tab {
				ok = false
				return errStop
			}
			if n != last {
				last = n
				changes++
			}
			of[n] = true
			return nil
		}) // errStop is taken by the grid
		switch {
		case !ok || len(of) < 2 || changes != len(of):
		case column >= 0:
			return -1
		default:
			column = c.Index
		}
	}
	return column
}

// withDaysOfRows is the grid of a part with the day of each line, and its course where the calendar
// has one, in columns of their own; tab is that of the calendar.
func (s *Sheet) withDaysOfRows(p *Part, g *grid, column int) (out *grid, tab string) {
	width, course := len(p.Columns), false
	for i := range g.len() {
		width = max(width, g.width(i))
	}
	for _, d := range s.calendar {
		course = course || d.course != ""
	}
	course = course && p.Index(Course) < 0
	out = g.fresh()
	for i := range g.len() {
		row, cells := g.at(i)
		n, ok := onlyNumber(cellAt(cells, column))
		d := s.calendar[n]
		if row != p.HeadingRow && (row < p.HeadingRow || !ok || d.day == 0) {
			out.add(row, cells)
			continue
		}
		wide := make([]string, width, width+2)
		copy(wide, cells)
		switch {
		case row == p.HeadingRow && course:
			wide = append(wide, "Date", "Course")
		case row == p.HeadingRow:
			wide = append(wide, "Date")
		case course:
			wide, tab = append(wide, d.day.String(), d.course), d.tab
		default:
			wide, tab = append(wide, d.day.String()), d.tab
		}
		out.add(row, wide)
	}
	return out, tab
}
