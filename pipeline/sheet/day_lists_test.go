package sheet

import (
	"slices"
	"testing"
)

// A log has a day and those who ran on it on one line, or a day over them, and says the year once.
func TestDayLists(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"on one line", "Alder Bank 5k family times 2026\n\n3 Jan: Jo Lee 18:20, Al Roe 18:31 and Cy Dee 18:25\n10 Jan: Jo Lee 19:20, Al Roe 18:01 and Cy Dee 18:45\n17 Jan: Al Roe 18:41, Jo Lee 18:55\n24 Jan: Jo Lee 18:21, Al Roe 18:33, Cy Dee 18:15\n",
			[]string{"alder-bank 2026-01-03", "alder-bank 2026-01-10", "alder-bank 2026-01-17", "alder-bank 2026-01-24"}},
		{"with its year on each", "Alder Bank 5k\n3.1.2026 – Jo Lee 18:20; Al Roe 18:31\n10.1.2026 – Jo Lee 19:20; Al Roe 18:01\n", []string{"alder-bank 2026-01-03", "alder-bank 2026-01-10"}},
		{"days over lists, the year in the title", "Alder Bank 5k times 2026\n3 January\nJo Lee 18:20\nAl Roe 18:31\nCy Dee 18:45\n10 January\nJo Lee 19:20\nAl Roe 19:31\nCy Dee 19:45\n", []string{"alder-bank 2026-01-03", "alder-bank 2026-01-10"}},
	} {
		wantRuns(t, c.name, "x.txt", c.text, c.want)
	}
}

// wantRuns reads a text and compares the runs that its tables are of.
func wantRuns(t *testing.T, name, file, text string, want []string) {
	t.Helper()
	s, err := Read(file, []byte(text), Options{})
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	var got []string
	for _, p := range s.Parts {
		got = append(got, p.RunOfFirst())
	}
	if !slices.Equal(got, want) {
		t.Errorf("%s: %q, want %q", name, got, want)
	}
}
