package reports

import (
	"fmt"
	"slices"
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
	Public   string   // in words for everybody
	Desk     string   // in words for the results desk
}

// after says whether the event came after an issue was written.
func (e Event) after(m Mark) bool {
	if e.Decision > 0 {
		return e.Decision > m.Decision
	}
	return e.Ledger > m.Ledger
}

func (e Event) isAbout(r Run) bool {
	return slices.ContainsFunc(e.Runs, func(x Run) bool {
		return x.Course == r.Course && x.On == r.On && (x.Session == "" || x.Session == r.Session)
	})
}

// changes are what a new issue says of itself, for everybody and for the
// results desk, a line each.
type changes struct{ public, desk []string }

// because gives one reason to everybody.
func because(why string) changes {
	return changes{[]string{"Why: " + why + "."}, []string{"Why: " + why + "."}}
}

// unexplained is said where nothing is known of what led to a new issue.
const unexplained = "worked out again from the archive"

// mostCauses is how many causes an issue lists one by one.
const mostCauses = 10

// why says what has happened since the issue before: the sheets of this run
// that came, went or came back, and the decisions about it; then decisions
// about people who are in it that were made elsewhere. Where there was none of
// these, it says what else can have moved a figure. What was decided and taken
// back in between is left out.
func (d *weekly) why(since Mark) changes {
	if d.o.Why != "" {
		return because(d.o.Why)
	}
	if !since.Known {
		return because(unexplained)
	}
	undone := map[int]bool{}
	for _, e := range d.o.Events {
		if e.after(since) && e.Undoes > since.Decision {
			undone[e.Decision], undone[e.Undoes] = true, true
		}
	}
	here := map[string]bool{}
	for i := range d.results {
		if r := &d.results[i]; r.runner != "" {
			here[r.runner] = true
		}
	}
	var of, people []Event
	others := 0
	for _, e := range d.o.Events {
		switch {
		case !e.after(since) || e.Decision > 0 && undone[e.Decision]:
		case e.isAbout(Run{d.course, d.on, d.session}), e.Decision > 0 && len(e.Runs)+len(e.Runners) == 0:
			of = append(of, e)
		case slices.ContainsFunc(e.Runners, func(r string) bool { return here[r] }):
			people = append(people, e)
		case e.Ledger > 0:
			others++
		}
	}
	var out changes
	for k, e := range of {
		if k == mostCauses {
			more := fmt.Sprintf("Why: and %s more.", count(len(of)-k, "sheet or decision", "sheets and decisions"))
			out.public, out.desk = append(out.public, more), append(out.desk, more)
			break
		}
		out.public, out.desk = append(out.public, "Why: "+e.Public+"."), append(out.desk, "Why: "+e.Desk+".")
	}
	if len(people) > 0 {
		out.public = append(out.public, fmt.Sprintf("Why: %s about people of this run.", count(len(people), "decision", "decisions")))
	}
	for k, e := range people {
		if k == mostCauses {
			out.desk = append(out.desk, fmt.Sprintf("Why: and %s more about people of this run.", count(len(people)-k, "decision", "decisions")))
			break
		}
		out.desk = append(out.desk, "Why: of somebody who is in this run, "+e.Desk+".")
	}
	switch {
	case len(of)+len(people) > 0:
		return out
	case others > 0:
		return because("sheets of other runs came or went (" + fmt.Sprint(others) + "), which changed what is known of the people here")
	}
	return because("no sheet and no decision of this run has changed; settings, a list in the archive folder or the program has")
}
