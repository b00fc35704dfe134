package speed

import (
	"context"
	"math"

	"lapwing/pipeline/parallel"
)

// Form is what the fit says about a runner now.
type Form struct {
	Log     float64 // log seconds at 5 km, less Origin, of a good effort on a mean course and day
	SD      float64 // calibrated, at the last result
	LastDay int32
	Results int32

	// Change of form over changeWeeks: the last result against the latest one
	// at least that long before. HasChange is false where there is none.
	HasChange bool
	Change    float64 // log time, negative is faster
	ChangeSD  float64 // calibrated
	Before    int32   // results at least changeWeeks before the last
	Within    int32   // results in the last changeWeeks
	Gap       int32   // longest gap in days between the results compared
}

// Trend is what may be said of a runner's change of form.
type Trend uint8

const (
	CannotTell Trend = iota
	Improved         // faster with probability over .9
	Improving        // … over .8
	Level            // within 2 % with probability over .8
	Slower           // slower with probability over .8
	MuchSlower       // … over .9
	LongGap          // back after more than 8 weeks; form from before may not hold
)

// String is the trend in the words of a runner's card.
func (t Trend) String() string {
	return [...]string{
		"can't tell yet", "faster than 12 weeks ago", "improving", "holding level",
		"likely slower than 12 weeks ago", "slower than 12 weeks ago", "back after a gap",
	}[t]
}

const (
	changeWeeks    = 12
	changeDays     = 7 * changeWeeks
	fewestEachSide = 4
	levelBand      = .02
	gapDays        = 8 * 7

	// Form is shown while it is known to formSD and not older than formDays.
	formSD   = .04
	formDays = 26 * 7
)

// Seconds is form as a time in seconds over 5 km.
func (f Form) Seconds() float64 { return Seconds(f.Log, referenceM) }

// SDOn is the standard error of form on a day at or after the last result:
// form wanders on while nobody measures it.
func (f Form) SDOn(day int32, h Hyper) float64 {
	weeks := float64(max(0, day-f.LastDay)) / 7
	return math.Sqrt(f.SD*f.SD + formFactor*formFactor*h.FormWeek*h.FormWeek*weeks)
}

// ShownOn says whether form may be shown on a day.
func (f Form) ShownOn(day int32, h Hyper) bool {
	return day-f.LastDay <= formDays && f.SDOn(day, h) <= formSD
}

// Faster is the probability that form is better than changeWeeks before.
func (f Form) Faster() float64 {
	if !f.HasChange {
		return math.NaN()
	}
	return normalCDF(-f.Change / f.ChangeSD)
}

// Unchanged is the probability that form is within 2 % of what it was.
func (f Form) Unchanged() float64 {
	if !f.HasChange {
		return math.NaN()
	}
	return normalCDF((levelBand-f.Change)/f.ChangeSD) - normalCDF((-levelBand-f.Change)/f.ChangeSD)
}

// Trend applies the thresholds. It claims nothing with fewer than four
// results on either side, which is where the thresholds were calibrated.
func (f Form) Trend() Trend {
	if !f.HasChange || f.Before < fewestEachSide || f.Within < fewestEachSide {
		return CannotTell
	}
	if f.Gap > gapDays {
		return LongGap
	}
	switch p := f.Faster(); {
	case p > .9:
		return Improved
	case p > .8:
		return Improving
	case p < .1:
		return MuchSlower
	case p < .2:
		return Slower
	}
	if f.Unchanged() > .8 {
		return Level
	}
	return CannotTell
}

func normalCDF(z float64) float64 { return .5 * math.Erfc(-z/math.Sqrt2) }

// formCentres gives, for every course, the effect of the mean course of its
// network on which form is stated: the mean of the network's 5 km courses, or
// of its distance with most results where it has none.
func formCentres(info []CourseInfo, courses []Course) []float64 {
	size := map[int32]int64{}
	for c, k := range courses {
		size[k.Group] += int64(k.Results)
		if info[c].DistanceM == referenceM {
			size[k.Group] += 1 << 40 // 5 km goes first
		}
	}
	best, centre := map[int32]int64{}, map[int32]float64{}
	for _, k := range courses {
		if top, ok := best[k.Network]; !ok || size[k.Group] > top {
			best[k.Network] = size[k.Group]
			centre[k.Network] = k.Raw - k.Effect
		}
	}
	out := make([]float64, len(courses))
	for c, k := range courses {
		out[c] = centre[k.Network]
	}
	return out
}

// forms smooths every chain and reads form and its change at the last result.
// centre is the effect of the mean course, per course of the runner's network.
func (f *fit) forms(ctx context.Context, centre []float64) ([]Form, error) {
	out := make([]Form, f.in.Runners())
	prior := 1 / (f.h.RunnerSD * f.h.RunnerSD)
	err := parallel.EachUntil(ctx, partCount, f.threads, func(p int) {
		var ch chain
		for r := f.parts[p].lo; r < f.parts[p].hi; r++ {
			f.smooth(&ch, r, prior)
			out[r] = f.form(&ch, r, centre[f.home[r]])
		}
	})
	return out, err
}

// smooth fills the chain of runner r from the present sites and effects.
func (f *fit) smooth(ch *chain, r int, prior float64) {
	a, b := int(f.in.Offsets[r]), int(f.in.Offsets[r+1])
	ch.resize(b - a)
	for i := range ch.w {
		ch.w[i] = float64(f.w[a+i])
		ch.zeta[i] = float64(f.z[a+i]) - f.effect[f.in.Run[a+i]]
	}
	ch.smooth(prior, f.step[a:b])
}

// form reads a smoothed chain.
func (f *fit) form(ch *chain, r int, centre float64) Form {
	a := int(f.in.Offsets[r])
	last := len(ch.w) - 1
	day := func(i int) int32 { return f.in.Runs[f.in.Run[a+i]].Day }
	m := Form{
		Log: centre + ch.mean[last], SD: formFactor * math.Sqrt(ch.vari[last]),
		LastDay: day(last), Results: int32(last + 1),
	}
	carry, gap := 1.0, int32(0)
	for i := last - 1; i >= 0; i-- {
		carry *= ch.gain[i]
		gap = max(gap, day(i+1)-day(i))
		if m.LastDay-day(i) < changeDays {
			continue
		}
		v := ch.vari[last] + ch.vari[i] - 2*carry*ch.vari[last]
		m.HasChange, m.Gap = true, gap
		m.Change = ch.mean[last] - ch.mean[i]
		m.ChangeSD = changeFactor * math.Sqrt(max(v, changeFloor))
		m.Before, m.Within = int32(i+1), int32(last-i)
		break
	}
	return m
}
