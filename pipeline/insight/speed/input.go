package speed

import (
	"fmt"
	"math"
)

// Origin is subtracted from log seconds so that float32 keeps its precision
// where times are: exp(7.5) s is 30:08.
const Origin = 7.5

// EnduranceExponent is the exponent of time = distance^b between distances
// (Riegel 1981, "Athletic Records and Human Endurance", American Scientist
// 69:285-290). It is a mean; nobody in particular has it. It is not estimated:
// every course has an effect of its own and indices are centred within a
// distance, so that knowing an archive's true exponent gains nothing (measured:
// .003 % of course RMSE where it is 1.10 and runners differ by .03).
const EnduranceExponent = 1.06

// referenceM is the distance, in metres, at which times are compared.
const referenceM = 5000

// RunInfo is one run: a course on a day.
type RunInfo struct {
	Course int32 // index into Input.Courses
	Day    int32 // days since any fixed date
}

// CourseInfo is one measured route. A changed route or distance is another
// course.
type CourseInfo struct {
	DistanceM float64 // metres
}

// Input holds the results that count for times, in columns.
//
// Runner r has the results Offsets[r] up to Offsets[r+1], sorted by day and,
// within a day, by run; a runner has at most one result in a run. Runs are
// sorted by course and day. A course without results is allowed, a runner
// without results is not.
type Input struct {
	Offsets []int32      // len runners+1
	Run     []int32      // per result: index into Runs
	LogTime []float32    // per result: LogTime(seconds, distance in metres)
	Runs    []RunInfo    // per run
	Courses []CourseInfo // per course
}

// LogTime gives log(seconds scaled to 5 km) - Origin. Use the measured
// distance of the run where it is known to differ from the course's.
func LogTime(seconds, distanceM float64) float32 {
	return float32(math.Log(seconds) + EnduranceExponent*math.Log(referenceM/distanceM) - Origin)
}

// Seconds is the inverse of LogTime: the time in seconds at distanceM.
func Seconds(logTime, distanceM float64) float64 {
	return math.Exp(logTime + Origin - EnduranceExponent*math.Log(referenceM/distanceM))
}

// Runners is the number of runners.
func (in *Input) Runners() int { return len(in.Offsets) - 1 }

// course of result i.
func (in *Input) course(i int) int32 { return in.Runs[in.Run[i]].Course }

// Check reports the first way in which the columns break their contract.
func (in *Input) Check() error {
	n := len(in.Run)
	if len(in.LogTime) != n {
		return fmt.Errorf("speed: %d run numbers but %d times", n, len(in.LogTime))
	}
	if n == 0 || len(in.Offsets) < 2 || in.Offsets[0] != 0 || int(in.Offsets[len(in.Offsets)-1]) != n {
		return fmt.Errorf("speed: runners' offsets do not cover the %d results", n)
	}
	for e, r := range in.Runs {
		if r.Course < 0 || int(r.Course) >= len(in.Courses) {
			return fmt.Errorf("speed: run %d is on course %d of %d", e, r.Course, len(in.Courses))
		}
		if e > 0 {
			p := in.Runs[e-1]
			if p.Course > r.Course || p.Course == r.Course && p.Day > r.Day {
				return fmt.Errorf("speed: runs %d and %d are not sorted by course and day", e-1, e)
			}
		}
	}
	for c, k := range in.Courses {
		if !(k.DistanceM > 0) {
			return fmt.Errorf("speed: course %d has no distance", c)
		}
	}
	for r := 0; r < in.Runners(); r++ {
		lo, hi := in.Offsets[r], in.Offsets[r+1]
		if hi <= lo {
			return fmt.Errorf("speed: runner %d has no result", r)
		}
		for i := lo; i < hi; i++ {
			e := in.Run[i]
			if e < 0 || int(e) >= len(in.Runs) {
				return fmt.Errorf("speed: result %d is in run %d of %d", i, e, len(in.Runs))
			}
			if y := float64(in.LogTime[i]); math.IsNaN(y) || math.Abs(y) > 5 {
				return fmt.Errorf("speed: result %d has log time %g", i, y)
			}
			if i > lo {
				p := in.Run[i-1]
				a, b := in.Runs[p].Day, in.Runs[e].Day
				if a > b || a == b && p >= e {
					return fmt.Errorf("speed: results %d and %d of runner %d are not sorted by day and run", i-1, i, r)
				}
			}
		}
	}
	return nil
}
