package agegrade

import (
	"fmt"
	"math"
)

// Columns are results to be graded, one element a result in every slice.
type Columns struct {
	Sex          []string // "M", "W"; anything else has no standard
	DistanceM    []int32  // metres
	AgeLo, AgeHi []int16  // whole years on the day; AgeHi 0 = age not known
	TimeS        []int32  // whole seconds, 0 = no time
}

// Grades are what the grades of Columns are made of, element by element; NaN
// where there is no standard, no age or no time. Few different values stand in them,
// which is why they are kept rather than the grades: 100 × Open / (Factor × time).
type Grades struct {
	Open        []float64 // open standard, seconds
	Factor      []float64 // age factor at the middle of the ages allowed
	FactorMost  []float64 // the largest of those allowed: it gives the lowest grade
	FactorLeast []float64
}

// NewGrades has room for the grades of n results.
func NewGrades(n int) Grades {
	return Grades{make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)}
}

// At is the grade of result i, whose time in whole seconds is timeS; of ages that
// share a factor it does not say that there are several.
func (g *Grades) At(i int, timeS int32) (Grade, bool) {
	if math.IsNaN(g.Open[i]) {
		return Grade{}, false
	}
	l := Line{open: g.Open[i]}
	f := factors{g.Factor[i], g.FactorMost[i], g.FactorLeast[i]}
	one := l.grade(f, timeS)
	one.Approximate = f.most != f.least
	return one, true
}

// Grades works through columns of results.
func (t *Table) Grades(c Columns) (Grades, error) {
	n := len(c.TimeS)
	if len(c.Sex) != n || len(c.DistanceM) != n || len(c.AgeLo) != n || len(c.AgeHi) != n {
		return Grades{}, fmt.Errorf("age grades: columns of %d, %d, %d, %d and %d results",
			len(c.Sex), len(c.DistanceM), len(c.AgeLo), len(c.AgeHi), n)
	}
	out := NewGrades(n)
	type key struct {
		sex    string
		metres int32
	}
	lines := map[key]*Line{}
	var last key
	var line *Line
	nan := math.NaN()
	for i := range n {
		if k := (key{c.Sex[i], c.DistanceM[i]}); line == nil || k != last {
			var seen bool
			if line, seen = lines[k]; !seen {
				l, _ := t.Line(k.sex, k.metres) // the zero Line: no standard
				line = &l
				lines[k] = line
			}
			last = k
		}
		open, f := nan, factors{nan, nan, nan}
		if lo, hi := int(c.AgeLo[i]), int(c.AgeHi[i]); line.open > 0 && c.TimeS[i] > 0 && gradable(lo, hi) {
			open, f = line.open, line.factors(lo, hi)
		}
		out.Open[i], out.Factor[i], out.FactorMost[i], out.FactorLeast[i] = open, f.middle, f.most, f.least
	}
	return out, nil
}
