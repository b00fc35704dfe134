package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lapwing/pipeline/unit"
)

// numberText writes a stored number as text, without loss: dates as ISO 8601,
// times as h:mm:ss or h:mm:ss.mmm, others as the shortest decimal that reads
// back as the same number.
func numberText(stored string, f format, date1904 bool) string {
	stored = strings.TrimSpace(stored)
	v, err := strconv.ParseFloat(stored, 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return stored
	}
	switch {
	case f == fTime && v >= 1 && (v >= 20000 || math.Mod(math.Round(v*dayMS), 60000) != 0):
		// A day stands before the time, and the sheet shows the time alone.
		// Whole minutes are more likely 24:31 typed as hours and minutes.
		return durationText(v - math.Floor(v))
	case (f == fDateTime || f == fDate) && v > 0 && v < 1:
		// 1900-01-00 00:24:31 is a time on a day that there is not.
		return durationText(v)
	case f == fTime, f == fElapsed:
		return durationText(v)
	case f == fDate || f == fDateTime:
		if text, ok := dateText(v, date1904); ok {
			return text
		}
	case f > fZeros:
		if n := int(f - fZeros); v >= 0 && v == math.Trunc(v) && v < 1e15 {
			return fmt.Sprintf("%0*d", n, int64(v))
		}
	}
	if plainDigits(stored) {
		return stored
	}
	if math.Abs(v) >= 1e15 || v != 0 && math.Abs(v) < 1e-7 {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// plainDigits keeps long whole numbers, such as codes, as they are stored.
func plainDigits(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

const dayMS = 24 * 60 * 60 * 1000

// durationText writes a part of a day as h:mm:ss.mmm. It is rounded to the
// millisecond first: 24:31 is stored as 0.0170254629629630 and must not come
// back as 24:30.999. Hours go beyond 24.
func durationText(days float64) string {
	ms := int64(math.Round(days * dayMS))
	sign := ""
	if ms < 0 {
		sign, ms = "-", -ms
	}
	s := ms / 1000
	text := fmt.Sprintf("%s%d:%02d:%02d", sign, s/3600, s/60%60, s%60)
	if f := ms % 1000; f != 0 {
		text += fmt.Sprintf(".%03d", f)
	}
	return text
}

// dateText writes a serial date (ECMA-376 Part 1, 18.17.4.1): in the 1900
// system 1 is 1 January 1900 and 60 the day 29 February 1900 that never was; in
// the 1904 system 0 is 1 January 1904.
func dateText(v float64, date1904 bool) (string, bool) {
	ms := int64(math.Round(v * dayMS))
	n, rest := ms/dayMS, ms%dayMS
	if v < 0 || n > 2958465 || !date1904 && (n == 60 || n == 0) {
		return "", false
	}
	var d unit.Day
	switch {
	case date1904:
		d = unit.NewDay(1904, 1, 1) + unit.Day(n)
	case n < 60:
		d = unit.NewDay(1899, 12, 31) + unit.Day(n)
	default:
		d = unit.NewDay(1899, 12, 30) + unit.Day(n)
	}
	if rest == 0 {
		return d.String(), true
	}
	s := rest / 1000
	text := fmt.Sprintf("%sT%02d:%02d:%02d", d, s/3600, s/60%60, s%60)
	if f := rest % 1000; f != 0 {
		text += fmt.Sprintf(".%03d", f)
	}
	return text, true
}
