package sheet

import (
	"strings"
)

// names settles full names against given and family names.
func (s *settler) names() {
	full, given, family := s.find(Name), s.find(GivenName), s.find(FamilyName)
	switch {
	case full >= 0 && given >= 0 && family < 0:
		if s.contains(full, given) {
			s.columns[full].Why += "; it holds the given name too"
			s.set(given, Other, "heading %q; the full name has it", s.headings[given])
			return
		}
		s.set(full, FamilyName, "heading %q beside a column of given names", s.headings[full])
	case full >= 0 && family >= 0 && given < 0:
		if s.contains(full, family) {
			s.set(family, Other, "heading %q; the full name has it", s.headings[family])
			return
		}
		s.set(full, GivenName, "heading %q beside a column of family names", s.headings[full])
	case full >= 0 && family >= 0 && given >= 0:
		if s.profiles[full].share(kText) > .3 && s.profiles[full].filled >= s.profiles[family].filled && s.contains(full, family) {
			s.set(given, Other, "the full name has it")
			s.set(family, Other, "the full name has it")
			return
		}
		s.set(full, Other, "heading %q beside given and family names", s.headings[full])
	case full < 0 && (given >= 0) != (family >= 0):
		i := max(given, family)
		if s.profiles[i].spaces*2 > s.profiles[i].filled {
			s.set(i, Name, "heading %q, but its values are whole names", s.headings[i])
		} else if given >= 0 {
			// The family name may stand in a column without a heading.
			for _, j := range []int{given + 1, given - 1} {
				if j >= 0 && j < len(s.columns) && s.headings[j] == "" && s.profiles[j].share(kText) > .8 {
					s.set(j, FamilyName, "no heading, beside the given names")
					return
				}
			}
			s.set(i, Name, "heading %q, the only names on the sheet", s.headings[i])
		} else {
			s.set(i, Name, "heading %q, the only names on the sheet", s.headings[i])
		}
	case full >= 0 && s.profiles[full].spaces*5 < s.profiles[full].filled && full+1 < len(s.columns) && s.headings[full+1] == "" && s.profiles[full+1].share(kText) > .8:
		// One heading "Name" over two columns of names.
		s.set(full, GivenName, "heading %q over two columns of names", s.headings[full])
		s.set(full+1, FamilyName, "second column under %q", s.headings[full])
	}
}

// contains says whether the cells of column a hold those of column b.
func (s *settler) contains(a, b int) bool {
	in, n := 0, 0
	for _, r := range s.rows {
		x, y := fold(cellAt(r.cells, a)), fold(cellAt(r.cells, b))
		if x == "" || y == "" {
			continue
		}
		n++
		if x != y && strings.Contains(x, y) {
			in++
		}
	}
	return n > 0 && in*10 >= n*8
}
