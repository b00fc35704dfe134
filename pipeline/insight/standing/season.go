package standing

import (
	"cmp"
	"slices"

	"lapwing/pipeline/unit"
)

// Time is one eligible time of a runner.
type Time struct {
	Runner int32
	Day    unit.Day
	TimeS  int32 // seconds, rounded up
	Row    int32 // any number that tells results apart, such as the index of the result
}

// SeasonBests gives each runner's season best: the lowest time, the earliest
// day holding a tie (on one day, the lower Row). The caller passes the eligible
// times of one season, distance and list; the outcome is sorted by runner.
func SeasonBests(times []Time) []Time {
	best := map[int32]Time{}
	for _, t := range times {
		if t.TimeS <= 0 {
			continue
		}
		if b, ok := best[t.Runner]; !ok || cmp.Or(cmp.Compare(t.TimeS, b.TimeS), cmp.Compare(t.Day, b.Day), cmp.Compare(t.Row, b.Row)) < 0 {
			best[t.Runner] = t
		}
	}
	out := make([]Time, 0, len(best))
	for _, t := range best {
		out = append(out, t)
	}
	slices.SortFunc(out, func(a, b Time) int { return cmp.Compare(a.Runner, b.Runner) })
	return out
}
