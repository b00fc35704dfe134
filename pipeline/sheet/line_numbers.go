package sheet

import "strings"

// lineNumbers takes a column for what numbers the lines of a list, and not for places, where its
// heading says no place ("#", "No", "lfd. Nr.", "Lp.", or nothing), it counts the rows 1, 2, 3, the
// times fall as often as they rise from row to row, and the rows are sorted by name or by the
// runners' numbers.
func (s *settler) lineNumbers() {
	at := s.find(Position)
	if at < 0 || s.profiles[at].filled < 8 || s.profiles[at].lo != 1 || !s.countsOn(at) {
		return
	}
	if g := s.guesses[at]; g.known && !g.number && headingSaysPlace(s.headings[at]) {
		return
	}
	if up := s.timesRise(at); up == 0 || up > .75 {
		return
	}
	by := ""
	for i, c := range s.columns {
		switch {
		case c.Meaning == Name || c.Meaning == FamilyName || c.Meaning == GivenName:
			if s.sorted(i, func(c string) string { return fold(c) }) || s.sorted(i, strings.ToUpper) || s.sorted(i, func(c string) string { return finalWord(c) }) {
				by = "names"
			}
		case c.Meaning == Number && s.profiles[i].rising*20 >= s.profiles[i].steps*19:
			by = "runners' numbers"
		}
	}
	if by != "" {
		s.guesses[at] = guess{meaning: Other, known: true}
		s.set(at, Other, "heading %q: it numbers the lines, which are sorted by the %s and not by the times", s.headings[at], by)
	}
}

// headingSaysPlace says whether a heading has a word for a place.
func headingSaysPlace(heading string) bool {
	for w := range strings.FieldsSeq(fold(heading)) {
		if headingWords[w]&cPlace != 0 {
			return true
		}
	}
	return false
}

// sorted says whether the cells of a column stand in order by what key makes of them, but for one
// step in twenty, and are not all alike.
func (s *settler) sorted(i int, key func(string) string) bool {
	before, steps, up, rose := "", 0, 0, 0
	for _, r := range s.rows {
		c := key(trim(cellAt(r.cells, i)))
		if c == "" {
			continue
		}
		if before != "" {
			steps++
			if c >= before {
				up++
			}
			if c > before {
				rose++
			}
		}
		before = c
	}
	return steps >= 7 && up*20 >= steps*19 && 3*rose >= steps
}
