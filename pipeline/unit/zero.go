package unit

import "strings"

// ZeroDay reads the first day of a spreadsheet's calendar as programs write it before
// a running time, "30.12.1899 0:22:14", "12/30/1899 12:22:14 AM", "1/1/1900 0:31:00":
// days is how many whole days the time goes beyond its clock, rest the clock. ISO 8601
// is left to others.
func ZeroDay(s string) (days int, rest string, ok bool) {
	date, rest, ok := strings.Cut(s, " ")
	if !ok || len(date) < 8 || len(date) > 10 {
		return 0, "", false
	}
	sep := date[len(date)-5]
	if sep != '.' && sep != '/' && sep != '-' {
		return 0, "", false
	}
	a, b, two := strings.Cut(date[:len(date)-5], string(sep))
	if !two {
		return 0, "", false
	}
	small := func(s string) int {
		if len(s) == 0 || len(s) > 2 {
			return -1
		}
		n := 0
		for _, c := range []byte(s) {
			if c < '0' || c > '9' {
				return -1
			}
			n = 10*n + int(c-'0')
		}
		return n
	}
	x, y := small(a), small(b)
	switch date[len(date)-4:] {
	case "1899":
		ok = x == 12 && (y == 30 || y == 31) || y == 12 && (x == 30 || x == 31)
		days = 0
	case "1900", "1904":
		ok = x == 1 && y >= 0 && y < 5 || y == 1 && x >= 0 && x < 5
		days = x + y - 1
		if date[len(date)-1] == '4' {
			days--
		}
	default:
		ok = false
	}
	return days, strings.TrimLeft(rest, " "), ok && days >= 0
}
