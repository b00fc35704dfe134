package name

import (
	"strings"

	"golang.org/x/text/unicode/norm"
)

func set(words string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w] = true
	}
	return m
}

// particles open a family name: Anna van der Berg, Luis de la Cruz.
var particles = set(`de van von der den ten ter te da das dos du des la le las los di del della delle
	dello degli dei dal dalla af av st saint bin binti ibn bint al el ul zur zum vander vanden vande
	op t`)

// smallParticles are particles only when written small: they are given names
// or family names as well.
var smallParticles = set(`do ben zu san santa mac abu ap ab uz of`)

// IsParticle says whether a word, as it is written, opens a family name as particles do.
func IsParticle(word string) bool { return particles[strings.ToLower(word)] || smallParticles[word] }

// titles go before a name and are no part of it.
var titles = set(`mr mrs ms miss mx dr prof professor sir dame rev revd lady lord capt sgt herr frau
	cllr madame monsieur mme mlle fru hr dhr mevr mevrouw sra dott sig signora senor senora`)

// shortTitles are titles where a point stands behind them: without one they may be names.
var shortTitles = set(`ir ing mag med dipl bc mgr phdr mudr judr rndr dott dssa dra drs lic arq eng`)

// bornAs are small words before the name that somebody was born with.
var bornAs = set(`nee geb geborene nata nacida geboren fodd fodt`)

// suffixes go after a name. They are no part of its keys.
var suffixes = set(`jr jnr junior sr snr senior ii iii iv esq phd md obe mbe`)

// shortFamilies are family names of two letters: a word of two capitals is
// otherwise taken for initials.
var shortFamilies = set(`li ng wu xu ho le vu yu ma hu he lu su lo fu du ko oh an do ek ha ho ip ji ke
	mo mu na ni pu qi ro ru si so ta to wi ye yi yo`)

// nobody are words which alone, or together with fillers, name nobody. Common
// practice of results sheets in the languages named, no source.
var nobody = set(`unknown unidentified unnamed anonymous anon guest noname nocode nobarcode unregistered
	notregistered missing nobody noid notknown blank tbc tba null none nil na
	runner finisher athlete participant visitor
	unbekannt unbekannter unbekannte anonym gast namenlos teilnehmer laufer lauferin
	inconnu inconnue anonyme invite invitee coureur coureuse
	desconocido desconocida anonimo anonima invitado invitada corredor corredora
	sconosciuto sconosciuta ignoto ignota ospite
	onbekend onbekende anoniem loper
	okand gast ukjent ukendt gjest gaest loper
	tuntematon vieras nimeton juoksija
	nieznany nieznana gosc anonimowy bezimienny
	neznamy neznama neznam hoste host
	desconhecido desconhecida convidado convidada
	ismeretlen vendeg bilinmeyen misafir necunoscut
	неизвестныи неизвестная неизвестно гость неизвестен аноним невідомии αγνωστος
	mystery nezname someone somebody jemand quelqu quelquun alguien qualcuno iemand nagon noen nogen joku ktos nekdo niekto valaki cineva netko nekdo keegi kads kazkas
	неизвестна неизвестни αγνωστοσ ανωνυμοσ okant neidentificat neidentificata
	неизвестная аноним анонимно невідомии невідома невідомо гість αγνωστη ανωνυμος ανωνυμη
	tundmatu nimetu kulaline nezinams nezinama viesis nezinomas nezinoma svecias neznan nepoznat nepoznata nepoznati nepoznato neznani nimetu othekkt othekktur anhysbys anaithnid isimsiz bilinmiyor
	desconegut desconeguda onbekende anonyym anonim anonima anonimi anonimnie nevtelen ismeretlen anonimas anonims anonimna necunoscuta oaspete kosucu
	неименован непознат непозната непознати nezinami nezinomi
	不明 未知 匿名 氏名不詳 氏名不明 名前なし 名無し 姓名不详 姓名不詳 不详 不詳 无名 無名 佚名 미상 무명 익명
	אלמוני אלמונית אנונימי مجهول مجهولة
	illegible unreadable unleserlich illisible ilegible illeggibile onleesbaar olaslig
	private withheld hidden redacted confidential gdpr undisclosed
	unscanned unreg spare placeholder
	unclaimed claim claimed unallocated unassigned unmatched unused smudged refused
	marshals steward stewards timekeepers pacers pacemaker sweeper volunteers helper helpers scanner scanners photographer photographers organiser organisers organizer director referee aider cyclist bike bicycle ambulance
	barcode stopwatch reader timer click clicks press mispress phantom testing demo dummy asdf qwerty mistake error
	average fastest slowest quickest record best finishers participants starters pace winners
	spectator spectators onlooker beispiel exemple esempio ejemplo voorbeeld exempel mustermann
	necitelne necitelny nieczytelne nieczytelny olvashatatlan ulaeseligt ulaeselig oleseligt uleselig okunaksiz niemand nessuno ninguem teszt
	vergeben nieobsadzone pervenuto communique angabe
	saknas saknades mangler manglar puuttuu puudub chybi fehlt ontbreekt vantar truksta trukst hianyzik lipseste nedostaje manjka`)

// noNames are such words that are nobody's name: with other small words they name nobody, whatever
// these are, "name smudged", "button pressed by mistake".
var noNames = set(`unknown unidentified anonymous barcode token stopwatch unclaimed unallocated unassigned unmatched unused smudged illegible unreadable unscanned unregistered refused mistake click clicks clicked pressed photographer organiser organizer timekeepers marshals stewards volunteers cyclist bike bicycle ambulance average slowest quickest finishers participants pacemaker clock scan scanned forgotten awaiting contact qr app failed lad bald workmate various wagon medic spaniel list crossed paper ink stranger older younger taller anyone please torn tag passer tourist walkup eod spectator supporter the could couldnt would wouldnt cannot cant whose says said public tall vest tshirt`)

// loneWords name nobody where they stand alone, or with a number, among names of two words: they
// may be family names as well. Common practice, no source.
var loneWords = set(`lad kid kiddo gap skip skipped dad daddy mum mummy mam grandad granddad grandpa grandma granny nan car winner record best start finish turn lap max min sum count marshal marshall pacer pace sweep jogger walker scout cub pupil student schoolboy schoolgirl junior senior adult minor veteran substitute reserve double empty ghost error wrong mistake dog horse rex card chip tag token band bib position place platz disc stick ticket ladies gents men women boys girls mr mrs ms miss dr herr frau m f w
	leer vide vacio vuoto leeg tom tyhja prazno puste withdrawn scratched disqualified retired abandon end fin ende stop cut lost new other extra reset restart sync clock watch backup timer official marker tail last first second third laufer coureur corredor deelnemer lopare loper bieg zawodnik pass cash paid entry casual member tourist stranger neighbour colleague coach mother father sister brother twin wife husband partner friend son daughter cousin uncle aunt`)

// nobodyFamilies are words for nobody that many a family is called by. Common practice, no source.
var nobodyFamilies = set(`best guest pace marshall steward`)

// IsLoneWord says whether a name of one word, with a number perhaps, is a word for nobody in
// particular where the others are names of two words.
func IsLoneWord(text string) bool {
	n := Parse(text)
	return n.Unnamed || loneWords[n.Full] || loneWords[strings.TrimRight(n.Full, "0123456789")]
}

// MayBeFamily says whether a remark in brackets behind a name is a single word with a capital that is
// a family name as well, as one that somebody had before: "Ann Fox (Short)".
func MayBeFamily(text string) bool {
	return text != "" && text[0] >= 'A' && text[0] <= 'Z' && familiesToo[strings.ToLower(text)]
}

var familiesToo = set(`short guess rough half double cut pen leg wrong check test swap poss lap`)

// clubWords stand in the names of clubs and teams, and in none of a person. Common practice, no source.
var clubWords = set(`harriers striders joggers runners roadrunners pacers athletics athletic triathlon relay team teams club equipe squadra mannschaft staffel`)

// clubInitials are the same, where they are written in capitals behind a name.
var clubInitials = set(`ac rc rrc aac`)

// exchanged stand, in small letters, between two people of whom one took the place of the other.
var exchanged = set(`for as instead with using wearing not should actually really aka alias in statt fur pour voor avec mit con or ou oder`)

// notKnown before a word for a man, a woman or a runner name nobody, whatever follows.
var notKnown = set(`unknown unidentified unnamed unbekannter unbekannte inconnu inconnue desconocido desconocida sconosciuto sconosciuta onbekende okand ukjent ukendt nieznany nieznana neznamy neznama desconhecido desconhecida tuntematon`)

// fillers may stand beside a word of nobody without naming anybody.
var fillers = set(`no not the name names number code barcode id tag token given known recorded
	registered scanned read available male female man woman men women boy girl lady gentleman m f w x
	junior senior adult child person new first timer local late entry walker
	namen mann frau nom homme femme nombre hombre mujer nome uomo donna naam vrouw
	namn kvinne kvinna navn nimea nazwiska jmena homem mulher
	startnummer startnumret dossard dorsal pettorale pettorina rugnummer borstnummer nummer numero bib numer startovni cislo
	enw vardas nimi meno jmeno ime prezime prijmeni priezvisko adi isim nev nume naam имя име ονομα namnet navnet nazwisko imie
	begikas begike skrejejs skrejeja hlaupari alergator alergatoare
	бегач бегачка тркач тркачица участник участница бегун учасник учасниця бігун δρομεας maratonista
	details personal by request run race event lead last extra double false time times the button pressed clicked twice lost nordic ever county forgotten forgot wet ever winning world county all course city club group paper sheet split finish start finishing ink name's didnt did not took given give
	lober loper lopare laufer lauferin coureur coureuse corredor corredora bezec bezkyne zawodnik zawodniczka futo tekac trkac juoksija jooksja rhedwr atleta atleet podista biegacz biegaczka uczestnik uczestniczka participante osallistuja ucastnik ucastnice sudionik natjecatelj бегунья deelnemer deltager deltager deltaker deltagare teilnehmer teilnehmerin participant`)

// without are words for having none of something.
var without = set(`no without ohne kein keine keinen sans pas aucun sin senza nessun zonder geen utan uden uten ingen sem bez beze brak be fara nincs ilman ei`)

// negations before one of undone name nobody: what happens to a place or a code has not happened,
// "nicht gescannt", "non attribué". Common practice, no source.
var negations = set(`not nicht niet non no nao pas ej inte icke ikke ikkje nie ne ei nem nu sin senza`)

var undone = set(`scanned scanne scannee gescannt eingescannt gescand skannad skannat skannet escaneado escaneada escanear scansionato scansionata rilevato rilevata zeskanowany zeskanowana zeskanowano lu lue lus gelesen erfasst gelezen letto letta avlast odczytano leido leida lido lida
	used gebruikt benutzt verwendet genutzt belegt utilise utilisee usato usata utilizzato utilizzata usado usada utilizado utilizada anvand anvant brugt brukt uzyto uzyty uzyta pouzito vergeben zugeteilt attribue attribuee assegnato assegnata asignado asignada atribuido atribuida toegekend tilldelad tildelt przydzielony przydzielono prideleno`)

// entrants are words for who takes part, numberSigns stand before their numbers. Common practice, no source.
var (
	entrants = set(`entrant participant competitor concurrent concurrente concursante runner athlete person jogger starter finisher participante partecipante concorrente atleta athlete sportler teilnehmer teilnehmerin laufer lauferin starterin
		coureur coureuse corredor corredora corridore podista deelnemer loper loopster deltager deltaker deltagare lober loper lopare osallistuja juoksija uczestnik uczestniczka zawodnik zawodniczka biegacz biegaczka
		ucastnik ucastnice zavodnik zavodnice bezec bezkyne resztvevo versenyzo futo katilimci kosucu sporcu yarismaci startnummer stnr startnr nummerlapp nummerskilt gogus token`)
	numberSigns = set(`no nr nro num numero number n`)
)

// namesOrder stand beside the headings of names in a form: "Surname, first name".
var namesOrder = set(`first last`)

// finisherHas are words for what a finisher shows or says of themselves.
var finisherHas = set(`name nom nome nombre naam namn navn nimea nev imienia jmena mena imena code barcode number bib chip tag id token card data scan band
	strichcode nummer startnummer karte daten dossard numero carte donnees dorsal tarjeta datos pettorale pettorina dati rugnummer gegevens
	startnummer nummerlapp uppgift uppgifter nummerskilt oplysninger opplysninger numer numeru kod kodu kodem danych karty cisla cislo kodu udaju dados codigo dorsal numaru numere kod koodia numeroa szam rajtszam`)

// described are words for a person which, with a small word and more behind, say what somebody
// looked like: "Man in red", "Frau mit Hund".
var described = set(`man lady woman gentleman boy girl child chap bloke runner walker someone mann frau herr junge madchen kind homme femme dame monsieur garcon fille hombre mujer senor senora chico chica uomo donna signore signora ragazzo ragazza homem mulher senhor senhora rapaz menina vrouw mevrouw meneer jongen meisje kvinna kvinne kvinde pojke flicka gutt jente dreng pige mies nainen pan pani mezczyzna kobieta muz zena`)

// describing are the small words behind them. De and von begin family names.
var describing = set(`in with wearing en avec mit im ohne con sin senza com sem met zonder pa med utan uten uden w z ze v s bez`)

// worn are colours and clothes, by which somebody is described whose name nobody has: "Woman, blue
// top", "red shirt". Common practice, no source.
var worn = set(`red blue green white black yellow orange pink purple grey gray shirt tshirt top vest hat cap shorts jacket hoodie bib beard rot blau grun weiss schwarz gelb rotes blaues shirt trikot mutze jacke rouge bleu vert blanc noir jaune maillot casquette`)

// relations tell, with "of" and a name behind them, whose friend or child somebody was.
var relations = set(`friend friends husband wife partner son daughter child brother sister mother father mum dad mate colleague freund freundin amigo amiga ami amie amico amica`)

// visitors with "from" and a place behind them tell no more than where somebody came from.
var visitors = set(`visitor visitors guest runner someone somebody tourist man lady woman chap bloke girl boy`)

// possessed stand before a word for a relation: whose dad it was nobody knows.
var possessed = set(`someones somebodys someone somebody his her their my your`)

// Words of what a desk writes in place of a name: what is wrong, with what, and the headings of a form.
// Common practice, no source.
var (
	lacking      = set(`no without lost forgot forgotten missing misread mislaid broken damaged torn wrong invalid unreadable illegible unknown unclaimed unregistered unused unscanned spare extra dummy sample example demo template vergessen verloren fehlt fehlend unleserlich oublie perdu manquant illisible olvidado perdido dimenticato perso vergeten verloren ontbreekt`)
	deskThings   = set(`name number numbers no barcode barcodes code chip tag bib band wristband token card badge id ticket registration record entry entrant place position scan time result results runner athlete finisher participant competitor customer person line row startnummer nummer strichcode karte dossard puce carte dorsal tarjeta pettorale tessera startkaart kaart`)
	nameHeadings = set(`your name names surname forename firstname lastname full vorname nachname zuname familienname nom prenom nombre apellido apellidos nome cognome naam voornaam achternaam imie nazwisko fornamn efternamn fornavn etternavn efternavn jmeno prijmeni`)
)

// notDone begin sentences of what nobody did: "didn't catch name", "missed her name".
var notDone = set(`didnt didn couldnt couldn cannot cant missed forgot lost`)

// nobodyWhole are whole folded texts that name nobody.
var nobodyWhole = map[string]bool{
	"a runner": true, "runner a": true, "a finisher": true, "an athlete": true, "joe bloggs": true, "bloggs joe": true, "jo bloggs": true, "fred bloggs": true, "did not register": true, "didnt register": true, "no one": true, "noone": true, "never registered": true,
	"customer": true, "customers": true, "client": true, "competitor": true, "pending": true, "not sure": true, "to be identified": true, "late entrant": true, "walk in": true, "on the day": true, "total finishers": true, "total runners": true, "cut off": true, "cutoff": true, "time limit": true,
	"no chip": true, "forgot barcode": true, "forgotten barcode": true, "forgot tag": true, "lost barcode": true, "to be confirmed": true, "mystery runner": true, "man": true, "woman": true, "mann": true, "frau": true, "homme": true, "femme": true, "hombre": true, "mujer": true, "uomo": true, "donna": true, "male": true, "female": true, "lady": true, "gentleman": true, "token": true,
	"no name": true, "no name given": true, "name unknown": true, "not known": true, "no code": true,
	"no barcode": true, "no number": true, "no id": true, "no tag": true, "no token": true, "no card": true,
	"a n other": true, "an other": true, "a nother": true, "a n others": true, "an other runner": true,
	"n n": true, "nn": true, "n a": true, "n k": true, "x": true, "xx": true, "xxx": true, "xxxx": true, "x x": true,
	"not recorded": true, "not registered": true, "not scanned": true, "no scan": true, "not given": true,
	"not available": true, "name not given": true, "name missing": true, "missing name": true,
	"ohne namen": true, "kein name": true, "ohne name": true, "sans nom": true, "sin nombre": true,
	"senza nome": true, "zonder naam": true, "geen naam": true, "utan namn": true, "uden navn": true,
	"uten navn": true, "ei nimea": true, "brak nazwiska": true, "bez jmena": true, "sem nome": true,
	"namn saknas": true, "navn mangler": true, "navn ukjent": true, "nimi puuttuu": true, "nimi tuntematon": true, "beze jmena": true, "bez mena": true, "bez imena": true, "brez imena": true, "bez nazwiska": true, "brak nazwiska i imienia": true,
	"fara nume": true, "isim yok": true, "bez varda": true, "nav varda": true, "be vardo": true, "nimi puudub": true, "nafn vantar": true, "heb enw": true, "без имени": true, "без імені": true, "без име": true, "χωρις ονομα": true, "name fehlt": true, "naam onbekend": true, "nom inconnu": true, "sense nom": true, "falta nombre": true, "nome mancante": true,
	"name not taken": true, "no band": true, "no wristband": true, "no bib": true, "no bib number": true, "no race number": true, "number not recorded": true, "missed number": true, "number missed": true, "missed": true, "number not taken": true, "number missing": true, "bib missing": true, "number unreadable": true, "bib not recorded": true, "lost token": true, "lost number": true, "did not give name": true, "no number worn": true, "no name taken": true,
	"non identificato": true, "non identificata": true, "sin identificar": true, "no identificado": true, "no identificada": true, "nao identificado": true, "nao identificada": true, "non identifie": true, "non identifiee": true, "nicht identifiziert": true, "nicht bekannt": true, "niet bekend": true, "ikke kjent": true, "ej kand": true, "ei tiedossa": true, "niezidentyfikowany": true, "neidentifikovan": true, "neidentifikovany": true,
	"не определен": true, "без имена": true, "ללא שם": true, "לא ידוע": true, "לא ידועה": true, "בלי שם": true, "غير معروف": true, "غير معروفة": true, "بدون اسم": true, "بلا اسم": true, "이름 없음": true, "성명 미상": true, "이름없음": true, "khong ro": true, "khong ro ten": true, "chua ro": true, "khong ten": true, "vo danh": true, "khong biet": true, "tidak diketahui": true, "tidak dikenal": true, "tak dikenal": true, "tanpa nama": true, "nama tidak diketahui": true, "ไมทราบ": true, "ไมทราบชอ": true, "ไมระบ": true, "ไมระบชอ": true, "haijulikani": true, "asiyejulikana": true, "hajulikani": true,
	"a nonymous": true, "an onymous": true, "nother a": true, "other a n": true, "known not": true, "runner mystery": true, "name no": true, "given not": true, "recorded not": true, "registered not": true, "nv": true, "bezug": true, "wert": true, "ref": true, "value": true, "not assigned": true, "position not used": true, "place not used": true, "not used": true, "unassigned": true, "spare bib": true, "spare number": true, "late entry": true,
	"to claim": true, "the dog": true, "min pacer": true, "number of runners": true, "mr x": true, "mrs x": true, "miss x": true, "timing error": true, "mis press": true, "extra time": true, "niet opgegeven": true, "non communique": true, "non pervenuto": true, "winning time": true, "clock stopped": true, "to be claimed": true, "please claim": true, "position not claimed": true, "not claimed": true, "did not finish": true, "delete this": true, "delete this line": true, "ignore this line": true, "ignore line": true, "std dev": true, "nobody here": true, "relay team": true, "chip not read": true, "k a": true, "nicht vergeben": true, "keine angabe": true, "wet sheet": true, "par time": true, "see above": true, "free": true, "platz frei": true, "lost property": true,
	"barcode test": true, "token test": true, "scanner test": true, "timer test": true, "member of the public": true, "members of the public": true,
	"not found": true, "not in list": true, "not on list": true, "not in register": true, "not a member": true, "number not found": true, "nicht gefunden": true, "nicht in liste": true, "nicht gemeldet": true, "nicht angemeldet": true, "introuvable": true, "non trouve": true, "non trouvee": true, "non inscrit": true, "non inscrite": true, "no encontrado": true, "no encontrada": true, "no inscrito": true, "no inscrita": true, "non trovato": true, "non trovata": true, "non iscritto": true, "non iscritta": true, "niet gevonden": true, "niet ingeschreven": true, "hittades inte": true, "hittas ej": true, "finns ej": true, "ikke fundet": true, "findes ikke": true, "ikke funnet": true, "nie znaleziono": true, "nenalezeno": true, "nenalezen": true, "nem talalhato": true, "nincs adat": true, "ei loydy": true, "nao encontrado": true, "nao encontrada": true, "nao inscrito": true, "nao inscrita": true,
	"child": true, "a child": true, "forgot name": true, "startnummer fehlt": true, "keine startnummer": true, "ohne startnummer": true, "sans dossard": true, "sin dorsal": true, "senza pettorale": true, "sem dorsal": true, "zonder startnummer": true, "utan startnummer": true, "uten startnummer": true, "uden startnummer": true, "bez numeru": true, "bez cisla": true, "ilman numeroa": true, "имя не указано": true, "имя не известно": true, "имя неизвестно": true, "dim enw": true, "enw ar goll": true, "meno chyba": true, "jmeno chybi": true, "jmeno neuvedeno": true, "meno neuvedene": true, "ime manjka": true, "ime nedostaje": true, "nume lipsa": true, "nom manquant": true, "naam ontbreekt": true, "hianyzo nev": true, "nev hianyzik": true, "nimi teadmata": true, "brak danych": true, "falta el nombre": true, "manca il nome": true, "falta o nome": true, "falta nom": true,
	"another": true, "boy": true, "girl": true, "volunteer": true, "tail walker": true, "tailwalker": true, "tail runner": true, "back marker": true, "backmarker": true,
	"did not scan": true, "to follow": true, "name to follow": true, "please check": true, "cant read": true, "cannot read": true, "john doe": true, "jane doe": true, "test": true, "tester": true, "test test": true, "test runner": true, "zz": true, "zzz": true,
	"name": true, "who": true, "who was this": true, "undefined": true, "false": true, "error": true, "dup": true, "duplicate": true, "funnel error": true, "not a finisher": true, "dienw": true, "gan ainm": true,
	"ditto": true, "idem": true, "same as above": true, "as above": true, "see note": true, "see notes": true, "see below": true, "vacant": true, "void": true, "position void": true,
	"nev nelkul": true, "fulano de tal": true, "max mustermann": true, "erika mustermann": true, "inget namn": true, "stopwatch check": true, "funnel check": true, "timing check": true, "watch check": true, "siehe oben": true, "ver arriba": true, "voir ci dessus": true, "vedi sopra": true, "zie boven": true, "se ovan": true, "se over": true, "se ovenfor": true, "ver acima": true, "viz vyse": true, "patrz wyzej": true, "lasd fent": true, "katso ylla": true, "yukariya bakin": true, "n d": true, "no show": true, "no result": true,
	"voided": true, "voids": true, "cancelled": true, "cancelled entry": true, "delete": true, "deleted": true, "delete me": true, "ignore": true, "ignore me": true, "ignore this": true, "dummy": true, "dummy runner": true, "example": true, "example runner": true, "sample": true, "sample person": true, "sample runner": true, "scan error": true, "scanner error": true, "barcode error": true, "end": true, "the end": true, "unused": true, "unused token": true, "test entry": true, "test line": true, "test scan": true, "testlaufer": true, "test person": true, "testperson": true, "prueba": true, "prova": true, "finish closed": true, "last finisher": true, "end of results": true, "mean": true, "median": true, "average": true, "average time": true, "mean time": true, "total": true, "totals": true, "course record": true, "lost": true, "names": true, "starter": true, "number": true, "nachmelder": true, "nachmeldung": true, "dog": true, "a dog": true, "timekeeper": true, "mustermann": true, "max musterman": true, "first last": true, "first name last name": true, "forename surname": true, "first name surname": true,
}

// Keys are decomposed (Unicode Standard Annex 15), which Hangul written here is not.
func init() {
	for _, words := range []map[string]bool{nobody, nobodyWhole} {
		for w := range words {
			if d := norm.NFKD.String(w); d != w {
				words[d] = true
			}
		}
	}
}

// bornWords stand before a year of birth behind a name.
var bornWords = set(`jg jahrgang geb born rocnik rocznik letnik godiste nar ur f fodt fodd`)

// joiners between two given names make several people of a text.
var joiners = set(`and und plus`)

// smallJoiners do so only in small letters beside words in capitals: Et, En
// and Ja are names as well.
var smallJoiners = set(`et en og och ja or oder ou eller`)

// betweenPeople are joiners between two people where they stand behind the first word and two
// words or more follow, "Ana y Luis Paz": they join family names as well, Vega y Ortiz.
var betweenPeople = set(`y e i`)

// families as first or last word stand for a whole family.
var families = set(`family familie famille familia famiglia familj rodzina`)

// teams as first word stand for more than one person.
var teams = set(`team equipe squadra equipo lag mannschaft`)

// ofSentences are small words that stand in no name, folded (common practice, no source).
var ofSentences = set(`his her their did didnt not catch caught name forgot who whose somebody someone nobody ihr nicht vergessen jemand quelqu oublie nombre alguien olvide nome qualcuno naam vergeten iemand namn glomde ktos`)
