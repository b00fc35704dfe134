package record

import (
	"fmt"
	"strings"
	"unsafe"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
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
	order     dateOrder
	pairs     []agePair
	remarks   map[string]remark
	nobody    *nobody

	cell      clockCell // of the row in hand
	seconds   int       // column of seconds where the time column holds minutes alone, else -1
	timeRoom  []byte
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

// remark is what a note or status cell says.
type remark struct {
	part   TakingPart
	status Status
	first  Status // the code that the note begins with
}

const remarkLimit = 8192

// sexColumn holds the distinct spellings of a sex column.
type sexColumn struct {
	marks   map[string]sexMark
	letters letters
	sure    [3]int // words for men, women, neither
	strange int
	unsaid  int
}

// NewReader prepares to read a table with these columns. headings are the
// headings of all cells, by index; they may be short or nil.
func NewReader(c Columns, headings []string, o Options) *Reader {
	if o.Scheme.Masters == 0 {
		o.Scheme = age.DefaultScheme()
	}
	if o.AgeBasis == age.NoBasis {
		o.AgeBasis = age.OnTheDay
	}
	if o.GroupBasis == age.NoBasis {
		o.GroupBasis = age.OnTheDay
	}
	if o.SeasonMonth == 0 {
		o.SeasonMonth, o.SeasonDay = 1, 1
	}
	r := &Reader{c: c, headings: headings, o: o, words: map[string]TakingPart{}, states: map[string]Status{},
		clock: newClockColumn(o.DistanceM), remarks: map[string]remark{}, nobody: newNobody(o.Name)}
	r.configure()
	r.splitTime()
	if b, ok := headingBasis(r.heading(c.Age)); ok {
		r.o.AgeBasis = b
	}
	if b, ok := headingBasis(r.heading(c.Group)); ok {
		r.o.GroupBasis = b
	}
	r.sexes.marks = map[string]sexMark{}
	r.years.yearHeading = true
	r.ageGroups = newGroupColumn(o.Scheme, r.words, r.states)
	r.groups = newGroupColumn(o.Scheme, r.words, r.states)
	r.Know(o.Groups)
	return r
}

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
	if len(s) > 0 && (s[0] <= ' ' || s[0] >= 0x80 || s[len(s)-1] <= ' ' || s[len(s)-1] >= 0x80) {
		s = trim(s)
	}
	return s
}

// splitTime finds a time that stands in two columns, minutes and seconds.
func (r *Reader) splitTime() {
	r.seconds = -1
	minutes, seconds := -1, -1
	for i := range r.headings {
		switch h := strings.Trim(r.heading(i), " .:()"); {
		case minuteHeadings[h] && minutes < 0:
			minutes = i
		case secondHeadings[h] && seconds < 0:
			seconds = i
		}
	}
	if minutes >= 0 && seconds >= 0 && (r.c.Time < 0 || r.c.Time == minutes) {
		r.c.Time, r.seconds = minutes, seconds
	}
}

var (
	minuteHeadings = wordSet(`min|mins|minute|minutes|minuten|minuti|minutos|minuter|minutter|minuty|time min|time (min|mm`)
	secondHeadings = wordSet(`sec|secs|second|seconds|sek|sekunden|secondes|secondi|segundos|seg|sekunder|sekundy|seconden|time sec|time (sec|ss`)
)

// timeText is the cell that holds the time, or minutes and seconds put
// together.
func (r *Reader) timeText(cells []string) string {
	m := cell(cells, r.c.Time)
	if r.seconds < 0 {
		return m
	}
	s := cell(cells, r.seconds)
	if len(m) == 0 || len(s) == 0 || m[len(m)-1] < '0' || m[len(m)-1] > '9' || s[0] < '0' || s[0] > '9' {
		return m
	}
	r.timeRoom = append(append(r.timeRoom[:0], m...), ':')
	if len(s) == 1 || s[1] < '0' || s[1] > '9' {
		r.timeRoom = append(r.timeRoom, '0')
	}
	r.timeRoom = append(r.timeRoom, s...)
	return unsafe.String(&r.timeRoom[0], len(r.timeRoom))
}

// Observe counts what a row shows about how its columns are written. Every row
// must come by here before Settle, in the order of the sheet.
func (r *Reader) Observe(row int, cells []string, day unit.Day) {
	var pos int32
	if s := cell(cells, r.c.Position); s != "" {
		p, tied, _, ok := parsePosition(s)
		if ok {
			pos = p
			r.positions++
			if tied {
				r.ties++
			}
		}
	}
	if r.c.Time >= 0 {
		s := r.timeText(cells)
		lexClock(s, &r.scratch, &r.cell)
		r.clock.observe(row, s, &r.cell, pos, day)
	}
	if s := cell(cells, r.c.Sex); s != "" {
		r.sexes.observe(s, &r.scratch)
	}
	if r.c.Age >= 0 {
		r.observeAge(&r.ages, cell(cells, r.c.Age))
	}
	if r.c.BirthYear >= 0 {
		r.observeAge(&r.years, cell(cells, r.c.BirthYear))
	}
	if s := cell(cells, r.c.BirthDate); s != "" {
		r.scratch = fold(r.scratch[:0], s)
		r.observeDate(r.scratch)
	}
	if s := cell(cells, r.c.Group); s != "" {
		i := r.groups.observe(s, &r.scratch)
		if i >= 0 && len(r.pairs) < pairLimit && (r.c.Age >= 0 || r.c.BirthYear >= 0 || r.c.BirthDate >= 0) {
			r.pair(i, cells, day)
		}
	}
}

func (r *Reader) observeAge(k *ageColumn, s string) {
	c := lexAge(s)
	if c.text {
		r.scratch = fold(r.scratch[:0], s)
		if n, ok := ageWithUnit(r.scratch); ok {
			c = ageCell{n: n}
		} else if !r.observeDate(r.scratch) {
			r.ageGroups.observe(s, &r.scratch)
		}
	}
	k.observe(c)
}

func (r *Reader) observeDate(b []byte) bool {
	d, ok := lexDate(b)
	if ok {
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

func (k *sexColumn) mark(s string, scratch *[]byte) sexMark {
	if len(s) == 1 {
		c := s[0]
		if c >= 'A' && c <= 'Z' {
			c += 'a' - 'A'
		}
		if m := sexMark(c); m.open() && c != 'x' {
			return m
		}
	}
	if m, ok := k.marks[s]; ok {
		return m
	}
	*scratch = fold((*scratch)[:0], s)
	m := parseSex(*scratch)
	if len(k.marks) < vocabularyLimit {
		k.marks[strings.Clone(s)] = m
	}
	return m
}

func (k *sexColumn) observe(s string, scratch *[]byte) {
	switch m := k.mark(s, scratch); {
	case m.open():
		k.letters.n[m]++
	case m == sureM:
		k.sure[0]++
	case m == sureW:
		k.sure[1]++
	case m == sureX:
		k.sure[2]++
	case m == strange:
		k.strange++
	default:
		k.unsaid++
	}
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

	if s := cell(cells, r.c.Position); s != "" {
		pos, tied, blank, ok := parsePosition(s)
		switch m := (remark{}); {
		case ok:
			out.Position, out.Tied = pos, tied
		case blank:
		default:
			if m = r.remark(s); m != (remark{}) {
				take(m)
				break
			}
			out.problem(row, r.c.Position, place.Note, "position-unreadable", s, "a whole number, or 3= for a tie", "Correct the position in the sheet if it matters")
		}
	}

	s := r.timeText(cells)
	c := &r.cell
	lexClock(s, &r.scratch, c)
	if c.shape == notClock {
		if i := strings.IndexByte(s, ' '); i > 0 { // "24:31 walker"
			if m := r.remark(s[i+1:]); m.part != Runner || m.status != OK {
				take(m)
				lexClock(s[:i], &r.scratch, c)
			}
		}
	}
	timeDoubt := false
	if ms, otherwise, unsure, ok := r.clock.read(row, c); ok {
		out.TimeMS = ms
		if otherwise != unread || c.repaired {
			sev, do := place.Note, "Nothing, if that is right"
			if unsure {
				sev, do, timeDoubt = place.Doubtful, "The time can be read in two ways; please ask, then correct the cell", true
			}
			out.problem(row, r.c.Time, sev, "time-read-as", s, unit.ClockMS(ms), do)
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

	for _, index := range [...]int{r.c.Status, r.c.Notes} {
		if s := cell(cells, index); s != "" {
			m := r.remark(s)
			take(m)
			if m.first != OK && out.TimeMS == 0 {
				say(m.first)
			}
			if index == r.c.Notes {
				out.Note = s
			}
		}
	}

	r.readName(cells, out, take)
	out.Number = cell(cells, r.c.Number)
	out.Club = cell(cells, r.c.Club)
	r.readPerson(row, cells, day, out, take)

	impossible := out.TimeMS > 0 && !out.TakingPart.OnWheels() && out.TimeMS < r.fastest(distanceM, out.Sex)
	switch {
	case ended != OK:
		out.Status = ended
	case r.unnamed(row, cells, out):
		out.Status = Unnamed
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

// problem notes something about one cell; index -1 is the whole row.
func (l *Line) problem(row, index int, sev place.Severity, kind, read, expected, do string) {
	p := place.Problem{Place: place.Place{Row: row}, Severity: sev, Kind: kind, Read: strings.Clone(read), Expected: expected, Do: do}
	if index >= 0 {
		p.Place.Column = place.ColumnLetters(index)
	}
	l.Problems = append(l.Problems, p)
}

// remark reads a note or status cell, each distinct text once.
func (r *Reader) remark(s string) remark {
	if len(s) == 0 || len(s) > 200 {
		return remark{}
	}
	if m, ok := r.remarks[s]; ok {
		return m
	}
	r.scratch = r.scratch[:0]
	for line := range strings.Lines(s) { // a note of several lines says several things
		if len(r.scratch) > 0 {
			r.scratch = append(r.scratch, ';')
		}
		r.scratch = fold(r.scratch, line)
	}
	m := remark{}
	m.part, _ = partOf(r.scratch, r.words)
	m.status, _ = statusOf(r.scratch, r.states)
	m.first, _ = startsWithStatus(r.scratch)
	if len(r.remarks) < remarkLimit {
		r.remarks[strings.Clone(s)] = m
	}
	return m
}

// readName takes the name from its column, or from given and family name.
func (r *Reader) readName(cells []string, out *Line, take func(remark)) {
	text := cell(cells, r.c.Name)
	given, family := cell(cells, r.c.Given), cell(cells, r.c.Family)
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
	if n := len(text); n > 0 && (text[n-1] == ')' || text[n-1] == ']') {
		if i := strings.LastIndexAny(text, "(["); i > 0 {
			if m := r.remark(text[i+1 : n-1]); m.part != Runner || m.status != OK {
				take(m)
				text = trim(text[:i])
			}
		}
	}
	out.Name = text
}

// unnamed says whether the line names nobody. Several people in one name make
// it doubtful.
func (r *Reader) unnamed(row int, cells []string, out *Line) bool {
	if out.Name == "" {
		return true
	}
	unnamed, several := r.nobody.ask(out.Name)
	if several {
		out.Status = Doubtful
		index := r.c.Name
		if index < 0 {
			index = max(r.c.Family, r.c.Given)
		}
		out.problem(row, index, place.Doubtful, "several-people", out.Name, "one person on a line", "Ask who this was; give each a line or name one of them")
	}
	return unnamed
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

// reckoning is the day on which ages of a basis are reckoned.
func (r *Reader) reckoning(b age.Basis, day unit.Day) unit.Day {
	switch b {
	case age.YearEnd:
		y, _, _ := day.Date()
		return unit.NewDay(y, 12, 31)
	case age.SeasonStart:
		y, _, _ := day.Date()
		start := unit.NewDay(y, r.o.SeasonMonth, r.o.SeasonDay)
		if start > day {
			start = unit.NewDay(y-1, r.o.SeasonMonth, r.o.SeasonDay)
		}
		return start
	}
	return day
}

// windowOf is age.OfAges of a single age, kept from row to row.
func (r *Reader) windowOf(n int, on unit.Day) age.Window {
	k := &r.ageWindow[n]
	if k.on != on || !k.w.Known() {
		k.on, k.w = on, age.OfAges(n, n, on)
	}
	return k.w
}

// Ages that are read without asking, give or take a few weeks.
const youngestAge, oldestAge = 3, 105

// readPerson reads sex and age from every column that carries them.
func (r *Reader) readPerson(row int, cells []string, day unit.Day, out *Line, take func(remark)) {
	if s := cell(cells, r.c.Sex); s != "" {
		m := r.sexes.mark(s, &r.scratch)
		out.Sex = r.sexes.letters.sex(m)
		if m == strange || m.open() && !r.sexes.letters.known(m) {
			if e := r.remark(s); e.part != Runner || e.status != OK {
				take(e)
			} else {
				out.problem(row, r.c.Sex, place.Look, "sex-unreadable", s, "M, W, X or nothing", "Correct the cell, or say in the settings what it means")
			}
		}
	}
	var found age.Window
	basis := age.NoBasis
	meet := func(index int, w age.Window, b age.Basis, s string) {
		if !w.Known() {
			return
		}
		if int(day-w.Lo) < 365*youngestAge || int(day-w.Hi) > 366*(oldestAge+1) {
			out.problem(row, index, place.Look, "age-unlikely", s, "an age from 3 to 105", "Correct the age, or the date of the run")
			return
		}
		both, ok := found.Meet(w)
		switch {
		case !ok:
			out.problem(row, index, place.Look, "ages-contradict", s, "what the other age column of the row says", "Ask which is right; the more exact one is used")
		case basis == age.NoBasis:
			found, basis = both, b
		default:
			found = both
		}
	}
	if s := cell(cells, r.c.BirthDate); s != "" {
		w, ok := r.birthDate(s, day)
		if !ok {
			out.problem(row, r.c.BirthDate, place.Look, "birth-date-unreadable", "", "a date like 1985-01-03", "Correct the date of birth in the sheet")
		}
		meet(r.c.BirthDate, w, age.Born, "")
	}
	for _, k := range [...]struct {
		index int
		col   *ageColumn
	}{{r.c.BirthYear, &r.years}, {r.c.Age, &r.ages}} {
		s := cell(cells, k.index)
		if s == "" {
			continue
		}
		w, b, secret, ok := r.readAge(s, k.col, day, out, take)
		if !ok {
			out.problem(row, k.index, place.Look, "age-unreadable", s, "an age, a year of birth or an age group", "Correct the cell")
		}
		meet(k.index, w, b, s)
		if !secret && w.Known() {
			out.AgeText = s
		}
	}
	if s := cell(cells, r.c.Group); s != "" {
		e := r.groups.find(s, &r.spare, &r.scratch)
		take(remark{part: e.part, status: e.status})
		switch {
		case e.known:
			b := r.o.GroupBasis
			if e.g.kind == bornIn {
				b = age.Born
			}
			meet(r.c.Group, e.birth(r.reckoning(b, day)), b, s)
			out.AgeText = s
		case e.g.kind == noGroup && e.g.sex == noMark && !emptyGroups[strings.ToLower(s)]:
			out.problem(row, r.c.Group, place.Note, "group-unreadable", s, "an age group like M40 or 40-44", "Say in the settings what it means, or leave it")
		}
		if e.g.kind != special {
			r.groupSex(row, s, e.sex, out)
		}
	}
	out.Birth, out.Basis = found, basis
}

// emptyGroups stand for no group.
var emptyGroups = wordSet(`-|--|?|n/a|na|none|unknown|not given|open|overall|all|guest|.|x`)

// groupSex adds the sex that an age group carries. X on the sheet stands beside
// any group.
func (r *Reader) groupSex(row int, text string, s Sex, out *Line) {
	switch {
	case s == NotGiven || out.Sex == X || out.Sex == s:
	case out.Sex == NotGiven:
		out.Sex = s
	default:
		out.problem(row, r.c.Group, place.Look, "sex-contradicts-group", text, "a group of "+out.Sex.String()+", as the sex column says", "Ask which is right; the sex column is used")
	}
}

// readAge reads a cell of an age or year column. secret says that it is a date
// of birth, which must not be printed; ok is false where it is not understood.
func (r *Reader) readAge(s string, k *ageColumn, day unit.Day, out *Line, take func(remark)) (w age.Window, b age.Basis, secret, ok bool) {
	c := lexAge(s)
	if c.text {
		r.scratch = fold(r.scratch[:0], s)
		n, withUnit := ageWithUnit(r.scratch)
		if !withUnit {
			if _, isDate := lexDate(r.scratch); isDate {
				w, ok = r.birthDate(s, day)
				return w, age.Born, true, ok
			}
			e := r.ageGroups.find(s, &r.spare, &r.scratch)
			take(remark{part: e.part, status: e.status})
			if out.Sex == NotGiven {
				out.Sex = e.sex
			}
			b = r.o.GroupBasis
			if e.g.kind == bornIn {
				b = age.Born
			}
			return e.birth(r.reckoning(b, day)), b, false, e.known || e.g.kind == special || e.g.sex != noMark
		}
		c = ageCell{n: n}
	}
	switch {
	case c.blank:
		return age.Window{}, age.NoBasis, false, true
	case c.n >= 1900 && c.n < 2100 && !c.decimals:
		return age.OfYear(c.n), age.Born, false, true
	case k.meaning == twoDigitYears && c.n < 100 && !c.decimals:
		return age.OfYear(fullYear(c.n, day)), age.Born, false, true
	case c.sentinel || k.meaning == noAges:
		return age.Window{}, age.NoBasis, false, true
	case c.n >= len(r.ageWindow):
		return age.Window{}, age.NoBasis, false, false
	case k.meaning == firstAges:
		on := r.reckoning(r.o.GroupBasis, day)
		return age.OfAges(c.n, after(k.starts, c.n, c.n+5)-1, on), r.o.GroupBasis, false, true
	}
	return r.windowOf(c.n, r.reckoning(r.o.AgeBasis, day)), r.o.AgeBasis, false, true
}

// birthDate reads a date of birth, or a year where only that is given.
func (r *Reader) birthDate(s string, day unit.Day) (age.Window, bool) {
	switch c := lexAge(s); {
	case c.blank || c.sentinel:
		return age.Window{}, true
	case c.n >= 1900 && c.n < 2100 && !c.text:
		return age.OfYear(c.n), true
	}
	r.scratch = fold(r.scratch[:0], s)
	if n := len(r.scratch); n == 5 && allDigits(r.scratch) {
		// A stored spreadsheet date: days from 1899-12-30 (ECMA-376 Part 1, 18.17.4.1).
		return age.OfDate(unit.NewDay(1899, 12, 30) + unit.Day(atoi(r.scratch))), true
	}
	d, ok := lexDate(r.scratch)
	if !ok {
		return age.Window{}, false
	}
	born, ok := d.day(r.order, day)
	if !ok {
		return age.Window{}, false
	}
	return age.OfDate(born), true
}

// Settle decides how each column is read, after all rows were observed.
func (r *Reader) Settle() Readings {
	out := Readings{Problems: r.problems}
	add := func(index int, means, why string) {
		h := ""
		if index < len(r.headings) {
			h = r.headings[index]
		}
		out.Columns = append(out.Columns, Reading{place.ColumnLetters(index), h, means, why})
	}
	ask := func(index int, sev place.Severity, kind, read, expected, do string) {
		out.Problems = append(out.Problems, place.Problem{Place: place.Place{Column: place.ColumnLetters(index)}, Severity: sev, Kind: kind, Read: read, Expected: expected, Do: do})
	}
	if r.c.Position >= 0 {
		add(r.c.Position, "finishing position", fmt.Sprintf("%d whole numbers, %d of them ties", r.positions, r.ties))
	}
	r.clock.settle(r.o.Answers["time"])
	if r.c.Time >= 0 {
		means, why := r.clock.describe()
		add(r.c.Time, means, why)
		r.clock.questions(r.c.Time, ask)
	}
	r.sexes.letters.settle(r.heading(r.c.Sex), r.o.Answers)
	if r.c.Sex >= 0 {
		means, why := r.sexes.describe()
		add(r.c.Sex, means, why)
		if l := r.sexes.letters; l.ask != 0 {
			letter := strings.ToUpper(string(l.ask))
			ask(r.c.Sex, place.Look, "sex-letter-unclear", letter, l.choices, fmt.Sprintf("Say what %s stands for in this column: answer \"sex %s\" with %s", letter, letter, l.choices))
		}
	}
	r.ages.settle()
	r.years.settle()
	others := &r.sexes.letters
	if r.c.Sex < 0 {
		others = nil
	}
	r.ageGroups.settle(r.heading(r.c.Age), others, r.o.Answers)
	r.groups.settle(r.heading(r.c.Group), others, r.o.Answers)
	basisWhy := r.settleBasis()
	if r.c.BirthYear >= 0 {
		means, why := r.years.describe()
		add(r.c.BirthYear, means, why)
	}
	if r.c.Age >= 0 {
		means, why := r.ages.describe()
		add(r.c.Age, means, why)
	}
	if r.c.Group >= 0 {
		means, why := r.groups.describe()
		add(r.c.Group, means, strings.TrimPrefix(why+basisWhy, "; "))
	}
	r.settleDates(add, ask)
	return out
}

// settleDates chooses the order of day and month for the dates of birth that
// don't show it.
func (r *Reader) settleDates(add func(int, string, string), ask func(int, place.Severity, string, string, string, string)) {
	index := r.c.BirthDate
	if index < 0 {
		index = max(r.c.BirthYear, r.c.Age)
	}
	given := r.o.Answers["birth date"]
	why := ""
	switch {
	case given == "mdy":
		r.order, why = monthFirst, "as answered"
	case given == "dmy":
		r.order, why = dayFirst, "as answered"
	case r.dates[1] > r.dates[0]:
		r.order, why = monthFirst, fmt.Sprintf("%d dates can only be month first", r.dates[1])
	case r.dates[0] > 0:
		r.order, why = dayFirst, fmt.Sprintf("%d dates can only be day first", r.dates[0])
	case r.o.DateOrder == "mdy":
		r.order, why = monthFirst, "as set in the configuration"
	default:
		r.order, why = dayFirst, "the usual order"
	}
	if r.dates == [3]int{} && r.c.BirthDate < 0 || index < 0 {
		return
	}
	add(index, map[dateOrder]string{dayFirst: "date of birth, day before month", monthFirst: "date of birth, month before day"}[r.order], why)
	if r.dates[2] > 0 && (r.dates[0] == 0 && r.dates[1] == 0 && given == "" || r.dates[0] > 0 && r.dates[1] > 0) {
		ask(index, place.Look, "birth-date-order-unclear", fmt.Sprintf("%d dates like 03/04", r.dates[2]), "dmy or mdy", `Say whether the day or the month comes first: answer "birth date" with dmy or mdy`)
	}
}

func (k *sexColumn) describe() (means, why string) {
	var parts []string
	if d := k.letters.describe(); d != "" {
		parts = append(parts, d)
	}
	for i, word := range []string{"men", "women", "neither (X)"} {
		if k.sure[i] > 0 {
			parts = append(parts, fmt.Sprintf("%d in words for %s", k.sure[i], word))
		}
	}
	if k.unsaid > 0 {
		parts = append(parts, fmt.Sprintf("%d not given", k.unsaid))
	}
	if k.strange > 0 {
		parts = append(parts, fmt.Sprintf("%d not understood", k.strange))
	}
	return "sex: " + strings.Join(parts, ", "), k.letters.why
}

// askBelow is the log odds under which a person is asked: 20 to 1.
const askBelow = 3

// questions asks about a column of times that can be read in two ways, or in
// none that fits the distance.
func (k *clockColumn) questions(index int, ask func(int, place.Severity, string, string, string, string)) {
	for i := range k.families {
		f := &k.families[i]
		if f.n == 0 || f.runnerUp == unread {
			continue
		}
		a, b := clockReadings[f.reading], clockReadings[f.runnerUp]
		if f.margin < askBelow {
			ask(index, place.Waits, "time-column-unclear", f.example, fmt.Sprintf("%s, or %s", a.means, b.means),
				fmt.Sprintf("Say how the times are written: answer \"time\" with %q or %q", a.name, b.name))
			return
		}
		for j, r := range readingsOf(f.shape) {
			if r == f.reading && f.sampled >= 5 && f.score[j] < 0.9*implausible*float64(f.sampled) {
				ask(index, place.Look, "times-do-not-fit-distance", f.example, "running times of this distance", "Check the distance of the run and which column holds the time")
				return
			}
		}
	}
}
