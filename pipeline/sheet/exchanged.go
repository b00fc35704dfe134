package sheet

import (
	"maps"
	"slices"
	"unicode/utf8"
)

// exchanged puts the meanings of two headings right that somebody has exchanged: what stands under each is
// what the other announces, and not what its own does, as times under that of the names and names under that of
// the times, or places under that of the names; or a few names again and again under that of the names,
// and on each line another under that of the clubs.
func (s *settler) exchanged() (one, other int, ok bool) {
	seen := map[Meaning]int{}
	var columns []int
	for i, g := range s.guesses {
		if g.known && (g.meaning == Name || g.meaning == Position || g.meaning == Club || g.meaning.isTime()) {
			m := g.meaning
			if m.isTime() {
				m = Time
			}
			if seen[m]++; seen[m] > 1 && (m == Name || m == Time) {
				return 0, 0, false
			}
			columns = append(columns, i)
		}
	}
	if seen[Name] == 0 {
		return 0, 0, false
	}
	one = -1
	for n, a := range columns {
		for _, b := range columns[n+1:] {
			if !s.holdsOther(a, b) || !s.holdsOther(b, a) {
				continue
			}
			if one >= 0 {
				return 0, 0, false
			}
			one, other = a, b
		}
	}
	if one < 0 {
		return 0, 0, false
	}
	s.guesses[one], s.guesses[other] = s.guesses[other], s.guesses[one]
	return one, other, true
}

// dropDoubled leaves a heading out of account that stands twice, over a column of which the values are what it
// announces and another of which they are sexes or whole numbers: the values say what that is.
func (s *settler) dropDoubled() {
	for i, g := range s.guesses {
		if p := s.profiles[i]; !g.known || g.meaning != Name && !g.meaning.isTime() || p.count[kSex] < 4 && p.count[kInt] < 4 || p.share(kSex) < .9 && p.share(kInt) < .9 {
			continue
		}
		for j, other := range s.guesses {
			if other.known && other.meaning == g.meaning && fold(s.headings[j]) == fold(s.headings[i]) && announced(s.profiles[j], g.meaning) {
				s.guesses[i] = guess{}
			}
		}
	}
}

// holdsOther says whether the values of a column are what the heading of another announces, and not its own.
func (s *settler) holdsOther(column, other int) bool {
	p, q, m, n := s.profiles[column], s.profiles[other], s.guesses[column].meaning, s.guesses[other].meaning
	switch {
	case m == Name && n == Club:
		return namesUnderClubs(p, q)
	case m == Club && n == Name:
		return namesUnderClubs(q, p)
	}
	return announced(p, n) && !announced(p, m)
}

// announced says whether nine in ten values of a column, four and more, look like what a heading announces; names are of
// two words mostly.
func announced(p *profile, m Meaning) bool {
	k := kText
	switch {
	case m.isTime():
		k = kClock
	case m == Position:
		k = kInt
	}
	return p.count[k] >= 4 && p.share(k) >= .9 && (m != Name || p.spaces*10 >= p.count[kText]*7)
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
	inPlace := 0
	for i := range g.len() {
		row, cells := g.at(i)
		if row <= after || startsWithLetter(cellAt(cells, name)) && !startsWithLetter(cellAt(cells, clock)) && !isBlank(cellAt(cells, clock)) {
			inPlace++ // nearly all rows
			continue
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
	if len(edits) == 0 || 2*len(edits) > g.len() || len(edits) > inPlace { // all of them: the headings are exchanged
		return 0
	}
	return g.mendRows(edits)
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
