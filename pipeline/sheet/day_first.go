package sheet

import (
	"strings"
	"unicode"
)

// dayFirstWords are heading words of languages that write the day before the month,
// in the folded form; words that English has too are left out. Of the languages of
// the Unicode CLDR (48.2, short date formats), none of Europe but English begins a
// date in figures with the month; Spanish does in Panama and Puerto Rico.
var dayFirstWords = func() map[string]bool {
	words := set(`platz rang zeit laufzeit zielzeit verein jahrgang geschlecht altersklasse nachname vorname startnummer geburtsjahr
		temps prenom categorie classement dossard sexe naissance arrivee
		tiempo nombre apellido apellidos categoria puesto posicion dorsal sexo edad fecha clasificacion
		cognome classifica squadra societa pettorale sesso atleta nascita
		apelido escalao equipa equipe idade classificacao nascimento
		tijd naam voornaam achternaam vereniging leeftijd geslacht geboortejaar eindtijd
		navn namn plads plass plats placering plassering tid sluttid klubb forening kjonn kon fodselsar fodt fodelsear
		czas nazwisko imie miejsce plec kategoria wiek rocznik
		cas jmeno prijmeni poradi oddil pohlavi
		aika nimi sija seura sukupuoli genero ano neto pto
		lober plac nettotid bruttotid
		concorrente nominativo posizione piazz piazzamento anno distacco passo tempo nome
		coureur chrono ecart allure vitesse ville corredor ritmo diferencia localidad
		teilnehmer laufer ruckstand wohnort netto brutto nettozeit bruttozeit
		loper deelnemer woonplaats snelheid achterstand zawodnik klub wynik strata lopare deltagare klass clube`)
	for _, list := range languageWords {
		for _, w := range strings.Fields(list) {
			if !englishHeading[w] && len([]rune(w)) > 2 {
				words[w] = true
			}
		}
	}
	return words
}()

// dayFirstSexes are words for the sexes in such languages.
var dayFirstSexes = set("masculin feminin homme femme hommes femmes hombre mujer hombres mujeres masculino femenino feminino maschio femmina uomo donna uomini donne mann frau herr mannlich weiblich manner frauen vrouw vrouwen mannen kvinna kvinde kvinne mies nainen muz zena homem mulher homens mulheres mezczyzna kobieta ferfi naine mees")

// englishHeading are short words of other languages that stand in English headings
// too.
var englishHeading = set("age club date name no number place run sex time total group team status note pace start finish points naam distance")

// dayFirstLanguage gives the first two headings of a part, or one and a word for a sex, that show
// that it is in a language in which dates begin with the day; ok is false where fewer do.
func dayFirstLanguage(p *Part) (examples string, ok bool) {
	var found []string
	look := func(heading string) {
		if strings.ContainsFunc(heading, func(r rune) bool { return r > unicode.MaxASCII && (unicode.IsLower(r) || unicode.IsUpper(r)) }) {
			found = append(found, heading) // Løber, Kön, Tempo médio
			return
		}
		for _, w := range strings.Fields(fold(heading)) {
			if dayFirstWords[w] {
				found = append(found, heading)
				return
			}
		}
	}
	for _, c := range p.Columns {
		look(c.Heading)
	}
	for _, t := range p.Titles { // "Fecha: 07/02/2026"
		if label, _, ok := strings.Cut(t, ":"); ok && len(label) <= 20 {
			look(label)
		}
	}
	if at := p.Index(Sex); len(found) == 1 && at >= 0 {
		for _, cells := range p.sampled() {
			if said := trim(cellAt(cells, at)); dayFirstSexes[fold(said)] {
				found = append(found, said)
				break
			}
		}
	}
	if len(found) < 2 {
		return "", false
	}
	return found[0] + ", " + found[1], true
}
