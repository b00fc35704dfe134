package sheet

import (
	"regexp"
	"slices"
	"strings"

	"lapwing/pipeline/text"
)

// endedByLetter puts what a line of the sheet says of a letter behind places or times, "D = disqualified" and
// "24:31 D", into a column of its own, where it is how a race ended or that a line does not count.
func (t table) endedByLetter(lex *lexicon) bool {
	l := findHeading(lex, t.head())
	if l.first < 0 || l.lines != 1 || t.grid.len() > typedRows {
		return false
	}
	means := t.endedLetters(l)
	if len(means) == 0 {
		return false
	}
	columns, as := []int(nil), "Status"
	for i, h := range l.headings {
		switch g := lex.read(h); {
		case g.meaning == Position, g.meaning.isTime():
			columns = append(columns, i)
		case g.meaning == Status:
			as = "Notes"
		}
	}
	if as == "Notes" && slices.ContainsFunc(l.headings, func(h string) bool { return lex.read(h).meaning == Notes }) {
		return false
	}
	_, width := t.cellsUnder(l, 0)
	found := false
	part := func(cells []string) (column int, before, said string) {
		for _, c := range columns {
			m := letterBehind.FindStringSubmatch(trim(cellAt(cells, c)))
			if m != nil && means[m[2]] != "" && (kindOf(m[1]) == kInt || kindOf(m[1]) == kClock) {
				return c, m[1], means[m[2]]
			}
		}
		return -1, "", ""
	}
	for i := l.first + 1; i < t.grid.len() && !found; i++ {
		_, cells := t.grid.at(i)
		at, _, _ := part(cells)
		found = at >= 0 && rowFilled(cells) > 2
	}
	return found && t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		if i < l.first {
			return nil, false
		}
		w := make([]string, width+1)
		copy(w, cells)
		if i == l.first {
			w[width] = as
			return w, true
		}
		if at, before, said := part(cells); at >= 0 && rowFilled(cells) > 2 {
			w[at], w[width] = before, said
			return w, true
		}
		return nil, false
	}) > 0
}

// letterBehind is a place or a time with letters behind it, in brackets or not.
var letterBehind = regexp.MustCompile(`^(\d[\d:.,]*)\s*[(\[]?(\pL{1,3})[)\]]?$`)

// endedLetters are the letters that lines beside the rows explain by how a race ended or that a line does not count.
func (t table) endedLetters(l layout) map[string]string {
	means := map[string]string{}
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		if i == l.first || rowFilled(cells) > 2 {
			continue
		}
		line := strings.Trim(rowText(cells), " |()")
		if len(line) > 200 {
			continue
		}
		for _, m := range slices.Concat(keyAndMeans.FindAllStringSubmatch(line, -1), lineOfKey.FindAllStringSubmatch(line, -1)) {
			if f := fold(m[2]); hasLetter(m[1]) && (statusWords[f] && !finishCodes[f] || saysHowEnded(m[2]) || text.AgainstTime(f, usualDistance/1000)) {
				means[m[1]] = m[2]
			}
		}
	}
	return means
}
