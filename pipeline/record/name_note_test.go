package record

import "testing"

// What somebody has written behind a name is no part of it; names keep what is.
func TestWithoutNote(t *testing.T) {
	for text, want := range map[string]string{
		"Jo Lee PB": "Jo Lee", "Jo Lee NEW PB": "Jo Lee", "Jo Lee new PB": "Jo Lee", "Jo Lee FIRST TIMER": "Jo Lee",
		"Jo Lee debut": "Jo Lee", "Jo Lee guest": "Jo Lee", "Jo Lee from Mill Leat": "Jo Lee", "Jo Lee ok": "Jo Lee", "Jo Lee x": "Jo Lee", "Jo Lee first time!": "Jo Lee",
		"Jo Lee - 50 runs!": "Jo Lee", "Jo Lee - 1st lady": "Jo Lee", "Jo Lee - U13 boy": "Jo Lee", "Jo Lee – First timer": "Jo Lee", "Jo Lee - back from injury": "Jo Lee",
		"Jo Lee u/a": "Jo Lee", "Jo Lee jo@mail.example": "Jo Lee", "Jo Lee <jo@mail.example>": "Jo Lee", "Name: Jo Lee": "Jo Lee", "Jo Lee VI": "Jo Lee",
		// names
		"Jo Guest": "Jo Guest", "Jo Lee Guest": "Jo Lee Guest", "Jo New": "Jo New", "JO LEE NEW": "JO LEE NEW", "Jo FIRST": "Jo FIRST", "Jo Lee-Ford": "Jo Lee-Ford", "Jo Lee - Ford": "Jo Lee - Ford",
		"Jo van der Lee": "Jo van der Lee", "Maria da silva": "Maria da silva", "Lee / Roe": "Lee / Roe", "Jo Lee (visiting from Mill Leat)": "Jo Lee (visiting from Mill Leat)",
	} {
		if got := withoutNote(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A remark about another day says nothing of this one; the last lap is of this one.
func TestSaysBefore(t *testing.T) {
	for folded, want := range map[string]bool{"dnf last week": true, "lost last time": true, "missed last lap": false, "missed the last loop": false, "last year missed a lap": true} {
		if got := saysBefore(folded, false); got != want {
			t.Errorf("%q: %v, want %v", folded, got, want)
		}
	}
}
