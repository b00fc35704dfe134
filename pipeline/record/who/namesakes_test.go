package who

import (
	"math"
	"testing"
)

// Two of one name whose ages are known, and a regular of that name on sheets
// with wide age groups, who fits both and is now as fast as the one, now as the
// other: all the regular's lines go together.
func TestRegularAmongNamesakes(t *testing.T) {
	var ls []line
	for w := range 10 {
		ls = append(ls, line{name: "Peter Calover", sex: SexM, course: 2, week: 3 * w, age: 24, secs: 1420},
			line{name: "Peter Calover", sex: SexM, course: 0, week: 3*w + 1, age: 37, secs: 1640})
	}
	for w := range 12 {
		ls = append(ls, line{name: "Peter Calover", sex: SexM, course: 1, week: 3*w + 2, age: 20, upTo: 39, secs: float64(1440 + w%2*170)})
	}
	r := link(t, archive(crowd(ls)), Options{})
	if same(r, 0, 1) {
		t.Fatalf("two of other ages became one: %v", r.Runner[:20])
	}
	series := make([]int, 12)
	for k := range series {
		series[k] = 20 + k
	}
	if !same(r, series...) {
		t.Errorf("a regular's lines were dealt out among namesakes: %v", r.Runner[20:32])
	}
}

// However rare a name is by its parts, where k are known to have it, it says no
// more than which of the k: prior and name come to -log2 k.
func TestNameOfSeveralPeople(t *testing.T) {
	var ls []line
	for w := range 4 {
		for k := range 3 { // 20, 32 and 44 years old
			ls = append(ls, line{name: "Ottoline Penhurst", sex: SexW, course: int32(k), week: w, age: 20 + 12*k})
		}
		ls = append(ls, line{name: "Maud Thornsey", sex: SexW, course: 1, week: w, age: 33})
	}
	m := link(t, archive(crowd(ls)), Options{}).m
	name := func(row int) float64 {
		c := &m.sigs[m.sigOf[row]]
		var s sum
		m.weighNames(c, c, &s)
		return s.total
	}
	if got, want := name(0), math.Log2(m.people/3); math.Abs(got-want) > 1e-5 {
		t.Errorf("a name of three people weighs %.3f, want %.3f", got, want)
	}
	if name(3) <= math.Log2(m.people) {
		t.Errorf("a rare name of one person weighs only %.1f", name(3))
	}
}

// One line of a junior group among a regular's lines of a wide group puts the
// birth of all of them where it is not. The regular is still compared with
// the lines that tell the year of birth.
func TestOneWrongLineAmongWideGroups(t *testing.T) {
	var ls []line
	for w := range 12 {
		ls = append(ls, line{name: "Peter Calover", sex: SexM, course: 1, week: 2 * w, age: 24},
			line{name: "Peter Calover", sex: SexM, course: 2, week: 2*w + 1, age: 18, upTo: 34})
	}
	ls[23].age, ls[23].upTo = 18, 19
	r := link(t, archive(crowd(ls)), Options{})
	for i := range 23 {
		if !same(r, 0, i) {
			t.Fatalf("lines with one wrong age among them: %v", r.Runner[:24])
		}
	}
}

// The more lines the smaller of two has, the more it takes to join them.
func TestJoinFrom(t *testing.T) {
	for _, c := range []struct {
		a, b int32
		want float64
	}{{1, 1, 0}, {1, 400, 0}, {2, 2, 1.5}, {4, 90, 3}, {90, 4, 3}, {60, 70, 8.5}} {
		if got := JoinFrom(0, c.a, c.b); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%d and %d lines: from %.2f, want %.2f", c.a, c.b, got, c.want)
		}
	}
	for _, c := range []struct {
		n    int32
		want float64
	}{{1, 2}, {4, 3.6}, {50, 5}} {
		if got := JoinNumbered(0, c.n, c.n); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%d and %d lines, one of them with a number: from %.2f, want %.2f", c.n, c.n, got, c.want)
		}
	}
	if got := joinSingle(8*2500) - joinSingle(2500); math.Abs(got-.45) > 1e-12 {
		t.Errorf("eight times as many people raise it by %.2f, want .45", got)
	}
}

// Nothing but their times tells two of a common name apart where one stops and the
// other begins; somebody's slow days are nobody else's.
func TestTwoPacesOneAfterTheOther(t *testing.T) {
	common := func() (ls []line) {
		for c := range int32(3) { // so that the name says little
			for k, n := range []string{"Peter Smith", "Peter Wood", "Paul Smith", "Mary Smith", "Peter Jones"} {
				ls = append(ls, line{name: n, course: c, week: 30 + k, age: 20 + 7*k + 3*int(c), secs: 1500})
			}
		}
		return ls
	}
	var after, scattered []line
	for w := range 24 {
		one, other := line{name: "Peter Smith", course: 1, week: w, secs: 1400 + 5*float64(w%5)}, line{name: "Peter Smith", course: 1, week: w, secs: 2000 + 5*float64(w%5)}
		if w < 12 {
			after = append(after, one)
		} else {
			after = append(after, other)
		}
		if w%3 == 1 {
			scattered = append(scattered, other)
		} else {
			scattered = append(scattered, one)
		}
	}
	r := link(t, archive(crowd(append(after, common()...))), Options{})
	if same(r, 0, 23) || !same(r, 0, 5, 11) || !same(r, 12, 18, 23) {
		t.Errorf("one after the other: runners %v", r.Runner[:24])
	}
	if r = link(t, archive(crowd(append(scattered, common()...))), Options{}); !same(r, 0, 1, 2, 12, 22, 23) {
		t.Errorf("scattered: runners %v", r.Runner[:24])
	}
}
