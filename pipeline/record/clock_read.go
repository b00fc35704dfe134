package record

import "math"

// clockReading is one way to read the text of a time cell.
type clockReading uint8

const (
	unread clockReading = iota
	// two parts between colons
	minSec  // 24:31 is 24 min 31 s
	hourMin // 1:02 is 62 min
	// two parts and a fraction
	hourMinDotted // 00:24.31 is 24 min 31 s
	// three parts
	hourMinSec       // 0:24:31
	minSecZero       // 24:31:00 of a stopwatch or spreadsheet that shows minutes as hours
	minSecHundredths // 24:31:57 is 24 min 31.57 s
	// dots
	dottedHMS // 1.02.15
	dottedMSF // 24.31.5
	// numbers
	dottedMinSec   // 24.31 is 24 min 31 s, 25.1 is 25 min 10 s
	decimalMinutes // 24.75 is 24 min 45 s
	dayFraction    // 0.0170254629629630
	decimalHours   // 0.4086
	bareSeconds    // 1471
	bareDigits     // 2431, 10215
	dottedHourMin  // 1.02 is 62 min; only for single rows, never for a column
	milliseconds   // 1471000
	dayMinutes     // 1.02152777777778 is 24:31:00 of a spreadsheet that shows minutes as hours
)

// clockReadings gives each reading the name used in questions and answers, and
// how it is put to a person.
var clockReadings = [...]struct{ name, means string }{
	unread:           {"", ""},
	minSec:           {"mm:ss", "minutes and seconds (24:31)"},
	hourMin:          {"h:mm", "hours and minutes (1:02 is 62 minutes); no seconds are given"},
	hourMinDotted:    {"h:mm.ss", "hours and minutes with a colon, seconds with a dot (00:24.31 is 24 min 31 s)"},
	hourMinSec:       {"h:mm:ss", "hours, minutes and seconds (0:24:31)"},
	minSecZero:       {"mm:ss:00", "minutes and seconds shown as hours (24:31:00 is 24 min 31 s)"},
	minSecHundredths: {"mm:ss:hh", "minutes, seconds and hundredths (24:31:57 is 24 min 31.57 s)"},
	dottedHMS:        {"h.mm.ss", "hours, minutes and seconds with dots (1.02.15)"},
	dottedMSF:        {"mm.ss.f", "minutes, seconds and their fraction with dots (24.31.5)"},
	dottedMinSec:     {"mm.ss", "minutes and seconds with a dot or a comma (24.31 is 24 min 31 s, 25.1 is 25 min 10 s)"},
	decimalMinutes:   {"decimal minutes", "minutes as a decimal number (24.75 is 24 min 45 s)"},
	dayFraction:      {"day fraction", "parts of a day, as a spreadsheet stores times (0.0170254 is 24 min 31 s)"},
	decimalHours:     {"decimal hours", "hours as a decimal number (0.5 is 30 min)"},
	bareSeconds:      {"seconds", "seconds (1471 is 24 min 31 s)"},
	bareDigits:       {"mmss", "minutes and seconds without a mark between (2431 is 24 min 31 s)"},
	milliseconds:     {"milliseconds", "thousandths of a second (1471000 is 24 min 31 s)"},
	dayMinutes:       {"day fraction of mm:ss:00", "parts of a day of times with the minutes as hours (1.0215278 is 24:31:00, which is 24 min 31 s)"},
	dottedHourMin:    {"h.mm", "hours and minutes with a dot (1.02 is 62 minutes)"},
}

// TimeReadings are the answers to the question how the times of a column are written.
func TimeReadings() (names []string) {
	for _, r := range clockReadings[unread+1:] {
		names = append(names, r.name)
	}
	return names
}

// dayDigits is how many decimals a part of a day or of an hour has at least, where one
// cell alone is one: next to no running time has fewer.
const dayDigits = 4

// ofDays says whether a reading takes numbers for parts of a day or of an hour.
func (r clockReading) ofDays() bool {
	return r == dayFraction || r == dayMinutes || r == decimalHours
}

// readingsOf lists the ways to read a shape, the most usual first.
func readingsOf(s clockShape) []clockReading {
	switch s {
	case colon2:
		return []clockReading{minSec, hourMin, hourMinDotted}
	case colon3:
		return []clockReading{hourMinSec, minSecZero, minSecHundredths}
	case dots3:
		return []clockReading{dottedHMS, dottedMSF}
	case number:
		return []clockReading{dottedMinSec, decimalMinutes, dayFraction, bareDigits, bareSeconds, decimalHours, milliseconds, dayMinutes}
	}
	return nil
}

// as gives the running time under one reading. ok is false where the text
// can't be read that way (61 seconds, a fraction where none can be).
func (c *clockCell) as(r clockReading) (ms int32, ok bool) {
	switch r {
	case minSec:
		ms, ok = c.a*60000+c.b*1000+c.fracMS, c.b < 60 && c.a < 1000
	case hourMin:
		ms, ok = c.a*3600000+c.b*60000, c.b < 60 && c.a < 24 && !c.point
	case hourMinDotted:
		s := c.fracMS / 10
		ms, ok = c.a*3600000+c.b*60000+s*1000, c.b < 60 && s < 60 && c.a < 24 && c.fracDigits == 2
	case hourMinSec, dottedHMS:
		ms, ok = c.a*3600000+c.b*60000+c.c*1000+c.fraction(r), (c.b < 60 || c.a == 0 && r == hourMinSec) && c.c < 60 && c.a < 100 // 0:65:11 is 65 minutes
	case minSecZero:
		ms, ok = c.a*60000+c.b*1000, c.b < 60 && c.c == 0 && c.fracMS == 0 && c.a < 1000
	case minSecHundredths:
		f := c.c * 10
		if c.bDigits == 1 {
			f *= 10
		}
		ms, ok = c.a*60000+c.b*1000+f, c.b < 60 && c.c < 100 && c.fracMS == 0 && c.a < 1000
	case dottedMSF:
		ms, ok = c.a*60000+c.b*1000+c.fracMS, c.b < 60
	default:
		return c.asNumber(r)
	}
	return ms, ok && ms > 0
}

func (c *clockCell) fraction(r clockReading) int32 {
	if r == dottedHMS {
		return 0 // the third number is whole seconds
	}
	return c.fracMS
}

// asNumber reads 24.31, 0.017, 1471 and the like.
func (c *clockCell) asNumber(r clockReading) (ms int32, ok bool) {
	v := c.value
	// half is how far the true value may be from the printed one.
	half := 0.5 * math.Pow10(-int(c.fracDigits))
	switch r {
	case dayMinutes:
		m := v * 24 * 60 // a whole number of minutes of the day
		if far := math.Abs(m - math.Round(m)); v > 10 || far > 2*24*60*half+1e-7 || c.fracDigits < 6 && far > 1e-9 {
			return 0, false
		}
		return int32(math.Round(m)) * 1000, m >= 1
	case dottedMinSec, dottedHourMin:
		if c.fracDigits > 4 || c.whole >= 1000 {
			return 0, false
		}
		f := c.frac
		for d := c.fracDigits; d < 5; d++ {
			f *= 10
		}
		if r == dottedHourMin {
			ms, ok = int32(c.whole)*3600000+int32(f/1000)*60000, c.fracDigits == 2 && f < 60000 && c.whole < 24
		} else {
			ms, ok = int32(c.whole)*60000+int32(f), f < 60000
		}
		return ms, ok && ms > 0
	case decimalMinutes:
		ms, ok = simplest(v*60000, half*60000), v < 1000
	case dayFraction:
		ms, ok = simplest(v*86400000, half*86400000), v < 1
	case decimalHours:
		ms, ok = simplest(v*3600000, half*3600000), v < 24 && c.fracDigits > 0
	case milliseconds:
		ms, ok = int32(min(c.whole, maxMS)), c.whole >= 60000 && c.whole < maxMS && c.frac == 0
	case bareSeconds:
		ms, ok = int32(math.Round(min(v, 360000)*1000)), v < 360000
	case bareDigits:
		h, m, s := c.whole/10000, c.whole/100%100, c.whole%100
		if c.whole < 100 || m >= 60 && h > 0 || s >= 60 || h >= 100 {
			return 0, false
		}
		f := c.value - float64(c.whole)
		ms, ok = int32((h*60+m)*60000+s*1000)+int32(math.Round(f*1000)), true
	}
	return ms, ok && ms > 0
}

// simplest is the whole second within half of v, else the tenth, else the
// hundredth, else the nearest millisecond; all in ms. A printed 24.52 minutes
// stands for anything from 24:30.9 to 24:31.5, and the sheet had 24:31.
func simplest(v, half float64) int32 {
	if half < 0.5 {
		return int32(math.Round(v))
	}
	for _, unit := range [...]float64{1000, 100, 10} {
		if r := math.Round(v/unit) * unit; math.Abs(r-v) <= half*(1+1e-9) || unit == 1000 && half >= 500 {
			return int32(r)
		}
	}
	return int32(math.Round(v))
}
