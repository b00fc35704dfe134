package record

import (
	"fmt"
	"strings"
	"testing"
)

// What stands behind the comma is the club where the names are full before it.
func TestClubBehindComma(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, k := range []struct{ what, heading, names, name, club string }{
		{"clubs with capitals", "Navn", "Ola Solby, Fjellvik IL|Åsmund Rødnes, Nordli FIK|Eirik Skoglund, Fjellvik IL|Magne Øydal, Nordli FIK", "Ola Solby", "Fjellvik IL"},
		{"some have none", "Navn", "Ola Solby, Fjellvik|Åsmund Rødnes, Nordli|Eirik Skoglund, Fjellvik|Magne Øydal, Nordli|Bård Granli", "Ola Solby", "Fjellvik"},
		{"the heading says so", "Navn, klubb", "Ola Solby, Fjellvik|Åsmund Rødnes, Nordli|Eirik Skoglund, Fjellvik|Magne Øydal, Nordli", "Ola Solby", "Fjellvik"},
		{"two family names", "Nombre", "Carrillo Olmo, Inés|Monllo Riba, Saúl|Quinriz Mora, Inés|Olmo Riba, Saúl", "Carrillo Olmo, Inés", ""},
		{"two family names in capitals", "Nombre", "CARRILLO OLMO, INÉS|MONLLO RIBA, SAÚL|QUINRIZ MORA, INÉS|OLMO RIBA, SAÚL|XOEL", "CARRILLO OLMO, INÉS", ""},
		{"a single club behind a comma", "Name", "Di Fox, Mill AC|Al Roe|Cy Dee|Jo Lee", "Di Fox", "Mill AC"},
		{"a single club behind a dash", "Name", "Di Fox - Fell Harriers|Al Roe|Cy Dee|Jo Lee", "Di Fox", "Fell Harriers"},
		{"a family name of two words and a given name in capitals", "Name", "de Vries, JAN|Al Roe|Cy Dee|Jo Lee", "de Vries, JAN", ""},
		{"a family name that ends like a club, and two given names", "Name", "Van Hall, Jo Ann|Al Roe|Cy Dee|Jo Lee", "Van Hall, Jo Ann", ""},
		{"given names", "Name", "Solby, Ola|Rødnes, Åsmund|Skoglund, Ola|Øydal, Åsmund|Bård Granli", "Solby, Ola", ""},
		{"behind a dash", "Name", "Jo Lee - Vale AC|Al Roe - Mill Joggers|Cy Dee - Vale AC|Di Fox - Fell Harriers", "Jo Lee", "Vale AC"},
		{"behind a stroke", "Name", "Jo Lee / Vale AC|Al Roe / Mill Joggers|Cy Dee / Vale AC|Di Fox / Fell Harriers", "Jo Lee", "Vale AC"},
		{"two on a line", "Name", "Jo Lee / Al Roe|Cy Dee / Di Fox|Ed Gow / Fi Hay|Gus Ing / Hal Job", "Jo Lee / Al Roe", ""},
		{"double surnames", "Name", "Jo Lee - Roe|Cy Dee|Ed Gow|Gus Ing", "Jo Lee - Roe", ""},
		{"a note", "Name", "Jo Lee – first time!|Cy Dee|Ed Gow|Gus Ing", "Jo Lee", ""},
		{"a best", "Name", "Jo Lee new PB!|Cy Dee|Ed Gow|Gus Ing", "Jo Lee", ""},
		{"a family name of small letters", "Naam", "Jo Lee - van Dijk|Cy Dee|Ed Gow|Gus Ing", "Jo Lee - van Dijk", ""},
	} {
		lines, _ := readRows(t, c, []string{"Pos", k.heading, "Time"}, Options{}, func(yield func([]string)) {
			for i, n := range strings.Split(k.names, "|") {
				yield([]string{fmt.Sprint(i + 1), n, fmt.Sprintf("20:%02d", i)})
			}
		})
		if lines[0].Name != k.name || lines[0].Club != k.club {
			t.Errorf("%s: %q of %q", k.what, lines[0].Name, lines[0].Club)
		}
	}
}

// Clubs between names and groups of nearly all runners, those without a number among them.
func TestClubBeforeGroup(t *testing.T) {
	for _, k := range []struct{ names, want string }{
		{"Jo Lee (Vale AC) MSen|Ann Moss (Dunford) FV40|Bob Tarn MV50|Di Rook FSen|Ed Gow (Dunford) FJun|Fay Ho (Vale AC) FSen", "Jo Lee (Vale AC)/Vale AC/M|Ann Moss (Dunford)/Dunford/W|Bob Tarn//M|Di Rook//W|Ed Gow (Dunford)/Dunford/W|Fay Ho (Vale AC)/Vale AC/W"},
		{"Jo Lee - Vale AC - MSen|Ann Moss - Dunford - FV40|Bob Tarn MV50|Di Rook - Dunford - FSen|Ed Gow - Vale AC - MVet", "Jo Lee/Vale AC/M|Ann Moss/Dunford/W|Bob Tarn//M|Di Rook/Dunford/W|Ed Gow/Vale AC/M"},
		{"Jo Lee, Vale AC, MSen|Ann Moss, Dunford, FV40|Bob Tarn MV50|Di Rook, Dunford, FSen|Ed Gow, Vale AC, MVet|Fay Ho, Vale AC, FV50", "Jo Lee (MSen)/Vale AC/M|Ann Moss (FV40)/Dunford/W|Bob Tarn//M|Di Rook (FSen)/Dunford/W|Ed Gow (MVet)/Vale AC/M|Fay Ho (FV50)/Vale AC/W"},
		{"Amar Sen|Ann FSen|Bob Tarn|Di Rook|Ed Gow", "Amar Sen//|Ann FSen//|Bob Tarn//|Di Rook//|Ed Gow//"}, // one of five
	} {
		c := NoColumns()
		c.Name, c.Time = 0, 1
		lines, _ := readRows(t, c, []string{"Name", "Time"}, Options{}, func(yield func([]string)) {
			for i, s := range strings.Split(k.names, "|") {
				yield([]string{s, fmt.Sprintf("24:%02d", i)})
			}
		})
		var got []string
		for _, l := range lines {
			got = append(got, fmt.Sprintf("%s/%s/%s", l.Name, l.Club, l.Sex))
		}
		if s := strings.Join(got, "|"); s != k.want {
			t.Errorf("%s:\n%s, want\n%s", k.names, s, k.want)
		}
	}
}

// Clubs on a second line below full names are known by their words where each is another, and a given name
// below family names is none.
func TestClubsOnSecondLines(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time = 0, 1
	for _, k := range []struct {
		cells      []string
		name, club string
	}{
		{[]string{"Jo Lee\nVale Harriers", "Al Roe\nFen Runners", "Cy Dee\nMill AC", "Di Fox\nBryn Striders"}, "Jo Lee", "Vale Harriers"},
		{[]string{"Lee Gil\nJo", "Roe Paz\nAna", "Dee Rey\nEva", "Fox Mas\nLuz"}, "Lee Gil\nJo", ""},
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i, s := range k.cells {
				yield([]string{s, "18:2" + string(rune('0'+i))})
			}
		})
		if l := lines[0]; l.Name != k.name || l.Club != k.club {
			t.Errorf("%q: name %q, club %q", k.cells, l.Name, l.Club)
		}
	}
}
