package sheet

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// courseWord is a candidate for the name of the course.
type courseWord struct {
	text   string
	slug   string
	weight int
	why    string
	small  bool // no name: in small letters beside others, "double" of "Alder Bank 5 km double", or a kind of run
}

// titleWords are words of title lines that name no place, folded (common
// practice on result sheets, no source).
var titleWords = set(`results result oclock varsity jv courses venues bulletin bulletins newsletter clubblad klubbladet klubblad vereinszeitung einlaufliste einlauflisten zieleinlauf zieleinlaufliste notice notices resultados resultado resultats ergebnisse ergebnis ergebnisliste ergebnislisten rangliste ranglisten resultatprotokoll tulemustabel listina poredak plasman risultati risultato uitslag uitslagen uitslagenlijst wynikow
	wertung wertungen rezultatele canlyniadaur eredmenyei eredmenyek rezultaty sonuclari resultaten wyniki wynik biegu biegow zawodow resultat resultater resultatlista resultatliste resultatlistan classement clasificacion classificacao classificazione classifica klassifikation
	week woche wochen kw semaine semaines semana semanas settimana settimane setmana uke uge vecka veckan viikko tydzien tyden tyzden saptamana nedelja nedela teden vika savaite nadal hafta неделя седмица тиждень εβδομαδα
	full provisional official final complete dated juoksupaiva tt timetrial timetrials tiderna tiderne tidene ajat casy idok tempos amserau laufs laufes vereinslauf klubblopp klublob klubblop clubloop hebdomadaire footing chronometre arrivees semanal llegadas settimanale lopp finishers finisher list liste lista listing of the for from at on in by sheet sheets weekly run runs race
	races event events no number nr combined week series time times timing timed finish positions position names name our edition and copy corrected correction new page
	session de du des la le les der die das den des dem im am vom von bei del della di da do et und y e i og och het van op
	lauf laufe bieg lob lop course carrera gara corsa corse corrida wedstrijd data export dump download season saison temporada
	rev revision amended amendment amendments revised prov prelim preliminary unofficial interim version latest newest
	generale generali gesamtergebnis gesamtergebnisse gesamtwertung einduitslag einduitslagen eindstand klassement ordine arrivo arrivi officiel officiels officielle officielles oficial oficiales oficiais ufficiale ufficiali offizielle offizielles officiele oficjalne definitieve definitif definitifs definitivi definitiva definitivo provisoire provisoires provvisoria provvisori vorlaufige voorlopige slutresultat geral ogolna ogolne rankings ranking finishing
	overall report table tab part updated update v v1 v2 v3 draft community free dnf all categories gesamt general
	leht lapas lapa harok munka taul taulukko sayfa foaie φυλλο лист аркуш list1 list2 シート sheet1 sheet2 sheet3 tabelle1 tabelle2 feuil1 feuil2 hoja1 hoja2 foglio1 foglio2 blad1 blad2 arkusz1 arkusz2 ark1 ark2 planilha1 folha1 tabelle feuille hoja foglio blad arkusz ark planilha folha
	start starts partenza salida largada date datum fecha printed as issued round race runde manche times tidtagning zeiten temps tiempos tempi tijden czasy tider
	subject subj leaderboard betreff objet asunto oggetto onderwerp temat amne emne pied wk wks ending commencing beginning
	sobotni sobotnie sobotnia niedzielny niedzielne niedzielna sobotny nedelny nedelni
	championship championships championnat championnats meisterschaft meisterschaften kampioenschap kampioenschappen campeonato campeonatos campionato campionati mistrzostwa masterskap mesterskab mesterskap
	running rhediad ras welcome to sign signup up coming dydd har kommer fran voici ecco hierbij anbei bijgevoegd aqui estan oto dyma hier sind zijn sono estos hej hei hallo hola ciao czesc helo bonjour salut hi hello dear all here are were was held this that a an with please find attached below above today yesterday trial jog km
	vysledky vysledek vysledkova listina vysledkovka zavod zavodu beh behu cros crosul crosului tulokset tulosluettelo juoksu eredmenyek futas rezultate rezultati klasyfikacja lista
	tulemused tulemus rezultatai rezultats rezultatas urslit 結果 記録会 走 競走 成績 成绩 大会結果 결과 기록 نتايج النتايج canlyniadau ganlyniadau chanlyniadau nghanlyniadau torthai classificacio cursa corsa tek teka chay lari match matches fixture fixtures title titel titre titulo titolo manifestazione manifestation manifestacion veranstaltung evenement evento eventi arrangement impreza
	תוצאות hasil lomba keputusan matokeo ผลการแข่งขัน ผล ngay ket qua 成绩表 成績表 成绩单 成績單
	kolo kola trat trasa aushang trka trcanje utrka mbio takbo سباق מרוץ วิ่ง
	entries entry entrants inscrits engages inscritos inscripciones iscritti meldeliste deelnemers deelnemerslijst protokoll protokol protokollen zapisnik zapisnici clasament sonuclar sonuc ergebnisprotokoll eredmenylista eredmeny begs begimas skrejiens jooks hlaup kosu kosusu yaris rediad
	результаты результат протокол протокола результати забег забега забіг забігу пробег пробега пробіг пробігу кросс кросса бягане бег бега біг км χλμ резултати класиране итоговыи итоги αποτελεσματα αποτελεσμα αγωνας г р год року д
	recorded registered aufgezeichnet enregistre grabado registrato opgenomen inspelad
	lauftreff lauftreffs excerpt extract members member club results only nd rd th csv xlsx xls txt inbox incoming sheets archive files documents desktop downloads tmp temp test`)

// leadingWords name no place before a name, trailingWords none after it; both may
// well be part of one elsewhere: Winter Hill, Log Meadow.
var leadingWords = set("venue location fw fwd re img prize prizes awards attendance")

// leadingSmall are small words of other languages that lead to a name: "ecco i risultati al Lago".
// With a capital they may begin one.
var leadingSmall = set("is aus her r. r a ob al alla allo ai nel nella au aux dans en u mjestu hoy heute vandaag oggi idag dzis heddiw till na w we vid ved yn ym fra fran на в во у στο στη στην στον")

var trailingWords = set("womens mens ladies il dd heute hoy oggi vandaag idag dzis dzisiaj dnes done desk crew chat group channel book yearbook year morning afternoon evening tonight winter summer spring autumn weekend weeks league series log grid tracker matrix register attendance handicap prediction prizes awards category categories summary anniversary jubilee birthday month months monthly yearly champs fun charity christmas xmas open volunteers live form forms response responses answers antworten reponses respuestas risposte history historico historique historik historie storico archivo archivio archiv archief arkiv laps vueltas runden rondes varv timekeeper timekeepers stopwatch scanner barcodes tokens d")

// trailingSmall are small words that lead from a name to its distance: "Bieg Orli na 5 km".
var trailingSmall = set("dnia dne dana на na sur sui über uber auf over på em sobre til till na po su op")

// isRoman recognises a number in Roman figures: IV, XII, XIV.
func isRoman(w string) bool { return romanFigures.MatchString(strings.TrimRight(w, ".ºª°")) }

var romanFigures = regexp.MustCompile(`^L?X{0,4}(?:IX|IV|V?I{0,3})$`)

// isCounted recognises "wk3", "race12" and "r3", a general word and its number in one.
func isCounted(w string) bool {
	word := strings.TrimRight(w, "0123456789")
	return len(word) < len(w) && (len(word) > 1 && titleWords[word] || (word == "w" || word == "r") && len(w) <= 3)
}

func isOrdinalOrNumber(w string) bool {
	if w == "" || w[0] < '0' || w[0] > '9' {
		return w == "#" || w == "%" || w == "/" || w == "+"
	}
	i := 0
	for i < len(w) && w[i] >= '0' && w[i] <= '9' {
		i++
	}
	switch w[i:] {
	case "", "st", "nd", "rd", "th", "e", "er", "eme", "o", "a", "v":
		return true
	}
	return false
}

// isDayRun says whether a word is made of a day or a part of it and a word for a run, "Samstagslauf",
// "zaterdagloop", "lauantaijuoksu", as languages write them that put words together.
func isDayRun(word string) bool {
	f := fold(word)
	if len(f) < 8 || strings.IndexByte(f, ' ') >= 0 {
		return false
	}
	for _, run := range dayRuns {
		day, ok := strings.CutSuffix(f, run)
		if !ok {
			continue
		}
		for _, d := range [...]string{day, strings.TrimSuffix(day, "s"), strings.TrimSuffix(day, "en")} {
			if _, weekday := weekdayNames[d]; weekday && len(d) >= 5 || dayParts[d] {
				return true
			}
			for part := range dayParts {
				if before, ok := strings.CutSuffix(d, part); ok {
					if _, weekday := weekdayNames[strings.TrimSuffix(before, "s")]; weekday && len(before) >= 5 {
						return true // "vrijdagavondloop"
					}
				}
			}
		}
	}
	return false
}

// Words for a run and for parts of a day that such words are made of. Common practice, no source.
var (
	dayRuns  = [...]string{"lauf", "loop", "lopp", "loppet", "lop", "lopet", "lob", "lobet", "juoksu", "lenkki", "runde", "rundan", "run"}
	dayParts = set("abend feierabend morgen mittag nachmittag wochen avond ochtend middag week kvall morgon formiddag eftermiddag vecko aften ettermiddag uke uge ilta aamu viikko")
)

// plainWords strips the words of a title that name no place from both ends.
func plainWords(text string) string {
	words := strings.Fields(text)
	all := words
	dull := func(w string) bool {
		f := fold(w)
		if f == "to" && len(w) > 2 {
			return false // tó is a lake
		}
		if f == "" || isOrdinalOrNumber(f) || titleWords[f] || isCounted(f) || f == "round up" || f == "w / e" || f == "w / c" || f == "d d" || w == "n°" || w == "nº" || w == "N°" || w == "Nº" { // week ending, week commencing
			return true
		}
		if strings.ContainsAny(w, "'’") {
			if m := elided.FindStringIndex(w); m != nil && m[0] == 0 && titleWords[fold(w[m[1]:])] {
				return true // "d'arrivo"
			}
		}
		if parts := strings.Fields(f); len(parts) > 1 {
			if len(parts) == 2 && (wayWords[parts[0]] || parts[0] == "course") && digitsOnly(parts[1]) {
				return false // course-3
			}
			for _, p := range parts {
				if _, weekday := weekdayNames[p]; !weekday && !titleWords[p] && !isOrdinalOrNumber(p) && p != "feira" {
					return false
				}
			}
			return true
		}
		_, weekday := weekdayNames[f]
		return weekday && len(f) >= 5 // Sun Hill, Tor Edge
	}
	estate := func(words []string) bool { // Quinta do Freixo, and no Thursday
		return isQuinta(words) || isMilePlace(words) || isNewPlace(words)
	}
	words = behindCount(words)
	if len(words) > 1 && isRoman(words[0]) && titleWords[fold(words[1])] {
		words = words[1:] // "IV Carrera del Sauce": its fourth edition
	}
	words = behindSentence(behindArticle(words))
	lead := words
	for len(words) > 0 && !estate(words) && (dull(words[0]) || len(words) > 1 && (leadingWords[fold(words[0])] || leadingSmall[words[0]] || isDayRun(words[0]))) {
		words = words[1:]
	}
	lead = lead[:len(lead)-len(words)]
	if len(words) > 1 && len(words) < len(all) && fold(words[0]) == "popular" {
		words = words[1:] // "Carrera popular Parque del Sauce", and not Popular Grove
	}
	if n := len(words); n > 2 && len(words[n-1]) == 1 && titleWords[fold(words[n-2])] {
		words = words[:n-1] // "Alder Bank results b"
	}
	wood := func() bool { // Lužný les, and no article
		n := len(words)
		return n > 1 && fold(words[n-1]) == "les" && (strings.HasSuffix(words[n-2], "ý") || strings.HasSuffix(words[n-2], "í"))
	}
	for len(words) > 0 && !wood() && (dull(words[len(words)-1]) || len(words) > 1 && (trailingWords[fold(words[len(words)-1])] || trailingSmall[words[len(words)-1]] || isDayRun(words[len(words)-1]))) {
		words = words[:len(words)-1]
	}
	if i := slices.IndexFunc(all, isDayRun); len(words) == 0 && i >= 0 {
		words = all[i : i+1] // nothing else names it
	}
	if n := len(words); n > 2 && sureDays[fold(words[n-1])] {
		words = words[:n-1] // "Alder Bank Sat 5k"
	}
	last := 0 // words left out at the end
	if len(words) > 0 {
		last = len(all) - 1 - slices.Index(all, words[len(words)-1])
	}
	words = wholeName(all, words)
	if articled(lead, words, last > 0) {
		words = slices.Concat(lead[len(lead)-1:], words)
	}
	// Behind a place of two words a month says when: "Barley Mow April series".
	for n := len(words); n > 2; n = len(words) {
		if _, ok := monthNames[fold(words[n-1])]; !ok || ofNames[fold(words[n-2])] || isOrdinalOrNumber(fold(words[n-2])) {
			break
		}
		words = words[:n-1]
	}
	// Months alone are no place, but a place may begin with one: March Hollow.
	months := 0
	for _, w := range words {
		if _, ok := monthNames[fold(w)]; ok {
			months++
		}
	}
	if months == len(words) {
		return ""
	}
	return strings.Trim(strings.Join(words, " "), " .,;:-–—_|'\"")
}

// isQuinta says whether words begin with an estate, Quinta do Freixo, Quinta Nova, and not with a Thursday,
// beside which stands a date or nothing.
func isQuinta(words []string) bool {
	if len(words) < 2 || fold(words[0]) != "quinta" {
		return false
	}
	next := fold(words[1])
	_, month := monthNames[next]
	return len(words) > 2 && ofNames[next] || startsUpper(words[1]) && !month && next != "feira" && !titleWords[next]
}

// isNewPlace says whether words begin with a place called New, as New Forest, and not with new
// results of one.
func isNewPlace(words []string) bool {
	return len(words) > 1 && (words[0] == "New" || words[0] == "NEW") && startsUpper(words[1]) && !titleWords[fold(words[1])]
}

// isMilePlace says whether words begin with a place called after how far it is from somewhere:
// 5 Mile Wood, Two Mile Hill. Behind a road there is a race: 5 Mile Road Race.
func isMilePlace(words []string) bool {
	if len(words) < 3 || words[1] != "Mile" || fold(words[2]) == "road" || !landWords[fold(words[2])] {
		return false
	}
	return startsUpper(words[2]) && (digitsOnly(words[0]) || numeralWords[fold(words[0])] > 0)
}

// behindArticle leaves out an article and the small words behind it that say how it was at a
// place: "A frosty Alder Bank".
func behindArticle(words []string) []string {
	if len(words) < 3 || !oneArticle[fold(words[0])] {
		return words
	}
	for i, w := range words[1:] {
		if r, _ := utf8.DecodeRuneInString(w); unicode.IsUpper(r) {
			if i > 0 {
				return words[1+i:]
			}
			return words
		}
	}
	return words
}

var oneArticle = set("a an ein eine un une una uno een en ett et")

// behindSentence leaves out what leads to a name in a sentence about results: "Os paso los tiempos
// de Ribera Alta". All its words but the first are small, one is for results or times, and the
// last leads to the name.
func behindSentence(words []string) []string {
	about := false
	for i, w := range words {
		r, _ := utf8.DecodeRuneInString(w)
		if !unicode.IsLower(r) && i > 0 {
			f := fold(words[i-1])
			if last := words[i-1]; i > 2 && about && last == strings.ToLower(last) && len(last) <= 5 && (titleWords[f] || leadingSmall[f]) {
				return words[i:]
			}
			return words
		}
		about = about || aboutResults[fold(w)]
	}
	return words
}

// aboutResults are words for results and times in such sentences. Common practice, no source.
var aboutResults = set("results times list ergebnisse zeiten liste resultats temps resultados tiempos risultati tempi uitslag uitslagen tijden wyniki czasy resultat resultaten tider tiderna canlyniadau ganlyniadau amserau")

// ofNames lead from the first word of a Portuguese place to the others.
var ofNames = set("do da dos das de")

// behindCount leaves out what counts the runs of a series before the name of a place:
// "Summer League run 115 Ivy Bridge".
func behindCount(words []string) []string {
	for i := 2; i+1 < len(words); i++ {
		if !digitsOnly(strings.Trim(words[i], "#.:")) {
			continue
		}
		if !titleWords[fold(words[i-1])] {
			return words
		}
		for _, w := range words[:i-1] {
			if f := fold(w); !titleWords[f] && !trailingWords[f] {
				return words
			}
		}
		return words[i+1:]
	}
	return words
}

// wholeName gives back the word without which what is left of a name is none: a
// feature of the land has a word before it ("Race Hill", "Friday Street"), a part
// of a way its number after it ("Junction 14"). all are the words of
// the text, kept those left of it.
func wholeName(all, kept []string) []string {
	if len(kept) == 0 {
		if len(all) == 2 && wayWords[fold(all[0])] && digitsOnly(all[1]) && len(all[1]) < 4 {
			return all
		}
		return kept
	}
	if len(kept) > 1 {
		return kept
	}
	word := fold(kept[0])
	i := slices.Index(all, kept[0])
	if i < 0 {
		return kept
	}
	if wayWords[word] && i+1 < len(all) && digitsOnly(all[i+1]) && len(all[i+1]) < 4 {
		return all[i : i+2]
	}
	if word == "mill" && i+1 < len(all) && fold(all[i+1]) == "race" {
		return all[i : i+2] // the water that drives a mill
	}
	if !landWords[word] || i == 0 {
		return kept
	}
	before := fold(all[i-1])
	_, weekday := weekdayNames[before]
	if before == "course" && i > 1 && fold(all[i-2]) == "race" {
		return all[i-2 : i+1] // Race Course Road
	}
	if weekday && len(before) >= 5 || nameWords[before] || countedWays[word] && inFigures.MatchString(all[i-1]) {
		return all[i-1 : i+1]
	}
	return kept
}

// countedWays are such features that are counted, in figures, where they name a place: 2nd
// Avenue, 42nd Street.
var countedWays = set("street avenue bridge lock")

var inFigures = regexp.MustCompile(`^\d{1,3}(?:st|nd|rd|th)$`)

// articled says whether the last of the words that stand before a name is the article
// it begins with: Les Trois Chênes, Het Elzenbos. An article with a small letter only leads
// to the name, as does one behind a preposition with a capital letter; "The" is part of
// it where it stands before one word alone, The Bay: "The Alder Bank" is Alder Bank.
func articled(lead, name []string, more bool) bool {
	if len(lead) == 0 || len(name) == 0 {
		return false
	}
	w := lead[len(lead)-1]
	f := fold(w)
	if r, _ := utf8.DecodeRuneInString(w); !nameArticles[f] || !unicode.IsUpper(r) {
		return false
	}
	if f == "de" && len(lead) > 1 && lead[len(lead)-2] == strings.ToUpper(lead[len(lead)-2]) {
		return false // COURSE DE VALBRUNE, where all words are in capitals
	}
	if f == "the" {
		return len(lead) == 1 && len(name) == 1 && !more
	}
	if len(lead) > 1 {
		r, _ := utf8.DecodeRuneInString(lead[len(lead)-2])
		return !unicode.IsUpper(r) || len(fold(lead[len(lead)-2])) > 3
	}
	return true
}

// nameArticles are articles that names of places begin with, some with the preposition before
// them: Am Seegrund, Zum Weiher.
var nameArticles = set("the la le les el los las il lo gli het de den der die das am im zum zur")

// withoutArticle is a slug without the article that it begins with.
func withoutArticle(slug string) string {
	if first, rest, ok := strings.Cut(slug, "-"); ok && nameArticles[first] {
		return rest
	}
	return slug
}

// wayWords have a number after them, landWords a word before them, where they
// name a place; nameWords are those of titleWords that may be that word.
var wayWords = set("junction route gate lock pier sector zone circuit loop trail")

var landWords = set(`hill hills point street wood woods lane green park common bridge field fields heath lake bank moor meadow meadows mere water river
	road way gardens garden farm mill hall beach bay sands furlong mile marsh reach edge ridge valley island quay pond ponds brook cottage down downs end cross
	market avenue court square grove row close corner crescent drive verge barn sands leys dyke loch glen weir copse spinney dell orchard rock rocks works tor crag
	brow wharf fen fens moss beck burn dale dock docks harbour cove cliff cliffs dunes reservoir lakes canal basin quarry seafront towpath promenade prom causeway path ness spit staithe
	hollow knoll heights estuary lagoon gorge pasture paddock campus arboretum racecourse airfield aerodrome pier lock locks viaduct creek inlet ravine weald wold wolds tarn`)

var nameWords = set(`start varsity race final page finish date list round official event new long number numbers time times course run club result results record
	week series copy sheet edition draft data position name season session table update free community provisional ranking member full published print report`)

// cutSpans replaces dates, times of day and distances by a bar.
func cutSpans(text string, loose bool) string {
	text = cutDates(text, loose, " | ")
	for range 2 { // "5 km / 3.1 miles"
		if _, from, to, ok := findDistance(text); ok {
			text = legsBefore.ReplaceAllString(text[:from], "") + " | " + text[to:]
		}
	}
	text = cutMonthYear(text)
	sc := dateScan{s: text, toks: tokenize(text)}
	for i := range sc.toks {
		if _, next, ok := sc.clockAt(i); ok {
			text = text[:sc.toks[i].from] + " | " + text[sc.toks[next-1].to:]
			break
		}
	}
	return text
}

// legsBefore says how many legs of a distance a relay has: the "4 x" of 4 x 5 km.
var legsBefore = regexp.MustCompile(`(?:^|\s)\d{1,2} ?[x×] ?$`)

// cutDates puts a mark in the place of every date.
func cutDates(text string, loose bool, mark string) string {
	for {
		dates := scanDates(text, loose)
		if len(dates) == 0 {
			return text
		}
		f, from := dates[0], dates[0].from
		if loose && sureWeekday(f, text) != f.weekday { // the So of a lake
			from += strings.IndexFunc(text[from:], unicode.IsDigit)
		}
		text = text[:from] + mark + dayBehind.ReplaceAllString(text[f.to:], "")
	}
}

// dayBehind is the word for a day behind a date, in Lithuanian: 2026 m. sausio 3 d.
var dayBehind = regexp.MustCompile(`^ d\.?(?:$|[ ,])`)

// yearBehind is the token of a year that stands no more than three behind another, as behind a
// month; 0 for none.
func yearBehind(toks []token, i int) int {
	for j := i + 1; j < len(toks) && j <= i+3; j++ {
		if toks[j].isYear() {
			return j
		}
	}
	return 0
}

// cutMonthYear replaces "January 2026", a month with its year and no day.
func cutMonthYear(text string) string {
	toks := tokenize(text)
	for i, t := range toks {
		if t.kind != 'l' {
			continue
		}
		if _, ok := monthNames[t.word]; !ok {
			continue
		}
		if j := yearBehind(toks, i); j > 0 {
			return text[:t.from] + " | " + text[toks[j].to:]
		}
	}
	return text
}

var segmentMarks = strings.NewReplacer(" - ", "|", " – ", "|", " — ", "|", "–", "|", "—", "|", ",", "|", ";", "|", "(", "|", ")", "|", "•", "|", "·", "|", "\t", "|", "[", "|", "]", "|", " / ", "|", "\n", "|", ". ", "|", "! ", "|", "* ", "|", " @ ", "|", " | ", "|", " » ", "|")

// segments divides a title at marks. The point of a shortened word or an initial is
// none: St. Aldith's Common, T. Holm Meadow.
func segments(text string) []string {
	return strings.Split(segmentMarks.Replace(shortened.ReplaceAllString(text, "$1 ")), "|")
}

var shortened = regexp.MustCompile(`\b(\pL|(?i:St|Ste|Sv|Św|Sta|Sto|Dr|Mt|Ft|Gt|Lt|Pt|Nr|Upr|Lwr|Nth|Sth))\. `)

// clubWords mark the organiser of a run rather than its course.
var clubWords = set("club harriers ac runners striders joggers athletic athletics verein association society league presents council organised organized society laufverein amicale federation road")

// remarkWords mark lines that speak of something else than where the run was.
var remarkWords = set(`saved diary diaries calendar fixtures weather timekeeper timekeepers director volunteers volunteer printed produced generated created exported thanks thank please contact email rappel reminder erinnerung recordatorio promemoria herinnering paminnelse pamindelse przypomnienie
	www http https note notes record records first prize sponsored sponsor temperature wind conditions marshals marshal tel phone copyright page next wetter meteo
	startofevent endofevent affiliated referee juez juge arbitre giudice sedzia tack bedankt danke merci gracias grazie dziekujemy obrigado dekujeme battery
	timed organised organized organiser report photos enquiries queries question total participants provisional team`)

const mostWays = 20

// countsRuns says whether a title is a number behind a word that says nothing: "Loop
// 107", a run in Dutch. Route 2 may be a name, as no place has mostWays of them.
func countsRuns(text string) bool {
	f := strings.Fields(fold(text))
	return len(f) == 2 && digitsOnly(f[1]) && (dullFiles[f[0]] || wayWords[f[0]] && looseNumber(f[1]) >= mostWays)
}

// inQuotes is a text of some words between quotation marks.
var inQuotes = regexp.MustCompile(`(?:^|[\s(])(?:['‘‚"“„«»][ ]?)(\pL[^'’‘"“”„«»]{3,40})(?:[ ]?['’‘"“”«»])(?:$|[\s),.:;–-])`)

// withoutNickname leaves out what a race is called in quotation marks beside the name of its place: Glebe Field
// "Guess Your Time" 5k. A name of the land in the marks, and one beside nothing but a club and general
// words, is that of the course.
func withoutNickname(title string) string {
	m := inQuotes.FindStringSubmatchIndex(title)
	if m == nil {
		return title
	}
	name := strings.Fields(fold(title[m[2]:m[3]]))
	rest := title[:m[0]] + " " + title[m[1]:]
	place := plainWords(cutSpans(rest, false))
	words := strings.Fields(fold(place))
	if len(name) < 2 || landWords[name[len(name)-1]] || len(words) < 2 || !startsUpper(place) || hasClubWord(words) || startsAsClub(place) || len(findDates(title[m[2]:m[3]])) > 0 {
		return title
	}
	return rest
}

// chatMark is what a telephone writes before a message: when it came and from whom,
// "[13/01/2026, 10:22:31] Ann: ", "13/01/2026, 10:22 - Ann Moss: ".
var chatMark = regexp.MustCompile(`^\s*\[?\d{1,4}[./-]\d{1,2}[./-]\d{2,4},? \d{1,2}[:.]\d\d(?:[:.]\d\d)?(?: ?[APap]\.?[Mm]\.?)?\]?(?: -)? [^:\[\]]{1,40}: `)

// pageMark is the number of a page in the head of a printed list: Seite 2, Strana 1/4.
var pageMark = regexp.MustCompile(`(?i)(?:^|[\s|,;–-])(?:page|seite|strana|stranka|stran|str|sivu|oldal|sayfa|σελίδα|σελ|pagina|página|pág|pag|strona|str|side|sida|lehekülg|lk|lappuse|lpp|puslapis|psl|stranica|страница|сторінка|стор|стр)\.?\s*\d+(?:\s*(?:/|of|von|z|ze|av|af|sur|de|di|van|iš|no|из|з|от)\s*\d+)?\s*$`)

// courseWords lists what a title line may give as the name of the course.
func courseWords(title string, lex *lexicon, book *courseBook) (out []courseWord) {
	title = strings.TrimSuffix(strings.TrimSpace(title), ":") // "38 people ran at Alder Bank:"
	if to := movedTo(title); to != "" {
		if slug, ok := book.within(to); ok {
			return []courseWord{{text: to, slug: slug, weight: 120, why: movedThere}}
		}
		if slug := Slug(plainWords(to)); len(slug) >= 3 {
			return []courseWord{{text: to, slug: slug, weight: 120, why: movedThere}}
		}
	}
	if slug, ok := book.within(title); ok {
		return []courseWord{{text: title, slug: slug, weight: 100, why: "a known course"}}
	}
	title = title[len(chatMark.FindString(title)):]
	if t := strings.TrimSpace(title); len(t) > 4 && strings.IndexByte("*~=#_", t[0]) >= 0 && t[len(t)-1] == t[0] {
		title = strings.Trim(t, string(t[0])+" ") // "*** ALDER BANK ***"
	}
	if isCommand(title) {
		for _, m := range quotedArgument.FindAllStringSubmatch(title, -1) {
			out = append(out, courseWords(m[1], lex, book)...)
		}
		return out
	}
	if strings.Count(title, ":") > 1 {
		title = labelledVenue(title, lex)
	}
	if strings.HasPrefix(strings.TrimSpace(title), "*") && len(findDates(title)) == 0 {
		return nil // the legend of a mark: "* personal best"
	}
	comment := strings.HasPrefix(strings.TrimSpace(title), "# ") || strings.HasPrefix(strings.TrimSpace(title), "//")
	if bare := strings.TrimLeft(title, "#/; "); strings.Count(bare, "=") == 1 && !strings.Contains(bare, ":") {
		if label, _, _ := strings.Cut(bare, "="); lex.read(label).known {
			title = strings.Replace(bare, "=", ": ", 1) // # venue=Alder Bank
		}
	}
	if bare := strings.TrimLeft(title, "#"); bare != title && bare != "" && bare[0] > ' ' {
		if label, _, ok := strings.Cut(bare, ":"); ok && len(strings.Fields(label)) == 1 {
			if g := lex.read(label); !isVenueLabel(fold(label)) && !(g.known && g.meaning == Course) {
				return nil // "#format: v3", what a program says of its file
			}
			title = bare
		}
	}
	if label, value, ok := strings.Cut(title, "="); ok && strings.TrimSpace(value) != "" && len(strings.Fields(label)) == 1 && !lex.read(label).known {
		return nil // the legend of a short form: "DNF = did not finish"
	}
	title = pageMark.ReplaceAllString(withoutNickname(title), " | ")
	if first, _, ok := strings.Cut(title, " | "); ok && headsFirst(first) {
		return nil // "Fastest woman | Jo Lee | 19:41"
	}
	counted := false
	if series, rest, ok := strings.Cut(title, ", "); ok && anyWord(series, seriesWords) && countedRun.MatchString(rest) {
		title = rest // "Winter league, leg 3: Alder Bank"
	}
	if m := countedRun.FindStringSubmatchIndex(title); m != nil {
		title, counted = title[m[2]:], true
	}
	hasDate := len(findDates(title)) > 0
	issued := hasDate && len(titleDates(title, "", lex, false)) == 0 // it is when the list was made
	_, _, _, hasDistance := findDistance(title)
	if !hasDate && !hasDistance && numbersSomething.MatchString(title) {
		return nil // "Registered charity 1234567"
	}
	text := title
	labelled, town := false, false
	address := isAddress(title) && !hasDate
	if label, value, ok := strings.Cut(title, ":"); ok && !strings.Contains(label, "|") && !clockAround(label, value) {
		g := lex.read(label)
		switch {
		case countsRunsOf.MatchString(label):
			return nil // "50 runs: Jo Lee"
		case townLabel(fold(label)) && !(g.known && g.meaning == Course) && !isVenueLabel(fold(label)) && !clubWords[fold(label)]:
			if isCondition(value) || allHeadings(lex, value) {
				return nil
			}
			text, town = value, true
		case g.known && g.meaning == Course || isVenueLabel(fold(label)):
			if first, _, _ := strings.Cut(value, ","); isCondition(first) {
				return nil // "Course: firm", "Ground: soft, gate 3 locked"
			}
			if allHeadings(lex, value) {
				return nil // "Plaats: Naam | Tijd", the headings of a list of bests
			}
			text, labelled = value, true
		case g.known && g.meaning != Date && g.meaning != Session && len(findDates(value)) > 0 && plainWords(cutSpans(value, false)) == "" && plainWords(label) != "" && len(strings.Fields(label)) > 1:
			text = label // "Lock Point: 26 October 2024"
		case anyWord(label, issueWords) && len(strings.Fields(label)) <= 3:
			return nil // "Next run: 10 January 2026"
		case headsFirst(label):
			return nil // "First man: Jo Lee 19:41"
		case endsAsClub(label) && (hasDate || hasDistance) && len(findDates(label)) == 0:
			text = value // "Vale Harriers: Alder Bank 5k"
		case g.known && g.meaning == Distance && behindDistance(value) != "":
			text = behindDistance(value)
		case len(strings.Fields(label)) <= 3 && anyWord(label, eventLabels):
			text = value // "Competition: Alder Bank"
		case len(strings.Fields(label)) > 1 && saysKind(cutSpans(label, false)) && plainWords(cutSpans(value, false)) != "":
			text = value // "Interclub 5k: Ferry Walk, 3 May"
		case anyWord(label, seriesWords) && isName(segments(cutSpans(value, false))[0]) && plainWords(segments(cutSpans(value, false))[0]) != "":
			text = value // "University league round 1: Ferry Walk, 3 May"
		case g.known && g.meaning != Other && plainWords(label) != "":
			return nil // another label: Date:, Distance:, Start: …
		case routeLabels[fold(label)]:
			if first := segments(cutSpans(value, false))[0]; !isName(first) && (sentence(first) || !startsUpper(strings.TrimSpace(first))) || isCondition(first) || len(Slug(plainWords(first))) < 3 {
				return nil // "Route: two laps, gate 3 locked", "Route: B"
			}
			text = value
		case plainWords(cutSpans(label, false)) == "", saysField(cutSpans(label, false)):
			text = value
		case namesNothing(cutSpans(value, false)) && !isRemark(label) && (hasLetter(value) || len(findDates(value)) > 0 || saysYear(value)):
			text = label
		case beforePlace[finalWord(label)]:
			text = value // "Vale Borough presents: Alder Bank"
		case len(findDates(label)) > 0:
			// "Alder Bank, 3 May: ..." or "Alder Bank 3 May - first woman: ...": what
			// stands right before the colon says whether a place follows.
			segs := segments(label)
			last := strings.TrimSpace(segs[len(segs)-1])
			g := lex.read(last)
			behind := finalSpan(cutDates(label, false, "|"))
			if text = value; saysField(value) || behind != "" && (plainWords(behind) != "" || isOfficeMark(behind)) && !isVenueLabel(fold(behind)) && !(lex.read(behind).known && lex.read(behind).meaning == Course) {
				text = label[:strings.LastIndex(label, behind)] // "Alder Bank 3 May 2026 Scribe: Jo Lee"
			} else if len(segs) > 1 && len(findDates(last)) == 0 && !isVenueLabel(fold(last)) && !(g.known && g.meaning == Course) {
				text = label[:strings.LastIndex(label, last)]
			}
		default:
			return nil
		}
	}
	if f := strings.Fields(text); labelled && len(f) > 1 && nameWords[fold(f[0])] && isName(text) && !titleWords[finalWord(text)] {
		return []courseWord{{text: strings.TrimSpace(text), slug: Slug(text), weight: 90, why: labelledCourse}} // "Course: Date Palm Grove"
	}
	if m := heldAt.FindStringSubmatch(text); m != nil && !labelled && hasDate && !issued {
		if name := plainWords(m[1]); len(Slug(name)) >= 3 && !isSection(name) {
			return []courseWord{{text: name, slug: Slug(name), weight: 80, why: "the line says that the run was held there"}}
		}
	}
	if first, _, _ := strings.Cut(fold(text), " "); !labelled && !remarkWords[first] && countsPeople(text) {
		text = namesBesideCount(text)
	}
	if !labelled && endsInResult(text) {
		return nil
	}
	if !labelled && !hasDate && !hasDistance && isSigned(text) {
		return nil
	}
	if isRemark(strings.TrimLeft(text, "#/; ")) && !labelled && !(hasDistance && saysWhere(text)) || isSection(text) || saysNoRun(text) {
		return nil
	}
	n := 0
	for _, seg := range segments(cutSpans(text, false)) {
		if _, known := book.exact[fold(seg)]; !labelled && !known && greets(seg) {
			continue
		}
		whole := strings.TrimSpace(seg)
		if (saysMaker(whole) || cameFrom.MatchString(whole)) && !labelled {
			continue // "by Wilf", above what he has posted; "Guests from Mill Leat"
		}
		whole = before(runAndWalk, whole)
		if !labelled {
			whole = before(paidFor, whole)
		}
		if strings.HasPrefix(whole, "@") && !strings.Contains(whole, ".") {
			whole = whole[1:] // "@Alder Bank"
		}
		whole = before(takesPlace, whole)
		if otherTimes[fold(whole)] && !labelled {
			continue // "Last week (3 May 2026)"
		}
		whole = before(codeBehind, whole)
		behind, placed := behindWhere(whole)
		if placed && !labelled {
			whole = behind
		}
		if label, name, _ := strings.Cut(whole, " "); n > 0 && !labelled && len(label) > 4 && (isVenueLabel(fold(label)) || routeLabels[fold(label)]) && startsUpper(name) {
			whole, placed = name, true // "Feierabendlauf 5 km, Strecke Nordrunde"
		}
		seg = plainWords(whole)
		if !labelled {
			seg = plainWords(placeIn(seg))
		} else if f := strings.Fields(fold(whole)); seg == "" && len(f) == 2 && f[0] == "course" && digitsOnly(f[1]) {
			seg = whole // "Course: Course 3"
		} else if len(f) == 2 && fold(seg) == f[0] && trailingWords[f[1]] && isName(whole) {
			seg = whole // "Proga: Hrastov Log"
		}
		if f := strings.Fields(seg); len(f) > 1 && issueWords[fold(f[len(f)-1])] && !labelled {
			seg = plainWords(strings.Join(f[:len(f)-1], " ")) // "Alder Bank Newsletter, published 5 May"
		}
		if !labelled && (saysWe(seg) || turnedWords.MatchString(fold(seg))) {
			continue // "A happy new season from all of us", "Course run in reverse direction"
		}
		if !labelled && MarathonMetres(seg) > 0 {
			continue // "Half marathon"
		}
		if !labelled && oneAgainst.MatchString(seg) {
			continue // "Alder Bank v Mill Leat", at which of the two?
		}
		slug := Slug(seg)
		if isVenueLabel(fold(seg)) || strings.Contains(whole, "@") {
			continue // a heading, an address
		}
		if g := lex.read(seg); !labelled && g.known && !g.forced && g.meaning == Distance && strings.IndexByte(seg, ' ') < 0 {
			continue // "Distance 4.9 km"
		}
		if issued && !labelled && anyWord(seg, issueWords) {
			continue // "Wydruk z dnia 01.09.2026"
		}
		if f := strings.Fields(fold(seg)); hasDate && !labelled && len(f) > 0 && !slices.ContainsFunc(f, func(w string) bool { return !dayLead[w] }) {
			continue // "rozegrany dnia 3 maja 2026"
		}
		if f := strings.Fields(fold(seg)); hasDate && !labelled && len(f) > 0 && otherMatters[f[0]] && (len(f) == 1 || issued) {
			continue // "Rules as of 1 January 2026"
		}
		if allIssueWords(seg) {
			continue // "3 May 2026, published 5 May 2026", "Desde el 3 de mayo de 2014"
		}
		if _, weekday := weekdayNames[fold(seg)]; weekday {
			continue // "Sat, Nov 21, 2026" between commas
		}
		if len(slug) < 3 || !hasLetter(slug) || clockMark.MatchString(slug) || isSection(seg) || (isRemark(seg) || saysColumn(lex, seg) || saysField(whole) || isCondition(seg) || countsRuns(seg) || saysOrder(whole) || leadsOn(seg)) && !labelled {
			continue
		}
		w := courseWord{text: seg, slug: slug, weight: bareTitle, why: leftOfTitle}
		switch {
		case labelled:
			w.weight, w.why = 90, labelledCourse
		case town:
			w.weight, w.why = 20, "it is labelled as the town"
		}
		if hasDistance {
			w.weight += 15
		}
		if counted && n == 0 {
			w.weight += 10
		}
		if placed && !labelled && !town {
			w.weight += 10
		}
		if hasDate {
			w.weight += 8
		}
		if comment && !labelled && !hasDate && !hasDistance {
			w.weight -= 30 // what a program writes above its figures
		}
		if !labelled && (whispered(title) && !hasDate && !hasDistance || seg == strings.ToLower(seg) && (title != strings.ToLower(title) || hasDate && !strings.ContainsAny(seg, " -_") && seg != strings.ToUpper(seg)) || !hasDate && !hasDistance && startsSmall(seg)) {
			w.weight -= 25 // a name begins with a capital letter: "Corsa di anniversario", "løpt 3. mai 2026", "corrections to Wendy"
			w.small = true
		}
		if !labelled && sentence(seg) {
			w.weight -= 6 // behind a line that is written as a name
		}
		words := strings.Fields(fold(seg))
		if !labelled && (endsAsClub(whole) || startsAsClub(whole) || startsAsClub(seg)) || hasClubWord(words) {
			w.weight -= ofClubOnly
		} else if !labelled && !town && (namesOffice(whole) || address) {
			w.weight -= ofOffice
		} else if !labelled && n > 0 && !hasDate && !hasDistance && !landWords[words[len(words)-1]] && namesOffice(out[0].text) {
			w.weight -= ofDepartment
		}
		if last := words[len(words)-1]; !labelled && (!landWords[last] || last == "works") && (anyWord(whole, seriesWords) || hasDistance && !hasDate && anyWord(title, seriesWords)) {
			w.weight -= ofSeries
		}
		if last := words[len(words)-1]; !labelled && (!landWords[last] || anyWord(whole, charity)) && runForWhom.MatchString(title) {
			w.weight -= 18 // who runs, or what for; a place may stand in another line
		}
		if !labelled && worksRun.MatchString(fold(seg)) {
			w.weight -= 18
		}
		if !labelled && saysKind(seg) {
			w.weight -= ofKind
			w.small = true
		}
		if !labelled && feasts.MatchString(fold(seg)) {
			w.weight -= 25 // when it was, not where
		}
		if runningGroup.MatchString(whole) && !anyWord(seg, clubWords) && !labelled {
			w.weight -= 25 // who runs there
		}
		if last := words[len(words)-1]; len(words) > 1 && (last == "memorial" || last == "cup" || last == "trophy" || last == "challenge") {
			w.weight -= 25 // what the run is called, not where it is
		}
		if len(words) > 5 {
			w.weight -= 20
		}
		w.weight -= 3 * n
		n++
		out = append(out, w)
	}
	return out
}

// numbersSomething is a number that is too long for that of a run: of a charity, a licence, a telephone.
var numbersSomething = regexp.MustCompile(`(?:^|[^\d.,-])(?:\d{7,}|0\d{2,4}[ -]\d{5,7}|\d{3} \d{3} \d{3,4}|0\d{2,4} \d{3} \d{3,4})(?:\D|$)`)

// countedRun leads to where a run of a series was: "Fixture 3: Alder Bank", "Stage 2 - Mill Leat".
// Common practice, no source.
var countedRun = regexp.MustCompile(`^(?i:(?:` + countedWord + `) (?:no\.? ?|nr\.? ?|n° ?|#)?\d{1,2}\.?(?: of \d{1,2}| ?/ ?\d{1,2})?|\d{1,2}(?:st|nd|rd|th|er|e|a|ª|º)?\.? ?(?:` + countedWord + `)) ?(?:[:–—]| -|,) (\p{Lu})`)

const countedWord = `fixture|match|leg|stage|meeting|heat|counter|étape|etappe|etapa|tappa|manche|prova|prueba|jornada|giornata|wertungslauf|wedstrijd|loop|lopp|deltävling|afdeling|løp|løb|osakilpailu|futam|bieg|závod|kolo|jooks`

// dayLead are words that lead to the day on which a run was, and "held" before them, in the
// languages of the headings, folded. Common practice, no source.
var dayLead = set(`postponed rescheduled rearranged moved delayed originally due planned scheduled instead replacing verlegt verschoben nachgeholt reporte reportee deplacee aplazada aplazado trasladada rinviata rinviato spostata uitgesteld verplaatst uppskjutet flyttat utsatt held ran took place dated day on gelaufen stattgefunden ausgetragen am fait couru courue dispute disputee tenu tenue organise organisee disputata disputato tenuta tenutasi svolta svoltasi corsa nel giorno
	celebrada celebrado realizada realizado corrida disputada disputado dia el gehouden gelopen gehoudene dd dag afholdt avholdt lobet lopt loptes kort genomford genomfort sprunget dagen pidetty pidettiin juostu juostiin paivana
	dnia dniu w z rozegrany rozegrana rozegrane rozegrano odbyty odbyl odbyla dne den v konany konana konane kona sa dna zo odrzan odrzana odrzano dana na desfasurat desfasurata organizat pe din data toimunud toimus peetud notika norise ivyko surengtas
	tarihli tarih gunu duzenlenen rendezett megrendezett tartott cynhaliwyd ar rhedwyd от в на г проведен проведено состоялся відбувся проведена στις την`)

// heldAt is the place of which a line says that a run was held there, with small words around it:
// "Report of the run held at Alder Bank on Saturday 3 May".
var heldAt = regexp.MustCompile(`(?:^|\s)(?:held|run|runs|ran|took place|taking place|lauf|gelaufen|couru|courue|disput[ée]e?|celebrad[ao]|tenut[ao]si?|gehouden|gelopen) (?:at|in|im|am|auf dem|à|au|en|a|al|nel|bij|op) ((?:the |der |die |la |le |el |het |de )?\p{Lu}[^,;:()\d]*?) (?:on|on the|am|vom|le|du|el|il|op|d\.d\.)\s+[^,;:()]*\d`)

// endsInResult says whether a text is a name and a time that is no hour at which people start:
// "Jo Lee 21:04".
func endsInResult(text string) bool {
	at := strings.LastIndexByte(text, ' ')
	m := resultClock.FindStringSubmatch(text[at+1:])
	return at > 0 && m != nil && (m[1] != "0" && m[1] != "5" || m[2] != "") && looksNamed(strings.TrimSpace(text[:at]))
}

// resultClock is such a time, with the last figure of its seconds and what follows.
var resultClock = regexp.MustCompile(`^\d{1,2}:[0-5](\d)((?:[.,]\d+)?)$`)

// countsPeople says whether a line tells how many ran: "14 runners", "Diesmal liefen 17 Läufer".
func countsPeople(text string) bool {
	words := strings.Fields(fold(text))
	for i, w := range words {
		if digitsOnly(w) && (i+1 < len(words) && (partakerWords[words[i+1]] || words[i+1] != "of" && countedPeople[words[i+1]]) || i > 0 && partakerWords[words[i-1]]) {
			return true
		}
	}
	return false
}

// namesBesideCount is what may name a place on a line that tells how many ran: what stands apart with
// capital letters, before the number or behind a preposition, "Le 3 mai, 12 coureurs ont couru au
// Parc du Saule". What else such a line says, it says of the people.
func namesBesideCount(text string) string {
	var kept []string
	for _, seg := range segments(cutSpans(text, false)) {
		words := strings.Fields(strings.Trim(seg, " .!"))
		if seg = strings.Join(words, " "); isName(seg) {
			kept = append(kept, seg)
			continue
		}
		for i, w := range words {
			if i > 1 && digitsOnly(w) && isName(strings.Join(words[:i], " ")) {
				kept = append(kept, strings.Join(words[:i], " "))
				break
			}
			if i+1 < len(words) && whereWords[strings.ToLower(w)] && startsUpper(words[i+1]) {
				to := len(words)
				for !startsUpper(words[to-1]) {
					to--
				}
				kept = append(kept, strings.Join(words[i+1:to], " "))
				break
			}
		}
	}
	return strings.Join(kept, " | ")
}

// namesNothing says whether no piece of a text names a place: there are general words and counts of laps,
// "5 km (3 laps)".
func namesNothing(text string) bool {
	return !slices.ContainsFunc(segments(text), func(piece string) bool { return plainWords(piece) != "" && !isCondition(piece) })
}

// finalSpan is what stands behind the last bar of a text, "" where there is none.
func finalSpan(text string) string {
	i := strings.LastIndexByte(text, '|')
	if i < 0 {
		return ""
	}
	return strings.Trim(text[i+1:], " ,;.–-")
}

// countsRunsOf says of whom it follows that they have run so often.
var countsRunsOf = regexp.MustCompile(`(?i)^\s*\d{1,4} (?:runs|starts|finishes|läufe|courses|carreras|corse|lopen|lopp|løb|løp|biegów)$`)

// runForWhom says that a line tells for whom or for what a run is: "Depot fun run", "Staff 5k".
var runForWhom = regexp.MustCompile(`(?i)\b(?:fun|charity|staff|sponsored|family|santa|corporate|company|works|office|school) (?:run|race|jog|5 ?km?)\b`)

// charity is a word for a run that may be called after a place where it is not.
var charity = set("charity")

// worksRun is a run called in one word after the firms or the school whose people run, folded.
var worksRun = regexp.MustCompile(`^(?:bedrifts|firmen|firma|betriebs|bedrijven|foretags|virksomheds|skole|skol|schul)(?:lop|lopet|lauf|loop|lopp|loppet|lob)$`)

// feasts are days of the year as runs on them are called. Common practice, no source.
var feasts = regexp.MustCompile(`^(?:new years?(?: (?:eve|day))?|christmas(?: (?:eve|day))?|boxing day|easter(?: (?:sunday|monday|saturday))?|good friday|bank holiday(?: monday)?|may day|halloween|thanksgiving|valentines?(?: day)?|st (?:patrick|david|george|andrew)s day|silvester(?:lauf)?|neujahr(?:slauf)?|oster(?:montag|sonntag|lauf)?|ostern|weihnachten|pfingsten|pfingstmontag|saint sylvestre|noel|san silvestre|nochevieja|ano nuevo|capodanno|pasquetta|oudejaars(?:loop)?|nieuwjaars(?:loop)?|kerst(?:loop)?)$`)

// runningGroup says that a line names people who run together.
var runningGroup = regexp.MustCompile(`(?i)^friends of |\b(?:running|runners|run|jogging|joggers|walking) (?:group|crew|society|team|friends)$`)

// saysYear says whether a text is a year and nothing else.
func saysYear(text string) bool {
	text = strings.TrimSpace(text)
	y := int(looseNumber(text))
	return len(text) == 4 && digitsOnly(text) && y >= firstYear && y <= lastYear
}

// seriesWords say that a name is that of a competition, which may go from place to place, and not of
// where it was this time: "Inter-Works League round 2 - Mill Lade Path". Common practice, no source.
var seriesWords = set("league series cup trophy liga ligue lega serie coupe coppa copa taca pokal puchar kupa cyfres cynghrair karusell karusellen karussell karusel karusellet kuntokarusell zomercompetitie wintercompetitie avondcompetitie laufserie sommerserie winterserie estivo invernale autunnale primaverile cykl seriaal sorozat serien serija")

// ofSeries is what such a name weighs less than that of a place, ofDepartment what stands behind the
// name of an office on its line does: "Gemeente Zandhoek – Sport & Bewegen".
const ofSeries, ofDepartment = 12, 20

// bareTitle is the weight of a name on a line that says nothing else of the run.
const bareTitle = 40

// ofClubOnly is what the name of a club weighs less than that of a place.
const ofClubOnly = 25

// endsAsClub says whether a name ends as clubs' names do, before general words: "Heron Town RC",
// "Birch Heath Club results".
func endsAsClub(text string) bool {
	words := strings.Fields(fold(text))
	for len(words) > 2 && titleWords[words[len(words)-1]] && !clubEnds[words[len(words)-1]] {
		words = words[:len(words)-1]
	}
	return len(words) > 1 && clubEnds[words[len(words)-1]]
}

// hasClubWord says whether one of the folded words of a name is one of clubs. What ends in a feature of
// the land is a place, Cricket Club Ground, and so is a road: Station Road, and not Brindle Road Runners.
func hasClubWord(words []string) bool {
	last := words[len(words)-1]
	if len(words) > 1 && landWords[last] && !clubWords[last] {
		return false
	}
	return slices.ContainsFunc(words, func(w string) bool { return clubWords[w] && w != "road" })
}

// startsAsClub says whether a name of two or three words begins with initials that clubs put before
// the name of their place: "TSV Mölling".
func startsAsClub(text string) bool {
	words := strings.Fields(text)
	return (len(words) == 2 || len(words) == 3) && clubFronts[words[0]]
}

// clubFronts are such initials, as they are written. Common practice, no source.
var clubFronts = set("SV TSV LG TV TuS SC VfL VfB SSV LC LAC LAZ SG FC ASV MTV DJK ATV ASD GSD SSD CD CA CF AD AC AS AV IF IK IFK FK LK KS KB LKS MKS SK TJ USC UA")

// clubEnds are such words. Common practice, no source.
var clubEnds = set("ac rc tc acs harriers runners striders joggers athletics club klub klubb tri triathlon roadrunners verein laufverein lauftreff seura egyesulet lobere lopere lopare lopers loopgroep loopclub laufer laufgruppe lauffreunde laufteam coureurs corredores podisti biegacze bezci juoksijat urheilijat futok trkaci tekaci friidrett friidrott friidraet idrettslag idrottsforening sportclub бегуны бігуни бегачи δρομεις")

// sentence says whether a text goes on in small letters as a remark does, "Well done everybody",
// and not as a name, in which only short words are small: "Parc de la Saule".
func sentence(text string) bool {
	words := strings.Fields(text)
	for _, w := range words[min(1, len(words)):] {
		if r, n := utf8.DecodeRuneInString(w); unicode.IsLower(r) && len(w)-n >= 3 && !landWords[fold(w)] && !nameJoins[w] && w == strings.ToLower(w) {
			return true
		}
	}
	return false
}

// nameJoins are small words of names that are as long as others: Parc dels Àlbers. Common practice, no source.
var nameJoins = set("dels della delle dello degli unter über")

// startsSmall says whether a text of several words begins as no name does, with a small letter in a word
// that is no article or particle, and has a capital behind it: "corrections to Wendy".
func startsSmall(text string) bool {
	first, rest, more := strings.Cut(text, " ")
	return more && len(first) > 3 && first == strings.ToLower(first) && hasLetter(first) && first != strings.ToUpper(first) && !nameJoins[first] && rest != strings.ToLower(rest) && !particleWords[fold(first)] && !nameArticles[fold(first)]
}

// whispered says whether a line is a sentence without a capital letter, "see below, all checked this
// time.": what somebody wrote to somebody, and no name.
func whispered(line string) bool {
	line = strings.TrimSpace(line)
	return len(strings.Fields(line)) > 2 && strings.ContainsRune(".!?", rune(line[len(line)-1])) && line == strings.ToLower(line) && line != strings.ToUpper(line)
}

// allHeadings says whether every cell of a line is the heading of a column.
func allHeadings(lex *lexicon, line string) bool {
	for _, c := range strings.Split(line, " | ") {
		if g := lex.read(c); !saysColumn(lex, c) && !(g.known && g.meaning == Date && (len(strings.Fields(c)) == 1 || !isName(c))) {
			return false // "Data Park" is a place
		}
	}
	return true
}

// allIssueWords says whether a text has only words that say when a list was made or since
// when there are runs, and articles.
func allIssueWords(text string) bool {
	found := false
	for _, w := range strings.Fields(fold(text)) {
		if !issueWords[w] && !nameArticles[w] && !titleWords[w] {
			return false
		}
		found = found || issueWords[w]
	}
	return found
}

// clockAround says whether a colon stands within a time: 9:30.
func clockAround(before, after string) bool {
	n := len(before)
	return n > 0 && before[n-1] >= '0' && before[n-1] <= '9' && after != "" && after[0] >= '0' && after[0] <= '9'
}

// oneAgainst is a match of two clubs or places.
var oneAgainst = regexp.MustCompile(`\pL (?:v|V|v\.|vs|vs\.|VS|versus|gegen|contre|contra|contro|tegen) \p{Lu}`)

// clockMark is what a date and a time of day leave that stand together: 20261121T0900.
var clockMark = regexp.MustCompile(`^t\d{4,6}z?$`)

// labelledCourse is why the words after "Course:" or "Venue:" are.
const labelledCourse = "it is labelled"

// movedThere is why a place is believed that a line says a run was moved to.
const movedThere = "the line says that the run was moved there"

// leftOfTitle is why words of a title are believed to name a course that nothing else knows.
const leftOfTitle = "what is left of the title without date and general words"

// otherTimes are headings of what was at another time.
var otherTimes = set("", "last week", "last weeks", "last time", "last run", "last month", "last year", "previous week", "previous run", "the week before", "week before", "this week", "this weeks", "next week", "vorige woche", "letzte woche", "semaine derniere", "semana pasada", "vorige week", "settimana scorsa", "forra veckan", "sidste uge")

// isCondition says whether a text says in what state the ground was, and no name.
func isCondition(text string) bool {
	words := strings.Fields(fold(text))
	if r, _ := utf8.DecodeRuneInString(strings.TrimSpace(text)); unicode.IsLower(r) && anyWord(text, lapWords) {
		return true // "two laps of the park"
	}
	if len(words) > 1 && digitsOnly(words[0]) && lapWords[words[1]] {
		return true // "2 laps", "3 Runden im Park"
	}
	for _, w := range words {
		if !conditionWords[w] {
			return false
		}
	}
	return len(words) > 0
}

var lapWords = set("lap laps loop loops times circuits runden tours vueltas giri ronden rondjes varv okrazenia kierrosta voltas")

var conditionWords = set(`firm soft muddy mud very quite rather dry wet icy ice heavy good fast slow slippery frozen hard underfoot light moderate strong gusty breeze breezy calm still dull damp bright chilly freezing snow snowy boggy clear fine normal usual measured flat hilly undulating and but in places mostly
	trocken nass matschig sec humide gras grass trail tarmac road
	sunny sun rain rainy windy wind cold hot warm mild cool cloudy cloud overcast fog foggy mist misty frost frosty storm stormy showers drizzle humid
	sonnig regen kalt heiss windig bewolkt nebel schnee pluie soleil vent chaud froid nuageux brouillard lluvia sol viento calor frio nublado pioggia sole vento caldo freddo nuvoloso`)

// greets says whether a text is the beginning of a letter: "Hi Joan", "Dear all".
func greets(text string) bool {
	if m := handsOver.FindString(fold(text) + " "); m != "" {
		return len(strings.Fields(fold(text)[min(len(m), len(fold(text))):])) <= 2 // "Here it is, Joan"
	}
	first, rest, _ := strings.Cut(fold(text), " ")
	if first == "good" {
		first, rest, _ = strings.Cut(rest, " ")
	}
	if openers[first] && greeted[finalWord(rest)] {
		return len(strings.Fields(rest)) <= 3 // "Right you lot"
	}
	return (greetings[first] || dayTimes[first] && (rest == "" || greeted[finalWord(rest)])) && len(strings.Fields(rest)) <= 3
}

// saysMaker says whether a text says who made the list, and nothing else: "by Wilf", "Typed by Jean
// Finch", "Results compiled by J. Finch", "Checked JB". "Results by Mill Lane" may be a place.
func saysMaker(text string) bool {
	words := strings.Fields(text)
	made := false
	for i, w := range words {
		switch f := fold(w); {
		case makerBy[f] && i+1 < len(words):
			name := words[i+1:]
			return len(name) <= 3 && isName(strings.Join(name, " ")) && (made || i == 0 || f == "by" && !landWords[fold(name[len(name)-1])])
		case madeWords[f] || makes[f]:
			made = true
		case made && i+1 == len(words):
			return i > 0 && len([]rune(w)) <= 3 && w == strings.ToUpper(w)
		case !titleWords[f]:
			return false
		}
	}
	return false
}

// makes are words for what somebody did to make a list, beside madeWords, and makerBy stand between
// them and the name. Common practice, no source.
var (
	makes   = set("written recorded kept erfasst getippt geschrieben zusammengestellt ausgewertet saisi saisie redige etabli compile elaborado compilado redactado compilato redatto opgesteld samengesteld ingevoerd getypt sammanstalld udarbejdet sporzadzil sporzadzila")
	makerBy = set("by von par por da door av af przez")
)

// isSigned says whether a line is a name of two or three words and what its bearer does for the run:
// "Dale Parkfield, results desk". A place with a feature of the land in its name is none.
func isSigned(text string) bool {
	name, office, ok := strings.Cut(text, ",")
	words := strings.Fields(name)
	if !ok || len(words) < 2 || len(words) > 3 || !isName(name) || landWords[fold(words[len(words)-1])] {
		return false
	}
	signed := false
	for _, w := range strings.Fields(fold(office)) {
		signed = signed || deskWords[w]
		if !deskWords[w] && !titleWords[w] && !offices[w] {
			return false
		}
	}
	return signed
}

// deskWords say what somebody does for a run, offices what else stands beside them. Common practice,
// no source.
var (
	deskWords = set("desk director timekeeper timekeeping secretary coordinator organiser organizer statistician treasurer captain chairman chairwoman chair webmaster scorer recorder zeitnehmer zeitnahme laufleiter laufleitung schriftfuhrer sportwart chronometreur secretaire cronometrista segretario tijdwaarnemer secretaris tidtagare sekretar")
	offices   = set("head chief assistant lead deputy team hon honorary club")
)

// cameFrom says where people live or mostly run who came: "We welcomed visitors from Mill Leat".
var cameFrom = regexp.MustCompile(`(?i)\b(?:visitors?|guests?|friends|tourists?|newcomers?|gäste|besucher|visiteurs|invités|visitantes|invitados|ospiti|visitatori|bezoekers|gasten|besökare|gäster|gjester|gæster|goście|gości) (?:(?:who )?(?:came|come|travelled|all the way) )?(?:from|aus|von|vom|de|du|da|dal|van|uit|från|fra|z)\b`)

// saysWe says whether a text has a small word for those who write or are written to, which no name has:
// "A happy new season from all of us", "Sent from my phone".
func saysWe(text string) bool {
	return slices.ContainsFunc(strings.Fields(text), func(w string) bool { return speakers[strings.Trim(w, ".,!?")] })
}

// speakers are such words. Common practice, no source.
var speakers = set("us we you my your ich mein meine meinem meiner eure mijn jouw mes vos votre everyone everybody wir uns euch nous vous nosotros vosotros noi voi wij ons jullie")

// takesPlace are words behind the name of a run in a sentence: "The Alder Bank run took place on".
var takesPlace = regexp.MustCompile(`(?i) (?:took place|takes place|was held|was run|fand .*statt|fand|a eu lieu|s'est déroulée?|tuvo lugar|se celebró|si è svolta|si è svolto|vond plaats|vond|odbył się|ägde rum)(?: .*)?$`)

// paidFor are words behind a place for who paid, what for and how much, and the form in which a
// list came: "Alder Bank in aid of the hospice", "Alder Bank, entry fee £2". Common practice, no source.
var paidFor = regexp.MustCompile(`(?i)(?:^| )(?:sponsored by|supported by|in aid of|in memory of|in association with|in partnership with|entry fee|as (?:an? )?(?:pdf|csv|excel)|zugunsten|unterstützt von|gesponsert von|au profit de|sponsorisé par|a beneficio de|patrocinado por|in memoria di|sponsorizzato da|ten bate van|gesponsord door|till förmån för|til fordel for)(?: .*)?$`)

// before is what stands in a text before what an expression finds, all of it where it finds nothing.
func before(found *regexp.Regexp, text string) string {
	if at := found.FindStringIndex(text); at != nil {
		return text[:at[0]]
	}
	return text
}

// runAndWalk are words behind a place for what people do there and who they are.
var runAndWalk = regexp.MustCompile(`(?i) (?:(?:run|runners?|jog|joggers?) ?(?:&|and|or|/|\+) ?(?:walk|walkers?|jog|joggers?)|(?:ladies|women|gents|gentlemen|men) ?(?:&|and|/|\+) ?(?:ladies|women|gents|gentlemen|men))$`)

// isOfficeMark says whether a text before a colon is a short form in capital letters, as of an
// office: the "RD" of "Alder Bank 3 May 2026 RD: Jean Marsh".
func isOfficeMark(text string) bool {
	return len(text) >= 2 && len(text) <= 3 && strings.IndexFunc(text, func(r rune) bool { return r < 'A' || r > 'Z' }) < 0
}

// behindDistance is what follows the distance that a text begins with: "5 km  Alder Bank (3 May 2026)".
// "" where it is no place.
func behindDistance(text string) string {
	_, from, to, ok := findDistance(text)
	if !ok || strings.TrimSpace(text[:from]) != "" {
		return ""
	}
	if name := segments(cutSpans(text[to:], false))[0]; !isName(strings.TrimSpace(name)) || isCondition(name) {
		return ""
	}
	return text[to:]
}

// handsOver are words with which a list is handed over.
var handsOver = regexp.MustCompile(`^(?:and )?(?:here (?:it|they|you|we) (?:is|are|go)|there you (?:are|go)|as promised|hier (?:ist sie|sind sie|bitte)|bitte sehr|voila|les voici|la voici|eccoli|eccola|ahi va|ahi van|alsjeblieft|prosze bardzo|varsagod) `)

// dayTimes greet where nobody but greeted follows: "Morning all", "Good evening".
var (
	dayTimes = set("morning afternoon evening day")
	greeted  = set("all everyone everybody folks team friends runners lot guys lads gang crew gents leute lieben zusammen amis chicos tutti ragazzi allemaal mensen alla alle")
	// openers begin to speak, before those.
	openers = set("right ok okay so well now then na also allez alors bon venga bueno allora dai nou okej")
)

var greetings = set(`ola oi czesc szia sziasztok zdravo hi hello dear hey hallo liebe lieber bonjour salut hola ciao hoi beste hej ahoj hei`)

// placeIn is what follows the last "at", "from" or "presents the" of a text, with
// a capital letter: the place in "Here are the results from Alder Bank" or
// "Vale Harriers presents the Alder Bank". The whole text where there is none.
func placeIn(text string) string {
	words := strings.Fields(text)
	for i := len(words) - 2; i >= 0; i-- {
		invited := i > 0 && fold(words[i-1]) == "you" && fold(words[i]) == "to"
		if !beforePlace[fold(words[i])] && !invited || i == 0 && len(words) > 4 {
			continue
		}
		j := i + 1
		for j < len(words)-1 && articles[fold(words[j])] {
			j++
		}
		if r, _ := utf8.DecodeRuneInString(words[j]); unicode.IsUpper(r) {
			return strings.Join(words[j:], " ")
		}
	}
	return text
}

// behindWhere is the name behind a small word for where, with which a piece of a title begins or
// a sentence ends: "a Boscoverde" behind "Corsa di 5 km", "Tak for en dejlig tur i Ellemosen".
// Church in the Wold and Haus am See are names.
func behindWhere(text string) (name string, ok bool) {
	words := strings.Fields(text)
	for i := len(words) - 2; i >= 0; i-- {
		if !whereWords[words[i]] || !startsUpper(words[i+1]) || notWhere[fold(words[i+1])] || i > 0 && i < 4 {
			continue
		}
		if i == 0 || !slices.ContainsFunc(words[1:i], startsUpper) {
			return strings.Join(words[i+1:], " "), true
		}
	}
	return "", false
}

// saysWhere says whether a long line, no remark by its first word, has a piece that ends in a place.
func saysWhere(line string) bool {
	words := strings.Fields(fold(line))
	return len(words) > 9 && !remarkWords[words[0]] && slices.ContainsFunc(segments(cutSpans(line, false)), func(piece string) bool {
		_, ok := behindWhere(strings.TrimSpace(piece))
		return ok
	})
}

// whereWords stand before a place; notWhere behind them say what for. Common practice, no source.
var (
	whereWords = set("at in im am bei à au aux a en al alla ad nel nella presso em te bij op i på ved vid w we v ve na yn ym u la în")
	notWhere   = set("aid memory support association partnership conjunction minuten minutes minuti minutos sekunden seconds memoria ricordo hommage memoire erinnerung")
)

// isCommand says whether a line is what somebody typed to a program for the list below it, a
// query or a call with texts in quotation marks.
func isCommand(title string) bool {
	return quotedArgument.MatchString(title) && commandMarks.MatchString(title)
}

var (
	quotedArgument = regexp.MustCompile(`[=(,] ?["']([^"']*\pL[^"']*)["']`)
	commandMarks   = regexp.MustCompile(`(?i)\bselect\b.*\bfrom\b|\pL\([^()]*(?:\([^()]*)?["']`)
)

func finalWord(text string) string {
	f := fold(text)
	return f[strings.LastIndexByte(f, ' ')+1:]
}

var beforePlace = set("at from presents present hosts stages welcomes")

var articles = set("the its their our this weekly annual")

// saysColumn says whether a text is nothing but the heading of a column:
// "Personal best", "Finish time".
func saysColumn(lex *lexicon, text string) bool {
	switch g := lex.read(text); {
	case !g.known || g.forced:
		return false
	case g.meaning == Course || g.meaning == Other || g.meaning == Club || g.meaning == Distance:
		return false
	}
	for _, w := range strings.Fields(fold(text)) {
		if _, ok := headingWords[w]; !ok || weakWords[w] {
			return false
		}
	}
	return true
}

// saysOrder says whether a line or a tab's name only says how its lines are chosen, sorted or
// come about, or how far the list is: "Finish order", "Sorted by position", "Alphabetical", "Top 10", "By club", "Checked".
func saysOrder(text string) bool {
	said := false
	for _, w := range strings.Fields(fold(text)) {
		switch {
		case orderWords[w]:
			said = true
		case titleWords[w], headingWords[w] != 0, isOrdinalOrNumber(w):
		default:
			return false
		}
	}
	return said
}

var orderWords = set(`order alphabetical alphabetic alphabetisch alphabetique sorted sort top ten winners category categories categorised gender age group groups clubs teams
	board notice poster display grid tracker matrix register attendance splits raw data input output print printout provisional preliminary corrected amended revised surname fastest nach reihenfolge
	by sort listed ordered ranked arranged grouped filtered unfiltered alphabetically ascending descending finishers everyone checked approved confidential locked unlocked scroll hand manual chip gun watch stopwatch
	sortiert geordnet alphabetische alphabetischer vorlaufig vorlaufige vorlaufiger vorlaufiges inoffiziell inoffizielle inoffizielles endergebnis endergebnisse handstoppung handzeitnahme korrigiert korrigierte korrigierter fassung neue alle teilnehmer nur intern gepruft zum aushang
	trie tries ordre arrivee alphabetique provisoire provisoires chronometrage manuel corrige corrigee tous coureurs usage interne
	ordenado ordenados ordenada orden llegada alfabetico alfabetica provisionales cronometraje corregido corregida todos corredores uso interno por
	ordinati ordinata ordinato ordine alfabetico provvisoria provvisorio provvisori cronometraggio manuale corretta corretto tutti partecipanti per
	gesorteerd volgorde aankomst alfabetisch alfabetische voorlopig voorlopige handgeklokt gecorrigeerd gecorrigeerde versie alle intern gebruik
	sorterad sorterat sorterade efter bokstavsordning preliminart preliminar preliminara manuell tidtagning rattad alla deltagare sorteret forelobig forelobige deltagere sortert etter forelopig forelopige
	jarjestetty alustava alustavat kaikki osallistujat posortowane wedlug wstepne wstepny alfabetycznie kolejnosc pomiar reczny wszyscy uczestnicy poprawiona poprawiony
	serazeno podle predbezne predbezny abecedne rucni mereni vsichni ucastnici rendezve szerint elozetes kezi idomeres minden resztvevo vegeredmeny
	provisorio provisorios ordem chegada participantes corrigida corrigido versao`)

// leadsOn says whether a text ends in a small word that leads to another, as no name does: "Cake after" of "Cake after
// the run".
func leadsOn(text string) bool {
	words := strings.Fields(text)
	return len(words) > 1 && leading[words[len(words)-1]]
}

// leading are such words. Common practice of the languages, no source.
var leading = set("after before during until with without from for into nach vor bis mit fur apres avant pendant avec pour despues antes hasta para dopo prima durante voor tijdens met efter fore medan")

// routeLabels stand before the name of a route, and before what it is like. Common practice, no source.
var routeLabels = set("recorregut route routes trasa ruta rute rutt recorrido percorso percurso rundkurs omloop bane trase lopesti rada reitti utvonal traseu parkur llwybr trasa маршрут трасса траса")

// eventLabels are words for a competition or an event in the label before its name. Common practice, no source.
var eventLabels = set(`competition meeting wettkampf wettbewerb competicion competizione competicao loop wedloop tavling tavlingen evenemang arrangement staevne stevne konkurrence konkurranse kilpailu tapahtuma zawody zawodow wydarzenie wydarzenia impreza imprezy
	soutez souteze akce preteky pretekov podujatie podujatia esemeny verseny natjecanje natjecanja dogadaj tekmovanje tekmovanja prireditev prireditve voistlus voistluse uritus varzybos varzybu renginys sacensibas pasakums etkinlik yarisma concurs concursului competitie competitiei
	eveniment evenimentului esdeveniment digwyddiad byeenkoms εκδηλωση διοργανωση змагання змагань захід заходу соревнование соревнования событие състезание трка такмичење`)

func isVenueLabel(f string) bool {
	return venueLabels[f]
}

// townLabel says whether a folded label is one for the town or the area that a list is of.
func townLabel(f string) bool { return headingWords[f]&cOfDay != 0 || areaLabels[f] }

// areaLabels are such words that are no headings. Common practice, no source.
var areaLabels = set("obec localidade localidad localitate localite asula helyseg area gebiet region municipality borough parish district gemeinde alue kunta kommune kommun gemeente comune concelho municipio municipality obvod okres gmina dzielnica telepules district territory territorija vald novads savivaldybe obcina opcina община район громада 地域")

// labelBefore is a word, or two, before a colon.
var labelBefore = regexp.MustCompile(`(\pL+(?: \pL+)?) ?:(?:\s|$)`)

// labelledVenue leaves of a line with several labels, "Date: 3/1/2026 Venue: Alder Bank
// Distance: 5 km", the one for the place with its value, which ends at any label that begins a
// piece of the line, "Route: 5 km, Sky: clear"; other lines come back as they are.
func labelledVenue(title string, lex *lexicon) string {
	known := func(l string) bool { return lex.read(l).known || isVenueLabel(fold(l)) }
	from, to, labels := -1, len(title), 0
	begins := func(at int) bool { // a cell, or a piece behind a mark
		before := strings.TrimRight(title[:at], " ")
		return before != "" && strings.IndexByte("|,;", before[len(before)-1]) >= 0
	}
	for _, m := range labelBefore.FindAllStringSubmatchIndex(title, -1) {
		label, at := title[m[2]:m[3]], m[2]
		if i := strings.LastIndexByte(label, ' '); i >= 0 && !isVenueLabel(fold(label)) && known(label[i+1:]) {
			label, at = label[i+1:], at+i+1
		}
		if !known(label) && (from < 0 || !begins(at)) {
			continue
		}
		labels++
		if from >= 0 {
			to = at
			break
		}
		if g := lex.read(label); isVenueLabel(fold(label)) || g.known && g.meaning == Course {
			from = at
		}
	}
	if from < 0 || labels < 2 {
		return title
	}
	return strings.Trim(title[from:to], " ,;|–-")
}

// venueLabels stand before the place of a run, in the languages of the headings and as keys of
// open data (spatial coverage, after the DCMI Metadata Terms).
var venueLabels = set(`ait lloc stadur ort place lieu luogo lugar local plaats locatie miejsce plats sted venue where at site laufort strecke wo ou donde dove waar hvor var gdzie
	endroit sitio plek spatial misto miesto paikka hely helyszin yer mekan τοπος τοποθεσια loc locul koht asukoht toimumiskoht vieta kraj mjesto место место проведения локация місце локація място местоположение 場所 会場 地点 장소`,
	"course name", "spatial coverage", "coverage spatial", "coverage ( spatial )", "event location", "event venue", "venue name", "race location", "run location", "start finish")

// countWords after "top" say how many are listed.
var countWords = set("three five ten twenty 3 5 10 20")

func isRemark(text string) bool {
	words := strings.Fields(fold(text))
	if len(words) == 0 {
		return false
	}
	if len(words) > 1 && (offered[words[0]] || thankedBy[words[0]+" "+words[1]]) {
		return true // "Supported by Mill Bakery", "With thanks to our marshals"
	}
	if at := lastWeek.FindStringIndex(" " + strings.Join(words, " ") + " "); at != nil && at[0] == 0 {
		return true // "Last week: 61 runners"
	}
	if len(words) > 1 && words[0] == "report" && beforePlace[words[1]] {
		return false // "Report from Alder Bank"
	}
	if len(words) > 1 && words[0] == "file" && remarkWords[words[1]] || townCode.MatchString(text) {
		return true // "File saved 5.1.26"; an address
	}
	if remarkWords[words[0]] && !(len(words) > 1 && (words[0] == "provisional" || words[0] == "first")) {
		return !isTwoWordPlace(text)
	}
	if len(words) > 2 && words[1] == "record" && (words[0] == "course" || words[0] == "track") && clockInText.MatchString(text) {
		return true // "Course record 15:42 Jo Lee"
	}
	if words[0] == "cr" && clockInText.MatchString(text) {
		return true // "CR (men) Jo Lee 15:42"
	}
	if len(words) > 1 && (words[0] == "run" && words[1] == "director" || words[0] == "top" && countWords[words[1]]) {
		return true
	}
	return len(words) > 9 && len(findDates(text)) == 0
}

// townCode is the code of the post (its form that of the United Kingdom) behind a street and its town: "Mill Road,
// Kirkham KM4 5QT".
var townCode = regexp.MustCompile(`(?i:road|street|lane|avenue|drive|crescent|terrace), (?:.+ )?[A-Z]{1,2}\d[A-Z\d]? \d[A-Z]{2}$`)

// clockInText is a time within a line: 15:42.
var clockInText = regexp.MustCompile(`\b\d{1,2}[:.]\d\d\b`)

// offered are first words of a line that names who paid or gave something; thankedBy are
// its first two. Common practice, no source.
var offered = set("supported sponsored unterstutzt gesponsert parraine sponsorise patrocinado patrocinada sponsorizzato gesponsord gesteund sponsrad sponsoreret stottet")

var thankedBy = set("", "see below", "see attached", "see above", "with thanks", "many thanks", "our thanks", "our sponsor", "our sponsors", "in association", "in partnership", "mit dank", "avec le", "avec nos", "con il", "con el", "met dank", "met steun", "med tack", "med tak", "med stod", "med stotte", "dzieki wsparciu")

// isName says whether every word of a text begins with a capital letter.
func isName(text string) bool {
	for w := range strings.FieldsSeq(text) {
		if r, _ := utf8.DecodeRuneInString(w); !unicode.IsUpper(r) {
			return false
		}
	}
	return text != ""
}

// isTwoWordPlace says whether a text is, but for a date behind it, a word and a
// feature of the land, both with a capital letter: "Marshal Green, 3 May 2026".
func isTwoWordPlace(text string) bool {
	name := segments(cutSpans(text, false))[0]
	words := strings.Fields(name)
	if len(words) != 2 || strings.ContainsAny(name, ":") || !landWords[fold(words[1])] {
		return false
	}
	for _, w := range words {
		if r, _ := utf8.DecodeRuneInString(w); !unicode.IsUpper(r) {
			return false
		}
	}
	return true
}
