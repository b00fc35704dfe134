package sheet

import (
	"regexp"
	"slices"
	"strings"
)

// Words of the papers that lie in the folder of results and are none: lists of
// addresses, of those who entered for a run to come, and what was said at a meeting.
// Common practice, no source.
var (
	addressWords = set(`phone telephone tel mobile email mail e-mail address postcode zip iban bank emergency telefon handy adresse anschrift plz telefono telefone direccion
		indirizzo telefoon adres subs subscription fee joined paid payment bezahlt paye pagado pagato pago betaald betald betalt zaplacono`)
	entryWords    = set("entries entrants entrant entry startlist registrations registered preregistered signups meldeliste starterliste anmeldungen inscrits inscritos iscritti inschrijvingen deelnemerslijst")
	meetingWords  = set("minutes agenda protokoll verslag notulen verbale acta")
	meetingPeople = set("meeting committee agm board apologies present sitzung reunion bestuursvergadering vergadering assemblea comite vorstand")
	teamHeads     = set("team teams club clubs klub klubb kluby clube clubes seura seurat oddil clwb vereniging societa joukkue joukkueet druzyna druzstvo lag hold tim mannschaft mannschaften verein vereine equipe equipes squadra squadre equipo equipos ploeg ploegen")
	finishHeads   = set("pos position place placing plc finish finished rank platz rang platzierung clt classement puesto plaats posizione miejsce plass plats placering")
)

// otherPaper says what a table without times, or without headings, is instead of a
// list of results; "" where it may be one. titles are the lines above it.
func (p *Part) otherPaper(file string, titles []line, headed bool) string {
	name := baseName(file)
	text := fold(name + " " + p.Tab)
	for _, t := range titles {
		text += " " + fold(titleText(t.cells))
	}
	words := strings.Fields(text)
	has := func(list map[string]bool) bool {
		return slices.ContainsFunc(words, func(w string) bool { return list[w] })
	}
	if !headed && has(meetingWords) && has(meetingPeople) {
		return "it tells of a meeting, and has no list of results"
	}
	if p.teamEach() {
		return "it is a list of teams, not of runners"
	}
	for _, t := range titles {
		text := titleText(t.cells)
		if f := fold(text); strings.HasPrefix(f, "predicted times") || strings.HasPrefix(f, "predictions") || strings.HasPrefix(f, "estimated times") || strings.HasPrefix(f, "expected times") {
			return "its times are predicted, and nobody has run them yet"
		}
		if listsBests(text) {
			return "a line above it says that its times are the best ones of many days; if they are those of one run, take that line out"
		}
		if p.Index(Time) >= 0 && listsStarters(text) && !p.placed() {
			return "a line above it says that it is a list of who starts, whose times are of other runs; if they are results, take that line out"
		}
		if saysExample(text) {
			return "a line above it says that it is an example; if these are results, take that line out"
		}
	}
	if p.Index(Time) >= 0 || p.Index(GunTime) >= 0 || p.Index(ChipTime) >= 0 || p.Index(Status) >= 0 {
		return ""
	}
	placed := p.Index(Position)
	if placed >= 0 && (placed < len(p.Columns) && saysPlace(p.Columns[placed].Heading) || slices.ContainsFunc(words, saysPlace)) {
		return ""
	}
	for _, c := range p.Columns {
		if anyWord(c.Heading, addressWords) && !has(volunteerWords) && !p.holdsTimes(c.Index) {
			return "it is a list of people with their addresses or fees, not of results"
		}
	}
	if has(entryWords) || strings.Contains(text, "start list") || strings.Contains(text, "sign up") || strings.Contains(text, "sign ups") ||
		strings.Contains(text, "signed on") || strings.Contains(text, "sign on") || strings.Contains(text, "signing on") || strings.Contains(text, "signed in") || strings.Contains(text, "signing in") {
		return "it is a list of those who entered, without places or times"
	}
	return ""
}

// listsBests says whether a title is that of a list of best times of many days, "Season bests after
// race 6", and tells of nobody's best in this run.
func listsBests(title string) bool {
	f := " " + fold(title) + " "
	return len(strings.Fields(f)) <= 10 && bestsOfMany.MatchString(f) && !clockInText.MatchString(f) && !strings.ContainsAny(f, "=*") && !anyWord(f, bestsOfToday)
}

// listsStarters says whether one of the parts of a title is nothing much but the name of a list of
// those who start.
func listsStarters(title string) bool {
	return slices.ContainsFunc(titleParts.Split(title, -1), func(part string) bool {
		f := " " + fold(part) + " "
		return len(strings.Fields(f)) <= 5 && startersList.MatchString(f) && !anyWord(f, bestsOfToday)
	})
}

// placed says whether a column is headed as that of places, as in results that were written into the
// list of those who start.
func (p *Part) placed() bool {
	at := p.Index(Position)
	return at >= 0 && at < len(p.Columns) && saysPlace(p.Columns[at].Heading)
}

// Words for that. Common practice of the languages, no source.
var (
	bestsOfMany = regexp.MustCompile(` (?:all[- ]?time (?:top|fastest|best|bests|list|lists|ranking|rankings)|(?:top|fastest|best)(?: \d+)?(?: times)? (?:of )?all time|(?:season'?s?|year'?s?|club|lifetime) bests|best (?:times|performances) (?:of|in|this|for)(?: the)? (?:season|year|club)|(?:ewige )?(?:jahres|saison|vereins)?bestenliste|(?:jahres|saison|vereins)bestzeiten|` +
		`meilleure?s (?:temps|performances|chronos) (?:de la saison|de l.?annee|de tous les temps|du club)|mejores (?:tiempos|marcas) (?:de la temporada|del ano|de la historia|historicos|historicas|del club)|migliori (?:tempi|prestazioni) (?:della stagione|dell.?anno|di sempre|stagionali)|` +
		`beste tijden (?:van het seizoen|aller tijden|van het jaar|ooit)|arsbasta|tidernas basta|alle tiders (?:bedste|beste)|arets (?:basta|bedste|beste) tider|najlepsze (?:czasy|wyniki) (?:sezonu|roku|wszech czasow)|kauden parhaat) `)
	startersList = regexp.MustCompile(` (?:start list|startlist|starting list|list of starters|seed times|seeding times|seed list|seedings|startliste|starterliste|meldeliste|liste de depart|liste des partants|lista de salida|lista di partenza|startlijst|deelnemerslijst|startlista|lista startowa|startovni listina|lahtoluettelo) `)
	bestsOfToday = set("today tonight new results result today's marked bold ergebnis ergebnisse heute neue resultats resultat aujourd'hui nouveaux resultados hoy risultati oggi uitslag vandaag resultat idag wyniki")
	titleParts   = regexp.MustCompile(` [–—-]+ |[|:;,()]| {2,}`)
)

// saysExample says whether a line is that over the form that shows how to fill one in:
// "EXAMPLE", "Example - how to fill in the sheet", "How to fill in this form".
func saysExample(line string) bool {
	words := strings.Fields(fold(line))
	if len(words) == 0 || len(words) > 10 {
		return false
	}
	how := strings.Contains(strings.Join(words, " "), "how to fill")
	return how || exampleWords[words[0]] && (len(words) == 1 || strings.ContainsAny(line, "-–:(") || exampleWords[words[len(words)-1]])
}

var exampleWords = set("example examples sample specimen beispiel muster exemple ejemplo esempio voorbeeld exempel eksempel przyklad exemplo")

// saysPlace says whether a heading is for places, and not for numbers of people that were
// taken for places.
func saysPlace(heading string) bool {
	for _, w := range strings.Fields(fold(heading)) {
		if finishHeads[w] || headingWords[w]&cPlace != 0 && headingWords[w]&(cNo|cNumber) == 0 {
			return true
		}
	}
	return false
}

// teamEach says whether nobody is named and nearly every line has a team of its own.
func (p *Part) teamEach() bool {
	club := p.Index(Club)
	if club < 0 || club >= len(p.Columns) || !anyWord(p.Columns[club].Heading, teamHeads) || p.named() {
		return false
	}
	rows, teams := p.sampled(), map[string]bool{}
	for _, r := range rows {
		if t := fold(cellAt(r, club)); t != "" {
			teams[t] = true
		}
	}
	return len(rows) > 0 && 5*len(teams) >= 4*len(rows)
}

// emptyForm says whether the rows of a table, below the line after, have places at
// most, though it has a column of names.
func (p *Part) emptyForm(t table, after int) bool {
	if t.grid == nil || !p.named() || p.Kind == Volunteers {
		return false
	}
	filled := 0
	for i := 0; i < t.grid.len(); i++ {
		row, cells := t.grid.at(i)
		if row <= after {
			continue
		}
		for c, cell := range cells {
			switch {
			case isBlank(cell):
			case c != p.Index(Position):
				return false
			default:
				filled++
			}
		}
	}
	return filled > 0
}

// holdsTimes says whether some cell of a column is a time: Mill Lane then is a place to run at
// and no address.
func (p *Part) holdsTimes(column int) bool {
	return slices.ContainsFunc(p.sampled(), func(cells []string) bool { return kindOf(cellAt(cells, column)) == kClock })
}
