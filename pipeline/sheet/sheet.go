package sheet

import (
	"fmt"
	"path"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// CourseName is a course that is already known, with the other names that
// sheets have used for it.
type CourseName struct {
	Course  string   // slug
	Names   []string // names and aliases as printed on sheets
	Weekday int      // 0 Sunday … 6 Saturday as in time.Weekday; -1 unknown
}

// Options are the things a sheet can't say for itself.
type Options struct {
	Headings  map[string]string // further heading spellings -> the word of a Meaning
	Columns   map[string]string // what somebody said of this sheet: a heading, or the letters of a column without one -> the word of a Meaning
	Courses   []CourseName
	DateOrder string // "dmy" or "mdy": used only where the sheet's own evidence does not settle it; "" means ask
	OrderWhy  string // where DateOrder is from, in words; "" where it is configured
	// AnyWeekday says that a weekday beside a date that falls on another is a slip.
	AnyWeekday bool
	OrderSaid  string // "dmy" or "mdy": what somebody answered for this sheet; wins over its evidence
	YearSaid   string // "2026", or "2025-26" of a season: what somebody answered for dates without a year
	Course     string // given by hand; wins over everything
	Date       string // 2026-01-03; given by hand
	// CourseBefore and DateBefore are what other sheets say of one that says no course or
	// no date itself, and the Whys where that is from, in words.
	CourseBefore, CourseWhy string
	DateBefore, DateWhy     string
	Session                 string // given by hand
	Official                string // heading of the times that count, given by hand
	OfficialBefore          string // or on earlier sheets of these headings: used where the sheet's own places go by both
	StartSaid               string // answer: the time of day at the start, "9:00"; wins over a title's
	ClockSaid               string // answer: OneClock or OwnClock
	FirstSaid               string // answer: the first runner's time, "17:45"
	Kind                    string // given by hand: "full", "excerpt" or Volunteers; "" where the sheet itself shows it
	Limits                  Limits

	typed bool // read every text as if somebody had typed it: for the tests of plainTable
	alike bool // the lines of a text were cut by sameShape
}

// Limits bound what one sheet may cost. Zero fields take the defaults.
type Limits struct {
	Columns  int   // cells in one row; default 1000
	RowBytes int   // bytes in one row; default 1 MiB
	Bytes    int64 // bytes in one text sheet; default 4 GiB
	Unzipped int64 // bytes in an unpacked workbook; default 1 GiB
	Rows     int   // rows in one tab of a workbook; default 1 048 576 (ECMA-376 files of the usual programs hold no more)
	CellText int64 // bytes of text in one workbook; default 128 MiB
	Lists    int   // tables in one sheet, which are compared with one another; default 10 000

	// Stop is asked now and then; its error ends reading. nil goes on to the end.
	Stop func() error
}

// askEvery is how many rows are read between two questions to Stop.
const askEvery = 1 << 12

// goOn asks Stop after so many rows.
func (l *Limits) goOn(rows int) error {
	if l.Stop == nil || rows%askEvery != 0 {
		return nil
	}
	return l.Stop()
}

func (l Limits) orDefault() Limits {
	def := func(v *int, d int) {
		if *v <= 0 {
			*v = d
		}
	}
	def64 := func(v *int64, d int64) {
		if *v <= 0 {
			*v = d
		}
	}
	def(&l.Columns, 1000)
	def(&l.RowBytes, 1<<20)
	def64(&l.Bytes, 4<<30)
	def64(&l.Unzipped, 1<<30)
	def(&l.Rows, 1<<20)
	def64(&l.CellText, 128<<20)
	def(&l.Lists, 10_000)
	return l
}

// Sheet is one file as received, read as text.
type Sheet struct {
	Name     string // relative path
	Format   string // "csv", "xlsx", "xls" or "ods"
	Encoding string // "UTF-8", "UTF-8 with BOM", "UTF-16 little-endian", "Windows-1252", …; "" for workbooks
	// DateOrder is "dmy" or "mdy" where the sheet's own dates in figures, or a date
	// given by hand, show which of day and month comes first on it.
	DateOrder string
	Dialect   string // how the text is divided, in words
	Parts     []*Part
	Problems  []place.Problem

	divided map[string]*inOneCell // tabs on which each row stands in one cell
	turned  map[string]*onSide    // tabs whose table lies on its side
	own     ownBook               // what Lapwing says of it, where it is one of its workbooks

	facts []string // labelled lines of tabs that hold no results
	cover []string // first lines of a tab in front of the results
	// sexTabs says that some tabs are called after men and some after women, in a letter as well.
	sexTabs bool
	tabs    int // how many there are
	// groupTabs says that some tabs are called after age groups, one of them beyond doubt: "Under 18" beside "18-39".
	groupTabs bool
	// ageTabs says that they are called after ages alone, "10-19" beside "20-29", which are no days.
	ageTabs bool
	// header are the lines at the head of the printed pages.
	header []string

	entries     []entries // tabs that say who has which number
	usedEntries map[string]bool
	calendar    map[int]calendarDay // days of runs by number, which a tab gives
	// correctionTabs are tabs that list corrections of results.
	correctionTabs []*Part
	weekGrids      []weekGrid  // tables of weeks by number, until all tabs are read
	book           *courseBook // of the known courses, once asked for
}

// Found is a fact about a whole part, with where it came from and why it was
// believed. The zero Found is nothing found.
type Found struct {
	Value string // settled: a slug for a course, metres for a distance, 09:30 or 2 for a session
	Text  string // as the sheet has it
	From  string // "given by hand", "column D", "title line 2", "tab name", "file name"
	Why   string
}

// OK says whether anything was found.
func (f Found) OK() bool { return f.Value != "" || f.From != "" }

// FoundDate is a Found for the date of the run.
type FoundDate struct {
	Day     unit.Day
	Settled bool // false: nothing found, a column has it, or the question is open
	Text    string
	From    string
	Why     string
	Choices []unit.Day // the possible answers where the question is open
	// Slip says that the choices are a date, and the nearest day on the weekday that
	// stands beside it.
	Slip bool
	// ChoiceFrom says where each of the choices stands, where they are of several places.
	ChoiceFrom []string
	// ByOrder are the days that the dates in figures would be, by "dmy" and "mdy",
	// where the question is which of day and month comes first.
	ByOrder map[string][]unit.Day
}

// OK says whether a date was found, either one for all rows or a column.
func (f FoundDate) OK() bool { return f.Settled || strings.HasPrefix(f.From, "column") }

// Skipped is a row that stands for no finisher, and why.
type Skipped struct {
	Row  int
	Why  string // "blank", "footer", "total", "repeated heading", "section line", "no result"
	Text string // its cells, shortened
}

// Column is one column of a part and what it was taken for.
type Column struct {
	Index   int
	Heading string
	Meaning Meaning
	Why     string

	doubted Meaning // what a plain heading says, where it was not believed and no other column has it
	grades  bool    // it seems to hold age grades
}

// ByValues says whether a column was taken for what it is by what stands in it, and not
// by its heading.
func (c Column) ByValues() bool { return strings.Contains(c.Why, "its values") }

// Part is one table: a text sheet, one tab of a workbook, or one of several
// runs listed one after the other on the same tab.
type Part struct {
	Tab      string
	Hidden   bool
	TabIndex int    // 0-based place of the tab in the workbook
	Kind     string // "full", "excerpt" (some of the field), "times" (nobody named), "names" (no times) or Volunteers

	Titles      []string
	lent        int             // how many of Titles, the last ones, stand over tables above
	coursesTold bool            // a line says what the letters of its courses stand for
	titleFrom   string          // where the first title stands if not in the first line
	clubs       map[string]bool // of the first rows, folded; nil before listsClub
	likePlaces  *bool           // whether start numbers may be places; nil before numbersLikePlaces
	runners     map[string]bool // of the first rows, words folded and sorted; nil before listsRunner
	ofRunner    bool            // its tab is called after the runner whose lines it has
	place       placeLine       // over the rows, as others of its form stand over the other lists of the table
	HeadingRow  int             // 1-based; 0 where the sheet has no heading
	Columns     []Column
	Official    string // heading of the times that count of several, where more than the rule for road races says so; "" else
	Course      Found
	Date        FoundDate
	Session     Found
	Distance    Found // Value in metres
	Problems    []place.Problem
	// Skipped lists the rows left out. It is complete for sheets that are
	// held whole (Whole); for larger ones use EachSkipped.
	Skipped []Skipped
	Whole   bool

	src    source
	rules  rowRules
	ofSets bool // each line was made of one of several sets of columns behind each name
	runs   runReader

	limits Limits
}

// Index is the 0-based column that has the meaning, or -1.
func (p *Part) Index(m Meaning) int {
	for _, c := range p.Columns {
		if c.Meaning == m {
			return c.Index
		}
	}
	return -1
}

// column is the column at a 0-based index, nil for none.
func (p *Part) column(at int) *Column {
	if i := slices.IndexFunc(p.Columns, func(c Column) bool { return c.Index == at }); i >= 0 {
		return &p.Columns[i]
	}
	return nil
}

// Headings are the headings of all columns, in order of the cells that Each
// hands out.
func (p *Part) Headings() []string {
	h := make([]string, len(p.Columns))
	for i, c := range p.Columns {
		h[i] = c.Heading
	}
	return h
}

// Each calls f for every row that may stand for a finisher, in order. Row is
// the 1-based row that a person sees in a text editor (the line on which the
// record starts) or spreadsheet. Cells has at least one cell for each of
// Columns; the slice is reused between calls, its strings are not, but they
// share memory with the bytes of the sheet. Each may be called any number of
// times, also at the same time from several goroutines. It stops at the first
// error of f and returns it.
func (p *Part) Each(f func(row int, cells []string) error) error { return p.EachSkipped(f, nil) }

// EachSkipped is Each with a second function that is told every row left out.
func (p *Part) EachSkipped(f func(row int, cells []string) error, skipped func(Skipped) error) error {
	rules := p.rules // a copy: fill-down and section state belong to this pass
	rules.restart()
	rows, src := 0, p.src
	if g, ok := src.(*grid); ok {
		src = g.between(rules.first, rules.last)
	}
	return src.each(func(row int, cells []string) error {
		rows++
		if err := p.limits.goOn(rows); err != nil {
			return err
		}
		if row < rules.first {
			return nil
		}
		if rules.last > 0 && row > rules.last {
			return errStop
		}
		why := rules.classify(row, cells)
		if why == isData {
			cells = rules.shape(cells)
			if rules.remarks != nil {
				cells = rules.addRemark(row, cells)
			}
			return f(row, cells)
		}
		if why == whyTotal {
			rules.keepDay(cells)
		}
		if skipped == nil {
			return nil
		}
		return skipped(Skipped{Row: row, Why: why.String(), Text: rowText(cells)})
	})
}

// RunOf gives the run of one row: from the columns where the sheet has them,
// else the part's. ok is false where course or date is not known. It is safe
// for one goroutine at a time.
func (p *Part) RunOf(cells []string) (course string, day unit.Day, session string, ok bool) {
	return p.runs.of(cells)
}

// DistanceOf is the distance in metres that a row gives where the rows of the part are
// over several, 0 where it gives none. It is safe for one goroutine at a time.
func (p *Part) DistanceOf(cells []string) int { return p.runs.metres(cells) }

// DistanceM is the distance in metres that the sheet gives for all rows of the part, 0
// if it gives none.
func (p *Part) DistanceM() int {
	n, _ := strconv.Atoi(p.Distance.Value) // "" gives none
	return n
}

// Read reads one sheet. name is its path relative to the folder given to load:
// only its words count, nothing is opened. Read never guesses types: every
// cell stays text. An error means the sheet is refused, and says why.
func Read(name string, data []byte, o Options) (s *Sheet, err error) {
	defer func() {
		// A defect in a format library must not stop the load of other sheets.
		if r := recover(); r != nil {
			s, err = nil, fmt.Errorf("%s could not be read (%v); save it again as CSV or XLSX and load that", baseName(name), r)
		}
	}()
	o.Limits = o.Limits.orDefault()
	switch format, why := formatOf(data); format {
	case "xlsx":
		return readWorkbook(name, data, o)
	case "ods", "xls":
		return readOtherBook(name, data, o, format)
	case "csv":
		return readText(name, data, o)
	case "html":
		return readPage(name, data, o)
	case "json", "xml":
		return readRecords(name, data, o)
	case "mail":
		return readMail(name, data, o)
	default:
		return nil, fmt.Errorf("%s is refused: %s", baseName(name), why)
	}
}

// courseBook is that of the known courses, made once for all tables of the sheet.
func (s *Sheet) courseBook(o Options) *courseBook {
	if s.book == nil {
		s.book = newCourseBook(o.Courses)
	}
	return s.book
}

// settle gives the parts of a sheet their runs; an error where there are none, or too many.
func (s *Sheet) settle(o Options, lex *lexicon) error {
	switch n := len(s.Parts); {
	case n == 0:
		return s.refused()
	case n > o.Limits.Lists:
		return fmt.Errorf("%s is refused: it has %d lists, and at most %d are read from one sheet. Divide it into several, a year each perhaps", baseName(s.Name), n, o.Limits.Lists)
	}
	s.askUnused(o)
	s.askUnusedTimes(o, lex.times)
	s.sayUncorrected()
	s.sayBelow(lex)
	s.sayCourseBelow(lex, s.courseBook(o))
	newRunSettler(s, o, lex, s.courseBook(o)).settle(s.Parts)
	return nil
}

// baseName is the last element of a path in either slash style.
func baseName(name string) string {
	return path.Base(strings.ReplaceAll(name, "\\", "/"))
}

// baseStem is baseName without its ending.
func baseStem(name string) string { return withoutEnding(baseName(name)) }

// withoutEnding takes the ending off a file's name, and one that stands before it; ".26" behind a day is none.
func withoutEnding(base string) string {
	dot := strings.LastIndexByte(base, '.')
	if dot <= 0 {
		return base
	}
	if end := base[dot+1:]; len(end) > 4 && !longEndings[fold(end)] || digitsOnly(end) {
		return base
	}
	base = base[:dot]
	if dot = strings.LastIndexByte(base, '.'); dot > 0 && endings[strings.ToLower(base[dot+1:])] {
		return base[:dot] // results.csv.txt
	}
	return base
}

// longEndings are what names of files end with, of five letters and more (RFC 7464, RFC 7763, RFC 7946; common practice).
var longEndings = set("jsonl ndjson geojson xhtml markdown")

// endings are those of the names of files that a second one may follow, as a program for mail adds it.
var endings = set("csv tsv txt xlsx xls ods html htm json")
