package name

import "testing"

// The examples of the National Archives' page on the Soundex indexing system, from
// memory, and those that the rules give by hand.
func TestSoundex(t *testing.T) {
	for in, want := range map[string]string{
		"washington": "W252", "lee": "L000", "gutierrez": "G362", "pfister": "P236", "jackson": "J250", "tymczak": "T522",
		"ashcraft": "A261", "robert": "R163", "rupert": "R163", "rubin": "R150", "honeyman": "H555",
		"": "", "?": "", "de vries": "D162", "kelly": "K400", "kellie": "K400",
	} {
		if got := Soundex(in); got != want {
			t.Errorf("Soundex(%q) is %q, want %q", in, got, want)
		}
	}
}
