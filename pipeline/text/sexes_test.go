package text

import "testing"

func TestSexOf(t *testing.T) {
	for s, want := range map[string]byte{
		"woman": 'W', "he/him": 'M', "m (male)": 'M', "female - f": 'W', "m♂": 'M', "♀️": 'W', "👩🏽": 'W', "👨‍🦰": 'M', "adult male": 'M', "adult": 0, "female runner": 'W',
		"m": 0, "f": 0, "pr": 'W', "pr!": 0, "m f": 0, "male/female": 0, "m/f": 0, "men 40": 0, "": 0, "-": 0, "lady gent": 0, "мужчина": 'M', "herren": 'M', "女": 'W',
	} {
		if got := SexOf(s); got != want {
			t.Errorf("%q: %q, want %q", s, got, want)
		}
	}
}
