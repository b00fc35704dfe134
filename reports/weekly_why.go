package reports

import "slices"

// why says what has happened since the issue before: the sheets of this run
// that came, went or came back, and the decisions about it; then decisions
// about people who are in it that were made elsewhere. Where there was none of
// these, it says what else can have moved a figure.
func (d *weekly) why(since Mark) (changes, error) {
	if c, ok := d.o.givenWhy(since); ok {
		return c, nil
	}
	events, err := d.o.happened(since)
	if err != nil {
		return changes{}, err
	}
	here := map[string]bool{}
	for i := range d.results {
		if r := &d.results[i]; r.runner != "" {
			here[r.runner] = true
		}
	}
	of := causesSince(events, since,
		func(e Event) bool { return e.general() || e.isAbout(Run{d.course, d.on, d.session}) },
		func(e Event) bool {
			return slices.ContainsFunc(e.Runners, func(r string) bool { return here[r] })
		})
	var out changes
	out.tell(of.own, func(e Event) string { return e.public("a sheet of this run") }, func(e Event) string { return e.Desk })
	out.tellPeople(of.people, "this run", "of somebody who is in this run")
	if len(of.own)+len(of.people) > 0 {
		return out, nil
	}
	nothing := "no sheet and no decision of this run has changed; settings, a list in the archive folder or the program has"
	if !d.provisional() {
		nothing = "no sheet and no decision of this run has changed; the days for corrections are over, or settings, a list in the archive folder or the program has changed"
	}
	return elsewhere(of.others, "other runs", "people who are not in this run", nothing), nil
}
