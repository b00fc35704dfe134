package unit

import "fmt"

// CeilSeconds rounds a running time in milliseconds up to the next whole
// second, as road races are timed: 2:09:44.3 is 2:09:45 (World Athletics
// Technical Rules, rule 19, road races). 24:31.000 stays 24:31.
func CeilSeconds(ms int32) int32 { return (ms + 999) / 1000 }

// Clock prints whole seconds as a results sheet does: 9:05, 24:31, 1:02:03.
func Clock(s int32) string {
	if s < 0 {
		return "-" + Clock(-s)
	}
	if s >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// ClockMS prints milliseconds with the fraction that it has, and no more:
// 24:31, 24:31.2, 24:31.25, 24:31.257.
func ClockMS(ms int32) string {
	if ms < 0 {
		return "-" + ClockMS(-ms)
	}
	s, f := Clock(ms/1000), ms%1000
	switch {
	case f == 0:
		return s
	case f%100 == 0:
		return fmt.Sprintf("%s.%d", s, f/100)
	case f%10 == 0:
		return fmt.Sprintf("%s.%02d", s, f/10)
	}
	return fmt.Sprintf("%s.%03d", s, f)
}

// Gap prints a signed difference of seconds: "+38 s", "-1:05", "0 s".
func Gap(s int32) string {
	sign := "+"
	if s < 0 {
		sign, s = "\u2212", -s
	}
	switch {
	case s == 0:
		return "0 s"
	case s < 60:
		return fmt.Sprintf("%s%d s", sign, s)
	}
	return sign + Clock(s)
}
