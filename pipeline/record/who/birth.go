package who

import (
	"math"

	"lapwing/pipeline/unit"
)

// birthDensity says how births of the archive's runners are spread: the share
// of births up to the end of each month.
type birthDensity struct {
	start unit.Day
	cum   []float64 // by month of 30.4375 days from start; the last is 1
}

const (
	monthDays = 30.4375
	tight     = 400 // a window narrower than this shows when births were
	pad       = unit.Day(15)
	looseDays = 6 * 366 // a wider window tells namesakes apart badly
)

// density spreads the births of the tight windows over the months, smoothed
// over 18 months; without enough of them births are taken as even over ages 8
// to 80.
func (m *model) density() error {
	d := &m.birth
	last := unit.Day(0)
	if n := len(m.lab.runDay); n > 0 {
		last = m.lab.runDay[n-1]
	}
	d.start = last - 110*366
	months := int(float64(last-d.start)/monthDays) + 1
	raw := make([]float64, months)
	for i := range m.sigs {
		c := &m.sigs[i]
		if c.births == 0 || c.hi-c.lo > tight {
			continue
		}
		k := int(float64((c.lo+c.hi)/2-d.start) / monthDays)
		if k >= 0 && k < months {
			raw[k]++
		}
	}
	// An even spread with the weight of 50 births.
	from, to := months-int(80*12), months-8*12
	for k := max(0, from); k < to; k++ {
		raw[k] += 50 / float64(to-max(0, from))
	}
	sums := make([]float64, months+1)
	for k, x := range raw {
		sums[k+1] = sums[k] + x
	}
	d.cum = make([]float64, months)
	at := 0.
	for k := range raw {
		lo, hi := max(0, k-9), min(months, k+10)
		at += (sums[hi] - sums[lo]) / float64(hi-lo)
		d.cum[k] = at
	}
	for k := range d.cum {
		d.cum[k] /= at
	}
	return nil
}

// upTo is the share of births before a day.
func (d *birthDensity) upTo(day unit.Day) float64 {
	x := float64(day-d.start) / monthDays
	if x <= 0 {
		return 0
	}
	k := int(x)
	if k >= len(d.cum) {
		return 1
	}
	before := 0.
	if k > 0 {
		before = d.cum[k-1]
	}
	return before + (d.cum[k]-before)*(x-float64(k))
}

// share is the share of births in a window, never nothing.
func (d *birthDensity) share(lo, hi unit.Day) float64 {
	return max(d.upTo(hi+1)-d.upTo(lo), 1e-5*max(1, float64(hi-lo+1)/365))
}

// meeting is the weight of two windows that meet, in bits:
// log2 P(A and B) / (P(A) P(B)), each widened by a fortnight for slips in
// dates, at most 7.
func (d *birthDensity) meeting(alo, ahi, blo, bhi unit.Day) float64 {
	alo, ahi, blo, bhi = alo-pad, ahi+pad, blo-pad, bhi+pad
	lo, hi := max(alo, blo), min(ahi, bhi)
	return min(7, math.Log2(d.share(lo, hi)/(d.share(alo, ahi)*d.share(blo, bhi))))
}

// birthGap is the number of days between two windows after widening, 0 where
// they meet.
func birthGap(alo, ahi, blo, bhi unit.Day) unit.Day {
	return max(0, alo-bhi-2*pad, blo-ahi-2*pad)
}
