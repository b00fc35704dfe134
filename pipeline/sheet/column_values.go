package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// courseByValues finds the course of a season list under a heading that is not
// known: its values are known courses, or it stands beside the date and keeps
// its value for many rows.
func (s *settler) courseByValues(book *courseBook) {
	date := s.find(Date)
	if date < 0 || s.find(Course) >= 0 {
		return
	}
	for i := range s.profiles {
		if s.columns[i].Meaning != Other {
			continue
		}
		// Blank cells repeat the one above in both columns.
		known, filled, words, rows, changes := 0, 0, 0, 0, 0
		texts, days := map[string]bool{}, map[string]bool{}
		lastDate, lastText := "", ""
		blank, again := false, false                               // after a blank cell the same text stands again, as a note does
		for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
			d, c := trim(cellAt(r.cells, date)), trim(cellAt(r.cells, i))
			switch kindOf(d) {
			case kText, kSex, kGroup, kStatus:
				continue // a line of totals: Men, 31
			}
			sameDay := d == "" || d == lastDate
			if d != "" && d != lastDate || c != "" && c != lastText {
				changes++
			}
			if d != "" {
				lastDate, days[d] = d, true
			}
			again = again || blank && c != "" && c == lastText && sameDay
			blank = c == ""
			if c != "" {
				lastText = c
				filled++
				texts[c] = true
				if kindOf(c) == kText && hasLetter(plainWords(c)) { // neither "#41" nor "Run 41"
					words++
				}
				if _, ok := book.exact[fold(c)]; ok {
					known++
				}
			}
			rows++
		}
		heading := fold(s.headings[i])
		town := s.guesses[i].town || placeWords[heading] || isVenueLabel(heading)
		switch {
		case filled == 0 || words*10 < filled*8:
		case known*10 >= filled*8:
			s.set(i, Course, "heading %q; its values are courses already known", s.headings[i])
			return
		case again:
		case rows >= 3*changes && (i == date+1 || i == date-1):
			s.set(i, Course, "heading %q, beside the date and the same for many rows", s.headings[i])
			return
		case town && rows >= 3*changes:
			s.set(i, Course, "heading %q, and the same for many rows", s.headings[i])
			return
		case town && len(texts) == 1 && filled == rows && rows >= leastOneTown && len(days) > 1:
			s.set(i, Course, "heading %q, and the same on all days", s.headings[i])
			return
		case town && s.movesWithDay(date, i):
			s.set(i, Course, "heading %q, and the same people have several of its values on several days", s.headings[i])
			return
		}
	}
}

// leastOneTown is how many lines that all name one town say that the runs were there, and not
// that everybody lives there.
const leastOneTown = 8

// movesWithDay says whether the values of a column of places are those of the runs of a list
// sorted by its people: three lines or more share a day and a place, and people who stand on
// several days have another place on many of these, which nobody's home is.
func (s *settler) movesWithDay(date, place int) bool {
	name, given := s.find(Name), s.find(GivenName)
	if name < 0 {
		name = s.find(FamilyName)
	}
	if name < 0 {
		return false
	}
	runs, last := map[[2]string]bool{}, map[string]string{}
	rows, again, moved := 0, 0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		d, p := trim(cellAt(r.cells, date)), fold(cellAt(r.cells, place))
		who := fold(cellAt(r.cells, name) + " " + cellAt(r.cells, given))
		if d == "" || p == "" || who == "" {
			continue
		}
		rows++
		runs[[2]string{d, p}] = true
		if before, ok := last[who]; ok {
			again++
			if before != p {
				moved++
			}
		}
		last[who] = p
	}
	return rows >= 3*len(runs) && moved >= 3 && moved*4 >= again
}

// roles takes a column "Role" of a list with times for notes on how people took part.
func (s *settler) roles() {
	if s.find(Notes) >= 0 || s.find(Time) < 0 && s.find(ChipTime) < 0 && s.find(GunTime) < 0 {
		return
	}
	for i, c := range s.columns {
		if c.Meaning == Other && roleHeadings[fold(s.headings[i])] && s.profiles[i].filled > 0 {
			s.set(i, Notes, "heading %q: how somebody took part", s.headings[i])
			return
		}
	}
}

var roleHeadings = set("role roles as rolle rol rola ruolo funcao fonction roll funktion")

// runNumbers tells the number of a run from the number of a runner on a season
// list: it is the same in all rows of a run.
func (s *settler) runNumbers() {
	number, date, course := s.find(Number), s.find(Date), s.find(Course)
	if number < 0 || date < 0 {
		return
	}
	of, rows := map[string]string{}, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		d, n := trim(cellAt(r.cells, date)), trim(cellAt(r.cells, number))
		if d == "" || n == "" {
			continue
		}
		run := d + "\x00" + trim(cellAt(r.cells, course))
		if before, ok := of[run]; ok && before != n {
			return
		}
		of[run] = n
		rows++
	}
	if rows > len(of) {
		s.set(number, Other, "heading %q, but it is the same in all rows of a run: the number of the run", s.headings[number])
	}
}

// byValues gives columns whose heading says nothing to the meanings that are
// still missing, where the values are unmistakable.
func (s *settler) byValues() {
	bare := true
	for _, g := range s.guesses {
		bare = bare && !g.known
	}
	free := func(i int) bool {
		return s.columns[i].Meaning == Other && !s.guesses[i].known && !slices.ContainsFunc(s.beside.ticks, func(t tick) bool { return t.column == i })
	}
	if s.find(Position) < 0 {
		// "No" counting 1, 2, 3 is a position.
		for i, c := range s.columns {
			numbers := s.guesses[i].number && (c.Meaning == Number || c.Meaning == Other)
			if unitOnly(s.headings[i]) {
				continue // "Mile": counted is the way
			}
			if c.Meaning == Number && s.isHalf() && s.countsAll(i) {
				numbers = true // who has which number of those that all finishers have is their place
			}
			if (free(i) || numbers) && !slices.Contains(s.clock, i) && (s.counts(i) || numbers && (s.countsEachRun(i) || s.timeless() && s.countsAll(i)) || free(i) && (s.countsInBlocks(i) || s.countsAll(i))) {
				s.set(i, Position, "its values count %s", s.countText(i))
				if s.headings[i] != "" {
					s.columns[i].Why = fmt.Sprintf("heading %q and %s", s.headings[i], s.columns[i].Why)
				}
				break
			}
		}
	}
	if len(s.clock) == 0 && s.find(Time) < 0 && s.find(GunTime) < 0 && s.find(ChipTime) < 0 {
		best, several, sorted := -1, []int(nil), 0
		for i, p := range s.profiles {
			clock := s.stopwatch(i) && !s.late(i) // not the time of day
			if !free(i) && !clock || s.saysOffset(i) || p.shareOf(kClock) <= .8 || p.count[kClock] == 0 || s.startsAtZero(i) || s.partOfLater(i, free) {
				continue
			}
			several = append(several, i)
			if p.rising*20 >= p.steps*19 && (p.steps >= 8 || s.find(Position) >= 0) {
				sorted++
			}
			if best < 0 || p.rising > s.profiles[best].rising && !s.inBrackets(i) || s.inBrackets(best) && !s.inBrackets(i) {
				best = i // a time in brackets is another than the one before it
			}
		}
		switch {
		case len(several) > 1 && sorted != 1 && s.lastOfGrowing(free) >= 0:
			best = s.lastOfGrowing(free)
			for i, p := range s.profiles {
				if i != best && free(i) && p.shareOf(kClock) > .8 && p.count[kClock] > 0 && !s.sameTimes(i, best) {
					s.set(i, Split, "heading %q: one of the times that grow along the row up to column %s", s.headings[i], letters(best))
				}
			}
			s.set(best, Time, "heading %q; its values are the last of the times that grow along the row", s.headings[best])
		case best >= 0 && len(several) > 1 && sorted != 1 && (!bare || s.runsInColumns(free)):
			s.clockColumns = several
		case best >= 0:
			if p := s.profiles[best]; p.steps >= 8 && p.rising*4 < p.steps*3 {
				s.decimalTimes(free) // targets, or last week's, beside times with a dot that rise with the places
			}
			if s.find(Time) < 0 {
				s.set(best, Time, "its values are times")
			}
		default:
			s.decimalTimes(free)
		}
	}
	if s.find(Name) < 0 && s.find(FamilyName) < 0 && s.find(GivenName) < 0 {
		most := 0 // a column of names says more than one of a few remarks
		for i, p := range s.profiles {
			if free(i) && p.shareOf(kText) > .7 {
				most = max(most, p.filled)
			}
		}
		for i, p := range s.profiles {
			if (free(i) || s.wordsUnderNumber(i)) && p.filled*4 >= most && p.shareOf(kText) > .7 && (p.spaces*10 >= p.count[kText]*7 || p.commas*10 >= p.count[kText]*7 || s.eastAsianNames(i)) && (len(p.distinct)*10 >= min(p.filled, distinctKept)*7 || s.listed(i) || s.onceADay(i) || bare && s.onceInBlocks(i)) {
				if i > 1 && bare && free(i-2) && free(i-1) && s.clubsIn(i) && s.partsOfNames(i-2, i-1) {
					break // clubs behind names in two columns
				}
				s.set(i, Name, "its values are names of people")
				break
			}
		}
	}
	if bare && s.find(Name) < 0 && s.find(Time) >= 0 {
		if i := s.onlyWords(free); i >= 0 {
			s.set(i, Name, "the only column of words, each of which stands once")
		}
	}
	if !bare {
		for i, p := range s.profiles {
			switch {
			case !free(i) || p.filled < 3 || otherDay(fold(s.headings[i])):
			case s.find(Date) < 0 && p.filled >= 8 && p.share(kDate) > .9 && s.inBlocks(i) && !otherDate(fold(s.headings[i])):
				s.set(i, Date, "heading %q not known, but its values are dates, each in many rows", s.headings[i])
			case s.find(BirthYear) < 0 && s.find(BirthDate) < 0 && s.find(Age) < 0 && p.filled >= 8 && p.shareOf(kInt) > .9 && p.years == p.count[kInt] && p.lo <= 1970 && p.hi >= p.lo+15 && p.hi <= 2022 && len(p.distinct) >= 6 && p.rising*10 < p.steps*8 && !otherDate(fold(s.headings[i])):
				s.set(i, BirthYear, "heading %q not known, but its values are years of birth", s.headings[i])
			case s.find(BirthYear) < 0 && s.find(BirthDate) < 0 && s.find(Age) < 0 && p.filled >= 4 && s.shortYears(i):
				s.set(i, BirthYear, "heading %q not known, but its values are years of two figures such as '63", s.headings[i])
			case s.sayInWords(i) != Other:
				s.set(i, s.sayInWords(i), "heading %q not known, but its values say so in words", s.headings[i])
			case s.find(Sex) < 0 && (p.shareOf(kSex) > .9 && len(p.distinct) > 1 || s.bothSexes(i)) && !anyWord(s.headings[i], lettersOfElse):
				s.set(i, Sex, "heading %q not known, but its values are sexes", s.headings[i])
			case s.find(Status) < 0 && p.share(kStatus) > .9 && len(p.distinct) > 1:
				s.set(i, Status, "heading %q not known, but its values say how races ended", s.headings[i])
			case s.find(AgeGroup) < 0 && s.find(Age) < 0 && p.filled > 1 && p.shareOf(kGroup) > .9 && classWords[fold(s.headings[i])]:
				s.set(i, AgeGroup, "heading %q, and its values are age groups", s.headings[i])
			case s.countsByLetter(i), s.schoolForms(i):
			case s.find(AgeGroup) < 0 && s.find(Age) < 0 && (p.shareOf(kGroup) > .9 && len(p.distinct) > 1 && !s.lettersAndNumbers(i) || s.frenchClasses(i)):
				s.set(i, AgeGroup, "heading %q not known, but its values are age groups", s.headings[i])
			case s.find(AgeGroup) < 0 && s.find(Age) < 0 && s.find(Sex) < 0 && p.shareOf(kGroup, kSex) > .9 && p.shareOf(kGroup) > .5 && s.sexesInWords(i):
				s.set(i, AgeGroup, "heading %q not known, but its values are age groups, and sexes in words", s.headings[i])
			case s.headings[i] == "" && s.find(AgeGroup) < 0 && s.find(Age) < 0 && s.find(Sex) < 0 && p.shareOf(kGroup, kSex) > .9 && p.shareOf(kGroup) > .5 && !s.lettersAndNumbers(i): // M40 beside M
				s.set(i, AgeGroup, "no heading, but its values are age groups and sexes")
			}
		}
		s.remarksBehind(free)
		return
	}
	// No heading at all: what else is unmistakable.
	s.remarksBehind(free)
	for i, p := range s.profiles {
		if !free(i) || p.filled == 0 || s.oneSoftWord(i) || slices.Contains(s.clock, i) {
			continue
		}
		switch {
		case s.sayInWords(i) != Other:
			s.set(i, s.sayInWords(i), "its values say so in words")
		case s.find(Sex) < 0 && (p.shareOf(kSex) > .9 || s.bothSexes(i)):
			s.set(i, Sex, "its values are sexes")
		case s.find(GroupPlace) < 0 && s.placesOfTotals(i):
			s.set(i, GroupPlace, "its values are places and how many there are")
		case s.find(AgeGroup) < 0 && (p.shareOf(kGroup, kSex) > .8 && !s.countsByLetter(i) || s.frenchClasses(i)):
			s.set(i, AgeGroup, "its values are age groups")
		case s.find(Date) < 0 && p.share(kDate) > .8:
			s.set(i, Date, "its values are dates")
		case s.find(BirthYear) < 0 && s.shortYears(i):
			s.set(i, BirthYear, "its values are years of two figures such as '63")
		case s.find(BirthYear) < 0 && p.filled >= 3 && s.saysBorn(i):
			s.set(i, BirthYear, "its values are years behind a word for born")
		case s.find(BirthYear) < 0 && s.find(Age) < 0 && s.twoFigureYears(i):
			s.set(i, BirthYear, "its values are years of two figures: as ages none is from 22 to 39, and several are above 80 or begin with 0")
		case s.find(Age) < 0 && p.shareOf(kInt) > .9 && p.whole && p.lo >= 4 && p.hi <= 100 && p.rising*10 < p.steps*8 && p.filled >= 5 && (len(p.distinct) < p.filled || p.filled < surelyTwice):
			s.set(i, Age, "its values are whole numbers such as ages")
		case s.find(BirthYear) < 0 && p.shareOf(kInt) > .9 && p.years == p.count[kInt] && len(p.distinct) > 1:
			s.set(i, BirthYear, "its values are years")
		case s.find(Age) < 0 && s.agesInBrackets(i):
			s.set(i, Age, "its values are whole numbers in brackets such as ages")
		case s.find(Notes) < 0 && p.share(kText) > .8 && s.inBrackets(i):
			s.set(i, Notes, "its values stand in brackets")
		case s.find(Notes) < 0 && s.find(Status) < 0 && s.beginsEnded(i):
			s.set(i, Notes, "some of its values begin with words for how a race ended")
		case s.find(Club) < 0 && s.find(Name) >= 0 && i > s.find(Name) && p.share(kText) > .8 && !s.codes(i) && !s.units(i) && !s.relatives(s.find(Name), i):
			s.set(i, Club, "the only other column of words")
		}
	}
}

// wordsUnderNumber says whether the heading of a column is like one for numbers, and no cell has a
// figure: "Licencié", the member, beside a column of numbers.
func (s *settler) wordsUnderNumber(i int) bool {
	if m := s.columns[i].Meaning; m != Other && m != Number || s.guesses[i].meaning != Number {
		return false
	}
	return !slices.ContainsFunc(s.rows, func(r line) bool { return strings.ContainsAny(cellAt(r.cells, i), "0123456789") })
}

// ended takes a column that nothing else is known of for how races ended where all that it says, on
// however few rows, are codes for that, DNF, DSQ, or words for having finished.
func (s *settler) ended() {
	if s.find(Status) >= 0 || s.find(Time) < 0 && s.find(Position) < 0 {
		return
	}
	for i, p := range s.profiles {
		if m := s.columns[i].Meaning; p.filled == 0 || len(p.distinct) == 0 || len(p.distinct) > 6 || m != Other && m != Number || p.count[kInt] > 0 || otherDay(fold(s.headings[i])) {
			continue
		}
		if codes, only := endsOnly(p.distinct, "✓", "✔"); only && codes > 0 {
			s.set(i, Status, "its values say how races ended")
			return
		}
	}
}

// endsOnly counts the codes for how a race ended among the values of a column, and says whether the others are words for
// having finished, or signs that are given for it.
func endsOnly(values map[string]int, signs ...string) (codes int, only bool) {
	for v := range values {
		switch f := fold(v); {
		case endedCodes[f]:
			codes++
		case !finishCodes[f] && !slices.Contains(signs, v):
			return codes, false
		}
	}
	return codes, true
}

// against takes a column of which nothing is known for notes, or beside those for what became of the runners, where
// one of its few texts speaks against a result: "wrong course" under "Marshal", "void" under "Flag".
func (s *settler) against() {
	m := Notes
	switch {
	case s.find(Time) < 0:
		return
	case s.find(Notes) < 0:
	case s.find(Status) < 0:
		m = Status
	default:
		return
	}
	for i, p := range s.profiles {
		g := s.guesses[i]
		if s.columns[i].Meaning != Other || g.known && g.meaning != Time && g.meaning != Number && g.meaning != Status && !flagWords[fold(s.headings[i])] || len(p.distinct) == 0 || len(p.distinct) > 8 ||
			p.count[kText]+p.count[kStatus] < p.filled || otherDay(fold(s.headings[i])) {
			continue
		}
		for v := range p.distinct {
			if f := fold(v); len(f) > 1 && (saysHowEnded(v) || saysEnded(v) || text.AgainstTime(f, usualDistance/1000)) {
				s.set(i, m, "heading %q, but %q speaks against a result", s.headings[i], v)
				return
			}
		}
	}
}

// kilometres takes a column "Km" for distances where most rows say the usual one and some a shorter or longer way.
func (s *settler) kilometres() {
	if s.find(Distance) >= 0 {
		return
	}
	for i, p := range s.profiles {
		if s.columns[i].Meaning != Other || !kilometreWords[fold(s.headings[i])] || len(p.distinct) < 2 || len(p.distinct) > mostDistances || p.count[kInt]+p.count[kDecimal] < p.filled {
			continue
		}
		usual := 0
		for v, n := range p.distinct {
			if 1000*looseNumber(v) == usualDistance {
				usual += n
			}
		}
		if 2*usual > len(s.rows) {
			s.set(i, Distance, "heading %q, and most of its values are those of the usual way", s.headings[i])
			return
		}
	}
}

var kilometreWords = set("km kms kilometres kilometers kilometer kilometre kilometri kilometros км", "km run", "kms run", "km done")

// flagWords head marks of many kinds. Common practice, no source.
var flagWords = set("flag flags code codes mark marks state result")

// lettersOfElse are words of headings over letters that are no sexes though they look so: M for a member
// beside V for a visitor, S, M and L of a shirt. Common practice, no source.
var lettersOfElse = set(`member members membership mitglied mitgliedschaft lid socio socia soci medlem adherent czlonek shirt shirts tshirt tshirts tee top size sizes grosse taille talla taglia maat storlek storrelse rozmiar
	medal medals medaille medalla medaglia fee fees rate paid pay payment day wave transport travel mode status finish fin`)

// endedCodes stand for how a race ended and for nothing else, finishCodes beside them for a
// finish. Common practice of the languages, no source.
var (
	endedCodes  = set("invalid ungultig annulled ongeldig ugyldig ogiltig neplatny neplatne niewazny invalide dnf dns dsq dq disq disqualified retired abandon aufgegeben ritirato squalificato uitgevallen disqualifiziert descalificado", "did not finish", "did not start", "d n f", "d n s", "d q", "d s q", "nicht angetreten", "non partant", "non partito")
	finishCodes = set("完走 完赛 f fin finish finished finisher finishers ok yes y classified done complete completed counted valid gultig geldig gyldig giltig platny platne wazny valable valide valido valida ja oui si im ziel arrive arrivee classe classee finalizado finalizada finalista clasificado arrivato arrivata gefinisht geklasseerd i mal gennemfort fullfort maalissa")
)

// remarksBehind takes the first column behind the times for notes that has no heading and words in
// no more than a third of the rows, or says of some how their race ended: what somebody has written
// beside them, "void", "ran with Jo".
func (s *settler) remarksBehind(free func(int) bool) {
	time := max(s.find(Time), s.find(ChipTime), s.find(GunTime))
	if s.find(Notes) >= 0 || time < 0 {
		return
	}
	for i := time + 1; i < len(s.columns); i++ {
		p := s.profiles[i]
		if s.headings[i] != "" || !free(i) || p.filled == 0 || 3*p.filled > len(s.rows)+2 && p.count[kStatus] == 0 || p.count[kText]+p.count[kStatus] < p.filled {
			continue
		}
		if slices.ContainsFunc(s.rows, func(r line) bool { c := cellAt(r.cells, i); return strings.Contains(c, "=") || anyWord(c, clubWords) }) {
			continue // a legend, a club
		}
		s.set(i, Notes, "no heading, and words on some rows behind the times")
		return
	}
}

// eastAsianNames says whether nearly all values of a column are two to five characters or
// syllables of East Asia, as the names of people there are: 김민준, 山田太郎.
func (s *settler) eastAsianNames(i int) bool {
	n := 0
	for v := range s.profiles[i].distinct {
		letters := utf8.RuneCountInString(v)
		if letters >= 2 && letters <= 5 && strings.IndexFunc(v, func(r rune) bool {
			return !unicode.In(r, unicode.Han, unicode.Hangul, unicode.Hiragana, unicode.Katakana)
		}) < 0 {
			n++
		}
	}
	return n >= 3 && n*10 >= len(s.profiles[i].distinct)*9
}

// shortYears says whether the values of a column, and of no other, are figures behind an
// apostrophe, as years of birth are. An apostrophe before all figures of a table is how a
// program says that they are text.
func (s *settler) shortYears(i int) bool {
	if !slices.ContainsFunc(s.rows[:min(3, len(s.rows))], func(r line) bool { return strings.IndexAny(cellAt(r.cells, i), "'’") == 0 }) {
		return false
	}
	n, years := 0, 0
	for _, r := range s.rows {
		for k, c := range r.cells {
			short := len(c) > 2 && (c[0] == '\'' || strings.HasPrefix(c, "’")) && digitsOnly(strings.TrimLeft(c, "'’"))
			switch {
			case short && k != i:
				return false
			case short && len(strings.TrimLeft(c, "'’")) == 2:
				years++
			}
		}
		if !isBlank(cellAt(r.cells, i)) {
			n++
		}
	}
	return years >= 3 && 10*years >= 9*n
}

// units says whether all values of a column are one word for a unit of time: 18:20 | min.
func (s *settler) units(i int) bool {
	for _, r := range s.rows {
		if c := strings.Trim(fold(cellAt(r.cells, i)), "."); c != "" && clockUnits[c] == 0 {
			return false
		}
	}
	return true
}

// saysBorn says whether nearly all values of a column are a word for born and a year: "Jg. 2003",
// "ur. 1984", "*1971".
func (s *settler) saysBorn(i int) bool {
	n, born := 0, 0
	for _, r := range s.rows {
		c := fold(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		n++
		word := strings.TrimRight(c, "0123456789")
		if digits := len(c) - len(word); digits != 2 && digits != 4 {
			continue
		}
		if word = strings.TrimRight(word, " .:'"); word == "*" || headingWords[word]&cBirth != 0 {
			born++
		}
	}
	return born >= 3 && 10*born >= 9*n
}

// twoFigureYears says whether the values of a column without a heading are the last two figures
// of years of birth: all have two figures, and several of them begin with 0, as no age does, or are
// 80 and more, as few ages are. Born in 1922 to 1939 is hardly anybody who runs.
func (s *settler) twoFigureYears(i int) bool {
	n, odd := 0, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		v := looseNumber(c)
		if len(c) != 2 || !digitsOnly(c) || v >= 22 && v <= 39 {
			return false
		}
		if n++; c[0] == '0' || v >= 80 {
			odd++
		}
	}
	return n >= 5 && odd >= 3 && 6*odd >= n
}

// relatives says whether the words of two columns are people of one family on most rows: parents
// and their children, where clubs would stand.
func (s *settler) relatives(a, b int) bool {
	rows, related := 0, 0
	for _, r := range s.rows {
		x, y := trim(cellAt(r.cells, a)), trim(cellAt(r.cells, b))
		if y == "" {
			continue
		}
		if rows++; oneFamily(x, y) {
			related++
		}
	}
	return rows >= 3 && 3*related >= 2*rows
}

// oneFamily says whether two texts are names of different people of one family.
func oneFamily(a, b string) bool {
	return a != b && looksNamed(a) && looksNamed(b) && finalWord(a) == finalWord(b)
}

// runsInColumns says whether two columns without headings or more hold running times, and
// people who have one in several have others: those of several runs, or of two watches.
func (s *settler) runsInColumns(free func(int) bool) bool {
	var cols []int
	for i, p := range s.profiles {
		if !free(i) || p.shareOf(kClock) <= .8 || p.count[kClock] < 2 {
			continue
		}
		runs := 0
		for _, r := range s.rows {
			if v := secondsOf(r.cells, i); v >= shortestRun && v <= longestRun {
				runs++
			}
		}
		if runs*10 >= p.count[kClock]*9 {
			cols = append(cols, i)
		}
	}
	for k, a := range cols {
		for _, b := range cols[k+1:] {
			up, down, blank := 0, 0, 0
			for _, r := range s.rows {
				x, y := secondsOf(r.cells, a), secondsOf(r.cells, b)
				switch {
				case x <= 0 || y <= 0:
					blank++
				case x < y:
					up++
				case x > y:
					down++
				}
			}
			if up > 0 && down > 0 || blank > 0 && up+down > 0 {
				return true // no time on the way, gap or pace, which is less on every row
			}
		}
	}
	return false
}

// unitOnly says whether a heading is nothing but a unit of length or time.
func unitOnly(heading string) bool {
	switch f := fold(heading); f {
	case "km", "mi", "mile", "miles", "kilometre", "kilometer", "metre", "meter", "metres", "lap", "laps":
		return true
	default:
		return len(f) > 2 && timeUnits[f] != 0
	}
}

// listed says whether the values of a column are those of lists one below the other.
func (s *settler) listed(i int) bool {
	pos := s.find(Position)
	if pos < 0 {
		pos = s.find(Time) // which fall where the next list begins
	}
	if pos < 0 {
		return false
	}
	var table [][]string
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		table = append(table, r.cells)
	}
	return onceInEachList(table, pos, i)
}

// onceADay says whether the values of a column, of which most look like names, stand once for each date and
// course of a list of many runs, as people do and clubs or the weather don't.
func (s *settler) onceADay(i int) bool {
	date, course := s.find(Date), s.find(Course)
	if date < 0 {
		return false
	}
	rows, named, days, seen := 0, 0, map[string]bool{}, map[[3]string]bool{}
	day, where := "", ""
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		if d := trim(cellAt(r.cells, date)); d != "" { // blank cells repeat the one above
			day = d
		}
		if w := fold(cellAt(r.cells, course)); w != "" {
			where = w
		}
		if rows++; looksNamed(c) {
			named++
		}
		days[day] = true
		seen[[3]string{day, where, fold(c)}] = true
	}
	return rows >= 6 && len(days) > 1 && 2*len(days) <= rows && 10*named >= 9*rows && 20*len(seen) >= 19*rows
}

// onlyWords is the only column of words of a table without headings, where these begin with
// capitals and next to none stands twice, as first names do on a list among friends; -1 for none.
func (s *settler) onlyWords(free func(int) bool) int {
	only := -1
	for i, p := range s.profiles {
		if !free(i) || p.count[kText] == 0 {
			continue
		}
		if only >= 0 {
			return -1
		}
		only = i
	}
	if only < 0 {
		return -1
	}
	p, upper := s.profiles[only], 0
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, only)); startsUpper(c) && !strings.ContainsAny(c, "0123456789") {
			upper++
		}
	}
	if p.filled < 4 || p.share(kText) < .8 || 10*len(p.distinct) < 9*min(p.filled, distinctKept) || 4*upper < 3*p.filled {
		return -1
	}
	return only
}

// onceInBlocks says whether a column is the only one of words, and its texts, which look like
// names of people, stand once each in every block of rows: names repeat from one list to the
// next, clubs within each. A block ends where rows are left out between two, or where a
// number or a word in the first column begins the list anew.
func (s *settler) onceInBlocks(i int) bool {
	for j, p := range s.profiles {
		if j != i && s.columns[j].Meaning == Other && p.spaces*2 > p.filled && p.shareOf(kText) > .5 && len(p.distinct)*2 > p.filled {
			return false
		}
	}
	rows, again, blocks, named := 0, 0, 1, 0
	seen, last, place := map[string]bool{}, 0, 0.0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		c := fold(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		first := trim(cellAt(r.cells, 0))
		n := placeNumber(first)
		if last > 0 && (r.row > last+1 || i > 0 && n < place) {
			blocks++
			clear(seen)
		}
		last, place = r.row, n
		if seen[c] {
			again++
		}
		if seen[c] = true; looksNamed(trim(r.cells[i])) {
			named++
		}
		rows++
	}
	return blocks > 1 && rows >= 4 && again*20 <= rows && named*4 >= rows*3 && blocks*2 <= rows
}

// onceInEachList says whether the texts of a column stand once each in every list of a
// table in which the places begin again, as names do on a sheet of several runs.
func onceInEachList(table [][]string, position, column int) bool {
	rows, again, lists, last, seen := 0, 0, 1, 0.0, map[string]bool{}
	for _, r := range table {
		place, c := looseNumber(trim(cellAt(r, position))), fold(cellAt(r, column))
		if c == "" {
			continue
		}
		if place < last {
			clear(seen)
			lists++
		}
		if last = place; seen[c] {
			again++
		}
		seen[c] = true
		rows++
	}
	return lists > 1 && rows >= 8 && again*20 <= rows && lists*3 <= rows
}

// lastOfGrowing is the last of several columns of times that grow along nearly
// every row, as those of 1 km, 2 km … 5 km do; -1 where they don't.
func (s *settler) lastOfGrowing(free func(int) bool) int {
	var cols []int
	for i, p := range s.profiles {
		if free(i) && p.shareOf(kClock) > .8 && p.count[kClock] > 0 {
			cols = append(cols, i)
		}
	}
	if len(cols) < 3 {
		return -1
	}
	first, result := cols[0], cols[len(cols)-1]
	if len(cols) > 3 && s.sameTimes(first, result) {
		// The result stands before the times on the way, and once more behind them; where some
		// did not finish, only the first says so.
		if cols = cols[1:]; s.profiles[result].count[kStatus] < s.profiles[first].count[kStatus] {
			result = first
		}
	}
	if len(cols) < 3 {
		return -1
	}
	grow, rows := 0, 0
	for _, r := range s.rows {
		up, last, n := true, 0.0, 0
		for _, c := range cols {
			if t := trim(cellAt(r.cells, c)); kindOf(t) == kClock {
				v := looseNumber(t)
				up = up && v > last
				last = v
				n++
			}
		}
		if n == len(cols) {
			rows++
			if up {
				grow++
			}
		}
	}
	if rows < 3 || grow*10 < rows*9 {
		return -1
	}
	return result
}

// partOfLater says whether the times of a column are the same part of those of a later
// one in every row: a pace, before the time of the whole.
func (s *settler) partOfLater(i int, free func(int) bool) bool {
	for j := i + 1; j < len(s.profiles); j++ {
		if free(j) && s.profiles[j].shareOf(kClock) > .8 && s.partOf(i, j) {
			return true
		}
	}
	return false
}

// sameTimes says whether two columns have the same times in every row that has both.
func (s *settler) sameTimes(a, b int) bool {
	n := 0
	for _, r := range s.rows {
		x, y := trim(cellAt(r.cells, a)), trim(cellAt(r.cells, b))
		if kindOf(x) != kClock || kindOf(y) != kClock {
			continue
		}
		if looseNumber(x) != looseNumber(y) {
			return false
		}
		n++
	}
	return n > 2
}

// decimalTimes finds the time on a sheet without headings where it is written
// with a dot or a comma: numbers as large as running times that rise with the
// positions.
func (s *settler) decimalTimes(free func(int) bool) {
	if s.find(Position) < 0 {
		// Names and numbers that rise line by line, and nothing else.
		if len(s.profiles) == 2 && free(1) && s.profiles[0].share(kText) == 1 && s.profiles[0].spaces*2 > s.profiles[0].filled {
			if p := s.profiles[1]; (s.decimalsOrHours(1) || p.shareOf(kDecimal) > .8 && p.shareOf(kDecimal, kText, kStatus) == 1) && p.steps >= 5 && (p.rising == p.steps || p.rising+1 == p.steps && p.steps >= 8) && p.lo >= 12 && p.hi < 100 {
				s.set(1, Time, "its values rise line by line as running times do")
			}
		}
		return
	}
	best := -1 // a best of each runner may rise as well, and not everybody has one
	for i, p := range s.profiles {
		clock := s.stopwatch(i) && p.hi >= 1.2*p.lo // 18.20 to 18.52 are times of day
		if (free(i) || clock) && p.shareOf(kDecimal) > .8 && p.steps >= 2 && s.decimalsWithin(i, 8, 200) && s.risesInLists(i) && (best < 0 || p.filled > s.profiles[best].filled) {
			best = i
		}
	}
	if best >= 0 {
		s.set(best, Time, "its values rise with the positions as running times do")
		return
	}
	for i, p := range s.profiles {
		if others := p.filled - p.count[kClock] - p.count[kDecimal]; free(i) && p.count[kClock]*5 >= p.filled && (others*5 < p.filled || others == 1 && p.filled >= 5) {
			s.set(i, Time, "its values are times, some with a dot")
			return
		}
	}
	for i := range s.profiles {
		if (free(i) || s.stopwatch(i)) && (s.secondsOrDigits(i) || s.spacedTimes(i) || s.dayParts(i)) {
			s.set(i, Time, "its values rise with the positions as running times do")
			return
		}
	}
}

// stopwatch says whether a column is headed with the watch that the times were read from, which
// is the time of day on other sheets, and nothing else has shown what it holds.
func (s *settler) stopwatch(i int) bool {
	return s.columns[i].Meaning == Other && clockHeading.MatchString(fold(s.headings[i]))
}

var clockHeading = regexp.MustCompile(`^clock(?:[ (:]+(?:hh?[ :])?mm?[ :]ss?\)?)?$`) // "Clock (mm:ss)"

// decimalsWithin says whether the decimal numbers of a column lie within bounds, whatever else
// stands there: 1.03.31 below 59.40.
func (s *settler) decimalsWithin(i int, least, below float64) bool {
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kDecimal {
			continue
		}
		if v := looseNumber(c); v < least || v >= below {
			return false
		}
	}
	return true
}

// decimalsOrHours says whether every value of a column is a number with a fraction, or hours,
// minutes and seconds with dots behind these: 59.58, then 1.02.30.
func (s *settler) decimalsOrHours(i int) bool {
	hours := false
	for _, r := range s.rows {
		switch c := trim(cellAt(r.cells, i)); {
		case c == "":
		case hoursDotted.MatchString(c):
			hours = true
		case kindOf(c) != kDecimal || hours:
			return false
		}
	}
	return s.profiles[i].count[kDecimal] > 0
}

var hoursDotted = regexp.MustCompile(`^[1-3][.][0-5]\d[.][0-5]\d$`)

// risesInLists says whether the numbers of a column never fall while the positions rise: in
// several lists one below the other, those of each.
func (s *settler) risesInLists(i int) bool {
	pos, lastPlace, last, steps, falls := s.find(Position), 0.0, 0.0, 0, 0
	for _, r := range s.rows {
		place, v := looseNumber(trim(cellAt(r.cells, pos))), looseNumber(trim(cellAt(r.cells, i)))
		if k := kindOf(cellAt(r.cells, i)); v == 0 || k != kDecimal && k != kInt && k != kClock { // 1.03.31 may be a date
			continue
		}
		if place > lastPlace && last > 0 {
			if v < last {
				falls++
			}
			steps++
		}
		lastPlace, last = place, v
	}
	return steps >= 2 && (falls == 0 || falls*15 <= steps && s.endsInSeconds(i)) // two in thirty may have been exchanged
}

// endsInSeconds says whether fifteen decimals or more of a column have two figures behind the dot or
// comma, and none of these 60 or more, as of others two in five have.
func (s *settler) endsInSeconds(i int) bool {
	n := 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kDecimal {
			continue
		}
		if !dottedTime.MatchString(strings.Replace(c, ",", ".", 1)) {
			return false
		}
		n++
	}
	return n >= 15
}

// secondsOrDigits says whether a column rises line by line as running times do that are
// written as seconds with a fraction, 1108.7, or as figures alone, 1828 for 18:28: the
// slowest takes no six times as long as the first, and none of the whole numbers could not
// end in seconds, of which numbers of another kind do one in two and a half.
func (s *settler) secondsOrDigits(i int) bool {
	p := s.profiles[i]
	if p.shareOf(kInt, kDecimal) < .8 || p.steps < 8 || p.rising*20 < p.steps*19 || p.lo < 400 || p.hi > 6*p.lo && p.hi < 10000 || s.countsOn(i) {
		return false
	}
	if p.share(kDecimal) > .5 {
		return p.hi < 12000
	}
	n := 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if !digitsOnly(c) {
			continue
		}
		if v := int(looseNumber(c)); v%100 >= 60 || v/100%100 >= 60 && v >= 10000 || v >= 40000 {
			return false
		}
		n++
	}
	return n >= 8
}

// dayParts says whether a column rises line by line as running times do that a spreadsheet
// stores as parts of a day, 0.0144 for 20:47, from eight minutes to four hours, with more
// figures than anything else is given with.
func (s *settler) dayParts(i int) bool {
	p := s.profiles[i]
	if p.shareOf(kDecimal) < .8 || p.steps < 2 || p.rising*20 < p.steps*19 || p.lo < 8./1440 || p.hi > 4./24 {
		return false
	}
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); kindOf(c) == kDecimal && len(c) >= len("0.01443") {
			return s.risesInLists(i)
		}
	}
	return false
}

// spacedTimes says whether a column rises line by line as running times do whose parts a
// space or a dash divides, 24 31 and 1-02-15. Age groups, 20-24, don't, or are all of one
// width, as on a list that says which group each age is in.
func (s *settler) spacedTimes(i int) bool {
	n, rising, last := 0, 0, 0
	widths, most := map[int]int{}, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		parts := strings.FieldsFunc(c, func(r rune) bool { return r == ' ' || r == '-' })
		v := 0
		for k, part := range parts {
			two := len(part) == 2 || k == 0 && len(part) == 1
			if len(parts) > 3 || !two || !digitsOnly(part) || k > 0 && part[0] > '5' {
				parts = nil
				break
			}
			v = v*60 + int(part[0]-'0')
			if len(part) == 2 {
				v += 9*int(part[0]-'0') + int(part[1]-'0')
			}
		}
		if len(parts) < 2 {
			continue
		}
		if n++; v >= last {
			rising++
		}
		last = v
		if len(parts) == 2 {
			width := v%60 - v/60
			widths[width]++
			most = max(most, widths[width])
		}
	}
	return n >= 5 && n*10 >= s.profiles[i].filled*9 && rising*20 >= n*19 && most*5 < n*4
}

// codes says whether most values of a column have a figure in them, as classes of a
// school or a race have and clubs have not: SR-4, JR-3.
func (s *settler) codes(i int) bool {
	n := 0
	for _, r := range s.rows {
		if strings.ContainsAny(cellAt(r.cells, i), "0123456789") {
			n++
		}
	}
	return 2*n > s.profiles[i].filled
}

// inBrackets says whether every value of a column is a remark in brackets.
func (s *settler) inBrackets(i int) bool {
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); c != "" && (c[0] != '(' || c[len(c)-1] != ')') {
			return false
		}
	}
	return true
}

// agesInBrackets says whether every value of a column is a whole number in brackets, as
// large as ages are, and they don't count: "(34)".
func (s *settler) agesInBrackets(i int) bool {
	n, rising, last := 0, 0, 0.0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		if c[0] != '(' || c[len(c)-1] != ')' || !digitsOnly(c[1:len(c)-1]) {
			return false
		}
		v := looseNumber(c[1 : len(c)-1])
		if v < 4 || v > 100 {
			return false
		}
		if v > last {
			rising++
		}
		last = v
		n++
	}
	return n >= 5 && rising*10 < n*8
}

// counts says whether a column counts up: 1, 2, 3 or with gaps, as positions
// of an excerpt do.
func (s *settler) counts(i int) bool {
	p := s.profiles[i]
	if p.shareOf(kInt) < .8 || !p.whole || p.lo < 1 && !s.countsFromStart(i) {
		return false
	}
	switch {
	case s.fallsWithTimes(i):
		return true
	case p.steps == 0:
		return p.lo <= 3
	case p.unit*10 >= p.steps*7:
		return p.lo <= 3 || p.rising == p.steps
	}
	if p.lo > 4 && s.inSteps(i) {
		return false // 35, 40, 45: age groups
	}
	// Positions with gaps rise all the way down and times rise with them. A column of ones counts nothing.
	return p.rising == p.steps && p.steps >= 3 && p.hi < 10000 && len(p.distinct)*2 > min(p.filled, distinctKept)
}

// countsFromStart says whether a column counts 0, 1, 2, 3, as a watch does that writes the start: nobody stands beside
// the 0.
func (s *settler) countsFromStart(i int) bool {
	p := s.profiles[i]
	if p.lo != 0 || p.unit < p.steps || p.steps < 3 || len(s.rows) == 0 || trim(cellAt(s.rows[0].cells, i)) != "0" {
		return false
	}
	return !slices.ContainsFunc(s.rows[0].cells, hasLetter)
}

// fallsWithTimes says whether the numbers of a column of a table without headings rise where its times rise
// and fall where they fall, as the places of some of the field do in list under list.
func (s *settler) fallsWithTimes(i int) bool {
	clock := -1
	for k, h := range s.headings {
		if h != "" {
			return false
		}
		if s.profiles[k].shareOf(kClock) > .8 && s.profiles[k].count[kClock] > 0 {
			if clock >= 0 {
				return false
			}
			clock = k
		}
	}
	if clock < 0 {
		return false
	}
	steps, falls, number, time := 0, 0, 0.0, 0.0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		n, at := looseNumber(trim(cellAt(r.cells, i))), secondsOf(r.cells, clock)
		if n <= 0 || at <= 0 {
			continue
		}
		if time > 0 {
			if (n > number) != (at > time) || n == number {
				return false
			}
			if steps++; n < number {
				falls++
			}
		}
		number, time = n, at
	}
	return falls > 0 && steps >= 7 && 3*falls <= steps
}

// countsInBlocks says whether the numbers of a column count 1, 2, 3 … and begin again, as
// places do that are given to each age group or sex by itself.
func (s *settler) countsInBlocks(i int) bool {
	rows, on, again, last := 0, 0, 0, 0.0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kInt {
			continue
		}
		switch n := looseNumber(c); {
		case n == 1:
			again++
		case n == last+1:
			on++
		}
		last = looseNumber(c)
		rows++
	}
	return rows >= 8 && again >= 2 && on >= 4 && 2*on > again && (on+again)*10 >= rows*9 && s.profiles[i].shareOf(kInt) > .8
}

// countsAll says whether a column holds every number from 1 to as many as there are, six or more,
// each once, in whatever order: places under the headings of age groups, or beside names in
// the order of the alphabet.
func (s *settler) countsAll(i int) bool {
	p := s.profiles[i]
	if p.shareOf(kInt) < 1 || p.lo != 1 || p.count[kInt] < 6 || int(p.hi) != p.count[kInt] || len(s.rows) > profileRows {
		return false
	}
	seen := make([]bool, p.count[kInt]+1)
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kInt {
			continue
		}
		n := int(placeNumber(c))
		if n < 1 || n >= len(seen) || seen[n] {
			return false
		}
		seen[n] = true
	}
	return true
}

// isHalf says whether a table has times and no names, or names and no times.
func (s *settler) isHalf() bool {
	named := s.find(Name) >= 0 || s.find(GivenName) >= 0 || s.find(FamilyName) >= 0
	return named != s.hasTimes()
}

// timeless says whether no column has times.
func (s *settler) timeless() bool {
	return !s.hasTimes() && !slices.ContainsFunc(s.profiles, func(p *profile) bool { return p.count[kClock] > 0 })
}

// countsEachRun says whether the numbers of a column of a season list begin again with
// each run and count its rows, 1, 2, 3 …
func (s *settler) countsEachRun(i int) bool {
	date, course := s.find(Date), s.find(Course)
	if date < 0 {
		return false
	}
	run, last, ones, rows, runs := "", 0.0, 0, 0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		now := trim(cellAt(r.cells, date)) + "\x00" + trim(cellAt(r.cells, course))
		c := trim(cellAt(r.cells, i))
		if now != run {
			run, last = now, 0
			runs++
		}
		if kindOf(c) != kInt {
			continue
		}
		n := looseNumber(c)
		if rows++; n == last+1 {
			ones++
		}
		last = n
	}
	return runs >= 2 && rows >= 4 && ones*10 >= rows*9
}

// inSteps says whether the numbers of a column go up by fives or tens.
func (s *settler) inSteps(i int) bool {
	prev := -1.0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		v := looseNumber(c)
		if prev >= 0 && v-prev != 5 && v-prev != 10 {
			return false
		}
		prev = v
	}
	return true
}

func (s *settler) countText(i int) string {
	var vals []string
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); c != "" {
			vals = append(vals, c)
		}
		if len(vals) == 3 {
			break
		}
	}
	return strings.Join(vals, ", ") + " …"
}

// beginsEnded says whether a value of a column begins with a word for a race that was not
// finished or does not count: "DQ (short cut)". Such a column is of remarks, not of clubs.
func (s *settler) beginsEnded(i int) bool {
	for _, r := range s.rows {
		first, rest, more := strings.Cut(trim(cellAt(r.cells, i)), " ")
		if more && len(rest) > 0 && first != "" && kindOf(strings.Trim(first, ":,-")) == kStatus {
			return true
		}
	}
	return false
}

// sexesInWords says whether a column has sexes in words, "Boy" and "Girl" beside "Adult", and none in letters.
func (s *settler) sexesInWords(i int) bool {
	for v := range s.profiles[i].distinct {
		if kindOf(v) == kSex && len(v) < 3 {
			return false
		}
	}
	return s.profiles[i].count[kSex] > 0
}
