package sheet

import (
	"fmt"
	"slices"

	"lapwing/pipeline/place"
)

// A workbook may keep the steps in which a result was put together beside it: the times as
// they were typed at the line on one tab, the numbers in order on another, and on a third
// the result, with formulas that look them up. The steps are no finishers of their own.

// leastWorking is how many lines such a tab has at least.
const leastWorking = 3

// leaveWorkings leaves out tabs of places with times or numbers, and no names, nine in ten of
// whose lines stand on one tab of named results.
func (s *Sheet) leaveWorkings() {
	var results []*Part
	halves := 0
	for _, p := range s.Parts {
		_, whole := p.src.(*grid)
		switch {
		case !whole || p.Kind == Volunteers || p.Tab == "":
		case p.Kind == "full" && p.named():
			results = append(results, p)
		case !p.named():
			halves++
		}
	}
	if len(results) == 0 || halves == 0 {
		return
	}
	type asked struct {
		of     *Part
		m      Meaning
		placed bool
	}
	known := map[asked]map[string]bool{}
	linesOf := func(p *Part, m Meaning, placed bool) map[string]bool {
		k := asked{p, m, placed}
		if known[k] == nil {
			known[k] = p.byPlace(m, placed)
		}
		return known[k]
	}
	kept := s.Parts[:0]
	for _, p := range s.Parts {
		step := Position // what its lines have beside the places
		switch _, whole := p.src.(*grid); {
		case !whole || p.Kind == Volunteers || p.Tab == "" || p.named() || p.Index(Date) >= 0 || p.Index(Course) >= 0:
			kept = append(kept, p)
			continue
		case p.Index(Time) >= 0:
			step = Time
		case p.Index(Number) >= 0:
			step = Number
		}
		from := ""
		for _, r := range results {
			m := step
			if m == Number && r.Index(Number) < 0 && len(results) == 1 {
				m = Position // the names were put in the place of the numbers
			}
			placed := p.Index(Position) >= 0
			lines, same := linesOf(p, m, placed), 0
			for l := range lines {
				if linesOf(r, m, placed)[l] {
					same++
				}
			}
			if r.Tab != p.Tab && len(lines) >= leastWorking && 10*same >= 9*len(lines) {
				from = r.Tab
				break
			}
		}
		if from == "" {
			kept = append(kept, p)
			continue
		}
		s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab}, Severity: place.Note, Kind: "tab-refused",
			Expected: fmt.Sprintf("its lines stand on tab %q too, with the names: it is one of the steps in which that was made", from)})
	}
	s.Parts = kept
}

// byPlace is what the lines of a part have in a column, each behind its place where placed.
func (p *Part) byPlace(m Meaning, placed bool) map[string]bool {
	at, column := p.Index(Position), p.Index(m)
	lines := map[string]bool{}
	p.Each(func(_ int, cells []string) error {
		v, line := trim(cellAt(cells, column)), ""
		if m == Time && kindOf(v) == kClock {
			v = looseKey(v)
		}
		if placed {
			line = trim(cellAt(cells, at)) + " "
		}
		if v != "" {
			lines[line+v] = true
		}
		return nil
	}) // a grid has no errors of its own
	return lines
}

// leaveLeftovers leaves out lists of names without times that have the very places of a list with
// times of another day: last week's tab was copied for the next, and only the times wiped.
func (rs *runSettler) leaveLeftovers(parts []*Part) []*Part {
	if len(parts) < 2 {
		return parts
	}
	lists := map[*Part]map[string]bool{}
	of := func(p *Part) map[string]bool {
		if lists[p] == nil {
			nameOf, at, lines := p.fullNames(), p.Index(Position), map[string]bool{}
			p.Each(func(_ int, cells []string) error {
				if name := anyOrder(nameOf(cells)); name != "" {
					lines[trim(cellAt(cells, at))+" "+name] = true
				}
				return nil
			}) // a grid has no errors of its own
			lists[p] = lines
		}
		return lists[p]
	}
	return slices.DeleteFunc(slices.Clone(parts), func(p *Part) bool {
		if p.Kind != "names" && (p.Kind != "full" || !p.blank(p.Index(Time))) || !p.Whole || p.Tab == "" || !p.named() || p.Index(Position) < 0 || p.Index(Date) >= 0 || !p.Date.Settled {
			return false
		}
		for _, q := range parts {
			if q == p || q.Kind != "full" || !q.Whole || q.Index(Position) < 0 || q.Index(Date) >= 0 || !q.Date.Settled || q.Date.Day >= p.Date.Day || q.Course.Value != p.Course.Value {
				continue
			}
			same := 0
			for line := range of(p) {
				if of(q)[line] {
					same++
				}
			}
			if n := len(of(p)); n >= leastOfList && 10*same >= 9*n {
				rs.sheet.Problems = append(rs.sheet.Problems, place.Problem{Place: place.Place{Sheet: rs.sheet.Name, Tab: p.Tab}, Severity: place.Look, Kind: "list-left-over", Read: fmt.Sprintf("%d of %d names", same, n),
					Expected: "who finished that day", Do: fmt.Sprintf("They stand at the places that they have on tab %q, and without times: that tab was copied, and is left out until it is filled in.", q.Tab)})
				return true
			}
		}
		return false
	})
}
