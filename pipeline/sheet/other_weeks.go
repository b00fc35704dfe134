package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// A sheet of one run may also say what was the week before, what has been run this season, or
// who starts when in the next: under a line that says so, and often in the same columns.

// Words for that, folded. Common practice, no source.
var (
	lastWeek  = regexp.MustCompile(` (?:(?:last|previous|prior) (?:weeks?|runs?|races?|time|month|months|saturdays?|sundays?)|week before|vorwoche|(?:letzte|letzter|vorige|voriger) woche|(?:letzter|voriger) lauf|semaine (?:derniere|precedente|passee)|course precedente|semana (?:pasada|anterior|passada)|carrera anterior|settimana (?:scorsa|precedente)|gara precedente|(?:vorige|afgelopen) (?:week|loop)|forra veckan|forrige (?:uke|uge)|sidste uge|zeszly tydzien|w zeszlym tygodniu) `)
	nextWeek  = regexp.MustCompile(` (?:next (?:weeks?|runs?|races?)|(?:dates?|days?) for your (?:diary|diaries|calendar)|(?:forthcoming|upcoming|future|coming) (?:runs|races|events|fixtures|dates)|entries (?:for|close|open)|(?:nachste|nachster) (?:woche|lauf)|semaine prochaine|prochaine course|(?:semana|carrera) (?:proxima|que viene)|proxima (?:semana|carrera|gara|corrida)|settimana prossima|prossima gara|volgende (?:week|loop)|nasta vecka|neste uke|naeste uge|przyszly tydzien) `)
	bestSoFar = regexp.MustCompile(` (?:(?:age ?groups?|category|club|county|district) bests?|(?:seasons?|years?) (?:bests?|records?|fastest|quickest)|so far|(?:bests?|fastest)(?: times?)? (?:this (?:season|year)|of the (?:season|year))|(?:saison|jahres)best(?:zeiten|zeit|en|leistungen|liste)|bestenliste|meilleurs? (?:temps|performances?)|mejores (?:tiempos|marcas)|migliori (?:tempi|prestazioni)|melhores (?:tempos|marcas)|beste tijden|seizoensbeste|(?:basta|bedste|beste) tider|arsbasta|najlepsze czasy) `)
	calledOff = regexp.MustCompile(` (?:cancelled|canceled|called off|no run|abgesagt|ausgefallen|entfallt|fallt aus|annulee?|cancelad[ao]|suspendid[ao]|anulad[ao]|annullat[ao]|afgelast|geannuleerd|installd|installt|innstilt|avlyst|aflyst|odwolan[ya]) `)
)

// ofOtherWeeks says whether a line is over a list that is of no one run, or of one of another
// week: "Last week's results", "Season's best so far", "Next week's starters", "All-time top
// five". One with a time in it is a line of such a list by itself.
func ofOtherWeeks(line string) bool {
	f := " " + fold(line) + " "
	if announces(line, f) {
		return false
	}
	return !hasClock(line) && len(strings.Fields(f)) <= 9 && (anyWord(line, otherSports) || lastWeek.MatchString(f) || nextWeek.MatchString(f) || bestSoFar.MatchString(f) || allTimes.MatchString(f) || isRecord(strings.TrimSpace(f)))
}

// announces says whether a line with its folded form says when or where the next run is, and is
// over no list: "Next run: same place next Saturday", "See you next week".
func announces(line, folded string) bool {
	if !nextWeek.MatchString(folded) || lastWeek.MatchString(folded) {
		return false
	}
	first, _, _ := strings.Cut(strings.TrimSpace(folded), " ")
	_, value, labelled := strings.Cut(line, ":")
	return labelled && trim(value) != "" || farewells[first]
}

// farewells begin what is said until the next time.
var farewells = set("see until join bis hasta tot ci vi a ate pa do")

// undatedOtherWeeks says whether a line is over such a list and gives no day, on which it would
// be a run of its own.
func undatedOtherWeeks(line string) bool {
	return ofOtherWeeks(line) && len(findDates(line)) == 0
}

// otherSports over a list say that nobody ran. Common practice, no source.
var otherSports = set("bike bikes biking cycling cyclists bicycle swim swimming swimmers rowing duathlon triathlon radfahren schwimmen velo natation bicicleta natacion ciclismo nuoto fietsen zwemmen cykling simning")

// thisRun is a line that says of which run a sheet is up to where it goes on with the last run or
// the next: "Alder Bank 3 May 2026. Next run: 10 May", "Alder Bank, 3 May - next week Mill Leat".
func thisRun(line string) string {
	if strings.Contains(line, " | ") || !ofAnotherRun(line) {
		return line
	}
	for i := 1; i < len(line); i++ {
		if strings.IndexByte(".;,(-", line[i]) < 0 && !strings.HasPrefix(line[i:], "–") || !ofAnotherRun(line[i:]) || len(findDates(line[:i])) == 0 {
			continue
		}
		if rest := strings.Trim(line[i:], " .;,(-–"); ofAnotherRun(leadWords(rest, 4)) && !ofAnotherRun(line[:i]) {
			return strings.TrimRight(line[:i], " .;,(-–")
		}
	}
	return line
}

// leadWords are the first words of a text, n at most.
func leadWords(text string, n int) string {
	f := strings.Fields(text)
	return strings.Join(f[:min(n, len(f))], " ")
}

// ofAnotherRun says whether a line speaks of the last run or of the next.
func ofAnotherRun(line string) bool {
	if strings.Contains(line, " | ") {
		return false // cells over several lists
	}
	f := comparedWith.ReplaceAllString(" "+fold(line)+" ", " ")
	return lastWeek.MatchString(f) || nextWeek.MatchString(f)
}

// comparedWith is the last run where this one is compared with it: "same course as last week".
var comparedWith = regexp.MustCompile(` (?:as|than|like|wie|als|que|comme|como|come|dan|som|jak|jako|kuin) (?:last|the last|the previous|letzte|in der letzten|la|la derniere|de la|vorige|forra|sist|sidste|minule|w) \pL+ `)

// weekList is such a list among the rows of a table, with the line over it.
type weekList struct {
	rowRange
	line string
	rows int // how many are left out
}

// findOtherWeeks finds, among rows that share their columns, the lists under such lines: from
// the line, or from the first row where it is the title nearest above, to the next line of
// text, blank row or heading. A line that gives a day is over another run, which is read as
// such. It leaves everything where fewer than two rows with a time would be left.
func (r *rowRules) findOtherWeeks(g *grid) {
	if r.time < 0 {
		return
	}
	var found []weekList
	in, listed, kept := false, 0, 0
	end := func(row int) {
		if in {
			found[len(found)-1].to = row
		}
		in = false
	}
	begin := func(row int, line string) {
		found = append(found, weekList{rowRange: rowRange{from: row}, line: line})
		in, listed = true, 0
	}
	over := "" // the last line of text above the first row
	for i := range g.len() {
		row, cells := g.at(i)
		filled := rowFilled(cells)
		if row < r.first {
			if filled > 0 && !r.isHeading(cells, filled) {
				over = rowText(cells)
			}
			continue
		}
		if over != "" && undatedOtherWeeks(over) {
			begin(row, over)
		}
		over = ""
		text := ""
		if filled == 1 || filled == 2 {
			text = titleText(cells)
		}
		switch {
		case filled == 0 || in && listed > 0 && !g.adjoins(i) || r.isHeading(cells, filled):
			if listed > 0 {
				end(row)
			}
		case filled == 1 && kindOf(text) != kInt && kindOf(text) != kClock || filled == 2 && len(findDates(text)) > 0 && kindOf(cellAt(cells, r.time)) != kClock:
			if in && clockInside.MatchString(text) {
				found[len(found)-1].rows++ // a line of it in one cell
			}
			end(row)
			if undatedOtherWeeks(text) {
				begin(row, text)
			}
			continue
		}
		switch {
		case in && filled > 1:
			listed++
			found[len(found)-1].rows = listed
		case kept < 2 && kindOf(cellAt(cells, r.time)) == kClock:
			kept++
		}
	}
	if kept >= 2 {
		r.weeks = found
	}
}

// sayOtherWeeks says which lists of other weeks were left out.
func (p *Part) sayOtherWeeks(sheet string) {
	for _, w := range p.rules.weeks {
		if w.rows == 0 || w.from < p.rules.first || p.rules.last > 0 && w.from > p.rules.last {
			continue
		}
		p.problem(sheet, w.from, -1, place.Note, "table-left-out", shorten(w.line, 80), "results of this run", "")
	}
}

// onlyLastWeek says whether a line says that what stands under it is the last run's, and
// nothing more: "Last week's results:", not "Last week's winner was Jo Lee".
func onlyLastWeek(line string) bool {
	if first, _, cut := strings.Cut(line, " | "); cut {
		if word, _, _ := strings.Cut(fold(first), " "); listWord[word] {
			line = first // a sentence cut at its comma
		}
	}
	if !ofAnotherRun(line) || hasClock(line) || calledOff.MatchString(" "+fold(line)+" ") {
		return false
	}
	undated := cutSpans(line, false)
	if f := strings.Fields(fold(line)); len(f) > 2 && listWord[f[0]] && len(f) < 16 && !hasDigit(undated) {
		return true // "Results of last week, here again as some were wrong"
	}
	whole := " " + fold(undated) + " "
	left := lastWeek.ReplaceAllString(whole, "  ")
	rest, _ := wordsBeside(line)
	n := 0
	for _, w := range strings.Fields(left) {
		if rest[w] || digitsOnly(w) {
			n++
		}
	}
	return len(left) < len(whole) && n <= 1
}

// askOtherWeek leaves the date of a part open where the lines above say that its results are
// not of the day they give: the run was called off, or the line nearest to the results says
// that they are last week's. It returns whether it did.
func (rs *runSettler) askOtherWeek(p *Part, evs []evidence) bool {
	own := p.ownTitles()
	if p.Index(Time) < 0 && len(p.rules.clock) == 0 || len(own) == 0 {
		return false
	}
	day := p.Date.Day
	off, before := "", ""
	for _, t := range own {
		f := " " + fold(t) + " "
		at := calledOff.FindStringIndex(f)
		if at == nil || nextWeek.MatchString(f) || lastWeek.MatchString(f) {
			continue
		}
		if dates := findDates(t); len(dates) > 0 && saysDate(t, day) || len(dates) == 0 && len(strings.Fields(f[:at[0]])) <= 1 && p.Date.From != "" {
			off = t
		}
	}
	if last := own[len(own)-1]; onlyLastWeek(last) && !saysDate(last, day) && !slices.ContainsFunc(p.rules.weeks, func(w weekList) bool { return w.line == last }) {
		before = last
	}
	if off == "" && before == "" {
		return false
	}
	choices, from := []unit.Day{day}, []string{"as the title says"}
	add := func(d unit.Day, why string) {
		if !slices.Contains(choices, d) {
			choices, from = append(choices, d), append(from, why)
		}
	}
	for _, e := range evs {
		if e.strength == 3 && e.settled() {
			add(e.readings[0].day(), "also above the results")
		}
	}
	if before != "" || len(choices) == 1 {
		add(day-7, "the week before: "+shorten(orText(before, off), 60))
	}
	p.Date.Settled, p.Date.Choices, p.Date.ChoiceFrom = false, choices, from
	return true
}

// Headings of columns of times that say only whether these are today's. Over a table they are
// titles, so that they are read as headings only where times stand under them. Common practice,
// no source.
var (
	todaysTimes = set("today actual heute aujourdhui hoy oggi vandaag idag hoje dzis dzisiaj dnes tanaan avui dagens", "todays time", "time today", "this week", "this wk", "this weeks time", "zeit heute", "diese woche", "temps du jour", "cette semaine", "esta semana", "questa settimana", "deze week", "denna vecka", "i dag")
	timesBefore = set("previous vorwoche", "last week", "last wk", "last weeks time", "time last week", "previous time", "previous week", "letzte woche", "semaine derniere", "semana pasada", "settimana scorsa", "vorige week", "forra veckan", "sidste uge", "forrige uke")
)

// timesOfToday takes the column under such a heading for the time, where no other is, and those
// of an earlier run for what was before.
func (s *settler) timesOfToday() {
	timed := s.hasTimes()
	for i, h := range s.headings {
		if c := s.columns[i].Meaning; c.isTime() || s.profiles[i].shareOf(kClock) < .8 || s.profiles[i].filled == 0 {
			continue
		}
		switch f := fold(h); {
		case timesBefore[f]:
			s.set(i, PersonalBest, "heading %q: the time of an earlier run", h)
		case overTodays(f) && !timed:
			s.set(i, Time, "heading %q: the time of this run", h)
			timed, s.todays = true, true
		}
	}
}

// attendance says whether the rows without a time are of people who were not there: on a list without places
// they are just those without the tick that all others have in one column, "Present".
func (s *settler) attendance() {
	clock := s.find(Time)
	if clock < 0 || s.find(Position) >= 0 || s.profiles[clock].filled < 2 {
		return
	}
	for i, c := range s.columns {
		if c.Meaning != Other || s.profiles[i].filled != s.profiles[clock].filled || len(s.profiles[i].distinct) != 1 {
			continue
		}
		same := true
		for _, r := range s.rows {
			mark := trim(cellAt(r.cells, i))
			same = same && (mark == "" || ticked(mark)) && (mark == "") == isBlank(cellAt(r.cells, clock))
		}
		if same {
			s.columns[i].Why = fmt.Sprintf("heading %q: who was there, as only those have times", s.headings[i])
			s.todays = true
			return
		}
	}
}

// hasTicks says whether a column of no other meaning has nothing but one mark.
func (s *settler) hasTicks() bool {
	for i, c := range s.columns {
		if c.Meaning != Other || len(s.profiles[i].distinct) != 1 {
			continue
		}
		for mark := range s.profiles[i].distinct {
			if ticked(mark) {
				return true
			}
		}
	}
	return false
}

// newBests takes the column of new bests for the time, where no other is and one of the bests before them
// stands beside it: "Old PB | New PB". Each was run on the day of the list, by some of its field.
func (s *settler) newBests() {
	if s.hasTimes() {
		return
	}
	before, now := -1, -1
	for i, h := range s.headings {
		if s.profiles[i].shareOf(kClock) < .8 || s.profiles[i].filled == 0 {
			continue
		}
		switch first, rest, _ := strings.Cut(fold(h), " "); {
		case s.lex.read(rest).meaning != PersonalBest:
			return
		case nowBest[first] && now < 0:
			now = i
		case beforeBest[first] && before < 0:
			before = i
		default:
			return
		}
	}
	if before >= 0 && now >= 0 {
		s.set(before, PersonalBest, "heading %q", s.headings[before])
		s.set(now, Time, "heading %q, beside %q: the time of this run", s.headings[now], s.headings[before])
		s.newBest = true
	}
}

// nowBest and beforeBest stand before a best. Common practice, no source.
var (
	nowBest    = set("new neue neu nouveau nouvelle nuevo nueva nuovo nuova novo nova nieuw nieuwe ny nye nya uusi nowy nowa novy uj nou noua newydd uus naujas")
	beforeBest = set("old previous former alte alt bisherige ancien ancienne anterior viejo vecchio precedente antigo oud oude vorige gammal gamla gammel tidligere vanha stary stara puvodni regi vechi hen vana senas")
)

// overTodays says whether a folded heading is over the times of today.
func overTodays(f string) bool { return todaysTimes[f] || todaysTimes[withoutTimeWord(f)] }

// withoutTimeWord leaves the word for a time out of a folded heading, at its beginning or its end: "tid
// i dag", "czas dzisiaj", "dagens tid".
func withoutTimeWord(f string) string {
	first, rest, _ := strings.Cut(f, " ")
	if headingWords[first] == cTime {
		return rest
	}
	if last := finalWord(f); last != f && headingWords[last] == cTime {
		return strings.TrimSuffix(f, " "+last)
	}
	return f
}
