package sheet

import "strings"

// bracketClasses puts the class behind a name into brackets, "Jo Lee W40", where
// eight in ten names of the column, four or more, have one and no other column is for groups: in
// brackets it is read as what it is. It returns the number of cells.
func (g *grid) bracketClasses(lex *lexicon, headings []string, after int) int {
	const looks = 12 // lines that say that it is worth while
	name := -1
	for i, h := range headings {
		switch lex.read(h).meaning {
		case Name:
			if name >= 0 {
				return 0
			}
			name = i
		case AgeGroup, Age, BirthYear, BirthDate:
			return 0
		}
	}
	if name < 0 {
		return 0
	}
	names, classed := 0, 0
	for i := range g.len() {
		row, cells := g.at(i)
		if row <= after || rowFilled(cells) < 2 || isBlank(cellAt(cells, name)) {
			continue
		}
		names++
		if _, _, ok := classOfName(cells[name]); ok {
			classed++
		}
		if names == looks && classed*2 < names {
			return 0
		}
	}
	if classed < 4 || classed*10 < names*8 {
		return 0
	}
	return g.mend(func(_, row int, cells []string) ([]string, bool) {
		if row <= after || name >= len(cells) {
			return nil, false
		}
		plain, class, ok := classOfName(cells[name])
		if !ok {
			return nil, false
		}
		w := append([]string(nil), cells...)
		w[name] = plain + " (" + class + ")"
		return w, true
	})
}

// classOfName cuts a class off the end of a name of two words or more, "Jo Lee W40", "Jo Lee MSen". What
// stands behind a mark is read as it is.
func classOfName(s string) (name, class string, ok bool) {
	s = trim(s)
	at := strings.LastIndexByte(s, ' ')
	if at < 0 || len(s)-at > 8 {
		return "", "", false
	}
	class = s[at+1:]
	name = strings.TrimSpace(s[:at])
	if first := class[0]; first < 'A' || first > 'Z' || kindOf(class) != kGroup || strings.IndexByte(name, ' ') < 0 || strings.TrimRight(name, " ,;/|–—-") != name || hasDigit(name) {
		return "", "", false
	}
	return name, class, true
}
