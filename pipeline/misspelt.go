package pipeline

import (
	"context"
	"slices"

	"lapwing/pipeline/unit"
)

// A title that is a slip away from a known course is read as that course where
// the people say so: at least leastKnown of them, and half of all who are named
// in full, are on other sheets of it; and of those who are known at only one of
// it and any third course, there are at least leastKnown and foldKnown times as
// many known at it. Where the course has no run on both sides of the day, it
// takes three quarters, and a letter that makes no other word: a new course may
// lie beside an old one and share its regulars, and the old one's sheet of the
// day may be still to come. (Those known at both, or at neither, tell nothing, as
// with McNemar 1947, Psychometrika 12:153-157.) The numbers were chosen on made-up
// districts (TestMisspeltAmongSiblings).
const (
	leastKnown = 5
	foldKnown  = 3
	// A course that had no run for so many days before and after is not known to
	// have been held then.
	asleep = 35
)

// settleMisspelt looks which of the sheets that wait for the name of their
// course are settled by their people, and returns these. All other sheets of
// the load are in the database by now, so the order of the files makes no
// difference.
func (pl *Pipeline) settleMisspelt(ctx context.Context, sheets []*unsureSheet) ([]*unsureSheet, error) {
	if pl.DB == nil {
		return nil, nil
	}
	known := pl.knownCourses()
	times := map[string]int{} // sheets on which a misspelt name is
	stretch := map[string]span{}
	for _, s := range sheets {
		for _, m := range s.meant {
			times[m.read]++
			for day := range s.read.parsed.days(m.read) {
				all, have := stretch[m.read]
				if !have {
					all = span{day, day}
				}
				stretch[m.read] = span{min(all.first, day), max(all.last, day)}
			}
		}
	}
	refused := map[string]bool{} // misread names
	wanted := map[string]int32{} // people by key
	var asked []*unsureSheet
	for _, s := range sheets {
		ok := true
		for _, m := range s.meant {
			if standsIn(m.course, m.read) {
				ok = ok && len(known.days[m.read]) == 0
			} else {
				ok = ok && known.mayMean(m.read, m.course, times[m.read])
			}
		}
		if !ok {
			for _, m := range s.meant {
				refused[m.read] = true
			}
			continue
		}
		asked = append(asked, s)
		for key := range s.read.parsed.people("") {
			if _, have := wanted[key]; !have {
				wanted[key] = int32(len(wanted))
			}
		}
	}
	if len(asked) == 0 {
		return nil, nil
	}
	at := map[string]map[int32]bool{}
	if len(wanted) > 0 {
		var err error
		if at, err = pl.whereKnown(ctx, wanted); err != nil {
			return nil, err
		}
	}
	type courseDay struct {
		course string
		day    unit.Day
	}
	claimed := map[courseDay]int{}
	vouched := map[string]courseMeant{} // by misread name: those who say so, of all sheets
	var silent []*courseMeant
	for _, s := range asked {
		for i := range s.meant {
			m := &s.meant[i]
			fits, between := known.fits(s.read.parsed, *m, stretch[m.read])
			if sameLetters(m.course, m.read) {
				m.ask(s.read.parsed, wanted, at, between) // for the numbers
				continue
			}
			if standsIn(m.course, m.read) {
				m.ask(s.read.parsed, wanted, at, between) // for the numbers
				few := times[m.read] <= newRuns && len(s.read.parsed.days(m.read)) <= newRuns
				if !known.open(s.read.parsed, *m) || m.elsewhere(s.read.parsed, wanted, at) || !few && (m.known < leastKnown || 4*m.known < m.named) {
					refused[m.read] = true
				}
			} else if short := shortened(m.read, m.course); !fits || !between && (short || mayBeWord(m.course, m.read)) {
				refused[m.read] = true
			} else if m.ask(s.read.parsed, wanted, at, between && !short) {
				all := vouched[m.read]
				vouched[m.read] = courseMeant{known: all.known + m.known, named: all.named + m.named}
			} else if m.silent() && !m.elsewhere(s.read.parsed, wanted, at) {
				silent = append(silent, m)
			} else {
				refused[m.read] = true
			}
			for day := range s.read.parsed.days(m.read) {
				claimed[courseDay{m.course, day}]++
			}
		}
	}
	for _, m := range silent {
		all, ok := vouched[m.read]
		if !ok {
			refused[m.read] = true
		}
		m.known, m.named, m.others = all.known, all.named, true
	}
	for _, s := range asked { // two sheets of one run
		for _, m := range s.meant {
			if sameLetters(m.course, m.read) {
				continue
			}
			for day := range s.read.parsed.days(m.read) {
				if claimed[courseDay{m.course, day}] > 1 {
					refused[m.read] = true
				}
			}
		}
	}
	// one name is one course: all sheets of it or none
	return slices.DeleteFunc(asked, func(s *unsureSheet) bool {
		return slices.ContainsFunc(s.meant, func(m courseMeant) bool { return refused[m.read] })
	}), nil
}
