package sheet

import "strings"

// concept is a set of ideas that a heading word stands for. A heading is read
// by joining the ideas of its words: "AK-Platz" and "cat pos" are both a place
// in a group.
type concept uint64

const (
	cPlace concept = 1 << iota // rank
	cTime
	cName
	cGiven
	cFamily
	cAge
	cBirth
	cYear
	cDate
	cGroup // age group, category
	cSex
	cClub
	cNumber // a number or code given to the runner
	cNo     // "no", "nr": number or position, settled by values
	cCourse
	cSession
	cDistance
	cStatus
	cNote
	cGun
	cChip
	cGap
	cPace
	cSplit
	cTotal // how many, altogether
	cRun   // a run or race
	cPoints
	cGrade
	cBest
	cRunner // participant: a name unless another word says what of him
	cStart
	cOther // town, country, email …: known, of no use here
	cUnit  // hh:mm:ss, years: says nothing by itself
	cAmong // "overall", "scratch": the whole field
	cOfDay // "Ort": venue or home town, settled by values
)

// headingWords gives the ideas of single words, folded. Languages: English,
// French, German, Spanish, Italian, Dutch, Portuguese, Polish, Swedish, Danish,
// Norwegian. The lists are common practice on result sheets, no source.
var headingWords = ideasOf()

// ownLists are the words of the languages above by what they say of a column.
var ownLists = map[concept]string{
	cPlace: `poradi poradie umiestnenie sija sijoitus helyezes hely pozice umisteni position pos posn psn positions token tokens place pl plc plcg placing placement placering plass plassering plasering rank ranking rk order finish finishing
		rang classement clt class. cl clas place platz plads platzierung plz rangliste posicion puesto pto lugar clasificacion posizione posiz
		classifica piazzamento posto arrivo plaats plaatsing positie klassering posicao colocacao classificacao col miejsce msc pozycja
		lokata plac plats placeringar plassnr plassiffer plassr pp`,
	cPlace | cAmong: `gesamtplatz gesamtrang gesplatz gespl totalplats totalplac`,
	cPlace | cGroup: `klassenplatz akplatz akrang altersklassenplatz klassplac klasseplassering katplatz klplatz aklplatz akpl ageplace agplace catpos catplace catrank grouppos kategorieplatz`,
	cPlace | cSex:   `mwplatz mwpl geschlechterplatz genderpos genderplace genderrank sexpos sexplace platzmw`,
	cTime: `tm cas vysledny aika loppuaika ido idoeredmeny vysledek time times temps tps zeit laufzeit endzeit zielzeit tiempo tempo tijd eindtijd czas tid sluttid loptijd looptijd finishtime finishtid
		totaltid lopstid lopetid chrono chronometro gesamtzeit totaltime racetime runtime elapsed clock minutes czaskoncowy wynik resultado risultato
		duration duree dauer duracion durata duracao resultat resultaat result res ergebnis resultater realisation performance perf leistung marca prestazione`,
	cTime | cGun:    `bruttozeit bruttotid brutto lordo bruto gun guntime brut officiel official officieel oficial ufficiale offiziell pistolet czasbrutto bruttotijd tempsofficiel hruby hruba`,
	cTime | cChip:   `nettozeit nettotid netto chip chiptime net nettime chipzeit reel tempsreel transponder czasnetto nettotijd chiptijd realtime neto liquido netta`,
	cName:           `jmeno meno nimi nev nm name names fullname nom nombre nome naam namn navn nazwisko imienazwisko imieinazwisko runnername athletename nameofrunner nazwa teilnehmername nominativo nominativi`,
	cRunner:         `runner rnr runners athlete athletes participant finisher finishers competitor entrant coureur participante coureurs athlet laufer teilnehmer corredor corredores atleta atleti participante participantes concorrente partecipante loper deelnemer atleet zawodnik uczestnik biegacz lopare deltagare deltager deltaker loper lober lopers utover who person teilnehmerin lauferin zawodniczka`,
	cName | cGiven:  `krestni etunimi keresztnev firstname forename forenames given givenname first prenom prenoms vorname vornamen imie fornamn fornavn voornaam`,
	cName | cFamily: `prijmeni priezvisko sukunimi vezeteknev lastname surname surnames family familie familyname familienname nachname zuname apellido apellidos cognome achternaam familienaam sobrenome apelido efternamn etternavn efternavn last sname`,
	cName | cUnit:   `fname lname`,
	cAge:            `age ages alter edad eta leeftijd lft idade wiek alder yrs`,
	cBirth:          `nac nasc naiss ddn nascita narozen syntymaaika szuletesi birth born dob naissance ne nee geboren geburt geb geburtsdatum gebdatum geburtstag nacimiento nacido nascita nato nata geboorte geboortedatum nascimento nascido urodzenia ur urodzony fodelse fodd fodt fodselsdato fodelsedatum fodselsdag foedt datanascita datanascimento`,
	cBirth | cYear:  `rocnik narozeni syntymavuosi yob jahrgang jg jgg geburtsjahr gebjahr jahrg fodelsear fodselsar fodselsaar geboortejaar rocznik rok anneenaissance argang aargang fodt.ar fodselsar gj`,
	cYear:           `year yr annee an jahr ano anno jaar ar aar`,
	cDate:           `dagsetning paiva paivamaara date dates datum fecha data dato day jour tag dia giorno dag dzien termin rundate racedate eventdate lopsdato dt`,
	cGroup:          `kategorie sarja luokka ikaluokka ikaryhma korcsoport category cat categ catg categorie cate categoria categoria categorias kategorie kat kategoria klasse klass altersklasse ak agegroup agecat agecategory group grp gruppe gruppo grupo groep grupa class division div ag altersgruppe leeftijdsklasse leeftijdsgroep leeftijdscategorie leeftijdcategorie aldersgruppe aldersklass aldersklasse aldersgrupp wiekowa ageclass akl wk kl kategori kategorii kategorien kategorier agegrp agegr band ageband catage escalao escaloes faixa etaria etario`,
	cSex:            `pohlavi pohlavie sukupuoli sex sexe gender geschlecht gen genero sexo sesso genere geslacht plec kon kjonn kjoenn koen sx m/f geschl mf mw gesl genre rama jk l/p`,
	cClub:           `oddil tj seura egyesulet club clubs clubname clb verein vereinigung team teams teamname equipe mannschaft societa squadra societ soc equipo vereniging clube equipa klub forening klubb forbund lag association affiliation affil ac societe sdc klubbnavn verband verein/ort verein/team startgemeinschaft druzyna zespol idraetsforening vereinsname vereinname lauftreff`,
	cNumber:         `startovni stc kilpailunumero rajtszam bib bibno bibnumber barcode code number dossard startnummer startnr stnr snr startno dorsal pettorale pett rugnummer borstnummer peito startnummer racenumber racenr raceno runnerno runnerid id athleteid numer nummer startnumer nrstartowy numero numerodossard rugnr stnummer startnum brystnummer membership memberno licence license lizenz licencia tessera licens membernumber regno chipnr chipno chipnumber`,
	cNo:             `no nr num # nro nbr n nº num. lp`,
	cCourse:         `course venue location parcours strecke lieu lugarprueba percorso recorrido circuit circuito percurso trasa trat bana rute loype parkurs site circuito kurs laufstrecke sede austragungsort veranstaltungsort veranstaltung`,
	cRun:            `run runs race races event events evento eventos course.fr lauf laufe carrera carreras gara gare corrida corridas bieg biegi lop lob lop wedstrijd loopjes prueba parkour epreuve edition prova provas evt participations participation starts participaciones presenze teilnahmen deelnames startow`,
	cOfDay:          `ort city town lieu.fr plaats.nl localita ciudad ville woonplaats miasto stad by sted wohnort poblacion cidade hemort hometown miejscowosc residence residenza commune`,
	cSession:        `session heat wave start.time sitting welle vague manga fala startgrupp pulje ronde`,
	cDistance:       `distance dist distanz distancia distanza afstand dystans distans distancia km.total longueur lengte lange`,
	cStatus:         `status state etat estado stato statut zustand`,
	cNote:           `note notes remark remarks comment comments info remarque remarques observation observations obs commentaire commentaires bemerkung bemerkungen anmerkung anmerkungen hinweis hinweise observaciones observacion notas nota commento osservazioni opmerking opmerkingen opm observacoes uwagi uwaga anmarkning kommentar kommentarer bemaerkning bemaerkninger bemerkninger bemerkning merknad merknader noter anm bem misc comentario comentarios comentaris kommentare reakcje poznamka poznamky`,
	cGap:            `ztrata strata gap behind diff difference ecart ecarts ruckstand rueckstand abstand diferencia dif distacco distacchi achterstand verschil diferenca strata roznica differens forskel differanse avstand afstanden etter efter rst avance retard deficit`,
	cPace:           `pace speed allure vitesse geschwindigkeit ritmo velocidad vel velocita passo tempo/km minkm kmh velocidade snelheid tempo.pl predkosc fart hastighet minperkm kph mph schnitt moyenne media medio srednia kmt min/km km/h min/mile`,
	cSplit:          `split splits lap laps passage intermediate halfway zwischenzeit runde runden parcial parciales intermedio intermedi tussentijd doorkomst parcial miedzyczas mellantid mellomtid mellemtid tour varv runde1 zwz`,
	cTotal:          `total totals totaal totale gesamt ges razem totalt summe sum antal antall anzahl nombre.fr numero.de count nb cantidad aantal qtd quantidade liczba ilosc suma`,
	cAmong:          `overall scratch general generale generali algemeen ogolnie ogolem samlet sammanlagt open. allgemein o/a oa abs assoluta absoluto absoluta geral totaux`,
	cPoints:         `points point pts punkte punkt pkt puntos punti punten pontos punkty poang poeng score scores scoring`,
	cGrade:          `grade graded grading agegrade agegrading wava ag% pct percent percentage prozent`,
	cBest: `guess guessed nominated declared voorspelde voorspelling geschatte verwachte streeftijd doeltijd geschatzte schatzzeit schatzung tippzeit zeittipp vorhergesagte erwartete wunschzeit gemeldete meldezeit annonce vise pronostic objetivo pronostico dichiarato deklarowany forvantad gissad gissning tippad tippning forventede odhadovany predpokladany arvioitu arvio tavoiteaika veikkaus disgwyliedig
		average avg mean target predicted previsto prevista prevu estimado estime stimato geschatzt prognose prognosezeit erwartet verwacht voorspeld beraknad forventet przewidywany odhad goal pb pbs best personal previous record sb pr pbt bestzeit bestleistung meilleur mejor miglior migliore beste basta bedste paras nejlepsi osobak ennatys rekord marcapersonal rp melhor persoonlijk najlepszy pers bestetid rekordzeit perstid primato recorde personbasta zyciowy zyciowka`,
	cStart: `start depart salida partenza startzeit startzeiten starttijd starttid largada starttime`,
	cOther: `country nation nat nationality nationalite land pais paese kraj email mail phone telephone tel address county region state. kod zip postcode plz. photo certificate url link emergency nationalitat nazione nazionalita nationaliteit pays narodowosc nasjon age.at wind temp weather volunteer coach sponsor medal prize`,
	cUnit:  `hh mm ss oclock h m s min mins sec secs hours years km mi mile miles unit ms of the in at by on season my all de la le du des der die das del di da von and y e et und i o og och en na per to a an w den your his her kilometre kilometer meter metres m. dd yyyy yy hms jj tt aaaa gg rr which what whats did do you please enter is are was were tell us`,
}

// ideasOf turns ownLists and languageWords into one map, adding the ideas of words that
// stand in more than one list. A word with a full stop belongs to one language only and is
// handled by phrase.
func ideasOf() map[string]concept {
	m := map[string]concept{}
	for _, lists := range []map[concept]string{ownLists, languageWords} {
		for c, list := range lists {
			for _, w := range strings.Fields(list) {
				if !strings.Contains(w, ".") {
					m[w] |= c
				}
			}
		}
	}
	for w, c := range oneIdea {
		m[w] = c
	}
	return m
}

// headingPhrases are whole headings, folded, whose meaning is not the sum of
// their words.
var headingPhrases = withPhrases(withSemitic(withEastAsian(languagePhrases)), map[string]Meaning{
	"curso": Other, "p / f": Sex, "f / p": Sex, "p / t": Sex, "t / p": Sex, "d / p": Sex, "p / d": Sex, "g / j": Sex, "j / g": Sex, "j / m": Sex, "v / f": Sex, "f / v": Sex, "m / s": Sex, "g / e": Sex, "e / g": Sex, "d / m": Sex, "b / f": Sex, "f / b": Sex, "m / h": Sex, "h / m": Sex, "f / m / d": Sex, "w / m / d": Sex, "m / v / x": Sex, "h / f / x": Sex, "l / g": Sex, "g / l": Sex, "m / l": Sex, "l / m": Sex,
	"m / f": Sex, "f / m": Sex, "m / w": Sex, "w / m": Sex, "h / f": Sex, "h / d": Sex, "d / h": Sex, "m / k": Sex, "k / m": Sex, "m / f / x": Sex, "m / w / x": Sex, "m / w / d": Sex, "m / v": Sex, "mf": Sex, "mw": Sex, "s": Sex,
	"x / f / m": Sex, "boy / girl": Sex, "b / g": Sex, "g / b": Sex, "boys / girls": Sex, "fille / garcon": Sex, "garcon / fille": Sex, "filles / garcons": Sex, "garcons / filles": Sex, "f / g": Sex, "g / f": Sex, "cinsiyet": Sex, "ad soyad": Name, "adi soyadi": Name, "male / female": Sex, "man / woman": Sex, "man / vrouw": Sex,
	"s.v.": BirthYear, "s.v": BirthYear, "s v": BirthYear, "sv": BirthYear,
	"first": GivenName, "last": FamilyName, "christian name": GivenName, "christian names": GivenName, "second name": FamilyName, "squad": Club, "runs for": Club, "home club": Club, "home location": Other, "athlete location": Other, "runner location": Other, "participant location": Other, "birth location": Other, "run club": Club, "running club": Club, "club or town": Club, "club / team": Club, "club team": Club, "town / club": Club, "club / town": Club, "verein ort": Club, "verein / ort": Club, "first claim club": Club, "club code": Club,
	"o / a": Position, "p": Position, "a": Age, "g": AgeGroup, "not": Notes, "t": Time, "clock at finish": Other, "finish clock time of day": Other, "#": Position, "rk": Position, "finish": Position, "finish order": Position, "order of finish": Position,
	"token": Position, "tokens": Position, "token no": Position, "token number": Position, "finish token": Position, "finishing token": Position, "place token": Position, "position token": Position,
	"age on day": Age, "how old": Age, "how old are you": Age, "wie alt bist du": Age, "quel age avez vous": Age, "hoe oud ben je": Age, "aged": Age, "age on the day": Age, "age on race day": Age, "age at run": Age, "age at race": Age, "age today": Age, "age last birthday": Age,
	"cat": AgeGroup, "ag": AgeGroup, "age sex": AgeGroup, "sex age": AgeGroup, "sex / age": AgeGroup, "age / sex": AgeGroup, "m / f age": AgeGroup,
	"ag %": AgeGrade, "wma %": AgeGrade, "age %": AgeGrade, "%": AgeGrade, "wava": AgeGrade, "a / g": AgeGrade, "a / g %": AgeGrade, "age adj": AgeGrade, "age adjusted": AgeGrade, "factor": AgeGrade, "altersbereinigt": AgeGrade, "wma": AgeGrade,
	"date of birth": BirthDate, "d o b": BirthDate, "birthday": BirthDate, "birthdate": BirthDate, "birth date": BirthDate, "born on": BirthDate, "geburtsdatum": BirthDate, "fecha de nacimiento": BirthDate, "date de naissance": BirthDate, "data di nascita": BirthDate, "data ur": BirthDate,
	"y o b": BirthYear, "yb": BirthYear, "y b": BirthYear, "anno": BirthYear, "rok ur": BirthYear,
	"time of day": Other, "finish clock": Other, "clock": Other, "clock time at finish": Other, "uhrzeit": Other, "kloktijd": Other, "heure": Other, "heure d arrivee": Other, "heure darrivee": Other, "hora": Other, "hora de llegada": Other, "ora": Other, "ora di arrivo": Other, "ora arrivo": Other, "godzina": Other, "klockslag": Other, "klokkeslett": Other, "klokkeslaet": Other, "klockan": Other, "hora de chegada": Other, "aankomsttijd": Other, "arrival": Other, "arrival time": Other, "ankunft": Other, "finish clock time": Other, "wall clock": Other, "tod": Other,
	"started at": Date, "started": Session, "start timestamp": Date, "start datetime": Date, "start date": Date, "event datetime": Date, "run datetime": Date, "date time": Date, "datetime": Date, "finished at": Other, "finish timestamp": Other, "finish datetime": Other, "ended at": Other, "end time": Other, "recorded at": Other, "scanned at": Other, "timestamp": Other, "zeitstempel": Other, "tijdstempel": Other, "horodateur": Other, "horodatage": Other, "marca temporal": Other, "carimbo de data / hora": Other, "informazioni cronologiche": Other, "tidsstempel": Other, "tidsstampel": Other, "sygnatura czasowa": Other, "aikaleima": Other, "idobelyeg": Other, "casove razitko": Other, "casova znacka": Other, "casova peciatka": Other, "zaman damgasi": Other, "χρονοσφραγιδα": Other, "χρονικη σημανση": Other, "marca de timp": Other, "отметка времени": Other, "позначка часу": Other, "ajatempel": Other, "laika zimogs": Other, "laiko zyma": Other, "casovni zig": Other, "vremenska oznaka": Other, "タイムスタンプ": Other, "submitted at": Other, "submission date": Other, "created at": Other, "updated at": Other, "modified at": Other, "uploaded at": Other, "inserted at": Other,
	"f nac": BirthDate, "f nacimiento": BirthDate, "fec nac": BirthDate, "d nasc": BirthDate, "dt nasc": BirthDate, "geb dat": BirthDate, "geb am": BirthDate,
	"st c": Number, "st cislo": Number, "startovni cislo": Number, "rok narozeni": BirthYear, "rok nar": BirthYear, "datum narozeni": BirthDate, "prijmeni jmeno": Name, "prijmeni a jmeno": Name, "jmeno prijmeni": Name, "jmeno a prijmeni": Name, "priezvisko meno": Name, "meno priezvisko": Name,
	"when": Date, "wann": Date, "quand": Date, "cuando": Date, "quando": Date, "wanneer": Date, "kiedy": Date, "nar": Date, "hvornar": Date, "where": Course, "wo": Course, "ou": Course, "donde": Course, "dove": Course, "waar": Course, "gdzie": Course, "onde": Course, "hvor": Course, "var": Course, "luogo": Course, "plaats van loop": Course, "plaats van de loop": Course, "plaats loop": Course, "lieu de la course": Course, "lugar de la carrera": Course, "luogo della gara": Course, "local": Course, "local da prova": Course, "miejsce biegu": Course, "plats for lopet": Course, "tavlingsplats": Course, "lopssted": Course, "lobssted": Course, "laufort": Course, "wettkampfort": Course, "ground": Course, "park": Course,
	"day / place": Other, "label": Name, "check in": Other, "checkin": Other, "check in time": Other, "checkin time": Other, "checked in": Other, "checked in at": Other, "check in at": Other, "sign in time": Other, "registration time": Other, "clock time": Other, "prov": Other, "province": Other, "provincia": Other, "provinz": Other, "start time": Session, "start": Session, "starttime": Session, "startzeit": Session, "starttid": Session, "heure de depart": Session, "hora de salida": Session, "starttijd": Session, "run time": Time,
	"event no": Other, "event number": Other, "run no": Other, "run number": Other, "race no": Number, "race number": Number, "event #": Other, "run #": Other, "week": Other, "lauf nr": Other,
	"course record": Other, "time to beat": Other, "predicted time": Other, "projected time": Other, "proj time": Other, "final": Time, "cil": Time, "v cili": Time, "odstup": Gap, "estimated time": Other, "est time": Other, "expected time": Other, "exp time": Other, "pred time": Other, "entry time": Other, "seed time": Other, "forecast time": Other, "moving time": Other, "target time": Other, "handicap": Other, "handicap time": Other, "actual time": Time, "total seconds": Time, "total secs": Time, "total sec": Time, "corrected time": Time, "corrected": Time, "corrected to": Time, "amended time": Time, "revised time": Time, "net time": ChipTime, "net tim": ChipTime, "gun tim": GunTime, "gun": GunTime, "chip": ChipTime,
	"runs": TotalRuns, "times volunteered": Other, "times helped": Other, "volunteering": Other, "volunteer days": Other, "times run": TotalRuns, "times ran": TotalRuns, "times attended": TotalRuns, "times here": TotalRuns, "no of times": TotalRuns, "total runs": TotalRuns, "total": TotalRuns, "no of runs": TotalRuns, "number of runs": TotalRuns, "run count": TotalRuns, "laufe": TotalRuns, "carreras": TotalRuns, "gare": TotalRuns, "corridas": TotalRuns, "biegi": TotalRuns, "races": TotalRuns, "attendance": TotalRuns, "attendances": TotalRuns, "appearances": TotalRuns, "nb courses": TotalRuns, "nb de courses": TotalRuns, "nombre de courses": TotalRuns, "runs to date": TotalRuns, "volunteered": TotalRuns,
	"nom": Name, "cognome nome": Name, "nome cognome": Name, "nazwisko imie": Name, "imie nazwisko": Name, "apellido nombre": Name, "apellidos nombre": Name, "nombre apellido": Name, "nombre apellidos": Name, "nombre y apellido": Name, "prenom nom": Name, "prenom et nom": Name, "naam voornaam": Name, "voornaam naam": Name, "voornaam en naam": Name, "naam en voornaam": Name, "nome e sobrenome": Name, "nome sobrenome": Name, "nome apelido": Name, "namn fornamn": Name, "fornamn namn": Name, "nom de famille": FamilyName, "nom famille": FamilyName, "real time": ChipTime,
	"nom prenom": Name, "nom et prenom": Name, "apellidos y nombre": Name, "nombre y apellidos": Name, "cognome e nome": Name, "nome e cognome": Name, "nazwisko i imie": Name, "imie i nazwisko": Name, "name vorname": Name, "vorname name": Name, "first and last name": Name, "name first last": Name, "first name last name": Name, "surname first name": Name, "name of runner": Name, "who": Name, "fn": GivenName, "ln": FamilyName, "sur": FamilyName, "1st name": GivenName, "2nd name": FamilyName,
	"sobrenome": FamilyName, "apelido": FamilyName, "nome proprio": GivenName, "primeiro nome": GivenName, "nombre de pila": GivenName, "initial": Other, "initials": GivenName, "roepnaam": GivenName, "middle name": Other,
	"run": Course, "race": Course, "event": Course, "course": Course, "parcours": Course, "lieu": Course, "event name": Course, "race name": Course, "run name": Course, "course name": Course, "venue name": Course, "name of course": Course, "nom du parcours": Course, "nom de la course": Course, "name of run": Course, "nom course": Course, "location": Course, "carrera": Course, "gara": Course, "lauf": Course, "corrida": Course, "bieg": Course, "lop": Course, "lob": Course, "wedstrijd": Course, "prueba": Course, "epreuve": Course, "site": Course,
	"run date": Date, "race date": Date, "event date": Date, "date of run": Date, "date de la course": Date, "fecha de la carrera": Date, "data gara": Date, "data della gara": Date, "data biegu": Date, "datum loop": Date, "laufdatum": Date,
	"pos cat": GroupPlace, "div / tot": GroupPlace, "div / total": GroupPlace, "stat": Other, "pos m / f": SexPlace, "place m / f": SexPlace, "pl m / w": SexPlace, "platz m / w": SexPlace, "m / f pos": SexPlace, "m / f place": SexPlace, "m / w pl": SexPlace, "m / w platz": SexPlace, "m pos": SexPlace, "f pos": SexPlace, "pos m": SexPlace, "pos f": SexPlace, "pos w": SexPlace, "pos in cat": GroupPlace, "p cat": GroupPlace, "ag pos": GroupPlace, "ag place": GroupPlace, "ag rank": GroupPlace, "clt cat": GroupPlace, "class cat": GroupPlace, "cl cat": GroupPlace, "clas cat": GroupPlace, "clt sexe": SexPlace, "cl sexe": SexPlace,
	"pl ak": GroupPlace, "ak pl": GroupPlace, "platz ak": GroupPlace, "rang ak": GroupPlace, "ak platz": GroupPlace, "ak rang": GroupPlace, "team pos": Other, "team place": Other, "team position": Other, "club pos": Other, "club position": Other,
	"how long": Time, "how long did it take": Time, "how many runs": TotalRuns, "best before": PersonalBest, "best before today": PersonalBest, "points so far": Points, "anything else": Notes, "vest": Number, "vest no": Number, "age range": AgeGroup, "outcome": Status, "+ / -": Gap, "indice d age": AgeGrade, "tranche d age": AgeGroup, "fascia d eta": AgeGroup,
	"how": Notes, "new": Notes, "new pb": Notes, "pb": PersonalBest, "sb": PersonalBest, "achievement": Notes, "achievements": Notes, "taking part as": Notes, "type": Notes, "participation": Notes, "rating": Other, "gender": Sex,
	"classement": Position, "clt": Position, "cl": Position, "clas": Position, "clasif": Position, "class": AgeGroup, "rang": Position, "pto": Position, "lp": Position,
})

// withPhrases adds the phrases of further languages; one in both tables keeps
// the meaning of the second.
func withPhrases(more, phrases map[string]Meaning) map[string]Meaning {
	for p, m := range more {
		if _, there := phrases[p]; !there {
			phrases[p] = m
		}
	}
	return phrases
}

// oneIdea are words that stand in several lists and mean one thing, or what several of them
// say together. The others stand in one list, which a test holds.
var oneIdea = map[string]concept{
	"narozeni": cBirth | cYear, "kraj": cOther,
	"place": cPlace, "plaats": cPlace, "lugar": cPlace, "tempo": cTime, "start": cStart, "nombre": cName, "numero": cNo,
	"class": cGroup, "classe": cGroup, "gun": cTime | cGun, "chip": cTime | cChip, "run": cRun, "course": cCourse,
	"first": cName | cGiven, "last": cName | cFamily, "m": cUnit, "min": cUnit, "total": cTotal, "afstand": cDistance,
	"loper": cRunner, "resultat": cTime, "ag": cGroup | cUnit, "nat": cOther, "plz": cPlace, "kurs": cCourse,
	"kl": cGroup, "media": cPace, "lage": cOther, "runner": cRunner, "parcial": cSplit, "state": cStatus, "best": cBest,
	"number": cNumber, "finish": cPlace | cTime, "result": cTime, "position": cPlace, "net": cTime | cChip, "dist": cDistance,
	"snr": cNumber, "an": cUnit, "ar": cYear, "record": cBest, "y": cUnit, "e": cUnit, "i": cUnit, "o": cUnit, "lp": cNo,
	"participante": cRunner, "ac": cClub, "by": cOfDay, "circuit": cCourse, "ne": cBirth, "ur": cBirth, "genre": cSex, "gen": cSex,
	"wk": cGroup, "col": cPlace, "order": cPlace, "id": cNumber, "nb": cTotal, "kat": cGroup, "avstand": cGap, "geral": cAmong, "sum": cTotal,
	"mesto": cPlace, "ime": cName | cGiven, "rod": cPlace, "kor": cAge, "in": cUnit, "tek": cRun, "vek": cAge, "ras": cRun,
	"official": cTime | cGun, "n": cNo, "en": cUnit, "da": cUnit, "la": cUnit, "s": cUnit, "w": cUnit, "h": cUnit, "a": cUnit, "epreuve": cRun,
}
