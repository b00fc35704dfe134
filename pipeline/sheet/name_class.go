package sheet

import (
	"slices"
	"strconv"
	"strings"
)

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

// compoundMarks divide such headings and their cells.
var compoundMarks = [...]string{" / ", "/", " | ", " - ", " – ", "; ", ", "}

// splitCompound makes columns of one whose heading is of several, a name among them, "Name / Club /
// Class", where eight in ten of its cells, three or more, are of as many pieces between the same
// marks. The further pieces get columns behind the others; a cell of one piece stays as it is.
// A name and a club alone are left to those who read names.
func (t table) splitCompound(lex *lexicon) bool {
	at, top, mark, parts := -1, -1, "", []string(nil)
	for i := 0; i < min(t.grid.len(), headingLooks) && at < 0; i++ {
		_, cells := t.grid.at(i)
		for c, cell := range cells {
			if cell = trim(cell); len(cell) > 8 && len(cell) < 60 && strings.ContainsAny(cell, "/|-–;,") {
				if mark, parts = compoundHeading(lex, cell); len(parts) > 0 {
					at, top = c, i
					break
				}
			}
		}
	}
	if at < 0 || t.grid.len() > typedRows {
		return false
	}
	filled, split, width := 0, 0, 0
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		width = max(width, len(cells))
		if c := trim(cellAt(cells, at)); i > top && c != "" {
			if filled++; len(strings.Split(c, mark)) == len(parts) {
				split++
			}
		}
	}
	if split < 3 || split*10 < filled*8 {
		return false
	}
	return t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		pieces := strings.Split(trim(cellAt(cells, at)), mark)
		if i < top || len(pieces) != len(parts) {
			return nil, false
		}
		w := make([]string, width+len(parts)-1)
		copy(w, cells)
		for k, piece := range pieces {
			if piece = trim(piece); strings.Trim(piece, "-–—") == "" {
				piece = ""
			}
			if k == 0 {
				w[at] = piece
			} else {
				w[width+k-1] = piece
			}
		}
		return w, true
	}) > 0
}

// splitPlaces makes two columns of one that has the place before the name, "1. Jo Lee", in eight in ten of
// its cells, three or more, under any heading but that of another fact, where no other column is for places or
// names. The places get a column behind the others.
func (t table) splitPlaces(lex *lexicon) bool {
	l := findHeading(lex, t.head())
	if l.first < 0 || t.grid.len() > typedRows {
		return false
	}
	last := l.first + l.lines - 1
	for at, h := range l.headings {
		if g := lex.read(h); isBlank(h) || g.known && g.meaning != Name && g.meaning != Position && g.meaning != Time && g.meaning != Other ||
			slices.ContainsFunc(l.headings, func(o string) bool {
				m := lex.read(o).meaning
				return o != h && (m == Name || m == Position || m == FamilyName || m == GivenName)
			}) {
			continue
		}
		filled, most, width, places := 0, 0, 0, map[int]bool{}
		for i := range t.grid.len() {
			_, cells := t.grid.at(i)
			width = max(width, len(cells))
			c := trim(cellAt(cells, at))
			if i <= last || c == "" {
				continue
			}
			filled++
			if m := placeThenName.FindStringSubmatch(c); m != nil {
				n, _ := strconv.Atoi(m[1]) // figures only
				places[n], most = true, max(most, n)
			}
		}
		if n := len(places); n < 3 || n*10 < filled*8 || most > 2*n {
			continue
		}
		return t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
			c := trim(cellAt(cells, at))
			w := make([]string, width+1)
			copy(w, cells)
			switch m := placeThenName.FindStringSubmatchIndex(c); {
			case i == last:
				w[at], w[width] = "Name", "Position"
			case i > last && m != nil:
				w[at], w[width] = c[m[4]:], c[m[2]:m[3]]
			default:
				return nil, false
			}
			return w, true
		}) > 0
	}
	return false
}

// compoundHeading divides a heading that is made of several, with the mark between them; none where
// it is not.
func compoundHeading(lex *lexicon, heading string) (mark string, parts []string) {
	if lex.read(heading).meaning == Sex {
		return "", nil
	}
	for _, mark := range compoundMarks {
		parts := strings.Split(heading, mark)
		if len(parts) < 2 || len(parts) > 5 {
			continue
		}
		seen := map[Meaning]bool{}
		for _, p := range parts {
			if g := lex.read(trim(p)); g.known && g.meaning != Other {
				seen[g.meaning] = true
			}
		}
		if len(seen) == len(parts) && seen[Name] && !(len(parts) == 2 && seen[Club]) {
			return mark, parts
		}
	}
	return "", nil
}

// classOfName cuts a class off the end of a name of two words or more, "Jo Lee W40", "Jo Lee MSen". What
// stands behind a mark is read as it is.
func classOfName(s string) (name, class string, ok bool) {
	s = trim(s)
	if first, second, two := strings.Cut(s, "\n"); two { // "W40 · Mill Harriers" on a second line of the cell
		class, rest, _ := strings.Cut(trim(second), " ")
		if rest = strings.Trim(rest, " ·•,;|/–—-"); rest != "" {
			rest = ") (" + rest
		}
		if name, _, ok := classOfName(trim(first) + " " + strings.TrimRight(class, ",;")); ok && !strings.Contains(rest, "\n") {
			return name, strings.TrimRight(class, ",;") + rest, true
		}
	}
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
