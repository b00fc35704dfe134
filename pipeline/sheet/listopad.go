package sheet

import (
	"strings"

	"lapwing/pipeline/text"
)

// listopad is the month that a date with the word listopad means by the language of the
// other words of the sheet, November in Polish and October in Croatian, and why; 0 where
// there is no such date, or the words don't tell.
func (rs *runSettler) listopad(p *Part, e evidence) (month int, why string) {
	if len(e.readings) < 2 || !anyListopad(e.text) {
		return 0, ""
	}
	polish, croatian := 0, 0
	for _, t := range append(append(p.Headings(), p.Titles...), p.Tab, baseStem(rs.sheet.Name)) {
		for _, w := range strings.Fields(fold(strings.ReplaceAll(t, "_", " "))) {
			switch {
			case polishWords[w]:
				polish++
			case croatianWords[w]:
				croatian++
			}
		}
	}
	switch {
	case polish > 0 && croatian == 0:
		return 11, "the other words are Polish"
	case croatian > 0 && polish == 0:
		return 10, "the other words are Croatian"
	}
	return 0, ""
}

func anyListopad(s string) bool {
	for _, t := range tokenize(s) {
		if t.kind == 'l' && text.Listopad(t.word) {
			return true
		}
	}
	return false
}

// Words of result sheets that only one of the two languages has (common practice, no
// source).
var (
	polishWords = set(`miejsce imie nazwisko czas wyniki wynik bieg biegu plec wiek rocznik zawodnik zawodniczka kategoria niedziela poniedzialek wtorek
		sroda czwartek piatek sobota kobiety mezczyzni lp pozycja dystans meta`)
	croatianWords = set(`mjesto plasman ime prezime vrijeme rezultati rezultat utrka utrke trcanje spol dob godiste broj kategorija nedjelja ponedjeljak utorak
		srijeda cetvrtak petak subota zene muskarci natjecatelj natjecateljica cilj dionica poredak`)
)
