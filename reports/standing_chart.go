package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// point is one adjusted time at the usual distance, and what a good effort
// would have taken on that day, NaN where not known.
type point struct {
	day  unit.Day
	s    float64
	form float64
	pb   bool
}

// form is the time of a good effort of that day on an average course and day,
// over the distance of the result: the adjusted time without its shortfall.
func (r *ownRow) form() float64 {
	if r.adjusted == nil || r.shortfall == nil {
		return math.NaN()
	}
	return *r.adjusted / (1 + *r.shortfall/100)
}

// chartPoints are the adjusted times at the usual distance of the last two
// years, in order.
func (d *standingRows) chartPoints() []point {
	var out []point
	dist := d.usualDistance()
	for _, r := range d.results {
		if r.adjusted != nil && r.countsTime && r.distance == dist && r.day > d.latest-2*365 {
			out = append(out, point{r.day, *r.adjusted, r.form(), r.pb})
		}
	}
	return out
}

// band is the range that a chart shows, in whole half minutes.
func band(p []point) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, x := range p {
		lo, hi = min(lo, x.s), max(hi, x.s)
		if !math.IsNaN(x.form) {
			lo, hi = min(lo, x.form), max(hi, x.form)
		}
	}
	lo, hi = math.Floor(lo/30)*30, math.Ceil(hi/30)*30
	if hi <= lo {
		hi = lo + 30
	}
	return lo, hi
}

// textChart draws the adjusted times, slower upwards, in plain characters.
func (c *Card) textChart() string {
	const rows, cols = 9, 68
	p := c.chartPoints()
	lo, hi := band(p)
	from, to := p[0].day, p[len(p)-1].day
	grid := make([][]byte, rows)
	for i := range grid {
		grid[i] = []byte(strings.Repeat(" ", cols))
	}
	at := func(day unit.Day, s float64) (row, col int) {
		if to > from {
			col = int(math.Round(float64(day-from) / float64(to-from) * (cols - 1)))
		}
		return int(math.Round((hi - s) / (hi - lo) * (rows - 1))), col
	}
	drawn := ""
	for _, x := range p {
		if !math.IsNaN(x.form) {
			row, col := at(x.day, x.form)
			grid[row][col], drawn = '-', ", form (-)"
		}
	}
	for _, x := range p {
		row, col := at(x.day, x.s)
		mark := byte('o')
		if x.pb || grid[row][col] == '*' {
			mark = '*'
		}
		grid[row][col] = mark
	}
	var b strings.Builder
	b.WriteString("\n" + table.Wrap(fmt.Sprintf("Adjusted times over %s (o), those of personal bests (*)%s; lower is faster", distance(c.usualDistance()), drawn), lineWidth) + "\n")
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
	lo, hi := band(p)
	from, to := p[0].day, p[len(p)-1].day
	x := func(d unit.Day) float64 {
		if to == from {
			return left
		}
		return left + 6 + float64(d-from)/float64(to-from)*(w-left-14)
	}
	y := func(s float64) float64 { return top + (hi-s)/(hi-lo)*(h-top-bottom) }
	var b strings.Builder
	fmt.Fprintf(&b, `<svg viewBox="0 0 %.0f %.0f" role="img" aria-label="Adjusted times over %s from %s to %s; lower is faster"><g font-size="15" fill="#000">`,
		w, h, distance(c.usualDistance()), from.Time().Format("2 January 2006"), to.Time().Format("2 January 2006"))
	step := 30.0
	for (hi-lo)/step > 8 {
		step *= 2
	}
	for s := lo; s <= hi+.5; s += step {
		fmt.Fprintf(&b, `<line x1="%.0f" x2="%.0f" y1="%.1f" y2="%.1f" stroke="#ccc"/><text x="%.0f" y="%.1f" text-anchor="end">%s</text>`,
			left, w-2, y(s), y(s), left-6, y(s)+4, unit.Clock(int32(s)))
	}
	legend := []string{"\u25cf adjusted time", "\u25c6 adjusted time of a personal best"}
	if c.formS != nil && c.formLow != nil && c.formHigh != nil && c.usualDistance() == 5000 {
		// How sure form is, is known for today only: a bar at the right edge.
		fmt.Fprintf(&b, `<rect x="%.1f" y="%.1f" width="8" height="%.1f" fill="#bbb"/>`, w-10, y(min(hi, *c.formHigh)), max(0, y(max(lo, *c.formLow))-y(min(hi, *c.formHigh))))
		legend = append(legend, "grey bar: form now, likely range")
	}
	var line []string
	for _, q := range p {
		if !math.IsNaN(q.form) {
			line = append(line, fmt.Sprintf("%.1f,%.1f", x(q.day), y(q.form)))
		}
	}
	if len(line) > 1 {
		fmt.Fprintf(&b, `<polyline points="%s" fill="none" stroke="#000" stroke-width="1.5" stroke-dasharray="5 3"/>`, strings.Join(line, " "))
		legend = slices.Insert(legend, 2, "dashes: form")
	}
	for _, q := range p {
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
