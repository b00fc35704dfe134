package sheet

import "testing"

// Dates in figures begin with the day in the languages of Europe but English
// (Unicode CLDR 48.2, short date formats); a date that shows another order, or a
// weekday, says more than the language.
func TestDayFirstLanguage(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"English", "Alder Bank 03/04/2026\nPos,Name,Time,Club\n1,Ana Sol,20:01,Harriers\n2,Ben Orr,21:02,\n", ""},
		{"German", "Erlenufer 03/04/2026\nPlatz,Name,Zeit,Verein\n1,Ana Sol,20:01,Harriers\n2,Ben Orr,21:02,\n", "2026-04-03"},
		{"French", "Aulnaie 03/04/2026\nPlace,Nom,Temps,Club\n1,Ana Sol,20:01,Harriers\n2,Ben Orr,21:02,\n", ""},
		{"French, two words", "Aulnaie 03/04/2026\nClassement,Nom,Temps,Sexe\n1,Ana Sol,20:01,F\n2,Ben Orr,21:02,H\n", "2026-04-03"},
		{"Polish", "Olszyna 03/04/2026\nMiejsce,Nazwisko,Czas\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n", "2026-04-03"},
		{"Italian", "Pineta 03/04/2026\nPiazz.,Concorrente,S.,Anno,Tempo\n1,Ana Sol,F,1983,20:01\n2,Ben Orr,M,1975,21:02\n", "2026-04-03"},
		{"letters that English has not", "Elletoft 03/04/2026\nNr.,Løber,Kön,Resultat\n1,Ana Sol,K,20:01\n2,Ben Orr,M,21:02\n", "2026-04-03"},
		{"a weekday says otherwise", "Erlenufer Wednesday 03/04/2026\nPlatz,Name,Zeit,Verein\n1,Ana Sol,20:01,Harriers\n2,Ben Orr,21:02,\n", "2026-03-04"},
		{"one word alone", "Alder Bank 03/04/2026\nPos,Name,Zeit\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n", ""},
	} {
		s, err := Read("run.csv", []byte(c.text), Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatalf("%s: %v", c.name, err)
		}
		got := ""
		if d := s.Parts[0].Date; d.Settled {
			got = d.Day.String()
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q (%s)", c.name, got, c.want, s.Parts[0].Date.Why)
		}
	}
}
