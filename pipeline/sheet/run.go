package sheet

import (
	"regexp"
	"slices"
	"sort"
	"strings"

	"lapwing/pipeline/place"
)

// runSettler settles the runs of all parts of one sheet together: a date that
// can only be read one way says how its neighbours are written.
type runSettler struct {
	sheet      *Sheet
	o          Options
	lex        *lexicon
	book       *courseBook
	file       []evidence
	years      []int
	files      []courseWord
	order      string // day or month first, settled by the sheet itself
	field      bool   // oneField, once fieldAsked
	fieldAsked bool
	orderBy    string
	dotted     string                     // a date with dots that can only be day first; "" for none
	parts      int                        // that are settled together
	races      map[tabOf]map[float64]bool // distances in m that the lists of each tab give, once asked
	words      map[string][]courseWord    // of lines that were asked about
	ownDay     map[*Part]bool             // of which the date given by hand was not said

	language string // why the day comes first in the language of the sheet; "" where it may not
}

func newRunSettler(s *Sheet, o Options, lex *lexicon, book *courseBook) *runSettler {
	rs := &runSettler{sheet: s, o: o, lex: lex, book: book}
	name := plainName(s.Name)
	rs.files = fileWords(name, book)
	parts := strings.Split(strings.ReplaceAll(name, "\\", "/"), "/")
	last := len(parts) - 1
	parts[last] = withoutEnding(parts[last])
	inFolders, months, ok := pathDate(parts)
	if ok {
		rs.file = append(rs.file, inFolders)
	}
	for i := last; i >= 0; i-- {
		from, strength := "folder name", 1
		text := parts[i]
		if i == last {
			from, strength = "file name", 2
		}
		if months[i] {
			continue // 01 January is a month, and no day of it
		}
		text = strings.ReplaceAll(text, "_", " ")
		for _, f := range withoutMadeDates(text, withFirstDays(text, scanDates(text, true))) {
			// Figures with no year in a file name may be anything: "5-3.csv".
			if f.readings[0].y == 0 && f.readings[0].order != "" && !(i == last && inYearFolder(parts, i)) {
				continue
			}
			f.weekday = sureWeekday(f, text)
			rs.file = append(rs.file, evidence{foundDate: f, text: strings.TrimSpace(strings.ReplaceAll(text, "_", " ")[f.from:f.to]), from: from, strength: strength})
		}
		rs.years = append(rs.years, yearsIn(text)...)
	}
	if o.YearSaid != "" {
		rs.years = yearsIn(o.YearSaid)
	}
	return rs
}

// withoutMadeDates leaves out of the dates of a name those that say when the sheet was made, where it has others:
// "2026-01-03 results updated 5 Jan".
func withoutMadeDates(text string, found []foundDate) []foundDate {
	made := func(f foundDate) bool { return madeWords[finalWord(text[:f.from])] }
	if len(found) < 2 || !slices.ContainsFunc(found, made) || !slices.ContainsFunc(found, func(f foundDate) bool { return !made(f) }) {
		return found
	}
	return slices.DeleteFunc(slices.Clone(found), made)
}

// sureWeekday is the weekday beside a date in a name, -1 where two or three letters that may
// end the name of a place, the So of Sunday or of a lake, say another than the date's.
func sureWeekday(f foundDate, text string) int {
	if f.weekday < 0 || len(f.readings) != 1 || f.readings[0].y == 0 || int(f.readings[0].day().Weekday()) == f.weekday {
		return f.weekday
	}
	for _, w := range strings.Fields(fold(strings.ReplaceAll(text[f.from:f.to], "-", " "))) {
		if _, ok := longWeekday(w); ok && len(w) > 3 {
			return f.weekday
		}
	}
	return -1
}

// settle gives every part its course, date, session and distance, or asks.
func (rs *runSettler) settle(parts []*Part) {
	var results, lists []*Part
	for _, p := range parts {
		if p.Kind == Volunteers {
			lists = append(lists, p)
		} else {
			results = append(results, p)
		}
	}
	results = rs.leaveCalendar(results)
	rs.settleRuns(results)
	rs.settleRuns(lists)
	rs.settleDayparts(results)
	results = rs.leaveCopies(results)
	results = rs.leaveLeftovers(results)
	rs.settleDistances(results)
	for _, p := range results {
		rs.moveLone(p)
		rs.ask(p)
	}
	results = rs.leaveTabs(results)
	results = rs.leaveApart(results)
	rs.sheet.Parts = slices.DeleteFunc(rs.sheet.Parts, func(p *Part) bool { return p.Kind != Volunteers && !slices.Contains(results, p) })
	rs.settleVolunteers(lists, results)
}

func (rs *runSettler) settleRuns(parts []*Part) {
	rs.parts = len(parts)
	evs := make([][]evidence, len(parts))
	for i, p := range parts {
		evs[i] = rs.gather(p)
	}
	rs.tabDays(parts, evs)
	rs.givenForOne(parts, evs)
	rs.settleOrder(parts, evs)
	for i, p := range parts {
		rs.course(p)
		rs.distance(p)
		rs.session(p)
		rs.date(p, evs[i])
	}
	rs.weeklyOrder(parts)
	rs.agree(parts)
	rs.takenByOthers(parts)
	rs.share(parts)
}

// ask raises one question for each thing that is missing.
func (rs *runSettler) ask(p *Part) {
	if !p.Course.OK() {
		var known []string
		for _, c := range rs.o.Courses {
			known = append(known, c.Course)
		}
		sort.Strings(known)
		expected := "the name of a course in the title, the tab, a column or the file's name"
		if len(known) > 0 && len(known) <= 12 {
			expected = "one of " + strings.Join(known, ", ")
		}
		p.ask(rs.sheet.Name, -1, "course-missing", strings.Join(p.Titles, " | "), expected, "Which course was this?", "--course NAME")
	}
	switch {
	case p.Date.Settled:
	case len(p.Date.Choices) > 1:
		var says, flags []string
		for _, c := range p.Date.Choices[:min(6, len(p.Date.Choices))] {
			says = append(says, c.Long())
			flags = append(flags, "--date "+c.String())
		}
		for i, from := range p.Date.ChoiceFrom {
			says[i] += " (" + from + ")"
		}
		if p.Date.Slip && rs.otherDays(p) {
			p.ask(rs.sheet.Name, -1, "date-unclear", p.Date.Text, strings.Join(says, " or "),
				"Which date was the run? If the weekday is right, correct the date, save, and load the sheet again.", "--answer \"weekday=any\"\tif the date is right")
			return
		}
		if rs.parts > 1 && p.Tab != "" && !p.Date.onlyOrder() {
			p.problem(rs.sheet.Name, 0, -1, place.Waits, "date-unclear", p.Date.Text, strings.Join(says, " or "), "Which date was the run? Write the right one in the title and in the name of this tab, and load the workbook again.")
			return
		}
		column := -1
		if strings.HasPrefix(p.Date.From, "column") {
			column = p.runs.dateCol
		}
		if p.Date.ChoiceFrom == nil && (column >= 0 || p.Date.onlyOrder() && rs.otherDays(p)) {
			p.ask(rs.sheet.Name, column, "date-unclear", p.Date.Text, strings.Join(says, " or "), "Is the day written first (dmy) or the month (mdy)?", "--answer \"date order=dmy\"", "--answer \"date order=mdy\"")
			return
		}
		if !p.Date.onlyOrder() {
			flags = append(flags, "--date YEAR-MONTH-DAY\tif it was another day")
		}
		p.ask(rs.sheet.Name, -1, "date-unclear", p.Date.Text, strings.Join(says, " or "), "Which date was the run?", flags...)
	case strings.HasPrefix(p.Date.From, "column"):
		if text, ok := p.yearless(); ok {
			p.ask(rs.sheet.Name, p.runs.dateCol, "year-missing", text, "dates with their year", "Which year was it?", yearAnswer)
		}
	case p.Date.From != "":
		p.ask(rs.sheet.Name, -1, "year-missing", p.Date.Text, "a date with its year", "Which year was it?", yearAnswer)
	default:
		question, answer := rs.whichDate()
		if none := rs.noSuchDay(p); none != "" {
			p.ask(rs.sheet.Name, -1, DateImpossible, none, "a day that there is", question, answer)
			return
		}
		if p.ofOtherDay(rs.sheet.Parts) {
			row := 0 // a list with a tab of its own is named by that
			if p.Tab == "" || slices.ContainsFunc(rs.sheet.Parts, func(q *Part) bool { return q != p && q.Tab == p.Tab }) {
				row = p.HeadingRow
			}
			p.problem(rs.sheet.Name, row, -1, place.Waits, "date-missing", strings.Join(p.Titles, " | "), "a date above this list too",
				"Which date was the run? The same people have other times on another list of this sheet, which gives its date. Write the date of this one in a line above it, save, and load the sheet again.")
			return
		}
		if column, day, ok := p.stampedDay(); ok {
			p.ask(rs.sheet.Name, column, "date-missing", day.Long(), "a date in the title, the tab, a column or the file's name",
				question+" Every line was written on that day; that need not be the day of the run.", "--date "+day.String()+"\tif the run was on that day", answer)
			return
		}
		if text, day, ok := p.madeOn(); ok {
			p.ask(rs.sheet.Name, -1, "date-missing", text, "a date in the title, the tab, a column or the file's name",
				question+" That date may be the day on which the list was made.", "--date "+day.String()+"\tif the run was on that day", answer)
			return
		}
		if text, day, ok := p.bareDayNumber(); ok {
			p.ask(rs.sheet.Name, -1, "date-missing", text, "a date in the title, the tab, a column or the file's name",
				question+" A spreadsheet shows "+day.Long()+" as "+text+" where the cell has another format.", "--date "+day.String()+"\tif the run was on that day", answer)
			return
		}
		p.ask(rs.sheet.Name, -1, "date-missing", strings.Join(p.Titles, " | "), "a date in the title, the tab, a column or the file's name", question, answer)
	}
}

// yearAnswer answers for all tables of a sheet, whose days are their own.
const yearAnswer = "--answer \"year=YEAR\""

// yearless is a date of a column of which none has a year, on a sheet that says none.
func (p *Part) yearless() (text string, ok bool) {
	if len(p.runs.dates.years) > 0 {
		return "", false
	}
	for _, text := range columnTexts(p, p.runs.dateCol) {
		if _, _, readable := p.runs.dates.read(text); readable {
			return "", false
		}
		if _, ok := cellDate(text, p.runs.dates.date1904); ok {
			return text, true
		}
	}
	return "", false
}

// otherDays says whether another table of the sheet is of other days: a date given by
// hand would be taken for both.
func (rs *runSettler) otherDays(p *Part) bool {
	return slices.ContainsFunc(rs.sheet.Parts, func(q *Part) bool {
		return q.Kind != Volunteers && (len(q.Date.Choices) > 1 || q.Date.Settled) && !slices.Equal(q.Date.Choices, p.Date.Choices)
	})
}

// onlyOrder says whether nothing but the order of day and month is open, which one
// answer settles for all tabs; a year is each tab's own.
func (f *FoundDate) onlyOrder() bool {
	for _, days := range f.ByOrder {
		if len(days) > 1 {
			return false
		}
	}
	return f.ByOrder != nil
}

// DateImpossible is the kind of a question for the date of a sheet that names a day that
// there is not.
const DateImpossible = "date-impossible"

// dayFigures are what looks like a date with its year.
var dayFigures = regexp.MustCompile(`(?:^|[^\d./-])((?:\d{4}([./-])\d{1,2}([./-])\d{1,2})|(?:\d{1,2}([./-])\d{1,2}([./-])\d{4}))(?:$|[^\d./-]|[.-]\D)`)

// noSuchDay is what stands for a date above the table, on the tab or in the file's name and
// is the date of no day or of no run: 2026-02-30, 31/11/2026, 1026-01-03. "" where there is
// none.
func (rs *runSettler) noSuchDay(p *Part) string {
	name := baseStem(rs.sheet.Name)
	for _, text := range append(append([]string{}, p.Titles...), p.Tab, strings.ReplaceAll(name, "_", " ")) {
		for _, m := range dayFigures.FindAllStringSubmatch(text, -1) {
			if m[2] == m[3] && m[4] == m[5] && len(scanDates(m[1], true)) == 0 {
				return m[1]
			}
		}
	}
	return ""
}

// whichDate is the question for a date that nothing says, and its answer. One given by
// hand holds for all tabs.
func (rs *runSettler) whichDate() (question, answer string) {
	tabs := map[string]bool{}
	for _, p := range rs.sheet.Parts {
		if p.Kind != Volunteers && !p.Date.OK() {
			tabs[p.Tab] = true
		}
	}
	if len(tabs) > 1 {
		return "Which date was the run? If the tabs are of several, write its date above the table of each, save, and load it again.", "--date YEAR-MONTH-DAY\tif all tabs are of one run"
	}
	return "Which date was the run?", "--date YEAR-MONTH-DAY"
}
