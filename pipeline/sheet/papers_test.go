package sheet

import (
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// Papers of a club that are no results have no part; lists that look like them have.
func TestOtherPapers(t *testing.T) {
	for _, c := range []struct {
		name, file, text string
		why              string // "" where it is a list of results or volunteers
	}{
		{"addresses", "contacts.csv", "Contacts\nName,Phone,Role\nJo Lee,01234 567,chair\nAl Roe,01234 568,clerk\n", "addresses"},
		{"members", "members.csv", "Name,Address,Date of birth,Joined\nJo Lee,1 Mill Lane,03/04/1980,2019\nAl Roe,2 Mill Lane,05/06/1981,2020\n", "addresses"},
		{"entries", "Garrow Moss 2026-01-03 entries.csv", "No,Name,Club,Category\n101,Jo Lee,Vale,M40\n102,Al Roe,Vale,M45\n", "entered"},
		{"a list of handicaps", "Garrow Moss handicap list 2026-01-03.csv", "Name,Handicap,Estimated time,Start at\nJo Lee,19:58,20:01,19:31\nAl Roe,18:31,21:28,19:31\nSam Field,18:08,21:51,19:20\nCy Dee,15:13,24:46,19:11\nDi Fox,11:01,28:58,19:02\n", "its headings are of names"},
		{"a start list", "Garrow Moss 2026-01-03.csv", "Start list\nNo,Name,Club\n1,Jo Lee,Vale\n2,Al Roe,Vale\n", "entered"},
		{"minutes", "notes.txt", "Minutes of the committee meeting of 3 January 2026 at Garrow Moss\n\nPresent: Jo Lee, Al Roe\n\n1. Apologies: Cy Dee\n2. Accounts: balance 412.50\n3. AOB: start moved to 9:00, finish funnel 2 m wide\n", "meeting"},
		{"teams", "Garrow Moss 2026-01-03 teams.csv", "Pos,Team,Counters,Points,Total time\n1,Vale AC,1-4-5,10,1:01:15\n2,Tern AC,2-3-9,14,1:02:10\n", "teams"},
		{"an empty form", "Garrow Moss 2026-01-03.csv", "Pos,Name,Club,Time\n1,,,\n2,,,\n3,,,\n", "filled in"},
		{"a form half filled in", "Garrow Moss 2026-01-03.csv", "Pos,Name,Club,Time\n1,Jo Lee,Vale,18:20\n2,Al Roe,,18:31\n3,,,\n", ""},
		{"helpers with telephones", "Garrow Moss 2026-01-03 volunteers.csv", "Name,Role,Mobile\nJo Lee,Marshal,07700 1\nAl Roe,Timekeeper,07700 2\n", ""},
		{"names of those who entered at their places", "Garrow Moss 2026-01-03 entries.csv", "Position,Name,Club\n1,Jo Lee,Vale\n2,Al Roe,Vale\n3,Cy Dee,Vale\n", ""},
		{"the half with the names, and e-mail addresses", "Garrow Moss 2026-01-03 positions.csv", "#,Name,Email\n1,Jo Lee,jo@vale.example\n2,Al Roe,al@vale.example\n3,Cy Dee,cy@vale.example\n", ""},
		{"results with e-mail addresses", "Garrow Moss 2026-01-03.csv", "Pos,Name,Email,Time\n1,Jo Lee,jo@vale.example,18:20\n2,Al Roe,al@vale.example,18:31\n3,Cy Dee,cy@vale.example,18:41\n", ""},
	} {
		s, err := Read(c.file, []byte(c.text), Options{})
		said := ""
		if err != nil {
			said = err.Error()
		}
		switch {
		case c.why == "" && (err != nil || len(s.Parts) != 1):
			t.Errorf("%s: refused: %v", c.name, err)
		case c.why != "" && (err == nil || !strings.Contains(said, c.why)):
			t.Errorf("%s: %q, want it refused as of %s", c.name, said, c.why)
		}
	}
}

// A tab that is called after a day in June names no group of juniors.
func TestTabOfAJuneDay(t *testing.T) {
	data := workbook(t, func(f *excelize.File) {
		f.SetSheetName("Sheet1", "13 Jun")
		f.NewSheet("20 Jun")
		for _, day := range []string{"13", "20"} {
			setRows(t, f, day+" Jun", []any{"Garrow Moss, " + day + " June 2026"}, []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:2" + day[:1]}, []any{2, "Al Roe", "19:0" + day[:1]})
		}
	})
	s, err := Read("book.xlsx", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range s.Parts {
		if len(p.Columns) != 3 {
			t.Errorf("tab %s has columns %v", p.Tab, p.Columns)
		}
	}
}

// A tab without a date is left out where all its lines stand on tabs that have one,
// and asked about where one does not.
func TestUndatedTab(t *testing.T) {
	for _, c := range []struct {
		time string
		asks int
	}{{"18:20", 0}, {"18:10", 1}} {
		data := workbook(t, func(f *excelize.File) {
			f.SetSheetName("Sheet1", "Fastest")
			setRows(t, f, "Fastest", []any{"Fastest so far"}, []any{"Name", "Time"}, []any{"Jo Lee", c.time})
			for _, day := range []string{"3", "10"} {
				f.NewSheet(day + " January 2026")
				setRows(t, f, day+" January 2026", []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "19:0" + day[:1]}, []any{3, "Cy Dee", "20:0" + day[:1]})
			}
		})
		s, err := Read("Garrow Moss.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		asks := 0
		for _, q := range s.Problems {
			if q.Kind == TabLeftOut {
				asks++
			}
		}
		if len(s.Parts) != 2 || asks != c.asks {
			t.Errorf("best time %s: %d parts, want 2; %d questions, want %d", c.time, len(s.Parts), asks, c.asks)
		}
	}
}

// The year before an M for men is no distance; metres are.
func TestYearIsNoDistance(t *testing.T) {
	for text, want := range map[string]float64{"results 11-04-2026 M": 0, "results 2026 m": 0, "2000 m": 2000, "3000m": 3000, "2050 metres": 2050, "5 km": 5000} {
		if m, _, _, _ := findDistance(text); m != want {
			t.Errorf("%q is %v m, want %v", text, m, want)
		}
	}
}
