package pipeline

import "testing"

func TestParseDistance(t *testing.T) {
	for text, want := range map[string]int{
		"5 km": 5000, "5k": 5000, "3000": 3000, "4 miles": 6437, "13.1 mi": 21082, "21,0975 km": 21098,
		"marathon": 42195, "Half marathon": 21098, "halve marathon": 21098, "semi-marathon": 21098,
		"half": 0, "mile race": 0, "5": 0, "": 0,
	} {
		got, err := ParseDistance(text)
		if got != want || (err == nil) != (want > 0) {
			t.Errorf("%q: %d, %v, want %d", text, got, err, want)
		}
	}
}
