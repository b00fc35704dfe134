package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// A sex or a class that stands beside nearly all names, before or behind them, gets a column of its own; what may be
// part of a name stays in it.
func TestFactsBesideNames(t *testing.T) {
	names := []string{"Jo Lee", "Ann Page", "Cy Dee", "Di Fox", "Ed Gow"}
	for _, c := range []struct {
		form, a, b string
		of         Meaning
	}{
		{"%n (%f)", "Mr", "Mrs", Sex},
		{"(%f) %n", "Hombre", "Mujer", Sex},
		{"%n - %f", "Herrer", "Damer", Sex},
		{"%n/%f", "mies", "nainen", Sex},
		{"%n, %f", "Muž", "Žena", Sex},
		{"%n %f", "Man", "Vrouw", Sex},
		{"%f %n", "Maschile", "Femminile", Sex},
		{"%n [%f]", "male runner", "female runner", Sex},
		{"%n, %f", "M", "Ž", Sex},
		{"%n %f", "M", "F", Sex},
		{"%n /%f", "M", "F", Sex},
		{"%n %f", "J", "A", Other},
		{"%n (%f)", "Senior man", "Senior woman", AgeGroup},
		{"%n; %f", "SEN MASC", "M40 FEM", AgeGroup},
		{"%n / %f", "40-44M", "50-54F", AgeGroup},
		{"%n %f", "25M", "31F", AgeGroup},
		{"%n (born %f)", "20/09/1985", "03/11/1991", Other},
		{"%n (%f)", "V45", "V50", Other}, // left to those who read names
		{"%n %f", "Smith", "Walker", Other},
		{"%f %n", "Mary", "Anna", Other},
		{"%n, %f", "Leeds", "York", Other},
	} {
		text := "Pos|Name|Time\n"
		for i, n := range names {
			fact := c.a
			if i%2 > 0 {
				fact = c.b
			}
			text += fmt.Sprintf("%d|%s|18:%d\n", i+1, strings.NewReplacer("%n", n, "%f", fact).Replace(c.form), 20+i)
		}
		text = strings.ReplaceAll(text, "|", "\t")
		if c.of == Other {
			if got := cellsOf(t, text, Sex, AgeGroup); strings.TrimSpace(strings.Join(got, "")) != "" {
				t.Errorf("%s %s: %q", c.form, c.a, got)
			}
			continue
		}
		got := cellsOf(t, text, Name, c.of)
		for i, n := range names {
			want := n + " " + c.a
			if i%2 > 0 {
				want = n + " " + c.b
			}
			if len(got) != len(names) || got[i] != want {
				t.Errorf("%s %s: %q", c.form, c.a, got)
				break
			}
		}
	}
}

// So is a letter beside all times, or behind all clubs; a club's own letters stay.
func TestSexBesideTimes(t *testing.T) {
	for form, want := range map[string]string{
		"Jo Lee|18:20 %|Mill AC":   "MFMFM",
		"Jo Lee|18:20 (%)|Mill AC": "MFMFM",
		"Jo Lee|% 18:20|Mill AC":   "MFMFM",
		"Jo Lee|18:20|Mill AC (%)": "MFMFM",
		"Jo Lee|18:20|Mill AC - %": "MFMFM",
		"Jo Lee|18:20|Mill Team %": "",
	} {
		text := "Name|Time|Club\n"
		for i, n := range []string{"Jo Lee", "Ann Page", "Cy Dee", "Di Fox", "Ed Gow"} {
			line := strings.Replace(strings.Replace(form, "Jo Lee", n, 1), "18:20", fmt.Sprint("18:2", i), 1)
			text += strings.Replace(line, "%", "MF"[i%2:i%2+1], 1) + "\n"
		}
		if got := strings.ReplaceAll(strings.Join(cellsOf(t, text, Sex), ""), " ", ""); got != want {
			t.Errorf("%s: %q, want %q", form, got, want)
		}
	}
}

// Behind places, times and clubs a sex or a class may stand on some lines only; what may be anything else stays.
func TestFactsOnSomeLines(t *testing.T) {
	for form, want := range map[string]string{
		"1 (F)|Jo Lee|18:20|Mill AC":        "Sex F",
		"1|Jo Lee|18:20 F|Mill AC":          "Sex F",
		"1|Jo Lee|18:20 (L)|Mill AC":        "Sex L",
		"1|Jo Lee|18:20|Mill AC - lady":     "Sex lady",
		"1|Jo Lee|18:20|Mill AC (F)":        "Sex F",
		"1 V40|Jo Lee|18:20|Mill AC":        "age-group V40",
		"1|Jo Lee|18:20 (V40)|Mill AC":      "age-group V40",
		"1|Jo Lee|18:20|Mill AC (V40)":      "age-group V40",
		"1|Jo Lee|18:20 W|Mill AC":          "",
		"1|Jo Lee|18:20|Mill AC (A)":        "",
		"1|Jo Lee|18:20|Mill AC - Ladies B": "",
		"1|Jo Lee|18:20|Mill AC W":          "",
		"1|Jo Lee|18 min 20 s|Mill AC":      "",
	} {
		text := "Pos|Name|Time|Club\n"
		for i := range 8 {
			line := form
			if i%3 > 0 {
				line = "1|Jo Lee|18:20|Mill AC"
			}
			text += strings.NewReplacer("Jo Lee", "Jo Lee"+strings.Repeat("e", i), "1|", fmt.Sprintf("%d|", i+1), "1 ", fmt.Sprintf("%d ", i+1), "18:20", fmt.Sprint("18:2", i)).Replace(line) + "\n"
		}
		s, err := Read("alder-bank_2026-01-03.csv", []byte(strings.ReplaceAll(text, "|", "\t")), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, got := s.Parts[0], ""
		for _, m := range []Meaning{Sex, AgeGroup} {
			if at := p.Index(m); at >= 0 {
				n := 0
				p.Each(func(_ int, cells []string) error {
					if n++; n == 1 {
						got = m.String() + " " + cells[at]
					}
					return nil
				}) // a grid has no errors of its own
			}
		}
		if !strings.EqualFold(got, want) {
			t.Errorf("%s: %q, want %q", form, got, want)
		}
	}
}

// A heading that says a club and a class or a sex is over both.
func TestClubAndClassInOneColumn(t *testing.T) {
	for form, want := range map[string]string{
		"Team/Cat|Mill AC / %":    "MFMFM",
		"Club/Sex|Mill AC - %":    "MFMFM",
		"Club / Cat|Mill Club %":  "MFMFM",
		"Details|Mill Club, %":    "MFMFM",
		"Details|Mill Club row %": "",
	} {
		heading, cell, _ := strings.Cut(form, "|")
		text := "Name|Time|" + heading + "\n"
		for i, n := range []string{"Jo Lee", "Ann Page", "Cy Dee", "Di Fox", "Ed Gow"} {
			text += fmt.Sprintf("%s|18:2%d|%s\n", n, i, strings.Replace(cell, "%", "MF"[i%2:i%2+1], 1))
		}
		if got := strings.ReplaceAll(strings.Join(cellsOf(t, strings.ReplaceAll(text, "|", "\t"), Sex), ""), " ", ""); got != want {
			t.Errorf("%s: %q, want %q", form, got, want)
		}
	}
}
