package sheet

import (
	"bytes"
	"unicode"
	"unicode/utf8"
)

// plainRows is how many rows make a plain table.
const plainRows = 5

// plainTable says whether a text is one table in which nothing is left to mend: each line has as
// many cells as the first, which are headings in words; below, each row has a clock in the one
// column of clocks, or a status instead, and the other cells are blank, figures, words or codes
// such as VW45-49. Quotes, marks and brackets say no, and so do rows that may divide it. Most
// files that a program has written are such tables, and looking for all that people do to a
// text or a table would take two thirds of reading them.
func plainTable(text []byte) bool {
	end := bytes.IndexByte(text, '\n')
	if end < 0 || len(text) > typedBytes {
		return false
	}
	delim := byte(0)
	for _, d := range []byte{',', ';', '\t'} {
		if n := bytes.Count(text[:end], []byte{d}); n >= 2 {
			if delim != 0 {
				return false
			}
			delim = d
		}
	}
	if delim == 0 {
		return false
	}
	width := bytes.Count(text[:end], []byte{delim}) + 1
	if width > 64 {
		return false
	}
	clock, rows, clocks := -1, 0, 0
	words := uint64(0) // the columns with words that are no status
	for heading := true; len(text) > 0; heading = false {
		line := text
		if i := bytes.IndexByte(text, '\n'); i >= 0 {
			line, text = text[:i], text[i+1:]
		} else {
			text = nil
		}
		line = bytes.TrimSuffix(line, []byte("\r"))
		filled, timed := 0, false
		for c := range width {
			cell, rest, more := bytes.Cut(line, []byte{delim})
			if line = rest; more != (c < width-1) {
				return false
			}
			k := plainCell(cell)
			if k == oddCell || heading && k != wordsCell {
				return false
			}
			if k != blankCell {
				filled++
			}
			switch {
			case k == wordsCell && !heading && !endsRace(cell):
				words |= 1 << c
			case k == clockCell:
				if clock >= 0 && c != clock {
					return false
				}
				clock, timed = c, true
				clocks++
			}
		}
		if !heading && !timed && filled < 3 {
			return false
		}
		rows++
	}
	return rows > plainRows && 10*clocks >= 9*(rows-1) && words>>clock&1 == 0
}

// endsRace says whether a cell is a status such as DNF.
func endsRace(c []byte) bool {
	if len(c) > 4 {
		return false
	}
	var buf [4]byte
	f, ok := foldASCII(buf[:0], string(c))
	return ok && statusWords[string(f)]
}

// What a cell of a plain table can be.
const (
	oddCell     = iota // something that may want mending
	blankCell          // nothing
	wordsCell          // letters, with gaps, hyphens, apostrophes and full stops between them
	figuresCell        // a whole number of up to nine figures, or figures in ISO order of a date
	codeCell           // letters and figures of an age group
	clockCell          // m:ss, mm:ss, h:mm:ss
)

// plainCell says what a cell of a plain table is.
func plainCell(c []byte) int {
	if len(c) == 0 {
		return blankCell
	}
	if c[0] == ' ' || c[len(c)-1] == ' ' || len(c) > 60 {
		return oddCell
	}
	letters, figures, colons, hyphens, others := 0, 0, 0, 0, 0
	for i := 0; i < len(c); i++ {
		switch b := c[i]; {
		case b >= utf8.RuneSelf:
			r, n := utf8.DecodeRune(c[i:])
			if !unicode.IsLetter(r) || r >= 0x2000 { // alphabets, and neither signs nor figures of other scripts
				return oddCell
			}
			letters++
			i += n - 1
		case b >= '0' && b <= '9':
			figures++
		case b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z':
			letters++
		case b == ':' && i > 0:
			colons++
		case b == '-' && i > 0:
			hyphens++
		case i > 0 && (b == '\'' && i+1 < len(c) && c[i+1] > ' ' || b == ' ' && c[i-1] != ' ' || b == '.'):
			others++
		default:
			return oddCell
		}
	}
	switch {
	case figures == 0 && colons == 0 && letters > 0:
		return wordsCell
	case colons > 0 && letters+hyphens+others == 0 && isClockCell(c):
		return clockCell
	case letters+colons+hyphens+others == 0 && figures <= 9, isoDate(c):
		return figuresCell
	case colons+others == 0 && letters > 0 && letters <= 3 && figures <= 4 && c[0] > '9':
		return codeCell
	}
	return oddCell
}

// isClockCell recognises m:ss, mm:ss and h:mm:ss.
func isClockCell[T string | []byte](c T) bool {
	for range 2 {
		n := len(c)
		if n < 4 || c[n-3] != ':' || c[n-2] < '0' || c[n-2] > '5' || !isFigure(c[n-1]) {
			return false
		}
		if c = c[:n-3]; len(c) <= 2 {
			return isFigure(c[0]) && isFigure(c[len(c)-1])
		}
	}
	return false
}

// isoDate recognises figures in the order of ISO 8601, 2026-03-07.
func isoDate[T string | []byte](c T) bool {
	if len(c) != 10 || c[4] != '-' || c[7] != '-' {
		return false
	}
	for i := range len(c) {
		if i != 4 && i != 7 && !isFigure(c[i]) {
			return false
		}
	}
	return true
}
