package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// bookCase is a workbook and what is read of it.
type bookCase struct{ name, file, text, want string }

// strangerBooks are workbooks of the kinds that a collection by somebody else showed
// to be misread. Tabs begin with "== name"; what is read is tab, row, run, then name,
// time, sex and group.
var strangerBooks = []bookCase{
	{"dates merged over two columns each", "winter series", `== Series
Alder Bank winter series
||3 Jan 2026|3 Jan 2026|10 Jan 2026|10 Jan 2026
Name|Cat|Pos|Time|Pos|Time
Jo Lee|W40|2|18:31|1|18:20
Al Roe|M45|1|18:20
Cy Dee|M50|3|19:10|2|19:02
`, `Series!4 alder-bank 2026-01-03 Jo Lee 18:31 W40
Series!5 alder-bank 2026-01-03 Al Roe 18:20 M45
Series!6 alder-bank 2026-01-03 Cy Dee 19:10 M50
Series!4 alder-bank 2026-01-10 Jo Lee 18:20 W40
Series!6 alder-bank 2026-01-10 Cy Dee 19:02 M50
`},
	{"halves in tabs, a title over one, and figures in the file's name that may be two days", "results-210924", `== Times
Alder Bank 5k, 21 September 2024
Pos|Time
1|18:20
2|18:31
3|19:02
== Names
Pos|Name
1|Jo Lee
2|Al Roe
3|Cy Dee
`, `Times!3 alder-bank 2024-09-21 18:20
Times!4 alder-bank 2024-09-21 18:31
Times!5 alder-bank 2024-09-21 19:02
Names!2 alder-bank 2024-09-21 Jo Lee
Names!3 alder-bank 2024-09-21 Al Roe
Names!4 alder-bank 2024-09-21 Cy Dee
`},
	{"a year in the title, and figures in the file's name that may be of two", "results-280824", `== Times
Alder Bank 2024 times
Name|14 Aug|21 Aug|28 Aug
Jo Lee|18:20||18:24
Al Roe|18:31|18:40|
Cy Dee||19:02|18:55
`, `Times!3 alder-bank 2024-08-14 Jo Lee 18:20
Times!4 alder-bank 2024-08-14 Al Roe 18:31
Times!4 alder-bank 2024-08-21 Al Roe 18:40
Times!5 alder-bank 2024-08-21 Cy Dee 19:02
Times!3 alder-bank 2024-08-28 Jo Lee 18:24
Times!5 alder-bank 2024-08-28 Cy Dee 18:55
`},
	{"halves of a result below one another", "20260103 Alder Bank", `== Sheet1
Lap|Time
1|18:20
2|18:31
3|19:02
4|19:22
5|19:32
6|19:42

No|Name
2|Al Roe
1|Jo Lee
6|Ed Gow
3|Cy Dee
4|Di Fox
5|Ida Kay
`, `Sheet1!2 alder-bank 2026-01-03 18:20
Sheet1!3 alder-bank 2026-01-03 18:31
Sheet1!4 alder-bank 2026-01-03 19:02
Sheet1!5 alder-bank 2026-01-03 19:22
Sheet1!6 alder-bank 2026-01-03 19:32
Sheet1!7 alder-bank 2026-01-03 19:42
Sheet1!10 alder-bank 2026-01-03 Al Roe
Sheet1!11 alder-bank 2026-01-03 Jo Lee
Sheet1!12 alder-bank 2026-01-03 Ed Gow
Sheet1!13 alder-bank 2026-01-03 Cy Dee
Sheet1!14 alder-bank 2026-01-03 Di Fox
Sheet1!15 alder-bank 2026-01-03 Ida Kay
`},
	{"halves in tabs, and behind them one that says the run", "alder", `== Stopwatch
Split|Cumulative
1|18:20
2|18:31
3|19:02
== Tokens
Token|Name
2|Al Roe
1|Jo Lee
3|Cy Dee
== Info
Alder Bank
3 January 2026
`, `Stopwatch!2 alder-bank 2026-01-03 18:20
Stopwatch!3 alder-bank 2026-01-03 18:31
Stopwatch!4 alder-bank 2026-01-03 19:02
Tokens!2 alder-bank 2026-01-03 Al Roe
Tokens!3 alder-bank 2026-01-03 Jo Lee
Tokens!4 alder-bank 2026-01-03 Cy Dee
`},
	{"numbers beside times and beside names, places beside the times alone", "alder-bank_2026-01-03", `== Sheet1
Arrivo|Pett.|Tempo||Pett.|Nome|Anno
1|23|18:20||20|Al Roe|1980
2|21|18:31||21|Cy Dee|1990
3|20|19:02||22|Di Fox|1970
4|22|19:12||23|Jo Lee|1960
`, `Sheet1!2 alder-bank 2026-01-03 Jo Lee 18:20
Sheet1!3 alder-bank 2026-01-03 Cy Dee 18:31
Sheet1!4 alder-bank 2026-01-03 Al Roe 19:02
Sheet1!5 alder-bank 2026-01-03 Di Fox 19:12
`},
	{"halves in tabs called by words for the finish, and one with the run alone", "eide", `== Klokke
Nr|Tid
1|18:20
2|18:31
3|19:02
== Målgang
Nr|Navn
1|Jo Lee
2|Al Roe
3|Cy Dee
== Om løpet
Alder Bank rundt
lørdag 3. januar 2026
`, `Klokke!2 alder-bank-rundt 2026-01-03 18:20
Klokke!3 alder-bank-rundt 2026-01-03 18:31
Klokke!4 alder-bank-rundt 2026-01-03 19:02
Målgang!2 alder-bank-rundt 2026-01-03 Jo Lee
Målgang!3 alder-bank-rundt 2026-01-03 Al Roe
Målgang!4 alder-bank-rundt 2026-01-03 Cy Dee
`},
	{"days down and runners across, their sexes below the names", "family", `== Sheet1
Times at Quarry Lane
Le|Jo Lee|Al Roe|Cy Dee
Sex|M|F|M
3 Jan 2026|18:20||19:02
10 Jan 2026|18:31|19:10|
`, `Sheet1!3 quarry-lane 2026-01-03 Jo Lee 18:20 M
Sheet1!5 quarry-lane 2026-01-03 Cy Dee 19:02 M
Sheet1!3 quarry-lane 2026-01-10 Jo Lee 18:31 M
Sheet1!4 quarry-lane 2026-01-10 Al Roe 19:10 F
`},
	{"days down and runners across", "family", `== Sheet1
Times at Quarry Lane 2026
Date|Jo Lee|Al Roe|Cy Dee
3 Jan 2026|18:20||19:02
10 Jan 2026|18:31|19:10|
17 Jan 2026||19:12|DNF
Best|18:20|19:10|19:02
`, `Sheet1!3 quarry-lane 2026-01-03 Jo Lee 18:20
Sheet1!5 quarry-lane 2026-01-03 Cy Dee 19:02
Sheet1!3 quarry-lane 2026-01-10 Jo Lee 18:31
Sheet1!4 quarry-lane 2026-01-10 Al Roe 19:10
Sheet1!4 quarry-lane 2026-01-17 Al Roe 19:12
Sheet1!5 quarry-lane 2026-01-17 Cy Dee DNF
`},
	{"days down and courses across are no runners", "record times", `== Sheet1
Fastest of the day 2026
Date|Alder Bank|Quay Lane|Mill Leat
3 Jan 2026|18:20|17:10|19:02
10 Jan 2026|18:31|19:10|18:11
`, ``},
	{"halves in tabs that are called like their columns", "20260103 Alder Bank", `== Tid
Placering|Tid
1|18:20
2|18:31
3|19:02
== Navn
Placering|Navn|Klub
1|Jo Lee|Vale IF
2|Al Roe|Mill IF
3|Cy Dee|Mill IF
`, `Tid!2 alder-bank 2026-01-03 18:20
Tid!3 alder-bank 2026-01-03 18:31
Tid!4 alder-bank 2026-01-03 19:02
Navn!2 alder-bank 2026-01-03 Jo Lee
Navn!3 alder-bank 2026-01-03 Al Roe
Navn!4 alder-bank 2026-01-03 Cy Dee
`},
	{"points of a series under their dates beside the results", "results", `== Ergebnisse
Alder Bank, 3. Januar 2026
Platz|Name|Zeit
1|Jo Lee|18:20
2|Al Roe|18:31
3|Cy Dee|19:02
== Serienwertung
Serienwertung 2026

Platz|Name|Verein|03.01.2026|27.12.2025|20.12.2025|Punkte
1|Jo Lee|Vale RC|81||60|141
2|Al Roe||79|32||111
3|Cy Dee|Mill AC||47|55|102
`, `Ergebnisse!3 alder-bank 2026-01-03 Jo Lee 18:20
Ergebnisse!4 alder-bank 2026-01-03 Al Roe 18:31
Ergebnisse!5 alder-bank 2026-01-03 Cy Dee 19:02
`},
	{"classes between the rows, one of them not understood", "klasser", `== Blad1
Alder Bank, 3 januari 2026
Plac.|Namn|Tid
MS
1|Al Roe|18:20
2|Cy Dee|19:02

M45
1|Ed Gow|18:40
2|Gus Ing|20:12

Gäster
1|Jo Lee|18:31

K40
1|Di Fox|21:20
2|Ida Kay|22:40
`, `Blad1!4 alder-bank 2026-01-03 Al Roe 18:20 MS
Blad1!5 alder-bank 2026-01-03 Cy Dee 19:02 MS
Blad1!8 alder-bank 2026-01-03 Ed Gow 18:40 M45
Blad1!9 alder-bank 2026-01-03 Gus Ing 20:12 M45
Blad1!12 alder-bank 2026-01-03 Jo Lee 18:31 Gäster
Blad1!15 alder-bank 2026-01-03 Di Fox 21:20 K40
Blad1!16 alder-bank 2026-01-03 Ida Kay 22:40 K40
`},
	{"classes with the heading under each, and a word for places that means classes too", "classes", `== Folha1
Alder Bank, 3 de janeiro de 2026

Homens 15-19
Class.|Nome|Tempo final
1|Al Roe|18:20

Homens 20-24
Class.|Nome|Tempo final
1|Cy Dee|19:02
2|Ed Gow|19:28
3|Gus Ing|20:12

Homens 40-44
Class.|Nome|Tempo final
1|Hal Job|18:31
2|Jay Low|20:40

Mulheres 25-29
Class.|Nome|Tempo final
1|Jo Lee|21:20
2|Di Fox|22:40
`, `Folha1!5 alder-bank 2026-01-03 Al Roe 18:20 Homens 15-19
Folha1!9 alder-bank 2026-01-03 Cy Dee 19:02 Homens 20-24
Folha1!10 alder-bank 2026-01-03 Ed Gow 19:28 Homens 20-24
Folha1!11 alder-bank 2026-01-03 Gus Ing 20:12 Homens 20-24
Folha1!15 alder-bank 2026-01-03 Hal Job 18:31 Homens 40-44
Folha1!16 alder-bank 2026-01-03 Jay Low 20:40 Homens 40-44
Folha1!20 alder-bank 2026-01-03 Jo Lee 21:20 Mulheres 25-29
Folha1!21 alder-bank 2026-01-03 Di Fox 22:40 Mulheres 25-29
`},
	{"a row of dates over a row of courses", "Two venue league", `== Grid
Two venue league
Date||3 Jan 2026|10 Jan 2026
Venue||Alder Bank|Ember Quay
Name|Sex
Jo Lee|F|18:31|18:20
Al Roe|M|18:20
Cy Dee|M||19:02
`, `Grid!5 alder-bank 2026-01-03 Jo Lee 18:31 F
Grid!6 alder-bank 2026-01-03 Al Roe 18:20 M
Grid!5 ember-quay 2026-01-10 Jo Lee 18:20 F
Grid!7 ember-quay 2026-01-10 Cy Dee 19:02 M
`},
	{"months over days, the year in the title", "times", `== Grid
Alder Bank 2026
|||January|January|February
No.|Name|Cat|24|31|7
1|Jo Lee|F|18:31|18:20
2|Al Roe|M|18:20||18:02
`, `Grid!4 alder-bank 2026-01-24 Jo Lee 18:31 F
Grid!5 alder-bank 2026-01-24 Al Roe 18:20 M
Grid!4 alder-bank 2026-01-31 Jo Lee 18:20 F
Grid!5 alder-bank 2026-02-07 Al Roe 18:02 M
`},
	{"days of the month in the title", "times", `== January
Alder Bank: January 2026
Name|Sex|Sat 3|Sat 10|Runs
Jo Lee|F|18:31|18:20|2
Al Roe|M|18:20||1
`, `January!3 alder-bank 2026-01-03 Jo Lee 18:31 F
January!4 alder-bank 2026-01-03 Al Roe 18:20 M
January!3 alder-bank 2026-01-10 Jo Lee 18:20 F
`},
	{"tabs that say who is on them, a cover that says the run", "Age group results", `== Cover
Event||Alder Bank
Date||3 January 2026
Weather||dry
== Senior Women
Pos|Name|Time
1|Jo Lee|18:31
2|Di Fox|18:40
== M45-49
Pos|Name|Time
1|Al Roe|18:20
2|Cy Dee|19:02
`, `Senior Women!2 alder-bank 2026-01-03 Jo Lee 18:31 Senior Women
Senior Women!3 alder-bank 2026-01-03 Di Fox 18:40 Senior Women
M45-49!2 alder-bank 2026-01-03 Al Roe 18:20 M45-49
M45-49!3 alder-bank 2026-01-03 Cy Dee 19:02 M45-49
`},
	{"a cover without labels", "report 12", `== Summary
Alder Bank
3 January 2026

Finishers|2
== Results
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
`, `Results!2 alder-bank 2026-01-03 Al Roe 18:20
Results!3 alder-bank 2026-01-03 Jo Lee 18:31
`},
	{"men and women on tabs of their own", "alder-bank_2026-01-03", `== Ladies
Pos|Name|Age group|Time
1|Jo Lee|40-44|18:31
2|Di Fox|35-39|18:40
== Gents
Pos|Name|Age group|Time
1|Al Roe|45-49|18:20
2|Cy Dee|50-54|19:02
`, `Ladies!2 alder-bank 2026-01-03 Jo Lee 18:31 Ladies 40-44
Ladies!3 alder-bank 2026-01-03 Di Fox 18:40 Ladies 35-39
Gents!2 alder-bank 2026-01-03 Al Roe 18:20 Gents 45-49
Gents!3 alder-bank 2026-01-03 Cy Dee 19:02 Gents 50-54
`},
	{"what was corrected stands", "alder-bank_2026-01-03", `== Provisional
Pos|Name|Time
1|Al Roe|18:20
2|Unknown|18:31
3|Cy Dee|19:02
4|Di Fox|19:40
== Corrected
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
3|Cy Dee|19:02
4|Di Fox|19:40
`, `Corrected!2 alder-bank 2026-01-03 Al Roe 18:20
Corrected!3 alder-bank 2026-01-03 Jo Lee 18:31
Corrected!4 alder-bank 2026-01-03 Cy Dee 19:02
Corrected!5 alder-bank 2026-01-03 Di Fox 19:40
`},
	{"tabs that only say the order of their lines", "alder-bank_2026-01-03", `== Finish order
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
3|Cy Dee|19:02
== Alphabetical
Pos|Name|Time
3|Cy Dee|19:02
2|Jo Lee|18:31
1|Al Roe|18:20
== Top 10
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
3|Cy Dee|19:02
`, `Finish order!2 alder-bank 2026-01-03 Al Roe 18:20
Finish order!3 alder-bank 2026-01-03 Jo Lee 18:31
Finish order!4 alder-bank 2026-01-03 Cy Dee 19:02
`},
	{"tabs of a season that says two years", "Alder Bank 2024-2025", `== 12.10.
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
== 18.01.
Pos|Name|Time
1|Al Roe|18:22
2|Jo Lee|18:30
== 26.04.
Pos|Name|Time
1|Al Roe|18:25
2|Jo Lee|18:39
`, `12.10.!2 alder-bank 2024-10-12 Al Roe 18:20
12.10.!3 alder-bank 2024-10-12 Jo Lee 18:31
18.01.!2 alder-bank 2025-01-18 Al Roe 18:22
18.01.!3 alder-bank 2025-01-18 Jo Lee 18:30
26.04.!2 alder-bank 2025-04-26 Al Roe 18:25
26.04.!3 alder-bank 2025-04-26 Jo Lee 18:39
`},
	{"tabs of months and of weeks are no groups", "Alder Bank 2026", `== Jan17
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
== Jan24
Pos|Name|Time
1|Al Roe|18:24
2|Jo Lee|18:33
`, `Jan17!2 alder-bank 2026-01-17 Al Roe 18:20
Jan17!3 alder-bank 2026-01-17 Jo Lee 18:31
Jan24!2 alder-bank 2026-01-24 Al Roe 18:24
Jan24!3 alder-bank 2026-01-24 Jo Lee 18:33
`},
	{"labels at the right of the table", "weekly", `== Sheet1
Pos|Name|Time|||Venue:|Alder Bank
1|Al Roe|18:20|||Date:|3 Jan 2026
2|Jo Lee|18:31|||Start:|09:00
3|Cy Dee|19:02|||Timekeeper:|Pat Ng
`, `Sheet1!2 alder-bank 2026-01-03 Al Roe 18:20
Sheet1!3 alder-bank 2026-01-03 Jo Lee 18:31
Sheet1!4 alder-bank 2026-01-03 Cy Dee 19:02
`},
	{"a label right above the heading", "results", `== Tabelle1
28.02.2026
Strecke|Alder Bank
Pl.|Name|Zeit
1|Al Roe|18:20
2|Jo Lee|18:31
`, `Tabelle1!4 alder-bank 2026-02-28 Al Roe 18:20
Tabelle1!5 alder-bank 2026-02-28 Jo Lee 18:31
`},
	{"one column of places for several runs", "Alder Bank weekly", `== Sheet1
Alder Bank
|3 Jan 2026|3 Jan 2026|10 Jan 2026|10 Jan 2026
Pos|Name|Time|Name|Time
1|Al Roe|18:20|Jo Lee|18:02
2|Jo Lee|18:31|Cy Dee|19:02
3|Di Fox|18:40
`, `Sheet1!4 alder-bank 2026-01-03 Al Roe 18:20
Sheet1!5 alder-bank 2026-01-03 Jo Lee 18:31
Sheet1!6 alder-bank 2026-01-03 Di Fox 18:40
Sheet1!4 alder-bank 2026-01-10 Jo Lee 18:02
Sheet1!5 alder-bank 2026-01-10 Cy Dee 19:02
`},
	{"names by number on another tab", "alder-bank_2026-01-03", `== Runners
Number|Name|Sex|Category
12|Jo Lee|F|W40
31|Al Roe|M|M45
44|Ed Gow|M|M50
== Finish
Pos|Number|Time
1|31|18:20
2|12|18:31
`, `Finish!2 alder-bank 2026-01-03 Al Roe 18:20 M M45
Finish!3 alder-bank 2026-01-03 Jo Lee 18:31 F W40
`},
	{"numbers that are not those of the list of entries", "alder-bank_2026-01-03", `== Runners
Number|Name|Sex|Category
12|Jo Lee|F|W40
31|Al Roe|M|M45
== Finish
Pos|Number|Time
1|77|18:20
2|78|18:31
3|31|18:40
`, `Finish!2 alder-bank 2026-01-03 18:20
Finish!3 alder-bank 2026-01-03 18:31
Finish!4 alder-bank 2026-01-03 18:40
`},
	{"a tab for each club", "Alder Bank 2026-01-03 clubs", `== Fell Harriers
Pos|Name|Time
1|Al Roe|18:20
4|Jo Lee|18:31
7|Ann Ash|19:20
== Vale Joggers
Pos|Name|Time
2|Cy Dee|18:22
3|Di Fox|18:24
6|Ed Gow|19:10
== Unattached
Pos|Name|Time
5|Fay Ho|19:02
8|Gus Ing|19:30
9|Hal Job|19:40
`, `Fell Harriers!2 alder-bank 2026-01-03 Al Roe 18:20
Fell Harriers!3 alder-bank 2026-01-03 Jo Lee 18:31
Fell Harriers!4 alder-bank 2026-01-03 Ann Ash 19:20
Vale Joggers!2 alder-bank 2026-01-03 Cy Dee 18:22
Vale Joggers!3 alder-bank 2026-01-03 Di Fox 18:24
Vale Joggers!4 alder-bank 2026-01-03 Ed Gow 19:10
Unattached!2 alder-bank 2026-01-03 Fay Ho 19:02
Unattached!3 alder-bank 2026-01-03 Gus Ing 19:30
Unattached!4 alder-bank 2026-01-03 Hal Job 19:40
`},
	{"a relay and a pivot table on tabs of their own", "alder-bank_2026-01-03", `== Results
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
== Teams
Pos|Team|Runner 1|Runner 2|Time
1|Fell Harriers A|Cy Dee|Di Fox|41:02
2|Vale Joggers|Ed Gow|Fay Ho|42:10
== Sheet4
Row Labels|Min of Time
Al Roe|18:20
Jo Lee|18:31
`, `Results!2 alder-bank 2026-01-03 Al Roe 18:20
Results!3 alder-bank 2026-01-03 Jo Lee 18:31
`},
	{"the answers to a form", "Virtual run (Responses)", `== Form responses 1
Timestamp|What is your name?|Which course did you run?|Date of your run|Your time (mm:ss)|Are you
2026-01-04 18:00:12|Jo Lee|Alder Bank|3 Jan 2026|18:31|Female
2026-01-04 19:10:42|Al Roe|Ember Quay|3 Jan 2026|18:20|Male
2026-01-04 19:20:51|Cy Dee|Alder Bank|4 Jan 2026|19:02|Male
`, `Form responses 1!2 alder-bank 2026-01-03 Jo Lee 18:31 Female
Form responses 1!3 ember-quay 2026-01-03 Al Roe 18:20 Male
Form responses 1!4 alder-bank 2026-01-04 Cy Dee 19:02 Male
`},
	{"a database's columns", "q7", `== Results
EventName|EventDate|Pos|FullName|Gender|FinishTime|YearOfBirth
Alder Bank|2026-01-03 00:00:00.000|1|Al Roe|M|00:18:20.0000000|1981
Alder Bank|2026-01-03 00:00:00.000|2|Jo Lee|F|00:18:31.0000000|1985
`, `Results!2 alder-bank 2026-01-03 Al Roe 00:18:20.0000000 M
Results!3 alder-bank 2026-01-03 Jo Lee 00:18:31.0000000 F
`},
	{"the sex in the name of the file", "Alder Bank 2026-01-03 women", `== Sheet1
Pos|Name|Time
1|Jo Lee|18:31
2|Di Fox|18:40
`, `Sheet1!2 alder-bank 2026-01-03 Jo Lee 18:31 women
Sheet1!3 alder-bank 2026-01-03 Di Fox 18:40 women
`},
	{"men beside women under merged cells", "alder-bank_2026-01-03", `== Results
MEN|MEN|MEN||WOMEN|WOMEN|WOMEN
Pos|Name|Time||Pos|Name|Time
1|Al Roe|18:20||1|Jo Lee|18:31
2|Cy Dee|19:02||2|Di Fox|18:40
`, `Results!3 alder-bank 2026-01-03 Al Roe 18:20 MEN
Results!4 alder-bank 2026-01-03 Cy Dee 19:02 MEN
Results!3 alder-bank 2026-01-03 Jo Lee 18:31 WOMEN
Results!4 alder-bank 2026-01-03 Di Fox 18:40 WOMEN
`},
	{"a message pasted line by line", "Alder Bank", `== Sheet1
Results from Alder Bank, 3 January 2026:

1. Al Roe 18:20
2. Jo Lee 18:31
3. Cy Dee 19:02
4. Di Fox 19:40
`, `Sheet1!3 alder-bank 2026-01-03 Al Roe 18:20
Sheet1!4 alder-bank 2026-01-03 Jo Lee 18:31
Sheet1!5 alder-bank 2026-01-03 Cy Dee 19:02
Sheet1!6 alder-bank 2026-01-03 Di Fox 19:40
`},
	{"a list of entries numbered from one", "alder-bank_2026-01-03", `== Entries
No.|Name|Sex|Category
1|Jo Lee|F|W40
2|Al Roe|M|M45
3|Ed Gow|M|M50
== Finish
Pos|No.|Time
1|3|18:20
2|1|18:31
3|2|18:40
`, `Finish!2 alder-bank 2026-01-03 Ed Gow 18:20 M M50
Finish!3 alder-bank 2026-01-03 Jo Lee 18:31 F W40
Finish!4 alder-bank 2026-01-03 Al Roe 18:40 M M45
`},
	{"a weekend, a tab a day", "Alder Bank weekend 3-4 January 2026", `== Saturday
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
== Sunday
Pos|Name|Time
1|Al Roe|18:24
2|Jo Lee|18:33
`, `Saturday!2 alder-bank 2026-01-03 Al Roe 18:20
Saturday!3 alder-bank 2026-01-03 Jo Lee 18:31
Sunday!2 alder-bank 2026-01-04 Al Roe 18:24
Sunday!3 alder-bank 2026-01-04 Jo Lee 18:33
`},
	{"a tab for each class of a school", "Alder Bank 2026-01-07", `== 10H
Name|Time
Al Roe|18:20
Jo Lee|18:31
== 10M
Name|Time
Cy Dee|18:24
Di Fox|18:33
`, `10H!2 alder-bank 2026-01-07 Al Roe 18:20
10H!3 alder-bank 2026-01-07 Jo Lee 18:31
10M!2 alder-bank 2026-01-07 Cy Dee 18:24
10M!3 alder-bank 2026-01-07 Di Fox 18:33
`},
	{"a league's tab with its runs in columns", "Alder Bank summer league", `== League
|Date|3 Jan 2026|10 Jan 2026
|Weather|dry|wet
Name|Cat|||Runs
Jo Lee|W40|18:31|18:20|2
Al Roe|M45|18:20||1
`, `League!4 alder-bank 2026-01-03 Jo Lee 18:31 W40
League!5 alder-bank 2026-01-03 Al Roe 18:20 M45
League!4 alder-bank 2026-01-10 Jo Lee 18:20 W40
`},
	{"labels without a space", "results", `== Sheet1
Course:Alder Bank
DATE:3 January 2026
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
`, `Sheet1!4 alder-bank 2026-01-03 Al Roe 18:20
Sheet1!5 alder-bank 2026-01-03 Jo Lee 18:31
`},
	{"tabs of a month and its year, dates without one", "Alder Bank", `== Nov 25
Saturday 1 November
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
Saturday 15 November
Pos|Name|Time
1|Jo Lee|18:29
2|Cy Dee|18:44
== Jan 26
Saturday 3 January
Pos|Name|Time
1|Al Roe|18:24
2|Jo Lee|18:33
`, `Nov 25!3 alder-bank 2025-11-01 Al Roe 18:20
Nov 25!4 alder-bank 2025-11-01 Jo Lee 18:31
Nov 25!7 alder-bank 2025-11-15 Jo Lee 18:29
Nov 25!8 alder-bank 2025-11-15 Cy Dee 18:44
Jan 26!3 alder-bank 2026-01-03 Al Roe 18:24
Jan 26!4 alder-bank 2026-01-03 Jo Lee 18:33
`},
	{"two courses below one another", "Both venues 2026-01-03", `== Results
Alder Bank
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31

Ember Quay
Pos|Name|Time
1|Cy Dee|18:29
2|Di Fox|18:44
`, `Results!3 alder-bank 2026-01-03 Al Roe 18:20
Results!4 alder-bank 2026-01-03 Jo Lee 18:31
Results!8 ember-quay 2026-01-03 Cy Dee 18:29
Results!9 ember-quay 2026-01-03 Di Fox 18:44
`},
	{"men and women below one another, with the distance", "alder-bank_2026-01-03", `== Table 1
MEN 5K RESULTS
Pos|Name|Time
1|Al Roe|18:20
2|Ed Gow|18:31
WOMEN 5K RESULTS
Pos|Name|Time
1|Jo Lee|18:29
2|Di Fox|18:44
`, `Table 1!3 alder-bank 2026-01-03 Al Roe 18:20 MEN
Table 1!4 alder-bank 2026-01-03 Ed Gow 18:31 MEN
Table 1!7 alder-bank 2026-01-03 Jo Lee 18:29 WOMEN
Table 1!8 alder-bank 2026-01-03 Di Fox 18:44 WOMEN
`},
	{"a register with words for those who did not run", "Alder Bank register", `== 2026
Surname|First name|M/F|Total runs|3 Jan 2026|10 Jan 2026
Lee|Jo|F|12|18:31|vol
Roe|Al|M|3|away|18:20
Dee|Cy|M|7|inj|19:02
Fox|Di|F|8|19:40|TK
`, `2026!2 alder-bank 2026-01-03 18:31 F
2026!5 alder-bank 2026-01-03 19:40 F
2026!3 alder-bank 2026-01-10 18:20 M
2026!4 alder-bank 2026-01-10 19:02 M
`},
	{"the title on the first tab alone", "county day", `== Men 5k
Alder Bank, 3 January 2026

Pos|Name|Time
1|Al Roe|18:20
2|Ed Gow|18:31
== Women 5k
Pos|Name|Time
1|Jo Lee|18:29
2|Di Fox|18:44
`, `Men 5k!4 alder-bank 2026-01-03 Al Roe 18:20 Men
Men 5k!5 alder-bank 2026-01-03 Ed Gow 18:31 Men
Women 5k!2 alder-bank 2026-01-03 Jo Lee 18:29 Women
Women 5k!3 alder-bank 2026-01-03 Di Fox 18:44 Women
`},
	{"places 1 to 5 and 6 to 10 on tabs of their own", "alder-bank_2026-07-04", `== 1-5
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
3|Cy Dee|18:40
4|Di Fox|18:50
5|Ed Gow|19:01
== 6-10
Pos|Name|Time
6|Fay Ho|19:02
7|Gus Ing|19:10
8|Hal Job|19:20
`, `1-5!2 alder-bank 2026-07-04 Al Roe 18:20
1-5!3 alder-bank 2026-07-04 Jo Lee 18:31
1-5!4 alder-bank 2026-07-04 Cy Dee 18:40
1-5!5 alder-bank 2026-07-04 Di Fox 18:50
1-5!6 alder-bank 2026-07-04 Ed Gow 19:01
6-10!2 alder-bank 2026-07-04 Fay Ho 19:02
6-10!3 alder-bank 2026-07-04 Gus Ing 19:10
6-10!4 alder-bank 2026-07-04 Hal Job 19:20
`},
	{"last week beside this week", "alder-bank_2026-01-10", `== Results
Alder Bank 10 January 2026||||Last week (3 January 2026)
Pos|Name|Time||Pos|Name|Time
1|Al Roe|18:20||1|Jo Lee|18:11
2|Jo Lee|18:31||2|Di Fox|18:15
`, `Results!3 alder-bank 2026-01-10 Al Roe 18:20
Results!4 alder-bank 2026-01-10 Jo Lee 18:31
Results!3 alder-bank 2026-01-03 Jo Lee 18:11
Results!4 alder-bank 2026-01-03 Di Fox 18:15
`},
	{"a template that was filled in", "alder-bank_2026-01-03", `== Template
Pos|Name|Time
1|Al Roe|18:20
2|Jo Lee|18:31
3|Cy Dee|19:02
4
5
`, `Template!2 alder-bank 2026-01-03 Al Roe 18:20
Template!3 alder-bank 2026-01-03 Jo Lee 18:31
Template!4 alder-bank 2026-01-03 Cy Dee 19:02
`},
	{"places among men and women, classes of a school", "alder-bank_2026-01-03", `== Results
Pos|Gen Pos|Name|Form|Time
1|M1|Al Roe|9B|18:20
2|F1|Jo Lee|9A|18:31
3|M2|Cy Dee|10C|19:02
4|M3|Ed Gow|8B|19:40
5|F2|Di Fox|7C|19:51
`, `Results!2 alder-bank 2026-01-03 Al Roe 18:20 M1
Results!3 alder-bank 2026-01-03 Jo Lee 18:31 F1
Results!4 alder-bank 2026-01-03 Cy Dee 19:02 M2
Results!5 alder-bank 2026-01-03 Ed Gow 19:40 M3
Results!6 alder-bank 2026-01-03 Di Fox 19:51 F2
`},
	{"the same list once more on a tab called after what was done with it", "results 7", `== Results
Alder Bank 3 January 2026
Pos|Name|Time
1st|Jo Lee|18:20
2nd|Al Roe|18:31
3rd|Cy Dee|19:02
== unsorted
Pos|Name|Time
1|Jo Lee|18:20
2|Al Roe|18:31
3|Cy Dee|19:02
`, `Results!3 alder-bank 2026-01-03 Jo Lee 18:20
Results!4 alder-bank 2026-01-03 Al Roe 18:31
Results!5 alder-bank 2026-01-03 Cy Dee 19:02
`},
	{"other people on a tab called after another course", "results 7", `== Results
Alder Bank 3 January 2026
Pos|Name|Time
1|Jo Lee|18:20
2|Al Roe|18:31
3|Cy Dee|19:02
== Mill Leat
Pos|Name|Time
1|Di Fox|18:20
2|Ed Gow|18:31
3|Fay Ivy|19:02
`, `Results!3 alder-bank 2026-01-03 Jo Lee 18:20
Results!4 alder-bank 2026-01-03 Al Roe 18:31
Results!5 alder-bank 2026-01-03 Cy Dee 19:02
Mill Leat!2 mill-leat 2026-01-03 Di Fox 18:20
Mill Leat!3 mill-leat 2026-01-03 Ed Gow 18:31
Mill Leat!4 mill-leat 2026-01-03 Fay Ivy 19:02
`},
}

// bookOf writes a workbook of texts.
func bookOf(t *testing.T, text string) []byte {
	return workbook(t, func(f *excelize.File) {
		for i, tab := range strings.Split(text, "== ")[1:] {
			name, rows, _ := strings.Cut(tab, "\n")
			var err error
			if i == 0 {
				err = f.SetSheetName("Sheet1", name)
			} else {
				_, err = f.NewSheet(name)
			}
			if err != nil {
				t.Fatal(err)
			}
			for r, line := range strings.Split(strings.TrimSuffix(rows, "\n"), "\n") {
				for c, cell := range strings.Split(line, "|") {
					if cell == "" {
						continue
					}
					at, _ := excelize.CoordinatesToCellName(c+1, r+1)
					if err := f.SetCellStr(name, at, cell); err != nil {
						t.Fatal(err)
					}
				}
			}
		}
	})
}

func TestStrangerBooks(t *testing.T) {
	for _, c := range slices.Concat(strangerBooks, clubBooks, keptBooks) {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read(c.file+".xlsx", bookOf(t, c.text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			var b strings.Builder
			for _, p := range s.Parts {
				p.Each(func(row int, cells []string) error {
					course, day, _, _ := p.RunOf(cells)
					fmt.Fprintf(&b, "%s!%d %s %s", p.Tab, row, course, day)
					for _, m := range []Meaning{Name, Time, Sex, AgeGroup} {
						if v := cellAt(cells, p.Index(m)); v != "" {
							fmt.Fprintf(&b, " %s", v)
						}
					}
					b.WriteByte('\n')
					return nil
				})
				for _, q := range p.Problems {
					if q.Severity > 0 && q.Kind != "positions-missing" && strings.Contains(q.Kind, "unclear") {
						t.Errorf("asks %s: %s", q.Kind, q.Read)
					}
				}
			}
			if got := b.String(); got != c.want {
				var d strings.Builder
				s.Describe(&d)
				t.Errorf("read\n%swant\n%s%s", got, c.want, d.String())
			}
		})
	}
}

// Course and date at the head of the printed pages are believed where nothing in the
// workbook or its name says them.
func TestPageHeader(t *testing.T) {
	for _, c := range []struct{ file, header, want string }{
		{"results final", `&L&"Arial,Bold"&12Alder Bank&C&P of &N&R3 January 2026`, "alder-bank 2026-01-03"},
		{"ember-quay_2026-01-10", `&L&"Arial,Bold"&12Alder Bank&R3 January 2026`, "ember-quay 2026-01-10"},
		{"results final", `&C&A &D`, "not known"},
	} {
		data := workbook(t, func(x *excelize.File) {
			setRows(t, x, "Sheet1", []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "18:31"})
			if err := x.SetHeaderFooter("Sheet1", &excelize.HeaderFooterOptions{OddHeader: c.header}); err != nil {
				t.Fatal(err)
			}
		})
		s, err := Read(c.file+".xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := outcome(s).run; got != c.want {
			t.Errorf("%s under %s: run %q, want %q", c.file, c.header, got, c.want)
		}
	}
}

// What a workbook can't tell is asked, in one question for the cause.
func TestStrangerBookQuestions(t *testing.T) {
	for _, c := range []struct{ name, file, text, asks string }{
		{"weeks by number", "Alder Bank", "== Times\nName|Week 1|Week 2|Week 3\nAl Roe|18:20|18:31\nJo Lee|18:40\nCy Dee|19:02|19:10|19:20\n", "course-missing date-missing time-column-missing"},
		{"a clock at the finish", "alder-bank_2026-01-03", "== Finish\nPos|Name|Finish time\n1|Al Roe|9:18:20\n2|Jo Lee|9:18:31\n3|Cy Dee|9:19:02\n4|Di Fox|9:19:40\n5|Ed Gow|9:20:11\n6|Fay Ho|9:21:12\n7|Gus Ing|9:22:51\n8|Hal Job|9:24:38\n", "time-column-missing"},
		{"two days and no weekday", "Alder Bank 3-4 January 2026", "== Sheet1\nPos|Name|Time\n1|Al Roe|18:20\n2|Jo Lee|18:31\n", "date-unclear"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read(c.file+".xlsx", bookOf(t, c.text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			if got := outcome(s).asks; !strings.Contains(" "+c.asks+" ", " "+got+" ") && got != c.asks || got == "" {
				t.Errorf("asks %q, want %q", got, c.asks)
			}
		})
	}
}
