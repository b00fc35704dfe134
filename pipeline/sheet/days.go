package sheet

import (
	"regexp"
	"strconv"
	"strings"
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

// monthOfTab reads "Nov 25" and "January '26" as the month of a year.
func monthOfTab(tab string) (month, year int, ok bool) {
	f := strings.Fields(fold(tab))
	if len(f) != 2 || len(f[1]) != 2 || !digitsOnly(f[1]) {
		return 0, 0, false
	}
	m, known := monthNames[f[0]]
	n, _ := strconv.Atoi(f[1])
	return m + 1, 2000 + n, known && n >= 10 && n < 40
}

// inMonth says whether dates without a year all lie in a month, on other days than the
// number of the year: the tab called "Nov 25" is then not of 25 November.
func inMonth(dates []evidence, month int) bool {
	n := 0
	for _, e := range dates {
		if len(e.readings) != 1 || e.readings[0].y != 0 || e.readings[0].m != month {
			return false
		}
		n++
	}
	return n > 0
}
