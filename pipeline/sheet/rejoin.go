package sheet

import (
	"maps"
	"slices"
	"strings"
	"sync"
)

// rejoin mends rows with a cell too many. A stray blank cell is taken out; texts that an
// unquoted comma has cut in two are put together: the row has
// one cell too many, its cells are not of the kinds that the columns hold as they
// stand, and there is one place at which two texts are joined so that
// every other cell is of the kind that its column holds. It returns the number of
// rows mended.
func (g *grid) rejoin(lex *lexicon, headings []string, after int) (mended int) {
	over := 0
	for i := range g.refs {
		if row, cells := g.at(i); row > after && len(cells) == len(headings)+1 {
			over++
		}
	}
	if over == 0 || len(headings) < 3 {
		return 0
	}
	if mended := g.rejoinFractions(lex, headings, after); mended > 0 {
		return mended
	}
	name, usual := -1, orKinds(g.usualKinds(headings, after, len(headings), 0), g.usualKinds(headings, after, 0, 0)) // of rows that end before the last column
	for i, h := range headings {
		m := lex.read(h).meaning
		if m == Name && name < 0 {
			name = i
		}
		if usual[i] == kBlank && over > 1 { // every row is too long: the headings say what is text
			switch m {
			case Time, GunTime, ChipTime:
				usual[i] = kClock
			case Position, Age, BirthYear, Number:
				if usual[i] = kInt; m == Position && g.shiftedClocks(headings, after, i) {
					usual[i] = kClock // "Finish" over times
				}
			case Sex:
				usual[i] = kSex
			case AgeGroup:
				usual[i] = kGroup
			case Name, Club:
				usual[i] = kText
			}
		}
	}
	mended = g.dropStrayBlanks(usual, after)
	return mended + g.joinCells(func(row int, cells []string) int {
		if row > after && len(cells) == len(headings)+1 {
			return cutAt(cells, usual, name)
		}
		return -1
	})
}

// dropStray takes out what stands too much in rows that reach one cell beyond the columns, where commas do not
// divide them and none can have cut a text in two.
func (g *grid) dropStray(headings []string, after int) int {
	if len(headings) < 3 || g.len() > typedRows {
		return 0
	}
	for i := range g.refs {
		if row, cells := g.at(i); row > after && lastFilled(cells) == len(headings) {
			return g.dropStrayBlanks(g.mostlyUsual(headings, after), after)
		}
	}
	return 0
}

// dropStrayBlanks takes a blank cell, or one that says what the cell before it says, out of the rows
// that have one cell too many and do not fit the columns as they stand, but do without it: a comma
// was typed twice, or in front of the row. It returns the number of rows mended.
func (g *grid) dropStrayBlanks(usual []kind, after int) (mended int) {
	return g.mend(func(_, row int, cells []string) (less []string, ok bool) {
		cells = cells[:lastFilled(cells)+1]
		if row > after && len(cells) == len(usual)+1 && !fitsKinds(cells, usual, len(usual)) {
			less = withoutStrayBlank(cells, usual)
		}
		return less, less != nil
	})
}

// withoutStrayBlank is a row without the one blank or doubled cell without which every cell is of
// its column's kind; nil where there is none, or the row would differ by which is taken.
func withoutStrayBlank(cells []string, usual []kind) (less []string) {
	known := 0
	for _, k := range usual {
		if k != kBlank {
			known++
		}
	}
	if known < 3 {
		return nil
	}
	for i, c := range cells {
		if !isBlank(c) && (i == 0 || c != cells[i-1]) {
			continue
		}
		try := slices.Delete(slices.Clone(cells), i, i+1)
		if !fitsKinds(try, usual, len(usual)) || slices.Equal(try, less) {
			continue
		}
		if less != nil {
			return nil
		}
		less = try
	}
	return less
}

// moveBack moves the rows back that stand one cell too far to the right, or to the left where
// their place is missing: in nine of ten rows the first cell is filled, in these it is blank or
// what stands in the second elsewhere, behind the places, and they fit the columns only when
// they are moved, three cells or more with what is usual there and a time among them. It
// returns the number of rows.
func (g *grid) moveBack(lex *lexicon, headings []string, after int) (moved int) {
	first := slices.IndexFunc(headings, func(h string) bool { return h != "" })
	if first < 0 || len(headings)-first < 3 {
		return 0
	}
	kinds := sync.OnceValue(func() []kind { return g.mostlyUsual(headings, after) })
	times := timedColumns(lex, headings)
	right, left := map[int][]string{}, map[int][]string{}
	blank, filled := 0, 0
	for i := range g.refs {
		row, cells := g.at(i)
		if row <= after || rowFilled(cells) < min(3, len(headings)-first-1) {
			continue
		}
		if isBlank(cellAt(cells, first)) {
			blank++
		} else {
			filled++
		}
		toRight := isBlank(cellAt(cells, first)) && len(cells) > first+3
		last := lastFilled(cells) + 1
		if !toRight && last >= len(headings) {
			continue
		}
		usual := kinds()
		lacksPlace := !toRight && usual[first] == kInt && sameKind(kindOf(cellAt(cells, first)), usual[first+1])
		if !toRight && !lacksPlace || len(cells) <= len(usual) && fitsKinds(cells, usual, len(usual)) {
			continue
		}
		if lacksPlace {
			if try := slices.Insert(slices.Clone(cells[:last]), min(first, last), ""); fitsMoved(try, usual, times, min(3, wholeRow(usual))) {
				left[i] = try
			}
		} else if try := slices.Delete(slices.Clone(cells), first, first+1); fitsMoved(try[:min(len(try), len(headings))], usual, times, 4) { // a remark may stand behind
			right[i] = try
		}
	}
	if blank*3 > filled {
		clear(right)
	}
	if len(left)*3 > blank+filled {
		clear(left)
	}
	maps.Copy(right, left)
	return g.mendRows(right)
}

// openGap puts a blank cell before the time of the rows that lack the one before it: all rows
// end in their only time, most a cell further to the right than the others, where these
// have words, "3, Jo Lee, Vale AC, 18:20" above "4, Al Roe, 18:31". The table has no heading.
// It returns the number of rows.
func (g *grid) openGap() (mended int) {
	ends, words := map[int]int{}, map[int]int{} // by where rows end, and of these those with words before the time
	rows, last := 0, 0
	end := func(cells []string) int { // of the only time, as last cell; -1 for none
		k := lastFilled(cells)
		for i := range k {
			if kindOf(cells[i]) == kClock {
				return -1
			}
		}
		if k < 2 || kindOf(cells[k]) != kClock {
			return -1
		}
		return k
	}
	for i := range g.len() {
		_, cells := g.at(i)
		k := end(cells)
		if k > 0 && kindOf(cells[k-1]) == kText {
			words[k]++
		}
		if rowFilled(cells) < 3 {
			continue
		}
		rows++
		if k > 0 {
			ends[k]++
			last = max(last, k)
		}
	}
	if last < 3 || ends[last] < 2 || ends[last-1] < 2 || ends[last]+ends[last-1] < rows*9/10 || ends[last]*4 < rows || words[last]*10 < ends[last]*9 {
		return 0
	}
	return g.mend(func(_, _ int, cells []string) ([]string, bool) {
		if end(cells) != last-1 {
			return nil, false
		}
		return slices.Insert(slices.Clone(cells), last-1, ""), true
	})
}

// lastFilled is the index of the last cell that is not blank, -1 for none.
func lastFilled(cells []string) int {
	k := len(cells) - 1
	for k >= 0 && isBlank(cells[k]) {
		k--
	}
	return k
}

// sameKind says whether a cell is of its column's kind; times may have a dot.
func sameKind(k, usual kind) bool { return k == usual || usual == kClock && k == kDecimal }

// hoursByDots is a time with hours among those with dots, which looks like a date: 1.06.55.
func hoursByDots(c string, usual kind) bool {
	c = trim(c)
	return usual == kDecimal && len(c) == 7 && c[0] >= '1' && c[0] <= '5' && c[1] == '.' && c[4] == '.' && digitsOnly(c[2:4]+c[5:])
}

// timedColumns says which columns hold a time, or a part of one, by their headings.
func timedColumns(lex *lexicon, headings []string) []bool {
	times := make([]bool, len(headings))
	for i, h := range headings {
		times[i] = h != "" && (unitHeading(h) != 0 || lex.read(h).meaning.isTime())
	}
	return times
}

// fitsMoved says whether a row that was moved fits the columns, so many cells or more with
// what is usual there, one of them a time or a part of one.
func fitsMoved(cells []string, usual []kind, times []bool, least int) bool {
	same, clock := 0, false
	for j, c := range cells {
		if k := kindOf(c); j < len(usual) && k != kBlank && (sameKind(k, usual[j]) || hoursByDots(c, usual[j])) {
			same++
			clock = clock || k == kClock || k == kDecimal || times[j]
		}
	}
	return same >= least && clock && fitsKinds(cells, usual, len(usual))
}

// shiftedClocks says whether nine in ten of the cells that stand under a heading, once
// each row that is too long has lost a cell before it, are times.
func (g *grid) shiftedClocks(headings []string, after, column int) bool {
	clocks, filled := 0, 0
	for i := 0; i < g.len() && filled < profileRows; i++ {
		row, cells := g.at(i)
		if row <= after || len(cells) != len(headings)+1 || isBlank(cells[column+1]) {
			continue
		}
		if filled++; kindOf(cells[column+1]) == kClock {
			clocks++
		}
	}
	return clocks > 0 && clocks*10 >= filled*9
}

// joinCells puts the comma back between the cell that cut gives for a row, -1 for
// none, and the one after it. It returns the number of rows mended.
func (g *grid) joinCells(cut func(row int, cells []string) int) (mended int) {
	return g.mend(func(_, row int, cells []string) (joined []string, ok bool) {
		at := cut(row, cells)
		if at < 0 {
			return nil, false
		}
		return slices.Concat(cells[:at], []string{cells[at] + "," + cells[at+1]}, cells[at+2:]), true
	})
}

// usualKinds is what nine of ten filled cells of a column are, but for some odd ones, of the
// rows that have at most as many cells as there are headings, and at least some number; kBlank
// where that is no one kind.
func (g *grid) usualKinds(headings []string, after, least, odd int) []kind {
	counts := make([][kinds]int, len(headings))
	filled := make([]int, len(headings))
	for i, rows := 0, 0; i < g.len() && rows < 4*profileRows; i++ {
		row, cells := g.at(i)
		if row <= after || len(cells) < least || len(cells) > len(headings) {
			continue
		}
		rows++
		for j, c := range cells {
			if k := kindOf(c); k != kBlank && k != kStatus {
				counts[j][k]++
				filled[j]++
			}
		}
	}
	usual := make([]kind, len(headings))
	for j := range counts {
		for k := range counts[j] {
			if filled[j] > 2 && counts[j][k] > 2 && counts[j][k]*10 >= (filled[j]-odd)*9 {
				usual[j] = kind(k)
			}
		}
		if times := counts[j][kClock] + counts[j][kDecimal]; usual[j] == kBlank && counts[j][kClock] > 0 && times > 2 && times*10 >= (filled[j]-odd)*9 {
			usual[j] = kClock // some with a dot
		}
	}
	return usual
}

// mostlyUsual is what the columns hold but for an odd cell each, or else what they hold in the rows that reach the last
// of them.
func (g *grid) mostlyUsual(headings []string, after int) []kind {
	return orKinds(g.usualKinds(headings, after, 0, 1), g.usualKinds(headings, after, len(headings), 1))
}

// orKinds puts others in the place of kinds that are not known.
func orKinds(usual, others []kind) []kind {
	for i, k := range others {
		if usual[i] == kBlank {
			usual[i] = k
		}
	}
	return usual
}

// cutAt finds the cell that belongs together with the one after it, -1 where that
// may be several or none. A space after the comma says that it stood in a text; so
// does a name of one word.
func cutAt(cells []string, usual []kind, name int) int {
	if fitsKinds(cells, usual, len(usual)) {
		return -1 // nothing is cut: the last cell is a column without a heading
	}
	var fits, spaced []int
	for at := range usual {
		if isBlank(cells[at]) || isBlank(cells[at+1]) || usual[at] != kText && usual[at] != kBlank {
			continue
		}
		if k := kindOf(cells[at]); k != kText && k != kGroup {
			continue
		}
		switch kindOf(cells[at+1]) {
		case kClock, kDecimal, kInt, kDate:
			continue // a time or a place, no end of a name
		}
		if !hasLetter(cells[at+1]) {
			continue // nor is a time that is typed otherwise, 19-02
		}
		if !fitsKinds(cells, usual, at) {
			continue
		}
		fits = append(fits, at)
		if strings.HasPrefix(cells[at+1], " ") {
			spaced = append(spaced, at)
		}
	}
	switch {
	case len(spaced) == 1:
		return spaced[0]
	case len(fits) == 1:
		return fits[0]
	}
	for _, at := range fits {
		if at == name && !strings.Contains(trim(cells[at]), " ") {
			return at
		}
	}
	return -1
}

// fitsKinds says whether every cell is of its column's kind if that at an index and
// the one after it are one text; the index of the last cell joins none.
func fitsKinds(cells []string, usual []kind, at int) bool {
	for j, c := range cells {
		k, col := kindOf(c), j
		switch {
		case j == at || j == at+1:
			continue
		case j > at:
			col--
		}
		if k != kBlank && k != kStatus && usual[col] != kBlank && usual[col] != k && !(usual[col] == kClock && (k == kDecimal || k == kInt)) && !(usual[col] == kGroup && k == kSex) && !hoursByDots(c, usual[col]) {
			return false
		}
	}
	return true
}

// rejoinFractions puts tenths or hundredths back behind the comma that divides them
// from the seconds, 24:31,5 in a file divided by commas: every row with a time has a
// cell too many, and behind the time stand figures, always as many, which differ and
// follow no order. Under a heading of ages or other numbers they are its own, where none stand behind them.
func (g *grid) rejoinFractions(lex *lexicon, headings []string, after int) (mended int) {
	clock := -1
	for i, h := range headings {
		if lex.read(h).meaning.isTime() {
			if clock >= 0 {
				return 0
			}
			clock = i
		}
	}
	if clock < 0 {
		return 0
	}
	digits, rows, rising, last := 0, 0, 0, ""
	own, behind := false, 0 // figures of the next heading, were the times joined
	if clock+1 < len(headings) {
		switch lex.read(headings[clock+1]).meaning {
		case Age, BirthYear, Number, Position, SexPlace, GroupPlace, TotalRuns, Points:
			own = true
		}
	}
	distinct := map[string]bool{}
	for i := range g.refs {
		row, cells := g.at(i)
		if row <= after || kindOf(cellAt(cells, clock)) != kClock {
			continue
		}
		if digitsOnly(cellAt(cells, clock+2)) {
			behind++
		}
		f := cellAt(cells, clock+1)
		if len(cells) != len(headings)+1 || !digitsOnly(f) || len(f) > 3 || digits > 0 && len(f) != digits || strings.ContainsAny(cells[clock], ".,") {
			return 0
		}
		digits = len(f)
		distinct[f] = true
		if rows++; f >= last {
			rising++
		}
		last = f
	}
	// A place within a group is never 0, and seldom seven or more.
	if own && behind*2 < rows || rows < 8 || len(distinct) < 4 || rising*10 > rows*8 || !distinct["0"] && digits == 1 && len(distinct) < 7 {
		return 0
	}
	return g.joinCells(func(row int, cells []string) int {
		if row > after && kindOf(cellAt(cells, clock)) == kClock {
			return clock
		}
		return -1
	})
}

// holdsWords says whether no value of a column has a figure.
func (g *grid) holdsWords(column, after int) bool {
	for i := range g.refs {
		if row, cells := g.at(i); row > after && !hasNoDigit(cellAt(cells, column)) {
			return false
		}
	}
	return true
}

// neverBoth says whether no row fills two columns, and see takes what each that fills one of
// them has in the one and in the other.
func (g *grid) neverBoth(first, second, after int, see func(a, b string) bool) bool {
	for i := range g.refs {
		row, cells := g.at(i)
		a, b := trim(cellAt(cells, first)), trim(cellAt(cells, second))
		if row <= after || a == "" && b == "" {
			continue
		}
		if a != "" && b != "" || !see(a, b) {
			return false
		}
	}
	return true
}

// nameFromBeside puts the name of a second column of names into the first on the rows that
// have none there, where no row has a name in both. It returns the number of those rows.
func (g *grid) nameFromBeside(lex *lexicon, headings []string, after int) (filled int) {
	var columns []int
	for i, h := range headings {
		if guess := lex.read(h); guess.known && guess.meaning == Name && g.holdsWords(i, after) {
			columns = append(columns, i)
		}
	}
	if len(columns) != 2 {
		return 0
	}
	first, second := columns[0], columns[1]
	one, other := 0, 0
	apart := g.neverBoth(first, second, after, func(a, b string) bool {
		if a != "" {
			one++
		} else if kindOf(b) == kText {
			other++
		}
		return true
	})
	if !apart || one < 3 || other == 0 {
		return 0
	}
	return g.mend(func(_, row int, cells []string) ([]string, bool) {
		if row <= after || trim(cellAt(cells, first)) != "" || kindOf(cellAt(cells, second)) != kText {
			return nil, false
		}
		cells = slices.Clone(cells)
		cells[first] = cells[second]
		return cells, true
	})
}

// fractionHeadings head a column of parts of a second; the value is how many digits these have.
// Common practice, no source.
var fractionHeadings = unitsOf(map[byte]string{
	1: "1/10 1/10s tenth tenths 10th 10ths zehntel dixieme dixiemes decimas decimi tienden tiondelar tideler tiendedele dziesiate desetiny",
	2: "1/100 1/100s hundredth hundredths 100th 100ths hundertstel centieme centiemes centesimas centesimi honderdsten hundradelar hundredeler hundrededele setne setiny",
	3: "1/1000 thousandth thousandths milliseconds millis tausendstel milliemes milesimas millesimi duizendsten",
}, nil)

// joinFractions writes parts of a second behind the seconds, or the time, in the column before
// them, where all are of as many digits as their heading says. It returns the number of rows.
func (g *grid) joinFractions(headings []string, after int) (joined int) {
	at := slices.IndexFunc(headings, func(h string) bool { return len(h) < 20 && fractionHeadings[fold(h)] > 0 })
	if at < 1 {
		return 0
	}
	digits := int(fractionHeadings[fold(headings[at])])
	seconds := unitHeading(headings[at-1]) == 's'
	for i := range g.len() {
		row, cells := g.at(i)
		if c := trim(cellAt(cells, at)); row > after && c != "" && digitsOnly(c) && len(c) > digits {
			return 0
		}
	}
	return g.mend(func(_, row int, cells []string) ([]string, bool) {
		whole, part := trim(cellAt(cells, at-1)), trim(cellAt(cells, at))
		if row <= after || part == "" || !digitsOnly(part) || !(seconds && whole != "" && digitsOnly(whole) || kindOf(whole) == kClock && !strings.ContainsAny(whole, ".,")) {
			return nil, false
		}
		w := slices.Clone(cells)
		w[at-1] = whole + "." + strings.Repeat("0", digits-len(part)) + part
		return w, true
	})
}

// timeFromBeside puts the time of a second column into the first on the rows that have none
// there, where every row has a time in one of the two and none in both, and their headings are
// ways of taking part or sexes: "Run" and "Walk", "Men's time" and "Ladies' time". It returns
// the number of those rows.
func (g *grid) timeFromBeside(lex *lexicon, headings []string, after int) (filled int) {
	var columns []int
	for i, h := range headings {
		if saysOneOf(h) {
			columns = append(columns, i)
		}
	}
	if len(columns) != 2 {
		return 0
	}
	first, second := columns[0], columns[1]
	one, other := 0, 0
	apart := g.neverBoth(first, second, after, func(a, b string) bool {
		switch {
		case kindOf(a) == kClock:
			one++
		case kindOf(b) == kClock:
			other++
		default:
			return kindOf(a+b) == kStatus
		}
		return true
	})
	if !apart || one == 0 || other == 0 || one+other < 3 {
		return 0
	}
	sexes := [2]string{tickHeading(withoutTimeWords(headings[first])), tickHeading(withoutTimeWords(headings[second]))}
	if sexes[0] != "" && sexes[1] != "" {
		headings[first], headings[second] = "Time", "Sex"
	}
	g.mend(func(_, row int, cells []string) ([]string, bool) {
		w := slices.Clone(cells)
		for len(w) <= second {
			w = append(w, "")
		}
		sex := sexes[0]
		switch {
		case row <= after || isBlank(w[first]) && isBlank(w[second]):
			return nil, false
		case isBlank(w[first]):
			w[first], w[second], sex = w[second], "", sexes[1]
		}
		if headings[second] == "Sex" {
			w[second] = sex
		}
		return w, true
	})
	return other
}

// withoutTimeWords leaves out the words of a heading that stand for times.
func withoutTimeWords(heading string) string {
	return strings.Join(slices.DeleteFunc(strings.Fields(fold(heading)), func(w string) bool { return headingWords[w]&cTime != 0 }), " ")
}

// saysOneOf says whether a heading is for the times of those who ran, who walked, or of one sex.
func saysOneOf(heading string) bool {
	found := false
	for _, w := range strings.Fields(strings.ReplaceAll(fold(heading), "/", " ")) {
		switch {
		case waysOfTime[w], len(w) > 3 && (menWords[w] || womenWords[w]):
			found = true
		case headingWords[w]&cTime == 0:
			return false
		}
	}
	return found
}

// waysOfTime are words for running and walking over their times. Common practice, no source.
var waysOfTime = set("run running runners runner walk walking walkers walker jog jogging nordic laufen lauf laufer gehen walken walker marche marcheurs course coureurs marcha caminata carrera camminata corsa wandelen lopen hardlopen ga gang gaende lopning lob marsz bieg")
