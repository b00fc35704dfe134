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
