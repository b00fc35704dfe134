package sheet

import (
	"strings"
	"testing"
)

// TestPartedLines reads lists in which several habits of those who type come together. want is
// each row, as factsRead writes it.
func TestPartedLines(t *testing.T) {
	const plain = "position 1, name Jo Lee, time 18:20\nposition 2, name Al Roe, time 18:31\nposition 3, name Cy Dee, time 18:40\nposition 4, name Di Fox, time 18:42\nposition 5, name Ed Gow, time 18:45"
	for _, c := range []struct{ name, text, want string }{
		{"a place before the name and a sex behind the time, commas", "1 Jo Lee, 18:20, F\n2 Al Roe, 18:31, M\n3 Cy Dee, 18:40, M\n4 Di Fox, 18:42, F\n5 Ed Gow, 18:45, M\n",
			"position 1, name Jo Lee, time 18:20, sex F\nposition 2, name Al Roe, time 18:31, sex M\nposition 3, name Cy Dee, time 18:40, sex M\nposition 4, name Di Fox, time 18:42, sex F\nposition 5, name Ed Gow, time 18:45, sex M"},
		{"tabs and blanks", "1\tJo Lee   18:20\t\tMill AC\n2 \tAl Roe \t18:31   Vale AC\n3    Cy Dee\t 18:40\tMill AC\n4\t\tDi Fox\t18:42   Vale AC\n5   Ed Gow   18:45\t\tMill AC\n",
			"position 1, name Jo Lee, club Mill AC, time 18:20\nposition 2, name Al Roe, club Vale AC, time 18:31\nposition 3, name Cy Dee, club Mill AC, time 18:40\nposition 4, name Di Fox, club Vale AC, time 18:42\nposition 5, name Ed Gow, club Mill AC, time 18:45"},
		{"another order from some line on", "1, Jo Lee, 18:20\n2, Al Roe, 18:31\n3, Cy Dee, 18:40\n4, 18:42, Di Fox\n5, 18:45, Ed Gow\n", plain},
		{"bullets, numbers in brackets, clubs", "- (1) Jo Lee, Mill AC, 18:20\n- (2) Al Roe, Vale AC, 18:31\n- (3) Cy Dee, Mill AC, 18:40\n- (4) Di Fox, Vale AC, 18:42\n- (5) Ed Gow, Mill AC, 18:45\n",
			"position 1, name Jo Lee, club Mill AC, time 18:20\nposition 2, name Al Roe, club Vale AC, time 18:31\nposition 3, name Cy Dee, club Mill AC, time 18:40\nposition 4, name Di Fox, club Vale AC, time 18:42\nposition 5, name Ed Gow, club Mill AC, time 18:45"},
		{"classes in words between strokes", "1 – Jo Lee – Senior Lady – 18:20\n2 – Al Roe – Vet 40 Man – 18:31\n3 – Cy Dee – Senior Man – 18:40\n4 – Di Fox – Vet 50 Lady – 18:42\n5 – Ed Gow – Vet 60 Man – 18:45\n",
			"position 1, name Jo Lee, age-group Senior Lady, time 18:20\nposition 2, name Al Roe, age-group Vet 40 Man, time 18:31\nposition 3, name Cy Dee, age-group Senior Man, time 18:40\nposition 4, name Di Fox, age-group Vet 50 Lady, time 18:42\nposition 5, name Ed Gow, age-group Vet 60 Man, time 18:45"},
		{"sexes between strokes, a tie, initials", "1 – J. Lee – 18:20 – F\n2= – A. Roe – 18:31 – M\n2= – C. Dee – 18:31 – M\n4 – D. Fox – 18:42 – F\n5 – E. Gow – 18:45 – M\n",
			"position 1, name J. Lee, time 18:20, sex F\nposition 2, name A. Roe, time 18:31, sex M\nposition 2, name C. Dee, time 18:31, sex M\nposition 4, name D. Fox, time 18:42, sex F\nposition 5, name E. Gow, time 18:45, sex M"},
		{"a place beside the time, stars before some lines", "1 18:20 -> Jo Lee\n*2 18:31 -> Al Roe\n3 18:40 -> Cy Dee\n4 18:42 -> Di Fox\n*5 18:45 -> Ed Gow\n", plain},
		{"a colon left out, another key, a letter for a figure", "1 - Jo Lee - 18:20\n2 - Al Roe - 1831\n3 - Cy Dee - 18:4O\n4 - Di Fox - 18,42\n5 - Ed Gow - 18:4S\n", plain},
		{"a colon left out without a mark", "1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 1840\n4. Di Fox 18:42\n5. Ed Gow 18:45\n", plain},
		{"5 read as S", "1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n4. Di Fox 18:42\n5. Ed Gow 18:4S\n", plain},
		{"a mark too few before a known club", "1|Jo Lee|Mill AC|18:20\n2|Al Roe Vale AC 18:31\n3|Cy Dee|Vale AC|18:40\n4|Di Fox|Mill AC|18:42\n5|Ed Gow|Mill AC|18:45\n",
			"position 1, name Jo Lee, club Mill AC, time 18:20\nposition 2, name Al Roe, club Vale AC, time 18:31\nposition 3, name Cy Dee, club Vale AC, time 18:40\nposition 4, name Di Fox, club Mill AC, time 18:42\nposition 5, name Ed Gow, club Mill AC, time 18:45"},
		{"units with blanks in columns", "  1  Jo Lee      18m 20s  Mill AC\n  2  Al Roe      18m 31s  Vale AC\n  3  Cy Dee      18m 40s  Mill AC\n  4  Di Fox      19m  2s  Vale AC\n  5  Ed Gow      19m  5s  Mill AC\n",
			"position 1, name Jo Lee, club Mill AC, time 18:20\nposition 2, name Al Roe, club Vale AC, time 18:31\nposition 3, name Cy Dee, club Mill AC, time 18:40\nposition 4, name Di Fox, club Vale AC, time 19:02\nposition 5, name Ed Gow, club Mill AC, time 19:05"},
		{"numbers of lines, a fence", "  1: ```\n  2: 1. Jo Lee 18:20\n  3: 2. Al Roe 18:31\n  4: 3. Cy Dee 18:40\n  5: 4. Di Fox 18:42\n  6: 5. Ed Gow 18:45\n  7: ```\n  8: \n", plain},
		{"places with colons are no numbers of lines", "1: Jo Lee 18:20\n2: Al Roe 18:31\n3: Cy Dee 18:40\n4: Di Fox 18:42\n5: Ed Gow 18:45\n6: Gus Ing 18:47\n7: Hal Job 18:50\n8: Ida Kay 18:52\n",
			plain + "\nposition 6, name Gus Ing, time 18:47\nposition 7, name Hal Job, time 18:50\nposition 8, name Ida Kay, time 18:52"},
		{"the time below, further in", "1, Jo Lee, 18:20\n2, Al Roe,\n    18:31\n3, Cy Dee, 18:40\n4, Di Fox, 18:42\n5, Ed Gow, 18:45\n", plain},
		{"the end of the club below", "1 - Jo Lee - 18:20 - Mill AC\n2 - Al Roe - 18:31 - Vale Road\n    Runners\n3 - Cy Dee - 18:40 - Mill AC\n4 - Di Fox - 18:42 - Mill AC\n5 - Ed Gow - 18:45 - Vale Road Runners\n",
			"position 1, name Jo Lee, club Mill AC, time 18:20\nposition 2, name Al Roe, club Vale Road Runners, time 18:31\nposition 3, name Cy Dee, club Mill AC, time 18:40\nposition 4, name Di Fox, club Mill AC, time 18:42\nposition 5, name Ed Gow, club Vale Road Runners, time 18:45"},
		{"a list with initials and records is no prose", "#1 Jo A. Lee, 18:20\n#2 Al Roe, 18:31\n#3 Cy B. Dee, 18:40\n#4 Di Fox, 18:42\n#5 Ed Gow, 18:45\n\nCourse records: men 15:42, women 17:58\n", strings.NewReplacer("Jo Lee", "Jo A. Lee", "Cy Dee", "Cy B. Dee").Replace(plain)},
		{"each line a cell of a text file", "\"- 1 - Jo Lee - 18:20\"\n\"- 2 - Al Roe - 18:31\"\n\"- 3 - Cy Dee - 18:40\"\n\"- 4 - Di Fox - 18:42\"\n\"- 5 - Ed Gow - 18:45\"\n", plain},
		{"a class and a note behind the time", "1) Jo Lee, 18:20, VW40, first time\n2) Al Roe, 18:31, SM\n3) Cy Dee, 18:40, SM pb\n4) Di Fox, 18:42, SW\n5) Ed Gow, 18:45, VM50\n",
			"position 1, name Jo Lee, age-group VW40, time 18:20\nposition 2, name Al Roe, age-group SM, time 18:31\nposition 3, name Cy Dee, age-group SM, time 18:40\nposition 4, name Di Fox, age-group SW, time 18:42\nposition 5, name Ed Gow, age-group VM50, time 18:45"},
		{"#1, stars before some", "#1 Jo Lee 18:20\n*#2 Al Roe 18:31\n#3 Cy Dee 18:40\n#4 Di Fox 18:42\n*#5 Ed Gow 18:45\n", plain},
		{"clubs by their words, some once", "1 Jo Lee 18:20\n2 Al Roe Vale Road Runners 18:31\n3 Cy Dee Mill AC 18:40\n4 Di Fox Alder Joggers 18:42\n5 Ed Gow 18:45\n",
			"position 1, name Jo Lee, time 18:20\nposition 2, name Al Roe, club Vale Road Runners, time 18:31\nposition 3, name Cy Dee, club Mill AC, time 18:40\nposition 4, name Di Fox, club Alder Joggers, time 18:42\nposition 5, name Ed Gow, time 18:45"},
		{"family names of two words before given names", "1 - Lee, Jo - 18:20\n2 - Roe, Al - 18:31\n3 - van Dee, Cy - 18:40\n4 - Fox, Di - 18:42\n5 - Gow, Ed - 18:45\n",
			"position 1, name Lee, Jo, time 18:20\nposition 2, name Roe, Al, time 18:31\nposition 3, name van Dee, Cy, time 18:40\nposition 4, name Fox, Di, time 18:42\nposition 5, name Gow, Ed, time 18:45"},
		{"a comma for a colon, blanks beside it", "1. Jo Lee 18: 20 (F)\n2. Al Roe 18:31 (M)\n3. Cy Dee 18,40 (M)\n4. Di Fox 18:42 (F)\n5. Ed Gow 18:45 (M)\n",
			"position 1, name Jo Lee, time 18:20, sex F\nposition 2, name Al Roe, time 18:31, sex M\nposition 3, name Cy Dee, time 18:40, sex M\nposition 4, name Di Fox, time 18:42, sex F\nposition 5, name Ed Gow, time 18:45, sex M"},
		{"three beside one another in gaps, the last line short", "  (1) Jo Lee  18:20  (F)     (3) Cy Dee  18: 40  (M)     (5) Ed Gow  18:45  (M)\n  (2) Al Roe  18:31  (M)     (4) Di Fox  18: 42  (F)     (6) Gus Ing  18:47  (M)\n  (7) Hal Job  18:50  (M)     (8) Ida Kay  18:52  (F)\n",
			"position 1., name Jo Lee, time 18:20, sex (F)\nposition 2., name Al Roe, time 18:31, sex (M)\nposition 3., name Cy Dee, time 18:40, sex (M)\nposition 4., name Di Fox, time 18:42, sex (F)\nposition 5., name Ed Gow, time 18:45, sex (M)\nposition 6., name Gus Ing, time 18:47, sex (M)\nposition 7., name Hal Job, time 18:50, sex (M)\nposition 8., name Ida Kay, time 18:52, sex (F)"},
		{"ages in gaps are no places", "  1  34  Jo Lee  18:20\n  2  27  Al Roe  18:31\n  3  51  Cy Dee  18:40\n  4  35  Di Fox  18:42\n  5  60  Ed Gow  18:45\n",
			"position 1, name Jo Lee, age 34, time 18:20\nposition 2, name Al Roe, age 27, time 18:31\nposition 3, name Cy Dee, age 51, time 18:40\nposition 4, name Di Fox, age 35, time 18:42\nposition 5, name Ed Gow, age 60, time 18:45"},
		{"family names before given names in a list with signs", "• 1 Lee, Jo, 18:20\n• 2 Roe, Al, 18:31\n• 3 Dee, Cy, 18:40\n• 4 Fox, Di, 18:42\n• 5 Gow, Ed, 18:45\n",
			"position 1, name Lee, Jo, time 18:20\nposition 2, name Roe, Al, time 18:31\nposition 3, name Dee, Cy, time 18:40\nposition 4, name Fox, Di, time 18:42\nposition 5, name Gow, Ed, time 18:45"},
		{"a word before the place, a letter in it, a note behind the sex", "Pos l: Jo Lee - 18:20 - F\nPos 2: Al Roe - 18:31 - M well done\nPos 3: Cy Dee - 18:40 - M\nPos 4: Di Fox - 18:42 - F\nPos 5: Ed Gow - 18:45 - M\n",
			"position 1, name Jo Lee, time 18:20, sex F\nposition 2, name Al Roe, time 18:31, sex M\nposition 3, name Cy Dee, time 18:40, sex M\nposition 4, name Di Fox, time 18:42, sex F\nposition 5, name Ed Gow, time 18:45, sex M"},
		{"classes told in sentences", "Jo Lee (Senior Lady) won in 18:20.\nAl Roe (Vet 40 Man) was 2nd in 18:31.\nCy Dee (Senior Man) was 3rd in 18:40.\nDi Fox (Vet 50 Lady) was 4th in 18:42.\n",
			"name Jo Lee, age-group Senior Lady, time 18:20\nname Al Roe, age-group Vet 40 Man, time 18:31\nname Cy Dee, age-group Senior Man, time 18:40\nname Di Fox, age-group Vet 50 Lady, time 18:42"},
		{"tenths told in sentences", "Jo Lee won in 18:20.4.\nAl Roe was 2nd in 18:31.0.\nCy Dee was 3rd in 18:40.9.\nDi Fox was 4th in 18:42.\n",
			"name Jo Lee, time 18:20.4\nname Al Roe, time 18:31.0\nname Cy Dee, time 18:40.9\nname Di Fox, time 18:42"},
		{"who wrote it when", "Posted by ann » Sat Jan 03, 2026 4:12 pm\n\n1st Jo Lee, 18:20\n2nd Al Roe, 18:31\n3rd Cy Dee, 18:40\n4th Di Fox, 18:42\n5th Ed Gow, 18:45\n", plain},
		{"years of birth of those without a time are no times", "Pos;Name;Time;Born\n1;Jo Lee;18:20;1984\n2;Al Roe;18:31;1999\n;Hal Job;DNF;1835\n3;Cy Dee;18:40;2011\n4;Di Fox;18:42;1984\n5;Ed Gow;18:45;1984\n",
			"position 1, name Jo Lee, time 18:20\nposition 2, name Al Roe, time 18:31\nname Hal Job, time DNF\nposition 3, name Cy Dee, time 18:40\nposition 4, name Di Fox, time 18:42\nposition 5, name Ed Gow, time 18:45"},
	} {
		s, err := Read("alder-bank_2026-01-03.txt", []byte(c.text), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := strings.Join(factsRead(s), "\n"); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}
