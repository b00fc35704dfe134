package record

import (
	"fmt"
	"testing"

	"lapwing/pipeline/record/name"
)

// A heading that names the family name first is followed, unless the names show that
// they stand the other way round.
func TestNameOrder(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, k := range []struct{ heading, name, given, family string }{
		{"Nazwisko i imię", "Kowalska Anna", "anna", "kowalska"},
		{"Name Vorname", "Huber Lena Maria", "lena maria", "huber"},
		{"Nachname, Vorname", "von der Heide Jan", "jan", "von der heide"},
		{"Apellidos y nombre", "García López Ana María", "ana maria", "garcia lopez"},
		{"Apellidos y nombre", "García Ana", "ana", "garcia"},
		{"Nom Prénom", "Le Gall Yann", "yann", "le gall"},
		{"Cognome e nome", "Rossi Ada", "ada", "rossi"},
		{"Фамилия, имя", "Орлова Анна", "анна", "орлова"},
		{"Surname / First name", "Lee Jo", "jo", "lee"},
		{"Surname/First name", "Lee/Jo", "jo", "lee"},
		{"Given name/Surname", "Jo/Lee", "jo", "lee"},
		{"Nazwisko i imię", "KOWALSKA Anna", "anna", "kowalska"},
		{"Nazwisko i imię", "KOWALSKA ANNA", "anna", "kowalska"},
		{"Nazwisko i imię", "Kowalska, Anna", "anna", "kowalska"},
		{"Imię i nazwisko", "Anna Kowalska", "anna", "kowalska"},
		{"Prénom Nom", "Anne Petit", "anne", "petit"},
		{"Name", "Jo Lee", "jo", "lee"},
		{"Nimi / Имя / Name", "Kadri Sepp", "kadri", "sepp"},
		{"Nimi / Имя", "Kadri Sepp", "kadri", "sepp"},
	} {
		lines, _ := readRows(t, c, []string{"Pos", k.heading, "Time"}, Options{}, func(yield func([]string)) {
			yield([]string{"1", k.name, "20:02"})
		})
		if n := name.Parse(lines[0].Name); n.Given != k.given || n.Family != k.family {
			t.Errorf("%s: %q is read as %q, given %q, family %q", k.heading, k.name, lines[0].Name, n.Given, n.Family)
		}
	}
	lines, _ := readRows(t, c, []string{"Pos", "Nachname, Vorname", "Time"}, Options{}, func(yield func([]string)) {
		for i := range 12 {
			yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("%s Alder%c", []string{"Ada", "Ben", "Cora"}[i%3], 'a'+i), fmt.Sprintf("20:%02d", i)})
		}
	})
	if n := name.Parse(lines[0].Name); n.Given != "ada" {
		t.Errorf("given names that repeat at the front: %q", lines[0].Name)
	}
	couples := []string{"Rossi Ada", "Rossi Ugo", "Villa Ines", "Villa Pio", "Neri Ilda", "Neri Tea"}
	lines, _ = readRows(t, c, []string{"Pos", "Cognome e nome", "Time"}, Options{}, func(yield func([]string)) {
		for i := range 20 {
			full := fmt.Sprintf("Monti%c Gino%c", 'a'+i, 'a'+i)
			if i < len(couples) {
				full = couples[i]
			}
			yield([]string{fmt.Sprint(i + 1), full, fmt.Sprintf("20:%02d", i)})
		}
	})
	if n := name.Parse(lines[0].Name); n.Given != "ada" {
		t.Errorf("three couples among twenty: %q", lines[0].Name)
	}
	for _, k := range []struct {
		what, capitals, plain, given string
	}{
		{"most have the family name first, in capitals", "ALDER%c Gino", "Morel Jean", "jean"},
		{"most have it last, in capitals", "Gino ALDER%c", "Jean Morel", "jean"},
		{"with a comma: who is without one may stand the other way", "ALDER%c, Gino", "Jean Morel", "jean"},
	} {
		lines, _ = readRows(t, c, []string{"Pos", "Nom", "Time"}, Options{}, func(yield func([]string)) {
			for i := range 8 {
				full := fmt.Sprintf(k.capitals, 'A'+i)
				if i == 3 {
					full = k.plain
				}
				yield([]string{fmt.Sprint(i + 1), full, fmt.Sprintf("20:%02d", i)})
			}
		})
		if n := name.Parse(lines[3].Name); n.Given != k.given {
			t.Errorf("%s: %q is read as %q, given %q", k.what, k.plain, lines[3].Name, n.Given)
		}
	}
	lines, _ = readRows(t, c, []string{"Pos", "Surname, first name", "Time"}, Options{}, func(yield func([]string)) {
		yield([]string{"1", "Unknown runner", "20:02"})
	})
	if lines[0].Status != Unnamed {
		t.Errorf("an unknown runner is %v, %q", lines[0].Status, lines[0].Name)
	}
}
