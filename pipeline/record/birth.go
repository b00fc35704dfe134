package record

import (
	"bytes"
	"regexp"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/age"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// ageCell is one cell of an age or year column in pieces.
type ageCell struct {
	n          int  // the number
	decimals   bool // digits other than 0 follow a point
	fine       bool // two of them or more
	blank      bool // nothing, or a sign for "not given"
	sentinel   bool // 0 or 99: as an age a sign for "not given", as a year of birth 2000 or 1999
	text       bool // anything else: perhaps a group or a date
	apostrophe bool // before the number: '85
}

// lexAge reads plain numbers without folding: 41, 41.0, 1985.
func lexAge(s string) ageCell {
	c := ageCell{}
	i := 0
	if len(s) > 1 && s[0] == '\'' { // '85, or a spreadsheet's mark for text
		s = s[1:]
		c.apostrophe = true
	}
	for ; i < len(s) && s[i] >= '0' && s[i] <= '9'; i++ {
		if i == 4 {
			return ageCell{text: true}
		}
		c.n = c.n*10 + int(s[i]-'0')
	}
	if i == 0 {
		switch s {
		case "", "-", "--", "?", "n/a", "N/A", "na", "NA", "none", "unknown", "Unknown", ".", "/", "x", "X":
			return ageCell{blank: true}
		}
		return ageCell{text: true}
	}
	if i < len(s) && (s[i] == '.' || s[i] == ',') {
		point := i
		for i++; i < len(s) && s[i] >= '0' && s[i] <= '9'; i++ {
			c.fine = c.fine || i > point+1
			c.decimals = c.decimals || s[i] != '0'
		}
	}
	if i < len(s) {
		return ageCell{text: true}
	}
	// Signs for "not known" (common practice, no source); somebody of 99 is
	// asked for by hand.
	c.sentinel = !c.decimals && (c.n == 0 || c.n == 99)
	if c.n == 999 || c.n == 9999 || c.n == 1900 {
		return ageCell{blank: true}
	}
	return c
}

// ageUnits may follow an age: 41 yrs, 41 ans.
var ageUnits = wordSet(text.AgeUnits)

// ageWithUnit reads "41 yrs" and "age 41" from a folded cell.
func ageWithUnit(b []byte) (int, bool) {
	s := strings.TrimPrefix(strings.TrimPrefix(string(b), "aged "), "age ")
	n, i := 0, 0
	for ; i < len(s) && i < 3 && s[i] >= '0' && s[i] <= '9'; i++ {
		n = n*10 + int(s[i]-'0')
	}
	rest := strings.Trim(s[i:], " .")
	if i > 0 && monthsBehind.MatchString(rest) {
		return n, true // 43y 5m
	}
	return n, i > 0 && (ageUnits[rest] || rest == "" && len(s) < len(b))
}

// monthsBehind are the months of an age in years and months.
var monthsBehind = regexp.MustCompile(`^(?:y|yr|yrs|years?|j|jahre|ans|a) ?(?:,|and|und|et)? ?\d{1,2} ?(?:m|mo|mos|mths?|months?|monate?|mois)$`)

// dateCell is a birth date as three numbers in the order printed.
type dateCell struct {
	a, b, c int
	order   dateOrder // settled by the cell itself, or undecided
	short   bool      // all three have two figures at most, so that any may be the year
}

// dateAnswers are how an order is written in an answer.
var dateAnswers = map[dateOrder]string{dayFirst: "dmy", monthFirst: "mdy", yearFirst: "ymd"}

// answeredOrder is the order that an answer says, undecided for none.
func answeredOrder(answer string) dateOrder {
	for o, a := range dateAnswers {
		if a == answer {
			return o
		}
	}
	return undecided
}

type dateOrder uint8

const (
	undecided dateOrder = iota
	dayFirst
	monthFirst
	yearFirst
)

// monthWords are the months by name or short name, folded.
var monthWords = text.Months(func(w string) string { return string(fold(nil, w)) })

// lexDate reads a birth date from a folded cell: 1985-01-03, 3.1.1985,
// 03/01/85, 85-01-03, 3 Jan 1985, Jan 3, 1985, 3.I.1985, 19850103, 850103, 030185, with a day of the week or a word for born before it. Of eight
// figures a spreadsheet may have taken the first, a zero. A time of day behind
// it is passed over.
func lexDate(b []byte) (dateCell, bool) {
	b = bytes.TrimLeft(b, "*")
	if i := bytes.IndexByte(b, ' '); i > 0 && bornWords[strings.Trim(string(b[:i]), ".:")] {
		b = bytes.TrimLeft(b[i:], " ") // born 3.1.1985
	}
	var n [3]int
	var digits [3]int
	k, month, monthAt := 0, 0, -1
	if len(b) == 8 && allDigits(b) {
		if y := atoi(b[:4]); y >= 1900 && y < 2100 && atoi(b[4:6]) <= 12 {
			return dateCell{y, atoi(b[4:6]), atoi(b[6:]), yearFirst, false}, true
		}
		return dateCell{atoi(b[:2]), atoi(b[2:4]), atoi(b[4:]), undecided, false}, true
	}
	if len(b) == 7 && allDigits(b) && b[3] <= '2' {
		return dateCell{atoi(b[:1]), atoi(b[1:3]), atoi(b[3:]), undecided, false}, true
	}
	if len(b) == 6 && allDigits(b) {
		return dateCell{atoi(b[:2]), atoi(b[2:4]), atoi(b[4:]), undecided, true}.ordered(), true
	}
	for i := 0; i < len(b) && k < 3; {
		switch ch := b[i]; {
		case ch >= '0' && ch <= '9':
			j := i
			for j < len(b) && b[j] >= '0' && b[j] <= '9' {
				j++
			}
			if j-i > 4 {
				return dateCell{}, false
			}
			n[k], digits[k] = atoi(b[i:j]), j-i
			k++
			i = j
		case ch >= 'a' && ch <= 'z':
			j := i
			for j < len(b) && b[j] >= 'a' && b[j] <= 'z' {
				j++
			}
			w := b[i:j]
			i = j
			m, ok := monthWords[string(w)]
			if roman := romanMonths[string(w)]; !ok && roman > 0 && k == 1 {
				m, ok = roman, true // 3.I.1985
			}
			if ok && month == 0 {
				month, monthAt = m, k
				n[k], digits[k] = m, 2
				k++
			} else if !dateFillers[string(w)] && (k > 0 || !dayOfWeek[string(w)]) {
				return dateCell{}, false
			}
		case ch == '-' || ch == '/' || ch == '.' || ch == ' ' || ch == ',' || ch == '\'' || ch == '_':
			i++
		case ch >= utf8.RuneSelf && k > 0: // 1985年1月3日
			r, size := utf8.DecodeRune(b[i:])
			if !strings.ContainsRune("年月日년월일г", r) {
				return dateCell{}, false
			}
			i += size
		default:
			return dateCell{}, false
		}
	}
	if k < 3 {
		return dateCell{}, false
	}
	d := dateCell{n[0], n[1], n[2], undecided, max(digits[0], digits[1], digits[2]) <= 2 && monthAt < 0}
	switch {
	case digits[0] == 4:
		d.order = yearFirst
	case monthAt == 1:
		d.order = dayFirst
	case monthAt == 0:
		d.order = monthFirst
	case monthAt == 2 || digits[1] == 4:
		return dateCell{}, false
	default:
		d = d.ordered()
	}
	return d, true
}

// ordered is the date with the order that its numbers show. Of two figures each, a day first
// or a year first is left to the column, unless only one can be.
func (d dateCell) ordered() dateCell {
	switch {
	case d.short && d.a > 31:
		d.order = yearFirst
	case d.a > 12:
		d.order = dayFirst
	case d.b > 12:
		d.order = monthFirst
	}
	return d
}

// romanMonths are the months in Roman figures, as some countries write them behind the day.
var romanMonths = map[string]int{"i": 1, "ii": 2, "iii": 3, "iv": 4, "v": 5, "vi": 6, "vii": 7, "viii": 8, "ix": 9, "x": 10, "xi": 11, "xii": 12}

// dayOfWeek are days of the week before a date.
var dayOfWeek = wordSet(`mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|monday|tuesday|wednesday|thursday|friday|saturday|sunday|mo|di|mi|do|fr|sa|so|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonntag|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche`)

var dateFillers = wordSet(`st|nd|rd|th|de|of|den|le|the|er|t`)

func allDigits(b []byte) bool {
	for _, ch := range b {
		if ch < '0' || ch > '9' {
			return false
		}
	}
	return true
}

func atoi(b []byte) int {
	n := 0
	for _, ch := range b {
		n = n*10 + int(ch-'0')
	}
	return n
}

// day gives the birth date under the column's order. on completes two-digit
// years. ok is false for a date that no calendar has.
func (d dateCell) day(column dateOrder, on unit.Day) (unit.Day, bool) {
	if d.order != undecided && !(d.short && column == yearFirst) {
		column = d.order
	}
	y, m, dd := d.c, d.b, d.a
	switch column {
	case yearFirst:
		y, m, dd = d.a, d.b, d.c
	case monthFirst:
		m, dd = d.a, d.b
	}
	y = fullYear(y, on)
	day := unit.NewDay(y, m, dd)
	yy, mm, ddd := day.Date()
	return day, yy == y && mm == m && ddd == dd
}

// monthOfBirth reads a month and a year, 5/1984, 1984-05 or May 1984, from a folded cell.
func monthOfBirth(b []byte) (age.Window, bool) {
	fields := strings.FieldsFunc(string(b), func(r rune) bool { return strings.ContainsRune("/.- ,", r) })
	if len(fields) != 2 {
		return age.Window{}, false
	}
	month, year := fields[0], fields[1]
	if len(month) == 4 && allDigits([]byte(month)) {
		month, year = year, month
	}
	m := monthWords[month]
	if m == 0 && len(month) <= 2 && allDigits([]byte(month)) {
		m = atoi([]byte(month))
	}
	if m < 1 || m > 12 || len(year) != 4 || !allDigits([]byte(year)) {
		return age.Window{}, false
	}
	y := atoi([]byte(year))
	if y < 1900 || y >= 2100 {
		return age.Window{}, false
	}
	return age.Window{Lo: unit.NewDay(y, m, 1), Hi: unit.NewDay(y+m/12, m%12+1, 1) - 1}, true
}

// numberMeaning is what bare numbers of an age or year column stand for.
type numberMeaning uint8

const (
	agesInYears numberMeaning = iota
	twoDigitYears
	firstAges // 35, 40, 45: groups
	noAges    // 64.31: an age grade or another figure
)

// ageColumn settles a column of ages or years of birth. Cells that hold
// groups or dates go to the group column's reader or to lexDate.
type ageColumn struct {
	yearHeading bool
	numbers     int
	on          unit.Day // of the run of the last row
	affixes     []affix
	years       int // 1900 and above
	apostrophes int // numbers with an apostrophe before them
	decimals    int
	fives       int
	seen        [128]int32
	texts       int // groups, dates, anything else
	meaning     numberMeaning
	starts      []int
}

func (k *ageColumn) observe(c ageCell) {
	switch {
	case c.blank || c.sentinel:
	case c.text:
		k.texts++
	case c.n >= 1900:
		k.years++
	default:
		k.numbers++
		if c.apostrophe {
			k.apostrophes++
		}
		if c.decimals && c.fine { // an age in tenths, 34.5, is one in whole years begun
			k.decimals++
		}
		if c.n%5 == 0 {
			k.fives++
		}
		if c.n < len(k.seen) {
			k.seen[c.n]++
		}
	}
}

func (k *ageColumn) settle() {
	distinct := 0
	k.settleAffixes()
	for n, seen := range k.seen {
		if seen > 0 {
			distinct++
			if n%5 == 0 {
				k.starts = append(k.starts, n)
			}
		}
	}
	switch {
	case 2*k.decimals > k.numbers:
		k.meaning = noAges
	case k.yearHeading && k.years == 0 && 2*k.apostrophes < k.numbers && k.ratherAges():
	case k.yearHeading || k.years > 3*k.numbers && k.numbers > 0:
		k.meaning = twoDigitYears
	case k.numbers >= 8 && k.fives == k.numbers && distinct >= 3:
		k.meaning = firstAges // by chance: one in 390 000
	}
}

func (k *ageColumn) describe() (means, why string) {
	switch {
	case k.numbers == 0 && k.years > 0:
		return "year of birth", "four-digit years"
	case k.numbers == 0 && k.texts > 0:
		return "age groups or birth dates", "no bare numbers"
	case k.meaning == noAges:
		return "not used: these are no ages in whole years", "most numbers have decimals"
	case k.meaning == twoDigitYears:
		return "year of birth, two digits", "the heading or the other cells say year"
	case k.meaning == firstAges:
		return "first age of a group", "every number is a multiple of five"
	}
	return "age in whole years", "whole numbers"
}
