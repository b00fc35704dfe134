package sheet

import (
	"slices"
	"strings"
)

// sampled are the first rows of a table below its heading.
func (p *Part) sampled() (rows [][]string) {
	if p.src == nil {
		return nil
	}
	p.src.each(func(row int, cells []string) error {
		if row > p.HeadingRow && rowFilled(cells) > 1 {
			rows = append(rows, append([]string(nil), cells...))
		}
		if len(rows) > profileRows {
			return errStop
		}
		return nil
	}) // errStop is taken by the source
	return rows
}

// leastOfList is how many lines show what a list is of.
const leastOfList = 5

// listsRaces says whether a table without names goes through races, each with its own
// course and its day or year: a calendar, or what one runner has run.
func (p *Part) listsRaces(rows [][]string) bool {
	course, day := p.Index(Course), p.Index(Date)
	if at := p.Index(BirthYear); day < 0 && at >= 0 && raceYear[fold(p.Columns[at].Heading)] {
		day = at // a race was not born
	}
	if at := p.Index(Name); at >= 0 && strings.HasPrefix(p.Columns[at].Why, "its values") {
		// Notes of two words each look like names, and races do.
		if raceHeadings[fold(p.Columns[at].Heading)] {
			course = at
		}
	} else if p.named() {
		return false
	}
	if course < 0 || day < 0 {
		return false
	}
	n, runs, courses := 0, map[[2]string]bool{}, map[string]bool{}
	for _, r := range rows {
		if c, d := trim(cellAt(r, course)), trim(cellAt(r, day)); c != "" && d != "" {
			n++
			runs[[2]string{c, d}], courses[c] = true, true
		}
	}
	if 2*len(courses) <= n+1 && p.Index(Time) >= 0 && p.Index(Position) >= 0 && looksNamed(p.Tab) {
		return false // what one runner has run again and again, on a tab in the runner's name
	}
	return n >= leastOfList && 2*len(runs) > n
}

// raceHeadings are over the names of races.
var raceHeadings = set("meet meeting race event competition contest wettkampf wettbewerb lauf veranstaltung course epreuve competition carrera prueba gara manifestazione corrida prova wedstrijd evenement lopp tavling lop stevne kilpailu zavod zawody verseny yaris", "race name", "event name", "name of race", "name of event")

var raceYear = set("year jahr ano annee anno jaar ar rok rik god год рік evf")

// daysApart says whether each line of a table without places and numbers is of a day of
// its own, as on a list of records, and the lines are not those of one runner, who keeps
// a list of runs.
func (p *Part) daysApart(rows [][]string) bool {
	day := p.Index(Date)
	if day < 0 || p.named() && (p.Index(Position) >= 0 || p.Index(Number) >= 0) {
		return false
	}
	n, below, days, names, timed := 0, 0, map[string]bool{}, map[string]bool{}, p.Index(Time) >= 0
	for _, r := range rows {
		if timed && isBlank(cellAt(r, day)) && !hasNoDigit(cellAt(r, p.Index(Time))) {
			below++ // a line of the day above it
		}
		if d := trim(cellAt(r, day)); d != "" && (!timed || !hasNoDigit(cellAt(r, p.Index(Time)))) {
			n++
			if frame, _, ok := stamp(d); ok {
				d = frame // the day, of a day and a time of day
			}
			days[d] = true
			names[fold(cellAt(r, p.Index(Name))+cellAt(r, p.Index(FamilyName))+cellAt(r, p.Index(GivenName)))] = true
		}
	}
	return n >= leastOfList && below < n && 10*len(days) >= 9*n && (len(names) > 1 || !timed || p.headsWinner())
}

// headsWinner says whether a column is headed with who won, as in a diary of runs with a line
// for each: "Date | Winner | Winning time | First lady | Runners".
func (p *Part) headsWinner() bool {
	return slices.ContainsFunc(p.Columns, func(c Column) bool { return c.Meaning == Other && headsFirst(c.Heading) })
}

// headsFirst says whether a heading is that of who was the first, of all or of the men, the women,
// the juniors.
func headsFirst(heading string) bool {
	f := fold(heading)
	if first, whom, ok := strings.Cut(f, " "); ok && oneOfSex[whom] && (firstWords[first] || fastestWords[first]) {
		return true
	}
	return anyWord(heading, winnerWords) || firstOf[f]
}

// headsFirsts says whether two columns or more are headed with who was the first, of the men, the
// women, the juniors, on lines that have a day each.
func (p *Part) headsFirsts(rows [][]string) bool {
	firsts, day, days := 0, p.Index(Date), map[string]bool{}
	for _, c := range p.Columns {
		if headsFirst(c.Heading) {
			firsts++
		}
	}
	if firsts < 2 || day < 0 {
		return false
	}
	for _, r := range rows {
		d := trim(cellAt(r, day))
		if days[d] {
			return false
		}
		days[d] = true
	}
	return true
}

// Words for that. Common practice, no source.
var (
	winnerWords  = set("winner winners sieger siegerin gewinner vainqueur vainqueurs gagnant ganador ganadora ganadores vincitore vincitrice vincitori winnaar winnares vencedor vencedora vinnare vinnar vinder voittaja zwyciezca")
	firstOf      = set("", "first home", "first male", "first female", "1st male", "1st female", "eerste heer", "forste mand", "elso ferfi", "elso no")
	fastestWords = set("fastest quickest schnellste schnellster beste bester snelste snabbaste hurtigste raskeste najszybszy najszybsza nejrychlejsi")
)

// legsInARow says whether each line begins where the one above it ends, as the legs of a
// relay do: "Mill, Ford", "Ford, Weir", "Weir, Quay".
func (p *Part) legsInARow(rows [][]string) bool {
	if len(rows) < leastOfList {
		return false
	}
	text := func(i int) bool {
		switch m := p.Columns[i].Meaning; m {
		case Other, Session, Course, Notes:
		default:
			return false
		}
		n := 0
		for _, r := range rows {
			if k := kindOf(trim(cellAt(r, p.Columns[i].Index))); k == kText {
				n++
			}
		}
		return 5*n >= 4*len(rows)
	}
	var words []int // the columns of them
	for i := range p.Columns {
		if text(i) {
			words = append(words, i)
		}
	}
	for _, a := range words {
		for _, b := range words {
			if a == b {
				continue
			}
			on, differ := 0, map[string]bool{}
			for i := 1; i < len(rows); i++ {
				from, to := trim(cellAt(rows[i], p.Columns[a].Index)), trim(cellAt(rows[i-1], p.Columns[b].Index))
				if from != "" && from == to && from != trim(cellAt(rows[i-1], p.Columns[a].Index)) {
					on++
					differ[from] = true
				}
			}
			if 5*on >= 4*(len(rows)-1) && len(differ) >= 4 {
				return true
			}
		}
	}
	return false
}

// listsEntries says whether a column tells who has declared to start, or has scratched, as
// a list of entries does, whose times are of other races.
func (p *Part) listsEntries(rows [][]string) bool {
	for _, c := range p.Columns {
		if c.Meaning != Other && c.Meaning != Status && c.Meaning != Notes {
			continue
		}
		n, entries := 0, 0
		for _, r := range rows {
			if v := fold(cellAt(r, c.Index)); v != "" {
				if n++; declaredWords[v] {
					entries++
				}
			}
		}
		if n >= leastOfList && 2*n > len(rows) && entries*10 >= n*9 {
			return true
		}
	}
	return false
}

var declaredWords = set("declared undeclared scratched scratch", "not declared")

// distancesApart says whether the lines of a table that says nothing of the people but
// their names are of very many distances: a list of races.
func (p *Part) distancesApart(rows [][]string) bool {
	at := -1
	for _, c := range p.Columns {
		switch c.Meaning {
		case Distance:
			at = c.Index
		case Name, Time, Other, Notes:
		default:
			return false
		}
	}
	lengths := map[float64]bool{}
	n := 0
	for _, r := range rows {
		if v := looseNumber(cellAt(r, at)); at >= 0 && v > 0 {
			n++
			lengths[v] = true
		}
	}
	return n >= 2*leastOfList && len(lengths) >= 2*leastOfList && 2*len(lengths) > n
}

// twoOnALine says whether a table has two people on a line, "Name 1" and "Name 2".
func (p *Part) twoOnALine(rows [][]string) bool {
	first, second := -1, -1
	for _, c := range p.Columns {
		h := strings.ReplaceAll(fold(c.Heading), " ", "")
		if n := len(h) - 1; n > 1 && headingWords[h[:n]]&cName != 0 && headingWords[h[:n]]&cFamily == 0 {
			switch h[n] {
			case '1':
				first = c.Index
			case '2':
				second = c.Index
			}
		}
	}
	if first < 0 || second < 0 {
		return p.relativesOnALine(rows)
	}
	n := 0
	for _, r := range rows {
		if kindOf(trim(cellAt(r, first))) == kText && kindOf(trim(cellAt(r, second))) == kText {
			n++
		}
	}
	return n >= 3 && 2*n > len(rows)
}

// headingAt is the heading of a column.
func (p *Part) headingAt(column int) string {
	for _, c := range p.Columns {
		if c.Index == column {
			return c.Heading
		}
	}
	return ""
}

// contactHeading says whether a column is headed as that of somebody who answers for the
// runner of the line, and did not run: "Parent/guardian", "Emergency contact".
func contactHeading(heading string) bool { return anyWord(heading, contactWords) }

var contactWords = set(`ice parent parents guardian guardians contact carer carers emergency kin mother father mum dad
	eltern elternteil erziehungsberechtigte erziehungsberechtigter notfall notfallkontakt kontakt kontaktperson tuteur tutrice urgence responsable padre madre tutor emergencia contacto
	genitore genitori emergenza contatto ouder ouders voogd noodcontact contactpersoon encarregado contato malsman vardnadshavare foralder kontaktpersson foraelder vaerge pargorende rodzic opiekun`)

// relativesOnALine says whether beside the names stands, in a column of no other use, somebody
// of the same family on most rows: "Parent | Child | Time".
func (p *Part) relativesOnALine(rows [][]string) bool {
	name := p.Index(Name)
	for _, c := range p.Columns {
		if c.Meaning != Other || c.Index == name || name < 0 || contactHeading(c.Heading) && !contactHeading(p.headingAt(name)) && p.headingAt(name) != "" {
			continue
		}
		n, related := 0, 0
		for _, r := range rows {
			x, y := trim(cellAt(r, name)), trim(cellAt(r, c.Index))
			if y == "" {
				continue
			}
			if n++; oneFamily(x, y) {
				related++
			}
		}
		if n >= 3 && 3*related >= 2*n && 2*n > len(rows) {
			return true
		}
	}
	return false
}

// sharesPlaces says whether nearly every place stands on lines of several people, below one
// another, who have one time between them: teams of a relay, or pairs.
func (p *Part) sharesPlaces(rows [][]string) bool {
	at, clock := p.Index(Position), p.Index(Time)
	if at < 0 || clock < 0 {
		return false
	}
	teams, shared := 0, 0
	place, names, times := "", map[string]bool{}, map[string]bool{}
	end := func() {
		if len(names) > 0 {
			teams++
			if len(names) > 1 && len(times) == 1 {
				shared++
			}
		}
		names, times = map[string]bool{}, map[string]bool{}
	}
	fullName := p.fullNames()
	for _, r := range rows {
		who := fullName(r)
		at, t := trim(cellAt(r, at)), trim(cellAt(r, clock))
		if who == "" || at == "" && t != "" {
			continue
		}
		if at != "" && at != place {
			end()
			place = at
		}
		names[who] = true
		if t != "" {
			times[t] = true
		}
	}
	end()
	return teams >= leastOfList && 5*shared >= 4*teams
}

// fullNames gives what a row has in the columns of names, folded.
func (p *Part) fullNames() func(cells []string) string {
	columns := [...]int{p.Index(Name), p.Index(GivenName), p.Index(FamilyName)}
	return func(cells []string) (full string) {
		for _, c := range columns {
			full += fold(cellAt(cells, c)) + " "
		}
		return strings.TrimSpace(full)
	}
}

// placesRepeat says whether the places of a list without times stand several times each,
// and not because they are counted in each of several groups: goals, points, figures.
func (p *Part) placesRepeat() bool {
	for _, m := range []Meaning{Date, Session, Course, Distance} {
		if p.Index(m) >= 0 {
			return false
		}
	}
	n, on, last, values := 0, 0, 0.0, map[float64]bool{}
	for _, r := range p.sampled() {
		c := trim(cellAt(r, p.Index(Position)))
		if placeKind(c) != kInt {
			continue
		}
		v := placeNumber(c)
		if v == 1 || v == last+1 {
			on++
		}
		last = v
		values[v] = true
		n++
	}
	return n >= 8 && 2*len(values) < n && 5*on < 4*n
}

// fieldEvents says whether a column of events has jumps or throws among them.
func (p *Part) fieldEvents(rows [][]string) bool {
	for _, c := range p.Columns {
		if c.Meaning != Course && !anyWord(c.Heading, eventHeads) {
			continue
		}
		n := 0
		for _, r := range rows {
			if anyWord(cellAt(r, c.Index), fieldEventWords) {
				n++
			}
		}
		if n >= 2 {
			return true
		}
	}
	return false
}

// Words for the events of a track and field meeting that are no runs. Common practice, no
// source.
var (
	eventHeads      = set("event events discipline disziplin disciplina epreuve specialita konkurencja gren laji ovelse alue disciplin onderdeel")
	fieldEventWords = set(`jump throw shot vault javelin discus hammer weitsprung hochsprung dreisprung stabhochsprung kugelstoss kugelstossen speerwurf diskuswurf hammerwurf
		saut lancer javelot marteau perche salto lanzamiento jabalina martillo lancio giavellotto martello lancamento dardo verspringen hoogspringen kogelstoten speerwerpen
		discuswerpen langdhopp hojdhopp lengdehopp hoydehopp spjut kulstot kulstoting laengdespring hojdespring pituushyppy korkeushyppy seivashyppy kuulantyonto keihaanheitto
		skok rzut pchniecie oszczepem vrh ostep`)
)

// linesEach says whether several names stand on three lines or more each, on a sheet of
// one run: laps, or something else than people.
func (p *Part) linesEach(rows [][]string) bool {
	name := p.Index(Name)
	if name < 0 || len(rows) < 12 {
		return false
	}
	for _, m := range []Meaning{Date, Session, Course, Distance} {
		if p.Index(m) >= 0 {
			return false
		}
	}
	n, lines := 0, map[string]int{}
	for _, r := range rows {
		if s := trim(cellAt(r, name)); s != "" && !hasNoDigit(cellAt(r, p.Index(Time))) {
			n++
			lines[fold(s)]++
		}
	}
	several := 0
	for _, k := range lines {
		if k >= 3 {
			several++
		}
	}
	if n < 12 || several < 3 || 3*len(lines) > n {
		return false
	}
	at := p.Index(Position)
	if at < 0 {
		at = p.Index(Time)
	}
	return (at < 0 || !onceInEachList(rows, at, name)) && !p.linesOfDays() // lists one below the other
}

// linesOfDays says whether a table has two lines or more that are a day and nothing else, each another.
func (p *Part) linesOfDays() bool {
	days := map[string]bool{}
	p.src.each(func(_ int, cells []string) error {
		if text := trim(titleText(cells)); rowFilled(cells) == 1 && isDate(text) {
			days[text] = true
		}
		return nil
	}) // only of the rows that are looked at, which the source has read before
	return len(days) > 1
}
