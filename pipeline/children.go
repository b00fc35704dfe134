package pipeline

import (
	"slices"
	"strings"

	"lapwing/pipeline/record/name"
)

// Who may be under 18 on the day is shown with first name and initial. Where
// the birth window is known it says so. Where nothing is known of somebody's
// age, the setting age_not_known decides; without ages on a sheet, and with
// them for children only, most of those who have none are adults, but on a
// sheet that gives most people's ages somebody without one may well be a child
// whose parents left it out.
const (
	ageNotKnownBySheet = "by sheet" // a child where the sheet is for juniors, gives the ages of at least half of the others, or has a column of ages that could not be believed
	ageNotKnownAdult   = "adult"
	ageNotKnownChild   = "child"
)

// mayBeChild is the bit of counts of somebody whose age is not known and who is
// treated as a child.
const mayBeChild = 4

// juniorWords in the name of a course, sheet or tab say that it is for juniors.
var juniorWords = []string{"junior", "juniors", "kids", "children", "childrens", "youth", "youths", "schools", "minis", "toddlers"}

// juniorDistanceM is the distance up to which a run is taken for a junior run,
// where ages are not known. Common sense, no source.
const juniorDistanceM = 2000

// markChildren notes the lines of people whose age is not known and who are to
// be treated as children. Settled lines keep what was noted.
func (f *field) markChildren(fig *figures, rule string) {
	given, all := make([]int32, len(f.parts)+1), make([]int32, len(f.parts)+1)
	if rule == ageNotKnownBySheet {
		for i := 0; i < f.n; i++ {
			if f.namesSomebody(i) && !f.settled(i) {
				all[f.part[i]]++
				if f.birthLo[i] != 0 || f.birthHi[i] != 0 {
					given[f.part[i]]++
				}
			}
		}
	}
	junior := make([]bool, len(f.parts)+1)
	for i := range f.parts {
		// A sheet whose column of ages could not be believed gives everybody's age.
		junior[i+1] = f.parts[i].ageDoubted || forJuniors(f.parts[i].path) || forJuniors(f.parts[i].tab)
	}
	juniorCourse := make([]bool, len(f.courses)+1)
	for i := range f.courses {
		c := &f.courses[i]
		juniorCourse[i+1] = c.distanceM <= juniorDistanceM || forJuniors(c.course) || forJuniors(c.name)
	}
	for i := 0; i < f.n; i++ {
		known := fig.ageLow[i] >= 0 || !f.namesSomebody(i)
		if f.settled(i) && !known {
			continue
		}
		if f.some != nil && f.some.was[i].there {
			// of a sheet that came earlier the field may hold some lines only
			f.counts[i] |= f.some.was[i].counts & mayBeChild
			if !known {
				f.asked.changed = f.asked.changed || f.some.was[i].ageLow != noAge
				continue
			}
		}
		f.counts[i] &^= mayBeChild
		if known {
			continue
		}
		part := f.part[i]
		switch rule {
		case ageNotKnownChild:
			f.counts[i] |= mayBeChild
		case ageNotKnownBySheet:
			if junior[part] || juniorCourse[f.course(i)] || 2*given[part] >= all[part] {
				f.counts[i] |= mayBeChild
			}
		}
	}
}

func forJuniors(text string) bool {
	return slices.ContainsFunc(strings.Fields(name.Fold(text)), func(w string) bool { return slices.Contains(juniorWords, w) })
}
