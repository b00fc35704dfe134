package who

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"lapwing/pipeline/unit"
)

// The edges of many random windows, pooled from two halves in either order,
// say for every date how many windows leave it out, as far as edgeMost.
func TestEdgesCountTheLinesThatRuleADateOut(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 8))
	for range 300 {
		n := 1 + rng.IntN(30)
		type window struct{ lo, hi unit.Day }
		var all []window
		var one, other, back edges
		for k := range n {
			lo := unit.Day(rng.IntN(60))
			w := window{lo, lo + unit.Day(rng.IntN(40))}
			all = append(all, w)
			if k%3 == 0 {
				one.add(w.lo, w.hi)
			} else {
				other.add(w.lo, w.hi)
			}
		}
		back = other
		back.pool(&one)
		one.pool(&other)
		if one != back {
			t.Fatalf("pooled in two orders: %v and %v", one, back)
		}
		least, lo := n+1, unit.Day(0)
		for day := unit.Day(0); day < 100; day++ {
			out := 0
			for _, w := range all {
				if day < w.lo || day > w.hi {
					out++
				}
			}
			if out < least {
				least, lo = out, day
			}
		}
		if least > edgeMost/2 {
			continue // more than the edges are kept for
		}
		f := fitBirths(nil, &one, nil, 0, 1<<12) // so that only the number counts
		if int(f.against) != least {
			t.Fatalf("%v: %d lines against %d..%d, want %d (at %d)", all, f.against, f.lo, f.hi, least, lo)
		}
		for _, day := range []unit.Day{f.lo, f.hi} {
			out := 0
			for _, w := range all {
				if day < w.lo || day > w.hi {
					out++
				}
			}
			if day > -1000 && day < 1000 && out != least {
				t.Fatalf("%v: day %d is left out by %d, want %d", all, day, out, least)
			}
		}
	}
}

// Births spread evenly over 72 years. One line of 1990 against one of 1960: if
// they are one person's, either line is wrong (2^-6.5) and hits on its year by
// chance, so the weight is a little over -6.5 + 1 bits (either may be the wrong
// one) + log2 2.
func TestWeightOfAWrongLine(t *testing.T) {
	m := link(t, archive([]line{{name: "Zoe Ford"}, {name: "Ann Hill", week: 1}}), Options{Fixed: true}).m
	year := func(y, n int) *cluster {
		c := &cluster{}
		for range n {
			c.ages.add(unit.NewDay(y, 1, 1), unit.NewDay(y, 12, 31))
		}
		c.lo, c.hi, c.births = unit.NewDay(y, 1, 1), unit.NewDay(y, 12, 31), c.ages.n
		return c
	}
	weight := func(a, b *cluster) float64 {
		var s sum
		m.weighBirth(a, b, &s)
		return float64(s.bits[Birth])
	}
	if got := weight(year(1960, 1), year(1990, 1)); math.Abs(got+4.5) > .5 {
		t.Errorf("one line against one: %.2f bits, want about -4.5", got)
	}
	if got := weight(year(1960, 50), year(1990, 1)); math.Abs(got+6.5-math.Log2(51)) > .5 {
		t.Errorf("one line against fifty: %.2f bits, want about -.8", got)
	}
	if got := weight(year(1960, 50), year(1990, 50)); got != m.w.BirthApart {
		t.Errorf("fifty lines against fifty: %.2f bits, want %.0f", got, m.w.BirthApart)
	}
	// One wrong line in a cluster must not speak for all of it.
	mixed := year(1990, 30)
	for range 2 {
		one := year(1960, 1)
		p := m.names.pool(mixed, one)
		mixed = &p
	}
	if mixed.births != 30 || mixed.strange != 2 || mixed.lo != unit.NewDay(1990, 1, 1) {
		t.Errorf("30 lines of 1990 and 2 of 1960: born %s with %d lines, %d strange", mixed.lo, mixed.births, mixed.strange)
	}
	if got := weight(mixed, year(1990, 20)); got < 4 {
		t.Errorf("lines of 1990 against the same with two wrong ones: %.2f bits", got)
	}
}

// A line of the wrong group leaves a runner of wide groups with a window of a
// few days. It must not keep the rest apart.
func TestOneWrongGroupDoesNotSplit(t *testing.T) {
	var lines []line
	for w := range 40 {
		l := line{name: "Elke Fischer", week: w, course: 1, sex: SexW, age: 18, upTo: 34}
		switch {
		case w == 30:
			l.age, l.upTo = 35, 39
		case w%4 == 0:
			l.course, l.age, l.upTo = 2, 29+w/20, 0
		}
		lines = append(lines, l)
	}
	own := len(lines)
	r := link(t, archive(crowd(lines)), Options{Fixed: true})
	rows := make([]int, own)
	for k := range rows {
		rows[k] = k
	}
	if !same(r, rows...) {
		t.Errorf("the lines of one runner became several: %v", r.Runner[:own])
	}
}

// Few lines of the other sex among many are mistakes, half and half are two
// people.
func TestWrongSexAmongMany(t *testing.T) {
	for _, c := range []struct {
		wrong int
		same  bool
	}{{2, true}, {20, false}} {
		var lines []line
		for w := range 60 {
			l := line{name: "Zahid Mahmood", week: w, course: 1, sex: SexM, age: 40, upTo: 44}
			if w%(60/c.wrong) == 1 {
				l.sex = SexW
			}
			lines = append(lines, l)
		}
		r := link(t, archive(crowd(lines)), Options{Fixed: true})
		if got := same(r, 0, 1); got != c.same {
			t.Errorf("%d of 60 lines of the other sex: one person %v, want %v", c.wrong, got, c.same)
		}
	}
}

// Two people of one name who stand together in some runs of a course without
// ages are told apart by pace and by how often each comes.
func TestTwoPeopleOfOneNameAtOneCourse(t *testing.T) {
	for _, c := range []struct {
		gap  float64 // of log time between the two
		few  int     // one in few weeks the second is there
		most float64 // share of lines with the wrong one or with nobody
	}{{.35, 2, .02}, {0, 12, .2}} {
		t.Run(fmt.Sprint(c.gap), func(t *testing.T) {
			rng := rand.New(rand.NewPCG(9, 9))
			var lines []line
			var who []int
			for w := range 90 {
				lines = append(lines, line{name: "Margaret Twygrave", week: w, course: 1, sex: SexW, secs: 1500 * math.Exp(.06*rng.NormFloat64())})
				who = append(who, 0)
				if w%c.few == 0 {
					lines = append(lines, line{name: "Margaret Twygrave", week: w, course: 1, sex: SexW, secs: 1500 * math.Exp(c.gap+.06*rng.NormFloat64())})
					who = append(who, 1)
				}
			}
			r := link(t, archive(crowd(lines)), Options{Fixed: true})
			// The runner with most lines of each.
			count := map[[2]int]int{}
			for k, p := range who {
				count[[2]int{p, int(r.Runner[k])}]++
			}
			best := map[int]int{}
			for k, n := range count {
				best[k[0]] = max(best[k[0]], n)
			}
			if got := float64(len(who)-best[0]-best[1]) / float64(len(who)); got > c.most {
				t.Errorf("%.2f of the lines are not with their runner's others, want at most %.2f", got, c.most)
			}
		})
	}
}
