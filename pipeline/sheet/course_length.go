package sheet

import (
	"regexp"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// Words by which a line says that a course was not as long as it should have been: "course about 200 m short today",
// "the turn was placed too early, 300 m short", "300 m zu kurz", "only two of three laps". Folded; common practice of
// the languages, no source.
var (
	aWay      = set(`course route distance strecke parcours recorrido percorso percurso banan bana banen loypa loypen ruten traseen trasa trasy trase rata reitti palya tav staza`)
	tooShort  = set(`short shorter kurz kurzer court courte corto corta curto curta kort korta korter kortare krotsza krotka kratsi kratka lyhyt rovid rovidebb`)
	tooLong   = set(`long longer lang langer longue largo larga lungo lunga longo longa langt langre dluzsza dluga delsi dlouha pitka hosszu duga`)
	tooMuch   = set(`too bit little zu trop te for demasiado troppo demais za liian prilis tul`)
	cutShort  = set(`shortened lengthened curtailed verkurzt verlangert gekurzt raccourci raccourcie rallonge ecourte reducido acortado recortado alargado ridotto ridotta accorciato accorciata reduzido encurtado ingekort verkort kortats forkortad forkortet avkortet afkortet skrocona skrocony skrocone zkracena zkraceny zkracene lyhennetty lerovidített skracena`)
	onTheDay  = set(`today todays diversion diverted heutige was is were because due heute war ist wegen aujourdhui etait est cause hoy fue era oggi causa vandaag wegens instead idag var ar grund dag er pga dzis byla jest dnes byl tanaan oli volt`)
	someWay   = regexp.MustCompile(` \d{2,4} ?(?:m|metres?|meters?|yards|yds|metern?|metros|metri|metrow|metru|metria|meteres) `)
	watchWay  = regexp.MustCompile(` (?:gps|garmin|watch|watches) `)
	turnWrong = regexp.MustCompile(` (?:turn|turning point|turnaround|wendepunkt|wende|demi tour|keerpunt|vandpunkten|vending) .*(?:wrong place|too early|too late|too soon|too far|falsch|zu fruh|zu spat|trop tot|trop tard|te vroeg|te laat)|(?:everyone|everybody|all|runners|leaders|lead runners|first \w+|front runners)(?: after \w+)? (?:were |was |went |ran |have been |sent |took |followed )+.*(?:wrong|short way|astray|extra|misdirected|off course) `)
)

// saysOffLength says whether a line tells that of this run, and of none before or after it. One that
// gives a distance is read as that (distance.go).
func saysOffLength(line string) bool {
	if len(line) > 300 || ofAnotherRun(line) || saysSince(line) {
		return false
	}
	f := " " + fold(line) + " "
	way, off, long, much, part, day := false, false, false, false, false, false
	for _, w := range strings.Fields(f) {
		way, off, part, day = way || aWay[w], off || tooShort[w], part || cutShort[w], day || onTheDay[w]
		long, much = long || tooLong[w], much || tooMuch[w]
	}
	_, _, _, length := findDistance(line)
	amount := someWay.MatchString(f)
	off = off || long && (amount || length || much)
	switch {
	case amount && off, part && (way || length), turnWrong.MatchString(f):
		return true
	case way && off && (day || length), way && day && length:
		return true
	}
	return day && text.NotWholeCourse(strings.TrimSpace(f)) || way && length && watchWay.MatchString(f)
}

// lengthToday is the distance that a line says this run was over instead of the usual one: "course shortened to 4.6 km",
// "Strecke heute nur 4,6 km". What somebody's watch showed, or is not sure, is none.
func lengthToday(line string) Found {
	if len(line) > 120 || ofAnotherRun(line) || saysSince(line) || ofTheWay(line) || saysDistances(line) || !saysOffLength(line) {
		return Found{}
	}
	for _, w := range strings.Fields(fold(line)) {
		if roughLength[w] {
			return Found{}
		}
	}
	return distanceOf(line, "the line “"+shorten(line, 60)+"”")
}

// roughLength are words beside a distance that nobody is sure of, or that others ran.
var roughLength = set(`gps garmin watch watches about approx approximately roughly nearly almost around bit slightly measured some first juniors junior children kids walkers ca circa etwa ungefahr rund environ aproximadamente unos circa ongeveer omkring ungefar około okolo asi noin kb`)

// sayOffLength points out such a line over or under the results, unless it gives the distance.
func (p *Part) sayOffLength(sheet string) {
	var names map[string]bool // of the results, found when they are needed
	for _, l := range p.linesOutside() {
		line := strings.Trim(l.Text, " |")
		if strings.IndexByte(line, ' ') > 0 && !p.rules.takenBack[line] && saysOffLength(line) && lengthToday(line).Value == "" && !p.takesUp(line, &names) {
			p.offLength(sheet, l.Row, line)
			return
		}
	}
}

// offLength points a line out that says that the course was short or long: times of such a course are no bests.
func (p *Part) offLength(sheet string, row int, line string) {
	p.problem(sheet, row, -1, place.Look, "course-length-said", line, "the course at its full length",
		`The sheet says that the course was short or long. If it was, type lapwing correct COURSE DATE --state "short by 200 m" (or "long by 50 m"), with the right number, so that its times count as no bests.`)
}
