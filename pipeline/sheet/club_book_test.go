package sheet

import (
	"slices"
	"testing"

	"lapwing/pipeline/place"
)

// clubBooks are working workbooks of clubs, in which the results stand among what they were made
// from and what is made of them.
var clubBooks = []bookCase{
	{"the steps in which a result was made, beside it", "Alder Bank desk 3 January 2026", `== Times
Pos|Time
1|18:20
2|18:31
3|19:02
== Numbers
Pos|No
1|21
2|999
3|22
== Results
Alder Bank, 3 January 2026
Pos|Name|Sex|Time
1|Jo Lee|F|18:20
2||#N/A|18:31
3|Al Roe|M|19:02
== Register
No|First name|Surname|DOB
21|Jo|Lee|1980-02-01
22|Al|Roe|1971-04-03
23|Cy|Dee|1990-04-03
`, `Results!3 alder-bank 2026-01-03 Jo Lee 18:20 F
Results!4 alder-bank 2026-01-03 18:31 #N/A
Results!5 alder-bank 2026-01-03 Al Roe 19:02 M
`},
	{"times that stand on no other tab", "Alder Bank", `== Results
Alder Bank, 3 January 2026
Pos|Name|Time
1|Jo Lee|18:20
2|Al Roe|18:31
3|Cy Dee|19:02
== Times
Alder Bank, 10 January 2026
Pos|Time
1|18:25
2|18:31
3|19:12
`, `Results!3 alder-bank 2026-01-03 Jo Lee 18:20
Results!4 alder-bank 2026-01-03 Al Roe 18:31
Results!5 alder-bank 2026-01-03 Cy Dee 19:02
Times!3 alder-bank 2026-01-10 18:25
Times!4 alder-bank 2026-01-10 18:31
Times!5 alder-bank 2026-01-10 19:12
`},
	{"a tab of corrections", "Colle Rovo", `== 10 gennaio 2026
Colle Rovo
Pos.|Nome|Tempo
1|Jo Lee|18:20
2|Al Roe|18:31
3|Cy Dee|19:02
== Correzioni
Data|Pos.|Nome|Tempo sbagliato|Tempo giusto
2026-01-10|2|Al Roe|19:31|18:31
2026-01-10|3|Cy Dee|20:02|19:02
`, `10 gennaio 2026!3 colle-rovo 2026-01-10 Jo Lee 18:20
10 gennaio 2026!4 colle-rovo 2026-01-10 Al Roe 18:31
10 gennaio 2026!5 colle-rovo 2026-01-10 Cy Dee 19:02
`},
	{"the first man and woman of each day on a tab of their own", "Rocca Bassa", `== Riepilogo
Data|Arrivati|Primo uomo|Tempo|Prima donna|Tempo
2026-01-03|3|Al Roe|18:20|Jo Lee|18:31
2026-01-10|3|Al Roe|18:25|Di Fox|19:02
== 3 gennaio 2026
Pos|Nome|Tempo
1|Roe Al|18:20
2|Lee Jo|18:31
3|Fox Di|19:10
== 10 gennaio 2026
Pos|Nome|Tempo
1|Roe Al|18:25
2|Fox Di|19:02
3|Lee Jo|19:04
`, `3 gennaio 2026!2 rocca-bassa 2026-01-03 Roe Al 18:20
3 gennaio 2026!3 rocca-bassa 2026-01-03 Lee Jo 18:31
3 gennaio 2026!4 rocca-bassa 2026-01-03 Fox Di 19:10
10 gennaio 2026!2 rocca-bassa 2026-01-10 Roe Al 18:25
10 gennaio 2026!3 rocca-bassa 2026-01-10 Fox Di 19:02
10 gennaio 2026!4 rocca-bassa 2026-01-10 Lee Jo 19:04
`},
	{"places with times, places with numbers, numbers with names", "Deichtor 2026-01-03", `== Zeiten
Platz|Zeit
1|18:20
2|18:31
3|19:02
== Einlauf
Platz|Startnr
1|31
2|12
3|25
== Meldeliste
Startnr|Vorname|Nachname|m/w|Telefon
12|Al|Roe|m|01234 567
25|Cy|Dee|m|01234 568
31|Jo|Lee|w|01234 569
`, `Zeiten!2 deichtor 2026-01-03 18:20
Zeiten!3 deichtor 2026-01-03 18:31
Zeiten!4 deichtor 2026-01-03 19:02
Einlauf!2 deichtor 2026-01-03 w
Einlauf!3 deichtor 2026-01-03 m
Einlauf!4 deichtor 2026-01-03 m
`},
	{"a tab for each runner, with the place on each day", "Alder Bank times", `== Jo Lee
Jo Lee|born|1980-02-01
Date|Course|Place|Time
2026-01-03|Alder Bank|2|18:31
2026-01-10|Alder Bank|1|18:20
== Al Roe
Al Roe|born|1971-02-01
Date|Course|Place|Time
2026-01-03|Alder Bank|1|18:25
2026-01-10|Alder Bank|3|18:40
== Cy Dee
Cy Dee|born|1990-02-01
Date|Course|Place|Time
2026-01-10|Alder Bank|2|18:30
`, `Jo Lee!3 alder-bank 2026-01-03 Jo Lee 18:31
Jo Lee!4 alder-bank 2026-01-10 Jo Lee 18:20
Al Roe!3 alder-bank 2026-01-03 Al Roe 18:25
Al Roe!4 alder-bank 2026-01-10 Al Roe 18:40
Cy Dee!3 alder-bank 2026-01-10 Cy Dee 18:30
`},
	{"lines of several cells over each run", "x", `== Blad1
Alder Bank|Round|1|on|2026-01-03
Pos|Name|Time|Points
1|Jo Lee|18:20|30
2|Al Roe|18:31|29
Mean|||

Alder Bank|Round|2|on|2026-01-10
Pos|Name|Time|Points
1|Al Roe|18:25|30
2|Jo Lee|18:40|29
`, `Blad1!3 alder-bank 2026-01-03 Jo Lee 18:20
Blad1!4 alder-bank 2026-01-03 Al Roe 18:31
Blad1!9 alder-bank 2026-01-10 Al Roe 18:25
Blad1!10 alder-bank 2026-01-10 Jo Lee 18:40
`},
	{"a line over each day counts its runners", "Alder Bank", `== Series
Alder Bank
Datum|Platz|Name|Zeit
2026-01-03|2|Teilnehmer
|1|Jo Lee|18:20
|2|Al Roe|18:31
2026-01-10|2|Teilnehmer
|1|Al Roe|18:25
|2|Jo Lee|18:40
`, `Series!4 alder-bank 2026-01-03 Jo Lee 18:20
Series!5 alder-bank 2026-01-03 Al Roe 18:31
Series!7 alder-bank 2026-01-10 Al Roe 18:25
Series!8 alder-bank 2026-01-10 Jo Lee 18:40
`},
	{"dashes for those who were away, and the best times at the foot", "Alder Bank", `== Season
Alder Bank
Name|3 Jan 2026|10 Jan 2026|17 Jan 2026
Jo Lee|18:31|-|18:20
Al Roe|18:25|18:40|-
Cy Dee|19:02|19:10|0:00
Di Fox|-|18:30|19:00

Snelste van de dag|18:25|18:30|18:20
`, `Season!3 alder-bank 2026-01-03 Jo Lee 18:31
Season!4 alder-bank 2026-01-03 Al Roe 18:25
Season!5 alder-bank 2026-01-03 Cy Dee 19:02
Season!4 alder-bank 2026-01-10 Al Roe 18:40
Season!5 alder-bank 2026-01-10 Cy Dee 19:10
Season!6 alder-bank 2026-01-10 Di Fox 18:30
Season!3 alder-bank 2026-01-17 Jo Lee 18:20
Season!6 alder-bank 2026-01-17 Di Fox 19:00
`},
	{"somebody who was first once stands at the foot", "Alder Bank", `== Season
Alder Bank
Name|3 Jan 2026|10 Jan 2026
Jo Lee|18:31|18:44
Al Roe|18:25|18:40
Cy Dee|19:02|19:10
Di Fox|18:20|19:00
`, `Season!3 alder-bank 2026-01-03 Jo Lee 18:31
Season!4 alder-bank 2026-01-03 Al Roe 18:25
Season!5 alder-bank 2026-01-03 Cy Dee 19:02
Season!6 alder-bank 2026-01-03 Di Fox 18:20
Season!3 alder-bank 2026-01-10 Jo Lee 18:44
Season!4 alder-bank 2026-01-10 Al Roe 18:40
Season!5 alder-bank 2026-01-10 Cy Dee 19:10
Season!6 alder-bank 2026-01-10 Di Fox 19:00
`},
	{"a table of points beside the results goes on below them", "Liga Alder Bank", `== Jornada 1
Alder Bank, 3 January 2026
Class.|Name|Time|Points|||Place|Points
1|Jo Lee|18:20|25|||1|25
2|Al Roe|18:31|20|||2|20
3|Cy Dee|19:02|16|||3|16
||||||4|13
||||||5|11
`, `Jornada 1!3 alder-bank 2026-01-03 Jo Lee 18:20
Jornada 1!4 alder-bank 2026-01-03 Al Roe 18:31
Jornada 1!5 alder-bank 2026-01-03 Cy Dee 19:02
`},
	{"a calendar gives the days of numbered lines", "carreras acumulado", `== Calendario
Carrera|Fecha|Lugar|Jefe
1|2026-01-03|Ribera Vieja|Ana Paz
2|2026-01-10|Ribera Vieja|Luis Mar
3|2026-01-17|Ribera Vieja|Ana Paz
== Resultados
Carrera|Puesto|Nombre|Tiempo
1|1|Jo Lee|18:20
1|2|Al Roe|18:31
2|1|Al Roe|18:25
2|2|Jo Lee|18:40
3|1|Al Roe|18:22
3|2|Cy Dee|18:45
`, `Resultados!2 ribera-vieja 2026-01-03 Jo Lee 18:20
Resultados!3 ribera-vieja 2026-01-03 Al Roe 18:31
Resultados!4 ribera-vieja 2026-01-10 Al Roe 18:25
Resultados!5 ribera-vieja 2026-01-10 Jo Lee 18:40
Resultados!6 ribera-vieja 2026-01-17 Al Roe 18:22
Resultados!7 ribera-vieja 2026-01-17 Cy Dee 18:45
`},
	{"tabs called after day and month in four figures", "Heron Wharf 2026 results", `== 0301
Pos|Time|Name
1|18:20|Jo Lee
2|18:31|Al Roe
== 1001
Pos|Time|Name
1|18:25|Al Roe
2|18:40|Jo Lee
== 1701
Pos|Time|Name
1|18:22|Al Roe
2|18:45|Jo Lee
`, `0301!2 heron-wharf 2026-01-03 Jo Lee 18:20
0301!3 heron-wharf 2026-01-03 Al Roe 18:31
1001!2 heron-wharf 2026-01-10 Al Roe 18:25
1001!3 heron-wharf 2026-01-10 Jo Lee 18:40
1701!2 heron-wharf 2026-01-17 Al Roe 18:22
1701!3 heron-wharf 2026-01-17 Jo Lee 18:45
`},
	{"a run on each row", "Cinder Path", `== Top ten
Cinder Path 5k
Date|Runners|1|Time|2|Time|3|Time
2026-01-03|3|Jo Lee|18:20|Al Roe|18:31|Cy Dee|19:02
2026-01-10|2|Al Roe|18:25|Jo Lee|18:40
`, `Top ten!3 cinder-path 2026-01-03 Jo Lee 18:20
Top ten!4 cinder-path 2026-01-10 Al Roe 18:25
Top ten!3 cinder-path 2026-01-03 Al Roe 18:31
Top ten!4 cinder-path 2026-01-10 Jo Lee 18:40
Top ten!3 cinder-path 2026-01-03 Cy Dee 19:02
`},
	{"who signed up and has neither place nor time", "Heideven 2026-01-03", `== Lijst
Nr|Naam|Betaald|Tijd|Plaats
1|Jo Lee|3.5|18:31|2
2|Al Roe|3.5||
3|Cy Dee|3.5|18:20|1
4|Di Fox|3.5|afgemeld|
5|Ed Gow|3.5|19:40|4
6|Fay Ho|3.5|19:02|3
7|Gus Ing|3.5|20:02|6
`, `Lijst!2 heideven 2026-01-03 Jo Lee 18:31
Lijst!4 heideven 2026-01-03 Cy Dee 18:20
Lijst!6 heideven 2026-01-03 Ed Gow 19:40
Lijst!7 heideven 2026-01-03 Fay Ho 19:02
Lijst!8 heideven 2026-01-03 Gus Ing 20:02
`},
	{"a place is open for the one without a time", "Alder Bank 2026-01-03", `== Results
Pos|Name|Sex|Time
1|Jo Lee|F|18:20
2|Al Roe|M|18:31
3|Cy Dee|M|19:02
|Fay Ho|F|
5|Di Fox|F|19:40
6|Ed Gow|M|19:51
7|Gus Ing|M|20:51
`, `Results!2 alder-bank 2026-01-03 Jo Lee 18:20 F
Results!3 alder-bank 2026-01-03 Al Roe 18:31 M
Results!4 alder-bank 2026-01-03 Cy Dee 19:02 M
Results!5 alder-bank 2026-01-03 Fay Ho F
Results!6 alder-bank 2026-01-03 Di Fox 19:40 F
Results!7 alder-bank 2026-01-03 Ed Gow 19:51 M
Results!8 alder-bank 2026-01-03 Gus Ing 20:51 M
`},
	{"tabs called after weeks like classes", "Alder Bank", `== S13
Alder Bank, 28 mars 2026
Clt|Nom|Temps
1|Jo Lee|18:20
2|Al Roe|18:31
== S14
Alder Bank, 4 avril 2026
Clt|Nom|Temps
1|Al Roe|18:25
2|Jo Lee|18:40
`, `S13!3 alder-bank 2026-03-28 Jo Lee 18:20
S13!4 alder-bank 2026-03-28 Al Roe 18:31
S14!3 alder-bank 2026-04-04 Al Roe 18:25
S14!4 alder-bank 2026-04-04 Jo Lee 18:40
`},
	{"numbers of runs beside the date", "Parque do Moinho histórico", `== Histórico
Edição|Data|Posição|Atleta|Tempo
#41|2026-01-03|1|Jo Lee|18:20
#41|2026-01-03|2|Al Roe|18:31
#41|2026-01-03|3|Cy Dee|18:35
#42|2026-01-10|1|Al Roe|18:25
#42|2026-01-10|2|Jo Lee|18:40
#42|2026-01-10|3|Cy Dee|18:41
`, `Histórico!2 parque-do-moinho 2026-01-03 Jo Lee 18:20
Histórico!3 parque-do-moinho 2026-01-03 Al Roe 18:31
Histórico!4 parque-do-moinho 2026-01-03 Cy Dee 18:35
Histórico!5 parque-do-moinho 2026-01-10 Al Roe 18:25
Histórico!6 parque-do-moinho 2026-01-10 Jo Lee 18:40
Histórico!7 parque-do-moinho 2026-01-10 Cy Dee 18:41
`},
	{"a distance in the name of the file", "Cedar Gulch 5K log", `== Log
Race Date|Place|Name|Finish
2026-01-03|1|Jo Lee|18:20
2026-01-03|2|Al Roe|18:31
`, `Log!2 cedar-gulch 2026-01-03 Jo Lee 18:20
Log!3 cedar-gulch 2026-01-03 Al Roe 18:31
`},
	{"those who were not there today stay on the list", "Kirkestien", `== 3-1-2026
Kirkestien
Navn|Tid i dag|Bedste i år|Point i alt
Jo Lee|18:31|18:20|50
Al Roe||18:31|40
Cy Dee|25:02|25:02|30
`, `3-1-2026!3 kirkestien 2026-01-03 Jo Lee 18:31
3-1-2026!5 kirkestien 2026-01-03 Cy Dee 25:02
`},
	{"the day stands below the table of each tab", "Fűzfás", `== 1. hét
Fűzfás 5 km
H.|Név|Idő
1|Lee Jo|18:20
2|Roe Al|18:31

|Futás napja:|2026.01.03
== 2. hét
Fűzfás 5 km
H.|Név|Idő
1|Roe Al|18:25
2|Lee Jo|18:40

|Futás napja:|2026.01.10
`, `1. hét!3 fuzfas 2026-01-03 Lee Jo 18:20
1. hét!4 fuzfas 2026-01-03 Roe Al 18:31
2. hét!3 fuzfas 2026-01-10 Roe Al 18:25
2. hét!4 fuzfas 2026-01-10 Lee Jo 18:40
`},
	{"marks in cells between minutes and seconds", "Tertre Gris", `== 3 janvier 2026
Tertre Gris
N°|Nom|Temps
1|Jo Lee|18|'|20|"
2|Al Roe|18|'|31|"
3|Cy Dee|19|'|2|"
4|Di Fox|19|'|40|"
`, `3 janvier 2026!3 tertre-gris 2026-01-03 Jo Lee 18:20
3 janvier 2026!4 tertre-gris 2026-01-03 Al Roe 18:31
3 janvier 2026!5 tertre-gris 2026-01-03 Cy Dee 19:02
3 janvier 2026!6 tertre-gris 2026-01-03 Di Fox 19:40
`},
	{"a column of times for each distance", "Bosco Largo", `== 17-1-2026
Bosco Largo
Pett.|Nome|Tempo 5 km|Tempo 10 km
31|Jo Lee|18:20|
12|Al Roe||41:31
17|Cy Dee|19:02|
25|Di Fox||44:12
`, `17-1-2026!3 bosco-largo 2026-01-17 Jo Lee 18:20
17-1-2026!5 bosco-largo 2026-01-17 Cy Dee 19:02
17-1-2026!4 bosco-largo 2026-01-17 Al Roe 41:31
17-1-2026!6 bosco-largo 2026-01-17 Di Fox 44:12
`},
	{"times of nines for those who did not finish", "Kolkweg 2026-01-03", `== Uitslag
Plaats|Naam|M/V|Tijd
1|Jo Lee|V|18:20
2|Al Roe|M|18:31
3|Cy Dee|M|19:02
4|Di Fox|V|19:40
5|Ed Gow|M|19:51
|Fay Ho|V|99:99
`, `Uitslag!2 kolkweg 2026-01-03 Jo Lee 18:20 V
Uitslag!3 kolkweg 2026-01-03 Al Roe 18:31 M
Uitslag!4 kolkweg 2026-01-03 Cy Dee 19:02 M
Uitslag!5 kolkweg 2026-01-03 Di Fox 19:40 V
Uitslag!6 kolkweg 2026-01-03 Ed Gow 19:51 M
`},
	{"last week's names on a copied tab", "Lungolago Cerro 2026", `== 3 gennaio 2026
Lungolago Cerro
Pos|Nome|Tempo
1|Jo Lee|18:20
2|Al Roe|18:31
3|Cy Dee|19:02
4|Di Fox|19:40
5|Ed Gow|19:51
== 10 gennaio 2026
Lungolago Cerro
Pos|Nome|Tempo
1|Jo Lee|
2|Al Roe|
3|Cy Dee|
4|Di Fox|
5|Ed Gow|
`, `3 gennaio 2026!3 lungolago-cerro 2026-01-03 Jo Lee 18:20
3 gennaio 2026!4 lungolago-cerro 2026-01-03 Al Roe 18:31
3 gennaio 2026!5 lungolago-cerro 2026-01-03 Cy Dee 19:02
3 gennaio 2026!6 lungolago-cerro 2026-01-03 Di Fox 19:40
3 gennaio 2026!7 lungolago-cerro 2026-01-03 Ed Gow 19:51
`},
	{"other names without times on the next tab", "Lungolago Cerro 2026", `== 3 gennaio 2026
Lungolago Cerro
Pos|Nome|Tempo
1|Jo Lee|18:20
2|Al Roe|18:31
3|Cy Dee|19:02
4|Di Fox|19:40
5|Ed Gow|19:51
== 10 gennaio 2026
Lungolago Cerro
Pos|Nome|Tempo
1|Al Roe|
2|Jo Lee|
3|Ed Gow|
4|Cy Dee|
5|Di Fox|
`, `3 gennaio 2026!3 lungolago-cerro 2026-01-03 Jo Lee 18:20
3 gennaio 2026!4 lungolago-cerro 2026-01-03 Al Roe 18:31
3 gennaio 2026!5 lungolago-cerro 2026-01-03 Cy Dee 19:02
3 gennaio 2026!6 lungolago-cerro 2026-01-03 Di Fox 19:40
3 gennaio 2026!7 lungolago-cerro 2026-01-03 Ed Gow 19:51
10 gennaio 2026!3 lungolago-cerro 2026-01-10 Al Roe
10 gennaio 2026!4 lungolago-cerro 2026-01-10 Jo Lee
10 gennaio 2026!5 lungolago-cerro 2026-01-10 Ed Gow
10 gennaio 2026!6 lungolago-cerro 2026-01-10 Cy Dee
10 gennaio 2026!7 lungolago-cerro 2026-01-10 Di Fox
`},
	{"a month with one run alone", "Kiesgrube 2026", `== Januar 2026
Kiesgrube - Januar 2026
Name|Jg.|10.|17.
Jo Lee|1980|18:20|18:25
Al Roe|1971|18:31|
== Februar 2026
Kiesgrube - Februar 2026
Name|Jg.|7.
Jo Lee|1980|18:22
Al Roe|1971|18:33
`, `Januar 2026!3 kiesgrube 2026-01-10 Jo Lee 18:20
Januar 2026!4 kiesgrube 2026-01-10 Al Roe 18:31
Januar 2026!3 kiesgrube 2026-01-17 Jo Lee 18:25
Februar 2026!3 kiesgrube 2026-02-07 Jo Lee 18:22
Februar 2026!4 kiesgrube 2026-02-07 Al Roe 18:33
`},
}

// The second family name goes behind the first, where it has a column of its own.
func TestSecondFamilyName(t *testing.T) {
	s, err := Read("Loma del Cuco.xlsx", bookOf(t, "== 17 de enero de 2026\nOrden|1er apellido|2º apellido|Nombre|Crono\n1|Paz|Sanz|Luis|18:20\n2|Mar|Lara|Ana|18:31\n3|Doe||Jo|19:02\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, got := s.Parts[0], ""
	p.Each(func(_ int, cells []string) error {
		got += cellAt(cells, p.Index(FamilyName)) + ", " + cellAt(cells, p.Index(GivenName)) + "; "
		return nil
	})
	if want := "Paz Sanz, Luis; Mar Lara, Ana; Doe, Jo; "; got != want {
		t.Errorf("read %q, want %q", got, want)
	}
}

// A tab of corrections is pointed out as long as the results have other times than the right ones.
func TestCorrectionsApart(t *testing.T) {
	for _, c := range []struct {
		name, headings, right string
		want                  bool
	}{
		{"put right", "Pos.|Nome|Tempo sbagliato|Tempo giusto", "18:31", false},
		{"not yet", "Pos.|Nome|Tempo sbagliato|Tempo giusto", "18:30", true},
		{"not yet, and no heading speaks of times", "Pos.|Nome|Era|Giusto", "18:30", true},
	} {
		s, err := Read("Colle Rovo.xlsx", bookOf(t, "== 10 gennaio 2026\nPos.|Nome|Tempo\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n== Correzioni\n"+c.headings+"\n2|Roe Al|19:31|"+c.right+"\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := slices.ContainsFunc(s.Problems, func(p place.Problem) bool { return p.Kind == "corrections-apart" })
		if len(s.Parts) != 1 || got != c.want || len(s.Parts[0].Problems) > 0 {
			t.Errorf("%s: %d lists, pointed out %v, %v", c.name, len(s.Parts), got, s.Parts[0].Problems)
		}
	}
}
