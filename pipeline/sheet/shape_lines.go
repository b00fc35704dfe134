package sheet

import (
	"regexp"
	"slices"
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
// whatever marks: "18:20: Jo Lee", "Jo Lee 3 19:02", "F34 Jo Lee 20:11", "1..Jo Lee..18:20". The shape
// is that of most lines with a time; those from which a piece is left out, or on which words stand behind
// it, fit it as well. It is tried where nothing else reads a text. nil where
// not nine in ten lines with a time, four or more, fit, or no piece is words.
func sameShape(lines []string) []string {
	shapes := make([][]shapePiece, len(lines))
	counts := map[string]int{}
	timed, most := 0, ""
	for i, l := range lines {
		if len(l) > 200 || !strings.ContainsAny(l, "0123456789") {
			continue
		}
		pieces := piecesOf(partedLine(l))
		shape := shapeOf(pieces)
		if !strings.Contains(shape, "t") || !strings.Contains(shape, "w") || slices.ContainsFunc(findDates(l), foundDate.settled) {
			continue
		}
		shapes[i] = pieces
		timed++
		if counts[shape]++; counts[shape] > counts[most] || counts[shape] == counts[most] && shape < most {
			most = shape
		}
	}
	if timed < 4 || counts[most] < 4 || counts[most]*2 < timed {
		return nil
	}
	dotted := dottedPieces(shapes)
	var table [][]string
	var rows []int
	out := append([]string(nil), lines...)
	named := 0
	for i, pieces := range shapes {
		if pieces == nil {
			continue
		}
		if dotted {
			for k := range pieces {
				if dottedTime.MatchString(pieces[k].text) {
					pieces[k].text = strings.Replace(pieces[k].text, ".", ":", 1)
				}
			}
		}
		cells := fitShape(pieces, most)
		if cells == nil {
			continue
		}
		table, rows = append(table, cells), append(rows, i)
	}
	withoutSharedWords(table)
	for k, cells := range table {
		if slices.ContainsFunc(cells, looksNamed) {
			named++
		}
		out[rows[k]] = strings.Join(cells, "\t")
	}
	for i, l := range lines { // who stands among them without a time
		if strings.IndexByte(out[i], '\t') >= 0 || len(l) > 120 || !listGoesOn(out, i) {
			continue
		}
		pieces := piecesOf(partedLine(l))
		if shape := shapeOf(pieces); strings.Contains(shape, "t") || strings.Contains(most, "n") && !strings.Contains(shape, "n") {
			continue
		}
		if cells := fitShape(pieces, most); cells != nil && slices.ContainsFunc(cells, looksNamed) {
			out[i] = strings.Join(cells, "\t")
		}
	}
	untimedRows(out)
	if len(table)*10 < timed*9 || named*10 < len(table)*8 {
		return nil
	}
	return out
}

var (
	shapeTime  = regexp.MustCompile(`^(?:\d{1,2} ?[:.h] ?)?\d{1,3} ?(?:[:.'’′]|min|m) ?[0-5]\d(?: ?(?:["”″]|''|secs?|s))?(?:[.,]\d{1,3})?`)
	shapeClass = regexp.MustCompile(`^(?:[A-Z]{1,3}\d{1,2}(?:-\d{2})?|\d{2}-\d{2})\b`)
	shapeCount = regexp.MustCompile(`^\d{1,5}(?:st|nd|rd|th|er|e|º|ª|°)?`)
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
	if m := shapeTime.FindString(s); m != "" && ends(len(m)) {
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
			if p.kind == 't' && !dottedTime.MatchString(p.text) && kindOf(p.text) != kStatus {
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
// pieces are left over, or the line has no words in their column.
func fitShape(pieces []shapePiece, shape string) []string {
	cells := make([]string, len(shape)+1)
	next, words := 0, false
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
		words = words || p.kind == 'w'
	}
	if !words {
		return nil
	}
	return cells
}
