package record

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// headingBasis knows headings that say on which day ages are reckoned: "Age on
// 31 Dec", "âge au 31/12", "Alter am 31.12.", "age at sign-up". heading is
// folded.
func headingBasis(heading string) (age.Basis, bool) {
	switch {
	case yearEndHeading.MatchString(heading):
		return age.YearEnd, true
	case strings.Contains(heading, "season") || strings.Contains(heading, "saison") || strings.Contains(heading, "temporada"):
		return age.SeasonStart, true
	case strings.Contains(heading, "sign-up") || strings.Contains(heading, "sign up") || strings.Contains(heading, "at registration") || strings.Contains(heading, "at entry"):
		return age.SignUp, true
	}
	return age.NoBasis, false
}

var yearEndHeading = regexp.MustCompile(`\b31\W*(st|\.)?\W*(of |de |di |er )?(12|dec|dez|des|dic|gru)|\b(12|dec\w*)\W*31\b|year.?end|end of (the )?year|fin d'annee|jahresende|this year|i ar$|i ar\b|in diesem jahr|cette annee|im kalenderjahr|dieses jahr|quest'anno|este ano`)

// reckonDay is the day of the year, and perhaps the year, that a heading names: "Age on
// 31 August 2025". The zero reckonDay names none.
type reckonDay struct{ year, month, day int }

// on is that day for a run: where the heading says no year, the last before the run.
func (d reckonDay) on(run unit.Day) unit.Day {
	if d.year > 0 {
		return unit.NewDay(d.year, d.month, d.day)
	}
	return run.LastOn(d.month, d.day)
}

// headingDay finds a date in a folded heading: 31 aug 2025, 31/08/2025, aug 31, 01.09. Of
// 01/09 and 9/1 the reading is taken that is the first of a month, as seasons begin; where
// both are possible and neither is, none.
func headingDay(heading string) (reckonDay, bool) {
	var d reckonDay
	var small []int
	for _, w := range strings.FieldsFunc(heading, func(c rune) bool { return c == ' ' || strings.ContainsRune("/.,()[]:", c) }) {
		n, err := strconv.Atoi(strings.TrimRight(w, "stndrh"))
		month := monthWords[w]
		switch {
		case err == nil && n >= 1900 && n < 2100:
			d.year = n
		case err == nil && n >= 1 && n <= 31:
			small = append(small, n)
		case err == nil:
			return reckonDay{}, false
		case month > 0 && d.month == 0:
			d.month = month
		}
	}
	switch {
	case d.month > 0 && len(small) == 1:
		d.day = small[0]
	case d.month > 0 || len(small) != 2:
		return reckonDay{}, false
	case small[0] > 12 || small[0] == 1 || small[0] == small[1]:
		d.day, d.month = small[0], small[1]
	case small[1] > 12 || small[1] == 1:
		d.month, d.day = small[0], small[1]
	default:
		return reckonDay{}, false
	}
	return d, d.month >= 1 && d.month <= 12
}

// ageOn and groupOn are the days on which the ages and the groups of this sheet are
// reckoned, for a run.
func (r *Reader) ageOn(run unit.Day) unit.Day {
	if r.ageDay.month > 0 {
		return r.ageDay.on(run)
	}
	return r.reckoning(r.o.AgeBasis, run)
}

func (r *Reader) groupOn(run unit.Day) unit.Day {
	if r.groupDay.month > 0 {
		return r.groupDay.on(run)
	}
	return r.reckoning(r.o.GroupBasis, run)
}

// groupAges is the birth window of a group of ages lo to hi, reckoned as b says.
func (r *Reader) groupAges(lo, hi int, b age.Basis, run unit.Day) age.Window {
	if b == age.AsSet {
		return r.o.Rule.Births(lo, hi, run)
	}
	return age.OfAges(lo, hi, r.reckoning(b, run))
}

// groupBirth is the birth window of an age group.
func (r *Reader) groupBirth(e *groupEntry, run unit.Day) age.Window {
	var w age.Window
	if r.o.GroupBasis == age.AsSet && e.known && e.g.kind != bornIn {
		if e.setDay != run || !e.set.Known() {
			e.setDay, e.set = run, r.groupAsSet(e, run)
		}
		w = e.set
	} else {
		w = e.birth(r.groupOn(run))
	}
	if w.Known() {
		w.Hi = min(w.Hi, run) // nobody is born after the run
	}
	if r.groups.french && r.o.GroupBasis == age.YearEnd && e.known && e.g.kind != bornIn && lateInYear(run) {
		y, _, _ := run.Date()
		w.Hi = age.OfAges(e.lo, e.hi, unit.NewDay(y+1, 12, 31)).Hi
	}
	return w
}

// lateInYear says whether French classes may be those of the next year. The athletics year
// began on 1 November until 2023, since 2024 on 1 September (from memory), and has the
// classes of the year in which it ends. Not every race goes by it.
func lateInYear(run unit.Day) bool { _, m, _ := run.Date(); return m >= 9 }

// groupAsSet is the birth window of a group by the archive's rule.
func (r *Reader) groupAsSet(e *groupEntry, run unit.Day) age.Window {
	w := r.groupAges(e.lo, e.hi, age.AsSet, run)
	if r.groups.french && lateInYear(run) {
		// From September on the rule may be another's than the class's: both are possible.
		y, _, _ := run.Date()
		now, next := age.OfAges(e.lo, e.hi, unit.NewDay(y, 12, 31)), age.OfAges(e.lo, e.hi, unit.NewDay(y+1, 12, 31))
		switch on := r.o.Rule.ReckonedOn(run); {
		case on < unit.NewDay(y+1, 1, 1): // the setting knows no season
			w.Hi = max(w.Hi, next.Hi)
		case y < 2024:
			if _, m, _ := run.Date(); m < 11 {
				w.Lo = min(w.Lo, now.Lo)
			}
		}
	}
	if e.grown {
		w.Hi = min(w.Hi, age.OfAges(e.lo, e.hi, run).Hi)
	}
	return w
}

// agePair is a row that carries an age group and another sign of age, by which
// the day that groups are reckoned on can be told.
type agePair struct {
	entry int32
	day   unit.Day
	born  age.Window
}

const pairLimit = 2048

// pair keeps the row if its age, year or date of birth can be read alone.
func (r *Reader) pair(entry int32, cells []string, day unit.Day) {
	var w age.Window
	if s := words(cells, r.c.BirthDate); s != "" {
		r.scratch = fold(r.scratch[:0], s)
		if d, ok := lexDate(r.scratch); ok && d.order != undecided && !d.short {
			if born, ok := d.day(dayFirst, day); ok {
				w = age.OfDate(born)
			}
		}
	}
	for _, index := range [...]int{r.c.BirthYear, r.c.Age} {
		if w.Known() {
			break
		}
		switch c := lexAge(words(cells, index)); {
		case c.text || c.blank:
		case c.n >= 1900 && c.n < 2100:
			w = age.OfYear(c.n)
		case index == r.c.Age && c.n >= 5 && c.n < 100 && !c.decimals:
			w = r.windowOf(c.n, r.ageOn(day))
		}
	}
	if w.Known() {
		r.pairs = append(r.pairs, agePair{entry, day, w})
	}
}

// showTens says whether the ages beside groups that begin with a full ten, M30, M40, M50, show that these are
// ten years wide: two people or more, and a quarter of them, are older than the first half by a year and
// more, and no group begins in the midst.
func (r *Reader) showTens() bool {
	for _, e := range r.groups.entries {
		if e.g.kind == start && e.g.lo >= 35 && e.g.lo%10 != 0 {
			return false
		}
	}
	first, second := 0, 0
	for _, p := range r.pairs {
		e := &r.groups.entries[p.entry]
		lo, hi, ok := p.born.On(p.day)
		if !ok || e.g.kind != start || e.g.lo < 30 || e.g.lo%10 != 0 {
			continue
		}
		switch from := int(e.g.lo); {
		case lo >= from && hi <= from+5:
			first++
		case lo >= from+6 && hi <= from+10:
			second++
		}
	}
	return second >= 2 && 3*second >= first
}

// settleBasis compares the groups with the other ages of the same rows. Where
// several contradict a reckoning on the day of the run, and reckoning on 31
// December or on the first day of the season explains at least three of four,
// that is how this sheet reckons. Two rows in a group that somebody of the year
// of birth beside it is in on the day of the run, and no more at the end of the
// year, show that groups are reckoned on the day.
func (r *Reader) settleBasis() (why string) {
	count := func(b age.Basis) (n int) {
		for _, p := range r.pairs {
			e := &r.groups.entries[p.entry]
			if e.known && e.g.kind != bornIn && r.groupAges(e.lo, e.hi, b, p.day).Gap(p.born) > 0 {
				n++
			}
		}
		return n
	}
	byDay := 0
	for _, p := range r.pairs {
		e := &r.groups.entries[p.entry]
		if e.known && e.g.kind != bornIn && p.born.Days() >= 365 && age.OfAges(e.lo, e.hi, r.reckoning(age.YearEnd, p.day)).Gap(p.born) > 0 && age.OfAges(e.lo, e.hi, p.day).Gap(p.born) == 0 {
			byDay++
		}
	}
	r.groupCutsYears = byDay >= 2
	if r.groupDay.month > 0 {
		r.pairs = nil
		return "" // the heading names the day
	}
	if r.o.GroupBasis == age.AsSet && len(r.groups.entries) > 0 {
		which := map[bool]string{true: "; junior groups", false: "; groups"}[r.o.Rule.Reckoning == age.JuniorsByYear]
		why = which + " go by " + r.o.Rule.Reckoned() + ", as set"
	}
	now := count(r.o.GroupBasis)
	best, least := r.o.GroupBasis, now
	for _, b := range []age.Basis{age.OnTheDay, age.YearEnd, age.SeasonStart} {
		if n := count(b); n < least {
			best, least = b, n
		}
	}
	if now < 3 || 4*least > now || best == r.o.GroupBasis {
		r.pairs = nil
		return why
	}
	r.o.GroupBasis = best
	words := map[age.Basis]string{age.OnTheDay: "on the day", age.YearEnd: "on 31 December", age.SeasonStart: "on the first day of the season"}
	why = fmt.Sprintf("; groups are reckoned %s: that leaves %d of %d rows at odds with their age instead of %d", words[best], least, len(r.pairs), now)
	r.pairs = nil
	return why
}

// Groups lists the distinct spellings of the group column, in the order of
// their first row, for the other tabs and the next sheets of the series. It
// can be asked as soon as the rows were observed.
func (r *Reader) Groups() []string {
	var out []string
	for _, e := range r.groups.entries {
		if e.g.kind != special && e.g.kind != noGroup {
			out = append(out, e.text)
		}
	}
	return out
}

// KnowTimes adds what the column of times of another table of the sheet says of the
// way in which times are written, before Settle; sameTab where the two stand on one
// tab.
func (r *Reader) KnowTimes(o *Reader, sameTab bool) {
	if sameTab {
		r.clock.know(o.clock, besideOnTab)
	} else {
		r.clock.know(o.clock, onOtherTab)
	}
}

// Know adds groups that other tabs or sheets of the series use, before Settle:
// a tab of ten lines seldom shows by itself how wide its groups are.
func (r *Reader) Know(groups []string) {
	for _, text := range groups {
		if text = trim(text); text != "" {
			r.groups.observe(text, &r.scratch)
		}
	}
}
