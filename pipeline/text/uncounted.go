package text

import (
	"slices"
	"strings"
)

// Words that notes and lines beside a table say together when a line does not count or its
// time is not that of the whole course, in lower case without marks, as readers fold them
// (common practice in some twenty-five languages, no source).
var (
	negations  = wordsOf(`keine keinen aucun aucune sin senza sans geen ingen bez brak sem nincs yok utan uten uden ilman ohne zonder not no don't dont doesn't doesnt never nicht keine pas ne n'est non niet nao inte ej ikke ei nie nem nu nije ni не δεν`)
	countings  = wordsOf(`vale valere gelten gilt liczone stand stands ratified accepted approved count counts counted counting result results included ranked scored zahlt zahlen zahle werten wertet gewertet wertung gezahlt compte compter comptabilise comptabilisee classe classee classes classees classificati clasificados clasificadas classificados classificadas clasificada classificada cuenta cuentan contar contabiliza clasifica conta contano contare contam classificato classificata telt tellen meetellen meegeteld raknas raknat teller tellende taeller medregnes lasketa conteggiare conteggiato contabilizar stamt klopt liczy liczyc liczony klasyfikowany klasyfikowana pocita pocitat pocitan zapocitava racuna racunati steje stet szamit pune considera loeta arvestata compta considerado valido считается считать засчитан засчитана зачет зараховано враховувати брои`)
	notCounted = wordsOf(`versenyen-kivul uncounted disallowed discounted nezapocitava nezapocitan nezapocitana nepocita nepocitat nehodnocen nehodnocena nehodnoceno neklasifikovan neskaitas neieskaita nesiskaito neiskaitoma neracuna sayilmaz незачет`)
	outsides   = wordsOf(`hors fuera fuori fora poza izvan mimo вне поза ausser utanfor utenfor udenfor buiten`)
	rankings   = wordsOf(`carrera prueba corrida concours concurso concorso gara konkurs konkursem soutez soutezi poradi mededinging konkurrenz tavlan konkurrence konkurranse competicao competicio kilpailun versenyen clasificacao classement clasificacion classifica classificacao klasyfikacja klasyfikacji wertung klasifikacije klasifikace klasifikaci klasifikacie klassement uitslag resultat resultatet resultatlistan зачета заліку course`)
	laps       = wordsOf(`korrel korre korbol runde rundt omgange tura turu rundan runda runden kierroksen kort kore kolecko okrazenia lap laps circuit lapped circuits loop loops runde runden tour tours boucle boucles vuelta vueltas giro giri ronde rondes rondje varv okrazenie okrazenia okrazen kolo kola kor kort krog kroga krug kruga kierros kierrosta ring ringi volta voltas omgang runder круг круга коло tur aplis apli ratas rata`)
	tooFew     = wordsOf(`lidt litet eksik eksikti sadece yalnizca tek kevesebb kimaradt hianyzo seul seule solo sola un-seul so apenas jedno jedna egy faltou falto manca puuttuva puuttuu puuttunut hianyzott hianyzik faltaron fehlten manquait mancato manco ontbrak ontbreekt saknas saknades mangler manglet manglede brakowalo zabraklo chybelo chybalo nedostaje nedostajalo puudub puudus truko не-хватает нехватает kesken skip skipped skips omitted saltado salto saltato salte rate gemist overgeslagen pominal pominela vynechal vynechala valiin alleen bara jen stopped stopped-early short shorter missed missing less fewer only instead one-lap wenig weniger fehlt fehlte fehlende nur vergessen moins manquant manque seulement oublie menos falto faltaba faltan solo meno mancante soltanto mancava weinig minder slechts vergeten lite mindre endast bara missade mangler kun bare mniej brakuje tylko mene chybi pouze menej chyba iba kevesebb hianyzik csak extra manj premalo manje premalo samo vahem puudu vahemman puuttui vain faltou apenas меньше только пропустил пропустила менше eksik mazak maziau minus`)
	cuts       = wordsOf(`kestirmeden kestirdi rovidites snarvag recorto recortada atajos accorciatoia afgestoken oikopolku skrot skrotem scial zkratkou abgekurzt abgekuerzt abkurzung verkurzt verkurzte verkurzter verkurzten gekurzte atajo atajado atajando afgesneden genade genat genvag snarvei genvej oikaisi oikaissut skrocil skrocila zkratil zkratila skratil skratila zkratka skratka skratio levagta levagott roviditett skrajsal skrajsala срезал срезала сократил сократила скоротив скоротила зрізав kestirme atalho drecera shortcut shortcutted`)
	cutWords   = wordsOf(`kisaltti kisaltmis kisaltan coupa raccourci recortado recorta ataja taglio taglio tagliata skar ge genvagen skrocono zkracena levagta cortei cortando gekapt cut cuts cutting coupe coupee recorto corto cortado tagliato accorciato taiat scurtat cortou encurtou retallat`)
	routes     = wordsOf(`path utvonal utvonalat sti stien laufstrecke reitilla reitin course corner route track strecke parcours circuit trace recorrido circuito percorso parcursul traseu traseul trasa trase trasy trate trati trat draha bana banan loype loypa rute ruta ruten reitti reittia rata rada staza stazu staze palya palyat tav tavot proga progo percurso recorregut distance distancia distanza distans distanse дистанция дистанцию дистанции трасса трассу трассы трасу parkur parkuru kurss`)
	incomplete = wordsOf(`kisa incomplete incompleto incompleta incomplet incomplete unvollstandig onvolledig ofullstandig ufullstendig niepelna niepelny neuplna neuplny nepotpuna nepotpun hianyos неполная неполную неповна nepilna`)
	ends       = wordsOf(`completed complete completing finished finish reach reached reaching`)
	points     = wordsOf(`marker markers checkpoint checkpoints checkpt control controls cone cones flag turnpoint kontrolle kontrollen posten controle controles`)
	misses     = wordsOf(`missed missing missed-out skipped omitted verpasst ausgelassen manque rate saltado saltato gemist missade mistet`)
	entrances  = wordsOf(`joined joins joining started began`)
	partWays   = wordsOf(`halfway half-way half middle mid-course mid-race`)
	wholes     = wordsOf(`full whole complete all entire ganze ganzen gesamte volle tout entier complet todo completo tutto intero hele volledige hela cela celou celu cala calej calego cijelu teljes koko всю всеи целая toute`)
)

// JoinsUnits says whether a folded word stands between minutes and seconds that are said with
// their units: "18 min and 29 s".
func JoinsUnits(folded string) bool { return unitsJoined[folded] }

var unitsJoined = wordsOf(`and und et y e i och og en`)

func wordsOf(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// Uncounted says whether a remark, folded and without marks, says that a line does not
// count: "not in results", "zählt nicht", "hors classement".
func Uncounted(folded string) bool {
	negated, out := -9, -9
	words := remarkWords(folded)
	if slices.Contains(words, "pb") || slices.Contains(words, "record") {
		return false // "doesn't count as a PB"
	}
	for i, w := range words {
		switch {
		case notCounted[w], countings[w] && i-negated <= 4, rankings[w] && i-out <= 2:
			return true
		case negations[w]:
			negated = i
		case outsides[w]:
			out = i
		}
		if countings[w] && anyOf(words[i+1:min(len(words), i+3)], negations) {
			return true // zählt nicht, telt niet mee, räknas ej
		}
	}
	return false
}

// NotWholeCourse says whether a remark, folded and without marks, says that somebody did
// not run all of the course: "one lap short", "abgekürzt", "a coupé le parcours".
func NotWholeCourse(folded string) bool {
	words := remarkWords(folded)
	has := func(set map[string]bool) bool { return anyOf(words, set) }
	return has(cuts) || cutAcross(words) || containsAny(folded, retireds) || has(laps) && has(tooFew) || strings.Contains(folded, "short cut") || strings.Contains(folded, "short-cut") ||
		has(routes) && (has(cutWords) || has(incomplete) || has(negations) && has(wholes)) || has(misses) && has(points) || notEnded(words) || joinedOnTheWay(words)
}

// cutAcross says whether words say that somebody went across something that the course goes round, "cut through the
// car park", or took another, shorter way, "took the short route".
func cutAcross(words []string) bool {
	for i, w := range words {
		if i+1 == len(words) {
			return false
		}
		next := words[i+1]
		if w == "cut" && acrossWords[next] && i == 0 || shortWay[w] && (routes[next] || laps[next]) && i > 0 && goWords[words[0]] || shortWay[w] && len(words) == 2 && w != "short" && (routes[next] || laps[next]) {
			return true
		}
	}
	return false
}

var (
	acrossWords = wordsOf(`across through over inside under`)
	shortWay    = wordsOf(`short shorter shortened wrong`)
	goWords     = wordsOf(`ran run took did went used followed completed`)
)

// notEnded says whether words say that somebody did not come to the end of something of the run: "course not
// completed", "did not reach the finish".
func notEnded(words []string) bool {
	for i, w := range words {
		if negations[w] && anyOf(words[i+1:min(len(words), i+3)], ends) && anyOf(append(words[:i:i], words[i+2:]...), ofRun) {
			return true
		}
	}
	return false
}

var ofRun = wordsOf(`course route track run race distance lap laps loop loops finish line`)

// joinedOnTheWay says whether words say that somebody was not there from the start on: "joined at lap 2", "started
// halfway", "started at 2k". A lap that somebody started fast is another thing.
func joinedOnTheWay(words []string) bool {
	for i, w := range words {
		if !entrances[w] {
			continue
		}
		rest := words[i+1:]
		if len(rest) > 1 && onTheWay[rest[0]] {
			rest = rest[1:]
		} else if w != "joined" && len(rest) > 0 && !partWays[rest[0]] {
			continue
		}
		switch {
		case len(rest) == 0:
		case partWays[rest[0]] && len(rest) < 3, laps[rest[0]] && len(rest) == 2 && rest[1] != "1" && rest[1] != "one":
			return true
		case len(rest) < 3 && strings.TrimRight(rest[0], "km") != "" && strings.Trim(strings.TrimRight(rest[0], "km"), "0123456789") == "":
			if unit := strings.Trim(strings.Join(rest, ""), "0123456789"); unit == "k" || unit == "km" {
				return true
			}
		}
	}
	return false
}

var onTheWay = wordsOf(`at on from after with`)

// notOfThisRun are parts of remarks about a line that stands for no finish of this run: another
// line is the same person's, or it was run elsewhere, or nobody ran. earlyStarts are such of a time
// that did not begin with the others', retireds of a course that was not run to its end. Common
// practice, no source.
var (
	notOfThisRun = []string{"not a runner", "out of competition", "outside competition", "out of the competition", "different day", "another day", "other day", "different date", "came through twice", "through twice", "crossed twice", "finished twice", "counted twice", "recorded twice", "listed twice", "other distance", "different distance", "other race", "another race", "jiny den", "inny dzien", "anderer tag", "an anderem tag", "autre jour", "otro dia", "altro giorno", "andere dag", "annan dag", "annen dag", "anden dag", "outro dia", "masik nap", "baska gun", "not a participant", "not a finisher", "no runner", "not in the race", "not in race", "passer-by", "passer by", "not this person", "not this runner", "not this athlete", "not the right person", "scanned by mistake", "scanned in error", "entered in error", "recorded in error", "scanned for a ", "scanned for his ", "scanned for her ", "not competing", "ran it at home", "did it at home", "done at home", "completed at home", "not at the event", "was not here", "wasn't here", "was not there", "wasn't there", "was not present", "got a lift", "had a lift", "given a lift", "took a lift", "took the bus", "went by car", "scanned twice", "scanned again", "double scan", "duplicate of", "duplicate scan", "same person as", "same runner as", "already listed", "listed apart under", "already above", "test entry", "test line", "test scan", "ran yesterday", "run yesterday", "ran remotely", "remote run", "ran elsewhere", "run elsewhere", "run done at home", "ran at home", "on another day", "on a different day", "did not run", "didn't run", "not running", "not her, ", "not him, ", "run by his ", "run by her ", "without running", "on roller", "on a scooter", "rode a bike", "rode his bike", "rode her bike", "in the car", "by car to", "carried to", "helped across", "repeat of above", "same as above", "listed above", "not known who", "sister ran", "brother ran",
		"nicht gelaufen", "ist nicht gelaufen", "n'a pas couru", "pas couru", "no corrio", "non ha corso", "niet gelopen", "sprang inte", "sprang ej", "lop ikke", "lob ikke", "ei juossut", "nie biegl", "nie biegla", "nebezel", "nebezela", "nao correu", "nem futott", "na rowerze", "na kole", "pa cykel", "pa sykkel", "pyoralla", "op de fiets", "mit dem fahrrad", "a velo", "en bicicleta", "in bicicletta", "de bicicleta", "kerekparral", "swapped with ", "ran in place of ", "ran instead of ",
		"schon oben", "doppelt gescannt", "gestern gelaufen", "deja au dessus", "deja classe", "meme personne que", "ya figura arriba", "gia sopra"}
	virtuals    = wordsOf(`sanal virtuellt virtualne virtualnie virtualmente virtualni virtuaalne virtuaalijuoksu virtuals virtuaalisesti virtualis virtuale wirtualna virtuelt virtueel-gelopen virtuellement spectator spectators spectating onlooker zuschauer spectateur espectador spettatore toeschouwer askadare tilskuer virtual virtually virtuell virtuel virtuelle virtuale virtueel virtuaali wirtualny wirtualnie virtualni виртуально виртуальныи`)
	earlyStarts = []string{"started early", "early start", "min early", "mins early", "minutes early", "zu fruh gestartet", "fruhstart", "frueh gestartet", "fruher gestartet", "parti en avance", "partie en avance", "salio antes", "partito prima", "partita prima", "te vroeg gestart", "eerder gestart", "startade tidigt", "startet for tidlig"}
	estimates   = []string{"stopwatch stopped", "watch stopped", "timer failed", "no time taken", "time not taken", "time tbc", "time to be ", "no proper time", "no exact time", "no real time", "no reliable time", "timing failed", "time made up", "temps non pris", "zeit nicht genommen", "becsult ido", "kozelito ido", "arvioitu aika", "aika arvioitu", "anslatt tid", "skonnet tid", "time missed", "missed time", "time lost", "lost time for", "missed at finish", "missed at the finish", "missed scan", "scan missed", "not scanned at", "time estimated", "estimated time", "time approx", "approx time", "approximate time", "time guessed", "zeit geschatzt", "geschatzte zeit", "temps estime", "temps approximatif", "tiempo estimado", "tiempo aproximado", "tempo stimato", "tempo estimado", "tijd geschat", "geschatte tijd", "uppskattad tid", "estimert tid", "anslaet tid", "czas szacowany", "odhad casu"}
	retireds    = []string{"left course", "left the course", "lost on course", "lost on the course", "followed the wrong", "sent wrong way", "sent the wrong way", "went the wrong way", "misdirected", "turned at the wrong", "turned at wrong", "jumped in at", "out of time", "carried to finish", "n'a pas termine", "n'a pas fini", "pas termine", "retired at ", "retired on ", "out at lap", "out after lap", "carried off", "walked off the ", "went wrong way", "wrong way at ", "wrong turn at ", "went wrong,", "short distance", "retired after ", "retired injured", "retired hurt", "retired with ", "ran short", "turned early", "turned too early", "turned round early", "turned around early", "turned back early",
		"stopped injured", "stopped hurt", "half distance", "half the distance", "half the course", "missed the turn", "missed a turn", "missed turn", "got lost", "lost the way", "lost my way", "lost their way"}
)

// Words that together say that somebody is not sure of a time, that another stretch was run, or with
// whose number. Common practice of the languages, no source.
var (
	timeWords    = wordsOf(`sure suresi zamani idot ajan casu czasu tijdwaarneming time times timing zeit zeiten temps chrono tiempo tempo tijd tid tiden czas cas aika ido vrijeme cronometraje время час`)
	unsureWords  = wordsOf(`примерное приблизительное неточное примерно приблизительно неточно приблизнии приблизно орієнтовно priblizno orientacijski ligikaudne ligikaudu ungefarlig ungefarligt omtrentlig omtrentligt cirkatid aproximado aproximada approssimativo benaderend ongeveer circa hozzavetoleges orientacyjny przyblizony priblizny priblizne belirsiz tahmini yanlis hatali szacunkowy szacunkowo tbc tba estimated estimate certain guessed approximate falsche faux errone errado errada hibas rossz teves spatny zly feil forkert fel vaara klopt uncertain unsure unconfirmed unclear unverified doubtful questionable wrong incorrect check verify confirm query disputed guess unsicher unklar fraglich zweifelhaft prufen uberprufen falsch incertain incertaine douteux verifier confirmer dudoso dudosa incierto comprobar revisar incerto dubbio verificare controllare duvidoso onzeker twijfelachtig controleren osaker osakert kontrollera usikker kontroller tjekkes niepewny sprawdzic nejisty overit epavarma tarkista`)
	settledWords = wordsOf(`checked verified confirmed reliable certain sure accurate trustworthy exact genau sicher verlasslich fiable exacte seguro seguro exacto affidabile sicuro esatto betrouwbaar zeker exact saker tillforlitlig sikker palitelig luotettava tarkka pewny dokladny spolehlivy presny`) // of what has yet to be, or is not
	sureWords    = wordsOf(`now ok fine correct corrected right ist`)
	numberTags   = wordsOf(`numbers barcodes startnummern nummern numara numarasi numarasiyla numarayla gogus chip-number number's brikke brikken nummeret numret numeroa numerolla stevilko brojem broj raznummer lapp rajtszam rajtszamaval nummerlapp startnummer numero cislo cislem numerem numer rugnummer nummerlap barcode number bib chip tag token startnummer nummer dossard dorsal pettorale`)
	othersWords  = wordsOf(`baskasinin annens annans andens andermans altrui toisen toiselta masik mas masnak cudzego jineho drugiego drugim czyims jemand fremder swap cambiado cambiati zamiana verwisseld fremd fremde fremder ajeno autre d'un-autre otro otra altro altra ander andere annans annen anden cudzy cudzym cizi cizim outro outra mas wife husband brother sister friend husband's wife's husbands wifes sister's brother's mother's father's mum's dad's son's daughter's friend's partner's someone somebody else's another swapped exchanged borrowed vertauscht echange intercambiado scambiato`)
	errorWords   = wordsOf(`yanlis verkeert forkerte wrong-way rossz teves spatna spatnou chybna zla zla pomylil spletl vaara vaaraa fel forkert feil errado errada enganou enganou-se erroneo erronea incorrecto incorrecta errata verkeerde falsche falscher mauvais mauvaise respecte equivoco equivoca wrong off error erreur equivoco trompe trompee sbagliato sbagliata falsch verkeerd raccourci gekurzt`)
	ranWords     = wordsOf(`just instead sadece yalnizca sprang lop lob juoksi biegl biegla bezel bezela futott kostu correu gelopen solamente apenas so pouze csak samo fait hizo fece fez machte gemacht ran run did walked completed only lief gelaufen nur couru seulement corrio solo corso alleen bara tylko jen vain kun`)
)

// DoubtedTime says whether a remark, folded and without marks, says that nobody is sure of a time,
// that it is of another stretch, or of somebody else: "time to be checked", "did 4 km", "ran with
// her sister's barcode". usualKM is the length of the run in whole kilometres, which says nothing.
func DoubtedTime(folded string, usualKM int) bool {
	words := remarkWords(folded)
	if len(words) == 0 || len(words) > 8 {
		return false
	}
	has := func(set map[string]bool) bool { return anyOf(words, set) }
	switch {
	case has(sureWords):
		return false
	case has(timeWords) && (has(unsureWords) || (has(negations) || slices.Contains(words, "be")) && has(settledWords) || strings.HasSuffix(folded, "?")):
		return !has(beforeToday)
	case has(numberTags) && has(othersWords), strings.HasPrefix(folded, "ran as ") && (len(words) == 4 || len(words) == 3) && !partAs[words[2]]:
		return true
	case has(numberTags) && has(wearing) && slices.ContainsFunc(words, ofSomebody), has(nameWords) && has(othersWords) && (has(runningWords) || has(under)):
		return true
	case len(words) <= 5 && has(runningWords) && has(dayNames) && !slices.ContainsFunc(words, func(w string) bool { return !runningWords[w] && !dayNames[w] && !besideDay[w] }):
		return true // "ran it on Sunday"
	case len(words) <= 6 && has(twiceWords) && has(recordedWords):
		return true
	case len(words) <= 6 && has(timeWords) && has(takenWords) && has(negations):
		return true
	case strings.HasPrefix(folded, "ran in ") && strings.Contains(folded, "'s place"):
		return true
	case has(routes) && has(errorWords) && !has(beforeToday):
		return true
	case len(words) >= 2 && len(words) <= 6:
		return ranOther(folded, usualKM)
	}
	return false
}

// partAs are words behind "ran as" that are nobody's name.
var partAs = wordsOf("a an the guide pacer guest visitor sweeper walker tail part training team pair warm-up warmup")

// OfAnotherDay says whether a remark, folded and without marks, has a word for a day before the run's.
func OfAnotherDay(folded string) bool { return anyOf(remarkWords(folded), beforeToday) }

var beforeToday = wordsOf(`last week year ago before previous letzte woche semaine derniere pasada scorsa vorige`)

// Words of whose number or name somebody ran with, of days, of what was recorded twice and of what nobody took.
// Common practice of the languages, no source.
var (
	wearing       = wordsOf(`ran run used using with wearing wore scanned under had has`)
	under         = wordsOf(`under unter sous bajo sotto sob onder pod alatt altinda`)
	nameWords     = wordsOf(`name names nom nombre nome naam namn navn nazwisko nazwiskiem jmeno jmenem nev neven nimi nimella isim adiyla namen namnet navnet`)
	runningWords  = wordsOf(`ran run lief gelaufen couru court corrio corre corso corri correu gelopen liep sprang lop lob juoksi biegl biegla bezel bezela futott kostu kosmus trcao trcala`)
	besideDay     = wordsOf(`alone on it own run at this instead am el la le o no na w v we ve den der das des i pa de op om il feira gunu gun en e`)
	twiceWords    = wordsOf(`twice double zweimal deux dos due duas tweemaal twee kahdesti kertaan dvakrat dwukrotnie dwa ketszer iki to tva ganger gange ganger gangen`)
	recordedWords = wordsOf(`registered recorded entered listed scanned counted typed noted erfasst eingetragen gelistet saisi saisie inscrit inscrite enregistre note registrado registrada apuntado anotado inscrito inscrita registrato registrata inserito inserita inscrever inscrito ingevoerd geregistreerd genoteerd registrerad registrerat registrert registreret noteret notert merkitty kirjattu zapsan zapsana zapisany zapisana wpisany wpisana zapis szerepel rogzitve kaydedildi kayitli yazildi`)
	takenWords    = wordsOf(`recorded captured caught logged registered noted taken took genommen gestoppt gemessen pris prise tomado tomada preso presa rilevato genomen opgenomen tagen tatt taget otettu mierzony zmierzony zmierzono zmereno merit meren mert alinmadi alinamadi medido medida misurato gemeten`)
)

// ofSomebody says whether a word is somebody's: "tom's".
func ofSomebody(w string) bool {
	return (strings.HasSuffix(w, "'s") || strings.HasSuffix(w, "’s")) && len(w) > 3 && w != "it's" && w != "today's" && w != "week's"
}

// ranOther says whether a remark is a way that is not the usual one and words for running it or for who runs it:
// "ran 6 km", "4k only", "2k junior run", "stopped at 3k".
func ranOther(folded string, usualKM int) bool {
	words, beside := strings.FieldsFunc(folded, func(r rune) bool { return strings.ContainsRune(" ;:!?()[]/~-", r) }), false
	for i, w := range words {
		w = strings.Trim(w, ".,")
		figure := strings.TrimRight(w, "abcdefghijklmnopqrstuvwxyz")
		switch {
		case ranWords[w] || aroundWay[w]:
			beside = beside || !smallWords[w]
		case figure != "" && strings.Trim(figure, "0123456789.,") == "" && (lengthUnits[w[len(figure):]] || w == figure && i+1 < len(words) && lengthUnits[strings.Trim(words[i+1], ".,")]):
		case lengthUnits[w] && i > 0:
		default:
			return false
		}
	}
	return beside && saysOtherWay(folded, usualKM)
}

// Words that may stand beside such a way. Common practice of the languages, no source.
var (
	lengthUnits = wordsOf(`k km kms mile miles mi kilometres kilometers kilometer`)
	smallWords  = wordsOf(`the a at after on de la le el il der die das den i`)
	aroundWay   = wordsOf(`out withdrew dropped retired the a at after on de la le el il der die das den i stopped finished covered junior juniors kids kid child children youth race run runner event distance option fun short version
		kinder kinderlauf lauf laufer strecke enfants course coureur carrera corredor ninos distancia gara bambini distanza corrida atleta crianca distancia kinderen wedstrijd afstand loop barn lopp lopare distans lop lob lober distanse lapset juoksu matka bieg dzieci dystans zavod deti trat futas gyerek tav kosu cocuk`)
)

// NotOfThisRun says whether a remark, folded and without marks, says that a line stands for no
// finish of this run.
func NotOfThisRun(folded string) bool {
	words := remarkWords(folded)
	return containsAny(folded, notOfThisRun) || len(words) <= 3 && anyOf(words, virtuals) || folded == "test"
}

// OtherClock says whether a remark, folded and without marks, says that a time was not measured
// from the start of the run: somebody started before the others, or it was estimated.
func OtherClock(folded string) bool {
	return containsAny(folded, earlyStarts) || containsAny(folded, estimates)
}

// containsAny says whether a text has one of some parts, where a word begins: no "est time" in "best time".
func containsAny(folded string, parts []string) bool {
	return slices.ContainsFunc(parts, func(part string) bool {
		for at := strings.Index(folded, part); at >= 0; {
			if at == 0 || !isLetter(folded[at-1]) {
				return true
			}
			next := strings.Index(folded[at+1:], part)
			if next < 0 {
				return false
			}
			at += 1 + next
		}
		return false
	})
}

// isLetter says whether a byte is a small letter or part of a letter of several bytes.
func isLetter(b byte) bool { return b >= 'a' && b <= 'z' || b >= 0x80 }

func remarkWords(folded string) []string {
	return strings.FieldsFunc(folded, func(r rune) bool { return strings.ContainsRune(" .,;:!?()[]/", r) })
}

func anyOf(words []string, set map[string]bool) bool {
	return slices.ContainsFunc(words, func(w string) bool { return set[w] })
}
