package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A shapePiece is a part of a typed line: a time or how the race ended ('t'), a number ('n'), a class
// or a sex ('c') or words ('w').
type shapePiece struct {
	kind byte
	text string
}

// sameShape cuts lines that are all made alike, whatever stands in them in whatever order and between
// whatever marks: "18:20: Jo Lee", "Jo Lee 3 19:02", "F34 Jo Lee 20:11", "1..Jo Lee..18:20"; or the halves
// of a result, places and times, "Lap 3: 19:02", or places and names, "Jo Lee (3)". It is tried where
// nothing else reads a text; nil where the lines are not alike.
func sameShape(lines []string) []string {
	cut := cutPieces(lines)
	for _, need := range []string{"tw", "tn", "nw"} {
		if out := shapedLines(lines, cut, need); out != nil {
			return out
		}
	}
	return nil
}

// placesAndTimes cuts the lines of a sheet on which only places and times were taken, "12 24:31", "Lap 12: 24:31".
func placesAndTimes(lines []string, _ byte) []string {
	return shapedLines(lines, cutPieces(lines), "tn")
}

// shapedLines cuts lines, of which the pieces are given, that have the kinds of pieces that are needed. Lines from which
// a piece of the shape is left out, or on which words stand behind it, fit it as well. nil where not nine in ten
// of them fit, the words are no names, or the numbers of a half of a result are no places.
func shapedLines(lines []string, cut [][]shapePiece, need string) []string {
	shapes, most := commonShape(lines, cut, need)
	if most == "" {
		return nil
	}
	dotted := dottedPieces(shapes)
	var table [][]string
	var rows []int
	alike := 0
	for i, pieces := range shapes {
		if pieces == nil {
			continue
		}
		if cells := fitShape(pieces, most, need); cells != nil {
			for k, c := range cells {
				if dotted && dottedTime.MatchString(c) {
					cells[k] = strings.Replace(c, ".", ":", 1)
				}
			}
			table, rows = append(table, cells), append(rows, i)
		}
		if len(table) > 0 { // what stands above them is a title: "Watch 1, started 9:00"
			alike++
		}
	}
	half := need != "tw"
	if half && len(table) > 4 && placedColumn(table) < 0 && placedColumn(table[1:]) >= 0 {
		table, rows, alike = table[1:], rows[1:], alike-1 // "8 finishers" above their names
	}
	withoutSharedWords(table)
	if unit := repeatedUnit(most); half && unit < len(most) {
		return unitsApart(lines, table, rows, unit, need)
	}
	if len(table)*10 < alike*9 || (need == "tn") == hasWords(table) || need != "tn" && !namedRows(table) {
		return nil
	}
	front := 0 // the column that comes first
	if half {
		if front = placedColumn(table); front < 0 {
			return nil
		}
	}
	out := slices.Clone(lines)
	write := func(row int, cells []string) {
		out[row] = strings.Join(slices.Insert(slices.Delete(slices.Clone(cells), front, front+1), 0, cells[front]), "\t")
	}
	for k, cells := range table {
		write(rows[k], cells)
	}
	for i, l := range lines { // who stands among them without a time, or a place without a name
		if strings.IndexByte(out[i], '\t') >= 0 || len(l) > 120 || !listGoesOn(out, i) {
			continue
		}
		pieces := cut[i]
		if pieces == nil {
			pieces = piecesOf(partedLine(l))
		}
		shape := shapeOf(pieces)
		if strings.Contains(shape, "t") || strings.Contains(most, "n") && !strings.Contains(shape, "n") {
			continue
		}
		if cells := fitShape(pieces, most, strings.Trim(need, "t")); cells != nil && (need == "tn" || slices.ContainsFunc(cells, looksNamed)) {
			write(i, cells)
		} else if cells := fitShape(pieces, most, "n"); cells != nil && need == "nw" {
			write(i, cells)
		}
	}
	untimedRows(out)
	return out
}

// commonShape gives the pieces of the lines that have the kinds that are needed, and the shape that most of them have;
// "" where fewer than four have it, or fewer than half of them, or where times stand beside a list of names.
func commonShape(lines []string, cut [][]shapePiece, need string) (shapes [][]shapePiece, most string) {
	shapes = make([][]shapePiece, len(lines))
	counts := map[string]int{}
	alike := 0
	for i, l := range lines {
		pieces := cut[i]
		if need == "nw" {
			pieces = slices.Clone(pieces)
			for k, p := range pieces {
				if p.kind == 't' && !isTime(p) {
					pieces[k].kind = 'w' // 6. n/a
				}
			}
		}
		shape := shapeOf(pieces)
		if !hasKinds(shape, need) || slices.ContainsFunc(findDates(l), func(d foundDate) bool { return d.settled() || need != "tw" && d.readings[0].y != 0 }) {
			continue
		}
		if need == "nw" && (strings.Count(shape, "n") > 2 || slices.ContainsFunc(pieces, isTime)) {
			return nil, "" // which may be times
		}
		shapes[i] = pieces
		alike++
		if counts[shape]++; counts[shape] > counts[most] || counts[shape] == counts[most] && shape < most {
			most = shape
		}
	}
	if counts[most] < 4 || counts[most]*2 < alike {
		return nil, ""
	}
	return shapes, most
}

// cutPieces cuts lines with a figure into their pieces. What looks like a class is a number where all have the
// same letters, none of a sex, and count from 1 on: "T3 19:02".
func cutPieces(lines []string) [][]shapePiece {
	out := make([][]shapePiece, len(lines))
	seen, letters, counts, most := map[int]bool{}, "", true, 0
	for i, l := range lines {
		if len(l) > 200 || !strings.ContainsAny(l, "0123456789") {
			continue
		}
		out[i] = piecesOf(partedLine(l))
		for _, p := range out[i] {
			m := letteredNumber.FindStringSubmatch(p.text)
			if p.kind != 'c' || m == nil {
				continue
			}
			n, _ := strconv.Atoi(m[2])
			counts = counts && n > 0 && !seen[n] && (letters == "" || letters == m[1]) && kindOf(m[1]) != kSex
			letters, seen[n], most = m[1], true, max(most, n)
		}
	}
	if !counts || len(seen) < 4 || most != len(seen) {
		return out
	}
	for _, pieces := range out {
		for k, p := range pieces {
			if m := letteredNumber.FindStringSubmatch(p.text); p.kind == 'c' && m != nil {
				pieces[k] = shapePiece{'n', m[2]}
			}
		}
	}
	return out
}

var letteredNumber = regexp.MustCompile(`^([A-Z]{1,3})(\d{1,2})$`)

// isTime says whether a piece is a time, and not how a race ended.
func isTime(p shapePiece) bool { return p.kind == 't' && kindOf(p.text) != kStatus }

// repeatedUnit is how many pieces of a shape come again and again to its end: 2 of "ntntnt".
func repeatedUnit(shape string) int {
	for n := 2; n*2 <= len(shape); n++ {
		if strings.Repeat(shape[:n], len(shape)/n) == shape {
			return n
		}
	}
	return len(shape)
}

// unitsApart puts halves of results, of which several stand on each line, one to a line. table
// has the cells of the lines with the numbers in rows; nil where they are no halves.
func unitsApart(lines []string, table [][]string, rows []int, unit int, need string) []string {
	var single [][]string
	var out []string
	next := 0
	for k, cells := range table {
		out = append(out, lines[next:rows[k]]...)
		next = rows[k] + 1
		for at := 0; at+unit < len(cells); at += unit {
			if part := cells[at : at+unit]; rowFilled(part) > 0 {
				single = append(single, part)
				out = append(out, strings.Join(part, "\t"))
			}
		}
		if !isBlank(cells[len(cells)-1]) {
			return nil
		}
	}
	if need == "nw" && !namedRows(single) || placedColumn(single) < 0 {
		return nil
	}
	return append(out, lines[next:]...)
}

// hasKinds says whether a shape has pieces of all kinds that are needed.
func hasKinds(shape, need string) bool {
	for i := range need {
		if strings.IndexByte(shape, need[i]) < 0 {
			return false
		}
	}
	return true
}

// hasWords says whether more than one row in ten has words.
func hasWords(table [][]string) bool {
	n := 0
	for _, cells := range table {
		if slices.ContainsFunc(cells, func(c string) bool { return kindOf(c) == kText }) {
			n++
		}
	}
	return n*10 > len(table)
}

// namedRows says whether in eight of ten rows something looks like a name.
func namedRows(table [][]string) bool {
	named := 0
	for _, cells := range table {
		if slices.ContainsFunc(cells, looksNamed) {
			named++
		}
	}
	return named*10 >= len(table)*8
}

// placedColumn is the column that holds places: each number once, in whatever order, the first among them, and
// hardly any left out, from 0 where a watch writes the start; -1 where none does.
func placedColumn(table [][]string) int {
	for c := range table[0] {
		seen, most := map[int]bool{}, 0
		for k, cells := range table {
			n := int(placeNumber(cells[c]))
			if start := cells[c] == "0" && (k == 0 || k == len(table)-1); !start && n <= 0 || seen[n] {
				break
			}
			seen[n], most = true, max(most, n)
		}
		if len(seen) == len(table) && seen[1] && most*8 <= len(table)*10 {
			return c
		}
	}
	return -1
}

var (
	shapeTime   = regexp.MustCompile(`^(?:\d{1,2}(?:[:.]| [:.] | ?h ?))?\d{1,3} ?(?:(?:[:.'’′]|min|m) ?[0-5]\d|(?:['’′]|mins?|m) ?\d(?: ?(?:["”″]|secs?|s)))(?: ?(?:["”″]|''|secs?|s))?(?:[.,]\d{1,3})?`)
	clockGoesOn = regexp.MustCompile(`^[:.]\d\d`) // 1. 18:20
	shapeClass  = regexp.MustCompile(`^(?:[A-Z]{1,3}\d{1,2}(?:-\d{2})?|\d{2}-\d{2})\b`)
	notKnown    = regexp.MustCompile(`^(?i:n/[at])\b`)
	shapeCount  = regexp.MustCompile(`^\d{1,5}(?:st|nd|rd|th|er|e|º|ª|°)?`)
)

// piecesOf cuts a line into its pieces; nil where it has something that is none of them.
func piecesOf(l string) []shapePiece {
	var out []shapePiece
	for at := 0; at < len(l); {
		rest := l[at:]
		r, size := utf8.DecodeRuneInString(rest)
		kind, n := byte(0), 0
		switch {
		case r >= '0' && r <= '9':
			kind, n = figurePiece(rest)
		case unicode.IsLetter(r):
			kind, n = wordPiece(rest)
		default:
			at += size
			continue
		}
		if n == 0 || len(out) > 12 {
			return nil
		}
		text := strings.TrimSpace(rest[:n])
		if kind == 't' && strings.IndexByte(text, ':') > 0 {
			text = strings.TrimRight(text, `"”″'s`) // a closing quotation mark
		}
		if kind == 'n' {
			text = strings.TrimRightFunc(text, func(r rune) bool { return r < '0' || r > '9' }) // 1st
		}
		out = append(out, shapePiece{kind, text})
		at += n
	}
	return out
}

// figurePiece is the piece that a text begins with a figure: a time, a class of ages or a number. n is 0
// where letters stand right behind it.
func figurePiece(s string) (kind byte, n int) {
	ends := func(n int) bool {
		r, _ := utf8.DecodeRuneInString(s[n:])
		return n == len(s) || !unicode.IsLetter(r) && !unicode.IsDigit(r)
	}
	if m := shapeTime.FindString(s); m != "" && ends(len(m)) && !clockGoesOn.MatchString(s[len(m):]) {
		return 't', len(m)
	}
	if m := shapeClass.FindString(s); m != "" && ends(len(m)) {
		return 'c', len(m)
	}
	if m := shapeCount.FindString(s); ends(len(m)) {
		return 'n', len(m)
	}
	return 0, 0
}

// wordPiece is the piece that a text begins with a letter: a class, a sex, how the race ended, or all
// words up to a mark, a figure or one of those.
func wordPiece(s string) (kind byte, n int) {
	single := func(s string) (kind byte, n int) {
		if m := notKnown.FindString(s); m != "" {
			return 't', len(m)
		}
		if m := shapeClass.FindString(s); m != "" {
			return 'c', len(m)
		}
		end := strings.IndexFunc(s, func(r rune) bool { return !unicode.IsLetter(r) })
		if end < 0 {
			end = len(s)
		}
		switch w := s[:end]; {
		case (w == "M" || w == "F" || w == "W") && !strings.HasPrefix(s[end:], "."):
			return 'c', end
		case w == strings.ToUpper(w) && len(w) > 1 && kindOf(w) == kStatus:
			return 't', end
		}
		return 0, 0
	}
	if kind, n = single(s); kind != 0 {
		return kind, n
	}
	for n < len(s) {
		r, size := utf8.DecodeRuneInString(s[n:])
		next, _ := utf8.DecodeRuneInString(s[n+size:])
		inside := unicode.IsLetter(next)
		switch {
		case unicode.IsLetter(r) || unicode.Is(unicode.Mn, r):
		case (r == '\'' || r == '’' || r == '-') && inside:
		case r == '.' && n > 0 && len(strings.Fields(s[:n])[len(strings.Fields(s[:n]))-1]) <= 2 && (next == ' ' || inside): // J. Lee, St. Ives
		case r == ' ' && inside:
			if kind, _ := single(s[n+1:]); kind != 0 {
				return 'w', n
			}
		default:
			return 'w', n
		}
		n += size
	}
	return 'w', n
}

// withoutSharedWords takes words off the cells of a column that nine in ten of them begin or end with: the
// labels of "Runner 3: Jo Lee | time: 18:20", the "came" of "Jo Lee came 3rd in 18:20".
func withoutSharedWords(table [][]string) {
	if len(table) == 0 {
		return
	}
	for c := range table[0] {
		for word := sharedWord(table, c, true); word != ""; word = sharedWord(table, c, true) {
			for _, cells := range table {
				cells[c] = strings.TrimSpace(strings.TrimSuffix(cells[c], word))
			}
		}
		for word := sharedWord(table, c, false); word != ""; word = sharedWord(table, c, false) {
			for _, cells := range table {
				cells[c] = strings.TrimSpace(strings.TrimPrefix(cells[c], word))
			}
		}
	}
}

// sharedWord is the word with which nine in ten cells of words of a column end, or begin; "" for none.
func sharedWord(table [][]string, column int, end bool) (shared string) {
	counts, filled := map[string]int{}, 0
	for _, cells := range table {
		words := strings.Fields(cells[column])
		if len(words) == 0 || kindOf(cells[column]) != kText || !hasLetter(cells[column]) {
			continue
		}
		filled++
		word := words[0]
		if end {
			word = words[len(words)-1]
		}
		if counts[word]++; counts[word] > counts[shared] {
			shared = word
		}
	}
	if filled < 4 || counts[shared]*10 < filled*9 {
		return ""
	}
	return shared
}

// dottedPieces says whether every time of the lines has a full stop between minutes and seconds.
func dottedPieces(shapes [][]shapePiece) bool {
	for _, pieces := range shapes {
		for _, p := range pieces {
			if isTime(p) && !dottedTime.MatchString(p.text) {
				return false
			}
		}
	}
	return true
}

// shapeOf is the kinds of the pieces of a line.
func shapeOf(pieces []shapePiece) string {
	b := make([]byte, len(pieces))
	for i, p := range pieces {
		b[i] = p.kind
	}
	return string(b)
}

// fitShape puts the pieces of a line into the columns of a shape, in their order; a column of which the line has
// no piece stays blank. Words behind the last piece that fits come into a column of their own. nil where
// pieces are left over, or the line has none of a kind that is needed.
func fitShape(pieces []shapePiece, shape, need string) []string {
	cells := make([]string, len(shape)+1)
	next := 0
	for i, p := range pieces {
		at := strings.IndexByte(shape[next:], p.kind)
		if at < 0 {
			if i > 0 && p.kind == 'w' && i == len(pieces)-1 {
				cells[len(shape)] = p.text
				continue
			}
			return nil
		}
		cells[next+at] = p.text
		next += at + 1
	}
	if !hasKinds(shapeOf(pieces), need) {
		return nil
	}
	return cells
}
