package place

import "testing"

// A problem prints where it is, or begins with what it is where it has no sheet.
func TestProblemString(t *testing.T) {
	p := Problem{Place: Place{Sheet: "club.xlsx", Tab: "Results", Row: 14, Column: "C"}, Kind: "time-unreadable", Read: "24.75.1", Expected: "mm:ss", Do: "Correct the cell."}
	if got, want := p.String(), `club.xlsx:Results!C14: time unreadable: read "24.75.1", expected mm:ss. Correct the cell.`; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	p.Place = Place{}
	if got, want := p.String(), `time unreadable: read "24.75.1", expected mm:ss. Correct the cell.`; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// A tab that is left out says why.
func TestTabWithoutResults(t *testing.T) {
	p := Problem{Place: Place{Sheet: "club.xlsx", Tab: "Rota"}, Kind: "tab-refused", Expected: "it is empty"}
	if got, want := p.String(), `club.xlsx:Rota: tab without results: it is empty`; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// What is printed of a kind names it again, and so does its name.
func TestKindWords(t *testing.T) {
	for _, kind := range []string{"time-unreadable", "held-record", "several-runners", "tab-refused", "line-twice"} {
		if got := ParseKind(KindWords(kind)); got != kind {
			t.Errorf("%s is printed as %q, which is read as %s", kind, KindWords(kind), got)
		}
		if got := ParseKind(kind); got != kind {
			t.Errorf("%s is read as %s", kind, got)
		}
	}
}

// The possible answers of a question stand behind it.
func TestQuestionWithAnswers(t *testing.T) {
	p := Problem{Place: Place{Sheet: "a.csv"}, Kind: "date-unclear", Do: "Which date was the run?", Answers: "--date 2026-01-03\n--date 2026-03-01"}
	if got, want := p.Question(), "a.csv: date unclear. Which date was the run?"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := p.String(), "a.csv: date unclear. Which date was the run? Load the sheet again with --date 2026-01-03 or --date 2026-03-01."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
