package sheet

// keptBooks are workbooks as clubs, schools and offices keep them from week to week, of kinds that
// were misread when they were first met.
var keptBooks = []bookCase{
	{"teams under numbered scorers", "results", `== Results
Alder Bank, 3 January 2026
Pos|Name|Club|Time
1|Jo Lee|Vale RC|18:20
2|Al Roe|Mill AC|18:31
3|Cy Dee|Vale RC|19:02
4|Di Fox|Mill AC|19:20
== Wyniki 2
Poř.|Klub|1|2|3|Celkem|Čas
1|Vale RC|1|3|5|9|56:20
2|Mill AC|2|4|6|12|57:31
`, `Results!3 alder-bank 2026-01-03 Jo Lee 18:20
Results!4 alder-bank 2026-01-03 Al Roe 18:31
Results!5 alder-bank 2026-01-03 Cy Dee 19:02
Results!6 alder-bank 2026-01-03 Di Fox 19:20
`},
	{"the scorers of each club once more under its name", "results", `== Results
Alder Bank, 3 January 2026
Pos|Name|Club|Time
1|Jo Lee|Vale Runners|18:20
2|Al Roe|Mill Harriers|18:31
3|Cy Dee|Vale Runners|19:02
4|Di Fox|Mill Harriers|19:20
== Teams
Vale Runners
1|Jo Lee|18:20
3|Cy Dee|19:02
Mill Harriers
2|Al Roe|18:31
4|Di Fox|19:20
`, `Results!3 alder-bank 2026-01-03 Jo Lee 18:20
Results!4 alder-bank 2026-01-03 Al Roe 18:31
Results!5 alder-bank 2026-01-03 Cy Dee 19:02
Results!6 alder-bank 2026-01-03 Di Fox 19:20
`},
	{"a club that hosts a run of its own on another tab", "results", `== Results
Alder Bank, 3 January 2026
Pos|Name|Club|Time
1|Jo Lee|Vale Harriers|18:20
2|Al Roe|Mill AC|18:31
3|Cy Dee|Vale Harriers|19:02
== 10 Jan
Vale Harriers, 10 January 2026
Pos|Name|Time
1|Ed Gow|18:40
2|Gus Ing|20:12
3|Hal Job|20:30
`, `Results!3 alder-bank 2026-01-03 Jo Lee 18:20
Results!4 alder-bank 2026-01-03 Al Roe 18:31
Results!5 alder-bank 2026-01-03 Cy Dee 19:02
10 Jan!3 vale-harriers 2026-01-10 Ed Gow 18:40
10 Jan!4 vale-harriers 2026-01-10 Gus Ing 20:12
10 Jan!5 vale-harriers 2026-01-10 Hal Job 20:30
`},
	{"means and the slowest under words of no known language", "results", `== Sheet1
Alder Bank, 3 January 2026
Pos|Name|Time
1|Jo Lee|0:18:20
2|Al Roe|0:18:31
3|Cy Dee|0:19:02
4|Di Fox|0:19:20
5|Ed Gow|0:20:30
|Poprečno Ljudi|0:19:08.6
6|Gus Ing|0:21:00
7|Hal Job|0:21:20
|Brzi Trkač|0:18:20
|Spori Trkač|0:21:20
`, `Sheet1!3 alder-bank 2026-01-03 Jo Lee 0:18:20
Sheet1!4 alder-bank 2026-01-03 Al Roe 0:18:31
Sheet1!5 alder-bank 2026-01-03 Cy Dee 0:19:02
Sheet1!6 alder-bank 2026-01-03 Di Fox 0:19:20
Sheet1!7 alder-bank 2026-01-03 Ed Gow 0:20:30
Sheet1!9 alder-bank 2026-01-03 Gus Ing 0:21:00
Sheet1!10 alder-bank 2026-01-03 Hal Job 0:21:20
`},
	{"somebody without a place among the others is no mean", "results", `== Sheet1
Alder Bank, 3 January 2026
Pos|Name|Time
1|Jo Lee|0:18:20
2|Al Roe|0:18:31
3|Cy Dee|0:19:02
4|Di Fox|0:19:20
5|Ed Gow|0:20:30
|Ivy Kay|0:20:30
6|Gus Ing|0:21:00
7|Hal Job|0:21:20
`, `Sheet1!3 alder-bank 2026-01-03 Jo Lee 0:18:20
Sheet1!4 alder-bank 2026-01-03 Al Roe 0:18:31
Sheet1!5 alder-bank 2026-01-03 Cy Dee 0:19:02
Sheet1!6 alder-bank 2026-01-03 Di Fox 0:19:20
Sheet1!7 alder-bank 2026-01-03 Ed Gow 0:20:30
Sheet1!8 alder-bank 2026-01-03 Ivy Kay 0:20:30
Sheet1!9 alder-bank 2026-01-03 Gus Ing 0:21:00
Sheet1!10 alder-bank 2026-01-03 Hal Job 0:21:20
`},
	{"sums of the men and of the women between the rows", "results", `== Blad1
Alder Bank, 3 januari 2026
Plac.|Namn|Tid
Herrar
1|Al Roe|18:20
2|Cy Dee|19:02
|Summa Herrar|18:41
Damer
1|Jo Lee|18:31
2|Di Fox|21:20
|Total mujeres|19:55
`, `Blad1!4 alder-bank 2026-01-03 Al Roe 18:20 Herrar
Blad1!5 alder-bank 2026-01-03 Cy Dee 19:02 Herrar
Blad1!8 alder-bank 2026-01-03 Jo Lee 18:31 Damer
Blad1!9 alder-bank 2026-01-03 Di Fox 21:20 Damer
`},
	{"the runs of each runner under the name", "results", `== Sheet1
Alder Bank

Jo Lee (Vale RC)
Date|Place|Time
2026-01-03|4|18:20
2026-01-10|6|18:40

Al Roe
Date|Place|Time
2026-01-03|5|18:31
2026-01-17|9|18:50

Cy Dee
Date|Place|Time
2026-01-10|11|19:02
2026-01-17|8|18:48
`, `Sheet1!5 alder-bank 2026-01-03 Jo Lee 18:20
Sheet1!6 alder-bank 2026-01-10 Jo Lee 18:40
Sheet1!10 alder-bank 2026-01-03 Al Roe 18:31
Sheet1!11 alder-bank 2026-01-17 Al Roe 18:50
Sheet1!15 alder-bank 2026-01-10 Cy Dee 19:02
Sheet1!16 alder-bank 2026-01-17 Cy Dee 18:48
`},
	{"the runs of each runner under the name, one heading above all", "results", `== Sheet1
Datum|Platz|Zeit
Jo Lee
03.01.2026|4|18:20
10.01.2026|6|18:40
Al Roe
03.01.2026|5|18:31
17.01.2026|9|18:50
Cy Dee
10.01.2026|11|19:02
17.01.2026|8|18:48
Erlenbruch
`, `Sheet1!3  2026-01-03 Jo Lee 18:20
Sheet1!4  2026-01-10 Jo Lee 18:40
Sheet1!6  2026-01-03 Al Roe 18:31
Sheet1!7  2026-01-17 Al Roe 18:50
Sheet1!9  2026-01-10 Cy Dee 19:02
Sheet1!10  2026-01-17 Cy Dee 18:48
`},
	{"a tab for each runner, who ran two courses", "season", `== Jo Lee
Date|Course|Place|Time
2026-01-03|Alder Bank|4|18:20
2026-01-10|Alder Bank|6|18:40
2026-01-17|Ember Quay|3|18:30
2026-01-24|Alder Bank|9|18:50
2026-01-31|Ember Quay|8|18:35
== Al Roe
Date|Course|Place|Time
2026-01-03|Alder Bank|5|18:31
2026-01-10|Alder Bank|7|18:42
== Cy Dee
Date|Course|Place|Time
2026-01-03|Alder Bank|6|18:41
2026-01-17|Ember Quay|8|18:52
`, `Jo Lee!2 alder-bank 2026-01-03 Jo Lee 18:20
Jo Lee!3 alder-bank 2026-01-10 Jo Lee 18:40
Jo Lee!4 ember-quay 2026-01-17 Jo Lee 18:30
Jo Lee!5 alder-bank 2026-01-24 Jo Lee 18:50
Jo Lee!6 ember-quay 2026-01-31 Jo Lee 18:35
Al Roe!2 alder-bank 2026-01-03 Al Roe 18:31
Al Roe!3 alder-bank 2026-01-10 Al Roe 18:42
Cy Dee!2 alder-bank 2026-01-03 Cy Dee 18:41
Cy Dee!3 ember-quay 2026-01-17 Cy Dee 18:52
`},
	{"walkers who stroll, and children", "results", `== 5 km
Alder Bank, 3 January 2026
Pos|Name|Time
1|Jo Lee|21:20
2|Al Roe|25:31
3|Cy Dee|27:02
== Chodci 3 km
Chodci 3 km – Alder Bank, 3 January 2026
Pos|Name|Time
1|Di Fox|33:20
2|Ed Gow|37:20
3|Gus Ing|41:20
== Children 1 km
Children 1 km – Alder Bank, 3 January 2026
Pos|Name|Time
1|Hal Job|4:20
2|Ivy Kay|4:50
3|Len Moe|5:20
`, `5 km!3 alder-bank 2026-01-03 Jo Lee 21:20
5 km!4 alder-bank 2026-01-03 Al Roe 25:31
5 km!5 alder-bank 2026-01-03 Cy Dee 27:02
Chodci 3 km!3 alder-bank 2026-01-03 Di Fox 33:20
Chodci 3 km!4 alder-bank 2026-01-03 Ed Gow 37:20
Chodci 3 km!5 alder-bank 2026-01-03 Gus Ing 41:20
Children 1 km!3 alder-bank 2026-01-03 Hal Job 4:20
Children 1 km!4 alder-bank 2026-01-03 Ivy Kay 4:50
Children 1 km!5 alder-bank 2026-01-03 Len Moe 5:20
`},
	{"times that were predicted and those that were run", "alder-bank_2026-01-03", `== Uitslagen
Plaats|Naam|Voorspelde tijd|Gelopen tijd|Verschil
1|Jo Lee|18:26|18:20|0:06
2|Al Roe|18:22|18:31|0:09
3|Cy Dee|19:17|19:02|0:15
`, `Uitslagen!2 alder-bank 2026-01-03 Jo Lee 18:20
Uitslagen!3 alder-bank 2026-01-03 Al Roe 18:31
Uitslagen!4 alder-bank 2026-01-03 Cy Dee 19:02
`},
	{"the clock at the finish and the time of each", "alder-bank_2026-01-03", `== Ergebnisse
Platz|Name|Vorgabe|Zieluhr|Laufzeit
1|Jo Lee|03:30|22:19|18:49
2|Al Roe|01:30|22:32|21:02
3|Cy Dee|06:30|23:12|16:42
4|Di Fox|00:00|23:20|23:20
5|Ed Gow|00:30|27:20|26:50
`, `Ergebnisse!2 alder-bank 2026-01-03 Jo Lee 18:49
Ergebnisse!3 alder-bank 2026-01-03 Al Roe 21:02
Ergebnisse!4 alder-bank 2026-01-03 Cy Dee 16:42
Ergebnisse!5 alder-bank 2026-01-03 Di Fox 23:20
Ergebnisse!6 alder-bank 2026-01-03 Ed Gow 26:50
`},
	{"minutes and seconds in columns under Welsh headings", "alder-bank_2026-01-03", `== Canlyniadau
Lle|Enw|Mun|Eil
1|Jo Lee|18|20
2|Al Roe|18|31
3|Cy Dee|19|02
`, `Canlyniadau!2 alder-bank 2026-01-03 Jo Lee 18:20
Canlyniadau!3 alder-bank 2026-01-03 Al Roe 18:31
Canlyniadau!4 alder-bank 2026-01-03 Cy Dee 19:02
`},
	{"a weekday and a run in one word before the place", "results", `== Uitslagen
5 km zaterdagloop Hoge Berken, 3 januari 2026
Plaats|Naam|Tijd
1|Jo Lee|18:20
2|Al Roe|18:31
`, `Uitslagen!3 hoge-berken 2026-01-03 Jo Lee 18:20
Uitslagen!4 hoge-berken 2026-01-03 Al Roe 18:31
`},
	{"such a word where nothing else names the run", "results", `== Ergebnisse
Samstagslauf 3. Januar 2026
Platz|Name|Zeit
1|Jo Lee|18:20
2|Al Roe|18:31
`, `Ergebnisse!3 samstagslauf 2026-01-03 Jo Lee 18:20
Ergebnisse!4 samstagslauf 2026-01-03 Al Roe 18:31
`},
	{"a tab for each group, of which one looks like a day of October", "alder-bank_2026-01-03", `== F10-19
Pos|Name|Time
1|Jo Lee|18:20
2|Al Roe|18:31
== M11-14
Pos|Name|Time
1|Cy Dee|19:20
2|Di Fox|19:31
== M26-50
Pos|Name|Time
26|Ed Gow|20:20
27|Gus Ing|20:31
`, `F10-19!2 alder-bank 2026-01-03 Jo Lee 18:20 F10-19
F10-19!3 alder-bank 2026-01-03 Al Roe 18:31 F10-19
M11-14!2 alder-bank 2026-01-03 Cy Dee 19:20 M11-14
M11-14!3 alder-bank 2026-01-03 Di Fox 19:31 M11-14
M26-50!2 alder-bank 2026-01-03 Ed Gow 20:20
M26-50!3 alder-bank 2026-01-03 Gus Ing 20:31
`},
	{"runs by number in columns, their days and courses on a calendar", "season", `== Kalendář
Závod|Datum|Místo
1|03.01.2026|Alder Bank
2|10.01.2026|Ember Quay
3|17.01.2026|Alder Bank
== Výsledky
Jméno|Závod 1|Závod 2|Závod 3
Jo Lee|18:20|18:40|18:30
Al Roe|18:31||18:50
Cy Dee||19:02|18:48
`, `Výsledky!2 alder-bank 2026-01-03 Jo Lee 18:20
Výsledky!3 alder-bank 2026-01-03 Al Roe 18:31
Výsledky!2 ember-quay 2026-01-10 Jo Lee 18:40
Výsledky!4 ember-quay 2026-01-10 Cy Dee 19:02
Výsledky!2 alder-bank 2026-01-17 Jo Lee 18:30
Výsledky!3 alder-bank 2026-01-17 Al Roe 18:50
Výsledky!4 alder-bank 2026-01-17 Cy Dee 18:48
`},
	{"places of a season under more days than other headings", "Alder Bank", `== Klassement
Alder Bank Klassement

Pl.|Naam|2026-01-03|2026-01-10|2026-01-17|2026-01-24|Totaal
1|Jo Lee|1|2|1|1|5
2|Al Roe|2||3|2|7
3|Cy Dee||1|2|3|6
== 2026-01-03
Pl.|Naam|Tijd
1|Jo Lee|18:20
2|Al Roe|18:31
== 2026-01-10
Pl.|Naam|Tijd
1|Cy Dee|19:02
2|Jo Lee|19:20
`, `2026-01-03!2 alder-bank 2026-01-03 Jo Lee 18:20
2026-01-03!3 alder-bank 2026-01-03 Al Roe 18:31
2026-01-10!2 alder-bank 2026-01-10 Cy Dee 19:02
2026-01-10!3 alder-bank 2026-01-10 Jo Lee 19:20
`},
	{"corrected times on the rows that have one", "alder-bank_2026-01-03", `== Ergebnisse
Platz|Name|Zeit|Korrigierte Zeit
1|Jo Lee|18:20
2|Al Roe|18:31|18:29
3|Cy Dee|19:02
4|Di Fox|19:20
`, `Ergebnisse!2 alder-bank 2026-01-03 Jo Lee 18:20
Ergebnisse!3 alder-bank 2026-01-03 Al Roe 18:29
Ergebnisse!4 alder-bank 2026-01-03 Cy Dee 19:02
Ergebnisse!5 alder-bank 2026-01-03 Di Fox 19:20
`},
	{"the days of the bests behind the times of one day", "results", `== Results
Alder Bank, 3 January 2026
Pos|Name|Time|Best|Date
1|Jo Lee|18:20|18:02|2025-09-06
2|Al Roe|18:31|18:31|2026-01-03
3|Cy Dee|19:02|18:40|2025-04-12
4|Di Fox|19:20|19:01|2024-07-13
5|Ed Gow|20:30|19:59|2025-02-01
== Ever
Alder Bank
Pos|Name|Time|Best|Date
1|Jo Lee|18:02|18:02|2025-09-06
2|Al Roe|18:31|18:31|2026-01-03
3|Cy Dee|18:40|18:40|2025-04-12
4|Di Fox|19:01|19:01|2024-07-13
5|Ed Gow|19:59|19:59|2025-02-01
`, `Results!3 alder-bank 2026-01-03 Jo Lee 18:20
Results!4 alder-bank 2026-01-03 Al Roe 18:31
Results!5 alder-bank 2026-01-03 Cy Dee 19:02
Results!6 alder-bank 2026-01-03 Di Fox 19:20
Results!7 alder-bank 2026-01-03 Ed Gow 20:30
`},
	{"a cover with the place and, on a line of its own, the weekday's run", "results", `== Voorblad

|Duinrand Noord
|5 km zaterdagloop
|zaterdag 3 januari 2026
== Uitslagen
Plaats|Naam|Tijd
1|Jo Lee|18:20
2|Al Roe|18:31
`, `Uitslagen!2 duinrand-noord 2026-01-03 Jo Lee 18:20
Uitslagen!3 duinrand-noord 2026-01-03 Al Roe 18:31
`},
	{"entries beside the finish under lines that name both, who did not start among them", "results", `== Desk
Alder Bank 5k, 3 January 2026
ENTRIES|||||FINISH
Bib|Name|M/F|Cat||Place|Number|Time
11|Jo Lee|F|W40||1|13|18:20
12|Al Roe|M|M45||2|11|18:31
13|Cy Dee|M|M50||3|14|19:02
14|Di Fox|F|W35||4|15|19:20
15|Ed Gow|M|M60|||
`, `Desk!4 alder-bank 2026-01-03 Cy Dee 18:20 M M50
Desk!5 alder-bank 2026-01-03 Jo Lee 18:31 F W40
Desk!6 alder-bank 2026-01-03 Di Fox 19:02 F W35
Desk!7 alder-bank 2026-01-03 Ed Gow 19:20 M M60
Desk!8 alder-bank 2026-01-03 Al Roe M M45
`},
	{"names in the order of the alphabet", "alder-bank_2026-01-03", `== Results
Name (A-Z)|Age group|Time|Place
Al Roe|Men 45-49|18:31|2
Cy Dee|Men 50-54|19:02|3
Di Fox|Women 35-39|19:20|4
Jo Lee|Women 40-44|18:20|1
`, `Results!2 alder-bank 2026-01-03 Al Roe 18:31 Men 45-49
Results!3 alder-bank 2026-01-03 Cy Dee 19:02 Men 50-54
Results!4 alder-bank 2026-01-03 Di Fox 19:20 Women 35-39
Results!5 alder-bank 2026-01-03 Jo Lee 18:20 Women 40-44
`},
	{"place and day among the settings", "results", `== Settings
Venue|Alder Bank
Distance|5 km
Run date|3 January 2026
Status|OK|DNF
== Results
Pos|Name|Time
1|Jo Lee|18:20
2|Al Roe|18:31
`, `Results!2 alder-bank 2026-01-03 Jo Lee 18:20
Results!3 alder-bank 2026-01-03 Al Roe 18:31
`},
	{"place beside day at the head of a tab of figures", "club book", `== Dashboard
Alder Bank 5k|3 January 2026
Finishers|2
Fastest|18:20
First|Jo Lee
== Raw
Pos|Name|Time
1|Jo Lee|18:20
2|Al Roe|18:31
`, `Raw!2 alder-bank 2026-01-03 Jo Lee 18:20
Raw!3 alder-bank 2026-01-03 Al Roe 18:31
`},
	{"a season of two figures each in the tab, over days without a year", "Alder Bank", `== Season 25-26
||20-Dec|27-Dec|3-Jan
First|Last|Time|Time|Time
Jo|Lee|18:20|18:31|-
Al|Roe|18:31|-|18:40
Cy|Dee|19:02|19:10|19:20
`, `Season 25-26!3 alder-bank 2025-12-20 18:20
Season 25-26!4 alder-bank 2025-12-20 18:31
Season 25-26!5 alder-bank 2025-12-20 19:02
Season 25-26!3 alder-bank 2025-12-27 18:31
Season 25-26!5 alder-bank 2025-12-27 19:10
Season 25-26!4 alder-bank 2026-01-03 18:40
Season 25-26!5 alder-bank 2026-01-03 19:20
`},
	{"days of the month over the times, the month and two figures of the year in the tab", "results", `== Jan-26
Alder Bank 5k
Name|3rd|10th|17th|Avg
Jo Lee|18:20|18:31||18:25
Al Roe|18:31||18:40|18:35
Cy Dee||19:10|19:20|19:15
`, `Jan-26!3 alder-bank 2026-01-03 Jo Lee 18:20
Jan-26!4 alder-bank 2026-01-03 Al Roe 18:31
Jan-26!3 alder-bank 2026-01-10 Jo Lee 18:31
Jan-26!5 alder-bank 2026-01-10 Cy Dee 19:10
Jan-26!4 alder-bank 2026-01-17 Al Roe 18:40
Jan-26!5 alder-bank 2026-01-17 Cy Dee 19:20
`},
	{"day and month in figures over lists, the year in the title", "results", `== Sheet1
Alder Bank 5k 2026

10/01
Pos|Name|Time
1|Jo Lee|18:20
2|Al Roe|18:31
3|Cy Dee|19:02

|||||17/01
|||||Pos|Name|Time
|||||1|Al Roe|18:30
|||||2|Jo Lee|18:40
|||||3|Cy Dee|19:12
`, `Sheet1!5 alder-bank 2026-01-10 Jo Lee 18:20
Sheet1!6 alder-bank 2026-01-10 Al Roe 18:31
Sheet1!7 alder-bank 2026-01-10 Cy Dee 19:02
Sheet1!11 alder-bank 2026-01-17 Al Roe 18:30
Sheet1!12 alder-bank 2026-01-17 Jo Lee 18:40
Sheet1!13 alder-bank 2026-01-17 Cy Dee 19:12
`},
	{"the same list with initials for the board", "Alder Bank 2026-01-03", `== Full
Pos|First name|Surname|Sex|Time
1|Jo|Lee|F|18:20
2|Al|Roe|M|18:31
3|Cy|Dee|M|19:02
4|Di|Fox|F|19:20
== Noticeboard
Pos|Name|Time
1|J Lee|18:20
2|A Roe|18:31
3|C Dee|19:02
4|D Fox|19:20
`, `Full!2 alder-bank 2026-01-03 18:20 F
Full!3 alder-bank 2026-01-03 18:31 M
Full!4 alder-bank 2026-01-03 19:02 M
Full!5 alder-bank 2026-01-03 19:20 F
`},
	{"a tab a runner, of few runs", "Alder Bank", `== Jo Lee
Runner|Jo Lee
Sex|Female

Date|Course|Pos|Time
3 Jan 2026|Alder Bank|4|18:20
10 Jan 2026|Alder Bank|3|18:31
== Al Roe
Runner|Al Roe
Sex|Male

Date|Course|Pos|Time
3 Jan 2026|Alder Bank|9|19:20
`, `Jo Lee!5 alder-bank 2026-01-03 Jo Lee 18:20 Female
Jo Lee!6 alder-bank 2026-01-10 Jo Lee 18:31 Female
Al Roe!5 alder-bank 2026-01-03 Al Roe 19:20 Male
`},
	{"fixtures with places and starts, and a tab for each by its number", "results", `== Fixtures
Evening series 2026
No|Date|Venue|Start
1|3 Jun 2026|Alder Bank|19:00
2|17 Jun 2026|Mill Leat|19:00
3|1 Jul 2026|Ember Quay|19:00
== Race 1
Race 1 results
Pos|Name|Time
1|Jo Lee|18:20
2|Al Roe|18:31
== Race 2
Race 2 results
Pos|Name|Time
1|Al Roe|18:40
2|Jo Lee|18:41
== Race 3
Race 3 results
Pos|Name|Time
1|Al Roe|18:42
2|Cy Dee|18:51
`, `Race 1!3 alder-bank 2026-06-03 Jo Lee 18:20
Race 1!4 alder-bank 2026-06-03 Al Roe 18:31
Race 2!3 mill-leat 2026-06-17 Al Roe 18:40
Race 2!4 mill-leat 2026-06-17 Jo Lee 18:41
Race 3!3 ember-quay 2026-07-01 Al Roe 18:42
Race 3!4 ember-quay 2026-07-01 Cy Dee 18:51
`},
	{"a time below each name under one heading", "Alder Bank 2026-01-03", `== Sheet1
Pos|Runner / time
1|Jo Lee
|18:20
2|Al Roe
|18:31
3|Cy Dee
|19:02
4|Di Fox
|19:20
`, `Sheet1!2 alder-bank 2026-01-03 Jo Lee 18:20
Sheet1!4 alder-bank 2026-01-03 Al Roe 18:31
Sheet1!6 alder-bank 2026-01-03 Cy Dee 19:02
Sheet1!8 alder-bank 2026-01-03 Di Fox 19:20
`},
	{"day, month and year in columns of their own", "Alder Bank", `== Data
Day|Month|Year|Pos|Name|Time
3|1|2026|1|Jo Lee|18:20
3|1|2026|2|Al Roe|18:31
10|1|2026|1|Al Roe|19:02
`, `Data!2 alder-bank 2026-01-03 Jo Lee 18:20
Data!3 alder-bank 2026-01-03 Al Roe 18:31
Data!4 alder-bank 2026-01-10 Al Roe 19:02
`},
	{"who has which number from 1 on, and places and times by number", "Alder Bank 5k", `== Runners
ID|Name|Sex
1|Jo Lee|F
2|Al Roe|M
3|Cy Dee|M
4|Di Fox|F
5|Ed Gow|M
6|Fi Hay|F
7|Gus Ing|M
8|Hal Job|M
9|Ida Kay|F
10|Jay Low|M
11|Kit Moy|M
== 03-01-2026
Pos|ID|Time
1|4|18:20
2|1|18:31
3|5|19:02
== 17-01-2026
Pos|ID|Time
1|3|18:21
2|2|18:32
3|1|19:03
`, `03-01-2026!2 alder-bank 2026-01-03 Di Fox 18:20 F
03-01-2026!3 alder-bank 2026-01-03 Jo Lee 18:31 F
03-01-2026!4 alder-bank 2026-01-03 Ed Gow 19:02 M
17-01-2026!2 alder-bank 2026-01-17 Cy Dee 18:21 M
17-01-2026!3 alder-bank 2026-01-17 Al Roe 18:32 M
17-01-2026!4 alder-bank 2026-01-17 Jo Lee 19:03 F
`},
}
