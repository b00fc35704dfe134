package sheet

import (
	"slices"
	"testing"

	"lapwing/pipeline/place"
)

// A question about one of several tables is answered for that table, or for all alike:
// one date by hand would be taken for all of them.
func TestAnswersForSeveralTables(t *testing.T) {
	two := func(first, second string) string {
		return first + "\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n\n" + second + "\nPos,Name,Time\n1,Cy Dee,19:02\n2,Di Ash,19:20\n"
	}
	for _, c := range []struct {
		name, text, answers string
		answered            Options
		days                [2]string
	}{
		{"order of day and month", two("03/04/2026", "11/04/2026"), "--answer \"date order=dmy\"\n--answer \"date order=mdy\"", Options{OrderSaid: "dmy"}, [2]string{"2026-04-03", "2026-04-11"}},
		{"no year", two("4 April", "11 April"), "--answer \"year=YEAR\"", Options{YearSaid: "2026"}, [2]string{"2026-04-04", "2026-04-11"}},
		{"no year, over the turn of one", two("Saturday 27 December", "Saturday 3 January"), "--answer \"year=YEAR\"", Options{YearSaid: "2025-26"}, [2]string{"2025-12-27", "2026-01-03"}},
		{"weekday of another day", two("Monday 4 April 2026", "Saturday 11 April 2026"), "--answer \"weekday=any\"\tif the date is right", Options{AnyWeekday: true}, [2]string{"2026-04-04", "2026-04-11"}},
	} {
		s, err := Read("alder-bank.csv", []byte(c.text), Options{})
		if err != nil {
			t.Fatal(c.name, err)
		}
		if asked := s.Parts[0].Problems; len(asked) == 0 || asked[0].Answers != c.answers {
			t.Errorf("%s: asked %+v", c.name, asked)
		}
		if s, err = Read("alder-bank.csv", []byte(c.text), c.answered); err != nil || len(s.Parts) != 2 {
			t.Fatal(c.name, err, len(s.Parts))
		}
		for i, p := range s.Parts {
			if p.Date.Day.String() != c.days[i] || slices.ContainsFunc(p.Problems, func(q place.Problem) bool { return q.Severity == place.Waits }) {
				t.Errorf("%s, table %d: %s, want %s; %v", c.name, i+1, p.Date.Day, c.days[i], p.Problems)
			}
		}
	}
	// a column of dates without a year
	const column = "Date,Pos,Name,Time\n4 April,1,Jo Lee,18:20\n4 April,2,Al Roe,18:31\n"
	s, err := Read("alder-bank.csv", []byte(column), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if asked := s.Parts[0].Problems; len(asked) != 1 || asked[0].Kind != "year-missing" || asked[0].Answers != yearAnswer {
		t.Errorf("column: %+v", asked)
	}
	if s, err = Read("alder-bank.csv", []byte(column), Options{YearSaid: "2026"}); err != nil || len(s.Parts[0].Problems) > 0 {
		t.Errorf("column, answered: %+v, %v", s.Parts[0].Problems, err)
	}
}

// A date that is said to be the day on which the list was made is offered as an answer and
// not taken; that of the next run, and two of them, are not offered.
func TestTheDayAListWasMadeIsOffered(t *testing.T) {
	const rows = "\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n"
	const open = "--date YEAR-MONTH-DAY"
	for _, c := range []struct{ title, answers string }{
		{"Mill Leat\nStand: 3. Oktober 2026 18:20", "--date 2026-10-03\tif the run was on that day\n" + open},
		{"Mill Leat, printed 3 October 2026", "--date 2026-10-03\tif the run was on that day\n" + open},
		{"Mill Leat\nNext run 3 October 2026", open},
		{"Mill Leat\nSince 3 October 2020", open},
		{"Mill Leat\nUpdated 3 October 2026\nPrinted 4 October 2026", open},
		{"Mill Leat\nPrinted 3 October", open},
	} {
		s, err := Read("list.csv", []byte(c.title+rows), Options{})
		if err != nil {
			t.Fatal(c.title, err)
		}
		if asked := s.Parts[0].Problems; len(asked) != 1 || asked[0].Kind != "date-missing" || asked[0].Answers != c.answers {
			t.Errorf("%s: asked %+v, day %v", c.title, asked, s.Parts[0].Date.Day)
		}
	}
}
