package reports

import (
	"slices"
)

// why says what has happened since the issue before: sheets and decisions about
// runs of the season, a line each, in a club's workbook those about runs where a
// member stands; then how many decisions there were about people who are in it.
// The workbook is for everybody, so nobody is named.
func (d *season) why(since Mark) (changes, error) {
	if c, ok := d.o.givenWhy(since); ok {
		return c, nil
	}
	events, err := d.o.happened(since)
	if err != nil {
		return changes{}, err
	}
	here, days := map[string]bool{}, map[courseDay]bool{}
	for i := range d.results {
		r := &d.results[i]
		here[runnerID(r.runner)] = true
		days[courseDay{d.runs[r.run].course, d.runs[r.run].day}] = true
	}
	of := causesSince(events, since,
		func(e Event) bool {
			return e.general() || slices.ContainsFunc(e.Runs, func(r Run) bool {
				return r.On >= d.s.From && r.On <= d.s.To && (d.s.Course == "" || r.Course == d.s.Course) &&
					(d.s.Club == "" || days[courseDay{r.Course, r.On}])
			})
		},
		func(e Event) bool {
			return slices.ContainsFunc(e.Runners, func(r string) bool { return here[r] })
		})
	said := func(e Event) string { return e.named(e.public("a sheet"), d.courseName) }
	var out changes
	out.tell(of.own, said, said)
	out.tellPeople(of.people, "this season", "of somebody who is in it")
	if len(of.own)+len(of.people) > 0 {
		return out, nil
	}
	return elsewhere(of.others, "other runs", "other people",
		"no sheet and no decision of this season has changed; settings, a list in the archive folder, the estimates of the course-speed model or the program has"), nil
}
