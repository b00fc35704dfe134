package ugly

import (
	"fmt"
	"strconv"
	"strings"
)

// timeStyle is one spelling of times: step is the resolution that it shows in
// milliseconds, write gives the cell of a quantised time; k varies mixed columns.
type timeStyle struct {
	step  int
	write func(ms, k int) cell
}

func (s timeStyle) quantise(ms int) int { return (ms + s.step - 1) / s.step * s.step }

func minSec(ms int) (int, int) { return ms / 60000, ms / 1000 % 60 }

func mss(ms int) string {
	if ms >= 3_600_000 {
		return fmt.Sprintf("%d:%02d:%02d", ms/3_600_000, ms/60000%60, ms/1000%60)
	}
	m, s := minSec(ms)
	return fmt.Sprintf("%d:%02d", m, s)
}

func plain(f func(ms int) string) func(ms, k int) cell {
	return func(ms, _ int) cell { return text(f(ms)) }
}

func inCell(f func(ms int) string, format string) func(ms, k int) cell {
	return func(ms, _ int) cell { return number(f(ms), float64(ms)/86_400_000, format) }
}

func fraction(ms, unit, digits int) string { return fmt.Sprintf("%0*d", digits, ms%1000/unit) }

func trimZeros(s string) string { return strings.TrimRight(strings.TrimRight(s, "0"), ".") }

func dotted(ms int) string { m, s := minSec(ms); return fmt.Sprintf("%d.%02d", m, s) }

// decimalMinutes rounds to 0.01 min, 0.6 s: every whole second has a figure of
// its own, so the second can be told from it.
func decimalMinutes(ms int) string { return fmt.Sprintf("%.2f", float64(ms)/60_000) }

func hms(ms int) string {
	return fmt.Sprintf("%d:%02d:%02d", ms/3_600_000, ms/60000%60, ms/1000%60)
}

func letters(ms int) string {
	m, s := minSec(ms)
	if m >= 60 {
		return fmt.Sprintf("%dh%02dm%02ds", m/60, m%60, s)
	}
	return fmt.Sprintf("%dm%02ds", m, s)
}

func primes(minute, second string) func(int) string {
	return func(ms int) string {
		m, s := minSec(ms)
		return fmt.Sprintf("%d%s%02d%s", m, minute, s, second)
	}
}

func num(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(err) // a style of this package wrote it
	}
	return v
}

var timeStyles = map[string]timeStyle{
	"m:ss":         {1000, plain(mss)},
	"mm:ss":        {1000, plain(func(ms int) string { m, s := minSec(ms); return fmt.Sprintf("%02d:%02d", m, s) })},
	"m:ss-over-60": {1000, plain(func(ms int) string { m, s := minSec(ms); return fmt.Sprintf("%d:%02d", m, s) })},
	"h:mm:ss":      {1000, plain(hms)},
	"hh:mm:ss":     {1000, plain(func(ms int) string { return "0" + hms(ms) })},
	"tenths":       {100, plain(func(ms int) string { return mss(ms) + "." + fraction(ms, 100, 1) })},
	"hundredths":   {10, plain(func(ms int) string { return mss(ms) + "." + fraction(ms, 10, 2) })},
	"thousandths":  {1, plain(func(ms int) string { return mss(ms) + "." + fraction(ms, 1, 3) })},
	"comma":        {100, plain(func(ms int) string { return mss(ms) + "," + fraction(ms, 100, 1) })},
	"letters":      {1000, plain(letters)},
	"words": {1000, plain(func(ms int) string {
		m, s := minSec(ms)
		if m >= 60 {
			return fmt.Sprintf("%d h %d min %d s", m/60, m%60, s)
		}
		return fmt.Sprintf("%d min %d s", m, s)
	})},
	"primes":             {1000, plain(primes("'", "\""))},
	"typographic-primes": {1000, plain(primes("′", "″"))},
	"mm.ss":              {1000, plain(dotted)},
	"mm.ss-lost":         {1000, plain(func(ms int) string { return trimZeros(dotted(ms)) })},
	"mm,ss-lost":         {1000, plain(func(ms int) string { return strings.Replace(trimZeros(dotted(ms)), ".", ",", 1) })},
	"h.mm.ss":            {1000, plain(func(ms int) string { return strings.ReplaceAll(hms(ms), ":", ".") })},
	"decimal":            {1000, plain(decimalMinutes)},
	"decimal-comma":      {1000, plain(func(ms int) string { return strings.Replace(decimalMinutes(ms), ".", ",", 1) })},
	"fraction":           {1000, plain(func(ms int) string { return strconv.FormatFloat(float64(ms)/86_400_000, 'g', 15, 64) })},
	"seconds":            {1000, plain(func(ms int) string { return strconv.Itoa(ms / 1000) })},
	"seconds-tenths":     {100, plain(func(ms int) string { return fmt.Sprintf("%d.%d", ms/1000, ms%1000/100) })},
	"stopwatch":          {1000, plain(func(ms int) string { m, s := minSec(ms); return fmt.Sprintf("%d:%02d:00", m, s) })},
	"centiseconds":       {10, plain(func(ms int) string { m, s := minSec(ms); return fmt.Sprintf("%02d:%02d:%s", m, s, fraction(ms, 10, 2)) })},
	"iso8601": {1000, plain(func(ms int) string {
		m, s := minSec(ms)
		if m >= 60 {
			return fmt.Sprintf("PT%dH%dM%dS", m/60, m%60, s)
		}
		return fmt.Sprintf("PT%dM%dS", m, s)
	})},
	"mixed": {1000, func(ms, k int) cell {
		switch k % 6 {
		case 0:
			return text(letters(ms))
		case 1:
			return text(hms(ms))
		case 2:
			return text(dotted(ms))
		case 3:
			return text(primes("'", "\"")(ms))
		}
		return text(mss(ms))
	}},
	"short-hour": {1000, plain(func(ms int) string {
		if ms >= 3_600_000 { // "1:02" for an hour and two minutes, after 59:41
			return fmt.Sprintf("%d:%02d", ms/3_600_000, ms/60000%60)
		}
		return mss(ms)
	})},
	"spaced":  {1000, plain(func(ms int) string { m, s := minSec(ms); return fmt.Sprintf(" %d : %02d ", m, s) })},
	"min-sec": {1000, plain(mss)}, // in two columns
	"suffix": {1000, func(ms, k int) cell {
		return text(mss(ms) + []string{"", "", "", "*", " PB", " SB", " (PB)"}[k%7])
	}},

	"cell":           {1000, inCell(hms, "h:mm:ss")},
	"cell-mm:ss":     {1000, inCell(func(ms int) string { m, s := minSec(ms); return fmt.Sprintf("%02d:%02d", m%60, s) }, "mm:ss")},
	"cell-elapsed":   {1000, inCell(hms, "[h]:mm:ss")},
	"cell-tenths":    {100, inCell(func(ms int) string { m, s := minSec(ms); return fmt.Sprintf("%02d:%02d.%d", m%60, s, ms%1000/100) }, "mm:ss.0")},
	"cell-general":   {1000, inCell(func(ms int) string { return strconv.FormatFloat(float64(ms)/86_400_000, 'g', 10, 64) }, "")},
	"cell-stopwatch": {1000, func(ms, _ int) cell { m, s := minSec(ms); return asHours(m, s) }},
	// typed as 24:31 and taken for hours by the spreadsheet; the walker's 1:02:15 was understood
	"cell-stopwatch-mixed": {1000, func(ms, _ int) cell {
		if ms >= 3_600_000 {
			return number(hms(ms), float64(ms)/86_400_000, "[h]:mm:ss")
		}
		m, s := minSec(ms)
		return asHours(m, s)
	}},
	"cell-mm.ss":   {1000, func(ms, _ int) cell { return number(dotted(ms), num(dotted(ms)), "0.00") }},
	"cell-decimal": {1000, func(ms, _ int) cell { return number(trimZeros(decimalMinutes(ms)), num(decimalMinutes(ms)), "") }},
	"cell-seconds": {1000, func(ms, _ int) cell { return integer(ms / 1000) }},
	"cell-date-and-time": {1000, func(ms, _ int) cell { // the day nought of some exporters
		return number("1899-12-31 "+hms(ms), 1+float64(ms)/86_400_000, "yyyy-mm-dd h:mm:ss")
	}},
	"cell-mixed": {1000, func(ms, k int) cell {
		switch k % 4 {
		case 0:
			return text(mss(ms))
		case 1:
			return text("'" + hms(ms))
		}
		return number(hms(ms), float64(ms)/86_400_000, "h:mm:ss")
	}},
}

func asHours(m, s int) cell {
	return number(fmt.Sprintf("%d:%02d:00", m, s), float64(m*60+s)/1440, "[h]:mm:ss")
}

// quantiseTime gives the time that a style can show; hours may lose their seconds.
func quantiseTime(style string, ms int) int {
	ms = timeStyles[style].quantise(ms)
	if style == "short-hour" && ms >= 3_600_000 {
		ms = (ms + 59_999) / 60_000 * 60_000
	}
	return ms
}
