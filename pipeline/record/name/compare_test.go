package name

import (
	"math"
	"math/rand/v2"
	"testing"

	"lapwing/pipeline/text"
)

// Values of Winkler (1990), quoted from memory and confirmed here by hand:
// MARTHA/MARHTA: 6 letters in common, one exchange: (1 + 1 + 5/6)/3 = .9444,
// three letters of prefix: .9444 + .3 × .0556 = .9611.
// DWAYNE/DUANE: 4 in common, none exchanged: (4/6 + 4/5 + 1)/3 = .8222,
// one letter of prefix: .84.
// DIXON/DICKSONX: 4 in common: (4/5 + 4/8 + 1)/3 = .7667, two of prefix: .8133.
// SHACKLEFORD/SHACKELFORD: 11, one exchange: (1 + 1 + 10/11)/3 = .9697, four: .9818.
func TestJaroWinkler(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{
		{"MARTHA", "MARHTA", 173. / 180},
		{"DWAYNE", "DUANE", .84},
		{"DIXON", "DICKSONX", .7666666667 + .2*.2333333333},
		{"SHACKLEFORD", "SHACKELFORD", 32./33 + .4/33},
		{"", "A", 0}, {"", "", 1}, {"A", "B", 0},
	} {
		for range 2 {
			if got := JaroWinkler(c.a, c.b); math.Abs(got-c.want) > 1e-9 {
				t.Errorf("JaroWinkler(%s, %s) = %.6f, want %.6f", c.a, c.b, got, c.want)
			}
			c.a, c.b = c.b, c.a
		}
	}
}

func TestOneSlipAgreesWithOSA(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	letters := []rune("abéи?")
	word := func() string {
		w := make([]rune, rng.IntN(6))
		for i := range w {
			w[i] = letters[rng.IntN(len(letters))]
		}
		return string(w)
	}
	near := 0
	for range 200000 {
		a, b := word(), word()
		want := text.OSA(a, b) <= 1
		if want {
			near++
		}
		if OneSlip(a, b) != want {
			t.Fatalf("OneSlip(%q, %q) = %v, OSA %d", a, b, !want, text.OSA(a, b))
		}
	}
	if near < 1000 {
		t.Fatalf("only %d near pairs tried", near)
	}
}

func TestEqualLost(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"jos?", "jose", true}, {"jos?", "josee", true}, {"jos?", "joseea", false}, {"jos?", "jos", false},
		{"m?ller", "mueller", true}, {"m?ller", "muller", true}, {"m?ller", "miller", true}, {"smith", "smyth", false},
		{"zo?", "zo?", true}, {"?", "ab", true},
	} {
		if EqualLost(c.a, c.b) != c.want || EqualLost(c.b, c.a) != c.want {
			t.Errorf("EqualLost(%s, %s) should be %v both ways", c.a, c.b, c.want)
		}
	}
}

func BenchmarkParse(b *testing.B) {
	texts := []string{"Anna Smith", "SMITH, Anna", "Seán O'Brien", "Ella-Mae Hill", "Anna van der Berg", "john smith"}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		Parse(texts[i%len(texts)])
	}
}
