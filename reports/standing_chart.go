package reports

import (
	"fmt"
	"math"
	"strings"

	"lapwing/pipeline/unit"
)

// point is one adjusted time at the usual distance.
type point struct {
	day unit.Day
	s   float64
	pb  bool
}

// chartPoints are the adjusted times at the usual distance of the last two
// years, in order.
func (d *standingRows) chartPoints() []point {
	var out []point
	dist := d.usualDistance()
	for _, r := range d.results {
		if r.adjusted != nil && r.countsTime && r.distance == dist && r.day > d.latest-2*365 {
			out = append(out, point{r.day, *r.adjusted, r.pb})
		}
	}
	return out
}

// band is the range that a chart shows, in whole half minutes.
func band(p []point) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, x := range p {
		lo, hi = min(lo, x.s), max(hi, x.s)
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
	for _, x := range p {
		col := 0
		if to > from {
			col = int(math.Round(float64(x.day-from) / float64(to-from) * (cols - 1)))
		}
		row := int(math.Round((hi - x.s) / (hi - lo) * (rows - 1)))
		mark := byte('o')
		if x.pb || grid[row][col] == '*' {
			mark = '*'
		}
		grid[row][col] = mark
	}
	var b strings.Builder
	fmt.Fprintf(&b, "\nAdjusted times over %s (o), with personal bests (*); lower is faster\n", distance(c.usualDistance()))
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
	const w, h, left, bottom, top = 640.0, 240.0, 52.0, 26.0, 10.0
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
	fmt.Fprintf(&b, `<svg viewBox="0 0 %.0f %.0f" role="img" aria-label="Adjusted times over %s from %s to %s; lower is faster"><g font-size="12" fill="#000">`,
		w, h, distance(c.usualDistance()), from.Time().Format("2 January 2006"), to.Time().Format("2 January 2006"))
	step := 30.0
	for (hi-lo)/step > 8 {
		step *= 2
	}
	for s := lo; s <= hi+.5; s += step {
		fmt.Fprintf(&b, `<line x1="%.0f" x2="%.0f" y1="%.1f" y2="%.1f" stroke="#ccc"/><text x="%.0f" y="%.1f" text-anchor="end">%s</text>`,
			left, w-2, y(s), y(s), left-6, y(s)+4, unit.Clock(int32(s)))
	}
	if c.form != nil && c.formLow != nil && c.formHigh != nil && c.usualDistance() == 5000 {
		// Form is known for today only: a band at the right edge.
		fmt.Fprintf(&b, `<rect x="%.1f" y="%.1f" width="8" height="%.1f" fill="#bbb"/>`, w-10, y(min(hi, *c.formHigh)), y(max(lo, *c.formLow))-y(min(hi, *c.formHigh)))
	}
	for _, q := range p {
		if q.pb {
			fmt.Fprintf(&b, `<path d="M%.1f %.1fl5 5-5 5-5-5z" fill="#D55E00" stroke="#000"/>`, x(q.day), y(q.s)-5)
			continue
		}
		fmt.Fprintf(&b, `<circle cx="%.1f" cy="%.1f" r="3.5" fill="#0072B2"/>`, x(q.day), y(q.s))
	}
	fmt.Fprintf(&b, `<text x="%.0f" y="%.0f">%s</text><text x="%.0f" y="%.0f" text-anchor="end">%s</text></g></svg>`,
		left, h-6, from.Time().Format("2 Jan 2006"), w-2, h-6, to.Time().Format("2 Jan 2006"))
	return b.String()
}
