package record

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
	"unsafe"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// Reader reads the rows of one table. It is not safe for concurrent use.
type Reader struct {
	c        Columns
	headings []string
	o        Options
	words    map[string]TakingPart
	states   map[string]Status
	problems []place.Problem // of the options

	clock     *clockColumn
	positions int // cells with a position
	ties      int
	sexes     sexColumn
	ages      ageColumn
	years     ageColumn
	ageGroups *groupColumn // groups in the age or year columns
	groups    *groupColumn
	dates     [3]int // dates that show day first, month first, neither
	yearsAt   [2]int // of two figures each, dates that can only begin with the year, only end with it
	order     dateOrder
	// groupCutsYears says that groups are reckoned on the day of the run, so that
	// one tells more than the year of birth beside it.
	groupCutsYears bool

	// ageDay and groupDay are the days that the headings name.
	ageDay, groupDay reckonDay

	pairs   []agePair
	inNames nameAges
	// groups and sexes in brackets behind names, and sexes before places
	inBrackets   inBrackets
	bareGroups   bareGroups
	linkText     linkText
	placeSexes   placeSexes
	placeLetters placeLetters
	titles       nameTitles
	tails        nameTails
	timeTails    nameTails // sexes behind the times
	// clubInNames says that the heading of the names announces the club behind them.
	clubInNames bool
	// timed counts lines with a time, timedSay those of them that have a status.
	timed, timedSay int
	// nameWords counts names of one word, and of more.
	nameWords [2]int
	// oddNames counts names that begin with a small letter, and such with figures.
	oddNames [2]int
	// dashOut counts lines with a dash in place of a place that say that the runner has
	// not finished, dashTimed those that have a time.
	dashOut, dashTimed int
	// clubMark is what it stands behind, where that is no bracket.
	clubMark  string
	nameClubs [len(clubMarks)]nameClubs
	// bracketClubs counts clubs in brackets.
	bracketClubs nameClubs
	packed       packedNames
	nameMarks    nameMarks
	nameOrder    nameOrder // of family and given name
	factsOf      map[string]remarkFacts
	remarks      map[string]remark
	usualKM      int             // length of most rows' run
	bearing      map[string]bool // notes by whether a person has to read them
	nobody       *nobody

	nextBirthday bool // the ages are those to come

	cell      clockCell // of the row in hand
	scratch   []byte
	nameRoom  []byte
	spare     groupEntry
	ageWindow [128]struct {
		on unit.Day
		w  age.Window
	}
	bestFor struct {
		distanceM int
		ms        [2]int32 // men's and anybody's, women's
	}
}

// NewReader prepares to read a table with these columns. headings are the
// headings of all cells, by index; they may be short or nil.
func NewReader(c Columns, headings []string, o Options) *Reader {
	if o.Rule.Scheme.Masters == 0 {
		o.Rule = age.DefaultRule()
	}
	if o.AgeBasis == age.NoBasis {
		o.AgeBasis = age.OnTheDay
	}
	if o.GroupBasis == age.NoBasis {
		o.GroupBasis = age.OnTheDay
		if o.Rule.Reckoning != age.ByDay {
			o.GroupBasis = age.AsSet
		}
	}
	if o.SeasonMonth == 0 {
		o.SeasonMonth, o.SeasonDay = 1, 1
	}
	r := &Reader{c: c, headings: headings, o: o, words: map[string]TakingPart{}, states: map[string]Status{},
		clock: newClockColumn(o.DistanceM), remarks: map[string]remark{}, bearing: map[string]bool{}, usualKM: (cmp.Or(o.DistanceM, 5000) + 500) / 1000, nobody: newNobody(o.Name)}
	r.configure()
	if b, ok := headingBasis(r.heading(c.Age)); ok {
		r.o.AgeBasis = b
	}
	r.nextBirthday = strings.Contains(r.heading(c.Age), "next birthday")
	if b, ok := headingBasis(r.heading(c.Group)); ok {
		r.o.GroupBasis = b
	}
	if d, ok := headingDay(r.heading(c.Age)); ok && (d.year > 0 || r.o.AgeBasis != age.YearEnd) {
		r.ageDay, r.o.AgeBasis = d, age.SeasonStart
	}
	if d, ok := headingDay(r.heading(c.Group)); ok && (d.year > 0 || r.o.GroupBasis != age.YearEnd) {
		r.groupDay, r.o.GroupBasis = d, age.SeasonStart
	}
	r.nameOrder = newNameOrder(r.heading(c.Name))
	r.sexes.marks = map[string]sexMark{}
	for i, mark := range clubMarks {
		r.nameClubs[i].mark = mark
	}
	r.bracketClubs.mark = bracketMark
	r.tails.sexes.marks = map[string]sexMark{}
	r.timeTails.sexes.marks = map[string]sexMark{}
	r.years.yearHeading = true
	r.ageGroups = newGroupColumn(o.Rule.Scheme, r.words, r.states)
	r.groups = newGroupColumn(o.Rule.Scheme, r.words, r.states)
	r.inBrackets.column = newGroupColumn(o.Rule.Scheme, r.words, r.states)
	r.bareGroups.column = newGroupColumn(o.Rule.Scheme, r.words, r.states)
	r.Know(o.Groups)
	return r
}

// WordMeanings are what a word of the settings may stand for.
func WordMeanings() []string { return append(slices.Clone(takingPartWords[:]), statusWords[:]...) }

// configure takes the extra words of the settings.
func (r *Reader) configure() {
	for text, means := range r.o.Words {
		key := string(fold(nil, text))
		found := false
		for i, w := range takingPartWords {
			if w == means {
				r.words[key], found = TakingPart(i), true
			}
		}
		for i, w := range statusWords {
			if w == means {
				r.states[key], found = Status(i), true
			}
		}
		if !found {
			r.problems = append(r.problems, place.Problem{Severity: place.Look, Kind: "setting-unknown", Read: text + " = " + means,
				Expected: "one of " + strings.Join(takingPartWords[:], ", ") + "; " + strings.Join(statusWords[:], ", "),
				Do:       "Correct the word in the settings"})
		}
	}
}

// cell is the trimmed text of a column, "" where the sheet or the row has none.
func cell(cells []string, index int) string {
	if index < 0 || index >= len(cells) {
		return ""
	}
	s := cells[index]
	if isNull(s) {
		return ""
	}
	if len(s) > 0 && (s[0] <= ' ' || s[0] >= 0x80 || s[len(s)-1] <= ' ' || s[len(s)-1] >= 0x80) {
		s = trim(s)
	}
	if (strings.Contains(s, "\u00A0") || strings.Contains(s, "\u202F")) && !strings.ContainsAny(s, "ÂÃÄÅ") { // half of an à in another encoding
		s = unbroken.Replace(s)
	}
	return s
}

// unbroken makes the spaces at which no line is broken plain ones, as web pages and word processors put them between
// the parts of a name, a time or a club.
var unbroken = strings.NewReplacer("\u00A0", " ", "\u202F", " ")

// words is a cell of words, with its letters put right where a program has written them
// as those of a web page, "16 mar&ccedil;o 1999", or in another encoding; "" for a formula
// that found nothing, #N/A.
func words(cells []string, index int) string {
	s := cell(cells, index)
	if s != "" && s[0] == '#' && name.FormulaError(s) {
		return ""
	}
	if strings.IndexByte(s, '&') >= 0 || strings.ContainsAny(s, "ÂÃÄÅ") {
		s = name.Clean(s)
	}
	return s
}

// Observe counts what a row shows about how its columns are written. Every row
// must come by here before Settle, in the order of the sheet. day is the day of its
// run, distanceM its distance in metres; 0 where they are not known.
func (r *Reader) Observe(row int, cells []string, day unit.Day, distanceM int) {
	r.clock.over(distanceM)
	var pos int32
	dash := false
	if s := cell(cells, r.c.Position); s != "" {
		p, tied, blank, ok := parsePosition(s)
		dash = blank && strings.Contains(s, "-")
		if ok {
			pos = p
			r.positions++
			if tied {
				r.ties++
			}
		} else {
			r.placeSexes.observe(s)
			r.placeLetters.observe(s)
		}
	}
	if r.c.Time >= 0 {
		s := cell(cells, r.c.Time)
		if r.c.Sex < 0 {
			r.timeTails.observe(s, &r.scratch)
		}
		lexClock(s, &r.scratch, &r.cell)
		r.clock.observe(row, s, &r.cell, pos, day)
		switch {
		case !dash || s == "" && cell(cells, r.c.Status) == "":
		case r.cell.shape != blankClock && r.cell.shape != notClock:
			r.dashTimed++
		case r.out(s) || r.out(words(cells, r.c.Status)):
			r.dashOut++
		}
		if r.c.Status >= 0 && r.cell.shape != blankClock && r.cell.shape != notClock {
			if r.timed++; cell(cells, r.c.Status) != "" {
				r.timedSay++
			}
		}
	}
	if s := words(cells, r.c.Sex); s != "" {
		r.sexes.observe(s, &r.scratch)
	}
	if r.c.Age >= 0 {
		r.observeAge(&r.ages, words(cells, r.c.Age), day)
	}
	if r.c.BirthYear >= 0 {
		r.observeAge(&r.years, words(cells, r.c.BirthYear), day)
	}
	if s := words(cells, r.c.BirthDate); s != "" {
		r.scratch = fold(r.scratch[:0], s)
		r.observeDate(r.scratch)
	}
	r.nameMarks.observe(cell(cells, r.c.Name))
	name := r.nameCell(cells)
	somebody := name
	if nobody, _, _ := r.nobody.ask(name); nobody {
		somebody = "" // has neither title nor age, and is no name without one
	}
	if somebody != "" {
		r.packed.observe(cell(cells, r.c.Name))
	}
	r.nameOrder.observe(name)
	r.observeWords(name, cells)
	if r.c.Sex < 0 || r.titles.names < titleLooks || r.titles.men+r.titles.women > 0 {
		r.titles.observe(cmp.Or(somebody, cell(cells, r.c.Given)))
	}
	r.linkText.observe(name)
	if r.tails.observe(somebody, &r.scratch); r.tails.dates > 0 && r.c.BirthDate < 0 {
		if at, tail := tailOf(name); at > 0 {
			r.scratch = fold(r.scratch[:0], tail)
			r.observeDate(r.scratch)
		}
	}
	if r.c.Club < 0 {
		before := name
		if at, _, figure := bareGroup(name); figure && r.c.Group < 0 {
			before = name[:at]
		}
		for i := range r.nameClubs {
			r.nameClubs[i].observe(before)
		}
		r.bracketClubs.observe(before)
	}
	if r.c.Age < 0 && r.c.BirthYear < 0 && r.c.BirthDate < 0 {
		r.inNames.observe(somebody)
	}
	if r.c.Group < 0 {
		if s := bracketGroup(name); s != "" {
			r.inBrackets.observe(s, &r.scratch)
		}
		r.bareGroups.observe(name, &r.scratch)
	}
	if s := words(cells, r.c.Group); s != "" {
		i := r.groups.observe(s, &r.scratch)
		if i >= 0 && len(r.pairs) < pairLimit && (r.c.Age >= 0 || r.c.BirthYear >= 0 || r.c.BirthDate >= 0) {
			r.pair(i, cells, day)
		}
	}
}

func (r *Reader) observeAge(k *ageColumn, s string, day unit.Day) {
	c := lexAge(s)
	k.on = max(k.on, day)
	if c.text {
		r.scratch = fold(r.scratch[:0], s)
		if plain := lexAge(string(r.scratch)); !plain.text { // digits of another script
			c = plain
		} else if n, ok := ageWithUnit(r.scratch); ok {
			c = ageCell{n: n}
		} else if !r.observeDate(r.scratch) {
			k.observeAffix(r.scratch)
			r.ageGroups.observe(s, &r.scratch)
		}
	}
	k.observe(c)
}

func (r *Reader) observeDate(b []byte) bool {
	d, ok := lexDate(b)
	if ok {
		switch {
		case d.short && d.a > 31:
			r.yearsAt[0]++
		case d.short && d.c > 31:
			r.yearsAt[1]++
		}
		switch {
		case d.order == dayFirst:
			r.dates[0]++
		case d.order == monthFirst:
			r.dates[1]++
		case d.order == undecided && d.a != d.b:
			r.dates[2]++
		}
	}
	return ok
}

// heading is the folded heading of a column.
func (r *Reader) heading(index int) string {
	if index < 0 || index >= len(r.headings) {
		return ""
	}
	return string(fold(nil, r.headings[index]))
}

// Read turns one row into facts. day is the day of the run, distanceM its
// distance in metres (0: not known, taken as 5000). It allocates nothing for a
// row without problems, once out.Problems has room.
func (r *Reader) Read(row int, cells []string, day unit.Day, distanceM int, out *Line) {
	*out = Line{Row: int32(row), Problems: out.Problems[:0]}
	r.clock.over(distanceM)
	ended := OK // what the cells say outright
	say := func(st Status) {
		if st == NotStarted || ended != NotStarted && (st == DQ || ended == OK) {
			ended = st
		}
	}
	take := func(m remark) {
		if m.part != Runner && out.TakingPart == Runner {
			out.TakingPart = m.part
		}
		if m.status != OK && m.status != Untimed {
			say(m.status)
		}
	}

	unplaced := "" // what stands for the place and speaks against the time
	if s := cell(cells, r.c.Position); s != "" {
		pos, tied, blank, ok := parsePosition(s)
		if r.placeLetters.on && !ok {
			if p, letter, both := letterBehind(s); both {
				pos, ok = int32(p), true
				if r.c.Sex < 0 {
					out.Sex = r.placeLetters.letters.is[letter]
				}
			}
		}
		switch m := (remark{}); {
		case ok:
			out.Position, out.Tied = pos, tied
		case blank:
		default:
			if m = r.remark(s); m != (remark{}) || r.unranked(s) {
				if take(m); m.status == Untimed || m == (remark{}) {
					unplaced = s
				}
				break
			}
			if _, ok := sexOfPlace(s); ok && r.placeSexes.said() {
				break
			}
			out.problem(row, r.c.Position, place.Note, "position-unreadable", s, "a whole number, or 3= for a tie", "Correct the position in the sheet if it matters")
		}
	}

	s := cell(cells, r.c.Time)
	c := &r.cell
	lexClock(s, &r.scratch, c)
	timeDoubt := false
	if _, said := timeAndRemark(s); said != "" && !c.unsure {
		switch m := r.remark(said); { // "24:31 walker", "24:31 (DNF)", "24:31 one lap only"
		case m.part != Runner || m.status != OK && m.status != Untimed:
			if take(m); c.shape == notClock {
				lexTimed(s, &r.scratch, c)
			}
		case m.status == Untimed || m.sure && !ofBefore(said) || doubtsTime(said):
			if lexTimed(s, &r.scratch, c); c.shape != notClock && c.shape != blankClock {
				timeDoubt = true
				out.doubtTime(row, r.c.Time, s)
			}
		case c.shape == notClock || c.words:
			const few = 5 // one time in so many
			if c.shape == notClock {
				lexTimed(s, &r.scratch, c)
			}
			if c.shape != notClock && c.shape != blankClock && few*(r.clock.unclear+r.clock.worded) <= r.clock.all() {
				out.problem(row, r.c.Time, place.Note, "time-with-words", s, "a running time and nothing else", "Nothing, if the words say nothing against the time")
			}
		}
	}
	if ms, otherwise, unsure, ok := r.clock.read(row, c); ok {
		out.TimeMS = ms
		if otherwise != unread || c.repaired && !r.clock.soWritten() {
			sev, do := place.Note, "Nothing, if that is right"
			if unsure {
				sev, do, timeDoubt = place.Doubtful, "The time can be read in two ways; please ask, then correct the cell", true
			}
			out.problem(row, r.c.Time, sev, "time-read-as", s, unit.ClockMS(ms), do)
		}
		if c.second && !timeDoubt && 2*r.clock.seconds <= r.clock.all() {
			timeDoubt = true
			out.problem(row, r.c.Time, place.Doubtful, "time-read-as", s, unit.ClockMS(ms), "The cell holds two times; please ask which counts, then correct the cell")
		}
		if c.unsure && !timeDoubt {
			timeDoubt = true
			out.problem(row, r.c.Time, place.Doubtful, "time-estimated", s, "a time that was measured",
				"The sheet marks this time as estimated, so it stands in the list and in no best time or record. If it was measured, correct the cell")
		}
	} else if c.shape != blankClock {
		switch m := r.remark(s); {
		case m != remark{}:
			take(m)
			if m.first != OK {
				say(m.first)
			}
		default:
			timeDoubt = true
			out.problem(row, r.c.Time, place.Doubtful, "time-unreadable", s, "a running time like 24:31", "Correct the time in the sheet, or enter it with a correction")
		}
	}

	if unplaced == "" && struckOut(s) {
		unplaced = s
	}
	if unplaced != "" && out.TimeMS > 0 && !timeDoubt {
		timeDoubt = true
		out.doubtTime(row, r.c.Position, unplaced)
	}

	if other := cell(cells, r.c.Chip); s == "" && r.out(other) {
		take(r.remark(other)) // DNF under the chip's times, and nothing under the gun's
	}

	for _, index := range [...]int{r.c.Status, r.c.Notes} {
		if s := words(cells, index); s != "" {
			m := r.remark(s)
			take(m)
			switch {
			case m.first != OK && (out.TimeMS == 0 || out.Position == 0 && r.c.Position >= 0):
				say(m.first)
			case m.cut && out.TimeMS == 0 && out.Position == 0:
				say(DNF)
			case strings.Contains(s, text.TimePutRight) && m.status == Untimed: // the note speaks of the time that stood there
			case out.TimeMS > 0 && !timeDoubt && (m.status == Untimed || m.status == OK && m.sure && !ofBefore(s)):
				timeDoubt = true
				out.doubtTime(row, index, s)
			case index == r.c.Notes && out.TimeMS > 0 && m == remark{} && r.mayBear(s):
				out.problem(row, index, place.Look, "note-may-bear", s, "a note that changes nothing in this result",
					"Read this note. If the time, the runner or the way was another, correct the row; otherwise there is nothing to do")
			}
			if index == r.c.Notes {
				out.Note = s
			}
		}
	}

	doubted := r.readName(cells, out, take)
	out.Number = cell(cells, r.c.Number)
	if out.Club = words(cells, r.c.Club); r.clubInNames {
		name := r.withoutGroup(r.nameCell(cells))
		if _, below, two := strings.Cut(name, "\n"); two {
			out.Club = trim(below)
		} else if r.clubMark != "" {
			if before, behind, comma := strings.Cut(name, r.clubMark); comma && strings.IndexByte(trim(before), ' ') > 0 {
				out.Club = trim(behind)
			}
		} else {
			out.Club = bracketText(name)
		}
	} else if out.Club == "" && r.c.Name >= 0 {
		if _, club, ok := r.unpackName(cell(cells, r.c.Name)); ok && r.packed.on {
			out.Club = club
		} else {
			_, out.Club = clubBehind(r.nameCell(cells))
		}
	}
	r.readPerson(row, cells, day, out, take)
	if out.Sex == NotGiven {
		out.Sex = sexOfPrize(out.Note)
	}
	if out.TimeMS > 0 && !timeDoubt && ended == OK {
		switch club := cell(cells, r.c.Club); {
		case doubted:
			timeDoubt = true
			out.doubtTime(row, max(r.c.Name, r.c.Family), r.rawName(cells))
		case r.c.Club >= 0 && r.endsInClub(club):
			timeDoubt = true
			out.doubtTime(row, r.c.Club, club)
		}
	}

	impossible := out.TimeMS > 0 && !out.TakingPart.OnWheels() && out.TimeMS < r.fastest(distanceM, out.Sex)
	switch {
	case ended == NotStarted && out.TimeMS > 0:
		out.Status = Doubtful
		out.problem(row, r.c.Time, place.Doubtful, "time-of-no-starter", s, "no time beside a word for somebody who did not start",
			"The sheet says that this runner did not start, and gives a time; please ask, then correct one of the two")
	case ended != OK:
		out.Status = ended
	case r.unnamed(row, cells, out):
		out.Status = Unnamed
	case out.TimeMS == 0 && !timeDoubt && out.Position == 0 && (r.blankIsAbsent() || r.dashIsOut() && strings.Contains(cell(cells, r.c.Position), "-")) && cell(cells, r.c.Status) == "" && cell(cells, r.c.Time) == "":
		out.Status = NotStarted
	case out.TimeMS == 0 && !timeDoubt && out.Position == 0 && (helpedOnly(cell(cells, r.c.Notes)) || helpedOnly(cell(cells, r.c.Time))):
		out.Status = NotStarted
	case out.TimeMS == 0 && !timeDoubt:
		out.Status = Untimed
	case timeDoubt || impossible || out.Status == Doubtful:
		out.Status = Doubtful
	}
	if impossible && ended == OK {
		out.problem(row, r.c.Time, place.Doubtful, "time-impossible", s, "not faster than "+unit.ClockMS(r.fastest(distanceM, out.Sex))+", the open standard of the distance",
			"The time doesn't fit; please ask, then correct the time, the distance or the way of taking part")
	}
	if out.TimeMS > 3*3600*1000 && ended == OK {
		out.problem(row, r.c.Time, place.Note, "time-over-3-hours", s, "", "Nothing, if that is right")
	}
}

// blankIsAbsent says whether a line without a status has not finished, as on a list of
// all who signed up: every line with a time says that it is a finisher's.
func (r *Reader) blankIsAbsent() bool { return r.timedSay >= 4 && r.timedSay == r.timed }

// dashIsOut says whether a dash in place of a place stands for those who have not finished.
func (r *Reader) dashIsOut() bool { return r.dashOut >= 2 && r.dashTimed == 0 }

// endsInClub says whether what stands in the column of clubs is how the race ended, and no club's
// initials.
func (r *Reader) endsInClub(s string) bool {
	switch s {
	case "dnf", "dns", "dq":
		return true
	}
	return statusCode(s) || len(s) > 3 && r.out(s) && (strings.ContainsAny(s, " /") || len(s) > 5)
}

// struckOut says whether letters or figures of a text are struck through by the marks of Unicode that lie over them
// (U+0335 to U+0338), whole words of them.
func struckOut(s string) bool {
	if strings.IndexByte(s, 0xcc) < 0 { // the first byte of these marks
		return false
	}
	struck := 0
	for _, r := range s {
		if r >= 0x335 && r <= 0x338 {
			struck++
		}
	}
	return struck >= 3
}

// unranked says whether a text in the place of a place is that its runner is in no ranking.
func (r *Reader) unranked(s string) bool {
	r.scratch = fold(r.scratch[:0], s)
	return unranked[string(r.scratch)]
}

var unranked = wordSet(text.Unranked)

// out says whether a text is a word for a run that was not finished or does not count.
func (r *Reader) out(s string) bool {
	if s == "" {
		return false
	}
	m := r.remark(s)
	return m.status == DNF || m.status == DQ || m.status == NotStarted
}

// problem notes something about one cell; index -1 is the whole row.
func (l *Line) problem(row, index int, sev place.Severity, kind, read, expected, do string) {
	p := place.Problem{Place: place.Place{Row: row}, Severity: sev, Kind: kind, Read: strings.Clone(read), Expected: expected, Do: do}
	if index >= 0 {
		p.Place.Column = place.ColumnLetters(index)
	}
	l.Problems = append(l.Problems, p)
}

// doubtTime notes that words beside a time speak against it.
func (l *Line) doubtTime(row, index int, read string) {
	l.problem(row, index, place.Doubtful, "time-doubted-by-note", read, "nothing against the time",
		"Does this time count? Until you say, it doesn't. If it does: lapwing correct … --reinstate; if not: --disqualify or --did-not-finish")
}

// observeWords counts whether the name is of one word or of more.
func (r *Reader) observeWords(name string, cells []string) {
	small, figure := oddly(name)
	if small {
		r.oddNames[0]++
	}
	if figure {
		r.oddNames[1]++
	}
	switch {
	case strings.IndexByte(name, ' ') > 0 || name == "" && cell(cells, r.c.Given) != "" && cell(cells, r.c.Family) != "":
		r.nameWords[1]++
	case name != "" || cell(cells, r.c.Given) != "" || cell(cells, r.c.Family) != "":
		r.nameWords[0]++
	}
}

// oddly says whether a name is a word that begins with a small letter, and whether a word of it begins with a
// figure.
func oddly(name string) (small, figure bool) {
	first, _ := utf8.DecodeRuneInString(name)
	return unicode.IsLower(first) && strings.IndexByte(name, ' ') < 0, beginsWithFigure(name)
}

func beginsWithFigure(name string) bool {
	for i := range len(name) {
		if name[i] >= '0' && name[i] <= '9' && (i == 0 || name[i-1] == ' ') {
			return true
		}
	}
	return false
}

// oddName says whether a name is written so where hardly any other is: "same", "as 4", "1 hour".
func (r *Reader) oddName(name string) bool {
	const few = 8 // one name in so many
	if r.nameWords[0]+r.nameWords[1] < few {
		return false
	}
	small, figure := oddly(name)
	return small && few*r.oddNames[0] <= r.nameWords[0]+r.nameWords[1] || figure && few*r.oddNames[1] <= r.nameWords[0]+r.nameWords[1]
}

// remarkOn is what stands in brackets in a name, or behind a dash.
func remarkOn(name string) string {
	if i := strings.IndexByte(name, '('); i >= 0 {
		return strings.Trim(name[i+1:], "() ")
	}
	_, behind, _ := strings.Cut(name, " - ")
	return behind
}

// loneWord says whether a name is a single word, with a number perhaps, for nobody in particular,
// on a list that has family names beside all but a few given names.
func (r *Reader) loneWord(text string) bool {
	const few = 8
	word, number, _ := strings.Cut(text, " ")
	if r.nameWords[1] < 5 || few*r.nameWords[0] > r.nameWords[1]+few || number != "" && !allDigits([]byte(number)) {
		return false
	}
	return name.IsLoneWord(word)
}

// rawName is what the cells of the name say.
func (r *Reader) rawName(cells []string) string {
	if s := cell(cells, r.c.Name); s != "" {
		return s
	}
	return trim(cell(cells, r.c.Given) + " " + cell(cells, r.c.Family))
}

// strikes are marks around what was struck out, as typed.
var strikes = [...]string{"~~", "--", "<s>", "<del>", "<strike>"}

// markedInDoubt says whether a name has a question mark, which is no letter that was lost, words for an example
// before it, or marks around it by which it is struck out.
func markedInDoubt(s string) bool {
	if i := strings.IndexByte(s, '?'); i >= 0 {
		switch n := len(s); {
		case strings.Contains(s, "??"), i+1 < n && s[i+1] == ' ' && (i == 0 || s[i-1] == ' '), i+1 == n && (i == 0 || s[i-1] == ' '), i == 0:
			return true
		case i+1 == n && i > 2 || i+2 == n && (s[i+1] == ')' || s[i+1] == ']'):
			return true
		}
	}
	if strings.Contains(s, "=>") || strings.Contains(s, "->") || strings.Contains(s, "→") {
		return true
	}
	for _, shown := range [...]string{"e.g. ", "E.g. ", "eg. ", "z.B. ", "z. B. ", "p. ex. ", "p.ex. "} {
		if strings.HasPrefix(s, shown) {
			return true // how a line is to be filled in
		}
	}
	if struckOut(s) || len(s) > 8 && s[0] == '~' && s[len(s)-1] == '~' {
		return true
	}
	for _, mark := range strikes {
		if len(s) > 2*len(mark) && strings.HasPrefix(s, mark) && (mark[0] == '<' || strings.HasSuffix(s, mark)) {
			return true
		}
	}
	return false
}

// otherName says whether what stands in brackets behind a name puts another in its place: "(or Ann Fox)",
// "(really Ann Fox)".
func otherName(s string) bool {
	first, rest, _ := strings.Cut(s, " ")
	switch first {
	case "or", "not", "really", "actually", "aka", "alias", "oder", "ou", "eigentlich":
		return rest != ""
	}
	return false
}

// readName takes the name from its column, or from given and family name. doubted says that what
// stands beside it sets the line in doubt.
func (r *Reader) readName(cells []string, out *Line, take func(remark)) (doubted bool) {
	takeMore := take
	take = func(m remark) {
		doubted = doubted || m.status == Untimed
		takeMore(m)
	}
	text := r.nameCell(cells)
	if _, m, ok := r.outerRemark(r.nameMarks.plain(cell(cells, r.c.Name))); ok {
		take(m)
	}
	given, family := cell(cells, r.c.Given), cell(cells, r.c.Family)
	if r.titles.said() {
		if _, at := r.titles.titleSex(given); at > 0 {
			given = trim(given[at:])
		}
	}
	switch {
	case text != "":
	case given == "":
		text = family
	case family == "":
		text = given
	default:
		r.nameRoom = append(append(append(r.nameRoom[:0], family...), ", "...), given...)
		text = unsafe.String(&r.nameRoom[0], len(r.nameRoom))
	}
	doubted = markedInDoubt(text)
	text = r.remarkBehind(text)
	text = withoutNumber(text)
	if _, at := r.titles.read(text); at > 0 {
		text = trim(text[at:])
	}
	if at, _, _, _ := r.tails.read(text, 0, &r.scratch); at > 0 && text[at] != '(' && text[at] != '[' {
		text = trim(text[:at])
	}
	text, _, _ = saidAge(text)
	text = withoutFigure(text)
	if name, dog := withoutDog(text); dog {
		take(remark{part: Dog})
		text = name
	}
	text = r.withoutGroup(text)
	if before, m, ok := r.leadingRemark(text); ok {
		take(m)
		text = before
	}
	if n := len(text); n > 0 && (text[n-1] == ')' || text[n-1] == ']') {
		if i := strings.LastIndexAny(text, "(["); i > 0 {
			doubted = doubted || otherName(text[i+1:n-1])
			if m := r.remark(text[i+1 : n-1]); m.part != Runner || m.status != OK && !name.MayBeFamily(text[i+1:n-1]) {
				take(m)
				text = trim(text[:i])
			} else if r.linkText.is(text[i:]) {
				text = trim(text[:i])
			}
		}
	}
	text = r.cutStatus(text, take)
	if text != "" && (text[0] == 'T' || text[0] == 'S' || text[0] == 'B') {
		text = cutBackMarker(text, take)
	}
	if last := strings.LastIndexByte(text, ' ') + 1; strings.ContainsAny(text, ":-–") || last > 0 && last < len(text) && text[last] >= 'a' && text[last] <= 'z' {
		text = r.cutRole(text, take)
	}
	text = withoutNote(text)
	if i := strings.IndexByte(text, '\n'); i > 0 && r.clubInNames {
		text = trim(text[:i]) // the club stands below
	}
	if r.clubMark != "" {
		if before, _, comma := strings.Cut(text, r.clubMark); comma && strings.IndexByte(trim(before), ' ') > 0 {
			text = trim(before)
		}
	} else if at, _ := clubBehind(text); at > 0 {
		text = trim(text[:at])
	}
	text = r.nameOrder.withoutStroke(text)
	if at := r.nameOrder.split(text); at > 0 && at < len(text) {
		if nobody, _, _ := r.nobody.ask(text); !nobody {
			r.nameRoom = append(append(append(r.nameRoom[:0], text[:at]...), ','), text[at:]...)
			text = unsafe.String(&r.nameRoom[0], len(r.nameRoom))
		}
	}
	out.Name = text
	return doubted
}

// remarkBehind moves how a race ended, or how somebody took part, from behind the family name to the end, where it
// is looked for: "Lee (DNF), Jo" is Lee, Jo (DNF). So does a note: "Lee - PB, Jo".
func (r *Reader) remarkBehind(s string) string {
	family, given, ok := strings.Cut(s, ", ")
	if !ok || given == "" {
		return s
	}
	n := len(family)
	at := strings.LastIndexByte(family, ' ')
	switch {
	case at < 1:
		return s
	case family[n-1] == ')' || family[n-1] == ']':
		if at = strings.LastIndexAny(family, "(["); at < 1 {
			return s
		}
		if m := r.remark(family[at+1 : n-1]); m.part == Runner && m.status == OK || name.MayBeFamily(family[at+1:n-1]) {
			return s
		}
	default:
		if dash := max(strings.LastIndex(family, " - "), strings.LastIndex(family, " – ")); dash > 0 {
			if m := r.remark(trim(strings.TrimLeft(family[dash:], " -–"))); m.status == OK && withoutNote("A B"+family[dash:]) != "A B" || r.out(given) {
				return s // "Lee - Walker, Jo" may be a name; "Jo Lee - cut a corner, DQ"
			}
			at = dash
		} else if !statusCode(family[at+1:]) {
			return s
		}
	}
	return trim(family[:at]) + ", " + given + " " + trim(family[at:])
}

// statusCode says whether a word is one of the usual codes in capitals for how a race ended.
func statusCode(w string) bool {
	switch w {
	case "DNF", "DNS", "DQ", "DSQ", "OTL":
		return true
	}
	return false
}

// leadingRemark takes how a race ended, or how somebody took part, off a name of two words or more that has it in
// brackets before it, "(DQ) Jo Lee", or behind a comma, "Jo Lee, excluded".
func (r *Reader) leadingRemark(s string) (name string, m remark, ok bool) {
	said := ""
	switch at := strings.IndexByte(s, ','); {
	case len(s) < 8:
	case s[0] == '(' || s[0] == '[':
		if end := strings.IndexAny(s, ")]"); end > 1 {
			said, name = s[1:end], trim(s[end+1:])
		}
	case at > 0:
		// A single word behind a comma that says how a race ended in words of its own: "Stopp" is a family.
		said, name = trim(s[at+1:]), trim(s[:at])
		if r.scratch = fold(r.scratch[:0], said); statusPhrases[string(r.scratch)] == OK || len(said) < 6 && said != strings.ToUpper(said) {
			return s, m, false
		}
	}
	if strings.IndexByte(name, ' ') < 0 {
		return s, m, false
	}
	m = r.remark(said)
	return name, m, m.part != Runner || m.status != OK
}

// withoutGroup takes off a name the age group that nearly every name of its column has behind it.
func (r *Reader) withoutGroup(name string) string {
	if r.bareGroups.on {
		if at, _, _ := bareGroup(name); at > 0 {
			return name[:at]
		}
	}
	return name
}

// withoutNumber takes the number of the line off the name behind it: "12. Jo Lee".
func withoutNumber(s string) string {
	n := 0
	for n < len(s) && n < 5 && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	if n == 0 || n > 4 || n+2 >= len(s) || s[n] != '.' && s[n] != ')' || s[n+1] != ' ' {
		return s
	}
	if rest := trim(s[n+2:]); rest != "" && !(rest[0] >= '0' && rest[0] <= '9') {
		return rest
	}
	return s
}

// cutStatus takes off a name how the line ended where that stands in capitals behind a name of two
// words and more, "Jo Lee DNF", before it, or alone in its place.
func (r *Reader) cutStatus(text string, take func(remark)) string {
	n := len(text)
	if n > 5 && text[n-1] == '.' && text[n-3] == '.' { // Jo Lee D.Q.
		at := strings.LastIndexByte(text, ' ') + 1
		text = text[:at] + strings.ReplaceAll(text[at:], ".", "")
		n = len(text)
	}
	if n < 2 || text[n-1] < 'A' || text[n-1] > 'Z' {
		if n < 5 || text[0] != 'D' {
			return text
		}
	}
	first, last := text[:max(0, strings.IndexByte(text, ' '))], text[strings.LastIndexByte(text, ' ')+1:]
	code, name := "", ""
	switch {
	case statusCode(text):
		code = text
	case statusCode(last):
		code, name = last, strings.TrimRight(text[:n-len(last)], " -–,:;(")
	case statusCode(first):
		code, name = first, strings.TrimLeft(text[len(first):], " -–,:;")
	default:
		return text
	}
	if name == "" || strings.IndexByte(name, ' ') > 0 {
		take(r.remark(code))
		return name
	}
	return text
}

// cutBackMarker takes the word for who walks at the end off a name of two words and more behind it:
// "Sweeper Jo Lee".
func cutBackMarker(text string, take func(remark)) string {
	for _, role := range [...]string{"Tail walker ", "Tail Walker ", "Tailwalker ", "Back marker ", "Backmarker ", "Sweeper ", "TW "} {
		if name, ok := strings.CutPrefix(text, role); ok && strings.IndexByte(trim(name), ' ') > 0 {
			take(remark{part: BackMarker})
			return trim(name)
		}
	}
	return text
}

// withoutDog takes the dog off a name of two words and more, "Jo Lee & dog Rex", "Jo Lee + Rex (dog)",
// "Jo Lee with Rex the dog". Of a dog by itself, "Rex the dog", only that is left.
func withoutDog(text string) (name string, dog bool) {
	if !strings.Contains(text, "dog") && !strings.Contains(text, "Dog") && !strings.Contains(text, "Hund") {
		return text, false
	}
	for _, dog := range [...]string{" the dog", " (dog)", " (the dog)", " der Hund", " (Hund)"} {
		if name, ok := strings.CutSuffix(text, dog); ok && strings.IndexByte(name, ' ') < 0 {
			return "the dog", true // and nobody with it
		}
	}
	for _, and := range [...]string{" & ", " + ", " and ", " with ", " plus ", " und ", " mit "} {
		name, rest, ok := strings.Cut(text, and)
		if !ok || strings.IndexByte(trim(name), ' ') < 0 || len(strings.Fields(rest)) > 4 {
			continue
		}
		for _, w := range strings.Fields(rest) {
			switch strings.ToLower(strings.Trim(w, "().,")) {
			case "dog", "dogs", "hund":
				return trim(name), true
			}
		}
	}
	return text, false
}

// cutRole takes off a name how somebody took part, or how the line ended: "Guide: Ann Fox",
// "Ann Fox - pacer". "Lee - Walker" may be a name.
func (r *Reader) cutRole(text string, take func(remark)) string {
	says := func(role, name string) bool {
		if m := r.remark(role); (m.part != Runner || m.status != OK) && trim(role) != "Walker" && strings.IndexByte(trim(name), ' ') > 0 {
			take(m)
			return true
		}
		return false
	}
	if role, name, ok := strings.Cut(text, ": "); ok && (says(role, name) || ofPrize(role) && strings.IndexByte(trim(name), ' ') > 0) {
		return trim(name)
	}
	for _, dash := range [...]string{" - ", " – "} {
		if name, role, ok := strings.Cut(text, dash); ok && says(role, name) {
			return trim(name)
		} else if ok && recordHolds[string(fold(nil, trim(name)))] && strings.IndexByte(trim(role), ' ') > 0 {
			take(remark{status: Untimed})
			return trim(role) // "CR - Jo Lee"
		}
	}
	if name, role := smallBehind(text); role != "" && (says(role, name) || says("with "+role, name)) {
		return name
	}
	return text
}

// recordHolds stand before a dash and somebody who holds a record, or won another time. Common practice, no source.
var recordHolds = wordSet("cr|course record|record|record holder|men's record|women's record|last week's winner|streckenrekord|record du parcours|record del percorso|parcoursrecord|banrekord")

// unnamed says whether the line names nobody. Several people in one name make
// it doubtful.
func (r *Reader) unnamed(row int, cells []string, out *Line) bool {
	if out.Name == "" {
		return true
	}
	unnamed, several, unsure := r.nobody.ask(out.Name)
	several = several || !unnamed && twoLines(out.Name)
	index := r.c.Name
	if index < 0 {
		index = max(r.c.Family, r.c.Given)
	}
	switch {
	case unnamed || r.loneWord(out.Name):
		return true
	case unsure && !several:
		out.Status = Doubtful
		out.problem(row, index, place.Doubtful, "name-unsure", out.Name, "the name of one person, and nothing else",
			"Ask who this was, then correct the name; if it is right as it stands: lapwing correct … --reinstate")
	case several:
		out.Status = Doubtful
		out.problem(row, index, place.Doubtful, "several-people", out.Name, "one person on a line", "Ask who this was; give each a line or name one of them")
	case out.Status == OK && (r.oddName(out.Name) || r.mayBear(remarkOn(r.rawName(cells)))):
		out.problem(row, index, place.Look, "name-to-look-at", out.Name, "the name of one person, and nothing else",
			"If this is the name of the runner, there is nothing to do; if nobody is named, or it was somebody else, correct the name")
	}
	return false
}

// twoLines says whether a name is one of two words and more on each of two lines.
func twoLines(text string) bool {
	first, second, two := strings.Cut(text, "\n")
	return two && strings.IndexByte(trim(first), ' ') > 0 && strings.IndexByte(trim(second), ' ') > 0
}

// fastest is FastestMS, kept from row to row.
func (r *Reader) fastest(distanceM int, s Sex) int32 {
	if distanceM <= 0 {
		distanceM = 5000
	}
	if r.bestFor.distanceM != distanceM {
		r.bestFor.distanceM = distanceM
		r.bestFor.ms = [2]int32{FastestMS(distanceM, M), FastestMS(distanceM, W)}
	}
	if s == W {
		return r.bestFor.ms[1]
	}
	return r.bestFor.ms[0]
}
