package who

import (
	"cmp"
	"math"
	"slices"
)

// Pair is two runners who may be one.
type Pair struct {
	A, B   int32 // runners, A < B
	Bits   float64
	Chance float64 // that they are one person, 0..1
	Gain   float64 // chance times the geometric mean of their rows: the order of the list
}

// Question asks, for lines of one name that no age places, whose of several
// namesakes they are.
type Question struct {
	Runners []int32 // the namesakes
	Rows    []int32 // the lines in question, by Key
	Gain    float64
}

// ThinFit is a group of lines that fits the rest of its runner badly.
type ThinFit struct {
	Runner int32
	Rows   []int32
	Bits   float64 // weight of the lines against the rest
}

// chance turns a weight into the chance that two runners are one. Measured on
// the doubtful pairs of made-up districts, see the tests: the weights are
// somewhat too sure of themselves on both sides and a little too low; even
// odds lie between -3 (2 500 people) and 0 (40 000).
func chance(bits float64) float64 { return 1 / (1 + math.Exp2(-(.8*bits + 1))) }

// result numbers the runners and lists what is doubtful.
func (m *model) result() *Result {
	g := &m.group
	r := &Result{Runner: make([]int32, m.rows.Len()), Weights: m.w, Contradictions: m.contra, m: m,
		Counts: Counts{Rows: m.rows.Len(), Signatures: len(m.sigs), Pairs: len(m.pairs), Joins: len(g.joins)}}
	m.runner = make([]int32, len(m.sigs))
	for i := range m.sigs {
		if root := g.find(int32(i)); int(root) == i {
			m.runner[i] = int32(r.Runners)
			m.roots = append(m.roots, root)
			r.Runners++
		} else {
			m.runner[i] = m.runner[root] // roots are the lowest of theirs
		}
	}
	for i, s := range m.sigOf {
		r.Runner[i] = m.runner[s]
	}
	r.Questions = m.questions()
	r.Doubtful = m.doubtful(r.Questions)
	r.Thin = m.thin()
	return r
}

// doubtful weighs the linked pairs of different runners as they now are.
func (m *model) doubtful(asked []Question) []Pair {
	g := &m.group
	inQuestion := map[int32]int32{}
	for q := range asked {
		for _, row := range asked[q].Rows {
			inQuestion[m.runner[m.sigOf[row]]] = int32(q) + 1
		}
		for _, x := range asked[q].Runners {
			inQuestion[x] = int32(q) + 1
		}
	}
	keys := make([]uint64, 0, len(g.links)/4)
	for _, p := range g.links {
		a, b := m.runner[p>>32], m.runner[uint32(p)]
		if a == b || inQuestion[a] != 0 && inQuestion[a] == inQuestion[b] && (g.pool[m.roots[a]].loose || g.pool[m.roots[b]].loose) {
			continue
		}
		keys = append(keys, uint64(min(a, b))<<32|uint64(uint32(max(a, b))))
	}
	keys = sortUnique(m.o.Threads, keys)
	parts := spread(m, len(keys), func(lo, hi int) []Pair {
		var out []Pair
		for _, k := range keys[lo:hi] {
			a, b := int32(k>>32), int32(uint32(k))
			x, y := g.pool[m.roots[a]], g.pool[m.roots[b]]
			s := m.weighForAsking(x, y)
			if s.total <= m.o.Review || m.apart(m.roots[a], m.roots[b]) {
				continue
			}
			p := chance(s.total)
			out = append(out, Pair{a, b, s.total, p, p * math.Sqrt(float64(x.n)*float64(y.n))})
		}
		return out
	})
	list := slices.Concat(parts...)
	slices.SortFunc(list, func(x, y Pair) int {
		return cmp.Or(-cmp.Compare(x.Gain, y.Gain), cmp.Compare(x.A, y.A), cmp.Compare(x.B, y.B))
	})
	return list
}

// apart says whether a person has already said that they are two.
func (m *model) apart(a, b int32) bool {
	for _, x := range m.bans[a] {
		if m.group.find(x) == b {
			return true
		}
	}
	return false
}

// questions groups the lines that no age places by name and sex.
func (m *model) questions() []Question {
	type group struct{ runners, rows []int32 }
	at := map[uint64]*group{}
	var order []uint64
	alone := func(r int32) bool { return m.group.pool[m.roots[r]].loose }
	rowsOf := map[int32][]int32{}
	for i := range m.sigs {
		if m.sigs[i].loose && alone(m.runner[i]) {
			rowsOf[int32(i)] = nil
		}
	}
	if len(rowsOf) == 0 {
		return nil
	}
	for _, row := range m.lab.order {
		if s := m.sigOf[row]; m.sigs[s].loose {
			if list, ok := rowsOf[s]; ok {
				rowsOf[s] = append(list, row)
			}
		}
	}
	for i := range m.sigs {
		c := &m.sigs[i]
		rows, ok := rowsOf[int32(i)]
		if !ok {
			continue
		}
		k := uint64(m.names.keys[c.names[0].id].full)<<2 | uint64(c.mainSex())
		if at[k] == nil {
			at[k] = &group{}
			order = append(order, k)
		}
		at[k].rows = append(at[k].rows, rows...)
	}
	for i := range m.sigs {
		c := &m.sigs[i]
		if len(c.names) == 0 || alone(m.runner[i]) {
			continue
		}
		k := uint64(m.names.keys[c.names[0].id].full)<<2 | uint64(c.mainSex())
		if q := at[k]; q != nil {
			q.runners = append(q.runners, m.runner[i])
		}
	}
	var out []Question
	for _, k := range order {
		q := at[k]
		slices.Sort(q.runners)
		q.runners = slices.Compact(q.runners)
		if len(q.runners) == 0 {
			continue
		}
		gain := 0.
		for _, r := range q.runners {
			gain += math.Sqrt(float64(m.group.pool[m.roots[r]].n))
		}
		gain *= float64(len(q.rows)) / float64(len(q.runners))
		out = append(out, Question{q.runners, q.rows, gain / 2})
	}
	slices.SortStableFunc(out, func(x, y Question) int { return -cmp.Compare(x.Gain, y.Gain) })
	return out
}

// thin tries each small signature against the rest of its runner.
func (m *model) thin() []ThinFit {
	g := &m.group
	members := map[int32][]int32{}
	for i := range m.sigs {
		if root := g.find(int32(i)); g.pool[root].n > m.sigs[i].n {
			members[root] = append(members[root], int32(i))
		}
	}
	roots := make([]int32, 0, len(members))
	for r := range members {
		roots = append(roots, r)
	}
	slices.Sort(roots)
	type fit struct {
		sig  int32
		bits float64
	}
	parts := spread(m, len(roots), func(lo, hi int) []fit {
		var out []fit
		for _, root := range roots[lo:hi] {
			list := members[root]
			if len(list) > 24 {
				continue
			}
			for _, s := range list {
				if m.sigs[s].n > 2 || g.pool[root].n < 3 {
					continue
				}
				rest := cluster{}
				begun := false
				for _, o := range list {
					if o == s {
						continue
					}
					if !begun {
						rest, begun = m.sigs[o], true
					} else {
						rest = m.names.pool(&rest, &m.sigs[o])
					}
				}
				if sum := m.weigh(&m.sigs[s], &rest); sum.total < m.join {
					out = append(out, fit{s, sum.total})
				}
			}
		}
		return out
	})
	fits := slices.Concat(parts...)
	rows := map[int32][]int32{}
	for _, f := range fits {
		rows[f.sig] = nil
	}
	for _, i := range m.lab.order {
		if list, ok := rows[m.sigOf[i]]; ok {
			rows[m.sigOf[i]] = append(list, i)
		}
	}
	out := make([]ThinFit, 0, len(fits))
	for _, f := range fits {
		out = append(out, ThinFit{m.runner[f.sig], rows[f.sig], f.bits})
	}
	slices.SortStableFunc(out, func(x, y ThinFit) int { return cmp.Compare(x.Bits, y.Bits) })
	return out
}
