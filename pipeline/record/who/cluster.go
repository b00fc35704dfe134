package who

import (
	"container/heap"
	"math"
	"slices"
)

// join is one step of the clustering: two clusters, each named by its lowest
// signature, and the evidence at that moment.
type join struct {
	a, b    int32
	why     sum
	decided bool // by a person
}

// joined is the outcome of clustering.
type joined struct {
	parent []int32
	pool   []*cluster // by lowest signature; nil for the others of a cluster
	links  []uint64   // pairs of signatures worth knowing about (above Review)
	joins  []join
}

func (j *joined) find(x int32) int32 {
	for j.parent[x] != x {
		j.parent[x] = j.parent[j.parent[x]]
		x = j.parent[x]
	}
	return x
}

// candidate is a pair of clusters in the queue. It is stale when either has
// grown since.
type candidate struct {
	a, b       int32
	verA, verB int32
	bits       float64
}

type queue []candidate

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	if q[i].bits != q[j].bits {
		return q[i].bits > q[j].bits
	}
	if q[i].a != q[j].a {
		return q[i].a < q[j].a
	}
	return q[i].b < q[j].b
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)   { *q = append(*q, x.(candidate)) }
func (q *queue) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}

// spread runs do over the pairs in slices, on all threads; each slice's answer
// is kept in its place.
func spread[T any](m *model, n int, do func(lo, hi int) []T) [][]T {
	const piece = 1 << 14
	out := make([][]T, (n+piece-1)/piece)
	m.each(len(out), func(k int) { out[k] = do(k*piece, min(n, (k+1)*piece)) })
	return out
}

// cluster joins signatures, the likeliest pair first, and weighs the pooled
// evidence against all neighbours again after every join.
func (m *model) cluster() error {
	n := len(m.sigs)
	g := &m.group
	g.parent = make([]int32, n)
	for i := range g.parent {
		g.parent[i] = int32(i)
	}
	g.pool = make([]*cluster, n)
	for i := range g.pool {
		g.pool[i] = &m.sigs[i]
	}
	type scored struct {
		pair uint64
		bits float64
		join bool
	}
	found := spread(m, len(m.pairs), func(lo, hi int) []scored {
		var out []scored
		for _, p := range m.pairs[lo:hi] {
			s := m.weigh(&m.sigs[p>>32], &m.sigs[uint32(p)])
			if s.total > m.o.Review {
				out = append(out, scored{p, s.total, m.joins(&s, &m.sigs[p>>32], &m.sigs[uint32(p)])})
			}
		}
		return out
	})
	if err := m.ctx.Err(); err != nil {
		return err
	}
	var q queue
	for _, part := range found {
		for _, s := range part {
			g.links = append(g.links, s.pair)
			if s.join {
				q = append(q, candidate{a: int32(s.pair >> 32), b: int32(uint32(s.pair)), bits: s.bits})
			}
		}
	}
	c := clusterer{m: m, version: make([]int32, n), near: neighbours(n, g.links), grown: map[int32][]int32{}, q: q}
	for _, p := range m.must {
		a, b := g.find(p[0]), g.find(p[1])
		if a != b {
			c.merge(a, b, m.weigh(g.pool[min(a, b)], g.pool[max(a, b)]), true)
		}
	}
	for _, h := range m.homes {
		if a, b := g.find(h.runner), g.find(h.sig); a != b && !c.banned(a, b) && !meets(g.pool[a].runs, g.pool[b].runs) {
			c.merge(a, b, h.why, false)
		}
	}
	if err := c.grow(); err != nil {
		return err
	}
	more, err := m.again()
	if err != nil {
		return err
	}
	g.links = append(g.links, more...)
	c.add(more)
	return c.grow()
}

// grow joins what is in the queue and what comes into it.
func (c *clusterer) grow() error {
	m, g := c.m, &c.m.group
	heap.Init(&c.q)
	for steps := 0; c.q.Len() > 0; steps++ {
		if steps&1023 == 0 && m.ctx.Err() != nil {
			return m.ctx.Err()
		}
		x := heap.Pop(&c.q).(candidate)
		if g.parent[x.a] != x.a || g.parent[x.b] != x.b || c.version[x.a] != x.verA || c.version[x.b] != x.verB || c.banned(x.a, x.b) {
			continue
		}
		s := m.weigh(g.pool[x.a], g.pool[x.b])
		c.merge(x.a, x.b, s, false)
	}
	return nil
}

// add makes pairs of clusters neighbours and queues those that may be joined.
// Those that no signatures would be compared for are only asked about.
func (c *clusterer) add(pairs []uint64) {
	g := &c.m.group
	for _, p := range pairs {
		a, b := int32(p>>32), int32(uint32(p))
		if !c.m.thinkable(g.pool[a], g.pool[b]) {
			continue
		}
		c.grown[a] = append(slices.Clip(c.neighbours(a)), b)
		c.grown[b] = append(slices.Clip(c.neighbours(b)), a)
		if s := c.m.weigh(g.pool[a], g.pool[b]); c.m.joins(&s, g.pool[a], g.pool[b]) && !c.banned(a, b) {
			c.q = append(c.q, candidate{a, b, c.version[a], c.version[b], s.total})
		}
	}
}

// meets says whether two sorted lists of runs have one in common.
func meets(a, b []int32) bool {
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch {
		case a[i] == b[j]:
			return true
		case a[i] < b[j]:
			i++
		default:
			j++
		}
	}
	return false
}

// JoinFrom is the weight from which two are joined who have so many lines each,
// where no sheet gives either a number. least is that of a single line. A wrong
// join of two regulars spoils more than that of a line, and is as quickly asked: so
// the more lines the smaller of two has, the surer it must be. A line or two are
// joined when it is likelier than not, since nobody will answer for each of them;
// two regulars when hardly a doubt is left.
func JoinFrom(least float64, a, b int32) float64 {
	return least + min(8.5, 1.5*math.Log2(float64(max(1, min(a, b)))))
}

// JoinNumbered is the same where one of the two has a number at least. Where sheets
// give numbers, a line without one is sooner a stranger's, and two regulars of one
// number need no more.
func JoinNumbered(least float64, a, b int32) float64 {
	return least + 2 + min(3, .8*math.Log2(float64(max(1, min(a, b)))))
}

// joinSingle is the weight from which a single line is joined. In made-up
// districts of 2 500 people four in five pairs of -2 to -1 bits were one person's.
// Where there are more people to be mistaken for, it takes more: half a bit for
// every eight times as many.
func joinSingle(people float64) float64 { return -2 + max(0, .15*math.Log2(people/2500)) }

// placeBits is how much more it takes to give a line to one of several known
// namesakes whom its age does not tell apart: the others may fit it as well.
const placeBits = 3.2

// numberBits is how much more it takes to join two whose numbers differ: names
// that go together have more chance namesakes than their frequencies lead to
// expect, and to join them overrides what whoever gave out the numbers knew. Set
// on districts with and without people who have two numbers: from 3 on it costs
// those.
const numberBits = 1.5

// joins says whether the weight is enough to join. Two wholly different
// surnames need much more: relatives and twins' partners are real.
func (m *model) joins(s *sum, a, b *cluster) bool {
	least := JoinFrom(m.join, a.n, b.n)
	if len(a.numbers)+len(b.numbers) > 0 {
		least = JoinNumbered(m.join, a.n, b.n)
	}
	if a.loose || b.loose {
		least = max(least, m.join+placeBits)
	}
	if s.level[Number] == Differs {
		least += numberBits
	}
	if s.level[FamilyName] == Differs && s.level[Number] != Equal {
		least = max(least, m.w.NewSurname)
	}
	return s.total >= least
}

// adjacency lists the neighbours of each signature.
type adjacency struct {
	start []int32
	to    []int32
}

func neighbours(n int, links []uint64) adjacency {
	a := adjacency{start: make([]int32, n+1)}
	for _, p := range links {
		a.start[p>>32+1]++
		a.start[uint32(p)+1]++
	}
	for i := range n {
		a.start[i+1] += a.start[i]
	}
	a.to = make([]int32, 2*len(links))
	at := slices.Clone(a.start[:n])
	for _, p := range links {
		i, j := int32(p>>32), int32(uint32(p))
		a.to[at[i]] = j
		at[i]++
		a.to[at[j]] = i
		at[j]++
	}
	return a
}

type clusterer struct {
	m       *model
	version []int32
	near    adjacency
	grown   map[int32][]int32 // neighbours of clusters that were joined
	q       queue
}

func (c *clusterer) neighbours(x int32) []int32 {
	if list, ok := c.grown[x]; ok {
		return list
	}
	return c.near.to[c.near.start[x]:c.near.start[x+1]]
}

// banned says whether a decision keeps two clusters apart, or that they are
// runners already.
func (c *clusterer) banned(a, b int32) bool {
	if c.m.bothFixed(a, b) {
		return true
	}
	bans := c.m.bans
	if len(bans) == 0 {
		return false
	}
	for _, x := range bans[a] {
		if c.m.group.find(x) == b {
			return true
		}
	}
	return false
}

func (c *clusterer) merge(a, b int32, why sum, decided bool) {
	m, g := c.m, &c.m.group
	if a > b {
		a, b = b, a
	}
	g.joins = append(g.joins, join{a, b, why, decided})
	joined := m.names.pool(g.pool[a], g.pool[b])
	g.pool[a], g.pool[b] = &joined, nil
	g.parent[b] = a
	c.version[a]++
	if m.fixed != nil {
		m.fixed[a] = m.fixed[a] || m.fixed[b]
	}
	if len(m.bans) > 0 && (m.bans[a] != nil || m.bans[b] != nil) {
		m.bans[a] = append(slices.Clone(m.bans[a]), m.bans[b]...)
	}
	var list []int32
	for _, old := range [2]int32{a, b} {
		for _, x := range c.neighbours(old) {
			if r := g.find(x); r != a {
				list = append(list, r)
			}
		}
	}
	delete(c.grown, b)
	slices.Sort(list)
	list = slices.Compact(list)
	kept := list[:0]
	for _, x := range list {
		lo, hi := min(a, x), max(a, x)
		s := m.weigh(g.pool[lo], g.pool[hi])
		if s.total <= m.o.Review {
			continue
		}
		kept = append(kept, x)
		if m.joins(&s, g.pool[lo], g.pool[hi]) && !c.banned(a, x) {
			heap.Push(&c.q, candidate{lo, hi, c.version[lo], c.version[hi], s.total})
		}
	}
	c.grown[a] = kept
}

// pool puts the evidence of two clusters together. Where their births
// contradict one another that of most lines stands and the others count as
// strange.
func (t *nameTable) pool(a, b *cluster) cluster {
	c := cluster{n: a.n + b.n, asked: a.asked + b.asked, timed: a.timed + b.timed, dev: a.dev + b.dev, loose: a.loose && b.loose}
	for s := range c.sexes {
		c.sexes[s] = a.sexes[s] + b.sexes[s]
	}
	c.ages = a.ages
	c.ages.pool(&b.ages)
	switch {
	case a.ages.n == 0:
		c.lo, c.hi, c.births = b.lo, b.hi, b.births
	case b.ages.n == 0:
		c.lo, c.hi, c.births = a.lo, a.hi, a.births
	case a.strange+b.strange == 0 && birthGap(a.lo, a.hi, b.lo, b.hi) == 0:
		c.lo, c.hi = max(a.lo, b.lo), min(a.hi, b.hi)
		if c.lo > c.hi { // they meet only when widened: born between them
			c.lo, c.hi = c.hi, c.lo
		}
		c.births = c.ages.n
	default:
		c.consensus()
	}
	c.strange = c.ages.n - c.births
	c.names = mergeTallies(a.names, b.names)
	slices.SortFunc(c.names, func(x, y tally) int {
		if t.before(x, y) {
			return -1
		}
		if t.before(y, x) {
			return 1
		}
		return 0
	})
	c.numbers = mergeTallies(a.numbers, b.numbers)
	c.clubs = mergeTallies(a.clubs, b.clubs)
	c.courses = mergeTallies(a.courses, b.courses)
	c.runs = make([]int32, 0, len(a.runs)+len(b.runs))
	i, j := 0, 0
	for i < len(a.runs) || j < len(b.runs) {
		if j == len(b.runs) || i < len(a.runs) && a.runs[i] <= b.runs[j] {
			c.runs = append(c.runs, a.runs[i])
			i++
		} else {
			c.runs = append(c.runs, b.runs[j])
			j++
		}
	}
	return c
}

// consensus takes the birth dates that most lines allow.
func (c *cluster) consensus() {
	f := fitBirths(nil, &c.ages, nil, 0, lineCost)
	if g := fitBirths(nil, &c.ages, nil, pad, lineCost); g.against < f.against {
		f = g
		f.lo, f.hi = g.lo+pad, g.hi-pad
		if f.lo > f.hi { // they meet only when widened: born between them
			f.lo, f.hi = f.hi, f.lo
		}
	}
	c.lo, c.hi, c.births = f.lo, f.hi, c.ages.n-f.against
}

// mergeTallies adds two lists; the result is ordered by id.
func mergeTallies(a, b []tally) []tally {
	if len(b) == 0 {
		return slices.Clone(a)
	}
	out := make([]tally, 0, len(a)+len(b))
	out = append(append(out, a...), b...)
	slices.SortFunc(out, func(x, y tally) int { return int(x.id - y.id) })
	k := 0
	for _, x := range out[1:] {
		if x.id == out[k].id {
			out[k].n += x.n
		} else {
			k++
			out[k] = x
		}
	}
	return out[:k+1]
}
