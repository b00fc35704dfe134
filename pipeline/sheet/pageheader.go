package sheet

import (
	"regexp"
	"strings"
)

// maxHeader bounds what is kept of the header of a page; programs allow 255 letters.
const maxHeader = 2000

// headerCodes are the codes of a page's header (ECMA-376 Part 1, 18.3.1.46): font,
// size, colour, style, and fields such as the number of the page or the day of
// printing. &L, &C and &R begin its three parts.
var (
	headerParts = regexp.MustCompile(`&[LCR]|\n`)
	headerCodes = regexp.MustCompile(`&"[^"]*"|&\d+|&K(?:[0-9A-Fa-f]{6}|\d\d[+-]\d{3})|&[BIUEXYSPNDTFAZGHO]`)
)

// headerLines are the texts at the head of printed pages.
func headerLines(header string) (lines []string) {
	const ampersand = "\x00"
	header = strings.ReplaceAll(header, "&&", ampersand)
	for _, part := range headerParts.Split(header, -1) {
		text := strings.ReplaceAll(headerCodes.ReplaceAllString(part, ""), ampersand, "&")
		if text = strings.Join(strings.Fields(text), " "); text != "" && !isRemark(text) {
			lines = append(lines, text)
		}
	}
	return lines
}
