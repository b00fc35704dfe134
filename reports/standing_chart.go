package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// point is one adjusted time at the usual distance, and form as it stood that
// day with its likely range, NaN where not known.
type point struct {
	day             unit.Day
	s               float64
	form, low, high float64
	pb              bool
}

// form is the time of a good effort on an average course and day, over the
// distance of the result, as things stood that day, s; low and high are the ends
// of its 90 % interval. All are NaN where form is not known. Form is held over
// 5 km; the endurance exponent 1.06 of Riegel (1981, "Athletic Records and Human
// Endurance", American Scientist 69:285-290) carries it over.
func (r *ownRow) form() (s, low, high float64) {
	if r.formS == nil || r.formLow == nil || r.formHigh == nil || r.distance <= 0 {
		return math.NaN(), math.NaN(), math.NaN()
	}
	k := math.Pow(float64(r.distance)/5000, enduranceExponent)
	return k * *r.formS, k * *r.formLow, k * *r.formHigh
}

// chartPoints are the adjusted times at the usual distance of the last two
// years, in order.
func (d *standingRows) chartPoints() []point {
	var out []point
	dist := d.usualDistance()
	for i := range d.results {
		r := &d.results[i]
		if r.adjusted != nil && r.countsTime && r.distance == dist && r.day > d.latest-2*365 {
			form, low, high := r.form()
			out = append(out, point{r.day, *r.adjusted, form, low, high, r.pb})
		}
	}
	return out
}

// offChart is how far behind form a time may be before a chart shows it on its
// upper edge only: a walk would squeeze everything else into a few lines.
const offChart = 1.15

// chartRange is the range that a chart shows, in whole half minutes, and whether some
// times lie above it.
func chartRange(p []point) (lo, hi float64, above bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	edge := math.Inf(-1)
	for _, x := range p {
		lo = min(lo, x.s)
		if !math.IsNaN(x.form) {
			lo, hi, edge = min(lo, x.low), max(hi, x.high), max(edge, x.high*offChart)
		}
	}
	for _, x := range p {
		if x.s <= edge || math.IsInf(edge, -1) {
			hi = max(hi, x.s)
		} else {
			above = true
		}
	}
	lo, hi = math.Floor(lo/30)*30, math.Ceil(hi/30)*30
	if hi <= lo {
		hi = lo + 30
	}
	return lo, hi, above
}

// textChart draws the adjusted times and the band of form, slower upwards, in
// plain characters.
func (c *Card) textChart() string {
	const rows, cols = 11, 68
	p := c.chartPoints()
	lo, hi, above := chartRange(p)
	from, to := p[0].day, p[len(p)-1].day
	grid := make([][]byte, rows)
	for i := range grid {
		grid[i] = []byte(strings.Repeat(" ", cols))
	}
	column := func(day unit.Day) int {
		if to == from {
			return 0
		}
		return int(math.Round(float64(day-from) / float64(to-from) * (cols - 1)))
	}
	row := func(s float64) int { return max(0, int(math.Round((hi-s)/(hi-lo)*(rows-1)))) }
	drawn := ""
	for i, x := range p {
		if math.IsNaN(x.form) {
			continue
		}
		drawn = "; form (-) and its likely range (:)"
		// The band runs on to the next result.
		end := column(x.day)
		if i+1 < len(p) && !math.IsNaN(p[i+1].form) {
			end = column(p[i+1].day) - 1
		}
		for col := column(x.day); col <= max(end, column(x.day)); col++ {
			for r := row(x.high); r <= row(x.low); r++ {
				grid[r][col] = ':'
			}
			grid[row(x.form)][col] = '-'
		}
	}
	for _, x := range p {
		mark := byte('o')
		r, col := row(x.s), column(x.day)
		switch {
		case x.s > hi:
			mark = '^'
		case x.pb || grid[r][col] == '*':
			mark = '*'
		}
		grid[r][col] = mark
	}
	if above {
		drawn += "; ^ slower than shown"
	}
	var b strings.Builder
	b.WriteString("\n" + table.Wrap(fmt.Sprintf("Adjusted times over %s (o), those of personal bests (*)%s. Lower is faster.", unit.Distance(c.usualDistance()), drawn), lineWidth) + "\n")
	for i, g := range grid {
		label := strings.Repeat(" ", 8)
		if i%2 == 0 {
			label = fmt.Sprintf("%8s", unit.Clock(int32(math.Round(hi-(hi-lo)*float64(i)/(rows-1)))))
		}
		b.WriteString(strings.TrimRight(label+" |"+string(g), " ") + "\n")
	}
	a, z := from.Time().Format("2 Jan 2006"), to.Time().Format("2 Jan 2006")
	b.WriteString(strings.Repeat(" ", 9) + "+" + strings.Repeat("-", cols) + "\n")
	b.WriteString(strings.Repeat(" ", 10) + a + strings.Repeat(" ", max(1, cols-len(a)-len(z))) + z + "\n")
	return b.String()
}

// svg draws the same for the page.
func (c *Card) svg() string {
	const w, h, left, bottom, top = 640.0, 260.0, 60.0, 46.0, 10.0
	p := c.chartPoints()
	lo, hi, above := chartRange(p)
	from, to := p[0].day, p[len(p)-1].day
	x := func(d unit.Day) float64 {
		if to == from {
			return left
		}
		return left + 6 + float64(d-from)/float64(to-from)*(w-left-14)
	}
	y := func(s float64) float64 { return top + (hi-min(s, hi))/(hi-lo)*(h-top-bottom) }
	var b strings.Builder
	fmt.Fprintf(&b, `<svg viewBox="0 0 %.0f %.0f" role="img" aria-label="Adjusted times over %s from %s to %s; lower is faster"><g font-size="15" fill="#000">`,
		w, h, unit.Distance(c.usualDistance()), from.Long(), to.Long())
	legend := []string{"\u25cf adjusted time", "\u25c6 of a personal best"}
	var line, upper, lower []string
	for _, q := range p {
		if !math.IsNaN(q.form) {
			line = append(line, fmt.Sprintf("%.1f,%.1f", x(q.day), y(q.form)))
			upper = append(upper, fmt.Sprintf("%.1f,%.1f", x(q.day), y(q.high)))
			lower = append(lower, fmt.Sprintf("%.1f,%.1f", x(q.day), y(q.low)))
		}
	}
	if len(line) > 1 {
		slices.Reverse(lower)
		fmt.Fprintf(&b, `<polygon points="%s %s" fill="#ddd"/>`, strings.Join(upper, " "), strings.Join(lower, " "))
		legend = append(legend, "dashes: form", "grey: its likely range")
	}
	step := 30.0
	for (hi-lo)/step > 8 {
		step *= 2
	}
	for s := lo; s <= hi+.5; s += step {
		fmt.Fprintf(&b, `<line x1="%.0f" x2="%.0f" y1="%.1f" y2="%.1f" stroke="#bbb"/><text x="%.0f" y="%.1f" text-anchor="end">%s</text>`,
			left, w-2, y(s), y(s), left-6, y(s)+4, unit.Clock(int32(s)))
	}
	if len(line) > 1 {
		fmt.Fprintf(&b, `<polyline points="%s" fill="none" stroke="#000" stroke-width="1.5" stroke-dasharray="5 3"/>`, strings.Join(line, " "))
	}
	if above {
		legend = append(legend, "\u25b2 slower than shown")
	}
	for _, q := range p {
		if q.s > hi {
			fmt.Fprintf(&b, `<path d="M%.1f %.1fl5 8h-10z" fill="#0072B2"/>`, x(q.day), y(hi))
			continue
		}
		if q.pb {
			fmt.Fprintf(&b, `<path d="M%.1f %.1fl5 5-5 5-5-5z" fill="#D55E00" stroke="#000"/>`, x(q.day), y(q.s)-5)
			continue
		}
		fmt.Fprintf(&b, `<circle cx="%.1f" cy="%.1f" r="3.5" fill="#0072B2"/>`, x(q.day), y(q.s))
	}
	fmt.Fprintf(&b, `<text x="%.0f" y="%.0f">%s</text><text x="%.0f" y="%.0f" text-anchor="end">%s</text>`,
		left, h-bottom+18, from.Time().Format("2 Jan 2006"), w-2, h-bottom+18, to.Time().Format("2 Jan 2006"))
	fmt.Fprintf(&b, `<text x="%.0f" y="%.0f" font-size="13">%s</text></g></svg>`, 0.0, h-5, strings.Join(legend, "; "))
	return b.String()
}
