package sheet

import (
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// reading is one way to read a date.
type reading struct {
	y, m, d int    // y 0: no year given
	order   string // "dmy", "mdy" or "ymd" for dates all in figures, "" where words or form settle it
}

func (r reading) day() unit.Day { return unit.NewDay(r.y, r.m, r.d) }

// foundDate is a date somewhere in a text, with every way it can be read.
type foundDate struct {
	from, to int // bytes of the text, the weekday beside it included
	readings []reading
	weekday  int    // 0 Sunday …; -1 none
	clock    string // time of day right after it, 09:30; "" none
	sep      byte   // separator of an all-figure date
}

func (f foundDate) settled() bool { return len(f.readings) == 1 && f.readings[0].y != 0 }

// Dates of runs are believed between these years; weekly timed runs are
// younger than the first, and no clock is read here.
const firstYear, lastYear = 1950, 2099

func validDate(y, m, d int) bool {
	if m < 1 || m > 12 || d < 1 || d > 31 {
		return false
	}
	if y == 0 {
		return d <= [...]int{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[m-1]
	}
	if y < firstYear || y > lastYear {
		return false
	}
	_, mm, dd := unit.NewDay(y, m, d).Date()
	return mm == m && dd == d
}

// fullYear widens a two-figure year: 00–49 are 2000–2049, 50–99 are 1950–1999.
func fullYear(y, figures int) int {
	switch {
	case figures == 4:
		return y
	case figures == 2 && y < 50:
		return 2000 + y
	case figures == 2:
		return 1900 + y
	}
	return -1
}

// token is a run of digits, of letters, or one other character.
type token struct {
	kind     byte // 'd', 'l', 's' (space), or the character
	from, to int
	n        int    // value of digits
	word     string // folded letters
}

func tokenize(s string) []token {
	toks := make([]token, 0, min(16, 1+len(s)/2))
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		j := i + size
		switch {
		case r >= '0' && r <= '9':
			n := int(r - '0')
			for j < len(s) && s[j] >= '0' && s[j] <= '9' {
				if j-i < 9 {
					n = n*10 + int(s[j]-'0')
				}
				j++
			}
			toks = append(toks, token{kind: 'd', from: i, to: j, n: n})
		case unicode.IsLetter(r):
			for j < len(s) {
				r, size := utf8.DecodeRuneInString(s[j:])
				if !unicode.IsLetter(r) && !unicode.Is(unicode.Mn, r) {
					break
				}
				j += size
			}
			toks = append(toks, token{kind: 'l', from: i, to: j, word: fold(s[i:j])})
		case unicode.IsSpace(r) || r == '_':
			toks = append(toks, token{kind: 's', from: i, to: j})
		default:
			k := byte('?')
			if r < utf8.RuneSelf {
				k = byte(r)
			}
			if r == '–' || r == '—' || r == '‑' {
				k = '-'
			}
			if r == '’' {
				k = '\''
			}
			if r == '·' {
				k = '.'
			}
			toks = append(toks, token{kind: k, from: i, to: j})
		}
		i = j
	}
	return toks
}

func (t token) digits() int { return t.to - t.from }

// isYear says whether a token is a believable year of four figures.
func (t token) isYear() bool {
	return t.kind == 'd' && t.digits() == 4 && t.n >= firstYear && t.n <= lastYear
}

// dateScan finds dates in the tokens of one text. loose also takes dates that
// are only plausible where a date is expected: 030126, 3.1. and 03-01.
type dateScan struct {
	s     string
	toks  []token
	loose bool
}

// findDates finds every date in a text.
func findDates(s string) []foundDate { return scanDates(s, false) }

// isDate says whether a text is one date and nothing else.
func isDate(s string) bool {
	fs := scanDates(s, true)
	return len(fs) == 1 && fs[0].from == 0 && fs[0].to == len(s)
}

func scanDates(s string, loose bool) []foundDate {
	digit := false
	for i := 0; i < len(s); i++ {
		if s[i] >= '0' && s[i] <= '9' {
			digit = true
			break
		}
	}
	if !digit || len(s) > 2000 {
		return nil
	}
	sc := dateScan{s: s, toks: tokenize(s), loose: loose}
	sc.mendMonths()
	sc.numberedMonths()
	var out []foundDate
	for i := 0; i < len(sc.toks); {
		f, next, ok := sc.at(i)
		if !ok {
			i++
			continue
		}
		if sc.namesPlace(f, i) || sc.countsWeeks(f, i) || numbersMonth(sc.toks, i) {
			i = next
			continue
		}
		f.weekday = -1
		f.from, f.to = sc.toks[i].from, sc.toks[next-1].to
		sc.weekday(&f, i, next)
		sc.clock(&f, next)
		out = append(out, f)
		i = next
	}
	if len(out) == 0 {
		if f, ok := sc.holiday(); ok {
			out = append(out, f)
		}
	}
	return out
}

// mendMonths puts right the names of months that are one letter off between a day and a
// year of four figures: 21st Novmber 2026. Of names of five letters two have changed places: Aprli;
// a Marsh may be one.
func (sc *dateScan) mendMonths() {
	for i, t := range sc.toks {
		if t.kind != 'l' || len(t.word) < 5 || i == 0 {
			continue
		}
		if _, known := monthNames[t.word]; known || titleWords[t.word] || fieldWords[t.word] || isGroup([]byte(t.word)) {
			continue
		}
		if _, next, ok := sc.year(i + 1); !ok || sc.tok(next-1).digits() != 4 || !sc.dayBefore(i) {
			continue
		}
		found, month := "", -1
		for name, m := range monthNames {
			if len(name) >= 5 && text.Within(t.word, name, 1) && (len(t.word) >= 6 || len(name) == 5 && anagram(t.word, name)) {
				if month >= 0 && m != month {
					found = ""
					break
				}
				found, month = name, m
			}
		}
		if found != "" {
			sc.toks[i].word = found
		}
	}
}

// numberedMonths reads months that Vietnamese numbers as ones with names, and the word for year behind
// them as a space: 15 tháng 3 năm 2026.
func (sc *dateScan) numberedMonths() {
	for i := 0; i < len(sc.toks); i++ {
		n := sc.tok(i + 2)
		if sc.toks[i].kind != 'l' || sc.toks[i].word != "thang" || sc.tok(i+1).kind != 's' || n.kind != 'd' || n.digits() > 2 || n.n < 1 || n.n > 12 {
			continue
		}
		sc.toks[i].to, sc.toks[i].word = n.to, fold(time.Month(n.n).String())
		sc.toks = slices.Delete(sc.toks, i+1, i+3)
		if sc.tok(i+2).word == "nam" && sc.tok(i+3).kind == 's' && sc.tok(i+4).isYear() {
			sc.toks[i+1].to = sc.toks[i+3].to
			sc.toks = slices.Delete(sc.toks, i+2, i+4)
		}
	}
}

// anagram says whether two words have the same letters.
func anagram(a, b string) bool {
	x, y := []byte(a), []byte(b)
	slices.Sort(x)
	slices.Sort(y)
	return string(x) == string(y)
}

// dayBefore says whether a day of a month stands before a token.
func (sc *dateScan) dayBefore(i int) bool {
	for k := i - 1; k >= 0 && k >= i-5; k-- {
		switch t := sc.tok(k); {
		case t.kind == 'd':
			return t.digits() <= 2 && t.n >= 1 && t.n <= 31
		case t.kind == 's' || t.kind == '.' || t.kind == ',' || t.kind == '-' || t.kind == 'l' && (joinWords[t.word] || ordinals[t.word]):
		default:
			return false
		}
	}
	return false
}

// numbersMonth says whether a figure is the number of the month behind it, after the year: "2026-02 February".
func numbersMonth(toks []token, i int) bool {
	if i < 2 || i+2 >= len(toks) || !toks[i-2].isYear() || toks[i].kind != 'd' {
		return false
	}
	m, known := monthNames[toks[i+2].word]
	return known && toks[i].n == m+1 && toks[i-1].kind != '/'
}

// namesPlace says whether a day and a month without a believable year are part of the name
// of a place: Plaza 25 de Mayo, Parc du 8 Mai 1945.
func (sc *dateScan) namesPlace(f foundDate, i int) bool {
	if len(f.readings) != 1 || f.readings[0].y != 0 {
		return false
	}
	for k := i - 1; k >= 0 && k >= i-5; k-- {
		switch t := sc.tok(k); {
		case t.kind == 's':
		case t.kind == 'l' && placeJoins[t.word]:
		case t.kind == 'l':
			return namedAfterDays[t.word]
		default:
			return false
		}
	}
	return false
}

// countsWeeks says whether the day of a date is the number of a week in its month: "Sat wk 3
// Nov 2026" is no third of November.
func (sc *dateScan) countsWeeks(f foundDate, i int) bool {
	if len(f.readings) != 1 || f.readings[0].order != "" || f.readings[0].d > 5 || sc.tok(i).kind != 'd' || sc.tok(i).digits() != 1 {
		return false
	}
	for i--; sc.tok(i).kind == 's' || sc.tok(i).kind == '.'; i-- {
	}
	return sc.tok(i).kind == 'l' && weekWords[sc.tok(i).word]
}

// countsMinutes says whether the figure before token i counts minutes: "Jo May, 24 min 10 s" has
// no day of May.
func (sc *dateScan) countsMinutes(i int) bool {
	if sc.tok(i).kind == 's' {
		i++
	}
	return sc.tok(i).kind == 'l' && clockUnits[sc.tok(i).word] == 'm'
}

// calendarWeekWords are words for a week in languages whose calendars count the weeks of the
// year as ISO 8601 does: German, Danish, Swedish, Norwegian, Finnish, Dutch. Common practice,
// no source. "Week 12" alone may be the twelfth of a series.
var calendarWeekWords = set("kw kalenderwoche uge vecka uke viikko")

// calendarWeek reads the week of a year with a weekday beside it: "KW 12/2026 (Donnerstag)",
// "torsdag uge 12, 2026".
func (sc *dateScan) calendarWeek(i int) (f foundDate, next int, ok bool) {
	if !calendarWeekWords[sc.tok(i).word] {
		return f, 0, false
	}
	j := sc.gap(i + 1)
	week := sc.tok(j)
	if week.kind != 'd' || week.digits() > 2 {
		return f, 0, false
	}
	y, next, ok := sc.year(j + 1)
	if !ok {
		return f, 0, false
	}
	beside := foundDate{weekday: -1}
	if sc.weekday(&beside, i, next); beside.weekday < 0 {
		return f, 0, false
	}
	r, ok := dayOfWeek(y, week.n, (beside.weekday+6)%7+1)
	f.readings = []reading{r}
	return f, next, ok
}

// dayOfWeek is a day of a week of ISO 8601; dow is 1 for Monday to 7 for Sunday. ok is false
// where the year has no such week, or there is no such day.
func dayOfWeek(year, week, dow int) (r reading, ok bool) {
	day := unit.NewDay(year, 1, 4)
	day += unit.Day((week-1)*7 + dow - 1 - (int(day.Weekday())+6)%7)
	y, w := day.ISOWeek()
	r.y, r.m, r.d = day.Date()
	return r, y == year && w == week && dow >= 1 && dow <= 7
}

// weekWords are words for a week, before its number.
var weekWords = set("week wk kw woche semaine semana settimana setmana uke uge vecka viikko tydzien tyden tyzden saptamana teden vika savaite nadal hafta седмица тиждень")

// namedAfterDays are kinds of places that are named after a day in Romance languages, where
// they stand before it. Common practice, no source.
var (
	namedAfterDays = set("plaza placa place parque parc rue avenue avenida stade estadio estadi praca via piazza largo calle boulevard barrio viale corso quai pont jardin jardim paseo passeio rua stadio parco allee square cours esplanade")
	placeJoins     = set("de del du da do des dei della delle dos das di")
)

func (sc *dateScan) tok(i int) token {
	if i < 0 || i >= len(sc.toks) {
		return token{}
	}
	return sc.toks[i]
}

// gap skips what may stand between the parts of a date.
func (sc *dateScan) gap(i int) int {
	for n := 0; n < 4; n++ {
		switch t := sc.tok(i); {
		case t.kind == 's' || t.kind == '.' || t.kind == ',' || t.kind == '-' || t.kind == '/' || t.kind == '\'':
			i++
		case t.kind == 'l' && (joinWords[t.word] || t.word == "d" && sc.tok(i+1).kind == '\''): // 9 d'agost
			i++
		default:
			return i
		}
	}
	return i
}

// yearGap is gap after a year that stands first. named says that a word for
// year followed it, or an ending, as in Latvian, Lithuanian and Basque: 2026. gada, 2026 m., 2026ko.
func (sc *dateScan) yearGap(i int) (next int, named bool) {
	for n := 0; n < 5; n++ {
		switch t := sc.tok(i); {
		case t.kind == 'l' && yearWords[t.word]:
			named = true
			i++
		case t.kind == 's' || t.kind == '.' || t.kind == ',' || t.kind == '-' || t.kind == '/':
			i++
		default:
			return i, named
		}
	}
	return i, named
}

var yearWords = set("m gada gads g metu god godine ko eko")

// eastAsian reads year, month and day with the word for each behind it: 2026年1月3日,
// 2026년 1월 3일.
func (sc *dateScan) eastAsian(i int) (f foundDate, next int, ok bool) {
	return sc.eastAsianFrom(i, 0, [3]int{}, 0)
}

// japaneseEra reads a day whose year is counted from the beginning of an era: 令和6年4月6日,
// and the first of them, 令和元年5月11日.
func (sc *dateScan) japaneseEra(i int) (f foundDate, next int, ok bool) {
	word, first := strings.CutSuffix(sc.s[sc.tok(i).from:sc.tok(i).to], "元年")
	for _, era := range japaneseEras {
		switch {
		case !strings.HasSuffix(word, era.name):
		case first:
			return sc.eastAsianFrom(i+1, 1, [3]int{1}, era.before)
		case sc.tok(i+1).from == sc.tok(i).to:
			return sc.eastAsianFrom(i+1, 0, [3]int{}, era.before)
		}
	}
	return f, 0, false
}

// japaneseEras have the year before their first (Shōwa, Heisei, Reiwa).
var japaneseEras = [...]struct {
	name   string
	before int
}{{"昭和", 1925}, {"平成", 1988}, {"令和", 2018}}

// eastAsianFrom reads those parts of a date from the k-th on; n has the ones before, and the
// year counts from another.
func (sc *dateScan) eastAsianFrom(i, k int, n [3]int, before int) (f foundDate, next int, ok bool) {
	for ; k < 3; k++ {
		words := [3]string{"年년", "月월", "日일"}[k]
		for k > 0 && sc.tok(i).kind == 's' {
			i++
		}
		number, word := sc.tok(i), sc.tok(i+1)
		if number.kind != 'd' || word.kind != 'l' || word.from != number.to {
			return f, 0, false
		}
		if r, _ := utf8.DecodeRuneInString(sc.s[word.from:]); !strings.ContainsRune(words, r) {
			return f, 0, false
		}
		n[k] = number.n
		i += 2
	}
	if n[0] += before; n[0] < firstYear || n[0] > lastYear || !validDate(n[0], n[1], n[2]) {
		return f, 0, false
	}
	f.readings = []reading{{y: n[0], m: n[1], d: n[2]}}
	return f, i, true
}

// twoDays reads two days in a row of one month, "3-4 January 2026", "3/4 January",
// "3 & 4 January 2026": which of them is not said.
func (sc *dateScan) twoDays(i int) (f foundDate, next int, ok bool) {
	first, j, ok := sc.day(i)
	if !ok {
		return f, 0, false
	}
	k := j
	for sc.tok(k).kind == 's' {
		k++
	}
	if t := sc.tok(k); t.kind != '-' && t.kind != '/' && t.kind != '&' && t.kind != '+' && !(t.kind == 'l' && andWords[t.word]) {
		return f, 0, false
	}
	k++
	for sc.tok(k).kind == 's' {
		k++
	}
	second, l, ok := sc.day(k)
	if !ok || second != first+1 {
		return f, 0, false
	}
	month := sc.tok(sc.gap(l))
	m, isMonth := monthNames[month.word]
	if month.kind != 'l' || !isMonth {
		return f, 0, false
	}
	y, next, _ := sc.year(sc.gap(l) + 1)
	next = max(next, sc.gap(l)+1)
	if !validDate(y, m+1, first) || !validDate(y, m+1, second) {
		return f, 0, false
	}
	f.readings = []reading{{y: y, m: m + 1, d: first}, {y: y, m: m + 1, d: second}}
	return f, next, true
}

var andWords = set("and und et y e en och og")

// roman reads a date whose month is a Roman numeral, as in Poland and Hungary:
// 3 I 2026, 3.I.2026. The year has four figures unless full stops or dashes stand
// without blanks on both sides of the month, 3.I.26, 3-i-26, where it may be written small
// as well. i is the token of day d, j the one after it.
func (sc *dateScan) roman(i, d, j int) (f foundDate, next int, ok bool) {
	k := sc.gap(j)
	t := sc.tok(k)
	if t.kind != 'l' || k == i+1 {
		return f, 0, false
	}
	m := romanMonths[sc.s[t.from:t.to]]
	last := sc.gap(k + 1)
	y := sc.tok(last)
	mark := sc.tok(k - 1).kind
	if close := (mark == '.' || mark == '-') && sc.tok(k+1).kind == mark && k == j+1 && last == k+2; close {
		m = romanMonths[strings.ToUpper(sc.s[t.from:t.to])]
	} else if y.digits() != 4 {
		return f, 0, false
	}
	year := fullYear(y.n, y.digits())
	if m == 0 || y.kind != 'd' || year < 0 || !validDate(year, m, d) {
		return f, 0, false
	}
	f.readings = []reading{{y: year, m: m, d: d}}
	return f, last + 1, true
}

var romanMonths = map[string]int{"I": 1, "II": 2, "III": 3, "IV": 4, "V": 5, "VI": 6, "VII": 7, "VIII": 8, "IX": 9, "X": 10, "XI": 11, "XII": 12}

var joinWords = set("of de del di den the da ta")
var ordinals = set("st nd rd th er eme e o a ste de re ier te an ean")

// day reads a day of the month with its ordinal ending.
func (sc *dateScan) day(i int) (d, next int, ok bool) {
	t := sc.tok(i)
	if t.kind != 'd' || t.digits() > 2 || t.n < 1 || t.n > 31 {
		return 0, i, false
	}
	i++
	if n := sc.tok(i); n.kind == 'l' && n.from == t.to && ordinals[n.word] {
		i++
	} else if n.kind == '?' && (strings.HasPrefix(sc.s[n.from:], "º") || strings.HasPrefix(sc.s[n.from:], "ª") || strings.HasPrefix(sc.s[n.from:], "°")) {
		i++
	}
	return t.n, i, true
}

// dayInWords reads a day of the month in words: "twelfth", "twenty-first".
func (sc *dateScan) dayInWords(i int) (d, next int, ok bool) {
	t := sc.tok(i)
	if t.kind != 'l' {
		return 0, i, false
	}
	if d = daysInWords[t.word]; d > 0 {
		return d, i + 1, true
	}
	tens := map[string]int{"twenty": 20, "thirty": 30}[t.word]
	if tens == 0 {
		return 0, i, false
	}
	j := sc.gap(i + 1)
	if d = daysInWords[sc.tok(j).word]; sc.tok(j).kind != 'l' || d == 0 || d > 9 || tens+d > 31 {
		return 0, i, false
	}
	return tens + d, j + 1, true
}

// inWords reads a date whose day is in words, with its year: "twelfth of January 2026".
func (sc *dateScan) inWords(i int) (f foundDate, next int, ok bool) {
	d, j, ok := sc.dayInWords(i)
	if before := sc.tok(i - 2).word; !ok || before == "twenty" || before == "thirty" {
		return f, 0, false
	}
	k := sc.gap(j)
	m, isMonth := monthNames[sc.tok(k).word]
	if sc.tok(k).kind != 'l' || !isMonth {
		return f, 0, false
	}
	y, next, dated := sc.year(k + 1)
	if !dated || !validDate(y, m+1, d) {
		return f, 0, false
	}
	f.readings = []reading{{y: y, m: m + 1, d: d}}
	return f, next, true
}

var daysInWords = func() map[string]int {
	days := map[string]int{"thirtieth": 30}
	for i, w := range text.Ordinals {
		days[w] = i + 1
	}
	return days
}()

// year reads a year after the rest of a date. Two figures count only where
// they can't be something else: "3 Jan 25 finishers", "3 Jan 9:30".
func (sc *dateScan) year(i int) (y, next int, ok bool) {
	j := sc.gap(i)
	t := sc.tok(j)
	if t.kind != 'd' {
		return 0, i, false
	}
	y = fullYear(t.n, t.digits())
	after := sc.tok(j + 1)
	if y < firstYear || y > lastYear || after.kind == ':' && (sc.tok(j+2).kind == 'd' || t.digits() != 4) {
		return 0, i, false
	}
	if m := sc.tok(j + 2); t.digits() == 4 && after.kind == '-' && m.kind == 'd' && m.digits() == 2 && sc.tok(j+3).kind == '-' && sc.tok(j+4).kind == 'd' {
		return 0, i, false // it begins a date of its own: "25 de Mayo 2026-11-21"
	}
	if t.digits() == 2 {
		if after.kind == 'l' && !sc.loose || after.kind == 'l' && after.from == t.to || (after.kind == '.' || after.kind == '/' || after.kind == '-') && sc.tok(j+2).kind == 'd' || after.kind == '%' {
			return 0, i, false
		}
		if between := sc.s[sc.toks[i].from:t.from]; strings.TrimSpace(strings.ReplaceAll(between, "_", " ")) == "" && between != "" && after.kind == 's' && sc.tok(j+2).kind == 'l' && !joinWords[sc.tok(j+2).word] && (!sc.loose || countedWords[sc.tok(j+2).word]) {
			return 0, i, false
		}
	}
	return y, j + 1, true
}

// dayWithYear says whether a day and its year follow a month: " 20, 2026" or " 20 2026".
func (sc *dateScan) dayWithYear(i int) bool {
	j := sc.gap(i)
	if t := sc.tok(j); t.kind != 'd' || t.digits() > 2 || t.n < 1 || t.n > 31 || sc.tok(j+1).kind != ',' && sc.tok(j+1).kind != 's' {
		return false
	}
	k := j + 1
	for sc.tok(k).kind == ',' || sc.tok(k).kind == 's' {
		k++
	}
	return sc.tok(k).isYear()
}

// shortYear reads a year of two figures behind a month although a word follows, where the weekday
// before the date, whose day is at token i, is that of the day: "Sat 20 Jun 26 Bramley Fields". The
// year is 0 where it is none.
func (sc *dateScan) shortYear(i, at, m, d int) (y, next int) {
	j := sc.gap(at)
	t := sc.tok(j)
	if t.kind != 'd' || t.digits() != 2 || sc.tok(j+1).kind != 's' || sc.tok(j+2).kind != 'l' || countedWords[sc.tok(j+2).word] {
		return 0, at
	}
	y = fullYear(t.n, 2)
	f := foundDate{weekday: -1, from: sc.toks[i].from}
	sc.weekday(&f, i, len(sc.toks))
	if f.weekday < 0 || !validDate(y, m, d) || int(unit.NewDay(y, m, d).Weekday()) != f.weekday {
		return 0, at
	}
	return y, j + 1
}

// countedWords after a number say that it is no year: "3 Jan 25 runners".
var countedWords = set("runners runner finishers finisher results people walkers km k miles mile min mins minutes pm am starters entries juniors teams laps")

// at tries to read a date that starts at token i.
func (sc *dateScan) at(i int) (f foundDate, next int, ok bool) {
	t := sc.tok(i)
	if i > 0 {
		p := sc.tok(i - 1)
		if t.kind == 'd' && (p.kind == ':' || p.kind == '#' || (p.kind == '.' || p.kind == '/') && sc.tok(i-2).kind == 'd') {
			return f, 0, false
		}
		if t.kind == 'd' && t.digits() <= 2 && p.kind == 'l' && p.to == t.from && sc.dateFrom(i+2) {
			return f, 0, false // the "w12" of "Alder_Bank_w12_20_06_26"
		}
		if y := sc.tok(i - 2); t.kind == 'd' && p.kind == '-' && y.digits() == 4 && y.n >= 1800 && y.n < firstYear {
			return f, 0, false // 1900-01-01: the first day of a spreadsheet, under a time
		}
	}
	switch t.kind {
	case 'd':
		if f, next, ok = sc.figures(i); ok {
			return f, next, true
		}
		if f, next, ok = sc.eastAsian(i); ok {
			return f, next, true
		}
		if t.isYear() { // 2026 January 3
			j, named := sc.yearGap(i + 1)
			if t := sc.tok(j); t.kind == 'l' && romanMonths[sc.s[t.from:t.to]] > 0 { // 2026. I. 3., as in Hungary
				m := romanMonths[sc.s[t.from:t.to]]
				if d, k, isDay := sc.day(sc.gap(j + 1)); isDay && validDate(sc.tok(i).n, m, d) {
					f.readings = []reading{{y: sc.tok(i).n, m: m, d: d}}
					return f, k, true
				}
			}
			if m, isMonth := monthNames[sc.tok(j).word]; isMonth && sc.tok(j).kind == 'l' {
				if d, k, isDay := sc.day(sc.gap(j + 1)); isDay && validDate(t.n, m+1, d) {
					f.readings = []reading{{y: t.n, m: m + 1, d: d}}
					return f, k, true
				}
			} else if d, k, isDay := sc.day(j); named && isDay { // 2026. gada 3. janvāris
				k = sc.gap(k)
				if m, isMonth := monthNames[sc.tok(k).word]; isMonth && sc.tok(k).kind == 'l' && validDate(t.n, m+1, d) {
					f.readings = []reading{{y: t.n, m: m + 1, d: d}}
					return f, k + 1, true
				}
			}
		}
		if f, next, ok = sc.twoDays(i); ok {
			return f, next, true
		}
		d, j, isDay := sc.day(i)
		if !isDay {
			return f, 0, false
		}
		k := sc.gap(j)
		mt := sc.tok(k)
		m, isMonth := monthNames[mt.word]
		if second := sc.tok(sc.gap(k + 1)); !isMonth && second.word == "fomhair" {
			// the Irish for September and October, "middle of autumn", "end of autumn" (CLDR, ga)
			if m, isMonth = map[string]int{"mean": 8, "deireadh": 9}[mt.word], mt.word == "mean" || mt.word == "deireadh"; isMonth {
				k = sc.gap(k + 1)
			}
		}
		if mt.kind != 'l' || !isMonth {
			return sc.roman(i, d, j)
		}
		if sc.dayWithYear(k + 1) {
			return f, 0, false // "Week 12 - June 20, 2026"
		}
		y, next, _ := sc.year(k + 1)
		if y == 0 {
			y, next = sc.shortYear(i, k+1, m+1, d)
		}
		if next <= k {
			next = k + 1
		}
		if !validDate(y, m+1, d) {
			return f, 0, false
		}
		f.readings = []reading{{y: y, m: m + 1, d: d}}
		if text.Listopad(mt.word) && strings.Contains(sc.s[t.to:mt.from], ".") && validDate(y, 10, d) {
			// Croats write a full stop after the day, Poles none.
			f.readings = append(f.readings, reading{y: y, m: 10, d: d})
		}
		return f, next, true
	case 'l':
		m, isMonth := monthNames[t.word]
		if !isMonth {
			if f, next, ok = sc.japaneseEra(i); ok {
				return f, next, true
			}
			if f, next, ok = sc.inWords(i); ok {
				return f, next, true
			}
			return sc.calendarWeek(i)
		}
		j := sc.gap(i + 1)
		if j == i+1 && sc.tok(j).kind == 'd' && sc.tok(j).digits() > 2 {
			return f, 0, false
		}
		d, k, isDay := sc.day(j)
		if !isDay {
			if d, k, isDay = sc.dayInWords(j); isDay {
				_, _, isDay = sc.year(k) // "May second team"
			}
		}
		if m := sc.tok(k); isDay && (m.kind == '.' || m.kind == '\'') && m.from == sc.tok(k-1).to && sc.tok(k+1).kind == 'd' && sc.tok(k+1).from == m.to && sc.tok(k+1).digits() == 2 && sc.tok(k+1).n < 60 {
			return f, 0, false // "Orr, Jan 28.50", a time
		}
		if !isDay || sc.tok(k).kind == ':' || sc.tok(k).kind == 'l' && sc.tok(k).from == sc.tok(k-1).to || sc.countsMinutes(k) {
			return f, 0, false
		}
		y, next, _ := sc.year(k)
		if next <= k {
			next = k
		}
		if !validDate(y, m+1, d) {
			return f, 0, false
		}
		f.readings = []reading{{y: y, m: m + 1, d: d}}
		return f, next, true
	}
	return f, 0, false
}

// dateFrom says whether a date begins at a token behind a blank, which is no part of one that began
// before it.
func (sc *dateScan) dateFrom(i int) bool {
	if sc.tok(i-1).kind != 's' {
		return false
	}
	_, next, ok := sc.at(i)
	return ok && sc.tok(next-1).kind == 'd' && sc.tok(next-1).digits() != 1
}

// figures reads dates that are all figures: 2026-01-03, 3.1.2026, 03/04/26,
// 20260103, 2026-W01-6 (ISO 8601), and if loose 030126, 03-01 and 3.1.
func (sc *dateScan) figures(i int) (f foundDate, next int, ok bool) {
	a := sc.tok(i)
	switch a.digits() {
	case 8:
		y, m, d := a.n/10000, a.n/100%100, a.n%100
		if validDate(y, m, d) {
			f.readings = append(f.readings, reading{y, m, d, ""})
		} else {
			f.readings = orders(a.n/1000000, a.n/10000%100, a.n%10000, true)
		}
		return f, i + 1, len(f.readings) > 0
	case 6:
		if !sc.loose {
			return f, 0, false
		}
		p, q, r := a.n/10000, a.n/100%100, a.n%100
		f.readings = orders(p, q, fullYear(r, 2), true)
		if y := fullYear(p, 2); validDate(y, q, r) {
			f.readings = addReading(f.readings, reading{y, q, r, "ymd"})
		}
		return f, i + 1, len(f.readings) > 0
	case 1, 2, 4:
	default:
		return f, 0, false
	}
	sep := sc.tok(i + 1)
	if a.digits() == 4 && sep.kind == '-' && sc.tok(i+2).kind == 'l' && sc.tok(i+2).word == "w" && sc.tok(i+3).digits() == 2 && sc.tok(i+4).kind == '-' && sc.tok(i+5).digits() == 1 {
		week, dow := sc.tok(i+3).n, sc.tok(i+5).n
		if r, ok := dayOfWeek(a.n, week, dow); ok && a.n >= firstYear && a.n <= lastYear {
			f.readings = []reading{r}
			return f, i + 6, true
		}
	}
	j := i + 1
	spaced := false
	for sc.tok(j).kind == 's' { // "3. 1. 2026" and "3 / 1 / 2026" have spaces about the mark
		j++
		spaced = true
	}
	sep = sc.tok(j)
	mark := sep.kind
	if mark == '-' || mark == '/' || mark == '.' {
		j++
		for sc.tok(j).kind == 's' {
			j++
			spaced = true
		}
	} else if spaced {
		mark = ' '
	} else {
		return f, 0, false
	}
	b := sc.tok(j)
	if b.kind != 'd' || b.digits() > 2 {
		return f, 0, false
	}
	k := j + 1
	for sc.tok(k).kind == 's' {
		k++
	}
	if mark == '/' && !spaced && a.digits() <= 2 {
		if f, next, ok = sc.yearApart(i, a, b, j+1); ok {
			return f, next, true
		}
	}
	if mark != ' ' {
		if sc.tok(k).kind == mark && sc.tok(k+1).kind == '\'' && sc.tok(k+2).digits() == 2 {
			k++ // 14.03.'26
		}
		if sc.tok(k).kind != mark && sc.tok(k).kind != '\'' {
			return sc.dayMonth(i, a, b, mark, j+1, spaced)
		}
		k++
		for sc.tok(k).kind == 's' {
			k++
		}
	} else if k == j+1 {
		return f, 0, false
	}
	c := sc.tok(k)
	if c.kind != 'd' {
		return sc.dayMonth(i, a, b, mark, j+1, spaced)
	}
	if sc.tok(k+1).kind == ':' && (sc.tok(k+2).kind == 'd' || mark == ' ' && c.digits() != 4) || sc.tok(k+1).kind == mark && mark != ' ' && sc.tok(k+2).kind == 'd' {
		return f, 0, false
	}
	f.sep = mark
	switch {
	case a.digits() == 4 && c.digits() <= 2:
		if !validDate(a.n, b.n, c.n) {
			if mark != '-' && validDate(a.n, c.n, b.n) { // 2026/31/01, seen where a form was filled in wrongly
				f.readings = []reading{{a.n, c.n, b.n, ""}}
				return f, k + 1, true
			}
			return f, 0, false
		}
		f.readings = []reading{{a.n, b.n, c.n, ""}}
	case a.digits() <= 2 && (c.digits() == 4 || c.digits() == 2):
		if mark == ' ' && (c.digits() != 4 && !sc.loose || a.digits() == 1 && b.digits() == 1) {
			return f, 0, false
		}
		f.readings = orders(a.n, b.n, fullYear(c.n, c.digits()), mark == '/' || mark == '-' || mark == ' ')
		if y := fullYear(a.n, 2); len(f.readings) == 0 && a.digits() == 2 && c.digits() == 2 && validDate(y, b.n, c.n) {
			f.readings = []reading{{y, b.n, c.n, "ymd"}}
		} else if len(f.readings) > 0 && mark == '-' && a.digits() == 2 && c.digits() == 2 && y > f.readings[0].y+5 && validDate(y, b.n, c.n) {
			f.readings = addReading(f.readings, reading{y, b.n, c.n, "ymd"}) // 24-11-09: rather of 2024 than of 2009
		}
	}
	return f, k + 1, len(f.readings) > 0
}

// yearApart reads the year behind a stroke date as it stands in the North, "3/1-2026", "3/1 -26",
// where the day always comes first, and behind a blank, "3/1 2026", unless a word before it
// counts, "run 3/10 2026". i is the token of a, at the one behind b.
func (sc *dateScan) yearApart(i int, a, b token, at int) (f foundDate, next int, ok bool) {
	blank := sc.tok(at).kind == 's'
	if blank && sc.tok(at+1).kind == '-' {
		at, blank = at+1, false
	}
	y := sc.tok(at + 1)
	if !blank && sc.tok(at).kind != '-' || y.kind != 'd' || y.digits() != 4 && (blank || y.digits() != 2) || sc.tok(at+2).kind == ':' && sc.tok(at+3).kind == 'd' || sc.tok(at+2).kind == '-' && sc.tok(at+3).kind == 'd' {
		return f, 0, false
	}
	if _, month := monthNames[sc.tok(sc.gap(at+2)).word]; month {
		return f, 0, false // "run 3/10 -14 March"
	}
	for k := i - 1; blank && k >= 0 && k >= i-2; k-- {
		if t := sc.tok(k); t.kind == 'l' && titleWords[t.word] && !joinWords[t.word] && t.word != "km" || t.kind == '#' {
			return f, 0, false
		}
	}
	f.sep = '/'
	f.readings = orders(a.n, b.n, fullYear(y.n, y.digits()), blank)
	return f, at + 2, len(f.readings) > 0
}

// dayMonth reads a date of two figures, without a year: only where loose.
func (sc *dateScan) dayMonth(i int, a, b token, mark byte, next int, spaced bool) (f foundDate, _ int, ok bool) {
	if !sc.loose || a.digits() > 2 || mark == ' ' || spaced && mark == '-' {
		return f, 0, false
	}
	if _, month := monthNames[sc.tok(sc.gap(next)).word]; month && b.n == a.n+1 {
		return f, 0, false // 3-4 January: two days
	}
	f.sep = mark
	f.readings = orders(a.n, b.n, 0, mark != '.' || sc.tok(next).kind != '.')
	if mark == '.' && sc.tok(next).kind == '.' {
		next++
	}
	return f, next, len(f.readings) > 0
}

// orders gives day-first and, where american is allowed, month-first readings.
// Dates with full stops are day-first everywhere (CLDR short date patterns).
func orders(a, b, y int, american bool) (rs []reading) {
	if y < 0 {
		return nil
	}
	if validDate(y, b, a) {
		rs = append(rs, reading{y, b, a, "dmy"})
	}
	if (american || len(rs) == 0) && validDate(y, a, b) {
		rs = addReading(rs, reading{y, a, b, "mdy"})
	}
	return rs
}

// addReading leaves out a second way to the same day.
func addReading(rs []reading, r reading) []reading {
	for _, o := range rs {
		if o.y == r.y && o.m == r.m && o.d == r.d {
			return rs
		}
	}
	return append(rs, r)
}

// weekday looks for a weekday right before the date, or after it.
func (sc *dateScan) weekday(f *foundDate, i, next int) {
	j := i - 1
	for n := 0; n < 4 && j >= 0; n++ {
		switch t := sc.tok(j); {
		case t.kind == 's' || t.kind == ',' || t.kind == '.' || t.kind == '-' || t.kind == '(' || t.kind == 'l' && (joinWords[t.word] || t.word == "den" || t.word == "feira"):
			j--
			continue
		case t.kind == 'l':
			d, ok := weekdayNames[t.word]
			if !ok {
				d, ok = shortWeekdays[t.word]
				if len(f.readings) == 1 && f.readings[0].y != 0 && !sc.loose && strings.ToLower(sc.s[t.from:t.to]) != "sø" {
					if day := int(f.readings[0].day().Weekday()); daysInTwoLetters[day][t.word] {
						d, ok = day, true
					}
				}
			}
			if ok && !(t.word == "to" && sc.until(f, j)) && !sc.state(f, j, d) {
				f.weekday, f.from = d, t.from
			}
		}
		break
	}
	if f.weekday >= 0 {
		return
	}
	for j = next; j < next+4; j++ {
		switch t := sc.tok(j); {
		case t.kind == 's' || t.kind == ',' || t.kind == '(' || t.kind == '-' || t.kind == '?' && strings.HasPrefix(sc.s[t.from:], "（"):
			continue
		case t.kind == 'l':
			if d, ok := weekdayNames[t.word]; ok && len(t.word) >= 3 && !(t.word == "quinta" && isQuinta(strings.Fields(sc.s[t.from:]))) {
				f.weekday, f.to = d, t.to
			} else if d, ok := eastAsianWeekday(sc.s[t.from:t.to]); ok {
				f.weekday, f.to = d, t.to
			}
		}
		return
	}
}

// state says whether the letters at j before a date stand for a state behind a town, "Corner Creek, MI
// November 19, 2022", and for no weekday: it is another day.
func (sc *dateScan) state(f *foundDate, j, weekday int) bool {
	t := sc.tok(j)
	if !stateCodes[sc.s[t.from:t.to]] || len(f.readings) != 1 || f.from >= len(sc.s) || digitsOnly(sc.s[f.from:f.from+1]) {
		return false // days stand before months where Mi is Wednesday
	}
	r := f.readings[0]
	return r.y == 0 || int(r.day().Weekday()) != weekday
}

// until says whether the "to" at j before a date is the English word and no Thursday of the north:
// a date or a word for putting off stands before it, or the day is another one.
func (sc *dateScan) until(f *foundDate, j int) bool {
	if len(f.readings) == 1 && f.readings[0].y != 0 && f.readings[0].day().Weekday() != time.Thursday {
		return true
	}
	before := sc.tok(j - 1)
	if before.kind == 's' {
		before = sc.tok(j - 2)
	}
	return before.kind == 'd' || before.kind == 'l' && putOffWords[before.word]
}

// putOffWords are English words for that.
var putOffWords = set("moved postponed rescheduled deferred delayed back off january february march april may june july august september october november december")

// eastAsianWeekday reads the weekday behind a date, mostly in brackets: (土), 土曜日, (토), 토요일.
func eastAsianWeekday(word string) (d int, ok bool) {
	for _, of := range [...]string{"曜日", "曜", "요일"} {
		word = strings.TrimSuffix(word, of)
	}
	for _, days := range [...]string{"日月火水木金土", "일월화수목금토"} {
		if i := strings.Index(days, word); i >= 0 && utf8.RuneCountInString(word) == 1 {
			return i / len("日"), true
		}
	}
	return 0, false
}

// clock looks for a time of day right after the date: 2026-01-03T09:00:00.
func (sc *dateScan) clock(f *foundDate, next int) {
	j := next
	for j < next+3 && (sc.tok(j).kind == 's' || sc.tok(j).kind == ',' || sc.tok(j).kind == 'l' && (sc.tok(j).word == "t" || sc.tok(j).word == "at" || sc.tok(j).word == "um")) {
		j++
	}
	if text, end, ok := sc.clockAt(j); ok {
		f.clock, f.to = text, sc.tok(end-1).to
	}
}

// clockAt reads a time of day: 9:30, 09:30:00, 9.30am, 9am, 9h30, 10 Uhr.
func (sc *dateScan) clockAt(j int) (text string, next int, ok bool) {
	h := sc.tok(j)
	if h.kind != 'd' || h.digits() > 2 || h.n > 23 {
		return "", 0, false
	}
	min, k := 0, j+1
	sure := false
	if m := sc.tok(k + 1); (sc.tok(k).kind == ':' || sc.tok(k).kind == '.' || sc.tok(k).kind == 'l' && sc.tok(k).word == "h") && m.kind == 'd' && m.digits() == 2 && m.n < 60 {
		sure = sc.tok(k).kind != '.'
		min, k = m.n, k+2
		if s := sc.tok(k + 1); sc.tok(k).kind == ':' && s.kind == 'd' && s.digits() == 2 {
			k += 2
			if sc.tok(k).kind == '.' && sc.tok(k+1).kind == 'd' {
				k += 2
			}
		}
	} else if sc.tok(k).kind == 'l' && sc.tok(k).word == "h" {
		sure, k = true, k+1
	}
	e := k
	if sc.tok(e).kind == 's' {
		e++
	}
	hour := h.n
	switch w := sc.tok(e); {
	case w.kind == 'l' && w.word == "am":
		hour, sure, k = hour%12, true, e+1
	case w.kind == 'l' && w.word == "pm" && hour <= 12:
		hour, sure, k = hour%12+12, true, e+1
	case w.kind == 'l' && (w.word == "uhr" || w.word == "hrs"):
		sure, k = true, e+1
	}
	if !sure {
		return "", 0, false
	}
	return twoDigits(hour) + ":" + twoDigits(min), k, true
}

func twoDigits(n int) string { return string([]byte{'0' + byte(n/10), '0' + byte(n%10)}) }
