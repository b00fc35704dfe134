package history

// Attendance streak: the number of ISO weeks with a counted finish, without a
// missed week in between. A week without a finish is missed when a usual
// course of that runner was held and its sheet is loaded; it is neutral,
// neither adding nor ending, when
//
//   - no usual course was held (cancelled, or no run that week), or
//   - a usual course's sheet is missing: they may have been on it, or
//   - the person volunteered that week, on any course.
//
// Usual courses of a week are those where the runner finished UsualTimes in
// the UsualWeeks weeks before it; where there are none, the course of the last
// finish. Two finishes in one ISO week are one. Opening balances carry no
// streak: it starts with the sheets.
//
// Example: Sat 20 Dec ran, 27 Dec cancelled, Thu 1 and Sat 3 Jan 2026 ran
// (both 2026-W01), 10 Jan volunteered, 17 Jan ran: 3.

// attend takes the counted finish i of the runner whose results begin at
// w.begin, and gives the streak with it.
func (w *worker) attend(i int) int32 {
	week := w.in.Day[i].Week()
	if w.lastFinish >= 0 && week == w.lastWeek {
		return w.streak
	}
	goesOn := w.lastFinish >= 0
	for gap := w.lastWeek + 1; goesOn && gap < week; gap++ {
		goesOn = !w.missed(gap, i)
	}
	if !goesOn {
		w.streak, w.streakSince = 0, w.in.Day[i]
	}
	w.streak++
	w.lastWeek = week
	return w.streak
}

// missed says whether the runner missed a week before their result i, in which
// they did not finish.
func (w *worker) missed(week, i int) bool {
	for _, v := range w.volunteered {
		if v.Day.Week() == week {
			return false
		}
	}
	w.recent = w.recent[:0]
	usual := false
	for k := i - 1; k >= w.begin; k-- {
		if w.in.Flags[k]&CountsRun == 0 {
			continue
		}
		if w.in.Day[k].Week() < week-w.rules.UsualWeeks {
			break
		}
		usual = w.tally(w.in.Course[k]) || usual
	}
	if !usual {
		w.recent = append(w.recent[:0], finishes{w.in.Course[w.lastFinish], w.rules.UsualTimes})
	}
	held := false
	for _, r := range w.recent {
		if r.times < w.rules.UsualTimes {
			continue
		}
		if w.cal.has(w.cal.absent, r.course, week) {
			return false
		}
		held = held || w.cal.has(w.cal.loaded, r.course, week)
	}
	return held
}

type finishes struct {
	course int32
	times  int
}

// tally counts a finish on a course and says whether that makes it usual.
func (w *worker) tally(course int32) bool {
	for k := range w.recent {
		if w.recent[k].course == course {
			w.recent[k].times++
			return w.recent[k].times >= w.rules.UsualTimes
		}
	}
	w.recent = append(w.recent, finishes{course, 1})
	return w.rules.UsualTimes <= 1
}
