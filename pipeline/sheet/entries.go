package sheet

import (
	"fmt"
	"slices"

	"lapwing/pipeline/place"
)

// entries is a tab that says who has which number: the list of those who signed up.
type entries struct {
	tab     string
	columns []Column
	src     source
	first   int // first row of data
	number  int // its column
}

// entered keeps a table of names and numbers that has no results of its own.
func (s *Sheet) entered(p *Part, t table, after int, lex *lexicon) {
	number := p.Index(Number)
	if number < 0 {
		number = p.numbersAsPlaces(lex)
	}
	if t.grid == nil || t.tab == "" || number < 0 || !p.named() || p.Index(Time) >= 0 {
		return
	}
	s.entries = append(s.entries, entries{tab: t.tab, columns: p.Columns, src: t.grid, first: after + 1, number: number})
}

// numbersAsPlaces is the column of numbers of a list of entries, "No." or "Bib", that was taken for places as they
// count 1, 2, 3; -1 for none.
func (p *Part) numbersAsPlaces(lex *lexicon) int {
	at := p.Index(Position)
	if at < 0 {
		return -1
	}
	if g := lex.read(p.Columns[at].Heading); !g.number && g.meaning != Number {
		return -1
	}
	return at
}

// enterable are the columns of a list of entries that say who somebody is.
var enterable = map[Meaning]bool{Name: true, GivenName: true, FamilyName: true, Sex: true, Age: true, BirthYear: true, BirthDate: true, AgeGroup: true, Club: true}

// joinEntries gives tabs with numbers, and with places or times or both, but no names, those that
// another tab gives for the numbers.
func (s *Sheet) joinEntries(lex *lexicon, o Options) {
	tabs := map[string]int{}
	for _, p := range s.Parts {
		tabs[p.Tab]++
	}
	listed := map[string]*Part{}
	for _, p := range s.Parts {
		at := p.numbersAsPlaces(lex)
		if g, whole := p.src.(*grid); whole && p.Kind == "names" && at >= 0 && tabs[p.Tab] == 1 {
			s.entries = append(s.entries, entries{tab: p.Tab, columns: p.Columns, src: g, first: p.rules.first, number: at})
			listed[p.Tab] = p
		}
	}
	if len(s.entries) == 0 {
		return
	}
	s.leaveRosters(listed)
	old := s.Parts
	s.Parts = nil
	for _, p := range old {
		g, whole := p.src.(*grid)
		if number := p.Index(Number); !whole || number < 0 || p.Index(Time) < 0 && p.Index(Position) < 0 || p.named() || tabs[p.Tab] != 1 || p.HeadingRow == 0 {
			s.Parts = append(s.Parts, p)
			continue
		}
		if joined := s.withEntries(p, g); joined != nil {
			s.addOne(table{tab: p.Tab, tabIndex: p.TabIndex, hidden: p.Hidden, date1904: p.rules.date1904, whole: true, src: joined, grid: joined}, lex, o)
			if n := len(s.Parts); n > 0 && len(s.Parts[n-1].Titles) == 0 {
				q := s.Parts[n-1]
				q.Titles = s.titlesOfEntries(lex)
				q.lent = len(q.Titles)
			}
			continue
		}
		s.Parts = append(s.Parts, p)
	}
	s.Parts = slices.DeleteFunc(s.Parts, func(p *Part) bool { return s.usedEntries[p.Tab] && listed[p.Tab] == p })
}

// titlesOfEntries are the lines above the list of entries that was used, which say of which
// run it is where the tab of times says nothing.
func (s *Sheet) titlesOfEntries(lex *lexicon) (titles []string) {
	for _, e := range s.entries {
		if !s.usedEntries[e.tab] {
			continue
		}
		e.src.each(func(row int, cells []string) error {
			if score, filled := headingScore(lex, cells); row >= e.first || score > 0 && filled > 1 {
				return errStop
			}
			titles = append(titles, titleTexts(lex, cells)...)
			return nil
		}) // errStop is taken by the grid
	}
	return titles
}

// leaveRosters leaves out tabs of numbers and names that say no day, where all results of
// the workbook name their finishers: their "No. 1, 2, 3" are people's numbers and no places.
func (s *Sheet) leaveRosters(listed map[string]*Part) {
	full := false
	for _, p := range s.Parts {
		switch {
		case p.Kind == Volunteers || listed[p.Tab] == p:
		case p.Kind != "full" || !p.named():
			return
		default:
			full = true
		}
	}
	if !full {
		return
	}
	s.Parts = slices.DeleteFunc(s.Parts, func(p *Part) bool {
		if listed[p.Tab] != p || slices.ContainsFunc(append(slices.Clone(p.Titles), p.Tab), func(t string) bool { return len(scanDates(t, false)) > 0 }) {
			return false
		}
		s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab}, Severity: place.Note, Kind: "tab-refused", Expected: "its numbers are people's own and no places: the results of this workbook name their finishers"})
		return true
	})
}

// withEntries is the table of a part with the columns of the list of entries that has
// nine of ten of its numbers, none twice; nil where there is none or several have.
func (s *Sheet) withEntries(p *Part, g *grid) *grid {
	number, width := p.Index(Number), 0
	for i := range g.len() {
		width = max(width, g.width(i))
	}
	var found *entries
	var cells map[string][]string
	for k := range s.entries {
		e := &s.entries[k]
		if e.tab == p.Tab {
			continue
		}
		of, twice := map[string][]string{}, false
		e.src.each(func(row int, cells []string) error {
			if n := trim(cellAt(cells, e.number)); row >= e.first && n != "" {
				twice = twice || of[n] != nil
				of[n] = cells
			}
			return nil
		}) // a grid has no errors of its own
		rows, hits := 0, 0
		p.Each(func(_ int, cells []string) error {
			if n := trim(cellAt(cells, number)); n != "" {
				rows++
				if of[n] != nil {
					hits++
				}
			}
			return nil
		})
		if twice || rows == 0 || 10*hits < 9*rows {
			continue
		}
		if found != nil {
			return nil
		}
		found, cells = e, of
	}
	if found == nil {
		return nil
	}
	if s.usedEntries == nil {
		s.usedEntries = map[string]bool{}
	}
	s.usedEntries[found.tab] = true
	out, joined := g.fresh(), 0
	for i := range g.len() {
		row, now := g.at(i)
		var from []string
		switch n := trim(cellAt(now, number)); {
		case row == p.HeadingRow:
		case n != "" && row > p.HeadingRow && cells[n] != nil:
			from = cells[n]
			joined++
		default:
			out.add(row, now)
			continue
		}
		wide := make([]string, width, width+len(found.columns))
		copy(wide, now)
		for _, c := range found.columns {
			switch {
			case !enterable[c.Meaning] || p.Index(c.Meaning) >= 0:
			case row == p.HeadingRow:
				wide = append(wide, c.Heading)
			default:
				wide = append(wide, cellAt(from, c.Index))
			}
		}
		out.add(row, wide)
	}
	s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab, Row: p.HeadingRow}, Severity: place.Note, Kind: "names-by-number",
		Read: fmt.Sprintf("%d lines", joined), Expected: "names beside the numbers", Do: fmt.Sprintf("The names were taken from tab %q, where the same numbers stand.", found.tab)})
	return out
}
