package record

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"lapwing/pipeline/record/name"
)

// fold appends s to dst in the form that the word tables use: lower case,
// accents off, typographic quotes and dashes plain, runs of space single, none
// at the ends, invisible characters gone. It allocates only if dst is small.
func fold(dst []byte, s string) []byte {
	start := len(dst)
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c >= utf8.RuneSelf {
			return foldUnicode(dst[:start], s)
		}
		dst = appendFolded(dst, start, c)
	}
	return trimSpace(dst, start)
}

func appendFolded(dst []byte, start int, c byte) []byte {
	switch {
	case c >= 'A' && c <= 'Z':
		c += 'a' - 'A'
	case c <= ' ' || c == 0x7f:
		if len(dst) == start || dst[len(dst)-1] == ' ' {
			return dst
		}
		c = ' '
	}
	return append(dst, c)
}

func trimSpace(dst []byte, start int) []byte {
	for len(dst) > start && dst[len(dst)-1] == ' ' {
		dst = dst[:len(dst)-1]
	}
	return dst
}

// foldUnicode is fold by compatibility decomposition (Unicode Standard Annex
// 15, NFKD) with the marks dropped and the letters that don't decompose spelt
// out.
func foldUnicode(dst []byte, s string) []byte {
	start := len(dst)
	if strings.Contains(s, "Ã") || strings.Contains(s, "Å") || strings.Contains(s, "Â") {
		s = name.Clean(s) // UTF-8 that was once read as Windows-1252: fÃ©vrier
	}
	for i := 0; i < len(s); {
		if c := s[i]; c < utf8.RuneSelf {
			dst = appendFolded(dst, start, c)
			i++
			continue
		}
		r, n := utf8.DecodeRuneInString(s[i:])
		if r == '\u00b4' { // decomposes to a space; in a time it is the minute mark
			dst = append(dst, '\'')
		} else if d := norm.NFKD.PropertiesString(s[i:]).Decomposition(); d != nil {
			for len(d) > 0 {
				r, n := utf8.DecodeRune(d)
				dst = appendPlain(dst, start, r)
				d = d[n:]
			}
		} else {
			dst = appendPlain(dst, start, unicode.ToLower(r))
		}
		i += n
	}
	dst = trimSpace(dst, start)
	for i := start + 2; i+1 < len(dst); i++ { // ΑΝΔΡΕΣ: capitals don't tell the s at the end of a word
		if dst[i] == 0xcf && dst[i+1] == 0x83 && (i+2 == len(dst) || dst[i+2] < 'a' && dst[i+2] != '\'') {
			dst[i+1] = 0x82
		}
	}
	return dst
}

// appendPlain adds one decomposed character.
func appendPlain(dst []byte, start int, r rune) []byte {
	switch {
	case r < utf8.RuneSelf:
		return appendFolded(dst, start, byte(r))
	case r >= 0x300 && r <= 0x36f, r >= 0x591 && r <= 0x5c7, r >= 0x64b && r <= 0x65f: // combining marks
		return dst
	case unicode.Is(unicode.Nd, r): // ten in a row, from 0 on, in every script
		zero := r
		for unicode.Is(unicode.Nd, zero-1) && r-zero < 9 {
			zero--
		}
		return append(dst, byte('0'+(r-zero)%10))
	case r == 0xad || r != 0xa0 && r != 0x3000 && invisible(r):
		return dst
	}
	if plain, ok := plainly[r]; ok {
		return append(dst, plain...)
	}
	return utf8.AppendRune(dst, unicode.ToLower(r)) // a capital with its mark off: Ά, Й
}

// plainly spells the characters that have no decomposition.
var plainly = map[rune]string{
	'\u2018': "'", '\u2019': "'", '\u201b': "'", '\u02bc': "'", '\u02b9': "'", '\u2032': "'",
	'\u201c': `"`, '\u201d': `"`, '\u201e': `"`, '\u02ba': `"`,
	'\u2010': "-", '\u2011': "-", '\u2012': "-", '\u2013': "-", '\u2014': "-", '\u2015': "-", '\u2212': "-", '\u301c': "~",
	'\u2236': ":", '\ua789': ":", '\u2044': "/",
	'ß': "ss", 'ø': "o", 'ł': "l", 'đ': "d", 'ð': "d", 'æ': "ae", 'œ': "oe", 'ı': "i", 'þ': "th",
}

// trim cuts white space, no-break spaces and invisible marks off both ends
// without allocating.
func trim(s string) string {
	for len(s) > 0 {
		if c := s[0]; c <= ' ' {
			s = s[1:]
			continue
		} else if c < utf8.RuneSelf {
			break
		}
		r, n := utf8.DecodeRuneInString(s)
		if !invisible(r) {
			break
		}
		s = s[n:]
	}
	for len(s) > 0 {
		if c := s[len(s)-1]; c <= ' ' {
			s = s[:len(s)-1]
			continue
		} else if c < utf8.RuneSelf {
			break
		}
		r, n := utf8.DecodeLastRuneInString(s)
		if !invisible(r) {
			break
		}
		s = s[:len(s)-n]
	}
	return s
}

func invisible(r rune) bool {
	return r == 0xa0 || r == 0x202f || r >= 0x2000 && r <= 0x200f || r >= 0x202a && r <= 0x202e || r >= 0x2060 && r <= 0x2069 || r == 0xfeff || r == 0x3000
}
