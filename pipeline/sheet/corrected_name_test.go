package sheet

import "testing"

// A line that says who somebody really was puts the name right, whoever stands there, and says so; one that names
// somebody who is in the list as well, or tells of something else, doesn't.
func TestNamesPutRight(t *testing.T) {
	for line, want := range map[string]string{
		"for Jo Lee read Bob Trent": "Bob Trent", "Replace Jo Lee with Bob Trent": "Bob Trent", "Jo Lee should be Bob Trent": "Bob Trent", "Correction: Jo Lee should read Bob Trent.": "Bob Trent",
		"2 is Bob Trent": "Bob Trent", "2nd was Bob Trent": "Bob Trent", "Position 2 should be Bob Trent": "Bob Trent", "Second was Bob Trent, not Jo Lee": "Bob Trent", "Statt Jo Lee lies Bob Trent": "Bob Trent",
		"2nd was Cy Dee": "Jo Lee", "Jo Lee is Bob Trent's sister": "Jo Lee", "2 is enough": "Jo Lee", "Replace Jo Lee at the desk": "Jo Lee",
	} {
		for _, text := range []string{"Pos,Name,Time\n1,Al Roe,18:20\n2,Jo Lee,18:31\n3,Cy Dee,18:40\n\n" + line + "\n", line + "\nPos,Name,Time\n1,Al Roe,18:20\n2,Jo Lee,18:31\n3,Cy Dee,18:40\n"} {
			s, err := Read("alder-bank_2026-01-03.csv", []byte(text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			p, got := s.Parts[0], ""
			p.Each(func(_ int, cells []string) error {
				if cellAt(cells, p.Index(Position)) == "2" {
					got = cellAt(cells, p.Index(Name))
				}
				return nil
			})
			if got != want || hasProblem(p, "corrected-in-words") != (want == "Bob Trent") && line != "2nd was Cy Dee" {
				t.Errorf("%q: %q, %v", line, got, p.Problems)
			}
		}
	}
}
