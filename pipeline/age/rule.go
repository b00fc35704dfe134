package age

import (
	"fmt"
	"time"

	"lapwing/pipeline/unit"
)

// Reckoning says which age groups go by an age that is reached in the year.
type Reckoning uint8

const (
	ByDay         Reckoning = iota // every group goes by the age on the day of the run
	ByYear                         // every group goes by the age reached on the day of the year that the Rule names
	JuniorsByYear                  // the junior groups and where they end do; masters go by the age on the day
)

// YearOf says of which year the day is on which ages are reckoned.
type YearOf uint8

const (
	OfRun        YearOf = iota // the calendar year of the run
	SeasonBegins               // the year in which the run's season begins
	SeasonEnds                 // the year in which it ends
)

// Rule says who is in which age group on the day of a run. What depends on somebody's age
// and not on a group (age grade, who may be a child) goes by the age on the day whatever
// the rule is.
//
// Rules in use (from memory of their texts): by the age on the day, masters of World Masters
// Athletics (Rules of Competition: the five-year group of the age on the first day); by the
// age on 31 December of the year, the under-18 and under-20 of World Athletics (Technical
// Rules, rule 3), with masters by the day, and all groups of several European federations;
// by that of the year in which the season ends, the French federation, whose season begins
// in September.
type Rule struct {
	Scheme    Scheme
	Reckoning Reckoning
	// OnMonth and OnDay are the day of the year on which ages are reckoned, Year says of
	// which year. Only where Reckoning is not ByDay.
	OnMonth, OnDay int
	Year           YearOf
	// SeasonMonth and SeasonDay are the first day of a season. Only where Year is not OfRun.
	SeasonMonth, SeasonDay int
}

// DefaultRule is DefaultScheme by the age on the day.
func DefaultRule() Rule {
	return Rule{Scheme: DefaultScheme(), OnMonth: 12, OnDay: 31, SeasonMonth: 1, SeasonDay: 1}
}

// ReckonedOn is the day on which the ages are reckoned that groups go by, for a run on a day.
// It may lie before the run or after it, by less than two years.
func (r Rule) ReckonedOn(run unit.Day) unit.Day {
	if r.Reckoning == ByDay {
		return run
	}
	year, _, _ := run.Date()
	if r.Year != OfRun {
		season := run.LastOn(r.SeasonMonth, r.SeasonDay)
		year, _, _ = season.Date()
		if r.Year == SeasonEnds {
			year, _, _ = (unit.NewDay(year+1, r.SeasonMonth, r.SeasonDay) - 1).Date()
		}
	}
	return unit.NewDay(year, r.OnMonth, r.OnDay)
}

// juniorEnd is the age at which the last junior group has ended.
func (s Scheme) juniorEnd() int {
	if n := len(s.Junior); n > 0 {
		return s.Junior[n-1]
	}
	return 0
}

// Births is the window of somebody who is in a group of ages lo to hi on the day of a run.
// Both ends go by the rule; with JuniorsByYear that of Senior is reckoned on two days. Nobody
// is taken for an adult by the rule whom the same ages on the day would leave a child.
func (r Rule) Births(lo, hi int, run unit.Day) Window {
	on := r.ReckonedOn(run)
	reckoned := func(age int) unit.Day {
		if r.Reckoning == JuniorsByYear && age > r.Scheme.juniorEnd() {
			return run
		}
		return on
	}
	w := Window{latestBirth(hi+1, reckoned(hi+1)) + 1, latestBirth(lo, reckoned(lo))}
	if lo < adult && On(w.Hi, run) >= adult {
		w.Hi = latestBirth(lo, run)
	}
	return w
}

// adult is the age from which somebody is no child.
const adult = 18

// On is the rule for the runs of one day.
func (r Rule) On(run unit.Day) RuleOn { return RuleOn{r, run, r.ReckonedOn(run)} }

// RuleOn says who is in which group on one day.
type RuleOn struct {
	rule    Rule
	run, on unit.Day
}

// FirstAge is the youngest age of the group that somebody born on a day is in: of ages from
// 0 to 120, as nobody is older.
func (r RuleOn) FirstAge(born unit.Day) int {
	age := On(born, r.on)
	if end := r.rule.Scheme.juniorEnd(); r.rule.Reckoning == JuniorsByYear && age >= end {
		age = max(On(born, r.run), end)
	}
	lo, _ := r.rule.Scheme.Bounds(min(max(age, 0), 120))
	return lo
}

// Group is the youngest age of the one group that everybody with this birth window is in. ok
// is false where the window is unknown or holds birth dates of several groups.
func (r RuleOn) Group(w Window) (first int, ok bool) {
	if !w.Known() {
		return 0, false
	}
	first = r.FirstAge(w.Hi)
	return first, first == r.FirstAge(w.Lo)
}

// Words states the rule in one sentence.
func (r Rule) Words() string {
	switch r.Reckoning {
	case ByYear:
		return "Age groups go by " + r.Reckoned() + "."
	case JuniorsByYear:
		return fmt.Sprintf("Age groups up to U%d go by %s; older ones go by the age on the day.", r.Scheme.juniorEnd(), r.Reckoned())
	}
	return "Age groups go by the age on the day."
}

// Reckoned says in words which age the groups go by that a rule reckons.
func (r Rule) Reckoned() string {
	if r.Reckoning == ByDay {
		return "the age on the day"
	}
	year := [...]string{"the year", "the year in which the season begins", "the year in which the season ends"}[r.Year]
	return fmt.Sprintf("the age reached on %d %s of %s", r.OnDay, time.Month(r.OnMonth), year)
}
