package sheet

import (
	"slices"
	"testing"
)

// changed are sheets that are read when plain, after one change that means nothing to a
// reader: a further column, headings over headings or of few letters, a list below, a remark
// above. want is written as for byHand.
var changed = []struct{ name, text, want string }{
	{"minutes and seconds headed in two languages", "Alder Bank 3 January 2026\nRank (Puesto),Athlete (Nombre),Mins / Minutos,Seconds (Segundos)\n1,Jo Lee,18,20\n2,Al Roe,18,31\n3,Cy Dee,19,2\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 19:02"},
	{"what the columns below have in common", "Alder Bank 3 January 2026\nResult,Runner,,,Other,Result\nPosition,Forename,Surname,M/F,Category,Official time\n2,Jo,Lee,M,M40,18:31\n1,Al,Roe,F,W40,18:20\n3,Cy,Dee,M,M50,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:31, Al Roe 18:20, Cy Dee 18:40"},
	{"a heading whose second half is needed", "Alder Bank 3 January 2026\nFinish,,Category,\nPlace,Runner,Place,Time\n1,Jo Lee,1,18:20\n2,Al Roe,1,18:31\n3,Cy Dee,2,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"headings of few letters, and the day at the foot", "Psn,Nm,Fin,G\n1,Jo Lee,18:20,F\n2,Al Roe,18:31,M\n3,Cy Dee,18:40,M\n\nSaturday 3 January 2026\n", "asks course-missing"},
	{"headings that nobody knows, over places and times", "Sat 3 January 2026\nXpl,Xnm,Xtm\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "asks course-missing"},
	{"a place of one word in the first row of several", "Alder,Sat,3 January 2026\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n", "alder 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"who answers for the child", "Alder Bank 3 January 2026\nPos,Name,Parent/guardian,Time\n1,Kit Lee,Jo Lee,18:20\n2,Ben Roe,Al Roe,18:31\n3,Cat Dee,Cy Dee,18:40\n", "alder-bank 2026-01-03: Kit Lee 18:20, Ben Roe 18:31, Cat Dee 18:40"},
	{"the name of the dog", "Alder Bank 3 January 2026\nPlac.,Dog's name,Namn,Tid\n1,,Jo Lee,18:20\n2,Rex,Al Roe,18:31\n3,,Cy Dee,18:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"a remark above the name of the place", "Well done everybody\nAlder Bank\n3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"a record above the name of the place", "Course record 15:42 Gil Tarr\nAlder Bank\n3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"a place with a small word", "Parc de la Saule\nNorthmarch\n3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n", "parc-de-la-saule 2026-01-03: Jo Lee 18:20, Al Roe 18:31"},
	{"numbers of chips under a word that is a day in German", "Alder Bank 3 January 2026\nTime,Name,Tag\n18:20,Jo Lee,9196603\n18:31,Al Roe,7330765\n18:40,Cy Dee,7777398\n18:42,Di Fox,3367693\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"who helped, below a run in each column", "Alder Bank\n\nName,3 Jan 2026,10 Jan 2026\nJo Lee,18:20,18:22\nAl Roe,18:31,vol\nCy Dee,,18:40\n\nVolunteers\nGil Tarr,Race director\nUna Brisk,Marshal\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31; alder-bank 2026-01-10: Jo Lee 18:22, Cy Dee 18:40"},
	{"the league, below a run in each column", "Alder Bank\n\nName,3 Jan 2026,10 Jan 2026,17 Jan 2026\nJo Lee,18:20,18:22,\nAl Roe,18:31,,18:30\nCy Dee,,18:40,18:41\n\nLeague after 3 runs\nPos,Name,Runs,Points\n1,Gil Tarr,5,480\n2,Una Brisk,5,463\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31; alder-bank 2026-01-10: Jo Lee 18:22, Cy Dee 18:40; alder-bank 2026-01-17: Al Roe 18:30, Cy Dee 18:41"},
	{"last week's winners, below a run in each column", "Alder Bank\n\nName,10 Jan 2026,17 Jan 2026\nJo Lee,18:20,18:22\nAl Roe,18:31,\nCy Dee,,18:40\n\nLast week's winners (3 January 2026)\nMen,Gil Tarr,17:22\nWomen,Una Brisk,19:41\n", "alder-bank 2026-01-10: Jo Lee 18:20, Al Roe 18:31; alder-bank 2026-01-17: Jo Lee 18:22, Cy Dee 18:40"},
	{"the women, below the men and a run in each column", "Alder Bank\n\nName,3 Jan 2026,10 Jan 2026\nJo Lee,18:20,18:22\nAl Roe,18:31,vol\nCy Dee,,18:40\n\nWomen\nDi Fox,19:20,\nIda Kay,injured,19:40\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Di Fox 19:20; alder-bank 2026-01-10: Jo Lee 18:22, Cy Dee 18:40, Ida Kay 19:40"},
	{"a card for each, the last without a place", "Alder Bank 3 January 2026\n\nFinish position: 1\nParticipant: Jo Lee\nFinish time: 18:20\n\nFinish position: 2\nParticipant: Al Roe\nFinish time: 18:31\n\nFinish position: 3\nParticipant: Cy Dee\nFinish time: 18:40\n\nParticipant: Di Fox\nFinish time: DNF\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox DNF"},
	{"two columns of names without headings, and names of a list beside them", "Alder Bank 3 January 2026\n\n1,Jo,Lee,18:20,,,League,,Points\n2,Al,Roe,18:31,,,1,Gil Tarr,97\n3,Cy,Dee,18:40,,,2,Una Brisk,91\n4,Di,Fox,18:42\n5,Ed,Gow,18:45\n6,Ida,Kay,18:50\n7,Gus,Ing,18:55\n", "asks name-columns-unclear"},
	{"records with headings, below results without", "Alder Bank 3 January 2026\n\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\n\nCourse records\n,Name,Time,Date\nMen,Gil Tarr,15:42,12/06/2019\nWomen,Una Brisk,17:58,03/09/2021\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"the league, below results without headings", "Alder Bank 3 January 2026\n\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\n\nLeague standings after 5 runs\nPos,Name,Runs,Points\n1,Gil Tarr,5,480\n2,Una Brisk,5,463\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"teams, below results without headings", "Alder Bank 3 January 2026\n\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\n\nTeam scores\nPlace,Team,Points,Total time\n1,Mill Runners,14,1:02:31\n2,Fell Club,23,1:05:12\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"winners above the headings of the results", "Alder Bank 3 January 2026\n\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nFull results\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"columns that stand under one another, seconds with a comma", "Alder Bank - Saturday, 3 January 2026\n\nPos  Name     Team          Time\n1    Jo Lee   Mill Runners  18:20,00\n2    Al Roe   Fell Club     18:31,50\n3    Cy Dee                 18:40,00\n4    Di Fox   Fell Club     18:42,00\n", "alder-bank 2026-01-03: Jo Lee 18:20,00, Al Roe 18:31,50, Cy Dee 18:40,00, Di Fox 18:42,00"},
	{"columns that stand under one another, times with their units", "Alder Bank - Saturday, 3 January 2026\n\nPos  Name     Team          Time\n1    Jo Lee   Mill Runners  18 min 20 s\n2    Al Roe   Fell Club     18 min 31 s\n3    Cy Dee                 18 min 40 s\n4    Di Fox   Fell Club     18 min 42 s\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"numbers of chips beside minutes and seconds", "Alder Bank 3 January 2026\nChip,Pos,Name,Minutes,Sec\n6306969,1,Jo Lee,18,20\n3785556,2,Al Roe,18,31\n5728569,3,Cy Dee,18,40\n2204417,4,Di Fox,18,42\n7190035,5,Ed Gow,18,45\n1183240,6,Ida Kay,18,50\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42, Ed Gow 18:45, Ida Kay 18:50"},
	{"when the next run is, above the results", "Next run: same place next Saturday\nAlder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n\n3,Cy Dee,18:40\n4,Di Fox,18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"when the next run is, right above the headings", "Alder Bank 3 January 2026\nNext run: same place next Saturday\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n\n3,Cy Dee,18:40\n4,Di Fox,18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"who did not start, below results without headings that begin behind a blank column", "Alder Bank 3 January 2026\n,1,Jo Lee,,18.20\n,2,Al Roe,Fell Club,18:31\n,3,Cy Dee,,18:40\n,4,Di Fox,,18:42\n\n,DNS\n,No,Name\n,101,Gil Tarr\n,114,Una Brisk\n", "alder-bank 2026-01-03: Jo Lee 18.20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"teams, under who helped, in other columns", "Alder Bank 3 January 2026\nClub,Age group,Position,Time,Name\nFell Club,M40,1,18:20,Jo Lee\nFell Club,M40,2,18:31,Al Roe\n,M50,3,18:40,Cy Dee\n,M50,4,18:42,Di Fox\n\nVolunteers\nTimekeeper,Gil Tarr\n\nTeam results\n1,Mill Runners,14\n2,Fell Club,23\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42"},
	{"somebody unknown among first names, after blank rows", "Alder Bank 3 January 2026\nBib,Surname,First name,Time\n7,Lee,Jo,18:20\n,,,\n9,Roe,Al,18:31\n,,,\n4,Dee,Cy,18:40\n,,,\n,,Unknown,18:42\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Unknown 18:42"},
	{"place and day at the foot of lists side by side", "Pos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,4,Di Fox,18:42\n2,Al Roe,18:31,,5,Ed Gow,18:45\n3,Cy Dee,18:40,,6,Ida Kay,18:50\n\nAlder Bank - 3 January 2026\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:42, Ed Gow 18:45, Ida Kay 18:50"},
	{"men beside women, place and day at the foot", "Men,,,,Women\nPos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,2,Di Fox,18:42\n4,Al Roe,18:51,,3,Ida Kay,18:45\n\nAlder Bank - 3 January 2026\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:51, Di Fox 18:42, Ida Kay 18:45"},
	{"the day at the foot, above teams", "Alder Bank\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\n3 January 2026\n\nTeam scores\nPlace,Team,Points,Total time\n1,Mill Runners,14,1:02:31\n2,Fell Club,23,1:05:12\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"a second run whose day stands above a line and no places", "Alder Bank\n3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nAlder Bank 10 January 2026\n\nFinal results\nName,Time\nDi Fox,18:42\nEd Gow,18:45\nIda Kay,18:50\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40; alder-bank 2026-01-10: Di Fox 18:42, Ed Gow 18:45, Ida Kay 18:50"},
}

var changedBooks = []struct{ name, text, want string }{
	{"teams on a tab without headings", "== Results\nAlder Bank|3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n== Teams\nTeam results\n1|Mill Runners|14\n2|Fell Club|23\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"},
	{"a second tab of the same name", "== Alder Bank\n3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n== Alder Bank1\n10 January 2026\nPos|Name|Time\n1|Al Roe|18:21\n2|Jo Lee|18:32\n", "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31; alder-bank 2026-01-10: Al Roe 18:21, Jo Lee 18:32"},
}

func TestChanged(t *testing.T) {
	for _, c := range changed {
		t.Run(c.name, func(t *testing.T) {
			if got := readByHand("x.csv", []byte(c.text)); got != c.want {
				t.Errorf("read %q\nwant %q", got, c.want)
			}
		})
	}
	for _, c := range changedBooks {
		t.Run(c.name, func(t *testing.T) {
			if got := readByHand("x.xlsx", bookOf(t, c.text)); got != c.want {
				t.Errorf("read %q\nwant %q", got, c.want)
			}
		})
	}
}

// A line that stands over a list as others do says a sex for its rows, too.
func TestSexOverListsWithTheirHeadings(t *testing.T) {
	const text = "Osier Park - 14 May 2025\n\nMen\nTime,Club,Name\n17:36,Fell Club,Jo Lee\n17:59,Fell Club,Al Roe\n19:38,,Cy Dee\n\nWomen\nTime,Club,Name\n18:37,Fell Club,Di Fox\n18:58,,Ida Kay\n19:55,,Una Brisk\n"
	want := []string{"Men", "Men", "Men", "Women", "Women", "Women"}
	s, err := Read("x.csv", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range s.Parts {
		p.Each(func(_ int, cells []string) error {
			got = append(got, cellAt(cells, p.Index(Sex)))
			return nil
		}) // the function returns no error
	}
	if !slices.Equal(got, want) {
		t.Errorf("read %v, want %v", got, want)
	}
}

// A sex beside the day on a tab, or in a line of its own above the name of the place, is that of
// the rows below.
func TestSexOnTabOrAboveThePlace(t *testing.T) {
	for name, data := range map[string][]byte{
		"x.xlsx": bookOf(t, "== 03-01-2026 Men\nAlder Bank\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n== 03-01-2026 Women\nAlder Bank\nPos|Name|Time\n1|Di Fox|18:40\n2|Ida Kay|18:51\n"),
		"x.csv":  []byte("Men\nAlder Bank 3 January 2026\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n\nWomen\nAlder Bank 3 January 2026\nPos,Name,Time\n1,Di Fox,18:40\n2,Ida Kay,18:51\n"),
	} {
		s, err := Read(name, data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range s.Parts {
			p.Each(func(_ int, cells []string) error {
				got = append(got, cellAt(cells, p.Index(Sex)))
				return nil
			}) // the function returns no error
		}
		if want := []string{"Men", "Men", "Women", "Women"}; !slices.Equal(got, want) {
			t.Errorf("%s: read %v, want %v", name, got, want)
		}
	}
}
