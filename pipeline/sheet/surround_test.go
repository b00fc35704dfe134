package sheet

import (
	"strings"
	"testing"
)

// TestSurroundings reads sheets with other things around the results: other days, the
// weather, sponsors, legends, lists of helpers, records, winners and teams. The columns are
// those of TestHabits.
func TestSurroundings(t *testing.T) {
	const first, run = "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03"
	for _, c := range []struct {
		name, file, text string
		lines            int
		first, run, asks string
	}{
		{"the wind in km/h above the heading", "alder-bank_2026-01-03.csv", "Weather,16 °C\nWind,28 km/h\nPos,Name,Time\n" + tenRunners, 10, first, run, ""},
		{"the wind is no distance", "results.csv", "Alder Bank 3 January 2026\n\"Weather: dry, wind 12 km/h\"\nPos,Name,Time\n" + tenRunners, 10, first, run, ""},
		{"the day of the next run, and that of this one in the file's name", "alder-bank_2026-01-03.csv", "Næste løb: 10. januar 2026\nPlacering,Navn,Tid\n" + tenRunners, 10, first, run, ""},
		{"another run and its day in the title than in the file's name", "alder-bank_2026-01-03.csv", "Hazel Weir 10 January 2026\nPos,Name,Time\n" + tenRunners, 10, first, "", "course-unclear date-unclear"},
		{"two days in Portuguese", "x.csv", "Alder Bank Resultados quarta-feira, 14 de janeiro de 2026\nquarta-feira, 7 de janeiro de 2026\nPos,Nome,Tempo\n" + tenRunners, 10, first, "", "date-unclear"},
		{"a day on which there is no run", "alder-bank_2026-01-03.csv", "Geen loop op 17 januari 2026 (kermis)\nPlaats,Naam,Tijd\n" + tenRunners, 10, first, run, ""},
		{"since when there are runs", "2026-01-03 Alder Bank.csv", "Desde el 10 de mayo de 2014\nPuesto,Nombre,Tiempo\n" + tenRunners, 10, first, run, ""},
		{"other days beside that of the title", "results.csv", "Alder Bank 3 January 2026\nOur fifth birthday bash: 14 February 2026\nMarquee hire from 31 January 2026\nPos,Name,Time\n" + tenRunners, 10, first, run, ""},
		{"a bare day, and an aside with another", "alder bank 7.csv", "Results Saturday 3 January 2026\nOur anniversary outing is on Saturday 10 January 2026\nPos,Name,Time\n" + tenRunners, 10, first, run, ""},
		{"last week's finishers", "results 3.csv", "Resultados sábado, 3 de enero de 2026\nLa semana pasada (27 de diciembre de 2025): 80 corredores\nPuesto,Nombre,Tiempo\n" + tenRunners, 10, first, "", "course-missing"},
		{"when a list was put right, in Danish", "alder-bank_20260103.csv", "v2\nOpdateret 03/01/2026\nPlads,Deltager,Tid\n" + tenRunners, 10, first, run, ""},
		{"the legend of a short form is no course", "results 3 January 2026.csv", "DNF = did not finish\nPos,Name,Time\n" + tenRunners, 10, first, "", "course-missing"},
		{"a sponsor is no course", "Alder Bank 2026.csv", "Results 3 January 2026\nSupported by Underlow Dental - 14 Mill Street\nPos,Name,Time\n" + tenRunners, 10, first, run, ""},
		{"a place whose name ends like a weekday", "alder-so_20260103.csv", "Plads,Deltager,Tid\n" + tenRunners, 10, first, "alder-so 2026-01-03", ""},
		{"places of a season under a word for towns", "saison.csv", "Saisonliste 2026\nOrt,Platz,Name,Zeit,Tag\nAlder Bank,1,Jo Lee,18:20,03.01.2026\nAlder Bank,2,Al Roe,18:31,03.01.2026\nAlder Bank,3,Cy Dee,19:02,03.01.2026\nAlder Bank,4,Di Fox,19:28,03.01.2026\nMoorsee,1,Al Roe,18:25,10.01.2026\nMoorsee,2,Jo Lee,18:33,10.01.2026\nMoorsee,3,Cy Dee,19:05,10.01.2026\nMoorsee,4,Ed Gow,19:40,10.01.2026\n", 8, first, run, ""},
		{"a season sorted by runners", "season.csv", "Town,Runner,Time,Date\nAlder Bank,Jo Lee,18:20,2026-01-03\nMoss Mere,Jo Lee,18:33,2026-01-10\nAlder Bank,Jo Lee,18:29,2026-01-17\nAlder Bank,Al Roe,18:31,2026-01-03\nMoss Mere,Al Roe,18:25,2026-01-10\nAlder Bank,Al Roe,18:35,2026-01-17\nAlder Bank,Cy Dee,19:02,2026-01-03\nMoss Mere,Cy Dee,19:05,2026-01-10\nAlder Bank,Cy Dee,19:01,2026-01-17\n", 9, "name Jo Lee, time 18:20", run, ""},
		{"home towns of a season", "Alder Bank season.csv", "Town,Runner,Time,Date\nElm,Jo Lee,18:20,2026-01-03\nOak,Al Roe,18:31,2026-01-03\nElm,Cy Dee,19:02,2026-01-03\nOak,Di Fox,19:28,2026-01-03\nElm,Jo Lee,18:33,2026-01-10\nOak,Al Roe,18:25,2026-01-10\nElm,Cy Dee,19:05,2026-01-10\nOak,Di Fox,19:08,2026-01-10\n", 8, "name Jo Lee, time 18:20", run, ""},
		{"winners and then records, their surnames first above", "alder-bank_2026-01-03.csv", "Runner,Cat,Time,Pos\n\"LEE, Jo\",W35,18:20,1\n\"ROE, Al\",M40,18:31,2\n\"DEE, Cy\",M40,19:02,3\n\"FOX, Di\",W40,19:28,4\n\nWinners\nCat,Name,Time\nW35,Jo Lee,18:20\nM40,Al Roe,18:31\n\nRecords du parcours\nCat,Name,Time,Date\nM,Gil Tarr,15:44,2019-05-03\nF,Una Brisk,17:52,2022-06-11\n", 4, "position 1, name LEE, Jo, age-group W35, time 18:20", run, ""},
		{"teams, where clubs have no column", "alder-bank_2026-01-03.csv", "Pos,Name,Time\n" + tenRunners + "\nTeams\n1,Vale Harriers,20\n2,Mill Striders,29\n3,Fell Runners,38\n", 10, first, run, ""},
		{"helpers beside the first rows, and a finish of times", "alder-bank_2026-01-03.csv", "Position,Surname,Given name,Finish,AG,Gender,,,Volunteers\n1,Lee,Jo,00:18:20,F35,Female,,,Timekeeper,Ann Moss\n2,Roe,Al,00:18:31,M40,Male,,,Marshal,Bo Pugh\n3,Dee,Cy,00:19:02,,,,,Tail walker,Nan Oak\n4,Fox,Di,00:19:28,F40,Female\n5,Gow,Ed,00:19:40,M50,Male\n6,Ing,Gus,00:20:01,M60,Male\n7,Job,Hal,00:20:11,M40,Male\n", 7, "position 1, age-group F35, time 00:18:20, sex Female", run, ""},
		{"the next run, in Danish, and a place that is called after a lake", "Alder Sø 2026-01-03.csv", "Næste løb: 10. januar 2026\nPlads,Løber,Tid\n" + tenRunners, 10, first, "alder-so 2026-01-03", ""},
		{"best times of two, with their days, in one line", "2026-01-03 Alder Bank.csv", "Banrekord: Herrar 15:25 (2 november 2024), Damer 17:45 (11 oktober 2025)\nPlacering,Löpare,Tid\n" + tenRunners, 10, first, run, ""},
		{"winners under results whose names stand in columns apart", "2026-01-03 Alder Bank.csv", "Plac.,Förnamn,,Efternamn,Tid\n1,Jo,,Lee,18:20\n2,Al,,Roe,18:31\n3,Cy,,Dee,18:40\n\nJubileumsloppet är den 31 januari 2026\nKlassegrare\nKlass,Namn,Tid\nK35,Jo Lee,18:20\nM40,Al Roe,18:31\n", 3, "position 1, time 18:20", run, ""},
		{"clubs in most rows under the line for men", "alder-bank_2026-01-03.csv", "Plac.,Namn,Kön,Förening,Tid\nHerrar,,,,\n1,Al Roe,Man,Vale Runners,985\n2,Cy Dee,Man,Mill Striders,988\n3,Ed Gow,Man,,1019\nDamer,,,,\n1,Jo Lee,Kvinna,Vale Harriers,1067\n2,Di Fox,Kvinna,Mill Runners,1090\n3,Ida Kay,Kvinna,,1159\n", 6, "position 1, name Al Roe, club Vale Runners, time 985, sex Man", run, ""},
		{"minutes and seconds under a word over both", "alder-bank_2026-01-03.csv", ",Runner,,Result,\nPos,Name,Club,Min,Sec\n1,Jo Lee,Vale AC,18,20\n2,Al Roe,Mill AC,18,31\n3,Cy Dee,Vale AC,18,40\n4,Di Fox,Mill AC,18,42\n", 4, "position 1, name Jo Lee, club Vale AC, time 18:20", run, ""},
		{"a weekday in a language that writes the day first", "results.csv", "Alder Bank Samstag 05/09/2026\nPl.,Laufzeit\n1,18:20\n2,18:31\n3,18:40\n4,18:42\n", 4, "position 1, time 18:20", "alder-bank 2026-09-05", ""},
		{"an address is no course", "Alder Bank 2026.csv", "Results 3 January 2026\nresults@mill.example\nPos,Name,Time\n" + tenRunners, 10, first, run, ""},
		{"teams under words that few clubs have", "alder-bank_2026-01-03.csv", "Pos,Given name,Surname,Time\n1,Jo,Lee,18:20\n2,Al,Roe,18:31\n3,Cy,Dee,18:40\n\nTeams\n1,Vale Pacers,20\n2,Mill Striders,29\n3,Fell Runners,38\n", 3, "position 1, time 18:20", run, ""},
		{"the headings of a list of bests are no place", "Alder Bank 2026-01-03.csv", "Plek,Deelnemer,Netto tijd\n" + tenRunners + "\nSnelste ooit\nPlaats,Naam,Tijd,Datum\n1,Una Brisk,15:20,2019-05-03\n2,Gil Tarr,15:31,2018-05-03\n", 10, first, run, ""},
		{"a file called after the half that it holds", "2026-01-03 Alder Bank Tiempo.csv", "Puesto,Tiempo\n1,18:20\n2,18:31\n3,18:40\n4,18:42\n", 4, "position 1, time 18:20", run, ""},
		{"names with places and addresses", "alder-bank_2026-01-03 Navn.csv", "Plads,Navn,E-mail\n1,Jo Lee,jo@post.example\n2,Al Roe,al@post.example\n3,Cy Dee,cy@post.example\n", 3, "position 1, name Jo Lee", run, ""},
		{"the next run below the results of one, above those of the next", "Alder Bank.csv", "Volgende loop: 10 januari 2026\n3 januari 2026\nPlaats,Naam,Tijd\n" + tenRunners, 10, first, run, ""},
		{"a word in small letters is no place", "Alder Bank 3.csv", "Corsa di anniversario il 14 febbraio 2026\n3 gennaio 2026\nPos.,Nome,Tempo\n" + tenRunners, 10, first, run, ""},
		{"a mean time under a word for time", "alder-bank_2026-01-03.csv", "Puesto,Nombre,Tiempo\n" + tenRunners + ",Tiempo medio,18:43\n", 10, first, run, ""},
		{"headings of two letters are no legend", "results.csv", "Wyniki Alder Bank 3 stycznia 2026\nMężczyźni\nM-ce,Zawodnik,K/M,Czas\n1,Al Roe,m,18:20\n2,Cy Dee,m,18:31\n3,Ed Gow,m,18:40\nKobiety\nM-ce,Zawodnik,K/M,Czas\n1,Jo Lee,k,18:42\n2,Di Fox,k,18:45\n3,Ida Kay,k,18:47\n", 6, "position 1, name Al Roe, time 18:20, sex m", run, ""},
	} {
		s, err := Read(c.file, []byte(c.text), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		got, o := factsRead(s), outcome(s)
		if o.run == "not known" {
			o.run = ""
		}
		if len(s.Parts) != 1 || len(got) != c.lines || got[0] != c.first || o.run != c.run || o.asks != c.asks {
			t.Errorf("%s: %d tables, %d lines, the first %q, run %q, asks %q", c.name, len(s.Parts), len(got), got[0], o.run, o.asks)
		}
		if strings.HasPrefix(c.name, "helpers") && len(got) > 2 && !strings.Contains(got[2], "00:19:02") {
			t.Errorf("%s: %q", c.name, got[2])
		}
		for _, p := range s.Parts {
			if p.Distance.OK() {
				t.Errorf("%s: a distance of %s m", c.name, p.Distance.Value)
			}
		}
	}
}

// TestRosterOfNumbers holds that a tab of numbers and names beside results that name their
// finishers gives no names by place.
func TestRosterOfNumbers(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.xlsx", bookOf(t, "== Results\nPlace|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n== Runners\nNo|Name|Club\n1|Di Fox|Vale AC\n2|Ed Gow|Mill AC\n3|Gus Ing|Vale AC\n4|Hal Job|Mill AC\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Parts) != 1 || s.Parts[0].Tab != "Results" {
		t.Errorf("%d tables are read", len(s.Parts))
	}
}

// TestTabsCalledLikeHeadings holds that the word on a tab for what it lists names no course.
func TestTabsCalledLikeHeadings(t *testing.T) {
	s, err := Read("results.xlsx", bookOf(t, "== Tid\nAlder Bank 3. januar 2026\nPlads|Tid\n1|18:20\n2|18:31\n3|18:40\n== Navn\nPlads|Løber\n1|Jo Lee\n2|Al Roe\n3|Cy Dee\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range s.Parts {
		if p.Course.Value != "alder-bank" {
			t.Errorf("tab %s is of the course %s", p.Tab, p.Course.Value)
		}
	}
}

// TestSpacesThatDoNotBreak reads a text in Windows-1252 between whose names such spaces stand.
func TestSpacesThatDoNotBreak(t *testing.T) {
	text := "Pos,Name,Time\n1,Jean-Luc\xa0B\xe9gu\xe9,18:20\n2,Ravi\xa0Dunmore,18:31\n3,Bj\xf6rn\xa0Roe,18:40\n4,Jo\xa0Lee,18:42\n5,Ed\xa0Gow,18:45\n"
	s, err := Read("alder-bank_2026-01-03.csv", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := factsRead(s); !strings.Contains(got[0], "Bégué") || !strings.Contains(got[2], "Björn") {
		t.Errorf("%q", got)
	}
}
