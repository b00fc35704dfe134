package sheet

import (
	"strings"
	"testing"
)

// Classes by letters are read as what a line beside the table says, where it says it of
// all of them.
func TestLegend(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"below, with signs", "Pos,Name,Class,Time\n1,Jo Lee,A,18:20\n2,Al Roe,C,18:31\n3,Cy Dee,B,19:10\n\n\"A = under 20, B = 20-34, C = 35 and over\"\n", "under 20; 35 and over; 20-34"},
		{"a line each", "Pos,Name,Cat,Time\n1,Jo Lee,A,18:20\n2,Al Roe,B,18:31\n\nA: Men 18-39\nB: Women 18-39\n", "Men 18-39; Women 18-39"},
		{"above, behind a label", "Kategorie: A muži do 39 let; B muži 40-49 let; C muži nad 50 let\nPoř.;Jméno;Kat.;Čas\n1;Jan Novák;A;18:20\n2;Petr Malý;B;18:31\n3;Ivan Velký;A;18:40\n", "muži do 39 let; muži 40-49 let; muži do 39 let"},
		{"below, in many cells", "Poř.;Příjmení, jméno;Kat.;Čas\n1;Novák, Jan;A;18:20\n2;Malá, Jana;E;18:31\n3;Velký, Ivan;C;18:40\nKategorie: A muži do 39 let; B muži 40-49 let; C muži nad 50 let; D ženy do 34 let; E ženy nad 35 let\n", "muži do 39 let; ženy nad 35 let; muži nad 50 let"},
		{"a class that is not explained", "Pos,Name,Class,Time\n1,Jo Lee,A,18:20\n2,Al Roe,C,18:31\n3,Cy Dee,B,19:10\n\n\"A = under 20, B = 20-34\"\n", "A; C; B"},
		{"no legend but remarks", "Pos,Name,Class,Time\n1,Jo Lee,A,18:20\n2,Al Roe,B,18:31\n\n\"A good day out, B team next week\"\n", "A; B"},
		{"classes of more words", "Pos,Name,Cat,Time\n1,Jo Lee,Vet. A,18:20\n2,Al Roe,Sénior,18:31\n\nSénior: de 15 a 29 años\nVet. A: de 30 a 39 años\nVet. B: 40 años en adelante\n", "de 30 a 39 años; de 15 a 29 años"},
		{"numbered classes", "Platz;Name;AK;Zeit\n1;Jo Lee;Klasse 2;18:20\n2;Al Roe;Klasse 1;18:31\n\nKlasse 1: 15 bis 29 Jahre\nKlasse 2: ab 30 Jahre\n", "ab 30 Jahre; 15 bis 29 Jahre"},
		{"behind a short word, in Roman figures", "Kat. I: 16-39 lat;;;\nKat. II: powyżej 39 lat;;;\nM-ce;Nazwisko;Kat.;Czas\n1;Lee Jo;II;18:20\n2;Roe Al;I;18:31\n3;Dee Cy;I;18:41\n", "powyżej 39 lat; 16-39 lat; 16-39 lat"},
		{"the letter says the sex", "Por;Meno;Kat;Čas\n1;Jo Lee;ŽA;18:20\n2;Al Roe;MB;18:31\n3;Cy Dee;MA;18:41\n4;Di Fox;ŽB;18:51\n\nMA: 15-29 rokov\nŽA: 15-29 rokov\nMB: 30 a viac rokov\nŽB: 30 a viac rokov\n", "Ž 15-29 rokov; M 30 a viac rokov; M 15-29 rokov; Ž 30 a viac rokov"},
		{"the letter says the sex, and nobody is in the other class", "Poř;Jméno;Kat;Čas\n1;Jo Lee;M1;18:20\n2;Al Roe;Ž2;18:31\n3;Cy Dee;M1;18:41\n\nM1: 15-29 let\nŽ1: 15-29 let\nM2: 30-39 let\nŽ2: 30-39 let\n", "M 15-29 let; Ž 30-39 let; M 15-29 let"},
		{"the letter says the sex, of other ages for women", "Poř;Jméno;Kat;Čas\n1;Jo Lee;ŽA;18:20\n2;Al Roe;MB;18:31\n3;Cy Dee;MC;18:41\n4;Di Fox;ŽB;18:51\n\nMA do 39 let, MB 40-49, MC 50+; ŽA do 34, ŽB 35+\n", "Ž do 34; M 40-49; M 50+; Ž 35+"},
		{"letters of classes far apart are no sexes", "Pos;Name;Kat;Zeit\n1;Jo Lee;KA;18:20\n2;Al Roe;MA;18:31\n3;Cy Dee;KA;18:41\n\nKA: 12-14 Jahre\nMA: 40-49 Jahre\n", "12-14 Jahre; 40-49 Jahre; 12-14 Jahre"},
		{"two classes with a stroke between them", "Pos,Name,Class,Time\n1,Jo Lee,MA,18:20\n2,Ann Page,LA,18:31\n3,Cy Dee,MB,18:41\n4,Di Fox,LB,18:51\n\n\"MA/LA: 18-39, MB/LB: 40 and over\"\n", "M 18-39; L 18-39; M 40 and over; L 40 and over"},
		{"a table of two columns", "Pos,Name,Class,Time\n1,Jo Lee,A,18:20\n2,Al Roe,B,18:31\n3,Cy Dee,A,18:41\n\nClass,Ages\nA,18-39\nB,40-59\n", "18-39; 40-59; 18-39"},
		{"in the heading", "Pos,Name,\"Class (A 18-39, B 40+)\",Time\n1,Jo Lee,A,18:20\n2,Al Roe,B,18:31\n3,Cy Dee,A,18:41\n", "18-39; 40+; 18-39"},
		{"figures that look like places", "Pos,Name,Group,Time\n1,Jo Lee,1,18:20\n2,Al Roe,2,18:31\n3,Cy Dee,1,18:41\n4,Di Fox,0,18:51\n\n\"Group 0: under 20, Group 1: 20-39, Group 2: 40 plus\"\n", "20-39; 40 plus; 20-39; under 20"},
		{"colours of numbers, in sentences", "Pos,Name,Bib,Time\n1,Jo Lee,Blue,18:20\n2,Al Roe,Red,18:31\n3,Cy Dee,Blue,18:41\n\nBlue numbers: 18-39. Red numbers: 40 and over.\n", "18-39; 40 and over; 18-39"},
		{"classes of both sexes, a line each above the table", "A: men under 40\nB: men 40 and over\nC: women under 40\nD: women 40 and over\nPos,Name,Cat,Time\n1,Jo Lee,B,18:20\n2,Ann Page,C,18:31\n3,Cy Dee,A,18:41\n", "men 40 and over; women under 40; men under 40"},
		{"one class without an end", "Pos,Name,Cat,Time\n1,Jo Lee,V,18:20\n2,Al Roe,,18:31\n3,Cy Dee,V,18:41\n\nV: vet (40+)\n", "vet (40+; ; vet (40+"},
		{"one class that may have an end", "Pos,Name,Cat,Time\n1,Jo Lee,V,18:20\n2,Al Roe,,18:31\n3,Cy Dee,V,18:41\n\nV = vet 40\n", "V; ; V"},
		{"groups that say it themselves", "Pos,Name,Group,Time\n1,Jo Lee,W40,18:20\n2,Al Roe,M45,18:31\n\n\"W40 = women 40-44, M45 = men 45-49\"\n", "W40; M45"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, p := range s.Parts {
				at := p.Index(AgeGroup)
				if at < 0 {
					at = 2
				}
				p.Each(func(_ int, cells []string) error {
					got = append(got, cells[at])
					return nil
				})
			}
			if text := strings.Join(got, "; "); text != c.want {
				t.Errorf("%q, want %q", text, c.want)
			}
		})
	}
}

// A letter, a sign or nothing stands for a sex where a line beside the table says so.
func TestLegendOfSexes(t *testing.T) {
	for text, want := range map[string]string{
		"Pos,Name,W,Time\n1,Jo Lee,,18:20\n2,Al Roe,w,18:31\n3,Cy Dee,w,18:41\n\n\"w = women, blank = men\"\n":                         "men; women; women",
		"Pos,Name,L,Time\n1,Jo Lee,,18:20\n2,Ann Page,*,18:31\n3,Cy Dee,,18:41\n\n* = lady\n":                                          "; lady; ",
		"Pos,Name,Class,Time\n1,Jo Lee,A,18:20\n2,Ann Page,B,18:31\n3,Cy Dee,A,18:41\n\n\"Class A = men, class B = women\"\n":          "men; women; men",
		"Pos,Name,Sex,Time\n1,Jo Lee,2,18:20\n2,Ann Page,1,18:31\n3,Cy Dee,2,18:41\n\nKey: 1: F; 2: M\n":                               "M; F; M",
		"Pos,Name,\"Sex (0 male, 1 female)\",Time\n1,Jo Lee,0,18:20\n2,Ann Page,1,18:31\n3,Cy Dee,0,18:41\n":                           "male; female; male",
		"A: men under 40\nB: women under 40\nPos,Name,Sex,Time\n1,Jo Lee,M,18:20\n2,Ann Page,F,18:31\n3,Cy Dee,M,18:41\n":              "M; F; M",
		"Pos,Name,Bib,Time\n1,Jo Lee,pink,18:20\n2,Ann Page,blue,18:31\n3,Cy Dee,pink,18:41\n\n\"Pink bib = men, blue bib = women\"\n": "men; women; men",
		"Pos,Name,Code,Time\n1,Jo Lee,0,18:20\n2,Ann Page,1,18:31\n3,Cy Dee,0,18:41\n\n0 = male 1 = female\n":                          "male; female; male",
		"Pos,Name,Sex,Time\n1,Jo Lee,2,18:20\n2,Ann Page,1,18:31\n3,Cy Dee,2,18:41\n\n1=F 2=M\n":                                       "M; F; M",
		"Pos,Name,Sex,Time\n1,Jo Lee,2,18:20\n2,Ann Page,1,18:31\n3,Cy Dee,2,18:41\n\n\"1: F; 2: M\"\n":                                "M; F; M",
		"Pos,Name,Wave,Time\n1,Jo Lee,Green,18:20\n2,Ann Page,Red,18:31\n3,Cy Dee,Green,18:41\n\nGreen wave: men. Red wave: women.\n":  "men; women; men",
		"Pos,Name,Col.,Time\n1,Jo Lee,Y,18:20\n2,Ann Page,R,18:31\n3,Cy Dee,Y,18:41\n\n\"Y (yellow) = men, R (red) = women\"\n":        "men; women; men",
		"Pos,Name,Type,Time\n1,Jo Lee,B,18:20\n2,Ann Page,G,18:31\n3,Cy Dee,B,18:41\n\n\"G = girls and women, B = boys and men\"\n":    "boys and men; girls and women; boys and men",
		"\"S - men, T - women\"\nPos,Name,Group,Time\n1,Jo Lee,S,18:20\n2,Ann Page,T,18:31\n3,Cy Dee,S,18:41\n":                        "men; women; men",
		"Platz;Name;G;Zeit\n1;Jo Lee;a;18:20\n2;Al Roe;b;18:31\n\nG: a = männlich, b = weiblich\n":                                     "männlich; weiblich",
		"Pos.;Nome;S;Tempo\n1;Jo Lee;U;18:20\n2;Al Roe;D;18:31\nU = uomini, D = donne;;;\n":                                            "uomini; donne",
		"Results (L = lady),,,\nPos,Name,,Time\n1,Jo Lee,L,18:20\n2,Al Roe,,18:31\n3,Cy Dee,L,18:41\n":                                 "women; ; women",
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range s.Parts {
			p.Each(func(_ int, cells []string) error {
				got = append(got, cellAt(cells, p.Index(Sex)))
				return nil
			})
		}
		if said := strings.Join(got, "; "); said != want {
			t.Errorf("%q: %q, want %q", text, said, want)
		}
	}
}

// Signs, letters and figures that stand for the sexes, in the ways in which people write a key.
func TestKeysOfSexes(t *testing.T) {
	for key, marks := range map[string]string{
		"* men  # women":                    "*#",
		"(1 = men, 2 = women)":              "12",
		"a - men / b - ladies":              "ab",
		"X: gents  Y: ladies":               "XY",
		"O = open (men), L = ladies":        "OL",
		"B = blue (men), P = pink (women)":  "BP",
		"X: first visit  Y: second visit":   "",
		"* new here  # members":             "",
		"a - men's watch / b - ladies' hat": "",
	} {
		text, m := "Pos\tName\tTime\tCode\n", marks
		if m == "" {
			m = strings.ToLower(key[:1]) + "q"
		}
		for i, n := range []string{"Jo Lee", "Ann Page", "Cy Dee", "Di Fox"} {
			text += string(rune('1'+i)) + "\t" + n + "\t18:2" + string(rune('0'+i)) + "\t" + m[i%2:i%2+1] + "\n"
		}
		s, err := Read("alder-bank_2026-01-03.csv", []byte(text+"\n"+key+"\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if at := s.Parts[0].Index(Sex); (at >= 0) != (marks != "") {
			t.Errorf("%s: the sex is column %d", key, at)
		}
	}
}
