package sheet

import (
	"bytes"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// A newspaper prints the results of a class as one paragraph: "Men, 7 km: 1) Jo Lee
// Vale 24.38, 2) Al Roe Mill 25.02, 3) Cy Dee Vale 25.40." Each runner becomes a line.

var (
	// numberedItem begins an item of such a list, bareItem one of a list whose numbers have no
	// mark: "men: 1 Jo Lee 18:20, 2 Al Roe 18:31".
	numberedItem = regexp.MustCompile(`(?:^|[\s,;:.])(\d{1,3})[).°º] ?\pL`)
	bareItem     = regexp.MustCompile(`(?:^|[,;:.] )(\d{1,3})=? (?:\p{Lu}|\?|(?:no name|unknown|unnamed|unbekannt|inconnu|onbekend)\b)`)
	// fieldItem begins an item that commas divide, behind a semicolon: "men: 1, Jo Lee, 34, Vale,
	// 18:20; 2, Al Roe, 41, Mill, 18:31".
	fieldItem = regexp.MustCompile(`(?:^|[;:—–] )(\d{1,3}), \p{Lu}`)
	// minutesBehind are words for minutes behind a time, "18:20 min".
	minutesBehind = regexp.MustCompile(`(\d[:.,][0-5]\d) ?(?:[Mm]in(?:uten|utes)?)\b\.?`)
	// itemTime is a time at the end of an item, also in the brackets of the club.
	itemTime = regexp.MustCompile(`(?:^|[\s(])(\d{1,2}[:.,'’h ])?(\d{1,2})([:.,'’])([0-5]\d)(?:[.,]\d{1,2})?["”]?\)?$`)
	// timeThenClass is the end of an item behind which the line goes on with the name of
	// another list: "… 34:49; women: ", "… 18’20”. W40: ".
	timeThenClass = regexp.MustCompile(`^(.*\d[:.,'’][0-5]\d(?:[.,]\d{1,2})?["”]?\)?)[;.,]? +([^\d;.]{0,12}\pL[^:;.]{0,40}:)[ \t]*$`)
	// classBehind is the name of the next list at the end of an item behind a full stop.
	classBehind = regexp.MustCompile(`^(.*\pL)[;.] +([^\d;.:]{0,12}\pL[^:;.]{0,40}:)[ \t]*$`)
	// behindTime is what follows an item's time and a comma: ", Al Roe retired".
	behindTime = regexp.MustCompile(`^(.*\d[:.,'’][0-5]\d(?:[.,]\d{1,2})?["”]?\)?), (\pL.*)$`)
	markedTime = regexp.MustCompile(`(\d{1,2})[.,]([0-5]\d)(\)?)$`)
	// clubAndTime are the brackets at the end of "Jo Lee (Vale AC, 20:47)".
	clubAndTime = regexp.MustCompile(`^(.*) \(([^()]*\pL[^()]*), *([\d:.,'’"”]+)\)$`)
)

// leastMarked is how many times with a dot or a comma, none of them with a third part of
// 60 or more, are no seconds and hundredths (0.6^8 is less than one in fifty).
const leastMarked = 8

// runOnPiece is a piece of a line over which a list runs on: an item, or what stands over one.
type runOnPiece struct {
	text string
	n    int // number of the item, 0 of what is none
}

// runOnPieces cuts a line into the items of the lists that run on within it and what stands
// before and between them; nil where it has none, or where an item ends in something else
// than a time or what became of a runner.
func runOnPieces(line string, begins *regexp.Regexp) (pieces []runOnPiece) {
	trimmed := func(s string) string { return strings.Trim(s, " \t\u00a0,;:.") }
	add := func(text string, n int) {
		text = trimmed(text)
		if i := strings.LastIndexAny(text, ",:."); n == 0 && i > 0 && isSection(text[i+1:]) && !isSection(text) {
			pieces = append(pieces, runOnPiece{trimmed(text[:i]), 0}) // "Results over 5 km, men: 1. Jo Lee"
			text = trimmed(text[i+1:])
		}
		m := behindTime.FindStringSubmatch(text)
		if n > 0 && m != nil && kindOf(finalWord(m[2])) == kStatus {
			text = m[1]
		} else {
			m = nil
		}
		if text != "" {
			pieces = append(pieces, runOnPiece{text, n})
		}
		if m != nil {
			for _, ended := range strings.Split(m[2], ", ") { // people without a number
				pieces = append(pieces, runOnPiece{trimmed(ended), 0})
			}
		}
	}
	open, last := -1, 0
	for from := 0; ; {
		m := begins.FindStringSubmatchIndex(line[from:])
		if m == nil {
			break
		}
		at := from + m[2]
		n, _ := strconv.Atoi(line[at : from+m[3]]) // three figures at most
		from += m[3]
		if open < 0 {
			add(line[:at], 0)
			open, last = at, n
			continue
		}
		item, class := line[open:at], ""
		for _, ends := range [...]*regexp.Regexp{timeThenClass, classBehind} {
			if m := ends.FindStringSubmatch(item); m != nil && n <= last && class == "" {
				item, class = m[1], m[2]
			}
		}
		if item = trimmed(item); strings.Contains(line[open:at], "   ") || !endsItem(item) {
			if n == last+1 {
				return nil
			}
			continue // a figure in the name of a club
		}
		if n < last && n != 1 || begins != numberedItem && n > last+3 {
			return nil
		}
		add(item, last)
		add(class, 0)
		open, last = at, n
	}
	if open >= 0 {
		add(line[open:], last)
	}
	return pieces
}

// endsUntimed are words in the place of a time. Common practice, no source.
var endsUntimed = regexp.MustCompile(`(?i)\pL\)?,? \(?(?:no time|time missed|time missing|not timed|untimed|ohne zeit|sans temps|sin tiempo|senza tempo|geen tijd|utan tid|uden tid|uten tid|bez czasu|bez času)\)?$`)

// endsItem says whether a text ends as an item does.
func endsItem(item string) bool {
	return itemTime.MatchString(item) || kindOf(finalWord(item)) == kStatus || endsUntimed.MatchString(item)
}

// inlineLists puts every item of lists that run on within a line on a line of its own, and
// the words before the first on one above; false where the text has no such list. Where it
// has, a list of a single item, and one that goes on in another line, is of the same kind.
func inlineLists(text []byte) ([]byte, bool) {
	lines := textLines(text)
	for i, l := range lines {
		lines[i] = minutesBehind.ReplaceAllString(l, "$1")
	}
	lines = wholeParagraphs(lines)
	for _, begins := range [...]*regexp.Regexp{numberedItem, bareItem, fieldItem} {
		if out := inlineListsOf(lines, begins); out != nil {
			return []byte(strings.Join(out, "\n") + "\n"), true
		}
	}
	if out := diaryLines(lines); out != nil {
		return []byte(strings.Join(out, "\n") + "\n"), true
	}
	if out := dayLists(lines); out != nil {
		return []byte(strings.Join(out, "\n") + "\n"), true
	}
	return text, false
}

var (
	// behindDay parts a day from what is said of it.
	behindDay = regexp.MustCompile(`^\s*(\S[^:]{2,30}?)(?:: | [–—-] )\s*(\pL.*\d(?:st|nd|rd|th)?)\W*$`)
	// runnerAndTime is a name and its time, "Jo 18:20", "Jo Lee - 18.20", perhaps with a place behind, "(4th)".
	runnerAndTime = regexp.MustCompile(`^(\pL[\pL .'’-]{0,40}?)(?: [–—-]|:)? (\d{1,2}[:.][0-5]\d(?::[0-5]\d)?)( \(\d{1,4}(?:st|nd|rd|th)?\)?)?$`)
	// betweenRunners stand between two of them.
	betweenRunners = regexp.MustCompile(`[,;] +(?:and |und |et |y |e |en |och |og )?| (?:and|und|et|och|og|&) `)
)

// firstNameOnly says whether one word stands before a time, as of families whose name stands before them all.
func firstNameOnly(runner string) bool {
	name, _, _ := strings.Cut(runner, "  ")
	return !strings.Contains(name, " ")
}

// dayLists puts a day and those who ran on it, who stand on one line behind it, on lines of their own, as in a
// family's log: "4 Jan: Jo 18:20, Ann 22:31"; so it does with a place, a group or a club, where two stand behind it on every
// such line: "Oak Hollow: Jo Lee 18:20, Ann Roe 22:31". There are two such lines at least, each under another
// name or day, with two people on one of them; nil where not.
func dayLists(lines []string) (out []string) {
	found, shared, names := 0, false, map[string]bool{}
	places, people := map[int]string{}, 0 // the places by the lines put out
	for _, l := range lines {
		m := behindDay.FindStringSubmatch(l)
		if m == nil {
			out = append(out, l)
			continue
		}
		var runners, of []string
		for _, piece := range betweenRunners.Split(m[2], -1) {
			if r := runnerAndTime.FindStringSubmatch(strings.TrimRight(piece, " .!")); r != nil {
				runners, of = append(runners, r[1]+"  "+r[2]), append(of, strings.Trim(r[3], " ()snrdth"))
			} else {
				runners = nil
				break
			}
		}
		name := strings.TrimSpace(m[1])
		f := scanDates(name, true)
		day := len(f) == 1 && f[0].from == 0 && f[0].to == len(name)
		if runners == nil || names[name] || !day && (len(runners) < 2 || slices.ContainsFunc(runners, firstNameOnly) || !hasNoDigit(name) || len(strings.Fields(name)) > 4 || isRemark(name)) {
			out = append(out, l)
			continue
		}
		names[name] = true
		found++
		shared = shared || len(runners) > 1
		out = append(out, "", name)
		for k := range runners {
			if of[k] != "" {
				places[len(out)+k] = of[k]
			}
		}
		people += len(runners)
		out = append(out, runners...)
	}
	if found < 2 || !shared {
		return nil
	}
	if len(places) == people {
		for i, n := range places {
			out[i] = n + "  " + out[i]
		}
	}
	return out
}

// diaryClock is the time on a line of a diary, diaryPlace the place behind it.
var (
	diaryClock = regexp.MustCompile(`(?:^|[\s(,])((?:\d:)?\d{1,2}[:.][0-5]\d)\b`)
	diaryPlace = regexp.MustCompile(`^[\s,;(–—-]*(?:pos(?:ition)?\.?|place|placed|platz) ?(\d{1,4})\b\)?|^[\s,;(–—-]*(\d{1,4})(?:st|nd|rd|th|\.)\)?`)
)

// diaryLines puts the lines of one runner's diary, "Sat 3 Jan 2026 – Alder Bank – 18:20 (4th) muddy", into a table,
// where the first line names the runner. nil where four lines in five are not a day of their own, a course and a time.
func diaryLines(lines []string) (out []string) {
	first := slices.IndexFunc(lines, func(l string) bool { return strings.TrimSpace(l) != "" })
	if first < 0 || gluedMark.MatchString(lines[first]) || cardOf(lines[first]) == "" && !isRunnersName(strings.TrimSpace(lines[first])) {
		return nil
	}
	filled, days, headed := 0, map[string]bool{}, false
	out = slices.Clone(lines[:first+1])
	for _, line := range lines[first+1:] {
		l := strings.TrimLeft(line, " \t-*•")
		if strings.TrimSpace(l) == "" {
			out = append(out, "")
			continue
		}
		f := scanDates(l, true)
		if len(f) > 0 && f[0].from > 0 {
			if _, weekday := weekdayAlone(strings.Trim(l[:f[0].from], " ,.")); !weekday {
				f = nil
			}
		}
		filled++
		var clock []int
		if len(f) > 0 {
			clock = diaryClock.FindStringSubmatchIndex(l[f[0].to:])
		}
		if clock == nil {
			out = append(out, line)
			continue
		}
		day, rest := l[:f[0].to], l[f[0].to:]
		if before := rest[:clock[2]]; strings.Contains(before, "  ") || strings.Contains(before, "\t") || gluedMark.MatchString(before) || len(before) > 1 && strings.IndexByte(",;|", before[0]) >= 0 && before[1] != ' ' {
			return nil // columns
		}
		course := strings.Trim(strings.TrimSuffix(strings.TrimRight(rest[:clock[2]], " –—-:,(|"), " in"), " –—-:,(|")
		if days[day] || !hasLetter(course) || !hasNoDigit(course) || len(course) > longestBand {
			return nil
		}
		days[day] = true
		behind, place := rest[clock[3]:], ""
		if m := diaryPlace.FindStringSubmatch(behind); m != nil {
			place, behind = orText(m[1], m[2]), behind[len(m[0]):]
		}
		if !headed {
			out, headed = append(out, "Date\tCourse\tTime\tPosition\tNotes"), true
		}
		out = append(out, strings.Join([]string{day, course, rest[clock[2]:clock[3]], place, strings.Trim(behind, " ,;.()–—-|\t")}, "\t"))
	}
	if len(days) < fewestOfCard || 5*len(days) < 4*filled {
		return nil
	}
	return out
}

// itemsInLine says that a line holds two and more items, one of which ends in a time.
var itemsInLine = regexp.MustCompile(`\d[:.,'’][0-5]\d["”]?\)?[,;.] +\d{1,3}(?:[).°º]|=)? ?\pL`)

// wholeParagraphs puts the lines of a paragraph into its first, the others are left blank, where it
// is a list that runs on over the ends of lines: lines with several items, of which most that
// have another below them are long and do not end where an item does.
func wholeParagraphs(lines []string) []string {
	const long = 50
	out := lines
	for from := 0; from < len(lines); from++ {
		if !itemsInLine.MatchString(lines[from]) {
			continue
		}
		first, to := from, from+1
		for first > 0 && len(lines[first-1]) >= long && strings.IndexByte(lines[first-1], '\t') < 0 {
			first--
		}
		cut, most := 0, 0
		for ; to < len(lines) && strings.TrimSpace(lines[to]) != "" && strings.IndexByte(lines[to], '\t') < 0; to++ {
			above := strings.TrimRight(lines[to-1], " \r")
			if len(above) < long {
				break
			}
			if most++; !endsItem(strings.TrimRight(above, ",;.")) || !unicode.IsDigit(rune(strings.TrimSpace(lines[to])[0])) {
				cut++
			}
		}
		if most > 0 && cut > 0 {
			if &out[0] == &lines[0] {
				out = slices.Clone(lines)
			}
			words := make([]string, 0, to-first)
			for i := first; i < to; i++ {
				words = append(words, strings.TrimSpace(lines[i]))
				out[i] = ""
			}
			out[first] = strings.Join(words, " ")
		}
		from = to - 1
	}
	return out
}

// inlineListsOf is inlineLists for the lines of a text and items that begin in one way; nil
// where there is no such list.
func inlineListsOf(lines []string, begins *regexp.Regexp) []string {
	cuts := make([][]runOnPiece, len(lines))
	items, ended, marked, longest, pairs := 0, 0, 0, 0, 0
	for i, l := range lines {
		pieces := runOnPieces(l, begins)
		of, n, dots, last, rising := 0, 0, 0, 0.0, true
		for _, piece := range pieces {
			if piece.n == 0 {
				last = 0
				continue
			}
			of++
			if piece.n == 1 {
				last = 0
			}
			m := itemTime.FindStringSubmatch(piece.text)
			if m == nil && !endsItem(piece.text) {
				continue
			}
			if n++; m != nil && m[1] == "" && (m[3] == "," || m[3] == ".") {
				dots++
				t := looseNumber(m[2] + m[4]) // minutes and seconds as one number
				rising, last = rising && t >= last, t
			}
		}
		if of < 2 && (n == 0 || !aloneInLine(l, pieces)) {
			continue // no item, or a number within a sentence
		}
		if n*10 < of*9 || !rising {
			return nil
		}
		cuts[i] = pieces
		items, ended, marked, longest = items+of, ended+n, marked+dots, max(longest, of)
		if of > 1 && pieces[0].n == 0 {
			pairs++ // a list of two and more, under its name
		}
	}
	if longest < 3 && pairs < 3 || items < 5 || marked > 0 && (marked < leastMarked || marked*10 < ended*9) {
		return nil
	}
	var out []string
	for i, l := range lines {
		if cuts[i] == nil {
			out = append(out, l)
			continue
		}
		for _, piece := range cuts[i] {
			if piece.n > 0 && marked > 0 {
				piece.text = markedTime.ReplaceAllString(piece.text, "$1:$2$3")
			}
			out = append(out, clubAndTime.ReplaceAllString(piece.text, "$1 ($2) $3"))
		}
	}
	return out
}

// aloneItem is a single item that begins as a name does.
var aloneItem = regexp.MustCompile(`^\d{1,3}[^\pL\d]+\p{Lu}[^ ]* +\PN`)

// aloneInLine says whether the only item of a line is one of a list, alone in the line or
// under a name, "M35: 1) Jo Lee, Vale 29.07", and not a number within a sentence.
func aloneInLine(line string, pieces []runOnPiece) bool {
	at := slices.IndexFunc(pieces, func(p runOnPiece) bool { return p.n > 0 })
	if at < 0 || !aloneItem.MatchString(pieces[at].text) {
		return false
	}
	if at == 0 {
		return true
	}
	over := pieces[at-1].text
	if end := strings.Index(line, over) + len(over); pieces[at].n == 1 && (end <= 24 || end <= 60 && strings.HasPrefix(strings.TrimLeft(line[end:], " "), ":")) {
		return true
	}
	return isSection(over)
}

// withoutLastMarks leaves out the semicolon or comma at the end of the lines of a list, "1) Jo
// Lee (Vale) 18'20\";", where it stands nowhere else in them.
func withoutLastMarks(text []byte) []byte {
	for _, mark := range []string{";", ","} {
		if !bytes.Contains(text, []byte(mark+"\n")) && !bytes.Contains(text, []byte(mark+"\r")) {
			continue
		}
		lines := textLines(text)
		n, with := 0, 0
		var ends []int // of lists
		for i, l := range lines {
			l = strings.TrimSpace(l)
			if l == "" || !itemTime.MatchString(strings.TrimRight(l, ",;.")) {
				continue
			}
			switch n++; {
			case strings.HasSuffix(l, mark) && strings.Count(l, mark) == 1:
				with++
			case !strings.Contains(l, mark):
				ends = append(ends, i)
			}
		}
		if with < 3 || with+len(ends) < n || len(ends)*3 > with {
			continue
		}
		for i, l := range lines {
			if l = strings.TrimSpace(l); strings.HasSuffix(l, mark) || slices.Contains(ends, i) {
				lines[i] = strings.TrimRight(l, mark+".")
			}
		}
		return []byte(strings.Join(lines, "\n") + "\n")
	}
	return text
}
