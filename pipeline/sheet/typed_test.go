package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// TestTypedLines reads lists as people type and paste them: of every line the name, the
// time, and where it has them place, group and club.
func TestTypedLines(t *testing.T) {
	names := strings.Split("Jo Lee|Al Roe|Cy Dee|Di Fox|Ed Gow|Gus Ing|Hal Job|Ida Kay|Jay Low|Kim Moy", "|")
	clubs := []string{"Vale Striders", "Mill & Weir AC", "Vale Striders", "Unattached", "Mill & Weir AC"}
	ages := []string{"42", "31", "57", "28", "44"}
	groups := []string{"W40", "M45", "M35", "SW", "M50"}
	for _, c := range []struct {
		name, line, want string // {p} place, {n} name, {s} seconds, {g} group, {c} club
	}{
		{"time in front, place in brackets behind", "18:{s} {n} ({p})", "position {p}, name {n}, time 18:{s}"},
		{"time in brackets behind", "{p}th {n} (18:{s})", "position {p}, name {n}, time 18:{s}"},
		{"group before a marked place", "{g} {p}) {n} 18.{s}", "position {p}, name {n}, age-group {g}, time 18.{s}"},
		{"minutes and seconds in words", "{p}    {n}    18 MIN {s} SEC", "position {p}, name {n}, time 18 MIN {s} SEC"},
		{"minutes and seconds in words of other letters", "{p}. {n} — 18 мин {s} сек", "position {p}, name {n}, time 18:{s}"},
		{"minutes and seconds in Greek", "{p}. {n} 18 λεπτά {s} δευτερόλεπτα", "position {p}, name {n}, time 18:{s}"},
		{"minutes and seconds with a Romanian and", "{p}. {n} - 18 min și {s} sec", "position {p}, name {n}, time 18:{s}"},
		{"minutes and seconds in Turkish", "{p}. {n} 18 dk {s} sn", "position {p}, name {n}, time 18:{s}"},
		{"minutes and seconds in Lithuanian, with an age", "{n} ({a}), 18 minučių {s} sekundžių", "name {n}, age {a}, time 18:{s}"},
		{"a dash between minutes and seconds", "{p}th {n} 18-{s}", "position {p}, name {n}, time 18:{s}"},
		{"a word before the number", "No. {p} {n} 18:{s}", "position {p}, name {n}, time 18:{s}"},
		{"group between name and club", "{p} {n} {g} {c} 18:{s}", "position {p}, name {n}, age-group {g}, club {c}, time 18:{s}"},
		{"group and club in brackets", "{p}. {n} ({g}, {c}) 18:{s}", "position {p}, name {n}, age-group {g}, club {c}, time 18:{s}"},
		{"clubs with nothing but a space before them", "{p} {n} {c} 18:{s}", "position {p}, name {n}, club {c}, time 18:{s}"},
		{"a runner's number behind the place", "{p} #2{s} {n} 18:{s}", "position {p}, name {n}, time 18:{s}"},
		{"a club behind a dash", "{n} - {c} - 18:{s}", "name {n}, club {c}, time 18:{s}"},
		{"an age in brackets", "{n} ({a}) ..... 18:{s}", "name {n}, age {a}, time 18:{s}"},
		{"a letter for the sex in front", "{p} {x} {n} 18:{s}", "position {p}, name {n}, time 18:{s}, sex {x}"},
		{"a letter for the sex behind, and no place", "{n} {x} 18:{s}", "name {n}, time 18:{s}, sex {x}"},
		{"a small word in front of every name", "{p}th place {n} 18:{s}", "position {p}, name {n}, time 18:{s}"},
		{"a letter before the place", "P{p} {n} 18:{s}", "position {p}, name {n}, time 18:{s}"},
		{"marks of a web page", "{p}. {n} 18:{s}<br>", "position {p}, name {n}, time 18:{s}"},
		{"labels in the line", "Pos {p}: {n}, time 18:{s}", "position {p}, name {n}, time 18:{s}"},
		{"a comma between minutes and seconds", "{p}. {n} 18,{s}", "position {p}, name {n}, time 18:{s}"},
		{"an age behind the name", "{p} {n} {a} 18:{s}", "position {p}, name {n}, age {a}, time 18:{s}"},
		{"a club behind a comma", "18:{s} {n}, {c}", "name {n}, club {c}, time 18:{s}"},
		{"a club in brackets and no places", "{n} ({c}) 18:{s}", "name {n}, club {c}, time 18:{s}"},
		{"a small word behind every name", "{n} in 18:{s}", "name {n}, time 18:{s}"},
		{"the same, and an ordinal in the note behind", "{p} {n} 18:{s} 50th run", "position {p}, name {n}, time 18:{s}"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var text strings.Builder
			var want []string
			for i, n := range names {
				fill := strings.NewReplacer("{p}", string("123456789"[min(i, 8)]), "{n}", n, "{s}", []string{"20", "31", "40", "42", "45", "47", "50", "52", "55", "58"}[i], "{g}", groups[i%5], "{c}", clubs[i%5], "{a}", ages[i%5], "{x}", "FM"[i%2:i%2+1])
				if i == 9 {
					fill = strings.NewReplacer("{p}", "10", "{n}", n, "{s}", "58", "{g}", groups[i%5], "{c}", clubs[i%5], "{a}", ages[i%5], "{x}", "M")
				}
				text.WriteString(fill.Replace(c.line) + "\n")
				want = append(want, fill.Replace(c.want))
			}
			s, err := Read("alder-bank_2026-01-03.txt", []byte(text.String()), Options{})
			if err != nil {
				t.Fatal(err)
			}
			got := factsRead(s)
			for i := range want {
				if i >= len(got) || got[i] != want[i] {
					t.Fatalf("line %d: read %q, want %q", i+1, got[min(i, len(got)-1)], want[i])
				}
			}
			if len(got) != len(want) {
				t.Errorf("%d lines read, want %d", len(got), len(want))
			}
		})
	}
}

// factsRead are place, name, group, club and time of every line of the first part.
func factsRead(s *Sheet) (out []string) {
	p := s.Parts[0]
	p.Each(func(_ int, cells []string) error {
		var facts []string
		for _, m := range []Meaning{Position, Name, AgeGroup, Age, Club, Time, Sex} {
			if c := trim(cellAt(cells, p.Index(m))); c != "" && !(m == Club && c == "50th run") {
				facts = append(facts, m.String()+" "+c)
			}
		}
		out = append(out, strings.Join(facts, ", "))
		return nil
	})
	return out
}

// TestNamesAndClubsJoined holds that a list is not read in which it can't be told where
// names end and clubs begin.
func TestNamesAndClubsJoined(t *testing.T) {
	_, err := Read("alder-bank_2026-01-03.txt", []byte("Pos Name Club Time\n1 Jo Lee Vale Striders 18:20\n2 Al Roe Mill Harbour Joggers Seniors 18:31\n3 Cy Dee Ash Grove Team 18:40\n4 Di Fox Quay Rowing Gang 18:42\n"), Options{})
	if err == nil {
		t.Error("read, though names and clubs run into one another")
	}
}

// TestStrayCommas reads rows with a comma too many: typed twice, typed in front, and in
// every name.
func TestStrayCommas(t *testing.T) {
	const head = "Pos,Name,Cat,Club,Time\n"
	for _, c := range []struct{ name, text, want string }{
		{"typed twice", head + "1,Jo Lee,W40,Vale AC,18:20\n2,Al Roe,,M45,Mill AC,18:31\n3,Cy Dee,M35,Vale AC,18:40\n4,Di Fox,W50,,18:42\n",
			"position 2, name Al Roe, age-group M45, club Mill AC, time 18:31"},
		{"in front", head + "1,Jo Lee,W40,Vale AC,18:20\n,2,Al Roe,M45,Mill AC,18:31\n3,Cy Dee,M35,Vale AC,18:40\n4,Di Fox,W50,,18:42\n",
			"position 2, name Al Roe, age-group M45, club Mill AC, time 18:31"},
		{"in every name", "Pos,Name,Cat,Time\n1,Lee, Jo,W40,18:20\n2,Roe, Al,M45,18:31\n3,Dee, Cy,M35,18:40\n4,Fox, Di,W50,18:42\n5,Gow, Ed,M50,18:44\n",
			"position 2, name Roe, Al, age-group M45, time 18:31"},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := factsRead(s); got[1] != c.want {
			t.Errorf("%s: read %q, want %q", c.name, got[1], c.want)
		}
	}
}

// TestListsWithoutHeadings takes the same names in several lists for names.
func TestListsWithoutHeadings(t *testing.T) {
	text := "Alder Bank year book\n"
	for _, day := range []string{"3", "10", "17", "24"} {
		text += "\nWeek - " + day + " January 2026\n1. Jo Lee 18:20\n2. Al Roe 18:31\n3. Cy Dee 18:40\n4. Di Fox 18:42\n"
	}
	s, err := Read("year book.txt", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Parts) != 4 || s.Parts[3].RunOfFirst() != "alder-bank 2026-01-24" || factsRead(s)[0] != "position 1, name Jo Lee, time 18:20" {
		t.Errorf("%d parts, the last of %q, its first line %q", len(s.Parts), s.Parts[len(s.Parts)-1].RunOfFirst(), factsRead(s)[0])
	}
}

// TestPastedShapes reads lists that lost their shape on the way: a cell a line, rows on
// two lines, cells of two lines, letters for figures, minutes said once.
func TestPastedShapes(t *testing.T) {
	want := []string{"position 1, name Jo Lee, time 18:20", "position 2, name Al Roe, time 18:31", "position 3, name Cy Dee, time 19:11", "position 4, name Di Fox, time 19:40", "position 5, name Ed Gow, time 20:02"}
	for _, c := range []struct{ name, text string }{
		{"a cell a line under headings", "Pos\nName\nTime\n1\nJo Lee\n18:20\n2\nAl Roe\n18:31\n3\nCy Dee\n19:11\n4\nDi Fox\n19:40\n5\nEd Gow\n20:02\n"},
		{"a cell a line without headings, a blank line between rows", "1\nJo Lee\n18:20\n\n2\nAl Roe\n18:31\n\n3\nCy Dee\n19:11\n\n4\nDi Fox\n19:40\n\n5\nEd Gow\n20:02\n"},
		{"rows on two lines", "Pos\tRunner\tTime\tCountry\n1\tJo Lee\nVale AC\t18:20\tA\n2\tAl Roe\nMill AC\t18:31\tB\n3\tCy Dee\nVale AC\t19:11\tA\n4\tDi Fox\nMill AC\t19:40\tB\n5\tEd Gow\nVale AC\t20:02\tA\n"},
		{"cells of two lines", "Pos,\"Name\nHome\",Time\n1,\"Jo Lee\nVale\",18:20\n2,\"Al Roe\nMill\",18:31\n3,\"Cy Dee\nMill\",19:11\n4,\"Di Fox\nVale\",19:40\n5,\"Ed Gow\nVale\",20:02\n"},
		{"a fact a line", "Name: Jo Lee\nPosition: 1\nTime: 18:20\n\nName: Al Roe\nPosition: 2\nTime: 18:31\n\nName: Cy Dee\nPosition: 3\nTime: 19:11\n\nName: Di Fox\nPosition: 4\nTime: 19:40\n\nName: Ed Gow\nPosition: 5\nTime: 20:02\n"},
		{"a fact a line, rules between the people", "Position: 1\nName: Jo Lee\nTime: 18:20\n---\nPosition: 2\nName: Al Roe\nTime: 18:31\n---\nPosition: 3\nName: Cy Dee\nTime: 19:11\n---\nPosition: 4\nName: Di Fox\nTime: 19:40\n---\nPosition: 5\nName: Ed Gow\nTime: 20:02\n---\n"},
		{"a fact a line, the club of some left out, in any order", "Name: Jo Lee\nPosition: 1\nClub: Vale AC\nTime: 18:20\n\nName: Al Roe\nTime: 18:31\nPosition: 2\n\nName: Cy Dee\nPosition: 3\nTime: 19:11\n\nName: Di Fox\nPosition: 4\nTime: 19:40\nClub: Mill AC\n\nName: Ed Gow\nPosition: 5\nTime: 20:02\n\nThanks to all who helped.\n"},
		{"a cell a line, the time first", "Alder Bank\n\n18:20\nJo Lee\n1\n\n18:31\nAl Roe\n2\n\n19:11\nCy Dee\n3\n\n19:40\nDi Fox\n4\n\n20:02\nEd Gow\n5\n"},
		{"a cell a line, the club of some left out", "Pos\nName\nClub\nTime\n1\nJo Lee\nVale AC\n18:20\n2\nAl Roe\n18:31\n3\nCy Dee\nMill AC\n19:11\n4\nDi Fox\n19:40\n5\nEd Gow\nVale AC\n20:02\n"},
		{"cards", "1. Jo Lee\nW40 · Vale AC\n18:20\n\n2. Al Roe\nM45 · Mill AC\n18:31\n\n3. Cy Dee\nM35 · Vale AC\n19:11\n\n4. Di Fox\nW50 · Mill AC\n19:40\n\n5. Ed Gow\nM50 · Vale AC\n20:02\n"},
		{"places in words", "First: Jo Lee 18:20\nSecond: Al Roe 18:31\nThird: Cy Dee 19:11\nFourth: Di Fox 19:40\nFifth: Ed Gow 20:02\n"},
		{"letters for figures", "l  Jo Lee  l8:2O\n2  Al Roe  l8:3l\n3  Cy Dee  l9:11\n4  Di Fox  19:40\n5  Ed Gow  2O:O2\n"},
	} {
		s, err := Read("alder-bank_2026-01-03.txt", []byte(c.text), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := factsRead(s); strings.Join(onlyPlaceNameTime(got), "\n") != strings.Join(want, "\n") {
			t.Errorf("%s: read %q", c.name, got)
		}
	}
	// a time above or below the name that it is of
	timed := []string{"name Jo Lee, time 18:20", "name Al Roe, time 18:31", "name Cy Dee, time 19:11", "name Di Fox, time 19:40", "name Ed Gow, time 20:02"}
	for _, text := range []string{
		"Alder Bank\n3 January 2026\n18:20\nJo Lee\n18:31\nAl Roe\n19:11\nCy Dee\n19:40\nDi Fox\n20:02\nEd Gow\n",
		"Alder Bank\n\n18:20\nJo Lee\nW40\n\n18:31\nAl Roe\nM45\n\n19:11\nCy Dee\nM35\n\n19:40\nDi Fox\nW50\n\n20:02\nEd Gow\nM50\n",
		"Alder Bank\n\n18:20\nJo Lee\n\n18:31\nAl Roe\n\n19:11\nCy Dee\n\n19:40\nDi Fox\n\n20:02\nEd Gow\n",
		"18:20\nJo Lee\n18:31\nAl Roe\n19:11\nCy Dee\n19:40\nDi Fox\n20:02\nEd Gow\n",
		"Alder Bank\nJo Lee\n18:20\nAl Roe\n18:31\nCy Dee\n19:11\nDi Fox\n19:40\nEd Gow\n20:02\n",
		"Alder Bank\nJo Lee\n18:20\nAl Roe\n18:31\nCy Dee\n19:11\nDi Fox\n19:40\nEd Gow\n20:02\nThanks to all volunteers\n",
		"Alder Bank\n\nJo Lee\n18:20\n\nAl Roe\n18:31\n\nCy Dee\n19:11\n\nDi Fox\n19:40\n\nEd Gow\n20:02\n\nWell Done\n",
	} {
		s, err := Read("alder-bank_2026-01-03.txt", []byte(text), Options{})
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if got := factsRead(s); strings.Join(onlyPlaceNameTime(got), "\n") != strings.Join(timed, "\n") {
			t.Errorf("%q: read %q", text, got)
		}
	}
	// the name of the course or of the first runner above the first time, and one of the last or a greeting below the last
	if s, err := Read("alder-bank_2026-01-03.txt", []byte("Alder Bank\n18:20\nJo Lee\n18:31\nAl Roe\n19:11\nCy Dee\n19:40\nDi Fox\n20:02\nEd Gow\n"), Options{}); err == nil {
		t.Errorf("taken for %q", factsRead(s))
	}
	s, err := Read("alder-bank_2026-01-03.txt", []byte("18:20 Jo Lee\n  :31 Al Roe\n19:11 Cy Dee\n  :40 Di Fox\n20:02 Ed Gow\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := factsRead(s); len(got) != 5 || got[1] != "name Al Roe, time 18:31" || got[3] != "name Di Fox, time 19:40" {
		t.Errorf("minutes said once: read %q", got)
	}
}

func onlyPlaceNameTime(facts []string) (out []string) {
	for _, f := range facts {
		var keep []string
		for _, part := range strings.Split(f, ", ") {
			if !strings.HasPrefix(part, Club.String()+" ") && !strings.HasPrefix(part, AgeGroup.String()+" ") {
				keep = append(keep, part)
			}
		}
		out = append(out, strings.Join(keep, ", "))
	}
	return out
}

// Lines with tabs between their cells are a table, whatever they look like without them.
func TestTableOfTabsIsNotTyped(t *testing.T) {
	list := "Posición\tApellidos\tNombre\tGénero\tTiempo\tSpeed (km/h)\tObservaciones\n"
	for i, name := range []string{"Moss\tAda", "Reed\tBen", "Dee\tCy", "Fox\tDi", "Gow\tEd", "Hay\tFi"} {
		list += fmt.Sprintf("%d\t%s\tH\t%d.%02d\t15.%d\t\n", i+1, name, 18+i, 60+i, 9-i)
	}
	s, err := Read("alder-bank_2026-01-03.csv", []byte(strings.ReplaceAll(list, "\n", "\r")), Options{})
	if err != nil {
		t.Fatal(err)
	}
	p := s.Parts[0]
	if p.HeadingRow != 1 || p.Index(FamilyName) != 1 || p.Index(GivenName) != 2 {
		t.Errorf("%+v", p.Columns)
	}
}

// TestWrappedCells joins the end of a club that stands in the line below, and takes it for
// no heading of a section.
func TestWrappedCells(t *testing.T) {
	text := "Pos  Name           Cat   Club          Time\n1    Jo Lee         W40   Vale         18:20\n                          Ladies\n2    Al Roe         M45   Mill AC      18:31\n3    Cy Dee         M35   Vale         18:40\n                          Ladies\n4    Di Fox         W50                18:42\n"
	s, err := Read("alder-bank_2026-01-03.txt", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := factsRead(s)
	if len(got) != 4 || got[0] != "position 1, name Jo Lee, age-group W40, club Vale Ladies, time 18:20" || s.Parts[0].Index(Sex) >= 0 {
		t.Errorf("read %q; %d lines", got[0], len(got))
	}
}

// TestRunOnText holds that results told in a paragraph are refused, with the reason.
func TestRunOnText(t *testing.T) {
	text := "Alder Bank 3 January 2026\n\nResults: 1 Jo Lee 18:20, 2 Al Roe 18:31, 3 Cy Dee\n18:40, 4 Di Fox 18:42, 5 Ed Gow 18:45, 6 Gus Ing\n18:47, 7 Hal Job 18:50, 8 Ida Kay 18:52, 9 Jay Low\n18:55, 10 Kim Moy 18:58, 11 Lou Nye 19:01, 12 Moe Orr\n19:04.\n"
	if _, err := Read("report.txt", []byte(text), Options{}); err == nil || !strings.Contains(err.Error(), "several on a line") {
		t.Errorf("want refused, got %v", err)
	}
}

// Times with units get a colon, but for those with hours, of which more would be left behind.
func TestUnitClocks(t *testing.T) {
	for _, k := range []struct{ line, want string }{
		{"1 Jo Lee 22m 45s", "1 Jo Lee 22:45"},
		{"1 Jo Lee 18 min 5 sec", "1 Jo Lee 18:05"},
		{"1 Jo Lee 1 hr 2 min 29", "1 Jo Lee 1 hr 2 min 29"},
		{"1 Jo Lee 1h 2m 29s", "1 Jo Lee 1h 2m 29s"},
	} {
		got, _ := unitClocks([]byte(strings.Repeat(k.line+"\n", 5)))
		if first, _, _ := strings.Cut(string(got), "\n"); first != k.want {
			t.Errorf("%q becomes %q, not %q", k.line, first, k.want)
		}
	}
}
