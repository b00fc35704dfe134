package record

import "testing"

// What a web page writes behind every name is no part of it; a club behind every name and
// a remark behind some are left to others.
func TestLinkText(t *testing.T) {
	names := []string{"Jo Lee", "Al Roe", "Cy Dee", "Di Fox", "Ed Gow", "Gus Ing"}
	for behind, want := range map[string]string{" [profile]": "Jo Lee", " (view)": "Jo Lee", " (Vale)": "Jo Lee (Vale)", "": "Jo Lee"} {
		r := NewReader(Columns{Position: -1, Name: 0, Given: -1, Family: -1, Time: 1, Age: -1, BirthYear: -1, BirthDate: -1, Group: -1, Sex: -1, Club: -1, Number: -1, Notes: -1, Status: -1, Chip: -1}, []string{"Name", "Time"}, Options{})
		for i, n := range names {
			r.Observe(i+2, []string{n + behind, "18:20"}, 20000, 5000)
		}
		r.Settle()
		var l Line
		r.Read(2, []string{names[0] + behind, "18:20"}, 20000, 5000, &l)
		if l.Name != want {
			t.Errorf("%q: name %q, want %q", behind, l.Name, want)
		}
	}
}

// The number of a line in front of a name is no part of it.
func TestWithoutNumber(t *testing.T) {
	for s, want := range map[string]string{"12. Jo Lee": "Jo Lee", "3) Al Roe": "Al Roe", "Jo Lee": "Jo Lee", "12": "12", "7 of 9": "7 of 9", "1. 2. Lee": "1. 2. Lee"} {
		if got := withoutNumber(s); got != want {
			t.Errorf("%q: %q, want %q", s, got, want)
		}
	}
}
