package who

import (
	"slices"

	"lapwing/pipeline/unit"
)

// Much shows only in what a whole runner's lines say together. So once the
// runners are made they are looked at again, as a whole, and more widely than a
// million signatures could be: a line or two under a name that is mistyped and
// shortened at a time; a namesake whom no single line made likely enough to be
// kept in mind; a new family name, or quite another given name, where births meet
// or one series begins as the other ends. Who fits well enough is joined as ever;
// the others are listed.

const (
	keyBorn uint64 = 101 + iota
	keyTakesOver
	keyBornFamily
	keySpelling
	keyInitials
	keyAnywhere
	keyLostInitials
	keySound
)

const (
	newNameRows  = 3 // lines that a runner needs to be looked for under another name
	takeOverSpan = unit.Day(7 * 8)
	bornSpan     = 550 // days
)

// again finds the pairs of runners that are worth a second look.
//
// Two numbered runners are left out: numbers outlast a change of name.
func (m *model) again() ([]uint64, error) {
	found := m.pairsAgain(m.againKeys, func(a, b *cluster) bool { return true })
	small := func(c *cluster) bool { return c.n < newNameRows || m.names.keys[c.names[0].id].lost }
	found = append(found, m.pairsAgain(func(c *cluster, ks []uint64) []uint64 { return m.smallKeys(c, small(c), ks) },
		func(a, b *cluster) bool { return small(a) || small(b) })...)
	return sortUnique(m.o.Threads, found), m.ctx.Err()
}

// pairsAgain lists the pairs of runners that share a key and are doubtful at
// least.
func (m *model) pairsAgain(keysOf func(c *cluster, ks []uint64) []uint64, worth func(a, b *cluster) bool) []uint64 {
	g := &m.group
	var b blocks
	var ks []uint64
	probe := newFilter(len(m.sigs) / 4)
	var later []int32
	for i := range m.sigs {
		c := g.pool[i]
		if c == nil || len(c.names) == 0 {
			continue
		}
		if len(c.numbers) > 0 || !worth(c, c) {
			later = append(later, int32(i))
			continue
		}
		ks = keysOf(c, ks[:0])
		for _, k := range ks {
			probe.set(k)
			b.add(k, int32(i))
		}
	}
	if len(b.keys) == 0 {
		return nil
	}
	for _, i := range later {
		ks = keysOf(g.pool[i], ks[:0])
		for _, k := range ks {
			if probe.has(k) {
				b.add(k, i)
			}
		}
	}
	radixSort(m.o.Threads, b.keys, b.sig)
	if m.ctx.Err() != nil {
		return nil
	}
	var pairs []uint64
	eachGroup(b.keys, 0, func(lo, hi int) {
		if hi-lo < 2 || hi-lo > largestBlock {
			return
		}
		in := b.sig[lo:hi]
		for x, i := range in {
			for _, j := range in[x+1:] {
				p, q := g.pool[i], g.pool[j]
				if i == j || m.bothFixed(i, j) || len(p.numbers) > 0 && len(q.numbers) > 0 || !worth(p, q) {
					continue
				}
				pairs = append(pairs, uint64(min(i, j))<<32|uint64(uint32(max(i, j))))
			}
		}
	})
	pairs = sortUnique(m.o.Threads, pairs)
	return slices.Concat(spread(m, len(pairs), func(lo, hi int) []uint64 {
		var out []uint64
		for _, p := range pairs[lo:hi] {
			if s := m.weighForAsking(g.pool[p>>32], g.pool[uint32(p)]); s.total > m.o.Review {
				out = append(out, p)
			}
		}
		return out
	})...)
}

// smallKeys are the keys under which the lines of a small runner and everybody
// else are looked for: the initials at a course, in either order, also those of
// short forms, and the family name; and, wherever they ran, the family name with the
// initial, for a visitor with a short form or with the names turned round.
func (m *model) smallKeys(c *cluster, small bool, ks []uint64) []uint64 {
	t := &m.names
	for _, x := range c.names[:min(3, len(c.names))] {
		k := &t.keys[x.id]
		given, family := t.given.text[k.given], t.family.text[k.family]
		g, f := first(given, 1), first(family, 1)
		if g == "" {
			continue
		}
		ks = append(ks, key(keyAnywhere, hash(family), hash(g)))
		if small {
			ks = append(ks, key(keyAnywhere, hash(given), hash(f)))
			eachInitial(given, func(g string) { ks = append(ks, key(keyAnywhere, hash(family), hash(g))) })
			eachInitial(family, func(f string) { ks = append(ks, key(keyAnywhere, hash(given), hash(f))) }) // turned round
		}
		for _, co := range c.courses {
			at := uint64(co.id)
			ks = append(ks, key(keyInitials, at, hash(g), hash(f)), key(keyCourseFamily, at, uint64(k.family)))
			if !small {
				continue
			}
			ks = append(ks, key(keyInitials, at, hash(f), hash(g)))
			eachInitial(given, func(g string) { ks = append(ks, key(keyInitials, at, hash(g), hash(f))) })
			eachInitial(family, func(f string) { ks = append(ks, key(keyInitials, at, hash(f), hash(g))) }) // turned round
		}
		if k.lost || !small {
			ks = append(ks, key(keyLostInitials, hash(g), hash(f)))
			if small {
				ks = append(ks, key(keyLostInitials, hash(f), hash(g)))
			}
		}
	}
	return ks
}

// eachInitial hands over the initials of the names that go by one short form with a
// given name.
func eachInitial(given string, do func(initial string)) {
	for _, group := range nickGroups[given] {
		for i := range nickLetters[group] {
			do(nickLetters[group][i : i+1])
		}
	}
}

// againKeys are the keys under which a whole runner is looked for.
func (m *model) againKeys(c *cluster, ks []uint64) []uint64 {
	for _, x := range c.names[:min(4, len(c.names))] {
		if x.n*8 >= c.n || x.n >= newNameRows {
			ks = append(ks, key(keySpelling, uint64(m.names.keys[x.id].full)))
		}
	}
	if c.n < newNameRows || len(c.runs) == 0 {
		return ks
	}
	k := &m.names.keys[c.names[0].id]
	given, families := uint64(k.given), m.names.family.tokens[k.family]
	if len(families) == 0 {
		families = []int32{k.family}
	}
	narrow := c.births > 0 && c.hi-c.lo <= looseDays
	// Buckets of a year and a half, and those that lie half across.
	from, to := (int64(c.lo)+1<<20)/bornSpan, (int64(c.hi)+1<<20)/bornSpan
	if c.births > 0 && c.hi-c.lo <= bornSpan {
		for b := from; b <= to; b++ {
			for _, f := range families {
				ks = append(ks, key(keyBornFamily, uint64(f), uint64(b)))
			}
		}
	}
	begin, end := int64(m.lab.runDay[c.runs[0]]/takeOverSpan), int64(m.lab.runDay[c.runs[len(c.runs)-1]]/takeOverSpan)
	most := int32(0)
	for _, co := range c.courses {
		most = max(most, co.n)
	}
	for _, co := range c.courses {
		if co.n*4 < most {
			continue // not a home of theirs
		}
		at := uint64(co.id)
		if sound := m.names.family.sound[k.family]; sound != "" {
			ks = append(ks, key(keySound, at, hash(sound), hash(first(m.names.given.text[k.given], 1))))
		}
		if narrow {
			for b := from; b <= to; b++ {
				ks = append(ks, key(keyBorn, at, given, uint64(b)))
			}
		}
		ks = append(ks, key(keyTakesOver, at, given, uint64(end)))
		for b := begin - 1; b <= begin; b++ {
			if b != end {
				ks = append(ks, key(keyTakesOver, at, given, uint64(b)))
			}
		}
	}
	return ks
}
