package sheet

import (
	"slices"

	"lapwing/pipeline/place"
)

// ages counts the whole numbers of a column and those among them that can stand
// for an age: years of life or of birth, or a sign for "not known". One slip of
// the keyboard (140) makes a column of ages no other column.
func (s *settler) ages(i int) (ages, ints int) {
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kInt {
			continue
		}
		ints++
		if n := looseNumber(c); n >= 0 && n <= 120 || n == 999 || n >= 1900 && n <= 2030 {
			ages++
		}
	}
	return ages, ints
}

// wholeNumbers says whether the decimals of a column are whole numbers, as
// programs write them where cells are empty: 34.0, 11.0.
func (s *settler) wholeNumbers(i int) bool {
	decimals, whole := 0, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kDecimal {
			continue
		}
		decimals++
		if n := looseNumber(c); n == float64(int(n)) {
			whole++
		}
	}
	return decimals > 0 && whole*10 >= decimals*9
}

// leastGrade is the lowest median of a column of decimals that is taken for age
// grades without a question; below it, it may hold the ages of children (11.5).
// Common sense, no source.
const leastGrade = 25

// median of the numbers of a column.
func (s *settler) median(i int) float64 {
	var all []float64
	for _, r := range s.rows {
		switch c := trim(cellAt(r.cells, i)); kindOf(c) {
		case kInt, kDecimal, kPercent:
			all = append(all, looseNumber(c))
		}
	}
	if len(all) == 0 {
		return 0
	}
	slices.Sort(all)
	return all[len(all)/2]
}

// ofAge are the meanings that say how old somebody is; they stand for one another.
var ofAge = []Meaning{Age, AgeGroup, BirthYear, BirthDate}

// needed are the meanings whose loss would be missed, with those that make up
// for it.
var needed = map[Meaning][]Meaning{
	Position: {Position},
	Time:     {Time, GunTime, ChipTime},
	Age:      ofAge, AgeGroup: ofAge, BirthYear: ofAge, BirthDate: ofAge,
	Sex: {Sex, AgeGroup},
}

// doubt marks the columns whose headings plainly say something that their
// values don't bear out, where no other column has it: it would be missed.
func (s *settler) doubt() {
	for i := range s.columns {
		g, p, m := s.guesses[i], s.profiles[i], s.columns[i].Meaning
		// The year may be that of the run.
		if !g.known || g.misspelt || g.forced || g.year || p.filled == 0 {
			continue
		}
		instead, ok := needed[g.meaning]
		if g.meaning == Time && len(s.clock) > 0 {
			continue // its parts stand in columns of their own
		}
		for _, n := range instead {
			ok = ok && s.find(n) < 0
		}
		switch {
		case !ok:
		case m == Other, m == AgeGrade && (g.meaning == Age || g.meaning == BirthYear), m == GroupPlace && g.meaning == Age, m == SexPlace:
			s.columns[i].doubted = g.meaning
			s.columns[i].grades = m == AgeGrade && s.median(i) >= leastGrade
		}
	}
}

// surelyTwice is of how many people two are of one age nearly always: of fifteen between 18 and 70 in
// 89 of 100 fields (arithmetic, each age as likely). Numbers of runners are never there twice.
const surelyTwice = 15

// sayBareAges points out a column without a heading that was taken for ages though each number stands
// there once, as the numbers of runners or of runs may.
func (s *settler) sayBareAges(p *Part, sheet string) {
	i := s.find(Age)
	if i < 0 || s.headings[i] != "" || s.guesses[i].known || len(s.profiles[i].distinct) < s.profiles[i].filled {
		return
	}
	p.problem(sheet, p.HeadingRow, i, place.Look, "ages-without-heading", cellAt(s.rows[0].cells, i), "a heading over this column",
		"These numbers were taken for ages, as nothing says what they are. If they are something else, write over the column what it is, No for runners' numbers, and load the sheet again.")
}

// sayByValues points out the columns under unknown headings that were taken for sexes or years of birth by their
// values alone: "Meal" over M and F may be another thing.
func (s *settler) sayByValues(p *Part, sheet string) {
	for i, c := range s.columns {
		if c.Meaning != Sex && c.Meaning != BirthYear || s.guesses[i].known || s.headings[i] == "" || c.Index != i {
			continue
		}
		p.problem(sheet, p.HeadingRow, i, place.Look, "column-by-values", s.headings[i], "a heading that says what the column holds",
			"This heading is not known, and the column looks like "+map[Meaning]string{Sex: "sexes", BirthYear: "years of birth"}[c.Meaning]+", as which it is read. If it is something else, say so; otherwise there is nothing to do.")
		p.Problems[len(p.Problems)-1].Answers = place.AnswerLines(place.Answer{Flags: s.columnFlags(i, Other), When: "if it is something else"})
	}
}

// sayRareTimes points out the columns of no known meaning that have a time on a few lines beside their
// running time: a penalty, a time from another watch, one that was corrected.
func (s *settler) sayRareTimes(p *Part, sheet string) {
	const few = 4 // one line in so many
	clock := s.find(Time)
	if clock < 0 || p.Kind == Volunteers {
		return
	}
	for i, c := range s.columns {
		f := s.profiles[i]
		if c.Meaning != Other || c.Index != i || s.headings[i] == "" || s.guesses[i].known && s.guesses[i].meaning != Time || f.filled == 0 || few*f.filled > s.profiles[clock].filled || f.shareOf(kClock) < .8 || otherDay(fold(s.headings[i])) {
			continue
		}
		for _, r := range s.rows {
			if t := trim(cellAt(r.cells, i)); kindOf(t) == kClock && kindOf(trim(cellAt(r.cells, clock))) == kClock {
				p.problem(sheet, r.row, i, place.Look, "time-beside-time", s.headings[i]+": "+t, "one time on a line",
					"This column has a time on a few lines beside their running time, and is left out. If it changes a result, write the right time into the column of times and load the sheet again; otherwise there is nothing to do.")
				break
			}
		}
	}
}

// Kinds of the problem that a column with a plain heading was not taken. Where
// the column is one of ages, nobody's age is known though the sheet gives it.
const (
	ColumnNotUsed    = "column-not-used"
	AgeColumnNotUsed = "age-column-not-used"
)

// reportDoubted says of every column with a plain heading that it was not taken.
func (p *Part) reportDoubted(sheetName string) {
	for _, c := range p.Columns {
		kind, what := ColumnNotUsed, ""
		switch c.doubted {
		case Other:
			continue
		case Position:
			what = "whole numbers such as 1, 2, 3"
		case Time:
			what = "running times such as 24:31"
		case Sex:
			what = "M, W, X or the like"
		default:
			what = "ages, years of birth or age groups"
			if !c.grades {
				kind = AgeColumnNotUsed
			}
		}
		do := "Put it right on the sheet and load it again; or say in the settings what the heading means."
		if kind == AgeColumnNotUsed {
			do = "Until then everybody whose age is not known otherwise is shown as a child would be. " + do
		}
		p.problem(sheetName, p.HeadingRow, c.Index, place.Look, kind, c.Why, what, do)
	}
}
