package sheet

import (
	"unicode"
	"unicode/utf8"
)

// wideMarks stand between the figures of times, dates and numbers where these are wide or
// Arabic.
var wideMarks = map[rune]byte{'：': ':', '．': '.', '／': '/', '－': '-', '\u066B': '.', '∶': ':'}

// mathematicalZero begins the figures that people put into messages in place of bold ones.
const mathematicalZero = '\U0001D7CE'

// plainFigures writes the decimal figures of all scripts (general category Nd of the Unicode
// Standard) as 0 to 9, ٢١:٠٣ and ２１：０３, with the marks between them; false, and the text
// as it is, where there are none.
func plainFigures(text []byte) ([]byte, bool) {
	var out []byte
	copied := 0 // of text, into out
	for i := 0; i < len(text); {
		if text[i] < utf8.RuneSelf {
			i++
			continue
		}
		r, size := utf8.DecodeRune(text[i:])
		plain, is := byte(0), unicode.IsDigit(r)
		if is {
			zero := r // ten in a row, from 0 on, in every script
			for unicode.IsDigit(zero-1) && r-zero < 9 {
				zero--
			}
			if r >= mathematicalZero && r < mathematicalZero+50 {
				zero = mathematicalZero // five such rows on end
			}
			plain = byte('0' + (r-zero)%10)
		} else if mark := wideMarks[r]; mark != 0 && i == copied && len(out) > 0 && isFigure(out[len(out)-1]) {
			plain, is = mark, true
		}
		if is {
			out = append(append(out, text[copied:i]...), plain)
			copied = i + size
		}
		i += size
	}
	if copied == 0 {
		return text, false
	}
	return append(out, text[copied:]...), true
}

func isFigure(c byte) bool { return c >= '0' && c <= '9' }
