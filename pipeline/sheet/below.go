package sheet

import (
	"slices"
	"strconv"
	"strings"
)

// piece is one of several tables that stand one below the other.
type piece struct {
	t     table
	row   int
	other string // the heading of a table of another kind, which is left out
	// shorter are the columns of names and times of a table that only lacks places, clubs or
	// the like of the one above, as walkers' have under runners'; nil for none.
	shorter []int
}

// below cuts a table where a heading with other columns begins: results of
// another run whose columns stand in another order, or a table of records
// under the results.
func (t table) below(lex *lexicon) []piece {
	if t.grid == nil {
		return []piece{{t: t}}
	}
	l := findHeading(lex, t.head())
	for i := 0; l.first < 0 && i < min(t.grid.len(), headingLooks); i++ {
		if _, cells := t.grid.at(i); len(runsAcross(lex, cells)) > 1 { // a name and days
			l = layout{first: i, lines: 1, headings: cells}
		}
	}
	if l.first < 0 {
		return []piece{{t: t}}
	}
	if end := t.resultsWithoutHeading(lex, l); end > 0 {
		_, title := t.grid.at(end)
		results, list := piece{t: t}, piece{t: t, row: t.grid.row(end), other: titleText(title)}
		results.t.grid, list.t.grid = t.grid.slice(0, end), t.grid.slice(end, t.grid.len())
		results.t.src, list.t.src = results.t.grid, list.t.grid
		return []piece{results, list}
	}
	var known [][]string // the lines of the heading that the rows stand under
	remember := func(from, lines int) {
		known = nil
		for k := from; k < from+lines && k < t.grid.len(); k++ {
			_, cells := t.grid.at(k)
			var f []string
			for _, c := range cells {
				f = append(f, fold(c))
			}
			known = append(known, f)
		}
	}
	remember(l.first, l.lines)
	want := coreOf(lex, l.headings)
	var out []piece
	start, row := 0, 0
	other, shorter := "", []int(nil)
	results := false // some stand above
	cut := func(end int) {
		p := piece{t: t, row: row, other: other, shorter: shorter}
		p.t.grid = t.grid.slice(start, end)
		p.t.src = p.t.grid
		out = append(out, p)
	}
	place, time := -1, -1
	for i, h := range l.headings {
		switch lex.read(h).meaning {
		case Position:
			place = i
		case Time, GunTime, ChipTime:
			time = i
		}
	}
	for i := l.first + l.lines; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		results = results || rowClocks(cells) > 0
		if time >= 0 && (place >= 0 && kindOf(cellAt(cells, place)) == kInt && hasDigit(cellAt(cells, time)) || clockInside.MatchString(cellAt(cells, time))) {
			continue // a place and a time under their headings, or "PB 19:58": a row, whoever it names
		}
		if place >= 0 && time >= 0 && isBlank(cellAt(cells, place)) && isBlank(cellAt(cells, time)) && t.goesOn(i+1, place, time) {
			continue // somebody who has neither, between those who have both: "Volunteer" under the role
		}
		league := results && len(runsAcross(lex, cells)) > 1 // whose headings are the days
		if hasFigures(cells) && !league {
			continue
		}
		if score, filled := headingScore(lex, cells); (score < 4 || filled < 2) && !league {
			continue
		}
		same := false
		for _, k := range known {
			same = same || equalHeading(k, cells)
		}
		if _, title := t.grid.at(i - 1); same && !(rowFilled(title) == 1 && (otherLists(titleText(title)) || ofOtherWeeks(titleText(title)))) {
			continue
		}
		lines := 1
		if i+1 < t.grid.len() {
			if _, next := t.grid.at(i + 1); isHeadingTail(lex, cells, next) {
				lines = 2
			}
		}
		core := coreOf(lex, cells)
		if lines == 2 {
			_, next := t.grid.at(i + 1)
			core = coreOf(lex, joinHeadings(lex, cells, next))
		}
		// The upper half of the heading, which may stand over every table alike, and
		// titles above it go with it.
		top := i
		if i > start && t.grid.row(i) == t.grid.row(i-1)+1 {
			if _, above := t.grid.at(i - 1); isHeadingTop(lex, above, cells) {
				top--
			}
		}
		j := top
		alien := teamHeading(lex, cells) || core&2 == 0 && want&2 != 0 && core&1 == 0
		for said, titled := false, false; j > start && isTitleLine(lex, t.grid, j-1); j-- {
			_, line := t.grid.at(j - 1)
			blank := rowFilled(line) == 0
			if alien && titled && (blank || t.grid.row(j) > t.grid.row(j-1)+1) {
				break // what is above the title of a list of another kind is the foot of the results
			}
			if !blank && !titled {
				titled, alien = true, alien || otherLists(titleText(line))
			}
			if said && (blank || t.grid.row(j) > t.grid.row(j-1)+1) {
				break // what is above the blank row belongs to the table above
			}
			said = said || !blank && len(findDates(titleText(line))) > 0
		}
		cut(j)
		start, row = j, t.grid.row(i)
		other, shorter = "", nil
		// places with times, then places with names
		halves := core|want == 7 && core&1 != 0 && want&1 != 0 || (core|want)&6 == 6 && core&6 != 6 && want&6 != 6 && t.countedFrom(l.first+l.lines) && t.countedFrom(i+lines)
		if teamHeading(lex, cells) {
			other = rowText(cells)
		} else if core&want != want && !halves {
			other, shorter = rowText(cells), nameAndTime(lex, cells)
		}
		for k := j; k < top; k++ {
			_, title := t.grid.at(k)
			switch text := titleText(title); {
			case undatedOtherWeeks(text):
				other, shorter = text, nil
			case !otherLists(text):
			case anyWord(text, memberOf) && other == "" && core&want == want:
				other, shorter = text, nameAndTime(lex, cells) // those of the club, under its guests
			default:
				other, shorter = text, nil
			}
		}
		remember(i, lines)
		i += lines - 1
	}
	cut(t.grid.len())
	withOthers(out)
	dated := slices.ContainsFunc(l.headings, func(h string) bool { return lex.read(h).meaning == Date })
	for k := range out {
		if p := &out[k]; k > 0 && p.other == "" && !dated && p.t.datesApart(lex, p.row) {
			p.other = "each line is of another day"
		}
	}
	return out
}

// goesOn says whether the first row with a figure from a row on has a place and a time in two columns.
func (t table) goesOn(from, place, time int) bool {
	for i := from; i < t.grid.len(); i++ {
		switch _, cells := t.grid.at(i); {
		case rowFilled(cells) == 0:
			return false
		case hasFigures(cells):
			return kindOf(cellAt(cells, place)) == kInt && kindOf(cellAt(cells, time)) == kClock
		}
	}
	return false
}

// resultsWithoutHeading is the index of the title of a list of another kind whose heading is the
// first of the sheet, since the results above it have none: records, teams, the league. 0
// where it is not so.
func (t table) resultsWithoutHeading(lex *lexicon, l layout) int {
	if l.first < 4 {
		return 0
	}
	title := l.first - 1
	_, line := t.grid.at(title)
	if rowFilled(line) == 0 && title > 0 {
		title--
		_, line = t.grid.at(title)
	}
	if text := titleText(line); rowFilled(line) != 1 || !teamHeading(lex, l.headings) && !otherLists(text) && !ofOtherWeeks(text) && coreOf(lex, l.headings)&2 != 0 {
		return 0
	}
	timed := 0
	for i := title - 1; i >= 0 && timed < 3; i-- {
		_, cells := t.grid.at(i)
		if slices.ContainsFunc(cells, func(c string) bool { return kindOf(c) == kClock }) && rowFilled(cells) > 1 {
			timed++
		}
	}
	if timed < 3 {
		return 0
	}
	return title
}

// datesApart says whether a table has a column of dates in which next to every line has
// another, under the heading in a row: records and bests, below results of one day.
func (t table) datesApart(lex *lexicon, heading int) bool {
	col, rows, days := -1, 0, map[string]bool{}
	for i := range t.grid.len() {
		row, cells := t.grid.at(i)
		switch {
		case row == heading:
			col = slices.IndexFunc(cells, func(c string) bool { return lex.read(c).meaning == Date })
			if col < 0 {
				return false
			}
		case row > heading && col >= 0 && kindOf(cellAt(cells, col)) == kDate:
			rows++
			days[trim(cells[col])] = true
		}
	}
	return rows >= 2 && 3*len(days) > 2*rows
}

// otherLists says whether the title of a table announces records, volunteers or the like.
func otherLists(title string) bool { return helperTab(title) || anyWord(title, recordWords) }

// memberOf are words for those who belong to the club: over times they are the runners of one
// kind, elsewhere a list of people. Common practice, no source.
var memberOf = set("members member membres leden soci miembros socios czlonkowie medlemmer medlemmar mitglieder jasenet")

// nameAndTime gives the columns of names and of times of a heading, nil where it has not
// one of each.
func nameAndTime(lex *lexicon, cells []string) []int {
	name, clock := -1, -1
	for i, c := range cells {
		switch lex.read(c).meaning {
		case Date:
			return nil // each line of it is of another day
		case Name:
			name = i
		case Time:
			clock = i
		}
	}
	if name < 0 || clock < 0 {
		return nil
	}
	return []int{name, clock}
}

// withOthers keeps the tables that have fewer columns than the one above where the people
// on them are others, each with a time: walkers under runners. Winners and prizes under the
// results are people of these.
func withOthers(pieces []piece) {
	if !slices.ContainsFunc(pieces, func(p piece) bool { return p.shorter != nil }) {
		return
	}
	seen := map[string]bool{}
	for k := range pieces {
		p := &pieces[k]
		if p.shorter != nil {
			others, timed, rows := 0, 0, 0
			for i := range p.t.grid.len() {
				row, cells := p.t.grid.at(i)
				name, clock := anyOrder(cellAt(cells, p.shorter[0])), trim(cellAt(cells, p.shorter[1]))
				if row <= p.row || name == "" || rowFilled(cells) < 2 {
					continue
				}
				rows++
				if !seen[name] {
					others++
				}
				if kindOf(clock) == kClock {
					timed++
				}
			}
			if rows >= 2 && 5*others >= 4*rows && 5*timed >= 4*rows {
				p.other = ""
			}
		}
		if p.other == "" {
			for i := range p.t.grid.len() {
				_, cells := p.t.grid.at(i)
				for _, c := range cells {
					if f := anyOrder(c); strings.IndexByte(f, ' ') > 0 {
						seen[f] = true
					}
				}
				before := "" // names in two columns
				for _, c := range cells {
					if isBlank(c) {
						continue
					}
					if kindOf(c) == kText && before != "" {
						seen[anyOrder(before+" "+c)] = true
					}
					if before = ""; kindOf(c) == kText {
						before = c
					}
				}
			}
		}
	}
}

// anyOrder is a name whichever of its words comes first: "LEE, Jo" and "Jo Lee".
func anyOrder(name string) string {
	words := strings.Fields(fold(strings.ReplaceAll(name, ",", " ")))
	slices.Sort(words)
	return strings.Join(words, " ")
}

// teamHeading recognises the heading of a table of teams, in which no single
// person has a line: "Pos | Team | Runners | Total".
func teamHeading(lex *lexicon, cells []string) bool {
	team, members, person := false, false, false
	for _, c := range cells {
		switch f := fold(c); {
		case teamWords[f]:
			team = true
		case memberWords[f]:
			members = true
		default:
			switch g := lex.read(c); g.meaning {
			case Name, GivenName, FamilyName, Sex, Age, AgeGroup, Number:
				person = person || g.known
			}
		}
	}
	return team && members && !person
}

var teamWords = set("team teams club mannschaft equipe equipo squadra equipa druzyna lag hold tym")

var memberWords = set("runners members scorers counters positions total laufer coureurs gesamt summe", "combined time", "total time")

// hasFigures is the cheap test that nearly all results pass: two cells, or the
// only one, begin with a digit, or one is a time.
func hasFigures(cells []string) bool {
	figures, filled := 0, 0
	for _, c := range cells {
		if c = trim(c); c == "" {
			continue
		}
		filled++
		if c[0] >= '0' && c[0] <= '9' {
			if strings.Contains(c, ":") && kindOf(c) == kClock {
				return true
			}
			figures++
		}
	}
	return figures >= 2 || figures == filled
}

// countedFrom says whether the first cells of the three rows from one on are whole numbers, those of
// different places, as stand before both halves of a result.
func (t table) countedFrom(row int) bool {
	seen := map[int]bool{}
	for i := row; i < row+leastHalf && i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		if c := trim(cellAt(cells, 0)); c != "" && digitsOnly(c) && len(c) <= 4 {
			seen[int(looseNumber(c))] = true
		}
	}
	return len(seen) == leastHalf
}

// equalHeading says whether a row repeats a heading cell for cell. Columns in
// another order are another heading.
func equalHeading(heading, cells []string) bool {
	for i, c := range cells {
		h := ""
		if i < len(heading) {
			h = heading[i]
		}
		if f := fold(c); f != h && f != "" {
			return false
		}
	}
	return true
}

// coreOf is the set of the meanings that make a table of results.
func coreOf(lex *lexicon, cells []string) (core uint8) {
	for i, c := range cells {
		if i > 0 && unitHeading(cells[i-1]) == 'm' && unitHeading(c) == 's' {
			core |= 2
			continue
		}
		switch lex.read(c).meaning {
		case Position:
			if core&1 != 0 && fold(c) == "finish" {
				core |= 2 // the places have another heading: this one is over times
			}
			core |= 1
		case Time, GunTime, ChipTime:
			core |= 2
		case Name, GivenName, FamilyName:
			core |= 4
		}
	}
	return core
}

// isTitleLine says whether a row may be a title: blank, one text, a text with a date, or
// labels and their values.
func isTitleLine(lex *lexicon, g *grid, i int) bool {
	_, cells := g.at(i)
	if labelsRun(lex, cells) {
		return true
	}
	filled, dates := 0, 0
	for _, c := range cells {
		switch k := kindOf(c); {
		case k == kBlank:
			continue
		case k == kStatus && strings.Contains(c, " = "): // "DNF = did not finish"
		case k == kInt, k == kClock, k == kStatus, k == kDecimal:
			return false
		case k == kDate:
			dates++
		}
		filled++
	}
	return filled <= 1 || dates > 0 && filled <= 4 || filled == 2 && strings.HasSuffix(trim(cells[0]), ":")
}

// beside cuts a table whose heading repeats itself from left to right: men on
// the left and women on the right, or a block of columns for each run. Each
// piece keeps its columns where they stand and has the others blank.
func (t table) beside(lex *lexicon) []table {
	if t.grid == nil {
		return []table{t}
	}
	head := t.head()
	l := findHeading(lex, head)
	var starts []int
	shared := false // a column of places before all lists
	if l.first < 0 {
		if starts, l.first, shared = t.bareBlocks(); len(starts) < 2 {
			return []table{t}
		}
	} else {
		starts = blocks(lex, l.headings)
	}
	aside := 0
	if len(starts) < 2 && len(l.headings) > 0 {
		if starts, aside = t.apart(lex, l); len(starts) < 2 {
			starts, aside = t.pointsBeside(lex, l)
		}
		if len(starts) < 2 {
			starts = t.pairs(lex, l)
		}
	}
	if len(starts) < 2 {
		return []table{t}
	}
	var left []string // headings of lists that are not of this run
	var out []table
	for k, from := range starts {
		if aside > 0 && k == 1 {
			out[0].aside = rowText(l.headings[aside:])
			break
		}
		to := 1 << 20
		if k+1 < len(starts) {
			to = starts[k+1]
		}
		if k == 0 {
			from = 0
		}
		g := t.grid.fresh()
		for i := 0; i < t.grid.len(); i++ {
			row, cells := t.grid.at(i)
			if i < l.first && !inSeveral(cells, starts) {
				g.add(row, cells)
				continue
			}
			w := make([]string, min(len(cells), to))
			if from < len(w) && !(i > l.first && totalBeside(cells)) {
				copy(w[from:], cells[from:])
			}
			if shared && starts[k] < len(w) {
				if w[0] = ""; !isBlank(w[starts[k]]) {
					w[0] = cells[0]
				}
			}
			g.add(row, w)
		}
		if len(l.headings) > from && aside == 0 {
			headings := blockOf(l.headings, starts, k)
			over, otherWeek := g.titlesOver(l.first, from, to)
			if coreOf(lex, headings)&2 == 0 && coreOf(lex, l.headings)&2 != 0 || otherWeek {
				left = append(left, strings.Trim(over+" | "+rowText(headings), " |"))
				continue
			}
		}
		p := t
		p.src, p.grid = g, g
		out = append(out, p)
	}
	if len(out) == 0 {
		return []table{t}
	}
	if len(left) > 0 {
		out[0].aside = strings.Join(left, "; ")
	}
	return out
}

// totalBeside says whether the first cell of a row says that the row adds up those above it.
func totalBeside(cells []string) bool {
	for _, c := range cells {
		if !isBlank(c) {
			return totalWords[fold(c)]
		}
	}
	return false
}

// titlesOver gives the line nearest above the heading of a list that stands beside others, of
// what stands above its columns, and says whether that is of another week and gives no day.
func (g *grid) titlesOver(heading, from, to int) (nearest string, otherWeek bool) {
	dated := false
	for i := min(heading, g.len()) - 1; i >= 0; i-- {
		_, cells := g.at(i)
		text := titleText(cells[min(from, len(cells)):min(to, len(cells))])
		if text == "" {
			continue
		}
		if nearest == "" {
			nearest = text
		}
		dated = dated || len(findDates(text)) > 0
		otherWeek = otherWeek || from > 0 && ofOtherWeeks(text)
	}
	return nearest, otherWeek && !dated
}

// pairs gives the columns at which lists begin that stand side by side under headings that
// differ: "Men | Time | Women | Time", "Pair | Runner 1 | Time | Runner 2 | Time". Each has a
// column of names, those of different people, before one of times, which have one heading, or one
// but for its number, "Time 1", "Time 2". What they took together stands behind them.
func (t table) pairs(lex *lexicon, l layout) (starts []int) {
	var clocks []int
	bare := func(i int) string { return strings.Trim(fold(l.headings[i]), "0123456789 #.") }
	total := -1
	for i, h := range l.headings {
		switch g := lex.read(h); {
		case g.known && g.meaning.isTime():
			clocks = append(clocks, i)
		case g.known && (g.meaning == Position || g.meaning == Number) && (i > 0 || len(l.headings) < 5):
			return nil
		}
	}
	if n := len(clocks); n > 2 && bare(clocks[n-1]) != bare(clocks[0]) && clocks[n-1] == clocks[n-2]+1 {
		clocks, total = clocks[:n-1], clocks[n-1]
	}
	if len(clocks) < 2 {
		return nil
	}
	names := map[string]bool{}
	for k, c := range clocks {
		if c == 0 || bare(c) != bare(clocks[0]) || k > 0 && c-clocks[k-1] != clocks[1]-clocks[0] || clocks[1]-clocks[0] < 2 {
			return nil
		}
		named, timed, rows := 0, 0, 0
		for i := l.first + l.lines; i < min(t.grid.len(), l.first+profileRows); i++ {
			_, cells := t.grid.at(i)
			name := trim(cellAt(cells, c-1))
			if name == "" {
				continue
			}
			if rows++; looksNamed(name) && !names[fold(name)] {
				named++
			}
			names[fold(name)] = true
			if kindOf(cellAt(cells, c)) == kClock {
				timed++
			}
		}
		if rows < 2 || named*10 < rows*8 || timed*10 < rows*8 {
			return nil
		}
		starts = append(starts, c-1)
	}
	if total > 0 {
		starts = append(starts, total)
	}
	return starts
}

// bareBlocks gives the columns at which lists side by side begin that have no headings,
// "1 | Jo Lee | 17:58 | 21 | Ann Page | 25:10", and the first row of them: nearly all rows
// with two times have the same kinds of cells, a name and a time among them, twice or
// more; the last rows may have fewer lists. Under the words for sexes a column of places may stand before
// them that is all theirs, shared: "1 | Al Roe | 18:20 | Jo Lee | 19:40".
func (t table) bareBlocks() (starts []int, first int, shared bool) {
	const leastRows = 3
	kindsOf := func(cells []string) (kinds string, clocks int) {
		var b strings.Builder
		for _, c := range cells {
			switch k := kindOf(c); k {
			case kBlank:
				b.WriteByte('_')
			case kClock, kDecimal:
				b.WriteByte('c')
				clocks++
			case kInt:
				b.WriteByte('i')
			default:
				b.WriteByte('t')
			}
		}
		return strings.TrimRight(b.String(), "_"), clocks
	}
	like, rows, usual := map[string][]int{}, 0, "" // rows by their kinds
	for i := 0; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		kinds, clocks := kindsOf(cells)
		if clocks < 2 {
			continue
		}
		rows++
		if like[kinds] = append(like[kinds], i); len(like[kinds]) > len(like[usual]) {
			usual = kinds
		}
	}
	if n := len(like[usual]); n < leastRows || n*10 < rows*8 {
		return nil, -1, false
	}
	lists, begin := usual, 0
	if shared = t.placeOfSexes(like[usual]); shared {
		lists, begin = usual[1:], 1
	}
	for n := 2; n < len(lists); n++ {
		list := lists[:n]
		times := (len(lists) + n - 1) / n // the last has no blank cell behind it
		if strings.TrimRight(strings.Repeat(list, times), "_") != lists || strings.Count(list, "t") == 0 || strings.Count(list, "c") != 1 {
			continue
		}
		name, clock := begin+strings.IndexByte(list, 't'), begin+strings.IndexByte(list, 'c')
		for at := 0; at < len(lists); at += n {
			if !strings.Contains(list, "i") && !t.ofPeople(like[usual], at+name, at+clock, clock) {
				return nil, -1, false
			}
			starts = append(starts, begin+at)
		}
		return starts, like[usual][0], shared
	}
	return nil, -1, false
}

// placeOfSexes says whether in these rows the first column counts the places, and above the first of them stand
// words for the sexes over other columns.
func (t table) placeOfSexes(rows []int) bool {
	if rows[0] == 0 {
		return false
	}
	for _, i := range rows {
		if _, cells := t.grid.at(i); trim(cells[0]) != strconv.Itoa(i-rows[0]+1) {
			return false
		}
	}
	_, head := t.grid.at(rows[0] - 1)
	sexes := 0
	for k, c := range head {
		if k > 0 && sexOverNames(c) {
			sexes++
		}
	}
	return sexes >= 2
}

// ofPeople says whether the texts of a column are, in these rows, the names of different
// people, not their clubs, and the times of another like those of a third, not paces.
func (t table) ofPeople(rows []int, name, clock, like int) bool {
	seen, named, alike := map[string]bool{}, 0, 0
	for _, i := range rows {
		_, r := t.grid.at(i)
		seen[fold(r[name])] = true
		if looksNamed(trim(r[name])) {
			named++
		}
		if 2*looseNumber(trim(r[clock])) > looseNumber(trim(r[like])) {
			alike++
		}
	}
	return len(seen) == len(rows) && 4*named >= 3*len(rows) && 4*alike >= 3*len(rows)
}

// apart finds a second list of people to the right of the results, behind a column
// that is blank from top to bottom and under other headings: records, prizes,
// points. starts are the columns at which the two begin; aside is that of the
// second where it is no list of results of a run, 0 where it is.
func (t table) apart(lex *lexicon, l layout) (starts []int, aside int) {
	h := l.headings
	for j := 2; j+1 < len(h); j++ {
		if h[j] != "" || h[j+1] == "" || h[j-1] == "" || coreOf(lex, h[:j])&6 != 6 || coreOf(lex, h[j+1:])&4 == 0 {
			continue
		}
		blank := true
		for i := 0; i < t.grid.len() && blank; i++ {
			_, cells := t.grid.at(i)
			blank = isBlank(cellAt(cells, j))
		}
		if !blank {
			continue
		}
		has := func(cells []string, m Meaning) bool {
			for _, c := range cells {
				if g := lex.read(c); g.known && g.meaning == m {
					return true
				}
			}
			return false
		}
		left, right := h[:j], h[j+1:]
		given := has(left, GivenName)
		if whole := func(cells []string) bool { return has(cells, Name) || has(cells, FamilyName) }; given != whole(left) && given != has(right, GivenName) && given == whole(right) {
			continue // the blank column stands between the two halves of the names
		}
		if coreOf(lex, right)&6 != 6 || has(right, PersonalBest) || has(right, Points) || has(right, Date) && !has(left, Date) {
			aside = j + 1
		}
		return []int{0, j + 1}, aside
	}
	return nil, 0
}

// pointsBeside finds a table of what each place is worth to the right of the results, behind a
// column that is blank from top to bottom: places that count up from 1, and beside them points
// or nothing that is known. starts and aside are as those of apart.
func (t table) pointsBeside(lex *lexicon, l layout) (starts []int, aside int) {
	h := l.headings
	for j := 2; j+2 < len(h); j++ {
		if h[j] != "" || h[j+1] == "" || coreOf(lex, h[:j]) != 7 && !t.countsFrom(l, 0) || coreOf(lex, h[:j])&6 != 6 || len(h)-j > 4 {
			continue
		}
		others := false
		for _, c := range h[j+2:] {
			g := lex.read(c)
			others = others || g.known && g.meaning != Points && g.meaning != Other
		}
		if g := lex.read(h[j+1]); others || !g.known || g.meaning != Position && g.meaning != Points || !t.countsFrom(l, j+1) {
			continue
		}
		for i := l.first; i < t.grid.len(); i++ {
			if _, cells := t.grid.at(i); !isBlank(cellAt(cells, j)) {
				return nil, 0
			}
		}
		return []int{0, j + 1}, j + 1
	}
	return nil, 0
}

// countsFrom says whether a column counts up from 1 below the heading, row by row.
func (t table) countsFrom(l layout, column int) bool {
	n := 0
	for i := l.first + l.lines; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		c := trim(cellAt(cells, column))
		if c == "" {
			break
		}
		if n++; c != strconv.Itoa(n) {
			return false
		}
	}
	return n >= 3
}

// blocks gives the columns at which the headings begin again.
func blocks(lex *lexicon, headings []string) []int {
	first := -1
	for i, h := range headings {
		if h != "" {
			first = i
			break
		}
	}
	if first < 0 {
		return nil
	}
	starts, alike := []int{first}, true // alike: three headings of each block are those of the first
	for i := first + 2; i < len(headings); i++ {
		apart := headings[i-1] == "" && headings[i] != "" // "Men Place | … | | Women Place"
		if fold(headings[i]) != fold(headings[first]) && !apart {
			continue
		}
		// At least two headings must repeat, three where the first does not, and each block be
		// a table.
		same := 0
		for k := 1; i+k < len(headings) && first+k < i; k++ {
			if a := fold(headings[first+k]); a != "" && a == fold(headings[i+k]) {
				same++
			}
		}
		if same >= 1 && fold(headings[i]) == fold(headings[first]) || same >= 3 {
			starts = append(starts, i)
			alike = alike && same >= 3
		}
	}
	if len(starts) < 2 || len(starts) > 60 {
		return nil
	}
	results, whole, halves := 0, 0, 0
	for k := range starts {
		switch core := coreOf(lex, blockOf(headings, starts, k)); {
		case core&2 != 0 && (core&5 != 0 || alike):
			results++
		case core == 5:
			halves++ // people with their places; where no block has times, the names of a result
			whole++
		case core&4 != 0 && core&2 == 0:
			whole++ // a list of people, and of no run
		}
	}
	if results == 0 && halves < len(starts) || results+whole < len(starts) {
		return nil
	}
	return starts
}

// blockOf are the headings of one of the blocks that begin at some columns.
func blockOf(headings []string, starts []int, k int) []string {
	to := len(headings)
	if k+1 < len(starts) {
		to = starts[k+1]
	}
	return headings[starts[k]:to]
}

// inSeveral says whether a title row has cells in more than one block.
func inSeveral(cells []string, starts []int) bool {
	in := -1
	for i, c := range cells {
		if isBlank(c) {
			continue
		}
		block := 0
		for k, from := range starts {
			if i >= from {
				block = k
			}
		}
		if in >= 0 && in != block {
			return true
		}
		in = block
	}
	return false
}
