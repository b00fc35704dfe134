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
	{"resultats.txt", "Cross hebdo — Lycée Valmont\n22 avril 2023", "lycee-valmont 2023-04-22"},
	{"ergebnisse.txt", "Grundschule Moorhof\nWaldlauf Birkental\n22. April 2023", "waldlauf-birkental 2023-04-22"},
	{"list.txt", "Entries Alder Bank 5k on 22 April 2023", "alder-bank 2023-04-22"},
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
	{"double.txt", "Osier Meadow 5 km double\n13 April 2025", "osier-meadow 2025-04-13"},
	{"challenge.txt", "Osier Meadow 5k club challenge, 13 April 2025", "osier-meadow 2025-04-13"},
	{"track.txt", "# Tansy Hill 5k\n# 2025-04-13", "tansy-hill 2025-04-13"},
	{"aushang.txt", "AUSHANG\n5-km-Lauf „Birkenried“\nvom 13. April 2025", "birkenried 2025-04-13"},
	{"bedrift.txt", "Bedriftsløp 5 km, Granlidmyra, 13. april 2025", "granlidmyra 2025-04-13"},
	{"x.txt", "Betriebslauf 5 km, 13. April 2025", "betriebslauf 2025-04-13"},
	// What looks like them and is the name of a place.
	{"tansy-hill.txt", "tansy hill 5k, 13 April 2025", "tansy-hill 2025-04-13"},
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
			"position name club time", "1 Jo Lee Osier AC 18:30", "8 Eve Hill unatt 26.48"},
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

// Tables in the markup of typesetters, wikis, forums and pages, in statements of a database and in
// logs; cards below one another; days with a colon; times with a stroke; words of further languages.
func TestPublishedForms(t *testing.T) {
	for _, c := range []struct{ name, file, text, columns, run, rows, first, last string }{
		{"LaTeX", "x.txt", "\\section*{Alder Bank 5\\,km, 3 January 2026}\n\\begin{tabular}{rllr}\n\\hline\nPos. & Name & Club & Time\\\\\n\\hline\n1 & Jo Lee & Mill \\& Dale & 18:20 \\\\\n2 & Al Roe & -- & 18:31 \\\\\n3 & Cy Dee & Quay H & 19:02 \\\\\n\\hline\n\\end{tabular}\n",
			"position name club time", "alder-bank 2026-01-03", "6-8", "1 Jo Lee Mill & Dale 18:20", "3 Cy Dee Quay H 19:02"},
		{"a forum's table", "x.txt", "[b]Alder Bank 5k - 3 January 2026[/b]\n[table][tr][td]Pos[/td][td]Name[/td][td]Time[/td][/tr]\n[tr][td]1[/td][td]Jo Lee[/td][td]18:20[/td][/tr]\n[tr][td]2[/td][td]Al Roe[/td][td]18:31[/td][/tr]\n[tr][td]3[/td][td]Cy Dee[/td][td]19:02[/td][/tr]\n[/table]\n",
			"position name time", "alder-bank 2026-01-03", "", "1 Jo Lee 18:20", "3 Cy Dee 19:02"},
		{"a wiki's cells", "x.txt", "== Alder Bank 5 km ==\n''3 January 2026''\n{|\n! Rank\n! Name\n! Time\n|-\n| 1\n| Jo Lee\n| 18:20\n|-\n| 2\n| Al Roe\n| 18:31\n|-\n| 3\n| Cy Dee\n| 19:02\n|}\n",
			"position name time", "alder-bank 2026-01-03", "8 12 16", "1 Jo Lee 18:20", "3 Cy Dee 19:02"},
		{"marks of pages in cells", "alder-bank_2026-01-03.csv", "rank,name,time\n1,\"<a href=\"\"/r/77\"\">Jo Lee</a>\",<b>18:20</b>\n2,\"<a href=\"\"/r/8\"\">Al Roe</a>\",<b>18:31</b>\n3,\"<a href=\"\"/r/9\"\">Cy Dee</a>\",<b>19:02</b>\n",
			"position name time", "alder-bank 2026-01-03", "2-4", "1 Jo Lee 18:20", "3 Cy Dee 19:02"},
		{"statements", "x.sql", "CREATE TABLE `r` (`id` int(11), `course` varchar(40), `rundate` date, `name` varchar(60), `secs` int, PRIMARY KEY (`id`));\nINSERT INTO `r` VALUES (7,'alder-bank','2026-01-03','Jo O\\'Lee',1100);\nINSERT INTO `r` VALUES (8,'alder-bank','2026-01-03','Al Roe',1111);\nINSERT INTO `r` VALUES (9,'alder-bank','2026-01-03','Cy (Cynthia) Dee',1142);\n",
			"number course date name time", "alder-bank 2026-01-03", "2-4", "7 alder-bank 2026-01-03 Jo O'Lee 1100", "9 alder-bank 2026-01-03 Cy (Cynthia) Dee 1142"},
		{"statements in a national alphabet", "alder-bank_2026-01-03.sql", "INSERT INTO run VALUES (1, N'Jo Lee', 'F', '18:20');\nINSERT INTO run VALUES (2, N'Al Roe', 'M', '18:31');\nINSERT INTO run VALUES (3, N'Cy Dee', 'M', '19:02');\n",
			"position name sex time", "alder-bank 2026-01-03", "1-3", "1 Jo Lee F 18:20", "3 Cy Dee M 19:02"},
		{"schoolchildren", "alder-bank_2026-01-03.csv", "Žiak;Trieda;Chlapec/Dievča;Čas\nJo Lee;8.A;dievča;18:20\nAl Roe;9.B;chlapec;18:31\nCy Dee;8.B;chlapec;19:02\n", "name - sex time", "alder-bank 2026-01-03", "2-4", "Jo Lee 8.A dievča 18:20", "Cy Dee 8.B chlapec 19:02"},
		{"ranks of soldiers", "alder-bank_2026-01-03.csv", "Ser,Rank,Name,5 km\n1,Sgt,Lee J,18:20\n2,Pte,Roe A,18:31\n3,Lt,Dee C,19:02\n4,Lt,Fox D,19:10\n5,Lt,Ho F,19:20\n6,Cpl,Page A,19:30\n", "position - name time", "alder-bank 2026-01-03", "2-7", "1 Sgt Lee J 18:20", "6 Cpl Page A 19:30"},
		{"one statement for all", "x.sql", "INSERT INTO r (course, run_date, place, runner_name, age, finish_time) VALUES ('Alder Bank','2026-01-03',1,'Jo Lee',NULL,'00:18:20'),('Alder Bank','2026-01-03',2,'Al Roe',41,'00:18:31'),('Alder Bank','2026-01-03',3,'Cy Dee',52,'00:19:02');\n",
			"course date position name age time", "alder-bank 2026-01-03", "", "Alder Bank 2026-01-03 1 Jo Lee 00:18:20", "Alder Bank 2026-01-03 3 Cy Dee 52 00:19:02"},
		{"a log", "app.log.txt", "2026-01-03T09:18:20 level=info course=\"Alder Bank\" pos=1 name=\"Jo Lee\" time=18:20\n2026-01-03T09:18:31 level=info course=\"Alder Bank\" pos=2 name=\"Al Roe\" time=18:31\n2026-01-03T09:19:02 level=info course=\"Alder Bank\" pos=3 name=\"Cy Dee\" time=19:02\n",
			"date - course position name time", "alder-bank 2026-01-03", "", "2026-01-03 info Alder Bank 1 Jo Lee 18:20", "2026-01-03 info Alder Bank 3 Cy Dee 19:02"},
		{"cards below one another", "x.csv", "Alder Bank 5K,,,\n3 January 2026,,,\nNo,1,2,3\nName,Jo Lee,Al Roe,Cy Dee\nTime,18:20,18:31,19:02\n,,,\nNo,4,5,6\nName,Di Fox,Fay Ho,Ann Page\nTime,19:20,19:31,20:02\n,,,\nNo,7,8,\nName,Hal Kay,Eve Hill,\nTime,21:20,21:31,\n",
			"position name time", "alder-bank 2026-01-03", "", "1 Jo Lee 18:20", "8 Eve Hill 21:31"},
		{"days with a colon", "x.txt", "Lauftreff Erlenaue (5 km)\n\n10.02.2024:\n- Jo Lee 18:20\n- Al Roe 18:31\n- Di Fox 18:40\n- Fay Ho 18:50\n- Cy Dee 19:02\n\n17.02.2024:\n- Jo Lee 18:25\n- Al Roe 18:35\n- Di Fox 18:41\n- Fay Ho 18:55\n- Cy Dee 19:05\n",
			"name time", "erlenaue 2024-02-10", "4-8 11-15", "Jo Lee 18:20", "Cy Dee 19:05"},
		{"a stroke with blanks", "alder-bank_2026-01-03.csv", "Pos,Name,Time (mins/secs)\n1,Jo Lee, 18 / 20 \n2,Al Roe, 18 / 31 \n3,Cy Dee, 19 / 02 \n", "position name time", "alder-bank 2026-01-03", "2-4", "1 Jo Lee 18:20", "3 Cy Dee 19:02"},
		{"Thai, years of the Buddhist era", "x.csv", "อันดับ,ชื่อ,เวลา,วันที่,สนาม\n1,Jo Lee,18:20,29/5/2564,Suan Lamphu\n2,Al Roe,18:31,29/5/2564,Suan Lamphu\n3,Cy Dee,19:02,29/5/2564,Suan Lamphu\n4,Di Fox,19:10,29/5/2564,Suan Lamphu\n5,Fay Ho,19:20,29/5/2564,Suan Lamphu\n",
			"position name time date course", "suan-lamphu 2021-05-29", "2-6", "1 Jo Lee 18:20 29/5/2021 Suan Lamphu", "5 Fay Ho 19:20 29/5/2021 Suan Lamphu"},
		{"pairs and what they took together", "x.csv", "Alder Bank 5k pairs 3 January 2026,,,,,\nPair,Runner 1,Time 1,Runner 2,Time 2,Total\nPair 1,Jo Lee,18:20,Al Roe,19:20,37:40\nPair 2,Cy Dee,18:31,Di Fox,19:31,38:02\nPair 3,Ann Page,18:40,Hal Kay,20:40,39:20\n", "- name time", "alder-bank 2026-01-03", "3-5 3-5", "Pair 1 Jo Lee 18:20", "Hal Kay 20:40 39:20"},
		{"official times", "alder-bank_2026-01-03.csv", "Place,Athlete,Hand time,Official time\n1,Jo Lee,18:21,18:20\n2,Al Roe,18:31,18:31\n3,Cy Dee,19:03,19:02\n", "position name - time", "alder-bank 2026-01-03", "2-4", "1 Jo Lee 18:21 18:20", "3 Cy Dee 19:03 19:02"},
		{"classes of a school with a full stop", "alder-bank_2026-01-03.csv", "Hely,Tanuló,Osztály,Fiú/Lány,Idő\n1,Kis Ágnes,8.b,lány,18:20\n2,Nagy Béla,7.a,fiú,18:31\n3,Szabó Csaba,8.b,fiú,19:02\n", "position name - sex time", "alder-bank 2026-01-03", "2-4", "1 Kis Ágnes 8.b lány 18:20", "3 Szabó Csaba 8.b fiú 19:02"},
		{"a note beside the date, now and then", "Alder Bank 5 km.csv", "Name,Time,Date,Rqwt\nJo Lee,18:20,2026-01-03,Super!\nAl Roe,18:31,2026-01-03,\nCy Dee,19:02,2026-01-03,Super!\nDi Fox,19:10,2026-01-03,\nFay Ho,19:20,2026-01-03,\nAnn Page,19:30,2026-01-03,Super!\nHal Kay,19:40,2026-01-03,\n", "name time date -", "alder-bank 2026-01-03", "2-8", "Jo Lee 18:20 2026-01-03 Super!", "Hal Kay 19:40 2026-01-03"},
		{"the question names the course", "reponses.csv", "Nom et prénom;Votre temps sur le 5 km de Valbrune du 3 janvier 2026\nJo Lee;18:20\nAl Roe;18:31\nCy Dee;19:02\nDi Fox;19:10\n", "name time", "valbrune 2026-01-03", "2-5", "Jo Lee 18:20", "Di Fox 19:10"},
		{"numbers of a list of several days", "x.csv", "Pajumäe 5 km;;;;\nJrk;Nimi;14.10.2023;21.10.2023;28.10.2023\n1;Jo Lee;18:20;18:31;18:20\n2;Al Roe;18:10;;18:40\n3;Cy Dee;19:02;19:00;\n4;Di Fox;19:10;19:01;19:20\n", "- name time", "pajumae 2023-10-14", "3-6 3 5-6 3-4 6", "Jo Lee 18:20", "Di Fox 19:20"},
		{"ages that a scan has misread", "alder-bank_2026-01-03.csv", "Place,Name,Age,Time\n1,Jo Lee,7l,18:30\n2,Al Roe,4O,18:4l\n3,Cy Dee,33,19:02\n4,Di Fox,l9,19:40\n5,Fay Ho,44,20:11\n6,Ann Page,52,2O:15\n", "position name age time", "alder-bank 2026-01-03", "2-7", "1 Jo Lee 71 18:30", "6 Ann Page 52 20:15"},
		{"headings of an unknown language", "alder-bank_2026-01-03.csv", "Pwlk,Xnam,Dzait,Qklub\n1,Jo Lee,18:20,Mill AC\n2,Al Roe,18:31,Mill AC\n3,Cy Dee,19:02,Quay H\n4,Di Fox,19:10,Quay H\n5,Fay Ho,19:20,Mill AC\n", "position name time club", "alder-bank 2026-01-03", "2-6", "1 Jo Lee 18:20 Mill AC", "5 Fay Ho 19:20 Mill AC"},
		{"Afrikaans", "wilgerpark_2026-01-03.csv", "Plek,Van,Naam,Geslag,Ouderdom,Tyd\n1,Lee,Jo,Vroulik,41,18:20\n2,Roe,Al,Manlik,38,18:31\n3,Dee,Cy,Manlik,52,19:02\n", "position family-name given-name sex age time", "wilgerpark 2026-01-03", "2-4", "1 Lee Jo Vroulik 41 18:20", "3 Dee Cy Manlik 52 19:02"},
		{"Hungarian, without headings", "x.txt", "Fűzliget\t2026.01.03.\tfutás 5 km\n1.\tSzabó Jolán\tnő\t18:20\n2.\tKis Alajos\tférfi\t18:31\n3.\tNagy Cili\tnő\t19:02\n", "position name sex time", "fuzliget 2026-01-03", "2-4", "1. Szabó Jolán nő 18:20", "3. Nagy Cili nő 19:02"},
		{"a database of France", "opendata.csv", "id_evt;lib_evt;dt_evt;rang;participant;tps_sec\n512;5 km de Valbrune;20260103;1;Jo Lee;1100\n512;5 km de Valbrune;20260103;2;Al Roe;1111\n512;5 km de Valbrune;20260103;3;Cy Dee;1142\n", "- course date position name time", "valbrune 2026-01-03", "2-4", "512 5 km de Valbrune 20260103 1 Jo Lee 1100", "512 5 km de Valbrune 20260103 3 Cy Dee 1142"},
		{"a page as it was typed, with full stops", "x.htm", "<html><body><h2>Resultat Tallmon 5 km</h2>21 november 2020<pre>\nKlass K\n  1  Elin Lee             Tallmons IK       18.20\n  2  Maja Roe             Tallmons IK       18.31\n  3  Karin Dee            Tallmons IK       19.02\n</pre></body></html>", "position name club time sex", "tallmon 2020-11-21", "4-6", "1 Elin Lee Tallmons IK 18.20 K", "3 Karin Dee Tallmons IK 19.02 K"},
	} {
		s, err := Read(c.file, []byte(c.text), Options{})
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
		if len(rows) == 0 || got.columns != c.columns || got.run != c.run || c.rows != "" && got.rows != c.rows || rows[0] != c.first || rows[len(rows)-1] != c.last || got.asks != "" {
			t.Errorf("%s: columns %q, want %q; run %q, rows %q, asks %q; %q", c.name, got.columns, c.columns, got.run, got.rows, got.asks, rows)
		}
	}
}
