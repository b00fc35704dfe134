package pipeline

import (
	"time"

	"lapwing/pipeline/unit"
)

// knownDays is what the archive knows of the days and distances of courses.
type knownDays struct {
	days      map[string]map[unit.Day]bool
	distances map[courseKey]bool
	listed    map[string]int // weekday by courses.csv, -1 not given
}

func (pl *Pipeline) knownCourses() *knownDays {
	out := &knownDays{map[string]map[unit.Day]bool{}, map[courseKey]bool{}, map[string]int{}}
	for k := range pl.courses.runs {
		c := k.course.course
		if out.days[c] == nil {
			out.days[c] = map[unit.Day]bool{}
		}
		out.days[c][k.day] = true
		out.distances[k.course] = true
	}
	for _, c := range pl.courses.known {
		out.listed[c.course] = c.weekday
	}
	return out
}

// weekdays counts the runs of a course by weekday.
func (d *knownDays) weekdays(course string) (n [7]int) {
	for day := range d.days[course] {
		n[day.Weekday()]++
	}
	return n
}

// usualWeekday is the weekday of a course, by courses.csv or of four runs in
// five; -1 where it has none.
func (d *knownDays) usualWeekday(course string) int {
	if usual, listed := d.listed[course]; listed && usual >= 0 {
		return usual
	}
	for w, n := range d.weekdays(course) {
		if n > 0 && 5*n >= 4*len(d.days[course]) {
			return w
		}
	}
	return -1
}

// span is from a first to a last day.
type span struct{ first, last unit.Day }

// fits says whether nothing else contradicts that a sheet is of a course: a run
// of it on the day, another weekday, or that it was not held at the time.
// between says that the course had runs shortly before and shortly after: the stretch of
// the sheets on which its name is shortened is taken as a whole.
func (d *knownDays) fits(p *parsedSheet, m courseMeant, stretch span) (fits, between bool) {
	usual := d.usualWeekday(m.course)
	between = true
	for day := range p.days(m.read) {
		if d.days[m.course][day] || usual >= 0 && day.Weekday() != time.Weekday(usual) {
			return false, false
		}
		if !abbreviates(m.read, m.course) {
			stretch = span{day, day}
		}
		before, after := false, false
		for i := unit.Day(1); i <= asleep; i++ {
			before = before || d.days[m.course][stretch.first-i]
			after = after || d.days[m.course][stretch.last+i]
		}
		if !before && !after {
			return false, false
		}
		between = between && before && after
	}
	return true, between
}

// open says whether a course has no run on the days of a sheet, and these fall
// on its weekday where it has one.
func (d *knownDays) open(p *parsedSheet, m courseMeant) bool {
	usual := d.usualWeekday(m.course)
	for day := range p.days(m.read) {
		if d.days[m.course][day] || usual >= 0 && int(day.Weekday()) != usual {
			return false
		}
	}
	return true
}
