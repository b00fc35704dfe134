package who

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// clean makes n rows of numbered runners without mistakes, ten rows each,
// straight into columns.
func clean(n int) truth {
	rng := rand.New(rand.NewPCG(10, 10))
	families := familyNames(rng)
	men := givenNames(rng, menNames, []string{"an", "on", "us", "ir", "o", "el"})
	women := givenNames(rng, womenNames, []string{"a", "ia", "ine", "elle", "is", "een"})
	people := n / 10
	courses := max(5, people/600)
	const weeks = 150
	first := unit.NewDay(2022, 1, 1)
	texts := map[string]int32{}
	d := truth{rows: &Rows{Numbers: make([]string, people+1)}}
	type person struct {
		name, club, home int32
		sex              uint8
		born             unit.Day
		pace             float32
	}
	ps := make([]person, people)
	for p := range ps {
		x := &ps[p]
		x.sex = SexM + uint8(rng.IntN(2))
		list := men
		if x.sex == SexW {
			list = women
		}
		s := list[zipf(rng, len(list), 12)] + " " + families[zipf(rng, len(families), 20)]
		id, ok := texts[s]
		if !ok {
			id = int32(len(d.names))
			texts[s] = id
			d.names = append(d.names, name.Parse(s))
		}
		x.name, x.home = id, int32(rng.IntN(courses))
		if rng.Float64() < .4 {
			x.club = 1 + x.home*2 + int32(rng.IntN(3))
		}
		x.born = first - unit.Day(3000+rng.IntN(24000))
		x.pace = float32(7.35 + .21*rng.NormFloat64())
		d.rows.Numbers[p+1] = fmt.Sprint(100000 + p*7)
	}
	r := d.rows
	for k := range n {
		p := k * 7919 % people // rows come in no order of people
		x := &ps[p]
		week := k * weeks / n
		day := first + unit.Day(7*week)
		c := x.home
		if rng.Float64() < .15 {
			c = (c + int32(1+rng.IntN(4))) % int32(courses)
		}
		a := age.On(x.born, day)
		w := age.OfAges(a, a, day)
		r.Key = append(r.Key, int64(k))
		r.Name = append(r.Name, x.name)
		r.Number = append(r.Number, int32(p+1))
		r.Sex = append(r.Sex, x.sex)
		r.Club = append(r.Club, x.club)
		r.Course = append(r.Course, c)
		r.Run = append(r.Run, int32(week*courses)+c)
		r.Series = append(r.Series, 0)
		r.Day = append(r.Day, day)
		r.BirthLo, r.BirthHi = append(r.BirthLo, w.Lo), append(r.BirthHi, w.Hi)
		r.Basis = append(r.Basis, uint8(age.OnTheDay))
		r.LogTime = append(r.LogTime, x.pace+float32(.05*math.Abs(rng.NormFloat64())))
		d.who = append(d.who, int32(p))
	}
	return d
}

func BenchmarkNumbered(b *testing.B) {
	for _, n := range []int{100_000, 1_000_000, 10_000_000} {
		b.Run(fmt.Sprintf("rows=%d", n), func(b *testing.B) {
			if testing.Short() && n > 1_000_000 {
				b.Skip("ten million rows: run without -short")
			}
			d := clean(n)
			b.ResetTimer()
			for b.Loop() {
				r := link(b, d, Options{})
				s := measure(r.Runner, d.who)
				b.ReportMetric(s.precision, "precision")
				b.ReportMetric(s.recall, "recall")
			}
		})
	}
}

func BenchmarkMessyWithoutNumbers(b *testing.B) {
	d := district{people: 12000, courses: 20, weeks: 104, messy: .5, seed: 300}.make()
	b.ResetTimer()
	for b.Loop() {
		r := link(b, d, Options{})
		s := measure(r.Runner, d.who)
		b.ReportMetric(s.precision, "precision")
		b.ReportMetric(s.recall, "recall")
		b.ReportMetric(float64(d.rows.Len()), "rows")
	}
}
