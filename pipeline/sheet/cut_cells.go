package sheet

import (
	"bytes"
	"cmp"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

var (
	// brokenClock is a time whose colon has blanks beside it, "19: 05".
	brokenClock = regexp.MustCompile(`(^|[^\d:])(\d{1,3})(?: : ?|: )([0-5]\d)(?:\s|$)`)
	// strokeClock is one with a semicolon in place of the colon, "19;05".
	strokeClock = regexp.MustCompile(`(^|[^\d;])(\d{1,3});([0-5]\d)(\s*)$`)
	// figuresClock is one without any mark, "1905".
	figuresClock = regexp.MustCompile(`(^.*\pL.*[^\d:.,])([1-9]\d?)([0-5]\d)\s*$`)
	// nameAndClock is the end of a cell in which a name and a time stand that have a cell each
	// in the other lines.
	nameAndClock = regexp.MustCompile(`^(\s*\pL[^\d]*?) +(\d{1,3}:[0-5]\d(?::[0-5]\d)?)(\s*)$`)
)

// spacedUnits is a time with its units and a blank in it, "22m 45s", "18 min 5 sec".
var spacedUnits = regexp.MustCompile(`(^|[^\d\pL:.])(\d{1,3})( ?(?:m|mins?|minutes?)\.?) {1,2}(\d{1,2})( ?(?:s|secs?|seconds?)?)(\.?(?:$|[^\d\pL:.]))`)

// namedUnits is one whose units are words of any language, "23 мин 18 сек", "18 dk 05 sn", "23分18秒", with
// what may be hours before it.
var namedUnits = regexp.MustCompile(`(^|[^\d\pL:.])(?:\d ?(\pL+)\.?[ ,]{0,2})?(\d{1,3}) ?(\pL+)\.?[ ,]{0,2}(?:(\pL{1,3}) )?(\d{1,2}) ?(\pL+)\.?`)

// knownMinutes are the units of times that need no other marks to be known: "22 min 45 s".
var knownMinutes = set("m min mins minute minutes")

// joinsMinutes are words for and between minutes and seconds that are known nowhere else.
var joinsMinutes = set("si i и та и και ir un in a ja ve s")

// unitsLooks is how many lines are looked at for such a time.
const unitsLooks = 60

// namedUnitClocks writes such times with a colon where three lines and more have one.
func namedUnitClocks(text []byte) ([]byte, bool) {
	if len(text) > typedBytes {
		return text, false
	}
	lines := bytes.Split(text, []byte("\n"))
	plain := func(l []byte) ([]byte, bool) {
		all, from := namedUnits.FindAllSubmatchIndex(l, -1), 0
		var out []byte
		for _, m := range all {
			minutes, seconds, joined := string(l[m[8]:m[9]]), string(l[m[14]:m[15]]), m[10] >= 0
			switch {
			case clockUnits[fold(minutes)] != 'm' || clockUnits[fold(seconds)] != 's':
				continue
			case joined && !joinsMinutes[fold(string(l[m[10]:m[11]]))] || !joined && knownMinutes[fold(minutes)]:
				continue
			case m[4] >= 0 && clockUnits[fold(string(l[m[4]:m[5]]))] == 'h':
				continue
			case strings.IndexFunc(minutes, func(r rune) bool { return r >= 0x2E80 }) >= 0:
				continue // East Asian signs have a reader of their own
			}
			out = append(append(out, l[from:m[7]]...), ':')
			if m[13]-m[12] == 1 {
				out = append(out, '0')
			}
			out = append(out, l[m[12]:m[13]]...)
			from = m[1]
		}
		if from == 0 {
			return l, false
		}
		return append(out, l[from:]...), true
	}
	n, seen, divided := 0, 0, 0
	for _, l := range lines {
		if len(bytes.TrimSpace(l)) == 0 {
			continue
		}
		if seen++; seen > unitsLooks {
			break
		}
		if _, ok := plain(l); ok {
			if n++; bytes.ContainsAny(l, ";|\t") {
				divided++
			}
		}
	}
	if n < 3 || 2*divided > n {
		return text, false
	}
	for i, l := range lines {
		lines[i], _ = plain(l)
	}
	return bytes.Join(lines, []byte("\n")), true
}

// hoursBefore is one with hours: "1 hr 2 min 29".
var hoursBefore = regexp.MustCompile(`\d ?(?:h|hrs?|hours?)[., ]{1,2}\d{1,2} ?m`)

// unitClocks writes such times with a colon where four lines and more have one, so that no gap is
// in them. What stands behind in a column keeps its place. Lines keep theirs.
func unitClocks(text []byte) ([]byte, bool) {
	if out, ok := namedUnitClocks(text); ok {
		return out, true
	}
	if len(text) > typedBytes || bytes.IndexByte(text, 'm') < 0 {
		return text, false
	}
	lines := bytes.Split(text, []byte("\n"))
	n, divided := 0, 0
	for i := 0; i < len(lines) && n < 12; i++ {
		if bytes.IndexByte(lines[i], 'm') >= 0 && spacedUnits.Match(lines[i]) && !hoursBefore.Match(lines[i]) {
			if n++; bytes.ContainsAny(lines[i], ",;|\t") {
				divided++
			}
		}
	}
	if n < 4 || 2*divided > n { // a gap within a cell does no harm
		return text, false
	}
	for i, l := range lines {
		all := spacedUnits.FindAllSubmatchIndex(l, -1)
		if len(all) == 0 || hoursBefore.Match(l) {
			continue
		}
		var out []byte
		from := 0
		for _, m := range all {
			seconds := l[m[8]:m[9]]
			clock := append(append(bytes.Clone(l[m[4]:m[5]]), ':'), bytes.Repeat([]byte("0"), 2-len(seconds))...)
			clock = append(clock, seconds...)
			out = append(append(out, l[from:m[4]]...), clock...)
			if bytes.HasPrefix(l[m[11]:], []byte("  ")) {
				out = append(out, bytes.Repeat([]byte(" "), m[11]-m[4]-len(clock))...)
			}
			if from = m[11]; from > m[9] && l[from-1] == ' ' {
				from-- // what stands behind is no part of the time: "18m 32 🙂"
			}
		}
		lines[i] = append(out, l[from:]...)
	}
	return bytes.Join(lines, []byte("\n")), true
}

// joinedClocks mends times that a scan or a hand has broken: blanks beside the colon, a
// semicolon for it, or nothing. Lines without a mark must be nearly all lines, and enough of them
// that their last two figures are seconds by more than chance. Lines keep their places.
func joinedClocks(text []byte) []byte {
	if len(text) > typedBytes || bytes.IndexByte(text, '\t') >= 0 {
		return text
	}
	spaced := bytes.Contains(text, []byte(" :")) || bytes.Contains(text, []byte(": "))
	lines := textLines(text)
	changed := false
	if spaced {
		whole, broken := 0, 0
		for _, l := range lines {
			if clockInside.MatchString(l) {
				whole++
			} else if brokenClock.MatchString(l) && hasLetter(l) {
				broken++
			}
		}
		for i, l := range lines {
			if m := brokenClock.FindStringSubmatchIndex(l); m != nil && !clockInside.MatchString(l) && len(findDates(l)) == 0 && (hasLetter(l[:m[4]]) || hasLetter(l[m[7]:])) && (whole > 0 || broken >= 4) {
				lines[i] = l[:m[5]] + ":" + l[m[6]:]
				changed = true
			}
		}
	}
	for _, form := range [...]*regexp.Regexp{strokeClock, figuresClock} {
		if out := unmarkedClocks(lines, form); out != nil {
			lines, changed = out, true
			break
		}
	}
	if fewUnmarked(lines) {
		changed = true
	}
	if !changed {
		return text
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

// fewUnmarked puts the colon into the few times that have none at the ends of lines, "12 Jo Lee 2111", or a comma,
// where the lines around have one and the times of those above and below hold it between them.
func fewUnmarked(lines []string) (changed bool) {
	type timed struct {
		line    int
		seconds float64
	}
	var whole []timed
	var without []int
	last := 0 // times that end their lines
	for i, l := range lines {
		if len(l) > 200 || !hasDigit(l) || !hasLetter(l) {
			continue
		}
		if gluedMark.MatchString(commaInside.ReplaceAllString(l, " ")) {
			return false // a table, with other figures in it
		}
		if m := clockInside.FindAllString(l, 2); len(m) == 1 {
			if whole = append(whole, timed{i, looseNumber(m[0])}); strings.HasSuffix(strings.TrimRight(l, " \r"), m[0]) {
				last++
			}
		} else if len(m) == 0 && len(findDates(l)) == 0 && unmarkedAt(l) != nil {
			without = append(without, i)
		}
	}
	if len(without) == 0 || len(whole) < 4 || 2*len(without) > len(whole) {
		return false
	}
	rising := slices.IsSortedFunc(whole, func(a, b timed) int { return cmp.Compare(a.seconds, b.seconds) })
	for _, i := range without {
		m := unmarkedAt(lines[i])
		if bare := m[5] == m[6]; bare && (last < 4 || 10*last < 8*len(whole)) {
			continue // figures, and the others have their times further in front
		}
		clock := lines[i][m[4]:m[5]] + ":" + lines[i][m[6]:m[7]]
		t := looseNumber(clock)
		k, _ := slices.BinarySearchFunc(whole, i, func(w timed, line int) int { return cmp.Compare(w.line, line) })
		end := k == len(whole) && rising && t >= whole[k-1].seconds && t < 1.3*whole[k-1].seconds
		if end && leadingPlace.MatchString(strings.TrimSpace(lines[i])) || k > 0 && k < len(whole) && whole[k-1].seconds <= t && t <= whole[k].seconds {
			lines[i] = lines[i][:m[4]] + clock + lines[i][m[7]:]
			changed = true
		}
	}
	return changed
}

// commaInside is a time with a comma for its colon, "20,52".
var commaInside = regexp.MustCompile(`(^|[^\d,.])(\d{1,2}),([0-5]\d)(?:$|[^\d,.])`)

// unmarkedAt is where the minutes and the seconds of a time without its colon stand, from the second
// pair on; nil for none, or for two.
func unmarkedAt(l string) []int {
	if m := commaInside.FindAllStringSubmatchIndex(l, 2); len(m) == 1 {
		return m[0]
	}
	return figuresClock.FindStringSubmatchIndex(l)
}

// commaPlace is a line whose only comma stands behind the place, "1, Jo Lee 18:20".
var commaPlace = regexp.MustCompile(`(?m)^([ \t]*\d{1,4}), +(\pL[^,\n]* \d{1,3}:[0-5]\d[^,\n]*)$`)

// commaPlaces puts a point in the place of such commas where three lines and more have them, and
// nine in ten of those with a time.
func commaPlaces(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte(", ")) {
		return text
	}
	n := len(commaPlace.FindAllIndex(text, -1))
	if n < 3 || n*10 < timedLines(text)*9 {
		return text
	}
	return commaPlace.ReplaceAll(text, []byte("$1. $2"))
}

// leastUnmarked is how many times without a colon are no other figures (0.6^8 is less than one
// in fifty).
const leastUnmarked = 8

// unmarkedClocks puts colons into times of such a form; nil where not nearly all lines with figures
// behind words have one, they don't rise, or another line has a time.
func unmarkedClocks(lines []string, form *regexp.Regexp) []string {
	n, of, last, falls := 0, 0, "", 0
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = l
		if clockInside.MatchString(l) {
			return nil
		}
		if !hasDigit(l) || len(findDates(l)) > 0 || !hasLetter(l) {
			continue
		}
		of++
		m := form.FindStringSubmatchIndex(l)
		if m == nil {
			continue
		}
		minutes, seconds := l[m[4]:m[5]], l[m[6]:m[7]]
		if form == strokeClock && !hasLetter(l[:m[4]]) {
			continue
		}
		if t := strings.Repeat("0", max(0, 3-len(minutes))) + minutes + seconds; t < last {
			falls++
		} else {
			last = t
		}
		n++
		out[i] = l[:m[4]] + minutes + ":" + seconds
	}
	if n < leastUnmarked || n*10 < of*9 || falls*10 > n {
		return nil
	}
	return out
}

// cutJoined parts a name from a time or a club behind it in lines that have a mark too few, where the
// other lines have the mark between the two. Lines keep their places.
func cutJoined(text []byte, delim byte) []byte {
	if delim != '|' && delim != '\t' && delim != ';' {
		return text
	}
	lines := textLines(text)
	counts, usual := map[int]int{}, 0
	for _, l := range lines {
		n := strings.Count(l, string(delim))
		if counts[n]++; n > 0 && (counts[n] > counts[usual] || usual == 0) {
			usual = n
		}
	}
	if usual < 2 || counts[usual-1] == 0 || counts[usual] < 3 {
		return text
	}
	alone, changed := false, false
	for _, l := range lines {
		if !alone && strings.Count(l, string(delim)) == usual {
			for _, c := range strings.Split(l, string(delim)) {
				alone = alone || kindOf(c) == kClock
			}
		}
	}
	if !alone {
		return text
	}
	known := map[string]int{} // what stands in the columns of the other lines
	for _, l := range lines {
		if strings.Count(l, string(delim)) == usual {
			for _, c := range strings.Split(l, string(delim)) {
				known[fold(c)]++
			}
		}
	}
	for i, l := range lines {
		if strings.Count(l, string(delim)) != usual-1 {
			continue
		}
		cells := strings.Split(l, string(delim))
		at := -1
		for k, c := range cells {
			if kindOf(c) == kClock {
				at = -1
				break
			}
			if nameAndClock.MatchString(c) {
				at = k
			}
		}
		if at >= 0 {
			cells[at] = nameAndClock.ReplaceAllString(cells[at], "$1"+string(delim)+"$2$3")
		} else if !cutKnown(cells, known, string(delim)) {
			continue
		}
		lines[i] = strings.Join(cells, string(delim))
		changed = true
	}
	if !changed {
		return text
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

// cutKnown parts a name of two words from a club behind it that is a cell in two of the other lines or
// more, and says whether a cell was so; known is how often texts are cells.
func cutKnown(cells []string, known map[string]int, delim string) bool {
	for k, c := range cells {
		words := strings.Fields(c)
		if len(words) < 3 || kindOf(c) != kText || known[fold(c)] > 0 {
			continue
		}
		for n := 2; n < len(words); n++ {
			if club := strings.Join(words[n:], " "); known[fold(club)] > 1 && kindOf(club) == kText {
				cells[k] = strings.Join(words[:n], " ") + delim + club
				return true
			}
		}
	}
	return false
}

var (
	// numberedWords is a line that begins with a place and words, goesOn one of words and a time at its
	// end without a place before them.
	numberedWords = regexp.MustCompile(`^[#(]?\d{1,4}(?:st|nd|rd|th|=)?[.):,]*[\s|;/=–-]+\pL`)
	goesOn        = regexp.MustCompile(`^(?:\pL\D*[^\d\pL]+|[^\d\pL]*)\d{1,3}[:.,;][0-5]\d(?::[0-5]\d)?(?: min)?$`)
)

// wrappedLines joins the two halves of lines that were too long for the page: a place and words,
// and on the line below, further in or without a place, what follows with the time; or, further in,
// the last words of what follows a time. Most lines are whole.
func wrappedLines(text []byte) []byte {
	if len(text) > typedBytes || bytes.Count(text, []byte("\n")) < 5 {
		return text
	}
	lines := textLines(text)
	const indents = 12
	var whole [indents]int
	base := 0 // how far in most lines with a time begin
	for _, l := range lines {
		if at := indent(l); at < indents && looseClockInside.MatchString(l) && hasLetter(l) {
			if whole[at]++; whole[at] > whole[base] {
				base = at
			}
		}
	}
	if whole[base] < 2 {
		return text
	}
	var cut []int // the second halves
	for i := 1; i < len(lines); i++ {
		l, above := strings.TrimSpace(lines[i]), partedLine(lines[i-1])
		if l == "" || above == "" || len(cut) > 0 && cut[len(cut)-1] == i-1 {
			continue
		}
		in := indent(lines[i]) >= base+3 && indent(lines[i-1]) < base+3
		clock := looseClockInside.FindStringIndex(above)
		_, _, ended := endedBeside(l)
		switch {
		case ended: // somebody else, set in below the places
			continue
		case clock == nil && numberedWords.MatchString(above) && !isDate(above) && timeUnits[fold(strings.TrimLeft(above, "0123456789 "))] == 0 && !hasDigit(above[strings.IndexAny(above, " \t|;/=–-"):]) && !numberedWords.MatchString(l) && (goesOn.MatchString(l) || in && bareFigures.MatchString(l)):
		case in && clock != nil && !hasDigit(l) && !strings.Contains(l, "  ") && hasLetter(l) && l[0] != '(' && len(strings.Fields(l)) <= 4 && hasLetter(above[clock[1]:]):
		default:
			continue
		}
		cut = append(cut, i)
	}
	if len(cut) == 0 || len(cut) > whole[base] {
		return text
	}
	for _, i := range cut {
		gap := "  "
		if above := strings.TrimRight(lines[i-1], " \r"); clockInside.MatchString(above) || !endsInWord(above) {
			gap = " "
		}
		lines[i-1] = strings.TrimRight(lines[i-1], " \r") + gap + strings.TrimSpace(lines[i])
		lines[i] = ""
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

// indent is how many blanks stand before a line.
func indent(l string) int { return len(l) - len(strings.TrimLeft(l, " ")) }

// endsInWord says whether a line ends in a letter or a closing bracket, and no mark.
func endsInWord(l string) bool {
	r, _ := utf8.DecodeLastRuneInString(l)
	return unicode.IsLetter(r) || r == ')' || r == '.'
}

// mixedMarks divides all lines of a table by one mark: half of those with times and more are divided by one,
// as often in each, and others with times, or those above them, as often by another and not by that.
func mixedMarks(text []byte) []byte {
	const marks = ",;\t|"
	present := 0
	for i := range len(marks) {
		if bytes.IndexByte(text, marks[i]) >= 0 {
			present++
		}
	}
	if present < 2 || len(text) > typedBytes {
		return text
	}
	lines := textLines(text)
	timed, first := 0, -1
	var counts [len(marks)]map[int]int // lines with times by how often they have a mark
	for i, l := range lines {
		if !clockInside.MatchString(l) {
			continue
		}
		if timed++; first < 0 {
			first = i
		}
		for m := range counts {
			if n := strings.Count(l, marks[m:m+1]); n >= 2 {
				if counts[m] == nil {
					counts[m] = map[int]int{}
				}
				counts[m][n]++
			}
		}
	}
	mark, often, most := "", 0, 1
	for m := range counts {
		for n, of := range counts[m] {
			if of*2 >= timed && (of > most || of == most && mark == marks[m:m+1] && n > often) {
				mark, often, most = marks[m:m+1], n, of
			}
		}
	}
	if mark == "" {
		return text
	}
	changed := false
	for i, l := range lines {
		if strings.Contains(l, mark) || i > first && !clockInside.MatchString(l) {
			continue
		}
		for m := range counts {
			if other := marks[m : m+1]; strings.Count(l, other) == often {
				lines[i], changed = strings.ReplaceAll(l, other, mark), true
				break
			}
		}
	}
	if !changed {
		return text
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

var (
	// placeAgainst is a place against the name behind it, "1.Jo Lee", "1)Jo Lee".
	placeAgainst = regexp.MustCompile(`(?m)^([ \t]*\d{1,4}[.)])(\p{Lu})`)
	// ageBehind is an age in brackets behind a time, minuteBehind a word for minutes.
	ageBehind = regexp.MustCompile(`(?m)^(.*\pL)([ ,;:–—-]+\d{1,3}:[0-5]\d(?::[0-5]\d)?)[ ,]*[(\[](\d{1,3})[)\]][ \t]*$`)
	// tickedOff is an item of a list of things to tick off, done.
	tickedOff = regexp.MustCompile(`(?m)^([ \t]*[-*+] )\[[xX✓✔]\] (.*\d:[0-5]\d)`)
	// timeInside is a time that stands last in the brackets behind a name, "Jo Lee (F, 42, 18:20)".
	timeInside = regexp.MustCompile(`(?m)^(.*\pL) \(([^()\n:]*[^()\n:\s,]), ?(\d{1,3}:[0-5]\d(?::[0-5]\d)?)\)[ \t]*$`)
	// andSeconds is the word between minutes and seconds.
	andSeconds = regexp.MustCompile(`(\d ?min(?:ute)?s?),? and (\d{1,2} ?sec)`)
	// dayBeforeColon is a line that may be a day and ends in a colon.
	dayBeforeColon = regexp.MustCompile(`(?m)^[^\n:]{6,40}:[ \t]*\r?$`)
	minuteBehind   = regexp.MustCompile(`(?mi)^(.*\pL.*\d:[0-5]\d) ?(?:min|mins|minuten|minutes|minutos|minuti|minuter|minut|minuty)\b\.?[ \t]*$`)
)

// tidyEnds gives typed lines the form that most have, where three and more, and nine in ten of those with a
// time, are otherwise: a blank between place and name, an age before the time and not behind it, no
// word for minutes behind it.
func tidyEnds(text []byte) []byte {
	if len(text) > typedBytes {
		return text
	}
	if bytes.Contains(text, []byte(":\n")) || bytes.Contains(text, []byte(":\r\n")) {
		text = dayBeforeColon.ReplaceAllFunc(text, func(l []byte) []byte {
			if day := bytes.TrimRight(l, ": \t\r"); isDate(string(day)) {
				return day // "10.02.2024:" over the results of that day
			}
			return l
		})
	}
	if bytes.Contains(text, []byte(" and ")) {
		text = andSeconds.ReplaceAll(text, []byte("$1 $2"))
	}
	timed := -1
	for _, form := range [...]struct {
		may   func() bool
		is    *regexp.Regexp
		write string
	}{
		{func() bool { return true }, placeAgainst, "$1 $2"},
		{func() bool { return bytes.Contains(text, []byte(")\n")) || bytes.Contains(text, []byte("]\n")) }, ageBehind, "$1 ($3)$2"},
		{func() bool { return bytes.Contains(text, []byte(")\n")) }, timeInside, "$1 ($2) $3"},
		{func() bool { return bytes.Contains(text, []byte("] ")) }, tickedOff, "$1$2"},
		{func() bool { return bytes.Contains(text, []byte("in")) }, minuteBehind, "$1"},
	} {
		if !form.may() {
			continue
		}
		if n := len(form.is.FindAllIndex(text, -1)); n >= 3 {
			if timed < 0 {
				timed = timedLines(text)
			}
			if n*10 >= timed*9 {
				text = form.is.ReplaceAll(text, []byte(form.write))
			}
		}
	}
	return text
}
