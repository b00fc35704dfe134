package sheet

import (
	"maps"
	"slices"
	"unicode/utf8"
)

// exchanged puts the meanings of two headings right that somebody has exchanged: under that
// of the names stand nothing but times, and under that of the times names; or a few names again and again
// under that of the names, and on each line another under that of the clubs.
func (s *settler) exchanged() (names, other int, ok bool) {
	names, times, clubs := -1, -1, -1
	for i, g := range s.guesses {
		switch {
		case !g.known:
		case g.meaning == Name && names < 0:
			names = i
		case g.meaning == Name:
			return 0, 0, false
		case g.meaning.isTime() && times < 0:
			times = i
		case g.meaning.isTime():
			return 0, 0, false
		case g.meaning == Club && clubs < 0:
			clubs = i
		}
	}
	switch {
	case names < 0:
		return 0, 0, false
	case times >= 0 && namesUnderTimes(s.profiles[names], s.profiles[times]):
		other = times
	case clubs >= 0 && namesUnderClubs(s.profiles[names], s.profiles[clubs]):
		other = clubs
	default:
		return 0, 0, false
	}
	s.guesses[names], s.guesses[other] = s.guesses[other], s.guesses[names]
	return names, other, true
}

// namesUnderTimes says whether the values of the names are times, and those of the times names.
func namesUnderTimes(n, t *profile) bool {
	return n.count[kClock] >= 4 && n.share(kClock) >= .9 && t.count[kText] >= 4 && t.share(kText) >= .9 && t.spaces*10 >= t.count[kText]*7
}

// namesUnderClubs says whether the values of the names come again twice and more each, as no runner does, and those
// of the clubs, of two words mostly, stand on one line each.
func namesUnderClubs(n, c *profile) bool {
	return n.filled >= 6 && n.share(kText) >= .9 && 2*len(n.distinct) <= n.filled && c.filled >= 6 && c.filled < distinctKept &&
		len(c.distinct) == c.filled && c.share(kText) >= .9 && c.spaces*10 >= c.filled*9
}

// exchangeCells puts names and times into their columns on rows where they stand otherwise, as in lines
// that were pasted from another list: the only time of a row under a heading of names, numbers, ages,
// sexes or clubs, or its only name under one of times or of these. What is a club of another row is no
// name, nor what stands in another column of facts on a row with its time in place. Rows with a name have
// a place, too. Where some rows are so, a time in place of the name alone goes with them. It returns the
// number of rows.
func (g *grid) exchangeCells(lex *lexicon, headings []string, after int) int {
	var names, clocks, official, facts, besides []int
	place := 0 // without a heading that says so, the first column
	for i, h := range headings {
		switch guess := lex.read(h); {
		case !guess.known:
		case guess.meaning == Time:
			clocks = append(clocks, i)
		case guess.meaning.isTime():
			official = append(official, i)
		case guess.meaning.isName():
			names = append(names, i)
		case guess.meaning == Club, guess.meaning == Number, guess.meaning == Sex, guess.meaning == Age, guess.meaning == BirthYear, guess.meaning == AgeGroup:
			facts = append(facts, i)
		case guess.meaning == Position:
			place = i
		case guess.meaning == Gap, guess.meaning == Pace, guess.meaning == Split:
			besides = append(besides, i)
		}
	}
	if len(clocks) == 0 {
		clocks = official
	}
	if len(names) != 1 || len(clocks) != 1 || lex.read(headings[names[0]]).meaning != Name {
		return 0
	}
	name, clock := names[0], clocks[0]
	clocksFrom, namesFrom := append([]int{name}, facts...), slices.Concat([]int{clock}, facts, besides)
	edits, nobody := map[int][]string{}, map[int][]string{}
	for i := range g.len() {
		row, cells := g.at(i)
		if row <= after || startsWithLetter(cellAt(cells, name)) && !startsWithLetter(cellAt(cells, clock)) && !isBlank(cellAt(cells, clock)) {
			continue // nearly all rows
		}
		filled := rowFilled(cells)
		if filled < 2 {
			continue
		}
		if len(edits)+len(nobody) == maxExchanged {
			return 0
		}
		n, t := trim(cellAt(cells, name)), trim(cellAt(cells, clock))
		clockAt, nameAt := clock, name
		if t == "" || looksNamed(t) {
			clockAt = only(cells, clocksFrom, func(c string) bool { return kindOf(c) == kClock })
		}
		if n == "" || kindOf(n) == kClock {
			nameAt = only(cells, namesFrom, looksNamed)
			if nameAt >= 0 {
				c := trim(cells[nameAt])
				fact := slices.Contains(facts, nameAt)
				if kindOf(c) != kText || anyWord(c, clubWords) || saysEnded(c) || nameAt != clock && g.standsIn(nameAt, c, row) || fact && (filled > 3 || clockAt == clock) {
					nameAt = -1
				}
			}
		}
		if clockAt == name && nameAt < 0 && t == "" {
			nobody[i] = withCells(cells, max(name, clock)) // "?" or nothing stands for the name
			nobody[i][clock], nobody[i][name] = n, ""
		}
		if clockAt < 0 || nameAt < 0 || clockAt == clock && nameAt == name || clockAt != name && !digitsOnly(trim(cellAt(cells, place))) {
			continue // "First home, Jo Lee, 18:20"
		}
		try := withCells(cells, max(name, clock))
		try[clockAt], try[nameAt] = "", ""
		try[clock], try[name] = cells[clockAt], cells[nameAt]
		edits[i] = try
	}
	if len(edits) > 0 {
		maps.Copy(edits, nobody)
	}
	if len(edits) == 0 || 2*len(edits) > g.len() {
		return 0
	}
	return g.mend(func(i, _ int, _ []string) ([]string, bool) {
		cells, ok := edits[i]
		return cells, ok
	})
}

// startsWithLetter is the cheap test for a name.
func startsWithLetter(s string) bool {
	return s != "" && (s[0] >= 'A' && s[0] <= 'Z' || s[0] >= 'a' && s[0] <= 'z' || s[0] >= utf8.RuneSelf)
}

// withCells is a copy of a row with cells up to a column at least.
func withCells(cells []string, last int) []string {
	out := slices.Clone(cells)
	for len(out) <= last {
		out = append(out, "")
	}
	return out
}

// only is the one of some columns whose cell is of a kind, -1 for none and for several.
func only(cells []string, columns []int, is func(string) bool) int {
	at := -1
	for _, i := range columns {
		if i < len(cells) && is(cells[i]) {
			if at >= 0 {
				return -1
			}
			at = i
		}
	}
	return at
}

// maxExchanged is more rows than somebody pastes from another list.
const maxExchanged = 500

// standsIn says whether a column has a text on another row.
func (g *grid) standsIn(column int, text string, but int) bool {
	for i := range g.len() {
		if row, cells := g.at(i); row != but && trim(cellAt(cells, column)) == text {
			return true
		}
	}
	return false
}
