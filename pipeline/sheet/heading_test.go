package sheet

import "testing"

// Headings of result sheets in eleven languages (common practice, no source).
func TestHeadings(t *testing.T) {
	want := map[Meaning][]string{
		Position: {"M-ce", "Piazz.", "O'All", "Plts", "Classif.", "Pos", "Pos.", "POSITION", "Posn", "Place", "Pl.", "Rank", "#", "Finish", "Finish position", "Finishing position", "Overall place", "Overall Pos", "O/A", "Pos (overall)",
			"Platz", "Rang", "Gesamtplatz", "Platzierung", "Place", "Clt", "Classement", "Rang", "Puesto", "Posición", "Clasificación", "Posizione", "Pos. assoluta", "Plaats", "Posição", "Colocação", "Miejsce", "Msc", "Placering", "Plats", "Plass", "Plassering", "Classement général", "Pos. général", "Puesto general", "Platz gesamt"},
		Name:         {"Name", "Names", "Name, club", "Name / Cat", "Runner - age group", "Name (club)", "Full name", "Runner", "Runner name", "Runner's name", "Athlete", "Participant", "Name of runner", "Nom", "Nom Prénom", "Nom et prénom", "Coureur", "Läufer", "Läufer/in", "Teilnehmer", "Nombre", "Nombre y apellidos", "Apellidos y nombre", "Nome", "Cognome e nome", "Cognome Nome", "Atleta", "Naam", "Loper", "Nome completo", "Imię i nazwisko", "Nazwisko i imię", "Zawodnik", "Namn", "Navn", "Løber", "Löpare"},
		GivenName:    {"First name", "First", "Firstname", "Forename", "Given name", "Given Name(s)", "Prénom", "Vorname", "Voornaam", "Imię", "Förnamn", "Fornavn", "First Names"},
		FamilyName:   {"Surname", "Last name", "Family name", "Last", "Nachname", "Familienname", "Nom de famille", "Apellido", "Apellidos", "Cognome", "Achternaam", "Sobrenome", "Efternamn", "Efternavn", "Etternavn"},
		Time:         {"Time", "TIME", "Time (mm:ss)", "Time [h:mm:ss]", "Finish time", "Finishing time", "Run time", "Result", "Temps", "Zeit", "Zielzeit", "Endzeit", "Laufzeit", "Tiempo", "Tempo", "Tijd", "Czas", "Tid", "Resultado", "Total time", "Time hh:mm:ss", "Overall time", "Tempo finale", "Time taken", "Gesamtzeit", "Temps total"},
		GunTime:      {"Gun time", "Gun", "Bruttozeit", "Brutto", "Official time", "Temps officiel", "Tempo ufficiale", "Tempo lordo", "Bruttotid", "Czas brutto", "Tiempo oficial"},
		ChipTime:     {"Chip time", "Chip", "Net time", "Nettozeit", "Netto", "Temps réel", "Tempo netto", "Tempo neto", "Nettotid", "Czas netto", "Real time"},
		Age:          {"And how old", "Age", "Ages", "Age (years)", "Age on day", "Alter", "Âge", "Edad", "Età", "Leeftijd", "Idade", "Wiek", "Ålder", "Alder", "Age last birthday"},
		BirthYear:    {"RN", "athlete.birthYear", "YOB", "Year of birth", "Birth year", "Jahrgang", "Jg.", "Jg", "Geburtsjahr", "Année de naissance", "Año de nacimiento", "Anno di nascita", "Geboortejaar", "Ano de nascimento", "Rok urodzenia", "Rocznik", "Födelseår", "Fødselsår"},
		BirthDate:    {"DOB", "D.O.B.", "Date of birth", "Birth date", "Born", "Geburtsdatum", "Date de naissance", "Né(e) le", "Fecha de nacimiento", "Data di nascita", "Geboortedatum", "Data de nascimento", "Data urodzenia", "Fødselsdato"},
		AgeGroup:     {"Category", "Cat", "Cat.", "Age group", "Age Grp", "Age cat", "Age category", "AG", "Class", "Division", "AK", "Altersklasse", "Kat.", "Catégorie", "Cat. d'âge", "Categoría", "Categoria", "Leeftijdscategorie", "Kategoria", "Kategoria wiekowa", "Klass", "Klasse", "Aldersgruppe", "Age-group", "Age/Sex", "Age Band", "Group"},
		Sex:          {"Sex", "Gender", "M/F", "M / F", "Gen", "Sexe", "Geschlecht", "Geschl.", "m/w", "Sexo", "Sesso", "Geslacht", "Płeć", "Kön", "Køn", "Kjønn", "Género", "S", "M/W/X", "H/F", "Male/Female", "L/P", "Nam/Nữ"},
		Club:         {"Club", "CLUB", "Team", "Club/Team", "Club name", "Running club", "Club or town", "Verein", "Verein/Ort", "Mannschaft", "Équipe", "Equipo", "Società", "Squadra", "Vereniging", "Clube", "Klub", "Klubb", "Forening", "Affiliation"},
		Number:       {"Dors.", "Nummerlapp", "Číslo", "Bib", "Bib no.", "Race number", "Race No", "Number", "Startnummer", "Startnr.", "Stnr", "Dossard", "N° dossard", "Dorsal", "Pettorale", "Startnummer", "Numer startowy", "Barcode", "Athlete ID", "Runner no.", "ID", "Membership number"},
		Course:       {"Course", "Venue", "Run name", "Event", "Race", "Parcours", "Strecke", "Recorrido", "Percorso", "Trasa", "Bana", "Course name", "Location", "Event name"},
		Date:         {"Date", "Run date", "Race date", "Date of run", "Datum", "Fecha", "Data", "Dato", "Day"},
		Session:      {"Session", "Start time", "Start", "Wave", "Startzeit"},
		Distance:     {"Distance", "Distance (km)", "Dist", "Distanz", "Distancia", "Dystans", "Afstand"},
		Status:       {"Status", "Statut", "Estado"},
		Notes:        {"Not", "Notes", "Note", "Comments", "Remarks", "Bemerkung", "Remarques", "Observaciones", "Opmerkingen", "Uwagi", "Anmärkning", "Bemærkninger", "Obs.", "Comment"},
		Gap:          {"Atraso", "Gap", "Behind", "Diff", "Time behind", "Rückstand", "Écart", "Diferencia", "Distacco", "Achterstand", "Strata", "Time diff", "Gap to leader", "Abstand"},
		Pace:         {"km/u", "km/t", "Vit. (km/h)", "perc/km", "Pace", "Min/km", "min/mile", "Pace (min/km)", "Speed km/h", "km/h", "Allure", "Geschwindigkeit", "Ritmo", "Tempo min/km", "Ø Pace", "Pace per km"},
		Split:        {"Split", "Lap 1", "Lap 2 time", "1 km time", "2.5 km split", "Zwischenzeit", "Halfway", "Halfway time", "Parcial", "1km split"},
		GroupPlace:   {"M-ce kat.", "Klasseplac.", "Pos. Esc.", "Cat pos", "Pos cat", "Pos. in category", "Category place", "Cat. place", "AK-Platz", "Platz AK", "Age group position", "Age Group Pos", "AG place", "Class. cat.", "Rang catégorie", "Puesto categoría", "Pos. cat.", "Miejsce w kategorii", "Category position", "Place in age group"},
		SexPlace:     {"Gender pos", "Pos M/F", "Gender place", "M/F pos", "Sex position", "Platz m/w", "Gender position", "Place by sex"},
		TotalRuns:    {"Total runs", "Runs", "No. of runs", "Number of runs", "Total", "Run total", "Anzahl Läufe", "Runs to date", "Total races"},
		Points:       {"Points", "Pts", "Score", "Punkte", "Puntos", "Points total", "League points"},
		AgeGrade:     {"Age grade", "Age grading", "Age grade %", "AG %", "Age %", "Age-graded %", "WAVA %", "Age graded", "Age Graded Time", "WMA %"},
		PersonalBest: {"Tiempo previsto", "Temps estimé", "Prognosezeit", "PB", "Best time", "PB time", "Personal best", "SB", "Previous best", "Season best", "Bestzeit", "Course PB"},
		Other:        {"Check-in time", "Checked in at", "Ort", "Town", "Country", "Team position", "Course record", "Club position", "Email", "Nation"},
	}
	lex := newLexicon(Options{})
	for m, hs := range want {
		for _, h := range hs {
			if g := lex.read(h); !g.known || g.meaning != m {
				t.Errorf("%q is %v (known %v), want %v", h, g.meaning, g.known, m)
			}
		}
	}
	for _, h := range []string{"John Smith", "24:31", "", "12", "Fell Harriers", "(c) 2026", "Alder Bank"} {
		if g := lex.read(h); g.known {
			t.Errorf("%q is taken for a heading: %v", h, g.meaning)
		}
	}
}

func TestHeadingsFromConfiguration(t *testing.T) {
	lex := newLexicon(Options{Headings: map[string]string{"Ränking": "position", "Time": "notes"}})
	for h, m := range map[string]Meaning{"ranking": Position, "TIME": Notes} {
		if g := lex.read(h); g.meaning != m || !g.forced {
			t.Errorf("%q is %v, want %v from the configuration", h, g.meaning, m)
		}
	}
}

// A shortened word is the one that begins so, where all that do say the same.
func TestShortenedHeadings(t *testing.T) {
	lex := newLexicon(Options{})
	for heading, want := range map[string]Meaning{"Sukup.": Sex, "Nachn.": FamilyName, "Vorn.": GivenName, "Geburtsj.": BirthYear, "Helyez.": Position} {
		if g := lex.readShortened(heading); !g.known || g.meaning != want {
			t.Errorf("%s: %v, want %v", heading, g, want)
		}
	}
	for _, heading := range []string{"Na.", "Cl.", "Cha.", "Kxq.", "Sukup", "Pl."} {
		if g := lex.readShortened(heading); g.known {
			t.Errorf("%s: %v, want nothing", heading, g)
		}
	}
}

func FuzzHeading(f *testing.F) {
	for _, h := range []string{"Pos.", "Age grade %", "Pl. m/w", "Né(e) le", "Finish\ntime", "Nazwisko i imię", "((", "Kategoria wiekowa", "Ã…lder", "#"} {
		f.Add(h)
	}
	f.Fuzz(func(t *testing.T, h string) {
		lex := newLexicon(Options{})
		g := lex.read(h)
		if int(g.meaning) >= len(meaningWords) {
			t.Fatalf("%q: meaning %d", h, g.meaning)
		}
		if again := lex.read(h); again != g {
			t.Fatalf("%q is read as %v and then as %v", h, g, again)
		}
		lex.readMisspelt(h)
		lex.readShortened(h)
		kindOf(h)
		isSection(h)
		isTotal(fold(h))
		if f := fold(h); fold(f) != f {
			t.Fatalf("folding %q twice: %q, %q", h, f, fold(f))
		}
	})
}

// Spellings that Unicode Standard Annex #15 (Unicode Normalization Forms,
// figures 3 to 6, from memory) lists as equivalent are one word: singletons,
// composed and decomposed letters, marks in either order, compatibility forms.
func TestFoldAgainstUAX15(t *testing.T) {
	for _, same := range [][]string{
		{"\u212b", "A\u030a", "\u00c5"},                   // Å as a unit, decomposed, composed
		{"\u2126", "\u03a9"},                              // ohm and omega
		{"\u00f4", "o\u0302"},                             // ô
		{"\u1e69", "s\u0323\u0307", "s\u0307\u0323"},      // ṩ with its marks in either order
		{"\u1e0b\u0323", "\u1e0d\u0307", "d\u0307\u0323"}, // ḍ̇ three ways
		{"\ufb01", "fi"},                                  // the ligature
		{"2\u2075", "25"},                                 // a raised five
		{"\uac00", "\u1100\u1161"},                        // Hangul
	} {
		for _, w := range same[1:] {
			if fold(w) != fold(same[0]) {
				t.Errorf("%q and %q are folded to %q and %q", same[0], w, fold(same[0]), fold(w))
			}
			if a, b := Slug("bank "+same[0]+" lane"), Slug("bank "+w+" lane"); a != b {
				t.Errorf("courses %q and %q", a, b)
			}
		}
	}
	if newLexicon(Options{}).read("Ko\u0308n").meaning != Sex || newLexicon(Options{}).read("Kön").meaning != Sex {
		t.Error("a decomposed heading is another one")
	}
}
