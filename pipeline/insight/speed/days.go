package speed

// Variance components by EM with the diagonal of the posterior variance
// (Dempster, Laird and Rubin 1977; for the t distribution Lange, Little and
// Taylor 1989). For the days this is within 1-2 % of REML.

const (
	fewestRuns    = 10 // below these the starting values stay
	fewestCourses = 5
	leastVariance = 1e-8
)

// updateDays estimates the scale of the conditions, the weight of every run
// and the variance between courses.
func (f *fit) updateDays() {
	df := f.h.DayDF
	sum, n := 0.0, 0
	for e, d := range f.day {
		if f.info[e] == 0 {
			continue
		}
		x := d*d + 1/(f.info[e]+f.dayPrecision(e))
		sum += f.dayWeight[e] * x
		n++
		if !f.gaussian {
			f.dayWeight[e] = (df + 1) / (df + x/f.dayVar)
		}
	}
	if n >= fewestRuns {
		f.dayVar = max(sum/float64(n), leastVariance)
	}
	info := f.courseDiagonal()
	sum, n = 0, 0
	mean := f.level()
	for c, v := range f.course {
		if info[c] == 0 {
			continue
		}
		sum += (v-mean)*(v-mean) + 1/(info[c]+1/f.courseVar)
		n++
	}
	if n >= fewestCourses {
		f.courseVar = max(sum/float64(n-1), leastVariance)
	}
}

// dayPrecision is the prior precision of the conditions of run e.
func (f *fit) dayPrecision(e int) float64 { return f.dayWeight[e] / f.dayVar }

// courseDiagonal is the information on every course after its conditions are
// eliminated, other courses known.
func (f *fit) courseDiagonal() []float64 {
	s := make([]float64, len(f.course))
	for e, d := range f.info {
		p := f.dayPrecision(e)
		s[f.in.Runs[e].Course] += d * p / (d + p)
	}
	return s
}

// level is mu: with a flat prior it is the mean of the course effects that
// have results.
func (f *fit) level() float64 {
	s, n := 0.0, 0
	for c, v := range f.course {
		if f.results[c] > 0 {
			s += v
			n++
		}
	}
	return s / float64(n)
}
