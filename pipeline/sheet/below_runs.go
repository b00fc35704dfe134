package sheet

// withoutListsBelowRuns leaves out of a table with a run in each column the lists of another
// kind that stand below it under a line of their own: who helped, the league, the records.
// Such a list has something else than times under the dates. Its first line and row are
// returned, "" where there is none.
func (t table) withoutListsBelowRuns(lex *lexicon) (title string, row int) {
	heading, runs := -1, []acrossRun(nil)
	for i := 0; i < t.grid.len() && i < headingLooks && heading < 0; i++ {
		if _, cells := t.grid.at(i); len(cells) > 2 {
			if runs = runsAcross(lex, cells); runs != nil && t.timesRightBelow(i, runs) {
				heading = i
			}
		}
	}
	if heading < 0 {
		return "", 0
	}
	runners := func(from, to int) bool { // whether half of the rows with something under the dates have times there
		with, timed := 0, 0
		for i := from; i < to; i++ {
			_, cells := t.grid.at(i)
			filled, clocks := 0, 0
			for _, r := range runs {
				switch kindOf(cellAt(cells, r.time)) {
				case kBlank:
					continue
				case kClock, kDecimal, kStatus:
					clocks++
				}
				filled++
			}
			if filled > 0 {
				with++
			}
			if filled > 0 && clocks == filled {
				timed++
			}
		}
		return with == 0 || 2*timed >= with
	}
	begins := func(i int) bool { // a line of one cell below a blank row
		_, cells := t.grid.at(i)
		if rowFilled(cells) != 1 || !hasLetter(titleText(cells)) {
			return false
		}
		_, above := t.grid.at(i - 1)
		return t.grid.row(i) > t.grid.row(i-1)+1 || rowFilled(above) == 0
	}
	out := map[int]bool{}
	for i := heading + 2; i < t.grid.len(); i++ {
		if !begins(i) {
			continue
		}
		end := i + 1
		for end < t.grid.len() && !begins(end) {
			end++
		}
		if !runners(i+1, end) {
			if title == "" {
				_, cells := t.grid.at(i)
				title, row = titleText(cells), t.grid.row(i)
			}
			for k := i; k < end; k++ {
				out[k] = true
			}
		}
		i = end - 1
	}
	if len(out) > 0 {
		t.grid.mend(func(i, _ int, _ []string) ([]string, bool) { return nil, out[i] })
	}
	return title, row
}

// timesRightBelow says whether each of the first three rows below a row of dates has times
// under them and nothing else.
func (t table) timesRightBelow(heading int, runs []acrossRun) bool {
	rows := 0
	for i := heading + 1; i < t.grid.len() && rows < 3; i++ {
		_, cells := t.grid.at(i)
		if rowFilled(cells) == 0 {
			continue
		}
		rows++
		times := 0
		for _, r := range runs {
			switch k := kindOf(cellAt(cells, r.time)); k {
			case kClock, kDecimal:
				times++
			case kBlank, kStatus:
			default:
				if !isAway(cellAt(cells, r.time)) {
					return false
				}
			}
		}
		if times == 0 {
			return false
		}
	}
	return rows > 1
}
