package scenario

import (
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
	"time"

	"lapwing/pipeline/unit"
)

// LargeOptions describe a large, clean archive: every line named, numbered and
// timed, no repeats, nothing misspelt. The zero value of a field means the
// default that Large would give for that many results.
type LargeOptions struct {
	Seed    uint64
	Results int      // exactly this many lines
	Runners int      // people; each has at least one result
	Courses int      // at most 10 800
	Weeks   int      // of the period
	From    unit.Day // a Monday
	Ages    bool     // print the age on the day instead of the age group
}

// Large gives options in the proportions of a big country's weekly runs: ten
// results a runner and year, up to 1 700 courses.
func Large(results int) LargeOptions { return LargeOptions{Results: results}.filled() }

func (o LargeOptions) filled() LargeOptions {
	if o.Seed == 0 {
		o.Seed = 1
	}
	if o.Weeks == 0 {
		o.Weeks = 53
		if o.Results > 12_000_000 {
			o.Weeks = 156
		}
	}
	if o.Runners == 0 {
		o.Runners = max(1, o.Results/10)
		if o.Weeks > 53 {
			o.Runners = max(1, o.Results/20)
		}
	}
	if o.Courses == 0 {
		o.Courses = min(1700, max(6, o.Results*53/o.Weeks/2500))
	}
	if o.From == 0 {
		o.From = unit.NewDay(2026, 10, 26) - unit.Day(7*o.Weeks)
	}
	return o
}

// LargeCourse is a course of a large archive with its true speed.
type LargeCourse struct {
	Slug, Name string
	Weekday    time.Weekday
	Effect     float64 // log time against a plain course, dry
	Mud        float64 // log time added in midwinter
	X, Y       float64 // place on the map
	Opened     int     // week of the first run
	region     int
	size       float64
	fast       bool
	visits     []int32 // other courses, nearest first
	visitUpTo  []float64
}

// LargeRun is one run with its results in order of finish. Its slices are used
// again for a later run: copy what is to be kept.
type LargeRun struct {
	Course     int // index in LargeArchive.Courses
	Date       unit.Day
	Conditions float64   // log time of the day, mud included
	Person     []int32   // index of the runner, first to last
	TimeMS     []int32   // whole seconds, in milliseconds
	Form       []float32 // log seconds of an all-out run over a plain 5 km that day
	Shortfall  []float32 // log time behind all-out
}

// LargeArchive is a large archive's people and courses. Its results are made
// as they are read, by Each, WriteSeason and WriteSheets.
type LargeArchive struct {
	Options LargeOptions
	Courses []LargeCourse
	clubs   []string
	runners []largeRunner
	held    [][]bool // by week and course
}

// largeRunner is all that is kept of a runner, whatever the length of the
// archive, beside the 24 bytes of weekly.
type largeRunner struct {
	random      rand.PCG
	name        fullName
	sex         byte
	improves    bool
	home, club  uint16
	born        int32
	start, end  uint16 // weeks: first possible, one past the last
	results     uint16 // over the whole period
	skill, gain float32
	habit
}

const noClub = ^uint16(0)

// NewLarge makes up the courses and people. With the results of one week on
// their way, an archive of 10 million results and 1 million runners needed 220
// MB, one of 30 million and 1.5 million 275 MB.
func NewLarge(o LargeOptions) (*LargeArchive, error) {
	o = o.filled()
	switch {
	case o.Results < 1 || o.Results > 200_000_000:
		return nil, fmt.Errorf("large archive: %d results, want 1 to 200 million", o.Results)
	case o.Courses > placeCount() || o.Courses > math.MaxUint16-1:
		return nil, fmt.Errorf("large archive: %d courses, want at most %d", o.Courses, placeCount())
	case o.Weeks < 1 || o.Weeks > 5000:
		return nil, fmt.Errorf("large archive: %d weeks, want 1 to 5000", o.Weeks)
	case o.Results < o.Runners:
		return nil, fmt.Errorf("large archive: %d results for %d runners, want at least one each", o.Results, o.Runners)
	}
	a := &LargeArchive{Options: o}
	a.makeCourses(rand.New(rand.NewPCG(o.Seed, 'c')))
	if err := a.makeRunners(); err != nil {
		return nil, err
	}
	return a, nil
}

func (a *LargeArchive) makeCourses(r *rand.Rand) {
	o := a.Options
	a.Courses = make([]LargeCourse, o.Courses)
	side := math.Sqrt(float64(o.Courses) / 150)
	kinds := []struct{ share, mean, sd float64 }{{.25, -.03, .010}, {.75, 0, .014}, {.93, .055, .02}, {1, .125, .03}}
	for i := range a.Courses {
		_, name := placeName(i)
		c := LargeCourse{Name: name, Slug: slug(name), X: r.Float64() * side, Y: r.Float64() * side}
		u, k := r.Float64(), 0
		for u >= kinds[k].share {
			k++
		}
		c.Effect = kinds[k].mean + kinds[k].sd*r.NormFloat64()
		if mud := .01 + .03*r.Float64(); r.Float64() < .3 && k > 0 {
			c.Mud = mud
		}
		c.size = math.Exp(.8 * r.NormFloat64())
		if opened := 3 + r.IntN(max(1, o.Weeks*3/4)); i > 0 && r.Float64() < .25 && opened < o.Weeks {
			c.Opened = opened
		}
		switch u := r.Float64(); {
		case u < .8:
			c.Weekday = time.Saturday
		case u < .9:
			c.Weekday = time.Sunday
		default:
			c.Weekday = time.Tuesday + time.Weekday(r.IntN(3))
		}
		c.region = int(c.X*3)*1000 + int(c.Y*3)
		a.Courses[i] = c
	}
	a.centre()
	parallel(len(a.Courses), a.neighbours)
	a.held = make([][]bool, o.Weeks)
	for w := range a.held {
		a.held[w] = make([]bool, o.Courses)
		for c := range a.held[w] { // the first course never rests, so that there is always somewhere to run
			a.held[w][c] = c == 0 || w >= a.Courses[c].Opened && r.Float64() < .96
		}
	}
	for i := range max(1, o.Courses*5/2) {
		town, _ := placeName(i * 2 / 5)
		a.clubs = append(a.clubs, town+" "+clubKind[(i*5+i/7)%len(clubKind)])
	}
}

// centre shifts the effects so that they average 0, and marks the fastest
// three tenths.
func (a *LargeArchive) centre() {
	effects, sum := make([]float64, len(a.Courses)), 0.0
	for i, c := range a.Courses {
		effects[i] = c.Effect
		sum += c.Effect
	}
	slices.Sort(effects)
	limit := effects[len(effects)*3/10]
	for i := range a.Courses {
		a.Courses[i].fast = a.Courses[i].Effect < limit
		a.Courses[i].Effect -= sum / float64(len(a.Courses))
	}
}

// neighbours gives course i the 24 nearest courses, weighted by nearness, size
// and speed: people travel to the near, the popular and the fast.
func (a *LargeArchive) neighbours(i int) {
	type near struct {
		course   int32
		distance float64
	}
	c := &a.Courses[i]
	all := make([]near, 0, len(a.Courses))
	for j := range a.Courses {
		if j != i {
			all = append(all, near{int32(j), math.Hypot(a.Courses[j].X-c.X, a.Courses[j].Y-c.Y)})
		}
	}
	slices.SortFunc(all, func(p, q near) int {
		switch {
		case p.distance < q.distance:
			return -1
		case p.distance > q.distance:
			return 1
		}
		return int(p.course - q.course)
	})
	total := 0.0
	for _, n := range all[:min(24, len(all))] {
		v := &a.Courses[n.course]
		total += math.Exp(-n.distance/visitRange-6*v.Effect)*math.Sqrt(v.size) + 1e-6
		c.visits = append(c.visits, n.course)
		c.visitUpTo = append(c.visitUpTo, total)
	}
}

// chunkSize divides runners into fixed parts, so that work is shared out the
// same way whatever the number of processors.
const chunkSize = 16384

// parallel calls do(i) for 0 <= i < n from as many goroutines as there are
// processors.
func parallel(n int, do func(int)) {
	next := make(chan int)
	var wg sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := range next {
				do(i)
			}
		}()
	}
	for i := range n {
		next <- i
	}
	close(next)
	wg.Wait()
}

func (a *LargeArchive) chunkCount() int { return (len(a.runners) + chunkSize - 1) / chunkSize }

func (a *LargeArchive) chunk(i int) (lo, hi int) {
	return i * chunkSize, min((i+1)*chunkSize, len(a.runners))
}

func (a *LargeArchive) makeRunners() error {
	o := a.Options
	a.runners = make([]largeRunner, o.Runners)
	homes, total := make([]float64, o.Courses), 0.0
	for i, c := range a.Courses {
		total += c.size * (1 - float64(c.Opened)/float64(o.Weeks))
		homes[i] = total
	}
	b := book()
	keen := make([]float32, o.Runners)  // standard normal: how often somebody runs
	atMost := make([]uint16, o.Runners) // results they have weeks for
	rates := make([]float32, o.Runners) // share of weeks, while they run
	parallel(a.chunkCount(), func(k int) {
		source := &borrowed{}
		r := rand.New(source)
		lo, hi := a.chunk(k)
		for i := lo; i < hi; i++ {
			p := &a.runners[i]
			p.random = *rand.NewPCG(o.Seed, uint64(i)<<8|'r')
			source.PCG = &p.random
			a.makeRunner(r, b, p, homes)
			keen[i] = float32(r.NormFloat64())
			rates[i] = float32(min(.97, max(.03, .37+.22*r.NormFloat64())))
			atMost[i] = uint16(max(1, float32(o.Weeks-int(p.start))*rates[i]))
		}
	})
	counts, err := shareOut(o.Results, keen, atMost)
	if err != nil {
		return err
	}
	for i := range a.runners {
		p := &a.runners[i]
		p.results = counts[i]
		span := max(int(counts[i]), int(math.Ceil(float64(counts[i])/float64(rates[i]))))
		p.end = uint16(min(o.Weeks, int(p.start)+span))
	}
	return nil
}

// makeRunner draws one person: half were running before the period began, the
// rest join during it, some of them beginners who will improve.
func (a *LargeArchive) makeRunner(r *rand.Rand, b *nameBook, p *largeRunner, homes []float64) {
	o := a.Options
	p.sex = 'M'
	if r.Float64() < .47 {
		p.sex = 'W'
	}
	p.name = b.drawName(r, p.sex)
	p.home = uint16(pick(homes, r.Float64()))
	p.club = noClub
	if r.Float64() < .35 {
		p.club = uint16((int(p.home)*5/2 + r.IntN(3)) % len(a.clubs))
	}
	years := drawAge(r)
	p.born = int32(o.From) - int32(years*365.25)
	opened := a.Courses[p.home].Opened
	before := opened == 0 && r.Float64() < .5
	if !before {
		p.start = uint16(min(o.Weeks-1, opened+int(float64(o.Weeks-opened)*math.Pow(r.Float64(), 1.1))))
	}
	p.improves = !before && r.Float64() < .6
	p.skill = float32(drawSkill(r, p.sex, int(years)))
	if p.improves {
		p.gain = float32(min(.15, max(-.02, .06+.03*r.NormFloat64())))
	}
	p.habit = drawHabit(r)
}

// drawAge gives an age in years: mostly 25 to 60, some children, some over 75.
func drawAge(r *rand.Rand) float64 {
	if r.Float64() < .07 {
		return 8 + 10*r.Float64()
	}
	return min(88, max(16, 43+14*r.NormFloat64()))
}

// drawSkill is somebody's log seconds over a plain 5 km, all-out.
func drawSkill(r *rand.Rand, sex byte, age int) float64 {
	y := plainTime + max(fastest, skillSD*r.NormFloat64()) + ageTerm(age)
	if sex == 'W' {
		y += womenSlow
	}
	return y
}

// borrowed lets one rand.Rand draw from whichever runner's own generator is
// set: results then do not depend on the order in which runners are visited.
type borrowed struct{ *rand.PCG }

// shareOut gives every runner max(1, min(atMost, floor(exp(m + 1.5 keen))))
// results, with m chosen so that they add up, and the last few to the first
// runners with weeks to spare, so that they add up exactly.
func shareOut(results int, keen []float32, atMost []uint16) ([]uint16, error) {
	n := make([]uint16, len(keen))
	e := make([]float64, len(keen))
	most := 0
	for i, z := range keen {
		e[i] = math.Exp(1.5 * float64(z))
		most += int(atMost[i])
	}
	if most < results {
		return nil, fmt.Errorf("large archive: %d runners can have at most %d results in that many weeks, not %d", len(keen), most, results)
	}
	fill := func(m float64) int {
		sum, scale := 0, math.Exp(m)
		for i := range n {
			n[i] = uint16(max(1, min(float64(atMost[i]), scale*e[i])))
			sum += int(n[i])
		}
		return sum
	}
	lo, hi := -6.0, 12.0
	for range 40 {
		if m := (lo + hi) / 2; fill(m) <= results {
			lo = m
		} else {
			hi = m
		}
	}
	missing := results - fill(lo)
	for missing > 0 {
		for i := range n {
			if missing > 0 && n[i] < atMost[i] {
				n[i]++
				missing--
			}
		}
	}
	return n, nil
}

// Runners is the number of people.
func (a *LargeArchive) Runners() int { return len(a.runners) }

// Name of a person.
func (a *LargeArchive) Name(person int32) string {
	return string(a.appendName(nil, person))
}

// Number is the registration number that a person keeps for life.
func (a *LargeArchive) Number(person int32) int { return 1_000_001 + int(person) }

// Sex of a person, 'M' or 'W'.
func (a *LargeArchive) Sex(person int32) byte { return a.runners[person].sex }

// Born is a person's date of birth.
func (a *LargeArchive) Born(person int32) unit.Day { return unit.Day(a.runners[person].born) }

// Home is the index of a person's usual course.
func (a *LargeArchive) Home(person int32) int { return int(a.runners[person].home) }

// Club is a person's club, "" for none.
func (a *LargeArchive) Club(person int32) string {
	if c := a.runners[person].club; c != noClub {
		return a.clubs[c]
	}
	return ""
}

func (a *LargeArchive) appendName(b []byte, person int32) []byte {
	n, bk := a.runners[person].name, book()
	b = append(append(append(b, bk.given[n.given]...), ' '), bk.surnames[n.surname]...)
	if n.second != noSurname {
		b = append(append(b, '-'), bk.surnames[n.second]...)
	}
	return b
}
