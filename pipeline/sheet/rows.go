package sheet

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// why says what a row is.
type why uint8

const (
	isData why = iota
	whyBlank
	whyFooter
	whyTotal
	whyHeading
	whyTitle
	whySection
	whyNumberOnly
	whyNoResult
)

// String is the word printed in lists of skipped rows.
func (w why) String() string {
	return [...]string{"data", "blank", "footer", "total", "repeated heading", "repeated title", "section line", "only a position, and no result after it", "no result"}[w]
}

// rowRules tells rows that stand for a finisher from all others.
type rowRules struct {
	first, last   int // rows of the table; last 0 means to the end
	columns       int
	pos, time     int
	name, given   int
	number        int
	hasPositions  bool
	headings      []string   // folded
	titles        [][]string // the lines above the headings, which pages repeat
	headingLines  [][]string // the lines of a heading of two, folded, which pages repeat one by one
	kinds         []kind     // what nearly every cell of a column is; kBlank where that is nothing in particular
	clock         []int      // columns of hours, minutes and seconds
	secondsGiven  bool       // the seconds are written where they are nought, too
	beside        beside
	between       bool              // clock are the times of day of start and finish
	sum           bool              // clock are the laps
	start         float64           // or clock is that of the finish, and this the start, s from midnight
	minutesOnce   bool              // blank cells of minutes repeat the one above
	lastFilled    int               // last row with more than a printed position; 0 means not known
	fill          []int             // columns whose blank cells repeat the cell above
	fillAbove     []string          // what those above the first that is filled repeat, "" for nothing
	dittos        []int             // columns with marks that repeat the cell above
	days          []int             // columns of dates and birth dates
	sections      map[int]string    // row of a section line -> the value it sets for the rows below
	sectionColumn int               // column that carries it; -1 for none
	firstSection  string            // section above the first row
	sectionAt     map[int]string    // row of data -> the value from this row on
	lastSure      int               // last row that is a result beyond doubt; 0 means not known
	lastTime      float64           // its time, on sheets without places
	legend        map[string]string // what the classes of a column are, as a line beside the table says
	legendColumn  int
	remarks       map[int]string    // by row: what no column holds
	takenBack     map[string]bool   // the lines that speak against rows
	codes         map[string]string // what a line says that short codes mean
	renamed       map[int]string    // by row: the name that a line below gives instead
	corrected     map[int]string    // by row: the time that a line below gives instead
	remarkColumn  int
	remarkOwn     bool         // the column is added to those of the sheet
	reckoned      map[int]bool // rows whose time was reckoned from those of others
	overLists     map[int]bool // lines that stand over lists, though they could be a name
	others        []rowRange   // other lists below the results
	weeks         []weekList   // lists of other weeks among them
	unused        int          // first and last of the rows that a template fills and nobody ran into; 0 for none
	unusedTo      int
	tail          int    // rows from here on stand apart from the results above; 0 for none
	date1904      bool   // day numbers count from 1904
	sample        []line // rows of a sheet too large to hold
	volunteers    bool   // a list of who helped
	allPlaced     bool   // all places from 1 on have a time: who has neither did not finish
	todays        bool   // the list keeps those who were not there today
	notes         int    // where allPlaced, the column of remarks

	above    []string
	overMark []string
	section  string
	minutes  string // of the row above, where minutes and seconds have columns of their own
	buf      []string
}

// rowRange is the rows from one to another, which is none of them; to 0 means to the end.
type rowRange struct{ from, to int }

func (o rowRange) has(row int) bool { return row >= o.from && (o.to == 0 || row < o.to) }

// inOtherList says whether a row is of another list below the results.
func (r *rowRules) inOtherList(row int) bool {
	return slices.ContainsFunc(r.others, func(o rowRange) bool { return o.has(row) }) || slices.ContainsFunc(r.weeks, func(o weekList) bool { return o.has(row) })
}

// restart prepares a copy for one pass over the rows.
func (r *rowRules) restart() {
	r.buf = nil
	r.section, r.minutes = r.firstSection, ""
	r.beside.minutes = ""
	r.above = nil
	if len(r.fill) > 0 {
		r.above = slices.Clone(r.fillAbove)
	}
	r.overMark = nil
	if len(r.dittos) > 0 {
		r.overMark = make([]string, len(r.dittos))
	}
}

func cellAt(cells []string, i int) string {
	if i < 0 || i >= len(cells) {
		return ""
	}
	return cells[i]
}

// digitsOnly is the cheap test for a position.
func digitsOnly(s string) bool {
	if s == "" || len(s) > 7 {
		return false
	}
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return true
}

// eightFigures are a day as programs write it, 20260103.
var eightFigures = regexp.MustCompile(`^(?:19|20)\d\d(?:0[1-9]|1[0-2])(?:0[1-9]|[12]\d|3[01])$`)

func (r *rowRules) classify(row int, cells []string) why {
	if r.inOtherList(row) {
		return whyFooter
	}
	if r.overLists[row] {
		if v, ok := r.sections[row]; ok {
			r.section = v
			return whySection
		}
		return whyFooter
	}
	if row >= r.unused && row <= r.unusedTo && rowFilled(cells) > 0 {
		return whyNumberOnly
	}
	if v, ok := r.sectionAt[row]; ok {
		r.section = v
	}
	if r.saysStart(row, cells) {
		return whyFooter
	}
	// Nearly every row of a large sheet: a plain position and a time.
	if r.pos >= 0 && digitsOnly(cellAt(cells, r.pos)) && (r.time < 0 || len(cellAt(cells, r.time)) > 2 && cells[r.time][0] >= '0' && cells[r.time][0] <= '9') && (r.time >= 0 || r.name >= 0 && cellAt(cells, r.name) != "") {
		return isData
	}
	if r.reckoned[row] {
		return whyTotal
	}
	if r.sections != nil {
		if v, ok := r.sections[row]; ok {
			r.section = v
			return whySection
		}
	}
	filled, firstFilled := 0, -1
	for i, c := range cells {
		if !isBlank(c) {
			filled++
			if firstFilled < 0 {
				firstFilled = i
			}
		}
	}
	if filled == 0 || isRule(cells) {
		return whyBlank
	}
	if r.volunteers {
		return r.classifyVolunteer(cells, filled)
	}
	if filled == 1 && eightFigures.MatchString(trim(cells[firstFilled])) {
		return whyFooter // the day of a run
	}
	pos, tm := trim(cellAt(cells, r.pos)), trim(cellAt(cells, r.time))
	posKind := placeKind(pos)
	if filled == 1 && posKind == kInt {
		if r.lastFilled > 0 && row > r.lastFilled {
			return whyNumberOnly
		}
		return isData
	}
	if r.isHeading(cells, filled) {
		return whyHeading
	}
	if slices.ContainsFunc(r.titles, func(title []string) bool { return slices.Equal(title, cells) }) {
		return whyTitle
	}
	if filled == 2 && posKind != kInt && r.saysRun(cells, firstFilled) {
		return whyFooter
	}
	labelled := firstFilled
	if r.hasPositions && firstFilled == r.time && !isBlank(cellAt(cells, r.name)) && kindOf(cells[firstFilled]) != kText {
		labelled = r.name // "28:14 | Average"
	}
	label := trim(cells[labelled])
	folded := fold(label)
	if posKind != kInt && (isTotal(folded) || isRecord(folded)) && !((labelled == r.name || labelled == r.given) && r.calledLikeTotal(row, r.wholeName(label, labelled, cells), tm)) {
		return whyTotal
	}
	if pairs := onlyCounts(cells); pairs > 1 || pairs == 1 && posKind != kInt {
		return whyTotal
	}
	named := trim(cellAt(cells, r.name)) != "" || trim(cellAt(cells, r.given)) != ""
	numbered := r.number >= 0 && trim(cellAt(cells, r.number)) != ""
	timed := false
	if tm != "" {
		switch kindOf(tm) {
		case kClock, kDecimal, kInt, kStatus, kGroup:
			timed = true
		case kText:
			timed = named && saysEnded(tm) // "pulled out at 3 km"
		case kDate:
			timed = strings.Count(tm, ".") == 2 && !strings.Contains(tm, ":") // 1.02.31 in a column of h.mm.ss
		}
	}
	if posKind == kInt && !timed {
		if filled > 1 && !named && !digitsOnly(pos) && numbersPage(cells) {
			return whyFooter
		}
		for i, c := range cells {
			if f := fold(c); totalWords[f] && !softTotals[f] || f == "total" || i != firstFilled && partakerWords[f] && filled <= 3 || i == firstFilled && (i != r.name || strings.IndexByte(f, ' ') > 0) && isTotal(f) {
				return whyTotal
			}
		}
	}
	if posKind == kInt && tm == "" && named && saysUnused(cellAt(cells, r.name)) {
		return whyNumberOnly
	}
	if posKind == kInt && !timed && !named && r.tail > 0 && row >= r.tail && filled > 1 && !numbered {
		return whyFooter // "1 | Mill Runners | 14", the teams
	}
	if posKind != kInt {
		if r.wordsUnderFigures(cells) {
			return whyFooter
		}
		if r.tail > 0 && row >= r.tail && !((named || numbered) && hasStatus(cells)) {
			return whyFooter
		}
	}
	if posKind != kInt && timed && !numbered && r.given < 0 && saysWhatHappened(trim(cellAt(cells, r.name))) {
		return whyFooter
	}
	switch {
	case r.pos >= 0 && r.hasPositions && pos != "" && posKind != kInt && posKind != kStatus:
		if row < r.lastSure && named && timed && strings.ContainsAny(pos, "0123456789") {
			return isData // a place that somebody was not sure of: "4?"
		}
		if row < r.lastSure && named && kindOf(tm) == kClock && outOfRanking[fold(pos)] {
			return isData
		}
		if named && posKind == kClock && digitsOnly(tm) {
			return isData // place and time have changed places
		}
		return whyFooter
	case r.todays && r.pos < 0 && tm == "" && !hasStatus(cells):
		return whyNoResult // was not there
	case filled == 1 && named && r.pos < 0 && row < r.lastSure && looksNamed(label) && !listWord[finalWord(label)] && !anyWord(label, clubWords) && !smallWords(label):
		return isData // nobody took the time of this one
	case named && endedInBrackets(trim(cellAt(cells, r.name))):
		return isData
	case filled == 1 && !timed && !(named && r.pos < 0 && r.time < 0):
		return whyFooter
	case strings.HasSuffix(label, ":") && posKind != kInt:
		return whyFooter
	case r.lastSure > 0 && row > r.lastSure && r.hasPositions && posKind == kBlank && !timed && r.time >= 0 && !hasStatus(cells) && !r.describesPerson(cells, filled):
		return whyNoResult
	case r.allPlaced && posKind == kBlank && (!timed && hasNoDigit(tm) || noTimeAtAll(tm)) && !hasStatus(cells) && isBlank(cellAt(cells, r.notes)):
		return whyNoResult // signed up, and was not there
	case named && (filled > 1 || r.pos < 0 && r.time < 0):
		return isData
	case timed && (posKind == kInt || numbered || !r.hasPositions):
		return isData
	case posKind == kInt, posKind == kStatus && pos != "" && fold(pos) != "":
		return isData
	case numbered && filled > 1:
		return isData
	}
	return whyNoResult
}

// saysStart says whether a row is that of the start, as a watch writes it: nobody's, of the place 0 or, where there are
// no places, the first of all, at no time.
func (r *rowRules) saysStart(row int, cells []string) bool {
	switch {
	case r.time < 0 && len(r.clock) == 0:
		return false
	case r.pos >= 0 && cellAt(cells, r.pos) != "0" && trim(cellAt(cells, r.pos)) != "0" || r.pos < 0 && row != r.first:
		return false
	case !isBlank(cellAt(cells, r.name)) || !isBlank(cellAt(cells, r.given)) || !isBlank(cellAt(cells, r.number)):
		return false
	}
	tm := trim(cellAt(cells, r.time))
	return r.pos >= 0 && (tm == "" || len(r.clock) > 0) || zeroTime(tm)
}

// zeroTime says whether a text is a clock of noughts: 0:00:00.00.
func zeroTime(s string) bool {
	return strings.Contains(s, ":") && strings.Trim(s, "0:.,") == ""
}

// saysWhatHappened says whether the words before a time are of the day's events alone, and of nobody:
// "Race start 18:30", "Gates open 18:00", "Briefing 18:15". Every word is of that kind, one of them of an
// event.
func saysWhatHappened(text string) bool {
	if len(text) > 40 {
		return false
	}
	event := false
	for w := range strings.FieldsSeq(fold(text)) {
		if eventWords[w] {
			event = true
		} else if !besideEvents[w] && !titleWords[w] {
			return false
		}
	}
	return event
}

// eventWords are what happens on the day of a run and has its time, besideEvents what stands beside
// them. Common practice, no source.
var (
	eventWords = set(`start starts started starting gun briefing brief welcome warmup meet meets meeting gate gates door doors registration signup sunset sunrise clock watch stopwatch cutoff finishes ended ends
		presentation presentations prizegiving prizes coffee tea cafe breakfast parking arrival departure depart startzeit startschuss treffpunkt treffen anmeldung siegerehrung sonnenuntergang zielschluss
		accueil rassemblement rendez briefing salida partenza ritrovo premiazione encuentro largada samling vertrek verzamelen lahto zbiorka`)
	besideEvents = set(`open opens opened close closes closed close shut off out up at from by until till the our on of and with time times am pm h uhr new official actual real race run first last cut warm prize giving ceremony stopped stops set running
		um ab bis der die das de du la le les heure hora ora del della di vous tid`)
)

// wholeName puts the other half of a name in two columns behind the one that is the label of a row.
func (r *rowRules) wholeName(label string, labelled int, cells []string) string {
	other := r.given
	if labelled == r.given {
		other = r.name
	}
	if half := trim(cellAt(cells, other)); half != "" && other != labelled {
		return label + " " + half
	}
	return label
}

// saysRun says whether the two filled cells of a row tell of which run the rows below are: a label
// of the course or the day with its value, "Date | 10 Jan 2026", or a text with a day in a column
// that holds none, as a title has its day at the other end of the line.
func (r *rowRules) saysRun(cells []string, first int) bool {
	second := first + 1
	for isBlank(cells[second]) {
		second++
	}
	day := kindOf(cells[second]) == kDate
	label := strings.TrimRight(fold(cells[first]), " :")
	switch of := headingWords[label]; {
	case of&cDate != 0:
		return day || len(findDates(cells[second])) > 0
	case of&cCourse != 0, venueLabels[label]:
		return second != r.time && kindOf(cells[second]) == kText
	}
	return day && second != r.time && !slices.Contains(r.days, second) && !slices.Contains(r.days, first)
}

// saysUnused says whether what stands for a name says that nobody was given the place: "not used",
// "nicht vergeben", "token void".
func saysUnused(name string) bool {
	words := strings.Fields(fold(name))
	return len(words) > 0 && len(words) <= 3 && unusedWords[words[len(words)-1]] && (len(words) == 1 || unusedBefore[words[0]])
}

// Words for that. Common practice, no source.
var (
	unusedWords  = set("unused used void assigned allocated issued vergeben benutzt verwendet genutzt belegt attribue utilise usado utilizado asignado usato utilizzato assegnato gebruikt toegekend anvand anvant tilldelad brugt tildelt brukt uzyto uzyty przydzielono przydzielony pouzito prideleno")
	unusedBefore = set("not token place position number nicht platz nummer non pas no sin niet plaats ej inte icke ikke nie ne nao")
)

// partakerWords say of whom a number beside them is, as on a line over each group: "3 Jan | 9 |
// Participants". Common practice, no source.
var partakerWords = set("participants runners finishers starters teilnehmer laufer finisher participants coureurs arrivants partants participantes corredores llegados partecipanti arrivati corridori podisti deelnemers lopers deltagare deltagere deltakere loperne lopare lobere lopere osallistujaa uczestnikow uczestnicy biegaczy zawodnikow ucastniku bezcu resztvevo indulo")

// smallWords says whether a text that begins with a capital has another word that does not, and
// is no particle of a name: "Club champion so far".
func smallWords(text string) bool {
	words := strings.Fields(text)
	if len(words) == 0 || !startsUpper(words[0]) {
		return false
	}
	for _, w := range words[1:] {
		if r, _ := utf8.DecodeRuneInString(w); unicode.IsLower(r) && !particleWords[fold(w)] {
			return true
		}
	}
	return false
}

// startsUpper says whether a text begins with a capital.
func startsUpper(w string) bool {
	r, _ := utf8.DecodeRuneInString(w)
	return unicode.IsUpper(r)
}

// particleWords are particles of names, folded. Common practice, no source.
var particleWords = set("van de der den ter ten te von vom zu zur la le du des da do dos das di del della dei y e i bin ibn al el ap ab af av of san st mac nic")

// listWord are last words of lines over lists, "Today's results", that may look like somebody
// whose time nobody took.
var listWord = set("result results ergebnis ergebnisse resultat resultats resultate resultado resultados risultato risultati uitslag uitslagen resultater resultaten wyniki finishers runners walkers bests best fastest")

// looksNamed says whether a text may be a person's name: two to four words,
// none of them a figure, and neither a sex nor a group.
func looksNamed(text string) bool {
	n := len(strings.Fields(text))
	return n >= 2 && n <= 4 && kindOf(text) == kText && !isSection(text) && !strings.ContainsAny(text, "0123456789:!?")
}

// describesPerson says whether a row without position and time has, beside a
// name, a sex, an age or a club where the sheet has them.
func (r *rowRules) describesPerson(cells []string, filled int) bool {
	if isBlank(cellAt(cells, r.name)) && isBlank(cellAt(cells, r.given)) {
		return false
	}
	for i, k := range r.kinds {
		if k != kBlank && k != kDate && i != r.pos && i != r.time && !isBlank(cellAt(cells, i)) {
			return true
		}
	}
	return filled >= 3
}

// outOfRanking stand in place of the place of those who ran and are not ranked. Common practice of
// the languages, no source.
var outOfRanking = set("guest guests unplaced unranked unofficial visitor ooc nr unpl ext exhib pacer tail tw g nc np ak hc h c u o hors gast gaste invite invitee invitado invitada ospite hote gjest gaest", "a k", "h c", "n c", "n p", "o k", "hors concours", "hors course", "hors classement", "ausser konkurrenz", "fuori gara", "fuori classifica", "fuera de concurso", "buiten mededinging", "utom tavlan", "utenfor konkurranse", "uden for konkurrence", "poza konkurencja", "o c", "n r", "o w", "ausser wertung", "buiten klassement", "non ranked", "not placed", "not ranked", "no place", "out of competition", "non competitive")

// wordsUnderFigures says whether a row has words in a column of figures, or a group in
// one of dates or of figures that groups don't stand among, and so is no result: "Fastest | Jo Lee | 18:20", "Marshal | Al Roe",
// "M40 | Jo Lee | 16:58 | 3 March 2019".
func (r *rowRules) wordsUnderFigures(cells []string) bool {
	for i, k := range r.kinds {
		if k == kBlank || i == r.pos || i == r.time {
			continue
		}
		switch cell := trim(cellAt(cells, i)); kindOf(cell) {
		case kText:
			if utf8.RuneCountInString(cell) > 1 { // L beside M is no word
				return true
			}
		case kGroup, kSex:
			if k != kInt {
				return true
			}
		}
	}
	return false
}

// hasStatus says whether a cell says why there is no time.
func hasStatus(cells []string) bool {
	for _, c := range cells {
		if kindOf(c) == kStatus || endedInBrackets(c) {
			return true
		}
	}
	return false
}

// endedInBrackets says whether how a race ended stands in brackets behind something else: "Jo Lee (DNF)".
func endedInBrackets(c string) bool {
	n := len(c)
	return n > 5 && c[n-1] == ')' && statusWords[fold(c[strings.LastIndexByte(c, '(')+1:n-1])]
}

// onlyCounts recognises lines such as "Men | 31 | Women | 28": every text is a
// sex, a group or a word of totals, and a number follows.
func onlyCounts(cells []string) (pairs int) {
	words, expect := 0, false
	for _, c := range cells {
		switch kindOf(c) {
		case kBlank:
		case kInt:
			if !expect {
				return 0
			}
			pairs++
			expect = false
		case kSex, kGroup:
			if len(trim(c)) < 2 {
				return 0
			}
			words++
			expect = true
		case kText:
			if !isTotal(fold(c)) {
				return 0
			}
			words++
			expect = true
		default:
			return 0
		}
	}
	if words != pairs {
		return 0
	}
	return pairs
}

// isHeading says whether a row repeats the heading, as at the top of a page.
func (r *rowRules) isHeading(cells []string, filled int) bool {
	if sameHeading(r.headings, cells, filled) {
		return true
	}
	for _, l := range r.headingLines {
		if sameHeading(l, cells, filled) {
			return true
		}
	}
	return false
}

func sameHeading(headings, cells []string, filled int) bool {
	same := 0
	for i, c := range cells {
		if i >= len(headings) {
			break
		}
		if h := headings[i]; h != "" && c != "" && (c[0]|0x20 == h[0] || c[0] >= 0x80 || c[0] <= ' ') && fold(c) == h {
			same++
		}
	}
	return same*2 >= filled && (same >= 2 || same == 1 && filled == 1)
}

// shape fits the cells to the columns: short rows are filled up, blanks are
// filled from above where the sheet leaves repeated values out, and the section
// above the row is added.
func (r *rowRules) shape(cells []string) []string {
	if r.time >= 0 && r.name >= 0 && len(r.clock) == 0 && isBlank(cellAt(cells, r.time)) {
		cells = timeBehindName(cells, r.name, r.time)
	}
	if len(cells) >= r.columns && len(r.fill) == 0 && len(r.dittos) == 0 && r.sectionColumn < 0 && len(r.clock) == 0 && r.beside.none() && r.legend == nil && r.remarks == nil {
		return cells
	}
	if r.buf == nil {
		r.buf = make([]string, 0, r.columns+8)
	}
	real := r.columns
	if r.sectionColumn >= 0 {
		real--
	}
	if len(r.clock) > 0 {
		real--
	}
	if r.remarkOwn {
		real--
	}
	b := append(r.buf[:0], cells...)
	for len(b) < real {
		b = append(b, "")
	}
	for k, i := range r.fill {
		if isBlank(b[i]) || isDitto(b[i]) {
			b[i] = r.above[k]
		} else {
			r.above[k] = b[i]
		}
	}
	for k, i := range r.dittos {
		if isDitto(b[i]) || i == r.time && sameTime[fold(b[i])] && !strings.Contains(b[i], "?") {
			b[i] = r.overMark[k]
		} else {
			r.overMark[k] = b[i]
		}
	}
	r.beside.mend(b)
	if len(r.clock) > 0 {
		clock := ""
		switch {
		case r.start > 0:
			clock = timeBetween(r.start, secondsOf(b, r.clock[0]), trim(cellAt(b, r.clock[0])))
		case r.between:
			clock = between(b, r.clock)
		case r.sum:
			clock = sumOf(b, r.clock)
		default:
			if i := r.clock[max(0, len(r.clock)-2)]; isDitto(b[i]) || strings.Trim(b[i], "-–— ") == "" && !isBlank(b[i]) && digitsOnly(trim(b[r.clock[len(r.clock)-1]])) {
				b[i] = r.minutes // a mark, or a dash beside seconds
			} else if !isBlank(b[i]) {
				r.minutes = b[i]
			} else if r.minutesOnce && digitsOnly(trim(b[r.clock[len(r.clock)-1]])) {
				b[i] = r.minutes // seconds alone, under the minutes of the places before
			}
			clock = joinClock(b, r.clock, r.secondsGiven)
		}
		b = append(b[:real], clock)
	}
	if r.sectionColumn >= 0 {
		b = append(b[:r.sectionColumn], r.section)
	}
	if r.legend != nil {
		if means, ok := r.legend[legendKey(b[r.legendColumn])]; ok {
			b[r.legendColumn] = means
		}
	}
	r.buf = b
	return b
}

// keepDay takes the day of a line that counts those below it, "3 Jan | 9 | Participants", for
// the rows that have none.
func (r *rowRules) keepDay(cells []string) {
	for k, i := range r.fill {
		if c := cellAt(cells, i); kindOf(c) == kDate {
			r.above[k] = c
		}
	}
}

// isDitto says whether a cell repeats the one above by a mark.
func isDitto(s string) bool {
	switch trim(s) {
	case "\"", "''", "〃", "”", "“", "״", ",,", "„", "-\"-", "-''-", "do", "do.", "ditto", "dto", "dto.", "id.", "idem", "= =", "^":
		return true
	}
	return false
}

// sameTime are words for the time of the line above, in the folded form.
var sameTime = set("s.t. s.t same m.t. m.t", "same time", "meme temps", "gleiche zeit", "mismo tiempo", "stesso tempo", "samma tid", "zelfde tijd", "s t", "m t", "see above", "as above", "same as above", "siehe oben", "wie oben", "ci dessus", "comme ci dessus", "igual", "come sopra", "zie boven", "idem tijd", "som ovan", "jak wyzej", "jako vyse", "stejny cas", "ten sam czas", "ebenso", "zeitgleich", "gleichzeitig", "eodem", "ex aequo", "lo mismo", "lo stesso", "evenzo", "likadant")

// joinClock writes the cells of hours, minutes and seconds as one time.
func joinClock(cells []string, parts []int, given bool) string {
	var b strings.Builder
	for k, i := range parts {
		c := trim(cells[i])
		if c != "" && (c[0] < '0' || c[0] > '9') {
			return c // DNF, or a dash
		}
		if c == "" && k == 0 && len(parts) == 3 {
			continue
		}
		if c == "" {
			if b.Len() == 0 {
				return ""
			}
			if given && k == len(parts)-1 {
				return b.String() + ":?"
			}
			c = "0"
		}
		if b.Len() > 0 {
			b.WriteByte(':')
			if whole, _, _ := strings.Cut(strings.ReplaceAll(c, ",", "."), "."); len(whole) == 1 {
				b.WriteByte('0')
			}
		}
		b.WriteString(c)
	}
	return b.String()
}
