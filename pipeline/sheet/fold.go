package sheet

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"lapwing/pipeline/text"
)

// letters that Unicode does not decompose but people type without.

// fold makes two spellings of the same words equal: lower case, no accents
// (canonical decomposition, UAX #15, without the combining marks), every run
// of punctuation and spaces one space. "#", "%", "/" and "+" are kept as words
// of their own because headings are made of them.
func fold(s string) string {
	var buf [64]byte
	if f, ok := foldASCII(buf[:0], s); ok {
		if string(f) == s {
			return s
		}
		return string(f)
	}
	s = text.PlainLetters.Replace(norm.NFKD.String(strings.ToLower(s)))
	var b strings.Builder
	b.Grow(len(s) + 4)
	space := false
	put := func(r rune) {
		if space && b.Len() > 0 {
			b.WriteByte(' ')
		}
		space = false
		b.WriteRune(r)
	}
	for _, r := range s {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			put(r)
		case r >= 'A' && r <= 'Z':
			put(r + 32)
		case r == '#' || r == '%' || r == '/' || r == '+':
			space = true
			put(r)
			space = true
		case unicode.Is(unicode.Mn, r), r == '\'', r == '’', r == '`', r == '´':
			// joined: o'brien is obrien
		case r >= utf8.RuneSelf && (unicode.IsLetter(r) || unicode.IsDigit(r)):
			put(unicode.ToLower(r))
		default:
			space = true
		}
	}
	return finalSigma(b.String())
}

// finalSigma writes the s at the end of Greek words as small letters have it, which capitals
// don't tell: ΑΝΔΡΕΣ.
func finalSigma(s string) string {
	if !strings.Contains(s, "σ") {
		return s
	}
	words := strings.Split(s, " ")
	for i, w := range words {
		if rest, ok := strings.CutSuffix(w, "σ"); ok && rest != "" {
			words[i] = rest + "ς"
		}
	}
	return strings.Join(words, " ")
}

// trim removes the white space that people can't see, no-break spaces and
// zero-width marks included.
func trim(s string) string {
	if s == "" || s[0] > ' ' && s[0] < utf8.RuneSelf && s[len(s)-1] > ' ' && s[len(s)-1] < utf8.RuneSelf {
		return s
	}
	return strings.TrimFunc(s, func(r rune) bool {
		return unicode.IsSpace(r) || r == '\u200B' || r == '\uFEFF' || r == '\u200E' || r == '\u200F' || r == '\u2060' || r < ' '
	})
}

func isBlank(s string) bool { return trim(s) == "" }

// rowText is a row for messages: its filled cells, at most 80 characters.
func rowText(cells []string) string {
	var b strings.Builder
	for _, c := range cells {
		if c = trim(c); c == "" {
			continue
		}
		if b.Len() > 0 {
			b.WriteString(" | ")
		}
		b.WriteString(c)
		if b.Len() > 80 {
			break
		}
	}
	return shorten(b.String(), 80)
}

// shorten cuts text at n characters, never inside one.
func shorten(s string, n int) string {
	s = strings.ToValidUTF8(s, "\uFFFD")
	if utf8.RuneCountInString(s) <= n {
		return s
	}
	return string([]rune(s)[:n-1]) + "…"
}

// foldASCII is fold into a buffer, without allocating; ok is false where the
// text is not all ASCII.
func foldASCII(b []byte, s string) (folded []byte, ok bool) {
	space := false
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case c >= utf8.RuneSelf:
			return nil, false
		case c == '\'' || c == '`':
			continue
		case c >= 'A' && c <= 'Z':
			c += 32
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
		case c == '#' || c == '/' || c == '%' || c == '+':
			if len(b) > 0 {
				b = append(b, ' ')
			}
			b = append(b, c)
			space = true
			continue
		default:
			space = true
			continue
		}
		if space && len(b) > 0 {
			b = append(b, ' ')
		}
		space = false
		b = append(b, c)
	}
	return b, true
}
