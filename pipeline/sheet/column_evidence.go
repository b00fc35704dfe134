package sheet

import (
	"regexp"
	"strings"
)

// evidence looks again at the columns of dates, places and codes that may, or may not, tell
// ages and sexes.
func (s *settler) evidence() {
	for i, c := range s.columns {
		switch {
		case (c.Meaning == Date || c.Meaning == Other && !s.guesses[i].known) && s.find(BirthDate) < 0 && s.daysOfBirth(i):
			s.set(i, BirthDate, "heading %q, but its values are days of birth", s.headings[i])
		case c.Meaning == GroupPlace && s.find(AgeGroup) < 0 && s.placesWithClasses(i):
			s.set(i, AgeGroup, "heading %q; its values are places and the classes that they are in", s.headings[i])
		case c.Meaning == AgeGroup && !s.guesses[i].known && s.headings[i] != "" && s.oneLetterCodes(i):
			s.set(i, Other, "heading %q not known, and its values are codes of one letter", s.headings[i])
		}
	}
}

// daysOfBirth says whether the dates of a column are birthdays: hardly two alike, spread over
// fifteen years or more, half of them before any run of this century's second decade.
func (s *settler) daysOfBirth(i int) bool {
	p := s.profiles[i]
	if p.filled < 8 || p.share(kDate) < .9 || len(p.distinct)*10 < min(p.filled, distinctKept)*9 {
		return false
	}
	n, old, first, last := 0, 0, 3000, 0
	for _, r := range s.rows {
		ds := findDates(trim(cellAt(r.cells, i)))
		if len(ds) != 1 || len(ds[0].readings) == 0 {
			continue
		}
		y := ds[0].readings[0].y
		if y < 1900 || y > 2030 {
			return false
		}
		if n++; y <= 2005 {
			old++
		}
		first, last = min(first, y), max(last, y)
	}
	return n >= 8 && last-first >= 15 && 2*old >= n && !otherDate(fold(s.headings[i]))
}

// placeWithClass is a place before or behind a class, "1 of 12 SM", "3/17 M45", "M45 3".
var placeWithClass = regexp.MustCompile(`^(?:[0-9]{1,4}(?: ?(?:/|of|von|av|de|sur|di) ?[0-9]{1,4})?[.:]? ?([\pL]{1,6}[0-9+-]*)|([\pL]{1,6}[0-9+-]*) ?[-/(#]? ?[0-9]{1,4}\)?)$`)

// placesWithClasses says whether most values of a column of places say the class as well, of
// a kind that is a sex or a group.
func (s *settler) placesWithClasses(i int) bool {
	n, classes := 0, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		n++
		if m := placeWithClass.FindStringSubmatch(c); m != nil {
			if k := kindOf(m[1] + m[2]); k == kGroup {
				classes++
			}
		}
	}
	return classes >= 4 && classes*10 >= n*6
}

// oneLetterCodes says whether every value of a column is the same letter with a number
// behind it, of which most are no multiples of five as the first ages of groups are: M217 is
// a locker, or a member.
func (s *settler) oneLetterCodes(i int) bool {
	letter, n, fives := byte(0), 0, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		if len(c) < 2 || !digitsOnly(c[1:]) || letter != 0 && c[0] != letter {
			return false
		}
		letter = c[0]
		if n++; strings.IndexByte("05", c[len(c)-1]) >= 0 {
			fives++
		}
	}
	return n >= 5 && 2*fives < n
}
