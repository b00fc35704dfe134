package sheet

import (
	"fmt"
	"slices"
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
	commas    bool     // commas divide its cells
	plain     bool     // a plainTable: it need not be searched for other tables and odd rows
	ofSets    bool     // each line was made of one of several sets of columns behind each name
	runner    string   // whose runs its lines are, where the lines above it say so; "" for a table of many people
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
		return withoutShort(out), width
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
	return withoutShort(out), width
}

// withoutHeadings leaves out the rows that repeat the heading, as above each class.
func withoutHeadings(rows []line, headings []string) []line {
	var folded []string
	for _, h := range headings {
		folded = append(folded, fold(h))
	}
	if len(folded) == 0 {
		return rows
	}
	return slices.DeleteFunc(rows, func(l line) bool { return sameHeading(folded, l.cells, rowFilled(l.cells)) })
}

// withoutShort leaves out rows with no more than half as many cells as is usual, where they
// are the fewer: totals and winners, whose figures say nothing of the columns they
// happen to stand in.
func withoutShort(rows []line) []line {
	filled := make([]int, len(rows))
	for i, l := range rows {
		filled[i] = rowFilled(l.cells)
	}
	if len(rows) == 0 {
		return rows
	}
	sorted := slices.Sorted(slices.Values(filled))
	usual := sorted[len(sorted)/2]
	var out []line
	for i, l := range rows {
		if 2*filled[i] > usual {
			out = append(out, l)
		}
	}
	if 3*(len(rows)-len(out)) > len(rows) {
		return rows
	}
	return out
}

// addTable reads the tables of one text or tab into parts: usually one, but
// several may stand one below the other under headings of their own, or side by
// side.
func (s *Sheet) addTable(t table, lex *lexicon, o Options) {
	if t.plain {
		if l := findHeading(lex, t.head()); l.first == 0 && l.lines == 1 && !slices.ContainsFunc(l.headings, func(h string) bool { return !lex.read(h).known || headsEnded(h) || notHeld(h) != "" }) && !t.sexAside(l) && !t.factsInHead(lex, l) {
			s.addOne(t, lex, o)
			return
		}
	}
	if t.grid == nil {
		s.tooLargeFor(t, lex)
	}
	if t.grid != nil {
		if t.splitCompound(lex) || t.splitPlaces(lex) {
			s.note("columns-divided", "a column that holds several facts under one heading was divided")
		}
		if t.factRows(lex) {
			s.note("facts-in-rows", "each row says one fact of a runner; those of each runner were put into one row")
		}
		if side := t.turn(lex); side != nil {
			if s.turned == nil {
				s.turned = map[string]*onSide{}
			}
			s.turned[t.tab] = side
			s.note("table-turned", turnedNote(len(side.columns)-1))
		}
		if t.liftHeading(lex) {
			s.note("heading-below", "the headings stand below the table, and are read as if they stood above it")
		}
		s.keepCalendar(t, lex)
		if n := t.yearLines(); n > 0 {
			s.note("years-of-lines", fmt.Sprintf("%d lines say a year each, and the days below them were taken for days of it", n))
		}
		if n := t.daysOfWeeks(baseStem(s.Name)); n > 0 {
			s.note("days-of-weeks", fmt.Sprintf("where a line says only the week (%s), its day is the weekday that the sheet names", text.Count(n, "line")))
		}
		if n := t.dayColumnInMonths(lex); n > 0 {
			s.note("months-of-lines", fmt.Sprintf("a line that says only a month (%s) gives it to the days below", text.Count(n, "line")))
		}
		if people := t.peopleAcross(lex); people != nil {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab}, Severity: place.Note, Kind: "people-in-columns", Read: text.Count(len(people), "name"),
				Do: "Each row was read as a run, and the columns under each name as that runner's."})
			for _, p := range people {
				s.addOne(p, lex, o)
			}
			return
		}
		if long, sets := t.columnSets(lex); long != nil {
			s.note("runs-behind-names", fmt.Sprintf("the same columns stand %d times behind each name; each set of them was read as one more run of that runner", sets))
			s.addOne(*long, lex, o)
			return
		}
		if n := t.nameByLine(lex); n > 0 {
			s.note("names-of-lists", fmt.Sprintf("%d lists below one another, each under a name, were taken for those of these runners", n))
		}
		if t.nameByCard(lex, baseStem(s.Name)); t.runner != "" {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab}, Severity: place.Note, Kind: "runs-of-one", Read: t.runner,
				Do: "Each line is of another day and names nobody; the lines above them name this runner, and are taken to say whose they are."})
		}
		if places := t.runsDown(lex); places != nil {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab}, Severity: place.Note, Kind: "runs-in-rows", Read: text.Count(len(places), "place"),
				Do: "Each row was read as a run, with a name and a time for each place."})
			for _, p := range places {
				s.addOne(p, lex, o)
			}
			return
		}
		t.daysInMonth()
		t.daysInYear()
		t.weekdaysOfTitle()
		t.namesUnderSexes(lex)
		t.sexesInPlaces(lex)
		if t.endedByLetter(lex) {
			s.note("letters-explained", "a line says what letters behind places or times stand for; it was read as a column of its own")
		}
		if t.factsBesideNames(lex) {
			s.note("facts-of-names", "a sex or a class stands beside the names, the times or the clubs; it was read as a column of its own")
		}
		if flags := t.endedByFlag(lex); flags != nil {
			s.note("flags-read", fmt.Sprintf("yes under %s says how a race ended", strings.Join(flags, ", ")))
		}
		t.stackRows(lex)
		s.joinOnKeys(t, lex)
		t = s.joinListBelow(t, lex)
		if title, row := t.withoutListsBelowRuns(lex); title != "" {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab, Row: row}, Severity: place.Note, Kind: "table-left-out", Read: title, Expected: "times under the dates above it"})
		}
	}
	var lists []*Part // of each table one below the other the first
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
			if len(tables) == 1 && n < len(s.Parts) {
				lists = append(lists, s.Parts[n])
			}
		}
	}
	s.nameLists(lists, lex, o)
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

// A table takes of the titles above it at most those nearest to it and those over the first
// table, so that a thousand lists one under the other don't hand down a million lines.
const nearTitles, sheetTitles = 24, 16

// inherit adds the titles of the table above, so that what its own titles leave
// open is still said.
func (p *Part) inherit(above *Part) {
	titles := above.Titles
	if n := len(titles); n > nearTitles+sheetTitles {
		titles = slices.Concat(titles[:nearTitles], titles[n-sheetTitles:])
	}
	if _, dated := onlyDate(p.Titles); dated {
		titles = undated(titles)
	}
	p.Titles = append(p.Titles, titles...)
	p.lent += len(titles)
}

// linesBelow are the lines of one cell below a row of a table that is held whole.
func (t table) linesBelow(after int) (out []string) {
	if t.grid == nil {
		return nil
	}
	for i := range t.grid.len() {
		if row, cells := t.grid.at(i); row > after && rowFilled(cells) == 1 {
			out = append(out, titleText(cells))
		}
	}
	return out
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
		l.headings = besideRowNames(lex, l.headings, head[l.first+l.lines:])
		headingRow = head[l.first].row
		after = head[l.first+l.lines-1].row
	}
	if t.grid != nil {
		for _, m := range t.rowMends(lex, l, after, o.Limits) {
			if n := m.mend(); n > 0 {
				s.note(m.kind, fmt.Sprintf(m.said, text.Count(n, m.of)))
				head = t.head()
			}
		}
	}
	if l.first < 0 && turned(lex, head) {
		refuse("its people stand beside one another, a column each, and the headings in the first column; copy the table, paste it so that rows become columns (Paste Special, Transpose), and load that")
		return
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
			refuse(noHeading)
			return
		}
		if runsOn(head) {
			refuse("its results run on in lines of text, several on a line; put each runner on a line")
			return
		}
		after = head[titleEnd].row - 1
		if rowFilled(head[titleEnd].cells) == 1 {
			need = 1
		}
	}
	if l.first > 0 {
		if k := resultsAbove(lex, head, l); k >= 0 {
			titleEnd, after = k, head[k].row-1
		}
	}
	rows, width := t.body(after, need)
	rows = withoutHeadings(rows, l.headings)
	width = max(width, len(l.headings))
	if width > o.Limits.Columns {
		width = o.Limits.Columns
	}
	c := settleColumns(lex, s.courseBook(o), l.headings, rows, width)
	var above []string
	for _, h := range head[:titleEnd] {
		above = append(above, titleTexts(lex, h.cells)...)
	}
	c.startInTitle(append(slices.Clone(above), t.facts...), func() []string { return t.linesBelow(after) })
	p := &Part{ofSets: t.ofSets, Official: c.goesBy, Tab: t.tab, TabIndex: t.tabIndex, Hidden: t.hidden, HeadingRow: headingRow, Columns: c.columns, src: t.src, Whole: t.whole, limits: o.Limits}
	if len(c.clock) > 0 {
		n := len(p.Columns)
		var names []string
		for _, i := range c.clock {
			names = append(names, letters(i))
		}
		why := "columns " + strings.Join(names, " and ") + " joined"
		if c.start > 0 {
			from := "as a line above says"
			if lex.times.startUsed {
				from = "by an answer"
			}
			why = fmt.Sprintf("from the start at %s, %s, to the time of day in column %s", clockText(int64(c.start*1000)), from, names[0])
		}
		if c.between {
			why = "from the start in column " + names[0] + " to the finish in column " + names[1]
		}
		if c.sum {
			why = "the sum of the laps in columns " + strings.Join(names, ", ")
		}
		p.Columns = append(p.Columns, Column{Index: n, Heading: "(time)", Meaning: Time, Why: why})
	}
	tab := t.tab
	if t.run != "" && onlyWords(tab, seasonTabs) {
		tab = "" // the tab of a league that has its runs in columns
	}
	if listsOfPeople(tab) && (t.run != "" || slices.ContainsFunc(above, func(l string) bool { return len(findDates(l)) > 0 })) {
		tab = "" // the club's register, with the times of those who were there on a day that it says
		c.todays = c.todays || !c.hasTicks()
	}
	p.daysOfBests(append(slices.Clone(above), t.tab))
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
		if other := p.otherPaper(s.Name, head[:titleEnd], l.first >= 0); other != "" {
			if kind != "" {
				s.entered(p, t, after, lex)
			}
			refuse(other)
			return
		}
	}
	if kind == "" && (len(c.clockColumns) < 2 || why == elsewhereCorrected) {
		if why == elsewhereCorrected {
			s.correctionTabs = append(s.correctionTabs, p)
		}
		s.keepFacts(t, lex)
		refuse(why)
		return
	}
	if len(c.clockColumns) > 1 && !slices.ContainsFunc(c.clockColumns, func(i int) bool { return !headsSum(cellAt(l.headings, i)) }) {
		refuse("its times are the best, the slowest or the mean of many runs")
		return
	}
	if len(c.clockColumns) > 1 {
		p.problem(s.Name, headingRow, -1, place.Waits, "time-column-missing", rowText(l.headings), "one column headed Time, or a date above each column of times",
			"Several columns hold times. Say which counts, or write Time above it; where each column is another run, write its date there (as in 3 Jan 2026) and load the sheet again.")
		c.askWhich(p, Time, "if the times %s count", c.clockColumns...)
	}
	if p.Kind = kind; kind == "" {
		p.Kind = "names" // it waits for its times
	} else if kind == "full" && (t.runner != "" || t.ofSets || c.newBest) {
		p.Kind = "excerpt"
	}
	if p.Kind == "times" && p.namesAbove(head[:titleEnd]) {
		p.problem(s.Name, head[titleEnd].row, -1, place.Waits, "names-apart", rowText(head[titleEnd-1].cells), "a name and a time on each line",
			"The names stand above, and the times below them without names. Put each name beside its time, on one line, and load the sheet again.")
	}
	if l.first < 0 && titleEnd > 0 {
		p.askHeading(s.Name, lex, head[titleEnd-1], head[titleEnd])
	}
	c.askUntold(p, s.Name, headingRow)
	c.sayBareAges(p, s.Name)
	c.sayByValues(p, s.Name)
	c.sayRareTimes(p, s.Name)
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
	p.Titles = append(append(p.Titles, t.facts...), above...)
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
	s.Parts = append(s.Parts, s.split(p, t, lex, o)...)
}

// namesAbove says whether the lines above a table of times alone are names, one a line: five
// of them or more, right above one another.
func (p *Part) namesAbove(above []line) bool {
	n := 0
	for _, l := range above {
		if text := titleText(l.cells); text != "" && rowFilled(l.cells) == 1 && looksNamed(text) && len(findDates(text)) == 0 {
			n++
		} else if text != "" {
			n = 0
		}
	}
	return n >= 5
}

// factLines is how many lines of a tab without results are looked at for what
// they say of the run.
const factLines = 30

// keepFacts keeps the labelled lines of a tab that holds no results, "Course:
// Alder Bank", for the tabs that say nothing themselves.
func (s *Sheet) keepFacts(t table, lex *lexicon) {
	if t.tab == "" || t.grid == nil || t.hidden || helperTab(t.tab) && !coverTab(t.tab) && !onlyWords(t.tab, factTabs) {
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
