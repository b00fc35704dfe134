package who

import "lapwing/pipeline/unit"

// A new family name shows only in what a whole runner's lines say together:
// the same given name at the same course, births that meet, one series that
// begins as the other ends. Such pairs are found among the runners once they
// are made. They are too doubtful to be joined for it, and are only listed.

const (
	keyBorn uint64 = 101 + iota
	keyTakesOver
)

const (
	newSurnameRows  = 3   // lines that a runner needs to be looked at
	newSurnameBits  = -4. // weight from which a pair is listed
	newSurnameWeeks = 8   // weeks, within which one begins after the other's end
)

// newSurnames adds pairs of runners of different family names to the links.
//
// Numbered runners are left out: numbers outlast a change of name.
func (m *model) newSurnames() error {
	g := &m.group
	var b blocks
	const span = unit.Day(7 * newSurnameWeeks)
	for i := range m.sigs {
		c := g.pool[i]
		if c == nil || len(c.names) == 0 || c.n < newSurnameRows || len(c.numbers) > 0 {
			continue
		}
		given := uint64(m.names.keys[c.names[0].id].given)
		place := int32(i)
		first, last := int64(m.lab.runDay[c.runs[0]]/span), int64(m.lab.runDay[c.runs[len(c.runs)-1]]/span)
		most := int32(0)
		for _, co := range c.courses {
			most = max(most, co.n)
		}
		for _, co := range c.courses {
			if co.n*4 < most {
				continue // not a home of theirs
			}
			at := uint64(co.id)
			if c.births > 0 && c.hi-c.lo <= looseDays {
				// Buckets of a year and a half, and those that lie half across.
				for k := (int64(c.lo) + 1<<20) / 550; k <= (int64(c.hi)+1<<20)/550; k++ {
					b.add(key(keyBorn, at, given, uint64(k)), place)
				}
			}
			b.add(key(keyTakesOver, at, given, uint64(last)), place)
			for k := first - 1; k <= first; k++ {
				if k != last {
					b.add(key(keyTakesOver, at, given, uint64(k)), place)
				}
			}
		}
	}
	radixSort(m.o.Threads, b.keys, b.sig)
	if err := m.ctx.Err(); err != nil {
		return err
	}
	var pairs []uint64
	eachGroup(b.keys, 0, func(lo, hi int) {
		if hi-lo < 2 || hi-lo > largestBlock {
			return
		}
		in := b.sig[lo:hi]
		for x, i := range in {
			for _, j := range in[x+1:] {
				if i != j && !m.bothFixed(i, j) && m.thinkable(g.pool[i], g.pool[j]) {
					pairs = append(pairs, uint64(min(i, j))<<32|uint64(uint32(max(i, j))))
				}
			}
		}
	})
	pairs = sortUnique(m.o.Threads, pairs)
	for _, part := range spread(m, len(pairs), func(lo, hi int) []uint64 {
		var out []uint64
		for _, p := range pairs[lo:hi] {
			if s := m.weigh(g.pool[p>>32], g.pool[uint32(p)]); s.total > newSurnameBits && s.level[FamilyName] == Differs {
				out = append(out, p)
			}
		}
		return out
	}) {
		g.links = append(g.links, part...)
	}
	return m.ctx.Err()
}
