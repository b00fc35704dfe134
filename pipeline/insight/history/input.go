package history

import (
	"fmt"

	"lapwing/pipeline/unit"
)

// Flag says what a result counts for. Flags are added together.
type Flag uint8

const (
	CountsRun     Flag = 1 << iota // a finish by this person: attendance, totals, milestones, newcomers
	CountsTime                     // a time to compare: bests
	SaysNewcomer                   // the sheet itself says that it is this person's first run anywhere
	SaysFirstHere                  // the sheet itself says that it is their first run on this course
)

// Part is what somebody took part as.
type Part uint8

const (
	Runner Part = iota
	Walker
	Guided
	Guide
	Pacer
	BackMarker
	WithChild // an adult with a child
	Buggy
	Dog
	RacingWheelchair // or handcycle
	DayWheelchair    // or frame
)

// class groups the parts whose times are compared with each other; 0 means
// that the time counts for no best. Runners, walkers and guided runners share
// one list; guides, pacers, back markers and adults with a child run for
// somebody else; a buggy, a dog and each kind of wheels have a list of their own.
type class uint8

const (
	noBests class = iota
	onFoot
	withBuggy
	withDog
	racingWheels
	dayWheels
	classes
)

func (p Part) class() class {
	switch p {
	case Runner, Walker, Guided:
		return onFoot
	case Buggy:
		return withBuggy
	case Dog:
		return withDog
	case RacingWheelchair:
		return racingWheels
	case DayWheelchair:
		return dayWheels
	}
	return noBests
}

// RunState says what is known of a run: whether somebody who is not on its
// sheet was absent.
type RunState uint8

const (
	SheetLoaded  RunState = iota // held, and the whole field is in the results
	SheetMissing                 // held, but its sheet is missing, its times were lost, or only an excerpt is there
	NotHeld                      // cancelled or abandoned
)

// Run is one run of a course.
type Run struct {
	Course int32
	Day    unit.Day
	State  RunState
}

// Course says how far back the history of a course goes.
type Course struct {
	// Complete declares that from CompleteFrom on every run's sheet is loaded
	// and that whoever had finished here before is in the sheets or has an
	// opening count.
	Complete     bool
	CompleteFrom unit.Day
	// Began declares that the course's first run ever was on CompleteFrom: an
	// opening count that names no course can't have been run here.
	Began bool
	// Elsewhere leaves the course out when it is asked whether history is
	// complete enough to call anybody a newcomer: for a course outside the
	// district of which a sheet happens to be loaded. Finishes there still
	// show that somebody is no newcomer.
	Elsewhere bool
}

// AnyCourse marks an opening balance that names no course.
const AnyCourse int32 = -1

// Count is a runner's opening balance: finishes up to, not including, AsOf.
// The zero AsOf means before every sheet. Results loaded from before AsOf are
// part of the count, not added to it.
type Count struct {
	Runner int32
	Course int32 // AnyCourse: at all courses together
	Count  int32
	AsOf   unit.Day // the same for all of a runner's counts
}

// Best is a runner's best time from before the sheets. It is compared with
// results after Day; the zero Day means before every sheet.
type Best struct {
	Runner    int32
	Course    int32 // AnyCourse: known as a best at the distance only
	DistanceM int32 // metres
	TimeS     int32 // seconds, rounded up
	Day       unit.Day
	As        Part
}

// Volunteer is a day on which somebody helped instead of running, on any course.
type Volunteer struct {
	Runner int32
	Day    unit.Day
}

// Input holds the results of named people, one element a result in each of the
// first eight columns, which are of equal length and sorted by Runner, then
// Day, then Start, then anything that makes the order complete (sheet and row).
type Input struct {
	Runner    []int32
	Course    []int32 // index into Courses; a changed route is another course
	Day       []unit.Day
	Start     []int32 // order of start within the day over all courses, 0 = not known
	TimeS     []int32 // seconds, rounded up to the whole second; 0 = no time
	DistanceM []int32 // metres, as times are compared at it
	Flags     []Flag
	Part      []Part

	Courses    []Course
	Runs       []Run       // in any order; every counted result's course and week must be among them
	Counts     []Count     // sorted by Runner
	Bests      []Best      // sorted by Runner, Day
	Volunteers []Volunteer // sorted by Runner, Day

	// AsOf is the day on which Output.Runners stands; the zero Day is that of
	// the last listed run.
	AsOf unit.Day
}

// Rules are what the settings can change.
type Rules struct {
	Milestones []int32 // numbers of runs to be marked, ascending
	UsualWeeks int     // a course is usual where somebody finished UsualTimes …
	UsualTimes int     // … in the UsualWeeks weeks before
}

// DefaultRules are milestones at 10, 20, 50, 100, 200, 500 and 1000 runs, and
// a usual course where somebody finished twice in 26 weeks.
func DefaultRules() Rules {
	return Rules{Milestones: []int32{10, 20, 50, 100, 200, 500, 1000}, UsualWeeks: 26, UsualTimes: 2}
}

func (in *Input) check(r Rules) error {
	n := len(in.Runner)
	for _, m := range []int{len(in.Course), len(in.Day), len(in.Start), len(in.TimeS), len(in.DistanceM), len(in.Flags), len(in.Part)} {
		if m != n {
			return fmt.Errorf("history: columns of %d and %d results", n, m)
		}
	}
	if r.UsualWeeks < 1 || r.UsualTimes < 1 {
		return fmt.Errorf("history: a usual course by %d finishes in %d weeks", r.UsualTimes, r.UsualWeeks)
	}
	for i := 1; i < len(r.Milestones); i++ {
		if r.Milestones[i] <= r.Milestones[i-1] {
			return fmt.Errorf("history: milestones %v are not ascending", r.Milestones)
		}
	}
	for i, x := range in.Runs {
		if x.Course < 0 || int(x.Course) >= len(in.Courses) {
			return fmt.Errorf("history: run %d is on course %d of %d", i, x.Course, len(in.Courses))
		}
	}
	for i, c := range in.Counts {
		if i > 0 && c.Runner < in.Counts[i-1].Runner {
			return fmt.Errorf("history: opening count %d is out of order", i)
		}
		if i > 0 && c.Runner == in.Counts[i-1].Runner && c.AsOf != in.Counts[i-1].AsOf {
			return fmt.Errorf("history: runner %d has opening counts of %v and %v", c.Runner, in.Counts[i-1].AsOf, c.AsOf)
		}
		if c.Course < AnyCourse || int(c.Course) >= len(in.Courses) || c.Count < 0 {
			return fmt.Errorf("history: opening count %d: %+v", i, c)
		}
	}
	for i, b := range in.Bests {
		if i > 0 && (b.Runner < in.Bests[i-1].Runner || b.Runner == in.Bests[i-1].Runner && b.Day < in.Bests[i-1].Day) {
			return fmt.Errorf("history: opening best %d is out of order", i)
		}
		if b.Course < AnyCourse || int(b.Course) >= len(in.Courses) || b.TimeS <= 0 || b.As.class() == noBests {
			return fmt.Errorf("history: opening best %d: %+v", i, b)
		}
	}
	for i, v := range in.Volunteers {
		if i > 0 && (v.Runner < in.Volunteers[i-1].Runner || v.Runner == in.Volunteers[i-1].Runner && v.Day < in.Volunteers[i-1].Day) {
			return fmt.Errorf("history: volunteer %d is out of order", i)
		}
	}
	return nil
}

// checkRow reports a result that is out of order or out of range.
func (in *Input) checkRow(i int) error {
	if c := in.Course[i]; c < 0 || int(c) >= len(in.Courses) {
		return fmt.Errorf("history: result %d is on course %d of %d", i, c, len(in.Courses))
	}
	if i == 0 {
		return nil
	}
	j := i - 1
	if in.Runner[i] < in.Runner[j] || in.Runner[i] == in.Runner[j] &&
		(in.Day[i] < in.Day[j] || in.Day[i] == in.Day[j] && in.Start[i] < in.Start[j]) {
		return fmt.Errorf("history: result %d is out of order", i)
	}
	return nil
}
