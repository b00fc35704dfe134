package sheet

import (
	"regexp"
	"slices"
	"strings"
)

// placeLine is a line over a list that gives the course of its rows.
type placeLine struct {
	slug, text string
	form       string // the line with % for the name, # for every number and @ for a date: "%, @ (# finishers)"
	labelled   bool   // "Venue: Alder Bank"
	day        int    // how many lines of a day stand above it
}

// bareForm is the form of a line that is nothing but a name.
const bareForm = "%"

var numbers = regexp.MustCompile(`\d+`)

// readPlaceLine reads a line over a list. Lines that speak of something else than a place, and
// those whose name is not found in them as it stands, are none.
func readPlaceLine(line string, lex *lexicon, book *courseBook) (placeLine, bool) {
	l, ok := placeLineOf(line, lex, book)
	return l, ok && (l.form != bareForm || len(strings.Fields(l.text)) > 1) // a single word may be anything
}

func placeLineOf(line string, lex *lexicon, book *courseBook) (placeLine, bool) {
	words := courseWords(line, lex, book)
	if len(words) == 0 {
		return placeLine{}, false
	}
	w := words[0]
	before, after, found := strings.Cut(line, w.text)
	if !found {
		return placeLine{}, false
	}
	form := strings.ToLower(before) + "%" + strings.ToLower(after)
	form = numbers.ReplaceAllString(cutDates(form, false, "@"), "#")
	form = strings.TrimRight(strings.Join(strings.Fields(form), " "), ": ")
	return placeLine{slug: w.slug, text: w.text, form: form, labelled: w.why == labelledCourse}, true
}

// listNames tells the lists of a table, one under the other, whose lines name courses of
// their own from those that share out one run by club, team or wave.
//
// No word tells a place from a group that nobody has heard of; but the lines over lists of one
// kind have one form ("Alder Bank results", "Castle Green results"), and only the names differ.
// Such names are courses where a label says so, or where nothing else on the sheet names a
// course; beside another name they are where the words for the land are theirs ("Bank",
// "Green") and not the other's, or where the other speaks of several runs.
type listNames struct {
	lex   *lexicon
	book  *courseBook
	forms map[string][]placeLine // of the lists, the first one's lines among them
	is    map[string]bool        // by form: they are courses
}

// readListNames reads the lines over the first list.
func readListNames(first []string, lex *lexicon, book *courseBook) *listNames {
	ln := &listNames{lex: lex, book: book, forms: map[string][]placeLine{}, is: map[string]bool{}}
	for _, t := range first {
		if l, ok := readPlaceLine(t, lex, book); ok {
			ln.forms[l.form] = []placeLine{l}
		}
	}
	return ln
}

// like says whether one of some lines has the form of a line over the first list.
func (ln *listNames) like(titles []string) bool {
	_, ok := ln.line(titles)
	return ok
}

// overLists are lines below a blank row that stand over the heading of the table and fill one
// cell, or have more than a name in common with a line over the first list: on sheets without
// places they would be somebody whose time nobody took.
func (ln *listNames) overLists(rules *rowRules, g *grid) (over map[int]bool) {
	if rules.pos >= 0 {
		return nil
	}
	over = ln.bareLists(rules, g)
	open, blank := 0, false // a line that may be one; the row above is blank
	for i := range g.len() {
		row, cells := g.at(i)
		filled := rowFilled(cells)
		stands := false
		switch {
		case filled == 0 || row <= rules.first:
		case open > 0 && rules.isHeading(cells, filled):
			stands, row = true, open
		default:
			if open = 0; !blank || filled > 2 {
				break
			}
			if filled == 1 {
				open = row
			}
			l, ok := ln.line([]string{titleText(cells)})
			stands = ok && (filled == 1 && l.form != bareForm || strings.Contains(l.form, "@"))
		}
		if stands {
			if over == nil {
				over = map[int]bool{}
			}
			over[row] = true
		}
		blank = filled == 0
	}
	return over
}

// bareLists are lines of nothing but a name, like the one right above the first list, that stand below a blank
// row, or with a colon behind them, and above a row whose time, and place, falls behind those of the row above:
// each list has its own order. One line alone has to be called after the land.
func (ln *listNames) bareLists(rules *rowRules, g *grid) map[int]bool {
	if len(ln.forms[bareForm]) == 0 || rules.time < 0 {
		return nil
	}
	first := false
	for i := g.find(rules.first) - 1; i >= 0 && !first; i-- {
		row, cells := g.at(i)
		if rules.first-row > 3 || rowFilled(cells) == 0 {
			break
		}
		l, ok := readPlaceLine(titleText(cells), ln.lex, ln.book)
		first = ok && rowFilled(cells) == 1 && l.form == bareForm
	}
	if !first {
		return nil
	}
	over, land := map[int]bool{}, false
	last, place, open, blank := 0.0, 0.0, 0, false
	text := ""
	for i := g.find(rules.first); i < g.len(); i++ {
		row, cells := g.at(i)
		filled := rowFilled(cells)
		at := secondsOf(cells, rules.time)
		switch {
		case at > 0:
			n := looseNumber(trim(cellAt(cells, rules.pos)))
			if open > 0 && row == open+1 && at < last && (rules.pos < 0 || n > 0 && n <= place) {
				over[open] = true
				land = land || landWords[finalWord(text)]
			}
			open, last, place = 0, at, n
		case filled == 1 && (blank || strings.HasSuffix(titleText(cells), ":")):
			if l, ok := readPlaceLine(titleText(cells), ln.lex, ln.book); ok && l.form == bareForm {
				open, text = row, l.text
			}
		default:
			open = 0
		}
		blank = filled == 0
	}
	if len(over) > 1 || land {
		return over
	}
	return nil
}

// fewestBands is how many lines of one form name courses whatever the order of the rows under them.
const fewestBands = 3

// bands are lines of one form, each with one name and right over rows of results, as in a round-up of
// where a club's people ran: three or more of them, of other names each. A name alone stands below a blank
// row, beside a heading or over the first rows of all, or it might be somebody without a time. Most are called
// after the land or known, or stand behind "at"; those that are not are likely to be courses.
func (ln *listNames) bands(rules rowRules, g *grid) (sure, likely map[int]placeLine) {
	rules.restart()
	sure, likely = map[int]placeLine{}, map[int]placeLine{}
	forms := map[string][]placeLine{}
	var open placeLine
	at, blank, apart, data, top, day := 0, true, false, 0, "", 0
	headed := map[string]int{} // how many have the heading once more under them
	for i := range g.len() {
		row, cells := g.at(i)
		filled, text := rowFilled(cells), ""
		if filled == 1 {
			text = titleText(cells)
		}
		l, ok := placeLine{}, false
		if filled == 1 && len(text) <= longestBand && saysDayOnly(text) {
			day++
		}
		if filled == 1 && len(text) <= longestBand && !isSection(text) && !helperTab(text) && !isRemark(text) && !ln.lex.read(text).known && !namesGroup(text) && !endsAsClub(text) {
			l, ok = placeLineOf(text, ln.lex, ln.book)
			l.day, l.form = day, besideName.ReplaceAllString(l.form, "") // "Alder Bank (4 runs)" stands beside "Mill Leat 5k"
		}
		switch {
		case filled == 0:
			blank = true
			continue
		case ok:
			open, at, apart = l, row, blank || strings.HasSuffix(text, ":")
		case row == rules.first-1 || rules.isHeading(cells, filled):
			if at > 0 {
				headed[open.form]++
			}
			apart, blank = true, true
			continue
		case row >= rules.first && rules.classify(row, cells) == isData:
			if data++; data == 1 && at > 0 {
				top = open.form
			}
			if at > 0 && (apart || open.form != bareForm || top == bareForm) {
				likely[at] = open
				forms[open.form] = append(forms[open.form], open)
			}
			at = 0
		default:
			at = 0
		}
		blank = false
	}
	for at, l := range likely {
		lines := forms[l.form]
		if len(lines) < fewestBands && headed[l.form] < 2 || !otherNames(lines) {
			delete(likely, at)
		} else if ln.nameBands(lines) {
			sure[at] = l
		}
	}
	return sure, likely
}

// otherNames says whether no two of some lines under one day name the same.
func otherNames(lines []placeLine) bool {
	type named struct {
		slug string
		day  int
	}
	names := map[named]bool{}
	for _, l := range lines {
		names[named{l.slug, l.day}] = true
	}
	return len(names) == len(lines)
}

// besideName is what some of these lines say beside the name, a number in brackets or the distance.
var besideName = regexp.MustCompile(` (?:\([^()%]*#[^()%]*\)|# ?km?\b)`)

// longestBand is how many bytes such a line has at most.
const longestBand = 60

// nameBands says whether the names of lines of one form are those of courses.
func (ln *listNames) nameBands(lines []placeLine) bool {
	land := 0
	first, _, _ := strings.Cut(lines[0].form, " ")
	for _, l := range lines {
		if landWords[finalWord(l.text)] || ln.book.holds(l.slug) || atWords[first] || l.labelled {
			land++
		}
	}
	return 2*land >= len(lines)
}

// add takes in the lines over another list.
func (ln *listNames) add(titles []string) {
	if l, ok := ln.line(titles); ok {
		ln.forms[l.form] = append(ln.forms[l.form], l)
	}
}

// settle finds which forms name courses, beside the other lines over the first list and the
// names of tab and file.
func (ln *listNames) settle(first []string, tab, file string) {
	for form, lines := range ln.forms {
		if differ(lines) {
			ln.is[form] = nameCourses(lines, ln.otherNames(form, first, tab, file))
		}
	}
}

// otherName is a name that may be that of the course of all lists.
type otherName struct {
	text, slug string
	several    bool // the line that it stands in speaks of several runs
}

// otherNames are those of the lines over the first list that have another form, and of tab and
// file.
func (ln *listNames) otherNames(form string, first []string, tab, file string) (out []otherName) {
	for _, t := range append(slices.Clone(first), tab) {
		if l, ok := readPlaceLine(t, ln.lex, ln.book); ok && l.form == form {
			continue
		}
		if words := courseWords(t, ln.lex, ln.book); len(words) > 0 {
			out = append(out, otherName{words[0].text, words[0].slug, ofSeveralRuns(t)})
		}
	}
	if runFile.MatchString(baseStem(file)) {
		for _, w := range fileWords(file, ln.book) {
			out = append(out, otherName{w.text, w.slug, ofSeveralRuns(baseStem(file))})
			break
		}
	}
	return out
}

// line is the last of some lines over a list that has the form of a line over the first list.
func (ln *listNames) line(titles []string) (placeLine, bool) {
	for _, t := range slices.Backward(titles) {
		if l, ok := readPlaceLine(t, ln.lex, ln.book); ok && (len(ln.forms[l.form]) > 0) {
			return l, true
		}
	}
	return placeLine{}, false
}

// course is the course that the lines over a list name, where such lines name courses.
func (ln *listNames) course(titles []string) (placeLine, bool) {
	l, ok := ln.line(titles)
	return l, ok && ln.is[l.form]
}

// differ says whether lines name two courses, and not one with numbers: "Wave 1", "Wave 2".
func differ(lines []placeLine) bool {
	first := numbers.ReplaceAllString(lines[0].slug, "#")
	return slices.ContainsFunc(lines, func(l placeLine) bool { return numbers.ReplaceAllString(l.slug, "#") != first })
}

// nameCourses says whether the names in lines of one form are those of courses, beside what
// else on the sheet may name one.
func nameCourses(lines []placeLine, others []otherName) bool {
	if lines[0].labelled {
		return true
	}
	land, groups := 0, 0
	for _, l := range lines {
		if landWords[finalWord(l.text)] {
			land++
		}
		if namesGroup(l.text) {
			groups++
		}
	}
	if 2*groups >= len(lines) {
		return false
	}
	for _, o := range others {
		switch {
		case slices.ContainsFunc(lines, func(l placeLine) bool { return l.slug == o.slug }):
		case namedIn(o.slug, lines) >= 2: // "Alder Bank and Castle Green results"
		case endsAsClub(o.text) && (land > 0 || o.several): // where a club's people ran
		case landWords[finalWord(o.text)], !o.several && 2*land <= len(lines):
			return false
		}
	}
	return true
}

// namedIn counts the lines whose names stand in another.
func namedIn(slug string, lines []placeLine) int {
	in := map[string]bool{}
	for _, l := range lines {
		if strings.Contains("-"+slug+"-", "-"+l.slug+"-") {
			in[l.slug] = true
		}
	}
	return len(in)
}

// nameLists gives tables one below the other the courses that the lines over them name. One
// whose own lines name none goes on with that above it.
func (s *Sheet) nameLists(lists []*Part, lex *lexicon, o Options) {
	if len(lists) < 2 {
		return
	}
	book := s.courseBook(o)
	names := readListNames(lists[0].ownTitles(), lex, book)
	for _, p := range lists[1:] {
		names.add(p.ownTitles())
	}
	names.settle(lists[0].ownTitles(), lists[0].Tab, s.Name)
	for i, p := range lists {
		l, ok := names.course(p.ownTitles())
		switch {
		case p.place.slug != "":
		case ok:
			p.place = l
		case i > 0 && !slices.ContainsFunc(p.ownTitles(), func(t string) bool { return len(courseWords(t, lex, book)) > 0 }):
			p.place = lists[i-1].place
		}
	}
}

// ofSeveralRuns says whether a text speaks of more than one run.
func ofSeveralRuns(text string) bool {
	return anyWord(text, severalRuns) || roundUp.MatchString(text)
}

// roundUp are words for what a club's people ran in a week, wherever that was. Common practice, no source.
var roundUp = regexp.MustCompile(`(?i)\b(?:round[ -]?up|where (?:we|our members|members) (?:ran|raced|were)|on our travels|away runs|elsewhere)\b`)

// severalRuns are words of a title that speaks of more than one run.
var severalRuns = set(`runs courses venues locations sites places laufe strecken parcours carreras corse percorsi corridas lopp lob lop lopen juoksut biegi behy
	district county region regional area bezirk landkreis departement provincia distrito distretto regio provincie okreg kraj`)

// namesGroup says whether a name is rather that of a group of people than of a place.
func namesGroup(text string) bool {
	for _, w := range strings.Fields(fold(text)) {
		if clubWords[w] || wordsOfParts[w] {
			return true
		}
	}
	return false
}

// wordsOfParts are words for a part of a field.
var wordsOfParts = set(`group groups wave waves team teams house heat heats pen pens class form squad section division start pack
	gruppe welle klasse mannschaft groupe vague equipe classe grupo ola equipo clase gruppo onda squadra groep klas ploeg grupp lag klass ryhma joukkue luokka grupa druzyna klasa skupina druzstvo trida`)
