package unit

import (
	"fmt"
	"math"
	"strconv"
)

// Mile in metres: the international yard and pound agreement of 1959.
const Mile = 1609.344

// Distance prints whole metres as a course is spoken of: "5 km", "1.5 km", "1 mile",
// "4 miles" (within a metre), else "5012 m".
func Distance[T int | int32](metres T) string {
	if metres%100 == 0 {
		return strconv.FormatFloat(float64(metres)/1000, 'f', -1, 64) + " km"
	}
	switch n := math.Round(float64(metres) / Mile); {
	case n < 1 || math.Abs(n*Mile-float64(metres)) >= 1:
		return fmt.Sprintf("%d m", metres)
	case n == 1:
		return "1 mile"
	default:
		return fmt.Sprintf("%.0f miles", n)
	}
}
