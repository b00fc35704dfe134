package record

import (
	"fmt"
	"regexp"
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

var yearEndHeading = regexp.MustCompile(`\b31\W*(st|\.)?\W*(of |de |di |er )?(12|dec|dez|des|dic|gru)|\b(12|dec\w*)\W*31\b|year.?end|end of (the )?year|fin d'annee|jahresende`)

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
		if d, ok := lexDate(r.scratch); ok && d.order != undecided {
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
			w = r.windowOf(c.n, r.reckoning(r.o.AgeBasis, day))
		}
	}
	if w.Known() {
		r.pairs = append(r.pairs, agePair{entry, day, w})
	}
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
			if e.known && e.g.kind != bornIn && age.OfAges(e.lo, e.hi, r.reckoning(b, p.day)).Gap(p.born) > 0 {
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
	now := count(r.o.GroupBasis)
	best, least := r.o.GroupBasis, now
	for _, b := range []age.Basis{age.OnTheDay, age.YearEnd, age.SeasonStart} {
		if n := count(b); n < least {
			best, least = b, n
		}
	}
	if now < 3 || 4*least > now || best == r.o.GroupBasis {
		r.pairs = nil
		return ""
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
