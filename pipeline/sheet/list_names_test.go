package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// listsUnder writes lists one under the other, each under its name in one form. Headings are
// "same", "other" (each list has columns of its own) or "once" (over the first list only).
func listsUnder(title, form, headings string, blankUnder bool, names ...string) string {
	columns := []struct{ heading, row string }{{"Pos,Name,Time", "%[1]d,%[2]s,%[3]s"}, {"Name,Category,Time", "%[2]s,V40,%[3]s"}, {"Time,Name,Pos", "%[3]s,%[2]s,%[1]d"}}
	var b strings.Builder
	if title != "" {
		b.WriteString(title + "\n\n")
	}
	for i, name := range names {
		fmt.Fprintln(&b, strings.ReplaceAll(form, "%", name))
		if blankUnder {
			b.WriteByte('\n')
		}
		c := columns[0]
		if headings == "other" {
			c = columns[i%len(columns)]
		}
		if headings != "once" || i == 0 {
			fmt.Fprintln(&b, c.heading)
		}
		for k := range 5 {
			fmt.Fprintf(&b, c.row+"\n", k+1, fmt.Sprintf("Ann List%c", 'a'+5*i+k), fmt.Sprintf("%d:%02d", 20+k, 10*i+k))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// coursesOfRows gives, in the order of the sheet, the course of each list of five.
func coursesOfRows(t *testing.T, name, text string) []string {
	t.Helper()
	s, err := Read(name, []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, p := range s.Parts {
		if err := p.Each(func(_ int, cells []string) error {
			got[cellAt(cells, p.Index(Name))] += p.Course.Value
			return nil
		}); err != nil {
			t.Fatal(err)
		}
	}
	var out []string
	for i, who := range slices.Sorted(maps.Keys(got)) {
		if i%5 == 0 {
			out = append(out, got[who])
		} else if got[who] != out[len(out)-1] {
			t.Errorf("%s: the list of %s is divided among %s and %s", name, who, out[len(out)-1], got[who])
		}
	}
	return out
}

func TestListsOfSeveralCourses(t *testing.T) {
	titles := []string{"", "Saturday 21 November 2026", "Results of our runs on 21 November 2026", "Vale runs, Saturday 21 November 2026"}
	forms := []string{"%", "% results", "% 5k", "% (5 finishers)", "Course: %", "Venue: %", "%:", "-- % --", "%, 21 November 2026", "% - 21.11.2026", "% #214",
		"%\n21 November 2026", "21 November 2026\n%", "Course,%,Date 21/11/2026", "Course,%,Date,21/11/2026", "Course,%,Date,21/11/2026,Weather,dry", "Course:,%\nDate:,21/11/2026"}
	lists := [][]string{{"Alder Moor", "Castle Green"}, {"Alder Moor", "Castle Green", "Bryn Coed"}, {"Alder Moor", "Alder Moor", "Castle Green"}}
	for _, title := range titles {
		for _, form := range forms {
			if title == "" && !strings.Contains(form, "2026") {
				continue // a sheet without a date
			}
			for _, headings := range []string{"same", "other", "once"} {
				for _, names := range lists {
					if headings == "once" && names[0] == names[1] {
						continue // the second might be more of the first
					}
					for _, blank := range []bool{false, true} {
						if blank && headings == "once" {
							continue // a line between two blank rows, over nothing
						}
						var want []string
						for _, n := range names {
							want = append(want, Slug(n))
						}
						text := listsUnder(title, form, headings, blank, names...)
						if got := coursesOfRows(t, "sheet.csv", text); !slices.Equal(got, want) {
							t.Errorf("got %q, want %q, of\n%s", got, want, text)
						}
					}
				}
			}
		}
	}
}

func TestListsSideBySideUnderDates(t *testing.T) {
	for _, over := range []string{
		"\"Alder Moor, 14 November 2026\",,,,\"Castle Green, 21 November 2026\",,,,\"Bryn Coed, 28 November 2026\",,",
		"Alder Moor,,,,Castle Green,,,,Bryn Coed,,\n14/11/2026,,,,21/11/2026,,,,28/11/2026,,",
		"14/11/2026,,,,21/11/2026,,,,28/11/2026,,\nAlder Moor,,,,Castle Green,,,,Bryn Coed,,",
	} {
		var b strings.Builder
		b.WriteString(over + "\nPos,Name,Time,,Pos,Name,Time,,Pos,Name,Time\n")
		for k := range 5 {
			fmt.Fprintf(&b, "%[1]d,Ann List%[2]c,2%[1]d:10,,%[1]d,Ann List%[3]c,2%[1]d:20,,%[1]d,Ann List%[4]c,2%[1]d:30\n", k+1, 'a'+k, 'f'+k, 'k'+k)
		}
		if got, want := coursesOfRows(t, "sheet.csv", b.String()), []string{"alder-moor", "castle-green", "bryn-coed"}; !slices.Equal(got, want) {
			t.Errorf("got %q, want %q, of\n%s", got, want, b.String())
		}
	}
}

// Where the title names the course, names over lists are of those who ran.
func TestListsOfOneCourse(t *testing.T) {
	for _, title := range []string{"Alder Moor, Saturday 21 November 2026", "Results Alder Moor 5k 21/11/2026"} {
		for _, names := range [][]string{{"Early birds", "Late risers", "Middle pack"}, {"Vale Harriers", "Dunmere Joggers", "Bryn Striders"}, {"Wave 1", "Wave 2", "Wave 3"}, {"Oak House", "Elm House", "Birch House"}, {"Morning group", "Evening group", "Noon group"}, {"Beginners", "Improvers", "Regulars"}} {
			for _, form := range []string{"%", "% results", "%:", "% (5 finishers)", "-- % --"} {
				for _, headings := range []string{"same", "other", "once"} {
					text := listsUnder(title, form, headings, false, names...)
					if got, want := coursesOfRows(t, "sheet.csv", text), []string{"alder-moor", "alder-moor", "alder-moor"}; !slices.Equal(got, want) {
						t.Errorf("got %q, want %q, of\n%s", got, want, text)
					}
				}
			}
		}
	}
}

// Without places, a line over a list is nobody whose time was not taken.
func TestLinesOverListsWithoutPlaces(t *testing.T) {
	for _, form := range []string{"%", "% run", "%, 21 November 2026"} {
		text := strings.NewReplacer("Pos,", "", "1,Ann", "Ann", "2,Ann", "Ann", "3,Ann", "Ann", "4,Ann", "Ann", "5,Ann", "Ann").Replace(listsUnder("Saturday 21 November 2026", form, "same", false, "Alder Moor", "Castle Green", "Bryn Coed"))
		if got, want := coursesOfRows(t, "sheet.csv", text), []string{"alder-moor", "castle-green", "bryn-coed"}; !slices.Equal(got, want) {
			t.Errorf("got %q, want %q, of\n%s", got, want, text)
		}
	}
}

// Bare names between a blank row and a list that begins anew are over lists, in a text without headings
// and without places, or with those of some of the field.
func TestBareNamesOverLists(t *testing.T) {
	for _, tc := range []struct {
		title string
		names []string
		want  []string
	}{
		{"Vale Harriers round-up, Saturday 21 November 2026", []string{"Alder Moor", "Castle Green", "Bryn Coed"}, []string{"alder-moor", "castle-green", "bryn-coed"}},
		{"Saturday 21 November 2026", []string{"Alder Moor", "Castle Green"}, []string{"alder-moor", "castle-green"}},
		{"Alder Moor, Saturday 21 November 2026", []string{"Vale Harriers", "Fen Runners", "Bryn Striders"}, []string{"alder-moor", "alder-moor", "alder-moor"}},
	} {
		for _, places := range []string{"", "7 12 31 40 88"} {
			text := tc.title + "\n"
			for i, name := range tc.names {
				text += "\n" + name + "\n"
				for k := range 5 {
					if places != "" {
						text += strings.Fields(places)[k] + " "
					}
					text += fmt.Sprintf("Ann List%c %d:%02d\n", 'a'+5*i+k, 20+k, 10*i+k)
				}
			}
			if got := coursesOfRows(t, "sheet.txt", text); !slices.Equal(got, tc.want) {
				t.Errorf("got %q, want %q, of\n%s", got, tc.want, text)
			}
		}
	}
	colons := "Saturday 21 November 2026\nALDER MOOR:\n9 Ann Lista 20:10\n18 Ann Listb 21:10\n33 Ann Listc 22:10\n35 Ann Listd 22:20\n40 Ann Liste 22:30\nCASTLE GREEN:\n3 Ann Listf 20:00\n20 Ann Listg 21:00\n34 Ann Listh 22:00\n38 Ann Listi 22:30\n41 Ann Listj 22:40\n"
	if got := coursesOfRows(t, "sheet.txt", colons); !slices.Equal(got, []string{"alder-moor", "castle-green"}) {
		t.Errorf("got %q of\n%s", got, colons)
	}
	// who came late is of the same run
	text := "21 November 2026\nAlder Moor\nAnn Lista 20:10\nAnn Listb 21:10\nAnn Listc 22:10\n\nLate Finishers\nAnn Listd 40:10\nAnn Liste 41:10\n"
	if got := coursesOfRows(t, "sheet.txt", text); !slices.Equal(got, []string{"alder-moor"}) {
		t.Errorf("got %q of\n%s", got, text)
	}
}

func TestTooManyLists(t *testing.T) {
	text := listsUnder("Saturday 21 November 2026", "%", "same", false, "Alder Moor", "Castle Green", "Bryn Coed")
	if _, err := Read("sheet.csv", []byte(text), Options{Limits: Limits{Lists: 3}}); err != nil {
		t.Error(err)
	}
	_, err := Read("sheet.csv", []byte(text), Options{Limits: Limits{Lists: 2}})
	if err == nil || !strings.Contains(err.Error(), "has 3 lists, and at most 2") {
		t.Errorf("got %v", err)
	}
}

// Courses that stand in the cells of dates, and in a row of their own above the days.
func TestCoursesBesideDates(t *testing.T) {
	for _, tc := range []struct {
		name, file, text string
		want             map[string]string // name: run
	}{
		{"in one column", "league.csv", "Run,Name,Time\nAlder Moor 14/11/2026,Jo Lee,18:20\nAlder Moor 14/11/2026,Al Roe,18:31\nCastle Green 21/11/2026,Jo Lee,18:25\nCastle Green 21/11/2026,Cy Dee,19:31\n",
			map[string]string{"Jo Lee": "alder-moor 2026-11-14, castle-green 2026-11-21", "Al Roe": "alder-moor 2026-11-14", "Cy Dee": "castle-green 2026-11-21"}},
		{"the date first, one course, no other name", "x.csv", "Event,Name,Time\n2026-11-14 Alder Moor,Jo Lee,18:20\n2026-11-21 Alder Moor,Jo Lee,18:31\n",
			map[string]string{"Jo Lee": "alder-moor 2026-11-14, alder-moor 2026-11-21"}},
		{"one course, in answers to a form", "How did you do (Responses).csv", "Name,Which run did you do?,Time\nJo Lee,\"Alder Moor, 14 November 2026\",18:20\nAl Roe,\"Alder Moor, 14 November 2026\",18:31\n",
			map[string]string{"Jo Lee": "alder-moor 2026-11-14", "Al Roe": "alder-moor 2026-11-14"}},
		{"beside a file called by course and date", "castle-green_2026-11-14.csv", "Name,Run,Time\nJo Lee,Our outing 14/11/2026,18:20\nAl Roe,Our outing 14/11/2026,18:31\n",
			map[string]string{"Jo Lee": "castle-green 2026-11-14", "Al Roe": "castle-green 2026-11-14"}},
		{"general words beside the date", "alder-moor.csv", "Run,Name,Time\nRun 14/11/2026,Jo Lee,18:20\nRun 21/11/2026,Jo Lee,18:31\n",
			map[string]string{"Jo Lee": "alder-moor 2026-11-14, alder-moor 2026-11-21"}},
		{"days under courses", "x.csv", "Vale series\nName,Alder Moor,Castle Green\n,14/11/2026,21/11/2026\nJo Lee,18:20,18:25\nAl Roe,18:31,\nCy Dee,,19:31\n",
			map[string]string{"Jo Lee": "alder-moor 2026-11-14, castle-green 2026-11-21", "Al Roe": "alder-moor 2026-11-14", "Cy Dee": "castle-green 2026-11-21"}},
	} {
		s, err := Read(tc.file, []byte(tc.text), Options{})
		if err != nil {
			t.Fatal(tc.name, err)
		}
		got := map[string]string{}
		for _, p := range s.Parts {
			if err := p.Each(func(_ int, cells []string) error {
				course, day, _, _ := p.RunOf(cells)
				who := cellAt(cells, p.Index(Name))
				if got[who] != "" {
					got[who] += ", "
				}
				got[who] += course + " " + day.String()
				return nil
			}); err != nil {
				t.Fatal(err)
			}
		}
		if !maps.Equal(got, tc.want) {
			t.Errorf("%s: got %q, want %q", tc.name, got, tc.want)
		}
	}
}

// A legend under the title of a later list goes with it, and not with the winners above.
func TestLegendOverALaterList(t *testing.T) {
	list := "Kind,Time,Name,Place\nMan,22:00,Jo Lee,1\nMan,22:10,Al Roe,2\nMan,22:20,Cy Dee,3\n"
	text := "Alder Moor - 18 July 2026\nDNF = did not finish\n" + list + "\nClass winners\nClass,Name,Time\nM40,Jo Lee,22:00\n\nAlder Moor - 25 July 2026\nDNF = did not finish\n\n" + strings.ReplaceAll(list, "22:", "21:")
	s, err := Read("results.csv", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range s.Parts {
		got = append(got, p.Course.Value+" "+p.Date.Day.String())
	}
	if want := []string{"alder-moor 2026-07-18", "alder-moor 2026-07-25"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Who helped stands between two runs; the names in it are of no course.
func TestHelpersBetweenRuns(t *testing.T) {
	var b strings.Builder
	for i, day := range []string{"sábado, 3 de maio de 2025", "sábado, 26 de abril de 2025", "sábado, 19 de abril de 2025"} {
		fmt.Fprintf(&b, "||Alder Moor – %s\n\n||Lugar|Nome completo|Sexo|Tempo final (s)\n||001|Ann Hill|F|1293.7\n||002|Bo Reed|M|1397.%d\n||003|Cy Dee|M|1654.0\n\n||Volunteers\n||Timekeeper|Iris Marsh\n||Finish tokens|Neil Croft\n||Marshal|%s\n\n\n",
			day, i, []string{"Owen Pond-Erby", "Thijs Kuip-Pers", "Owen Pond-Erby"}[i])
	}
	s, err := Read("results.xlsx", sheetCase{text: b.String()}.asWorkbook(t), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Parts) != 3 {
		t.Errorf("%d runs", len(s.Parts))
	}
	for _, p := range s.Parts {
		if p.Course.Value != "alder-moor" {
			t.Errorf("course %q", p.Course.Value)
		}
	}
}

// Teams, and the best of all times, below the results of each run end with the next run.
func TestOtherListsBelowEachRun(t *testing.T) {
	for _, blank := range []string{"", "\n"} {
		var b strings.Builder
		for _, day := range []string{"18 July 2026", "25 July 2026", "1 August 2026"} {
			b.WriteString("Alder Moor\n" + day + "\n" + blank + "Pos,Name,Club,Time\n")
			for i := range 5 {
				fmt.Fprintf(&b, "%d,Ann List%c,Vale AC,2%d:%02d\n", i+1, 'a'+i, i, len(day)+i)
			}
			b.WriteString("\nTeams\n1,Vale AC,20,\n2,Tarn AC,29,\n\nAll time top 2\n1,Bea Best,,15:01\n2,Cy Best,,15:31\n\n")
		}
		s, err := Read("results.csv", []byte(b.String()), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range s.Parts {
			rows := 0
			if err := p.Each(func(int, []string) error { rows++; return nil }); err != nil {
				t.Fatal(err)
			}
			got = append(got, fmt.Sprintf("%s %s: %d", p.Course.Value, p.Date.Day, rows))
		}
		if want := []string{"alder-moor 2026-07-18: 5", "alder-moor 2026-07-25: 5", "alder-moor 2026-08-01: 5"}; !slices.Equal(got, want) {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// A title that speaks of a district names no course beside the places over its lists.
func TestListsOfADistrict(t *testing.T) {
	for _, title := range []string{"District results Saturday 21 November 2026", "Region: results of 21 November 2026"} {
		got := coursesOfRows(t, "district 2026-11-21.csv", listsUnder(title, "%", "same", false, "Cinder Track", "Kettle Reservoir", "Stoney Ford"))
		if want := []string{"cinder-track", "kettle-reservoir", "stoney-ford"}; !slices.Equal(got, want) {
			t.Errorf("%s: %q", title, got)
		}
	}
}
