package sheet

import (
	"fmt"
	"strings"
	"testing"

	"lapwing/pipeline/place"
)

// threeTimes are the rows of sheets whose trap is in the lines around them.
const threeTimes = "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n"

// traps are lines around results that speak of something else than a naive reader thinks, each with
// its counter-example; want is as in byHand.
var traps = []struct{ name, text, want string }{
	{"a league and its fixture", "Mill Valley League\nFixture 3: Alder Bank\n3 January 2026\n" + threeTimes, "alder-bank 2026-01-03: "},
	{"a stage of a tour", "Mill Valley Tour\nStage 2 of 4 - Alder Bank\n3 January 2026\n" + threeTimes, "alder-bank 2026-01-03: "},
	{"there this once", "Alder Bank 5 km - this week at Mill Leat\n3 January 2026\n" + threeTimes, "mill-leat 2026-01-03: "},
	{"there this once, in German", "Alder Bank, diesmal am Mill Leat\n3 January 2026\n" + threeTimes, "mill-leat 2026-01-03: "},
	{"this week at half past nine", "Alder Bank 5 km - this week at 9:30\n3 January 2026\n" + threeTimes, "alder-bank 2026-01-03: "},
	{"what the course is like", "3 January 2026\n\"Course: 2 laps, flat, grass\"\n" + threeTimes, "asks course-missing"},
	{"what the weather was like", "3 January 2026\n\"Sunny, light wind\"\n" + threeTimes, "asks course-missing"},
	{"where guests came from", "3 January 2026\nWe welcomed visitors from Mill Leat\n" + threeTimes, "asks course-missing"},
	{"where we ran", "We ran at Alder Bank on 3 January 2026\n" + threeTimes, "alder-bank 2026-01-03: "},
	{"a wish from us", "A happy new season from all of us\n3 January 2026\n" + threeTimes, "asks course-missing"},
	{"who signed it", "\"Dale Parkfield, results desk\"\n3 January 2026\n" + threeTimes, "asks course-missing"},
	{"a place with a desk", "\"Rowan Park, results desk\"\n3 January 2026\n" + threeTimes, "rowan-park 2026-01-03: "},
	{"put off from one day to another", "Alder Bank\nPostponed from 3 January 2026 to 10 January 2026\n" + threeTimes, "alder-bank 2026-01-10: "},
	{"put off to a Thursday", "Alder Bank\nPostponed to 8 January 2026\n" + threeTimes, "alder-bank 2026-01-08: "},
	{"a Thursday in Danish", "Alder Bank\nto 8/1/2026\n" + threeTimes, "alder-bank 2026-01-08: "},
	{"the night between two years", "Alder Bank\nNight run 31 December 2025 / 1 January 2026\n" + threeTimes, "asks date-missing"},
	{"when the rules were made", "Alder Bank\nResults according to the rules of 1 March 2024\n" + threeTimes, "asks date-missing"},
	{"faster than last week", "Alder Bank\nFaster than last week, 27 December 2025\n" + threeTimes, "asks date-missing"},
	{"an edition of the list", "Alder Bank\nv2.1.26 final\n" + threeTimes, "asks date-missing"},
	{"a weekend in figures", "Alder Bank\n3./4.1.2026\n" + threeTimes, "asks date-unclear"},
	{"born long ago", "Alder Bank\nIn memory of our founder, born 3 March 1941\n2026\n" + threeTimes, "asks date-missing"},
	{"lived from then to then", "Alder Bank\nIn memory of our founder (3 March 1941 - 9 May 2024)\n" + threeTimes, "asks date-missing"},
	{"the rules and the run", "Alder Bank\nRules as of 1 January 2025\n3 January 2026\n" + threeTimes, "alder-bank 2026-01-03: "},
	{"when it was first held", "\"Alder Bank run 212, first held 4 January 2020\"\n3 January 2026\n" + threeTimes, "alder-bank 2026-01-03: "},
	{"a day of the year", "Alder Bank\n\"New Year's Eve, 31 December 2025\"\n" + threeTimes, "alder-bank 2025-12-31: "},
	{"last year's times", "Alder Bank\n3 January 2026\nPos,Name,Last year,Today\n1,Jo Lee,19:20,18:20\n2,Al Roe,19:31,18:31\n3,Cy Dee,17:40,18:40\n", "alder-bank 2026-01-03: "},
	{"another course and why", "Alder Bank (alternative course because of flooding)\n3 January 2026\n" + threeTimes, "alder-bank-alternative-route 2026-01-03: "},
	{"two columns of names of different people", "Alder Bank\n3 January 2026\nPos,Name,Name,Time\n1,Jo Lee,Ed Gow,18:20\n2,Al Roe,Ida Kay,18:31\n3,Cy Dee,Bo Hay,18:40\n", "asks names-unclear"},
	{"two columns of names of the same people", "Alder Bank\n3 January 2026\nPos,Name,Name,Time\n1,Jo Lee,Lee Jo,18:20\n2,Al Roe,Al Roe,18:31\n3,Cy Dee,Cy Dee,18:40\n", "alder-bank 2026-01-03: "},
	{"a name alone below one that left room for it", "Alder Bank\n3 January 2026\nPos  Name                     Time\n1    Maureen Rowntree-Moss    18:20\n2    Al Roe                   18:31\n3    Cy Dee                   18:40\n     Di Fox\n4    Ed Gow                   18:50\n", "alder-bank 2026-01-03: Maureen Rowntree-Moss 18:20, Al Roe 18:31, Cy Dee 18:40, Ed Gow 18:50"},
	{"another route, by its letter", "Alder Bank\n3 January 2026\nRun on the B course today\n" + threeTimes, "alder-bank-b-route 2026-01-03: "},
	{"another way round, in a sentence", "Alder Bank\n3 January 2026\nCourse run in reverse direction\n" + threeTimes, "alder-bank-reverse-route 2026-01-03: "},
	{"next week's route", "Alder Bank\n3 January 2026\nNext week we run on the B course\n" + threeTimes, "alder-bank 2026-01-03: "},
}

// A place on each line is where people come from where one ranking goes through all of them and a
// title names the course; else it is the course.
func TestPlaceOfEach(t *testing.T) {
	const rows = "1,Jo Lee,Alder Bank,18:20\n2,Al Roe,Mill Leat,18:31\n3,Cy Dee,Alder Bank,18:40\n4,Di Fox,Mill Leat,18:44\n5,Ed Gow,Alder Bank,19:20\n6,Fay Hill,Mill Leat,19:40\n"
	for text, want := range map[string]string{
		"Heron Pool 3 January 2026\nPos,Name,Location,Time\n" + rows:                                                                                "heron-pool",
		"Results 3 January 2026\nPos,Name,Location,Time\n" + rows:                                                                                   "",
		"Heron Pool 3 January 2026\nPos,Name,Location,Time\n" + strings.NewReplacer("4,Di", "1,Di", "5,Ed", "2,Ed", "6,Fay", "3,Fay").Replace(rows): "",
	} {
		s, err := Read("x.csv", []byte(text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Parts[0].Course.Value; got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Numbers without a heading that stand once each are taken for ages in a small field, and said; in a
// large one they are no ages.
func TestBareAges(t *testing.T) {
	for n, want := range map[int]Meaning{9: Age, 20: Other} {
		text := "Alder Bank 3 January 2026\n"
		for i := range n {
			text += fmt.Sprintf("%d,%s %s,%d,%d:%02d\n", i+1, []string{"Jo", "Al", "Cy", "Di"}[i%4], []string{"Lee", "Roe", "Dee", "Fox", "Gow"}[i%5], 20+(i*37)%50, 18+i, 10+i)
		}
		s, err := Read("x.csv", []byte(text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p := s.Parts[0]
		if got := p.Columns[2].Meaning; got != want || p.says("ages-without-heading", p.HeadingRow) != (want == Age) {
			t.Errorf("%d lines: %v, %+v", n, got, p.Problems)
		}
	}
}

// A list under words that the sex was not said has none, and a draft beside the final result does not count.
func TestSexNotStatedAndDraft(t *testing.T) {
	got := readByHand("x.csv", []byte("Alder Bank\n3 January 2026\nMen\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\nWomen\n1,Cy Dee,18:40\n2,Di Fox,18:44\nSex not stated\n1,Ed Gow,19:20\n2,Fay Hill,19:40\n"))
	if want := "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 18:44, Ed Gow 19:20, Fay Hill 19:40"; got != want {
		t.Errorf("read %q\nwant %q", got, want)
	}
	const head = "Alder Bank\n3 January 2026\nPos|Name|Time\n"
	s, err := Read("x.xlsx", bookOf(t, "== final\n"+head+"1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n== draft\n"+head+"1|Jo Lee|18:21\n2|Al Roe|18:33\n3|Cy Dee|18:44\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Parts) != 1 || s.Parts[0].Tab != "final" {
		t.Errorf("%d parts", len(s.Parts))
	}
}

func TestTraps(t *testing.T) {
	for _, c := range traps {
		t.Run(c.name, func(t *testing.T) {
			want := c.want
			if strings.HasSuffix(want, ": ") {
				want += "Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40"
			}
			if got := readByHand("x.csv", []byte(c.text)); got != want {
				t.Errorf("read %q\nwant %q", got, want)
			}
		})
	}
}

// A column beside the names and times of several people says nothing of them where its heading or a
// line beside the table says of whom or of what it is.
func TestColumnsOfOthers(t *testing.T) {
	for _, c := range []struct {
		heading, cells, below string
		want                  Meaning
	}{
		{"Dog's age", "7 4 9 5", "", Other},
		{"Age", "47 34 59 25", "", Age},
		{"Coach sex", "F M M F", "", Other},
		{"Sex", "F M M F", "", Sex},
		{"Mother's age", "47 34 59 25", "", Other},
		{"Age of car", "7 4 9 5", "", Other},
		{"Age of runner", "47 34 59 25", "", Age},
		{"Status last week", "DNF OK DNF OK", "", Other},
		{"Last week", "DNF - - DNF", "", Other},
		{"Status", "DNF OK DNF OK", "", Status},
		{"Letzter Lauf", "2024-06-02 2023-03-13 2024-10-12 2024-01-06", "", Other},
		{"Partner's date of birth", "1.2.1980 3.4.1990 5.6.1970 7.8.1988", "", Other},
		{"Member", "M V V M", "", Other},
		{"T-shirt", "M F M F", "", Other},
		{"F", "F - - F", "F = first time here", Other},
		{"F", "F F F F", "Key: F = finished, D = did not finish", Other},
		{"F", "F - - F", "F = female", Sex},
	} {
		v := strings.ReplaceAll(c.cells, "-", "")
		cells := strings.Split(v, " ")
		text := "Alder Bank\n3 January 2026\nPos,Name," + c.heading + ",Time\n1,Jo Lee," + cells[0] + ",18:20\n2,Al Roe," + cells[1] + ",18:31\n3,Cy Dee," + cells[2] + ",18:40\n4,Di Fox," + cells[3] + ",18:42\n\n" + c.below + "\n"
		s, err := Read("x.csv", []byte(text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, col := range s.Parts[0].Columns {
			if col.Heading == c.heading && col.Meaning != c.want {
				t.Errorf("%s (%s): %v, want %v: %s", c.heading, c.below, col.Meaning, c.want, col.Why)
			}
		}
	}
	for heading, want := range map[string]Meaning{"Division": Other, "Age group": Age} {
		s, err := Read("x.csv", []byte("Alder Bank\n3 January 2026\nPos,Name,"+heading+",Time\n1,Jo Lee,41,18:20\n2,Al Roe,42,18:31\n3,Cy Dee,41,18:40\n4,Di Fox,43,18:44\n5,Ed Gow,42,19:20\n6,Fay Hill,41,19:40\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Parts[0].Columns[2].Meaning; got != want {
			t.Errorf("%s: %v, want %v", heading, got, want)
		}
	}
	s, err := Read("x.csv", []byte("Alder Bank\n3 January 2026\nPos,Name of guide,Runner,Time,Mean of last 5\n1,Ed Gow,Jo Lee,18:20,18:40\n2,Ida Kay,Al Roe,18:31,18:50\n3,Bo Hay,Cy Dee,18:40,18:30\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if c := s.Parts[0].Columns; c[1].Meaning != Other || c[2].Meaning != Name || c[4].Meaning != PersonalBest {
		t.Errorf("read %v %v %v", c[1].Meaning, c[2].Meaning, c[4].Meaning)
	}
}

// The total of the runs in the columns is the time of none of them.
func TestTotalBesideRuns(t *testing.T) {
	got := readByHand("x.csv", []byte("Alder Bank\nPos,Name,03/01/2026,17/01/2026,Total\n1,Jo Lee,18:20,18:10,36:30\n2,Al Roe,18:31,18:41,37:12\n3,Cy Dee,18:40,18:59,37:39\n4,Di Fox,19:40,19:59,39:39\n"))
	if want := "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31, Cy Dee 18:40, Di Fox 19:40; alder-bank 2026-01-17: Jo Lee 18:10, Al Roe 18:41, Cy Dee 18:59, Di Fox 19:59"; got != want {
		t.Errorf("read %q\nwant %q", got, want)
	}
}

// A line that says that the course was short or long is pointed out, one that says what it is like
// is not.
func TestOffLength(t *testing.T) {
	for line, want := range map[string]bool{
		"Please note: course about 200 m short today": true, "the turn was placed too early; the course was short by about 300 m": true,
		"Die Strecke war zu kurz": true, "Parcours 300 m trop court": true, "Banan 300 m för kort": true, "Trasa krótsza o 300 m": true, "Course about 4.6 km today": true, "Course 4.8 km on GPS": true, "Only two of three laps because of ice": true,
		"Everyone after 5th was sent the wrong way": true, "Turning point 100 m too early": true, "Short speech by the mayor": false, "Two long laps of the lake": false, "Three laps": false, "Next week a short course because of works": false,
		"lap 2 was 80 m too long": true, "Short course": false, "course is 5 km long": false,
		"The course was long and muddy": false, "Alder Bank long course": false, "Last week the course was 100 m short": false,
	} {
		s, err := Read("x.csv", []byte("Alder Bank\n3 January 2026\n"+line+"\n"+threeTimes), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Parts[0].says("course-length-said", 0); got != want {
			t.Errorf("%q: %v", line, got)
		}
	}
}

// The distance that a line gives for the day is that of the run, and no other that it speaks of.
func TestLengthToday(t *testing.T) {
	for line, want := range map[string]string{
		"Course shortened to 3 km": "3000", "Strecke heute nur 3 km": "3000", "Parcours raccourci (3 km)": "3000", "Percorso ridotto 3 km": "3000", "Distance 3 km (diversion)": "3000",
		"Course about 3 km today": "5000", "Next week the course is 3 km because of works": "5000", "Juniors ran 3 km today": "5000", "Short of 3 marshals today": "5000",
	} {
		for _, text := range []string{"Alder Bank 5k 3 January 2026\n" + line + "\n" + threeTimes, "Alder Bank 5k 3 January 2026\n" + threeTimes + "\n" + line + "\n"} {
			s, err := Read("x.csv", []byte(text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			if got := s.Parts[0].Distance.Value; got != want {
				t.Errorf("%q: %s", line, got)
			}
		}
	}
}

// Two places, one in the title and one in the name of the file or the tab, are asked about unless one
// of them is known, or they have a word in common.
func TestTwoPlaces(t *testing.T) {
	known := Options{Courses: []CourseName{{Course: "mill-leat-meadow", Weekday: -1}}}
	for _, c := range []struct {
		file, title string
		o           Options
		want        string
	}{
		{"mill-meadow_2026-01-03.csv", "Alder Bank", Options{}, "course-unclear"},
		{"mill meadow 3 jan.csv", "Alder Bank", Options{}, "course-unclear"},
		{"mill-leat-meadow_2026-01-03.csv", "Alder Bank", known, "mill-leat-meadow"},
		{"alder-meadow_2026-01-03.csv", "Alder Bank", Options{}, "alder-meadow"},
		{"mill-harriers_2026-01-03.csv", "Alder Bank", Options{}, "mill-harriers"},
		{"results.csv", "Alder Bank", Options{}, "alder-bank"},
		{"from Gwen Whitlow.csv", "Results", Options{}, "course-missing"},
		{"from Alder Bank.csv", "Results", Options{}, "alder-bank"},
	} {
		s, err := Read(c.file, []byte(c.title+"\n3 January 2026\n"+threeTimes), c.o)
		if err != nil {
			t.Fatal(err)
		}
		got := s.Parts[0].Course.Value
		for _, p := range s.Parts[0].Problems {
			if p.Severity == place.Waits {
				got = p.Kind
			}
		}
		if got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.file, c.title, got, c.want)
		}
	}
}

// A column under an unknown heading that looks like sexes or years of birth is read so, and that is said;
// so are the times that a few lines have beside their own.
func TestColumnsToLookAt(t *testing.T) {
	for _, c := range []struct{ heading, cells, kind string }{
		{"Meal", "M F M F M M F M", "column-by-values"},
		{"Sex", "M F M F M M F M", ""},
		{"", "M F M F M M F M", ""},
		{"Penalty", "- - 0:30 - - - - -", "time-beside-time"},
		{"Last week", "- - 18:30 - - - - -", ""},
		{"Best", "- - 18:30 - - - - -", ""},
		{"Start", "9:00 9:00 9:00 9:00 9:00 9:00 9:00 9:00", ""},
	} {
		text := "Pos,Name," + c.heading + ",Time\n"
		for i, v := range strings.Split(strings.ReplaceAll(c.cells, "-", ""), " ") {
			text += fmt.Sprintf("%d,Jo Lee%c,%s,18:%02d\n", i+1, 'a'+i, v, 20+i)
		}
		s, err := Read("alder-bank_2026-01-03.csv", []byte(text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, p := range s.Parts[0].Problems {
			got = p.Kind
		}
		if got != c.kind {
			t.Errorf("%s: %q, want %q", c.heading, got, c.kind)
		}
	}
}

// "First three women" over some of those above is no list of women beside one of men.
func TestFirstOfThem(t *testing.T) {
	const list = "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Di Fox,18:40\n4,Cy Dee,18:44\n\n"
	for below, want := range map[string]string{
		"First three women\n1,Jo Lee,18:20\n2,Di Fox,18:40\n":            "",
		"Ladies first\n1,Jo Lee,18:20\n2,Di Fox,18:40\n":                 "",
		"Women first, then men\n1,Ed Gow,18:20\n2,Gus Orr,18:40\n":       "women",
		"Zuerst die Frauen\n1,Ed Gow,18:20\n2,Gus Orr,18:40\n":           "women",
		"First ladies, then gentlemen\n1,Ed Gow,18:20\n2,Bo Hay,18:40\n": "women",
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(list+strings.ReplaceAll(below, "Women first, then men", "\"Women first, then men\"")), Options{})
		if err != nil {
			t.Fatal(err)
		}
		got, p := "", s.Parts[0]
		p.Each(func(row int, cells []string) error {
			if got == "" {
				got = cellAt(cells, p.Index(Sex))
			}
			return nil
		})
		if got != want {
			t.Errorf("%q: %q, want %q", below, got, want)
		}
	}
}

// A date that nothing but a sentence gives, which may speak of another day, is pointed out.
func TestDateInASentence(t *testing.T) {
	for line, want := range map[string]bool{
		"Lost property from 3 January 2026 is with Bess": true, "Strecke vermessen am 3.1.2026": true, "In memory of Tom Hill (3 January 2026)": true,
		"3 January 2026": false, "Saturday 3 January 2026, cold and wet": false, "Results of 3 January 2026": false, "Harvest Run 3 January 2026": false, "Race date: 3 January 2026": false,
	} {
		for file, only := range map[string]bool{"x.csv": true, "alder-bank_2026-01-03.csv": false} {
			s, err := Read(file, []byte("Alder Bank 5k\n\""+line+"\"\n"+threeTimes), Options{})
			if err != nil {
				t.Fatal(err)
			}
			if got := s.Parts[0].says("date-in-a-sentence", 0); got != (want && only) {
				t.Errorf("%s: %q: told %v", file, line, got)
			}
		}
	}
}

// A tab whose name says that it is of another day, or does not stand, is left out beside the results; other
// tabs that are taken for one run, with places from 1 on each, are pointed out.
func TestTabsOfOneRun(t *testing.T) {
	const results = "== Results\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n"
	const others = "\nPos|Name|Time\n1|Di Fox|19:20\n2|Ed Gow|19:31\n3|Ida Kay|19:40\n"
	for tab, want := range map[string]string{
		"Last week": "3 tab-left-out", "Old": "3 tab-left-out", "Backup results": "3 tab-left-out", "Vorwoche": "3 tab-left-out",
		"Week 22": "6 lists-of-one-run", "Sheet2": "6 lists-of-one-run",
		"Women": "6 ", "M40": "6 ", "Wave 2": "6 ", "Late entries": "6 ", "Old\n3 January 2026": "6 lists-of-one-run", "10 January 2026": "6 ", "Last week\n27 December 2025": "6 ",
	} {
		for _, text := range []string{results + "== " + tab + others, "== " + tab + others + results} {
			s, err := Read("alder-bank_2026-01-03.xlsx", bookOf(t, text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			lines, kinds := 0, []string(nil)
			note := func(all []place.Problem) {
				for _, q := range all {
					if q.Kind == "lists-of-one-run" || q.Kind == TabLeftOut {
						kinds = append(kinds, q.Kind)
					}
				}
			}
			for _, p := range s.Parts {
				lines += p.lineCount()
				note(p.Problems)
			}
			note(s.Problems)
			if got := fmt.Sprint(lines, " ", strings.Join(kinds, " ")); got != want {
				t.Errorf("%q: %q, want %q", text, got, want)
			}
		}
	}
}

// The words over a list beside another are no course where the list goes on with the other, or has
// lines of it; else they are pointed out.
func TestWordsOverListBeside(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"it goes on", "Alder Bank 3 January 2026,,,,continued,,\nPos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,4,Di Fox,19:20\n2,Al Roe,18:31,,5,Ed Gow,19:31\n3,Cy Dee,18:40,,6,Ida Kay,19:40\n", "alder-bank 3, alder-bank 3; "},
		{"who won", "Alder Bank 3 January 2026,,,,Best veterans,,\nPos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,1,Jo Lee,18:20\n2,Al Roe,18:31,,2,Al Roe,18:31\n3,Cy Dee,18:40,,3,Di Fox,18:45\n4,Di Fox,18:45,,,,\n", "alder-bank 4; "},
		{"others", "Alder Bank 3 January 2026,,,,Not counted,,\nPos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,1,Bo Hay,18:26\n2,Al Roe,18:31,,2,Ann Poe,18:35\n3,Cy Dee,18:40,,3,Ed Gow,18:47\n", "alder-bank 3, not-counted 3; course-over-list"},
		{"another day", "Alder Bank 3 January 2026,,,,Mill Leat 4 January 2026,,\nPos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,1,Bo Hay,18:26\n2,Al Roe,18:31,,2,Ann Poe,18:35\n3,Cy Dee,18:40,,3,Ed Gow,18:47\n", "alder-bank 3, mill-leat 3; runs-in-columns runs-in-columns"},
		{"the sexes", "Alder Bank 3 January 2026,,,,,,\nMen,,,,Women,,\nPos,Name,Time,,Pos,Name,Time\n1,Jo Lee,18:20,,1,Bo Hay,18:26\n2,Al Roe,18:31,,2,Ann Poe,18:35\n3,Cy Dee,18:40,,3,Ed Gow,18:47\n", "alder-bank 3, alder-bank 3; "},
	} {
		s, err := Read("x.csv", []byte(c.text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var runs, kinds []string
		for _, p := range s.Parts {
			runs = append(runs, fmt.Sprint(p.Course.Value, " ", p.lineCount()))
			for _, q := range p.Problems {
				kinds = append(kinds, q.Kind)
			}
		}
		if got := strings.Join(runs, ", ") + "; " + strings.Join(kinds, " "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A list below the results that is taken for something else is not left out in silence where it has times of
// others.
func TestListsLeftOutAreSaid(t *testing.T) {
	for over, want := range map[string]string{"Late entries": "7 list-under-line", "Entries": "4 list-left-out", "Course records": "4 table-left-out", "All-time top five": "4 table-left-out"} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte("Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n4,Ed Gow,18:44\n\n"+over+"\n1,Di Fox,17:20\n2,Ida Kay,17:31\n3,Bo Hay,17:40\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		kinds := ""
		for _, q := range s.Parts[0].Problems {
			kinds += q.Kind
		}
		if got := fmt.Sprint(s.Parts[0].lineCount(), " ", kinds); got != want {
			t.Errorf("%s: %q, want %q", over, got, want)
		}
	}
}
