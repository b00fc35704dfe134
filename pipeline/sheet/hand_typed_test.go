package sheet

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// TestHandTyped reads lists as people type them, line by line: place, name and time of every
// row. A refusal is what its reason contains.
func TestHandTyped(t *testing.T) {
	const day = "Alder Bank, Saturday 3 January 2026\n"
	for _, c := range []struct {
		name, file, text string
		want             []string
		refused          string
	}{
		{name: "a row without a time names the one above", file: "x.txt",
			text: day + "1er Jo Lee 18:20\n2e Al Roe 18:31\n3e Cy Dee idem\n4e Di Fox 18:42\n5e Ed Gow 18:45\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:31", "4 Di Fox 18:42", "5 Ed Gow 18:45"}},
		{name: "see above, in a cell", file: "x.txt",
			text: day + "1\tJo Lee\t18:20\n2\tAl Roe\t18:31\n3\tCy Dee\tsee above\n4\tDi Fox\t18:42\n5\tEd Gow\t18:45\n6\tGus Ing\t18:47\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:31", "4 Di Fox 18:42", "5 Ed Gow 18:45", "6 Gus Ing 18:47"}},
		{name: "hours in words at the end", file: "x.txt",
			text: day + "1 Jo Lee 18:20\n2 Al Roe 18:31\n3 Cy Dee 59:40\n4 Di Fox 1 hr 2 min 48\n5 Ed Gow 1 hr 3 min 5\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 59:40", "4 Di Fox 1:02:48", "5 Ed Gow 1:03:05"}},
		{name: "a count of those who ran is no runner", file: "x.txt",
			text: day + "1 Jo Lee 18:20\n2 Al Roe 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n5 runners today\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42"}},
		{name: "of two times the right one", file: "x.txt",
			text: day + "1 Jo Lee 18:20\n2 Al Roe 18:51 corrected to 18:31\n3 Cy Dee 18:40 (not 18:04)\n4 Di Fox 18:42pb\n5 Ed Gow 18:45\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 18:45"}},
		{name: "winners above that stand below again", file: "x.txt",
			text: day + "\n1st man: Al Roe 18:20\n1st lady: Jo Lee 18:31\n\n1 Al Roe 18:20\n2 Jo Lee 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n",
			want: []string{"1 Al Roe 18:20", "2 Jo Lee 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42"}},
		{name: "a space between minutes and seconds", file: "x.txt",
			text: day + "1 Jo Lee 18 20\n2 Al Roe 18 31\n3 Cy Dee 18 40\n4 Di Fox 19 02\n5 Ed Gow 19 45\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 19:02", "5 Ed Gow 19:45"}},
		{name: "minutes and seconds under headings of their own", file: "x.txt",
			text: day + "\n No Name          Min Sec\n  1 Jo Lee         18  20\n  2 Al Roe         18  31\n  3 Cy Dee         19   4\n  4 Di Fox         19   5\n  5 Ed Gow         19  45\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 19:04", "4 Di Fox 19:05", "5 Ed Gow 19:45"}},
		{name: "two figures that fall are no times", file: "x.txt",
			text: day + "1 Jo Lee 40 20\n2 Al Roe 38 31\n3 Cy Dee 51 40\n4 Di Fox 19 02\n5 Ed Gow 22 45\n", refused: "no heading row"},
		{name: "a dot in times, the club behind the name", file: "x.txt",
			text: day + "18.05 Jo Lee, Vale AC\n18.31 Al Roe, Mill AC\n18.40 Cy Dee, Vale AC\n19.02 Di Fox, Vale AC\n19.45 Ed Gow, Mill AC\n",
			want: []string{" Jo Lee 18:05", " Al Roe 18:31", " Cy Dee 18:40", " Di Fox 19:02", " Ed Gow 19:45"}},
		{name: "a stopwatch's list with names behind", file: "x.txt",
			text: day + "Lap  Split  Total\n1  00:18:20.0  00:18:20.0  Jo Lee\n2  00:00:11.0  00:18:31.0  Al Roe\n10  00:00:09.0  00:18:40.0  Cy Dee\n11  00:00:22.0  00:19:02.0  Di Fox\n",
			want: []string{"1 Jo Lee 00:18:20.0", "2 Al Roe 00:18:31.0", "10 Cy Dee 00:18:40.0", "11 Di Fox 00:19:02.0"}},
		{name: "a stopwatch's list, then names by their places", file: "x.csv",
			text: day + "TIMER\nLAP,TIME\n001,00:18:20.1\n002,00:18:31.2\n003,00:18:40.3\n004,00:19:02.4\n\nPLACES\nNo,Name\n2,Al Roe\n1,Jo Lee\n3,Cy Dee\n4,Di Fox\n",
			want: []string{"1 Jo Lee 00:18:20.1", "2 Al Roe 00:18:31.2", "3 Cy Dee 00:18:40.3", "4 Di Fox 00:19:02.4"}},
		{name: "places and times in words", file: "x.txt",
			text: day + "First place Jo Lee 18 minutes 20 seconds\nSecond place Al Roe 18 minutes 31 seconds\nThird place Cy Dee 18 minutes 40 seconds\nFourth place Di Fox 19 minutes 2 seconds\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 19:02"}},
		{name: "marks for the minutes above", file: "x.csv",
			text: day + "No,Name,Mins,Secs\n1,Jo Lee,18,20\n2,Al Roe,ditto,31\n3,Cy Dee,ditto,40\n4,Di Fox,19,2\n5,Ed Gow,-,45\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 19:02", "5 Ed Gow 19:45"}},
		{name: "a semicolon for a colon", file: "x.csv",
			text: day + "No,Name,Time\n1,Jo Lee,18;20\n2,Al Roe,18;31\n3,Cy Dee,18;40\n4,Di Fox,19;02\n",
			want: []string{"1 Jo Lee 18;20", "2 Al Roe 18;31", "3 Cy Dee 18;40", "4 Di Fox 19;02"}},
		{name: "two watches and what was agreed", file: "x.csv",
			text: day + "No,Name,Time (1),Time (2),Result\n1,Jo Lee,18:20,18:21,18:21\n2,Al Roe,18:31,18:31,18:31\n3,Cy Dee,18:40,18:39,18:39\n4,Di Fox,19:02,19:04,19:03\n",
			want: []string{"1 Jo Lee 18:21", "2 Al Roe 18:31", "3 Cy Dee 18:39", "4 Di Fox 19:03"}},
		{name: "the club left out from some row on", file: "x.csv",
			text: day + "Pos,Name,Club,Time\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,Mill AC,18:31\n3,Cy Dee,Vale AC,18:40\n4,Di Fox,18:42\n5,Ed Gow,18:45\n6,Gus Ing,18:47\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 18:45", "6 Gus Ing 18:47"}},
		{name: "one club left out", file: "x.csv",
			text: day + "Pos,Name,Club,Time,Behind,Status\n1,Jo Lee,Vale AC,18:20,,Finished\n2,Al Roe,,18:31,+0:11,Finished\n3,Cy Dee,Vale AC,18:40,+0:20,Finished\n4,Di Fox,18:42,+0:22,Finished\n5,Ed Gow,,18:45,+0:25,Finished\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 18:45"}},
		{name: "one column further to the right from some row on", file: "x.csv",
			text: day + "Pos,Name,Club,Time\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,Mill AC,18:31\n3,Cy Dee,Vale AC,18:40\n,4,Di Fox,Vale AC,18:42\n,5,Ed Gow,Mill AC,18:45\n,6,Gus Ing,Vale AC,18:47\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 18:45", "6 Gus Ing 18:47"}},
		{name: "no places from some row on", file: "x.csv",
			text: day + "Pos,Name,Club,Time\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,Mill AC,18:31\n3,Cy Dee,Vale AC,18:40\nDi Fox,Vale AC,18:42\nEd Gow,Mill AC,18:45\nGus Ing,Vale AC,18:47\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", " Di Fox 18:42", " Ed Gow 18:45", " Gus Ing 18:47"}},
		{name: "people without a club at the end have not moved", file: "x.csv",
			text: day + "Pos,Name,Club,Time\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,Mill AC,18:31\n3,Cy Dee,Vale AC,18:40\n4,Di Fox,,18:42\n5,Ed Gow,,18:45\n6,Gus Ing,,18:47\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 18:45", "6 Gus Ing 18:47"}},
		{name: "minutes once, a dot before the seconds", file: "x.txt",
			text: day + "1. Jo Lee  18.20\n2. Al Roe  .31\n3. Cy Dee  .40\n4. Di Fox  19.02\n5. Ed Gow  .45\n",
			want: []string{"1 Jo Lee 18.20", "2 Al Roe 18.31", "3 Cy Dee 18.40", "4 Di Fox 19.02", "5 Ed Gow 19.45"}},
		{name: "minutes once, the seconds bare in a column", file: "x.csv",
			text: day + "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,31\n3,Cy Dee,40\n4,Di Fox,19:02\n5,Ed Gow,45\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 19:02", "5 Ed Gow 19:45"}},
		{name: "minutes in lines over seconds", file: "x.txt",
			text: day + "\n18 mins\n   Jo Lee 20\n   Al Roe 31\n19 mins\n   Cy Dee 04\n   Di Fox 45\n",
			want: []string{" Jo Lee 18:20", " Al Roe 18:31", " Cy Dee 19:04", " Di Fox 19:45"}},
		{name: "how far behind, in words", file: "x.csv",
			text: day + "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,at 0:11\n3,Cy Dee,+20 sec\n4,Di Fox,+42 sec\n5,Ed Gow,+1 min 25 sec\n6,Gus Ing,+1 min 30\n7,Hal Job,+1:31\n8,Ida Kay,+1:40\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 0:18:31", "3 Cy Dee 0:18:40", "4 Di Fox 0:19:02", "5 Ed Gow 0:19:45", "6 Gus Ing 0:19:50", "7 Hal Job 0:19:51", "8 Ida Kay 0:20:00"}},
		{name: "a time with units among times without", file: "x.txt",
			text: day + "1. Jo Lee 18:20\n2. Al Roe 18 min 31\n3. Cy Dee 18:40\n4. Di Fox 19.02\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 19.02"}},
		{name: "first, then", file: "x.txt",
			text: day + "first Jo Lee 18:20\nthen Al Roe 18:31\nthen Cy Dee 18:40\nthen Di Fox 18:42\nthen Ed Gow 18:45\nthen Gus Ing 18:47\nlastly Hal Job 18:50\n",
			want: []string{" Jo Lee 18:20", " Al Roe 18:31", " Cy Dee 18:40", " Di Fox 18:42", " Ed Gow 18:45", " Gus Ing 18:47", " Hal Job 18:50"}},
		{name: "held at a place, under who runs there", file: "x.txt",
			text: "MILL RUNNING GROUP\n\nReport of the run held at Alder Bank on Saturday 3 January 2026\n\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n4. Di Fox 18:42\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42"}},
		{name: "the year in a cell beside the place", file: "avg 3 January.csv",
			text: "Alder Bank,,2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40"}},
		{name: "the pace behind each time", file: "x.csv",
			text: day + "Pos,Name,Time / pace\n1,Jo Lee,18:20 / 3:40\n2,Al Roe,18:31 / 3:42\n3,Cy Dee,18:40 / 3:44\n4,Di Fox,20:00 / 4:00\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 20:00"}},
		{name: "places with a full stop and a dash", file: "x.txt",
			text: day + "1.- Jo Lee 18:20\n2.- Al Roe 18:31\n3.- Cy Dee 18:40\n4.- Di Fox 18:42\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42"}},
		{name: "places in Swedish", file: "x.txt",
			text: day + "1:a Jo Lee 18.20\n2:a Al Roe 18.31\n3:e Cy Dee 18.40\n4:e Di Fox 18.42\n",
			want: []string{"1 Jo Lee 18.20", "2 Al Roe 18.31", "3 Cy Dee 18.40", "4 Di Fox 18.42"}},
		{name: "places with their noun", file: "x.txt",
			text: day + "1. Platz: Jo Lee 18:20\n2. Platz: Al Roe 18:31\n3. Platz: Cy Dee 18:40\n4. Platz: Di Fox 18:42\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42"}},
		{name: "places and an equals sign, times and names apart", file: "x.txt",
			text: day + "TIMES:\n1 = 18:20\n2 = 18:31\n3 = 18:40\n4 = 18:42\n5 = 19:05\n6 = 19:30\n7 = 20:11\n8 = 21:02\n9 = 22:15\n10 = 30:58\n\nNAMES:\n1 = Jo Lee\n2 = Al Roe\n3 = Cy Dee\n4 = Di Fox\n5 = Ed Gow\n6 = Flo Hart\n7 = Gus Ives\n8 = Hal Kay\n9 = Ida Lux\n10 = Jim Moe\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 19:05", "6 Flo Hart 19:30", "7 Gus Ives 20:11", "8 Hal Kay 21:02", "9 Ida Lux 22:15", "10 Jim Moe 30:58"}},
		{name: "ticks before names", file: "x.txt",
			text: day + "[x] Jo Lee 18:20\n[x] Al Roe 18:31\n[x] Cy Dee 18:40\n[x] Di Fox 18:42\n",
			want: []string{" Jo Lee 18:20", " Al Roe 18:31", " Cy Dee 18:40", " Di Fox 18:42"}},
		{name: "the time below each name", file: "x.txt",
			text: day + "1. Jo Lee\nTime 18:20, Vale AC\n\n2. Al Roe\nTime 18:31, Mill AC\n\n3. Cy Dee\nTime 18:40, Vale AC\n\n4. Di Fox\nTime 18:42, Mill AC\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42"}},
		{name: "minutes and seconds with a word between", file: "x.txt",
			text: day + "1. Jo Lee 18 minuten en 20 seconden\n2. Al Roe 18 minuten en 31 seconden\n3. Cy Dee 18 minuten en 40 seconden\n4. Di Fox 18 minuten en 42 seconden\n",
			want: []string{"1 Jo Lee 18 minuten en 20 seconden", "2 Al Roe 18 minuten en 31 seconden", "3 Cy Dee 18 minuten en 40 seconden", "4 Di Fox 18 minuten en 42 seconden"}},
		{name: "no heading, and no places from some row on", file: "x.csv",
			text: day + "1,Jo Lee,Vale AC,18:20\n2,Al Roe,Mill AC,18:31\n3,Cy Dee,Vale AC,18:40\nDi Fox,Vale AC,18:42\nEd Gow,Mill AC,18:45\nGus Ing,Vale AC,18:47\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", " Di Fox 18:42", " Ed Gow 18:45", " Gus Ing 18:47"}},
		{name: "one column less for a while", file: "x.csv",
			text: day + "Pos,Name,Club,Time\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,Mill AC,18:31\n3,Cy Dee,Vale AC,18:40\n4,Di Fox,18:42\n5,Ed Gow,18:45\n6,Gus Ing,18:47\n7,Hal Job,Mill AC,18:50\n8,Ida Kay,Vale AC,18:52\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 18:45", "6 Gus Ing 18:47", "7 Hal Job 18:50", "8 Ida Kay 18:52"}},
		{name: "places of all under the groups", file: "x.txt",
			text: day + "\nSeniors\n1 Jo Lee 18:20\n2 Al Roe 18:31\n5 Ed Gow 18:45\n\nVets 40+\n3 Cy Dee 18:40\n4 Di Fox 18:42\n6 Gus Ing 18:47\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "5 Ed Gow 18:45", "3 Cy Dee 18:40", "4 Di Fox 18:42", "6 Gus Ing 18:47"}},
		{name: "places in brackets in the order of the alphabet", file: "x.txt",
			text: day + "Al Roe 18:31 (2)\nCy Dee 18:40 (3)\nDi Fox 18:42 (4)\nEd Gow 18:45 (5)\nGus Ing 18:47 (6)\nJo Lee 18:20 (1)\n",
			want: []string{"2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 18:45", "6 Gus Ing 18:47", "1 Jo Lee 18:20"}},
		{name: "results beside one another with a tab between", file: "x.txt",
			text: day + "1. Jo Lee 18:20\t4. Di Fox 18:42\n2. Al Roe 18:31\t5. Ed Gow 18:45\n3. Cy Dee 18:40\t6. Gus Ing 18:47\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", "5 Ed Gow 18:45", "6 Gus Ing 18:47"}},
		{name: "a clock under that word with the handicap in it", file: "x.csv",
			text: day + "Pos,Name,Handicap,Clock,Time\n1,Jo Lee,12:00,30:20,18:20\n2,Al Roe,02:30,21:01,18:31\n3,Cy Dee,07:30,26:10,18:40\n4,Di Fox,00:30,19:12,18:42\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42"}},
		{name: "the time of day at the finish under a start with a dot", file: "x.csv",
			text: day + "Started at 9.00\nPos,Name,Time of day\n1,Jo Lee,9:18:20\n2,Al Roe,9:18:31\n3,Cy Dee,9:18:40\n4,Di Fox,9:18:42\n5,Ed Gow,9:18:45\n6,Gus Ing,9:18:47\n7,Hal Job,9:18:50\n8,Ida Kay,9:18:52\n",
			want: []string{"1 Jo Lee 0:18:20", "2 Al Roe 0:18:31", "3 Cy Dee 0:18:40", "4 Di Fox 0:18:42", "5 Ed Gow 0:18:45", "6 Gus Ing 0:18:47", "7 Hal Job 0:18:50", "8 Ida Kay 0:18:52"}},
		{name: "stars around the title", file: "caps.csv",
			text: "*** ALDER BANK ***\n~ 3 January 2026 ~\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40"}},
		{name: "today behind the place", file: "x.txt",
			text: "Ergebnisse Alder Bank heute\n3. Januar 2026\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40"}},
		{name: "how far somebody got is no other distance", file: "x.csv",
			text: day + "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\n,Ed Gow,pulled out at 3k\n,Gus Ing,retired\n",
			want: []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42", " Ed Gow pulled out at 3k", " Gus Ing retired"}},
	} {
		s, err := Read(c.file, []byte(c.text), Options{})
		if err != nil || c.refused != "" {
			if err == nil || c.refused == "" || !strings.Contains(err.Error(), c.refused) {
				t.Errorf("%s: %v, want %q", c.name, err, c.refused)
			}
			continue
		}
		if len(s.Parts) != 1 {
			t.Errorf("%s: %d parts", c.name, len(s.Parts))
			continue
		}
		var got []string
		p := s.Parts[0]
		if err := p.Each(func(_ int, cells []string) error {
			got = append(got, strings.Join([]string{cellAt(cells, p.Index(Position)), cellAt(cells, p.Index(Name)), cellAt(cells, p.Index(Time))}, " "))
			return nil
		}); err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(got, c.want) || p.Course.Value != "alder-bank" || p.Date.Day.String() != "2026-01-03" {
			t.Errorf("%s: %s %s\n got %q\nwant %q", c.name, p.Course.Value, p.Date.Day, got, c.want)
		}
	}
}

// Words on some rows behind the times are notes; clubs and a legend that stand there are none.
func TestRemarksBehindTimes(t *testing.T) {
	for _, c := range []struct {
		cells string
		notes int
	}{
		{"void||||ran with Jo|", 3},
		{"Vale AC||||Mill Runners|", -1},
		{"x = first run|||||", -1},
		{"a|b|c|d||", -1},
	} {
		text := "Alder Bank 3 January 2026\nPos,Name,Time,\n"
		for i, cell := range strings.Split(c.cells, "|") {
			text += strings.Join([]string{string(rune('1' + i)), "Jo L" + string(rune('a'+i)) + "e", "18:2" + string(rune('0'+i)), cell}, ",") + "\n"
		}
		s, err := Read("x.csv", []byte(text), Options{})
		if bare, bareErr := Read("x.csv", []byte(strings.Replace(text, "Pos,Name,Time,\n", "", 1)), Options{}); bareErr != nil || c.notes >= 0 && bare.Parts[0].Index(Notes) != c.notes {
			t.Errorf("%s without headings: notes in column %d (%v), want %d", c.cells, bare.Parts[0].Index(Notes), bareErr, c.notes)
		}
		if err != nil || s.Parts[0].Index(Notes) != c.notes {
			t.Errorf("%s: notes in column %d (%v), want %d", c.cells, s.Parts[0].Index(Notes), err, c.notes)
		}
	}
}

// What is struck through in a cell is left out where something else stands in it, and stays where
// nothing does.
func TestStruckTexts(t *testing.T) {
	gone := &excelize.Font{Strike: true}
	data := workbook(t, func(f *excelize.File) {
		setRows(t, f, "Sheet1", []any{"Alder Bank 3 January 2026"}, []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", ""}, []any{2, "", "18:31"}, []any{3, "", "18:40"}, []any{4, "Di Fox", "18:42"})
		for cell, runs := range map[string][]excelize.RichTextRun{
			"C3": {{Text: "18:51", Font: gone}, {Text: " 18:20"}},
			"B4": {{Text: "Al Row", Font: gone}, {Text: "Al "}, {Text: "Roe", Font: &excelize.Font{Bold: true}}},
			"B5": {{Text: "Cy ", Font: gone}, {Text: "Dee", Font: gone}},
		} {
			if err := f.SetCellRichText("Sheet1", cell, runs); err != nil {
				t.Fatal(err)
			}
		}
	})
	s, err := Read("x.xlsx", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	s.Parts[0].Each(func(_ int, cells []string) error {
		got = append(got, strings.Join(strings.Fields(strings.Join(cells, " ")), " "))
		return nil
	})
	if want := []string{"1 Jo Lee 18:20", "2 Al Roe 18:31", "3 Cy Dee 18:40", "4 Di Fox 18:42"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A club below each name, with place and time in cells over both rows, is no second runner; two
// people who share them are.
func TestClubBelowInMergedCells(t *testing.T) {
	for _, c := range []struct {
		below [4]string
		rows  int
	}{{[4]string{"Vale AC", "Mill Runners", "Vale AC", "Tarn Harriers"}, 4}, {[4]string{"Ed Gow", "Gus Ing", "Hal Job", "Ida Kay"}, 8}} {
		data := workbook(t, func(f *excelize.File) {
			rows := [][]any{{"Alder Bank 3 January 2026"}, {"Pos", "Name", "Time"}}
			for i, name := range [4]string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox"} {
				rows = append(rows, []any{i + 1, name, "18:2" + string(rune('0'+i))}, []any{nil, c.below[i], nil})
			}
			setRows(t, f, "Sheet1", rows...)
			for i := 3; i < 11; i += 2 {
				for _, column := range []string{"A", "C"} {
					from, to := column+strconv.Itoa(i), column+strconv.Itoa(i+1)
					if err := f.MergeCell("Sheet1", from, to); err != nil {
						t.Fatal(err)
					}
				}
			}
		})
		s, err := Read("x.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		rows := 0
		s.Parts[0].Each(func(_ int, cells []string) error {
			if rows++; c.rows == 4 && !slices.Contains(cells, c.below[rows-1]) {
				t.Errorf("row %d: %q", rows, cells)
			}
			return nil
		})
		if rows != c.rows {
			t.Errorf("%d rows", rows)
		}
	}
}

// A star right behind a name stays where a line says what it means, so that it can say the sex.
func TestStarsBehindTypedNames(t *testing.T) {
	s, err := Read("x.txt", []byte("Alder Bank 3 January 2026\n\n1 Al Roe 18:20\n2 Jo Lee* 18:31\n3 Cy Dee 18:40\n4 Di Fox* 18:42\n\n* = lady\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	p := s.Parts[0]
	p.Each(func(_ int, cells []string) error {
		got = append(got, strings.Trim(cellAt(cells, p.Index(Name)), "*")+"/"+cellAt(cells, p.Index(Sex)))
		return nil
	})
	if want := []string{"Al Roe/", "Jo Lee/women", "Cy Dee/", "Di Fox/women"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
