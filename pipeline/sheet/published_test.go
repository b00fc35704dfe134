package sheet

import (
	"strings"
	"testing"
)

// publishedCases are lists as clubs, schools, papers and programs publish them: which course their
// lines name beside words for running, for lists, for who keeps them and for what was typed.
var publishedCases = []struct{ file, above, run string }{
	{"corsa.txt", "DOPOLAVORO – Corsa di 5 km a Boscoverde, 24 giugno 2023", "boscoverde 2023-06-24"},
	{"cursa.csv", "Cursa de 5 km - Salzeda\n22 de juny de 2024", "salzeda 2024-06-22"},
	{"tek.txt", "Rezultati: Vrbje polje, tek na 5 km\n18. junij 2016", "vrbje-polje 2016-06-18"},
	{"x.txt", "Бягане 5 км – Елшица поле\n15 декември 2018 г.", "елшица-поле 2018-12-15"},
	{"x.txt", "Αγώνας 5 χλμ Πλατανόρεμα\n22 Απριλίου 2023", "πλατανορεμα 2023-04-22"},
	{"opslag.txt", "Løbeklubben\n26. august 2023\nTak for en dejlig tur i Ellemosen (5 km)! Tider:", "ellemosen 2023-08-26"},
	{"wyniki.txt", "Szkoła Podstawowa - bieg na 5 km\nOlszynka Górna, dnia 26.06.2021 r.", "olszynka-gorna 2021-06-26"},
	{"raw.txt", "# Title: Brackwater 5 km\n# Date: 2024-06-22", "brackwater 2024-06-22"},
	{"x.txt", "SELECT place,name,t FROM r WHERE event='Harrow Dene 5K' AND d='2024-01-20';", "harrow-dene 2024-01-20"},
	{"x.txt", "> print(subset(runs, course==\"harrow-dene\" & date==\"2024-05-25\"))", "harrow-dene 2024-05-25"},
	{"x.txt", "Entry list Larkmoor 5k on 24 February 2018", "larkmoor 2018-02-24"},
	{"match.txt", "Quay H v Osier AC 5k match, Tansy Hill, 14 April 2018", "tansy-hill 2018-04-14"},
	{"x.txt", "COURSE DE VALBRUNE (5 km) - 23 août 2025", "valbrune 2025-08-23"},
	{"x.txt", "Withy Common relay 4 x 5 km 13 September 2025", "withy-common-relay 2025-09-13"},
	{"tempi.txt", "Manifestazione: Pian dei Salici 5 km\nData: 2016-12-17", "pian-dei-salici 2016-12-17"},
	{"works league Withy Common 5km 22-02-2025.csv", "", "withy-common 2025-02-22"},
	{"Lari 5 km Taman Waru 22-02-2025.csv", "", "taman-waru 2025-02-22"},
	{"柳溪公园5公里_2023-05-27.csv", "", "柳溪公园 2023-05-27"},
	// What looks like them and is the name of a place.
	{"x.txt", "Les Trois Chênes 5 km, 23 août 2025", "les-trois-chenes 2025-08-23"},
	{"x.txt", "Church in the Wold 5 km, 23 August 2025", "church-in-the-wold 2025-08-23"},
	{"x.txt", "Haus am See, 5 km, 23. August 2025", "haus-am-see 2025-08-23"},
	{"x.txt", "Well done to all who ran for us at the 5 km in aid of the hospice\nAlder Bank, 23 August 2025", "alder-bank 2025-08-23"},
	{"League Meadow 2025-08-23.csv", "", "not known"}, // asked
}

func TestPublishedLists(t *testing.T) {
	const rows = "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n"
	for _, c := range publishedCases {
		text := rows
		if c.above != "" {
			text = "\"" + strings.ReplaceAll(strings.ReplaceAll(c.above, `"`, `""`), "\n", "\"\n\"") + "\"\n" + rows
		}
		s, err := Read(c.file, []byte(text), Options{DateOrder: "dmy"})
		if err != nil {
			t.Error(c.file, err)
			continue
		}
		if got := s.Parts[0].RunOfFirst(); got != c.run {
			t.Errorf("%s, %q: %s, want %s", c.file, c.above, got, c.run)
		}
	}
}

// Lists whose lines are bent: a head on every page that stands across the columns, colons that
// a scan has read as semicolons, columns that only their gaps divide.
func TestPublishedTexts(t *testing.T) {
	head := func(page string) string {
		return "ALDER BANK 5K ROAD RACE            19-MAY-2018            PAGE " + page + "\n\n POS  NUM  NAME                 CLUB                  TIME\n ===  ===  ====                 ====                  ====\n"
	}
	for _, c := range []struct{ name, text, columns, first, last string }{
		{"a head on every page", head("1") + "   1  137  LEE JO               OSIER AC              16:42\n   2  174  ROE AL               LARKMOOR STRIDERS     17:09\n   3  211  DEE CY                                     17:47\n\n\f" +
			head("2") + "   4  248  FOX DI               OSIER AC              17:50\n   5  285  HO FAY                                     18:33\n\n\f" + head("3") + "   6  322  PAGE ANN             OSIER AC              19:17\n",
			"position number name club time", "1 137 LEE JO OSIER AC 16:42", "6 322 PAGE ANN OSIER AC 19:17"},
		{"columns that only gaps divide", "Alder Bank 5km 26 April 2025\n\n Pos Name            Club             Time\n 1. Jo Lee     Osier AC      18:30\n  2. Alan Roe       Osier AC      20.40\n 3. Cynthia Dee       Larkmoor Striders       21.28\n 4. Di Fox    Osier AC        22;33\n  5. Fay Holloway       unatt.       22.55\n 6. Ann Page    Withy Road Runners        23:38\n 7. Hal Kay     Osier AC     23.56\n8. Eve Hill        unatt.     26.48\n",
			"position name club time", "1. Jo Lee Osier AC 18:30", "8. Eve Hill unatt. 26.48"},
		{"semicolons for colons", "Pos,Name,Time\n1,Jo Lee,18:30\n2,Al Roe,18;4l\n3,Cy Dee,19:02\n4,Di Fox,19:40\n5,Fay Ho,20:11\n6,Ann Page,2O;15\n7,Hal Kay,20:18\n", "position name time", "1 Jo Lee 18:30", "7 Hal Kay 20:18"},
	} {
		s, err := Read("alder-bank_2018-05-19.txt", []byte(c.text), Options{})
		if err != nil {
			t.Error(c.name, err)
			continue
		}
		got := outcome(s)
		var rows []string
		for _, p := range s.Parts {
			p.Each(func(_ int, cells []string) error {
				rows = append(rows, strings.Join(strings.Fields(strings.Join(cells, " ")), " "))
				return nil
			})
		}
		if got.columns != c.columns || rows[0] != c.first || rows[len(rows)-1] != c.last {
			t.Errorf("%s: columns %q, want %q; rows %q", c.name, got.columns, c.columns, rows)
		}
		if all := strings.Join(rows, " "); strings.Contains(all, ";") || strings.Contains(all, "2O") {
			t.Errorf("%s: %q", c.name, all)
		}
	}
	// Divided by semicolons, figures beside one another are cells.
	s, err := Read("alder-bank_2018-05-19.csv", []byte("Pos;Age;Name;Time\n1;34;Jo Lee;18:30\n2;41;Al Roe;18:41\n3;29;Cy Dee;19:02\n"), Options{})
	if err != nil || outcome(s).columns != "position age name time" {
		t.Error(err, s)
	}
}

// Of several columns of times, the one that is the time from each runner's own start is it, and of
// two that only a number tells apart neither is.
func TestPublishedTimes(t *testing.T) {
	for _, c := range []struct{ text, columns, asks string }{
		{"Pos,Name,Start,Finish,Net Time\n1,Jo Lee,1:30,21:00,19:30\n2,Al Roe,3:45,21:29,17:44\n3,Cy Dee,3:15,21:41,18:26\n4,Di Fox,3:30,23:27,19:57\n5,Fay Ho,0:00,24:24,24:24\n", "position name - - time", ""},
		{"Name,Time 1,Time 2\nJo Lee,17:23,17:09\nAl Roe,18:23,18:58\nCy Dee,18:31,17:55\nDi Fox,19:02,19:40\nFay Ho,20:11,20:13\n", "name time time", "time-column-missing"},
		{"Name,Time 1,Time 2\nJo Lee,17:23,17:24\nAl Roe,18:23,18:23\nCy Dee,18:31,18:32\nDi Fox,19:02,19:02\nFay Ho,20:11,20:12\n", "name time -", ""}, // two watches
	} {
		s, err := Read("alder-bank_2018-05-19.csv", []byte(c.text), Options{})
		if err != nil {
			t.Error(c.text, err)
			continue
		}
		if got := outcome(s); got.columns != c.columns || got.asks != c.asks {
			t.Errorf("%s: columns %q asks %q, want %q %q", c.text, got.columns, got.asks, c.columns, c.asks)
		}
	}
}

// A week and its day in June are no group of juniors.
func TestWeekAndDayIsNoGroup(t *testing.T) {
	for text, section := range map[string]bool{"Wk 4 5 Jun": false, "Week 2, 12 June": false, "Juniors": true, "Women 5 Jun": true} {
		if isSection(text) != section {
			t.Errorf("%q: %v", text, !section)
		}
	}
}
