package sheet

import (
	"bytes"
	"regexp"
	"strconv"
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

// buddhistYear is a year of the Buddhist era behind a day and a month, or behind the word for it.
var buddhistYear = regexp.MustCompile(`(\d{1,2}[/.-]\d{1,2}[/.-]|พ\.?ศ\.? ?|[\x{0E00}-\x{0E7F}.] |\d{1,2} ?[\x{0E00}-\x{0E7F}]+ ?)(2[45]\d\d)\b`)

// yearsBeforeCommon is how many years the Buddhist era is before the common one, in Thailand.
const yearsBeforeCommon = 543

// commonYears writes the years of dates in a text with Thai letters in the common era: 29/5/2564 is
// 29/5/2021.
func commonYears(text []byte) []byte {
	if !bytes.Contains(text, []byte("\xE0\xB8")) || !buddhistYear.Match(text) {
		return text
	}
	return buddhistYear.ReplaceAllFunc(text, func(m []byte) []byte {
		year, _ := strconv.Atoi(string(m[len(m)-4:])) // figures only
		return strconv.AppendInt(m[:len(m)-4:len(m)-4], int64(year-yearsBeforeCommon), 10)
	})
}
