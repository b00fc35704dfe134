package speed

import "math"

// Effort says how hard one result looks, for the runner's own card only.
type Effort uint8

const (
	Unclear Effort = iota // no component reaches one half, or too few results
	Full                  // near recent best
	Steady                // behind it, by up to 8 %
	Easy                  // well behind it
)

// String is the code that exports use.
func (e Effort) String() string { return [...]string{"unclear", "full", "steady", "easy"}[e] }

const (
	fewestForEffort = 4
	steadyShortfall = 8  // per cent
	likely          = .5 // a component's probability
)

// Figure is what the fit says about one result.
type Figure struct {
	Form      float64    // log seconds at 5 km, less Origin, of a good effort on a mean course and day, at that time
	FormSD    float64    // calibrated
	Shortfall float64    // per cent behind form on that course and day, negative ahead
	Odds      Components // probabilities of the components, given the runner's other results
	Effort    Effort
	Adjusted  float64 // seconds over the course's distance on its group's mean course on a mean day; NaN where not stated
}

// WrongOwner says that the time more likely belongs to somebody else. Such a
// result is kept out of adjusted bests.
func (f Figure) WrongOwner() bool { return f.Odds.Gross > likely }

// FormBand gives form at the result and its 90 % interval as times in seconds
// over 5 km. It is false where form is not known well enough to be shown.
func (f Figure) FormBand() (seconds, low, high float64, ok bool) {
	at := func(x float64) float64 { return Seconds(x, referenceM) }
	return at(f.Form), at(f.Form - z90*f.FormSD), at(f.Form + z90*f.FormSD), f.FormSD <= formSD
}

// Figures gives one figure for each result of runner r, in the order of the
// input, appended to out[:0]. It may be called from several goroutines.
func (m *Model) Figures(r int, out []Figure) []Figure {
	f := m.f
	a := int(f.in.Offsets[r])
	var ch chain
	f.smooth(&ch, r, 1/(f.h.RunnerSD*f.h.RunnerSD))
	centre := m.centre[f.home[r]]
	s2 := f.h.Sigma * f.h.Sigma
	out = out[:0]
	for i := range ch.w {
		run := f.in.Run[a+i]
		course := f.in.Runs[run].Course
		y := float64(f.in.LogTime[a+i])
		k := ch.cavity(i)
		_, _, odds := f.mix.score(y-f.effect[run]-k.mean, s2+k.vari, f.h.weights(f.share[f.group(r, run)]))
		g := Figure{
			Form: centre + ch.mean[i], FormSD: formFactor * math.Sqrt(ch.vari[i]),
			Shortfall: Percent(y - f.effect[run] - ch.mean[i]),
			Odds:      odds, Adjusted: math.NaN(),
		}
		g.Effort = effort(odds, g.Shortfall, len(ch.w))
		if c := m.Courses[course]; m.Runs[run].Stated && c.adjustable() {
			g.Adjusted = Seconds(y-c.Effect-f.day[run], f.in.Courses[course].DistanceM)
		}
		out = append(out, g)
	}
	return out
}

// adjustable says whether a time on the course can be carried to the mean
// course of its group. A course on its own is its own mean.
func (c Course) adjustable() bool {
	return c.Standing != NoIndex || c.Reason == NothingAlike
}

// effort names the component that is likelier than all others together.
func effort(p Components, shortfall float64, results int) Effort {
	switch {
	case results < fewestForEffort:
		return Unclear
	case p.AllOut >= likely:
		return Full
	case p.Slow < likely && p.Walk < likely:
		return Unclear
	case shortfall <= steadyShortfall:
		return Steady
	}
	return Easy
}
