package history

import (
	"math"

	"lapwing/pipeline/unit"
)

// Newcomer: the first counted finish anywhere. FirstHere: the first counted
// finish on this course. Visitor: first here, having finished elsewhere
// before. A later finish is always a plain no. A first one is a yes only
//
//   - where the sheet itself says so, and no earlier finish speaks against it, or
//   - where history is complete: for a newcomer on every course (but those
//     marked Elsewhere), for first here on this course; and no opening count
//     speaks against it.
//
// Otherwise it is not known: on the very first sheet of an archive 150 names
// are first seen, and how many of them are newcomers nobody can tell. A sheet
// known to be missing after CompleteFrom ends the complete stretch, since
// anybody may have been on it; a later CompleteFrom begins a new one.

// stretch holds the days on which somebody first seen can be told from
// somebody with a past, both ends included.
type stretch struct{ from, to unit.Day }

var never = stretch{from: math.MaxInt32, to: math.MinInt32}

func (s stretch) holds(d unit.Day) bool { return s.from <= d && d <= s.to }

// completeness gives the complete stretch of each course, and that of all
// together.
func completeness(courses []Course, runs []Run) (here []stretch, anywhere stretch) {
	begin := make([]unit.Day, len(courses)) // first run listed
	here = make([]stretch, len(courses))
	for i, c := range courses {
		begin[i] = math.MaxInt32
		here[i] = never
		if c.Complete {
			here[i] = stretch{c.CompleteFrom, math.MaxInt32}
		}
	}
	for _, r := range runs {
		begin[r.Course] = min(begin[r.Course], r.Day)
		if r.State == SheetMissing && r.Day >= here[r.Course].from {
			here[r.Course].to = min(here[r.Course].to, r.Day)
		}
	}
	anywhere = stretch{math.MinInt32, math.MaxInt32}
	asked := false
	for i, c := range courses {
		if c.Elsewhere || begin[i] == math.MaxInt32 {
			continue
		}
		asked = true
		// A course that is complete from its first listed run holds nobody
		// back: other courses' newcomers before that day could not have run here.
		if here[i].from > begin[i] {
			anywhere.from = max(anywhere.from, here[i].from)
		}
		anywhere.to = min(anywhere.to, here[i].to)
	}
	if !asked {
		anywhere = never
	}
	return here, anywhere
}

// opening sums up a runner's opening counts.
type opening struct {
	counts []Count
	total  int32 // finishes before asOf
	loose  int32 // of these, on courses not named
	asOf   unit.Day
}

func openingOf(counts []Count) opening {
	o := opening{counts: counts}
	var named, all int32
	for _, c := range counts {
		o.asOf = c.AsOf
		if c.Course == AnyCourse {
			all = max(all, c.Count)
		} else {
			named += c.Count
		}
	}
	o.total = max(all, named)
	o.loose = o.total - named
	return o
}

func (o *opening) at(course int32) int32 {
	var n int32
	for _, c := range o.counts {
		if c.Course == course {
			n += c.Count
		}
	}
	return n
}

// newcomer judges a runner's first counted finish in the sheets.
func (w *worker) newcomer(i int) Tri {
	switch day := w.in.Day[i]; {
	case w.open.total > 0 && day >= w.open.asOf:
		return No
	case w.open.total > 0 && w.open.total > w.loadedBefore:
		// Counted later than this day, and by more than the sheets hold: the
		// rest may lie before or after.
		return Unknown
	case w.in.Flags[i]&SaysNewcomer != 0, w.anywhere.holds(day):
		return Yes
	}
	return Unknown
}

// firstHere judges the first counted finish on a course in the sheets.
func (w *worker) firstHere(i int, newcomer Tri) Tri {
	course, day := w.in.Course[i], w.in.Day[i]
	known := w.open.total > 0
	if known && w.open.at(course) > 0 {
		if day >= w.open.asOf {
			return No
		}
		return Unknown
	}
	switch {
	case newcomer == Yes, w.in.Flags[i]&SaysFirstHere != 0:
		return Yes
	case !w.here[course].holds(day):
		return Unknown
	case known && w.open.loose > 0 && !w.in.Courses[course].Began:
		return Unknown
	}
	return Yes
}

func visitor(newcomer, firstHere Tri) Tri {
	switch {
	case firstHere == No, newcomer == Yes:
		return No
	case firstHere == Yes && newcomer == No:
		return Yes
	}
	return Unknown
}
