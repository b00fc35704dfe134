package who

import (
	"cmp"
	"slices"
)

// Split is lines that fit the rest of their runner badly: perhaps somebody
// else's, and the runner two people.
type Split struct {
	Runner int32
	Rows   []int32 // by Key
	Bits   float64 // weight of the lines against the rest
	Gain   float64 // pairs of rows that it takes apart, times the chance that they are two people's
}

const (
	splitSignatures = 24  // a runner of more is not looked through
	splitRows       = 40  // more lines than that nobody will look through
	splitDoubt      = 10  // bits more than a join needs, from which its sides are not looked at again
	splitFrom       = .03 // chance that they are two people's, from which it is asked
)

// splits tries, for each runner, what came to it by a weak join against the rest
// as it now is: a signature, or several that had been put together before. No
// line is asked about twice.
func (m *model) splits() []Split {
	g := &m.group
	members, joins := map[int32][]int32{}, map[int32][]*join{}
	for i := range m.sigs {
		if root := g.find(int32(i)); g.pool[root].n > m.sigs[i].n {
			members[root] = append(members[root], int32(i))
		}
	}
	var roots []int32
	for i := range g.joins {
		root := g.find(g.joins[i].a)
		if len(members[root]) > splitSignatures || g.pool[root].n < 3 {
			continue
		}
		if joins[root] == nil {
			roots = append(roots, root)
		}
		joins[root] = append(joins[root], &g.joins[i])
	}
	slices.Sort(roots)
	all := slices.Concat(spread(m, len(roots), func(lo, hi int) []cut {
		var out []cut
		for _, root := range roots[lo:hi] {
			out = append(out, m.cuts(root, members[root], joins[root])...)
		}
		return out
	})...)
	of := map[int32]int{} // signature -> split
	for i, c := range all {
		for _, s := range c.sigs {
			of[s] = i + 1
		}
	}
	for _, i := range m.lab.order {
		if k := of[m.sigOf[i]]; k > 0 {
			all[k-1].Rows = append(all[k-1].Rows, i)
		}
	}
	out := make([]Split, len(all))
	for i, c := range all {
		out[i] = c.Split
	}
	slices.SortFunc(out, func(x, y Split) int {
		return cmp.Or(-cmp.Compare(x.Gain, y.Gain), cmp.Compare(m.rows.Key[x.Rows[0]], m.rows.Key[y.Rows[0]]))
	})
	return out
}

// cut is a split by its signatures.
type cut struct {
	sigs []int32
	Split
}

// cuts finds the doubtful parts of one runner, those worth most first, none of
// which overlap. What a person has joined is left alone.
func (m *model) cuts(root int32, members []int32, joins []*join) []cut {
	var found []cut
	try := func(sigs []int32) {
		others := without(members, sigs)
		part, rest := m.pooled(sigs), m.pooled(others)
		if part.n > rest.n {
			part, rest, sigs = rest, part, others
		}
		if part.n > splitRows {
			return
		}
		s := m.weigh(&part, &rest)
		if apart := 1 - m.chance(&s, part.n); apart >= splitFrom {
			found = append(found, cut{slices.Clone(sigs), Split{Runner: m.runner[root], Bits: s.total, Gain: apart * float64(part.n) * float64(rest.n)}})
		}
	}
	grown := map[int32][]int32{}
	side := func(s int32) []int32 {
		if grown[s] == nil {
			grown[s] = []int32{s}
		}
		return grown[s]
	}
	for _, j := range joins {
		if j.decided {
			return nil
		}
		a, b := side(j.a), side(j.b)
		if j.why.total < m.join+splitDoubt {
			try(a)
			if len(a)+len(b) < len(members) {
				try(b)
			}
		}
		grown[j.a] = slices.Concat(a, b)
	}
	slices.SortFunc(found, func(x, y cut) int {
		return cmp.Or(-cmp.Compare(x.Gain, y.Gain), slices.Compare(x.sigs, y.sigs))
	})
	var taken []int32
	return slices.DeleteFunc(found, func(c cut) bool {
		if slices.ContainsFunc(c.sigs, func(s int32) bool { return slices.Contains(taken, s) }) {
			return true
		}
		taken = append(taken, c.sigs...)
		return false
	})
}

// pooled puts the evidence of signatures together.
func (m *model) pooled(sigs []int32) cluster {
	c := m.sigs[sigs[0]]
	for _, s := range sigs[1:] {
		c = m.names.pool(&c, &m.sigs[s])
	}
	return c
}

// without lists what is in all and not in part.
func without(all, part []int32) []int32 {
	return slices.DeleteFunc(slices.Clone(all), func(x int32) bool { return slices.Contains(part, x) })
}
