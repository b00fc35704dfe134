package record

import "math"

// openStandard is one row of the road-running open standards, edition 2025:
// the age-grading tables of Alan Jones and Tom Bernhard (approved by the
// Masters Long Distance Running council of USA Track & Field, 10 January 2025;
// men's version of 27 July 2025; CC0).
type openStandard struct {
	distanceM  float64
	men, women float64 // seconds
}

var openStandards = [...]openStandard{
	{1609.344, 227, 253}, {5000, 769, 834}, {6000, 930, 1010}, {6437.376, 1000, 1087}, {8000, 1255, 1365}, {8046.72, 1264, 1375},
	{10000, 1584, 1726}, {11265.408, 1790, 1950}, {12000, 1915, 2084}, {15000, 2415, 2629}, {16093.44, 2595, 2832}, {20000, 3260, 3557},
	{21097.5, 3451, 3772}, {25000, 4110, 4500}, {30000, 4980, 5450}, {42195, 7235, 7796},
}

// FastestMS is the open standard of a distance in milliseconds: the women's
// for W, the men's for everybody else. Between tabled distances the pace is
// interpolated over log distance. Under one mile, where nothing is tabled, it
// is 0.85 of the mile's pace, which no runner reaches; beyond the marathon,
// the marathon's pace.
func FastestMS(distanceM int, sex Sex) int32 {
	pace := func(s openStandard) float64 {
		if sex == W {
			return s.women / s.distanceM
		}
		return s.men / s.distanceM
	}
	d := float64(distanceM)
	t := openStandards[:]
	switch {
	case d < t[0].distanceM:
		return int32(850 * d * pace(t[0]))
	case d >= t[len(t)-1].distanceM:
		return int32(1000 * d * pace(t[len(t)-1]))
	}
	i := 1
	for t[i].distanceM <= d {
		i++
	}
	u := math.Log(d/t[i-1].distanceM) / math.Log(t[i].distanceM/t[i-1].distanceM)
	return int32(1000 * d * (pace(t[i-1])*(1-u) + pace(t[i])*u))
}

// plausibility scores running times for one distance, to choose between
// readings of the same text. It decides nothing about a person: slow is never
// impossible.
type plausibility struct {
	fastest float64 // ms
	typical float64 // ms
}

// newPlausibility takes a community field to be centred at 28:00 for 5 km
// (common practice, no source), carried to other distances by Riegel's
// exponent 1.06 (P. S. Riegel, "Athletic records and human endurance",
// American Scientist 69, 1981, p. 285).
func newPlausibility(distanceM int) plausibility {
	if distanceM <= 0 {
		distanceM = 5000
	}
	return plausibility{float64(FastestMS(distanceM, M)), 1_680_000 * math.Pow(float64(distanceM)/5000, 1.06)}
}

// implausible is the score at and below which a time is not a running time of
// this distance.
const implausible = -12.0

// score is the log density of a log-normal with sd 0.3, without its constant.
// From the floor down, and for times faster than the open standard, it falls
// only gently: one absurd cell must not outvote a column.
func (p plausibility) score(ms int32) float64 {
	if ms <= 0 {
		return 2 * implausible
	}
	x := math.Abs(math.Log(float64(ms)/p.typical) / 0.3)
	if -x*x/2 <= implausible || float64(ms) < p.fastest {
		return implausible - 0.1*x
	}
	return -x * x / 2
}
