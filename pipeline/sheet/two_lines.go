package sheet

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
)

// rowsOnTwoLines joins rows that go on in the line below them, as they do where a cell of a
// web page had two lines: "1 | Jo Lee", below it "Vale AC | 18:20 | W40". The cells of the
// two make one more than the heading has, and the first of the lower line, which belongs
// to the cell above it, becomes the last of the row. nil where the lines below the heading
// are not of that kind all the way.
func rowsOnTwoLines(lines []string, delim byte, lex *lexicon) []string {
	heading := -1
	for i := 0; i < len(lines) && i < headingLooks && heading < 0; i++ {
		if score, _ := headingScore(lex, strings.Split(lines[i], string(delim))); score > 0 {
			heading = i
		}
	}
	if heading < 0 || strings.IndexByte(lines[heading], '"') >= 0 {
		return nil
	}
	count := func(i int) int { return strings.Count(strings.TrimRight(lines[i], " \r"), string(delim)) + 1 }
	hasTime := func(i int) bool {
		for _, c := range strings.Split(lines[i], string(delim)) {
			if kindOf(c) == kClock {
				return true
			}
		}
		return false
	}
	columns, pairs := count(heading), 0
	out := append([]string(nil), lines...)
	i := heading + 1
	for ; i+1 < len(lines); i += 2 {
		if trim(lines[i]) == "" {
			break
		}
		upper, lower := count(i), count(i+1)
		if strings.IndexByte(lines[i], '"') >= 0 || upper < 2 || lower < 2 || upper+lower != columns+1 || hasTime(i) == hasTime(i+1) {
			break
		}
		below, rest, _ := strings.Cut(lines[i+1], string(delim))
		out[i] = strings.TrimRight(lines[i], " \r") + string(delim) + strings.TrimRight(rest, " \r") + string(delim) + trim(below)
		out[i+1] = ""
		pairs++
	}
	for ; i < len(lines); i++ {
		if hasTime(i) {
			return nil
		}
	}
	if pairs < 3 {
		return nil
	}
	return out
}

// breaksInQuotes is the cheap test whether quotation marks hold the end of a line.
func breaksInQuotes(text []byte) bool {
	marks := 0
	for _, c := range text {
		switch c {
		case '"':
			marks++
		case '\n':
			if marks%2 == 1 {
				return true
			}
		}
	}
	return false
}

// twoLineCells makes two columns of one of which nearly every cell has two lines, as a
// table of a word processor has name and club in one cell. Rows keep their places. nil
// where there is no such column.
func twoLineCells(text []byte, delim byte, limits Limits) []byte {
	if !breaksInQuotes(text) {
		return nil
	}
	type row struct {
		at    int
		cells []string
	}
	var rows []row
	two, more, filled := map[int]int{}, 0, 0
	sc := newScanner(text, delim, limits)
	for {
		at, cells, err := sc.next()
		if err != nil {
			return nil
		}
		if cells == nil {
			break
		}
		cells = append([]string(nil), cells...)
		rows = append(rows, row{at, cells})
		if rowFilled(cells) > 1 {
			filled++
		}
		for c, s := range cells {
			switch strings.Count(trim(s), "\n") {
			case 0:
			case 1:
				two[c]++
			default:
				more++
			}
		}
	}
	column := -1
	for c, n := range two {
		if len(two) == 1 && more == 0 && n >= 4 && n*10 >= filled*9 {
			column = c
		}
	}
	if column < 0 {
		return nil
	}
	var out []byte
	line := 1
	for _, r := range rows {
		for ; line < r.at; line++ {
			out = append(out, '\n')
		}
		for c, s := range r.cells {
			if c > 0 {
				out = append(out, delim)
			}
			if c == column {
				upper, lower, _ := strings.Cut(trim(s), "\n")
				out = appendField(out, trim(upper), delim)
				out = append(out, delim)
				s = trim(lower)
			}
			out = appendField(out, s, delim)
		}
		out = append(out, '\n')
		line++
	}
	return out
}

// plainLines takes the quotation marks off lines that all stand in such marks, with nothing
// that divides them inside, and puts a line of words that stands below each result behind it:
// "1  Jo Lee  18:20", below it "   Vale AC". nil where there is neither.
func plainLines(lines []string, delim byte) []string {
	out := append([]string(nil), lines...)
	filled, quoted := 0, 0
	for i, l := range out {
		l = trim(l)
		if l == "" {
			continue
		}
		filled++
		if n := len(l); n > 2 && l[0] == '"' && l[n-1] == '"' && strings.Count(l, `"`) == 2 && strings.IndexByte(l, delim) < 0 {
			quoted++
			out[i] = l[1 : n-1]
		}
	}
	changed := filled > 3 && quoted*10 >= filled*9
	if !changed {
		copy(out, lines)
	}
	timed, below := 0, 0
	for i, l := range out {
		if spelledClock.MatchString(l) {
			timed++
			if i+1 < len(out) && wordsBelow(l, out[i+1]) {
				below++
			}
		}
	}
	if timed > 3 && below*10 >= timed*9 {
		for i, l := range out {
			if i+1 < len(out) && spelledClock.MatchString(l) && wordsBelow(l, out[i+1]) {
				out[i], out[i+1] = strings.TrimRight(l, " \r")+"  "+trim(out[i+1]), ""
				changed = true
			}
		}
	}
	if !changed {
		return nil
	}
	return out
}

// wordsBelow says whether a line below a result is indented further than it and holds words
// only.
func wordsBelow(above, below string) bool {
	indent := func(s string) int { return len(s) - len(strings.TrimLeft(s, " ")) }
	return trim(below) != "" && indent(below) > indent(above) && len(below) < 60 && !strings.ContainsAny(below, "0123456789\t:")
}

// placeAbove is a line with nothing but a place and a name, "3. Jo Lee".
var placeAbove = regexp.MustCompile(`^ *(\d{1,4}) ?[.):]? +(\pL[^\d\t|;:]*)$`)

// placesAbove puts what stands on the line below a place and a name behind them: "3. Jo Lee", below it
// "W40  Vale AC  18:20". Nearly all lines with a time stand below such a line, and the places
// rise; what stands there instead of a time, "DNF", is put behind them as well. Lines keep their places.
func placesAbove(text []byte) []byte {
	if len(text) > typedBytes || bytes.Count(text, []byte("\n")) < 8 {
		return text
	}
	lines := textLines(text)
	heads, timed, below, last := make([]bool, len(lines)), 0, 0, 0
	for i, l := range lines {
		if m := placeAbove.FindStringSubmatch(l); m != nil {
			if place, _ := strconv.Atoi(m[1]); place >= last { // four figures at most
				heads[i], last = true, place
			}
			continue
		}
		if !spelledClock.MatchString(l) {
			continue
		}
		if timed++; i > 0 && heads[i-1] && !leadingPlace.MatchString(strings.TrimSpace(l)) {
			below++
		} else if timed == 1 {
			return text // nearly all texts end here
		}
	}
	if below < 4 || below*10 < timed*9 {
		return text
	}
	for i := range lines[:len(lines)-1] {
		if next := strings.TrimSpace(lines[i+1]); heads[i] && !heads[i+1] && next != "" {
			lines[i], lines[i+1] = strings.TrimRight(lines[i], " \r")+"  "+next, ""
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}
