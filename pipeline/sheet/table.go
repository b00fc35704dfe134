package sheet

import (
	"fmt"
	"regexp"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// table is one table as cut, before anything is known about it.
type table struct {
	tab      string
	tabIndex int
	hidden   bool
	date1904 bool
	whole    bool
	src      source
	grid     *grid  // where whole
	sample   []line // where not
	run      string // heading of a column of times that says the run; "" none
	runFrom  string // where it stands
	// runCourse is what stands over that column of the run's course, as a title line.
	runCourse string
	aside     string   // headings of a list beside it that was left out
	facts     []string // labels and values that stood beside it
}

// profileRows is how many rows the meaning of the columns rests on: the first
// ones in a run, and as many again spread over the rest.
const profileRows = 64

// head returns the rows searched for titles and heading.
func (t *table) head() []line {
	if t.grid == nil {
		return t.sample
	}
	var out []line
	filled := 0
	for i := 0; i < t.grid.len() && filled < headingLooks+10; i++ {
		row, cells := t.grid.at(i)
		out = append(out, line{row, cells})
		if rowFilled(cells) > 0 {
			filled++
		}
	}
	return out
}

func rowFilled(cells []string) (n int) {
	for _, c := range cells {
		if !isBlank(c) {
			n++
		}
	}
	return n
}

// body returns a sample of the rows after a given row that look like data:
// at least two filled cells (one where the table has one column).
func (t *table) body(after int, need int) (out []line, width int) {
	take := func(l line) {
		if rowFilled(l.cells) >= need {
			out = append(out, l)
			n := len(l.cells)
			for n > 0 && isBlank(l.cells[n-1]) {
				n--
			}
			width = max(width, n)
		}
	}
	if t.grid == nil {
		for _, l := range t.sample {
			if l.row > after {
				take(l)
			}
		}
		return out, width
	}
	i := 0
	for ; i < t.grid.len() && len(out) < profileRows; i++ {
		if row, cells := t.grid.at(i); row > after {
			take(line{row, cells})
		}
	}
	left := t.grid.len() - i
	step := max(1, left/profileRows)
	for ; i < t.grid.len(); i += step {
		row, cells := t.grid.at(i)
		take(line{row, cells})
	}
	return out, width
}

// addTable reads the tables of one text or tab into parts: usually one, but
// several may stand one below the other under headings of their own, or side by
// side.
func (s *Sheet) addTable(t table, lex *lexicon, o Options) {
	if t.grid == nil {
		s.tooLargeFor(t, lex)
	}
	for i, below := range t.liftFacts(lex).below(lex) {
		if below.other != "" {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab, Row: below.row}, Severity: place.Note, Kind: "table-left-out", Read: below.other, Expected: "the columns of the results above it"})
			continue
		}
		var above *Part
		if i > 0 && len(s.Parts) > 0 {
			above = s.Parts[len(s.Parts)-1]
		}
		tables := below.t.across(lex)
		if tables == nil {
			tables = below.t.beside(lex)
		}
		for _, beside := range tables {
			if beside.aside != "" {
				s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab}, Severity: place.Note, Kind: "table-left-out", Read: beside.aside, Expected: "the columns of the results beside it"})
			}
			n := len(s.Parts)
			s.addOne(beside, lex, o)
			if above != nil {
				for _, p := range s.Parts[n:] {
					p.inherit(above)
				}
			}
		}
	}
}

// tooLargeFor says what is on a sheet that is too large to be held whole and
// would be read only then: tables side by side, dates or groups between the
// rows.
func (s *Sheet) tooLargeFor(t table, lex *lexicon) {
	l := findHeading(lex, t.sample)
	if l.first < 0 {
		return
	}
	ask := func(row int, read, what string) {
		s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab, Row: row}, Severity: place.Waits, Kind: "sheet-too-large", Read: shorten(read, 80),
			Expected: fmt.Sprintf("a plain table; %s are read on sheets of up to %d MB", what, wholeBytes>>20),
			Do:       "Divide the sheet into smaller ones, a run or a season each, or give each line its own date, sex and group."})
	}
	if len(blocks(lex, l.headings)) > 1 {
		ask(t.sample[l.first].row, rowText(t.sample[l.first].cells), "tables side by side")
		return
	}
	for _, r := range t.sample[l.first+l.lines:] {
		if text := titleText(r.cells); rowFilled(r.cells) == 1 && (isSection(text) || len(findDates(text)) > 0) {
			ask(0, text, "lines between the rows that say a date, a sex or a group")
			return
		}
	}
}

// inherit adds the titles of the table above, so that what its own titles leave
// open is still said.
func (p *Part) inherit(above *Part) {
	if _, dated := onlyDate(p.Titles); dated {
		p.Titles = append(p.Titles, undated(above.Titles)...)
	} else {
		p.Titles = append(p.Titles, above.Titles...)
	}
}

// addOne reads one table into parts, or notes why it is none.
func (s *Sheet) addOne(t table, lex *lexicon, o Options) {
	refuse := func(why string) {
		s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab}, Severity: place.Note, Kind: map[bool]string{true: "tab-refused", false: "no-table"}[t.tab != ""], Expected: why})
	}
	head := t.head()
	l := findHeading(lex, head)
	if l.first < 0 {
		l = volunteerHeading(lex, head)
	}
	headingRow, after := 0, 0
	if l.first >= 0 {
		headingRow = head[l.first].row
		after = head[l.first+l.lines-1].row
	}
	if l.first >= 0 && t.grid != nil && s.Format == "csv" {
		if n := t.grid.rejoin(lex, l.headings, after); n > 0 {
			s.note("cells-joined", fmt.Sprintf("in %s a comma without quotation marks cut a name, a club or a time in two; it was joined again", text.Count(n, "row")))
			head = t.head()
		}
	}
	need := 2
	if len(l.headings) == 1 {
		need = 1
	}
	titleEnd := l.first
	if l.first < 0 {
		// Without a heading the table begins with the first row of values.
		titleEnd = firstValues(head)
		if titleEnd < 0 {
			s.keepFacts(t, lex)
			refuse("no heading row with columns such as position, name and time, and no rows of results")
			return
		}
		after = head[titleEnd].row - 1
		if rowFilled(head[titleEnd].cells) == 1 {
			need = 1
		}
	}
	rows, width := t.body(after, need)
	width = max(width, len(l.headings))
	if width > o.Limits.Columns {
		width = o.Limits.Columns
	}
	c := settleColumns(lex, newCourseBook(o.Courses), l.headings, rows, width)
	p := &Part{Tab: t.tab, TabIndex: t.tabIndex, Hidden: t.hidden, HeadingRow: headingRow, Columns: c.columns, src: t.src, Whole: t.whole, limits: o.Limits}
	if len(c.clock) > 0 {
		n := len(p.Columns)
		var names []string
		for _, i := range c.clock {
			names = append(names, letters(i))
		}
		why := "columns " + strings.Join(names, " and ") + " joined"
		if c.between {
			why = "from the time of day in column " + names[0] + " to that in column " + names[1]
		}
		p.Columns = append(p.Columns, Column{Index: n, Heading: "(time)", Meaning: Time, Why: why})
	}
	tab := t.tab
	if t.run != "" && onlyWords(tab, seasonTabs) {
		tab = "" // the tab of a league that has its runs in columns
	}
	kind, why := partKind(p, tab, l.first >= 0, c.figures())
	switch {
	case o.Kind == Volunteers:
		kind, why = p.volunteersByHand()
	case o.Kind == "" && p.listsVolunteers(s.Name, head[:max(l.first, 0)]):
		kind = Volunteers
	}
	if kind == "" {
		s.entered(p, t, after, lex)
	}
	if o.Kind == "" {
		if other := p.otherPaper(s.Name, head[:max(titleEnd, 0)], l.first >= 0); other != "" {
			if kind != "" {
				s.entered(p, t, after, lex)
			}
			refuse(other)
			return
		}
	}
	if kind == "" && c.clockColumns < 2 {
		s.keepFacts(t, lex)
		refuse(why)
		return
	}
	if c.clockColumns > 1 {
		p.problem(s.Name, headingRow, -1, place.Waits, "time-column-missing", rowText(l.headings), "one column headed Time, or a date above each column of times",
			"Several columns hold times. Write \"Time\" above the one that counts; or, where each column is another run, its date (as in 3 Jan 2026). Then load the sheet again.")
	}
	if p.Kind = kind; kind == "" {
		p.Kind = "names" // it waits for its times
	}
	if l.first < 0 && titleEnd > 0 {
		p.askHeading(s.Name, lex, head[titleEnd-1], head[titleEnd])
	}
	c.askUntold(p, s.Name, headingRow)
	c.askNames(p, s.Name)
	if t.run != "" {
		p.Titles, p.titleFrom = append(p.Titles, t.run), t.runFrom
		if t.runCourse != "" {
			p.Titles = append(p.Titles, t.runCourse)
		}
		without := ""
		if p.Index(Position) < 0 {
			without = ", without a place"
			if p.Kind == "full" {
				p.Kind = "excerpt"
			}
		}
		p.problem(s.Name, headingRow, -1, place.Note, "runs-in-columns", t.run, "", "Each time in this column was read as a result of that run"+without+". It is taken for a part of the field; if it is all of it, load the sheet with --kind full.")
	}
	p.Titles = append(p.Titles, t.facts...)
	for _, h := range head[:titleEnd] {
		p.Titles = append(p.Titles, titleTexts(lex, h.cells)...)
	}
	if p.Index(Date) >= 0 && p.Index(Position) < 0 && p.Kind != Volunteers && listsRecords(p.Titles) {
		refuse("the lines above say that it is a list of records")
		return
	}
	if p.Kind == Volunteers {
		p.dropVolunteerWords()
	}
	if p.emptyForm(t, after) {
		refuse("its rows have places and nothing else: a form that nobody has filled in")
		return
	}
	p.rules = newRowRules(p, c, l, after, t)
	for k := 0; k < l.lines && l.lines > 1; k++ {
		var folded []string
		for _, cell := range head[l.first+k].cells {
			folded = append(folded, fold(cell))
		}
		p.rules.headingLines = append(p.rules.headingLines, folded)
	}
	s.Parts = append(s.Parts, s.split(p, t, lex, o)...)
}

// listsRecords says whether a title announces best times of many days.
func listsRecords(titles []string) bool {
	for _, t := range titles {
		f := " " + fold(t) + " "
		for _, w := range []string{" records ", " all time ", " alltime ", " best times ", " rekorde ", " bestenliste ", " palmares ", " rekordy "} {
			if strings.Contains(f, w) && len(strings.Fields(f)) <= 8 {
				return true
			}
		}
	}
	return false
}

// factLines is how many lines of a tab without results are looked at for what
// they say of the run.
const factLines = 30

// keepFacts keeps the labelled lines of a tab that holds no results, "Course:
// Alder Bank", for the tabs that say nothing themselves.
func (s *Sheet) keepFacts(t table, lex *lexicon) {
	if t.tab == "" || t.grid == nil || t.hidden || helperTab(t.tab) && !coverTab(t.tab) {
		return
	}
	s.keepCover(t)
	for i := 0; i < t.grid.len() && i < factLines; i++ {
		_, cells := t.grid.at(i)
		if rowFilled(cells) > 6 {
			continue
		}
		for _, text := range titleTexts(lex, cells) {
			label, value, ok := strings.Cut(text, ": ")
			if g := lex.read(label); ok && value != "" && (g.known && (g.meaning == Course || g.meaning == Date || g.meaning == Session || g.meaning == Distance) || isVenueLabel(fold(label))) {
				s.facts = append(s.facts, text)
			}
		}
	}
}

// titleText joins the cells of a title line; a label and its value in the next
// cell read "Course: Alder Bank".
func titleText(cells []string) string {
	var parts []string
	for _, c := range cells {
		if c = trim(unmangle(c)); c != "" && (len(parts) == 0 || parts[len(parts)-1] != c) {
			parts = append(parts, labelApart.ReplaceAllString(strings.Join(strings.Fields(c), " "), "$1: $2"))
		}
	}
	if len(parts) == 2 && len(parts[0]) <= 20 && !strings.ContainsAny(parts[0], "0123456789") {
		return strings.TrimSuffix(parts[0], ":") + ": " + parts[1]
	}
	return strings.Join(parts, " | ")
}

// labelApart is a label without a space before its value, "Date:3 May 2026".
var labelApart = regexp.MustCompile(`^(\pL+):(\d{1,2}[ ./-]|\pL)`)

// titleTexts is titleText for a line that may hold several labels, each with its
// value in the next cell: "Course | Alder Bank | Weather | dry" says two things.
func titleTexts(lex *lexicon, cells []string) (out []string) {
	var plain []string
	rest := func() {
		if text := titleText(plain); text != "" {
			out = append(out, text)
		}
		plain = nil
	}
	filled := rowFilled(cells)
	for i := 0; i < len(cells); i++ {
		c := trim(unmangle(cells[i]))
		if c == "" {
			continue
		}
		j := i + 1
		for j < len(cells) && isBlank(cells[j]) {
			j++
		}
		if filled < 3 || j >= len(cells) || !isLabel(lex, c) || isLabel(lex, trim(unmangle(cells[j]))) {
			plain = append(plain, c)
			continue
		}
		rest()
		out = append(out, strings.TrimSuffix(c, ":")+": "+strings.Join(strings.Fields(trim(unmangle(cells[j]))), " "))
		i = j
	}
	rest()
	return out
}

// isLabel says whether a cell of a title line says what the next one holds.
func isLabel(lex *lexicon, c string) bool {
	if len(c) > 30 || strings.ContainsAny(c, "0123456789") {
		return false
	}
	if strings.HasSuffix(c, ":") {
		return true
	}
	if g := lex.read(c); g.known {
		switch g.meaning {
		case Course, Date, Session, Distance:
			return true
		}
	}
	f := fold(c)
	return isVenueLabel(f) || labelWords[f] || len(strings.Fields(f)) <= 3 && isRemark(c)
}

// labelWords are labels of facts about the day that nothing here is made of
// (common practice, no source).
var labelWords = set(`entries finishers starters runners walkers volunteers conditions referee timekeeper starter organiser organizer handicapper surface laps sponsor`,
	"first man", "first woman", "first lady", "course record", "run director", "race director", "no of runners", "number of runners")

// firstValues finds the first row that looks like a result: a time and
// something else, or a time alone in a table of one column.
func firstValues(rows []line) int {
	// typed is a line of nothing but a name and a time with a dot: "Jo Lee 18.20".
	typed := func(cells []string) bool {
		return rowFilled(cells) == 2 && kindOf(cellAt(cells, 0)) == kText && kindOf(cellAt(cells, 1)) == kDecimal && looseNumber(trim(cells[1])) >= 12
	}
	for i, r := range rows {
		if i+2 < len(rows) && typed(r.cells) && typed(rows[i+1].cells) && typed(rows[i+2].cells) {
			return i
		}
		clocks, ints, filled := 0, 0, 0
		for _, c := range r.cells {
			switch kindOf(c) {
			case kBlank:
				continue
			case kClock:
				clocks++
			case kInt:
				ints++
			}
			filled++
		}
		if filled >= 2 && clocks >= 1 || filled >= 2 && ints >= 1 && digitsOnly(trim(cellAt(r.cells, 0))) || filled == 1 && clocks == 1 {
			// The next filled row must agree.
			for _, n := range rows[i+1:] {
				if f := rowFilled(n.cells); f > 0 {
					if f*2 >= filled {
						return i
					}
					break
				}
			}
			if i == len(rows)-1 {
				return i
			}
		}
	}
	return -1
}

// partKind says what a table is good for, or why it is no table of results.
// figures is how many columns of whole numbers have a heading that says nothing.
func partKind(p *Part, tab string, headed bool, figures int) (kind, why string) {
	timed := p.Index(Time) >= 0
	named := p.named()
	numbered := p.Index(Number) >= 0
	placed := p.Index(Position) >= 0
	if helperTab(tab) && !(timed && named && p.filledTemplate(tab)) {
		return "", "the name of the tab says that it is no list of results"
	}
	switch {
	case p.isPivot():
		return "", "it is a pivot table, made of results that stand elsewhere"
	case anyWord(tab, relayWords), p.listsRelay():
		return "", "a relay's teams are no runners of their own"
	case timed && named && p.totalsOfRuns():
		return "", "its times are totals of several runs"
	case timed && (named || numbered):
		return "full", ""
	case timed:
		return "times", ""
	case p.Index(Points) >= 0 || p.Index(PersonalBest) >= 0:
		return "", "it has points or best times but no times of a run"
	case placed && named && p.Index(TotalRuns) >= 0 && figures >= 2:
		return "", "it has figures of several runs and their total, but no times of a run"
	case placed && (named || numbered):
		return "names", ""
	case named && (p.Index(Date) >= 0 && p.Index(Course) >= 0 || p.Index(Status) >= 0) && !isRota(p):
		return "names", ""
	case named:
		return "", "it has names but neither positions nor times"
	case placed:
		return "", "it has positions but neither names nor times"
	case !headed:
		return "", "it has no heading row, and its values don't say which column is which"
	}
	return "", "it has neither positions, names nor times"
}

// totalsOfRuns says whether the times of a table are the sums of several runs: a
// column of how many these were stands beside "Total time", and each times a
// plausible time makes it.
func (p *Part) totalsOfRuns() bool {
	runs, clock := p.Index(TotalRuns), p.Index(Time)
	if runs < 0 || clock >= len(p.Columns) {
		return false
	}
	total := false
	for _, w := range strings.Fields(fold(p.Columns[clock].Heading)) {
		total = total || headingWords[w]&cTotal != 0
	}
	if !total || p.src == nil {
		return false
	}
	rows, several := 0, 0
	p.src.each(func(_ int, cells []string) error {
		n, t := looseNumber(trim(cellAt(cells, runs))), secondsOf(cells, clock)
		if n >= 1 && t > 0 {
			if rows++; n >= 2 && t > 3600 && t/n > 12*60 {
				several++
			}
		}
		if rows > profileRows {
			return errStop
		}
		return nil
	}) // errStop is taken by the source
	return rows >= 3 && several*2 > rows
}

// isRota recognises a list of volunteers by its headings.
func isRota(p *Part) bool {
	for _, c := range p.Columns {
		for _, w := range strings.Fields(fold(c.Heading)) {
			if rotaWords[w] {
				return true
			}
		}
	}
	return false
}

var rotaWords = set("role roles duty duties task job telephone phone mobile email shift post volunteer rolle aufgabe telefon fonction poste tache telefono ruolo rol taak telefoon funcao tarefa rola zadanie uppgift opgave oppgave telephone")

// helperTab recognises tabs beside the results by their names.
func helperTab(tab string) bool {
	words := strings.Fields(fold(tab))
	for _, w := range words {
		if helperTabs[w] {
			return true
		}
	}
	return false
}

var helperTabs = set(`record records league table standings points summary notes volunteers volunteer rota contacts pbs lookup lookups pivot chart charts template
	instructions members readme help about rekorde punkte zusammenfassung freiwillige helfer membres benevoles leden
	vrijwilligers soci volontari miembros voluntarios voluntarios sumario resumo socios czlonkowie wolontariusze medlemmer frivillige medlemmar funktionarer
	stats statistics statistik statistiques averages settings config categories factors standards roster registrations registered entries signup prize prizes raffle draw tombola lottery`)

// newRowRules makes the rules that tell finishers' rows from others.
func newRowRules(p *Part, c *settler, l layout, after int, t table) rowRules {
	r := rowRules{volunteers: p.Kind == Volunteers, first: after + 1, columns: len(p.Columns), pos: p.Index(Position), time: p.Index(Time), number: p.Index(Number), sectionColumn: -1, date1904: t.date1904, sample: t.sample}
	r.clock, r.beside = c.clock, c.beside
	if len(c.clock) > 0 {
		r.time = c.clock[len(c.clock)-2] // the minutes stand for the time
		if r.between = c.between; r.between {
			r.time = c.clock[1]
		}
	}
	r.name = p.Index(Name)
	r.given = p.Index(GivenName)
	if r.name < 0 {
		r.name = p.Index(FamilyName)
	}
	for _, h := range l.headings {
		r.headings = append(r.headings, fold(h))
	}
	if r.pos >= 0 {
		pr := c.profiles[r.pos]
		r.hasPositions = pr.count[kInt]*2 >= pr.filled && pr.count[kInt]*2 >= len(c.rows)
	}
	r.kinds = make([]kind, len(c.profiles))
	for i, pr := range c.profiles {
		switch p.Columns[i].Meaning {
		case Position, Time, ChipTime, GunTime, Age, BirthYear, Sex, AgeGrade, Gap, Pace, Split, GroupPlace, SexPlace, Points, TotalRuns:
			if pr.filled >= 4 && pr.share(kText) <= .1 {
				r.kinds[i] = kInt
			}
		}
	}
	if t.grid == nil || r.volunteers {
		return r
	}
	// The last row with more than a printed position; repeated values left out.
	rows := 0
	r.findTail(t.grid, t.run != "")
	blanks := map[int]int{}
	var fillable []int
	for _, m := range []Meaning{Course, Date, Session, Distance} {
		if i := p.Index(m); i >= 0 {
			fillable = append(fillable, i)
		}
	}
	firstFilled := map[int]bool{}
	for i := 0; i < t.grid.len(); i++ {
		row, cells := t.grid.at(i)
		if row < r.first {
			continue
		}
		n := rowFilled(cells)
		if n >= 2 || n == 1 && (r.pos < 0 || trim(cellAt(cells, r.pos)) == "") {
			if r.classify(row, cells) == isData {
				r.lastFilled = row
				rows++
				for _, f := range fillable {
					if isBlank(cellAt(cells, f)) || isDitto(cellAt(cells, f)) {
						blanks[f]++
					} else if rows == 1 {
						firstFilled[f] = true
					}
				}
			}
		}
	}
	for _, f := range fillable {
		if firstFilled[f] && blanks[f]*2 > rows {
			r.fill = append(r.fill, f)
			p.Columns[f].Why += "; blank cells repeat the one above"
		}
	}
	return r
}

// findTail finds the last row that is a result beyond doubt, and the rows after
// it that stand apart (after a blank row or a line of text): footers, winners,
// records, helpers. gaps says that rows are missing because their runners were not
// there, so that a row that stands apart is none.
func (r *rowRules) findTail(g *grid, gaps bool) {
	sure := func(cells []string) bool {
		if r.hasPositions {
			return kindOf(cellAt(cells, r.pos)) == kInt && rowFilled(cells) >= 2
		}
		if r.time < 0 {
			return false
		}
		for i, k := range r.kinds {
			if k != kBlank && i != r.time && kindOf(cellAt(cells, i)) == kText {
				return false
			}
		}
		k := kindOf(cellAt(cells, r.time))
		named := r.name < 0 || !isBlank(cellAt(cells, r.name)) && !isTotal(fold(cellAt(cells, r.name)))
		return (k == kClock || k == kDecimal || k == kInt) && named
	}
	last := -1
	for i := 0; i < g.len(); i++ {
		if row, cells := g.at(i); row >= r.first && sure(cells) {
			last = i
		}
	}
	if last < 0 {
		return
	}
	if gaps {
		r.lastSure = g.row(last)
		return
	}
	if r.hasPositions {
		last = r.tiedWith(g, last)
	} else {
		last = r.beforeWinners(g, last, sure)
	}
	r.lastSure = g.row(last)
	prev := r.lastSure
	for i := last + 1; i < g.len(); i++ {
		row, cells := g.at(i)
		filled := rowFilled(cells)
		if row > prev+1 || filled == 0 || filled == 1 && kindOf(titleText(cells)) == kText {
			r.tail = row
			return
		}
		prev = row
	}
}

// tiedWith steps on over rows whose blank place means that of the row above: they
// name somebody and have the same time.
func (r *rowRules) tiedWith(g *grid, last int) int {
	if r.time < 0 {
		return last
	}
	_, above := g.at(last)
	time := trim(cellAt(above, r.time))
	for i := last + 1; i < g.len() && time != ""; i++ {
		_, cells := g.at(i)
		switch named := !isBlank(cellAt(cells, r.name)) || !isBlank(cellAt(cells, r.given)); {
		case rowFilled(cells) == 0:
		case named && isBlank(cellAt(cells, r.pos)) && trim(cellAt(cells, r.time)) == time:
			last = i
		default:
			return last
		}
	}
	return last
}

// beforeWinners steps back over a last block of timed rows that stands apart
// and whose times go back to the front: winners and records repeated under the
// list of a sheet without positions.
func (r *rowRules) beforeWinners(g *grid, last int, sure func([]string) bool) int {
	start := last
	for start > 0 {
		row, _ := g.at(start)
		above, cells := g.at(start - 1)
		if above < r.first || above != row-1 || !sure(cells) {
			break
		}
		start--
	}
	if start == 0 || last-start > 25 {
		return last
	}
	// The row before the block that is sure, and whether the times fell.
	for i := start - 1; i >= 0; i-- {
		row, cells := g.at(i)
		if row < r.first {
			return last
		}
		if !sure(cells) {
			continue
		}
		_, first := g.at(start)
		sorted := true
		prevTime := -1.0
		for k := 0; k <= i; k++ {
			if row, c := g.at(k); row >= r.first && sure(c) {
				v := finishTime(cellAt(c, r.time))
				sorted = sorted && v >= prevTime
				prevTime = v
			}
		}
		if sorted && finishTime(cellAt(first, r.time)) < .8*prevTime {
			return i
		}
		return last
	}
	return last
}

// finishTime orders times of one column in which minutes may stand as hours:
// 24:31:00 is below 1:02:10.
func finishTime(cell string) float64 {
	v := looseNumber(trim(cell))
	if v > 5*3600 && strings.Count(cell, ":") == 2 {
		v /= 60
	}
	return v
}
