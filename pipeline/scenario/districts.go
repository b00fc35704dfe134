package scenario

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"

	"lapwing/pipeline/unit"
)

// Numbering says which courses' sheets print registration numbers.
type Numbering uint8

const (
	SomeNumbers Numbering = iota // every second course
	NoNumbers
	AllNumbers
)

// DistrictOptions describe a messy district. The zero value of a field means
// its default; use a negative chance for none at all.
type DistrictOptions struct {
	Seed        uint64
	People      int      // default 2500
	Courses     int      // default 12
	Weeks       int      // default 104
	From        unit.Day // a Monday
	Numbers     Numbering
	Mess        float64 // spelling: 0.5 is usual, 1 is a lot; default 0.5
	WrongAge    float64 // share of lines with a wrong age; default 0.01
	WrongSex    float64 // share of lines with a wrong sex; default 0.01
	Namesakes   float64 // share of people with a namesake of the family next door; default 0.01
	NewSurname  float64 // share of people who change their surname; default 0.02
	Workbooks   bool    // some courses send workbooks
	FiveKOnly   bool    // no 3 km or 4 mile courses
	OnlyResults bool    // no unnamed, stopped, untimed, exchanged or repeated lines
}

func (o DistrictOptions) filled() DistrictOptions {
	whole := func(v *int, usual int) {
		if *v == 0 {
			*v = usual
		}
	}
	chance := func(v *float64, usual float64) {
		switch {
		case *v == 0:
			*v = usual
		case *v < 0:
			*v = 0
		}
	}
	if o.Seed == 0 {
		o.Seed = 1
	}
	whole(&o.People, 2500)
	whole(&o.Courses, 12)
	whole(&o.Weeks, 104)
	if o.From == 0 {
		o.From = unit.NewDay(2026, 10, 26) - unit.Day(7*o.Weeks)
	}
	chance(&o.Mess, .5)
	chance(&o.WrongAge, .01)
	chance(&o.WrongSex, .01)
	chance(&o.Namesakes, .01)
	chance(&o.NewSurname, .02)
	return o
}

// District makes up a district and writes its sheets under dir/sheets and the
// truth to dir/truth.csv, beside them and not among them. So that the folder can
// be loaded as it is, dir/archive/courses.csv tells the courses' distances and
// dir/lapwing.toml the folders. Memory grows with the truth: a district of 1.3
// million lines needed 0.8 GB.
func District(dir string, o DistrictOptions) (*Truth, error) {
	t, err := DistrictTo(o, func(path string, data []byte) error {
		return sheet{path: path, data: data}.save(filepath.Join(dir, "sheets"))
	})
	if err != nil {
		return nil, err
	}
	for path, text := range map[string]string{
		"archive/courses.csv": t.CourseTable(),
		"lapwing.toml":        "archive = \"archive\"\ninbox = \"sheets\"\nreports = \"reports\"\n",
	} {
		if err := (sheet{path: path, data: []byte(text)}).save(dir); err != nil {
			return nil, err
		}
	}
	f, err := os.Create(filepath.Join(dir, "truth.csv"))
	if err != nil {
		return nil, err
	}
	if err := t.WriteCSV(f); err != nil {
		f.Close()
		return nil, err
	}
	return t, f.Close()
}

// DistrictTo makes up a district and hands every sheet to put, week by week
// and course by course. Paths have forward slashes.
func DistrictTo(o DistrictOptions, put func(path string, data []byte) error) (*Truth, error) {
	o = o.filled()
	if o.People < 1 || o.Courses < 2 || o.Courses > placeCount() || o.Weeks < 1 {
		return nil, fmt.Errorf("district: %d people, %d courses, %d weeks: want at least 1, 2 and 1", o.People, o.Courses, o.Weeks)
	}
	d := newDistrict(o)
	for w := range o.Weeks {
		finishes, conditions := d.week(w, nil)
		for at, f := range finishes {
			if len(f) == 0 {
				continue
			}
			date := d.date(at, w)
			entries := d.entries(at, date, f)
			if d.courses[at].house.charset == utf8Plain && !d.courses[at].house.workbook && d.r.Float64() < .03*d.mess.names {
				for i := range entries {
					entries[i].given, entries[i].surname = garble(entries[i].given), garble(entries[i].surname)
				}
			}
			p := pending{at: at, date: date, conditions: conditions[at], entries: entries}
			s, err := d.render(p)
			if err != nil {
				return nil, err
			}
			d.note(p, s)
			if err := put(s.path, s.data); err != nil {
				return nil, err
			}
		}
	}
	return d.finishTruth(), nil
}

func (s sheet) save(dir string) error {
	path := filepath.Join(dir, filepath.FromSlash(s.path))
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, s.data, 0o644)
}

func newDistrict(o DistrictOptions) *district {
	r := rand.New(rand.NewPCG(o.Seed, 'd'))
	d := &district{r: r, from: o.From, weeks: o.Weeks, mess: mess{
		names: o.Mess, wrongAge: o.WrongAge, wrongSex: o.WrongSex}}
	if !o.OnlyResults {
		d.mess.unnamed, d.mess.stopped, d.mess.untimed = .025, .004, .002
		d.mess.exchanged, d.mess.repeated = .001, .0005
	}
	side := math.Sqrt(float64(o.Courses) / 150)
	offset := int(o.Seed * 7919 % uint64(placeCount())) // other seeds, other places
	var clubs []string
	for i := range o.Courses {
		town, name := placeName((offset + i) % placeCount())
		c := course{x: r.Float64() * side, y: r.Float64() * side, size: math.Exp(.7 * r.NormFloat64())}
		c.Name, c.Slug, c.DistanceM = name, slug(name), 5000
		if u := r.Float64(); !o.FiveKOnly && i > 0 && u < .2 {
			c.DistanceM = []float64{3000, 6437.376}[r.IntN(2)]
		}
		c.Weekday = []time.Weekday{time.Saturday, time.Saturday, time.Saturday, time.Sunday, time.Wednesday}[r.IntN(5)]
		c.Effect = .035*r.NormFloat64() + .02*r.ExpFloat64()
		if r.Float64() < .3 {
			c.Mud = .01 + .03*r.Float64()
		}
		c.heat = .02 * r.Float64()
		c.rests = map[int]string{}
		if i > 1 && r.Float64() < .2 {
			c.opened = r.IntN(max(1, o.Weeks/2))
		}
		for w := range o.Weeks {
			if r.Float64() < .04 {
				c.rests[w] = "cancelled"
			}
		}
		c.Numbers = o.Numbers == AllNumbers || o.Numbers == SomeNumbers && i%2 == 0
		c.house, c.Ages = drawHouse(r, c.Numbers, o.Workbooks)
		d.courses = append(d.courses, c)
		for k := range 3 {
			clubs = append(clubs, town+" "+clubKind[(i+2*k)%len(clubKind)])
		}
	}
	d.spread(o.People, clubs, 3)
	d.relatives(o.Namesakes)
	d.newSurnames(o.NewSurname)
	d.settle()
	return d
}

// relatives makes some people the parent, or the child, of a namesake who runs
// at the same course.
func (d *district) relatives(share float64) {
	for i := range d.people {
		if d.r.Float64() >= share {
			continue
		}
		one, j := &d.people[i], d.r.IntN(len(d.people))
		for try := 0; try < 20 && (i == j || one.Sex != d.people[j].Sex); try++ {
			j = d.r.IntN(len(d.people))
		}
		other := &d.people[j]
		if i == j || one.Sex != other.Sex {
			continue
		}
		years, was := 22+d.r.IntN(16), d.ageOn(j, d.from)
		y, m, day := one.Born.Date()
		if y+years <= 2016 {
			other.Born = unit.NewDay(y+years, m, day) + unit.Day(d.r.IntN(300))
		} else { // too young to have a child of 10 in 2026: the other one is the parent
			other.Born = unit.NewDay(y-years, m, day) - unit.Day(d.r.IntN(300))
		}
		other.skill += ageTerm(d.ageOn(j, d.from)) - ageTerm(was)
		other.Given, other.Surname, other.Home, other.Club = one.Given, one.Surname, one.Home, one.Club
		other.start = max(other.start, d.courses[other.Home].opened)
		other.end = max(other.end, min(d.weeks, other.start+1))
	}
}

// newSurnames lets some people marry, or part: half take a second surname
// beside the first, half another one.
func (d *district) newSurnames(share float64) {
	b := book()
	for i := range d.people {
		p := &d.people[i]
		if d.r.Float64() >= share || d.ageOn(i, d.from) < 20 || strings.ContainsAny(p.Surname, "- ") {
			continue
		}
		other := b.cultures[0].surnames.draw(d.r.Float64())
		p.Later = b.surnames[other]
		if d.r.Float64() < .5 {
			p.Later = p.Surname + "-" + p.Later
		}
		p.changeAt = 1 + d.r.IntN(d.weeks)
	}
}

// drawHouse makes up a house style, with what it prints about ages.
func drawHouse(r *rand.Rand, numbers, workbooks bool) (*house, string) {
	one := func(words ...string) string { return words[r.IntN(len(words))] }
	h := &house{
		delimiter: one(",", ",", ",", ";", "\t"), lineEnd: one("\n", "\r\n"), name: givenFirst, clock: plainClock,
		sexes: []map[byte]string{sexMF, sexMW, sexSpoken, sexMen}[r.IntN(4)], date: isoDate,
		nobody: one("Unknown", "unknown runner", "A N Other", "No number"), words: noteWords, file: "{slug}/{slug}_{date}.csv",
	}
	h.charset = []charset{utf8Plain, utf8Plain, utf8Mark, windows1252, utf16LE}[r.IntN(5)]
	if h.charset == utf16LE {
		h.delimiter = "\t"
	}
	h.quoteAll = r.Float64() < .15
	add := func(f field, words ...string) { h.columns = append(h.columns, column{f, one(words...)}) }
	add(position, "Position", "Pos", "Place")
	if numbers {
		add(number, "Number", "Bib", "No", "Runner number")
	}
	switch u := r.Float64(); {
	case u < .25:
		add(givenName, "First name", "Given name", "Forename")
		add(surname, "Surname", "Last name", "Family name")
	case u < .40:
		h.name = surnameCapitals
		add(wholeName, "Name", "Runner")
	case u < .50 && h.delimiter != ",":
		h.name = surnameComma
		add(wholeName, "Name", "Runner")
	default:
		add(wholeName, "Name", "Runner", "Full name", "Participant")
	}
	ages := drawAges(r, h, add)
	if r.Float64() < .9 {
		add(clubField, "Club", "Team", "Running club")
	}
	switch u := r.Float64(); {
	case u < .15:
		h.clock = longClock
	case u < .25:
		h.clock, h.tenths = tenthClock("."), true
	case u < .32 && h.delimiter != ",":
		h.clock, h.tenths = tenthClock(","), true
	case u < .36:
		h.clock = primeClock
	}
	add(timeField, "Time", "Finish time", "Run time")
	if r.Float64() < .2 {
		add(gap, "Gap", "Behind")
	}
	if r.Float64() < .2 {
		add(pace, "Pace", "min/km", "Pace (min/km)")
	}
	if r.Float64() < .5 {
		add(notes, "Notes", "Comments", "Remarks")
	}
	switch u := r.Float64(); {
	case u < .25:
		h.title = []string{"{course}", "{long}", ""}
		h.footer = []string{"", "{n} finishers"}
	case u < .4:
		h.title = []string{"{course} results, {long}"}
	case u < .55:
		add(courseField, "Course", "Venue")
		add(dateField, "Date", "Run date")
		h.date = []func(unit.Day) string{isoDate, slashDate}[r.IntN(2)]
	}
	if workbooks && r.Float64() < .25 {
		h.workbook, h.file, h.tab = true, "{slug}/{slug}_{date}.xlsx", "Results"
		h.merged = len(h.title) > 0
	}
	return h, ages
}

// drawAges adds the columns for age and sex, and says which they are.
func drawAges(r *rand.Rand, h *house, add func(field, ...string)) string {
	sex := func() { add(sexField, "Sex", "Gender", "M/F") }
	switch u := r.Float64(); {
	case u < .30:
		add(ageInYears, "Age")
		sex()
		return "age"
	case u < .42:
		add(birthYear, "Year of birth", "Birth year", "Born")
		sex()
		return "year"
	case u < .70:
		h.group = standardGroup
		add(ageGroup, "Age group", "Category", "Cat")
		sex()
		return "group"
	case u < .82:
		h.group = letterRange
		add(ageGroup, "Age group", "Category", "Age category")
		return "group"
	case u < .92:
		h.group = tenYears
		add(decade, "Age group", "Category", "Age range")
		sex()
		return "decade"
	}
	sex()
	return "none"
}

// noteWords is what sheets say of how somebody took part.
var noteWords = map[string]string{
	"walker": "walking", "guide": "guide runner", "guided": "with guide", "buggy": "buggy", "dog": "with dog",
	"back marker": "back marker", "adult with a child": "with child", "racing wheelchair or handcycle": "wheelchair racer",
	"day wheelchair or frame": "frame runner", "pacer": "pacer",
}
