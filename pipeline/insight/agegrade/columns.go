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

// Grades are the figures of Columns, element by element; NaN where there is
// no standard, no age or no time.
type Grades struct {
	Percent, Low, High, OpenEquivalent []float64
}

// Grades works through columns of results.
func (t *Table) Grades(c Columns) (Grades, error) {
	n := len(c.TimeS)
	if len(c.Sex) != n || len(c.DistanceM) != n || len(c.AgeLo) != n || len(c.AgeHi) != n {
		return Grades{}, fmt.Errorf("age grades: columns of %d, %d, %d, %d and %d results",
			len(c.Sex), len(c.DistanceM), len(c.AgeLo), len(c.AgeHi), n)
	}
	out := Grades{make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)}
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
		g, ok := Grade{}, false
		if line.open > 0 {
			g, ok = line.Grade(int(c.AgeLo[i]), int(c.AgeHi[i]), c.TimeS[i])
		}
		if !ok {
			g = Grade{Percent: nan, Low: nan, High: nan, OpenEquivalent: nan}
		}
		out.Percent[i], out.Low[i], out.High[i], out.OpenEquivalent[i] = g.Percent, g.Low, g.High, g.OpenEquivalent
	}
	return out, nil
}
