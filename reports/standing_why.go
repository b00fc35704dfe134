package reports

import "slices"

// why says what has happened since the issue before of a file about the runner:
// decisions about them and about their lines, and sheets of runs that they are
// in. Those about runs say which; everybody else's are only counted. The desk's
// words, with who decided, are for the workbook, the others for the page.
func (c *Card) why(since Mark) (changes, error) {
	if c, ok := c.o.givenWhy(since); ok {
		return c, nil
	}
	events, err := c.o.happened(since)
	if err != nil {
		return changes{}, err
	}
	ran := func(e Event) bool {
		return slices.ContainsFunc(c.results, func(r ownRow) bool {
			return slices.ContainsFunc(e.Runs, func(x Run) bool { return x.Course == r.course && x.On == r.day })
		})
	}
	of := causesSince(events, since,
		func(e Event) bool {
			if len(e.Runners) > 0 {
				return slices.Contains(e.Runners, c.id)
			}
			return e.general() || ran(e)
		},
		func(Event) bool { return false })
	var out changes
	// A sheet may hold the runs of many weeks; only the runner's own matter here.
	own := func(e Event) Event {
		if runs := slices.DeleteFunc(slices.Clone(e.Runs), func(x Run) bool { return !ran(Event{Runs: []Run{x}}) }); len(runs) > 0 {
			e.Runs = runs
		}
		return e
	}
	out.tell(of.own,
		func(e Event) string {
			if c.protected { // whose single runs are not published
				e.Runs = nil
				if e.Ledger == 0 {
					return "a decision about these results"
				}
			}
			return own(e).named(e.public("a sheet"), c.courseName)
		},
		func(e Event) string { return own(e).named(e.Desk, c.courseName) })
	if len(of.own) > 0 {
		return out, nil
	}
	return elsewhere(of.others, "other runs", "other people",
		"no sheet and no decision of these runs has changed; settings, a list in the archive folder, the estimates of the course-speed model or the program has"), nil
}
