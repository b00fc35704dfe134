package record

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/record/name"
)

// nameOrder says whether a column of names has the family name first, because its
// heading says so: "Nazwisko i imię", "Name Vorname", or because most names show it by
// their capitals, "PETIT Anne" beside one "Morel Jean". The names themselves may show
// that it has not: given names repeat more than family names do.
type nameOrder struct {
	familyFirst   bool // the heading says so
	stroke        bool // and has a stroke between the two, as the names may have
	two           bool // and that there are several family names, as in Spain
	on            bool // it is read so
	n             int
	first, last   map[string]bool
	ahead, behind int // names whose family name stands in capitals before, and behind, the given one
}

// Names are enough to show their order from enoughNames on, and by their capitals from
// enoughCapitals on. Common practice, no source.
const (
	enoughNames    = 10
	enoughCapitals = 5
	mostNames      = 2000
)

var (
	familyWords = wordSet(`surname|surnames|last|lastname|family|familyname|nachname|nachnamen|familienname|zuname|apellido|apellidos|cognome|cognomi|achternaam|apelido|apelidos|sobrenome|nazwisko|prijmeni|priezvisko|
		efternavn|etternavn|efternamn|sukunimi|perekonnanimi|uzvards|pavarde|prezime|priimek|vezeteknev|soyad|soyadi|cyfenw|sloinne|cognoms|eftirnafn|abizena|abizenak|mbiemri|mbiemer|kunjom|kenteptim|фамилия|прізвище|фамилно|презиме|επωνυμο|επιθετο`)
	givenWords = wordSet(`first|firstname|given|forename|forenames|christian|vorname|vornamen|nombre|nombres|prenom|prenoms|nome|voornaam|imie|imiona|jmeno|meno|fornavn|fornamn|etunimi|eesnimi|vards|vardas|ime|keresztnev|utonev|
		ad|adi|enw|izena|emri|emer|eiginnafn|имя|ім'я|імя|име|ονομα`)
	bareNames  = wordSet("name|naam|nom|namn|navn|nimi") // a family name before a given one
	pluralName = wordSet("apellidos|surnames|apelidos|cognomi")
	// joinsOn are words besides particles that don't end a family name. What stands
	// first on such a list is one, whatever else the word may be.
	joinsOn = wordSet("do|zu|mac|mc|st.|o|y|e")
)

func newNameOrder(heading string) (o nameOrder) {
	family, given := -1, -1
	words := strings.FieldsFunc(heading, func(r rune) bool { return strings.ContainsRune(" ,;/+&-_.()|\n", r) })
	for i, w := range words {
		switch {
		case family < 0 && familyWords[w]:
			family, o.two = i, pluralName[w]
		case given < 0 && givenWords[w]:
			given = i
		}
	}
	if family < 0 && given > 0 && bareNames[words[0]] && !inLanguages(words) {
		family = 0
	}
	o.familyFirst = family >= 0 && given > family
	o.stroke = family >= 0 && given >= 0 && strings.Contains(heading, "/")
	return o
}

// inLanguages says whether words of a heading say one thing in several languages, "Nimi / Имя / Name":
// several are plain words for a name, or they are of several scripts.
func inLanguages(words []string) bool {
	names, scripts := 0, 0
	for _, w := range words {
		if bareNames[w] {
			names++
		}
		r, _ := utf8.DecodeRuneInString(w)
		switch {
		case unicode.Is(unicode.Latin, r):
			scripts |= 1
		case unicode.Is(unicode.Cyrillic, r):
			scripts |= 2
		case unicode.Is(unicode.Greek, r):
			scripts |= 4
		}
	}
	return names > 1 || scripts&(scripts-1) != 0
}

// plain gives the words of a name that shows nothing of its order itself, nil else:
// no comma, not only some of its words in capitals, nobody else beside it.
func (o *nameOrder) plain(text string) []string {
	if strings.ContainsAny(text, ",;&/+()[]\"0123456789\n") {
		return nil
	}
	words := strings.Fields(text)
	if len(words) < 2 || len(words) > 6 {
		return nil
	}
	for _, w := range words {
		if len(w) > 2 && w == strings.ToUpper(w) && w != strings.ToLower(w) && text != strings.ToUpper(text) {
			return nil
		}
	}
	return words
}

func (o *nameOrder) observe(text string) {
	if o.n >= mostNames || !o.familyFirst && o.n >= enoughNames && o.ahead == 0 {
		return
	}
	words := o.plain(text)
	if words == nil {
		o.observeCapitals(text)
		return
	}
	o.n++
	if o.familyFirst {
		if o.first == nil {
			o.first, o.last = map[string]bool{}, map[string]bool{}
		}
		o.first[strings.Clone(words[0])], o.last[strings.Clone(words[len(words)-1])] = true, true
	}
}

// observeCapitals counts at which end of a name of two words the one in capitals stands.
func (o *nameOrder) observeCapitals(text string) {
	given, family, two := strings.Cut(strings.TrimSpace(text), " ")
	if !two || strings.ContainsAny(text, ",;&/+()[]\"0123456789\n") {
		return
	}
	switch before, after := shouted(given), shouted(family); {
	case before && !after:
		o.ahead++
	case after && !before:
		o.behind++
	}
}

// shouted says whether a word of three letters or more is in capitals.
func shouted(word string) bool {
	return utf8.RuneCountInString(word) > 2 && word == strings.ToUpper(word) && word != strings.ToLower(word)
}

// settle decides whether the heading is believed: unless what stands first comes again so much
// oftener than what stands last that chance, or a few couples and families, don't explain it.
// The two counts are compared as of Poisson, by the normal approximation to the conditional
// test (Przyborowski and Wilenski 1940, Biometrika 31:313-323), at two standard errors.
func (o *nameOrder) settle() {
	if !o.familyFirst {
		o.on = o.ahead >= enoughCapitals && o.behind == 0 && o.ahead >= 2*o.n && o.n > 0
		return
	}
	first, last := o.n-len(o.first), o.n-len(o.last)
	more := first - last
	o.on = !(o.n >= enoughNames && more > 0 && more*more > 4*(first+last))
	o.first, o.last = nil, nil
}

// why says what the order is known by.
func (o *nameOrder) why() string {
	if o.familyFirst {
		return "the heading says so"
	}
	return fmt.Sprintf("%d names show it by their capitals", o.ahead)
}

// withoutStroke writes "Lee/Jo" as "Lee, Jo", or "Jo/Lee" as "Jo Lee", where the heading has such a stroke.
func (o *nameOrder) withoutStroke(text string) string {
	if !o.stroke {
		return text
	}
	a, b, ok := strings.Cut(text, "/")
	if a, b = trim(a), trim(b); !ok || a == "" || b == "" || strings.Contains(b, "/") {
		return text
	}
	if o.familyFirst {
		return a + ", " + b
	}
	return a + " " + b
}

// goesOn says whether a family name goes on after a word of it.
func goesOn(word string) bool { return joinsOn[strings.ToLower(word)] || name.IsParticle(word) }

// split is where the family name of a name ends; 0 where the name is left as it is.
func (o *nameOrder) split(text string) int {
	if !o.on {
		return 0
	}
	words := o.plain(text)
	if words == nil {
		return 0
	}
	k := 1
	for k < len(words)-1 && goesOn(words[k-1]) {
		k++
	}
	if o.two && k < len(words)-1 {
		for k++; k < len(words)-1 && goesOn(words[k-1]); k++ {
		}
	}
	last := words[k-1]
	return strings.Index(text, last) + len(last)
}
