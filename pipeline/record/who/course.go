package who

import (
	"math"
	"sort"
)

// courseLift says how much more often two courses are run by one person than
// chance would have it.
//
// It is told twice. By rows: of two rows of one person, how often are they of
// these two courses? That is the right measure for long series: few people
// have two homes. By people: how many have ever been at both? That is the
// right one for a single line, because a regular of one course sooner or later
// visits its neighbours.
type courseLift struct {
	rows, people liftTable
	start        []int32 // by course, into other
	other        []int32
}

type liftTable struct {
	share []float64 // by course: of rows, or of people who have been there
	total float64
	count []float64 // beside other
}

// affinity counts, over groups of rows that surely are one person's (numbered,
// or a name rarer than one in three archives), how the rows of people who run
// at one course are spread over all courses. Each group weighs as many as it
// has rows.
func (m *model) affinity() error {
	a := &m.lift
	a.rows.share, a.people.share = make([]float64, m.lab.courses), make([]float64, m.lab.courses)
	// Rows by course of each sure person. A numbered signature is one; the
	// signatures of a rare name are pooled, whatever sex the sheets give or leave
	// out.
	type group struct {
		name int32 // pooled by full name, or -1
		sig  int32
	}
	pooled := map[int32][]int32{}
	var groups []group
	for i := range m.sigs {
		c := &m.sigs[i]
		if len(c.names) == 0 {
			continue
		}
		if len(c.numbers) > 0 {
			if len(c.courses) > 1 || c.n > 3 {
				groups = append(groups, group{-1, int32(i)})
			}
			continue
		}
		k := m.names.keys[c.names[0].id]
		if k.sole || m.names.share(&k)*m.people > .3 {
			continue
		}
		if _, ok := pooled[k.full]; !ok {
			groups = append(groups, group{name: k.full})
		}
		pooled[k.full] = append(pooled[k.full], int32(i))
	}
	type seen struct{ rows, people float64 }
	pairs := map[uint64]seen{}
	// Some hundred thousand people are enough.
	step := max(1, len(groups)/300_000)
	for i := 0; i < len(groups); i += step {
		g := &groups[i]
		sigs := []int32{g.sig}
		if g.name >= 0 {
			sigs = pooled[g.name]
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
		if n < 2 {
			continue
		}
		a.people.total++
		for _, x := range t {
			a.rows.share[x.id] += float64(x.n)
			a.rows.total += float64(x.n)
			a.people.share[x.id]++
			for _, y := range t {
				// The diagonal leaves the row itself out.
				ny := float64(y.n)
				if x.id == y.id {
					ny--
				}
				k := uint64(x.id)<<32 | uint64(y.id)
				p := pairs[k]
				p.people++
				if n > 1 && ny > 0 {
					p.rows += float64(x.n) * ny / float64(n-1)
				}
				pairs[k] = p
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
		a.rows.count = append(a.rows.count, pairs[k].rows)
		a.people.count = append(a.people.count, pairs[k].people)
	}
	for c := 0; c < m.lab.courses; c++ {
		a.start[c+1] += a.start[c]
		if a.rows.total > 0 {
			a.rows.share[c] /= a.rows.total
			a.people.share[c] /= a.people.total
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

// lift is (observed + .3) / (expected + .3), by rows and by people.
func (a *courseLift) lift(c, d int32) (rows, people float64) {
	at := -1
	row := a.other[a.start[c]:a.start[c+1]]
	if k := sort.Search(len(row), func(i int) bool { return row[i] >= d }); k < len(row) && row[k] == d {
		at = int(a.start[c]) + k
	}
	return a.rows.lift(c, d, at), a.people.lift(c, d, at)
}

func (t *liftTable) lift(c, d int32, at int) float64 {
	observed := 0.
	if at >= 0 {
		observed = t.count[at]
	}
	return (observed + .3) / (t.total*t.share[c]*t.share[d] + .3)
}

// weight is the evidence of where two clusters ran, in bits, within low..8.
// The shorter the shorter series, the more it counts by people.
func (a *courseLift) weight(x, y *cluster, low float64) float64 {
	rows, people := 0., 0.
	for _, c := range x.courses {
		for _, d := range y.courses {
			r, p := a.lift(c.id, d.id)
			n := float64(c.n) * float64(d.n)
			rows += n * r
			people += n * p
		}
	}
	n := float64(x.n) * float64(y.n)
	few := 1 / float64(min(x.n, y.n))
	return min(8, max(low, math.Log2((people*few+rows*(1-few))/n)))
}
