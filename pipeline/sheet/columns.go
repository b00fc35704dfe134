package sheet

import (
	"fmt"
	"strings"
)

// settler decides what every column means, by headings and values together.
type settler struct {
	lex          *lexicon
	headings     []string
	guesses      []guess
	profiles     []*profile
	columns      []Column
	rows         []line // the sample
	clock        []int  // columns of hours, minutes and seconds that make up the time
	secondsGiven bool   // the last of them is written where it is nought, too
	beside       beside
	between      bool    // clock are the times of day of start and finish
	sum          bool    // clock are the laps
	start        float64 // or clock is that of the finish, and this the start, s from midnight
	goesBy       string  // heading of the times that count of several, where there is evidence
	newBest      bool    // its times are bests of that day, those of some of the field
	todays       bool    // the heading of the times says that they are today's
	clockColumns []int   // columns of times of which no heading says which one counts
	twoNames     []int   // two columns of full names of different people
}

// isTime says whether a column of this meaning holds running times.
func (m Meaning) isTime() bool { return m == Time || m == GunTime || m == ChipTime }

// isName says whether it holds names of people or a part of them.
func (m Meaning) isName() bool { return m == Name || m == GivenName || m == FamilyName }

// settleColumns takes the headings (nil where there are none) and a sample of
// the rows below them.
func settleColumns(lex *lexicon, book *courseBook, headings []string, rows []line, width int) *settler {
	width = max(width, len(headings))
	s := &settler{lex: lex, rows: rows, beside: noneBeside()}
	for i := 0; i < width; i++ {
		h := ""
		if i < len(headings) {
			h = headings[i]
		}
		s.headings = append(s.headings, h)
		g := lex.read(h)
		if !g.known && len(headings) > 1 && strings.Contains(h, ".") {
			g = lex.readShortened(h)
		}
		if !g.known && h != "" && len(headings) > 1 {
			if m := lex.readMisspelt(h); m.known && m.meaning != Other {
				g = m
				g.misspelt = true
			}
		}
		if m, ok := lex.saidOf(headings, i); ok {
			g = guess{meaning: m, known: true, forced: true, said: true}
		}
		s.guesses = append(s.guesses, g)
		p := &profile{}
		for _, r := range rows {
			if i < len(r.cells) {
				p.add(r.cells[i])
			}
		}
		s.profiles = append(s.profiles, p)
		s.columns = append(s.columns, Column{Index: i, Heading: h})
	}
	s.dropDoubled()
	moved := s.headingsBeside()
	names, times, exchanged := s.exchanged()
	for i := range s.columns {
		s.byHeading(i)
	}
	s.bySaid()
	for i := range s.columns {
		if moved != "" && s.columns[i].Meaning.isTime() {
			s.columns[i].Why += moved
		}
	}
	if exchanged {
		s.columns[names].Why += "; the headings of columns " + letters(names) + " and " + letters(times) + " are exchanged, as the values show"
		s.columns[times].Why += "; exchanged with that of column " + letters(names)
	}
	s.minutesAndSeconds()
	s.startAndFinish()
	s.stampedStartAndFinish()
	s.staggered()
	s.gaps()
	s.ticks()
	s.underHeadings()
	s.particles()
	s.secondNames()
	s.names()
	s.handicap()
	s.timesOfToday()
	s.newBests()
	s.stepsOfTotals()
	s.times()
	s.lapTimes()
	s.ageBounds()
	s.single()
	s.byValues()
	s.sexesUnderOther()
	s.sexesOfPlaces()
	s.ended()
	s.kilometres()
	s.against()
	s.secondsOnly()
	s.attendance()
	s.lineNumbers()
	s.evidence()
	s.runNumbers()
	s.courseByValues(book)
	s.roles()
	s.official()
	s.doubt()
	return s
}

func (s *settler) set(i int, m Meaning, format string, args ...any) {
	s.columns[i].Meaning, s.columns[i].Why = m, fmt.Sprintf(format, args...)
}

func (s *settler) find(m Meaning) int {
	for i, c := range s.columns {
		if c.Meaning == m {
			return i
		}
	}
	return -1
}

func (s *settler) all(m Meaning) (cols []int) {
	for i, c := range s.columns {
		if c.Meaning == m {
			cols = append(cols, i)
		}
	}
	return cols
}
