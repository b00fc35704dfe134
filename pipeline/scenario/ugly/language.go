package ugly

import (
	"fmt"

	"lapwing/pipeline/unit"
)

// language holds the wordings of one language. The first heading of each kind
// is the usual one. Month and weekday names follow CLDR (from memory).
type language struct {
	headings map[string][]string
	months   [12]string
	days     [7]string // from Sunday
	date     string    // "w" weekday, "d" day, "m" month, "y" year
	results  string
	venue    string
	when     string
	sexes    [][2]string // letters or words for men and women
	group    [2]string   // letter before a group for men and women
	men      [2]string   // section titles
}

var languages = map[string]*language{
	"en": {
		headings: map[string][]string{
			"pos":      {"Position", "Pos", "Pos.", "Place", "Posn", "#", "Overall", "Finish position", "Overall Place", "Rank", "Finishing Pos"},
			"name":     {"Name", "Runner", "Athlete", "Full name", "Participant", "Runner's name", "Competitor", "Finisher"},
			"given":    {"First name", "Forename", "Given name", "First", "Firstname", "Christian name"},
			"family":   {"Last name", "Surname", "Family name", "Last", "Lastname"},
			"sex":      {"Sex", "Gender", "M/F", "Gen", "Gender (M/F)"},
			"age":      {"Age", "Age on day", "Age (yrs)", "Age on the day"},
			"age31dec": {"Age on 31 Dec", "Age at 31/12"},
			"yob":      {"Year of birth", "YOB", "Born", "Birth year", "Yr of birth"},
			"dob":      {"Date of birth", "DOB", "D.O.B.", "Birthdate", "Birth date"},
			"group":    {"Age group", "Category", "Cat", "Cat.", "Age cat", "AG", "Class", "Age category", "Division"},
			"club":     {"Club", "Team", "Club/Team", "Running club", "Affiliation", "Club name"},
			"number":   {"Number", "Bib", "Race no", "Bib no.", "Runner no", "Race number"},
			"time":     {"Time", "Finish time", "Result", "Run time", "Finish", "Official time", "Final time"},
			"course":   {"Course", "Venue", "Event", "Location", "Where"},
			"date":     {"Date", "Run date", "Event date", "Day", "When"},
			"notes":    {"Notes", "Comments", "Remarks", "Note", "Comment"},
			"gap":      {"Gap", "Behind", "Diff", "+/-"},
			"pace":     {"Pace", "min/km", "Pace (min/km)", "Avg pace"},
			"split":    {"Halfway", "2.5k", "Split", "Lap 1"},
			"gun":      {"Gun time", "Gun"},
			"chip":     {"Chip time", "Chip", "Net time"},
			"catpos":   {"Cat pos", "Pos in category", "Group place", "AG place", "Category position"},
			"sexpos":   {"Gender pos", "Gender place", "M/F pos"},
			"points":   {"Points", "Pts", "League points", "Score"},
			"grade":    {"Age grade", "AG %", "Age grading", "Age-graded %"},
			"total":    {"Total runs", "Runs", "Runs to date", "No. of runs"},
			"pb":       {"PB", "Best", "Previous best", "PB time"},
			"speed":    {"km/h", "Speed", "Speed (km/h)"},
			"clock":    {"Time of day", "Clock time", "Finish clock"},
			"start":    {"Start", "Start time"},
			"distance": {"Distance", "Dist", "Km"},
			"minutes":  {"Min", "Mins", "Minutes"},
			"seconds":  {"Sec", "Secs", "Seconds"},
		},
		months:  [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"},
		days:    [7]string{"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"},
		date:    "w d m y",
		results: "Results", venue: "Venue", when: "Date",
		sexes: [][2]string{{"M", "F"}, {"M", "W"}, {"Male", "Female"}, {"Men", "Women"}, {"M", "L"}, {"Man", "Lady"}},
		group: [2]string{"M", "W"}, men: [2]string{"Men", "Women"},
	},
	"de": {
		headings: map[string][]string{
			"pos": {"Platz", "Rang", "Pl.", "Platzierung"}, "name": {"Name", "Läufer", "Teilnehmer"}, "given": {"Vorname"}, "family": {"Nachname", "Familienname", "Zuname"},
			"sex": {"Geschlecht", "m/w", "Geschl."}, "age": {"Alter"}, "age31dec": {"Alter am 31.12."}, "yob": {"Jahrgang", "Jg.", "Jg", "Geburtsjahr"}, "dob": {"Geburtsdatum", "geb. am"},
			"group": {"Altersklasse", "AK", "Klasse"}, "club": {"Verein", "Verein/Ort", "Team"}, "number": {"Startnummer", "Stnr", "StNr."}, "time": {"Zeit", "Laufzeit", "Zielzeit", "Endzeit"},
			"course": {"Strecke", "Ort", "Lauf"}, "date": {"Datum", "Tag"}, "notes": {"Bemerkung", "Bemerkungen", "Anmerkung"}, "gap": {"Rückstand", "Abstand"}, "pace": {"Tempo", "min/km"},
			"catpos": {"AK-Platz", "Platz AK"}, "points": {"Punkte"}, "total": {"Anzahl Läufe"}, "pb": {"Bestzeit"},
		},
		months: [12]string{"Januar", "Februar", "März", "April", "Mai", "Juni", "Juli", "August", "September", "Oktober", "November", "Dezember"},
		days:   [7]string{"Sonntag", "Montag", "Dienstag", "Mittwoch", "Donnerstag", "Freitag", "Samstag"},
		date:   "w, d. m y", results: "Ergebnisliste", venue: "Ort", when: "Datum",
		sexes: [][2]string{{"M", "W"}, {"m", "w"}, {"männlich", "weiblich"}, {"Herr", "Frau"}, {"H", "D"}}, group: [2]string{"M", "W"}, men: [2]string{"Männer", "Frauen"},
	},
	"fr": {
		headings: map[string][]string{
			"pos": {"Place", "Rang", "Classement", "Clt"}, "name": {"Nom", "Coureur", "Nom et prénom", "Participant"}, "given": {"Prénom"}, "family": {"Nom", "Nom de famille"},
			"sex": {"Sexe", "Genre"}, "age": {"Âge", "Age"}, "age31dec": {"Âge au 31/12"}, "yob": {"Année de naissance", "Année naiss.", "Né(e) en"}, "dob": {"Date de naissance", "Né(e) le"},
			"group": {"Catégorie", "Cat.", "Catégorie d'âge"}, "club": {"Club", "Équipe", "Association"}, "number": {"Dossard", "N° dossard"}, "time": {"Temps", "Chrono", "Temps final"},
			"course": {"Parcours", "Lieu"}, "date": {"Date", "Jour"}, "notes": {"Remarques", "Observations"}, "gap": {"Écart"}, "pace": {"Allure", "min/km"},
			"catpos": {"Place cat.", "Rang catégorie"}, "points": {"Points"}, "total": {"Nombre de courses"}, "pb": {"Record perso"},
		},
		months: [12]string{"janvier", "février", "mars", "avril", "mai", "juin", "juillet", "août", "septembre", "octobre", "novembre", "décembre"},
		days:   [7]string{"dimanche", "lundi", "mardi", "mercredi", "jeudi", "vendredi", "samedi"},
		date:   "w d m y", results: "Résultats", venue: "Lieu", when: "Date",
		sexes: [][2]string{{"H", "F"}, {"M", "F"}, {"Homme", "Femme"}, {"H", "D"}}, group: [2]string{"H", "F"}, men: [2]string{"Hommes", "Femmes"},
	},
	"es": {
		headings: map[string][]string{
			"pos": {"Puesto", "Posición", "Pos.", "Clasificación"}, "name": {"Nombre", "Corredor", "Nombre y apellidos", "Participante"}, "given": {"Nombre"}, "family": {"Apellidos", "Apellido"},
			"sex": {"Sexo", "Género"}, "age": {"Edad"}, "age31dec": {"Edad a 31/12"}, "yob": {"Año de nacimiento", "Año nac."}, "dob": {"Fecha de nacimiento", "F. nacimiento"},
			"group": {"Categoría", "Cat.", "Grupo de edad"}, "club": {"Club", "Equipo"}, "number": {"Dorsal"}, "time": {"Tiempo", "Marca", "Tiempo oficial"},
			"course": {"Recorrido", "Lugar"}, "date": {"Fecha", "Día"}, "notes": {"Observaciones", "Notas"}, "gap": {"Diferencia"}, "pace": {"Ritmo", "min/km"},
			"catpos": {"Pos. cat.", "Puesto categoría"}, "points": {"Puntos"}, "total": {"Carreras"}, "pb": {"Mejor marca"},
		},
		months: [12]string{"enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre"},
		days:   [7]string{"domingo", "lunes", "martes", "miércoles", "jueves", "viernes", "sábado"},
		date:   "w, d de m de y", results: "Resultados", venue: "Lugar", when: "Fecha",
		sexes: [][2]string{{"H", "M"}, {"Hombre", "Mujer"}, {"Masculino", "Femenino"}}, group: [2]string{"H", "M"}, men: [2]string{"Hombres", "Mujeres"},
	},
	"it": {
		headings: map[string][]string{
			"pos": {"Posizione", "Pos.", "Classifica", "Posto"}, "name": {"Nome", "Atleta", "Cognome e nome", "Nominativo"}, "given": {"Nome"}, "family": {"Cognome"},
			"sex": {"Sesso"}, "age": {"Età"}, "age31dec": {"Età al 31/12"}, "yob": {"Anno di nascita", "Anno"}, "dob": {"Data di nascita", "Nato il"},
			"group": {"Categoria", "Cat."}, "club": {"Società", "Squadra"}, "number": {"Pettorale", "Pett."}, "time": {"Tempo", "Tempo finale"},
			"course": {"Percorso", "Luogo"}, "date": {"Data", "Giorno"}, "notes": {"Note", "Osservazioni"}, "gap": {"Distacco"}, "pace": {"Ritmo", "min/km"},
			"catpos": {"Pos. cat."}, "points": {"Punti"}, "total": {"Gare"}, "pb": {"Primato"},
		},
		months: [12]string{"gennaio", "febbraio", "marzo", "aprile", "maggio", "giugno", "luglio", "agosto", "settembre", "ottobre", "novembre", "dicembre"},
		days:   [7]string{"domenica", "lunedì", "martedì", "mercoledì", "giovedì", "venerdì", "sabato"},
		date:   "w d m y", results: "Risultati", venue: "Luogo", when: "Data",
		sexes: [][2]string{{"M", "F"}, {"Uomo", "Donna"}, {"U", "D"}, {"maschio", "femmina"}}, group: [2]string{"M", "F"}, men: [2]string{"Uomini", "Donne"},
	},
	"nl": {
		headings: map[string][]string{
			"pos": {"Plaats", "Positie", "Pl."}, "name": {"Naam", "Loper", "Deelnemer"}, "given": {"Voornaam"}, "family": {"Achternaam"},
			"sex": {"Geslacht", "M/V"}, "age": {"Leeftijd"}, "age31dec": {"Leeftijd op 31-12"}, "yob": {"Geboortejaar"}, "dob": {"Geboortedatum"},
			"group": {"Leeftijdsgroep", "Categorie", "Cat."}, "club": {"Vereniging", "Club"}, "number": {"Startnummer", "Startnr"}, "time": {"Tijd", "Eindtijd"},
			"course": {"Parcours", "Plaats van loop"}, "date": {"Datum"}, "notes": {"Opmerkingen", "Opmerking"}, "gap": {"Achterstand", "Verschil"}, "pace": {"Tempo", "min/km"},
			"catpos": {"Plaats cat."}, "points": {"Punten"}, "total": {"Aantal lopen"}, "pb": {"Beste tijd"},
		},
		months: [12]string{"januari", "februari", "maart", "april", "mei", "juni", "juli", "augustus", "september", "oktober", "november", "december"},
		days:   [7]string{"zondag", "maandag", "dinsdag", "woensdag", "donderdag", "vrijdag", "zaterdag"},
		date:   "w d m y", results: "Uitslag", venue: "Locatie", when: "Datum",
		sexes: [][2]string{{"M", "V"}, {"Man", "Vrouw"}, {"H", "D"}}, group: [2]string{"M", "V"}, men: [2]string{"Heren", "Dames"},
	},
	"sv": {
		headings: map[string][]string{
			"pos": {"Placering", "Plac.", "Plats"}, "name": {"Namn", "Löpare", "Deltagare"}, "given": {"Förnamn"}, "family": {"Efternamn"},
			"sex": {"Kön"}, "age": {"Ålder"}, "age31dec": {"Ålder 31/12"}, "yob": {"Födelseår", "Född"}, "dob": {"Födelsedatum"},
			"group": {"Åldersklass", "Klass"}, "club": {"Klubb", "Förening"}, "number": {"Startnummer", "Startnr", "Nr"}, "time": {"Tid", "Sluttid"},
			"course": {"Bana", "Ort"}, "date": {"Datum"}, "notes": {"Anmärkning", "Kommentar"}, "gap": {"Efter", "Skillnad"}, "pace": {"Tempo", "min/km"},
			"catpos": {"Plac. klass"}, "points": {"Poäng"}, "total": {"Antal lopp"}, "pb": {"Personbästa"},
		},
		months: [12]string{"januari", "februari", "mars", "april", "maj", "juni", "juli", "augusti", "september", "oktober", "november", "december"},
		days:   [7]string{"söndag", "måndag", "tisdag", "onsdag", "torsdag", "fredag", "lördag"},
		date:   "w d m y", results: "Resultat", venue: "Plats", when: "Datum",
		sexes: [][2]string{{"M", "K"}, {"Man", "Kvinna"}, {"H", "D"}}, group: [2]string{"M", "K"}, men: [2]string{"Herrar", "Damer"},
	},
	"pl": {
		headings: map[string][]string{
			"pos": {"Miejsce", "M-ce", "Lp.", "Pozycja"}, "name": {"Imię i nazwisko", "Zawodnik", "Nazwisko i imię"}, "given": {"Imię"}, "family": {"Nazwisko"},
			"sex": {"Płeć"}, "age": {"Wiek"}, "age31dec": {"Wiek na 31.12"}, "yob": {"Rok urodzenia", "Rocznik"}, "dob": {"Data urodzenia"},
			"group": {"Kategoria", "Kat.", "Kategoria wiekowa"}, "club": {"Klub", "Drużyna"}, "number": {"Numer startowy", "Nr startowy", "Nr"}, "time": {"Czas", "Wynik"},
			"course": {"Trasa", "Miejscowość"}, "date": {"Data"}, "notes": {"Uwagi"}, "gap": {"Strata"}, "pace": {"Tempo", "min/km"},
			"catpos": {"Miejsce w kat."}, "points": {"Punkty"}, "total": {"Liczba biegów"}, "pb": {"Rekord życiowy"},
		},
		months: [12]string{"stycznia", "lutego", "marca", "kwietnia", "maja", "czerwca", "lipca", "sierpnia", "września", "października", "listopada", "grudnia"},
		days:   [7]string{"niedziela", "poniedziałek", "wtorek", "środa", "czwartek", "piątek", "sobota"},
		date:   "w, d m y", results: "Wyniki", venue: "Trasa", when: "Data",
		sexes: [][2]string{{"M", "K"}, {"mężczyzna", "kobieta"}}, group: [2]string{"M", "K"}, men: [2]string{"Mężczyźni", "Kobiety"},
	},
	"pt": {
		headings: map[string][]string{
			"pos": {"Posição", "Lugar", "Classificação"}, "name": {"Nome", "Atleta", "Nome completo"}, "given": {"Nome", "Primeiro nome"}, "family": {"Apelido", "Sobrenome"},
			"sex": {"Sexo", "Género"}, "age": {"Idade"}, "age31dec": {"Idade a 31/12"}, "yob": {"Ano de nascimento"}, "dob": {"Data de nascimento"},
			"group": {"Escalão", "Categoria", "Faixa etária"}, "club": {"Clube", "Equipa"}, "number": {"Dorsal", "N.º"}, "time": {"Tempo", "Tempo final"},
			"course": {"Percurso", "Local"}, "date": {"Data", "Dia"}, "notes": {"Observações", "Notas"}, "gap": {"Diferença"}, "pace": {"Ritmo", "min/km"},
			"catpos": {"Lugar escalão"}, "points": {"Pontos"}, "total": {"Corridas"}, "pb": {"Recorde pessoal"},
		},
		months: [12]string{"janeiro", "fevereiro", "março", "abril", "maio", "junho", "julho", "agosto", "setembro", "outubro", "novembro", "dezembro"},
		days:   [7]string{"domingo", "segunda-feira", "terça-feira", "quarta-feira", "quinta-feira", "sexta-feira", "sábado"},
		date:   "w, d de m de y", results: "Resultados", venue: "Local", when: "Data",
		sexes: [][2]string{{"M", "F"}, {"Masculino", "Feminino"}, {"H", "M"}}, group: [2]string{"M", "F"}, men: [2]string{"Homens", "Mulheres"},
	},
	"da": {
		headings: map[string][]string{
			"pos": {"Placering", "Plads", "Nr."}, "name": {"Navn", "Løber", "Deltager"}, "given": {"Fornavn"}, "family": {"Efternavn"},
			"sex": {"Køn"}, "age": {"Alder"}, "age31dec": {"Alder 31/12"}, "yob": {"Fødselsår", "Årgang"}, "dob": {"Fødselsdato"},
			"group": {"Aldersgruppe", "Klasse"}, "club": {"Klub", "Forening"}, "number": {"Startnummer", "Startnr."}, "time": {"Tid", "Sluttid"},
			"course": {"Rute", "Sted"}, "date": {"Dato"}, "notes": {"Bemærkninger", "Noter"}, "gap": {"Afstand"}, "pace": {"Tempo", "min/km"},
			"catpos": {"Plac. gruppe"}, "points": {"Point"}, "total": {"Antal løb"}, "pb": {"Personlig rekord"},
		},
		months: [12]string{"januar", "februar", "marts", "april", "maj", "juni", "juli", "august", "september", "oktober", "november", "december"},
		days:   [7]string{"søndag", "mandag", "tirsdag", "onsdag", "torsdag", "fredag", "lørdag"},
		date:   "w d. m y", results: "Resultater", venue: "Sted", when: "Dato",
		sexes: [][2]string{{"M", "K"}, {"Mand", "Kvinde"}}, group: [2]string{"M", "K"}, men: [2]string{"Mænd", "Kvinder"},
	},
}

// words prints a date in words: "Saturday 3 May 2025", "Samstag, 3. Mai 2025".
func (l *language) words(d unit.Day, weekday bool) string {
	y, m, dd := d.Date()
	s := ""
	for i := 0; i < len(l.date); i++ {
		switch l.date[i] {
		case 'w':
			s += l.days[d.Weekday()]
		case 'd':
			if i+1 < len(l.date) && l.date[i+1] == 'e' { // Spanish and Portuguese "de"
				s += "d"
				continue
			}
			s += fmt.Sprint(dd)
		case 'm':
			s += l.months[m-1]
		case 'y':
			s += fmt.Sprint(y)
		default:
			s += l.date[i : i+1]
		}
	}
	if !weekday {
		s = s[len(l.days[d.Weekday()]):]
		for s[0] == ',' || s[0] == ' ' {
			s = s[1:]
		}
	}
	return s
}

// heading picks a wording; kinds that a language lacks are taken from English.
func (l *language) heading(kind string, pickOne func([]string) string) string {
	h := l.headings[kind]
	if len(h) == 0 {
		h = languages["en"].headings[kind]
	}
	return pickOne(h)
}
