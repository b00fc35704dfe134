package pipeline

import (
	"context"
	"math"

	"lapwing/pipeline/parallel"
	"lapwing/pipeline/record"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

var rankedSchema = store.Columns("sex", store.Uint8, "first_age", store.Uint8, "runner_no", store.Int32, "run_no", store.Int32,
	"time_s", store.Int32, "adjusted_s", store.Int32, "grade", store.Int32)

// writeRanked writes the results that rank in an age group, group by group: whoever
// asks how one group stands reads no other.
func (pl *Pipeline) writeRanked(ctx context.Context, w *work) error {
	r := pl.ranked(w)
	return pl.insertColumns(ctx, "insight.ranked", rankedSchema, len(r.sex), func(c *fill, from, to int) {
		c.bytes(r.sex[from:to])
		c.bytes(r.firstAge[from:to])
		for _, v := range [][]int32{r.runner, r.run, r.time, r.adjusted, r.grade} {
			c.ints(v[from:to])
		}
	})
}

// rankedResults are the columns of insight.ranked.
type rankedResults struct {
	sex, firstAge                      []uint8
	runner, run, time, adjusted, grade []int32
}

// set fills row k with the result at place o of people.order.
func (r *rankedResults) set(w *work, k int32, o int) {
	f, i := w.field, int(w.people.order[o])
	time := unit.CeilSeconds(f.timeMS[i])
	r.sex[k], r.firstAge[k] = uint8(f.sexOf(w.people, i)), w.figures.group[i]
	r.runner[k], r.run[k], r.time[k] = f.runner[i], f.run[i], time
	r.adjusted[k] = adjustedSeconds(w.speed.adjusted[o])
	if g, ok := w.figures.grade.At(o, time); ok && !g.Check && g.High-g.Low < sameGrade {
		r.grade[k] = int32(math.Round(100 * g.Percent))
	}
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

// ranked picks the results that rank in an age group, by sex and group, then runner:
// a time that counts of a runner, walker or guided runner whose group is certain.
func (pl *Pipeline) ranked(w *work) *rankedResults {
	f, p, fig := w.field, w.people, &w.figures
	const groups = 4 * 121
	group := func(o int) int { // -1: none
		i := int(p.order[o])
		if fig.group[i] == noGroup || !f.inModel(i) || f.timeMS[i] <= 0 || !f.is(i, record.OK) {
			return -1
		}
		sex := f.sexOf(p, i)
		if sex == record.NotGiven {
			return -1
		}
		return int(sex)*121 + int(fig.group[i])
	}
	const piece = 1 << 16
	n := len(p.order)
	counts := make([][groups]int32, (n+piece-1)/piece)
	of := make([]int16, n)
	parallel.Each(len(counts), pl.workers(), func(k int) {
		for o := k * piece; o < min(n, (k+1)*piece); o++ {
			g := group(o)
			if of[o] = int16(g); g >= 0 {
				counts[k][g]++
			}
		}
	})
	all := int32(0)
	for g := range groups {
		for k := range counts {
			all, counts[k][g] = all+counts[k][g], all
		}
	}
	r := &rankedResults{sex: make([]uint8, all), firstAge: make([]uint8, all)}
	for _, c := range []*[]int32{&r.runner, &r.run, &r.time, &r.adjusted, &r.grade} {
		*c = make([]int32, all)
	}
	parallel.Each(len(counts), pl.workers(), func(k int) {
		next := &counts[k]
		for o := k * piece; o < min(n, (k+1)*piece); o++ {
			if g := of[o]; g >= 0 {
				r.set(w, next[g], o)
				next[g]++
			}
		}
	})
	return r
}
