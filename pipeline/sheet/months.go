package sheet

import (
	"strings"

	"lapwing/pipeline/text"
)

// monthNames gives the month, January 0, of a folded name.
var monthNames = func() map[string]int {
	m := text.Months(fold)
	for w := range m {
		m[w]--
	}
	return m
}()

// weekdayNames gives the weekday, Sunday 0, of a folded name.
var weekdayNames = byIndex(text.Weekdays[:]...)

// shortWeekdays are two-letter forms; they count only right before a date.
var shortWeekdays = byIndex("so zo su", "mo", "tu ti", "we mi wo", "th do to", "fr vr", "sa za")

// daysInTwoLetters are such forms of more languages, of which one may mean several days: So is a Sunday
// in German and a Saturday in Czech. They count where the date is one of them. Common practice, no source.
var daysInTwoLetters = [...]map[string]bool{set("so su zo ne di do"), set("mo ma po lu"), set("tu ti di ma ut"), set("we wo mi me st sr ke on"), set("th to do ju je gi ct"), set("fr vr vi ve pa pi pe"), set("sa za so la lo")}

func byIndex(lists ...string) map[string]int {
	m := map[string]int{}
	for i, l := range lists {
		for _, w := range strings.Fields(l) {
			m[fold(w)] = i
		}
	}
	return m
}

// longWeekday is a weekday name long enough to count anywhere in a title.
func longWeekday(f string) (int, bool) {
	d, ok := weekdayNames[f]
	return d, ok && len(f) >= 5
}
