package sheet

import (
	"strings"
	"testing"
)

// Lists as they are pasted from mails, chats and pages, told in sentences, or corrected below. want is
// in the form of byHand; fourRead is that of most.
const fourRead = "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"

var messages = []struct{ name, text, want string }{
	{"a chat with a stamp on every message", "[03/01/2026, 09:58:03] Bea Desk: Alder Bank 3 January 2026\n[03/01/2026, 10:31:12] Bea Desk: 1 Jo Lee 18:20\n[03/01/2026, 10:31:40] Bea Desk: 2 Al Roe 18:31\n[03/01/2026, 10:32:12] Bea Desk: 3 Cy Dee 18:40\n[03/01/2026, 10:33:12] Bea Desk: 4 Di Fox 18:42\n[03/01/2026, 11:02:44] Gus: thanks Bea\n", fourRead},
	{"a chat that gives the day in its stamps only", "28/2/26, 10:14 - Bea: Alder Bank\n28/2/26, 10:31 - Bea: <Media omitted>\n28/2/26, 10:40 - Bea: 1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n28/2/26, 10:44 - Bea: 4. Di Fox 18:42\n28/2/26, 10:52 - Gus joined\n", strings.ReplaceAll(fourRead, "2026-01-03", "2026-02-28")},
	{"a chat in which each says his or her own time", "28/02/2026, 09:50 - Bea: Alder Bank 5k today, your times please\n28/02/2026, 10:11 - Jo Lee: 18:20\n28/02/2026, 10:12 - Al Roe: 18:31 pb!\n28/02/2026, 10:14 - Cy Dee: 18:40 🙂\n28/02/2026, 10:20 - Di Fox: 18:42\n28/02/2026, 11:00 - Bea: great stuff\n", strings.ReplaceAll(fourRead, "2026-01-03", "2026-02-28")},
	{"the same, without days", "Alder Bank 3 January 2026\n10:11 Jo Lee: 18:20\n10:12 Al Roe: 18:31\n10:14 Cy Dee: just 18:40\n10:20 Di Fox: 18:42\n", fourRead},
	{"a day without its year, in a chat that has it in its stamps", "4/1/26, 09:58 - Bea: Alder Bank, Saturday 3 January\n1 Jo Lee 18:20\n2 Al Roe 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n4/1/26, 11:02 - Gus: thanks Bea\n", fourRead},
	{"senders and times of day above the messages", "Alder Bank\n3 January 2026\n\nBea  10:20\n1 Jo Lee 18:20\n2 Al Roe 18:31\n\nGus at the gate  10:21\n3 Cy Dee 18:40\n\nBea  10:22\n4 Di Fox 18:42\n", fourRead},
	{"names that repeat are no senders", "Alder Bank\n3 January 2026\n\nJo Lee  18:20\n\nAl Roe  18:31\n\nCy Dee  18:40\n\nDi Fox  18:42\n", fourRead},
	{"a reply above an older list", "Thanks Gus, all fixed. The list as it should stand:\n\n1) Jo Lee, 18:20\n2) Al Roe, 18:31\n3) Cy Dee, 18:40\n4) Di Fox, 18:42\n\nOn 4 January 2026 at 13:05, Gus wrote:\n> Results for Alder Bank, 3 January 2026\n>\n> 1) Jo Lee, 18:21\n> 2) Al Roe, 18:32\n> and so on\n", fourRead},
	{"a mail of this morning", "Sent: Saturday 3 January 2026 11:15\nSubject: FW: Alder Bank this morning\n\nHere you go:\n\n1\tJo Lee\t18:20\n2\tAl Roe\t18:31\n3\tCy Dee\t18:40\n4\tDi Fox\t18:42\n", fourRead},
	{"a mail as it was sent", "Content-Type: text/plain; charset=utf-8\nContent-Transfer-Encoding: quoted-printable\nSubject: Alder Bank 3 January 2026\n\n1.=20Jo Lee =E2=80=93 18:20\n2.=20Al Roe =E2=80=93 18:31\n3.=20Cy Dee =E2=80=93 18:40\n4.=20Di Fox =E2=80=93 18:42\n", fourRead},
	{"pictures before places and times", "📍Alder Bank 📅 3 January 2026\n🏅 1 Jo Lee ⏱ 18:20\n🏅 2 Al Roe ⏱ 18:31\n🏅 3 Cy Dee ⏱️18:40\n🏅 4 Di Fox ⏱ 18:42\n", fourRead},
	{"signs that look like colons and spaces", "Alder Bank\u00a03 January 2026\n1.\u00a0Jo Lee\u200318∶20\n2.\u00a0Al Roe\u200318∶31\n3.\u00a0Cy Dee\u200318∶40\n4.\u00a0Di Fox\u200318∶42\n", fourRead},
	{"lines that are emphasised whole", "*Alder Bank*\n*Saturday 3 January 2026*\n1 - Jo Lee - 18:20\n2 - Al Roe - 18:31\n3 - Cy Dee - 18:40\n4 - Di Fox - 18:42\n", fourRead},
	{"times shown as typed", "# Alder Bank 3 January 2026\n\n|Pos|Name|Time|\n|--|--|--|\n|1|**Jo Lee**|`18:20`|\n|2|**Al Roe**|`18:31`|\n|3|**Cy Dee**|`18:40`|\n|4|**Di Fox**|`18:42`|\n", fourRead},

	{"sentences", "Alder Bank, Saturday 3 January 2026.\nJo Lee won in 18:20, ahead of Al Roe (18:31). Cy Dee of Vale Harriers came third in 18:40, with Di Fox close behind in 18:42.\n", fourRead},
	{"sentences in German", "Alder Bank, 3. Januar 2026\nEs gewann Jo Lee in 18:20 vor Al Roe (18:31). Dritter wurde Cy Dee in 18:40, danach kam Di Fox (18:42).\n", fourRead},
	{"sentences in French", "Alder Bank, le 3 janvier 2026\nVictoire de Jo Lee en 18:20 devant Al Roe (18:31). Suivent Cy Dee en 18:40 et Di Fox en 18:42.\n", fourRead},
	{"a sentence for each, with other verbs", "Alder Bank, 3 January 2026\nJo Lee crossed the line in 18:20.\nAl Roe ran 18:31.\nCy Dee did it in 18:40.\nDi Fox clocked 18:42.\n", fourRead},
	{"one paragraph", "Alder Bank, 3 January 2026. Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42.\n", fourRead},
	{"two names and their two times", "Alder Bank, 3 January 2026\nJo Lee was first back in 18:20.\nAl Roe chased hard for 18:31.\nCy Dee and Di Fox finished in 18:40 and 18:42.\n", fourRead},
	{"two people with one time in a sentence", "Alder Bank, 3 January 2026\nJo Lee was first back in 18:20.\nAl Roe chased hard for 18:31.\nCy Dee and Di Fox finished in 18:40.\n", "refused"},
	{"the first in a sentence above the list", "Alder Bank 3 January 2026\n\nFirst home was Jo Lee in 18:20, then Al Roe in 18:31.\nThe rest:\nCy Dee 18:40\nDi Fox 18:42\nEd Gow 18:50\n", fourRead + ", Ed Gow 18:50"},
	{"one who was forgotten, in a sentence below", "Alder Bank 3 January 2026\nJo Lee 18:20\nAl Roe 18:31\nDi Fox 18:42\n\nAlso Cy Dee who came in between Al and Di, 18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Di Fox 18:42, Cy Dee 18:40"},
	{"a record told below is nobody's result", "Alder Bank 3 January 2026\nJo Lee 18:20\nAl Roe 18:31\nCy Dee 18:40\nDi Fox 18:42\n\nThe course record was also set here, by Gus Ing in 15:58\n", fourRead},
	{"times in words", "Alder Bank 3 January 2026\nfirst Jo Lee eighteen twenty\nsecond Al Roe eighteen thirty one\nthird Cy Dee, eighteen minutes and forty seconds\nfourth Di Fox nineteen oh five\nfifth Ed Gow twenty dead\nsixth Ida Kay twenty one minutes five\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 19:05, Ed Gow 20:00, Ida Kay 21:05"},

	{"the sign of a shared place in front", "Alder Bank 3 January 2026\n1 Jo Lee 18:20\n=2 Al Roe 18:31\n=2 Cy Dee 18:31\n4 Di Fox 18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:31, Di Fox 18:42"},
	{"two people on the line of a shared place", "Alder Bank 3 January 2026\n1. Jo Lee 18:20\n2=. Al Roe and Cy Dee 18:31\n4. Di Fox 18:42\n5. Ed Gow 18:50\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:31, Di Fox 18:42, Ed Gow 18:50"},
	{"remarks of two lines in a table divided by semicolons are no sentences", ";;Pos;Name;Sex;Born;Club;Time;Remarks\n;;1;Jo Lee;M;22/11/1985;Vale Ladies;18:20;\n;;2;Al Roe;M;27/08/1987;;18:31;\"thanks to all\nsee you soon\"\n;;3;Cy Dee;M;25/11/1987;;18:40;\n;;4=;Di Fox;F;15/05/1990;\"Mill \"\"Early Birds\"\"\";18:42;\n", "asks course-missing date-missing"},
	{"a club of two words behind a shared place is nobody", "Alder Bank 3 January 2026\nPos\tName\tClub\tTime\n1\tJo Lee\tVale\t18:20\n2=\tAl Roe\tMill House y Vale Park\t18:31\n2=\tCy Dee\tVale\t18:31\n4\tDi Fox\tVale\t18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:31, Di Fox 18:42"},
	{"an arrow from the wrong time to the right one", "Alder Bank 3 January 2026\n1 Jo Lee 18:20\n2 Al Roe 18:33 -> 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n", fourRead},
	{"lists side by side without headings, a blank column between", "Alder Bank\t\t\t3 January 2026\nJo Lee\t18:20\t\tDi Fox\t18:42\nAl Roe\t18:31\t\tEd Gow\t18:50\nCy Dee\t18:40\t\tIda Kay\t18:55\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42, Ed Gow 18:50, Ida Kay 18:55"},
	{"tabs too many under a title with fewer", "Alder Bank\t3 January 2026\nPos\tName\tClub\tTime\n1\tJo Lee\tVale\t18:20\n2\tAl Roe\tMill\t\t18:31\n3\tCy Dee\t\tVale\t18:40\n4\tDi Fox\tVale\t\t18:42\n", fourRead},

	{"sorry, by first name", "Alder Bank 3 January 2026\n1 Jo Lee 18:20\n2 Al Roe 18:25\n3 Cy Dee 18:40\n4 Di Fox 18:42\n\nSorry, Al's time was 18:31\n", fourRead},
	{"correction by place", "Alder Bank 3 January 2026\n1 Jo Lee 18:20\n2 Al Roe 18:25\n3 Cy Dee 18:40\n4 Di Fox 18:42\n\nCORRECTION: no. 2 should read 18:31\n", fourRead},
	{"correction by a sign", "Alder Bank 3 January 2026\n1 Jo Lee 18:20\n2 Al Roe 18:25*\n3 Cy Dee 18:40\n4 Di Fox 18:42\n\n* should be 18:31\n", fourRead},
	{"correction with the wrong time beside the right one", "Alder Bank 3. Januar 2026\n1 Jo Lee 18:20\n2 Al Roe 18:25\n3 Cy Dee 18:40\n4 Di Fox 18:42\n\nKorrektur: Al lief 18:31, nicht 18:25.\n", fourRead},
	{"correction of one of two with that name", "Alder Bank 3 January 2026\n1 Jo Lee 18:20\n2 Jo Roe 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n\nSorry, Jo's time was 18:25\n", strings.Replace(fourRead, "Al Roe", "Jo Roe", 1)},
	{"a table on its side", "Alder Bank\t3 January 2026\nPos\t1\t2\t3\t4\nName\tJo Lee\tAl Roe\tCy Dee\tDi Fox\nTime\t18:20\t18:31\t18:40\t18:42\n", fourRead},
	{"times from the watch above names from the cards", "Alder Bank 3 January 2026\n\nFrom the stopwatch:\n1 18:20\n2 18:31\n3 18:40\n4 18:42\n\nFrom the cards:\n1 Jo Lee\n2 Al Roe\n3 Cy Dee\n4 Di Fox\n", fourRead},
	{"a card is missing", "Alder Bank 3 January 2026\n\nFrom the stopwatch:\n1 18:20\n2 18:31\n3 18:40\n4 18:42\n\nFrom the cards:\n1 Jo Lee\n2 Al Roe\n4 Di Fox\n", strings.Replace(fourRead, "Cy Dee", "-", 1)},
	{"numbered names, and their times in a column of the scan", "Alder Bank\n3 January 2026\n\n1. Jo Lee\n2. Al Roe\n3. Cy Dee\n4. Di Fox\n\n18:20\n18:31\n18:40\n18:42\n", fourRead},
	{"blanks beside the colon", "Alder Bank 3 January 2026\n1 Jo Lee 18: 20\n2 Al Roe 18:31\n3 Cy Dee 18 :40\n4 Di Fox 18:42\n", fourRead},
	{"semicolons for colons", "Alder Bank 3 January 2026\n1, Jo Lee 18;20\n2, Al Roe 18;31\n3, Cy Dee 18;40\n4, Di Fox 18;42\n5, Ed Gow 18;50\n6, Ida Kay 18;55\n7, Gus Ing 19;01\n8, Hal Job 19;05\n", fourRead + ", Ed Gow 18:50, Ida Kay 18:55, Gus Ing 19:01, Hal Job 19:05"},
	{"no colons", "Alder Bank 3 January 2026\n1 Jo Lee 1820\n2 Al Roe 1831\n3 Cy Dee 1840\n4 Di Fox 1842\n5 Ed Gow 1850\n6 Ida Kay 1855\n7 Gus Ing 1901\n8 Hal Job 1905\n", fourRead + ", Ed Gow 18:50, Ida Kay 18:55, Gus Ing 19:01, Hal Job 19:05"},
	{"bars that the scan has lost", "Alder Bank | 3 January 2026 |\nPos | Name | Time |\n1 | Jo Lee | 18:20 |\n2 | Al Roe | 18:31 |\n3 | Cy Dee 18:40 |\n4 | Di Fox | 18:42 |\n", fourRead},
	{"marks alone that repeat the club above", "Alder Bank  3 January 2026\nPos Name      Club        Time\n1   Jo Lee    Vale AC     18:20\n2   Al Roe    \"           18:31\n3   Cy Dee    \"           18:40\n4   Di Fox    Mill AC     18:42\n", fourRead},
	{"a greeting in Swedish before the course", "Hej!\n\nHär kommer resultaten från Alder Bank lördag 3 januari 2026.\n\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n4. Di Fox 18:42\n", fourRead},
	{"a sentence in Italian before the course", "Ciao a tutti, ecco i risultati del 3 gennaio 2026 al Lago Verdino.\n\n1° Jo Lee in 18'20\"\n2° Al Roe in 18'31\"\n3° Cy Dee in 18'40\"\n", "lago-verdino 2026-01-03: Jo Lee 18'20\", Al Roe 18'31\", Cy Dee 18'40\""},
	{"the Welsh word for day", "Canlyniadau Parc Glanrafon\nDydd Sadwrn 3 Ionawr 2026\n1 Jo Lee 18:20\n2 Al Roe 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n", strings.Replace(fourRead, "alder-bank", "parc-glanrafon", 1)},
	{"minutes in French, between colons", "Alder Bank : 3 janvier 2026\n1 : Jo Lee : 18 mn 20\n2 : Al Roe : 18 mn 31\n3 : Cy Dee : 18 mn 40\n4 : Di Fox : 18 mn 42\n", strings.ReplaceAll(fourRead, "18:", "18 mn ")},
	{"lines that go on below", "Alder Bank 3 January 2026\n 1 Jo Lee  Vale Striders  18:20\n 2 Al Roe\n      Vale Striders  18:31\n 3 Cy Dee  Vale Striders  18:40\n 4 Di Fox  Vale Striders  18:42\n", fourRead},
	{"families, each on a line", "Alder Bank 3 January 2026\nLee: Jo 18:20, Al 18:31\nDee: Cy 18:40, Di 18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Lee 18:31, Cy Dee 18:40, Di Dee 18:42"},
	{"couples with a time each", "Alder Bank 3 January 2026\nJo and Al Lee 18:20 / 18:31\nCy Dee 18:40\nDi Fox 18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Lee 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"a wrong name", "Alder Bank 3 January 2026\n1 Jo Lee 18:20\n2 Al Roberts 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n\nCorrection: 2nd was Al Roe, not Al Roberts.\n", fourRead},
	{"the women's letter is no minute's", "Alder Bank 3 January 2026\n1 Jo Lee 18:20 f\n2 Al Roe 18:31 m\n3 Cy Dee 18:40 m\n4 Di Fox 18:42 f\n", fourRead},
}

func TestMessages(t *testing.T) {
	for _, c := range messages {
		t.Run(c.name, func(t *testing.T) {
			got := readByHand("x.txt", []byte(c.text))
			got = strings.TrimSpace(strings.ReplaceAll(strings.Join(strings.Fields(got), " "), " ,", ","))
			if got != c.want && !(c.want == "refused" && strings.HasPrefix(got, c.want)) {
				t.Errorf("read %q\nwant %q", got, c.want)
			}
		})
	}
}

// Pieces of pages that hold no table.
func TestPagesOfLines(t *testing.T) {
	for _, text := range []string{
		"<h2>Alder Bank &ndash; 3 January 2026</h2><ol><li>Jo Lee &nbsp; 18:20</li><li>Al Roe &nbsp; 18:31</li><li>Cy Dee 18:40</li><li>Di Fox 18:42</li></ol>",
		"<div>Alder Bank, 3 January 2026<br>1. Jo Lee 18:20<br>\n2. Al Roe 18:31<br>3. Cy Dee 18:40<br>4. Di Fox 18:42</div>",
		"<html><head><title>Alder Bank 3 January 2026</title></head><body><pre>\n  1 Jo Lee    18:20\n  2 Al Roe    18:31\n  3 Cy Dee    18:40\n  4 Di Fox    18:42\n</pre></body></html>",
		"<html><body><p>Alder Bank, 3 January 2026</p><p>1. Jo Lee 18:20</p><p>2. Al Roe 18:31</p><p>3. Cy Dee 18:40</p><p>4. Di Fox 18:42</p></body></html>",
	} {
		if got := readByHand("x.html", []byte(text)); got != fourRead {
			t.Errorf("read %q of %s", got, text)
		}
	}
}

// Letters for two sexes behind the times.
func TestSexesBehindTimes(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.txt", []byte("1 Jo Lee 18:20 f\n2 Al Roe 18:31 m\n3 Cy Dee 18:40 m\n4 Di Fox 18:42 f\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(factsRead(s), "; "); got != "position 1, name Jo Lee, time 18:20, sex f; position 2, name Al Roe, time 18:31, sex m; position 3, name Cy Dee, time 18:40, sex m; position 4, name Di Fox, time 18:42, sex f" {
		t.Error(got)
	}
}

// A letter in brackets behind the names of women, which a line explains.
func TestLetterOfWomen(t *testing.T) {
	s, err := Read("x.txt", []byte("Alder Bank 3 January 2026  (L = lady)\n1 Jo Lee (L) 18:20\n2 Al Roe 18:31\n3 Cy Dee 18:40\n4 Di Fox (L) 18:42\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(factsRead(s), "; "); !strings.Contains(got, "Jo Lee (L), time 18:20, sex women") || !strings.Contains(got, "Al Roe, time 18:31;") {
		t.Error(got)
	}
}

// Forms of a second collection of typed lists.
var typedForms = []struct{ name, text, want string }{
	{"laps and a finish whose columns are moved", "Alder Bank 3 January 2026\nPos Name                 Lap1   Lap2   Finish\n1   Jo Lee               9:02   9:18  18:20\n2   Al Roe               9:11   9:20  18:31\n3   Cy Dee               9:20   9:20  18:40\n4   Di Fox               9:22   9:20  18:42\n5   Ed Gow               10:22   10:20  20:42\n", fourRead + ", Ed Gow 20:42"},
	{"letters for figures in times with points", "Alder Bank 3 January 2026\nl. Jo Lee 18.2O\n2. Al Roe 18.31\n3. Cy Dee l8.40\n4. Di Fox 18.42\n", strings.ReplaceAll(fourRead, "18:", "18.")},
	{"the same time in words", "Alder Bank 3 January 2026\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee same time\n4. Di Fox 18:42\n5. Ed Gow 18:50\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:31, Di Fox 18:42, Ed Gow 18:50"},
	{"commas in some lines and semicolons in others", "Alder Bank 3 January 2026\n1,Jo Lee,18:20\n2;Al Roe;18:31\n3,Cy Dee,18:40\n4;Di Fox;18:42\n", fourRead},
	{"labels in every line", "Alder Bank / 3 January 2026\nPos 1 Name Jo Lee Time 18:20\nPos 2 Name Al Roe Time 18:31\nPos 3 Name Cy Dee Time 18:40\nPos 4 Name Di Fox Time 18:42\n", fourRead},
	{"a Spanish sentence that leads to the course", "Hola a todos:\n\nOs paso los tiempos de Ribera Alta, 3 de enero de 2026:\n\n1. Jo Lee: 18:20\n2. Al Roe: 18:31\n3. Cy Dee: 18:40\n4. Di Fox: 18:42\n", strings.Replace(fourRead, "alder-bank", "ribera-alta", 1)},
	{"a tab too many here and there", "Alder Bank\t\t3 January 2026\n1\tJo Lee\t18:20\n2\tAl Roe\t18:31\n3\t\tCy Dee\t18:40\n4\tDi Fox\t18:42\n5\tEd Gow\t18:50\n", fourRead + ", Ed Gow 18:50"},
	{"a club that two have and two have not, behind tabs", "Alder Bank\t\t3 January 2026\nPos\tName\tClub\tTime\n1\tJo Lee\t\t18:20\n2\tAl Roe\tVale\t18:31\n3\tCy Dee\t\t18:40\n4\tDi Fox\tMill\t18:42\n", fourRead},
	{"items that hold lists of facts", "# Alder Bank 3 January 2026\n- Jo Lee\n  - time: 18:20\n  - club: Vale\n- Al Roe\n  - time: 18:31\n  - club: Mill\n- Cy Dee\n  - time: 18:40\n- Di Fox\n  - time: 18:42\n  - club: Vale\n", fourRead},
	{"signs of equality between cells", "Alder Bank 3 January 2026\n1=Jo Lee=18:20\n2=Al Roe=18:31\n3=Cy Dee=18:40\n4=Di Fox=18:42\n", fourRead},
	{"a word for results and the course over a day and headings that nothing divides", "Resultat Björkskogen\nlördag 3 januari 2026\nPlac Namn Tid\n1 Jo Lee 18:20\n2 Al Roe 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n", strings.Replace(fourRead, "alder-bank", "bjorkskogen", 1)},
	{"headings below the table", "1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\nPosition,Name,Time\n\nAlder Bank 3 January 2026\n", fourRead},
	{"the headings of a second table below", "Alder Bank 3 January 2026\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\nPosition,Name,Time\n5,Ed Gow,18:50\n", fourRead + ", Ed Gow 18:50"},
	{"places against names", "Alder Bank 3 January 2026\n1.Jo Lee.....18:20\n2.Al Roe.....18:31\n3.Cy Dee.....18:40\n4.Di Fox.....18:42\n", fourRead},
	{"minutes and seconds in words with and", "Alder Bank 3 January 2026\nJo Lee - 18 minutes and 20 seconds\nAl Roe - 18 minutes and 31 seconds\nCy Dee - 18 minutes and 40 seconds\nDi Fox - 18 minutes and 42 seconds\n", "alder-bank 2026-01-03: Jo Lee 18 minutes 20 seconds, Al Roe 18 minutes 31 seconds, Cy Dee 18 minutes 40 seconds, Di Fox 18 minutes 42 seconds"},
	{"single dashes under the headings of markup", "# Alder Bank 3 January 2026\n\n| # | Name | Time |\n|-|-|-|\n| 1 | Jo Lee | 18:20 |\n| 2 | Al Roe | 18:31 |\n| 3 | Cy Dee | 18:40 |\n| 4 | Di Fox | 18:42 |\n", fourRead},
	{"plus signs between cells", "Alder Bank, 3 January 2026\n\n1 + Jo Lee + 18:20\n2 + Al Roe + 18:31\n3 + Cy Dee + 18:40\n4 + Di Fox + 18:42\n", fourRead},
	{"a correction above the list", "Alder Bank 3 January 2026\n(Note: Al Roe's time is wrong below, it should be 18:31)\n\n1 Jo Lee 18:20\n2 Al Roe 18:25\n3 Cy Dee 18:40\n4 Di Fox 18:42\n", fourRead},
	{"one who was forgotten, with the place", "Alder Bank 3 January 2026\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n\nOh and I forgot Di Fox who was 4th in 18:42\n", fourRead},
	{"how it was at a place", "A frosty Alder Bank, Saturday 3 January 2026\n\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n4. Di Fox 18:42\n", fourRead},
	{"who posted it", "Re: Alder Bank results\nby Wilf » 3 January 2026, 12:40\n\n1.) Jo Lee 18:20\n2.) Al Roe 18:31\n3.) Cy Dee 18:40\n4.) Di Fox 18:42\n", fourRead},
	{"a title to the right of the headings", "Pos,Name,Time,,Alder Bank\n1,Jo Lee,18:20,,3 January 2026\n2,Al Roe,18:31,,\n3,Cy Dee,18:40,,\n4,Di Fox,18:42,,\n", fourRead},
	{"the right time in brackets", "Alder Bank 3 January 2026\n1 Jo Lee 18:20\n2 Al Roe 18:25 (sorry, 18:31)\n3 Cy Dee 18:40\n4 Di Fox 18:42\n", fourRead},
	{"corrections, a line each", "Alder Bank 3 January 2026\n1 Jo Lee 18:18\n2 Al Roe 18:31\n3 Cy Dee 18:38\n4 Di Fox 18:42\n\nCorrections:\nJo Lee 18:20\nCy Dee 18:40\n", fourRead},
	{"one more behind a plus sign", "Alder Bank 3 January 2026\nJo Lee 18:20\nAl Roe 18:31\nCy Dee 18:40\n\n+ Di Fox 18:42 (just found on the back of the sheet)\n", fourRead},
	{"items that are ticked off", "# Alder Bank 3 January 2026\n- [x] Jo Lee 18:20\n- [x] Al Roe 18:31\n- [x] Cy Dee 18:40\n- [x] Di Fox 18:42\n", fourRead},
	{"times last in brackets", "Alder Bank 3 January 2026\n1. Jo Lee (F, 42, 18:20)\n2. Al Roe (M, 31, 18:31)\n3. Cy Dee (M, 57, 18:40)\n4. Di Fox (F, 28, 18:42)\n", fourRead},
	{"a sentence that says that the run took place", "Dear Members,\n\nThe Alder Bank run took place on Saturday 3 January 2026. The following completed the course:\n\n     Jo Lee     18:20\n     Al Roe     18:31\n     Cy Dee     18:40\n     Di Fox     18:42\n", fourRead},
	{"places in French with colons", "Alder Bank\nLe samedi 3 janvier 2026\n1er : Jo Lee (18:20)\n2ème : Al Roe (18:31)\n3ème : Cy Dee (18:40)\n4ème : Di Fox (18:42)\n", fourRead},
	{"today in Spanish before the course", "[03/01/2026, 11:01:10] Chus: Tiempos de hoy en Alder Bank, 3 de enero de 2026\n[03/01/2026, 11:01:11] Chus: 1º Jo Lee 18:20\n[03/01/2026, 11:02:11] Chus: 2º Al Roe 18:31\n[03/01/2026, 11:03:11] Chus: 3º Cy Dee 18:40\n[03/01/2026, 11:04:11] Chus: 4º Di Fox 18:42\n", fourRead},
	{"handed over to somebody", "> Could somebody send the list?\n>\nHere it is Gerald, Alder Bank 3 January 2026:\n\n1: Jo Lee = 18:20\n2: Al Roe = 18:31\n3: Cy Dee = 18:40\n4: Di Fox = 18:42\n", fourRead},
	{"a place with small words in its name", "Parc de la Course du Lac 3 janvier 2026\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n4. Di Fox 18:42\n", strings.Replace(fourRead, "alder-bank", "parc-de-la-course-du-lac", 1)},
}

func TestTypedForms(t *testing.T) {
	for _, c := range typedForms {
		t.Run(c.name, func(t *testing.T) {
			got := readByHand("x.txt", []byte(c.text))
			got = strings.TrimSpace(strings.ReplaceAll(strings.Join(strings.Fields(got), " "), " ,", ","))
			if got != c.want {
				t.Errorf("read %q\nwant %q", got, c.want)
			}
		})
	}
}

// Ages in brackets behind the times, and years before them with minutes behind.
func TestAgesBehindTimes(t *testing.T) {
	for text, want := range map[string]string{
		"1. Jo Lee 18:20 [52]\n2. Al Roe 18:31 [24]\n3. Cy Dee 18:40 [61]\n4. Di Fox 18:42 [33]\n5. Ed Gow 18:50 [47]\n6. Ida Kay 18:55 [29]\n7. Gus Ing 19:01 [58]\n8. Hal Job 19:05 [40]\n": "name Jo Lee, age 52, time 18:20",
		"1. Jo Lee (1984) 18:20 Min.\n2. Al Roe (1999) 18:31 Min.\n3. Cy Dee (1961) 18:40 Min.\n4. Di Fox (1990) 18:42 Min.\n":                                                                "1984",
	} {
		s, err := Read("alder-bank_2026-01-03.txt", []byte(text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, got := s.Parts[0], ""
		if got = factsRead(s)[0]; p.Index(BirthYear) >= 0 {
			p.Each(func(_ int, cells []string) error { got += " " + cells[p.Index(BirthYear)]; return errStop })
		}
		if !strings.Contains(got, want) {
			t.Errorf("%q of %q", got, text)
		}
	}
}

// What begins with a word for how a race ended is a remark, and no club.
func TestEndedBehindTime(t *testing.T) {
	s, err := Read("alder-bank_2026-01-03.txt", []byte("1 Jo Lee 18:20\n2 Al Roe 18:31\n3 Cy Dee 18:40 DQ (short cut)\n4 Di Fox 18:42\n5 Ed Gow 18:50\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if p := s.Parts[0]; p.Index(Club) >= 0 || p.Index(Notes) < 0 {
		t.Errorf("columns %v", p.Columns)
	}
}
