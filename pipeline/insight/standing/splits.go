package standing

import (
	"fmt"
	"math"
)

// Lengths of a split, in metres.
const (
	Lap400    = 400.0
	Kilometre = 1000.0
	Mile      = 1609.344 // international mile, exact by definition
)

// Split is the clock at a mark on the way.
type Split struct {
	Metres float64
	Tenths int32 // tenths of a second since the start
}

// String prints the clock: 3:00, 6:26.2, 1:02:03.
func (s Split) String() string {
	sec := s.Tenths / 10
	c := fmt.Sprintf("%d:%02d", sec/60, sec%60)
	if sec >= 3600 {
		c = fmt.Sprintf("%d:%02d:%02d", sec/3600, sec/60%60, sec%60)
	}
	if s.Tenths%10 != 0 {
		c += fmt.Sprintf(".%d", s.Tenths%10)
	}
	return c
}

// EvenPace gives the clock at every full length of a course run at an even
// pace, and at the finish. Each mark is worked out from the start and rounded
// once, to the nearest tenth, so roundings don't add up. Distance and length in
// metres, time in seconds; nil if any is not positive.
//
// It is arithmetic for an even pace, not a prescription.
//
// Example: 5 km in 15:00 is 3:00 a kilometre and 72 s every 400 m; in 20:00,
// 4:00, 96 s, and 6:26.2 at the mile.
func EvenPace(distanceM, timeS int32, length float64) []Split {
	if distanceM <= 0 || timeS <= 0 || !(length > 0) {
		return nil
	}
	at := func(metres float64) Split {
		return Split{metres, int32(math.Round(10 * float64(timeS) * metres / float64(distanceM)))}
	}
	var out []Split
	for k := 1; float64(k)*length < float64(distanceM); k++ {
		out = append(out, at(float64(k)*length))
	}
	return append(out, at(float64(distanceM)))
}
