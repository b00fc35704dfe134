package sheet

// besideRowNames puts a blank heading before those of a table whose rows have one cell
// more than the heading: a statistics program writes the names of the rows in front,
// 1, 2, 3 …, and nothing above them. It takes that the headings fit the values
// clearly better when they stand one column further to the right.
func besideRowNames(lex *lexicon, headings []string, rows []line) []string {
	const look = 40
	n := len(headings)
	if n < 2 || len(rows) < 4 {
		return headings
	}
	longer := 0
	for _, r := range rows[:min(look, len(rows))] {
		if len(r.cells) > n {
			longer++
		}
	}
	if longer < 4 {
		return headings // as nearly everywhere
	}
	values, seen := make([]*profile, n+1), map[string]bool{}
	for i := range values {
		values[i] = &profile{}
	}
	filled := 0
	for _, r := range rows[:min(look, len(rows))] {
		cells := trimmed(r.cells)
		if rowFilled(cells) == 0 {
			continue
		}
		filled++
		switch first := cellAt(cells, 0); {
		case len(cells) > n+1, seen[first] && first != "":
			return headings
		case len(cells) == n+1 && kindOf(first) == kInt:
			seen[first] = true
		}
		for i, c := range cells {
			values[i].add(c)
		}
	}
	if len(seen) < 4 || len(seen)*4 < filled*3 { // a row may have lost its cells when somebody was erased
		return headings
	}
	under, beside := 0.0, 0.0
	for i, h := range headings {
		if g := lex.read(h); g.known {
			under += g.meaning.fits(values[i])
			beside += g.meaning.fits(values[i+1])
		}
	}
	if beside < under+1 || cutNamesFit(lex, headings, values) >= beside {
		return headings
	}
	return append([]string{""}, headings...)
}

// cutNamesFit is how well the headings fit where two cells of text side by side are one, as
// names are that a comma without quotation marks cuts in two.
func cutNamesFit(lex *lexicon, headings []string, values []*profile) (best float64) {
	for k := range headings {
		if values[k].shareOf(kText) < .9 || values[k+1].shareOf(kText) < .9 {
			continue
		}
		fit := 0.0
		for i, h := range headings {
			g := lex.read(h)
			switch {
			case !g.known:
			case i <= k:
				fit += g.meaning.fits(values[i])
			default:
				fit += g.meaning.fits(values[i+1])
			}
		}
		best = max(best, fit)
	}
	return best
}

// fits is the share of a column's values that look like what the meaning stands for.
func (m Meaning) fits(p *profile) float64 {
	switch {
	case m.isTime():
		return p.shareOf(kClock) + p.shareOf(kInt, kDecimal)/2
	case m.isName(), m == Club, m == Course:
		return p.shareOf(kText)
	}
	switch m {
	case Position, Age, BirthYear:
		return p.shareOf(kInt)
	case Sex:
		return p.shareOf(kSex)
	case AgeGroup:
		return p.shareOf(kGroup)
	case BirthDate, Date:
		return p.shareOf(kDate)
	}
	return 0
}
