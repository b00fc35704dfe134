package record

import (
	"bytes"

	"lapwing/pipeline/text"
)

// statusPhrases are whole remarks that say how a line ended, in the languages
// of the reader.
var statusPhrases = wordTable(map[string]Status{
	text.DidNotFinish: DNF,
	text.Disqualified: DQ,
	text.DidNotStart:  NotStarted,
	`void|voided|superseded|old line|old entry|old row|old result|earlier line|earlier entry|entered twice|listed twice|recorded twice|entered twice see above|double entry|duplicate|duplicate entry|duplicated|doppelt|doppelter eintrag|doppelt eingetragen|doublon|en double|duplicado|duplicada|repetido|repetida|doppione|dubbel|dubbel ingevoerd|dubblett|dublett|dublet|duplikat|duplicat|podwojny wpis|tuplana|bitte streichen|streichen|loschen|please delete|please remove|remove|scratched|to be deleted|a supprimer|borrar|eliminar|da cancellare|verwijderen|stryks|strykes|usunac|do usuniecia|smazat|vymazat|poistetaan|удалить|вычеркнуть|cancelled entry|crossed out|struck out|struck through|deleted|delete|replaced|replaced below|void see below|void see next line|void - see below|line void|entered in error|error see below|ignore|ignore this line|ignore this|please ignore|please ignore this line|delete this|delete this line|delete this line please|pressed by mistake|scrub|scrub this|scrub this one|scrub this line|cross out|cross this out|pressed twice by mistake|not a result|no result here|not a finisher|no finisher|did not take part|geloscht|duplicato|duplicata|
	ungultig|gestrichen|storniert|durchgestrichen|annule|annulee|barre|raye|anulado|anulada|tachado|annullato|annullata|cancellato|vervallen|doorgehaald|ongeldig|
	uniewazniony|uniewazniona|skreslony|skreslona|zruseno|skrtnuto|ugyldig|slettet|ogiltig|struken|mitatoity|poistettu|torolve|ervenytelen|anulat|iptal|anulovano|neplatno|недеиствительно|аннулировано|скасовано|ακυρο`: Superseded,
	`time void|void time|time invalid|invalid time|time not valid|time wrong|wrong time|time incorrect|incorrect time|time error|timing error|timing fault|timing failure|timing mistake|timing problem|timer error|
	timer failed|mistimed|watch error|watch stopped|chip failed|chip failure|time unreliable|time disputed|time doubtful|time in doubt|time not counted|time does not count|under investigation|under review|under protest|under appeal|protest pending|appeal pending|decision pending|result pending|subject to appeal|subject to protest|sub judice|unter protest|unter vorbehalt|sous reserve|sous reserve de reclamation|bajo protesta|con riserva|sub iudice|onder protest|onder voorbehoud|med forbehall|med forbehold|missed a lap|missed one lap|one lap short|a lap short|
	zeit ungultig|ungultige zeit|zeit falsch|falsche zeit|zeitfehler|messfehler|fehlmessung|zeitmessfehler|temps invalide|temps annule|temps errone|erreur de chrono|erreur de chronometrage|
	tiempo anulado|tiempo invalido|tiempo no valido|tiempo erroneo|error de cronometraje|tempo annullato|tempo non valido|tempo errato|errore di cronometraggio|tijd ongeldig|foute tijd|tijd fout|meetfout|
	tempo anulado|tempo invalido|tempo errado|erro de cronometragem|czas niewazny|bledny czas|blad pomiaru|blad pomiaru czasu|ogiltig tid|fel tid|tidtagningsfel|ugyldig tid|feil tid|forkert tid|tidsfejl|
	no time|untimed|not timed|time missing|missing time|time not recorded|no time recorded|sans temps|ohne zeit|sin tiempo|senza tempo|zonder tijd|sem tempo|brak czasu|utan tid|uten tid|uden tid|tid saknas|mangler tid|tid mangler|aika puuttuu|ei aikaa|ingen tid|geen tijd|brak pomiaru|cas nezmeren|bez casu|nincs ido|ido nelkul|keine zeit|zeit fehlt|o.z|pas de temps|temps manquant|non chronometre|tempo mancante|falta tiempo|нет времени|без времени|記録なし|計測不能|χωρις χρονο|sure yok|be laiko|ajata|sense temps|
	a coupe|ha tagliato|cortou|recorto|fel nummer|fel nummerlapp|sprang fel|lop feil|lob forkert|te kort gelopen|1 ronde|een ronde|1 lap|one lap|1 runde|eine runde|1 tour|un tour|1 vuelta|una vuelta|1 giro|un giro|ett varv|1 varv|skrot|ta bort|tas bort|sem tempo|time approximate|
	short course|short cut|cut course|cut the course|cut a corner|wrong course|went wrong|went the wrong way|took a wrong turn|missed a turn|one lap only|only one lap|only 1 lap|only 2 laps|1 lap short|wrong way|falsch gelaufen|verlaufen|zu kurz|zu kurz gelaufen|for kort|too short|trop court|se equivoco|sbagliato percorso|sbagliato strada|verkeerd gelopen|te kort|fel bana|fel vag|gikk feil|lop feil|lob forkert|vaara reitti|eksyi|pomylil trase|pomylila trase|zabloudil|zabloudila|zabludil|eltevedt|did the short loop|tbc|to be confirmed|short loop|only ran 3k|only ran 3 km|only 3k|nur 3 km|seulement 3 km|solo 3 km|alleen 3 km|bara 3 km|tylko 3 km|jen 3 km|vain 3 km|kun 3 km|time unknown|not a valid time|tijd klopt niet|felaktig tid|chybny cas|vaara aika|unofficial|inoffiziell|non officiel|non ufficiale|no oficial|officieus|cancelled|canceled|error|scan error|scanning error|barcode error|old time|see below|corrected below|wrong see below|extra lap|one lap too many|a lap too many|by bike|on a bike|on bike|on bicycle|on a bicycle|by bicycle|cycled|mit dem rad|en velo|in bici|en bici|wrong person|wrong runner|wrong barcode|wrong name|not her|not him|who is this|who was this|4 km only|3 km only|2 km only|only 4 km|only 3 km|only 2 km`: Untimed,
})

// partPhrases are whole remarks that say how somebody took part.
var partPhrases = wordTable(map[string]TakingPart{
	`walker|walkers|walk|walked|walking|walked it|walked all|walked all the way|walked the whole way|walked the course|race walker|nordic walker|nordic walking|power walker|
	marcheur|marcheuse|marche|marche nordique|geher|geherin|wandelaar|wandelaarster|wandelen|caminante|marcha|camminatore|camminatrice|camminata|caminhada|caminhante|chodziarz|spacer|gangare|promenad|gang|gaenger|gaende|gaer|gikk|gikk hele veien|kavelija|kaveli|kavellen|marsz|maszerowal|maszerowala|nordic|nordic walk|kijki|kondija|kondis|kepikond|kepikondija|jalutas|mers|mers pe jos|a mers|chuze|chuzi|gyalog|gyalogolt|setalt|gick|gatt|promenerade|gik|gaet|til fots|zu fuss|gegangen|gewalkt|gelopen en gewandeld|gewandeld|andando|caminando|camino|camminando|caminhou|a marche|marchait|chodec|gyaloglo|ходок|yuruyuscu|yurudu|yuruyus|a caminhar|a caminar|gestap|stap|gekk|ganga|hodao|hodac|hodala|jalan|jalan kaki|di bo|cerdded|cerddwr|περπατησε|περπατημα|шел пешком|шла пешком|пешком|ишов пішки|ишла пішки|пішки|مشي|مشى|הליכה|הלך|הלכה|ウォーキング|歩き|步行|徒步|健走|걷기|เดิน`: Walker,
	`guided|guided runner|vi|v.i|vi runner|visually impaired|visually impaired runner|blind|blind runner|partially sighted|with guide|with a guide|with guide runner|with guide dog|guided vi|
	t11|t12|t13|sehbehindert|blinde laufer|blinder laufer|malvoyant|non voyant|deficient visuel|con guia|con guida|met buddy|avec guide|mit begleitlaufer|mit guide`: Guided,
	`guide|guide runner|vi guide|guiding|guiderunner|opas|saattojuoksija|przewodnik|sprievodca|guide laufer|begleitlaufer|begleitlauferin|guia|guida|accompagnateur|buddy|sighted guide|ledsager|ledsagare`: Guide,
	`pacer|pacers|pacemaker|pace maker|pacing|pace|pace runner|pace setter|pacesetter|official pacer|lievre|meneur|meneuse|meneur d'allure|meneuse d'allure|tempomacher|tempolaufer|zuglaufer|hase|haas|liebre|lepre|coelho|marcador de ritmo|zajac|fartholder|fartsholder|farthallare|hare|janis|vodic|iramfuto|пеисмеикер|ペースメーカー|tavsan|iepure|iepuras|tempomeister|tempopidaja|temponpitaja|tempotare|fartshallare|nyul|zajic|tempomaker|tempoloper|meneur allure|tempogeber|marcapassi|marcapasos`: Pacer,
	`back marker|backmarker|back-marker|tail|tail walker|tail-walker|tailwalker|tail runner|tail-runner|tail end|tail end charlie|sweeper|sweep|last walker|rear guard|lantern rouge|
	serre file|serre-file|fermeture|voiture balai|schlusslaufer|schlusslauferin|besenlaufer|besen|hekkensluiter|bezem|bezemwagen|coche escoba|corredor escoba|escoba|scopa|chiudi fila|vassoura|bagtrop|kotrupp|kvast|feiebil|bezemloper|peravalvoja|zamykajacy|zametac|замыкающии`: BackMarker,
	`with child|with a child|with children|with kid|with kids|with son|with daughter|with junior|with under 11|parent|parent with child|adult with child|adult with a child|accompanying adult|accompanying child|accompanying|accompanying junior|accompanying parent|running with child|ran with child|ran with son|ran with daughter|
	avec enfant|mit kind|con hijo|con hija|con nino|con bambino|met kind|com crianca|med barn|z dzieckiem`: WithChild,
	`buggy|with buggy|with a buggy|buggy runner|pushing buggy|pushing a buggy|pram|with pram|pushchair|with pushchair|stroller|with stroller|double buggy|pushing pram|pushing pushchair|running buggy|
	poussette|avec poussette|kinderwagen|mit kinderwagen|mit buggy|babyjogger|carrito|con carrito|passeggino|con passeggino|kinderwagen-lauf|met kinderwagen|met buggy|carrinho|wozek|z wozkiem|barnvagn|med barnvagn|barnevogn|med barnevogn`: Buggy,
	`dog|dogs|with dog|with a dog|with dogs|+dog|and dog|ran with dog|running with dog|dog runner|cani|canicross|cani cross|cani-cross|k9|k-9|chien|avec chien|hund|mit hund|perro|con perro|cane|con cane|hond|met hond|cao|com cao|z psem|med hund`: Dog,
	`racing wheelchair or handcycle|wheelchair|wheelchair racer|wheelchair athlete|racing wheelchair|racing chair|race chair|push rim|pushrim|handcycle|hand cycle|handbike|hand bike|handcyclist|wheelchair racing|wheeler|wheels|
	t32|t33|t34|t51|t52|t53|t54|h1|h2|h3|h4|h5|fauteuil|handisport fauteuil|rollstuhl|rennrollstuhl|rollstuhlfahrer|rollstuhlfahrerin|silla de ruedas|silla|carrozzina|sedia a rotelle|rolstoel|cadeira de rodas|wozek inwalidzki|rullstol|rullestol|korestol`: RacingWheelchair,
	`day wheelchair or frame|day wheelchair|day chair|everyday wheelchair|everyday chair|wheelchair user|manual wheelchair|power chair|powerchair|electric wheelchair|pushed wheelchair|frame|frame runner|frame running|walking frame|race runner|racerunning|zimmer frame|walker frame|rollator|with frame|with walking frame|crutches|on crutches`: DayWheelchair,
})

// addedPhrases are whole remarks that say why a runner's line stands out of its order: it came later than the rest.
var addedPhrases = wordSet(`late entry|late entrant|late registration|late addition|late|added|added later|added late|added afterwards|added by hand|entered late|entered on the day|entry on the day|on the day entry|missed off|left off|left out by mistake|omitted|forgotten|
	nachmeldung|nachgemeldet|nachmelder|nachmelderin|nachgetragen|nachtrag|vergessen|inscription tardive|inscrit tardivement|inscrite tardivement|inscription sur place|ajoute|ajoutee|ajoute apres|oublie|oubliee|
	inscripcion tardia|inscrito tarde|inscrita tarde|anadido|anadida|anadido despues|inscricao tardia|inscrito na hora|acrescentado|acrescentada|iscrizione tardiva|iscritto tardi|iscritta tardi|aggiunto|aggiunta|na-inschrijving|nainschrijving|na inschrijving|nagekomen|toegevoegd|
	efteranmald|efteranmalan|tillagd|etteranmeldt|lagt til|eftertilmeldt|tilfojet|jalki-ilmoittautunut|jalki-ilmoittautuminen|lisatty|lisatty jalkikateen|zapis w dniu biegu|dopisany|dopisana|dodatecne prihlasen|dodatecne prihlasena|dopsan|dopsana|helyszini nevezes|utolag hozzaadva|
	gec kayit|sonradan eklendi|inscriere tarzie|adaugat|adaugata|kasna prijava|naknadno dodan|naknadno dodana|hiline registreerija|lisatud|skradur seint|skrad seint|laat inskrywing|cofrestru hwyr|daftar di tempat|dang ky muon|
	поздняя регистрация|добавлен|добавлена|пізня реєстрація|доданий|додано|εκπροθεσμη εγγραφη|προστεθηκε|تسجيل متاخر|הרשמה מאוחרת|当日受付|追加|补报名|補報名|补录|현장접수|추가|สมัครหน้างาน`)

// saysAdded says whether a clause of a note says that the line came later.
func saysAdded(note string) (added bool) {
	if note == "" || len(note) > remarkLimit {
		return false
	}
	clauses(fold(nil, note), func(c []byte) bool {
		added = added || addedPhrases[string(c)]
		return added
	})
	return added
}

// idle are words that may stand in a remark without changing it.
var idle = wordSet(`a|an|the|as|was|is|today|official|officially|volunteer|volunteering|ran|run|running|this week|min|mins|minute|minutes|minuten|minutos|sub|group|event|&|her|his|their|own|my|our|der|die|das|le|la|el|il`)

// leading phrases may be followed by a name or a time: "guide for Jo Lee",
// "pacing 30 min", "guided by Sam".
var leading = []struct {
	words string
	part  TakingPart
}{
	{"guide for ", Guide}, {"guide to ", Guide}, {"guide runner for ", Guide}, {"guiding ", Guide}, {"vi guide ", Guide}, {"guide of ", Guide},
	{"guided by ", Guided}, {"with guide ", Guided}, {"vi with ", Guided}, {"vi runner ", Guided},
	{"pacer for ", Pacer}, {"pacing ", Pacer}, {"pacing for ", Pacer}, {"pacing at ", Pacer}, {"pacer at ", Pacer}, {"pace for ", Pacer},
	{"tail walking ", BackMarker}, {"tail walker ", BackMarker}, {"back marker ", BackMarker},
	{"with son ", WithChild}, {"with daughter ", WithChild}, {"accompanying child ", WithChild}, {"with child ", WithChild}, {"parent of ", WithChild}, {"accompanying ", WithChild},
	{"walked with ", Walker}, {"pushing buggy ", Buggy}, {"with dog ", Dog},
}

// clauses calls f with each part of a folded remark: split at commas,
// semicolons, slashes, brackets, bars and spaced dashes. f returns true to
// stop.
func clauses(b []byte, f func(clause []byte) bool) {
	from := 0
	for i := 0; i <= len(b); i++ {
		if i < len(b) {
			switch b[i] {
			case ',', ';', '/', '|', '(', ')', '[', ']', '!', '\n':
			case '.':
				if i+1 < len(b) && b[i+1] != ' ' || i-from < 4 {
					continue
				}
			case '-', ':':
				if i == 0 || i+1 == len(b) || b[i-1] != ' ' && b[i+1] != ' ' {
					continue
				}
			default:
				continue
			}
		}
		if c := bytes.Trim(b[from:i], " -.:*"); len(c) > 0 && f(c) {
			return
		}
		from = i + 1
	}
}

// guideNamed stand before the name of the guide of the runner whom a remark is about.
var guideNamed = []string{"guide: ", "guide runner: ", "begleitlaufer: ", "guia: ", "guida: ", "accompagnateur: "}

// partOf reads a folded remark. Only a remark that is about nothing else
// counts: "thanks to the pacer" and "lost dog" say nothing.
func partOf(b []byte, words map[string]TakingPart) (part TakingPart, ok bool) {
	for _, guide := range guideNamed {
		if _, name, ok := bytes.Cut(b, []byte(guide)); ok && len(bytes.TrimSpace(name)) > 0 && len(b) <= 60 && bytes.HasPrefix(b, []byte(guide)) {
			return Guided, true // "guide: S Lee" says who guided this one
		}
	}
	clauses(b, func(c []byte) bool {
		part, ok = clausePart(c, words)
		return ok
	})
	return part, ok
}

func clausePart(c []byte, words map[string]TakingPart) (TakingPart, bool) {
	if len(c) > 60 {
		return Runner, false
	}
	if p, ok := words[string(c)]; ok {
		return p, true
	}
	if p, ok := partPhrases[string(c)]; ok {
		return p, true
	}
	var room [64]byte
	kept, clock := room[:0], false
	for w := range bytes.FieldsSeq(c) {
		clock = clock || bytes.IndexByte(w, ':') > 0
		if idle[string(w)] || w[0] >= '0' && w[0] <= '9' {
			continue
		}
		if len(kept) > 0 {
			kept = append(kept, ' ')
		}
		for _, ch := range w {
			if ch != '.' { // V.I.
				kept = append(kept, ch)
			}
		}
	}
	if p, ok := partPhrases[string(kept)]; ok && len(kept) > 0 && !(clock && string(kept) == "pace") { // "4:59 pace" is how fast
		return p, true
	}
	for _, l := range leading {
		if bytes.HasPrefix(c, []byte(l.words)) {
			return l.part, true
		}
	}
	return broughtAlong(c)
}

// broughtAlong reads a clause that says with whom or what somebody came, whatever small words
// stand beside it: "with her dog", "pushed a buggy", "s kočárkem", "koiran kanssa". "Lost dog"
// has another word.
func broughtAlong(c []byte) (part TakingPart, ok bool) {
	for w := range bytes.FieldsSeq(c) {
		w = bytes.Trim(w, ".+")
		switch what := company[string(w)]; {
		case what != Runner && (!ok || what == part):
			part, ok = what, true
		case len(w) > 0 && !besideCompany[string(w)] && !idle[string(w)]:
			return Runner, false
		}
	}
	return part, ok
}

// company are dogs and buggies, in the cases that stand behind "with". Common practice of the
// languages, no source.
var company = wordTable(map[string]TakingPart{
	`dog|dogs|doggy|hund|hunden|hunde|hond|honden|chien|chienne|chiens|perro|perra|perros|cane|cani|cao|caes|psem|pejskem|psom|koiran|koiransa|koirani|koeraga|kutyaval|caine|cainele|hundi|suniem|suni|sunimi|kopekle|kopegiyle`:                                                                                             Dog,
	`buggy|pram|pushchair|stroller|poussette|kinderwagen|babyjogger|carrito|cochecito|passeggino|carrinho|wozkiem|kocarkem|kocikom|barnvagn|barnvagnen|vagn|barnevogn|barnevognen|barnevogna|lastenvaunujen|lastenvaunut|rattaiden|karuga|lapsevankriga|vankriga|babakocsival|carucior|caruciorul|vezimeliu|ratiniem|pusetle`: Buggy,
})

var besideCompany = wordSet(`with|and|+|mit|dem|der|ihrem|seinem|avec|son|sa|con|su|il|com|met|haar|zijn|med|sin|sitt|z|ze|swoim|s|se|svym|cu|kanssa|koos|oma|ja|pushed|pushing|pushes|push|walked|walking|schob|geschoben|pousse|poussait|empujando|spingendo|empurrando|duwde|skot|bebis|baby|bebe|vauvan|small|big|one|two|double|twin`)

// statusOf reads a folded remark that says how a line ended.
func statusOf(b []byte, states map[string]Status) (st Status, ok bool) {
	if st, ok = statusPhrases[string(bytes.Trim(b, " .!?"))]; ok { // "w/d", which has no two clauses
		return st, ok
	}
	clauses(b, func(c []byte) bool {
		if st, ok = states[string(c)]; !ok {
			st, ok = statusPhrases[string(c)]
		}
		return ok
	})
	return st, ok
}

// startsWithStatus reads "dnf ankle", "dq cut the course" and "pulled out at 2 km": a code or
// words first and then the reason. The caller asks where the line has no time, or no place on a
// sheet with places; sure says that the words mean nothing else, so that they speak against a
// time as well: "retired" may be a teacher.
func startsWithStatus(b []byte) (st Status, sure bool) {
	ends := [4]int{}
	words := ends[:0]
	for i := 1; i <= len(b) && len(words) < cap(words); i++ {
		if i == len(b) || b[i] == ' ' {
			words = append(words, i)
		}
	}
	for n := len(words); n > 0; n-- {
		w := bytes.Trim(b[:words[n-1]], ".:,;-()")
		switch st := statusPhrases[string(w)]; {
		case len(w) < 2 || n == 1 && len(w) > 12:
		case st == DNF || st == DQ || st == NotStarted:
			return st, st == DQ || st == DNF && (n > 1 || len(w) > 3) && !oftenElse[string(w)]
		}
	}
	return OK, false
}

// oftenElse are words for a run that was not finished that begin other remarks as well.
var oftenElse = wordSet("went home|excluded|aufgabe|not here|retired|stopped|dropped|incomplete|lauk|time limit|no result|no results|zeitlimit")

// helpedOnly says whether a note is that somebody helped, and nothing else: without a place or
// a time, who so stands on the list has not run.
func helpedOnly(note string) bool {
	return note != "" && len(note) < 60 && helped[string(bytes.Trim(fold(nil, note), " .!()"))]
}

var helped = wordSet(`volunteer|volunteered|volunteering|helped|helping|helper|marshal|marshalled|marshalling|timekeeper|timekeeping|timed|timing|scanned|scanning|run director|v|vol|helfer|helferin|geholfen|benevole|voluntario|voluntaria|volontario|volontaria|vrijwilliger|frivillig|funktionar|wolontariusz`)

// ofPrize says whether a text before a name and a colon is for which place or group the line
// stands there once more: "Winner", "First lady".
func ofPrize(text string) bool { return prizes[string(bytes.TrimSpace(fold(nil, text)))] }

var prizes = wordSet(`winner|overall winner|men's winner|women's winner|ladies' winner|first man|first woman|first lady|first male|first female|first junior|first boy|first girl|first veteran|first vet|first home|1st man|1st woman|1st lady|1st male|1st female|1st junior|1st|2nd|3rd|first|second|third|sieger|siegerin|vainqueur|premier|premiere|premiere femme|ganador|ganadora|vincitore|vincitrice|winnaar|winnares|vinnare|vinder|vinner`)
