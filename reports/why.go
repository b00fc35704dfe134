package reports

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/text"
)

// Mark is how far the archive had got when an issue was written: the id of its
// last decision and the number of lines of its ledger of sheets. Known is false
// for issues of which nobody has noted it.
type Mark struct {
	Decision, Ledger int
	Known            bool
}

// Event is something done to the archive that can change a report: a decision,
// or a sheet that came, went or came back.
type Event struct {
	Decision int      // its id, 0: a sheet
	Undoes   int      // id of the decision that it takes back, 0: none
	Ledger   int      // line of the ledger, 0: a decision
	Runs     []Run    // that it is about; a Session "" stands for any of the day
	Runners  []string // ids of whom it is about
	Public   string   // in words for everybody; of a sheet, only what was done with it
	Desk     string   // in words for the results desk
}

// after says whether the event came after an issue was written.
func (e Event) after(m Mark) bool {
	if e.Decision > 0 {
		return e.Decision > m.Decision
	}
	return e.Ledger > m.Ledger
}

// general says whether the event is a decision about no run and no runner in
// particular: about clubs, for one.
func (e Event) general() bool { return e.Decision > 0 && len(e.Runs)+len(e.Runners) == 0 }

func (e Event) isAbout(r Run) bool {
	return slices.ContainsFunc(e.Runs, func(x Run) bool {
		return x.Course == r.Course && x.On == r.On && (x.Session == "" || x.Session == r.Session)
	})
}

// changes are what a new issue says of itself, for everybody and for the
// results desk, a line each.
type changes struct{ public, desk []string }

// say adds a reason to both.
func (c *changes) say(public, desk string) {
	c.public, c.desk = append(c.public, "Why: "+public+"."), append(c.desk, "Why: "+desk+".")
}

// because gives one reason to everybody.
func because(why string) changes {
	var c changes
	c.say(why, why)
	return c
}

// unexplained is said where nothing is known of what led to a new issue.
const unexplained = "worked out again from the archive"

// mostCauses is how many causes of a kind an issue lists one by one.
const mostCauses = 10

// causes are what has happened since an issue of a report, by what it has to do
// with the report.
type causes struct {
	own    []Event // about what the report is of
	people []Event // about somebody who is in it
	others []Event // anything else
}

// causesSince sorts the events after a mark by what two questions say, own
// first. What was decided and taken back in between is left out.
func causesSince(events []Event, since Mark, own, person func(Event) bool) causes {
	undone := map[int]bool{}
	for _, e := range events {
		if e.after(since) && e.Undoes > since.Decision {
			undone[e.Decision], undone[e.Undoes] = true, true
		}
	}
	var c causes
	for _, e := range events {
		switch {
		case !e.after(since) || e.Decision > 0 && undone[e.Decision]:
		case own(e):
			c.own = append(c.own, e)
		case person(e):
			c.people = append(c.people, e)
		default:
			c.others = append(c.others, e)
		}
	}
	return c
}

// tell lists events one by one, each said by two functions, up to mostCauses.
func (c *changes) tell(events []Event, public, desk func(Event) string) {
	for k, e := range events {
		if k == mostCauses {
			more := "and " + text.CountOf(len(events)-k, "more sheet or decision", "more sheets and decisions")
			c.say(more, more)
			return
		}
		c.say(public(e), desk(e))
	}
}

// tellPeople lists decisions about people: for everybody only how many, for a
// name that was settled is nobody else's business.
func (c *changes) tellPeople(events []Event, of, whose string) {
	if len(events) == 0 {
		return
	}
	c.public = append(c.public, fmt.Sprintf("Why: %s about people of %s.", text.CountOf(len(events), "decision", "decisions"), of))
	for k, e := range events {
		if k == mostCauses {
			c.desk = append(c.desk, fmt.Sprintf("Why: and %s about people of %s.", text.CountOf(len(events)-k, "more decision", "more decisions"), of))
			return
		}
		c.desk = append(c.desk, "Why: "+whose+", "+e.Desk+".")
	}
}

// elsewhere says what else than a report's own causes can have moved a figure.
func elsewhere(others []Event, sheetsOf, decisionsOf, nothing string) changes {
	sheets, decisions := 0, 0
	for _, e := range others {
		if e.Ledger > 0 {
			sheets++
		} else {
			decisions++
		}
	}
	var what []string
	if sheets > 0 {
		what = append(what, text.CountOf(sheets, "sheet", "sheets")+" of "+sheetsOf+" came or went")
	}
	if decisions > 0 {
		what = append(what, text.CountOf(decisions, "decision was made", "decisions were made")+" about "+decisionsOf)
	}
	if len(what) == 0 {
		return because(nothing)
	}
	return because(strings.Join(what, ", and ") + "; that changes what the figures here are compared with")
}

// happened gives the events since the mark of the issue before.
func (o Options) happened(since Mark) ([]Event, error) {
	if !since.Known || o.EventsSince == nil {
		return nil, nil
	}
	return o.EventsSince(since)
}

// givenWhy is what is known of the cause without looking: what the caller says,
// or that nobody has noted how far the archive had got.
func (o Options) givenWhy(since Mark) (changes, bool) {
	switch {
	case o.Why != "":
		return because(o.Why), true
	case !since.Known:
		return because(unexplained), true
	}
	return changes{}, false
}

// public is the event in words for everybody, a sheet called as given.
func (e Event) public(sheet string) string {
	if e.Ledger > 0 {
		return sheet + " " + e.Public
	}
	return e.Public
}

// named puts the runs that an event is about before what it says: the course
// and day of one, how many of several.
func (e Event) named(said string, courseName func(string) string) string {
	switch len(e.Runs) {
	case 0:
		return said
	case 1:
		return courseName(e.Runs[0].Course) + ", " + e.Runs[0].On.Long() + ": " + said
	}
	first, last, courses := e.Runs[0].On, e.Runs[0].On, map[string]bool{}
	for _, r := range e.Runs {
		first, last = min(first, r.On), max(last, r.On)
		courses[r.Course] = true
	}
	s := text.CountOf(len(e.Runs), "run", "runs")
	if len(courses) == 1 {
		s = courseName(e.Runs[0].Course) + ", " + s
	}
	if first == last {
		return s + " on " + first.Long() + ": " + said
	}
	return s + " from " + first.Long() + " to " + last.Long() + ": " + said
}
