package sheet

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/unit"
)

// Title lines that speak of another day than the run's: when the next one is, since when
// there are runs, how many came last week. Words for that can't be listed for all
// languages; what can be told is which lines say of which run the sheet is. They say
// nothing but a day, or a day and the course.

// ofTheRun leaves out dates of asides where a line, the tab's name or the file's name gives
// a day and says of which run it is.
func (rs *runSettler) ofTheRun(p *Part, evs []evidence) []evidence {
	evs = ofThisWeek(evs)
	least := 2 // what holds for a whole sheet of several lists says nothing of one of them
	if rs.parts > 1 && rs.sheet.Parts[0] != p {
		least = 3
	}
	plain, aside := false, false
	for _, e := range evs {
		switch {
		case e.strength < least:
		case rs.saysRun(p, e):
			plain = true
		default:
			aside = true
		}
	}
	if !plain || !aside {
		return evs
	}
	var out []evidence
	for _, e := range evs {
		if e.strength < least || rs.saysRun(p, e) || namesRun(e) {
			out = append(out, e)
		}
	}
	return out
}

// ofThisWeek leaves out dates of lines that speak of the last run or the next, where others
// are left.
func ofThisWeek(evs []evidence) []evidence {
	other := func(e evidence) bool {
		return e.strength == 3 && ofAnotherRun(e.line)
	}
	left := slices.DeleteFunc(slices.Clone(evs), other)
	if slices.ContainsFunc(left, func(e evidence) bool { return e.strength == 3 }) {
		return left
	}
	return evs
}

// namesRun says whether a line is a name of two words and more in capitals and a date behind
// it, "Hazel Weir 22 November 2025", as a run is called, which may be another than that of
// the file's name.
func namesRun(e evidence) bool {
	from, to := e.foundDate.from, e.foundDate.to
	if to > len(e.line) || strings.Trim(e.line[to:], " .)") != "" {
		return false
	}
	rest, _ := wordsBeside(e.line)
	words := strings.Fields(e.line[:from])
	for _, w := range words {
		if r, _ := utf8.DecodeRuneInString(w); unicode.IsLower(r) {
			return false
		}
	}
	return len(rest) >= 2 && len(words) >= 2
}

// saysRun says whether what a date stands in says of which run the sheet is: the date is
// labelled as such, it stands in a name, or the line names the course or an organiser, or
// has no words but those of titles.
func (rs *runSettler) saysRun(p *Part, e evidence) bool {
	if e.line == "" || e.labelled {
		return true
	}
	rest, club := wordsBeside(e.line)
	if len(rest) == 0 || club {
		return true
	}
	for _, w := range strings.Split(p.Course.Value, "-") {
		_, month := monthNames[w] // March Hollow
		_, weekday := weekdayNames[w]
		if !rest[w] && !titleWords[w] && !month && !weekday {
			return false
		}
	}
	return p.Course.Value != ""
}

// dateInProse says whether a date that nothing else says stands in a sentence that may speak of another day:
// "Ages as on 3 January 2026", "Strecke vermessen am 3.1.2026". A name has no words in small letters.
func (rs *runSettler) dateInProse(p *Part, e evidence, evs []evidence) bool {
	if e.strength != 3 || e.line == "" || e.labelled || e.weekday >= 0 || e.foundDate.from > len(e.line) || rs.saysRun(p, e) {
		return false
	}
	before := strings.TrimRight(e.line[:e.foundDate.from], " (")
	if strings.HasSuffix(before, ":") || strings.HasSuffix(before, "|") {
		return false
	}
	for _, other := range evs {
		if other.line != e.line && has(other.readings, p.Date.Day) {
			return false
		}
	}
	rest, _ := wordsBeside(e.line)
	return slices.ContainsFunc(strings.Fields(before), func(w string) bool {
		first, _ := utf8.DecodeRuneInString(w)
		return unicode.IsLower(first) && rest[fold(w)]
	})
}

// wordsBeside are the words of a line that are no date, time, distance or number and don't
// belong to titles, quarta-feira among the weekdays; club says that one of them is for a club.
func wordsBeside(line string) (rest map[string]bool, club bool) {
	rest = map[string]bool{}
	for _, w := range strings.Fields(fold(strings.NewReplacer("-", " ", "/", " ").Replace(cutSpans(line, false)))) {
		_, weekday := weekdayNames[w]
		_, month := monthNames[w]
		if weekday || w == "feira" || month || titleWords[w] || isOrdinalOrNumber(w) || len([]rune(w)) < 2 {
			continue
		}
		club = club || clubWords[w]
		rest[w] = true
	}
	return rest, club
}

// besideTheDay finds the title lines that give another day than one that has nothing but a
// day. What words they have besides is hardly the course: below that line never, above it
// only where nothing else names one.
func besideTheDay(titles []string, lex *lexicon) (above, below map[int]bool) {
	if isLetterHead(titles) {
		return nil, nil
	}
	bare := -1
	dates := make([][]evidence, len(titles))
	for i, t := range titles {
		if dates[i] = titleDates(t, "", lex, false); bare < 0 && len(dates[i]) == 1 {
			if rest, _ := wordsBeside(t); len(rest) == 0 {
				bare = i
			}
		}
	}
	if bare < 0 {
		return nil, nil
	}
	above, below = map[int]bool{}, map[int]bool{}
	for i, es := range dates {
		if amongDays(es, dates[bare]) {
			continue // "7-28 June", over a run of 14 June
		}
		for _, e := range es {
			for _, r := range e.readings {
				switch {
				case r.y == 0 || saysDate(titles[bare], r.day()):
				case i < bare:
					above[i] = true
				default:
					below[i] = true
				}
			}
		}
	}
	return above, below
}

// amongDays says whether one of the days that a line may mean lies between the first and the last that
// another line names, one of these days included.
func amongDays(line, day []evidence) bool {
	var first, last unit.Day
	n := 0
	for _, e := range line {
		for _, r := range e.readings {
			if r.y == 0 || r.order != "" && len(e.readings) > 1 {
				return false
			}
			if n++; n == 1 {
				first, last = r.day(), r.day()
			}
			first, last = min(first, r.day()), max(last, r.day())
		}
	}
	if n < 2 {
		return false
	}
	for _, e := range day {
		for _, r := range e.readings {
			if r.y == 0 {
				r.y, _, _ = first.Date()
			}
			if r.day() >= first && r.day() <= last {
				return true
			}
		}
	}
	return false
}
