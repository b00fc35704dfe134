package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// What stands under the results and has a time that no result has is said, once.
func TestTimedLinesLeftOut(t *testing.T) {
	var list strings.Builder
	list.WriteString("Pos,Name,Cat,Time\n")
	for i := range 20 {
		fmt.Fprintf(&list, "%d,%s %s,M35,%d:%02d\n", i+1, []string{"Ada", "Ben", "Cal", "Dot"}[i%4], []string{"Dale", "Ings", "Kyle", "Lunn", "Orme"}[i/4], 18+i/2, 10+i)
	}
	tests := []struct {
		name, below, read string
		more              int // rows below that are results
	}{
		{"nothing below", "", "", 0},
		{"a winner again", "\nFirst lady,Dot Dale,W35,19:13\nFirst lady: Dot Dale 19:13\n", "", 0},
		{"first and fastest", "\nFirst home,17:40\n,First home,,17:41\nFastest ever here: 15:58\n", "", 0},
		{"records", "\nRecord holders\n,Jo Lee,M35,15:58\n,Al Roe,M40,16:20\n\n,Kim Dunn,M50,17:01,3 May 2019\n", "", 0},
		{"a start time", "\nStart 9:30\nWalkers started at 9:00\n", "", 0},
		{"a late finisher", "\nRecord holders\n,Jo Lee,M35,15:58\n\n,Sam Late,M60,45:22\nLate: Will Moss 46:10\n", "Sam Late 45:22; Will Moss 46:10", 0},
		{"many", "\n,Sam Late,M60,45:22\n,Una Late,W60,45:21\n,Pip Late,M60,45:24\n,Zoe Late,W60,45:25\n", "Sam Late 45:22; Una Late 45:21; Pip Late 45:24 and 1 more", 0},
		{"a late finisher in minutes", "\nRecord holders\n,Jo Lee,M35,15.97\n\n,Sam Late,M60,45.37\n", "Sam Late 45.37", 0},
		{"walkers, in the order of their times", "\nWalkers\n,Sam Late,M60,45:22\n,Una Late,W60,45:23\n,Pip Late,M60,45:24\n", "", 3},
	}
	for _, tc := range tests {
		t.Run(tc.name, func(t *testing.T) {
			s, err := Read("alder 2026-11-21.csv", []byte(list.String()+tc.below), Options{})
			if err != nil || len(s.Parts) != 1 {
				t.Fatal(err, len(s.Parts))
			}
			got := ""
			for _, p := range s.Parts[0].Problems {
				if p.Kind == "timed-line-left-out" {
					got += p.Read
				}
			}
			if got != tc.read {
				t.Errorf("read %q, want %q", got, tc.read)
			}
			rows := 0
			s.Parts[0].Each(func(int, []string) error { rows++; return nil })
			if want := 20 + tc.more; rows != want {
				t.Errorf("%d rows read, want %d", rows, want)
			}
		})
	}
}

// A result that was taken for a title, as nothing divides it like those below it, is said.
func TestTimedLineAboveResults(t *testing.T) {
	const list = "Al Roe 18:31\nCy Dee 18:40\nDi Fox 18:42\nEd Gow 18:45\nGus Ing 18:50\n"
	for above, want := range map[string]string{
		"Jo Lee 18:20¤\n":               "Jo Lee 18:20",
		"Course record 15:42\n":         "",
		"Fastest runner Jo Lee 15:42\n": "",
		"Start 9:30\n":                  "",
	} {
		s, err := Read("x.txt", []byte("Alder Bank 3 January 2026\n"+above+list), Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, p := range s.Parts[0].Problems {
			if p.Kind == "timed-line-left-out" {
				got += p.Read
			}
		}
		if rows := len(rowsOf(t, s.Parts[0])); got != want || rows != 5 {
			t.Errorf("%q: said %q, want %q (%d rows)", above, got, want, rows)
		}
	}
}

// In a workbook a note of two lines takes one row: what stands after the blank row below it
// stands apart from the results.
func TestRowsAfterNoteOfTwoLines(t *testing.T) {
	data := workbook(t, func(f *excelize.File) {
		setRows(t, f, "Sheet1", []any{"Time", "Last name", "First name", "Position", "Notes"},
			[]any{"18:20", "Moss", "Ada", 1, ""}, []any{"18:31", "Reed", "Ben", 2, ""}, []any{"19:02", "Dee", "Cy", 3, ""}, []any{"19:28", "Fox", "Di", 4, "was in front\nsee you soon"},
			[]any{""}, []any{"First home", "Ada Moss", "18:20"}, []any{"Fastest ever here", "Ruth Penn", "17:02"})
	})
	s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if rows := rowsOf(t, s.Parts[0]); len(rows) != 4 {
		t.Errorf("%q", rows)
	}
}

// The run below a list of records goes on with the results.
func TestRunBelowRecords(t *testing.T) {
	list := "Name|Cat.|Time|Note\nAda Moss|W40|18:20|\nBen Reed|M50|19:10|\nCy Dee|M40|20:02|\nDi Fox|W50|21:30|\n"
	s, err := Read("book.xlsx", bookOf(t, "== Sheet1\nAlder Bank 3 January 2026\n"+list+"\nCourse records\nM40|Alan Penn|16:58|3 March 2019\n\n\nAlder Bank 10 January 2026\n\n"+strings.NewReplacer("Ada", "Eve", ":2", ":4").Replace(list)), Options{})
	if err != nil || len(s.Parts) != 2 {
		t.Fatal(err, len(s.Parts))
	}
	for _, p := range s.Parts {
		if rows := rowsOf(t, p); len(rows) != 4 {
			t.Errorf("%s: %q", p.Date.Day, rows)
		}
	}
}

// Records under a line that says so are none of the results, however their times are written.
func TestRecordsBelow(t *testing.T) {
	data := workbook(t, func(f *excelize.File) {
		setRows(t, f, "Sheet1", []any{"Name", "Cat.", "Time", "Pace"}, []any{"Ada Moss", "W40", 18.5 / 1440, "3:42"}, []any{"Ben Reed", "M50", 19.5 / 1440, "3:54"}, []any{"Cy Dee", "M40", 20.5 / 1440, "4:06"}, []any{"Di Fox", "W50", 21.5 / 1440, "4:18"},
			[]any{""}, []any{"Course records"}, []any{"M40", "Alan Penn", "16:58", "3 March 2019"}, []any{"W40", "Ruth Penn", "18:41", "7 July 2018"})
	})
	s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if rows := rowsOf(t, s.Parts[0]); len(rows) != 4 {
		t.Errorf("%q", rows)
	}
}
