package reports

import (
	"fmt"
	"math"
	"sort"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// courseSection gives the time to expect on each course, the fastest first.
func (d *standingRows) courseSection() (section, bool) {
	type line struct {
		c            *courseRow
		s, low, high float64
	}
	var lines []line
	for i := range d.courses {
		if s, low, high, ok := d.expected(&d.courses[i]); ok {
			lines = append(lines, line{&d.courses[i], s, low, high})
		}
	}
	if len(lines) == 0 {
		return section{}, false
	}
	sort.SliceStable(lines, func(i, j int) bool {
		if lines[i].c.distance != lines[j].c.distance {
			return lines[i].c.distance < lines[j].c.distance
		}
		return *lines[i].c.seconds < *lines[j].c.seconds
	})
	text := "A good effort on an average day, the fastest courses of a distance first: those suit an attempt at a best. A fast course may be flatter, firmer, sheltered or measured differently."
	if w := d.daysInWords(); w != "" {
		text += " " + w
	}
	if w := d.notCompared(); w != "" {
		text += " " + w
	}
	if n := len(lines); n > mostCourses {
		kept := lines[:0]
		for _, l := range lines {
			if d.bestOn(l.c) > 0 || l.c.distance == d.usualDistance() && len(kept) < mostCourses/2 {
				kept = append(kept, l)
			}
		}
		lines = kept
		text += fmt.Sprintf(" Of %d courses, those run before and the fastest.", n)
	}
	t := &table.Table{Columns: []table.Column{{Head: "Course"}, {Head: "Distance"}, {Head: "Expect", Kind: table.Clock},
		{Head: "likely from", Kind: table.Clock}, {Head: "to", Kind: table.Clock}, {Head: "Best there", Kind: table.Clock}}}
	for _, l := range lines {
		best := table.Value{}
		if b := d.bestOn(l.c); b > 0 {
			best = table.Number(b)
		}
		t.Add(nil, table.Words(l.c.name), table.Words(unit.Distance(l.c.distance)), table.Number(math.Round(l.s)), table.Number(math.Round(l.low)), table.Number(math.Round(l.high)), best)
	}
	return section{title: "What to expect on each course", table: t,
		paras: []string{text}}, true
}

// daysInWords says how much one day differs from another.
func (d *standingRows) daysInWords() string {
	if d.dayLow == nil || d.dayHigh == nil || d.dayRuns < leastDays {
		return ""
	}
	side := func(s float64) string {
		if math.Round(s) == 0 {
			return "as usual"
		}
		if s < 0 {
			return fmt.Sprintf("%.0f s faster", -s)
		}
		return fmt.Sprintf("%.0f s slower", s)
	}
	return fmt.Sprintf("The likely range is of an average day; the days themselves differ: nine runs in ten of the past year were between %s and %s than usual, for somebody who takes 25:00.", side(*d.dayLow), side(*d.dayHigh))
}

// leastDays is how many runs it takes to say how days differ.
const leastDays = 20

// notCompared names the courses that somebody runs on and that can't be compared.
func (d *standingRows) notCompared() string {
	var names []string
	for i := range d.courses {
		c := &d.courses[i]
		if c.seconds == nil && d.bestOn(c) > 0 {
			names = append(names, d.routeName(c.course, c.distance))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "Not here, as too little connects " + map[bool]string{true: "it", false: "them"}[len(names) == 1] + " with other courses of the distance: " + list(names) + "."
}

// mostCourses is how many courses a card lists before it picks.
const mostCourses = 12

func (d *standingRows) bestOn(c *courseRow) int32 {
	var best int32
	for _, r := range d.results {
		if r.course == c.course && r.distance == c.distance && r.countsTime && r.timeS != nil && (best == 0 || *r.timeS < best) {
			best = *r.timeS
		}
	}
	return best
}

// splitsSection gives even-pace splits for one second under the best.
func (d *standingRows) splitsSection() (section, bool) {
	dist := d.usualDistance()
	goal := d.bestAt(dist) - 1
	km := standing.EvenPace(dist, goal, standing.Kilometre)
	if len(km) == 0 {
		return section{}, false
	}
	t := &table.Table{Columns: []table.Column{{Head: "At", Kind: table.Text}, {Head: "Clock", Kind: table.Text}}}
	for _, s := range km {
		t.Add(nil, table.Words(metres(s.Metres)), table.Words(s.String()))
	}
	for _, s := range []struct {
		length float64
		name   string
	}{{standing.Lap400, "every 400 m"}, {standing.Mile, "at the mile"}} {
		if first := standing.EvenPace(dist, goal, s.length); len(first) > 1 {
			t.Add(nil, table.Words(s.name), table.Words(first[0].String()))
		}
	}
	return section{title: fmt.Sprintf("Even pace for %s", unit.Clock(goal)), table: t,
		paras: []string{fmt.Sprintf("One second under the best over %s. %s", unit.Distance(dist), splitsCaution)}}, true
}

func metres(m float64) string {
	if m >= 1000 && math.Mod(m, 1000) == 0 {
		return fmt.Sprintf("%.0f km", m/1000)
	}
	return fmt.Sprintf("%.0f m", m)
}
