package sheet

import "strings"

// format is what a number format makes of a number.
type format uint8

const (
	fPlain    format = iota
	fDate            // shows a day
	fTime            // shows a time of day, or a duration within a day
	fElapsed         // shows hours, minutes or seconds that go on counting: [h]:mm:ss
	fDateTime        // shows both
	fZeros           // shows at least n figures: fZeros+n
)

// maxZeros bounds the figures of a format such as 0000000000.
const maxZeros = 20

// builtinFormat classifies the number formats that have a number only
// (ECMA-376 Part 1, 18.8.30 numFmt; 27–36 and 50–58 are the dates of East
// Asian locales).
func builtinFormat(id int) (format, bool) {
	switch {
	case id >= 14 && id <= 17, id >= 27 && id <= 31, id == 36, id >= 50 && id <= 54, id == 57, id == 58:
		return fDate, true
	case id == 46:
		return fElapsed, true
	case id >= 18 && id <= 21, id >= 32 && id <= 35, id >= 45 && id <= 47, id == 55, id == 56:
		return fTime, true
	case id == 22:
		return fDateTime, true
	}
	return fPlain, false
}

// codeFormat classifies a number format by its code, "dd/mm/yyyy" or
// "[h]:mm:ss.0" (ECMA-376 Part 1, 18.8.31): texts in quotes, escapes, colours,
// conditions and locales are put aside, then the letters decide. m is a month
// unless hours or seconds stand with it.
func codeFormat(code string) format {
	if code == "" || strings.EqualFold(code, "General") {
		return fPlain
	}
	var date, clock, month, elapsed bool
	zeros, other := 0, false
	for i := 0; i < len(code); i++ {
		switch c := code[i]; c {
		case ';':
			i = len(code) // the section for positive numbers decides
		case '"':
			for i++; i < len(code) && code[i] != '"'; i++ {
			}
		case '\\', '_', '*':
			i++
		case '[':
			j := strings.IndexByte(code[i:], ']')
			if j < 0 {
				return fPlain
			}
			switch in := strings.ToLower(code[i+1 : i+j]); strings.Trim(in, "hms") {
			case "":
				clock = clock || in != ""
				elapsed = elapsed || in != ""
			}
			i += j
		case 'a', 'A':
			if n := len("AM/PM"); len(code) >= i+n && strings.EqualFold(code[i:i+n], "AM/PM") {
				clock = true
				i += n - 1
			} else if n := len("A/P"); len(code) >= i+n && strings.EqualFold(code[i:i+n], "A/P") {
				clock = true
				i += n - 1
			} else {
				other = true
			}
		case 'y', 'Y', 'd', 'D':
			date = true
		case 'h', 'H', 's', 'S':
			clock = true
		case 'm', 'M':
			month = true
		case '0':
			zeros++
		default:
			other = true
		}
	}
	switch {
	case date && clock:
		return fDateTime
	case date, month && !clock && zeros == 0:
		return fDate
	case elapsed:
		return fElapsed
	case clock:
		return fTime
	case !other && zeros >= 2 && zeros <= maxZeros:
		return fZeros + format(zeros)
	}
	return fPlain
}
