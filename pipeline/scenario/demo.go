package scenario

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"time"

	"lapwing/pipeline/unit"
)

// The demo's calendar: forty weeks from Monday 14 July 2025 to Sunday 19 April
// 2026.
const (
	demoWeeks = 40
	demoSeed  = 2026
)

var demoFrom = unit.NewDay(2025, 7, 14)

// The demo's courses, by index.
const (
	osierholm = iota
	wrenlow
	tarnholt
	garrowstone
	pikestow
	sallowby
	emberQuay
)

// DemoFiles makes the demo in memory: the content of every file by its path
// under the demo's folder, and the truth behind the sheets. The paths of the
// truth's sheets are relative to the folder "sheets".
func DemoFiles() (files map[string][]byte, truth *Truth, err error) {
	d := newDemo()
	files = map[string][]byte{}
	if err := d.season(files); err != nil {
		return nil, nil, err
	}
	truth = d.finishTruth()
	for name, text := range d.sideTables() {
		files["archive/"+name] = []byte(text)
	}
	files["lapwing.toml"] = []byte(demoConfig)
	return files, truth, nil
}

// WriteDemo writes the demo under dir: lapwing.toml, sheets/ with a folder for
// each course, and archive/ with the side tables. It makes dir; where the demo
// stands already it is left as it is. A file that somebody has changed is never
// overwritten: that is an error, and nothing is written.
func WriteDemo(dir string) error {
	files, _, err := DemoFiles()
	if err != nil {
		return err
	}
	paths := slices.Sorted(maps.Keys(files))
	for _, path := range paths {
		old, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(path)))
		switch {
		case err == nil && bytes.Equal(old, files[path]):
			delete(files, path)
		case err == nil:
			return fmt.Errorf("%s has been changed since the demo was written: choose an empty folder for the demo",
				filepath.Join(dir, filepath.FromSlash(path)))
		case !errors.Is(err, os.ErrNotExist):
			return fmt.Errorf("writing the demo: %w", err)
		}
	}
	config, unwritten := files["lapwing.toml"] // last, so that a folder with one is complete
	delete(files, "lapwing.toml")
	for _, path := range paths {
		data, ok := files[path]
		if !ok {
			continue
		}
		if err := (sheet{path: path, data: data}).save(dir); err != nil {
			return fmt.Errorf("writing the demo: %w", err)
		}
	}
	if !unwritten {
		return nil
	}
	return sheet{path: "lapwing.toml", data: config}.save(dir)
}

const demoConfig = `# Lapwing's settings for the demo district. Paths are beside this file.
archive = "archive"   # the record: copies of every sheet, decisions, side tables
inbox = "sheets"      # where new sheets are looked for
reports = "reports"   # where workbooks and write-ups are written

age_standard = 2025                                 # edition of the age-grading tables
season_start = "01-01"                              # a season is a calendar year
milestones = [10, 20, 50, 100, 200, 500, 1000]      # finishes worth a mention
`

func newDemo() *district {
	d := &district{r: rand.New(rand.NewPCG(demoSeed, 'D')), from: demoFrom, weeks: demoWeeks, mess: mess{
		names: .35, unnamed: .018, stopped: .003, untimed: .0015, exchanged: .0006, repeated: .0002}}
	d.courses = demoCourses()
	d.spread(470, demoClubs, 2)
	for i := range d.people { // a keen district
		d.people[i].often = min(.92, 1.3*d.people[i].often)
	}
	d.cast()
	d.settle()
	return d
}

// Two clubs for each course, in the courses' order.
var demoClubs = []string{
	"Osierholm Harriers", "Osierholm Ladies Running Club",
	"Wrenlow Joggers", "Wrenlow and District Athletic Club",
	"Tarnholt Road Runners", "Tarnholt Triathletes",
	"Garrowstone Fell Runners", "Garrowstone Harriers",
	"Pikestow Plodders", "Pikestow Athletic Club",
	"Sallowby Juniors", "Sallowby Running Club",
	"Ember Valley Road Runners", "Ember Quay Rowing Club",
}

func demoCourses() []course {
	set := func(name string, metres float64, day time.Weekday, effect, mud, heat, x, y, size float64) course {
		return course{TrueCourse: TrueCourse{Slug: slug(name), Name: name, DistanceM: metres, Weekday: day, Effect: effect, Mud: mud},
			heat: heat, x: x, y: y, size: size, rests: map[int]string{}}
	}
	const fourMiles = 4 * 1609.344
	c := make([]course, 7)
	c[osierholm] = set("Osierholm Meadow", 5000, time.Saturday, -.022, 0, .022, .10, .10, 1.5)
	c[wrenlow] = set("Wrenlow Common", 5000, time.Saturday, .020, .055, .010, .17, .13, 1.1)
	c[tarnholt] = set("Tarnholt Water", 5000, time.Saturday, .002, .006, .015, .06, .19, 1.3)
	c[garrowstone] = set("Garrowstone Fell", 5000, time.Sunday, .115, .020, .012, .02, .26, .7)
	c[pikestow] = set("Pikestow Wood", 5000, time.Sunday, .045, .030, .004, .22, .08, .9)
	c[sallowby] = set("Sallowby Recreation Ground", 3000, time.Wednesday, .008, .010, .020, .14, .04, .8)
	c[emberQuay] = set("Ember Quay", fourMiles, time.Thursday, -.008, 0, .018, .09, .15, .7)

	c[sallowby].opened = 7 // Wednesday 3 September 2025
	c[osierholm].rests[25] = "ice"
	c[wrenlow].rests[25] = "ice"
	c[tarnholt].rests[25] = "ice"
	c[garrowstone].rests[21] = "gale"
	c[garrowstone].rests[25] = "ice"
	c[pikestow].rests[21] = "gale"
	c[emberQuay].rests[23] = "Christmas Day"
	c[emberQuay].rests[24] = "New Year's Day"
	c[sallowby].rests[23] = "Christmas Eve"

	for i, h := range demoHouses() {
		c[i].house = h
	}
	for i, ages := range []string{"age", "year", "group", "group", "date", "group", "age"} {
		c[i].Ages = ages
	}
	c[osierholm].Numbers, c[emberQuay].Numbers = true, true
	return c
}

// demoHouses are the seven desks' house styles.
func demoHouses() []*house {
	return []*house{
		osierholm: {
			delimiter: ",", lineEnd: "\r\n", file: "{slug}/{slug}_{date}.csv",
			columns: []column{{position, "Position"}, {wholeName, "Name"}, {number, "Number"}, {ageInYears, "Age"},
				{sexField, "Sex"}, {clubField, "Club"}, {timeField, "Time"}, {notes, "Notes"}},
			name: givenFirst, clock: plainClock, sexes: sexMF, date: isoDate, nobody: "Unknown", words: noteWords,
		},
		wrenlow: {
			delimiter: ";", lineEnd: "\r\n", charset: utf8Mark, file: "{slug}/wrenlow_{date}.csv",
			title: []string{"Wrenlow Common 5 km", "{long}", ""},
			columns: []column{{position, "Place"}, {surname, "Surname"}, {givenName, "First name"}, {birthYear, "Year of birth"},
				{sexField, "M/F"}, {clubField, "Team"}, {timeField, "Finish time"}, {notes, "Remarks"}},
			name: givenFirst, clock: tenthClock(","), tenths: true, sexes: sexMF, date: isoDate, nobody: "A N Other", words: noteWords,
		},
		tarnholt: {
			workbook: true, merged: true, tab: "Results", file: "{slug}/{slug}_{date}.xlsx",
			title: []string{"Tarnholt Water 5 km: results", "Date: {date}", ""},
			columns: []column{{position, "Pos"}, {wholeName, "Runner"}, {ageGroup, "Category"}, {sexField, "Gender"},
				{clubField, "Club"}, {timeField, "Time"}, {notes, "Comments"}},
			footer: []string{"Finishers: {n}", "Thank you to all our volunteers"},
			name:   givenFirst, clock: plainClock, sexes: sexSpoken, group: standardGroup, date: slashDate, nobody: "Unknown runner", words: noteWords,
		},
		garrowstone: {
			delimiter: "\t", lineEnd: "\r\n", charset: windows1252, file: "{slug}/results {date}.tsv",
			title: []string{"Garrowstone Fell\t{d/m/y}"},
			columns: []column{{position, "Pos"}, {wholeName, "Runner"}, {ageGroup, "Cat"}, {clubField, "Club"}, {timeField, "Time"},
				{gap, "Behind"}},
			footer: []string{"", "{n} ran. Mind the stile at the second gate."},
			name:   surnameCapitals, clock: plainClock, sexes: sexMW, group: letterRange, date: slashDate, nobody: "no name", words: noteWords,
		},
		pikestow: {
			workbook: true, file: "{slug}/{slug} {date}.xlsx",
			columns: []column{{dateField, "Date"}, {courseField, "Course"}, {position, "Position"}, {givenName, "Given name"},
				{surname, "Family name"}, {birthDate, "Date of birth"}, {sexField, "Sex"}, {clubField, "Club"}, {timeField, "Time"}},
			name: givenFirst, clock: plainClock, sexes: sexMW, date: slashDate, nobody: "Unknown",
			words: noteWords,
		},
		sallowby: {
			delimiter: "\t", lineEnd: "\r\n", charset: utf16LE, file: "{slug}/sallowby-recreation-ground_{date}.csv",
			columns: []column{{position, "Place"}, {wholeName, "Full name"}, {ageGroup, "Age group"}, {sexField, "Sex"},
				{clubField, "Club"}, {timeField, "Run time"}, {notes, "Notes"}},
			name: surnameComma, clock: longClock, sexes: sexMen, group: rangeGroup, date: isoDate, nobody: "Unknown", words: noteWords,
		},
		emberQuay: {
			delimiter: ",", lineEnd: "\n", quoteAll: true, file: "{slug}/quay {date}.csv",
			columns: []column{{position, "Rank"}, {number, "Bib"}, {wholeName, "Participant"}, {sexField, "Gender"}, {ageInYears, "Age"},
				{clubField, "Running club"}, {timeField, "Finish"}, {pace, "Pace (min/km)"}, {courseField, "Venue"}, {dateField, "Run date"}},
			footer: []string{"Results desk: please send corrections by Monday"},
			name:   givenFirst, clock: plainClock, sexes: sexMF, date: slashDate, nobody: "No number", words: noteWords,
		},
	}
}

// reissued is the run whose sheet came a second time, corrected.
var reissued = unit.NewDay(2025, 11, 15)

// garbled is the Osierholm sheet whose names were saved in the wrong code.
var garbled = unit.NewDay(2025, 10, 18)

// newYear is the day with two extra runs, far enough apart in time to do both.
var newYear = unit.NewDay(2026, 1, 1)

// season makes all runs and writes their sheets into files.
func (d *district) season(files map[string][]byte) error {
	var all []pending
	add := func(at int, date unit.Day, finishes []outcome, conditions float64) {
		if len(finishes) == 0 {
			return
		}
		e := d.entries(at, date, finishes)
		if at == wrenlow && date == reissued {
			all = append(all,
				pending{at: at, date: date, conditions: conditions, entries: firstIssue(e)},
				pending{at: at, date: date, conditions: conditions, entries: e, suffix: "_corrected"})
			return
		}
		if at == osierholm && date == garbled {
			for i := range e {
				e[i].given, e[i].surname = garble(e[i].given), garble(e[i].surname)
			}
		}
		all = append(all, pending{at: at, date: date, conditions: conditions, entries: e})
	}
	for w := range demoWeeks {
		special := map[int]float64{}
		if w == 4 { // a heat wave
			special = map[int]float64{osierholm: .04, wrenlow: .03, tarnholt: .035, emberQuay: .03}
		}
		finishes, conditions := d.week(w, special)
		for at, f := range finishes {
			add(at, d.date(at, w), f, conditions[at])
		}
		if w == 24 {
			both := d.newYearRuns()
			add(wrenlow, newYear, both[0], .03)
			add(osierholm, newYear, both[1], .005)
		}
	}
	return d.writeAll(all, files)
}

// newYearRuns lets a third of those about run at Wrenlow, and half of these go
// on to Osierholm.
func (d *district) newYearRuns() (both [2][]outcome) {
	for i := range d.people {
		p := &d.people[i]
		if p.start > 24 || p.end <= 24 || p.often == 0 || p.as != "" || d.r.Float64() > .3*p.often {
			continue
		}
		both[0] = d.run(both[0], i, wrenlow, 24, .03)
		if d.r.Float64() < .5 {
			both[1] = d.run(both[1], i, osierholm, 24, .005)
		}
	}
	return both
}

// firstIssue is a sheet before its correction: one person not yet named, one
// name wrong, one time 30 seconds out, and the last two finishers missing.
func firstIssue(entries []entry) []entry {
	first := append([]entry(nil), entries[:len(entries)-2]...)
	n := len(first)
	first[n/4].status = "unnamed"
	first[n/2].surname += "e"
	first[n-3].timeMS += 30_000
	return first
}

// writeAll renders the sheets on all processors and notes them in order.
func (d *district) writeAll(all []pending, files map[string][]byte) error {
	sheets, errs := make([]sheet, len(all)), make([]error, len(all))
	parallel(len(all), func(i int) { sheets[i], errs[i] = d.render(all[i]) })
	if err := errors.Join(errs...); err != nil {
		return err
	}
	for i, s := range sheets {
		d.note(all[i], s)
		files["sheets/"+s.path] = s.data
	}
	return nil
}
