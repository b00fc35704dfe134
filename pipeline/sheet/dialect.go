package sheet

import (
	"bytes"
	"fmt"
	"strings"
)

// dialect is how a text sheet is divided.
type dialect struct {
	delim byte
	skip  int // bytes of a "sep=" line before the first row
	why   string
}

var delimiterNames = map[byte]string{',': "comma", ';': "semicolon", '\t': "tab", '|': "bar", ' ': "space"}

// sniffRows is how many rows the choice of the delimiter rests on.
const sniffRows = 60

// sniff settles the delimiter: a "sep=" line says it; otherwise each candidate
// cuts the first rows, and the one that gives a heading of known words and rows
// of one length wins. Decimal commas and "SURNAME, First" also cut rows, but
// not the heading.
func sniff(text []byte, lex *lexicon, limits Limits) dialect {
	if d, ok := sepLine(text); ok {
		return d
	}
	head := text[:min(len(text), 256<<10)]
	if spaced(head, limits) {
		return dialect{delim: ' ', why: "one space stands between cells, and words stand in quotes"}
	}
	var found []byte
	for _, delim := range []byte{';', '\t', '|', ','} {
		if bytes.IndexByte(head, delim) >= 0 {
			found = append(found, delim)
		}
	}
	lines := bytes.Count(head, []byte("\n"))
	if len(found) == 0 || len(found) == 1 && found[0] == ',' && 3*bytes.Count(head, []byte{','}) <= lines {
		for _, delim := range []byte{'^', '~', '=', '+'} {
			if lines > 3 && bytes.Count(head, []byte{delim}) >= max(6, 4*lines/3) {
				found = []byte{delim}
				break
			}
		}
	}
	if len(found) == 1 {
		return dialect{delim: found[0], why: "the only mark in the file that divides"}
	}
	best, bestScore, bestWhy := byte(','), -1.0, ""
	// Commas also stand in names and decimals; the others stand in few texts.
	// So the comma comes last and must be clearly better.
	for _, delim := range found {
		score, why := delimScore(head, delim, lex, limits)
		if margin := map[bool]float64{true: .1, false: 1e-9}[delim == ',' && bestScore >= 0]; score > bestScore+margin {
			best, bestScore, bestWhy = delim, score, why
		}
	}
	if bestScore < 0 {
		return dialect{delim: ',', why: "one column"}
	}
	return dialect{delim: best, why: bestWhy}
}

// spaced says whether single spaces divide a text, as a statistics program writes a
// table: words stand in quotes, and all rows have as many cells as the heading, or one
// more for the names of the rows.
func spaced(head []byte, limits Limits) bool {
	if len(head) == 0 || head[0] != '"' || !bytes.Contains(head, []byte(`" "`)) {
		return false
	}
	s := newScanner(head, ' ', limits)
	heading, width, rows := 0, 0, 0
	for rows < sniffRows {
		_, cells, err := s.next()
		if err != nil {
			return false
		}
		if cells == nil {
			break
		}
		if len(cells) == 1 && cells[0] == "" || s.pos == len(head) && rows > 2 {
			continue // the last row of the first part may be cut
		}
		rows++
		switch {
		case rows == 1:
			heading = len(cells)
		case rows == 2:
			width = len(cells)
		case len(cells) != width:
			return false
		}
	}
	return rows >= 3 && heading >= 3 && (width == heading || width == heading+1)
}

func sepLine(text []byte) (dialect, bool) {
	line := text
	if i := bytes.IndexAny(text[:min(len(text), 64)], "\r\n"); i >= 0 {
		line = text[:i]
	} else {
		return dialect{}, false
	}
	l := strings.Trim(string(line), "\" ")
	if len(l) >= 5 && strings.EqualFold(l[:4], "sep=") && (len(l) == 5 || l[4:] == "\\t") {
		d := dialect{delim: l[4], skip: len(line), why: "the file says so in its first line"}
		if l[4:] == "\\t" {
			d.delim = '\t'
		}
		return d, true
	}
	if strings.EqualFold(l, "sep=\t") {
		return dialect{delim: '\t', skip: len(line), why: "the file says so in its first line"}, true
	}
	return dialect{}, false
}

// delimScore says how table-like a delimiter makes the first rows.
func delimScore(head []byte, delim byte, lex *lexicon, limits Limits) (float64, string) {
	s := newScanner(head, delim, limits)
	counts := map[int]int{}
	rows, heading, values, cellsSeen := 0, 0, 0, 0
	for rows < sniffRows {
		_, cells, err := s.next()
		if err != nil || cells == nil {
			break
		}
		filled := 0
		for _, c := range cells {
			if !isBlank(c) {
				filled++
			}
		}
		if filled == 0 {
			continue
		}
		rows++
		if len(cells) > 1 {
			counts[len(cells)]++
			if rows <= 30 {
				if score, _ := headingScore(lex, cells); score > heading {
					heading = score
				}
			}
			if rows > 1 && rows <= 20 {
				for _, c := range cells {
					if isBlank(c) {
						continue
					}
					cellsSeen++
					if k := kindOf(c); k != kText {
						values++
					}
				}
			}
		}
	}
	mode, n := 0, 0
	for c, k := range counts {
		if k > n || k == n && c > mode {
			mode, n = c, k
		}
	}
	if n == 0 {
		return -1, ""
	}
	// Width counts a little; recognised heading words count most.
	score := float64(n)/float64(rows) + float64(min(mode, 12))*.02 + float64(heading)*.25
	if cellsSeen > 0 {
		score += float64(values) / float64(cellsSeen) * .5
	}
	return score, fmt.Sprintf("%d of the first %d rows have %d cells", n, rows, mode)
}

// lineEndings names the line endings of the first part of a text.
func lineEndings(text []byte) string {
	head := text[:min(len(text), 64<<10)]
	crlf := bytes.Count(head, []byte("\r\n"))
	lf := bytes.Count(head, []byte("\n")) - crlf
	cr := bytes.Count(head, []byte("\r")) - crlf
	switch {
	case crlf > 0 && lf == 0 && cr == 0:
		return "CRLF"
	case lf > 0 && crlf == 0 && cr == 0:
		return "LF"
	case cr > 0 && crlf == 0 && lf == 0:
		return "CR"
	case crlf+lf+cr == 0:
		return "one line"
	}
	return "mixed line endings"
}
