package sheet

import (
	"strings"
	"testing"
)

const tenRunners = "1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\n5,Ed Gow,18:45\n6,Gus Ing,18:47\n7,Hal Job,18:50\n8,Ida Kay,18:52\n9,Jay Low,18:55\n10,Kim Moy,18:58\n"

// TestHabits reads sheets of people with other habits: what is on the sheet besides the
// results, in other order, and times to be reckoned. want is how many lines are read and
// the one in front; asks are the kinds of the questions, in whose place a refusal begins with
// "refused: ".
func TestHabits(t *testing.T) {
	for _, c := range []struct {
		name, file, text string
		lines            int
		first, run, asks string
	}{
		{"the heading in the middle", "alder-bank_2026-01-03.csv", strings.Replace(tenRunners, "6,Gus", "Pos,Name,Time\n6,Gus", 1), 10, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"prizes at the end with a word before the name", "alder-bank_2026-01-03.txt", strings.ReplaceAll(tenRunners, ",", " ") + "\nPrizes\n1st man Al Roe 18:31\n2nd man Ed Gow 18:45\n1st lady Jo Lee 18:20\n", 10, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"offset at the start and clock at the finish", "alder-bank_2026-01-03.csv", "Pos,Name,Start offset,Clock at finish\n1,Jo Lee,8:15,26:35\n2,Al Roe,4:00,26:40\n3,Cy Dee,0:30,26:45\n4,Di Fox,0:00,26:50\n", 4, "position 1, name Jo Lee, time 0:18:20", "alder-bank 2026-01-03", ""},
		{"legs of a relay", "alder-bank_2026-01-03.csv", "Team,Leg,Runner,Leg time,Team time\nA,1,Jo Lee,18:20,18:20\nA,2,Al Roe,18:31,36:51\nB,1,Cy Dee,18:40,18:40\nB,2,Di Fox,18:42,37:22\n", 0, "", "", "refused: a relay's teams are no runners of their own"},
		{"a column sorted without the others", "alder-bank_2026-01-03.csv", "Pos,Name,Time\n7,Al Roe,18:20\n2,Cy Dee,18:31\n9,Di Fox,18:40\n1,Ed Gow,18:42\n4,Gus Ing,18:45\n10,Hal Job,18:47\n3,Ida Kay,18:50\n8,Jay Low,18:52\n5,Jo Lee,18:55\n6,Kim Moy,18:58\n", 10, "position 7, name Al Roe, time 18:20", "alder-bank 2026-01-03", "columns-sorted-apart"},
		{"records above the results, with their dates", "alder-bank_2026-01-03.csv", "Course records\nMen: Gil Tarr 15:44 (3 May 2019)\nWomen: Una Brisk 17:52 (11 June 2022)\n\nPos,Name,Time\n" + tenRunners, 10, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"two places in one message", "message.txt", "Saturday round-up 3 January 2026\n\nAlder Common:\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n\nMill Water:\n1. Di Fox 18:42\n2. Ed Gow 18:45\n3. Gus Ing 18:47\n", 3, "position 1, name Jo Lee, time 18:20", "alder-common 2026-01-03", ""},
		{"moments of the start", "alder-bank_export.csv", "name,start,finish,duration\nJo Lee,2026-01-03T09:00:03Z,2026-01-03T09:18:23Z,0:18:20\nAl Roe,2026-01-03T09:00:03Z,2026-01-03T09:18:34Z,0:18:31\nCy Dee,2026-01-03T09:00:03Z,2026-01-03T09:18:43Z,0:18:40\n", 3, "name Jo Lee, time 0:18:20", "alder-bank 2026-01-03", ""},
		{"Japanese", "記録.csv", "結果 - 若葉緑地,2026年1月3日\n順位,氏名,タイム\n1,佐藤 花子,18:20\n2,田中 誠,18:31\n3,鈴木 隆,18:40\n", 3, "position 1, name 佐藤 花子, time 18:20", "若葉緑地 2026-01-03", ""},
		{"sections in sentences", "alder-bank_2026-01-03.txt", "First the men.\n1. Al Roe 18:20\n2. Cy Dee 18:31\n3. Ed Gow 18:40\n\nAnd now the ladies:\n1. Jo Lee 18:42\n2. Di Fox 18:45\n3. Ida Kay 18:47\n", 6, "position 1, name Al Roe, time 18:20, sex men", "alder-bank 2026-01-03", ""},
		{"a year of an era, times with the words for minutes and seconds", "記録.csv", "若葉緑地,令和8年1月3日(土)\n順位,氏名,タイム\n1位,佐藤 花子,18分20秒\n2位,田中 誠,18分31秒\n3位,鈴木 隆,1時間02分40秒\n", 3, "position 1位, name 佐藤 花子, time 18分20秒", "若葉緑地 2026-01-03", ""},
		{"the first year of an era, wide figures", "記録.csv", "若葉緑地,令和元年５月１１日\n順位,氏名,タイム\n１,佐藤 花子,１８：２０\n２,田中 誠,１８：３１\n３,鈴木 隆,１８：４０\n", 3, "position 1, name 佐藤 花子, time 18:20", "若葉緑地 2019-05-11", ""},
		{"Arabic figures", "alder-bank_2026-01-03.csv", "المركز,الاسم,العمر,الزمن\n١,أحمد النهري,٣٤,١٨:٢٠\n٢,منى الوادي,٤١,١٨:٣١\n٣,خالد الريفي,٢٨,١٨:٤٠\n", 3, "position 1, name أحمد النهري, age 34, time 18:20", "alder-bank 2026-01-03", ""},
		{"men beside women in Korean", "alder-bank_2026-01-03.csv", "남자부,,,,여자부,,\n순위,이름,기록,,순위,이름,기록\n1위,김민준,18분20초,,1위,조소희,19분20초\n2위,박건우,18분31초,,2위,정은채,19분31초\n3위,오현우,18분40초,,3위,장하윤,19분40초\n", 3, "position 1위, name 김민준, time 18분20초, sex 남자부", "alder-bank 2026-01-03", ""},
		{"teams with their scorers under a ruled list", "alder-bank_2026-01-03.txt", "Place Bib   Name         Grade School        Time\n===== ===== ============ ===== ============= =======\n1     281   Al Roe       12    Mill Central  17:59.7\n2     251   Cy Dee       9     Vale High     18:12.3\n3     13    Ed Gow       12    Mill Central  18:41.9\n4     218   Gus Orr      11    Vale High     19:05.1\n\n            TEAM SCORES\n\n1. Mill Central   4   (1 3)\n   Total Time: 36:41   Average: 18:20\n   1    1  Al Roe      17:59.7\n   2    3  Ed Gow      18:41.9\n\n2. Vale High   6   (2 4)\n   Total Time: 37:17   Average: 18:38\n   1    2  Cy Dee      18:12.3\n   2    4  Gus Orr     19:05.1\n", 4, "position 1, name Al Roe, time 17:59.7", "alder-bank 2026-01-03", ""},
		{"a second ruled list with other columns", "alder-bank_2026-01-03.txt", "Place Name         Team          Time\n===== ============ ============= =======\n1     Al Roe       Mill Central  17:59.7\n2     Cy Dee       Vale High     18:12.3\n3     Ed Gow       Mill Central  18:41.9\n\nPlace Name         Team          Time\n===== ============ ============= =======\n1     Jo Lee       Mill Central  19:59.7\n2     Di Fox       Vale High     20:12.3\n3     Ida Nye      Mill Central  20:41.9\n", 6, "position 1, name Al Roe, club Mill Central, time 17:59.7", "alder-bank 2026-01-03", ""},
		{"a full stop and no space behind the place", "alder-bank_2026-01-03.txt", "Place  Name           Age Sex  Bib#    Time\n   1.Al Roe           41  M    876   18:09\n   2.Cy Dee           40  M    865   19:23\n   3.Jo Lee           70  F    625   19:38\n   4.Di Fox           43  F    681   20:51\n", 4, "position 1., name Al Roe, age-group 41  M, time 18:09", "alder-bank 2026-01-03", ""},
		{"links and emphasis in a table of markup", "alder-bank_2026-01-03.md", "Position | Name | Time | PB?\n:---: | --- | --- | ---\n1 | **[Jo Lee](/runners/jo-lee)** | **18:20** |\n2 | [Al Roe](/runners/al-roe) | *18:31* | PB\n3 | [Cy Dee](/runners/cy-dee) | 18:40 |\n", 3, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"a pace before each time", "alder-bank_2026-01-03.txt", "5 km // Men\n\nPlace Name Pace Time\n1 Al Roe, Vale 3:40 18:20\n2 Cy Dee 3:42 18:31\n3 Ed Gow, Mill 3:44 18:40\n\n5 km // Women\n\nPlace Name Pace Time\n1 Jo Lee, Vale 3:45 18:43\n2 Di Fox 3:46 18:50\n", 5, "position 1, name Al Roe, club Vale, time 18:20, sex Men", "alder-bank 2026-01-03", ""},
		{"two times a line of which neither is a pace", "alder-bank_2026-01-03.txt", "1 Al Roe, Vale 3:10 18:20\n2 Cy Dee 8:42 18:31\n3 Ed Gow, Mill 9:44 18:40\n4 Jo Lee, Vale 4:45 18:43\n5 Di Fox 6:46 18:50\n", 0, "", "", "refused: no heading row"},
		{"years of birth between names and clubs", "alder-bank_2026-01-03.txt", "1. Al Roe 1984 Vale 18:20.51\n2. Cy Dee 1991 Mill 18:31.12\n3. Ed Gow 1972 Vale 18:40.33\n4. Jo Lee 2001 Mill 18:42.74\n5. Di Fox 1968 Vale 18:45.95\n6. Gus Ing 1979 Mill 18:47.16\n", 6, "position 1, name Al Roe, club Vale, time 18:20.51", "alder-bank 2026-01-03", ""},
		{"where its people live", "alder-bank_2026-01-03.csv", "Pos,Name,Home Location,Time\n1,Jo Lee,Mill Water,18:20\n2,Al Roe,Mill Water,18:31\n3,Cy Dee,Mill Water,18:40\n", 3, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"sexes in Persian", "alder-bank_2026-01-03.csv", "رتبه,نام,جنسیت,زمان\n۱,سامر حقلی,مرد,۱۸:۲۰\n۲,هاله یاسمی,زن,۱۸:۳۱\n۳,احمد سهلی,مرد,۱۸:۴۰\n", 3, "position 1, name سامر حقلی, time 18:20, sex مرد", "alder-bank 2026-01-03", ""},
		{"lines in Japanese with wide marks", "alder-bank_2026-01-03.txt", "男子の部\n1位　佐藤　誠（走友会）　17分20秒\n2位　田中　隆（南会）　17分31秒\n3位　鈴木　学（走友会）　1時間02分40秒\n\n女子の部\n1位　山田　花子（南会）　18分20秒\n2位　川本　恵（走友会）　18分31秒\n", 5, "position 1, name 佐藤 誠, club 走友会, time 17:20, sex 男子", "alder-bank 2026-01-03", ""},
		{"lines in Korean", "alder-bank_2026-01-03.txt", "남자부\n1위 김민준 (버들마라톤클럽) 17분 20초\n2위 박건우 (들꽃런) 17분 31초\n3위 오현우 (버들마라톤클럽) 17분 40초\n\n여자부\n1위 조소희 (들꽃런) 18분 20초\n2위 정은채 (버들마라톤클럽) 18분 31초\n", 5, "position 1, name 김민준, club 버들마라톤클럽, time 17:20, sex 남자부", "alder-bank 2026-01-03", ""},
		{"the sex in brackets between name and club", "alder-bank_2026-01-03.txt", "1° LEE Jo (F) Vale AC 18'20''\n2° ROE Al (M) Mill Runners 18'31''\n3° DEE Cy (M) Vale AC 18'40''\n4° FOX Di (F) Mill Runners 18'42''\n5° GOW Ed (M) Vale AC 18'45''\n", 5, "position 1, name LEE Jo, club Vale AC, time 18'20'', sex F", "alder-bank 2026-01-03", ""},
		{"lists that run on, fields divided by commas", "alder-bank_2026-01-03.txt", "Men — 1, Al Roe, 34, Mill, 18:20; 2, Cy Dee, 41, Vale, 18:31; 3, Ed Gow, 29, Mill, 18:40.\n\nWomen — 1, Jo Lee, 51, Vale, 18:42; 2, Di Fox, 38, Mill, 18:45; 3, Fay Ho, 44, Vale, 18:47.\n", 6, "position 1, name Al Roe, age 34, club Mill, time 18:20, sex Men", "alder-bank 2026-01-03", ""},
		{"lists that run on, minutes named behind the times", "alder-bank_2026-01-03.txt", "Männer: 1. Al Roe (Mill) 18:20 min, 2. Cy Dee (Vale) 18:31 min, 3. Ed Gow (Mill) 18:40 min\nFrauen: 1. Jo Lee (Vale) 18:42 min, 2. Di Fox (Mill) 18:45 min\n", 5, "position 1, name Al Roe, club Mill, time 18:20, sex Männer", "alder-bank 2026-01-03", ""},
		{"what one runner has run, two races on one day", "alder-bank_2026-01-03.csv", "Grade,Date,Meet,Event,Time\nJunior,13.9.2024,Vale Invitational,5K,20:21\nJunior,13.9.2024,Mill Open Race,5K,21:21\nJunior,20.9.2024,Weir Invitational,5K,20:40\nSenior,27.9.2025,Ford Invitational,5K,19:21\nSenior,3.10.2025,Quay Classic,5K,19:11\nSenior,17.10.2025,Moss Open,5K,19:50\n", 0, "", "", "refused: it lists races"},
		{"lists of two and of one that run on within a line", "alder-bank_2026-01-03.txt", "Men: 1) Al Roe, Mill 18:20, 2) Cy Dee, Vale 18:31.\nM40: 1) Ed Gow, Mill 18:40.\nM50: 1) Gus Orr, Vale 18:42, 2) Hal Moss, Mill 18:45.\nWomen: 1) Jo Lee, Vale 18:47, 2) Di Fox, Mill 18:50.\nW40: 1) Fay Ho, Vale 18:52.\n", 8, "name Al Roe, age-group Men, club Mill, time 18:20", "alder-bank 2026-01-03", ""},
		{"ages like times over the lists", "alder-bank_2026-01-03.txt", "Muži 16-39 rokov\n1. Al Roe, Mill AC, 18:20\n2. Cy Dee, Vale AC, 18:31\n3. Ed Gow, Mill AC, 18:40\nMuži nad 40 rokov\n1. Gus Orr, Vale AC, 18:42\n2. Hal Moss, Mill AC, 18:45\nŽeny 16-39 rokov\n1. Jo Lee, Vale AC, 18:47\n2. Di Fox, Mill AC, 18:50\n3. Fay Ho, Vale AC, 18:52\n", 8, "position 1, name Al Roe, age-group Muži 16-39 rokov, club Mill AC, time 18:20", "alder-bank 2026-01-03", ""},
		{"a label that tells of laps", "3 January.csv", "Alder Bank 3 January 2026\nCourse: two laps of the park, firm\nPos,Name,Time\n" + tenRunners, 10, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"how many there are behind a section", "alder-bank_2026-01-03.txt", "M40 - 3 finishers\n1. Al Roe 18:20\n2. Cy Dee 18:31\n3. Ed Gow 18:40\n\nW40 - 3 finishers\n1. Jo Lee 18:42\n2. Di Fox 18:45\n3. Ida Kay 18:47\n", 6, "position 1, name Al Roe, age-group M40, time 18:20", "alder-bank 2026-01-03", ""},
		{"the only one of a group", "alder-bank_2026-01-03.txt", "M35\n1. Al Roe 18:20\n\nM40\n1. Cy Dee 18:31\n2. Ed Gow 18:40\n\nW40\n1. Jo Lee 18:42\n2. Di Fox 18:45\n3. Ida Kay 18:47\n", 6, "name Al Roe, age-group M35, time 18:20", "alder-bank 2026-01-03", ""},
		{"two headings exchanged", "alder-bank_2026-01-03.csv", "Pos,Time,Name\n" + tenRunners, 10, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"a total of a series beside the time", "alder-bank_2026-01-03.csv", "Pos,Name,Time,Series total\n1,Jo Lee,18:20,56:20\n2,Al Roe,18:31,55:58\n3,Cy Dee,18:40,56:50\n4,Di Fox,18:42,56:40\n5,Ed Gow,18:45,57:02\n6,Gus Ing,18:47,56:55\n7,Hal Job,18:50,57:20\n8,Ida Kay,18:52,57:01\n9,Jay Low,18:55,57:10\n10,Kim Moy,18:58,57:40\n", 10, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"predictions", "alder-bank_2026-01-03.txt", "Predicted times for Saturday\n" + strings.ReplaceAll(tenRunners, ",", " "), 0, "", "", "refused: predicted"},
		{"who starts, with the times expected", "x.csv", "Start list Alder Bank, 3 January 2026\nNo,Name,Cat,Est. time\n11,Jo Lee,W40,18:20\n7,Al Roe,M45,18:31\n23,Cy Dee,M35,18:40\n", 0, "", "", "refused: those who entered"},
		{"a table in wiki markup", "alder-bank_2026-01-03.txt", "{| class=\"wikitable\"\n! Pos !! Name !! Time\n|-\n| 1 || Jo Lee || 18:20\n|-\n| 2 || Al Roe || 18:31\n|-\n| 3 || Cy Dee || 18:40\n|}\n", 3, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"each line in quotation marks", "alder-bank_2026-01-03.txt", "\"1. Jo Lee 18:20\"\n\"2. Al Roe 18:31\"\n\"3. Cy Dee 18:40\"\n\"4. Di Fox 18:42\"\n", 4, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"the club below each line", "alder-bank_2026-01-03.txt", "1  Jo Lee  18:20\n   Vale AC\n2  Al Roe  18:31\n   Mill AC\n3  Cy Dee  18:40\n   Vale AC\n4  Di Fox  18:42\n   Mill AC\n5  Ed Gow  18:45\n   Vale AC\n", 5, "position 1, name Jo Lee, club Vale AC, time 18:20", "alder-bank 2026-01-03", ""},
		{"places among men and women in brackets", "alder-bank_2026-01-03.txt", "1 (M1) Al Roe 18:20\n2 (M2) Cy Dee 18:31\n3 (F1) Jo Lee 18:40\n4 (M3) Ed Gow 18:42\n5 (F2) Di Fox 18:45\n", 5, "position 1, name Al Roe, time 18:20, sex M", "alder-bank 2026-01-03", ""},
		{"names above and times below", "alder-bank_2026-01-03.txt", "Jo Lee\nAl Roe\nCy Dee\nDi Fox\nEd Gow\nGus Ing\n\n18:20\n18:31\n18:40\n18:42\n18:45\n18:47\n", 6, "name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"more names above than times below", "alder-bank_2026-01-03.txt", "Jo Lee\nAl Roe\nCy Dee\nDi Fox\nEd Gow\nGus Ing\nIda Kay\n\n18:20\n18:31\n18:40\n18:42\n18:45\n18:47\n", 6, "time 18:20", "alder-bank 2026-01-03", "names-apart"},
		{"several days without places", "diary.txt", "Alder Bank\n\n3rd January 2026:\nJo Lee 18:20\nAl Roe 18:31\nCy Dee 18:40\nDi Fox 18:42\n\n10th January 2026:\nJo Lee 18:22\nAl Roe 18:30\nCy Dee 18:41\nDi Fox 18:43\n\n17th January 2026:\nJo Lee 18:21\nAl Roe 18:32\nCy Dee 18:39\nDi Fox 18:44\n", 4, "name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"places and times alone", "alder-bank_2026-01-03.txt", "1 18:20\n2 18:31\n3 18:40\n4 18:42\n5 18:45\n6 18:47\n", 6, "position 1, time 18:20", "alder-bank 2026-01-03", ""},
		{"one tab behind a long name, two behind the others", "alder-bank_2026-01-03.txt", "Pos\tName\t\tTime\n1\tJo Lee\t\t18:20\n2\tAl Roe\t\t18:21\n3\tCy Dee\t\t18:22\n4\tDi Fox\t\t18:23\n5\tEdward Gow-Harrington\t18:24\n6\tGus Ing\t\t18:25\n7\tHal Job\t\t18:26\n8\tIda Kay\t\t18:27\n9\tJay Low\t\t18:28\n10\tKim Moy\t\t18:29\n11\tLou Nye\t\t18:30\n12\tMoe Orr\t\t18:31\n", 12, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-03", ""},
		{"part of a day in a message", "chat.txt", "13/01/2026, 10:22 - Ann Moss: Results from Alder Bank this morning\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n", 3, "position 1, name Jo Lee, time 18:20", "alder-bank 2026-01-13", ""},
	} {
		s, err := Read(c.file, []byte(c.text), Options{})
		if err != nil {
			if _, why, ok := strings.Cut(c.asks, "refused: "); !ok || !strings.Contains(err.Error(), why) {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		got, o := factsRead(s), outcome(s)
		if strings.Contains(strings.Join(got, "\n"), "Harrington") && got[4] != "position 5, name Edward Gow-Harrington, time 18:24" {
			t.Errorf("%s: %q", c.name, got[4])
		}
		if len(got) != c.lines || got[0] != c.first || o.run != c.run || o.asks != c.asks {
			t.Errorf("%s: %d lines, the first %q, run %q, asks %q", c.name, len(got), got[0], o.run, o.asks)
		}
	}
}
