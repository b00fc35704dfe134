package who

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// Two peoples who share no names, nine people in ten and one in ten. A name of
// the small people is ten times as common as its parts drawn singly would
// make it, log2 10 = 3.32 bits; one of the large people 1/.9, .15 bits.
func TestNamesThatGoTogether(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	var ls []line
	for i := range 6000 {
		people, given, family := "a", 60, 300
		if i%10 == 0 {
			people, given, family = "b", 30, 60
		}
		ls = append(ls, line{name: fmt.Sprintf("G%s%s %s%sfam", people, letters(rng.IntN(given)), people, letters(rng.IntN(family))), sex: SexM, course: int32(i % 5), week: i % 50})
	}
	m := link(t, archive(ls), Options{Fixed: true}).m
	if m.community == nil {
		t.Fatal("no communities in 6000 lines")
	}
	sum, n := map[byte]float64{}, map[byte]float64{}
	for _, k := range m.names.keys {
		people := m.names.given.text[k.given][1]
		sum[people] += m.community.bits(k.given, k.family)
		n[people]++
	}
	if got := sum['b'] / n['b']; math.Abs(got-math.Log2(10)) > .5 {
		t.Errorf("names of the small people say %.2f bits less, want about %.2f", got, math.Log2(10))
	}
	if got := sum['a'] / n['a']; got > .7 {
		t.Errorf("names of the large people say %.2f bits less, want about %.2f (more by chance, as less than 0 is not given)", got, -math.Log2(.9))
	}
}

// letters writes a number in letters, so that it can stand in a name.
func letters(n int) string {
	s := ""
	for range 3 {
		s += string(rune('a' + n%26))
		n = n/26 + 7*n%26
	}
	return s
}

// Where names are drawn independently they must not be found to go together.
func TestIndependentNamesDoNotGoTogether(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	var ls []line
	for i := range 6000 {
		ls = append(ls, line{name: fmt.Sprintf("G%s F%sfam", letters(zipf(rng, 60, 8)), letters(zipf(rng, 400, 20))), sex: SexM, course: int32(i % 5), week: i % 50})
	}
	m := link(t, archive(ls), Options{Fixed: true}).m
	sum := 0.
	for _, k := range m.names.keys {
		sum += m.community.bits(k.given, k.family)
	}
	if got := sum / float64(len(m.names.keys)); got > .6 {
		t.Errorf("independent names say %.2f bits less, want nearly none", got)
	}
}

// Two who run every week on different weekdays cannot meet: that they never
// did says nothing. Ann ran in 5 of 9 weeks, and Cat in 4 of these 9 weeks: by
// chance they would have met 4 × 5/9 = 2.22 times, 2.22 / ln 2 = 3.21 bits.
// Seen from Cat it is the same. Dot has one line, in a week when Ann, who ran
// in 5 of 9, was missing: 5/9 / ln 2 = .80 bits.
func TestTakingTurnsNeedsOneWeekday(t *testing.T) {
	var ls []line
	for w := range 10 {
		if w%2 == 0 {
			ls = append(ls, line{name: "Ann Hill", course: 0, week: w}, line{name: "Bea Ford", course: 1, week: w})
		} else {
			ls = append(ls, line{name: "Cat Wood", course: 0, week: w})
		}
	}
	ls = append(ls, line{name: "Dot Lane", course: 1, week: 3})
	d := archive(ls)
	for i := range ls {
		if ls[i].name == "Bea Ford" {
			d.rows.Day[i]++ // Sundays
		}
	}
	m := link(t, d, Options{Fixed: true}).m
	sig := func(name string) *cluster {
		for i := range ls {
			if ls[i].name == name {
				return &m.sigs[m.sigOf[i]]
			}
		}
		t.Fatal(name)
		return nil
	}
	ann, bea, cat, dot := sig("Ann Hill"), sig("Bea Ford"), sig("Cat Wood"), sig("Dot Lane")
	if s := m.weigh(ann, dot); math.Abs(float64(s.bits[TakeTurns])-5./9/math.Ln2) > .01 {
		t.Errorf("one line where Ann was missing: %.2f bits, want %.2f", s.bits[TakeTurns], 5./9/math.Ln2)
	}
	if s := m.weigh(ann, bea); s.bits[TakeTurns] != 0 {
		t.Errorf("Saturdays and Sundays: %.2f bits", s.bits[TakeTurns])
	}
	if s := m.weigh(ann, cat); math.Abs(float64(s.bits[TakeTurns])-20./9/math.Ln2) > .01 {
		t.Errorf("every other Saturday each: %.2f bits, want %.2f", s.bits[TakeTurns], 20./9/math.Ln2)
	}
}
