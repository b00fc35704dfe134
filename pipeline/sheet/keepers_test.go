package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// TestKeepers reads sheets as people with one habit each keep them. want is each line read:
// the run, then place, name, time, sex and group; asks are the kinds of the questions.
func TestKeepers(t *testing.T) {
	for _, c := range []struct{ name, file, text, want, asks string }{
		{"three runs side by side, the first date in the first column", "month.csv", "Alder Bank\n3 January 2026,,,,10 January 2026,,,,17 January 2026\nPos,Name,Time,,Pos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,1,Al Roe,18:40,,1,Cy Dee,18:50\n2,Al Roe,18:31,,2,Jo Lee,18:42,,2,Di Fox,18:52\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-10 1 Al Roe 18:40\nalder-bank 2026-01-10 2 Jo Lee 18:42\nalder-bank 2026-01-17 1 Cy Dee 18:50\nalder-bank 2026-01-17 2 Di Fox 18:52\n", ""},
		{"runners called like months in a typed list", "alder-bank_2026-01-03.txt", "Results\n1. May Fox, 18.20\n2. Jan Roe, 18.31\n3. June Dee, 18.40\n4. Al Ing, 18.42\n5. April Low, 18.45\n6. Ed Gow, 18.47\n",
			"alder-bank 2026-01-03 1 May Fox 18.20\nalder-bank 2026-01-03 2 Jan Roe 18.31\nalder-bank 2026-01-03 3 June Dee 18.40\nalder-bank 2026-01-03 4 Al Ing 18.42\nalder-bank 2026-01-03 5 April Low 18.45\nalder-bank 2026-01-03 6 Ed Gow 18.47\n", ""},
		{"two days in a typed list", "diary.txt", "Alder Bank\n3. January 2026\n1. Jo Lee, 18.20\n2. Al Roe, 18.31\n3. Cy Dee, 18.40\n4. Di Fox, 18.42\n5. Ed Gow, 18.45\n4. January 2026\n1. Jo Lee, 18.21\n2. Al Roe, 18.32\n3. Cy Dee, 18.41\n4. Di Fox, 18.43\n5. Ed Gow, 18.46\n",
			"alder-bank 2026-01-03 1 Jo Lee 18.20\nalder-bank 2026-01-03 2 Al Roe 18.31\nalder-bank 2026-01-03 3 Cy Dee 18.40\nalder-bank 2026-01-03 4 Di Fox 18.42\nalder-bank 2026-01-03 5 Ed Gow 18.45\nalder-bank 2026-01-04 1 Jo Lee 18.21\nalder-bank 2026-01-04 2 Al Roe 18.32\nalder-bank 2026-01-04 3 Cy Dee 18.41\nalder-bank 2026-01-04 4 Di Fox 18.43\nalder-bank 2026-01-04 5 Ed Gow 18.46\n", ""},
		{"a space in the times and no headings", "alder-bank_2026-01-03.csv", "1,Jo Lee,20 47\n2,Al Roe,21 11\n3,Cy Dee,27 27\n4,Di Fox,30 34\n5,Ed Gow,1 02 15\n",
			"alder-bank 2026-01-03 1 Jo Lee 20 47\nalder-bank 2026-01-03 2 Al Roe 21 11\nalder-bank 2026-01-03 3 Cy Dee 27 27\nalder-bank 2026-01-03 4 Di Fox 30 34\nalder-bank 2026-01-03 5 Ed Gow 1 02 15\n", ""},
		{"age groups with a dash are no such times", "alder-bank_2026-01-03.csv", "1,Jo Lee,20-24,18:20\n2,Al Roe,50-54,18:31\n3,Cy Dee,30-34,18:40\n4,Di Fox,40-44,18:42\n5,Ed Gow,25-29,18:45\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20 20-24\nalder-bank 2026-01-03 2 Al Roe 18:31 50-54\nalder-bank 2026-01-03 3 Cy Dee 18:40 30-34\nalder-bank 2026-01-03 4 Di Fox 18:42 40-44\nalder-bank 2026-01-03 5 Ed Gow 18:45 25-29\n", ""},
		{"the number of a week in its month is no day", "results.csv", "Alder Bank\nSat wk 3 Jan 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "not known 1 Jo Lee 18:20\nnot known 2 Al Roe 18:31\n", "date-missing"},
		{"the place twice on each row", "alder-bank_2026-01-03.csv", "Pos,Time,Pos,Name\n1,18:20,1,Jo Lee\n2,18:31,2,Al Roe\n3,18:40,3,Cy Dee\n", "alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\n", ""},
		{"places among men and women, headed like places", "alder-bank_2026-01-03.csv", "Pos,Time,Place,Name\n1,18:20,1,Al Roe\n2,18:31,1,Jo Lee\n3,18:40,2,Cy Dee\n4,18:42,2,Di Fox\n", "alder-bank 2026-01-03 1 Al Roe 18:20\nalder-bank 2026-01-03 2 Jo Lee 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\nalder-bank 2026-01-03 4 Di Fox 18:42\n", ""},
		{"a tab of times and a tab of tokens", "week 7.xlsx", "== Stopwatch\nAlder Bank 3 January 2026\nFinish|Clock\n1|0:18:20\n2|0:18:31\n3|0:18:40\n== Tokens\nToken|Runner\n3|Cy Dee\n1|Jo Lee\n",
			"alder-bank 2026-01-03 1 0:18:20\nalder-bank 2026-01-03 2 0:18:31\nalder-bank 2026-01-03 3 0:18:40\nalder-bank 2026-01-03 3 Cy Dee\nalder-bank 2026-01-03 1 Jo Lee\n", ""},
		{"tokens beside places are numbers", "alder-bank_2026-01-03.csv", "Pos,Token,Name,Time\n1,48,Jo Lee,18:20\n2,7,Al Roe,18:31\n3,19,Cy Dee,18:40\n", "alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\n", ""},
		{"cards of three lines, marks in the third", "copied.txt", "Alder Bank\n3 January 2026\n\n1\nJo Lee\nW40 | 18:20\n2\nAl Roe\nJW | 18:31\n3\nCy Dee\nM50 | 18:40\n4\nDi Fox\nSW | 18:42\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20 W40\nalder-bank 2026-01-03 2 Al Roe 18:31 JW\nalder-bank 2026-01-03 3 Cy Dee 18:40 M50\nalder-bank 2026-01-03 4 Di Fox 18:42 SW\n", ""},
		{"the usual distance in the heading of the only times", "alder-bank_2026-01-03.csv", "Place,Name,5k Time,Running total\n1,Jo Lee,18.20,87\n2,Al Roe,18.31,114\n3,Cy Dee,18.40,44\n4,Di Fox,20.05,51\n",
			"alder-bank 2026-01-03 1 Jo Lee 18.20\nalder-bank 2026-01-03 2 Al Roe 18.31\nalder-bank 2026-01-03 3 Cy Dee 18.40\nalder-bank 2026-01-03 4 Di Fox 20.05\n", ""},
		{"the usual distance as a part of a longer one", "alder-bank_2026-01-03.csv", "Alder Bank 10 km\nPlace,Name,5k Time,Time\n1,Jo Lee,18:20,37:20\n2,Al Roe,18:31,37:40\n3,Cy Dee,18:40,38:02\n",
			"alder-bank 2026-01-03 1 Jo Lee 37:20\nalder-bank 2026-01-03 2 Al Roe 37:40\nalder-bank 2026-01-03 3 Cy Dee 38:02\n", ""},
		{"results among the entries", "Alder Bank 3 January 2026.xlsx", "== Entries\nBib|Name|Status|Pos|Time\n11|Jo Lee|Finished|1|18:20\n7|Al Roe|Finished|2|18:31\n23|Cy Dee|Finished|3|18:40\n30|Di Fox|DNS||\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\nalder-bank 2026-01-03 Di Fox\n", ""},
		{"the minute above the seconds", "alder-bank_2026-01-03.txt", "18 minutes\n:20 Jo Lee\n:31 Al Roe\n19 minutes\n:02 Cy Dee\n20 min\n:11 Di Fox\n:40 Ed Gow\n",
			"alder-bank 2026-01-03 Jo Lee 18:20\nalder-bank 2026-01-03 Al Roe 18:31\nalder-bank 2026-01-03 Cy Dee 19:02\nalder-bank 2026-01-03 Di Fox 20:11\nalder-bank 2026-01-03 Ed Gow 20:40\n", ""},
		{"results in a sentence", "note.txt", "Alder Bank, Saturday 3rd January 2026. 1 Jo Lee 18:20, 2 Al Roe 18:31, 3 Cy Dee 18:40, 4 Di Fox 18:42, 5 Ed Gow 18:45.\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\nalder-bank 2026-01-03 4 Di Fox 18:42\nalder-bank 2026-01-03 5 Ed Gow 18:45\n", ""},
		{"an hour below minutes with dots, nothing over them", "alder-bank_2026-01-03.txt", "1 - Jo Lee - 18.32\n2 - Al Roe - 20.24 - Moor AC\n3 - Cy Dee - 20.38\n4 - Di Fox - 23.52 - Moor AC\n5 - Ed Gow - 24.01\n6 - Gus Ing - 24.32 - Vale AC\n7 - Hal Job - 24.52\n8 - Ida Kay - 25.37\n9 - Jay Low - 1.03.31\n",
			"alder-bank 2026-01-03 1 Jo Lee 18.32\nalder-bank 2026-01-03 2 Al Roe 20.24\nalder-bank 2026-01-03 3 Cy Dee 20.38\nalder-bank 2026-01-03 4 Di Fox 23.52\nalder-bank 2026-01-03 5 Ed Gow 24.01\nalder-bank 2026-01-03 6 Gus Ing 24.32\nalder-bank 2026-01-03 7 Hal Job 24.52\nalder-bank 2026-01-03 8 Ida Kay 25.37\nalder-bank 2026-01-03 9 Jay Low 1.03.31\n", ""},
		{"a letter of the same morning", "mail.txt", "From: Ann Moss\nTo: all\nDate: Sat, 3 Jan 2026 11:42:03 +0000\nSubject: Alder Bank results\n\nLovely run today. Here we go:\n\n1 18:20 Jo Lee\n2 18:31 Al Roe\n3 18:40 Cy Dee\n4 18:42 Di Fox\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\nalder-bank 2026-01-03 4 Di Fox 18:42\n", ""},
		{"a letter that does not say when the run was", "mail.txt", "From: Ann Moss\nTo: all\nDate: Mon, 5 Jan 2026 11:42:03 +0000\nSubject: Alder Bank results\n\nHere we go:\n\n1 18:20 Jo Lee\n2 18:31 Al Roe\n3 18:40 Cy Dee\n4 18:42 Di Fox\n",
			"not known 1 Jo Lee 18:20\nnot known 2 Al Roe 18:31\nnot known 3 Cy Dee 18:40\nnot known 4 Di Fox 18:42\n", "date-missing"},
		{"who sent a message in brackets", "chat.txt", "[13/01/2026, 10:31:02] Bev: Alder Bank 5k this morning, 6 of us\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n4. Di Fox 18:42\n5. Ed Gow 18:45\n6. Gus Ing 18:47\n[13/01/2026, 10:40:11] Col: thanks Bev\n",
			"alder-bank 2026-01-13 1 Jo Lee 18:20\nalder-bank 2026-01-13 2 Al Roe 18:31\nalder-bank 2026-01-13 3 Cy Dee 18:40\nalder-bank 2026-01-13 4 Di Fox 18:42\nalder-bank 2026-01-13 5 Ed Gow 18:45\nalder-bank 2026-01-13 6 Gus Ing 18:47\n", ""},
		{"the only times are half-way", "alder-bank_2026-01-03.csv", "Pos,Name,Halfway\n1,Jo Lee,9:10\n2,Al Roe,9:15\n3,Cy Dee,9:20\n", "alder-bank 2026-01-03 1 Jo Lee\nalder-bank 2026-01-03 2 Al Roe\nalder-bank 2026-01-03 3 Cy Dee\n", "time-column-missing"},
		{"numbers that may be times and fall", "alder-bank_2026-01-03.csv", "1,Jo Lee,18.32\n2,Al Roe,20.24\n3,Cy Dee,19.38\n4,Di Fox,23.52\n5,Ed Gow,24.01\n6,Gus Ing,24.32\n7,Hal Job,24.52\n8,Ida Kay,23.37\n",
			"alder-bank 2026-01-03 1 Jo Lee\nalder-bank 2026-01-03 2 Al Roe\nalder-bank 2026-01-03 3 Cy Dee\nalder-bank 2026-01-03 4 Di Fox\nalder-bank 2026-01-03 5 Ed Gow\nalder-bank 2026-01-03 6 Gus Ing\nalder-bank 2026-01-03 7 Hal Job\nalder-bank 2026-01-03 8 Ida Kay\n", "time-column-missing"},
		{"members at several runs of a day, a column each", "members.csv", "Members at runs on Saturday 3 January 2026\nName,M/F,Alder Bank,Whin Moss,Mill Lane\nJo Lee,W,18:20,,\nAl Roe,M,,18:31,\nCy Dee,M,18:40,,\nDi Fox,W,,,18:42\nEd Gow,M,,,18:45\n",
			"alder-bank 2026-01-03 Jo Lee 18:20 W\nalder-bank 2026-01-03 Cy Dee 18:40 M\nwhin-moss 2026-01-03 Al Roe 18:31 M\nmill-lane 2026-01-03 Di Fox 18:42 W\nmill-lane 2026-01-03 Ed Gow 18:45 M\n", ""},
		{"times on several courses, a column each", "alder-bank_2026-01-03.csv", "Saturday 3 January 2026\nName,Alder Bank,Mill Lane\nJo Lee,18:20,18:02\nAl Roe,,18:31\nCy Dee,18:40,18:50\nDi Fox,19:01,18:42\nEd Gow,19:12,18:45\n",
			"alder-bank 2026-01-03 Jo Lee\nalder-bank 2026-01-03 Al Roe\nalder-bank 2026-01-03 Cy Dee\nalder-bank 2026-01-03 Di Fox\nalder-bank 2026-01-03 Ed Gow\n", "time-column-missing"},
		{"lines without the club", "message.txt", "Alder Bank Saturday 3 January 2026\n\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,18:31\n3,Cy Dee,Mill Harriers,18:40\n4,Di Fox,18:42\n5,Ed Gow,Vale AC,18:45\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\nalder-bank 2026-01-03 4 Di Fox 18:42\nalder-bank 2026-01-03 5 Ed Gow 18:45\n", ""},
		{"day, month and year in cells of their own", "run 9.csv", "Alder Bank\nSaturday,3,January,2026\n\nPlace,Runner,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\n", ""},
		{"day, month and year behind a label", "run 9.csv", "Course,Alder Bank\nDate,3,January,2026\nPlace,Runner,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\n", ""},
		{"Vietnamese", "alder-bank_2026-01-03.csv", "Hạng,Họ và tên,Giới tính,Thời gian\n1,Lê Hữu Hải,Nam,18:20\n2,Vũ Thị Nga,Nữ,18:31\n3,Hồ Mỹ Linh,Nữ,18:40\n",
			"alder-bank 2026-01-03 1 Lê Hữu Hải 18:20 Nam\nalder-bank 2026-01-03 2 Vũ Thị Nga 18:31 Nữ\nalder-bank 2026-01-03 3 Hồ Mỹ Linh 18:40 Nữ\n", ""},
		{"sexes in two languages under a heading that is not known", "alder-bank_2026-01-03.csv", "Pos,Name,G/S,Time\n1,Jo Lee,W/F,18:20\n2,Al Roe,M,18:31\n3,Cy Dee,M,18:40\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20 W/F\nalder-bank 2026-01-03 2 Al Roe 18:31 M\nalder-bank 2026-01-03 3 Cy Dee 18:40 M\n", ""},
		{"the date in the heading of the times", "Alder Bank run 4.csv", "Pos,Name,Time (3 Jan 26)\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\n", ""},
		{"names under the sexes", "alder-bank_2026-01-03.csv", "Pos,Gents,Ladies,Time\n1,Al Roe,,18:20\n2,,Jo Lee,18:31\n3,Cy Dee,,18:40\n4,,Di Fox,18:42\n5,Ed Gow,,18:45\n",
			"alder-bank 2026-01-03 1 Al Roe 18:20 Gents\nalder-bank 2026-01-03 2 Jo Lee 18:31 Ladies\nalder-bank 2026-01-03 3 Cy Dee 18:40 Gents\nalder-bank 2026-01-03 4 Di Fox 18:42 Ladies\nalder-bank 2026-01-03 5 Ed Gow 18:45 Gents\n", ""},
		{"minutes, a colon and seconds in three cells", "alder-bank_2026-01-03.csv", "Pos,Name,Time,,\n1,Jo Lee,18,:,20\n2,Al Roe,18,:,31\n3,Cy Dee,18,:,40\n4,Di Fox,19,:,02\n5,Ed Gow,19,:,15\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\nalder-bank 2026-01-03 4 Di Fox 19:02\nalder-bank 2026-01-03 5 Ed Gow 19:15\n", ""},
		{"a tab a month, and only the day over each run", "Alder Bank.xlsx", "== January 2026\nTues 6th\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\nTues 13th\nPos|Name|Time\n1|Al Roe|18:40\n2|Jo Lee|18:42\n== February 2026\nTues 3rd\nPos|Name|Time\n1|Jo Lee|18:22\n2|Al Roe|18:33\n",
			"alder-bank 2026-01-06 1 Jo Lee 18:20\nalder-bank 2026-01-06 2 Al Roe 18:31\nalder-bank 2026-01-13 1 Al Roe 18:40\nalder-bank 2026-01-13 2 Jo Lee 18:42\nalder-bank 2026-02-03 1 Jo Lee 18:22\nalder-bank 2026-02-03 2 Al Roe 18:33\n", ""},
		{"the day is on another weekday of that month", "Alder Bank.xlsx", "== January 2026\nWed 6th\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n", "not known 1 Jo Lee 18:20\nnot known 2 Al Roe 18:31\n", "date-missing"},
		{"runs by number, and a calendar", "Alder Bank.xlsx", "== Calendar\nRun|Date|Run director\n#214|3 January 2026|Di Fox\n#215|10 January 2026|Ed Gow\n#216|17 January 2026|Di Fox\n== #214\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n== #216\nPos|Name|Time\n1|Al Roe|18:40\n2|Jo Lee|18:42\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-17 1 Al Roe 18:40\nalder-bank 2026-01-17 2 Jo Lee 18:42\n", ""},
		{"runs by number, and a calendar with their places", "League 2026.xlsx", "== Fixtures\nRace|Venue|Date\n1|Alder Bank|3 January 2026\n2|Ember Quay|10 January 2026\n3|Moss Common|17 January 2026\n== Race 1\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n== Race 3\nPos|Name|Time\n1|Al Roe|18:40\n2|Jo Lee|18:42\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nmoss-common 2026-01-17 1 Al Roe 18:40\nmoss-common 2026-01-17 2 Jo Lee 18:42\n", ""},
		{"a number that the calendar lacks", "Alder Bank.xlsx", "== Calendar\nRun|Date\n#214|3 January 2026\n#215|10 January 2026\n#216|17 January 2026\n== #220\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n", "not known 1 Jo Lee 18:20\nnot known 2 Al Roe 18:31\n", "date-missing"},
		{"a summary whose last line adds up, before the list", "alder-bank_2026-01-03.xlsx", "== Auswertung\nVerein|Anzahl|Bestzeit|Durchschnitt\nLG Ost|2|18:20|18:30\nTV Brunn|1|18:31|18:31\nohne|3|19:02|20:10\nGesamtergebnis|6|18:20|19:10\n== Liste\nPlatz|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\n", ""},
		{"name above, the rest below", "phone.txt", "Alder Bank results\nSaturday 3rd January 2026\n\n1. Jo Lee\n   W40  Vale AC  18:20\n2. Al Roe\n   M45  Unattached  18:31\n3. Cy Dee\n   M35  Vale AC  18:40\n4. Di Fox\n   W50  Mill AC  18:42\n5. Ed Gow\n   M50  Mill AC  DNF\n",
			"alder-bank 2026-01-03 1. Jo Lee 18:20 W40\nalder-bank 2026-01-03 2. Al Roe 18:31 M45\nalder-bank 2026-01-03 3. Cy Dee 18:40 M35\nalder-bank 2026-01-03 4. Di Fox 18:42 W50\nalder-bank 2026-01-03 5. Ed Gow DNF M50\n", ""},
		{"the ground, labelled", "log.txt", "Site: Alder Bank\n3 January 2026\nGround: soft, gate 3 locked\n\nOrder   Who      Took\n1       Jo Lee   18:20\n2       Al Roe   18:31\n3       Cy Dee   18:40\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\n", ""},
		{"a gun's time beside another of which only the values tell", "alder-bank_2026-01-03.csv", "Pos,Name,How long,Gun Time\n1,Jo Lee,18 min 20 sec,18:24\n2,Al Roe,18 min 31 sec,18:33\n3,Cy Dee,18 min 40 sec,18:47\n4,Di Fox,18 min 42 sec,18:44\n5,Ed Gow,DNF,\n6,Ida Kay,no time,19:40\n7,Lou Ash,19 min 42 sec,19:45\n",
			"alder-bank 2026-01-03 1 Jo Lee 18 min 20 sec\nalder-bank 2026-01-03 2 Al Roe 18 min 31 sec\nalder-bank 2026-01-03 3 Cy Dee 18 min 40 sec\nalder-bank 2026-01-03 4 Di Fox 18 min 42 sec\nalder-bank 2026-01-03 5 Ed Gow DNF\nalder-bank 2026-01-03 6 Ida Kay no time\nalder-bank 2026-01-03 7 Lou Ash 19 min 42 sec\n", ""},
		{"a gun's time beside times of another day", "alder-bank_2026-01-03.csv", "Pos,Name,Before,Gun Time\n1,Jo Lee,19:20,18:24\n2,Al Roe,17:31,18:33\n3,Cy Dee,21:40,18:47\n4,Di Fox,18:42,18:44\n5,Ed Gow,22:11,18:59\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:24\nalder-bank 2026-01-03 2 Al Roe 18:33\nalder-bank 2026-01-03 3 Cy Dee 18:47\nalder-bank 2026-01-03 4 Di Fox 18:44\nalder-bank 2026-01-03 5 Ed Gow 18:59\n", ""},
		{"name and class in a cell", "alder-bank_2026-01-03.csv", "Pos,Name / Cat,Time\n1,Jo Lee W40,18:20\n2,Al Roe MSen,18:31\n3,Cy Dee M35,18:40\n4,Di Fox W50,18:42\n5,Unknown,18:50\n",
			"alder-bank 2026-01-03 1 Jo Lee (W40) 18:20\nalder-bank 2026-01-03 2 Al Roe (MSen) 18:31\nalder-bank 2026-01-03 3 Cy Dee (M35) 18:40\nalder-bank 2026-01-03 4 Di Fox (W50) 18:42\nalder-bank 2026-01-03 5 Unknown 18:50\n", ""},
		{"class and club on the second line of a cell", "alder-bank_2026-01-03.csv", "Pos,Runner,Time\n1,\"Jo Lee\nW40 · Vale AC\",18:20\n2,\"Al Roe\nMSen\",18:31\n3,\"Cy Dee\nM35 · Mill AC\",18:40\n4,\"Di Fox\nW50 · Vale AC\",18:42\n",
			"alder-bank 2026-01-03 1 Jo Lee (W40) (Vale AC) 18:20\nalder-bank 2026-01-03 2 Al Roe (MSen) 18:31\nalder-bank 2026-01-03 3 Cy Dee (M35) (Mill AC) 18:40\nalder-bank 2026-01-03 4 Di Fox (W50) (Vale AC) 18:42\n", ""},
		{"names, a mark and what else stands there", "alder-bank_2026-01-03.csv", "Pos,\"Name, club\",Time\n1,\"Jo Lee, Vale AC\",18:20\n2,Al Roe,18:31\n3,\"Cy Dee, Mill AC\",18:40\n",
			"alder-bank 2026-01-03 1 Jo Lee, Vale AC 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee, Mill AC 18:40\n", ""},
		{"a class in brackets and a time with a mark for minutes", "alder-bank_2026-01-03.txt", "1) Jo Lee (W40) 18'20\"\n2) Al Roe (M45) 18'31\"\n3) Cy Dee (M35) 18'40\"\n4) Di Fox (W50) no time\n5) Ed Gow (M50) 19'02\"\n",
			"alder-bank 2026-01-03 1 Jo Lee 18'20\" W40\nalder-bank 2026-01-03 2 Al Roe 18'31\" M45\nalder-bank 2026-01-03 3 Cy Dee 18'40\" M35\nalder-bank 2026-01-03 4 Di Fox no time W50\nalder-bank 2026-01-03 5 Ed Gow 19'02\" M50\n", ""},
		{"a band of pay beside one of age", "alder-bank_2026-01-03.csv", "Pos,Name,Band,Age band,Time\n1,Jo Lee,5,40-49,18:20\n2,Al Roe,7,30-39,18:31\n3,Cy Dee,6,50-59,18:40\n4,Di Fox,8,40-49,18:42\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20 40-49\nalder-bank 2026-01-03 2 Al Roe 18:31 30-39\nalder-bank 2026-01-03 3 Cy Dee 18:40 50-59\nalder-bank 2026-01-03 4 Di Fox 18:42 40-49\n", ""},
		{"when people came, and their times", "alder-bank_2026-01-03.csv", "First name,Surname,Check-in time,Chip time\nJo,Lee,08:20,00:18:20\nAl,Roe,08:31,00:18:31\nCy,Dee,08:04,00:18:40\nDi,Fox,08:44,00:18:42\n",
			"alder-bank 2026-01-03 00:18:20\nalder-bank 2026-01-03 00:18:31\nalder-bank 2026-01-03 00:18:40\nalder-bank 2026-01-03 00:18:42\n", ""},
		{"times under their sexes, one of which ended early", "alder-bank_2026-01-03.csv", "Pos,Name,Mens time,Ladies time\n1,Al Roe,18:20,\n2,Jo Lee,,18:31\n3,Cy Dee,18:40,\n4,Di Fox,,18:42\n5,Ed Gow,18:45,\n6,Ida Kay,,DNF (ankle)\n7,Fay Orr,,19:00\n8,Bo Ash,19:10,\n9,Gil Tarr,19:12,\n10,Lou May,,19:20\n11,Ann Ivy,,19:22\n12,Tom Oak,19:30,\n13,Pat Elm,19:31,\n14,Sue Fir,,19:32\n15,Max Yew,19:33,\n16,Eve Bay,,19:35\n17,Ian Fig,19:36,\n18,Kim Box,,19:37\n19,Roy Nut,19:38,\n20,Meg Sun,,19:39\n21,Ben Tan,19:41,\n22,Liz Dew,,19:42\n",
			"alder-bank 2026-01-03 1 Al Roe 18:20 mens\nalder-bank 2026-01-03 2 Jo Lee 18:31 ladies\nalder-bank 2026-01-03 3 Cy Dee 18:40 mens\nalder-bank 2026-01-03 4 Di Fox 18:42 ladies\nalder-bank 2026-01-03 5 Ed Gow 18:45 mens\nalder-bank 2026-01-03 6 Ida Kay DNF (ankle) ladies\nalder-bank 2026-01-03 7 Fay Orr 19:00 ladies\nalder-bank 2026-01-03 8 Bo Ash 19:10 mens\nalder-bank 2026-01-03 9 Gil Tarr 19:12 mens\nalder-bank 2026-01-03 10 Lou May 19:20 ladies\nalder-bank 2026-01-03 11 Ann Ivy 19:22 ladies\nalder-bank 2026-01-03 12 Tom Oak 19:30 mens\nalder-bank 2026-01-03 13 Pat Elm 19:31 mens\nalder-bank 2026-01-03 14 Sue Fir 19:32 ladies\nalder-bank 2026-01-03 15 Max Yew 19:33 mens\nalder-bank 2026-01-03 16 Eve Bay 19:35 ladies\nalder-bank 2026-01-03 17 Ian Fig 19:36 mens\nalder-bank 2026-01-03 18 Kim Box 19:37 ladies\nalder-bank 2026-01-03 19 Roy Nut 19:38 mens\nalder-bank 2026-01-03 20 Meg Sun 19:39 ladies\nalder-bank 2026-01-03 21 Ben Tan 19:41 mens\nalder-bank 2026-01-03 22 Liz Dew 19:42 ladies\n", ""},
		{"a table of text with lines between its rows", "alder-bank_2026-01-03.txt", "+-----+--------+-------+\n| Pos | Name   | Time  |\n+=====+========+=======+\n| 1   | Jo Lee | 18:20 |\n+-----+--------+-------+\n| 2   | Al Roe | 18:31 |\n+-----+--------+-------+\n| 3   | Cy Dee | 18:40 |\n+-----+--------+-------+\n",
			"alder-bank 2026-01-03  1     Jo Lee   18:20 \nalder-bank 2026-01-03  2     Al Roe   18:31 \nalder-bank 2026-01-03  3     Cy Dee   18:40 \n", ""},
		{"the day again on every page", "print.txt", "ALDER BANK 5 KM                PAGE 1\nRESULTS OF 13-JUN-26\n---------------------------------------\nPLC  NAME       AGE      TIME\n---------------------------------------\n1    JO LEE     44      18:20\n2    AL ROE     45      18:31\n3    CY DEE     46      18:40\n\nALDER BANK 5 KM                PAGE 2\nRESULTS OF 13-JUN-26\n---------------------------------------\nPLC  NAME       AGE      TIME\n---------------------------------------\n4    DI FOX     51      18:42\n5    ED GOW     29      18:45\n",
			"alder-bank 2026-06-13 1 JO LEE 18:20\nalder-bank 2026-06-13 2 AL ROE 18:31\nalder-bank 2026-06-13 3 CY DEE 18:40\nalder-bank 2026-06-13 4 DI FOX 18:42\nalder-bank 2026-06-13 5 ED GOW 18:45\n", ""},
		{"a paragraph cut at the ends of lines", "cutting.txt", "Alder Bank 5k, Saturday 3rd January 2026.\n\n1 J Lee (Vale AC) 18:20; 2 A Roe (Unattached) 18:31; 3 C Dee (Quarry Lane\nJoggers) 18:40; 4 D Fox (Mill AC) 18:42; 5 E Gow (St Osyth Tri) 18:45; 6 I\nKay (Vale AC) 18:47; 7 F Orr (Mill AC) 19:00.\n",
			"alder-bank 2026-01-03 1 J Lee 18:20\nalder-bank 2026-01-03 2 A Roe 18:31\nalder-bank 2026-01-03 3 C Dee 18:40\nalder-bank 2026-01-03 4 D Fox 18:42\nalder-bank 2026-01-03 5 E Gow 18:45\nalder-bank 2026-01-03 6 I Kay 18:47\nalder-bank 2026-01-03 7 F Orr 19:00\n", ""},
		{"paragraphs of men and women, the first behind a sentence", "gazette.txt", "The Alder Bank 5k took place on Saturday, January 3, 2026.\nMen: 1 Al Roe 18:31, 2 Cy Dee 18:40, 3 Ed Gow 18:45.\nWomen: 1 Jo Lee 18:20, 2 Di Fox 18:42, 3 Ida Kay 18:47.\n",
			"alder-bank 2026-01-03 1 Al Roe 18:31 Men\nalder-bank 2026-01-03 2 Cy Dee 18:40 Men\nalder-bank 2026-01-03 3 Ed Gow 18:45 Men\nalder-bank 2026-01-03 1 Jo Lee 18:20 Women\nalder-bank 2026-01-03 2 Di Fox 18:42 Women\nalder-bank 2026-01-03 3 Ida Kay 18:47 Women\n", ""},
		{"name, club in brackets and class in a cell", "alder-bank_2026-01-03.csv", "Place,Runner (club) cat,Time\n1,Jo Lee (Vale AC) W40,18:20\n2,Al Roe (Unattached) MSen,18:31\n3,Cy Dee (Mill AC) M35,18:40\n4,Di Fox (Vale AC) W50,18:42\n",
			"alder-bank 2026-01-03 1 Jo Lee (Vale AC) (W40) 18:20\nalder-bank 2026-01-03 2 Al Roe (Unattached) (MSen) 18:31\nalder-bank 2026-01-03 3 Cy Dee (Mill AC) (M35) 18:40\nalder-bank 2026-01-03 4 Di Fox (Vale AC) (W50) 18:42\n", ""},
		{"a group of ages is no time of who did not finish", "alder-bank_2026-01-03.txt", "Jo Lee F 35-39 18:20\nAl Roe M 40-44 18:31\nCy Dee M 18-34 18:40\nDi Fox F 50-54 18:42\nEd Gow M 18-34 18:45\nIda Kay F 35-39 DNF\n",
			"alder-bank 2026-01-03 Jo Lee 18:20 F 35-39\nalder-bank 2026-01-03 Al Roe 18:31 M 40-44\nalder-bank 2026-01-03 Cy Dee 18:40 M 18-34\nalder-bank 2026-01-03 Di Fox 18:42 F 50-54\nalder-bank 2026-01-03 Ed Gow 18:45 M 18-34\n", ""},
		{"times in minutes and seconds, the words for both in short", "alder-bank_2026-01-03.txt", "Full Name         Age Group   Club             AG pos   Time\nJo Lee            F 35-39     Vale Striders    8        18 mins 20 secs\nAl Roe            M 40-44     Mill AC          4        18 mins 31 secs\nCy Dee            M 18-34     Vale Striders    2        18 mins 40 secs\nDi Fox            F 50-54                      2        18 mins 2 secs\nEd Gow            M 18-34     Vale Striders             DNF\n",
			"alder-bank 2026-01-03 Jo Lee 18:20 F 35-39\nalder-bank 2026-01-03 Al Roe 18:31 M 40-44\nalder-bank 2026-01-03 Cy Dee 18:40 M 18-34\nalder-bank 2026-01-03 Di Fox 18:02 F 50-54\nalder-bank 2026-01-03 Ed Gow DNF M 18-34\n", ""},
		{"a key of two words behind a dot", "alder-bank_2026-01-03.csv", "result.position,athlete.firstName,athlete.lastName,athlete.birthYear,result.duration\n1,Jo,Lee,1984,PT18M20S\n2,Al,Roe,1979,PT18M31S\n3,Cy,Dee,1990,PT18M40S\n4,Di,Fox,1979,PT18M42S\n",
			"alder-bank 2026-01-03 1 PT18M20S\nalder-bank 2026-01-03 2 PT18M31S\nalder-bank 2026-01-03 3 PT18M40S\nalder-bank 2026-01-03 4 PT18M42S\n", ""},
		{"items of facts", "list.txt", "venue: Alder Bank\ndate: 2026-01-03\nresults:\n  - place: 1\n    name: Jo Lee\n    time: \"18:20\"\n  - place: 2\n    name: Al Roe\n    time: \"18:31\"\n  - place: 3\n    name: Cy Dee\n    time: \"18:40\"\n  - place: 4\n    name: Di Fox\n    time: \"18:42\"\n  - place: 5\n    name: Ed Gow\n    time: \"18:45\"\n  - place: 6\n    name: Ida Kay\n    time: \"18:47\"\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\nalder-bank 2026-01-03 4 Di Fox 18:42\nalder-bank 2026-01-03 5 Ed Gow 18:45\nalder-bank 2026-01-03 6 Ida Kay 18:47\n", ""},
		{"laps of a stopwatch with the time so far in brackets", "session.txt", "Session: Alder Bank 5k\nStarted: 2026-01-03 09:00:04\n\nLap 1: +18:20.00 (18:20.00) Jo Lee\nLap 2: +0:11.00 (18:31.00) Al Roe\nLap 3: +0:09.00 (18:40.00) Cy Dee\nLap 4: +0:02.00 (18:42.00) Di Fox\nLap 5: +0:03.00 (18:45.00) Ed Gow\nLap 6: +0:02.00 (18:47.00) Ida Kay\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20.00\nalder-bank 2026-01-03 2 Al Roe 18:31.00\nalder-bank 2026-01-03 3 Cy Dee 18:40.00\nalder-bank 2026-01-03 4 Di Fox 18:42.00\nalder-bank 2026-01-03 5 Ed Gow 18:45.00\nalder-bank 2026-01-03 6 Ida Kay 18:47.00\n", ""},
		{"rows of a board, read out", "alder-bank_2026-01-03.txt", "Row 1: Jo Lee, 18:20\nRow 2: Al Roe, 18:31\nRow 3: Cy Dee, 18:40\nRow 4: Di Fox, 18:42\nRow 5: Ed Gow, 18:45\nRow 6: Ida Kay, 18:47\n",
			"alder-bank 2026-01-03 1 Jo Lee 18:20\nalder-bank 2026-01-03 2 Al Roe 18:31\nalder-bank 2026-01-03 3 Cy Dee 18:40\nalder-bank 2026-01-03 4 Di Fox 18:42\nalder-bank 2026-01-03 5 Ed Gow 18:45\nalder-bank 2026-01-03 6 Ida Kay 18:47\n", ""},
		{"one letter beside each surname", "alder-bank_2026-01-03.csv", "Pos,Surname,Initial,Time\n1,Lee,J,18:20\n2,Lee,A,18:31\n3,Dee,C,18:40\n",
			"alder-bank 2026-01-03 1 18:20\nalder-bank 2026-01-03 2 18:31\nalder-bank 2026-01-03 3 18:40\n", ""},
		{"times with a dot, two of them exchanged, and no headings", "alder-bank_2026-01-03.csv", "1,Ann Low,18.00\n2,Bob Low,18.37\n3,Cat Low,18.54\n4,Dan Low,19.11\n5,Eve Low,19.28\n6,Fay Low,19.45\n7,Gus Low,20.02\n8,Hal Low,20.39\n9,Ida Low,20.56\n10,Jan Low,21.30\n11,Kay Low,21.13\n12,Lou Low,21.47\n13,Max Low,22.04\n14,Ned Low,22.21\n15,Oli Low,22.58\n16,Pam Low,23.15\n17,Ann Ash,23.32\n18,Bob Ash,23.49\n19,Cat Ash,24.06\n20,Dan Ash,24.23\n21,Eve Ash,24.40\n22,Fay Ash,25.17\n23,Gus Ash,25.34\n24,Hal Ash,25.51\n25,Ida Ash,26.08\n26,Jan Ash,26.25\n27,Kay Ash,26.42\n28,Lou Ash,27.19\n29,Max Ash,27.36\n30,Ned Ash,27.53\n31,Oli Ash,28.10\n32,Pam Ash,28.27\n",
			"alder-bank 2026-01-03 1 Ann Low 18.00\nalder-bank 2026-01-03 2 Bob Low 18.37\nalder-bank 2026-01-03 3 Cat Low 18.54\nalder-bank 2026-01-03 4 Dan Low 19.11\nalder-bank 2026-01-03 5 Eve Low 19.28\nalder-bank 2026-01-03 6 Fay Low 19.45\nalder-bank 2026-01-03 7 Gus Low 20.02\nalder-bank 2026-01-03 8 Hal Low 20.39\nalder-bank 2026-01-03 9 Ida Low 20.56\nalder-bank 2026-01-03 10 Jan Low 21.30\nalder-bank 2026-01-03 11 Kay Low 21.13\nalder-bank 2026-01-03 12 Lou Low 21.47\nalder-bank 2026-01-03 13 Max Low 22.04\nalder-bank 2026-01-03 14 Ned Low 22.21\nalder-bank 2026-01-03 15 Oli Low 22.58\nalder-bank 2026-01-03 16 Pam Low 23.15\nalder-bank 2026-01-03 17 Ann Ash 23.32\nalder-bank 2026-01-03 18 Bob Ash 23.49\nalder-bank 2026-01-03 19 Cat Ash 24.06\nalder-bank 2026-01-03 20 Dan Ash 24.23\nalder-bank 2026-01-03 21 Eve Ash 24.40\nalder-bank 2026-01-03 22 Fay Ash 25.17\nalder-bank 2026-01-03 23 Gus Ash 25.34\nalder-bank 2026-01-03 24 Hal Ash 25.51\nalder-bank 2026-01-03 25 Ida Ash 26.08\nalder-bank 2026-01-03 26 Jan Ash 26.25\nalder-bank 2026-01-03 27 Kay Ash 26.42\nalder-bank 2026-01-03 28 Lou Ash 27.19\nalder-bank 2026-01-03 29 Max Ash 27.36\nalder-bank 2026-01-03 30 Ned Ash 27.53\nalder-bank 2026-01-03 31 Oli Ash 28.10\nalder-bank 2026-01-03 32 Pam Ash 28.27\n", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			data := []byte(c.text)
			if strings.HasSuffix(c.file, ".xlsx") {
				data = bookOf(t, c.text)
			}
			s, err := Read(c.file, data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			var b strings.Builder
			for _, p := range s.Parts {
				p.Each(func(_ int, cells []string) error {
					if course, day, _, ok := p.RunOf(cells); ok {
						fmt.Fprintf(&b, "%s %s", course, day)
					} else {
						b.WriteString("not known")
					}
					for _, m := range []Meaning{Position, Name, Time, Sex, AgeGroup} {
						if v := cellAt(cells, p.Index(m)); v != "" {
							fmt.Fprintf(&b, " %s", v)
						}
					}
					b.WriteByte('\n')
					return nil
				})
			}
			if got := outcome(s).asks; b.String() != c.want || got != c.asks {
				var d strings.Builder
				s.Describe(&d)
				t.Errorf("read\n%swant\n%sasks %q, want %q\n%s", b.String(), c.want, got, c.asks, d.String())
			}
		})
	}
}
