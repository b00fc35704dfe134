package standing

import (
	"cmp"
	"math"
	"slices"

	"lapwing/pipeline/unit"
)

// Gates of the most-improved table. Weeks are blocks of seven days.
const (
	WindowWeeks   = 12  // "now" is the last 12 weeks
	MinBefore     = 4   // results before them
	MinRecent     = 4   // results in them
	MinEarlier    = 10  // results before the season
	MaxGapWeeks   = 8   // no longer gap before the baseline
	MinConfidence = 0.9 // probability of being faster
	AdultAge      = 18
)

// z80 is the standard normal quantile at 0.9: half the width of a central 80 %
// interval in standard deviations.
const z80 = 1.2815515655446004

// Record is when somebody ran, as the most-improved table needs to know it.
type Record struct {
	Before     int     // results up to WindowWeeks before asOf
	Recent     int     // results since
	Earlier    int     // results before the season
	GapWeeks   float64 // longest gap between neighbouring results among the last MinBefore up to the baseline
	BaselineAt unit.Day
}

// RecordOf counts one runner's eligible results, given their days in ascending
// order. The baseline is the last result WindowWeeks or more before asOf;
// results after asOf are ignored. The gap is looked for among the last
// MinBefore results up to the baseline: somebody who had just come back from a
// break then would only be getting back to where they were.
func RecordOf(days []unit.Day, seasonStart, asOf unit.Day) Record {
	var r Record
	base := -1
	for i, d := range days {
		if d > asOf {
			break
		}
		if d < seasonStart {
			r.Earlier++
		}
		if d <= asOf-7*WindowWeeks {
			r.Before++
			base = i
		} else {
			r.Recent++
		}
	}
	if base < 0 {
		return r
	}
	r.BaselineAt = days[base]
	for i := max(1, base-MinBefore+2); i <= base; i++ {
		r.GapWeeks = max(r.GapWeeks, float64(days[i]-days[i-1])/7)
	}
	return r
}

// Candidate is somebody who may stand in the most-improved table.
type Candidate struct {
	Runner   int32
	Record   Record
	YoungAge int // youngest age that the birth window allows at the end of the window; 0 = not known
	// Change is the difference of form, log seconds now minus log seconds at
	// the baseline (negative is faster), SD its standard deviation, calibrated.
	Change, SD float64
}

// Verdict says why somebody is or isn't in the table.
type Verdict uint8

const (
	Ranked Verdict = iota
	TooFewBefore
	TooFewRecent
	TooFewEarlier
	BreakBefore
	NotAdult
	NotSure
)

// String is what a person reads.
func (v Verdict) String() string {
	switch v {
	case Ranked:
		return "ranked"
	case TooFewBefore:
		return "fewer than 4 results up to 12 weeks ago"
	case TooFewRecent:
		return "fewer than 4 results in the last 12 weeks"
	case TooFewEarlier:
		return "fewer than 10 results before the season"
	case BreakBefore:
		return "a break of over 8 weeks before the comparison begins"
	case NotAdult:
		return "under 18, or age not known"
	case NotSure:
		return "not sure enough to be faster"
	}
	return ""
}

// Improved is one line of the table. Percentages are of time, negative faster.
type Improved struct {
	Runner      int32
	Rank        Rank
	Percent     float64 // 100 × (exp(Change) − 1)
	Best, Least float64 // ends of the central 80 % interval; Least is the cautious one
	Probability float64 // of being faster
	Verdict     Verdict
}

// MostImproved judges candidates and ranks those who pass, by the cautious end
// of the 80 % interval, the most negative first: with little evidence a large
// change ranks below a smaller one that is sure. Change is taken as normally
// distributed, so P(faster) = Φ(−Change/SD). Those who are not ranked follow in
// order of runner, with the first gate they fail.
//
// Example: −2.9 % (−4.2 … −1.6) ranks before −3.8 % (−7.0 … −0.6).
func MostImproved(candidates []Candidate) []Improved {
	out := make([]Improved, 0, len(candidates))
	for _, c := range candidates {
		im := Improved{Runner: c.Runner, Percent: percent(c.Change), Verdict: c.verdict()}
		if c.SD > 0 {
			im.Best, im.Least = percent(c.Change-z80*c.SD), percent(c.Change+z80*c.SD)
			im.Probability = probability(c.Change, c.SD)
		}
		out = append(out, im)
	}
	slices.SortFunc(out, func(a, b Improved) int {
		if (a.Verdict == Ranked) != (b.Verdict == Ranked) {
			if a.Verdict == Ranked {
				return -1
			}
			return 1
		}
		if a.Verdict == Ranked {
			if c := cmp.Compare(a.Least, b.Least); c != 0 {
				return c
			}
		}
		return cmp.Compare(a.Runner, b.Runner)
	})
	for i := range out {
		if out[i].Verdict != Ranked {
			break
		}
		first := i
		for first > 0 && out[first-1].Least == out[i].Least {
			first--
		}
		shared := first < i || i+1 < len(out) && out[i+1].Verdict == Ranked && out[i+1].Least == out[i].Least
		out[i].Rank = Rank{int32(first + 1), shared}
	}
	return out
}

func (c *Candidate) verdict() Verdict {
	switch {
	case c.YoungAge < AdultAge:
		return NotAdult
	case c.Record.Before < MinBefore:
		return TooFewBefore
	case c.Record.Recent < MinRecent:
		return TooFewRecent
	case c.Record.Earlier < MinEarlier:
		return TooFewEarlier
	case c.Record.GapWeeks > MaxGapWeeks:
		return BreakBefore
	case !(c.SD > 0) || !(probability(c.Change, c.SD) > MinConfidence):
		return NotSure
	}
	return Ranked
}

func percent(change float64) float64 { return 100 * math.Expm1(change) }

// probability that a normally distributed change is below zero.
func probability(change, sd float64) float64 { return 0.5 * math.Erfc(change/sd/math.Sqrt2) }
