package sheet

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

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
		f := rs.titleCourse(p)
		ranked, within := p.oneRanking(p.runs.courseCol), -1
		if ranked {
			within = p.placesWithin(p.runs.courseCol)
		}
		if f.Value != "" && ranked && within < 0 && !rs.listsCourses(p) && (!fromPath(f.From) || p.headsHomes(p.runs.courseCol)) {
			p.Course, p.runs.course = f, f.Value
			p.Columns[p.runs.courseCol].Meaning = Other
			p.Columns[p.runs.courseCol].Why += ", but one ranking goes through all its places, and a title names the course: where people live or run mostly"
			p.runs.courseCol = -1
			return
		}
		if f.Value != "" {
			p.runs.course = f.Value
		}
		p.placesOfCourses(within)
		return
	default:
		if d, n, ok := rs.listed(p); ok && len(Slug(d.course)) >= 3 {
			p.Course = Found{Value: rs.book.slug(d.course), Text: d.course, From: fmt.Sprintf("tab %q", d.tab), Why: fmt.Sprintf("it gives number %d this course", n)}
			break
		}
		besides := rs.coursesBesideDates(p)
		if besides < 2 {
			p.Course = rs.titleCourse(p)
		}
		if besides > 0 && (p.Course.Value == "" || p.Course.From == "file name" && !rs.book.holds(p.Course.Value) && !runFile.MatchString(baseStem(rs.sheet.Name))) {
			p.runs.courseCol, p.runs.cutDates = p.Index(Date), true
			p.Course = Found{From: "column " + letters(p.runs.courseCol), Why: "beside the date in each cell"}
			return
		}
		if p.Course.Value == "" && rs.o.CourseBefore != "" {
			p.Course = Found{Value: rs.book.slug(rs.o.CourseBefore), From: "other sheets", Why: rs.o.CourseWhy}
		}
	}
	p.runs.course = p.Course.Value
}

// titleCourse is the course that titles, tab, file and folders name, with the route of its
// venue where one is named.
func (rs *runSettler) titleCourse(p *Part) Found { return rs.onRoute(p, rs.namedCourse(p)) }

func (rs *runSettler) namedCourse(p *Part) Found {
	type cand struct {
		courseWord
		from string
		lent bool   // from a line over a table above
		seat bool   // the office's own words
		line string // the title
		at   int    // its index
	}
	var cs []cand
	saysRun := map[string]bool{} // title lines with a word for a run: "The Heron Run"
	races := rs.racesOfTab(p)
	above, below := besideTheDay(p.Titles, rs.lex)
	letter := isLetterHead(p.Titles)
	keys := keyLines(p.Titles)
	seated := seats(p.Titles)
	for i, t := range p.Titles {
		t = thisRun(t)
		if label, _, ok := strings.Cut(t, ":"); ok && letter && fromWords[fold(label)] {
			continue // who sent it
		}
		if i == len(p.Titles)-1 && p.HeadingRow == 0 && len(p.Columns) > 2 && hasNoDigit(t) && strings.Count(t, " | ")+1 == len(p.Columns) && !strings.Contains(t, "|  |") && !strings.HasSuffix(t, "| ") {
			continue // headings in words that nobody here knows
		}
		_, _, _, saysDistance := findDistance(t)
		saysRun[p.titleAt(i)] = anyWord(t, runLegWords)
		for _, w := range rs.courseWords(t) {
			w.weight -= min(i, 5) // earlier lines first
			if key := keys[i]; key != "" && w.why == leftOfTitle && strings.Contains(key, w.text) {
				continue
			}
			if w.why == leftOfTitle && (below[i] || ofAnotherRun(t)) {
				continue
			}
			if w.why == leftOfTitle && i+1 < len(p.Titles) && saysSince(p.Titles[i+1]) {
				w.weight -= ofClubOnly // "Mill AC", "running since 1987"
			}
			if w.why == leftOfTitle && above[i] {
				w.weight -= besideDay
			}
			seat := w.why == leftOfTitle && fromSeat(seated, w.text)
			if seat && !namesOffice(t) && !isAddress(t) || w.why == leftOfTitle && inState(t, w.text) {
				w.weight -= ofOffice
			}
			if races && saysDistance && w.why == leftOfTitle && !endsInLand(w.text) && len(findDates(t)) == 0 {
				w.weight = min(w.weight, raceOfTab) // "Junior dash 2k", "Main race 5k", but "Alder Bank 5k" names the place, and a line with the day the sheet
			}
			cs = append(cs, cand{courseWord: w, from: p.titleAt(i), lent: i >= len(p.Titles)-p.lent, seat: seat, line: t, at: i})
		}
	}
	if weight := 35; p.Tab != "" && !p.ofRunner && !p.headed(p.Tab) && (!rs.oneTab() || !rs.namedByFile(p.Tab)) && !rs.oneField() {
		if rs.oneTab() && len(findDates(p.Tab)) == 0 { // a tab that says the day is called after its run
			weight = 25
		}
		if slug, ok := rs.book.within(p.Tab); ok {
			cs = append(cs, cand{courseWord: courseWord{text: p.Tab, slug: slug, weight: 97, why: "a known course"}, from: "tab name"})
		} else if text, slug := rs.courseOfTab(p); slug != "" {
			cs = append(cs, cand{courseWord: courseWord{text: text, slug: slug, weight: weight, why: "what is left of the tab's name without date and general words"}, from: "tab name"})
		}
	}
	if p.place.slug != "" && !races {
		cs = append(cs, cand{courseWord: courseWord{text: p.place.text, slug: p.place.slug, weight: 90, why: "the line over these rows, as others stand over the other lists of the sheet"}, from: "line over the rows"})
	}
	for _, w := range rs.files {
		from := "file name"
		if strings.HasPrefix(w.why, "folder") {
			from = "folder name"
		}
		if p.ofRunner {
			w = w.withoutRunners()
		}
		cs = append(cs, cand{courseWord: w, from: from})
	}
	cs = slices.DeleteFunc(cs, func(c cand) bool {
		return noCourseYet(c.text) || c.why == leftOfTitle && p.listsRunner(c.text) || (c.why == leftOfTitle || c.from == "tab name") && rs.clubOfLines(p, c.text)
	})
	for i, c := range cs { // a school is the place where only what is run there stands beside it
		if c.why == leftOfTitle && anyWord(c.text, schoolWords) {
			for j, o := range cs {
				switch {
				case o.why != leftOfTitle || anyWord(o.text, schoolWords):
				case o.from != c.from:
					cs[i].weight -= ofSchool
				default:
					cs[j].weight -= ofSchool
				}
			}
		}
	}
	// A line of its own that names no feature of the land gives way to one below it that does: "Jean" and
	// "Working copy" stand over "Alder Common". A line that says more of the run keeps its weight.
	for i, c := range cs {
		if c.why == leftOfTitle && c.weight <= bareTitle && !saysRun[c.from] && !endsInLand(c.text) &&
			slices.ContainsFunc(cs[i+1:], func(o cand) bool {
				return o.why == leftOfTitle && o.from != c.from && !o.lent && endsInLand(o.text) && o.weight > c.weight-ofRemark
			}) {
			cs[i].weight -= ofRemark
		}
	}
	// A file that is called after a place says more than a line that says neither place nor day, "Watch 1" over the
	// times, "Funnel list" over the names; beside a name of several words it is asked which is meant.
	bare := func(c cand) bool {
		return c.why == leftOfTitle && !endsInLand(c.text) && len(findDates(c.line)) == 0 && !rs.book.holds(c.slug) && (p.Kind != "full" || c.weight <= bareTitle && !saysRun[c.from])
	}
	placed := func(c cand) bool {
		return c.from == "file name" && (c.weight >= fileWithDay && p.Kind != "full" || wordsOfPlace(c.slug) != nil)
	}
	if file := slices.IndexFunc(cs, placed); file >= 0 {
		for i, c := range cs {
			if bare(c) && !shareWord(c.slug, cs[file].slug) && (cs[file].weight >= fileWithDay || sentence(c.line) || !isName(c.text) || !strings.Contains(c.text, " ")) {
				cs[i].weight = min(c.weight, cs[file].weight-1)
			}
		}
	}
	several := slices.ContainsFunc(cs, func(c cand) bool { return c.slug != cs[0].slug })
	for i := range cs {
		if several && cs[i].why == leftOfTitle && p.listsClub(cs[i].text) {
			cs[i].weight -= ofClubOnly
		}
	}
	// Two places that name the same course confirm each other, with its article or without.
	// Lines over other tables agree on where those were, those of an office on where it sits.
	apart := func(a, b cand) bool { return a.from != b.from && !(a.lent && b.lent) && !(a.seat && b.seat) }
	for i := range cs {
		for j := range cs {
			if apart(cs[i], cs[j]) && withoutArticle(cs[j].slug) == cs[i].slug {
				cs[i].slug, cs[i].text = cs[j].slug, cs[j].text
				break
			}
		}
	}
	for i := range cs {
		for j := range cs {
			if apart(cs[i], cs[j]) && (cs[i].slug == cs[j].slug || strings.HasPrefix(cs[i].slug, cs[j].slug+"-") && strings.HasPrefix(cs[j].from, "file")) {
				if cs[i].slug == cs[j].slug && !cs[i].small && !cs[j].small {
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
		return p.askedCourse(rs)
	}
	asked := false
	if tab := slices.IndexFunc(cs, func(c cand) bool { return c.from == "tab name" && c.why != "a known course" && !fileDull(c.slug) }); tab >= 0 && rs.oneTab() && cs[best].why == "file name" && cs[best].weight < fileWithDay && !shareWord(cs[best].slug, cs[tab].slug) && !rs.book.holds(cs[best].slug) {
		if cs[best].text != strings.ToLower(cs[best].text) || !startsUpper(cs[tab].text) {
			p.ask(rs.sheet.Name, -1, "course-unclear", fmt.Sprintf("%s (%s), %s (%s)", cs[tab].text, cs[tab].from, cs[best].text, cs[best].from), "one course", "Which course was this?", "--course "+cs[tab].slug, "--course "+cs[best].slug)
			asked = true
		}
		best = tab // a file in small letters is called after what it is, "long list"
	}
	f := Found{Value: cs[best].slug, Text: cs[best].text, From: cs[best].from, Why: cs[best].why}
	if asked {
		return f
	}
	if unsure, either := unsurePlace(cs[best].line, f.Text); unsure && !slices.ContainsFunc(cs, func(c cand) bool { return c.line == "" && c.slug == f.Value }) {
		answers := []string{"--course " + f.Value}
		if either != nil {
			answers = nil
			for _, name := range either {
				answers = append(answers, "--course "+rs.book.slug(name))
			}
		}
		p.ask(rs.sheet.Name, -1, "course-unclear", cs[best].line, "one course, of which somebody is sure", "Which course was this?", answers...)
		return f
	}
	remark := bare(cs[best]) && cs[best].weight <= bareTitle
	for _, c := range cs {
		if rs.oneTab() && saysTwoPlaces(cs[best].courseWord, cs[best].from, c.courseWord, c.from) && rs.book.holds(f.Value) == rs.book.holds(c.slug) ||
			remark && c.from == "file name" && (placed(c) || sentence(cs[best].line)) && !shareWord(f.Value, c.slug) {
			p.ask(rs.sheet.Name, -1, "course-unclear", fmt.Sprintf("%s (%s), %s (%s)", f.Text, f.From, c.text, c.from), "one course", "Which course was this?", "--course "+f.Value, "--course "+c.slug)
			return f
		}
	}
	if b := cs[best]; !letter && b.why == leftOfTitle && !saysRun[b.from] && !b.lent && isName(b.text) && !endsInLand(b.text) && !rs.book.holds(f.Value) {
		for _, c := range cs {
			if c.why == leftOfTitle && c.from != b.from && max(c.at-b.at, b.at-c.at) <= 2 && !c.lent && !c.small && !sentence(c.line) && isName(c.text) && !shareWord(b.slug, c.slug) && sayAsMuch(b.courseWord, c.courseWord, b.line, c.line) {
				p.ask(rs.sheet.Name, -1, "course-unclear", fmt.Sprintf("%s (%s), %s (%s)", f.Text, f.From, c.text, c.from), "one course", "Which course was this?", "--course "+f.Value, "--course "+c.slug)
				return f
			}
		}
	}
	if known := rs.book.butArticle(f.Value); known != "" {
		f.Value, f.Why = known, "a known course, but for the article"
	} else if known, sure := rs.book.near(f.Value); sure {
		p.problem(rs.sheet.Name, 0, -1, place.Look, "course-spelling", f.Text, known, fmt.Sprintf("It was taken for the course %s. If it is another course, load the sheet with --course.", known))
		f.Value, f.Why = known, "one letter differs from a known course"
	} else if known != "" {
		p.ask(rs.sheet.Name, -1, "course-unclear", f.Text, fmt.Sprintf("%s or a new course %s", known, f.Value), "Which course was this?", "--course "+known, "--course "+f.Value)
	}
	return f
}

// sayAsMuch says whether of two lines the second may name the course as well as the first: both have
// nothing but a name, or the first has the distance, "Holme 5k", and the second the day, "Tollgate, 3 May 2026".
func sayAsMuch(a, b courseWord, lineA, lineB string) bool {
	if a.weight <= bareTitle {
		return b.weight >= a.weight-2
	}
	_, _, _, distanceA := findDistance(lineA)
	_, _, _, distanceB := findDistance(lineB)
	return distanceA && !distanceB && len(findDates(lineA)) == 0 && len(findDates(lineB)) > 0 && b.weight >= bareTitle && a.weight <= bareTitle+15
}

// ofRemark is what a line that names no feature of the land weighs less than one that does: as much
// as lines between them can.
const ofRemark = 6

// endsInLand says whether a text is a name of two words or more, the last of which is a feature of the
// land, and not where to put a car.
func endsInLand(text string) bool {
	words := strings.Fields(fold(text))
	n := len(words)
	return n > 1 && landWords[words[n-1]] && isName(text) && words[n-2] != "car"
}

// shareWord says whether two slugs have a word in common, or one begins as the other does.
func shareWord(a, b string) bool {
	words := strings.Split(b, "-")
	return strings.HasPrefix(a, b) || strings.HasPrefix(b, a) || slices.ContainsFunc(strings.Split(a, "-"), func(w string) bool { return slices.Contains(words, w) })
}

// listsCourses says whether the column of courses is headed as one, and not as of where somebody lives, and most of
// its texts are called after the land or known: those of two or three runs of a day in one ranking.
func (rs *runSettler) listsCourses(p *Part) bool {
	if p.headsHomes(p.runs.courseCol) {
		return false
	}
	texts, named := columnTexts(p, p.runs.courseCol), 0
	for _, text := range texts {
		if endsInLand(text) || rs.book.holds(rs.book.slug(text)) {
			named++
		}
	}
	return p.coursesTold || 2*named >= len(texts) && named > 1
}

// headsHomes says whether a column of courses is headed as one of where people live or run mostly may be.
func (p *Part) headsHomes(column int) bool {
	return slices.ContainsFunc(strings.Fields(fold(p.Columns[column].Heading)), func(w string) bool { return homeWords[w] })
}

// placesWithin is the index of the column that counts from 1 on within each course of a ranking that goes through all
// of them: "Overall | Course | Course place"; -1 for none.
func (p *Part) placesWithin(courses int) int {
	for i, c := range p.Columns {
		if c.Meaning != Other && c.Meaning != GroupPlace || c.Index >= len(p.rules.kinds) {
			continue
		}
		n, all := map[string]int{}, true
		p.Each(func(_ int, cells []string) error {
			course, v := fold(cellAt(cells, courses)), trim(cellAt(cells, c.Index))
			n[course]++
			all = all && digitsOnly(v) && int(looseNumber(v)) == n[course]
			return nil
		}) // was read without an error before
		if all && len(n) > 1 {
			return i
		}
	}
	return -1
}

// placesOfCourses takes such a column for the places.
func (p *Part) placesOfCourses(within int) {
	if within < 0 {
		return
	}
	through := p.column(p.Index(Position))
	through.Meaning, through.Why = Other, through.Why+", but it counts through all courses"
	p.Columns[within].Meaning, p.Columns[within].Why = Position, "it counts from 1 on within each course"
	p.rules.pos = p.Columns[within].Index
}

// homeWords head columns of courses and of where people live or run mostly. Common practice, no source.
var homeWords = set("location locations place site lieu local sede ort luogo lugar plats sted lokacija locatie locatia helyszin paikka from home town")

// oneRanking says whether one ranking goes through the lines of all values of a column: the places count from
// the first on, those of one time or line twice aside, and their times rise with them, while several values
// begin in its midst. Lines without a place are passed over.
func (p *Part) oneRanking(column int) bool {
	pos, clock := p.Index(Position), p.Index(Time)
	if !p.Whole || pos < 0 || clock < 0 {
		return false
	}
	n, last, at, begun, inner := 0, 0.0, 0, map[string]bool{}, 0
	err := p.Each(func(_ int, cells []string) error {
		place := trim(cellAt(cells, pos))
		if hasNoDigit(place) {
			return nil
		}
		k, t := int(looseNumber(strings.TrimRight(place, "."))), secondsOf(cells, clock)
		if k != at || t != last {
			at++
		}
		if n++; n > maxRanked || t < last || k != at && k != n {
			return errNoRanking
		}
		at, last = k, t
		if v := fold(cellAt(cells, column)); v != "" && !begun[v] {
			begun[v] = true
			if n > 1 {
				inner++
			}
		}
		return nil
	})
	return err == nil && n >= 6 && inner > 0 && !p.inTurn(column)
}

// maxRanked is how many lines a ranking has at most that is looked through.
const maxRanked = 5000

var errNoRanking = errors.New("no ranking")

// inTurn says whether the lines of each value of a column stand together, as lists under one another do.
func (p *Part) inTurn(column int) bool {
	last, done, together := "", map[string]bool{}, true
	p.Each(func(_ int, cells []string) error {
		v := fold(cellAt(cells, column))
		if v != last {
			done[last] = true
			together = together && !done[v]
		}
		last = v
		return nil
	}) // was read without an error before
	return together
}

// saysTwoPlaces says whether a title on the one hand, and the file's or the tab's name on the other, name
// places that have no word in common, each with a feature of the land behind another word: one of them
// was left from another sheet. What else a title or a file is called after, a club, a month, a sponsor's
// name, is no such place.
func saysTwoPlaces(a courseWord, fromA string, b courseWord, fromB string) bool {
	title := func(from string) bool { return strings.HasPrefix(from, "title") }
	name := func(from string) bool { return from == "tab name" || from == "file name" }
	if !(title(fromA) && name(fromB) || name(fromA) && title(fromB)) || a.why == movedThere || b.why == movedThere || title(fromA) && a.weight < bareTitle-5 || title(fromB) && b.weight < bareTitle-5 {
		return false
	}
	x, y := wordsOfPlace(a.slug), wordsOfPlace(b.slug)
	return x != nil && y != nil && !slices.ContainsFunc(x, func(w string) bool { return slices.Contains(y, w) })
}

// wordsOfPlace are the words of a slug of two words or three that ends in a feature of the land, nil for
// other names.
func wordsOfPlace(slug string) []string {
	words := strings.Split(slug, "-")
	if n := len(words); n < 2 || n > 3 || !landWords[words[n-1]] {
		return nil
	}
	if slices.ContainsFunc(words, func(w string) bool { return clubWords[w] || titleWords[w] }) {
		return nil
	}
	return words
}

// askedCourse is the place that the question over the times names with a distance, in the answers to a
// form: "Your time at the Alder Bank 5k on 3 January 2026".
func (p *Part) askedCourse(rs *runSettler) Found {
	for _, c := range p.Columns {
		_, from, to, ok := findDistance(c.Heading)
		if c.Meaning != Time || !ok || len(strings.Fields(c.Heading)) < 5 {
			continue
		}
		before := placeIn(strings.TrimSpace(c.Heading[:from]))
		for _, piece := range []string{segments(cutDates(c.Heading[to:], true, "|"))[0], before} {
			name := plainWords(piece)
			if first, _, _ := strings.Cut(name, " "); len(Slug(name)) >= 3 && startsUpper(first) && name != plainWords(c.Heading[:from]) {
				return Found{Value: rs.book.slug(name), Text: name, From: "column " + letters(c.Index), Why: "the question over the times names it"}
			}
		}
	}
	return Found{}
}

// listsClub says whether a name of several words is that of a club of the table.
func (p *Part) listsClub(name string) bool {
	club := p.Index(Club)
	if club < 0 {
		return false
	}
	if p.clubs == nil {
		p.clubs = map[string]bool{}
		for _, cells := range p.sampled() {
			if c := fold(trim(cellAt(cells, club))); strings.Contains(c, " ") {
				p.clubs[c] = true
			}
		}
	}
	return p.clubs[fold(name)]
}

// clubOfLines says whether a name is that of a club of another table of the sheet, and half of those
// who stand under it here stand there too: the lines of a team once more.
func (rs *runSettler) clubOfLines(p *Part, name string) bool {
	if p.Index(Club) >= 0 || !p.named() {
		return false
	}
	for _, q := range rs.sheet.Parts {
		if q == p || !q.named() || !q.listsClub(name) {
			continue
		}
		there, here, both := map[string]bool{}, q.fullNames(), 0
		for _, cells := range q.sampled() {
			there[anyOrder(here(cells))] = true
		}
		here = p.fullNames()
		rows := p.sampled()
		for _, cells := range rows {
			if n := here(cells); n != "" && there[anyOrder(n)] {
				both++
			}
		}
		if both > 0 && 2*both >= len(rows) {
			return true
		}
	}
	return false
}

// listsRunner says whether a name of several words is that of somebody in the table, in any order of
// its words: "Fastest: Jo Lee" stands above the results as well.
func (p *Part) listsRunner(name string) bool {
	at := p.Index(Name)
	if at < 0 || !strings.Contains(name, " ") {
		return false
	}
	words := func(s string) string { return strings.Join(slices.Sorted(strings.FieldsSeq(fold(s))), " ") }
	if p.runners == nil {
		p.runners = map[string]bool{}
		for _, cells := range p.sampled() {
			if c := trim(cellAt(cells, at)); strings.Contains(c, " ") && clocksOf(cells) > 0 {
				p.runners[words(c)] = true
			}
		}
	}
	return p.runners[words(name)]
}

// courseOfTab is what the name of a part's tab has beside dates and general words; "" for
// nothing that may be a course.
func (rs *runSettler) courseOfTab(p *Part) (text, slug string) {
	text = besideDate(p.Tab, " -_")
	if _, day := dayAlone(p.Tab); day || len(Slug(text)) < 3 || !hasLetter(text) || helperTab(p.Tab) || isSection(text) || rs.sheet.agesOfTab(p.Tab) || saysField(p.Tab) || saysOrder(p.Tab) || saysColumn(rs.lex, p.Tab) || tabOfHalf(p.Tab) || leagueWords[fold(text)] {
		return "", ""
	}
	// A spreadsheet numbers a second tab of the same name: "Alder Bank", "Alder Bank1".
	if first := strings.TrimRight(text, "0123456789"); first != text && hasLetter(first) {
		for _, other := range rs.sheet.Parts {
			if other.Tab == first {
				return first, Slug(first)
			}
		}
	}
	return text, Slug(text)
}

// tabOfHalf says whether a tab is called after what half a result was taken with, "Watch",
// "Timer 2", "Barcodes A", or after nothing in particular.
func tabOfHalf(tab string) bool {
	for _, w := range strings.Fields(fold(tab)) {
		if len(w) > 1 && !dullFiles[w] && !titleWords[w] && !digitsOnly(w) {
			return false
		}
	}
	return true
}

// courseWords is the function of that name, asked once for every line: tables one under the
// other share lines.
func (rs *runSettler) courseWords(line string) []courseWord {
	words, known := rs.words[line]
	if !known {
		words = courseWords(line, rs.lex, rs.book)
		if rs.words == nil {
			rs.words = map[string][]courseWord{}
		}
		rs.words[line] = words
	}
	return words
}

// coursesBesideDates counts the courses that the cells of the dates name too, "Alder Bank
// 3/1/2026": 0 where not all name one.
func (rs *runSettler) coursesBesideDates(p *Part) int {
	col := p.Index(Date)
	if col < 0 {
		return 0
	}
	courses := map[string]bool{}
	for _, text := range columnTexts(p, col) {
		name := besideDate(text, dateMarks)
		if len(Slug(name)) < 3 || !hasLetter(name) || isSection(name) || saysField(name) || isRemark(name) || len(findDates(text)) == 0 {
			return 0
		}
		courses[rs.book.slug(name)] = true
	}
	return len(courses)
}

// dateMarks may divide a course from its date in a cell.
const dateMarks = " -–—_,;:()"

// besideDate is what a text says beside its date and general words, without marks at its ends.
func besideDate(text, marks string) string {
	return plainWords(strings.Trim(strings.ReplaceAll(cutSpans(text, true), "|", " "), marks))
}

// headed says whether a text is the heading of a column of the part, as a tab of times
// called "Tid" beside one called "Navn" is.
func (p *Part) headed(text string) bool {
	for _, c := range p.Columns {
		if c.Meaning != Other && c.Meaning != Course && fold(c.Heading) == fold(text) {
			return true
		}
	}
	return false
}

// besideDay is what the words of a line of another day weigh less: less than a name of a file
// then, more than nothing.
const besideDay = 40

// raceOfTab is the weight of what a line calls one of several races of a tab: less than any
// name that stands for all of them.
const raceOfTab = 5

// racesOfTab says whether the tab of a part has lists of several distances one under the
// other, each under a line that gives its own.
func (rs *runSettler) racesOfTab(p *Part) bool {
	if rs.races == nil {
		rs.races = map[tabOf]map[float64]bool{}
		for _, q := range rs.sheet.Parts {
			for _, t := range q.Titles {
				m, _, _, ok := findDistance(t)
				if !ok {
					continue
				}
				tab := tabOf{q.TabIndex, q.Tab}
				if rs.races[tab] == nil {
					rs.races[tab] = map[float64]bool{}
				}
				rs.races[tab][m] = true
				break
			}
		}
	}
	return len(rs.races[tabOf{p.TabIndex, p.Tab}]) > 1
}

// tabOf names a tab of a sheet.
type tabOf struct {
	index int
	name  string
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
