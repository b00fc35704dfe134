package pipeline

import (
	"fmt"
	"strings"
	"time"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// mostChecked is how many sheets of a load are read a second time to see whether they
// themselves say another course or day than a person says of them.
const mostChecked = 20

// saidOtherwise says that a sheet itself names another course or another day than a person
// says of it: a slip of the hand would put a run under the wrong one, or in the place of
// another. "" where it says the same, or nothing.
func (pl *Pipeline) saidOtherwise(p *parsedSheet, name string, data []byte, hand ByHand) string {
	if hand.Course == "" && hand.Date == "" || p.waits() || len(data) == 0 || len(data) > batchBytes {
		return ""
	}
	said := p.runNames()
	without := hand
	without.Course, without.Date = "", ""
	own, err := pl.openOrParse(name, data, without)
	if err != nil || own.waits() || len(said) != 1 {
		return ""
	}
	runs := own.runNames()
	if len(runs) != 1 || runs[0] == said[0] {
		return ""
	}
	course, day, _ := strings.Cut(said[0], " ")
	ownCourse, ownDay, _ := strings.Cut(runs[0], " ")
	if day == ownDay && (strings.Contains(course, ownCourse) || strings.Contains(ownCourse, course)) {
		return ""
	}
	return fmt.Sprintf("it is taken for %s, as you say; the sheet itself says %s. If the sheet is right: lapwing sheets withdraw %s, then load it without --course and --date",
		said[0], runs[0], text.Typed(p.sheet.Name))
}

// usualDays is how many runs of a course, all on one weekday, make another day worth a word.
const usualDays = 4

// otherWeekday says that a run is on another weekday than all earlier ones of its course: a
// date is easily a slip, though a holiday may be the reason. "" where there is nothing to say.
func (pl *Pipeline) otherWeekday(p *parsedSheet) string {
	type courseDay struct {
		course string
		day    unit.Day
	}
	runs, onDay := map[string]*[7]int{}, map[courseDay]int{} // of each course by weekday, and on each of its days
	for _, q := range p.parts {
		for _, k := range q.runs {
			runs[k.course.course] = new([7]int)
		}
	}
	for r := range pl.courses.runs {
		if of := runs[r.course.course]; of != nil {
			of[r.day.Weekday()]++
			onDay[courseDay{r.course.course, r.day}]++
		}
	}
	for _, q := range p.parts {
		for _, k := range q.runs {
			others := *runs[k.course.course] // the runs on other days
			others[k.day.Weekday()] -= onDay[courseDay{k.course.course, k.day}]
			n, usual := 0, -1
			for day, of := range others {
				if n += of; of > 0 {
					usual = day
				}
			}
			if n >= usualDays && others[usual] == n && usual != int(k.day.Weekday()) {
				return fmt.Sprintf("%s is a %s; all %d other runs of %s are on a %s. If the date is a slip: lapwing sheets withdraw %s, then load it with --date",
					k.day.Long(), k.day.Weekday(), n, k.course.course, time.Weekday(usual), text.Typed(p.sheet.Name))
			}
		}
	}
	return ""
}
