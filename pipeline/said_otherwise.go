package pipeline

import (
	"fmt"
	"strings"
	"time"

	"lapwing/pipeline/text"
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
	for _, q := range p.parts {
		for _, k := range q.runs {
			usual, n := -1, 0
			for r := range pl.courses.runs {
				if r.course.course != k.course.course || r.day == k.day {
					continue
				}
				if n++; n == 1 {
					usual = int(r.day.Weekday())
				} else if usual != int(r.day.Weekday()) {
					usual = -1
				}
			}
			if n >= usualDays && usual >= 0 && usual != int(k.day.Weekday()) {
				return fmt.Sprintf("%s is a %s; all %d other runs of %s are on a %s. If the date is a slip: lapwing sheets withdraw %s, then load it with --date",
					k.day.Long(), k.day.Weekday(), n, k.course.course, time.Weekday(usual), text.Typed(p.sheet.Name))
			}
		}
	}
	return ""
}
