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
