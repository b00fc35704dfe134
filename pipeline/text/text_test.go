package text

import (
	"math/rand/v2"
	"strings"
	"testing"
)

// CA and ABC are the classic pair that separates this distance (3) from the
// unrestricted one (2).
func TestOSA(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"ca", "abc", 3}, {"fitzgerald", "fitzgerlad", 1}, {"brown", "browne", 1}, {"kitten", "sitting", 3},
		{"", "abc", 3}, {"smith", "smith", 0}, {"żuk", "zuk", 1}, {"ab", "ba", 1}, {"łąka", "laka", 2},
	} {
		if got := OSA(c.a, c.b); got != c.want {
			t.Errorf("OSA(%s, %s) = %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

// It is a distance by letters: symmetric, zero only for equal words, never less
// than the difference of the lengths, and one for any single slip.
func TestOSAProperties(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	letters := []rune("abcéłи")
	word := func(n int) []rune {
		w := make([]rune, n)
		for i := range w {
			w[i] = letters[rng.IntN(len(letters))]
		}
		return w
	}
	for range 20000 {
		a, b := word(rng.IntN(7)), word(rng.IntN(7))
		d := OSA(string(a), string(b))
		if d != OSA(string(b), string(a)) || (d == 0) != (string(a) == string(b)) || d < len(a)-len(b) || d < len(b)-len(a) || d > max(len(a), len(b)) {
			t.Fatalf("OSA(%q, %q) = %d", string(a), string(b), d)
		}
		for limit := 0; limit < 4; limit++ {
			if Within(string(a), string(b), limit) != (d <= limit) {
				t.Fatalf("Within(%q, %q, %d), OSA %d", string(a), string(b), limit, d)
			}
		}
		w := word(2 + rng.IntN(6))
		i := rng.IntN(len(w) - 1)
		slip := append([]rune{}, w...)
		slip[i], slip[i+1] = slip[i+1], slip[i]
		if got := OSA(string(w), string(slip)); got > 1 {
			t.Fatalf("%q with two letters exchanged, %q: %d", string(w), string(slip), got)
		}
	}
}

// The wide names of Unicode CLDR in eleven languages (from memory) number the
// months; no name stands for two.
func TestMonths(t *testing.T) {
	m := Months(strings.ToLower)
	for _, year := range []string{
		"january february march april may june july august september october november december",
		"januar februar märz april mai juni juli august september oktober november dezember",
		"janvier février mars avril mai juin juillet août septembre octobre novembre décembre",
		"enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre",
		"gennaio febbraio marzo aprile maggio giugno luglio agosto settembre ottobre novembre dicembre",
		"januari februari maart april mei juni juli augustus september oktober november december",
		"janeiro fevereiro março abril maio junho julho agosto setembro outubro novembro dezembro",
		"stycznia lutego marca kwietnia maja czerwca lipca sierpnia września października listopada grudnia",
		"januari februari mars april maj juni juli augusti september oktober november december",
		"januar februar marts april maj juni juli august september oktober november december",
		"januar februar mars april mai juni juli august september oktober november desember",
	} {
		for i, name := range strings.Fields(year) {
			if m[name] != i+1 {
				t.Errorf("%s is month %d, want %d", name, m[name], i+1)
			}
		}
	}
	seen := map[string]int{}
	for i, names := range monthNames {
		for _, n := range strings.Fields(names) {
			if k, ok := seen[n]; ok && k != i {
				t.Errorf("%s stands for months %d and %d", n, k+1, i+1)
			}
			seen[n] = i
		}
	}
}

func TestSession(t *testing.T) {
	for session, want := range map[string]string{"": "", "2": "run 2", "9:30": "start 9:30", "09.30": "start 09.30", "women": "women", "2nd wave": "2nd wave"} {
		if got := Session(session); got != want {
			t.Errorf("session %q is printed as %q, want %q", session, got, want)
		}
	}
}
