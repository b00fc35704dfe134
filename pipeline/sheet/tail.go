package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// firstValues finds the first row that looks like a result: a time and
// something else, or a time alone in a table of one column.
func firstValues(rows []line) int {
	// typed is a line of nothing but a name and a time with a dot: "Jo Lee 18.20".
	typed := func(cells []string) bool {
		return rowFilled(cells) == 2 && kindOf(cellAt(cells, 0)) == kText && kindOf(cellAt(cells, 1)) == kDecimal && looseNumber(trim(cells[1])) >= 12
	}
	for i, r := range rows {
		if i+2 < len(rows) && typed(r.cells) && typed(rows[i+1].cells) && typed(rows[i+2].cells) {
			return i
		}
		clocks, ints, filled := 0, 0, 0
		for _, c := range r.cells {
			switch kindOf(c) {
			case kBlank:
				continue
			case kClock:
				clocks++
			case kInt:
				ints++
			}
			filled++
		}
		if filled >= 2 && clocks >= 1 || filled >= 2 && ints >= 1 && digitsOnly(strings.TrimRight(firstFilled(r.cells), ".)")) || filled == 1 && clocks == 1 {
			// The next filled row must agree.
			for _, n := range rows[i+1:] {
				if f := rowFilled(n.cells); f > 0 {
					if f == 1 && isSection(titleText(n.cells)) {
						continue // the only one of its group
					}
					if f*2 >= filled || f > 1 && goesOnFrom(r.cells, n.cells) {
						return i
					}
					break
				}
			}
			if i == len(rows)-1 {
				return i
			}
		}
	}
	return -1
}

// goesOnFrom says whether a row begins with the place behind that of another, whatever else is missing from it.
func goesOnFrom(cells, next []string) bool {
	place, err := strconv.Atoi(strings.TrimRight(firstFilled(cells), "."))
	then, other := strconv.Atoi(strings.TrimRight(firstFilled(next), "."))
	return err == nil && other == nil && then == place+1
}

// newRowRules makes the rules that tell finishers' rows from others.
func newRowRules(p *Part, c *settler, l layout, after int, t table) rowRules {
	r := rowRules{volunteers: p.Kind == Volunteers, first: after + 1, columns: len(p.Columns), pos: p.Index(Position), time: p.Index(Time), number: p.Index(Number), sectionColumn: -1, date1904: t.date1904, sample: t.sample}
	r.clock, r.secondsGiven, r.beside, r.todays = c.clock, c.secondsGiven, c.beside, c.todays
	if len(c.clock) > 0 {
		r.time = c.clock[max(0, len(c.clock)-2)] // the minutes stand for the time
		r.start, r.sum = c.start, c.sum
		if r.between = c.between; r.between {
			r.time = c.clock[1]
		}
	}
	r.name = p.Index(Name)
	r.given = p.Index(GivenName)
	if r.name < 0 {
		r.name = p.Index(FamilyName)
	}
	for _, h := range l.headings {
		r.headings = append(r.headings, fold(h))
	}
	for k, head := 0, t.head(); k < l.lines && l.lines > 1; k++ {
		var folded []string
		for _, cell := range head[l.first+k].cells {
			folded = append(folded, fold(cell))
		}
		r.headingLines = append(r.headingLines, folded)
	}
	if r.pos >= 0 {
		pr := c.profiles[r.pos]
		r.hasPositions = pr.count[kInt]*2 >= pr.filled && pr.count[kInt]*2 >= len(c.rows)
	}
	r.minutesOnce = r.hasPositions || len(r.clock) > 1 && c.risesUnderMinutes()
	r.kinds = make([]kind, len(c.profiles))
	for i, pr := range c.profiles {
		switch p.Columns[i].Meaning {
		case Position, Time, Age, BirthYear, Sex, GroupPlace, SexPlace: // or a group may stand there
			if pr.filled >= 4 && pr.share(kText) <= .1 {
				r.kinds[i] = kInt
			}
		case ChipTime, GunTime, AgeGrade, Gap, Pace, Split, Points, TotalRuns:
			if pr.filled >= 4 && pr.share(kText) <= .1 {
				r.kinds[i] = kDecimal
			}
		case BirthDate:
			r.days = append(r.days, i)
		case Date:
			r.days = append(r.days, i)
			if pr.filled >= 4 && pr.share(kDate) >= .6 {
				r.kinds[i] = kDate
			}
		}
	}
	if t.grid == nil || r.volunteers {
		return r
	}
	for i := 0; i < t.grid.len(); i++ {
		row, cells := t.grid.at(i)
		if row >= after {
			break
		}
		if rowFilled(cells) > 0 {
			r.titles = append(r.titles, cells)
		}
	}
	// The last row with more than a printed position; repeated values left out.
	rows := 0
	r.findOtherList(t.grid, p.Index(Club))
	if t.run == "" {
		r.findOtherWeeks(t.grid)
	}
	r.findTail(t.grid, t.hasGaps())
	blanks := map[int]int{}
	between := map[int]*blanksBetween{}
	var fillable []int
	for _, m := range []Meaning{Course, Date, Session, Distance} {
		if i := p.Index(m); i >= 0 {
			fillable = append(fillable, i)
			if m == Course || m == Date {
				between[i] = &blanksBetween{}
			}
		}
	}
	firstFilled := map[int]bool{}
	var markable []int // a whole name or a place that is repeated would be somebody else's
	for _, c := range p.Columns {
		switch c.Meaning {
		case Time, GunTime, ChipTime, Club, AgeGroup, Sex, Age, FamilyName:
			markable = append(markable, c.Index)
		}
	}
	marks := map[int]bool{}
	for i := 0; i < t.grid.len(); i++ {
		row, cells := t.grid.at(i)
		if row < r.first {
			continue
		}
		n := rowFilled(cells)
		if n >= 2 || n == 1 && (r.pos < 0 || trim(cellAt(cells, r.pos)) == "") {
			switch r.classify(row, cells) {
			case whyTotal:
				for _, f := range fillable { // the line that counts the first group has its day
					firstFilled[f] = firstFilled[f] || rows == 0 && kindOf(cellAt(cells, f)) == kDate
				}
			case isData:
				r.lastFilled = row
				rows++
				for _, f := range markable {
					if c := cellAt(cells, f); rows > 1 && len(c) <= 13 && (isDitto(c) || f == r.time && sameTime[fold(c)]) {
						marks[f] = true
					}
				}
				for _, f := range fillable {
					if b := between[f]; b != nil {
						b.add(cellAt(cells, f))
					}
					if isBlank(cellAt(cells, f)) || isDitto(cellAt(cells, f)) {
						blanks[f]++
					} else if rows == 1 {
						firstFilled[f] = true
					}
				}
			}
		}
	}
	for _, f := range markable {
		if marks[f] {
			r.dittos = append(r.dittos, f)
			p.Columns[f].Why += "; marks repeat the cell above"
		}
	}
	r.findUnused(t.grid)
	r.findPlaced(t.grid, p.Index(Notes))
	for _, f := range fillable {
		if above, same := between[f].fills(); same || firstFilled[f] && blanks[f]*2 > rows {
			r.fill = append(r.fill, f)
			r.fillAbove = append(r.fillAbove, above)
			p.Columns[f].Why += "; blank cells repeat the one above"
		}
	}
	return r
}

// blanksBetween follows a column of courses or days down the results, to find out whether every blank
// cell stands between two that say the same.
type blanksBetween struct {
	first, last     string
	lead, run       int // blank cells above the first, and since the last, that is filled
	blanks          int
	differ, several bool // what stands around a blank cell differs; what is filled differs
}

func (b *blanksBetween) add(cell string) {
	switch {
	case isBlank(cell) || isDitto(cell):
		b.blanks++
		b.run++
		if b.last == "" {
			b.lead++
		}
		return
	case b.last == "":
		b.first, b.last = cell, cell
	case cell != b.last:
		b.several = true
		b.differ = b.differ || b.run > 0
		b.last = cell
	}
	b.run = 0
}

// maxEndBlank is how many cells may be blank above the first that is filled, or below the last: more may
// be another run.
const maxEndBlank = 2

// fills says whether blank cells are of the run around them, above the first and below the last where
// all the others say the same, and gives what those above the first are of.
func (b *blanksBetween) fills() (above string, ok bool) {
	if b == nil || b.blanks == 0 || b.first == "" || b.differ || b.lead+b.run > 0 && b.several || max(b.lead, b.run) > maxEndBlank {
		return "", false
	}
	if b.lead > 0 {
		above = b.first
	}
	return above, true
}

// findOtherList finds a list of something else below the results: under a line of text, or a
// blank row, the places begin again, and the names are those of clubs in the results above, or
// the line says that the list is of all times.
func (r *rowRules) findOtherList(g *grid, club int) {
	if r.name < 0 || r.pos < 0 {
		return
	}
	clubs := map[string]bool{}
	apart, results, over := 0, 0, ""
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		if row < r.first {
			continue
		}
		filled := rowFilled(cells)
		if i > 0 && !g.adjoins(i) || filled <= 1 || r.isHeading(cells, filled) {
			if apart == 0 {
				apart = row
			}
			if filled == 1 {
				over = titleText(cells)
			}
			if filled <= 1 || r.isHeading(cells, filled) {
				continue
			}
		}
		name := fold(cellAt(cells, r.name))
		if apart > 0 && looseNumber(trim(cellAt(cells, r.pos))) == 1 && (name != "" && clubs[name] || results >= 3 && (r.namesClubs(g, i, club) || ofAllTimes(over))) {
			o := rowRange{apart, r.nextRun(g, i)}
			if r.others = append(r.others, o); o.to == 0 {
				return
			}
			i = g.find(o.to) - 1
			apart, results, over = 0, 0, ""
			continue
		}
		apart, over = 0, ""
		results++
		if c := fold(cellAt(cells, club)); c != "" {
			clubs[c] = true
		}
	}
}

// ofAllTimes says whether a line is over a list of the best of all runs: "All time top 10".
func ofAllTimes(line string) bool {
	f := " " + fold(line) + " "
	return allTimes.MatchString(f) || otherLists(line) && !anyWord(line, memberOf) && !anyWord(line, addedLater)
}

// allTimes are such words. Common practice, no source.
var allTimes = regexp.MustCompile(` (?:all time|alltime|ever|ewige|de tous les temps|historico|historica|di sempre|aller tijden|genom tiderna|gjennom tidene|gennem tiderne|wszech czasow|vsech dob) | top \d+ `)

// nextRun is the first of the lines over the next run below a row, which has the heading of
// the results again or a line with a date; 0 for none.
func (r *rowRules) nextRun(g *grid, i int) int {
	for k := i + 1; k < g.len(); k++ {
		_, cells := g.at(k)
		if filled := rowFilled(cells); filled == 0 || !r.isHeading(cells, filled) && (filled > 2 || len(findDates(titleText(cells))) == 0) {
			continue
		}
		for above := k - 1; above > i; above-- { // the other lines over it
			_, cells := g.at(above)
			if filled := rowFilled(cells); filled > 1 {
				break
			} else if filled == 1 {
				k = above
			}
		}
		return g.row(k)
	}
	return 0
}

// namesClubs says whether rows on end are of clubs: two or more, half of them with a word
// such as Harriers, and none with a time.
func (r *rowRules) namesClubs(g *grid, from, club int) bool {
	n, rows := 0, 0
	for i := from; i < g.len() && (i == from || g.adjoins(i)); i++ {
		_, cells := g.at(i)
		if rowFilled(cells) < 2 {
			break
		}
		if filled := rowFilled(cells); filled > 3 || kindOf(cellAt(cells, r.time)) == kClock {
			return false
		}
		rows++
		for i, c := range cells {
			if i != club && anyWord(c, clubWords) {
				n++
				break
			}
		}
	}
	return rows >= 2 && 2*n >= rows
}

// findUnused finds the rows at the end of a table of formulas that nobody ran into: a place,
// an error or nothing for a name, and 0:00 for a time.
func (r *rowRules) findUnused(g *grid) {
	if r.time < 0 || r.name < 0 {
		return
	}
	for i := g.len() - 1; i >= 0; i-- {
		row, cells := g.at(i)
		if row < r.first || rowFilled(cells) == 0 {
			continue
		}
		name, time := trim(cellAt(cells, r.name)), trim(cellAt(cells, r.time))
		switch {
		case (time == "" || isTotal(fold(name)) || isTotal(fold(firstFilled(cells)))) && kindOf(cellAt(cells, r.pos)) != kInt && r.unusedTo == 0:
			continue // a footer, the mean of all times
		case name != "" && !isErrorValue(name) || time == "" || strings.Trim(time, "0:.,") != "":
			return
		}
		r.unused, r.unusedTo = row, max(r.unusedTo, row)
	}
}

// findPlaced finds out whether every place of a list stands once and has a time, and they are 1, 2,
// 3 … without a gap, or the list is in another order, as one is on which people sign up: who
// has neither place nor time then did not finish.
func (r *rowRules) findPlaced(g *grid, notes int) {
	if r.pos < 0 || r.time < 0 || len(r.clock) > 0 {
		return
	}
	places, without, last, ordered := map[string]bool{}, 0, 0.0, true
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		if row < r.first || r.tail > 0 && row >= r.tail {
			continue
		}
		pos, time := trim(cellAt(cells, r.pos)), trim(cellAt(cells, r.time))
		switch {
		case pos == "" && (kindOf(time) == kText && hasNoDigit(time) || noTimeAtAll(time)):
			without++
		case pos == "" && kindOf(time) == kStatus, !digitsOnly(pos) && pos != "" && r.isHeading(cells, rowFilled(cells)):
		case !digitsOnly(pos) || places[pos] || kindOf(time) != kClock:
			return
		default:
			places[pos] = true
			ordered = ordered && looseNumber(pos) > last
			last = looseNumber(pos)
		}
	}
	if without == 0 || len(places) < 5 || 2*without > len(places) {
		return
	}
	for n := range len(places) {
		if ordered && !places[strconv.Itoa(n+1)] {
			return
		}
	}
	r.allPlaced, r.notes = true, notes
}

// noTimeAtAll says whether a cell is blank or has a time of nines, 99:99, as is typed for none.
func noTimeAtAll(time string) bool {
	return time == "" || len(time) >= 5 && strings.Trim(time, "9:.") == ""
}

// isErrorValue recognises what a spreadsheet shows for a formula that gives no value: #N/A,
// #REF!, and #NV in German (ECMA-376 Part 1, 18.17.3).
func isErrorValue(s string) bool {
	return len(s) >= 3 && len(s) <= 8 && s[0] == '#' && s[1] >= 'A' && s[1] <= 'Z'
}

// hasGaps says whether blank rows stand among the rows of a table: those of who was not there on the day of a grid, and
// those between the years of one runner.
func (t table) hasGaps() bool { return t.run != "" || t.runner != "" || t.ofSets }

// findTail finds the last row that is a result beyond doubt, and the rows after
// it that stand apart (after a blank row or a line of text): footers, winners,
// records, helpers. gaps says that rows are missing because their runners were not
// there, so that a row that stands apart is none.
func (r *rowRules) findTail(g *grid, gaps bool) {
	sure := func(cells []string) bool {
		if r.hasPositions {
			return kindOf(cellAt(cells, r.pos)) == kInt && rowFilled(cells) >= 2
		}
		if r.time < 0 {
			return false
		}
		if r.wordsUnderFigures(cells) {
			return false
		}
		k := kindOf(cellAt(cells, r.time))
		named := r.name < 0 || !isBlank(cellAt(cells, r.name)) && !isTotal(fold(cellAt(cells, r.name))) ||
			r.given >= 0 && !isBlank(cellAt(cells, r.given)) && !isTotal(fold(cellAt(cells, r.given))) // "Unknown" as a first name
		return (k == kClock || k == kDecimal || k == kInt) && named
	}
	last, records := -1, false
	var noPlace []int // with a time and little else
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		if row < r.first || r.inOtherList(row) {
			continue
		}
		if r.hasPositions && r.time >= 0 && isBlank(cellAt(cells, r.pos)) && kindOf(cellAt(cells, r.time)) == kClock && rowFilled(cells) <= 3 {
			noPlace = append(noPlace, i)
		}
		switch filled := rowFilled(cells); {
		case last >= 0 && filled == 1 && (isRecord(fold(titleText(cells))) || r.pos >= 0 && isTeamsTitle(titleText(cells))):
			records = true // until the heading or the day of another run
		case records && (r.isHeading(cells, filled) || filled <= 2 && len(findDates(titleText(cells))) > 0):
			records = false
		}
		if !records && sure(cells) {
			last = i
		}
	}
	if last < 0 {
		return
	}
	if len(noPlace) > 0 {
		r.findReckoned(g, noPlace, last)
	}
	if gaps {
		r.lastSure = g.row(last)
		return
	}
	if r.hasPositions {
		last = r.beforePrizes(g, last)
		last = r.tiedWith(g, last)
		last = r.goesOn(g, last)
	} else {
		last = r.beforeWinners(g, last, sure)
	}
	r.lastSure = g.row(last)
	if !r.hasPositions && r.time >= 0 {
		_, cells := g.at(last)
		r.lastTime = finishTime(cellAt(cells, r.time))
	}
	for i := last + 1; i < g.len(); i++ {
		row, cells := g.at(i)
		filled := rowFilled(cells)
		if !g.adjoins(i) || filled == 0 || filled == 1 && kindOf(titleText(cells)) == kText {
			r.tail = row
			return
		}
	}
}

// findTailWithin finds them anew for the rows from first to last: what stands under the
// results of one run and above the title of the next.
func (r *rowRules) findTailWithin(g *grid, gaps bool) {
	r.lastSure, r.tail = 0, 0
	r.findTail(g.between(r.first, r.last), gaps)
}

// adjoins says whether a row stands right below the one before it: of a text, a cell in
// quotes may take several lines.
func (g *grid) adjoins(i int) bool {
	row, cells := g.at(i - 1)
	below := g.row(i) - row
	if below > 1 && !g.pieces.rowsOfCells {
		for _, c := range cells {
			below -= strings.Count(c, "\n")
		}
	}
	return below == 1
}

// goesOn steps on over rows without places that stand apart under the results and go on
// with them, as walkers do and guests: two or more that have times, none below the one
// above it or the last of the results, and name people who are not among these. Under a line
// that says that they were added, "Late entries", one is enough, whatever its time.
func (r *rowRules) goesOn(g *grid, last int) int {
	if r.time < 0 || r.name < 0 {
		return last
	}
	more := 0
	for i := last + 1; i < g.len(); i++ {
		if _, cells := g.at(i); rowFilled(cells) >= 2 {
			more++
		}
	}
	if more == 0 { // nearly all sheets
		return last
	}
	names, slowest := map[string]bool{}, 0.0
	for i := range last + 1 {
		row, cells := g.at(i)
		if t := cellAt(cells, r.time); row >= r.first && kindOf(t) == kClock {
			names[fold(cellAt(cells, r.given)+" "+cellAt(cells, r.name))] = true
			slowest = finishTime(t)
		}
	}
	n, end, sure, apart, added := 0, last, false, false, false
	for i := last + 1; i < g.len(); i++ {
		_, cells := g.at(i)
		filled := rowFilled(cells)
		if filled > 1 && r.isHeading(cells, filled) {
			continue // without that of the places: "Handed in late", and the heading again
		}
		if filled < 2 {
			text := titleText(cells)
			if _, _, _, far := findDistance(text); far || anyWord(text, recordWords) || len(findDates(text)) > 0 || len(strings.Fields(text)) > 4 || saysEnded(text) {
				break
			}
			if filled == 1 {
				added = anyWord(text, addedLater)
				apart = apart || !added
			}
			continue
		}
		name, t := trim(cellAt(cells, r.given)+" "+cellAt(cells, r.name)), cellAt(cells, r.time)
		if kindOf(t) != kClock && hasStatus(cells) {
			continue // those who did not finish stand between
		}
		if !isBlank(cellAt(cells, r.pos)) || kindOf(t) != kClock || !looksNamed(name) || names[fold(name)] || isTotal(fold(name)) || isRecord(fold(name)) || r.hasDay(cells) {
			break
		}
		described := added || !apart && (r.describesPerson(cells, 0) || r.describedLike(g, last, cells))
		if finishTime(t) < slowest && !described {
			break
		}
		sure = sure || described
		slowest = max(slowest, finishTime(t))
		names[fold(name)] = true
		n++
		end = i
	}
	if n < 2 && !sure {
		return last
	}
	return end
}

// hasDay says whether a day stands in a row outside the columns for days.
func (r *rowRules) hasDay(cells []string) bool {
	for k, c := range cells {
		if !slices.Contains(r.days, k) && len(findDates(c)) > 0 {
			return true
		}
	}
	return false
}

// describedLike says whether a row has in two columns, its place, name and time aside, what a row of the
// results has there.
func (r *rowRules) describedLike(g *grid, last int, cells []string) bool {
	same := 0
	for k, c := range cells {
		if k == r.pos || k == r.time || k == r.name || k == r.given || isBlank(c) || digitsOnly(trim(c)) {
			continue
		}
		for i := range last + 1 {
			if row, above := g.at(i); row >= r.first && cellAt(above, k) == c {
				same++
				break
			}
		}
	}
	return same > 1
}

// saysEnded says whether a line over rows begins with words for a race that was not finished
// or does not count: "Disqualified", "Did not finish (3)".
func saysEnded(text string) bool {
	words := strings.Fields(fold(text))
	for n := min(4, len(words)); n > 0; n-- {
		if f := strings.Join(words[:n], " "); statusWords[f] && f != "ok" && f != "finished" {
			return true
		}
	}
	return false
}

// beforePrizes steps back over a last block of rows that stands apart, whose places begin
// again from 1 and whose rows repeat results above it, with a word before the name
// perhaps: "1st man Jo Lee 18:20".
func (r *rowRules) beforePrizes(g *grid, last int) int {
	if r.time < 0 || r.name < 0 {
		return last
	}
	start := last
	for start > 0 && g.adjoins(start) {
		_, above := g.at(start - 1)
		if rowFilled(above) < 2 || kindOf(cellAt(above, r.pos)) != kInt {
			break
		}
		start--
	}
	_, first := g.at(start)
	if start == 0 || 3*(last-start+1) > start || looseNumber(strings.TrimRight(trim(cellAt(first, r.pos)), ".)=stndrh")) != 1 {
		return last
	}
	if _, above := g.at(start - 1); r.isHeading(above, rowFilled(above)) {
		return last // the next page, or another list
	}
	named, before := map[string][]string{}, -1
	for i := range start {
		row, cells := g.at(i)
		if row >= r.first && kindOf(cellAt(cells, r.pos)) == kInt && rowFilled(cells) >= 2 {
			time := clockDigits(cellAt(cells, r.time))
			named[time] = append(named[time], fold(cellAt(cells, r.name)))
			before = i
		}
	}
	for i := start; i <= last; i++ {
		_, cells := g.at(i)
		name := fold(cellAt(cells, r.name))
		if name == "" || !slices.ContainsFunc(named[clockDigits(cellAt(cells, r.time))], func(n string) bool { return n != "" && strings.HasSuffix(name, n) && name != n }) {
			return last
		}
	}
	if before < 0 {
		return last
	}
	r.others = append(slices.Clip(r.others), rowRange{from: g.row(start)}) // other parts keep theirs
	return before
}

// tiedWith steps on over rows whose blank place means that of the row above: they
// name somebody and have the same time.
func (r *rowRules) tiedWith(g *grid, last int) int {
	if r.time < 0 {
		return last
	}
	_, above := g.at(last)
	time := clockDigits(cellAt(above, r.time))
	for i := last + 1; i < g.len() && time != ""; i++ {
		_, cells := g.at(i)
		filled := rowFilled(cells)
		switch named := !isBlank(cellAt(cells, r.name)) || !isBlank(cellAt(cells, r.given)); {
		case filled <= 1 || r.isHeading(cells, filled): // a page ends here
		case named && isBlank(cellAt(cells, r.pos)) && clockDigits(cellAt(cells, r.time)) == time:
			last = i
		default:
			return last
		}
	}
	return last
}

// isPlaceAlone says whether a line is nothing but the name of a place, of two to four words of which the last is called after
// the land.
func isPlaceAlone(line string) bool {
	words := strings.Fields(fold(line))
	return len(words) > 1 && len(words) < 5 && startsUpper(line) && hasNoDigit(line) && landWords[words[len(words)-1]] && !otherLists(line) &&
		!slices.ContainsFunc(words, func(w string) bool { return titleWords[w] || listWord[w] })
}

// beforeWinners steps back over a last block of timed rows that stands apart
// and whose times go back to the front: winners and records repeated under the
// list of a sheet without positions.
func (r *rowRules) beforeWinners(g *grid, last int, sure func([]string) bool) int {
	start := last
	for start > 0 {
		above, cells := g.at(start - 1)
		if above < r.first || !g.adjoins(start) || !sure(cells) {
			break
		}
		start--
	}
	if start == 0 || last-start > 25 {
		return last
	}
	if _, above := g.at(start - 1); r.isHeading(above, rowFilled(above)) || rowFilled(above) == 1 && anyWord(titleText(above), addedLater) {
		return last // it is the next page, or of who was added
	}
	if g.dayOver(start) || r.namesOthers(g, start, last) {
		return last // it is the next run, or the list of the other sex, or of another course
	}
	// The row before the block that is sure, and whether the times fell.
	for i := start - 1; i >= 0; i-- {
		row, cells := g.at(i)
		if row < r.first {
			return last
		}
		if !sure(cells) {
			continue
		}
		_, first := g.at(start)
		sorted := true
		prevTime, printed := -1.0, 0.0
		for k := 0; k <= i; k++ {
			if row, c := g.at(k); row >= r.first && sure(c) {
				v := finishTime(cellAt(c, r.time))
				printed = max(printed, v)
				if v < min(prevTime, 10*60) && kindOf(cellAt(c, r.time)) == kClock && 60*v >= prevTime {
					v *= 60 // 1:15 after 58:20 is an hour and a quarter
				}
				sorted = sorted && v >= prevTime
				prevTime = v
			}
		}
		winner := cellAt(first, r.time)
		v := finishTime(winner)
		if walked := kindOf(winner) == kClock && v < 10*60 && 60*v >= prevTime; sorted && v < .8*printed && !walked && !r.enteredLate(g, start, last, i) {
			return i
		}
		return last
	}
	return last
}

// enteredLate says whether the rows of a block stand for people who are not among the results that end at a row,
// with the facts that these have: somebody has added them below.
func (r *rowRules) enteredLate(g *grid, start, last, end int) bool {
	if r.name < 0 {
		return false
	}
	name := func(cells []string) string { return fold(cellAt(cells, r.given) + " " + cellAt(cells, r.name)) }
	names := map[string]bool{}
	for i := range end + 1 {
		if row, cells := g.at(i); row >= r.first {
			names[name(cells)] = true
		}
	}
	for i := start; i <= last; i++ {
		if _, cells := g.at(i); names[name(cells)] || !r.describedLike(g, end, cells) {
			return false
		}
	}
	return true
}

// namesOthers says whether a block of three rows or more stands under a line for a sex or a group, or under the
// name of a place, and names hardly anybody of the rows above it, as winners that are repeated would.
func (r *rowRules) namesOthers(g *grid, start, last int) bool {
	if _, over := g.at(start - 1); last-start < 2 || rowFilled(over) != 1 || !isSection(titleText(over)) && !isPlaceAlone(titleText(over)) {
		return false
	}
	who := func(cells []string) string { return fold(cellAt(cells, r.given) + " " + cellAt(cells, r.name)) }
	named := map[string]bool{}
	for i := range start {
		if row, cells := g.at(i); row >= r.first {
			named[who(cells)] = true
		}
	}
	repeated := 0
	for i := start; i <= last; i++ {
		if _, cells := g.at(i); named[who(cells)] {
			repeated++
		}
	}
	return 5*repeated <= last-start+1
}

// dayOver says whether the line right above a row, blank ones aside, gives the day of a run.
func (g *grid) dayOver(i int) bool {
	for i--; i >= 0; i-- {
		_, cells := g.at(i)
		switch rowFilled(cells) {
		case 0:
		case 1, 2:
			text := titleText(cells)
			_, dated := onlyDate([]string{text})
			return dated && !ofAllTimes(text) && !isRecord(fold(text))
		default:
			return false
		}
	}
	return false
}

// finishTime orders times of one column in which minutes may stand as hours:
// 24:31:00 is below 1:02:10, and 24.31 beside 16:58.
func finishTime(cell string) float64 {
	cell = trim(cell)
	v := looseNumber(cell)
	switch {
	case v > 5*3600 && strings.Count(cell, ":") == 2:
		v /= 60
	case kindOf(cell) == kDecimal:
		v *= 60 // of a part of a day only the order counts
	}
	return v
}

// firstFilled is the first cell of a row that is not blank.
func firstFilled(cells []string) string {
	for _, c := range cells {
		if c = trim(c); c != "" {
			return c
		}
	}
	return ""
}
