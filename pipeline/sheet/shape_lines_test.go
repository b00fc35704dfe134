package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// Lines that are all made alike are read whatever their marks and order are.
func TestSameShape(t *testing.T) {
	people := []struct{ name, club, class string }{
		{"Jo Lee", "Vale AC", "F34"}, {"Al Roe", "Mill AC", "M47"}, {"Cy Dee", "Vale AC", "M52"}, {"Di Fox", "Mill AC", "F28"}, {"Jan Orr", "Vale AC", "F41"}, {"Mae O'Hara-Lee", "Vale AC", "F19"}, {"J. Gow", "Mill AC", "M66"},
	}
	for _, c := range []struct{ line, columns string }{
		{"%[4]s: %[2]s", "time name"},
		{"%[2]s %[1]d %[4]s", "name position time"},
		{"#%[5]d %[2]s %[4]s", "- name time"},
		{"%[1]d. %[2]s #%[5]d %[4]s", "position name - time"},
		{"%[1]d %[4]s %[5]d %[2]s", "position time - name"},
		{"%[1]d..%[2]s..%[4]s", "position name time"},
		{"%[1]d/%[2]s/%[4]s", "position name time"},
		{`"%[1]d" "%[2]s" "%[4]s"`, "position name time"},
		{"%[3]s %[2]s %[4]s", "age-group name time"},
		{"%[1]d. %[3]s %[2]s %[4]s", "position age-group name time"},
		{"%[1]d. %[2]s %[4]s s", "position name time"},
	} {
		var b strings.Builder
		b.WriteString("Alder Bank, 3 January 2026\n\n")
		for i, p := range people {
			fmt.Fprintf(&b, c.line+"\n", i+1, p.name, p.class, fmt.Sprintf("%d:%02d", 18+i, i*7), 217+i*131%400)
		}
		s, err := Read("x.txt", []byte(b.String()), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.line, err)
			continue
		}
		got := outcome(s)
		columns := strings.Join(strings.Fields(strings.ReplaceAll(strings.ReplaceAll(got.columns+" ", "other ", "- "), "number ", "- ")), " ")
		if got.run != "alder-bank 2026-01-03" || got.rows != "3-9" || got.asks != "" || strings.TrimRight(columns, " -") != c.columns {
			t.Errorf("%s: columns %q, run %q, rows %q, asks %q", c.line, columns, got.run, got.rows, got.asks)
		}
	}
	// What is no list of results stays refused, and so does a text that only some lines of are alike.
	for _, text := range []string{
		"Rota\n9:00: Jo Lee\nbring the cones and the tape\nthen mark out the finish funnel\n9:30: Al Roe\n",
		"rank,runner,points\n1,Jo Lee,88\n2,Al Roe,86\n3,Cy Dee,80\n4,Di Fox,70\n",
	} {
		if s, err := Read("Alder Bank 2026-01-03.txt", []byte(text), Options{}); err == nil && len(s.Parts) > 0 && s.Parts[0].Kind == "full" {
			t.Errorf("%q is read as %+v", text, outcome(s))
		}
	}
}

// A time in brackets is another than the one before it, and a month that is a given name no date.
func TestBracketedSecondTime(t *testing.T) {
	text := "Alder Bank, 3 January 2026\n\n1. Jo Lee 18:00 (17:20)\n2. Al Roe 18:31 (18:00)\n3. Cy Dee 19:02 (18:31)\n4. Di Fox 19:20 (19:00)\n5. Ed Gow 19:40 (19:20)\n"
	s, err := Read("x.txt", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := outcome(s); got.columns != "position name time -" {
		t.Errorf("columns %q", got.columns)
	}
	for text, want := range map[string]int{"Orr, Jan 28.50": 0, "Orr, Jan 28'50": 0, "Jan 28 2026": 1, "Jan 28.": 1} {
		if got := len(findDates(text)); got != want {
			t.Errorf("%q: %d dates, want %d", text, got, want)
		}
	}
}

// A row with a time in words is no heading, although it has words of headings.
func TestTimeInWordsIsNoHeading(t *testing.T) {
	s, err := Read("x.csv", []byte("Alder Bank 20 June 2026\n1,Jo Lee,,18 minutes and 0 seconds\n2,Ann Moss,Vale AC,19 minutes and 17 seconds\n3,Bob Tarn,Vale AC,20 minutes and 34 seconds\n4,Cy Pell,,21 minutes and 51 seconds\n5,Di Rook,,22 minutes and 8 seconds\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := outcome(s); got.rows != "2-6" || got.columns != "position name club time" {
		t.Errorf("%+v", got)
	}
}
