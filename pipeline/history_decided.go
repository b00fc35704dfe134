package pipeline

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/unit"
)

// isOpening says whether a decision is about what was before the sheets.
func (d Decision) isOpening() bool {
	return d.Kind == DecideEarlierRuns || d.Kind == DecideEarlierBest
}

// parseFinishes reads a number of finishes.
func parseFinishes(s string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil || n < 0 || n > 1e6 {
		return 0, fmt.Errorf("finishes %q: write a whole number", s)
	}
	return n, nil
}

// parseEarlierBest reads 24:10, or 24:10 over 10000 m; distanceM is 0 where no
// distance is given.
func parseEarlierBest(s string) (ms int32, distanceM int, err error) {
	clock, over, given := strings.Cut(s, " over ")
	if ms, err = ParseClock(clock); err != nil || !given {
		return ms, 0, err
	}
	distanceM, err = readMetres(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(over), "m")))
	return ms, distanceM, err
}

// openingOf is what an opening balance is about.
type openingOf struct {
	fact      string
	runner    int32 // dense index
	course    int32
	distanceM int32
}

// decided takes the opening balances that the desk has settled, the last word
// on each, and says which they are.
func (o *openings) decided(ds []Decision, find func(string) int32, courses map[string]int32, book *courseBook, f *field) map[openingOf]bool {
	counts, bests := map[openingOf]history.Count{}, map[openingOf]history.Best{}
	asOf := map[int32]unit.Day{}
	for _, d := range ds {
		if !d.isOpening() {
			continue
		}
		r := find(d.Runner)
		if r < 0 {
			continue // the runner's sheets are withdrawn
		}
		course, distance := history.AnyCourse, defaultDistance
		if d.Course != "" {
			c, ok := courses[book.resolve(d.Course)]
			if !ok {
				continue // no sheet of it is loaded
			}
			course, distance = c, int(f.courses[c].distanceM)
		}
		if d.Kind == DecideEarlierRuns {
			n, err := parseFinishes(d.Value)
			if err != nil {
				continue // checked when it was read
			}
			asOf[r] = d.Date // one day for all counts of a runner: the last one said
			k := openingOf{earlierRuns, r, course, int32(distance)}
			counts[k] = history.Count{Runner: r, Course: course, Count: int32(n), AsOf: d.Date}
			continue
		}
		ms, over, err := parseEarlierBest(d.Value)
		if err != nil {
			continue
		}
		if over > 0 {
			distance = over
		}
		k := openingOf{earlierBest, r, course, int32(distance)}
		bests[k] = history.Best{Runner: r, Course: course, DistanceM: int32(distance), TimeS: unit.CeilSeconds(ms), Day: d.Date}
	}
	settled := map[openingOf]bool{}
	for k, c := range counts {
		c.AsOf = asOf[k.runner]
		o.counts, settled[k] = append(o.counts, c), true
	}
	for k, b := range bests {
		o.bests, settled[k] = append(o.bests, b), true
	}
	slices.SortFunc(o.counts, func(a, b history.Count) int {
		return cmp.Or(cmp.Compare(a.Runner, b.Runner), cmp.Compare(a.Course, b.Course))
	})
	slices.SortFunc(o.bests, func(a, b history.Best) int {
		return cmp.Or(cmp.Compare(a.Runner, b.Runner), cmp.Compare(a.Day, b.Day), cmp.Compare(a.TimeS, b.TimeS), cmp.Compare(a.DistanceM, b.DistanceM), cmp.Compare(a.Course, b.Course))
	})
	return settled
}
