package scenario

import (
	"cmp"
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/unit"
)

// sideTables are the plain tables that a club keeps beside its sheets: what
// the courses are, where history begins, who helped and who is whose member.
func (d *district) sideTables() map[string]string {
	return map[string]string{
		"courses.csv":    table(courseHeading, d.courseTable()),
		"history.csv":    table("fact,course,name,sex,age_group,distance_m,finishes,time,date", d.historyTable()),
		"volunteers.csv": table("name,role,course,date", d.volunteerTable()),
		"members.csv":    table("person,club,claim,from,to,birth_date", d.memberTable()),
	}
}

const courseHeading = "course,name,distance_m,weekday,valid_from,valid_to,measured"

// CourseTable is a courses.csv of the true courses: their names, distances and
// weekdays, and nothing of their speed.
func (t *Truth) CourseTable() string {
	var rows [][]string
	for _, c := range t.Courses {
		rows = append(rows, []string{c.Slug, c.Name, metres(c.DistanceM), c.Weekday.String(), "", "", "yes"})
	}
	return table(courseHeading, rows)
}

func table(heading string, rows [][]string) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	if err := w.WriteAll(append([][]string{strings.Split(heading, ",")}, rows...)); err != nil {
		panic(err) // a strings.Builder does not fail
	}
	return b.String()
}

func metres(m float64) string { return strconv.FormatFloat(m, 'f', -1, 64) }

func (d *district) courseTable() (rows [][]string) {
	for i, c := range d.courses {
		from := "2019-05-04"
		if c.opened > 0 || i == emberQuay {
			from = d.date(i, c.opened).String()
		}
		measured := "yes"
		if i == garrowstone { // nobody has wheeled the fell
			measured = "no"
		}
		rows = append(rows, []string{c.Slug, c.Name, metres(c.DistanceM), c.Weekday.String(), from, "", measured})
	}
	return rows
}

// historyTable holds four kinds of fact. "complete from": every sheet of the
// course since that date is here, and everybody who had finished there before
// has a line "finishes before"; "began": the course's first run ever was on
// that date; "finishes before": how many finishes somebody had on a course
// before the date; "best before": their best time there, with its date;
// "record": the record of a sex and age group before the sheets begin.
func (d *district) historyTable() (rows [][]string) {
	type best struct{ who, at, seconds int }
	for i, c := range d.courses {
		fact, week := "complete from", c.opened
		switch i {
		case sallowby, emberQuay:
			fact = "began"
		case pikestow: // its earlier sheets hold gaps
			week = 16
		}
		rows = append(rows, []string{fact, c.Slug, "", "", "", "", "", "", d.date(i, week).String()})
	}
	records := map[[2]string]best{} // by course and group
	date := func(i int) string { return (demoFrom - unit.Day(20+i*37%700)).String() }
	for i := range d.people {
		p := &d.people[i]
		at := p.Home
		if at == emberQuay { // did not exist: they ran in town before
			at = osierholm
		}
		if p.earlier == 0 || at == sallowby || !d.named(i) {
			continue
		}
		c := &d.courses[at]
		name := givenFirst(p.Given, p.Surname)
		seconds := int(math.Ceil(math.Exp(p.skill + c.Effect + distanceTerm(c.DistanceM) - .010*math.Log1p(float64(p.earlier)))))
		rows = append(rows,
			[]string{"finishes before", c.Slug, name, p.Sex, "", "", strconv.Itoa(p.earlier), "", demoFrom.String()})
		if p.as == "" && p.earlier >= 3 {
			rows = append(rows,
				[]string{"best before", c.Slug, name, p.Sex, "", metres(c.DistanceM), "", unit.Clock(int32(seconds)), date(i)})
			if p.Sex != "M" && p.Sex != "W" {
				continue
			}
			group := standardGroup(d.ageOn(i, demoFrom), p.Sex[0])
			key := [2]string{c.Slug, p.Sex + " " + group}
			if r, ok := records[key]; !ok || seconds < r.seconds {
				records[key] = best{i, at, seconds}
			}
		}
	}
	for key, r := range records {
		p := &d.people[r.who]
		sex, group, _ := strings.Cut(key[1], " ")
		rows = append(rows, []string{"record", key[0], givenFirst(p.Given, p.Surname), sex, group,
			metres(d.courses[r.at].DistanceM), "", unit.Clock(int32(r.seconds)), date(r.who)})
	}
	slices.SortFunc(rows, func(a, b []string) int { return slices.Compare(a, b) })
	return rows
}

var roles = []string{"timekeeper", "finish funnel", "results desk", "marshal", "marshal", "back marker"}

// volunteerTable names helpers for every run, from regulars of the course who
// did not run that day.
func (d *district) volunteerTable() (rows [][]string) {
	ran := map[unit.Day]map[int]bool{}
	for _, l := range d.truth.Lines {
		day := d.truth.Runs[l.Run].Date
		if ran[day] == nil {
			ran[day] = map[int]bool{}
		}
		ran[day][l.Person] = true
	}
	regulars := make([][]int, len(d.courses))
	for i := range d.people {
		if p := &d.people[i]; d.ageOn(i, demoFrom) >= 18 && p.end == d.weeks && p.often > .3 && d.named(i) {
			regulars[p.Home] = append(regulars[p.Home], i)
		}
	}
	for _, run := range d.truth.Runs {
		free := slices.Clone(regulars[run.Course])
		free = slices.DeleteFunc(free, func(i int) bool { return ran[run.Date][i] })
		d.r.Shuffle(len(free), func(i, j int) { free[i], free[j] = free[j], free[i] })
		for k, i := range free[:min(len(free), len(roles))] {
			p := &d.people[i]
			if ran[run.Date] == nil {
				ran[run.Date] = map[int]bool{}
			}
			ran[run.Date][i] = true // nobody helps at two courses on one day
			rows = append(rows, []string{givenFirst(p.Given, p.Surname), roles[k], d.courses[run.Course].Slug, run.Date.String()})
		}
	}
	slices.SortStableFunc(rows, func(a, b []string) int { return cmp.Or(cmp.Compare(a[3], b[3]), cmp.Compare(a[2], b[2])) })
	return rows
}

// memberTable lists first-claim members, a few second-claim ones, some who
// joined during the season and one who left.
func (d *district) memberTable() (rows [][]string) {
	left := false
	for i := range d.people {
		p := &d.people[i]
		if p.Club == "" || !d.named(i) {
			continue
		}
		from, to, born := "2021-04-01", "", p.Born.String()
		if i%9 == 4 {
			from = "2025-11-01"
		}
		if !left && p.end < d.weeks-4 && i > 20 {
			to, left = d.date(p.Home, p.end).String(), true
		}
		if i%5 < 2 {
			born = ""
		}
		name := givenFirst(p.Given, p.Surname)
		rows = append(rows, []string{name, p.Club, "first", from, to, born})
		if i%17 == 3 {
			rows = append(rows, []string{name, "Garrowstone Fell Runners", "second", "2023-04-01", "", ""})
		}
	}
	slices.SortStableFunc(rows, func(a, b []string) int {
		return cmp.Or(cmp.Compare(a[1], b[1]), cmp.Compare(a[2], b[2]), cmp.Compare(a[0], b[0]), cmp.Compare(a[3], b[3]))
	})
	return rows
}
