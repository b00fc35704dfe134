package sheet

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// cellLines puts the cells of a table together that stands one cell a line, as it comes
// out of a web page: the headings first, one below the other, then the cells of each row.
// A row is put in the place of its first line, the others are left blank. nil where times
// do not stand alone on their lines at one distance from one another, or the places that
// begin the rows do not count up.
func cellLines(lines []string, _ byte) []string {
	lines = rulesAsBlanks(lines)
	var at []int // lines that are not blank
	var clocks []int
	for i, l := range lines {
		c := trim(l)
		if c == "" {
			continue
		}
		if strings.IndexByte(c, '\t') >= 0 || len(c) > 80 {
			return nil
		}
		if kindOf(c) == kClock {
			if strings.ContainsRune(",;|", rune(c[0])) {
				return nil // ",18:20" is two cells
			}
			clocks = append(clocks, len(at))
		} else if clockInside.MatchString(c) && len(clocks) > 0 {
			return nil
		}
		at = append(at, i)
	}
	if len(clocks) < 4 {
		return nil
	}
	cell := func(k int) string { return trim(lines[at[k]]) }
	width, even := clocks[1]-clocks[0], true
	for k := 1; k < len(clocks); k++ {
		even = even && clocks[k]-clocks[k-1] == width
	}
	if !even {
		return unevenCells(lines, at, clocks)
	}
	if width < 2 || width > 12 {
		return nil
	}
	blankAbove := func(k int) bool { return at[k] > 0 && trim(lines[at[k]-1]) == "" }
	first := firstOfRow(cell, blankAbove, clocks, width, len(at))
	if first < 0 {
		return nil
	}
	out := make([]string, len(lines))
	for k := 0; k < first; k++ {
		out[at[k]] = cell(k)
	}
	end := first
	for ; end < len(at) && end <= clocks[len(clocks)-1]; end += width {
		row := make([]string, 0, width)
		for k := end; k < end+width && k < len(at); k++ {
			row = append(row, cell(k))
		}
		out[at[end]] = strings.Join(row, "\t")
	}
	for k := end; k < len(at); k++ {
		out[at[k]] = cell(k)
	}
	headingOfCells(out, at, first, width)
	if parted := partFirst(out, at[first]); parted != nil {
		return parted
	}
	return out
}

// rulesAsBlanks leaves blank the lines drawn between the cells of runners, of which there are four or
// more.
func rulesAsBlanks(lines []string) []string {
	rule := func(l string) bool { return len(l) > 2 && isRule([]string{l}) }
	n := 0
	for _, l := range lines {
		if rule(l) {
			n++
		}
	}
	if n < 4 {
		return lines
	}
	out := slices.Clone(lines)
	for i, l := range out {
		if rule(l) {
			out[i] = ""
		}
	}
	return out
}

// headingOfCells puts as many words of headings as there are columns, each on a line of
// its own right above the first row, into one line.
func headingOfCells(out []string, at []int, first, width int) {
	if first < width {
		return
	}
	lex, heading, known := newLexicon(Options{}), []string(nil), 0
	for k := first - width; k < first; k++ {
		heading = append(heading, out[at[k]])
		if lex.read(out[at[k]]).known {
			known++
		}
	}
	if known < 2 || 3*known < 2*width {
		return
	}
	for k := first - width; k < first; k++ {
		out[at[k]] = ""
	}
	out[at[first-width]] = strings.Join(heading, "\t")
}

// unevenCells puts rows together of which some lack a cell: each begins with a place on a
// line of its own, 1, 2, 3 …, and its last or its only time stands at one distance from
// the end. A row that lacks a cell lacks the one whose kind it has not. nil where that is
// not so for every row.
func unevenCells(lines []string, at, clocks []int) []string {
	cell := func(k int) string { return trim(lines[at[k]]) }
	var starts []int
	for k := range at {
		if n, err := strconv.Atoi(strings.TrimRight(cell(k), ".)")); err == nil && n == len(starts)+1 {
			starts = append(starts, k)
		}
	}
	if len(starts) < 4 || len(starts) != len(clocks) {
		return nil
	}
	behind := len(at) // cells behind the time
	for i := range len(starts) - 1 {
		behind = min(behind, starts[i+1]-1-clocks[i])
	}
	rows, width, whole := make([][]string, len(starts)), 0, -1
	for i, from := range starts {
		if clocks[i] <= from || i+1 < len(starts) && (clocks[i] > starts[i+1] || starts[i+1]-1-clocks[i] != behind) {
			return nil
		}
		for k := from; k <= min(clocks[i]+behind, len(at)-1); k++ {
			rows[i] = append(rows[i], cell(k))
		}
		if len(rows[i]) > width {
			width, whole = len(rows[i]), i
		}
	}
	out := make([]string, len(lines))
	for k := 0; k < starts[0]; k++ {
		out[at[k]] = cell(k)
	}
	for i, row := range rows {
		switch len(row) {
		case width:
		case width - 1:
			blank := -1
			for b := range row {
				if b > 1 && kindOf(row[b]) != kindOf(rows[whole][b]) { // place and name are there
					blank = b
					break
				}
			}
			if blank < 0 {
				return nil
			}
			row = append(append(append([]string(nil), row[:blank]...), ""), row[blank:]...)
		default:
			return nil
		}
		out[at[starts[i]]] = strings.Join(row, "\t")
	}
	for k := clocks[len(clocks)-1] + behind + 1; k < len(at); k++ {
		out[at[k]] = cell(k)
	}
	headingOfCells(out, at, starts[0], width)
	return out
}

// partFirst parts places from the names behind them, "1. Jo Lee", in the first cell of
// rows, and what a middle dot or a bar divides in the others: "W40 · Vale AC". nil where
// the first cells do not count up.
func partFirst(rows []string, from int) []string {
	out := append([]string(nil), rows...)
	n, counts := 0, 0
	for i := from; i < len(out); i++ {
		cells := strings.Split(out[i], "\t")
		if len(cells) < 2 {
			continue
		}
		n++
		m := numberedPiece.FindStringSubmatch(cells[0])
		if m == nil {
			return nil
		}
		if v, _ := strconv.Atoi(m[1]); v == n {
			counts++
		}
		rest := cellMarks.Replace(strings.Join(cells[1:], "\t"))
		out[i] = m[1] + "\t" + m[2] + "\t" + rest
	}
	if n < 4 || counts*10 < n*9 {
		return nil
	}
	return out
}

var cellMarks = strings.NewReplacer(" · ", "\t", " | ", "\t", " • ", "\t")

// firstOfRow is the cell with which the first row begins: with a place, where a cell at
// the same distance before every time counts 1, 2, 3 …, else behind a blank line, where one
// stands before every row, else with the name, or with the time where the name follows it;
// -1 where there is none of these, or it can't be told whether the first time has its name
// above it or below. Cells of a row are of one kind in nearly all rows.
func firstOfRow(cell func(int) string, blankAbove func(int) bool, clocks []int, width, cells int) int {
	named := -1 // cells from the name to the time
	last := clocks[len(clocks)-1]
	for before := width - 1; before > 0; before-- {
		if clocks[0] < before {
			continue
		}
		if counted(cell, clocks, -before) {
			return clocks[0] - before
		}
		if namesAt(cell, clocks, -before) {
			named = before
		}
	}
	after := -1 // cells from the time to the name
	for by := 1; by < width && last+width <= cells; by++ {
		if counted(cell, clocks, by) {
			return clocks[0]
		}
		if after < 0 && namesAt(cell, clocks, by) {
			after = by
		}
	}
	if before := behindBlank(blankAbove, clocks, width); before >= 0 && before <= clocks[0] && (named > 0 && named <= before || after > 0 && after < width-before) {
		return clocks[0] - before
	}
	switch {
	case after < 0 && named < 0 || named >= 0 && last-named+width < cells-width:
		return -1
	case after < 0:
		return clocks[0] - named
	case named < 0 || !likeName(cell(clocks[0]-named)) || dateAmong(cell, clocks[0]-named, clocks[0]):
		return clocks[0]
	case !likeName(cell(last + after)):
		return clocks[0] - named
	}
	return -1
}

// counted says whether the cells so far from the times count 1, 2, 3 …, or rise from 1 on with a few
// left out, as where some who finished are not listed.
func counted(cell func(int) string, clocks []int, by int) bool {
	n, rising, last, begins := 0, 0, 0, false
	for i, c := range clocks {
		s := strings.TrimRight(cell(c+by), ".)")
		if m := numberedPiece.FindStringSubmatch(s); m != nil {
			s = m[1] // "1. Jo Lee"
		}
		v, err := strconv.Atoi(s)
		if err != nil {
			continue
		}
		if v == i+1 {
			n++
			begins = begins || i == 0
		}
		if v > last {
			rising++
			last = v
		}
	}
	return n*10 >= len(clocks)*9 || begins && rising*10 >= len(clocks)*9 && last*4 <= len(clocks)*5
}

// namesAt says whether the cells so far from the times are different texts of several words.
func namesAt(cell func(int) string, clocks []int, by int) bool {
	texts, distinct := 0, map[string]bool{}
	for _, c := range clocks {
		s := cell(c + by)
		if kindOf(s) == kText && strings.Contains(s, " ") {
			texts++
		}
		distinct[s] = true
	}
	return texts*10 >= len(clocks)*9 && len(distinct)*10 >= len(clocks)*9
}

// behindBlank is how many cells before its time a row begins, where a blank line stands
// above the first cell of nearly every row but the first; -1 where that is so of no cell,
// or of several.
func behindBlank(blankAbove func(int) bool, clocks []int, width int) int {
	found := -1
	for before := range width {
		n := 0
		for _, c := range clocks[1:] {
			if blankAbove(c - before) {
				n++
			}
		}
		if n*10 >= (len(clocks)-1)*9 {
			if found >= 0 {
				return -1
			}
			found = before
		}
	}
	return found
}

// likeName says whether a line could be somebody's name: two to five words without figures
// or a colon, none of them a small word of four letters or more.
func likeName(s string) bool {
	words := strings.Fields(s)
	if len(words) < 2 || len(words) > 5 || strings.ContainsAny(s, "0123456789:") {
		return false
	}
	for _, w := range words {
		r := []rune(w)
		if len(r) > 3 && unicode.IsLower(r[0]) {
			return false
		}
	}
	return true
}

// dateAmong says whether one of the cells holds a date.
func dateAmong(cell func(int) string, from, to int) bool {
	for k := from; k < to; k++ {
		if len(findDates(cell(k))) > 0 {
			return true
		}
	}
	return false
}
