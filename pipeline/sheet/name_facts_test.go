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
