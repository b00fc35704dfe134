package pipeline

import (
	"slices"
	"sort"
)

// unsureSheet is a sheet that waits for the name of its course, or for how its date
// is to be read.
type unsureSheet struct {
	name    string
	read    readResult
	report  int   // index in the load's report
	again   []int // the same for copies of the sheet in one load
	meant   []courseMeant
	answers string // how its date is to be read, where others say it
}

// unsureSheets are those of a load.
type unsureSheets []*unsureSheet

// add keeps a sheet of a load that waits for what others may say: unsure makes it
// one, or is nil where it does not.
func (l *unsureSheets) add(unsure func(name string, r readResult) *unsureSheet, name string, r readResult, report int) {
	for _, u := range *l {
		if r.hash == u.read.hash {
			u.again = append(u.again, report)
			return
		}
	}
	if u := unsure(name, r); u != nil {
		u.report = report
		*l = append(*l, u)
	}
}

// unsureOf is a sheet of which the course alone may be misspelt, nil where it
// does not wait for that.
func unsureOf(name string, r readResult) *unsureSheet {
	if r.err != nil || r.parsed == nil || len(r.parsed.misspelt) == 0 || r.parsed.unread() {
		return nil // a large sheet has no lines yet
	}
	u := &unsureSheet{name: name, read: r}
	for c, q := range r.parsed.misspelt {
		u.meant = append(u.meant, courseMeant{read: c, course: q})
	}
	sort.Slice(u.meant, func(i, j int) bool { return u.meant[i].read < u.meant[j].read })
	return u
}

// unread says whether lines are still to be read.
func (p *parsedSheet) unread() bool {
	return slices.ContainsFunc(p.parts, func(q *parsedPart) bool { return q.unread != nil })
}
