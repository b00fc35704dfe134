package sheet

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// divide settles how a text is divided into cells. A text that no delimiter
// divides comes back with tabs between its columns, line for line: columns that
// stand under one another, or lines such as "1. Jo Lee 18:20".
func divide(text []byte, lex *lexicon, limits Limits) ([]byte, dialect) {
	if bytes.IndexByte(text, '\n') < 0 && bytes.IndexByte(text, '\r') >= 0 {
		text = bytes.ReplaceAll(text, []byte{'\r'}, []byte{'\n'}) // the line endings of old computers
	}
	text, unwrapped := unwrapLines(text, limits)
	text, units := unitClocks(printedColumns(withoutRowLabels(withoutLineNumbers(withoutFences(text)))))
	text, statements := markupTables(text)
	text, message := plainMessage(text)
	text, quoted := unquoteMail(wikiRows(text))
	text, gapped := besideByGaps(text)
	text, beside := besideByTabs(timesBelowNames(sexesBeforeNames(plainPlaces(withoutStars(lapTotals(listedFacts(plainBrackets(text))))))))
	text, spoken := spokenTimes(plainMedals(plainBars(plainMarkup(withoutTags(text)))))
	text, scanned := typedFigures(commaPlaces(joinedClocks(wrappedLines(placesAbove(tidyEnds(mixedMarks(text)))))))
	text, runOn, told, tied, joined, families := text, false, false, false, false, false
	if len(text) < typedBytes {
		text, joined = joinHalves(text)
		text, runOn = inlineLists(withoutLastMarks(bareTimes(evenTimes(signsToGaps(sameTimes(mendedTimes(oddMarks(minuteBlocks(minutesOnce(text))))))))))
		text, tied = tiedPlaces(text)
		text, families = households(text)
		if !runOn {
			if lines, ok := proseLists(textLines(text)); ok && !divided(text, ';') && !divided(text, '\t') && !divided(text, '|') && partedLines(text, nil, 0, true) == nil {
				text, told = []byte(strings.Join(lines, "\n")+"\n"), true
			}
		}
	}
	d := sniff(text, lex, limits)
	if len(text) < typedBytes {
		text = cutJoined(text, d.delim)
	}
	text, single := doubleQuotes(text, d)
	mended := "" // what was done to the text before it was divided
	for _, done := range []struct {
		is  bool
		why string
	}{
		{families, "people of one family name were put one to a line, and the rows are counted so"},
		{joined, "a list of times and one of names were put together, and the rows are counted so"},
		{message != "", message},
		{spoken, "times in words were read as figures"},
		{units, "times with their units were written with a colon"},
		{told, toldInSentences},
		{beside || gapped, "results beside one another were put one runner to a line, and the rows are counted so"},
		{tied, "those who share a place were put one runner to a line, and the rows are counted so"},
		{runOn, "lists that ran on within a line were put one runner to a line, and the rows are counted so"},
		{scanned, "letters and gaps among the figures of times and places were read as the figures they stand for"},
		{statements, "tables in the marks of a forum, the statements of a database or the keys of a log were put one runner to a line, and the rows are counted so"},
		{single, "texts stand in single or curly quotes"},
		{quoted, "the marks > of a quoted message were left out"},
		{unwrapped, "every line stood in quotes of its own"},
	} {
		if done.is {
			mended += "; " + done.why
		}
	}
	d.why += mended
	if d.skip > 0 || len(text) > wholeBytes {
		return text, d
	}
	if out := longForm(text, d.delim, lex, limits); out != nil {
		return out, dialect{delim: d.delim, why: d.why + "; a fact a line, those of each runner put into one row"}
	}
	if len(text) < typedBytes {
		if lines := rowsOnTwoLines(textLines(text), d.delim, lex); lines != nil {
			text = []byte(strings.Join(lines, "\n") + "\n")
			d.why += "; each row goes on in the line below it"
		}
		if out := twoLineCells(text, d.delim, limits); out != nil {
			text = out
			d.why += "; what stands on two lines in one column is two columns"
		}
	}
	if d.delim == '\t' && len(text) < typedBytes && bytes.Contains(text, []byte("\t\t")) {
		if lines, ok := alignedByTabs(textLines(text)); ok {
			text = []byte(strings.Join(lines, "\n") + "\n")
			d.why += "; several tabs in a row only align the columns"
		}
	}
	out, settled := arranged(text, d, mended)
	if len(text) < typedBytes {
		if lines := partedLines(text, out, settled.delim, strings.HasPrefix(settled.why, toldInSentences)); lines != nil {
			return []byte(strings.Join(lines, "\n") + "\n"), dialect{delim: '\t', why: "a mark divides it, and each part is known by what it is" + mended}
		}
	}
	return out, settled
}

// arranged cuts the lines of a text into cells by the first way that fits, where its mark does not.
func arranged(text []byte, d dialect, mended string) ([]byte, dialect) {
	if len(text) < typedBytes {
		received := textLines(text)
		if lines := numberedPieces(received, d.delim); lines != nil {
			return []byte(strings.Join(lines, "\n") + "\n"), dialect{delim: '\t', why: "a number stands before the name, and a mark divides the rest" + mended}
		}
		if lines := cardLines(received); lines != nil {
			return []byte(strings.Join(lines, "\n") + "\n"), dialect{delim: '\t', why: "the lines of each runner stand below one another, and marks divide the one with the time" + mended}
		}
	}
	if divided(text, d.delim) && (len(text) == 0 || text[0] != '\'') {
		return text, d
	}
	if len(text) < typedBytes {
		if lines := plainLines(textLines(text), d.delim); lines != nil {
			text = []byte(strings.Join(lines, "\n") + "\n")
		}
	}
	received := textLines([]byte(plainSpaces.Replace(string(text)))) // as a web page aligns columns
	if len(text) < typedBytes {
		received = eastAsianLines(received)
	}
	for _, try := range []struct {
		arrange func(lines []string, delim byte) []string
		why     string
	}{
		{singleQuoted, "every cell stands in single quotes"},
		{byRareMark, "an uncommon mark stands between its cells"},
		{underOneAnother, "no mark divides it; its columns stand under one another"},
		{labelledLines, "each of its lines says what its value is"},
		{cellLines, "each of its lines is a cell"},
		{bulletNameTime, "each line is an item of a list, with a name and a time"},
		{placeNameBracketTime, "no mark divides it; each line holds a name, mostly an age group in brackets, and a time"},
		{placeNameTime, "no mark divides it; each line holds a name and a time"},
		{placeNameGroupTime, "no mark divides it; each line holds a name, an age group and a time"},
		{placesAndTimes, "no mark divides it; each line holds a place and a time"},
		{typedLines, "no mark divides it; each line holds a name, a time and what else there is of a result"},
		{pacedLines, "no mark divides it; each line holds a name, a time and a pace, which is left out"},
		{gapsBetween, "no mark divides it; two spaces and more stand between its cells"},
		{proseAlone, toldInSentences},
	} {
		if out := try.arrange(received, d.delim); out != nil {
			untimedRows(out)
			for i, l := range out {
				out[i] = loneQuotes(l)
			}
			return []byte(strings.Join(out, "\n") + "\n"), dialect{delim: '\t', why: try.why + mended}
		}
	}
	return text, d
}

// toldInSentences says what was done to results that are told in sentences.
const toldInSentences = "results told in sentences were put one runner to a line, and the rows are counted so"

// loneQuotes puts the usual sign for "the same as above" in the place of a quotation mark that
// stands alone in its cell, where it would begin a text over several lines.
func loneQuotes(l string) string {
	if !strings.Contains(l, "\"") || !strings.Contains(l, "\t") {
		return l
	}
	cells := strings.Split(l, "\t")
	for i, c := range cells {
		if c = strings.TrimSpace(c); c == `"` || c == `-"-` {
			cells[i] = "〃"
		}
	}
	return strings.Join(cells, "\t")
}

// signBefore is a time with the sign of the gap that follows it: "0:44:29 +  00:59".
var signBefore = regexp.MustCompile(`(\d:[0-5]\d) \+( +)(\d{1,2}:[0-5]\d)`)

// signsToGaps moves the sign to the gap, "0:44:29   +00:59"; columns keep their places.
func signsToGaps(text []byte) []byte {
	if !bytes.Contains(text, []byte(" + ")) {
		return text
	}
	return signBefore.ReplaceAll(text, []byte("$1 $2+$3"))
}

// timeInBrackets is the only time of a line, in brackets at its end: "1st Jo Lee (18:20)".
var timeInBrackets = regexp.MustCompile(`(?m)^([^\d\n]*\d{0,4}[^\d\n]*?)[ \t]*[(\[](\d{1,3}(?:[:.'’]\d{2}){1,2}(?:["”″]|'')?)[)\]][ \t.;]*$`)

// oddBrackets is what a person puts into brackets that others have for marks of a page: "[18:20] Jo
// Lee <Vale AC>", "Jo Lee {W40} 18:20".
var oddBrackets = regexp.MustCompile(`<(\pL[^<>/=@"\n]{0,40})>|\{([^{}:"\n]{1,40})\}`)

// timeBefore is a time in brackets at the beginning of a line.
var timeBefore = regexp.MustCompile(`^[ \t]*[(\[<{](\d{1,3}(?:[:.]\d{2}){1,2})[)\]>}][ \t]*(\pL)`)

// plainBrackets writes such brackets as round ones, and times before names without them, where nine in
// ten of the lines with a time, four or more, have them. Lines keep their places.
func plainBrackets(text []byte) []byte {
	if len(text) > typedBytes || !bytes.ContainsAny(text, "<{[(") || bytes.Contains(text, []byte("</")) || lineTags.Match(text) {
		return text
	}
	lines := bytes.Split(text, []byte("\n"))
	timed, odd, before := 0, 0, 0
	for _, l := range lines {
		if !looseClockInside.Match(l) || len(findDates(string(l))) > 0 {
			continue
		}
		timed++
		if oddBrackets.Match(l) {
			odd++
		}
		if timeBefore.Match(l) && len(clockInside.FindAllIndex(l, 2)) < 2 { // not the stamp of a message
			before++
		}
	}
	if odd = odd * 10; before*10 < timed*9 {
		before = 0
	}
	if timed < 4 || odd < timed*9 && before == 0 {
		return text
	}
	for i, l := range lines {
		if !looseClockInside.Match(l) {
			continue
		}
		if odd >= timed*9 {
			l = oddBrackets.ReplaceAll(l, []byte("($1$2)"))
		}
		if before > 0 {
			l = timeBefore.ReplaceAll(l, []byte("$1 $2"))
		}
		lines[i] = l
	}
	return bytes.Join(lines, []byte("\n"))
}

// bareTimes takes such brackets away, where most times stand in them.
func bareTimes(text []byte) []byte {
	if !bytes.ContainsAny(text, "([") {
		return text
	}
	if n := len(timeInBrackets.FindAllIndex(text, -1)); n < 3 || 2*n < len(clockInside.FindAllIndex(text, -1)) {
		return text
	}
	return timeInBrackets.ReplaceAll(text, []byte("$1 $2"))
}

// lineTags are the marks of web pages that begin and end lines and paragraphs.
var lineTags = regexp.MustCompile(`(?i)</?(?:p|br|div|li|ul|ol|b|i|strong|em|span)(?: [^<>]*)?/?>`)

// textTags are those around words of a line, as cells of lists that a site gives out have them.
var textTags = regexp.MustCompile(`(?i)</?(?:a|b|i|u|strong|em|span|small|font)(?: [^<>\n]*)?>`)

// withoutTags takes such marks off a text in which three lines and more have them. Lines
// keep their places.
func withoutTags(text []byte) []byte {
	if len(text) > typedBytes || bytes.IndexByte(text, '<') < 0 {
		return text
	}
	if bytes.Count(text, []byte("</a>")) >= 3 || bytes.Count(text, []byte("</b>")) >= 3 || bytes.Count(text, []byte("</span>")) >= 3 || bytes.Count(text, []byte("</strong>")) >= 3 {
		text = textTags.ReplaceAll(text, nil)
	}
	if bytes.Count(text, []byte("<br")) < 3 && bytes.Count(text, []byte("<li")) < 3 && bytes.Count(text, []byte("<p")) < 3 {
		return text
	}
	return lineTags.ReplaceAll(text, nil)
}

// wikiRows turns the rows of a table in wiki markup, "| 1 || Jo Lee || 18:20" under lines
// "|-" and headings behind "!", into rows divided by bars. Lines keep their places.
func wikiRows(text []byte) []byte {
	if len(text) > typedBytes || bytes.Count(text, []byte("\n|-")) < 2 {
		return text
	}
	lines := bytes.Split(text, []byte("\n"))
	if !bytes.Contains(text, []byte("||")) {
		if !bytes.Contains(text, []byte("{|")) {
			return text
		}
		cellsToRows(lines)
	}
	for i, l := range lines {
		switch {
		case bytes.HasPrefix(l, []byte("{|")), bytes.HasPrefix(l, []byte("|}")), bytes.HasPrefix(l, []byte("|-")):
			lines[i] = nil
		case bytes.HasPrefix(l, []byte("!")):
			lines[i] = bytes.ReplaceAll(bytes.ReplaceAll(l[1:], []byte("!!"), []byte("|")), []byte("||"), []byte("|"))
		case bytes.HasPrefix(l, []byte("|")):
			lines[i] = bytes.ReplaceAll(l[1:], []byte("||"), []byte("|"))
		}
	}
	return bytes.Join(lines, []byte("\n"))
}

// cellsToRows puts the cells of wiki markup that stand one a line, "| 1", "| Jo Lee", "| 18:20" under
// a line "|-", into the first of these lines.
func cellsToRows(lines [][]byte) {
	row := -1
	for i, l := range lines {
		switch {
		case len(l) < 2 || l[0] != '|' && l[0] != '!' || l[1] == '-' || l[1] == '}':
			row = -1
		case row >= 0 && lines[row][0] == l[0]:
			lines[row] = fmt.Appendf(nil, "%s%s%s%s", bytes.TrimRight(lines[row], "\r"), l[:1], l[:1], l[1:])
			lines[i] = nil
		default:
			row = i
		}
	}
}

// plainBars turns the lines that box tables are drawn with into bars and strokes, and
// the doubled bars of a heading into single ones. Lines keep their places.
func plainBars(text []byte) []byte {
	if len(text) > wholeBytes {
		return text
	}
	if bytes.Contains(text, []byte("│")) || bytes.Contains(text, []byte("║")) || bytes.Contains(text, []byte("┃")) {
		text = []byte(boxes.Replace(string(text)))
	}
	if bytes.Contains(text, []byte("+==")) {
		text = griddedRows(text)
	}
	if !bytes.HasPrefix(text, []byte("||")) && !bytes.Contains(text, []byte("\n||")) {
		return text
	}
	lines := bytes.SplitAfter(text, []byte("\n"))
	single := 0
	for _, l := range lines {
		if len(l) > 1 && l[0] == '|' && l[1] != '|' {
			single++
		}
	}
	if single < 2 {
		return text
	}
	for i, l := range lines {
		// A line whose bars are single further on only begins with a blank cell.
		if bytes.HasPrefix(l, []byte("||")) && !bytes.ContainsRune(bytes.ReplaceAll(l, []byte("||"), nil), '|') {
			lines[i] = bytes.ReplaceAll(l, []byte("||"), []byte("|"))
		}
	}
	return bytes.Join(lines, nil)
}

// ruleOfGrid is a line drawn between the rows of a table: "+-----+------+", "+=====+======+".
var ruleOfGrid = regexp.MustCompile(`^\s*\+(?:[-=]{2,}\+)+\s*$`)

// ruleOfQuery is such a line as databases draw below the heading: "-----+------".
var ruleOfQuery = regexp.MustCompile(`^\s*-{2,}(?:\+-{2,})+\s*$`)

// griddedRows leaves out the lines drawn between the rows of a table, of which the one below the
// heading is doubled (grid tables of reStructuredText). Lines keep their places.
func griddedRows(text []byte) []byte {
	lines := textLines(text)
	for i, l := range lines {
		if ruleOfGrid.MatchString(l) {
			lines[i] = ""
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

// plainMedals turns the signs that messages give places by into numbers.
func plainMedals(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte("\U0001F947")) && !bytes.Contains(text, []byte("\u20E3")) {
		return text
	}
	return []byte(medals.Replace(string(text)))
}

// medals are the medals of the first three, and figures drawn as keys.
var medals = func() *strings.Replacer {
	pairs := []string{"\U0001F947", "1. ", "\U0001F948", "2. ", "\U0001F949", "3. ", "\U0001F51F", "10 "}
	for d := '0'; d <= '9'; d++ {
		pairs = append(pairs, string(d)+"\uFE0F\u20E3", string(d), string(d)+"\u20E3", string(d))
	}
	return strings.NewReplacer(pairs...)
}()

var boxes = strings.NewReplacer("│", "|", "║", "|", "┃", "|", "─", "-", "═", "-", "━", "-",
	"┌", "+", "┐", "+", "└", "+", "┘", "+", "├", "+", "┤", "+", "┬", "+", "┴", "+", "┼", "+",
	"╔", "+", "╗", "+", "╚", "+", "╝", "+", "╠", "+", "╣", "+", "╦", "+", "╩", "+", "╬", "+")

// typedBytes is more than anybody types or arranges by hand.
const typedBytes = 1 << 20

// tabs is a run of tabs.
var tabs = regexp.MustCompile(`\t+`)

// alignedByTabs takes runs of tabs for one where people have set them to make
// columns stand under one another, as in a word processor: rows then have
// different numbers of tabs, and the same number of runs. Where two tabs have a blank
// cell between them, a row has fewer runs than the others. Where nine in ten of the rows in which tabs
// stand together have as many tabs as others in which none do, each tab divides; so it does where a line without
// a blank cell is as wide as any and wider than most, the heading of a grid with many blanks.
func alignedByTabs(lines []string) (out []string, ok bool) {
	cells, rows, like, doubled, whole, odd := 0, 0, 0, 0, 0, 0
	counts, runsOf := map[int]int{}, map[int]int{}
	apart, together := map[int]int{}, map[int]int{} // rows by their tabs
	for _, line := range lines {
		if l := strings.TrimRight(line, "\t "); l != "" && l[0] != '\t' {
			if runs := len(tabs.FindAllStringIndex(l, -1)); runs > 0 {
				if runsOf[runs]++; runsOf[runs] > runsOf[cells] || runsOf[runs] == runsOf[cells] && runs > cells {
					cells = runs
				}
			}
		}
	}
	var first []string
	widest, full := 0, 0
	open := false // in a cell that goes on in the next line
	for _, line := range lines {
		broken := strings.Count(line, `"`)%2 == 1
		part := open || broken
		open = open != broken
		l := strings.TrimRight(line, "\t ")
		runs := len(tabs.FindAllStringIndex(l, -1))
		if runs == 0 || l[0] == '\t' || part {
			continue
		}
		rows++
		counts[strings.Count(line, "\t")]++
		widest = max(widest, strings.Count(l, "\t"))
		if !strings.Contains(l, "\t\t") {
			full = max(full, runs)
		}
		if strings.Contains(l, "\t\t") {
			together[strings.Count(line, "\t")]++
			doubled++
			if runs == cells {
				whole++
			} else if clockInside.MatchString(l) {
				odd++
			}
		} else {
			apart[strings.Count(line, "\t")]++
		}
		if runs == cells {
			if like++; like > 1 && first == nil { // below the heading
				first = tabs.Split(l, -1)
			}
		}
	}
	few := whole > 0 && odd == 0 && like-whole >= 3 // one tab too many here and there
	if full > cells && full == widest {
		return nil, false
	}
	if rows < 4 || cells < 2 || len(counts) < 2 || like*2 < rows || !few && (whole < 3 || whole*4 < doubled) {
		return nil, false
	}
	for n, of := range together {
		if of*10 >= doubled*9 && apart[n] > 1 {
			return nil, false
		}
	}
	for _, n := range counts {
		if n*10 >= rows*9 && like < rows {
			return nil, false // as many tabs in each line: each divides
		}
	}
	out = make([]string, len(lines))
	for i, l := range lines {
		row := tabs.Split(strings.TrimRight(l, "\t "), -1)
		if len(row) == cells && cells > 2 { // one cell is blank
			at, ok := blankAmong(row, first)
			if !ok {
				return nil, false
			}
			row = slices.Insert(row, at, "")
		}
		out[i] = strings.Join(row, "\t")
	}
	return out, true
}

// blankAmong finds where a row with one cell too few has its blank, by the kinds
// of the cells of a row that has them all; ok is false where it may be in several
// places.
func blankAmong(row, whole []string) (at int, ok bool) {
	n := 0
	for i := 0; i <= len(row); i++ {
		fits := true
		for k := range row {
			j := k
			if k >= i {
				j++
			}
			fits = fits && kindOf(row[k]) == kindOf(whole[j])
		}
		if fits {
			at = i
			n++
		}
	}
	return at, n == 1
}

// singleQuoted takes the single quotes off where every cell has them: 'Jo
// Lee','18:20'. nil where that is not so.
func singleQuoted(lines []string, delim byte) []string {
	between := "'" + string(delim) + "'"
	out, quoted, filled := make([]string, len(lines)), 0, 0
	for i, l := range lines {
		l = strings.TrimSpace(l)
		if l == "" {
			continue
		}
		filled++
		if len(l) < 5 || l[0] != '\'' || l[len(l)-1] != '\'' || !strings.Contains(l, between) || strings.ContainsAny(l, "\t\"") {
			out[i] = l
			continue
		}
		quoted++
		out[i] = strings.ReplaceAll(l[1:len(l)-1], between, "\t")
	}
	if quoted < 3 || quoted*10 < filled*9 {
		return nil
	}
	return out
}

// divided says whether nine of ten lines have two delimiters or more, or two of three as
// many as the line above, with remarks between the tables, or half as many bars, one below the
// other, as a database draws a table: columns that stand under one another need not be looked for.
func divided(text []byte, delim byte) bool {
	lines, with, alike, before, end := 0, 0, 0, 0, byte('\n')
	drawn, last := true, 0 // each line with the bars of the one right above it
	if bytes.IndexByte(text, end) < 0 {
		end = '\r'
	}
	mark := []byte{delim}
	for len(text) > 0 {
		line := text
		if i := bytes.IndexByte(text, end); i >= 0 {
			line, text = text[:i], text[i+1:]
		} else {
			text = nil
		}
		if len(bytes.TrimSpace(line)) == 0 {
			continue
		}
		if bytes.IndexByte(line, '+') >= 0 && ruleOfQuery.Match(line) {
			continue
		}
		lines++
		if n := bytes.Count(line, mark); n >= 2 {
			drawn = drawn && (with == 0 || n == before && last == lines-1)
			with++
			last = lines
			if n == before && (n >= 4 || n == 3 && delim == ',') {
				alike++
			}
			before = n
		}
	}
	switch {
	case lines < 3:
		return false
	case 10*with >= 9*lines:
		return true
	}
	return 3*with >= 2*lines && 10*alike >= 9*with || delim == '|' && drawn && with > 3 && 2*with >= lines
}

// textLines cuts a text at CR, LF or CRLF.
func textLines(text []byte) []string {
	s := strings.ReplaceAll(strings.ReplaceAll(string(text), "\r\n", "\n"), "\r", "\n")
	return strings.Split(strings.TrimSuffix(s, "\n"), "\n")
}

// wideGap parts two columns that stand under one another.
var wideGap = regexp.MustCompile(`\S {2,}\S`)

// withoutRaceLine leaves out lines above the heading that say how long the race was, "Run 5 km (16)
// 5.0 km   35 m": what stands in them stands under nothing.
func withoutRaceLine(lines []string, table []int) []int {
	first := slices.IndexFunc(table, func(i int) bool { return hasClock(lines[i]) })
	for first > 1 {
		if _, _, _, far := findDistance(lines[table[0]]); !far {
			break
		}
		table = table[1:]
		first--
	}
	return table
}

// withoutLetterHead leaves out lines above the heading and below the last result that stand in
// wide gaps too, "Start: 10:30   Wind: 2 m/s   14 °C", "The judges: … (signed)   … (signed)",
// where the columns of the others are told apart without them. Results end, or begin, their times under
// one another.
func withoutLetterHead(lines []string, table []int) []int {
	var from, to []int
	begins, ends := map[int]int{}, map[int]int{}
	for _, i := range table {
		a, b := lastClock(lines[i])
		if from, to = append(from, a), append(to, b); b > 0 {
			begins[a]++
			ends[b]++
		}
	}
	usual := func(n map[int]int) (at int) {
		for k, c := range n {
			if c > n[at] || c == n[at] && k > at {
				at = k
			}
		}
		return at
	}
	at, places := usual(ends), to
	if other := usual(begins); begins[other] > ends[at] {
		at, places = other, from
	}
	first, last, n := -1, -1, 0
	for k := range table {
		if to[k] > 0 && places[k] == at {
			if n++; first < 0 {
				first = k
			}
			last = k
		}
	}
	if n < 4 || 2*n < len(table) {
		return table
	}
	if first > 0 && to[first-1] == 0 && table[first]-table[first-1] <= 2 {
		first-- // the heading
	}
	kept := table[first : last+1]
	if len(kept) == len(table) || gutters(usedPlaces(lines, kept)) <= gutters(usedPlaces(lines, table)) {
		return table
	}
	return kept
}

// withoutPageHeads leaves out lines in wide gaps that stand over every page, with no more than another
// number in them, "ALDER BANK 5K     19-MAY-2018     PAGE 2", where the columns of the others are told
// apart without them.
func withoutPageHeads(lines []string, table []int) []int {
	bare := func(i int) string { return strings.TrimSpace(strings.Map(withoutDigit, lines[i])) }
	heads := map[string]int{}
	for i, l := range lines {
		if hasLetter(l) && hasDigit(l) && !hasClock(l) { // headings have no number
			heads[bare(i)]++
		}
	}
	kept := table
	for _, k := range table {
		head := bare(k)
		if heads[head] < 2 || hasClock(lines[k]) {
			continue
		}
		heads[head] = 0
		without := slices.DeleteFunc(slices.Clone(kept), func(i int) bool { return !hasClock(lines[i]) && bare(i) == head })
		if gutters(usedPlaces(lines, without)) > gutters(usedPlaces(lines, kept)) {
			kept = without
		}
	}
	return kept
}

// withoutDigit drops the figures of a text, for strings.Map.
func withoutDigit(r rune) rune {
	if unicode.IsDigit(r) {
		return -1
	}
	return r
}

// lastClock is where the last time of a line begins and ends, in characters; 0, 0 for none.
func lastClock(l string) (from, to int) {
	at := 0
	for _, f := range strings.Split(l, " ") {
		n := utf8.RuneCountInString(f)
		if n > 0 && hasClock(f) {
			from, to = at, at+n
		}
		at += n + 1
	}
	return from, to
}

// gutters counts the gaps of two characters and more between used places.
func gutters(used []bool) (n int) {
	for k := 2; k < len(used); k++ {
		if used[k] && !used[k-1] && !used[k-2] {
			n++
		}
	}
	return n
}

// underOneAnother cuts lines at the gutters: the places, two or more characters
// wide, where no line of the table has anything. nil where it is no such table.
func underOneAnother(lines []string, delim byte) []string {
	var table []int
	width, clocks, marks := 0, 0, 0
	rule := ruleLine(lines)
	for i, l := range lines {
		if strings.IndexByte(l, '\t') >= 0 {
			return nil
		}
		if i == rule-1 || rule >= 0 && i > rule && clockInside.MatchString(l) || len(wideGap.FindAllString(l, 3)) >= 2 {
			table = append(table, i)
			width = max(width, utf8.RuneCountInString(l))
			if dividesLine(l, delim) {
				marks++
			}
			if hasClock(l) {
				clocks++
			}
		}
	}
	if len(table) < 3 || clocks < 2 || marks*2 > len(table) || width > 400 {
		return nil
	}
	if rule >= 0 {
		table = withoutOtherBlocks(lines, table, rule)
	}
	table = withoutLetterHead(lines, withoutPageHeads(lines, withoutRaceLine(lines, table)))
	used := usedPlaces(lines, table)
	width = len(used)
	var ruled map[int]bool
	if rule >= 0 {
		ruled = ruledStarts(lines, table, lines[rule])
	}
	var cuts []int // where columns begin
	for k := 0; k < width; k++ {
		if used[k] && (len(cuts) == 0 && k == 0 || k >= 2 && !used[k-1] && !used[k-2] || len(cuts) == 0) || ruled[k] {
			cuts = append(cuts, k)
		}
	}
	all := slices.Clone(cuts)
	cuts = slices.DeleteFunc(cuts, func(c int) bool { // a stroke that begins before its column does
		next := width
		if i := slices.IndexFunc(all, func(d int) bool { return d > c }); i >= 0 {
			next = all[i]
		}
		return !slices.Contains(used[c:next], true)
	})
	if more, moved := withNarrowLines(lines, table, used, cuts); len(more) > len(table) {
		table, cuts = more, moved
		used = usedPlaces(lines, table)
	}
	cuts = narrowCuts(lines, table, used, cuts)
	if len(cuts) < 3 {
		return nil
	}
	rows := make([][]string, len(lines))
	in, heads := map[int]bool{}, narrowHeads(lines, table, cuts)
	at := 0
	for i, l := range lines {
		if at >= len(table) || table[at] != i {
			rows[i] = []string{strings.TrimSpace(l)}
			if heads[i] != nil {
				rows[i] = heads[i]
			}
			continue
		}
		in[i] = true
		at++
		var b strings.Builder
		k, column := 0, 0
		for _, r := range l {
			for column+1 < len(cuts) && k >= cuts[column+1] {
				b.WriteByte('\t')
				column++
			}
			b.WriteRune(r)
			k++
		}
		cells := strings.Split(b.String(), "\t")
		for c := range cells {
			cells[c] = strings.TrimSpace(cells[c])
		}
		rows[i] = cells
	}
	joinWrapped(lines, rows, in, cuts)
	splitPlace(rows, in, heads)
	splitClocks(rows, in)
	gapped := 0 // rows whose time has a wide gap and other words before it
	for i := range in {
		if slices.ContainsFunc(rows[i], func(c string) bool { return gaps.MatchString(c) && hasClock(c) }) {
			gapped++
		}
	}
	if gapped*5 >= clocks && gapsBetween(lines, delim) != nil {
		return nil
	}
	out := make([]string, len(lines))
	for i, cells := range rows {
		out[i] = strings.Join(cells, "\t")
	}
	return out
}

// gaps is two spaces and more.
var gaps = regexp.MustCompile(` {2,}`)

// gapsBetween cuts lines at such gaps, where columns don't stand under one another: nine in ten
// of four lines or more with a time have as many cells, three or more. nil where they have not.
func gapsBetween(lines []string, _ byte) []string {
	counts, timed, most := map[int]int{}, 0, 0
	for _, l := range lines {
		if strings.IndexByte(l, '\t') >= 0 {
			return nil
		}
		if l = strings.TrimSpace(l); hasClock(l) {
			n := len(gaps.FindAllStringIndex(l, -1)) + 1
			timed++
			if counts[n]++; counts[n] > counts[most] {
				most = n
			}
		}
	}
	if timed < 4 || most < 3 || counts[most]*10 < timed*9 {
		return nil
	}
	rows, table := make([][]string, len(lines)), map[int]bool{}
	for i, l := range lines {
		rows[i] = gaps.Split(strings.TrimSpace(l), -1)
		table[i] = len(rows[i]) == most
	}
	splitPlace(rows, table, nil)
	out := make([]string, len(lines))
	for i, cells := range rows {
		out[i] = strings.Join(cells, "\t")
	}
	return out
}

// joinWrapped puts the end of a text that did not fit its column, and stands alone in the
// line below where the column begins, back behind its beginning: "Osier Valley", below it
// "Harriers".
func joinWrapped(lines []string, rows [][]string, table map[int]bool, cuts []int) {
	above := -1
	for i, l := range lines {
		if table[i] {
			above = i
			continue
		}
		text := strings.TrimSpace(l)
		if above < 0 || text == "" || strings.ContainsAny(text, "0123456789:") {
			above = -1
			continue
		}
		from := utf8.RuneCountInString(l) - utf8.RuneCountInString(strings.TrimLeft(l, " "))
		column := slices.Index(cuts, from)
		if column >= 1 && column+1 < len(cuts) && column < len(rows[above]) {
			if first, _, _ := strings.Cut(text, " "); strings.Contains(text, " ") && utf8.RuneCountInString(rows[above][column]+" "+first) < cuts[column+1]-cuts[column]-2 {
				above = -1 // there was room for it: somebody else, who has no time
				continue
			}
		}
		if column < 1 || column >= len(rows[above]) || kindOf(rows[above][column]) != kText || column+1 < len(cuts) && utf8.RuneCountInString(strings.TrimRight(l, " ")) > cuts[column+1] {
			above = -1
			continue
		}
		rows[above][column] += " " + text
		rows[i] = []string{""}
	}
}

// clocksBeside are two times, or words and a time, in one cell, whose columns were moved against one another.
var clocksBeside = regexp.MustCompile(`^(\d{1,3}:\d{2}(?::\d{2})?|\pL[^\d:]*?) {2,}(\d{1,3}:\d{2}(?::\d{2})?)$`)

// splitClocks parts a column that holds such cells in nearly every row with a time, and its heading, two words
// or with a wide gap.
func splitClocks(rows [][]string, table map[int]bool) {
	width := 0
	for i := range table {
		width = max(width, len(rows[i]))
	}
	for c := width - 1; c > 0; c-- {
		n, two := 0, 0
		for i := range table {
			if cell := cellAt(rows[i], c); hasClock(cell) {
				if n++; clocksBeside.MatchString(cell) {
					two++
				}
			}
		}
		if two < 3 || two*10 < n*9 {
			continue
		}
		for i := range table {
			if c >= len(rows[i]) {
				continue
			}
			first, second := rows[i][c], ""
			if m := clocksBeside.FindStringSubmatch(first); m != nil {
				first, second = m[1], m[2]
			} else if a, b, ok := cutAny(first, "  ", " "); ok && (strings.Contains(first, "  ") || len(strings.Fields(first)) == 2) {
				first, second = a, strings.TrimSpace(b)
			}
			rows[i] = slices.Replace(rows[i], c, c+1, first, second)
		}
	}
}

// hasClock says whether a word of a text is a running time, or several are one with its units.
func hasClock(s string) bool {
	return slices.ContainsFunc(strings.Fields(s), func(f string) bool { return isClock(f) || dottedTime.MatchString(f) || commaTime.MatchString(f) }) || unitClock.MatchString(s)
}

// unitClock is a time with its units: 17 min 19 s, 17m19s, 17'19".
var unitClock = regexp.MustCompile(`(?:^|\s)\d{1,2} ?(?:min\.?|m|'|′) ?[0-5]?\d ?(?:s|sec\.?|secs|"|″|'')(?:$|\s)`)

// usedPlaces says at which places of the lines of a table any of them has something.
func usedPlaces(lines []string, table []int) (used []bool) {
	for _, i := range table {
		k := 0
		for _, r := range lines[i] {
			if k == len(used) {
				used = append(used, false)
			}
			used[k] = used[k] || r != ' '
			k++
		}
	}
	return used
}

// withNarrowLines adds the lines of which long words leave too few wide gaps: where the
// table has its times they have one, and no word of theirs goes across a cut. A figure
// that does, "11" under " 9", moves the cut where no line of the table has anything.
func withNarrowLines(lines []string, table []int, used []bool, cuts []int) ([]int, []int) {
	if len(cuts) < 2 {
		return table, cuts
	}
	cell := func(l []rune, c int) string {
		end := len(l)
		if c+1 < len(cuts) {
			end = min(end, cuts[c+1])
		}
		return string(l[min(cuts[c], len(l)):end])
	}
	times, most := -1, len(table)/2
	for c := range cuts {
		n := 0
		for _, i := range table {
			if hasClock(cell([]rune(lines[i]), c)) {
				n++
			}
		}
		if n > most {
			times, most = c, n
		}
	}
	if times < 0 {
		return table, cuts
	}
	moved := slices.Clone(cuts)
	out := slices.Clone(table)
	for i, l := range lines {
		if _, in := slices.BinarySearch(table, i); in || !strings.ContainsAny(l, ":.") {
			continue
		}
		r := []rune(l)
		if !hasClock(cell(r, times)) {
			continue
		}
		mine, fits := slices.Clone(moved), true
		for c, k := range cuts[1:] {
			if k >= len(r) || r[k] == ' ' || r[k-1] == ' ' {
				continue
			}
			from := k
			for from > 0 && r[from-1] != ' ' {
				from--
			}
			free := from > 0 && !slices.Contains(used[from-1:k], true) && unicode.IsDigit(r[from])
			if fits = fits && free; free {
				mine[c+1] = min(mine[c+1], from)
			}
		}
		if fits {
			moved = mine
			out = append(out, i)
		}
	}
	slices.Sort(out)
	return out, moved
}

// narrowCuts adds the columns that one space alone parts from the ones before: no
// line has anything there, the heading has a word on either side, and so have
// nearly all rows.
func narrowCuts(lines []string, table []int, used []bool, cuts []int) []int {
	if len(table) < 6 {
		return cuts
	}
	out := slices.Clone(cuts)
	for k := 2; k < len(used); k++ {
		if !used[k] || used[k-1] || !used[k-2] || slices.Contains(cuts, k) {
			continue
		}
		from, to := 0, len(used)
		for _, c := range out {
			if c < k {
				from = max(from, c)
			} else {
				to = min(to, c)
			}
		}
		both, sample := 0, table[:min(len(table), 1000)]
		headless, wordsOnly, least, most := false, true, len(used), 0 // of what stands before the gap
		numbers := true                                               // figures before the gap, letters behind it: 45 Fell Harriers
		for n, i := range sample {
			r := []rune(lines[i])
			before := strings.TrimSpace(string(r[min(from, len(r)):min(k-1, len(r))]))
			behind := strings.TrimSpace(string(r[min(k, len(r)):min(to, len(r))]))
			left, right := before != "", behind != ""
			if left {
				least, most = min(least, len([]rune(before))), max(most, len([]rune(before)))
			}
			headless = headless || n == 0 && hasClock(lines[i])
			wordsOnly = wordsOnly && hasNoDigit(before) && hasNoDigit(behind)
			if n > 0 && !isRule(strings.Fields(lines[i])) && (left && !digitsOnly(before) || right && !hasNoDigit(behind)) {
				numbers = false
			}
			if left && right {
				both++
			} else if n == 0 && !hasClock(lines[i]) { // a heading
				both = -len(table)
			}
		}
		if headless && least == most && wordsOnly {
			continue // first names that happen to be of one length
		}
		if both*10 >= len(sample)*8 || numbers && both*10 >= len(sample)*3 {
			out = append(out, k)
			slices.Sort(out)
		}
	}
	return out
}

// dottedTime is 24.31: minutes and seconds where a whole column is of that kind.
var dottedTime = regexp.MustCompile(`^\d{1,2}\.[0-5]\d$`)

// commaTime is a time with a comma, a word of its own: 24,31.
var commaTime = regexp.MustCompile(`^[1-9]\d,[0-5]\d$`)

// dividesLine says whether the delimiter divides a line; a comma with a space
// behind it stands in "LEE, Jo", one within a word of figures in 24,31.
func dividesLine(l string, delim byte) bool {
	for {
		i := strings.IndexByte(l, delim)
		if i < 0 {
			return false
		}
		if delim != ',' || i+1 < len(l) && l[i+1] != ' ' && !fractionAt(l, i) && !withinFigures(l, i) {
			return true
		}
		l = l[i+1:]
	}
}

// fractionAt says whether the comma at i stands before the fraction of a second: 17:19,00.
func fractionAt(l string, i int) bool {
	digit := func(k int) bool { return k >= 0 && k < len(l) && l[k] >= '0' && l[k] <= '9' }
	return digit(i-1) && digit(i-2) && i >= 3 && l[i-3] == ':' && digit(i+1)
}

// withinFigures says whether the comma at i is that of a time with a comma, between blanks.
func withinFigures(l string, i int) bool {
	from, to := i-2, i+3
	return from >= 1 && to <= len(l) && l[from-1] == ' ' && (to == len(l) || l[to] == ' ') && commaTime.MatchString(l[from:to])
}

// ruledStarts are the places where the strokes of a line drawn under the heading
// begin, "==== ======== =====", if no word of the table goes across them. Figures may
// begin a place or two before their stroke, where no line has anything before them.
func ruledStarts(lines []string, table []int, rule string) map[int]bool {
	starts := map[int]bool{}
	k, before := 0, ' '
	for _, r := range rule {
		if r != ' ' && before == ' ' {
			starts[k] = true
		}
		before = r
		k++
	}
	moved := map[int]int{}
	for _, i := range table {
		l := []rune(lines[i])
		for k := 1; k < len(l); k++ {
			if !starts[k] || l[k] == ' ' || l[k-1] == ' ' {
				continue
			}
			if strings.ContainsRune("#*+†‡", l[k-1]) && k > 1 && unicode.IsDigit(l[k-2]) {
				continue // a footnote's mark in the gap: 39:41#12:46
			}
			from := k
			for from > 0 && unicode.IsDigit(l[from-1]) {
				from--
			}
			if k-from > 2 || from == 0 || l[from-1] != ' ' || !unicode.IsDigit(l[k]) {
				return nil
			}
			moved[k] = max(moved[k], k-from)
		}
	}
	if len(moved) == 0 {
		return starts
	}
	used := usedPlaces(lines, table)
	for k, by := range moved {
		if used[k-by-1] {
			return nil
		}
		delete(starts, k)
		starts[k-by] = true
	}
	return starts
}

// ruleLine is the first line of three strokes or more with spaces between, -1
// for none.
func ruleLine(lines []string) int {
	for i, l := range lines {
		if strings.Trim(l, " =-_") == "" && len(strings.Fields(l)) >= 3 {
			return i
		}
	}
	return -1
}

// withoutOtherBlocks leaves out of a table the lines of blocks further down, with blank lines
// around them, in which most go across the columns that a rule shows: the teams with their
// scorers under a result. Below a second rule all stays as it is.
func withoutOtherBlocks(lines []string, table []int, rule int) []int {
	var starts []int
	for k, r := range lines[rule] {
		if k > 0 && r != ' ' && lines[rule][k-1] == ' ' {
			starts = append(starts, k)
		}
	}
	across := func(l []rune) bool {
		return slices.ContainsFunc(starts, func(k int) bool { return k < len(l) && l[k] != ' ' && l[k-1] != ' ' })
	}
	blank := func(i int) bool { return strings.TrimSpace(lines[i]) == "" }
	var other [][2]int
	from := rule
	for from < len(lines) && !blank(from) {
		from++ // the block of the table itself
	}
	for from < len(lines) {
		to, n, crossing := from, 0, 0
		for ; to < len(lines) && !blank(to); to++ {
			if _, in := slices.BinarySearch(table, to); in {
				n++
				if across([]rune(lines[to])) {
					crossing++
				}
			}
		}
		if ruleLine(lines[from:to]) >= 0 {
			break
		}
		if crossing > 0 && crossing*2 >= n {
			other = append(other, [2]int{from, to})
		}
		from = to + 1
	}
	return slices.DeleteFunc(slices.Clone(table), func(i int) bool {
		return slices.ContainsFunc(other, func(b [2]int) bool { return i >= b[0] && i < b[1] })
	})
}

// narrowHeads cuts the headings of which long words leave too few wide gaps, "Pl Overall Name      Time": lines of
// heading words alone above a row of the table, each word in the column that begins with it or in which it ends.
func narrowHeads(lines []string, table, cuts []int) map[int][]string {
	heads := map[int][]string{}
	for k, row := range table {
		i := row - 1
		if i < 0 || k > 0 && table[k-1] == i || !wideGap.MatchString(lines[i]) || !hasNoDigit(lines[i]) {
			continue
		}
		cells, words := make([]string, len(cuts)), 0
		column, line := 0, []rune(lines[i])
		for _, at := range wordPlaces(lines[i]) {
			word := string(line[at[0]:at[1]])
			if headingWords[strings.Trim(fold(word), ".:")] == 0 {
				words = 0
				break
			}
			words++
			for column+1 < len(cuts) && at[1] > cuts[column+1] {
				column++
			}
			cells[column] = strings.TrimSpace(cells[column] + " " + word)
		}
		if words >= 3 && cells[len(cells)-1] != "" && !slices.Contains(cells[:len(cells)-1], "") {
			heads[i] = cells
		}
	}
	return heads
}

// wordPlaces are the places at which the words of a line begin and end, in characters.
func wordPlaces(line string) (at [][2]int) {
	k, from := 0, -1
	for _, r := range line + " " {
		if r == ' ' && from >= 0 {
			at = append(at, [2]int{from, k})
			from = -1
		} else if r != ' ' && from < 0 {
			from = k
		}
		k++
	}
	return at
}

// splitPlace parts a place from the name after it where one space is all that stands
// between them: "12 Jo Lee" in nine of ten rows, in the first column, or in one further
// on where the places go on from row to row, as those of a second list beside the first.
// Headings that were cut by themselves are not counted, and one of a place or number and one thing more tells that both
// are in the column.
func splitPlace(rows [][]string, table map[int]bool, heads map[int][]string) {
	for column := 0; ; column++ {
		with, n, on, last, more := 0, 0, 0, 0, false
		both := false
		for _, cells := range heads {
			words := strings.Fields(fold(cellAt(cells, column)))
			both = both || len(words) == 2 && headingWords[words[0]]&(cPlace|cNumber|cNo|cAmong) != 0
		}
		for i, cells := range rows {
			if !table[i] || column >= len(cells) {
				continue
			}
			more = true
			if cells[column] == "" {
				continue
			}
			n++
			if m := placeThenName.FindStringSubmatch(cells[column]); m != nil && !beginsWithDay(cells[column]) {
				with++
				place, _ := strconv.Atoi(m[1]) // figures only
				if place == last+1 || last == 0 {
					on++
				}
				last = place
			}
		}
		switch {
		case !more:
			return
		case n < 3 || with*10 < (n-1)*9, column > 0 && on < with && !both:
			continue
		}
		for i := range rows {
			if !table[i] && heads[i] == nil || column >= len(rows[i]) {
				continue
			}
			a, b := "", rows[i][column]
			if m := placeThenName.FindStringSubmatchIndex(b); m != nil {
				a, b = strings.TrimRight(b[:m[4]], " "), b[m[4]:]
			} else if x, y, ok := strings.Cut(b, " "); ok && hasNoDigit(b) {
				a, b = x, strings.TrimSpace(y)
			}
			rows[i] = slices.Concat(rows[i][:column], []string{a, b}, rows[i][column+1:])
		}
		column++ // the name
	}
}

// beginsWithDay says whether a cell begins with a day and its year: 16 April 2022.
func beginsWithDay(cell string) bool {
	days := findDates(cell)
	return len(days) > 0 && days[0].from == 0 && days[0].readings[0].y != 0
}

var placeThenName = regexp.MustCompile(`^(\d{1,4})(?:[.)] *| +)(\pL)`)

func hasNoDigit(s string) bool {
	for i := range len(s) {
		if isFigure(s[i]) {
			return false
		}
	}
	return true
}

// placePattern is a place as people type it: 1, 1., 1), 1st, 1er, 1º.
const placePattern = `(\d{1,4})(?:\s*(?:\.\)|[.):=–-])|(?:st|nd|rd|th|er|ère|ème|eme|re|e|º|ª|°)(?: ?[:)–-])?)?`

const clockPattern = `(\d{1,3}(?:[:.'’]\d{2}){1,2}(?:[.,]\d{1,3})?["”]?|\d{1,2}h[0-5]?\d['’:][0-5]\d["”]?)`

var (
	nameThenTime = regexp.MustCompile(`^\s*(?:` + placePattern + `\s+)?(\pL[^\d\t]*?)(?:[\s,;:–—-]+|\s*(?:\.{2,}|…+)\s*)` + clockPattern + `([*†‡§]{0,3})(?:[\s,;–—-]+(\D.*|\d{1,4}(?:st|nd|rd|th)\b.*))?\s*$`)
	timeThenName = regexp.MustCompile(`^\s*(?:` + placePattern + `\s+)?` + clockPattern + `[\s,;–—-]+(\pL[^\d\t]*?)\s*$`)
)

// placeNameTime cuts lines as people type them into a message: "1. Jo Lee
// 18:20", "Jo Lee 18:20", "1 18:20 Jo Lee". nil where most lines with a time
// are not of that kind, or a delimiter divides them.
func placeNameTime(lines []string, delim byte) []string {
	cuts := make([]*typed, len(lines))
	matched, placed, timed, marks, divided := 0, 0, 0, 0, 0
	sexes := sexesLast(lines)
	for i, l := range lines {
		if strings.Count(l, string(delim)) >= 2 {
			divided++
		}
		if !strings.ContainsAny(l, "0123456789") || len(l) > 200 || mayTell(l) && correctsTime(l) {
			continue
		}
		if m := nameThenTime.FindStringSubmatch(l); m != nil {
			if m[1] == "" && tellsMuch(m[2]) {
				continue // a sentence, of a record perhaps
			}
			if unit := strings.Trim(m[5], " ."); isUnit(fold(strings.Trim(unit, "()"))) && (unit[0] != '(' || len(unit) > 3) && !(sexes && len(unit) == 1) { // (M) is a man
				m[5] = "" // 17:58 min
			}
			cuts[i] = &typed{place: m[1], name: m[2], time: m[3], rest: strings.TrimSpace(m[4] + " " + m[5])}
		} else if m := timeThenName.FindStringSubmatch(l); m != nil {
			cuts[i] = &typed{place: m[1], name: m[3], time: m[2]}
		}
		if clockInside.MatchString(l) {
			timed++
		}
		if cuts[i] == nil {
			continue
		}
		matched++
		if cuts[i].place != "" {
			placed++
		}
		if strings.IndexByte(l, delim) >= 0 {
			marks++
		}
	}
	if matched < 2 || matched*10 < timed*7 || marks*2 > matched || divided > matched {
		return nil
	}
	withoutWinners(cuts)
	bracketedGroups(cuts)
	if !clubsApart(lines, cuts) {
		return nil
	}
	clubs := slices.ContainsFunc(cuts, func(c *typed) bool { return c != nil && c.club != "" })
	groups := slices.ContainsFunc(cuts, func(c *typed) bool { return c != nil && c.group != "" })
	if placed*2 > matched {
		addNumbered(lines, cuts)
	}
	out := make([]string, len(lines))
	for i, l := range lines {
		c := cuts[i]
		switch {
		case c == nil || placed*2 > matched && c.place == "" && len(findDates(l)) > 0:
			out[i] = strings.TrimSpace(strings.ReplaceAll(l, "\t", " "))
		default:
			cells := []string{c.place, c.name, c.group, c.club, c.time, c.rest}
			if !clubs {
				cells = slices.Delete(cells, 3, 4)
			}
			if !groups {
				cells = slices.Delete(cells, 2, 3)
			}
			if placed == 0 {
				cells = cells[1:]
			}
			out[i] = strings.TrimRight(strings.Join(cells, "\t"), "\t ")
		}
	}
	return out
}

// groupLast is a sex or a class in brackets at the end of a name or of what follows a time.
var groupLast = regexp.MustCompile(`^(.*?)\s*[(\[]([^()\[\]]{1,20})[)\]]$`)

// bracketedGroups makes a group of such brackets, where three lines and more have them behind the name or
// behind the time and hardly any have others there, and what stands before them behind the time a club.
func bracketedGroups(cuts []*typed) {
	for _, part := range []func(*typed) *string{func(c *typed) *string { return &c.name }, func(c *typed) *string { return &c.rest }} {
		bracketed := func(c *typed) (before, group string, ok bool) {
			if c == nil {
				return "", "", false
			}
			m := groupLast.FindStringSubmatch(*part(c))
			if m == nil || c.group != "" {
				return "", "", false
			}
			k := kindOf(m[2])
			return m[1], m[2], k == kSex || k == kGroup
		}
		groups := countTyped(cuts, func(c *typed) bool { _, _, ok := bracketed(c); return ok })
		others := countTyped(cuts, func(c *typed) bool { return groupLast.MatchString(*part(c)) }) - groups
		if groups < 3 || 9*others > groups { // (U), (G), (F) and (M) are teams
			continue
		}
		for _, c := range cuts {
			before, group, ok := bracketed(c)
			if !ok {
				continue
			}
			if *part(c), c.group = before, group; part(c) == &c.rest {
				c.club, c.rest = before, ""
			}
		}
	}
}

// withoutWinners leaves out lines that name the first of the men, women or a group, "1st lady: Jo
// Lee 18:20", where another line has that name and time.
func withoutWinners(cuts []*typed) {
	for i, c := range cuts {
		if c == nil || c.place == "" {
			continue
		}
		group, name, ok := strings.Cut(c.name, ": ")
		if k := kindOf(group); !ok || k != kSex && k != kGroup {
			continue
		}
		if slices.ContainsFunc(cuts, func(other *typed) bool {
			return other != nil && other != c && other.time == c.time && fold(other.name) == fold(name)
		}) {
			cuts[i] = nil
		}
	}
}

// sexesLast says whether letters for two sexes stand alone at the ends of lines: an m among
// them is a man, and no minutes.
func sexesLast(lines []string) bool {
	letters := map[byte]bool{}
	for _, l := range lines {
		l = strings.TrimRight(l, " .")
		if n := len(l); n > 6 && l[n-2] == ' ' && l[n-3] >= '0' && l[n-3] <= '9' && kindOf(l[n-1:]) == kSex {
			letters[l[n-1]&^0x20] = true
		}
	}
	return len(letters) == 2
}

// starLegend is a line that says what a star behind names means, "* = lady".
var starLegend = regexp.MustCompile(`^\s*[(\[]?\*\s*(?:=|:|-|–|denotes|means|marks)?\s*\pL[\pL ]{2,40}[)\]]?$`)

// clubBracket is a club in brackets behind a name.
var clubBracket = regexp.MustCompile(`^(\pL[^()\[\]]*?)\s*[(\[](\pL[^()\[\]]*)[)\]]$`)

// clubsApart parts the clubs from names behind which they stand with nothing between, and
// leaves out a small word behind every name. It is false where names seem to have clubs
// behind them and it can't be told where they begin.
func clubsApart(lines []string, cuts []*typed) bool {
	texts := make([]string, len(cuts))
	n, long, first := 0, 0, -1
	starred := slices.ContainsFunc(lines, starLegend.MatchString)
	for i, c := range cuts {
		if c == nil {
			continue
		}
		if first < 0 {
			first = i
		}
		texts[i] = strings.Trim(c.name, edgeMarks)
		if unstarred, ok := strings.CutSuffix(c.name, "*"); starred && ok && strings.TrimRight(unstarred, " ") == texts[i] {
			texts[i] += "*"
		}
		if n++; len(strings.Fields(texts[i])) > 3 {
			long++
		}
	}
	dropSame(cuts, texts)
	sexesBeside(cuts, texts)
	bracketed := 0
	for i, c := range cuts {
		if c != nil && clubBracket.MatchString(texts[i]) {
			bracketed++
		}
	}
	if bracketed*10 >= n*6 && bracketed > 2 {
		for i, c := range cuts {
			if m := clubBracket.FindStringSubmatch(texts[i]); c != nil && m != nil {
				texts[i], c.club = m[1], m[2]
			}
		}
		long = 0
	}
	clubs, ok, clear := abbreviatedClubs(texts)
	if !clear {
		return false
	}
	if !ok && long*10 >= n*3 {
		clubs, ok = clubsBehind(texts)
		if !ok && (long*10 >= n*7 || first > 0 && headingOf(newLexicon(Options{}), lines[first-1], []Meaning{Club}) != "") {
			return false
		}
	}
	for i, c := range cuts {
		if c == nil {
			continue
		}
		if c.name = texts[i]; ok && clubs[i] != "" {
			c.club, c.name = strings.Trim(clubs[i], edgeMarks), strings.TrimRight(strings.TrimSuffix(texts[i], clubs[i]), edgeMarks)
		}
	}
	return true
}

// addNumbered adds the lines of a numbered list that are written otherwise than the
// others: first those with a mark after the number, then those they leave between them.
func addNumbered(lines []string, cuts []*typed) {
	for _, marked := range []bool{true, false} {
		places := make([]int, len(lines))
		for i, c := range cuts {
			places[i] = noPlace
			if c != nil && c.place != "" {
				places[i], _ = strconv.Atoi(c.place) // figures only
			}
		}
		after := placesAfter(places)
		before := noPlace
		for i, l := range lines {
			switch {
			case places[i] != noPlace:
				before = places[i]
			case cuts[i] != nil:
			case strings.TrimSpace(l) == "" && after[i] == noPlace:
				before = noPlace // the list has ended
			default:
				if place, name, time, ok := numberedLine(l, marked, before, after[i]); ok {
					cuts[i] = &typed{place: place, name: name, time: time}
					before, _ = strconv.Atoi(place)
				}
			}
		}
	}
}

// noPlace stands for a place that no line has.
const noPlace = -1

// placesAfter gives for every line the nearest place of a line after it, noPlace
// where there is none.
func placesAfter(places []int) []int {
	after := make([]int, len(places))
	next := noPlace
	for i := len(places) - 1; i >= 0; i-- {
		after[i] = next
		if places[i] != noPlace {
			next = places[i]
		}
	}
	return after
}

var (
	numbered = regexp.MustCompile(`^\s*(\d{1,4})(\s*[.):=]|(?:st|nd|rd|th|er|ère|ème|eme|re|e|º|ª|°)\b|)(?:\s+(.*?))?\s*$`)
	// unitsLast is a time with its units among times without: 1 hr 2 min 48, 18 min 50.
	unitsLast = regexp.MustCompile(`(?i)(?:^|[\s,;:–—-])(?:(\d{1,2}) ?h(?:(?:ou)?rs?)?[., ]{0,2})?(\d{1,3}) ?m(?:n|ins?|inutes?)?[., ]{0,2}([0-5]?\d) ?(?:s(?:ecs?|econds?)?)?[. ]*$`)
	lastTime  = regexp.MustCompile(`^(.*?)[\s,;:–—-]*(?:^|\s)(\d{1,3}[\d:.,'’"”]*)$`)
	lastWords = regexp.MustCompile(`^(.*?)[\s,;:–—-]+(\S+(?:\s+\S+){0,2})$`)
)

// numberedLine reads a line of a numbered list that is written otherwise than
// the others: nobody named, an odd time or none, a word instead of one. Its
// number must fit those around it: the line is then a finisher's as well.
func numberedLine(l string, marked bool, before, after int) (place, name, time string, ok bool) {
	m := numbered.FindStringSubmatch(l)
	if m == nil || marked != (m[2] != "") {
		return "", "", "", false
	}
	n, _ := strconv.Atoi(m[1]) // four digits at most
	if next := n == before+1 || before == noPlace && n == after-1; slices.ContainsFunc(findDates(l), func(d foundDate) bool { return !next || !d.fromPlace(len(m[1])) }) {
		return "", "", "", false
	}
	switch inside := before != noPlace && after != noPlace; {
	case inside && n >= before && n <= after:
	case marked && before == noPlace && n < after, marked && after == noPlace && before != noPlace && n >= before && n <= before+3:
	case after == noPlace && n == before+1 && before > 2 && saysTime(m[3]):
	default:
		return "", "", "", false
	}
	place, name = m[1], m[3]
	if t := unitsLast.FindStringSubmatch(name); t != nil {
		time = t[2] + ":" + ("0" + t[3])[len(t[3])-1:]
		if t[1] != "" {
			time = t[1] + ":" + ("0" + t[2])[len(t[2])-1:] + time[len(t[2]):]
		}
		return place, strings.Trim(name[:len(name)-len(t[0])], edgeMarks), time, true
	}
	if t := lastTime.FindStringSubmatch(name); t != nil {
		return place, t[1], t[2], true
	}
	if t := spelledClock.FindStringSubmatchIndex(name); t != nil { // something stands behind it
		return place, strings.Trim(name[:t[2]], edgeMarks), name[t[2]:t[3]], true
	}
	// "Jo Lee DNF", "Jo Lee no time"
	for words := lastWords.FindStringSubmatch(name); words != nil; {
		if sameTime[fold(words[2])] || isDitto(words[2]) {
			return place, words[1], "〃", true
		}
		if kindOf(words[2]) == kStatus {
			return place, words[1], words[2], true
		}
		_, rest, more := strings.Cut(words[2], " ")
		if !more {
			break
		}
		words[1], words[2] = strings.TrimSuffix(name, " "+rest), rest
	}
	return place, name, "", true
}

// saysTime says whether the words behind a number end in a time with its units, in words for the
// time of the line above or in a status: "Jo Lee 1 hr 2 min 48", "Jo Lee same time", "Jo Lee DNF".
func saysTime(l string) bool {
	if m := spelledClock.FindStringSubmatchIndex(l); m != nil {
		return true
	}
	words := lastWords.FindStringSubmatch(l)
	return words != nil && (sameTime[fold(words[2])] || isDitto(finalWordOf(l)) || kindOf(finalWordOf(l)) == kStatus)
}

// fromPlace says whether a date, without a year, is only made of a place and a first name
// that months are called by: "24. June Lee". end is where the place ends.
func (d foundDate) fromPlace(end int) bool {
	return d.from < end && d.readings[0].y == 0
}

var bracketTime = regexp.MustCompile(`^\s*` + placePattern + `\s+(\pL[^()\d\t]*?)\s*(?:\(([^()\t]{1,20})\)[\s,;–—-]*|[\s,;–—-]+)` + clockPattern + `\s*$`)

// placeNameBracketTime cuts lines as people type them: "1. Jo Lee (W40) 18:20", the
// brackets left out where the age group or age is not known. nil where not nearly all
// lines with a time are of that kind, or other things stand in the brackets.
func placeNameBracketTime(lines []string, delim byte) []string {
	out := make([]string, len(lines))
	matched, timed, grouped := 0, 0, 0
	aged, counted, inClass := map[int]string{}, true, map[string]int{}
	for i, l := range lines {
		out[i] = strings.TrimSpace(strings.ReplaceAll(l, "\t", " "))
		if len(l) > 200 {
			continue
		}
		m := bracketTime.FindStringSubmatch(l)
		if m == nil && !clockInside.MatchString(l) {
			continue
		}
		timed++
		if m == nil || delim != ' ' && strings.IndexByte(strings.Replace(l, m[3], "", 1), delim) >= 0 {
			continue
		}
		if n, class, ok := strings.Cut(m[3], ","); ok && placeInClass.MatchString(m[3]) {
			m[3] = strings.TrimSpace(class)
			place, _ := strconv.Atoi(strings.TrimSpace(n)) // three figures at most
			counted = counted && place > inClass[m[3]]
			inClass[m[3]] = place
			if both := sexBesideAge([]string{n, class}); both != "" {
				aged[i] = both
			}
			grouped++
		} else if m[3] != "" {
			if k := kindOf(m[3]); k != kGroup && k != kSex && k != kInt {
				return nil
			}
			grouped++
		}
		at := bracketTime.FindStringSubmatchIndex(l)
		out[i] = m[1] + "\t" + m[2] + "\t" + m[3] + "\t" + l[at[8]:at[9]]
		matched++
	}
	if grouped < 3 || grouped*4 < matched || matched*10 < timed*9 {
		return nil
	}
	addBracketed(lines, out)
	if !counted && len(aged) == grouped { // "(30, v)": no places among the women, but ages
		for i, both := range aged {
			cells := strings.Split(out[i], "\t")
			cells[2] = both
			out[i] = strings.Join(cells, "\t")
		}
	}
	return out
}

// addBracketed adds the lines of such a list that have no time, or another, to those that were cut:
// "4. Di Fox (W40) no time".
func addBracketed(lines, out []string) {
	cuts := make([]*typed, len(lines))
	for i, l := range out {
		if place, _, ok := strings.Cut(l, "\t"); ok {
			cuts[i] = &typed{place: place}
		}
	}
	addNumbered(lines, cuts)
	for i, c := range cuts {
		if c == nil || strings.IndexByte(out[i], '\t') >= 0 {
			continue
		}
		name, group := c.name, ""
		if at := strings.LastIndexByte(name, '('); at > 0 && strings.HasSuffix(name, ")") {
			name, group = strings.TrimSpace(name[:at]), name[at+1:len(name)-1]
		}
		out[i] = strings.Join([]string{c.place, name, group, c.time}, "\t")
	}
}

// placeInClass is a place and the class that it counts in, "2,H.S.".
var placeInClass = regexp.MustCompile(`^\d{1,3} ?, ?[^,;]{1,12}$`)

var placeGroupTime = regexp.MustCompile(`^\s*` + placePattern + `\s+(\pL.*?)\s+` + clockPattern + `\s*$`)

// placeNameGroupTime cuts lines as they come out of a printed page: "1 Jo Lee
// W40 18:20". nil where not nearly all lines with a time are of that kind: a
// club between name and group could not be told from the name.
func placeNameGroupTime(lines []string, delim byte) []string {
	out := make([]string, len(lines))
	matched, timed, first := 0, 0, -1
	for i, l := range lines {
		out[i] = strings.TrimSpace(strings.ReplaceAll(l, "\t", " "))
		if len(l) > 200 || !clockInside.MatchString(l) {
			continue
		}
		timed++
		m := placeGroupTime.FindStringSubmatch(l)
		if m == nil || strings.IndexByte(l, delim) >= 0 && delim != ' ' {
			continue
		}
		words := strings.Fields(m[2])
		for n := min(2, len(words)-2); n >= 1; n-- {
			name, group := words[:len(words)-n], strings.Join(words[len(words)-n:], " ")
			if n == 2 && clubEnds[fold(words[len(words)-2])] {
				continue // "Jo Lee Vale AC W40"
			}
			if k := kindOf(group); (k == kGroup || k == kSex) && len(name) <= 4 && !strings.ContainsAny(strings.Join(name, ""), "0123456789") {
				out[i] = m[1] + "\t" + strings.Join(name, " ") + "\t" + group + "\t" + m[3]
				matched++
				if first < 0 {
					first = i
				}
				break
			}
		}
	}
	if matched < 3 || matched*10 < timed*9 {
		return nil
	}
	for i, l := range lines { // those with something else in place of the name or the time
		m := placeAndMore.FindStringSubmatch(l)
		if m == nil || len(l) > 120 || strings.IndexByte(out[i], '\t') >= 0 || !listGoesOn(out, i) {
			continue
		}
		words := strings.Fields(m[2])
		for k := 1; k < len(words) && k <= 4; k++ {
			if name, rest := strings.Join(words[:k], " "), strings.Join(words[k+1:], " "); kindOf(words[k]) == kGroup && hasNoDigit(name) && (rest == "" || !hasDigit(rest) || looseClockInside.MatchString(rest)) {
				out[i] = m[1] + "\t" + name + "\t" + words[k] + "\t" + rest
				break
			}
		}
	}
	for i, l := range lines { // those whose group is left out
		m := placeGroupTime.FindStringSubmatch(l)
		if m == nil || strings.IndexByte(out[i], '\t') >= 0 {
			continue
		}
		words := strings.Fields(m[2])
		code := words[len(words)-1]
		if len(words) <= 3 && !strings.ContainsAny(m[2], "0123456789") && (len(words) < 3 || len(code) > 3 || code != strings.ToUpper(code)) {
			out[i] = m[1] + "\t" + m[2] + "\t\t" + m[3]
		}
	}
	if first > 0 { // the heading of the four
		if words, lex := strings.Fields(out[first-1]), newLexicon(Options{}); len(words) == 4 {
			if headingKnown(lex, words) {
				out[first-1] = strings.Join(words, "\t")
			}
		} else if len(words) > 4 && headingKnown(lex, words) {
			return nil // more columns than can be told apart
		}
	}
	return out
}

// placeAndMore is a place and what stands behind it.
var placeAndMore = regexp.MustCompile(`^\s*(\d{1,4})[.):]? +(\S.*)$`)

// headingKnown says whether all words are words of headings.
func headingKnown(lex *lexicon, words []string) bool {
	for _, w := range words {
		if !lex.read(w).known {
			return false
		}
	}
	return true
}

var clockInside = regexp.MustCompile(`\b\d{1,3}:\d{2}\b`)

// isRule says whether a row is a line drawn under a heading: nothing but dashes
// and the like.
func isRule(cells []string) bool {
	marks, long, single := 0, 0, 0
	for _, c := range cells {
		c = trim(c)
		if c == "" {
			continue
		}
		if c == "-" {
			single++ // the least that a table of markup needs
		}
		if len(bytes.Trim([]byte(c), "-=_+:~*. ")) > 0 {
			return false
		}
		marks++
		if len(c) >= 3 || len(c) == 2 && c[0] == '-' {
			long++
		}
	}
	return long > 0 && long*2 >= marks || single > 1 && single == marks
}
