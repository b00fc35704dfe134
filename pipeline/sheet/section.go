package sheet

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// maxSkippedKept bounds the list of skipped rows of one part.
const maxSkippedKept = 10000

// split divides a table in which several runs stand one after the other, each
// under title lines of its own, and fills the list of skipped rows. Lines such
// as "Women" or "U17" between the rows become a column of their own.
func (s *Sheet) split(p *Part, t table, lex *lexicon, o Options) []*Part {
	p.reportDoubted(s.Name)
	if t.grid == nil {
		return []*Part{p}
	}
	type block struct {
		titles []string
		rows   []int
		after  int  // last row of data above it
		from   int  // first row of data under it
		headed bool // the heading stands again between the two
		back   bool // over the whole distance again, below a group with one of its own
	}
	book := s.courseBook(o)
	lead := p.linesAbove(t.grid, lex)
	names := readListNames(lead, lex, book)
	p.rules.overLists = names.overLists(&p.rules, t.grid)
	bare := names.bareLists(&p.rules, t.grid)
	bands, likely := names.bands(p.rules, t.grid)
	for row := range bands {
		if p.rules.overLists == nil {
			p.rules.overLists = map[int]bool{}
		}
		p.rules.overLists[row] = true
	}
	bandOver := func(rows []int) (l placeLine, row int) { // the last of some lines that is one
		for _, row := range slices.Backward(rows) {
			if l, ok := bands[row]; ok {
				return l, row
			}
		}
		return placeLine{}, 0
	}
	rules := p.rules
	rules.restart()
	var blocks []block
	var open *block
	sections, lone := map[int]string{}, map[int]string{} // lone are short lines of one cell that say nothing known
	ofSex := map[int]string{}                            // what the title of a list says of its sex, "Alder Bank 5k - Women"
	data, lastData := 0, 0
	forms := titleForms(t.grid, p.HeadingRow)
	distance := usualDistance
	for _, title := range append(append([]string(nil), p.Titles...), p.Tab, baseName(s.Name)) {
		if m, _, _, ok := findDistance(title); ok {
			distance = int(m + .5)
			break
		}
	}
	above := distance // of the rows that were read last
	ofGroup := false  // which is that of a group alone, "Children (1 mile)"
	// goesBack says whether a line over rows is over a group that ran the whole distance again.
	goesBack := func(text string) bool {
		if !ofGroup || above == distance {
			return false
		}
		_, _, _, far := findDistance(text)
		return !far && (isSection(text) || saysField(text))
	}
	for i := 0; i < t.grid.len(); i++ {
		row, cells := t.grid.at(i)
		if row < rules.first {
			continue
		}
		switch w := rules.classify(row, cells); w {
		case isData:
			data++
			lastData = row
			if open != nil {
				if under := distanceUnder(open.titles, above); open.back {
					above, ofGroup = distance, false
				} else if under != above {
					above, ofGroup = under, slices.ContainsFunc(open.titles, namesGroupOver)
				}
				open.from = row
				blocks = append(blocks, *open)
				open = nil
			}
		case whyBlank:
			// What stands before a blank row belongs to the rows above it.
			if open != nil && !isTitle(open.titles) && !otherDistance(strings.Join(open.titles, " | "), above) && !names.like(open.titles) {
				open = nil
			}
		case whyHeading:
			if open != nil {
				open.headed = true
			}
			if text := cellAt(cells, p.Index(Name)); sexOverNames(text) {
				sections[row] = text
			}
		case whyNumberOnly:
		case whyTitle:
			text := titleText(cells)
			if rowFilled(cells) == 1 && isSection(text) {
				sections[row] = text
			}
			if _, dated := onlyDate([]string{text}); dated && open != nil && !names.like(open.titles) && !otherDistance(strings.Join(open.titles, " | "), above) {
				open = nil // the title of the sheet again, day and all: the next page of the same run
			}
		default:
			if rowFilled(cells) > 2 && !isTitleLine(lex, t.grid, i) && !forms.like(cells) || p.saysBirth(cells) {
				continue
			}
			if numbersPage(cells) {
				continue // with the day of the print
			}
			text := titleText(cells)
			back := goesBack(text)
			if rowFilled(cells) == 1 && isSection(text) && !otherDistance(text, above) {
				sections[row] = text
				if !back {
					continue
				}
			}
			if rowFilled(cells) == 1 && len(text) <= 24 && !isRemark(text) && len(findDates(text)) == 0 {
				lone[row] = text
			}
			if said := sexOfTitle([]string{text}); rowFilled(cells) == 1 && said != "" {
				ofSex[row] = said
			}
			if open == nil {
				open = &block{after: lastData}
			}
			open.back = open.back || back
			open.titles = append(open.titles, titleTexts(lex, cells)...)
			open.rows = append(open.rows, row)
		}
	}
	maps.DeleteFunc(sections, func(row int, _ string) bool { return row > lastData && !t.grid.goesOn(row) }) // a stray letter below
	// A section may stand above the heading of the first rows.
	first := ""
	if last := lastTitle(p.Titles); isSection(last) && !linesOfKey(p.Titles) {
		first = last
	} else if at := p.Index(Name); at >= 0 && sexOverNames(p.Columns[at].Heading) {
		first = p.Columns[at].Heading
	} else if len(sections) == 0 && s.agesOfTab(p.Tab) {
		first = p.Tab
	} else if len(sections) == 0 && (s.groupTabs && isSection(p.Tab) || saysWho(p.Tab)) && !weekOf(p.Tab, p.Titles) {
		first = p.Tab
	} else if who := besideDate(p.Tab, " -_"); len(sections) == 0 && saysWho(who) && !weekOf(p.Tab, p.Titles) {
		first = who // "Women", "17-05-2025 Women"
	} else if len(sections) == 0 && s.sexTabs && sexSaid(p.Tab) != 0 {
		first = p.Tab
	} else if said := sexOfTitle(p.Titles); len(sections) == 0 && said != "" {
		first = said
	} else if said := sexAmong(p.ownTitles()); said != "" {
		first = said
	} else if len(sections) == 0 && p.Index(AgeGroup) < 0 {
		first = sexOfFile(s.Name)
	}
	if len(sections) > 0 && first == "" {
		// What the head of each page says stands above the first page, too.
		if text := sections[slices.Min(slices.Collect(maps.Keys(sections)))]; slices.Contains(p.Titles, text) {
			first = text
		}
	}
	for row, said := range ofSex {
		if at := dataRowAfter(&rules, t.grid, row); at > 0 && startsAgain(p, t.grid, at) {
			sections[row] = said
			delete(lone, row)
		}
	}
	if len(sections) > 0 || first != "" {
		// Where the places begin again under a line that is not understood, the section
		// above it has ended.
		for row, text := range lone {
			if at := dataRowAfter(&rules, t.grid, row); at > 0 && startsAgain(p, t.grid, at) {
				sections[row] = text
			}
		}
	}
	if p.timeBands(t.grid, sections) {
		clear(sections)
	}
	if (len(sections) > 0 || first != "") && data > 0 {
		s.addSections(p, sections, first)
	}
	if n := len(blocks); n > 0 && saysRelay(blocks[n-1].titles) {
		b := blocks[n-1]
		blocks = blocks[:n-1]
		if first := firstDataRow(p, t.grid); first > 0 && first < b.rows[0] {
			rules.last, p.rules.last = b.rows[0]-1, b.rows[0]-1
			p.problem(s.Name, b.rows[0], -1, place.Note, "table-left-out", strings.Join(b.titles, " | "), "single runners", "Nothing to do: a relay's teams are no runners of their own")
		}
	}
	// Lines over lists that begin anew, or under which the heading stands again.
	anew := func(b block) bool {
		_, band := bandOver(b.rows)
		return band > 0 || startsAgain(p, t.grid, b.from) || b.headed && fallsAt(p, t.grid, b.after, b.from) || bare[b.rows[len(b.rows)-1]] ||
			names.like(b.titles) && fallsBehind(p, t.grid, b.after, b.from)
	}
	for _, b := range blocks {
		if _, dated := onlyDate(b.titles); dated || anew(b) {
			names.add(b.titles)
		}
	}
	names.settle(lead, p.Tab, s.Name)
	parts := []*Part{p}
	whole := distance
	prevDay, _ := onlyDate(p.Titles)
	prevCourse := knownCourse(p.Titles, book)
	if l, ok := names.course(p.Titles); ok && prevCourse == "" {
		prevCourse, p.place = l.slug, l
	}
	for row, l := range bands {
		if row < firstDataRow(p, t.grid) && slices.Contains(p.Titles, titleText(t.grid.cellsOf(row))) {
			prevCourse, p.place = l.slug, l
		}
	}
	for _, b := range blocks {
		day, dated := onlyDate(b.titles)
		course := knownCourse(b.titles, book)
		named, ok := names.course(b.titles)
		ok = ok && (dated || anew(b))
		if l, row := bandOver(b.rows); row > 0 {
			named, ok = l, true
		} else if l, is := likely[b.rows[len(b.rows)-1]]; is && names.is[l.form] {
			named, ok = l, true
		}
		if ok = ok && course == ""; ok {
			course = named.slug
		}
		newDay := dated && (day != prevDay)
		newCourse := course != "" && course != prevCourse
		under := distanceUnder(b.titles, distance)
		if b.back {
			under = whole
		}
		newDistance := under != distance
		distance = under
		again := false
		if corrects(b.titles) {
			if again = anew(b); !again {
				p.askCorrection(t.grid, s.Name, b.titles, b.after, b.from)
			}
		}
		if !newDay && !newCourse && !newDistance && !again {
			continue
		}
		last := parts[len(parts)-1]
		if first := firstDataRow(last, t.grid); first == 0 || first >= b.rows[0] {
			// Nothing above it: these lines are titles of the part itself.
			last.Titles = append(last.Titles, b.titles...)
			if ok {
				last.place = named
			}
			prevDay, prevCourse = orDay(day, dated, prevDay), orText(course, prevCourse)
			continue
		}
		next := *last
		next.Columns = append([]Column(nil), last.Columns...)
		next.Problems = nil
		next.Titles, next.lent = b.titles, 0
		last.rules.last = b.rows[0] - 1
		next.rules.first = b.rows[len(b.rows)-1] + 1
		next.rules.last = rules.last
		if own := sectionBetween(sections, b.after, b.from); newDistance || own != "" || sectionBetween(sections, 0, b.from) != "" {
			next.rules.firstSection = own // those of the run above have ended
		}
		if b.back {
			next.inherit(parts[0]) // without the distance of the group between
		} else {
			next.inherit(last)
		}
		if next.place = last.place; ok {
			next.place = named
		}
		parts = append(parts, &next)
		prevDay, prevCourse = orDay(day, dated, prevDay), orText(course, prevCourse)
	}
	for _, p := range parts {
		if len(parts) > 1 {
			p.rules.findTailWithin(t.grid, t.hasGaps())
		}
		p.EachSkipped(func(int, []string) error { return nil }, func(sk Skipped) error {
			if len(p.Skipped) < maxSkippedKept {
				p.Skipped = append(p.Skipped, sk)
			}
			return nil
		}) // neither function returns an error, and a grid has none of its own
		own := t.grid.between(p.rules.first, p.rules.last)
		p.explain(own)
		colours := p.fillLegend()
		p.tellSexes(colours)
		p.remark(own, s.Name, s.tabs, colours)
		p.sayTimedLinesLeftOut(own, s.Name)
		p.sayOtherWeeks(s.Name)
		p.sayCorrections(s.Name)
		p.sayListsBelow(own, s.Name)
		p.sayHidden(own, s.Name)
		p.askTimesOff(t.grid, s.Name)
		p.sayOffLength(s.Name)
	}
	return parts
}

// linesOfKey says whether the last two of some lines say what two classes are, "C: women under 40" and "D: women
// 40 and over": a line over a list would have rows under it.
func linesOfKey(titles []string) bool {
	n := len(titles)
	return n > 1 && len(legendOf(titles[n-1])) > 0 && len(legendOf(titles[n-2])) > 0
}

// linesAbove are the lines over the first list: the titles, and what stands between the heading and the first row of
// results.
func (p *Part) linesAbove(g *grid, lex *lexicon) []string {
	lines := slices.Clone(p.Titles)
	first := firstDataRow(p, g)
	for i := range g.len() {
		row, cells := g.at(i)
		if row >= first {
			break
		}
		if row >= p.rules.first && rowFilled(cells) > 0 && isTitleLine(lex, g, i) {
			lines = append(lines, titleTexts(lex, cells)...)
		}
	}
	return lines
}

// saysBirth says whether a row has a date of birth. A date there is the day of a run where
// nobody is named beside it, or where nobody born on it could have run.
func (p *Part) saysBirth(cells []string) bool {
	text := cellAt(cells, p.Index(BirthDate))
	if kindOf(text) != kDate {
		return false
	}
	if isBlank(cellAt(cells, p.Index(Name))) && isBlank(cellAt(cells, p.Index(FamilyName))) && isBlank(cellAt(cells, p.Index(GivenName))) {
		return false
	}
	run, dated := onlyDate(p.Titles)
	day, read := onlyDate([]string{text})
	return !dated || !read || day < run-daysOfInfancy
}

// daysOfInfancy is how many days after the birth nobody runs yet.
const daysOfInfancy = 2 * 365

// goesOn says whether a row with more than one cell stands below a row.
func (g *grid) goesOn(row int) bool {
	for i := g.len() - 1; i >= 0 && g.row(i) > row; i-- {
		if _, cells := g.at(i); rowFilled(cells) > 1 {
			return true
		}
	}
	return false
}

// dataRowAfter is the first row of data below a line, 0 where another line comes first.
func dataRowAfter(rules *rowRules, g *grid, line int) int {
	for i := g.find(line + 1); i < g.len(); i++ {
		row, cells := g.at(i)
		switch rules.classify(row, cells) {
		case isData:
			return row
		case whyBlank, whyHeading:
		default:
			return 0
		}
	}
	return 0
}

// startsAgain says whether the places of a part begin again from 1 at a row.
func startsAgain(p *Part, g *grid, row int) bool {
	col := p.Index(Position)
	return col >= 0 && trim(cellAt(g.cellsOf(row), col)) == "1"
}

// fallsAt says whether the place of a row is no higher than that of an earlier one, as where a
// club's list goes on with another run. Without places nothing speaks against it.
func fallsAt(p *Part, g *grid, above, below int) bool {
	col := p.Index(Position)
	if col < 0 {
		return true
	}
	first, second := looseNumber(trim(cellAt(g.cellsOf(above), col))), looseNumber(trim(cellAt(g.cellsOf(below), col)))
	return second > 0 && second <= first
}

// fallsBehind says whether a row has an earlier place and a shorter time than an earlier one: what stands
// between them is over a list with an order of its own, though its first place is not 1, as where a
// club lists its own people at each run.
func fallsBehind(p *Part, g *grid, above, below int) bool {
	if p.Index(Position) < 0 || !fallsAt(p, g, above, below) {
		return false
	}
	first, second := secondsOf(g.cellsOf(above), p.rules.time), secondsOf(g.cellsOf(below), p.rules.time)
	return second > 0 && second < first
}

// saysRelay says whether lines announce teams that share out the distance.
func saysRelay(titles []string) bool {
	return slices.ContainsFunc(titles, func(t string) bool { return anyWord(t, relayWords) })
}

var relayWords = set("relay relays staffel staffeln relais staffetta relevos estafette estafeta estafetas sztafeta stafett stafet stafetten")

// otherDistance says whether a line gives another distance than these metres.
func otherDistance(text string, metres int) bool {
	m, from, _, ok := findDistance(text)
	return ok && math.Abs(m-float64(metres)) > .02*float64(metres) && !endedThere(text[:from])
}

// endedThere says whether the words before a distance say that somebody's race ended there: "Jo Lee
// withdrew at".
func endedThere(before string) bool {
	words := strings.Fields(fold(before))
	if n := len(words); n > 1 && atWords[words[n-1]] {
		words = words[:n-1]
	}
	for n := min(4, len(words)); n > 0; n-- {
		if f := strings.Join(words[len(words)-n:], " "); statusWords[f] && f != "ok" && f != "finished" {
			return true
		}
	}
	return false
}

// atWords stand between such words and the distance.
var atWords = set("at after around about near by nach bei a apres en tras vid efter na po op")

// distanceUnder is the distance in metres of the rows under some lines, which is that of the
// rows above them unless a line gives another.
func distanceUnder(titles []string, above int) int {
	for _, t := range titles {
		if !isRemark(t) && otherDistance(t, above) {
			m, _, _, _ := findDistance(t)
			return int(m + .5)
		}
	}
	return above
}

// namesGroupOver says whether a line gives a group of the field with a distance of its own:
// "Children (1 mile)", "Junior run 2k".
func namesGroupOver(line string) bool {
	_, from, to, ok := findDistance(line)
	if !ok {
		return false
	}
	rest := strings.Trim(line[:from]+" "+line[to:], " ()-–:,")
	return isSection(rest) || saysField(rest)
}

// weekOf says whether the number of a tab is that of the week of the day above its table, as in
// "S13" of "28/03/2026", and no age.
func weekOf(tab string, titles []string) bool {
	day, dated := onlyDate(titles)
	n, numbered := onlyNumber(tab)
	_, week := day.ISOWeek()
	return dated && numbered && n == week
}

// isTitle says whether lines could be the title of the rows below them.
func isTitle(lines []string) bool {
	_, dated := onlyDate(lines)
	return dated
}

func orDay(d unit.Day, ok bool, prev unit.Day) unit.Day {
	if ok {
		return d
	}
	return prev
}

func orText(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

func undated(titles []string) (out []string) {
	for _, t := range titles {
		if len(findDates(t)) == 0 {
			out = append(out, t)
		}
	}
	return out
}

func firstDataRow(p *Part, g *grid) (row int) {
	p.Each(func(r int, _ []string) error {
		row = r
		return errStop
	}) // errStop is taken by the grid
	return row
}

// onlyDate is the first date in a list of titles, whichever way it is read.
func onlyDate(titles []string) (unit.Day, bool) {
	for _, t := range titles {
		if es := titleDates(t, "", newLexicon(Options{}), false); len(es) > 0 {
			r := es[0].readings[0]
			if r.y == 0 {
				r.y = 2000
			}
			return r.day(), true
		}
	}
	return 0, false
}

func knownCourse(titles []string, book *courseBook) string {
	for _, t := range titles {
		if slug, ok := book.within(t); ok {
			return slug
		}
	}
	return ""
}

// isSection says whether a line between rows names a sex or an age group.
func isSection(text string) bool {
	k := sectionKind(text)
	return k == kSex || k == kGroup
}

// sexOverNames says whether the heading of the names says a sex: "Women", "Men, heat B".
func sexOverNames(heading string) bool { return heading != "" && sectionKind(heading) == kSex }

// oneOfSeveral is a number in a series, "Round 4 of 8", and no age from 4 to 8. Common practice, no source.
var oneOfSeveral = regexp.MustCompile(`(?i)\b\d{1,3} ?(?:of|von|sur|de|di|van|av|af|z|ze) ?\d{1,3}$`)

// sectionKind looks through general words: "Results: Women", "Männer 5 km".
func sectionKind(text string) kind {
	if strings.Contains(text, "=") {
		return kBlank // "* = lady" explains a sign
	}
	if sign, means, ok := signLine(text); ok && !strings.HasSuffix(text, sign) && oneOfSex[finalWord(fold(means))] {
		return kBlank // "* lady", "* first lady"
	}
	text = withoutOpening(withoutOrder(closed(text)))
	if utf8.RuneCountInString(text) > 40 || strings.Contains(text, ":") && isClock(text[strings.LastIndexByte(text, ' ')+1:]) {
		return kBlank
	}
	if isDate(text) || saysDayOnly(text) {
		return kBlank // 13 Jun is a day, and no group of juniors
	}
	if countsSexes(text) || oneOfSeveral.MatchString(text) {
		return kBlank
	}
	text = withoutHeat(text)
	if label, rest, ok := strings.Cut(text, " "); ok && sexLabels[strings.TrimSuffix(fold(label), " ")] && kindOf(strings.Trim(rest, " :")) == kSex {
		return kSex // "Sex not stated"
	}
	if _, from, to, ok := findDistance(text); ok && from == 0 && to == len(text) {
		return kBlank // "10KM"
	}
	if k := kindOf(text); (k == kSex || k == kGroup) && !softSexWords[fold(text)] {
		return k
	}
	if a, b, ok := strings.Cut(text, "&"); ok && sexSaid(a) != 0 && sexSaid(a) == sexSaid(b) && len(a) > 3 && len(b) > 3 {
		return kSex // "Boys & Men"
	}
	for _, division := range [...]string{"の部", "部", "부", "組", "组"} {
		if rest, ok := strings.CutSuffix(text, division); ok && kindOf(rest) == kSex {
			return kSex
		}
	}
	var words []string
	for _, w := range strings.Fields(fold(elided.ReplaceAllString(text, ""))) {
		if pageWords[w] {
			return kBlank // "Page 1 of 7" is no age from 1 to 7
		}
		if !besideCategory(w) {
			words = append(words, w)
		}
	}
	if len(words) == 0 || len(words) > 5 {
		return kBlank
	}
	if len(words) == 1 && categoryLetters[words[0]] && len(strings.Fields(text)) == 2 && headingWords[strings.Trim(fold(strings.Fields(text)[0]), ".:")]&cGroup != 0 {
		return kSex // "Kategorija Ž"
	}
	if len(words) == 1 && (softSexWords[words[0]] || otherWords[words[0]]) {
		return kBlank // "Other finishers", those who are not above
	}
	if k := kindOf(strings.Join(words, " ")); k != kText && k != kBlank {
		return k
	}
	return composedSection(words)
}

// composedSection reads a section word by word: "Gutter 13-17 år", "Männliche Jugend U20", "Jongens t/m 17",
// "Messieurs". A short word for a sex by itself may be a name.
func composedSection(words []string) kind {
	sex, class, lone := false, false, len(words) == 1
	for _, w := range words {
		switch {
		case len(w) > 2 && text.SexOf(w) != 0 && !placesToo[w]:
			sex = true
			lone = lone && len(w) > 4 && !softSexWords[w]
		case yearsInSection.MatchString(w), classWords[w], w == "jugend":
			class = true
		case !groupPart[w] && !besideYears[w]:
			return kBlank
		}
	}
	switch {
	case sex && class:
		return kGroup
	case sex && lone:
		return kSex
	}
	return kBlank
}

// yearsInSection are ages in such a section, besideYears what else stands there. Common practice, no source.
var (
	yearsInSection = regexp.MustCompile(`^(?:u|o|m|w)?(?:[5-9]|\d\d)(?:[-–/]\d{1,2})?[+]?$`)
	besideYears    = set("/ t m tm og och et und and y e ja ar v ev")
)

// saysDayOnly says whether a text is a day in figures and a month in letters beside general
// words: "Wk 4 5 Jun".
func saysDayOnly(text string) bool {
	if !strings.ContainsAny(text, "0123456789") || !slices.ContainsFunc(strings.Fields(fold(text)), func(w string) bool { _, ok := monthNames[w]; return ok }) {
		return false
	}
	cut := cutDates(text, true, "|")
	return cut != text && plainWords(strings.ReplaceAll(cut, "|", " ")) == ""
}

// countsSexes says whether a line counts both sexes and heads neither: "Men 23, Women 19".
func countsSexes(text string) bool {
	w := strings.Fields(fold(text))
	if len(w) != 4 {
		return false
	}
	if digitsOnly(w[0]) {
		w[0], w[1], w[2], w[3] = w[1], w[0], w[3], w[2] // 23 men, 19 women
	}
	return sexWords[w[0]] && digitsOnly(w[1]) && sexWords[w[2]] && digitsOnly(w[3]) && w[0] != w[2]
}

// categoryLetters are the letters for the sexes that stand behind a word for a category. Letters that
// count groups, from A on, are none of them.
var categoryLetters = set("m w n z k м ж ч γ")

// besideCategory says whether a folded word of a section says nothing of whose it is: "Results",
// "Category", and the articles of Hungarian.
func besideCategory(w string) bool {
	return titleWords[w] || categoryWords[w] || headingWords[w] == cGroup && len(w) > 4 || w == "a" || w == "az" || w == "open"
}

// oneOfSex are words for one woman or one man, which are over no list.
var oneOfSex = set("lady woman female girl man gentleman male boy frau dame dam mann herr herre mand femme homme mujer hombre donna uomo mulher homem vrouw kvinna kvinne kvinde nainen mies kobieta zena muz no ferfi")

// elided is an article or a preposition before a vowel: "Ordine d'arrivo femminile".
var elided = regexp.MustCompile(`(?i)\b[dl]['’]`)

// openingWords begin a sentence that says who follows: "And now the ladies", "First the
// men".
var openingWords = set("first then next now and here are come the followed by so to begin with")

// howMany says behind a section of how many it is: "M40 (3)", "Women - 12 finishers".
var howMany = regexp.MustCompile(`(?i)\s*(?:\(\d{1,4}\)|[(:–-]\s*\d{1,4} (?:finishers?|runners?|ran|starters?|entries|people)\)?)$`)

func withoutOpening(text string) string {
	words := strings.Fields(text)
	n := 0
	for n < len(words)-1 && openingWords[fold(words[n])] {
		n++
	}
	if n == 0 || n == 1 && fold(words[0]) == "the" { // The Bay
		return text
	}
	return strings.Join(words[n:], " ")
}

// sortedBy is what a title says of the order behind what it names, "(A-Z)" among them.
var sortedBy = regexp.MustCompile(`(?i)[ (]+(?:(?:sorted|listed|ordered|ranked) (?:by|on|according to) [^()]*|a ?(?:[-–]|to) ?z)\)?$`)

// sectionMark counts sections: "Section A: Men", "2. Women".
var sectionMark = regexp.MustCompile(`(?i)^(?:(?:section|part|table|list|race) )?(?:[a-h]|\d{1,2}|[ivx]{1,4})[.:)] +`)

// numberedEvent counts the races of a meeting: "Event 12  Boys 5k Run" is of no boys of twelve. Common practice, no source.
var numberedEvent = regexp.MustCompile(`(?i)^(?:event|race|heat|lauf|[eé]preuve|course|gara|prova|prueba) ?(?:no\.? ?)?#?\d{1,3}[.:)–-]? +`)

// withoutOrder leaves out marks around a section, and its order.
func withoutOrder(text string) string {
	if m := sectionMark.FindStringIndex(text); m != nil && sexWords[fold(text[m[1]:])] {
		text = text[m[1]:]
	}
	text = strings.Trim(strings.TrimSpace(text), ":.-–—*# ")
	text = numberedEvent.ReplaceAllString(text, "")
	if m := howMany.FindStringIndex(text); m != nil && m[0] > 0 {
		text = text[:m[0]]
	}
	if m := sortedBy.FindStringIndex(text); m != nil && m[0] > 0 {
		text = text[:m[0]]
	}
	return text
}

// withoutHeat leaves out which heat of which distance it is.
func withoutHeat(text string) string {
	return strings.Trim(withoutDistance(heatWords.ReplaceAllString(text, "")), "/| ")
}

// heatWords name one of several heats, which says nothing of who ran in it.
var heatWords = regexp.MustCompile(`(?i)[ ,]+(?:[a-d][ -]?(?:heat|race|final|lauf)|(?:heat|race|serie|series|lauf|final|pool) ?[a-d1-9])$`)

// categoryWords stand before the group of a section: "Kategorie M40", in the folded form.
var categoryWords = set("runners rank section age group division to bis до category kategorie categorie categoria kategoria kategori altersklasse altersgruppe klasse klass escalao escalon grupo gruppo korcsoport sarja")

// withoutDistance leaves the distance out of a text that says more: "Men 5 km results".
func withoutDistance(text string) string {
	if _, from, to, ok := findDistance(text); ok && hasLetter(text[:from]+text[to:]) {
		return strings.TrimSpace(text[:from] + " " + text[to:])
	}
	return text
}

// pageWords number the pages of a print, in the folded form.
var pageWords = set("page pages pagina seite seiten blatt side sida sivu strona strana oldal sheet")

// numbersPage says whether a line begins with the number of a page, "Page 1 of 3", "1 / 3",
// and says nothing more than a day and a time beside it.
func numbersPage(cells []string) bool {
	first := true
	for _, c := range cells {
		if isBlank(c) {
			continue
		}
		if !first {
			if len(findDates(c)) == 0 && kindOf(c) != kClock {
				return false
			}
			continue
		}
		first = false
		if pageOfAll.MatchString(trim(c)) {
			continue
		}
		words, numbers, page := strings.Fields(fold(c)), 0, false
		for i, w := range words {
			switch page = page || pageWords[w]; {
			case digitsOnly(w):
				numbers++
			case i == 0 && !pageWords[w], i > 0 && !pageWords[w] && !titleWords[w] && w != "/":
				return false
			}
		}
		if numbers == 0 || numbers > 2 || !page { // 10 km
			return false
		}
	}
	return !first
}

var pageOfAll = regexp.MustCompile(`^\d{1,3} ?/ ?\d{1,3}$`)

// saysWho says whether the name of a tab is a sex or an age group beyond doubt:
// "Ladies", "M40-44", "U17 girls", but not "Jan17", "Run 12" or "5k".
func saysWho(tab string) bool {
	tab = ageLabel.ReplaceAllString(tab, "Age ")
	if !isSection(tab) {
		return false
	}
	f := fold(tab)
	labelled := strings.HasPrefix(f, "age")
	if len(f) < 2 || len(f) <= 3 && digitsOnly(f[:len(f)-1]) && !strings.HasSuffix(tab, "+") {
		return false // "10H" is a class of a school
	}
	if _, from, to, ok := findDistance(tab); ok { // "Men 5k", but not "5k"
		if tab = tab[:from] + " " + tab[to:]; !isSection(tab) {
			return false
		}
		f = fold(tab)
	}
	var numbers []int
	sexed := false // in a word
	for _, t := range tokenize(strings.ReplaceAll(f, "-", " ")) {
		switch {
		case t.kind == 'd':
			if numbers = append(numbers, t.n); t.n < 9 && !labelled || t.n > 99 {
				return false
			}
		case t.kind == 'l' && len(t.word) > 2 && text.SexOf(t.word) != 0:
			sexed = true
		case t.kind == 'l' && !tabGroups[t.word] && !groupPart[t.word] && !classWords[t.word] && !sexWords[t.word] && !titleWords[t.word]:
			return false
		}
	}
	// "26-50" are places; an age group begins and ends with fives, or is of fewer years where it is of children.
	if len(numbers) == 2 && numbers[0] < numbers[1] && numbers[1] < 20 && numbers[1]-numbers[0] < 5 && lettersThenAges.MatchString(tab) {
		return true
	}
	return len(numbers) != 2 || sexed && numbers[0] < numbers[1] || numbers[0]%5 == 0 && numbers[1]%5 == 4 && numbers[0] >= 15 && numbers[0] < numbers[1] || numbers[0]%5 == 0 && (numbers[1]-numbers[0] == 4 || numbers[1]-numbers[0] == 9)
}

// groupTabs says whether two tabs or more are called after ages that do not overlap, and one of them is beyond doubt.
func groupTabs(tabs []string) bool {
	n, sure := 0, false
	last := 0
	for _, tab := range tabs {
		if sectionKind(tab) != kGroup || !hasDigit(tab) {
			continue
		}
		n++
		sure = sure || saysWho(tab) && ageWord.MatchString(tab)
		if ages := numbers.FindAllString(tab, 2); len(ages) == 2 && sexSaid(strings.Fields(tab)[0]) == 0 {
			if int(looseNumber(ages[0])) <= last {
				return false
			}
			last = int(looseNumber(ages[1]))
		}
	}
	return n > 1 && sure
}

// ageLabel is what the name of a tab may begin with, before ages.
var ageLabel = regexp.MustCompile(`(?i)^age[ -]?(?:groups?|category|categories|cat|class|band|range)[ :.-]*\b`)

// ageRange are the first and the last year of an age group of five or ten years, behind words or alone.
var ageRange = regexp.MustCompile(`^(?:(\pL[\pL ]*) )?(\d{1,2}) ?[-–] ?(\d{1,2})$`)

// rangeOfTab is the age group that the name of a tab gives by figures, alone or behind words for a sex or an age:
// "10-19", "Men 10-19", "Age range 10-19".
func rangeOfTab(tab string) (from, to int, ok bool) {
	m := ageRange.FindStringSubmatch(ageLabel.ReplaceAllString(tab, "Age "))
	if m == nil || slices.ContainsFunc(strings.Fields(fold(m[1])), func(w string) bool { return !groupPart[w] && !sexWords[w] }) {
		return 0, 0, false
	}
	return int(looseNumber(m[2])), int(looseNumber(m[3])), true
}

// ageTabs says whether two tabs or more are called after nothing but ages, one of them no day: "10-19" beside "20-29".
func ageTabs(tabs []string) bool {
	n, sure := 0, false
	for _, tab := range tabs {
		if from, to, ok := rangeOfTab(tab); ok {
			if from%5 != 0 || to-from != 4 && to-from != 9 {
				return false
			}
			n++
			sure = sure || from >= 15
		}
	}
	return n > 1 && sure
}

// agesOfTab says whether the name of a tab is an age group, by itself or beside the other tabs.
func (s *Sheet) agesOfTab(tab string) bool {
	_, _, ages := rangeOfTab(tab)
	return saysAges(tab) || ageLabel.MatchString(tab) && saysWho(tab) || s.ageTabs && ages
}

// ageWord is a word, or the sign of an age without an end, as no number of a week has: "S13".
var ageWord = regexp.MustCompile(`\pL{3}|\+`)

// lettersThenAges are an age group with its letters right before the figures.
var lettersThenAges = regexp.MustCompile(`^\pL{1,2}\d{1,2}[-–]\d{1,2}$`)

// agesAlone are those of an age group whose first figures are no month.
var agesAlone = regexp.MustCompile(`^(?:1[5-9]|[2-9]\d)[-–]\d\d$`)

// decade is an age group of ten years, "30s", or one without an end, "50+".
var decade = regexp.MustCompile(`^(?:[1-9]0['’]?s|[2-9]\d ?\+)$`)

// saysAges says whether the name of a tab is an age group, and no day: "F10-19", "35-44", "30s".
func saysAges(tab string) bool {
	return (lettersThenAges.MatchString(tab) || agesAlone.MatchString(tab)) && saysWho(tab) || decade.MatchString(tab)
}

// sexOfFile is the word for a sex at the end of a file's name, behind a name or a date
// or before nothing but figures, and in letters enough to be no initial: "alder-bank
// 2026-01-03 women.xlsx", "women 2009.txt"; "" for none.
func sexOfFile(name string) string {
	words := strings.FieldsFunc(baseStem(name), func(r rune) bool { return strings.ContainsRune(" _-.()", r) })
	n := len(words) - 1
	for n > 0 && digitsOnly(words[n]) {
		n--
	}
	if len(words) > 1 && n >= 0 && len(words[n]) >= 3 && sexWords[fold(words[n])] && !neitherSex[fold(words[n])] && !placesToo[fold(words[n])] {
		return words[n]
	}
	return ""
}

// placesToo are words for a sex in one language that names of places and days end in in another: the
// village fete, a stand of fir, almshouses.
var placesToo = set("fete fir homes mara")

// sexLabels stand before a sex, or before words that it was not said. Common practice, no source.
var sexLabels = set("sex gender geschlecht sexe genre sexo genero sesso geslacht kon kjonn plec pohlavi sukupuoli")

var neitherSex = set("nonbinary divers diverse unspecified other pan mand herre dame dam")

// tabGroups are the letters that groups in the names of tabs begin with.
var tabGroups = set("m w f l u v s d h mu wu fu mv wv fv lv vm vw vf vl sm sw sf sl jm jw jf jl ms ws fs mj wj")

// sectionText leaves the words of a section that say the sex or group.
func sectionText(text string) string {
	text = withoutHeat(withoutOpening(withoutOrder(closed(text))))
	if label, rest, ok := strings.Cut(text, " "); ok && sexLabels[strings.TrimSuffix(fold(label), " ")] {
		if rest = strings.Trim(rest, " :"); len([]rune(rest)) == 1 || isSexWord(rest) {
			return rest // "Sex: F", and not "Sex not stated"
		}
	}
	if k := kindOf(text); text == "" || k == kSex || k == kGroup {
		return text
	}
	if rest := strings.TrimSuffix(text, "の部"); rest != text {
		return rest
	}
	var words []string
	for _, w := range strings.Fields(text) {
		if !besideCategory(fold(w)) && !timeOfStart.MatchString(w) {
			words = append(words, strings.Trim(w, ":,()'’"))
		}
	}
	return strings.Join(words, " ")
}

// timeOfStart is the time of day at which a group started, beside its name: "Ladies' race, 10.00".
var timeOfStart = regexp.MustCompile(`^\(?\d{1,2}[:.][0-5]\d(?:am|pm)?\)?$`)

// lastTitle is the last title that is more than a date or a distance, "" for none.
func lastTitle(titles []string) string {
	for _, t := range slices.Backward(titles) {
		if _, from, to, ok := findDistance(t); !isDate(t) && !(ok && from == 0 && to == len(t)) {
			return t
		}
	}
	return ""
}

// sectionBetween is the last section above a row of data and below another that names a sex
// or a group, "" for none.
func sectionBetween(sections map[int]string, after, below int) (text string) {
	last := after
	for row, t := range sections {
		if row > last && row < below {
			last, text = row, t
		}
	}
	if !isSection(text) {
		return ""
	}
	return text
}

// addSections adds a column that carries the section a row stands under.
func (s *Sheet) addSections(p *Part, sections map[int]string, first string) {
	sex, all := 0, len(sections)
	for _, text := range sections {
		if sectionKind(text) == kSex {
			sex++
		}
	}
	if first != "" {
		all++
		if sectionKind(first) == kSex {
			sex++
		}
	}
	m := AgeGroup
	if sex == all {
		m = Sex
	} else if p.Index(AgeGroup) >= 0 && p.Index(Sex) < 0 {
		// "Senior men" over rows that have a column of groups says the sex.
		if own := sexesOfSections(sections, &first); own != nil {
			m, sections = Sex, own
		}
	}
	if at := p.Index(m); at >= 0 {
		if !p.blank(at) {
			return
		}
		c := &p.Columns[at]
		c.Meaning, c.Why = Other, fmt.Sprintf("heading %q, but it has nothing in it", c.Heading)
	}
	for row, text := range sections {
		sections[row] = sectionText(text)
	}
	p.rules.sections, p.rules.firstSection = sections, sectionText(first)
	p.rules.sectionColumn = p.addColumn("(section)", m, "lines between the rows, such as “"+orText(first, anySection(sections))+"”")
}

// sexesOfSections leaves of every section the word for the sex, nil where one has none.
func sexesOfSections(sections map[int]string, first *string) map[int]string {
	word := func(text string) string {
		said := ""
		for _, w := range strings.Fields(fold(text)) {
			switch {
			case !sexWords[w] || len([]rune(w)) < 3:
			case said != "":
				return ""
			default:
				said = w
			}
		}
		return said
	}
	out := map[int]string{}
	for row, text := range sections {
		if out[row] = word(text); out[row] == "" {
			return nil
		}
	}
	if *first != "" {
		said := word(*first)
		if said == "" {
			return nil
		}
		*first = said
	}
	return out
}

// addColumn adds a column that is not on the sheet, and gives its index.
func (p *Part) addColumn(heading string, m Meaning, why string) int {
	at := len(p.Columns)
	p.Columns = append(p.Columns, Column{Index: at, Heading: heading, Meaning: m, Why: why})
	p.rules.columns = len(p.Columns)
	return at
}

// blank says whether a column has nothing in any row.
func (p *Part) blank(at int) bool {
	blank := true
	err := p.Each(func(_ int, cells []string) error {
		if blank = trim(cellAt(cells, at)) == ""; !blank {
			return errStop
		}
		return nil
	})
	return blank && err == nil
}

// anySection is the section of the lowest row.
func anySection(sections map[int]string) string {
	first := 0
	for row := range sections {
		if first == 0 || row < first {
			first = row
		}
	}
	return sections[first]
}
