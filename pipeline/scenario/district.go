package scenario

import (
	"cmp"
	"math"
	"math/rand/v2"
	"path"
	"slices"
	"strconv"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// person is somebody of a district, with all that decides how they run and how
// desks write them down.
type person struct {
	TruePerson
	start, end int     // weeks: first, and one past the last
	often      float64 // chance of running in a week
	away       float64 // share of runs that are visits
	midweek    int     // a second course for some weeks, -1 for none
	skill      float64 // log seconds over a plain 5 km
	gain       float64 // beginner's slowness, wears off
	trend      float64 // log time a week, until trendEnd
	trendEnd   int
	hurt       int     // week of an injury, 0 for none
	setback    float64 // log time lost by it
	habit
	as        string  // taking part as, when not simply running
	asShare   float64 // of runs
	partner   int     // who runs beside them: guide, adult with a child; -1 for none
	changeAt  int     // week from which Later is their surname
	earlier   int     // finishes before the first sheet
	fixedTime int32   // a pacer's target, seconds over 5 km
	// state
	drift float64
	last  int
	done  int
}

// course is a TrueCourse with its weather, place and desk.
type course struct {
	TrueCourse
	heat     float64 // log time for every 10 degrees over 15
	x, y     float64
	size     float64
	opened   int // week
	fast     bool
	house    *house
	rests    map[int]string // weeks without a run, and why
	visits   []int
	visitsTo []float64
}

// district is a world in the making.
type district struct {
	r       *rand.Rand
	from    unit.Day // a Monday
	weeks   int
	courses []course
	people  []person
	mess    mess
	truth   Truth
	now     int // week
}

// outcome is one finish before it is put in order.
type outcome struct {
	person    int
	exact     float64
	form      float64
	shortfall float64
	as        string
	note      string
}

// spread makes people with homes, habits and histories.
func (d *district) spread(n int, clubs []string, perCourse int) {
	r := d.r
	homes, total := make([]float64, len(d.courses)), 0.0
	for i, c := range d.courses {
		total += c.size * (1 - .7*float64(c.opened)/float64(d.weeks))
		homes[i] = total
	}
	b := book()
	for range n {
		sex := byte('M')
		if r.Float64() < .48 {
			sex = 'W'
		}
		name := b.drawName(r, sex)
		years := drawAge(r)
		p := person{midweek: -1, partner: -1, last: -1}
		p.Given, p.Surname, p.Sex = b.givenOf(name), b.surnameOf(name), string(sex)
		p.Born = d.from - unit.Day(years*365.25)
		p.Home = pick(homes, r.Float64())
		p.Number = 10_000 + len(d.people)*7 + r.IntN(7)
		if r.Float64() < .38 && len(clubs) > 0 {
			p.Club = clubs[(p.Home*perCourse+r.IntN(perCourse))%len(clubs)]
		}
		p.skill = drawSkill(r, sex, int(years))
		p.habit = drawHabit(r)
		p.often = min(.9, max(.03, .35+.25*r.NormFloat64()))
		p.away = min(.6, max(0, awayShare+.12*r.NormFloat64()))
		if r.Float64() < .15 {
			p.midweek = r.IntN(len(d.courses))
		}
		opened := d.courses[p.Home].opened
		p.end = d.weeks
		if opened == 0 && r.Float64() < .55 {
			p.earlier = int(math.Exp(2.6 + 1.2*r.NormFloat64()))
		} else {
			p.start = opened + r.IntN(max(1, d.weeks-opened))
			if r.Float64() < .6 {
				p.gain = min(.15, max(-.02, .06+.03*r.NormFloat64()))
			}
		}
		if r.Float64() < .35 { // moves away, or loses the taste
			p.end = p.start + 1 + r.IntN(max(1, d.weeks-p.start))
		}
		if r.Float64() < .2 && d.weeks > 20 {
			p.hurt, p.setback = 5+r.IntN(d.weeks-10), .03+.09*r.Float64()
		}
		switch u := r.Float64(); {
		case u < .020:
			p.as, p.asShare = "buggy", .3
		case u < .028:
			p.as, p.asShare = "walker", 1
		case u < .033:
			p.as, p.asShare = "dog", .5
		case u < .037 && years > 18:
			p.as, p.asShare = "pacer", .25
			p.fixedTime = int32(math.Ceil(math.Exp(p.skill)*1.1/300)) * 300 // the next five minutes with a tenth to spare
		}
		d.people = append(d.people, p)
	}
}

// settle finishes courses: which are fast, and where visitors go.
func (d *district) settle() {
	effects := []float64{}
	for _, c := range d.courses {
		effects = append(effects, c.Effect)
	}
	slices.Sort(effects)
	limit := effects[len(effects)*3/10]
	for i := range d.courses {
		c := &d.courses[i]
		c.fast = c.Effect < limit
		total := 0.0
		for j := range d.courses {
			if j == i {
				continue
			}
			v := &d.courses[j]
			total += math.Exp(-math.Hypot(c.x-v.x, c.y-v.y)/visitRange-6*v.Effect) * math.Sqrt(v.size)
			c.visits, c.visitsTo = append(c.visits, j), append(c.visitsTo, total)
		}
	}
}

func (d *district) open(course, week int) bool {
	c := &d.courses[course]
	return week >= c.opened && c.rests[week] == ""
}

func (d *district) date(course, week int) unit.Day {
	return d.from + unit.Day(7*week+(int(d.courses[course].Weekday)+6)%7)
}

// conditions draws a run's weather: shared, its own, mud in winter and heat in
// summer.
func (d *district) conditions(c *course, day unit.Day, shared float64) float64 {
	return shared + localSD*d.r.NormFloat64() + c.Mud*mudSeason(day.Time().YearDay()-1) + c.heat*d.hot(day)
}

// hot is how far above 15 degrees a day is, in tens of degrees.
func (d *district) hot(day unit.Day) float64 {
	warm := 10 + 8*math.Cos(2*math.Pi*float64(day.Time().YearDay()-205)/365.25) + 3.5*d.r.NormFloat64()
	return max(0, warm-15) / 10
}

// week makes everybody's runs of a week: for each course, who finished.
func (d *district) week(w int, special map[int]float64) (finishes [][]outcome, conditions []float64) {
	d.now = w
	finishes, conditions = make([][]outcome, len(d.courses)), make([]float64, len(d.courses))
	shared := regionSD * d.r.NormFloat64()
	for i := range d.courses {
		conditions[i] = d.conditions(&d.courses[i], d.date(i, w), shared) + special[i]
	}
	for i := range d.people {
		p := &d.people[i]
		if w < p.start || w >= p.end || p.hurt > 0 && w >= p.hurt && w < p.hurt+6 || p.often == 0 {
			continue
		}
		if d.r.Float64() >= p.often {
			continue
		}
		to := d.whereTo(p, w)
		if to < 0 {
			continue
		}
		finishes[to] = d.run(finishes[to], i, to, w, conditions[to])
		if p.midweek >= 0 && p.midweek != to && d.open(p.midweek, w) && d.date(p.midweek, w) != d.date(to, w) && d.r.Float64() < .3 {
			finishes[p.midweek] = d.run(finishes[p.midweek], i, p.midweek, w, conditions[p.midweek])
		}
	}
	return finishes, conditions
}

func (d *district) whereTo(p *person, w int) int {
	to := p.Home
	if d.r.Float64() < p.away {
		c := &d.courses[p.Home]
		if len(c.visits) > 0 {
			to = c.visits[pick(c.visitsTo, d.r.Float64())]
		}
	}
	for _, try := range []int{to, p.Home} {
		if d.open(try, w) {
			return try
		}
	}
	if d.r.Float64() < .4 { // nothing on at home: some go elsewhere
		for _, v := range d.courses[p.Home].visits {
			if d.open(v, w) {
				return v
			}
		}
	}
	return -1
}

// run lets a person run once, with whoever runs beside them.
func (d *district) run(to []outcome, who, at, w int, conditions float64) []outcome {
	r, p := d.r, &d.people[who]
	o := d.outing(who, at, w)
	o.exact = o.form + o.shortfall + conditions + noiseSD*r.NormFloat64()
	pacing := p.as != "pacer" || d.courses[at].DistanceM == 5000 // pacers' targets are for 5 km
	if p.as != "" && pacing && r.Float64() < p.asShare {
		o.as = p.as
		slow := map[string]float64{"buggy": .12, "dog": .03, "walker": .45, "back marker": .75,
			"adult with a child": .35, "day wheelchair or frame": .6, "racing wheelchair or handcycle": -.35}[p.as]
		o.shortfall += slow
		o.exact += slow
		if p.as == "pacer" {
			o.exact = math.Log(float64(p.fixedTime)-3) + .004*r.NormFloat64()
			o.shortfall = o.exact - o.form - conditions
		}
	}
	to = append(to, o)
	if p.partner >= 0 && !slices.ContainsFunc(to, func(q outcome) bool { return q.person == p.partner }) {
		beside := d.outing(p.partner, at, w)
		beside.exact = o.exact + .0004
		beside.as = d.people[p.partner].as
		beside.shortfall = beside.exact - beside.form - conditions
		to = append(to, beside)
	}
	return to
}

// outing moves a person's form on to week w and says what they could do.
func (d *district) outing(who, at, w int) outcome {
	r, p, c := d.r, &d.people[who], &d.courses[at]
	if p.last >= 0 {
		p.drift += formSD * math.Sqrt(float64(w-p.last)) * r.NormFloat64()
	}
	form := p.skill + p.drift + p.gain*improvement(p.done) + p.trend*float64(min(w, p.trendEnd))
	if p.hurt > 0 && w >= p.hurt {
		form += p.setback * math.Exp(-float64(w-p.hurt-6)/12)
	}
	p.last = w
	p.done++
	return outcome{
		person:    who,
		form:      form + distanceTerm(c.DistanceM) + c.Effect,
		shortfall: p.shortfall(r, c.fast && at != p.Home),
	}
}

// entries puts a run's finishers in order and writes them down as the desk
// does, mistakes and all.
func (d *district) entries(at int, date unit.Day, finishes []outcome) []entry {
	r, c, m := d.r, &d.courses[at], &d.mess
	slices.SortFunc(finishes, func(p, q outcome) int {
		return cmp.Or(cmp.Compare(p.exact, q.exact), cmp.Compare(p.person, q.person))
	})
	out := make([]entry, 0, len(finishes))
	var stopped []entry
	for _, o := range finishes {
		p := &d.people[o.person]
		e := entry{person: o.person, given: p.Given, surname: p.Surname, born: p.Born, club: p.Club, status: "ok",
			as: o.as, note: c.house.words[o.as], form: o.form - c.Effect, short: o.shortfall}
		if p.Sex != "" {
			e.sex = p.Sex[0]
		}
		if p.Later != "" && d.now >= p.changeAt {
			e.surname = p.Later
		}
		if o.as == "" {
			e.as = "runner"
		}
		if o.note != "" {
			e.note = o.note
		}
		ms := 1000 * math.Exp(o.exact)
		e.timeMS = int32(math.Ceil(ms/100)) * 100
		if !c.house.tenths {
			e.timeMS = unit.CeilSeconds(e.timeMS) * 1000
		}
		if c.Numbers {
			e.number = strconv.Itoa(p.Number)
		}
		d.spell(&e, o.person, at)
		switch u := r.Float64(); {
		case u < m.stopped && o.as == "":
			e.status, e.timeMS = "dnf", 0
			stopped = append(stopped, e)
			continue
		case u < m.stopped+m.untimed:
			e.status, e.timeMS = "untimed", 0
		case u < m.stopped+m.untimed+m.unnamed && o.as == "":
			e.status = "unnamed"
		}
		e.position = len(out) + 1
		out = append(out, e)
	}
	for i := 1; i < len(out); i++ {
		if r.Float64() < m.exchanged && out[i].status == "ok" && out[i-1].status == "ok" {
			a, b := &out[i-1], &out[i]
			a.position, b.position = b.position, a.position
			a.timeMS, b.timeMS = b.timeMS, a.timeMS
			a.exchanged, b.exchanged = true, true
			*a, *b = *b, *a
		}
	}
	for i := len(out) - 1; i >= 0; i-- {
		if r.Float64() < m.repeated && out[i].status == "ok" {
			again := out[i]
			again.status = "repeat"
			out = slices.Insert(out, i+1, again)
		}
	}
	return append(out, stopped...)
}

// pending is the record of a run as a desk has it, ready to be written.
type pending struct {
	at         int // course
	date       unit.Day
	conditions float64
	entries    []entry
	suffix     string // names a second issue of the sheet
}

// sheet is one file of a district, and where its entries stand.
type sheet struct {
	path string
	data []byte
	tab  string
	rows []int
}

// render writes a sheet in its house style. It changes nothing and may be
// called for several runs at once.
func (d *district) render(p pending) (s sheet, err error) {
	c := &d.courses[p.at]
	h := heading{course: c.Name, slug: c.Slug, metres: c.DistanceM, date: p.date}
	for _, e := range p.entries {
		if e.position > 0 && e.status != "repeat" {
			h.finishers++
		}
	}
	s.path = h.fill(c.house.file)
	dot := len(s.path) - len(path.Ext(s.path))
	s.path = s.path[:dot] + p.suffix + s.path[dot:]
	if c.house.workbook {
		s.data, s.tab, s.rows, err = c.house.book(h, p.entries)
	} else {
		s.data, s.rows = c.house.text(h, p.entries)
	}
	return s, err
}

// note records the truth about a sheet. A second sheet for the run just noted
// stands instead of the first.
func (d *district) note(p pending, s sheet) {
	t := &d.truth
	if n := len(t.Runs); n == 0 || t.Runs[n-1].Course != p.at || t.Runs[n-1].Date != p.date {
		t.Runs = append(t.Runs, TrueRun{Course: p.at, Date: p.date, Conditions: p.conditions})
	}
	run := len(t.Runs) - 1
	if t.Runs[run].Sheet != "" {
		for i := len(t.Lines) - 1; i >= 0 && t.Lines[i].Run == run; i-- {
			t.Lines[i].Status = "superseded"
		}
	}
	t.Runs[run].Sheet = s.path
	house := d.courses[p.at].house
	for i, e := range p.entries {
		name := givenFirst(e.given, e.surname)
		if e.status == "unnamed" {
			name = house.nobody
		}
		t.Lines = append(t.Lines, TrueLine{Sheet: s.path, Tab: s.tab, Row: s.rows[i], Run: run, Person: e.person,
			Position: e.position, Name: name, TimeMS: e.timeMS, Status: e.status, As: e.as,
			AsPrinted: e.as == "runner" || house.prints(notes) && e.note != "", Exchanged: e.exchanged,
			Form: e.form, Shortfall: e.short})
	}
}

// finishTruth copies the people and courses into the truth.
func (d *district) finishTruth() *Truth {
	for _, c := range d.courses {
		d.truth.Courses = append(d.truth.Courses, c.TrueCourse)
	}
	for _, p := range d.people {
		d.truth.People = append(d.truth.People, p.TruePerson)
	}
	return &d.truth
}

func (d *district) ageOn(who int, day unit.Day) int { return age.On(d.people[who].Born, day) }
