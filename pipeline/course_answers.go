package pipeline

import (
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/text"
)

// courseAnswer before a misread name makes the key of an answer that says which
// course is meant: "course alder-bnak=alder-bank". Where the people on the sheet
// said so, how many follows: "course alder-bnak=alder-bank 41/52"; and " others"
// where they stand on other sheets of that name, as this one names too few in full.
const courseAnswer = "course "

// courseMeant is what such an answer says.
type courseMeant struct {
	read, course string
	known, named int  // people known there, of those named; 0 where a person answered
	others       bool // these are the people of other sheets of the name
}

// silent says that too few are named in full on a sheet to say anything.
func (m courseMeant) silent() bool { return m.named < leastKnown }

func (m courseMeant) String() string {
	if m.named == 0 {
		return courseAnswer + m.read + "=" + m.course
	}
	who := ""
	if m.others {
		who = " others"
	}
	return fmt.Sprintf("%s%s=%s %d/%d%s", courseAnswer, m.read, m.course, m.known, m.named, who)
}

// coursesMeant picks the answers about courses, in order of what was read.
func coursesMeant(answers map[string]string) (out []courseMeant) {
	for k, v := range answers {
		read, ok := strings.CutPrefix(k, courseAnswer)
		if !ok {
			continue
		}
		course, people, _ := strings.Cut(v, " ")
		m := courseMeant{read: sheet.Slug(read), course: sheet.Slug(course)}
		people, who, _ := strings.Cut(people, " ")
		m.others = who == "others"
		known, named, _ := strings.Cut(people, "/")
		m.known, _ = strconv.Atoi(known)
		m.named, _ = strconv.Atoi(named)
		out = append(out, m)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].read < out[j].read })
	return out
}

// ofOneSheet are the keys of answers that hold for no other sheet.
var ofOneSheet = []string{noCourse, noDate, raceAnswer, saidAnswer, weekdayAnswer, yearAnswer, sheet.StartAnswer, sheet.FirstAnswer, sheet.ClockAnswer}

// answeredOfOne are those of them that a person has answered, or that stay once they are found.
var answeredOfOne = []string{noCourse, noDate, yearAnswer, sheet.StartAnswer, sheet.FirstAnswer, sheet.ClockAnswer}

// withoutCourses leaves out answers about courses, weekdays and years, which are of one
// sheet only.
func withoutCourses(answers string) string {
	var out []string
	for _, a := range strings.Split(answers, ";") {
		a = strings.TrimSpace(a)
		if key, _, _ := strings.Cut(a, "="); a != "" && !strings.HasPrefix(a, courseAnswer) && !slices.Contains(ofOneSheet, key) {
			out = append(out, a)
		}
	}
	return strings.Join(out, "; ")
}

// answersByHand leaves out what other sheets have answered of a reading: that is found
// anew. What they say of a missing course or date is kept.
func answersByHand(answers string) string {
	var out []string
	for _, a := range strings.Split(answers, ";") {
		a = strings.TrimSpace(a)
		key, _, _ := strings.Cut(a, "=")
		if slices.Contains(answeredOfOne, key) || withoutCourses(a) != "" && !strings.HasSuffix(key, record.AsBefore) {
			out = append(out, a)
		}
	}
	return strings.Join(out, "; ")
}

// onlyCourses is the rest.
func onlyCourses(answers string) string {
	parsed, err := ParseAnswers(answers)
	if err != nil {
		return ""
	}
	var out []string
	for _, m := range coursesMeant(parsed) {
		out = append(out, m.String())
	}
	return strings.Join(out, "; ")
}

func joinAnswers(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

// withMeant adds the misread names to those of the courses that are meant.
func withMeant(courses []sheet.CourseName, meant []courseMeant) []sheet.CourseName {
	for _, m := range meant {
		i := slices.IndexFunc(courses, func(c sheet.CourseName) bool { return c.Course == m.course })
		if i < 0 {
			i = len(courses)
			courses = append(courses, sheet.CourseName{Course: m.course, Weekday: -1})
		}
		courses[i].Names = append(slices.Clip(courses[i].Names), m.read)
	}
	return courses
}

// noteMeant says on a sheet which course a misspelt title was read as.
func noteMeant(s *sheet.Sheet, meant []courseMeant) {
	for _, m := range meant {
		for _, p := range s.Parts {
			if p.Course.Value != m.course || strings.HasPrefix(p.Course.From, "column") {
				continue
			}
			why := fmt.Sprintf("It was read as %s, as a person answered.", m.course)
			if m.named > 0 {
				where := "on this sheet"
				if m.others {
					where = "on other sheets with this title"
				}
				why = fmt.Sprintf("It was read as %s: %d of the %d people named in full %s are on sheets of that course too.", m.course, m.known, m.named, where)
			}
			switch {
			case sameLetters(m.course, m.read):
				why = fmt.Sprintf("It was read as %s, the same name but for its spaces or how its vowels are written.", m.course)
			case standsIn(m.course, m.read):
				why = fmt.Sprintf("It was read as %s, a known course whose name stands in it.", m.course)
			}
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab}, Severity: place.Note, Kind: courseMisspelt,
				Read: p.Course.Text, Expected: m.course,
				Do: why + fmt.Sprintf(" If that is wrong: lapwing sheets withdraw %s, then load it with --course.", text.Typed(s.Name))})
			break
		}
	}
}

const courseMisspelt = "course-misspelt"

// settledByOthers says in words that the course of a sheet was settled by its people,
// or how its date is read by other sheets; "" where neither was needed.
func settledByOthers(problems []place.Problem) string {
	var said []string
	for _, q := range problems {
		switch q.Kind {
		case courseMisspelt:
			said = append(said, fmt.Sprintf("the title says %q. %s", q.Read, q.Do))
		case raceRemembered:
			said = append(said, fmt.Sprintf("it was taken for another race of the day, %s. %s", q.Read, q.Do))
		case saidRemembered:
			said = append(said, fmt.Sprintf("it was taken for %s. %s", q.Read, q.Do))
		case bySeries:
			said = append(said, fmt.Sprintf("it says %s. %s", q.Read, q.Do))
		case dateOrderSettled:
			said = append(said, fmt.Sprintf("the date was read %s. %s", q.Read, q.Do))
		}
	}
	return strings.Join(said, " ")
}
