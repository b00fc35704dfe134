package sheet

import (
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
				if g := lex.read(c[len(c)-1]); g.known && g.meaning.isTime() && kindOf(cellAt(rows[i+1].cells, len(c)-1)) != kText {
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

// aboveValues is the row right above the first row of values if it is a heading
// of which only a word is known: "Name | Round one | Round two". -1 for none.
func aboveValues(lex *lexicon, rows []line) int {
	v := firstValues(rows)
	if v < 1 || rows[v-1].row != rows[v].row-1 {
		return -1
	}
	filled, core, width := 0, false, 0
	for _, r := range rows[v:min(len(rows), v+headingLooks)] {
		width = max(width, len(r.cells)) // a runner may have missed the last runs
	}
	for i, c := range rows[v-1].cells {
		if isBlank(c) {
			continue
		}
		if kindOf(c) != kText || i >= width {
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
	figures := 0
	for _, c := range cells {
		if c = trim(c); c != "" {
			filled++
			if c[0] >= '0' && c[0] <= '9' && (len(c) > 5 || c[len(c)-1]|0x20 != 'k' && c[len(c)-1]|0x20 != 'm') { // 1k, 2 km
				figures++
			}
		}
	}
	if filled == 0 || figures*3 > filled+2 {
		return 0, filled
	}
	filled = 0
	known, core, values, repeated := 0, 0, 0, 0
	var seen [PersonalBest + 1]bool
	last := byte(0)
	for _, c := range cells {
		if isBlank(c) {
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
		switch k := kindOf(c); k {
		case kGroup:
			if _, from, to, ok := findDistance(c); ok && from == 0 && to == len(c) {
				continue // 1k, 2k: splits
			}
			values++
		case kInt, kDecimal, kClock, kDate, kPercent, kSex, kStatus:
			values++
		}
	}
	switch {
	case filled == 0 || core == 0 || values*3 > filled:
		return 0, filled
	case known < 2 || (known+repeated)*3 < filled:
		return 0, filled
	}
	return known*2 - values, filled
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
	for _, w := range words[:len(words)-1] {
		if headingWords[w]&(cTime|cUnit|cGun|cChip|cPlace|cRun) == 0 {
			return 0
		}
	}
	return timeUnits[words[len(words)-1]]
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
		case isUnit(f) && under:
			known++
		}
	}
	return filled > 0 && known*2 >= filled && known >= 1 && (filled >= 2 || isUnit(fold(strings.Join(cells, ""))))
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
			return false
		}
		switch kindOf(c) {
		case kInt, kDecimal, kClock, kDate, kPercent:
			return false
		}
		if strings.HasSuffix(trim(c), ":") {
			return false
		}
		// "Men" over "Pos" is the title of a table, no half of a heading.
		if g := lex.read(c); g.known || !isSection(trim(c)) && lex.read(joinLines(trim(c), trim(bottom[i]))).known {
			known++
		}
	}
	return filled >= 2 && known*2 >= filled
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
		case lex.read(both).known:
			out[i] = both
		case b != "" && lex.read(b).known:
			out[i] = b
		case t != "" && lex.read(t).known:
			out[i] = t
		default:
			out[i] = both
		}
	}
	return trimmed(out)
}

// why says what a row is.
type why uint8

const (
	isData why = iota
	whyBlank
	whyFooter
	whyTotal
	whyHeading
	whySection
	whyNumberOnly
	whyNoResult
)

// String is the word printed in lists of skipped rows.
func (w why) String() string {
	return [...]string{"data", "blank", "footer", "total", "repeated heading", "section line", "only a position, and no result after it", "no result"}[w]
}

// rowRules tells rows that stand for a finisher from all others.
type rowRules struct {
	first, last   int // rows of the table; last 0 means to the end
	columns       int
	pos, time     int
	name, given   int
	number        int
	hasPositions  bool
	headings      []string   // folded
	headingLines  [][]string // the lines of a heading of two, folded, which pages repeat one by one
	kinds         []kind     // what nearly every cell of a column is; kBlank where that is nothing in particular
	clock         []int      // columns of hours, minutes and seconds
	beside        beside
	between       bool           // clock are the times of day of start and finish
	lastFilled    int            // last row with more than a printed position; 0 means not known
	fill          []int          // columns whose blank cells repeat the cell above
	sections      map[int]string // row of a section line -> the value it sets for the rows below
	sectionColumn int            // column that carries it; -1 for none
	firstSection  string         // section above the first row
	lastSure      int            // last row that is a result beyond doubt; 0 means not known
	tail          int            // rows from here on stand apart from the results above; 0 for none
	date1904      bool           // day numbers count from 1904
	sample        []line         // rows of a sheet too large to hold
	volunteers    bool           // a list of who helped

	above   []string
	section string
	buf     []string
}

// restart prepares a copy for one pass over the rows.
func (r *rowRules) restart() {
	r.buf = nil
	r.section = r.firstSection
	r.above = nil
	if len(r.fill) > 0 {
		r.above = make([]string, len(r.fill))
	}
}

func cellAt(cells []string, i int) string {
	if i < 0 || i >= len(cells) {
		return ""
	}
	return cells[i]
}

// digitsOnly is the cheap test for a position.
func digitsOnly(s string) bool {
	if s == "" || len(s) > 7 {
		return false
	}
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return true
}

func (r *rowRules) classify(row int, cells []string) why {
	// Nearly every row of a large sheet: a plain position and a time.
	if r.pos >= 0 && digitsOnly(cellAt(cells, r.pos)) && (r.time < 0 || len(cellAt(cells, r.time)) > 2 && cells[r.time][0] >= '0' && cells[r.time][0] <= '9') && (r.time >= 0 || r.name >= 0 && cellAt(cells, r.name) != "") {
		return isData
	}
	if r.sections != nil {
		if v, ok := r.sections[row]; ok {
			r.section = v
			return whySection
		}
	}
	filled, firstFilled := 0, -1
	for i, c := range cells {
		if !isBlank(c) {
			filled++
			if firstFilled < 0 {
				firstFilled = i
			}
		}
	}
	if filled == 0 || isRule(cells) {
		return whyBlank
	}
	if r.volunteers {
		return r.classifyVolunteer(cells, filled)
	}
	pos, tm := trim(cellAt(cells, r.pos)), trim(cellAt(cells, r.time))
	posKind := kindOf(pos)
	if filled == 1 && posKind == kInt {
		if r.lastFilled > 0 && row > r.lastFilled {
			return whyNumberOnly
		}
		return isData
	}
	if r.isHeading(cells, filled) {
		return whyHeading
	}
	label := trim(cells[firstFilled])
	folded := fold(label)
	if posKind != kInt && (isTotal(folded) || isRecord(folded)) {
		return whyTotal
	}
	if pairs := onlyCounts(cells); pairs > 1 || pairs == 1 && posKind != kInt {
		return whyTotal
	}
	named := trim(cellAt(cells, r.name)) != "" || trim(cellAt(cells, r.given)) != ""
	numbered := r.number >= 0 && trim(cellAt(cells, r.number)) != ""
	timed := false
	if tm != "" {
		switch kindOf(tm) {
		case kClock, kDecimal, kInt, kStatus, kGroup:
			timed = true
		case kDate:
			timed = strings.Count(tm, ".") == 2 // 1.02.31 in a column of h.mm.ss
		}
	}
	if posKind == kInt && !timed {
		for i, c := range cells {
			if f := fold(c); totalWords[f] && !softTotals[f] || f == "total" || i == firstFilled && (i != r.name || strings.IndexByte(f, ' ') > 0) && isTotal(f) {
				return whyTotal
			}
		}
	}
	if posKind != kInt {
		// Words under a heading of figures are no result, as in
		// "Fastest | Jo Lee | 18:20" or "Marshal | Al Roe".
		for i, k := range r.kinds {
			if k != kBlank && i != r.pos && i != r.time && kindOf(cellAt(cells, i)) == kText {
				return whyFooter
			}
		}
		if r.tail > 0 && row >= r.tail && !((named || numbered) && hasStatus(cells)) {
			return whyFooter
		}
	}
	switch {
	case r.pos >= 0 && r.hasPositions && pos != "" && posKind != kInt && posKind != kStatus:
		if row < r.lastSure && named && timed && strings.ContainsAny(pos, "0123456789") {
			return isData // a place that somebody was not sure of: "4?"
		}
		return whyFooter
	case filled == 1 && named && r.pos < 0 && row < r.lastSure && looksNamed(label):
		return isData // nobody took the time of this one
	case filled == 1 && !timed && !(named && r.pos < 0 && r.time < 0):
		return whyFooter
	case strings.HasSuffix(label, ":") && posKind != kInt:
		return whyFooter
	case r.lastSure > 0 && row > r.lastSure && r.hasPositions && posKind == kBlank && !timed && r.time >= 0 && !hasStatus(cells) && !r.describesPerson(cells, filled):
		return whyNoResult
	case named && (filled > 1 || r.pos < 0 && r.time < 0):
		return isData
	case timed && (posKind == kInt || numbered || !r.hasPositions):
		return isData
	case posKind == kInt, posKind == kStatus && pos != "" && fold(pos) != "":
		return isData
	case numbered && filled > 1:
		return isData
	}
	return whyNoResult
}

// looksNamed says whether a text may be a person's name: two to four words,
// none of them a figure, and neither a sex nor a group.
func looksNamed(text string) bool {
	n := len(strings.Fields(text))
	return n >= 2 && n <= 4 && kindOf(text) == kText && !isSection(text) && !strings.ContainsAny(text, "0123456789:!?")
}

// describesPerson says whether a row without position and time has, beside a
// name, a sex, an age or a club where the sheet has them.
func (r *rowRules) describesPerson(cells []string, filled int) bool {
	if isBlank(cellAt(cells, r.name)) && isBlank(cellAt(cells, r.given)) {
		return false
	}
	for i, k := range r.kinds {
		if k != kBlank && i != r.pos && i != r.time && !isBlank(cellAt(cells, i)) {
			return true
		}
	}
	return filled >= 3
}

// hasStatus says whether a cell says why there is no time.
func hasStatus(cells []string) bool {
	for _, c := range cells {
		if kindOf(c) == kStatus {
			return true
		}
	}
	return false
}

// onlyCounts recognises lines such as "Men | 31 | Women | 28": every text is a
// sex, a group or a word of totals, and a number follows.
func onlyCounts(cells []string) (pairs int) {
	words, expect := 0, false
	for _, c := range cells {
		switch kindOf(c) {
		case kBlank:
		case kInt:
			if !expect {
				return 0
			}
			pairs++
			expect = false
		case kSex, kGroup:
			if len(trim(c)) < 2 {
				return 0
			}
			words++
			expect = true
		case kText:
			if !isTotal(fold(c)) {
				return 0
			}
			words++
			expect = true
		default:
			return 0
		}
	}
	if words != pairs {
		return 0
	}
	return pairs
}

// isHeading says whether a row repeats the heading, as at the top of a page.
func (r *rowRules) isHeading(cells []string, filled int) bool {
	if sameHeading(r.headings, cells, filled) {
		return true
	}
	for _, l := range r.headingLines {
		if sameHeading(l, cells, filled) {
			return true
		}
	}
	return false
}

func sameHeading(headings, cells []string, filled int) bool {
	same := 0
	for i, c := range cells {
		if i >= len(headings) {
			break
		}
		if h := headings[i]; h != "" && c != "" && (c[0]|0x20 == h[0] || c[0] >= 0x80 || c[0] <= ' ') && fold(c) == h {
			same++
		}
	}
	return same*2 >= filled && (same >= 2 || same == 1 && filled == 1)
}

// isTotal recognises the words that begin a line of totals, in the languages
// of headings (common practice, no source).
func isTotal(f string) bool {
	if f == "" || len(f) > 60 {
		return false
	}
	head, rest, _ := strings.Cut(f, " ")
	if totalWords[head] {
		// "Best, George" is a name; "Best time" is not.
		return rest == "" || !softTotals[head] || totalTails[strings.Fields(rest)[0]]
	}
	return strings.HasPrefix(f, "number of ") || strings.HasPrefix(f, "no of ") || strings.HasPrefix(f, "anzahl ") || strings.HasPrefix(f, "nombre de ") || strings.HasPrefix(f, "numero de ") || strings.HasPrefix(f, "numero di ")
}

// isRecord recognises what begins a line about a record: "Course record: Jo Lee".
func isRecord(f string) bool {
	words := strings.Fields(f)
	if len(words) > 0 && recordWords[words[0]] {
		return true
	}
	return len(words) > 1 && recordWords[words[1]] && recordOf[words[0]]
}

var recordWords = set("record records rekord rekorde recordtijd streckenrekord parcoursrecord baanrecord streckenrekorde")

var recordOf = set("course club track venue event ladies womens women mens men male female current previous old new all parcours overall junior veteran age group")

var totalWords = set(`avg target total totals totaal totale totali totalt gesamt gesamtzahl summe sum suma somme razem ogolem average mean median mittelwert durchschnitt
	schnitt moyenne mediane media mediana gemiddelde gemiddeld srednia mediana snitt genomsnitt gjennomsnitt gennemsnit medel fastest slowest quickest
	count finishers finisher counted maximum minimum max min teilnehmerzahl anzahl antal antall best subtotal sous participants schnellste langsamste`)

// softTotals may also begin a person's name.
var softTotals = set("best max min mean sum count suma sous media fastest finisher participants total")

var totalTails = set("time times of finishers finisher runners number age man men woman women male female lap score zeit temps tiempo tempo tijd tid total participants parcial and all runner club")

// shape fits the cells to the columns: short rows are filled up, blanks are
// filled from above where the sheet leaves repeated values out, and the section
// above the row is added.
func (r *rowRules) shape(cells []string) []string {
	if len(cells) >= r.columns && len(r.fill) == 0 && r.sectionColumn < 0 && len(r.clock) == 0 && r.beside.none() {
		return cells
	}
	if r.buf == nil {
		r.buf = make([]string, 0, r.columns+8)
	}
	real := r.columns
	if r.sectionColumn >= 0 {
		real--
	}
	if len(r.clock) > 0 {
		real--
	}
	b := append(r.buf[:0], cells...)
	for len(b) < real {
		b = append(b, "")
	}
	for k, i := range r.fill {
		if isBlank(b[i]) || isDitto(b[i]) {
			b[i] = r.above[k]
		} else {
			r.above[k] = b[i]
		}
	}
	r.beside.mend(b)
	if len(r.clock) > 0 {
		join := joinClock
		if r.between {
			join = between
		}
		b = append(b[:real], join(b, r.clock))
	}
	if r.sectionColumn >= 0 {
		b = append(b[:r.sectionColumn], r.section)
	}
	r.buf = b
	return b
}

// isDitto says whether a cell repeats the one above by a mark.
func isDitto(s string) bool {
	switch trim(s) {
	case "\"", "''", "〃", "”", "“", "״", ",,", "„", "-\"-", "-''-", "do", "do.", "ditto", "dto", "dto.", "id.", "idem", "= =", "^":
		return true
	}
	return false
}

// joinClock writes the cells of hours, minutes and seconds as one time.
func joinClock(cells []string, parts []int) string {
	var b strings.Builder
	for k, i := range parts {
		c := trim(cells[i])
		if c != "" && (c[0] < '0' || c[0] > '9') {
			return c // DNF, or a dash
		}
		if c == "" && k == 0 && len(parts) == 3 {
			continue
		}
		if c == "" {
			if b.Len() == 0 {
				return ""
			}
			c = "0"
		}
		if b.Len() > 0 {
			b.WriteByte(':')
			if whole, _, _ := strings.Cut(strings.ReplaceAll(c, ",", "."), "."); len(whole) == 1 {
				b.WriteByte('0')
			}
		}
		b.WriteString(c)
	}
	return b.String()
}

// problem makes a Problem of the part.
func (p *Part) problem(sheet string, row, column int, sev place.Severity, kind, read, expected, do string) {
	pl := place.Place{Sheet: sheet, Tab: p.Tab, Row: row}
	if column >= 0 {
		pl.Column = place.ColumnLetters(column)
	}
	p.Problems = append(p.Problems, place.Problem{Place: pl, Severity: sev, Kind: kind, Read: shorten(read, 80), Expected: expected, Do: do})
}
