package who

import (
	"math"
	"sort"
)

// courseLift says how much more often two courses are run by one person than
// chance would have it.
type courseLift struct {
	share []float64 // of all rows of sure groups
	total float64
	start []int32 // by course, into other and count
	other []int32
	count []float64 // rows of the other course by people of this one
}

// affinity counts, over groups of rows that surely are one person's (numbered,
// or a name rarer than one in three archives), how the rows of people who run
// at one course are spread over all courses. Each group weighs as many as it
// has rows.
func (m *model) affinity() error {
	a := &m.lift
	a.share = make([]float64, m.lab.courses)
	// Rows by course of each sure person. A numbered signature is one; the
	// signatures of a rare name and sex are pooled.
	type group struct {
		key  uint64
		sigs []int32
	}
	pooled := map[uint64][]int32{}
	var groups []group
	for i := range m.sigs {
		c := &m.sigs[i]
		if len(c.names) == 0 {
			continue
		}
		if len(c.numbers) > 0 {
			if len(c.courses) > 1 || c.n > 3 {
				groups = append(groups, group{sigs: []int32{int32(i)}})
			}
			continue
		}
		k := m.names.keys[c.names[0].id]
		if k.sole || m.names.given.mass[k.given]*m.names.family.mass[k.family]*m.people > .3 {
			continue
		}
		key := uint64(k.full)<<2 | uint64(c.mainSex())
		if _, ok := pooled[key]; !ok {
			groups = append(groups, group{key: key})
		}
		pooled[key] = append(pooled[key], int32(i))
	}
	pairs := map[uint64]float64{}
	for _, g := range groups {
		sigs := g.sigs
		if sigs == nil {
			sigs = pooled[g.key]
		}
		var room [16]tally
		t := room[:0]
		n := int32(0)
		for _, s := range sigs {
			for _, c := range m.sigs[s].courses {
				t = countN(t, c.id, c.n)
				n += c.n
			}
		}
		for _, x := range t {
			a.share[x.id] += float64(x.n)
			a.total += float64(x.n)
			for _, y := range t {
				// The diagonal leaves the row itself out.
				ny := float64(y.n)
				if x.id == y.id {
					ny--
				}
				if n > 1 && ny > 0 {
					pairs[uint64(x.id)<<32|uint64(y.id)] += float64(x.n) * ny / float64(n-1)
				}
			}
		}
	}
	keys := make([]uint64, 0, len(pairs))
	for k := range pairs {
		keys = append(keys, k)
	}
	sort.Slice(keys, func(i, j int) bool { return keys[i] < keys[j] })
	a.start = make([]int32, m.lab.courses+1)
	for _, k := range keys {
		a.start[k>>32+1]++
		a.other = append(a.other, int32(uint32(k)))
		a.count = append(a.count, pairs[k])
	}
	for c := 0; c < m.lab.courses; c++ {
		a.start[c+1] += a.start[c]
		if a.total > 0 {
			a.share[c] /= a.total
		}
	}
	return nil
}

func countN(t []tally, id, n int32) []tally {
	for k := range t {
		if t[k].id == id {
			t[k].n += n
			return t
		}
	}
	return append(t, tally{id, n})
}

// lift is (observed + .3) / (expected + .3).
func (a *courseLift) lift(c, d int32) float64 {
	expected := a.total * a.share[c] * a.share[d]
	observed := 0.
	row := a.other[a.start[c]:a.start[c+1]]
	k := sort.Search(len(row), func(i int) bool { return row[i] >= d })
	if k < len(row) && row[k] == d {
		observed = a.count[int(a.start[c])+k]
	}
	return (observed + .3) / (expected + .3)
}

// weight is the evidence of where two clusters ran, in bits, within low..8.
func (a *courseLift) weight(x, y *cluster, low float64) float64 {
	sum := 0.
	for _, c := range x.courses {
		for _, d := range y.courses {
			sum += float64(c.n) * float64(d.n) * a.lift(c.id, d.id)
		}
	}
	return min(8, max(low, math.Log2(sum/(float64(x.n)*float64(y.n)))))
}
