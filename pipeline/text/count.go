package text

import "strconv"

// Count is a number with its noun: 1 sheet, 2 sheets.
func Count(n int, noun string) string { return CountOf(n, noun, noun+"s") }

// CountOf is Count for a noun with a plural of its own: 1 copy, 2 copies.
func CountOf(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
