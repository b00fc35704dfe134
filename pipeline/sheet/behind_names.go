package sheet

import (
	"slices"
	"strings"
)

// factsBehindNames puts what stands behind a name, in brackets or behind a mark, into the column of such facts
// where that is blank on the row: "Jo Lee (F)" beside a blank sex, "Jo Lee - Harriers" beside a blank club where others
// have that club, "Jo Lee (V45)" beside a blank group. It returns the number of rows.
func (g *grid) factsBehindNames(lex *lexicon, headings []string, after int) int {
	name, club := -1, -1
	var sexes, groups []int
	for i, h := range headings {
		switch guess := lex.read(h); {
		case !guess.known:
		case guess.meaning == Name && name >= 0, guess.meaning == Club && club >= 0:
			return 0
		case guess.meaning == Name:
			name = i
		case guess.meaning == Club:
			club = i
		case guess.meaning == Sex:
			sexes = append(sexes, i)
		case guess.meaning == AgeGroup:
			groups = append(groups, i)
		}
	}
	if name < 0 || club < 0 && len(sexes)+len(groups) == 0 || g.len() > typedRows {
		return 0
	}
	clubs := map[string]bool{}
	if club >= 0 {
		for i := range g.len() {
			if row, cells := g.at(i); row > after {
				clubs[trim(cellAt(cells, club))] = true
			}
		}
	}
	return g.mend(func(_, row int, cells []string) ([]string, bool) {
		if row <= after || name >= len(cells) {
			return nil, false
		}
		before, fact := textBehind(cells[name])
		if fact == "" || !strings.Contains(before, " ") {
			return nil, false
		}
		var columns []int // that the fact may be of
		switch kindOf(fact) {
		case kSex:
			columns = sexes
		case kGroup:
			columns = groups
		}
		if club >= 0 && clubs[fact] {
			columns = append([]int{club}, columns...)
		}
		k := slices.IndexFunc(columns, func(i int) bool { return isBlank(cellAt(cells, i)) })
		if k < 0 {
			return nil, false
		}
		at := columns[k]
		out := withCells(cells, at)
		out[name], out[at] = before, fact
		return out, true
	})
}

// textBehind cuts a text off the end of a name that stands in brackets or behind a comma or a dash; "" for none.
func textBehind(s string) (name, fact string) {
	s = trim(s)
	if strings.HasSuffix(s, ")") {
		if at := strings.LastIndexByte(s, '('); at > 0 {
			return trim(s[:at]), trim(s[at+1 : len(s)-1])
		}
		return s, ""
	}
	for _, mark := range [...]string{" - ", " – ", ", "} {
		if at := strings.LastIndex(s, mark); at > 0 {
			return trim(s[:at]), trim(s[at+len(mark):])
		}
	}
	return s, ""
}
