package sheet

import (
	"fmt"
	"sort"
	"strings"
)

// settler decides what every column means, by headings and values together.
type settler struct {
	lex          *lexicon
	headings     []string
	guesses      []guess
	profiles     []*profile
	columns      []Column
	rows         []line // the sample
	clock        []int  // columns of hours, minutes and seconds that make up the time
	beside       beside
	between      bool // clock are the times of day of start and finish
	clockColumns int  // columns of times of which no heading says which one counts
}

// isTime says whether a column of this meaning holds running times.
func (m Meaning) isTime() bool { return m == Time || m == GunTime || m == ChipTime }

// isName says whether it holds names of people or a part of them.
func (m Meaning) isName() bool { return m == Name || m == GivenName || m == FamilyName }

// settleColumns takes the headings (nil where there are none) and a sample of
// the rows below them.
func settleColumns(lex *lexicon, book *courseBook, headings []string, rows []line, width int) *settler {
	width = max(width, len(headings))
	s := &settler{lex: lex, rows: rows, beside: noneBeside()}
	for i := 0; i < width; i++ {
		h := ""
		if i < len(headings) {
			h = headings[i]
		}
		s.headings = append(s.headings, h)
		g := lex.read(h)
		if !g.known && h != "" && len(headings) > 1 {
			if m := lex.readMisspelt(h); m.known && m.meaning != Other {
				g = m
				g.misspelt = true
			}
		}
		s.guesses = append(s.guesses, g)
		p := &profile{}
		for _, r := range rows {
			if i < len(r.cells) {
				p.add(r.cells[i])
			}
		}
		s.profiles = append(s.profiles, p)
		s.columns = append(s.columns, Column{Index: i, Heading: h})
	}
	for i := range s.columns {
		s.byHeading(i)
	}
	s.minutesAndSeconds()
	s.startAndFinish()
	s.gaps()
	s.ticks()
	s.particles()
	s.names()
	s.handicap()
	s.times()
	s.single()
	s.byValues()
	s.runNumbers()
	s.courseByValues(book)
	s.official()
	s.doubt()
	return s
}

func (s *settler) set(i int, m Meaning, format string, args ...any) {
	s.columns[i].Meaning, s.columns[i].Why = m, fmt.Sprintf(format, args...)
}

func (s *settler) find(m Meaning) int {
	for i, c := range s.columns {
		if c.Meaning == m {
			return i
		}
	}
	return -1
}

func (s *settler) all(m Meaning) (cols []int) {
	for i, c := range s.columns {
		if c.Meaning == m {
			cols = append(cols, i)
		}
	}
	return cols
}

// byHeading takes the heading's word for it unless the values speak against.
func (s *settler) byHeading(i int) {
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
			case p.shareOf(kText, kGroup, kSex) > .6 && placeWords[fold(h)] && (len(p.distinct)*2 <= p.filled || s.hasGuess(Date)):
				turn(Course, "its values are names of places")
			case p.shareOf(kText) > .6:
				turn(Other, "its values are no positions")
			case p.share(kDecimal) > .5 && strings.Contains(fold(h), "fin"):
				turn(Time, "its values are no positions but may be times")
			case p.share(kDecimal) > .5:
				turn(Other, "its values are no positions")
			case ints > .8 && p.whole && p.lo >= 400 && strings.Contains(fold(h), "fin"):
				turn(Time, "its values are no positions but may be seconds")
			}
		case Time, GunTime, ChipTime:
			switch {
			case clocks == 0 && ints > .8 && p.whole && p.lo >= 1 && p.lo <= 3 && p.unit*10 >= p.steps*8:
				turn(Position, "its values count 1, 2, 3 …")
			case p.shareOf(kText, kSex, kDate) > .6:
				turn(Other, "its values are no times")
			case m == Time && clocks > 0 && s.startsAtZero(i):
				turn(Gap, "its first value is zero: time behind the first")
			}
		case Name:
			if numbers > .8 {
				turn(Number, "its values are numbers")
			} else if clocks > .8 {
				turn(Other, "its values are times")
			}
		case GivenName, FamilyName:
			if numbers > .8 {
				turn(Other, "its values are numbers")
			} else if p.filled >= 8 && len(p.distinct) <= 2 {
				turn(Other, "its values are no names")
			}
		case Age, AgeGroup, Sex, BirthYear, BirthDate, AgeGrade:
			m, because = s.ageLike(i)
		case Course:
			switch {
			case s.distances(i):
				turn(Distance, "its values are distances")
			case clocks > .8:
				turn(Time, "its values are times")
			case p.share(kDate) > .8:
				turn(Date, "its values are dates")
			case numbers > .8:
				turn(Other, "its values are numbers")
			}
		case Date:
			switch {
			case ints > .8 && p.years == p.count[kInt] && p.hi-p.lo >= 10 && len(p.distinct) > 2:
				turn(BirthYear, "its values are years")
			case p.share(kDate) > .5:
			case ints > .8 && p.whole && p.lo > 20000 && p.hi < 80000:
				because = "its values are day numbers of a spreadsheet"
			case ints > .8 && p.lo > 19000000 && p.hi < 21000000:
			case clocks > .5:
				turn(Other, "its values are times, not dates")
			}
		case TotalRuns, PersonalBest, Points:
			if (g.meaning == TotalRuns || g.meaning == Points) && clocks > .6 {
				turn(Time, "its values are times")
			}
		case GroupPlace, SexPlace:
			if p.shareOf(kGroup) > .5 && !s.countsByLetter(i) {
				turn(AgeGroup, "its values are age groups")
			} else if p.shareOf(kSex) > .5 {
				turn(Sex, "its values are sexes")
			}
		case Number:
			switch {
			case clocks > .8:
				turn(Time, "its values are times")
			case g.number && !s.hasGuess(Name) && !s.hasGuess(FamilyName) && !s.hasGuess(GivenName) && p.shareOf(kText) > .7 && p.spaces*10 >= p.count[kText]*7:
				turn(Name, "its values are names of people")
			}
		case Session:
			if g.meaning == Session && clocks > .8 && len(p.distinct) > max(4, p.filled/2) {
				turn(Other, "its values differ from row to row: start times")
			}
		case Club:
			if first, _, _ := strings.Cut(fold(h), " "); headingWords[first]&cName != 0 && !s.hasGuess(Name) && !s.hasGuess(FamilyName) && s.twoLines(i) {
				turn(Name, "its values are of two lines: names over clubs")
			}
		case Notes:
			if p.filled > 3 && clocks > .9 {
				turn(Other, "its values are times")
			}
		}
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

// placeWords are headings that mean a rank or a place on the map.
var placeWords = set("place places lugar plaats plats plass plads miejsce posto место місце място θεση koht vieta mesto mjesto miesto")

func (s *settler) hasGuess(m Meaning) bool {
	for _, g := range s.guesses {
		if g.known && g.meaning == m {
			return true
		}
	}
	return false
}

// twoLines says whether half the values of a column or more have a line break inside.
func (s *settler) twoLines(i int) bool {
	n := 0
	for _, r := range s.rows {
		if strings.IndexByte(trim(cellAt(r.cells, i)), '\n') > 0 {
			n++
		}
	}
	return n > 0 && 2*n >= s.profiles[i].filled
}

// distances says whether the values of a column are nothing but distances.
func (s *settler) distances(i int) bool {
	n := 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		if _, from, to, ok := findDistance(c); !ok || plainWords(c[:from]+" "+c[to:]) != "" {
			return false
		}
		n++
	}
	return n > 0
}

func (s *settler) startsAtZero(i int) bool {
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); c != "" {
			return looseNumber(c) == 0 && strings.ContainsAny(c, "0")
		}
	}
	return false
}

// ageLike tells the columns apart that speak of age and sex, whatever their
// headings say: an "Age" of 64.31 is an age grade, of M40 a group.
func (s *settler) ageLike(i int) (Meaning, string) {
	g, p := s.guesses[i], s.profiles[i]
	years := 0.0
	if n := p.count[kInt]; n > 0 {
		years = float64(p.years) / float64(n)
	}
	all := p.filled - p.count[kStatus]
	if all == 0 {
		return g.meaning, ""
	}
	switch {
	case (g.meaning == Age || g.meaning == BirthYear) && p.shareOf(kDecimal, kInt) > .6 && s.wholeNumbers(i):
		return g.meaning, ""
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
	case p.shareOf(kSex) > .7:
		// "M" and "F" in a group column say only the sex.
		if g.meaning == Sex {
			return Sex, ""
		}
		return Sex, "its values say only the sex"
	case g.meaning == Sex && p.shareOf(kGroup) < .2 && p.shareOf(kSex) > 0:
		return Sex, ""
	case s.countsByLetter(i):
		return SexPlace, "its values count M1, F1, F2 …: places among men and women"
	case s.schoolForms(i):
		return Other, "its values are classes of a school"
	case p.shareOf(kGroup, kSex) > .5:
		if g.meaning == AgeGroup {
			return AgeGroup, ""
		}
		return AgeGroup, "its values are age groups"
	case p.shareOf(kInt) > .7:
		switch g.meaning {
		case Age, BirthYear:
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
			if ages, ints := s.ages(i); ages*10 >= ints*9 && !s.restarts(i) {
				return Age, "its values are ages"
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

// bornTooLate says whether some two-figure numbers of a column can't be years of
// birth of people who run today: 17 to 39 would be 1917 to 1939, or years to come.
// Dob is the age in Croatian and Serbian.
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

// names settles full names against given and family names.
func (s *settler) names() {
	full, given, family := s.find(Name), s.find(GivenName), s.find(FamilyName)
	switch {
	case full >= 0 && given >= 0 && family < 0:
		if s.contains(full, given) {
			s.columns[full].Why += "; it holds the given name too"
			s.set(given, Other, "heading %q; the full name has it", s.headings[given])
			return
		}
		s.set(full, FamilyName, "heading %q beside a column of given names", s.headings[full])
	case full >= 0 && family >= 0 && given < 0:
		if s.contains(full, family) {
			s.set(family, Other, "heading %q; the full name has it", s.headings[family])
			return
		}
		s.set(full, GivenName, "heading %q beside a column of family names", s.headings[full])
	case full >= 0 && family >= 0 && given >= 0:
		if s.profiles[full].share(kText) > .3 && s.profiles[full].filled >= s.profiles[family].filled && s.contains(full, family) {
			s.set(given, Other, "the full name has it")
			s.set(family, Other, "the full name has it")
			return
		}
		s.set(full, Other, "heading %q beside given and family names", s.headings[full])
	case full < 0 && (given >= 0) != (family >= 0):
		i := max(given, family)
		if s.profiles[i].spaces*2 > s.profiles[i].filled {
			s.set(i, Name, "heading %q, but its values are whole names", s.headings[i])
		} else if given >= 0 {
			// The family name may stand in a column without a heading.
			for _, j := range []int{given + 1, given - 1} {
				if j >= 0 && j < len(s.columns) && s.headings[j] == "" && s.profiles[j].share(kText) > .8 {
					s.set(j, FamilyName, "no heading, beside the given names")
					return
				}
			}
			s.set(i, Name, "heading %q, the only names on the sheet", s.headings[i])
		} else {
			s.set(i, Name, "heading %q, the only names on the sheet", s.headings[i])
		}
	case full >= 0 && s.profiles[full].spaces*5 < s.profiles[full].filled && full+1 < len(s.columns) && s.headings[full+1] == "" && s.profiles[full+1].share(kText) > .8:
		// One heading "Name" over two columns of names.
		s.set(full, GivenName, "heading %q over two columns of names", s.headings[full])
		s.set(full+1, FamilyName, "second column under %q", s.headings[full])
	}
}

// contains says whether the cells of column a hold those of column b.
func (s *settler) contains(a, b int) bool {
	in, n := 0, 0
	for _, r := range s.rows {
		x, y := fold(cellAt(r.cells, a)), fold(cellAt(r.cells, b))
		if x == "" || y == "" {
			continue
		}
		n++
		if x != y && strings.Contains(x, y) {
			in++
		}
	}
	return n > 0 && in*10 >= n*8
}

// minutesAndSeconds finds times that stand in two columns, minutes and seconds,
// or three with the hours. They are joined into a column of their own.
func (s *settler) minutesAndSeconds() {
	unit := func(i int) byte {
		if p := s.profiles[i]; p.filled > 0 && p.shareOf(kInt, kDecimal) < .8 {
			return 0
		}
		return unitHeading(s.headings[i])
	}
	at := map[byte]int{'h': -1, 'm': -1, 's': -1}
	for i := range s.columns {
		u := unit(i)
		if first, ok := at[u]; ok && first < 0 {
			at[u] = i
		}
	}
	if i := at['s']; i >= 0 && at['m'] < 0 && at['h'] < 0 && s.columns[i].Meaning == Other && s.profiles[i].shareOf(kInt, kDecimal) > .8 && s.profiles[i].lo >= 600 {
		s.set(i, Time, "heading %q: its values are seconds", s.headings[i])
		return
	}
	if parts := s.underOneHeading(); len(parts) > 1 && at['m'] < 0 {
		s.clock = parts
		for _, c := range s.clock {
			s.set(c, Other, "heading %q: a part of the time", s.headings[parts[0]])
		}
		return
	}
	if at['m'] < 0 || at['s'] < 0 || s.profiles[at['s']].hi >= 60 {
		return
	}
	s.clock = []int{at['m'], at['s']}
	if at['h'] >= 0 {
		s.clock = []int{at['h'], at['m'], at['s']}
	}
	for _, c := range s.clock {
		s.set(c, Other, "heading %q: a part of the time", s.headings[c])
	}
}

// underOneHeading finds minutes and seconds, or hours before them, in columns of
// which only the first has a heading, "Time": whole numbers, of which the last are
// all under 60 and go up and down.
func (s *settler) underOneHeading() []int {
	whole := func(i int, hi float64) bool {
		p := s.profiles[i]
		return p.filled >= 4 && p.whole && p.shareOf(kInt, kStatus) > .9 && p.count[kInt] > 0 && p.lo >= 0 && p.hi < hi
	}
	for i, g := range s.guesses {
		if !g.known || !g.meaning.isTime() {
			continue
		}
		n := 1
		for i+n < len(s.headings) && n < 3 && s.headings[i+n] == "" && whole(i+n, 60) {
			n++
		}
		last := s.profiles[i+n-1]
		switch {
		case n == 1 || last.rising*10 > last.steps*9 || len(last.distinct) < 4:
		case n == 2 && whole(i, 200) && s.profiles[i].lo >= 8:
			return []int{i, i + 1}
		case n == 3 && whole(i, 5):
			return []int{i, i + 1, i + 2}
		}
	}
	return nil
}

// timeUnits are headings of columns that hold a part of a time.
var timeUnits = unitsOf(map[byte]string{
	'h': "h hr hrs hour hours std stunden stunde heures heure horas hora ore ora uren uur godz timer timmar tim",
	'm': "m min mins minute minutes minuten minutos minuti minuty minuter minutter",
	's': "s sec secs second seconds sek sekunden seconde secondes segundos secondi seconden sekundy sekunder seg",
}, nil)

// clockUnits are timeUnits with the words that stand only behind figures.
var clockUnits = unitsOf(map[byte]string{
	'h': "hod hodin oras tund tundi st val sat sati ч час часа ωρες ω sa saat klst t",
	'm': "mn minut minuto perc minuta minutit dk dakika мин хв λ λεπ λεπτα",
	's': "sekund segundo mp sekunda sekundi secunde sekuntia sn saniye сек с δ δευτ",
}, timeUnits)

func unitsOf(words map[byte]string, also map[string]byte) map[string]byte {
	m := map[string]byte{}
	for unit, list := range words {
		for _, w := range strings.Fields(list) {
			m[fold(w)] = unit
		}
	}
	for w, unit := range also {
		m[w] = unit
	}
	return m
}

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
		texts := map[string]bool{}
		lastDate, lastText := "", ""
		for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
			d, c := trim(cellAt(r.cells, date)), trim(cellAt(r.cells, i))
			if d != "" && kindOf(d) == kText {
				continue
			}
			if d != "" && d != lastDate || c != "" && c != lastText {
				changes++
			}
			if d != "" {
				lastDate = d
			}
			if c != "" {
				lastText = c
				filled++
				texts[c] = true
				if kindOf(c) == kText {
					words++
				}
				if _, ok := book.exact[fold(c)]; ok {
					known++
				}
			}
			rows++
		}
		switch {
		case filled == 0 || words*10 < filled*8:
		case known*10 >= filled*8:
			s.set(i, Course, "heading %q; its values are courses already known", s.headings[i])
			return
		case rows >= 3*changes && (i == date+1 || i == date-1):
			s.set(i, Course, "heading %q, beside the date and the same for many rows", s.headings[i])
			return
		}
	}
}

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

// figures counts the columns of whole numbers whose headings say nothing.
func (s *settler) figures() (n int) {
	for i, c := range s.columns {
		if c.Meaning == Other && s.headings[i] != "" && !s.guesses[i].known && s.profiles[i].shareOf(kInt) > .8 {
			n++
		}
	}
	return n
}

// times keeps one column of the plain meaning Time.
func (s *settler) times() {
	cols := s.all(Time)
	for _, a := range cols {
		for _, b := range append(append(s.all(ChipTime), s.all(GunTime)...), cols...) {
			if a != b && s.partOf(a, b) {
				s.set(a, Pace, "heading %q, but its values are the same part of column %s in every row: a pace or a split", s.headings[a], letters(b))
				break
			}
		}
	}
	cols = s.all(Time)
	if len(s.clock) > 0 {
		for _, c := range cols {
			s.set(c, Pace, "heading %q beside a time in minutes and seconds of their own: a pace", s.headings[c])
		}
		return
	}
	if len(cols) < 2 {
		return
	}
	best := cols[0]
	better := func(a, b int) bool {
		pa, pb := s.profiles[a], s.profiles[b]
		if la, lb := s.late(a), s.late(b); la != lb {
			return lb
		}
		// Filled first, then rising down the sheet.
		fa, fb := pa.count[kClock]+pa.count[kDecimal], pb.count[kClock]+pb.count[kDecimal]
		if fa*10 < fb*8 || fb*10 < fa*8 {
			return fa > fb
		}
		ra, rb := float64(pa.rising)/float64(max(1, pa.steps)), float64(pb.rising)/float64(max(1, pb.steps))
		if ra-rb > .1 || rb-ra > .1 {
			return ra > rb
		}
		return false
	}
	for _, c := range cols[1:] {
		if better(c, best) {
			best = c
		}
	}
	for _, c := range cols {
		if c != best {
			s.set(c, Other, "heading %q; column %s is the time", s.headings[c], letters(best))
		}
	}
}

// late says whether all times of a column are beyond five hours: a clock at the
// finish (09:24:31) goes on from the start time.
func (s *settler) late(i int) bool {
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); kindOf(c) == kClock && (strings.Count(c, ":") != 2 || looseNumber(c) < 5*3600) {
			return false
		}
	}
	return s.profiles[i].count[kClock] > 0
}

// partOf says whether the times of column a are in (nearly) every row the same
// part of those of column b, and clearly less: minutes a kilometre beside the
// time, where one word ("Tempo") means the one or the other by language.
func (s *settler) partOf(a, b int) bool {
	var ratios []float64
	for _, r := range s.rows {
		x, y := trim(cellAt(r.cells, a)), trim(cellAt(r.cells, b))
		if k := kindOf(y); kindOf(x) != kClock || k != kClock && k != kInt && k != kDecimal {
			continue // the time may stand in seconds
		}
		if vx, vy := looseNumber(x), looseNumber(strings.TrimPrefix(y, "'")); vx > 0 && vy > 0 {
			if vy < 1 { // a part of a day
				vy *= 24 * 3600
			}
			ratios = append(ratios, vy/vx)
		}
	}
	if len(ratios) < 4 {
		return false
	}
	sort.Float64s(ratios)
	median := ratios[len(ratios)/2]
	near := 0
	for _, q := range ratios {
		if q > median*.97 && q < median*1.03 {
			near++
		}
	}
	if median > 60 { // 24:31:00 beside 4:54
		median /= 60
	}
	return near*10 >= len(ratios)*7 && median >= 1.4 && median <= 45
}

// official chooses the time that counts where a sheet has several.
func (s *settler) official() {
	plain, gun, chip := s.find(Time), s.find(GunTime), s.find(ChipTime)
	usable := func(i int) bool {
		return i >= 0 && s.profiles[i].filled > 0 || i >= 0 && len(s.rows) == 0
	}
	switch {
	case plain >= 0:
	case usable(gun):
		s.set(gun, Time, "heading %q: the gun time is the official time of a road race", s.headings[gun])
		if chip >= 0 {
			s.columns[chip].Why += "; not the official time of a road race"
		}
	case chip >= 0:
		s.set(chip, Time, "heading %q: the only time on the sheet", s.headings[chip])
	}
}

// single makes sure that meanings which can only stand once do.
func (s *settler) single() {
	if cols := s.all(Position); len(cols) > 1 {
		best := cols[0]
		score := func(i int) float64 {
			p := s.profiles[i]
			return float64(p.unit)/float64(max(1, p.steps)) + float64(p.rising)/float64(max(1, p.steps)) + float64(p.filled)/float64(max(1, len(s.rows)))
		}
		for _, c := range cols[1:] {
			if score(c) > score(best)+.05 {
				best = c
			}
		}
		for _, c := range cols {
			if c != best {
				s.set(c, Other, "heading %q; column %s is the position", s.headings[c], letters(best))
			}
		}
	}
	for _, m := range []Meaning{Name, GivenName, FamilyName, GunTime, ChipTime, Age, BirthYear, BirthDate, AgeGroup, Sex, Club, Number, Course, Date, Session, Distance, Status} {
		cols := s.all(m)
		if len(cols) < 2 {
			continue
		}
		best := cols[0]
		for _, c := range cols[1:] {
			if s.profiles[c].filled > 2*s.profiles[best].filled {
				best = c
			}
		}
		for _, c := range cols {
			if c != best {
				s.set(c, Other, "heading %q; column %s is the %s", s.headings[c], letters(best), m)
			}
		}
	}
}

// byValues gives columns whose heading says nothing to the meanings that are
// still missing, where the values are unmistakable.
func (s *settler) byValues() {
	bare := true
	for _, g := range s.guesses {
		bare = bare && !g.known
	}
	free := func(i int) bool { return s.columns[i].Meaning == Other && !s.guesses[i].known }
	if s.find(Position) < 0 {
		// "No" counting 1, 2, 3 is a position.
		for i, c := range s.columns {
			if (free(i) || c.Meaning == Number && s.guesses[i].number) && s.counts(i) {
				s.set(i, Position, "its values count %s", s.countText(i))
				if s.headings[i] != "" {
					s.columns[i].Why = fmt.Sprintf("heading %q and %s", s.headings[i], s.columns[i].Why)
				}
				break
			}
		}
	}
	if len(s.clock) == 0 && s.find(Time) < 0 && s.find(GunTime) < 0 && s.find(ChipTime) < 0 {
		best, several, sorted := -1, 0, 0
		for i, p := range s.profiles {
			clock := s.columns[i].Meaning == Other && fold(s.headings[i]) == "clock" && !s.late(i) // a stopwatch, not the time of day
			if !free(i) && !clock || p.shareOf(kClock) <= .8 || p.count[kClock] == 0 || s.startsAtZero(i) {
				continue
			}
			several++
			if p.rising*20 >= p.steps*19 && (p.steps >= 8 || s.find(Position) >= 0) {
				sorted++
			}
			if best < 0 || p.rising > s.profiles[best].rising {
				best = i
			}
		}
		switch {
		case several > 1 && sorted != 1 && s.lastOfGrowing(free) >= 0:
			best = s.lastOfGrowing(free)
			s.set(best, Time, "heading %q; its values are the last of the times that grow along the row", s.headings[best])
		case best >= 0 && several > 1 && sorted != 1 && !bare:
			s.clockColumns = several
		case best >= 0:
			s.set(best, Time, "its values are times")
		default:
			s.decimalTimes(free)
		}
	}
	if s.find(Name) < 0 && s.find(FamilyName) < 0 && s.find(GivenName) < 0 {
		for i, p := range s.profiles {
			if free(i) && p.shareOf(kText) > .7 && (p.spaces*10 >= p.count[kText]*7 || p.commas*10 >= p.count[kText]*7) && len(p.distinct)*10 >= min(p.filled, distinctKept)*7 {
				s.set(i, Name, "its values are names of people")
				break
			}
		}
	}
	if !bare {
		for i, p := range s.profiles {
			switch {
			case !free(i) || p.filled < 3:
			case s.find(Sex) < 0 && p.shareOf(kSex) > .9 && len(p.distinct) > 1:
				s.set(i, Sex, "heading %q not known, but its values are sexes", s.headings[i])
			case s.countsByLetter(i), s.schoolForms(i):
			case s.find(AgeGroup) < 0 && s.find(Age) < 0 && p.shareOf(kGroup) > .9 && len(p.distinct) > 1:
				s.set(i, AgeGroup, "heading %q not known, but its values are age groups", s.headings[i])
			}
		}
		return
	}
	// No heading at all: what else is unmistakable.
	for i, p := range s.profiles {
		if !free(i) || p.filled == 0 {
			continue
		}
		switch {
		case s.find(Sex) < 0 && p.shareOf(kSex) > .9:
			s.set(i, Sex, "its values are sexes")
		case s.find(AgeGroup) < 0 && p.shareOf(kGroup, kSex) > .8:
			s.set(i, AgeGroup, "its values are age groups")
		case s.find(Date) < 0 && p.share(kDate) > .8:
			s.set(i, Date, "its values are dates")
		case s.find(Age) < 0 && p.shareOf(kInt) > .9 && p.whole && p.lo >= 4 && p.hi <= 100 && p.rising*10 < p.steps*8 && p.filled >= 5:
			s.set(i, Age, "its values are whole numbers such as ages")
		case s.find(BirthYear) < 0 && p.shareOf(kInt) > .9 && p.years == p.count[kInt] && len(p.distinct) > 1:
			s.set(i, BirthYear, "its values are years")
		case s.find(Notes) < 0 && p.share(kText) > .8 && s.inBrackets(i):
			s.set(i, Notes, "its values stand in brackets")
		case s.find(Club) < 0 && s.find(Name) >= 0 && i > s.find(Name) && p.share(kText) > .8:
			s.set(i, Club, "the only other column of words")
		}
	}
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
	return cols[len(cols)-1]
}

// decimalTimes finds the time on a sheet without headings where it is written
// with a dot or a comma: numbers as large as running times that rise with the
// positions.
func (s *settler) decimalTimes(free func(int) bool) {
	if s.find(Position) < 0 {
		// Names and numbers that rise line by line, and nothing else.
		if len(s.profiles) == 2 && free(1) && s.profiles[0].share(kText) == 1 && s.profiles[0].spaces*2 > s.profiles[0].filled {
			if p := s.profiles[1]; p.share(kDecimal) == 1 && p.steps >= 5 && p.rising == p.steps && p.lo >= 12 && p.hi < 100 {
				s.set(1, Time, "its values rise line by line as running times do")
			}
		}
		return
	}
	for i, p := range s.profiles {
		if free(i) && p.shareOf(kDecimal) > .8 && p.steps >= 2 && p.rising == p.steps && p.lo >= 8 && p.hi < 200 {
			s.set(i, Time, "its values rise with the positions as running times do")
			return
		}
		if free(i) && p.count[kClock]*5 >= p.filled && p.shareOf(kClock, kDecimal) > .8 {
			s.set(i, Time, "its values are times, some with a dot")
			return
		}
	}
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

// counts says whether a column counts up: 1, 2, 3 or with gaps, as positions
// of an excerpt do.
func (s *settler) counts(i int) bool {
	p := s.profiles[i]
	if p.shareOf(kInt) < .8 || !p.whole || p.lo < 1 {
		return false
	}
	switch {
	case p.steps == 0:
		return p.lo <= 3
	case p.unit*10 >= p.steps*7:
		return p.lo <= 3 || p.rising == p.steps
	}
	if p.lo > 4 && s.inSteps(i) {
		return false // 35, 40, 45: age groups
	}
	// Positions with gaps rise all the way down and times rise with them.
	return p.rising == p.steps && p.steps >= 3 && p.hi < 10000
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
