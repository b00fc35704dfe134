package agegrade

// Grade is the age grade of one time, and what the time was worth.
//
// Where the birth window leaves more than one age on the day, Percent and
// OpenEquivalent are those of the middle age (the younger of two), Low and
// High the lowest and highest grade over all ages it allows.
type Grade struct {
	Percent        float64 // 100 × open standard / (age factor × time), unrounded; print to 0.01
	Low, High      float64 // equal to Percent where the age is certain
	OpenEquivalent float64 // seconds: time × age factor, what an open-age runner would need for the same grade
	Approximate    bool    // more than one age is possible
	Check          bool    // High is 100 or more: check age, sex and course before anybody is praised
}

// Grade of a time in seconds (rounded up to the whole second, as road times
// are) by somebody of ageLo to ageHi whole years on the day. ok is false where
// the time is not positive, the ages are reversed, or any of them has no
// standard.
func (l *Line) Grade(ageLo, ageHi int, timeS int32) (g Grade, ok bool) {
	if timeS <= 0 || !gradable(ageLo, ageHi) {
		return Grade{}, false
	}
	g = l.grade(l.factors(ageLo, ageHi), timeS)
	g.Approximate = ageLo != ageHi
	return g, true
}

// gradable says whether there are factors for all of these ages.
func gradable(ageLo, ageHi int) bool { return MinAge <= ageLo && ageLo <= ageHi && ageHi <= MaxAge }

// factors are the age factors of an age on the day that may be one of several.
type factors struct{ middle, most, least float64 }

// factors finds them; factors rise in youth and fall later, so the ends need not
// be the extremes.
func (l *Line) factors(ageLo, ageHi int) factors {
	mid := l.factor[(ageLo+ageHi)/2-MinAge]
	f := factors{mid, mid, mid}
	for a := ageLo; a <= ageHi; a++ {
		f.most, f.least = max(f.most, l.factor[a-MinAge]), min(f.least, l.factor[a-MinAge])
	}
	return f
}

func (l *Line) grade(f factors, timeS int32) Grade {
	g := Grade{OpenEquivalent: float64(timeS) * f.middle, Percent: percent(l.open, f.middle, timeS)}
	g.Low, g.High = percent(l.open, f.most, timeS), percent(l.open, f.least, timeS)
	g.Check = g.High >= 100
	return g
}

func percent(open, factor float64, timeS int32) float64 {
	return 100 * open / (factor * float64(timeS))
}

// Grade of a time in seconds over a distance in metres by somebody of sex "M"
// or "W" who is ageLo to ageHi whole years old on the day; ok is false where
// there is no standard. For many results keep the Line of each sex and
// distance instead.
func (t *Table) Grade(sex string, distanceM int32, ageLo, ageHi int, timeS int32) (g Grade, ok bool) {
	l, ok := t.Line(sex, distanceM)
	if !ok {
		return Grade{}, false
	}
	return l.Grade(ageLo, ageHi, timeS)
}
