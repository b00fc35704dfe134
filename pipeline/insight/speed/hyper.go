package speed

import "fmt"

// Hyper holds the quantities that the fit takes as given. Standard deviations
// and means are of log time, so .01 is about 1 %.
type Hyper struct {
	Sigma      float64 // sd of an all-out time around form, course and day
	MeanSlow   float64 // mean shortfall of a result that is not all-out
	Share      float64 // all-out share before any course is known
	WalkShare  float64 // share of walks, buggies and the like
	MeanWalk   float64 // mean shortfall of those
	GrossShare float64 // share of times that are somebody else's
	GrossSD    float64 // extra sd of those
	FormWeek   float64 // sd of the change of form in a week
	FormNew    float64 // extra sd per run for somebody new, fading over 12 runs
	RunnerSD   float64 // sd between runners
	DaySD      float64 // scale of the conditions; where the fit starts
	CourseSD   float64 // sd between courses; where the fit starts
	DayDF      float64 // degrees of freedom of the conditions
	SharePrior float64 // pseudo-results that hold a course's share to what is expected of it
}

// Defaults are the values that archives too small to tune keep. They come
// from simulated clubs, not from any real event's results.
func Defaults() Hyper {
	return Hyper{
		Sigma: .0162, MeanSlow: .0558, Share: .47,
		WalkShare: .036, MeanWalk: .35,
		GrossShare: .002, GrossSD: .25,
		FormWeek: .0047, FormNew: .008,
		RunnerSD: .205, DaySD: .012, CourseSD: .05,
		DayDF: 4, SharePrior: 25,
	}
}

// Field is one of the fixed quantities, by the name it is kept under, with the
// bounds of what the model can work with.
type Field struct {
	Name   string
	Value  *float64
	lo, hi float64
}

// Fields lists the quantities of h in a fixed order. A change through Value
// changes h.
func (h *Hyper) Fields() []Field {
	return []Field{
		{"sigma", &h.Sigma, 1e-4, 2}, {"mean_slow", &h.MeanSlow, 1e-3, 1}, {"share", &h.Share, .01, .99},
		{"walk_share", &h.WalkShare, 0, .5}, {"mean_walk", &h.MeanWalk, .01, 2},
		{"gross_share", &h.GrossShare, 1e-6, .2}, {"gross_sd", &h.GrossSD, .01, 2},
		{"form_week", &h.FormWeek, 0, 1}, {"form_new", &h.FormNew, 0, 1},
		{"runner_sd", &h.RunnerSD, 1e-3, 10}, {"day_sd", &h.DaySD, 1e-6, 10}, {"course_sd", &h.CourseSD, 1e-6, 10},
		{"day_df", &h.DayDF, 1, 1e9}, {"share_prior", &h.SharePrior, 0, 1e9},
	}
}

// Check reports a value that the model cannot work with.
func (h Hyper) Check() error {
	for _, f := range h.Fields() {
		if !(*f.Value >= f.lo && *f.Value <= f.hi) {
			return fmt.Errorf("speed: %s is %g, must be between %g and %g", f.Name, *f.Value, f.lo, f.hi)
		}
	}
	return nil
}

// mixture is the density of the residual that goes with h.
func (h Hyper) mixture() mixture {
	return mixture{rate: 1 / h.MeanSlow, walkRate: 1 / h.MeanWalk, grossVar: h.GrossSD * h.GrossSD}
}

// weights of the four components where the all-out share is share.
func (h Hyper) weights(share float64) Components {
	rest := 1 - h.WalkShare - h.GrossShare
	return Components{AllOut: share * rest, Slow: (1 - share) * rest, Walk: h.WalkShare, Gross: h.GrossShare}
}
