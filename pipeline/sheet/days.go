package sheet

import (
	"regexp"
	"strconv"
)

// firstDay is the first day of two before a month, "17-18 October" and "17 & 18
// October". A dash with spaces is none: "Run 2 - 3 January".
var firstDay = regexp.MustCompile(`(?:^|[^\d./-])(\d{1,2})(?:st|nd|rd|th|\.)?(?:[-–/]|\s*(?:&|\+|and|und|et|y|e|en|och|og)\s*)$`)

// withFirstDays adds to the dates of a text the first day where it names two on end,
// as the runs of a weekend: which of them it was is said elsewhere, or asked.
func withFirstDays(text string, dates []foundDate) (out []foundDate) {
	for _, f := range dates {
		if len(f.readings) == 1 && f.readings[0].order == "" {
			if m := firstDay.FindStringSubmatchIndex(text[:f.from]); m != nil {
				r := f.readings[0]
				if d, _ := strconv.Atoi(text[m[2]:m[3]]); d == r.d-1 {
					first := f
					r.d = d
					first.readings, first.from, first.to = []reading{r}, m[2], f.from
					out = append(out, first)
				}
			}
		}
		out = append(out, f)
	}
	return out
}
