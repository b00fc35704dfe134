package sheet

import (
	"fmt"
	"strconv"
	"strings"
	"testing"
)

// strangerCases are sheets of the kinds that a second, independent collection
// showed to be misread: places named in a sentence, several labels in a line,
// figures of programs, other languages.
var strangerCases = []sheetCase{
	{name: "a time typed with a hyphen, before a remark's column", file: "alder-bank_2026-01-03", only: "text",
		text:    ",Pos,Name,Club,Time,\n,1,Jo Lee,Vale AC,18:20,\n,2,Al Roe,Vale AC,18:31,PB\n,3,Cy Dee,Vale AC,19-02,\n,4,Di Fox,Vale AC,19:44,PB\n,5,Ed Gow,,19:50,\n,6,Fay Hill,Vale AC,20:50,cancelled\n,7,Gus Ide,Vale AC,21:10,\n",
		columns: "- position name club time notes", run: "alder-bank 2026-01-03", rows: "2-8"},
	{name: "how the race ended under Result, and the times under a clock", file: "alder-bank_2026-01-03",
		text:    "Athlete,Stopwatch,Club,Result\nJo Lee,00:18:20,Vale AC,Finished\nAl Roe,00:18:31,,Finished\nCy Dee,00:18:40,Vale AC,Finished\nDi Fox,00:19:44,,DNF\n",
		columns: "name time club status", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "who counts, under a second row of headings with units", file: "alder-bank_2026-01-03",
		text:    "Pos,Name,Time,Counted\n,,(mm:ss),\n1,Jo Lee,18:20,yes\n2,Al Roe,18:31,yes\n3,Cy Dee,18:40,no\n4,Di Fox,19:44,yes\n5,Ed Gow,19:50,yes\n6,Fay Hill,20:50,yes\n",
		columns: "position name time status", run: "alder-bank 2026-01-03", rows: "3-8"},
	{name: "places with a sign, and a word before one time", file: "alder-bank_2026-01-03",
		text:    "Pos,Name,Club,Time\n#1,Jo Lee,Vale AC,18:20\n#2,Al Roe,Vale AC,18:31\n#3,Cy Dee,,18:40\n#4,Di Fox,Vale AC,PB 19:44\n#5,Ed Gow,,19:50\n#6,Fay Hill,,20:50\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "times in units with spaces that break no line", file: "alder-bank_2026-01-03",
		text:    "Pos,Name,Zeit\n1,Jo Lee,18\u00a0min\u00a020\u00a0s\n2,Al Roe,18\u00a0min\u00a031\u00a0s\n3,Cy Dee,18\u00a0min\u00a040\u00a0s\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "groups in which one run was started", file: "alder-bank_2026-01-03",
		text:    "Pos,Name,Time,Wave\n1,Jo Lee,18:20,A\n2,Al Roe,18:31,B\n3,Cy Dee,18:40,A\n4,Di Fox,19:44,A\n5,Ed Gow,19:50,B\n6,Fay Hill,20:50,A\n7,Gus Ide,21:10,B\n",
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "2-8"},
	{name: "groups with places of their own are runs of their own", file: "alder-bank_2026-01-03",
		text:    "Pos,Name,Time,Wave\n1,Jo Lee,18:20,1\n2,Al Roe,18:31,1\n3,Cy Dee,18:40,1\n1,Di Fox,17:44,2\n2,Ed Gow,19:50,2\n3,Fay Hill,20:50,2\n4,Gus Ide,21:10,2\n",
		columns: "position name time session", run: "alder-bank 2026-01-03 1", rows: "2-8"},
	{name: "ages behind the times, and a remark behind the last heading", file: "alder-bank_2026-01-03", only: "text",
		text:    "Pos,Name,Time,Age,Sex,\n1,Jo Lee,18:20,42,M,\n2,Al Roe,18:31,25,M,\n3,Cy Dee,18:40,18,W,\n4,Di Fox,18:44,61,W,\n5,Ed Gow,19:10,30,M,\n6,Fay Hill,19:40,52,W,\n7,Gus Ide,20:10,19,M,\n8,Hal Jay,20:40,38,M,\n,Ivy Kay,19:50,33,W,late entry\n",
		columns: "position name time age sex notes", run: "alder-bank 2026-01-03", rows: "2-10"},
	{name: "a title with the day over a run and over a shorter one below", file: "promenade 2026-01-03",
		text: "MS Aurelia Quarterdeck 5k - 3 January 2026\nNo,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nJuniors 2 km\nNo,Name,Time\n1,Ed Gow,7:20\n2,Fay Hill,7:31\n3,Gus Ide,8:40\n", only: "text",
		columns: "position name time", run: "ms-aurelia-quarterdeck 2026-01-03", rows: "3-5 9-11"},
	{name: "headings one space apart over columns, again under each group", file: "alder-bank_2026-01-03", only: "text",
		text:    "FEMALE 20-29\n Pl Overall Name              Time\n  1       4 Jo Lee           18:50\n  2       9 Di Fox           20:31\n\nMALE 30-39\n Pl Overall Name              Time\n  1       1 Al Roe           18:20\n  2       2 Cy Dee           18:44\n  3      11 Ed Gow           21:40\n",
		columns: "- position name time age-group", run: "alder-bank 2026-01-03", rows: "3-4 8-10"},
	{name: "spaces that break no line behind places and times", file: "alder-bank_2026-01-03", only: "text",
		text:    "1.\u00a0 Jo Lee 18:20 Min.\n2. Al Roe 18:31 Min.\u00a0\n3.\u00a0 Cy Dee 18:40\u00a0 Min.\n4. Di Fox 18:44 Min.\n5.\u00a0 Ed Gow 18:50 Min.\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "1-5"},
	{name: "somebody who did not finish, below a list without headings", file: "alder-bank_2026-01-03", only: "text",
		text:    "Alder Bank 5k results\n2026-01-03\n\n1  Jo Lee   Fell AC       18:20\n2  Al Roe   Mill Runners  18:31\n3  Cy Dee   Fell AC       18:40\n4  Di Fox   Elm Park AC   18:42\n5  Gus Ivy  Wold Runners  18:50\n   Ed Gow   Wold Runners  fell, did not finish\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "4-8"},
	{name: "the place before the name in its cell", file: "alder-bank_2026-01-03",
		text:    "Result|Time|Running club\n1. Jo Lee|18:20|Fell AC\n2. Al Roe|18:31|\n3. Cy Dee|18:40|Mill Joggers\n4. Di Fox|18:44|\nEd Gow|DNF|\n",
		columns: "name time club position", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "the place before the name under a heading of both", file: "alder-bank_2026-01-03",
		text:    "Pos Name|Time|Club\n1 Jo Lee|18:20|Fell AC\n2 Al Roe|18:31|\n3 Cy Dee|18:40|Mill Joggers\n4 Di Fox|18:44|\n",
		columns: "name time club position", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "numbers before names that are no places", file: "alder-bank_2026-01-03",
		text:    "Name|Time\n214 Jo Lee|18:20\n77 Al Roe|18:31\n390 Cy Dee|18:40\n12 Di Fox|18:44\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "names over clubs, most without a club", file: "alder-bank_2026-01-03", only: "text",
		text:    "Pos,\"Name\nClub\",Time\n1,\"Jo Lee\nFell AC\",18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:44\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3 5-7"},
	{name: "towns in three languages, and lines out of the ranking", file: "seeufer-rietli_2026-01-03",
		text:    "Rang|Name|Ort/Lieu/Luogo|Zeit\n1|Jo Lee|Biberau|18:20\n2|Al Roe|Valcresse|18:31\n2|Al Roe|Valcresse|18:31\n3|Cy Dee|Biberau|18:40\n4|Di Fox|Valcresse|18:44\n5|Ed Gow|Biberau|19:10\n6|Fay Hill|Valcresse|19:40\n|Gus Ide|Biberau|18:35\n",
		columns: "position name - time", run: "seeufer-rietli 2026-01-03", rows: "2-9"},
	{name: "a branch for each sex, and the letters for them in Indonesian", file: "alder-bank_2026-01-03",
		text:    "Lugar|Nombre|Rama|Tiempo\n1|Jo Lee|Varonil|18:20\n2|Al Roe|Femenil|18:31\n3|Cy Dee|Varonil|18:40\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "initials of two given names", file: "alder-bank_2026-01-03",
		text:    "Ser|Rank|Surname|Inits|Unit|Time\n1|Cpl|LEE|J A|HQ|18:20\n2|Pte|ROE|A.B.|Stores|18:31\n3|Pte|ROE|C|Stores|18:40\n",
		columns: "position - family-name given-name - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a family called like a word of totals, in a column of its own", file: "alder-bank_2026-01-03",
		text:    "Surname|First name|DOB|Time|Paid\nAshe|Jo|1990-02-01|19:20|1\nBest|Al|1984-03-09|18:31|1\nDee|Cy|1971-11-20|24:40|1\nFox|Di|1966-01-02|22:40|1\nTotal||||4\n",
		columns: "family-name given-name birth-date time -", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a label of the route that names none beside one of the sky", file: "Ergebnis",
		text:    "14. Haselauer Waldlauf|Samstag, 3. Januar 2026\nStrecke: 5,0 km|Himmel: heiter, 12 °C\n\nPl.|Name|Zeit\n1.|Jo Lee|18:20\n2.|Al Roe|18:31\n3.|Cy Dee|18:40\n",
		columns: "position name time", run: "haselauer-waldlauf 2026-01-03", rows: "5-7"},
	{name: "members under a heading that is like one for numbers", file: "alder-bank_2026-01-03",
		text:    "N°|Licencié|Né(e) le|Place|Chrono\n1|Lee Jo|1990-02-01|8|0:18:20\n2|Roe Al|1984-03-09|14|0:18:31\n3|Dee Cy|1971-11-20|17|0:18:40\n4|Fox Di|1966-01-02|20|0:18:44\n",
		columns: "number name birth-date position time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "numbers of members under that heading", file: "alder-bank_2026-01-03",
		text:    "Place|Licencié|Coureur|Chrono\n1|A 4411|Lee Jo|0:18:20\n2|A 2231|Roe Al|0:18:31\n3|B 9917|Dee Cy|0:18:40\n",
		columns: "position number name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "people are spoken to before the course is named", file: "x",
		text:    "Right you lot, Mill Leat 5k results, 21/01/2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "mill-leat 2026-01-21", rows: "3-4"},
	{name: "minutes and seconds apart, and remarks at the end", file: "lunch 2026-01-03",
		text:    "Mill works lunchtime 5k - Canal Path - Saturday 03/01/2026\nRank|Employee|Staff no|Dept|Mins|Secs|Comments\n1|Tess O'Dowd|40314|Tool Room|21|58|\n2|Al March|40407|Paint|22|9|\n3|Cy Walker|40312|Stores|22|22|\n4|Di Fox|40689|HR|22|44|\n5|Ed Gow|40687|HR|23|1|\n6|Flo Hay|40669|Paint|23|50|\n7|Gus Ing|40713|HR|24|18|\n8|Ida Kay|40914|Paint|25|3|\n9|Jay Low|40649|HR|25|10|watch stopped late\n10|Kim Moy|40279|Paint|25|10|\n",
		columns: "position name - - - - notes time", run: "canal-path 2026-01-03", rows: "3-12"},
	{name: "the order of arrival, with an elided article", file: "arrivo 2026-01-03",
		text:    "ORDINE D'ARRIVO||5 KM NERVI ALTA||sabato 03/01/2026\npos.|cognome e nome|tempo uff.\n1|LEE JO|00:18:20\n2|ROE AL|00:18:31\n3|DEE CY|00:18:40\n",
		columns: "position name time", run: "nervi-alta 2026-01-03", rows: "3-5"},
	{name: "a club's magazine, whose club is no course", file: "clubblad 2026-01-03",
		text:    "Clubblad AV De Loper - donderdagtraining 3 januari 2026 - rondje Dijkhof 5 km\nPlaats|Naam|Tijd\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n",
		columns: "position name time", run: "rondje-dijkhof 2026-01-03", rows: "3-5"},
	{name: "lists in the order of the finish, in German", file: "x",
		text:    "Einlaufliste Dorfrunde Sievershof, Sa. 3.1.2026\nPlatz|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n",
		columns: "position name time", run: "dorfrunde-sievershof 2026-01-03", rows: "3-5"},
	{name: "a race across the country on a Saturday, in Romanian", file: "cros 2026-01-03",
		text:    "Crosul de sâmbătă – Parcul Lupșan\n03.01.2026\nLoc|Nume|Timp\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n",
		columns: "position name time", run: "parcul-lupsan 2026-01-03", rows: "4-6"},
	{name: "boys and girls in short, in Polish", file: "alder-bank_2026-01-03",
		text:    "M-ce|Imię i nazwisko|chł./dz.|Wynik\n1|Jo Lee|dz.|18:20\n2|Al Roe|chł.|18:31\n3|Cy Dee|chł.|18:40\n4|Di Fox|dz.|18:44\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "years of birth under a letter", file: "alder-bank_2026-01-03",
		text:    "No.|Runner|b.|Sex|Time\n1|Jo Lee|'63|f|18:20\n2|Al Roe|'07|m|18:31\n3|Cy Dee|'88|m|18:40\n4|Di Fox|'71|f|18:44\n",
		columns: "position name birth-year sex time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "numbers on tags, and no days", file: "alder-bank_2026-01-03",
		text:    "Tag|Name|Time\n332|Jo Lee|18:20\n30|Al Roe|18:31\n712|Cy Dee|18:40\n921|Di Fox|18:44\n709|Ed Gow|18:50\n264|Flo Hay|18:52\n118|Gus Ing|18:58\n501|Ida Kay|19:01\n",
		columns: "number name time", run: "alder-bank 2026-01-03", rows: "2-9"},
	{name: "the clock at start and finish beside each runner's own time", file: "alder-bank_2026-01-03",
		text:    "No.|Competitor|Start|Finish|Net\n11|Jo Lee|18:30:00|18:48:20|0:18:20\n22|Al Roe|18:30:00|18:48:31|0:18:31\n33|Cy Dee|18:30:00|18:48:40|0:18:40\n44|Di Fox|18:30:00|DNF|\n",
		columns: "position name session - time", run: "alder-bank 2026-01-03 18:30", rows: "2-5"},
	{name: "provisional and final times", file: "alder-bank_2026-01-03",
		text:    "Place|Name|Provisional time|Final time\n1|Jo Lee|18:20|18:21\n2|Al Roe|18:31|18:30\n3|Cy Dee|18:40|18:40\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "times corrected for a handicap", file: "alder-bank_2026-01-03",
		text:    "Place|Name|Elapsed time|Corrected time\n1|Jo Lee|18:20|14:21\n2|Al Roe|18:31|15:30\n3|Cy Dee|18:40|15:40\n",
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "tenths in a column of their own", file: "alder-bank_2026-01-03",
		text:    "Pl.|Name|Min|Sec|1/10|Club\n1|Jo Lee|18|20|4|Fell AC\n2|Al Roe|18|31|0|\n3|Cy Dee|18|40|9|Fell AC\nDNF|Di Fox||||\n",
		columns: "position name - - - club time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "names of runners above the results", file: "Alder Bank 3 January 2026",
		text:    "Best women today|Jo Lee, Di Fox, Flo Hay\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Di Fox|18:40\n4|Flo Hay|18:44\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-6"},
	{name: "places among few in their class", file: "alder-bank_2026-01-03",
		text:    "PLACE|DIV/TOT|DIV|GUN|NAME|AG|S\n1|1/3|M4044|18:20|Al Roe|41|M\n2|2/4|M5054|18:31|Cy Dee|52|M\n3|1/2|F4044|18:40|Jo Lee|43|F\n4|2/3|M4044|18:44|Ed Gow|44|M\n5|3/4|M5054|18:50|Gus Ing|53|M\n",
		columns: "position group-place age-group time name age sex", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "times under a word for when", file: "alder-bank_2026-01-30",
		text:    "No|Who|When\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|24:40\n",
		columns: "position name time", run: "alder-bank 2026-01-30", rows: "2-4"},
	{name: "when people came, under a word for when", file: "alder-bank_2026-01-30",
		text:    "No|Who|When\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n",
		columns: "position name -", run: "alder-bank 2026-01-30", rows: "2-4"},
	{name: "the start above the clock at the finish", file: "alder-bank_2026-01-03",
		text:    "Alder Bank 5k||Gun 09:02:00\nOrder|Name|Crossed line at\n1|Jo Lee|09:20:20\n2|Al Roe|09:20:31\n3|Cy Dee|09:20:40\n4|Di Fox|09:20:44\n5|Ed Gow|09:21:10\n6|Flo Hay|09:22:01\n7|Gus Ing|09:23:00\n8|Ida Kay|09:24:41\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "3-10"},
	{name: "two columns of names under one word", file: "alder-bank_2026-01-03",
		text:    "Rk|Name|Name|Yr|Time\n1|Lee|Jo|1990|18:20\n2|Roe|Al|1991|18:31\n3|Dee|Jo|1985|18:40\n4|Fox|Al|1970|18:44\n",
		columns: "position family-name given-name birth-year time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "three facts in a column", file: "alder-bank_2026-01-03",
		text:    "Pos|Name / Club / Cat|Time\n1|Jo Lee / Fell AC / SW|18:20\n2|Al Roe / - / VM40|18:31\n3|Unknown|18:40\n4|Di Fox / Mill Joggers / VW45|18:44\n5|Ed Gow / - / SM|18:50\n",
		columns: "position name time club age-group", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "a Spanish school's classes", file: "carrera 3 de enero de 2026",
		text:    "Colegio Villalta\nLlegada|Alumno|Curso|Marca\n1|Jo Lee|3ºB|18:20\n2|Al Roe|3ºA|18:31\n3|Cy Dee|3ºA|18:40\n",
		columns: "position name - time", run: "colegio-villalta 2026-01-03", rows: "3-5"},
	{name: "boys and girls in Swedish", file: "alder-bank_2026-01-03",
		text:    "Nr|Elev|P/F|Tid\n1|Jo Lee|F|18:20\n2|Al Roe|P|18:31\n3|Cy Dee|P|18:40\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "laps in seconds and their sum", file: "alder-bank_2026-01-03",
		text:    "Bib|Runner|Lap 1|Lap 2|Lap 3|Total (s)|Rank\n11|Jo Lee|360|370|370|1100|1\n22|Al Roe|365|370|376|1111|2\n33|Cy Dee|370|375|375|1120|3\n44|Di Fox|390||||DNF\n",
		columns: "number name split split split time position", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "laps in seconds beside how often somebody has run", file: "alder-bank_2026-01-03",
		text:    "Bib|Runner|Lap 1|Lap 2|Lap 3|Total|Time\n11|Jo Lee|360|370|370|12|18:20\n22|Al Roe|365|370|376|3|18:31\n33|Cy Dee|370|375|375|45|18:40\n",
		columns: "number name split split split total-runs time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "times on the way of somebody who did not finish", file: "alder-bank_2026-01-03",
		text:    "Rank|Name|1k|2k|3k|4k|5k\n1|Jo Lee|3:40|7:20|11:00|14:40|18:20\n2|Al Roe|3:42|7:24|11:06|14:48|18:31\n3|Cy Dee|3:50|7:40|11:30|15:20|19:10\nDNF|Di Fox|4:10|8:40|13:05||\n",
		columns: "position name split split split split time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a fact a row", file: "alder-bank_2026-01-03",
		text:    "Position|1\nName|Jo Lee\nGender|F\nTime|18:20\n|\nPosition|2\nName|Al Roe\nGender|M\nTime|18:31\n|\nPosition|3\nName|Cy Dee\nGender|M\nTime|18:40\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2 7 12"},
	{name: "a league before the place on its line", file: "results",
		text:    "Inter-Works League round 2 - Mill Lade Wood 5K - 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "mill-lade-wood 2026-01-03", rows: "3-4"},
	{name: "a league at a place, before what it is", file: "results",
		text:    "Salter Green League - Match 3 - 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "salter-green 2026-01-03", rows: "3-4"},
	{name: "an office and its department over the route", file: "loopavond 3",
		text:    "Gemeente Zandhoek – Sport & Bewegen\nRoute: Molenaarpad (5 km)||03-01-2026\nnr|Deelnemer|m/v|Eindtijd\n1|Jo Lee|v|18:20\n2|Al Roe|m|18:31\n",
		columns: "position name sex time", run: "molenaarpad 2026-01-03", rows: "4-5"},
	{name: "what the route is like", file: "Alder Bank 3 January 2026",
		text:    "Route: two laps, gate 3 locked\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "a word for company sport before the company", file: "uge 1",
		text:    "Firmaidræt – Skovbo Fabrikken 5 km\nafholdt den 3. januar 2026\nNr.|Navn|Køn|Tid\n1|Jo Lee|K|18:20\n2|Al Roe|M|18:31\n",
		columns: "position name sex time", run: "skovbo-fabrikken 2026-01-03", rows: "4-5"},
	{name: "a word that leads to the day", file: "bieg 1",
		text:    "Park Borowiec\nw dniu 03.01.2026\nLp.|Imię i nazwisko|Czas\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "park-borowiec 2026-01-03", rows: "4-5"},
	{name: "the day of the next list stands over its birth dates", file: "results",
		text:    "Alder Bank|||2026-01-03\nPlace|Name|Sex|Date of birth|Time\n1|Jo Lee|F|13.07.1995|18:20\n2|Al Roe|M|09.10.1985|18:31\n\nAlder Bank|||2026-01-10\nPlace|Name|Sex|Date of birth|Time\n1|Cy Dee|M|22.10.1996|19:02\n2|Di Fox|F|04.11.1967|19:40\n",
		columns: "position name sex birth-date time", run: "alder-bank 2026-01-03", rows: "3-4 8-9"},
	{name: "somebody without a result and with a birth date is no title", file: "alder-bank_2026-01-03",
		text:    "Place|Name|Date of birth|Time\n1|Jo Lee|13.07.1995|18:20\n2|Al Roe|09.10.1985|18:31\n|Cy Dee|22.10.1996|\n3|Di Fox|04.11.1967|19:40\n4|Ed Gow|04.12.1967|19:50\n",
		columns: "position name birth-date time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "the club's name over a list whose file is called after the course", file: "Alder Bank 3 January 2026",
		text:    "Results\nMill Heath Club\nPos|Name|Club|Time\n1|Jo Lee|Fell Harriers|18:20\n2|Al Roe|Mill Heath Club|18:31\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "a club of the list over the name of the course", file: "results",
		text:    "Sokol Lhota\nAlder Bank\n3 January 2026\nPos|Name|Club|Time\n1|Jo Lee|Fell Harriers|18:20\n2|Al Roe|Sokol Lhota|18:31\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "5-6"},
	{name: "nothing but the club's name", file: "results",
		text:    "Heron Town RC\n3 January 2026\nPos|Name|Club|Time\n1|Jo Lee|Fell Harriers|18:20\n2|Al Roe|Heron Town RC|18:31\n",
		columns: "position name club time", run: "heron-town-rc 2026-01-03", rows: "4-5"},
	{name: "one place for all days, sorted by name", file: "season",
		text:    "Fell Tri\nPořadí|Jméno|Klub|Čas|Místo|Datum\n2|Al Roe|Fell Tri|18:31|Alder Bank|3.1.2026\n1|Al Roe|Fell Tri|18:32|Alder Bank|10.1.2026\n3|Cy Dee||19:02|Alder Bank|3.1.2026\n4|Di Fox||19:40|Alder Bank|3.1.2026\n3|Di Fox||19:41|Alder Bank|10.1.2026\n1|Jo Lee|Fell AC|18:20|Alder Bank|3.1.2026\n2|Jo Lee|Fell AC|18:40|Alder Bank|10.1.2026\n5|Ed Gow||20:40|Alder Bank|3.1.2026\n",
		columns: "position name club time course date", run: "alder-bank 2026-01-03", rows: "3-10"},
	{name: "an average in the column of times, first on the line, before one of names", file: "alder-bank_2026-01-03",
		text:    "Time|Name|Sex|Pos\n18:20|Jo Lee|F|1\n18:31|Al Roe|M|2\n19:02|Cy Dee|M|3\n\nTotal finishers|3\nAverage time|18:38\nMen|2|Women|1\n",
		columns: "time name sex position", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "M and H of a column of sexes between places and age grades are no marks of minutes", file: "alder-bank_2026-01-03",
		text:    "Corredor|Posición|Sexo|AG %|Marca\nJo Lee|001|M|52.11|18:20\nAl Roe|002|H|51.52|18:31\nCy Dee|003|H|55.62|19:02\nDi Fox|004|M|49.09|19:40\n",
		columns: "name position sex age-grade time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a run for some people over the name of the place", file: "results",
		text:    "Depot fun run\nGorse Park\n3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "gorse-park 2026-01-03", rows: "5-6"},
	{name: "a distance for some people over the name of the place", file: "results",
		text:    "Staff 5k\nGorse Park\n3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "gorse-park 2026-01-03", rows: "5-6"},
	{name: "a fun run at a place of its own", file: "results",
		text:    "Gorse Park fun run\nFell Town\n3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "gorse-park 2026-01-03", rows: "5-6"},
	{name: "an average behind its time", file: "alder-bank_2026-01-03",
		text:    "Time|Name|Sex|Pos\n18:20|Jo Lee|F|1\n18:31|Al Roe|M|2\n19:02|Cy Dee|M|3\n18:38|Average||\n",
		columns: "time name sex position", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "parts of a day without a heading", file: "alder-bank_2026-01-03",
		text:    "1|457|Jo Lee|Fell AC|0.0127314814814815|83.76%\n2|403|Al Roe||0.0128587962962963|42.58%\n3|663|Cy Dee|Fell AC|0.0132175925925926|69.06%\n4|315|Di Fox||0.0136574074074074|49.97%\n5|312|Ed Gow||0.0145|39.97%\n",
		columns: "position - name club time -", run: "alder-bank 2026-01-03", rows: "1-5"},
	{name: "two words that a capital tells apart", file: "AlderBank_20260103",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "minutes and seconds divided by a dash, without headings", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|18-20\n2|Al Roe|18-31\n3|Cy Dee|19-02\n4|Di Fox|19-40\n5|Ed Gow|20-24\n6|Fi Hay|21-05\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "1-6"},
	{name: "a heading on the second page only, below somebody without a time", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|F|18:20\n2|Al Roe|M|18:31\n3|Cy Dee|M|\n4|Di Fox|F|19:40\n5|Ed Gow|M|19:50\nPage 1\nPos|Name|Sex|Time\n6|Fi Hay|F|20:02\n7|Gus Ives|M|20:11\nPage 2\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "1-5 8-9"},
	{name: "places of some of the field under a word for classes", file: "alder-bank_2026-01-03",
		text:    "Class.|Nominativo|Sesso|Cat.|Tempo\n4|Jo Lee|F|40-44|18:20\n16|Al Roe|M|45-49|18:31\n27|Cy Dee|M|40-44|19:02\n35|Di Fox|F|35-39|19:40\n",
		columns: "position name sex age-group time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "the year of a record over days without a year", file: "Alder Bank 2026",
		text:    "Course record: 15:21 Tom Marlow (2019)\n20 Jan\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-20", rows: "4-5"},
	{name: "decimal minutes under T. final", file: "alder-bank_2026-01-03",
		text:    "Pos.|T. final|Apellidos|Nombre\n1|2.20|Lee|Jo\n2|24.37|Roe|Al\n3|25.03|Dee|Cy\n4|26.92|Fox|Di\n",
		columns: "position time family-name given-name", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a remark of two words before the names, without headings", file: "alder-bank_2026-01-03",
		text:    "1||M|Jo Lee|40-44|18:20\n2|PB by 0:12|M|Al Roe|35-39|18:31\n3||F|Cy Dee|40-44|19:02\n4||F|Di Fox|20-34|19:40\n5||M|Ed Gow|20-34|19:50\n6||M|Flo Hay|20-34|19:59\n",
		columns: "position - sex name age-group time", run: "alder-bank 2026-01-03", rows: "1-6"},
	{name: "how many men and women there were, below lists of both", file: "alder-bank_2026-01-03",
		text:    "MEN\nPos|Name|Age Cat|Time\n1|Jo Lee|Sen|18:20\n2|Al Roe|V35|18:31\n\nWOMEN\nPos|Name|Age Cat|Time\n3|Cy Dee|Sen|19:02\n4|Di Fox|V40|19:40\n\nMen 2, Women 2\n",
		columns: "position name age-group time sex", run: "alder-bank 2026-01-03", rows: "3-4 8-9"},
	{name: "strokes for those who were not there", file: "grid",
		text:    "Alder Bank\nName|3 January 2026|10 January 2026\nJo Lee|18:20|-\nAl Roe|18:31|18:33\nCy Dee|–|19:02\nDi Fox|19:40|20:02\nEd Gow||20:11\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "3-4 6 4-7"},
	{name: "a French day under lower-case headings", file: "alder-bank",
		text:    "03/02/2026\nplace|coureur|h/f|club|arrivée\n1|Jo Lee|Féminin|Fell AC|18:20\n2|Al Roe|Masculin||18:31\n",
		columns: "position name sex club time", run: "alder-bank 2026-02-03", rows: "3-4"},
	{name: "years of two figures without a heading", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|96|18:20\n2|Al Roe|97|18:31\n3|Cy Dee|04|19:02\n4|Di Fox|71|19:28\n5|Ed Gow|85|19:40\n6|Fi Hay|62|20:02\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "1-6"},
	{name: "ages without a heading, some of the old", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|36|18:20\n2|Al Roe|47|18:31\n3|Cy Dee|80|19:02\n4|Di Fox|71|19:28\n5|Ed Gow|85|19:40\n6|Fi Hay|82|20:02\n",
		columns: "position name age time", run: "alder-bank 2026-01-03", rows: "1-6"},
	{name: "years of birth under YB", file: "alder-bank_2026-01-03",
		text:    "Pl|Name|YB|Time\n1|Jo Lee|96|18:20\n2|Al Roe|07|18:31\n3|Cy Dee|64|19:02\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "answers to a form, in Dutch", file: "alder-bank_2026-01-03",
		text:    "Tijdstempel|Wat is je naam?|Ben je man of vrouw?|In welk jaar ben je geboren?|Wat was je tijd?\n3/1/2026 10:00:10|Jo Lee|Vrouw|1986|18:20\n3/1/2026 10:05:11|Al Roe|Man|1969|18:31\n4/1/2026 08:02:12|Cy Dee|Man|1949|19:02\n",
		columns: "- name sex birth-year time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "answers to a form, in Turkish", file: "alder-bank_2026-01-03",
		text:    "Zaman damgası|Adınız ve soyadınız nedir?|Cinsiyetiniz|Doğum yılınız?|Süreniz neydi?\n3/1/2026 10:00:10|Jo Lee|Kadın|1986|18:20\n3/1/2026 10:05:11|Al Roe|Erkek|1969|18:31\n3/1/2026 10:02:12|Cy Dee|Erkek|1949|19:02\n",
		columns: "- name sex birth-year time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a question that is none of ours", file: "alder-bank_2026-01-03",
		text:    "Name|Time|Would you like your name on the board?|How did you hear of us?\nJo Lee|18:20|Yes|Poster\nAl Roe|18:31|No|Friends\nCy Dee|19:02|Yes|Poster\n",
		columns: "name time - -", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "splits under their distances", file: "x",
		text:    "Alder Bank 3 January 2026\nPosition|Name|1 km|2 km|3 km|4 km|5 km\n1|Jo Lee|03:35|06:58|10:31|14:12|17:41\n2|Al Roe|03:36|06:59|10:33|14:14|17:48\n3|Cy Dee|03:41|07:12|10:53|14:44|18:20\n",
		columns: "position name split split split split time", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "a place after a label that ends like the name of a file", file: "zvezek",
		text:    "Proga|Hrastov Log\nDatum|3. januar 2026\nMesto|Ime|Čas\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "hrastov-log 2026-01-03", rows: "4-5"},
	{name: "a day in Lithuanian beside the place", file: "rez",
		text:    "Alder Bank|2026 m. sausio 3 d.\nVieta|Vardas|Laikas\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "the heading of a page of markup", file: "post", only: "text",
		text:    "# Alder Bank, 3 January 2026\n\nPosition|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-6"},
	{name: "the lines of a list by name are numbered", file: "alder-bank_2026-01-03",
		text:    "Lp.|Nazwisko|Imię|Czas\n1|Bryk|Jan|24:10\n2|Cap|Ewa|19:02\n3|Dudek|Ola|31:10\n4|Gaj|Piotr|18:20\n5|Lis|Adam|27:33\n6|Mazur|Ewa|22:45\n7|Nowak|Jan|29:50\n8|Olech|Iga|21:12\n9|Sowa|Jerzy|33:08\n",
		columns: "- family-name given-name time", run: "alder-bank 2026-01-03", rows: "2-10"},
	{name: "places under Lp., and names that stand in order by chance", file: "alder-bank_2026-01-03",
		text:    "Lp.|Nazwisko|Imię|Czas\n1|Bryk|Jan|18:20\n2|Cap|Ewa|19:02\n3|Dudek|Ola|21:12\n4|Gaj|Piotr|22:45\n5|Lis|Adam|24:10\n6|Mazur|Ewa|27:33\n7|Nowak|Jan|29:50\n8|Olech|Iga|31:10\n9|Sowa|Jerzy|33:08\n",
		columns: "position family-name given-name time", run: "alder-bank 2026-01-03", rows: "2-10"},
	{name: "what a list was handed in late, under the heading again", file: "alder-bank_2026-01-03",
		text:    "Place|Name|M/F|Time\n1|Jo Lee|F|18:20\n2|Al Roe|M|18:31\n3|Cy Dee|M|19:02\n\nHanded in late\n|Name|M/F|Time\n|Di Fox|F|19:40\n|Ed Gow|M|20:36\n",
		columns: "position name sex time notes", run: "alder-bank 2026-01-03", rows: "2-4 8-9"},
	{name: "the town and not the period is the place", file: "b31",
		text:    "Tabelle|B 3.1\nBerichtszeitraum|3.1.2026\nGebiet|Alder Bank\nStand|endgültig\n\nPlatz|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "7-8"},
	{name: "a course beside the town", file: "x",
		text:    "Town|Exton\nAlder Bank 5 km, 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "the number of the page beside the place", file: "druck", only: "text",
		text:    "Ergebnisse 5 km Alder Bank       Seite 1\n3. Januar 2026\nPlatz|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-6"},
	{name: "categories by letter between the rows, in Estonian", file: "alder-bank_2026-01-03",
		text:    "Koht|Nimi|Aeg\nVanuseklass N\n1|Jo Lee|18:20\n2|Di Fox|18:31\nKokku|2\nVanuseklass M\n1|Al Roe|17:20\n2|Cy Dee|19:31\nKokku|2\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 7-8"},
	{name: "groups by letter between the rows", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\nGroup A\n1|Jo Lee|18:20\n2|Di Fox|18:31\nGroup B\n3|Al Roe|19:20\n4|Cy Dee|19:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4 6-7"},
	{name: "course and day at the foot", file: "foot",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n\nCourse: Alder Bank\nDate: 3 January 2026\nSigned: M. Tranter, results\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "the next venue at the foot", file: "ember-quay_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n\nNext venue: Alder Bank\n",
		columns: "position name time", run: "ember-quay 2026-01-03", rows: "2-4"},
	{name: "years behind a word for born", file: "alder-bank_2026-01-03", only: "text",
		text:    "1. Jo Lee, Jg. 2003 – 18:20 Min.\n2. Al Roe, Jg. 1951 – 18:31 Min.\n3. Cy Dee, Jg. 1973 – 19:02 Min.\n4. Di Fox, Jg. 1988 – 19:22 Min.\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "how far it was above columns of one width", file: "ol", only: "text",
		text:    "Alder Bank evening run   3 January 2026\n\nRun 5 km (3)             5.0 km   35 m\n\n  Pl  Name                     YB  Club                     Time    Behind\n   1  Jo Lee                   58  Vale Harriers            18:20         \n   2  Al Roe                   07  Mill AC                  18:31    +0:11\n   3  Cy Dee                   74  Vale Harriers            19:02    +0:42\n",
		columns: "position name birth-year club time gap", run: "alder-bank 2026-01-03", rows: "6-8"},
	{name: "years in brackets before the dots that lead to the time", file: "l", only: "text",
		text:    "Alder Bank\n3. januar 2026\n\n 1. Niels Vang (1978) .................. 17:53\n 2. Jens Bo (1991) ..................... 21:26\n 3. Inge Bech (1955) ................... 21:44\n 4. Lars Lund (1962) ................... 22:44\n",
		columns: "position name time birth-year", run: "alder-bank 2026-01-03", rows: "4-7"},
	{name: "minutes and seconds in Hungarian", file: "mp",
		text:    "Alder Bank, 2026.01.03.\nHelyezés|Név|Életkor|perc|mp\n1|Lee Jo|34|18|20\n2|Roe Al|51|18|31\n3|Dee Cy|47|19|2\n4|Fox Di|29|20|15\n",
		columns: "position name age - - time", run: "alder-bank 2026-01-03", rows: "3-6"},
	{name: "coverage of a data set", file: "ds118",
		text:    "Identifier:|ds-118\nCreator:|Leisure Services\nIssued:|2026-01-09\nCoverage (spatial):|Alder Bank\nCoverage (temporal):|2026-01-03\n\norder|participant|elapsed\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "8-9"},
	{name: "the keys of open data", file: "opendata",
		text:    "title|5 km Results\npublisher|Town Council\nmodified|2026-01-06\ntemporal|2026-01-03\nspatial|Alder Bank\nlicence|CC0\nrecords|2\n\nrank|name|time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "10-11"},
	{name: "what a program says of its file", file: "raw", only: "text",
		text:    "#format|v3\n#event|Alder Bank\n#date|20260103\nbib|name|net_time\n12|Jo Lee|18:20\n9|Al Roe|18:31\n",
		columns: "number name time", run: "alder-bank 2026-01-03", rows: "5-6"},
	{name: "when the list was printed, in German", file: "druck",
		text:    "Ausdruck vom 06.01.2026 14:05\nAlder Bank, 3. Januar 2026\nPlatz|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "when the list was printed, in Polish", file: "wydruk",
		text:    "Wydruk z dnia 06.01.2026 14:05\nAlder Bank, 3 stycznia 2026\nMiejsce|Nazwisko|Czas\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "places among the men stand in a column of their own", file: "alder-bank_2026-01-03",
		text:    "Plaats|Naam|Plaats M|Plaats V|Tijd\n1|Bram Postma|1||16:45\n2|Wouter Hoekstra|2||17:17\n3|Liesbeth Postma||1|18:41\n4|Annelies Postma||2|19:16\n5|Sjoerd Postma|3||20:03\n6|Wim Vis|4||20:59\n",
		columns: "position name sex - time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "gaps without headings", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|18:20\n2|Al Roe|+0:11\n3|Cy Dee|+0:42\n4|Di Fox|+1:08\n5|Ed Gow|+1:20\n6|Fi Hay|+1:42\n7|Gus Ing|+1:50\n8|Hal Job|+2:04\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "1-8"},
	{name: "ages below which a class is, with a minus", file: "alder-bank_2026-01-03",
		text:    "Rang|Coureur|Cat.|Chrono\n1|Jo Lee|-18|18:20\n2|Al Roe|-16|18:31\n3|Cy Dee|-12|19:02\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a line says that the tail walker does not count", file: "alder-bank_2026-01-03",
		text:    "The tail walker is not in the results.\nPos|Name|Time|Note\n1|Jo Lee|18:20|\n2|Al Roe|18:31|PB\n3|Cy Dee|49:02|tail walker\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "classes of a school, all with one letter", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|Klasse|Zeit\n1|Jo Lee|7b|18:20\n2|Al Roe|10b|18:31\n3|Cy Dee|8b|19:02\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "school years", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Year|Time\n1|Jo Lee|7|18:20\n2|Al Roe|10|18:31\n3|Cy Dee|8|19:02\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "years of birth of two figures", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Year|Time\n1|Jo Lee|07|18:20\n2|Al Roe|10|18:31\n3|Cy Dee|85|19:02\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "days of birth with the year hidden", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|DOB|Time\n1|Jo Lee|19.03.**|18:20\n2|Al Roe|17.10.**|18:31\n3|Cy Dee|21.11.**|19:02\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a column of gaps begins with the first one's time", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Gap\n1|Jo Lee|18:20\n2|Al Roe|0:11\n3|Cy Dee|0:42\n4|Di Fox|1:08\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a column of gaps beside one of times", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Gap\n1|Jo Lee|18:20|18:20\n2|Al Roe|18:31|0:11\n3|Cy Dee|19:02|0:42\n4|Di Fox|19:28|1:08\n",
		columns: "position name time gap", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "the first one's time was not taken", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|0:00\n2|Al Roe|18:31\n3|Cy Dee|19:02\n4|Di Fox|19:28\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "times behind the first from zero", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Behind\n1|Jo Lee|18:20|0:00\n2|Al Roe|18:31|0:11\n3|Cy Dee|19:02|0:42\n4|Di Fox|19:28|1:08\n",
		columns: "position name time gap", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a sentence says whose the two lists are", file: "alder-bank_2026-01-03",
		text:    "Zuerst die Frauen, dann die Männer:\n\n1|Jo Lee|18:20\n2|Di Fox|18:31\n3|Fi Hay|19:02\n\n1|Al Roe|17:28\n2|Ed Gow|18:11\n3|Cy Dee|19:40\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-5 7-9"},
	{name: "a sentence says whose the first list is, and there is one list", file: "alder-bank_2026-01-03",
		text:    "Ladies first through the gate please\n\nPos|Name|Time\n1|Jo Lee|18:20\n2|Di Fox|18:31\n3|Fi Hay|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-6"},
	{name: "a mark that a line explains, and all others", file: "alder-bank_2026-01-03",
		text:    "Ladies are marked with a *. Everybody else is a man.\nPos|Name|Time\n1|Jo Lee*|18:20\n2|Al Roe|18:31\n3|Fi Hay*|19:02\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "a mark for something else of the women", file: "alder-bank_2026-01-03",
		text:    "* first lady\nPos|Name|Time\n1|Jo Lee*|18:20\n2|Al Roe|18:31\n3|Fi Hay|19:02\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "letters in brackets behind some times, explained", file: "alder-bank_2026-01-03", only: "text",
		text:    "(W) = women, all others men\n1. Al Roe 18:20\n2. Jo Lee 18:31 (W)\n3. Cy Dee 19:02\n4. Di Fox 19:28 (W)\n",
		columns: "position name time - sex", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "the women's results, in Hungarian", file: "alder-bank_2026-01-03",
		text:    "A nők eredményei:\n1|Jo Lee|18:20\n2|Di Fox|18:31\n3|Fi Hay|19:02\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "clubs behind names in two columns, without headings", file: "alder-bank_2026-01-03",
		text:    "1|Lee|Jo|SK Vale|18:20\n2|Roe|Al|Mill Joggers|18:31\n3|Dee|Cy|Fell AC|19:02\n4|Fox|Di|Vale Striders|19:28\n5|Gow|Ed|Mill Road Runners|19:40\n6|Hay|Fi|SK Vale|20:02\n",
		columns: "position - - - time", run: "alder-bank 2026-01-03", rows: "1-6", asks: "name-columns-unclear"},
	{name: "clubs behind family names of two words and first names, without headings", file: "alder-bank_2026-01-03",
		text:    "1|De Santis|Giulia|SK Vale|18:20\n2|Di Marco|Luca|Mill Joggers|18:31\n3|Colombini|Ornella|Fell AC|19:02\n4|Zanetti|Diego|Vale Striders|19:28\n5|De Santis|Enzo|Mill Road Runners|19:40\n6|Rossi|Fia|SK Vale|20:02\n",
		columns: "position - - - time", run: "alder-bank 2026-01-03", rows: "1-6", asks: "name-columns-unclear"},
	{name: "first names of one length", file: "alder-bank_2026-01-03", only: "text",
		text:    "1  Breda Kos     18:20\n2  Spela Hrib    18:31\n3  Tanja Zupan   19:02\n4  Breda Zagar   19:28\n5  Urska Malin   19:40\n6  Tanja Oblak   20:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "1-6"},
	{name: "sexes in brackets behind the times of a message", file: "alder-bank_2026-01-03", only: "text",
		text:    "1. Jo Lee 18:20 (F)\n2. Al Roe 18:31 (M)\n3. Cy Dee 19:02 (M)\n4. Di Fox 19:28 (F)\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "minutes in brackets behind the times of a message", file: "alder-bank_2026-01-03", only: "text",
		text:    "1. Jo Lee 18:20 (min)\n2. Al Roe 18:31 (min)\n3. Cy Dee 19:02 (min)\n4. Di Fox 19:28 (min)\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "ages before sexes in brackets", file: "alder-bank_2026-01-03", only: "text",
		text:    "1. Jo Lee (30, v) 18:20\n2. Al Roe (39, m) 18:31\n3. Cy Dee (77, m) 19:02\n4. Di Fox (21, v) 19:28\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "places before sexes in brackets", file: "alder-bank_2026-01-03", only: "text",
		text:    "1. Jo Lee (1, f) 18:20\n2. Al Roe (1, m) 18:31\n3. Cy Dee (2, m) 19:02\n4. Di Fox (2, f) 19:28\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "years of two figures behind names", file: "alder-bank_2026-01-03", only: "text",
		text:    "1. Jo Lee '63 18:20\n2. Al Roe '07 18:31\n3. Cy Dee '48 19:02\n4. Di Fox '71 19:28\n5. Ed Gow '90 19:40\n6. Fi Hay '88 20:02\n7. Gus Ing '54 20:10\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "1-7"},
	{name: "He and Da", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|Kat.|Zeit\n1|Jo Lee|Da|18:20\n2|Al Roe|He|18:31\n3|Cy Dee|He|19:02\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a sentence names the place", file: "mail/results 8 Aug",
		text:    "Hi all\nhere are the results from Alder Bank on Saturday 3rd January 2026, fine weather:\n\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "5-6"},
	{name: "times of day at start and finish, close together, and the time between", file: "waves",
		text:    "Alder Bank, 3 January 2026\nPlace|Bib|Athlete|Start|Finish|Net time\n1|7|Jo Lee|9:30:00|9:48:20|18:20\n2|9|Al Roe|9:30:20|9:48:51|18:31\n3|4|Cy Dee|9:30:10|9:49:12|19:02\n4|5|Di Fox|9:30:30|9:49:58|19:28\n5|6|Ed Gow|9:30:05|9:50:16|20:11\n",
		columns: "position number name - - time", run: "alder-bank 2026-01-03", rows: "3-7"},
	{name: "places of men and of women in columns of their own", file: "two places",
		text:    "Alder Bank, 3 January 2026\nFinish Pos|M pos|F pos|Runner|Time\n1|1||Al Roe|18:20\n2||1|Jo Lee|18:31\n3|2||Cy Dee|19:02\n4|3||Ed Gow|19:28\n5||2|Di Fox|20:11\n6|4||Gus Ing|20:40\n",
		columns: "position sex - name time", run: "alder-bank 2026-01-03", rows: "3-8"},
	{name: "ticks under a man and a woman, among few headings", file: "kruisjes",
		text:    "Alder Bank, 3 januari 2026\nPos.|Naam|Man|Vrouw|Nettotijd\n1|Al Roe|x||18:20\n2|Jo Lee||x|18:31\n3|Cy Dee|x||19:02\n",
		columns: "position name sex - time", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "days in blocks under a heading that is not known", file: "saison",
		text:    "Alder Bank\nLaufabend|Platz|Name|Zeit\n2026-01-03|1|Jo Lee|18:20\n2026-01-03|2|Al Roe|18:31\n2026-01-03|3|Cy Dee|19:02\n2026-01-03|4|Di Fox|19:28\n2026-01-10|1|Jo Lee|18:22\n2026-01-10|2|Al Roe|18:30\n2026-01-10|3|Cy Dee|19:12\n2026-01-10|4|Di Fox|19:48\n",
		columns: "date position name time", run: "alder-bank 2026-01-03", rows: "3-10"},
	{name: "a place beside the date that stands once for each day, and counts of men and women below", file: "wyniki",
		text:    "Wyniki\n\nData|Miejscowość|Miejsce|Zawodnik|Czas\n2026-01-03|Alder Bank|1|Jo Lee|18:20\n||2|Al Roe|18:31\n||3|Cy Dee|19:02\n||4|Di Fox|19:28\n||5|Gus Ing|19:40\n||6|Hal Job|20:01\n\nTotal finishers|6\nMen|4|Women|2\n",
		columns: "date course position name time", run: "alder-bank 2026-01-03", rows: "4-9"},
	{name: "a round of a series before the place", file: "results", text: "3 January 2026\nWinter Series round 2 of 6: Alder Bank\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "an invitation", file: "results", text: "Vale Harriers AC invites you to Alder Bank | 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "running, in French, and a wood", file: "resultats", text: "Course à pied du samedi\nBois de Vernelle\n3 janvier 2026\nPlace|Nom|Temps\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "bois-de-vernelle 2026-01-03", rows: "5-6"},
	{name: "a Saturday run with a number, and a park", file: "wyniki", text: "Bieg sobotni nr 45\nPark Zielony\n3.01.2026\nMiejsce|Nazwisko|Czas\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "park-zielony 2026-01-03", rows: "5-6"},
	{name: "the fourth of its name", file: "resultados", text: "IV Carrera Popular Parque del Sauce\n3 de enero de 2026\nPuesto|Nombre|Tiempo\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "parque-del-sauce 2026-01-03", rows: "4-5"},
	{name: "as at a later day", file: "results", text: "Provisional results as at 12:15 on 4 January 2026\nAlder Bank 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "a club and what it ran, and no place", file: "results 3 January 2026", text: "CLUB 5K HANDICAP\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "3-4", asks: "course-missing"},
	{name: "the week that a list is of is not the day", file: "results", text: "Alder Bank Results\nw/e 4.01.2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "4-5", asks: "date-missing"},
	{name: "the week beside the day", file: "results", text: "Alder Bank Results, Saturday 3 January 2026\nWeek ending 4.01.2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "a tie without a place is the first line of a page under two lines of headings", file: "alder-bank_2026-01-03",
		text:    "|Runner|||Finish\nPosition|Finisher|Sex|Club|Result\n1|Jo Lee|f|Vale|18:20\n2|Al Roe|m|Vale|18:31\n3|Cy Dee|m|Mill|19:02\n4|Di Fox|f|Mill|19:28\nPage 1 of 2\n\n|Runner|||Finish\nPosition|Finisher|Sex|Club|Result\n|Gus Ing|m|Vale|19:28\n",
		columns: "position name sex club time", run: "alder-bank 2026-01-03", rows: "3-6 11"},
	{name: "a date cut at its commas", file: "results", text: "Alder Bank\nSat| Jan 3| 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-6"},
	{name: "a date and a time of day as programs write them", file: "results", text: "Alder Bank\n20260103T0900\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-6"},
	{name: "whose list, when and where", file: "Vale members 13-01-2026 Alder Bank", text: "Overall|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-13", rows: "2-4"},
	{name: "men and women side by side, the first heading of each with the word above it", file: "alder-bank_2026-01-03", text: "Mœnd Place|Nqme|Club|Time||Women Place|Nqme|Club|Time\n1|Al Roe|Vale|18:20||1|Jo Lee|Mill|19:02\n2|Cy Dee|Vale|18:31||2|Di Fox|Mill|19:28\n3|Ed Gow|Fell|19:10||3|Fi Hay|Fell|20:11\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-4 2-4"},
	{name: "walkers under the runners, with fewer columns", file: "alder-bank_2026-01-03", text: "RUNNERS\nPos|Name|Club|Time\n1|Jo Lee|Vale|18:20\n2|Al Roe|Mill|18:31\n3|Cy Dee|Vale|19:02\n\nWALKERS\nName|Time\nDi Fox|48:10\nEd Gow|52:20\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "3-5 9-10"},
	{name: "winners under the runners, with fewer columns", file: "alder-bank_2026-01-03", text: "Pos|Name|Club|Time\n1|Jo Lee|Vale|18:20\n2|Al Roe|Mill|18:31\n3|Cy Dee|Vale|19:02\n\nPRIZES\nName|Time\nJo Lee|18:20\nAl Roe|18:31\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "best times under the runners", file: "alder-bank_2026-01-03", text: "Pos|Name|Club|Time\n1|Jo Lee|Vale|18:20\n2|Al Roe|Mill|18:31\n3|Cy Dee|Vale|19:02\n\nCourse records\nName|Time\nKim Ash|16:20\nLou Oak|16:31\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a place over each day of a season", file: "autumn 2025", text: "|Alder Bank|Moss Common|Moss Common\nRunner|2025-11-08|2025-11-15|2025-11-22\nJo Lee|18:20|18:40|18:31\nAl Roe|19:02||19:10\nCy Dee||20:11|20:00\n",
		columns: "name time", run: "alder-bank 2025-11-08", rows: "3-4 3 5 3-5"},
	{name: "the weather over each day of a season", file: "Alder Bank autumn 2025", text: "|Sunny|Rain|Windy\nRunner|2025-11-08|2025-11-15|2025-11-22\nJo Lee|18:20|18:40|18:31\nAl Roe|19:02||19:10\nCy Dee||20:11|20:00\n",
		columns: "name time", run: "alder-bank 2025-11-08", rows: "3-4 3 5 3-5"},
	{name: "ages at another day", file: "results", text: "Alder Bank, Sat 3 January 2026, ages at 31 December 2025\nPos|Name|Age|Time\n1|Jo Lee|31|18:20\n2|Al Roe|40|18:31\n",
		columns: "position name age time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "hours, minutes and seconds by their letters", file: "alder-bank_2026-01-03", text: "pos|name|hh|mm|ss\n1|Jo Lee|0|18|20\n2|Al Roe|0|18|31\n3|Cy Dee|0|19|2\n",
		columns: "position name - - - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "the heading of the second page is the first, and its words say little", file: "alder-bank_2026-01-03", text: "Gonçalo|Pinheiro|SM|18:20|1\nRui|Lourenço|SM|18:31|2\nRui|Almeida|M40|19:02|3\nAna|Dias|F35|19:28|4\nNome|Sobrenome|Escalão|Marca|Class.\nEva|Reis|F40|19:40|5\nTomé|Vaz|M45|20:11|6\nLia|Sá|F50|20:30|7\n",
		columns: "given-name family-name age-group time position", run: "alder-bank 2026-01-03", rows: "1-4 6-8"},
	{name: "the heading of the second page is the first, over seconds", file: "Book1", text: "Risultati: Alder Bank 3 gennaio 2026\n001|CAVALLI, Fabio|Vale|SM|1139\n002|RINALDI, Rico|Mill|SM40|1223\n003|VALENTI, Tom|Vale|SM40|1301\nClass.|Atleta|Squadra|Categoria|Tempo ufficiale\n004|MANFREDI, Al|Vale|SM|1305\n005|DELLA VALLE, Cy|Mill|SM50|1308\n006|FERRI, Di|Mill|SM50|1323\n",
		columns: "position name club age-group time", run: "alder-bank 2026-01-03", rows: "2-4 6-8"},
	{name: "a park named after a day", file: "resultats", text: "Parc du 8 Mai 1945\n3 janvier 2026\nPlace|Nom|Temps\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n",
		columns: "position name time", run: "parc-du-8-mai 2026-01-03", rows: "4-6"},
	{name: "six days, each said once", file: "saison",
		text:    "Datum|Ort|Name|Laufzeit\n2026-01-03|Alder Bank|Jo Lee|18:20\n||Al Roe|19:20\n||Cy Dee|20:20\n2026-01-10|Alder Bank|Al Roe|18:21\n||Cy Dee|19:21\n||Di Fox|20:21\n2026-01-17|Alder Bank|Cy Dee|18:22\n||Di Fox|19:22\n||Ed Gow|20:22\n2026-01-24|Alder Bank|Di Fox|18:23\n||Ed Gow|19:23\n||Fi Hay|20:23\n2026-01-31|Alder Bank|Ed Gow|18:24\n||Fi Hay|19:24\n||Jo Lee|20:24\n2026-02-07|Alder Bank|Fi Hay|18:25\n||Jo Lee|19:25\n||Al Roe|20:25\n",
		columns: "date course name time", run: "alder-bank 2026-01-03", rows: "2-19"},
	{name: "years of birth under a heading that is not known", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Rbk.|Time\n1|Jo Lee|1988|18:20\n2|Al Roe|2001|18:31\n3|Cy Dee|1969|19:02\n4|Di Fox|1992|19:28\n5|Ed Gow|1975|20:11\n6|Gus Ing|2008|20:40\n7|Hal Job|1957|21:10\n8|Ida Kay|1983|21:20\n9|Jay Low|1990|21:30\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "2-10"},
	{name: "a number before the name, commas, and a club now and then", file: "alder-bank_2026-01-03.txt",
		text:    "1. Jo Lee, 18:20\n2. Al Roe, Vale Striders, 18:31\n3. Cy Dee, Vale Striders, 19:02\n4. Di Fox, Mill RC, 19:28\n5. Ed Gow, 20:11\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "1-5"},
	{name: "the last columns have their heading in the upper line only", file: "alder-bank_2026-01-03",
		text:    "Place|||Time||Age group\nAll|M/F|Name|Gun|Net\n1|1|Al Roe|18:21|18:20|M40\n2|1|Jo Lee|18:33|18:31|W35\n3|2|Cy Dee|19:09|19:02|M45\n",
		columns: "position sex-place name time chip-time age-group", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "one heading for the name over those of its parts, of which one is the same", file: "alder-bank_2026-01-03",
		text:    "Clt|Nom||Club|Temps|\n|Prénom|Nom||min|s\n1|Al|Roe|AC Vernelle|18|20\n2|Jo|Lee|US Bief|18|31\n3|Cy|Dee|US Bief|19|02\n",
		columns: "position given-name family-name club - - time", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "unquoted commas in all names, under headings that are no sure ones", file: "alder-bank_2026-01-03", only: "text",
		text:    "Place,Participant,Running club,Finish\n1,Roe, Al,Vale AC,18:20\n2,Lee, Jo,Mill RC,18:31\n3,Dee, Cy,Mill RC,19:02\n4,Fox, Di,Vale AC,19:28\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a place whose name begins with an article", file: "resultats 1", text: "Résultats Les Trois Chênes – 3 janvier 2026\nPlace|Nom|Temps\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "les-trois-chenes 2026-01-03", rows: "3-4"},
	{name: "articles that lead to the name", file: "hoja", text: "Carrera de la Ribera Vieja\n3 de enero de 2026\nPuesto|Nombre|Tiempo\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "ribera-vieja 2026-01-03", rows: "4-5"},
	{name: "an article in the name of the file and none in the title", file: "the-rookery_2026-01-03", text: "Rookery 5k results\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "the-rookery 2026-01-03", rows: "3-4"},
	{name: "an article before a name and a run", file: "sheet", text: "The Alder Bank 5k – 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "a known course without its article", file: "sheet", text: "Elzenbos, 3 januari 2026\nPlaats|Naam|Tijd\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		o:       Options{Courses: []CourseName{{Course: "het-elzenbos", Weekday: -1}}},
		columns: "position name time", run: "het-elzenbos 2026-01-03", rows: "3-4"},
	{name: "a club's members at several places, each list under its place", file: "vale-striders-1",
		text:    "Vale Striders – Results Saturday 3 January 2026\n\nAlder Bank\nPos|Name|Time\n4|Jo Lee|19:20\n9|Al Roe|21:31\n\nEmber Quay\nPos|Name|Time\n7|Cy Dee|19:02\n8|Di Fox|19:28\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "5-6 10-11"},
	{name: "times in figures alone, without headings", file: "alder-bank_2026-01-03",
		text:    "1|Al Roe|1820|M45\n2|Jo Lee|1831|M45\n3|Cy Dee|1902|M45\n4|Di Fox|1928|M45\n5|Ed Gow|2011|M45\n6|Gus Ing|2040|M45\n7|Hal Job|2207|M45\n8|Ida Kay|2251|M45\n9|Jay Low|2503|M45\n10|Kit May|10244|M45\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "1-10"},
	{name: "seconds and tenths under a heading that is misspelt", file: "alder-bank_2026-01-03",
		text:    "Pos|Athlete|Fniish|AG\n1|Al Roe|1108.7|M45\n2|Jo Lee|1191.1|M45\n3|Cy Dee|1207.1|M45\n4|Di Fox|1230.4|M45\n5|Ed Gow|1251.0|M45\n6|Gus Ing|1280.9|M45\n7|Hal Job|1300.2|M45\n8|Ida Kay|1377.7|M45\n9|Jay Low|1402.3|M45\n10|Kit May|1688.8|M45\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "2-11"},
	{name: "a page of two columns whose times stand under Finish", file: "alder-bank_2026-01-03",
		text:    "Finish Pos|Participant|Finish||Finish Pos|Participant|Finish\n1|Al Roe|18:20||4|Di Fox|19:28\n2|Jo Lee|18:31||5|Ed Gow|20:11\n3|Cy Dee|19:02||6|Gus Ing|20:40\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4 2-4"},
	{name: "pages with the title again over each and the day of the print below", file: "export",
		text:    "Alder Bank – 20260103\nPos|Name|Time|Group\n1|Jo Lee|18:20|M45\n2|Al Roe|18:31|M45\nPage 1 of 2|||04/01/2026 10:12\n\nAlder Bank – 20260103\nPos|Name|Time|Group\n3|Cy Dee|19:02|M45\n4|Di Fox|19:28|W45\nPage 2 of 2|||04/01/2026 10:12\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "3-4 9-10"},
	{name: "pages without the title, the day of the print between them", file: "alder-bank_2026-01-03",
		text:    "Poř.|Jméno|Čas\n1|Jo Lee|18:20\n2|Al Roe|18:31\n1 / 2||4.1.2026 10:12\n\nPoř.|Jméno|Čas\n3|Cy Dee|19:02\n4|Di Fox|19:28\n2 / 2||4.1.2026 10:12\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3 7-8"},
	{name: "men and women between the rows, in Portuguese", file: "alder-bank_2026-01-03",
		text:    "Masculinos\nLugar|Atleta|Tempo\n1|Al Roe|18:20\n2|Cy Dee|19:02\n\nFemininos\nLugar|Atleta|Tempo\n1|Jo Lee|18:31\n2|Di Fox|19:28\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 8-9"},
	{name: "the course behind a label, in Czech", file: "run001",
		text:    "Trať:|Habrová Lhota\nDatum:|3. ledna 2026\nPoř.|Jméno|Čas\n1|Al Roe|18:20\n2|Cy Dee|19:02\n",
		columns: "position name time", run: "habrova-lhota 2026-01-03", rows: "4-5"},
	{name: "the list of results before the place, in Dutch", file: "Book1",
		text:    "Uitslagenlijst: Kromme Dijk 28 januari 2025\nPlaats|Naam|Tijd\n1|Al Roe|18:20\n2|Cy Dee|19:02\n",
		columns: "position name time", run: "kromme-dijk 2025-01-28", rows: "3-4"},
	{name: "the list of results before the place, in Polish", file: "Lista wyników Sosnowy Staw 1",
		text:    "16.12.2025\nMiejsce|Zawodnik|Czas\n1|Al Roe|18:20\n2|Cy Dee|19:02\n",
		columns: "position name time", run: "sosnowy-staw 2025-12-16", rows: "3-4"},
	{name: "a row that stands one cell too far to the right", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Sex|Time|Note\n1|Al Roe|M|18:20|\n2|Cy Dee|M|19:02|\n|3|Jo Lee|F|19:10\n4|Di Fox|F|19:28|\n5|Ed Gow|M|20:11|\n6|Gus Ing|M|20:40|\n7|Hal Job|M|21:10|\n8|Ida Kay|F|21:20|\n9|Jay Low|M|21:30|\n10|Kit May|F|22:01|\n11|Lew Nye|M|22:05|\n",
		columns: "position name sex time notes", run: "alder-bank 2026-01-03", rows: "2-12"},
	{name: "a row without its place, which stands one cell too far to the left", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Sex|Age\n1|Al Roe|18:20|M|34\n2|Cy Dee|19:02|M|41\nJo Lee|19:10|F|28|\n4|Di Fox|19:28|F|55\n5|Ed Gow|20:11|M|61\n6|Gus Ing|20:40|M|38\n7|Hal Job|21:10|M|19\n8|Ida Kay|21:20|F|70\n9|Jay Low|21:30|M|24\n10|Kit May|22:01|F|31\n11|Lew Nye|22:05|M|29\n12|May Orr|22:10|F|40\n13|Ned Poe|22:31|M|50\n14|Ola Quin|23:00|F|33\n15|Pam Rye|23:09|F|39\n16|Ray Sim|23:10|M|66\n17|Sue Tay|23:40|F|36\n18|Tom Utt|24:00|M|26\nRecord|16:40||2019|\n",
		columns: "position name time sex age", run: "alder-bank 2026-01-03", rows: "2-19"},
	{name: "a row without its place, among times with a dot and with a colon", file: "alder-bank_2026-01-03",
		text:    "pos|time|name|yob|sex\n1|18.38|Al Roe|2009|m\n2|18.55|Cy Dee|2004|m\n3|19:02|Jo Lee|1990|f\n4|19.20|Di Fox|1971|f\n19.40|Ed Gow|1953|m|\n6|20:01|Gus Ing|1960|m\n7|20.12|Hal Job|1988|m\n8|20.40|Ida Kay|1999|f\n",
		columns: "position time name birth-year sex", run: "alder-bank 2026-01-03", rows: "2-9"},
	{name: "a row that stands too far to the right on a short list", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Sex|Note\n1|Al Roe|18:20|M|\n2|Cy Dee|19:02|M|\n|3|Jo Lee|19:10|F\n4|Di Fox|19:28|F|\n",
		columns: "position name time sex notes", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "the best time of each beside the official one", file: "alder-bank_2026-01-03",
		text:    "Pos.|Nome|Cognome|Tempo ufficiale|Gun|Miglior tempo\n1|Al|Roe|18:20|18:24|18:01\n2|Jo|Lee|18:31|18:40|17:58\n3|Cy|Dee|19:02|19:03|18:44\n4|Di|Fox|19:28|19:31|18:22\n5|Ed|Gow|20:11|20:13|20:01\n6|Gus|Ing|20:40|20:45|19:02\n",
		columns: "position given-name family-name time - personal-best", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "the time that the places follow, beside another called the time", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Gun time|Time\n1|Al Roe|18:24|18:01\n2|Jo Lee|18:40|17:58\n3|Cy Dee|19:03|18:44\n4|Di Fox|19:31|18:22\n5|Ed Gow|20:13|20:01\n6|Gus Ing|20:45|19:02\n7|Hal Job|21:00|20:10\n",
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "2-8"},
	{name: "places under a word for classes in both halves of a page", file: "alder-bank_2026-01-03",
		text:    "Class.|Nominativo|Cat.|Tempo||Class.|Nominativo|Cat.|Tempo\n1|Al Roe|SM|18:20||26|Fay Ho|SF|24:20\n2|Jo Lee|SF|18:31||27|Gus Ing|SM40|24:31\n3|Cy Dee|SM40|19:02||28|Hal Job|SM45|25:02\n4|Di Fox|SF35|19:28||29|Ida Kay|SF|25:28\n5|Ed Gow|SM|20:11||30|Jay Low|SM|26:11\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "2-6 2-6"},
	{name: "years of birth of two figures, in Finnish", file: "alder-bank_2026-01-03",
		text:    "Sij.|Osallistuja|s.v.|Luokka|Aika\n1|Al Roe|89|M|18:20\n2|Jo Lee|79|N45|18:31\n",
		columns: "position name birth-year age-group time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "a club's members at several places, one of them with a single member", file: "vale-striders-2",
		text:    "Vale Striders – Results Saturday 3 January 2026\n\nAlder Bank\nPos|Name|Time\n4|Jo Lee|19:20\n9|Al Roe|21:31\n\nEmber Quay\nPos|Name|Time\n7|Cy Dee|19:02\n\nMere Common\nPos|Name|Time\n8|Di Fox|19:28\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "5-6 10 14"},
	{name: "which running of it this is, behind the place", file: "export1",
		text:    "Linnet Fields: 31st running, Saturday 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "linnet-fields 2026-01-03", rows: "3-4"},
	{name: "the heading only on the second page, and places with an ending", file: "run001",
		text:    "Alder Bank – 3 January 2026\n1st|Al Roe|M40|18:20\n2nd|Jo Lee|W40|18:31\n3rd|Cy Dee|M45|19:02\nRank|Athlete|Class|Finish time\n4th|Di Fox|W35|19:28\n5th|Ed Gow|M50|20:11\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "2-4 6-7"},
	{name: "classes and ages under Swedish and Dutch headings", file: "alder-bank_2026-01-03",
		text:    "Plac|Namn|Åldersklass|Lft|Tid\n1|Al Roe|M40|41|18:20\n2|Jo Lee|K45|46|18:31\n",
		columns: "position name age-group age time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "a Finnish month cut short", file: "tulokset", text: "Reitti|Korvenranta\nPvm|20 syys 2025\nSija|Nimi|Aika\n1|Al Roe|18:20\n2|Jo Lee|18:31\n",
		columns: "position name time", run: "korvenranta 2025-09-20", rows: "4-5"},
	{name: "a file called after a place with its article", file: "De Veenplas 2025-08-23", text: "Plaats|Naam|Tijd\n1|Al Roe|18:20\n2|Jo Lee|18:31\n",
		columns: "position name time", run: "de-veenplas 2025-08-23", rows: "2-3"},
	{name: "the day first by a Spanish label and heading", file: "hoja",
		text:    "Lugar|Alder Bank\nFecha|07/02/2026\n\nPto|Corredor|Género|T. neto\n1|Jo Lee|Mujer|18:20\n2|Al Roe|Hombre|18:31\n",
		columns: "position name sex time", run: "alder-bank 2026-02-07", rows: "5-6"},
	{name: "Hungarian sexes, and a heading one letter from a name", file: "alder-bank_2026-01-03",
		text:    "Helyezés|Név|Neme|Idő\n1|Al Roe|F|18:20\n2|Jo Lee|N|18:31\n3|Cy Dee|F|19:02\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "family names in Romanian", file: "alder-bank_2026-01-03",
		text:    "Loc|Nume de familie|Prenume|Timp\n1|Roe|Al|18:20\n2|Lee|Jo|18:31\n",
		columns: "position family-name given-name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "rows of a template below the last finisher", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|0:18:20\n2|#N/A|0:18:31\n3|Cy Dee|0:19:02\n4|#N/A|0:00:00\n5|#N/A|0:00:00\n\nThanks to all helpers\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "two places side by side over headings of two words", file: "both",
		text:    "Results 3 January 2026\n\nAlder Bank|||Ember Quay||\nFinish Pos|Runner|Finish time|Finish Pos|Runner|Finish time\n1|Jo Lee|18:20|1|Cy Dee|19:02\n2|Al Roe|18:31|2|Di Fox|19:28\n3|Ed Gow|18:40|3|Gus Ing|20:11\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "5-7 5-7"},
	{name: "a lake in Hungarian", file: "eredmények",
		text:    "Füzesi tó – Eredmények – 2026. január 3.\nHelyezés|Név|Idő\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "fuzesi-to 2026-01-03", rows: "3-4"},
	{name: "a word for weekly runs in the title and in the name of the file", file: "Lauftreff 2026",
		text:    "Hollerbruch – Ergebnisse Lauftreff – 3. Januar 2026\nPlatz|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "hollerbruch 2026-01-03", rows: "3-4"},
	{name: "typed lines, and nobody named and no group on some of them", file: "alder-bank_2026-01-03.txt",
		text:    "1 Jo Lee W40 18:20\n2 Al Roe M45 18:31\n3 Unknown 18:40\n4 Cy Dee SM 19:02\n5 Di Fox W50 19:28\n6 Gus Ing M50 20:11\n7 Ed Gow M55 20:40\n8 Hal Job M60 21:10\n9 Ida Kay W35 21:20\n10 Jay Low SM 21:30\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "1-10"},
	{name: "the organiser presents the place", file: "final_7",
		text:    "Vale Athletics Club presents the Alder Bank 5km time trial, held on Saturday 3rd January 2026 at 9.30am\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "the organiser presents with a colon", file: "ser_7",
		text:    "Vale Council presents: Alder Bank 5k\n3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "several labels in a line", file: "block_1",
		text:    "Course|Alder Bank||Weather|Dry\nDate|3 January 2026||Run Director|P. Quarmby\nStart|9:00||First man|17:50\n\nPOS|NAME|TIME (MM:SS)\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03 09:00", rows: "6-7"},
	{name: "printed on, entered on, next run on", file: "printed_3",
		text:    "Alder Bank|||Printed:|06/01/2026 14:22\nRace date:|03/01/2026\nPos|Name|Time|Entry date\n1|Jo Lee|18:20|13/12/2025\n2|Al Roe|18:31|20/12/2025\nNext run:|10/01/2026\n",
		o:       Options{DateOrder: "dmy"},
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "a list of runs to come", file: "nd_1",
		text:    "Alder Bank, Saturday 3rd January 2026\nNext runs: 10 January, 17 January\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "a program's remarks above its figures", file: "alder-bank_2026-01-03",
		text:    "# exported by the finish clock\n# clock 2, battery 80%\nplace|runner|time|sex\n1|Jo Lee|18:20|f\n2|Al Roe|18:31|m\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "moments of a database", file: "stamps",
		text:    "course|started_at|finished_at|name|elapsed|position\nAlder Bank|2026-01-03T09:00:00Z|2026-01-03T09:18:20Z|Jo Lee|00:18:20|1\nAlder Bank|2026-01-03T09:00:00Z|2026-01-03T09:18:31Z|Al Roe|00:18:31|2\n",
		columns: "course date - name time position", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "saint, sun and file names of the web", file: "cn",
		text:    "St Osyth's Sun Hill 5km, 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "st-osyths-sun-hill 2026-01-03", rows: "3-4"},
	{name: "file name of the web", file: "Alder%20Bank%202026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "time of day in the file name", file: "2026-01-03T090000 alder-bank",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "a place that ends in a word of headings, the best above all", file: "top_1",
		text:    "Lock Point|3 January 2026\nTop three\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\nFull results\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "lock-point 2026-01-03", rows: "8-9"},
	{name: "minutes, seconds and a pace that may be a time", file: "alder-bank_2026-01-03",
		text:    "Rang|Name|Min|Sec|Tempo\n1|Jo Lee|20|11|4:02\n2|Al Roe|21|55|4:23\n3|Cy Dee|22|6|4:25\n",
		columns: "position name - - pace time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "times with the marks of a web page", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|21&#39;24&quot;\n2|Al Roe|22&#39;02&quot;\n3|Cy Dee|22&#39;04&quot;\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "Czech", file: "cs/liste_1",
		text:    "Výsledky Alder Bank 5 km, 27. září 2025\nPořadí|St.č.|Příjmení|Jméno|Ročník|Kat.|Oddíl|Čas\n1|14|Dvořák|Jiří|1981|M40|TJ Les|18:20\n2|15|Nováková|Věra|1990|Ž||18:31\n",
		columns: "position number family-name given-name birth-year age-group club time", run: "alder-bank 2025-09-27", rows: "3-4"},
	{name: "Finnish", file: "fi_1",
		text:    "Alder Bank 5 km tulokset, 3. tammikuuta 2026\nSija|Nimi|Seura|Sarja|Aika\n1|Jo Lee|Metsä|N|18:20\n2|Al Roe|Metsä|M45|18:31\n",
		columns: "position name club age-group time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "half past twelve at night", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|12:18:20 AM\n2|Al Roe|12:18:31 AM\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "on the day before the first", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|1899-12-30 00:18:20\n2|Al Roe|1899-12-30 00:18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "splits named by their distance", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|1k|2k|3k|4k|5k|Avg pace\n1|Jo Lee|03:40|07:20|11:00|14:40|18:20|3:40\n2|Al Roe|03:42|07:24|11:06|14:48|18:31|3:42\n3|Cy Dee|03:50|07:40|11:30|15:20|19:10|3:50\n",
		columns: "position name split split split split time pace", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a stopwatch's clock is the time", file: "alder-bank_2026-01-03",
		text:    "Token|Who|Clock\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a stopwatch's clock in figures with a dot", file: "alder-bank_2026-01-03",
		text:    "Token|Who|Clock\n1|Jo Lee|18.20\n2|Al Roe|19.31\n3|Cy Dee|24.10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "the time of day in figures with a dot", file: "alder-bank_2026-01-03",
		text:    "Token|Who|Clock\n1|Jo Lee|18.20\n2|Al Roe|18.31\n3|Cy Dee|18.40\n",
		columns: "position name -", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "records and means under the results", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Sex|Time\n1|Jo Lee|F|18:20\n2|Al Roe|M|18:31\n|Avg||18:25\n|Target||25:00\n|Course record: J. Iveson||16:41\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "teams under the results", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Club|Time\n1|Jo Lee|Fell Harriers|18:20\n2|Al Roe||18:31\n\nTeam results\nPos|Team|Runners|Total\n1|Fell Harriers|1,4,9|1:02:11\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "groups in words between the rows", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\nMen 35\n1|Jo Lee|18:20\n2|Al Roe|18:31\nMen Senior\n1|Cy Dee|19:02\nVeteran Ladies\n1|Di Fox|19:40\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "3-4 6 8"},
	{name: "sexes as signs", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Sex|Time\n1|Jo Lee|♀|18:20\n2|Al Roe|♂|18:31\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "sexes as figures", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Sex|Time\n1|Jo Lee|2|18:20\n2|Al Roe|1|18:31\n3|Cy Dee|1|19:10\n4|Di Fox|2|19:40\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "yes or no is no given name", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|First?\n1|Jo Lee|18:20|TRUE\n2|Al Roe|18:31|FALSE\n3|Cy Dee|19:10|FALSE\n4|Di Fox|19:40|FALSE\n5|Ed Gow|19:41|TRUE\n6|Fay Ho|19:42|FALSE\n7|Gus Ing|19:43|FALSE\n8|Hal Job|19:44|FALSE\n",
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "2-9"},
	{name: "places that are a general word and a feature of the land", file: "race-hill_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "race-hill 2026-01-03", rows: "2-3"},
	{name: "a place called after a weekday", file: "nd_2",
		text:    "Friday Street, 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "friday-street 2026-01-03", rows: "3-4"},
	{name: "a place called after a word of remarks", file: "nd_3",
		text:    "Marshal Green\nSaturday 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "marshal-green 2026-01-03", rows: "4-5"},
	{name: "a place with a number", file: "junction-14_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "junction-14 2026-01-03", rows: "2-3"},
	{name: "published on, an anniversary", file: "nd_4",
		text:    "Alder Bank 10th anniversary run\nResults of 3 January 2026, published 5 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "the date of a record", file: "nd_5",
		text:    "Alder Bank, 3 January 2026\nCourse record 16:41 (J. Iveson, 14 June 2019)\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "a date as the number of its day", file: "nd_6",
		text:    "Alder Bank\nDate|46025\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "the year first in two figures, or a year long past", file: "nd_7",
		text:    "Alder Bank 24-11-09\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		o:       Options{DateOrder: "dmy"},
		columns: "position name time", run: "not known", rows: "3-4", asks: "date-unclear"},
	{name: "a handicap with the running time behind the clock", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Handicap|Finish time|Actual time\n1|Jo Lee|21:00|49:00|28:00\n2|Al Roe|25:30|49:10|23:40\n3|Cy Dee|28:00|49:20|21:20\n4|Di Fox|18:30|49:40|31:10\n",
		columns: "position name - - time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a handicap that is an allowance", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Finish time|Allowance|Handicap time\n1|Jo Lee|18:20|0:00|18:20\n2|Al Roe|22:30|3:50|18:40\n3|Cy Dee|28:00|9:00|19:00\n4|Di Fox|31:10|12:20|18:50\n",
		columns: "position name time - -", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "the time as a length of days, and again in whole minutes", file: "alder-bank_2026-01-03",
		text:    "|First Name|Last Name|Age|Gender|Time|Full Name|Minutes\n0|Jo|Lee|63|F|0 days 05:46:23|Jo Lee|346\n1|Al|Roe|24|M|0 days 05:50:53|Al Roe|350\n2|Cy|Dee|51|M|0 days 05:58:56|Cy Dee|358\n3|Di|Fox|31|F|0 days 06:12:01|Di Fox|372\n4|Ed|Gow|44|M|0 days 06:30:45|Ed Gow|390\n",
		columns: "- - - age sex time name -", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "the gun and the time from the line, with hundredths, whole tens of seconds apart", file: "alder-bank_2026-01-03",
		text: "Place|Name|Finish|Net time\n1|Jo Lee|16:57:95|16:51:95\n2|Al Roe|19:33:05|19:33:05\n3|Cy Dee|19:40:34|19:38:34\n4|Di Fox|20:23:63|20:23:63\n5|Ed Gow|20:23:70|20:16:70\n6|Fay Ho|20:49:29|20:45:29\n" +
			"7|Gus Orr|21:17:35|21:16:35\n8|Hal Moss|21:26:40|21:26:40\n9|Ida Nye|21:58:72|21:53:72\n",
		columns: "position name time chip-time", run: "alder-bank 2026-01-03", rows: "2-10"},
	{name: "the time as a fraction of a day beside a pace", file: "alder-bank_2026-01-03",
		text:    "Place|Name|Pace|Finish\n1|Jo Lee|3:26|0.0119212962962963\n2|Al Roe|3:39|0.0127083333333333\n3|Cy Dee|4:23|0.0152662037037037\n4|Di Fox|4:31|0.0156828703703704\n5|Ed Gow|4:36|0.0159722222222222\n",
		columns: "position name pace time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "French classes with the sex behind them, no headings", file: "alder-bank_2026-01-03",
		text:    "1|738|LEE Jo|SEH|18:42\n2|702|ROE Al|V1H|18:53\n3|45|DEE Cy|SEF|19:51\n4|61|FOX Di|V2F|20:35\n5|9|GOW Ed|ESH|20:42\n6|80|HO Fay|V1F|21:04\n",
		columns: "position - name age-group time", run: "alder-bank 2026-01-03", rows: "1-6"},
	{name: "a sign between the time and the gap", file: "alder-bank_2026-01-03",
		text:    "Place Name                Club            Time\n    1 Lee, Jo             Vale AC         0:18:30 +  00:00\n    2 Roe, Al             Mill            0:19:29 +  00:59\n    3 Dee, Cy             Vale AC         0:19:54 +  01:24\n    4 Fox, Di             Mill            0:21:41 +  03:11\n    5 Gow, Ed             Mill            0:23:24 +  04:54\n",
		columns: "position name club time -", run: "alder-bank 2026-01-03", rows: "2-6", only: "text"},
	{name: "lists that run on within a line, ages and clubs behind the names", file: "alder-bank_2026-01-03",
		text:    "Men, 5 km: 1) Bo Lee 49 SuRa 18.10, 2) Al Roe 24 HKV 18.36, 3) Cy Dee 50 SuRa 19.36, 4) Ed Gow 55 KontU 19.56, 5) Gus Orr 44 SuRa 20.51.\nWomen, 5 km: 1) Ida Nye 31 SuRa 19.06, 2) Di Fox 37 SuRa 20.13, 3) Fay Ho 44 HKV 21.17, 4) Ann Poe 46 SuRa 22.55.\n",
		columns: "position name age club time sex", run: "alder-bank 2026-01-03", rows: "2-6 8-11", only: "text"},
	{name: "lists that run on within a line, abbreviated clubs behind the names", file: "alder-bank_2026-01-03",
		text:    "Men, 5 km: 1) Bo Lee SuRa 18:10, 2) Al Roe HKV 18:36, 3) Cy Dee SuRa 19:36, 4) Ed Gow KontU 19:56, 5) Gus Orr SuRa 20:51.\nWomen, 5 km: 1) Ida Nye SuRa 19:06, 2) Di Fox SuRa 20:13, 3) Fay Ho HKV 21:17, 4) Ann Poe SuRa 22:55.\n",
		columns: "position name club time sex", run: "alder-bank 2026-01-03", rows: "2-6 8-11", only: "text"},
	{name: "lists that run on within a line, some of one runner, sentences with numbers among them", file: "alder-bank_2026-01-03",
		text:    "The 3. round was won in 19.30 by a guest.\nMen: 1) Bo Lee, Vale 17,16, 2) Al Roe, Mill 28,35, 3) Cy Dee, Vale 32,59.\n\nM35: 1) Ed Gow, Mill 29,07.\n\nM45: 1) Gus Orr, Vale 19,31, 2) Hal Moss, Mill 21,33.\n\nWomen: 1) Ida Nye, Vale 19,06.\n\nW45: 1) Di Fox, Mill 21,49, 2) Fay Ho, Vale 26,01.\n",
		columns: "position name club time age-group", run: "alder-bank 2026-01-03", rows: "3-5 8 11-12 15 18-19", only: "text"},
	{name: "lists that go on in the next line, and such as begin within one", file: "alder-bank_2026-01-03",
		text:    "Results over 5 km, men: 1. Bo Lee (Vale) 17:16, 2. Al Roe (Mill, 28:35),\n3. Cy Dee (Vale) 32:59; women 40 and over: 1. Ida Nye (Vale) 19:06, 2. Di Fox (Mill) 21:49.\n",
		columns: "position name club time age-group", run: "alder-bank 2026-01-03", rows: "3-5 7-8", only: "text"},
	{name: "lists that run on within a line, at their ends who retired", file: "alder-bank_2026-01-03",
		text:    "Men: 1) Bo Lee Vale 17:16, 2) Al Roe Mill 28:35, 3) Cy Dee Vale 32:59, Ed Gow Mill DNF. Women: 1) Ida Nye Vale 19:06, 2) Di Fox Mill 21:49, 3) Fay Ho Vale 26:01, Ann Poe Mill DNF.\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "2-5 7-10", only: "text"},
	{name: "lists that run on within a line, numbers without a mark", file: "alder-bank_2026-01-03",
		text:    "5 km men: 1 Bo Lee (Vale) 17.16, 2 Al Roe (Mill) 28.35, 3 Cy Dee (Vale) 28.40, 4 Ed Gow (Mill) 29.07, 5 Gus Orr (Vale) 29.31.\n5 km women: 1 Ida Nye (Vale) 19.06, 2 Di Fox (Mill) 21.49, 3 Fay Ho (Vale) 26.01.\n",
		columns: "position name club time sex", run: "alder-bank 2026-01-03", rows: "2-6 8-10", only: "text"},
	{name: "results as a word over lists with the places first", file: "alder-bank_2026-01-03",
		text:    "Results:\n\nW 40\n1) Ida Nye 23:43\n2) Di Fox 25:43\n\nM 40\n1) Bo Lee 24:14\n2) Al Roe 25:22\n3) Cy Dee 28:16\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "4-5 8-10", only: "text"},
	{name: "a mark at the end of every line but the last", file: "alder-bank_2026-01-03",
		text:    "Ordine d'arrivo femminile:\n1) Jo Lee (Vale AC) 56'30\";\n2) Al Roe (Mill) 57'04\";\n3) Cy Dee (Vale AC) 58'28\";\n4) Di Fox (Mill) 1h00'09\";\n5) Ed Gow (Mill) 1h04'05\".\n",
		columns: "position name club time sex", run: "alder-bank 2026-01-03", rows: "2-6", only: "text"},
	{name: "a handicap in minutes and seconds with a dot", file: "alder-bank_2026-01-03",
		text:    "position|first_name|second_name|gross_time|running_time|handicap\n1|Jo|Lee|19.53|16.53|3.00\n2|Al|Roe|20.47|18.17|2.30\n3|Cy|Dee|20.53|17.53|3.00\n4|Di|Fox|21.13|21.13|0.00\n5|Ed|Gow|21.16|15.46|5.30\n",
		columns: "position given-name family-name - time -", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "allowances with a sign, the place by the time without them", file: "alder-bank_2026-01-03",
		text:    "Place|Name|Adjusted time|Time|Handicap|Difference\n1|Jo Lee|45:52.0|48:40.0|-2:48.0|-\n2|Al Roe|46:52.0|48:44.0|-1:52.0|+1:00.0\n3|Cy Dee|48:40.9|48:40.9|+0:00.0|+2:48.9\n4|Di Fox|52:58.2|54:50.2|-1:52.0|+7:06.2\n5|Ed Gow|57:47.2|1:01:31.2|-3:44.0|+11:55.2\n",
		columns: "position name - time - gap", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "the clock at the finish and the running time of runners sent off one by one, the handicap being the number of the race", file: "alder-bank_2026-01-03",
		text: "position|name|gross_time|running_time|handicap\n1|Jo Lee|16:46|16:40|3\n2|Al Roe|17:46|16:36|3\n3|Cy Dee|17:47|16:17|3\n4|Di Fox|17:48|17:18|3\n5|Ed Gow|18:03|15:53|3\n6|Fay Ho|18:17|13:47|3\n" +
			"7|Gus Orr|18:26|15:26|3\n8|Hal Moss|18:42|16:12|3\n9|Ida Nye|18:50|11:50|3\n10|Jan Ott|19:03|19:03|3\n",
		columns: "position name - time -", run: "alder-bank 2026-01-03", rows: "2-11"},
	{name: "a handicap without the running times", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Handicap|Finish\n1|Jo Lee|21:00|49:00\n2|Al Roe|25:30|49:10\n3|Cy Dee|28:00|49:20\n4|Di Fox|18:30|49:40\n5|Ed Gow|22:00|49:44\n6|Fay Ho|27:00|49:51\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-7", asks: "handicap-in-time"},
	{name: "times of day at start and finish", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Start time|Finish time\n1|Jo Lee|09:00:00|09:18:20\n2|Al Roe|09:00:00|09:18:31\n3|Cy Dee|09:00:00|09:19:10\n",
		columns: "position name session - time", run: "alder-bank 2026-01-03 09:00", rows: "2-4"},
	{name: "times of day at the finish alone", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Finish clock\n1|Jo Lee|09:18:20\n2|Al Roe|09:18:31\n3|Cy Dee|09:19:10\n",
		columns: "position name -", run: "alder-bank 2026-01-03", rows: "2-4", asks: "time-column-missing"},
	{name: "minutes and seconds in two columns beside a speed", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Min|Sec|km/h\n1|Jo Lee|18|20|16.4\n2|Al Roe|18|31|16.2\n3|Cy Dee|19|02|15.8\n4|Bo Fay|19|21|15.5\n5|Di Ash|20|35|14.6\n6|Eve Ng|21|00|14.3\n",
		columns: "position name - - pace time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "times of day in the evening that would be minutes, seconds and hundredths of a small field", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|19:20:10\n2|Al Roe|19:21:03\n3|Cy Dee|19:22:02\n4|Bo Fay|19:23:21\n5|Di Ash|19:24:35\n6|Eve Ng|19:26:00\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-7", asks: "time-column-missing"},
	{name: "minutes, seconds and hundredths of a small field", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|19:20:10\n2|Al Roe|19:21:03\n3|Cy Dee|19:22:72\n4|Bo Fay|19:23:21\n5|Di Ash|19:24:35\n6|Eve Ng|19:26:00\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "times of day at the finish, the start in the title", file: "alder-bank_2026-01-03",
		text:    "Alder Bank, start 9:00\nPos|Name|Finish clock\n1|Jo Lee|09:18:20\n2|Al Roe|09:18:31\n3|Cy Dee|09:19:10\n",
		columns: "position name - time", run: "alder-bank 2026-01-03 09:00", rows: "3-5"},
	{name: "times of day at the finish, a start hours before", file: "alder-bank_2026-01-03",
		text:    "Alder Bank, start 9:00\nPos|Name|Finish clock\n1|Jo Lee|19:18:20\n2|Al Roe|19:18:31\n3|Cy Dee|19:19:10\n",
		columns: "position name -", run: "alder-bank 2026-01-03 09:00", rows: "3-5", asks: "time-column-missing"},
	{name: "times behind the first", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|+00:11\n3|Cy Dee|+00:50\n4|Di Fox|+01:20\n5|Ed Gow|+01:21\n6|Fay Ho|+01:40\n7|Gus Ing|+02:00\n8|Hal Jay|DNF\n9|Ira Kay|+02:20\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-10"},
	{name: "a few times behind somebody", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|+00:11\n3|Cy Dee|+00:50\n4|Di Fox|+01:20\n",
		columns: "position name -", run: "alder-bank 2026-01-03", rows: "2-5", asks: "times-behind-first"},
	{name: "a column of remarks without a heading", file: "alder-bank_2026-01-03", only: "text",
		text:    "Pos,Name,Time,\n1,Jo Lee,18:20,\n2,Al Roe,18:31,new PB\n3,Cy Dee,19:10,\n4,Di Fox,19:20,\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "times behind the one before", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|+00:11\n3|Cy Dee|+00:50\n4|Di Fox|+00:20\n",
		columns: "position name -", run: "alder-bank 2026-01-03", rows: "2-5", asks: "times-behind-first"},
	{name: "listopad among Croatian words", file: "rezultati",
		text:    "Alder Bank, 8. listopada 2025.\nMjesto|Ime i prezime|Vrijeme\n1|Ana Horvat|18:20\n2|Ivo Babić|18:31\n",
		columns: "position name time", run: "alder-bank 2025-10-08", rows: "3-4"},
	{name: "listopad among Polish words", file: "wyniki",
		text:    "Alder Bank, 8. listopada 2025\nMiejsce|Imię i nazwisko|Czas\n1|Anna Nowak|18:20\n2|Jan Lis|18:31\n",
		columns: "position name time", run: "alder-bank 2025-11-08", rows: "3-4"},
	{name: "listopad among neither", file: "alder-bank",
		text:    "Alder Bank, 8. listopada 2025\nPos|Name|Time\n1|Anna Nowak|18:20\n2|Jan Lis|18:31\n",
		columns: "position name time", run: "not known", rows: "3-4", asks: "date-unclear"},
	{name: "people called like totals", file: "alder-bank_2026-01-03",
		text:    "Name|Time\nJo Lee|18:20\nAverage Joe|18:31\nMax Age|19:10\nRecord Smith|19:12\nCy Dee|20:01\nTotal Ali|20:40\n\nAverage time|19:20\nFastest|18:20\nCourse record|17:02\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "totals between the rows", file: "alder-bank_2026-01-03",
		text:    "Name|Time\nJo Lee|18:20\nAl Roe|18:31\nAverage Time|18:25\nBest Lady|18:31\nDi Fox|19:10\nCy Dee|20:01\nAverage|19:20\nFastest Man|18:20\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "2-3 6-7"},
	{name: "family names first", file: "alder-bank_2026-01-03",
		text:    "Rang|Name Vorname|Zeit\n1|Huber Lena|18:20\n2|Frei Urs|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "family names first in French", file: "alder-bank_2026-01-03",
		text:    "Place|Nom Prénom|Temps\n1|Petit Anne|18:20\n2|Le Gall Yann|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "family names first in Spanish", file: "alder-bank_2026-01-03",
		text:    "Puesto|Apellidos y nombre|Tiempo\n1|García López Ana|18:20\n2|Ruiz Gil Luis|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "two distances in a column", file: "alder-bank_2026-01-03",
		text:    "Race|Pos|Name|Time\n5k|1|Jo Lee|18:20\n5k|2|Al Roe|18:31\n2k|1|Cy Dee|8:10\n2k|2|Di Fox|8:20\n",
		columns: "distance position name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "juniors over another distance below", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\nJunior 2km\n1|Cy Dee|8:10\n2|Di Fox|8:20\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3 6-7", only: "text"},
	{name: "a relay below", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\nRelay (3 x 1 mile)\n1|Fell Harriers A|18:41\n2|Vale Joggers|19:22\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "records beside the results", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time||Rank|Name|Best|When\n1|Jo Lee|18:20||1|Ed Gow|16:30|01/06/2023\n2|Al Roe|18:31||2|Fay Ho|16:35|02/06/2023\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "places shared in words", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2 (tie)|Al Roe|18:31\n2 (tie)|Cy Dee|18:31\n4|Di Fox|19:10\n5 =|Ed Gow|19:20\n5 =|Fay Ho|19:20\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "the time behind the day of the run", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|2026-01-03 00:18:20\n2|Al Roe|2026-01-03 00:18:31\n3|Cy Dee|2026-01-03 00:19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "name and club in one column", file: "alder-bank_2026-01-03",
		text:    "Pos|Name and club|Time\n1|Jo Lee (Fell Harriers)|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "seconds under their heading", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Secs\n1|Jo Lee|1100\n2|Al Roe|1111\n3|Cy Dee|1150\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "cells written as formulas of text", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n=\"1\"|Jo Lee|=\"18:20\"\n=\"2\"|Al Roe|=\"18:31\"\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3", only: "text"},
	{name: "given and family names without headings", file: "alder-bank_2026-01-03",
		text:    "1|Lee|Jo|18:20\n2|Roe|Al|18:31\n3|Dee|Cy|19:10\n4|Fox|Di|19:40\n5|Gow|Ed|19:41\n",
		columns: "position - - time", run: "alder-bank 2026-01-03", rows: "1-5", asks: "name-columns-unclear"},
	{name: "notes of names and times with dots", file: "notes/alder-bank_2026-01-03",
		text:    "Alder Bank Saturday 3 January 2026. Dry, 7 runners, one dog bite.\n\nJo Lee ... 18.20\nAl Roe ... 18.31\nCy Dee ... 19.10\nDi Fox ... 19.40\nEd Gow ... 20.02\nFay Ho ... 20.51\nGus Ing ... 21.05\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "3-9", only: "text"},
	{name: "records by age group under a heading of its own kind", file: "alder-bank_2026-01-03",
		text:    "Age group|Men|Time|Women|Time\n35|Jo Lee|18:20|Ann Page|20:20\n40|Al Roe|18:31|Eve Hill|20:40\n45|Cy Dee|19:10|Ada Brook|21:00\n",
		columns: "- name time club -", run: "alder-bank 2026-01-03", rows: "2-4", asks: "heading-unclear"},
	{name: "times under a heading of points", file: "alder-bank_2026-01-03",
		text:    "Rank|Athlete|Score\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "a folder for the year, one for the month, a file for the day", file: "2026/01 January/Alder Bank/17",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-17", rows: "2-4"},
	{name: "the day on which a letter was sent", file: "results",
		text:    "From: Sheila\nDate: Sun, 04 Jan 2026 08:14:02 +0000\nSubject: Alder Bank results Saturday 03 January 2026\n\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "6-8", only: "text"},
	{name: "who sent a letter is no place", file: "results",
		text:    "From: Di Fox\nDate: Sun, 04 Jan 2026 08:14:02 +0000\nSubject: results\n\nAlder Bank results\n3 January 2026\n\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "9-11", only: "text"},
	{name: "Estonian headings", file: "export",
		text:    "Tulemused: Põdrasoo, laupäev 18. oktoober 2025\nKoht|Eesnimi|Perekonnanimi|Sugu|Vanus|Klubi|Aeg\n1|Märt|Jõgisalu|M|31|Kalev|18:20\n2|Õie|Väljaste|N|44||18:31\n3|Ülle|Kõrve|N|52||19:10\n",
		columns: "position given-name family-name sex age club time", run: "podrasoo 2025-10-18", rows: "3-5"},
	{name: "Lithuanian date and headings", file: "export",
		text:    "Rezultatai: Beržų Slėnis, šeštadienis 2025 m. gegužės 10 d.\nVieta|Vardas|Pavardė|Lytis|Gim. metai|Laikas\n1|Jonas|Krantauskas|V|1980|18:20\n2|Rūta|Vėjelė|M|1975|18:31\n3|Ieva|Ūselė|M|1990|19:10\n",
		columns: "position given-name family-name sex birth-year time", run: "berzu-slenis 2025-05-10", rows: "3-5"},
	{name: "Latvian date and headings", file: "export",
		text:    "Bērzu Sala – 2025. gada 11. janvāris\nVieta|Vārds, uzvārds|Dzimums|Grupa|Laiks\n1|Jānis Bērzkalns|V|V40|18:20\n2|Līga Šķēle|S|S35|18:31\n3|Māra Ūdre|S|S50|19:10\n",
		columns: "position name sex age-group time", run: "berzu-sala 2025-01-11", rows: "3-5"},
	{name: "Ukrainian headings", file: "export",
		text:    "Соснова Балка – 31 травня 2025 р.\nМісце|Прізвище та ім'я|Стать|Рік нар.|Час\n1|Березюк Тарас|Ч|1980|18:20\n2|Заярна Олена|Ж|1975|18:31\n3|Кривоніжко Ганна|Ж|1990|19:10\n",
		columns: "position name sex birth-year time", run: "соснова-балка 2025-05-31", rows: "3-5"},
	{name: "a title that says which part of the field", file: "Garrow Moss 2026-01-03 walkers",
		text:    "Walkers\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "3-5"},
	{name: "a title that says how many are listed", file: "Garrow Moss 2026-01-03 first 10",
		text:    "First ten home\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "3-5"},
	{name: "a heat in title and name of the file", file: "Garrow Moss 2026-01-03 heat 2",
		text:    "Heat 2\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "3-5"},
	{name: "a revision in the file's name", file: "2026-01-03 Garrow Moss rev 2",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "2-4"},
	{name: "a letter behind a word of the file's name", file: "Garrow Moss latest d", o: Options{Date: "2026-01-03"},
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "2-4"},
	{name: "a title of weekday and time of day, in the folder of a course", file: "Garrow Moss/results 03-01-2026",
		text:    "Saturday morning 5 km\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "3-5"},
	{name: "a title with the week's number in French", file: "Lark Green Semaine 01",
		text:    "Semaine 1, 26 avril 2025\n\nPlace;Nom;Temps\n1;Elsa Netherholt;22:22\n2;Jo Lee;22:40\n3;Al Roe;23:01\n",
		columns: "position name time", run: "lark-green 2025-04-26", rows: "4-6"},
	{name: "a run's number in Dutch, where nothing says the course", file: "Loop 107",
		text:    "Loop 107, 4 juli 2024\n\nPlaats;Naam;Tijd\n1;Elsa Netherholt;22:22\n2;Jo Lee;22:40\n3;Al Roe;23:01\n",
		columns: "position name time", run: "not known", rows: "4-6", asks: "course-missing"},
	{name: "a weekday that is another than the date's", file: "week 3",
		text:    "Garrow Moss\nSaturday 4 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "not known", rows: "4-6", asks: "date-unclear"},
	{name: "a shortened word in the name of a course", file: "results 2026-01-03",
		text:    "St. Aldith's Common, Saturday 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "st-aldiths-common 2026-01-03", rows: "3-5"},
	{name: "whose list it is in the file's name", file: "20260103_Garrow_Moss-women only",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "2-4"},
	{name: "juniors in the file's name", file: "20260103_Garrow_Moss juniors",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "2-4"},
	{name: "a greeting with an exclamation mark", file: "message 2026-01-03",
		text:    "Morning everyone! Results for Garrow Moss, Saturday 3 January 2026:\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "3-5", only: "text"},
	{name: "a title of the week before the file's name", file: "garrow-moss_2026-01-10",
		text:    "Garrow Moss 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "not known", rows: "3-5", asks: "date-unclear"},
	{name: "a title of the year before the file's name", file: "garrow-moss_2026-01-03",
		text:    "Garrow Moss 3 January 2025\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "not known", rows: "3-5", asks: "date-unclear"},
	{name: "a file named on the day after", file: "garrow-moss_2026-01-04",
		text:    "Garrow Moss 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "garrow-moss 2026-01-03", rows: "3-5"},
	{name: "a Roman month", file: "wyniki",
		text:    "Dębowy Gaj 17 I 2026 r.\nMiejsce|Nazwisko i imię|Czas\n1|Żuk Paweł|18:20\n2|Dąb Łucja|18:31\n3|Lis Anna|19:10\n",
		columns: "position name time", run: "debowy-gaj 2026-01-17", rows: "3-5"},
	{name: "headings of one letter", file: "alder-bank_2026-01-03",
		text:    "P|N|S|A|T\n1|Jo Lee|M|31|18:20\n2|Al Roe|F|44|18:31\n3|Cy Dee|F|52|19:10\n",
		columns: "position name sex age time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a heading whose words are divided over two rows", file: "alder-bank_2026-01-03",
		text:    "Helye-|Vezeték-|Kereszt-|Szül.|Nettó\nzés|név|név|év|idő\n1|Kő|Ágnes|1980|18:20\n2|Szűcs|Béla|1975|18:31\n3|Gál|Réka|1990|19:10\n",
		columns: "position family-name given-name birth-year time", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "times with words for their units", file: "alder-bank_2026-01-03",
		text:    "Plass|Navn|Tid\n1|Jo Lee|18 min 20 sek\n2|Al Roe|18 min 31 sek\n3|Cy Dee|1 time 19 min 10 sek\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a clock at the finish", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Clock at finish\n1|Jo Lee|09:18:20\n2|Al Roe|09:18:31\n3|Cy Dee|09:19:10\n",
		columns: "position name -", run: "alder-bank 2026-01-03", rows: "2-4", asks: "time-column-missing"},
	{name: "tabs that only align the columns", file: "alder-bank_2026-01-03", only: "text",
		text:    "Platz\tName\t\t\tJg.\tAK\tZeit\n1.\tLee, Jo\t\t\t1981\tM40\t18:20 min\n2.\tKrähwinkel, Gudrun\t1989\tW35\t18:31 min\n3.\tRoe, Al\t\t\t2010\t\t19:10 min\n4.\tFox, Dietlinde\t\t1950\tW75\t19:40 min\n5.\tGow, Ed\t\t\t1990\tM35\t19:50 min\n",
		columns: "position name birth-year age-group time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "tabs with blank cells between them", file: "alder-bank_2026-01-03", only: "text",
		text:    "Pos\tName\tTime\tCat pos\tM/F\tPos M/F\n1\tJo Lee\t18:20\t1\tM\t1\n2\tAnn Page\t?\t\tF\t\n3\tCy Dee\t19:10\t1\tM\t2\n4\tDi Fox\t19:20\t\tF\t1\n5\tEd Gow\t19:40\t2\tM\t3\n",
		columns: "position name time group-place sex sex-place", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "a list with dashes", file: "alder-bank_2026-01-03", only: "text",
		text:    "1 - Jo Lee - 18:20 - M40\n2 - Ann Page - 18:31 - F55\n3 - Cy Dee - 19:10 - Jun M\n4 - Di Fox - 19:40 - Sen F\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "commas inside names of columns that stand under one another", file: "PRN0041", only: "text",
		text:    "ALDER BANK 5 KILOMETRES            Page 1 of 1\nRun on 03-JAN-2026            Printed 06-JAN-2026\n\n Pos    No  Name             Sex  Age      Time\n ===    ==  ====             ===  ===      ====\n   1   428  LEE, Jo          M     44     18:20\n   2   265  PAGE, Ann        F     37     18:31\n   3    17  unknown                       19:10\n             DEE, Cy         M     31       DNF\n",
		columns: "position number name sex age time", run: "alder-bank 2026-01-03", rows: "6-9"},
	{name: "times in words under a heading of two words, in columns that stand under one another", file: "alder-bank_2026-01-03", only: "text",
		text:    "Umístění   Jméno      Cílový čas    Účastí\n1.         Jo Lee     20 min 48 s   5\n2.         Al Roe     21 min 58 s   13\n3.         Cy Dee     22 min 06 s   9\n4.         Di Fox     22 min 08 s   62\n5.         Ed Gow     22 min 19 s   121\n6.         Flo Hay    23 min 16 s   72\n",
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "times with dots in columns that stand under one another", file: "alder-bank_2026-01-03", only: "text",
		text:    "  1  Søren Lee        M  1966  18.20\n  2  Åse Page         K  1971  18.31\n  3  Leif Dee         M  2001  19.10\n  4  Bodil Fox        K  1988  19.40\n",
		columns: "position name sex birth-year time", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "particles in a column", file: "alder-bank_2026-01-03",
		text:    "Plaats|Voornaam|Tussenvoegsel|Achternaam|Tijd\n1|Jo|van der|Berg|18:20\n2|Al||Roe|18:31\n3|Cy|de|Vries|19:10\n",
		columns: "position given-name - family-name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "ticks for the sex", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Male|Female|Age|Time\n1|Jo Lee|x||31|18:20\n2|Ann Page||x|44|18:31\n3|Cy Dee|x||52|19:10\n",
		columns: "position name sex - age time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "titles of address", file: "alder-bank_2026-01-03",
		text:    "Pos|Title|Name|Time\n1|Mr|Jo Lee|18:20\n2|Miss|Ann Page|18:31\n3|Ms|Di Fox|19:10\n4|Mrs|Fay Ho|19:20\n",
		columns: "position sex name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "classes in Norwegian above their runners", file: "klassevis",
		text:    "Alder Bank 3. januar 2026\n\nMenn 20-39 år\nPl.|Navn|Tid\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\nKvinner 20-39 år\nPl.|Navn|Tid\n1|Ann Page|20:20\n2|Eve Hill|20:31\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "5-6 10-11"},
	{name: "tempo is the pace where another column holds the time", file: "alder-bank_2026-01-03",
		text:    "Lp.|Nazwisko i imię|Tempo|Czas netto\n1|Lee Jo|03:40|18:20\n2|Roe Al|03:42|18:31\n3|Dee Cy|03:50|19:10\n4|Fox Di|03:56|19:40\n",
		columns: "position name pace time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "tempo is the pace beside a time in minutes", file: "alder-bank_2026-01-03",
		text:    "Geslacht|Loper|Tempo|Plaats|Tijd\nM|Jo Lee|3:40|1|18.33\nM|Al Roe|3:42|2|18.52\nM|Cy Dee|3:50|3|19.17\nV|Di Fox|3:56|4|19.67\n",
		columns: "sex name pace position time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "dob is the age", file: "alder-bank_2026-01-03",
		text:    "Poredak|Ime i prezime|Dob|Spol|Vrijeme\n1|Jo Lee|23|M|18:20\n2|Al Roe|11|M|18:31\n3|Ana Dee|52|Ž|19:10\n4|Di Fox|34|Ž|19:40\n",
		columns: "position name age sex time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a run named in quotes in Russian", file: "protokol",
		text:    "ПРОТОКОЛ\nпробега «Ручеёк» на 5 км\n3 января 2026 г.\nМесто;Фамилия, имя;Результат\n1;Ёлкин Кирилл;17:11\n2;Щуков Борис;18:29\n3;Ручьёв Лев;19:02\n",
		columns: "position name time", run: "ручеек 2026-01-03", rows: "5-7", only: "text"},
	{name: "the two ends of what an age may be", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Age from|Age to|Group\n1|Jo Lee|18:20|40|44|M40\n2|Al Roe|18:31|35|39|M35\n3|Ann Dee|19:10|18|34|SW\n4|Di Fox|19:40|52|52|W50\n",
		columns: "position name time - - age-group", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "ages on two days", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Age|Age at year end\n1|Jo Lee|18:20|40|41\n2|Al Roe|18:31|35|35\n3|Ann Dee|19:10|18|19\n4|Di Fox|19:40|52|52\n",
		columns: "position name time age -", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "dob is a year of two figures", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|DOB|Time\n1|Jo Lee|83|18:20\n2|Al Roe|11|18:31\n3|Ann Dee|52|19:10\n4|Di Fox|64|19:40\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "years of birth under nar.", file: "alder-bank_2026-01-03",
		text:    "Poř.|Jméno|Nar.|Čas\n1|Jo Lee|1983|18:20\n2|Al Roe|2011|18:31\n3|Ann Dee|1952|19:10\n4|Di Fox|1964|19:40\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "one heading over minutes and seconds", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time||Cat\n1|Jo Lee|18|20|M40\n2|Ann Page|18|51|W35\n3|Cy Dee|19|10|M45\n4|Di Fox|19|05|W40\n5|Ed Gow|20|41|M50\n",
		columns: "position name - - age-group time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "labels of a program's comments", file: "export",
		text:    "# exported 2026-11-02 18:04\n# venue=Alder Bank\n# date=2026-01-03\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Page|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "5-7"},
	{name: "two days of a weekend", file: "results",
		text:    "Alder Bank 3-4 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Page|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "not known", rows: "3-5", asks: "date-unclear"},
	{name: "two days, of which the weekday says one", file: "results",
		text:    "Alder Bank Saturday 3/4 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Page|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "times with the pace in brackets", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time (pace)\n1|Jo Lee|18:20 (3:40/km)\n2|Ann Page|18:31 (3:42/km)\n3|Cy Dee|19:10 (3:50/km)\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "lengths of time as a program writes them", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|0 days 00:18:20\n2|Ann Page|0 days 00:18:31\n3|Cy Dee|0 days 00:19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a table drawn with lines", file: "alder-bank_2026-01-03", only: "text",
		text:    "┌─────┬──────────┬───────┐\n│ Pos │ Name     │ Time  │\n├─────┼──────────┼───────┤\n│ 1   │ Jo Lee   │ 18:20 │\n│ 2   │ Ann Page │ 18:31 │\n│ 3   │ Cy Dee   │ 19:10 │\n└─────┴──────────┴───────┘\n",
		columns: "- position name time", run: "alder-bank 2026-01-03", rows: "4-6"},
	{name: "a heading between doubled bars", file: "alder-bank_2026-01-03", only: "text",
		text:    "|| Pos || Name || Time ||\n| 1 | Jo Lee | 18:20 |\n| 2 | Ann Page | 18:31 |\n| 3 | Cy Dee | 19:10 |\n",
		columns: "- position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "one space between number and name", file: "alder-bank_2026-01-03", only: "text",
		text:    " Pl.  StNr Name                 Jg      Zeit\n   1   170 Falke, Renate        1982   16:48\n   2   149 Häber, Jörg          2008   17:44\n   3   749 Rosvel, Ulrike       1969   18:39\n   4    12 Lee, Jo              1971   18:50\n   5     3 Mann, Änne           1990   18:59\n",
		columns: "position number name birth-year time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "a course that is the state of the ground", file: "bulletin",
		text:    "Alder Bank weekly 5k\nResults bulletin\nDate: Saturday 3 January 2026\nCourse: firm, muddy in places\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Page|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "6-8"},
	{name: "places among men and women", file: "alder-bank_2026-01-03",
		text:    "Pos|Men|Women|Name|Age|Time\n1|1||Jo Lee|31|18:20\n2||1|Ann Page|44|18:31\n3|2||Cy Dee|52|19:10\n4||2|Di Fox|33|19:20\n5|3||Ed Gow|61|19:40\n6|4||Hal Jay|29|19:50\n",
		columns: "position sex - name age time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "courses below one another, named by nothing else", file: "all courses 2026-01-03",
		text:    "Pos|Name|Time\nAlder Bank||\n1|Jo Lee|18:20\n2|Ann Page|18:31\nMere Side||\n1|Cy Dee|19:10\n2|Di Fox|19:20\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4 6-7"},
	{name: "courses below one heading, each with its day behind a comma", file: "results 2026-01-03",
		text:    "Pos|Name|Time\nAlder Bank|3 January 2026|\n1|Jo Lee|18:20\n2|Ann Page|18:31\nMere Side|3 January 2026|\n1|Cy Dee|19:10\n2|Di Fox|19:20\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4 6-7"},
	{name: "men and women under lines of their own", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\nMale||\n1|Jo Lee|18:20\n2|Al Roe|18:31\nFemale||\n1|Ann Page|19:10\n2|Di Fox|19:20\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 6-7"},
	{name: "men and women in German", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|Zeit\nHerren||\n1|Jo Lee|18:20\n2|Al Roe|18:31\nDamen||\n1|Ann Page|19:10\n2|Di Fox|19:20\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 6-7"},
	{name: "a group on its way from the couch to 5 km", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Bo Gale|20:15\n||\nC25K group||\n1|Ann Page|29:10\n2|Di Fox|30:20\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "2-4 7-8"},
	{name: "a word against a result under a heading that nobody knows", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Marshal\n1|Jo Lee|18:20|\n2|Al Roe|18:31|wrong course\n3|Bo Gale|20:15|PB\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "open classes of men and women", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\nMen Open||\n1|Jo Lee|18:20\n2|Al Roe|18:31\nWomen Open||\n1|Ann Page|19:10\n2|Di Fox|19:20\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 6-7"},
	{name: "places before groups", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|AK|Zeit\n1|Jo Lee|1. M40|18:20\n2|Ann Page|1. W35|18:31\n3|Cy Dee|2. M40|19:10\n4|Di Fox|1. W60|19:20\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a course called like a word for men", file: "the-bay_2026-01-03",
		text:    "The Bay||\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Page|18:31\n3|Cy Dee|19:10\n",
		columns: "position name time", run: "the-bay 2026-01-03", rows: "3-5"},
	{name: "letters over the columns", file: "alder-bank_2026-01-03",
		text:    "A|B|C|D|E\n1|Jo Lee|M|31|18:20\n2|Ann Page|F|44|18:31\n3|Cy Dee|M|52|19:10\n4|Di Fox|F|29|19:20\n",
		columns: "position name sex - time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "sexes shortened under a misspelt heading", file: "alder-bank_2026-01-03",
		text:    "Postion|Naem|Gendar|Finsh Tme\n1|Jo Lee|Mal|18:20\n2|Ann Page|Fem|18:31\n3|Cy Dee|Mal|19:10\n",
		columns: "position name sex time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "the places follow the chip, and one time is impossible", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Chip|Gun\n1|Jo Lee|18:20|18:41\n2|Al Roe|18:31|18:33\n3|Cy Dee|5:10|5:31\n4|Di Fox|19:20|19:45\n5|Ed Gow|19:41|19:43\n6|Fay Ho|20:02|20:09\n",
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "two plain times, the places follow the second", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Time\n1|Jo Lee|18:41|18:20\n2|Al Roe|18:33|18:31\n3|Cy Dee|19:31|19:10\n4|Di Fox|19:45|19:20\n5|Ed Gow|19:43|19:41\n6|Fay Ho|20:09|20:02\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "a town for each runner is no course", file: "alder-bank_2026-01-03",
		text:    "Poř.|Jméno|Město|Čas\n1|Jo Lee|Osterby|18:20\n2|Al Roe|Tarrow|18:31\n3|Cy Dee|Osterby|19:10\n4|Di Fox|Lisk|19:20\n5|Ed Gow|Tarrow|19:41\n6|Fay Ho|Osterby|20:02\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "years under a heading that may be a number", file: "alder-bank_2026-01-03",
		text:    "Pos.|Nome|A.N.|Tempo\n1|Jo Lee|1983|18:20\n2|Al Roe|1981|18:31\n3|Cy Dee|2001|19:10\n4|Di Fox|1975|19:20\n5|Ed Gow|1990|19:41\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "the general classification names a place", file: "classifica-3",
		text:    "Classifica generale Parco Vecchio\n3 gennaio 2026\nPos.|Nome|Tempo\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "parco-vecchio 2026-01-03", rows: "4-5"},
	{name: "seconds, one of them impossible", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Net seconds\n1|Jo Lee|1144\n2|Al Roe|1230\n3|Cy Dee|461\n4|Di Fox|1426\n5|Ed Gow|1485\n6|Fay Ho|1502\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "a message that gives places as ordinal numbers", file: "message", only: "text",
		text:    "Ember Quay Saturday 5k - 14/11/26\n1st Jo Lee 17:58\n2nd Al Roe 18:22\n3rd Cy Dee 19:01\n4th Di Fox 22:10 (PB!)\n5th Ed Gow 24:45\n7th Fay Ho 38.12\n",
		columns: "position name time notes", run: "ember-quay 2026-11-14", rows: "2-7"},
	{name: "a club's championship, men and women in columns under one another, times with a dot", file: "club champs", only: "text",
		text:    "ALDER HARRIERS - CLUB 5K CHAMPIONSHIP\nTuesday 3 November 2026, Alder Bank Track & Path\n\nMen\n 1.  Jo Lee (M40)         16.33\n 2.  Al Roe (SM)          16.59\n 3.  Cy Dee (M50)         17.45\n 4.  Ed Gow (SM)          18.02\nWomen\n 1.  Di Fox (SW)          18.21\n 2.  Ann Page (W55)       20.14\n 3.  Fay Ho (W45)         21.40\n\nThanks to all helpers!\n",
		columns: "position name time sex", run: "alder-bank-track-and-path 2026-11-03", rows: "5-8 10-12"},
	{name: "a message with medals, and figures drawn as keys", file: "message", only: "text",
		text:    "Ember Quay 5k, 14 November 2026\n\U0001F947 Jo Lee 17:58 min\n\U0001F948 Al Roe 18:22 min\n\U0001F949 Cy Dee 19:01 min\n4\uFE0F\u20E3 Di Fox 22:10 min\n5\uFE0F\u20E3 Ed Gow 24:45 min\n",
		columns: "position name time", run: "ember-quay 2026-11-14", rows: "2-6"},
	{name: "two lists side by side without headings", file: "message", only: "text",
		text:    "Ember Quay 5k, 14 November 2026\n\n 1 Jo Lee       17:58      5 Ed Gow      24:45\n 2 Al Roe       18:22      6 Ann Page    27:30\n 3 Cy Dee       19:01      7 Fay Ho      38:12\n 4 Di Fox       22:10\n",
		columns: "position name time", run: "ember-quay 2026-11-14", rows: "3-6 3-5"},
	{name: "places under a heading of the general class", file: "alder-bank_2026-01-03",
		text:    "Class. Geral|Nome|Tempo\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:10\n4|Di Fox|19:20\n5|Ed Gow|19:41\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "typed lines with groups in brackets, where they are known", file: "week 4",
		text:    "Alder Bank 3 January 2026\n1. Jo Lee 18:20\n2. Al Roe (M75) 18:31\n3. Cy Dee (SF) 19:10\n4. Di Fox (F40) 19:20\n5. Ed Gow 19:41\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "no headings, and MSEN and WSEN among the groups", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|18:20|MSEN|Fell AC\n2|Al Roe|18:31|M45|\n3|Cy Dee|19:10|WSEN|Fell AC\n4|Di Fox|19:20|WSEN|Dale RC\n5|Ed Gow|19:41|M40|Dale RC\n6|Fay Ho|20:01|W40|\n",
		columns: "position name time age-group club", run: "alder-bank 2026-01-03", rows: "1-6"},
	{name: "sections of seniors", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|Zeit\nSenioren M35\n1|Jo Lee|18:20\n2|Al Roe|18:31\nSeniorinnen W40\n1|Di Fox|19:20\nAltersklasse M50\n1|Ed Gow|19:41\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "3-4 6 8"},
}

// What stands beside a name or a sex on the row ends up in it.
func TestBeside(t *testing.T) {
	for _, c := range []struct {
		text, want string
		column     Meaning
	}{
		{"Plaats;Voornaam;Tussenvoegsel;Achternaam;Tijd\n1;Jo;van der;Berg;18:20\n2;Al;;Roe;18:31\n3;Cy;de;Vries;19:10\n", "van der Berg|Roe|de Vries", FamilyName},
		{"Pos,Name,Club,Sex,Time\n1,Jo Lee,Fell Harriers,M,18:20\n2,Ann Page,Dale & Fell, Juniors,F,18:31\n3,Cy Dee,,M,19:10\n4,Di Fox,Mere AC,F,19:40\n5,Ed Gow,Mere AC,M,19:41\n", "Fell Harriers|Dale & Fell, Juniors||Mere AC|Mere AC", Club},
		{"Pos,Name,Club,Time\n1,Lee,Jo,Fell Harriers,18:20\n2,Ann Page,Dale & Fell,18:31\n3,Cy Dee,,19:10\n4,Di Fox,Mere AC,19:40\n", "Lee,Jo|Ann Page|Cy Dee|Di Fox", Name},
		{"Pos,Name,Club,Time\n1,Jo Lee,Dale & Fell, Juniors,18:20\n2,Ann Page,Dale & Fell,18:31\n3,Cy Dee,,19:10\n4,Di Fox,Mere AC,19:40\n", "Jo Lee|Ann Page|Cy Dee|Di Fox", Name},
		{"Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,+0:11\n3,Cy Dee,+0:50\n4,Di Fox,+1:20.5\n5,Ed Gow,+1:21\n6,Fay Ho,+1:40\n7,Gus Ing,+2:00\n8,Hal Jay,+2:20\n", "18:20|0:18:31|0:19:10|0:19:40.500|0:19:41|0:20:00|0:20:20|0:20:40", Time},
		{"Platz,Name,Zeit\n1,Jo,18:20,5\n2,Al,18:31,9\n3,Cy,19:10,3\n4,Di,19:20,0\n5,Ed,19:41,7\n6,Fay,19:50,2\n7,Gus,20:20,8\n8,Hal,20:40,1\n", "18:20,5|18:31,9|19:10,3|19:20,0|19:41,7|19:50,2|20:20,8|20:40,1", Time},
		{"Pos,Name,Time\n1,Jo,18:20,5\n2,Al,18:31,6\n3,Cy,19:10,7\n4,Di,19:20,7\n5,Ed,19:41,8\n6,Fay,19:50,8\n7,Gus,20:20,8\n8,Hal,20:40,9\n", "18:20|18:31|19:10|19:20|19:41|19:50|20:20|20:40", Time},
		{"Pos\tName\tTime\tPlace in cat\t\n1\tJo\t18:10\t1\t\n2\tAl\t18:12\t1\t\n3\tCy\t19:14\t2\t\n4\tDi\t19:16\t1\t\n5\tAnn\t20:18\t3\t\n6\tEve\t20:20\t2\t\n7\tFay\t21:22\t4\t\n8\tHal\t21:24\t3\t\n9\tIda\t22:26\t5\t\n10\tMax\t22:28\t4\t\n11\tBo\t23:30\t6\t\n12\tTy\t23:32\t5\t\n13\tLu\t24:34\t7\t\n14\tVi\t24:36\t6\t\n", "18:10|18:12|19:14|19:16|20:18|20:20|21:22|21:24|22:26|22:28|23:30|23:32|24:34|24:36", Time},
		{"Pos,Name,Time,\n1,Jo Lee,18,20\n2,Al Roe,18,51\n3,Cy Dee,19,5\n4,Di Fox,19,41\n5,Ed Gow,20,9\n", "18:20|18:51|19:05|19:41|20:09", Time},
		{"Date,Course,Pos,Name,Time\n03/01/2026,Alder Bank,1,Jo Lee,18:20\n'','',2,Ann Page,18:31\n〃,〃,3,Cy Dee,19:10\n17/01/2026,Mere Side,1,Di Fox,19:20\n'','',2,Ed Gow,19:40\n", "Alder Bank|Alder Bank|Alder Bank|Mere Side|Mere Side", Course},
		{"Pos,Name,Club,Time\n1,Jo Lee,Mere AC,18:20\n2,Ann Page,do.,\"\"\"\"\n3,Cy Dee,,19:10\n4,Di Fox,Vale RC,s.t.\n5,Ed Gow,\"\"\"\",''\n6,Gus Ing,,19:40\n", "18:20|18:20|19:10|19:10|19:10|19:40", Time},
		{"Pos,Name,Club,Time\n1,Jo Lee,Mere AC,18:20\n2,Ann Page,do.,18:31\n3,Cy Dee,,19:10\n4,Di Fox,Vale RC,19:40\n", "Mere AC|Mere AC||Vale RC", Club},
		{"Alder Bank\nName,03/01/2026,,17/01/2026,\n,Pos,Time,Pos,Time\nJo Lee,1,18:20,2,18:30\nAnn Page,2,18:31,,\nCy Dee,,,1,18:10\nDi Fox,3,19:10,3,19:20\n", "Jo Lee|Ann Page|Di Fox", Name},
		{"Pos;Name;Male;Female;Age;Time\n1;Jo Lee;x;;31;18:20\n2;Ann Page;;x;44;18:31\n3;Cy Dee;x;;52;19:10\n", "Male|Female|Male", Sex},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p := s.Parts[0]
		var got []string
		if err := p.Each(func(_ int, cells []string) error {
			got = append(got, cells[p.Index(c.column)])
			return nil
		}); err != nil || strings.Join(got, "|") != c.want {
			t.Errorf("%v: %q, want %q (%v)", c.column, got, c.want, err)
		}
	}
}

// A letter for the sex under a heading that may mean a group is no end of a name that a
// comma has cut, where the age is blank.
func TestSexLetterIsNoName(t *testing.T) {
	text := "Full Name,G,Age on day,2026-01-03,2026-01-10,2026-01-17\n"
	for i := range 12 {
		text += string(rune('A'+i)) + "nn Lee" + string(rune('a'+i)) + ",W," + []string{"", "44"}[min(i, 1)] + ",2" + string(rune('0'+i%10)) + ":10," + []string{"23:09", "", "25:40"}[i%3] + "," + []string{"", "26:01"}[i%2] + "\n"
	}
	s, err := Read("alder-bank season.csv", []byte(text), Options{})
	if err != nil || len(s.Parts) != 3 {
		t.Fatalf("%d parts, %v", len(s.Parts), err)
	}
	for k, p := range s.Parts {
		if err := p.Each(func(row int, cells []string) error {
			if got := cells[p.Index(Name)]; strings.Contains(got, ",") {
				t.Errorf("part %d, row %d: name %q", k+1, row, got)
			}
			return nil
		}); err != nil {
			t.Fatal(err)
		}
	}
}

// A long sheet, of which later rows are only picked here and there, counts up as well.
func TestCountsOn(t *testing.T) {
	text := "Class.;Nome;Tempo\n"
	for i := range 300 {
		text += strconv.Itoa(i+1) + ";Ann Lee" + string(rune('a'+i%26)) + string(rune('a'+i/26)) + ";" + strconv.Itoa(18+i/20) + ":" + strconv.Itoa(10+i%20*2) + "\n"
	}
	s, err := Read("alder-bank_2026-01-03.csv", []byte(text), Options{})
	if err != nil || s.Parts[0].Index(Position) != 0 {
		t.Errorf("%v, %v", s.Parts[0].Columns, err)
	}
}

// Places in a list by name, under a heading that may mean a group, are those of the
// finish where none stands twice.
func TestPlacesByName(t *testing.T) {
	text := "Class. Geral;Nome;Tempo\n"
	for i := range 30 {
		n := (i*7)%30 + 1
		text += strconv.Itoa(n) + ";Ann Lee" + string(rune('a'+i)) + ";" + strconv.Itoa(18+n/3) + ":1" + strconv.Itoa(n%3) + "\n"
	}
	s, err := Read("alder-bank_2026-01-03.csv", []byte(text), Options{})
	if err != nil || s.Parts[0].Index(Position) != 0 {
		t.Errorf("%v, %v", s.Parts[0].Columns, err)
	}
}

// Seconds alone follow the minutes of the row above, unless they are fewer than those there.
func TestSecondsAlone(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.csv", []byte("Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,:31\n3,Cy Dee,19:02\n4,Di Fox,:28\n5,Ed Gow,:11\n6,Fi Hay,19:50\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	s.Parts[0].Each(func(_ int, cells []string) error {
		got = append(got, cells[2])
		return nil
	})
	if want := "18:20 18:31 19:02 19:28 :11 19:50"; strings.Join(got, " ") != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Lines beside a table say which of its rows don't count, and correct the time of a runner.
func TestLinesAboutRows(t *testing.T) {
	for _, k := range []struct{ line, want string }{
		{"The tail walker is not in the results.", " | |tail walker; The tail walker is not in the results."},
		{"The tail walker counts as a finisher.", " | |tail walker"},
		{"Correction: Jo Lee ran 18:25, not 18:20", "time put right from 18:20: Correction: Jo Lee ran 18:25, not 18:20| |tail walker"},
		{"Correction: Jo Lee ran 19:25, not 18:20", "time disputed: Correction: Jo Lee ran 19:25, not 18:20| |tail walker"},
		{"Correction: Jo Lee ran 18:20", " | |tail walker"},
		{"* Jo Lee (1) actual time 18:25", "time put right from 18:20: * Jo Lee (1) actual time 18:25| |tail walker"},
		{"Jo Lee led for most of the time, 18:25 of it alone", " | |tail walker"},
		{"Corrections to the desk before Wednesday", " | |tail walker"},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte("Pos,Name,Time,Note\n1,Jo Lee,18:20,\n2,Al Roe,18:31,\n3,Cy Dee,49:02,tail walker\n\n\""+k.line+"\"\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		p := s.Parts[0]
		p.Each(func(_ int, cells []string) error {
			got = append(got, orText(cellAt(cells, p.Index(Notes)), " "))
			return nil
		})
		if g := strings.Join(got, "|"); g != k.want {
			t.Errorf("%s: %q, want %q", k.line, g, k.want)
		}
	}
}

// A row that begins one cell too far to the right is moved back where its place comes next.
func TestRowBeginsLate(t *testing.T) {
	for row, want := range map[string]string{",4,Di Fox,Vale AC,19:40": "Jo Lee 18:20|Al Roe 18:31|Cy Dee 19:02|Di Fox 19:40|Ed Gow 20:01"} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte("Pos,Name,Club,Time,Note\n1,Jo Lee,,18:20,\n2,Al Roe,Vale AC,18:31,pb\n3,Cy Dee,,19:02,\n"+row+"\n5,Ed Gow,,20:01,\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		p := s.Parts[0]
		p.Each(func(_ int, cells []string) error {
			got = append(got, cellAt(cells, p.Index(Name))+" "+cellAt(cells, p.Index(Time)))
			return nil
		})
		if g := strings.Join(got, "|"); g != want {
			t.Errorf("%s: %q, want %q", row, g, want)
		}
	}
}

// A note that says which time should stand in its row gives it that time, where it keeps the order.
func TestTimeOfNote(t *testing.T) {
	for note, want := range map[string]string{
		"time should be 18:29": "18:29", "corrected: 18:29": "18:29", "corretto: 18:29": "18:29", "richtig: 18:29": "18:29", "should read 18:29": "18:29",
		"time should be 19:29": "18:25", "corrected from 18:29": "18:25", "pb 18:29": "18:25", "real pb is 18:29": "18:25", "corrected 18:29, 18:28 on my watch": "18:25",
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte("Pos,Name,Time,Note\n1,Jo Lee,18:20,\n2,Al Roe,18:25,\""+note+"\"\n3,Cy Dee,18:31,\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		p := s.Parts[0]
		p.Each(func(_ int, cells []string) error {
			got = append(got, cellAt(cells, p.Index(Time)))
			return nil
		})
		if got[1] != want || got[0] != "18:20" || got[2] != "18:31" {
			t.Errorf("%s: %v, want %s", note, got, want)
		}
	}
}

// A line that says who made the list, or that is no name of a place where the next one is, is not
// the course.
func TestLinesAboveTheCourse(t *testing.T) {
	for above, want := range map[string]string{
		"Typed by Jean": "alder-common", "Compiled by Peter Abbot": "alder-common", "Results by Colin": "alder-common", "Checked JB": "alder-common", "Saisi par Marie Duval": "alder-common",
		"Entered 4 January by JB": "alder-common", "Jean's copy": "alder-common", "CONFIDENTIAL": "alder-common", "Happy New Year!": "alder-common",
		"The Heron Run": "heron", "Heron Lakes": "heron-lakes", "Heron 5k": "heron",
	} {
		s := readCase(t, "results.csv", above+"\nAlder Common\nSaturday 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n")
		if got := s.Parts[0].Course.Value + " " + s.Parts[0].Date.Day.String(); got != want+" 2026-01-03" {
			t.Errorf("%s: %s, want %s", above, got, want)
		}
	}
	for above, want := range map[string]string{ // a kind of run gives way to a place, and names the course alone
		"INTER-HOUSE 5K RUN\nSaint Botolph Playing Fields": "saint-botolph-playing-fields", "Parish 5K\nCarrow Bog Road": "carrow-bog-road", "Inter-club 5k: Ferry Boat Walk": "ferry-boat-walk",
		"Feierabendlauf 5 km, Strecke Werksrunde Nord": "werksrunde-nord", "Works run 5k, Alder Bank": "alder-bank", "Parish 5K": "parish", "Church Hill 5k": "church-hill", "Lužný les 5 km": "luzny-les", "Village Green\nSummer 5k": "village-green",
		"Alder Bank five kilometres": "alder-bank", "Sedge Fen Run or Walk 5k": "sedge-fen", "Five Mile Wood 5k": "five-mile-wood", "Alder Bank Sat 5k": "alder-bank",
	} {
		s := readCase(t, "results.csv", above+"\nSaturday 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n")
		if got := s.Parts[0].Course.Value + " " + s.Parts[0].Date.Day.String(); got != want+" 2026-01-03" {
			t.Errorf("%s: %s, want %s", above, got, want)
		}
	}
	for line, want := range map[string]string{"Corrida da Ribeira": "ribeira", "Heron\nMill Car Park": "heron", "Run by Mill Lane": "mill-lane"} {
		s := readCase(t, "results.csv", line+"\nSaturday 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n")
		if got := s.Parts[0].Course.Value; got != want {
			t.Errorf("%s: %s, want %s", line, got, want)
		}
	}
}

// Rows that are moved are put back where minutes and seconds stand in columns of their own, or the
// times have dots, or there is no heading; and minutes without seconds are no time where noughts are written.
func TestMovedPartsOfTimes(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Pos,Name,Min,Sec,Sex,Age\n1,Jo Lee,18,20,F,31\n2,Al Roe,18,31,M,44\n3,Cy Dee,19,02,M,52\n4,Di Fox,19,28,F,27\n5,Ed Gow,20,11,M,61\n6,Fi Hay,20,,40,F,33\n7,Gus Ivy,20,,51,M,48\n8,Hal Jay,21,,15,M,39\n", "18:20 18:31 19:02 19:28 20:11 20:40 20:51 21:15"},
		{"Pos,Name,Min,Sec,Sex,Age\n1,Jo Lee,18,20,F,31\n2,Al Roe,18,31,M,44\n3,Cy Dee,19,02,M,52\n4,Di Fox,19,28,F,27\n5,Ed Gow,20,11,M,61\n,6,Fi Hay,20,40,F,33\n", "18:20 18:31 19:02 19:28 20:11 20:40"},
		{"Pos,Name,Min,Sec,Sex,Age\n1,Jo Lee,18,20,F,31\n2,Al Roe,18,31,M,44\n3,Cy Dee,19,00,M,52\n4,Di Fox,19,28,F,27\n5,Ed Gow,20,,M,61\n6,Fi Hay,20,40,F,33\n", "18:20 18:31 19:00 19:28 20:? 20:40"},
		{"Pos,Name,Min,Sec,Sex,Age\n1,Jo Lee,18,20,F,31\n2,Al Roe,18,31,M,44\n3,Cy Dee,19,,M,52\n4,Di Fox,19,28,F,27\n5,Ed Gow,20,11,M,61\n6,Fi Hay,20,40,F,33\n", "18:20 18:31 19:00 19:28 20:11 20:40"},
		{"Plac.;Navn;Køn;Født;Tid\n1;Jo Lee;K;1990;18.20\n2;Al Roe;M;1980;18.31\n3;Cy Dee;M;1971;19.02\n4;Di Fox;K;1999;19.28\n5;Ed Gow;M;1964;20.11\n;6;Fi Hay;K;1988;20.40\n;7;Gus Ivy;M;1977;20.51\n;8;Hal Jay;M;1969;21.15\n", "18.20 18.31 19.02 19.28 20.11 20.40 20.51 21.15"},
		{"Plac.;Navn;Køn;Født;Tid\n1;Jo Lee;K;1990;18.20\n2;Al Roe;M;1980;18.31\n3;Cy Dee;M;1971;19.02\n4;Di Fox;K;1999;19.28\n5;Ed Gow;M;1964;20.11\n;6;Fi Hay;K;1988;58.40\n;7;Gus Ivy;M;1977;1.02.51\n;8;Hal Jay;M;1969;1.05.15\n", "18.20 18.31 19.02 19.28 20.11 58.40 1.02.51 1.05.15"},
		{"Pos,Name,Time,Sex\n1,Jo Lee,18:20,F\n2,Al Roe,18:31,M\n3,Cy Dee,19:02,M\n4,Di Fox,19:28,F\n,5,Ed Gow,20:11,M\n,6,Fi Hay,20:40,F,,see Bo\n,7,Gus Ivy,20:51,M\n,8,Hal Jay,21:15,M\n", "18:20 18:31 19:02 19:28 20:11 20:40 20:51 21:15"},
		{"1,Jo Lee,18:20,F,31\n2,Al Roe,18:31,M,44\n3,Cy Dee,19:02,M,52\n4,Di Fox,19:28,F,27\n5,Ed Gow,20:11,M,61\n,6,Fi Hay,20:40,F,33\n", "18:20 18:31 19:02 19:28 20:11 20:40"},
	} {
		s := readCase(t, "alder-bank_2026-01-03.csv", c.text)
		p, got := s.Parts[0], []string(nil)
		p.Each(func(_ int, cells []string) error {
			got = append(got, cellAt(cells, p.Index(Time)))
			return nil
		})
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %q, want %q", c.text, got, c.want)
		}
	}
}

// Two letters of a short month that have changed places are put right; a word that may be another is not.
func TestShortMonthsMisspelt(t *testing.T) {
	for line, want := range map[string]string{"Saturday 18 Aprli 2026": "2026-04-18", "Saturday 14 Marhc 2026": "2026-03-14", "Alder 3 Marsh 2026": "", "Alder 3 Juice 2026": ""} {
		got := ""
		for _, f := range findDates(line) {
			got = f.readings[0].day().String()
		}
		if got != want {
			t.Errorf("%s: %q, want %q", line, got, want)
		}
	}
}

// A weekday that is not that of the date is a slip where the file's name says the date again, and
// asked about where it does not.
func TestWeekdayBesideTwoDates(t *testing.T) {
	for file, settled := range map[string]bool{"alder-bank_2026-01-03.csv": true, "alder-bank 03-01-2026.csv": true, "alder-bank.csv": false, "alder-bank 04-02-2026.csv": false, "alder-bank_2026-01-10.csv": false} {
		s := readCase(t, file, "Alder Bank, Sunday 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n")
		if p := s.Parts[0]; p.Date.Settled != settled || settled && !hasProblem(p, "weekday-differs") && len(s.Problems) == 0 {
			t.Errorf("%s: settled %v, %v", file, p.Date.Settled, p.Problems)
		}
	}
}

// The year of a title and that of figures in the file's name that can be read two ways are held
// against one another.
func TestYearAgainstFigures(t *testing.T) {
	for file, settled := range map[string]bool{"alder-bank 09-05-2026.csv": true, "alder-bank 09-05-2025.csv": false, "alder-bank 02-05-2026.csv": false, "alder-bank 11-05-2026.csv": true} {
		s := readCase(t, file, "Alder Bank\n9 May 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n")
		if p := s.Parts[0]; p.Date.Settled != settled {
			t.Errorf("%s: settled %v %s", file, p.Date.Settled, p.Date.Day)
		}
	}
}

// A list of who has which number, below results that have no names, gives them; one that lacks
// many of the numbers, or has one twice, does not.
func TestNamesBelowByNumber(t *testing.T) {
	above := "Pos,Bib,Time\n1,12,18:20\n2,15,18:31\n3,19,19:02\n4,11,19:28\n"
	for below, want := range map[string]string{
		"\nRunners\nBib,Name,Sex\n11,Jo Lee,F\n12,Al Roe,M\n15,Cy Dee,M\n17,Di Fox,F\n19,Ed Gow,M\n": "Al Roe M, Cy Dee M, Ed Gow M, Jo Lee F",
		"\nRunners\nBib,Name,Sex\n11,Jo Lee,F\n12,Al Roe,M\n17,Di Fox,F\n18,Ed Gow,M\n":              "",
		"\nRunners\nBib,Name,Sex\n11,Jo Lee,F\n12,Al Roe,M\n15,Cy Dee,M\n19,Ed Gow,M\n19,Di Fox,F\n": "",
	} {
		s := readCase(t, "alder-bank_2026-01-03.csv", above+below)
		p, got := s.Parts[0], []string(nil)
		p.Each(func(_ int, cells []string) error {
			if name := cellAt(cells, p.Index(Name)); name != "" {
				got = append(got, name+" "+cellAt(cells, p.Index(Sex)))
			}
			return nil
		})
		if strings.Join(got, ", ") != want {
			t.Errorf("%s: %q, want %q", below, got, want)
		}
	}
}

// A stray letter below the last row is no group of nobody, and a row whose place and time have
// changed places is not lost.
func TestStrayLetterAndExchangedCells(t *testing.T) {
	rows := "Pos,Name,Time,Age\n1,Jo Lee,18:20,31\n2,Al Roe,18:31,44\n3,Cy Dee,19:02,52\n19:28,Di Fox,4,27\n"
	for below, want := range map[string]bool{"\n\n,x\n": false, "\nWomen\n1,Eva Hay,21:20,40\n2,Fay Ivy,22:01,36\n": true} {
		s := readCase(t, "alder-bank_2026-01-03.csv", rows+below)
		p, n := s.Parts[0], 0
		p.Each(func(int, []string) error { n++; return nil })
		if got := p.Index(Sex) >= 0 || p.Index(AgeGroup) >= 0; got != want || n < 4 {
			t.Errorf("%q: sections %v, %d rows", below, got, n)
		}
	}
}

// Times without a heading that follow no order are not those of the run where others, with dots,
// rise with the places; where none do, they are.
func TestTargetsBesideTimes(t *testing.T) {
	for last, want := range map[string]int{"18.20 18.31 19.02 19.28 20.11 20.4 20.51 21.15 22 22.31": 3, "1.5 1.1 2.5 1.2 3.1 1.4 1.3 2.2 1.8 1.9": 2} {
		var b strings.Builder
		targets := strings.Fields("25:00 20:00 19:00 28:00 24:00 30:00 21:00 27:00 20:00 26:00")
		for i, v := range strings.Fields(last) {
			fmt.Fprintf(&b, "%d,%s Roe,%s,%s\n", i+1, strings.Fields("Al Bo Cy Di Ed Fi Gus Hal Ines Jo")[i], targets[i], v)
		}
		if s := readCase(t, "alder-bank_2026-01-03.csv", b.String()); s.Parts[0].Index(Time) != want {
			t.Errorf("%s: time in column %d, want %d", last, s.Parts[0].Index(Time), want)
		}
	}
}

// A number alone in a cell above the heading that may be a day is asked about as that day.
func TestDayNumberAlone(t *testing.T) {
	for number, want := range map[string]string{"46144": "--date 2026-05-02", "12345": "--date YEAR-MONTH-DAY"} {
		s := readCase(t, "results.csv", "Alder Bank 5k,,"+number+"\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n")
		if asked := s.Parts[0].Problems; len(asked) != 1 || asked[0].Kind != "date-missing" || !strings.HasPrefix(asked[0].Answers, want) {
			t.Errorf("%s: %+v", number, asked)
		}
	}
}

// A time with its unit is one.
func TestClockWithUnit(t *testing.T) {
	for _, s := range []string{"24:31 min", "24:31 mins", "0:24:31 h", "24:31 minuten"} {
		if k := kindOf(s); k != kClock {
			t.Errorf("%s: %v", s, k)
		}
	}
	if k := kindOf("24 min"); k == kClock {
		t.Errorf("24 min: %v", k)
	}
}

// Lists as people and programs write them down: a table one cell a line of which a few places are left
// out, the answer of a database, and somebody who did not finish set in below the last.
func TestListsWrittenDown(t *testing.T) {
	for _, c := range []struct{ what, text, want string }{
		{"a cell a line", "Alder Bank 5k\n3 January 2026\nPosition\nName\nClub\nTime\n1\nJo Lee\nVale AC\n18:20\n2\nAl Roe\nMoor RC\n18:31\n3\nCy Dee\nVale AC\n19:02\n4\nDi Fox\nVale AC\n19:28\n5\nEd Gow\nMoor RC\n19:40\n6\nFi Hay\nMoor RC\n20:11\n8\nGus Ivy\nVale AC\n20:40\n9\nHal Jay\nVale AC\n20:51\n", "1 Jo Lee 18:20, 2 Al Roe 18:31, 3 Cy Dee 19:02, 4 Di Fox 19:28, 5 Ed Gow 19:40, 6 Fi Hay 20:11, 8 Gus Ivy 20:40, 9 Hal Jay 20:51"},
		{"a query", "Alder Bank 5k 2026-01-03\n pos |  name  |  time   \n-----+--------+---------\n 1   | Jo Lee | 0:18:20\n 2   | Al Roe | 0:18:31\n 3   | Cy Dee | 0:19:02\n 4   | Di Fox | 0:19:28\n(4 rows)\n", "1 Jo Lee 0:18:20, 2 Al Roe 0:18:31, 3 Cy Dee 0:19:02, 4 Di Fox 0:19:28"},
		{"boxes of a page", "<!doctype html><html><body><h2>Alder Bank 5k</h2><div>3 January 2026</div><div><div><div>Pos</div><div>Name</div><div>Sex</div><div>Time</div></div><div><div>1</div><div>Jo Lee</div><div>F</div><div>18:20</div></div><div><div>2</div><div>Al Roe</div><div></div><div>18:31</div></div><div><div></div><div>Cy Dee</div><div>M</div><div>DNF</div></div><div><div>3</div><div>Di Fox</div><div>F</div><div>19:28</div></div></div></body></html>", "1 Jo Lee 18:20, 2 Al Roe 18:31,  Cy Dee DNF, 3 Di Fox 19:28"},
		{"times with and without a penalty", "Alder Bank 5k,3 January 2026\nPos,Name,Raw time,Penalty,Final time\n1,Jo Lee,18:20,,18:20\n2,Al Roe,18:31,,18:31 (1)\n3,Cy Dee,19:02,10,19:12\n4,Di Fox,19:28,,19:28\n5,Ed Gow,20:01,10,20:11\n6,Fi Hay,20:40,,20:40\n7,Gus Ivy,21:10,20,21:30\n(1) pushed a buggy\n", "1 Jo Lee 18:20, 2 Al Roe 18:31 (1), 3 Cy Dee 19:12, 4 Di Fox 19:28, 5 Ed Gow 20:11, 6 Fi Hay 20:40, 7 Gus Ivy 21:30"},
		{"a paragraph with one untimed and one unnamed", "Alder Bank 5k, 3 January 2026\n\n1 Jo Lee (F) 18:20, 2 Al Roe (M) 18:31, 3 Cy Dee (M) no time, 4 Di Fox (F) 19:28, 5 no name 20:01, 6 Fi Hay (F) 20:40.\n", "1 Jo Lee 18:20, 2 Al Roe 18:31, 3 Cy Dee no time, 4 Di Fox 19:28, 5 no name 20:01, 6 Fi Hay 20:40"},
		{"a log", "# course=Alder Bank 5k date=2026-01-03 start=09:00:00\nFINISH pos=1 name=\"Jo Lee\" time=0:18:20\nFINISH pos=2 name=\"Al Roe\" time=0:18:31\nFINISH pos=3 name=\"Cy Dee\" time=0:19:02\n", "1 Jo Lee 0:18:20, 2 Al Roe 0:18:31, 3 Cy Dee 0:19:02"},
		{"lengths of days in capitals", "ALDER BANK 5K\n3 JANUARY 2026\nPOSITION,NAME,TIME\n1,JO LEE,0 DAYS 00:18:20\n2,AL ROE,0 DAYS 00:18:31\n3,CY DEE,0 DAYS 00:19:02\n", "1 JO LEE 0 DAYS 00:18:20, 2 AL ROE 0 DAYS 00:18:31, 3 CY DEE 0 DAYS 00:19:02"},
		{"one who did not finish", "Alder Bank 5k\n3 January 2026\n\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 19:02\n4. Di Fox 29:28 - walked\n      Ed Gow - DNF\n", "1 Jo Lee 18:20, 2 Al Roe 18:31, 3 Cy Dee 19:02, 4 Di Fox 29:28,  Ed Gow DNF"},
	} {
		s := readCase(t, map[bool]string{true: "list.html", false: "list.txt"}[c.text[0] == '<'], c.text)
		if got := s.Parts[0].Course.Value + " " + s.Parts[0].Date.Day.String(); got != "alder-bank 2026-01-03" {
			t.Errorf("%s: %s", c.what, got)
		}
		p, got := s.Parts[0], []string(nil)
		p.Each(func(_ int, cells []string) error {
			got = append(got, cellAt(cells, p.Index(Position))+" "+cellAt(cells, p.Index(Name))+" "+cellAt(cells, p.Index(Time)))
			return nil
		})
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%s: %q, want %q", c.what, got, c.want)
		}
	}
}
