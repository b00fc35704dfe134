package who

import "math"

// communities says how much likelier a given and a family name stand together
// than if people drew both at random. Names go together: where one family in
// fifty is called Singh and one child in five hundred Harjit, Harjit Singh is
// far commoner than one in 25 000.
//
// It is the latent class model of Hofmann (1999), "Probabilistic latent
// semantic indexing", SIGIR 22:50-57: P(g, s) = Σ_k P(k) P(g|k) P(s|k), fitted
// by expectation-maximisation on the names of the signatures. Nothing is said
// about anybody's origin: the classes have no names and are not kept.
//
// Every distinct name counts once, however many lines have it, and is judged
// by the others: otherwise one person with many signatures would look like a
// people.
type communities struct {
	share  [classes]float64    // P(k)
	given  [][classes]float32  // names of class k with this given name
	family [][classes]float32  // the same for family names
	seen   map[uint64]struct{} // names that were counted
}

const (
	classes       = 12
	communityFrom = 1000    // names below which all count as one community
	communityMost = 200_000 // names that are looked at
	communityTurn = 30      // rounds of expectation-maximisation
	pull          = 1.      // names of no class that every name begins with
)

// findCommunities fits the classes.
func (m *model) findCommunities() error {
	t := &m.names
	q := &communities{seen: map[uint64]struct{}{}}
	var pairs []uint64
	step := max(1, len(m.sigs)/communityMost)
	for i := 0; i < len(m.sigs); i += step {
		c := &m.sigs[i]
		if len(c.names) == 0 {
			continue
		}
		k := t.keys[c.names[0].id]
		id := uint64(k.given)<<32 | uint64(uint32(k.family))
		if _, ok := q.seen[id]; !ok && !k.sole {
			q.seen[id] = struct{}{}
			pairs = append(pairs, id)
		}
	}
	if len(pairs) < communityFrom {
		return nil
	}
	q.given, q.family = make([][classes]float32, len(t.given.text)), make([][classes]float32, len(t.family.text))
	given, family := make([][classes]float32, len(t.given.text)), make([][classes]float32, len(t.family.text))
	for k := range classes {
		q.share[k] = 1. / classes
	}
	// Start: every family leans to one class, by its own letters.
	count := func(p uint64, r *[classes]float64) {
		g, s := p>>32, uint32(p)
		for k := range classes {
			given[g][k] += float32(r[k])
			family[s][k] += float32(r[k])
		}
	}
	for _, p := range pairs {
		var r [classes]float64
		lean := hash(t.family.text[uint32(p)]) % classes
		for k := range classes {
			r[k] = 1. / (classes + 2)
			if uint64(k) == lean {
				r[k] *= 3
			}
		}
		count(p, &r)
	}
	for range communityTurn {
		if m.ctx.Err() != nil {
			return m.ctx.Err()
		}
		q.given, given = given, q.given
		q.family, family = family, q.family
		clear(given)
		clear(family)
		var share [classes]float64
		for _, p := range pairs {
			r := q.member(int32(p>>32), int32(uint32(p)))
			for k := range classes {
				share[k] += r[k]
			}
			count(p, &r)
		}
		for k := range classes {
			q.share[k] = (share[k] + 1) / (float64(len(pairs)) + classes)
		}
	}
	q.given, q.family = given, family
	m.community = q
	return nil
}

// member is the chance of each class for a name.
func (q *communities) member(g, s int32) (r [classes]float64) {
	sum := 0.
	for k := range classes {
		p := q.share[k]
		// P(k) P(g|k) P(s|k), but for factors common to all classes.
		r[k] = (float64(q.given[g][k]) + pull*p) * (float64(q.family[s][k]) + pull*p) / p
		sum += r[k]
	}
	for k := range r {
		r[k] /= sum
	}
	return r
}

// bits is how many bits less a name as a whole says than its parts taken
// singly: log2 P(g, s) / (P(g) P(s)) by all other names, never below 0.
func (q *communities) bits(g, s int32) float64 {
	if q == nil {
		return 0
	}
	var own [classes]float64
	if _, ok := q.seen[uint64(g)<<32|uint64(uint32(s))]; ok {
		own = q.member(g, s)
	}
	joint, pg, ps := 0., 0., 0.
	for k := range classes {
		p := q.share[k]
		a := max(0, float64(q.given[g][k])-own[k]) + pull*p
		b := max(0, float64(q.family[s][k])-own[k]) + pull*p
		joint += a * b / p
		pg += a
		ps += b
	}
	return max(0, math.Log2(joint/(pg*ps)))
}
