package pipeline

import (
	"context"
	"math"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

var rankedSchema = store.Columns("sex", store.Uint8, "first_age", store.Uint8, "runner_no", store.Int32, "run_no", store.Int32,
	"time_s", store.Int32, "adjusted_s", store.Int32, "grade", store.Int32)

// writeRanked writes the results that rank in an age group, group by group: whoever
// asks how one group stands reads no other.
func (pl *Pipeline) writeRanked(ctx context.Context, w *work) error {
	f, p, s := w.field, w.people, w.speed
	list := f.ranked(p, &w.figures, pl.workers())
	return pl.insertColumns(ctx, "insight.ranked", rankedSchema, len(list), func(c *fill, from, to int) {
		list := list[from:to]
		line := func(k int) int32 { return p.order[list[k]] }
		c.bytesOf(func(k int) uint8 { return uint8(f.sexOf(p, int(line(k)))) })
		c.bytesOf(func(k int) uint8 { return firstAges[w.figures.ageLow[line(k)]] })
		c.intsOf(func(k int) int32 { return f.runner[line(k)] })
		c.intsOf(func(k int) int32 { return f.run[line(k)] })
		c.intsOf(func(k int) int32 { return unit.CeilSeconds(f.timeMS[line(k)]) })
		c.intsOf(func(k int) int32 { return adjustedSeconds(s.adjusted[list[k]]) })
		c.intsOf(func(k int) int32 {
			g, ok := w.figures.grade.At(int(list[k]), unit.CeilSeconds(f.timeMS[line(k)]))
			if !ok || g.Check || g.High-g.Low >= sameGrade {
				return 0
			}
			return int32(math.Round(100 * g.Percent))
		})
	})
}

// sameGrade is the difference of age grades, in per cent, from which an age is not
// known well enough to rank by them.
const sameGrade = .005

// adjustedSeconds rounds an adjusted time up to whole seconds, as it is printed; 0
// where there is none.
func adjustedSeconds(s float32) int32 {
	if s != s {
		return 0
	}
	return int32(math.Ceil(math.Round(float64(s)*1000)/1000 - 1e-9))
}

// firstAges is the youngest age of each age's group.
var firstAges = func() (first [121]uint8) {
	scheme := age.DefaultScheme()
	for a := range first {
		lo, _ := scheme.Bounds(a)
		first[a] = uint8(lo)
	}
	return first
}()

// ranked lists the places in people.order of the results that rank in an age group,
// by sex and group, then runner: a time that counts of a runner, walker or guided
// runner all of whose ages on the day are of one group.
func (f *field) ranked(p *people, fig *figures, workers int) []int32 {
	const groups = 4 * 121
	group := func(o int) int { // -1: none
		i := int(p.order[o])
		lo, hi := fig.ageLow[i], fig.ageHigh[i]
		if lo < 0 || firstAges[lo] != firstAges[hi] || !f.inModel(i) || f.timeMS[i] <= 0 || !f.is(i, record.OK) {
			return -1
		}
		sex := f.sexOf(p, i)
		if sex == record.NotGiven {
			return -1
		}
		return int(sex)*121 + int(firstAges[lo])
	}
	const piece = 1 << 16
	n := len(p.order)
	counts := make([][groups]int32, (n+piece-1)/piece)
	of := make([]int16, n)
	eachParallel(len(counts), workers, func(k int) {
		for o := k * piece; o < min(n, (k+1)*piece); o++ {
			g := group(o)
			if of[o] = int16(g); g >= 0 {
				counts[k][g]++
			}
		}
	})
	at := int32(0)
	for g := range groups {
		for k := range counts {
			at, counts[k][g] = at+counts[k][g], at
		}
	}
	list := make([]int32, at)
	eachParallel(len(counts), workers, func(k int) {
		next := &counts[k]
		for o := k * piece; o < min(n, (k+1)*piece); o++ {
			if g := of[o]; g >= 0 {
				list[next[g]] = int32(o)
				next[g]++
			}
		}
	})
	return list
}
