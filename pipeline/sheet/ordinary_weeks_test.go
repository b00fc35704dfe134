package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// What sheets of ordinary weeks say of their course and day.
func TestOrdinaryWeeks(t *testing.T) {
	adults := "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:40\n4,Di Fox,22:42\n"
	juniors := "\nJunior 2k\nPos,Name,Time\n1,Kit Sole,8:10\n2,Lou Tarn,8:52\n3,Ned Wye,9:40\n4,Oz Yeo,10:31\n"
	letter := "From: Pat Organ <pat@example.org>\nSent: %s 19:22\nTo: results@example.org\nSubject: Mill Leat 5k results %s\n\nHi both,\n\nhere are the results:\n\n" + strings.ReplaceAll(adults, ",", "\t")
	for _, c := range []struct{ name, file, text, want string }{
		{"a place with its distance over the main race", "ironstone 2025-07-12.csv", "Ironstone Edge 5k\n12 July 2025\n" + adults + juniors, "ironstone-edge 2025-07-12"},
		{"the same under what the file is called after", "Lunchtime 5k 15 May 2025.csv", "Lunchtime 5k - Ringway Campus - 15 May 2025\n" + adults + juniors, "ringway-campus 2025-05-15"},
		{"a round of a league before the place", "uni league r1.csv", "University league round 1: Ferry Meadow; 15 October 2025; 5000 m\n" + adults, "ferry-meadow 2025-10-15"},
		{"what was played, before the place", "predict 2025-03-01.csv", "Predict-your-time 5k – Heron Staithe – 1 March 2025\n" + adults, "heron-staithe 2025-03-01"},
		{"a sentence of the mail above a fete", "y.txt", "Hi\nsee below, all checked this time.\n\nLittle Samborne Fete Fun Run (5k)\n12 July 2025\n" + strings.ReplaceAll(adults, ",", "\t"), "little-samborne-fete 2025-07-12"},
		{"a letter cannot be older than the run", "Fwd.txt", fmt.Sprintf(letter, "Sunday 9th March 2025", "08/03/2025"), "mill-leat 2025-03-08"},
		{"a letter is sent soon after the run", "Fwd.txt", fmt.Sprintf(letter, "2 March 2025", "01/03/2025"), "mill-leat 2025-03-01"},
		{"the name of a record in a record", "api.json", `{"event":{"name":"Gull Point 5k","date":"2025-03-29"},"finishers":[{"rank":1,"name":"Jo Lee","time":"18:20"},{"rank":2,"name":"Al Roe","time":"18:31"},{"rank":3,"name":"Cy Dee","time":"19:40"}]}`, "gull-point 2025-03-29"},
		{"the name in a record of what holds for all", "api.json", `{"meta":{"name":"Gull Point 5k","date":"2025-03-29"},"finishers":[{"rank":1,"name":"Jo Lee","time":"18:20"},{"rank":2,"name":"Al Roe","time":"18:31"},{"rank":3,"name":"Cy Dee","time":"19:40"}]}`, "gull-point 2025-03-29"},
	} {
		s, err := Read(c.file, []byte(c.text), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := s.Parts[0].RunOfFirst(); got != c.want {
			t.Errorf("%s: read %q, want %q", c.name, got, c.want)
		}
	}
}

// A tab on which somebody noted who kept the time and when it began is no list of results.
func TestNotesOfTheDay(t *testing.T) {
	for _, notes := range [][][]any{
		{{"Timekeeper", "A Marshal"}, {"Start", "09:00"}},
		{{"Timekeeper", "Joan Smith"}, {"Marshal", "Bob Hill"}, {"Start", "09:00"}, {"Finish", "10:05"}},
	} {
		s, err := Read("x.xlsx", workbook(t, func(f *excelize.File) {
			setRows(t, f, "Sheet1", []any{"Alder Bank 5k 1 March 2025"}, []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "18:31"}, []any{3, "Cy Dee", "19:40"})
			f.NewSheet("Sheet2")
			setRows(t, f, "Sheet2", notes...)
		}), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if len(s.Parts) != 1 {
			t.Errorf("%d tabs read with %v", len(s.Parts), notes)
		}
	}
}

// A slip in the heading of the times that is as near to another word, over clocks and over parts of a day.
func TestHeadingNearTwoWords(t *testing.T) {
	for _, times := range []string{"16:31 17:24 17:30", "0.0114699 0.0120833 0.0121528"} {
		f := strings.Fields(times)
		s, err := Read("x.csv", []byte("Font Vella 5 km 2025-04-12\nPos,Tems,Nom,Club\n1,"+f[0]+",Arnau Roca,\n2,"+f[1]+",Gemma Pujol,\n3,"+f[2]+",Nuria Bosch,CA Riera\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Parts[0].Index(Time); got != 1 {
			t.Errorf("%s: times in column %d", times, got)
		}
	}
}

// Words of two languages for a woman and for a club.
func TestWordsOfOrdinaryWeeks(t *testing.T) {
	if kindOf("Vrou") != kSex {
		t.Error("Vrou says no sex")
	}
	if g := newLexicon(Options{}).read("Komunitas"); g.meaning != Club {
		t.Errorf("Komunitas is %v", g.meaning)
	}
}
