package reports

import (
	"fmt"
	"math"
	"slices"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// Thresholds of what may be said of a change of form (methods: probability,
// not the raw difference).
const (
	sure        = .8 // of being faster, slower, or level
	breakWeeks  = 8
	windowDays  = 7 * standing.WindowWeeks
	effortDays  = 28
	manyEfforts = 2
)

// days of the timed results that say something about form.
func (d *standingRows) timedDays() []unit.Day {
	var out []unit.Day
	for _, r := range d.results {
		if r.countsTime {
			out = append(out, r.day)
		}
	}
	return out
}

// trend says in a sentence or two what can be said about the last 12 weeks.
// "Can't tell yet" is the usual answer.
func (d *standingRows) trend() string {
	days := d.timedDays()
	if n := len(days); n >= 2 {
		if gap := int(days[n-1]-days[n-2]) / 7; gap > breakWeeks && d.latest-days[n-1] <= windowDays {
			return fmt.Sprintf("Back after %d weeks: what was known from before may not hold; a few runs will tell.", gap)
		}
	}
	var rec standing.Record
	if len(days) > 0 {
		rec = standing.RecordOf(days, days[len(days)-1], days[len(days)-1])
	}
	if d.change != nil && d.changeSD != nil && d.pFaster != nil && d.pLevel != nil {
		if rec.Before >= standing.MinBefore && rec.Recent >= standing.MinRecent {
			size := fmt.Sprintf("about %.0f %% (likely %s)", math.Abs(100*math.Expm1(*d.change)), changeSpan(*d.change, *d.changeSD))
			switch {
			case *d.pFaster > sure:
				return "Improving: form is " + howSure(*d.pFaster) + " better than 12 weeks ago, by " + size + "."
			case *d.pFaster < 1-sure:
				return "Likely slower than 12 weeks ago, by " + size + ": age, heat or a cold can do that; this sheet can't tell which."
			case *d.pLevel > sure:
				return "Holding level: form has " + howSure(*d.pLevel) + " changed by less than 2 % in 12 weeks (" + changeSpan(*d.change, *d.changeSD) + ")."
			}
			return "Can't tell yet: in 12 weeks form has changed by something " + changeSpan(*d.change, *d.changeSD) + ", eight chances in ten. With times as scattered as weekly runs are, a change under 2 % is mostly invisible."
		}
	}
	return fmt.Sprintf("Can't tell yet: it takes four timed runs in the last 12 weeks and four before; up to the last run there are %d and %d.", rec.Recent, rec.Before)
}

// howSure says a probability in words: above nine in ten, or above sure.
func howSure(p float64) string {
	if p > .9 {
		return "very likely"
	}
	return "likely"
}

// longView sets the form of the first weeks, of the last personal best and of
// now side by side; "" where there are under ten timed runs or form is not known.
func (d *standingRows) longView() string {
	dist := d.usualDistance()
	var first, best, last *ownRow
	timed, since := 0, 0
	for i := range d.results {
		r := &d.results[i]
		if !r.countsTime || r.distance != dist || r.timeS == nil {
			continue
		}
		timed++
		since++
		if r.pb {
			best, since = r, 0
		}
		if r.formS != nil && r.formLow != nil && r.formHigh != nil {
			if last = r; first == nil {
				first = r
			}
		}
	}
	if timed < leastLongView || first == nil || last == first {
		return ""
	}
	was, low, high := first.form()
	is, nowLow, nowHigh := last.form()
	s := fmt.Sprintf("The longer view, over %s: form was about %s (likely %s to %s) on %s and %s (%s to %s) on %s", unit.Distance(dist), clockOf(was), clockOf(low), clockOf(high), first.day.Long(),
		clockOf(is), clockOf(nowLow), clockOf(nowHigh), last.day.Long())
	switch {
	case nowHigh < low:
		s += ": faster, beyond what the estimates leave open."
	case nowLow > high:
		s += ": slower, beyond what the estimates leave open."
	default:
		s += ": no difference that these estimates can be sure of."
	}
	if best != nil && since > 0 {
		s += fmt.Sprintf(" The last personal best was on %s, %s ago", best.day.Long(), text.CountOf(since, "timed run", "timed runs"))
		if f, _, _ := best.form(); f == f {
			s += ", with form at about " + clockOf(f)
		}
		s += "."
	}
	return s
}

// leastLongView is how many timed runs a longer view takes.
const leastLongView = 10

// changeSpan is the central 80 % interval of a change as a span in percent:
// 1.2816 is the standard normal quantile at 0.9.
func changeSpan(change, sd float64) string {
	const z80 = 1.2815515655446004
	a, b := 100*math.Expm1(change-z80*sd), 100*math.Expm1(change+z80*sd)
	word := func(p float64) string {
		switch {
		case p < -0.05:
			return fmt.Sprintf("%.1f %% faster", -p)
		case p > 0.05:
			return fmt.Sprintf("%.1f %% slower", p)
		}
		return "no change"
	}
	return "between " + word(a) + " and " + word(b)
}

// gradeTrend sets the age grades of the last 12 weeks beside those of the 12
// before, for masters: a raw decline is no headline. "" where there are under
// four on either side.
func (d *standingRows) gradeTrend() string {
	var now, before []float64
	for _, r := range d.results {
		if r.grade == nil || !r.countsTime {
			continue
		}
		switch {
		case r.day > d.latest-windowDays:
			now = append(now, *r.grade)
		case r.day > d.latest-2*windowDays:
			before = append(before, *r.grade)
		}
	}
	if groupOrder(d.group) < 35 || len(now) < standing.MinRecent || len(before) < standing.MinBefore {
		return ""
	}
	return fmt.Sprintf("Age for age: the median age grade of the last 12 weeks is %.1f %%, of the 12 weeks before %.1f %% (%s and %s). All runs are in it, hard and easy ones, so it says less than form.",
		median(now), median(before), text.CountOf(len(now), "result", "results"), text.CountOf(len(before), "result", "results"))
}

// efforts says how often somebody ran near their recent best.
func (d *standingRows) efforts() string {
	n, seen, timed, hard := 0, 0, 0, 0
	var days []string
	for i := len(d.results) - 1; i >= 0; i-- {
		r := &d.results[i]
		if !r.countsTime || r.effort == "" {
			continue
		}
		if timed++; timed <= lastRuns && r.effort == "full" {
			hard++
		}
		if r.day > d.latest-effortDays && r.effort != "unclear" {
			seen++
			if r.effort == "full" {
				n++
				days = append(days, r.day.Time().Format("2 Jan"))
			}
		}
	}
	if seen == 0 {
		return ""
	}
	s := fmt.Sprintf("%s near your recent best in 28 days", upperFirst(spelt(n, "run", "runs")))
	if n > 0 {
		slices.Reverse(days)
		s += " (" + list(days) + ")"
	}
	s += "."
	if timed >= lastRuns {
		s += fmt.Sprintf(" Of the last %d runs, %d were near it.", lastRuns, hard)
	}
	if n > manyEfforts {
		s += " Many coaches suggest one or two. A guide, not advice on health."
	}
	return s
}

// effortWords are printed for the effort codes.
var effortWords = map[string]string{"full": "near recent best", "steady": "behind it", "easy": "well behind it", "unclear": "unclear"}

// effortWord is the effort of a result as printed. A best was behind nothing that
// was known on the day: of that, the estimate from later runs says too little.
func (r *ownRow) effortWord() string {
	if (r.pb || r.adj) && r.effort != "full" && r.effort != "" {
		return effortWords["unclear"]
	}
	return effortWords[r.effort]
}

// target is a place ahead and what it takes.
func (d *standingRows) ahead() []standing.Target {
	if d.protected || d.group == "" {
		return nil
	}
	g := d.bests[standIn{measure: "adjusted", distance: d.usualDistance(), season: true}]
	if g == nil {
		return nil
	}
	return standing.Ahead(g.mine, g.all, mostAhead)
}

// usualDistance is the distance that somebody has run most often, the shorter
// of equals.
func (d *standingRows) usualDistance() int32 {
	n := map[int32]int{}
	var best int32
	for _, r := range d.results {
		if !r.countsTime || r.distance == 0 {
			continue
		}
		n[r.distance]++
		if best == 0 || n[r.distance] > n[best] || n[r.distance] == n[best] && r.distance < best {
			best = r.distance
		}
	}
	return best
}

// bestAt is the fastest eligible time at a distance, s, 0 for none.
func (d *standingRows) bestAt(distance int32) int32 {
	var best int32
	for _, r := range d.results {
		if r.countsTime && r.timeS != nil && r.distance == distance && (best == 0 || *r.timeS < best) {
			best = *r.timeS
		}
	}
	return best
}

// enduranceExponent is that of Riegel (1981), a mean over many runners.
const enduranceExponent = 1.06

// expected is the time to be expected on a course on an average day, with its
// 90 % interval, from form over 5 km and the course's speed. For another
// distance the endurance exponent 1.06 of Riegel (1981, "Athletic Records and
// Human Endurance", American Scientist 69:285-290) carries form over.
func (d *standingRows) expected(c *courseRow) (s, low, high float64, ok bool) {
	if d.formS == nil || d.formLow == nil || d.formHigh == nil || c.seconds == nil || c.secLow == nil || c.secHi == nil || c.distance <= 0 {
		return 0, 0, 0, false
	}
	k := math.Pow(float64(c.distance)/5000, enduranceExponent)
	speed := func(sec float64) float64 { return 1 + sec/1500 }
	s = *d.formS * k * speed(*c.seconds)
	// Two independent errors of the log add up by their squares.
	half := math.Hypot(math.Log(*d.formHigh / *d.formLow)/2, math.Log(speed(*c.secHi)/speed(*c.secLow))/2)
	return s, s * math.Exp(-half), s * math.Exp(half), true
}

func median(v []float64) float64 {
	s := slices.Sorted(slices.Values(v))
	if n := len(s); n%2 == 1 {
		return s[n/2]
	}
	return (s[len(s)/2-1] + s[len(s)/2]) / 2
}
