package sheet

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
)

// across turns a table with a runner on each row and a run in each column into
// one table for each run: "Name | 3 Jan | 10 Jan", the times in the cells. A run
// may take several columns under its date, "Pos | Time". Each table keeps the
// columns that say who somebody is, and of the runs only its own, whose heading
// becomes a title of the table. nil where it is no such table.
func (t table) across(lex *lexicon) []table {
	if t.grid == nil {
		return nil
	}
	t.grid = t.grid.namesFromAbove(lex)
	if over := t.nameless(lex); over != "" {
		t.facts = append(slices.Clone(t.facts), over)
	}
	heading, runs := -1, []acrossRun(nil)
	var apart []acrossRun // columns of points under the days once more
	looked := 0
	for i := 0; i < t.grid.len() && looked < headingLooks && heading < 0; i++ {
		_, cells := t.grid.at(i)
		if rowFilled(cells) == 0 {
			continue
		}
		looked++
		cols := runsAcross(lex, cells)
		if t.figuresOver(i, cols) {
			cols = nil
		}
		if len(cols) > 1 {
			t.coursesOver(lex, i, cols)
		}
		if cols == nil {
			cols = t.runsAbove(lex, i)
		}
		if cols == nil {
			cols = t.coursesAcross(lex, i)
		}
		if cols == nil {
			cols = distancesAcross(lex, cells)
		}
		if len(cols) >= 2 && !t.timesBelow(i, cols) {
			cols, apart = t.withTimes(i, cols)
		}
		if len(cols) >= 2 && t.timesBelow(i, cols) {
			heading, runs = i, cols
		}
	}
	if heading < 0 {
		return nil
	}
	t.coursesBesideDays(lex, heading, runs)
	isRun, said := map[int]bool{}, map[int]bool{}
	for _, r := range runs {
		for c := r.from; c < r.to; c++ {
			isRun[c] = true
		}
		for _, i := range r.saidIn {
			said[i] = true
		}
	}
	_, names := t.grid.at(heading)
	roster := map[int]bool{}
	if !runs[0].names {
		roster = t.rosterNumbers(lex, heading, isRun)
	}
	for _, i := range slices.Sorted(maps.Keys(said)) { // what stands left of the dates in their row
		_, cells := t.grid.at(i)
		if text := titleText(cells[:min(len(cells), runs[0].from)]); text != "" && len(findDates(text)) == 0 && !lex.read(text).known {
			t.facts = append(slices.Clone(t.facts), text)
		}
	}
	var out []table
	sums := t.sumsBelow(heading, runs)
	totals := t.totalsBeside(lex, heading, isRun)
	for _, r := range apart {
		for c := r.from; c < r.to; c++ {
			totals[c] = true
		}
	}
	for _, run := range runs {
		g := t.grid.fresh()
		filled := 0
		for i := 0; i < t.grid.len(); i++ {
			row, cells := t.grid.at(i)
			if i < heading && !said[i] {
				g.add(row, cells)
				continue
			}
			if i < heading {
				continue // the row of dates or courses, which the table's title says
			}
			if c := cellAt(cells, run.time); i > heading && (isBlank(c) || isAway(c) || i >= sums || run.from+1 == run.to && isDash(c)) {
				continue // this runner was not there
			}
			w := append([]string(nil), cells...)
			for c := range w {
				if roster[c] || totals[c] || isRun[c] && (c < run.from || c >= run.to || i == heading && run.from+1 == run.to) {
					w[c] = ""
				}
			}
			if i == heading && run.from+1 == run.to {
				for len(w) <= run.from {
					w = append(w, "")
				}
				w[run.from] = "Time"
			} else if i > heading {
				filled++
			}
			g.add(row, w)
		}
		if filled == 0 {
			continue
		}
		p := t
		p.src, p.grid = g, g
		p.run, p.runFrom = run.title, "heading of column "+letters(run.from)
		if p.run == "" {
			p.run = strings.Join(strings.Fields(unmangle(cellAt(names, run.from))), " ")
		}
		p.runCourse = run.course
		out = append(out, p)
	}
	return out
}

// totalsBeside finds the columns of times beside those of the runs: the total, the best or the mean
// of them, whatever they are called, and none of one day.
func (t table) totalsBeside(lex *lexicon, heading int, isRun map[int]bool) map[int]bool {
	filled, clocks := map[int]int{}, map[int]int{}
	for i := heading + 1; i < min(t.grid.len(), heading+1+profileRows); i++ {
		_, cells := t.grid.at(i)
		for c, text := range cells {
			if isRun[c] || isBlank(text) {
				continue
			}
			if filled[c]++; kindOf(text) == kClock {
				clocks[c]++
			}
		}
	}
	_, names := t.grid.at(heading)
	totals := map[int]bool{}
	for c, n := range clocks {
		if g := lex.read(cellAt(names, c)); 2*n > filled[c] && !(g.known && g.meaning == PersonalBest) {
			totals[c] = true
		}
	}
	return totals
}

// sumsBelow is the index of the first of the rows at the foot of a table with a run in each column that
// say the best, the slowest or the mean time of each run, or how many ran, whatever they are called: in all of
// them, two runs at least, it is that of the rows above. Beyond the table where there are none.
func (t table) sumsBelow(heading int, runs []acrossRun) (first int) {
	first = t.grid.len()
	const checked = 8 // rows at the foot
	for i := t.grid.len() - 1; i > heading+3 && i >= t.grid.len()-checked; i-- {
		_, cells := t.grid.at(i)
		filled, sums := 0, 0
		for _, r := range runs {
			c := trim(cellAt(cells, r.time))
			if c == "" {
				continue
			}
			filled++
			if kindOf(c) == kInt && t.counts(heading+1, i, r.time, int(looseNumber(c))) {
				sums++
				continue
			}
			for to := i; kindOf(c) == kClock && to > i-4; to-- { // below other sums
				if t.sumsUp(heading+1, to, r.time, looseNumber(c)) {
					sums++
					break
				}
			}
		}
		switch {
		case filled >= 2 && sums == filled:
			first = i
		case filled > 0 && slices.ContainsFunc(runs, func(r acrossRun) bool { return kindOf(cellAt(cells, r.time)) == kClock }):
			return first
		}
	}
	return first
}

// counts says whether a number is that of the times of a column in some rows, perhaps without the last of them, which
// may be sums themselves.
func (t table) counts(from, to, column, n int) bool {
	times := t.timesIn(from, to, column)
	return times > 0 && n <= times && n >= times-3 && (n == times || n == t.timesIn(from, to-(times-n), column))
}

// sumsUp says whether a time is the least, the greatest or the mean of those of a column in some
// rows, two or more, to the second.
func (t table) sumsUp(from, to, column int, time float64) bool {
	n, sum, least, most := 0, 0.0, 0.0, 0.0
	for i := from; i < to; i++ {
		_, cells := t.grid.at(i)
		c := trim(cellAt(cells, column))
		if kindOf(c) != kClock || isAway(c) {
			continue
		}
		v := looseNumber(c)
		if n++; n == 1 {
			least, most = v, v
		}
		sum, least, most = sum+v, min(least, v), max(most, v)
	}
	near := func(v float64) bool { return math.Abs(v-time) <= 1 }
	return n >= 2 && (time == least || time == most || near(sum/float64(n)))
}

// nameless finds a row of dates over times whose first column, of names, has no heading or the
// course for one, and gives it the heading; it returns what stood there.
func (t table) nameless(lex *lexicon) (over string) {
	for i := 0; i < t.grid.len() && i < headingLooks; i++ {
		_, cells := t.grid.at(i)
		if len(cells) < 3 || len(cells) > narrow {
			continue
		}
		runs := daysBehind(cells)
		first := trim(cells[0])
		label := lex.read(first).meaning == Date // of the days behind it
		if t.headsNamesBelow(lex, i) {
			continue // the heading stands below the days
		}
		if len(runs) < 2 || len(scanDates(first, true)) > 0 || first != "" && !label && (lex.read(first).known || kindOf(first) != kText) || !t.timesBelow(i, runs) {
			continue
		}
		named, rows := 0, 0
		for k := i + 1; k < min(t.grid.len(), i+profileRows); k++ {
			if _, below := t.grid.at(k); rowFilled(below) > 1 && !isTotal(fold(cellAt(below, 0))) {
				if rows++; looksNamed(trim(cellAt(below, 0))) {
					named++
				}
			}
		}
		if named < 2 || 3*named < 2*rows {
			continue
		}
		t.grid.mend(func(k, _ int, cells []string) ([]string, bool) {
			if k != i {
				return nil, false
			}
			w := slices.Clone(cells)
			w[0] = "Name"
			return w, true
		})
		if label {
			return ""
		}
		return first
	}
	return ""
}

// headsNamesBelow says whether one of the two rows below a row has a heading of names in its first cell.
func (t table) headsNamesBelow(lex *lexicon, i int) bool {
	for k := i + 1; k < min(t.grid.len(), i+3); k++ {
		if _, below := t.grid.at(k); lex.read(cellAt(below, 0)).meaning.isName() {
			return true
		}
	}
	return false
}

// daysBehind are the runs whose dates stand behind the first cell of a row, nil where it has
// times or whole numbers there.
func daysBehind(cells []string) (runs []acrossRun) {
	for c := 1; c < len(cells); c++ {
		switch k := kindOf(cells[c]); {
		case k == kBlank:
		case k == kClock, k == kInt:
			return nil
		case len(scanDates(cells[c], true)) > 0:
			runs = append(runs, acrossRun{from: c, to: c + 1, time: c})
		}
	}
	return runs
}

// namesFromAbove puts the headings that say who somebody is into the row of
// "Pos | Time | Pos | Time" where they stand in the row of dates above it, and into a row of
// days where they stand in the row of courses above it.
func (g *grid) namesFromAbove(lex *lexicon) *grid {
	for i := 1; i < g.len() && i < headingLooks; i++ {
		_, cells := g.at(i)
		_, above := g.at(i - 1)
		if timeHeadings(lex, cells) < 2 && !daysUnderNames(lex, above, cells) {
			continue
		}
		joined := slices.Clone(cells)
		moved := false
		for c := range min(len(cells), len(above)) {
			switch m := lex.read(above[c]); {
			case !isBlank(cells[c]):
			case m.meaning.isName(), m.meaning == Sex, m.meaning == AgeGroup, m.meaning == Club:
				joined[c], moved = above[c], true
			}
		}
		if !moved {
			return g
		}
		out := g.fresh()
		for k := 0; k < g.len(); k++ {
			row, w := g.at(k)
			switch k {
			case i:
				w = joined
			case i - 1:
				w = slices.Clone(w)
				for c := range min(len(w), len(joined)) {
					if joined[c] == w[c] {
						w[c] = ""
					}
				}
			}
			out.add(row, w)
		}
		return out
	}
	return g
}

// daysUnderNames says whether a row is of nothing but two or more days, under a row that says
// what stands in the columns before them: "Name | Alder Bank | Ember Quay" above the days.
func daysUnderNames(lex *lexicon, above, cells []string) bool {
	days := 0
	for c, cell := range cells {
		switch {
		case isBlank(cell):
		case kindOf(cell) == kDate && !isBlank(cellAt(above, c)) && !lex.read(above[c]).known:
			days++
		default:
			return false
		}
	}
	return days >= 2
}

// timeHeadings counts the headings of times of a row.
func timeHeadings(lex *lexicon, cells []string) (n int) {
	for _, c := range cells {
		if g := lex.read(c); g.known && g.meaning.isTime() && kindOf(c) == kText {
			n++
		}
	}
	return n
}

// acrossRun is a run that stands in columns from … to-1 of a table.
type acrossRun struct {
	from, to int
	time     int    // the column of its times
	title    string // its date in words, where the heading alone does not say it
	course   string // its course, as a title line; "" none
	names    bool   // its columns have the names too: only places stand before all runs
	saidIn   []int  // rows above the heading that say date or course
}

// runsAcross gives the columns of a heading row whose headings are dates, where
// another heading says who and none says time, or all of these do, "Time 3 January".
func runsAcross(lex *lexicon, cells []string) (runs []acrossRun) {
	// Most rows are no headings: dates and times, which are quick to see, first, and
	// before them times with a colon, which most rows have.
	for _, c := range cells {
		if strings.IndexByte(c, ':') > 0 && kindOf(c) == kClock {
			return nil
		}
	}
	for i, c := range cells {
		if !strings.ContainsAny(c, "0123456789") {
			continue
		}
		switch {
		case kindOf(c) == kClock:
			return nil
		case len(scanDates(c, true)) > 0:
			runs = append(runs, acrossRun{from: i, to: i + 1, time: i})
		}
	}
	if len(runs) < 2 {
		return nil
	}
	who, times := false, 0
	for i, c := range cells {
		if isBlank(c) {
			continue
		}
		switch g := lex.read(c); {
		case g.known && g.meaning.isTime():
			if times++; !slices.ContainsFunc(runs, func(r acrossRun) bool { return r.from == i }) {
				return nil
			}
		case g.known && g.meaning.isName():
			who = true
			runs = slices.DeleteFunc(runs, func(r acrossRun) bool { return r.from == i })
		}
	}
	if !who || times > 0 && times < len(runs) {
		return nil
	}
	return runs
}

// distancesAcross gives the columns of a heading row whose headings are words for a time and distances,
// two or more that differ, "Time 5 km | Time 10 km", where another heading says who and none
// says time alone.
func distancesAcross(lex *lexicon, cells []string) (runs []acrossRun) {
	who, seen := false, map[float64]bool{}
	for i, c := range cells {
		if isBlank(c) {
			continue
		}
		if hasNoDigit(c) {
			g := lex.read(c)
			if g.known && g.meaning.isTime() {
				return nil
			}
			who = who || g.known && g.meaning.isName()
			continue
		}
		m, from, to, ok := findDistance(c)
		if !ok || m < 1000 {
			continue
		}
		rest := fold(c[:from] + " " + c[to:])
		if headingWords[rest]&cTime == 0 || seen[m] {
			return nil // a split, or the pace of one
		}
		seen[m] = true
		runs = append(runs, acrossRun{from: i, to: i + 1, time: i, title: trim(c[from:to])})
	}
	if !who || len(runs) < 2 {
		return nil
	}
	return runs
}

// rowsAbove is how many rows above a heading may say which run is in which
// column: date, course, month, the number of the week.
const rowsAbove = 4

// runsAbove finds the runs of a heading row whose columns are told apart by the
// rows above it: a date over "Pos | Time", a date and a course over a column
// without a heading, a month over the days of its runs.
func (t table) runsAbove(lex *lexicon, heading int) (runs []acrossRun) {
	_, cells := t.grid.at(heading)
	first := -1 // the first column after those that say who somebody is
	var names []int
	for i, c := range cells {
		switch g := lex.read(c); {
		case strings.IndexByte(c, ':') > 0 && kindOf(c) == kClock:
			return nil
		case g.known && g.meaning.isName():
			names = append(names, i)
			if first < 0 || i <= first+3 {
				first = i + 1
			}
		}
	}
	if first < 0 {
		return nil
	}
	if runs = t.daysUnderMonths(lex, heading, first); len(runs) >= 2 {
		return runs
	}
	// A row above with a date over each run; where each has names of its own, from the first
	// column on.
	for up := heading - 1; up >= 0 && up >= heading-rowsAbove; up-- {
		_, above := t.grid.at(up)
		for from := range 2 {
			runs = datesOver(above, from, up)
			if len(runs) < 2 || from == 0 && runs[0].from > 0 || t.figuresOver(up, runs) || slices.ContainsFunc(above, isFigureOfResult) || isResultRow(above, names) {
				continue
			}
			if !divideColumns(lex, cells, runs, names) || !runs[0].names && first > runs[0].from || runs[0].names && names[0] < runs[0].from {
				if from == 0 {
					continue
				}
				return nil
			}
			t.coursesOver(lex, heading, runs)
			return runs
		}
	}
	return nil
}

// datesOver are the runs whose dates stand in a row from a column on.
func datesOver(above []string, from, row int) (runs []acrossRun) {
	for c := from; c < len(above); c++ {
		text := trim(above[c])
		if text == "" || !strings.ContainsAny(text, "0123456789") || len(scanDates(text, true)) == 0 {
			continue
		}
		if n := len(runs); n > 0 && runs[n-1].title == text {
			continue // merged over the columns of the run
		}
		runs = append(runs, acrossRun{from: c, title: text, saidIn: []int{row}})
	}
	return runs
}

// divideColumns gives each run its columns of a heading row, up to those of the next; false
// where one has no times, or some have names of their own and others none.
func divideColumns(lex *lexicon, headings []string, runs []acrossRun, names []int) bool {
	width := runs[1].from - runs[0].from
	for k := range runs {
		r := &runs[k]
		r.to = r.from + width
		if k+1 < len(runs) {
			r.to = min(r.to, runs[k+1].from)
		}
		if r.time = timeColumn(lex, headings, r.from, r.to); r.time < 0 {
			return false
		}
		r.names = slices.ContainsFunc(names, func(c int) bool { return c >= r.from && c < r.to })
		if r.names != runs[0].names {
			return false
		}
	}
	return true
}

// isFigureOfResult says whether a cell is a time, a gap or a percentage, as no row of days
// has: 6:16, +11:52, 66.05 %.
func isFigureOfResult(cell string) bool {
	if _, gap := gapMS(cell); gap {
		return true
	}
	k := kindOf(cell)
	return k == kPercent || k == kClock && strings.IndexByte(cell, ':') > 0
}

// figuresOver says whether figures like those of a row stand in the columns of all runs
// of a row just above it too: the row is one of results, whose 29.1 is no 29 January
// though its runner be "No name", and a heading below it that of the next page.
func (t table) figuresOver(row int, runs []acrossRun) bool {
	for up := row - 1; up >= 0 && up >= row-rowsAbove; up-- {
		_, above := t.grid.at(up)
		if !slices.ContainsFunc(runs, func(r acrossRun) bool {
			switch kindOf(cellAt(above, r.from)) {
			case kDecimal, kClock, kDate:
				return false
			}
			return true
		}) {
			return true
		}
	}
	return false
}

// isResultRow says whether a row has a place and, under a heading of names, somebody's: its 23.08
// is no 23 August.
func isResultRow(cells []string, names []int) bool {
	return placeKind(trim(cellAt(cells, 0))) == kInt && slices.ContainsFunc(names, func(c int) bool { return looksNamed(trim(cellAt(cells, c))) })
}

// timeColumn is the column of a run that holds its times: the one that says so, or
// the only one; -1 for none.
func timeColumn(lex *lexicon, cells []string, from, to int) int {
	for c := from; c < to; c++ {
		if g := lex.read(cellAt(cells, c)); g.known && g.meaning.isTime() {
			return c
		}
	}
	if to == from+1 {
		return from
	}
	return -1
}

// coursesOver gives runs the courses that a row above the heading says, under or
// over the row of their dates: "Venue | | Alder Bank | Ember Quay".
func (t table) coursesOver(lex *lexicon, heading int, runs []acrossRun) {
	for up := heading; up >= 0 && up >= heading-rowsAbove; up-- {
		_, above := t.grid.at(up)
		if slices.Contains(runs[0].saidIn, up) {
			continue
		}
		label := false
		for c := 0; c < runs[0].from && c < len(above); c++ {
			f := fold(above[c])
			g := lex.read(above[c])
			label = label || g.known && g.meaning == Course || isVenueLabel(f)
		}
		if !label {
			over, alone := placesOver(lex, above, runs)
			if !over || (up == heading || !alone) && !t.namePlaces(lex, up, runs) {
				continue
			}
		}
		for k := range runs {
			if text := trim(cellAt(above, runs[k].from)); kindOf(text) == kText {
				runs[k].course = "Course: " + strings.Join(strings.Fields(unmangle(text)), " ")
				runs[k].saidIn = append(runs[k].saidIn, up)
			}
		}
		return
	}
}

// coursesBesideDays gives runs the courses that their own headings say beside the day, "Alder Bank, Sat 3 Jan 2026", where
// each says one and half of them end as places do.
func (t table) coursesBesideDays(lex *lexicon, heading int, runs []acrossRun) {
	_, cells := t.grid.at(heading)
	texts, land := make([]string, len(runs)), 0
	for k, r := range runs {
		text := cellAt(cells, r.from)
		name := besideDate(text, dateMarks)
		if r.course != "" || r.to != r.from+1 || len(scanDates(text, true)) == 0 || len(Slug(name)) < 3 || !hasNoDigit(name) || isSection(name) || saysField(name) || isRemark(name) || lex.read(name).known {
			return
		}
		if texts[k] = name; endsInLand(name) {
			land++
		}
	}
	if land == 0 || 2*land < len(runs) {
		return
	}
	for k := range runs {
		runs[k].course = "Course: " + texts[k]
	}
}

// namePlaces says whether the cells of a row in the columns of runs are names of two words or more, and
// half of them called after the land, or none of the lines above names another course.
func (t table) namePlaces(lex *lexicon, row int, runs []acrossRun) bool {
	_, cells := t.grid.at(row)
	land := 0
	for _, r := range runs {
		words := strings.Fields(fold(cellAt(cells, r.from)))
		if len(words) < 2 {
			return false
		}
		if landWords[words[len(words)-1]] {
			land++
		}
	}
	if 2*land >= len(runs) {
		return true
	}
	for i := range row {
		if _, above := t.grid.at(i); len(courseWords(titleText(above), lex, &courseBook{})) > 0 {
			return false
		}
	}
	return len(courseWords(t.tab, lex, &courseBook{})) == 0
}

// placesOver says whether a row above the days has the name of a place over each, and not all the
// same, and whether it has nothing else: "| Moss Common | Alder Bank | Moss Common".
func placesOver(lex *lexicon, above []string, runs []acrossRun) (over, alone bool) {
	texts := map[string]bool{}
	for _, r := range runs {
		text := trim(cellAt(above, r.from))
		if _, weekday := weekdayNames[fold(text)]; weekday || kindOf(text) != kText || strings.ContainsAny(text, "0123456789:") || isCondition(text) || saysField(text) || isSection(text) || lex.read(text).known || len(fold(plainWords(text))) < 3 {
			return false, false
		}
		texts[fold(text)] = true
	}
	return len(texts) > 1, rowFilled(above) == len(runs)
}

// daysUnderMonths finds runs headed by the day of the month alone, "7", "14th" or
// "Sat 7", where the row above says the month over them, or the title or the tab
// says one month for all.
func (t table) daysUnderMonths(lex *lexicon, heading, first int) (runs []acrossRun) {
	_, cells := t.grid.at(heading)
	var days []int
	for c := first; c < len(cells); c++ {
		day, ok := dayAlone(cells[c])
		if !ok {
			if !isBlank(cells[c]) && len(runs) > 0 {
				break // "Runs | Best"
			}
			continue // a column that says who somebody is
		}
		runs = append(runs, acrossRun{from: c, to: c + 1, time: c})
		days = append(days, day)
	}
	if len(runs) < 2 {
		return nil
	}
	var months []string
	var said []int
	if heading > 0 {
		_, above := t.grid.at(heading - 1)
		months = monthsOver(above, runs)
		if months != nil {
			said = []int{heading - 1}
		}
	}
	if months == nil {
		month := monthOver(t.tab)
		for i := heading - 1; i >= 0 && month == ""; i-- {
			_, above := t.grid.at(i)
			month = monthSaid(titleText(above))
		}
		if month == "" {
			return nil
		}
		for range runs {
			months = append(months, month)
		}
	}
	for k, day := range days {
		if k > 0 && months[k] == months[k-1] && day <= days[k-1] {
			return nil // numbers of something else
		}
		runs[k].title = strconv.Itoa(day) + " " + months[k]
		runs[k].saidIn = said
	}
	t.coursesOver(lex, heading, runs)
	return runs
}

// dayAlone reads "7", "07", "7th" and "Sat 7" as the seventh of a month.
func dayAlone(cell string) (day int, ok bool) {
	f := strings.Fields(fold(cell))
	if len(f) == 2 {
		if _, weekday := weekdayNames[strings.Trim(f[0], ".")]; !weekday {
			return 0, false
		}
		f = f[1:]
	}
	if len(f) != 1 || !isOrdinalOrNumber(f[0]) {
		return 0, false
	}
	n := 0
	for _, r := range f[0] {
		if r < '0' || r > '9' {
			break
		}
		n = n*10 + int(r-'0')
	}
	return n, n >= 1 && n <= 31
}

// monthsOver gives each run the month that stands over it, or over the run before
// it where the cell is blank; nil where the row is none of months.
func monthsOver(above []string, runs []acrossRun) (months []string) {
	now := ""
	for c := runs[0].from; c <= runs[len(runs)-1].from; c++ {
		if text := trim(cellAt(above, c)); text != "" {
			if now = monthSaid(text); now == "" {
				return nil
			}
		}
		if slices.ContainsFunc(runs, func(r acrossRun) bool { return r.from == c }) {
			if now == "" {
				return nil
			}
			months = append(months, now)
		}
	}
	return months
}

// monthSaid is the month of a text with its year if it says one, "August 2026",
// where it says one month and no day; "" otherwise.
func monthSaid(text string) (said string) {
	if len(findDates(text)) > 0 {
		return ""
	}
	toks := tokenize(text)
	for i, t := range toks {
		if t.kind != 'l' {
			continue
		}
		if _, ok := monthNames[t.word]; !ok {
			continue
		}
		if said != "" {
			return ""
		}
		said = text[t.from:t.to]
		if j := yearBehind(toks, i); j > 0 {
			said += " " + text[toks[j].from:toks[j].to]
		}
	}
	return said
}

// rosterNumbers are the columns that number the names of such a table, or give
// their places in the season: they are places in none of its runs.
func (t table) rosterNumbers(lex *lexicon, heading int, isRun map[int]bool) map[int]bool {
	_, names := t.grid.at(heading)
	out := map[int]bool{}
	for c, h := range names {
		g := lex.read(h)
		if isRun[c] || g.known && g.meaning != Position && !g.number {
			continue
		}
		if g.known && g.meaning == Position || t.countsUp(heading, c) {
			out[c] = true
		}
	}
	return out
}

// countsUp says whether a column is 1, 2, 3 … below a row.
func (t table) countsUp(after, column int) bool {
	n := 0
	for i := after + 1; i < min(t.grid.len(), after+400); i++ {
		_, cells := t.grid.at(i)
		switch text := trim(cellAt(cells, column)); {
		case text == "":
		case strings.TrimSuffix(text, ".") != strconv.Itoa(n+1):
			return false
		default:
			n++
		}
	}
	return n >= 3
}

// timesBelow says whether most cells below a heading, in the columns of runs, are
// times or say why there is none.
func (t table) timesBelow(heading int, runs []acrossRun) bool {
	times, others := 0, 0
	away := map[string]bool{}
	for i := heading + 1; i < min(t.grid.len(), heading+400); i++ {
		_, cells := t.grid.at(i)
		if isTotal(fold(cellAt(cells, 0))) || saysHowMany(cells, runs) {
			continue // how many ran, and the average
		}
		for _, r := range runs {
			switch kindOf(cellAt(cells, r.time)) {
			case kClock, kDecimal:
				times++
			case kBlank, kStatus:
			default:
				if c := cellAt(cells, r.time); isAway(c) && (away[c] || len(away) < awayWords) {
					away[c] = true
					continue
				}
				others++
			}
		}
	}
	return times >= 2 && times >= 4*others
}

// saysHowMany says whether a row has nothing but whole numbers in the columns of two runs or more, and names nobody.
func saysHowMany(cells []string, runs []acrossRun) bool {
	n := 0
	for _, r := range runs {
		switch kindOf(cellAt(cells, r.time)) {
		case kBlank:
		case kInt:
			n++
		default:
			return false
		}
	}
	return n > 1 && !slices.ContainsFunc(cells[:min(len(cells), runs[0].from)], looksNamed)
}

// withTimes parts the runs of a heading below which times stand from the others, where those are of the same days: the
// points beside the times. Else it leaves them as they are.
func (t table) withTimes(heading int, runs []acrossRun) (timed, others []acrossRun) {
	_, cells := t.grid.at(heading)
	days := map[string]bool{}
	for _, r := range runs {
		if t.timesIn(heading+1, t.grid.len(), r.time) > 0 && t.timesBelow(heading, []acrossRun{r, r}) {
			timed = append(timed, r)
			days[fold(cellAt(cells, r.from))] = true
		} else {
			others = append(others, r)
		}
	}
	if slices.ContainsFunc(others, func(r acrossRun) bool { return !days[fold(cellAt(cells, r.from))] }) {
		return runs, nil
	}
	return timed, others
}

// timesIn counts the times of a column in some rows.
func (t table) timesIn(from, to, column int) (n int) {
	for i := from; i < to; i++ {
		_, cells := t.grid.at(i)
		if c := cellAt(cells, column); kindOf(c) == kClock && !isAway(c) {
			n++
		}
	}
	return n
}

// awayWords is how many different words of one kind, "vol", "away", "inj", may stand
// in place of times.
const awayWords = 10

// isDash says whether a cell has nothing but a stroke for nobody: "-", "–".
func isDash(c string) bool { return strings.Trim(trim(c), "-–—") == "" }

// isAway says whether a cell among times is a short word without a figure: somebody
// helped, was away, or was ill, and did not run; or a time of nought, as a formula leaves for
// those who were not there.
func isAway(c string) bool {
	if c = trim(c); c != "" && strings.Trim(c, "0:.,") == "" {
		return true
	}
	return len(c) <= 10 && (kindOf(c) == kText || len(c) == 1 && kindOf(c) == kSex) && hasLetter(c) && !strings.ContainsAny(c, " 0123456789:")
}
