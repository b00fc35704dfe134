package speed

import (
	"math"
	"math/rand/v2"
	"sort"
)

// A made-up district with known truth. Towns lie on a plane, each with one
// course; every week every runner decides whether to run, where, and how hard.
// Abilities, weather, mud, injuries and effort follow laws of their own, not
// those of the model; some worlds break its assumptions on purpose.

// baseLog is the log time in seconds of the middle runner all-out on a level,
// firm course on a still day.
var baseLog = math.Log(1650)

type world int

const (
	base     world = iota // all-out days drawn to fast courses
	noselect              // effort has nothing to do with the course
	sel                   // … strongly
	gamma                 // no all-out days: gamma shortfalls, heavy-tailed noise
	persist               // hard and easy spells of about ten runs
	gauss                 // symmetric noise, nobody holds back
)

type district struct {
	world                   world
	courses, runners, weeks int
	results                 int // wanted
	seed                    uint64
	buggies                 float64 // share of runners who push one on 3 of 10 days; 0 is .03
}

// truth is in log time; per result unless said.
type truth struct {
	course  []float64 // per course
	day     []float64 // per run
	ability []float64 // current all-out level, log time
	allOut  []bool
	wrong   []bool // somebody else's time
}

type visit struct {
	runner, course, week int32
	y, ability           float32
	allOut, wrong        bool
}

func (d district) simulate() (*Input, *truth) {
	rng := rand.New(rand.NewPCG(d.seed, uint64(d.world)+77))
	norm, uni := rng.NormFloat64, rng.Float64
	// Terrain: how hilly and how soft, in log time.
	c := make([]float64, d.courses)
	mud := make([]float64, d.courses)
	x, y := make([]float64, d.courses), make([]float64, d.courses)
	size := make([]float64, d.courses)
	opens := make([]int, d.courses)
	side := math.Sqrt(float64(d.courses))
	for k := range c {
		hills := .012 * rng.ExpFloat64()
		soft := 0.0
		switch u := uni(); {
		case u < .08:
			soft = .08 + .03*uni() // sand
		case u < .45:
			soft = .01 + .04*uni() // grass and woods
			mud[k] = .03 * uni()
		}
		c[k] = -.02 + hills + soft + .008*norm() + mud[k]/math.Pi
		x[k], y[k] = side*uni(), side*uni()
		size[k] = math.Exp(.7 * norm())
		if k > d.courses/2 {
			opens[k] = rng.IntN(max(1, d.weeks/2))
		}
	}
	byPace := make([]int, d.courses)
	for k := range byPace {
		byPace[k] = k
	}
	sort.Slice(byPace, func(a, b int) bool { return c[byPace[a]] < c[byPace[b]] })
	lure := make([]float64, d.courses) // 1 for the fastest course, 0 from the median on
	for i, k := range byPace {
		lure[k] = max(0, 1-float64(2*i)/float64(max(1, d.courses-1)))
	}
	// Weather: shared by neighbours, with warm spells, and mud by season.
	const regions = 9
	region := func(k int) int {
		return int(3*x[k]/side)%3*3 + int(3*y[k]/side)%3
	}
	spell := make([][]float64, regions)
	for g := range spell {
		spell[g] = make([]float64, d.weeks)
		heat := 0.0
		for w := range spell[g] {
			heat = .4*heat + .007*norm()
			spell[g][w] = heat
			if uni() < .02 {
				spell[g][w] += .02 + .04*uni()
			}
		}
	}
	dayEffect := make([]float64, d.courses*d.weeks)
	held := make([]bool, d.courses*d.weeks)
	for k := range c {
		for w := range d.weeks {
			season := mud[k] * (max(0, math.Cos(2*math.Pi*float64(w-4)/52)) - 1/math.Pi)
			dayEffect[k*d.weeks+w] = spell[region(k)][w] + season + .008*norm()
			held[k*d.weeks+w] = w >= opens[k] && uni() > .04
		}
	}
	// Who goes where: neighbours weighted by distance and by speed.
	cumSize := cumulate(size)
	away := make([][]float64, d.courses)
	for k := range away {
		p := make([]float64, d.courses)
		for j := range p {
			if j != k {
				dist := math.Hypot(x[j]-x[k], y[j]-y[k])
				p[j] = size[j] * (math.Exp(-dist/.8) + 1e-4) * (1 + lure[j])
			}
		}
		away[k] = cumulate(p)
	}
	// Attendance: most come a few times, some nearly always.
	keen := make([]float64, d.runners)
	total := 0.0
	for r := range keen {
		keen[r] = math.Exp(1.4 * norm())
		total += keen[r]
	}
	scale := float64(d.results) / (total * float64(d.weeks) * .62)
	visits := make([]visit, 0, d.results+d.results/8)
	for r := range d.runners {
		home := pick(cumSize, uni())
		from := opens[home]
		fresh := uni() < .5
		if fresh {
			from += int(float64(d.weeks-from) * uni())
		}
		rate := min(.95, keen[r]*scale*float64(d.weeks)/float64(max(10, d.weeks-from)))
		skill := .19 * norm()
		gain := 0.0 // what a newcomer has still to learn
		if fresh {
			gain = max(0, .06+.03*norm())
		}
		travels := .3 * uni()
		hard := betaDraw(rng, 1.8, 3.2) // odds of an all-out day
		hold := .03 + .07*uni()*uni() + .02*uni()
		buggy := uni() < max(.03, d.buggies)
		injured := -1
		if uni() < .25 && rate > .1 {
			injured = from + int(float64(d.weeks-from)*uni())
		}
		hurt := 0.0
		wave, phase := .01*uni(), 2*math.Pi*uni()
		drift := 0.0
		going := uni() < hard // state of a spell
		runs := 0
		for w := from; w < d.weeks; w++ {
			drift += .0028 * norm()
			if w == injured {
				hurt = .03 + .08*uni()
				w += 8 + rng.IntN(12)
				if w >= d.weeks {
					break
				}
			}
			hurt *= .93
			if uni() >= rate && !(w == from && !fresh && uni() < .2) {
				continue
			}
			k := home
			if uni() < travels {
				k = pick(away[home], uni())
			}
			if !held[k*d.weeks+w] {
				continue
			}
			ability := skill + drift + hurt + gain*math.Exp(-float64(runs)/7) +
				wave*math.Sin(2*math.Pi*float64(w)/52+phase)
			p := hard
			if k != home {
				switch d.world {
				case base, gauss, persist:
					p += .55 * lure[k] * (1 - p)
				case sel:
					p += .9 * lure[k] * (1 - p)
				}
			}
			if d.world != persist || uni() < .1 {
				going = uni() < p
			}
			noise, slow := .017*norm(), 0.0
			switch d.world {
			case gauss:
				noise = .05 * norm()
			case gamma:
				slow = hold * .5 * (rng.ExpFloat64() + rng.ExpFloat64())
				if k != home {
					slow *= 1 - .5*lure[k]
				}
				noise = .017 * studentDraw(rng, 5) / math.Sqrt(5./3)
			default:
				if !going {
					slow = hold * rng.ExpFloat64()
				}
			}
			if d.world != gauss && (buggy && uni() < .3 || uni() < .002) {
				slow += .3 + .3*uni()
			}
			v := visit{runner: int32(r), course: int32(k), week: int32(w), ability: float32(ability), allOut: going}
			t := ability + c[k] + dayEffect[k*d.weeks+w] + slow + noise
			if uni() < .0015 {
				t, v.wrong = c[k]+.22*norm(), true
			}
			// whole seconds, as on a results sheet
			seconds := math.Round(math.Exp(min(max(t+baseLog, math.Log(800)), math.Log(6000))))
			v.y = LogTime(seconds, referenceM)
			visits = append(visits, v)
			runs++
		}
	}
	return assemble(d, visits, c, dayEffect)
}

// assemble turns visits, sorted by runner and week, into columns.
func assemble(d district, visits []visit, c, dayEffect []float64) (*Input, *truth) {
	in := &Input{Courses: make([]CourseInfo, d.courses)}
	for k := range in.Courses {
		in.Courses[k].DistanceM = referenceM
	}
	number := make([]int32, d.courses*d.weeks)
	for _, v := range visits {
		number[int(v.course)*d.weeks+int(v.week)] = 1
	}
	tr := &truth{course: c}
	for k := range number {
		if number[k] > 0 {
			number[k] = int32(len(in.Runs))
			in.Runs = append(in.Runs, RunInfo{int32(k / d.weeks), int32(k % d.weeks * 7)})
			tr.day = append(tr.day, dayEffect[k])
		}
	}
	last := int32(-1)
	for i, v := range visits {
		if v.runner != last {
			in.Offsets = append(in.Offsets, int32(i))
			last = v.runner
		}
		in.Run = append(in.Run, number[int(v.course)*d.weeks+int(v.week)])
		in.LogTime = append(in.LogTime, v.y)
		tr.ability = append(tr.ability, float64(v.ability))
		tr.allOut = append(tr.allOut, v.allOut)
		tr.wrong = append(tr.wrong, v.wrong)
	}
	in.Offsets = append(in.Offsets, int32(len(visits)))
	return in, tr
}

func cumulate(p []float64) []float64 {
	s := make([]float64, len(p))
	t := 0.0
	for i, v := range p {
		t += v
		s[i] = t
	}
	return s
}

func pick(cum []float64, u float64) int {
	return min(sort.SearchFloat64s(cum, u*cum[len(cum)-1]), len(cum)-1)
}

// betaDraw and studentDraw go through gamma variates of Marsaglia and Tsang
// (2000, ACM TOMS 26:363).
func betaDraw(rng *rand.Rand, a, b float64) float64 {
	x, y := gammaDraw(rng, a), gammaDraw(rng, b)
	return x / (x + y)
}

func studentDraw(rng *rand.Rand, df float64) float64 {
	return rng.NormFloat64() / math.Sqrt(2*gammaDraw(rng, df/2)/df)
}

func gammaDraw(rng *rand.Rand, a float64) float64 {
	d := a - 1./3
	for {
		x := rng.NormFloat64()
		v := 1 + x/math.Sqrt(9*d)
		if v <= 0 {
			continue
		}
		v = v * v * v
		if math.Log(1-rng.Float64()) < .5*x*x+d-d*v+d*math.Log(v) {
			return d * v
		}
	}
}

// accuracy compares a fit with the truth. All are in per cent of time.
type accuracy struct {
	course   float64 // RMSE of centred course effects, equal weights, courses with an index
	fast     float64 // mean error of the fastest 30 % of the courses less the rest
	cover    float64 // share of courses whose 90 % interval holds the truth
	day      float64 // RMSE of conditions, weighted by results, course means taken out
	dayCover float64
	form     float64 // RMSE of current form after the common offset, 10 results or more
	formMAD  float64 // median absolute error of the same
	offset   float64 // the common offset
	judged   int     // courses with an index
}

func (tr *truth) judge(in *Input, m *Model) accuracy {
	var a accuracy
	mean := map[int32]float64{}
	weight := map[int32]float64{}
	for c, k := range m.Courses {
		mean[k.Group] += float64(k.Results) * tr.course[c]
		weight[k.Group] += float64(k.Results)
	}
	n := 0.0
	var errs, pace []float64
	for c, k := range m.Courses {
		if k.Standing == NoIndex {
			continue
		}
		e := k.Effect - (tr.course[c] - mean[k.Group]/weight[k.Group])
		errs, pace = append(errs, e), append(pace, tr.course[c])
		a.course += e * e
		if math.Abs(e) <= z90*k.SD {
			a.cover++
		}
		n++
	}
	a.judged = int(n)
	a.course = 100 * math.Sqrt(a.course/n)
	a.cover /= n
	sorted := append([]float64(nil), pace...)
	sort.Float64s(sorted)
	cut := sorted[len(sorted)*3/10]
	var fast, rest, nf, nr float64
	for i, e := range errs {
		if pace[i] < cut {
			fast += e
			nf++
		} else {
			rest += e
			nr++
		}
	}
	a.fast = 100 * (fast/max(1, nf) - rest/max(1, nr))
	// conditions: within courses
	dm, dw := make([]float64, len(in.Courses)), make([]float64, len(in.Courses))
	for e, k := range in.Runs {
		w := float64(m.Runs[e].Results)
		dm[k.Course] += w * (m.Runs[e].Effect - tr.day[e])
		dw[k.Course] += w
	}
	n = 0
	covered := 0.0
	for e, k := range in.Runs {
		w := float64(m.Runs[e].Results)
		d := m.Runs[e].Effect - tr.day[e] - dm[k.Course]/dw[k.Course]
		a.day += w * d * d
		if math.Abs(d) <= z90*m.Runs[e].SD {
			covered++
		}
		n += w
	}
	a.day = 100 * math.Sqrt(a.day/n)
	a.dayCover = covered / float64(len(in.Runs))
	// form
	var fe []float64
	for r, fm := range m.Form {
		if fm.Results >= 10 {
			i := int(in.Offsets[r+1]) - 1
			// form is stated on the mean 5 km course of the network
			g := int32(-1)
			for c, k := range m.Courses {
				if k.Network == m.Courses[in.course(i)].Network && in.Courses[c].DistanceM == referenceM {
					g = k.Group
					break
				}
			}
			fe = append(fe, fm.Log-(tr.ability[i]+baseLog-Origin+mean[g]/weight[g]))
		}
	}
	sort.Float64s(fe)
	a.offset = fe[len(fe)/2]
	for i := range fe {
		fe[i] -= a.offset
		a.form += fe[i] * fe[i]
		fe[i] = math.Abs(fe[i])
	}
	a.form = 100 * math.Sqrt(a.form/float64(len(fe)))
	sort.Float64s(fe)
	a.formMAD = 100 * fe[len(fe)/2]
	return a
}
