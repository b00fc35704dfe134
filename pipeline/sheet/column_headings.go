package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// byHeading takes the heading's word for it unless the values speak against.
func (s *settler) byHeading(i int) {
	s.dottedTimes(i)
	g, p, h := s.guesses[i], s.profiles[i], s.headings[i]
	if !g.known {
		s.set(i, Other, "heading %q not known", h)
		if h == "" {
			s.columns[i].Why = "no heading"
		}
		return
	}
	if g.forced {
		s.set(i, g.meaning, "heading %q, from the configuration", h)
		return
	}
	m, because := g.meaning, ""
	turn := func(to Meaning, why string) { m, because = to, why }
	clocks := p.shareOf(kClock)
	ints := p.shareOf(kInt)
	numbers := p.shareOf(kInt, kDecimal)
	if p.filled > 0 {
		switch g.meaning {
		case Position:
			switch {
			case clocks > .5:
				turn(Time, "its values are times")
			case ints < .8 && s.places(i):
			case ints == 0 && s.countsByLetter(i) && s.countsMenAndWomen(i):
				turn(SexPlace, "its values count men and women")
			case p.shareOf(kGroup) > .6 && s.spacedTimes(i): // "Finish"
				turn(Time, "its values rise line by line as running times do")
			case p.shareOf(kGroup) > .6 && s.placesOfTotals(i): // 6/10 as well as 3/10
			case p.shareOf(kGroup) > .6: // "Cl."
				turn(AgeGroup, "its values are age groups")
			case strings.Contains(fold(h), "token") && ints > .8 && (s.placesBeside(i) || p.hi > 4*float64(p.filled)+40):
				turn(Number, "its values are no positions but may be numbers of people")
			case p.shareOf(kText, kGroup, kSex) > .6 && placeWords[fold(h)] && (s.inBlocks(i) || s.hasGuess(Date)):
				turn(Course, "its values are names of places")
			case p.shareOf(kText) > .6:
				turn(Other, "its values are no positions")
			case p.share(kDecimal) > .5 && strings.Contains(fold(h), "fin"):
				turn(Time, "its values are no positions but may be times")
			case p.share(kDecimal) > .5:
				turn(Other, "its values are no positions")
			case ints > .8 && p.whole && s.secondsShare(i) >= .9 && strings.Contains(fold(h), "fin"):
				turn(Time, "its values are no positions but may be seconds")
			}
		case Time, GunTime, ChipTime:
			switch {
			case clocks == 0 && ints > .8 && p.whole && s.countsOn(i):
				turn(Position, "its values count 1, 2, 3 …")
			case s.namedUnder(i): // "Runner / time", the times below the names
				turn(Name, "its values are names of people")
			case m == Time && clocks == 0 && p.share(kInt)+p.share(kDecimal) == 0 && s.saysEnds(i) && s.timesElsewhere(i):
				turn(Status, "its values say how races ended")
			case p.shareOf(kText, kSex, kDate) > .6 && !s.beginWithTimes(i):
				turn(Other, "its values are no times")
			case m == ChipTime && ints > .8 && p.whole && p.hi >= 10000 && p.steps >= 4 && p.rising*10 < p.steps*8 && p.noDays(): // in the order of the finish
				turn(Number, "its values are numbers of chips")
			case clocks > .5 && anyWord(h, scanWords) && s.timeOfDay(i):
				turn(Other, "its values are the times of day at which people were scanned")
			case m == Time && clocks > 0 && s.startsAtZero(i):
				turn(Gap, "its first value is zero: time behind the first")
			}
		case Name:
			if numbers > .8 {
				turn(Number, "its values are numbers")
			} else if clocks > .8 {
				turn(Other, "its values are times")
			} else if s.mixedCodes(i) {
				turn(Other, "its values are codes, and no names")
			}
		case GivenName, FamilyName:
			if clocks > .5 {
				turn(Other, "its values are times") // "Last year", "First" of two laps
			} else if numbers > .8 {
				turn(Other, "its values are numbers")
			} else if p.filled >= 8 && len(p.distinct) <= 2 {
				turn(Other, "its values are no names")
			}
		case Age, AgeGroup, Sex, BirthYear, BirthDate, AgeGrade:
			if m, because = s.ageLike(i); g.meaning == AgeGroup && (s.distances(i) || s.distancesOfSections(i) > 1) {
				turn(Distance, "its values are distances")
			}
		case Course:
			switch {
			case s.distances(i) || s.distancesOfSections(i) > 1:
				turn(Distance, "its values are distances")
			case len(p.distinct) > 0 && s.singleLetters(i):
				turn(Other, "its values are single letters")
			case !s.hasGuess(Sex) && !s.hasGuess(AgeGroup) && !s.bothSexes(i) && (p.sections() || s.distancesOfSections(i) == 1): // "Varsity Girls", "Women 5k"
				turn(AgeGroup, "its values say whose race it was")
			case clocks > .8 && strings.HasPrefix(fold(h), "start") && s.hasGuess(Time): // "Starts"
				turn(Other, "its values are times, and another column is the time")
			case clocks > .8:
				turn(Time, "its values are times")
			case p.share(kDate) > .8:
				turn(Date, "its values are dates")
			case numbers > .8:
				turn(Other, "its values are numbers")
			case clocks == 0 && len(p.distinct) > 0 && p.wordless(): // "#41"
				turn(Other, "its values are numbers of runs")
			}
		case Date:
			switch {
			case ints > .8 && p.years == p.count[kInt] && p.hi-p.lo >= 10 && len(p.distinct) > 2:
				turn(BirthYear, "its values are years")
			case p.share(kDate) > .5:
			case ints > .8 && p.whole && p.lo > 20000 && p.hi < 80000:
				because = "its values are day numbers of a spreadsheet"
			case ints > .8 && p.lo > 19000000 && p.hi < 21000000:
			case clocks > .8 && !s.hasGuess(Time) && !s.hasGuess(GunTime) && !s.hasGuess(ChipTime) && !overTodays(fold(s.headings[i])) && s.beyondDay(i): // "When"
				turn(Time, "its values are times")
			case clocks > .5:
				turn(Other, "its values are times, not dates")
			case ints > .8 && p.whole && (p.lo > 2100 && p.noDays() || p.hi > 31 && p.hi < 1000): // "Tag" of a chip or a runner
				turn(Number, "its values are numbers, not dates")
			}
		case Split:
			if ints > .9 && s.countsOn(i) && !s.hasGuess(Position) { // "Lap" on the strip of a timer
				turn(Position, "its values count 1, 2, 3 …")
			}
		case TotalRuns, PersonalBest, Points:
			switch {
			case (g.meaning == TotalRuns || g.meaning == Points) && clocks > .6:
				turn(Time, "its values are times")
			case g.meaning == PersonalBest && numbers == 0 && clocks == 0 && anyWord(h, firstTimeWords):
				turn(Other, "its values are no times")
			case g.meaning == TotalRuns && p.shareOf(kInt, kDecimal) > .8 && s.sumsSplits(i):
				turn(Time, "its values are the sums of the laps before it")
			}
		case GroupPlace, SexPlace:
			if !s.hasGuess(Sex) && s.countsMenAndWomen(i) {
				turn(Sex, "its values count the men and the women apart")
			} else if p.shareOf(kGroup) > .5 && !s.countsByLetter(i) && !s.placesOfTotals(i) {
				turn(AgeGroup, "its values are age groups")
			} else if p.shareOf(kSex) > .5 {
				turn(Sex, "its values are sexes")
			}
		case Number:
			switch {
			case clocks > .8:
				turn(Time, "its values are times")
			case saysNames(h) && !s.hasGuess(Name) && !s.hasGuess(FamilyName) && !s.hasGuess(GivenName) && p.shareOf(kText) > .7:
				turn(Name, "its values are names behind numbers")
			case g.number && p.filled >= 5 && ints > .8 && p.years == p.count[kInt] && p.hi-p.lo >= 15 && !s.hasGuess(BirthYear) && !s.hasGuess(BirthDate):
				turn(BirthYear, "its values are years")
			case g.number && !s.hasGuess(Name) && !s.hasGuess(FamilyName) && !s.hasGuess(GivenName) && p.shareOf(kText) > .7 && p.spaces*10 >= p.count[kText]*7:
				turn(Name, "its values are names of people")
			}
		case Session:
			if g.meaning == Session && clocks > .8 && len(p.distinct) > max(4, p.filled/2) {
				turn(Other, "its values differ from row to row: start times")
			} else if clocks > .8 && len(p.distinct) > 1 && p.afterMidnight() {
				turn(Other, "its values are how long after the gun somebody started")
			} else if g.misspelt && p.shareOf(kText) > .6 {
				turn(Other, "its values are no times or numbers")
			}
		case Club:
			if first, _, _ := strings.Cut(fold(h), " "); headingWords[first]&(cName|cRunner) != 0 && !s.hasGuess(Name) && !s.hasGuess(FamilyName) && s.twoLines(i) {
				turn(Name, "its values are of two lines: names over clubs")
			} else if p.filled > 1 && p.letters() {
				turn(Other, "its values are letters of teams")
			}
		case Status:
			if fold(h) == "state" && p.share(kStatus) < .5 {
				turn(Other, "its values are not what became of a runner")
			}
		case Notes:
			if p.filled > 3 && clocks > .9 {
				turn(Other, "its values are times")
			}
			switch {
			case !s.hasGuess(AgeGroup) && !s.hasGuess(Age) && p.filled > 3 && p.shareOf(kGroup) > .9 && agesOnly(p.distinct):
				turn(AgeGroup, "its values are age groups")
			case !s.hasGuess(Sex) && p.filled > 1 && (p.shareOf(kSex) > .9 || p.count[kText] == p.filled) && sexesOnly(p.distinct):
				turn(Sex, "its values are sexes")
			}
		}
	}
	// Places that count up the whole sheet are those of the finish, where no other column
	// has them: "Class. geral", "Gesamt".
	if (m == GroupPlace || m == SexPlace || m == TotalRuns) && ints > .8 && s.countsOn(i) && (!s.hasGuess(Position) || s.countsThrough(i) && s.placesFall()) {
		turn(Position, "its values count 1, 2, 3 …")
	}
	// And so are numbers that count on by one, from wherever they begin, under a word for
	// ages or classes: the second half of a page of two columns.
	if (m == Age || m == AgeGroup) && ints > .9 && p.whole && p.filled >= 5 && !s.hasGuess(Position) && s.countsByOne(i) {
		turn(Position, "its values count on by one")
	}
	// So are whole numbers of which next to none stands twice, in a list by name: places within
	// groups begin again.
	if (m == GroupPlace || m == SexPlace) && !s.hasGuess(Position) && p.shareOf(kInt) > .9 && p.whole && p.lo >= 1 && p.filled >= 20 && len(p.distinct)*20 >= min(p.filled, distinctKept)*19 {
		turn(Position, "next to none of its places stands twice")
	}
	switch m {
	case Club, Course, Notes, Status, Name, GivenName, FamilyName:
		if g.misspelt && p.filled >= 3 && (clocks > .8 || m != Notes && m != Status && p.shareOf(kText) < .2) {
			because = "its values are no words" // "Tems" is as near to temps as to team
		}
	}
	if g.misspelt && because != "" {
		// Neither the letters nor the values of the column are those of that heading.
		s.guesses[i] = guess{}
		s.set(i, Other, "heading %q not known", h)
		return
	}
	if g.town && p.filled > 0 {
		// One venue for all rows would be a course; towns of runners differ.
		m = Other
	}
	s.columns[i].Meaning = m
	switch {
	case because == "" && g.misspelt:
		s.columns[i].Why = fmt.Sprintf("heading %q, one letter off", h)
	case because == "":
		s.columns[i].Why = fmt.Sprintf("heading %q", h)
	default:
		s.columns[i].Why = fmt.Sprintf("heading %q, but %s", h, because)
	}
}

// saysEnds says whether all that a column says are codes and words for how a race ended, "Finished", "DNF".
func (s *settler) saysEnds(i int) bool {
	_, only := endsOnly(s.profiles[i].distinct)
	return only && len(s.profiles[i].distinct) > 0
}

// timesElsewhere says whether another column has nothing but times.
func (s *settler) timesElsewhere(i int) bool {
	for k, p := range s.profiles {
		if k != i && p.share(kClock) > .5 && p.shareOf(kClock) > .9 {
			return true
		}
	}
	return false
}

// firstTimeWords stand in a heading over best times, "First time", and over who is here for the first time.
var firstTimeWords = set("first debut new")

// namedUnder says whether a column whose heading has a word for names among others holds names of people,
// which no other heading announces.
func (s *settler) namedUnder(i int) bool {
	p := s.profiles[i]
	return p.shareOf(kText) > .7 && p.spaces*10 >= p.count[kText]*7 && !s.hasGuess(Name) && !s.hasGuess(FamilyName) && !s.hasGuess(GivenName) &&
		slices.ContainsFunc(strings.Fields(fold(s.headings[i])), func(w string) bool { return headingWords[w]&(cName|cRunner) != 0 })
}

// secondsShare is the share of the whole numbers of a column that are seconds of a run, and
// no places: 400 and more.
func (s *settler) secondsShare(i int) float64 {
	n, all := 0, 0
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); kindOf(c) == kInt {
			all++
			if looseNumber(c) >= 400 {
				n++
			}
		}
	}
	return float64(n) / float64(max(1, all))
}

// placeWords are headings that mean a rank or a place on the map.
var placeWords = set("misto hely loc locul place places lugar plaats plats plass plads miejsce posto место місце място θεση koht vieta mesto mjesto miesto")

// saysNames says whether a word of a heading is one for names: "Bib-Name", "Startnr. Name".
func saysNames(heading string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(fold(heading), func(r rune) bool { return !unicode.IsLetter(r) }), func(w string) bool { return headingWords[w]&cName != 0 })
}

func (s *settler) hasGuess(m Meaning) bool {
	for _, g := range s.guesses {
		if g.known && g.meaning == m {
			return true
		}
	}
	return false
}

// placesBeside says whether another column than i is headed as places.
func (s *settler) placesBeside(i int) bool {
	for k, g := range s.guesses {
		if k != i && g.known && g.meaning == Position {
			return true
		}
	}
	return false
}

// byOne counts the steps between the whole numbers of a column, and those of one.
func (s *settler) byOne(i int) (steps, ones int) {
	last := 0.0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kInt {
			continue
		}
		n := looseNumber(c)
		if last > 0 {
			if steps++; n == last+1 {
				ones++
			}
		}
		last = n
	}
	return steps, ones
}

// countsOn says whether the numbers of a column go on by one from row to row, 1, 2, 3 …
func (s *settler) countsOn(i int) bool {
	steps, ones := s.byOne(i)
	return steps >= 3 && s.profiles[i].lo >= 1 && s.profiles[i].lo <= 3 && ones*10 >= steps*8
}

// mixedCodes says whether nearly all values of a column are one word of letters and figures
// in turn, as names are that were made unreadable: 7f3a09bc…, u4471b2.
func (s *settler) mixedCodes(i int) bool {
	n, filled := 0, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		filled++
		figures := 0
		for k := range len(c) {
			if c[k] >= '0' && c[k] <= '9' {
				figures++
			}
		}
		if len(c) >= 6 && figures >= 3 && figures < len(c) && !strings.ContainsAny(c, " ,.(") {
			n++
		}
	}
	return filled >= 5 && n*10 >= filled*9
}

// dottedTimes takes minutes, seconds and hundredths between dots for times, 27.05.12, where
// other cells of the column are too large for a day and a month, 29.31.06.
func (s *settler) dottedTimes(i int) {
	p := s.profiles[i]
	if p.count[kClock] == 0 || p.count[kDate] == 0 {
		return
	}
	n := 0
	for _, r := range s.rows {
		switch c := trim(cellAt(r.cells, i)); kindOf(c) {
		case kClock, kDate:
			if len(c) != 8 || c[2] != '.' || c[5] != '.' {
				return
			}
			n++
		}
	}
	if n == p.count[kClock]+p.count[kDate] && 3*p.count[kClock] >= n {
		p.count[kClock], p.count[kDate] = n, 0
	}
}

// countsByOne says whether the whole numbers of a column go on by one in nine of ten rows.
func (s *settler) countsByOne(i int) bool {
	steps, ones := s.byOne(i)
	return steps >= 4 && ones*10 >= steps*9
}

// places says whether nearly all values of a column are places written otherwise than as
// whole numbers, 3.0 or 3 / 247, and hardly one of them stands three times.
func (s *settler) places(i int) bool {
	n, filled, times := 0, 0, map[float64]int{}
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if k := placeKind(c); k == kInt {
			n++
			times[placeNumber(c)]++
		} else if k == kBlank || k == kStatus {
			continue
		}
		filled++
	}
	return n >= 3 && n*10 >= filled*9 && 3*len(times) > n
}

// countsThrough says whether a column counts all rows of the sheet, and no number comes again.
func (s *settler) countsThrough(i int) bool {
	p := s.profiles[i]
	return p.filled >= 8 && p.hi <= float64(len(s.rows)) && len(p.distinct)*20 >= min(p.filled, distinctKept)*19
}

// placesFall says whether the columns headed as places have numbers that fall from row to
// row again and again, or stand several times, as places within groups do on a list of all.
func (s *settler) placesFall() bool {
	for i, g := range s.guesses {
		if g.known && g.meaning == Position {
			if p := s.profiles[i]; p.steps < 8 || (p.steps-p.rising)*5 < p.steps && 2*len(p.distinct) > p.filled {
				return false
			}
		}
	}
	return true
}

// inBlocks says whether the rows of a column that say the same stand together, as the
// runs of a list do; the towns that people come from change from row to row.
func (s *settler) inBlocks(i int) bool {
	changes, last := 0, ""
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); c != "" && c != last {
			changes++
			last = c
		}
	}
	p := s.profiles[i]
	return len(p.distinct)*2 <= p.filled && changes < 2*len(p.distinct)
}

// twoLines says whether half the values of a column or more have a line break inside, or a quarter where
// no other names a club: people without one beside those who have one.
func (s *settler) twoLines(i int) bool {
	n, club := 0, false
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); strings.IndexByte(c, '\n') > 0 {
			n++
		} else {
			club = club || anyWord(c, clubWords)
		}
	}
	return n > 0 && (2*n >= s.profiles[i].filled || !club && 4*n >= s.profiles[i].filled)
}

// distances says whether the values of a column are nothing but distances, or distances
// with words about the field: "Junior 2k".
func (s *settler) distances(i int) bool {
	n := 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" || MarathonMetres(c) > 0 {
			continue
		}
		_, from, to, ok := findDistance(c)
		if !ok {
			return false
		}
		if rest := c[:from] + " " + c[to:]; plainWords(rest) != "" && !saysField(rest) {
			return false
		}
		n++
	}
	return n > 0
}

// distancesOfSections is over how many distances the races of a column are that are each called after a distance and a
// sex or a class, "5K Male", "Women 10k"; 0 where one is not.
func (s *settler) distancesOfSections(i int) int {
	metres := map[int]bool{}
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		m, from, to, ok := findDistance(c)
		if !ok || !isSection(strings.Trim(c[:from]+" "+c[to:], " -–:|/,()")) {
			return 0
		}
		metres[int(m+.5)] = true
	}
	return len(metres)
}

// startsAtZero says whether the first value of a column is zero, as that of times behind the
// first is. Where the least of the others is over half of the greatest, they are running times
// and the first was not taken.
func (s *settler) startsAtZero(i int) bool {
	first, least, most, n := true, 0.0, 0.0, 0.0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		v := looseNumber(c)
		if v > 0 {
			n++
		}
		switch {
		case first && (v != 0 || !strings.ContainsAny(c, "0")):
			return false
		case v > 0 && (least == 0 || v < least):
			least = v
		}
		first, most = false, max(most, v)
	}
	if least >= leastRun && n > 1 && least > 4*(most-least)/(n-1) {
		return false // whole times below one that nobody took, 0:00
	}
	return !first && (most == 0 || 2*least <= most)
}

// leastRun is less than any time of 5 km, and more than the second is behind the first, s.
const leastRun = 600

// beyondDay says whether a column has times that are none of a day, 24:10 and above, and all of it
// times of two figures before the colon.
func (s *settler) beyondDay(i int) bool {
	beyond := false
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); kindOf(c) == kClock {
			v := secondsOf(r.cells, i)
			if v < shortestRun || v > longestRun {
				return false
			}
			beyond = beyond || v >= 24*60
		}
	}
	return beyond
}

// beginWithTimes says whether nearly all texts of a column begin with a running time: "18:20 PB 18:11".
func (s *settler) beginWithTimes(i int) bool {
	n := 0
	for v, times := range s.profiles[i].distinct {
		if timeThenWords.MatchString(v) {
			n += times
		}
	}
	return n >= 3 && n*10 >= s.profiles[i].filled*8
}

var timeThenWords = regexp.MustCompile(`^\d{1,3}:[0-5]\d(?::[0-5]\d)?(?:[.,]\d{1,3})?[\s,;–-]+\pL`)
