package sheet

import (
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
)

// The only day of a sheet is no day of the run where its line says what else it is the day of, or
// that nobody is sure of it; of two days neither is taken.
func TestDaysOfSomethingElse(t *testing.T) {
	read := func(line string) *Part {
		s, err := Read("results.csv", []byte("Alder Bank 5k,,\n"+line+",,\nPos,Name,Time\n1,Al Roe,18:20\n2,Jo Lee,18:31\n3,Cy Dee,18:40\n"), Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatalf("%q: %v", line, err)
		}
		return s.Parts[0]
	}
	for _, line := range []string{"Re-run of 3 January 2026", "Entries close 3 January 2026", "Registration until 3 January 2026", "Prizegiving 3 January 2026", "Founded 3 May 2014", "First run 3 May 2014", "Licence 44 of 3 January 2026", "Protests by 3 January 2026",
		"v2 3 January 2026", "Record: 3.5.2019", "See you on 3 January 2026!", "Course measured 3 January 2025", "Mis à jour le 3 janvier 2026", "Nachholtermin für 3. Januar 2026", "aplazada del 3 de enero de 2026", "Meldeschluss 3. Januar 2026", "week of 3 January 2026",
		"3 January 2026?", "about 3 January 2026", "3 January 2026 (tbc)", "3 January 20??", "3 and 17 January 2026", "3 or 10 January 2026", "3.1./10.1.2026", "03/01/2026 or 10/01/2026", "2026-01-03/10", "3 y 10 de enero de 2026", "Upcoming: 3 January 2026", "Received 3 January 2026", "RIP Ned Tolwick 3.1.2026"} {
		if p := read(line); p.Date.Settled {
			t.Errorf("%q: %v", line, p.Date.Day)
		}
	}
	for _, line := range []string{"3 January 2026", "Run 12, 3 January 2026", "Results of 3 January 2026", "Saturday 3 January 2026", "Sat 3 January 2026 - sunny", "Race 5 - 3 January 2026", "Alder Bank Saturday 3 January 2026", "Held on 3 January 2026", "3 January 2026, postponed from 27 December 2025"} {
		if p := read(line); !p.Date.Settled || p.Date.Day.String() != "2026-01-03" {
			t.Errorf("%q: %v %v", line, p.Date.Settled, p.Date.Day)
		}
	}
}

// A weekday that the sheet names beside a day of the file's name on which it does not fall is told.
func TestWeekdayBesideFileName(t *testing.T) {
	for title, want := range map[string]bool{"Alder Bank Sunday morning": true, "Alder Bank Saturday morning": false} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(title+",,\nPos,Name,Time\n1,Al Roe,18:20\n2,Jo Lee,18:31\n3,Cy Dee,18:40\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := hasProblem(s.Parts[0], "weekday-differs"); got != want {
			t.Errorf("%q: told %v", title, got)
		}
	}
}

func hasProblem(p *Part, kind string) bool {
	for _, q := range p.Problems {
		if q.Kind == kind && q.Severity != place.Note {
			return true
		}
	}
	return false
}

// Rows under a line that says they are of another kind, and begin anew, are noted as such; under a
// line that is not understood they are pointed out. A line over which places go on says nothing.
func TestListsApart(t *testing.T) {
	const above = "Pos,Name,Time\n1,Al Roe,18:20\n2,Jo Lee,18:31\n3,Cy Dee,18:40\n"
	for _, c := range []struct{ below, note, told string }{
		{"Disqualified,,\n1,Ed Fox,18:25\n", "Disqualified", ""},
		{"\nDNF,,\nPos,Name,Time\n1,Ed Fox,18:25\n", "DNF", ""},
		{"Handcycles,,\n1,Ed Fox,18:25\n", "listed apart under “Handcycles”", ""},
		{"Old list,,\n1,Ed Fox,18:25\n", "listed apart under “Old list”", ""},
		{"Out of competition,,\n1,Ed Fox,18:25\n", "listed apart under “Out of competition”", ""},
		{"Disqualified,,\n4,Ed Fox,18:45\n", "Disqualified", ""},
		{"Non classés,,\n4,Ed Fox,18:45\n", "listed apart under “Non classés”", ""},
		{"The other lot,,\n1,Ed Fox,18:25\n", "", "list-under-line"},
		{"page two,,\n4,Ed Fox,18:45\n", "", ""},
		{"Women,,\n1,Eva Fox,18:55\n", "", ""},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(above+c.below), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, note := s.Parts[len(s.Parts)-1], ""
		p.Each(func(_ int, cells []string) error {
			note = cellAt(cells, p.Index(Notes))
			return nil
		})
		if note != c.note || hasProblem(p, "list-under-line") != (c.told != "") {
			t.Errorf("%q: %q, %v", c.below, note, p.Problems)
		}
	}
}

// Lines below the results that take one of them back, or set it in doubt, are told, or noted on its row.
func TestResultsTakenBackInWords(t *testing.T) {
	for line, want := range map[string]bool{"Jo Lee disqualified after protest": true, "Place 2: time estimated": true, "Time of Jo Lee estimated": true, "2. Jo Lee removed": true, "Place 2 should be Ann Fox, not Jo Lee": true, "Places 2 and 3 swapped": true,
		"2nd and 3rd swapped": true, "NB Jo L disqualified (cut the corner)": true, "J Lee DQ": true, "Please note: second was Ben Lee, not Jo": true, "2nd place time was 18:25": true,
		"Jo L made the tea": false, "Second helpings of cake are not left": false, "The course record time is 15:02": false, "Next week is the first of the league": false,
		"Thanks to Jo Lee for the cake": false, "Timekeepers: Ann Fox, Bo Grey": false, "Ann Fox was ill and sends her love": false} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte("Pos,Name,Time\n1,Al Roe,18:20\n2,Jo Lee,18:31\n3,Cy Dee,18:40\n\n\""+line+"\",,\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := hasProblem(s.Parts[0], "corrected-in-words") || s.Parts[0].Index(Notes) >= 0; got != want {
			t.Errorf("%q: told %v", line, got)
		}
	}
}

// What is struck out in a cell of a web page does not count; a cell of nothing else keeps the marks.
func TestStruckOnPage(t *testing.T) {
	text, err := pageText([]byte("<table><tr><th>Pos</th><th>Name</th><th>Time</th></tr><tr><td>1</td><td><del>Al Roe</del></td><td><s>18:40</s> 18:20</td></tr><tr style='text-decoration: line-through'><td>2</td><td>Jo Lee</td><td>18:31</td></tr></table>"), Limits{}.orDefault())
	if err != nil {
		t.Fatal(err)
	}
	if got := string(text); !strings.Contains(got, "1\t~~Al Roe~~\t18:20\n~~2~~\t~~Jo Lee~~\t~~18:31~~") {
		t.Errorf("%q", got)
	}
}

// The name of a tab beside the results says of all its rows that they are none; that of a tab of people who took
// part in another way does not.
func TestTabsApart(t *testing.T) {
	for tab, want := range map[string]string{"Disqualified": "Disqualified", "Virtual": "listed apart under “Virtual”", "Void": "listed apart under “Void”", "Cut the course": "listed apart under “Cut the course”", "Wheelchairs": "", "Late": ""} {
		book := workbook(t, func(f *excelize.File) {
			f.NewSheet(tab)
			setRows(t, f, "Sheet1", []any{"Pos", "Name", "Time"}, []any{1, "Al Roe", "18:20"}, []any{2, "Jo Lee", "18:31"}, []any{3, "Cy Dee", "18:40"})
			setRows(t, f, tab, []any{"Pos", "Name", "Time"}, []any{1, "Ed Fox", "18:55"}, []any{2, "Di Jay", "19:01"})
		})
		s, err := Read("alder-bank_2026-01-03.xlsx", book, Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, note := s.Parts[len(s.Parts)-1], ""
		p.Each(func(_ int, cells []string) error {
			note = cellAt(cells, p.Index(Notes))
			return nil
		})
		if note != want {
			t.Errorf("%q: %q", tab, note)
		}
		if first := s.Parts[0]; first.Index(Notes) >= 0 {
			t.Errorf("%q: the results are noted", tab)
		}
	}
}
