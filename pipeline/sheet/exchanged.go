package sheet

import "slices"

// exchanged puts the meanings of two headings right that somebody has exchanged: under that
// of the names stand nothing but times, and under that of the times names.
func (s *settler) exchanged() (names, times int, ok bool) {
	names, times = -1, -1
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
		}
	}
	if names < 0 || times < 0 {
		return 0, 0, false
	}
	n, t := s.profiles[names], s.profiles[times]
	if n.count[kClock] < 4 || n.share(kClock) < .9 || t.count[kText] < 4 || t.share(kText) < .9 || t.spaces*10 < t.count[kText]*7 {
		return 0, 0, false
	}
	s.guesses[names], s.guesses[times] = s.guesses[times], s.guesses[names]
	return names, times, true
}

// exchangeCells puts names and times into their columns on rows where they stand otherwise, as in lines
// that were pasted from another list: a time under the heading of the names, and the only name of the row
// under that of the times, or anywhere where nothing but a place stands beside the two. What is a club of
// another row is no name. It returns the number of rows.
func (g *grid) exchangeCells(lex *lexicon, headings []string, after int) int {
	var names, clocks, official []int
	for i, h := range headings {
		switch guess := lex.read(h); {
		case !guess.known:
		case guess.meaning == Time:
			clocks = append(clocks, i)
		case guess.meaning.isTime():
			official = append(official, i)
		case guess.meaning.isName():
			names = append(names, i)
		}
	}
	if len(clocks) == 0 {
		clocks = official
	}
	if len(names) != 1 || len(clocks) != 1 || lex.read(headings[names[0]]).meaning != Name {
		return 0
	}
	name, clock := names[0], clocks[0]
	edits, rows := map[int][]string{}, 0
	for i := range g.len() {
		row, cells := g.at(i)
		if row <= after || rowFilled(cells) < 2 {
			continue
		}
		rows++
		if kindOf(cellAt(cells, name)) != kClock || len(edits) == maxExchanged {
			continue
		}
		from := clock
		if isBlank(cellAt(cells, clock)) && rowFilled(cells) <= 3 {
			from = slices.IndexFunc(cells, looksNamed)
			if from >= 0 && slices.ContainsFunc(cells[from+1:], looksNamed) {
				continue
			}
		}
		if c := trim(cellAt(cells, from)); looksNamed(c) && kindOf(c) == kText && !anyWord(c, clubWords) && !saysEnded(c) && (from == clock || !g.standsIn(from, c, row)) {
			try := slices.Clone(cells)
			for len(try) <= max(name, clock) {
				try = append(try, "")
			}
			try[from] = ""
			try[name], try[clock] = cells[from], cells[name]
			edits[i] = try
		}
	}
	if len(edits) == 0 || 2*len(edits) > rows || len(edits) == maxExchanged {
		return 0
	}
	return g.mend(func(i, _ int, _ []string) ([]string, bool) {
		cells, ok := edits[i]
		return cells, ok
	})
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
