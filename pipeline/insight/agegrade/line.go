package agegrade

import "math"

// Line is the standard of one sex at one distance over all ages: what a loop
// over many results keeps at hand.
type Line struct {
	open   float64
	factor [MaxAge - MinAge + 1]float64
}

// Line gives the standard of a sex ("M" or "W") at a distance in metres; ok
// is false where there is none.
//
// A whole number of metres that stands for a tabled distance (1609 m for the
// mile, 6437 m for 4 miles, 21098 m for the half marathon) is that distance.
// Between tabled distances d₁ and d₂, with u = ln(d/d₁) / ln(d₂/d₁), age
// factors are f₁(1−u) + f₂u (the rule published with the 2025 table) and the
// open standard's pace in seconds a metre is interpolated in the same way.
func (t *Table) Line(sex string, distanceM int32) (line Line, ok bool) {
	list := t.sex(sex)
	if list == nil {
		return Line{}, false
	}
	d := float64(distanceM)
	for i := range *list {
		s := &(*list)[i]
		switch {
		case math.Abs(d-s.metres) < 1:
			return Line{s.open, s.factor}, true
		case d < s.metres && i == 0:
			return Line{}, false
		case d < s.metres:
			return between(&(*list)[i-1], s, d), true
		}
	}
	return Line{}, false
}

func between(a, b *standard, d float64) (line Line) {
	u := math.Log(d/a.metres) / math.Log(b.metres/a.metres)
	line.open = d * (a.open/a.metres*(1-u) + b.open/b.metres*u)
	for i := range line.factor {
		line.factor[i] = a.factor[i]*(1-u) + b.factor[i]*u
	}
	return line
}

// Open is the open standard in seconds.
func (l *Line) Open() float64 { return l.open }

// Factor is the age factor at an age in whole years; ok is false outside
// MinAge to MaxAge.
func (l *Line) Factor(age int) (f float64, ok bool) {
	if age < MinAge || age > MaxAge {
		return 0, false
	}
	return l.factor[age-MinAge], true
}

// Factor is the age factor of a sex at a distance in metres and an age in
// whole years; ok is false where there is no standard.
func (t *Table) Factor(sex string, distanceM int32, age int) (f float64, ok bool) {
	l, ok := t.Line(sex, distanceM)
	if !ok {
		return 0, false
	}
	return l.Factor(age)
}

// OpenStandard is the open standard in seconds of a sex at a distance in
// metres; ok is false where there is none.
func (t *Table) OpenStandard(sex string, distanceM int32) (seconds float64, ok bool) {
	l, ok := t.Line(sex, distanceM)
	return l.open, ok
}
