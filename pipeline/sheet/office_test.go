package sheet

import "testing"

// officeCases are lists as offices, federations and clubs of many countries head them.
var officeCases = []sheetCase{
	{name: "the office, its address and the race below", file: "ergebnis",
		text:    "MARKTGEMEINDE OBERSTEIN AN DER ACHE\n4711 Oberstein, Hauptplatz 1, gemeinde@oberstein.example\n17. Marktlauf – offizielle Ergebnisliste\nOberstein, am 3. Jänner 2026\nRang|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "marktlauf 2026-01-03", rows: "6-7"},
	{name: "the office stands in one word, the race begins with a small letter", file: "urslit",
		text:    "Íþróttabandalag Fjarðar\nBeh lúkami\n3. janúar 2026\nSæti|Nafn|Tími\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "lukami 2026-01-03", rows: "5-6"},
	{name: "the town of the office and the day below the race", file: "classificacao",
		text:    "CÂMARA MUNICIPAL DE MONTALTO\nCorrida da Ribeira\nMontalto, 3 de janeiro de 2026\nLugar|Nome|Tempo\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "ribeira 2026-01-03", rows: "5-6"},
	{name: "nothing but the office", file: "uitslag",
		text:    "Gemeente Alder Bank\n3 januari 2026\nPlaats|Naam|Tijd\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "gemeente-alder-bank 2026-01-03", rows: "4-5"},
	{name: "a place and the day, with no office above", file: "results",
		text:    "Winter Jubilee\nAlder Bank, 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "small words before the distance", file: "wyniki",
		text:    "XI Bieg Orli na 5 km\n3 stycznia 2026\nMiejsce|Nazwisko|Czas\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "orli 2026-01-03", rows: "4-5"},
	{name: "first and second family names by number", file: "alder-bank_2026-01-03",
		text:    "puesto|nombre|apellido1|apellido2|marca\n1|Jo|Lee|Oak|18:20\n2|Al|Roe|Elm|18:31\n3|Cy|Dee|Ash|19:02\n",
		columns: "position given-name family-name - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a gap in points below the winner's dash is no day", file: "x",
		text:    "Alder Bank, 3 janvier 2026\nHommes\nRang|Nom|Temps|Retard\n1.|Jo Lee|21.00,0|-----\n2.|Al Roe|23.08,3|2.08,3\n3.|Cy Dee|24.06,5|3.06,5\nDames\nRang|Nom|Temps|Retard\n1.|Di Fox|24.10,0|-----\n2.|Fi Hay|25.10,0|1.00,0\n",
		columns: "position name time gap sex", run: "alder-bank 2026-01-03", rows: "4-6 9-10"},
	{name: "wide gaps in the head and below the list", file: "verbale.txt", only: "text",
		text: "VERBALE DI GARA: Alder Bank\nFiumana, 03/01/2026    Ora partenza: 9.30    Cielo sereno\n\n" +
			"CLASS PETT  COGNOME NOME      S  ANNO  TEMPO\n" +
			"1     18    FABBRI Gianluca   M  1956  16:23.1\n2     25    BRUNI Noemi       F  1983  16:54.2\n3     126   SALA Andrea       M  1965  17:07.3\n4     220   RIVA Roberto      M  1977  17:23.0\n5     111   COSTA Paola       F  1973  18:10.9\n" +
			"I giudici: P. Villa (firma)   E. Sala (firma)   R. Costa\n",
		columns: "position number name sex birth-year time", run: "alder-bank 2026-01-03", rows: "5-9"},
	{name: "Basque headings, sexes and day", file: "emaitzak",
		text:    "Ibai Lasterketa\n2026ko urtarrilaren 3a, larunbata\nPostua|Zenbakia|Izena|Abizenak|Sexua|Jaiotze urtea|Taldea|Denbora\n1|31|Jo|Lee|Gizona|1986|Mendi|18:20\n2|12|Al|Roe|Emakumea|1990|Ibai|18:31\n",
		columns: "position number given-name family-name sex birth-year club time", run: "ibai-lasterketa 2026-01-03", rows: "4-5"},
	{name: "a month behind an apostrophe", file: "x",
		text:    "Font Vella\nDissabte, 8 d'agost de 2026\nLloc|Nom|Temps\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "font-vella 2026-08-08", rows: "4-5"},
	{name: "Irish men and women over their lists", file: "torthai",
		text:    "Comhairle Contae an Ghleanna\nRith na hAbhann\n3/1/2026, Dé Sathairn\nFIR / MEN\nÁit|Ainm|Am\n1|Jo Lee|18:20\n2|Al Roe|18:31\nMNÁ / WOMEN\nÁit|Ainm|Am\n1|Di Fox|20:20\n2|Fi Hay|21:31\n",
		columns: "position name time sex", run: "rith-na-habhann 2026-01-03", rows: "6-7 10-11"},
	{name: "the second half of the names under a heading that is not known", file: "alder-bank_2026-01-03",
		text:    "Месца|Прозвішча|Імя|Пол|Вынік\n1|Гурын|Андрэй|м|18:20\n2|Вашкевіч|Святлана|ж|18:31\n3|Крук|Васіль|м|19:02\n4|Жук|Марыя|ж|19:40\n5|Дубіна|Іван|м|20:11\n6|Новік|Ганна|ж|20:40\n7|Лях|Юрась|м|20:50\n8|Шыла|Пятро|м|20:58\n9|Мароз|Вольга|ж|21:40\n10|Кавалёў|Алесь|м|22:40\n11|Каваль|Ірына|ж|23:40\n12|Зайчык|Алена|ж|24:40\n",
		columns: "position family-name given-name sex time", run: "alder-bank 2026-01-03", rows: "2-13"},
	{name: "a town beside given names is no family name", file: "alder-bank_2026-01-03",
		text:    "Pos|First name|Vendbanim|Time\n1|Jo|Vale|18:20\n2|Al|Mill|18:31\n3|Cy|Vale|19:02\n4|Di|Vale|19:40\n5|Ed|Mill|20:11\n6|Fi|Fell|20:40\n7|Gus|Fell|20:50\n8|Hal|Mill|21:01\n9|Ida|Vale|21:10\n10|Jay|Mill|21:20\n11|Kim|Fell|21:30\n12|Lou|Mill|21:40\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-13"},
	{name: "labels in two languages are no course", file: "ergebnisse",
		text:    "Dorflauf - Corsa paesana\nDatum/Data: 03.01.2026\nStart/Partenza: 10:00\nRg.|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "dorflauf 2026-01-03 10:00", rows: "5-6"},
	{name: "a weekday of a small language", file: "urslit",
		text:    "Havnarrenningin\nleygardagin 3. januar 2026\nNr.|Navn|Tíð\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "havnarrenningin 2026-01-03", rows: "4-5"},
	{name: "a day with a small word behind it", file: "rizultati",
		text:    "Ġirja tax-Xatt\nIs-Sibt, 3 ta' Jannar 2026\nPost|Isem|Ħin\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "girja-tax-xatt 2026-01-03", rows: "4-5"},
}

func TestOfficeSheets(t *testing.T) {
	for _, c := range officeCases {
		for _, form := range []string{".csv", ".xlsx"} {
			data := c.asText()
			if form == ".xlsx" {
				if c.only == "text" {
					continue
				}
				data = c.asWorkbook(t)
			}
			t.Run(c.name+" as "+form, func(t *testing.T) {
				s, err := Read(c.file+form, data, c.o)
				if err != nil {
					t.Fatal(err)
				}
				if got := outcome(s); got.columns != c.columns || got.run != c.run || got.rows != c.rows || got.asks != c.asks {
					t.Errorf("columns %q, want %q; run %q, want %q; rows %q, want %q; asks %q", got.columns, c.columns, got.run, c.run, got.rows, c.rows, got.asks)
				}
			})
		}
	}
}
