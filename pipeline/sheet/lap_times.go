package sheet

import (
	"math"
	"regexp"
	"strings"
)

// lapHeading is the heading of a lap with its number: "Lap 1", "L2", "After lap 3 (finish)", "2nd lap", "Runde 2".
var lapHeading = regexp.MustCompile(`^(?:(?:after|nach|apres|efter|etter|po|na|dopo|tras) )?(?:(?:lap|loop|circuit|runde|tour|vuelta|giro|volta|varv|ronde|rondje|kolo|okrazenie|kierros|krog|kor|ring|ratas|l) ?([1-9])|([1-9])(?:st|nd|rd|th|e|a)? (?:lap|loop|circuit|runde|tour|vuelta|giro|volta|varv|ronde|rondje|kolo|okrazenie|kierros|krog|kor|ring|ratas))(?: |$)`)

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
