package sheet

import (
	"strconv"
	"strings"
)

// cellLines puts the cells of a table together that stands one cell a line, as it comes
// out of a web page: the headings first, one below the other, then the cells of each row.
// A row is put in the place of its first line, the others are left blank. nil where times
// do not stand alone on their lines at one distance from one another, or the places that
// begin the rows do not count up.
func cellLines(lines []string, _ byte) []string {
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
	width := clocks[1] - clocks[0]
	for k := 1; k < len(clocks); k++ {
		if clocks[k]-clocks[k-1] != width {
			return nil
		}
	}
	if width < 2 || width > 12 {
		return nil
	}
	first := firstOfRow(cell, clocks, width, len(at))
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
	if first >= width {
		lex, heading, known := newLexicon(Options{}), []string(nil), 0
		for k := first - width; k < first; k++ {
			heading = append(heading, cell(k))
			if lex.read(cell(k)).known {
				known++
			}
		}
		if known >= 2 && 3*known >= 2*width {
			for k := first - width; k < first; k++ {
				out[at[k]] = ""
			}
			out[at[first-width]] = strings.Join(heading, "\t")
		}
	}
	return out
}

// firstOfRow is the cell with which the first row begins: with a place, where a cell at
// the same distance before every time counts 1, 2, 3 …, else with the name; -1 where
// there is neither. Cells of a row are of one kind in nearly all rows.
func firstOfRow(cell func(int) string, clocks []int, width, cells int) int {
	named := -1
	for before := width - 1; before >= 0; before-- {
		if clocks[0] < before {
			continue
		}
		counts, texts, distinct := 0, 0, map[string]bool{}
		for n, c := range clocks {
			s := cell(c - before)
			if v, err := strconv.Atoi(strings.TrimRight(s, ".)")); err == nil && v == n+1 {
				counts++
			}
			if kindOf(s) == kText && strings.Contains(s, " ") {
				texts++
			}
			distinct[s] = true
		}
		if counts*10 >= len(clocks)*9 {
			return clocks[0] - before
		}
		if texts*10 >= len(clocks)*9 && len(distinct)*10 >= len(clocks)*9 {
			named = before
		}
	}
	if named < 0 || clocks[len(clocks)-1]-named+width < cells-width {
		return -1
	}
	return clocks[0] - named
}
