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
	Gain   float64 // pairs of rows that it brings together, times the chance: the order of the list
}

// Question asks, for lines of one name that no age places, whose of several
// namesakes they are.
type Question struct {
	Runners []int32 // the namesakes
	Rows    []int32 // the lines in question, by Key
	Gain    float64 // as of a pair
}

// chance turns the weight of two runners into the chance that they are one. few
// is the number of lines of the smaller. Logistic regressions on the doubtful pairs
// of made-up districts of four makers. Of two weights alike that of more lines is the
// less likely, for what joins lines would mostly have joined so many; not so where
// the family names are quite different, which is never joined, nor where ages
// contradict: that lines contradict by mistake grows the less likely the more they
// are, and the weight says so already. Finer kinds of evidence were tried as well, and
// helped with one maker's districts at the cost of the others'. Where there are more
// people it takes more: .63 bits for every twice as many, as far as districts of
// 2 500 and 25 000 people tell.
func (m *model) chance(s *sum, few int32) float64 {
	lines := math.Log2(float64(max(1, few)))
	odds := 2.9 + .88*s.total - .42*lines
	switch {
	case s.level[FamilyName] == Differs:
		odds = 2.1 + 1.15*s.total
	case s.level[Birth] > Equal:
		odds = 1.3 + .75*s.total + .9*lines
	}
	odds -= min(3.9, .63*max(0, math.Log2(m.people/3000)))
	return 1 / (1 + math.Exp2(-odds))
}

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
	r.Groups = groups(r.Doubtful)
	r.Splits = m.splits()
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
		if a == b {
			continue
		}
		// A line or two of namesakes are asked about as lines only, a series of them
		// as a runner of its own as well.
		x, y := g.pool[m.roots[a]], g.pool[m.roots[b]]
		if inQuestion[a] != 0 && inQuestion[a] == inQuestion[b] && (x.loose && x.n < newNameRows || y.loose && y.n < newNameRows) {
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
			p := m.chance(&s, min(x.n, y.n))
			out = append(out, Pair{a, b, s.total, p, p * float64(x.n) * float64(y.n)})
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
		lines := 0.
		for _, r := range q.runners {
			lines += float64(m.group.pool[m.roots[r]].n)
		}
		// Each line is one of the namesakes', as likely as not, and so is each two.
		k, n := float64(len(q.rows)), float64(len(q.runners))
		out = append(out, Question{q.runners, q.rows, k * (lines + (k-1)/2) / n / 2})
	}
	slices.SortStableFunc(out, func(x, y Question) int { return -cmp.Compare(x.Gain, y.Gain) })
	return out
}
