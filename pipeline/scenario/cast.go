package scenario

import (
	"math"
	"strings"

	"lapwing/pipeline/unit"
)

// part is a character of the demo: somebody with a story to look up.
type part struct {
	given, surname, sex string
	born                unit.Day
	home                int
	club                string
	minutes             float64 // all-out over a plain 5 km at the start
	often, away         float64
	allOut              float32
	earlier             int // finishes before the first sheet
	change              func(*person)
}

// cast adds the demo's characters to the people already made up.
func (d *district) cast() {
	for _, p := range d.parts() {
		d.add(p)
	}
	d.children()
}

func (d *district) parts() []part {
	born := unit.NewDay
	starts := func(week int) func(*person) { return func(p *person) { p.start, p.midweek = week, -1 } }
	gets := func(perWeek float64, until int) func(*person) {
		return func(p *person) { p.trend, p.trendEnd = perWeek, until }
	}
	role := func(as string, share float64) func(*person) { return func(p *person) { p.as, p.asShare = as, share } }
	besides := func(as string, share float64) func(*person) { // the next part runs beside this one
		return func(p *person) { p.as, p.asShare, p.partner = as, share, len(d.people)+1 }
	}
	never := func(as string) func(*person) { return func(p *person) { p.as, p.asShare = as, 1 } }
	return []part{
		// Getting faster, steadily.
		{"Maureen", "Tilbrook", "W", born(1961, 3, 2), osierholm, "Osierholm Ladies Running Club", 33.5, .85, .10, .6, 31, gets(-.0032, 40)},
		{"Callum", "Ashwick", "M", born(1996, 8, 21), tarnholt, "Tarnholt Road Runners", 22.4, .80, .15, .6, 12, gets(-.0030, 40)},
		{"Priya", "Nair", "W", born(1988, 1, 17), wrenlow, "Wrenlow Joggers", 29.0, .85, .10, .5, 8, gets(-.0034, 40)},
		{"Oleksandr", "Marchenko", "M", born(1979, 11, 5), pikestow, "Pikestow Athletic Club", 24.8, .80, .20, .6, 22, gets(-.0027, 40)},
		// Beginners who gained at first and have levelled off.
		{"Gwen", "Pellow", "W", born(1972, 6, 9), osierholm, "", 30.2, .90, .05, .6, 0, func(p *person) { p.start, p.gain, p.midweek = 2, .16, -1 }},
		{"Tomasz", "Wieczorek", "M", born(1984, 4, 30), tarnholt, "", 26.0, .90, .05, .6, 0, func(p *person) { p.start, p.gain, p.midweek = 1, .15, -1 }},
		{"Bethany", "Crowhurst", "W", born(2001, 9, 12), wrenlow, "Wrenlow and District Athletic Club", 24.5, .85, .10, .6, 5, gets(-.006, 14)},
		// Level for years; and slower than before.
		{"Douglas", "Kettlewell", "M", born(1953, 12, 1), garrowstone, "Garrowstone Fell Runners", 29.5, .85, .10, .4, 310, nil},
		{"Rosalind", "Haverstock", "W", born(1966, 2, 14), tarnholt, "Tarnholt Road Runners", 27.4, .80, .20, .7, 240, gets(.0018, 40)},
		// Always flat out; never flat out.
		{"Idris", "Pugh", "M", born(1990, 7, 7), osierholm, "Osierholm Harriers", 18.6, .75, .25, .95, 88, nil},
		{"Hannah", "Lindqvist", "W", born(1993, 5, 23), wrenlow, "Wrenlow Joggers", 21.8, .85, .15, .04, 140, nil},
		// Hurt in the autumn, back in winter.
		{"Kofi", "Asante", "M", born(1985, 10, 19), tarnholt, "Tarnholt Road Runners", 20.9, .85, .15, .5, 64, func(p *person) { p.hurt, p.setback = 14, .09 }},
		// Travellers: a different course most weeks.
		{"Alistair", "Dunmore", "M", born(1968, 4, 4), tarnholt, "Tarnholt Road Runners", 25.1, .95, .80, .5, 175, nil},
		{"Noémie", "Lacroix", "W", born(1981, 12, 28), osierholm, "Osierholm Ladies Running Club", 25.9, .95, .80, .5, 96, nil},
		{"Jürgen", "Krüger", "M", born(1974, 8, 15), wrenlow, "Wrenlow and District Athletic Club", 22.9, .95, .75, .6, 120, nil},
		{"Yetunde", "Balogun", "W", born(1986, 3, 11), emberQuay, "Ember Valley Road Runners", 28.1, .90, .75, .5, 47, nil},
		// Names that sheets find hard.
		{"Siobhán", "O'Shaughnessy", "W", born(1977, 5, 3), garrowstone, "Garrowstone Harriers", 26.3, .85, .15, .5, 70, nil},
		{"José", "Ibáñez", "M", born(1983, 9, 27), garrowstone, "Garrowstone Fell Runners", 21.2, .85, .20, .6, 35, nil},
		{"Małgorzata", "Dąbrowska", "W", born(1980, 1, 8), garrowstone, "", 29.8, .80, .20, .5, 18, nil},
		{"Zoë", "van der Meer", "W", born(1991, 11, 11), garrowstone, "Garrowstone Harriers", 24.0, .80, .20, .5, 26, nil},
		{"Inés", "Núñez", "W", born(1985, 2, 8), osierholm, "Osierholm Ladies Running Club", 26.8, .95, .05, .5, 30, nil},
		{"Bjørn", "Åkesson", "M", born(1970, 10, 14), osierholm, "Osierholm Harriers", 24.6, .95, .05, .5, 52, nil},
		{"Ella-Mae", "Tregenza-Hill", "W", born(1998, 6, 16), pikestow, "Pikestow Plodders", 27.0, .80, .25, .5, 15, nil},
		// Father and son of one name at one course; a surname changed at the new year.
		{"Peter", "Hallowdene", "M", born(1962, 10, 2), tarnholt, "Tarnholt Road Runners", 24.9, .75, .05, .5, 205, nil},
		{"Peter", "Hallowdene", "M", born(1990, 2, 20), tarnholt, "Tarnholt Road Runners", 19.9, .60, .05, .6, 33, nil},
		{"Catherine", "Merrifield", "W", born(1992, 7, 1), osierholm, "Osierholm Harriers", 23.1, .85, .20, .6, 58, func(p *person) { p.Later, p.changeAt = "Merrifield-Stobart", 25 }},
		{"Anjali", "Desai", "W", born(1989, 3, 30), wrenlow, "Wrenlow Joggers", 27.7, .80, .15, .5, 41, func(p *person) { p.Later, p.changeAt = "Fairweather", 22 }},
		// Neither M nor W; and not given.
		{"Rowan", "Sedgefield", "X", born(1995, 1, 26), osierholm, "Osierholm Harriers", 23.6, .80, .15, .5, 20, nil},
		{"Kit", "Ollerenshaw", "", born(1987, 8, 8), tarnholt, "", 27.2, .70, .15, .5, 6, nil},
		// Close to a milestone.
		{"Margaret", "Thistlewood", "W", born(1949, 9, 9), osierholm, "Osierholm Ladies Running Club", 36.5, .90, .05, .4, 91, nil},
		{"Nigel", "Bracegirdle", "M", born(1958, 5, 18), wrenlow, "Wrenlow Joggers", 28.4, .90, .05, .4, 188, nil},
		{"Chidi", "Okonkwo", "M", born(1982, 2, 2), pikestow, "Pikestow Plodders", 26.6, .90, .10, .5, 40, nil},
		{"Susan", "Winterbourne", "W", born(1957, 7, 22), garrowstone, "Garrowstone Fell Runners", 33.0, .95, .05, .4, 482, nil},
		// A birthday that moves an age group.
		{"Graham", "Yarrow", "M", born(1976, 1, 3), osierholm, "Osierholm Harriers", 22.0, .90, .10, .6, 77, nil},
		{"Deirdre", "Cavanagh", "W", born(1960, 2, 29), tarnholt, "Tarnholt Triathletes", 29.9, .85, .10, .5, 102, nil},
		// Taking part as something else.
		{"Basil", "Cotterill", "M", born(1944, 3, 19), osierholm, "", 36.0, .85, 0, .3, 150, role("walker", 1)},
		{"Wendy", "Sharrock", "W", born(1963, 6, 6), wrenlow, "Wrenlow Joggers", 31.0, .60, 0, .4, 90, role("walker", 1)},
		{"Martin", "Oakhanger", "M", born(1978, 4, 12), osierholm, "Osierholm Harriers", 19.0, .80, .10, .5, 130,
			func(p *person) { p.as, p.asShare, p.fixedTime = "pacer", .3, 25*60 }},
		{"Leila", "Mansour", "W", born(1984, 10, 10), wrenlow, "Wrenlow and District Athletic Club", 22.5, .80, .10, .5, 85,
			func(p *person) { p.as, p.asShare, p.fixedTime = "pacer", .3, 30*60 }},
		{"Emma", "Larkrise", "W", born(1990, 12, 4), tarnholt, "Tarnholt Road Runners", 23.4, .75, .10, .5, 44, role("buggy", .7)},
		{"Ross", "Galbraith", "M", born(1986, 11, 30), osierholm, "", 24.2, .60, .10, .5, 39, role("dog", .6)},
		{"Ishaan", "Malhotra", "M", born(1994, 5, 5), osierholm, "Osierholm Harriers", 25.5, .75, .05, .6, 27, besides("guided", 1)},
		{"Joanne", "Pickersgill", "W", born(1982, 8, 3), osierholm, "Osierholm Harriers", 21.5, 0, 0, .5, 66, never("guide")},
		{"Samir", "Haddad", "M", born(1988, 9, 14), osierholm, "Ember Valley Road Runners", 21.0, .70, .10, .7, 52, role("racing wheelchair or handcycle", 1)},
		{"Fiona", "Strickland", "W", born(1983, 2, 25), sallowby, "", 25.0, .70, .05, .4, 0, besides("adult with a child", 1)},
		{"Oscar", "Strickland", "M", born(2017, 6, 18), sallowby, "Sallowby Juniors", 34.0, 0, 0, .5, 0, starts(7)},
		{"Harold", "Penhaligon", "M", born(1951, 1, 31), tarnholt, "", 34.0, .50, 0, .3, 60, role("back marker", 1)},
	}
}

// add makes a person of a part.
func (d *district) add(c part) {
	p := person{midweek: -1, partner: -1, last: -1, end: d.weeks, often: c.often, away: c.away, earlier: c.earlier}
	p.Given, p.Surname, p.Sex, p.Born, p.Club, p.Home = c.given, c.surname, c.sex, c.born, c.club, c.home
	p.Number = 10_000 + len(d.people)*7 + d.r.IntN(7)
	p.skill = math.Log(c.minutes * 60)
	p.habit = habit{allOut: c.allOut, meanSlow: .05}
	if c.earlier == 0 {
		p.start = d.courses[c.home].opened
	}
	if c.change != nil {
		c.change(&p)
	}
	d.people = append(d.people, p)
}

// children adds two dozen juniors, most of whom run the midweek 3 km.
func (d *district) children() {
	b := book()
	for i := range 24 {
		sex := "MW"[i%2]
		n := b.drawName(d.r, sex)
		home := sallowby
		if i%4 == 3 {
			home = []int{osierholm, tarnholt, wrenlow}[i/4%3]
		}
		club := ""
		if home == sallowby && i%3 != 0 {
			club = "Sallowby Juniors"
		}
		years := 8 + d.r.Float64()*9
		d.add(part{b.givenOf(n), b.surnameOf(n), string(sex), demoFrom - unit.Day(years*365.25), home, club,
			20 + (18-years)*.9 + 4*d.r.Float64(), .35 + .5*d.r.Float64(), .1, .6, 0, nil})
	}
}

// named tells whether a name belongs to one person only, so that a side table
// may use it.
func (d *district) named(who int) bool {
	p := &d.people[who]
	same := 0
	for i := range d.people {
		q := &d.people[i]
		if strings.EqualFold(q.Given, p.Given) && strings.EqualFold(q.Surname, p.Surname) {
			same++
		}
	}
	return same == 1
}
