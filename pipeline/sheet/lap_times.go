package sheet

import (
	"math"
	"regexp"
	"strings"
)

// lapHeading is the heading of a lap with its number: "Lap 1", "L2", "After lap 3 (finish)", "2nd lap", "Runde 2".
var lapHeading = regexp.MustCompile(`^(?:(?:after|nach|apres|efter|etter|po|na|dopo|tras) )?(?:(?:lap|loop|circuit|runde|tour|vuelta|giro|volta|varv|ronde|rondje|kolo|okrazenie|kierros|krog|kor|ring|ratas|l) ?([1-9])|([1-9])(?:st|nd|rd|th|e|a)? (?:lap|loop|circuit|runde|tour|vuelta|giro|volta|varv|ronde|rondje|kolo|okrazenie|kierros|krog|kor|ring|ratas))(?: |$)`)

// lapsOf reads a cell that counts laps, "2" or "2/2" or "1 of 2", how many of how many; of is 0 where it does not say.
func lapsOf(cell string) (n, of int, ok bool) {
	m := countOfLaps.FindStringSubmatch(fold(cell))
	if m == nil {
		return 0, 0, false
	}
	return int(looseNumber(m[1])), int(looseNumber(m[2])), true
}

var countOfLaps = regexp.MustCompile(`^(\d{1,2})(?: ?(?:/|of|von|sur|de|di|van|av|af|z|ze) ?(\d{1,2}))?(?: laps?)?$`)

// fewShort is how many laps all ran but a few, of whom no more than one in so many ran fewer; 0 for none.
func fewShort(laps map[int]int) (full int) {
	const few = 4
	rows, most := 0, 0
	for n, times := range laps {
		rows += times
		most = max(most, n)
	}
	if short := rows - laps[most]; most < 2 || rows < few || short == 0 || few*short > rows {
		return 0
	}
	return most
}

// shortOfLaps is the column that says how many laps each ran, where a few ran fewer than all others, and how many
// those ran; -1 for none. One lap of a run of two is no result of it.
func (p *Part) shortOfLaps() (column, full int) {
	for _, c := range p.Columns {
		if !lapsRun[fold(c.Heading)] {
			continue
		}
		laps, ok := map[int]int{}, true
		p.Each(func(_ int, cells []string) error {
			cell := trim(cellAt(cells, c.Index))
			n, of, read := lapsOf(cell)
			switch {
			case read:
				laps[n]++
				laps[of] += 0
			case !isBlank(cell):
				ok = false
			}
			return nil
		}) // a grid has no error of its own
		if full := fewShort(laps); ok && full > 0 {
			return c.Index, full
		}
	}
	return -1, 0
}

// lapTimes finds the time of a table that has those of the laps and none at the finish: the clock after the last
// lap where it goes on from lap to lap, or the sum of the laps where each is timed for itself. In nine rows of
// ten the laps have to be alike.
func (s *settler) lapTimes() {
	if s.hasTimes() || len(s.clock) > 0 {
		return
	}
	var laps []int
	for i, h := range s.headings {
		m := lapHeading.FindStringSubmatch(fold(h))
		if m == nil || s.profiles[i].shareOf(kClock) < .8 {
			continue
		}
		if int(looseNumber(m[1]+m[2])) != len(laps)+1 {
			return
		}
		laps = append(laps, i)
	}
	if len(laps) < 2 {
		return
	}
	n := float64(len(laps))
	rows, goesOn, each := 0, 0, 0
	for _, r := range s.rows {
		least, most, sum, last, rising := math.Inf(1), 0.0, 0.0, 0.0, true
		for _, i := range laps {
			v := secondsOf(r.cells, i)
			if v <= 0 {
				sum = 0
				break
			}
			least, most, sum = min(least, v), max(most, v), sum+v
			rising = rising && v > last
			last = v
		}
		if sum == 0 {
			continue
		}
		rows++
		if rising && last > .65*n*least && last < 1.5*n*least && last >= shortestRun/2 && last <= longestRun {
			goesOn++
		}
		if most < 1.6*least && sum >= shortestRun/2 && sum <= longestRun {
			each++
		}
	}
	switch end := laps[len(laps)-1]; {
	case rows < 3:
	case 10*goesOn >= 9*rows && goesOn > each:
		s.set(end, Time, "heading %q: the clock after the last lap", s.headings[end])
	case 10*each >= 9*rows:
		for _, i := range laps {
			s.set(i, Other, "heading %q: a lap", s.headings[i])
		}
		s.clock, s.sum = laps, true
	}
}

// stepsOfTotals leaves out the columns of a stopwatch that say how long after the one before each came in, where another
// column has their sum so far, the list running either way: "Lap 3 | 00:31.53 | 19:02.55".
func (s *settler) stepsOfTotals() {
	var clocks []int
	for i, p := range s.profiles {
		if p.count[kClock] > 0 && p.shareOf(kClock) > .8 {
			clocks = append(clocks, i)
		}
	}
	for _, step := range clocks {
		for _, total := range clocks {
			if step != total && s.stepsOf(step, total) {
				s.guesses[step] = guess{meaning: Split, known: true}
				s.set(step, Split, "its times are those from one finisher to the next in column %s", letters(total))
				break
			}
		}
	}
}

// stepsOf says whether the times of a column are the differences between the rows of another, in nine of ten
// rows, five or more of which are neither nothing nor all of it.
func (s *settler) stepsOf(step, total int) bool {
	rows, down, up := 0, 0, 0
	near := func(a, b float64) bool { return math.Abs(a-b) < .03 }
	for k := 1; k < len(s.rows); k++ {
		a, b := s.rows[k-1].cells, s.rows[k].cells
		before, after := secondsOf(a, total), secondsOf(b, total)
		if before <= 0 || after <= 0 || before == after {
			continue
		}
		rows++
		if near(after-before, secondsOf(b, step)) {
			down++
		}
		if near(before-after, secondsOf(a, step)) {
			up++
		}
	}
	return rows >= 5 && 10*max(down, up) >= 9*rows
}

// sumOf writes the sum of the times in some columns; a row that lacks one has what stands in its place, a word
// for how the run ended, or a question mark where it has others.
func sumOf(cells []string, columns []int) string {
	sum, filled := 0.0, 0
	for _, i := range columns {
		c := trim(cellAt(cells, i))
		v := secondsOf(cells, i)
		switch {
		case c == "" || strings.Trim(c, "-–— ") == "":
			continue
		case v <= 0:
			return c
		}
		sum += v
		filled++
	}
	switch filled {
	case 0:
		return ""
	case len(columns):
		return clockText(int64(math.Round(1000 * sum)))
	}
	return "?"
}
