package sheet

import (
	"regexp"
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

// line is one row held in memory.
type line struct {
	row   int
	cells []string
}

// headingLooks is how many filled rows are searched for the heading.
const headingLooks = 60

// layout is where the heading of a table stands.
type layout struct {
	first    int // index of the first heading line; -1 for none
	lines    int // 1 or 2
	headings []string
}

// findHeading looks for the row whose cells are heading words and not values.
// A heading may take two rows ("Finish" over "time"); both are then joined
// column by column. The first row that qualifies wins unless one of the two
// below it is clearly better.
func findHeading(lex *lexicon, rows []line) layout {
	looked, best, bestScore := 0, -1, 0
	for i := range rows {
		if looked >= headingLooks {
			break
		}
		score, filled := headingScore(lex, rows[i].cells)
		if filled == 0 {
			continue
		}
		looked++
		if score > 0 && (best < 0 || score > bestScore && i <= best+2) {
			best, bestScore = i, score
		}
		if best >= 0 && i > best+2 {
			break
		}
	}
	if best < 0 {
		// A list of times alone has one heading.
		for i := range rows {
			if c := trimmed(rows[i].cells); len(c) > 0 && rowFilled(c) == 1 && i+1 < len(rows) {
				if g := lex.read(c[len(c)-1]); g.known && g.meaning.isTime() && overTimes(nextFilled(rows[i+1:]), len(c)-1) {
					best = i
					break
				}
			}
		}
	}
	if best < 0 {
		best = aboveValues(lex, rows)
	}
	if best < 0 {
		return layout{first: -1}
	}
	l := layout{first: best, lines: 1, headings: trimmed(rows[best].cells)}
	// A line below that is no data belongs to the heading: units, or the
	// second half of the words.
	if best+1 < len(rows) && isHeadingTail(lex, rows[best].cells, rows[best+1].cells) {
		l.lines = 2
		l.headings = joinHeadings(lex, rows[best].cells, rows[best+1].cells)
	} else if best > 0 && rows[best-1].row == rows[best].row-1 && isHeadingTop(lex, rows[best-1].cells, rows[best].cells) {
		l.first, l.lines = best-1, 2
		l.headings = joinHeadings(lex, rows[best-1].cells, rows[best].cells)
	}
	return l
}

// overTimes says whether a lone heading for times may stand over a column of this row: no
// text stands there, nor the place of a runner whose time stands in another column.
func overTimes(cells []string, column int) bool {
	switch kindOf(cellAt(cells, column)) {
	case kText, kSex, kGroup:
		return false
	case kClock, kDecimal:
		return true
	case kDate:
		if hasLetter(cellAt(cells, column)) {
			return false // the day below a title, "Resultat Lillsjön"
		}
	}
	return !slices.ContainsFunc(cells, func(c string) bool { return kindOf(c) == kClock })
}

// nextFilled are the cells of the first row that is not blank.
func nextFilled(rows []line) []string {
	for _, r := range rows {
		if rowFilled(r.cells) > 0 {
			return r.cells
		}
	}
	return nil
}

// resultsAbove is the first of the rows above a heading that are results like those below
// it: three or more of as many cells, with places that go on below the heading. -1 for none.
func resultsAbove(lex *lexicon, rows []line, l layout) int {
	pos, time := -1, -1
	for i, h := range l.headings {
		switch g := lex.read(h); {
		case !g.known:
		case g.meaning == Position && pos < 0:
			pos = i
		case g.meaning.isTime() && time < 0:
			time = i
		}
	}
	if l.first < 1 || l.first+l.lines >= len(rows) {
		return -1
	}
	below := rows[l.first+l.lines].cells
	if pos < 0 || time < 0 {
		pos, time = placeAndTimeOf(rows[l.first-1].cells, below)
	}
	if pos < 0 || time < 0 {
		return -1
	}
	like := kindOf(cellAt(below, time))
	if like != kInt && like != kDecimal { // 1828, 18.28
		like = kClock
	}
	result := func(cells []string) bool {
		return placeKind(trim(cellAt(cells, pos))) == kInt && kindOf(cellAt(cells, time)) == like && len(trimmed(cells)) <= len(l.headings)
	}
	first, n, last := -1, 0, 0.0
	for i := l.first - 1; i >= 0; i-- {
		filled := rowFilled(rows[i].cells)
		if filled == 0 || n == 0 && filled <= 2 && numbersPage(rows[i].cells) {
			continue
		}
		if !result(rows[i].cells) {
			if n > 0 && filled > 2 && placeKind(trim(cellAt(rows[i].cells, pos))) == kInt && len(trimmed(rows[i].cells)) <= len(l.headings) {
				continue // somebody without a time
			}
			break
		}
		if n++; n == 1 {
			last = placeNumber(trim(rows[i].cells[pos]))
		}
		first = i
	}
	if n < 3 {
		return -1
	}
	if !result(below) || placeNumber(trim(below[pos])) != last+1 {
		return -1
	}
	return first
}

// placeAndTimeOf finds by the values of two rows on end the column whose number goes on by one,
// and one whose time is no less in the second; -1 for either that is not there.
func placeAndTimeOf(row, next []string) (pos, time int) {
	pos, time = -1, -1
	for i := range min(len(row), len(next)) {
		a, b := trim(row[i]), trim(next[i])
		ka, kb := kindOf(a), kindOf(b)
		switch {
		case placeKind(a) == kInt && placeKind(b) == kInt && placeNumber(b) == placeNumber(a)+1 && pos < 0:
			pos = i
		case ka == kb && (ka == kClock || ka == kDecimal || ka == kInt && looseNumber(a) >= 600) && looseNumber(b) >= looseNumber(a) && looseNumber(a) > 0 && time < 0:
			time = i
		}
	}
	return pos, time
}

// runsOn says whether half of the lines with times have two results and more each, as
// where a report tells them in one paragraph: "1 Jo Lee 18:20, 2 Al Roe 18:31".
func runsOn(rows []line) bool {
	timed, several := 0, 0
	for _, r := range rows {
		n := 0
		for _, c := range r.cells {
			n += len(resultInText.FindAllString(c, 2))
		}
		if n > 0 {
			timed++
		}
		if n > 1 {
			several++
		}
	}
	return several >= 2 && 2*several >= timed
}

// resultInText is a name and a time with nothing but a space between.
var resultInText = regexp.MustCompile(`\pL[\pL'’.-]* \d{1,2}[:.]\d{2}(?:$|[^\d:.])`)

// aboveValues is the row right above the first row of values if it is a heading
// of which only a word is known: "Name | Round one | Round two". -1 for none.
func aboveValues(lex *lexicon, rows []line) int {
	v := firstValues(rows)
	if v < 1 || rows[v-1].row != rows[v].row-1 {
		return -1
	}
	filled, core, width := 0, overFigures(rows[v-1].cells, rows[v:]), 0
	for _, r := range rows[v:min(len(rows), v+headingLooks)] {
		width = max(width, len(r.cells)) // a runner may have missed the last runs
	}
	for i, c := range rows[v-1].cells {
		if isBlank(c) {
			continue
		}
		if k := kindOf(c); k != kText && (k != kSex && k != kGroup || !lex.read(c).known) || i >= width {
			return -1
		}
		filled++
		switch g := lex.read(c); g.meaning {
		case Position, Name, GivenName, FamilyName, Time, GunTime, ChipTime:
			core = core || g.known
		}
	}
	if !core || filled < 2 || filled+1 < rowFilled(rows[v].cells) {
		return -1
	}
	return v - 1
}

// overFigures says whether a row has one short word over every column of the three rows
// that follow it, over the places and the times among them: "Psn | Nm | Tm". Each row is filled where
// the first is.
func overFigures(words []string, rows []line) bool {
	if len(rows) < 3 {
		return false
	}
	n, clocks, counts := 0, 0, 0
	seen := map[string]bool{}
	for i, w := range trimmed(words) {
		if w == "" && isBlank(cellAt(rows[0].cells, i)) {
			continue
		}
		if w == "" || len(w) > 12 || strings.ContainsAny(w, " :0123456789") || seen[w] {
			return false
		}
		seen[w] = true
		n++
		c, k := 0, 0
		for _, r := range rows[:3] {
			switch kindOf(cellAt(r.cells, i)) {
			case kClock:
				c++
			case kInt:
				k++
			}
		}
		if c == 3 {
			clocks++
		}
		if k == 3 {
			counts++
		}
	}
	return n >= 3 && clocks == 1 && counts >= 1
}

func trimmed(cells []string) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		out[i] = strings.Join(strings.Fields(trim(c)), " ")
	}
	for len(out) > 0 && out[len(out)-1] == "" {
		out = out[:len(out)-1]
	}
	return out
}

// headingScore counts the heading words of a row; 0 where it can't be a
// heading because it holds values or too few words.
func headingScore(lex *lexicon, cells []string) (score, filled int) {
	// Nearly all rows are results: see the figures before reading any word.
	figures, ages, counted := 0, 0, countedHeads(cells)
	for i, c := range cells {
		if c = trim(c); c != "" && !counted.has(i) {
			filled++
			if c[0] >= '0' && c[0] <= '9' && !looksDated(c) && (len(c) > 5 || c[len(c)-1]|0x20 != 'k' && c[len(c)-1]|0x20 != 'm') { // 1k, 2 km
				if len(c) > 9 && hasLetter(c) && kindOf(c) == kClock {
					return 0, filled // "19 minutes 17 seconds"
				}
				if figures++; len(c) < 9 && strings.ContainsAny(c, "-+–") && agesSpan.MatchString(c) {
					ages++
				}
			}
		}
	}
	if filled == 0 || (figures-ages)*3 > filled+2 {
		return 0, filled
	}
	filled = 0
	known, core, values, repeated := 0, 0, 0, 0
	dates := 0 // two and more among words are the runs of a table of points or times
	classes := map[string]int{}
	men, women := 0, 0 // cells that say the one sex or the other: the heads of columns of ticks where each stands once
	splits := 0
	var seen [PersonalBest + 1]bool
	last := byte(0)
	for i, c := range cells {
		if isBlank(c) || counted.has(i) {
			continue
		}
		filled++
		if figures == 0 { // "Min" and "Sec" side by side are a time
			u := unitHeading(c)
			if u == 's' && last == 'm' && seen[Time] {
				repeated += 2
			} else if u == 's' && last == 'm' {
				known += 2
				core++
				seen[Time] = true
			}
			if last = u; u != 0 && !lex.read(c).known {
				continue
			}
		}
		g := lex.read(c)
		if g.known && (g.meaning == GunTime || g.meaning == Session) && clockInside.MatchString(c) {
			values++ // "Gun 9:02"
			continue
		}
		if g.known {
			if !seen[g.meaning] || g.meaning == Other {
				known++
			} else {
				repeated++ // tables side by side say everything twice
			}
			seen[g.meaning] = true
			switch g.meaning {
			case Position, Name, GivenName, FamilyName, Time, GunTime, ChipTime, Number:
				core++
			}
			continue
		}
		if t := trim(c); t != "" && t[0] >= '0' && t[0] <= '9' && hasLetter(t) {
			if _, from, to, ok := findDistance(t); ok && from == 0 && to == len(t) {
				splits++
				continue // 1k, 2 km: splits
			}
		}
		switch k := kindOf(c); k {
		case kGroup:
			classes[fold(c)]++
			values++
		case kDate:
			dates++
		case kInt, kDecimal, kClock, kPercent, kSex, kStatus:
			values++
			if f := fold(c); k == kSex && menWords[f] {
				men++
			} else if k == kSex && womenWords[f] {
				women++
			}
		}
	}
	if splits > 1 && seen[Name] {
		filled -= splits - 1 // one of them is the finish
	}
	if dates < 2 || known < 2 || !seen[Name] && !seen[FamilyName] {
		values += dates
	}
	if men == 1 && women == 1 && repeated == 0 {
		values -= 2
		known += 2
	}
	if len(classes) >= 3 && values <= len(classes)+men+women && known >= 2 && seen[Position] && (seen[Name] || seen[FamilyName]) {
		values = 0 // classes side by side, under one of which something stands
		known += len(classes)
	}
	switch {
	case filled == 0 || core == 0 || values*3 > filled:
		return 0, filled
	case known < 2 || (known+repeated)*3 < filled:
		return 0, filled
	}
	return known*2 - values, filled
}

// agesSpan is a heading of ages, "18-39", "60+", under which those of that class have a mark.
var agesSpan = regexp.MustCompile(`^\d{1,2} ?(?:[-–] ?\d{2}|\+)$`)

// looksDated is the cheap test for a day in figures: three groups of them between two equal marks,
// as 2026-01-03 and 3.1.26. Many of these may head the columns of a season.
func looksDated(c string) bool {
	if len(c) < 6 || len(c) > 10 {
		return false
	}
	mark, marks := byte(0), 0
	for i := range len(c) {
		switch b := c[i]; {
		case b >= '0' && b <= '9':
		case (b == '-' || b == '.' || b == '/') && (mark == 0 || mark == b):
			mark = b
			marks++
		default:
			return false
		}
	}
	return marks == 2
}

// columnSpan is a stretch of columns, from the first to before the second.
type columnSpan [2]int

func (s columnSpan) has(column int) bool { return column >= s[0] && column < s[1] }

// countedHeads are the columns of a row that are headed by their number alone, 1, 2, 3: those of
// the scorers of a team, of laps or of rounds. A place followed by a count is none.
func countedHeads(cells []string) (s columnSpan) {
	const fewest = 3
	for i, c := range cells {
		c = trim(c)
		if s[1] == i && i > s[0] && len(c) == 1 && c[0] == byte('1'+i-s[0]) {
			s[1] = i + 1
		} else if s[1]-s[0] >= fewest {
			return s
		} else if s = (columnSpan{i, i}); c == "1" {
			s[1] = i + 1
		}
	}
	if s[1]-s[0] < fewest {
		return columnSpan{}
	}
	return s
}

// unitHeading says which part of a time a heading is for, 'h', 'm' or 's'; 0
// for none.
func unitHeading(heading string) byte {
	if len(heading) > 40 {
		return 0
	}
	words := strings.Fields(fold(unmangle(heading)))
	if len(words) == 0 {
		return 0
	}
	last := timeUnits[words[len(words)-1]]
	for _, w := range words[:len(words)-1] {
		switch {
		case w == "km" || w == "mi" || w == "miles" || w == "mile":
			return 0 // "km/h", a speed
		case w == "/", timeUnits[w] == last && len(w) > 1: // "Mins / Minutos"
		case headingWords[w]&(cTime|cUnit|cGun|cChip|cPlace|cRun) == 0:
			return 0
		}
	}
	return last
}

// isHeadingTail says whether a row carries on the heading above it.
func isHeadingTail(lex *lexicon, top, cells []string) bool {
	known, filled := 0, 0
	for i, c := range cells {
		if isBlank(c) {
			continue
		}
		filled++
		switch kindOf(c) {
		case kInt, kDecimal, kClock, kDate, kPercent, kStatus:
			return false
		}
		f := fold(c)
		under := i < len(top) && !isBlank(top[i])
		switch g := lex.read(c); {
		case g.known && g.meaning != Other:
			known++
		case isUnit(f) && under && !isWho(lex.read(top[i]).meaning):
			known++
		}
	}
	return filled > 0 && known*2 >= filled && known >= 1 && (filled >= 2 || isUnit(fold(strings.Join(cells, ""))))
}

// isWho says whether a column of this meaning has no unit: MS under Place are senior men.
func isWho(m Meaning) bool {
	return m.isName() || m == Position || m == Number || m == Club || m == Sex || m == AgeGroup
}

// isHeadingTop says whether the row above completes the heading: at least two
// cells, of which half or more are heading words that make something of the
// words below them.
func isHeadingTop(lex *lexicon, cells, bottom []string) bool {
	if labelsAndValues(lex, cells) || onlySections(cells) {
		return false
	}
	filled, known := 0, 0
	for i, c := range cells {
		if isBlank(c) {
			continue
		}
		filled++
		if i >= len(bottom) {
			if g := lex.read(c); !g.known {
				return false
			}
			known++ // the last columns have one line of heading, the upper
			continue
		}
		switch kindOf(c) {
		case kInt, kDecimal, kClock, kDate, kPercent:
			return false
		}
		if label, value, ok := strings.Cut(trim(c), ":"); ok && (value == "" || value[0] == ' ' && isLabel(lex, label+":")) {
			return false // "Course: two laps, firm"
		}
		if clockInside.MatchString(c) {
			return false // "Gun 9:02"
		}
		if isQuantity(c) {
			return false // "Wind | 12 km/h"
		}
		// "Men" over "Pos" is the title of a table, no half of a heading.
		g, below, both := lex.read(c), lex.read(trim(bottom[i])), lex.read(joinLines(trim(c), trim(bottom[i])))
		if g.known || !isSection(trim(c)) && both.known && (!below.known || onlyHeadingWords(c) || len(strings.Fields(c)) == 1) {
			known++ // "Alder Bank" over "Pos" is no half of a heading
		}
	}
	return filled >= 2 && known*2 >= filled
}

// isQuantity says whether a cell is a number with its unit, which no line of headings
// has, unless it is a distance: 12 km/h, 5 °C.
func isQuantity(c string) bool {
	c = trim(c)
	toks := tokenize(c)
	if len(toks) == 0 || toks[0].kind != 'd' {
		return false
	}
	if strings.Contains(c, "°") {
		return true
	}
	for i := 1; i < len(toks); i++ {
		if toks[i].kind == 'l' {
			return isSpeed(toks, i)
		}
	}
	return false
}

// onlyHeadingWords says whether each word of a cell is one of headings.
func onlyHeadingWords(c string) bool {
	for _, w := range strings.Fields(fold(c)) {
		if headingWords[w] == 0 {
			return false
		}
	}
	return true
}

// onlySections says whether every filled cell of a row names a sex or an age group, as
// "Men" merged over the columns of the men does.
func onlySections(cells []string) bool {
	n := 0
	for _, c := range cells {
		if isBlank(c) {
			continue
		}
		if !isSection(trim(c)) {
			return false
		}
		n++
	}
	return n > 0
}

// labelsAndValues says whether a row is nothing but labels, each with its value in
// the next filled cell: "Venue | Alder Bank".
func labelsAndValues(lex *lexicon, cells []string) bool {
	n := 0
	for _, c := range cells {
		if isBlank(c) {
			continue
		}
		c = trim(unmangle(c))
		if n%2 == 0 && !isLabel(lex, c) || n%2 == 1 && lex.read(c).known {
			return false
		}
		n++
	}
	return n > 0 && n%2 == 0
}

func isUnit(f string) bool {
	if f == "" {
		return false
	}
	for _, w := range strings.Fields(f) {
		if headingWords[w] != cUnit && w != "/" {
			return false
		}
	}
	return true
}

// joinLines joins a line with the one below it; a hyphen at its end divides a word:
// "Helye-" over "zés".
func joinLines(top, bottom string) string {
	if word := strings.TrimRight(top, "-\u00AD"); word != top && word != "" && bottom != "" {
		return word + bottom
	}
	return strings.TrimSpace(top + " " + bottom)
}

// joinHeadings joins two heading rows column by column. Where the two together
// mean nothing, the half that does is kept.
func joinHeadings(lex *lexicon, top, bottom []string) []string {
	n := max(len(top), len(bottom))
	out := make([]string, n)
	for i := range out {
		var t, b string
		if i < len(top) {
			t = trim(top[i])
		}
		if i < len(bottom) {
			b = trim(bottom[i])
		}
		both := joinLines(t, b)
		switch {
		case lex.read(t).meaning == Name && lex.read(b).meaning.isName() && isBlank(cellAt(top, i+1)) && lex.read(trim(cellAt(bottom, i+1))).meaning.isName():
			out[i] = b // "Nom" over "Prénom" and "Nom": the parts of a name, one a column
		case namesTheColumnsBelow(lex, t, b):
			out[i] = b
		case lex.read(both).known:
			out[i] = both
		case b != "" && lex.read(b).known:
			out[i] = b
		case unitHeading(b) != 0:
			out[i] = b // "Result" over "Min" and "Sec"
		case t != "" && lex.read(t).known:
			out[i] = t
		default:
			out[i] = both
		}
	}
	return trimmed(out)
}

// namesTheColumnsBelow says whether a heading only says what the columns below have in common,
// each of which has a whole heading of its own: "Result" over "Position", "Runner" over "Surname".
func namesTheColumnsBelow(lex *lexicon, top, bottom string) bool {
	if top == "" || bottom == "" || bottom[0] == '(' || bottom[0] == '[' { // "Time" over "(s)"
		return false
	}
	t, b := lex.read(top), lex.read(bottom)
	if !t.known || !b.known || t.number || b.number || t.meaning.isTime() && unitHeading(bottom) != 0 {
		return false
	}
	switch t.meaning {
	case Time:
		return b.meaning == Position || b.meaning.isName() || b.meaning == Sex || b.meaning == Age || b.meaning == AgeGroup || b.meaning == Club
	case Name:
		return b.meaning == Position || b.meaning == Time || b.meaning == Sex || b.meaning == Age || b.meaning == AgeGroup
	}
	return false
}

// problem makes a Problem of the part.
func (p *Part) problem(sheet string, row, column int, sev place.Severity, kind, read, expected, do string) {
	pl := place.Place{Sheet: sheet, Tab: p.Tab, Row: row}
	if column >= 0 {
		pl.Column = place.ColumnLetters(column)
	}
	p.Problems = append(p.Problems, place.Problem{Place: pl, Severity: sev, Kind: kind, Read: shorten(read, 80), Expected: expected, Do: do})
}

// ask raises a question that the whole sheet waits for, with its possible answers.
func (p *Part) ask(sheet string, column int, kind, read, expected, question string, answers ...string) {
	p.problem(sheet, 0, column, place.Waits, kind, read, expected, question)
	p.Problems[len(p.Problems)-1].Answers = strings.Join(answers, "\n")
}
