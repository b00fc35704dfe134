package sheet

import (
	"strings"
	"testing"
)

// A table of one runner's runs is that runner's where the lines above it say so, and nobody's otherwise.
func TestRunnersCard(t *testing.T) {
	const courses = "Date,Course,Pos,Time\n04/01/2026,Alder Bank,3,18:20\n18/01/2026,Ember Quay,5,18:31\n01/02/2026,Alder Bank,4,18:25\n15/02/2026,Ember Quay,6,18:41\n"
	const days = "Date,Time\n04/01/2026,18:20\n18/01/2026,18:31\n01/02/2026,18:25\n15/02/2026,18:41\n"
	for _, c := range []struct{ name, text, who, course string }{
		{"a card with the name behind a colon", "Season card 2026: Ann Roe, F52\n\n" + courses, "Ann Roe", "alder-bank"},
		{"a diary, after its owner", "Ann Roe's 5k diary\n" + courses, "Ann Roe", "alder-bank"},
		{"labels of the runner", "Name,Ann Roe\nSex,F\nBorn,1979\nCourse,Alder Bank\n\n" + days, "Ann Roe F 1979", "alder-bank"},
		{"labels with colons, in another language", "Name: Ann Roe\nGeschlecht: w\nStrecke: Alder Bank\n\nDatum;Zeit\n4.1.2026;18:20\n18.1.2026;18:31\n1.2.2026;18:25\n15.2.2026;18:41\n", "Ann Roe w", "alder-bank"},
		{"a bare name over the course", "Ann Roe\nAlder Bank 5k\n" + days, "Ann Roe", "alder-bank"},
		{"a course and nothing else", "Alder Bank\n" + days, "", "alder-bank"},
		{"a club over the course", "Vale Striders\nAlder Bank 5k\n" + days, "", "alder-bank"},
		{"a series over the course", "Summer Series\nAlder Bank 5k\n" + days, "", "alder-bank"},
		{"the course's own diary", "Alder Bank's diary of winners\n" + days, "", ""},
	} {
		s, err := Read("x.csv", []byte(c.text), Options{})
		if err != nil {
			if c.who != "" {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		p := s.Parts[0]
		who := ""
		p.Each(func(_ int, cells []string) error {
			who = strings.Join(strings.Fields(cellAt(cells, p.Index(Name))+" "+cellAt(cells, p.Index(Sex))+" "+cellAt(cells, p.Index(BirthYear))), " ")
			return nil
		}) // a text of a few lines has no error
		if got := p.RunOfFirst(); who != c.who || c.course != "" && got != c.course+" 2026-01-04" || c.who != "" && p.Kind != "excerpt" {
			t.Errorf("%s: %q %s %s, want %q %s", c.name, who, got, p.Kind, c.who, c.course)
		}
	}
}
