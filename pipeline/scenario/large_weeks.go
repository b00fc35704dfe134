package scenario

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"lapwing/pipeline/unit"
)

// weekly is what changes about a runner from week to week.
type weekly struct {
	random rand.PCG
	form   float32 // drift of form so far
	last   uint16  // week of the last result
	done   uint16  // results so far
}

// outing is one result before it is put in order.
type outing struct {
	exact           float64 // log seconds
	person          int32
	course          int32
	form, shortfall float32
}

// Each makes every result, a run at a time, in order of date and then of
// course. Memory is bounded by people and by one week's results. An error
// from see stops it.
func (a *LargeArchive) Each(see func(*LargeRun) error) error {
	return a.each(func(b []byte, _ *LargeRun) []byte { return b }, func(r *LargeRun, _ []byte) error { return see(r) })
}

// each renders runs in parallel and hands them on in order.
func (a *LargeArchive) each(render func([]byte, *LargeRun) []byte, emit func(*LargeRun, []byte) error) error {
	state := make([]weekly, len(a.runners))
	for i := range state {
		state[i].random = a.runners[i].random
	}
	order := a.weekOrder()
	parts := make([][]outing, a.chunkCount())
	conditions := make([]float64, len(a.Courses))
	byCourse := make([][]outing, len(a.Courses))
	runs, texts := make([]LargeRun, len(a.Courses)), make([][]byte, len(a.Courses))
	for w := range a.Options.Weeks {
		a.weather(w, conditions)
		parallel(len(parts), func(k int) { parts[k] = a.chunkWeek(k, w, state, conditions, parts[k][:0]) })
		for c := range byCourse {
			byCourse[c] = byCourse[c][:0]
		}
		for _, part := range parts {
			for _, o := range part {
				byCourse[o.course] = append(byCourse[o.course], o)
			}
		}
		parallel(len(byCourse), func(c int) {
			runs[c].Course, runs[c].Date, runs[c].Conditions = c, a.date(w, c), conditions[c]
			runs[c].fill(byCourse[c])
			texts[c] = render(texts[c][:0], &runs[c])
		})
		for _, c := range order {
			if len(runs[c].Person) == 0 {
				continue
			}
			if err := emit(&runs[c], texts[c]); err != nil {
				return err
			}
		}
	}
	return nil
}

// weekOrder lists courses by weekday from Monday, then by index.
func (a *LargeArchive) weekOrder() []int {
	order := make([]int, len(a.Courses))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(a.date(0, i), a.date(0, j)) })
	return order
}

func (a *LargeArchive) date(week, course int) unit.Day {
	fromMonday := (int(a.Courses[course].Weekday) + 6) % 7
	return a.Options.From + unit.Day(7*week+fromMonday)
}

// weather draws the conditions of every course in a week: half of the variance
// is shared by the region, gales and heat waves are regional, mud is the
// course's own and seasonal.
func (a *LargeArchive) weather(week int, conditions []float64) {
	r := rand.New(rand.NewPCG(a.Options.Seed, uint64(week)<<8|'w'))
	regional := map[int]float64{}
	for c := range a.Courses {
		course := &a.Courses[c]
		shared, ok := regional[course.region]
		if !ok {
			shared = regionSD * r.NormFloat64()
			if r.Float64() < stormShare {
				shared += .03 + .04*r.Float64()
			}
			regional[course.region] = shared
		}
		yearDay := a.date(week, c).Time().YearDay() - 1
		conditions[c] = shared + localSD*r.NormFloat64() + course.Mud*mudSeason(yearDay)
	}
}

// chunkWeek makes one week's results of a chunk of runners. Each draws only
// from their own generator. Whether they run is sequential sampling: with k
// results left for n weeks, run with probability k/n (Fan, Muller and Rezucha
// 1962, "Development of Sampling Plans by Using Sequential (Item by Item)
// Selection Techniques and Digital Computers", JASA 57:387-402), so that
// everybody ends with exactly their number.
func (a *LargeArchive) chunkWeek(k, week int, state []weekly, conditions []float64, out []outing) []outing {
	source := &borrowed{}
	r := rand.New(source)
	lo, hi := a.chunk(k)
	for i := lo; i < hi; i++ {
		p, s := &a.runners[i], &state[i]
		if week < int(p.start) || s.done == p.results {
			continue
		}
		source.PCG = &s.random
		left := float64(p.results - s.done)
		if r.Float64()*float64(int(p.end)-week) >= left {
			continue
		}
		course := a.whereTo(r, int(p.home), week)
		if s.done > 0 {
			s.form += float32(formSD * math.Sqrt(float64(week-int(s.last))) * r.NormFloat64())
		}
		form := p.skill + s.form
		if p.improves {
			form += p.gain * float32(improvement(int(s.done)))
		}
		c := &a.Courses[course]
		short := p.shortfall(r, course != int(p.home) && c.fast)
		if r.Float64() < .015 { // with a pushchair, walking, or stopping to help
			short += .3 + .3*r.Float64()
		}
		out = append(out, outing{
			exact:  float64(form) + c.Effect + conditions[course] + short + noiseSD*r.NormFloat64(),
			person: int32(i), course: int32(course), form: form, shortfall: float32(short),
		})
		s.last = uint16(week)
		s.done++
	}
	return out
}

// whereTo is the home course, or a visit; where that one is not held, the
// nearest that is.
func (a *LargeArchive) whereTo(r *rand.Rand, home, week int) int {
	c, held := &a.Courses[home], a.held[week]
	to := home
	if len(c.visits) > 0 && r.Float64() < awayShare {
		to = int(c.visits[pick(c.visitUpTo, r.Float64())])
	}
	if held[to] {
		return to
	}
	if held[home] {
		return home
	}
	for _, v := range c.visits {
		if held[v] {
			return int(v)
		}
	}
	return 0
}

// fill puts a run's outings in order of finish and rounds times up to whole
// seconds.
func (l *LargeRun) fill(outings []outing) {
	slices.SortFunc(outings, func(p, q outing) int {
		switch {
		case p.exact < q.exact:
			return -1
		case p.exact > q.exact:
			return 1
		}
		return cmp.Compare(p.person, q.person)
	})
	l.Person, l.TimeMS, l.Form, l.Shortfall = l.Person[:0], l.TimeMS[:0], l.Form[:0], l.Shortfall[:0]
	for _, o := range outings {
		seconds := math.Ceil(math.Exp(min(o.exact, math.Log(3*3600))))
		l.Person = append(l.Person, o.person)
		l.TimeMS = append(l.TimeMS, int32(seconds)*1000)
		l.Form = append(l.Form, o.form)
		l.Shortfall = append(l.Shortfall, o.shortfall)
	}
}
