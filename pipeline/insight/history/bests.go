package history

// Personal best: an eligible time strictly below every earlier one of that
// runner at the distance, the opening balance included; equal is none, and a
// first result is none. Course best: the same on one course. Times are whole
// seconds, rounded up: 24:30.2 and 24:30.9 are both 24:31, equal.
//
// Eligible is a result that counts for times and was run, walked or guided;
// with a buggy, with a dog and on each kind of wheels there are bests of their
// own; guides, pacers, back markers and adults with a child are skipped.
//
// On one day results are taken in order of start where that is known for all
// of them that are compared; otherwise only the best of the day is compared,
// with earlier days, and the others are skipped. Best 25:00, then 24:50 and
// 24:40 on one day, starts unknown: one PB, 24:40, margin 20 s.
//
// PB streak: consecutive eligible results at the distance each a PB; equal or
// slower ends it, skipped results do not.

// best is what stands at one distance or on one course.
type best struct {
	timeS  int32 // 0 = none yet
	streak int32
	opened bool // an opening balance tells what was before the sheets
}

// compare takes a time and says what stood before, and whether it is a best.
func (b *best) compare(timeS int32) (before int32, is bool) {
	before = b.timeS
	is = before > 0 && timeS < before
	if is {
		b.streak++
	} else {
		b.streak = 0
	}
	if before == 0 || timeS < before {
		b.timeS = timeS
	}
	return before, is
}

func (b *best) openWith(timeS int32) {
	b.opened = true
	if b.timeS == 0 || timeS < b.timeS {
		b.timeS = timeS
	}
}

// distanceBest gives what stands at a distance.
func (w *worker) distanceBest(c class, metres int32) *best {
	for k := range w.distances {
		if d := &w.distances[k]; d.class == c && d.metres == metres {
			return &d.best
		}
	}
	w.distances = append(w.distances, atDistance{class: c, metres: metres})
	return &w.distances[len(w.distances)-1].best
}

type atDistance struct {
	class  class
	metres int32
	best   best
}

// courseBest gives what stands on a course.
func (w *worker) courseBest(c class, course int32) *best {
	b := &w.courses[int(course)*int(classes)+int(c)]
	if b.visit != w.visit {
		*b = onCourse{visit: w.visit}
	}
	return &b.best
}

// onCourse is valid where visit is the number of the runner in hand: so the
// table needs no clearing between runners.
type onCourse struct {
	visit int32
	best  best
}

// openBests takes in the opening bests from before the day in hand.
func (w *worker) openBests(i int) {
	for len(w.bests) > 0 && (w.bests[0].Day == 0 || w.bests[0].Day < w.in.Day[i]) {
		b := w.bests[0]
		w.bests = w.bests[1:]
		w.distanceBest(b.As.class(), b.DistanceM).openWith(b.TimeS)
		if b.Course != AnyCourse {
			w.courseBest(b.As.class(), b.Course).openWith(b.TimeS)
		}
	}
}

// dayBests compares the results i to j of one runner and day.
func (w *worker) dayBests(i, j int) {
	w.openBests(i)
	if j == i+1 {
		if w.eligible(i) {
			w.compareDistance(i)
			w.compareCourse(i)
		}
		return
	}
	byDistance := func(k, l int) bool { return w.in.DistanceM[k] == w.in.DistanceM[l] }
	byCourse := func(k, l int) bool { return w.in.Course[k] == w.in.Course[l] }
	w.daySet(i, j, byDistance, w.compareDistance)
	w.daySet(i, j, byCourse, w.compareCourse)
}

func (w *worker) eligible(i int) bool {
	return w.in.Flags[i]&CountsTime != 0 && w.in.TimeS[i] > 0 && w.in.Part[i].class() != noBests
}

// daySet splits the results of a day into those that are compared with each
// other, and compares each set.
func (w *worker) daySet(i, j int, same func(k, l int) bool, compare func(k int)) {
	together := func(k, l int) bool {
		return w.eligible(l) && w.in.Part[k].class() == w.in.Part[l].class() && same(k, l)
	}
	for k := i; k < j; k++ {
		if !w.eligible(k) {
			continue
		}
		first := true
		for l := i; l < k; l++ {
			first = first && !together(k, l)
		}
		if !first {
			continue
		}
		ordered, fastest, last := w.in.Start[k] > 0, k, k
		alone := true
		for l := k + 1; l < j; l++ {
			if !together(k, l) {
				continue
			}
			alone = false
			// Nobody starts twice at once: the same start order is no order.
			ordered = ordered && w.in.Start[l] > w.in.Start[last]
			last = l
			if w.in.TimeS[l] < w.in.TimeS[fastest] {
				fastest = l
			}
		}
		if !ordered && !alone {
			compare(fastest)
			continue
		}
		for l := k; l <= last; l++ {
			if l == k || together(k, l) {
				compare(l)
			}
		}
	}
}

func (w *worker) compareDistance(i int) {
	b := w.distanceBest(w.in.Part[i].class(), w.in.DistanceM[i])
	before, is := b.compare(w.in.TimeS[i])
	w.out.PreviousBestS[i] = before
	if !is {
		return
	}
	w.out.Mark[i] |= PB
	w.out.PBStreak[i] = b.streak
	if !b.opened && w.isNew != Yes {
		w.out.Mark[i] |= PBSinceSheets
	}
}

func (w *worker) compareCourse(i int) {
	course := w.in.Course[i]
	b := w.courseBest(w.in.Part[i].class(), course)
	before, is := b.compare(w.in.TimeS[i])
	w.out.PreviousCourseBestS[i] = before
	if !is {
		return
	}
	w.out.Mark[i] |= CourseBest
	if s := w.seen[course]; !b.opened && (s.visit != w.visit || s.firstHere != Yes) {
		w.out.Mark[i] |= CourseBestSinceSheets
	}
}
