package sheet

import (
	"strings"
	"testing"
)

// A word in place of a course is none, and one of which somebody is not sure is asked about; courses
// that such words are a part of stay.
func TestUnsureCourse(t *testing.T) {
	const table = "\nPos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n"
	for title, want := range map[string]string{
		"Course TBC,3 January 2026":                      "asks course-missing",
		"Course: tba\nDate: 3 January 2026":              "asks course-missing",
		"Venue: to be confirmed\n3 January 2026":         "asks course-missing",
		"Course: n/a\nDate: 3 January 2026":              "asks course-missing",
		"Venue: see email\nDate: 3 January 2026":         "asks course-missing",
		"Course: same as last week\n3 January 2026":      "asks course-missing",
		"Strecke: wie üblich\nDatum: 3. Januar 2026":     "asks course-missing",
		"Lieu : à confirmer\nDate : 3 janvier 2026":      "asks course-missing",
		"Plats: okänd\nDatum: 3 januari 2026":            "asks course-missing",
		"Course: [fill in]\nDate: 3 January 2026":        "asks course-missing",
		"Untitled\n3 January 2026":                       "asks course-missing",
		"Quay?\n3 January 2026":                          "asks course-unclear",
		"Quay (?)\n3 January 2026":                       "asks course-unclear",
		"Alder Bank (or was it Mill Leat?)\n3 Jan 2026":  "asks course-unclear",
		"3 January 2026 at Alder Bank or Mill Leat":      "asks course-unclear",
		"Alder Bank 3 January 2026. Any queries? Ask Jo": "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31",
		"Unknown Well 3 January 2026":                    "unknown-well 2026-01-03: Jo Lee 18:20, Al Roe 18:31",
		"Usual Lane 3 January 2026":                      "usual-lane 2026-01-03: Jo Lee 18:20, Al Roe 18:31",
		"Orford 3 January 2026":                          "orford 2026-01-03: Jo Lee 18:20, Al Roe 18:31",
		"Course TBC\nAlder Bank 3 January 2026":          "alder-bank 2026-01-03: Jo Lee 18:20, Al Roe 18:31",
	} {
		if got := readByHand("x.csv", []byte(title+table)); got != want {
			t.Errorf("%s: %s, want %s", title, got, want)
		}
	}
	if got := readByHand("quay_2026-01-03.csv", []byte("Quay?"+table)); !strings.HasPrefix(got, "quay 2026-01-03:") {
		t.Errorf("the file's name is sure: %s", got)
	}
	column := "Date,Course,Pos,Name,Time\n3 Jan 2026,Alder Bank,1,Jo Lee,18:20\n10 Jan 2026,TBC,1,Al Roe,18:40\n"
	if got := readByHand("x.csv", []byte(column)); strings.Contains(got, "tbc") {
		t.Errorf("in a column: %s", got)
	}
}

// An estate called quinta is no Thursday, and whose race it is belongs to no course.
func TestWhoseRace(t *testing.T) {
	const table = "\nPos,Name,Time\n1,Jo Lee,18:20\n2,Ann Roe,18:31\n"
	for title, want := range map[string]string{
		"QUINTA NOVA, 3 de janeiro de 2026":                      "quinta-nova ",
		"Quinta-feira, 8 de janeiro de 2026 - Freixo":            "freixo ",
		"Quinta, 8 de janeiro de 2026 - Freixo":                  "freixo ",
		"Wicket Gate Women's 5k\n3 January 2026":                 "wicket-gate women",
		"Wicket Gate Ladies Only 5k 3 January 2026":              "wicket-gate ladies",
		"Wicket Gate Mens Race 3 January 2026":                   "wicket-gate men",
		"Wicket Gate Men's and Women's 5k\n3 Jan 2026":           "wicket-gate ",
		"Wicket Gate 5k, women welcome\n3 Jan 2026":              "wicket-gate ",
		"Men's 5k and Women's 5k at Wicket Gate\n3 January 2026": "wicket-gate ",
		"Ladies Bower 5k 3 January 2026":                         "ladies-bower ",
	} {
		s, err := Read("x.csv", []byte(title+table), Options{})
		if err != nil {
			t.Fatal(title, err)
		}
		p := s.Parts[0]
		if got := p.Course.Value + " " + strings.ToLower(sexOfTitle(p.Titles)); got != want {
			t.Errorf("%s: %q, want %q", title, got, want)
		}
	}
}
