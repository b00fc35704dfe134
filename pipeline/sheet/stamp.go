package sheet

import (
	"math"
	"regexp"

	"lapwing/pipeline/unit"
)

// stampMark is a day and a time of day in one cell, as programs export them (ISO 8601-1:2019,
// 5.4.2; RFC 3339, 5.6): 2026-11-21T09:24:31Z, 21/11/2026 09:24:31.5, 2026-11-21 09:24:31+01:00.
var stampMark = regexp.MustCompile(`^(\d{4}-\d\d-\d\d|\d{1,2}[/.]\d{1,2}[/.]\d{4})[T ] ?(\d{1,2}:\d\d:\d\d(?:[.,]\d{1,9})?) ?(Z|UTC|[+-]\d\d:?(?:\d\d)?)?$`)

// stamp takes such a cell apart. The times of two can be compared where frame, their day
// and offset from UTC, is the same.
func stamp(cell string) (frame, clock string, ok bool) {
	if c := trim(cell); len(c) >= 17 && c[0] >= '0' && c[0] <= '9' {
		if m := stampMark.FindStringSubmatch(c); m != nil {
			return m[1] + " " + m[3], m[2], true
		}
	}
	return "", "", false
}

// stamps says whether a column holds such cells, of the day and not of the first hours, and
// little else: 2026-11-21 00:24:31 is a running time beside the day.
func (s *settler) stamps(i int) bool {
	filled, stamped := 0, 0
	for _, r := range s.rows {
		if c := cellAt(r.cells, i); !isBlank(c) {
			filled++
			if _, clock, ok := stamp(c); ok && looseNumber(clock) >= 5*3600 {
				stamped++
			}
		}
	}
	return stamped > 0 && stamped*10 >= filled*8
}

// stampedStartAndFinish finds two columns of moments of which the later is the finish: they
// lie as far apart as a start and a finish do, in nearly every row.
// One column of them is the day where no other has it.
func (s *settler) stampedStartAndFinish() {
	if i := s.find(Session); i >= 0 && s.find(Date) < 0 && s.stamps(i) {
		s.set(i, Date, "heading %q: the moment of the start", s.headings[i])
	}
	if i := s.find(Position); i >= 0 && s.find(Time) >= 0 && s.stamps(i) {
		s.set(i, Other, "heading %q: the moment of the finish", s.headings[i])
	}
	if len(s.clock) > 0 {
		return
	}
	var found []int
	for i, c := range s.columns {
		if c.Meaning.isTime() && s.profiles[i].filled > 0 && !s.stamps(i) {
			return
		}
		if s.stamps(i) {
			found = append(found, i)
		}
	}
	if len(found) != 2 {
		return
	}
	start, finish := found[0], found[1]
	rows, forth, back := 0, 0, 0
	for _, r := range s.rows {
		a, _, first := stamp(cellAt(r.cells, start))
		b, _, second := stamp(cellAt(r.cells, finish))
		if !first || !second {
			continue
		}
		rows++
		switch d := secondsOf(r.cells, finish) - secondsOf(r.cells, start); {
		case a != b || math.Abs(d) < shortestRun || math.Abs(d) > longestRun:
		case d > 0:
			forth++
		default:
			back++
		}
	}
	if back > forth {
		start, finish, forth = finish, start, back
	}
	if rows == 0 || forth*20 < rows*19 {
		return
	}
	s.set(finish, Other, "heading %q: the moment of the finish", s.headings[finish])
	if m := s.columns[start].Meaning; m != Date {
		s.set(start, Date, "heading %q: the moment of the start", s.headings[start])
	}
	s.clock, s.between = []int{start, finish}, true
}

// stampedDay is the one day of all moments in a column that is taken for nothing else, as a
// form keeps when each line was sent; false where there are several, or it can be read in two ways.
func (p *Part) stampedDay() (column int, day unit.Day, ok bool) {
	rows := p.sampled()
	for _, c := range p.Columns {
		if c.Meaning != Other {
			continue
		}
		n := 0
		days := map[unit.Day]bool{}
		for _, cells := range rows {
			text := trim(cellAt(cells, c.Index))
			if _, _, is := stamp(text); !is {
				continue
			}
			n++
			if dates := scanDates(text, false); len(dates) == 1 && len(dates[0].readings) == 1 && dates[0].readings[0].y > 0 {
				days[dates[0].readings[0].day()] = true
			} else {
				days[0] = true
			}
		}
		if n < 3 || n*10 < len(rows)*9 || len(days) != 1 || days[0] {
			continue
		}
		for day = range days {
			return c.Index, day, true
		}
	}
	return 0, 0, false
}
