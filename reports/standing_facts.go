package reports

import "math"

// CardFacts is what a card says, for other programs. Times are in seconds; what
// is not known is left out. Of anybody who may be under 18 there are bests only.
type CardFacts struct {
	Group    string         `json:"group,omitempty"`
	Season   string         `json:"season_from"`
	Bests    []CardBest     `json:"bests"`
	FormS    *float64       `json:"form_s,omitempty"` // good effort over 5 km, average course and day
	FormLow  *float64       `json:"form_low,omitempty"`
	FormHigh *float64       `json:"form_high,omitempty"`
	Change   *float64       `json:"change_pct,omitempty"` // of form over 12 weeks, negative is faster
	PFaster  *float64       `json:"p_faster,omitempty"`
	PLevel   *float64       `json:"p_level,omitempty"` // changed by less than 2 %
	Standing []CardRank     `json:"standing,omitempty"`
	Expected []CardExpected `json:"expected,omitempty"`
}

// CardBest is the best at a distance.
type CardBest struct {
	DistanceM int32 `json:"distance_m"`
	TimeS     int32 `json:"time_s"`
}

// CardRank is a place within the age group; Course "" is all courses.
type CardRank struct {
	Course    string `json:"course,omitempty"`
	DistanceM int32  `json:"distance_m"`
	By        string `json:"by"`
	Season    bool   `json:"this_season"`
	Rank      int32  `json:"rank"`
	Shared    bool   `json:"shared"`
	Of        int    `json:"of"`
	AheadPct  *int   `json:"ahead_pct,omitempty"` // from ten people on
}

// CardExpected is the time to expect of a good effort on a course on an average
// day, with its 90 % interval.
type CardExpected struct {
	Course    string  `json:"course"`
	DistanceM int32   `json:"distance_m"`
	Seconds   float64 `json:"expected_s"`
	Low       float64 `json:"low_s"`
	High      float64 `json:"high_s"`
}

// Facts are the figures of the card.
func (c *Card) Facts() CardFacts {
	f := CardFacts{Group: groupLabel(c.sex, c.group), Season: c.from.String(), Bests: []CardBest{}}
	for _, dist := range c.distances() {
		f.Bests = append(f.Bests, CardBest{dist, c.bestAt(dist)})
	}
	if c.protected {
		return f
	}
	f.FormS, f.FormLow, f.FormHigh, f.PFaster, f.PLevel = c.formS, c.formLow, c.formHigh, c.pFaster, c.pLevel
	if c.change != nil {
		p := 100 * math.Expm1(*c.change)
		f.Change = &p
	}
	c.eachRank(func(in standIn, r ranking) {
		x := CardRank{Course: in.course, DistanceM: in.distance, By: in.measure, Season: in.season, Rank: r.rank.N, Shared: r.rank.Shared, Of: r.of}
		if p, ok := r.ahead.Num(); ok {
			n := int(p)
			x.AheadPct = &n
		}
		f.Standing = append(f.Standing, x)
	})
	for i := range c.courses {
		if s, low, high, ok := c.expected(&c.courses[i]); ok {
			f.Expected = append(f.Expected, CardExpected{c.courses[i].course, c.courses[i].distance, s, low, high})
		}
	}
	return f
}
