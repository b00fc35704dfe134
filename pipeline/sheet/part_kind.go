package sheet

import (
	"slices"
	"strings"
)

// partKind says what a table is good for, or why it is no table of results.
// figures is how many columns of whole numbers have a heading that says nothing.
func partKind(p *Part, tab string, headed bool, figures int) (kind, why string) {
	timed := p.Index(Time) >= 0
	named := p.named()
	numbered := p.Index(Number) >= 0
	placed := p.Index(Position) >= 0
	if helperTab(tab) && !(timed && named && (p.filledTemplate(tab) || anyWord(tab, addedLater))) {
		return "", "the name of the tab says that it is no list of results"
	}
	switch {
	case p.isPivot(), !headed && !placed && p.lastAddsUp():
		return "", "it is a pivot table, made of results that stand elsewhere"
	case named && p.listsCorrections(tab):
		return "", elsewhereCorrected
	case named && !timed && p.saysTeams(tab):
		return "", "it is a list of teams, not of runners"
	case anyWord(tab, relayWords), p.listsRelay():
		return "", "a relay's teams are no runners of their own"
	case timed && p.severalSports():
		return "", "its times are of several sports (swimming, cycling, running); for the run alone, keep that column only, headed Time"
	case timed && named && p.totalsOfRuns():
		return "", "its times are totals of several runs"
	case timed && named && p.ranksManyRuns():
		return "", "it ranks results of many days, which stand on the sheets of these"
	}
	if named || timed || placed {
		rows := p.sampled()
		switch {
		case p.listsRaces(rows):
			return "", "it lists races, not who ran in one of them; if one runner ran them all, add a column headed Name with the name in every row"
		case !timed && !named && p.daysApart(rows):
			return "", "each line is of another day, and nobody is named"
		case timed && p.headsFirsts(rows):
			return "", "each line is of another day and says who was first: a diary of runs, whose results stand elsewhere"
		case timed && !named && p.headsWinner() && p.daysApart(rows):
			return "", "each line is of another day and says who won: a diary of runs, whose results stand elsewhere"
		case p.legsInARow(rows):
			return "", "each line begins where the line above it ends: the legs of a relay"
		case named && p.twoOnALine(rows):
			return "", "it has two people on each line"
		case timed && named && placed && p.sharesPlaces(rows):
			return "", "several people share each place and its time: teams of a relay, or pairs, whose times are no runner's own"
		case timed && named && p.listsEntries(rows):
			return "", "it says who has declared to start: a list of entries, whose times are of other races"
		case timed && named && !p.ofSets && p.distancesApart(rows):
			return "", "nearly every line is of another distance, and nothing but a name says whose: a list of races; if they are people, add a column headed Position"
		case timed && named && !p.ofSets && p.daysApart(rows):
			return "", "each line is of another day: a list of records, or of one runner's races, whose name then has to stand on every line, in a column headed Name"
		case timed && p.fieldEvents(rows):
			return "", "there are jumps or throws among its runs, whose marks are no times; keep the lines of the runs only, and load it again"
		case tab != "" && timed && !named && !numbered && !placed && !headed && p.fewTimes(rows):
			return "", "it has no heading row, and hardly a time among its words: what somebody noted of the day"
		case timed && !named && !numbered && !placed && p.evenSteps(rows):
			return "", "its times stand at even steps: a table of paces or of targets, and no results"
		case timed && p.linesEach(rows):
			return "", "the same names stand on several lines of one run: laps, or no names of people"
		}
	}
	switch {
	case timed && (named || numbered):
		return "full", ""
	case timed:
		return "times", ""
	case p.Index(Points) >= 0 || p.hasClocks(p.Index(PersonalBest)):
		return "", "it has points or best times but no times of a run"
	case placed && named && p.Index(TotalRuns) >= 0 && figures >= 2:
		return "", "it has figures of several runs and their total, but no times of a run"
	case placed && (named || numbered) && p.placesRepeat():
		return "", "its places are in no order of a finish, and it has no times of a run"
	case placed && (named || numbered):
		return "names", ""
	case named && (p.Index(Date) >= 0 && p.Index(Course) >= 0 || p.Index(Status) >= 0) && !isRota(p):
		return "names", ""
	case named && p.headedByWords() >= 3:
		return "", "its headings are of names, and of neither positions nor times"
	case named:
		return "", namesAlone
	case placed:
		return "", "it has positions but neither names nor times"
	case !headed:
		return "", "it has no heading row, and its values don't say which column is which"
	}
	return "", "it has neither positions, names nor times"
}

// hasClocks says whether a time stands in a column, and not only marks for who ran a best one.
func (p *Part) hasClocks(column int) bool {
	return slices.ContainsFunc(p.sampled(), func(cells []string) bool { return kindOf(cellAt(cells, column)) == kClock })
}

// evenSteps says whether the times of a table rise by the same from line to line, to the second
// to which they are rounded, and by more than runners come in one behind the other, where
// nothing is said of any runner.
func (p *Part) evenSteps(rows [][]string) bool {
	for _, m := range []Meaning{Sex, Age, AgeGroup, BirthYear, BirthDate, Club, Status} {
		if p.Index(m) >= 0 {
			return false
		}
	}
	clock := p.Index(Time)
	var last, least, most float64
	steps := 0
	for _, cells := range rows {
		v := secondsOf(cells, clock)
		if v <= 0 {
			continue
		}
		if step := v - last; last > 0 {
			if steps == 0 {
				least, most = step, step
			}
			least, most = min(least, step), max(most, step)
			steps++
		}
		last = v
	}
	return steps >= leastSteps && least >= 3 && most-least <= 1
}

// fewTimes says whether a column of times has fewer of them than show a field, among words: "Start",
// "09:00" and "Timekeeper" with a name.
func (p *Part) fewTimes(rows [][]string) bool {
	n, clock := 0, p.Index(Time)
	for _, cells := range rows {
		if secondsOf(cells, clock) > 0 {
			n++
		}
	}
	return n < leastTimes && slices.ContainsFunc(rows, func(cells []string) bool { return slices.ContainsFunc(cells, hasLetter) })
}

// leastTimes is how many times without names, places or a heading may be those of a field.
const leastTimes = 3

// leastSteps is how many even steps show a table that somebody has reckoned.
const leastSteps = 7

// addedLater are words of a tab for runners who were added to the results: "Late entries".
// Common practice, no source.
var addedLater = set("late added additions additional extra extras missed missing forgotten omitted overlooked nachtrag nachtrage nachzugler nachgemeldet nachmeldungen ajout ajouts ajoutes tardifs anadidos aggiunti aggiunte nagekomen toegevoegd eftersom tillagg tillagda tilfojet efteranmalda eftertilmeldte etteranmeldte dopisani dodani dopsani dodatecne acrescentados adicionados lisatyt utolag adaugati naknadno добавлены додані")

// severalSports says whether a table has times of swimming or cycling beside those of a
// run: its total is no running time.
func (p *Part) severalSports() bool {
	var swim, bike, run bool
	for _, c := range p.Columns {
		if w := sportOf(c.Heading); w != "" && (runLegWords[w] || (swimWords[w] || bikeWords[w]) && p.filled(c.Index)) {
			swim, bike, run = swim || swimWords[w], bike || bikeWords[w], run || runLegWords[w]
		}
	}
	return swim && bike || bike && run
}

// filled says whether something stands in a column on one of the rows that are looked at: a form
// for a triathlon may be used for a run.
func (p *Part) filled(column int) bool {
	return slices.ContainsFunc(p.sampled(), func(cells []string) bool { return !isBlank(cellAt(cells, column)) })
}

// sportOf is the one word of a heading that is no figure and no word for a time, as in
// "Bike", "Run 2" and "Swim time"; "" where there are several.
func sportOf(heading string) (sport string) {
	for _, w := range strings.Fields(fold(heading)) {
		w = strings.TrimRight(w, "0123456789")
		switch {
		case w == "" || headingWords[w]&cTime != 0 || w == "split" || w == "leg":
		case sport != "":
			return ""
		default:
			sport = w
		}
	}
	return sport
}

// Words for the parts of a triathlon and a duathlon in several languages. Common
// practice, no source.
var (
	swimWords   = set("swim swimming schwimmen natation nuoto natacion natacao zwemmen simning simma svomning svomming uinti plavani plywanie uszas plavanje")
	bikeWords   = set("bike biking cycling cycle rad radfahren velo vtt bici ciclismo bicicleta fietsen cykel cykling sykkel sykling pyoraily kolo rower kerekpar kolesarjenje")
	runLegWords = set("run running laufen course corsa carrera corrida lopen lopning lob loping juoksu beh bieg futas tek")
)

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

// listsOfPeople says whether a tab is called after those who are listed on it, and nothing else.
func listsOfPeople(tab string) bool {
	return tab != "" && onlyWords(tab, peopleTabs)
}

// peopleTabs are words for members and for those who entered. Common practice, no source.
var peopleTabs = set("members membres leden soci miembros socios czlonkowie medlemmer medlemmar mitglieder clenove clanovi tagok roster register registrations registered entries signup")

var helperTabs = set(`record records league table standings points puntos punti punten pontos punkty poang poeng pisteet pwyntiau summary notes volunteers volunteer rota contacts pbs lookup lookups pivot chart charts template
	instructions members readme help about rekorde punkte zusammenfassung freiwillige helfer membres benevoles leden
	vrijwilligers soci volontari miembros voluntarios voluntarios sumario resumo socios czlonkowie wolontariusze medlemmer frivillige medlemmar funktionarer
	stats statistics statistik statistiques averages settings config categories factors standards roster registrations registered entries signup prize prizes raffle draw tombola lottery`)

// saysTeams says whether the tab or the line nearest above a table speaks of teams: "Teams",
// "Team results".
func (p *Part) saysTeams(tab string) bool {
	return isTeamsTitle(tab) || isTeamsTitle(lastTitle(p.Titles))
}

// headedByWords is how many columns of a part stand under headings of their own.
func (p *Part) headedByWords() (n int) {
	for _, c := range p.Columns {
		if p.HeadingRow > 0 && hasLetter(c.Heading) {
			n++
		}
	}
	return n
}

// isTeamsTitle says whether a text is the title of a list of teams.
func isTeamsTitle(text string) bool {
	first, rest, _ := strings.Cut(fold(text), " ")
	return teamWords[first] && first != "club" && first != "lag" && first != "hold" && (rest == "" || teamListWords[finalWord(rest)])
}

var teamListWords = set("results result scores score scoring points prizes standings competition positions placings ranking wertung ergebnisse ergebnis resultats resultados classement classifica klassement uitslag resultat wyniki")

// Why a table is no list of results that may be one if its lines were cut otherwise.
const (
	noHeading  = "no heading row with columns such as position, name and time, and no rows of results"
	namesAlone = "it has names but neither positions nor times"
)
