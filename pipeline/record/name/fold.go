package name

import (
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// folded holds the small letters without marks for the Latin blocks up to
// U+024F, so that the usual names never meet the general normaliser.
var folded = func() (t [0x250]string) {
	special := map[rune]string{'ł': "l", 'ø': "o", 'đ': "d", 'ð': "d", 'ı': "i", 'ß': "ss",
		'æ': "ae", 'œ': "oe", 'þ': "th", 'ħ': "h", 'ŋ': "n", 'ŧ': "t", 'ĸ': "k", 'ŀ': "l", 'ŉ': "n"}
	for r := rune(0); r < rune(len(t)); r++ {
		if !unicode.IsLetter(r) {
			continue
		}
		small := unicode.ToLower(r)
		if r == 'İ' {
			small = 'i'
		}
		if s, ok := special[small]; ok {
			t[r] = s
			continue
		}
		for _, d := range norm.NFD.String(string(small)) {
			if unicode.IsLetter(d) {
				if s, ok := special[d]; ok {
					t[r] += s
				} else {
					t[r] += string(d)
				}
			}
		}
	}
	return t
}()

// appendFolded adds the folded form of the letter r to b: small, without
// marks.
func appendFolded(b []byte, r rune) []byte {
	if r < rune(len(folded)) {
		return append(b, folded[r]...)
	}
	for _, d := range norm.NFKD.String(string(unicode.ToLower(r))) {
		if unicode.IsLetter(d) {
			b = utf8.AppendRune(b, unicode.ToLower(d))
		}
	}
	return b
}

// vowelSign says whether a rune is written within a word and is no letter of its own: the vowels
// of Indic scripts (Unicode general category Mc) and the signs that join letters or part them.
func vowelSign(r rune) bool { return unicode.Is(unicode.Mc, r) || r == 0x200c || r == 0x200d }

// Fold gives the key of any text: letters and digits small and without marks,
// apostrophes dropped, every run of anything else one space. It is the key of
// clubs and courses as well as of names.
func Fold(text string) string {
	var room [96]byte
	b := room[:0]
	gap := false
	for _, r := range text {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			if gap && len(b) > 0 {
				b = append(b, ' ')
			}
			gap = false
			if unicode.IsDigit(r) {
				b = utf8.AppendRune(b, r)
			} else {
				b = appendFolded(b, r)
			}
		case unicode.Is(unicode.Mc, r) && !gap:
			b = utf8.AppendRune(b, r)
		case apostrophe(r) || unicode.Is(unicode.Mn, r) || vowelSign(r):
		default:
			gap = true
		}
	}
	return string(b)
}

func apostrophe(r rune) bool {
	switch r {
	case '\'', '’', '‘', '`', '´', 'ʼ', 'ʹ', '′', '＇', '‛', 'ʻ':
		return true
	}
	return false
}

func dash(r rune) bool {
	switch r {
	case '-', '‐', '‑', '‒', '–', '—', '−', '﹣', '－':
		return true
	}
	return false
}
