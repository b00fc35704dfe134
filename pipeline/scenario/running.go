package scenario

import (
	"math"
	"math/rand/v2"
)

// The running of every district. Times are natural logarithms of seconds over
// 5 km on a plain course on a mild day; 0.01 is about 1 %.
const (
	plainTime  = 7.30  // log seconds of a middling man of 20 to 35: 24:40
	womenSlow  = .12   // women's times against men's
	skillSD    = .19   // between people
	fastest    = -.46  // nobody's skill is below this: about 15:35
	noiseSD    = .018  // of one all-out run: pacing, a poor night
	formSD     = .0029 // drift of form in a week, random walk
	regionSD   = .0085 // weather of a week that a region shares
	localSD    = .0085 // and that one course has to itself
	stormShare = .02   // of region-weeks with a gale, heat or ice
	awayShare  = .15   // of runs away from the home course
	visitRange = .12   // distance over which visits fall to 1/e; courses lie about .08 apart
)

// riegel is the endurance exponent: time grows as distance^1.06 (Riegel 1981,
// "Athletic Records and Human Endurance", American Scientist 69:285-290).
const riegel = 1.06

// distanceTerm is the log of a time over metres against 5 km.
func distanceTerm(metres float64) float64 { return riegel * math.Log(metres/5000) }

// ageTerm is how much slower (log) somebody of an age is than at 18 to 35. It
// follows the shape of road age factors roughly: nothing here is a standard.
func ageTerm(age int) float64 {
	switch {
	case age < 18:
		return .035 * float64(18-age)
	case age > 35:
		y, old := float64(age-35), max(0, float64(age-70))
		return .0065*y + .00010*y*y + .00004*old*old*old
	}
	return 0
}

// improvement is what is left, from 1 to 0, of a beginner's early gain at the
// k-th run: most of it comes between the fifth and the fifteenth.
func improvement(k int) float64 {
	logistic := func(x float64) float64 { return 1 / (1 + math.Exp(-(x-9)/3.5)) }
	l0 := logistic(0)
	return 1 - (logistic(float64(k))-l0)/(1-l0)
}

// habit is how somebody spends effort from week to week.
type habit struct {
	allOut   float32 // share of runs that are all-out
	meanSlow float32 // mean shortfall (log) of the others
}

func drawHabit(r *rand.Rand) habit {
	slow := 0.0
	for range 4 {
		slow += .25 * r.ExpFloat64()
	}
	return habit{
		allOut:   float32(min(.95, max(.02, .36+.2*r.NormFloat64()))),
		meanSlow: float32(.06 * slow),
	}
}

// shortfall is how much slower than all-out (log) one run is. Away on a fast
// course half of the easy runs become all-out ones: people pick a fast course
// for a fast day, which is what makes course comparison hard.
func (h habit) shortfall(r *rand.Rand, fastVisit bool) float64 {
	p := float64(h.allOut)
	if fastVisit {
		p += .5 * (1 - p)
	}
	if r.Float64() < p {
		return 0
	}
	return float64(h.meanSlow) * r.ExpFloat64()
}

// mudSeason is how muddy a day of the year is: 1 in mid-January, 0 from spring
// to autumn. dayOfYear counts from 0.
func mudSeason(dayOfYear int) float64 {
	return max(0, math.Cos(2*math.Pi*float64(dayOfYear-14)/365.25))
}
