package sheet

import (
	"regexp"
	"strings"

	"lapwing/pipeline/unit"
)

// Days that have a name and the same date every year, or one that is reckoned from Easter, and on which
// runs are held: "Boxing Day 2025". They count where a text gives no date in figures. Days after which
// runs are called that are held on another, as those of Saint Silvester, are not among them.

// holiday is the month and day of such a day, or, with month 0, how many days it is after Easter Sunday.
type holiday struct{ month, day int }

// holidays are the names, folded, with "year" for "year's". The feasts that go by Easter are those of the
// western churches. Common practice, no source.
var holidays = func() map[string]holiday {
	out := map[string]holiday{}
	for h, names := range map[holiday]string{
		{12, 24}: "christmas eve|heiligabend|heiliger abend|julafton|julaften|nochebuena|veille de noel|kerstavond",
		{12, 25}: "christmas day|erster weihnachtstag|eerste kerstdag|juldagen",
		{12, 26}: "boxing day|st stephen day|zweiter weihnachtstag|stephanstag|stefanitag|tweede kerstdag|annandag jul|tapaninpaiva|dydd san steffan",
		{12, 31}: "new year eve|silvestertag|oudejaarsdag|nyarsafton|nyttarsaften|nytarsaften|nochevieja",
		{1, 1}:   "new year day|neujahr|neujahrstag|nieuwjaarsdag|nyarsdagen|nyttarsdag|nytarsdag|jour de l an|ano nuevo|capodanno|dydd calan|uudenvuodenpaiva",
		{0, -2}:  "good friday|karfreitag|vendredi saint|viernes santo|goede vrijdag|langfredagen|langfredag",
		{0, -1}:  "easter saturday|ostersamstag|karsamstag",
		{0, 0}:   "easter sunday|ostersonntag|dimanche de paques|domingo de pascua",
		{0, 1}:   "easter monday|ostermontag|lundi de paques|lunes de pascua|paasmaandag|tweede paasdag|annandag pask|pasquetta",
		{0, 39}:  "ascension day|christi himmelfahrt|jeudi de l ascension|hemelvaartsdag|kristi himmelsfardsdag",
		{0, 50}:  "whit monday|pfingstmontag|lundi de pentecote|pinkstermaandag|tweede pinksterdag",
	} {
		for _, name := range strings.Split(names, "|") {
			out[name] = h
		}
	}
	return out
}()

// holidayStarts are the first words of the names, and longestHoliday is the number of words of the longest.
var holidayStarts, longestHoliday = func() (map[string]bool, int) {
	starts, longest := map[string]bool{}, 0
	for name := range holidays {
		words := strings.Fields(name)
		starts[words[0]], longest = true, max(longest, len(words))
	}
	return starts, longest
}()

// twoYears are those of a season, "2025/26", which give no year.
var twoYears = regexp.MustCompile(`\b(?:19|20)\d\d ?[/–-] ?(?:20)?\d\d\b`)

// holiday finds such a day in a text, with the year of four figures that the text has; without one, or with
// several, the year is open.
func (sc *dateScan) holiday() (f foundDate, ok bool) {
	year, years := 0, 0
	for _, t := range sc.toks {
		if t.isYear() && t.n != year {
			year = t.n
			years++
		}
	}
	if years > 1 || twoYears.MatchString(sc.s) {
		year = 0
	}
	for i, t := range sc.toks {
		if t.kind != 'l' || !holidayStarts[t.word] {
			continue
		}
		name := ""
		for k, words := i, 0; k < len(sc.toks) && words < longestHoliday; k++ {
			switch u := sc.toks[k]; u.kind {
			case 's', '\'', '-', '.':
				continue
			case 'l':
				if word := u.word; word == "years" {
					name += " year"
				} else if word != "s" {
					name += " " + word
				} else {
					continue
				}
			default:
				words = longestHoliday
				continue
			}
			words++
			h, known := holidays[name[1:]]
			if !known || h.month == 0 && year == 0 {
				continue
			}
			to := k + 1
			if next := to + 1; year > 0 && sc.tok(to).kind == 's' && sc.tok(next).kind == 'd' && sc.tok(next).n == year {
				to = next + 1
			}
			r := reading{y: year, m: h.month, d: h.day}
			if h.month == 0 {
				r.y, r.m, r.d = (easter(year) + unit.Day(h.day)).Date()
			}
			return foundDate{from: t.from, to: sc.toks[to-1].to, readings: []reading{r}, weekday: -1}, true
		}
	}
	return f, false
}

// easter is Easter Sunday of a year in the Gregorian calendar (the anonymous algorithm of Nature 13, 1876, p. 487,
// as in J. Meeus, Astronomical Algorithms, 1991, chapter 8).
func easter(year int) unit.Day {
	a, b, c := year%19, year/100, year%100
	d, e := b/4, b%4
	g := (b - (b+8)/25 + 1) / 3
	h := (19*a + b - d - g + 15) % 30
	i, k := c/4, c%4
	l := (32 + 2*e + 2*i - h - k) % 7
	m := (a + 11*h + 22*l) / 451
	n := h + l - 7*m + 114
	return unit.NewDay(year, n/31, n%31+1)
}
