package sheet

import (
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
)

// TestOneByOne reads lists that people of all sorts have typed, each in a way of their own: of every row
// the place, the name, the sex and the time.
func TestOneByOne(t *testing.T) {
	const day = "Alder Bank, Saturday 3 January 2026\n"
	const four = "1 Jo Lee F 18:20|2 Al Roe M 18:31|3 Cy Dee M 18:40|4 Di Fox F 18:42"
	const plain = "1 Jo Lee  18:20|2 Al Roe  18:31|3 Cy Dee  18:40|4 Di Fox  18:42"
	const unplaced = " Jo Lee  18:20| Al Roe  18:31| Cy Dee  18:40| Di Fox  18:42"
	for _, c := range []struct{ name, file, text, want string }{
		{"a letter for the sex at the place", "x.txt", day + "1F Jo Lee 18:20\n2M Al Roe 18:31\n3M Cy Dee 18:40\n4F Di Fox 18:42\n", four},
		{"a letter for the sex and a colon", "x.txt", day + "F: Jo Lee 18:20\nM: Al Roe 18:31\nM: Cy Dee 18:40\nF: Di Fox 18:42\n",
			" Jo Lee F 18:20| Al Roe M 18:31| Cy Dee M 18:40| Di Fox F 18:42"},
		{"places among men and women say the sex", "x.csv", day + "Pos,M/F,Name,Time\n1,F1,Jo Lee,18:20\n2,M1,Al Roe,18:31\n3,M2,Cy Dee,18:40\n4,F2,Di Fox,18:42\n", four},
		{"places of teams do not", "x.csv", day + "Pos,Team,Name,Time\n1,A1,Jo Lee,18:20\n2,B1,Al Roe,18:31\n3,B2,Cy Dee,18:40\n4,A2,Di Fox,18:42\n", plain},
		{"a label and one sex above the rows", "x.csv", day + "Sex: F\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Di Fox,18:42\n", "1 Jo Lee F 18:20|2 Al Roe F 18:31|3 Cy Dee F 18:40|4 Di Fox F 18:42"},
		{"headings of clubs and names exchanged", "x.csv", day + "Pos,Club,Name,Time\n1,Jo Lee,Vale AC,18:20\n2,Al Roe,Mill RC,18:31\n3,Cy Dee,Vale AC,18:40\n4,Di Fox,Mill RC,18:42\n5,Ed Gow,Vale AC,18:45\n6,Flo Hay,Mill RC,18:50\n", plain + "|5 Ed Gow  18:45|6 Flo Hay  18:50"},
		{"the same, as they should be", "x.csv", day + "Pos,Club,Name,Time\n1,Vale AC,Jo Lee,18:20\n2,Mill RC,Al Roe,18:31\n3,Vale AC,Cy Dee,18:40\n4,Mill RC,Di Fox,18:42\n5,Vale AC,Ed Gow,18:45\n6,Mill RC,Flo Hay,18:50\n", plain + "|5 Ed Gow  18:45|6 Flo Hay  18:50"},
		{"initials are no sexes", "x.txt", day + "1 M. Lee 18:20\n2 F. Roe 18:31\n3 M. Dee 18:40\n4 F. Fox 18:42\n", "1 M. Lee  18:20|2 F. Roe  18:31|3 M. Dee  18:40|4 F. Fox  18:42"},
		{"a picture behind a time with its units", "x.txt", day + "Jo Lee 18m 20 🙂\nAl Roe 18m 31\nCy Dee 18m 40 pb\nDi Fox 18m 42\n", unplaced},
		{"a picture right behind a time", "x.txt", day + "Jo Lee 18:20🙂\nAl Roe 18:31\nCy Dee 18:40\nDi Fox 18:42\n", unplaced},
		{"what happened that evening is nobody's result", "x.txt", day + "Briefing 18:15\nRace start: 18:30\nJo Lee 18:20\nAl Roe 18:31\nCy Dee 18:40\nDi Fox 18:42\nGates closed 19:30\n", unplaced},
		{"somebody called like an event", "x.txt", day + "Jo Lee 18:20\nAl Roe 18:31\nBill Gates 18:40\nGuy Close 18:42\n", " Jo Lee  18:20| Al Roe  18:31| Bill Gates  18:40| Guy Close  18:42"},
		{"the time of the line above, without places", "x.txt", day + "Jo Lee . . . 18:20\nAl Roe . . . 18:31\nCy Dee . . . same time\nDi Fox . . . 18:42\nEd Gow . . . 18:45\n",
			" Jo Lee  18:20| Al Roe  18:31| Cy Dee  18:31| Di Fox  18:42| Ed Gow  18:45"},
		{"lines drawn between slips", "x.txt", day + strings.Repeat("-", 12) + "\nJo Lee\nFemale\n18:20\n------------\nAl Roe\nMale\n18:31\n------------\nCy Dee\nMale\n18:40\n------------\nDi Fox\nFemale\n18:42\n",
			" Jo Lee Female 18:20| Al Roe Male 18:31| Cy Dee Male 18:40| Di Fox Female 18:42"},
		{"every line in quotes below a bare title", "x.csv", day + "\"1, Jo Lee, 18:20\"\n\"2, Al Roe, 18:31\"\n\"3, Cy Dee, 18:40\"\n\"4, Di Fox, 18:42\"\n", plain},
		{"brackets of other kinds", "x.txt", day + "[18:20] Jo Lee <Vale AC>\n[18:31] Al Roe <Mill AC>\n[18:40] Cy Dee <Vale AC>\n[18:42] Di Fox <Vale AC>\n", unplaced},
		{"the first runner's time and gaps in a column of their own", "x.csv", day + "Pos,Name,Time,Gap\n1,Jo Lee,18:20,\n2,Al Roe,,+0:11\n3,Cy Dee,,+0:20\n4,Di Fox,,+0:22\n",
			"1 Jo Lee  18:20|2 Al Roe  0:18:31|3 Cy Dee  0:18:40|4 Di Fox  0:18:42"},
		{"gaps without a sign under their heading", "x.csv", day + "Pos,Name,Time,Behind\n1,Jo Lee,18:20,\n2,Al Roe,,0:11\n3,Cy Dee,,0:20\n4,Di Fox,,0:22\n",
			"1 Jo Lee  18:20|2 Al Roe  0:18:31|3 Cy Dee  0:18:40|4 Di Fox  0:18:42"},
		{"who withdrew at some distance stands under no list", "x.txt", day + "1 Jo Lee 18:20\n2 Al Roe 18:31\n- Ed Gow withdrew at 3k\n3 Cy Dee 18:40\n4 Di Fox 18:42\n", plain},
		{"people who write to one another", "x.txt", day + "Me: got the times?\nPat: yes, here goes\nPat: Jo Lee 18:20\nPat: Al Roe 18:31\nPat: Cy Dee 18:41\nPat: Di Fox 18:42\nPat: sorry Cy was 18:40\nMe: ta\n", unplaced},
		{"teams before their runners are no senders", "x.txt", day + "Reds: Jo Lee 18:20\nBlues: Al Roe 18:31\nReds: Cy Dee 18:40\nBlues: Di Fox 18:42\n",
			" Reds: Jo Lee  18:20| Blues: Al Roe  18:31| Reds: Cy Dee  18:40| Blues: Di Fox  18:42"},
		{"a mail's day gives the year of the day that it names", "x.txt", "From: Joan\nTo: results\nDate: Sun, 4 Jan 2026 08:14:22 +0000\nSubject: Alder Bank results 3rd January\n\nHello,\n\n1 Jo Lee 18:20\n2 Al Roe 18:31\n3 Cy Dee 18:40\n4 Di Fox 18:42\n", plain},
		{"a star among brackets is a legend", "x.txt", day + "(* = lady)\n\n1 Jo Lee * 18:20\n2 Al Roe 18:31\n3 Cy Dee 18:40\n4 Di Fox * 18:42\n", "1 Jo Lee* women 18:20|2 Al Roe  18:31|3 Cy Dee  18:40|4 Di Fox* women 18:42"},
		{"seconds are no ages", "x.csv", day + ",Hrs,Min,Sec\nJo Lee,0,18,20\nAl Roe,0,18,31\nCy Dee,0,18,40\nDi Fox,0,18,42\nEd Gow,0,18,45\n", " Jo Lee  0:18:20| Al Roe  0:18:31| Cy Dee  0:18:40| Di Fox  0:18:42| Ed Gow  0:18:45"},
	} {
		s, err := Read(c.file, []byte(c.text), Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		p := s.Parts[0]
		var got []string
		p.Each(func(_ int, cells []string) error {
			if clock := cellAt(cells, p.Index(Time)); clock != "" && !strings.HasPrefix(clock, "withdrew") {
				cell := func(m Meaning) string { return trim(cellAt(cells, p.Index(m))) }
				got = append(got, strings.Join([]string{cell(Position), cell(Name), cell(Sex), trim(clock)}, " "))
			}
			return nil
		}) // a text of a few lines has no error
		if want := strings.Split(c.want, "|"); !slices.Equal(got, want) || p.Course.Value != "alder-bank" || p.Date.Day.String() != "2026-01-03" {
			t.Errorf("%s: %s %s\n got %q\nwant %q", c.name, p.Course.Value, p.Date.Day, got, want)
		}
		if p.Index(Age) >= 0 {
			t.Errorf("%s: ages in column %d", c.name, p.Index(Age))
		}
	}
}

// Marks under headings of ages say the class.
func TestMarksUnderAges(t *testing.T) {
	s, err := Read("x.csv", []byte("Alder Bank 3 January 2026\nPos,Name,18-39,40-49,50-59,60+,Time\n1,Jo Lee,1,,,,18:20\n2,Al Roe,,1,,,18:31\n3,Cy Dee,,,1,,18:40\n4,Di Fox,,,,1,18:42\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, got := s.Parts[0], ""
	p.Each(func(_ int, cells []string) error {
		got += cellAt(cells, p.Index(AgeGroup)) + " "
		return nil
	}) // a text of a few lines has no error
	if got != "18-39 40-49 50-59 60+ " {
		t.Errorf("groups %q", got)
	}
}

// Days of the month may be words, where the year stands behind them.
func TestDaysInWords(t *testing.T) {
	for line, want := range map[string]string{
		"Alder Bank, twelfth of January 2026":     "2026-01-12",
		"Alder Bank, January the twelfth 2026":    "2026-01-12",
		"Saturday the thirty-first January, 2026": "2026-01-31",
		"twenty first march 2026":                 "2026-03-21",
		"May second team":                         "",
		"First March":                             "",
		"thirty-second January 2026":              "",
	} {
		got := ""
		if ds := findDates(line); len(ds) == 1 && ds[0].settled() {
			got = ds[0].readings[0].day().String()
		}
		if got != want {
			t.Errorf("%q: %q, want %q", line, got, want)
		}
	}
}

// TestRoadsAndMonths takes a road, and what ends in a feature of the land, for a place whatever word of
// clubs is in it, and a month behind a place for when it was.
func TestRoadsAndMonths(t *testing.T) {
	for title, want := range map[string]string{
		"SUBJ: RESULTS, CAMP LARK, 3 JAN 2026":  "camp-lark",
		"Station Road 3 January 2026":           "station-road",
		"Harriers Field 3 January 2026":         "harriers-field",
		"Alder Bank January series, 3 Jan 2026": "alder-bank",
		"Hawthorn Drove June":                   "hawthorn-drove",
		"Parque 25 de Mayo":                     "parque-25-de-mayo",
		"Brindle Road Runners 3 January 2026":   "brindle-road-runners", // a club, less than what a file is called
	} {
		words := courseWords(title, newLexicon(Options{}), newCourseBook(nil))
		if len(words) == 0 || words[0].slug != want || (words[0].weight < 27) != strings.HasSuffix(want, "runners") {
			t.Errorf("%q: %+v, want %s", title, words, want)
		}
	}
}

// TestTabOrFile names the course after the one tab of a workbook whose file says no day, where the file is
// called in small letters after what it is; else it is asked. A tab that says the day goes before the file.
func TestTabOrFile(t *testing.T) {
	rows := [][]any{{"Date", "Pos", "Name", "Time"}, {"2026-01-03", 1, "Jo Lee", "18:20"}, {"2026-01-03", 2, "Al Roe", "18:31"}, {"2026-01-03", 3, "Cy Dee", "18:40"}}
	for _, c := range []struct{ file, tab, course, asks string }{
		{"long season.xlsx", "Beechers", "beechers", ""},
		{"Elm Hollow results.xlsx", "Beechers", "beechers", "course-unclear"},
		{"Sat_run_Apr5.xlsx", "Elm Hollow", "elm-hollow", ""},
		{"Elm Hollow results.xlsx", "Daten", "elm-hollow", ""},
		{"Elm Hollow results.xlsx", "Elm Hollow 5k", "elm-hollow", ""},
		{"Elm Hollow 2026-01-03.xlsx", "Beechers", "elm-hollow", ""},
		{"Elm Hollow results.xlsx", "Beechers 3 Jan 2026", "beechers", ""},
	} {
		s, err := Read(c.file, workbook(t, func(f *excelize.File) {
			f.SetSheetName("Sheet1", c.tab)
			setRows(t, f, c.tab, rows...)
		}), Options{})
		if err != nil {
			t.Fatal(err)
		}
		asks := ""
		for _, q := range s.Problems {
			if q.Severity == place.Waits {
				asks += q.Kind
			}
		}
		for _, q := range s.Parts[0].Problems {
			if q.Severity == place.Waits {
				asks += q.Kind
			}
		}
		if got := s.Parts[0].Course.Value; got != c.course || asks != c.asks {
			t.Errorf("%s, tab %s: %s, asks %q", c.file, c.tab, got, asks)
		}
	}
}
