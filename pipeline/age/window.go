// Package age holds birth windows and age groups: what an age, a year of
// birth or an age group on a date says about the day somebody was born, and
// which group that puts them in on another date.
package age

import "lapwing/pipeline/unit"

// Window bounds a birth date: born on Lo, on Hi or between them, both
// included. The zero Window is unknown.
type Window struct{ Lo, Hi unit.Day }

// Basis says on which day the age or group of a sheet was reckoned.
type Basis uint8

const (
	NoBasis     Basis = iota
	OnTheDay          // age on the day of the run (the usual rule)
	YearEnd           // age reached by 31 December
	SeasonStart       // age on the first day of the season
	SignUp            // age as given once, when somebody signed up: may be years old
	Born              // year or date of birth: no reckoning day
	AsSet             // age groups as the archive's Rule has them, which goes by the year
)

// Known says whether the window bounds anything.
func (w Window) Known() bool { return w.Lo != 0 || w.Hi != 0 }

// Days is the number of days the window holds, 0 if unknown.
func (w Window) Days() int {
	if !w.Known() {
		return 0
	}
	return int(w.Hi-w.Lo) + 1
}

// Meet intersects two windows. An unknown window bounds nothing. ok is false
// where both are known and no birth date fits both; the result is then the
// receiver.
func (w Window) Meet(v Window) (both Window, ok bool) {
	switch {
	case !w.Known():
		return v, true
	case !v.Known():
		return w, true
	}
	m := Window{max(w.Lo, v.Lo), min(w.Hi, v.Hi)}
	if m.Lo > m.Hi {
		return w, false
	}
	return m, true
}

// Gap is the number of days between two windows, 0 where they meet or one is
// unknown.
func (w Window) Gap(v Window) int {
	if !w.Known() || !v.Known() {
		return 0
	}
	return max(0, int(w.Lo-v.Hi), int(v.Lo-w.Hi))
}

// OfAges is the window of somebody who is lo to hi whole years old on day:
// born after the same date hi+1 years before, and no later than the same date
// lo years before. The birthday itself counts: somebody born on 3 Jan 1986 is
// 40 on 3 Jan 2026.
func OfAges(lo, hi int, on unit.Day) Window {
	return Window{latestBirth(hi+1, on) + 1, latestBirth(lo, on)}
}

// latestBirth is the last birth date of somebody who has had their n-th
// birthday on that day: the same month and day n years before, or 28 February
// where that year has no 29th.
func latestBirth(n int, on unit.Day) unit.Day {
	y, m, d := on.Date()
	born := unit.NewDay(y-n, m, d)
	if _, bm, _ := born.Date(); bm != m {
		born--
	}
	return born
}

// OfYear is the window of a year of birth.
func OfYear(year int) Window {
	return Window{unit.NewDay(year, 1, 1), unit.NewDay(year, 12, 31)}
}

// OfDate is the window of a date of birth.
func OfDate(d unit.Day) Window { return Window{d, d} }

// On is the age in whole years on a day, at birth date d.
func On(born, on unit.Day) int {
	by, bm, bd := born.Date()
	y, m, d := on.Date()
	a := y - by
	if m < bm || m == bm && d < bd {
		a--
	}
	return a
}

// On gives the youngest and oldest age in whole years that the window allows
// on a day. ok is false for an unknown window.
func (w Window) On(day unit.Day) (lo, hi int, ok bool) {
	if !w.Known() {
		return 0, 0, false
	}
	return On(w.Hi, day), On(w.Lo, day), true
}
