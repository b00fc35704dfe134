package pipeline

import (
	"fmt"

	"lapwing/pipeline/age"
)

// Who is in which age group is one rule for an archive: standings, records and leagues
// compare people across its courses. A sheet that shows another basis is read by its own, and
// its people are then put into groups by the archive's.
const (
	ageGroupsByDay         = "day"
	ageGroupsByYear        = "year"
	ageGroupsJuniorsByYear = "juniors by year"

	ageGroupsOfRun       = "run"
	ageGroupsSeasonStart = "season start"
	ageGroupsSeasonEnd   = "season end"
)

// AgeRule is the rule that the settings state; the default one where they are wrong, which
// Check has said.
func (s Settings) AgeRule() age.Rule {
	r, err := s.ageRule()
	if err != nil {
		return age.DefaultRule()
	}
	return r
}

func (s Settings) ageRule() (r age.Rule, err error) {
	r = age.DefaultRule()
	if r.Scheme, err = s.ageScheme(); err != nil {
		return age.DefaultRule(), err
	}
	switch s.AgeGroups {
	case ageGroupsByDay:
	case ageGroupsByYear:
		r.Reckoning = age.ByYear
	case ageGroupsJuniorsByYear:
		if r.Reckoning = age.JuniorsByYear; len(s.AgeGroupsUnder) == 0 {
			return r, fmt.Errorf("age_groups = %q: there are no junior groups; name them in age_groups_under, as in [16, 18, 20]", s.AgeGroups)
		}
	default:
		return r, fmt.Errorf("age_groups = %q: write %q (the age on the day), %q (the age reached on a day of the year) or %q (up to U20 so, older groups on the day)",
			s.AgeGroups, ageGroupsByDay, ageGroupsByYear, ageGroupsJuniorsByYear)
	}
	switch s.AgeGroupsYear {
	case ageGroupsOfRun:
	case ageGroupsSeasonStart:
		r.Year = age.SeasonBegins
	case ageGroupsSeasonEnd:
		r.Year = age.SeasonEnds
	default:
		return r, fmt.Errorf("age_groups_year = %q: write %q (the calendar year of the run), %q or %q (the year in which its season starts or ends)",
			s.AgeGroupsYear, ageGroupsOfRun, ageGroupsSeasonStart, ageGroupsSeasonEnd)
	}
	if r.OnMonth, r.OnDay, err = monthAndDay("age_groups_on", s.AgeGroupsOn, "12-31"); err != nil {
		return r, err
	}
	if r.SeasonMonth, r.SeasonDay, err = s.seasonStart(); err != nil {
		return r, err
	}
	if d := age.DefaultRule(); r.Reckoning == age.ByDay && (r.OnMonth != d.OnMonth || r.OnDay != d.OnDay || r.Year != d.Year) {
		return r, fmt.Errorf("age_groups_on and age_groups_year say nothing while age_groups = %q: write age_groups = %q or %q as well, or leave them out",
			ageGroupsByDay, ageGroupsByYear, ageGroupsJuniorsByYear)
	}
	return r, nil
}

// oldestJunior is the latest end of the junior groups; leastMasters and mostMasters bound the
// age with which masters begin. Senior lies between.
const (
	oldestJunior              = 25
	leastMasters, mostMasters = 30, 50
	widestGroup               = 20
)

// ageScheme is which groups there are.
func (s Settings) ageScheme() (age.Scheme, error) {
	last := 2
	for _, u := range s.AgeGroupsUnder {
		if u <= last || u > oldestJunior {
			return age.Scheme{}, fmt.Errorf("age_groups_under: %d: write rising ages from 3 to %d, as in [11, 13, 15, 17, 20]", u, oldestJunior)
		}
		last = u
	}
	if s.AgeGroupsMasters < leastMasters || s.AgeGroupsMasters > mostMasters {
		return age.Scheme{}, fmt.Errorf("age_groups_masters = %d: write the first age of the masters groups, from %d to %d", s.AgeGroupsMasters, leastMasters, mostMasters)
	}
	if s.AgeGroupsWidth < 1 || s.AgeGroupsWidth > widestGroup {
		return age.Scheme{}, fmt.Errorf("age_groups_width = %d: write how many years a masters group has, from 1 to %d", s.AgeGroupsWidth, widestGroup)
	}
	return age.Scheme{Junior: s.AgeGroupsUnder, Masters: s.AgeGroupsMasters, Step: s.AgeGroupsWidth}, nil
}

// ageRuleKey sums up the rule; the season counts for it only where the rule has one.
func (s Settings) ageRuleKey() string {
	r := s.AgeRule()
	if r.Year == age.OfRun {
		r.SeasonMonth, r.SeasonDay = 0, 0
	}
	return fmt.Sprint(r)
}

// stateAgeGroups is the state of the database that tells the setting its groups go by.
const stateAgeGroups = "age groups"

// noGroup stands for an age group that is not certain.
const noGroup = 255

// firstAges is the youngest age of each age's group.
func firstAges(scheme age.Scheme) (first [121]uint8) {
	for a := range first {
		lo, _ := scheme.Bounds(a)
		first[a] = uint8(lo)
	}
	return first
}

// rulesOfRuns is the rule for each run, by run_no - 1; nil where groups go by the age on the
// day.
func (f *field) rulesOfRuns(rule age.Rule) []age.RuleOn {
	if rule.Reckoning == age.ByDay {
		return nil
	}
	on := make([]age.RuleOn, len(f.runs))
	for r := range f.runs {
		on[r] = rule.On(f.runs[r].day)
	}
	return on
}

// latestGroup is the youngest age of the group that runner r was in at the last run that
// counts, by all that is known of the birth date; noGroup where that is not certain.
func (f *field) latestGroup(p *people, r int) uint8 {
	lines := p.order[p.begin[r]:p.begin[r+1]]
	for k := len(lines) - 1; k >= 0; k-- {
		if i := int(lines[k]); f.counts[i]&1 != 0 {
			if g, ok := f.rule.On(f.day(i)).Group(p.window[r]); ok {
				return uint8(g)
			}
			break
		}
	}
	return noGroup
}
