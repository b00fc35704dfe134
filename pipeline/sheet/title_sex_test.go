package sheet

import "testing"

// A sex in a part of a title is that of everybody below, unless another part says another.
func TestSexOfTitle(t *testing.T) {
	for title, want := range map[string]string{
		"Frauenlauf 5 km – Ergebnisse Frauen": "Ergebnisse Frauen",
		"Alder Bank - Women":                  "Women",
		"First man: Jo Lee - 18:20":           "",
		"Men – Women, results":                "",
		"Alder Bank – Men and women":          "",
		"Alder Bank Ladies AC – results":      "",
		"Results for Alder Bank 5K-Female":    "Female",
		"Alder Bank 5 km":                     "",
	} {
		if got := sexOfTitle([]string{title}); got != want {
			t.Errorf("%s: %q, want %q", title, got, want)
		}
	}
}
