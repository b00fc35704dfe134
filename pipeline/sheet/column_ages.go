package sheet

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// ageLike tells the columns apart that speak of age and sex, whatever their
// headings say: an "Age" of 64.31 is an age grade, of M40 a group.
func (s *settler) ageLike(i int) (Meaning, string) {
	g, p := s.guesses[i], s.profiles[i]
	years := 0.0
	if n := p.count[kInt]; n > 0 {
		years = float64(p.years) / float64(n)
	}
	all := p.filled - p.count[kStatus]
	if (g.meaning == Sex || g.meaning == AgeGroup) && s.bothSexes(i) {
		if g.meaning == Sex {
			return Sex, ""
		}
		return Sex, "its values say only the sex"
	}
	if g.meaning == Sex && p.filled > 0 && s.marksOnly(i) {
		return Other, "its values are marks"
	}
	if all == 0 {
		return g.meaning, ""
	}
	switch {
	case s.birthdaysOnly(i):
		return Other, "its values are days of birth of which the year is hidden"
	case s.schoolYears(i):
		return Other, "its values are years or classes of a school"
	case g.meaning == AgeGroup && s.underAges(i):
		return AgeGroup, ""
	case (g.meaning == Age || g.meaning == BirthYear) && p.shareOf(kDecimal, kInt) > .6 && s.wholeNumbers(i):
		return g.meaning, ""
	case g.meaning == AgeGroup && p.shareOf(kDecimal, kInt) > .9 && s.wholeNumbers(i) && s.median(i) >= leastGrade:
		return Age, "its values are ages, as programs write them where cells are empty"
	case g.meaning == Age && p.shareOf(kDecimal, kInt) > .9 && s.agesInTenths(i):
		return Age, ""
	case g.meaning == BirthDate && p.filled > 0 && p.shareOf(kInt) > .9 && p.lo >= 1 && p.hi <= 31 && s.monthsBeside(i):
		return Other, "its values are days of a month, and the months stand beside it"
	case p.shareOf(kDecimal, kPercent) > .6 && g.meaning != BirthDate:
		if g.meaning == AgeGrade {
			return AgeGrade, ""
		}
		if p.count[kPercent] == 0 && p.hi <= 8 {
			return Other, "its values are small decimals"
		}
		return AgeGrade, "its values are percentages such as an age grade"
	case p.shareOf(kClock) > .6:
		return AgeGrade, "its values are times: age-graded"
	case p.shareOf(kDate) > .6:
		if g.meaning == BirthDate {
			return BirthDate, ""
		}
		if g.meaning == AgeGroup && 2*len(p.distinct) <= p.filled && p.filled >= 6 {
			return Other, "its values are dates that a spreadsheet made of age groups such as 10-14"
		}
		return BirthDate, "its values are dates"
	case p.shareOf(kInt) > .7 && years > .8:
		if g.year && len(p.distinct) == 1 && p.filled > 3 {
			return Other, "it is the same year in every row"
		}
		if g.meaning == BirthYear {
			return BirthYear, ""
		}
		return BirthYear, "its values are years"
	case g.meaning == AgeGroup && p.shareOf(kSex) > .7 && p.count[kGroup] > 0 && p.shareOf(kSex, kGroup) > .9 && !s.countsByLetter(i) && !s.schoolForms(i):
		return AgeGroup, "" // seniors are M and F, veterans M45
	case p.shareOf(kSex) > .7:
		// "M" and "F" in a group column say only the sex.
		if g.meaning == Sex {
			return Sex, ""
		}
		if !slices.ContainsFunc(s.rows, func(r line) bool { c := cellAt(r.cells, i); return !isBlank(c) && fold(c) != "x" }) {
			return Other, "its values are marks"
		}
		if saysYesAndNo(p.distinct) {
			return Other, "its values say yes and no"
		}
		return Sex, "its values say only the sex"
	case g.meaning == Sex && p.shareOf(kGroup) < .2 && p.shareOf(kSex) > 0:
		return Sex, ""
	case g.meaning == AgeGroup && s.inWords(i) == BirthYear:
		return BirthYear, "its values are years of birth"
	case !s.hasGuess(Sex) && s.countsMenAndWomen(i):
		return Sex, "its values count the men and the women apart"
	case s.countsByLetter(i):
		return SexPlace, "its values count M1, F1, F2 …: places among men and women"
	case s.placesOfTotals(i):
		return GroupPlace, "its values are places and how many there are"
	case s.schoolForms(i):
		return Other, "its values are classes of a school"
	case g.meaning == Age && s.agesWithUnits(i):
		return Age, ""
	case p.shareOf(kGroup, kSex) > .5:
		if g.meaning == AgeGroup {
			return AgeGroup, ""
		}
		return AgeGroup, "its values are age groups"
	case p.shareOf(kInt) > .7:
		switch g.meaning {
		case Age, BirthYear:
			if f := fold(s.headings[i]); g.meaning == BirthYear && headingWords[f]&(cBirth|cYear) == cYear && p.lo >= 4 && p.hi < 100 && s.bornTooLate(i) {
				return Age, "its values are ages" // "År", "Év"
			}
			if ages, ints := s.ages(i); g.meaning == Age && 2*ages < ints {
				return Other, "its values are no ages"
			}
			return g.meaning, ""
		case BirthDate:
			switch {
			case p.hi < 100 && p.hi >= 45 && s.bornTooLate(i):
				return Age, "its values are ages"
			case p.hi < 100:
				return BirthYear, "its values are two-figure years"
			}
			return BirthDate, ""
		case AgeGroup:
			if p.fives*10 >= p.count[kInt]*9 && p.lo >= 5 {
				return AgeGroup, "" // 40, 45, 50: the youngest age of the group
			}
			if p.steps >= 3 && p.rising == p.steps && !s.hasGuess(Position) && s.otherGroups(i) {
				return Position, "its values rise from line to line, and the groups stand in another column"
			}
			if s.shortBirths(i) {
				return BirthYear, "its values are two-figure years, as hardly so many are over 80"
			}
			if ages, ints := s.ages(i); ages*10 >= ints*9 && !s.restarts(i) {
				if p.hi < youngestAlone && s.otherGroups(i) {
					return Other, "its values are no ages, and the groups stand in another column"
				}
				if s.codesOfGroups(i) {
					return Other, "its values are few and near one another, as those of divisions or waves are and hardly ages"
				}
				if s.hasGuess(Age) {
					return AgeGrade, "the ages stand in another column"
				}
				if fold(s.headings[i]) == "ag" && p.lo >= 30 && ints >= 8 {
					return AgeGrade, "none of its values is below 30, as some ages are and hardly an age grade is"
				}
				return Age, "its values are ages"
			}
			if (s.countsOn(i) || s.countsInBlocks(i)) && !s.hasGuess(Position) {
				return Position, "its values count " + s.countText(i)
			}
			return GroupPlace, "its values are places"
		case Sex:
			if p.lo >= 0 && p.hi <= 2 && p.filled >= 4 && len(p.distinct) <= 3 {
				return Sex, "" // ISO/IEC 5218: 1 male, 2 female
			}
			return SexPlace, "its values are places"
		}
		return g.meaning, ""
	}
	return g.meaning, ""
}

// marksOnly says whether a column has neither letters nor figures.
func (s *settler) marksOnly(i int) bool {
	for _, r := range s.rows {
		if strings.ContainsFunc(cellAt(r.cells, i), func(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) || c == '♂' || c == '♀' }) {
			return false
		}
	}
	return true
}

// ofAll stands between a place and how many there are.
var ofAll = set("of von av af de di van z iz sur out", "из", "от")

// placesOfTotals says whether the values of a column are places among so many, 12/247,
// and not age groups such as 40/44.
func (s *settler) placesOfTotals(i int) bool {
	places, groups, months, filled := 0, 0, 0, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		filled++
		a, b, ok := strings.Cut(c, "/")
		if w := strings.Fields(c); !ok && len(w) == 3 && ofAll[fold(w[1])] { // 1 of 28
			a, b, ok = w[0], w[2], true
		}
		if a, b = trim(a), trim(b); !ok || !digitsOnly(a) || !digitsOnly(b) || len(a)*len(b) == 0 {
			continue
		}
		if y := looseNumber(b); y >= 1900 && y < 2100 && looseNumber(a) <= 12 {
			months++ // 5/1984
		}
		switch from := looseNumber(a); looseNumber(b) - from {
		case 1, 2, 4, 9:
			if from > 0 && from < 5 {
				places++ // no group begins so early
			} else {
				groups++
			}
		default:
			places++
		}
	}
	return places >= 3 && places > groups && (places+groups)*10 >= filled*8 && months < places
}

// agesWithUnits says whether the values of a column are numbers with one of a few words for
// years behind them, 41 lat, 33 lata, of which most are no multiples of five as the first
// ages of groups are.
func (s *settler) agesWithUnits(i int) bool {
	units := map[string]bool{}
	n, fives, filled := 0, 0, 0
	for _, r := range s.rows {
		c := fold(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		filled++
		number, unit, ok := strings.Cut(c, " ")
		if !ok || !digitsOnly(number) || len(number) > 3 || len([]rune(unit)) < 2 || kindOf(unit) == kSex {
			continue
		}
		units[unit] = true
		if n++; number[len(number)-1] == '0' || number[len(number)-1] == '5' {
			fives++
		}
	}
	return n >= 5 && n*10 >= filled*8 && len(units) <= 4 && 2*fives < n
}

// bornTooLate says whether some two-figure numbers of a column can't be years of
// birth of people who run today: 17 to 39 would be 1917 to 1939, or years to come.
// Dob is the age in Croatian and Serbian, and a word for year alone may be that of age.
func (s *settler) bornTooLate(i int) bool {
	late, n := 0, 0
	for _, r := range s.rows {
		if v := looseNumber(trim(cellAt(r.cells, i))); v > 0 {
			n++
			if v >= 17 && v <= 39 {
				late++
			}
		}
	}
	return late*8 >= n && late > 1
}

// restarts says whether the numbers of a column look like places within
// groups: small numbers, 1 to 3 among them.
func (s *settler) restarts(i int) bool {
	for _, r := range s.rows {
		if n := looseNumber(trim(cellAt(r.cells, i))); n >= 1 && n <= 3 {
			return true
		}
	}
	return false
}

// codesOfGroups says whether whole numbers under a heading for groups that has no word for age are few,
// near one another and each there twice on average: 40, 41 and 42 under "Division". Of people of all
// ages six are hardly ever within so few years.
func (s *settler) codesOfGroups(i int) bool {
	const least, years = 6, 6
	p := s.profiles[i]
	for _, w := range strings.Fields(fold(s.headings[i])) {
		if headingWords[w]&cAge != 0 {
			return false
		}
	}
	return p.count[kInt] >= least && 2*len(p.distinct) <= p.filled && p.hi-p.lo <= years
}

// monthsBeside says whether the column behind one for days of birth is headed by a word for a month.
func (s *settler) monthsBeside(i int) bool {
	return i+1 < len(s.headings) && anyWord(s.headings[i+1], monthHeadings)
}

// agesInTenths says whether decimals under the heading "Age" are ages, 34.5, and not age
// grades. Both lie between 5 and 100, but an age grade is a standard divided by the time, so
// that it falls where the times rise, and ages don't. Of 20 runners whose grades have the
// correlation -.75 with their times, hardly one list in a thousand shows one above -.2
// (Fisher's z: its standard error is 1/√17).
// Neither has one runner in five a grade below lowestGrade: at 30 even a walker's is above it.
func (s *settler) agesInTenths(i int) bool {
	time := -1
	for j, g := range s.guesses {
		if g.known && g.meaning.isTime() {
			time = j
		}
	}
	if time < 0 {
		return false
	}
	var n, low, sx, sy, sxx, syy, sxy float64
	for _, r := range s.rows {
		a, t := trim(cellAt(r.cells, i)), trim(cellAt(r.cells, time))
		if kindOf(t) != kClock || a == "" {
			continue
		}
		if at := strings.IndexAny(a, ".,"); at >= 0 && len(a)-at > 2 {
			return false // 64.31
		}
		x, y := looseNumber(a), looseNumber(t)
		if x < 3 || x > 105 {
			return false
		}
		if x < lowestGrade {
			low++
		}
		n, sx, sy, sxx, syy, sxy = n+1, sx+x, sy+y, sxx+x*x, syy+y*y, sxy+x*y
	}
	if n >= 5 && 5*low >= n {
		return true
	}
	spread := math.Sqrt((n*sxx - sx*sx) * (n*syy - sy*sy))
	return n >= 20 && spread > 0 && (n*sxy-sx*sy)/spread > -.2
}

// lowestGrade is an age grade that hardly anybody is below.
const lowestGrade = 30

// youngestAlone is an age below which not everybody is who runs among groups of ages.
const youngestAlone = 12

// otherGroups says whether most values of another column whose heading speaks of groups are
// groups.
func (s *settler) otherGroups(i int) bool {
	for j, g := range s.guesses {
		if j != i && g.known && g.meaning == AgeGroup && s.profiles[j].shareOf(kGroup, kSex) > .5 {
			return true
		}
	}
	return false
}

// lowestWords and highestWords are words of the headings over the two ends of what an age may
// be. Common practice, no source.
var (
	lowestWords  = set("low lower lowest min minimum from youngest von ab mindestens desde de da dal van fra fran od")
	highestWords = set("high upper highest max maximum to oldest bis hasta a al tot til till do")
)

// ageBounds finds two columns of ages of which one says the least and the other the most,
// "age_low" and "age_high": neither is the age of anybody, unless they are alike throughout.
func (s *settler) ageBounds() {
	cols := s.all(Age)
	if len(cols) != 2 {
		return
	}
	low, high := cols[0], cols[1]
	if !anyWord(fold(s.headings[low]), lowestWords) || !anyWord(fold(s.headings[high]), highestWords) {
		return
	}
	apart := false
	for _, r := range s.rows {
		a, errA := strconv.Atoi(trim(cellAt(r.cells, low)))
		b, errB := strconv.Atoi(trim(cellAt(r.cells, high)))
		if errA == nil && errB == nil && a > b {
			return
		}
		apart = apart || errA == nil && errB == nil && a < b
	}
	if apart {
		s.set(low, Other, "heading %q: the youngest that somebody may be; the oldest stands in column %s", s.headings[low], letters(high))
		s.set(high, Other, "heading %q: the oldest that somebody may be; the youngest stands in column %s", s.headings[high], letters(low))
	}
}

// bothSexes says whether every value of a column, but for blanks, is words or signs of a sex, and both are
// there: whole columns of them are known by more words than those that a line of its own is known by.
func (s *settler) bothSexes(i int) bool {
	p := s.profiles[i]
	if len(p.distinct) < 2 || len(p.distinct) > 12 || p.filled < 3 {
		return false
	}
	if s.sexLetters(i) {
		return true
	}
	seen := map[byte]bool{}
	for v := range p.distinct {
		sex := text.SexOf(strings.ToLower(trim(v)))
		if f := fold(v); sex == 0 && f != "" {
			sex = text.SexOf(f)
		}
		if sex == 0 && kindOf(v) != kStatus {
			return false
		}
		seen[sex] = true
	}
	return seen['M'] && seen['W']
}

// sexLetters says whether a column has two letters and nothing else, each twice or more, that are for men and women in
// one language; M and L may be sizes, S and V seniors and veterans.
func (s *settler) sexLetters(i int) bool {
	letters := ""
	for v, n := range s.profiles[i].distinct {
		f := fold(v)
		if utf8.RuneCountInString(f) != 1 || n < 2 {
			return false
		}
		if !strings.Contains(letters, f) {
			letters += f
		}
	}
	return text.SexPair(letters) && !otherPairs[letters]
}

// otherPairs are pairs of letters that mean sizes or classes as often as sexes.
var otherPairs = set("ml lm vs sv")

// sexesUnderOther takes a column for sexes under a heading that promises something else, a race, a wave or a course, where
// all that stands there are words for both sexes.
func (s *settler) sexesUnderOther() {
	if s.find(Sex) >= 0 {
		return
	}
	for i, c := range s.columns {
		if m := c.Meaning; (m == Session || m == Course || m == Distance) && s.bothSexes(i) && !s.sexLetters(i) {
			s.set(i, Sex, "heading %q, but its values are sexes", s.headings[i])
			return
		}
	}
}

// oneSoftWord says whether a column has one value only, a word that means something else as often as a sex:
// PR for a record, SR for seniors.
func (s *settler) oneSoftWord(i int) bool {
	for v := range s.profiles[i].distinct {
		return len(s.profiles[i].distinct) == 1 && softSexWords[fold(v)]
	}
	return false
}

// sexesOnly says whether the values of a column are a letter for men and one for women, or words for a sex, or
// all one word or letter for women.
func sexesOnly(values map[string]int) bool {
	letters, words := "", 0
	for v := range values {
		f := fold(v)
		switch said := sexSaid(f); {
		case utf8.RuneCountInString(f) == 1:
			letters += f
		case said == 'M' && len(values) > 1, said == 'W':
			words++
		default:
			return false
		}
	}
	return words == 0 && (text.SexPair(letters) || letters == "f") || letters == "" && words > 0
}

// agesOnly says whether all values of a column have a figure, and none is the length of a way, "5k".
func agesOnly(values map[string]int) bool {
	for v := range values {
		if !hasDigit(v) || isLength(v) {
			return false
		}
	}
	return true
}
