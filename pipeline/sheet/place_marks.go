package sheet

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Places of a list as people write them in words or with marks of their own, and ticks before the
// names of those who were there.

const placeNouns = `platz|place|puesto|lugar|posto|miejsce|místo|misto|plaats|plats|plass|plads|sija|hely`

var (
	// wordyPlace is a place at the beginning of a line in another way than "1.": "1.- ", "1:a ", "1 = ", "#1 ",
	// "1. Platz: ", "2e plaats: ", "Platz 3 ", "m. 4 ", "Runner 5: ".
	wordyPlace = regexp.MustCompile(`(?i)^[ \t]*(?:` +
		`(\d{1,4})(?:[.ºª°]{1,2}[-–]|:[aeo]\b|[ \t]*=)[ \t]*` +
		`|(\d{1,4})(?:[.)ºª°]|e|er|eme|ème|st|nd|rd|th)?[ \t]+(?:` + placeNouns + `)\b[ \t:–-]*` +
		`|(?:` + placeNouns + `|runner|läufer|row|line|entry|finisher|m\.)[ \t]+(\d{1,4})[ \t:.–-]+` +
		`|(?:#|p|no\.? ?|nr\.? ?)(\d{1,4})[.:)]? +)`)
	// tickedLine is a line with a tick before a name.
	tickedLine = regexp.MustCompile(`^[ \t]*(?:\[[xX]\]|[☑☒✓✔✅])[ \t]*`)
	// starredLine is a line with a star before its place or time.
	starredLine = regexp.MustCompile(`^[ \t]*\*[ \t]*([#(]?\d)`)
)

// withoutStars takes the stars away that stand before some of the lines with a time, where no line
// says what they mean. Lines keep their places.
func withoutStars(text []byte) []byte {
	if len(text) > typedBytes || bytes.IndexByte(text, '*') < 0 {
		return text
	}
	lines := bytes.Split(text, []byte("\n"))
	starred, timed := 0, 0
	for _, l := range lines {
		clock := looseClockInside.Match(l)
		if clock {
			timed++
		}
		switch {
		case bytes.IndexByte(l, '*') < 0:
		case !clock && len(bytes.Trim(l, "*= \t\r")) > 0 && bytes.Count(l, []byte("*")) == 1:
			return text // a legend
		case clock && starredLine.Match(l):
			starred++
		}
	}
	if starred == 0 || 10*starred > 6*timed {
		return text
	}
	for i, l := range lines {
		if looseClockInside.Match(l) {
			lines[i] = starredLine.ReplaceAll(l, []byte("$1"))
		}
	}
	return bytes.Join(lines, []byte("\n"))
}

// plainPlaces writes such places as "1. " where four lines or more have them, each with the number
// that follows the one before, and takes ticks away that stand before three lines or more with a
// time. Lines keep their places.
func plainPlaces(text []byte) []byte {
	if len(text) > typedBytes {
		return text
	}
	lines := bytes.Split(text, []byte("\n"))
	ticks := 0
	for _, l := range lines {
		if tickedLine.Match(l) && clockInside.Match(l) {
			ticks++
		}
	}
	changed := ticks >= 3
	if changed {
		for i, l := range lines {
			lines[i] = l[len(tickedLine.Find(l)):]
		}
	}
	type found struct{ line, number, end int }
	var at []found
	on := 0
	for i, l := range lines {
		m := wordyPlace.FindSubmatchIndex(l)
		if m == nil || len(bytes.TrimSpace(l[m[1]:])) == 0 || bytes.IndexByte(l[m[1]:], '=') >= 0 {
			continue
		}
		for k := 2; k < 10; k += 2 {
			if m[k] >= 0 {
				n, _ := strconv.Atoi(string(l[m[k]:m[k+1]])) // four figures at most
				if len(at) == 0 || n == at[len(at)-1].number+1 || n == 1 {
					on++
				}
				at = append(at, found{i, n, m[1]})
			}
		}
	}
	if len(at) >= 4 && 10*on >= 9*len(at) {
		changed = true
		for _, f := range at {
			lines[f.line] = append([]byte(strconv.Itoa(f.number)+". "), lines[f.line][f.end:]...)
		}
	}
	if !changed {
		return text
	}
	return bytes.Join(lines, []byte("\n"))
}

var (
	// placeAndName is a line of a place and a name, timeBelow one that begins with a time or a word for it.
	placeAndName = regexp.MustCompile(`^[ \t]*\d{1,4}[.):][ \t]+\pL[^\d\t:]*$`)
	timeBelow    = regexp.MustCompile(`(?i)^[ \t]*(?:(?:time|zeit|temps|tiempo|tempo|tijd|czas|tid|čas)[ \t:]+)?(\d{1,3}[:.]\d{2}.*)$`)
)

// timesBelowNames puts the time that stands in the line below each place and name behind them: "1. Jo
// Lee", below it "Time 18:20, Vale AC". Four pairs or more hold all times of the text.
func timesBelowNames(text []byte) []byte {
	if len(text) > typedBytes {
		return text
	}
	lines := textLines(text)
	pairs := 0
	for i, l := range lines {
		if i > 0 && placeAndName.MatchString(lines[i-1]) && timeBelow.MatchString(l) {
			pairs++
		}
	}
	if pairs < 4 {
		return text
	}
	timed := 0
	for _, l := range lines {
		if hasClock(l) && len(findDates(l)) == 0 {
			timed++
		}
	}
	if 10*pairs < 9*timed {
		return text
	}
	var out bytes.Buffer
	for i, l := range lines {
		switch m := timeBelow.FindStringSubmatch(l); {
		case i > 0 && m != nil && placeAndName.MatchString(lines[i-1]):
			out.WriteByte('\n')
		case i+1 < len(lines) && placeAndName.MatchString(l) && timeBelow.MatchString(lines[i+1]):
			out.WriteString(l + " " + timeBelow.FindStringSubmatch(lines[i+1])[1] + "\n")
		default:
			out.WriteString(l + "\n")
		}
	}
	return out.Bytes()
}

// sexBefore is a line with a letter for a sex that a mark, or nothing but the place, parts from the name
// behind it: "7F Jo Lee 18:20", "F: Jo Lee 18:20", "7. (F) Jo Lee 18:20".
var sexBefore = regexp.MustCompile(`^[ \t]*(?:(\d{1,4})[.):]?)?[ \t]*[(\[]?(\pL)[)\]]?:?[ \t]+(\pL[^\d\s,;|]*[ \t]+\pL[^\d\t;|]*\d.*)$`)

// sexesBeforeNames puts such letters between the place and the name with blanks alone around them. Two
// letters stand so on nine in ten lines with a time, four or more. Lines keep their places.
func sexesBeforeNames(text []byte) []byte {
	if len(text) > typedBytes || bytes.IndexByte(text, '\t') >= 0 || !clockInside.Match(text) {
		return text
	}
	lines := bytes.Split(text, []byte("\n"))
	timed, plain, letters := 0, 0, map[string]int{}
	for _, l := range lines {
		if !clockInside.Match(l) || len(findDates(string(l))) > 0 {
			continue
		}
		timed++
		m := sexBefore.FindSubmatch(l)
		if m == nil || kindOf(string(m[2])) != kSex {
			if plain++; plain > 3 {
				return text
			}
			continue
		}
		letters[string(m[2])]++
	}
	sexed := timed - plain
	if len(letters) != 2 || sexed < 4 || sexed*10 < timed*9 {
		return text
	}
	for i, l := range lines {
		if m := sexBefore.FindSubmatch(l); m != nil && letters[string(m[2])] > 0 && clockInside.Match(l) {
			lines[i] = bytes.TrimLeft(fmt.Appendf(nil, "%s %s %s", m[1], m[2], m[3]), " ")
		}
	}
	return bytes.Join(lines, []byte("\n"))
}

// placeInGap is a place at the beginning of a line or behind a gap.
var placeInGap = regexp.MustCompile(`(?i)(?:^| {2,})((?:pos\.? ?|no\.? ?|#|\()?(\d{1,4})(?:st|nd|rd|th|=)?[.):]{0,2}) +`)

// spacedClock is a time with a blank behind its colon.
var spacedClock = regexp.MustCompile(`^\d{1,3}: [0-5]\d(?:\s|$)`)

// besideByGaps puts results that stand beside one another in gaps, " 1 Jo Lee 18:20     9. Al Roe
// 29:44", below one another in the order of their places. Three lines or more have two and more;
// each result has one time and words, and the places are all the numbers from the first on.
// Results stand in the place of the lines that had them, from the first on.
func besideByGaps(text []byte) (out []byte, split bool) {
	if len(text) > typedBytes || bytes.IndexByte(text, '\t') >= 0 || !bytes.Contains(text, []byte("   ")) {
		return text, false
	}
	lines := textLines(text)
	results := map[int]string{}
	held := make([]bool, len(lines)) // that they hold results
	first, last, least, most, many, of := -1, -1, 1<<30, 0, 0, 0
	for i, l := range lines {
		segments := resultsInLine(l)
		held[i] = len(segments) > 0
		if len(segments) < 2 && (first < 0 || len(segments) == 0) {
			continue
		}
		if len(segments) > 1 {
			many++
		}
		if last = i; first < 0 {
			first = i
		}
		for _, s := range segments {
			m := placeInGap.FindStringSubmatch(s)
			place, _ := strconv.Atoi(m[2]) // four figures at most
			if results[place] != "" {
				return text, false
			}
			results[place] = fmt.Sprintf("%3d. %s", place, s[len(m[0]):])
			least, most = min(least, place), max(most, place)
			of++
		}
	}
	if many < 3 || most-least+1 != of {
		return text, false
	}
	var below []string
	for k := least; k <= most; k++ {
		below = append(below, results[k])
	}
	for i := first; i <= last; i++ {
		if strings.TrimSpace(lines[i]) != "" && !held[i] {
			below = append(below, lines[i]) // what stands among them
		}
	}
	return []byte(strings.Join(slices.Concat(lines[:first], below, lines[last+1:]), "\n") + "\n"), true
}

// resultsInLine cuts a line into results that begin with a place; nil where a part of it is none.
func resultsInLine(l string) []string {
	if len(l) > 400 {
		return nil
	}
	starts := slices.DeleteFunc(placeInGap.FindAllStringSubmatchIndex(l, -1), func(m []int) bool {
		return spacedClock.MatchString(l[m[2]:])
	})
	if len(starts) == 0 || strings.TrimSpace(l[:starts[0][2]]) != "" {
		return nil
	}
	whole := func(s string) bool {
		return hasLetter(s) && len(looseClockInside.FindAllStringIndex(s, 2)) == 1
	}
	var out []string
	for k, m := range starts {
		end := len(l)
		if k+1 < len(starts) {
			end = starts[k+1][2]
		}
		piece := l[m[2]:end]
		if n := len(out); n > 0 && (!whole(piece) || !whole(out[n-1])) {
			out[n-1] += piece // a number within a result
		} else {
			out = append(out, piece)
		}
	}
	for k, s := range out {
		if out[k] = strings.TrimRight(s, " "); !whole(s) || !placeInGap.MatchString(s) {
			return nil
		}
	}
	return out
}

// placedCell is a whole result in a cell: "9. Jo Lee 18:20".
var placedCell = regexp.MustCompile(`^\s*(\d{1,4})[.):]?\s+\pL[^\d\t]*?[\s,–-]+\d{1,3}[:.]\d{2}(?::\d{2})?\s*$`)

// besideByTabs puts results that stand beside one another with a tab between, "1. Jo Lee 18:20", a tab,
// "9. Al Roe 29:44", below one another, those of the first column first. Three lines or more
// are of that kind on end, and all cells of them are whole results. split says that there were any.
func besideByTabs(text []byte) (out []byte, split bool) {
	if len(text) > typedBytes || bytes.IndexByte(text, '\t') < 0 {
		return text, false
	}
	lines := bytes.Split(text, []byte("\n"))
	cellsOf := func(l []byte) (cells [][]byte) {
		cells = bytes.Split(bytes.TrimRight(l, "\t \r"), []byte("\t"))
		for _, c := range cells {
			if !placedCell.Match(c) {
				return nil
			}
		}
		return cells
	}
	for from := 0; from < len(lines); from++ {
		to, wide := from, 0
		var columns [][][]byte
		for ; to < len(lines); to++ {
			cells := cellsOf(lines[to])
			if cells == nil {
				break
			}
			if len(cells) > 1 {
				wide++
			}
			for c, cell := range cells {
				if c == len(columns) {
					columns = append(columns, nil)
				}
				columns[c] = append(columns[c], cell)
			}
		}
		if wide < 3 || 4*wide < 3*(to-from) {
			from = max(from, to)
			continue
		}
		var rows [][]byte
		for _, column := range columns {
			rows = append(rows, column...)
		}
		return bytes.Join(append(append(lines[:from:from], rows...), lines[to:]...), []byte("\n")), true
	}
	return text, false
}

// lapLine is a line of a stopwatch: the number of the lap, how long it was, in brackets the time so
// far, and who came in.
var lapLine = regexp.MustCompile(`^\s*(?:\pL+ )?(\d{1,4})[:.)]? +\+?(\d{1,3}(?::\d{2}){1,2}(?:[.,]\d{1,3})?) +[(\[](\d{1,3}(?::\d{2}){1,2}(?:[.,]\d{1,3})?)[)\]]\s+(\pL.*)$`)

// lapTotals writes such lines as place, time so far and name, where each is the one above and its own
// lap: "Lap 2: +0:11 (18:31) Al Roe" below "Lap 1: +18:20 (18:20) Jo Lee".
func lapTotals(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte("(")) || !bytes.Contains(text, []byte("+")) {
		return text
	}
	lines, laps, sums, total := textLines(text), 0, 0, 0.0
	for _, l := range lines {
		m := lapLine.FindStringSubmatch(l)
		if m == nil {
			continue
		}
		at := looseNumber(m[3])
		if laps++; math.Abs(total+looseNumber(m[2])-at) < 1.5 {
			sums++
		}
		total = at
	}
	if laps < 4 || sums*10 < laps*9 {
		return text
	}
	for i, l := range lines {
		if m := lapLine.FindStringSubmatch(l); m != nil {
			lines[i] = m[1] + ". " + m[4] + " " + m[3]
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}
