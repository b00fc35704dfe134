package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"lapwing/pipeline/text"
)

// partedLines cuts lines whose parts a mark divides, in whatever order they stand and with whatever
// stands together between two marks: "2) Jo Lee, Vale AC, 18:31", "12 - 19:02 - Jo Lee (W40)",
// "* 3 | Jo Lee 18:20 PB". Each part is known by what it is: a place counts on from the one above, a
// time, a class, words. It is for texts of which the usual ways leave one line in twenty and more
// without a cell for the name and one for the time, or take for sentences: cells are what these made
// of it, told says the latter. nil where
// it parts no more lines, where not nearly all lines with a time and the mark are so, and where it
// can't be told which words are the name.
func partedLines(text, cells []byte, divides byte, told bool) []string {
	whole, timed, classed := wholeRows(textLines(cells), divides)
	if told {
		whole, timed, classed = 0, 4, 0
	}
	if timed < 4 || 20*whole >= 19*timed && (10*classed >= 9*timed || len(text) > shortText) {
		return nil
	}
	lines := textLines(text)
	lex := newLexicon(Options{})
	if inParts(textLines(cells), divides, lex) {
		return nil
	}
	for _, mark := range partMarks(lines) {
		out := (&partReader{mark: mark}).cut(lines, lex)
		if out == nil {
			continue
		}
		more, _, classes := wholeRows(out, '\t')
		if more >= 4 && (10*more > 10*whole+timed || more >= whole && 10*(classes-classed) > timed && 10*classes >= 6*more) {
			return out
		}
	}
	return nil
}

// inParts says whether the lines are those of a table whose heading has places or names, and minutes and seconds in
// columns of their own, "Name,Mins,Secs", with as many cells on nine in ten lines: the time of such a row is
// in no one cell.
func inParts(lines []string, divides byte, lex *lexicon) bool {
	mark := string(rune(divides))
	for i, l := range lines[:min(len(lines), headingLooks)] {
		heading := strings.Split(l, mark)
		who, units := false, map[byte]bool{}
		for _, h := range heading {
			g := lex.read(h)
			who = who || g.known && isWho(g.meaning)
			units[unitHeading(h)] = true
		}
		if !who || !units['m'] || !units['s'] {
			continue
		}
		same, all := 0, 0
		for _, l := range lines[i+1:] {
			if n := strings.Count(l, mark); n > 0 {
				if all++; n == len(heading)-1 {
					same++
				}
			}
		}
		return same > 0 && same*10 >= all*9
	}
	return false
}

// shortText is a text of which every line may be looked at once more.
const shortText = 64 << 10

// wholeRows counts rows with a time, of these the ones that have a cell for it and one for a name:
// in the column in which most have the time, or where that is blank, as in a column for each course;
// and rows with a cell for a sex or a class, in the column in which most have it.
func wholeRows(lines []string, delim byte) (whole, timed, classed int) {
	type row struct {
		cells []string
		clock int // the first column with a time, -1 for none or where a cell holds more
		name  bool
	}
	var rows []row
	columns, usual, classes := map[int]int{}, -1, map[int]int{}
	for _, l := range lines {
		if len(l) > 400 || !looseClockInside.MatchString(l) || !hasLetter(l) {
			continue
		}
		r := row{cells: strings.Split(l, string(rune(delim))), clock: -1}
		mixed, begun, class, placed := false, false, -1, kindOf(strings.Trim(r.cells[0], " \"\r\u00A0")) == kInt
		for c, cell := range r.cells {
			if cell = strings.Trim(cell, " \"\r\u00A0"); cell == "" {
				continue
			}
			if !begun {
				begun = true
				mixed = kindOf(cell) == kText && (placeFirst.MatchString(partedLine(cell)) || placeNumberIn(cell) > 0)
			}
			k := kindOf(cell)
			if k == kSex || k == kGroup || bracketedClass(cell) {
				class = c
			}
			switch {
			case k != kClock && undivided(cell):
				mixed = true
			case k == kClock && !placeAndClock.MatchString(cell) || dottedTime.MatchString(cell):
				if r.clock < 0 {
					r.clock = c
				}
			case k == kText && hasLetter(cell) && hasNoDigit(inBracket.ReplaceAllString(cell, "")):
				r.name = true
			case k == kText && c > 0 && placed && nameAndNumber.MatchString(cell):
				r.name = true
			case k == kText && looseClockInside.MatchString(cell):
				mixed = true // a time and more
			}
		}
		if class >= 0 {
			classes[class]++
			classed = max(classed, classes[class])
		}
		if mixed {
			r.clock = -1
		}
		if c := r.clock; c >= 0 {
			if columns[c]++; usual < 0 || columns[c] > columns[usual] {
				usual = c
			}
		}
		rows = append(rows, r)
	}
	for _, r := range rows {
		if r.name && r.clock >= 0 && (r.clock == usual || isBlank(cellAt(r.cells, usual)) || kindOf(cellAt(r.cells, usual)) == kStatus) {
			whole++
		}
	}
	return whole, len(rows), classed
}

// nameAndNumber is a name with a number behind it, in a cell behind one for the place: "Jo Lee 217".
var nameAndNumber = regexp.MustCompile(`^\pL[\pL'.-]*(?: \pL[\pL'.-]*){1,3} #?\d{1,4}$`)

// bracketedClass says whether a class stands in brackets behind words.
func bracketedClass(cell string) bool {
	m := inBracket.FindStringSubmatch(cell)
	if m == nil {
		return false
	}
	k := kindOf(m[1])
	return k == kSex || k == kGroup
}

// undivided says whether a mark that stands between the parts of lines stands in a cell.
func undivided(cell string) bool {
	if listSign.MatchString(cell) && strings.TrimLeft(cell, "-–—*•·>+ ") != "" {
		return true
	}
	m := signBetween.FindStringSubmatch(cell + " ")
	return m != nil && strings.Trim(m[1], "-–—=*_|/>~;") == ""
}

// placeAndClock is a place beside a time, which together look like a time with blanks.
var placeAndClock = regexp.MustCompile(`^\d{1,4}[.)]? +\d{1,3}[:.mh'’]`)

var (
	// looseClockInside is what may be a time in a line.
	looseClockInside = regexp.MustCompile(`\d(?: ?[:;.'’′] ?|,)(?:\d[\dlIOSo]|[lIOSo]\d)|[lIO\d][lIOSo]:[\dlIOSo]{2}|\d ?(?:h|m|min|mins|minutes) ?\d`)
	// gapMark is a tab, or two blanks and more.
	gapMark = regexp.MustCompile(` *\t[ \t]*| {2,}`)
	// signBetween is a sign, or several in a row, that stands between blanks.
	signBetween = regexp.MustCompile(` ([\pP\pS]{1,3}) `)
	// listSign is what stands before the lines of some lists, or before some of them.
	listSign = regexp.MustCompile(`^(?:[-–—•·>+][ \t]+|\*[ \t]*)+`)
)

// gapsMark is the mark that stands for gaps.
const gapsMark = "\t"

// plainSpaces makes spaces that break no lines plain ones.
var plainSpaces = strings.NewReplacer("\u00A0", " ", "\u202F", " ")

// partedLine is a line without the spaces and the sign before it.
func partedLine(l string) string {
	return listSign.ReplaceAllString(strings.TrimSpace(plainSpaces.Replace(l)), "")
}

// partMarks are the marks that eight in ten of the lines with a time have between their parts, those
// that stand in most places first.
func partMarks(lines []string) []string {
	counts, in, timed := map[string]int{}, map[string]int{}, 0
	for _, l := range lines {
		if len(l) > 200 || !looseClockInside.MatchString(l) || !hasLetter(l) {
			continue
		}
		l = partedLine(l)
		timed++
		add := func(mark string, n int) {
			if n > 0 {
				counts[mark] += n
				in[mark]++
			}
		}
		add(gapsMark, len(gapMark.FindAllStringIndex(l, -1)))
		for _, mark := range []string{"|", ";", ","} {
			add(mark, len(cutAtMark(l, mark))-1)
		}
		seen := map[string]int{}
		for at := 0; ; {
			m := signBetween.FindStringSubmatchIndex(l[at:])
			if m == nil {
				break
			}
			if sign := l[at+m[2] : at+m[3]]; !strings.ContainsAny(sign, `|;,&#+"'()[]`) {
				seen[sign]++
			}
			at += m[3]
		}
		for sign, n := range seen {
			add(" "+sign+" ", n)
		}
	}
	var marks []string
	for mark, n := range in {
		if n >= 4 && 10*n >= 8*timed {
			marks = append(marks, mark)
		}
	}
	slices.SortFunc(marks, func(a, b string) int {
		if counts[a] != counts[b] {
			return counts[b] - counts[a]
		}
		return strings.Compare(b, a)
	})
	return marks
}

// cutAtMark cuts a line at a mark. A comma between figures is none where two stand behind it, 20,52.
func cutAtMark(l, mark string) []string {
	switch mark {
	case gapsMark:
		return gapMark.Split(l, -1)
	case ",", ";":
		var out []string
		from := 0
		for i := 0; i < len(l); i++ {
			if l[i] == mark[0] && !(i > 0 && i+2 < len(l) && isFigure(l[i-1]) && isFigure(l[i+1]) && isFigure(l[i+2])) {
				out = append(out, l[from:i])
				from = i + 1
			}
		}
		return append(out, l[from:])
	}
	return strings.Split(l, mark)
}

// A partReader cuts lines at one mark.
type partReader struct {
	mark string
	last int // the place of the line above
}

// parts are those of a line.
type parts struct {
	typed
	numbers []string // that are no place
	texts   []string
	notes   []string // words behind the time within its part
	bare    string   // figures that may be a time without a mark
}

// cut cuts all lines; nil where they are not of that kind.
func (p *partReader) cut(lines []string, lex *lexicon) []string {
	all := make([]*parts, len(lines))
	matched, placed := 0, 0
	for i, received := range lines {
		l := partedLine(received)
		if len(l) > 200 || l == "" || tellsMuch(l) || mayTell(l) && correctsTime(l) {
			continue
		}
		pieces := cutAtMark(l, p.mark)
		if len(pieces) < 2 {
			continue
		}
		a := p.read(pieces)
		if a == nil {
			continue
		}
		if a.time == "" && a.bare == "" {
			continue
		}
		all[i] = a
		if kindOf(a.time) == kStatus {
			continue
		}
		if matched++; a.place != "" {
			placed++
		}
	}
	if placed >= 4 {
		matched -= withoutUnplaced(all)
	}
	if matched < 4 || placed > 0 && 10*placed < 9*matched {
		return nil
	}
	first := slices.IndexFunc(all, func(a *parts) bool { return a != nil })
	final := len(all) - 1
	for all[final] == nil {
		final--
	}
	stray := 0
	for i := range final { // below it remarks may stand
		if all[i] == nil && looseClockInside.MatchString(lines[i]) && hasLetter(lines[i]) && (i > first || len(cutAtMark(partedLine(lines[i]), p.mark)) > 1) {
			stray++
		}
	}
	if 10*stray > matched {
		return nil
	}
	if p.headed(lines[:first], lex) {
		return nil
	}
	cuts := make([]*typed, len(lines))
	if !fillClocks(all) || !nameTexts(all) {
		return nil
	}
	texts := make([]string, len(lines))
	for i, a := range all {
		if a != nil {
			cuts[i], texts[i] = &a.typed, a.name
		}
	}
	countedSexes(cuts)
	return settleTyped(lines, cuts, texts, placed > 0, first)
}

// withoutUnplaced leaves out the lines with a time and no place before the first and behind the last
// that have one: they are about the list. It returns how many there were.
func withoutUnplaced(all []*parts) (n int) {
	placed := func(a *parts) bool { return a != nil && a.place != "" }
	first := slices.IndexFunc(all, placed)
	last := len(all) - 1
	for last > first && !placed(all[last]) {
		last--
	}
	for i, a := range all {
		if a != nil && a.place == "" && kindOf(a.time) != kStatus && (i < first || i > last) {
			all[i] = nil
			n++
		}
	}
	return n
}

// headed says whether a line above the list is one of headings.
func (p *partReader) headed(above []string, lex *lexicon) bool {
	const looks = 40
	for _, l := range above[max(0, len(above)-looks):] {
		if l = partedLine(l); l == "" || len(l) > 200 || looseClockInside.MatchString(l) {
			continue
		}
		cells := cutAtMark(l, p.mark)
		if len(cells) < 2 {
			cells = strings.Fields(l)
		}
		known := 0
		for _, c := range cells {
			if g := lex.read(trim(c)); g.known {
				known++
			}
		}
		if known >= 2 && (known >= 3 || 2*known >= len(cells)) {
			return true
		}
	}
	return false
}

var (
	// placeFirst is a place before other parts: "12 Jo Lee", "#3 19:02", "Pos 4: Jo Lee", "(5) Jo Lee".
	placeFirst = regexp.MustCompile(`(?i)^((?:pos|place|position|no|nr|platz|p)?[.:]? ?[#(=]?[\dlIO]{1,4}(?:st|nd|rd|th|er|e|º|ª|°)?=?\)?[.):,]{0,2}) +(\S.*)$`)
	// clockFirst and clockBehind are a time before and behind words.
	clockFirst  = regexp.MustCompile(`^(\S*\d\S*)[ ,:–—-]+(\pL.*)$`)
	clockBehind = regexp.MustCompile(`^(.*\S) +(\d\S*)(?: +([^\d\s].*|\d{1,4}(?:st|nd|rd|th) .*))?$`)
	bareFigures = regexp.MustCompile(`^\d{1,2}[0-5]\d$`)
)

// read reads the parts of a line; nil where it has other parts than those of a result.
func (p *partReader) read(pieces []string) *parts {
	a := &parts{}
	begun := false
	for _, piece := range pieces {
		if piece = strings.Trim(piece, " \t"); strings.Trim(piece, "-–—.") == "" {
			continue
		}
		if !begun {
			begun = true
			if piece = p.takePlace(a, piece); piece == "" {
				continue
			}
		}
		if !p.take(a, piece) {
			return nil
		}
	}
	if len(a.texts) == 0 || len(a.texts) > 4 || len(a.numbers) > 1 {
		return nil
	}
	return a
}

// takePlace takes the place off the front of a line and gives what stands behind it.
func (p *partReader) takePlace(a *parts, piece string) (rest string) {
	next := func(s string) bool {
		n := p.last + 1
		tied, ok := text.SaysPlace(strings.TrimRight(s, ",:"), n)
		if !ok && p.last > 0 {
			if tied, ok = text.SaysPlace(strings.TrimRight(s, ",:"), p.last); ok {
				n = p.last
			}
		}
		if !ok && p.last > 0 { // one left out, a second tie, or a new list
			if k := placeNumberIn(s); k == 1 && hasDigit(s) || k > p.last && k <= p.last+3 {
				n, ok = k, true
			}
		}
		if !ok && p.last == 0 {
			if k := placeNumberIn(s); k > 0 {
				n, ok = k, true
			}
		}
		if !ok {
			return false
		}
		p.last = n
		if a.place = strconv.Itoa(n); tied || strings.Contains(s, "=") {
			a.place += "="
		}
		return true
	}
	if next(piece) {
		return ""
	}
	if m := placeFirst.FindStringSubmatch(piece); m != nil && (kindOf(piece) != kClock || kindOf(m[2]) == kClock || dottedTime.MatchString(m[2])) && kindOf(piece) != kGroup && next(m[1]) {
		return m[2]
	}
	return piece
}

var placeInside = regexp.MustCompile(`(?i)^(?:pos|place|position|no|nr|platz|p)?[.:]? ?[#(=]?(\d{1,4}|[\dlIO]{1,3})(?:st|nd|rd|th|er|e|º|ª|°)?=?\)?[.):,]{0,2}$`)

// placeNumberIn is the number in what may be a place, 0 for none.
func placeNumberIn(s string) int {
	m := placeInside.FindStringSubmatch(s)
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(asFigures.Replace(m[1])) // four figures at most
	return n
}

// take takes one part; false where it is none of a result.
func (p *partReader) take(a *parts, piece string) bool {
	if c, ok := looseClock(piece); ok {
		if a.time != "" {
			return false // which of the two?
		}
		a.time = c
		return true
	}
	switch k := kindOf(piece); {
	case k == kStatus && hasLetter(piece) && a.time == "":
		a.time = piece
		return true
	case k == kSex || k == kGroup:
		if a.group != "" {
			if k != kSex && kindOf(a.group) != kSex {
				return false
			}
			piece = a.group + " " + piece
		}
		a.group = piece
		return true
	case digitsOnly(piece):
		if bareFigures.MatchString(piece) && a.bare == "" && len(piece) > 2 {
			a.bare = piece
		} else {
			a.numbers = append(a.numbers, piece)
		}
		return true
	case len(findDates(piece)) > 0 && hasDigit(piece):
		return false
	}
	// A time before or behind words.
	if m := clockFirst.FindStringSubmatch(piece); m != nil && a.time == "" {
		if c, ok := looseClock(m[1]); ok {
			a.time = c
			return p.take(a, m[2])
		}
	}
	if m := clockBehind.FindStringSubmatch(piece); m != nil && a.time == "" {
		if c, ok := looseClock(m[2]); ok {
			if a.time = c; m[3] != "" {
				a.notes = append(a.notes, m[3])
			}
			if hasLetter(m[1]) {
				return p.take(a, m[1])
			}
			return false
		}
	}
	if inBracket.MatchString(piece) {
		group, club, rest := a.group, a.club, a.rest
		if text := strings.Trim(a.takeBrackets(piece), edgeMarks); text != piece {
			if text != "" {
				return p.take(a, text)
			}
			if a.group == group && a.club == club && a.rest == rest {
				return false
			}
			return true
		}
	}
	if !hasLetter(piece) {
		if a.time == "" {
			return false
		}
		a.notes = append(a.notes, piece)
		return true
	}
	if class, note, ok := strings.Cut(piece, " "); ok && a.time != "" && a.group == "" && (kindOf(class) == kGroup || len(class) == 1 && kindOf(class) == kSex && len(a.texts) > 0) {
		a.group = class
		a.notes = append(a.notes, note)
		return true
	}
	if a.time != "" && clockInside.MatchString(piece) {
		return false // a second time
	}
	if hasDigit(piece) && a.time != "" {
		a.notes = append(a.notes, piece)
		return true
	}
	a.texts = append(a.texts, piece)
	return true
}

// looseTime is a time of a hand or a scan: letters for figures, another key for the colon.
var looseTime = regexp.MustCompile(`^([\dlIOoSB|]{1,2})( ?[:;.,'’′] ?)([\dlIOoSB|]{2})(?::([\dlIOoSB|]{2}))?([.,]\d)?$`)

// looseClock is the time that a part is, written as usual where a hand or a scan wrote it otherwise.
func looseClock(s string) (clock string, ok bool) {
	if m := looseTime.FindStringSubmatch(s); m != nil && countFigures(s) >= 2 {
		colon := strings.TrimSpace(m[2])
		plain := figuresForLetters.Replace(m[1]) + m[2] + figuresForLetters.Replace(m[3])
		if m[4] != "" {
			plain += ":" + figuresForLetters.Replace(m[4])
		}
		plain += m[5]
		if colon == ":" || colon == ";" || colon == "," && m[4] == "" {
			plain = strings.Replace(plain, m[2], ":", 1)
		}
		if k := kindOf(plain); k == kClock || dottedTime.MatchString(plain) {
			return plain, true
		}
		return "", false
	}
	if k := kindOf(s); k == kClock {
		return s, true
	}
	if plain, ok := text.PlainClock(s); ok {
		return plain, true
	}
	return "", false
}

// fillClocks puts the marks into times that have none, "2111", where the times of the lines above and
// below say that they are no other figures, and a colon for the dot in the few that have one. It is
// false where figures stay that are no time.
func fillClocks(all []*parts) bool {
	dotted, others := 0, 0
	for _, a := range all {
		if a != nil && a.time != "" && kindOf(a.time) != kStatus {
			if dottedTime.MatchString(a.time) {
				dotted++
			} else {
				others++
			}
		}
	}
	if dotted > 0 && dotted < others {
		for _, a := range all {
			if a != nil && dottedTime.MatchString(a.time) {
				a.time = strings.Replace(a.time, ".", ":", 1)
			}
		}
	}
	next := make([]float64, len(all))
	later := 1e9
	for i := len(all) - 1; i >= 0; i-- {
		next[i] = later
		if a := all[i]; a != nil && a.time != "" && kindOf(a.time) == kClock {
			later = looseNumber(a.time)
		}
	}
	before := 0.0
	for i, a := range all {
		if a == nil {
			continue
		}
		if a.time == "" {
			t := a.bare[:len(a.bare)-2] + ":" + a.bare[len(a.bare)-2:]
			if n := looseNumber(t); n < before || n > next[i] || before == 0 && next[i] == 1e9 {
				return false
			}
			a.time, a.bare = t, ""
		} else if a.bare != "" {
			a.numbers = append(a.numbers, a.bare)
		}
		if kindOf(a.time) == kClock {
			before = looseNumber(a.time)
		}
	}
	return true
}

// nameTexts settles which words of the lines are the name, and what the numbers beside the place
// are. It is false where it can't be told.
func nameTexts(all []*parts) bool {
	n, two, numbers, ages, oneWord := 0, 0, 0, 0, 0
	distinct := [2]map[string]bool{{}, {}}
	for _, a := range all {
		if a == nil {
			continue
		}
		n++
		if len(a.texts) > 1 {
			two++
			for k := range distinct {
				distinct[k][fold(a.texts[k])] = true
			}
			if !strings.Contains(a.texts[0], " ") && !strings.Contains(a.texts[1], " ") {
				oneWord++
			}
		}
		if len(a.numbers) > 0 {
			numbers++
			if age, _ := strconv.Atoi(a.numbers[0]); len(a.numbers[0]) <= 2 && age >= 4 {
				ages++
			}
		}
	}
	if numbers > 0 && (10*numbers < 6*n || len(all) == 0) {
		return false
	}
	if 10*oneWord >= 5*n { // surnames before given names
		if 10*two < 9*n || 10*len(distinct[1]) < 7*two {
			return false
		}
		for _, a := range all {
			if a != nil && len(a.texts) > 1 {
				a.texts = slices.Concat([]string{a.texts[0] + ", " + a.texts[1]}, a.texts[2:])
			}
		}
		return nameTexts(all)
	}
	name := 0
	if two > 2 && 3*len(distinct[0]) <= 2*two && len(distinct[1]) > len(distinct[0]) {
		name = 1
	}
	clubs := map[string]bool{}
	for _, a := range all {
		if a != nil && len(a.texts) > 1 {
			clubs[fold(a.texts[1-name])] = true
		}
	}
	few := 10*two < 3*n
	for _, a := range all {
		if a == nil {
			continue
		}
		at := min(name, len(a.texts)-1)
		a.name = a.texts[at]
		rest := slices.Delete(slices.Clone(a.texts), at, at+1)
		if len(rest) > 0 && !few && a.club == "" {
			a.club, rest = rest[0], rest[1:]
		}
		if len(a.texts) == 1 && two > 0 && !few {
			words := strings.Fields(a.name)
			for k := 2; k < len(words); k++ {
				if club := strings.Join(words[k:], " "); clubs[fold(club)] && a.club == "" {
					a.name, a.club = strings.Join(words[:k], " "), club
					break
				}
			}
		}
		a.rest = strings.TrimSpace(strings.Join(append(append([]string{a.rest}, rest...), a.notes...), " "))
		if len(a.numbers) > 0 {
			if ages == numbers && a.group == "" {
				a.group = a.numbers[0]
			} else {
				a.number = a.numbers[0]
			}
		}
		if r := []rune(a.name); len(r) < 2 || !unicode.IsLetter(r[0]) || len(strings.Fields(a.name)) > 8 || hasDigit(a.name) {
			return false
		}
	}
	return true
}
