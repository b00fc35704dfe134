package who

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// TestClosePacked holds the comparison of packed numbers against that of texts.
func TestClosePacked(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	close := 0
	for range 200_000 {
		a := []byte(fmt.Sprint(r.IntN(1_000_000)))
		if r.IntN(3) == 0 {
			a = append([]byte("A"), a...)
		}
		b := append([]byte(nil), a...)
		for range r.IntN(3) {
			switch k := r.IntN(len(b)); r.IntN(4) {
			case 0:
				b[k] = byte('0' + r.IntN(10))
			case 1:
				if k > 0 {
					b[k], b[k-1] = b[k-1], b[k]
				}
			case 2:
				b = append(b, '7')
			case 3:
				b = b[:max(1, len(b)-1)]
			}
		}
		x, y := packed(string(a)), packed(string(b))
		if x == 0 || y == 0 {
			continue
		}
		want := closeNumbers(string(a), string(b))
		if want {
			close++
		}
		if closePacked(x, y) != want || closePacked(y, x) != want {
			t.Fatalf("%s and %s: close is %v", a, b, !want)
		}
	}
	if close < 10_000 {
		t.Fatalf("only %d close pairs were tried", close)
	}
}

// TestHopelessRulesOutNothingElse tries all pairs of some districts: what is hopeless
// at a glance is never thinkable.
func TestHopelessRulesOutNothingElse(t *testing.T) {
	ruledOut, pairs := 0, 0
	for seed := uint64(21); seed <= 23; seed++ {
		d := district{people: 800, courses: 5, weeks: 80, numbers: .7, messy: 1, namesakes: .02, wrong: .01, seed: seed}.make()
		m := link(t, d, Options{}).m
		m.sketch()
		for i := range m.sigs {
			for j := i + 1; j < len(m.sigs); j += 7 {
				pairs++
				if hopeless(&m.sketches[i], &m.sketches[j]) {
					ruledOut++
					if m.thinkable(&m.sigs[i], &m.sigs[j]) {
						t.Fatalf("seed %d: signatures %d and %d are hopeless, but thinkable", seed, i, j)
					}
				}
			}
		}
	}
	if ruledOut*10 < pairs {
		t.Fatalf("only %d of %d pairs were hopeless", ruledOut, pairs)
	}
}
