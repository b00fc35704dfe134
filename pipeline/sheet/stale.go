package sheet

import (
	"fmt"
	"slices"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// weeksStale is for how many weeks a date may have been left from an earlier sheet,
// or be ahead of its own: last week's sheet is the one that people copy.
const weeksStale = 5

// stale says whether one of two dates may be that of another week or year that
// somebody forgot to change: they are whole weeks apart, or have the same day and
// month. Any other difference is no slip of copying: a file that was named after the
// day on which it was saved. Common practice, no source.
func stale(a, b unit.Day) bool {
	apart := int(a) - int(b)
	if apart < 0 {
		apart = -apart
	}
	if apart%7 == 0 && apart <= 7*weeksStale {
		return apart > 0
	}
	y, m, d := a.Date()
	y2, m2, d2 := b.Date()
	return y != y2 && m == m2 && d == d2
}

// fileDate is the date that the file's name gives; ok is false where it gives none,
// or several.
func fileDate(evs []evidence) (e evidence, ok bool) {
	for _, f := range evs {
		if f.strength != 2 || !f.settled() {
			continue
		}
		if ok && f.readings[0].day() != e.readings[0].day() {
			return evidence{}, false
		}
		e, ok = f, true
	}
	return e, ok
}

// fileDateFor is fileDate, where figures that can be read two ways are read as another date of the
// sheet has it: as that very day, or else as one of which it may be a copy.
func fileDateFor(day unit.Day, evs []evidence) (e evidence, ok bool) {
	if e, ok = fileDate(evs); ok {
		return e, true
	}
	for _, like := range []func(unit.Day) bool{func(d unit.Day) bool { return d == day }, func(d unit.Day) bool { return stale(day, d) }} {
		for _, f := range evs {
			if f.strength != 2 || len(f.readings) != 2 || ok {
				continue
			}
			for _, r := range f.readings {
				if r.y != 0 && like(r.day()) && !ok {
					e, ok = f, true
					e.readings = []reading{r}
				}
			}
		}
		if ok {
			break
		}
	}
	return e, ok
}

// copied says whether the date of a part that was found and that in the file's name
// may be of a sheet and of one that was copied from it, so that a person has to say
// which is right. A weekday that only one of them falls on says it.
func (rs *runSettler) copied(p *Part, day unit.Day, weekday int, evs []evidence) (file evidence, days []unit.Day, ok bool) {
	file, ok = fileDateFor(day, evs)
	if !ok || rs.parts > 1 || rs.o.Date != "" || !stale(day, file.readings[0].day()) {
		return file, nil, false
	}
	days = []unit.Day{day, file.readings[0].day()}
	if w := rs.wantedWeekday(p, weekday); w >= 0 {
		if fit := slices.DeleteFunc(slices.Clone(days), func(d unit.Day) bool { return int(d.Weekday()) != w }); len(fit) == 1 {
			days = fit
		}
	}
	return file, days, true
}

// askCopied leaves the date of a part open where it may be copied; it returns whether
// it did.
func (rs *runSettler) askCopied(p *Part, weekday int, evs []evidence) bool {
	file, days, ok := rs.copied(p, p.Date.Day, weekday, evs)
	switch {
	case !ok || len(days) == 1 && days[0] == p.Date.Day:
		return false
	case len(days) == 1:
		p.problem(rs.sheet.Name, 0, -1, place.Look, "dates-differ", p.Date.Text, fmt.Sprintf("%s as in the %s", days[0].Long(), file.from),
			fmt.Sprintf("The sheet is taken as the run of %s, which falls on the right weekday. If the %s is right, load it with --date %s.", days[0].Long(), p.Date.From, p.Date.Day))
		p.Date = FoundDate{Day: days[0], Settled: true, Text: file.text, From: file.from, Why: "it falls on the right weekday"}
		return true
	}
	p.Date.Settled, p.Date.Choices = false, days
	p.Date.ChoiceFrom = []string{p.Date.From, file.from}
	return true
}

// askWeekday leaves a date open beside which another weekday stands: one of the two is
// a slip. It returns whether it did; not where the date falls on the course's usual
// weekday, or the file's name says the same date and the course is not known to be run on the
// other one, so that the slip is in the word.
func (rs *runSettler) askWeekday(p *Part, weekday int, evs []evidence) bool {
	day := p.Date.Day
	if weekday < 0 || rs.o.Date != "" || rs.o.AnyWeekday || int(day.Weekday()) == weekday {
		return false
	}
	usual, known := rs.book.weekday[p.Course.Value]
	if known && usual == int(day.Weekday()) {
		return false
	}
	if file, ok := fileDateFor(day, evs); ok && file.weekday < 0 && p.Date.From != file.from && file.readings[0].day() == day && !(known && usual == weekday) {
		return false
	}
	near := (weekday - int(day.Weekday()) + 7) % 7
	if near > 3 {
		near -= 7
	}
	p.Date.Settled, p.Date.Slip, p.Date.Choices = false, true, []unit.Day{day, day + unit.Day(near)}
	p.Date.ChoiceFrom = []string{"the date; a " + day.Weekday().String(), "the nearest " + (day + unit.Day(near)).Weekday().String()}
	return true
}

// askCopiedColumn does the same for a column that has one and the same date in all
// rows.
func (rs *runSettler) askCopiedColumn(p *Part, texts []string, evs []evidence) {
	var day unit.Day
	found := false
	for _, text := range texts {
		d, _, ok := p.runs.dates.read(text)
		if ok && found && d != day {
			return
		}
		if ok {
			day, found = d, true
		}
	}
	if !found {
		return
	}
	if file, days, ok := rs.copied(p, day, -1, evs); ok && len(days) > 1 {
		p.Date.Text, p.Date.Choices = texts[0], days
		p.Date.ChoiceFrom = []string{p.Date.From, file.from}
	}
}

// takenByOthers settles the date of a tab that its title and its name say
// differently, where another tab is of one of the two: a tab that was copied, and its
// title not changed.
func (rs *runSettler) takenByOthers(parts []*Part) {
	taken := map[runDay]*Part{}
	for _, p := range parts {
		if p.Date.Settled && p.Kind == "full" {
			taken[runDay{p.Course.Value, p.Date.Day}] = p
		}
	}
	for _, p := range parts {
		if p.Kind != "full" || p.Tab == "" || len(p.Date.Choices) != 2 || p.Date.ByOrder != nil || !stale(p.Date.Choices[0], p.Date.Choices[1]) {
			continue
		}
		for i, d := range p.Date.Choices {
			left := p.Date.Choices[1-i]
			other := taken[runDay{p.Course.Value, d}]
			if other == nil || taken[runDay{p.Course.Value, left}] != nil || !saysDate(p.Tab, left) {
				continue
			}
			p.problem(rs.sheet.Name, 0, -1, place.Look, "dates-differ", p.Date.Text, fmt.Sprintf("%s as in the tab name", left.Long()),
				fmt.Sprintf("The tab is taken as the run of %s, since tab %q is that of %s. Please put its title right.", left.Long(), other.Tab, d.Long()))
			p.Date = FoundDate{Day: left, Settled: true, Text: p.Tab, From: "tab name", Why: fmt.Sprintf("tab %q is the run of %s", other.Tab, d.Long())}
			p.runs.day, p.runs.dayOK = left, true
			taken[runDay{p.Course.Value, left}] = p
			break
		}
	}
}

// runDay is a course and a day.
type runDay struct {
	course string
	day    unit.Day
}

// saysDate says whether a text gives a date that can be this day.
func saysDate(text string, day unit.Day) bool {
	y, m, d := day.Date()
	for _, f := range scanDates(text, true) {
		for _, r := range f.readings {
			if r.m == m && r.d == d && (r.y == 0 || r.y == y) {
				return true
			}
		}
	}
	return false
}
