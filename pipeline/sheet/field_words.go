package sheet

import "strings"

// fieldWords say which part of a field a list is of, how much of it, what state it is
// in or who it was made for. Nothing but such words names no place: "Walkers", "First
// ten home", "Heat 2", "For the newsletter". Common practice, no source.
var fieldWords = set(`walkers walker walking joggers jogger runners runner juniors junior youth youths kids children schools seniors senior veterans veteran vets adults masters beginners racers
	team teams individual individuals hold squadra squadre takim takimi joukkue joukkueet druzstvo druzstva druzyna druzyny csapat equipo equipos equipa equipas equipe equipes ploeg ploegen komanda komandos meeskond voistkond ekipa ekipe echipa mannschaft mannschaften команда отбор ομαδα
	first last top fastest three five ten twenty fifty hundred home away heat heats wave waves leg group groups am pm morning evening afternoon night
	newsletter press magazine noticeboard website facebook everyone everybody good corrections corrected changes changed amended amendment amendments revised
	errata latest newest preliminary prelim prov unconfirmed under over only
	gehen walken geher walker jugend kinder schuler marche marcheurs jeunes enfants caminantes marchadores ninos camminatori ragazzi wandelaars jeugd kinderen
	main fun elite novice novices tots toddlers dash headline support curtainraiser corporate fitness
	hauptlauf volkslauf jedermannlauf hobbylauf bambinilauf bambini kinderlauf schulerlauf jugendlauf einsteigerlauf walkinglauf nordic
	principale populaire principal popular infantil competitiva competitivo amatori hoofdloop jeugdloop kinderloop recreantenloop prestatieloop
	huvudlopp motionslopp knattelopp barnlopp hovedlop borneloop bornelob hovedlob paasarja lastensarja lasten glowny glowna dzieci hlavni detsky detske fofutam
	walk marcheur randonneurs marcha caminata andarines senderistas caminhada caminhantes camminata marciatori wandeling wandelen marsz marszu chodziarze piechurzy
	promenad promenerare motionsgang gavandring chodci chuze pochod kavely kavelijat sauvakavely cerddwyr cerdded spazierganger wanderer turgaere spasertur
	barn criancas deti lapset plant eleves alumnos mlodziez ungdom mladez nuoret ieuenctid juniores pupilles benjamins poussins`)

// walkWords are those of a list of people who walked. Common practice, no source.
var walkWords = set(`walkers walker walking walk gehen walken geher marche marcheur marcheurs randonneurs marcha caminata caminantes marchadores andarines senderistas caminhada caminhantes
	camminata camminatori marciatori wandeling wandelen wandelaars marsz marszu chodziarze piechurzy promenad promenerare motionsgang gavandring chodci chuze pochod
	kavely kavelijat sauvakavely cerddwyr cerdded spazierganger wanderer turgaere spasertur nordic`)

// saysField says whether a text is nothing but words about a field.
func saysField(text string) bool {
	found, sexes := false, 0
	for _, w := range strings.Fields(fold(text)) {
		_, weekday := weekdayNames[w]
		switch {
		case weekday:
		case fieldWords[w] || leadingWords[w] || trailingWords[w] && !remarkWords[w]: // a timekeeper is somebody
			found = true
		case isSection(w):
			sexes++
		case !titleWords[w] && !isOrdinalOrNumber(w):
			return false
		}
	}
	return found || sexes > 1 // "Men and women", over two lists
}

// listWords behind a place in the name of a file say whose list it is.
var listWords = set(`women womens ladies men mens girls boys juniors junior youths walkers only helpers volunteers rota damen herren frauen manner femmes hommes mujeres hombres donne uomini dames heren`)
