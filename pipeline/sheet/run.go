package sheet

import (
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"
	"time"
	"unicode"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// runReader gives the run of a row.
type runReader struct {
	book                           *courseBook
	courseCol, dateCol, sessionCol int
	course, session                string
	day                            unit.Day
	dayOK                          bool
	dates                          dateReader
	clockIsSession                 bool // the date column shows two starts on one day
	lastCourse, lastSlug           string
	lastDate, lastClock            string
	lastDay                        unit.Day
	lastOK                         bool
	slugs                          map[string]string
}

func (r *runReader) of(cells []string) (course string, day unit.Day, session string, ok bool) {
	course, day, session, ok = r.course, r.day, r.session, r.dayOK
	if r.courseCol >= 0 && r.courseCol < len(cells) {
		if c := cells[r.courseCol]; c != "" {
			if c != r.lastCourse || r.lastSlug == "" {
				s, seen := r.slugs[c]
				if !seen {
					s = r.book.slug(trim(c))
					if r.slugs == nil {
						r.slugs = map[string]string{}
					}
					if len(r.slugs) < 100000 {
						r.slugs[strings.Clone(c)] = s
					}
				}
				r.lastCourse, r.lastSlug = c, s
			}
			if r.lastSlug != "" {
				course = r.lastSlug
			}
		}
	}
	if r.dateCol >= 0 && r.dateCol < len(cells) {
		if c := cells[r.dateCol]; c != "" {
			if c != r.lastDate {
				r.lastDate = c
				r.lastDay, r.lastClock, r.lastOK = r.dates.read(c)
			}
			if r.lastOK || !isBlank(c) {
				day, ok = r.lastDay, r.lastOK
			}
			if r.clockIsSession && r.sessionCol < 0 {
				session = r.lastClock
			}
		}
	}
	if r.sessionCol >= 0 && r.sessionCol < len(cells) {
		if c := trim(cells[r.sessionCol]); c != "" {
			session = sessionText(c)
		}
	}
	return course, day, session, ok && course != ""
}

// sessionText writes a time of day as 09:30 and leaves anything else alone.
func sessionText(c string) string {
	sc := dateScan{s: c, toks: tokenize(c)}
	if text, next, ok := sc.clockAt(0); ok && next >= len(sc.toks) {
		return text
	}
	return c
}

// dateReader reads the cells of a date column.
type dateReader struct {
	order    string // "dmy" or "mdy" where a cell can be read both ways; "" none
	years    []int  // for cells without a year
	weekday  int    // the usual weekday, for choosing a year; -1 none
	date1904 bool   // day numbers count from 1904
	seen     map[string]seenDate
}

type seenDate struct {
	day   unit.Day
	clock string
	ok    bool
}

func (d *dateReader) read(cell string) (unit.Day, string, bool) {
	if s, ok := d.seen[cell]; ok {
		return s.day, s.clock, s.ok
	}
	var s seenDate
	if f, ok := cellDate(cell, d.date1904); ok {
		s.clock = f.clock
		s.day, s.ok = d.choose(f)
	}
	if d.seen == nil {
		d.seen = map[string]seenDate{}
	}
	if len(d.seen) < 100000 {
		d.seen[strings.Clone(cell)] = s
	}
	return s.day, s.clock, s.ok
}

// cellDate reads one cell of a date column: a date in words or figures, or the
// day number of a spreadsheet (ECMA-376 Part 1, 18.17.4.1: 1 is 1 January 1900
// and 60 a 29 February that never was, so that from 61 on day 0 is 30 December
// 1899; or 0 is 1 January 1904).
func cellDate(cell string, date1904 bool) (foundDate, bool) {
	cell = trim(cell)
	if n, err := strconv.ParseFloat(cell, 64); err == nil && n > 20000 && n < 80000 {
		d := unit.NewDay(1899, 12, 30) + unit.Day(n)
		if date1904 {
			d = unit.NewDay(1904, 1, 1) + unit.Day(n)
		}
		y, m, dd := d.Date()
		return foundDate{readings: []reading{{y, m, dd, ""}}, weekday: -1, to: len(cell)}, true
	}
	fs := scanDates(cell, true)
	if len(fs) == 0 {
		return foundDate{}, false
	}
	return fs[0], true
}

func (d *dateReader) choose(f foundDate) (unit.Day, bool) {
	rs := f.readings
	if len(rs) > 1 {
		if f.weekday >= 0 {
			rs = keep(rs, func(r reading) bool { return r.y != 0 && int(r.day().Weekday()) == f.weekday })
		}
		if len(rs) > 1 && d.order != "" {
			rs = keep(rs, func(r reading) bool { return r.order == d.order })
		}
	}
	if len(rs) != 1 {
		return 0, false
	}
	r := rs[0]
	if r.y == 0 {
		var fits []reading
		for _, y := range d.years {
			if t := (reading{y, r.m, r.d, r.order}); validDate(y, r.m, r.d) && (f.weekday < 0 || int(t.day().Weekday()) == f.weekday) {
				fits = append(fits, t)
			}
		}
		if len(fits) > 1 && d.weekday >= 0 {
			fits = keep(fits, func(r reading) bool { return int(r.day().Weekday()) == d.weekday })
		}
		if len(fits) != 1 {
			return 0, false
		}
		r = fits[0]
	}
	return r.day(), true
}

// keep filters readings, but never down to none.
func keep(rs []reading, ok func(reading) bool) []reading {
	var out []reading
	for _, r := range rs {
		if ok(r) {
			out = append(out, r)
		}
	}
	if len(out) == 0 {
		return rs
	}
	return out
}

// evidence is a date found outside the rows.
type evidence struct {
	foundDate
	text     string
	from     string
	labelled bool
	strength int // 4 given, 3 title or tab, 2 file name, 1 folder
}

// issueWords before a date say that it is when the sheet was made, or a run to
// come, and not the day of the run.
var issueWords = set(`printed print updated update issued created produced exported generated published correct corrected next revised version saved uploaded druckdatum gedruckt stand erstellt
	imprime edite genere mis impreso actualizado stampato aggiornato afgedrukt bijgewerkt impresso atualizado wydrukowano utskriven uppdaterad udskrevet skrevet before since established est`)

// dayNumber reads "Date: 46 025", a date that a spreadsheet shows as the number
// of its day.
func dayNumber(title, from string, lex *lexicon) (evidence, bool) {
	label, value, ok := strings.Cut(title, ":")
	if g := lex.read(label); !ok || !g.known || g.meaning != Date {
		return evidence{}, false
	}
	digits := strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == ',' || r == '.' || r == '\'' {
			return -1
		}
		return r
	}, value)
	n, err := strconv.Atoi(digits)
	if err != nil || len(digits) != 5 || n < 36526 || n > 60000 { // from the year 2000 on
		return evidence{}, false
	}
	f, ok := cellDate(digits, false)
	return evidence{foundDate: f, text: strings.TrimSpace(value), from: from, labelled: true, strength: 3}, ok
}

// titleDates finds the dates of a title line, leaving out those that say when
// the sheet was printed.
func titleDates(title, from string, lex *lexicon, loose bool) (out []evidence) {
	if f := strings.Fields(fold(title)); len(f) > 2 && recordOf[f[0]] && recordWords[f[1]] {
		return nil // "Course record: Jo Lee, 14 June 2019"
	}
	listed := -1 // end of a date that was left out
	for _, f := range withFirstDays(title, scanDates(title, loose)) {
		if listed >= 0 && listed <= f.from && strings.Trim(strings.ReplaceAll(strings.ReplaceAll(title[listed:f.from], "and", ""), "und", ""), " ,;/&+-–") == "" {
			listed = f.to // "Next runs: 26 July, 2 August"
			continue
		}
		before := strings.Fields(fold(title[:f.from]))
		skip, labelled := false, false
		for i := max(0, len(before)-3); i < len(before); i++ {
			if issueWords[before[i]] {
				skip = true
			}
		}
		if skip {
			listed = f.to
			continue
		}
		if n := len(before); n > 0 && strings.HasSuffix(strings.TrimRight(title[:f.from], " |"), ":") {
			g := lex.read(before[n-1])
			labelled = g.known && g.meaning == Date
		}
		out = append(out, evidence{foundDate: f, text: strings.TrimSpace(title[f.from:f.to]), from: from, labelled: labelled, strength: 3})
	}
	return out
}

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
	parts      int // that are settled together

	language string // why the day comes first in the language of the sheet; "" where it may not
}

func newRunSettler(s *Sheet, o Options, lex *lexicon, book *courseBook) *runSettler {
	rs := &runSettler{sheet: s, o: o, lex: lex, book: book}
	name := plainName(s.Name)
	rs.files = fileWords(name, book)
	parts := strings.Split(strings.ReplaceAll(name, "\\", "/"), "/")
	last := len(parts) - 1
	if dot := strings.LastIndexByte(parts[last], '.'); dot > 0 && len(parts[last])-dot <= 5 {
		parts[last] = parts[last][:dot]
	}
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
		for _, f := range withFirstDays(text, scanDates(text, true)) {
			// Figures with no year in a file name may be anything: "5-3.csv".
			if f.readings[0].y == 0 && f.readings[0].order != "" {
				continue
			}
			rs.file = append(rs.file, evidence{foundDate: f, text: strings.TrimSpace(strings.ReplaceAll(text, "_", " ")[f.from:f.to]), from: from, strength: strength})
		}
		rs.years = append(rs.years, yearsIn(text)...)
	}
	return rs
}

// yearsIn finds bare years and seasons: "2026", "2025-26", "2025/2026".
func yearsIn(text string) (years []int) {
	toks := tokenize(text)
	for i, t := range toks {
		if t.kind != 'd' || t.digits() != 4 || t.n < 1980 || t.n > 2060 {
			continue
		}
		years = append(years, t.n)
		if i+2 < len(toks) && (toks[i+1].kind == '-' || toks[i+1].kind == '/') && toks[i+2].kind == 'd' && toks[i+2].digits() == 2 && toks[i+2].n == (t.n+1)%100 {
			years = append(years, t.n+1)
		}
	}
	return years
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
	rs.settleRuns(results)
	rs.settleRuns(lists)
	results = rs.leaveCopies(results)
	rs.sheet.Parts = slices.DeleteFunc(rs.sheet.Parts, func(p *Part) bool { return p.Kind != Volunteers && !slices.Contains(results, p) })
	rs.askDistances(results)
	for _, p := range results {
		rs.ask(p)
	}
	rs.settleVolunteers(lists, results)
}

func (rs *runSettler) settleRuns(parts []*Part) {
	rs.parts = len(parts)
	evs := make([][]evidence, len(parts))
	for i, p := range parts {
		evs[i] = rs.gather(p)
	}
	rs.settleOrder(parts, evs)
	for i, p := range parts {
		rs.course(p)
		rs.distance(p)
		rs.session(p)
		rs.date(p, evs[i])
	}
	rs.agree(parts, evs)
	rs.takenByOthers(parts)
	rs.share(parts)
}

// titleAt says where a title stands.
func (p *Part) titleAt(i int) string {
	switch {
	case p.titleFrom == "":
		return fmt.Sprintf("title line %d", i+1)
	case i == 0:
		return p.titleFrom
	}
	return fmt.Sprintf("title line %d", i)
}

func (rs *runSettler) gather(p *Part) (out []evidence) {
	letter := isLetterHead(p.Titles)
	for i, t := range p.Titles {
		if label, _, ok := strings.Cut(t, ":"); ok && letter && sentWords[fold(label)] {
			continue // when the letter was sent
		}
		rs.years = append(rs.years, yearsIn(t)...)
		out = append(out, titleDates(t, p.titleAt(i), rs.lex, i == 0 && p.titleFrom != "")...)
		if e, ok := dayNumber(t, p.titleAt(i), rs.lex); ok && !p.rules.date1904 {
			out = append(out, e)
		}
	}
	if month, year, ok := monthOfTab(p.Tab); ok && inMonth(out, month) {
		rs.years = append(rs.years, year)
		for i := range out {
			out[i].readings = slices.Clone(out[i].readings)
			for k := range out[i].readings {
				if r := &out[i].readings[k]; r.y == 0 && r.m == month {
					r.y = year
				}
			}
		}
	} else if p.Tab != "" {
		rs.years = append(rs.years, yearsIn(p.Tab)...)
		if ds := titleDates(p.Tab, "tab name", rs.lex, true); len(ds) > 0 && !(ds[0].readings[0].y == 0 && ds[0].readings[0].order != "" && rs.oneField()) { // "1-25" are places
			out = append(out, ds...)
		}
	}
	return append(out, rs.file...)
}

// isLetterHead says whether title lines are the head of an e-mail: who it is from
// and what it is about.
func isLetterHead(titles []string) bool {
	from, subject := false, false
	for _, t := range titles {
		if label, _, ok := strings.Cut(t, ":"); ok {
			f := fold(label)
			from, subject = from || fromWords[f], subject || subjectWords[f]
		}
	}
	return from && subject
}

var (
	fromWords    = set("from von de da van od fra fran lahettaja felado gonderen от від")
	subjectWords = set("subject betreff objet asunto oggetto onderwerp assunto temat predmet amne emne aihe targy konu тема")
	sentWords    = set("date sent datum gesendet envoye enviado inviato verzonden data wyslano fecha skickat sendt dato elkuldve tarih дата", "sent at", "sent on")
)

// settleOrder looks for dates in figures that can be read only one way.
func (rs *runSettler) settleOrder(parts []*Part, evs [][]evidence) {
	votes := map[string]string{}
	vote := func(f foundDate, text string) {
		if f.sep == '.' {
			return // day first by form: says nothing of dates with strokes
		}
		if len(f.readings) == 1 && (f.readings[0].order == "dmy" || f.readings[0].order == "mdy") && f.readings[0].m != f.readings[0].d {
			if _, ok := votes[f.readings[0].order]; !ok {
				votes[f.readings[0].order] = text
			}
			return
		}
		if len(f.readings) > 1 && f.weekday >= 0 && f.readings[0].y != 0 {
			if fit := keep(f.readings, func(r reading) bool { return int(r.day().Weekday()) == f.weekday }); len(fit) == 1 {
				if _, ok := votes[fit[0].order]; !ok && fit[0].order != "ymd" {
					votes[fit[0].order] = text
				}
			}
		}
	}
	for i, p := range parts {
		for _, e := range evs[i] {
			vote(e.foundDate, e.text)
		}
		if c := p.Index(Date); c >= 0 {
			for _, text := range columnTexts(p, c) {
				if f, ok := cellDate(text, false); ok {
					vote(f, text)
				}
			}
		}
	}
	if len(votes) == 1 {
		for o, text := range votes {
			rs.order, rs.orderBy = o, fmt.Sprintf("%q can only be %s first", text, map[string]string{"dmy": "day", "mdy": "month"}[o])
		}
	}
	if rs.order == "" && len(votes) == 0 {
		rs.order = rs.orderByHand(evs)
	}
	if rs.o.OrderSaid != "" {
		rs.order, rs.orderBy = rs.o.OrderSaid, "as answered"
	}
	rs.sheet.DateOrder = rs.order
	for _, p := range parts {
		if examples, ok := dayFirstLanguage(p); ok && rs.language == "" {
			rs.language = "the day comes first in the language of the headings (" + examples + ")"
		}
	}
}

// orderByHand is the order of day and month in which a date on the sheet says the
// date that was given by hand; "" where it says it in none or in both.
func (rs *runSettler) orderByHand(evs [][]evidence) string {
	day, err := unit.ParseDay(rs.o.Date)
	if err != nil {
		return ""
	}
	for _, list := range evs {
		for _, e := range list {
			said := keep(e.readings, func(r reading) bool { return r.y != 0 && r.day() == day })
			if len(e.readings) > 1 && len(said) == 1 && said[0].order != "ymd" {
				return said[0].order
			}
		}
	}
	return ""
}

// orderWhy says where the order of day and month is from that the sheet itself
// leaves open.
func (o *Options) orderWhy() string {
	if o.OrderWhy != "" {
		return o.OrderWhy
	}
	return "the configured order of day and month"
}

// byOrder lists the days that dates in figures would be, by the order of day and
// month; nil where none depends on it.
func byOrder(dates []foundDate) map[string][]unit.Day {
	var out map[string][]unit.Day
	for _, f := range dates {
		if len(f.readings) < 2 {
			continue
		}
		for _, r := range f.readings {
			if r.y != 0 && (r.order == "dmy" || r.order == "mdy") {
				if out == nil {
					out = map[string][]unit.Day{}
				}
				out[r.order] = append(out[r.order], r.day())
			}
		}
	}
	return out
}

// columnTexts are the different texts of a column, in order of appearance; for
// a sheet that is not held whole those of its sample.
func columnTexts(p *Part, col int) (texts []string) {
	seen := map[string]bool{}
	add := func(_ int, cells []string) error {
		if c := cellAt(cells, col); c != "" && !seen[c] {
			seen[c] = true
			texts = append(texts, c)
		}
		if len(texts) > 5000 {
			return errStop
		}
		return nil
	}
	if p.Whole {
		p.Each(add) // its only error is errStop, which the source takes
		return texts
	}
	for _, l := range p.rules.sample {
		if add(l.row, l.cells) != nil {
			break
		}
	}
	return texts
}

func (rs *runSettler) course(p *Part) {
	p.runs.book = rs.book
	p.runs.courseCol = p.Index(Course)
	switch {
	case rs.o.Course != "":
		p.Course = Found{Value: rs.book.slug(rs.o.Course), Text: rs.o.Course, From: "given by hand"}
		p.runs.courseCol = -1
	case p.runs.courseCol >= 0:
		p.Course = Found{From: "column " + letters(p.runs.courseCol), Why: p.Columns[p.runs.courseCol].Why}
		// Rows with an empty cell fall back on the titles.
		if f := rs.titleCourse(p); f.Value != "" {
			p.runs.course = f.Value
		}
		return
	default:
		p.Course = rs.titleCourse(p)
	}
	p.runs.course = p.Course.Value
}

func (rs *runSettler) titleCourse(p *Part) Found {
	type cand struct {
		courseWord
		from string
	}
	var cs []cand
	for i, t := range p.Titles {
		for _, w := range courseWords(t, rs.lex, rs.book) {
			w.weight -= min(i, 5) // earlier lines first
			cs = append(cs, cand{w, p.titleAt(i)})
		}
	}
	if weight := 35; p.Tab != "" && (!rs.oneTab() || !rs.namedByFile(p.Tab)) && !rs.oneField() {
		if rs.oneTab() {
			weight = 25
		}
		if slug, ok := rs.book.within(p.Tab); ok {
			cs = append(cs, cand{courseWord{text: p.Tab, slug: slug, weight: 97, why: "a known course"}, "tab name"})
		} else if text := plainWords(strings.Trim(strings.ReplaceAll(cutSpans(p.Tab, true), "|", " "), " -_")); len(Slug(text)) >= 3 && hasLetter(text) && !helperTab(p.Tab) && !isSection(text) && !saysField(p.Tab) && !saysOrder(p.Tab) {
			cs = append(cs, cand{courseWord{text: text, slug: Slug(text), weight: weight, why: "what is left of the tab's name without date and general words"}, "tab name"})
		}
	}
	for _, w := range rs.files {
		from := "file name"
		if strings.HasPrefix(w.why, "folder") {
			from = "folder name"
		}
		cs = append(cs, cand{w, from})
	}
	// Two places that name the same course confirm each other.
	for i := range cs {
		for j := range cs {
			if cs[i].from != cs[j].from && (cs[i].slug == cs[j].slug || strings.HasPrefix(cs[i].slug, cs[j].slug+"-") && strings.HasPrefix(cs[j].from, "file")) {
				if cs[i].slug == cs[j].slug {
					cs[i].weight += 30
				}
				break
			}
		}
	}
	best := -1
	for i := range cs {
		if best < 0 || cs[i].weight > cs[best].weight {
			best = i
		}
	}
	if best < 0 {
		return Found{}
	}
	f := Found{Value: cs[best].slug, Text: cs[best].text, From: cs[best].from, Why: cs[best].why}
	if known, sure := rs.book.near(f.Value); sure {
		p.problem(rs.sheet.Name, 0, -1, place.Look, "course-spelling", f.Text, known, fmt.Sprintf("It was taken for the course %s. If it is another course, load the sheet with --course.", known))
		f.Value, f.Why = known, "one letter differs from a known course"
	} else if known != "" {
		p.problem(rs.sheet.Name, 0, -1, place.Waits, "course-unclear", f.Text, fmt.Sprintf("%s or a new course %s", known, f.Value), fmt.Sprintf("Which course was this? Load the sheet again with --course %s or --course %s.", known, f.Value))
	}
	return f
}

// oneField says whether the tabs share out one field, by club, wave or page: each has
// places of its own, no place stands on two of them, and together they leave hardly
// any out. The names of such tabs are no courses.
func (rs *runSettler) oneField() bool {
	if rs.fieldAsked {
		return rs.field
	}
	rs.fieldAsked = true
	tabs, places, most, inner := map[string]bool{}, map[int]bool{}, 0, 0
	for _, p := range rs.sheet.Parts {
		col := p.Index(Position)
		if p.Kind == Volunteers {
			continue
		}
		if col < 0 || !p.Whole || p.Kind == "times" || p.Kind == "names" || p.Index(Date) >= 0 || tabs[p.Tab] {
			return false
		}
		tabs[p.Tab] = true
		least, twice := 0, false
		p.Each(func(_ int, cells []string) error {
			c := trim(cellAt(cells, col))
			if !digitsOnly(c) {
				return nil
			}
			n := int(looseNumber(c))
			if least == 0 || n < least {
				least = n
			}
			twice = twice || places[n]
			places[n] = true
			if most = max(most, n); twice || len(places) > 100000 {
				return errStop
			}
			return nil
		}) // errStop is taken by the grid
		if twice || least == 0 {
			return false
		}
		if least > 1 {
			inner++
		}
	}
	rs.field = len(tabs) > 1 && inner == len(tabs)-1 && len(places) >= 8 && len(places)*10 >= most*8
	return rs.field
}

// namedByFile says whether a tab bears the name of the file, as programs name
// the tab of a text that they turn into a workbook: it says nothing twice. Tabs
// have at most 31 letters (ECMA-376 Part 1, 18.2.19).
func (rs *runSettler) namedByFile(tab string) bool {
	b, t := fold(baseStem(rs.sheet.Name)), fold(tab)
	return b == t || len([]rune(tab)) >= 31 && strings.HasPrefix(b, t)
}

func (rs *runSettler) oneTab() bool { return len(rs.sheet.Parts) <= 1 }

func (rs *runSettler) distance(p *Part) {
	if c := p.Index(Distance); c >= 0 {
		if texts := columnTexts(p, c); len(texts) == 1 {
			text := texts[0]
			if p.Distance = distanceOf(text, "column "+letters(c)); p.Distance.Value == "" {
				// A bare number under "Distance (km)" or below 100 is kilometres.
				if v, err := strconv.ParseFloat(strings.Replace(trim(text), ",", ".", 1), 64); err == nil && v >= 1 {
					m := v
					if v < 100 {
						m = v * 1000
					}
					p.Distance = Found{Value: strconv.Itoa(int(m + .5)), Text: text, From: "column " + letters(c)}
				}
			}
			return
		}
	}
	for i, t := range p.Titles {
		if p.Distance = distanceOf(t, fmt.Sprintf("title line %d", i+1)); p.Distance.Value != "" {
			return
		}
	}
	if p.Tab != "" {
		if p.Distance = distanceOf(p.Tab, "tab name"); p.Distance.Value != "" {
			return
		}
	}
	p.Distance = distanceOf(strings.ReplaceAll(baseName(rs.sheet.Name), "_", " "), "file name")
}

// session takes a start time or number that is said in so many words.
func (rs *runSettler) session(p *Part) {
	p.runs.sessionCol = p.Index(Session)
	if rs.o.Session != "" {
		p.Session = Found{Value: sessionText(rs.o.Session), Text: rs.o.Session, From: "given by hand"}
		p.runs.sessionCol, p.runs.session = -1, p.Session.Value
		return
	}
	if p.runs.sessionCol >= 0 {
		p.Session = Found{From: "column " + letters(p.runs.sessionCol), Why: p.Columns[p.runs.sessionCol].Why}
		return
	}
	look := func(text, from string) bool {
		sc := dateScan{s: text, toks: tokenize(text)}
		for i, t := range sc.toks {
			if t.kind == 'l' && sessionWords[t.word] {
				j := i + 1
				for k := 0; k < 4 && (sc.tok(j).kind == 's' || sc.tok(j).kind == ':' || sc.tok(j).kind == '-' || sc.tok(j).kind == '#' || sc.tok(j).kind == 'l' && (sc.tok(j).word == "time" || sc.tok(j).word == "at" || sc.tok(j).word == "no" || sc.tok(j).word == "um")); k++ {
					j++
				}
				if clock, _, ok := sc.clockAt(j); ok {
					p.Session = Found{Value: clock, Text: text, From: from, Why: "the start time"}
					return true
				}
				if n := sc.tok(j); n.kind == 'd' && n.digits() <= 2 && n.n >= 1 && n.n <= 20 && t.word == "session" {
					p.Session = Found{Value: strconv.Itoa(n.n), Text: text, From: from, Why: "the number of the session"}
					return true
				}
			}
			if clock, next, ok := sc.clockAt(i); ok && sc.tok(next).kind == 's' && sc.tok(next+1).kind == 'l' && sessionWords[sc.tok(next+1).word] {
				p.Session = Found{Value: clock, Text: text, From: from, Why: "the start time"}
				return true
			}
		}
		return false
	}
	for i, t := range p.Titles {
		if isRemark(t) || strings.Contains(" "+fold(t)+" ", " next ") {
			continue
		}
		if look(t, fmt.Sprintf("title line %d", i+1)) {
			p.runs.session = p.Session.Value
			return
		}
	}
	if p.Tab != "" && look(p.Tab, "tab name") || look(strings.ReplaceAll(baseName(rs.sheet.Name), "_", " "), "file name") {
		p.runs.session = p.Session.Value
	}
}

var sessionWords = set("session start starts started depart salida partenza largada starttime startzeit sessie startad seance")

// option is a possible day with the evidence for it.
type option struct {
	day   unit.Day
	order string
}

func (rs *runSettler) date(p *Part, evs []evidence) {
	p.runs.dateCol = p.Index(Date)
	p.runs.dates.date1904 = p.rules.date1904
	p.runs.dates.weekday = -1
	if w, ok := rs.book.weekday[p.Course.Value]; ok {
		p.runs.dates.weekday = w
	}
	if rs.o.Date != "" {
		if d, err := unit.ParseDay(rs.o.Date); err == nil {
			p.Date = FoundDate{Day: d, Settled: true, Text: rs.o.Date, From: "given by hand"}
			p.runs.dateCol = -1
			p.runs.day, p.runs.dayOK = d, true
			return
		}
		p.problem(rs.sheet.Name, 0, -1, place.Waits, "date-unreadable", rs.o.Date, "a date like 2026-01-03", "Give the date as year, month and day: --date 2026-01-03.")
		return
	}
	if p.runs.dateCol >= 0 {
		rs.columnDates(p, evs)
		if p.Date.From != "" {
			return
		}
		p.runs.dateCol = -1
	}
	rs.oneDate(p, evs)
	p.runs.day, p.runs.dayOK = p.Date.Day, p.Date.Settled
}

var deadlineWords = set("before by until till next every each vor bis avant jusqu antes prima voor przed fore for innan")

// oneDate settles a date that holds for the whole part.
func (rs *runSettler) oneDate(p *Part, evs []evidence) {
	// The strongest level that says anything decides; a label beats position.
	var top []evidence
	for _, level := range []int{3, 2, 1} {
		for _, e := range evs {
			if e.strength == level {
				top = append(top, e)
			}
		}
		if len(top) > 0 {
			break
		}
	}
	if len(top) == 0 {
		return
	}
	for _, e := range top {
		if e.labelled {
			top = []evidence{e}
			break
		}
	}
	// "Saturday run" in a short title says the weekday; prose below it
	// ("corrections before Wednesday") does not.
	weekday := -1
	for _, t := range append(append([]string(nil), p.Titles...), p.Tab, rs.sheet.Name) {
		words := strings.Fields(fold(strings.NewReplacer("_", " ", "-", " ", "/", " ").Replace(t)))
		prose := len(words) > 7 && len(findDates(t)) == 0
		for i, w := range words {
			if d, ok := longWeekday(w); ok && weekday < 0 && !prose && (i == 0 || !deadlineWords[words[i-1]]) {
				weekday = d
			}
		}
	}
	type answer struct {
		e   evidence
		opt []option
		why string
	}
	var answers []answer
	for _, e := range top {
		opt, why := rs.options(p, e, evs, weekday)
		answers = append(answers, answer{e, opt, why})
	}
	// Several dates in the titles: those that agree with another place win.
	best := answers[0]
	if len(answers) > 1 {
		days := map[unit.Day]bool{}
		for _, a := range answers {
			if len(a.opt) == 1 {
				days[a.opt[0].day] = true
			}
		}
		if len(days) == 1 {
			for _, a := range answers {
				if len(a.opt) == 1 {
					best = a
					break
				}
			}
		} else {
			found := false
			for _, a := range answers {
				for _, e := range evs {
					if e.strength < a.e.strength && len(a.opt) == 1 && has(e.readings, a.opt[0].day) {
						best, found = a, true
						best.why = "it is also in the " + e.from
						break
					}
				}
				if found {
					break
				}
			}
			if !found {
				var all []option
				for _, a := range answers {
					for _, o := range a.opt {
						if !hasOption(all, o.day) {
							all = append(all, o)
						}
					}
				}
				if fit := fitWeekday(all, rs.wantedWeekday(p, weekday)); len(fit) == 1 {
					for _, a := range answers {
						if len(a.opt) > 0 && hasOption(a.opt, fit[0].day) {
							best = a
							best.opt, best.why = fit, "it falls on the right weekday"
							break
						}
					}
				} else {
					best.opt = all
				}
			}
		}
	}
	p.Date = FoundDate{Text: best.e.text, From: best.e.from, Why: best.why}
	switch len(best.opt) {
	case 1:
		p.Date.Day, p.Date.Settled = best.opt[0].day, true
	default:
		for _, o := range best.opt {
			p.Date.Choices = append(p.Date.Choices, o.day)
			if o.order == "dmy" || o.order == "mdy" {
				if p.Date.ByOrder == nil {
					p.Date.ByOrder = map[string][]unit.Day{}
				}
				p.Date.ByOrder[o.order] = append(p.Date.ByOrder[o.order], o.day)
			}
		}
	}
	if p.Date.Settled {
		if best.e.weekday >= 0 {
			weekday = best.e.weekday
		}
		if best.e.strength > 2 && rs.askCopied(p, weekday, evs) {
			return
		}
		if rs.askWeekday(p, best.e.weekday) {
			return
		}
		if best.e.weekday >= 0 && int(p.Date.Day.Weekday()) != best.e.weekday {
			p.problem(rs.sheet.Name, 0, -1, place.Look, "weekday-differs", best.e.text, fmt.Sprintf("%s is a %s", p.Date.Day.Long(), p.Date.Day.Weekday()), "Check the date of the run; correct it with --date if the weekday is right.")
		}
		for _, e := range evs {
			if e.strength < best.e.strength && e.strength == 2 && e.settled() && e.readings[0].day() != p.Date.Day {
				p.problem(rs.sheet.Name, 0, -1, place.Look, "dates-differ", e.text, fmt.Sprintf("%s as in the %s", p.Date.Day.Long(), best.e.from), fmt.Sprintf("The sheet is taken as the run of %s. If the %s is right, load it with --date %s.", p.Date.Day.Long(), e.from, e.readings[0].day()))
				break
			}
		}
	}
}

func has(rs []reading, d unit.Day) bool {
	for _, r := range rs {
		if r.y != 0 && r.day() == d {
			return true
		}
	}
	return false
}

func hasOption(os []option, d unit.Day) bool {
	for _, o := range os {
		if o.day == d {
			return true
		}
	}
	return false
}

func fitWeekday(os []option, weekday int) (fit []option) {
	for _, o := range os {
		if weekday >= 0 && int(o.day.Weekday()) == weekday {
			fit = append(fit, o)
		}
	}
	return fit
}

func (rs *runSettler) wantedWeekday(p *Part, named int) int {
	if named >= 0 {
		return named
	}
	if w, ok := rs.book.weekday[p.Course.Value]; ok {
		return w
	}
	return -1
}

// options lists the days that one piece of evidence allows, narrowed step by
// step: weekday beside it, other places, the way other dates of the sheet are
// written, the course's weekday, the configured order.
func (rs *runSettler) options(p *Part, e evidence, evs []evidence, weekday int) (opt []option, why string) {
	years := distinctYears(rs.years)
	for _, o := range evs {
		for _, r := range o.readings {
			if r.y != 0 {
				years = append(years, r.y)
			}
		}
	}
	years = distinctYears(years)
	noYear := false
	for _, r := range e.readings {
		if r.y != 0 {
			opt = append(opt, option{r.day(), r.order})
			continue
		}
		noYear = true
		for _, y := range years {
			if validDate(y, r.m, r.d) {
				opt = append(opt, option{unit.NewDay(y, r.m, r.d), r.order})
			}
		}
	}
	if noYear {
		why = "the year is from elsewhere on the sheet or its name"
	}
	narrow := func(reason string, ok func(option) bool) {
		if len(opt) < 2 {
			return
		}
		var fit []option
		for _, o := range opt {
			if ok(o) {
				fit = append(fit, o)
			}
		}
		if len(fit) > 0 && len(fit) < len(opt) {
			opt, why = fit, reason
		}
	}
	if e.weekday >= 0 {
		narrow("the weekday beside it", func(o option) bool { return int(o.day.Weekday()) == e.weekday })
	}
	for _, other := range evs {
		if other.from != e.from && other.settled() {
			narrow(fmt.Sprintf("the %s says %s", other.from, other.text), func(o option) bool { return has(other.readings, o.day) })
		}
	}
	if rs.order != "" {
		narrow(rs.orderBy, func(o option) bool { return o.order == rs.order })
	}
	if weekday >= 0 {
		narrow("the weekday in the title", func(o option) bool { return int(o.day.Weekday()) == weekday })
	}
	if w, ok := rs.book.weekday[p.Course.Value]; ok {
		narrow("the course's usual weekday", func(o option) bool { return int(o.day.Weekday()) == w })
	}
	latest := yearFirst(e.readings)
	if rs.language != "" {
		narrow(rs.language, func(o option) bool { return o.order == "dmy" || o.order == "ymd" && latest })
	}
	if rs.o.DateOrder != "" {
		narrow(rs.o.orderWhy(), func(o option) bool { return o.order == rs.o.DateOrder || o.order == "ymd" && latest })
	}
	return opt, why
}

// yearFirst says whether a date in figures of two is of a year long past unless
// the year comes first: 24-11-09 is 24 November 2009 or 9 November 2024.
func yearFirst(rs []reading) bool {
	first, other := 0, 0
	for _, r := range rs {
		if r.order == "ymd" {
			first = r.y
		} else {
			other = max(other, r.y)
		}
	}
	return first > other+5
}

func distinctYears(ys []int) []int {
	sort.Ints(ys)
	out := ys[:0:0]
	for i, y := range ys {
		if i == 0 || y != ys[i-1] {
			out = append(out, y)
		}
	}
	return out
}

// columnDates settles how the cells of a date column are read.
func (rs *runSettler) columnDates(p *Part, evs []evidence) {
	col := p.runs.dateCol
	d := &p.runs.dates
	d.years = distinctYears(append([]int(nil), rs.years...))
	from := "column " + letters(col)
	texts := columnTexts(p, col)
	var both []foundDate
	readable, clocks := 0, map[unit.Day]map[string]bool{}
	for _, text := range texts {
		f, ok := cellDate(text, d.date1904)
		if !ok {
			continue
		}
		readable++
		if len(f.readings) > 1 {
			both = append(both, f)
		} else if r := f.readings[0]; r.y != 0 && f.clock != "" {
			if clocks[r.day()] == nil {
				clocks[r.day()] = map[string]bool{}
			}
			clocks[r.day()][f.clock] = true
		}
		if len(f.readings) == 1 && f.readings[0].y != 0 {
			d.years = append(d.years, f.readings[0].y)
		}
	}
	for _, c := range clocks {
		// Many moments on one day are when people finished, not starts.
		if len(c) > maxStarts {
			p.runs.clockIsSession = false
			break
		}
		p.runs.clockIsSession = p.runs.clockIsSession || len(c) > 1
	}
	d.years = distinctYears(d.years)
	if readable == 0 {
		return
	}
	p.Date = FoundDate{From: from, Why: p.Columns[col].Why}
	if d.weekday < 0 && len(d.years) > 1 {
		if w, ok := commonWeekday(texts, d); ok {
			d.weekday = w
			p.Date.Why += fmt.Sprintf("; the years are those in which all fall on a %s", time.Weekday(w))
		}
	}
	if len(both) == 0 {
		rs.askCopiedColumn(p, texts, evs)
		return
	}
	// Which order? Dates that can only be read one way, weekdays, other places.
	order, why := rs.order, rs.orderBy
	if order == "" {
		order, why = weekdayOrder(both, rs.wantedWeekday(p, -1))
	}
	if order == "" {
		for _, e := range evs {
			if e.settled() {
				for _, f := range both {
					for _, r := range f.readings {
						if r.day() == e.readings[0].day() && len(both) == 1 {
							order, why = r.order, fmt.Sprintf("the %s says %s", e.from, e.text)
						}
					}
				}
			}
		}
	}
	if order == "" && rs.language != "" {
		order, why = "dmy", rs.language
	}
	late := 0
	for _, f := range both {
		if yearFirst(f.readings) {
			late++
		}
	}
	if order == "" && rs.o.DateOrder != "" && late < len(both) {
		order, why = rs.o.DateOrder, rs.o.orderWhy()
	}
	if order == "" {
		for _, r := range both[0].readings {
			if r.y != 0 {
				p.Date.Choices = append(p.Date.Choices, r.day())
			}
		}
		p.Date.ByOrder = byOrder(both)
		p.Date.Text = texts[0]
		for _, text := range texts {
			if f, ok := cellDate(text, d.date1904); ok && len(f.readings) > 1 {
				p.Date.Text = text
				break
			}
		}
		return
	}
	d.order = order
	p.Date.Why += "; " + map[string]string{"dmy": "day first", "mdy": "month first", "ymd": "year first"}[order] + ": " + why
}

// commonWeekday is the one weekday on which every date without a year can fall in
// one of the years, four dates or more: those of a season that goes on over the
// new year. ok is false where it is not the only one.
func commonWeekday(texts []string, d *dateReader) (weekday int, ok bool) {
	var days [][7]int // for each date, in how many of the years it falls on a weekday
	for _, text := range texts {
		f, read := cellDate(text, d.date1904)
		if !read || len(f.readings) != 1 || f.readings[0].y != 0 {
			continue
		}
		var on [7]int
		for _, y := range d.years {
			if r := f.readings[0]; validDate(y, r.m, r.d) {
				on[unit.NewDay(y, r.m, r.d).Weekday()]++
			}
		}
		days = append(days, on)
	}
	if len(days) < 4 {
		return 0, false
	}
	found := 0
	for w := range 7 {
		all := true
		for _, on := range days {
			all = all && on[w] == 1
		}
		if all {
			weekday, found = w, found+1
		}
	}
	return weekday, found == 1
}

// weekdayOrder finds the reading under which all dates fall on one weekday,
// as those of a weekly run do.
func weekdayOrder(both []foundDate, wanted int) (order, why string) {
	same := func(order string) (weekday, n int) {
		weekday = -1
		seen := map[unit.Day]bool{}
		for _, f := range both {
			for _, r := range f.readings {
				if r.order != order || r.y == 0 {
					continue
				}
				w := int(r.day().Weekday())
				if weekday >= 0 && w != weekday {
					return -1, 0
				}
				weekday = w
				seen[r.day()] = true
			}
		}
		return weekday, len(seen)
	}
	wd, nd := same("dmy")
	wm, nm := same("mdy")
	_, ny := same("ymd")
	switch {
	case wanted >= 0 && wd == wanted && wm != wanted:
		return "dmy", "the dates then fall on the course's weekday"
	case wanted >= 0 && wm == wanted && wd != wanted:
		return "mdy", "the dates then fall on the course's weekday"
	case ny >= 2 && ny >= len(both)/2 && nd == 0 && nm == 0:
		return "ymd", "the dates then all fall on one weekday"
	case nd >= 2 && nm == 0:
		return "dmy", "the dates then all fall on one weekday"
	case nm >= 2 && nd == 0:
		return "mdy", "the dates then all fall on one weekday"
	}
	return "", ""
}

// maxStarts is how many runs may start on one course on one day.
const maxStarts = 4

// agree uses the other tabs of a workbook: weekly runs share a weekday.
func (rs *runSettler) agree(parts []*Part, evs [][]evidence) {
	if len(parts) < 3 {
		return
	}
	weekdays := map[int]int{}
	for _, p := range parts {
		if p.Date.Settled {
			weekdays[int(p.Date.Day.Weekday())]++
		}
	}
	if len(weekdays) != 1 {
		return
	}
	for _, p := range parts {
		if p.Date.Settled || len(p.Date.Choices) < 2 {
			continue
		}
		var fit []unit.Day
		for _, c := range p.Date.Choices {
			if weekdays[int(c.Weekday())] > 0 {
				fit = append(fit, c)
			}
		}
		if len(fit) == 1 {
			p.Date.Day, p.Date.Settled, p.Date.Choices = fit[0], true, nil
			p.Date.Why = "the runs of the other tabs are on the same weekday"
			p.runs.day, p.runs.dayOK = fit[0], true
		}
	}
}

// share gives a tab that names no course or date those of the other tabs, where
// these all say the same: times on one tab and names on the next.
func (rs *runSettler) share(parts []*Part) {
	var course Found
	var date FoundDate
	courses, dates := map[string]bool{}, map[unit.Day]bool{}
	for _, p := range parts {
		if p.Course.Value != "" {
			courses[p.Course.Value] = true
			course = p.Course
		}
		if p.Date.Settled {
			dates[p.Date.Day] = true
			date = p.Date
		}
	}
	if f := rs.sheet.facts; len(f) > 0 && (len(courses) == 0 || rs.onlyFileSays(parts)) {
		said := map[string]Found{}
		for _, t := range f {
			for _, w := range courseWords(t, rs.lex, rs.book) {
				if w.weight >= 90 {
					said[w.slug] = Found{Value: w.slug, Text: t}
				}
			}
		}
		if len(said) == 1 {
			clear(courses)
			for slug, found := range said {
				course, courses[slug] = found, true
			}
			for _, p := range parts {
				if p.runs.courseCol < 0 {
					p.Course = Found{} // what the name of the file may mean counts less
				}
			}
		}
	}
	if len(courses) == 0 {
		best := courseWord{}
		for _, t := range rs.sheet.cover {
			for _, w := range courseWords(t, rs.lex, rs.book) {
				if w.weight > best.weight {
					best = w
				}
			}
		}
		if best.slug != "" {
			course, courses[best.slug] = Found{Value: best.slug, Text: best.text}, true
		}
	}
	if f := append(slices.Clone(rs.sheet.facts), rs.sheet.cover...); len(f) > 0 && len(dates) == 0 {
		p := &Part{Titles: f}
		p.Course = course
		var evs []evidence
		for _, t := range f {
			rs.years = append(rs.years, yearsIn(t)...)
			evs = append(evs, titleDates(t, "another tab", rs.lex, true)...)
		}
		rs.oneDate(p, evs)
		if date = p.Date; date.Settled {
			dates[date.Day] = true
		}
	}
	rs.shareHalves(parts)
	rs.shareTitle(parts)
	for _, p := range parts {
		if !p.Course.OK() && len(courses) == 1 {
			p.Course = Found{Value: course.Value, Text: course.Text, From: "another tab", Why: "this tab says nothing of it"}
			p.runs.course = course.Value
		}
		if !p.Date.OK() && p.Date.From == "" && len(dates) == 1 {
			p.Date = FoundDate{Day: date.Day, Settled: true, Text: date.Text, From: "another tab", Why: "this tab says nothing of it"}
			p.runs.day, p.runs.dayOK = date.Day, true
		}
	}
}

// onlyFileSays says whether nothing but the name of the file, or of a folder, says
// which course all tabs are of, and not in the form <course>_<date>.
func (rs *runSettler) onlyFileSays(parts []*Part) bool {
	for _, p := range parts {
		if p.runs.courseCol >= 0 || p.Course.Value != "" && !fromPath(p.Course.From) || strings.HasSuffix(p.Course.Why, "a known course") {
			return false
		}
	}
	return !runFile.MatchString(baseName(rs.sheet.Name))
}

// shareTitle gives tabs without a title and a date of their own, which would take the
// name of the file for their course, the course that the titles of the other tabs say.
func (rs *runSettler) shareTitle(parts []*Part) {
	said := map[string]Found{}
	for _, p := range parts {
		if strings.HasPrefix(p.Course.From, "title") && p.Course.Value != "" {
			said[p.Course.Value] = p.Course
		}
	}
	if len(said) != 1 || runFile.MatchString(baseName(rs.sheet.Name)) {
		return
	}
	for _, p := range parts {
		if p.runs.courseCol >= 0 || p.Date.OK() || !fromPath(p.Course.From) || strings.HasSuffix(p.Course.Why, "a known course") {
			continue
		}
		for _, course := range said {
			p.Course = Found{Value: course.Value, Text: course.Text, From: "another tab", Why: "this tab says nothing of it"}
			p.runs.course = course.Value
		}
	}
}

// fromPath says whether a fact is from the name of the file or of a folder.
func fromPath(from string) bool { return from == "file name" || from == "folder name" }

// shareHalves gives a tab of names the run of the tab of times beside it, or the
// other way round, where only one of the two has a title and the other would
// take the name of the file for it.
func (rs *runSettler) shareHalves(parts []*Part) {
	if len(parts) != 2 || parts[0].Kind == parts[1].Kind || parts[0].Kind == "full" || parts[1].Kind == "full" {
		return
	}
	for i, p := range parts {
		other := parts[1-i]
		if strings.HasPrefix(other.Date.From, "title") && other.Date.Settled && p.Date.Settled && fromPath(p.Date.From) {
			p.Date = FoundDate{Day: other.Date.Day, Settled: true, Text: other.Date.Text, From: "tab " + other.Tab, Why: "the other half of this run"}
			p.runs.day, p.runs.dayOK = p.Date.Day, true
		}
		if strings.HasPrefix(other.Course.From, "title") && other.Course.Value != "" && p.runs.courseCol < 0 && fromPath(p.Course.From) {
			p.Course = Found{Value: other.Course.Value, Text: other.Course.Text, From: "tab " + other.Tab, Why: "the other half of this run"}
			p.runs.course = p.Course.Value
		}
	}
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
		p.problem(rs.sheet.Name, 0, -1, place.Waits, "course-missing", strings.Join(p.Titles, " | "), expected, "Which course was this? Load the sheet again with --course NAME.")
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
		if rs.parts > 1 && p.Tab != "" && p.Date.ByOrder == nil {
			p.problem(rs.sheet.Name, 0, -1, place.Waits, "date-unclear", p.Date.Text, strings.Join(says, " or "), "Which date was the run? Write the right one in the title and in the name of this tab, and load the workbook again.")
			return
		}
		if strings.HasPrefix(p.Date.From, "column") && p.Date.ChoiceFrom == nil {
			p.problem(rs.sheet.Name, 0, p.runs.dateCol, place.Waits, "date-unclear", p.Date.Text, strings.Join(says, " or "), "Is the day or the month written first? Load the sheet again with --answer \"date order=dmy\" (day first) or --answer \"date order=mdy\" (month first).")
			return
		}
		p.problem(rs.sheet.Name, 0, -1, place.Waits, "date-unclear", p.Date.Text, strings.Join(says, " or "), "Which date was the run? Load the sheet again with "+strings.Join(flags, " or ")+".")
	case strings.HasPrefix(p.Date.From, "column"):
	case p.Date.From != "":
		p.problem(rs.sheet.Name, 0, -1, place.Waits, "year-missing", p.Date.Text, "a date with its year", "Which year was it? Load the sheet again with --date YEAR-MONTH-DAY.")
	default:
		p.problem(rs.sheet.Name, 0, -1, place.Waits, "date-missing", strings.Join(p.Titles, " | "), "a date in the title, the tab, a column or the file's name", rs.whichDate())
	}
}

// whichDate is the question for a date that nothing says. One given by hand holds for
// all tabs.
func (rs *runSettler) whichDate() string {
	tabs := map[string]bool{}
	for _, p := range rs.sheet.Parts {
		if p.Kind != Volunteers && !p.Date.OK() {
			tabs[p.Tab] = true
		}
	}
	if len(tabs) > 1 {
		return "Which date was the run? If all tabs are of one run, load the workbook again with --date YEAR-MONTH-DAY. If not, write its date above the table of each, save, and load it again."
	}
	return "Which date was the run? Load the sheet again with --date YEAR-MONTH-DAY."
}
